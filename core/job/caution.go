package job

import "slices"

// levelOf is the signal word of a hazard: danger kills, warning maims, caution hurts (ANSI Z535.4).
func levelOf(hazard string) string {
	switch hazard {
	case "mains", "gas":
		return "danger"
	case "", "none", "sharp":
		return "caution"
	}
	return "warning"
}

// warn puts the caution of a hazard in front of a step: in full the first time, then the short forms in turn.
func (m *Machine) warn(q *question, hazard string) {
	if hazard == "" || hazard == "none" {
		return
	}
	n := m.j.cautions[hazard]
	for i := range m.model.Cautions {
		c := &m.model.Cautions[i]
		if c.Hazard == hazard && len(c.Say) > 0 {
			k := 0
			if n > 0 && len(c.Say) > 1 {
				k = 1 + (n-1)%(len(c.Say)-1)
			}
			q.step.Level, q.step.Caution = c.Level, c.Say[k]
			return
		}
	}
	if _, ok := m.words.Lines["hazard."+hazard]; ok {
		q.step.Level, q.step.Caution = levelOf(hazard), m.vary("hazard."+hazard, n)
	}
}

// worst is the hazard that is named when a place has several.
func (m *Machine) worst(hazards []string) string {
	for _, h := range []string{"mains", "gas", "capacitor", "moving", "hot", "low", "sharp"} {
		if slices.Contains(hazards, h) {
			return h
		}
	}
	return ""
}

// countCaution notes that the caution of a step was spoken, so that the next one is short.
func (m *Machine) countCaution(q *question) {
	j := m.j
	for i := range m.model.Cautions {
		if slices.Contains(m.model.Cautions[i].Say, q.step.Caution) {
			j.cautions[m.model.Cautions[i].Hazard]++
			return
		}
	}
	for _, h := range hazards {
		l := m.words.Lines["hazard."+h]
		if l.Full == q.step.Caution || slices.Contains(l.Short, q.step.Caution) {
			j.cautions[h]++
			return
		}
	}
}

var hazards = []string{"mains", "gas", "capacitor", "moving", "hot", "low", "sharp", "door", "jumper", "restart", "hands"}

// signal is the one signal word of a step.
func (m *Machine) signal(level string) string {
	switch level {
	case "danger", "warning", "caution":
		return m.line("signal."+level) + " "
	}
	return ""
}
