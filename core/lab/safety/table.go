package safety

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/measure"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// Held is what the table is held against: an equipment file, and the words that are spoken.
type Held struct {
	Model *appliance.Model
	Words *job.Words
	Lex   *utterance.Lexicon
}

// Row is one rule with its source. Check names every place where it does not hold.
type Row struct {
	ID     string
	Rule   string
	Source string
	Check  func(h Held) []string
	// Pending says, by equipment file ("words" for what is said), why the program does not meet the row yet. It is printed
	// and counted by the test; a row that is met and still marked fails.
	Pending map[string]string
	Spoken  bool // it is about what is said in every job, not about a file
}

var compiled sync.Map

// rx is a compiled expression; the table is held against hundreds of files.
func rx(s string) *regexp.Regexp {
	if re, ok := compiled.Load(s); ok {
		return re.(*regexp.Regexp)
	}
	re := regexp.MustCompile(s)
	compiled.Store(s, re)
	return re
}

type options = func(c *appliance.Check, o *appliance.Option) bool

// must holds that every answer of that meaning stops the work or is an emergency.
func must(is options, stops bool, emergency string) func(Held) []string {
	return func(h Held) (bad []string) {
		for i := range h.Model.Checks {
			c := &h.Model.Checks[i]
			for k := range c.Options {
				o := &c.Options[k]
				if !is(c, o) || stops && o.Stop >= 0 || emergency != "" && o.Emergency == emergency {
					continue
				}
				bad = append(bad, c.ID+"."+o.ID)
			}
		}
		return bad
	}
}

// named is an answer of one of these ids, anywhere.
func named(ids ...string) options {
	return func(_ *appliance.Check, o *appliance.Option) bool { return slices.Contains(ids, o.ID) }
}

// at is an answer of one of these ids to a question whose words hold one of some words.
func at(asks string, ids ...string) options {
	re := rx("(?i)" + asks)
	return func(c *appliance.Check, o *appliance.Option) bool {
		return re.MatchString(c.Name+" "+c.Ask) && slices.Contains(ids, o.ID)
	}
}

// exists holds that there is a check of that kind with such an answer, if the file is of such an appliance.
func exists(stage string, want options, what string, is func(m *appliance.Model) bool) func(Held) []string {
	return func(h Held) []string {
		if is != nil && !is(h.Model) {
			return nil
		}
		for i := range h.Model.Checks {
			c := &h.Model.Checks[i]
			for k := range c.Options {
				if (stage == "" || c.Stage == stage) && want(c, &c.Options[k]) {
					return nil
				}
			}
		}
		return []string{what}
	}
}

// heatsAir tells whether a blower carries the heat.
func heatsAir(m *appliance.Model) bool {
	return slices.ContainsFunc(m.Parts, func(p appliance.Part) bool { return p.ID == "blower" })
}

// heatsWater tells whether a circulator carries the heat.
func heatsWater(m *appliance.Model) bool {
	return slices.ContainsFunc(m.Parts, func(p appliance.Part) bool { return p.ID == "circulator" })
}

func gas(m *appliance.Model) bool { return m.Fuel == "gas" }

func pilot(m *appliance.Model) bool { return m.Fuel == "gas" && !m.Mains }

// nouns are the words that name a hazard; one of them is in every caution against it, also in its short forms.
var nouns = map[string]string{"mains": "voltage|live wire|live", "gas": "gas", "capacitor": "capacitor|charge", "moving": "fan|blower|start", "hot": "hot", "low": "volts|live|low voltage",
	"sharp": "sharp|edges", "high": "high|height|ladder", "door": "door switch", "jumper": "jumper", "restart": "restart", "hands": "hands"}

func saysHazard(hazard, text string) bool {
	re, ok := nouns[hazard]
	return !ok || rx("(?i)"+re).MatchString(text)
}

func eachCheck(f func(m *appliance.Model, c *appliance.Check) string) func(Held) []string {
	return func(h Held) (bad []string) {
		for i := range h.Model.Checks {
			if why := f(h.Model, &h.Model.Checks[i]); why != "" {
				bad = append(bad, h.Model.Checks[i].ID+why)
			}
		}
		return bad
	}
}

func eachRepair(f func(m *appliance.Model, r *appliance.Repair) string) func(Held) []string {
	return func(h Held) (bad []string) {
		for i := range h.Model.Repairs {
			if why := f(h.Model, &h.Model.Repairs[i]); why != "" {
				bad = append(bad, h.Model.Repairs[i].ID+why)
			}
		}
		return bad
	}
}

func fails(broken bool, why string) string {
	if broken {
		return why
	}
	return ""
}

// around tells whether a place, or one around it, names a hazard.
func around(m *appliance.Model, place int, hazard string) bool {
	for n := 0; place >= 0 && n < 20; place, n = m.Places[place].Within, n+1 {
		if slices.Contains(m.Places[place].Hazards, hazard) {
			return true
		}
	}
	return false
}

// placesOf are the places where hands or leads go for a check.
func placesOf(m *appliance.Model, c *appliance.Check) []int {
	out := slices.Clone(c.Places)
	for _, p := range append([]int{c.Red, c.Black}, c.Lift...) {
		if p >= 0 && p < len(m.Points) {
			out = append(out, m.Points[p].Place)
		}
	}
	return out
}

// capacitorPoint tells whether a point is a terminal of a capacitor.
func capacitorPoint(m *appliance.Model, point int) bool {
	if point < 0 {
		return false
	}
	id, _, _ := strings.Cut(m.Points[point].Net, ".")
	return slices.ContainsFunc(m.Parts, func(p appliance.Part) bool { return p.ID == id && p.Kind == "capacitor" })
}

// netOf is the net of a point.
func netOf(m *appliance.Model, point int) string {
	id := m.Points[point].Net
	if part, port, ok := strings.Cut(id, "."); ok {
		for i := range m.Parts {
			if n, has := m.Parts[i].Ports[port]; has && m.Parts[i].ID == part {
				return n
			}
		}
	}
	return id
}

// reach is every net that is joined to one through things that pass current, without some parts.
func reach(m *appliance.Model, from string, without []int) map[string]bool {
	seen := map[string]bool{from: true}
	for again := true; again; {
		again = false
		for i := range m.Parts {
			p := &m.Parts[i]
			if slices.Contains(without, i) || !slices.Contains([]string{"wire", "switch", "fuse", "contact", "pair"}, p.Kind) {
				continue
			}
			for _, x := range [][2]string{{"a", "b"}, {"in1", "out1"}, {"in2", "out2"}} {
				if a, b := p.Ports[x[0]], p.Ports[x[1]]; a != "" && b != "" && seen[a] != seen[b] {
					seen[a], seen[b], again = true, true, true
				}
			}
		}
	}
	return seen
}

// mainsNets are the nets on the hot side of the house voltage: neutral is bonded to ground, and so to half of the furnace.
func mainsNets(m *appliance.Model) map[string]bool {
	out := map[string]bool{}
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Kind == "supply" && m.Mains {
			for n := range reach(m, p.Ports["l"], nil) {
				out[n] = true
			}
		}
	}
	return out
}

// bandAt tells whether a reading of that size has the consequence.
func bandAt(c *appliance.Check, x float64) (stop bool, emergency, tell string) {
	for _, b := range c.Bands {
		if (b.Limit.Low == nil || x >= *b.Limit.Low) && (b.Limit.High == nil || x <= *b.Limit.High) {
			return b.Stop >= 0, b.Emergency, b.Tell
		}
	}
	return false, "", ""
}

