package scenario

import (
	"reflect"
	"slices"
	"strings"

	"readback/core/protocol"
	"readback/core/utterance"
)

// Talk is a person who answers aloud and hears what is read back: says it again in other words when nothing came of it, objects to
// what was taken wrongly, and taps when speaking does not help. It knows what the guide says and shows, and nothing of what the
// recogniser made of the sound.
type Talk struct {
	Person   *Person
	Lex      *utterance.Lexicon
	Repeated int // sayings said again because nothing came of them
	Objected int // answers that were taken wrongly and taken back aloud
	Tapped   int // times speaking was given up

	asked *protocol.View // what the last saying answered
	last  utterance.Meaning
	try   int
	wrong string // step whose answer was taken wrongly, until it is asked again
	shout bool   // an alarm was cried
	here  int    // sayings at this step
}

// Saying is what the person does next. Text is empty for silence.
type Saying struct {
	Text    string
	Meaning utterance.Meaning
	Tap     bool
}

// maxHere is how often a person speaks at one step before tapping.
const maxHere = 9

// maxTries is how often a person says the same thing before tapping it.
const maxTries = 4

// Moved tells whether the answer to a changed what is asked in b.
func Moved(a, b *protocol.View) bool {
	return a.Step.ID != b.Step.ID || a.State != b.State || a.Step.Part != b.Step.Part || a.Step.Act != b.Step.Act || len(a.Facts) != len(b.Facts) ||
		a.Site.Power != b.Site.Power || b.Heard != nil && b.Heard.Taken != "" && b.Seq > a.Seq && !reflect.DeepEqual(a.Heard, b.Heard)
}

// Next is what the person says to this view.
func (t *Talk) Next(v *protocol.View) (Saying, error) {
	if t.asked != nil && !Moved(t.asked, v) {
		return t.again(v), nil
	}
	if t.wrong != "" && t.asked != nil && v.Step.ID == t.wrong {
		t.wrong = ""
	}
	if t.asked != nil && t.misheard(v) {
		t.Objected++
		t.wrong = t.asked.Step.ID
		return t.say(v, command("scratch-that")), nil
	}
	if v.State == "emergency" && !t.shout {
		return t.say(v, command("false-alarm")), nil
	}
	if v.State == "hold" {
		return t.say(v, command("ready")), nil
	}
	if v.State == "confirm" && slices.ContainsFunc(v.Step.Answers, func(a protocol.Answer) bool { return a.ID == "different" }) {
		return t.confirm(v), nil
	}
	u, err := t.Person.Reply(v)
	if err != nil {
		return Saying{}, err
	}
	if len(u.Meanings) == 0 {
		t.asked = nil
		return Saying{}, nil
	}
	return t.say(v, u.Meanings[0]), nil
}

func (t *Talk) say(v *protocol.View, m utterance.Meaning) Saying {
	if t.asked == nil || t.asked.Step.ID != v.Step.ID {
		t.here = 0
	}
	t.asked, t.last, t.try = v, m, 0
	t.shout = t.shout || m.Kind == utterance.Emergency
	if t.here++; t.here > maxHere {
		return t.tap()
	}
	return Saying{Text: Aloud(t.Lex, m, 0), Meaning: m}
}

// again says the last thing in other words, and taps it in the end.
func (t *Talk) again(v *protocol.View) Saying {
	t.try++
	if t.try < maxTries {
		t.Repeated++
		return Saying{Text: Aloud(t.Lex, t.last, t.try), Meaning: t.last}
	}
	return t.tap()
}

func (t *Talk) tap() Saying {
	t.Tapped++
	s := Saying{Text: Aloud(t.Lex, t.last, 0), Meaning: t.last, Tap: true}
	t.asked, t.wrong, t.here = nil, "", 0
	return s
}

// confirm answers "right, or different?" and "this, or that?": a person who hears both says the value once more.
func (t *Talk) confirm(v *protocol.View) Saying {
	said := t.Person.last
	right := slices.ContainsFunc(v.Step.Answers, func(a protocol.Answer) bool { return a.ID == "right-value" })
	switch {
	case !right:
		return t.say(v, said)
	case t.Person.Agrees(t.Lex, v.Heard):
		return t.say(v, choice("right-value"))
	}
	return t.say(v, choice("different"))
}

// settling are the commands that end a question without an answer: a person who did not say them objects.
var settling = []string{"finish", "skip", "cant-reach", "dont-know", "not-sure", "back"}

// misheard tells whether the read-back of the last answer is not what was said.
func (t *Talk) misheard(v *protocol.View) bool {
	if t.wrong != "" || v.State == "confirm" || v.State == "ended" || v.State == "emergency" || v.Heard == nil || v.Heard.Pending {
		return false
	}
	if t.last.Kind == utterance.Command && (t.last.ID == "scratch-that" || t.last.ID == "false-alarm") {
		return false
	}
	if h := t.commandOf(v.Heard.Taken); h != "" {
		return slices.Contains(settling, h) && (t.last.Kind != utterance.Command || t.last.ID != h)
	}
	if t.asked.Step.Kind == "act" || t.asked.State == "confirm" && t.last.Kind == utterance.Choice {
		return false // an act that is done is done, in whichever words
	}
	return !t.Person.Agrees(t.Lex, v.Heard)
}

// commandOf is the command that is shown by one of its sayings, "" for none.
func (t *Talk) commandOf(shown string) string {
	for _, p := range t.Lex.Commands {
		if slices.Contains(p.Say, strings.ToLower(shown)) {
			return p.ID
		}
	}
	return ""
}
