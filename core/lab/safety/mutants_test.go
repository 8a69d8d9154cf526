package safety_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/lab/metric"
	"readback/core/lab/safety"
	"readback/core/measure"
	"readback/core/worksite"
)

// mutant is an equipment file, or the spoken words, with one mistake put in.
type mutant struct {
	class, name string
	model       *appliance.Model
	words       *job.Words
}

// twin copies all of a model that a mistake may change.
func twin(m *appliance.Model) *appliance.Model {
	c := *m
	c.Places, c.Parts, c.Checks, c.Repairs = slices.Clone(m.Places), slices.Clone(m.Parts), slices.Clone(m.Checks), slices.Clone(m.Repairs)
	c.Stops, c.Cautions, c.Dead = slices.Clone(m.Stops), slices.Clone(m.Cautions), slices.Clone(m.Dead)
	for i := range c.Places {
		c.Places[i].Hazards, c.Places[i].Trips = slices.Clone(m.Places[i].Hazards), slices.Clone(m.Places[i].Trips)
	}
	for i := range c.Checks {
		x := &c.Checks[i]
		x.Options, x.Bands, x.Lift = slices.Clone(x.Options), slices.Clone(x.Bands), slices.Clone(x.Lift)
	}
	for i := range c.Repairs {
		x := &c.Repairs[i]
		x.Steps, x.Causes = slices.Clone(x.Steps), slices.Clone(x.Causes)
	}
	for i := range c.Cautions {
		c.Cautions[i].Say = slices.Clone(c.Cautions[i].Say)
	}
	return &c
}

func drop(list []string, x string) []string {
	return slices.DeleteFunc(slices.Clone(list), func(s string) bool { return s == x })
}

