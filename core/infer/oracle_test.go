package infer_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"

	"readback/core/infer"
	"readback/core/measure"
)

// The slow exact oracle: the same model in rational numbers, with every path of causes and every draw of activity written out.
// A float64 is a rational number, so the oracle and the fast code start from the same figures.

func rat(x float64) *big.Rat { return new(big.Rat).SetFloat64(x) }

func sum(xs ...*big.Rat) *big.Rat {
	s := new(big.Rat)
	for _, x := range xs {
		s.Add(s, x)
	}
	return s
}

func prod(xs ...*big.Rat) *big.Rat {
	s := big.NewRat(1, 1)
	for _, x := range xs {
		s.Mul(s, x)
	}
	return s
}

// event is an answer, a new power cycle when Check is -1,
// or a repair of group Bin when Check is -2.
type event = infer.Answer

// exact returns the posterior of each hypothesis and the probability of all answers.
func exact(p *infer.Problem, events []event) (post []*big.Rat, evidence *big.Rat) {
	evidence = new(big.Rat)
	for range p.Hyps {
		post = append(post, new(big.Rat))
	}
	for _, habit := range p.Habits {
		for h, w := range joint(p, events, habit) {
			post[h].Add(post[h], w)
			evidence.Add(evidence, w)
		}
	}
	for _, w := range post {
		w.Quo(w, evidence)
	}
	return post, evidence
}

// spoilt is an answer as a person gives it whose odds of a blunder are so many times the usual ones.
func spoilt(p *infer.Problem, e event, k int, habit infer.Habit) [measure.Causes]*big.Rat {
	norm := big.NewRat(1, 1)
	if rows := p.Checks[e.Check].Spoilt; rows != nil {
		r := 0.0 // a float64 sum, as the engine has it: the oracle takes the same figures
		for _, x := range rows[k] {
			r += x
		}
		norm.Add(norm, prod(new(big.Rat).Sub(rat(habit.Odds), rat(1)), rat(r)))
	}
	var out [measure.Causes]*big.Rat
	for c := range out {
		out[c] = rat(e.Parts[k][c])
		if p.Checks[e.Check].Spoilt == nil {
			continue
		}
		if measure.Cause(c) != measure.Sound {
			out[c].Mul(out[c], rat(habit.Odds))
		}
		out[c].Quo(out[c], norm)
	}
	return out
}

// joint returns the probability of each hypothesis, one kind of person, and all answers.
func joint(p *infer.Problem, events []event, habit infer.Habit) (post []*big.Rat) {
	// Likelihood of each entry per class: the paths up to it over the paths before it.
	like := make([][]*big.Rat, len(events))
	for i, e := range events {
		if e.Check < 0 || e.Parts == nil {
			continue
		}
		n := len(p.Checks[e.Check].Bins)
		var chain []event
		for _, f := range events[:i+1] {
			switch {
			case f.Check == -2: // a repair: answers start anew
				chain = nil
			case f.Check == e.Check && f.Parts != nil:
				chain = append(chain, f)
			}
		}
		for k := range n {
			l := paths(p, chain, k, habit)
			if len(chain) > 1 {
				if d := paths(p, chain[:len(chain)-1], k, habit); d.Sign() != 0 {
					l.Quo(l, d)
				}
			}
			like[i] = append(like[i], l)
		}
		like[i] = append(like[i], broad(p, e.Check, like[i]))
	}
	of := func(i, world int) *big.Rat {
		for _, e := range events[:i] {
			if e.Check == -2 {
				world = int(p.After(int32(world), e.Bin))
			}
		}
		k := int(p.Checks[events[i].Check].Class[world])
		return like[i][min(k, len(like[i])-1)]
	}
	for _, h := range p.Hyps {
		w := prod(rat(h.Prior), rat(habit.P))
		for from := 0; from <= len(events); {
			to := from
			for to < len(events) && events[to].Check != -1 {
				to++
			}
			cycle := new(big.Rat)
			for _, ph := range h.Phases {
				x := rat(ph.P)
				for i := from; i < to; i++ {
					if like[i] != nil { // neither silence nor a repair
						x.Mul(x, of(i, ph.World))
					}
				}
				cycle.Add(cycle, x)
			}
			w.Mul(w, cycle)
			from = to + 1
		}
		post = append(post, w)
	}
	return post
}

