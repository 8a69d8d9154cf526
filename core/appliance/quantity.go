package appliance

import (
	"fmt"

	"readback/core/measure"
	"readback/core/unit"
)

// unknownTol is the relative half-width of a number whose spread the file does not give: common practice, no source.
const unknownTol = 0.10

// convert gives a quantity's nominal value and half-width in another unit of the same dimension.
func convert(q measure.Quantity, to string) (x, half float64, err error) {
	from, ok := unit.Lookup(q.Unit)
	if !ok {
		return 0, 0, fmt.Errorf("no unit %q", q.Unit)
	}
	u, ok := unit.Lookup(to)
	if !ok {
		return 0, 0, fmt.Errorf("no unit %q", to)
	}
	if from.Dim != u.Dim {
		return 0, 0, fmt.Errorf("%q is a %s, want a %s", q.Unit, from.Dim, u.Dim)
	}
	conv := func(v float64) float64 { return (v*from.Scale + from.Offset - u.Offset) / u.Scale }
	x = conv(q.Nominal)
	if q.Low != 0 || q.High != 0 {
		return x, (conv(q.High) - conv(q.Low)) / 2, nil
	}
	half = x * unknownTol
	return x, max(half, -half), nil
}
