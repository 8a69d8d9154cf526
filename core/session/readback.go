package session

import (
	"slices"

	"readback/core/heard"
	"readback/core/measure"
	"readback/core/unit"
)

// trusted sources need no read-back to be confirmed: a finger or a camera does not mishear.
func trusted(source string) bool { return source == "touch" || source == "key" || source == "camera" }

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
	switch {
	case confirming(q, best.ID):
		m.confirmed(best.ID)
		return
	case best.Kind == heard.Choice || best.Kind == heard.Text:
		m.accept(best)
		return
	}
	best, ok := m.asReading(best)
	if !ok {
		return
	}
	if q.ready { // the value came before "ready": the leads were in place
		q.ready = false
	}
	if q.pending != nil || len(q.choices) > 0 { // a new value corrects what was read back
		q.fixes++
		if q.pending != nil {
			m.reject(q.pending.Reading)
		}
		q.pending, q.choices = nil, nil
		if q.fixes == 2 {
			m.say("info", m.line("digits"))
		}
	}
	if why := m.impossible(best.Reading); why != "" {
		m.odd(why)
		return
	}
	if q.hazard {
		m.twice(u, best)
		return
	}
	if rivals := m.rivals(u, fits[1:], best); len(rivals) > 0 {
		q.choices = append([]heard.Meaning{best}, rivals...)
		j.state = "confirm"
		m.pendingView(best)
		m.cue("ask")
		m.say("info", m.line("this.or.that", "this", m.reading(best.Reading), "that", m.reading(rivals[0].Reading)))
		m.emit(Effect{Type: DoListen, ID: "number"})
		return
	}
	if m.noisy() && !trusted(u.Source) {
		q.pending = &best
		j.state = "confirm"
		m.pendingView(best)
		m.cue("ask")
		m.say("info", m.line("right.or.different", "value", m.reading(best.Reading)))
		m.emit(Effect{Type: DoListen, ID: "choice"})
		return
	}
	m.accept(best)
}

// asReading turns a count or a bare number into a reading when only one unit is possible, and asks for the unit otherwise.
func (m *Machine) asReading(x heard.Meaning) (heard.Meaning, bool) {
	q := m.j.q
	if x.Kind == heard.Count {
		if q.kind == "look" {
			m.accept(x)
			return x, false
		}
		d, err := unit.ParseDecimal(x.Text)
		if err != nil {
			m.missed()
			return x, false
		}
		x.Kind, x.Reading = heard.Reading, &measure.Reading{Value: unit.Value{Dec: d}}
	}
	r := *x.Reading
	if r.State == measure.Number && r.Value.Unit == "" {
		var could []string
		for _, u := range q.units {
			if len(x.Units) == 0 || slices.Contains(x.Units, u) {
				could = append(could, u)
			}
		}
		if len(could) != 1 {
			m.cue("ask")
			m.say("info", m.line("which.unit", "number", decimal(r.Value.Dec), "units", m.unitWords(q.units)))
			m.emit(Effect{Type: DoListen, ID: "number"})
			return x, false
		}
		r.Value.Unit = could[0]
	}
	x.Reading = &r
	return x, true
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
			return m.line("too.much", "value", value(r.Value)) // a branch circuit has at most 240 V
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

// twice takes a value that clears a hazard: two agreeing sayings, or a touch.
func (m *Machine) twice(u *heard.Utterance, x heard.Meaning) {
	j, q := m.j, m.j.q
	zero := isZero(x.Reading)
	switch {
	case !zero, trusted(u.Source):
		m.accept(x)
	case q.first == nil:
		q.first = &x
		j.state = "confirm"
		m.pendingView(x)
		m.cue("ask")
		m.say("info", m.line("once.more", "value", m.reading(x.Reading)))
		m.emit(Effect{Type: DoListen, ID: "number"})
	case !agree(q.first.Reading, x.Reading):
		q.first = nil
		j.state = "ask"
		m.cue("refused")
		m.say("info", m.line("differs", "value", m.reading(x.Reading)))
		m.emit(Effect{Type: DoListen, ID: "number"})
	default:
		m.say("info", m.line("agreed"))
		m.accept(x)
	}
}

// zeroVolts is the largest reading that counts as dead. Common practice, no source: meters on open leads show some
// tenths of a volt, capacitive ghosts show several volts and are looked into.
const zeroVolts = 1.0

func isZero(r *measure.Reading) bool {
	return r != nil && r.State == measure.Number && r.Value.Dim() == unit.Voltage && r.Value.Base() < zeroVolts && r.Value.Base() > -zeroVolts
}

// agree tells whether two sayings are the same value.
func agree(a, b *measure.Reading) bool {
	return a.State == b.State && a.Value.Unit == b.Value.Unit && a.Value.Dec.Equal(b.Value.Dec)
}

// rivalCost is how much dearer than the best a meaning may be to count as a rival: a factor of about twenty in odds.
const rivalCost = 3.0

// rivals are other readings of the utterance that would change the verdict or the next step.
func (m *Machine) rivals(u *heard.Utterance, rest []heard.Meaning, best heard.Meaning) []heard.Meaning {
	q := m.j.q
	if trusted(u.Source) || q.check < 0 || best.Repair && len(rest) == 0 {
		return nil
	}
	var out []heard.Meaning
	mine := m.consequence(q.check, best.Reading)
	for _, x := range rest {
		if x.Kind != heard.Reading || x.Cost > rivalCost || x.Reading.Value.Unit == "" && x.Reading.State == measure.Number {
			continue
		}
		if m.impossible(x.Reading) != "" || agree(x.Reading, best.Reading) {
			continue
		}
		if m.consequence(q.check, x.Reading) != mine {
			out = append(out, x)
		}
	}
	return out
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
		m.say("info", m.line("digits"))
	} else {
		m.say("info", m.line("what.then"))
	}
	m.emit(Effect{Type: DoListen, ID: "number"})
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
	return len(recs) > 0 && recs[len(recs)-1].reading && len(q.seqs) <= 1
}

// pendingView shows a value that is not accepted yet.
func (m *Machine) pendingView(x heard.Meaning) {
	if m.j.heardView != nil && x.Reading != nil {
		m.j.heardView.Taken, m.j.heardView.Pending = m.written(x.Reading), true
	}
}

// noisy tells whether it is so loud that every value is confirmed.
func (m *Machine) noisy() bool { return m.j.noise != 0 && m.j.noise < 10 }
