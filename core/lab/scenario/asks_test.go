package scenario_test

import (
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/lab/metric"
	"readback/core/lab/scenario"
	"readback/core/protocol"
)

// asked is how much of a person a job takes.
type asked struct {
	verdict int // answers until the case is closed or the work ends at a stop line
	fix     int // answers until the first step of the repair that ends the fault is asked for, 0 for never
	opened  int // times a cover is taken off
	covers  int // covers taken off, each once
	off     int // times the power is switched off
	absurd  []string
}

// absurd lists what nobody asks any more who has heard an answer: from what the words mean, not from the equipment file's own
// preconditions. A check stands for the question, an answer for itself.
var absurd = map[string][]string{
	"stat-screen=blank":      {"stat-mode-set", "stat-setpoint", "stat-schedule", "stat-raise", "stat-room", "stat-type"},
	"see-fan=silent":         {"fan-amps", "see-flame", "see-hold", "see-colour", "see-move", "see-burners", "see-limit"},
	"see-glow=no-glow":       {"see-glow-hold", "board-load"},
	"see-flame=no-flame":     {"see-burners", "see-hold", "see-colour", "see-move", "see-limit", "flame-ua", "dial-time"},
	"see-burners=no-flame":   {"see-flame", "see-hold", "see-colour", "see-move", "see-limit", "flame-ua", "dial-time"},
	"see-hold=short-flame":   {"see-colour", "see-move", "see-limit", "feel-warm"},
	"see-hold=no-flame":      {"see-flame", "see-burners", "see-colour", "see-move", "see-limit", "flame-ua"},
	"see-blower=silent":      {"feel-air", "feel-warm", "see-move"},
	"house-power=off":        {"light", "label", "switch-look", "see-fan", "see-glow", "see-flame"},
	"switch-look=off":        {"see-fan", "see-glow", "see-flame", "see-blower", "feel-air"},
	"pilot-lit=out":          {"pilot-shape"}, // the others once it was lit again
	"pilot-lights=no-flame":  {"pilot-shape", "pilot-stays", "burner-lights", "keeps-burning", "pile-open", "couple-open", "couple-closed"},
	"pilot-stays=out":        {"burner-lights", "keeps-burning", "valve-click"},
	"burner-lights=no-flame": {"keeps-burning"},
	"meter.kind=no-meter":    {"meter.category", "meter.leads", "meter.short"},
}

// count reads from a run what it took. A change of the work place lets everything be asked anew: a repair, and the supply switched on or
// off, so that what was dead may run.
func count(b *bench, r *scenario.Run, repair string) (a asked) {
	seen := map[string]bool{} // covers
	barred := map[string]string{}
	closed, before, n := false, "", 0
	for _, x := range r.Exchanges {
		if x.Step == "" || x.Step == "relight" && before == x.Step { // a wait takes one answer, however often it is asked whether it is over
			continue
		}
		before = x.Step
		n++
		if !closed {
			a.verdict++
		}
		if why := barred[x.Step]; why != "" {
			a.absurd = append(a.absurd, x.Step+" after "+why)
		}
		switch id := x.Step; {
		case strings.HasPrefix(id, "act.open-cover."):
			a.opened++
			if !seen[id] {
				seen[id], a.covers = true, a.covers+1
			}
		case id == "act.power-off":
			a.off++
		case slices.ContainsFunc(b.model.Repairs, func(r appliance.Repair) bool { return strings.HasPrefix(id, r.ID+".") }):
			clear(barred)
		}
		if said := x.Event.Said; said != nil && len(said.Meanings) > 0 {
			m := said.Meanings[0]
			for _, check := range absurd[x.Step+"="+firstOf(m.ID, m.Text)] {
				barred[check] = x.Step + "=" + m.ID
			}
		}
		if !closed {
			closed = x.View.StageNo >= 10 || x.View.State == "ended"
		}
		if a.fix == 0 && x.View.Step.ID == repair+".1" {
			a.fix = n
		}
	}
	return a
}

