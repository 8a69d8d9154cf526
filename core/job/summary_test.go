package job_test

import (
	"slices"
	"strings"
	"testing"

	"readback/core/lab/scenario"
	"readback/core/protocol"
)

// A job that waits for its part ends with what to buy, and goes on at the match of the new part, after the power is proved off again. Its
// verdict and its end are told on one page.
func TestPartAwaitedGoesOn(t *testing.T) {
	m, e := furnaceMachine(t)
	model := e.Model()
	mode := -1
	for i := range model.Modes {
		if model.Modes[i].Full == "igniter.open" {
			mode = i
		}
	}
	p := &scenario.Person{Model: model, See: scenario.EngineSight(e), Modes: []int{mode}, Says: map[string][]string{"match": {"not-yet", ""}}}
	begin := protocol.Begin{Job: "j", Appliance: model.ID, Lang: "en"}
	run, err := scenario.Lead(m, p, begin, nil)
	if err != nil {
		t.Fatal(err)
	}
	decide := slices.IndexFunc(run.Exchanges, func(x scenario.Exchange) bool { return x.View.Step.ID == "decide" })
	if decide < 0 {
		t.Fatal("the decision was never asked")
	}
	v := run.Exchanges[decide].View.Summary
	if v == nil || !strings.Contains(strings.ToLower(v.Title), "igniter") || len(v.Rows) < 3 || v.Rows[0].Label != "Proof" {
		t.Fatalf("no verdict with its proof at the decision: %+v", v)
	}
	end := m.View()
	if run.Result.Outcome != "part-awaited" || end.Summary == nil || len(end.Summary.Rows) < 3 {
		t.Fatalf("outcome %s, summary %+v", run.Result.Outcome, end.Summary)
	}

	at := int64(1_900_000_000_000) // a day when the part is there
	step := func(ev protocol.Event) {
		t.Helper()
		if at += 6000; ev.At == 0 {
			ev.At = at
		}
		if _, err := m.Step(ev); err != nil {
			t.Fatal(err)
		}
	}
	step(protocol.Event{Type: protocol.EvResume})
	asked, proved := []string{}, false
	for range 120 {
		v := m.View()
		if v.State == "ended" {
			break
		}
		asked = append(asked, v.Step.ID)
		if strings.HasPrefix(v.Step.ID, "replace-igniter.") && v.Site.Power != "proved" {
			t.Fatalf("%s is asked with the power %s", v.Step.ID, v.Site.Power)
		}
		proved = proved || v.Step.ID == "act.prove-again"
		u, err := p.Reply(v)
		if err != nil {
			t.Fatal(err)
		}
		step(protocol.Event{Type: protocol.EvSaid, Said: &u})
	}
	if m.View().Ended != "fixed" || !slices.Contains(asked, "match") || !proved || slices.Contains(asked, "story-what") {
		t.Errorf("it ended %q after %v", m.View().Ended, asked)
	}
	if s := m.View().Summary; s == nil || s.Rows[0].Text == "" {
		t.Errorf("no account at the end: %+v", s)
	}
}
