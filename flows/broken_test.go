package flows_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"

	"readback/flows"
)

// brokenFiles are the archives of files that break one rule each.
func brokenFiles(t testing.TB) map[string]*txtar.Archive {
	t.Helper()
	names, err := filepath.Glob("../testdata/flows/broken/*.txtar")
	if err != nil || len(names) < 8 {
		t.Fatalf("%d archives of broken files, %v", len(names), err)
	}
	out := map[string]*txtar.Archive{}
	for _, name := range names {
		if out[name], err = txtar.ParseFile(name); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// TestBroken holds the checker to its exact words: one broken file a rule, its problems beside it. UPDATE=1 writes them.
func TestBroken(t *testing.T) {
	update := os.Getenv("UPDATE") != ""
	n := 0
	for archive, a := range brokenFiles(t) {
		family := strings.TrimSuffix(filepath.Base(archive), ".txtar")
		for i, f := range a.Files {
			id, ok := strings.CutSuffix(f.Name, ".hcl")
			if !ok {
				continue
			}
			n++
			t.Run(family+"/"+id, func(t *testing.T) {
				r, err := flows.Lint(fstest.MapFS{f.Name: {Data: f.Data}}, f.Name, []string{"yes", "no", "maybe"})
				if err != nil {
					t.Fatal(err)
				}
				if len(r.Problems) == 0 {
					t.Error("nothing is found wrong")
				}
				if i+1 >= len(a.Files) || a.Files[i+1].Name != id+".txt" {
					t.Fatalf("%s: no %s.txt follows", archive, id)
				}
				got, want := r.Problems.Error()+"\n", &a.Files[i+1].Data
				if update {
					*want = []byte(got)
				}
				if d := cmp.Diff(string(*want), got); d != "" {
					t.Error(d)
				}
			})
		}
		if update {
			if err := os.WriteFile(archive, txtar.Format(a), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	if n < 80 {
		t.Errorf("%d broken files", n)
	}
}