// fileMutants seeds every mistake of every class at every place of a file where it can be made.
func fileMutants(m *appliance.Model) (out []mutant) {
	add := func(class, at string, change func(m *appliance.Model)) {
		c := twin(m)
		change(c)
		out = append(out, mutant{class: class, name: m.ID + " " + at, model: c})
	}
	for i := range m.Checks {
		c := &m.Checks[i]
		for k := range c.Options {
			o := &c.Options[k]
			if o.Stop >= 0 {
				add("a stop is taken from an answer", c.ID+"."+o.ID, func(m *appliance.Model) { m.Checks[i].Options[k].Stop = -1 })
			}
			if o.Emergency != "" {
				add("an emergency is taken from an answer", c.ID+"."+o.ID, func(m *appliance.Model) { m.Checks[i].Options[k].Emergency = "" })
			}
			if o.NoLive {
				add("live work goes on over a wet floor", c.ID, func(m *appliance.Model) { m.Checks[i].Options[k].NoLive = false })
			}
			if c.Stage == "safety" && o.Tell != "" {
				add("what an answer tells is not told", c.ID+"."+o.ID, func(m *appliance.Model) { m.Checks[i].Options[k].Tell = "" })
			}
		}
		switch c.Hazard {
		case "mains", "capacitor":
			add("a hazard is dropped from a check", c.ID, func(m *appliance.Model) { m.Checks[i].Hazard = "none" })
			add("house voltage is called low voltage", c.ID, func(m *appliance.Model) { m.Checks[i].Hazard = "low" })
		}
		if c.Caution != "" && c.Hazard != "none" && c.Hazard != "low" && c.Hazard != "" && c.ID != "stat-alone" {
			add("a caution says nothing of the hazard", c.ID, func(m *appliance.Model) { m.Checks[i].Caution = "Take your time." })
		}
		drives := c.Function == measure.Ohms || c.Function == measure.Continuity || c.Function == measure.Capacitance
		if drives && i%3 == 0 {
			add("power off becomes any", c.ID, func(m *appliance.Model) { m.Checks[i].Power = "any" })
			add("power off becomes on", c.ID, func(m *appliance.Model) { m.Checks[i].Power = "on" })
			if m.Mains && len(c.Lift) > 0 && c.Function == measure.Ohms {
				add("hands inside are not told of", c.ID, func(m *appliance.Model) { m.Checks[i].HandsIn = false })
			}
		}
		if c.Function == measure.Look && c.HandsIn && i%4 == 0 {
			add("a look with hands inside is made live", c.ID, func(m *appliance.Model) { m.Checks[i].Power = "on" })
		}
		if m.Mains && c.Function == measure.Look && c.HandsIn && i%4 == 0 {
			add("a look with hands inside is made with any power", c.ID, func(m *appliance.Model) { m.Checks[i].Power, m.Checks[i].HandsIn = "any", false })
		}
		if c.Licensed {
			add("licensed work is open to everybody", c.ID, func(m *appliance.Model) { m.Checks[i].Licensed = false })
		}
		if c.Fit != "" {
			add("a gauge is fitted live", c.ID, func(m *appliance.Model) { m.Checks[i].Fit = "" })
		}
		if c.Must {
			add("a gate is opened", c.ID, func(m *appliance.Model) { m.Checks[i].Must = false })
		}
		for k := range c.Bands {
			if c.Unit == "ppm" && strings.Contains(c.ID, "room") {
				add("a band of carbon monoxide is taken away", fmt.Sprint(c.ID, k), func(m *appliance.Model) { m.Checks[i].Bands = slices.Delete(m.Checks[i].Bands, k, k+1) })
				add("a band of carbon monoxide has no consequence", fmt.Sprint(c.ID, k), func(m *appliance.Model) {
					b := &m.Checks[i].Bands[k]
					b.Stop, b.Emergency, b.Tell = -1, "", ""
				})
			}
		}
		if c.Instead >= 0 && c.Hazard == "mains" && c.Power == "on" && i%2 == 0 {
			add("live work has no other way", c.ID, func(m *appliance.Model) { m.Checks[i].Instead = -1 })
		}
		if c.Stage == "restart" {
			gone := m.Mains || c.Function == measure.Look && slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return o.Stop >= 0 })
			if gone {
				add("a check of the restart is left out", c.ID, func(m *appliance.Model) { m.Checks[i].Stage = "plan" })
			}
			if len(c.Options) > 1 {
				add("the good answer of a gate is another", c.ID, func(m *appliance.Model) { slices.Reverse(m.Checks[i].Options) })
			}
			if c.Limit != nil && m.Mains {
				add("a gate has no limit", c.ID, func(m *appliance.Model) { m.Checks[i].Limit = nil })
			}
		}
		if c.Stage == "safety" && slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return o.Emergency != "" || o.Stop >= 0 || o.NoLive }) {
			add("a safety question is asked later", c.ID, func(m *appliance.Model) { m.Checks[i].Stage = "story" })
		}
	}
	for i := range m.Places {
		p := &m.Places[i]
		if m.Mains && p.Cover && slices.Contains(p.Hazards, "mains") {
			add("a place does not tell of house voltage", p.ID, func(m *appliance.Model) { m.Places[i].Hazards = drop(p.Hazards, "mains") })
		}
		if p.Cover && slices.Contains(p.Hazards, "capacitor") {
			add("a place does not tell of its capacitor", p.ID, func(m *appliance.Model) { m.Places[i].Hazards = drop(p.Hazards, "capacitor") })
		}
		if len(p.Trips) > 0 {
			add("a door switch is not known of", p.ID, func(m *appliance.Model) { m.Places[i].Trips = nil })
		}
	}
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Safety && p.Kind == "contact" {
			add("a safety part counts as none", p.ID, func(m *appliance.Model) { m.Parts[i].Safety = false })
		}
	}
	for i := range m.Cautions {
		for k := range m.Cautions[i].Say {
			add("a form of a caution drops the hazard", fmt.Sprint(m.Cautions[i].Hazard, k), func(m *appliance.Model) { m.Cautions[i].Say[k] = "Take your time here." })
		}
		if h := m.Cautions[i].Hazard; h == "mains" || h == "gas" {
			add("a caution is milder than its hazard", h, func(m *appliance.Model) { m.Cautions[i].Level = "caution" })
		}
	}
	for i := range m.Stops {
		s := &m.Stops[i]
		add("a stop line lets it run", s.ID, func(m *appliance.Model) { m.Stops[i].Now = "Let it run and watch." })
		add("a stop line names nobody to call", s.ID, func(m *appliance.Model) { m.Stops[i].Call = "" })
	}
	for i := range m.Repairs {
		r := &m.Repairs[i]
		if r.Kind == "call" && (r.Part < 0 || m.Parts[r.Part].Stop < 0) {
			add("a repair crosses a stop line", r.ID, func(m *appliance.Model) { m.Repairs[i].Stop = -1 })
		}
		for k := range r.Steps {
			s := &r.Steps[k]
			inside := slices.ContainsFunc(s.Places, func(p int) bool { return m.Places[p].Cover && m.Places[p].HandsIn })
			if (s.Wire >= 0 || inside) && s.Power == "off" && (i+k)%6 == 0 {
				add("a step of a repair is made live", fmt.Sprint(r.ID, ".", k+1), func(m *appliance.Model) { m.Repairs[i].Steps[k].Power = "on" })
			}
			if strings.Contains(strings.ToLower(s.Caution), "bigger") {
				add("a bigger fuse", r.ID, func(m *appliance.Model) {
					m.Repairs[i].Steps[k].Act, m.Repairs[i].Steps[k].Caution = "Push in a bigger fuse.", ""
				})
				add("no word of the size of a fuse", r.ID, func(m *appliance.Model) { m.Repairs[i].Steps[k].Caution = "" })
			}
			if strings.Contains(s.Act, "Once only") {
				add("a breaker is reset again and again", r.ID, func(m *appliance.Model) { m.Repairs[i].Steps[k].Act = "Push the lever off, then on, until it holds." })
			}
			if strings.Contains(s.Act, "resistor") {
				add("a capacitor is not discharged", r.ID, func(m *appliance.Model) { m.Repairs[i].Steps = slices.Delete(m.Repairs[i].Steps, k, k+1) })
			}
		}
		if r.Part >= 0 && m.Parts[r.Part].Safety && r.Kind == "replace" && r.Stop < 0 && m.Parts[r.Part].Stop < 0 && len(r.Causes) > 0 {
			add("a safety part is replaced without its cause", r.ID, func(m *appliance.Model) { m.Repairs[i].Causes = nil })
			add("a safety part is left out", r.ID, func(m *appliance.Model) { m.Repairs[i].Steps[0].Act = "Leave the limit out." })
			add("a safety part is bridged", r.ID, func(m *appliance.Model) { m.Repairs[i].Steps[0].Act = "Jumper the limit for now." })
		}
		if k := slices.IndexFunc(r.Causes, func(c int) bool { return m.Checks[c].ID == "rules" }); k >= 0 && (r.ID == "replace-transformer" || r.ID == "replace-board" || r.ID == "replace-blower-motor") {
			add("local rules are not asked", r.ID, func(m *appliance.Model) { m.Repairs[i].Causes = slices.Delete(m.Repairs[i].Causes, k, k+1) })
		}
	}
	add("lightings are not counted", "starts", func(m *appliance.Model) { m.Starts = 0 })
	add("lightings have no end", "starts", func(m *appliance.Model) { m.Starts = 60 })
	if m.Relight.Nominal > 0 && !m.Mains {
		add("a pilot is lit again at once", "relight", func(m *appliance.Model) { m.Relight = measure.Quantity{} })
		add("a pilot is lit again after half a minute", "relight", func(m *appliance.Model) { m.Relight.Nominal, m.Relight.Unit = 30, "s" })
	}
	if len(m.Dead) == 3 {
		add("dead is proved on the wrong side", "dead", func(m *appliance.Model) {
			m.Dead[0] = slices.IndexFunc(m.Points, func(p appliance.Point) bool {
				return p.ID == "board-r" || p.Net == "R" || strings.HasPrefix(p.ID, "r-")
			})
			m.Dead[0] = max(m.Dead[0], 0)
		})
		add("dead is proved at one point twice", "dead", func(m *appliance.Model) { m.Dead[1] = m.Dead[0] })
		add("dead is not proved at ground", "dead", func(m *appliance.Model) { m.Dead[2] = m.Dead[1] })
		add("dead is proved at two points", "dead", func(m *appliance.Model) { m.Dead = m.Dead[:2] })
	}
	for _, x := range []string{"It should be fine.", "Bridge the limit for a moment.", "Bypass the pressure switch.", "Don't worry about the gas.", "Use a bigger fuse."} {
		add("words that must never be said", x, func(m *appliance.Model) { m.Checks[len(m.Checks)-1].Act = x })
	}
	return out
}

