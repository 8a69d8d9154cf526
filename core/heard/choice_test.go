package heard_test

import (
	"testing"

	"readback/core/heard"
)

func TestDecideChoice(t *testing.T) {
	opt := func(cost float64, id string) heard.Meaning {
		return heard.Meaning{Kind: heard.Choice, ID: id, Cost: cost}
	}
	cmd := func(cost float64, id string) heard.Meaning {
		return heard.Meaning{Kind: heard.Command, ID: id, Cost: cost}
	}
	count := func(cost float64, n string) heard.Meaning {
		return heard.Meaning{Kind: heard.Count, Text: n, Cost: cost}
	}
	safe := heard.ChoiceSlot{Clears: func(m heard.Meaning) bool { return m.ID == "none" }}
	type list = []heard.Meaning
	for _, tt := range []struct {
		name        string
		slot        heard.ChoiceSlot
		source      string
		snr         float64
		fits        list
		want        heard.Action
		take, rival string
	}{
		{"clear", heard.ChoiceSlot{}, "voice", 30, list{opt(0, "good")}, heard.Accept, "good", ""},
		{"near rival", heard.ChoiceSlot{}, "voice", 30, list{opt(0, "blue"), opt(2, "none")}, heard.AskTwo, "blue", "none"},
		{"rival far behind", heard.ChoiceSlot{}, "voice", 30, list{opt(0, "blue"), opt(3.5, "none")}, heard.Accept, "blue", ""},
		{"the same answer twice is no rival", heard.ChoiceSlot{}, "voice", 30, list{opt(0, "blue"), opt(1, "blue")}, heard.Accept, "blue", ""},
		{"by touch", heard.ChoiceSlot{}, "touch", 0, list{opt(0, "blue"), opt(0, "none")}, heard.Accept, "blue", ""},
		{"found by looking for it", heard.ChoiceSlot{}, "voice", 30, list{opt(5, "good")}, heard.Confirm, "good", ""},
		{"found so, and a rival within a wider margin", heard.ChoiceSlot{}, "voice", 30, list{opt(1.9, "on"), opt(6.1, "off")}, heard.AskTwo, "on", "off"},
		{"clears a hazard, clearly", safe, "voice", 30, list{opt(0, "none")}, heard.Accept, "none", ""},
		{"clears a hazard, found by looking", safe, "voice", 30, list{opt(1, "none")}, heard.Confirm, "none", ""},
		{"clears a hazard, loud", safe, "voice", 3, list{opt(0, "none")}, heard.Confirm, "none", ""},
		{"clears a hazard, rival that does not", safe, "voice", 30, list{opt(0, "none"), opt(5, "some")}, heard.AskTwo, "none", "some"},
		{"a count or an answer", heard.ChoiceSlot{}, "voice", 30, list{count(0, "1"), opt(1, "off")}, heard.AskTwo, "1", "off"},
		{"a question costs a sentence only", heard.ChoiceSlot{}, "voice", 30, list{cmd(0, "why"), opt(1, "quiet")}, heard.Accept, "why", ""},
		{"the same question again", heard.ChoiceSlot{Told: "why"}, "voice", 30, list{cmd(0, "why"), opt(1, "quiet")}, heard.Confirm, "quiet", "why"},
		{"a command that ends the question", heard.ChoiceSlot{}, "voice", 30, list{cmd(0, "dont-know"), opt(1, "no-click")}, heard.AskTwo, "no-click", "dont-know"},
		{"alone it is taken", heard.ChoiceSlot{}, "voice", 30, list{cmd(0, "dont-know")}, heard.Accept, "dont-know", ""},
		{"an answer near which something changed", heard.ChoiceSlot{}, "voice", 30, list{opt(0, "done"), cmd(0.5, "it-changed")}, heard.AskTwo, "done", "it-changed"},
		{"a question behind an answer", heard.ChoiceSlot{}, "voice", 30, list{opt(0, "done"), cmd(0.5, "why")}, heard.Accept, "done", ""},
		{"one of two that were named", heard.ChoiceSlot{Named: list{opt(0, "blue"), opt(2, "none")}}, "voice", 30, list{opt(0, "blue")}, heard.Accept, "blue", ""},
		{"it sounds like both again", heard.ChoiceSlot{Named: list{opt(0, "blue"), opt(2, "none")}}, "voice", 30, list{opt(0, "blue"), opt(1, "none")}, heard.Confirm, "blue", "none"},
	} {
		d := heard.DecideChoice(&heard.Utterance{Source: tt.source, SNR: tt.snr}, tt.fits, tt.slot)
		if name := d.Take.ID + d.Take.Text; d.Action != tt.want || name != tt.take || d.Rival.ID != tt.rival {
			t.Errorf("%s: %s %q, rival %q; want %s %q, %q", tt.name, d.Action, name, d.Rival.ID, tt.want, tt.take, tt.rival)
		}
	}
}
