package flows

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"readback/core/appliance"
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

// labels reads the limits that hang on a label: atleast(label + 0.1, "source"), between(label * 0.94, label * 1.06, "source").
func (l *loader) labels() {
	checks := make([]int, 0, len(l.labelled))
	for i := range l.labelled {
		checks = append(checks, i)
	}
	slices.Sort(checks)
	for _, i := range checks {
		c, e := &l.m.Checks[i], l.labelled[i]
		f, ok := e.(*hclsyntax.FunctionCallExpr)
		want := map[string]int{"between": 3, "atleast": 2, "atmost": 2}
		if !ok || want[f.Name] == 0 || len(f.Args) != want[f.Name] {
			l.at(e.Range(), `write atleast(label + 0.1, "source") or between(label * 0.94, label * 1.06, "source")`, "this is not a limit")
			continue
		}
		label := l.m.LabelOf(i)
		if label.Usual.Nominal <= 0 || label.Usual.Unit != c.Unit {
			l.at(e.Range(), `usual = q("0.5 inH2O", "source") in the plate field`, "label %s has no usual value in %s", label.ID, c.Unit)
			continue
		}
		lim := &measure.Limit{Unit: c.Unit, Source: l.source(f.Args[len(f.Args)-1])}
		ends := [2]**float64{&lim.Low, &lim.High}
		first := 0
		if f.Name == "atmost" {
			first = 1
		}
		for k, a := range f.Args[:len(f.Args)-1] {
			if t, ok := l.term(a); ok {
				end := label.Usual.Nominal*t.Times + t.Plus
				c.LabelEnd[first+k], *ends[first+k] = &t, &end
			}
		}
		c.Limit = lim
	}
}

// term is label, label + n, label - n, label * n, or a plain number.
func (l *loader) term(e hclsyntax.Expression) (appliance.Term, bool) {
	isLabel := func(e hclsyntax.Expression) bool {
		t, ok := e.(*hclsyntax.ScopeTraversalExpr)
		return ok && len(t.Traversal) == 1 && t.Traversal.RootName() == "label"
	}
	if isLabel(e) {
		return appliance.Term{Times: 1}, true
	}
	if b, ok := e.(*hclsyntax.BinaryOpExpr); ok && isLabel(b.LHS) {
		n, ok := l.number(b.RHS)
		switch b.Op {
		case hclsyntax.OpAdd:
			return appliance.Term{Times: 1, Plus: n}, ok
		case hclsyntax.OpSubtract:
			return appliance.Term{Times: 1, Plus: -n}, ok
		case hclsyntax.OpMultiply:
			return appliance.Term{Times: n}, ok
		}
	}
	n, ok := l.number(e)
	return appliance.Term{Plus: n}, ok
}
