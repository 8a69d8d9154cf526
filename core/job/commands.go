package job

import (
	"slices"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// Command ids of the lexicon. Every one is valid in every state.
const (
	cRepeat     = "repeat"
	cLonger     = "longer"
	cSlower     = "slower"
	cShorter    = "shorter"
	cWhere      = "where"
	cWhy        = "why"
	cHow        = "how"
	cWhatIf     = "what-if"
	cBack       = "back"
	cHold       = "hold-on"
	cReady      = "ready"
	cDone       = "done"
	cSkip       = "skip"
	cCantReach  = "cant-reach"
	cDontKnow   = "dont-know"
	cNotSure    = "not-sure"
	cChanged    = "it-changed"
	cJumping    = "jumping"
	cMissed     = "missed-it"
	cHowLong    = "how-long"
	cWhereAmI   = "where-am-i"
	cShouldBe   = "should-it-be"
	cSuspected  = "suspected"
	cHowSure    = "how-sure"
	cCost       = "cost"
	cShortcut   = "shortcut"
	cScratch    = "scratch-that"
	cQuiet      = "quiet"
	cPerson     = "person"
	cFinish     = "finish"
	cHelp       = "help"
	cFalseAlarm = "false-alarm"
	cGoLive     = "go-live"
	cOtherWay   = "other-way"
	cOtherMeter = "other-meter"
)

// Option ids that the session itself asks for.
const (
	oRight     = "right-value"
	oDifferent = "different"
	oNo        = "no"
	oGoLive    = "go-live"
	oOtherWay  = "other-way"
	oSame      = "same"
	oGood      = "good"
	oFull      = "full-cycle"
	oRunning   = "running"
	oFix       = "fix-it"
	oCall      = "call-someone"
	oStop      = "stop-here"
	oLater     = "not-yet"
	oNone      = "none"
	oYes       = "yes"
	oOkay      = "okay-now"
	oOutside   = "safe-outside"
	oClear     = "clear"
	oLeave     = "leave-now"
	oTrueRMS   = "true-rms"
	oNoMeter   = "no-meter"
	oRated     = "rated"
)

// holds tells whether a command leaves a pause as it is.
func holds(id string) bool {
	c, ok := vocab.CommandOf(id)
	return ok && c.Holds
}

// command works a command. A question never advances the step; after its answer the request is said again, short.
func (m *Machine) command(id string, u *utterance.Utterance) {
	j, q := m.j, m.j.q
	j.heardView.Taken, q.told = m.option(id), id
	if j.holding && !holds(id) && m.unhold() {
		return
	}
	q.base = j.now
	switch id {
	case cRepeat:
		j.patterns[m.pattern(q)] = 0
		m.again()
	case cLonger:
		j.brief = -1
		j.patterns[m.pattern(q)] = 0
		m.ask(true)
	case cSlower:
		j.rate = true
		m.say("info", m.line("slower"))
		m.again()
	case cShorter:
		j.brief = 1
		m.say("info", m.line("shorter"))
		m.request()
	case cWhere:
		j.patterns[m.pattern(q)] = 0
		m.say("info", m.where())
		m.request()
	case cWhy:
		m.say("info", m.why())
		m.request()
	case cHow:
		j.patterns[m.pattern(q)] = 0
		m.say("info", firstOf(q.how, m.line("how.none")))
		m.request()
	case cWhatIf:
		m.say("info", m.whatIf())
		m.request()
	case cBack, cScratch:
		m.scratch(id == cScratch)
	case cHold:
		m.hold()
	case cReady:
		m.ready()
	case cDone:
		m.doneSaid()
	case cSkip, cCantReach, cDontKnow:
		m.giveUp(id)
	case cNotSure:
		m.notSure()
	case cChanged:
		m.changed()
	case cJumping:
		m.say("info", m.line("jumping.ask"))
	case cMissed:
		m.missedIt()
	case cHowLong:
		m.say("info", m.howLong())
		m.request()
	case cWhereAmI:
		m.whereAmI()
	case cShouldBe:
		m.say("info", m.line("expected.later"))
		m.request()
	case cSuspected:
		m.say("info", m.suspected())
		m.request()
	case cHowSure:
		m.say("info", m.howSure())
		m.request()
	case cCost:
		m.say("info", m.costWords())
		m.request()
	case cShortcut:
		m.say("warning", m.line("shortcut"))
		m.request()
	case cQuiet:
		m.quiet()
	case cPerson:
		m.say("info", m.line("person", "words", m.handover()))
		j.handover = m.handover()
		m.request()
	case cFinish:
		m.wantsEnd()
	case cHelp:
		m.say("info", m.line("help"))
		m.request()
	case cOtherMeter:
		m.say("info", m.line("other.meter"))
	case cFalseAlarm:
		m.request()
	case cGoLive, cOtherWay:
		m.request()
	}
}

// again says the last sentences once more.
func (m *Machine) again() {
	j := m.j
	last := j.lastSaid
	if len(last) == 0 || j.q == nil {
		m.ask(true)
		return
	}
	for _, e := range last {
		m.say(e.Level, e.Text)
	}
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: j.q.listen()})
}

