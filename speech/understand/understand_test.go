package understand_test

import (
	"strings"
	"testing"

	"readback/core/lab/metric"
	"readback/core/measure"
	"readback/core/utterance"
	"readback/flows/lexicon"
	"readback/speech/grammar"
	"readback/speech/lab/sentences"
	"readback/speech/understand"
)

func reader(t testing.TB) *understand.Reader {
	t.Helper()
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	r, err := understand.New(lex, grammar.New(lex))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Values are found wherever they stand in a sentence: the span grammar is held here, the network's share of it in the figures.
func TestValues(t *testing.T) {
	r := reader(t)
	for _, tt := range []struct{ say, ask, want string }{
		{"the meter says about eighteen and a half", "ohm", "18.5 ohm"},
		{"eighteen ohms no wait eighty", "ohm", "80 ohm"},
		{"fifty five zero fifty", "V", "50 V"},
		{"forty, four zero", "V", "40 V"},
		{"so on leg two i got one twenty", "V", "120 V"},
		{"it says two point two and there's like a k", "ohm", "2.2 kohm"},
		{"uh it reads like oh point four i think", "ohm", "0.4 ohm"},
		{"it's minus twenty four what does minus mean", "V", "-24 V"},
		{"okay hold on it's at twenty six point... uh four volts a c", "V", "26.4 V"},
		{"about a thousand give or take", "ohm", "1000 ohm"},
		{"looks like three point one micro whatever", "uF", "3.1 uF"},
		{"it shows four degrees below zero", "degF", "-4 degF"},
		{"two point oh two", "A", "2.02 A"},
		{"one thirty nine and a half", "degF", "139.5 degF"},
		{"an amp and a half", "A", "1.5 A"},
		{"zeros all zeros", "uA", "0 uA"},
		{"point six k v that can't be right", "V", "600 V"},
		{"quarter of a psi", "psi", "0.25 psi"},
		{"one sixty five oh my that's hot", "degF", "165 degF"},
		{"dash one point nine", "uA", "-1.9 uA"},
		{"nineteen", "ohm", "19 ohm"},
		{"26.4 volts", "V", "26.4 V"},
		{"120v", "V", "120 V"},
	} {
		u := r.Hear(tt.say, grammar.Expect{Units: []string{tt.ask}})
		d := utterance.Decide(&u, utterance.Slot{Units: []string{tt.ask}})
		if m := u.Best(); m == nil || m.Kind != utterance.Reading || d.Take == nil || d.Take.Value.String() != tt.want {
			t.Errorf("%q: %+v, take %v, want %s", tt.say, u.Meanings, d.Take, tt.want)
		}
	}
}

func TestSpan(t *testing.T) {
	r := reader(t)
	u := r.Hear("it keeps jumping between three and four", grammar.Expect{Units: []string{"uA"}})
	m := u.Best()
	if m == nil || m.Reading == nil || m.Reading.State != measure.Jumping || m.Reading.Low == nil || m.Reading.Low.String() != "3 uA" || m.Reading.High.String() != "4 uA" {
		t.Errorf("%+v", u.Meanings)
	}
}

// What the lexicon lists as an emergency is one, and what it lists as near is none.
func TestLexicon(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	r := reader(t)
	for _, c := range lex.Emergencies.Classes {
		for _, s := range c.Say {
			if strings.Contains(s, "*") {
				continue
			}
			if m := r.Hear(s, grammar.Expect{}).Meanings; len(m) == 0 || m[0].Kind != utterance.Emergency {
				t.Errorf("%q of %s is %+v", s, c.ID, m)
			}
		}
	}
	acted := 0
	for _, s := range lex.Emergencies.Near {
		if m := r.Hear(s, grammar.Expect{}).Meanings; len(m) > 0 && m[0].Kind == utterance.Emergency && !m[0].Doubt {
			t.Errorf("%q is acted on: %+v", s, m[0])
			acted++
		}
	}
}

func FuzzHear(f *testing.F) {
	r := reader(f)
	f.Add("eighteen ohms no wait eighty", "ohm")
	f.Add("my hand's stuck, help!", "V")
	f.Add("a half of a half and a quarter point", "degF")
	f.Fuzz(func(t *testing.T, text, ask string) {
		u := r.Hear(text, grammar.Expect{Units: []string{ask}})
		for i := range u.Meanings {
			if m := &u.Meanings[i]; m.Kind == utterance.Reading && m.Reading == nil {
				t.Errorf("%q: a reading without one", text)
			}
		}
	})
}

// TestFigures reports on the hands that nothing was chosen by: per hand, and the worst of each figure by name.
func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		dir := sentences.Dir(2)
		split, err := sentences.ReadSplit(dir)
		if err != nil {
			t.Fatal(err)
		}
		lines, err := sentences.Read(dir, split.Report)
		if err != nil {
			t.Fatal(err)
		}
		r := reader(t)
		byHand := map[string]*sentences.Score{}
		var all sentences.Score
		for _, l := range lines {
			u := r.Hear(l.Text, l.Expect())
			s := l.Verdict(&u)
			all.Add(s)
			if byHand[l.Hand] == nil {
				byHand[l.Hand] = &sentences.Score{}
			}
			byHand[l.Hand].Add(s)
		}
		pct := func(a, n int) float64 { return 100 * float64(a) / float64(max(1, n)) }
		n := func(s *sentences.Score) int { return s.Value + s.State + s.Command }
		for _, f := range []struct {
			name, target string
			of           func(s *sentences.Score) (int, int)
			least        bool // a larger figure is better
		}{
			{"hear.sentences_right_pct", ">= 92", func(s *sentences.Score) (int, int) { return s.ValueRight + s.StateRight + s.CommandRight, n(s) }, true},
			{"hear.sentences_wrong_pct", "<= 0.5", func(s *sentences.Score) (int, int) { return s.ValueWrong + s.StateWrong + s.CommandWrong, n(s) }, false},
			{"hear.values_right_pct", "reported", func(s *sentences.Score) (int, int) { return s.ValueRight, s.Value }, true},
			{"hear.values_asked_pct", "reported", func(s *sentences.Score) (int, int) { return s.ValueAsked, s.Value }, false},
			{"hear.states_right_pct", "reported", func(s *sentences.Score) (int, int) { return s.StateRight, s.State }, true},
			{"hear.commands_right_pct", "reported", func(s *sentences.Score) (int, int) { return s.CommandRight, s.Command }, true},
			{"hear.stories_used_pct", ">= 85", func(s *sentences.Score) (int, int) { return s.StoryUsed, s.Story }, true},
			{"hear.stories_exact_pct", "reported", func(s *sentences.Score) (int, int) { return s.StoryExact, s.Story }, true},
			{"alarm.text_missed_pct", "<= 2", func(s *sentences.Score) (int, int) { return s.Missed, s.Danger }, false},
			{"alarm.text_acted_pct", "reported", func(s *sentences.Score) (int, int) { return s.Acted, s.Danger }, true},
			{"alarm.text_maybe_missed_pct", "reported", func(s *sentences.Score) (int, int) { return s.MaybeMissed, s.Maybe }, false},
			{"alarm.text_talk_acted_pct", "<= 0.2", func(s *sentences.Score) (int, int) { return s.TalkActed, s.Talk }, false},
			{"alarm.text_talk_asked_pct", "<= 3", func(s *sentences.Score) (int, int) { return s.TalkAsked, s.Talk }, false},
		} {
			k, of := f.of(&all)
			add(f.name, pct(k, of), "%", f.target, of)
			worst := ""
			for h, s := range byHand {
				k, of := f.of(s)
				v := pct(k, of)
				if worst == "" || f.least == (v < pct(f.of(byHand[worst]))) && v != pct(f.of(byHand[worst])) || v == pct(f.of(byHand[worst])) && h < worst {
					worst = h
				}
			}
			if worst != "" {
				k, of := f.of(byHand[worst])
				add(f.name+"_worst_"+worst, pct(k, of), "%", "reported", of)
			}
		}
		for _, h := range split.Report {
			if s := byHand[h]; s != nil {
				t.Logf("%s %s", h, s)
			}
		}
	})
}
