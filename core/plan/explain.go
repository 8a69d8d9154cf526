package plan

import (
	"math"
	"slices"

	"readback/core/infer"
)

// Branch is one outcome of a check and what it would lead to.
type Branch struct {
	Check   int
	Outcome int
	P       float64 // chance of the outcome
	Lead    Suspect // leading suspect after it
}

// Reasons explain a decision in numbers; the words are the caller's.
type Reasons struct {
	Branches []Branch   // of the decision's check: what each outcome would say
	Apart    [2]Suspect // of the decision's check: the two likeliest suspects it separates best, as they stand now
	Rejected *Candidate // the best check that was not chosen
	Net      float64    // what the rejected check would save (below 0: cost) against stopping now
	Same     float64    // probability that the leading suspect will still lead after the checks that could still change it
	Left     float64    // expected cost of what is left to do
	Change   *Branch    // the likeliest single outcome that would change the leading suspect, nil when there is none
}

// sameChecks is how many of the remaining checks the same-decision probability looks through together.
const sameChecks = 4

// Explain works out the reasons of a decision just made by Next, with the same belief and situation.
func (p *Planner) Explain(b *infer.Belief, s Situation, d Decision) Reasons {
	var r Reasons
	p.suspects(b, s.Tried)
	st := p.begin(b, &s)
	p.score(b, &s, st)
	f := &p.frame
	base, _ := f.repairOnly(f.root, &st)
	r.Left = d.Expect
	for i := range p.open {
		c := &p.open[i]
		if c.Check != d.Check && !math.IsInf(c.Expect, 1) && (r.Rejected == nil || c.Expect < r.Rejected.Expect) {
			x := *c
			r.Rejected, r.Net = &x, base-c.Expect
		}
	}
	if d.Check >= 0 {
		f.tests = f.tests[:0]
		t := p.addTest(b, d.Check, 0)
		for o := range f.tests[t].outcomes {
			mass, lead := p.branch(t, o)
			if mass > 0 {
				r.Branches = append(r.Branches, Branch{d.Check, o, mass, lead})
			}
		}
		r.Apart = p.apart(t)
	}
	r.Same, r.Change = p.same(b)
	return r
}

// branch is the chance of an outcome of a test of the frame and the leading suspect after it.
func (p *Planner) branch(t, o int) (float64, Suspect) {
	f := &p.frame
	w := f.push()
	defer f.pop()
	like := f.tests[t].like[o*f.n : (o+1)*f.n]
	for h, x := range f.root {
		w[h] = x * like[h]
	}
	return p.leadOf(w)
}

// leadOf is the mass of a belief and its leading suspect.
func (p *Planner) leadOf(w []float64) (float64, Suspect) {
	need := p.groupOf
	clear(need)
	mass := 0.0
	for h, x := range w {
		mass += x
		for _, d := range p.frame.needs[h] {
			if d >= 0 {
				need[d] += x
			}
		}
	}
	best := Suspect{Group: -1}
	for g, x := range need {
		if x > best.P {
			best = Suspect{g, x}
		}
	}
	if mass > 0 {
		best.P /= mass
	}
	return mass, best
}

// apart returns the two suspects, both likely and told apart by the test: the most of P(a)·P(b)·distance of their outcome laws.
func (p *Planner) apart(t int) [2]Suspect {
	f := &p.frame
	ts := &f.tests[t]
	top := p.sus[:min(len(p.sus), 8)]
	law := make([][]float64, len(top))
	for i, s := range top {
		law[i] = make([]float64, ts.outcomes)
		mass := 0.0
		for h, x := range f.root {
			if hasNeed(f.needs[h], s.Group) {
				mass += x
				for o := range law[i] {
					law[i][o] += x * ts.like[o*f.n+h]
				}
			}
		}
		for o := range law[i] {
			if mass > 0 {
				law[i][o] /= mass
			}
		}
	}
	var best [2]Suspect
	most := -1.0
	for i := range top {
		for j := range i {
			d := 0.0
			for o := range law[i] {
				d += max(0, law[i][o]-law[j][o])
			}
			if v := d * top[i].P * top[j].P; v > most {
				best, most = [2]Suspect{top[j], top[i]}, v
			}
		}
	}
	return best
}

// same is the same-decision probability (Darwiche & Choi 2010) over the remaining checks that could most easily change the lead,
// and the likeliest single outcome that would change it.
func (p *Planner) same(b *infer.Belief) (float64, *Branch) {
	f := &p.frame
	_, lead := p.leadOf(f.root)
	type flip struct {
		check int
		p     float64
	}
	var flips []flip
	var change *Branch
	for i := range p.open {
		if p.open[i].Bits < 1e-6 {
			continue
		}
		f.tests = f.tests[:0]
		t := p.addTest(b, p.open[i].Check, 0)
		sum := 0.0
		for o := range f.tests[t].outcomes {
			mass, after := p.branch(t, o)
			if mass > 0 && after.Group != lead.Group {
				sum += mass
				if change == nil || mass > change.P {
					change = &Branch{p.open[i].Check, o, mass, after}
				}
			}
		}
		flips = append(flips, flip{p.open[i].Check, sum + 1e-3*p.open[i].Bits})
	}
	slices.SortStableFunc(flips, func(a, b flip) int {
		switch {
		case a.p > b.p:
			return -1
		case a.p < b.p:
			return 1
		}
		return 0
	})
	f.tests = f.tests[:0]
	for _, x := range flips[:min(len(flips), sameChecks)] {
		p.addTest(b, x.check, 0)
	}
	var walk func(t int, w []float64) float64
	walk = func(t int, w []float64) float64 {
		if t == len(f.tests) {
			mass, after := p.leadOf(w)
			if after.Group != lead.Group {
				return 0
			}
			return mass
		}
		sum := 0.0
		for o := range f.tests[t].outcomes {
			next := f.push()
			like := f.tests[t].like[o*f.n : (o+1)*f.n]
			for h, x := range w {
				next[h] = x * like[h]
			}
			sum += walk(t+1, next)
			f.pop()
		}
		return sum
	}
	return walk(0, f.root), change
}
