package job

import (
	"fmt"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/worksite"
)

// Proved is what walking the dialogue of an equipment file has found.
type Proved struct {
	Situations int // what is open, and the state of the work place, told apart as far as the laws do
	Events     int // answers and other events tried
	Broken     []worksite.Counter
}

// tamper puts a mistake into the machine, so that the prover can be tested. All of its functions may be nil.
type tamper struct {
	before func(m *Machine, ev *protocol.Event) bool                 // false: the event is lost
	after  func(m *Machine, was *job, ev *protocol.Event)            // the job after an event
	heard  func(m *Machine, out []protocol.Effect) []protocol.Effect // what the host is told
	pose   func(m *Machine, t task, q *question) *question           // another question than the one that is due
	once   bool                                                      // one broken law is enough
}

// Prove walks the real dialogue code of an equipment file: every kind of question it can put in every state of the work place, and
// every kind of answer, event and silence. The adviser is any adviser: whatever is allowed may be asked next. What the walk leaves out
// of a situation is the history (findings, counters of words, pictures); the work place is told apart by its supply, covers, call, and
// by whether wires, jumpers, a meter in line or a held switch are in it. Its own proof tells them apart fully: [site.Rules.Prove].
//
// Each broken law is reported once, with the shortest way to it.
func Prove(model *appliance.Model, lex utterance.Lexicon, words *Words) (Proved, error) {
	return prove(model, lex, words, tamper{})
}

func prove(model *appliance.Model, lex utterance.Lexicon, words *Words, t tamper) (Proved, error) {
	m, err := New(model, nobody{}, lex, words, Options{})
	if err != nil {
		return Proved{}, err
	}
	w := &walker{m: m, t: t, known: map[frozen]bool{}, seen: map[situation]bool{}, broken: map[string]bool{}, left: map[worksite.State]bool{}}
	w.tasks()
	w.add(frozen{site: worksite.Start(), repair: -1, stop: -1}, nil, "")
	for len(w.queue) > 0 && !(t.once && len(w.rep.Broken) > 0) {
		f := w.queue[0]
		w.queue = w.queue[1:]
		w.expand(f)
	}
	w.speech()
	return w.rep, nil
}

// nobody is an adviser without an opinion: the walk chooses what is asked.
type nobody struct{}

func (nobody) Advise(Query) Advice { return Advice{Check: -1, Repair: -1, Verdict: true} }

// frozen is a job as far as the walk keeps it.
type frozen struct {
	site             worksite.State
	task             task
	consent          given // just now
	stage, repair    int
	stop             int
	ending, leaveOn  bool
	noMeter, noProof bool
	handled          bool // something was opened, lifted or bridged
	leave, items     bool // done of the way out
	refused          int  // how often the open act was refused
	bad              int  // readings of the proof that were not as they should be
	alarm            string
	doubtAsk, locked bool

	from *frozen
	how  string
}

// given is the consent that stands.
type given uint8

const (
	noConsent given = iota
	toProve         // to prove dead
	toCheck         // to the check that is the task
)

// situation is what tells two frozen jobs apart.
type situation struct {
	power, proof              uint8
	call                      worksite.Tri
	covers                    worksite.Set
	wires, jumper, held       bool
	jack, series, placed      bool
	resets, unlike            bool
	kind                      string // of the question
	act                       worksite.Act
	need                      int // class of the aim
	consent                   given
	ending, leaveOn           bool
	noMeter, noProof, handled bool
	leave, items              bool
	stopped                   bool
	refused, bad              int
	alarm                     string
	doubtAsk                  bool
}

// target is a task with the repair it belongs to, -1 for none.
type target struct {
	task   task
	repair int
}

type walker struct {
	m      *Machine
	t      tamper
	goals  []frozen // tasks that can be chosen when nothing is open, with their stage and repair
	class  map[target]int
	known  map[frozen]bool // jobs that were added before, without their way
	seen   map[situation]bool
	left   map[worksite.State]bool
	queue  []*frozen
	broken map[string]bool
	rep    Proved
}

