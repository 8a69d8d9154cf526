// Package unit holds exact decimal values and the units a heating technician meets.
//
// A value keeps the digits it was given: "2.0" and "2" are different readings of the
// same size, because the last digit tells the resolution of the meter's range.
// Conversion to a base unit (volt, ampere, ohm, farad, hertz, kelvin difference or
// degree Celsius, pascal, second) happens only at the edge, through [Value.Base].
package unit

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Dim is what a unit measures.
type Dim string

const (
	Voltage     Dim = "voltage"     // base: volt
	Current     Dim = "current"     // base: ampere
	Resistance  Dim = "resistance"  // base: ohm
	Capacitance Dim = "capacitance" // base: farad
	Frequency   Dim = "frequency"   // base: hertz
	Temperature Dim = "temperature" // base: degree Celsius (a point on the scale)
	TempDiff    Dim = "temperature difference"
	Pressure    Dim = "pressure" // base: pascal
	Fraction    Dim = "fraction" // base: 1 (per cent, parts per million)
	Duration    Dim = "duration" // base: second
	Power       Dim = "power"    // base: watt
	Length      Dim = "length"   // base: metre
	Count       Dim = "count"    // base: 1 (blinks, tries)
	Money       Dim = "money"    // base: one unit of the user's own currency
)

// Unit is one way of writing a dimension. ID is the written symbol in ASCII and is unique.
type Unit struct {
	ID       string  // written form, ASCII: "uA", "kohm", "inH2O"
	Dim      Dim     // what it measures
	Scale    float64 // base = value*Scale + Offset
	Offset   float64 // only for temperature points
	One      string  // spoken, one of it: "volt"
	Many     string  // spoken, several: "volts"
	Prefixed string  // spoken with the prefix apart: "MICRO amps"; empty when there is no prefix
	Print    string  // printed, where ID is not it: "µA"
}

// The exact factors: inch of water 249.08891 Pa at 4 °C (NIST SP 811, B.8), pound per
// square inch 6894.757 Pa, inch of mercury 3386.389 Pa, British thermal unit (IT)
// per hour 0.29307107 W, inch 0.0254 m, all NIST SP 811, Appendix B.
var units = []Unit{
	{ID: "V", Dim: Voltage, Scale: 1, One: "volt", Many: "volts"},
	{ID: "mV", Dim: Voltage, Scale: 1e-3, One: "milli volt", Many: "milli volts", Prefixed: "MILLI volts"},
	{ID: "A", Dim: Current, Scale: 1, One: "amp", Many: "amps"},
	{ID: "mA", Dim: Current, Scale: 1e-3, One: "milli amp", Many: "milli amps", Prefixed: "MILLI amps"},
	{ID: "uA", Dim: Current, Scale: 1e-6, One: "micro amp", Many: "micro amps", Prefixed: "MICRO amps", Print: "µA"},
	{ID: "ohm", Dim: Resistance, Scale: 1, One: "ohm", Many: "ohms", Print: "Ω"},
	{ID: "kohm", Dim: Resistance, Scale: 1e3, One: "kilo ohm", Many: "kilo ohms", Prefixed: "KILO ohms", Print: "kΩ"},
	{ID: "Mohm", Dim: Resistance, Scale: 1e6, One: "mega ohm", Many: "mega ohms", Prefixed: "MEGA ohms", Print: "MΩ"},
	{ID: "uF", Dim: Capacitance, Scale: 1e-6, One: "micro farad", Many: "micro farads", Prefixed: "MICRO farads", Print: "µF"},
	{ID: "nF", Dim: Capacitance, Scale: 1e-9, One: "nano farad", Many: "nano farads", Prefixed: "NANO farads"},
	{ID: "Hz", Dim: Frequency, Scale: 1, One: "hertz", Many: "hertz"},
	{ID: "degC", Dim: Temperature, Scale: 1, One: "degree Celsius", Many: "degrees Celsius", Print: "°C"},
	{ID: "degF", Dim: Temperature, Scale: 5.0 / 9, Offset: -160.0 / 9, One: "degree Fahrenheit", Many: "degrees Fahrenheit", Print: "°F"},
	{ID: "dF", Dim: TempDiff, Scale: 5.0 / 9, One: "degree", Many: "degrees", Print: "°F"},
	{ID: "dC", Dim: TempDiff, Scale: 1, One: "degree Celsius", Many: "degrees Celsius", Print: "°C"},
	{ID: "inH2O", Dim: Pressure, Scale: 249.08891, One: "inch of water", Many: "inches of water", Print: "in. of water"},
	{ID: "Pa", Dim: Pressure, Scale: 1, One: "pascal", Many: "pascals"},
	{ID: "kPa", Dim: Pressure, Scale: 1e3, One: "kilo pascal", Many: "kilo pascals", Prefixed: "KILO pascals"},
	{ID: "psi", Dim: Pressure, Scale: 6894.757, One: "P S I", Many: "P S I"},
	{ID: "inHg", Dim: Pressure, Scale: 3386.389, One: "inch of mercury", Many: "inches of mercury", Print: "in. of mercury"},
	{ID: "%", Dim: Fraction, Scale: 1e-2, One: "percent", Many: "percent"},
	{ID: "ppm", Dim: Fraction, Scale: 1e-6, One: "part per million", Many: "parts per million"},
	{ID: "s", Dim: Duration, Scale: 1, One: "second", Many: "seconds"},
	{ID: "min", Dim: Duration, Scale: 60, One: "minute", Many: "minutes"},
	{ID: "h", Dim: Duration, Scale: 3600, One: "hour", Many: "hours"},
	{ID: "yr", Dim: Duration, Scale: 365.25 * 24 * 3600, One: "year", Many: "years"},
	{ID: "W", Dim: Power, Scale: 1, One: "watt", Many: "watts"},
	{ID: "Btu/h", Dim: Power, Scale: 0.29307107, One: "B T U per hour", Many: "B T U per hour"},
	{ID: "in", Dim: Length, Scale: 0.0254, One: "inch", Many: "inches"},
	{ID: "x", Dim: Count, Scale: 1, One: "time", Many: "times", Print: "times"},
	{ID: "money", Dim: Money, Scale: 1, One: "", Many: ""},
}

