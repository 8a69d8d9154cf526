package job

import "readback/core/worksite"

// giveUp leaves a question without an answer. Everything has a next step; acts that take back what must not stay are
// asked again, and if they really cannot be done the job ends and says so.
func (m *Machine) giveUp(how string) {
	j, q := m.j, m.j.q
	q.seqs = append(q.seqs, j.seq)
	key := "give." + q.task.String()
	if q.act.Kind != worksite.None {
		key = refusal(q.act)
	}
	j.refused[key]++
	n := j.refused[key]
	switch {
	case q.kind == "consent":
		m.onConsent(q, oOtherWay)
		j.q = nil
		m.advance()
		return
	case q.act.Kind != worksite.None:
		m.giveUpAct(q, n)
		return
	}
	if level, text := q.task.insist(m, q, n); text != "" {
		m.say(level, text)
		m.request()
		return
	}
	before := j.knowledge.snapshot()
	j.q = nil
	m.say("info", m.line("lost."+how))
	if j.unknown++; j.unknown >= 3 {
		j.offer, j.unknown = true, 0
	}
	j.records = append(j.records, record{id: q.id, seqs: q.seqs, words: m.line("unknown"), word: how, task: q.task, check: q.check, before: before})
	q.task.giveUp(m, q)
	m.advance()
}
