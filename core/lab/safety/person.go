package safety

import (
	"math/rand/v2"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
)

// person answers a job as people do: mostly well, sometimes anything. Hands are honest, so that what is physically so is known;
// the head is not: it forgets, doubts, takes back, falls silent, raises false alarms and comes back the next day.
type person struct {
	r      *rand.Rand
	model  *appliance.Model
	house  *house
	good   float64 // share of helpful answers
	well   float64 // share of looks and readings that are as hoped for
	checks map[string]int
	wake   int64
	quiet  int // wakings still to be slept through
	zero   bool
}

func newPerson(r *rand.Rand, m *appliance.Model, h *house) *person {
	p := &person{r: r, model: m, house: h, good: []float64{0.97, 0.9, 0.75, 0.5}[r.IntN(4)], well: []float64{0.95, 0.7, 0.3}[r.IntN(3)], checks: map[string]int{}}
	for i := range m.Checks {
		p.checks[m.Checks[i].ID] = i
	}
	return p
}

func meaning(source string, xs ...utterance.Meaning) protocol.Event {
	text := xs[0].ID + xs[0].Text
	return protocol.Event{Type: protocol.EvSaid, Said: &utterance.Utterance{Source: source, Text: text, Meanings: xs}}
}

func (p *person) source() string { return []string{"voice", "touch", "key", "line"}[p.r.IntN(4)] }

func pick[T any](r *rand.Rand, xs ...T) T { return xs[r.IntN(len(xs))] }

func numberOf(digits, u string) utterance.Meaning {
	return utterance.Meaning{Kind: utterance.Reading, Reading: &measure.Reading{Value: unit.Of(digits, u)}}
}

func command(id string) utterance.Meaning { return utterance.Meaning{Kind: utterance.Command, ID: id} }

func choice(id string) utterance.Meaning { return utterance.Meaning{Kind: utterance.Choice, ID: id} }

// next is what the person does now, and how many ms later.
func (p *person) next(v *protocol.View) (ev protocol.Event, after int64) {
	r := p.r
	after = int64(500 + r.IntN(8000))
	if p.quiet > 0 {
		p.quiet--
		return protocol.Event{Type: protocol.EvTick}, -1 // at the waking
	}
	if r.Float64() < p.good {
		if v.Step.Until > 0 && r.IntN(3) > 0 {
			return p.helpful(v), -2 // when the time is over
		}
		return p.helpful(v), after
	}
	switch r.IntN(24) {
	case 0, 1:
		return protocol.Event{Type: protocol.EvUndo}, after
	case 2:
		return protocol.Event{Type: protocol.EvUndo, Target: int64(1 + r.IntN(int(v.Seq)+2))}, after
	case 3:
		return protocol.Event{Type: protocol.EvResume}, pick(r, int64(1000), 130_000, 40*60_000, 20*3600_000)
	case 4:
		p.quiet = 1 + r.IntN(5)
		return protocol.Event{Type: protocol.EvTick}, -1
	case 5: // the clock jumps
		return p.helpful(v), pick(r, int64(200_000), 16*60_000, 7*3600_000, -3600_000)
	case 6:
		if r.IntN(3) > 0 {
			return meaning(p.source(), utterance.Meaning{Kind: utterance.Emergency, ID: pick(r, "ask", "child", "water", "injury")}), after
		}
		return meaning(p.source(), utterance.Meaning{Kind: utterance.Emergency, ID: pick(r, "gas", "co", "fire", "shock", "spark", "water", "injury", "child", "ill", "blast", "faint", "any", "ask")}), after
	case 7:
		x := utterance.Meaning{Kind: utterance.Emergency, ID: pick(r, "gas", "water", "spark", "fire"), Doubt: true}
		if n := len(v.Step.Answers); n > 0 {
			a := v.Step.Answers[r.IntN(n)]
			return meaning("voice", x, utterance.Meaning{Kind: a.Kind, ID: a.ID}), after
		}
		return meaning("voice", x), after
	case 8, 9, 10, 11:
		return meaning(p.source(), command(pick(r, vocab.CommandIDs()...))), after
	case 12, 13:
		return meaning(p.source(), command(pick(r, "cant-reach", "dont-know", "skip", "not-sure", "other-way", "hold-on", "it-changed", "scratch-that", "back", "finish", "false-alarm", "done", "ready"))), after
	case 14, 15:
		if n := len(v.Step.Answers); n > 0 {
			a := v.Step.Answers[r.IntN(n)]
			if act, _ := actOf(v.Step.ID); act == "" || a.Kind != utterance.Choice {
				return meaning(p.source(), utterance.Meaning{Kind: a.Kind, ID: a.ID}), after
			}
		}
		return meaning(p.source(), command("where")), after
	case 16: // a reading corrected in one breath
		x := numberOf(pick(r, "0.0", "119", "24.3", "3.1", "999", "0.4"), pick(r, "V", "mV", "ohm", "Mohm", "uA"))
		if act, _ := actOf(v.Step.ID); act != "" {
			return meaning(p.source(), command("repeat")), after
		}
		x.Repair = true
		return meaning(p.source(), x), after
	case 17: // two readings heard
		if act, _ := actOf(v.Step.ID); act != "" {
			return meaning("voice", command("why")), after
		}
		y := numberOf("50", "V")
		y.Cost = 1
		return meaning("voice", numberOf("15", "V"), y), after
	case 18:
		return meaning(p.source(), choice(pick(r, "no", "different", "right-value", "yes", "safe-outside", "okay-now", "leave-now"))), after
	case 19:
		return protocol.Event{Type: protocol.EvSaid, Said: &utterance.Utterance{Text: "mumble", Source: "voice", Fault: "unknown"}}, after
	case 20:
		return protocol.Event{Type: protocol.EvDevice, Device: &protocol.Device{Kind: pick(r, "battery", "noise", "call", "back", "speech-off", "mic-off", "eye-on", "eye-off"), Level: float64(r.IntN(60))}}, after
	case 21:
		return protocol.Event{Type: protocol.EvTick}, after
	case 22:
		return meaning(p.source(), utterance.Meaning{Kind: utterance.Count, Text: pick(r, "1", "3", "6", "12")}), after
	}
	seen := measure.Reading{Value: unit.Of(pick(r, "24.5", "0.0", "119"), "V")}
	seen.Value.Unit = "" // a camera sees digits
	return protocol.Event{Type: protocol.EvSeen, Seen: &protocol.Seen{Step: v.Step.ID, Kind: firstOf(v.Step.Eye, protocol.EyeMeter), Text: seen.Value.Dec.String(), P: 0.9, Reading: &seen}}, after
}

