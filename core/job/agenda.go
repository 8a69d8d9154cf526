package job

import (
	"encoding/json"
	"fmt"
	"slices"

	"readback/core/appliance"
	"readback/core/protocol"
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
		if !j.adrift.Empty() { // where the wire is must be known before anything is measured
			j.task = reverseTask{act: worksite.Act{Kind: worksite.LiftWire, N: int16(j.adrift.First())}}
		}
		if j.task == nil {
			j.task = m.choose()
		}
		if j.task == nil {
			m.end()
			return
		}
		if q := m.toward(j.task); q != nil {
			m.open(q)
			return
		}
		j.task = nil // it needed no question
	}
	panic(fmt.Sprintf("job: no question within 1000 tasks, at %v of stage %s", m.choose(), stageID(j.stage)))
}

// choose picks what to get done next. The stages follow one another; a question of safety that has no answer comes
// before all of them. It is nil when nothing is left to do.
func (m *Machine) choose() task {
	j := m.j
	if j.twice.open && !j.ending { // what decides is settled before anything else
		return checkTask{j.twice.check}
	}
	if j.offer && !j.ending && j.stage > sStory && j.stage < sCause && j.offered < mostOffers && !j.site.Open() {
		j.offer = false
		return offerTask{}
	}
	if a, ok := m.unasked("safety"); ok && !j.ending {
		return a
	}
	if len(j.ahead) > 0 && !j.ending {
		c := j.ahead[0]
		j.ahead = j.ahead[1:]
		return checkTask{c}
	}
	for {
		if j.ending && j.stage < sRefit {
			j.stage = sRefit
		}
		switch j.stage {
		case sSafety:
			j.stage = sStory
		case sStory:
			if !j.done.story {
				return storyTask{}
			}
			if a, ok := m.unasked("story"); ok {
				return a
			}
			j.stage = sPlate
		case sPlate: // its fields are asked where something hangs on them
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
			if a, ok := m.another(); ok {
				return a
			}
			if m.closed() {
				continue
			}
			if a, ok := m.watched(); ok {
				return a
			}
			if a := m.advise("free", "watch"); a.Check >= 0 && !a.Verdict {
				j.advice = a
				m.sayDoubt(a)
				if m.isEvent(a.Check) && j.asked[a.Check] == 0 {
					j.stage = sWatch
					return m.watch(a)
				}
				return checkTask{a.Check}
			}
			j.stage = sMeter
		case sMeter: // it is proved where it is first used
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
			if a, ok := m.watched(); ok {
				return a
			}
			a := m.advise(planStages...)
			j.advice = a
			if a.Check < 0 {
				if m.mayPass() {
					return m.rest()
				}
				if m.askLicense() {
					return licenseTask{}
				}
				m.unresolved()
				continue
			}
			j.stage = sPlan
			if a.Proof {
				j.stage = sProof
			}
			if t, ok := m.lookAgain(a); ok {
				return t
			}
			m.sayDoubt(a)
			if m.isEvent(a.Check) && j.asked[a.Check] == 0 {
				return m.watch(a)
			}
			return checkTask{a.Check}
		case sCause:
			for _, c := range m.model.Repairs[j.repair].Causes {
				if j.asked[c] == 0 && !m.barredCheck(c) {
					return checkTask{c}
				}
			}
			if m.causeStands(j.repair) {
				m.unresolved()
				continue
			}
			j.stage = sCost
		case sCost:
			if t := m.cost(); t != nil {
				return t
			}
			j.stage = sPart
		case sPart:
			if f, ok := m.matchField(); ok {
				return f
			}
			if len(m.model.Repairs[j.repair].Match) > 0 && !j.done.matched && !j.done.free {
				return matchTask{}
			}
			j.stage = sSwap
		case sSwap:
			if t := m.swap(); t != nil {
				return t
			}
			m.repaired()
			j.stage = sRestart
		case sRestart:
			if t := m.restart(); t != nil {
				return t
			}
			if j.stage == sRestart && !j.ending {
				j.stage, j.leaveOn = sRefit, true
				j.outcome = "fixed"
			}
		case sRefit:
			if !j.done.left {
				return leaveTask{}
			}
			if !j.done.items && m.touched() {
				return itemsTask{}
			}
			if !j.done.handed && (j.stop >= 0 || !vocab.Good(j.outcome)) {
				return handOverTask{}
			}
			j.stage = sRecord
		case sRecord:
			return nil
		}
	}
}

