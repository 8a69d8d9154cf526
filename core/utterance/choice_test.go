package utterance_test

import (
	"testing"

	"readback/core/utterance"
)

func TestDecideChoice(t *testing.T) {
	opt := func(cost float64, id string) utterance.Meaning {
		return utterance.Meaning{Kind: utterance.Choice, ID: id, Cost: cost}
	}
	cmd := func(cost float64, id string) utterance.Meaning {
		return utterance.Meaning{Kind: utterance.Command, ID: id, Cost: cost}
	}
	count := func(cost float64, n string) utterance.Meaning {
		return utterance.Meaning{Kind: utterance.Count, Text: n, Cost: cost}
	}
	doubt := func(m utterance.Meaning) utterance.Meaning { m.Doubt = true; return m }
	safe := utterance.ChoiceSlot{Clears: func(m utterance.Meaning) bool { return m.ID == "none" }}
	type list = []utterance.Meaning
	for _, tt := range []struct {
		name        string
		slot        utterance.ChoiceSlot
		source      string
		snr         float64
		fits        list
		want        utterance.Action
		take, rival string
	}{
		{"clear", utterance.ChoiceSlot{}, "voice", 30, list{opt(0, "good")}, utterance.Accept, "good", ""},
		{"near rival", utterance.ChoiceSlot{}, "voice", 30, list{opt(0, "blue"), opt(2, "none")}, utterance.AskTwo, "blue", "none"},
		{"rival far behind", utterance.ChoiceSlot{}, "voice", 30, list{opt(0, "blue"), opt(3.5, "none")}, utterance.Accept, "blue", ""},
		{"the same answer twice is no rival", utterance.ChoiceSlot{}, "voice", 30, list{opt(0, "blue"), opt(1, "blue")}, utterance.Accept, "blue", ""},
		{"by touch", utterance.ChoiceSlot{}, "touch", 0, list{opt(0, "blue"), opt(0, "none")}, utterance.Accept, "blue", ""},
		{"found by looking for it", utterance.ChoiceSlot{}, "voice", 30, list{opt(5, "good")}, utterance.Confirm, "good", ""},
		{"found so, and a rival within a wider margin", utterance.ChoiceSlot{}, "voice", 30, list{opt(1.9, "on"), opt(6.1, "off")}, utterance.AskTwo, "on", "off"},
		{"clears a hazard, clearly", safe, "voice", 30, list{opt(0, "none")}, utterance.Accept, "none", ""},
		{"clears a hazard, found by looking", safe, "voice", 30, list{opt(1, "none")}, utterance.Confirm, "none", ""},
		{"clears a hazard, loud", safe, "voice", 3, list{opt(0, "none")}, utterance.Confirm, "none", ""},
		{"clears a hazard, rival that does not", safe, "voice", 30, list{opt(0, "none"), opt(5, "some")}, utterance.AskTwo, "none", "some"},
		{"a count or an answer", utterance.ChoiceSlot{}, "voice", 30, list{count(0, "1"), opt(1, "off")}, utterance.AskTwo, "1", "off"},
		{"a question costs a sentence only", utterance.ChoiceSlot{}, "voice", 30, list{cmd(0, "why"), opt(1, "quiet")}, utterance.Accept, "why", ""},
		{"the same question again", utterance.ChoiceSlot{Told: "why"}, "voice", 30, list{cmd(0, "why"), opt(1, "quiet")}, utterance.Confirm, "quiet", "why"},
		{"a command that ends the question", utterance.ChoiceSlot{}, "voice", 30, list{cmd(0, "dont-know"), opt(1, "no-click")}, utterance.AskTwo, "no-click", "dont-know"},
		{"alone it is taken", utterance.ChoiceSlot{}, "voice", 30, list{cmd(0, "dont-know")}, utterance.Accept, "dont-know", ""},
		{"an answer near which something changed", utterance.ChoiceSlot{}, "voice", 30, list{opt(0, "done"), cmd(0.5, "it-changed")}, utterance.AskTwo, "done", "it-changed"},
		{"a question behind an answer", utterance.ChoiceSlot{}, "voice", 30, list{opt(0, "done"), cmd(0.5, "why")}, utterance.Accept, "done", ""},
		{"one of two that were named", utterance.ChoiceSlot{Named: list{opt(0, "blue"), opt(2, "none")}}, "voice", 30, list{opt(0, "blue")}, utterance.Accept, "blue", ""},
		{"it sounds like both again", utterance.ChoiceSlot{Named: list{opt(0, "blue"), opt(2, "none")}}, "voice", 30, list{opt(0, "blue"), opt(1, "none")}, utterance.Confirm, "blue", "none"},
		{"an answer found among other words", utterance.ChoiceSlot{}, "voice", 30, list{doubt(opt(0, "good"))}, utterance.Confirm, "good", ""},
		{"a command that ends the question, among other words", utterance.ChoiceSlot{}, "voice", 30, list{doubt(cmd(0, "finish"))}, utterance.Confirm, "finish", ""},
		{"typed, among other words", utterance.ChoiceSlot{}, "key", 0, list{doubt(cmd(0, "why"))}, utterance.Confirm, "why", ""},
	} {
		d := utterance.DecideChoice(&utterance.Utterance{Source: tt.source, SNR: tt.snr}, tt.fits, tt.slot)
		if name := d.Take.ID + d.Take.Text; d.Action != tt.want || name != tt.take || d.Rival.ID != tt.rival {
			t.Errorf("%s: %s %q, rival %q; want %s %q, %q", tt.name, d.Action, name, d.Rival.ID, tt.want, tt.take, tt.rival)
		}
	}
}
