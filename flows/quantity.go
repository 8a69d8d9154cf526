package flows

import (
	"math"
	"strconv"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"readback/core/measure"
	"readback/core/unit"
)

// Words that stand for a source where none was published.
var unsourced = []string{"common practice", "from memory", "plate", "computed", "invented for this unit"}

// text is a constant string.
func (l *loader) text(e hclsyntax.Expression) (string, bool) {
	v, diags := e.Value(nil)
	if diags.HasErrors() || !v.IsKnown() || v.IsNull() || v.Type() != cty.String {
		l.at(e.Range(), `write it in quotes: "…"`, "want words")
		return "", false
	}
	return v.AsString(), true
}

func (l *loader) number(e hclsyntax.Expression) (float64, bool) {
	v, diags := e.Value(nil)
	if diags.HasErrors() || !v.IsKnown() || v.IsNull() || v.Type() != cty.Number {
		l.at(e.Range(), "", "want a number")
		return 0, false
	}
	f, _ := v.AsBigFloat().Float64()
	return f, true
}

// source holds a number to its origin: a declared source, or the plain admission that there is none.
func (l *loader) source(e hclsyntax.Expression) string {
	s, ok := l.text(e)
	if !ok {
		return ""
	}
	for _, w := range unsourced {
		if s == w || s == w+", no source" {
			return s
		}
	}
	id := s
	if i := strings.IndexAny(s, " :,"); i > 0 {
		id = s[:i]
	}
	if _, ok := l.sources.index[id]; !ok {
		l.at(e.Range(), meant(s, append(append([]string(nil), l.sources.ids...), unsourced...)), "no source %q", s)
	}
	return s
}

// quantity reads q("24 V", "T12"), q("24..27 V", "T12") or q("26.5 V", 24, 28, "T12").
func (l *loader) quantity(e hclsyntax.Expression, dim unit.Dim) (measure.Quantity, bool) {
	const form = `write q("24 V", "source"), q("24..27 V", "source") or q("26.5 V", 24, 28, "source")`
	var q measure.Quantity
	f, ok := e.(*hclsyntax.FunctionCallExpr)
	if !ok || f.Name != "q" {
		l.at(e.Range(), form, "a number needs its unit and its source")
		return q, false
	}
	if n := len(f.Args); n != 2 && n != 4 {
		l.at(e.Range(), form, "q takes two or four things, here are %d", n)
		return q, false
	}
	s, ok := l.text(f.Args[0])
	if !ok {
		return q, false
	}
	q.Source = l.source(f.Args[len(f.Args)-1])
	num, u, _ := strings.Cut(strings.TrimSpace(s), " ")
	un, known := unit.Lookup(strings.TrimSpace(u))
	if !known {
		l.at(f.Args[0].Range(), meant(u, unitIDs()), "no unit %q", u)
		return q, false
	}
	q.Unit = un.ID
	if dim != "" && un.Dim != dim {
		l.at(f.Args[0].Range(), "", "%q is a %s, want a %s", s, un.Dim, dim)
		return q, false
	}
	lo, hi, ranged := strings.Cut(num, "..")
	a, err := parseNumber(lo)
	b := a
	if err == nil && ranged {
		b, err = parseNumber(hi)
	}
	if err != nil {
		l.at(f.Args[0].Range(), form, "%q does not begin with a number", s)
		return q, false
	}
	q.Nominal = (a + b) / 2
	if ranged {
		q.Low, q.High = a, b
	}
	if len(f.Args) == 4 {
		low, ok1 := l.number(f.Args[1])
		high, ok2 := l.number(f.Args[2])
		if !ok1 || !ok2 {
			return q, false
		}
		q.Low, q.High = low, high
	}
	if q.Low > q.High || (q.Low != 0 || q.High != 0) && (q.Nominal < q.Low || q.Nominal > q.High) {
		l.at(f.Args[0].Range(), "", "%g is not between %g and %g", q.Nominal, q.Low, q.High)
		return q, false
	}
	return q, true
}

func parseNumber(s string) (float64, error) {
	f, err := strconv.ParseFloat(s, 64)
	if err == nil && (math.IsNaN(f) || math.IsInf(f, 0)) {
		return 0, strconv.ErrRange
	}
	return f, err
}

func unitIDs() []string {
	var ids []string
	for _, u := range unit.All() {
		ids = append(ids, u.ID)
	}
	return ids
}

// limit reads between(21, 30, "T12"), atleast(1, "T05") or atmost(0.5, "T24"), in the unit of the check.
func (l *loader) limit(e hclsyntax.Expression, unitID string) *measure.Limit {
	const form = `write between(21, 30, "source"), atleast(1, "source") or atmost(0.5, "source")`
	f, ok := e.(*hclsyntax.FunctionCallExpr)
	want := map[string]int{"between": 3, "atleast": 2, "atmost": 2}
	if !ok || want[f.Name] == 0 || len(f.Args) != want[f.Name] {
		l.at(e.Range(), form, "this is not a limit")
		return nil
	}
	lim := &measure.Limit{Unit: unitID, Source: l.source(f.Args[len(f.Args)-1])}
	first, ok := l.number(f.Args[0])
	if !ok {
		return nil
	}
	switch f.Name {
	case "atleast":
		lim.Low = &first
	case "atmost":
		lim.High = &first
	default:
		second, ok := l.number(f.Args[1])
		if !ok {
			return nil
		}
		if first >= second {
			l.at(e.Range(), "", "nothing is between %g and %g", first, second)
		}
		lim.Low, lim.High = &first, &second
	}
	return lim
}
