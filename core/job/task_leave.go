package job

import (
	"readback/core/utterance"
	"readback/core/worksite"
)

// leaveTask puts the work place in order: its acts are all there is to it.
type leaveTask struct{ leavable }

func (leaveTask) String() string                { return "leave/0" }
func (leaveTask) need(m *Machine) worksite.Need { return worksite.Leave(m.j.leaveOn) }

func (leaveTask) ask(m *Machine, _ *question) bool {
	m.j.done.left = true
	return false
}

func (leaveTask) answer(*Machine, *question, utterance.Meaning) {}
func (t leaveTask) giveUp(m *Machine, _ *question)              { m.block(t) }
func (leaveTask) blocked(m *Machine)                            { m.leftOpen() }
func (leaveTask) patience(*Machine) int64                       { return tLook }

// mostOffers is how often somebody is offered to stop in one job: judgement.
const mostOffers = 2

// offerTask says what is possible without what is missing, and offers to stop with words for somebody who comes.
type offerTask struct{ optional }

func (offerTask) String() string { return "offer/0" }

func (offerTask) ask(m *Machine, q *question) bool {
	m.j.offered++
	line := "offer"
	if m.j.noMeter || m.j.noProof {
		line = "offer.looks"
	}
	m.fromLine(q, line)
	return true
}

func (offerTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	m.say("info", sentence(m.option(x.ID)))
	if x.ID == oStop {
		m.finish("stopped-by-person", false)
	}
}

func (offerTask) giveUp(m *Machine, _ *question) { m.j.task = nil }
func (offerTask) blocked(*Machine)               {}

// itemsTask reads out all that was opened, lifted, bridged or moved, as it is now.
type itemsTask struct{}

func (itemsTask) String() string                { return "items/0" }
func (itemsTask) need(m *Machine) worksite.Need { return worksite.Leave(m.j.leaveOn) }

func (itemsTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, "items", "list", m.words.And(m.items()))
	return true
}

func (itemsTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	if x.ID == oSame {
		m.j.done.items = true
		m.say("info", m.line("items.good"))
		return
	}
	m.notAsSaid()
}

func (itemsTask) insist(_ *Machine, q *question, n int) (level, text string) {
	if n < 2 {
		return "info", q.how
	}
	return "", ""
}

func (itemsTask) giveUp(m *Machine, _ *question) { m.leftOpen() }
func (itemsTask) blocked(m *Machine)             { m.leftOpen() }
func (itemsTask) patience(*Machine) int64        { return tLook }

// handOverTask reads out what to tell the person who is called.
type handOverTask struct{ optional }

func (handOverTask) String() string { return "stop/0" }

func (handOverTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, "handover", "words", m.handover())
	return true
}

func (handOverTask) answer(m *Machine, _ *question, _ utterance.Meaning) { m.j.done.handed = true }
func (t handOverTask) giveUp(m *Machine, _ *question)                    { m.block(t) }
func (handOverTask) blocked(m *Machine)                                  { m.j.done.handed = true }
