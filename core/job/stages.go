package job

import (
	"encoding/json"
	"slices"
	"strconv"

	"readback/core/measure"
	"readback/core/unit"
	"readback/core/vocab"
	"readback/core/worksite"
)

// Stages whose checks the adviser may choose from once the meter is proved.
var planStages = vocab.StageIDs(func(s vocab.Stage) bool { return s.Chosen })

// lowBattery is the charge in per cent under which no live work is begun: the guide could fall silent in the middle of it.
const lowBattery = 15

// maxMended is how many repairs one job carries out before it is handed over.
const maxMended = 3

// advance puts the next question. Whatever happened before, there is one, or the job is over.
func (m *Machine) advance() {
	j := m.j
	for range 1000 {
		if j.alarm != "" || j.doubtAsk || j.state == "ended" {
			return
		}
		if j.aim.Kind == "" {
			j.aim = m.choose()
		}
		if j.aim.Kind == "record" {
			m.end()
			return
		}
		if q := m.toward(j.aim); q != nil {
			m.open(q)
			return
		}
		j.aim = aim{} // it needed no question
	}
	panic("session: no question within 1000 aims")
}

// choose picks what to get done next. The stages follow one another; a question of safety that has no answer comes
// before all of them.
func (m *Machine) choose() aim {
	j := m.j
	if a, ok := m.unasked("safety"); ok && !j.ending {
		return a
	}
	if len(j.ahead) > 0 && !j.ending {
		c := j.ahead[0]
		j.ahead = j.ahead[1:]
		return aim{"check", c}
	}
	for {
		if j.ending && j.stage < sRefit {
			j.stage = sRefit
		}
		switch j.stage {
		case sSafety:
			j.stage = sStory
		case sStory:
			if !j.done["story"] {
				return aim{"story", 0}
			}
			if a, ok := m.unasked("story"); ok {
				return a
			}
			j.stage = sPlate
		case sPlate:
			for i := range m.model.Plate {
				if _, ok := j.plate[m.model.Plate[i].ID]; !ok {
					return aim{"plate", i}
				}
			}
			if a, ok := m.unasked("plate"); ok {
				return a
			}
			j.stage = sLight
		case sLight:
			if a, ok := m.unasked("light"); ok {
				return a
			}
			j.stage = sFree
		case sFree, sWatch:
			stage := [...]string{sFree: "free", sWatch: "watch"}[j.stage]
			if a, ok := m.another(); ok {
				return a
			}
			if m.closed() {
				continue
			}
			if a := m.advise(stage); a.Check >= 0 && !a.Verdict {
				j.advice = a
				m.sayDoubt(a)
				return aim{"check", a.Check}
			}
			j.stage++
		case sMeter:
			for i, id := range meterSteps {
				if !j.done["meter."+id] && (i == 0 || !j.noMeter) {
					return aim{"meter", i}
				}
			}
			if a, ok := m.unasked("meter"); ok {
				return a
			}
			j.stage = sPlan
		case sPlan, sProof:
			if a, ok := m.another(); ok {
				return a
			}
			if m.closed() {
				continue
			}
			a := m.advise(planStages...)
			j.advice = a
			if a.Check < 0 {
				if m.mayPass() {
					return m.rest()
				}
				m.unresolved()
				continue
			}
			j.stage = sPlan
			if a.Proof {
				j.stage = sProof
			}
			m.sayDoubt(a)
			return aim{"check", a.Check}
		case sCause:
			for _, c := range m.model.Repairs[j.repair].Causes {
				if j.asked[c] == 0 && !m.barredByProof(c) {
					return aim{"check", c}
				}
			}
			j.stage = sCost
		case sCost:
			if a, ok := m.cost(); ok {
				return a
			}
			j.stage = sPart
		case sPart:
			if len(m.model.Repairs[j.repair].Match) > 0 && !j.done["match"] {
				return aim{"match", 0}
			}
			j.stage = sSwap
		case sSwap:
			if a, ok := m.swap(); ok {
				return a
			}
			m.repaired()
			j.stage = sRestart
		case sRestart:
			if a, ok := m.restart(); ok {
				return a
			}
			if j.stage == sRestart {
				j.stage, j.leaveOn = sRefit, true
				j.outcome = "fixed"
			}
		case sRefit:
			if !j.done["leave"] {
				return aim{"leave", 0}
			}
			if !j.done["items"] && m.touched() {
				return aim{"items", 0}
			}
			if !j.done["stop"] && (j.stop >= 0 || !vocab.Good(j.outcome)) {
				return aim{"stop", 0}
			}
			j.stage = sRecord
		case sRecord:
			return aim{"record", 0}
		}
	}
}

