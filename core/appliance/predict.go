package appliance

import (
	"fmt"
	"math"
	"slices"

	"readback/core/measure"
	"readback/core/unit"
)

// Outcome is what a check shows under a hypothesis.
type Outcome struct {
	State    measure.State // Number for readings; Over, Beep, Silent, Blank otherwise
	Option   int           // of a look: index into the check's options; -1 otherwise
	Value    float64       // of a reading, in the check's unit
	Half     float64       // half-width of its spread over healthy tolerances, same unit
	Floating bool          // nothing drives the lead: the display shows what it picks up
}

// unlike is the share of units whose sizes lie outside the spread of the usual makes (judgement): without it, three readings of one
// winding that is merely unlike others would prove another part bad.
const unlike = 0.1

// Predicted is the outcome in the base unit of its dimension, as the measurement model wants it.
func (o Outcome) Predicted(unitID string) measure.Predicted {
	p := measure.Predicted{State: o.State, Low: o.Value - o.Half, High: o.Value + o.Half, Floating: o.Floating}
	if o.Half > 0 {
		p.Unlike = unlike
	}
	if u, ok := unit.Lookup(unitID); ok {
		p.Low, p.High = p.Low*u.Scale+u.Offset, p.High*u.Scale+u.Offset
	}
	return p
}

// Display limits of a handheld meter: common practice, no source.
const (
	overOhms     = 40e6
	beepOhms     = 30
	floatingOhms = 2e6 // a source weaker than this does not hold a 10 Mohm meter
)

// group is all checks that are done in one situation. With the power off the wires that are lifted for one check or
// another do not change how the contacts rest, so that one rest serves them all.
type group struct {
	at     Situation
	checks []int   // done while the sequence runs or rests, nothing lifted unless the situation says so
	lifted []lifts // with the power off: resistances, by what is lifted
}

type lifts struct {
	points []int
	checks []int
}

func (e *Engine) situation(check int) Situation {
	c := &e.m.Checks[check]
	at := Situation{Power: c.Power != "off", Call: c.Call != "off", Jump: -1, Lift: slices.Clone(c.Lift)}
	slices.Sort(at.Lift)
	trips := false
	for _, p := range c.Places {
		trips = trips || len(e.m.Places[p].Trips) > 0
	}
	at.Free = trips && (c.Hold == "free" || c.Hold == "" && !at.Power)
	if len(c.Jump) == 2 {
		at.Jump = check
	}
	return at
}

// groups sorts checks by situation, the ordinary call for heat first.
func (e *Engine) groups(checks []int) []group {
	out := []group{{at: Situation{Power: true, Call: true, Jump: -1}}}
	index := map[string]int{fmt.Sprint(out[0].at): 0}
	for _, i := range checks {
		at := e.situation(i)
		f := e.m.Checks[i].Function
		ohms := !at.Power && (f == measure.Ohms || f == measure.Continuity)
		var off []int
		if ohms {
			off, at.Lift = at.Lift, nil
		}
		key := fmt.Sprint(at)
		g, ok := index[key]
		if !ok {
			g = len(out)
			index[key] = g
			out = append(out, group{at: at})
		}
		if !ohms {
			out[g].checks = append(out[g].checks, i)
			continue
		}
		k := slices.IndexFunc(out[g].lifted, func(l lifts) bool { return slices.Equal(l.points, off) })
		if k < 0 {
			k = len(out[g].lifted)
			out[g].lifted = append(out[g].lifted, lifts{points: off})
		}
		out[g].lifted[k].checks = append(out[g].lifted[k].checks, i)
	}
	return out
}

// sim is a state with the memory of one hypothesis: what has blown in the past.
type sim struct {
	*state
	kept  []bool    // per latch
	first []Outcome // per check: what it showed in the first of two last states
}

func (e *Engine) newSim() *sim {
	s := &sim{state: e.newState(), kept: make([]bool, len(e.latches)), first: make([]Outcome, len(e.m.Checks))}
	s.memo = newMemo()
	return s
}

