package prompts_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"readback/core/job"
	"readback/core/unit"
	"readback/core/words"
	"readback/flows/lexicon"
	"readback/flows/prompts"
)

func TestLoad(t *testing.T) {
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	// Every option that a line waits for can be said.
	for _, id := range job.LineIDs() {
		for _, o := range w.Lines[id].Ask {
			said := false
			for _, p := range lex.Options {
				said = said || p.ID == o
			}
			if !said {
				t.Errorf("line %s waits for %q, which nobody can say", id, o)
			}
		}
	}
	// No prompt holds words that would start an emergency when the microphone hears the voice. The questions of the
	// emergency scripts themselves are spoken when it has started.
	for _, id := range job.LineIDs() {
		if strings.HasPrefix(id, "alarm.") {
			continue
		}
		l := w.Lines[id]
		for _, text := range append([]string{l.Full, l.Say, l.How}, l.Short...) {
			for _, e := range lex.Emergencies.Classes {
				if e.ID == "ask" {
					continue
				}
				for _, say := range e.Say {
					if strings.Contains(say, " ") && !strings.Contains(say, "*") && strings.Contains(" "+plain(text)+" ", " "+say+" ") && !slices.Contains(allowed, say) {
						t.Errorf("line %s says %q, an emergency", id, say)
					}
				}
			}
		}
	}
}

// allowed are sayings that the guide must name: how to get help.
var allowed = []string{"nine one one"}

func plain(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !(r >= 'a' && r <= 'z' || r == '\'') }), " ")
}

func TestLoadErrors(t *testing.T) {
	for _, tt := range []struct{ name, src, want string }{
		{"syntax", "say {", "en/guide.hcl:"},
		{"unknown argument", "lang = \"en\"\nsay \"hello\" {\n full = \"x\"\n ful = \"x\"\n}\n", `en/guide.hcl:4: Unsupported argument: An argument named "ful" is not expected here.`},
		{"no full", "lang = \"en\"\nsay \"hello\" {\n}\n", `en/guide.hcl:2: Missing required argument`},
		{"twice", "lang = \"en\"\nsay \"hello\" { full = \"x\" }\nsay \"hello\" { full = \"x\" }\n", `en/guide.hcl:3: line "hello" is there twice`},
		{"never said", "lang = \"en\"\nsay \"helo\" { full = \"x\" }\n", `en/guide.hcl:2: line "helo" is never said`},
		{"sign", "lang = \"en\"\nsay \"hello\" { full = \"5 % more\" }\n", `en/guide.hcl:2: line "hello": "5 % more" has a sign that cannot be spoken`},
		{"long", "lang = \"en\"\nsay \"hello\" { full = \"a b c d e f g h i j k l m n o p q\" }\n", `en/guide.hcl:2: line "hello": a sentence of 17 words, at most 16`},
		{"language", "lang = \"de\"\n", `en/guide.hcl:1: lang is "de"`},
		{"accents", "lang = \"en\"\nsay \"hello\" { full = \"Ĥéļļö {name} §\" }\n", `has a sign that cannot be spoken`},
		{"term twice", "lang = \"en\"\nterms \"a\" { b = \"x\" }\nterms \"a\" {\n b = \"x\"\n}\n", `en/guide.hcl:4: term "a.b" is there twice`},
		{"term no text", "lang = \"en\"\nterms \"a\" {\n b = [1]\n}\n", `en/guide.hcl:3: term "a.b" is no text`},
		{"unit", "lang = \"en\"\nunit \"furlong\" {\n one = \"x\"\n many = \"x\"\n}\n", `en/guide.hcl:2: no unit is written "furlong"`},
		{"missing", "lang = \"en\"\n", `no line for age, age.back`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := prompts.LoadFS(fstest.MapFS{"en/guide.hcl": {Data: []byte(tt.src)}}, "en")
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got  %v\nwant %s", err, tt.want)
			}
		})
	}
	if _, err := prompts.LoadFS(fstest.MapFS{}, "en"); err == nil {
		t.Error("no file: no error")
	}
	for lang, want := range map[string]string{"de": `prompts: no language "de": there is en`, "../en": `prompts: "../en" is no language`} {
		if _, err := prompts.Language(lang); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("language %q: got %v, want %s", lang, err, want)
		}
	}
}

// The English numbers and units are those that the recogniser's grammar is made of (core/unit).
func TestNumbers(t *testing.T) {
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, u := range unit.All() {
		if got := w.Units[u.ID]; got != (words.Unit{One: u.One, Many: u.Many, Prefixed: u.Prefixed, Print: u.Print}) {
			t.Errorf("unit %s: %v", u.ID, got)
		}
	}
	for _, mant := range []int64{0, 1, 9, 10, 15, 20, 21, 99, 100, 101, 120, 999, 1000, 1001, 24500, 1000000, 123456789, 999999999999999} {
		for exp := -3; exp <= 0; exp++ {
			for _, sign := range []int64{1, -1} {
				v := unit.Value{Dec: unit.Decimal{Mant: sign * mant, Exp: exp, Neg0: mant == 0 && sign < 0}, Unit: "V"}
				if w.Value(v) != v.Words() || w.Spoken(v) != v.Spoken() || w.Digits(v.Dec) != v.Dec.Digits() {
					t.Errorf("%v: %q, %q, %q", v, w.Value(v), w.Spoken(v), w.Digits(v.Dec))
				}
			}
		}
	}
}

// A language that lacks a term, has one too many or another slot is told.
func TestCompare(t *testing.T) {
	a := &words.Words{Lang: "qq", Terms: map[string]string{"a.b": "x", "a.c": "{n} x", "a.d": ""}}
	b := &words.Words{Terms: map[string]string{"a.b": "{n}", "a.c": "y {n}", "a.e": ""}}
	err := prompts.Compare(a, b)
	want := `prompts: language "qq": no term a.e; term a.b has the slots [], want [{n}]; term a.d is never shown`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
	if err := prompts.Compare(b, b); err != nil {
		t.Error(err)
	}
}

func FuzzLoad(f *testing.F) {
	f.Add("lang = \"en\"\nsay \"hello\" { full = \"x\" }\n")
	f.Fuzz(func(t *testing.T, src string) {
		if w, err := prompts.LoadFS(fstest.MapFS{"en/guide.hcl": {Data: []byte(src)}}, "en"); err == nil && len(w.Lines) == 0 {
			t.Error("no lines and no error")
		}
	})
}