// tasks lists what can be asked for, one of each kind: checks that need the same and are guarded alike stand for each other, steps of
// repairs likewise.
func (w *walker) tasks() {
	m := w.m
	type class struct {
		n                        worksite.Need
		look, off, hands, inline bool
		consent, safety, instead bool
		stops, alarms            bool // an answer ends the work, or is an emergency
	}
	seen := map[class]int{}
	w.class = map[target]int{}
	add := func(k class, f frozen) {
		k.n.Jumper, k.n.Series, k.n.Place = min(k.n.Jumper, 1), min(k.n.Series, 1), min(k.n.Place, 1)
		if !k.n.Wires.Empty() {
			k.n.Wires = worksite.Set{}.With(k.n.Wires.First())
		}
		n, ok := seen[k]
		if !ok {
			n = len(seen) + 1
			seen[k] = n
			w.goals = append(w.goals, f)
		}
		w.class[target{f.task, f.repair}] = n
	}
	for i := range m.model.Checks {
		c := &m.model.Checks[i]
		f := c.Function
		add(class{n: m.rules.For(i), look: f == measure.Look, off: f == measure.Ohms || f == measure.Continuity || f == measure.Capacitance,
			hands: c.HandsIn, inline: f == measure.MicroampsDC, stops: slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return o.Stop >= 0 }),
			alarms: slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return o.Emergency != "" }), consent: m.rules.Consent(i), safety: c.Stage == "safety", instead: c.Instead >= 0},
			frozen{task: checkTask{i}, stage: sPlan, repair: -1, stop: -1})
	}
	for r := range m.model.Repairs {
		for i, s := range m.model.Repairs[r].Steps {
			add(class{n: m.rules.Work(s), hands: true, inline: true}, frozen{task: swapTask{n: i}, stage: sSwap, repair: r, stop: -1})
		}
	}
	for r := range m.model.Repairs {
		if m.stopOf(r) < 0 {
			w.goals = append(w.goals, frozen{task: cycleTask{n: 0}, stage: sRestart, repair: r, stop: -1})
			break
		}
	}
	for _, t := range []task{pauseTask{}, restTask{}} {
		w.goals = append(w.goals, frozen{task: t, stage: sPlan, repair: -1, stop: -1})
	}
}

// thaw makes the machine stand where a frozen job stands, with its question open.
func (w *walker) thaw(f *frozen) {
	m := w.m
	j := m.newJob()
	m.j, m.out, m.forbidden = j, nil, ""
	j.began, j.seq, j.now, j.lastEvent = true, 1, walkStart, walkStart
	j.site, j.task, j.stage, j.repair, j.stop = f.site, f.task, max(f.stage, sPlan), f.repair, f.stop
	j.ending, j.leaveOn, j.noMeter, j.noProof = f.ending, f.leaveOn, f.noMeter, f.noProof
	j.provedAt, j.proofAt = walkStart, walkStart
	j.liveBad, j.proofBad = f.bad, f.bad
	if j.ending {
		j.outcome = "given-up"
	}
	switch t, _ := f.task.(checkTask); f.consent {
	case toProve:
		j.proveAt = walkStart
	case toCheck:
		j.consent, j.consAt = t.n, walkStart
	}
	if f.handled {
		for i := range m.model.Places {
			if m.model.Places[i].Cover {
				j.opened = j.opened.With(i)
				break
			}
		}
	}
	if f.leave {
		j.done.left = true
	}
	if f.items {
		j.done.items = true
	}
	for i := range j.asked {
		j.asked[i] = 1
	}
	for i := range j.done.meter {
		j.done.meter[i] = true
	}
	if f.site.Timed() {
		j.timedAt = walkStart
	}
	if f.alarm != "" {
		j.alarm, j.state, j.locked, j.alarmAt = f.alarm, "emergency", f.locked, walkStart
		return
	}
	if f.doubtAsk {
		j.doubtAsk, j.state, j.alarmAt = true, "confirm", walkStart
		return
	}
	m.advance()
	if w.t.pose != nil && j.q != nil {
		if q := w.t.pose(m, j.task, j.q); q != j.q {
			m.open(q)
		}
	}
	if q := j.q; q != nil && f.refused > 0 {
		j.refused[refusal(q.act)] = f.refused
	}
}

// walkStart is the time of the walk, ms; only differences count.
const walkStart = 1_800_000_000_000

// freeze is the job as it stands now.
func (w *walker) freeze(refused int) frozen {
	j := w.m.j
	f := frozen{site: j.site, stage: j.stage, repair: j.repair, stop: j.stop, ending: j.ending, leaveOn: j.leaveOn, noMeter: j.noMeter,
		noProof: j.noProof, leave: j.done.left, items: j.done.items, alarm: j.alarm, doubtAsk: j.doubtAsk, locked: j.locked,
		handled: w.m.touched(), refused: refused}
	if !j.ending {
		f.handled = false // every way out is walked with it and without
	}
	if q := j.q; q != nil {
		f.task = j.task
		f.bad = min(max(j.liveBad, j.proofBad), 2)
		switch t, ok := j.task.(checkTask); {
		case ok && j.consAt >= walkStart && j.consent == t.n:
			f.consent = toCheck
		case j.proveAt >= walkStart:
			f.consent = toProve
		}
	}
	return f
}

