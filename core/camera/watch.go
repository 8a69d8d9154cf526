package camera

import (
	"slices"

	"readback/core/unit"
)

// How long is watched before something is told, ns of the frames' own clock. Judgement, no source, but where it says so.
const (
	steadyFor   = 900e6 // a number must stand still so long before it is told
	tellAgain   = 10e9  // what still stands is told again after so long
	MeterGiveUp = 6e9   // so long without a finding, and the reason is told
	lightGiveUp = 30e9
	fireGiveUp  = 60e9  // a start takes its time before anything glows
	fireGap     = 120e9 // so long without a frame of the burner, and it is another start
	decodeEvery = 400e6 // between two decodings of a light or a burner
	voteOver    = 8     // frames of a vote
	voteFrom    = 3     // frames before there is one
)

// Observation is what a watch makes of the newest frame: for the viewfinder always, for the job when Tell is set.
type Observation struct {
	Text   string          // what is seen so far: "24.5", "3", "flame"
	Steady bool            // it was the same for long enough
	Tell   bool            // it, or the Reason, is due to be told now
	Reason Reason          // why nothing can be told
	Boxes  [][4][2]float64 // corners of the digits, of the light or of the window, in shares of the picture

	Shows    Shows        // of a display
	Value    unit.Decimal // of a Number
	P        float64      // chance that all of it is right
	Frames   int          // pictures, or cycles, behind it
	Rival    string       // next likely
	Question bool         // likely, and not surely enough to be more than asked about
	Jumping  bool         // the last digit of the display jumps
	Code     Code         // of a light
	Flame    Event        // of a burner
}

// patience holds what is told and when: once when it has stood long enough, again after a while, and a reason when nothing came for long.
type patience struct {
	text  string
	since int64 // since when text is seen
	told  string
	at    int64 // when it was told
	vain  int64 // when a reason was told last, or none was due
}

func (p *patience) begin(at int64) { *p = patience{vain: at} }

// seen says whether text has stood for so long, and whether it is due to be told.
func (p *patience) seen(text string, at int64, long, again float64) (steady, tell bool) {
	p.vain = at
	if text != p.text {
		p.text, p.since = text, at
	}
	steady = float64(at-p.since) >= long
	return steady, steady && (p.told != text || again > 0 && float64(at-p.at) >= again)
}

// cannot says whether the reason why nothing is seen is due.
func (p *patience) cannot(at int64, long float64) bool {
	p.text = ""
	if float64(at-p.vain) < long {
		return false
	}
	p.vain = at
	return true
}

// Told notes that what was seen was told.
func (p *patience) Told(text string, at int64) { p.told, p.at = text, at }

// MeterWatch watches a display and votes over the last frames.
type MeterWatch struct {
	patience
	reader       Reader
	frames       []*Reading
	annunciators []Annunciators // of the frames
	known        string         // the number whose annunciators need not be looked at again
}

// Begin forgets what was seen: the next number may be that of another place.
func (w *MeterWatch) Begin(at int64) {
	w.patience.begin(at)
	w.frames, w.annunciators, w.known = w.frames[:0], w.annunciators[:0], ""
}

// Aim chooses the display at a place of the picture, in shares; outside of 0 to 1 it chooses none.
func (w *MeterWatch) Aim(x, y float64) {
	if w.reader.Aim = frameAim(); x >= 0 && x <= 1 && y >= 0 && y <= 1 {
		w.reader.Aim = &Aim{x - 0.2, y - 0.12, x + 0.2, y + 0.12, true}
	}
}

// frameAim is the frame that the viewfinder draws round what should be read.
func frameAim() *Aim { return &Aim{X0: 0.15, Y0: 0.25, X1: 0.85, Y1: 0.75} }

// See reads a frame. The error means that it cannot be used.
func (w *MeterWatch) See(p *Plane) (Observation, error) {
	if w.reader.Aim == nil {
		w.reader.Aim = frameAim()
	}
	rd, err := w.reader.Read(p)
	if err != nil {
		return Observation{}, err
	}
	if len(w.frames) == voteOver {
		w.frames, w.annunciators = slices.Delete(w.frames, 0, 1), slices.Delete(w.annunciators, 0, 1)
	}
	var signs Annunciators
	if rd.Text != w.known {
		signs = w.reader.Annunciators(rd)
	}
	w.frames, w.annunciators = append(w.frames, rd), append(w.annunciators, signs)
	var o Observation
	for _, d := range rd.Digits {
		b := d.Box
		for i := range b {
			b[i] = [2]float64{b[i][0] / float64(p.W), b[i][1] / float64(p.H)}
		}
		o.Boxes = append(o.Boxes, b)
	}
	if len(w.frames) < voteFrom {
		return o, nil
	}
	all := Vote(w.frames)
	o.Jumping = all.Jumping
	if !all.OK() && !all.Question() || all.Shows == Empty {
		if o.Reason = all.Reason; o.Reason == "" {
			o.Reason = Unclear
		}
		o.Tell = w.cannot(p.Time, MeterGiveUp)
		return o, nil
	}
	o.Text, o.Shows, o.Value, o.P, o.Frames, o.Rival, o.Question = all.Text, all.Shows, all.Value, all.P, all.Frames, all.Rival, all.Question()
	o.Steady, o.Tell = w.seen(all.Text, p.Time, steadyFor, tellAgain)
	if len(w.frames) < voteOver/2 {
		o.Steady, o.Tell = false, false
	}
	return o, nil
}

