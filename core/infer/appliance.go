package infer

import (
	"cmp"
	"math"
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/unit"
)

// Finding is one established answer to a check of an appliance.
type Finding struct {
	Option  int              // of a look: index into the check's options, -1 for a reading
	Reading *measure.Reading // nil for a look
	Unknown bool             // not known, not reached, not answered
	Unsure  bool             // said with doubt
	Typed   bool             // tapped or keyed: nothing was heard wrong
}

// Case is an appliance ready for diagnosis: its problem, and how findings become answers. It is immutable; jobs may share it.
type Case struct {
	Problem *Problem
	Engine  *appliance.Engine
	Model   *appliance.Model
	Meter   *measure.Meter
	Modes   []Mode // as the prior needs them, in the order of the model's modes
	Worlds  *Worlds
	base    Base
	hyps    []Hyp
	table   *appliance.Table // what each world shows
	checks  []scale
}

// scale is how one check's answers are read.
type scale struct {
	look    bool
	classes []appliance.Outcome
	preds   []measure.Predicted // of a measurement, per class
	cuts    []float64           // base unit
	states  []measure.State     // outcomes after the numbers
	mean    []float64           // of a measurement: outcome chances, all classes alike
}

// ForAppliance enumerates the faults of an appliance and predicts every check in every world. The problem has one repair group for
// each repair of the model, with its index.
func ForAppliance(e *appliance.Engine, meter *measure.Meter, base Base) (*Case, error) {
	m := e.Model()
	c := &Case{Engine: e, Model: m, base: base}
	for i := range m.Modes {
		md := &m.Modes[i]
		c.Modes = append(c.Modes, Mode{Rate: md.Rate.Nominal, Part: md.Part, Group: md.Repair, Active: md.Hidden})
	}
	var err error
	if c.hyps, c.Worlds, err = Enumerate(c.Modes, base, nil); err != nil {
		return nil, err
	}
	sets := make([]appliance.Hypothesis, len(c.Worlds.Sets)-2) // the broad worlds predict nothing
	for w := range sets {
		sets[w] = c.Worlds.Sets[w]
	}
	c.table = e.Table(sets)
	return c.measured(meter)
}

// measured is the case for a meter: what it can tell apart.
func (c *Case) measured(meter *measure.Meter) (*Case, error) {
	out := *c
	out.Meter, out.checks = meter, nil
	out.Problem = &Problem{Worlds: len(c.Worlds.Sets), Groups: len(c.Model.Repairs), Hyps: c.hyps, Habits: UsualHabits, After: c.Worlds.After(c.Modes)}
	for i := range c.Model.Checks {
		chk, sc := out.classify(&c.Model.Checks[i], c.table.Outcome[i], c.table.Class[i])
		out.Problem.Checks = append(out.Problem.Checks, chk)
		out.checks = append(out.checks, sc)
	}
	return &out, out.Problem.Prepare()
}

// Rated is the case as the rating plate of the real unit and the meter at hand have it: plate values by field, a nil meter for no
// change. It returns the case itself when both are as before. Hypotheses, checks and repairs keep their numbers.
func (c *Case) Rated(plate map[string]unit.Value, meter *measure.Meter) (*Case, error) {
	m, changed := c.Model.WithPlate(plate)
	if !changed && meter == nil {
		return c, nil
	}
	if meter == nil {
		meter = c.Meter
	}
	if !changed {
		return c.measured(meter)
	}
	e, err := appliance.Compile(m)
	if err != nil {
		return nil, err
	}
	return ForAppliance(e, meter, c.base)
}

// classify sorts the outcomes of one check into classes and planning outcomes. of names the outcome of each world.
func (c *Case) classify(k *appliance.Check, outs []appliance.Outcome, of []uint8) (Check, scale) {
	chk := Check{ID: k.ID, Class: make([]uint8, 0, len(of)+2)}
	class := make([]uint8, len(outs)) // per outcome
	sc := scale{look: k.Function == measure.Look || len(k.Options) > 0}
	if sc.look {
		n := len(k.Options)
		for i := range n + 1 {
			option := i
			if i == n {
				option = -1 // no option fits
			}
			row, spoilt := make([]float64, max(n, 1)), make([]float64, max(n, 1))
			for said := range row {
				parts := measure.LookParts(k.Skill, n, option, said)
				row[said] = parts.Total()
				spoilt[said] = row[said] - parts[measure.Sound]
			}
			chk.Bins, chk.Spoilt = append(chk.Bins, row), append(chk.Spoilt, spoilt)
			sc.classes = append(sc.classes, appliance.Outcome{Option: option})
		}
		for i, o := range outs {
			if class[i] = uint8(n); o.Option >= 0 && o.Option < n {
				class[i] = uint8(o.Option)
			}
		}
	} else {
		c.cluster(k, outs, &sc, class)
		mass := make([]float64, len(sc.preds))
		for i := range mass {
			mass[i] = 1e-6 // what only two faults together show
		}
		for w, set := range c.Worlds.Sets {
			if len(set) == 1 { // single faults lead
				mass[class[of[w]]] += c.Modes[set[0]].Rate
			}
		}
		c.cut(k, &sc, mass)
		c.rows(k, &sc, 0, &chk)
	}
	for _, i := range of {
		chk.Class = append(chk.Class, class[i])
	}
	chk.Class = append(chk.Class, Broad, Broad)
	return chk, sc
}

