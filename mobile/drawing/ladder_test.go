package drawing_test

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"readback/core/appliance"
	"readback/core/lab/metric"
	"readback/core/words"
	"readback/flows"
	"readback/flows/prompts"
	"readback/mobile/drawing"
)

var update = flag.Bool("update", false, "rewrite the golden drawings")

func models(t *testing.T) []*appliance.Model {
	t.Helper()
	ms, err := flows.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	if len(ms) == 0 {
		t.Fatal("no equipment file is built in")
	}
	return ms
}

// missing lists the lead points of checks that are not on the drawing.
func missing(m *appliance.Model, l *drawing.Layout) (out []string, n int) {
	for _, c := range m.Checks {
		for _, p := range []int{c.Red, c.Black} {
			if p < 0 {
				continue
			}
			n++
			if _, ok := l.Points[m.Points[p].ID]; !ok {
				out = append(out, c.ID+": "+m.Points[p].ID)
			}
		}
	}
	return out, n
}

// overlaps lists pairs of labels that touch.
func overlaps(l *drawing.Layout) (out []string) {
	for i, a := range l.Labels {
		if a.X < 0 || a.Y < 0 || a.X+a.W > l.W || a.Y+a.H > l.H {
			out = append(out, a.Text+" leaves the sheet")
		}
		for _, b := range l.Labels[:i] {
			if a.Overlaps(b) {
				out = append(out, a.Text+" / "+b.Text)
			}
		}
	}
	return out
}

func TestEveryLeadPointIsDrawn(t *testing.T) {
	for _, m := range models(t) {
		if out, _ := missing(m, drawing.All(english(t), m)); len(out) > 0 {
			t.Errorf("%s: not on the drawing: %v", m.ID, out)
		}
	}
}

func TestNoLabelOverlaps(t *testing.T) {
	for _, m := range models(t) {
		if out := overlaps(drawing.All(english(t), m)); len(out) > 0 {
			t.Errorf("%s: %v", m.ID, out)
		}
		for _, c := range m.Checks {
			if c.Red < 0 || c.Black < 0 {
				continue
			}
			k := drawing.Marks{Red: m.Points[c.Red].ID, Black: m.Points[c.Black].ID, Only: true}
			l := drawing.Near(english(t), m, k)
			l.Labels = append(l.Labels, l.Leads(english(t), k)...)
			if out := overlaps(l); len(out) > 0 {
				t.Errorf("%s, %s: %v", m.ID, c.ID, out)
			}
			for _, p := range []string{k.Red, k.Black} {
				if _, ok := l.Points[p]; !ok {
					t.Errorf("%s, %s: point %s is not on the small drawing", m.ID, c.ID, p)
				}
			}
		}
	}
}

// The drawings are golden files, so that a change of the circuit is seen in review: the whole circuit, the part of it about the first
// check of a part with two leads, with every mark there is.
func TestGolden(t *testing.T) {
	for _, m := range models(t) {
		golden(t, m.ID+".svg", drawing.Draw(english(t), m, drawing.Marks{}))
		for _, c := range m.Checks {
			if c.Red < 0 || c.Black < 0 || c.Part < 0 {
				continue
			}
			p, red := &m.Parts[c.Part], &m.Points[c.Red]
			golden(t, m.ID+"-near.svg", drawing.Draw(english(t), m, drawing.Marks{Red: red.ID, Black: m.Points[c.Black].ID, Parts: []string{p.ID}, Suspects: map[string]float64{p.ID: 0.6},
				Good: []string{p.ID}, Lifted: []string{red.Name}, Energised: map[string]bool{red.Net: true}, Only: true}))
			break
		}
	}
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	name := filepath.Join("testdata", file)
	got += "\n"
	if *update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Errorf("%s: the drawing changed; look at it and run the test with -update", file)
	}
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		shown, all, touching, drawings := 0, 0, 0, 0
		for _, m := range models(t) {
			l := drawing.All(english(t), m)
			out, n := missing(m, l)
			all += n
			shown += n - len(out)
			touching += len(overlaps(l))
			for _, c := range m.Checks {
				if c.Red >= 0 && c.Black >= 0 {
					k := drawing.Marks{Red: m.Points[c.Red].ID, Black: m.Points[c.Black].ID, Only: true}
					near := drawing.Near(english(t), m, k)
					near.Labels = append(near.Labels, near.Leads(english(t), k)...)
					touching += len(overlaps(near))
					drawings++
				}
			}
			drawings++
		}
		add("draw.points_shown_pct", 100*float64(shown)/float64(all), "%", ">= 100", all)
		add("draw.overlaps", float64(touching), "labels", "= 0", drawings)
		pictureFigures(t, add)
	})
}

func english(t *testing.T) *words.Words {
	t.Helper()
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	return w
}
