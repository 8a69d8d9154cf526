package job

import (
	"slices"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/worksite"
)

// An undo changes what is known, never what hands did. Every answer keeps what was known before it; taking it back
// brings that knowledge again, and the agenda goes on from there through the same interlocks as ever. An act that is
// taken back is asked for the other way round, because nobody knows now how far the hands had come.

// undo works an undo asked for by the host.
func (m *Machine) undo(ev protocol.Event) {
	j := m.j
	i, ok := m.target(ev.Target)
	if !ok || j.alarm != "" || j.doubtAsk || j.state == "ended" {
		m.dropElse() // what was meant besides is not meant any more
		m.say("info", m.line("undo.none"))
		return
	}
	words := j.records[i].words
	m.takeBack(i, true)
	m.say("info", m.line("undo.done", "what", words))
	m.advance()
}

// target finds the answer to take back: the last one, or the one that the event of that number belongs to.
func (m *Machine) target(seq int64) (int, bool) {
	recs := m.j.records
	for i := len(recs) - 1; i >= 0; i-- {
		if seq == 0 || slices.Contains(recs[i].seqs, seq) {
			return i, true
		}
	}
	return -1, false
}

// takeBack undoes the answer of that index. Answers that were given after it stand; what hands did stands.
// called: the answer was called wrong, and is not taken from a voice again.
func (m *Machine) takeBack(i int, called bool) {
	j := m.j
	rec, later := j.records[i], slices.Clone(j.records[i+1:])
	j.records = j.records[:i]
	switch {
	case !called:
	case rec.read != nil:
		j.wrong = append(j.wrong, named{rec.id, rec.taken})
	case rec.word != "" && rec.act.Kind == worksite.None:
		j.wrong = append(j.wrong, named{rec.id, "= " + rec.word})
	}
	mended := j.mended
	j.knowledge = rec.before.snapshot()
	if _, step := rec.task.(swapTask); !step && len(mended) > len(j.mended) {
		j.mended = slices.Clone(mended) // what was put right by hand stays so
	}
	j.done.left, j.done.items = false, false // the place is looked at again before it is called in order
	j.consent, j.proveAt = -1, 0
	j.q, j.task, j.state = nil, nil, "ask"
	m.unholdQuietly()
	m.giveAgain(later)
	m.clampCounts()
	switch {
	case rec.act.Kind != worksite.None:
		m.takeBackAct(rec.act)
	case len(later) == 0:
		j.task = rec.task
	}
}

// clampCounts holds what counts findings to the findings there are.
func (m *Machine) clampCounts() {
	j := m.j
	j.mended, j.powered = slices.Clone(j.mended), slices.Clone(j.powered)
	for k := range j.mended {
		j.mended[k].After = min(j.mended[k].After, len(j.findings))
	}
	for k := range j.powered {
		j.powered[k] = min(j.powered[k], len(j.findings))
	}
}

// giveAgain takes answers that stand once more, without a word and without touching the work place.
func (m *Machine) giveAgain(later []record) {
	j := m.j
	kept, spoken := j.hands, j.talk
	mute := m.mute
	m.mute = true
	var stand []record
	for _, r := range later {
		r.before = j.knowledge.snapshot()
		switch {
		case r.act.Kind != worksite.None: // what hands did stands as it is
		case r.answer == nil || !stands(r.task): // left without one, consent, or a step of a repair: asked anew
			continue
		default:
			j.task = r.task
			q := &question{id: r.id, task: r.task, check: r.check, typed: r.typed}
			r.task.answer(m, q, *r.answer)
		}
		stand = append(stand, r)
	}
	m.mute = mute
	j.hands, j.talk = kept, spoken
	j.records = append(j.records, stand...)
	j.alarm, j.locked, j.doubtAsk, j.state = "", false, false, "ask"
	j.q, j.task = nil, nil
}

// stands tells whether an answer to a task is true whatever was answered before it. Steps of a repair and what follows
// them are not: they hang on the verdict.
func stands(t task) bool {
	switch kindOf(t) {
	case "check", "story", "plate", "meter", "license", "callout", "age":
		return true
	}
	return false
}

// takeBackAct treats an act that is taken back as half done: what it put in place may be there, and what it took away
// may still be there.
func (m *Machine) takeBackAct(a worksite.Act) {
	j := m.j
	before := j.site.Power
	j.site = m.rules.Retract(j.site, a)
	if before != j.site.Power {
		m.setPower()
	}
	if a.Adds() {
		j.task = reverseTask{act: a}
	}
	if a.Kind == worksite.RefitWire {
		j.adrift = j.adrift.With(int(a.N))
	}
	if j.site.Timed() && j.timedAt == 0 {
		j.timedAt, j.timedN = j.now, 0
	}
}

// reverseTask has an act that was taken back undone by its opposite.
type reverseTask struct {
	leavable
	act worksite.Act
}

func (t reverseTask) String() string { return "reverse/" + refusal(t.act) }

func (t reverseTask) need(m *Machine) worksite.Need {
	n := m.cutAsItIs()
	switch i := int(t.act.N); t.act.Kind {
	case worksite.OpenCover:
		n.Covers = n.Covers.Without(i)
	case worksite.LiftWire:
		n.Wires = n.Wires.Without(i)
	}
	return n // a jumper, a meter in line and a held switch come out for it by themselves
}

func (t reverseTask) ask(*Machine, *question) bool                  { return false }
func (t reverseTask) answer(*Machine, *question, utterance.Meaning) {}
func (t reverseTask) giveUp(m *Machine, _ *question)                { m.block(t) }
func (t reverseTask) blocked(m *Machine)                            { m.leftOpen() }
func (t reverseTask) patience(*Machine) int64                       { return tCover }

// retract takes the last answer back at a bare "no" and asks for it again.
func (m *Machine) retract() {
	m.takeBack(len(m.j.records)-1, true)
	m.say("info", m.line("what.then"))
	m.advance()
}

// correct takes the last value back and the one just said in its place. It changes what is known of a reading that was
// taken already, so nothing at the work place is touched for it. A reading of the proof is not corrected but taken anew.
func (m *Machine) correct(u *utterance.Utterance) {
	j := m.j
	rec := j.records[len(j.records)-1]
	m.takeBack(len(j.records)-1, true)
	j.prev = rec.read
	q := m.recall(rec)
	if q == nil {
		m.say("info", m.line("what.then"))
		m.advance()
		return
	}
	j.q, j.task = q, rec.task
	q.seqs = slices.Clone(rec.seqs)
	q.base = j.now
	m.answers(q)
	if fits := m.fitting(u); len(fits) > 0 {
		m.answer(u, fits)
		return
	}
	m.missed()
}

// recall is the question of a record, put from memory: what was read there, not to read it again. It is nil where the
// reading was part of a proof.
func (m *Machine) recall(rec record) *question {
	if rec.act.Kind != worksite.None || rec.task == nil {
		return nil
	}
	q := m.taskQuestion(rec.task)
	if q != nil {
		q.recall, q.ready = true, false
	}
	return q
}
