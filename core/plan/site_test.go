package plan_test

import (
	"math"
	"testing"

	"readback/core/infer"
	"readback/core/plan"
)

// two is a task of four equal faults and checks that each see two of them.
func two(cost ...float64) *plan.Task {
	return binary([]float64{.25, .25, .25, .25}, []float64{60, 60, 60, 60}, cost,
		[][]float64{{1, 1, 0, 0}, {1, 0, 1, 0}, {1, 1, 0, 0}, {1, 0, 1, 0}}[:len(cost)])
}

// first is the check a full decision chooses.
func first(t *testing.T, task *plan.Task, s plan.Situation) int {
	t.Helper()
	p, err := plan.New(task, plan.Weights{Minute: 1}, plan.Full)
	if err != nil {
		t.Fatal(err)
	}
	return p.Next(infer.New(task.Problem), s).Check
}

// Checks behind one cover are worth opening it together, where each alone is dearer than its twin in the open.
func TestBundle(t *testing.T) {
	task := two(1, 1, 11, 11)
	task.Covers = []plan.Cost{{Minutes: 15}}
	for c := range 2 {
		task.Checks[c].Open = 1
	}
	if c := first(t, task, plan.Situation{}); c != 0 && c != 1 {
		t.Errorf("asks check %d: two checks behind one cover cost 17 together, those in the open 22", c)
	}
	task.Covers[0].Minutes = 25
	if c := first(t, task, plan.Situation{}); c != 2 && c != 3 {
		t.Errorf("asks check %d: a cover of 25 does not pay", c)
	}
	if c := first(t, task, plan.Situation{Site: plan.Site{Open: 1}}); c != 0 && c != 1 {
		t.Errorf("asks check %d although the cover is off", c)
	}
}

// Power is left as it is while checks of that state are of equal use.
func TestPowerStays(t *testing.T) {
	task := two(5, 5, 5, 5)
	task.Switch = plan.Cost{Minutes: 4}
	for c := range task.Checks {
		task.Checks[c].Power = []plan.Power{plan.On, plan.On, plan.Off, plan.Off}[c]
	}
	if c := first(t, task, plan.Situation{Site: plan.Site{Power: plan.On}}); c != 0 && c != 1 {
		t.Errorf("switches off for check %d", c)
	}
	if c := first(t, task, plan.Situation{Site: plan.Site{Power: plan.Off}}); c != 2 && c != 3 {
		t.Errorf("switches on for check %d", c)
	}
}

// A live check carries a price: the same knowledge without power is preferred when close, and not when far dearer.
func TestLiveHasAPrice(t *testing.T) {
	task := two(5, 5, 7, 7)
	for c := range 2 {
		task.Checks[c].Hazard = 2
	}
	ask := func() int {
		p, err := plan.New(task, plan.UsualWeights, plan.Full)
		if err != nil {
			t.Fatal(err)
		}
		return p.Next(infer.New(task.Problem), plan.Situation{}).Check
	}
	if c := ask(); c != 2 && c != 3 {
		t.Errorf("asks the live check %d", c)
	}
	task.Checks[2].Money, task.Checks[3].Money = 20, 20
	if c := ask(); c != 0 && c != 1 {
		t.Errorf("asks check %d, which is far dearer", c)
	}
}

// What the caller forbids is never chosen, whatever it would tell.
func TestForbidden(t *testing.T) {
	task := two(1, 1, 9, 9)
	s := plan.Situation{Allowed: func(check int) (float64, bool) { return 0, check >= 2 }}
	if c := first(t, task, s); c < 2 {
		t.Errorf("asks the forbidden check %d", c)
	}
	s.Allowed = func(int) (float64, bool) { return 0, false }
	if c := first(t, task, s); c >= 0 {
		t.Errorf("asks the forbidden check %d", c)
	}
}

// Two tests that tell nothing alone and everything together: one step of look-ahead does not see them, two steps do.
func TestTogether(t *testing.T) {
	// Four states: (a, b) with a fault when a and b differ. Each test shows one of them.
	p := &infer.Problem{Worlds: 4, Groups: 2}
	for w := range 4 {
		p.Hyps = append(p.Hyps, infer.Hyp{Prior: .25, Groups: []int{(w ^ w>>1) & 1}, Phases: []infer.Phase{{World: w, P: 1}}})
	}
	task := &plan.Task{Problem: p, Repairs: []plan.Repair{{Cost: plan.Cost{Money: 50}, Free: true}, {Cost: plan.Cost{Money: 50}, Free: true}},
		Call: plan.Cost{Money: math.Inf(1)}}
	for bit := range 2 {
		c := infer.Check{ID: "ab"[bit : bit+1], Bins: [][]float64{{1, 0}, {0, 1}}}
		for w := range 4 {
			c.Class = append(c.Class, uint8(w>>bit&1))
		}
		p.Checks = append(p.Checks, c)
		task.Checks = append(task.Checks, plan.Check{Cost: plan.Cost{Money: 2}})
	}
	if err := p.Prepare(); err != nil {
		t.Fatal(err)
	}
	if d := newPlanner(t, task, plan.Quick).Next(infer.New(p), plan.Situation{}); d.Check >= 0 {
		t.Errorf("one step asks check %d, which alone tells nothing", d.Check)
	}
	if d := newPlanner(t, task, plan.Exhaustive).Next(infer.New(p), plan.Situation{}); d.Check < 0 {
		t.Error("two steps do not see that the two tests decide together")
	}
}

// When everything has been tried and did not help, the planner says that it does not know, and does not fail.
func TestNothingLeft(t *testing.T) {
	task := two(1, 1)
	p := newPlanner(t, task, plan.Full)
	d := p.Next(infer.New(task.Problem), plan.Situation{Tried: []bool{true, true, true, true}})
	if d.Kind != plan.Help || d.Suspects[0].Group != task.Problem.Groups+1 {
		t.Errorf("decides %v with suspect %v, want help for something unknown", d.Kind, d.Suspects[0])
	}
	d = p.Next(infer.New(task.Problem), plan.Situation{Tried: []bool{true, false, true, true}})
	if d.Kind != plan.Verdict || d.Group != 1 || math.Abs(d.P-1) > 1e-12 {
		t.Errorf("decides %v on %d with %v, want the one that is left", d.Kind, d.Group, d.P)
	}
}
