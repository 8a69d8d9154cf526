package job

import (
	"strings"

	"readback/core/protocol"
	"readback/core/vocab"
	"readback/core/worksite"
)

// items are what is read out at the end: everything that was opened, lifted, bridged or moved, as it is now.
func (m *Machine) items() []string {
	j := m.j
	var out []string
	for _, p := range j.lifted.All() {
		if !j.site.Wires.Has(p) {
			out = append(out, m.line("item.wire", "name", m.model.Points[p].Name))
		}
	}
	if j.jumped && j.site.Jumper == 0 {
		out = append(out, m.line("item.jumper"))
	}
	for _, p := range j.opened.All() {
		if !j.site.Covers.Has(p) {
			out = append(out, m.line("item.cover", "name", m.model.Places[p].Name))
		}
	}
	if j.held && !j.site.Held {
		out = append(out, m.line("item.door"))
	}
	if j.jacked && !j.site.Jack {
		out = append(out, m.line("item.jack"))
	}
	for _, p := range j.site.Noted.All() {
		out = append(out, m.line("item.reset", "name", m.model.Parts[p].Name))
	}
	return append(out, m.line(m.plain("item.power."+j.site.Power.String())))
}

// open lists in words what is still to be put back.
func (m *Machine) openWords() []string {
	s := m.j.site
	var out []string
	if s.Jumper != 0 {
		out = append(out, m.line("open.jumper"))
	}
	if s.Held {
		out = append(out, m.line("open.door"))
	}
	if s.Series != 0 {
		out = append(out, m.line("open.meter"))
	}
	if s.Jack {
		out = append(out, m.line("open.jack"))
	}
	for _, p := range s.Wires.All() {
		out = append(out, m.line("open.wire", "name", m.model.Points[p].Name))
	}
	for i := range m.j.wires {
		if w := &m.j.wires[i]; w.open() {
			out = append(out, m.line("open.unlike", "name", w.Name))
		}
	}
	for _, p := range s.Covers.All() {
		out = append(out, m.line("open.cover", "name", m.model.Places[p].Name))
	}
	for _, p := range s.Resets.All() {
		out = append(out, m.line("open.reset", "name", m.model.Parts[p].Name))
	}
	return out
}

// timedWords lists what must not be left alone.
func (m *Machine) timedWords() []string {
	s := m.j.site
	var out []string
	if s.Jumper != 0 {
		out = append(out, m.line("open.jumper"))
	}
	if s.Held {
		out = append(out, m.line("open.door"))
	}
	if s.Series != 0 {
		out = append(out, m.line("open.meter"))
	} else if s.Jack {
		out = append(out, m.line("open.jack"))
	}
	return out
}

// notAsSaid takes the person's word that something is not as it was read out: it is done again, one by one.
func (m *Machine) notAsSaid() {
	j := m.j
	m.say("warning", m.line("items.again"))
	if j.refused["items"]++; j.refused["items"] > 2 {
		m.leftOpen()
		return
	}
	j.site = j.site.Doubt()
	m.setPower()
	j.site.Covers = j.site.Covers.Or(j.opened)
	j.site.Wires = j.site.Wires.Or(j.lifted)
	j.site.Held = j.held
	j.site.Jack = j.jacked
	j.done.left = false
}

// leftOpen ends a job in which something could not be put back: it is said plainly, and left to somebody who can.
func (m *Machine) leftOpen() {
	j := m.j
	open := m.openWords()
	if j.site.Power == worksite.On || j.site.Power == worksite.Unknown {
		open = append(open, m.line("open.power"))
	}
	m.say("danger", m.signal("danger")+m.line("left.open", "what", m.words.And(open)))
	m.fact(m.line("left.open", "what", m.words.And(open)))
	j.ending = true
	m.endNow("left-open")
}

// end closes a job that was put back, with the words that fit its outcome.
func (m *Machine) end() {
	j := m.j
	m.endNow(firstOf(j.outcome, "given-up"))
}

