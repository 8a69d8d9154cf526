package app_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/lab/scenario"
	"readback/core/protocol"
	"readback/core/report"
	"readback/core/vocab"
	"readback/core/words"
	"readback/flows"
	"readback/flows/lab/pseudo"
	"readback/flows/lexicon"
	"readback/flows/prompts"
	"readback/mobile/app"
	"readback/mobile/drawing"
)

// leaks gathers English words that were shown, said or printed, with where.
type leaks struct {
	models  []*appliance.Model
	allowed map[string]bool
	marks   map[string]bool  // of nets and terminals: a label of the drawing that is one of them is no word
	said    []*regexp.Regexp // what the person said, which is nobody's to translate
	found   map[string]string
	texts   int
}

var english = regexp.MustCompile(`[A-Za-z]{2,}`)

// neutral are signs that are the same in every language: units' symbols, categories of meters, file kinds.
var neutral = []string{"mV", "mA", "nF", "Hz", "Pa", "kPa", "psi", "ppm", "AC", "DC", "OL", "Btu", "min", "Readback"}

func (l *leaks) text(where, s string) {
	if s == "" {
		return
	}
	l.texts++
	for _, x := range l.said {
		s = x.ReplaceAllString(s, "")
	}
	for _, w := range english.FindAllString(s, -1) {
		if !l.allowed[w] && l.found[w] == "" {
			l.found[w] = fmt.Sprintf("%s: %q", where, s)
		}
	}
}

// ids are the fields of the protocol that hold an id out of a closed list, or one of the equipment file. All other
// strings are words.
var ids = map[string]bool{"Job": true, "Also": true, "Check": true, "Stage": true, "State": true, "Kind": true, "ID": true, "Power": true, "Gas": true, "Door": true, "Call": true, "Level": true,
	"Verdict": true, "Eye": true, "Part": true, "Parts": true, "Points": true, "Place": true, "Unit": true, "Keypad": true, "Ended": true, "Who": true, "Type": true,
	"Outcome": true, "Repair": true, "Mended": true, "Stop": true}

// fields walks the words of a value of the protocol.
func (l *leaks) fields(where string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			l.fields(where, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			l.fields(where, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if name := v.Type().Field(i).Name; !ids[name] || name == "Power" && v.Type() == reflect.TypeFor[protocol.StepView]() {
				l.fields(where+"."+name, v.Field(i))
			}
		}
	case reflect.String:
		l.text(where, v.String())
	}
}

var (
	slot   = regexp.MustCompile(`\{[a-z]+\}`)
	markup = regexp.MustCompile(`(?s)<style.*?</style>|<!doctype html>|<[^>]*>`)
	labels = regexp.MustCompile(`(?:aria-label|alt|title|placeholder)="([^"]*)"`)
)

// page walks the words of an HTML page or an SVG picture.
func (l *leaks) page(where, s string) {
	for _, m := range labels.FindAllStringSubmatch(s, -1) {
		l.text(where+" label", html.UnescapeString(m[1]))
	}
	for _, t := range markup.Split(s, -1) {
		if t = html.UnescapeString(strings.TrimSpace(t)); !l.marks[t] {
			l.text(where, t)
		}
	}
}

// pseudoLanguage makes the program know the pseudo language.
func pseudoLanguage(t testing.TB) (*words.Words, *leaks) {
	t.Helper()
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	models, err := flows.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	l := &leaks{allowed: map[string]bool{}, marks: map[string]bool{}, found: map[string]string{}}
	for _, x := range neutral {
		l.allowed[x] = true
	}
	for _, m := range models {
		for i := range m.Parts { // terminals and nets have marks, as printed on a board or drawn on a ladder: data of the file, and no words
			for _, net := range m.Parts[i].Ports {
				l.marks[net] = true
			}
			for _, o := range m.Parts[i].Outputs {
				l.allowed[o.ID] = true
			}
			for _, in := range m.Parts[i].Inputs {
				l.allowed[in.ID] = true
			}
		}
		l.models = append(l.models, pseudo.Model(m))
	}
	q := pseudo.Words(w)
	if err := prompts.Compare(q, w); err != nil {
		t.Fatal(err)
	}
	if err := app.AddLanguage(q, pseudo.Lexicon(lex), l.models); err != nil {
		t.Fatal(err)
	}
	return q, l
}

