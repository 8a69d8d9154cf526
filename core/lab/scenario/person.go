// Package sim is a simulated person in front of a simulated appliance, for tests, demonstrations and figures.
//
// The person knows nothing but what the view asks for, and has habits: misreads, lets a lead slip, will not work live,
// says what is expected. The appliance may have any faults; a repair that is walked to its end takes its fault away.
package scenario

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
)

// Chance gives numbers in [0,1). It comes in as a value, so that a run is repeatable.
type Chance interface{ Float64() float64 }

// Seen is what a faultless person sees at a check: an option, or a display.
type Seen struct {
	Option int           // index into the check's options, -1 for a reading
	Value  float64       // in the check's unit
	State  measure.State // of the display
}

// Sight looks at the appliance with these modes present (indices into the model's modes).
type Sight func(modes []int, check int) Seen

// Habits of a person. The zero value never errs and does all that is asked.
type Habits struct {
	RefusesLive bool
	Misreads    float64 // chance that a number is read wrongly by one digit, or a look is answered with a neighbour
	LeadSlips   float64 // chance that a lead does not touch: zero, or over-range on ohms
	DontKnow    float64 // chance of "don't know" to a look, of "can't reach" to a measurement
	Noise       float64 // relative spread of what is read, one standard deviation
}

// Person answers the steps of a view.
type Person struct {
	Model  *appliance.Model
	See    Sight
	Modes  []int // what is wrong now
	Habits Habits
	Chance Chance // nil for a person who never errs
	Source string // how answers come; empty: "line"
	// Says answers steps by their id instead of what is seen: an option id, "cmd:" and a command id, a value such as
	// "26.1 V", or words. The answers are used in turn and the last one stays.
	Says map[string][]string

	Mended []string // ids of repairs carried out, in order

	used   map[string]int
	labels map[string]string // of the answers to the question that was answered last
	last   utterance.Meaning
}

// Reply is what the person says to this view. An empty utterance means silence.
func (p *Person) Reply(v *protocol.View) (utterance.Utterance, error) {
	st := &v.Step
	if v.State == "confirm" && st.Kind != "consent" && st.ID != "right-now" {
		return p.say(p.confirm(v)), nil
	}
	if v.State != "confirm" {
		p.labels = map[string]string{}
		for _, a := range st.Answers {
			p.labels[a.ID] = a.Text
		}
	}
	p.noteRepair(st.ID)
	if list := p.Says[st.ID]; len(list) > 0 {
		if p.used == nil {
			p.used = map[string]int{}
		}
		n := min(p.used[st.ID], len(list)-1)
		p.used[st.ID]++
		if w := list[n]; w == "silence:" {
			return utterance.Utterance{}, nil
		} else if w != "" {
			m, err := Meaning(w)
			if err != nil {
				return utterance.Utterance{}, fmt.Errorf("sim: answer to %s: %w", st.ID, err)
			}
			return p.say(m), nil
		}
	}
	if c := slices.IndexFunc(p.Model.Checks, func(c appliance.Check) bool { return c.ID == st.ID }); c >= 0 {
		if st.Part == "A" { // get in place first
			return p.say(command("ready")), nil
		}
		return p.say(p.check(c)), nil
	}
	m, err := p.step(v)
	return p.say(m), err
}

// noteRepair takes a fault away when the last step of its repair is asked for: the person does it and says so.
func (p *Person) noteRepair(id string) {
	for i := range p.Model.Repairs {
		r := &p.Model.Repairs[i]
		n, ok := strings.CutPrefix(id, r.ID+".")
		if !ok || n != fmt.Sprint(len(r.Steps)) {
			continue
		}
		p.Modes = slices.DeleteFunc(slices.Clone(p.Modes), func(m int) bool { return p.Model.Modes[m].Repair == i })
		if len(p.Mended) == 0 || p.Mended[len(p.Mended)-1] != r.ID {
			p.Mended = append(p.Mended, r.ID)
		}
	}
}

func command(id string) utterance.Meaning { return utterance.Meaning{Kind: utterance.Command, ID: id} }
func choice(id string) utterance.Meaning  { return utterance.Meaning{Kind: utterance.Choice, ID: id} }