func firstOf(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// tapped leads a job with somebody who never errs and answers by touch, so that nothing is asked twice because of the ear.
func (w *world) tapped(t testing.TB, b *bench, mode int) *scenario.Run {
	t.Helper()
	p := &scenario.Person{Model: b.model, See: scenario.EngineSight(b.engine), Modes: []int{mode}, Source: "touch"}
	run, err := scenario.Lead(w.machine(t, b), p, protocol.Begin{Job: "test", Appliance: b.model.ID, Lang: "en"}, nil)
	if err != nil {
		t.Fatalf("%s: %v", b.model.Modes[mode].Full, err)
	}
	return run
}

// TestAskFigures counts what a faultless person is asked, for every single fault of both files.
func TestAskFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		w := get(t)
		verbose := os.Getenv("ASKS") != "" // a number above 1: every so many faults only, to try something out
		step, _ := strconv.Atoi(os.Getenv("ASKS"))
		var n, verdict, opened, covers, off, odd float64
		for _, id := range w.ids {
			b := w.benches[id]
			sum, jobs := 0.0, 0
			for i := range b.model.Modes {
				if step > 1 && i%step != 0 {
					continue
				}
				full, repair := b.model.Modes[i].Full, b.model.Repairs[b.model.Modes[i].Repair].ID
				run := w.tapped(t, b, i)
				a := count(b, run, repair)
				n++
				jobs++
				sum += float64(a.verdict)
				verdict += float64(a.verdict)
				opened += float64(a.opened)
				covers += float64(a.covers)
				off += float64(a.off)
				odd += float64(len(a.absurd))
				if verbose {
					t.Logf("%-11s %-34s verdict %3d fix %3d covers %d/%d off %d %s %v named=%v", id, full, a.verdict, a.fix, a.opened, a.covers, a.off, run.Result.Outcome, a.absurd, nameIt(b.model, run, i))
				}
				switch full {
				case "batteries.dead", "filter.packed", "furnace-switch.off":
					name := map[string]string{"batteries.dead": "battery", "filter.packed": "filter", "furnace-switch.off": "switch"}[full]
					add("ask.until_fix_"+name, float64(a.fix), "answers", "<= 12", 1)
				case "igniter.open", "flame-rod.dirty":
					name := map[string]string{"igniter.open": "igniter", "flame-rod.dirty": "rod"}[full]
					add("ask.until_verdict_"+name, float64(a.verdict), "answers", "<= 25", 1)
				}
			}
			add("ask.until_verdict_mean_"+b.model.ID, sum/float64(jobs), "answers", "<= 25", jobs)
		}
		add("ask.until_verdict_mean", verdict/n, "answers", "<= 25", int(n))
		add("ask.covers_mean", opened/max(covers, 1), "openings per cover", "<= 1.3", int(n))
		add("ask.power_cycles_mean", off/n, "times off", "<= 2", int(n))
		add("ask.absurd", odd, "questions", "<= 0", int(n))
	})
}

// TestAsked prints what is asked in one job: ASKED names its fault, part.mode.
func TestAsked(t *testing.T) {
	full := os.Getenv("ASKED")
	if full == "" {
		t.Skip("ASKED names no fault")
	}
	w := get(t)
	for _, id := range w.ids {
		b := w.benches[id]
		i := slices.IndexFunc(b.model.Modes, func(m appliance.Mode) bool { return m.Full == full })
		if i < 0 {
			continue
		}
		run := w.tapped(t, b, i)
		for k, x := range run.Exchanges {
			lead := ""
			if len(x.View.Suspects) > 0 {
				lead = x.View.Suspects[0].Part + " " + x.View.Suspects[0].Words
			}
			said := ""
			if x.Event.Said != nil {
				said = x.Event.Said.Text
			}
			t.Logf("%3d %2d %-28s %-16s %s", k, x.View.StageNo, x.Step, said, lead)
		}
		t.Logf("%+v", run.Result)
	}
}
