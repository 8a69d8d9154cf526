package job

import (
	"fmt"
	"hash/fnv"
	"maps"
	"slices"
	"strings"
	"sync"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
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
	w := &walk{known: map[key]bool{}, seen: map[situation]bool{}, whole: map[situation]bool{}, broken: map[string]bool{}, left: map[worksite.State]bool{}}
	for range walkers {
		m, err := New(model, nobody{}, lex, words, Options{})
		if err != nil {
			return Proved{}, err
		}
		x := &walker{walk: w, m: m, t: t, copies: map[task]int32{}}
		x.tasks()
		w.walkers = append(w.walkers, x)
	}
	first := w.walkers[0]
	first.speech()
	first.add(frozen{site: worksite.Start(), repair: -1, stop: -1}, nil, "")
	w.gather()
	for len(w.queue) > 0 && !(t.once && len(w.rep.Broken) > 0) {
		n := min(len(w.queue), batch)
		now := w.queue[:n]
		w.queue = w.queue[n:]
		var wg sync.WaitGroup
		for i, x := range w.walkers {
			wg.Go(func() {
				for k := i; k < len(now); k += len(w.walkers) {
					x.turn = k
					x.expand(now[k])
				}
			})
		}
		wg.Wait()
		w.gather()
	}
	return w.rep, nil
}

// walkers is how many machines walk beside each other; batch is how many situations they share before what they found is put
// together. Neither changes what is found: it is put together in the order of the situations.
const (
	walkers = 2
	batch   = 512
)

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

	from   *frozen
	how    string
	drains bool // its wires are a capacitor's
	every  bool // every event is tried here, also those that do not depend on what is asked about
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
	drained, shown            bool
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

// walk is what all walkers share. They read it; only gather changes it.
type walk struct {
	walkers []*walker
	known   map[key]bool       // jobs that were added before
	seen    map[situation]bool // situations that are walked on from
	whole   map[situation]bool // and those, without what is asked about, in which every event was tried
	left    map[worksite.State]bool
	queue   []*frozen
	broken  map[string]bool
	rep     Proved
}

// walker is one machine that walks.
type walker struct {
	*walk
	m      *Machine
	t      tamper
	goals  []frozen // tasks that can be chosen when nothing is open, with their stage and repair
	class  map[target]int
	copies map[task]int32 // number of a task in keys

	turn   int // the situation that is walked on from now
	found  []found
	fails  []failure
	events int
}

// found is a job that an event led to, with its situation.
type found struct {
	turn int
	job  key
	f    *frozen // nil: only the job is noted
	at   situation
	way  bool // the way out was walked from the work place in at
	site worksite.State
}

// failure is a broken law.
type failure struct {
	turn int
	c    worksite.Counter
}

// gather puts together what the walkers found, in the order of the situations that they walked on from.
func (w *walk) gather() {
	at := make([]int, len(w.walkers))
	bad := make([]int, len(w.walkers))
	for {
		next := -1
		for i, x := range w.walkers {
			if at[i] < len(x.found) && (next < 0 || x.found[at[i]].turn < w.walkers[next].found[at[next]].turn) {
				next = i
			}
		}
		if next < 0 {
			break
		}
		x := &w.walkers[next].found[at[next]]
		at[next]++
		if x.way {
			w.left[x.site] = true
			continue
		}
		w.known[x.job] = true
		if x.f == nil || w.seen[x.at] {
			continue
		}
		w.seen[x.at] = true
		w.rep.Situations++
		w.queue = append(w.queue, x.f)
		all := x.at.alike()
		x.f.every = !w.whole[all]
		w.whole[all] = true
	}
	for {
		next := -1
		for i, x := range w.walkers {
			if bad[i] < len(x.fails) && (next < 0 || x.fails[bad[i]].turn < w.walkers[next].fails[bad[next]].turn) {
				next = i
			}
		}
		if next < 0 {
			break
		}
		c := w.walkers[next].fails[bad[next]].c
		bad[next]++
		if !w.broken[c.Law] {
			w.broken[c.Law] = true
			w.rep.Broken = append(w.rep.Broken, c)
		}
	}
	for _, x := range w.walkers {
		w.rep.Events += x.events
		x.found, x.fails, x.events = x.found[:0], x.fails[:0], 0
	}
}

