package job

import (
	"fmt"

	"readback/core/utterance"
)

// Rehearse puts a machine that was only begun at a step, its leads in place, as if the job had come there: for measuring how the step is heard. It gives the
// class of end of speech and what is known about a reading there. The step is a check's id, or one of the steps that the job itself asks at.
func (m *Machine) Rehearse(step string) (class string, slot utterance.Slot, err error) {
	q := m.rehearsed(step)
	if q == nil {
		return "", slot, fmt.Errorf("job: no step %q that can be rehearsed", step)
	}
	q.ready = false
	m.j.q, m.j.state = q, "ask"
	m.answers(q)
	return q.listen(), m.slot(q), nil
}

func (m *Machine) rehearsed(step string) *question {
	for i := range m.model.Checks {
		if m.model.Checks[i].ID == step {
			return m.taskQuestion(checkTask{i})
		}
	}
	for i := range m.model.Plate {
		if "plate."+m.model.Plate[i].ID == step {
			return m.taskQuestion(plateTask{n: i})
		}
	}
	for i, id := range meterSteps {
		if "meter."+id == step {
			return m.taskQuestion(meterTask{n: i})
		}
	}
	switch step {
	case "story":
		return m.taskQuestion(storyTask{})
	case "callout":
		return m.taskQuestion(calloutTask{})
	case "age":
		return m.taskQuestion(ageTask{})
	}
	return nil
}
