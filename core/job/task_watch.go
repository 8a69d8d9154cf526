package job

import (
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/worksite"
)

// One start is watched once: what is expected stands in the order of time, the person tells what comes as it happens, and every answer is
// the answer to the look that the equipment file has for it. What is asked about is what should come next; something else may be told
// instead, by its words or on the page.

// watching is a start that is watched.
type watching struct {
	on    bool
	from  int   // findings from this one on belong to it
	since int64 // ms: when the start began, 0 while that is not known
	again bool  // heat was called for before it: the call is taken off and given again
	told  bool  // what is to be done was said
	over  bool  // nothing more happens, as the person says
}

// eventSpare is how long after its usual time an event is waited for, in ms: judgement.
const eventSpare = 20_000

// eventsOf lists the events of a start in the order of the sequence, with the seconds after its beginning at which each usually comes.
func eventsOf(m *appliance.Model, rules *worksite.Rules) (events []int, comes map[int]float64) {
	comes = map[int]float64{}
	place := map[int]int{}
	for i := range m.Checks {
		c := &m.Checks[i]
		if c.Event == "" || len(events) > 0 && rules.For(i) != rules.For(events[0]) {
			continue
		}
		place[i], comes[i] = stepAt(m, c.At)
		events = append(events, i)
	}
	slices.SortStableFunc(events, func(a, b int) int { return place[a] - place[b] })
	return events, comes
}

// stepAt is the number of a step in its sequence and the seconds until it usually begins.
func stepAt(m *appliance.Model, id string) (n int, seconds float64) {
	for i := range m.Controls {
		sum := 0.0
		for k := range m.Controls[i].Steps {
			s := &m.Controls[i].Steps[k]
			switch {
			case s.ID == id:
				return k, sum
			case s.Side:
			case s.Takes.Unit != "":
				sum += s.Takes.Nominal
			case s.Needs != nil && s.Within.Unit != "": // it waits, and goes on as soon as it may
				sum += min(s.Within.Nominal, 5)
			case s.Within.Unit != "":
				sum += s.Within.Nominal
			}
		}
	}
	return 0, 0
}

// isEvent tells whether a check is watched at a start with others.
func (m *Machine) isEvent(check int) bool { return check >= 0 && slices.Contains(m.events, check) }

// watch aims at the event that should come next of a start, which begins now if none is watched yet. best is the one that tells most.
func (m *Machine) watch(a Advice) task {
	j := m.j
	if !j.watch.on {
		j.watch = watching{on: true, from: len(j.findings), again: j.site.Call == worksite.Yes}
	}
	for _, e := range m.events {
		if e == a.Check || m.openEvent(e) && !slices.Contains(a.Foreseen, e) {
			return checkTask{e}
		}
	}
	return checkTask{a.Check}
}

// watched goes on with a start that is watched, as long as one of its events tells something.
func (m *Machine) watched() (task, bool) {
	j := m.j
	if !j.watch.on {
		return nil, false
	}
	if j.watch.over {
		m.missedAll()
		return nil, false
	}
	if a := m.advise("watch"); m.isEvent(a.Check) && !a.Verdict {
		j.advice = a
		m.sayDoubt(a)
		if j.asked[a.Check] != 0 {
			return checkTask{a.Check}, true // seen already, and doubted
		}
		return m.watch(a), true
	}
	j.watch.on = false
	return nil, false
}

// missedAll takes what has not come by the end of a start for missed.
func (m *Machine) missedAll() {
	j := m.j
	for _, e := range m.events {
		if !m.openEvent(e) {
			continue
		}
		if o := slices.IndexFunc(m.model.Checks[e].Options, func(o appliance.Option) bool { return o.Missed }); o >= 0 {
			m.settle(Finding{Check: e, Option: o, Typed: true})
			m.fact(m.model.Checks[e].Name + ": " + m.option(m.model.Checks[e].Options[o].ID))
		}
	}
	j.watch.on, j.watch.over = false, false
}

// openEvent tells whether an event may still be answered.
func (m *Machine) openEvent(check int) bool { return m.j.asked[check] == 0 && !m.barredCheck(check) }

// watches tells whether a question is about an event of the start that is watched now.
func (m *Machine) watches(q *question) bool {
	return q != nil && m.j.watch.on && q.act.Kind == worksite.None && q.kind == "look" && m.isEvent(q.check)
}

// eventQuestion makes the question about a look one about an event of a start: what else may be told stands beside its own answers.
func (m *Machine) eventQuestion(q *question) {
	w := &m.j.watch
	if !w.told {
		line := "watch"
		if w.again {
			line = "watch.again"
		}
		q.step.Act = sentence(m.line(line), q.step.Act)
	}
	q.how = m.line("watch.how")
	for _, e := range m.events {
		c := &m.model.Checks[e]
		if e != q.check && !m.openEvent(e) {
			continue
		}
		if c.Watched() {
			q.step.Eye = protocol.EyeFire
		}
		if q.step.Caution == "" && !w.told && c.Caution != "" { // said at the beginning, before anything of it can come
			q.step.Caution, q.step.Level = c.Caution, levelOf(c.Hazard)
		}
		for _, o := range c.Options {
			q.also = append(q.also, c.ID+"="+o.ID)
			if !slices.Contains(q.opts, o.ID) && !slices.Contains(q.also, o.ID) {
				q.also = append(q.also, o.ID)
			}
		}
	}
}

