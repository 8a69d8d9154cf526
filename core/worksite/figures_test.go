package worksite_test

import (
	"testing"
	"time"

	"readback/core/lab/metric"
	"readback/flows"
)

// Every built-in equipment file: no law is broken in any situation its steps can lead to.
func TestEquipmentFiles(t *testing.T) {
	models, err := flows.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range models {
		r := rules(t, m)
		rep := r.Prove(r)
		for _, c := range rep.Broken {
			t.Errorf("%s: %s", m.ID, c)
		}
		t.Logf("%s: %d situations, %d steps, at most %d acts on any way", m.ID, rep.States, rep.Steps, rep.Longest)
	}
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		models, err := flows.Builtin()
		if err != nil {
			t.Fatal(err)
		}
		worst := 0.0
		for _, m := range models {
			r := rules(t, m)
			begin := time.Now()
			if rep := r.Prove(r); len(rep.Broken) > 0 {
				t.Fatal(rep.Broken[0])
			}
			worst = max(worst, time.Since(begin).Seconds())
		}
		add("prove.seconds_worst", worst, "s", "<= 1", len(models))
		r := rules(t, little())
		found := 0
		for _, mu := range mutants {
			if len(r.Prove(mutant{r, mu.next, mu.apply}).Broken) > 0 {
				found++
			}
		}
		add("prove.mutants_caught_pct", 100*float64(found)/float64(len(mutants)), "%", ">= 100", len(mutants))
	})
}
