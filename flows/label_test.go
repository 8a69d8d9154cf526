package flows_test

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"readback/core/measure"
	"readback/core/unit"
	"readback/flows"
)

// A limit that hangs on a label is that of the real part, and its reading is weighed in proportion; without the label it counts for nothing.
func TestLabels(t *testing.T) {
	m := engine(t, ".", "data/furnace.hcl").Model()
	cap, draft := checkIndex(t, m, "blower-cap"), checkIndex(t, m, "switch-draft-m")
	read := map[string]unit.Value{"blower-uf": unit.Of("10", "uF"), "press-set": unit.Of("0.85", "inH2O")}
	rated := m.WithLabels(read)
	for _, tt := range []struct {
		check     int
		reading   unit.Value
		want      measure.Verdict
		weighed   float64
		unlabeled measure.Verdict // what the file's own number would have said
	}{
		{cap, unit.Of("10.1", "uF"), measure.Pass, 7.575, measure.Fail},
		{cap, unit.Of("7.5", "uF"), measure.Fail, 5.625, measure.Pass},
		{draft, unit.Of("0.68", "inH2O"), measure.Fail, 0.4, measure.Pass},
	} {
		c := &rated.Checks[tt.check]
		r := measure.Reading{Value: tt.reading}
		judge := func(l *measure.Limit) measure.Verdict {
			v := measure.Judge(measure.Modest(), c.Function, r, *l).Verdict
			return map[measure.Verdict]measure.Verdict{measure.ConditionalPass: measure.Pass, measure.ConditionalFail: measure.Fail}[v] + map[bool]measure.Verdict{true: v}[v == measure.Pass || v == measure.Fail]
		}
		if got := judge(c.Limit); got != tt.want {
			t.Errorf("%s with the label: %s is %s, want %s", c.ID, tt.reading, got, tt.want)
		}
		if got := judge(m.Checks[tt.check].Limit); got != tt.unlabeled {
			t.Errorf("%s without the label: %s is %s, want %s", c.ID, tt.reading, got, tt.unlabeled)
		}
		weighed, ok := m.Labelled(tt.check, r, read)
		u := unit.Must(c.Unit)
		if x := weighed.Value.Base() / u.Scale; !ok || math.Abs(x-tt.weighed) > 0.01 {
			t.Errorf("%s is weighed as %g, want %g", c.ID, x, tt.weighed)
		}
		if _, ok := m.Labelled(tt.check, r, nil); ok {
			t.Errorf("%s counts without its label", c.ID)
		}
	}
}

func TestLabelProblems(t *testing.T) {
	for _, tt := range []struct{ label, limit, want string }{
		{`usual = q("5 uF", "plate")`, `between(label * 0.94, label * 1.06, "plate")`, ""},
		{`usual = q("5 uF", "plate")`, `between(label / 2, label * 1.06, "plate")`, "want a number"},
		{`usual = q("5 uF", "plate")`, `near(label, "plate")`, "this is not a limit"},
		{``, `atleast(label - 1, "plate")`, "label size has no usual value in uF"},
	} {
		src := small + `part "can" {
  kind  = "capacitor"
  name  = "can"
  ports = { a = "OUT", b = "HOT" }
  value = q("5 uF", "plate")
}
point "a" {
  net  = "can.a"
  name = "a"
}
point "b" {
  net  = "can.b"
  name = "b"
}
plate "size" {
  name = "size"
  unit = "uF"
  ask  = "How many?"
  ` + tt.label + `
}
check "can" {
  stage    = "plan"
  name     = "can"
  function = "capacitance"
  part     = "can"
  red      = "a"
  black    = "b"
  unit     = "uF"
  power    = "off"
  minutes  = q("1 min", "plate")
  act      = "Read."
  label    = "size"
  limit    = ` + tt.limit + `
}
`
		_, err := flows.Load(fstest.MapFS{"x.hcl": {Data: []byte(src)}}, "x.hcl")
		if tt.want == "" && err != nil || tt.want != "" && (err == nil || !strings.Contains(err.Error(), tt.want)) {
			t.Errorf("%s: %v, want %q", tt.limit, err, tt.want)
		}
	}
}