// wordMutants seeds mistakes into what is spoken in every job.
func wordMutants(w *job.Words) (out []mutant) {
	for _, x := range []struct{ class, id, from, to string }{
		{"the command of an emergency is not first", "alarm.gas", "Leave now. Touch no switch.", "There is a smell of gas, so please be careful and leave."},
		{"the command of an emergency is long", "alarm.fire", "Get out. Take everyone with you.", "Get out of the house as fast as you can now."},
		{"the command of an emergency is long", "alarm.water", "Stop. Stay off the wet floor.", "Please do not step on the wet floor there."},
		{"gas: switches are touched", "alarm.gas", "Touch no switch.", "Lights off."},
		{"shock: somebody who is stuck is grabbed", "alarm.shock.then", "Don't grab anyone who is stuck.", "Pull them away."},
		{"shock: nobody switches off", "alarm.shock.then", "Turn the breaker off.", ""},
		{"carbon monoxide: people go back in", "alarm.co.then", "Nobody goes back in.", ""},
		{"carbon monoxide: nobody is counted", "alarm.co.then", "Count heads.", ""},
		{"nobody is called", "alarm.fire.then", "nine one one", "them"},
		{"nobody is called", "alarm.ill.then", "nine one one", "them"},
		{"the number is in words", "emergency.digits", "911", "nine one one"},
		{"consent names nothing", "consent", "{what}", "something"},
		{"consent says nothing of the power", "consent", "with the power on", "now"},
		{"off is the switch only", "act.power-off", " Then turn off its breaker.", ""},
		{"off is the thermostat", "act.power-off", "Turn off the furnace switch. Then turn off its breaker.", "Turn the thermostat off."},
		{"nobody stands clear", "act.power-on", "Stand clear. ", ""},
		{"nobody smells before a pilot is lit", "relight", "smell near the floor", "go on"},
		{"the category of the leads is not asked", "meter.category", ", and on the leads", ""},
		{"the category is not asked", "meter.category", "category three or four, with three hundred volts or more", "a good one"},
		{"who is unsure is licensed", "license", "say no", "say yes"},
		{"still live, and work goes on", "proof.stop", "Touch nothing in it.", "Go on with care."},
		{"still live, and nobody is called", "proof.stop", "call an electrician", "try again"},
		{"a door switch is taped", "act.hold-door", "No tape.", "Tape will do."},
		{"a bridge is granted", "shortcut", "No. ", "Fine. "},
		{"a failed gate is as good as fixed", "gate.restart", "It is not fixed.", "It is good enough."},
		{"a danger is played down", "hazard.mains", "It can kill.", "It should be fine."},
		{"a spoken hazard drops its noun", "hazard.moving", "the fan can start without a sign. Keep clear.", "keep clear."},
		{"a spoken hazard drops its noun", "hazard.capacitor", "this capacitor can hold a charge with the power off.", "careful here."},
		{"a capacitor is not discharged through a resistor", "act.discharge", "resistor", "screwdriver"},
		{"the jack is not said", "jacks.volts", "volts", "right"},
		{"silence is not asked about", "all.right", "Are you all right?", "Hello?"},
	} {
		c := *w
		c.Lines = maps.Clone(w.Lines)
		l := c.Lines[x.id]
		swap := func(s string) string { return strings.ReplaceAll(s, x.from, x.to) }
		l.Full, l.Say, l.How = swap(l.Full), swap(l.Say), swap(l.How)
		l.Short = slices.Clone(l.Short)
		for i := range l.Short {
			l.Short[i] = swap(l.Short[i])
		}
		c.Lines[x.id] = l
		out = append(out, mutant{class: x.class, name: x.id, words: &c})
	}
	return out
}

