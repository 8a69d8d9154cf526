package flows_test

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"readback/flows"
)

// copyOf puts what a new kind could touch into a folder of its own.
func copyOf(t *testing.T, dir string) {
	t.Helper()
	for _, top := range []string{"core", "flows", "mobile/drawing", "go.mod", "go.sum"} {
		err := filepath.WalkDir(filepath.Join("..", top), func(p string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			if base := filepath.Base(p); strings.HasSuffix(base, "_test.go") && base != "kind_test.go" && base != "format_test.go" ||
				strings.Contains(p, "/lab/") && !strings.Contains(p, "/lab/metric/") {
				return nil
			}
			src, err := os.ReadFile(p)
			if err != nil {
				return err
			}
			to := filepath.Join(dir, strings.TrimPrefix(p, ".."))
			if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
				return err
			}
			return os.WriteFile(to, src, 0o644)
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}

// newKind adds the kind of testdata/flows/kind.txtar to a copy of the program, proves that it works there, and returns the files of the
// program that were added or changed.
func newKind(t *testing.T) []string {
	t.Helper()
	dir := t.TempDir()
	copyOf(t, dir)
	a, err := txtar.ParseFile("../testdata/flows/kind.txtar")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range a.Files {
		to := filepath.Join(dir, f.Name)
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(to, f.Data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	run := func(args ...string) string {
		cmd := exec.Command("go", args...)
		cmd.Dir = dir
		cmd.Env = append(os.Environ(), "GOFLAGS=-trimpath", "UPDATE=1", "FIGURES=")
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("go %s: %v\n%s", strings.Join(args, " "), err, out)
		}
		return string(out)
	}
	run("test", "-vet=off", "./flows", "-run", "TestFormatListsKinds")
	run("test", "-vet=off", "./core/appliance", "-run", "TestKinds")
	if got, want := run("run", "./proof"), "10000 1000000000 15000 true\n"; got != want {
		t.Errorf("the new kind reads %q, want %q", got, want)
	}
	var touched []string
	err = filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, err := filepath.Rel(dir, p)
		if err != nil || strings.HasPrefix(rel, "proof") {
			return err
		}
		now, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		if was, err := os.ReadFile(filepath.Join("..", rel)); err != nil || !bytes.Equal(was, now) {
			touched = append(touched, rel)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return touched
}

// TestNewKind: a part kind with two modes is one file, and the list of kinds that is generated.
func TestNewKind(t *testing.T) {
	if testing.Short() {
		t.Skip("builds a copy of the program: half a minute")
	}
	touched := newKind(t)
	t.Log(touched)
	if len(touched) != 2 {
		t.Errorf("a new kind touches %v, want its file and FORMAT.md", touched)
	}
}

// warnings are all problems of the shipped files.
func warnings(t *testing.T) (out flows.Problems, files int) {
	t.Helper()
	fsys, names := flows.Files()
	for _, name := range names {
		r, err := flows.Lint(fsys, name, nil)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, r.Problems...)
	}
	return out, len(names)
}

// TestNoWarnings: a new warning on a shipped file is seen, because there is no other.
func TestNoWarnings(t *testing.T) {
	ps, _ := warnings(t)
	for _, p := range ps {
		t.Error(p)
	}
}