// wholeJob leads a job by touch in the pseudo language and walks all that came of it.
func (l *leaks) wholeJob(t testing.TB, w *words.Words, m *appliance.Model, mode int) *scenario.Run {
	t.Helper()
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	begin := protocol.Begin{Job: "1", Appliance: m.ID, Lang: pseudo.Lang}
	made, err := app.NewMachine(begin)
	if err != nil {
		t.Fatal(err)
	}
	machine := made.(*job.Machine)
	p := &scenario.Person{Model: m, See: scenario.EngineSight(e), Modes: []int{mode}, Chance: scenario.NewChance(1)}
	run, err := scenario.Lead(machine, p, begin, nil)
	if err != nil {
		t.Fatal(err)
	}
	rec := report.Job{Words: w, Clock: func(at int64) string { return fmt.Sprint(at) }}
	said := map[string]bool{}
	for _, x := range run.Exchanges {
		if u := x.Event.Said; u != nil {
			said[u.Text] = true
			for _, mean := range u.Meanings {
				said[mean.Text] = true
			}
		}
	}
	l.said = nil
	for _, s := range slices.Sorted(maps.Keys(said)) {
		if len(s) > 1 {
			l.said = append(l.said, regexp.MustCompile(`(?i)\b`+regexp.QuoteMeta(s)+`\b`))
		}
	}
	slices.Reverse(l.said) // the longer of two with one beginning first
	for _, x := range run.Exchanges {
		rec.Entries = append(rec.Entries, report.Entry{Event: x.Event, Effects: x.Effects, View: x.View})
		l.fields("view", reflect.ValueOf(x.View))
		for _, f := range x.Effects {
			if f.Type == protocol.DoSay {
				l.text("speech", f.Text)
			}
		}
		v := &x.View
		k := drawing.Marks{Parts: v.Step.Parts, Suspects: map[string]float64{}, Lifted: v.Site.Wires, Only: true}
		if len(v.Step.Points) > 1 {
			k.Red, k.Black = v.Step.Points[0], v.Step.Points[1]
		}
		l.page("drawing", drawing.Draw(w, m, k))
		l.page("places", drawing.Places(w, m, v.Step.Place, v.Step.Parts, v.Site.Covers))
	}
	var b bytes.Buffer
	if err := report.HTML(&b, rec); err != nil {
		t.Fatal(err)
	}
	l.page("record", b.String())
	b.Reset()
	if err := report.Text(&b, rec); err != nil {
		t.Fatal(err)
	}
	l.text("record as text", b.String())
	l.page("circuit", drawing.Draw(w, m, drawing.Marks{}))
	return run
}

// catalogue walks the words of the line protocol's first line.
func (l *leaks) catalogue(t testing.TB, id string) {
	t.Helper()
	c, err := app.Catalogue(pseudo.Lang, id)
	if err != nil {
		t.Fatal(err)
	}
	data, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	var v any
	if err := json.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	var walk func(key string, v any)
	walk = func(key string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for k, x := range v {
				walk(k, x)
			}
		case []any:
			for _, x := range v {
				walk(key, x)
			}
		case string:
			if slices.Contains([]string{"name", "title", "ask", "act", "caution", "say", "means", "match", "tell", "now", "where", "text"}, key) {
				l.text("catalogue."+key, v)
			}
		}
	}
	walk("", v)
}

