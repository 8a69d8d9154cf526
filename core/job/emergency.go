package job

import (
	"slices"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// leaves tells whether an emergency sends everybody out and locks the job.
func leaves(class string) bool {
	a, ok := vocab.AlarmOf(class)
	return ok && a.Leave
}

// alarmed works an emergency in an utterance, from whatever state, with nothing in between.
func (m *Machine) alarmed(u *utterance.Utterance) bool {
	j := m.j
	for i := range u.Meanings {
		x := &u.Meanings[i]
		if x.Kind != utterance.Emergency || i > 0 && x.Cost > rivalCost {
			continue
		}
		if u.Start > 0 && u.Start <= j.alarmAt && (j.doubtAsk && (x.ID == "ask" || x.Doubt || i > 0) || j.alarm == x.ID) {
			if j.doubtAsk {
				j.doubtElse = besides(u)
			}
			return true // the end of the saying that was acted on while it was spoken
		}
		j.heardView = &protocol.HeardView{Text: u.Text, Rivals: u.Rivals, Taken: m.alarmName(x.ID)}
		m.note("person", u.Text)
		if x.ID == "ask" || x.Doubt || i > 0 {
			if j.alarm != "" {
				return false // worse is known already
			}
			m.askNow(x.ID)
			j.doubtElse = besides(u)
			return true
		}
		m.raise(x.ID)
		return true
	}
	return false
}

// weight orders emergencies by what they do to the job.
func weight(class string) int {
	switch a, ok := vocab.AlarmOf(class); {
	case !ok:
		return 0
	case a.Goes:
		return 1
	case a.Ends:
		return 3
	case a.Leave:
		return 4
	}
	return 2
}

// raise starts the script of an emergency class.
func (m *Machine) raise(class string) {
	j := m.j
	if _, ok := m.words.Lines["alarm."+class]; !ok {
		class = "any"
	}
	again := j.alarm == class
	j.alarm, j.alarmAt, j.doubtAsk, j.holding = class, j.now, false, false
	j.state = "emergency"
	if j.q != nil && j.q.act.Kind != worksite.None { // nobody knows how far the hands had come
		j.site = m.rules.Retract(j.site, j.q.act)
	}
	j.site = j.site.Doubt()
	m.setPower()
	j.consent, j.proveAt = -1, 0
	j.done.left = false // what was put in order is looked at again
	if !again {
		j.alarmN = 0
		if weight(class) >= weight(j.happened) { // a lesser one does not hide a greater
			j.happened, j.happenedAt = class, j.now
		}
		m.fact(m.line("alarm.fact", "class", class))
	}
	m.emit(protocol.Effect{Type: protocol.DoHush})
	m.script()
	if leaves(class) {
		j.locked = true
		j.outcome = "emergency"
		j.handover = m.handover()
	}
}

// script says what to do: first the act in few words, then the reason, all of it twice.
func (m *Machine) script() {
	j := m.j
	first, then := m.line("alarm."+j.alarm), m.line("alarm."+j.alarm+".then")
	m.say("emergency", first)
	m.say("emergency", then)
	m.emit(protocol.Effect{Type: protocol.DoCue, ID: "danger"})
	m.say("emergency", first)
	m.say("emergency", then)
}

// askNow asks at once whether a hazard of a class is there now; "ask" is one without a class.
func (m *Machine) askNow(class string) {
	j := m.j
	j.doubtOf, j.doubtElse = class, nil
	m.breakProof() // it is one unbroken run, begun and agreed to anew after this question
	j.proveAt = 0
	j.doubtAsk, j.state, j.alarmN, j.alarmAt = true, "confirm", 0, j.now
	m.emit(protocol.Effect{Type: protocol.DoHush})
	m.say("warning", m.rightNow())
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: "choice"})
}

// rightNow is the question about a hazard that may not be there: it names what was heard.
func (m *Machine) rightNow() string {
	class := m.j.doubtOf
	if _, ok := m.words.Lines["hazard.of."+class]; !ok {
		class = "any"
	}
	return m.line("right.now", "what", m.line("hazard.of."+class))
}

// besides is what a saying can mean beside an alarm, as it was heard otherwise.
func besides(u *utterance.Utterance) *utterance.Utterance {
	rest := *u
	rest.Meanings = slices.DeleteFunc(slices.Clone(u.Meanings), func(x utterance.Meaning) bool { return x.Kind == utterance.Emergency })
	return &rest
}

// dropElse forgets what was meant beside a doubted danger. If it told of an act, nobody knows how far the hands had come.
func (m *Machine) dropElse() {
	j := m.j
	if j.doubtElse != nil && j.q != nil && j.q.act.Adds() {
		j.site = m.rules.Retract(j.site, j.q.act)
	}
	j.doubtElse = nil
}

