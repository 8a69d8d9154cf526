package flows_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"readback/flows"
)

// TestBroken holds the checker to its exact words: one broken file a rule, its problems beside it. UPDATE=1 writes them.
func TestBroken(t *testing.T) {
	const dir = "../testdata/flows/broken"
	files, err := filepath.Glob(dir + "/*.hcl")
	if err != nil || len(files) < 60 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, f := range files {
		name := filepath.Base(f)
		t.Run(name, func(t *testing.T) {
			r, err := flows.Lint(os.DirFS(dir), name, []string{"yes", "no", "maybe"})
			if err != nil {
				t.Fatal(err)
			}
			got := r.Problems.Error() + "\n"
			golden := strings.TrimSuffix(f, ".hcl") + ".txt"
			if os.Getenv("UPDATE") != "" {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(string(want), got); d != "" {
				t.Error(d)
			}
			if len(r.Problems) == 0 {
				t.Error("nothing is found wrong")
			}
		})
	}
}
