package job

import (
	"slices"
	"strings"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// moment is an event that was tried and what the host was told.
type moment struct {
	trial
	out []protocol.Effect
}

// laws holds what must be so after an event (or, without one, when a question is opened). was is the job before it.
func (w *walker) laws(f *frozen, was *job, from *frozen, name string, at *moment) {
	m := w.m
	j := m.j
	law := func(broken bool, what string) {
		if !broken {
			return
		}
		w.fail(what, from, func() string {
			switch {
			case was != nil:
				return w.line(was, name)
			case j.q != nil:
				return w.line(j, "asked")
			}
			return name
		})
	}
	law(j.state != "ended" && j.alarm == "" && !j.doubtAsk && j.q == nil, "nothing is asked and the job is not over")
	if q := j.q; q != nil && j.state != "ended" && j.alarm == "" && !j.doubtAsk {
		fresh := was == nil || was.q == nil || was.q.id != q.id // while it is waited for, consent may grow old
		switch {
		case q.kind == "consent":
		case q.act.Kind != worksite.None:
			ok, _ := m.rules.Permits(j.site, q.act, q.task.need(m))
			law(!ok, "an act is asked that the interlock forbids")
			law(q.act.HandsIn() && j.site.Power != worksite.Off && j.site.Power != worksite.Proved, "hands in with power on")
			law(fresh && q.act.Kind == worksite.ProveLive && !m.consents(forProof), "live proof without consent")
		case q.check >= 0 && !q.recall && m.model.Checks[q.check].Stage != "safety":
			ok, _ := m.rules.Allowed(j.site, q.check)
			law(!ok, "a check is asked that the interlock forbids")
			law(fresh && m.rules.Consent(q.check) && !m.consents(q.check), "a live check is asked without consent to it")
		case kindOf(q.task) == "swap":
			law(q.task.need(m).Power == worksite.Dead && j.site.Power != worksite.Proved, "a step of a repair is asked that is not proved dead")
		}
	}
	if j.state == "ended" {
		law(!j.site.Left() && !vocab.MayStayOpen(j.outcome), "the job ends with something open and says nothing of it")
	}
	law(m.forbidden != "", "the next step is one that an interlock forbids")
	if at == nil {
		return
	}
	w.change(was, at, law)
	w.told(was, at, law)
}

// change holds the laws of what an event may do to the state.
func (w *walker) change(was *job, at *moment, law func(bool, string)) {
	m, j := w.m, w.m.j
	q := was.q
	law(was.ending && !j.ending && j.state != "ended", "the way out is left again")
	law(j.stop >= 0 && !j.ending, "work goes on beyond a stop line")
	open := was.alarm == "" && !was.doubtAsk
	law(forgets(was, j), "something that hands put in place is forgotten")
	proof := q != nil && open && q.act.Proof()
	proved := j.site.Power == worksite.Proved && was.site.Power != worksite.Proved
	law(proved && !(proof && q.act.Kind == worksite.ProveAgain && at.name == "119 volts") && !(!m.model.Mains && q != nil && q.act.Kind == worksite.PowerOff), "proved dead without the last reading of the proof")
	law(j.site.Proof > was.site.Proof && !(proof && (at.name == "zero, said twice" || at.name == "zero, keyed" || at.name == "119 volts")), "the proof goes on without its reading")
	law(at.name == "118 volts" && j.site.Power != worksite.On && j.site.Power != worksite.Unknown, "voltage was found and is not believed")
	law(at.name == "no volts" && j.site.Proof >= was.site.Proof && was.site.Proof > 0, "the proof goes on with a meter that shows nothing")
	switch at.name {
	case cChanged, "the program starts anew", "gas", "shock":
		law(open && was.state != "ended" && (j.site.Power == worksite.Proved || j.site.Power == worksite.Off && was.site.Power != worksite.Off), "something happened, and the supply is still believed")
	case cHold:
		law(j.holding && j.site.Timed(), "a pause is granted while a jumper, a held switch or the current jack must not be left alone")
	case cFinish, "battery empty":
		law(open && !j.ending && j.state != "ended", "the person ends the work and it goes on")
		law(open && j.state == "ended" && !j.site.Left() && !was.ending, "the work ends at once with something open")
	case cCantReach, cDontKnow, cPerson, cBack, cNotSure, "silence":
		a, b := j.site, was.site
		a.Placed, b.Placed, a.Call, b.Call, a.Proof, b.Proof = 0, 0, 0, 0, 0, 0
		if b.Power == worksite.Proved && a.Power == worksite.Off || a.Power == worksite.Unknown { // it grew old, or an alarm rang
			a.Power = b.Power
		}
		law(open && a != b, "a refusal or a question counts as an act")
	case oOtherWay:
		law(q != nil && q.kind == "consent" && j.q != nil && j.q.kind != "consent" && j.q.task == q.task && j.q.check >= 0, "live work is asked although it was refused")
	}
	if slices.Contains([]string{"gas", "shock"}, at.name) {
		law(was.state != "ended" && j.state != "emergency" && j.state != "ended", "an emergency is not answered")
		law(j.q != nil && was.q != nil && j.q.id != was.q.id && j.alarm != "", "work goes on in an emergency")
	}
}

// forgets tells whether something that was in place, open or off is so no more, though nobody was asked to undo it.
func forgets(was, now *job) bool {
	a, b := was.site, now.site
	did := worksite.None
	if was.q != nil {
		did = was.q.act.Kind
	}
	return !a.Wires.Minus(b.Wires).Empty() && did != worksite.RefitWire ||
		!a.Covers.Minus(b.Covers).Empty() && did != worksite.CloseCover ||
		a.Jumper != 0 && b.Jumper != a.Jumper && did != worksite.JumperOut ||
		a.Series != 0 && b.Series != a.Series && did != worksite.MeterOut ||
		a.Held && !b.Held && did != worksite.FreeDoor ||
		a.Jack && !b.Jack && did != worksite.JackOut
}

// told holds the laws of what is said, and in what order.
func (w *walker) told(was *job, at *moment, law func(bool, string)) {
	m, j := w.m, w.m.j
	switch at.name {
	case "gas", "shock":
		hush, first := -1, ""
		for i, e := range at.out {
			if e.Type == protocol.DoHush && hush < 0 {
				hush = i
			}
			if e.Type == protocol.DoSay && first == "" {
				first = e.Level
			}
		}
		law(hush < 0, "an emergency does not silence what is being said")
		law(first != "emergency", "something else is said before what to do in an emergency")
	}
	if j.state == "ended" && j.outcome == "left-open" && was.state != "ended" {
		said := ""
		for _, e := range at.out {
			if e.Type == protocol.DoSay && e.Level == "danger" {
				said += e.Text
			}
		}
		for _, x := range m.openWords() {
			law(!strings.Contains(said, x), "what stays open is not said")
		}
	}
	if q := j.q; q != nil && j.state != "ended" && j.alarm == "" && !j.doubtAsk && (was.q == nil || q.id != was.q.id) && !j.holding {
		w.order(q, at.out, law)
	}
}

// order holds that a step is spoken in its order: power, caution, then what to do.
func (w *walker) order(q *question, out []protocol.Effect, law func(bool, string)) {
	m := w.m
	touch := q.kind == "act" || q.kind == "measure" || q.kind == "consent"
	power, caution, ask := -1, -1, -1
	states := m.words.Lines[m.plain("power."+m.j.site.Power.String())]
	for i, e := range out {
		if e.Type != protocol.DoSay {
			continue
		}
		switch {
		case e.Text == states.Full || slices.Contains(states.Short, e.Text):
			power = i
		case q.step.Caution != "" && strings.HasSuffix(strings.ToLower(e.Text), strings.ToLower(q.step.Caution)) && e.Level != "info":
			caution = i
		case e.Level == "info" && i > caution && i > power:
			ask = i
		}
	}
	listens := len(out) > 0 && slices.ContainsFunc(out, func(e protocol.Effect) bool { return e.Type == protocol.DoListen })
	law(!listens, "a question is put and nobody listens")
	law(touch && power < 0, "the state of power is not said before a touch")
	law(q.step.Caution != "" && caution < 0, "a caution is not said before its step")
	law(touch && (ask < 0 || power > ask), "the state of power is said after the step")
	law(q.step.Caution != "" && caution >= 0 && (ask < 0 || caution > ask), "a caution is said after its step")
}

// wayOut follows the way out with somebody who does what is asked: it ends, and the place is in order.
func (w *walker) wayOut(f *frozen) {
	if f.alarm != "" || f.doubtAsk || f.noProof || f.refused > 0 || w.left[f.site] {
		return
	}
	w.found = append(w.found, found{turn: w.turn, way: true, site: f.site})
	w.thaw(f)
	w.step(said("touch", utterance.Meaning{Kind: utterance.Command, ID: cFinish}))
	for range 120 {
		j := w.m.j
		q := j.q
		if j.state == "ended" {
			if j.outcome == "left-open" || !j.site.Left() {
				w.fail("somebody who does all that is asked on the way out leaves the place open", f, func() string { return w.line(j, "the end") })
			}
			return
		}
		if q == nil {
			break
		}
		wait, waits := q.task.(relightTask)
		switch {
		case waits && q.act.Kind == worksite.None: // somebody who does what is asked waits
			ready := said("touch", utterance.Meaning{Kind: utterance.Command, ID: cReady})
			ready.At = wait.after
			w.step(ready)
		case q.act.Zero():
			w.step(said("touch", volts("0.0")))
		case q.act.Proof():
			w.step(said("touch", volts("119.0")))
		case len(q.opts) > 0:
			w.step(said("touch", choiceOf(q.opts[0])))
		default:
			w.step(said("touch", utterance.Meaning{Kind: utterance.Command, ID: cDone}))
		}
	}
	w.fail("the way out has no end", f, func() string { return w.line(w.m.j, "and so on") })
}

// speech opens every check and every step of every repair once, where its needs are met, holds the order of what is said, and
// tries the events there that do not depend on what is asked about: nobody has to believe that they do not.
func (w *walker) speech() {
	m := w.m
	each := func(t task, repair int, n worksite.Need) {
		s := worksite.Start()
		for _, act := range m.rules.Plan(s, n) {
			s = m.rules.Apply(s, act, worksite.Done)
		}
		f := frozen{site: s, task: t, stage: sPlan, repair: repair, stop: -1, consent: toCheck}
		w.thaw(&f)
		out := m.out
		if w.t.heard != nil {
			out = w.t.heard(m, slices.Clone(out))
		}
		law := func(broken bool, what string) {
			if broken {
				w.fail(what, nil, func() string { return t.String() + " is asked" })
			}
		}
		if q := m.j.q; q != nil {
			w.events++
			w.order(q, out, law)
		}
		start := m.j
		for _, x := range w.trials() {
			if x.free { // at every check and step there is
				m.j, m.out, m.forbidden = start.twin(), nil, ""
				w.try(&f, x)
			}
		}
	}
	for i := range m.model.Checks {
		each(checkTask{i}, -1, m.rules.For(i))
	}
	for r := range m.model.Repairs {
		for i, s := range m.model.Repairs[r].Steps {
			each(swapTask{n: i}, r, m.rules.Work(s))
		}
	}
}