// page walks the files of the page: the words that come with them, and the strings of the scripts that are shown.
func (l *leaks) pageFiles(t *testing.T) {
	b := open(t, app.Config{Lang: pseudo.Lang})
	get := func(path string) string {
		status, _, data := b.hub.Request("GET", path, nil)
		if status != 200 {
			t.Fatalf("%s: %d %s", path, status, data)
		}
		return string(data)
	}
	index := get("/")
	if !strings.Contains(index, `lang="`+pseudo.Lang+`"`) {
		t.Error("the page does not tell its language")
	}
	l.page("index.html", index)
	for line := range strings.Lines(get("/words.js")) {
		name, data, ok := strings.Cut(strings.TrimSuffix(strings.TrimSpace(line), ";"), " = ")
		if !ok || strings.Contains(name, " T") || strings.Contains(name, "lang") || strings.Contains(name, "units") {
			continue
		}
		var v any
		if strings.HasSuffix(name, "classes") { // its keys keep their order and stand bare or quoted alike
			data = strings.TrimSpace(data)
		}
		if err := json.Unmarshal([]byte(data), &v); err != nil {
			t.Fatalf("words.js: %s: %v", name, err)
		}
		switch v := v.(type) {
		case map[string]any:
			for k, x := range v {
				l.text("words.js "+name+"."+k, slot.ReplaceAllString(x.(string), ""))
			}
		case []any:
			for _, x := range v {
				if s, ok := x.(string); ok {
					l.text("words.js "+name, s)
					continue
				}
				g := x.([]any)
				l.text("words.js group", g[0].(string))
				for _, c := range g[1].([]any) {
					l.text("words.js command", c.([]any)[1].(string))
				}
			}
		}
	}
	for _, f := range []string{"app", "camera", "card", "core", "foot", "home", "sound", "tools"} {
		for n, line := range strings.Split(get("/"+f+".js"), "\n") {
			code, _, _ := strings.Cut(line, "// ")
			for _, s := range shownInScript.FindAllStringSubmatch(code, -1) {
				l.text(fmt.Sprintf("%s.js:%d", f, n+1), s[1])
			}
		}
	}
}

// shownInScript finds strings of two words and more, and those that begin with a capital: what a script shows looks
// so, what it works with does not.
var shownInScript = regexp.MustCompile(`['"` + "`" + `]([A-Z][a-z]+(?: [^'"` + "`" + `]*)?)['"` + "`" + `]`)

// scriptWords are capital words of the platform in the scripts.
var scriptWords = []string{"Escape", "Enter", "Tab", "Backspace", "ArrowRight", "ArrowLeft", "ArrowUp", "ArrowDown", "NotAllowedError", "Esc"}

func testLeaks(t *testing.T, l *leaks, w *words.Words) {
	t.Helper()
	for _, m := range l.models {
		l.catalogue(t, m.ID)
		// one mode that ends in a swap, and one more
		modes := map[string]int{}
		for i := range m.Modes {
			r := &m.Repairs[m.Modes[i].Repair]
			if was, ok := modes[r.Kind]; !ok || len(r.Steps) > len(m.Repairs[m.Modes[was].Repair].Steps) {
				modes[r.Kind] = i
			}
		}
		for _, kind := range []string{"replace", "call"} {
			if i, ok := modes[kind]; ok {
				run := l.wholeJob(t, w, m, i)
				t.Logf("%s, %s: %d exchanges, %s", m.ID, m.Modes[i].Full, len(run.Exchanges), run.Result.Outcome)
				if !run.Ended || len(run.Exchanges) < 20 {
					t.Errorf("%s: the job ended %v after %d exchanges", m.ID, run.Ended, len(run.Exchanges))
				}
			}
		}
	}
	for _, x := range scriptWords {
		l.allowed[x] = true
	}
	l.pageFiles(t)
}

