package handx

import (
	"fmt"
	"math"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
)

// buildProgram builds the program under examination from the tree that this test stands in.
func buildProgram(t *testing.T) string {
	t.Helper()
	if bin := os.Getenv("PEERS_BIN"); bin != "" {
		return bin
	}
	bin := filepath.Join(t.TempDir(), "readback")
	cmd := exec.Command("go", "build", "-o", bin, "../../../desktop")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("build of the program: %v\n%s", err, out)
	}
	return bin
}

// keep appends the row of a job to the table in PEERS_OUT, and writes what was said and answered in a failing job of an
// odd seed. Even seeds are only counted: their transcripts are kept from the makers.
func keep(t *testing.T, r *report) {
	out := os.Getenv("PEERS_OUT")
	if out == "" {
		return
	}
	tables.Lock()
	defer tables.Unlock()
	f, err := os.OpenFile(filepath.Join(out, "rows.tsv"), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		t.Error(err)
		return
	}
	defer f.Close()
	if st, err := f.Stat(); err == nil && st.Size() == 0 {
		fmt.Fprintln(f, header)
	}
	fmt.Fprintln(f, r.row)
	if r.seed%2 == 1 && (!r.right || len(r.unsafe) > 0 || os.Getenv("PEERS_KEEP") != "") {
		name := fmt.Sprintf("%s-%s-%d.txt", r.c.id, r.person, r.seed)
		text := strings.Join(r.log, "\n") + "\nJUDGED: right " + fmt.Sprint(r.right) + " " + r.why + "\n"
		if err := os.WriteFile(filepath.Join(out, name), []byte(text), 0o644); err != nil {
			t.Error(err)
		}
	}
}

var tables sync.Mutex

type order struct {
	c    testCase
	p    person
	seed int64
}

// playAll plays the orders, two at a time, and judges them.
func playAll(t *testing.T, bin string, orders []order) []*report {
	t.Helper()
	reports := make([]*report, len(orders))
	var wg sync.WaitGroup
	slots := make(chan struct{}, 2)
	for i, o := range orders {
		wg.Add(1)
		slots <- struct{}{}
		go func() {
			defer wg.Done()
			defer func() { <-slots }()
			r, cat, err := play(bin, o.c, o.p, o.seed)
			if err != nil {
				t.Errorf("%s %s %d: %v", o.c.id, o.p.name, o.seed, err)
				return
			}
			r.judge(cat)
			r.row = r.line(cat)
			reports[i] = r
			keep(t, r)
		}()
	}
	wg.Wait()
	return reports
}

