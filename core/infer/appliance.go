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
	stages  []stage          // worlds of graded modes; they follow the broad ones
	checks  []scale
}

// scale is how one check's answers are read.
type scale struct {
	look    bool
	classes [][]shade       // per class: what it shows
	own     []bool          // per class: it is of faults of the part that the check measures; nil where it measures none
	others  []float64       // per class: share of the probability of all worlds without such a fault
	sight   bool            // of a look: the thing itself is seen, and so whether it has a fault
	fine    int             // of a look: what a healthy appliance shows
	cuts    []float64       // base unit
	states  []measure.State // outcomes after the numbers
	mean    []float64       // of a measurement: outcome chances, all classes alike
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
	c.grade()
	return c.measured(meter)
}

// grade puts the stages of every graded mode in the place of the mode of its usual size, which stays as a world for pairs and for what
// a repair leaves of them. A stage in which nothing differs from a healthy appliance is no complaint and is left out.
func (c *Case) grade() {
	all := c.stagesOf()
	for len(all) > 0 {
		of := all[:stages]
		all = all[stages:]
		var told []stage
		for _, st := range of {
			if c.differs(&st) {
				told = append(told, st)
			}
		}
		if len(told) == 0 {
			continue
		}
		h := &c.hyps[c.Worlds.Of(of[0].mode)]
		for _, st := range told {
			w := len(c.Worlds.Sets)
			c.Worlds.Sets = append(c.Worlds.Sets, []int{st.mode})
			x := *h
			x.Prior /= float64(len(told))
			x.Phases = slices.Clone(x.Phases)
			for i := range x.Phases {
				if x.Phases[i].World == c.Worlds.Of(st.mode) {
					x.Phases[i].World = w
				}
			}
			c.hyps = append(c.hyps, x)
			c.stages = append(c.stages, st)
		}
		h.Prior = 0
	}
}

// differs tells whether a stage shows anything that a healthy appliance does not.
func (c *Case) differs(st *stage) bool {
	for i, list := range st.shows {
		k := &c.Model.Checks[i]
		look := k.Function == measure.Look || len(k.Options) > 0
		fine := c.table.Outcome[i][c.table.Class[i][0]]
		for _, x := range list {
			switch p := fine.Predicted(k.Unit); {
			case look && x.out.Option != fine.Option:
				return true
			case !look && (x.pred.State != p.State || x.pred.Floating != p.Floating):
				return true
			case !look && (x.pred.Low+x.pred.High != p.Low+p.High):
				mid, was := (x.pred.Low+x.pred.High)/2, (p.Low+p.High)/2
				if math.Abs(mid-was) > (p.High-p.Low)/2+1e-3*math.Abs(was) {
					return true
				}
			}
		}
	}
	return false
}

// Stages are the worlds of a single mode: those of its severity, or the one it has.
func (c *Case) Stages(mode int) []int {
	var out []int
	from := len(c.table.Hyps) + 2
	for i := range c.stages {
		if c.stages[i].mode == mode {
			out = append(out, from+i)
		}
	}
	if out == nil {
		out = append(out, c.Worlds.Of(mode))
	}
	return out
}