// load makes the hypothesis current and lets the past happen: a call for heat, until nothing more blows. Done hears what
// the checks of the first group show in the last of these calls; it may be nil.
func (s *sim) load(modes []int, done func(check int, o Outcome)) {
	s.c.build(s.e, modes)
	clear(s.kept)
	for range len(s.kept) + 1 {
		if done == nil {
			s.begin()
			s.run(&Situation{Power: true, Call: true, Jump: -1}, func(int, bool) {})
		} else {
			s.group(0, &s.e.inOrder[0], done)
		}
		if !s.remember() {
			return
		}
	}
}

// begin is start with what has blown before.
func (s *sim) begin() {
	s.start()
	for i, k := range s.kept {
		if k {
			s.val[s.e.latches[i].slot] = 1
		}
	}
}

// remember keeps what has gone for good; it reports whether anything is new.
func (s *sim) remember() bool {
	found := false
	for i := range s.e.latches {
		l := &s.e.latches[i]
		if l.keeps && !s.kept[i] && s.val[l.slot] > 0.5 {
			s.kept[i], found = true, true
		}
	}
	return found
}

// group lets every check of a group happen; id tells groups of one engine apart.
func (s *sim) group(id int, g *group, done func(check int, o Outcome)) {
	s.begin()
	e := s.e
	s.run(&g.at, func(step int, last bool) {
		for _, c := range g.checks {
			at := e.atStep[c]
			if at >= 0 && at == step || last && (at < 0 || !s.reached[at]) {
				o := s.measure(c)
				if s.other {
					o = either(s.first[c], o)
				}
				s.first[c] = o
				done(c, o)
			}
		}
	})
	if len(g.lifted) > 0 {
		s.resistances(id, g, done)
	}
}

// either is what a check shows when it is one of two things: a look that differs tells nothing, a number may be either or between.
func either(a, b Outcome) Outcome {
	switch {
	case a.Option != b.Option || a.State != b.State:
		return Outcome{State: measure.Blank, Option: -1}
	case a.State != measure.Number || a.Option >= 0:
		return a
	}
	low, high := min(a.Value-a.Half, b.Value-b.Half), max(a.Value+a.Half, b.Value+b.Half)
	return Outcome{Option: -1, Value: (low + high) / 2, Half: (high - low) / 2, Floating: a.Floating || b.Floating}
}

// resistances are measured at rest. They follow from the conductances alone, which many pairs of faults share.
func (s *sim) resistances(id int, g *group, done func(check int, o Outcome)) {
	key := s.hash
	key[0] += uint64(id)
	outs, known := s.memo.rest[key]
	k := 0
	for i := range g.lifted {
		l := &g.lifted[i]
		if !known {
			s.lift(l.points, 1)
		}
		for _, c := range l.checks {
			if !known {
				outs = append(outs, s.measure(c))
			}
			done(c, outs[k])
			k++
		}
		if !known {
			s.lift(l.points, 0)
		}
	}
	if !known {
		if len(s.memo.rest) >= maxMemo {
			clear(s.memo.rest)
		}
		s.memo.rest[key] = outs
	}
}

// lift takes wires off at rest, or puts them back, without settling anew.
func (s *sim) lift(points []int, to float64) {
	for _, p := range points {
		if slot, ok := s.e.lifts[s.e.m.Points[p].Net]; ok {
			s.val[slot] = to
		}
	}
	s.conduct()
}

// all loads a hypothesis and gives the outcome of every check. It reports whether some state did not come to rest.
func (s *sim) all(modes []int, out []Outcome) (unsure bool) {
	done := func(c int, o Outcome) { out[c] = o }
	s.load(modes, done)
	unsure = s.unsure
	for i := range s.e.inOrder[1:] {
		s.group(i+1, &s.e.inOrder[i+1], done)
		unsure = unsure || s.unsure
	}
	return unsure
}

// Predict says what a check shows when exactly these modes are present. It panics on indices that are not in the model.
func (e *Engine) Predict(modes []int, check int) Outcome {
	if err := e.valid(modes); err != nil || check < 0 || check >= len(e.m.Checks) {
		panic("appliance: predicting with an index that is not in the model")
	}
	s := e.newSim()
	s.load(sorted(modes), nil)
	var out Outcome
	for i, g := range e.groups([]int{check}) {
		if len(g.checks)+len(g.lifted) > 0 {
			s.group(i, &g, func(_ int, o Outcome) { out = o })
		}
	}
	return out
}

