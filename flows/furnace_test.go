package flows_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/flows"
	"readback/flows/lexicon"
	"readback/flows/plain"
)

// TestFurnaceIsWhole holds the furnace file to its size, to being separable, and to naming everything a job needs.
func TestFurnaceIsWhole(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	var options []string
	for _, o := range lex.Options {
		options = append(options, o.ID)
	}
	r, err := flows.Lint(os.DirFS("data"), "furnace.hcl", options)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Err(); err != nil {
		t.Fatal(err)
	}
	m := r.Model
	if len(m.Parts) < 45 || len(m.Modes) < 90 || len(m.Checks) < 60 {
		t.Errorf("%d parts, %d modes, %d checks", len(m.Parts), len(m.Modes), len(m.Checks))
	}
	if r.One < 0.95 || r.Three < 0.995 {
		t.Errorf("%.4f of the rate comes down to one repair, %.4f to three modes", r.One, r.Three)
	}
	names := map[string]string{}
	for _, p := range m.Parts {
		if was, ok := names[p.Name]; ok {
			t.Errorf("parts %s and %s have one name", was, p.ID)
		}
		names[p.Name] = p.ID
		if p.Look == "" || p.Place < 0 {
			t.Errorf("part %s: no look or no place", p.ID)
		}
	}
	for _, md := range m.Modes {
		if md.Repair < 0 || !(md.Rate.Nominal > 0) {
			t.Errorf("mode %s: no repair or no rate", md.Full)
		}
	}
	for _, stage := range []string{"safety", "story", "light", "free", "watch", "plan", "restart"} {
		if !slices.ContainsFunc(m.Checks, func(c appliance.Check) bool { return c.Stage == stage }) {
			t.Errorf("no check of stage %s", stage)
		}
	}
	for _, w := range []struct{ what, part string }{
		{"a stop line where gas is opened", "gas-valve"}, {"a stop line at the exchanger", "exchanger"},
		{"a stop line at the roll-out switches", "rollout-left"}, {"a stop line at the orifices", "orifice"},
	} {
		i := slices.IndexFunc(m.Parts, func(p appliance.Part) bool { return p.ID == w.part })
		if i < 0 || m.Parts[i].Stop < 0 {
			t.Errorf("want %s (%s)", w.what, w.part)
		}
	}
}

// TestFurnaceLiveWork holds live checks to another way and to a caution that exists.
func TestFurnaceLiveWork(t *testing.T) {
	m, _ := furnace(t)
	cautions := map[string]*appliance.Caution{}
	for i := range m.Cautions {
		cautions[m.Cautions[i].Hazard] = &m.Cautions[i]
	}
	need := func(hazard, by string) {
		if hazard == "" || hazard == "none" {
			return
		}
		c := cautions[hazard]
		switch {
		case c == nil:
			t.Errorf("%s: no caution for %s", by, hazard)
		case len(c.Say) < 4:
			t.Errorf("caution %s has %d sayings, want the full one and three short ones", hazard, len(c.Say))
		}
	}
	for _, p := range m.Places {
		for _, h := range p.Hazards {
			need(h, p.ID)
		}
	}
	for _, c := range m.Checks {
		need(c.Hazard, c.ID)
		if c.Hazard != "mains" {
			continue
		}
		if c.Instead < 0 {
			t.Errorf("check %s is live and has no other way", c.ID)
			continue
		}
		if o := &m.Checks[c.Instead]; o.Power == "on" && o.Function != measure.Look || o.Hazard == "mains" {
			t.Errorf("check %s: the other way, %s, is live too", c.ID, o.ID)
		}
	}
	for _, r := range m.Repairs {
		for _, s := range r.Steps {
			inside := slices.ContainsFunc(s.Places, func(p int) bool { return m.Places[p].HandsIn || len(m.Places[p].Hazards) > 0 })
			if s.Power == "on" && (s.Wire >= 0 || inside) {
				t.Errorf("repair %s: %q is done with the power on", r.ID, s.Act)
			}
		}
	}
}

// TestFurnaceWords holds what is spoken to short sentences of two or three named states, and to words that are no alarm.
func TestFurnaceWords(t *testing.T) {
	m, _ := furnace(t)
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	var alarms []string
	for _, c := range lex.Emergencies.Classes {
		if slices.Contains([]string{"gas", "co", "fire", "ill", "shock", "any"}, c.ID) {
			alarms = append(alarms, c.Say...)
		}
	}
	spoken := map[string]string{}
	say := func(by, s string) {
		if s != "" {
			spoken[by] = s
		}
	}
	for _, c := range m.Checks {
		say(c.ID+" ask", c.Ask)
		say(c.ID+" act", c.Act)
		say(c.ID+" caution", c.Caution)
		if c.Ask != "" && !strings.HasSuffix(c.Ask, "?") {
			t.Errorf("check %s asks %q", c.ID, c.Ask)
		}
	}
	for _, r := range m.Repairs {
		say(r.ID+" name", r.Name)
		for _, s := range r.Steps {
			say(r.ID+" step "+s.Act, s.Act)
			say(r.ID+" caution "+s.Act, s.Caution)
		}
	}
	for _, s := range m.Stops {
		say(s.ID+" say", s.Say)
		say(s.ID+" now", s.Now)
	}
	for _, c := range m.Cautions {
		for i, s := range c.Say {
			say(c.Hazard+" "+string(rune('a'+i)), s)
		}
	}
	for _, p := range m.Plate {
		say(p.ID, p.Ask)
	}
	for by, s := range spoken {
		if n, sentence := plain.LongestOf(s); n > plain.Longest {
			t.Errorf("%s: %d words in %q", by, n, sentence)
		}
		if w, a := plain.British(s); w != "" {
			t.Errorf("%s: %q is %q in America", by, w, a)
		}
		low := " " + strings.ToLower(strings.NewReplacer(".", " ", ",", " ", "?", " ", ":", " ").Replace(s)) + " "
		low = strings.Join(strings.Fields(low), " ")
		for _, a := range alarms {
			if !strings.Contains(a, "*") && strings.Contains(" "+low+" ", " "+a+" ") {
				t.Errorf("%s: %q would sound the alarm %q", by, s, a)
			}
		}
		if strings.HasSuffix(s, "?") && (strings.Contains(low, " not ") || strings.Contains(low, "n't ")) {
			t.Errorf("%s: %q is a negative question", by, s)
		}
		if strings.ContainsAny(s, "0123456789%/°µ<>=") {
			t.Errorf("%s: %q holds what the voice cannot say", by, s)
		}
	}
}

// TestFurnaceSafetyIsNeverBridged holds test jumpers off every limit, roll-out, pressure and float switch.
func TestFurnaceSafetyIsNeverBridged(t *testing.T) {
	m, _ := furnace(t)
	safe := 0
	for _, p := range m.Parts {
		if p.Safety {
			safe++
		}
	}
	if safe < 6 {
		t.Errorf("%d safety devices", safe)
	}
	for _, c := range m.Checks {
		if len(c.Jump) > 0 {
			t.Errorf("check %s uses a test jumper", c.ID)
		}
	}
}
