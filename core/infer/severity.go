package infer

import (
	"math"
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
)

// A mode that is a matter of degree is several hypotheses: one for each stage of its severity. All readings of one job
// stem from one stage, and within a stage a reading is spread as the simulation of some of its grades has it. In pairs
// such a mode is one world of its usual size, with readings spread over all of its range.
const (
	stages  = 6
	borders = 48 // grades simulated in any case
	looks   = 3  // how often places are looked for at which something opens or closes
	perStep = appliance.Grades / borders
)

// shade is a share of what a class shows.
type shade struct {
	share float64
	out   appliance.Outcome
	pred  measure.Predicted // of a measurement
}

// stage is one world of a graded mode: the share of its cases.
type stage struct {
	mode  int
	shows [][]shade // per check
}

// sample is what all checks show at one grade of a mode.
type sample struct {
	grade int
	shows []appliance.Outcome
}

// stagesOf simulates the stages of all graded modes.
func (c *Case) stagesOf() []stage {
	type asked struct{ mode, grade int }
	simulate := func(want []asked) []sample {
		sets := make([]appliance.Hypothesis, len(want))
		for i, x := range want {
			sets[i] = appliance.Hypothesis{c.Engine.Graded(x.mode, x.grade)}
		}
		out := make([]sample, len(want))
		for i, shows := range c.Engine.Outcomes(sets) {
			out[i] = sample{want[i].grade, shows}
		}
		return out
	}
	var want []asked
	for i := range c.Model.Modes {
		if v, is := c.Engine.Severity(i); is {
			for grade := 0; grade <= appliance.Grades; {
				want = append(want, asked{i, grade})
				if v.Gap { // a third of it conducts badly, the rest not at all
					if grade += perStep; grade > appliance.Grades/3 {
						grade = (grade + appliance.Grades/stages - 1) / (appliance.Grades / stages) * (appliance.Grades / stages)
					}
				} else if grade < 2*perStep || grade >= appliance.Grades-2*perStep { // the tails are long
					grade += perStep / 4
				} else {
					grade += perStep
				}
			}
		}
	}
	if len(want) == 0 {
		return nil
	}
	got := simulate(want)
	var modes []int
	all := map[int][]sample{}
	for i, x := range want {
		if all[x.mode] == nil {
			modes = append(modes, x.mode)
		}
		all[x.mode] = append(all[x.mode], got[i])
	}
	// Where something opens or closes between two grades, the place is looked for; there may be another beside it.
	type gap struct {
		mode, check  int
		lower, upper sample
	}
	for range looks {
		var gaps []gap
		for _, mode := range modes {
			for i := range all[mode][1:] {
				if check := c.jumps(all[mode], i); check >= 0 {
					gaps = append(gaps, gap{mode, check, all[mode][i], all[mode][i+1]})
				}
			}
		}
		for {
			want = want[:0]
			var of []int
			for i, g := range gaps {
				if g.upper.grade-g.lower.grade > 1 {
					want = append(want, asked{g.mode, (g.lower.grade + g.upper.grade) / 2})
					of = append(of, i)
				}
			}
			if len(want) == 0 {
				break
			}
			for i, mid := range simulate(want) {
				g := &gaps[of[i]]
				if c.nearer(g.check, mid, g.lower, g.upper) {
					g.lower = mid
				} else {
					g.upper = mid
				}
			}
		}
		for _, g := range gaps {
			all[g.mode] = append(all[g.mode], g.lower, g.upper)
		}
		for _, mode := range modes {
			slices.SortStableFunc(all[mode], func(a, b sample) int { return a.grade - b.grade })
			all[mode] = slices.CompactFunc(all[mode], func(a, b sample) bool { return a.grade == b.grade })
		}
	}
	var out []stage
	for _, mode := range modes {
		list := all[mode]
		for s := range stages {
			st := stage{mode: mode}
			lower, upper := s*appliance.Grades/stages, (s+1)*appliance.Grades/stages
			from := slices.IndexFunc(list, func(x sample) bool { return x.grade == lower })
			to := slices.IndexFunc(list, func(x sample) bool { return x.grade == upper })
			for check := range c.Model.Checks {
				st.shows = append(st.shows, c.shades(check, list[from:to+1]))
			}
			out = append(out, st)
		}
	}
	return out
}

// number tells whether a check is read as a number in two samples, with nothing adrift.
func (c *Case) numbers(check int, a, b sample) bool {
	x, y := a.shows[check], b.shows[check]
	return !c.looks(check) && x.State == measure.Number && y.State == measure.Number && !x.Floating && !y.Floating
}

func (c *Case) looks(check int) bool {
	k := &c.Model.Checks[check]
	return k.Function == measure.Look || len(k.Options) > 0
}

// leap is how many times the step beside it a step must be for something to have opened or closed in it: judgement.
const leap = 3