// alike is a situation without what is asked about: which check, step or part it is. Alarms, a new start, an empty battery,
// a change and the end are worked before, and without, a look at what is asked about; so they are tried once in every such
// situation, and besides once at every check and step there is (speech).
func (k situation) alike() situation {
	k.need, k.act.N = 0, 0
	if k.kind == "look" || k.kind == "ask" {
		k.kind = "words"
	}
	return k
}

// key is a frozen job without pointers, so that a million of them cost the collector nothing.
type key struct {
	site                                                     worksite.State
	task                                                     int32
	stage, repair, stop                                      int16
	consent                                                  given
	ending, leaveOn, noMeter, noProof, handled, leave, items bool
	doubtAsk, locked                                         bool
	refused, bad, alarm                                      int8
}

func (w *walker) keyOf(f *frozen) key {
	n := int32(0)
	if f.task != nil {
		n = w.number(f.task)
	}
	return key{site: f.site, task: n, stage: int16(f.stage), repair: int16(f.repair), stop: int16(f.stop), consent: f.consent, ending: f.ending, leaveOn: f.leaveOn,
		noMeter: f.noMeter, noProof: f.noProof, handled: f.handled, leave: f.leave, items: f.items, doubtAsk: f.doubtAsk, locked: f.locked,
		refused: int8(f.refused), bad: int8(f.bad), alarm: alarmNumber(f.alarm)}
}

func alarmNumber(id string) int8 {
	if id == "" {
		return 0
	}
	return int8(2 + slices.IndexFunc(vocab.Alarms, func(a vocab.Alarm) bool { return a.ID == id }))
}

