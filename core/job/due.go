package job

import (
	"slices"

	"readback/core/worksite"
)

// What has to be known before something else is asked comes where it is first needed, and not at all where nothing hangs on it: the meter
// before the first reading, a field of the plate before the check whose limit it moves, the state of a setting before it is changed.

// meterDue is the next step of proving the meter, false when it is proved or there is none.
func (m *Machine) meterDue() (meterTask, bool) {
	j := m.j
	for i, done := range j.done.meter {
		if !done && !j.ending && (i == 0 || !j.noMeter) && (meterSteps[i] != "category" || m.model.Mains) {
			return meterTask{n: i}, true
		}
	}
	return meterTask{}, false
}

// meterOpen tells whether the meter must still be made ready.
func (m *Machine) meterOpen() bool {
	_, open := m.meterDue()
	return open
}

// plateDue is a field of the plate, or the label of a part, that moves the limit of a check.
func (m *Machine) plateDue(t task) (plateTask, bool) {
	c, ok := t.(checkTask)
	if !ok || m.model.Checks[c.n].Limit == nil {
		return plateTask{}, false
	}
	if f := m.model.LabelOf(c.n); f != nil {
		_, known := m.j.plate[f.ID]
		return plateTask{n: m.model.Checks[c.n].Label - 1}, !known
	}
	if m.model.Checks[c.n].Part < 0 {
		return plateTask{}, false
	}
	k := &m.model.Checks[c.n]
	for i := range m.model.Plate {
		f := &m.model.Plate[i]
		if _, known := m.j.plate[f.ID]; !known && m.model.PlateSets(f) == k.Part && f.Unit == k.Unit {
			return plateTask{n: i}, true
		}
	}
	return plateTask{}, false
}

// matchField is a field of the plate that a new part is matched by.
func (m *Machine) matchField() (plateTask, bool) {
	j := m.j
	if j.done.free || m.model.Repairs[j.repair].Kind != "replace" {
		return plateTask{}, false
	}
	for i := range m.model.Plate {
		if f := &m.model.Plate[i]; f.Match && j.plate[f.ID] == "" {
			return plateTask{n: i}, true
		}
	}
	return plateTask{}, false
}

// stateDue is a check that asks for the state which an act is about to change.
func (m *Machine) stateDue(act worksite.Act) (checkTask, bool) {
	j := m.j
	if j.stage >= sCause || j.ending || act.Kind == worksite.PowerOn && j.site.Power != worksite.Unknown || act.Kind == worksite.CallOn && j.site.Call != worksite.NotKnown {
		return checkTask{}, false
	}
	for i := range m.model.Checks {
		if slices.Contains(m.model.Checks[i].Before, act.Kind.String()) && j.asked[i] == 0 && !m.barredCheck(i) {
			return checkTask{i}, true
		}
	}
	return checkTask{}, false
}