// Reached tells how far the sequence gets: the last step entered, the lamp pattern shown in the end, and why it went no further.
func (e *Engine) Reached(modes []int) (step, code, why string) {
	if e.valid(modes) != nil {
		panic("appliance: reaching with an index that is not in the model")
	}
	s := e.newSim()
	s.load(sorted(modes), nil)
	if s.lamp >= 0 {
		code = e.m.Lamps[s.lamp].ID
	}
	last := -1
	for i, r := range s.reached {
		if r && !e.steps[i].side {
			last = i
		}
	}
	switch {
	case last < 0:
		return "", code, "the control has no power"
	case s.stuck >= 0:
		return e.m.Controls[0].Steps[last].ID, code, "the step does not see what it needs"
	case s.step < 0 && e.alive >= 0:
		return e.m.Controls[0].Steps[last].ID, code, "the control lost its power"
	}
	return e.m.Controls[0].Steps[last].ID, code, ""
}

// measure does a check in the state as it stands.
func (s *state) measure(check int) Outcome {
	e := s.e
	f := e.m.Checks[check].Function
	d := &e.dials[check]
	switch f {
	case measure.VoltsAC, measure.VoltsDC, measure.MillivoltDC, measure.Ohms, measure.Continuity:
		if in := s.solved; in != nil && f == measure.VoltsAC {
			return s.resisted(in.once(check, func() Outcome { return d.show(s.read(f, e.red[check], e.black[check])) }), e.healthy[check])
		}
		return s.resisted(d.show(s.read(f, e.red[check], e.black[check])), e.healthy[check])
	}
	if e.reads[check] < 0 {
		return s.look(check)
	}
	v := s.val[e.reads[check]]
	o := d.show(Outcome{Option: -1, Value: v, Half: math.Abs(v) * e.readTol[check]})
	if s.c.factor.low != s.c.factor.high {
		o = s.vague(o, e.healthy[check])
	}
	return o
}

// resisted widens a reading that a resistance of uncertain size has moved: what it takes away, or adds, grows with it, as long as it is
// small beside the rest of its circuit.
func (s *state) resisted(o Outcome, healthy float64) Outcome {
	moved := o.Value - healthy
	if o.State != measure.Number || s.c.ohms.low == s.c.ohms.high || math.Abs(moved) <= 1e-3*math.Abs(healthy) {
		return o
	}
	least, most := healthy+moved*s.c.ohms.low, healthy+moved*s.c.ohms.high
	if healthy > 0 {
		most = max(most, 0)
	}
	o.Half += math.Abs(most-least) / 2
	return o
}

// leastShare keeps a reading that grows as something shrinks from growing without end.
const leastShare = 0.4

// vague widens a reading that a mode of uncertain size has changed: one that fell may have fallen more or less, one that rose likewise.
func (s *state) vague(o Outcome, healthy float64) Outcome {
	low, high := s.c.factor.low, s.c.factor.high
	switch {
	case o.State != measure.Number || math.Abs(o.Value-healthy) <= 1e-3*math.Abs(healthy):
		return o
	case o.Value > healthy:
		low, high = 1/high, 1/max(low, leastShare)
	}
	top, bottom := o.Value*high, o.Value*low
	if o.Value < healthy {
		top = min(top, max(healthy, o.Value))
	}
	o.Half += (top - bottom) / 2
	return o
}

// dial turns what the engine counts in into the unit of a check.
type dial struct{ times, plus float64 }

func (d dial) show(o Outcome) Outcome {
	if o.State == measure.Number {
		o.Value, o.Half = o.Value*d.times+d.plus, o.Half*math.Abs(d.times)
	}
	return o
}

// dialOf makes the dial from one unit to another; unknown units count alike.
func dialOf(from, to string) dial {
	a, ok1 := unit.Lookup(from)
	b, ok2 := unit.Lookup(to)
	if !ok1 || !ok2 {
		return dial{1, 0}
	}
	return dial{a.Scale / b.Scale, (a.Offset - b.Offset) / b.Scale}
}

