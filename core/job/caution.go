package job

import (
	"readback/core/vocab"
	"slices"
)

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

// warnCover names what is behind a cover that comes off: how hands work inside is no matter yet.
func (m *Machine) warnCover(q *question, hazard string) {
	if _, ok := m.words.Lines["cover."+hazard]; ok {
		q.step.Level, q.step.Caution = levelOf(hazard), m.vary("cover."+hazard, m.j.cautions["cover."+hazard])
		return
	}
	m.warn(q, hazard)
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
	for _, h := range vocab.HazardIDs(true) {
		if l := m.words.Lines["cover."+h]; l.Full == q.step.Caution || slices.Contains(l.Short, q.step.Caution) {
			j.cautions["cover."+h]++
			return
		}
	}
	for _, h := range vocab.HazardIDs(false) {
		l := m.words.Lines["hazard."+h]
		if l.Full == q.step.Caution || slices.Contains(l.Short, q.step.Caution) {
			j.cautions[h]++
			return
		}
	}
}

// signal is the one signal word of a step.
func (m *Machine) signal(level string) string {
	switch level {
	case "danger", "warning", "caution":
		return m.line("signal."+level) + " "
	}
	return ""
}
