package job_test

import (
	"testing"
	"time"

	"readback/core/job"
	"readback/core/lab/metric"
	"readback/core/worksite"
	"readback/flows"
)

// The dialogue of every built-in equipment file keeps the laws in every situation that can be told apart.
func TestDialogueProof(t *testing.T) {
	models, err := flows.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	lex, words := language(t)
	for _, m := range append(models, smallModel) {
		if testing.Short() && len(m.Checks) > 100 {
			continue // minutes: make prove walks it
		}
		at := time.Now()
		rep, err := job.Prove(m, *lex, words)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range rep.Broken {
			t.Errorf("%s: %s", m.ID, c)
		}
		t.Logf("%s: %d situations, %d events, %.1f s", m.ID, rep.Situations, rep.Events, time.Since(at).Seconds())
	}
}

// A prover that finds nothing in a broken machine proves nothing.
func TestDialogueMutants(t *testing.T) {
	lex, words := language(t)
	for _, name := range job.Mistakes() {
		t.Run(name, func(t *testing.T) {
			rep, err := job.ProveMistaken(name, smallModel, *lex, words)
			if err != nil {
				t.Fatal(err)
			}
			if len(rep.Broken) == 0 {
				t.Fatal("not found")
			}
			t.Log(rep.Broken[0])
		})
	}
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		models, err := flows.Builtin()
		if err != nil {
			t.Fatal(err)
		}
		lex, words := language(t)
		worst := 0.0
		for _, m := range models {
			at := time.Now()
			rules, err := worksite.New(m)
			if err != nil {
				t.Fatal(err)
			}
			if site := rules.Prove(rules); len(site.Broken) > 0 {
				t.Fatal(site.Broken)
			}
			rep, err := job.Prove(m, *lex, words)
			if err != nil || len(rep.Broken) > 0 {
				t.Fatal(err, rep.Broken)
			}
			worst = max(worst, time.Since(at).Seconds())
		}
		add("prove.seconds_worst", worst, "s", "<= 10", len(models))
		found := 0
		for _, name := range job.Mistakes() {
			if rep, err := job.ProveMistaken(name, smallModel, *lex, words); err == nil && len(rep.Broken) > 0 {
				found++
			}
		}
		add("prove.dialogue_mutants_caught_pct", 100*float64(found)/float64(len(job.Mistakes())), "%", ">= 100", len(job.Mistakes()))
	})
}