// misplaced is how often a usual person measures at another point than was asked for, and so reads what something else would have
// shown there (assumption, no source; the rest of what goes astray may be any number).
const misplaced = 0.02

// rows fills in the outcome chances of the predictions of a measurement from the one numbered from on.
func (c *Case) rows(k *appliance.Check, sc *scale, from int, chk *Check) {
	n := len(sc.cuts) + 1 + len(sc.states)
	for _, p := range sc.preds[from:] {
		row, spoilt := make([]float64, n), make([]float64, n)
		measure.Outcomes(c.Meter, k.Function, p, measure.Usual, sc.cuts, sc.states, row, spoilt)
		chk.Bins, chk.Spoilt = append(chk.Bins, row), append(chk.Spoilt, spoilt)
	}
	if sc.mean == nil { // later predictions take no part in it
		sc.mean = make([]float64, n)
		for _, row := range chk.Bins {
			for o, x := range row {
				sc.mean[o] += x / float64(len(chk.Bins))
			}
		}
	}
	for i := from; i < len(sc.preds); i++ {
		for o, x := range sc.mean {
			chk.Bins[i][o] = (1-misplaced)*chk.Bins[i][o] + misplaced*x
			chk.Spoilt[i][o] = (1-misplaced)*chk.Spoilt[i][o] + misplaced*x
		}
	}
}

// sameShare is how far apart, in standard deviations of what the display can tell, two predictions may be and yet share a class.
const sameShare = 0.15

// cluster gives outcomes that no reading can tell apart one class.
func (c *Case) cluster(k *appliance.Check, outs []appliance.Outcome, sc *scale, class []uint8) {
	order := make([]int, len(outs))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := outs[a], outs[b]
		if x.Floating && y.Floating {
			return 0
		}
		return cmp.Or(cmp.Compare(x.State, y.State), compareBool(x.Floating, y.Floating), cmp.Compare(x.Value, y.Value), cmp.Compare(x.Half, y.Half))
	})
	share := sameShare
retry:
	sc.classes, sc.preds = sc.classes[:0], sc.preds[:0]
	for _, i := range order {
		o := outs[i]
		p := o.Predicted(k.Unit)
		n := len(sc.preds)
		if n == 0 || !c.alike(k.Function, sc.preds[n-1], p, share) {
			if n == maxClasses {
				share *= 2
				goto retry
			}
			sc.classes, sc.preds = append(sc.classes, o), append(sc.preds, p)
			n++
		}
		class[i] = uint8(n - 1)
	}
}

func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

func (c *Case) alike(f measure.Function, a, b measure.Predicted, share float64) bool {
	if a.State != b.State || a.Floating != b.Floating {
		return false
	}
	if a.State != measure.Number || a.Floating {
		return true
	}
	s := c.sigma(f, a)
	return math.Abs(a.Low-b.Low) < share*s && math.Abs(a.High-b.High) < share*s
}

// sigma is the standard deviation of a display under a prediction.
func (c *Case) sigma(f measure.Function, p measure.Predicted) float64 {
	return measure.Combine(measure.Rectangular((p.High-p.Low)/2), c.Meter.Uncertainty(f, (p.Low+p.High)/2, 0))
}

// maxCuts bounds the planning outcomes of a measurement: six ranges of numbers and the states.
const maxCuts = 5

// Candidates for a cut, and the information in bits that one must add to be made.
const (
	mostGaps = 48
	cutGain  = 1e-3
)

// spot is where the numbers of one class lie, and how likely the class is.
type spot struct{ mid, s, mass float64 }

