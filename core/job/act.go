package job

import (
	"fmt"
	"strconv"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/vocab"
	"readback/core/worksite"
)

// actQuestion asks for an act on the way to a task.
func (m *Machine) actQuestion(t task, act worksite.Act) *question {
	q := &question{id: fmt.Sprintf("act/%s/%d/%s", act.Kind, act.N, t), task: t, kind: "act", act: act, check: -1}
	name, where, place := m.thing(act)
	m.fromLine(q, m.plain("act."+act.Kind.String()), "name", name, "where", where)
	q.step.ID, q.step.Kind, q.step.Where, q.step.Place = "act."+act.Kind.String(), "act", where, place
	if act.N >= 0 && place != "" {
		q.step.ID += "." + place
	}
	q.step.Points = m.touches(act)
	switch {
	case act.Proof():
		q.kind, q.step.Kind = "measure", "measure"
		q.units, q.hazard = []string{"V", "mV"}, act.Zero()
		q.step.Meter = m.line("meter.volts-ac")
		q.step.Keypad = q.units
		q.step.Eye = protocol.EyeMeter
		q.opts, q.shown = nil, 0
	case act.Kind == worksite.ProveEmpty:
		q.kind, q.step.Kind = "measure", "measure"
		q.units, q.hazard = []string{"V", "mV"}, true // it clears a hazard: nothing is taken from the camera alone
		q.step.Keypad, q.step.Eye, q.opts, q.shown = q.units, protocol.EyeMeter, nil, 0
	case act.Kind == worksite.PlaceLeads && m.model.Checks[act.N].Fit != "":
		q.step.Act, q.short = m.model.Checks[act.N].Fit, m.model.Checks[act.N].Fit
	}
	if f := m.dialFor(act); f != "" { // dial and jacks stand right before a lead is placed
		q.step.Meter = m.line("meter."+string(f)) + " " + m.line(jackLine(f))
		q.ready = true
	}
	if act.Kind == worksite.OpenCover {
		m.warnCover(q, vocab.Worst(m.model.Places[act.N].Hazards))
	} else {
		m.warn(q, m.actHazard(t, act))
	}
	q.step.Power = m.powerWords()
	return q
}

// dialFor is the position of the dial that an act needs set before it, "" for none.
func (m *Machine) dialFor(act worksite.Act) measure.Function {
	switch act.Kind {
	case worksite.ProveLive:
		return measure.VoltsAC
	case worksite.ProveEmpty:
		return measure.VoltsDC
	case worksite.PlaceLeads, worksite.MeterIn:
		return m.model.Checks[act.N].Function
	}
	return ""
}

// jackLine is the line that says which jacks the leads are in.
func jackLine(f measure.Function) string {
	switch d := f.Dial(); {
	case d.Own:
		return "jacks.none"
	case d.Current:
		return "jacks.current"
	}
	return "jacks.volts"
}

// actHazard is what can hurt at an act, "" for nothing.
func (m *Machine) actHazard(t task, act worksite.Act) string {
	switch act.Kind {
	case worksite.ProveLive, worksite.ProveLN, worksite.ProveLG, worksite.ProveNG, worksite.ProveAgain:
		return "mains"
	case worksite.HoldDoor, worksite.FreeDoor:
		return "door"
	case worksite.JumperIn, worksite.JumperOut:
		return "jumper"
	case worksite.PowerOn:
		if kind := kindOf(t); !m.j.site.Covers.Empty() || kind == "cycle" || kind == "leave" {
			return "restart"
		}
	case worksite.Discharge, worksite.ProveEmpty:
		return "capacitor"
	case worksite.LiftWire, worksite.RefitWire, worksite.MeterIn, worksite.MeterOut:
		return "hands"
	}
	return ""
}

// thing names what an act is done to.
func (m *Machine) thing(act worksite.Act) (name, where, place string) {
	n := int(act.N)
	switch act.Kind {
	case worksite.OpenCover, worksite.CloseCover:
		p := &m.model.Places[n]
		return p.Name, p.Where, p.ID
	case worksite.LiftWire, worksite.RefitWire, worksite.Discharge, worksite.ProveEmpty:
		p := &m.model.Points[n]
		return p.Name, p.Where, p.ID
	case worksite.NoteReset:
		p := &m.model.Parts[n]
		return p.Name, p.Look, p.ID
	case worksite.JumperIn, worksite.JumperOut:
		if c := &m.model.Checks[n]; len(c.Jump) == 2 {
			return m.line("from.to", "from", m.model.Points[c.Jump[0]].Name, "to", m.model.Points[c.Jump[1]].Name), "", c.ID
		}
	case worksite.MeterIn, worksite.MeterOut, worksite.PlaceLeads:
		c := &m.model.Checks[n]
		return m.leads(c.Red, c.Black), "", c.ID
	case worksite.ProveLN, worksite.ProveLG, worksite.ProveNG:
		if red, black := m.deadPair(act.Kind); red >= 0 {
			return m.leads(red, black), "", ""
		}
		return m.line("dead." + act.Kind.String()), "", ""
	}
	return "", "", ""
}

