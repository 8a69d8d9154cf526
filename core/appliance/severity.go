package appliance

import (
	"math"

	"readback/core/measure"
	"readback/core/unit"
)

// Severity says how far a mode that is a matter of degree can go, as ratios to its nominal size: no loose screw is as
// loose as the next. Half of all cases lie below the nominal size, eleven of twelve between Low and High, all between
// Least and Most; between two of these they are even in the logarithm, or plainly even where one is zero.
type Severity struct {
	Least, Low, High, Most float64
	Gap                    bool // a path that should be there and is open, or conducts badly: At is the share of the cases itself
}

// Grades is how finely the severity of a mode can be named: in so many equal shares of the cases.
const Grades = 1536

// outside is the share of the cases on either side that lie between Low and Least, or High and Most: judgement.
const outside = 1. / 24

// At is the ratio to the nominal size below which the share u of the cases lies.
func (v Severity) At(u float64) float64 {
	if v.Gap {
		return u
	}
	span := func(a, b, t float64) float64 {
		if a > 0 && b > 0 {
			return a * math.Pow(b/a, t)
		}
		return a + (b-a)*t
	}
	switch {
	case u < outside:
		return span(v.Least, v.Low, u/outside)
	case u < 0.5:
		return span(v.Low, 1, (u-outside)/(0.5-outside))
	case u < 1-outside:
		return span(1, v.High, (u-0.5)/(0.5-outside))
	}
	return span(v.High, v.Most, min(1, (u-1+outside)/outside))
}

// times is the usual range of a size whose file gives none: so many times smaller and larger (common practice, no
// source).
func times(x float64) func(float64) (low, high float64) {
	return func(float64) (float64, float64) { return 1 / x, x }
}

// lessWork is the usual range of a share that is left of something, and of what is too much of it (judgement): neither
// reaches 1.
func lessWork(f float64) (low, high float64) {
	switch {
	case f <= 0:
		return 1, 1
	case f < 1:
		return 0.4, min(2.5, (f+(1-f)*0.4)/f)
	}
	return (1 + (f-1)/2) / f, (1 + (f-1)*2) / f
}

// severity is how the size of a quantity is spread: as the file has it (its low and high hold eleven cases of twelve),
// else as usual.
func severity(q measure.Quantity, usual func(nominal float64) (low, high float64), share bool) (Severity, bool) {
	if q.Nominal <= 0 || usual == nil && q.Low == q.High {
		return Severity{Least: 1, Low: 1, High: 1, Most: 1}, false
	}
	low, high := q.Low/q.Nominal, q.High/q.Nominal
	if q.Low == q.High {
		low, high = usual(q.Nominal)
	}
	low, high = min(low, 1), max(high, 1)
	v := Severity{Low: low, High: high, Most: high * math.Sqrt(high)}
	if low > 0 {
		v.Least = low * math.Sqrt(low)
	}
	if share { // nothing that is wrong works as well as what is not
		const nearly = 0.03
		switch f := q.Nominal; {
		case f < 1:
			v.Most = max(v.High, min(v.Most, (high*f+(1-high*f)/2)/f, (1-nearly)/f))
		case f > 1:
			v.Least = min(v.Low, max(v.Least, (1+nearly)/f))
		}
	}
	return v, v.Least < v.Most
}

// A path that is called open conducts badly in one case of three, with anything between badOhms and so many times that,
// even in the logarithm: a screw that is loose, a corroded splice, a pin that burns (common practice, no source).
const (
	badShare = 1. / 3
	badOhms  = 5
	badTimes = 1000
)

// open opens a branch for good, or lets it conduct badly where the hypothesis says how badly.
func (c *change) open(branch int) {
	if branch < 0 {
		return
	}
	mode := c.mode
	c.b.severities[mode] = Severity{Low: 0, Most: 1, Gap: true}
	c.op(func(c *config) {
		if u, known := c.ratio(mode); known && u < badShare {
			c.series[branch] += badOhms * math.Pow(badTimes, u/badShare)
			return
		}
		c.force[branch] = -1
	})
}

// setSpread is how far the value of a parameter that a mode sets wrong is usually spread (judgement). A voltage from
// which something works, or that something makes, is a make of its own and no matter of degree.
func setSpread(d unit.Dim) func(float64) (low, high float64) {
	switch d {
	case unit.Voltage, unit.Count, "":
		return nil
	case unit.Resistance:
		return times(1.6)
	}
	return times(1.12)
}

// graded is one mode of a hypothesis at a border of its grades.
type graded struct {
	mode  int
	ratio float64
}

// Graded names a mode in a hypothesis at one border of its grades: 0 is its smallest size, Grades its largest.
func (e *Engine) Graded(mode, border int) int { return len(e.m.Modes)*(2+border) + mode }

// Sized is [Engine.Singles] with every mode that is a matter of degree at its usual size, and no other.
func (e *Engine) Sized() []Hypothesis {
	out := e.Singles()
	for i := range e.m.Modes {
		if v, is := e.Severity(i); is && !v.Gap {
			out[i+1] = Hypothesis{e.Graded(i, Grades/2)}
		}
	}
	return out
}

// Severity tells how a mode is spread, and whether it is a matter of degree at all.
func (e *Engine) Severity(mode int) (Severity, bool) {
	v := e.severities[mode]
	return v, v.Least < v.Most
}

// gradeOf takes a mode of a hypothesis apart: the mode itself, and the ratio to its nominal size where it is graded.
func (e *Engine) gradeOf(m int) (mode int, ratio float64, is bool) {
	n := len(e.m.Modes)
	if m < n {
		return m, 1, false
	}
	mode = m % n
	return mode, e.severities[mode].At(float64(m/n-2) / Grades), true
}

// ratio is that of the size of a mode to its nominal one in this hypothesis, and whether it is known.
func (c *config) ratio(mode int) (float64, bool) {
	for _, g := range c.graded {
		if g.mode == mode {
			return g.ratio, true
		}
	}
	return 1, false
}

// spread is the relative half-width of a slot in this hypothesis.
func (c *config) spread(slot int32) float64 {
	for _, x := range c.sharp {
		if x == slot {
			return 0
		}
	}
	return c.tol[slot]
}
