package oracle

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"readback/core/lab/metric"
)

// guide is the program under examination, built once.
var guide = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "examine")
	if err != nil {
		return "", err
	}
	out := filepath.Join(dir, "readback")
	cmd := exec.Command("go", "build", "-o", out, "readback/mobile/desktop")
	if text, err := cmd.CombinedOutput(); err != nil {
		return "", fmt.Errorf("building the guide: %v\n%s", err, text)
	}
	return out, nil
})

func TestMain(m *testing.M) {
	code := m.Run()
	if built {
		if path, err := guide(); err == nil {
			os.RemoveAll(filepath.Dir(path))
		}
	}
	os.Exit(code)
}

var built bool

func program(t testing.TB) string {
	t.Helper()
	built = true
	path, err := guide()
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// playAll plays cases, some at a time, and gives the reports in their order. A dialogue of each goes to the folder EXAMINE_TALK.
func playAll(t testing.TB, cases []Case) []*Report {
	t.Helper()
	path := program(t)
	out := make([]*Report, len(cases))
	errs := make([]error, len(cases))
	var wait sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := range next {
				out[i], errs[i] = cases[i].Play(path)
				if os.Getenv("EXAMINE") != "" && out[i] != nil {
					fmt.Println(out[i])
				}
			}
		})
	}
	for i := range cases {
		next <- i
	}
	close(next)
	wait.Wait()
	for i, r := range out {
		if errs[i] != nil {
			t.Errorf("%s: %v", cases[i].Name, errs[i])
			r.Why = append(r.Why, errs[i].Error())
			r.Right = false
		}
		if dir := os.Getenv("EXAMINE_TALK"); dir != "" {
			name := strings.NewReplacer(" ", "-", ":", "", ",", "").Replace(r.Name) + ".txt"
			if err := os.WriteFile(filepath.Join(dir, name), []byte(strings.Join(r.Talk, "\n")+"\n"), 0o644); err != nil {
				t.Error(err)
			}
		}
	}
	return out
}

// TestStaysRight plays some jobs in front of the outside furnace. What they have shown once must stay so.
func TestStaysRight(t *testing.T) {
	if testing.Short() {
		t.Skip("-short: whole jobs take seconds each")
	}
	var cases []Case
	all := slices.Concat(Singles(), Others(), Doubles(), Unable())
	for _, name := range []string{"cracked", "cool", "limit-lead", "roll-left", "reversed", "hose-wet", "good", "gas smell", "has no meter: cool"} {
		i := slices.IndexFunc(all, func(c Case) bool { return c.Name == name })
		if i < 0 {
			t.Fatalf("no case %q", name)
		}
		cases = append(cases, all[i])
	}
	for _, r := range playAll(t, cases) {
		if !r.Right || len(r.Forbidden) > 0 {
			t.Errorf("%s", r)
			for _, line := range r.Talk {
				t.Log(line)
			}
		}
	}
}

// TestExamine plays the cases named in EXAMINE ("all", or names with semicolons between), and tells of each.
func TestExamine(t *testing.T) {
	want := os.Getenv("EXAMINE")
	if want == "" {
		t.Skip("EXAMINE is not set: all, or names of cases with semicolons between")
	}
	var cases []Case
	for _, c := range slices.Concat(Singles(), Others(), Doubles(), CarelessCases(), Unable()) {
		if want == "all" || slices.Contains(strings.Split(want, ";"), c.Name) {
			cases = append(cases, c)
		}
	}
	right := 0
	for _, r := range playAll(t, cases) {
		if r.Right {
			right++
		}
	}
	t.Logf("%d of %d", right, len(cases))
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		forbidden, all := 0, 0
		share := func(cases []Case) (right float64, n int, checks float64) {
			for _, r := range playAll(t, cases) {
				n++
				checks += float64(r.Checks)
				if r.Right {
					right++
				} else {
					t.Logf("%s", r)
				}
				if len(r.Forbidden) > 0 {
					t.Logf("%s", r)
				}
				forbidden += len(r.Forbidden)
			}
			all += n
			return 100 * right / float64(n), n, checks / float64(n)
		}
		x, n, checks := share(slices.Concat(Singles(), Others()))
		add("examine.right_pct", x, "%", ">= 95", n)
		add("examine.checks_mean", checks, "checks", "<= 25", n)
		x, n, _ = share(Doubles())
		add("examine.double_pct", x, "%", ">= 80", n)
		x, n, _ = share(CarelessCases())
		add("examine.careless_pct", x, "%", ">= 80", n)
		x, n, _ = share(Unable())
		add("examine.unable_pct", x, "%", ">= 100", n)
		add("examine.forbidden", float64(forbidden), "", "<= 0", all)
	})
}
