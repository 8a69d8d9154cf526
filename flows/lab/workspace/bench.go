// Package bench makes the built-in appliances ready for diagnosis, once for all tests of a package.
package workspace

import (
	"sync"
	"testing"

	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/measure"
	"readback/flows"
)

// Bench is an equipment file with its engine and its case, for a modest meter and the usual prior. It is shared and never changed.
type Bench struct {
	Model  *appliance.Model
	Engine *appliance.Engine
	Case   *infer.Case
}

var all = sync.OnceValues(func() ([]*Bench, error) {
	models, err := flows.Builtin()
	if err != nil {
		return nil, err
	}
	var out []*Bench
	for _, m := range models {
		e, err := appliance.Compile(m)
		if err != nil {
			return nil, err
		}
		c, err := infer.ForAppliance(e, measure.Modest(), infer.UsualBase)
		if err != nil {
			return nil, err
		}
		out = append(out, &Bench{m, e, c})
	}
	return out, nil
})

// All returns every built-in file, in the order of flows.Builtin.
func All(t testing.TB) []*Bench {
	t.Helper()
	out, err := all()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Small is the file with the fewest modes, for tests that need a real appliance and not a large one.
func Small(t testing.TB) *Bench {
	t.Helper()
	return pick(t, func(a, b *Bench) bool { return len(a.Model.Modes) < len(b.Model.Modes) })
}

// Large is the file with the most modes.
func Large(t testing.TB) *Bench {
	t.Helper()
	return pick(t, func(a, b *Bench) bool { return len(a.Model.Modes) > len(b.Model.Modes) })
}

func pick(t testing.TB, before func(a, b *Bench) bool) *Bench {
	t.Helper()
	var best *Bench
	for _, b := range All(t) {
		if best == nil || before(b, best) {
			best = b
		}
	}
	return best
}
