// Package site knows the state of the work place: what is switched on, open, lifted, bridged or held, and which act may
// follow. It is pure and its state is a small comparable value, so that the same code that leads a person can be walked
// exhaustively by a prover.
//
// Three things matter. [Rules.Next] gives the next act on the way from a state to what a check needs; [Rules.Apply] gives
// the state after an act and its answer; [Rules.Allowed] and [Rules.Permits] are the interlocks, written apart from Next
// so that a mistake in one is caught by the other.
package worksite

import "math/bits"

// Power is what is known of the supply. Only a live-dead-live proof leads to Proved.
type Power uint8

const (
	Unknown Power = iota
	On
	Off    // switched off as stated, still to be treated as live
	Proved // off and proved dead
)

var powerWords = [...]string{"unknown", "on", "off", "proved"}

// String is the id used in views and word lists.
func (p Power) String() string { return powerWords[p] }

// Tri is on, off or not known.
type Tri uint8

const (
	NotKnown Tri = iota
	Yes
	No
)

// String is "on", "off" or "unknown".
func (t Tri) String() string { return [...]string{"unknown", "on", "off"}[t] }

// Set is a set of small indices, 0..127.
type Set [2]uint64

// Has tells whether i is in the set. Indices outside 0..127 never are.
func (s Set) Has(i int) bool { return i >= 0 && i < 128 && s[i>>6]>>(uint(i)&63)&1 == 1 }

// With returns the set with i in it.
func (s Set) With(i int) Set { s[i>>6] |= 1 << (uint(i) & 63); return s }

// Without returns the set without i.
func (s Set) Without(i int) Set { s[i>>6] &^= 1 << (uint(i) & 63); return s }

// Minus returns what is in s and not in t.
func (s Set) Minus(t Set) Set { return Set{s[0] &^ t[0], s[1] &^ t[1]} }

// Or returns what is in either.
func (s Set) Or(t Set) Set { return Set{s[0] | t[0], s[1] | t[1]} }

// And returns what is in both.
func (s Set) And(t Set) Set { return Set{s[0] & t[0], s[1] & t[1]} }

// Empty tells whether nothing is in the set.
func (s Set) Empty() bool { return s[0]|s[1] == 0 }

// Len is the number of members.
func (s Set) Len() int { return bits.OnesCount64(s[0]) + bits.OnesCount64(s[1]) }

// First is the smallest member, -1 for the empty set.
func (s Set) First() int {
	switch {
	case s[0] != 0:
		return bits.TrailingZeros64(s[0])
	case s[1] != 0:
		return 64 + bits.TrailingZeros64(s[1])
	}
	return -1
}

// Last is the largest member, -1 for the empty set.
func (s Set) Last() int {
	switch {
	case s[1] != 0:
		return 127 - bits.LeadingZeros64(s[1])
	case s[0] != 0:
		return 63 - bits.LeadingZeros64(s[0])
	}
	return -1
}

// Each yields the members in order.
func (s Set) Each(yield func(int) bool) {
	for !s.Empty() {
		i := s.First()
		if s = s.Without(i); !yield(i) {
			return
		}
	}
}

// All returns the members in order.
func (s Set) All() []int {
	var out []int
	for !s.Empty() {
		i := s.First()
		out, s = append(out, i), s.Without(i)
	}
	return out
}

// State is everything known of the work place. It is comparable; two equal states offer the same acts.
type State struct {
	Power   Power
	Proof   uint8 // readings of the live-dead-live proof done so far, 0..4; 5 readings make Proved
	Gas     Tri   // No: the gas cock is shut
	Call    Tri   // thermostat calling for heat
	Covers  Set   // open places, by place index
	Wires   Set   // lifted or unplugged points, by point index
	Jumper  int16 // check index whose test jumper is fitted, plus one; 0 for none
	Held    bool  // a door switch is held in by hand or clip
	Jack    bool  // red lead in the current jack
	Series  int16 // check index whose meter is wired in series, plus one; 0 for none
	Placed  int16 // check index whose leads are clipped on, plus one; 0 for none
	Resets  Set   // manual resets pressed and not yet noted, by part index
	Noted   Set   // manual resets pressed and noted
	Drained Drain // the capacitor that was discharged last
	LeftOff bool  // supply was switched off to leave it so
	Unlike  bool  // a wire was found not to be where it was, and nobody has said what of it
}

// Drain is how far the discharging of a capacitor has come. It holds until the supply comes back.
type Drain struct {
	Part  int16 // part index, plus one; 0 for none
	Shown bool  // and it showed less than 5 V d.c. then
}

// Start is the state at the beginning of a job, and what a restart of the program falls back to for the supply.
func Start() State { return State{Power: Unknown} }

// Doubt returns the state after something happened that was not asked for: nothing about the supply is believed any more.
func (s State) Doubt() State {
	s.Power, s.Proof, s.Call, s.Placed, s.Drained = Unknown, 0, NotKnown, 0, Drain{}
	return s
}

// Open lists whether anything still has to be put back before the place may be left.
func (s State) Open() bool {
	return !s.Covers.Empty() || !s.Wires.Empty() || s.Jumper != 0 || s.Held || s.Jack || s.Series != 0 || !s.Resets.Empty()
}

// Timed tells whether something is in place that must not be left alone: a jumper, a held door switch, or the current
// jack in use.
func (s State) Timed() bool { return s.Jumper != 0 || s.Held || s.Series != 0 || s.Jack }
