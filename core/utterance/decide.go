package utterance

import (
	"slices"

	"readback/core/measure"
	"readback/core/unit"
)

// Action is what to do about an utterance that should be a reading.
type Action string

const (
	Accept  Action = "accept"  // take it and say it back
	AskTwo  Action = "ask-two" // ask which of Take and Rival it was
	AskUnit Action = "unit"    // the digits are clear, ask which of Units
	Confirm Action = "confirm" // say it back and wait for "right" or "different"
	Second  Action = "second"  // it would clear a hazard: say it once more, or touch
	Again   Action = "again"   // nothing usable: say the number again
	Digits  Action = "digits"  // one digit at a time, then the unit
	Keypad  Action = "keypad"  // tap it, show the camera, or skip
)

// Slot is what is known about the reading that is due. The functions may be nil: then nothing matters, everything is possible and
// nothing clears a hazard.
type Slot struct {
	Units    []string                        // unit ids that make sense here, the likely one first
	Failed   int                             // tries in this slot that brought nothing
	Rejected []measure.Reading               // said to be wrong in this slot: never offered again
	Asked    bool                            // the unit was asked for already: the first of Units settles it
	Previous *measure.Reading                // read back last in this slot, for repairs that keep a part of it
	Pending  *measure.Reading                // a first saying that would clear a hazard
	Matters  func(a, b measure.Reading) bool // do they differ in verdict or next step?
	Clears   func(measure.Reading) bool      // would it clear a hazard: "dead", zero volts?
	Possible func(measure.Reading) bool      // can the appliance show it here, faults included?
}

// Decision is an action with what it is about.
type Decision struct {
	Action Action
	Take   *measure.Reading // the reading, its unit filled in when only one fits
	Rival  *measure.Reading // for AskTwo
	Units  []string         // for AskUnit
	Digits bool             // say the digits too when reading back
	Why    string           // for the record
}

// Limits in nats and dB. A margin of 3 nats kept 1 of 50 wrong readings at 10 dB of noise; hazards get twice that.
// The noise limits are the measured ratio, which lies about 1 dB below the true one; common practice, no source.
const (
	marginMatters = 3.0
	marginHazard  = 6.0
	snrConfirm    = 5.0
	snrHopeless   = 1.5
	closeRival    = 8.0 // nats: a rival further behind is not looked at
)

// Where it is known how sure the best reading is, that decides instead of the distance to the rival: a rival that matters is asked about
// below these, and what is less sure than the last is not taken at all. Chosen on the tuning half of the project's bench, so
// that few are asked and what is taken wrongly stays within one in twenty at 10 dB of noise.
const (
	sureMatters = 0.85
	sureHazard  = 0.98
	sureLeast   = 0.5
	sureLoud    = 0.987 // in loud noise only what two recognizers agree on is so sure
)

