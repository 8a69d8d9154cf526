package job

import (
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// beforeLighting holds an act that would make the appliance light once more: there is a most to it in one job, and gas
// that did not burn needs time to go. held tells that something else comes first; the question may then be nil.
func (m *Machine) beforeLighting(t task, act worksite.Act) (q *question, held bool) {
	j := m.j
	if !lights(m.rules.Apply(j.site, act, worksite.Done)) || lights(j.site) {
		return nil, false
	}
	if m.model.Starts > 0 && j.starts >= m.model.Starts {
		m.say("warning", m.line("starts.enough"))
		m.fact(m.line("starts.enough"))
		if j.ending { // it cannot be left on
			j.leaveOn = false
			return nil, true
		}
		m.finish("unresolved", false)
		return nil, true
	}
	if wait := m.relightAt(); j.now < wait {
		j.task = relightTask{after: wait}
		return m.toward(j.task), true
	}
	return nil, false
}

// relightAt is when it may be lit again, ms.
func (m *Machine) relightAt() int64 {
	wait := m.model.Relight
	if wait.Nominal == 0 || m.j.offAt == 0 {
		return 0
	}
	return m.j.offAt + int64(wait.Nominal*unit.Must(wait.Unit).Scale*1000)
}

// relightTask waits until gas that did not burn has gone. What is asked about gas for safety is asked again after it.
type relightTask struct {
	anywhere
	leavable
	after int64
}

func (relightTask) String() string { return "relight/0" }

func (t relightTask) need(m *Machine) worksite.Need { return m.cutAsItIs() }

func (t relightTask) ask(m *Machine, q *question) bool {
	if m.j.now >= t.after {
		m.askDangersAgain(func(a vocab.Alarm) bool { return a.ID == "gas" })
		return false
	}
	m.fromLine(q, "relight", "time", m.minutes((t.after-m.j.now+59_999)/60_000))
	q.step.Until = t.after
	return true
}

func (t relightTask) answer(m *Machine, _ *question, _ utterance.Meaning) {
	if m.j.now < t.after {
		m.say("warning", m.line("relight.early"))
		m.emit(protocol.Effect{Type: protocol.DoCue, ID: "refused"})
		m.j.task = t
	}
}

func (t relightTask) giveUp(m *Machine, _ *question) { m.block(t) }

func (relightTask) blocked(m *Machine) {
	m.j.leaveOn = false // who does not wait leaves it off
	m.finish("given-up", false)
}

func (relightTask) patience(*Machine) int64 { return cycleTime }

// askDangersAgain has the questions of safety asked once more whose answer may be such an alarm.
func (m *Machine) askDangersAgain(such func(vocab.Alarm) bool) {
	for i := range m.model.Checks {
		c := &m.model.Checks[i]
		if c.Stage != "safety" || m.j.asked[i] == 0 {
			continue
		}
		for _, o := range c.Options {
			if a, ok := vocab.AlarmOf(o.Emergency); ok && such(a) {
				m.j.asked[i] = 0
			}
		}
	}
}