// request says in short what is being waited for.
func (m *Machine) request() {
	j, q := m.j, m.j.q
	if q == nil || j.alarm != "" || j.state == "ended" {
		return
	}
	if e := j.unheard; e != nil {
		j.unheard = nil
		m.say(e.Level, e.Text)
	}
	switch {
	case q.pending != nil:
		m.say("info", m.line("right.or.different", "value", m.inWords(*q.pending)))
	case len(q.choices) > 1:
		m.say("info", m.line("this.or.that", "this", m.inWords(q.choices[0]), "that", lower(m.inWords(q.choices[1]))))
	case q.number != nil:
		m.say("info", m.line("which.unit", "number", m.words.Decimal(q.number.Value.Dec), "units", m.unitWords(q.units)))
	case q.ready:
		m.say("info", m.line("say.ready"))
	default:
		m.say("info", firstOf(q.short, q.step.Say))
	}
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
}

// quiet stops the voice. The host then tells what was cut off.
func (m *Machine) quiet() { m.emit(protocol.Effect{Type: protocol.DoHush}) }

// cutOff notes that a saying ended. A caution that was cut off comes back with the next words.
func (m *Machine) cutOff(ev protocol.Event) {
	j := m.j
	if j.q != nil {
		j.q.base = j.now
	}
	if !ev.Cut || j.q == nil {
		return
	}
	for i := range j.lastSaid {
		if e := &j.lastSaid[i]; e.ID == ev.Spoke && e.Level != "info" && e.Text != "" {
			j.unheard = e
		}
	}
}

// scratch takes the last answer back. called: it was called wrong, not only gone back to.
func (m *Machine) scratch(called bool) {
	j := m.j
	q := j.q
	if q.asking() {
		if q.pending != nil {
			m.reject(q, *q.pending)
		}
		q.settle()
		j.state = "ask"
		m.say("info", m.line("what.then"))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
		return
	}
	i, ok := m.target(0)
	if !ok {
		m.say("info", m.line("undo.none"))
		m.request()
		return
	}
	words := j.records[i].words
	m.takeBack(i, called)
	m.say("info", m.line("undo.done", "what", words))
	m.advance()
}

// hold pauses for as long as the person wants, unless something is in place that must not be left alone.
func (m *Machine) hold() {
	j := m.j
	if j.holding {
		m.say("info", m.line("holding"))
		return
	}
	if j.site.Timed() || j.q.act.Removes() || j.q.check >= 0 && m.rules.For(j.q.check).Power == worksite.Live && m.rules.Consent(j.q.check) && j.q.kind != "consent" {
		if !j.site.Timed() {
			m.say("warning", m.line("hold.live"))
		} else {
			m.say("warning", m.line("hold.refused", "what", m.words.And(m.timedWords())))
		}
		m.outFirst()
		return
	}
	j.holding, j.state = true, "hold"
	m.cue("hold")
	m.say("info", m.line("holding"))
}

// outFirst gives the open aim up in favour of taking out what must not stay, so that a pause is possible after it.
func (m *Machine) outFirst() {
	j := m.j
	if j.site.Timed() || j.site.Power == worksite.On {
		j.task, j.q = pauseTask{}, nil
		m.advance()
		return
	}
	m.request()
}

// unhold goes on after a pause. It tells whether the open question was put anew: a pause ends a proof of dead under way.
func (m *Machine) unhold() bool {
	j := m.j
	j.holding, j.state = false, "ask"
	m.cue("resume")
	if j.q == nil || !j.q.act.Proof() && !(m.proofAged() && m.atDead(j.q)) {
		return false
	}
	m.breakProof()
	j.q = nil
	m.advance()
	return true
}