func (p *Person) say(m utterance.Meaning) utterance.Utterance {
	p.last = m
	source := p.Source
	if source == "" {
		source = "line"
	}
	u := utterance.Utterance{Source: source, Meanings: []utterance.Meaning{m}, Text: Words(m)}
	return u
}

// Words writes a meaning for the record.
func Words(m utterance.Meaning) string {
	switch {
	case m.Reading != nil && m.Reading.State != measure.Number:
		return string(m.Reading.State)
	case m.Reading != nil:
		return m.Reading.Value.String()
	case m.Text != "":
		return m.Text
	}
	return strings.ReplaceAll(m.ID, "-", " ")
}

// Meaning reads a written answer: "cmd:where", "choice:silent", "26.1 V", "over", "3 blinks" as "count:3", "text:words", "alarm:gas", or an option id.
func Meaning(w string) (utterance.Meaning, error) {
	kind, rest, ok := strings.Cut(w, ":")
	switch {
	case ok && kind == "choice": // an option that is called like a state of the display
		return choice(rest), nil
	case ok && kind == "cmd":
		return command(rest), nil
	case ok && kind == "count":
		return utterance.Meaning{Kind: utterance.Count, Text: rest}, nil
	case ok && kind == "text":
		return utterance.Meaning{Kind: utterance.Text, Text: rest}, nil
	case ok && kind == "alarm":
		return utterance.Meaning{Kind: utterance.Emergency, ID: rest}, nil
	case ok && kind == "doubt":
		return utterance.Meaning{Kind: utterance.Emergency, ID: rest, Doubt: true}, nil
	case ok:
		return utterance.Meaning{}, fmt.Errorf("no kind %q in %q", kind, w)
	}
	for _, s := range []measure.State{measure.Over, measure.Beep, measure.Silent, measure.Blank, measure.Dead} {
		if w == string(s) {
			return utterance.Meaning{Kind: utterance.Reading, Reading: &measure.Reading{State: s}}, nil
		}
	}
	if strings.Contains(w, " ") {
		v, err := unit.ParseValue(w)
		if err != nil {
			return utterance.Meaning{}, err
		}
		return reading(v), nil
	}
	return choice(w), nil
}

func reading(v unit.Value) utterance.Meaning {
	return utterance.Meaning{Kind: utterance.Reading, Reading: &measure.Reading{Value: v}}
}

// confirm answers "right, or different?": the person knows what the display shows.
func (p *Person) confirm(v *protocol.View) utterance.Meaning {
	if slices.ContainsFunc(v.Step.Answers, func(a protocol.Answer) bool { return a.ID == "right-value" }) {
		return choice("right-value")
	}
	return p.last
}

// check answers a check of the equipment file.
func (p *Person) check(c int) utterance.Meaning {
	ck := &p.Model.Checks[c]
	if p.errs(p.Habits.DontKnow) {
		if len(ck.Options) > 0 {
			return command("dont-know")
		}
		return command("cant-reach")
	}
	s := p.See(p.Modes, c)
	if s.Option < 0 && len(ck.Options) > 0 { // none of the named states is there to be seen
		return command("dont-know")
	}
	if s.Option >= 0 {
		k := s.Option
		if len(ck.Options) > 1 && ck.Stage != "safety" && p.errs(p.Habits.Misreads) {
			k = (k + 1) % len(ck.Options)
		}
		if n := ck.Options[k].ID; n != "" && strings.Trim(n, "0123456789") == "" {
			return utterance.Meaning{Kind: utterance.Count, Text: n}
		}
		return choice(ck.Options[k].ID)
	}
	if s.State != measure.Number {
		return utterance.Meaning{Kind: utterance.Reading, Reading: &measure.Reading{State: s.State}}
	}
	x := s.Value
	if p.errs(p.Habits.LeadSlips) {
		if ck.Function == measure.Ohms || ck.Function == measure.Continuity {
			return utterance.Meaning{Kind: utterance.Reading, Reading: &measure.Reading{State: measure.Over}}
		}
		x = 0
	}
	if p.Habits.Noise > 0 && p.Chance != nil {
		x *= 1 + p.Habits.Noise*(p.Chance.Float64()+p.Chance.Float64()+p.Chance.Float64()-1.5)*2
	}
	d := Display(x)
	if ck.Function == measure.Thermometer { // shows tenths
		d = unit.Decimal{Mant: int64(math.Round(10 * x)), Exp: -1}
	}
	if p.errs(p.Habits.Misreads) {
		d.Mant += int64(math.Pow(10, math.Floor(p.Chance.Float64()*3))) * (1 - 2*int64(p.Chance.Float64()*2))
	}
	r := reading(unit.Value{Dec: d, Unit: ck.Unit})
	switch ck.Function {
	case measure.VoltsAC, measure.AmpsAC:
		r.Reading.AC = "ac"
	case measure.VoltsDC, measure.MillivoltDC, measure.MicroampsDC:
		r.Reading.AC = "dc"
	}
	return r
}