func (m *Machine) nameOf(a worksite.Act) string {
	name, _, _ := m.thing(a)
	return name
}

// deadPair is where one of the three readings of zero is taken, -1 where the file names no points.
func (m *Machine) deadPair(k worksite.Kind) (red, black int) {
	d := m.model.Dead
	if len(d) != 3 || k < worksite.ProveLN || k > worksite.ProveNG {
		return -1, -1
	}
	pair := [...][2]int{{0, 1}, {0, 2}, {1, 2}}[k-worksite.ProveLN]
	return d[pair[0]], d[pair[1]]
}

// touches lists the test points that an act is about, red lead first.
func (m *Machine) touches(act worksite.Act) []string {
	red, black := m.deadPair(act.Kind)
	switch act.Kind {
	case worksite.LiftWire, worksite.RefitWire, worksite.Discharge, worksite.ProveEmpty:
		red = int(act.N)
	case worksite.MeterIn, worksite.MeterOut, worksite.PlaceLeads:
		c := &m.model.Checks[act.N]
		red, black = c.Red, c.Black
	}
	var out []string
	for _, p := range []int{red, black} {
		if p >= 0 {
			out = append(out, m.model.Points[p].ID)
		}
	}
	return out
}

// leads says where the two leads go.
func (m *Machine) leads(red, black int) string {
	switch {
	case red >= 0 && black >= 0:
		return m.line("leads", "red", m.model.Points[red].Name, "black", m.model.Points[black].Name)
	case red >= 0:
		return m.line("lead", "red", m.model.Points[red].Name)
	}
	return ""
}

// onAct works an act that was answered with its state.
func (m *Machine) onAct(a worksite.Act, id string) {
	j := m.j
	before := j.site
	j.site = m.rules.Apply(j.site, a, worksite.Done)
	if before.Power != j.site.Power {
		m.setPower()
	}
	delete(j.refused, refusal(a))
	switch a.Kind {
	case worksite.OpenCover:
		j.opened = j.opened.With(int(a.N))
	case worksite.LiftWire:
		j.lifted = j.lifted.With(int(a.N))
		j.adrift = j.adrift.Without(int(a.N))
	case worksite.RefitWire:
		j.adrift = j.adrift.Without(int(a.N))
	case worksite.HoldDoor:
		j.held = true
	case worksite.PowerOff:
		j.offAt = j.now
	case worksite.PowerOn:
		j.proveAt = 0
		j.powered = append(j.powered, len(j.findings))
	case worksite.JumperIn:
		j.jumped = true
	case worksite.MeterIn:
		j.jacked = true
	}
	if !before.Timed() && j.site.Timed() {
		j.timedAt, j.timedN = j.now, 0
	}
	if lights(j.site) && !lights(before) {
		j.starts++
	}
	m.note("site", m.line(m.plain("act."+a.Kind.String()+".done"), "name", m.nameOf(a)))
	if id != "" && id != cDone {
		m.say("info", sentence(m.option(id)))
	}
}

// lights tells whether the appliance is made to light in a state of the work place: on, and not known not to be called.
func lights(s worksite.State) bool { return s.Power == worksite.On && s.Call != worksite.No }

// refusal is the key under which refusals of an act are counted.
func refusal(a worksite.Act) string { return a.Kind.String() + strconv.Itoa(int(a.N)) }

// needed tells whether an act must be done whatever else is left out: it takes back what must not stay.
func (m *Machine) needed(t task, act worksite.Act) bool {
	kind := kindOf(t)
	return act.Removes() || kind == "leave" || kind == "pause" || act.Kind == worksite.PowerOff && m.j.site.Open()
}

// giveUpAct goes on without an act. One that takes back what must not stay is asked again, and if it really cannot be
// done the job ends and says so.
func (m *Machine) giveUpAct(q *question, n int) {
	j := m.j
	needed := m.needed(q.task, q.act)
	switch {
	case n == 1 && needed:
		m.say("warning", firstOf(q.how, m.line("must")))
		m.request()
		return
	case needed:
		m.leftOpen()
		return
	default:
		j.q = nil
		m.say("info", m.line("lost.cant-reach"))
		if t, ok := q.task.(checkTask); ok {
			m.settle(Finding{Check: t.n, Option: -1, Unknown: true})
			m.fact(m.line("unknown.fact", "check", m.model.Checks[t.n].Name))
		}
		m.block(q.task)
	}
	m.advance()
}