var (
	restricts = rx(`(?i)\b(never|only (when|the)|leave it off|do not|don't)\b`)
	forbidden = rx(`(?i)\b(should be (fine|safe|ok)|probably (safe|fine|dead)|perfectly safe|no danger|nothing can happen|` +
		`tape (the )?(door|switch|button|panel)|bigger fuse|larger fuse|leave (it|the \w+|the \w+ \w+) out|(bypass|bridge|jump|jumper) (the )?(limit|high limit|roll-?out|pressure|door|flame|safety)|tin ?foil|coin)\b`)
	negated = rx(`(?i)\b(never|no|not|don't|nobody|nothing)\b`)
)

// spoken is every text of a file that may be said.
func spoken(m *appliance.Model) map[string]string {
	out := map[string]string{}
	for _, c := range m.Checks {
		out[c.ID+" ask"], out[c.ID+" act"], out[c.ID+" caution"], out[c.ID+" fit"] = c.Ask, c.Act, c.Caution, c.Fit
		for _, o := range c.Options {
			out[c.ID+"."+o.ID+" tell"] = o.Tell
		}
	}
	for _, r := range m.Repairs {
		out[r.ID+" note"] = r.Note
		for i, s := range r.Steps {
			out[fmt.Sprint(r.ID, ".", i+1)], out[fmt.Sprint(r.ID, ".", i+1, " caution")] = s.Act, s.Caution
		}
	}
	for _, s := range m.Stops {
		out[s.ID+" say"], out[s.ID+" now"], out[s.ID+" tell"] = s.Say, s.Now, s.Tell
	}
	for _, c := range m.Cautions {
		for i, s := range c.Say {
			out[fmt.Sprint("caution ", c.Hazard, " ", i)] = s
		}
	}
	return out
}

func forbiddenIn(texts map[string]string) (bad []string) {
	for id, s := range texts {
		for _, part := range rx(`[.:;!?]`).Split(s, -1) {
			if strings.Contains(strings.ToLower(part), "don't worry") || forbidden.MatchString(part) && !negated.MatchString(part) {
				bad = append(bad, fmt.Sprintf("%s: %q", id, strings.TrimSpace(part)))
			}
		}
	}
	slices.Sort(bad)
	return bad
}

// line is a spoken line, empty when there is none.
func (h Held) line(id string) string { return h.Words.Lines[id].Full }

// holds is a row about a line: every expression must be found in its full form.
func holds(id string, want ...string) func(Held) []string {
	return func(h Held) (bad []string) {
		l := h.Words.Lines[id]
		text := l.Full + " " + l.Say + " " + l.How
		for _, w := range want {
			if !rx("(?i)" + w).MatchString(text) {
				bad = append(bad, fmt.Sprintf("%s: %q says nothing like %q", id, text, w))
			}
		}
		return bad
	}
}

func alarmsWith(ids []string, is func(vocab.Alarm) bool) []string {
	var bad []string
	for _, id := range ids {
		if a, ok := vocab.AlarmOf(id); !ok || !is(a) {
			bad = append(bad, id)
		}
	}
	return bad
}