// failures is all that the table finds, as a set.
func failures(m *appliance.Model, w *job.Words, spoken bool) map[string]bool {
	out := map[string]bool{}
	for _, row := range safety.Table {
		if row.Spoken != spoken {
			continue
		}
		for _, b := range row.Check(safety.Held{Model: m, Words: w}) {
			out[row.ID+": "+b] = true
		}
	}
	if !spoken {
		if _, err := worksite.New(m); err != nil {
			out["site: "+err.Error()] = true
		}
	}
	return out
}

// caught tells what found a mistake, empty when nothing did.
func caught(x mutant, base map[string]map[string]bool, words *job.Words, ms []*appliance.Model) string {
	key, m, w, spoken := "words", ms[0], x.words, true
	if x.model != nil {
		key, m, w, spoken = x.model.ID, x.model, words, false
	}
	now := failures(m, w, spoken)
	for _, f := range slices.Sorted(maps.Keys(now)) {
		if !base[key][f] {
			return f
		}
	}
	return ""
}

func seeded(t testing.TB) (all []mutant, missed []mutant) {
	ms := models(t)
	_, words := language(t)
	base := map[string]map[string]bool{"words": failures(ms[0], words, true)}
	for _, m := range ms {
		base[m.ID] = failures(m, words, false)
		all = append(all, fileMutants(m)...)
	}
	all = append(all, wordMutants(words)...)
	for _, x := range all {
		if caught(x, base, words, ms) == "" {
			missed = append(missed, x)
		}
	}
	return all, missed
}

