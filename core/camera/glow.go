package camera

import (
	"fmt"
	"math"
)

// Fire is what a watched place of the burner does. It is advice about a moment in time, never proof that gas is or is not burning.
type Fire string

const (
	NoFire Fire = "dark"
	Glow   Fire = "glow"  // an igniter warming up or hot
	Flame  Fire = "flame" // flicker and colour of a flame
	Unsure Fire = "unsure"

	Held    Fire = "held" // a flame for ten seconds without a break
	WentOut Fire = "out"  // a flame, and none any more
)

const (
	heldFor  = 10e9  // ns, as the check of the flame counts
	freshFor = 60e9  // ns for which a flame that went out counts: later it may be that of another start; judgement
	darkFor  = 120e9 // ns without anything before the dark is worth telling: every start has come to its flame by then, judgement
)

// Reasons of the fire watcher.
const (
	mainsFlicker Reason = "mains flicker" // room light beats with the camera
	Moved        Reason = "moved"         // the picture moved or the light changed everywhere
)

// Event is a change of what is seen, with its window in time.
type Event struct {
	What     Fire
	From, To int64 // ns: it changed somewhere between these
}

// Region is a rectangle of a picture, pixels; X1 and Y1 are outside it.
type Region struct{ X0, Y0, X1, Y1 int }

// mean is the mean colour of the region clipped to the picture; ok is false when nothing is left.
func (g Region) mean(p *Plane) (r, gr, b float64, ok bool) {
	x0, y0, x1, y1 := max(0, g.X0), max(0, g.Y0), min(p.W, g.X1), min(p.H, g.Y1)
	if x0 >= x1 || y0 >= y1 {
		return 0, 0, 0, false
	}
	step := 1
	for (x1-x0)/step*((y1-y0)/step) > 20000 {
		step++
	}
	n := 0.0
	for y := y0; y < y1; y += step {
		for x := x0; x < x1; x += step {
			R, G, B := p.RGB(x, y)
			r, gr, b, n = r+R, gr+G, b+B, n+1
		}
	}
	return r / n, gr / n, b / n, true
}

// fireSample is one picture: colour of the burner window, brightness of a place beside it.
type fireSample struct {
	t       int64
	r, g, b float64
	ref     float64
}

// FireWatch watches a burner's window (Spot) against a place beside it (Ref) with exposure and white balance locked.
type FireWatch struct {
	Spot, Ref Region
	s         []fireSample
	dark      [4]float64 // colour and reference before ignition, learnt from the first second
	n0        int
	began     int64 // of the first picture
	state     Fire
	since     int64
	next      Fire // what may come next, and since when
	first     int64
	events    []Event
}

const fireKeep = 300 // samples: ten seconds at 30 a second

// See takes the next picture. It refuses one that is unusable or not later than the one before.
func (f *FireWatch) See(p *Plane) error {
	if err := p.Check(); err != nil {
		return err
	}
	if n := len(f.s); n > 0 && p.Time <= f.s[n-1].t {
		return fmt.Errorf("%w: picture at %d ns does not follow the one at %d ns", ErrTime, p.Time, f.s[n-1].t)
	}
	r, g, b, ok := f.Spot.mean(p)
	if !ok {
		return fmt.Errorf("%w: the burner window lies outside the picture", ErrSize)
	}
	s := fireSample{t: p.Time, r: r, g: g, b: b}
	if R, G, B, ok := f.Ref.mean(p); ok {
		s.ref = 0.3*R + 0.59*G + 0.11*B
	}
	if len(f.s) == fireKeep {
		f.s = f.s[:copy(f.s, f.s[fireKeep/3:])]
	}
	f.s = append(f.s, s)
	if f.n0 == 0 {
		f.began = p.Time
	}
	if f.n0 < 20 { // learn the dark scene
		k := 1 / float64(f.n0+1)
		for i, v := range [4]float64{r, g, b, s.ref} {
			f.dark[i] += (v - f.dark[i]) * k
		}
		f.n0++
		f.state, f.since = NoFire, p.Time
		return nil
	}
	now, _ := f.Now()
	switch {
	case now == Unsure:
	case now == f.state:
		f.since, f.next = p.Time, ""
	case now != f.next:
		f.next, f.first = now, p.Time
	case p.Time-f.first > believeAfter(now): // seen for so long: believed
		f.events = append(f.events, Event{now, f.since, f.first})
		if len(f.events) > 64 {
			f.events = f.events[1:]
		}
		f.state, f.since, f.next = now, p.Time, ""
	}
	return nil
}

// believeAfter is for how many ns something must be seen until it is believed: a hand, a torch or leaves in the sun pass. Judgement, no source.
func believeAfter(now Fire) int64 {
	if now == NoFire {
		return 1e9
	}
	return 2e9
}

