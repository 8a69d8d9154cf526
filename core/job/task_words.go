package job

import (
	"fmt"
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/worksite"
)

// storyTask asks what the appliance does, in the person's own words.
type storyTask struct{ optional }

func (storyTask) String() string { return "story/0" }

func (storyTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, "story")
	q.text = true
	return true
}

func (storyTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	j := m.j
	j.story = x.Text
	j.done.story = true
	m.say("info", m.line("story.thanks"))
	m.told(strings.Fields(x.ID))
	m.fact(m.line("story.fact", "story", x.Text))
}

// told takes what a story tells for observations: those about the story itself with doubt, others are looked at first. What the story says
// two things about is asked.
func (m *Machine) told(symptoms []string) {
	j := m.j
	for i := range m.model.Checks {
		c := &m.model.Checks[i]
		said := -1
		for o := range c.Options {
			if slices.ContainsFunc(c.Options[o].Told, func(s string) bool { return slices.Contains(symptoms, s) }) {
				if said >= 0 {
					said = -2
					break
				}
				said = o
			}
		}
		if said == -1 || j.asked[i] != 0 || m.barredCheck(i) {
			continue
		}
		o := max(said, 0)
		if said == -2 || c.Part >= 0 || len(c.Places) > 0 || c.Options[o].Stop >= 0 || c.Options[o].Mend > 0 {
			if c.Stage != "story" {
				j.ahead = append(j.ahead, i)
			}
			continue
		}
		m.settle(Finding{Check: i, Option: said, Unsure: true})
		m.say("info", sentence(m.answered(i, said)))
		m.fact(c.Name + ": " + m.answered(i, said))
	}
}

func (t storyTask) giveUp(m *Machine, _ *question) { m.block(t) }
func (storyTask) blocked(m *Machine)               { m.j.done.story = true }

// plateTask asks a field of the rating plate.
type plateTask struct {
	optional
	n int
}

func (t plateTask) need(m *Machine) worksite.Need {
	f := &m.model.Plate[t.n]
	if len(f.Places) == 0 {
		return worksite.Need{}
	}
	return worksite.Need{Power: worksite.Cut, Covers: m.rules.Covers(f.Places)} // to read a label, nothing in there is touched
}

func (t plateTask) String() string { return fmt.Sprintf("plate/%d", t.n) }

func (t plateTask) ask(m *Machine, q *question) bool {
	f := &m.model.Plate[t.n]
	m.fromLine(q, "plate", "name", f.Name, "ask", f.Ask)
	q.step.ID = "plate." + f.ID
	if _, ok := unit.Lookup(f.Unit); ok {
		q.units = unitsFor(f.Unit)
		q.step.Keypad = q.units
	} else {
		q.text = true
	}
	q.step.Eye = protocol.EyePlate
	return true
}

// onPlate tells whether such a plate can say that number: one that sets a limit must not move it anywhere.
func (m *Machine) onPlate(t plateTask, r *measure.Reading) bool {
	p := m.model.Plate[t.n].Possible
	if p == nil {
		return true
	}
	u := unit.Must(p.Unit)
	x := (r.Value.Base() - u.Offset) / u.Scale
	return (p.Low == nil || x >= *p.Low) && (p.High == nil || x <= *p.High)
}

func (t plateTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	j := m.j
	f := &m.model.Plate[t.n]
	j.plate[f.ID] = x.Text
	if x.Reading != nil {
		j.plate[f.ID] = m.written(x.Reading)
		m.rate(f.ID, x.Reading.Value)
		m.say("info", sentence(f.Name+" "+m.reading(x.Reading)))
	} else {
		m.say("info", sentence(f.Name+" "+x.Text))
	}
	m.fact(f.Name + ": " + j.plate[f.ID])
}

// giveUp notes that a field is not known. After two in a row the rest is not asked: the plate cannot be read.
func (t plateTask) giveUp(m *Machine, _ *question) {
	p, known := m.model.Plate, m.j.plate
	m.j.task = nil
	known[p[t.n].ID] = "unknown"
	if p[t.n].Late() {
		m.say("info", m.line("label.without"))
		return
	}
	if t.n == 0 || known[p[t.n-1].ID] != "unknown" || t.n == len(p)-1 {
		return
	}
	for _, f := range p[t.n+1:] {
		if !f.Late() {
			known[f.ID] = "unknown"
		}
	}
	m.say("info", m.line("plate.without"))
}

func (t plateTask) blocked(m *Machine) { m.j.plate[m.model.Plate[t.n].ID] = "unknown" }

// rate takes a number of the rating plate: it wins over the one of the equipment file.
func (m *Machine) rate(field string, v unit.Value) {
	m.j.ratings[field] = v
	rated, _ := m.model.WithPlate(m.j.ratings)
	m.j.rated = rated.WithLabels(m.j.ratings)
}

