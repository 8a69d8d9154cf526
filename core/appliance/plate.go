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

// Late tells whether a field is the label of one part, which is asked at the check that needs it.
func (f *PlateField) Late() bool { return f.Usual.Unit != "" }

// LabelOf is the field that the limit of a check hangs on, nil for none.
func (m *Model) LabelOf(check int) *PlateField {
	if n := m.Checks[check].Label; n > 0 {
		return &m.Plate[n-1]
	}
	return nil
}

// label is what a label says in the unit of the file's own value, and how many times that value it is.
func (f *PlateField) label(v unit.Value) (x, times float64, ok bool) {
	u, known := unit.Lookup(f.Usual.Unit)
	if !known || v.Dim() != u.Dim || f.Usual.Nominal == 0 {
		return 0, 0, false
	}
	x = (v.Base() - u.Offset) / u.Scale
	return x, x / f.Usual.Nominal, x > 0
}

// WithLabels returns the model with the limits that hang on labels as the labels of the real unit have it. What the file predicts stays:
// a reading is put in proportion to the label before it is weighed.
func (m *Model) WithLabels(values map[string]unit.Value) *Model {
	out := m
	for i := range m.Checks {
		c, f := &m.Checks[i], m.LabelOf(i)
		if f == nil || c.Limit == nil {
			continue
		}
		v, ok := values[f.ID]
		if !ok {
			continue
		}
		x, _, ok := f.label(v)
		if !ok {
			continue
		}
		if out == m {
			changed := *m
			changed.Checks = slices.Clone(m.Checks)
			out = &changed
		}
		lim := *c.Limit
		for k, end := range [2]**float64{&lim.Low, &lim.High} {
			if t := c.LabelEnd[k]; t != nil {
				y := x*t.Times + t.Plus
				*end = &y
			}
		}
		out.Checks[i].Limit = &lim
	}
	return out
}

// Labelled puts a reading of a check in proportion to its label, as the file's own part would have shown it. Not ok: the label was not
// read, and the reading says nothing about what is wrong.
func (m *Model) Labelled(check int, r measure.Reading, values map[string]unit.Value) (measure.Reading, bool) {
	f := m.LabelOf(check)
	if f == nil {
		return r, true
	}
	v, known := values[f.ID]
	if !known {
		return r, false
	}
	_, times, ok := f.label(v)
	if !ok {
		return r, false
	}
	if r.Value.Unit != "" {
		r.Value = r.Value.Times(1 / times)
	}
	for _, end := range [2]**unit.Value{&r.Low, &r.High} {
		if *end != nil {
			x := (*end).Times(1 / times)
			*end = &x
		}
	}
	return r, true
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
