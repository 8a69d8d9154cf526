package job

import (
	"slices"
	"strconv"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/utterance"
	"readback/core/worksite"
)

// accept takes an answer as established, reads it back and goes on.
func (m *Machine) accept(x utterance.Meaning) {
	j, q := m.j, m.j.q
	j.state = "ask"
	rec := record{id: q.id, seqs: q.seqs, act: q.kind == "act" || q.act.Proof(), read: x.Reading}
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
	j.q = nil
	switch {
	case q.kind == "consent":
		m.consented(q, x.ID)
	case q.act.Proof():
		m.proof(q, x.Reading)
	case q.act.Kind != worksite.None:
		m.acted(q.act, x.ID)
	case q.check >= 0:
		m.found(q, x)
	default:
		m.told(q, x)
	}
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

// consented works the two phrases that decide on live work.
func (m *Machine) consented(q *question, id string) {
	j := m.j
	if id == oGoLive {
		if q.aim.Kind == "prove" {
			j.proveAt = j.now
		} else {
			j.consent, j.consAt = q.aim, j.now
		}
		m.note("person", m.option(id))
		return
	}
	j.consent = aim{}
	if q.aim.Kind != "check" { // nothing can be proved dead
		j.noProof = true
		m.block(j.aim)
		return
	}
	j.noLive++
	c := &m.model.Checks[q.aim.N]
	j.asked[q.aim.N] = 2
	if c.Instead >= 0 && j.asked[c.Instead] == 0 {
		j.aim = aim{"check", c.Instead}
		return
	}
	j.aim = aim{}
}

// proof works one of the five readings of live-dead-live.
func (m *Machine) proof(q *question, r *measure.Reading) {
	j := m.j
	good := isZero(r)
	if !q.act.Zero() {
		v := r.Value.Base()
		good = r.State == measure.Number && (v >= 90 && v <= 300 || v <= -90)
	}
	if good {
		j.site = m.rules.Apply(j.site, q.act, worksite.Done)
		m.say("info", sentence(m.reading(r), m.line("proof."+q.act.Kind.String())))
		if j.site.Power == worksite.Proved {
			j.proofBad, j.liveBad = 0, 0
			m.setPower()
			m.say("info", m.line("power.proved"))
		}
		return
	}
	j.site = m.rules.Apply(j.site, q.act, worksite.Failed)
	m.setPower()
	if q.act.Zero() {
		j.proofBad++
		m.say("danger", m.signal("danger")+m.line("proof.live", "value", m.reading(r)))
		if j.proofBad >= 2 {
			m.cannotProve("proof.twice")
		}
		return
	}
	j.liveBad++
	m.say("warning", m.line("proof.nolive", "value", m.reading(r)))
	if j.liveBad >= 3 {
		m.cannotProve("proof.nometer")
	}
}

// cannotProve gives up proving dead: what needs it is not asked any more, and a repair goes to somebody else.
func (m *Machine) cannotProve(line string) {
	j := m.j
	j.noProof = true
	m.say("warning", m.line(line))
	m.fact(m.line(line))
	m.block(j.aim)
}

// block gives an aim up and goes on without it.
func (m *Machine) block(a aim) {
	j := m.j
	if j.aim == a {
		j.aim = aim{}
	}
	switch a.Kind {
	case "check":
		j.asked[a.N] = 2
		if j.repair >= 0 && a.N == m.model.Repairs[j.repair].Confirm {
			m.fact(m.line("unconfirmed"))
		}
	case "swap", "photo", "wire", "cycle", "match":
		m.finish("handed-over", false)
	case "leave", "items":
		m.leftOpen()
	default:
		j.done[a.Kind] = true
	}
}

// acted works an act that was answered with its state.
func (m *Machine) acted(a worksite.Act, id string) {
	j := m.j
	before := j.site
	j.site = m.rules.Apply(j.site, a, worksite.Done)
	if before.Power != j.site.Power {
		m.setPower()
	}
	delete(j.refused, a.Kind.String()+strconv.Itoa(int(a.N)))
	switch a.Kind {
	case worksite.OpenCover:
		j.opened = j.opened.With(int(a.N))
	case worksite.LiftWire:
		j.lifted = j.lifted.With(int(a.N))
	case worksite.HoldDoor:
		j.held = true
	case worksite.PowerOn:
		j.powered = append(j.powered, len(j.findings))
	case worksite.JumperIn:
		j.jumped = true
	case worksite.MeterIn:
		j.jacked = true
	}
	if !before.Timed() && j.site.Timed() {
		j.timedAt, j.timedN = j.now, 0
	}
	m.note("site", m.line(m.plain("act."+a.Kind.String()+".done"), "name", m.nameOf(a)))
	if id != "" && id != cDone {
		m.say("info", sentence(m.option(id)))
	}
}

func (m *Machine) nameOf(a worksite.Act) string {
	name, _, _ := m.thing(a)
	return name
}

// found works the answer to a check.
func (m *Machine) found(q *question, x utterance.Meaning) {
	c := &m.model.Checks[q.check]
	f := Finding{Check: q.check, Option: -1, Typed: q.typed}
	switch x.Kind {
	case utterance.Choice, utterance.Count:
		id := x.ID
		if x.Kind == utterance.Count {
			id = x.Text
		}
		f.Option = slices.IndexFunc(c.Options, func(o appliance.Option) bool { return o.ID == id })
		if f.Option < 0 {
			f.Unknown = true
			m.say("info", m.line("not.listed", "what", id))
			break
		}
		o := &c.Options[f.Option]
		if o.Emergency != "" {
			m.settle(f)
			m.raise(o.Emergency)
			return
		}
		m.say("info", sentence(m.option(id)))
		m.fact(c.Name + ": " + m.option(id))
		if o.Stop >= 0 {
			m.settle(f)
			m.halt(o.Stop)
			return
		}
	case utterance.Reading:
		f.Reading = x.Reading
		m.judged(q.check, x.Reading)
		m.noCall(q.check, x.Reading)
	}
	m.settle(f)
	m.confirmRepair(q.check, f)
}

// settle puts a finding among those established.
func (m *Machine) settle(f Finding) {
	j := m.j
	j.findings = append(j.findings, f)
	j.asked[f.Check] = 1
	if f.Unknown {
		j.asked[f.Check] = 2
	}
	if j.times[f.Check] < 255 {
		j.times[f.Check]++
	}
	if j.aim == (aim{"check", f.Check}) {
		j.aim = aim{}
	}
	if j.site.Placed == int16(f.Check+1) && m.model.Checks[f.Check].Window {
		j.site.Placed = 0
	}
}

// judged reads a value back with what it means.
func (m *Machine) judged(check int, r *measure.Reading) {
	c := &m.model.Checks[check]
	text := m.reading(r)
	jd, ok := m.judge(check, *r)
	if ok {
		text = sentence(text, m.line("verdict."+verdictID(jd.Verdict)))
		m.limitView(check, jd)
	}
	m.say("info", sentence(text))
	m.fact(c.Name + ": " + m.written(r) + verdictTail(jd, ok))
}

func verdictID(v measure.Verdict) string {
	switch v {
	case measure.Pass:
		return "pass"
	case measure.ConditionalPass:
		return "likely-pass"
	case measure.ConditionalFail:
		return "likely-fail"
	case measure.Fail:
		return "fail"
	}
	return "invalid"
}

func verdictTail(jd measure.Judgement, ok bool) string {
	if !ok {
		return ""
	}
	return ", " + string(jd.Verdict)
}

// confirmRepair looks at the check that showed a fault, after the repair: it must show its absence now.
func (m *Machine) confirmRepair(check int, f Finding) {
	j := m.j
	if j.stage != sRestart || j.repair < 0 || m.model.Repairs[j.repair].Confirm != check {
		return
	}
	bad := false
	if f.Option >= 0 { // it looks as it did when something was wrong
		for i := j.mended[len(j.mended)-1].After - 1; i >= 0; i-- {
			if g := &j.findings[i]; g.Check == check && !g.Unknown {
				bad = g.Option == f.Option
				break
			}
		}
	}
	if f.Reading != nil {
		jd, ok := m.judge(check, *f.Reading)
		bad = ok && jd.Verdict == measure.Fail // just outside is no proof that nothing changed
	}
	if bad {
		m.notFixed()
	}
}

// told works the answers that are not checks of the equipment file.
func (m *Machine) told(q *question, x utterance.Meaning) {
	j := m.j
	a := q.aim
	j.aim = aim{}
	switch a.Kind {
	case "story":
		j.story = x.Text
		j.done["story"] = true
		m.say("info", m.line("story.thanks"))
		m.fact(m.line("story.fact", "story", x.Text))
	case "plate":
		f := &m.model.Plate[a.N]
		j.plate[f.ID] = x.Text
		if x.Reading != nil {
			j.plate[f.ID] = m.written(x.Reading)
			m.rate(f.ID, x.Reading.Value)
			m.say("info", sentence(f.Name+" "+m.reading(x.Reading)))
		} else {
			m.say("info", sentence(f.Name+" "+x.Text))
		}
		m.fact(f.Name + ": " + j.plate[f.ID])
	case "meter":
		m.meterTold(a.N, x)
	case "callout":
		j.done["callout"], j.price = true, x.Reading
		m.say("info", sentence(m.reading(x.Reading)))
	case "age":
		j.done["age"] = true
		j.age = int(x.Reading.Value.Dec.Float())
		m.say("info", m.line("age.back", "years", x.Reading.Value.Dec.Words()))
	case "decide":
		j.done["decide"] = true
		m.say("info", sentence(m.option(x.ID)))
		switch x.ID {
		case oCall:
			m.finish("handed-over", false)
		case oStop:
			m.finish("stopped-by-person", false)
		}
	case "match":
		switch x.ID {
		case oSame:
			j.done["match"] = true
			m.say("info", m.line("match.good"))
		case oLater:
			m.say("info", m.line("match.later"))
			m.finish("part-awaited", false)
		default:
			m.say("warning", m.line("match.wrong"))
			m.finish("part-awaited", false)
		}
	case "photo":
		m.photoTold(a.N, x.ID)
	case "wire":
		m.wireTold(a.N, x.ID)
	case "swap":
		j.done[swapKey(a.N)] = true
		s := stepOf(&m.model.Repairs[j.repair], a.N)
		m.note("site", s.Act)
		if w := s.Wire; w >= 0 {
			j.lifted = j.lifted.With(w)
		}
		m.say("info", m.line("step.done"))
	case "cycle":
		m.cycled(x.ID)
	case "items":
		if x.ID == oSame {
			j.done["items"] = true
			m.say("info", m.line("items.good"))
			return
		}
		m.notAsSaid()
	case "stop":
		j.done["stop"] = true
	}
}

// meterSteps are the steps of proving meter and leads, in order.
var meterSteps = [...]string{"kind", "leads", "short"}

// meterTold works the answers about the meter and the proof of it and its leads.
func (m *Machine) meterTold(n int, x utterance.Meaning) {
	j := m.j
	switch meterSteps[n] {
	case "kind":
		j.done["meter.kind"] = true
		m.say("info", sentence(m.option(x.ID)))
		switch x.ID {
		case oTrueRMS:
			j.meter = measure.Describe(measure.Plain{TrueRMS: true})
			j.named = j.meter
		case oNoMeter:
			j.noMeter, j.noProof = true, true
			m.fact(m.option(x.ID))
		default:
			m.say("info", m.line("meter.modest"))
		}
		return
	case "leads":
		if x.ID != oGood {
			m.say("warning", m.line("leads.bad"))
			m.fact(m.line("leads.bad"))
			m.finish("handed-over", false)
			return
		}
		j.done["meter.leads"] = true
		m.say("info", sentence(m.option(x.ID)))
		return
	}
	r := x.Reading
	if r.State != measure.Number && r.State != measure.Beep || r.State == measure.Number && r.Value.Base() > leadOhms {
		j.refused["meter.short"]++
		if j.refused["meter.short"] < 2 {
			m.say("warning", m.line("leads.open", "value", m.reading(r)))
			return
		}
		m.say("warning", m.line("leads.bad"))
		m.fact(m.line("leads.bad"))
		m.finish("handed-over", false)
		return
	}
	j.done["meter.short"] = true
	m.say("info", sentence(m.reading(r), m.line("leads.good")))
}

// leadOhms is the most that two leads held together may show. Common practice, no source.
const leadOhms = 2.0

// photoTold works the picture of the wiring, or the terminals read aloud in its place.
func (m *Machine) photoTold(n int, id string) {
	j := m.j
	key := [...]string{"photo.before", "photo.after"}[n]
	if n == 1 && id == oDifferent {
		m.say("warning", m.line("photo.differs"))
		for i, s := range m.model.Repairs[j.repair].Steps {
			if s.Wire >= 0 {
				delete(j.done, swapKey(i))
			}
		}
		return
	}
	j.done[key] = true
	m.say("info", sentence(m.option(id)))
	if n == 1 {
		m.fact(m.line("wires.compared"))
	}
}

// fails notes that a watched start did not bring heat: as the answer to the question of the story that has this answer, and so that nobody
// is told that nothing is wrong.
func (m *Machine) fails(id string) {
	j := m.j
	j.failed = true
	for i := range m.model.Checks {
		c := &m.model.Checks[i]
		if c.Stage != "story" {
			continue
		}
		if o := slices.IndexFunc(c.Options, func(o appliance.Option) bool { return o.ID == id }); o >= 0 {
			m.settle(Finding{Check: i, Option: o})
			return
		}
	}
}

// cycled works a watched cycle: the first is seen to start, what it does is asked about while it runs, and the second follows when
// the first has ended.
func (m *Machine) cycled(id string) {
	j := m.j
	if id != oFull && id != oRunning {
		m.say("info", sentence(m.option(id)))
		m.fails(id)
		m.notFixed()
		return
	}
	j.failed = false
	j.cycles++
	m.fact(m.line([...]string{"cycle.one", "cycle.two"}[min(j.cycles, 2)-1]))
	m.say("info", m.line([...]string{"cycle.one", "cycle.two"}[min(j.cycles, 2)-1]))
}
