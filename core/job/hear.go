package job

import (
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
)

// hear works something said, typed or tapped.
func (m *Machine) hear(ev protocol.Event) {
	j, u := m.j, ev.Said
	if m.alarmed(u) {
		return
	}
	if u.Partial { // still being spoken: only hazards and silence may act on it
		if b := u.Best(); b != nil && b.Kind == utterance.Command && b.ID == cQuiet {
			m.quiet()
		}
		return
	}
	if j.state == "ended" {
		return
	}
	j.heardView = &protocol.HeardView{Text: u.Text, Rivals: u.Rivals}
	if u.Text != "" {
		m.note("person", u.Text)
	}
	if j.alarm != "" || j.doubtAsk {
		m.inAlarm(u)
		return
	}
	q := j.q
	if q == nil {
		m.advance()
		return
	}
	if q.silent > 0 && u.Best() != nil && u.Best().Kind == utterance.Choice && u.Best().ID == oOkay && !slices.Contains(q.opts, oOkay) {
		q.silent, q.base = 0, j.now // the answer to "are you all right?"
		m.request()
		return
	}
	fits := m.fitting(u)
	if len(fits) == 0 {
		m.unfit(u)
		return
	}
	if fits[0].Kind == utterance.Command && m.sure(u, fits) {
		m.command(fits[0].ID, u)
		return
	}
	if j.holding && m.unhold() {
		return
	}
	q.silent, q.base = 0, j.now
	m.answer(u, fits)
}

// fitting is what the utterance can mean as an answer to the open question, best first. A command fits always; what was
// called wrong before fits no more.
func (m *Machine) fitting(u *utterance.Utterance) []utterance.Meaning {
	q := m.j.q
	if m.tells(u) {
		x := utterance.Meaning{Kind: utterance.Text, Text: u.Text}
		for _, s := range u.Meanings {
			if s.Kind == utterance.Symptom {
				x.ID = strings.TrimSpace(x.ID + " " + s.ID)
			}
		}
		return []utterance.Meaning{x}
	}
	var out []utterance.Meaning
	for _, x := range u.Meanings {
		ok := false
		switch x.Kind {
		case utterance.Command:
			if slices.Contains(q.opts, x.ID) && !q.ready {
				x.Kind = utterance.Choice
			}
			ok = !(x.ID == cJumping && len(q.units) > 0 && hasReading(u)) && (trusted(u.Source) || !m.called(q, x))
		case utterance.Choice:
			if q.ready && x.ID == cReady {
				x.Kind = utterance.Command
			}
			ok = x.Kind == utterance.Command || slices.Contains(q.opts, x.ID) || slices.Contains(q.also, x.ID) || confirming(q, x.ID) || m.retracts(x.ID) && x.ID == u.Best().ID
			ok = ok && (trusted(u.Source) || !m.called(q, x))
		case utterance.Reading:
			ok = x.Reading != nil && (len(q.units) > 0 || x.Repair) && (trusted(u.Source) || !m.rejected(q, x.Reading))
		case utterance.Count:
			ok = (q.count || len(q.units) > 0) && (trusted(u.Source) || !m.called(q, x))
		case utterance.Text:
			ok = q.text
		case utterance.UnitOnly:
			ok = q.number != nil && slices.Contains(q.units, x.ID)
		}
		if ok {
			out = append(out, x)
		}
	}
	if len(out) == 0 && q.text && u.Text != "" && (u.Fault == "" || u.Fault == "unknown" || u.Fault == utterance.Aside) {
		out = append(out, utterance.Meaning{Kind: utterance.Text, Text: u.Text})
	}
	return out
}

// tells tells whether what was said at an open question is the answer to it: everything is, but alarms, which were heard before, and the
// exact words of a command. "It does not start" takes nothing back there.
func (m *Machine) tells(u *utterance.Utterance) bool {
	_, open := m.j.q.task.(storyTask)
	if !open || trusted(u.Source) || u.Text == "" || u.Fault != "" && u.Fault != "unknown" && u.Fault != utterance.Aside {
		return false
	}
	if len(u.Meanings) > 0 && u.Meanings[0].Kind == utterance.Command {
		return !m.exact[strings.ToLower(u.Text)] && len(strings.Fields(u.Text)) > 2
	}
	return true
}

func hasReading(u *utterance.Utterance) bool {
	return slices.ContainsFunc(u.Meanings, func(x utterance.Meaning) bool {
		return x.Reading != nil && x.Reading.State == measure.Jumping && x.Reading.Low != nil
	})
}

// confirming tells whether an option answers "right, or different?".
func confirming(q *question, id string) bool {
	return (q.pending != nil || len(q.choices) > 0 || q.number != nil) && (id == oRight || id == oDifferent || id == oNo)
}

