package job

import "readback/core/worksite"

// forProof stands in the place of a check where consent is for proving dead.
const forProof = -1

// consentFor is how long consent to live work holds, in ms: judgement.
const consentFor = 120_000

// consentQuestion asks for one of the only two phrases that decide on live work, for a check or forProof.
func (m *Machine) consentQuestion(t task, check int) *question {
	id := t.String()
	if check == forProof {
		id = "prove/0"
	}
	q := &question{id: "consent/" + id, task: t, kind: "consent", check: check}
	what := m.line("consent.proof")
	if check != forProof {
		what = m.model.Checks[check].Name
	}
	m.fromLine(q, "consent", "what", what)
	q.step.ID, q.step.Kind = "consent", "consent"
	hazard := "mains"
	if check != forProof {
		c := &m.model.Checks[check]
		if hazard = c.Hazard; hazard == "" || hazard == "none" {
			hazard = "low"
		}
		q.step.Where = m.whereCheck(check)
		if c.Part >= 0 {
			q.step.Parts = []string{m.model.Parts[c.Part].ID}
		}
	}
	m.warn(q, hazard)
	q.step.Power = m.powerWords()
	return q
}

// onConsent works the two phrases that decide on live work.
func (m *Machine) onConsent(q *question, id string) {
	j := m.j
	if id == oGoLive {
		if q.check == forProof {
			j.proveAt = j.now
		} else {
			j.consent, j.consAt = q.check, j.now
		}
		m.note("person", m.option(id))
		return
	}
	j.consent = -1
	if q.check == forProof { // nothing can be proved dead
		j.noProof, j.offer = true, true
		if j.task != nil {
			m.block(j.task)
		}
		return
	}
	j.noLive++
	j.offer = j.offer || j.noLive == 2
	c := &m.model.Checks[q.check]
	j.asked[q.check] = 2
	j.task = nil
	if c.Instead >= 0 && j.asked[c.Instead] == 0 {
		j.task = checkTask{c.Instead}
	}
}

// consents tells whether consent for a check, or forProof, was given and still holds. That for proving dead is kept
// apart: one job may need both in turn.
func (m *Machine) consents(check int) bool {
	j := m.j
	if check == forProof {
		return j.proveAt != 0 && j.now-j.proveAt <= consentFor
	}
	return j.consent == check && j.now-j.consAt <= consentFor
}

// beforeLive tells whether an act belongs to the time before live work, so that consent, which holds for two minutes,
// need not be asked yet. Somebody who has refused live work once is asked before anything is opened for it; what must not
// stay in place always comes out first.
func (m *Machine) beforeLive(act worksite.Act) bool {
	j := m.j
	if act.Removes() || act.Kind == worksite.PowerOff && j.site.Timed() {
		return true
	}
	if j.noLive > 0 {
		return false
	}
	switch act.Kind {
	case worksite.PowerOn, worksite.CallOn, worksite.CallOff, worksite.PlaceLeads:
		return false
	}
	return true
}
