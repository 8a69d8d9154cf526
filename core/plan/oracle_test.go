package plan_test

import (
	"fmt"
	"math"

	"readback/core/infer"
	"readback/core/plan"
)

// optimum is the exact least expected cost of a task of single faults, each test asked at most once, by dynamic programming over
// (repairs done, outcome of each test so far). It shares nothing with the planner.
func optimum(t *plan.Task) float64 {
	p := t.Problem
	memo := map[string]float64{}
	out := make([]byte, len(p.Checks)) // 0: not asked, else outcome + 1
	done := 0
	var value func(w []float64) float64
	value = func(w []float64) float64 {
		mass := 0.0
		for _, x := range w {
			mass += x
		}
		if mass <= 0 {
			return 0
		}
		key := fmt.Sprint(done, out)
		if v, ok := memo[key]; ok {
			return v
		}
		best := math.Inf(1)
		for f := range w {
			if w[f] <= 0 {
				continue
			}
			next := append([]float64(nil), w...)
			next[f] = 0
			done |= 1 << f
			best = min(best, mass*t.Repairs[f].Money+value(next))
			done &^= 1 << f
		}
		for c := range p.Checks {
			if out[c] != 0 {
				continue
			}
			v := mass * t.Checks[c].Money
			for o := range p.Checks[c].Bins[0] {
				next := make([]float64, len(w))
				for f := range w {
					next[f] = w[f] * p.Chance(c, f, o)
				}
				out[c] = byte(o + 1)
				v += value(next)
				out[c] = 0
			}
			best = min(best, v)
		}
		memo[key] = best
		return best
	}
	w := make([]float64, len(p.Hyps))
	for i, h := range p.Hyps {
		w[i] = h.Prior
	}
	return value(w)
}

// play is the expected cost of really following the planner from a belief on, over every answer and every failed repair. A repair
// that does not help is evidence: the belief goes on without that fault.
func play(p *plan.Planner, b *infer.Belief, s plan.Situation) float64 {
	task := p.Task()
	alive := 0.0
	for h, x := range b.Prob() {
		if !s.Tried[task.Problem.Hyps[h].Groups[0]] {
			alive += x
		}
	}
	if alive < 1e-15 {
		return 0
	}
	d := p.Next(b, s)
	if d.Kind == plan.Verdict {
		g := d.Group
		v := task.Repairs[g].Money
		ns := s
		ns.Tried = append([]bool(nil), s.Tried...)
		ns.Tried[g] = true
		left := 0.0
		for h, x := range b.Prob() {
			if !ns.Tried[task.Problem.Hyps[h].Groups[0]] {
				left += x
			}
		}
		if left/alive > 1e-15 {
			v += left / alive * play(p, b, ns)
		}
		return v
	}
	v := task.Checks[d.Check].Money
	c := d.Check
	for o := range task.Problem.Checks[c].Bins[0] {
		chance := 0.0
		for h, x := range b.Prob() {
			if hyp := task.Problem.Hyps[h]; !s.Tried[hyp.Groups[0]] {
				chance += x * task.Problem.Chance(c, hyp.Phases[0].World, o)
			}
		}
		a := infer.Answer{Check: c, Bin: o}
		for _, row := range task.Problem.Checks[c].Bins {
			a.Parts = append(a.Parts, [5]float64{row[o]})
		}
		if b.Observe(a) != nil {
			continue
		}
		v += chance / alive * play(p, b, s)
		b.Undo()
	}
	return v
}
