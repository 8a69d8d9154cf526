package plan

import (
	"math"
	"slices"

	"readback/core/infer"
)

// Limits bound a search by counts, so that the same question always gets the same answer.
type Limits struct {
	Hyps   int     // hypotheses of the small model
	Mass   float64 // share of the probability it must hold, if Hyps allows
	Scored int     // checks, by information per cost, whose one-step expected cost is worked out
	Tests  int     // checks looked at beyond one step, at most 64
	Root   int     // actions compared by following the policy to the end
	Steps  int     // look-ahead of that policy
	Nodes  int     // evaluations of the repair-only plan in one decision
	Branch float64 // branches with less than this share of the mass are closed with the repair-only value
}

// Full and Quick are the limits of a considered decision and of one that must come at once. Exhaustive is for small models.
var (
	Full       = Limits{Hyps: 192, Mass: 0.995, Scored: 32, Tests: 10, Root: 4, Steps: 1, Nodes: 6000, Branch: 0.02}
	Quick      = Limits{Hyps: 192, Mass: 0.995, Scored: 48, Steps: 1, Nodes: 2000, Branch: 0.1}
	Exhaustive = Limits{Hyps: 4096, Mass: 1, Scored: 64, Tests: 64, Root: 64, Steps: 2, Nodes: math.MaxInt, Branch: 1e-9}
)

// selectHyps fills p.hyps with the likeliest hypotheses that hold the share of the mass. It cuts by
// probability in halves: all within one halving are taken together while the room lasts.
func (p *Planner) selectHyps(prob []float64) {
	var count [64]int
	var mass [64]float64
	for _, x := range prob {
		k := halvings(x)
		count[k]++
		mass[k] += x
	}
	keep, n, sum := 0, 0, 0.0
	for k := range count {
		if n > 0 && (sum >= p.Limits.Mass || n+count[k] > p.Limits.Hyps) {
			break
		}
		keep, n, sum = k, n+count[k], sum+mass[k]
	}
	p.hyps = p.hyps[:0]
	for h, x := range prob {
		if x > 0 && halvings(x) <= keep && len(p.hyps) < cap(p.hyps) {
			p.hyps = append(p.hyps, int32(h))
		}
	}
	// Fill what room is left from the next halving, in order.
	if sum < p.Limits.Mass && keep+1 < len(count) {
		for h, x := range prob {
			if x > 0 && halvings(x) == keep+1 && len(p.hyps) < min(cap(p.hyps), p.Limits.Hyps) {
				p.hyps = append(p.hyps, int32(h))
			}
		}
	}
	// Those of one repair first, each part in ascending order.
	slices.SortFunc(p.hyps, func(a, b int32) int {
		if x, y := p.several(a), p.several(b); x != y {
			return x - y
		}
		return int(a - b)
	})
}

// several is 1 for a hypothesis that needs more than one repair, else 0.
func (p *Planner) several(h int32) int {
	if p.needs[h][1] >= 0 {
		return 1
	}
	return 0
}

func halvings(x float64) int {
	if x <= 0 {
		return 63
	}
	_, e := math.Frexp(x)
	return min(63, max(0, -e))
}

// setFrame builds the small model of a belief given by the probability of each hypothesis, without tests. Faults that a tried
// repair would have ended are out.
func (p *Planner) setFrame(b *infer.Belief, prob []float64, tried []bool) {
	f := &p.frame
	prob = p.left(prob, tried)
	p.selectHyps(prob)
	b.Focus(p.hyps)
	f.n = len(p.hyps)
	f.root = f.root[:f.n]
	f.needs = f.needs[:0]
	f.singles = 0
	for i, h := range p.hyps {
		f.root[i] = prob[h]
		f.needs = append(f.needs, p.needs[h])
		if f.needs[i][1] < 0 {
			f.singles = i + 1
		}
	}
	if sum := total(f.root); sum > 0 {
		for i := range f.root {
			f.root[i] /= sum
		}
	}
	f.repair, f.perCost, f.call, f.pr = p.prices.repair, p.prices.perCost, p.prices.call, &p.prices
	f.limits = p.Limits
	f.nodes, f.depth = 0, 0
	f.tests = f.tests[:0]
	f.cut = p.Limits.Branch
	f.memo.reset(1 << 14)
}

// needs are the decisions that end a hypothesis, those that were done left out. A fault without a repair of its own is handed over
// like an unknown one; when everything it needed was done, nothing is wrong any more.
func needs(h *infer.Hyp, groups int, done []bool) [3]int16 {
	out := [3]int16{-1, -1, -1}
	switch {
	case h.Sort == infer.Nothing:
		out[0] = int16(groups)
		return out
	case len(h.Groups) == 0 || h.Sort != infer.Known:
		out[0] = int16(groups + 1)
		return out
	}
	n := 0
	for _, g := range h.Groups[:min(3, len(h.Groups))] {
		if !done[g] {
			out[n] = int16(g)
			n++
		}
	}
	if n == 0 {
		out[0] = int16(groups)
	}
	return out
}

// mended brings the needs up to date with the repairs that the belief was told of.
func (p *Planner) mended(b *infer.Belief) {
	same := true
	for g := range p.done {
		same = same && p.done[g] == b.Mended(g)
		p.done[g] = b.Mended(g)
	}
	if same {
		return
	}
	for h := range p.needs {
		p.needs[h] = needs(&p.task.Problem.Hyps[h], p.task.Problem.Groups, p.done)
	}
}

// addTest puts a check of the problem into the frame and returns its index there.
func (p *Planner) addTest(b *infer.Belief, check int, extra float64) int {
	f := &p.frame
	t := len(f.tests)
	f.tests = f.tests[:t+1]
	ts := &f.tests[t]
	ts.id, ts.check = check, &p.task.Checks[check]
	ts.cost = p.prices.check[check] + extra
	ts.outcomes = len(p.task.Problem.Checks[check].Bins[0])
	need := ts.outcomes * f.n
	if cap(ts.like) < need {
		ts.like = make([]float64, max(need, ts.outcomes*cap(f.root)))
	}
	ts.like = ts.like[:need]
	b.Outcomes(check, ts.like)
	return t
}

// ended tells whether the repairs tried so far would have ended a fault.
func ended(needs [3]int16, tried []bool) bool {
	for _, d := range needs {
		if d >= 0 && !isTried(tried, d) {
			return false
		}
	}
	return true
}

// isTried tells whether a decision was tried; explaining and handing over are no repairs.
func isTried(tried []bool, d int16) bool { return int(d) < len(tried) && tried[d] }
