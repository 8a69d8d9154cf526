package job

import (
	"strconv"

	"readback/core/worksite"
)

// giveUp leaves a question without an answer. Everything has a next step; acts that take back what must not stay are
// asked again, and if they really cannot be done the job ends and says so.
func (m *Machine) giveUp(how string) {
	j, q := m.j, m.j.q
	q.seqs = append(q.seqs, j.seq)
	key := "give." + q.aim.String()
	if q.act.Kind != worksite.None {
		key = q.act.Kind.String() + strconv.Itoa(int(q.act.N))
	}
	j.refused[key]++
	n := j.refused[key]
	switch {
	case q.kind == "consent":
		m.consented(q, oOtherWay)
		j.q = nil
		m.advance()
		return
	case q.act.Kind != worksite.None:
		m.giveUpAct(q, n)
		return
	case q.check >= 0 && m.model.Checks[q.check].Stage == "safety" && n < 2:
		m.say("warning", m.line("safety.must"))
		m.request()
		return
	case q.aim.Kind == "items" || q.aim.Kind == "decide":
		if n < 2 {
			m.say("info", q.how)
			m.request()
			return
		}
	}
	j.q = nil
	m.say("info", m.line("lost."+how))
	j.records = append(j.records, record{id: q.id, seqs: q.seqs, words: m.line("unknown"), word: how})
	switch {
	case q.check >= 0:
		c := &m.model.Checks[q.check]
		m.settle(Finding{Check: q.check, Option: -1, Unknown: true})
		m.fact(m.line("unknown.fact", "check", c.Name))
		if c.Stage == "safety" {
			m.say("warning", m.line("safety.stop"))
			m.finish("handed-over", false)
		}
		if j.stage == sRestart && j.repair >= 0 && m.model.Repairs[j.repair].Confirm == q.check {
			m.fact(m.line("unconfirmed"))
		}
	case q.aim.Kind == "plate":
		m.noPlate(q.aim.N)
		j.aim = aim{}
	case q.aim.Kind == "meter":
		j.done["meter."+meterSteps[q.aim.N]] = true
		if q.aim.N == 0 {
			m.say("info", m.line("meter.modest"))
		} else {
			m.fact(m.line("leads.unproved"))
		}
		j.aim = aim{}
	case q.aim.Kind == "decide":
		m.finish("handed-over", false)
	case q.aim.Kind == "match":
		m.finish("part-awaited", false)
	case q.aim.Kind == "items":
		m.leftOpen()
	default:
		m.block(q.aim)
	}
	m.advance()
}

// noPlate notes that a field of the plate is not known. After two in a row the rest is not asked: the plate cannot be read.
func (m *Machine) noPlate(field int) {
	p, known := m.model.Plate, m.j.plate
	known[p[field].ID] = "unknown"
	if field == 0 || known[p[field-1].ID] != "unknown" || field == len(p)-1 {
		return
	}
	for _, f := range p[field+1:] {
		known[f.ID] = "unknown"
	}
	m.say("info", m.line("plate.without"))
}

func (m *Machine) giveUpAct(q *question, n int) {
	j := m.j
	needed := q.act.Removes() || q.aim.Kind == "leave" || q.aim.Kind == "pause" || q.act.Kind == worksite.PowerOff && j.site.Open()
	switch {
	case n == 1 && needed:
		m.say("warning", firstOf(q.how, m.line("must")))
		m.request()
		return
	case needed:
		m.leftOpen()
		return
	case n >= 3:
		j.q = nil
		m.finish("handed-over", false)
	default:
		j.q = nil
		m.say("info", m.line("lost.cant-reach"))
		if q.aim.Kind == "check" {
			m.settle(Finding{Check: q.aim.N, Option: -1, Unknown: true})
			m.fact(m.line("unknown.fact", "check", m.model.Checks[q.aim.N].Name))
		}
		m.block(q.aim)
	}
	m.advance()
}