var byID = func() map[string]*Unit {
	m := make(map[string]*Unit, len(units))
	for i := range units {
		m[units[i].ID] = &units[i]
	}
	return m
}()

// All returns every unit in a fixed order. The slice is fresh.
func All() []Unit { return append([]Unit(nil), units...) }

// Lookup returns the unit with this written form.
func Lookup(id string) (Unit, bool) {
	u, ok := byID[id]
	if !ok {
		return Unit{}, false
	}
	return *u, true
}

// Must is Lookup for a written form fixed in the source. It panics on a form that does not exist.
func Must(id string) Unit {
	u, ok := Lookup(id)
	if !ok {
		panic("unit: no unit " + id)
	}
	return u
}

// Decimal is an exact decimal number Mant × 10^Exp. Trailing zeros count: 2.0 is {20,-1}.
type Decimal struct {
	Mant int64 `json:"m"`
	Exp  int   `json:"e,omitempty"`
	Neg0 bool  `json:"n,omitempty"` // a minus sign on a zero mantissa, "-0.0"
}

// errDecimal is wrapped by every error of ParseDecimal.
var errDecimal = errors.New("unit: not a decimal number")

// ParseDecimal reads an optional minus sign, digits, an optional point and digits.
// At most 15 digits, so that the mantissa and its float64 are both exact.
func ParseDecimal(s string) (Decimal, error) {
	var d Decimal
	t := s
	neg := strings.HasPrefix(t, "-")
	if neg {
		t = t[1:]
	}
	digits, point := 0, false
	for i := 0; i < len(t); i++ {
		switch c := t[i]; {
		case c == '.' && !point:
			point = true
		case c >= '0' && c <= '9':
			if digits++; digits > 15 {
				return Decimal{}, fmt.Errorf("%w: %q has more than 15 digits", errDecimal, s)
			}
			d.Mant = d.Mant*10 + int64(c-'0')
			if point {
				d.Exp--
			}
		default:
			return Decimal{}, fmt.Errorf("%w: %q at character %d", errDecimal, s, i+1)
		}
	}
	if digits == 0 {
		return Decimal{}, fmt.Errorf("%w: %q has no digits", errDecimal, s)
	}
	if neg {
		if d.Mant == 0 {
			d.Neg0 = true
		}
		d.Mant = -d.Mant
	}
	return d, nil
}