// number is the same for a task in every walker: its kind and its own number.
func (w *walker) number(t task) int32 {
	n, ok := w.copies[t]
	if !ok {
		h := fnv.New32a()
		h.Write([]byte(t.String()))
		n = int32(h.Sum32())
		w.copies[t] = n
	}
	return n
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
	type pair struct {
		class int
		wires worksite.Set
	}
	wires := map[int]pair{} // by class: the wires of its first target, and the second target once there is one
	w.class = map[target]int{}
	add := func(k class, f frozen) {
		k.n.Jumper, k.n.Series, k.n.Place = min(k.n.Jumper, 1), min(k.n.Series, 1), min(k.n.Place, 1)
		lifted := k.n.Wires
		k.n.Wires = w.wiresLike(lifted)
		n, ok := seen[k]
		if !ok {
			n = 2 * (len(seen) + 1)
			seen[k] = n
			wires[n] = pair{wires: lifted}
			f.drains = w.drains(lifted)
			w.goals = append(w.goals, f)
		} else if p := wires[n]; p.class == 0 && lifted != p.wires { // one wire off, and another asked for, of the same place
			p.class = n + 1
			wires[n] = p
			n++
			f.drains = w.drains(lifted)
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
		if m.model.StopOf(r) < 0 {
			w.goals = append(w.goals, frozen{task: cycleTask{n: 0}, stage: sRestart, repair: r, stop: -1})
			break
		}
	}
	for _, t := range []task{pauseTask{}, restTask{}} {
		w.goals = append(w.goals, frozen{task: t, stage: sPlan, repair: -1, stop: -1})
	}
}

// wiresLike stands for wires of which nothing else counts: the first behind the same covers, of a capacitor or not. The covers
// that they need are in the need itself.
func (w *walker) wiresLike(lifted worksite.Set) worksite.Set {
	var out worksite.Set
	points := w.m.model.Points
	like := func(a, b int) bool {
		return points[a].Place == points[b].Place && w.m.capacitorAt(a) == w.m.capacitorAt(b)
	}
	for p := range lifted.Each {
		first := p
		for i := range points {
			if like(i, p) {
				first = i
				break
			}
		}
		out = out.With(first)
	}
	return out
}

// drains tells whether one of the wires is a capacitor's.
func (w *walker) drains(wires worksite.Set) bool {
	for p := range wires.Each {
		if w.m.capacitorAt(p) {
			return true
		}
	}
	return false
}

// capacitorAt tells whether a point is a terminal of a capacitor.
func (m *Machine) capacitorAt(point int) bool {
	id, _, _ := strings.Cut(m.model.Points[point].Net, ".")
	return slices.ContainsFunc(m.model.Parts, func(p appliance.Part) bool { return p.ID == id && p.Kind == "capacitor" })
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
		if q.act.Proof() || q.act.Kind == worksite.PowerOff || q.kind == "consent" { // nothing else looks at it, and it is kept from one reading to the next
			f.bad = min(max(j.liveBad, j.proofBad), 2)
		}
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
	k := w.keyOf(&f)
	if w.known[k] {
		return
	}
	f.from, f.how = from, how
	if f.task == nil && !f.ending && f.alarm == "" && !f.doubtAsk { // nothing is open: anything may be asked for
		w.found = append(w.found, found{turn: w.turn, job: k})
		for _, g := range w.goals {
			x := f
			x.task, x.stage, x.repair, x.refused, x.bad, x.consent = g.task, g.stage, g.repair, 0, 0, noConsent
			if !g.drains {
				x.site.Drained = worksite.Drain{} // what was discharged counts for what lifts a capacitor's wires only
			}
			w.enter(x, w.keyOf(&x))
		}
		return
	}
	w.enter(f, k)
}

func (w *walker) enter(f frozen, as key) {
	w.thaw(&f)
	k := situation{power: uint8(f.site.Power), proof: f.site.Proof, call: f.site.Call, covers: f.site.Covers, wires: !f.site.Wires.Empty(),
		jumper: f.site.Jumper != 0, held: f.site.Held, jack: f.site.Jack, series: f.site.Series != 0, placed: f.site.Placed != 0, drained: f.site.Drained.Part != 0, shown: f.site.Drained.Shown,
		resets: !f.site.Resets.Empty(), unlike: f.site.Unlike, consent: f.consent, ending: f.ending, leaveOn: f.leaveOn, noMeter: f.noMeter,
		noProof: f.noProof, handled: f.handled, leave: f.leave, items: f.items, stopped: f.stop >= 0, refused: f.refused, bad: f.bad, alarm: f.alarm, doubtAsk: f.doubtAsk}
	if q := w.m.j.q; q != nil {
		k.kind, k.act, k.need = q.kind, q.act, w.classOf(q.task)
		if q.check < 0 && q.act.Kind == worksite.None {
			k.kind = kindOf(q.task)
		}
		switch q.act.Kind {
		case worksite.LiftWire, worksite.RefitWire, worksite.JumperIn, worksite.JumperOut, worksite.MeterIn, worksite.MeterOut, worksite.PlaceLeads, worksite.NoteReset, worksite.Discharge, worksite.ProveEmpty:
			k.act.N = 0
		}
	}
	// Neither the way to a need nor an interlock looks at the thermostat unless the need names it, or leads are placed for a moment
	// of the sequence; the work place's own proof tells it apart always.
	if f.task != nil {
		if n := f.task.need(w.m); n.Call == worksite.NotKnown && n.Place == 0 && k.act.Kind != worksite.CallOn && k.act.Kind != worksite.CallOff {
			k.call = worksite.NotKnown
		}
	}
	if k.bad > 0 || k.refused > 0 { // refusals and bad readings are counted whatever the aim is: one aim of each kind stands for all
		k.need = -len(kindOf(f.task))
	}
	x := found{turn: w.turn, job: as, at: k}
	if !w.seen[k] {
		x.f = &f
	}
	w.found = append(w.found, x)
}

func (w *walker) classOf(t task) int {
	x := target{t, -1}
	if kindOf(t) == "swap" {
		x.repair = w.m.j.repair
	}
	return w.class[x]
}

// fail reports a broken law once.
func (w *walker) fail(law string, f *frozen, last func() string) {
	if w.broken[law] || slices.ContainsFunc(w.fails, func(x failure) bool { return x.c.Law == law }) {
		return
	}
	path := []string{last()}
	for ; f != nil && f.from != nil; f = f.from {
		path = append([]string{f.how}, path...)
	}
	w.fails = append(w.fails, failure{w.turn, worksite.Counter{Law: law, Path: path}})
}

// trial is one event that is tried in a situation.
type trial struct {
	name string
	ev   protocol.Event
	then *protocol.Event // a second one, where one alone does not answer
	free bool            // it is worked before, and without, a look at what is asked about
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
	}
	for i := range out {
		out[i].free = true
	}
	out = append(out, []trial{
		{name: "silence", ev: protocol.Event{Type: protocol.EvTick, At: walkStart + 1_000_000}},
	}...)
	if j.alarm != "" || j.doubtAsk {
		for _, id := range []string{oOkay, oOutside, oClear, oNone, oLeave} {
			out = append(out, option(id))
		}
		return append(out, command(cFinish), command(cFalseAlarm))
	}
	if q == nil {
		return out
	}
	for _, id := range []string{cFinish, cChanged, cHold, cPerson} {
		x := command(id)
		x.free = true
		out = append(out, x)
	}
	for _, id := range []string{cCantReach, cDontKnow, cReady, cDone, cBack, cMissed, cNotSure} {
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
		stops := q.check >= 0 && m.decidesAt(q.check, o)
		if i < 4 || stops {
			x := option(o)
			if stops { // it is asked once more before it counts
				again := x.ev
				x.then = &again
			}
			out = append(out, x)
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

// decidesAt tells whether an answer to a check is asked once more before it counts.
func (m *Machine) decidesAt(check int, id string) bool {
	k := slices.IndexFunc(m.model.Checks[check].Options, func(o appliance.Option) bool { return o.ID == id })
	return k >= 0 && m.decides(check, k)
}

// expand tries every event in a situation and holds the laws. The situation is built once; every event is tried on a copy.
func (w *walker) expand(f *frozen) {
	w.thaw(f)
	w.laws(f, nil, f, "what is open", nil)
	start := w.m.j
	for _, t := range w.trials() {
		if t.free && !f.every {
			continue
		}
		w.m.j, w.m.out, w.m.forbidden = start.twin(), nil, ""
		w.try(f, t)
	}
	w.wayOut(f)
}

// try gives one event to the machine as it stands and holds the laws.
func (w *walker) try(f *frozen, t trial) {
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
	w.events++
	out := w.m.out
	if w.t.heard != nil {
		out = w.t.heard(w.m, slices.Clone(out))
	}
	w.laws(f, &was, f, t.name, &moment{t, out})
	j := w.m.j
	if j.state == "ended" {
		return
	}
	refused := 0
	if q := j.q; q != nil && was.q != nil && q.id == was.q.id && q.act.Kind != worksite.None {
		refused = min(j.refused[refusal(q.act)], 3)
	}
	next := w.freeze(refused)
	kind := kindOf(j.task)
	if !j.ending && was.task != j.task && (kind != kindOf(was.task) || kind == "check") {
		next.task, next.consent = nil, noConsent // what was to be done is done or given up
	}
	if !j.ending && !slices.Contains([]string{"check", "swap", "cycle", "pause", "rest", "reverse"}, kind) {
		next.task = nil
	}
	if !w.known[w.keyOf(&next)] {
		w.add(next, f, w.line(&was, t.name))
	}
}

// twin is a copy of a job that shares nothing with it which an event may change.
func (j *job) twin() *job {
	c := *j
	c.knowledge = j.knowledge.snapshot()
	c.powered, c.wires = slices.Clone(j.powered), slices.Clone(j.wires)
	c.patterns, c.cautions = maps.Clone(j.patterns), maps.Clone(j.cautions)
	c.log, c.lastSaid, c.records, c.wrong, c.photos = slices.Clip(j.log), slices.Clip(j.lastSaid), slices.Clip(j.records), slices.Clip(j.wrong), slices.Clip(j.photos)
	if j.q != nil {
		q := *j.q
		q.seqs, q.reasons, q.choices = slices.Clip(q.seqs), slices.Clip(q.reasons), slices.Clip(q.choices)
		c.q = &q
	}
	return &c
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
	if w.t.after == nil {
		m.take(ev)
		return false
	}
	was := *m.j
	if q := m.j.q; q != nil {
		held := *q
		was.q = &held
	}
	m.take(ev)
	w.t.after(m, &was, &ev)
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
