package job

import (
	"strconv"
	"strings"

	"readback/core/measure"
)

// minutes says a whole number of minutes.
func (m *Machine) minutes(n int64) string {
	if n == 1 {
		return m.line("minutes.one")
	}
	return m.line("minutes.many", "n", m.words.Whole(n))
}

// rungs name the steps of the ladders in line ids.
var rungs = [...]string{"zero", "one", "two", "three"}

// reading says a reading, its digits too when they are easily misheard.
func (m *Machine) reading(r *measure.Reading) string { return m.words.Reading(*r, true) }

// written is a reading for the eye.
func (m *Machine) written(r *measure.Reading) string {
	switch {
	case r.State == measure.Number:
		return strings.TrimSpace(r.Value.Dec.String() + " " + m.words.Printed(r.Value.Unit) + " " + strings.ToUpper(r.AC))
	case r.State == measure.Jumping && r.Low != nil && r.High != nil:
		return r.Low.String() + " .. " + r.High.String()
	}
	return m.words.Reading(*r, false)
}

// number writes a number for the eye, without needless digits.
func number(x float64) string { return strconv.FormatFloat(x, 'g', 4, 64) }
