package job

import (
	"slices"

	"readback/core/utterance"
	"readback/core/worksite"
)

// accept takes an answer as established, reads it back and goes on.
func (m *Machine) accept(x utterance.Meaning) {
	j, q := m.j, m.j.q
	j.state = "ask"
	rec := record{id: q.id, seqs: q.seqs, act: q.act, read: x.Reading, task: q.task, check: q.check, typed: q.typed, before: j.knowledge.snapshot()}
	if q.kind != "consent" { // consent is never taken from an earlier one
		rec.answer = &x
	}
	if x.Reading != nil {
		rec.taken, rec.words = m.written(x.Reading), m.reading(x.Reading)
		j.prev = x.Reading
	} else if x.Kind == utterance.Choice {
		rec.words, rec.word = m.option(x.ID), x.ID
	} else if x.Kind == utterance.Count {
		rec.words, rec.word = x.Text, x.Text
		if _, ok := m.back[x.Text]; ok {
			rec.words = m.option(x.Text)
		}
	} else {
		rec.words = x.Text
	}
	if j.heardView != nil {
		j.heardView.Taken, j.heardView.Pending = firstOf(rec.taken, rec.words), false
	}
	j.records = append(j.records, rec)
	j.wrong = slices.DeleteFunc(slices.Clone(j.wrong), func(w named) bool { return w.id == q.id }) // asked again later it is another question
	j.patterns[m.pattern(q)]++
	m.cue("accepted")
	j.q, m.labels = nil, q.labels
	if q.act.Kind == worksite.None && q.kind != "consent" {
		j.unknown = 0
	}
	switch {
	case q.kind == "consent":
		m.onConsent(q, x.ID)
	case q.act.Proof():
		m.onProof(q, x.Reading)
	case q.act.Kind == worksite.ProveEmpty:
		m.onEmpty(q, x.Reading)
	case q.act.Kind != worksite.None:
		m.onAct(q.act, x.ID)
	default:
		if q.check < 0 { // a check is done only once its answer is settled
			j.task = nil
		}
		q.task.answer(m, q, x)
	}
	m.labels = nil
	if j.alarm == "" && j.state != "ended" {
		m.advance()
	}
}

func firstOf(a, b string) string {
	if a != "" {
		return a
	}
	return b
}
