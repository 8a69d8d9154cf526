package sentences

import (
	"math"
	"slices"
	"strconv"

	"readback/core/measure"
	"readback/core/utterance"
	"readback/speech/grammar"
)

// Score counts what became of sentences.
type Score struct {
	Danger, Missed, Acted                                 int // dangers; neither acted on nor asked about; acted on
	ClassRight                                            int // of those acted on
	Maybe, MaybeAsked, MaybeActed, MaybeMissed            int
	Talk, TalkActed, TalkAsked                            int
	Value, ValueRight, ValueWrong, ValueAsked, ValueAlarm int // right: the first reading is; wrong: another one is taken without a question; asked: right with a question
	State, StateRight, StateWrong                         int
	Command, CommandRight, CommandWrong                   int
	Story, StoryUsed, StoryExact                          int // used: a symptom that is told is found and none that is not
}

// Add adds up.
func (s *Score) Add(o Score) {
	s.Danger += o.Danger
	s.Missed += o.Missed
	s.Acted += o.Acted
	s.ClassRight += o.ClassRight
	s.Maybe += o.Maybe
	s.MaybeAsked += o.MaybeAsked
	s.MaybeActed += o.MaybeActed
	s.MaybeMissed += o.MaybeMissed
	s.Talk += o.Talk
	s.TalkActed += o.TalkActed
	s.TalkAsked += o.TalkAsked
	s.Value += o.Value
	s.ValueRight += o.ValueRight
	s.ValueWrong += o.ValueWrong
	s.ValueAsked += o.ValueAsked
	s.ValueAlarm += o.ValueAlarm
	s.State += o.State
	s.StateRight += o.StateRight
	s.StateWrong += o.StateWrong
	s.Command += o.Command
	s.CommandRight += o.CommandRight
	s.CommandWrong += o.CommandWrong
	s.Story += o.Story
	s.StoryUsed += o.StoryUsed
	s.StoryExact += o.StoryExact
}

// Expect is what the program waits for when a line is said.
func (l *Line) Expect() grammar.Expect {
	switch {
	case l.Cat == "story":
		return grammar.Expect{Text: true}
	case l.Ask != "":
		return grammar.Expect{Units: []string{l.Ask}}
	}
	return grammar.Expect{Units: []string{"V"}}
}

var classes = map[string][]string{"gas": {"gas"}, "co": {"co", "ill"}, "fire": {"fire"}, "blast": {"spark", "blast"}, "shock": {"shock"}, "injury": {"injury"}, "water": {"water"},
	"collapse": {"faint", "ill", "any"}, "child": {"child"}, "leave": {"any"}}

var commands = map[string][]string{"repeat": {"repeat"}, "wait": {"hold-on"}, "resume": {"ready", "done"}, "undo": {"scratch-that", "back"}, "cannot": {"cant-reach"}, "refuse": {"skip", "shortcut", "other-way"},
	"dontknow": {"dont-know", "not-sure"}, "done": {"done", "ready"}, "why": {"why"}, "where": {"where"}, "how": {"how"}, "louder": {"louder"}, "slower": {"slower"}, "stop": {"finish"},
	"cost": {"cost"}, "yes": {"yes", "right-value"}, "no": {"no", "different", "none"}}

var conditions = map[string]measure.State{"over": measure.Over, "jumping": measure.Jumping, "blank": measure.Blank, "beep": measure.Beep, "nobeep": measure.Silent}

// scale is what a unit of the hands is in V, A, ohm, F, Pa, s.
var scale = map[string]struct {
	base string
	by   float64
}{"ohm": {"ohm", 1}, "kohm": {"ohm", 1e3}, "Mohm": {"ohm", 1e6}, "mohm": {"ohm", 1e-3}, "V": {"V", 1}, "mV": {"V", 1e-3}, "kV": {"V", 1e3}, "A": {"A", 1}, "mA": {"A", 1e-3}, "uA": {"A", 1e-6},
	"uF": {"F", 1e-6}, "nF": {"F", 1e-9}, "degF": {"degF", 1}, "degC": {"degC", 1}, "inH2O": {"inH2O", 1}, "in": {"inH2O", 1}, "Pa": {"Pa", 1}, "kPa": {"Pa", 1e3}, "s": {"s", 1}, "min": {"s", 60},
	"h": {"s", 3600}, "psi": {"psi", 1}, "dF": {"degF", 1}, "dC": {"degC", 1}}

// Same tells whether two values are the same size, whatever their prefixes.
func Same(v1, u1, v2, u2 string) bool {
	a, err1 := strconv.ParseFloat(v1, 64)
	b, err2 := strconv.ParseFloat(v2, 64)
	x, y := scale[u1], scale[u2]
	return err1 == nil && err2 == nil && x.base == y.base && x.base != "" && math.Abs(a*x.by-b*y.by) <= 1e-9*math.Max(math.Abs(a*x.by), 1e-12)
}

