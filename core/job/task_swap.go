package job

import (
	"fmt"
	"slices"

	"readback/core/appliance"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/worksite"
)

// stepOf is a step of a repair. A repair without steps is one act, its own name, with nothing opened.
func stepOf(r *appliance.Repair, n int) appliance.SwapStep {
	if n < len(r.Steps) {
		return r.Steps[n]
	}
	return appliance.SwapStep{Act: r.Name, Wire: -1, Power: "any"}
}

// swap leads through the steps of a repair: wires recorded before, one at a time, compared after.
func (m *Machine) swap() task {
	j := m.j
	r := &m.model.Repairs[j.repair]
	if !j.done.noted {
		j.done.noted = true
		m.say("info", r.Note) // before the first step, and so in the record
	}
	wires := false
	for _, s := range r.Steps {
		wires = wires || s.Wire >= 0
	}
	if wires && !j.done.photo[0] {
		return photoTask{n: 0}
	}
	for i := range max(len(r.Steps), 1) {
		if j.done.swapped>>i&1 == 0 {
			return swapTask{n: i}
		}
	}
	if t, ok := m.unlike(); ok {
		return t
	}
	if wires && !j.done.photo[1] {
		return photoTask{n: 1}
	}
	return nil
}

// repairWork is part of the tasks of a repair under way: they are left only by leaving the repair.
type repairWork struct{ leavable }

func (repairWork) blocked(m *Machine)      { m.finish("handed-over", false) }
func (repairWork) patience(*Machine) int64 { return tTool }

// wiring is the state of the work place in which the wires of the repair under way are looked at.
func (m *Machine) wiring() worksite.Need {
	for _, s := range m.model.Repairs[m.j.repair].Steps {
		if s.Wire >= 0 {
			return m.rules.Work(s)
		}
	}
	return worksite.Need{}
}

// swapTask asks for one step of a repair.
type swapTask struct {
	repairWork
	n int
}

func (t swapTask) String() string { return fmt.Sprintf("swap/%d", t.n) }

func (t swapTask) step(m *Machine) appliance.SwapStep {
	return stepOf(&m.model.Repairs[m.j.repair], t.n)
}

func (t swapTask) need(m *Machine) worksite.Need { return m.rules.Work(t.step(m)) }

func (t swapTask) ask(m *Machine, q *question) bool {
	r, s := &m.model.Repairs[m.j.repair], t.step(m)
	m.fromLine(q, "swap", "act", sentence(s.Act))
	q.kind, q.step.Kind = "act", "act"
	q.step.ID = r.ID + "." + fmt.Sprint(min(t.n+1, len(r.Steps)))
	q.step.Level, q.step.Caution = s.Level, s.Caution
	if s.Caution != "" && s.Level == "" {
		q.step.Level = "caution"
	}
	if s.Wire >= 0 {
		q.step.Points = []string{m.model.Points[s.Wire].ID}
		q.step.Where = m.model.Points[s.Wire].Name
	}
	return true
}

func (t swapTask) answer(m *Machine, _ *question, _ utterance.Meaning) {
	j := m.j
	j.done.swapped |= 1 << t.n
	s := t.step(m)
	m.note("site", s.Act)
	if s.Wire >= 0 {
		j.lifted = j.lifted.With(s.Wire)
	}
	m.say("info", m.line("step.done"))
}

func (t swapTask) giveUp(m *Machine, _ *question) { m.block(t) }

// matchTask holds the new part against the old one.
type matchTask struct {
	anywhere
	repairWork
}

func (matchTask) String() string { return "match/0" }

func (matchTask) ask(m *Machine, q *question) bool {
	r := &m.model.Repairs[m.j.repair]
	part := r.Name
	if r.Part >= 0 {
		part = m.model.Parts[r.Part].Name
	}
	m.fromLine(q, "match", "part", part, "list", m.words.And(r.Match))
	return true
}

func (matchTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	switch x.ID {
	case oSame:
		m.j.done.matched = true
		m.say("info", m.line("match.good"))
	case oLater:
		m.say("info", m.line("match.later"))
		m.finish("part-awaited", false)
	default:
		m.say("warning", m.line("match.wrong"))
		m.finish("part-awaited", false)
	}
}

func (matchTask) giveUp(m *Machine, _ *question) { m.finish("part-awaited", false) }

// photoTask takes a picture of the wiring, or has the terminals read aloud in its place.
type photoTask struct {
	repairWork
	n int // 0 before the work, 1 after it
}

func (t photoTask) String() string { return fmt.Sprintf("photo/%d", t.n) }

func (photoTask) need(m *Machine) worksite.Need { return m.wiring() }

func (t photoTask) ask(m *Machine, q *question) bool {
	q.step.ID = [...]string{"photo.before", "photo.after"}[t.n]
	m.fromLine(q, q.step.ID)
	q.step.Eye = [...]string{protocol.EyeBefore, protocol.EyeAfter}[t.n]
	q.step.Marks = m.wireNames()
	return true
}

func (t photoTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	j := m.j
	if t.n == 1 && x.ID == oDifferent {
		m.say("warning", m.line("photo.differs"))
		for i, s := range m.model.Repairs[j.repair].Steps {
			if s.Wire >= 0 {
				j.done.swapped &^= 1 << i
			}
		}
		return
	}
	j.done.photo[t.n] = true
	m.say("info", sentence(m.option(x.ID)))
	if t.n == 1 {
		m.fact(m.line("wires.compared"))
	}
}

func (t photoTask) giveUp(m *Machine, _ *question) { m.block(t) }

// wireTask asks what became of one wire that the camera found changed.
type wireTask struct {
	repairWork
	n int
}

func (t wireTask) String() string { return fmt.Sprintf("wire/%d", t.n) }

func (wireTask) need(m *Machine) worksite.Need { return m.wiring() }

func (t wireTask) ask(m *Machine, q *question) bool {
	if t.n >= len(m.j.wires) {
		return false
	}
	w := &m.j.wires[t.n]
	m.fromLine(q, "wire."+w.Change, "name", w.Name, "before", w.Before, "after", w.After)
	q.step.ID = "wire." + unit.Decimal{Mant: int64(t.n + 1)}.Words()
	m.warn(q, "hands")
	return true
}

func (t wireTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	j := m.j
	if t.n >= len(j.wires) || x.ID == "" {
		return
	}
	w := &j.wires[t.n]
	w.answer = x.ID
	m.say("info", sentence(m.option(x.ID)))
	m.fact(m.line("wire."+x.ID, "name", w.Name))
	if _, open := m.unlike(); !open {
		j.site.Unlike = false
	}
}

func (t wireTask) giveUp(m *Machine, _ *question) { m.block(t) }
func (wireTask) patience(*Machine) int64          { return tLook }

// unlike is the first difference in the wiring that nobody has answered.
func (m *Machine) unlike() (wireTask, bool) {
	i := slices.IndexFunc(m.j.wires, func(w wire) bool { return w.open() })
	return wireTask{n: i}, i >= 0
}
