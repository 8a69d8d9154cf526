package flows_test

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"
	"time"

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

// Loops within loops are refused at once, in an attribute as in a text.
func TestNoLoops(t *testing.T) {
	many := "[" + strings.Repeat("1,", 200) + "1]"
	for _, src := range []string{
		`appliance "x" { title = [for a in ` + many + `: [for b in ` + many + `: [for c in ` + many + `: [for d in ` + many + `: a]]]][0] }`,
		`appliance "x" { title = "%{for a in ` + many + `}%{for b in ` + many + `}%{for c in ` + many + `}x%{endfor}%{endfor}%{endfor}" }`,
	} {
		began := time.Now()
		_, err := flows.Load(fstest.MapFS{"x.hcl": {Data: []byte(src)}}, "x.hcl")
		if err == nil || !strings.Contains(err.Error(), "no loops") {
			t.Errorf("%.200v", err)
		}
		if took := time.Since(began); took > 5*time.Second {
			t.Errorf("it took %v", took)
		}
	}
}