// endNow is the last of a job.
func (m *Machine) endNow(outcome string) {
	j := m.j
	j.outcome, j.state, j.q, j.holding = outcome, "ended", nil, false
	j.alarm, j.doubtAsk = "", false
	j.stage = sRecord
	if !vocab.Good(outcome) {
		j.handover = m.handover()
	}
	m.say("info", m.line("end."+outcome))
	res := m.Result()
	m.emit(protocol.Effect{Type: protocol.DoEnd, Text: outcome, Result: &res})
}

// handover is what to tell the person who is called: what happened or where the work stopped, the state of the place,
// what was read, and what is wanted. Where an emergency or a stop line ended the work, nothing is suspected beside it.
func (m *Machine) handover() string {
	j := m.j
	parts := []string{sentence(m.model.Title)}
	if j.story != "" {
		parts = append(parts, sentence(m.line("handover.story", "story", j.story)))
	}
	alarm, _ := vocab.AlarmOf(j.happened)
	if j.happened != "" {
		minutes := max(1, (j.now-j.happenedAt+30_000)/60_000)
		parts = append(parts, m.line("handover.emergency", "what", m.line("hazard.of."+j.happened), "time", m.minutes(minutes)))
		parts = append(parts, m.outWords(alarm)...)
	}
	if j.stop >= 0 {
		parts = append(parts, sentence(m.line("stop", "why", m.model.Stops[j.stop].Say)))
	}
	parts = append(parts, m.powerWords())
	if open := m.openWords(); len(open) > 0 {
		parts = append(parts, sentence(m.line("handover.open", "what", m.words.And(open))))
	} else if j.happened == "" {
		parts = append(parts, m.line("handover.closed"))
	}
	n := 0
	for i := len(j.findings) - 1; i >= 0 && n < 3; i-- {
		if f := j.findings[i]; f.Reading != nil {
			parts = append(parts, sentence(m.model.Checks[f.Check].Name+" "+m.reading(f.Reading)))
			n++
		}
	}
	switch {
	case j.happened != "" || j.outcome == "still-live":
		parts = append(parts, m.line(callLine(j.outcome, alarm)))
	case j.stop >= 0:
		st := &m.model.Stops[j.stop]
		parts = append(parts, sentence(st.Call), sentence(st.Tell))
	default:
		var s []string
		for i, x := range j.advice.Suspects {
			if i < 2 {
				s = append(s, x.Name+" "+m.words.Chance(x.P))
			}
		}
		if len(s) > 0 {
			parts = append(parts, sentence(m.words.And(s)))
		}
		parts = append(parts, m.line("handover.call"))
	}
	return strings.Join(parts, " ")
}

// outWords says who is out and what is still open after an emergency that sent everybody out.
func (m *Machine) outWords(a vocab.Alarm) []string {
	if !a.Leave {
		return nil
	}
	out := []string{m.line("handover.in-doubt")}
	if m.j.outside {
		out[0] = m.line("handover.out")
	}
	if m.model.Fuel == "gas" {
		out = append(out, m.line("handover.gas-open"))
	}
	return append(out, m.line("handover.stay-out"))
}

// callLine is the line that says who has to come.
func callLine(outcome string, a vocab.Alarm) string {
	switch {
	case a.Leave:
		return "handover.call.emergency"
	case outcome == "still-live" || a.Ends:
		return "handover.call.electrician"
	}
	return "handover.call"
}

// photo notes a picture; the one that is waited for answers the question. A picture that comes again only brings its marks.
func (m *Machine) photo(p protocol.Photo) {
	j := m.j
	for i := range j.photos {
		if j.photos[i].Name == p.Name {
			j.photos[i].Marks = p.Marks
			return
		}
	}
	j.photos = append(j.photos, p)
	m.note("person", m.line("photo.note", "id", p.ID))
	q := j.q
	if q == nil || q.task != (photoTask{n: 0}) || q.kind != "ask" || p.ID != "before" {
		return
	}
	q.seqs = append(q.seqs, j.seq)
	m.accept(choiceOf(oPhoto))
}