// TestLanguage: whole jobs in a language made by machine show, say and print no English.
func TestLanguage(t *testing.T) {
	w, l := pseudoLanguage(t)
	l.text("the test itself", "Open the door")
	if len(l.found) != 3 {
		t.Fatalf("English is not found: %v", l.found)
	}
	clear(l.found)
	testLeaks(t, l, w)
	for _, word := range slices.Sorted(maps.Keys(l.found)) {
		t.Errorf("%s in %s", word, l.found[word])
	}
	t.Logf("%d texts", l.texts)
}

// TestUnknownLanguage: a language that does not come with the program is an error that names those that do.
func TestUnknownLanguage(t *testing.T) {
	if _, err := app.Open(app.Config{Dir: t.TempDir(), Host: &host{}, Lang: "de"}); err == nil || !strings.Contains(err.Error(), `no language "de": there is en`) {
		t.Errorf("open: %v", err)
	}
	if _, err := app.NewMachine(protocol.Begin{Job: "j", Lang: "de"}); err == nil || !strings.Contains(err.Error(), `no language "de"`) {
		t.Errorf("begin: %v", err)
	}
}

// TestTermsUsed: every term that a source file asks for is there, every term is asked for, and the closed lists are
// named whole.
func TestTermsUsed(t *testing.T) {
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	want := func(where, id string) {
		if strings.HasSuffix(id, "-") { // the rest is put to it
			return
		}
		used[id] = true
		if _, ok := w.Terms[id]; !ok {
			t.Errorf("%s asks for %s, which is no term", where, id)
		}
	}
	for _, c := range vocab.Commands {
		want("vocab", "command."+c.ID)
		want("vocab", "commands."+c.Group)
		want("vocab", "option."+c.ID)
	}
	for _, a := range vocab.AlarmIDs() {
		if a != "silent" {
			want("vocab", "alarm."+a)
			want("vocab", "last."+a+"-act")
			want("vocab", "last."+a+"-then")
		}
	}
	for _, o := range vocab.OutcomeIDs() {
		want("vocab", "ended."+o)
	}
	inGo, inScript := regexp.MustCompile(`(?:Term\(|way (?::?)= |\d, )"([a-z-]+\.[a-zA-Z-]+)"`), regexp.MustCompile(`\bT\((?:[^'()]*\? )?'([a-z-]+)'(?: : '([a-z-]+)')?`)
	written := ""
	for _, root := range []string{"../../core", "../../mobile"} {
		err := filepath.WalkDir(root, func(name string, _ fs.DirEntry, err error) error {
			if err != nil || strings.HasSuffix(name, "_test.go") || strings.Contains(name, "node_modules") {
				return err
			}
			script := filepath.Ext(name) == ".js" && strings.Contains(name, "page")
			if !script && filepath.Ext(name) != ".go" {
				return nil
			}
			data, err := os.ReadFile(name)
			if script {
				for _, m := range inScript.FindAllStringSubmatch(string(data), -1) {
					for _, id := range m[1:] {
						if id != "" {
							want(name, "page."+id)
						}
					}
				}
				return err
			}
			written += string(data)
			for _, m := range inGo.FindAllStringSubmatch(string(data), -1) {
				want(name, m[1])
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	// Terms whose ids are put together: these groups are looked up by an id of a closed list.
	listed := []string{"verdict", "state", "source", "level", "picture", "device", "change", "colour", "light", "sight", "reason", "origin", "outcome", "page-unit",
		"drawing", "last", "evidence", "number", "reading", "record"}
	for _, id := range slices.Sorted(maps.Keys(w.Terms)) {
		group, tail, _ := strings.Cut(id, ".")
		if !used[id] && !slices.Contains(listed, group) && !strings.Contains(written, `"`+id+`"`) &&
			!(group == "page" && (strings.HasPrefix(tail, "verdict-") || strings.HasPrefix(tail, "call-") || inIndex[tail])) {
			t.Errorf("term %s is never asked for", id)
		}
	}
}

// inIndex are the terms of index.html.
var inIndex = map[string]bool{"no-script": true, "state": true, "said": true, "always": true}
