package flows_test

import (
	"maps"
	"math"
	"os"
	"slices"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/flows"
)

// TestSpreadIsResolved: the spread of a reading, got from the adjoint network in one solution, is what comes out when every
// parameter with a tolerance is moved to both its ends and the appliance is simulated anew (GUM 5.1.2, half-widths in quadrature).
func TestSpreadIsResolved(t *testing.T) {
	load := func() *appliance.Model {
		m, err := flows.Load(os.DirFS("data"), "millivolt.hcl")
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	compile := func(m *appliance.Model) *appliance.Engine {
		e, err := appliance.Compile(m)
		if err != nil {
			t.Fatal(err)
		}
		return e
	}
	m := load()
	e := compile(m)
	sums := make([]float64, len(m.Checks))
	for i := range m.Parts {
		kind := m.Parts[i].Kind
		for _, name := range slices.Sorted(maps.Keys(m.Parts[i].Params)) {
			if name != "ohms" && name != "millivolts" || (kind == "wire" || kind == "contact") && m.Parts[i].Params[name].Nominal <= 0.1 {
				continue
			}
			var ends [2]*appliance.Engine
			for k := range ends {
				c := load()
				q := c.Parts[i].Params[name]
				if q.Low == 0 && q.High == 0 {
					q.Low, q.High = 0.9*q.Nominal, 1.1*q.Nominal
				}
				q.Nominal = []float64{q.Low, q.High}[k]
				c.Parts[i].Params[name] = q
				ends[k] = compile(c)
			}
			for c := range m.Checks {
				if f := m.Checks[c].Function; f == measure.MillivoltDC || f == measure.Ohms {
					d := (ends[1].Predict(nil, c).Value - ends[0].Predict(nil, c).Value) / 2
					sums[c] += d * d
				}
			}
		}
	}
	compared := 0
	for c := range m.Checks {
		ck := &m.Checks[c]
		if ck.Function != measure.MillivoltDC && ck.Function != measure.Ohms || ck.ID == "limit-ohms" || ck.ID == "limit-mv" || ck.ID == "spill-mv" {
			continue // of a closed contact nothing but its own resistance varies
		}
		compared++
		got, want := e.Predict(nil, c).Half, math.Sqrt(sums[c])
		if math.Abs(got-want) > 0.08*want {
			t.Errorf("%s: spread ± %.3g, by moving every parameter ± %.3g", ck.ID, got, want)
		}
	}
	if compared < 8 {
		t.Errorf("only %d checks were compared", compared)
	}
}
