package grammar_test

import (
	"math"
	"strings"
	"testing"

	"readback/core/utterance"
	data "readback/flows/lexicon"
	"readback/speech"
	"readback/speech/grammar"
)

func lexicon(t testing.TB) *utterance.Lexicon {
	t.Helper()
	lex, err := data.Load()
	if err != nil {
		t.Fatal(err)
	}
	return lex
}

// best writes the first meaning: "emergency gas", "emergency gas?" when doubtful, "command why", "choice on", "reading", "count 3".
func best(ms []utterance.Meaning) string {
	if len(ms) == 0 {
		return ""
	}
	m := ms[0]
	s := string(m.Kind)
	if m.ID != "" {
		s += " " + m.ID
	}
	if m.Kind == utterance.Count || m.Kind == utterance.Text {
		s += " " + m.Text
	}
	if m.Reading != nil {
		if m.Reading.State != "" {
			s += " " + string(m.Reading.State)
		} else {
			s += " " + strings.TrimSpace(m.Reading.Value.String())
		}
	}
	if m.Doubt {
		s += "?"
	}
	return s
}

// Every listed saying means its class, and no near miss means any.
func TestEmergencyLists(t *testing.T) {
	lex := lexicon(t)
	p := grammar.New(lex)
	for _, c := range lex.Emergencies.Classes {
		for _, s := range c.Say {
			s = strings.ReplaceAll(s, "*", "some")
			ms := p.Parse(s, grammar.Expect{})
			if len(ms) == 0 || ms[0].Kind != utterance.Emergency || ms[0].Doubt != (ms[0].ID == "ask") || ms[0].ID == "ask" && c.ID != "ask" {
				t.Errorf("%s: %q is %s", c.ID, s, best(ms))
			}
		}
	}
	for _, s := range lex.Emergencies.Near {
		for _, m := range p.Parse(s, grammar.Expect{}) {
			if m.Kind == utterance.Emergency {
				t.Errorf("near miss %q is %s", s, best([]utterance.Meaning{m}))
			}
		}
	}
}

