package advise

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/measure"
	"readback/core/plan"
	"readback/core/protocol"
	"readback/core/unit"
	files "readback/flows/lab/workspace"
	"readback/flows/prompts"
)

// told are findings in the order of pairs of check and answer: an option, or millivolts d.c.
func told(t *testing.T, m *appliance.Model, pairs ...string) (out []job.Finding) {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		f := job.Finding{Check: check(t, m, pairs[i]), Option: -1}
		k := &m.Checks[f.Check]
		if f.Option = slices.IndexFunc(k.Options, func(o appliance.Option) bool { return o.ID == pairs[i+1] }); f.Option < 0 {
			f.Reading = &measure.Reading{Value: mv(pairs[i+1]), AC: "dc"}
		}
		out = append(out, f)
	}
	return out
}

var everywhere = []string{"light", "free", "watch", "meter", "plan", "proof"}

// furnace is an adviser over the large file.
func furnace(t *testing.T) *Planned {
	t.Helper()
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	a, err := ForCase(files.Large(t).Case, w, plan.House{Call: math.NaN()})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// What is seen to be wrong on the thing itself, and is put right with hands alone, is put right before anything else is asked.
func TestSeenIsMended(t *testing.T) {
	a := furnace(t)
	for _, x := range []struct{ label, check, seen, repair string }{
		{"says-pressure-open", "fan-drain-look", "blocked", "clear-inducer-drain"},
	} {
		d := a.Advise(job.Query{Findings: told(t, a.base.Model, "label", x.label, x.check, x.seen), Stages: everywhere})
		if !d.Verdict || d.Repair < 0 || a.base.Model.Repairs[d.Repair].ID != x.repair {
			t.Errorf("%s is seen %s: check %d, verdict %v, repair %d", x.check, x.seen, d.Check, d.Verdict, d.Repair)
		}
	}
}

// A thermopile that gives nothing at all, twice, with everything else good, is the suspect, though the file has no mode
// that gives nothing.
func TestDeadPart(t *testing.T) {
	a := adviser(t)
	d := a.Advise(job.Query{Stages: everywhere, Findings: told(t, a.base.Model,
		"setting", "above", "pilot-lit", "lit", "burner-lights", "no-flame", "pilot-shape", "blue-flame", "probes-seen", "both",
		"stat-and-wire", "0.0", "pile-closed", "0.0", "limit-mv", "0.0", "couple-closed", "12.9", "pile-open", "0.0", "pile-open", "0.0")})
	if d.Suspects[0].Part != "thermopile" || d.Suspects[0].P < 0.75 {
		t.Errorf("%+v", d.Suspects)
	}
}

// Nothing wrong is not said before everything was looked at that leaves the heat on and can be seen from outside.
func TestLooksBeforeNothing(t *testing.T) {
	a := adviser(t)
	m := a.base.Model
	q := job.Query{Stages: everywhere}
	asked := map[string]bool{}
	for range 40 {
		d := a.Advise(q)
		if d.Verdict || d.Check < 0 {
			break
		}
		asked[m.Checks[d.Check].ID] = true
		o := a.c.Engine.Predict(nil, d.Check)
		f := job.Finding{Check: d.Check, Option: o.Option}
		if o.Option < 0 {
			f.Reading = &measure.Reading{State: o.State}
			if o.State == measure.Number {
				f.Reading.Value = unit.Of(strconv.FormatFloat(o.Value, 'f', 1, 64), m.Checks[d.Check].Unit)
			}
		}
		q.Findings = append(q.Findings, f)
	}
	if d := a.Advise(q); !d.Verdict || d.Repair >= 0 && m.Repairs[d.Repair].Kind != "set" {
		t.Errorf("a good heater: check %d, repair %d, verdict %v", d.Check, d.Repair, d.Verdict)
	}
	for _, id := range []string{"air-openings", "keeps-burning", "pilot-shape"} {
		if !asked[id] {
			t.Errorf("%s was not looked at: %v", id, asked)
		}
	}
}

// A motor that stands still is not named before the capacitor that it needs was weighed, though its supply was there.
func TestMotorNeedsCapacitor(t *testing.T) {
	c := files.Large(t).Case
	task, err := plan.ForAppliance(c, plan.House{Call: math.NaN()})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, p := range task.Proofs {
		if p.Kind != "need" {
			continue
		}
		md := &c.Model.Modes[p.Mode]
		if c.Model.Parts[md.Part].Kind != "load" || md.Does == "open" {
			t.Errorf("%s needs %v", md.Full, p.Slots)
		}
		for _, s := range p.Any {
			if c.Model.Checks[s.Check].Function == measure.Capacitance {
				n++
			}
		}
	}
	if n < 2 {
		t.Errorf("%d motor faults ask for a capacitor to be weighed", n)
	}
}

// A fuse that is measured blown stays a suspect as sure as the reading, whatever blew it.
func TestFuseStaysBlown(t *testing.T) {
	a := furnace(t)
	c := a.base
	reading := func(id, value, unitID string) job.Finding {
		return job.Finding{Check: check(t, c.Model, id), Option: -1, Reading: &measure.Reading{Value: unit.Of(value, unitID)}}
	}
	d := a.Advise(job.Query{Stages: everywhere, Findings: []job.Finding{reading("fuse-v", "26.3", "V"), reading("cable-short", "0.5", "ohm")}})
	i := slices.IndexFunc(d.Suspects, func(x protocol.Suspect) bool { return x.Part == "board-fuse" || x.Part == "fuse" })
	if i < 0 || d.Suspects[i].P < 0.6 {
		t.Errorf("%+v", d.Suspects)
	}
}