// String writes the decimal with the digits it has: {261,-1} is "26.1".
func (d Decimal) String() string {
	m := d.Mant
	sign := ""
	if m < 0 || d.Neg0 {
		sign = "-"
		if m < 0 {
			m = -m
		}
	}
	s := strconv.FormatInt(m, 10)
	if d.Exp > 0 {
		return sign + s + strings.Repeat("0", d.Exp)
	}
	n := -d.Exp
	if n == 0 {
		return sign + s
	}
	if len(s) <= n {
		s = strings.Repeat("0", n-len(s)+1) + s
	}
	return sign + s[:len(s)-n] + "." + s[len(s)-n:]
}

// Float returns the nearest float64.
func (d Decimal) Float() float64 {
	f, err := strconv.ParseFloat(strconv.FormatInt(d.Mant, 10)+"e"+strconv.Itoa(d.Exp), 64)
	if err != nil {
		return math.NaN()
	}
	return f
}

// Equal tells whether two decimals have the same size, whatever their digits: 2 and 2.0.
func (d Decimal) Equal(o Decimal) bool {
	for d.Exp > o.Exp {
		if d.Mant > math.MaxInt64/10 || d.Mant < math.MinInt64/10 {
			return false
		}
		d.Mant, d.Exp = d.Mant*10, d.Exp-1
	}
	for o.Exp > d.Exp {
		if o.Mant > math.MaxInt64/10 || o.Mant < math.MinInt64/10 {
			return false
		}
		o.Mant, o.Exp = o.Mant*10, o.Exp-1
	}
	return d.Mant == o.Mant
}

// Step is the value of one count in the last digit, in the decimal's own unit.
func (d Decimal) Step() float64 { return Decimal{Mant: 1, Exp: d.Exp}.Float() }

// Value is a decimal with its unit.
type Value struct {
	Dec  Decimal `json:"d"`
	Unit string  `json:"u"` // Unit.ID
}

// Of makes a value from written digits and a unit fixed in the source; it panics on bad ones.
func Of(digits, unitID string) Value {
	d, err := ParseDecimal(digits)
	if err != nil {
		panic(err)
	}
	return Value{Dec: d, Unit: Must(unitID).ID}
}

// ParseValue reads "26.1 V".
func ParseValue(s string) (Value, error) {
	num, u, ok := strings.Cut(strings.TrimSpace(s), " ")
	if !ok {
		return Value{}, fmt.Errorf("unit: %q: want a number, a space and a unit", s)
	}
	d, err := ParseDecimal(num)
	if err != nil {
		return Value{}, err
	}
	un, ok := Lookup(strings.TrimSpace(u))
	if !ok {
		return Value{}, fmt.Errorf("unit: %q: no such unit %q", s, u)
	}
	return Value{Dec: d, Unit: un.ID}, nil
}

// Base returns the size in the base unit of its dimension; NaN when the unit is unknown.
func (v Value) Base() float64 {
	u, ok := Lookup(v.Unit)
	if !ok {
		return math.NaN()
	}
	return v.Dec.Float()*u.Scale + u.Offset
}

// Dim is the value's dimension, empty when the unit is unknown.
func (v Value) Dim() Dim {
	u, ok := Lookup(v.Unit)
	if !ok {
		return ""
	}
	return u.Dim
}

// Times is a value in proportion, with two more digits than it had, so that nothing of it is lost.
func (v Value) Times(x float64) Value {
	exp := v.Dec.Exp - 2
	return Value{Dec: Decimal{Mant: int64(math.Round(v.Dec.Float() * x / Decimal{Mant: 1, Exp: exp}.Float())), Exp: exp}, Unit: v.Unit}
}

// String writes "26.1 V".
func (v Value) String() string { return v.Dec.String() + " " + v.Unit }

// Printed is the unit with this written form as it is printed beside a number: "µA" for "uA". One that is not known stays as it is.
func Printed(id string) string {
	if u := byID[id]; u != nil && u.Print != "" {
		return u.Print
	}
	return id
}

// FromBase writes a size given in the base unit in the unit named, with so many decimals.
func FromBase(base float64, unitID string, decimals int) Value {
	u := Must(unitID)
	x := (base - u.Offset) / u.Scale
	m := math.Round(x * math.Pow(10, float64(decimals)))
	return Value{Dec: Decimal{Mant: int64(m), Exp: -decimals}, Unit: u.ID}
}
