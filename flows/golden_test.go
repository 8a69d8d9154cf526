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

// entries are the predictions of a table by fault and check. A look that reads as on a good appliance is there too.
func entries(table string) map[string]string {
	out, healthy := map[string]string{}, map[string]string{}
	var faults []string
	for _, line := range strings.Split(strings.TrimSpace(table), "\n") {
		fault, rest, _ := strings.Cut(line, ": ")
		faults = append(faults, fault)
		for _, f := range strings.Fields(rest) {
			check, v, _ := strings.Cut(f, "=")
			out[fault+" "+check] = v
			if fault == "nothing is wrong" {
				healthy[check] = v
			}
		}
	}
	for _, fault := range faults {
		for check, v := range healthy {
			if _, ok := out[fault+" "+check]; !ok {
				out[fault+" "+check] = v
			}
		}
	}
	return out
}

// alike tells whether two predictions are the same but for the last digits, which depend on the order in which nets are solved.
func alike(a, b string) bool {
	x, errA := strconv.ParseFloat(a, 64)
	y, errB := strconv.ParseFloat(b, 64)
	if errA != nil || errB != nil {
		return a == b
	}
	return math.Abs(x-y) <= 1e-3+0.01*max(math.Abs(x), math.Abs(y))
}

// TestPredictions holds the built-in files to the predictions they had: moving a piece into an assembly changes none. New checks and
// faults are free. UPDATE=1 writes the tables; read the difference before committing it.
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
			old, now := entries(string(want)), entries(got)
			kept := 0
			for k, v := range old {
				w, ok := now[k]
				if !ok {
					continue // a fault or a check that is gone
				}
				kept++
				if !alike(v, w) {
					t.Errorf("%s is %s, was %s", k, w, v)
				}
			}
			if kept < len(old)*9/10 {
				t.Errorf("of %d predictions %d are still there", len(old), kept)
			}
		})
	}
}
