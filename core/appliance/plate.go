package appliance

import (
	"maps"
	"math"
	"slices"

	"readback/core/measure"
	"readback/core/unit"
)

// sameValue is the relative difference under which a value of the rating plate is the one the file has.
const sameValue = 0.01

// WithPlate returns the model as the rating plate of the real unit has it, and whether that is another one: plate values win over
// those of the file. values are by plate field; what a field does not set, or sets in another kind of unit, is left out.
//
// The spread of a parameter keeps its proportion. So do the limits of the checks of that part in the same unit, because they were
// written for the value of the file.
func (m *Model) WithPlate(values map[string]unit.Value) (*Model, bool) {
	out := *m
	changed := false
	for i := range m.Plate {
		f := &m.Plate[i]
		v, ok := values[f.ID]
		part, param := m.sets(f)
		if !ok || part < 0 {
			continue
		}
		q := m.Parts[part].Params[param]
		u, known := unit.Lookup(q.Unit)
		if !known || v.Dim() != u.Dim || q.Nominal == 0 {
			continue
		}
		x := (v.Base() - u.Offset) / u.Scale
		factor := x / q.Nominal
		if !(factor > 0) || math.Abs(factor-1) < sameValue {
			continue
		}
		if !changed {
			out.Parts, out.Checks = slices.Clone(m.Parts), slices.Clone(m.Checks)
			changed = true
		}
		p := &out.Parts[part]
		p.Params = maps.Clone(p.Params)
		p.Params[param] = measure.Quantity{Nominal: x, Low: q.Low * factor, High: q.High * factor, Unit: q.Unit, Source: "plate"}
		for j := range out.Checks {
			if c := &out.Checks[j]; c.Part == part && c.Unit == q.Unit && c.Limit != nil {
				c.Limit = scaled(c.Limit, factor)
			}
		}
	}
	if !changed {
		return m, false
	}
	return &out, true
}

// PlateSets is the part of which a plate field overrides a parameter, -1 for none.
func (m *Model) PlateSets(f *PlateField) int {
	part, _ := m.sets(f)
	return part
}

// sets is the part and the parameter that a plate field overrides, -1 for none.
func (m *Model) sets(f *PlateField) (part int, param string) {
	for i := range m.Parts {
		n := len(m.Parts[i].ID)
		if len(f.Sets) > n+1 && f.Sets[n] == '.' && f.Sets[:n] == m.Parts[i].ID {
			return i, f.Sets[n+1:]
		}
	}
	return -1, ""
}

// scaled is a limit in proportion.
func scaled(l *measure.Limit, factor float64) *measure.Limit {
	out := *l
	for _, end := range [2]**float64{&out.Low, &out.High} {
		if *end != nil {
			x := **end * factor
			*end = &x
		}
	}
	return &out
}