// sayDoubt says why something is asked that was answered before, or instead of it: nobody is asked twice without a reason.
func (m *Machine) sayDoubt(a Advice) {
	j := m.j
	doubted := a.Doubt - 1
	if a.Doubt > 0 {
		j.doubted = append(j.doubted, Doubt{Check: doubted, After: len(j.findings)})
	} else {
		since := 0
		if n := len(j.mended); n > 0 {
			since = j.mended[n-1].After
		}
		if slices.ContainsFunc(j.findings[since:], func(f Finding) bool { return f.Check == a.Check && !f.Unknown }) {
			doubted = a.Check
		}
	}
	if doubted < 0 {
		return
	}
	line := "doubt"
	if a.Check != doubted {
		line = "doubt.other"
	}
	m.say("info", m.line(line, "check", m.model.Checks[doubted].Name))
}

// unasked finds the first check of a stage without an answer.
func (m *Machine) unasked(stage string) (aim, bool) {
	for i := range m.model.Checks {
		if m.model.Checks[i].Stage == stage && m.j.asked[i] == 0 && !m.barredByProof(i) {
			return aim{"check", i}, true
		}
	}
	return aim{}, false
}

// barredByProof tells whether a check needs a meter, or a proof of dead, that cannot be had.
func (m *Machine) barredByProof(check int) bool {
	c := &m.model.Checks[check]
	return m.j.noProof && m.rules.For(check).Power == worksite.Dead || m.j.noMeter && c.Function != measure.Look && c.Function != measure.Thermometer
}

// advise asks the adviser about the checks of some stages. The same question is not worked out twice.
func (m *Machine) advise(stages ...string) Advice {
	j := m.j
	q := Query{Findings: j.findings, Mended: j.mended, Cycled: j.powered, Anew: j.anew, Doubted: j.doubted, Plate: j.ratings, Meter: j.named, Stages: stages, Site: j.site, NoLive: j.noLive >= 2 || j.battery < lowBattery}
	for i, a := range j.asked {
		if a == 2 || m.barredByProof(i) {
			q.Blocked = append(q.Blocked, i)
		}
	}
	key, err := json.Marshal(q)
	if err != nil {
		panic("session: a query cannot be written as JSON")
	}
	if a, ok := m.memo[string(key)]; ok {
		return a
	}
	a := m.adv.Advise(q)
	m.memo[string(key)] = a
	return a
}

// closed tells whether the case is closed, and if so moves on to what follows.
func (m *Machine) closed() bool {
	j := m.j
	a := m.advise(planStages...)
	if !a.Verdict {
		return false
	}
	j.advice = a
	j.repair = a.Repair
	if a.Repair < 0 && j.failed {
		m.unresolved() // it was seen to fail: something is wrong, whatever the answers say
		return true
	}
	if n := len(j.mended); a.Repair < 0 && n > 0 && !j.done["works."+strconv.Itoa(n)] {
		j.done["works."+strconv.Itoa(n)] = true // what was done may have been all of it: two cycles show it
		j.repair, j.cycles, j.stage = j.mended[n-1].Repair, 0, sRestart
		if c := m.model.Repairs[j.repair].Confirm; c >= 0 && j.asked[c] == 0 {
			j.asked[c] = 1
		}
		return true
	}
	if a.Repair < 0 && m.passes() {
		m.say("info", m.line("verdict.passes"))
		m.fact(m.line("verdict.passes"))
		m.finish("unresolved", true)
		return true
	}
	if a.Repair < 0 {
		m.say("info", m.line("verdict.nothing"))
		m.fact(m.line("verdict.nothing"))
		m.finish("nothing-wrong", true)
		return true
	}
	if len(j.mended) >= maxMended {
		m.unresolved()
		return true
	}
	r := &m.model.Repairs[a.Repair]
	text := m.line("verdict", "part", m.subject(a.Repair), "words", probWords(a.P), "repair", r.Name)
	m.say("info", text)
	m.fact(text)
	if len(a.Proofs) > 0 {
		m.say("info", m.line("proved.by", "proofs", join(a.Proofs[:min(len(a.Proofs), 2)])))
		m.fact(m.line("proved.by", "proofs", join(a.Proofs)))
	}
	j.stage = sCause
	if s := m.stopOf(a.Repair); s >= 0 {
		m.halt(s)
	}
	return true
}

// mostRests is how many more starts are watched of what comes and goes. A fault that is there at every second start is seen in one of three seven
// times in eight: judgement.
const mostRests = 2

