package appliance

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"readback/core/measure"
)

// Plant is one appliance with its faults, standing in front of somebody: it has a power switch, a thermostat, covers,
// wires that can be lifted and a clock. It can be in states that no check names. It is not for several goroutines.
//
// Any act that changes what is joined settles it anew; the sequence starts again when the control lost its power, when
// power or call come back, and goes on where it was otherwise.
type Plant struct {
	e     *Engine // of the model as it is joined now, jumpers included
	m     *Model
	modes []int
	kept  map[string]bool // parts whose fuse, link or reset has gone for good
	power bool
	call  bool
	open  []bool // per place
	held  bool
	lift  []int
	jumps []jump
	clock float64 // s since the sequence began

	moments []moment
}

type jump struct {
	id   int
	a, b string
}

// moment is a settled state that lasts until the next one begins.
type moment struct {
	from  float64
	state *state
	extra bool // the properties nobody asked at compile time are worked out
}

// Plant returns the appliance with these modes present, switched on, calling for heat, closed, at the beginning of a call.
// What a fault blew in the past is blown.
func (e *Engine) Plant(modes []int) *Plant {
	if e.valid(modes) != nil {
		panic("appliance: a plant with a mode that is not in the model")
	}
	p := &Plant{e: e, m: e.m, modes: sorted(modes), kept: map[string]bool{}, power: true, call: true, open: make([]bool, len(e.m.Places))}
	p.change()
	return p
}

// Modes returns the modes present, rising.
func (p *Plant) Modes() []int { return slices.Clone(p.modes) }

// SetModes changes what is wrong: an intermittent fault comes or goes, a repair is done, a mistake is made.
func (p *Plant) SetModes(modes []int) {
	if p.e.valid(modes) != nil {
		panic("appliance: a plant with a mode that is not in the model")
	}
	p.modes = sorted(modes)
	p.change()
}

// Renew puts a new part in place of part, or resets it: its modes are gone, and its fuse or manual reset is whole again.
// Whatever blew it blows it again.
func (p *Plant) Renew(part int) {
	p.modes = slices.DeleteFunc(p.modes, func(m int) bool { return p.m.Modes[m].Part == part })
	p.Reset(part)
}

// Reset closes a fuse, breaker or manual reset that has opened.
func (p *Plant) Reset(part int) {
	delete(p.kept, p.m.Parts[part].ID)
	p.change()
}

// SetPower works the service switch.
func (p *Plant) SetPower(on bool) {
	if p.power != on {
		p.power, p.clock = on, 0
		p.change()
	}
}

// SetCall turns the thermostat up or down.
func (p *Plant) SetCall(on bool) {
	if p.call != on {
		p.call, p.clock = on, 0
		p.change()
	}
}

// SetCover opens or closes a place.
func (p *Plant) SetCover(place int, open bool) { p.open[place] = open; p.change() }

// Hold presses the door switches by hand, or lets them go.
func (p *Plant) Hold(held bool) { p.held = held; p.change() }

// Lift takes the wire off a point that names a part's terminal. It does nothing at other points.
func (p *Plant) Lift(point int) {
	if !slices.Contains(p.lift, point) {
		p.lift = append(p.lift, point)
		slices.Sort(p.lift)
		p.change()
	}
}

// Refit puts the wire back.
func (p *Plant) Refit(point int) {
	p.lift = slices.DeleteFunc(p.lift, func(x int) bool { return x == point })
	p.change()
}

// Jumper joins two nets or terminals under a number of the caller's choice; Unjumper takes it out.
func (p *Plant) Jumper(id int, a, b string) error {
	p.jumps = append(p.jumps, jump{id, a, b})
	return p.rejoin()
}

// Unjumper removes the jumpers with this number.
func (p *Plant) Unjumper(id int) error {
	p.jumps = slices.DeleteFunc(p.jumps, func(j jump) bool { return j.id == id })
	return p.rejoin()
}