// labelled are the findings as they are weighed: a reading in proportion to the label of its part. Where the label was not read it is
// written down and proves nothing.
func (m *Machine) labelled(findings []Finding) []Finding {
	out := slices.Clone(findings)
	for i, f := range findings {
		if f.Reading == nil || m.model.LabelOf(f.Check) == nil {
			continue
		}
		if r, ok := m.model.Labelled(f.Check, *f.Reading, m.j.ratings); ok {
			out[i].Reading = &r
		} else {
			out[i].Reading, out[i].Unknown = nil, true
		}
	}
	return out
}

// meterSteps are the steps of proving meter and leads, in order.
var meterSteps = [...]string{"kind", "category", "leads", "short"}

// leadOhms is the most that two leads held together may show. Common practice, no source.
const leadOhms = 2.0

// meterTask asks about the meter, and proves it and its leads.
type meterTask struct {
	optional
	n int // index into meterSteps
}

func (t meterTask) String() string { return fmt.Sprintf("meter/%d", t.n) }

func (t meterTask) ask(m *Machine, q *question) bool {
	q.step.ID = "meter." + meterSteps[t.n]
	m.fromLine(q, q.step.ID)
	if meterSteps[t.n] == "short" {
		q.units = unitsFor("ohm")
		q.step.Keypad = q.units
		q.step.Meter = m.line("meter.ohms")
		q.step.Eye = protocol.EyeMeter
	}
	return true
}

func (t meterTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	j := m.j
	switch meterSteps[t.n] {
	case "kind":
		j.done.meter[t.n] = true
		m.say("info", sentence(m.option(x.ID)))
		switch x.ID {
		case oTrueRMS:
			j.meter = measure.Describe(measure.Plain{TrueRMS: true})
			j.named = j.meter
		case oNoMeter:
			m.withoutMeter()
			m.fact(m.option(x.ID))
		default:
			m.say("info", m.line("meter.modest"))
		}
	case "category":
		j.done.meter[t.n] = true
		m.say("info", sentence(m.option(x.ID)))
		if x.ID != oRated {
			m.notRated()
		}
	case "leads":
		if x.ID != oGood {
			m.leadsBad()
			return
		}
		j.done.meter[t.n] = true
		m.say("info", sentence(m.option(x.ID)))
	default:
		t.short(m, x.Reading)
	}
}

// short works the reading of the two leads held together.
func (t meterTask) short(m *Machine, r *measure.Reading) {
	j := m.j
	if r.State == measure.Beep || r.State == measure.Number && r.Value.Base() <= leadOhms {
		j.done.meter[t.n] = true
		m.say("info", sentence(m.reading(r), m.line("leads.good")))
		return
	}
	j.refused["meter.short"]++
	if j.refused["meter.short"] < 2 {
		m.say("warning", m.line("leads.open", "value", m.reading(r)))
		return
	}
	m.leadsBad()
}

// leadsBad goes on without the meter: nothing is measured with leads that cannot be trusted.
func (m *Machine) leadsBad() {
	m.say("warning", m.line("leads.bad"))
	m.fact(m.line("leads.bad"))
	m.withoutMeter()
}

// withoutMeter goes on with what eyes and ears find.
func (m *Machine) withoutMeter() {
	m.j.noMeter, m.j.noProof, m.j.offer = true, true, true
}

func (t meterTask) giveUp(m *Machine, _ *question) {
	m.blockedMeter(t.n)
	m.j.task = nil
}

func (t meterTask) blocked(m *Machine) { m.blockedMeter(t.n) }

func (m *Machine) blockedMeter(n int) {
	m.j.done.meter[n] = true
	switch meterSteps[n] {
	case "kind":
		m.say("info", m.line("meter.modest"))
	case "category":
		m.notRated()
	default:
		m.fact(m.line("leads.unproved"))
	}
}

// notRated keeps meter and leads off house voltage: less than category III, 300 volts, or not known (IEC 61010-2-033).
func (m *Machine) notRated() {
	m.j.noMains, m.j.noProof = true, true
	m.say("warning", m.line("meter.not-rated"))
	m.fact(m.line("meter.not-rated"))
}

// rated tells whether a category printed on a meter is enough for house voltage in a cabinet.
func rated(category string) bool { return category == "CAT III" || category == "CAT IV" }

// licenseTask asks whether the person is licensed. Who does not say so is not.
type licenseTask struct{ optional }

func (licenseTask) String() string { return "license/0" }

func (licenseTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, "license")
	return true
}

func (licenseTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	m.j.done.license, m.j.licensed = true, x.ID == oYes
	m.say("info", sentence(m.option(x.ID)))
	m.fact(m.line("license.fact", "answer", m.option(x.ID)))
}

func (t licenseTask) giveUp(m *Machine, _ *question) { m.block(t) }
func (licenseTask) blocked(m *Machine)               { m.j.done.license = true }