// cut places the borders between planning outcomes where they tell most about the class, and lists the states that can show.
// mass is the prior of each class.
func (c *Case) cut(k *appliance.Check, sc *scale, mass []float64) {
	switch k.Function {
	case measure.Ohms:
		sc.states = []measure.State{measure.Over}
	case measure.Continuity:
		sc.states = []measure.State{measure.Beep, measure.Silent}
		return
	}
	var spots []spot
	for i, p := range sc.preds {
		switch {
		case p.Floating:
			spots = append(spots, spot{0, c.Meter.Uncertainty(k.Function, 0, 0), mass[i]}) // mostly next to nothing
		case p.State == measure.Number:
			spots = append(spots, spot{(p.Low + p.High) / 2, c.sigma(k.Function, p), mass[i]})
		}
	}
	slices.SortFunc(spots, func(a, b spot) int { return cmp.Or(cmp.Compare(a.mid, b.mid), cmp.Compare(a.s, b.s)) })
	type gap struct{ at, width float64 }
	var gaps []gap
	for i := 1; i < len(spots); i++ {
		a, b := spots[i-1], spots[i]
		if b.mid > a.mid {
			gaps = append(gaps, gap{(a.mid*b.s + b.mid*a.s) / (a.s + b.s), (b.mid - a.mid) / (a.s + b.s)})
		}
	}
	slices.SortStableFunc(gaps, func(a, b gap) int { return cmp.Compare(b.width, a.width) })
	gaps = gaps[:min(len(gaps), mostGaps)]
	for was := 0.0; len(sc.cuts) < maxCuts; {
		best, most := -1, was+cutGain
		for i, g := range gaps {
			if slices.Contains(sc.cuts, g.at) {
				continue
			}
			cuts := append(slices.Clone(sc.cuts), g.at)
			slices.Sort(cuts)
			if x := tells(spots, cuts); x > most {
				best, most = i, x
			}
		}
		if best < 0 {
			return
		}
		sc.cuts = append(sc.cuts, gaps[best].at)
		slices.Sort(sc.cuts)
		was = most
	}
}

// tells is the information in bits of the range that a number falls into about its class.
func tells(spots []spot, cuts []float64) float64 {
	info, total := 0.0, 0.0
	for _, s := range spots {
		total += s.mass
	}
	for b := range len(cuts) + 1 {
		lo, hi := math.Inf(-1), math.Inf(1)
		if b > 0 {
			lo = cuts[b-1]
		}
		if b < len(cuts) {
			hi = cuts[b]
		}
		all := 0.0
		for _, s := range spots {
			if p := measure.Phi((hi-s.mid)/s.s) - measure.Phi((lo-s.mid)/s.s); p > 1e-12 {
				info += s.mass / total * p * math.Log2(p)
				all += s.mass / total * p
			}
		}
		if all > 0 {
			info -= all * math.Log2(all)
		}
	}
	return info
}

// Answer turns a finding into an answer for a belief. prev is the last finding of the same check, nil when there is none.
// What tells nothing (silence, a display that does not settle, another kind of quantity) becomes an answer without likelihood.
func (c *Case) Answer(check int, f Finding, prev *Finding) Answer {
	a := Answer{Check: check, Bin: -1}
	if f.Unknown {
		return a
	}
	k, sc := &c.Model.Checks[check], &c.checks[check]
	if prev != nil && prev.Unknown {
		prev = nil
	}
	switch {
	case sc.look && f.Option >= 0 && f.Option < len(k.Options):
		for _, cl := range sc.classes {
			a.Parts = append(a.Parts, measure.LookParts(k.Skill, len(k.Options), cl.Option, f.Option))
		}
		a.Bin = f.Option
		if prev != nil && prev.Option == f.Option {
			a.Again = 1
		}
	case !sc.look && f.Reading != nil:
		r := *f.Reading
		if k.Function == measure.Continuity && r.State == measure.Number && r.Value.Dim() == unit.Resistance {
			r.State = measure.Silent
			if r.Value.Base() < c.Meter.BeepHigh {
				r.State = measure.Beep
			}
		}
		if a.Bin = sc.bin(r, k.Unit); a.Bin < 0 {
			return a
		}
		b := measure.Usual
		if f.Typed {
			b = measure.Typed
		}
		for _, p := range sc.preds {
			a.Parts = append(a.Parts, measure.Likelihood(c.Meter, k.Function, r, p, b))
		}
		stray(a.Parts, misplaced)
		if prev != nil && prev.Reading != nil {
			a.Again = measure.Again(c.Meter, k.Function, *prev.Reading, r)
			a.Steady = a.Again * b.SoundShare()
		}
	}
	if f.Unsure {
		stray(a.Parts, unsureShare)
	}
	return a
}

// bin is the planning outcome of a reading, -1 when it tells nothing.
func (sc *scale) bin(r measure.Reading, unitID string) int {
	for i, s := range sc.states {
		if r.State == s {
			return len(sc.cuts) + 1 + i
		}
	}
	want, _ := unit.Lookup(unitID)
	x := 0.0
	switch r.State {
	case measure.Number:
		if r.Value.Dim() != want.Dim {
			return -1
		}
		x = r.Value.Base()
	case measure.Beep:
		if want.Dim != unit.Resistance {
			return -1
		}
	default:
		return -1
	}
	i, _ := slices.BinarySearch(sc.cuts, x)
	return i
}

// unsureShare is how often an answer said with doubt is a guess (assumption, no source).
const unsureShare = 0.3

// stray makes so large a share of an answer one that tells nothing: it may have come about under any class.
func stray(parts []measure.Parts, share float64) {
	mean := 0.0
	for _, p := range parts {
		mean += p.Total() / float64(len(parts))
	}
	for i := range parts {
		for j := range parts[i] {
			parts[i][j] *= 1 - share
		}
		parts[i][measure.Stray] += share * mean
	}
}
