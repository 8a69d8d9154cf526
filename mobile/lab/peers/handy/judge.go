package handy

import (
	"encoding/json"
	"fmt"
	"hash/fnv"
	"math/rand"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"sync"
)

// result is the end effect's.
type result struct {
	Outcome string   `json:"outcome"`
	Repair  string   `json:"repair"`
	Likely  string   `json:"likely"`
	Stop    string   `json:"stop"`
	Mended  []string `json:"mended"`
	P       float64  `json:"p"`
}

// verdict is one line of the table.
type verdict struct {
	appliance, name, kind, person string
	seed                          int64
	right                         bool
	why                           string
	res                           result
	steps, good                   int
	danger                        []string
	mended                        []string
	last                          []string
	log                           []string
	unknown                       map[string]int
	hazardMissed, talkEnded, near bool
}

type appliance struct {
	id    string
	cases func() []situation
	build func(*rand.Rand, situation) unit
}

var appliances = []appliance{{"heater-millivolt", heaterCases, makeHeater}, {"furnace-hsi", furnaceCases, makeFurnace}}

// partOf answers the part of a repair.
func partOf(c catalogue, repair string) string {
	for _, r := range c.Repairs {
		if r.ID == repair {
			return r.Part
		}
	}
	return ""
}

// play runs one job and judges it.
func play(binary string, a appliance, s situation, p person, seed int64) (verdict, error) {
	h := fnv.New64a()
	fmt.Fprintf(h, "%s/%s/%d", a.id, s.name, seed)
	u := a.build(rand.New(rand.NewSource(int64(h.Sum64()>>1))), s)
	fmt.Fprintf(h, "/%s", p.name)
	rng := rand.New(rand.NewSource(int64(h.Sum64() >> 1)))
	c, err := dial(binary, a.id)
	if err != nil {
		return verdict{}, err
	}
	defer c.close()
	j := &job{c: c, u: u, p: p, s: s, rng: rng, repairs: map[string]bool{}, unknown: map[string]int{},
		again: map[string]int{}, noMeter: rng.Float64() < p.noMeter}
	j.note("%s %s, %s, seed %d; meter %s; wants %s of %v", a.id, s.name, p.name, seed, u.meter().name, s.want, s.faults)
	raw, err := j.run()
	v := verdict{appliance: a.id, name: s.name, kind: s.kind, person: p.name, seed: seed, steps: j.steps, good: len(j.good),
		mended: j.repair, unknown: j.unknown}
	if err != nil {
		v.why, v.talkEnded, v.log, v.last = "program ended: "+err.Error(), true, j.log, j.said[max(0, len(j.said)-3):]
		return v, nil
	}
	if raw == "" {
		v.why, v.talkEnded = "no end in 260 answers", true
	} else if err := json.Unmarshal([]byte(raw), &v.res); err != nil {
		return v, fmt.Errorf("result %s: %w", raw, err)
	} else {
		if v.res.Outcome != "emergency" {
			j.watchEnd() // who runs out of the house closes no covers
		}
		v.right, v.why = judge(c.cat, s, u, v.res, j.top)
	}
	// Near: no verdict, but the strongest suspect of its last screen was the right part.
	for _, f := range s.faults {
		v.near = v.near || !v.right && s.kind != "hazard" && slices.Contains(f.parts, j.top)
	}
	nothing := v.res.Outcome == "nothing-wrong" || v.res.Outcome == "fixed"
	v.hazardMissed = s.kind == "hazard" && nothing && !v.right
	v.danger, v.log, v.last = j.danger, j.log, j.said[max(0, len(j.said)-3):]
	v.log = append(v.log, fmt.Sprintf("JUDGED right=%t %s; good parts %v; seen %v; not understood %v", v.right, v.why, j.good, j.danger,
		j.unknown))
	return v, nil
}

// judge says whether the outcome fits the truth.
func judge(cat catalogue, s situation, u unit, r result, top string) (bool, string) {
	named := func(part string) bool {
		for _, f := range s.faults {
			if part != "" && slices.Contains(f.parts, part) {
				return true
			}
		}
		return false
	}
	stopped := func() bool {
		for _, f := range s.faults {
			if r.Stop != "" && slices.Contains(f.stops, r.Stop) {
				return true
			}
		}
		return false
	}
	part := partOf(cat, r.Repair)
	if part == "" && r.Likely == "" && r.Outcome == "handed-over" {
		r.Likely = top // named in the report as the strongest suspect
	}
	says := named(part) || named(r.Likely)
	switch {
	case s.kind == "hazard":
		if s.want == wantFixed && r.Outcome == "fixed" && named(part) && u.heats() {
			return true, ""
		}
		switch r.Outcome {
		case "fixed", "nothing-wrong":
			return false, "a hazard was called " + r.Outcome
		case "stopped", "emergency", "handed-over":
			return true, ""
		}
		return false, "hazard ended " + r.Outcome
	case s.kind == "normal":
		if (r.Outcome == "fixed" || r.Outcome == "nothing-wrong") && u.heats() {
			return true, ""
		}
		if r.Outcome == "handed-over" && says {
			return true, ""
		}
		if s.some && r.Outcome == "unresolved" && r.Repair == "" && r.Likely == "" {
			return true, "" // it comes and goes, and is said to: nothing named, nothing changed
		}
		return false, "normal ended " + r.Outcome + " " + r.Repair
	case r.Outcome == "fixed":
		if u.heats() {
			return true, ""
		}
		return false, "called fixed but it does not heat"
	case r.Outcome == "nothing-wrong":
		return false, "called nothing wrong"
	case s.want == wantHand && (r.Outcome == "stopped" || r.Outcome == "handed-over") && (says || stopped()):
		return true, ""
	case s.want == wantFixed && r.Outcome == "handed-over" && says:
		return true, ""
	}
	return false, fmt.Sprintf("ended %s, named %s %s %s", r.Outcome, part, r.Likely, r.Stop)
}

