package infer_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"readback/core/infer"
	"readback/core/measure"
)

func drawn(t *rapid.T) (*rand.Rand, *infer.Problem) {
	r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 31))
	return r, randomProblem(r)
}

// faultless is a problem in which nobody blunders.
func faultless(p *infer.Problem) *infer.Problem {
	for i := range p.Checks {
		p.Checks[i].Spoilt = nil
	}
	if err := p.Prepare(); err != nil {
		panic(err)
	}
	return p
}

func TestBeliefIsAProbability(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, p := drawn(t)
		b := infer.New(p)
		for range rapid.IntRange(0, 12).Draw(t, "answers") {
			feed(b, randomEvent(r, p))
			sum := 0.0
			for h, x := range b.Prob() {
				if !(x >= 0) {
					t.Fatalf("hypothesis %d has %v", h, x)
				}
				sum += x
			}
			if math.Abs(sum-1) > 1e-12 {
				t.Fatalf("sum %v", sum)
			}
		}
	})
}

// Within one power cycle the order of answers to different checks does not matter.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, p := drawn(t)
		var events []event
		for c := range p.Checks {
			e := randomEvent(r, p)
			for e.Check != c {
				e = randomEvent(r, p)
			}
			events = append(events, e)
		}
		a, b := infer.New(p), infer.New(p)
		for _, e := range events {
			feed(a, e)
		}
		for _, i := range r.Perm(len(events)) {
			feed(b, events[i])
		}
		for h, x := range a.Prob() {
			if math.Abs(x-b.Prob()[h]) > 1e-12 {
				t.Fatalf("hypothesis %d: %v and %v", h, x, b.Prob()[h])
			}
		}
		if math.Abs(a.LogEvidence()-b.LogEvidence()) > 1e-12*max(1, math.Abs(a.LogEvidence())) {
			t.Fatalf("evidence %v and %v", a.LogEvidence(), b.LogEvidence())
		}
	})
}

// An answer that all classes give alike, or none at all, changes nothing.
func TestUninformative(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, p := drawn(t)
		b := infer.New(faultless(p))
		for range 4 {
			feed(b, randomEvent(r, p))
		}
		was := append([]float64(nil), b.Prob()...)
		e := randomEvent(r, p)
		for e.Check < 0 {
			e = randomEvent(r, p)
		}
		// A check not asked yet has no memory of a spoiled answer.
		if b.Outcome(e.Check) >= 0 {
			return
		}
		for k := range e.Parts {
			e.Parts[k] = measure.Parts{measure.Stray: 0.25}
		}
		feed(b, e)
		for h, x := range b.Prob() {
			if math.Abs(x-was[h]) > 1e-12 {
				t.Fatalf("hypothesis %d: %v was %v", h, x, was[h])
			}
		}
	})
}

// On average over its outcomes a check changes nothing: the expected posterior is the prior.
func TestExpectedPosterior(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, p := drawn(t)
		b := infer.New(p)
		for range 3 {
			feed(b, randomEvent(r, p))
		}
		c := r.IntN(len(p.Checks))
		if b.Outcome(c) >= 0 {
			return
		}
		was := append([]float64(nil), b.Prob()...)
		mean := make([]float64, len(was))
		total := 0.0
		for o := range p.Checks[c].Bins[0] {
			chance := b.Chance(c, o)
			total += chance
			if err := b.Observe(discrete(p, c, o)); err != nil {
				t.Fatal(err)
			}
			for h, x := range b.Prob() {
				mean[h] += chance * x
			}
			b.Undo()
		}
		if math.Abs(total-1) > 1e-12 {
			t.Fatalf("outcomes sum to %v", total)
		}
		for h := range mean {
			if math.Abs(mean[h]-was[h]) > 1e-11 {
				t.Fatalf("hypothesis %d: %v on average, was %v", h, mean[h], was[h])
			}
		}
	})
}

// Asking a check without blunders again and getting the same steady answer adds nothing: repeating is not free certainty.
func TestRepeatingAddsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, p := drawn(t)
		b := infer.New(faultless(p))
		c := r.IntN(len(p.Checks))
		a := discrete(p, c, 0)
		if err := b.Observe(a); err != nil {
			t.Fatal(err)
		}
		was := append([]float64(nil), b.Prob()...)
		a.Again, a.Steady = 1, 1
		if err := b.Observe(a); err != nil {
			t.Fatal(err)
		}
		for h, x := range b.Prob() {
			if math.Abs(x-was[h]) > 1e-12 {
				t.Fatalf("hypothesis %d: %v was %v", h, x, was[h])
			}
		}
	})
}