// measured is the case for a meter: what it can tell apart.
func (c *Case) measured(meter *measure.Meter) (*Case, error) {
	out := *c
	out.Meter, out.checks = meter, nil
	out.Problem = &Problem{Worlds: len(c.Worlds.Sets), Groups: len(c.Model.Repairs), Hyps: c.hyps, Habits: UsualHabits, After: c.Worlds.After(c.Modes)}
	for i := range c.Model.Checks {
		chk, sc := out.classify(i, c.table.Outcome[i], c.table.Class[i])
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
func (c *Case) classify(index int, outs []appliance.Outcome, of []uint8) (Check, scale) {
	k := &c.Model.Checks[index]
	chk := Check{ID: k.ID, Class: make([]uint8, 0, len(of)+2)}
	class := make([]uint8, len(outs)) // per outcome
	sc := scale{look: k.Function == measure.Look || len(k.Options) > 0}
	staged := make([]uint8, len(c.stages))
	world := make([]uint8, len(of))
	if sc.look {
		n := len(k.Options)
		sc.fine = outs[of[0]].Option
		sc.sight = c.sights(outs, of)
		for i := range n + 1 {
			option := i
			if i == n {
				option = -1 // no option fits
			}
			sc.classes = append(sc.classes, []shade{{share: 1, out: appliance.Outcome{Option: option}}})
		}
		for i, o := range outs {
			class[i] = sc.option(o, n)
		}
		for i := range c.stages {
			list := c.stages[i].shows[index]
			if x, ok := c.plainly(k, list, true, 0); ok {
				staged[i] = sc.option(x.out, n)
				continue
			}
			at := slices.IndexFunc(sc.classes, func(have []shade) bool { return c.sameShades(k, have, list, true, 0) })
			if at < 0 {
				at = len(sc.classes)
				sc.classes = append(sc.classes, list)
			}
			staged[i] = uint8(at)
		}
		for _, list := range sc.classes {
			row, spoilt := make([]float64, max(n, 1)), make([]float64, max(n, 1))
			for said := range row {
				parts := sc.lookParts(k, list, said)
				row[said] = parts.Total()
				spoilt[said] = row[said] - parts[measure.Sound]
			}
			chk.Bins, chk.Spoilt = append(chk.Bins, row), append(chk.Spoilt, spoilt)
		}
	} else {
		c.cluster(k, index, outs, &sc, class, staged)
	}
	for w, i := range of {
		world[w] = class[i]
	}
	if !sc.look {
		for i, list := range sc.classes {
			sc.classes[i] = c.makes(k, list)
		}
		if c.owns(index, outs, of) {
			c.claim(index, &sc, class, of, world, staged)
		}
		mass := make([]float64, len(sc.classes))
		for i := range mass {
			mass[i] = 1e-6 // what only two faults together show
		}
		for w := range of {
			if set := c.Worlds.Sets[w]; len(set) == 1 && c.hyps[w].Prior > 0 { // single faults lead
				mass[world[w]] += c.Modes[set[0]].Rate
			}
		}
		for i := range c.stages {
			mass[staged[i]] += c.Modes[c.stages[i].mode].Rate / stages
		}
		c.cut(k, &sc, mass)
		c.rows(k, &sc, 0, &chk)
	}
	chk.Class = append(chk.Class, world...)
	chk.Class = append(chk.Class, Broad, Broad)
	chk.Class = append(chk.Class, staged...)
	return chk, sc
}

// option is the class of a look's outcome.
func (sc *scale) option(o appliance.Outcome, n int) uint8 {
	if o.Option >= 0 && o.Option < n {
		return uint8(o.Option)
	}
	return uint8(n)
}

// lookParts is the likelihood of naming an option of a look, split by cause.
func (sc *scale) lookParts(k *appliance.Check, list []shade, said int) measure.Parts {
	var sum measure.Parts
	for _, x := range list {
		parts := measure.LookParts(k.Skill, len(k.Options), x.out.Option, said)
		if sc.sight && x.out.Option == sc.fine && len(k.Options) > 1 {
			wrong := parts[measure.Stray] * seldom
			if said == sc.fine {
				wrong = 0
				parts[measure.Sound] = 1 - (1-parts[measure.Sound])*seldom
			}
			parts[measure.Stray] = wrong
		}
		for i, p := range parts {
			sum[i] += x.share * p
		}
	}
	return sum
}

// seldom is how many times the usual share of wrong answers those are that tell of a fault where the thing itself is looked at and has
// none: a clean filter is hardly ever called dirty, a dirty one is sometimes called clean (judgement, no source).
const seldom = 0.3

// misplaced is how often a usual person measures at another point than was asked for, and so reads what something else would have
// shown there (assumption, no source; the rest of what goes astray may be any number).
const misplaced = 0.02

// rows fills in the outcome chances of the predictions of a measurement from the one numbered from on.
func (c *Case) rows(k *appliance.Check, sc *scale, from int, chk *Check) {
	n := len(sc.cuts) + 1 + len(sc.states)
	some, bad := make([]float64, n), make([]float64, n)
	for _, list := range sc.classes[from:] {
		row, spoilt := make([]float64, n), make([]float64, n)
		for _, x := range list {
			measure.Outcomes(c.Meter, k.Function, x.pred, measure.Usual, sc.cuts, sc.states, some, bad)
			for o := range row {
				row[o] += x.share * some[o]
				spoilt[o] += x.share * bad[o]
			}
		}
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
	for i := from; i < len(sc.classes); i++ {
		for o, x := range sc.mean {
			chk.Bins[i][o] = (1-misplaced)*chk.Bins[i][o] + misplaced*x
			chk.Spoilt[i][o] = (1-misplaced)*chk.Spoilt[i][o] + misplaced*x
		}
	}
}

// sameShare is how far apart, in standard deviations of what the display can tell, two predictions may be and yet share a class.
const sameShare = 0.002

// cluster gives outcomes that no reading can tell apart one class: those of the worlds, then what the stages of graded modes show.
func (c *Case) cluster(k *appliance.Check, index int, outs []appliance.Outcome, sc *scale, class, staged []uint8) {
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
	sc.classes = sc.classes[:0]
	for _, i := range order {
		o := outs[i]
		p := o.Predicted(k.Unit)
		n := len(sc.classes)
		if n == 0 || !c.alike(k.Function, sc.classes[n-1][0].pred, p, share) {
			if n == maxClasses {
				share *= 2
				goto retry
			}
			sc.classes = append(sc.classes, []shade{{1, o, p}})
			n++
		}
		class[i] = uint8(n - 1)
	}
	for i := range c.stages {
		list := c.stages[i].shows[index]
		if x, ok := c.plainly(k, list, false, share); ok {
			list = []shade{x}
		}
		at := slices.IndexFunc(sc.classes, func(have []shade) bool { return c.sameShades(k, have, list, false, share) })
		if at < 0 {
			if at = len(sc.classes); at == maxClasses {
				share *= 2
				goto retry
			}
			sc.classes = append(sc.classes, list)
		}
		staged[i] = uint8(at)
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
	return math.Abs(a.Low-b.Low) < share*s && math.Abs(a.High-b.High) < share*s && math.Abs(a.Tol-b.Tol) < share*s
}

// sigma is the standard deviation of a display under a prediction.
func (c *Case) sigma(f measure.Function, p measure.Predicted) float64 {
	return measure.Combine(measure.Rectangular((p.High-p.Low)/2), measure.Rectangular(p.Tol), c.Meter.Uncertainty(f, (p.Low+p.High)/2, 0))
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
	for i, list := range sc.classes {
		low, high, share := math.Inf(1), math.Inf(-1), 0.0
		var all measure.Predicted
		for _, x := range list {
			switch p := x.pred; {
			case p.Floating:
				spots = append(spots, spot{0, c.Meter.Uncertainty(k.Function, 0, 0), x.share * mass[i]}) // mostly next to nothing
			case p.State == measure.Number && p.Even: // the grades of a stage are one spot
				low, high, share, all = min(low, p.Low), max(high, p.High), share+x.share, p
			case p.State == measure.Number:
				spots = append(spots, spot{(p.Low + p.High) / 2, c.sigma(k.Function, p), x.share * mass[i]})
			}
		}
		if share > 0 {
			all.Low, all.High = low, high
			spots = append(spots, spot{(low + high) / 2, c.sigma(k.Function, all), share * mass[i]})
		}
	}
	slices.SortFunc(spots, func(a, b spot) int { return cmp.Or(cmp.Compare(a.mid, b.mid), cmp.Compare(a.s, b.s)) })
	spots = near(spots)
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

// near joins spots, in order, that a cut could hardly fall between.
func near(spots []spot) []spot {
	out := spots[:0]
	for _, x := range spots {
		if n := len(out); n > 0 {
			if y := &out[n-1]; x.mid-y.mid < nearShare*y.s && math.Abs(x.s-y.s) < nearShare*y.s {
				m := x.mass + y.mass
				y.mid, y.s, y.mass = (x.mid*x.mass+y.mid*y.mass)/m, (x.s*x.mass+y.s*y.mass)/m, m
				continue
			}
		}
		out = append(out, x)
	}
	return out
}

// nearShare is how near, in standard deviations.
const nearShare = 0.15

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
		for _, list := range sc.classes {
			a.Parts = append(a.Parts, sc.lookParts(k, list, f.Option))
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
		for _, list := range sc.classes {
			var sum measure.Parts
			for _, x := range list {
				for i, l := range measure.Likelihood(c.Meter, k.Function, r, x.pred, b) {
					sum[i] += x.share * l
				}
			}
			a.Parts = append(a.Parts, sum)
		}
		stray(a.Parts, misplaced)
		if sc.own != nil && readingOut(k, r) {
			sc.stand(a.Parts)
		}
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
