package plan_test

import (
	"math"
	"testing"

	"readback/core/infer"
	"readback/core/plan"
)

func near(t *testing.T, name string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g ± %g", name, got, want, tol)
	}
}

// binary makes a task of single faults with priors and repair costs, and noisy yes-or-no tests: hits[t][f] is the chance of yes.
func binary(prior, repair, cost []float64, hits [][]float64) *plan.Task {
	p := &infer.Problem{Worlds: len(prior), Groups: len(prior)}
	t := &plan.Task{Problem: p, Call: plan.Cost{Money: math.Inf(1)}}
	for f, x := range prior {
		p.Hyps = append(p.Hyps, infer.Hyp{Prior: x, Modes: []int{f}, Groups: []int{f}, Phases: []infer.Phase{{World: f, P: 1}}})
		t.Repairs = append(t.Repairs, plan.Repair{Cost: plan.Cost{Money: repair[f]}, Free: true})
	}
	for i, row := range hits {
		c := infer.Check{ID: string(rune('A' + i))}
		for f, x := range row {
			c.Class = append(c.Class, uint8(f))
			c.Bins = append(c.Bins, []float64{1 - x, x})
		}
		p.Checks = append(p.Checks, c)
		t.Checks = append(t.Checks, plan.Check{Cost: plan.Cost{Money: cost[i]}})
	}
	if err := p.Prepare(); err != nil {
		panic(err)
	}
	return t
}

// a3 is a small observe-and-repair problem, solved exactly by two independent programs: 62.58785, first test T2.
func a3() *plan.Task {
	row := func(on ...int) []float64 {
		out := []float64{.03, .03, .03, .03}
		for _, f := range on {
			out[f] = .95
		}
		return out
	}
	return binary([]float64{.4, .3, .2, .1}, []float64{60, 25, 40, 90}, []float64{5, 4, 6},
		[][]float64{row(0, 1), row(0, 2), row(0)})
}

func TestA3(t *testing.T) {
	task := a3()
	near(t, "exact", optimum(task), 62.58785, 5e-6)
	for _, c := range []struct {
		name   string
		limits plan.Limits
		value  float64 // at most
		first  int
	}{
		{"one step", plan.Limits{Hyps: 64, Mass: 1, Scored: 64, Nodes: 1 << 40}, 63.00011, 1},
		{"full", plan.Exhaustive, 62.587855, 1},
	} {
		p, err := plan.New(task, plan.Weights{}, c.limits)
		if err != nil {
			t.Fatal(err)
		}
		b := infer.New(task.Problem)
		p.Sure, p.Try = 0, 0
		d := p.Next(b, plan.Situation{})
		if d.Kind != plan.Ask || d.Check != c.first {
			t.Errorf("%s: first action %v %d, want test %d", c.name, d.Kind, d.Check, c.first)
		}
		v := play(p, b, plan.Situation{Tried: make([]bool, 4), Reasked: []bool{true, true, true}})
		if v > c.value {
			t.Errorf("%s: expected cost %.6f, want at most %.6f", c.name, v, c.value)
		}
		t.Logf("%s: %.6f, %d nodes", c.name, v, d.Nodes)
	}
}

// S1: same-decision probability of a prior of 0.4 with two tests (sensitivity, specificity) of (.8, .9) and (.7, .6): the posteriors
// .068966, .205882, .727273, .903226 have the masses .348, .272, .132, .248; the verdict "not" stays with 0.62.
func TestS1(t *testing.T) {
	task := binary([]float64{.4, .6}, []float64{1, 1}, []float64{1, 1}, [][]float64{{.8, .1}, {.7, .4}})
	p, err := plan.New(task, plan.Weights{}, plan.Exhaustive)
	if err != nil {
		t.Fatal(err)
	}
	b := infer.New(task.Problem)
	d := p.Next(b, plan.Situation{})
	near(t, "same-decision probability", p.Explain(b, plan.Situation{}, d).Same, .62, 1e-9)
}