// mayPass tells whether one more start may be watched: the fault comes and goes, and was not seen in this job yet.
func (m *Machine) mayPass() bool {
	return m.j.rests < mostRests && !m.j.failed && !m.j.ending && m.passes()
}

// another aims at one more start where one may be watched and the answers so far say that nothing is wrong.
func (m *Machine) another() (aim, bool) {
	if !m.mayPass() {
		return aim{}, false
	}
	if a := m.advise(planStages...); !a.Verdict || a.Repair >= 0 {
		return aim{}, false
	}
	return m.rest(), true
}

// rest aims at a new power cycle, after which a start is watched from its beginning.
func (m *Machine) rest() aim {
	m.j.rests++
	m.say("info", m.line("rest"))
	return aim{"rest", 0}
}

// watchAnew lets what is seen at a start be asked once more.
func (m *Machine) watchAnew() {
	j := m.j
	j.anew = append(j.anew, len(j.findings))
	for i := range m.model.Checks {
		if m.model.Checks[i].Stage == "watch" && j.asked[i] == 1 {
			j.asked[i] = 0
		}
	}
}

// passes tells whether the person told of a fault that comes and goes, and nothing was mended: then a start that works shows little.
func (m *Machine) passes() bool {
	return len(m.j.mended) == 0 && slices.ContainsFunc(m.j.findings, func(f Finding) bool {
		return f.Option >= 0 && m.model.Checks[f.Check].Options[f.Option].Passes
	})
}

// subject is how a repair is spoken of: by its part when that is replaced, else by what is to be done.
func (m *Machine) subject(repair int) string {
	r := &m.model.Repairs[repair]
	if r.Part >= 0 && r.Kind == "replace" {
		return m.model.Parts[r.Part].Name
	}
	return r.Name
}

// stopOf is the stop line that a repair crosses, -1 for none.
func (m *Machine) stopOf(repair int) int {
	r := &m.model.Repairs[repair]
	if r.Stop >= 0 {
		return r.Stop
	}
	if r.Part >= 0 {
		return m.model.Parts[r.Part].Stop
	}
	return -1
}

// halt ends the work at a stop line.
func (m *Machine) halt(stop int) {
	j := m.j
	j.stop = stop
	m.say("warning", m.line("stop", "why", m.model.Stops[stop].Say))
	if now := m.model.Stops[stop].Now; now != "" {
		m.say("warning", now)
	}
	m.finish("stopped", false)
}

// unresolved ends the search honestly when nothing more is worth asking.
func (m *Machine) unresolved() {
	m.say("info", m.line("unresolved"))
	m.fact(m.line("unresolved"))
	m.finish("unresolved", false)
}

// finish turns to the way out: everything back, then the record. on tells how the supply is left.
func (m *Machine) finish(outcome string, on bool) {
	j := m.j
	if j.ending {
		return
	}
	j.ending, j.outcome, j.leaveOn = true, outcome, on
	j.aim, j.q = aim{}, nil
	delete(j.done, "leave")
	delete(j.done, "items")
}

// need is the state of the work place that an aim asks for.
func (m *Machine) need(a aim) worksite.Need {
	j := m.j
	switch a.Kind {
	case "check":
		n := m.rules.For(a.N)
		if m.model.Checks[a.N].Stage == "light" && j.stage > sLight && n.Power == worksite.Any {
			n.Power = worksite.Live // with the supply cut it would show nothing
		}
		if j.stage == sRestart && n.Power == worksite.Live && n.Covers.Empty() {
			n.Shut = true
		}
		return n
	case "swap":
		return m.rules.Work(stepOf(&m.model.Repairs[j.repair], a.N))
	case "photo", "wire":
		for _, s := range m.model.Repairs[j.repair].Steps {
			if s.Wire >= 0 {
				return m.rules.Work(s)
			}
		}
	case "cycle":
		return worksite.Run()
	case "leave", "items":
		return worksite.Leave(j.leaveOn)
	case "pause", "rest":
		return worksite.Need{Power: worksite.Cut, Covers: j.site.Covers, Wires: j.site.Wires}
	}
	return worksite.Need{Covers: worksite.Set{}}
}

