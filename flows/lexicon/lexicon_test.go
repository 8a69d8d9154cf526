package lexicon_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"readback/flows/lexicon"
)

func TestLoad(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	if len(lex.Commands) < 30 || len(lex.Options) < 100 || len(lex.Emergencies.Classes) != 13 || len(lex.Emergencies.Near) < 20 {
		t.Errorf("%d commands, %d options, %d classes", len(lex.Commands), len(lex.Options), len(lex.Emergencies.Classes))
	}
	for _, o := range lex.Options {
		if o.Back == "" {
			t.Errorf("option %s has no read-back", o.ID)
		}
		if strings.EqualFold(strings.Trim(o.Back, "."), "no") {
			t.Errorf("option %s is read back as a bare no", o.ID)
		}
	}
}

const small = `lang = "en"
unit "V" { say = ["volts"] }
matcher {
  masks = ["gas valve"]
  live = ["leaking"]
  negators = ["no"]
  enders = ["but"]
  fine = ["fine"]
  past = ["ago"]
  hedges = ["maybe"]
  expected = ["blue flame"]
  near = ["no gas"]
}
`

func TestLoadErrors(t *testing.T) {
	for _, tt := range []struct{ name, src, want string }{
		{"syntax", "command {", "en/common.hcl:"},
		{"doubled command", small + "command \"a\" { say = [\"x\"] }\ncommand \"a\" { say = [\"y\"] }\n", `en/common.hcl:15: command "a" is already at en/common.hcl:14`},
		{"doubled saying", small + "command \"a\" { say = [\"x\"] }\ncommand \"b\" { say = [\"x\"] }\n", `en/common.hcl:15: command saying "x" is already at en/common.hcl:14`},
		{"digits", small + "option \"a\" { say = [\"5 volts\"] }\n", `en/common.hcl:14: saying "5 volts": want lower-case words`},
		{"capitals", small + "option \"a\" { say = [\"Yes\"] }\n", `en/common.hcl:14: saying "Yes"`},
		{"star in an option", small + "option \"a\" { say = [\"a * b\"] }\n", `en/common.hcl:14: saying "a * b"`},
		{"no saying", small + "option \"a\" { say = [] }\n", `en/common.hcl:14: option "a" has no saying`},
		{"unknown unit", small + "unit \"furlong\" { say = [\"furlongs\"] }\n", `en/common.hcl:14: no unit "furlong"`},
		{"unknown state", small + "state \"sad\" { say = [\"sad\"] }\n", `en/common.hcl:14: no display state "sad"`},
		{"unknown class", small + "emergency \"bees\" { say = [\"bees\"] }\n", `en/common.hcl:14: no emergency class "bees"`},
		{"bad id", small + "option \"A B\" { say = [\"x\"] }\n", `en/common.hcl:14: id "A B": want lower-case`},
		{"unknown block", small + "comand \"a\" { say = [\"x\"] }\n", `Did you mean "command"`},
		{"unknown argument", small + "command \"a\" {\n say = [\"x\"]\n says = [\"y\"]\n}\n", `en/common.hcl:16: Unsupported argument: An argument named "says"`},
		{"no matcher", "lang = \"en\"\n", "en/common.hcl:1: no matcher block"},
		{"language", strings.Replace(small, `"en"`, `"de"`, 1), `en/common.hcl:1: lang is "de"`},
		{"missing units", small, `en/common.hcl:1: units without a saying: mV, A,`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := lexicon.LoadFS(fstest.MapFS{"en/common.hcl": {Data: []byte(tt.src)}}, "en")
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got  %v\nwant %s", err, tt.want)
			}
		})
	}
	_, err := lexicon.LoadFS(fstest.MapFS{"en/common.hcl": {Data: []byte(small)}, "en/background.txt": {Data: []byte("# words\ngas\nGas bill\n")}}, "en")
	if want := `en/background.txt:3`; err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), `"Gas bill" is not one word`) {
		t.Errorf("common words: %v, want %s", err, want)
	}
	if _, err := lexicon.LoadFS(fstest.MapFS{}, "en"); err == nil {
		t.Error("no file: no error")
	}
	if _, err := lexicon.Language("de"); err == nil || !strings.Contains(err.Error(), `no language "de": there is en`) {
		t.Errorf("an unknown language: %v", err)
	}
	if _, err := lexicon.Language("../en"); err == nil {
		t.Error("a path for a language: no error")
	}
}

// All problems of all files are told at once, and a second file may repeat no id of the first.
func TestLoadAllProblems(t *testing.T) {
	_, err := lexicon.LoadFS(fstest.MapFS{
		"en/common.hcl": {Data: []byte(small + "option \"a\" { say = [\"X\"] }\n")},
		"en/2.hcl":      {Data: []byte("option \"a\" { say = [\"x\"] }\noption \"b\" { say = [\"Y\"] }\n")},
	}, "en")
	if err == nil {
		t.Fatal("no error")
	}
	for _, want := range []string{`option "a" is already at en/2.hcl:1`, `en/2.hcl:2: saying "Y"`} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%v\nlacks %s", err, want)
		}
	}
}

func FuzzLoad(f *testing.F) {
	f.Add([]byte(small))
	f.Add([]byte("option \"a\" { say = [1, null, [\"x\"]] }"))
	f.Fuzz(func(t *testing.T, src []byte) {
		lex, err := lexicon.LoadFS(fstest.MapFS{"en/common.hcl": {Data: src}}, "en")
		if (lex == nil) == (err == nil) {
			t.Errorf("lexicon %v with error %v", lex != nil, err)
		}
	})
}