// Decide chooses what to do about an utterance where a reading is due. It is pure. A clear reading that the appliance should not be
// able to show is never replaced by a likelier one: it may be the fault; it is confirmed.
func Decide(u *Utterance, s Slot) Decision {
	cands := candidates(u, s)
	if len(cands) == 0 {
		return s.failed("nothing was understood as a reading")
	}
	best := cands[0]
	sure := (u.Source == "touch" || u.Source == "key") && !best.doubt
	settled := false
	if len(best.units) > 1 && best.r.State == measure.Number {
		units := s.open(best)
		if len(units) > 1 && !s.Asked {
			return Decision{Action: AskUnit, Take: &best.r, Units: units, Why: "the unit was not said, several fit, and they differ in what follows"}
		}
		settled = len(units) > 1
		best.r, best.units = withUnit(best.r, units[0]), nil
	}
	if u.SNR != 0 && u.SNR < snrHopeless && !sure {
		return Decision{Action: Keypad, Take: &best.r, Why: "too loud to trust a number"}
	}
	d := Decision{Action: Accept, Take: &best.r, Digits: best.r.State == measure.Number && best.r.Value.Dec.Risky()}
	clears := s.Clears != nil && s.Clears(best.r)
	if sure {
		d.Why = "entered by hand"
		return d
	}
	if r, why := s.rival(u, cands, clears); r != nil {
		return Decision{Action: AskTwo, Take: &best.r, Rival: r, Digits: true, Why: why}
	}
	if u.Sure > 0 && u.Sure < sureLeast {
		return s.failed("it was heard too badly")
	}
	switch {
	case clears && s.Pending == nil:
		d.Action, d.Why = Second, "it would clear a hazard"
	case clears && !Agree(*s.Pending, best.r):
		d.Action, d.Why = Again, "it differs from the first saying"
	case s.Pending != nil && !clears:
		d.Action, d.Digits, d.Why = Confirm, true, "it differs from the first saying"
	case s.Possible != nil && !s.Possible(best.r):
		d.Action, d.Digits, d.Why = Confirm, true, "the appliance should not show this here"
	case u.SNR != 0 && u.SNR < snrConfirm && u.Sure < sureLoud:
		d.Action, d.Digits, d.Why = Confirm, true, "it is loud"
	case settled:
		d.Action, d.Digits, d.Why = Confirm, true, "the unit was asked for and not said"
	case best.doubt:
		d.Action, d.Digits, d.Why = Confirm, true, foundInside
	case best.foreign:
		d.Action, d.Digits, d.Why = Confirm, true, "another unit than asked for"
	}
	return d
}

// open lists the units that a number said without one may have: the first that can be here settles it, unless another one can be here too
// and would make a difference.
func (s Slot) open(c candidate) []string {
	var out []string
	for _, id := range c.units {
		r := withUnit(c.r, id)
		if s.Possible != nil && !s.Possible(r) {
			continue
		}
		if len(out) == 0 {
			out = append(out, id)
			continue
		}
		own := withUnit(c.r, out[0])
		if s.Clears != nil && s.Clears(own) != s.Clears(r) || s.Matters != nil && s.Matters(own, r) {
			out = append(out, id)
		}
	}
	if out == nil {
		return c.units[:1]
	}
	return out
}

func (s Slot) failed(why string) Decision {
	switch s.Failed {
	case 0:
		return Decision{Action: Again, Why: why}
	case 1:
		return Decision{Action: Digits, Why: why}
	}
	return Decision{Action: Keypad, Why: why}
}

type candidate struct {
	r       measure.Reading
	units   []string // more than one: not decided
	cost    float64
	foreign bool // a unit was said that is not among the slot's
	repair  bool
	doubt   bool
}

// candidates are the readings of an utterance in the slot's units, best first, without those rejected before.
func candidates(u *Utterance, s Slot) []candidate {
	var out []candidate
	for _, m := range u.Meanings {
		if m.Kind != Reading || m.Reading == nil || m.Cost > closeRival {
			continue
		}
		c := candidate{r: *m.Reading, cost: m.Cost, repair: m.Repair, doubt: m.Doubt}
		said := c.r.Value.Unit
		if c.r.Low != nil {
			said = c.r.Low.Unit
		}
		switch {
		case c.r.State != measure.Number && c.r.Low == nil:
		case said != "":
			c.foreign = len(s.Units) > 0 && !slices.Contains(s.Units, said)
		default:
			fit := s.Units
			if m.Units != nil {
				fit = nil
				for _, x := range m.Units {
					if len(s.Units) == 0 || slices.Contains(s.Units, x) {
						fit = append(fit, x)
					}
				}
				if fit == nil {
					fit, c.foreign = m.Units, true
				}
			}
			if len(fit) == 1 {
				c.r = withUnit(c.r, fit[0])
			} else {
				c.units = fit
			}
		}
		if !s.rejected(c.r) {
			out = append(out, c)
		}
	}
	return out
}