func (p *Plant) rejoin() error {
	e, err := compile(p.m, p.jumps)
	if err != nil {
		return err
	}
	p.e = e
	p.change()
	return nil
}

// Advance lets so many seconds pass.
func (p *Plant) Advance(seconds float64) { p.clock += max(0, seconds) }

// Clock is how long the present call has lasted, s.
func (p *Plant) Clock() float64 { return p.clock }

// change works out what happens from now on. A control that lost its power, or has it again, begins anew.
func (p *Plant) change() {
	was := len(p.moments) > 0 && p.dead()
	for range len(p.e.latches) + 1 {
		p.imagine()
		if !p.remember() {
			break
		}
	}
	if was || p.dead() {
		p.clock = 0
	}
}

// dead reports whether the control has no power now.
func (p *Plant) dead() bool {
	s := p.now().state
	return !p.power || s.e.alive >= 0 && s.val[s.e.alive] < 0.5
}

func (p *Plant) situation() *Situation {
	free := false
	for i, pl := range p.m.Places {
		free = free || p.open[i] && len(pl.Trips) > 0 && !p.held
	}
	return &Situation{Power: p.power, Call: p.call, Free: free, Lift: p.lift, Jump: -1}
}

// imagine runs the sequence and keeps every state it passes with the time it begins.
func (p *Plant) imagine() {
	e := p.e
	s := e.newState()
	s.plain = true // this unit is one of those that may be
	s.c.build(e, p.modes)
	s.start()
	for i := range e.latches {
		if p.kept[e.latches[i].part] && e.latches[i].keeps {
			s.val[e.latches[i].slot] = 1
		}
	}
	p.moments = p.moments[:0]
	t := 0.0
	var trial []*state // the states of one trial
	var times []float64
	s.run(p.situation(), func(step int, last bool) {
		c := s.clone()
		if !last {
			trial, times = append(trial, c), append(times, p.duration(step, c))
			return
		}
		n := 1
		if s.stuck >= 0 && e.steps[s.stuck].fail == failRetry {
			n = max(1, p.m.Controls[0].Tries)
		}
		for range n {
			for i, st := range trial {
				p.moments = append(p.moments, moment{from: t, state: st})
				t += times[i]
			}
			if s.stuck >= 0 && n > 1 { // between two trials
				p.moments = append(p.moments, moment{from: t, state: c})
				t += p.m.Controls[0].Steps[s.stuck].Purge.Nominal
			}
		}
		p.moments = append(p.moments, moment{from: t, state: c})
	})
}

// duration is how long a step lasts, s.
func (p *Plant) duration(step int, s *state) float64 {
	if step < 0 {
		return 1
	}
	st := &p.m.Controls[0].Steps[step]
	needs := p.e.steps[step].needs
	seconds := func(q measure.Quantity) float64 {
		x, _, err := convert(q, "s")
		if err != nil {
			return 0
		}
		return x
	}
	within := seconds(st.Within)
	switch {
	case needs != nil && needs(s) <= 0.5:
		return max(within, 1)
	case st.Takes.Unit != "":
		return seconds(st.Takes)
	case needs == nil:
		return within
	}
	if within == 0 {
		return 1
	}
	return min(within, 5)
}

// clone keeps a settled state. It shares the configuration, which nobody changes any more; its networks are factorised when asked.
func (s *state) clone() *state {
	return &state{e: s.e, c: s.c, val: slices.Clone(s.val), g: slices.Clone(s.g), gd: slices.Clone(s.gd), x: slices.Clone(s.x), xd: slices.Clone(s.xd),
		y: make([]float64, len(s.y)), joined: true, live: s.live, step: s.step, stuck: s.stuck, reached: slices.Clone(s.reached), lamp: s.lamp, unsure: s.unsure}
}

func (p *Plant) remember() bool {
	found := false
	s := p.moments[len(p.moments)-1].state
	for i := range p.e.latches {
		l := &p.e.latches[i]
		if l.keeps && s.val[l.slot] > 0.5 && !p.kept[l.part] {
			p.kept[l.part], found = true, true
		}
	}
	return found
}

