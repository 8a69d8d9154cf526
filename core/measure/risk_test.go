package measure_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"readback/core/measure"
	"readback/core/unit"
)

// Global risks of JCGM 106 9.5: a prior of the true value, a reading with um, limits lo..hi, acceptance alo..ahi. Conformance is ours,
// the prior and the integral are gonum's.
func risks(prior func(float64) float64, from, to, um, lo, hi, alo, ahi float64) (consumer, producer float64) {
	accept := func(x float64) float64 { return measure.Conformance(x, um, alo, ahi) }
	in := func(a, b float64, f func(float64) float64) float64 { return quad.Fixed(f, a, b, 400, nil, 0) }
	bad := func(x float64) float64 { return prior(x) * accept(x) }
	consumer = in(from, lo, bad) + in(hi, to, bad)
	producer = in(lo, hi, func(x float64) float64 { return prior(x) * (1 - accept(x)) })
	return consumer, producer
}

func TestRisks(t *testing.T) {
	resistor := distuv.Normal{Mu: 1500, Sigma: 0.12}
	for _, c := range []struct {
		name               string
		half               float64
		consumer, producer float64
	}{
		{"guarded (JCGM 106 9.5.3: 1 % and 7 %)", 0.18, .009878, .069027},
		{"simple acceptance", 0.2, .018942, .037208},
	} {
		rc, rp := risks(resistor.Prob, 1499, 1501, 0.04, 1499.8, 1500.2, 1500-c.half, 1500+c.half)
		near(t, c.name+", consumer", rc, c.consumer, 1e-6)
		near(t, c.name+", producer", rp, c.producer, 1e-6)
	}
	ball := distuv.Gamma{Alpha: 4, Beta: 4}
	near(t, "gamma prior beyond the limit (JCGM 106 9.5.4: 4.2 %)", 1-ball.CDF(2), .0423801, 1e-7)
	for r, want := range map[float64]float64{0: .0080191, 0.65: .0010265} {
		rc, rp := risks(ball.Prob, 0, 6, 0.25, 0, 2, -10, 2-r*2*0.25)
		near(t, "gamma prior, consumer", rc, want, 1e-6)
		if r > 0 {
			near(t, "gamma prior, producer (about 7.5 %)", rp, .0746, 1e-4)
		}
	}
}

// Our normal functions against gonum's.
func TestNormal(t *testing.T) {
	for z := -8.0; z <= 8; z += 0.37 {
		near(t, "Phi", measure.Phi(z), distuv.UnitNormal.CDF(z), 1e-15+1e-12*distuv.UnitNormal.CDF(z))
		near(t, "density", measure.Normal(z, 1, 2), distuv.Normal{Mu: 1, Sigma: 2}.Prob(z), 1e-15)
		if p := measure.Phi(z); p > 1e-9 && p < 1-1e-9 {
			near(t, "quantile", measure.Quantile(p), z, 1e-6)
		}
	}
}

var functions = []measure.Function{measure.VoltsAC, measure.VoltsDC, measure.Ohms, measure.Continuity, measure.Capacitance,
	measure.AmpsAC, measure.MicroampsDC, measure.MillivoltDC, measure.Manometer, measure.Thermometer}

func drawReading(t *rapid.T) measure.Reading {
	us := unit.All()
	return measure.Reading{
		State: rapid.SampledFrom([]measure.State{measure.Number, measure.Number, measure.Over, measure.Beep, measure.Silent, measure.Blank, measure.Jumping, measure.Dead}).Draw(t, "state"),
		Value: unit.Value{Dec: unit.Decimal{Mant: rapid.Int64Range(-99999, 99999).Draw(t, "digits"), Exp: rapid.IntRange(-4, 3).Draw(t, "exp")},
			Unit: rapid.SampledFrom(us).Draw(t, "unit").ID},
	}
}

// Whatever is said, a likelihood is a chance: never negative, never above one, never not a number; and never zero for a number,
// because anything can be misread.
func TestLikelihoodIsAChance(t *testing.T) {
	m := measure.Modest()
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(functions).Draw(t, "function")
		lo := rapid.Float64Range(-1e3, 1e3).Draw(t, "low")
		p := measure.Predicted{Low: lo, High: lo + rapid.Float64Range(0, 1e3).Draw(t, "spread"), Floating: rapid.Bool().Draw(t, "floating"),
			State: rapid.SampledFrom([]measure.State{measure.Number, measure.Over, measure.Beep, measure.Silent}).Draw(t, "predicted")}
		r := drawReading(t)
		parts := measure.Likelihood(m, f, r, p, measure.Usual)
		for c, x := range parts {
			if !(x >= 0 && x <= 1) {
				t.Fatalf("cause %d has %v", c, x)
			}
		}
		if x := parts.Total(); !(x > 0 && x <= 1+1e-9) {
			t.Fatalf("likelihood %v", x)
		}
	})
}

// The verdict and the probability agree: the middle of the four words is one half for a limit on one side, and the guard band is
// the expanded uncertainty.
func TestVerdictFollowsProbability(t *testing.T) {
	m := measure.Modest()
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(0, 500).Draw(t, "limit")
		r := measure.Reading{Value: unit.FromBase(rapid.Float64Range(0, 600).Draw(t, "reading"), "V", 1)}
		lim := measure.Limit{Unit: "V", Source: "test"}
		if rapid.Bool().Draw(t, "upper") {
			lim.High = &x
		} else {
			lim.Low = &x
		}
		j := measure.Judge(m, measure.VoltsAC, r, lim)
		var want measure.Verdict
		switch z := measure.Phi(2); { // one guard band is two standard uncertainties
		case j.P > z:
			want = measure.Pass
		case j.P > 0.5:
			want = measure.ConditionalPass
		case j.P > 1-z:
			want = measure.ConditionalFail
		default:
			want = measure.Fail
		}
		edge := math.Min(math.Abs(j.P-0.5), math.Min(math.Abs(j.P-measure.Phi(2)), math.Abs(j.P-measure.Phi(-2))))
		if j.Verdict != want && edge > 1e-9 {
			t.Fatalf("%s at probability %v, want %s", j.Verdict, j.P, want)
		}
	})
}

// Planning outcomes are a law, and agree with the exact likelihood summed over the displays of each.
func TestOutcomesAreALaw(t *testing.T) {
	m := measure.Modest()
	dst, spoilt := make([]float64, 5), make([]float64, 5)
	for _, p := range []measure.Predicted{{Low: 22, High: 30}, {Low: -0.1, High: 0.1}, {Floating: true}, {Low: 110, High: 128}, {State: measure.Over}} {
		cuts := []float64{5, 20, 60}
		measure.Outcomes(m, measure.VoltsAC, p, measure.Usual, cuts, []measure.State{measure.Over}, dst, spoilt)
		sum := 0.0
		for _, x := range dst {
			sum += x
		}
		near(t, "sum", sum, 1, 1e-12)
		if p.State != measure.Number || p.Floating {
			continue
		}
		direct := 0.0
		for tenth := -49; tenth < 50; tenth++ { // the likelihood is signed: no voltage scatters about zero
			r := measure.Reading{Value: unit.FromBase(float64(tenth)/10, "V", 1)}
			direct += measure.Likelihood(m, measure.VoltsAC, r, p, measure.Usual).Total()
		}
		near(t, "below five volts", dst[0], direct, 0.05)
	}
}
