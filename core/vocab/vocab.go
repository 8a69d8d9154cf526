// Package vocab holds every closed list of words once, with what each word means for the program: hazards, alarms,
// commands, stages and outcomes. Whoever needs a list, or asks what a word means, asks here.
//
// Meter functions are listed beside their type, in core/measure; part kinds in core/appliance/kind.
package vocab

import "slices"

// Level is the signal word of a caution. Danger kills, warning maims, caution hurts (ANSI Z535.4).
type Level string

const (
	Info      Level = "info"
	Caution   Level = "caution"
	Warning   Level = "warning"
	Danger    Level = "danger"
	Emergency Level = "emergency"
)

// Hazard is what can hurt at a step.
type Hazard struct {
	ID    string
	Level Level // signal word spoken before it
	Price int   // grade for the planner's cost of risk: 0 none, 1 low, 2 serious, 3 the worst
	File  bool  // an equipment file may name it for a place or a check
	Shock bool  // above touch-safe voltage, 30 V a.c. or 60 V d.c. (IEC 61010-1): live work near it is agreed to first
}

// Hazards, the worst first: where several meet, the first one is named.
var Hazards = []Hazard{
	{ID: "mains", Level: Danger, Price: 2, File: true, Shock: true},
	{ID: "gas", Level: Danger, Price: 3, File: true},
	{ID: "capacitor", Level: Warning, Price: 3, File: true, Shock: true},
	{ID: "moving", Level: Warning, Price: 2, File: true},
	{ID: "hot", Level: Warning, Price: 2, File: true},
	{ID: "low", Level: Warning, Price: 1, File: true}, // low voltage: it startles, and a slip blows a fuse
	{ID: "sharp", Level: Caution, Price: 3, File: true},
	{ID: "door", Level: Warning},    // a held door switch
	{ID: "jumper", Level: Warning},  // a test jumper
	{ID: "restart", Level: Warning}, // the appliance may start
	{ID: "hands", Level: Warning},   // fingers inside
}

// HazardOf finds a hazard. ok is false for "", "none" and what is not in the list.
func HazardOf(id string) (h Hazard, ok bool) {
	i := slices.IndexFunc(Hazards, func(h Hazard) bool { return h.ID == id })
	if i < 0 {
		return Hazard{}, false
	}
	return Hazards[i], true
}

// Worst is the hazard that is named where several meet, "" for none.
func Worst(ids []string) string {
	for _, h := range Hazards {
		if slices.Contains(ids, h.ID) {
			return h.ID
		}
	}
	return ""
}

// Alarm is a class of emergency.
type Alarm struct {
	ID    string
	Leave bool // everybody goes out, and the job is over
	Ends  bool // the job ends there: everything stays as it is, and somebody is called
	Goes  bool // the job may go on once it is over and nothing is in doubt
	Quiet bool // raised by silence, never by words
	Again bool // after an absence the question whose answer raises it is asked again
}

// Alarms in the order of the page.
var Alarms = []Alarm{
	{ID: "gas", Leave: true, Again: true},
	{ID: "co", Leave: true, Again: true},
	{ID: "ill", Leave: true},
	{ID: "fire", Leave: true},
	{ID: "blast", Leave: true}, // something blew up: there may be gas yet
	{ID: "faint", Leave: true}, // somebody does not answer: the air may be bad, and there may be current
	{ID: "any", Leave: true},
	{ID: "shock", Ends: true},
	{ID: "spark", Ends: true},
	{ID: "water"},
	{ID: "injury"},
	{ID: "child", Goes: true},
	{ID: "silent", Goes: true, Quiet: true}, // nobody answers beside an open live cabinet
}

// AlarmOf finds an alarm class; ok is false when there is none of that id.
func AlarmOf(id string) (a Alarm, ok bool) {
	i := slices.IndexFunc(Alarms, func(a Alarm) bool { return a.ID == id })
	if i < 0 {
		return Alarm{}, false
	}
	return Alarms[i], true
}

// Command is something that may be said or tapped in every state.
type Command struct {
	ID    string
	Ends  bool   // it ends the open question without an answer, or takes an answer back: never done on a doubtful hearing
	Holds bool   // it does not end a pause
	Group string // group of the page's sheet: hear, ask, answer, job
	Key   string // key of a keyboard
}