func (p *Person) errs(chance float64) bool {
	return chance > 0 && p.Chance != nil && p.Chance.Float64() < chance
}

// Display rounds a value as a meter with 6,000 counts and automatic ranges shows it, with at most two decimals.
func Display(x float64) unit.Decimal {
	exp := -2
	for exp < 0 && math.Abs(x)*math.Pow(10, float64(-exp)) >= 6000 {
		exp++
	}
	return unit.Decimal{Mant: int64(math.Round(x * math.Pow(10, float64(-exp)))), Exp: exp}
}

// step answers what is not a check: acts, consent, the story, the plate, money, the swap, the cycles.
func (p *Person) step(v *protocol.View) (utterance.Meaning, error) {
	st := &v.Step
	kind, _, _ := strings.Cut(st.ID, ".")
	switch {
	case st.ID == "right-now": // an emergency that was misheard
		return choice("none"), nil
	case st.Kind == "consent":
		if p.Habits.RefusesLive {
			return choice("other-way"), nil
		}
		return choice("go-live"), nil
	case kind == "act" && strings.HasPrefix(st.ID, "act.prove"):
		if st.ID == "act.prove-live" || st.ID == "act.prove-again" {
			return reading(unit.Of("119.4", "V")), nil
		}
		return reading(unit.Of("0.0", "V")), nil
	case kind == "story":
		return utterance.Meaning{Kind: utterance.Text, Text: "no heat since last night"}, nil
	case kind == "plate":
		for i := range p.Model.Plate { // a label of one part says what the file reckons with
			if f := &p.Model.Plate[i]; "plate."+f.ID == st.ID && f.Late() {
				return reading(unit.Value{Dec: Display(f.Usual.Nominal), Unit: f.Usual.Unit}), nil
			}
		}
		return command("dont-know"), nil
	case st.ID == "meter.short":
		return reading(unit.Of("0.2", "ohm")), nil
	case kind == "callout":
		return reading(unit.Of("140", "money")), nil
	case kind == "age":
		return reading(unit.Of("12", "yr")), nil
	case st.ID == "cycle", strings.HasPrefix(st.ID, "cycle"):
		good := st.Answers[0].ID
		if len(p.Modes) == 0 {
			return choice(good), nil
		}
		return p.other(st, good)
	}
	for _, a := range st.Answers {
		if a.Kind == utterance.Choice {
			return choice(a.ID), nil
		}
	}
	for _, a := range st.Answers {
		if a.ID == "ready" || a.ID == "done" {
			return command(a.ID), nil
		}
	}
	if len(st.Answers) == 0 {
		return utterance.Meaning{}, fmt.Errorf("sim: step %q (%s) has no answer", st.ID, st.Kind)
	}
	return command("done"), nil
}

// other is the first answer that is not the one named.
func (p *Person) other(st *protocol.StepView, not string) (utterance.Meaning, error) {
	for _, a := range st.Answers {
		if a.Kind == utterance.Choice && a.ID != not {
			return choice(a.ID), nil
		}
	}
	return utterance.Meaning{}, fmt.Errorf("sim: step %q has no answer but %q", st.ID, not)
}
