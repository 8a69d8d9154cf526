package measure

import "math"

// Outcomes fills dst with the chance that the display under a prediction falls between cuts, for planning: dst[i] for sizes from
// cuts[i-1] to cuts[i], base unit, then one entry for each of states. Cuts rise. It sums to 1. spoilt gets the part of each chance
// that is blunders.
func Outcomes(m *Meter, f Function, p Predicted, b Blunders, cuts []float64, states []State, dst, spoilt []float64) {
	n := len(cuts) + 1
	sound := b.SoundShare()
	mid := (p.Low + p.High) / 2
	u, least := m.Uncertainty(f, mid, 0), math.Abs(mid)*1e-6+1e-12
	z := Rectangular(m.HalfWidth(f, 0, 0))
	stray := b.Stray * (1 - strayState*float64(len(states)))
	for i := range n {
		lo, hi := math.Inf(-1), math.Inf(1)
		if i > 0 {
			lo = cuts[i-1]
		}
		if i < n-1 {
			hi = cuts[i]
		}
		spoilt[i] = stray * (decades(hi) - decades(lo))
		dst[i] = 0
		switch {
		case p.Floating && direct(f):
			dst[i] = sound * between(lo, hi, 0, Combine(u, strayDC))
		case p.Floating:
			dst[i] = sound * (0.5*(half(hi, 0.2)-half(lo, 0.2)) + 0.5*(clamp(hi/150)-clamp(lo/150)))
		case p.State == Number:
			dst[i] = sound * p.shows(lo, hi, u, least)
			for _, k := range [4]float64{1e-3, 0.1, 10, 1e3} {
				spoilt[i] += b.Slip * p.shows(lo/k, hi/k, u, least)
			}
		}
		if reads0(f) {
			spoilt[i] += b.Contact * (half(hi, z) - half(lo, z))
		}
	}
	for i, st := range states {
		dst[n+i] = sound * stateChance(m, f, st, p)
		spoilt[n+i] = b.Contact*untouched(f, st) + b.Stray*strayState
	}
	total := 0.0
	for i := range dst[:n+len(states)] {
		dst[i] += spoilt[i]
		total += dst[i]
	}
	for i := range dst[:n+len(states)] {
		dst[i] /= total
		spoilt[i] /= total
	}
}

// half is the distribution function of the absolute value of N(0, s²).
func half(x, s float64) float64 {
	if x <= 0 {
		return 0
	}
	return math.Erf(x / (s * math.Sqrt2))
}

func clamp(x float64) float64 { return math.Max(0, math.Min(1, x)) }

// decades is the distribution function of a stray number: log-uniform from a thousandth to a thousand.
func decades(x float64) float64 {
	if x <= 0 {
		return 0
	}
	return clamp((math.Log10(x) + strayDecades/2) / strayDecades)
}

// Again is the chance of the display r if it shows what prev showed, apart from the meter's own scatter. Both are answers to
// one check. Where either is no number it is 1 for the same state and 0 for another.
func Again(m *Meter, f Function, prev, r Reading) float64 {
	if prev.State != Number || r.State != Number || prev.Value.Dim() != r.Value.Dim() {
		if prev.State == r.State {
			return 1
		}
		return 0
	}
	x, d := r.Value.Base(), stepOf(r.Value)
	y := prev.Value.Base()
	return between(x-d/2, x+d/2, y, math.Max(math.Sqrt2*m.Uncertainty(f, y, stepOf(prev.Value)), d/100))
}

// SoundShare is the chance that nothing spoils an answer.
func (b Blunders) SoundShare() float64 { return 1 - b.Contact - 4*b.Slip - b.Stray }
