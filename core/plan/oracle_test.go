package plan_test

import (
	"math"
	"math/rand/v2"

	"readback/core/infer"
	"readback/core/plan"
)

// optimum is the exact least expected cost of a task of single faults, each test asked at most once, by dynamic programming over
// (repairs done, outcome of each test so far). It shares nothing with the planner.
func optimum(t *plan.Task) float64 {
	p := t.Problem
	n := len(p.Hyps)
	states := 1 << n
	weight := make([]int, len(p.Checks)) // the place of each test in a state's number
	for c := range p.Checks {
		weight[c] = states
		states *= 1 + len(p.Checks[c].Bins[0])
	}
	memo := make([]float64, states) // 0: not known yet; no state with mass costs nothing
	asked := make([]bool, len(p.Checks))
	like := make([][][]float64, len(p.Checks)) // per test, outcome and fault
	for c := range like {
		like[c] = make([][]float64, len(p.Checks[c].Bins[0]))
		for o := range like[c] {
			for f := range n {
				like[c][o] = append(like[c][o], p.Chance(c, f, o))
			}
		}
	}
	room := make([][]float64, n+len(p.Checks)+1) // one belief per depth
	for i := range room {
		room[i] = make([]float64, n)
	}
	var value func(state, depth int, w []float64) float64
	value = func(state, depth int, w []float64) float64 {
		mass := 0.0
		for _, x := range w {
			mass += x
		}
		if mass <= 0 {
			return 0
		}
		if memo[state] != 0 {
			return memo[state]
		}
		best := math.Inf(1)
		next := room[depth]
		for f := range w {
			if w[f] > 0 {
				copy(next, w)
				next[f] = 0
				best = min(best, mass*t.Repairs[f].Money+value(state|1<<f, depth+1, next))
			}
		}
		for c := range like {
			if asked[c] {
				continue
			}
			asked[c] = true
			v := mass * t.Checks[c].Money
			for o, row := range like[c] {
				for f, x := range w {
					next[f] = x * row[f]
				}
				v += value(state+(o+1)*weight[c], depth+1, next)
			}
			asked[c] = false
			best = min(best, v)
		}
		memo[state] = best
		return best
	}
	w := make([]float64, n)
	for i, h := range p.Hyps {
		w[i] = h.Prior
	}
	return value(0, 0, w)
}

// regimes are the four kinds of random small models: six faults by six tests, log-normal priors, repairs of about 20, tests of about
// 2.5; except in the first, the last fault is an unknown one of 0.05 that costs 80 and that no test sees.
var regimes = []string{"deterministic", "chain, 2 % noise", "random, 2 % noise", "random, 10 % noise"}

func randomTask(r *rand.Rand, regime, n, m int) *plan.Task {
	noise := []float64{0, 0.02, 0.02, 0.10}[regime]
	prior, repair := make([]float64, n), make([]float64, n)
	sum := 0.0
	known := n
	if regime > 0 {
		known--
	}
	for f := range known {
		prior[f] = math.Exp(r.NormFloat64())
		repair[f] = 20 * math.Exp(0.5*r.NormFloat64())
		sum += prior[f]
	}
	for f := range known {
		prior[f] /= sum
		if regime > 0 {
			prior[f] *= 0.95
		}
	}
	if regime > 0 {
		prior[known], repair[known] = 0.05, 80
	}
	cost := make([]float64, m)
	hits := make([][]float64, m)
	for t := range hits {
		cost[t] = 2.5 * math.Exp(0.5*r.NormFloat64())
		hits[t] = make([]float64, n)
		for f := range known {
			on := r.IntN(2) == 0
			if regime == 1 {
				on = f*m <= t*known // everything up to here
			}
			hits[t][f] = noise
			if on {
				hits[t][f] = 1 - noise
			}
		}
		if regime > 0 {
			hits[t][known] = 0.5
		}
	}
	return binary(prior, repair, cost, hits)
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