// Verdict scores one line, given what was heard.
func (l *Line) Verdict(u *utterance.Utterance) Score {
	var s Score
	best := u.Best()
	alarm := best != nil && best.Kind == utterance.Emergency
	acted := alarm && !best.Doubt
	taken := "" // without a question
	if best != nil && !alarm && !best.Doubt {
		taken = string(best.Kind)
	}
	kind := ""
	if len(l.Kinds) > 0 {
		kind = l.Kinds[0]
	}
	switch l.Cat {
	case "danger":
		s.Danger = 1
		s.Missed, s.Acted = one(!alarm), one(acted)
		s.ClassRight = one(acted && slices.Contains(classes[kind], best.ID))
	case "maybe":
		s.Maybe, s.MaybeAsked, s.MaybeActed, s.MaybeMissed = 1, one(alarm && !acted), one(acted), one(!alarm)
	case "talk":
		s.Talk, s.TalkActed, s.TalkAsked = 1, one(acted), one(alarm && !acted)
	case "value":
		s.Value, s.ValueAlarm = 1, one(alarm)
		d := utterance.Decide(&utterance.Utterance{Meanings: u.Meanings, Source: "line"}, utterance.Slot{Units: l.Expect().Units})
		right := !alarm && best != nil && best.Kind == utterance.Reading && d.Take != nil && d.Take.State == measure.Number && Same(d.Take.Value.Dec.String(), d.Take.Value.Unit, l.Value, l.Unit)
		s.ValueRight = one(right)
		s.ValueAsked = one(right && d.Action != utterance.Accept)
		s.ValueWrong = one(acted || !right && taken != "" && (taken != "reading" || d.Action == utterance.Accept))
	case "state":
		s.State = 1
		right := false
		if !alarm && best != nil {
			switch want, ok := conditions[l.State]; {
			case ok && best.Kind == utterance.Reading && best.Reading.State == want:
				right = true
				if l.Lo != "" && l.Hi != "" && want == measure.Jumping {
					lo, hi := best.Reading.Low, best.Reading.High
					right = lo != nil && hi != nil && number(lo.Dec.String()) == number(l.Lo) && number(hi.Dec.String()) == number(l.Hi)
				}
			case !ok:
				right = best.Kind == utterance.Trouble && best.ID == map[string]string{"lowbat": "low-battery", "wrongmode": "wrong-mode"}[l.State]
			}
		}
		s.StateRight = one(right)
		s.StateWrong = one(acted || !right && taken != "")
	case "command":
		s.Command = 1
		right := !alarm && best != nil && slices.Contains(commands[kind], best.ID)
		if kind == "sorry" {
			right = !alarm && (best == nil && u.Fault == utterance.Aside || best != nil && best.ID == "hold-on")
		}
		s.CommandRight = one(right)
		s.CommandWrong = one(acted || !right && taken != "" && taken != "symptom")
	case "story":
		s.Story = 1
		hit, extra := 0, 0
		for _, m := range u.Meanings {
			if m.Kind != utterance.Symptom {
				continue
			}
			if slices.Contains(l.Kinds, m.ID) {
				hit++
			} else {
				extra++
			}
		}
		s.StoryUsed = one(hit > 0 && hit >= extra)
		s.StoryExact = one(hit == len(l.Kinds) && extra == 0)
	}
	return s
}

func number(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}

// String writes the shares in percent.
func (s Score) String() string {
	pct := func(a, n int) string { return strconv.FormatFloat(100*float64(a)/math.Max(1, float64(n)), 'f', 1, 64) }
	n := s.Value + s.State + s.Command
	return "danger missed " + pct(s.Missed, s.Danger) + " acted " + pct(s.Acted, s.Danger) + " class " + pct(s.ClassRight, s.Acted) + " | maybe asked " + pct(s.MaybeAsked, s.Maybe) + " acted " + pct(s.MaybeActed, s.Maybe) +
		" missed " + pct(s.MaybeMissed, s.Maybe) + " | talk acted " + pct(s.TalkActed, s.Talk) + " asked " + pct(s.TalkAsked, s.Talk) +
		" | value right " + pct(s.ValueRight, s.Value) + " wrong " + pct(s.ValueWrong, s.Value) + " asked " + pct(s.ValueAsked, s.Value) + " alarm " + pct(s.ValueAlarm, s.Value) +
		" | state right " + pct(s.StateRight, s.State) + " wrong " + pct(s.StateWrong, s.State) + " | command right " + pct(s.CommandRight, s.Command) + " wrong " + pct(s.CommandWrong, s.Command) +
		" | sentences right " + pct(s.ValueRight+s.StateRight+s.CommandRight, n) + " wrong " + pct(s.ValueWrong+s.StateWrong+s.CommandWrong, n) +
		" | story used " + pct(s.StoryUsed, s.Story) + " exact " + pct(s.StoryExact, s.Story)
}