// Table is the second source for what must hold. It is written from the rules and changed only with them.
var Table = []Row{
	// ---- answers that end the work or send everybody out
	{ID: "odour", Rule: "a gas odour is an emergency", Source: "handbook domain 5, first rule; issue 16 G4", Check: must(at("odou?r|smell|sniff", "some", "strong", "yes"), false, "gas")},
	{ID: "odour-asked", Rule: "a job with gas asks about an odour first", Source: "handbook domain 1.1", Check: exists("safety", func(_ *appliance.Check, o *appliance.Option) bool { return o.Emergency == "gas" }, "no safety question can be the gas emergency", gas)},
	{ID: "co-sounding", Rule: "a sounding carbon monoxide alarm is an emergency, whenever it is asked", Source: "handbook domain 5; UL 2034", Check: must(named("sounding"), false, "co")},
	{ID: "co-asked", Rule: "a job with a burner asks about the carbon monoxide alarm first", Source: "handbook domain 1.1", Check: exists("safety", func(_ *appliance.Check, o *appliance.Option) bool { return o.Emergency == "co" }, "no safety question can be the co emergency", gas)},
	{ID: "co-again", Rule: "after a repair of a burner the alarm is asked again", Source: "trade C9; issue 16 G3", Check: exists("restart", func(_ *appliance.Check, o *appliance.Option) bool { return o.Emergency == "co" }, "no question of the restart", gas)},
	{ID: "co-none", Rule: "a house without an alarm is told so", Source: "trade A7; issue 16 G3", Check: exists("safety", func(c *appliance.Check, o *appliance.Option) bool {
		return strings.Contains(o.ID, "no-") && strings.Contains(o.ID, "alarm") && strings.Contains(strings.ToLower(o.Tell), "carbon monoxide")
	}, "no answer for a house without an alarm", gas)},
	{ID: "co-chirp", Rule: "a chirp is told apart from an alarm", Source: "UL 2034, UL 217; handbook equipment 9", Check: exists("safety", func(_ *appliance.Check, o *appliance.Option) bool { return o.ID == "chirping" && o.Tell != "" }, "no answer for a chirp", gas)},
	{ID: "ill", Rule: "somebody who feels ill is an emergency", Source: "handbook domain 5", Check: must(named("feeling-ill"), false, "ill")},
	{ID: "ill-asked", Rule: "a job with a burner asks how everybody feels", Source: "safety 9; handbook domain 5", Check: exists("safety", func(_ *appliance.Check, o *appliance.Option) bool { return o.Emergency == "ill" }, "nobody is asked how they feel", gas)},
	{ID: "soot", Rule: "soot stops the work", Source: "handbook domain 1.1, 5; scenario 23", Check: must(named("sooty"), true, "")},
	{ID: "scorch", Rule: "scorch marks on the appliance stop the work", Source: "handbook domain 1.1", Check: must(func(c *appliance.Check, o *appliance.Option) bool { return c.Stage == "safety" && o.ID == "burnt" }, true, "")},
	{ID: "scorch-asked", Rule: "soot and scorch are asked about before anything is touched", Source: "handbook domain 1.1", Check: exists("safety", func(_ *appliance.Check, o *appliance.Option) bool { return o.ID == "sooty" || o.ID == "burnt" }, "not asked", gas)},
	{ID: "rolls-out", Rule: "flame outside of the burner stops the work", Source: "handbook domain 1.16; safety 58 mutants", Check: must(named("rolls-out", "says-roll-out"), true, "")},
	{ID: "roll-popped", Rule: "a roll-out or spill switch that has opened stops the work: nobody presses it", Source: "handbook domain scenario 23, 5", Check: must(at("roll-?out|spill", "popped"), true, "")},
	{ID: "bang", Rule: "late light and a bang stop the work", Source: "handbook domain 2(d), 5", Check: must(named("bang", "late"), true, "")},
	{ID: "late-pilot", Rule: "a burner that lights with a whoosh at a standing pilot stops the work", Source: "handbook domain 2(e) row 5", Check: func(h Held) []string {
		if !pilot(h.Model) {
			return nil
		}
		return must(named("whoosh"), true, "")(h)
	}},
	{ID: "yellow", Rule: "a yellow flame stops the work, after a repair too", Source: "issue 16 G3", Check: must(named("yellow-flame"), true, "")},
	{ID: "flame-moves", Rule: "a flame that moves as the blower starts stops the work", Source: "handbook domain 5, cracked exchanger", Check: must(named("flame-moves"), true, "")},
	{ID: "exchanger", Rule: "a crack in the exchanger stops the work", Source: "handbook domain 5", Check: must(at("exchanger", "cracked"), true, "")},
	{ID: "valve-leaks", Rule: "a flame that stays when the call ends stops the work", Source: "handbook domain 2(c) row 7", Check: must(func(c *appliance.Check, o *appliance.Option) bool { return o.ID == "flame-stays" && c.ID == "see-end" }, true, "")},
	{ID: "dry-fire", Rule: "a boiler that hisses is left alone, and that is asked before anything is touched", Source: "handbook equipment 5, hazards", Check: func(h Held) []string {
		return append(must(named("hissing"), true, "")(h), exists("safety", named("hissing"), "nobody is asked whether it hisses", heatsWater)(h)...)
	}},
	{ID: "relief", Rule: "a relief valve that drips, pressure near it and a frozen pipe stop the work", Source: "ASME BPVC section IV; handbook equipment 5, stop lines", Check: func(h Held) []string {
		return append(must(at("relief valve|pressure gauge", "drips", "above"), true, "")(h), must(at("pipes", "frozen"), true, "")(h)...)
	}},
	{ID: "pipes-gate", Rule: "after a repair of a boiler its pipes are felt", Source: "as trade A1 for air", Check: exists("restart", at("pipes after", "yes"), "not felt", heatsWater)},
	{ID: "spills", Rule: "exhaust that is blown out of the draft hood stops the work", Source: "National Fuel Gas Code spillage test; handbook equipment 3.1", Check: must(at("draft hood", "draft-out"), true, "")},
	{ID: "plastic-vent", Rule: "a plastic vent that is too hot or burnt brown stops the work, and so does a collector box that leaks", Source: "handbook equipment 2, hazards and stop", Check: func(h Held) []string {
		return append(must(at("plastic vent|vent (pipe|joint)", "hot", "burnt"), true, "")(h), must(at("collector", "cracked", "rusty"), true, "")(h)...)
	}},
	{ID: "vent-apart", Rule: "a vent that is apart stops the work", Source: "handbook equipment 1.1 DRAFT", Check: must(at("vent (pipe|joint)|joints? of the vent", "loose"), true, "")},
	{ID: "vent-blocked", Rule: "a blocked vent of a heater that draws by itself stops the work", Source: "handbook domain 5, T22", Check: func(h Held) []string {
		if !pilot(h.Model) {
			return nil
		}
		return must(at("vent", "blocked"), true, "")(h)
	}},
	{ID: "duct-apart", Rule: "a return duct apart near the burner stops the work", Source: "trade A10; issue 16 G3", Check: must(at("duct", "return-apart"), true, "")},
	{ID: "dark", Rule: "a house without power stops the work: it is for the power company", Source: "common practice, no source", Check: func(h Held) []string {
		if !h.Model.Mains {
			return nil
		}
		return must(func(c *appliance.Check, o *appliance.Option) bool { return c.ID == "house-power" && o.ID == "off" }, true, "")(h)
	}},
	{ID: "water", Rule: "water over the burners stops the work", Source: "handbook domain 5, IRC D p872", Check: must(at("water|floor", "above", "flooded"), true, "")},
	{ID: "flood-past", Rule: "past flooding is asked", Source: "safety 14; issue 16 G3", Check: exists("safety", func(c *appliance.Check, o *appliance.Option) bool {
		return rx(`(?i)flood|under water|was wet`).MatchString(c.Ask+o.ID) && o.Stop >= 0 && rx(`(?i)ever|past|was |were |been|before|since`).MatchString(c.Ask)
	}, "not asked", gas)},
	{ID: "wet-floor", Rule: "a wet floor ends live work", Source: "trade A4; issue 16 G3", Check: func(h Held) (bad []string) {
		for _, c := range h.Model.Checks {
			for _, o := range c.Options {
				if o.ID == "wet" && rx("(?i)floor").MatchString(c.Ask) && !o.NoLive && o.Stop < 0 {
					bad = append(bad, c.ID+"."+o.ID)
				}
			}
		}
		return bad
	}},
	{ID: "wet-told", Rule: "who stands on a wet floor is told what it means", Source: "trade A4", Check: func(h Held) (bad []string) {
		for _, c := range h.Model.Checks {
			for _, o := range c.Options {
				if o.NoLive && o.Tell == "" {
					bad = append(bad, c.ID+"."+o.ID)
				}
			}
		}
		return bad
	}},
	{ID: "floor-asked", Rule: "before house voltage is measured the floor is asked about", Source: "trade A4; handbook domain 5", Check: exists("safety", func(_ *appliance.Check, o *appliance.Option) bool { return o.NoLive }, "no answer ends live work", func(m *appliance.Model) bool { return m.Mains })},
	{ID: "reserved", Rule: "what local rules reserve stops the work", Source: "invariant 11; issue 16 G2", Check: must(named("reserved"), true, "")},
	{ID: "other-burner", Rule: "some burners dark at a standing pilot stops the work", Source: "handbook domain 5, combustion", Check: func(h Held) []string {
		if !pilot(h.Model) {
			return nil
		}
		return must(named("some-burners"), true, "")(h)
	}},
	{ID: "orifice", Rule: "another orifice stops the work", Source: "handbook domain 5", Check: must(at("orifice", "different", "blocked"), true, "")},
	{ID: "overfire", Rule: "over-firing stops the work", Source: "handbook domain scenario 31", Check: must(func(c *appliance.Check, o *appliance.Option) bool { return c.ID == "dial-time" && o.ID == "below" }, true, "")},
	{ID: "flue-co", Rule: "carbon monoxide in the flue over its limit stops the work", Source: "ANSI Z21.47; handbook equipment 2", Check: must(func(c *appliance.Check, o *appliance.Option) bool {
		return strings.HasPrefix(c.ID, "flue-co") && o.ID == "above"
	}, true, "")},
	// ---- numbers with consequences
	{ID: "co-meter", Rule: "carbon monoxide in the room is read in ppm: 9 look for the source, 35 off, 70 out", Source: "EPA 9 and 35 ppm; 2018 IRC appendix D 30 and 70 ppm; issue 16 G3", Check: eachCheck(func(_ *appliance.Model, c *appliance.Check) string {
		if c.Unit != "ppm" || !strings.Contains(c.ID, "room") {
			return ""
		}
		_, _, tell := bandAt(c, 12)
		stop12, em12, _ := bandAt(c, 12)
		stop40, em40, _ := bandAt(c, 40)
		_, em80, _ := bandAt(c, 80)
		return fails(tell == "" && !stop12 && em12 == "", ": 12 ppm has no consequence") + fails(!stop40 && em40 == "", ": 40 ppm does not stop") + fails(em80 != "co", ": 80 ppm is no emergency")
	})},
	{ID: "co-function", Rule: "carbon monoxide is read on a CO meter, not on a gas sniffer", Source: "trade A9; issue 16 G3", Check: eachCheck(func(_ *appliance.Model, c *appliance.Check) string {
		return fails(rx(`(?i)carbon monoxide|\bco\b`).MatchString(c.Name) && c.Stage == "plan" && !strings.Contains(string(c.Function), "co") && len(c.Options) > 0, ": by words, with another instrument")
	})},
	{ID: "rise-gate", Rule: "the rise is measured after a repair and has limits", Source: "trade A1; handbook domain 1.13", Check: func(h Held) []string {
		if !heatsAir(h.Model) || !gas(h.Model) {
			return nil
		}
		for _, c := range h.Model.Checks {
			if c.Stage == "restart" && c.Function == measure.Thermometer && c.Limit != nil && c.Limit.High != nil {
				return nil
			}
		}
		return []string{"no measured rise with an upper limit"}
	}},
	{ID: "flame-gate", Rule: "the flame is looked at after a repair", Source: "handbook domain 1.13, IRC D p872", Check: func(h Held) []string {
		for _, c := range h.Model.Checks {
			if c.Stage == "restart" && len(c.Options) > 1 && slices.Contains([]string{"blue-flame", "all-burners"}, c.Options[0].ID) {
				return nil
			}
		}
		return []string{"not looked at"}
	}},
	{ID: "flame-stays-gate", Rule: "that the flame stays is looked at after a repair", Source: "trade A1", Check: func(h Held) []string {
		if !h.Model.Mains {
			return nil
		}
		for _, c := range h.Model.Checks {
			if c.Stage == "restart" && len(c.Options) > 1 && c.Options[0].ID == "flame-stays" {
				return nil
			}
		}
		return []string{"not looked at"}
	}},
	{ID: "air-gate", Rule: "warm air is felt after a repair", Source: "trade A1", Check: func(h Held) []string {
		if !heatsAir(h.Model) {
			return nil
		}
		for _, c := range h.Model.Checks {
			if c.Stage == "restart" && len(c.Options) > 1 && c.Options[0].ID == "warm-air" {
				return nil
			}
		}
		return []string{"not felt"}
	}},
	{ID: "flame-out", Rule: "after work on a pilot its flame-out is proved: three minutes after the pilot is out a call brings no gas", Source: "handbook domain 2(e) row 7, IRC D p872", Check: func(h Held) []string {
		if !pilot(h.Model) {
			return nil
		}
		for _, c := range h.Model.Checks {
			if c.Stage == "restart" && rx("(?i)(out|off).*(minutes|clunk|click)|flame.?out").MatchString(c.Name+" "+c.Ask+" "+c.Act) {
				return nil
			}
		}
		return []string{"not proved"}
	}, Pending: map[string]string{"heater-millivolt": "no check of it in the file"}},
	{ID: "restart-first", Rule: "the first answer of a restart look is the good one, and no other ends as fixed", Source: "issue 16 G3", Check: eachCheck(func(_ *appliance.Model, c *appliance.Check) string {
		if c.Stage != "restart" || len(c.Options) == 0 {
			return ""
		}
		return fails(!slices.Contains([]string{"blue-flame", "warm-air", "flame-stays", "quiet", "lit", "all-burners", "none", "yes", "stays-shut"}, c.Options[0].ID), ": begins with "+c.Options[0].ID)
	})},
	{ID: "short-first", Rule: "what trips or blows is put right only after the short was looked for: a gate", Source: "trade A2; handbook domain 6.7", Check: eachRepair(func(m *appliance.Model, r *appliance.Repair) string {
		if r.Part < 0 || m.Parts[r.Part].Kind != "fuse" || r.Kind == "call" {
			return ""
		}
		gated := slices.ContainsFunc(r.Causes, func(c int) bool { return m.Checks[c].Must })
		return fails(!gated, ": no cause check is a gate")
	})},
	{ID: "limit-cause", Rule: "a limit, roll-out or pressure switch is replaced only after its cause was looked for", Source: "handbook domain 1.9, 6.11", Check: eachRepair(func(m *appliance.Model, r *appliance.Repair) string {
		return fails(r.Part >= 0 && m.Parts[r.Part].Safety && r.Kind == "replace" && r.Stop < 0 && m.Parts[r.Part].Stop < 0 && len(r.Causes) == 0, ": no cause is looked for")
	})},
	{ID: "starts", Rule: "ignitions are counted over the whole job", Source: "safety 12; issue 16 G3", Check: func(h Held) []string {
		return nonEmpty(fails(gas(h.Model) && (h.Model.Starts <= 0 || h.Model.Starts > 16), fmt.Sprint("starts = ", h.Model.Starts)))
	}},
	{ID: "relight", Rule: "a pilot is lit again five minutes after the gas was shut off", Source: "lighting labels, ANSI Z21; trade A5", Check: func(h Held) []string {
		q := h.Model.Relight
		return nonEmpty(fails(pilot(h.Model) && q.Nominal*base(q.Unit) < 300, fmt.Sprint("relight = ", q.Nominal, " ", q.Unit)))
	}},
	// ---- hazards
	{ID: "mains-named", Rule: "a check that shows more than 30 V names house voltage", Source: "IEC 61010-1; invariant 2", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		l := c.Limit
		high := l != nil && c.Unit == "V" && c.Function == measure.VoltsAC && (l.High != nil && *l.High > 30 || l.Low != nil && *l.Low > 30)
		return fails(high && c.Hazard != "mains", ": hazard "+c.Hazard)
	})},
	{ID: "mains-points", Rule: "leads on a conductor of the house name house voltage", Source: "IEC 61010-1", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		if c.Power == "off" || c.Function != measure.VoltsAC || c.Red < 0 || c.Black < 0 || !m.Mains {
			return ""
		}
		line := ""
		for i := range m.Parts {
			if m.Parts[i].Kind == "supply" {
				line = m.Parts[i].Ports["l"]
			}
		}
		hot := reach(m, line, nil)
		neutral := strings.Contains(m.Points[c.Red].Name+m.Points[c.Black].Name, "neutral")
		return fails((neutral || hot[netOf(m, c.Red)] || hot[netOf(m, c.Black)]) && c.Hazard != "mains", ": hazard "+c.Hazard)
	})},
	{ID: "mains-clamp", Rule: "a clamp round a wire of a motor or igniter names house voltage", Source: "IEC 61010-1", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		return fails(c.Function == measure.AmpsAC && slices.ContainsFunc(placesOf(m, c), func(p int) bool { return around(m, p, "mains") }) && c.Hazard != "mains", ": hazard "+c.Hazard)
	})},
	{ID: "mains-places", Rule: "a place with house voltage in it says so", Source: "invariant 2; safety 7", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		if c.Hazard != "mains" {
			return ""
		}
		for _, p := range placesOf(m, c) {
			if m.Places[p].Cover && !around(m, p, "mains") {
				return ": behind " + m.Places[p].ID
			}
		}
		return ""
	})},
	{ID: "shock-covers", Rule: "a cover over a conductor of the house says so", Source: "invariant 2", Check: func(h Held) (bad []string) {
		nets := mainsNets(h.Model)
		for _, c := range h.Model.Checks { // and what a relay feeds with house voltage
			if c.Hazard == "mains" && c.Red >= 0 {
				nets[netOf(h.Model, c.Red)] = true
			}
		}
		for i := range h.Model.Points {
			if p := &h.Model.Points[i]; nets[netOf(h.Model, i)] && p.Place >= 0 && h.Model.Places[p.Place].Cover && !around(h.Model, p.Place, "mains") {
				bad = append(bad, p.ID+" in "+h.Model.Places[p.Place].ID)
			}
		}
		return bad
	}},
	{ID: "capacitor-named", Rule: "a capacitor names itself where it is measured", Source: "handbook domain 5, T12", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		return fails(c.Function == measure.Capacitance && c.Hazard != "capacitor", ": hazard "+c.Hazard)
	})},
	{ID: "capacitor-places", Rule: "a place with a capacitor in it says so", Source: "handbook domain 5, T12", Check: func(h Held) (bad []string) {
		for _, p := range h.Model.Parts {
			if p.Kind == "capacitor" && p.Place >= 0 && h.Model.Places[p.Place].Cover && !around(h.Model, p.Place, "capacitor") {
				bad = append(bad, p.ID+" in "+h.Model.Places[p.Place].ID)
			}
		}
		return bad
	}},
	{ID: "capacitor-order", Rule: "a capacitor is discharged and shown empty before its wires move", Source: "trade A6; handbook equipment 9", Check: func(h Held) (bad []string) {
		r, err := worksite.New(h.Model)
		if err != nil {
			return []string{err.Error()}
		}
		for i := range h.Model.Checks {
			c := &h.Model.Checks[i]
			if !slices.ContainsFunc(c.Lift, func(p int) bool { return capacitorPoint(h.Model, p) }) {
				continue
			}
			done := map[string]bool{}
			for _, a := range r.Plan(worksite.Start(), r.For(i)) {
				if a.Kind == worksite.LiftWire && capacitorPoint(h.Model, int(a.N)) && !(done["discharge"] && done["prove-empty"]) {
					bad = append(bad, c.ID+": wires first")
				}
				done[a.Kind.String()] = true
			}
		}
		return bad
	}},
	{ID: "capacitor-swap", Rule: "in a repair too: discharged through a resistor, shown below 5 V, then the wires", Source: "handbook equipment 9", Check: eachRepair(func(m *appliance.Model, r *appliance.Repair) string {
		drained, shown := false, false
		for _, s := range r.Steps {
			if capacitorPoint(m, s.Wire) && !drained {
				return ": wires before the resistor"
			}
			if capacitorPoint(m, s.Wire) && !shown {
				return ": not shown empty"
			}
			drained = drained || rx("(?i)discharge.*resistor").MatchString(s.Act)
			shown = shown || rx("(?i)volts").MatchString(s.Act)
		}
		return ""
	})},
	{ID: "capacitor-line", Rule: "how a capacitor is discharged is said: a resistor, its size, seconds", Source: "handbook equipment 9: 10-20 kOhm, 2-5 W, 5 s", Spoken: true, Check: holds("act.discharge", "resistor", "(kilo|k |thousand)", "second")},
	{ID: "moving-named", Rule: "a measurement beside a fan that may start says so", Source: "handbook domain 5", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		fan := rx("(?i)fan|blower").MatchString(c.Name)
		own := c.Caution
		if c.Power != "on" || !fan || c.Function == measure.Look || !slices.ContainsFunc(placesOf(m, c), func(p int) bool { return around(m, p, "moving") }) {
			return ""
		}
		return fails(!rx("(?i)fan|blower|start").MatchString(own) && c.Hazard != "moving", ": no word of the fan")
	})},
	{ID: "gauge-off", Rule: "a gauge is fitted with the power off, as an act", Source: "trade A12; handbook domain 5, T19", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		tee := rx(`(?i)\btee\b`).MatchString(c.Act + c.Caution)
		return fails(c.Function == measure.Manometer && tee && c.Fit == "" && !c.Licensed, ": the tee is fitted live")
	})},
	{ID: "gauge-covers", Rule: "a draft gauge behind a cover has its fitting", Source: "trade A12", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		behind := slices.ContainsFunc(c.Places, func(p int) bool { return m.Places[p].Cover })
		return fails(c.Function == measure.Manometer && c.Power == "on" && behind && c.Fit == "" && !c.Licensed, ": not fitted by an act")
	})},
	{ID: "cautions-name", Rule: "every form of a caution names its hazard", Source: "handbook dialogue; invariant 17", Check: func(h Held) (bad []string) {
		for _, c := range h.Model.Cautions {
			for i, s := range c.Say {
				if !saysHazard(c.Hazard, s) {
					bad = append(bad, fmt.Sprintf("%s form %d: %q", c.Hazard, i, s))
				}
			}
		}
		return bad
	}},
	{ID: "own-cautions", Rule: "a caution of its own still names the hazard of the check", Source: "invariant 17", Check: eachCheck(func(_ *appliance.Model, c *appliance.Check) string {
		return fails(c.Caution != "" && c.Hazard != "" && c.Hazard != "none" && c.Hazard != "low" && !saysHazard(c.Hazard, c.Caution), fmt.Sprintf(": %s, %q", c.Hazard, c.Caution))
	})},
	{ID: "light-face", Rule: "where the burner lights under the hands, the face stays away", Source: "handbook domain 5, hot surfaces", Check: eachCheck(func(_ *appliance.Model, c *appliance.Check) string {
		return fails(c.Function == measure.VoltsAC && c.Power == "on" && rx("(?i)valve|gas").MatchString(c.ID) && c.At != "" && !rx("(?i)face|lights").MatchString(c.Caution), ": no word of the flame")
	})},
	{ID: "spoken-hazards", Rule: "every form of a spoken hazard names it", Source: "handbook dialogue", Spoken: true, Check: func(h Held) (bad []string) {
		for id, l := range h.Words.Lines {
			z, ok := strings.CutPrefix(id, "hazard.")
			if !ok || strings.HasPrefix(z, "of.") {
				continue
			}
			for _, s := range append([]string{l.Full}, l.Short...) {
				if !saysHazard(z, s) {
					bad = append(bad, fmt.Sprintf("%s: %q", id, s))
				}
			}
		}
		slices.Sort(bad)
		return bad
	}},
	// ---- where dead is proved
	{ID: "dead-points", Rule: "dead is proved at the line before every door switch, at neutral, and at ground", Source: "WAC 296-24-975: interlocks are no isolation; NFPA 70E 120", Check: deadPoints},
	{ID: "door-trips", Rule: "the cover that presses a door switch is known to", Source: "handbook domain 5", Check: func(h Held) (bad []string) {
		for i := range h.Model.Parts {
			if p := &h.Model.Parts[i]; p.Kind == "switch" && strings.Contains(p.Name, "door switch") && !slices.ContainsFunc(h.Model.Places, func(x appliance.Place) bool { return slices.Contains(x.Trips, i) }) {
				bad = append(bad, p.ID)
			}
		}
		return bad
	}},
	{ID: "ohms-off", Rule: "what drives a current is asked with the power off", Source: "T12; invariant 1", Check: eachCheck(func(_ *appliance.Model, c *appliance.Check) string {
		drives := c.Function == measure.Ohms || c.Function == measure.Continuity || c.Function == measure.Capacitance
		return fails(drives && c.Power != "off", ": power "+c.Power)
	})},
	{ID: "ohms-hands", Rule: "ohms behind a cover of house voltage are hands-in work: proved dead", Source: "invariant 1", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		return fails(c.Function == measure.Ohms && m.Mains && len(c.Lift) > 0 && !c.HandsIn, ": not hands-in")
	})},
	{ID: "hands-dead", Rule: "looks with hands inside are made with the power off", Source: "invariant 2", Check: eachCheck(func(_ *appliance.Model, c *appliance.Check) string {
		return fails(c.HandsIn && c.Power == "on" && c.Function != measure.MicroampsDC, ": power on")
	})},
	{ID: "places-off", Rule: "a look behind a cover with house voltage is made with the power off, unless it must be seen running", Source: "invariant 2", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		behind := slices.ContainsFunc(c.Places, func(p int) bool { return m.Places[p].Cover && m.Places[p].HandsIn })
		return fails(c.Function == measure.Look && m.Mains && behind && c.Power == "any", ": power any")
	})},
	{ID: "swap-off", Rule: "wires are moved with the power off", Source: "handbook domain 1.12", Check: eachRepair(func(_ *appliance.Model, r *appliance.Repair) string {
		for i, s := range r.Steps {
			if s.Wire >= 0 && s.Power != "off" {
				return fmt.Sprintf(".%d: power %s", i+1, s.Power)
			}
		}
		return ""
	})},
	{ID: "swap-inside", Rule: "steps behind a cover with hands in are made with the power off", Source: "handbook domain 5", Check: eachRepair(func(m *appliance.Model, r *appliance.Repair) string {
		for i, s := range r.Steps {
			if slices.ContainsFunc(s.Places, func(p int) bool { return m.Places[p].Cover && m.Places[p].HandsIn }) && s.Power != "off" {
				return fmt.Sprintf(".%d: power %s", i+1, s.Power)
			}
		}
		return ""
	})},
	{ID: "instead", Rule: "a check at house voltage has another way with the power off", Source: "invariant 2", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		return fails(c.Hazard == "mains" && c.Power == "on" && c.Stage == "plan" && c.Instead < 0, ": no other way")
	})},
	// ---- who
	{ID: "gas-train", Rule: "gas train, combustion, exchanger, refrigerant and house wiring stop the guide", Source: "invariant 11; issue 16 G2", Check: func(h Held) (bad []string) {
		re := rx(`(?i)^(gas valve|gas control|burners?|orifices?|heat exchanger|cooling coil|house supply|gas supply|pilot orifice|main valve)$`)
		for _, p := range h.Model.Parts {
			if re.MatchString(p.Name) && p.Stop < 0 && len(p.Modes) > 0 {
				for _, md := range p.Modes {
					r := h.Model.Modes[md].Repair
					if r >= 0 && h.Model.Repairs[r].Stop < 0 {
						bad = append(bad, h.Model.Modes[md].Full+" is repaired by "+h.Model.Repairs[r].ID)
					}
				}
			}
		}
		return bad
	}},
	{ID: "calls-stop", Rule: "what is left to others is a stop line", Source: "invariant 11", Check: eachRepair(func(m *appliance.Model, r *appliance.Repair) string {
		return fails(r.Kind == "call" && r.Stop < 0 && (r.Part < 0 || m.Parts[r.Part].Stop < 0), ": no stop line")
	})},
	{ID: "licensed-gas", Rule: "gas pressure is measured by the licensed only", Source: "safety 3; T19", Check: eachCheck(func(m *appliance.Model, c *appliance.Check) string {
		return fails(c.Function == measure.Manometer && (c.Hazard == "gas" || strings.Contains(c.Quantity, "inlet") || strings.Contains(c.Quantity, "manifold")) && !c.Licensed, ": asked of everybody")
	})},
	{ID: "licensed-words", Rule: "what says that it is for the licensed only is for them only", Source: "safety 3", Check: eachCheck(func(_ *appliance.Model, c *appliance.Check) string {
		return fails(rx("(?i)licen[cs]ed").MatchString(c.Caution+c.Act) && !c.Licensed, ": asked of everybody")
	})},
	{ID: "rules-asked", Rule: "before a part at house voltage or a control of the burner is replaced, local rules are asked", Source: "safety 16; issue 16 G2", Check: eachRepair(func(m *appliance.Model, r *appliance.Repair) string {
		nets := mainsNets(m)
		for _, c := range m.Checks { // and what a board feeds with house voltage
			if c.Hazard == "mains" && c.Red >= 0 {
				nets[netOf(m, c.Red)] = true
			}
		}
		wires := slices.ContainsFunc(r.Steps, func(s appliance.SwapStep) bool { return s.Wire >= 0 && nets[netOf(m, s.Wire)] })
		asked := slices.ContainsFunc(r.Causes, func(c int) bool {
			return slices.ContainsFunc(m.Checks[c].Options, func(o appliance.Option) bool { return o.ID == "reserved" && o.Stop >= 0 })
		})
		control := r.Part >= 0 && m.Parts[r.Part].Kind == "board" // it decides about gas
		return fails(r.Kind == "replace" && (wires || control) && !asked, ": local rules are not asked")
	})},
	{ID: "cock-known", Rule: "a gas cock found shut is opened only when it is known who shut it and why", Source: "issue 16 G2", Check: func(h Held) (bad []string) {
		for i := range h.Model.Repairs {
			r := &h.Model.Repairs[i]
			if !rx("(?i)open the gas cock").MatchString(r.Name) || r.Stop >= 0 {
				continue
			}
			gated := slices.ContainsFunc(r.Causes, func(c int) bool {
				return h.Model.Checks[c].Must && slices.ContainsFunc(h.Model.Checks[c].Options, func(o appliance.Option) bool { return o.Stop >= 0 })
			})
			if !gated {
				bad = append(bad, r.ID+": nobody asks who shut it")
			}
			for k, s := range r.Steps {
				if rx("(?i)turn the (handle|lever)").MatchString(s.Act) && !rx("(?i)odou?r|smell|sniff").MatchString(s.Caution) {
					bad = append(bad, fmt.Sprintf("%s.%d: no word of an odour", r.ID, k+1))
				}
				if s.Power != "off" && s.Power != "cut" {
					bad = append(bad, fmt.Sprintf("%s.%d: with power %s", r.ID, k+1, s.Power))
				}
			}
		}
		return bad
	}},
	// ---- words of files
	{ID: "stops-first", Rule: "a stop line says first what to do: off, or stay away", Source: "handbook domain 5", Check: func(h Held) (bad []string) {
		re := rx(`(?i)\b(leave it off|off|close the gas|stay off|leave the|get out|out of)\b`)
		for _, s := range h.Model.Stops {
			if !re.MatchString(s.Now) {
				bad = append(bad, s.ID+": "+s.Now)
			}
		}
		return bad
	}},
	{ID: "stops-call", Rule: "a stop line says whom to call and what to tell", Source: "design 4.11", Check: func(h Held) (bad []string) {
		for _, s := range h.Model.Stops {
			if s.Call == "" || s.Tell == "" || s.Say == "" {
				bad = append(bad, s.ID)
			}
		}
		return bad
	}},
	{ID: "vent-out", Rule: "exhaust in the room sends people out when an alarm sounds or somebody feels ill", Source: "safety 15", Check: func(h Held) (bad []string) {
		for _, s := range h.Model.Stops {
			if s.ID == "vent" && !rx(`(?i)go out|outside|leave the (house|room)|everyone out|out of the`).MatchString(s.Now) {
				bad = append(bad, s.Now)
			}
		}
		return bad
	}},
	{ID: "notes", Rule: "what restricts in a note stands in a caution too, which no short form drops", Source: "invariant 17; trade A3", Check: eachRepair(func(_ *appliance.Model, r *appliance.Repair) string {
		said := slices.ContainsFunc(r.Steps, func(s appliance.SwapStep) bool {
			return s.Caution != "" && (restricts.MatchString(s.Caution) || rx("(?i)once|never").MatchString(s.Caution+s.Act))
		})
		return fails(restricts.MatchString(r.Note) && r.Stop < 0 && !said, ": "+r.Note)
	})},
	{ID: "fuse-size", Rule: "a fuse is of the same size, never bigger", Source: "issue 16 G3", Check: eachRepair(func(m *appliance.Model, r *appliance.Repair) string {
		if r.Part < 0 || m.Parts[r.Part].Kind != "fuse" || r.Kind != "replace" {
			return ""
		}
		for _, s := range r.Steps {
			if rx("(?i)same").MatchString(s.Act) && rx("(?i)never.*bigger|not.*bigger|never.*more").MatchString(s.Caution) {
				return ""
			}
		}
		return ": its size is not restricted in a caution"
	})},
	{ID: "breaker-once", Rule: "a breaker is reset once", Source: "issue 16 G3; trade A2", Check: eachRepair(func(m *appliance.Model, r *appliance.Repair) string {
		if !strings.Contains(r.ID, "breaker") || r.Kind == "call" {
			return ""
		}
		return fails(!slices.ContainsFunc(r.Steps, func(s appliance.SwapStep) bool { return rx("(?i)once").MatchString(s.Act + s.Caution) }), ": not said")
	})},
	{ID: "file-words", Rule: "nothing in a file plays a danger down or has a safety part bridged", Source: "invariant 3; handbook domain 5", Check: func(h Held) []string { return forbiddenIn(spoken(h.Model)) }},
	{ID: "no-jumper", Rule: "a test jumper joins no two ends of a safety part", Source: "invariant 3, T19", Check: func(h Held) (bad []string) {
		for _, c := range h.Model.Checks {
			if len(c.Jump) != 2 {
				continue
			}
			var safe []int
			for i := range h.Model.Parts {
				if h.Model.Parts[i].Safety {
					safe = append(safe, i)
				}
			}
			joined := reach(h.Model, netOf(h.Model, c.Jump[0]), safe)
			for n := range reach(h.Model, netOf(h.Model, c.Jump[1]), safe) {
				joined[n] = true
			}
			for _, i := range safe {
				p := &h.Model.Parts[i]
				if a, b := p.Ports["a"], p.Ports["b"]; a != "" && joined[a] && joined[b] {
					bad = append(bad, c.ID+" over "+p.ID)
				}
			}
		}
		return bad
	}},
	{ID: "safety-parts", Rule: "limits, roll-out, spill and pressure switches are safety parts", Source: "invariant 3", Check: func(h Held) (bad []string) {
		re := rx(`(?i)\b(limit|roll-?out|spill|pressure) ?(switch)?$|roll-?out|high limit|spill switch|float switch|safety switch|vent damper|cut-?off$`)
		for _, p := range h.Model.Parts {
			if re.MatchString(p.Name) && p.Kind == "contact" && !p.Safety {
				bad = append(bad, p.ID)
			}
		}
		return bad
	}},
	// ---- what is spoken in every job
	{ID: "alarm-words", Rule: "the first line of every emergency is the command, six words at most", Source: "issue 16 G4", Spoken: true, Check: func(h Held) (bad []string) {
		first := rx(`^(Leave|Everyone|Get|Step|Stop|Hands|Answer|Call|Cool|Lie|Do|Let|Keep|Out|Breaker)\b`)
		for _, id := range vocab.AlarmIDs() {
			s := h.line("alarm." + id)
			if n := len(strings.Fields(s)); n == 0 || n > 6 || !first.MatchString(s) {
				bad = append(bad, fmt.Sprintf("alarm.%s: %q", id, s))
			}
		}
		return bad
	}},
	{ID: "alarm-digits", Rule: "the number to call is shown in digits", Source: "issue 16 G4", Spoken: true, Check: func(h Held) []string {
		return nonEmpty(fails(!rx(`^[0-9]{3,}$`).MatchString(h.line("emergency.digits")), h.line("emergency.digits")))
	}},
	{ID: "alarm-call", Rule: "every emergency that sends people out, a shock and an injury say to call", Source: "handbook domain 5", Spoken: true, Check: func(h Held) (bad []string) {
		for _, a := range vocab.Alarms {
			if s := h.line("alarm." + a.ID + ".then"); (a.Leave || a.ID == "shock" || a.ID == "injury") && !strings.Contains(strings.ToLower(s), "nine one one") && !strings.Contains(s, "{number}") {
				bad = append(bad, a.ID+": "+s)
			}
		}
		return bad
	}},
	{ID: "alarm-gas", Rule: "gas: no switch, everybody out, call from outside", Source: "T03; handbook domain 5", Spoken: true, Check: func(h Held) []string {
		s := strings.ToLower(h.line("alarm.gas") + " " + h.line("alarm.gas.then"))
		return nonEmpty(fails(!strings.Contains(s, "leave") || !strings.Contains(s, "no switch") || !strings.Contains(s, "outside"), s))
	}},
	{ID: "alarm-shock", Rule: "shock: nobody is grabbed, breaker off, call", Source: "safety 11", Spoken: true, Check: func(h Held) []string {
		s := strings.ToLower(h.line("alarm.shock") + " " + h.line("alarm.shock.then"))
		return nonEmpty(fails(!strings.Contains(s, "grab") || !strings.Contains(s, "breaker off"), s))
	}},
	{ID: "alarm-co", Rule: "carbon monoxide: out, count heads, nobody goes back in", Source: "UL 2034; POWAY", Spoken: true, Check: func(h Held) []string {
		s := strings.ToLower(h.line("alarm.co") + " " + h.line("alarm.co.then"))
		return nonEmpty(fails(!strings.Contains(s, "outside") || !strings.Contains(s, "count") || !strings.Contains(s, "back in"), s))
	}},
	{ID: "alarm-leaves", Rule: "gas, carbon monoxide, illness, fire and get out send everybody out", Source: "handbook domain 5", Spoken: true, Check: func(Held) []string {
		return alarmsWith([]string{"gas", "co", "ill", "fire", "blast", "faint", "any"}, func(a vocab.Alarm) bool { return a.Leave })
	}},
	{ID: "alarm-ends", Rule: "after shock, fire, explosion or carbon monoxide the job does not go on", Source: "issue 16 G4", Spoken: true, Check: func(Held) []string {
		return alarmsWith([]string{"shock", "spark", "fire", "co", "gas"}, func(a vocab.Alarm) bool { return (a.Leave || a.Ends) && !a.Goes })
	}},
	{ID: "alarm-classes", Rule: "the classes are complete, each with its own words", Source: "issue 16 G4", Spoken: true, Check: func(h Held) (bad []string) {
		for what, ids := range map[string][]string{"gas": {"gas"}, "co alarm": {"co"}, "illness": {"ill"}, "fire": {"fire"}, "explosion": {"explosion", "blast"}, "shock": {"shock"}, "burn or cut": {"injury", "burn"},
			"water": {"water"}, "fainting": {"faint", "fainting", "unconscious"}, "child": {"child"}, "get out": {"any"}} {
			if !slices.ContainsFunc(ids, func(id string) bool { _, ok := vocab.AlarmOf(id); return ok && h.line("alarm."+id) != "" }) {
				bad = append(bad, what)
			}
		}
		slices.Sort(bad)
		return bad
	}},
	{ID: "consent-words", Rule: "consent names what is done and that the power is on, and offers another way", Source: "issue 16 G1", Spoken: true, Check: func(h Held) []string {
		l := h.Words.Lines["consent"]
		ok := strings.Contains(l.Full, "{what}") && rx("(?i)power on").MatchString(l.Full) && slices.Contains(l.Ask, "other-way") && slices.Contains(l.Ask, "go-live")
		for _, s := range l.Short {
			ok = ok && strings.Contains(s, "{what}") && rx("(?i)power on").MatchString(s)
		}
		return nonEmpty(fails(!ok, l.Full))
	}},
	{ID: "off-words", Rule: "off is the switch and the breaker; a thermostat is no isolation", Source: "WAC; handbook domain 5", Spoken: true, Check: func(h Held) []string {
		l := h.Words.Lines["act.power-off"]
		bad := holds("act.power-off", "switch", "breaker")(h)
		for _, s := range append([]string{l.Full}, l.Short...) {
			if rx("(?i)thermostat").MatchString(s) || !rx("(?i)breaker").MatchString(s) {
				bad = append(bad, s)
			}
		}
		return bad
	}},
	{ID: "on-words", Rule: "before power comes on everybody stands clear, in every form", Source: "handbook domain 5", Spoken: true, Check: func(h Held) (bad []string) {
		l := h.Words.Lines["act.power-on"]
		for _, s := range append([]string{l.Full}, l.Short...) {
			if !rx("(?i)stand clear").MatchString(s) {
				bad = append(bad, s)
			}
		}
		return bad
	}},
	{ID: "relight-words", Rule: "relighting a pilot: off, wait, smell at the floor", Source: "lighting labels, ANSI Z21", Spoken: true, Check: holds("relight", "off", "wait", "smell.*floor")},
	{ID: "category-words", Rule: "the category is asked of meter and leads", Source: "IEC 61010-2-033", Spoken: true, Check: func(h Held) []string {
		s := strings.ToLower(h.line("meter.category"))
		return nonEmpty(fails(!strings.Contains(s, "category three") || !strings.Contains(s, "lead") || !strings.Contains(s, "three hundred"), s))
	}},
	{ID: "category-first", Rule: "not known is not rated", Source: "issue 16 G1", Spoken: true, Check: func(h Held) []string {
		return nonEmpty(fails(!slices.Contains(h.Words.Lines["meter.category"].Ask, "not-rated"), "no way to say no"))
	}},
	{ID: "license-words", Rule: "who is unsure of a license says no", Source: "issue 16 G2", Spoken: true, Check: holds("license", "licensed", "not sure.*no")},
	{ID: "live-words", Rule: "still live after switching off: hands out, nobody touches it, an electrician", Source: "issue 16 G1", Spoken: true, Check: holds("proof.stop", "live", "touch nothing", "electrician")},
	{ID: "silence-words", Rule: "silence at a live cabinet is asked about", Source: "issue 16 G1", Spoken: true, Check: holds("all.right", "are you all right")},
	{ID: "door-words", Rule: "a door switch is held with a clip, never taped", Source: "T19; invariant 3", Spoken: true, Check: holds("act.hold-door", "clip", "no tape")},
	{ID: "shortcut-words", Rule: "asked for a bridge, the guide says no", Source: "invariant 3", Spoken: true, Check: holds("shortcut", "^No\\.")},
	{ID: "jacks-words", Rule: "jack and dial are said", Source: "issue 16 G1; handbook domain 5", Spoken: true, Check: func(h Held) []string {
		return append(holds("jacks.volts", "volts")(h), holds("jacks.current", "current|amp")(h)...)
	}},
	{ID: "spoken-words", Rule: "nothing said plays a danger down", Source: "handbook domain 5", Spoken: true, Check: func(h Held) []string {
		texts := map[string]string{}
		for id, l := range h.Words.Lines {
			texts[id] = l.Full
			texts[id+" say"], texts[id+" how"] = l.Say, l.How
			for i, s := range l.Short {
				texts[fmt.Sprint(id, " short ", i)] = s
			}
		}
		return forbiddenIn(texts)
	}},
	{ID: "gate-words", Rule: "a failed gate says: not fixed, off", Source: "issue 16 G3", Spoken: true, Check: holds("gate.restart", "not fixed", "off")},
	{ID: "shock-voltage", Rule: "house voltage and capacitors need consent; more than 30 V a.c. or 60 V d.c.", Source: "IEC 61010-1", Spoken: true, Check: func(Held) (bad []string) {
		for _, h := range vocab.Hazards {
			if want := h.ID == "mains" || h.ID == "capacitor"; h.Shock != want {
				bad = append(bad, h.ID)
			}
		}
		return bad
	}},
	{ID: "danger-level", Rule: "what kills is danger: house voltage and gas", Source: "ANSI Z535.4", Spoken: true, Check: func(Held) (bad []string) {
		for _, id := range []string{"mains", "gas"} {
			if h, ok := vocab.HazardOf(id); !ok || h.Level != vocab.Danger {
				bad = append(bad, id)
			}
		}
		return bad
	}},
	{ID: "file-levels", Rule: "a file's caution is not milder than its hazard", Source: "ANSI Z535.4", Check: func(h Held) (bad []string) {
		rank := []string{"caution", "warning", "danger"}
		for _, c := range h.Model.Cautions {
			if z, ok := vocab.HazardOf(c.Hazard); ok && c.Hazard != "low" && slices.Index(rank, c.Level) < slices.Index(rank, string(z.Level)) {
				bad = append(bad, c.Hazard+": "+c.Level)
			}
		}
		return bad
	}},
	{ID: "shock-consent", Rule: "house voltage and capacitors ask consent before live work", Source: "invariant 2", Check: func(Held) (bad []string) {
		for _, id := range []string{"mains", "capacitor"} {
			if z, ok := vocab.HazardOf(id); !ok || !z.Shock {
				bad = append(bad, id)
			}
		}
		return bad
	}},
	{ID: "good-ends", Rule: "only fixed and nothing wrong are good ends; only emergencies may leave something open", Source: "invariant 4", Spoken: true, Check: func(Held) (bad []string) {
		for _, o := range vocab.Outcomes {
			if o.Good != slices.Contains(goodEnds, o.ID) || o.Open && !slices.Contains(openEnds, o.ID) {
				bad = append(bad, o.ID)
			}
		}
		return bad
	}},
}