// A fault split into two that nothing tells apart keeps its probability together.
func TestSplit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, p := drawn(t)
		h := r.IntN(len(p.Hyps) - 2)
		q := *p
		q.Hyps = append([]infer.Hyp(nil), p.Hyps...)
		share := rapid.Float64Range(0.1, 0.9).Draw(t, "share")
		twin := q.Hyps[h]
		twin.Prior *= share
		q.Hyps[h].Prior *= 1 - share
		q.Hyps = append(q.Hyps, twin)
		if err := q.Prepare(); err != nil {
			t.Fatal(err)
		}
		a, b := infer.New(p), infer.New(&q)
		for range 6 {
			e := randomEvent(r, p)
			feed(a, e)
			feed(b, e)
		}
		if x, y := a.Prob()[h], b.Prob()[h]+b.Prob()[len(q.Hyps)-1]; math.Abs(x-y) > 1e-12 {
			t.Fatalf("%v alone, %v together", x, y)
		}
	})
}

// Repeat rule: "zero" is seen by .94 of the absent and by .03 of the present. One reading weighs 31; two independent ones 980; two that
// share a cause half of the time, 57.
func TestPersistence(t *testing.T) {
	p := &infer.Problem{Worlds: 2, Groups: 1, Hyps: []infer.Hyp{{Prior: .5, Groups: []int{0}, Phases: []infer.Phase{{World: 0, P: 1}}},
		{Prior: .5, Sort: infer.Nothing, Phases: []infer.Phase{{World: 1, P: 1}}}},
		Checks: []infer.Check{{ID: "zero", Class: []uint8{0, 1}, Bins: [][]float64{{.94, .06}, {.03, .97}}}}}
	if err := p.Prepare(); err != nil {
		t.Fatal(err)
	}
	ratio := func(again float64, n int) float64 {
		b := infer.New(p)
		for range n {
			// Slip is the cause that works again half of the time.
			a := infer.Answer{Parts: []measure.Parts{{measure.Sound: .94}, {measure.Slip: .03}}, Again: again}
			if err := b.Observe(a); err != nil {
				t.Fatal(err)
			}
		}
		return b.Prob()[0] / b.Prob()[1]
	}
	if measure.Persists[measure.Slip] != 0.5 {
		t.Skip("the vector wants a cause that persists with one half")
	}
	near(t, "one", ratio(0, 1), 31.3, 0.1)
	near(t, "two that share a cause half of the time", ratio(1, 2), 57.2, 0.1)
	// Two independent ones: nothing persists in a cause that was sound.
	b := infer.New(p)
	for range 2 {
		if err := b.Observe(discrete(p, 0, 0)); err != nil {
			t.Fatal(err)
		}
	}
	near(t, "two independent", b.Prob()[0]/b.Prob()[1], 982, 1)
}

// A pass of an intermittent fault that is active half of the time must not clear it (likelihood ratio .515, .806 for a fifth).
func TestIntermittent(t *testing.T) {
	for active, want := range map[float64]float64{1: .031, .5: .515, .2: .806} {
		hyps, worlds, err := infer.Enumerate([]infer.Mode{{Rate: 1, Group: 0, Active: active}}, infer.Base{Nothing: .5, Unknown: .01}, nil)
		if err != nil {
			t.Fatal(err)
		}
		p := &infer.Problem{Worlds: len(worlds.Sets), Groups: 1, Hyps: hyps, Checks: []infer.Check{{ID: "c",
			Class: []uint8{0, 1, infer.Broad, infer.Broad}, Bins: [][]float64{{.97, .03}, {.03, .97}}}}}
		if err := p.Prepare(); err != nil {
			t.Fatal(err)
		}
		b := infer.New(p)
		was := b.Prob()[1] / b.Prob()[0]
		if err := b.Observe(discrete(p, 0, 0)); err != nil {
			t.Fatal(err)
		}
		near(t, "ratio of a pass", b.Prob()[1]/b.Prob()[0]/was, want, 6e-4)
	}
}
