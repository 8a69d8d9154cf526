package session

import (
	"strconv"
	"strings"

	"readback/core/measure"
	"readback/core/unit"
)

var (
	ones = [...]string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
		"thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}
	tens = [...]string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}
)

// whole says a whole number, 0 and up.
func whole(n int64) string {
	switch {
	case n < 0:
		return "minus " + whole(-n)
	case n < 20:
		return ones[n]
	case n < 100:
		if n%10 == 0 {
			return tens[n/10]
		}
		return tens[n/10] + "-" + ones[n%10]
	case n < 1000:
		return rest(ones[n/100]+" hundred", n%100)
	case n < 1_000_000:
		return rest(whole(n/1000)+" thousand", n%1000)
	}
	return rest(whole(n/1_000_000)+" million", n%1_000_000)
}

func rest(head string, n int64) string {
	if n == 0 {
		return head
	}
	return head + " " + whole(n)
}

// digits says the digits of a text singly.
func digits(s string) string {
	var out []string
	for _, c := range s {
		switch {
		case c >= '0' && c <= '9':
			out = append(out, ones[c-'0'])
		case c == '.':
			out = append(out, "point")
		case c == '-':
			out = append(out, "minus")
		}
	}
	return strings.Join(out, " ")
}

// decimal says a decimal number: the whole part as a number, the digits behind the point singly.
func decimal(d unit.Decimal) string {
	s := d.String()
	minus := strings.HasPrefix(s, "-")
	s = strings.TrimPrefix(s, "-")
	head, tail, point := strings.Cut(s, ".")
	var n int64
	for _, c := range head {
		n = n*10 + int64(c-'0')
	}
	out := whole(n)
	if point {
		out += " point " + digits(tail)
	}
	if minus {
		out = "minus " + out
	}
	return out
}

// risky tells whether a number is easily heard as another one: a teen or the ten that sounds like it, or a zero inside.
func risky(d unit.Decimal) bool {
	s, _, _ := strings.Cut(strings.TrimPrefix(d.String(), "-"), ".")
	switch {
	case len(s) >= 3 && strings.Contains(s[1:], "0"):
		return true
	case len(s) >= 2 && s[len(s)-2] == '1' && s[len(s)-1] >= '3':
		return true
	case len(s) == 2 && s[1] == '0' && s[0] >= '3':
		return true
	}
	return false
}

// value says a quantity with its unit, digits added when they are easily mistaken.
func value(v unit.Value) string {
	n := decimal(v.Dec)
	if risky(v.Dec) {
		n += ", " + digits(v.Dec.String()) + ","
	}
	u, ok := unit.Lookup(v.Unit)
	if !ok {
		return n
	}
	name := u.Many
	if u.Prefixed != "" {
		name = u.Prefixed
	}
	if v.Dec.Mant == 1 && v.Dec.Exp == 0 {
		name = u.One
	}
	return strings.TrimSpace(n + " " + name)
}

// reading says a reading.
func (m *Machine) reading(r *measure.Reading) string {
	switch r.State {
	case measure.Number:
		s := value(r.Value)
		switch r.AC {
		case "ac":
			s += " A C"
		case "dc":
			s += " D C"
		}
		return s
	case measure.Jumping:
		if r.Low != nil && r.High != nil {
			return m.line("jumping.range", "low", value(*r.Low), "high", value(*r.High))
		}
	}
	return m.line("state." + string(r.State))
}

// written is a reading for the eye.
func (m *Machine) written(r *measure.Reading) string {
	switch {
	case r.State == measure.Number:
		return strings.TrimSpace(r.Value.String() + " " + strings.ToUpper(r.AC))
	case r.State == measure.Jumping && r.Low != nil && r.High != nil:
		return r.Low.String() + " .. " + r.High.String()
	}
	return m.line("state." + string(r.State))
}

// number writes a number for the eye, without needless digits.
func number(x float64) string { return strconv.FormatFloat(x, 'g', 4, 64) }