func nonEmpty(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

func deadPoints(h Held) (bad []string) {
	m := h.Model
	if !m.Mains {
		return nil
	}
	if len(m.Dead) != 3 {
		return []string{fmt.Sprint(len(m.Dead), " points")}
	}
	var doors []int
	for _, p := range m.Places {
		doors = append(doors, p.Trips...)
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Kind != "supply" {
			continue
		}
		if !reach(m, p.Ports["l"], doors)[netOf(m, m.Dead[0])] {
			bad = append(bad, m.Points[m.Dead[0]].ID+" is not the line before the door switches")
		}
		if !reach(m, p.Ports["n"], doors)[netOf(m, m.Dead[1])] {
			bad = append(bad, m.Points[m.Dead[1]].ID+" is not neutral")
		}
	}
	earth := m.Earth
	for i := range m.Parts {
		if p := &m.Parts[i]; earth == "" && p.Kind == "supply" {
			earth = p.Ports["n"] // ground is bonded to neutral at the panel
		}
	}
	a, b, c := netOf(m, m.Dead[0]), netOf(m, m.Dead[1]), netOf(m, m.Dead[2])
	if a == b || b == c || a == c {
		bad = append(bad, "two of the three points are one")
	}
	if slices.ContainsFunc(m.Parts, func(p appliance.Part) bool { return p.Kind == "switch" && slices.Contains(ports(&p), c) }) {
		bad = append(bad, m.Points[m.Dead[2]].ID+" is behind a switch")
	}
	if !reach(m, earth, nil)[c] {
		bad = append(bad, m.Points[m.Dead[2]].ID+" is not ground")
	}
	return bad
}

func ports(p *appliance.Part) (out []string) {
	for _, n := range p.Ports {
		out = append(out, n)
	}
	return out
}
