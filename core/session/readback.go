package session

import (
	"slices"

	"readback/core/heard"
	"readback/core/measure"
	"readback/core/unit"
)

// trusted sources need no read-back to be confirmed: a finger does not mishear.
func trusted(source string) bool { return source == "touch" || source == "key" }

// answer decides what becomes of an answer: taken, asked back, or asked again.
func (m *Machine) answer(u *heard.Utterance, fits []heard.Meaning) {
	j, q := m.j, m.j.q
	q.seqs = append(q.seqs, j.seq)
	q.typed = trusted(u.Source)
	best := fits[0]
	if best.Kind == heard.Choice && m.retracts(best.ID) && !confirming(q, best.ID) {
		m.retract()
		return
	}
	if best.Repair && best.Kind == heard.Reading && q.pending == nil && q.first == nil && len(q.choices) == 0 && !m.fixed[j.seq] && m.correctsLast(q) {
		m.correct(u)
		return
	}
	if best.Kind == heard.UnitOnly {
		m.unitTold(u, best.ID)
		return
	}
	if !confirming(q, best.ID) && m.beside(u, fits) {
		return
	}
	switch {
	case confirming(q, best.ID):
		m.confirmed(best.ID)
		return
	case best.Kind == heard.Choice || best.Kind == heard.Text:
		m.accept(best)
		return
	}
	if best.Kind == heard.Count && q.kind == "look" {
		m.accept(best)
		return
	}
	q.ready = false                             // a value before "ready": the leads were in place
	if q.pending != nil || len(q.choices) > 0 { // a new value corrects what was read back
		q.fixes++
		if q.pending != nil && !q.sighted {
			m.reject(q.pending.Reading)
			j.prev = q.pending.Reading
		}
		q.pending, q.choices = nil, nil
	}
	q.number, q.sighted = nil, false
	v := *u
	v.Meanings = nil
	for _, x := range fits {
		if x, ok := asReading(x); ok {
			v.Meanings = append(v.Meanings, x)
		}
	}
	if v.SNR == 0 {
		v.SNR = j.noise
	}
	m.decided(&v, heard.Decide(&v, m.slot(q)))
}

// asReading takes a bare whole number for a reading without a unit.
func asReading(x heard.Meaning) (heard.Meaning, bool) {
	if x.Kind == heard.Count {
		d, err := unit.ParseDecimal(x.Text)
		if err != nil {
			return x, false
		}
		x.Kind, x.Reading = heard.Reading, &measure.Reading{Value: unit.Value{Dec: d}}
	}
	return x, x.Kind == heard.Reading
}

// slot is what is known about the reading that is due.
func (m *Machine) slot(q *question) heard.Slot {
	s := heard.Slot{
		Units: q.units, Failed: q.errs, Previous: m.j.prev,
		Possible: func(r measure.Reading) bool { return m.impossible(&r) == "" },
		Matters:  func(a, b measure.Reading) bool { return isZero(&a) != isZero(&b) },
	}
	if q.first != nil {
		s.Pending = q.first.Reading
	}
	if q.hazard {
		s.Clears = func(r measure.Reading) bool { return isZero(&r) }
	}
	if q.check >= 0 {
		s.Matters = func(a, b measure.Reading) bool { return m.consequence(q.check, &a) != m.consequence(q.check, &b) }
	}
	return s
}

// decided does what was decided about a reading.
func (m *Machine) decided(u *heard.Utterance, d heard.Decision) {
	j, q := m.j, m.j.q
	if d.Take != nil && d.Action != heard.AskUnit {
		if why := m.impossible(d.Take); why != "" {
			m.odd(why)
			return
		}
	}
	x := heard.Meaning{Kind: heard.Reading, Reading: d.Take}
	ask := func(text, listen string) {
		m.pendingView(x)
		m.cue("ask")
		m.say("info", text)
		m.emit(Effect{Type: DoListen, ID: listen})
	}
	switch d.Action {
	case heard.Accept:
		if q.first != nil {
			m.say("info", m.line("agreed"))
		}
		m.accept(x)
	case heard.AskTwo:
		q.choices = []heard.Meaning{x, {Kind: heard.Reading, Reading: d.Rival}}
		j.state = "confirm"
		ask(m.line("this.or.that", "this", m.reading(d.Take), "that", m.reading(d.Rival)), "number")
	case heard.AskUnit:
		q.number, q.sighted = d.Take, false
		ask(m.line("which.unit", "number", d.Take.Value.Dec.Words(), "units", m.unitWords(d.Units)), "number")
	case heard.Confirm:
		q.pending = &x
		j.state = "confirm"
		ask(m.line("right.or.different", "value", m.reading(d.Take)), "choice")
	case heard.Second:
		q.first = &x
		j.state = "confirm"
		ask(m.line("once.more", "value", m.reading(d.Take)), "number")
	case heard.Again:
		if q.first != nil && d.Take != nil {
			q.first, j.state = nil, "ask"
			m.cue("refused")
			m.say("info", m.line("differs", "value", m.reading(d.Take)))
			m.emit(Effect{Type: DoListen, ID: "number"})
			return
		}
		m.missed()
	default: // digits, keypad
		m.missed()
	}
}

