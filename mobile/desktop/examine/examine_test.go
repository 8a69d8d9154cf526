package examine

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
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
	if path, err := guide(); err == nil && strings.Contains(path, "examine") {
		os.RemoveAll(filepath.Dir(path))
	}
	os.Exit(code)
}

func TestAll(t *testing.T) {
	if os.Getenv("EXAMINE") == "" {
		t.Skip("EXAMINE is not set: all, or words of the names of cases")
	}
	program, err := guide()
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for n := range catalogue {
		names = append(names, n)
	}
	slices.Sort(names)
	want := os.Getenv("EXAMINE")
	var cases []Case
	for i, n := range names {
		cases = append(cases, Case{Name: n, Faults: []string{n}, Seed: uint64(i)})
	}
	right, n := 0, 0
	for _, c := range cases {
		if want != "all" && !slices.Contains(strings.Split(want, ","), c.Name) {
			continue
		}
		r, err := c.Play(program)
		if err != nil {
			t.Errorf("%s: %v", c.Name, err)
			if r == nil {
				continue
			}
		}
		n++
		if r.Right {
			right++
		}
		t.Logf("%-18s right %-5v %-14s repair %-24s mended %v stop %s checks %d offs %d answers %d | %v | FORBIDDEN %v | %v | vain %v", c.Name, r.Right, r.Result.Outcome, r.Result.Repair, r.Result.Mended, r.Result.Stop, r.Checks, r.Cycles, r.Answers, r.Why, r.Forbidden, r.Silly, r.Vain)
		if dir := os.Getenv("EXAMINE_TALK"); dir != "" {
			if err := os.WriteFile(filepath.Join(dir, strings.ReplaceAll(c.Name, " ", "-")+".txt"), []byte(strings.Join(r.Talk, "\n")), 0o644); err != nil {
				t.Error(err)
			}
		}
	}
	t.Logf("%d of %d", right, n)
}
