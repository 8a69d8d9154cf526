package measure_test

import (
	"math"
	"testing"

	"readback/core/measure"
	"readback/core/unit"
)

func near(t *testing.T, name string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol || math.IsNaN(got) {
		t.Errorf("%s = %.9g, want %.9g ± %g", name, got, want, tol)
	}
}

// bench is the meter of the worked examples: one range, ±(percent + counts) of step.
func bench(f measure.Function, percent, counts, max, step float64) *measure.Meter {
	return &measure.Meter{Scales: map[measure.Function]measure.Scale{
		f: {Percent: percent, Counts: counts, Ranges: []measure.Range{{Max: max, Step: step}}},
	}}
}

func TestAccuracy(t *testing.T) {
	for _, c := range []struct {
		name            string
		percent, counts float64
		size, step      float64
		half            float64
	}{
		{"2 % + 2 at 100.0 V", 2, 2, 100, 0.1, 2.2}, // published training example: 97.8 to 102.2 V
		{"1 % + 3 at 120.0 V", 1, 3, 120, 0.1, 1.5}, // same shape, computed
		{"1 % + 3 at 24.3 V", 1, 3, 24.3, 0.1, 0.543},
		{"1 % + 3 at 1.4 uA", 1, 3, 1.4, 0.1, 0.314}, // the counts dominate
		{"0.08 % + 2 at 2.000 V", 0.08, 2, 2, 0.001, 0.0036},
		{"2.5 % + 3 at 32.00 V", 2.5, 3, 32, 0.01, 0.83},
		{"2.5 % + 3 at 0.09 V", 2.5, 3, 0.09, 0.01, 0.03225},
		{"1 % + 3 at 24.6 V", 1, 3, 24.6, 0.1, 0.546},
	} {
		m := bench(measure.VoltsDC, c.percent, c.counts, 1000, c.step)
		near(t, c.name, m.HalfWidth(measure.VoltsDC, c.size, c.step), c.half, 1e-9)
		near(t, c.name+", u", m.Uncertainty(measure.VoltsDC, c.size, c.step), c.half/math.Sqrt(3), 1e-9)
	}
}

func TestUncertainty(t *testing.T) {
	for _, c := range []struct {
		name           string
		got, want, tol float64
	}{
		{"voltmeter, 14 ppm of reading and 2 ppm of range (GUM 4.3.7, example 2), uV", measure.Rectangular(0.928571*14 + 2), 8.7, 0.05},
		{"with 12 uV of repeatability (GUM 5.1.5), uV", measure.Combine(12, 8.7), 15, 0.3},
		{"129 uohm at 99 % (GUM 4.3.4)", measure.FromLevel(129, 0.99), 50, 0.1},
		{"95 % divides by 1.96 (GUM 4.3.4)", measure.FromLevel(1.96, 0.95), 1, 1e-4},
		{"90 % divides by 1.64 (GUM 4.3.4)", measure.FromLevel(1.64, 0.90), 1, 5e-3},
		{"±4 °C rectangular (GUM 4.4.5)", measure.Rectangular(4), 2.3, 0.05},
		{"±4 °C triangular (GUM 4.4.6)", measure.Triangular(4), 1.6, 0.05},
		{"steps of 1 g (GUM F.2.2.1)", measure.Rounding(1), 0.29, 0.005},
		{"20 readings with s 1.49 (GUM 4.4.3)", 1.49 / math.Sqrt(20), 0.33, 0.005},
	} {
		near(t, c.name, c.got, c.want, c.tol)
	}
}

