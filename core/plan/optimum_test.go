package plan_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"readback/core/infer"
	"readback/core/plan"
)

// ratios are the planner's expected costs over the exact optimum, for n random models of a regime, rising.
func ratios(t testing.TB, regime, n int, limits plan.Limits) []float64 {
	var out []float64
	for seed := range uint64(n) {
		task := randomTask(rand.New(rand.NewPCG(seed, uint64(regime))), regime, 6, 6)
		p, err := plan.New(task, plan.Weights{}, limits)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, p.Value(infer.New(task.Problem), plan.Situation{})/optimum(task))
	}
	slices.Sort(out)
	return out
}

// played are the same ratios with the limits of a real decision, every decision made anew.
func played(t testing.TB, regime, n int, limits plan.Limits) []float64 {
	var out []float64
	for seed := range uint64(n) {
		task := randomTask(rand.New(rand.NewPCG(seed, uint64(regime))), regime, 6, 6)
		p, err := plan.New(task, plan.Weights{}, limits)
		if err != nil {
			t.Fatal(err)
		}
		p.Sure, p.Try = 0, 0
		s := plan.Situation{Tried: make([]bool, 6), Reasked: []bool{true, true, true, true, true, true}}
		out = append(out, play(p, infer.New(task.Problem), s)/optimum(task))
	}
	slices.Sort(out)
	return out
}

func mean(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum / float64(len(xs))
}

func TestNearOptimum(t *testing.T) {
	for i, name := range regimes {
		rs := ratios(t, i, 12, plan.Exhaustive)
		t.Logf("%s: mean %.5f, worst %.5f", name, mean(rs), rs[len(rs)-1])
		if rs[0] < 1-1e-9 {
			t.Errorf("%s: cheaper than the optimum: %v", name, rs[0])
		}
		if mean(rs) > 1.005 {
			t.Errorf("%s: mean cost is %.5f of the optimum", name, mean(rs))
		}
	}
}

// Deciding anew after every answer must cost what the figure says it costs.
func TestValueIsPlay(t *testing.T) {
	for i := range regimes {
		task := randomTask(rand.New(rand.NewPCG(5, uint64(i))), i, 4, 3)
		p, err := plan.New(task, plan.Weights{}, plan.Exhaustive)
		if err != nil {
			t.Fatal(err)
		}
		p.Sure, p.Try = 0, 0
		s := plan.Situation{Tried: make([]bool, 4), Reasked: []bool{true, true, true}}
		b := infer.New(task.Problem)
		near(t, regimes[i], play(p, b, s), p.Value(b, s), 1e-6)
	}
}
