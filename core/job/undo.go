package job

import (
	"slices"
	"strings"

	"readback/core/protocol"
	"readback/core/utterance"
)

// undo works an undo asked for by the host.
func (m *Machine) undo(ev protocol.Event) {
	j := m.j
	j.seq, j.now = ev.Seq, max(ev.At, j.now)
	rec, ok := m.target(ev.Target)
	if !ok || j.alarm != "" || j.state == "ended" {
		m.say("info", m.line("undo.none"))
		return
	}
	m.takeBackLast(rec, ev.Seq, true)
	m.say("info", m.line("undo.done", "what", rec.words))
	m.askAgain(true)
	m.timer()
}

// target finds the answer to take back: the last one, or the one that the event of that number belongs to.
func (m *Machine) target(seq int64) (record, bool) {
	recs := m.j.records
	for i := len(recs) - 1; i >= 0; i-- {
		if seq == 0 {
			return recs[i], true
		}
		for _, s := range recs[i].seqs {
			if s == seq {
				return recs[i], true
			}
		}
	}
	return record{}, false
}

// takeBack undoes an answer: all other events are replayed without those that made it up. by is the event that asked for
// it; it says nothing else and is left out of later replays. What was done with hands stays done, so after an act was
// taken back nothing about the supply is believed.
// called: the answer was called wrong, and is not taken from a voice again.
func (m *Machine) takeBack(rec record, by int64, called bool) {
	for _, s := range rec.seqs {
		m.undone[s] = true
	}
	if by > 0 {
		m.undone[by], m.doubt[by] = true, rec.act
	}
	switch {
	case !called:
	case rec.read != nil:
		m.wrong[m.Seq()] = named{rec.id, rec.taken}
	case rec.word != "" && !rec.act:
		m.wrong[m.Seq()] = named{rec.id, "= " + rec.word}
	}
	m.replay()
}

// takeBackLast undoes an answer. When it was the last one, and of a check, its question is open again, whatever was said or asked about
// the next one meanwhile.
func (m *Machine) takeBackLast(rec record, by int64, called bool) {
	recs := m.j.records
	last := len(recs) > 0 && slices.Equal(recs[len(recs)-1].seqs, rec.seqs)
	m.takeBack(rec, by, called)
	if kind, _, _ := strings.Cut(rec.id, "/"); last && (kind == "check" || kind == "meter") && !m.at(rec.id) {
		m.reopen(rec.id)
	}
}

// replay builds the job anew from the events that stand, up to and including the present one as far as it was an undo.
func (m *Machine) replay() {
	voice := m.mute
	m.mute = true
	m.j = m.newJob()
	now := m.Seq()
	for _, ev := range m.events {
		if w, ok := m.wrong[ev.Seq]; ok {
			m.j.wrong = append(m.j.wrong, w)
		}
		switch {
		case ev.Seq == now && !m.undone[now]: // the present event goes on from here
			m.clock(ev)
		case m.undone[ev.Seq]:
			m.clock(ev)
			if m.doubt[ev.Seq] {
				m.j.site = m.j.site.Doubt()
				m.setPower()
				m.j.q = nil
				m.advance()
			}
		default:
			// What meant nothing held nothing open: after it the question that is due stays due.
			if want := m.heldAt[ev.Seq]; ev.Type == protocol.EvSaid && want != "" && len(ev.Said.Meanings) > 0 && !m.at(want) {
				m.reopen(want)
			}
			m.take(ev)
		}
	}
	m.mute = voice
}

func (m *Machine) clock(ev protocol.Event) {
	m.j.seq, m.j.now = ev.Seq, max(ev.At, m.j.now)
	m.j.lastEvent = m.j.now
}

// at tells whether the question of that id is open.
func (m *Machine) at(id string) bool { return m.j.q != nil && m.j.q.id == id }

// reopen puts the question of that id: an answer that was given to it was true, and stays so.
func (m *Machine) reopen(id string) {
	if q := m.byID(id); q != nil {
		m.j.q, m.j.aim = q, q.aim
		m.answers(q)
	}
}

// retract takes the last answer back at a bare "no" and asks for it again.
func (m *Machine) retract() {
	rec := m.j.records[len(m.j.records)-1]
	m.takeBackLast(rec, m.Seq(), true)
	m.say("info", m.line("what.then"))
	m.askAgain(false)
}

// askAgain asks the question that an undo has opened again. Consent to live work that has run out meanwhile is asked for first.
func (m *Machine) askAgain(full bool) {
	j := m.j
	if q := j.q; q != nil && q.kind != "consent" && q.check >= 0 && m.rules.Consent(q.check) && !m.consents(q.aim) {
		j.aim, j.q = q.aim, nil
		m.advance()
		return
	}
	m.ask(full)
}

// correct takes the last value back and this one in its place.
func (m *Machine) correct(u *utterance.Utterance) {
	rec := m.j.records[len(m.j.records)-1]
	m.fixed[m.Seq()] = true
	m.heldAt[m.Seq()] = rec.id
	m.takeBack(rec, 0, true)
	m.j.prev = rec.read
	if !m.at(rec.id) {
		m.reopen(rec.id)
	}
	if fits := m.fitting(u); len(fits) > 0 {
		m.answer(u, fits)
		return
	}
	m.missed()
}
