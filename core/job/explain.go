package job

import (
	"readback/core/utterance"
)

func choiceOf(id string) utterance.Meaning { return utterance.Meaning{Kind: utterance.Choice, ID: id} }

const oPhoto = "photo-taken"

// where says where the open step is, with a landmark.
func (m *Machine) where() string {
	q := m.j.q
	text := sentence(q.step.Where)
	if q.check >= 0 {
		c := &m.model.Checks[q.check]
		for _, p := range []int{c.Red, c.Black} {
			if p >= 0 && m.model.Points[p].Where != "" {
				text = sentence(text, m.model.Points[p].Where)
			}
		}
		if c.Part >= 0 && m.model.Parts[c.Part].Look != "" {
			text = sentence(text, m.model.Parts[c.Part].Name+": "+m.model.Parts[c.Part].Look)
		}
		if len(c.Places) > 0 && m.model.Places[c.Places[0]].Where != "" {
			text = sentence(text, m.model.Places[c.Places[0]].Where)
		}
	}
	return firstOf(text, m.line("where.none"))
}

// why explains the open step.
func (m *Machine) why() string {
	j, q := m.j, m.j.q
	check, isCheck := q.task.(checkTask)
	switch {
	case q.act.Proof():
		return m.line("why.proof")
	case q.kind == "act" && isCheck:
		return m.line("why.act", "check", m.model.Checks[check.n].Name)
	case q.kind == "act":
		return m.line("why.leave")
	case q.check >= 0 && j.advice.Check == q.check:
		return m.whyCheck()
	case q.check >= 0 && stageID(j.stage) == "plan":
		return m.line("why.check", "check", m.model.Checks[q.check].Name)
	}
	return m.line("why.stage." + stageID(j.stage))
}

// whyCheck says what the advised check tells apart.
func (m *Machine) whyCheck() string {
	a := m.j.advice
	name := m.model.Checks[a.Check].Name
	switch {
	case a.Doubt > 0:
		return m.line("why.doubt", "check", m.model.Checks[a.Doubt-1].Name)
	case a.Why.Short != "":
		return a.Why.Short
	case a.Proof && len(a.Suspects) > 0:
		return m.line("why.second", "part", a.Suspects[0].Name)
	case len(a.Splits) == 2:
		return m.line("why.tells", "one", a.Splits[0], "other", a.Splits[1])
	}
	return m.line("why.check", "check", name)
}

// whatIf tells where the answers lead, without saying which one is healthy before the reading is taken.
func (m *Machine) whatIf() string {
	j, q := m.j, m.j.q
	if a := j.advice; q.check >= 0 && a.Check == q.check && len(a.Splits) == 2 {
		return m.line("what.leads", "one", a.Splits[0], "other", a.Splits[1])
	}
	return m.line("what.if")
}

// suspected names who is left under suspicion.
func (m *Machine) suspected() string {
	a := m.advise(planStages...)
	if len(a.Suspects) == 0 {
		return m.line("suspect.none")
	}
	var s []string
	for i, x := range a.Suspects {
		if i < 3 {
			s = append(s, x.Name+", "+m.words.Chance(x.P))
		}
	}
	return sentence(m.joinSemi(s))
}

// joinSemi lists what comes one after the other.
func (m *Machine) joinSemi(s []string) string {
	out := ""
	for i, x := range s {
		if i > 0 {
			x = m.words.Term("list.then", "first", out, "next", x)
		}
		out = x
	}
	return out
}

// howSure says how firm the leading suspicion is and what would change it.
func (m *Machine) howSure() string {
	a := m.advise(planStages...)
	if len(a.Suspects) == 0 {
		return m.line("suspect.none")
	}
	s := a.Suspects[0]
	text := sentence(s.Name + ", " + m.words.Chance(s.P))
	if a.Verdict && len(a.Proofs) > 0 {
		return sentence(text, m.line("proved.by", "proofs", m.words.And(a.Proofs)))
	}
	return sentence(text, m.line("not.proved"), a.Sure)
}

// costWords says what it will cost as far as it is known.
func (m *Machine) costWords() string {
	if m.j.repair >= 0 {
		return m.costSentence()
	}
	a := m.advise(planStages...)
	if len(a.Suspects) > 0 && a.Repair >= 0 {
		if words := m.words.Span(m.model.Repairs[a.Repair].Price); words != "" {
			return m.line("cost.part", "range", words)
		}
	}
	return m.line("cost.early")
}

// howLong says how much is left.
func (m *Machine) howLong() string {
	j := m.j
	if j.q != nil && kindOf(j.q.task) == "cycle" {
		return m.line("howlong.cycle")
	}
	return m.line("howlong", "stage", m.words.Whole(int64(j.stage)), "all", m.words.Whole(sRecord))
}

// whereAmI says the last fact, what is now and what follows.
func (m *Machine) whereAmI() {
	j := m.j
	if len(j.facts) > 0 {
		m.say("info", sentence(m.line("last.fact", "fact", j.facts[len(j.facts)-1])))
	}
	m.say("info", sentence(m.line("stage."+stageID(j.stage)), m.powerWords()))
	if j.holding {
		m.say("info", m.line("holding"))
		return
	}
	m.request()
}