// meantElse takes a saying that was heard as a danger and was none for the answer it holds besides, so that somebody whose "plugged in"
// sounds like "flooding" is not asked for ever. Consent and what is asked for safety are always asked afresh.
func (m *Machine) meantElse() bool {
	j, u := m.j, m.j.doubtElse
	j.doubtElse = nil
	if j.q == nil || u == nil || j.q.kind == "consent" || j.q.act.Proof() || j.q.check >= 0 && m.model.Checks[j.q.check].Stage == "safety" {
		return false
	}
	fits := m.fitting(u)
	if len(fits) == 0 || fits[0].Kind != utterance.Choice {
		return false
	}
	m.answer(u, fits)
	return true
}

// doubted is the class to raise when a doubtful alarm is not denied: who may have to leave is told why, anybody else just to get out.
func (m *Machine) doubted() string {
	if leaves(m.j.doubtOf) {
		return m.j.doubtOf
	}
	return "any"
}

// inAlarm works what is said while an emergency stands or is asked about.
func (m *Machine) inAlarm(u *utterance.Utterance) {
	j := m.j
	ids := map[string]bool{}
	for _, x := range u.Meanings {
		if (x.Kind == utterance.Choice || x.Kind == utterance.Command) && x.Cost <= rivalCost {
			ids[x.ID] = true
		}
	}
	if j.doubtAsk {
		if ids[cChanged] { // true whatever the answer to this question is
			m.dropElse()
			m.distrust()
		}
		switch {
		case ids[oLeave] || ids[oYes]:
			j.doubtAsk = false
			m.raise(m.doubted())
		case (ids[oNone] || ids[cFalseAlarm]) && !ids[oYes]:
			j.doubtAsk, j.state, j.alarm, j.locked = false, "ask", "", false
			m.say("info", m.line("none.back"))
			if j.outcome == "emergency" {
				j.outcome = ""
			}
			j.happened, j.outside = "", false
			m.askRaisedAgain()
			if m.meantElse() {
				return
			}
			j.q = nil
			m.advance()
		default:
			m.dropElse() // something else is meant by now
			m.say("warning", m.rightNow())
			m.emit(protocol.Effect{Type: protocol.DoListen, ID: "choice"})
		}
		return
	}
	switch {
	case ids[cFalseAlarm]:
		m.fact(m.line("alarm.false"))
		m.leaveAnew()
		j.site = j.site.Doubt()
		m.setPower()
		m.askNow(j.alarm)
	case j.locked && ids[oOutside]:
		j.outside = true
		m.say("info", m.line("alarm.out"))
		m.endNow("emergency")
	case j.locked:
		m.script()
	case ids[oOkay] || ids[oClear] || ids[oOutside] || ids[cReady]:
		m.stoodClear()
	case ids[cFinish] || ids[cPerson]:
		m.stoodClear()
	default:
		m.say("emergency", m.line("alarm."+j.alarm))
		m.say("warning", m.line("alarm.after"))
	}
}

// askRaisedAgain has checks asked again whose answer was a danger that is called none now: what they look for is not
// known yet.
func (m *Machine) askRaisedAgain() {
	j := m.j
	j.findings = slices.DeleteFunc(slices.Clone(j.findings), func(f Finding) bool {
		c := &m.model.Checks[f.Check]
		raised := f.Option >= 0 && c.Options[f.Option].Emergency != ""
		if f.Reading != nil {
			b := m.bandOf(f.Check, f.Reading)
			raised = b != nil && b.Emergency != ""
		}
		if raised {
			j.asked[f.Check] = 0
		}
		return raised
	})
	m.clampCounts()
}

// leaveAnew has the way out gone through again when it had been gone through: what happened since may have changed the place.
func (m *Machine) leaveAnew() {
	j := m.j
	j.done.left = false
	if j.ending {
		j.task, j.stage = nil, sRefit
	}
}

// stoodClear goes on after somebody stood clear: never on with the work, always the way out with the supply off.
func (m *Machine) stoodClear() {
	j := m.j
	m.say("info", m.line("alarm.over"))
	class := j.alarm
	if weight(j.happened) > weight(class) {
		class = j.happened
	}
	j.alarm, j.state = "", "ask"
	j.q = nil
	switch a, _ := vocab.AlarmOf(class); {
	case a.Goes:
		m.advance()
		return
	case a.Ends: // hands stay out of it, whatever is open
		m.say("danger", m.signal("danger")+m.line("alarm.stays"))
		if open := m.openWords(); len(open) > 0 {
			m.say("danger", m.line("left.open", "what", m.words.And(open)))
			m.fact(m.line("left.open", "what", m.words.And(open)))
		}
		j.ending = true
		m.endNow("stopped-after-emergency")
		return
	}
	m.finish("stopped-after-emergency", false)
	j.outcome, j.leaveOn = "stopped-after-emergency", false // also when the way out had begun for another reason
	m.leaveAnew()
	m.advance()
}

// alarmName is a class of emergency in words; "ask" is a danger of no class.
func (m *Machine) alarmName(class string) string {
	if _, ok := m.words.Lines["hazard.of."+class]; !ok {
		class = "any"
	}
	return m.line("hazard.of." + class)
}
