package measure

import (
	"math"

	"readback/core/unit"
)

// Predicted is what a hypothesis says an instrument will show. Sizes are in the base unit of the quantity.
type Predicted struct {
	State    State   // Number, Over, Beep, Silent or Blank
	Low      float64 // ends of the healthy spread; equal ends are a fixed value
	High     float64
	Floating bool    // nothing drives the lead: the display shows what it picks up (ghost volts)
	Unlike   float64 // share of units whose spread is three times as wide: makes that the spread does not know
	Even     bool    // it lies anywhere between Low and High alike, and Tol to either side of that: a fault more or less bad
	Tol      float64 // half-width of the healthy spread where Even
}

// Cause is a way in which an answer does not come from the quantity it was asked for.
type Cause int

// The causes. Sound is no blunder.
const (
	Sound   Cause = iota
	contact       // a lead does not touch
	Slip          // a decade or a unit off
	ear           // heard as a neighbour
	Stray         // anything else: the wrong point, the wrong part
	Causes        // how many there are
)

// Blunders holds the chances of the causes other than Sound. The figures are starting values to be fitted from journals:
// no source gives them for a person with a meter in a basement.
type Blunders struct {
	Contact float64 // lead not touching
	Slip    float64 // each of a thousand times and ten times too small or large
	Ear     float64 // each confusable form of the number; 0 for typed answers
	Stray   float64
}

// Usual are the blunders of a spoken answer; Typed those of one that was tapped or keyed.
var (
	Usual = Blunders{Contact: 0.03, Slip: 0.005, Ear: 0.02, Stray: 0.01}
	Typed = Blunders{Contact: 0.03, Slip: 0.005, Stray: 0.01}
)

// Persists is the chance that a cause works again, with the same result, when the same check is asked again.
// An untouched lead is mostly noticed, a wrong point mostly not (assumption, no source).
var Persists = [Causes]float64{contact: 0.3, Slip: 0.5, ear: 0.3, Stray: 0.7}

// Parts is the likelihood of one answer under one prediction, split by cause. Each entry is a chance: for a number, the
// chance of this display to its last digit, so that numbers and states can be weighed against each other.
type Parts [Causes]float64

// Total is the likelihood.
func (p Parts) Total() float64 {
	sum := 0.0
	for _, x := range p {
		sum += x
	}
	return sum
}

// strayDecades is the width of the log-uniform spread of a stray number: six decades about the instrument's usual sizes.
const strayDecades = 6

// strayState is the share of stray answers that are one particular state instead of a number.
const strayState = 1. / 6

// Likelihood is the chance of the answer r under the prediction p, with its blunders. A number is N(mean, s²+u²) with the
// rectangular spread s of the prediction and the meter's u (GUM 4.3.7), integrated over the last digit said.
// A unit of another dimension, or none, tells nothing: every prediction gets the same.
func Likelihood(m *Meter, f Function, r Reading, p Predicted, b Blunders) Parts {
	var parts Parts
	if r.State != Number {
		sound := stateChance(m, f, r.State, p)
		parts[contact] = b.Contact * untouched(f, r.State)
		parts[Stray] = b.Stray * strayState
		parts[Sound] = b.SoundShare() * sound
		return parts
	}
	u, ok := unit.Lookup(r.Value.Unit)
	if !ok {
		return Parts{Stray: b.Stray}
	}
	x, d := r.Value.Dec.Float()*u.Scale+u.Offset, stepOf(r.Value)
	var forms [4]float64
	heard := neighbours(r.Value.Dec.Float(), forms[:0])
	sound := b.SoundShare() - b.Ear*float64(len(heard))
	parts[Sound] = sound * numberChance(m, f, x, d, p)
	if reads0(f) {
		// The open input shows the meter's own zero error: the counts alone, with a sign that the display drops.
		z := Rectangular(m.HalfWidth(f, 0, d))
		parts[contact] = b.Contact * 2 * between(x-d/2, x+d/2, 0, z)
	}
	if u.Offset == 0 && x != 0 { // zero and a point on a temperature scale have no decades
		for _, k := range [4]float64{1e-3, 0.1, 10, 1e3} {
			parts[Slip] += b.Slip * numberChance(m, f, x/k, d/k, p)
		}
	}
	for _, v := range heard {
		parts[ear] += b.Ear * numberChance(m, f, v*u.Scale+u.Offset, d, p)
	}
	// A stray zero is as likely as one count.
	parts[Stray] = b.Stray * math.Min(1, d/(math.Max(math.Abs(x), d)*strayDecades*math.Ln10))
	return parts
}

// numberChance is the chance of the display x (last digit d) when nothing went wrong.
func numberChance(m *Meter, f Function, x, d float64, p Predicted) float64 {
	u := m.Uncertainty(f, x, d)
	switch {
	case p.Floating && direct(f):
		return between(x-d/2, x+d/2, 0, Combine(u, strayDC))
	case p.Floating:
		// Capacitive pick-up: half the time next to nothing, else anything up to mains size (from memory).
		z := Combine(u, 0.2)
		ghost := 0.0
		if x > 0 && x < 150 {
			ghost = math.Min(1, d/150)
		}
		if m.LoZ {
			return 2 * between(x-d/2, x+d/2, 0, z)
		}
		return 0.5*2*between(x-d/2, x+d/2, 0, z) + 0.5*ghost
	case p.State != Number:
		return 0
	}
	return p.shows(x-d/2, x+d/2, u, d/100)
}

