package site_test

import (
	"testing"

	"readback/core/site"
)

// mutant is the real step code with one mistake put in.
type mutant struct {
	*site.Rules
	next  func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool)
	apply func(before, after site.State, a site.Act, o site.Outcome) site.State
}

func (m mutant) Next(s site.State, n site.Need) (site.Act, bool) {
	a, ok := m.Rules.Next(s, n)
	if m.next != nil {
		return m.next(m.Rules, s, n, a, ok)
	}
	return a, ok
}

func (m mutant) Apply(s site.State, a site.Act, o site.Outcome) site.State {
	after := m.Rules.Apply(s, a, o)
	if m.apply != nil {
		return m.apply(s, after, a, o)
	}
	return after
}

type nextFunc = func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool)

// leaveOut skips an act of that kind, as if it had been done: what comes after it is asked at once.
func leaveOut(k site.Kind) nextFunc {
	return func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		for i := 0; ok && a.Kind == k && i < 9; i++ {
			s = r.Apply(s, a, site.Done)
			a, ok = r.Next(s, n)
		}
		return a, ok
	}
}

// with pretends that the state were another one when the next act is chosen.
func with(pretend func(s site.State) site.State) nextFunc {
	return func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		return r.Next(pretend(s), n)
	}
}

// onNeed changes what the machine believes a check to need.
func onNeed(change func(n site.Need) site.Need) nextFunc {
	return func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		return r.Next(s, change(n))
	}
}

var mutants = []struct {
	name  string
	next  nextFunc
	apply func(before, after site.State, a site.Act, o site.Outcome) site.State
}{
	{name: "never switched off", next: leaveOut(site.PowerOff)},
	{name: "proof without the live point before", next: leaveOut(site.ProveLive)},
	{name: "proof without the live point after", next: leaveOut(site.ProveAgain)},
	{name: "proof without line to neutral, line to ground, neutral to ground", next: func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		for ok && a.Zero() {
			s = r.Apply(s, a, site.Done)
			a, ok = r.Next(s, n)
		}
		return a, ok
	}},
	{name: "off counts as proved", next: with(func(s site.State) site.State {
		if s.Power == site.Off {
			s.Power = site.Proved
		}
		return s
	})},
	{name: "unknown counts as off", next: with(func(s site.State) site.State {
		if s.Power == site.Unknown {
			s.Power = site.Off
		}
		return s
	})},
	{name: "unknown counts as proved", next: with(func(s site.State) site.State {
		if s.Power == site.Unknown {
			s.Power = site.Proved
		}
		return s
	})},
	{name: "voltage found counts as dead", apply: func(before, after site.State, a site.Act, o site.Outcome) site.State {
		if a.Zero() && o == site.Failed {
			after.Power, after.Proof = before.Power, uint8(a.Kind-site.ProveLive)+1
		}
		return after
	}},
	{name: "a dead meter proves", apply: func(before, after site.State, a site.Act, o site.Outcome) site.State {
		if a.Kind == site.ProveAgain && o == site.Failed {
			after.Power, after.Proof = site.Proved, 0
		}
		return after
	}},
	{name: "a surprise leaves the proof standing", apply: func(before, after site.State, a site.Act, o site.Outcome) site.State {
		if o == site.Changed {
			return before
		}
		return after
	}},
	{name: "switched on stays proved", apply: func(before, after site.State, a site.Act, o site.Outcome) site.State {
		if a.Kind == site.PowerOn && before.Power == site.Proved {
			after.Power = site.Proved
		}
		return after
	}},
	{name: "the jumper is never taken out", next: leaveOut(site.JumperOut)},
	{name: "the jumper is forgotten", apply: func(before, after site.State, a site.Act, o site.Outcome) site.State {
		if a.Kind == site.JumperIn {
			after.Jumper = 0
		}
		return after
	}},
	{name: "the door switch is never let go", next: leaveOut(site.FreeDoor)},
	{name: "the door switch is not held", next: leaveOut(site.HoldDoor)},
	{name: "the meter stays in line", next: leaveOut(site.MeterOut)},
	{name: "the red lead stays in the current jack", next: leaveOut(site.JackOut)},
	{name: "the current jack is not noticed", next: with(func(s site.State) site.State { s.Jack = false; return s })},
	{name: "wires are not refitted", next: leaveOut(site.RefitWire)},
	{name: "wires are not lifted", next: leaveOut(site.LiftWire)},
	{name: "covers stay open", next: leaveOut(site.CloseCover)},
	{name: "covers are opened live", next: func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		if ok && a.Kind == site.PowerOff && s.Covers.Empty() {
			if b, ok := r.Next(r.Apply(s, a, site.Done), n); ok && b.Kind == site.OpenCover {
				return b, true
			}
		}
		return a, ok
	}},
	{name: "leads are clipped on live", next: func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		if ok && a.Kind == site.PowerOff {
			if b, ok := r.Next(r.Apply(s, a, site.Done), n); ok && b.Kind == site.PlaceLeads {
				return b, true
			}
		}
		return a, ok
	}},
	{name: "ohms need no proof", next: onNeed(func(n site.Need) site.Need {
		if n.Power == site.Dead {
			n.Power = site.Cut
		}
		return n
	})},
	{name: "live checks are asked with power off", next: onNeed(func(n site.Need) site.Need {
		if n.Power == site.Live {
			n.Power = site.Cut
		}
		return n
	})},
	{name: "the place is left as it is", next: func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		if n.Shut && ok && a.Removes() {
			return site.Act{}, false
		}
		return a, ok
	}},
	{name: "power on before the covers are back", next: func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		if n.Shut && ok && a.Kind == site.CloseCover {
			return site.Act{Kind: site.PowerOn, N: -1}, true
		}
		return a, ok
	}},
	{name: "the meter is fitted unproved", next: func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		if ok && a.Kind == site.ProveLive && n.Series != 0 {
			return site.Act{Kind: site.MeterIn, N: n.Series - 1}, true
		}
		return a, ok
	}},
	{name: "talk goes on beside a live cabinet", next: func(r *site.Rules, s site.State, n site.Need, a site.Act, ok bool) (site.Act, bool) {
		if n.Power == site.Any && a.Kind == site.PowerOff {
			return site.Act{}, false
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
