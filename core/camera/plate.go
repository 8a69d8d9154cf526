package camera

import (
	"errors"
	"fmt"
	"strings"

	"readback/core/unit"
)

// PlateField names one line of a rating plate.
type PlateField string

const (
	PlateVolts    PlateField = "volts"
	PlateHertz    PlateField = "hertz"
	plateAmps     PlateField = "amps"
	PlateInput    PlateField = "input"    // Btu/h
	PlateOutput   PlateField = "output"   // Btu/h
	PlateManifold PlateField = "manifold" // in. w.c.
	plateInlet    PlateField = "inlet"    // in. w.c.
	PlateRise     PlateField = "rise"     // degrees Fahrenheit, a range
)

// Plate is a rating plate's line as values: one, a range, or alternatives such as 120/240.
type Plate struct {
	Field  PlateField
	Values []unit.Value
	Range  bool // Values are the lower and the upper end
}

// ErrPlate is wrapped by every error of ParsePlate; the rest of the text says what is odd and what is expected.
var ErrPlate = errors.New("camera: rating plate")

// plateRule is what a line may say. The bounds only catch slips of the eye or tongue; they are common practice, no source.
type plateRule struct {
	unit      string
	marks     []string // ways the unit is printed, longest first, upper case
	low, high float64
	most      int  // values
	ranged    bool // must be a range
	round     float64
}

var plateRules = map[PlateField]plateRule{
	PlateVolts:    {"V", []string{"VOLTS", "VOLT", "VAC", "V AC", "V"}, 12, 600, 3, false, 1},
	PlateHertz:    {"Hz", []string{"HERTZ", "HZ"}, 50, 60, 2, false, 10},
	plateAmps:     {"A", []string{"AMPERES", "AMPS", "AMP", "A"}, 0.01, 200, 2, false, 0},
	PlateInput:    {"Btu/h", []string{"BTU PER HOUR", "BTU/HR", "BTU/H", "BTUH", "BTU"}, 5e3, 5e5, 3, false, 100},
	PlateOutput:   {"Btu/h", []string{"BTU PER HOUR", "BTU/HR", "BTU/H", "BTUH", "BTU"}, 4e3, 5e5, 3, false, 50},
	PlateManifold: {"inH2O", []string{"INCHES OF WATER", "INCHES WATER", "IN. W.C.", "IN W.C.", "IN. WC", "IN WC", "INH2O", "IN. H2O", `" W.C.`, `" WC`, `"WC`}, 0.5, 14, 2, false, 0},
	plateInlet:    {"inH2O", []string{"INCHES OF WATER", "INCHES WATER", "IN. W.C.", "IN W.C.", "IN. WC", "IN WC", "INH2O", "IN. H2O", `" W.C.`, `" WC`, `"WC`}, 3, 28, 2, false, 0},
	PlateRise:     {"dF", []string{"DEGREES F", "DEG F", "DEG. F", "°F", "F"}, 10, 110, 2, true, 1},
}

// ParsePlate reads a line of a rating plate as typed or said in words already turned to digits: "120 V", "208-230",
// "100,000 BTU/H", "3.5 in. w.c.", "35 to 65". The unit may be missing; another unit is refused.
func ParsePlate(field PlateField, text string) (Plate, error) {
	rule, ok := plateRules[field]
	if !ok {
		return Plate{}, fmt.Errorf("%w: no line is called %q", ErrPlate, field)
	}
	bad := func(format string, a ...any) (Plate, error) {
		return Plate{}, fmt.Errorf("%w: %s %q: %s", ErrPlate, field, text, fmt.Sprintf(format, a...))
	}
	if len(text) > 80 {
		return Plate{}, fmt.Errorf("%w: %s: longer than a line of a plate", ErrPlate, field)
	}
	s := strings.ToUpper(strings.TrimSpace(text))
	for _, m := range rule.marks {
		if t, found := strings.CutSuffix(s, m); found {
			s = strings.TrimSpace(t)
			break
		}
	}
	p := Plate{Field: field}
	sep := ""
	for _, c := range [...]string{" TO ", "/", "-", "–"} {
		if strings.Contains(s, c) {
			sep = c
			break
		}
	}
	parts := []string{s}
	if sep != "" {
		parts = strings.Split(s, sep)
	}
	if len(parts) > rule.most {
		return bad("at most %d values", rule.most)
	}
	for _, part := range parts {
		part = strings.TrimSpace(part)
		for _, m := range rule.marks {
			part = strings.TrimSpace(strings.TrimSuffix(part, m))
		}
		digits, ok := ungroup(part)
		if !ok {
			return bad("%q is not a number in %s", part, rule.unit)
		}
		d, err := unit.ParseDecimal(digits)
		if err != nil {
			return bad("%q is not a number in %s", part, rule.unit)
		}
		v := d.Float()
		if v < rule.low || v > rule.high {
			return bad("%s is not between %g and %g %s", digits, rule.low, rule.high, rule.unit)
		}
		if rule.round > 0 && v/rule.round != float64(int64(v/rule.round)) {
			return bad("%s is not a multiple of %g: read it again", digits, rule.round)
		}
		p.Values = append(p.Values, unit.Value{Dec: d, Unit: rule.unit})
	}
	if sep != "/" && sep != "" {
		p.Range = true
		if len(p.Values) != 2 || p.Values[0].Dec.Float() >= p.Values[1].Dec.Float() {
			return bad("a range runs from less to more")
		}
	}
	if rule.ranged && !p.Range {
		return bad("want a range such as 35-65")
	}
	return p, nil
}

// ungroup takes out thousands separators when they stand where they belong.
func ungroup(s string) (string, bool) {
	whole, frac, dot := strings.Cut(s, ".")
	groups := strings.FieldsFunc(whole, func(r rune) bool { return r == ',' || r == ' ' })
	if n := strings.Count(whole, ",") + strings.Count(whole, " "); n != len(groups)-1 && n > 0 {
		return "", false
	}
	for i, g := range groups {
		if len(groups) > 1 && (i > 0 && len(g) != 3 || i == 0 && len(g) > 3) {
			return "", false
		}
	}
	out := strings.Join(groups, "")
	if strings.HasPrefix(out, "-") {
		return "", false
	}
	if dot {
		out += "." + frac
	}
	return out, out != ""
}

// CheckPlate compares lines that depend on each other and returns what does not fit, in words: output must be below
// input and above half of it.
func CheckPlate(lines []Plate) []string {
	var in, out float64
	for _, l := range lines {
		if len(l.Values) == 0 {
			continue
		}
		v := l.Values[len(l.Values)-1].Base()
		switch l.Field {
		case PlateInput:
			in = v
		case PlateOutput:
			out = v
		}
	}
	var odd []string
	if in > 0 && out > 0 && out >= in {
		odd = append(odd, "the output is not less than the input: read both again")
	}
	if in > 0 && out > 0 && out < in/2 {
		odd = append(odd, "the output is less than half the input: read both again")
	}
	return odd
}
