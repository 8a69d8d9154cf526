package job_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"readback/core/advise"
	"readback/core/appliance"
	"readback/core/job"
	"readback/core/lab/scenario"
	"readback/core/plan"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/worksite"
	"readback/flows/lab/workspace"
)

func furnaceMachine(t testing.TB) (*job.Machine, *appliance.Engine) {
	t.Helper()
	b := workspace.Large(t)
	c, e := b.Case, b.Engine
	lex, w := language(t)
	adv, err := advise.ForCase(c, w, plan.House{Call: math.NaN()})
	if err != nil {
		t.Fatal(err)
	}
	m, err := job.New(c.Model, adv, *lex, w, job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return m, e
}

// played leads one job with these modes present.
func played(t testing.TB, modes []int, habits scenario.Habits, chance scenario.Chance) (*scenario.Run, *job.Machine, *scenario.Person) {
	t.Helper()
	m, e := furnaceMachine(t)
	p := &scenario.Person{Model: e.Model(), See: func(modes []int, check int) scenario.Seen {
		o := e.Predict(modes, check)
		return scenario.Seen{Option: o.Option, Value: o.Value, State: o.State}
	}, Modes: modes, Habits: habits, Chance: chance}
	run, err := scenario.Lead(m, p, protocol.Begin{Job: "j", Appliance: e.Model().ID, Lang: "en"}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return run, m, p
}

// Every single fault of the furnace, answered truly, leads to its repair or to an honest stop, and the place is left in order.
func TestFurnaceSingles(t *testing.T) {
	e := workspace.Large(t).Engine
	model := e.Model()
	step := 6
	if testing.Short() {
		step = 24
	}
	ends := map[string]int{}
	n, checks := 0, 0
	for mode := 0; mode < len(model.Modes); mode += step {
		run, m, p := played(t, []int{mode}, scenario.Habits{}, nil)
		n++
		checks += run.Result.Checks
		ends[run.Result.Outcome]++
		want := model.Repairs[model.Modes[mode].Repair].ID
		t.Logf("%-32s -> %-16s %-24s want %-24s checks %d answers %d", model.Modes[mode].Full, run.Result.Outcome, run.Result.Repair, want, run.Result.Checks, len(run.Exchanges))
		if !run.Ended {
			t.Errorf("%s: no end; at %q", model.Modes[mode].Full, m.View().Step.ID)
			continue
		}
		if !m.Site().Left() {
			t.Errorf("%s: left as %+v, outcome %s", model.Modes[mode].Full, m.Site(), run.Result.Outcome)
		}
		_ = p
	}
	t.Log(n, "jobs,", float64(checks)/float64(n), "checks each,", ends)
}

// Whims at the real furnace: whatever is said, nothing unsafe is asked, nothing panics, and there is an end in order.
func TestFurnaceWhims(t *testing.T) {
	walks := 6
	if testing.Short() {
		walks = 1
	}
	ends := map[string]int{}
	for seed := range walks {
		r := rand.New(rand.NewPCG(uint64(seed), 11))
		m, e := furnaceMachine(t)
		model := e.Model()
		rules, err := worksite.New(model)
		if err != nil {
			t.Fatal(err)
		}
		d := drive(t, m)
		answer := func() *utterance.Utterance {
			v := m.View()
			for i := range model.Checks {
				c := &model.Checks[i]
				if c.ID != v.Step.ID {
					continue
				}
				if c.Stage != "safety" {
					if ok, why := rules.Allowed(m.Site(), i); !ok {
						t.Fatalf("seed %d: %s is asked though %s", seed, c.ID, why)
					}
				}
				if len(v.Step.Keypad) > 0 && v.Step.Part != "A" {
					return reading([]string{"0.0", "24.6", "119", "3.1", "52"}[r.IntN(5)], v.Step.Keypad[0])
				}
				if c.Stage != "safety" && len(c.Options) > 0 {
					return choice(c.Options[r.IntN(len(c.Options))].ID)
				}
			}
			return helpful(v, true)
		}
		for i := 0; i < 150 && !m.Ended(); i++ {
			if r.IntN(8) == 0 {
				d.step(whim(r, m.View(), 0))
				continue
			}
			d.say(answer())
		}
		for i := 0; !m.Ended(); i++ {
			if i > 150 {
				t.Fatalf("seed %d: no end; at %q of %+v", seed, m.View().Step.ID, m.Site())
			}
			if i == 0 && m.View().State != "emergency" {
				d.say(command("finish"))
				continue
			}
			d.say(answer())
		}
		out := m.View().Ended
		ends[out]++
		if out != "left-open" && out != "emergency" && !m.Site().Left() {
			t.Fatalf("seed %d: ended %q as %+v", seed, out, m.Site())
		}
	}
	t.Log(ends)
}