// Every mistake that is put into a file or into the words is found by the table or the interlocks' own reading of the file.
func TestSeededMistakes(t *testing.T) {
	all, missed := seeded(t)
	classes := map[string]int{}
	for _, x := range all {
		classes[x.class]++
	}
	for _, x := range missed {
		t.Errorf("not found: %s, %s", x.class, x.name)
	}
	t.Logf("%d mistakes of %d classes, %d not found", len(all), len(classes), len(missed))
	if len(all) < 120 {
		t.Errorf("%d mistakes, want 120", len(all))
	}
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		all, missed := seeded(t)
		add("prove.mutants", float64(len(all)), "", ">= 120", len(all))
		add("prove.mutants_caught_pct", 100*float64(len(all)-len(missed))/float64(len(all)), "%", ">= 100", len(all))
		n := jobs()
		sum := play(t, n, 1)
		add("safe.random_jobs", float64(sum.jobs), "", ">= 200000", sum.steps)
		add("safe.violations", float64(sum.violations), "", "= 0", sum.jobs)
		held := sum.gated
		for _, rule := range []string{"a failed gate energises nothing", "a failed gate is never fixed"} {
			held -= sum.count[rule]
		}
		if sum.gated > 0 {
			add("safe.gates_pct", 100*float64(max(held, 0))/float64(sum.gated), "%", ">= 100", sum.gates)
		}
		pending := 0
		for _, row := range safety.Table {
			pending += len(row.Pending)
		}
		add("safe.table_rows", float64(len(safety.Table)), "", ">= 100", len(safety.Table))
		add("safe.table_pending", float64(pending), "", "= 0", len(safety.Table))
	})
}