func (m *Machine) unitWords(units []string) string {
	var out []string
	for _, id := range units {
		u := unit.Must(id)
		name := u.Many
		if u.Prefixed != "" {
			name = u.Prefixed
		}
		out = append(out, name)
	}
	if len(out) == 0 {
		return ""
	}
	if len(out) == 1 {
		return out[0]
	}
	return join2(out[:min(len(out), 3)-1]) + " " + m.line("or") + " " + out[min(len(out), 3)-1]
}

// impossible tells why a reading cannot be what this place shows, empty when it can.
func (m *Machine) impossible(r *measure.Reading) string {
	q := m.j.q
	switch r.State {
	case measure.Dead:
		return m.line("dead.number")
	case measure.Blank:
		return m.line("blank.why")
	case measure.Number:
		want, _ := unit.Lookup(first(q.units))
		if len(q.units) > 0 && r.Value.Dim() != want.Dim {
			return m.line("wrong.unit", "units", m.unitWords(q.units))
		}
		if b := r.Value.Base(); want.Dim == unit.Voltage && (b > 300 || b < -300) {
			return m.line("too.much", "value", r.Value.Spoken()) // a branch circuit has at most 240 V
		}
		if q.check >= 0 {
			c := &m.model.Checks[q.check]
			if (c.Function == measure.VoltsAC && r.AC == "dc") || (c.Function == measure.VoltsDC || c.Function == measure.MicroampsDC) && r.AC == "ac" {
				return m.line("wrong.kind")
			}
		}
	case measure.Beep, measure.Silent:
		if q.check >= 0 && m.model.Checks[q.check].Function != measure.Continuity && m.model.Checks[q.check].Function != measure.Ohms {
			return m.line("wrong.unit", "units", m.unitWords(q.units))
		}
	}
	return ""
}

func first(s []string) string {
	if len(s) == 0 {
		return ""
	}
	return s[0]
}

// zeroVolts is the largest reading that counts as dead. Common practice, no source: meters on open leads show some
// tenths of a volt, capacitive ghosts show several volts and are looked into.
const zeroVolts = 1.0

func isZero(r *measure.Reading) bool {
	return r != nil && r.State == measure.Number && r.Value.Dim() == unit.Voltage && r.Value.Base() < zeroVolts && r.Value.Base() > -zeroVolts
}

// outcome is what a reading leads to.
type outcome struct {
	verdict measure.Verdict
	next    int
	closed  bool
	repair  int
}

func (m *Machine) consequence(check int, r *measure.Reading) outcome {
	j := m.j
	var o outcome
	if jd, ok := m.judge(check, *r); ok {
		o.verdict = jd.Verdict
	}
	held := j.findings
	j.findings = append(slices.Clone(held), Finding{Check: check, Option: -1, Reading: r})
	a := m.advise(planStages...)
	j.findings = held
	o.next, o.closed, o.repair = a.Check, a.Verdict, a.Repair
	return o
}

// confirmed works the answer to "right, or different?".
func (m *Machine) confirmed(id string) {
	j, q := m.j, m.j.q
	j.state = "ask"
	if id == oRight && q.pending != nil {
		x := *q.pending
		q.pending = nil
		m.accept(x)
		return
	}
	if id == oRight && q.number != nil { // right it is, but in what unit?
		m.j.state = "confirm"
		m.say("info", m.line("eye.unit", "number", q.number.Value.Dec.Words(), "units", m.unitWords(q.units)))
		m.emit(Effect{Type: DoListen, ID: "choice"})
		return
	}
	q.blind = q.blind || q.sighted || len(q.choices) > 0 // the camera was wrong here, or is no help
	q.sighted, q.number = false, nil
	if q.pending != nil {
		m.reject(q.pending.Reading)
	} else if id == oDifferent || id == oNo {
		for _, x := range q.choices {
			m.reject(x.Reading)
		}
	}
	q.pending, q.choices = nil, nil
	q.fixes++
	m.cue("ask")
	if q.fixes >= 2 {
		m.say("info", m.line("miss.number.two"))
	} else {
		m.say("info", m.line("what.then"))
	}
	m.emit(Effect{Type: DoListen, ID: q.listen()})
}

// reject keeps a value from being offered again for this question.
func (m *Machine) reject(r *measure.Reading) {
	if r != nil && !m.rejected(m.j.q, r) {
		m.j.wrong = append(m.j.wrong, named{m.j.q.id, m.written(r)})
	}
}

// correctsLast tells whether "no, twenty-four" speaks of the value before rather than of the open question.
func (m *Machine) correctsLast(q *question) bool {
	recs := m.j.records
	return len(recs) > 0 && recs[len(recs)-1].read != nil && len(q.seqs) <= 1
}

// pendingView shows a value that is not accepted yet.
func (m *Machine) pendingView(x heard.Meaning) {
	if m.j.heardView != nil && x.Reading != nil {
		m.j.heardView.Taken, m.j.heardView.Pending = m.written(x.Reading), true
	}
}

// noisy tells whether it is so loud that every value is confirmed.
func (m *Machine) noisy() bool { return m.j.noise != 0 && m.j.noise < 10 }

// rivalCost is how much dearer than the best a meaning may be and still be minded where it may be an emergency, or the
// answer to one: a factor of about twenty in odds.
const rivalCost = 3.0
