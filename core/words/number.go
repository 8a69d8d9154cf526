package words

import (
	"strconv"
	"strings"

	"readback/core/measure"
	"readback/core/unit"
)

// scales are the powers of ten that have a term of their own, the greatest first.
var scales = [...]struct {
	size int64
	term string
}{{1e12, "number.trillion"}, {1e9, "number.billion"}, {1e6, "number.million"}, {1e3, "number.thousand"}, {100, "number.hundred"}}

// Whole says a whole number.
func (w *Words) Whole(n int64) string { return w.Decimal(unit.Decimal{Mant: n}) }

// Decimal says a decimal: 120 is "one hundred twenty", -0.05 is "minus zero point zero five". Every digit after the
// point is said, so that "two point zero" stays apart from "two".
func (w *Words) Decimal(d unit.Decimal) string {
	neg, whole, frac := parts(d)
	var n int64
	for _, c := range whole {
		n = n*10 + int64(c-'0')
	}
	return w.signed(neg, w.cardinal(n), frac)
}

// Digits says a decimal digit by digit: 15 is "one five", 0.09 is "zero point zero nine".
func (w *Words) Digits(d unit.Decimal) string {
	neg, whole, frac := parts(d)
	return w.signed(neg, w.digits(whole), frac)
}

func parts(d unit.Decimal) (neg bool, whole, frac string) {
	s, neg := strings.CutPrefix(d.String(), "-")
	whole, frac, _ = strings.Cut(s, ".")
	return neg, whole, frac
}

func (w *Words) signed(neg bool, whole, frac string) string {
	if neg {
		whole = w.Term("number.minus") + " " + whole
	}
	if frac != "" {
		whole += " " + w.Term("number.point") + " " + w.digits(frac)
	}
	return whole
}

func (w *Words) digits(s string) string {
	var out []string
	for _, c := range s {
		out = append(out, w.Numbers[c-'0'])
	}
	return strings.Join(out, " ")
}

func (w *Words) cardinal(n int64) string {
	var out []string
	for _, s := range scales {
		if n >= s.size {
			out = append(out, w.Term(s.term, "n", w.cardinal(n/s.size)))
			n %= s.size
		}
	}
	if n > 0 || len(out) == 0 {
		out = append(out, w.Numbers[n])
	}
	return strings.Join(out, " ")
}

// Value is a value as it is spoken, unit last and never abbreviated: "twenty-six point one volts".
func (w *Words) Value(v unit.Value) string { return w.measured(w.Decimal(v.Dec), v) }

// Spoken is Value with the digits repeated when the number is risky: "fifteen, one five, volts".
func (w *Words) Spoken(v unit.Value) string {
	words := w.Decimal(v.Dec)
	if v.Dec.Risky() {
		words += ", " + w.Digits(v.Dec) + ","
	}
	return w.measured(words, v)
}

// measured puts the unit after a number; a unit without a spoken form, and none, add nothing.
func (w *Words) measured(number string, v unit.Value) string {
	u := w.Units[v.Unit]
	name := u.Many
	if v.Dec.Mant == 1 && v.Dec.Exp == 0 {
		name = u.One
	}
	if name == "" {
		return strings.TrimSuffix(number, ",")
	}
	return number + " " + name
}

// Printed is a unit as it is printed beside a number: "µA" for "uA". One that is not known stays as it is.
func (w *Words) Printed(id string) string {
	if u := w.Units[id]; u.Print != "" {
		return u.Print
	}
	return id
}

// Reading is a reading in words, as it is read back: "twenty-six point one volts A C", "O L, over limit", "jumping
// between one and four micro amps". With digits, a risky number is repeated digit by digit: "fifteen, one five,
// volts".
func (w *Words) Reading(r measure.Reading, digits bool) string {
	kind := ""
	if r.AC == "ac" || r.AC == "dc" {
		kind = " " + w.Term("reading."+r.AC)
	}
	switch r.State {
	case measure.Over, measure.Beep, measure.Silent, measure.Blank, measure.Dead:
		return w.Term("reading." + string(r.State))
	case measure.Jumping:
		if r.Low == nil || r.High == nil {
			return w.Term("reading.jumping")
		}
		return w.Term("reading.between", "low", w.Decimal(r.Low.Dec), "high", w.Value(*r.High)) + kind
	}
	if digits {
		return w.Spoken(r.Value) + kind
	}
	return w.Value(r.Value) + kind
}

// Span says the range of a quantity, empty when there is none.
func (w *Words) Span(q measure.Quantity) string { return w.span(q, w.Whole) }

// SpanPrinted writes the range of a quantity in digits, empty where there is none.
func (w *Words) SpanPrinted(q measure.Quantity) string {
	return w.span(q, func(n int64) string { return strconv.FormatInt(n, 10) })
}

func (w *Words) span(q measure.Quantity, whole func(int64) string) string {
	low, high := int64(q.Low+0.5), int64(q.High+0.5)
	if low == high {
		high = int64(q.Nominal + 0.5)
		low = high
	}
	switch {
	case high <= 0:
		return ""
	case low == high:
		return whole(high)
	}
	return w.Term("list.range", "low", whole(low), "high", whole(high))
}