func TestConformance(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		name            string
		y, u, low, high float64
		want            float64
	}{
		{"upper limit (JCGM 106 7.3.3)", -5.47, 0.05, -inf, -5.40, 0.9192},
		{"lower limit (JCGM 106 7.3.3)", 509.7, 8.6, 490, inf, 0.9890},
		{"both limits (JCGM 106 7.4)", 13.6, 1.8, 12.5, 16.3, 0.6626},
		{"resistor before measuring (JCGM 106 9.5.3)", 1500, 0.12, 1499.8, 1500.2, 0.9044},
		{"resistor, flat prior", 1500.15, 0.04, 1499.8, 1500.2, 0.8943502},
		{"resistor, production prior", 1500.135, 0.0379473, 1499.8, 1500.2, 0.9566346},
		{"line 112.0 V", 112, 1.42 / math.Sqrt(3), 113, 127, 0.111},
		{"line 113.5 V", 113.5, 1.435 / math.Sqrt(3), 113, 127, 0.727},
		{"line 115.0 V", 115, 1.45 / math.Sqrt(3), 113, 127, 0.992},
	} {
		near(t, c.name, measure.Conformance(c.y, c.u, c.low, c.high), c.want, 6e-5+0.0006*b2f(c.low == 113))
	}
	y, u := measure.Posterior(1500, 0.12, 1500.15, 0.04)
	near(t, "posterior mean (JCGM 106 A.4.4)", y, 1500.135, 1e-9)
	near(t, "posterior u (JCGM 106 A.4.4)", u, 0.0379473, 1e-6)
	for p, z := range map[float64]float64{0.80: 0.84, 0.90: 1.28, 0.95: 1.64, 0.99: 2.33, 0.999: 3.09} {
		near(t, "z (JCGM 106 table 1)", measure.Quantile(p), z, 0.006)
	}
	// Guarded rejection of a speed (JCGM 106 8.3.3): u is 2 % of the reading, 99.9 % sure of more than 100 km/h; published 107.
	near(t, "speed", 100/(1-0.02*measure.Quantile(0.999)), 106.59, 0.005)
	// False accept at the acceptance limit for guard factors r of 2u (JCGM 106 8.3.2.3 and computed).
	for r, risk := range map[float64]float64{0: 0.5, 0.83: 0.048, 1: 0.0228, 1.5: 0.00135} {
		near(t, "false accept", measure.Phi(-2*r), risk, 0.001)
	}
}

