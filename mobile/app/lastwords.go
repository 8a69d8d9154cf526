package app

import (
	"readback/core/protocol"
	"readback/core/utterance"
)

// lastWords are what is said and shown in an emergency when the machine, its data or the disk do not answer in time: they are part of
// the program and need nothing else. Source: the same as flows/prompts, in the words that hold whatever the state of the work.
var lastWords = map[string][2]string{
	"gas":    {"Leave now. Touch no switch.", "Take everyone with you. Call the gas company or 911 from far outside."},
	"co":     {"Everyone outside, now.", "It may be carbon monoxide. Call 911. Nobody goes back in."},
	"ill":    {"Everyone outside, now.", "The air may be bad. Call 911. Nobody goes back in."},
	"fire":   {"Get out. Take everyone along.", "Close the doors behind you. Call 911 from outside."},
	"any":    {"Get out. Take everyone along.", "Call 911 from outside. Say what happened."},
	"shock":  {"Step back. Touch nothing.", "Do not grab anyone who is stuck. Turn the breaker off. Call 911, even if you feel fine."},
	"spark":  {"Step back. Do not start it again.", "Switch off only if the switch is on your way out."},
	"water":  {"Stop. Stay off the wet floor.", "Turn the breaker off, with dry feet only."},
	"injury": {"Hands out. Help yourself first.", "Call 911 if it is bad."},
	"child":  {"Hands out. Keep them away.", "Make sure that nobody can reach the unit."},
	"ask":    {"If there is danger now, leave, and call 911 from outside.", "Gas, smoke, an alarm, or feeling ill: everyone goes out first."},
}

// lastEffects are the effects of an emergency without a machine.
func lastEffects(job, class string) []protocol.Effect {
	words, ok := lastWords[class]
	if !ok {
		words = lastWords["any"]
	}
	view := &protocol.View{Job: job, Stage: "emergency", State: "emergency", Said: words[0] + " " + words[1],
		Site: protocol.SiteView{Power: "unknown", Gas: "unknown"},
		Step: protocol.StepView{ID: "emergency", Kind: "act", Level: "danger", Act: words[0], Say: words[1], Caution: words[1],
			Answers: []protocol.Answer{{ID: "false-alarm", Kind: utterance.Command, Text: "False alarm"}}}}
	return []protocol.Effect{
		{Type: protocol.DoHush},
		{Type: protocol.DoCue, ID: "danger"},
		{Type: protocol.DoSay, ID: ownSaying + "alarm-1", Text: words[0], Level: "emergency"},
		{Type: protocol.DoSay, ID: ownSaying + "alarm-2", Text: words[1], Level: "emergency"},
		{Type: protocol.DoShow, View: view},
	}
}

// LastEffects are what an emergency of a class comes to without a machine.
func LastEffects(class string) []protocol.Effect { return lastEffects("", class) }

// LastWords are the texts of every class, for a host that wants their sound ready before anything goes wrong.
func LastWords() (texts []string) {
	seen := map[string]bool{}
	for _, w := range lastWords {
		for _, s := range w {
			if !seen[s] {
				seen[s] = true
				texts = append(texts, s)
			}
		}
	}
	return texts
}