// toward is the question that brings an aim nearer: an act on the way, the consent it needs, or what it is about.
// It is nil when there is nothing to ask.
func (m *Machine) toward(a aim) *question {
	j := m.j
	if a.Kind == "check" && m.model.Checks[a.N].Stage == "safety" {
		return m.aimQuestion(a) // before any switch is touched
	}
	n := m.need(a)
	act, moving := m.rules.Next(j.site, n)
	if a.Kind == "check" && m.rules.Consent(a.N) && !m.consents(a) && !(moving && m.beforeLive(act)) {
		return m.consentQuestion(a)
	}
	if moving {
		if w, open := m.unlike(); open && act.Kind == worksite.PowerOn {
			j.aim = w // nothing is switched on over a wire that may be in the wrong place
			return m.toward(w)
		}
		if ok, why := m.rules.Permits(j.site, act, n); !ok {
			return m.barred(act.Kind.String(), why)
		}
		if act.Proof() && j.noMeter {
			m.say("warning", m.line("meter.none"))
			m.block(a)
			return nil
		}
		if act.Kind == worksite.ProveLive && !m.consents(aim{"prove", 0}) {
			return m.consentQuestion(aim{"prove", 0})
		}
		return m.actQuestion(a, act)
	}
	if a.Kind == "check" {
		if ok, why := m.rules.Allowed(j.site, a.N); !ok {
			return m.barred(m.model.Checks[a.N].ID, why)
		}
	}
	return m.aimQuestion(a)
}

// beforeLive tells whether an act belongs to the time before live work, so that consent, which holds for two minutes, need not be asked
// yet. Somebody who has refused live work once is asked before anything is opened for it; what must not stay in place always comes out first.
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

// consents tells whether consent for an aim was given in the last two minutes. That for proving dead is kept apart: one job may need both in turn.
func (m *Machine) consents(a aim) bool {
	j := m.j
	if a.Kind == "prove" {
		return j.proveAt != 0 && j.now-j.proveAt <= 120_000
	}
	return j.consent == a && j.now-j.consAt <= 120_000
}

// touched tells whether anything was opened, lifted or bridged, so that it is read out before the end.
func (m *Machine) touched() bool {
	j := m.j
	return !j.opened.Empty() || !j.lifted.Empty() || j.held || j.jumped || j.jacked || !j.site.Noted.Empty()
}

// repaired notes that the steps of a repair are done.
func (m *Machine) repaired() {
	j := m.j
	j.mended = append(j.mended, Mended{Repair: j.repair, After: len(j.findings)})
	r := &m.model.Repairs[j.repair]
	m.fact(m.line("mended", "repair", r.Name))
	if r.Part >= 0 && r.Kind != "replace" && m.model.Parts[r.Part].Words["reset"] == "manual" {
		j.site.Resets = j.site.Resets.With(r.Part)
	}
	j.cycles = 0
	for i := range m.model.Checks {
		if m.model.Checks[i].Stage == "restart" && j.asked[i] == 1 {
			j.asked[i] = 0
		}
	}
	if r.Confirm >= 0 && j.asked[r.Confirm] == 1 {
		j.asked[r.Confirm] = 0
	}
}

// lasts tells whether the answers of a stage stand when a repair brought no heat.
func lasts(stage string) bool {
	s, ok := vocab.StageOf(stage)
	return ok && s.Lasts
}

// notFixed lets checks be asked anew after a repair that did not bring heat.
func (m *Machine) notFixed() {
	j := m.j
	m.say("info", m.line("notfixed"))
	m.fact(m.line("notfixed"))
	for i := range j.asked {
		c := &m.model.Checks[i]
		if j.asked[i] == 1 && !lasts(c.Stage) {
			j.asked[i] = 0
		}
	}
	j.repair = -1
	for _, k := range []string{"decide", "match", "photo.before", "photo.after"} {
		delete(j.done, k)
	}
	j.wires = nil
	for i := range 64 {
		delete(j.done, swapKey(i))
	}
	j.stage = sPlan
	if len(j.mended) >= maxMended {
		m.unresolved()
	}
}

// rate takes a number of the rating plate: it wins over the one of the equipment file.
func (m *Machine) rate(field string, v unit.Value) {
	m.j.ratings[field] = v
	m.j.rated, _ = m.model.WithPlate(m.j.ratings)
}

// judge holds a reading against the limit of a check.
func (m *Machine) judge(check int, r measure.Reading) (measure.Judgement, bool) {
	c := &m.j.rated.Checks[check]
	if c.Limit == nil {
		return measure.Judgement{}, false
	}
	return measure.Judge(m.j.meter, c.Function, r, *c.Limit), true
}

// barred ends a job whose next step an interlock forbids. The prover shows that no equipment file gets here; if one did,
// nothing unsafe is asked and the person is told what is open.
func (m *Machine) barred(what, why string) *question {
	m.fact(what + ": " + why)
	m.leftOpen()
	return nil
}