func (p *Plant) now() *moment {
	i := len(p.moments) - 1
	for i > 0 && p.moments[i].from > p.clock {
		i--
	}
	return &p.moments[i]
}

// Step is the step of the sequence the control is in, empty when it is dead, off, or at no step.
func (p *Plant) Step() string {
	s := p.now().state
	if s.step < 0 {
		return ""
	}
	return p.m.Controls[0].Steps[s.step].ID
}

// Lamp is the pattern the status light shows, empty when the file knows none.
func (p *Plant) Lamp() string {
	s := p.now().state
	if s.lamp < 0 {
		return ""
	}
	return p.m.Lamps[s.lamp].ID
}

// Locked reports whether the control has given up until power or call are taken away.
func (p *Plant) Locked() bool {
	s := p.now().state
	return s.stuck >= 0 && p.e.steps[s.stuck].fail < failWait && p.now() == &p.moments[len(p.moments)-1]
}

// When returns the seconds after the start at which a step begins; false when it is not reached.
func (p *Plant) When(step string) (float64, bool) {
	i, ok := p.e.stepIndex[step]
	for _, m := range p.moments {
		if ok && m.state.step == i {
			return m.from, true
		}
	}
	return 0, false
}

// Do answers a check in the state as it is now, whatever the check asks for.
func (p *Plant) Do(check int) Outcome {
	s := p.now().state
	c := &p.m.Checks[check]
	if (c.Function == measure.Ohms || c.Function == measure.Continuity) && p.energised(s, p.e.red[check], p.e.black[check]) {
		return Outcome{State: measure.Jumping, Option: -1}
	}
	return s.measure(check)
}

func (p *Plant) energised(s *state, red, black int32) bool {
	return math.Abs(s.volt(red)-s.volt(black)) > 0.5 || math.Abs(s.voltDC(red)-s.voltDC(black)) > 1e-3
}

// Read puts the leads on two nets or terminals ("W", "igniter.a"). The value is in volts or ohms. Ohms on a live circuit jump.
func (p *Plant) Read(f measure.Function, red, black string) (Outcome, error) {
	s := p.now().state
	r, err := p.node(red)
	if err != nil {
		return Outcome{}, err
	}
	b, err := p.node(black)
	if err != nil {
		return Outcome{}, err
	}
	switch f {
	case measure.Ohms, measure.Continuity:
		if p.energised(s, r, b) {
			return Outcome{State: measure.Jumping, Option: -1}, nil
		}
	case measure.VoltsAC, measure.VoltsDC, measure.MillivoltDC:
	default:
		return Outcome{}, fmt.Errorf("appliance: reading %s between two points", f)
	}
	return s.read(f, r, b), nil
}

func (p *Plant) node(name string) (int32, error) {
	if name == p.e.datum {
		return -1, nil
	}
	if n, ok := p.e.nodes[name]; ok {
		return n, nil
	}
	if net, ok := p.e.netOf(name); ok {
		return p.node(net)
	}
	return 0, fmt.Errorf("appliance: no net or terminal %q", name)
}

// Value is a signal or a property of a part now: "draft", "inducer.works". False when there is none such.
func (p *Plant) Value(name string) (float64, bool) {
	slot, ok := p.e.names[name]
	if !ok {
		if slot, ok = p.e.names[strings.Replace(name, ".", "#", 1)]; !ok { // a parameter
			return 0, false
		}
	}
	m := p.now()
	if !m.extra {
		m.extra = true
		for i := range p.e.extra {
			c := &p.e.extra[i]
			m.state.val[c.slot] = c.fn(m.state)
		}
	}
	return m.state.val[slot], true
}

// Gone lists the parts whose fuse, link or manual reset has opened, by index.
func (p *Plant) Gone() []int {
	var out []int
	for i := range p.m.Parts {
		if p.kept[p.m.Parts[i].ID] {
			out = append(out, i)
		}
	}
	return out
}