// shows is the chance of a display from a to b with a meter of uncertainty u; least is the least standard deviation.
func (p Predicted) shows(a, b, u, least float64) float64 {
	half := p.Tol
	if !p.Even {
		half = (p.High - p.Low) / 2
	}
	with := func(times float64) float64 {
		s := math.Max(Combine(Rectangular(times*half), u), least)
		if p.Even {
			return evenly(a, b, p.Low, p.High, s)
		}
		return between(a, b, (p.Low+p.High)/2, s)
	}
	if p.Unlike == 0 {
		return with(1)
	}
	return (1-p.Unlike)*with(1) + p.Unlike*with(wider)
}

// evenly is the chance of a to b for what lies evenly between low and high, seen with the standard deviation s.
func evenly(a, b, low, high, s float64) float64 {
	w := high - low
	if w < 1e-3*s {
		return between(a, b, (low+high)/2, s)
	}
	below := func(x float64) float64 { // times w
		switch {
		case math.IsInf(x, 1):
			return w
		case math.IsInf(x, -1):
			return 0
		}
		return s * (loss((x-low)/s) - loss((x-high)/s))
	}
	return math.Max(0, below(b)-below(a)) / w
}

// loss is the integral of Phi up to z.
func loss(z float64) float64 { return z*Phi(z) + Normal(z, 0, 1) }

// strayDC is what a lead that nothing drives shows on d.c. ranges, V: pick-up is a.c. and averages out (from memory).
const strayDC = 0.002

// direct tells whether a function shows d.c. volts.
func direct(f Function) bool { return f == VoltsDC || f == MillivoltDC }

// wider is how many times wider the spread of the units is that are unlike the usual ones (judgement).
const wider = 3

// spread is the standard deviation of a display: the prediction's rectangular spread and the meter's uncertainty.
func spread(p Predicted, u float64) float64 { return Combine(Rectangular((p.High-p.Low)/2), u) }

// stateChance is the chance that the display shows the state when nothing went wrong.
func stateChance(m *Meter, f Function, s State, p Predicted) float64 {
	if p.State == s {
		return 1
	}
	if p.State != Number || p.Floating {
		return 0
	}
	mid := (p.Low + p.High) / 2
	switch s {
	case Over:
		top := m.Top(f)
		return Phi((mid - top) / math.Max(spread(p, m.Uncertainty(f, top, 0)), top*1e-6))
	case Beep:
		return 1 - beepless(m, mid)
	case Silent:
		return beepless(m, mid)
	}
	return 0
}

// beepless is the chance that a resistance does not sound: from 0 at BeepLow to 1 at BeepHigh on a log scale, because only
// the two ends of a meter's threshold are known.
func beepless(m *Meter, ohms float64) float64 {
	if ohms <= m.BeepLow {
		return 0
	}
	return math.Min(1, math.Log(ohms/m.BeepLow)/math.Log(m.BeepHigh/m.BeepLow))
}

// untouched is the chance that leads in the air show the state.
func untouched(f Function, s State) float64 {
	switch {
	case f == Ohms && s == Over, f == Continuity && (s == Silent || s == Over):
		return 1
	}
	return 0
}

// reads0 tells whether an open input shows zero.
func reads0(f Function) bool {
	switch f {
	case Ohms, Continuity, Thermometer, Look:
		return false
	}
	return true
}

// neighbours appends the numbers that sound like v in English: thirteen for thirty and so on up to ninety, in the last two
// digits of the whole part ("one fifteen", "one fifty").
func neighbours(v float64, to []float64) []float64 {
	if v < 0 || v > 1e9 {
		return to
	}
	whole, frac := math.Modf(v)
	last := math.Mod(whole, 100)
	switch {
	case last >= 13 && last <= 19:
		to = append(to, whole-last+(last-10)*10+frac)
	case last >= 30 && math.Mod(last, 10) == 0:
		to = append(to, whole-last+10+last/10+frac)
	}
	return to
}

// LookParts is the likelihood of naming option said of n when the state of the appliance is option is (0 to n-1, or -1 when
// no option fits). The share of wrong answers depends on how hard the look is: clear, ambiguous, skilled (assumptions; the
// clear one is a spoken yes or no with sensitivity 0.95 to 0.97). A wrong answer is any other option.
func LookParts(skill string, n, is, said int) Parts {
	wrong := 0.05
	switch skill {
	case "ambiguous":
		wrong = 0.12
	case "skilled":
		wrong = 0.2
	}
	switch {
	case n < 2:
		return Parts{Sound: 1}
	case is < 0:
		return Parts{Stray: 1 / float64(n)}
	case said == is:
		return Parts{Sound: 1 - wrong}
	}
	return Parts{Stray: wrong / float64(n-1)}
}
