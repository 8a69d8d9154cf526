package job

import (
	"strconv"

	"readback/core/appliance"
)

func swapKey(i int) string { return "swap." + strconv.Itoa(i) }

// stepOf is a step of a repair. A repair without steps is one act, its own name, with nothing opened.
func stepOf(r *appliance.Repair, n int) appliance.SwapStep {
	if n < len(r.Steps) {
		return r.Steps[n]
	}
	return appliance.SwapStep{Act: r.Name, Wire: -1, Power: "any"}
}

// cost leads through what it costs and the decision. Setting something right costs nothing and needs no decision.
func (m *Machine) cost() (aim, bool) {
	j := m.j
	r := &m.model.Repairs[j.repair]
	if j.done["decide"] || r.Kind == "set" {
		return aim{}, false
	}
	if r.Kind == "replace" {
		if !j.done["callout"] {
			return aim{"callout", 0}, true
		}
		if !j.done["age"] {
			return aim{"age", 0}, true
		}
	}
	return aim{"decide", 0}, true
}

// swap leads through the steps of a repair: wires recorded before, one at a time, compared after.
func (m *Machine) swap() (aim, bool) {
	j := m.j
	r := &m.model.Repairs[j.repair]
	wires := false
	for _, s := range r.Steps {
		wires = wires || s.Wire >= 0
	}
	if wires && !j.done["photo.before"] {
		return aim{"photo", 0}, true
	}
	for i := range max(len(r.Steps), 1) {
		if !j.done[swapKey(i)] {
			return aim{"swap", i}, true
		}
	}
	if a, ok := m.unlike(); ok {
		return a, true
	}
	if wires && !j.done["photo.after"] {
		return aim{"photo", 1}, true
	}
	return aim{}, false
}

// restart leads through the proof of a repair: the check that showed the fault, one full cycle, what belongs to it, and
// a second cycle.
func (m *Machine) restart() (aim, bool) {
	j := m.j
	r := &m.model.Repairs[j.repair]
	if r.Confirm >= 0 && j.asked[r.Confirm] == 0 && !m.barredByProof(r.Confirm) {
		return aim{"check", r.Confirm}, true
	}
	if j.cycles == 0 {
		return aim{"cycle", 0}, true
	}
	if a, ok := m.unasked("restart"); ok {
		return a, true
	}
	if j.cycles == 1 {
		return aim{"cycle", 1}, true
	}
	return aim{}, false
}
