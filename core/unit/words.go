package unit

import "strings"

var (
	ones  = [...]string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}
	tens  = [...]string{2: "twenty", 3: "thirty", 4: "forty", 5: "fifty", 6: "sixty", 7: "seventy", 8: "eighty", 9: "ninety"}
	scale = [...]struct {
		size int64
		word string
	}{{1e12, "trillion"}, {1e9, "billion"}, {1e6, "million"}, {1e3, "thousand"}}
)

// parts returns the written digits before and after the point, without a sign.
func (d Decimal) parts() (neg bool, whole, frac string) {
	s := d.String()
	s, neg = strings.CutPrefix(s, "-")
	whole, frac, _ = strings.Cut(s, ".")
	return neg, whole, frac
}

// Words says a decimal: 120 is "one hundred twenty", -0.05 is "minus zero point zero five". Every digit after the
// point is said, so that "two point zero" stays apart from "two". Whole parts of up to 15 digits.
func (d Decimal) Words() string {
	neg, whole, frac := d.parts()
	var w []string
	if neg {
		w = append(w, "minus")
	}
	var n int64
	for _, c := range whole {
		n = n*10 + int64(c-'0')
	}
	w = cardinal(w, n)
	if frac != "" {
		w = append(w, "point")
		w = digits(w, frac)
	}
	return strings.Join(w, " ")
}

// Digits says a decimal digit by digit: 15 is "one five", 0.09 is "zero point zero nine".
func (d Decimal) Digits() string {
	neg, whole, frac := d.parts()
	var w []string
	if neg {
		w = append(w, "minus")
	}
	w = digits(w, whole)
	if frac != "" {
		w = append(w, "point")
		w = digits(w, frac)
	}
	return strings.Join(w, " ")
}

// Risky tells whether a decimal is easily misheard: a teen or a round ten (fifteen, fifty), or a zero between other digits.
func (d Decimal) Risky() bool {
	_, whole, frac := d.parts()
	last := whole
	if len(last) > 2 {
		last = last[len(last)-2:]
	}
	if len(last) == 2 {
		teen := last[0] == '1' && last[1] >= '3'
		ty := last[0] >= '3' && last[1] == '0'
		if teen || ty {
			return true
		}
	}
	all := strings.Trim(whole+frac, "0")
	return strings.Contains(all, "0") || len(frac) > 1 && frac[0] == '0' && strings.Trim(frac, "0") != ""
}

func digits(w []string, s string) []string {
	for _, c := range s {
		w = append(w, ones[c-'0'])
	}
	return w
}

func cardinal(w []string, n int64) []string {
	if n == 0 {
		return append(w, ones[0])
	}
	for _, s := range scale {
		if n >= s.size {
			w = append(cardinal(w, n/s.size), s.word)
			n %= s.size
		}
	}
	if n >= 100 {
		w = append(w, ones[n/100], "hundred")
		n %= 100
	}
	switch {
	case n >= 20 && n%10 != 0:
		w = append(w, tens[n/10]+"-"+ones[n%10])
	case n >= 20:
		w = append(w, tens[n/10])
	case n > 0:
		w = append(w, ones[n])
	}
	return w
}

// Words is the value as it is spoken, unit last and never abbreviated: "twenty-six point one volts".
func (v Value) Words() string { return join(v.Dec.Words(), v.unitWords()) }

// Spoken is Words with the digits repeated when the number is risky: "fifteen, one five, volts".
func (v Value) Spoken() string {
	words := v.Dec.Words()
	if v.Dec.Risky() {
		return join(words+", "+v.Dec.Digits()+",", v.unitWords())
	}
	return join(words, v.unitWords())
}

// unitWords is empty for a unit without a spoken form and for no unit.
func (v Value) unitWords() string {
	u, ok := Lookup(v.Unit)
	if !ok {
		return ""
	}
	if v.Dec.Mant == 1 && v.Dec.Exp == 0 {
		return u.One
	}
	return u.Many
}

func join(a, b string) string {
	if b == "" {
		return strings.TrimSuffix(a, ",")
	}
	return a + " " + b
}
