package drawing_test

import (
	"fmt"
	"html"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"readback/core/advise"
	"readback/core/job"
	"readback/core/lab/metric"
	"readback/core/lab/scenario"
	"readback/core/plan"
	"readback/core/protocol"
	"readback/flows/lab/workspace"
	"readback/flows/lexicon"
	"readback/flows/prompts"
	"readback/mobile/drawing"
)

// seen is a step that a job came to, with its picture.
type seen struct {
	model string
	view  protocol.View
	shows []string
}

// walk leads jobs of every file, each with one fault (every nth mode), and returns the steps they came to, each once.
func walk(t testing.TB, nth int, do func(b *workspace.Bench, v *protocol.View)) {
	t.Helper()
	words, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range workspace.All(t) {
		for mode := 0; mode < len(b.Model.Modes); mode += nth {
			adv, err := advise.ForCase(b.Case, words, plan.House{Call: math.NaN()})
			if err != nil {
				t.Fatal(err)
			}
			m, err := job.New(b.Model, adv, *lex, words, job.Options{})
			if err != nil {
				t.Fatal(err)
			}
			p := &scenario.Person{Model: b.Model, See: scenario.EngineSight(b.Engine), Modes: []int{mode}}
			if _, err := scenario.Lead(m, p, protocol.Begin{Job: "j", Appliance: b.Model.ID, Lang: "en"}, func(_ int, v *protocol.View) []protocol.Event {
				do(b, v)
				return nil
			}); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// withHands tells whether a step needs hands or eyes at the appliance: an act, a reading, a look that the file ties to a part or a place.
func withHands(b *workspace.Bench, v *protocol.View) bool {
	switch v.Step.Kind {
	case "act", "measure":
		return true
	case "look":
		return len(v.Step.Parts) > 0 || v.Step.Place != ""
	}
	return false
}

func steps(t testing.TB, nth int) map[string]seen {
	t.Helper()
	words, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]seen{}
	walk(t, nth, func(b *workspace.Bench, v *protocol.View) {
		id := b.Model.ID + " " + v.Step.ID
		if _, had := out[id]; !had && withHands(b, v) {
			out[id] = seen{b.Model.ID, *v, drawing.Shows(words, b.Model, v)}
		}
	})
	return out
}

// Every step with hands shows where and what; where the meter is used, the meter too.
func TestEveryStepWithHandsHasItsPicture(t *testing.T) {
	nth := 17
	if testing.Short() {
		nth = 60
	}
	all := steps(t, nth)
	if len(all) < 30 {
		t.Fatalf("only %d steps were seen", len(all))
	}
	for _, id := range slices.Sorted(maps.Keys(all)) {
		s := all[id]
		if len(s.shows) == 0 {
			t.Errorf("%s (%s) has no picture: %q", id, s.view.Step.Kind, s.view.Step.Act)
		}
		if s.view.Step.Kind == "measure" && s.view.Step.Meter != "" && !slices.Contains(s.shows, "meter") {
			t.Errorf("%s is a reading without a picture of the meter", id)
		}
	}
	if dir := os.Getenv("GALLERY"); dir != "" {
		gallery(t, dir, all)
	}
}

// gallery writes all pictures on one page, to look at.
func gallery(t *testing.T, dir string, all map[string]seen) {
	words, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString(`<body style="font:12px sans-serif;--sheet:#fff">`)
	for _, id := range slices.Sorted(maps.Keys(all)) {
		s := all[id]
		for _, w := range workspace.All(t) {
			if w.Model.ID == s.model {
				fmt.Fprintf(&b, `<div style="display:inline-block;vertical-align:top;width:344px;border:1px solid #ccc;margin:1px">%s<br><b>%s</b> %s | %s</div>`,
					drawing.Picture(words, w.Model, &s.view, false), id, html.EscapeString(s.view.Step.Act), html.EscapeString(s.view.Step.Where))
			}
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "steps.html"), []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

// pictureFigures counts the steps with hands that show a place, a thing or the meter.
func pictureFigures(t *testing.T, add metric.Adder) {
	all := steps(t, 3)
	good := 0
	for _, s := range all {
		if len(s.shows) > 0 {
			good++
		}
	}
	add("page.pictures_pct", 100*float64(good)/float64(len(all)), "%", "= 100", len(all))
}