// paths is the probability of a chain of answers to one check, given class k: the sum over all sequences of causes.
func paths(p *infer.Problem, chain []event, k int, habit infer.Habit) *big.Rat {
	total := new(big.Rat)
	var parts [][measure.Causes]*big.Rat
	for _, e := range chain {
		parts = append(parts, spoilt(p, e, k, habit))
	}
	var walk func(i int, last measure.Cause, p *big.Rat)
	walk = func(i int, last measure.Cause, p *big.Rat) {
		if i == len(chain) {
			total.Add(total, p)
			return
		}
		for c := range measure.Causes {
			fresh := parts[i][c]
			if i == 0 {
				walk(1, c, prod(p, fresh))
				continue
			}
			stay := rat(measure.Persists[last])
			step := prod(sum(rat(1), new(big.Rat).Neg(stay)), fresh)
			if c == last && c != measure.Sound {
				step = sum(step, prod(stay, rat(chain[i].Again)))
			}
			if c == last && c == measure.Sound && chain[i].Steady > 0 {
				step = rat(chain[i].Steady)
			}
			walk(i+1, c, prod(p, step))
		}
	}
	walk(0, measure.Sound, rat(1))
	return total
}

// broad is the likelihood of a world that predicts any class as often as the hypotheses do, three parts in ten even.
func broad(p *infer.Problem, check int, like []*big.Rat) *big.Rat {
	n := int64(len(like))
	mass := make([]*big.Rat, n)
	for i := range mass {
		mass[i] = new(big.Rat)
	}
	for _, h := range p.Hyps {
		for _, ph := range h.Phases {
			if k := p.Checks[check].Class[ph.World]; k != infer.Broad {
				mass[k].Add(mass[k], prod(rat(h.Prior), rat(ph.P)))
			}
		}
	}
	total := sum(mass...)
	out := new(big.Rat)
	for k, l := range like {
		share := sum(prod(big.NewRat(7, 10), new(big.Rat).Quo(mass[k], total)), big.NewRat(3, 10*n))
		out.Add(out, prod(share, l))
	}
	return out
}

// randomProblem has up to 6 modes, with pairs, unknown and residual, some modes intermittent, up to 6 checks with up to 4 classes, and
// up to 3 kinds of persons.
func randomProblem(r *rand.Rand) *infer.Problem {
	n := 1 + r.IntN(6)
	modes := make([]infer.Mode, n)
	for i := range modes {
		modes[i] = infer.Mode{Rate: 0.1 + r.Float64(), Part: i / 2, Group: i - r.IntN(2)*min(i, 1), Active: 1}
		if r.IntN(4) == 0 {
			modes[i].Active = 0.1 + 0.8*r.Float64()
		}
	}
	base := infer.UsualBase
	base.Second = 0.2
	hyps, worlds, err := infer.Enumerate(modes, base, nil)
	if err != nil {
		panic(err)
	}
	p := &infer.Problem{Worlds: len(worlds.Sets), Groups: n, Hyps: hyps, After: worlds.After(modes)}
	for c := range 1 + r.IntN(6) {
		k, outcomes := 1+r.IntN(4), 2+r.IntN(3)
		check := infer.Check{ID: fmt.Sprint("c", c)}
		for range len(worlds.Sets) - 2 {
			check.Class = append(check.Class, uint8(r.IntN(k)))
		}
		check.Class = append(check.Class, infer.Broad, infer.Broad)
		for range k {
			row := make([]float64, outcomes)
			total := 0.0
			for o := range row {
				row[o] = 0.01 + r.Float64()*r.Float64()
				total += row[o]
			}
			for o := range row {
				row[o] /= total
			}
			check.Bins = append(check.Bins, row)
			if c%4 != 3 {
				slips := make([]float64, outcomes)
				for o := range slips {
					slips[o] = row[o] * r.Float64() * r.Float64()
				}
				check.Spoilt = append(check.Spoilt, slips)
			}
		}
		p.Checks = append(p.Checks, check)
	}
	p.Habits = [][]infer.Habit{nil, infer.UsualHabits, {{P: 0.25, Odds: 4}, {P: 0.75, Odds: 0.5}}}[r.IntN(3)]
	if err := p.Prepare(); err != nil {
		panic(err)
	}
	return p
}

// randomEvent is an answer with random causes, a silence, or a power cycle.
func randomEvent(r *rand.Rand, p *infer.Problem) event {
	switch r.IntN(8) {
	case 0:
		return event{Check: -1}
	case 1:
		return event{Check: -2, Bin: r.IntN(p.Groups)}
	}
	c := r.IntN(len(p.Checks))
	e := event{Check: c, Bin: r.IntN(len(p.Checks[c].Bins[0]))}
	if r.IntN(6) == 0 {
		return e
	}
	for range p.Checks[c].Bins {
		var parts measure.Parts
		for i := range parts {
			parts[i] = 0.2 * r.Float64() * r.Float64()
		}
		e.Parts = append(e.Parts, parts)
	}
	e.Again = r.Float64()
	if r.IntN(2) == 0 {
		e.Steady = r.Float64()
	}
	return e
}

func feed(b *infer.Belief, e event) {
	if e.Check == -1 {
		b.Cycle()
	} else if e.Check == -2 {
		b.Mend(e.Bin)
	} else if err := b.Observe(e); err != nil {
		panic(err)
	}
}
