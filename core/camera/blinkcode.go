package camera

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// parse reads the code out of the runs.
func parse(runs []burst, frame float64, out *Code) {
	var on, off []float64 // whole runs only
	for i, b := range runs {
		if i == 0 || i == len(runs)-1 {
			continue
		}
		if b.on {
			on = append(on, b.length())
		} else {
			off = append(off, b.length())
		}
	}
	if len(on) < 2 || len(off) < 2 {
		out.Reason = TooShort
		return
	}
	slices.Sort(on)
	slices.Sort(off)
	out.On, out.Off = on[len(on)/2], off[0]
	steps := jumps(off, frame)
	if len(steps) == 0 {
		even(runs, on, off, frame, out)
		return
	}
	pause := steps[len(steps)-1] // dark runs of at least this are pauses
	shorter := off[0]
	for _, d := range off {
		if d < pause {
			shorter = d
		} else {
			out.Pause = d
			break
		}
	}
	if out.Pause < 2*shorter-frame && len(steps) == 1 {
		out.Reason = noPause
		return
	}
	gap := math.Inf(1) // dark runs of at least this part two digits
	if len(steps) > 1 {
		gap = steps[len(steps)-2]
	}
	var inner []float64
	for _, d := range off {
		if d < gap && d < pause {
			inner = append(inner, d)
		}
	}
	if len(inner) > 0 {
		out.Off = median(inner)
	}
	cycles := split(runs, pause)
	if len(cycles) < 2 {
		out.Reason = TooShort
		return
	}
	long := lengthSplit(on, frame)
	tint := tints(runs)
	votes := map[string]int{}
	first := map[string]int{}
	bestKey := ""
	for i, c := range cycles {
		key := describe(c, gap, long, tint, Code{}).key()
		if votes[key]++; votes[key] == 1 {
			first[key] = i
		}
		if votes[key] > votes[bestKey] {
			bestKey = key
		}
	}
	agreed := votes[bestKey]
	code := describe(cycles[first[bestKey]], gap, long, tint, *out)
	code.Cycles = agreed
	*out = code
	if agreed < 2 || agreed*3 < 2*len(cycles) {
		out.Reason = Disagree
		return
	}
	// a pair of single flashes: only the ratio of dark to lit tells two digits from a slow count of two
	if out.Pattern == Flashes && out.Count == 2 && out.Off > 2.4*out.On && out.Off > 0.7 {
		out.Pattern, out.Tens, out.Units, out.Count = TwoDigit, 1, 1, 11
	}
	if out.Count > 99 || out.Tens > 9 || out.Units > 9 && out.Pattern != Flashes {
		out.Reason = Disagree
	}
}

func (c Code) key() string {
	return fmt.Sprintf("%s %d %s", c.Pattern, c.Count, strings.Join(c.Colours, ","))
}

// jumps returns the lengths at which the sorted dark runs step up to a new class: at least 1.6 times and two frames longer.
func jumps(off []float64, frame float64) []float64 {
	var at []float64
	for i := 1; i < len(off); i++ {
		if off[i] > 1.6*off[i-1] && off[i]-off[i-1] > 2*frame {
			at = append(at, (off[i]+off[i-1])/2)
		}
	}
	return at
}

// lengthSplit is the length that parts long flashes from short ones, infinite when all are alike.
func lengthSplit(on []float64, frame float64) float64 {
	best, at := 1.9, math.Inf(1)
	for i := 1; i < len(on); i++ {
		if q := on[i] / on[i-1]; q > best && on[i]-on[i-1] > 3*frame && on[i] > 0.5 {
			best, at = q, (on[i]+on[i-1])/2
		}
	}
	return at
}

// split cuts the runs into whole cycles: flashes with a pause, or enough of one, before and after.
func split(runs []burst, pause float64) [][]burst {
	var out [][]burst
	start := -1
	for i, b := range runs {
		if b.on || b.length() < pause {
			continue
		}
		if start >= 0 && i > start {
			out = append(out, runs[start:i])
		}
		start = i + 1
	}
	return out
}

