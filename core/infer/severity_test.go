package infer_test

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"syscall"
	"testing"
	"time"

	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/lab/metric"
	"readback/core/measure"
	"readback/core/unit"
	"readback/flows/lab/workspace"
)

// reading is a number as a display shows it, to three digits.
func reading(x float64, unitID string) measure.Reading {
	d, err := unit.ParseDecimal(strconv.FormatFloat(x, 'f', max(0, 2-int(math.Floor(math.Log10(math.Abs(x)+1e-9)))), 64))
	if err != nil {
		panic(err)
	}
	return measure.Reading{Value: unit.Value{Dec: d, Unit: unitID}}
}

// partOf is the probability, by prob, that something is wrong with a part.
func partOf(c *infer.Case, prob []float64, part int) float64 {
	sum := 0.0
	for h, x := range prob {
		if slices.ContainsFunc(c.Problem.Hyps[h].Modes, func(m int) bool { return c.Model.Modes[m].Part == part }) {
			sum += x
		}
	}
	return sum
}

// lowers counts readings out of limits, in the direction in which a fault of the part moves them, that lower their own
// part, of how many.
func lowers(t testing.TB, c *infer.Case) (bad, all int) {
	m := c.Model
	prior := slices.Clone(infer.New(c.Problem).Prob())
	for i := range m.Checks {
		k := &m.Checks[i]
		if !c.Measures(i) {
			continue
		}
		up, down := false, false
		for _, mode := range m.Parts[k.Part].Modes {
			for _, border := range []int{0, appliance.Grades / 2, appliance.Grades} {
				set := []int{mode}
				if _, is := c.Engine.Severity(mode); is {
					set[0] = c.Engine.Graded(mode, border)
				}
				o := c.Engine.Predict(set, i)
				if o.State == measure.Over && k.Limit.High != nil {
					up = true
				}
				if o.State == measure.Number && !o.Floating {
					up = up || k.Limit.High != nil && o.Value > *k.Limit.High
					down = down || k.Limit.Low != nil && o.Value < *k.Limit.Low
				}
			}
		}
		var xs []float64
		if up {
			for _, f := range []float64{1.02, 1.1, 1.3, 1.7, 2.5, 4, 8, 15} {
				xs = append(xs, *k.Limit.High*f)
			}
		}
		if down {
			for _, f := range []float64{0.98, 0.9, 0.75, 0.6, 0.45, 0.3, 0.2, 0.1, 0.04, 0.01} {
				xs = append(xs, *k.Limit.Low*f)
			}
		}
		before := partOf(c, prior, k.Part)
		for _, x := range xs {
			if x == 0 {
				continue
			}
			b := infer.New(c.Problem)
			r := reading(x, k.Unit)
			if err := b.Observe(c.Answer(i, infer.Finding{Option: -1, Reading: &r}, nil)); err != nil {
				t.Fatal(err)
			}
			all++
			if after := partOf(c, b.Prob(), k.Part); after < before*0.999 {
				bad++
				t.Logf("%s: %s reads %.3g %s: %s falls from %.4f to %.4f", m.ID, k.ID, x, k.Unit, m.Parts[k.Part].ID, before, after)
			}
		}
	}
	return bad, all
}

// TestMonotone: a reading out of limits never speaks for the part it was taken at.
func TestMonotone(t *testing.T) {
	for _, c := range cases(t) {
		bad, all := lowers(t, c)
		if all == 0 || bad > 0 {
			t.Errorf("%s: %d of %d readings lower their own part", c.Model.ID, bad, all)
		}
	}
}

// severityError is the largest difference between the chance of an outcome under a mode and its numerical integration
// over the severity, of every so many modes: those with a size, or those of a path that conducts badly or not at all.
func severityError(t testing.TB, c *infer.Case, every int, gap bool) (worst float64, n int) {
	const samples = appliance.Grades / 2
	m := c.Model
	for mode := range m.Modes {
		if v, is := c.Engine.Severity(mode); !is || v.Gap != gap || mode%every != 0 {
			continue
		}
		stages := c.Stages(mode)
		if len(stages) != 6 { // the others are left out because they show nothing: nothing to integrate over
			continue
		}
		var sets []appliance.Hypothesis
		for s := range samples {
			sets = append(sets, appliance.Hypothesis{c.Engine.Graded(mode, 2*s+1)})
		}
		shows := c.Engine.Outcomes(sets)
		for i := range m.Checks {
			k := &m.Checks[i]
			if k.Function == measure.Look || c.Measures(i) { // there a share is not of the severity
				continue
			}
			rows := c.Problem.Checks[i].Bins
			want, got := make([]float64, len(rows[0])), make([]float64, len(rows[0]))
			for _, w := range stages {
				for o := range got {
					got[o] += c.Problem.Chance(i, w, o) / float64(len(stages))
				}
			}
			for _, row := range shows {
				for b, x := range c.Expect(i, row[i]) {
					want[b] += x / samples
				}
			}
			n++
			for o := range want {
				if d := math.Abs(got[o] - want[o]); d > worst {
					worst = d
					t.Logf("%s: %s at %s: outcome %d: %.5f, by numbers %.5f", m.ID, m.Modes[mode].Full, k.ID, o, got[o], want[o])
				}
			}
		}
	}
	return worst, n
}