// add puts a job among those to be walked on from, unless one like it was seen.
func (w *walker) add(f frozen, from *frozen, how string) {
	if w.known[f] {
		return
	}
	w.known[f] = true
	f.from, f.how = from, how
	if f.task == nil && !f.ending && f.alarm == "" && !f.doubtAsk { // nothing is open: anything may be asked for
		for _, g := range w.goals {
			x := f
			x.task, x.stage, x.repair, x.refused, x.bad, x.consent = g.task, g.stage, g.repair, 0, 0, noConsent
			w.enter(x)
		}
		return
	}
	w.enter(f)
}

func (w *walker) enter(f frozen) {
	w.thaw(&f)
	k := situation{power: uint8(f.site.Power), proof: f.site.Proof, call: f.site.Call, covers: f.site.Covers, wires: !f.site.Wires.Empty(),
		jumper: f.site.Jumper != 0, held: f.site.Held, jack: f.site.Jack, series: f.site.Series != 0, placed: f.site.Placed != 0,
		resets: !f.site.Resets.Empty(), unlike: f.site.Unlike, consent: f.consent, ending: f.ending, leaveOn: f.leaveOn, noMeter: f.noMeter,
		noProof: f.noProof, handled: f.handled, leave: f.leave, items: f.items, stopped: f.stop >= 0, refused: f.refused, bad: f.bad, alarm: f.alarm, doubtAsk: f.doubtAsk}
	if q := w.m.j.q; q != nil {
		k.kind, k.act, k.need = q.kind, q.act, w.classOf(q.task)
		if q.check < 0 && q.act.Kind == worksite.None {
			k.kind = kindOf(q.task)
		}
		switch q.act.Kind {
		case worksite.LiftWire, worksite.RefitWire, worksite.JumperIn, worksite.JumperOut, worksite.MeterIn, worksite.MeterOut, worksite.PlaceLeads, worksite.NoteReset:
			k.act.N = 0
		}
	}
	if w.seen[k] {
		return
	}
	w.seen[k] = true
	w.rep.Situations++
	w.queue = append(w.queue, &f)
}

func (w *walker) classOf(t task) int {
	x := target{t, -1}
	if kindOf(t) == "swap" {
		x.repair = w.m.j.repair
	}
	return w.class[x]
}

// fail reports a broken law once.
func (w *walker) fail(law string, f *frozen, last string) {
	if w.broken[law] {
		return
	}
	w.broken[law] = true
	path := []string{last}
	for ; f != nil && f.from != nil; f = f.from {
		path = append([]string{f.how}, path...)
	}
	w.rep.Broken = append(w.rep.Broken, worksite.Counter{Law: law, Path: path})
}

// trial is one event that is tried in a situation.
type trial struct {
	name string
	ev   protocol.Event
	then *protocol.Event // a second one, where one alone does not answer
}

func said(source string, x utterance.Meaning) protocol.Event {
	return protocol.Event{Type: protocol.EvSaid, Said: &utterance.Utterance{Source: source, Text: x.ID, Meanings: []utterance.Meaning{x}}}
}

func volts(s string) utterance.Meaning {
	return utterance.Meaning{Kind: utterance.Reading, Reading: &measure.Reading{Value: unit.Of(s, "V"), AC: "ac"}}
}

