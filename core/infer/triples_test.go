package infer_test

import (
	"slices"
	"testing"

	"readback/core/infer"
	"readback/core/measure"
	"readback/flows/lab/workspace"
)

// Three faults at once: with singles and pairs alone the answers contradict each other; the triples entered for them must hold the
// truth, take over the belief, and leave everything else as it was.
func TestGrow(t *testing.T) {
	c := workspace.Small(t).Case
	b := infer.New(c.Problem)
	if sets := c.Worlds.Triples(c.Modes, b, 100); len(sets) > 0 {
		t.Fatalf("without an answer %d triples are entered", len(sets))
	}
	// The likeliest triples that enter when nothing goes together.
	truth := c.Worlds.Triples(c.Modes, contradicted(t, c), 40)
	if len(truth) == 0 {
		t.Fatal("contradicting answers enter no triple")
	}
	found := 0
	for _, set := range truth[:5] {
		g, err := c.With(c.Worlds.Triples(c.Modes, contradicted(t, c), 400))
		if err != nil {
			t.Fatal(err)
		}
		b := infer.New(g.Problem)
		w := g.Worlds.Of(set...)
		if w < 0 {
			t.Fatalf("triple %v has no world", set)
		}
		for k := range g.Problem.Checks {
			if err := b.Observe(discrete(g.Problem, k, usual(g.Problem, k, w))); err != nil {
				t.Fatal(err)
			}
		}
		// Other sets may predict the very same answers; none may beat the truth but by its prior.
		h := slices.IndexFunc(g.Problem.Hyps, func(h infer.Hyp) bool { return slices.Equal(h.Modes, set) })
		best := slices.Max(b.Prob())
		if b.Prob()[h] > 0 && b.Prob()[h] >= best*1e-6 {
			found++
		}
		for i, h := range c.Problem.Hyps {
			if !slices.Equal(h.Modes, g.Problem.Hyps[i].Modes) {
				t.Fatalf("hypothesis %d became another one", i)
			}
		}
	}
	if found == 0 {
		t.Error("no triple explains its own answers")
	}
}

// usual is the likeliest outcome of a check in a world.
func usual(p *infer.Problem, check, world int) int {
	best := 0
	for o := range p.Checks[check].Bins[0] {
		if p.Chance(check, world, o) > p.Chance(check, world, best) {
			best = o
		}
	}
	return best
}

// contradicted is a belief after answers of which no two go together: each check by another mode.
func contradicted(t *testing.T, c *infer.Case) *infer.Belief {
	b := infer.New(c.Problem)
	for k := range c.Problem.Checks {
		if err := b.Observe(discrete(c.Problem, k, usual(c.Problem, k, c.Worlds.Of(k%len(c.Modes))))); err != nil {
			t.Fatal(err)
		}
	}
	return b
}

// Without an answer the triples come by falling prior, without repetition, and all of them come in the end; an answer that one mode
// alone gives puts those with that mode first.
func TestTriplesInOrder(t *testing.T) {
	modes := []infer.Mode{{Rate: 3, Part: 0}, {Rate: 1, Part: 1}, {Rate: 7, Part: 2}, {Rate: 2, Part: 3}, {Rate: 5, Part: 3}}
	hyps, worlds, err := infer.Enumerate(modes, infer.Base{Unknown: 0.01, Second: 0.6}, nil)
	if err != nil {
		t.Fatal(err)
	}
	p := &infer.Problem{Worlds: len(worlds.Sets), Hyps: hyps, Groups: 1}
	check := infer.Check{ID: "c", Bins: [][]float64{{1, 0}, {0, 1}}}
	for _, set := range worlds.Sets {
		k := uint8(0)
		if slices.Contains(set, 3) {
			k = 1
		}
		check.Class = append(check.Class, k)
	}
	p.Checks = []infer.Check{check}
	if err := p.Prepare(); err != nil {
		t.Fatal(err)
	}
	b := infer.New(p)
	for i, want := range [][][]int{
		{{0, 2, 4}, {0, 2, 3}, {1, 2, 4}, {0, 1, 2}, {0, 1, 4}, {1, 2, 3}, {0, 1, 3}},
		{{0, 2, 3}, {1, 2, 3}, {0, 1, 3}},
	} {
		if got := worlds.Triples(modes, b, 100); !slices.EqualFunc(got, want, slices.Equal) {
			t.Errorf("after %d answers: triples %v, want %v", i, got, want)
		}
		if err := b.Observe(infer.Answer{Parts: []measure.Parts{{}, {measure.Sound: 1}}}); err != nil {
			t.Fatal(err)
		}
	}
}
