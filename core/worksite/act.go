package worksite

// Kind of an act.
type Kind uint8

const (
	None Kind = iota
	PowerOff
	PowerOn
	ProveLive  // a point known to be live: the meter works
	ProveLN    // line to neutral reads zero
	ProveLG    // line to ground reads zero
	ProveNG    // neutral to ground reads zero
	ProveAgain // the live point again: the meter still works
	CallOn
	CallOff
	OpenCover  // N: place
	CloseCover // N: place
	HoldDoor
	FreeDoor
	LiftWire   // N: point
	RefitWire  // N: point
	JumperIn   // N: check
	JumperOut  // N: check
	MeterIn    // N: check; the meter in series, red in the current jack
	MeterOut   // N: check
	JackOut    // the red lead back to the volts jack
	PlaceLeads // N: check; leads clipped on before a reading that lasts only seconds
	NoteReset  // N: part
	Discharge  // N: point; a capacitor is discharged through a resistor
	ProveEmpty // N: point; it shows less than 5 V d.c. then
	gasShut
	gasOpen
	kinds
)

var kindNames = [kinds]string{
	"none", "power-off", "power-on", "prove-live", "prove-line-neutral", "prove-line-ground", "prove-neutral-ground",
	"prove-again", "call-on", "call-off", "open-cover", "close-cover", "hold-door", "free-door", "lift-wire", "refit-wire",
	"jumper-in", "jumper-out", "meter-in", "meter-out", "jack-out", "place-leads", "note-reset", "discharge", "prove-empty", "gas-shut", "gas-open",
}

// String is the id of the act in the word list.
func (k Kind) String() string { return kindNames[k] }

// Kinds lists every kind of act in a fixed order.
func Kinds() []Kind {
	out := make([]Kind, 0, kinds-1)
	for k := PowerOff; k < kinds; k++ {
		out = append(out, k)
	}
	return out
}

// Act is an instruction that changes the site.
type Act struct {
	Kind Kind
	N    int16 // index of what it is done to, by kind; -1 when there is nothing to name
}

// Proof tells whether the act is one of the five readings of live-dead-live.
func (a Act) Proof() bool { return a.Kind >= ProveLive && a.Kind <= ProveAgain }

// Zero tells whether the act is a reading that must show zero, said twice.
func (a Act) Zero() bool { return a.Kind >= ProveLN && a.Kind <= ProveNG }

// HandsIn tells whether fingers go inside for it. Such an act is never asked unless the supply is off.
func (a Act) HandsIn() bool {
	switch a.Kind {
	case LiftWire, RefitWire, JumperIn, JumperOut, MeterIn, MeterOut, HoldDoor, FreeDoor, Discharge, ProveEmpty:
		return true
	}
	return false
}

// Removes tells whether the act takes back something that must not stay.
func (a Act) Removes() bool {
	switch a.Kind {
	case RefitWire, JumperOut, MeterOut, JackOut, FreeDoor, CloseCover, NoteReset:
		return true
	}
	return false
}

// Outcome is how an act was answered.
type Outcome uint8

const (
	Done    Outcome = iota
	Failed          // a proof reading showed the opposite: voltage where zero was due, or none at the live point
	Changed         // something happened that was not asked for
)

// Outcomes lists what can follow an act.
func (a Act) Outcomes() []Outcome {
	if a.Proof() || a.Kind == ProveEmpty {
		return []Outcome{Done, Failed, Changed}
	}
	return []Outcome{Done, Changed}
}

// Apply gives the state after an act was answered so. It does not ask whether the act was permitted: [Rules.Permits] does.
func (r *Rules) Apply(s State, a Act, o Outcome) State {
	switch {
	case o == Changed:
		return s.Doubt()
	case o == Failed && a.Kind == ProveEmpty:
		s.Drained = Drain{} // there is a charge: once more
		return s
	case o == Failed && a.Zero():
		s.Power, s.Proof = On, 0 // voltage where none may be: it is live, whatever the switch says
		return s
	case o == Failed:
		s.Proof = 0 // the meter or the live point is not good: nothing is proved
		return s
	}
	n := int(a.N)
	if !a.Proof() {
		s.Proof = 0 // a proof is one unbroken run
	}
	switch a.Kind {
	case PowerOff:
		s.Power, s.Placed, s.LeftOff = Off, 0, true
		if !r.mains {
			s.Power = Proved // nothing from the house to prove: the appliance's own control is off
		}
	case PowerOn:
		s.Power, s.LeftOff, s.Drained = On, false, Drain{}
	case ProveLive, ProveLN, ProveLG, ProveNG:
		s.Proof = uint8(a.Kind-ProveLive) + 1
	case ProveAgain:
		s.Power, s.Proof = Proved, 0
	case CallOn:
		s.Call = Yes
	case CallOff:
		s.Call = No
	case OpenCover:
		s.Covers = s.Covers.With(n)
	case CloseCover:
		s.Covers = s.Covers.Without(n)
	case HoldDoor:
		s.Held = true
	case FreeDoor:
		s.Held = false
	case LiftWire:
		s.Wires = s.Wires.With(n)
	case RefitWire:
		s.Wires = s.Wires.Without(n)
	case JumperIn:
		s.Jumper = a.N + 1
	case JumperOut:
		s.Jumper = 0
	case MeterIn:
		s.Series, s.Jack = a.N+1, true
	case MeterOut:
		s.Series = 0
	case JackOut:
		s.Jack = false
	case PlaceLeads:
		s.Placed = a.N + 1
	case NoteReset:
		s.Resets, s.Noted = s.Resets.Without(n), s.Noted.With(n)
	case Discharge:
		s.Drained = Drain{Part: r.capacitor[n]}
	case ProveEmpty:
		s.Drained = Drain{Part: r.capacitor[n], Shown: true}
	case gasShut:
		s.Gas = No
	case gasOpen:
		s.Gas = Yes
	}
	return s
}

// Adds tells whether the act puts something in place that must come out again.
func (a Act) Adds() bool {
	switch a.Kind {
	case OpenCover, LiftWire, JumperIn, MeterIn, HoldDoor:
		return true
	}
	return false
}

// Retract gives the state after an act that was reported done is said not to be. Nobody knows how far the hands had come:
// what the act put in place counts as in place, what it took away counts as still there, the supply is not believed.
func (r *Rules) Retract(s State, a Act) State {
	n := int(a.N)
	switch a.Kind {
	case PowerOff, PowerOn:
		s.Power, s.Proof, s.Drained = Unknown, 0, Drain{}
	case Discharge, ProveEmpty:
		s.Drained = Drain{}
	case ProveLive, ProveLN, ProveLG, ProveNG, ProveAgain:
		s.Proof = 0
		if s.Power == Proved {
			s.Power = Off
		}
	case CallOn, CallOff:
		s.Call = NotKnown
	case OpenCover, CloseCover:
		s.Covers = s.Covers.With(n)
	case HoldDoor, FreeDoor:
		s.Held = true
	case LiftWire, RefitWire:
		s.Wires = s.Wires.With(n)
	case JumperIn, JumperOut:
		s.Jumper = a.N + 1
	case MeterIn, MeterOut:
		s.Series, s.Jack = a.N+1, true
	case JackOut:
		s.Jack = true
	case PlaceLeads:
		s.Placed = 0
	case NoteReset:
		s.Resets, s.Noted = s.Resets.With(n), s.Noted.Without(n)
	}
	return s
}
