package flows_test

import (
	"os"
	"testing"

	"readback/flows"
	"readback/flows/lexicon"
)

func TestTinyLoads(t *testing.T) {
	m, err := flows.Load(os.DirFS("../testdata/flows"), "tiny.hcl")
	if err != nil {
		t.Fatal(err)
	}
	if len(m.Parts) != 16 || len(m.Checks) != 13 {
		t.Errorf("%d parts, %d checks", len(m.Parts), len(m.Checks))
	}
}

func TestBuiltinLoads(t *testing.T) {
	models, err := flows.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range models {
		t.Logf("%s: %d parts, %d modes, %d checks", m.ID, len(m.Parts), len(m.Modes), len(m.Checks))
	}
}

// TestBuiltinLint holds every built-in file to the static checker. Warnings are shown with -v.
func TestBuiltinLint(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	var options []string
	for _, o := range lex.Options {
		options = append(options, o.ID)
	}
	reports, err := flows.LintAll(options)
	for _, r := range reports {
		for _, p := range r.Problems {
			if p.Warning {
				t.Log(p)
			}
		}
		t.Logf("%s: %d groups, isolated to one repair %.1f %%, to three modes %.1f %%", r.Model.ID, len(r.Groups), 100*r.One, 100*r.Three)
	}
	if err != nil {
		t.Fatal(err)
	}
}
