package job

import (
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/measure"
)

// callChecks are the checks that show whether the call for heat arrives at the board: volts at the input that the
// control's first step waits for.
func callChecks(m *appliance.Model) []bool {
	out := make([]bool, len(m.Checks))
	for _, c := range m.Controls {
		if len(c.Steps) == 0 || c.Part < 0 {
			continue
		}
		board := &m.Parts[c.Part]
		for _, in := range board.Inputs {
			if !names(c.Steps[0].Needs, board.ID+"."+in.ID) {
				continue
			}
			for i := range m.Checks {
				k := &m.Checks[i]
				if k.Function != measure.VoltsAC && k.Function != measure.VoltsDC || k.Red < 0 || k.Black < 0 {
					continue
				}
				a, b := m.Points[k.Red].Net, m.Points[k.Black].Net
				out[i] = out[i] || a == in.Net && b == in.To || a == in.To && b == in.Net
			}
		}
	}
	return out
}

// names tells whether an expression speaks of a name.
func names(e *appliance.Expr, name string) bool {
	if e == nil {
		return false
	}
	return e.Name == name || slices.ContainsFunc(e.Args, func(a *appliance.Expr) bool { return names(a, name) })
}

// settings are the free questions about how the thermostat is set: those whose part is at the thermostat and can be set
// wrongly. The thermostat is the part of that id.
func settings(m *appliance.Model) []int {
	place := -1
	for i := range m.Parts {
		if m.Parts[i].ID == "thermostat" || strings.HasPrefix(m.Parts[i].ID, "thermostat-") {
			place = m.Parts[i].Place
			break
		}
	}
	var out []int
	for i := range m.Checks {
		c := &m.Checks[i]
		if place < 0 || c.Stage != "free" || c.Part < 0 || m.Parts[c.Part].Place != place {
			continue
		}
		if slices.ContainsFunc(m.Parts[c.Part].Modes, func(k int) bool { return m.Modes[k].Wrong }) {
			out = append(out, i)
		}
	}
	return out
}

// noCall asks how the thermostat is set once more when the board shows that the call is missing: somebody may have
// touched it since, and nobody's thermostat is just fine.
func (m *Machine) noCall(check int, r *measure.Reading) {
	j := m.j
	if !m.calls[check] || j.done.callAgain || j.stage >= sCause {
		return
	}
	jd, ok := m.judge(check, *r)
	if !ok || jd.Verdict != measure.Fail || jd.Value >= jd.Low {
		return
	}
	j.done.callAgain = true
	j.ahead = nil
	for _, c := range m.settings {
		if j.asked[c] != 2 && len(j.ahead) < 3 {
			j.ahead = append(j.ahead, c)
		}
	}
	if len(j.ahead) > 0 {
		m.say("info", m.line("call.again"))
	}
}