// lookAgain has the look that carries a verdict alone asked once more, in other words.
func (m *Machine) lookAgain(a Advice) (task, bool) {
	j := m.j
	for i := len(j.findings) - 1; i >= 0 && a.Firm; i-- {
		if f := j.findings[i]; f.Check == a.Check && f.Option >= 0 {
			j.twice = once{true, a.Check, f.Option}
			return checkTask{a.Check}, true
		}
	}
	return nil, false
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
func (m *Machine) unasked(stage string) (checkTask, bool) {
	for i := range m.model.Checks {
		if m.model.Checks[i].Stage == stage && m.j.asked[i] == 0 && !m.barredCheck(i) {
			return checkTask{i}, true
		}
	}
	return checkTask{}, false
}

// barredCheck tells whether a check may not be asked: it needs a meter, a proof of dead or a licence that is not there,
// or the supply while a gate forbids it.
func (m *Machine) barredCheck(check int) bool {
	j, c := m.j, &m.model.Checks[check]
	need := m.rules.For(check).Power
	return j.noProof && need == worksite.Dead ||
		j.gate >= 0 && need == worksite.Live ||
		j.noMains && m.rules.Mains(check) ||
		m.pointless(check) ||
		c.Licensed && !j.licensed ||
		j.noMeter && !c.Function.Dial().Own
}

// pointless tells whether an answer that stands makes a check senseless: nobody reads the numbers of a screen that is blank.
func (m *Machine) pointless(check int) bool {
	j := m.j
	from := 0
	if n := len(j.mended); n > 0 {
		from = j.mended[n-1].After // since then it may be otherwise
	}
	for _, u := range m.model.Checks[check].Unless {
		from := from
		if n := len(j.anew); n > 0 && m.model.Checks[u.Check].Stage == "watch" {
			from = max(from, j.anew[n-1])
		}
		for i := len(j.findings) - 1; i >= from; i-- {
			if f := &j.findings[i]; f.Check == u.Check && !f.Unknown {
				if f.Option == u.Option {
					return true
				}
				break
			}
		}
	}
	return false
}

// advise asks the adviser about the checks of some stages. The same question is not worked out twice.
func (m *Machine) advise(stages ...string) Advice {
	q := m.query(stages)
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

// query is what the adviser is asked now.
func (m *Machine) query(stages []string) Query {
	j := m.j
	q := Query{Findings: m.labelled(j.findings), Mended: j.mended, Cycled: j.powered, Anew: j.anew, Doubted: j.doubted, Plate: j.ratings, Meter: j.named, Stages: stages, Site: j.site, Proven: !m.meterOpen(), NoLive: j.noLive >= 2 || j.battery < lowBattery}
	for i, a := range j.asked {
		if a == 2 || m.barredCheck(i) {
			q.Blocked = append(q.Blocked, i)
		}
	}
	return q
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
	if n := len(j.mended); a.Repair < 0 && n > 0 && j.done.works < n {
		j.done.works = n // what was done may have been all of it: two cycles show it
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
	if m.worked() >= maxMended || slices.ContainsFunc(j.mended, func(x Mended) bool { return x.Repair == a.Repair }) {
		m.unresolved() // what came back after it was put right once has a reason that was not found
		return true
	}
	r := &m.model.Repairs[a.Repair]
	text := m.line("verdict", "part", m.subject(a.Repair), "words", m.words.Chance(a.P), "repair", r.Name)
	m.say("info", text)
	m.fact(text)
	if len(a.Proofs) > 0 {
		m.say("info", m.line("proved.by", "proofs", m.words.And(a.Proofs[:min(len(a.Proofs), 2)])))
		m.fact(m.line("proved.by", "proofs", m.words.And(a.Proofs)))
	}
	j.stage = sCause
	if s := m.model.StopOf(a.Repair); s >= 0 {
		m.halt(s)
	}
	return true
}

// worked is how many repairs were carried out, without what was seen and put right at once.
func (m *Machine) worked() int {
	n := 0
	for _, x := range m.j.mended {
		if !m.atOnce(x.Repair) {
			n++
		}
	}
	return n
}

// atOnce tells whether a repair is one that is done at once where a look shows that it is needed.
func (m *Machine) atOnce(repair int) bool {
	for i := range m.model.Checks {
		if slices.ContainsFunc(m.model.Checks[i].Options, func(o appliance.Option) bool { return o.Mend == repair+1 }) {
			return true
		}
	}
	return false
}

// mendNow turns to a repair that is free and done by hand, as soon as a look shows that it is needed: no question of cost, age or rules.
// What it was the cause of is seen when it is watched; if it was not, the search goes on.
func (m *Machine) mendNow(repair int) {
	j := m.j
	if repair < 0 || j.stage >= sCause || j.ending || m.mustStands() || m.model.StopOf(repair) >= 0 || slices.ContainsFunc(j.mended, func(x Mended) bool { return x.Repair == repair }) {
		return
	}
	inside := slices.ContainsFunc(m.model.Repairs[repair].Steps, func(s appliance.SwapStep) bool { return m.rules.Work(s).Power == worksite.Dead })
	j.repair, j.stage, j.done.free, j.done.decided = repair, sCause, true, !inside // nobody works inside who was not asked
	j.watch.on = false
	text := m.line("mend.now", "repair", m.model.Repairs[repair].Name)
	m.say("info", text)
	m.fact(text)
}

// mustStands tells whether the last answer to a check that is a gate was not the one hoped for: then nothing is switched on by the way.
func (m *Machine) mustStands() bool {
	for c := range m.model.Checks {
		if m.stillBad(c) {
			return true
		}
	}
	return false
}

// stillBad tells whether the last answer to a check that is a gate was not the one hoped for.
func (m *Machine) stillBad(check int) bool {
	for i := len(m.j.findings) - 1; i >= 0 && m.model.Checks[check].Must; i-- {
		if f := m.j.findings[i]; f.Check == check && !f.Unknown {
			return m.bad(f)
		}
	}
	return false
}

// askLicense tells whether it is time to ask for a licence: something is left that only the licensed do.
func (m *Machine) askLicense() bool {
	j := m.j
	if j.done.license {
		return false
	}
	for i := range m.model.Checks {
		if m.model.Checks[i].Licensed && j.asked[i] == 0 && !m.pointless(i) {
			return true
		}
	}
	return false
}

// mostRests is how many more starts are watched of what comes and goes. A fault that is there at every second start is seen in one of three seven
// times in eight: judgement.
const mostRests = 2

// mayPass tells whether one more start may be watched: the fault comes and goes, and was not seen in this job yet.
func (m *Machine) mayPass() bool {
	return m.j.rests < mostRests && !m.j.failed && !m.j.ending && m.passes()
}

// another aims at one more start where one may be watched and the answers so far say that nothing is wrong.
func (m *Machine) another() (task, bool) {
	if a := m.advise(planStages...); !a.Verdict || a.Repair >= 0 {
		return nil, false
	}
	for i := range m.model.Checks { // nobody is told that nothing is wrong who was not asked whether it comes and goes
		if m.j.asked[i] == 0 && !m.barredCheck(i) && slices.ContainsFunc(m.model.Checks[i].Options, func(o appliance.Option) bool { return o.Passes }) {
			return checkTask{i}, true
		}
	}
	if !m.mayPass() {
		return nil, false
	}
	return m.rest(), true
}

// rest aims at a new power cycle, after which a start is watched from its beginning.
func (m *Machine) rest() task {
	m.j.rests++
	m.say("info", m.line("rest"))
	return restTask{}
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
	text := m.line("unresolved")
	if s, ok := m.likely(); ok { // naming none is the last resort
		text = m.line("likely", "part", s.Name, "words", m.words.Chance(s.P))
	}
	m.say("info", text)
	m.fact(text)
	m.finish("unresolved", false)
}

// likely is the leading suspect where it is likely and not proved: it is told as that, with who can prove it.
func (m *Machine) likely() (s protocol.Suspect, ok bool) {
	const least = 0.6 // from where probWords says "likely"
	for _, s := range m.j.advice.Suspects {
		if s.P >= least && s.Part != "nothing" && s.Part != "unknown" {
			return s, true
		}
	}
	return protocol.Suspect{}, false
}

// finish turns to the way out: everything back, then the record. on tells how the supply is left.
func (m *Machine) finish(outcome string, on bool) {
	j := m.j
	if j.ending {
		return
	}
	j.ending, j.outcome, j.leaveOn = true, outcome, on
	j.task, j.q = nil, nil
	j.done.left, j.done.items = false, false
}

// touched tells whether anything was opened, lifted or bridged, so that it is read out before the end.
func (m *Machine) touched() bool {
	j := m.j
	return !j.opened.Empty() || !j.lifted.Empty() || j.held || j.jumped || j.jacked || !j.site.Noted.Empty()
}

// lasts tells whether the answers of a stage stand when a repair brought no heat.
func lasts(stage string) bool {
	s, ok := vocab.StageOf(stage)
	return ok && s.Lasts
}

// barred ends a job whose next step an interlock forbids. The prover shows that no equipment file gets here; if one did,
// nothing unsafe is asked and the person is told what is open.
func (m *Machine) barred(what, why string) *question {
	m.forbidden = what + ": " + why
	m.fact(m.forbidden)
	m.leftOpen()
	return nil
}