// Events lists the changes seen so far, oldest first.
func (f *FireWatch) Events() []Event { return f.events }

// FlameEvents is what became of the burner since the watch began, and between which times it came about; Unsure while there is nothing to tell.
func (f *FireWatch) FlameEvents() Event {
	if len(f.s) == 0 {
		return Event{What: Unsure}
	}
	last := f.s[len(f.s)-1].t
	n := len(f.events)
	if n == 0 {
		if now, _ := f.Now(); now == NoFire && last-f.began >= darkFor {
			return Event{NoFire, f.began, last}
		}
		return Event{What: Unsure}
	}
	e := f.events[n-1]
	switch {
	case e.What == Flame && last-e.To >= heldFor:
		e.What = Held
	case e.What == NoFire && n > 1 && f.events[n-2].What == Flame && last-e.To < freshFor:
		e.What = WentOut
	case e.What == NoFire: // a glow that ended says neither that it came nor that it did not
		e.What = Unsure
	}
	return e
}

// Now judges the last second and a half.
func (f *FireWatch) Now() (Fire, Reason) {
	n := len(f.s)
	if n < 30 || f.n0 < 20 {
		return Unsure, TooShort
	}
	last := f.s[n-1].t
	i := n
	for i > 0 && last-f.s[i-1].t < 1.5e9 {
		i--
	}
	w := f.s[i:]
	if len(w) < 12 {
		return Unsure, TooShort
	}
	var r, g, b, ref float64
	k := 1 / float64(len(w))
	for _, s := range w {
		r, g, b, ref = r+s.r*k, g+s.g*k, b+s.b*k, ref+s.ref*k
	}
	// what the window gives beyond the dark scene, less what the room gained
	room := (ref - f.dark[3]) / math.Max(4, f.dark[3])
	if math.Abs(room) > 0.5 {
		return Unsure, Moved
	}
	dr, dg, db := r-f.dark[0]*(1+room), g-f.dark[1]*(1+room), b-f.dark[2]*(1+room)
	total := dr + dg + db
	noise := 3.0
	if total < -4*noise-0.25*(f.dark[0]+f.dark[1]+f.dark[2]) || math.Min(dr, math.Min(dg, db)) < -3*noise { // something lies over the window
		return Unsure, Moved
	}
	if total < 2*noise && db < noise {
		return NoFire, ""
	}
	band, refBand, jump := bands(w)
	level := math.Max(total/3, 1)
	if refBand > 0.5*band && refBand > 0.01*ref && band > 0.03*level {
		return Unsure, mainsFlicker
	}
	flicker := band / level
	red := dr / math.Max(total, 1e-9)
	blue := db / math.Max(total, 1e-9)
	warm := red > 0.5 && dg > 0.6*db // near the black-body line
	switch {
	case flicker > 0.035 && jump < 0.8 && (warm || red > 0.42 && db < 0.8*dg || blue > 0.4):
		// colour and flicker together, and in both halves of the time: sun through leaves has one, a passing hand the other
		first, _, _ := bands(w[:len(w)/2+1])
		second, _, _ := bands(w[len(w)/2:])
		if math.Min(first, second) > 0.02*level {
			return Flame, ""
		}
		return Unsure, Unclear
	case warm && flicker < 0.03:
		return Glow, ""
	case blue > 0.42 && db > 2*noise: // a quiet blue flame
		return Flame, ""
	}
	return Unsure, Unclear
}

// bands is the deviation of the window's and the reference's brightness in the band of flame flicker (about 2 to 12 Hz:
// a buoyant flame of diameter D metres flickers at about 1.5/sqrt(D) Hz), by differences from a running mean, and the
// share of the largest single step in the window's.
func bands(w []fireSample) (spot, ref, jump float64) {
	const half = 0.2e9 // ns: slower changes are not flicker
	var ss, sr, worst, count float64
	for i := range w {
		if w[i].t-w[0].t < half || w[len(w)-1].t-w[i].t < half { // a rise would count as flicker at the ends
			continue
		}
		count++
		var a, b, n float64
		for j := i; j >= 0 && w[i].t-w[j].t < half; j-- {
			a, b, n = a+w[j].r+w[j].g+w[j].b, b+w[j].ref, n+1
		}
		for j := i + 1; j < len(w) && w[j].t-w[i].t < half; j++ {
			a, b, n = a+w[j].r+w[j].g+w[j].b, b+w[j].ref, n+1
		}
		d := (w[i].r + w[i].g + w[i].b - a/n) / 3
		e := w[i].ref - b/n
		ss += d * d
		sr += e * e
		worst = math.Max(worst, d*d)
	}
	count = math.Max(count, 1)
	return math.Sqrt(ss / count), math.Sqrt(sr / count), worst / math.Max(ss, 1e-12)
}
