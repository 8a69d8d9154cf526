package job

import (
	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/utterance"
)

// cost leads through what it costs and the decision. Setting something right costs nothing and needs no decision.
func (m *Machine) cost() task {
	j := m.j
	r := &m.model.Repairs[j.repair]
	switch {
	case j.done.decided || r.Kind == "set":
		return nil
	case j.done.free, !m.dear(r):
	case r.Kind == "replace" && !j.done.callout:
		return calloutTask{}
	case r.Kind == "replace" && !j.done.age:
		return ageTask{}
	}
	return decideTask{}
}

// dear tells whether money is a question: the part may cost more than a visit of somebody who does it, by the usual range of the file. Where
// the file tells nothing of visits it always is.
func (m *Machine) dear(r *appliance.Repair) bool {
	usual, ok := m.usualVisit()
	return !ok || r.Price.High > usual.High
}

// usualVisit is what a visit usually costs, as the file has it.
func (m *Machine) usualVisit() (measure.Quantity, bool) {
	for _, f := range m.model.Facts {
		if f.ID == appliance.CallOut {
			return f.Quantity, true
		}
	}
	return measure.Quantity{}, false
}

// calloutTask asks what a visit costs.
type calloutTask struct{ optional }

func (calloutTask) String() string { return "callout/0" }

func (calloutTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, "callout")
	q.units = []string{"money"}
	q.step.Keypad = q.units
	q.count = true
	return true
}

func (calloutTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	m.j.done.callout, m.j.price = true, x.Reading
	m.say("info", sentence(m.reading(x.Reading)))
}

func (t calloutTask) giveUp(m *Machine, _ *question) { m.block(t) }
func (calloutTask) blocked(m *Machine)               { m.j.done.callout = true }

// ageTask asks how old the appliance is.
type ageTask struct{ optional }

func (ageTask) String() string { return "age/0" }

func (ageTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, "age")
	q.count = true
	q.units = []string{"yr", "x"}
	q.step.Keypad = q.units
	return true
}

func (ageTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	m.j.done.age = true
	m.j.age = int(x.Reading.Value.Dec.Float())
	m.say("info", m.line("age.back", "years", m.words.Decimal(x.Reading.Value.Dec)))
}

func (t ageTask) giveUp(m *Machine, _ *question) { m.block(t) }
func (ageTask) blocked(m *Machine)               { m.j.done.age = true }

// decideTask asks whether the person does it, calls somebody, or stops.
type decideTask struct{ anywhere }

func (decideTask) String() string { return "decide/0" }

func (decideTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, "decide", "cost", m.costSentence())
	return true
}

func (decideTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	m.j.done.decided = true
	m.say("info", sentence(m.option(x.ID)))
	switch x.ID {
	case oCall:
		m.finish("handed-over", false)
	case oStop:
		m.finish("stopped-by-person", false)
	}
}

func (decideTask) insist(_ *Machine, q *question, n int) (level, text string) {
	if n < 2 {
		return "info", q.how
	}
	return "", ""
}

func (decideTask) giveUp(m *Machine, _ *question) { m.finish("handed-over", false) }
func (decideTask) blocked(m *Machine)             { m.j.done.decided = true }
func (decideTask) patience(*Machine) int64        { return tLook }

// costSentence is the one honest sentence with a range on which to decide.
func (m *Machine) costSentence() string {
	j := m.j
	r := &m.model.Repairs[j.repair]
	part := m.line("cost.nothing")
	if words := m.words.Span(r.Price); words != "" {
		part = m.line("cost.part", "range", words)
	} else if r.Kind == "replace" {
		part = m.line("cost.unknown")
	}
	if words := m.words.Span(r.Minutes); words != "" {
		part += " " + m.line("cost.minutes", "range", words)
	}
	switch usual, ok := m.usualVisit(); {
	case j.price == nil && ok:
		part += " " + m.line("cost.callout", "price", m.words.Span(usual))
	case j.price != nil:
		part += " " + m.line("cost.callout", "price", m.words.Decimal(j.price.Value.Dec))
	}
	if j.age >= 15 { // from memory: a furnace lives 15 to 20 years
		part += " " + m.line("cost.old", "age", m.words.Whole(int64(j.age)))
	}
	return part
}