func (s *state) look(check int) Outcome {
	for i, when := range s.e.whens[check] {
		if when == nil || when(s) > 0.5 {
			return Outcome{Option: i}
		}
	}
	return Outcome{State: measure.Blank, Option: -1}
}

// read puts a meter's leads on two nodes. Values are in volts and ohms.
func (s *state) read(f measure.Function, red, black int32) Outcome {
	switch f {
	case measure.Ohms, measure.Continuity:
		return s.readOhms(f, red, black)
	case measure.VoltsAC:
		return s.readVolts(red, black, s.factor(), s.x, s.g, false)
	}
	return s.readVolts(red, black, s.factorDC(), s.xd, s.gd, true)
}

// probe solves the network for a unit current from red to black into s.y and returns the volts between them.
func (s *state) probe(f *factor, red, black int32) float64 {
	clear(s.y)
	p := s.e.pat
	at := func(node int32, x float64) {
		if node >= 0 {
			s.y[p.perm[node]] += x
		}
	}
	at(red, 1)
	at(black, -1)
	f.solve(s.y)
	u := 0.0
	if red >= 0 {
		u += s.y[p.perm[red]]
	}
	if black >= 0 {
		u -= s.y[p.perm[black]]
	}
	return u
}

func (s *state) readVolts(red, black int32, f *factor, x, g []float64, dc bool) Outcome {
	e := s.e
	u := 0.0
	if red >= 0 {
		u += x[e.pat.perm[red]]
	}
	if black >= 0 {
		u -= x[e.pat.perm[black]]
	}
	inner := s.probe(f, red, black)
	div := meterOhms / (meterOhms + inner)
	// By the adjoint network: a change of conductance δg moves the reading by −δg·drop·λ, one of e.m.f. δe by g·δe·λ.
	sum := 0.0
	for _, i := range e.loose {
		br := &e.branches[i]
		if g[i] < 1e-7 {
			continue
		}
		lambda := e.pat.drop(s.y, int(i), &s.c.coef[i])
		if math.Abs(lambda*g[i]) < 1e-6 {
			continue
		}
		emf, ohms := br.acEmf, br.ac
		if dc {
			emf, ohms = br.dcEmf, br.dc
		}
		d := e.pat.drop(x, int(i), &s.c.coef[i])
		if emf >= 0 {
			d -= s.val[emf]
			de := g[i] * s.val[emf] * e.tol[emf] * lambda
			sum += de * de
		}
		if ohms >= 0 {
			dr := g[i] * s.c.spread(ohms) * d * lambda
			sum += dr * dr
		}
		if br.n == 4 { // the ratio of a transformer, by the spread of its secondary
			dk := g[i] * e.ratioTol[i] * (d + e.secondary(s, i, x)) * lambda
			sum += dk * dk
		}
	}
	o := Outcome{Option: -1, Value: u * div, Half: math.Sqrt(sum) * div, Floating: inner > floatingOhms}
	if !dc {
		o.Value = math.Abs(o.Value)
	}
	return o
}

// secondary is the voltage of a transformer's secondary.
func (e *Engine) secondary(s *state, i int32, x []float64) float64 {
	c := s.c.coef[i]
	c[0], c[1] = 0, 0
	return -e.pat.drop(x, int(i), &c)
}

func (s *state) readOhms(f measure.Function, red, black int32) Outcome {
	e := s.e
	r := s.probe(s.factorDC(), red, black)
	o := Outcome{Option: -1, Value: r}
	switch {
	case f == measure.Continuity && r < beepOhms:
		o.State = measure.Beep
	case f == measure.Continuity:
		o.State = measure.Silent
	case r > overOhms:
		o.State, o.Value = measure.Over, 0
	default:
		sum := 0.0
		for _, i := range e.loose {
			if ohms := e.branches[i].dc; ohms >= 0 && s.gd[i] > 1e-9 {
				l := e.pat.drop(s.y, int(i), &s.c.coef[i])
				d := l * l * s.gd[i] * s.c.spread(ohms)
				sum += d * d
			}
		}
		o.Half = math.Sqrt(sum)
	}
	if o.State != measure.Number {
		o.Value, o.Half = 0, 0
	}
	return o
}