// TestGraded: a mode at a grade is the model in which it has that size for sure.
func TestGraded(t *testing.T) {
	c := workspace.Small(t).Case
	n := 0
	for mode := range c.Model.Modes {
		v, is := c.Engine.Severity(mode)
		if !is || v.Gap {
			continue
		}
		for _, grade := range []int{1, appliance.Grades / 3, appliance.Grades - 1} {
			n++
			e := fixed(t, c.Model, mode, v.At(float64(grade)/appliance.Grades))
			for i := range c.Model.Checks {
				a, b := c.Engine.Predict([]int{c.Engine.Graded(mode, grade)}, i), e.Predict([]int{mode}, i)
				if a.Option != b.Option || a.State != b.State || math.Abs(a.Value-b.Value) > 1e-6*math.Abs(b.Value)+1e-9 {
					t.Errorf("%s at grade %d: %s shows %+v, in a model of its own %+v", c.Model.Modes[mode].Full, grade, c.Model.Checks[i].ID, a, b)
				}
			}
		}
	}
	if n == 0 {
		t.Error("no mode is a matter of degree")
	}
}

// fixed is the engine of a model in which one mode has one size for sure.
func fixed(t testing.TB, m *appliance.Model, mode int, ratio float64) *appliance.Engine {
	out := *m
	out.Modes = slices.Clone(m.Modes)
	md := &out.Modes[mode]
	md.Params = maps.Clone(md.Params)
	for name, q := range md.Params {
		if u, _ := unit.Lookup(q.Unit); md.Does == "set" && (u.Dim == unit.Voltage || u.Dim == unit.Count) && q.Low == q.High {
			continue
		}
		q.Nominal *= ratio
		q.Low, q.High = q.Nominal*(1-1e-9), q.Nominal*(1+1e-9)
		md.Params[name] = q
	}
	e, err := appliance.Compile(&out)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// TestSeverityIsIntegrated holds a few modes of each file to the integral; the figure takes more of them.
func TestSeverityIsIntegrated(t *testing.T) {
	if testing.Short() {
		t.Skip("-short: hundreds of simulated appliances")
	}
	gaps := 0
	for _, c := range cases(t) {
		worst, n := severityError(t, c, 5, false)
		if n == 0 || worst > 1e-3 {
			t.Errorf("%s: %g off in %d laws", c.Model.ID, worst, n)
		}
		// A bad contact opens and closes much at once; there the places are found less well.
		worst, n = severityError(t, c, 20, true)
		if gaps += n; worst > 1e-2 {
			t.Errorf("%s: %g off in %d laws of bad contacts", c.Model.ID, worst, n)
		}
	}
	if gaps == 0 {
		t.Error("no bad contact was looked at")
	}
}

func TestSeverityFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		bad, all, worst, laws, gap, gaps := 0, 0, 0.0, 0, 0.0, 0
		for _, c := range cases(t) {
			b, n := lowers(t, c)
			bad, all = bad+b, all+n
			x, n := severityError(t, c, 2, false)
			worst, laws = max(worst, x), laws+n
			x, n = severityError(t, c, 6, true)
			gap, gaps = max(gap, x), gaps+n
		}
		add("infer.monotone", float64(bad), "readings", "= 0", all)
		add("infer.severity_err", worst, "probability", "<= 0.001", laws)
		add("infer.severity_gap_err", gap, "probability", "<= 0.001", gaps)
		large := workspace.Large(t).Case
		b := infer.New(large.Problem)
		var answers []infer.Answer
		for i := range large.Model.Checks {
			if o := large.Engine.Predict(nil, i); large.Model.Checks[i].Function == measure.VoltsAC && o.State == measure.Number {
				r := reading(o.Value, large.Model.Checks[i].Unit)
				answers = append(answers, large.Answer(i, infer.Finding{Option: -1, Reading: &r}, nil))
			}
		}
		times := make([]float64, 0, 40)
		for range cap(times) {
			b.Clear()
			at := cpu()
			for _, a := range answers {
				if err := b.Observe(a); err != nil {
					t.Fatal(err)
				}
			}
			times = append(times, float64(cpu()-at)/1e3/float64(len(answers)))
		}
		slices.Sort(times)
		add("infer.update_us", times[len(times)/2], "us", "<= 60", len(times)*len(answers))
	})
}

// cpu is the processor time this process has used: the machine is shared, and the figure is about the work.
func cpu() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