// trials are the events that are tried at the open question.
func (w *walker) trials() []trial {
	m := w.m
	j := m.j
	q := j.q
	command := func(id string) trial {
		return trial{name: id, ev: said("touch", utterance.Meaning{Kind: utterance.Command, ID: id})}
	}
	option := func(id string) trial {
		return trial{name: id, ev: said("touch", utterance.Meaning{Kind: utterance.Choice, ID: id})}
	}
	out := []trial{
		{name: "gas", ev: said("voice", utterance.Meaning{Kind: utterance.Emergency, ID: "gas"})},
		{name: "shock", ev: said("voice", utterance.Meaning{Kind: utterance.Emergency, ID: "shock"})},
		{name: "something smells, perhaps", ev: said("voice", utterance.Meaning{Kind: utterance.Emergency, ID: "ask"})},
		{name: "the program starts anew", ev: protocol.Event{Type: protocol.EvResume, At: walkStart + tAway + 1}},
		{name: "battery empty", ev: protocol.Event{Type: protocol.EvDevice, Device: &protocol.Device{Kind: "battery", Level: 4}}},
		{name: "silence", ev: protocol.Event{Type: protocol.EvTick, At: walkStart + 1_000_000}},
	}
	if j.alarm != "" || j.doubtAsk {
		for _, id := range []string{oOkay, oOutside, oClear, oNone, oLeave} {
			out = append(out, option(id))
		}
		return append(out, command(cFinish), command(cFalseAlarm))
	}
	if q == nil {
		return out
	}
	for _, id := range []string{cFinish, cChanged, cHold, cCantReach, cDontKnow, cReady, cDone, cPerson, cBack, cMissed, cNotSure} {
		out = append(out, command(id))
	}
	switch {
	case q.act.Zero():
		zero := said("voice", volts("0.0"))
		out = append(out, trial{name: "zero, said once", ev: zero}, trial{name: "zero, said twice", ev: zero, then: &zero},
			trial{name: "zero, keyed", ev: said("touch", volts("0.0"))}, trial{name: "118 volts", ev: said("touch", volts("118.0"))})
	case q.act.Proof():
		out = append(out, trial{name: "119 volts", ev: said("touch", volts("119.0"))}, trial{name: "no volts", ev: said("touch", volts("0.0"))})
	case len(q.units) > 0:
		r := said("touch", utterance.Meaning{Kind: utterance.Reading, Reading: &measure.Reading{Value: unit.Of("3", q.units[0])}})
		out = append(out, trial{name: "a reading", ev: r})
	}
	for i, o := range q.opts {
		if i < 4 || q.check >= 0 && m.model.Checks[q.check].Options[i].Stop >= 0 {
			out = append(out, option(o))
		}
	}
	if undo := (protocol.Event{Type: protocol.EvUndo}); q.act.Kind != worksite.None && len(q.opts) > 0 {
		out = append(out, trial{name: "done; no, undo that", ev: said("touch", choiceOf(q.opts[0])), then: &undo})
	} else if q.act.Proof() {
		out = append(out, trial{name: "a reading of the proof; no, undo that", ev: said("touch", volts(map[bool]string{true: "0.0", false: "119.0"}[q.act.Zero()])), then: &undo})
	}
	if len(q.opts) > 0 { // heard as a danger first, then not there
		x := said("voice", utterance.Meaning{Kind: utterance.Emergency, ID: "water", Doubt: true})
		x.Said.Meanings = append(x.Said.Meanings, utterance.Meaning{Kind: utterance.Choice, ID: q.opts[0]})
		none := said("voice", utterance.Meaning{Kind: utterance.Choice, ID: oNone})
		out = append(out, trial{name: "water, or " + q.opts[0] + "; none", ev: x, then: &none})
	}
	return out
}

// expand tries every event in a situation and holds the laws.
func (w *walker) expand(f *frozen) {
	w.thaw(f)
	w.laws(f, nil, f, "what is open", nil)
	for _, t := range w.trials() {
		w.thaw(f)
		if q := w.m.j.q; q != nil && q.ready && q.units != nil && strings.HasPrefix(t.name, "a reading") {
			w.step(said("touch", utterance.Meaning{Kind: utterance.Command, ID: cReady}))
		}
		was := *w.m.j
		if q := w.m.j.q; q != nil { // the question changes while it is worked
			held := *q
			was.q = &held
		}
		w.m.out = nil
		lost := w.step(t.ev)
		if t.then != nil && !lost {
			w.step(*t.then)
		}
		w.rep.Events++
		out := w.m.out
		if w.t.heard != nil {
			out = w.t.heard(w.m, slices.Clone(out))
		}
		w.laws(f, &was, f, t.name, &moment{t, out})
		j := w.m.j
		if j.state == "ended" {
			continue
		}
		refused := 0
		if q := j.q; q != nil && was.q != nil && q.id == was.q.id && q.act.Kind != worksite.None {
			refused = min(j.refused[refusal(q.act)], 3)
		}
		next := w.freeze(refused) // without its way: add compares it
		kind := kindOf(j.task)
		if !j.ending && was.task != j.task && (kind != kindOf(was.task) || kind == "check") {
			next.task, next.consent = nil, noConsent // what was to be done is done or given up
		}
		if !j.ending && !slices.Contains([]string{"check", "swap", "cycle", "pause", "rest", "reverse"}, kind) {
			next.task = nil
		}
		w.add(next, f, w.line(&was, t.name))
	}
	w.wayOut(f)
}

// step gives an event to the machine, through the mistake if there is one. It reports whether the event was lost.
func (w *walker) step(ev protocol.Event) bool {
	m := w.m
	ev.Seq = 2
	if ev.At == 0 {
		ev.At = walkStart + 2000
	}
	if w.t.before != nil && !w.t.before(m, &ev) {
		return true
	}
	was := *m.j
	if q := m.j.q; q != nil {
		held := *q
		was.q = &held
	}
	m.take(ev)
	if w.t.after != nil {
		w.t.after(m, &was, &ev)
	}
	return false
}

func (w *walker) line(j *job, name string) string {
	what := "nothing"
	if j.q != nil {
		what = j.q.step.ID
		if j.q.kind == "consent" {
			what = "consent to " + j.q.task.String()
		}
	}
	return fmt.Sprintf("[%s] %s: %s", j.site.Power, what, name)
}