func (m *Machine) ready() {
	j, q := m.j, m.j.q
	if j.holding {
		if !m.unhold() {
			m.say("info", m.line("resumed"))
			m.ask(true)
		}
		return
	}
	if q.ready {
		q.ready = false
		m.answers(q)
		q.step.Part = "B"
		if e := j.unheard; e != nil {
			j.unheard = nil
			m.say(e.Level, e.Text)
		}
		m.say("info", sentence(q.step.Act, q.step.Say))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
		return
	}
	if q.kind == "act" && slices.Contains(q.opts, cReady) {
		m.doneSaid()
		return
	}
	m.request()
}

// stated are acts that only their state in words completes: "okay" says nothing about them.
func stated(a worksite.Act) bool {
	switch a.Kind {
	case worksite.PowerOff, worksite.PowerOn, worksite.JumperOut, worksite.FreeDoor:
		return true
	}
	return false
}

func (m *Machine) doneSaid() {
	q := m.j.q
	switch {
	case q.ready:
		m.ready()
	case m.watches(q):
		q.seqs = append(q.seqs, m.j.seq)
		m.nothingMore(q)
	case q.kind == "consent": // only its two phrases decide on live work
		m.request()
	case q.act.Kind == worksite.None && kindOf(q.task) == "swap", q.act.Kind != worksite.None && len(q.units) == 0 && !stated(q.act):
		q.seqs = append(q.seqs, m.j.seq)
		m.accept(utterance.Meaning{Kind: utterance.Choice, ID: firstOf(q.good, cDone)})
	case q.kind == "act":
		m.say("info", m.line("say.state", "state", m.optionWords(q)))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
	case len(q.units) > 0:
		m.say("info", m.line("done.number"))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
	default:
		m.request()
	}
}

// notSure records doubt; it is never enough to call something dead, and a choice said with doubt is asked again once.
func (m *Machine) notSure() {
	j, q := m.j, m.j.q
	j.doubts = append(j.doubts, q.step.ID)
	if q.hazard || q.kind == "act" || q.kind == "consent" {
		m.say("info", m.line("unsure.hazard"))
		m.request()
		return
	}
	m.giveUp(cDontKnow)
}

// changed is the answer to "something happened": hands out, and nothing about the supply is believed any more.
func (m *Machine) changed() {
	j := m.j
	m.say("warning", m.signal("warning")+m.line("changed"))
	m.distrust()
	m.unholdQuietly()
	j.q = nil
	m.advance()
}

// distrust believes nothing any more of the supply, the proof and what was agreed to.
func (m *Machine) distrust() {
	j := m.j
	j.site = j.site.Doubt()
	m.setPower()
	m.fact(m.line("changed.fact"))
	j.done.left = false
	j.consent, j.proveAt = -1, 0
}

func (m *Machine) unholdQuietly() {
	if m.j.holding {
		m.j.holding, m.j.state = false, "ask"
	}
}

// missedIt goes back to before the call, so that the next trial can be caught.
func (m *Machine) missedIt() {
	j, q := m.j, m.j.q
	if q.check < 0 || m.rules.For(q.check).Call != worksite.Yes {
		m.request()
		return
	}
	if j.refused[q.id]++; j.refused[q.id] > 3 {
		m.giveUp(cDontKnow)
		return
	}
	m.say("info", m.line("missed", "left", m.words.Whole(int64(4-j.refused[q.id]))))
	if m.rules.For(q.check).Place == 0 {
		m.request()
		return
	}
	j.site.Call = worksite.NotKnown // the call is taken off and given again, the leads stay where they are
	j.site = m.rules.Apply(j.site, worksite.Act{Kind: worksite.PlaceLeads, N: int16(q.check)}, worksite.Done)
	j.q = nil
	m.advance()
}

// wantsEnd turns to the restoring path: the person gives up for now.
func (m *Machine) wantsEnd() {
	j := m.j
	m.unholdQuietly()
	if j.ending {
		m.say("info", m.line("finish.already"))
		m.request()
		return
	}
	m.say("info", m.line("finish"))
	j.records = append(j.records, record{id: j.q.id, seqs: []int64{j.seq}, words: m.sayable(cFinish), task: j.task, check: -1, before: j.knowledge.snapshot()})
	m.finish("given-up", false)
	m.advance()
}