// describe reads one cycle.
func describe(c []burst, gap, long float64, tint tinting, out Code) Code {
	groups := []int{0}
	shorts, longs := 0, 0
	for _, b := range c {
		if !b.on {
			if b.length() >= gap {
				groups = append(groups, 0)
			}
			continue
		}
		groups[len(groups)-1]++
		if b.length() >= long {
			longs++
		} else {
			shorts++
		}
		if tint.two {
			out.Colours = append(out.Colours, tint.name(b.hue))
		}
	}
	switch {
	case len(groups) == 2:
		out.Pattern, out.Tens, out.Units = TwoDigit, groups[0], groups[1]
		out.Count = 10*out.Tens + out.Units
	case longs > 0 && shorts > 0 || longs > 0 && !math.IsInf(long, 1):
		out.Pattern, out.Tens, out.Units = LongShort, longs, shorts
		out.Count = 10*longs + shorts
	case len(groups) == 1:
		out.Pattern, out.Count = Flashes, groups[0]
	default:
		out.Pattern, out.Count = Flashes, 1000+len(groups) // three groups: agrees with nothing usable
	}
	if !slices.ContainsFunc(out.Colours, func(c string) bool { return c != out.Colours[0] }) {
		out.Colours = nil // a code in one of the colours
	}
	return out
}

// tinting parts the flashes of a light by their colour.
type tinting struct {
	two             bool
	at              float64 // hue between the two
	redder, greener string
}

func (t tinting) name(hue float64) string {
	if hue > t.at {
		return t.redder
	}
	return t.greener
}

// Hues, red minus green over their sum, from which a light is called red or amber; below both it is green. Judgement, from the primaries
// of sRGB: amber adds red to green as 255 to 160, a yellowish green as 1 to 2.
const redFrom, amberFrom = 0.45, -0.12

// tints tells whether a light flashes in two colours: its hues lie in two groups, farther apart than either is wide, and have two names.
func tints(runs []burst) tinting {
	var hues []float64
	for _, b := range runs {
		if b.on {
			if math.IsNaN(b.hue) {
				return tinting{}
			}
			hues = append(hues, b.hue)
		}
	}
	slices.Sort(hues)
	cut, gap := 0, 0.25 // less may be noise: judgement
	for i := 1; i < len(hues); i++ {
		if d := hues[i] - hues[i-1]; d > gap {
			cut, gap = i, d
		}
	}
	if cut == 0 || hues[cut-1]-hues[0] > gap || hues[len(hues)-1]-hues[cut] > gap {
		return tinting{}
	}
	name := func(group []float64) string { // as far as the camera's white lets it
		switch h := group[len(group)/2]; {
		case h > redFrom:
			return "red"
		case h > amberFrom:
			return "amber"
		}
		return "green"
	}
	t := tinting{true, (hues[cut-1] + hues[cut]) / 2, name(hues[cut:]), name(hues[:cut])}
	if t.redder == t.greener {
		t.redder, t.greener = "red", "green"
	}
	return t
}

// moreThanACode is how many flashes without a pause it takes before they are no part of a count: codes go up to nine.
const moreThanACode = 10

// even reads a light without a pause: every dark run is about as long as the next.
func even(runs []burst, on, off []float64, frame float64, out *Code) {
	a, b := out.On, off[len(off)/2]
	period := a + b
	if on[len(on)-1] > 1.6*on[0]+0.1 || off[len(off)-1] > 1.35*off[0]+1.5*frame {
		out.Reason = noPause
		return
	}
	for _, r := range [2]burst{runs[0], runs[len(runs)-1]} {
		if !r.on && r.length() > 1.6*b || r.on && r.length() > 1.6*a { // it began or ended with something longer: a pause
			out.Reason = TooShort
			return
		}
	}
	switch {
	case b > 2.5*a && b >= 1:
		// one flash and a pause, over and over
		out.Pattern, out.Count, out.Cycles, out.Pause = Flashes, 1, len(on), b
	case period < 0.5 && period >= 0.09:
		out.Pattern, out.Cycles = Flutter, len(on)
	case period >= 0.5 && period <= 2.6 && a < 2.5*b:
		out.Pattern, out.Cycles = Heartbeat, len(on)
	default:
		out.Reason = noPause
		return
	}
	if len(on) < 3 || out.Pattern != Flashes && len(on) < moreThanACode {
		out.Reason = TooShort
	}
}