// Shown are the annunciators of the frames that showed a number.
func (w *MeterWatch) Shown(text string) (out []Annunciators) {
	for i, f := range w.frames {
		if f.Text == text {
			out = append(out, w.annunciators[i])
		}
	}
	return out
}

// Known says that the annunciators of a number need not be looked at again; Unknown tells whether they still do.
func (w *MeterWatch) Known(text string)        { w.known = text }
func (w *MeterWatch) Unknown(text string) bool { return text != w.known }

// LightWatch counts the flashes of a light.
type LightWatch struct {
	patience
	lamp    *Lamp
	decoded int64
	w, h    int
}

// Begin forgets what was told. The light is followed on: counting takes long, and nothing said changes it.
func (w *LightWatch) Begin(at int64) { w.patience.begin(at) }

// Aim chooses the light at a place of the newest frame, in shares.
func (w *LightWatch) Aim(x, y float64) {
	if w.lamp != nil {
		w.lamp.Aim(x*float64(w.w), y*float64(w.h))
	}
}

// See takes a frame; ok is false when nothing was decoded this time.
func (w *LightWatch) See(p *Plane) (o Observation, ok bool) {
	if w.lamp == nil {
		w.lamp, w.decoded = &Lamp{}, p.Time
	}
	w.w, w.h = p.W, p.H
	if err := w.lamp.See(p); err != nil {
		if p.Time > w.decoded+2e9 { // another size or clock: the camera was opened anew
			w.lamp = nil
		}
		return o, false
	}
	if float64(p.Time-w.decoded) < decodeEvery {
		return o, false
	}
	w.decoded = p.Time
	o.Code = w.lamp.Code()
	if x, y, r, ok := w.lamp.Where(); ok {
		k, h := float64(p.W), float64(p.H)
		r = max(2*r, 8)
		o.Boxes = [][4][2]float64{{{(x - r) / k, (y - r) / h}, {(x + r) / k, (y - r) / h}, {(x + r) / k, (y + r) / h}, {(x - r) / k, (y + r) / h}}}
	}
	if o.Code.Pattern != "" {
		o.Text = o.Code.ID()
	}
	if !o.Code.OK() {
		o.Reason = o.Code.Reason
		o.Tell = w.cannot(p.Time, lightGiveUp)
		return o, true
	}
	// two agreeing cycles are asked for by the decoder; more make it surer
	o.Frames, o.P = o.Code.Cycles, 1-1/float64(uint(2)<<min(o.Code.Cycles+2, 20))
	o.Steady, o.Tell = w.seen(o.Text, p.Time, 0, 0)
	return o, true
}

// BurnerWatch watches the window of a burner for glow and flame. It goes on from step to step: the camera stands where it stood, and what was dark
// before the start is still the measure of what glows.
type BurnerWatch struct {
	patience
	fire    *FireWatch
	window  *[2]float64
	decoded int64
	last    int64
}

// Begin forgets what was told.
func (w *BurnerWatch) Begin(at int64) { w.patience.begin(at) }

// Aim says where the window is, in shares of the picture.
func (w *BurnerWatch) Aim(x, y float64) { w.window, w.fire = &[2]float64{x, y}, nil }

// See takes a frame; ok is false when nothing was judged this time.
func (w *BurnerWatch) See(p *Plane) (o Observation, ok bool) {
	if w.fire == nil || float64(p.Time-w.last) > fireGap {
		w.fire, w.decoded, w.vain = w.watch(p.W, p.H), p.Time, p.Time
	}
	if err := w.fire.See(p); err != nil {
		w.fire = nil // another clock or size: the camera was opened anew
		return o, false
	}
	w.last = p.Time
	if float64(p.Time-w.decoded) < decodeEvery {
		return o, false
	}
	w.decoded = p.Time
	k, h, s := float64(p.W), float64(p.H), w.fire.Spot
	x0, y0, x1, y1 := float64(s.X0)/k, float64(s.Y0)/h, float64(s.X1)/k, float64(s.Y1)/h
	o.Boxes = [][4][2]float64{{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}}
	now, why := w.fire.Now()
	o.Text = string(now)
	if o.Flame = w.fire.FlameEvents(); o.Flame.What == Unsure {
		if why == "" {
			return o, false
		}
		o.Reason = why
		o.Tell = w.cannot(p.Time, fireGiveUp)
		return o, true
	}
	// nine of ten in doubt are told right: what the figures of drawn burners leave wrong is less, what real ones do is not known
	o.P = 0.9
	o.Steady, o.Tell = w.seen(string(o.Flame.What), p.Time, 0, tellAgain)
	return o, true
}

// watch looks at the window that was touched, or at the middle, beside the edge of the picture that is farther away.
func (w *BurnerWatch) watch(width, height int) *FireWatch {
	at := [2]float64{0.5, 0.5}
	if w.window != nil {
		at = *w.window
	}
	cut := func(x0, x1, y float64) Region {
		return Region{X0: int(x0 * float64(width)), X1: int(x1 * float64(width)), Y0: int((y - 0.16) * float64(height)), Y1: int((y + 0.16) * float64(height))}
	}
	f := &FireWatch{Spot: cut(at[0]-0.16, at[0]+0.16, at[1]), Ref: cut(0.02, 0.22, at[1])}
	if at[0] < 0.5 {
		f.Ref = cut(0.78, 0.98, at[1])
	}
	return f
}
