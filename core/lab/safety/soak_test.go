package safety_test

import (
	"os"
	"runtime"
	"sort"
	"strconv"
	"sync"
	"testing"
	"time"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/lab/safety"
	"readback/core/utterance"
	"readback/flows"
	"readback/flows/lexicon"
	"readback/flows/prompts"
)

var load = sync.OnceValues(flows.Builtin)

func models(t testing.TB) []*appliance.Model {
	t.Helper()
	ms, err := load()
	if err != nil {
		t.Fatal(err)
	}
	return ms
}

func language(t testing.TB) (*utterance.Lexicon, *job.Words) {
	t.Helper()
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	words, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	return lex, words
}

// jobs is how many random jobs are played: JOBS sets it (make soak), 5000 else, 500 in short runs.
func jobs() int {
	if n, err := strconv.Atoi(os.Getenv("JOBS")); err == nil && n > 0 {
		return n
	}
	if testing.Short() {
		return 500
	}
	return 5000
}

type tally struct {
	jobs, steps, violations, gates, gated int
	ends                                  map[string]int
	first                                 map[string]string // by rule: the first case
	count                                 map[string]int
}

// play plays n jobs on all cores and adds up what they broke.
func play(t testing.TB, n int, from uint64) tally {
	ms := models(t)
	lex, words := language(t)
	sum := tally{ends: map[string]int{}, first: map[string]string{}, count: map[string]int{}}
	var mu sync.Mutex
	var wg sync.WaitGroup
	next := make(chan uint64)
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for seed := range next {
				model := ms[seed%uint64(len(ms))]
				out := safety.Play(model, *lex, words, seed, nil)
				mu.Lock()
				sum.jobs++
				sum.steps += out.Steps
				sum.ends[out.Outcome]++
				sum.gates += out.Gates
				if out.Gates > 0 {
					sum.gated++
				}
				sum.violations += len(out.Broken)
				for _, v := range out.Broken {
					if sum.count[v.Rule]++; sum.first[v.Rule] == "" {
						sum.first[v.Rule] = "seed " + strconv.FormatUint(seed, 10) + ", " + model.ID + ": " + v.Detail
					}
				}
				mu.Unlock()
			}
		})
	}
	for i := range n {
		next <- from + uint64(i)
	}
	close(next)
	wg.Wait()
	return sum
}

// pending are rules that the program does not keep yet, with the reason. They are printed and counted.
var pending = map[string]string{
	"a check is asked with its wires off":                                     "seed 4521, furnace-pilot: blower-frame with blower-a not lifted",
	"no house voltage is read without a meter made for it, or on a wet floor": "seed 3260, furnace-direct-spark: fan-amps",
}

// Nobody gets hurt, whatever people do: an independent book of what hands did finds no hazard in any job.
func TestRandomPeople(t *testing.T) {
	if s := os.Getenv("SEED"); s != "" {
		seed, err := strconv.ParseUint(s, 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		ms := models(t)
		lex, words := language(t)
		out := safety.Play(ms[seed%uint64(len(ms))], *lex, words, seed, t.Logf)
		t.Logf("%d steps, %q", out.Steps, out.Outcome)
		for _, v := range out.Broken {
			t.Error(v)
		}
		return
	}
	at := time.Now()
	sum := play(t, jobs(), 1)
	t.Logf("%d jobs, %d steps, %.1f s, ends %v, %d gates failed in %d jobs", sum.jobs, sum.steps, time.Since(at).Seconds(), sum.ends, sum.gates, sum.gated)
	var rules []string
	for r := range sum.first {
		rules = append(rules, r)
	}
	sort.Strings(rules)
	for _, r := range rules {
		if why := pending[r]; why != "" {
			t.Logf("PENDING %d times: %s (%s; %s)", sum.count[r], r, why, sum.first[r])
			continue
		}
		t.Errorf("%d times: %s (%s)", sum.count[r], r, sum.first[r])
	}
}
