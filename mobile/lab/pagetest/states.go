// Package pagetest holds the browser tests of the page, and the twelve states they look at.
package pagetest

import (
	"fmt"

	"readback/core/job"
	"readback/core/measure"
	"readback/core/utterance"
)

func ptr(x float64) *float64 { return &x }

var stages = []string{"Safety", "The story", "The plate", "The status light", "The free causes", "Watch one start", "Prove the meter", "One check at a time",
	"Second evidence", "Why it failed", "What it costs", "The right part", "The swap", "Safe restart", "Refit", "The record"}

func choice(id, text string) job.Answer {
	return job.Answer{ID: id, Kind: utterance.Choice, Text: text}
}
func say(id, text string) job.Answer {
	return job.Answer{ID: id, Kind: utterance.Command, Text: text}
}

// States are twelve views that together use everything the page can show. Their texts are as long as texts get.
func States() []job.View {
	base := func(n int, state string, site job.SiteView, step job.StepView) job.View {
		return job.View{Job: "20261125-120000", Title: "Gas furnace with a draft fan", Stage: stages[n-1], StageNo: n, Stages: stages, State: state, Site: site, Step: step,
			Log: []job.LogLine{
				{Seq: 1, At: 1764070000000, Who: "guide", Text: "First, your nose: gas odour, or none?"},
				{Seq: 2, At: 1764070004000, Who: "person", Text: "None"},
				{Seq: 3, At: 1764070060000, Who: "site", Text: "Power is off and proved"},
			}}
	}
	on := job.SiteView{Power: "on", Since: 1764070000000, Gas: "on", Call: "on"}
	proved := job.SiteView{Power: "proved", Since: 1764070060000, Gas: "on", Covers: []string{"lower front panel"}, Wires: []string{"igniter plug"}, Dial: "ohms"}
	suspects := []job.Suspect{
		{Part: "igniter", Name: "igniter", P: 0.71, Words: "likely, 7 in 10"},
		{Part: "board", Name: "control board", P: 0.2, Words: "less likely, 3 in 10"},
		{Part: "unknown", Name: "something I do not know", P: 0.05, Words: "unlikely, 1 in 10"},
	}
	first := base(1, "ask", job.SiteView{Power: "unknown", Gas: "unknown"}, job.StepView{ID: "smell", Kind: "ask",
		Act: "Your nose first: gas odour, or none?", Say: "“odour” or “none”", Answers: []job.Answer{choice("odour", "Gas odour"), choice("none", "None")}})
	first.Said = "First, your nose: gas odour, or none?"
	live := base(8, "confirm", on, job.StepView{ID: "w-c", Kind: "consent", Level: "danger", Caution: "House voltage, live. One hand, dry floor.",
		Power: "on", Where: "Both slots of the outlet beside the furnace", Meter: "AC volts", Act: "Go live, or take the other way?", Say: "“go live” or “other way”",
		Answers: []job.Answer{say("go-live", "Go live"), say("other-way", "Other way")}})
	volts := base(8, "wait", on, job.StepView{ID: "r-c", Kind: "measure", Level: "warning", Caution: "The fan can start. Twenty-four volts, live.", Power: "on",
		Where: "Terminals W and C on the board, lower bay, right side", Meter: "AC volts", Act: "Red on W, black on C. Number and unit?", Say: "like “two six point one volts”",
		Points: []string{"board-w", "board-c"}, Parts: []string{"board"}, Place: "lower-bay", Keypad: []string{"V", "mV"}, Answers: []job.Answer{say("cant-reach", "Can’t reach"), say("jumping", "Jumping")}})
	taken := base(8, "wait", on, job.StepView{ID: "see-draft", Kind: "look", Level: "caution", Caution: "Sharp edges.", Power: "on", Where: "Through the upper opening, left of the gas valve",
		Act: "Does the draft fan run, hum, or stay silent?", Say: "“running”, “humming” or “silent”", Parts: []string{"inducer"}, Place: "upper-bay",
		Answers: []job.Answer{choice("running", "Running"), choice("humming", "Humming"), choice("silent", "Silent")}})
	taken.Heard = &job.HeardView{Text: "twenty, no, twenty six point one volts", Taken: "26.1 V AC", Rivals: []string{"twenty six point nine volts"}, Verdict: measure.Pass,
		Limit: "24 to 28 V unloaded (gas technician training text, unit 12)", Value: 26.1, U: 0.5, Low: ptr(24), High: ptr(28), Unit: "V"}
	taken.Why = &job.WhyView{Short: "It tells a weak draft from a bad switch.", More: []string{"Running leads to the hose and the switch. Humming leads to the motor and its capacitor.", "Silent leads to the board’s output."}, Cost: "About one minute, nothing to open."}
	taken.Suspects = suspects
	taken.Facts = []string{"No gas odour", "Thermostat calls for heat", "Status light: three blinks"}
	pending := base(8, "confirm", on, job.StepView{ID: "r-c", Kind: "confirm", Where: "Terminals W and C on the board", Meter: "AC volts", Act: "Fifteen, one five, volts. Or fifty?", Say: "“fifteen” or “fifty”",
		Answers: []job.Answer{choice("r0", "15 V"), choice("r1", "50 V")}, Keypad: []string{"V", "mV"}})
	pending.Heard = &job.HeardView{Text: "fifteen volts", Taken: "15 V", Rivals: []string{"fifty volts"}, Pending: true, Value: 15, Unit: "V"}
	ohms := base(9, "wait", proved, job.StepView{ID: "igniter-ohms", Kind: "measure", Level: "caution", Caution: "The igniter breaks at a touch.", Power: "off and proved", Where: "Igniter plug, two white wires, pulled apart",
		Meter: "ohms", Act: "One probe in each hole. Number and unit?", Say: "like “five five ohms”, or “O L”", Points: []string{"glow-a", "glow-b"}, Parts: []string{"igniter"}, Place: "burner-box", Keypad: []string{"ohm", "kohm", "Mohm"},
		Answers: []job.Answer{say("cant-reach", "Can’t reach"), say("dont-know", "Don’t know")}})
	ohms.Suspects, ohms.Open = suspects, []string{"Plug the igniter back in", "Lower front panel on", "Meter off ohms"}
	failed := ohms
	failed.Step.ID, failed.Step.Keypad, failed.Step.Kind, failed.Step.Points = "igniter-look", nil, "look", nil
	failed.Step.Act, failed.Step.Say, failed.Step.Meter = "Look along the grey element: cracked, or whole?", "“cracked” or “whole”", ""
	failed.Step.Answers = []job.Answer{choice("cracked", "Cracked"), choice("whole", "Whole"), say("dont-know", "Don’t know")}
	failed.Heard = &job.HeardView{Text: "o l", Taken: "OL: open", Verdict: measure.Fail, Limit: "40 to 90 Ω cold, silicon carbide (gas technician training text, unit 13)", Unit: "ohm"}
	hold := ohms
	hold.State, hold.Said = "hold", "Holding."
	act := base(13, "ask", proved, job.StepView{ID: "swap-3", Kind: "act", Level: "warning", Caution: "Hot for ten minutes after a burn.", Power: "off and proved", Where: "Igniter bracket, two screws",
		Act: "Take out the two screws, hold the bracket, pull it straight out.", Say: "“out”", Answers: []job.Answer{choice("out", "Out"), say("cant-reach", "Can’t reach"), say("how", "How?")}, Until: 1764070600000})
	act.Open = failed.Open
	off := base(8, "ask", job.SiteView{Power: "off", Since: 1764070050000, Gas: "off", Covers: []string{"lower front panel", "burner box cover"}, Jumpers: []string{"R to W at the board"}, Wires: []string{"W at the board", "igniter plug"},
		Door: "held", Dial: "microamps DC", Jack: true, Call: "on", Resets: []string{"roll-out switch"}}, job.StepView{ID: "jumper-out", Kind: "act", Level: "danger", Caution: "A jumper is in and the door switch is held.",
		Act: "First the jumper out. Then we pause.", Say: "“jumper out”", Answers: []job.Answer{choice("jumper-out", "Jumper out")}})
	off.Notice = "Speech is off: the model is missing. Run make speech once with a network; touch and keys do everything."
	alarm := base(8, "emergency", on, job.StepView{ID: "emergency-gas", Kind: "act", Level: "emergency", Caution: "A spark can light gas.", Act: "Leave now. Touch no switch.", Say: "Call from far outside: the gas company or 911.",
		Answers: []job.Answer{say("false-alarm", "False alarm")}})
	ended := base(16, "ended", job.SiteView{Power: "on", Since: 1764073000000, Gas: "on"}, job.StepView{ID: "end", Kind: "info", Act: "Heat is back. Everything is refitted."})
	ended.Ended = "Igniter replaced; two full cycles watched."
	ended.Handover = "Gas furnace with a draft fan, no heat since last night. Igniter open, seen cracked. New one fitted, two full cycles, rise sixty degrees. Covers on, nothing bypassed. Vent not tested. I can repeat any reading."
	return []job.View{first, live, volts, taken, pending, ohms, failed, hold, act, off, alarm, ended}
}

