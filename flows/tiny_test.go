package flows_test

import (
	"fmt"
	"os"
	"testing"
	"time"

	"readback/core/appliance"
	"readback/flows"
)

func TestDump(t *testing.T) {
	name := "../testdata/flows/tiny.hcl"
	if os.Getenv("F") != "" {
		name = os.Getenv("F")
	}
	m, err := flows.Load(os.DirFS("."), name)
	if err != nil {
		m, err = flows.Load(os.DirFS("/"), name[1:])
	}
	if err != nil {
		t.Fatal(err)
	}
	t0 := time.Now()
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Println("compile", time.Since(t0), e.Stats())
	t0 = time.Now()
	tab := e.Table(e.Singles())
	fmt.Println("singles", time.Since(t0))
	for h, hyp := range tab.Hyps {
		name := "healthy"
		for _, i := range hyp {
			name = m.Modes[i].Full
		}
		step, code, why := e.Reached(hyp)
		fmt.Printf("%-40s %-9s %-7s %s %v\n", name, step, code, why, tab.Unsure[h])
		if os.Getenv("V") == "" {
			continue
		}
		for i := range m.Checks {
			o := tab.Prediction(i, h)
			c := &m.Checks[i]
			s := fmt.Sprintf("%.4g±%.2g %s %s", o.Value, o.Half, c.Unit, o.State)
			if o.Option >= 0 {
				s = c.Options[o.Option].ID
			}
			fmt.Printf("   %s=%s;", c.ID, s)
		}
		fmt.Println()
	}
	t0 = time.Now()
	hyps := append(e.Singles(), e.Pairs()...)
	tab = e.Table(hyps)
	n := 0
	for c := range tab.Outcome {
		n = max(n, len(tab.Outcome[c]))
	}
	fmt.Println("all", len(hyps), time.Since(t0), "max classes", n)
}
