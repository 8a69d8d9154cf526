package worksite_test

import (
	"testing"

	"readback/core/worksite"
)

// mutant is the real step code with one mistake put in.
type mutant struct {
	*worksite.Rules
	next  func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool)
	apply func(before, after worksite.State, a worksite.Act, o worksite.Outcome) worksite.State
}

func (m mutant) Next(s worksite.State, n worksite.Need) (worksite.Act, bool) {
	a, ok := m.Rules.Next(s, n)
	if m.next != nil {
		return m.next(m.Rules, s, n, a, ok)
	}
	return a, ok
}

func (m mutant) Apply(s worksite.State, a worksite.Act, o worksite.Outcome) worksite.State {
	after := m.Rules.Apply(s, a, o)
	if m.apply != nil {
		return m.apply(s, after, a, o)
	}
	return after
}

type nextFunc = func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool)

// leaveOut skips an act of that kind, as if it had been done: what comes after it is asked at once.
func leaveOut(k worksite.Kind) nextFunc {
	return func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		for i := 0; ok && a.Kind == k && i < 9; i++ {
			s = r.Apply(s, a, worksite.Done)
			a, ok = r.Next(s, n)
		}
		return a, ok
	}
}

// with pretends that the state were another one when the next act is chosen.
func with(pretend func(s worksite.State) worksite.State) nextFunc {
	return func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		return r.Next(pretend(s), n)
	}
}

// onNeed changes what the machine believes a check to need.
func onNeed(change func(n worksite.Need) worksite.Need) nextFunc {
	return func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		return r.Next(s, change(n))
	}
}

var mutants = []struct {
	name  string
	next  nextFunc
	apply func(before, after worksite.State, a worksite.Act, o worksite.Outcome) worksite.State
}{
	{name: "never switched off", next: leaveOut(worksite.PowerOff)},
	{name: "proof without the live point before", next: leaveOut(worksite.ProveLive)},
	{name: "proof without the live point after", next: leaveOut(worksite.ProveAgain)},
	{name: "proof without line to neutral, line to ground, neutral to ground", next: func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		for ok && a.Zero() {
			s = r.Apply(s, a, worksite.Done)
			a, ok = r.Next(s, n)
		}
		return a, ok
	}},
	{name: "off counts as proved", next: with(func(s worksite.State) worksite.State {
		if s.Power == worksite.Off {
			s.Power = worksite.Proved
		}
		return s
	})},
	{name: "unknown counts as off", next: with(func(s worksite.State) worksite.State {
		if s.Power == worksite.Unknown {
			s.Power = worksite.Off
		}
		return s
	})},
	{name: "unknown counts as proved", next: with(func(s worksite.State) worksite.State {
		if s.Power == worksite.Unknown {
			s.Power = worksite.Proved
		}
		return s
	})},
	{name: "voltage found counts as dead", apply: func(before, after worksite.State, a worksite.Act, o worksite.Outcome) worksite.State {
		if a.Zero() && o == worksite.Failed {
			after.Power, after.Proof = before.Power, uint8(a.Kind-worksite.ProveLive)+1
		}
		return after
	}},
	{name: "a dead meter proves", apply: func(before, after worksite.State, a worksite.Act, o worksite.Outcome) worksite.State {
		if a.Kind == worksite.ProveAgain && o == worksite.Failed {
			after.Power, after.Proof = worksite.Proved, 0
		}
		return after
	}},
	{name: "a surprise leaves the proof standing", apply: func(before, after worksite.State, a worksite.Act, o worksite.Outcome) worksite.State {
		if o == worksite.Changed {
			return before
		}
		return after
	}},
	{name: "switched on stays proved", apply: func(before, after worksite.State, a worksite.Act, o worksite.Outcome) worksite.State {
		if a.Kind == worksite.PowerOn && before.Power == worksite.Proved {
			after.Power = worksite.Proved
		}
		return after
	}},
	{name: "the jumper is never taken out", next: leaveOut(worksite.JumperOut)},
	{name: "the jumper is forgotten", apply: func(before, after worksite.State, a worksite.Act, o worksite.Outcome) worksite.State {
		if a.Kind == worksite.JumperIn {
			after.Jumper = 0
		}
		return after
	}},
	{name: "the door switch is never let go", next: leaveOut(worksite.FreeDoor)},
	{name: "the door switch is not held", next: leaveOut(worksite.HoldDoor)},
	{name: "the meter stays in line", next: leaveOut(worksite.MeterOut)},
	{name: "the red lead stays in the current jack", next: leaveOut(worksite.JackOut)},
	{name: "the current jack is not noticed", next: with(func(s worksite.State) worksite.State { s.Jack = false; return s })},
	{name: "wires are not refitted", next: leaveOut(worksite.RefitWire)},
	{name: "wires are not lifted", next: leaveOut(worksite.LiftWire)},
	{name: "covers stay open", next: leaveOut(worksite.CloseCover)},
	{name: "covers are opened live", next: func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		if ok && a.Kind == worksite.PowerOff && s.Covers.Empty() {
			if b, ok := r.Next(r.Apply(s, a, worksite.Done), n); ok && b.Kind == worksite.OpenCover {
				return b, true
			}
		}
		return a, ok
	}},
	{name: "leads are clipped on live", next: func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		if ok && a.Kind == worksite.PowerOff {
			if b, ok := r.Next(r.Apply(s, a, worksite.Done), n); ok && b.Kind == worksite.PlaceLeads {
				return b, true
			}
		}
		return a, ok
	}},
	{name: "ohms need no proof", next: onNeed(func(n worksite.Need) worksite.Need {
		if n.Power == worksite.Dead {
			n.Power = worksite.Cut
		}
		return n
	})},
	{name: "live checks are asked with power off", next: onNeed(func(n worksite.Need) worksite.Need {
		if n.Power == worksite.Live {
			n.Power = worksite.Cut
		}
		return n
	})},
	{name: "the place is left as it is", next: func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		if n.Shut && ok && a.Removes() {
			return worksite.Act{}, false
		}
		return a, ok
	}},
	{name: "power on before the covers are back", next: func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		if n.Shut && ok && a.Kind == worksite.CloseCover {
			return worksite.Act{Kind: worksite.PowerOn, N: -1}, true
		}
		return a, ok
	}},
	{name: "the meter is fitted unproved", next: func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		if ok && a.Kind == worksite.ProveLive && n.Series != 0 {
			return worksite.Act{Kind: worksite.MeterIn, N: n.Series - 1}, true
		}
		return a, ok
	}},
	{name: "talk goes on beside a live cabinet", next: func(r *worksite.Rules, s worksite.State, n worksite.Need, a worksite.Act, ok bool) (worksite.Act, bool) {
		if n.Power == worksite.Any && a.Kind == worksite.PowerOff {
			return worksite.Act{}, false
		}
		return a, ok
	}},
}

// A prover that finds nothing in broken code proves nothing: every mistake put in must be found.
func TestMutants(t *testing.T) {
	r := rules(t, little())
	if len(mutants) < 20 {
		t.Errorf("%d mistakes, want at least 20", len(mutants))
	}
	for _, mu := range mutants {
		t.Run(mu.name, func(t *testing.T) {
			rep := r.Prove(mutant{r, mu.next, mu.apply})
			if len(rep.Broken) == 0 {
				t.Fatal("not found")
			}
			t.Log(rep.Broken[0])
		})
	}
}
