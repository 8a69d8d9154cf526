package plan_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"readback/core/infer"
	"readback/core/plan"
)

// small draws a random small task of single faults.
func small(t *rapid.T) *plan.Task {
	seed := rapid.Uint64().Draw(t, "seed")
	n := rapid.IntRange(2, 6).Draw(t, "faults")
	m := rapid.IntRange(1, 5).Draw(t, "tests")
	return randomTask(rand.New(rand.NewPCG(seed, 1)), rapid.IntRange(0, 3).Draw(t, "regime"), n, m)
}

func must(t *rapid.T, task *plan.Task, l plan.Limits) *plan.Planner {
	p, err := plan.New(task, plan.Weights{}, l)
	if err != nil {
		t.Fatal(err)
	}
	p.Sure, p.Try = 0, 0
	return p
}

// By falling probability per cost is the best order of perfect repairs of single faults.
func TestRepairOrderIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := small(t)
		task.Checks, task.Problem.Checks = nil, nil
		if err := task.Problem.Prepare(); err != nil {
			t.Fatal(err)
		}
		got := must(t, task, plan.Exhaustive).RepairOnly(infer.New(task.Problem))
		if want := optimum(task); math.Abs(got-want) > 1e-9 {
			t.Errorf("repair only costs %v, the best order %v", got, want)
		}
	})
}

// A free test cannot make things worse, and nobody expects to be wiser for nothing.
func TestInformationHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := small(t)
		for i := range task.Checks {
			task.Checks[i].Money = 0
		}
		p := must(t, task, plan.Exhaustive)
		b := infer.New(task.Problem)
		base := p.RepairOnly(b)
		bits := p.Bits(b)
		for i, v := range p.OneStep(b) {
			if v > base+1e-9 {
				t.Errorf("a free test %d makes %v of %v", i, v, base)
			}
			if bits[i] < 0 || bits[i] > math.Log2(float64(len(task.Repairs)))+1e-6 {
				t.Errorf("test %d tells %v bits", i, bits[i])
			}
		}
	})
}

// The same costs in another currency lead to the same choices.
func TestCurrency(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := small(t)
		for _, l := range []plan.Limits{plan.Quick, plan.Full} {
			d := must(t, task, l).Next(infer.New(task.Problem), plan.Situation{})
			twice := *task
			twice.Checks = append([]plan.Check(nil), task.Checks...)
			twice.Repairs = append([]plan.Repair(nil), task.Repairs...)
			for i := range twice.Checks {
				twice.Checks[i].Money *= 4
			}
			for i := range twice.Repairs {
				twice.Repairs[i].Money *= 4
			}
			e := must(t, &twice, l).Next(infer.New(task.Problem), plan.Situation{})
			if d.Kind != e.Kind || d.Check != e.Check || d.Group != e.Group {
				t.Errorf("%v %d %d becomes %v %d %d", d.Kind, d.Check, d.Group, e.Kind, e.Check, e.Group)
			}
		}
	})
}

// A test that gets dearer is not chosen where it was not chosen before (one step of look-ahead; a deeper search is only nearly so).
func TestDearerIsNotSooner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := small(t)
		p := must(t, task, plan.Quick)
		d := p.Next(infer.New(task.Problem), plan.Situation{})
		i := rapid.IntRange(0, len(task.Checks)-1).Draw(t, "test")
		if d.Check == i {
			return
		}
		task.Checks[i].Money *= rapid.Float64Range(1, 5).Draw(t, "factor")
		if e := must(t, task, plan.Quick).Next(infer.New(task.Problem), plan.Situation{}); e.Check == i {
			t.Errorf("test %d is chosen when it is dearer", i)
		}
	})
}

// Renaming tests renames the choice.
func TestRelabel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := small(t)
		n := len(task.Checks)
		perm := rapid.Permutation(seq(n)).Draw(t, "order")
		other := *task
		prob := *task.Problem
		other.Problem = &prob
		prob.Checks = make([]infer.Check, n)
		other.Checks = make([]plan.Check, n)
		for i, j := range perm {
			prob.Checks[j], other.Checks[j] = task.Problem.Checks[i], task.Checks[i]
		}
		if err := prob.Prepare(); err != nil {
			t.Fatal(err)
		}
		d := must(t, task, plan.Full).Next(infer.New(task.Problem), plan.Situation{})
		e := must(t, &other, plan.Full).Next(infer.New(&prob), plan.Situation{})
		if d.Kind != e.Kind || (d.Check >= 0) != (e.Check >= 0) {
			t.Fatalf("kind %v becomes %v", d.Kind, e.Kind)
		}
		if d.Check >= 0 && perm[d.Check] != e.Check && math.Abs(d.Expect-e.Expect) > 1e-9 {
			t.Errorf("test %d becomes %d, want %d", d.Check, e.Check, perm[d.Check])
		}
	})
}

func seq(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// The value of a policy is never below the optimum, and the planner's is close.
func TestNeverBelowOptimum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := small(t)
		best := optimum(task)
		v := must(t, task, plan.Exhaustive).Value(infer.New(task.Problem), plan.Situation{})
		if v < best-1e-9 || v > best*1.15 {
			t.Errorf("planner %v, optimum %v", v, best)
		}
	})
}
