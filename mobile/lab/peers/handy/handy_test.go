package handy

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// build makes the program, or takes the one named by PEERS_BIN.
func build(t *testing.T) string {
	if b := os.Getenv("PEERS_BIN"); b != "" {
		return b
	}
	b := filepath.Join(t.TempDir(), "readback")
	out, err := exec.Command("go", "build", "-o", b, "readback/mobile/desktop").CombinedOutput()
	if err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	return b
}

// TestJobs plays a small sample. With PEERS_ALL=1 everything; PEERS_APPLIANCE, PEERS_CASES and PEERS_PERSON (regular
// expressions) and SEED (numbers with commas) choose a part; PEERS_OUT is a path without ending for the table and the
// transcripts.
func TestJobs(t *testing.T) {
	bin := build(t)
	match := func(name, text string) bool {
		e := os.Getenv(name)
		return e == "" || regexp.MustCompile("^("+e+")$").MatchString(text)
	}
	wanted := func(a, name, person string) bool {
		return match("PEERS_APPLIANCE", a) && match("PEERS_CASES", name) && match("PEERS_PERSON", person)
	}
	seeds := []int64{1}
	if s := os.Getenv("SEED"); s != "" {
		seeds = nil
		for _, f := range strings.Split(s, ",") {
			n, err := strconv.ParseInt(f, 10, 64)
			if err != nil {
				t.Fatalf("SEED: %v", err)
			}
			seeds = append(seeds, n)
		}
	}
	full := os.Getenv("PEERS_ALL") != "" || os.Getenv("PEERS_CASES") != ""
	if !full {
		// Some names stand in both appliances' lists: one appliance for each sample.
		wanted = func(a, name, person string) bool { return sample[name] == person && a == sampleOf(name) }
	}
	vs, err := all(bin, appliances, wanted, seeds)
	if err != nil {
		t.Fatal(err)
	}
	t.Log("\n" + table(vs))
	if out := os.Getenv("PEERS_OUT"); out != "" {
		if err := write(vs, out+".tsv", out); err != nil {
			t.Fatal(err)
		}
	}
	if full {
		return
	}
	right := 0
	for _, v := range vs {
		if v.right {
			right++
		} else {
			t.Logf("%s %s: %s", v.name, v.person, v.why)
		}
		if v.hazardMissed {
			t.Errorf("%s %s: %s", v.name, v.person, v.why)
		}
	}
	if len(vs) != len(sample) || right < sampleRight {
		t.Errorf("%d of %d jobs right, at least %d of %d expected", right, len(vs), sampleRight, len(sample))
	}
}

// sample are the jobs of the smoke test, case and person, at seed 1.
var sample = map[string]string{"splice-bad": "ideal", "stat-dead": "ideal", "cock-closed": "ideal", "flue-nest": "hasty",
	"sooty-glass": "frightened", "igniter-open": "ideal", "cock-shut": "ideal", "melted-wire": "homeowner", "mode-cool": "ideal",
	"hose-split": "ideal"}

// sampleRight is the least that must be right: ten of the ten were when it was written, and the program may change what it
// asks, so two may go wrong; a hazard called normal fails in any case.
const sampleRight = 8

// sampleOf is the appliance of a sample: the heater, unless the case is the furnace's alone.
func sampleOf(name string) string {
	for _, s := range heaterCases() {
		if s.name == name {
			return "heater-millivolt"
		}
	}
	return "furnace-hsi"
}