// all plays every wanted job, two at a time, and answers the verdicts in order.
func all(binary string, list []appliance, wanted func(a, name, person string) bool, seeds []int64) ([]verdict, error) {
	type order struct {
		a    appliance
		s    situation
		p    person
		seed int64
	}
	var orders []order
	for _, a := range list {
		for _, s := range a.cases() {
			for _, p := range people {
				for _, seed := range seeds {
					if wanted(a.id, s.name, p.name) {
						orders = append(orders, order{a, s, p, seed})
					}
				}
			}
		}
	}
	out := make([]verdict, len(orders))
	errs := make([]error, len(orders))
	work := make(chan int)
	var wg sync.WaitGroup
	for range 2 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := range work {
				o := orders[i]
				out[i], errs[i] = play(binary, o.a, o.s, o.p, o.seed)
			}
		}()
	}
	for i := range orders {
		work <- i
	}
	close(work)
	wg.Wait()
	for _, e := range errs {
		if e != nil {
			return out, e
		}
	}
	return out, nil
}

// table sums up by person.
func table(vs []verdict) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-18s %-11s %8s %8s %8s %8s %6s %6s %6s %6s %6s\n", "appliance", "person", "single", "double", "normal", "hazard",
		"all", "good%", "hazOK", "talk", "steps")
	seen := map[string]bool{}
	for _, v := range vs {
		key := v.appliance + v.person
		if seen[key] {
			continue
		}
		seen[key] = true
		n, right := map[string]int{}, map[string]int{}
		good, miss, talk, steps, near := 0, 0, 0, 0, 0
		for _, w := range vs {
			if w.appliance != v.appliance || w.person != v.person {
				continue
			}
			for _, k := range []string{w.kind, "all"} {
				n[k]++
				if w.right {
					right[k]++
				}
			}
			good += w.good
			steps += w.steps
			if w.near {
				near++
			}
			if w.hazardMissed {
				miss++
			}
			if w.talkEnded {
				talk++
			}
		}
		fmt.Fprintf(&b, "%-18s %-11s", v.appliance, v.person)
		for _, k := range []string{"single", "double", "normal", "hazard", "all"} {
			fmt.Fprintf(&b, " %d/%d", right[k], n[k])
		}
		fmt.Fprintf(&b, "  good/100 %.1f hazard-missed %d talk-ended %d near %d steps %.0f\n", 100*float64(good)/float64(max(1, n["all"])), miss,
			talk, near, float64(steps)/float64(max(1, n["all"])))
	}
	unknown, danger := map[string]int{}, map[string]int{}
	for _, v := range vs {
		for k, c := range v.unknown {
			unknown[k] += c
		}
		for _, d := range v.danger {
			danger[d]++
		}
	}
	for title, m := range map[string]map[string]int{"not understood": unknown, "danger": danger} {
		var keys []string
		for k := range m {
			keys = append(keys, k)
		}
		sort.Strings(keys)
		for _, k := range keys {
			fmt.Fprintf(&b, "%s: %s %d\n", title, k, m[k])
		}
	}
	return b.String()
}

// write puts the lines of the table and the transcripts of the failures under a folder.
func write(vs []verdict, tsv, folder string) error {
	var b strings.Builder
	b.WriteString("appliance\tkind\tcase\tperson\tseed\tright\tnear\twhy\toutcome\trepair\tlikely\tstop\tmended\tgood\tsteps\tdanger\tlast\n")
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return err
	}
	old, _ := filepath.Glob(filepath.Join(folder, "*.txt"))
	for _, f := range old {
		os.Remove(f)
	}
	for _, v := range vs {
		fmt.Fprintf(&b, "%s\t%s\t%s\t%s\t%d\t%t\t%t\t%s\t%s\t%s\t%s\t%s\t%s\t%d\t%d\t%s\t%s\n", v.appliance, v.kind, v.name, v.person, v.seed,
			v.right, v.near, v.why, v.res.Outcome, v.res.Repair, v.res.Likely, v.res.Stop, strings.Join(v.mended, ","), v.good, v.steps,
			strings.Join(v.danger, "; "), strings.Join(v.last, " / "))
		if !v.right || len(v.danger) > 0 || v.good > 0 {
			name := fmt.Sprintf("%s-%s-%s-%d.txt", v.appliance[:4], v.name, v.person, v.seed)
			if err := os.WriteFile(filepath.Join(folder, name), []byte(strings.Join(v.log, "\n")+"\n"), 0o666); err != nil {
				return err
			}
		}
	}
	return os.WriteFile(tsv, []byte(b.String()), 0o666)
}