func firstOf(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// helpful does what is asked.
func (p *person) helpful(v *protocol.View) protocol.Event {
	r, s := p.r, &v.Step
	var choices []string
	for _, a := range s.Answers {
		if a.Kind == utterance.Choice {
			choices = append(choices, a.ID)
		}
	}
	if v.State == "emergency" {
		return meaning("touch", choice(pick(r, append(choices, "okay-now", "safe-outside")...)))
	}
	if s.ID == "right-now" {
		return meaning("touch", choice(pick(r, "none", "none", "none", "leave-now")))
	}
	for _, a := range s.Answers {
		if a.Kind == utterance.UnitOnly {
			return meaning("touch", utterance.Meaning{Kind: a.Kind, ID: a.ID})
		}
	}
	if v.State == "hold" || s.Part == "A" {
		return meaning("touch", command("ready"))
	}
	if v.State == "confirm" && slices.Contains(choices, "right-value") {
		return meaning("touch", choice("right-value"))
	}
	act, _ := actOf(s.ID)
	switch {
	case strings.HasPrefix(s.ID, "plate."): // a false plate would move the limits that the book reckons with
		return meaning(p.source(), command("dont-know"))
	case slices.Contains(proofOrder, act):
		return meaning(p.source(), numberOf(p.house.read(act), "V"))
	case act == "prove-empty":
		return meaning(p.source(), numberOf(pick(r, "0.2", "0.3", "0.1", "42"), "V"))
	case s.ID == "consent":
		return meaning(p.source(), command(pick(r, "go-live", "go-live", "go-live", "other-way")))
	case len(s.Keypad) > 0:
		return meaning(pick(r, "touch", "voice", "touch"), p.number(s))
	}
	if i, ok := p.checks[s.ID]; ok && len(choices) > 0 {
		if r.Float64() < p.well || p.model.Checks[i].Stage == "safety" && r.IntN(20) > 0 {
			return meaning(p.source(), choice(p.model.Checks[i].Options[0].ID))
		}
		return meaning(p.source(), choice(pick(r, choices...)))
	}
	switch {
	case s.ID == "story":
		return meaning(p.source(), utterance.Meaning{Kind: utterance.Text, Text: "it hums and stops"})
	case s.ID == "decide":
		return meaning(p.source(), choice(pick(r, "fix-it", "fix-it", "fix-it", "call-someone")))
	case s.ID == "match":
		return meaning(p.source(), choice(pick(r, "same", "same", "same", "not-yet")))
	case s.ID == "cycle":
		if r.Float64() < p.well {
			return meaning(p.source(), choice(choices[0]))
		}
		return meaning(p.source(), choice(pick(r, choices...)))
	case s.ID == "license":
		return meaning(p.source(), choice(pick(r, "no", "no", "yes")))
	case s.ID == "meter.kind", s.ID == "meter.category", s.ID == "meter.leads":
		if r.IntN(12) > 0 {
			return meaning(p.source(), choice(choices[0]))
		}
		return meaning(p.source(), choice(pick(r, choices...)))
	case len(choices) > 0:
		return meaning(p.source(), choice(choices[0]))
	}
	return meaning(p.source(), command("done"))
}

// number is a reading of a check: inside its limit, or far outside of it.
func (p *person) number(s *protocol.StepView) utterance.Meaning {
	u := s.Keypad[0]
	switch s.ID {
	case "meter.short":
		return numberOf("0.3", "ohm")
	case "callout":
		return numberOf("120", u)
	case "age":
		return numberOf("8", u)
	}
	i, ok := p.checks[s.ID]
	if !ok {
		return numberOf("5", u)
	}
	c := &p.model.Checks[i]
	if p.r.IntN(20) == 0 {
		return utterance.Meaning{Kind: utterance.Reading, Reading: &measure.Reading{State: pick(p.r, measure.Over, measure.Beep, measure.Silent, measure.Blank, measure.Jumping)}}
	}
	x := 5.0
	if l := c.Limit; l != nil {
		switch {
		case l.Low != nil && l.High != nil:
			x = (*l.Low + *l.High) / 2
		case l.Low != nil:
			x = *l.Low * 1.5
		case l.High != nil:
			x = *l.High / 2
		}
		if p.r.Float64() > p.well {
			switch {
			case l.High != nil && (l.Low == nil || p.r.IntN(2) == 0):
				x = *l.High * 3
			case l.Low != nil:
				x = *l.Low / 4
			}
		}
	}
	return numberOf(decimal(x), c.Unit)
}
