package infer

import (
	"math"
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/unit"
)

// A measurement of a part itself that is out of its limits speaks against the part, whatever the file's modes of it
// look like: no part fails exactly as a file has it. So each fault of the part may show anything that is out of limits,
// with the share odd, and such a reading is never likelier under the faults of others, all told, than under those of
// the part.

// odd is that share: judgement.
const odd = 0.15

// dead is the share of what is odd and too small that is nothing at all, on a scale of volts (judgement).
const dead = 0.4

// unlikeMake is the share of appliances whose reading is good and yet not what the file expects, but anything within
// the limits: another make, another anticipator, another length of wire (judgement).
const unlikeMake = 0.15

// oddSteps are the stretches beyond a limit, as multiples of it; all between two of them alike, their shares by the
// logarithm.
var oddSteps = []float64{1, 1.5, 2.5, 5, 20, 100, 1000, 1e4}

// oddRest is the share of what lies even further: next to nothing, or over range (judgement).
const oddRest = 0.2

// owns tells whether a check measures its part itself: of the faults, by their rates, that bring it out of limits those
// of no other part weigh more. Else what is measured is more of what feeds the part than of the part.
func (c *Case) owns(index int, outs []appliance.Outcome, of []uint8) bool {
	k := &c.Model.Checks[index]
	if k.Part < 0 || k.Limit == nil || k.Function == measure.Continuity || c.looks(index) {
		return false
	}
	part := func(mode int) int { return c.Modes[mode].Part }
	lead, _ := c.most(len(c.Model.Parts), part, func(mode int) bool { return outcomeOut(k, outs[of[c.Worlds.Of(mode)]]) })
	return lead[k.Part]
}

// most tells of each sort of fault whether, among some faults and by their rates, none weighs more, and whether it is
// half of them.
func (c *Case) most(sorts int, sort func(mode int) int, among func(mode int) bool) (lead, half []bool) {
	rate, all := make([]float64, sorts), 0.0
	for i := range c.Modes {
		if s := sort(i); s >= 0 && among(i) {
			rate[s] += c.Modes[i].Rate
			all += c.Modes[i].Rate
		}
	}
	lead, half = make([]bool, sorts), make([]bool, sorts)
	for i, x := range rate {
		lead[i], half[i] = x > 0 && x >= slices.Max(rate), x > 0 && x >= all/2
	}
	return lead, half
}

// sights tells whether a look sees the thing itself: of the faults, by their rates, that change what is seen half are
// ended by one repair.
func (c *Case) sights(outs []appliance.Outcome, of []uint8) bool {
	group := func(mode int) int { return c.Modes[mode].Group }
	_, half := c.most(len(c.Model.Repairs), group, func(mode int) bool { return outs[of[c.Worlds.Of(mode)]].Option != outs[of[0]].Option })
	return slices.Contains(half, true)
}

func outcomeOut(k *appliance.Check, o appliance.Outcome) bool {
	if o.State != measure.Number {
		return o.State == measure.Over && k.Limit.High != nil
	}
	x := o.Value
	if o.Floating {
		x = 0
	}
	return beyondLimit(k.Limit, x)
}

func beyondLimit(l *measure.Limit, x float64) bool {
	return l.High != nil && x > *l.High || l.Low != nil && x < *l.Low
}

// readingOut tells whether a reading is out of the limits of a check, in their unit.
func readingOut(k *appliance.Check, r measure.Reading) bool {
	if r.State != measure.Number {
		return r.State == measure.Over && k.Limit.High != nil
	}
	u, ok := unit.Lookup(k.Limit.Unit)
	return ok && r.Value.Dim() == u.Dim && beyondLimit(k.Limit, (r.Value.Base()-u.Offset)/u.Scale)
}

// oddly is anything out of the limits of a check, in shares that sum to one.
func oddly(k *appliance.Check) []shade {
	var out []shade
	u, _ := unit.Lookup(k.Limit.Unit)
	base := func(x float64) float64 { return x*u.Scale + u.Offset }
	sides := 0.0
	side := func(limit float64, up bool) {
		if limit <= 0 {
			return
		}
		sides++
		span := math.Log(oddSteps[len(oddSteps)-1])
		for i := range oddSteps[1:] {
			a, b := limit*oddSteps[i], limit*oddSteps[i+1]
			if !up {
				a, b = limit/oddSteps[i+1], limit/oddSteps[i]
			}
			out = append(out, shade{(1 - oddRest) * math.Log(oddSteps[i+1]/oddSteps[i]) / span, appliance.Outcome{Option: -1, Value: a},
				measure.Predicted{Low: base(a), High: base(b), Even: true}})
		}
		last := measure.Predicted{Low: base(0), High: base(limit / oddSteps[len(oddSteps)-1]), Even: true}
		if far := limit * oddSteps[len(oddSteps)-1]; up {
			last = measure.Predicted{Low: base(far), High: base(10 * far), Even: true}
			if k.Function == measure.Ohms {
				last = measure.Predicted{State: measure.Over}
			}
		}
		rest := oddRest
		if !up && k.Function.Volts() {
			for i := range out {
				out[i].share *= 1 - dead
			}
			rest *= 1 - dead
			out = append(out, shade{dead, appliance.Outcome{Option: -1}, measure.Predicted{}})
		}
		out = append(out, shade{rest, appliance.Outcome{State: last.State, Option: -1}, last})
	}
	if k.Limit.Low != nil {
		side(*k.Limit.Low, false)
	}
	if k.Limit.High != nil {
		side(*k.Limit.High, true)
	}
	for i := range out {
		out[i].share /= sides
	}
	return out
}