// Names of the states, for files.
var Names = []string{"first", "consent", "volts", "taken", "pending", "ohms", "failed", "hold", "act", "site", "emergency", "ended"}

// Walker is a machine that shows the states one after the other, one for every answer.
type Walker struct {
	at    int
	views []job.View
}

// NewWalker begins before the first state.
func NewWalker() *Walker { return &Walker{at: -1, views: States()} }

// View is the state now.
func (w *Walker) View() *job.View {
	if w.at < 0 {
		return nil
	}
	v := w.views[w.at]
	return &v
}

// Step goes on with an answer; other events change nothing.
func (w *Walker) Step(ev job.Event) ([]job.Effect, error) {
	said := ""
	if ev.Begin != nil {
		for i := range w.views {
			w.views[i].Job = ev.Begin.Job
		}
	}
	switch {
	case ev.Type == job.EvSaid && ev.Said.Best() != nil && ev.Said.Best().Kind == utterance.Emergency:
		w.at = 10
	case ev.Type == job.EvUndo:
		w.at = max(w.at-1, 0)
	case ev.Type == job.EvBegin, ev.Type == job.EvSaid:
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
	return []job.Effect{
		{Type: job.DoCue, ID: "accepted"},
		{Type: job.DoSay, ID: fmt.Sprintf("say-%d", ev.Seq), Text: said, Level: "info"},
		{Type: job.DoListen, ID: "choice"},
		{Type: job.DoShow, View: w.View()},
	}, nil
}
