package job

import (
	"fmt"
	"strings"

	"readback/core/utterance"
	"readback/core/worksite"
)

// task is one thing that a job gets done: a check, a field of the plate, a step of a repair, the way out. Tasks are small
// comparable values: the prover keeps them in maps, and a forgotten case of a new one does not compile.
type task interface {
	fmt.Stringer // kind and number, as in "check/3"

	// need is the state of the work place that it asks for.
	need(m *Machine) worksite.Need
	// ask fills the question that is put once the place is so. False: there is nothing to ask, it is done.
	ask(m *Machine, q *question) bool
	// answer takes the answer to that question. The agenda goes on afterwards.
	answer(m *Machine, q *question, x utterance.Meaning)
	// insist gives the words with which somebody who leaves it without an answer for the n-th time is asked once more,
	// empty when it may be left.
	insist(m *Machine, q *question, n int) (level, text string)
	// giveUp goes on without an answer.
	giveUp(m *Machine, q *question)
	// blocked goes on where an act that it needs cannot be done.
	blocked(m *Machine)
	// patience is how long somebody may be silent over it before the guide asks whether all is well, in ms.
	patience(m *Machine) int64
}

// kindOf is the kind of a task, "" for none.
func kindOf(t task) string {
	if t == nil {
		return ""
	}
	kind, _, _ := strings.Cut(t.String(), "/")
	return kind
}

// anywhere is part of tasks that ask nothing of the work place.
type anywhere struct{}

func (anywhere) need(*Machine) worksite.Need { return worksite.Need{} }

// leavable is part of tasks that may be left without an answer at once.
type leavable struct{}

func (leavable) insist(*Machine, *question, int) (level, text string) { return "", "" }

// optional is part of tasks without which the job goes on: words, not hands.
type optional struct {
	anywhere
	leavable
}

func (optional) patience(*Machine) int64 { return tLook }

// toward is the question that brings a task nearer: an act on the way, the consent it needs, or what it is about. It is
// nil when there is nothing to ask. Every question of every task comes through here, so nothing is reached but through
// the interlocks.
func (m *Machine) toward(t task) *question {
	j := m.j
	check, isCheck := t.(checkTask)
	if isCheck && m.model.Checks[check.n].Stage == "safety" {
		return m.taskQuestion(t) // before any switch is touched
	}
	m.proofRuns()
	n := t.need(m)
	act, moving := m.rules.Next(j.site, n)
	if mt, ok := m.meterDue(); ok && (isCheck && !m.model.Checks[check.n].Function.Dial().Own || moving && n.Power == worksite.Dead) {
		j.task = mt
		return m.taskQuestion(mt)
	}
	if isCheck && m.rules.Consent(check.n) && !m.consents(check.n) && !(moving && m.beforeLive(act)) {
		return m.consentQuestion(t, check.n)
	}
	if f, ok := m.plateDue(t); ok {
		j.task = f
		return m.toward(f) // a label may stand behind a cover
	}
	if moving {
		if c, ok := m.stateDue(act); ok { // it is asked how it stands before it is changed
			j.task = c
			return m.toward(c)
		}
		if w, open := m.unlike(); open && act.Kind == worksite.PowerOn {
			j.task = w // nothing is switched on over a wire that may be in the wrong place
			return m.toward(w)
		}
		if j.gate >= 0 && act.Kind == worksite.PowerOn {
			m.block(t)
			return nil
		}
		if q, held := m.beforeLighting(t, act); held {
			return q
		}
		if ok, why := m.rules.Permits(j.site, act, n); !ok {
			return m.barred(act.Kind.String(), why)
		}
		if j.refused[refusal(act)] >= 2 && !m.needed(t, act) { // it was refused: it is not asked for again and again
			m.block(t)
			return nil
		}
		if act.Proof() && (j.noMeter || j.noProof) {
			if j.noMeter {
				m.say("warning", m.line("meter.none"))
			}
			m.block(t)
			return nil
		}
		if act.Kind == worksite.ProveLive && !m.consents(forProof) {
			return m.consentQuestion(t, forProof)
		}
		return m.actQuestion(t, act)
	}
	if isCheck {
		if ok, why := m.rules.Allowed(j.site, check.n); !ok {
			return m.barred(m.model.Checks[check.n].ID, why)
		}
	}
	return m.taskQuestion(t)
}

// taskQuestion asks what a task is about, once the site is as it needs. It is nil when there is nothing to ask.
func (m *Machine) taskQuestion(t task) *question {
	q := &question{id: t.String(), task: t, kind: "ask", check: -1}
	q.step.Kind, q.step.ID = "ask", kindOf(t)
	if !t.ask(m, q) {
		return nil
	}
	q.step.Power = m.powerWords()
	return q
}

// block gives a task up because an act that it needs cannot be done, and goes on without it.
func (m *Machine) block(t task) {
	if m.j.task == t {
		m.j.task = nil
	}
	t.blocked(m)
}