func TestEmergency(t *testing.T) {
	p := grammar.New(lexicon(t))
	for _, tt := range []struct{ say, want string }{
		{"i smell gas", "emergency gas"},
		{"I smell gas!", "emergency gas"},
		{"hey i think i smell gas in here", "emergency gas"},
		{"no, gas! I smell gas", "emergency gas"},
		{"no i smell gas", "emergency gas?"},
		{"i don't think i smell gas", "emergency gas?"},
		{"not sure if i smell gas", "emergency gas?"},
		{"what if i smell gas", "emergency gas?"},
		{"i smelled gas yesterday", "emergency ask?"},
		{"there's a leak at the gas valve", "emergency gas"},
		{"the gas valve is leaking gas", "emergency gas"},
		{"smoke alarm is ringing", "emergency co"},
		{"there's smoke coming from the smoke alarm", "emergency fire"},
		{"it smells a lot like gas down here", "emergency gas"},
		{"the c o thing is beeping", "emergency co"},
		{"carbon monoxide detector is going off", "emergency co"},
		{"fire", "emergency fire"},
		{"fire fire", "emergency fire"},
		{"twenty six volts fire", "emergency fire"},
		{"no but there's smoke", "emergency fire"},
		{"no wait i smell gas", "emergency gas"},
		{"ow i got shocked", "emergency shock"},
		{"my hand's stuck", "emergency injury"},
		{"help help", "emergency any"},
		{"call the fire department", "emergency any"},
		{"is that gas", "emergency ask?"},
		{"help", "command help"},
		{"gas valve is open", "choice open"},
		{"no gas smell", "choice none"},
		{"quiet", "choice quiet"},
		{"the burners are burning blue", "choice blue-flame"},
	} {
		t.Run(tt.say, func(t *testing.T) {
			if got := best(p.Parse(tt.say, grammar.Expect{})); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

func TestParse(t *testing.T) {
	p := grammar.New(lexicon(t))
	for _, tt := range []struct{ say, asked, want string }{
		{"why", "", "command why"},
		{"where is it", "", "command where"},
		{"hold on", "", "command hold-on"},
		{"it's humming", "", "choice humming"},
		{"the fan is running", "", "choice running"},
		{"off", "", "choice off"},
		{"off, switch too", "", "choice off"},
		{"red", "", "choice red"},
		{"red three blinks", "", "choice red"},
		{"there's a split half an inch", "", "choice split"},
		{"it's not lit", "", "choice dark"},
		{"not humming", "", ""},
		{"right", "right-side", "choice right-side"},
		{"right", "right-value", "choice right-value"},
		{"hissing", "hissing", "choice hissing"},
		{"hissing", "", "emergency ask?"},
		{"twenty six point one volts", "", "reading 26.1 V"},
		{"o l", "", "reading over"},
		{"b one three five", "", "text B135"},
		{"scratch that", "", "command scratch-that"},
		{"stop", "", "command quiet"},
		{"go live", "", "command go-live"},
		{"blah blah blah", "", ""},
		{"[unk]", "", ""},
	} {
		t.Run(tt.say, func(t *testing.T) {
			got := best(p.Parse(tt.say, grammar.Expect{Options: strings.Fields(tt.asked)}))
			if got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

// A command or an answer is never also a number, and every saying means its own id.
func TestSayingsUnambiguous(t *testing.T) {
	lex := lexicon(t)
	p := grammar.New(lex)
	has := func(ms []utterance.Meaning, kind utterance.Kind, id string) bool {
		for _, m := range ms {
			if m.Kind == kind && m.ID == id {
				return true
			}
		}
		return false
	}
	for _, c := range lex.Commands {
		for _, s := range c.Say {
			ms := p.Parse(s, grammar.Expect{})
			if !has(ms, utterance.Command, c.ID) {
				t.Errorf("command %s: %q is %s", c.ID, s, best(ms))
			}
			if ms[0].Kind == utterance.Emergency {
				t.Errorf("command %s: %q is %s", c.ID, s, best(ms))
			}
			for _, m := range ms {
				if m.Kind == utterance.Reading && m.Reading.State == "" {
					t.Errorf("command %s: %q is also a number", c.ID, s)
				}
			}
		}
	}
	for _, o := range lex.Options {
		for _, s := range o.Say {
			ms := p.Parse(s, grammar.Expect{Options: []string{o.ID}})
			if !has(ms, utterance.Choice, o.ID) {
				t.Errorf("option %s: %q is %s", o.ID, s, best(ms))
			}
			if ms[0].Kind == utterance.Emergency && !ms[0].Doubt {
				t.Errorf("option %s: %q is %s", o.ID, s, best(ms))
			}
		}
	}
}

func TestHear(t *testing.T) {
	p := grammar.New(lexicon(t))
	alt := func(s ...string) (out []speech.Alternative) {
		for i, x := range s {
			out = append(out, speech.Alternative{Text: x, Cost: float64(i)})
		}
		return out
	}
	for _, tt := range []struct {
		name   string
		alts   []speech.Alternative
		want   string
		margin float64
	}{
		{"one", alt("twenty six volts"), "reading 26 V", 0},
		{"rival", alt("fifteen volts", "fifty volts"), "reading 15 V", 0.49},
		{"first that parses", alt("fifteen two point volts", "fifty two point three volts"), "reading 52.3 V", 0},
		{"bare gives way", alt("twenty six", "twenty six volts"), "reading 26 V", 0},
		{"empty head", alt("", "twenty six volts"), "", 0},
		{"unknown head", alt("[unk]", "twenty six volts"), "", 0},
		{"same value twice", alt("oh point two volts", "zero point two volts", "zero point three volts"), "reading 0.2 V", 1.45},
		{"emergency behind", alt("oh l", "i smell gas"), "emergency gas?", 0},
		{"no emergency from an answer", alt("no gas smell", "gas smell"), "emergency gas?", 0},
		{"nothing", nil, "", 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			u := p.Hear(tt.alts, grammar.Expect{})
			if got := best(u.Meanings); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
			if math.Abs(u.Margin-tt.margin) > 0.01 {
				t.Errorf("margin %v, want %v", u.Margin, tt.margin)
			}
			if (u.Fault != "") != (len(u.Meanings) == 0) {
				t.Errorf("fault %q with %d meanings", u.Fault, len(u.Meanings))
			}
		})
	}
}

// Several passes: what most of them hold wins over what one of them is sure of, and what one alone holds stays as a rival.
func TestHearAll(t *testing.T) {
	p := grammar.New(lexicon(t))
	list := func(w float64, s ...string) grammar.Pass {
		x := grammar.Pass{Weight: w}
		for i, a := range s {
			x.Alternatives = append(x.Alternatives, speech.Alternative{Text: a, Cost: float64(i)})
		}
		return x
	}
	for _, tt := range []struct {
		name  string
		ws    []grammar.Pass
		units []string
		want  string
		rival string
	}{
		{"two against one", []grammar.Pass{list(1, "fifty volts", "fifteen volts"), list(1, "fifteen volts", "fifty volts"), list(1, "fifteen volts")}, nil, "15 V", "50 V"},
		{"second in both beats first in one", []grammar.Pass{list(1, "five volts", "nine volts"), list(1, "four volts", "nine volts")}, nil, "9 V", "5 V"},
		{"said in two ways", []grammar.Pass{list(1, "one hundred five volts", "one hundred and four volts", "one hundred four volts", "one oh four volts")}, nil, "104 V", "105 V"},
		{"expected unit decides a near tie", []grammar.Pass{list(1, "five amps", "five ohms")}, []string{"ohm"}, "5 ohm", "5 A"},
		{"a bare number counts for the one unit that fits", []grammar.Pass{list(1, "twenty five", "twenty four volts", "twenty five volts")}, []string{"V"}, "25 V", "24 V"},
		{"a weak hearing decides nothing", []grammar.Pass{list(0.05, "six volts"), list(1, "seven volts", "six volts")}, nil, "7 V", "6 V"},
		{"an empty hearing is none", []grammar.Pass{list(1, "six volts"), {Weight: 1}}, nil, "6 V", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			u := p.HearAll(tt.ws, grammar.Expect{Units: tt.units})
			var got []string
			for _, m := range u.Meanings {
				if m.Kind == utterance.Reading {
					v := m.Reading.Value
					if v.Unit == "" && len(m.Units) == 1 {
						v.Unit = m.Units[0]
					}
					got = append(got, v.String())
				}
			}
			if len(got) == 0 || got[0] != tt.want || tt.rival != "" && (len(got) < 2 || got[1] != tt.rival) || tt.rival == "" && len(got) > 1 {
				t.Errorf("got %q, want %q, then %q", got, tt.want, tt.rival)
			}
		})
	}
}

func TestComplete(t *testing.T) {
	p := grammar.New(lexicon(t))
	volts := grammar.Expect{Units: []string{"V"}}
	for _, tt := range []struct {
		text string
		e    grammar.Expect
		want bool
	}{
		{"one hundred", volts, false}, {"one hundred", grammar.Expect{}, false}, {"one hundred volts", volts, true}, {"o l", volts, true},
		{"twenty six point", volts, false}, {"repeat", volts, true}, {"forty", grammar.Expect{Units: []string{"ohm", "kohm"}}, false}, {"", volts, false},
	} {
		if got := p.Complete(tt.text, tt.e); got != tt.want {
			t.Errorf("%q: %v", tt.text, got)
		}
	}
}

// Every sampled phrase is refused by nobody: it has a meaning of its own.
func TestSample(t *testing.T) {
	p := grammar.New(lexicon(t))
	all := func(string) bool { return true }
	phrases, left := p.Sample(3000, 1, all)
	if len(left) != 0 {
		t.Errorf("left out with a full vocabulary: %q", left)
	}
	again, _ := p.Sample(3000, 1, all)
	if strings.Join(phrases, "|") != strings.Join(again, "|") {
		t.Error("the same seed gives other phrases")
	}
	bad := 0
	near := map[string]bool{}
	for _, s := range lexicon(t).Emergencies.Near {
		near[s] = true
	}
	for _, s := range phrases {
		if s == grammar.Unknown || near[s] || strings.HasPrefix(s, "point ") || strings.HasPrefix(s, "double ") {
			continue
		}
		if len(p.Parse(s, grammar.Expect{})) == 0 {
			if bad++; bad < 10 {
				t.Errorf("%q has no meaning", s)
			}
		}
	}
}

func FuzzHear(f *testing.F) {
	f.Add("no, gas! I smell gas", "twenty six volts")
	f.Add("red three blinks", "[unk]")
	p := grammar.New(lexicon(f))
	f.Fuzz(func(t *testing.T, a, b string) {
		if len(a)+len(b) > 400 {
			t.Skip()
		}
		u := p.Hear([]speech.Alternative{{Text: a}, {Text: b, Cost: 1}}, grammar.Expect{})
		for _, m := range u.Meanings {
			if m.Cost < 0 {
				t.Errorf("negative cost in %+v", u)
			}
		}
	})
}

func BenchmarkParse(b *testing.B) {
	p := grammar.New(lexicon(b))
	for b.Loop() {
		p.Parse("there's a split half an inch long near the port", grammar.Expect{})
	}
}
