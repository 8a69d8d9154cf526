package job

import (
	"fmt"
	"slices"

	"readback/core/appliance"
	"readback/core/utterance"
	"readback/core/worksite"
)

// restart leads through the proof of a repair: the check that showed the fault, one full cycle, what belongs to it, and
// a second cycle.
func (m *Machine) restart() task {
	j := m.j
	r := &m.model.Repairs[j.repair]
	switch t, due := m.unasked("restart"); {
	case j.gate >= 0 && j.asked[j.gate] == 2:
		m.finish("handed-over", false)
		return nil
	case j.gate >= 0:
		return checkTask{j.gate}
	case r.Confirm >= 0 && j.asked[r.Confirm] == 0 && !m.barredCheck(r.Confirm):
		return checkTask{r.Confirm}
	case j.cycles == 0:
		return cycleTask{n: 0}
	case due:
		return t
	case j.cycles == 1:
		return cycleTask{n: 1}
	}
	return nil
}

// cycleTask watches a cycle: the first is seen to start, what it does is asked about while it runs, and the second
// follows when the first has ended.
type cycleTask struct {
	repairWork
	n int
}

func (t cycleTask) String() string { return fmt.Sprintf("cycle/%d", t.n) }

func (cycleTask) need(*Machine) worksite.Need { return worksite.Run() }

func (t cycleTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, [...]string{"cycle.first", "cycle.second"}[t.n])
	q.kind, q.step.Kind = "look", "look"
	return true
}

func (cycleTask) answer(m *Machine, _ *question, x utterance.Meaning) {
	j := m.j
	if x.ID != oFull && x.ID != oRunning {
		m.say("info", sentence(m.option(x.ID)))
		m.fails(x.ID)
		m.notFixed()
		return
	}
	j.failed = false
	j.cycles++
	line := m.line([...]string{"cycle.one", "cycle.two"}[min(j.cycles, 2)-1])
	m.fact(line)
	m.say("info", line)
}

func (t cycleTask) giveUp(m *Machine, _ *question) { m.block(t) }
func (cycleTask) patience(*Machine) int64          { return cycleTime }

// fails notes that a watched start did not bring heat: as the answer to the question of the story that has this answer,
// and so that nobody is told that nothing is wrong.
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
	m.nextGate()
}

// nextGate has what a repair was to end seen to be gone before the supply comes back.
func (m *Machine) nextGate() {
	j := m.j
	if j.repair < 0 || j.gate >= 0 {
		return
	}
	for _, c := range m.model.Repairs[j.repair].Causes {
		if m.stillBad(c) && m.rules.For(c).Power != worksite.Live && j.asked[c] != 2 {
			j.gate, j.asked[c] = c, 0
			return
		}
	}
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
	j.stage = sPlan
	if j.done.free {
		j.stage = sFree // it was tried before anything was measured
	}
	j.done.free = false
	j.done.decided, j.done.matched, j.done.photo, j.done.noted, j.done.swapped = false, false, [2]bool{}, false, 0
	j.wires = nil
	if m.worked() >= maxMended {
		m.unresolved()
	}
}

// restTask cuts the supply for a moment, so that a start can be watched from its beginning.
type restTask struct{ optional }

func (restTask) String() string                { return "rest/0" }
func (restTask) need(m *Machine) worksite.Need { return m.cutAsItIs() }

func (restTask) ask(m *Machine, _ *question) bool {
	m.watchAnew()
	return false // the acts are all there is to it
}

func (restTask) answer(*Machine, *question, utterance.Meaning) {}
func (t restTask) giveUp(m *Machine, _ *question)              { m.block(t) }
func (restTask) blocked(*Machine)                              {}

// cutAsItIs is the work place as it is, with the supply cut and nothing in place that must not stay.
func (m *Machine) cutAsItIs() worksite.Need {
	return worksite.Need{Power: worksite.Cut, Covers: m.j.site.Covers, Wires: m.j.site.Wires}
}

// pauseTask waits, with the supply cut.
type pauseTask struct{ optional }

func (pauseTask) String() string                { return "pause/0" }
func (pauseTask) need(m *Machine) worksite.Need { return m.cutAsItIs() }

func (pauseTask) ask(m *Machine, q *question) bool {
	m.fromLine(q, "pause")
	return true
}

func (pauseTask) answer(*Machine, *question, utterance.Meaning) {}
func (t pauseTask) giveUp(m *Machine, _ *question)              { m.block(t) }
func (pauseTask) blocked(*Machine)                              {}