func withUnit(r measure.Reading, id string) measure.Reading {
	if r.Low != nil && r.High != nil {
		lo, hi := *r.Low, *r.High
		lo.Unit, hi.Unit = id, id
		r.Low, r.High = &lo, &hi
		return r
	}
	r.Value.Unit = id
	return r
}

func (s Slot) rejected(r measure.Reading) bool {
	for _, x := range s.Rejected {
		if Agree(x, r) {
			return true
		}
	}
	return false
}

// Agree tells whether two readings are the same state, or the same size in the same unit.
func Agree(a, b measure.Reading) bool {
	if a.State != b.State || (a.Low == nil) != (b.Low == nil) {
		return false
	}
	if a.Low != nil {
		return a.Low.Dec.Equal(b.Low.Dec) && a.High.Dec.Equal(b.High.Dec) && a.Low.Unit == b.Low.Unit
	}
	return a.State != measure.Number || a.Value.Dec.Equal(b.Value.Dec) && a.Value.Unit == b.Value.Unit
}

// rival finds another reading close enough to be asked about, when it would make a difference.
func (s Slot) rival(u *Utterance, cands []candidate, clears bool) (*measure.Reading, string) {
	best := cands[0]
	matters := func(r measure.Reading) (limit float64) {
		switch {
		case Agree(r, best.r) || s.rejected(r):
			return 0
		case clears != (s.Clears != nil && s.Clears(r)):
			return marginHazard
		case s.Matters != nil && s.Matters(best.r, r):
			return marginMatters
		}
		return 0
	}
	if r := s.kept(best); r != nil && matters(*r) > 0 {
		return r, "an earlier digit may still hold"
	}
	for _, c := range cands[1:] {
		if len(c.units) > 1 {
			if best.r.State == measure.Number && c.r.Value.Dec.Equal(best.r.Value.Dec) {
				continue
			}
			c.r = withUnit(c.r, best.r.Value.Unit)
		}
		if s.Possible != nil && !s.Possible(c.r) {
			continue
		}
		limit := matters(c.r)
		near := c.cost-best.cost < limit
		if u.Sure > 0 {
			near = limit == marginHazard && u.Sure < sureHazard || limit == marginMatters && u.Sure < sureMatters
		}
		if near {
			return &c.r, "another reading of the same words or sound is near"
		}
	}
	if best.r.State != measure.Number || s.Possible == nil {
		return nil, ""
	}
	// What is known to be misheard counts as noise grows: nothing in a quiet room, all of it below 10 dB.
	if u.SNR == 0 || u.SNR >= 20 || u.Sure >= sureMatters && !clears {
		return nil, ""
	}
	discount := min(3, (20-u.SNR)/10*3)
	for _, c := range Confusions(best.r.Value) {
		r := best.r
		r.Value = c.Value
		if slices.ContainsFunc(cands[1:], func(x candidate) bool { return Agree(x.r, r) }) {
			continue // weighed by its sound already
		}
		if s.Possible(r) && (len(s.Units) == 0 || slices.Contains(s.Units, r.Value.Unit)) && c.Cost-discount < matters(r)/2 {
			return &r, "it sounds like a " + c.Why + " confusion, and it is loud"
		}
	}
	return nil, ""
}

// kept is the other way to take a repair: "no, twenty-four" after 26.1 may be 24 or 24.1.
func (s Slot) kept(best candidate) *measure.Reading {
	if !best.repair || s.Previous == nil || s.Previous.State != measure.Number || best.r.State != measure.Number ||
		s.Previous.Value.Dec.Exp >= 0 || best.r.Value.Dec.Exp < 0 || s.Previous.Value.Unit != best.r.Value.Unit {
		return nil
	}
	old := s.Previous.Value.Dec.String()
	at := slices.Index([]byte(old), '.')
	d, err := unit.ParseDecimal(best.r.Value.Dec.String() + old[at:])
	if err != nil {
		return nil
	}
	r := best.r
	r.Value.Dec = d
	return &r
}