// TestJobs plays a bounded sample, or with PEERS_ALL, PEERS_CASES, PEERS_PERSON and SEED what they name. PEERS_OUT is a
// folder for the table and the transcripts; PEERS_SHARE=3 plays a fixed third of the jobs.
func TestJobs(t *testing.T) {
	var orders []order
	cases := allCases()
	if os.Getenv("PEERS_ALL") == "" && os.Getenv("PEERS_CASES") == "" {
		sample := []string{"igniter-open", "gas-odour", "switch-off", "w-splice-corroded", "rod-coated", "hose-split",
			"roll-out-opened", "fuse-alone", "batteries", "blower-capacitor-weak"}
		if testing.Short() {
			sample = sample[:4]
		}
		for i, id := range sample {
			for _, c := range cases {
				if c.id == id {
					orders = append(orders, order{c, people[i%2], 1})
				}
			}
		}
	} else {
		want := regexp.MustCompile(os.Getenv("PEERS_CASES"))
		share, _ := strconv.ParseInt(os.Getenv("PEERS_SHARE"), 10, 64)
		seeds := strings.Fields(strings.ReplaceAll(os.Getenv("SEED"), ",", " "))
		if len(seeds) == 0 {
			seeds = []string{"1"}
		}
		for _, text := range seeds {
			seed, err := strconv.ParseInt(text, 10, 64)
			if err != nil {
				t.Fatalf("SEED: %v", err)
			}
			for _, c := range cases {
				for _, p := range people {
					if share > 1 && seedOf("share", c.id, p.name, text)%share != 0 {
						continue
					}
					if want.MatchString(c.id+" "+c.class) && (os.Getenv("PEERS_PERSON") == "" ||
						has(strings.Split(os.Getenv("PEERS_PERSON"), ","), p.name)) {
						orders = append(orders, order{c, p, seed})
					}
				}
			}
		}
	}
	reports := playAll(t, buildProgram(t), orders)
	right, wasted, hazardsNormal, noEnd, unsafe := 0, 0, 0, 0, 0
	for _, r := range reports {
		if r == nil {
			continue
		}
		if r.right {
			right++
		} else {
			t.Logf("%s %s %d: %s", r.c.id, r.person, r.seed, r.why)
		}
		wasted += len(r.wasted)
		if r.c.class == "hazard" && r.res.Outcome == "nothing-wrong" {
			hazardsNormal++
		}
		if r.ended != "end" {
			noEnd++
		}
		if len(r.unsafe) > 0 {
			unsafe++
			t.Logf("%s %s %d unsafe: %v", r.c.id, r.person, r.seed, r.unsafe)
		}
	}
	t.Logf("%d jobs, %d right, %d good parts replaced, %d hazards called normal, %d without an end, %d unsafe",
		len(reports), right, wasted, hazardsNormal, noEnd, unsafe)
	if os.Getenv("PEERS_ALL") != "" || os.Getenv("PEERS_CASES") != "" {
		return
	}
	// Hazards and safety bear no slack.
	if right < passable(len(reports)) || hazardsNormal > 0 || noEnd > 0 || unsafe > 0 {
		t.Errorf("the sample is worse than when it was measured: want %d right, no hazard called normal, each ended, none "+
			"unsafe", passable(len(reports)))
	}
}

// passable is how many jobs of a sample must be right: of the ten eight were right, of the first four three, when they
// were measured; a job that turns on one word of a person may go either way when the words of the program change.
func passable(jobs int) int { return jobs * 6 / 10 }

// A good furnace of this hand must heat, whatever its tolerances are, and read what a technician expects.
func TestGoodFurnaceHeats(t *testing.T) {
	for seed := int64(0); seed < 20; seed++ {
		u := newUnit(rand.New(rand.NewSource(seed)))
		s := u.run()
		if s.reach != atDone {
			t.Fatalf("seed %d: a good furnace hangs at step %d, light %s, current %.2f, rise %.0f", seed, s.reach,
				s.light, s.current, u.rise())
		}
		n, v := u.live(s.steps[atTrial], "board-r", "board-c", 10e6)
		if got := n.between(v, "board-r", "board-c"); got < 23 || got > 29 {
			t.Errorf("seed %d: R to C under load is %.1f V", seed, got)
		}
		if amps := n.between(v, "glow-a", "glow-b") / u.igniterHot; amps < 3.4 || amps > 4.9 {
			t.Errorf("seed %d: igniter draws %.1f A", seed, amps)
		}
	}
}

// Every case must give its people a reason to complain, and each of its repairs together must end it.
func TestEveryCaseIsCuredByItsRepairs(t *testing.T) {
	for _, c := range allCases() {
		u := c.make(rand.New(rand.NewSource(3)))
		if len(c.repairs) == 0 {
			continue
		}
		for _, group := range c.repairs {
			u.repair(group[0])
		}
		u.breaker, u.sw, u.call = true, true, true
		if s := u.run(); s.reach != atDone {
			t.Errorf("%s: after %v it hangs at step %d, light %s", c.id, c.repairs, s.reach, s.light)
		}
	}
}

func TestNodalAnalysis(t *testing.T) {
	n := newNet()
	n.feed("a", ground, 120, 1)
	n.join("a", "b", 59)
	n.join("b", ground, 60)
	if got := n.between(n.solve(), "b", ground); math.Abs(got-60) > 0.01 {
		t.Errorf("divider: %.3f V, want 60", got)
	}
	m := newNet()
	m.join("a", "b", 100)
	m.join("a", "b", 100)
	if got := m.ohms("a", "b"); math.Abs(got-50) > 0.01 {
		t.Errorf("parallel: %.3f ohm, want 50", got)
	}
}
