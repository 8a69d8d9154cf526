// Package core_test holds the rule of who may import whom.
package core_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// list returns "package: import import…" for the packages matching pattern, with the build tags given.
func list(t *testing.T, format, pattern string) map[string][]string {
	t.Helper()
	cmd := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .`+format+` " "}}`, pattern)
	cmd.Dir = ".."
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list %s: %v", pattern, err)
	}
	m := map[string][]string{}
	for line := range strings.Lines(string(out)) {
		f := strings.Fields(line)
		m[f[0]] = f[1:]
	}
	return m
}

// rigUsers are commands that play whole jobs or draw on purpose.
var rigUsers = map[string]bool{"readback/mobile/desktop": true}

func isStandard(p string) bool {
	first, _, _ := strings.Cut(p, "/")
	return !strings.Contains(first, ".") && first != "readback"
}

func TestImports(t *testing.T) {
	for p, deps := range list(t, "Deps", "./core/...") {
		for _, d := range deps {
			if !isStandard(d) && !strings.HasPrefix(d, "readback/core/") {
				t.Errorf("%s depends on %s: core imports the standard library only", p, d)
			}
		}
	}
	hearing := map[string]bool{"readback/core/unit": true, "readback/core/utterance": true, "readback/core/measure": true,
		"readback/core/vocab": true, "readback/core/lab/metric": true}
	for p, deps := range list(t, "Deps", "./speech/...") {
		for _, d := range deps {
			if strings.HasPrefix(d, "readback/core/") && !hearing[d] {
				t.Errorf("%s depends on %s: nothing in speech knows a furnace", p, d)
			}
			if strings.HasPrefix(d, "readback/flows/") && d != "readback/flows/lexicon" {
				t.Errorf("%s depends on %s", p, d)
			}
		}
	}
	for p, deps := range list(t, "Deps", "./flows/...") {
		for _, d := range deps {
			if strings.HasPrefix(d, "readback/speech") || strings.HasPrefix(d, "readback/mobile") {
				t.Errorf("%s depends on %s", p, d)
			}
		}
	}
	for p, deps := range list(t, "Deps", "./...") {
		if strings.Contains(p, "/lab/") || rigUsers[p] {
			continue
		}
		for _, d := range deps {
			if strings.HasPrefix(d, "readback/") && strings.Contains(d, "/lab/") {
				t.Errorf("%s depends on %s: what is shipped knows no rig", p, d)
			}
		}
	}
	native := map[string]bool{"readback/speech/clib": true, "readback/speech/vosk": true, "readback/speech/onnx": true, "readback/mobile/desktop/sound": true}
	for p, deps := range list(t, "Imports", "./...") {
		for _, d := range deps {
			if (d == "C" || strings.Contains(d, "ebitengine/purego")) && !native[p] {
				t.Errorf("%s imports %s: native code is loaded in speech/clib, vosk, moonshine and mobile/desktop/sound only", p, d)
			}
		}
	}
}

// What go build or a tool drops at the top level is not committed with the rest.
func TestTopLevel(t *testing.T) {
	out, err := exec.Command("git", "-C", "..", "ls-files").Output()
	if err != nil {
		t.Skip("this is no clone: what is committed cannot be listed")
	}
	want := map[string]bool{"mobile": true, "core": true, "speech": true, "flows": true, "assets": true, "testdata": true,
		"README.md": true, "DEVELOPERS.md": true, "go.mod": true, "go.sum": true, "Makefile": true}
	for line := range strings.Lines(string(out)) {
		if top, _, _ := strings.Cut(strings.TrimSpace(line), "/"); !want[top] && !strings.HasPrefix(top, ".") {
			t.Errorf("%s stands at the top level and is committed", top)
			want[top] = true // told once
		}
	}
}

// The core never asks for the time or a random number by itself; they come in as values. A generator started at a seed that is
// written down gives the same numbers every time, so it may be made; the package's own unseeded functions may not be called.
func TestNoClockNoChance(t *testing.T) {
	unseeded := regexp.MustCompile(`\brand\.(Int|Uint|Float|N\(|Perm|Shuffle|Norm|Exp)`)
	for p, imports := range list(t, "Imports", "./core/...") {
		if p == "readback/core/lab/metric" || p == "readback/core/lab/trainreader" { // a help for tests, and a command: part of no program
			continue
		}
		for _, d := range imports {
			switch d {
			case "time", "math/rand", "crypto/rand", "net", "net/http", "os", "os/exec", "log":
				t.Errorf("%s imports %s: it comes in as a value", p, d)
			case "math/rand/v2":
				files, err := filepath.Glob(filepath.Join("..", strings.TrimPrefix(p, "readback/"), "*.go"))
				if err != nil {
					t.Fatal(err)
				}
				for _, f := range files {
					src, err := os.ReadFile(f)
					if err != nil {
						t.Fatal(err)
					}
					if m := unseeded.Find(src); m != nil {
						t.Errorf("%s calls %s…: numbers come from a seed", f, m)
					}
				}
			}
		}
	}
}