// jumps is the first check in which something opens or closes between samples i and i+1, -1 for none or where they are
// next to each other.
func (c *Case) jumps(list []sample, i int) int {
	width := func(i int) int { return list[i+1].grade - list[i].grade }
	if width(i) <= 1 {
		return -1
	}
	slope := func(check, i, way int) float64 { // of the next stretch on a side
		for i += way; i >= 0 && i+1 < len(list); i += way {
			if width(i) > 1 {
				if !c.numbers(check, list[i], list[i+1]) {
					return 0
				}
				return math.Abs(list[i+1].shows[check].Value-list[i].shows[check].Value) / float64(width(i))
			}
		}
		return 0
	}
	for check := range c.Model.Checks {
		a, b := list[i].shows[check], list[i+1].shows[check]
		switch {
		case c.looks(check):
			if a.Option != b.Option {
				return check
			}
		case a.State != b.State || a.Floating != b.Floating:
			return check
		case c.numbers(check, list[i], list[i+1]):
			beside := max(slope(check, i, -1), slope(check, i, 1))
			if math.Abs(b.Value-a.Value) > leap*beside*float64(width(i))+a.Half/10+1e-6 {
				return check
			}
		}
	}
	return -1
}

// nearer tells whether a check shows in a sample what it shows in the lower of two others rather than in the upper.
func (c *Case) nearer(check int, x, lower, upper sample) bool {
	o, a, b := x.shows[check], lower.shows[check], upper.shows[check]
	if c.looks(check) {
		return o.Option != b.Option
	}
	if o.State != a.State || o.Floating != a.Floating || o.State != b.State || o.Floating != b.Floating {
		return o.State == a.State && o.Floating == a.Floating
	}
	return math.Abs(o.Value-a.Value) <= math.Abs(o.Value-b.Value)
}

// shades is what a check shows in a stage, by samples from its lower to its upper border.
func (c *Case) shades(check int, list []sample) []shade {
	k := &c.Model.Checks[check]
	var out []shade
	add := func(share float64, o appliance.Outcome, p measure.Predicted) {
		for i := range out {
			if x := &out[i]; c.looks(check) && x.out.Option == o.Option || !c.looks(check) && x.pred == p {
				x.share += share
				return
			}
		}
		out = append(out, shade{share, o, p})
	}
	whole := float64(list[len(list)-1].grade - list[0].grade)
	for i := range list[1:] {
		a, b := list[i].shows[check], list[i+1].shows[check]
		share := float64(list[i+1].grade-list[i].grade) / whole
		if !c.numbers(check, list[i], list[i+1]) {
			add(share/2, a, a.Predicted(k.Unit))
			add(share/2, b, b.Predicted(k.Unit))
			continue
		}
		add(share, a, evenBetween(a, b, k.Unit))
	}
	return out
}

// evenBetween is anything between two outcomes alike.
func evenBetween(a, b appliance.Outcome, unitID string) measure.Predicted {
	mid := a
	mid.Half = (a.Half + b.Half) / 2
	p := mid.Predicted(unitID)
	tol := (p.High - p.Low) / 2
	a.Half, b.Half = 0, 0
	x, y := a.Predicted(unitID), b.Predicted(unitID)
	if low, high := min(x.Low, y.Low), max(x.High, y.High); high > low {
		p.Low, p.High, p.Even, p.Tol = low, high, true, tol
	}
	return p
}

// plainly reports whether all shades of a class are one that a reading cannot tell apart, and which.
func (c *Case) plainly(k *appliance.Check, list []shade, look bool, share float64) (shade, bool) {
	low, high := list[0].pred, list[0].pred
	for _, x := range list {
		switch {
		case look && x.out.Option != list[0].out.Option:
			return shade{}, false
		case !look && !c.alike(k.Function, list[0].pred, x.pred, share):
			return shade{}, false
		}
		if x.pred.Low < low.Low {
			low = x.pred
		}
		if x.pred.High > high.High {
			high = x.pred
		}
	}
	first := list[0]
	first.share = 1
	if low.Even || high.Even {
		if !c.alike(k.Function, low, high, share) || high.High-low.Low > share*c.sigma(k.Function, low) {
			return shade{}, false
		}
		p := low // so narrow that it is one prediction with its own tolerance
		mid := (low.Low + high.High) / 2
		p.Even, p.Low, p.High, p.Tol = false, mid-low.Tol, mid+low.Tol, 0
		first.pred = p
	}
	return first, true
}

// sameShades tells whether two classes cannot be told apart by a reading.
func (c *Case) sameShades(k *appliance.Check, a, b []shade, look bool, share float64) bool {
	return slices.EqualFunc(a, b, func(x, y shade) bool {
		if math.Abs(x.share-y.share) > 0.002 {
			return false
		}
		if look {
			return x.out.Option == y.out.Option
		}
		return x.pred.Even == y.pred.Even && c.alike(k.Function, x.pred, y.pred, share)
	})
}
