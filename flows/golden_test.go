package flows_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/flows"
)

// predictions writes what every check shows on a good appliance, and of every single fault what it shows otherwise. Everything goes by
// id and is sorted, so that a block may move to another place or file.
func predictions(e *appliance.Engine) string {
	m := e.Model()
	t := e.Table(e.Singles())
	show := func(c, h int) string {
		o := t.Prediction(c, h)
		switch {
		case o.Option >= 0 && o.Option < len(m.Checks[c].Options):
			return m.Checks[c].Options[o.Option].ID
		case o.State != measure.Number:
			return string(o.State)
		}
		return fmt.Sprintf("%.3g", o.Value)
	}
	checks := make([]int, len(m.Checks))
	for i := range checks {
		checks[i] = i
	}
	slices.SortFunc(checks, func(a, b int) int { return strings.Compare(m.Checks[a].ID, m.Checks[b].ID) })
	var lines []string
	for h := range t.Hyps {
		name := "nothing is wrong"
		if h > 0 {
			name = m.Modes[t.Hyps[h][0]].Full
		}
		var b strings.Builder
		fmt.Fprintf(&b, "%s:", name)
		for _, c := range checks {
			if s := show(c, h); h == 0 || s != show(c, 0) {
				fmt.Fprintf(&b, " %s=%s", m.Checks[c].ID, s)
			}
		}
		lines = append(lines, b.String())
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n") + "\n"
}

// alike tells whether two entries are the same but for the last digits, which depend on the order in which nets are solved.
func alike(a, b string) bool {
	ka, va, _ := strings.Cut(a, "=")
	kb, vb, _ := strings.Cut(b, "=")
	x, errA := strconv.ParseFloat(va, 64)
	y, errB := strconv.ParseFloat(vb, 64)
	if errA != nil || errB != nil {
		return a == b
	}
	return ka == kb && math.Abs(x-y) <= 1e-3+0.01*max(math.Abs(x), math.Abs(y))
}

// TestPredictions holds the built-in files to the predictions they had: moving a piece into an assembly changes none. UPDATE=1 writes
// them; read the difference before committing it.
func TestPredictions(t *testing.T) {
	_, names := flows.Files()
	for _, n := range names {
		t.Run(filepath.Base(n), func(t *testing.T) {
			got := predictions(engine(t, ".", n))
			golden := filepath.Join("../testdata/flows/predictions", strings.TrimSuffix(filepath.Base(n), ".hcl")+".txt")
			if os.Getenv("UPDATE") != "" {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			old, now := strings.Fields(string(want)), strings.Fields(got)
			if len(old) != len(now) {
				t.Fatal(cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")))
			}
			fault := ""
			for i := range old {
				if strings.HasSuffix(old[i], ":") {
					fault = old[i]
				}
				if !alike(old[i], now[i]) {
					t.Errorf("%s %s, was %s", fault, now[i], old[i])
				}
			}
		})
	}
}
