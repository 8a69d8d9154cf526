package handy

import "math/rand"

// place is what the person has done to the appliance so far.
type place struct {
	power  bool // furnace: breaker and switch on; heater: knob at on
	call   bool
	covers map[string]bool // covers that are off
	lifted map[string]bool // wires that are off
	jumper map[string]bool
}

func newPlace() place {
	return place{covers: map[string]bool{}, lifted: map[string]bool{}, jumper: map[string]bool{}}
}

// unit is a simulated appliance in its room.
type unit interface {
	site() *place
	powerOn()
	powerOff()
	callSet(on bool)
	// look answers a check that is asked in words: one of its options, or "" where this cannot be seen.
	look(check string) string
	// read answers a measurement; false where this person has no instrument for it.
	read(check string) (shown, bool)
	// plate answers a fact of the rating plate.
	plate(id string) (shown, bool)
	story() string
	// repair carries out one repair of the catalogue: the part is good then.
	repair(id string)
	// heats says whether it gives heat as it should.
	heats() bool
	// cycle is one whole run: running, stops-early, no-start or runs-no-heat.
	cycle() string
	meter() *meterClass
	// state is a line for the transcript.
	state() string
}

// fault is one thing wrong with a unit.
type fault struct {
	name string
	// parts whose naming is right, in the catalogue's words.
	parts []string
	// stops are stop lines that are right instead.
	stops []string
}

// outcome kinds that a case may end with.
const (
	wantFixed  = "fixed"   // the person can end it
	wantHand   = "hand"    // a licensed person must: handed over or stopped, with the part named or the right stop line
	wantStop   = "stop"    // a hazard: stopped or an emergency, never nothing wrong
	wantNormal = "nothing" // works as it should
)

// situation is one case: the faults set into a unit, and what is right.
type situation struct {
	name   string
	kind   string // single, double, normal, hazard
	want   string
	faults []fault
	breakU func(rng *rand.Rand, u unit)
	after  string // how it came: after-work, after-storm, nothing-done
	some   bool   // only at some starts
	// must hold of the unit before the job; else the severity is drawn again.
	shows func(u unit) bool
}

func between(rng *rand.Rand, low, high float64) float64 { return low + (high-low)*rng.Float64() }

// spread draws around a nominal value, three sigma at the tolerance.
func spread(rng *rand.Rand, nominal, tolerance float64) float64 {
	d := rng.NormFloat64() / 3
	if d > 1 {
		d = 1
	}
	if d < -1 {
		d = -1
	}
	return nominal * (1 + tolerance*d)
}
