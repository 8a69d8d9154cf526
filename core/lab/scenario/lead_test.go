package scenario_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"readback/core/advise"
	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/job"
	"readback/core/lab/scenario"
	"readback/core/plan"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/worksite"
	ready "readback/flows/lab/workspace"
	"readback/flows/lexicon"
	"readback/flows/prompts"
)

// bench is an appliance made ready once for all tests.
type bench struct {
	model  *appliance.Model
	engine *appliance.Engine
	c      *infer.Case
}

type world struct {
	benches map[string]*bench
	ids     []string
	lex     *utterance.Lexicon
	words   *job.Words
}

var tongue = sync.OnceValues(func() (*world, error) {
	w := &world{benches: map[string]*bench{}}
	var err error
	if w.lex, err = lexicon.Load(); err == nil {
		w.words, err = prompts.Load()
	}
	return w, err
})

func get(t testing.TB) *world {
	t.Helper()
	w, err := tongue()
	if err != nil {
		t.Fatal(err)
	}
	if len(w.ids) == 0 {
		for _, b := range ready.All(t) {
			w.benches[b.Model.ID] = &bench{b.Model, b.Engine, b.Case}
			w.ids = append(w.ids, b.Model.ID)
		}
	}
	return w
}

func (w *world) machine(t testing.TB, b *bench) *job.Machine {
	t.Helper()
	adv, err := advise.ForCase(b.c, w.words, plan.House{Call: math.NaN()})
	if err != nil {
		t.Fatal(err)
	}
	m, err := job.New(b.model, adv, *w.lex, w.words, job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func (b *bench) modes(t testing.TB, names []string) []int {
	t.Helper()
	var out []int
	for _, n := range names {
		i := slices.IndexFunc(b.model.Modes, func(m appliance.Mode) bool { return m.Full == n })
		if i < 0 {
			t.Fatalf("%s has no mode %q", b.model.ID, n)
		}
		out = append(out, i)
	}
	slices.Sort(out)
	return out
}

// dialogues reads the dialogue files and makes one of each fault scenario.
func dialogues(t testing.TB) map[string]*scenario.Dialogue {
	t.Helper()
	out := map[string]*scenario.Dialogue{}
	names, err := filepath.Glob("../../../testdata/dialogues/*.txt")
	if err != nil || len(names) == 0 {
		t.Fatalf("no dialogue files: %v", err)
	}
	for _, n := range names {
		f, err := os.Open(n)
		if err != nil {
			t.Fatal(err)
		}
		d, err := scenario.ParseDialogue(f)
		f.Close()
		if err != nil {
			t.Fatalf("%s: %v", n, err)
		}
		out[strings.TrimSuffix(filepath.Base(n), ".txt")] = d
	}
	return out
}

func scenarios(t testing.TB) map[string]*scenario.Dialogue {
	t.Helper()
	out := map[string]*scenario.Dialogue{}
	names, err := filepath.Glob("../../../testdata/scenarios/*.json")
	if err != nil || len(names) == 0 {
		t.Fatalf("no scenarios: %v", err)
	}
	for _, n := range names {
		data, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		var s struct {
			ID, Appliance string
			Modes         []string
			Noticed       string
			Conclude      struct{ Repair, Stop string }
			Never         []string
		}
		if err := json.Unmarshal(data, &s); err != nil {
			t.Fatalf("%s: %v", n, err)
		}
		d := &scenario.Dialogue{Title: s.Noticed, Appliance: s.Appliance, Faults: s.Modes, Stop: s.Conclude.Stop, Never: s.Never}
		if s.Conclude.Repair != "" && s.Conclude.Stop == "" { // what crosses a stop line may stop before the part is named
			d.Repair, d.Outcome = []string{s.Conclude.Repair}, "fixed"
		}
		if s.Conclude.Repair == "" && s.Conclude.Stop == "" {
			d.Outcome = "nothing-wrong"
		}
		out[s.ID] = d
	}
	return out
}

// play leads the dialogue and returns what it should have been and was not.
func (w *world) play(t testing.TB, d *scenario.Dialogue) (*scenario.Run, error) {
	b := w.benches[d.Appliance]
	if b == nil {
		return nil, fmt.Errorf("no appliance %q", d.Appliance)
	}
	m := w.machine(t, b)
	faults := b.modes(t, d.Faults)
	starts, last := 0, ""
	p := &scenario.Person{Model: b.model, See: scenario.EngineSight(b.engine), Modes: faults, Habits: d.Habits, Says: d.Says, Chance: scenario.NewChance(1)}
	if d.Wakes > 0 {
		p.Modes = nil
	}
	run, err := scenario.Lead(m, p, protocol.Begin{Job: "test", Appliance: b.model.ID, Lang: "en"}, func(n int, v *protocol.View) []protocol.Event {
		var out []protocol.Event
		if last == "act."+worksite.PowerOn.String() && v.Step.ID != last {
			starts++
		}
		if last = v.Step.ID; d.Wakes > 0 && starts >= d.Wakes && len(p.Mended) == 0 {
			p.Modes = faults
		}
		if class, ok := d.Alarms[n]; ok {
			out = append(out, scenario.Alarm(class))
		}
		if slices.Contains(d.Kill, n) {
			out = append(out, protocol.Event{Type: protocol.EvResume})
		}
		return out
	})
	if err != nil {
		return run, err
	}
	return run, d.Judge(run)
}

func TestDialogues(t *testing.T) {
	w := get(t)
	for name, d := range dialogues(t) {
		t.Run(name, func(t *testing.T) {
			if run, err := w.play(t, d); err != nil {
				t.Errorf("%s: %v", d.Title, err)
				dump(t, run)
			}
		})
	}
}

func TestScenarios(t *testing.T) {
	w := get(t)
	for name, d := range scenarios(t) {
		t.Run(name, func(t *testing.T) {
			if run, err := w.play(t, d); err != nil {
				t.Errorf("%s: %v", d.Title, err)
				dump(t, run)
			}
		})
	}
}

// dump logs the end of a run.
func dump(t testing.TB, r *scenario.Run) {
	if r == nil {
		return
	}
	full := os.Getenv("DUMP") != ""
	for i, x := range r.Exchanges {
		if !full && i < len(r.Exchanges)-12 {
			continue
		}
		if x.Event.Said != nil {
			t.Logf("\t\t\t[%s] %s", x.Step, x.Event.Said.Text)
		}
		for _, e := range x.Effects {
			if e.Type == protocol.DoSay {
				t.Logf("%s", e.Text)
			}
		}
	}
	t.Logf("%+v", r.Result)
}

func TestParseDialogueErrors(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"unknown word", "appliance x\nfrobnicate y", "line 2: no such word"},
		{"no appliance", "fault a.b", "no appliance"},
		{"bare word", "appliance", "needs something"},
		{"bad habit", "appliance x\nperson sleepy 0.5", "no habit"},
		{"habit out of range", "appliance x\nperson misreads 2", "from 0 to 1"},
		{"bad answer", "appliance x\nsay w-c 26,1 V", "not a decimal"},
		{"bad unit", "appliance x\nsay w-c 26.1 volt", "no such unit"},
		{"bad alarm", "appliance x\nalarm gas", "number of an answer"},
	} {
		if _, err := scenario.ParseDialogue(strings.NewReader(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

func FuzzParseDialogue(f *testing.F) {
	f.Add("# t\nappliance x\nfault a.b\nsay w-c 26.1 V\nperson misreads 0.1\nalarm 3 gas\nnever board")
	f.Fuzz(func(t *testing.T, s string) {
		d, err := scenario.ParseDialogue(strings.NewReader(s))
		if (d == nil) == (err == nil) {
			t.Errorf("%v, %v", d, err)
		}
	})
}