// retracts tells whether a bare "no" or "different" takes back the value that was just read back.
func (m *Machine) retracts(id string) bool {
	j := m.j
	return (id == oNo || id == oDifferent) && j.q != nil && !j.q.text && j.q.pending == nil && len(j.records) > 0 && !slices.Contains(j.q.opts, id)
}

// called tells whether an answer in words was called wrong for this question before.
func (m *Machine) called(q *question, x utterance.Meaning) bool {
	return slices.Contains(m.j.wrong, named{q.id, "= " + firstOf(x.ID, x.Text)})
}

// rejected tells whether a value was called wrong for this question before.
func (m *Machine) rejected(q *question, r *measure.Reading) bool {
	return !q.act.Proof() && // what says that it is live is never turned down
		slices.Contains(m.j.wrong, named{q.id, m.written(r)})
}

// unfit is what happens when nothing said answers the question. People mutter while they work: unknown speech counts
// only shortly after a question.
func (m *Machine) unfit(u *utterance.Utterance) {
	j, q := m.j, m.j.q
	if u.Fault == utterance.Aside && len(u.Meanings) == 0 && !q.text { // said to somebody else
		j.heardView = nil
		return
	}
	if u.Source == "voice" && len(u.Meanings) == 0 && (j.holding || j.now-q.base > 8_000) {
		j.heardView = nil
		return
	}
	if j.holding {
		return
	}
	q.silent, q.base = 0, j.now
	if slices.ContainsFunc(u.Meanings, func(x utterance.Meaning) bool {
		return x.Kind == utterance.Reading && x.Reading != nil && m.rejected(q, x.Reading)
	}) {
		q.errs = max(q.errs, 1) // the ear fails again on the same value: digits
	}
	m.insisted(u)
	switch {
	case q.kind == "consent" && q.errs < 3:
		q.errs++
		m.say("info", m.line("consent.need"))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
		return
	case q.ready && len(u.Meanings) > 0 && q.errs < 2:
		q.errs++
		m.say("info", m.line("say.ready"))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
		return
	}
	m.missed()
}

// insisted lets an answer that was called wrong before be given when it is said again all the same: the first time it is missed, as what
// the ear gets wrong twice, the second time it is taken. Nothing is refused for good.
func (m *Machine) insisted(u *utterance.Utterance) {
	j, q := m.j, m.j.q
	for _, x := range u.Meanings {
		what := "= " + firstOf(x.ID, x.Text)
		if x.Reading != nil {
			what = m.written(x.Reading)
		}
		j.wrong = slices.DeleteFunc(slices.Clone(j.wrong), func(w named) bool { return w == named{q.id, what} })
	}
}

// sure tells whether a command that was heard may act at once. One that ends the question, heard where an answer is near in sound, may not.
func (m *Machine) sure(u *utterance.Utterance, fits []utterance.Meaning) bool {
	return utterance.DecideChoice(u, fits, m.choiceSlot(m.j.q)).Action == utterance.Accept
}

// missed climbs the ladder of what was not understood: other words each time, then digits, then other ways, then on.
func (m *Machine) missed() {
	j, q := m.j, m.j.q
	q.errs++
	m.cue("ask")
	kind := "choice"
	if len(q.units) > 0 {
		kind = "number"
	}
	switch {
	case q.errs <= 3:
		m.say("info", m.line("miss."+kind+"."+rungs[q.errs], "options", m.optionWords(q)))
		j.patterns[m.pattern(q)] = 0
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
	default:
		q.errs = 0
		m.giveUp("miss")
	}
}

// optionWords lists the answers of a question aloud.
func (m *Machine) optionWords(q *question) string {
	var out []string
	for _, o := range q.opts[:q.shown] {
		if !m.called(q, choiceOf(o)) {
			out = append(out, m.sayable(o))
		}
	}
	switch len(out) {
	case 0:
		return m.sayable(cDone)
	case 1:
		return out[0]
	}
	if len(out) > 3 {
		out = append(out[:3], m.sayable(cDontKnow))
	}
	return m.oneOf(out)
}

// oneOf lists what may be chosen, two at least: "a, b, or c".
func (m *Machine) oneOf(s []string) string {
	last := len(s) - 1
	return strings.Join(s[:last], ", ") + ", " + m.line("or") + " " + s[last]
}

// odd climbs the ladder of what cannot be here.
func (m *Machine) odd(why string) {
	q := m.j.q
	q.odd++
	m.cue("refused")
	if q.odd <= 3 {
		m.say("info", m.line("odd."+rungs[q.odd], "why", why))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
		return
	}
	q.odd = 0
	m.giveUp("odd")
}
