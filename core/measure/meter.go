package measure

import (
	"math"

	"readback/core/unit"
)

// Range is one range of a meter function. Sizes are in the base unit of the function's dimension.
type Range struct {
	Max  float64 // largest size it shows; beyond it the display says over-range
	Step float64 // one count of the last digit
}

// Scale is what a meter can do in one function. The stated accuracy is ±(Percent of the reading + Counts of the last digit).
type Scale struct {
	Percent float64
	Counts  float64
	Ranges  []Range // by rising Max
}

// Meter is what is known of the person's instruments. The zero value knows no function; start from Modest or Describe.
type Meter struct {
	Name     string // as spoken
	Category string // overvoltage category of IEC 61010-1: "CAT II", "CAT III", "CAT IV"; empty when unknown
	TrueRMS  bool
	LoZ      bool    // has a low-impedance volts function, which drains ghost volts
	BeepLow  float64 // ohm: below this continuity always sounds
	BeepHigh float64 // ohm: above this it never sounds
	Scales   map[Function]Scale
}

// Modest is the meter assumed when nothing is known: an average-responding 2000-count instrument without a low-impedance
// function. Its figures are a careful reading of common data sheets (from memory); the thermometer and the manometer are
// those of a household trade bag (from memory). No category is assumed, so nothing may rely on one.
func Modest() *Meter {
	return &Meter{
		Name:    "a simple meter",
		BeepLow: 10, BeepHigh: 100, // thresholds of tens of ohms are usual (from memory)
		Scales: map[Function]Scale{
			VoltsAC:     {1.2, 5, []Range{{200, 0.1}, {600, 1}}},
			VoltsDC:     {0.8, 3, []Range{{2, 1e-3}, {20, 1e-2}, {200, 0.1}, {600, 1}}},
			MillivoltDC: {0.8, 5, []Range{{0.2, 1e-4}, {2, 1e-3}}},
			Ohms:        {1.2, 5, []Range{{200, 0.1}, {2e3, 1}, {20e3, 10}, {200e3, 100}, {2e6, 1e3}}},
			Continuity:  {1.2, 5, []Range{{200, 0.1}}},
			Capacitance: {4, 5, []Range{{20e-6, 1e-8}, {200e-6, 1e-7}}},
			AmpsAC:      {2.5, 8, []Range{{20, 1e-2}, {200, 0.1}}},
			MicroampsDC: {1.2, 3, []Range{{200e-6, 1e-7}, {2e-3, 1e-6}}},
			Manometer:   {1, 2, []Range{{15000, 2.5}}},
			Thermometer: {1, 10, []Range{{1000, 0.1}}},
			COMeter:     {10, 5, []Range{{1000e-6, 1e-6}}}, // a household meter, from memory
		},
	}
}

// Plain is what a person can say of their meter without its data sheet.
type Plain struct {
	TrueRMS   bool
	LoZ       bool
	Category  string     // as printed beside the jacks, empty when not found
	LowestDC  unit.Value // smallest direct-current range on the dial, zero when there is none or it is not known
	NoCurrent bool       // no direct-current range at all
	None      bool       `json:",omitempty"` // there is no meter
}

// Describe is Modest changed by what the person said. A true-RMS instrument is taken to be a 6000-count one, ±(1 % + 3 counts)
// on volts (from memory). A current range that is too coarse for flame current is kept, so that its uncertainty tells.
func Describe(p Plain) *Meter {
	m := Modest()
	m.Name, m.TrueRMS, m.LoZ, m.Category = "your meter", p.TrueRMS, p.LoZ, p.Category
	if p.TrueRMS {
		m.Scales[VoltsAC] = Scale{1, 3, []Range{{6, 1e-3}, {60, 1e-2}, {600, 0.1}}}
		m.Scales[VoltsDC] = Scale{0.5, 3, []Range{{6, 1e-3}, {60, 1e-2}, {600, 0.1}}}
		m.Scales[Ohms] = Scale{1, 3, []Range{{600, 0.1}, {6e3, 1}, {60e3, 10}, {600e3, 100}, {6e6, 1e3}}}
	}
	if p.NoCurrent {
		delete(m.Scales, MicroampsDC)
	} else if top := p.LowestDC.Base(); p.LowestDC.Dim() == unit.Current && top > 0 {
		m.Scales[MicroampsDC] = Scale{1.2, 3, []Range{{top, top / 2000}}}
	}
	return m
}

// Can tells whether the meter has the function. Eyes, ears and hands need none.
func (m *Meter) Can(f Function) bool {
	if f == Look {
		return true
	}
	_, ok := m.Scales[f]
	return ok
}

// Top is the largest size the function shows, base unit; +Inf when the function is unknown.
func (m *Meter) Top(f Function) float64 {
	s, ok := m.Scales[f]
	if !ok || len(s.Ranges) == 0 {
		return math.Inf(1)
	}
	return s.Ranges[len(s.Ranges)-1].Max
}

// Step is the last digit of the best range for a size, both in the base unit; 0 when the function is unknown.
func (m *Meter) Step(f Function, size float64) float64 {
	s, ok := m.Scales[f]
	if !ok || len(s.Ranges) == 0 {
		return 0
	}
	for _, r := range s.Ranges {
		if math.Abs(size) <= r.Max {
			return r.Step
		}
	}
	return s.Ranges[len(s.Ranges)-1].Step
}

// HalfWidth is the accuracy limit a = |x|·Percent/100 + Counts·step, in the base unit, of a size shown in steps of step.
// The display of the best range is assumed unless the digits are finer than that. Unknown functions are taken as ±5 %.
func (m *Meter) HalfWidth(f Function, size, step float64) float64 {
	s, ok := m.Scales[f]
	if !ok {
		return math.Abs(size)*0.05 + step
	}
	digit := m.Step(f, size)
	if step > 0 && step < digit {
		digit = step
	}
	return math.Abs(size)*s.Percent/100 + s.Counts*digit
}

// Uncertainty is the standard uncertainty of a reading in the base unit: the accuracy limit as a rectangular distribution
// (GUM 4.3.7), and the rounding to the digits that were said where these are coarser than the display (GUM F.2.2.1),
// added in quadrature (GUM 5.1.2).
func (m *Meter) Uncertainty(f Function, size, step float64) float64 {
	u := Rectangular(m.HalfWidth(f, size, step))
	if step > m.Step(f, size) {
		u = Combine(u, Rounding(step))
	}
	return u
}
