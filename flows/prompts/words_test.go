package prompts_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"readback/core/job"
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
		{"syntax", "say {", "en.hcl:"},
		{"unknown argument", "lang = \"en\"\nsay \"hello\" {\n full = \"x\"\n ful = \"x\"\n}\n", `en.hcl:4: Unsupported argument: An argument named "ful" is not expected here.`},
		{"no full", "lang = \"en\"\nsay \"hello\" {\n}\n", `en.hcl:2: Missing required argument`},
		{"twice", "lang = \"en\"\nsay \"hello\" { full = \"x\" }\nsay \"hello\" { full = \"x\" }\n", `en.hcl:3: line "hello" is there twice`},
		{"never said", "lang = \"en\"\nsay \"helo\" { full = \"x\" }\n", `en.hcl:2: line "helo" is never said`},
		{"sign", "lang = \"en\"\nsay \"hello\" { full = \"5 % more\" }\n", `en.hcl:2: line "hello": "5 % more" has a sign that cannot be spoken`},
		{"long", "lang = \"en\"\nsay \"hello\" { full = \"a b c d e f g h i j k l m n o p q\" }\n", `en.hcl:2: line "hello": a sentence of 17 words, at most 16`},
		{"language", "lang = \"de\"\n", `en.hcl:1: lang is "de"`},
		{"missing", "lang = \"en\"\n", `no line for age, age.back`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := prompts.LoadFS(fstest.MapFS{"en.hcl": {Data: []byte(tt.src)}}, "en")
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got  %v\nwant %s", err, tt.want)
			}
		})
	}
	if _, err := prompts.LoadFS(fstest.MapFS{}, "en"); err == nil {
		t.Error("no file: no error")
	}
}

func FuzzLoad(f *testing.F) {
	f.Add("lang = \"en\"\nsay \"hello\" { full = \"x\" }\n")
	f.Fuzz(func(t *testing.T, src string) {
		if w, err := prompts.LoadFS(fstest.MapFS{"en.hcl": {Data: []byte(src)}}, "en"); err == nil && len(w.Lines) == 0 {
			t.Error("no lines and no error")
		}
	})
}
