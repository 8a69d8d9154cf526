package handy

import (
	"fmt"
	"math"
	"math/rand"
	"strings"
)

// meterClass is one of three hand meters. The figures are what their leaflets commonly promise (from memory).
type meterClass struct {
	name    string
	counts  float64 // full scale of the display
	gain    float64 // error of the reading, one sigma
	digits  float64 // error in last digits, one sigma
	input   float64 // ohms of the volt ranges
	lead    float64 // ohms of both leads together
	trueRMS bool
	ghost   bool    // shows a few volts on an open wire
	micro   bool    // has a microamp range
	cap     bool    // has a capacitance range
	most    float64 // highest resistance it shows
}

var meters = []meterClass{
	{name: "cheap", counts: 2000, gain: 0.006, digits: 1.5, input: 1e6, lead: 0.5, most: 2e6},
	{name: "mid", counts: 6000, gain: 0.004, digits: 1, input: 10e6, lead: 0.25, trueRMS: true, ghost: true, micro: true,
		cap: true, most: 60e6},
	{name: "good", counts: 20000, gain: 0.0008, digits: 1, input: 10e6, lead: 0.12, trueRMS: true, ghost: true, micro: true,
		cap: true, most: 50e6},
}

// shown is what the display says: a number with its unit, or OL.
type shown struct {
	over   bool
	mant   int64
	exp    int
	unit   string
	ac     string
	number string
}

func (s shown) String() string {
	if s.over {
		return "OL"
	}
	return s.number + " " + s.unit
}

// scales of a base unit: the display shows a value below full scale in the first that holds it.
var scales = map[string][]struct {
	unit string
	mul  float64
	full []float64 // full scales in that unit, before the count's own factor (2 or 6)
}{
	"mV":  {{"mV", 1, []float64{100, 1000}}, {"V", 1e-3, []float64{10, 100}}},
	"V":   {{"V", 1, []float64{1, 10, 100, 1000}}},
	"ohm": {{"ohm", 1, []float64{100, 1000}}, {"kohm", 1e-3, []float64{10, 100, 1000}}, {"Mohm", 1e-6, []float64{10, 100}}},
	"uF":  {{"uF", 1, []float64{1, 10, 100, 1000}}},
	"uA":  {{"uA", 1, []float64{10, 100, 1000}}},
	"A":   {{"A", 1, []float64{10, 100}}},
}

// show turns the true value into the display's.
func (m meterClass) show(rng *rand.Rand, value float64, base, ac string) shown {
	if base == "ohm" && value > m.most {
		return shown{over: true}
	}
	lead := float64(int(m.counts) / 1000)
	for lead >= 10 {
		lead /= 10
	}
	for _, s := range scales[base] {
		for _, f := range s.full {
			full := f * lead
			v := value * s.mul
			if math.Abs(v) >= full*0.999 {
				continue
			}
			step := full / m.counts
			v = v*(1+m.gain*rng.NormFloat64()) + step*m.digits*rng.NormFloat64()
			if (base == "ohm" || ac == "ac" || base == "uF") && v < 0 {
				v = 0
			}
			places := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
			mant := int64(math.Round(v * math.Pow(10, float64(places))))
			return shown{mant: mant, exp: -places, unit: s.unit, ac: ac,
				number: fmt.Sprintf("%.*f", places, float64(mant)/math.Pow(10, float64(places)))}
		}
	}
	return shown{over: true}
}

// plain is a number that is no meter's, such as one of the rating plate.
func plain(v float64, places int, unit string) shown {
	p := math.Pow(10, float64(places))
	m := int64(math.Round(v * p))
	return shown{mant: m, exp: -places, unit: unit, number: strings.TrimSpace(fmt.Sprintf("%.*f", places, float64(m)/p))}
}
