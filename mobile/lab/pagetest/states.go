// Package pagetest holds the browser tests of the page, and the twelve states they look at.
package pagetest

import (
	"fmt"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
)

func ptr(x float64) *float64 { return &x }

var stages = []string{"Safety", "The story", "The plate", "The status light", "The free causes", "Watch one start", "Prove the meter", "One check at a time",
	"Second evidence", "Why it failed", "What it costs", "The right part", "The swap", "Safe restart", "Refit", "The record"}

func choice(id, text string) protocol.Answer {
	return protocol.Answer{ID: id, Kind: utterance.Choice, Text: text}
}
func say(id, text string) protocol.Answer {
	return protocol.Answer{ID: id, Kind: utterance.Command, Text: text}
}

// States are twelve views that together use everything the page can show. Their texts are as long as texts get.
func States() []protocol.View {
	base := func(n int, state string, site protocol.SiteView, step protocol.StepView) protocol.View {
		return protocol.View{Job: "20261125-120000", Title: "Gas furnace with a draft fan", Stage: stages[n-1], StageNo: n, Stages: stages, State: state, Site: site, Step: step,
			Log: []protocol.LogLine{
				{Seq: 1, At: 1764070000000, Who: "guide", Text: "First, your nose: gas odour, or none?"},
				{Seq: 2, At: 1764070004000, Who: "person", Text: "None"},
				{Seq: 3, At: 1764070060000, Who: "site", Text: "Power is off and proved"},
			}}
	}
	on := protocol.SiteView{Power: "on", Since: 1764070000000, Gas: "on", Call: "on"}
	proved := protocol.SiteView{Power: "proved", Since: 1764070060000, Gas: "on", Covers: []string{"lower front panel"}, Wires: []string{"igniter plug"}, Dial: "ohms"}
	suspects := []protocol.Suspect{
		{Part: "igniter", Name: "igniter", P: 0.71, Words: "likely, 7 in 10"},
		{Part: "board", Name: "control board", P: 0.2, Words: "less likely, 3 in 10"},
		{Part: "unknown", Name: "something I do not know", P: 0.05, Words: "unlikely, 1 in 10"},
	}
	first := base(1, "ask", protocol.SiteView{Power: "unknown", Gas: "unknown"}, protocol.StepView{ID: "smell", Kind: "ask",
		Act: "Your nose first: gas odour, or none?", Say: "“odour” or “none”", Answers: []protocol.Answer{choice("odour", "Gas odour"), choice("none", "None")}})
	first.Said = "First, your nose: gas odour, or none?"
	live := base(8, "confirm", on, protocol.StepView{ID: "w-c", Kind: "consent", Level: "danger", Caution: "House voltage, live. One hand, dry floor.",
		Power: "on", Where: "Both slots of the outlet beside the furnace", Meter: "AC volts", Act: "Go live, or take the other way?", Say: "“go live” or “other way”",
		Answers: []protocol.Answer{say("go-live", "Go live"), say("other-way", "Other way")}})
	volts := base(8, "wait", on, protocol.StepView{ID: "r-c", Kind: "measure", Level: "warning", Caution: "The fan can start. Twenty-four volts, live.", Power: "on",
		Where: "Terminals W and C on the board, lower bay, right side", Meter: "AC volts", Act: "Red on W, black on C. Number and unit?", Say: "like “two six point one volts”",
		Points: []string{"board-w", "board-c"}, Parts: []string{"board"}, Place: "lower-bay", Keypad: []string{"V", "mV"}, Answers: []protocol.Answer{say("cant-reach", "Can’t reach"), say("jumping", "Jumping")}})
	taken := base(8, "wait", on, protocol.StepView{ID: "see-draft", Kind: "look", Level: "caution", Caution: "Sharp edges.", Power: "on", Where: "Through the upper opening, left of the gas valve",
		Act: "Does the draft fan run, hum, or stay silent?", Say: "“running”, “humming” or “silent”", Parts: []string{"inducer"}, Place: "upper-bay",
		Answers: []protocol.Answer{choice("running", "Running"), choice("humming", "Humming"), choice("silent", "Silent")}})
	taken.Heard = &protocol.HeardView{Text: "twenty, no, twenty six point one volts", Taken: "26.1 V AC", Rivals: []string{"twenty six point nine volts"}, Verdict: measure.Pass,
		Limit: "24 to 28 V unloaded (gas technician training text, unit 12)", Value: 26.1, U: 0.5, Low: ptr(24), High: ptr(28), Unit: "V"}
	taken.Why = &protocol.WhyView{Short: "It tells a weak draft from a bad switch.", More: []string{"Running leads to the hose and the switch. Humming leads to the motor and its capacitor.", "Silent leads to the board’s output."}, Cost: "About one minute, nothing to open."}
	taken.Suspects = suspects
	taken.Facts = []string{"No gas odour", "Thermostat calls for heat", "Status light: three blinks"}
	pending := base(8, "confirm", on, protocol.StepView{ID: "r-c", Kind: "confirm", Where: "Terminals W and C on the board", Meter: "AC volts", Act: "Fifteen, one five, volts. Or fifty?", Say: "“fifteen” or “fifty”",
		Answers: []protocol.Answer{choice("r0", "15 V"), choice("r1", "50 V")}, Keypad: []string{"V", "mV"}})
	pending.Heard = &protocol.HeardView{Text: "fifteen volts", Taken: "15 V", Rivals: []string{"fifty volts"}, Pending: true, Value: 15, Unit: "V"}
	ohms := base(9, "wait", proved, protocol.StepView{ID: "igniter-ohms", Kind: "measure", Level: "caution", Caution: "The igniter breaks at a touch.", Power: "off and proved", Where: "Igniter plug, two white wires, pulled apart",
		Meter: "ohms", Act: "One probe in each hole. Number and unit?", Say: "like “five five ohms”, or “O L”", Points: []string{"glow-a", "glow-b"}, Parts: []string{"igniter"}, Place: "burner-box", Keypad: []string{"ohm", "kohm", "Mohm"},
		Answers: []protocol.Answer{say("cant-reach", "Can’t reach"), say("dont-know", "Don’t know")}})
	ohms.Suspects, ohms.Open = suspects, []string{"Plug the igniter back in", "Lower front panel on", "Meter off ohms"}
	failed := ohms
	failed.Step.ID, failed.Step.Keypad, failed.Step.Kind, failed.Step.Points = "igniter-look", nil, "look", nil
	failed.Step.Act, failed.Step.Say, failed.Step.Meter = "Look along the grey element: cracked, or whole?", "“cracked” or “whole”", ""
	failed.Step.Answers = []protocol.Answer{choice("cracked", "Cracked"), choice("whole", "Whole"), say("dont-know", "Don’t know")}
	failed.Heard = &protocol.HeardView{Text: "o l", Taken: "OL: open", Verdict: measure.Fail, Limit: "40 to 90 Ω cold, silicon carbide (gas technician training text, unit 13)", Unit: "ohm"}
	hold := ohms
	hold.State, hold.Said = "hold", "Holding."
	act := base(13, "ask", proved, protocol.StepView{ID: "swap-3", Kind: "act", Level: "warning", Caution: "Hot for ten minutes after a burn.", Power: "off and proved", Where: "Igniter bracket, two screws",
		Act: "Take out the two screws, hold the bracket, pull it straight out.", Say: "“out”", Answers: []protocol.Answer{choice("out", "Out"), say("cant-reach", "Can’t reach"), say("how", "How?")}, Until: 1764070600000})
	act.Open = failed.Open
	off := base(8, "ask", protocol.SiteView{Power: "off", Since: 1764070050000, Gas: "off", Covers: []string{"lower front panel", "burner box cover"}, Jumpers: []string{"R to W at the board"}, Wires: []string{"W at the board", "igniter plug"},
		Door: "held", Dial: "microamps DC", Jack: true, Call: "on", Resets: []string{"roll-out switch"}}, protocol.StepView{ID: "jumper-out", Kind: "act", Level: "danger", Caution: "A jumper is in and the door switch is held.",
		Act: "First the jumper out. Then we pause.", Say: "“jumper out”", Answers: []protocol.Answer{choice("jumper-out", "Jumper out")}})
	off.Notice = "Speech is off: the model is missing. Run make speech once with a network; touch and keys do everything."
	alarm := base(8, "emergency", on, protocol.StepView{ID: "emergency-gas", Kind: "act", Level: "emergency", Caution: "A spark can light gas.", Act: "Leave now. Touch no switch.", Say: "Call from far outside: the gas company or 911.",
		Answers: []protocol.Answer{say("false-alarm", "False alarm")}})
	ended := base(16, "ended", protocol.SiteView{Power: "on", Since: 1764073000000, Gas: "on"}, protocol.StepView{ID: "end", Kind: "info", Act: "Heat is back. Everything is refitted."})
	ended.Ended = "Igniter replaced; two full cycles watched."
	ended.Handover = "Gas furnace with a draft fan, no heat since last night. Igniter open, seen cracked. New one fitted, two full cycles, rise sixty degrees. Covers on, nothing bypassed. Vent not tested. I can repeat any reading."
	return []protocol.View{first, live, volts, taken, pending, ohms, failed, hold, act, off, alarm, ended}
}