// eventMeant is the event and the answer that somebody means who watches a start: "see-flame=no-flame", or one that fits the first open
// event which has it.
func (m *Machine) eventMeant(q *question, id string) (check int, option string) {
	if c, o, ok := strings.Cut(id, "="); ok {
		i := slices.IndexFunc(m.model.Checks, func(k appliance.Check) bool { return k.ID == c })
		if m.isEvent(i) {
			return i, o
		}
		return q.check, id
	}
	if slices.Contains(q.opts, id) {
		return q.check, id
	}
	for _, e := range m.events {
		if m.openEvent(e) && slices.ContainsFunc(m.model.Checks[e].Options, func(o appliance.Option) bool { return o.ID == id }) {
			return e, id
		}
	}
	return q.check, id
}

// turn turns to the event that is spoken of, where it is not the one that was asked about.
func (m *Machine) turn(fits []utterance.Meaning) []utterance.Meaning {
	j := m.j
	if best := fits[0]; !m.watches(j.q) || best.Kind != utterance.Choice || !slices.Contains(j.q.also, best.ID) {
		return fits
	}
	check, id := m.eventMeant(j.q, fits[0].ID)
	fits = slices.Clone(fits)
	fits[0].ID = id
	m.turnTo(check)
	if !slices.Contains(j.q.opts, id) {
		return fits
	}
	return slices.DeleteFunc(fits, func(x utterance.Meaning) bool {
		return x.Kind == utterance.Choice && x.ID != id && !slices.Contains(j.q.opts, x.ID) // of other events
	})
}

// turnTo makes another event of the start the one that is asked about.
func (m *Machine) turnTo(check int) {
	j := m.j
	if check == j.q.check {
		return
	}
	q := m.taskQuestion(checkTask{check})
	q.seqs, q.typed, q.base = j.q.seqs, j.q.typed, j.q.base
	m.answers(q)
	j.q, j.task = q, checkTask{check}
}

// eventSeen keeps the clock of the start.
func (m *Machine) eventSeen(check int, missed bool) {
	w := &m.j.watch
	if w.on && w.since == 0 && !missed {
		w.since = m.j.now - int64(1000*m.comes[check])
	}
}

// begun notes that a question about a start is put: the clock runs from the call that was just given.
func (m *Machine) begun(q *question) {
	w := &m.j.watch
	switch {
	case m.watches(q):
		w.told = true
		if w.since == 0 && !w.again {
			w.since = m.j.now
		}
	case q.act.Kind == worksite.None && q.kind != "consent":
		w.on = false
	}
}

// nothingMore takes "that's all" for the end of the start.
func (m *Machine) nothingMore(q *question) {
	m.j.watch.over = true
	for _, o := range m.model.Checks[q.check].Options {
		if o.Missed {
			m.accept(choiceOf(o.ID))
			return
		}
	}
}

// watchView is the start that is watched as the page shows it.
func (m *Machine) watchView(q *question) *protocol.WatchView {
	j := m.j
	v := &protocol.WatchView{Since: j.watch.since}
	for _, e := range m.events {
		c := &m.model.Checks[e]
		x := protocol.WatchEvent{Check: c.ID, Text: c.Event, Due: m.comes[e], State: protocol.EventLater}
		answered := -1
		for i := len(j.findings) - 1; i >= j.watch.from && i >= 0; i-- {
			if j.findings[i].Check == e {
				answered = i
				break
			}
		}
		switch {
		case e == q.check:
			x.State = protocol.EventNow
		case answered >= 0:
			switch f := j.findings[answered]; {
			case f.Unknown || f.Option < 0:
				x.State = protocol.EventSkipped
			case c.Options[f.Option].Missed:
				x.State, x.Taken = protocol.EventMissed, m.option(c.Options[f.Option].ID)
			case f.Option == 0:
				x.State, x.Taken = protocol.EventSeen, m.option(c.Options[f.Option].ID)
			default:
				x.State, x.Taken = protocol.EventOdd, m.option(c.Options[f.Option].ID)
			}
		case !m.openEvent(e):
			x.State = protocol.EventSkipped
		}
		if x.State == protocol.EventNow || x.State == protocol.EventLater {
			for _, o := range c.Options {
				x.Answers = append(x.Answers, protocol.Answer{ID: c.ID + "=" + o.ID, Kind: utterance.Choice, Text: m.option(o.ID)})
			}
		}
		v.Events = append(v.Events, x)
	}
	return v
}