func b2f(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func ptr(x float64) *float64 { return &x }

func TestJudge(t *testing.T) {
	line := bench(measure.VoltsAC, 1, 3, 600, 0.1)
	flame := bench(measure.MicroampsDC, 1, 3, 2e-4, 1e-7)
	mains := measure.Limit{Low: ptr(113), High: ptr(127), Unit: "V"}
	rod := measure.Limit{Low: ptr(1), Unit: "uA"}
	twenty := measure.Limit{Low: ptr(20), Unit: "V"}
	for _, c := range []struct {
		name    string
		m       *measure.Meter
		f       measure.Function
		reading string
		lim     measure.Limit
		want    measure.Verdict
		u, p    float64
	}{
		// JCGM 106 8.3 and the four words of ILAC-G8:09/2019; numbers computed with ±(1 % + 3), 0.1 digit.
		{"line low, within the band", line, measure.VoltsAC, "112.0 V", mains, measure.ConditionalFail, 1.640, 0.111},
		{"line just in", line, measure.VoltsAC, "113.5 V", mains, measure.ConditionalPass, 1.657, 0.727},
		{"line clear of the band", line, measure.VoltsAC, "115.0 V", mains, measure.Pass, 1.674, 0.992},
		{"line clearly low", line, measure.VoltsAC, "111.0 V", mains, measure.Fail, 1.628, 0.007},
		{"flame 1.4", flame, measure.MicroampsDC, "1.4 uA", rod, measure.Pass, 0.363, 0.986},
		{"flame 0.8 is no proof", flame, measure.MicroampsDC, "0.8 uA", rod, measure.ConditionalFail, 0.356, 0.130},
		{"20.0 of 20", line, measure.VoltsAC, "20.0 V", twenty, measure.ConditionalPass, 0.577, 0.5},
		{"20.5 of 20", line, measure.VoltsAC, "20.5 V", twenty, measure.ConditionalPass, 0.583, 0.957},
		{"19.5 of 20", line, measure.VoltsAC, "19.5 V", twenty, measure.ConditionalFail, 0.572, 0.040},
	} {
		v, err := unit.ParseValue(c.reading)
		if err != nil {
			t.Fatal(err)
		}
		j := measure.Judge(c.m, c.f, measure.Reading{Value: v}, c.lim)
		if j.Verdict != c.want {
			t.Errorf("%s: %s, want %s", c.name, j.Verdict, c.want)
		}
		near(t, c.name+": U", j.U, c.u, 6e-4)
		near(t, c.name+": p", j.P, c.p, 6e-4)
	}
	near(t, "C_m at 120 V (JCGM 106 7.6.2)", measure.Capability(line, measure.VoltsAC, mains), 4.04, 0.005)
}

func TestJudgeStates(t *testing.T) {
	m := measure.Modest()
	volts := unit.Of("24.0", "V")
	lo, hi := unit.Of("24.1", "V"), unit.Of("26.0", "V")
	low0 := unit.Of("0.0", "V")
	fuse := measure.Limit{High: ptr(2), Unit: "ohm"}
	coil := measure.Limit{Low: ptr(10), High: ptr(60), Unit: "ohm"}
	leak := measure.Limit{Low: ptr(0.5), Unit: "Mohm"}
	supply := measure.Limit{Low: ptr(22), High: ptr(30), Unit: "V"}
	for _, c := range []struct {
		name string
		f    measure.Function
		r    measure.Reading
		lim  measure.Limit
		want measure.Verdict
	}{
		{"over-range of a coil is open", measure.Ohms, measure.Reading{State: measure.Over}, coil, measure.Fail},
		{"over-range to ground is good", measure.Ohms, measure.Reading{State: measure.Over}, leak, measure.Pass},
		{"over-range of volts cannot tell", measure.VoltsAC, measure.Reading{State: measure.Over}, measure.Limit{Low: ptr(700), Unit: "V"}, measure.Invalid},
		{"a beep is not zero ohms", measure.Continuity, measure.Reading{State: measure.Beep}, fuse, measure.Invalid},
		{"a beep is less than the threshold", measure.Continuity, measure.Reading{State: measure.Beep}, measure.Limit{High: ptr(1), Unit: "kohm"}, measure.Pass},
		{"no beep of a fuse", measure.Continuity, measure.Reading{State: measure.Silent}, fuse, measure.Fail},
		{"jumping inside the limits", measure.VoltsAC, measure.Reading{State: measure.Jumping, Low: &lo, High: &hi}, supply, measure.Pass},
		{"jumping through a limit", measure.VoltsAC, measure.Reading{State: measure.Jumping, Low: &low0, High: &hi}, supply, measure.Invalid},
		{"jumping, nothing more", measure.VoltsAC, measure.Reading{State: measure.Jumping}, supply, measure.Invalid},
		{"dead without a number", measure.VoltsAC, measure.Reading{State: measure.Dead}, supply, measure.Invalid},
		{"blank display", measure.VoltsAC, measure.Reading{State: measure.Blank}, supply, measure.Invalid},
		{"wrong kind of quantity", measure.VoltsAC, measure.Reading{Value: unit.Of("24", "ohm")}, supply, measure.Invalid},
		{"no unit", measure.VoltsAC, measure.Reading{Value: unit.Value{Dec: volts.Dec}}, supply, measure.Invalid},
		{"direct instead of alternating", measure.VoltsAC, measure.Reading{Value: volts, AC: "dc"}, supply, measure.Invalid},
		{"limit without a unit", measure.VoltsAC, measure.Reading{Value: volts}, measure.Limit{}, measure.Invalid},
	} {
		j := measure.Judge(m, c.f, c.r, c.lim)
		if j.Verdict != c.want {
			t.Errorf("%s: %s (%s), want %s", c.name, j.Verdict, j.Why, c.want)
		}
		if (j.Verdict == measure.Invalid) != (j.Why != "") {
			t.Errorf("%s: %s says %q", c.name, j.Verdict, j.Why)
		}
	}
}

// The likelihood ratios of a 24 V supply, N(24, 2²), against none, N(0, 0.3²), computed apart with a meter of ±(1 % + 3).
// A Gaussian alone says 10^998 for 24.6 V.
func TestBlunders(t *testing.T) {
	m := bench(measure.VoltsAC, 1, 3, 600, 0.1)
	b := measure.Blunders{Contact: 0.03, Slip: 0.005, Ear: 0.02, Stray: 0.01}
	half := func(s float64) float64 { return s * math.Sqrt(3) }
	on := measure.Predicted{Low: 24 - half(2), High: 24 + half(2)}
	off := measure.Predicted{Low: -half(0.3), High: half(0.3)}
	for _, c := range []struct {
		reading string
		want    float64
	}{
		{"24.6 V", 5.2e3},
		{"19.0 V", 203},
		{"2.4 V", 13.5}, // a decade slip keeps the supply alive
		{"12.0 V", 0.87},
		{"0.0 V", 0.11}, // an untouched lead also shows zero
		{"0.3 V", 0.043},
	} {
		v, err := unit.ParseValue(c.reading)
		if err != nil {
			t.Fatal(err)
		}
		r := measure.Reading{Value: v}
		got := measure.Likelihood(m, measure.VoltsAC, r, on, b).Total() / measure.Likelihood(m, measure.VoltsAC, r, off, b).Total()
		if got < c.want*0.9 || got > c.want*1.1 {
			t.Errorf("%s: ratio %.4g, want %.4g within a tenth", c.reading, got, c.want)
		}
	}
}
