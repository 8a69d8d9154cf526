package flows_test

import (
	"fmt"
	"os"
	"testing"

	"readback/core/appliance"
	"readback/flows"
)

func TestDump(t *testing.T) {
	m, err := flows.Load(os.DirFS("../testdata/flows"), "tiny.hcl")
	if err != nil {
		t.Fatal(err)
	}
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	show := func(modes ...int) {
		name := "healthy"
		for _, i := range modes {
			name = m.Modes[i].Full
		}
		step, code, why := e.Reached(modes)
		fmt.Printf("%-32s %-9s %-7s %s\n", name, step, code, why)
		for i := range m.Checks {
			o := e.Predict(modes, i)
			c := &m.Checks[i]
			s := fmt.Sprintf("%.4g±%.2g %s %s", o.Value, o.Half, c.Unit, o.State)
			if o.Option >= 0 {
				s = c.Options[o.Option].ID
			}
			fmt.Printf("   %s=%s;", c.ID, s)
		}
		fmt.Println()
	}
	show()
	for i := range m.Modes {
		show(i)
	}
}
