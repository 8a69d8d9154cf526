package appliance

import (
	"math"
	"runtime"
	"slices"
	"sync"

	"readback/core/measure"
)

// Hypothesis is a set of modes present at once, by index, rising. Nothing wrong is the empty set.
type Hypothesis []int

// Table is what every check shows under every hypothesis. Outcomes that no reading could tell apart share a class.
type Table struct {
	Hyps    []Hypothesis
	Class   [][]uint8   // per check, per hypothesis: index into Outcome of that check
	Outcome [][]Outcome // per check, per class: the first outcome that fell into it
	Unsure  []bool      // per hypothesis: some state did not come to rest
}

// maxClasses is how many classes a check can have.
const maxClasses = 254

// Singles returns nothing wrong and every single mode.
func (e *Engine) Singles() []Hypothesis {
	out := []Hypothesis{{}}
	for i := range e.m.Modes {
		out = append(out, Hypothesis{i})
	}
	return out
}

// Pairs returns every two modes of different parts.
func (e *Engine) Pairs() []Hypothesis {
	var out []Hypothesis
	for i := range e.m.Modes {
		for j := i + 1; j < len(e.m.Modes); j++ {
			if e.m.Modes[i].Part != e.m.Modes[j].Part {
				out = append(out, Hypothesis{i, j})
			}
		}
	}
	return out
}

// Table simulates the hypotheses. The result does not depend on how many processors work on it.
func (e *Engine) Table(hyps []Hypothesis) *Table {
	nc := len(e.m.Checks)
	t := &Table{Hyps: hyps, Class: make([][]uint8, nc), Outcome: make([][]Outcome, nc), Unsure: make([]bool, len(hyps))}
	for i := range t.Class {
		t.Class[i] = make([]uint8, len(hyps))
	}
	// Outcomes are kept for one slice of hypotheses at a time: pairs of a large file would fill a phone.
	const slice = 1024
	rows := e.rows(min(slice, len(hyps)))
	workers := make([]*sim, max(1, runtime.GOMAXPROCS(0)))
	for lo := 0; lo < len(hyps); lo += slice {
		part := hyps[lo:min(lo+slice, len(hyps))]
		e.simulate(workers, part, rows, t.Unsure[lo:])
		for c := range nc {
			for i := range part {
				t.Class[c][lo+i] = t.classify(c, rows[i][c])
			}
		}
	}
	return t
}

// Outcomes is what every check shows under every one of a few hypotheses, to the last digit.
func (e *Engine) Outcomes(hyps []Hypothesis) [][]Outcome {
	rows := e.rows(len(hyps))
	e.simulate(make([]*sim, max(1, runtime.GOMAXPROCS(0))), hyps, rows, make([]bool, len(hyps)))
	return rows
}

func (e *Engine) rows(n int) [][]Outcome {
	rows := make([][]Outcome, n)
	for i := range rows {
		rows[i] = make([]Outcome, len(e.m.Checks))
	}
	return rows
}

// simulate fills in the rows of hypotheses, and whether some state of each did not come to rest.
func (e *Engine) simulate(workers []*sim, hyps []Hypothesis, rows [][]Outcome, unsure []bool) {
	var wg sync.WaitGroup
	for w := range workers {
		wg.Go(func() {
			if workers[w] == nil {
				workers[w] = e.newSim()
			}
			for i := w; i < len(hyps); i += len(workers) {
				unsure[i] = workers[w].all(hyps[i], rows[i])
			}
		})
	}
	wg.Wait()
}

// classify finds the class of an outcome of a check, or makes one; when there is no room it takes the nearest.
func (t *Table) classify(c int, o Outcome) uint8 {
	best, dist := 0, math.Inf(1)
	for i, k := range t.Outcome[c] {
		if k.State != o.State || k.Option != o.Option || k.Floating != o.Floating && !quiet(o, k) {
			continue
		}
		d := math.Abs(k.Value - o.Value)
		if d <= 1e-4*max(math.Abs(k.Value), math.Abs(o.Value))+1e-3*k.Half || quiet(o, k) {
			return uint8(i)
		}
		if d < dist {
			best, dist = i, d
		}
	}
	if len(t.Outcome[c]) < maxClasses {
		t.Outcome[c] = append(t.Outcome[c], o)
		return uint8(len(t.Outcome[c]) - 1)
	}
	return uint8(best)
}

// quiet tells two readings that are both nothing: no display shows less than a ten-thousandth of its unit.
func quiet(a, b Outcome) bool {
	return a.State == measure.Number && b.State == measure.Number && a.Option < 0 && b.Option < 0 && a.Floating == b.Floating &&
		math.Abs(a.Value) < 1e-4 && math.Abs(b.Value) < 1e-4
}

// Prediction is the outcome of a check under a hypothesis of the table.
func (t *Table) Prediction(check, hyp int) Outcome { return t.Outcome[check][t.Class[check][hyp]] }

// Find returns the index of a set of modes, -1 when the table has none such.
func (t *Table) Find(modes []int) int {
	want := Hypothesis(sorted(modes))
	return slices.IndexFunc(t.Hyps, func(h Hypothesis) bool { return slices.Equal(h, want) })
}
