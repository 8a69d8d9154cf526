package worksite

import (
	"readback/core/measure"
	"readback/core/vocab"
)

// Permits is the interlock of acts: whether a may be asked in state s on the way to n, and if not, why.
// It is written apart from Next on purpose and looks only at the state.
func (r *Rules) Permits(s State, a Act, n Need) (ok bool, why string) {
	cut := s.Power == Off || s.Power == Proved
	i := int(a.N)
	switch a.Kind {
	case PowerOff, CallOff, NoteReset, gasShut:
		return true, ""
	case PowerOn:
		switch {
		case s.Unlike:
			return false, "a wire may be in the wrong place"
		case s.Wires != n.Wires:
			return false, "a wire is off that this step does not need off"
		case s.Covers != n.Covers && (n.Shut || !n.Covers.Minus(s.Covers).Empty() || !s.Covers.Minus(n.Covers).And(r.hazard).Empty()):
			return false, "a cover is open that this step does not need open"
		case s.Jumper != n.Jumper:
			return false, "a test jumper is in"
		case s.Series != n.Series || s.Jack && s.Series == 0:
			return false, "the red lead is in the current jack"
		case s.Held && !r.Held(n):
			return false, "the door switch is held"
		case !s.Resets.Empty() && n.Shut:
			return false, "a manual reset is not noted"
		case s.Power == Unknown && s.Open():
			return false, "switch off first: something is open"
		case n.Power != Live:
			return false, "nothing needs power"
		}
	case ProveLive, ProveLN, ProveLG, ProveNG, ProveAgain:
		switch {
		case s.Power != Off:
			return false, "switch off before proving dead"
		case int(s.Proof) != int(a.Kind-ProveLive):
			return false, "the proof has an order"
		case s.Jack || s.Series != 0:
			return false, "the meter is not free for volts"
		case !r.dead.Minus(s.Covers).Empty():
			return false, "the points of the proof are covered"
		}
	case OpenCover:
		switch {
		case r.hazard.Has(i) && !cut:
			return false, "switch off before opening"
		case s.Covers.Has(i):
			return false, "it is open"
		case !r.around[i].Without(i).Minus(s.Covers).Empty():
			return false, "another cover is in front"
		}
	case CloseCover:
		switch {
		case r.hazard.Has(i) && !cut:
			return false, "switch off before closing"
		case !s.Covers.Has(i):
			return false, "it is closed"
		}
		for p := range r.around {
			if p != i && s.Covers.Has(p) && r.around[p].Has(i) {
				return false, "a cover behind it is open"
			}
		}
		for p := range s.Wires.Each {
			if r.cover(r.pointAt[p]).Has(i) && !n.Wires.Has(p) {
				return false, "a wire behind it is off"
			}
		}
	case LiftWire, RefitWire, Discharge, ProveEmpty:
		switch {
		case s.Power != Proved:
			return false, "hands in only when off and proved"
		case a.Kind == LiftWire && r.capacitor[i] != 0 && s.Drained != (Drain{r.capacitor[i], true}):
			return false, "the capacitor is not discharged and verified"
		case a.Kind == ProveEmpty && s.Drained.Part != r.capacitor[i]:
			return false, "it was not discharged"
		case !r.cover(r.pointAt[i]).Minus(s.Covers).Empty():
			return false, "its cover is on"
		}
	case JumperIn, MeterIn:
		switch {
		case s.Power != Proved:
			return false, "hands in only when off and proved"
		case a.Kind == JumperIn && r.bridges(i):
			return false, "a safety device is never bridged"
		case s.Jumper != 0 || s.Series != 0:
			return false, "one at a time"
		}
	case JumperOut, MeterOut, HoldDoor, FreeDoor, PlaceLeads:
		if !cut {
			return false, "switch off first"
		}
		if a.Kind == HoldDoor && !r.Held(n) {
			return false, "nothing needs the door switch held"
		}
	case JackOut:
		if s.Series != 0 {
			return false, "the meter is still in the circuit"
		}
	case CallOn:
		if n.Call != Yes {
			return false, "nothing needs a call"
		}
	case gasOpen:
		return false, "gas is turned on by the person whose work it is"
	default:
		return false, "no such act"
	}
	return true, ""
}

func (r *Rules) bridges(check int) bool {
	j := r.m.Checks[check].Jump
	return len(j) == 2 && r.bridged(j[0], j[1]) >= 0
}

// Allowed is the interlock of checks: whether a check may be asked in state s, and if not, why.
func (r *Rules) Allowed(s State, check int) (ok bool, why string) {
	c, n := &r.m.Checks[check], r.needs[check]
	cut := s.Power == Off || s.Power == Proved
	mark := int16(check + 1)
	switch {
	case offOnly(c.Function) && s.Power != Proved:
		return false, "only when off and proved dead"
	case offOnly(c.Function) && (s.Jack || s.Series != 0):
		return false, "the red lead is in the current jack"
	case c.HandsIn && n.Power != Live && s.Power != Proved:
		return false, "hands in only when off and proved dead"
	case c.Function == measure.MicroampsDC && s.Series != mark:
		return false, "the meter is not in the circuit"
	case s.Series != 0 && s.Series != mark:
		return false, "the meter is in another circuit"
	case s.Jumper != 0 && (s.Jumper != mark || len(c.Jump) == 0):
		return false, "a test jumper is in"
	case s.Held && !r.Held(n):
		return false, "the door switch is held"
	case len(c.Jump) > 0 && s.Jumper != mark:
		return false, "the test jumper is not in"
	case c.Power == "on" && s.Power != On:
		return false, "power is not on"
	case c.Power == "off" && !cut:
		return false, "power is not off"
	case !n.Covers.Minus(s.Covers).Empty():
		return false, "a cover is in the way"
	case n.Power == Live && !s.Covers.Minus(n.Covers).And(r.hazard).Empty():
		return false, "power is on and another cover is open"
	case n.Power == Live && r.Held(n) && !s.Held:
		return false, "the door switch is open"
	case n.Power != Any && s.Wires != n.Wires:
		return false, "a wire is not as this check needs it"
	case n.Place != 0 && s.Placed != mark:
		return false, "the leads are not in place"
	case n.Call == Yes && s.Call != Yes, n.Call == No && s.Call != No:
		return false, "the thermostat is not as this check needs it"
	}
	return true, ""
}

// Left tells whether a state may be the last of a job: everything back, and the supply known.
func (s State) Left() bool { return !s.Open() && s.Power != Unknown }

// Consent tells whether a check is live work that is named and agreed to first: power on, or a point that is live whatever
// the appliance's supply, and more than touch-safe voltage within reach.
func (r *Rules) Consent(check int) bool {
	c := &r.m.Checks[check]
	h, _ := vocab.HazardOf(c.Hazard)
	switch r.needs[check].Power {
	case Live:
		return h.Shock || !r.needs[check].Covers.And(r.shock).Empty()
	case Any:
		return h.Shock && c.Function != measure.Look
	}
	return false
}

// Mains tells whether a check puts the leads on house voltage, or close to it: only with a meter and leads that are made
// for it (IEC 61010-2-033, category III).
func (r *Rules) Mains(check int) bool {
	c := &r.m.Checks[check]
	return (!c.Function.Dial().Own || c.Function == measure.AmpsAC) && r.Consent(check)
}

// Exposed tells whether more than touch-safe voltage lies open and may be live.
func (r *Rules) Exposed(s State) bool {
	return s.Power != Off && s.Power != Proved && (!s.Covers.And(r.shock).Empty() || r.m.Mains && !s.Wires.Empty())
}
