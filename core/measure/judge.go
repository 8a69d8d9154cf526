package measure

import (
	"math"

	"readback/core/unit"
)

// Judgement is a verdict with the numbers it stands on. Value, U, Guard, Low and High are in the limit's unit.
type Judgement struct {
	Verdict Verdict
	P       float64 // probability that the true value is within the limit; 0.5 for an invalid reading
	Value   float64
	U       float64 // expanded uncertainty, k = 2
	Guard   float64 // width of the guard band w = U (JCGM 106 8.3.2, r = 1)
	Low     float64 // limit, -Inf when open
	High    float64 // limit, +Inf when open
	Unit    string
	Why     string // for Invalid: what is the matter, in plain words; else empty
}

// Judge holds a reading against a limit. The words are those of guarded acceptance (ILAC-G8:09/2019, 4.2.3): pass and fail
// are clear by the guard band, the conditional ones are on that side but within it. A display state is judged by what
// it proves: over-range is "more than the meter can show", a beep "less than the threshold".
func Judge(m *Meter, f Function, r Reading, lim Limit) Judgement {
	j := Judgement{Unit: lim.Unit, Low: math.Inf(-1), High: math.Inf(1), P: 0.5}
	u, ok := unit.Lookup(lim.Unit)
	if !ok {
		return j.invalid("the limit has no known unit")
	}
	if lim.Low != nil {
		j.Low = *lim.Low
	}
	if lim.High != nil {
		j.High = *lim.High
	}
	if bad := kindMatters(f, r.AC); bad != "" {
		return j.invalid(bad)
	}
	toLimit := func(base float64) float64 { return (base - u.Offset) / u.Scale }
	switch r.State {
	case Number:
		if r.Value.Unit == "" {
			return j.invalid("no unit was said")
		}
		if r.Value.Dim() != u.Dim {
			return j.invalid("that is another kind of quantity")
		}
		base, step := r.Value.Base(), stepOf(r.Value)
		j.Value, j.U = toLimit(base), 2*m.Uncertainty(f, base, step)/u.Scale
		j.Guard = j.U
		return j.number()
	case Over:
		return j.interval(toLimit(m.Top(f)), math.Inf(1))
	case Beep:
		return j.interval(toLimit(0), toLimit(m.BeepHigh))
	case Silent:
		return j.interval(toLimit(m.BeepLow), math.Inf(1))
	case Jumping:
		if r.Low == nil || r.High == nil || r.Low.Dim() != u.Dim || r.High.Dim() != u.Dim {
			return j.invalid("the reading does not settle")
		}
		return j.interval(toLimit(r.Low.Base()), toLimit(r.High.Base()))
	case Blank:
		return j.invalid("the display is blank")
	}
	return j.invalid("no number was given")
}

// kindMatters tells when alternating and direct were mixed up; a word not said is no contradiction.
func kindMatters(f Function, said string) string {
	want := ""
	switch f {
	case VoltsAC, AmpsAC:
		want = "ac"
	case VoltsDC, MicroampsDC, MillivoltDC:
		want = "dc"
	}
	if said == "" || want == "" || said == want {
		return ""
	}
	if want == "ac" {
		return "the meter must be on alternating current"
	}
	return "the meter must be on direct current"
}

// stepOf is one count of the last digit that was said, in the base unit.
func stepOf(v unit.Value) float64 {
	u, _ := unit.Lookup(v.Unit)
	return v.Dec.Step() * u.Scale
}

func (j Judgement) invalid(why string) Judgement {
	j.Verdict, j.Why = Invalid, why
	return j
}

func (j Judgement) number() Judgement {
	w := j.Guard
	j.P = Conformance(j.Value, j.U/2, j.Low, j.High)
	switch y := j.Value; {
	case y < j.Low-w || y > j.High+w:
		j.Verdict = Fail
	case y < j.Low || y > j.High:
		j.Verdict = ConditionalFail
	case y < j.Low+w || y > j.High-w:
		j.Verdict = ConditionalPass
	default:
		j.Verdict = Pass
	}
	return j
}

// interval judges what is only known to lie somewhere in a..b: clear when all of it is in or all of it is out.
func (j Judgement) interval(a, b float64) Judgement {
	j.Value = a
	switch {
	case a >= j.Low && b <= j.High:
		j.Verdict, j.P = Pass, 1
	case a > j.High || b < j.Low:
		j.Verdict, j.P = Fail, 0
	default:
		return j.invalid("this display cannot tell: the limit lies inside what it stands for")
	}
	return j
}

// Capability is C_m = T/(4u) for a two-sided limit of width T and standard uncertainty u (JCGM 106 7.6.2); below 3 a check
// leaves much of the band undecided. It is +Inf for an open limit.
func Capability(m *Meter, f Function, lim Limit) float64 {
	u, ok := unit.Lookup(lim.Unit)
	if lim.Low == nil || lim.High == nil || !ok {
		return math.Inf(1)
	}
	mid := (*lim.Low+*lim.High)/2*u.Scale + u.Offset
	return (*lim.High - *lim.Low) * u.Scale / (4 * m.Uncertainty(f, mid, 0))
}