// Names of the states, for files.
var Names = []string{"first", "consent", "volts", "taken", "pending", "ohms", "failed", "hold", "act", "site", "emergency", "ended"}

// Walker is a machine that shows the states one after the other, one for every answer.
type Walker struct {
	at    int
	views []protocol.View
}

// NewWalker begins before the first state.
func NewWalker() *Walker { return &Walker{at: -1, views: States()} }

// View is the state now.
func (w *Walker) View() *protocol.View {
	if w.at < 0 {
		return nil
	}
	v := w.views[w.at]
	return &v
}

// Step goes on with an answer; other events change nothing.
func (w *Walker) Step(ev protocol.Event) ([]protocol.Effect, error) {
	said := ""
	if ev.Begin != nil {
		for i := range w.views {
			w.views[i].Job = ev.Begin.Job
		}
	}
	switch {
	case ev.Type == protocol.EvSaid && ev.Said.Best() != nil && ev.Said.Best().Kind == utterance.Emergency:
		w.at = 10
	case ev.Type == protocol.EvUndo:
		w.at = max(w.at-1, 0)
	case ev.Type == protocol.EvBegin, ev.Type == protocol.EvSaid:
		w.at = min(w.at+1, len(w.views)-1)
	default:
		return nil, nil
	}
	w.views[w.at].Seq = ev.Seq
	if v := w.views[w.at]; v.Said != "" {
		said = v.Said
	} else {
		said = v.Step.Act
	}
	return []protocol.Effect{
		{Type: protocol.DoCue, ID: "accepted"},
		{Type: protocol.DoSay, ID: fmt.Sprintf("say-%d", ev.Seq), Text: said, Level: "info"},
		{Type: protocol.DoListen, ID: "choice"},
		{Type: protocol.DoShow, View: w.View()},
	}, nil
}