// makes gives every prediction within the limits of a check a share of anything within them.
func (c *Case) makes(k *appliance.Check, list []shade) []shade {
	l := k.Limit
	if l == nil {
		return list
	}
	low, high := 0.0, 0.0
	switch {
	case l.Low != nil && l.High != nil:
		low, high = *l.Low, *l.High
	case l.High != nil:
		high = *l.High
	default:
		low, high = *l.Low, 2**l.Low
	}
	u, ok := unit.Lookup(l.Unit)
	if !ok || low >= high {
		return list
	}
	good, from, to := 0.0, low*u.Scale+u.Offset, high*u.Scale+u.Offset
	var out []shade
	for _, x := range list {
		if mid := (x.pred.Low + x.pred.High) / 2; x.pred.State == measure.Number && !x.pred.Floating && mid >= from && mid <= to {
			good += x.share * unlikeMake
			x.share *= 1 - unlikeMake
		}
		out = append(out, x)
	}
	if good > 0 {
		out = append(out, shade{good, appliance.Outcome{Option: -1, Value: low}, measure.Predicted{Low: from, High: to, Even: true}})
	}
	return out
}

// claim gives the worlds with a fault of the check's own part classes of their own.
func (c *Case) claim(index int, sc *scale, class []uint8, of []uint8, world, staged []uint8) {
	k := &c.Model.Checks[index]
	anything := oddly(k)
	if len(anything) == 0 {
		return
	}
	sc.own = make([]bool, len(sc.classes))
	made := map[uint8]uint8{}
	claimed := func(base uint8) uint8 {
		if at, ok := made[base]; ok {
			return at
		}
		if len(sc.classes) == maxClasses {
			return base
		}
		var list []shade
		for _, x := range sc.classes[base] {
			x.share *= 1 - odd
			list = append(list, x)
		}
		for _, x := range anything {
			x.share *= odd
			list = append(list, x)
		}
		at := uint8(len(sc.classes))
		sc.classes, sc.own = append(sc.classes, list), append(sc.own, true)
		made[base] = at
		return at
	}
	for w := range world {
		world[w] = class[of[w]]
		if slices.ContainsFunc(c.Worlds.Sets[w], func(m int) bool { return c.Modes[m].Part == k.Part }) {
			world[w] = claimed(world[w])
		}
	}
	for i := range c.stages {
		if c.Modes[c.stages[i].mode].Part == k.Part {
			staged[i] = claimed(staged[i])
		}
	}
	sc.others = make([]float64, len(sc.classes))
	from, total := len(of)+2, 0.0
	for _, h := range c.hyps {
		for _, ph := range h.Phases {
			at := -1
			switch {
			case ph.World < len(of):
				at = int(world[ph.World])
			case ph.World >= from:
				at = int(staged[ph.World-from])
			}
			if at >= 0 && !sc.own[at] {
				sc.others[at] += h.Prior * ph.P
				total += h.Prior * ph.P
			}
		}
	}
	for i := range sc.others {
		sc.others[i] /= total
	}
}

// margin keeps what the kinds of persons make of the causes from turning the scale.
const margin = 1.1

// Measures tells whether a check measures its part itself, so that a reading out of its limits speaks against that
// part.
func (c *Case) Measures(check int) bool { return c.checks[check].own != nil }

// Out tells whether a reading is out of the limits of a check.
func (c *Case) Out(check int, r measure.Reading) bool {
	k := &c.Model.Checks[check]
	return k.Limit != nil && readingOut(k, r)
}

// stand raises the likelihood of a reading that is out of the limits under the faults of the part it was taken at to
// what it is under all others.
func (sc *scale) stand(parts []measure.Parts) {
	var mean measure.Parts
	for i, share := range sc.others {
		for j := range mean {
			mean[j] += share * parts[i][j]
		}
	}
	for j := range mean {
		mean[j] *= margin
	}
	for i, own := range sc.own {
		for j := range mean {
			if own { // cause by cause: a careless person blunders more often
				parts[i][j] = max(parts[i][j], mean[j])
			}
		}
	}
}
