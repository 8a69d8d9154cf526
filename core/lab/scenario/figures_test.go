package scenario_test

import (
	"math"
	"slices"
	"testing"

	"readback/core/appliance"
	"readback/core/lab/metric"
	"readback/core/lab/scenario"
	"readback/core/protocol"
)

// TestFigures plays every fault scenario and every single mode of every file as a whole job.
func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		w := get(t)
		right, all := 0, 0
		for name, d := range scenarios(t) {
			all++
			if _, err := w.play(t, d); err != nil {
				t.Logf("%s: %v", name, err)
				continue
			}
			right++
		}
		add("job.scenarios_right_pct", 100*float64(right)/float64(all), "%", ">= 100", all)

		checks, jobs, named, steps, stepJobs := 0, 0, 0, 0, 0
		for _, id := range w.ids {
			b := w.benches[id]
			for i := range b.model.Modes {
				run := w.single(t, b, i, scenario.Habits{}, nil)
				jobs++
				if id == "furnace-hsi" {
					checks += run.Checks
					steps += bySequence(b, i)
					stepJobs++
				}
				if nameIt(b.model, run, i) {
					named++
				} else {
					t.Logf("%s: %+v", b.model.Modes[i].Full, run.Result)
				}
			}
		}
		mean := float64(checks) / float64(stepJobs)
		add("job.checks_mean", mean, "checks", "<= 25", stepJobs)
		add("job.checks_ratio", mean/(float64(steps)/float64(stepJobs)), "x", "<= 0.6", stepJobs)
		add("job.singles_right_pct", 100*float64(named)/float64(jobs), "%", "reported", jobs)

		// Putting a setting right, or a handle, a switch or a register where it belongs, names no part: only what is replaced, cleaned, tightened or refitted counts.
		wrong, n := 0, 0
		for _, id := range w.ids {
			b := w.benches[id]
			for i := range b.model.Modes {
				for seed := range uint64(3) {
					run := w.single(t, b, i, scenario.Habits{Misreads: 0.03, LeadSlips: 0.02, Noise: 0.01}, scenario.NewChance(uint64(i)*3+seed+7))
					n++
					if first := namedFirst(b.model, run.Result.Mended); first >= 0 && first != b.model.Modes[i].Repair && b.model.Repairs[first].Part != b.model.Modes[i].Part {
						wrong++
						t.Logf("%s: mended %v", b.model.Modes[i].Full, run.Result.Mended)
					}
				}
			}
		}
		add("verdict.wrong_part_pct", 100*float64(wrong)/float64(n), "%", "<= 1", n)
	})
}

func (w *world) single(t testing.TB, b *bench, mode int, h scenario.Habits, c scenario.Chance) *scenario.Run {
	t.Helper()
	p := &scenario.Person{Model: b.model, See: scenario.EngineSight(b.engine), Modes: []int{mode}, Habits: h, Chance: c}
	run, err := scenario.Lead(w.machine(t, b), p, protocol.Begin{Job: "test", Appliance: b.model.ID, Lang: "en"}, nil)
	if err != nil {
		t.Fatalf("%s: %v", b.model.Modes[mode].Full, err)
	}
	return run
}

// namedFirst is the first repair carried out that names a part, -1 for none.
func namedFirst(m *appliance.Model, mended []string) int {
	for _, id := range mended {
		i := slices.IndexFunc(m.Repairs, func(r appliance.Repair) bool { return r.ID == id })
		if k := m.Repairs[i].Kind; k != "set" && k != "open" {
			return i
		}
	}
	return -1
}

// nameIt tells whether a job ended in the repair of its mode, or at the stop line that belongs to it.
func nameIt(m *appliance.Model, r *scenario.Run, mode int) bool {
	want := &m.Repairs[m.Modes[mode].Repair]
	if r.Result.Repair == want.ID || slices.Contains(r.Result.Mended, want.ID) {
		return true
	}
	stop := want.Stop
	if stop < 0 && want.Part >= 0 {
		stop = m.Parts[want.Part].Stop
	}
	return stop >= 0 && r.Result.Stop == m.Stops[stop].ID
}

// bySequence is how many checks it takes to follow the file from its first check to the first that shows this fault and no
// further: every look and measurement in the order in which the file lists them, which is the sequence of operation.
func bySequence(b *bench, mode int) int {
	n := 0
	for i := range b.model.Checks {
		c := &b.model.Checks[i]
		switch c.Stage {
		case "light", "free", "watch", "meter", "plan":
		default:
			continue
		}
		n++
		bad, good := b.engine.Predict([]int{mode}, i), b.engine.Predict(nil, i)
		if c.Part == b.model.Modes[mode].Part && (bad.Option != good.Option || bad.State != good.State || math.Abs(bad.Value-good.Value) > 3*(good.Half+bad.Half)+1e-9) {
			break
		}
	}
	return n
}