// Commands in the order of the page's sheet.
var Commands = []Command{
	{ID: "repeat", Holds: true, Group: "hear", Key: "r"},
	{ID: "longer", Group: "hear", Key: "l"},
	{ID: "shorter", Group: "hear", Key: "b"},
	{ID: "slower", Group: "hear", Key: "s"},
	{ID: "quiet", Holds: true, Group: "hear", Key: "q"},
	{ID: "where", Group: "ask", Key: "w"},
	{ID: "why", Group: "ask", Key: "y"},
	{ID: "how", Group: "ask", Key: "o"},
	{ID: "what-if", Group: "ask", Key: "f"},
	{ID: "should-it-be", Group: "ask", Key: "v"},
	{ID: "where-am-i", Holds: true, Group: "ask", Key: "a"},
	{ID: "how-long", Group: "ask", Key: "t"},
	{ID: "suspected", Group: "ask", Key: "p"},
	{ID: "how-sure", Group: "ask", Key: "%"},
	{ID: "cost", Group: "ask", Key: "$"},
	{ID: "shortcut", Group: "ask", Key: "!"},
	{ID: "help", Holds: true, Group: "ask", Key: "="},
	{ID: "ready", Holds: true, Group: "answer", Key: " "},
	{ID: "done", Group: "answer", Key: "d"},
	{ID: "cant-reach", Ends: true, Group: "answer", Key: "c"},
	{ID: "dont-know", Ends: true, Group: "answer", Key: "i"},
	{ID: "not-sure", Ends: true, Group: "answer", Key: "u"},
	{ID: "jumping", Group: "answer", Key: "j"},
	{ID: "missed-it", Ends: true, Group: "answer", Key: "m"},
	{ID: "scratch-that", Ends: true, Group: "answer", Key: "n"},
	{ID: "skip", Ends: true, Group: "answer", Key: "k"},
	{ID: "other-meter", Group: "answer", Key: "*"},
	{ID: "go-live", Group: "answer", Key: "["},
	{ID: "other-way", Group: "answer", Key: "]"},
	{ID: "false-alarm", Group: "answer", Key: "~"},
	{ID: "back", Ends: true, Group: "job", Key: "Backspace"},
	{ID: "hold-on", Holds: true, Group: "job", Key: "h"},
	{ID: "it-changed", Ends: true, Holds: true, Group: "job", Key: "g"},
	{ID: "person", Ends: true, Group: "job", Key: "+"},
	{ID: "finish", Ends: true, Holds: true, Group: "job", Key: "z"},
}

// CommandOf finds a command; ok is false when there is none of that id.
func CommandOf(id string) (c Command, ok bool) {
	i := slices.IndexFunc(Commands, func(c Command) bool { return c.ID == id })
	if i < 0 {
		return Command{}, false
	}
	return Commands[i], true
}

// Stage is a part of a job.
type Stage struct {
	ID     string
	Checks bool // checks of an equipment file may belong to it
	Chosen bool // the planner chooses among its checks
	Lasts  bool // its answers stand when a repair brought no heat
}

// Stages in order. The number on the page is the index plus one.
var Stages = []Stage{
	{ID: "safety", Checks: true, Lasts: true},
	{ID: "story", Checks: true, Lasts: true},
	{ID: "plate", Checks: true, Lasts: true},
	{ID: "light", Checks: true, Lasts: true},
	{ID: "free", Checks: true, Chosen: true},
	{ID: "watch", Checks: true, Chosen: true},
	{ID: "meter", Checks: true, Lasts: true},
	{ID: "plan", Checks: true, Chosen: true},
	{ID: "proof"},
	{ID: "cause", Checks: true},
	{ID: "cost"},
	{ID: "part"},
	{ID: "swap"},
	{ID: "restart", Checks: true, Lasts: true},
	{ID: "refit"},
	{ID: "record"},
}

// StageOf finds a stage; ok is false when there is none of that id.
func StageOf(id string) (s Stage, ok bool) {
	i := slices.IndexFunc(Stages, func(s Stage) bool { return s.ID == id })
	if i < 0 {
		return Stage{}, false
	}
	return Stages[i], true
}

// Outcome is how a job ends.
type Outcome struct {
	ID   string
	Good bool // the appliance heats, or nothing was wrong with it: nobody has to be called
	Open bool // the work place may be left as it is, and what is open is said
}

// Outcomes lists the ends of a job.
var Outcomes = []Outcome{
	{ID: "fixed", Good: true},
	{ID: "nothing-wrong", Good: true},
	{ID: "stopped"},
	{ID: "unresolved"},
	{ID: "handed-over"},
	{ID: "stopped-by-person"},
	{ID: "stopped-after-emergency", Open: true},
	{ID: "part-awaited"},
	{ID: "given-up"},
	{ID: "battery"},
	{ID: "left-open", Open: true},
	{ID: "still-live", Open: true}, // it stayed live after switching off: nobody touches it again
	{ID: "emergency", Open: true},
}

// Good tells whether an outcome is one after which nobody has to be called.
func Good(outcome string) bool {
	return slices.ContainsFunc(Outcomes, func(o Outcome) bool { return o.ID == outcome && o.Good })
}

// MayStayOpen tells whether a job may end so with something open.
func MayStayOpen(outcome string) bool {
	return slices.ContainsFunc(Outcomes, func(o Outcome) bool { return o.ID == outcome && o.Open })
}

// iDs lists the ids of a list in its order.
func iDs[T any](list []T, id func(T) string) []string {
	out := make([]string, len(list))
	for i, x := range list {
		out[i] = id(x)
	}
	return out
}

// HazardIDs lists the hazards, the worst first. file: only those that an equipment file may name.
func HazardIDs(file bool) []string {
	return iDs(slices.DeleteFunc(slices.Clone(Hazards), func(h Hazard) bool { return file && !h.File }), func(h Hazard) string { return h.ID })
}

// AlarmIDs lists the classes of emergency.
func AlarmIDs() []string { return iDs(Alarms, func(a Alarm) string { return a.ID }) }

// CommandIDs lists the commands.
func CommandIDs() []string { return iDs(Commands, func(c Command) string { return c.ID }) }

// StageIDs lists the stages for which want holds; all of them when it is nil.
func StageIDs(want func(Stage) bool) []string {
	return iDs(slices.DeleteFunc(slices.Clone(Stages), func(s Stage) bool { return want != nil && !want(s) }), func(s Stage) string { return s.ID })
}

// OutcomeIDs lists the ends of a job.
func OutcomeIDs() []string { return iDs(Outcomes, func(o Outcome) string { return o.ID }) }
