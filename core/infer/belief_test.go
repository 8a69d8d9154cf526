package infer_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"readback/core/infer"
	"readback/core/measure"
)

// worst compares the belief with the exact oracle and returns the largest error of a probability and of the log evidence.
func worst(p *infer.Problem, b *infer.Belief, events []event) float64 {
	post, evidence := exact(p, events)
	err := 0.0
	for h, x := range post {
		want, _ := x.Float64()
		err = max(err, math.Abs(b.Prob()[h]-want))
	}
	z, _ := evidence.Float64()
	return max(err, math.Abs(b.LogEvidence()-math.Log(z)))
}

func TestAgainstRationals(t *testing.T) {
	for seed := range uint64(12) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := randomProblem(r)
		b := infer.New(p)
		var events []event
		for range r.IntN(8) {
			e := randomEvent(r, p)
			events = append(events, e)
			feed(b, e)
		}
		if err := worst(p, b, events); !(err <= 1e-12) {
			t.Errorf("seed %d: off by %g after %d answers", seed, err, len(events))
		}
	}
}

func TestUndoIsExact(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 2))
	for range 20 {
		p := randomProblem(r)
		b := infer.New(p)
		var states [][]float64
		var logs []float64
		for range 12 {
			states = append(states, append([]float64(nil), b.Prob()...))
			logs = append(logs, b.LogEvidence())
			feed(b, randomEvent(r, p))
		}
		for i := len(states) - 1; i >= 0; i-- {
			b.Undo()
			for h, want := range states[i] {
				if b.Prob()[h] != want || b.LogEvidence() != logs[i] {
					t.Fatalf("after undo to %d answers: hypothesis %d has %v, had %v", i, h, b.Prob()[h], want)
				}
			}
		}
	}
}

// Many contradicting answers push every hypothesis below the smallest float64; the logs must bring it back.
func TestNoUnderflow(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	p := randomProblem(r)
	b := infer.New(p)
	var events []event
	for i := range 400 {
		e := randomEvent(r, p)
		for e.Parts == nil {
			e = randomEvent(r, p)
		}
		for k := range e.Parts {
			x := 1e-9
			if k == i%len(e.Parts) {
				x = 1
			}
			e.Parts[k] = [5]float64{x}
		}
		e.Again, e.Steady = 0, 0
		events = append(events, e)
		feed(b, e)
	}
	c := infer.New(p)
	for i := range events {
		feed(c, events[len(events)-1-i])
	}
	for h, x := range b.Prob() {
		if !(math.Abs(x-c.Prob()[h]) < 1e-9) {
			t.Errorf("hypothesis %d: %g forwards, %g backwards", h, x, c.Prob()[h])
		}
	}
}

func TestImpossibleAnswer(t *testing.T) {
	p := &infer.Problem{Worlds: 1, Hyps: []infer.Hyp{{Prior: 1, Phases: []infer.Phase{{World: 0, P: 1}}}},
		Checks: []infer.Check{{ID: "c", Class: []uint8{0}, Bins: [][]float64{{1, 0}}}}}
	if err := p.Prepare(); err != nil {
		t.Fatal(err)
	}
	b := infer.New(p)
	if err := b.Observe(discrete(p, 0, 1)); err != infer.ErrImpossible {
		t.Errorf("an impossible answer: %v", err)
	}
	if b.Len() != 0 || b.Prob()[0] != 1 {
		t.Error("an impossible answer left a trace")
	}
}

// discrete is the answer "outcome o", its likelihood and its causes taken from the planning outcomes.
func discrete(p *infer.Problem, check, o int) infer.Answer {
	a := infer.Answer{Check: check, Bin: o}
	c := &p.Checks[check]
	for k, row := range c.Bins {
		parts := measure.Parts{measure.Sound: row[o]}
		if c.Spoilt != nil {
			parts[measure.Stray] = c.Spoilt[k][o]
			parts[measure.Sound] -= c.Spoilt[k][o]
		}
		a.Parts = append(a.Parts, parts)
	}
	return a
}

// Leaving an answer out must give what never having had it gives.
func TestWithout(t *testing.T) {
	for seed := range uint64(100) {
		r := rand.New(rand.NewPCG(seed, 5))
		p := randomProblem(r)
		var events []event
		for range 1 + r.IntN(8) {
			e := randomEvent(r, p)
			for i := range events { // one answer a check, so that no chain of causes breaks
				if e.Check >= 0 && events[i].Check == e.Check {
					e = event{Check: -1}
				}
			}
			events = append(events, e)
		}
		b := infer.New(p)
		for _, e := range events {
			feed(b, e)
		}
		got := make([]float64, len(p.Hyps))
		for skip := range p.Checks {
			b.Without(skip, got)
			c := infer.New(p)
			for _, e := range events {
				if e.Check != skip {
					feed(c, e)
				}
			}
			for h, want := range c.Prob() {
				if !(math.Abs(got[h]-want) < 1e-12) {
					t.Fatalf("seed %d, without check %d: hypothesis %d has %g, want %g", seed, skip, h, got[h], want)
				}
			}
		}
	}
}
