package camera

import (
	"math"

	"readback/core/unit"
)

// Shows is what kind of thing a display shows.
type Shows string

const (
	Number Shows = "number"
	Over   Shows = "over"  // over-range in one of its forms
	Empty  Shows = "blank" // a display without lit digits
)

// Reason says why no answer is given. Its Say is fit to be spoken.
type Reason string

const (
	NoDisplay Reason = "no display"
	Faint     Reason = "faint"
	Blurred   Reason = "blurred"
	Glare     Reason = "glare"
	Changing  Reason = "changing"
	Unclear   Reason = "unclear"
	cutOff    Reason = "cut off"
	loneOne   Reason = "lone one"

	SignUnsure Reason = "sign unsure" // some pictures show a minus sign, some do not
	EndUnsure  Reason = "end unsure"  // some pictures show a digit more

	Likely      Reason = "likely"       // read, and not surely enough to be told: it can be asked about
	pointUnsure Reason = "point unsure" // a point may be there or not
	Covered     Reason = "covered"      // something lies over a digit
	twoRows     Reason = "two rows"     // two numbers may be meant
)

// Digit is one place of a display.
type Digit struct {
	Glyph  rune
	P      float64 // probability of Glyph
	Rival  rune    // next likely glyph
	RivalP float64
	Dot    float64       // probability that the point after it is lit
	Box    [4][2]float64 // corners in the picture: top left, top right, bottom right, bottom left
	seg    [7]float64    // log odds that each segment is lit
	valid  float64       // log odds that there is a glyph at all
}

// Reading is what one picture, or a vote over several, says about a display.
type Reading struct {
	Shows  Shows
	Text   string       // as shown: "-12.34"; "OL" for every form of it; best guess when Reason is set
	Value  unit.Decimal // exact, when Shows is Number
	P      float64      // probability that all of it is right
	Digits []Digit
	Rival  string // next likely text
	RivalP float64
	Reason Reason // empty when the reading may be used
	At     int    // index into Digits of the place that is in doubt, -1 when none
	Light  bool   // light digits on dark
	Frames int    // pictures behind it

	Jumping bool // in a vote: the last digit is another one from picture to picture, the rest stands still

	speck bool    // ink where a point stands, and none is read there
	doubt bool    // something beside the digits looks like one more
	lead  float64 // probability of a point before the first digit
	minus float64 // log odds that a minus sign is lit
	print print   // of the picture
}

// Chances of a whole reading being right from which it is told, and from which it is offered as a question.
const (
	tellFrom = 0.995
	askFrom  = 0.9
)

// OK tells whether the reading may be used as an observation.
func (r *Reading) OK() bool { return r.Reason == "" && r.Shows != "" }

// Question tells whether the reading is likely enough to be asked about, and not to be told.
func (r *Reading) Question() bool { return r.Reason == Likely && r.Shows != "" }

// Reader reads displays. It keeps its buffers, so one Reader serves one stream of pictures; it is not for concurrent use.
type Reader struct {
	// Aim is where the display is meant to be; nil for anywhere.
	Aim *Aim

	nets learned

	pyr   [6]grey
	strip strip
	fit   fitter
	grids [2]grid
	scale float64

	last ballot // what was said of the last picture
}

// Read finds the display in the picture and reads it with every voice. An error means that the picture itself is unusable; a reading that
// cannot be trusted has a Reason.
func (r *Reader) Read(p *Plane) (*Reading, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	r.strip.net = ownNet
	rd := r.voices(p)
	rd.print = fingerprint(p)
	return rd, nil
}

// readLine straightens a row and reads it. When digits turn up outside the row found, it is cut again round all of them.
func (r *Reader) readLine(n int, l line) (*Reading, float64) {
	s, g := &r.strip, &r.grids[0]
	for pass := 0; ; pass++ {
		s.cut(r.pyr[:n], r.scale, l)
		if !s.inkOf(false) {
			return nil, 0
		}
		s.straighten()
		s.extents()
		s.integrate()
		r.fit.fit(s, g)
		if len(g.x) == 0 || g.gain < 1.2 {
			return nil, 0
		}
		s.extend(g)
		if pass == 2 || !s.grown(g) {
			break
		}
		l = s.around(g)
	}
	rd := s.decide(g)
	return rd, (rd.weight() + 0.5*g.gain) * math.Sqrt((l.h0+l.h1)/2)
}

// weight says how much speaks for there being digits at all where they were read: more of them and surer ones count more.
func (rd *Reading) weight() float64 {
	sum := 0.0
	for i := range rd.Digits {
		sum += bound(rd.Digits[i].valid, 8)
	}
	return sum
}

// ReadDigit reads a picture that holds one digit and little else, such as a cell cut out of a display.
func (r *Reader) ReadDigit(p *Plane) (*Reading, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	w, h, squeeze := r.single(p)
	light, b := r.readSingle(w, h, squeeze, true)
	dark, a := r.readSingle(w, h, squeeze, false)
	best := dark
	if dark == nil || light != nil && b > a {
		best = light
	}
	if best == nil {
		return &Reading{Shows: Empty, At: -1, Frames: 1}, nil
	}
	if best.Digits[0].valid < 0 {
		best.Shows, best.Text, best.Reason, best.Value = Empty, "", "", unit.Decimal{}
	}
	r.nets.digit(p, best)
	return best, nil
}

// single prepares a picture of one digit and returns its size and by how much it was squeezed.
func (r *Reader) single(p *Plane) (w, h, squeeze float64) {
	r.strip.net = ownNet
	f := 1
	for max(p.W, p.H)/f > 200 {
		f++
	}
	r.scale = float64(f)
	g := &r.pyr[0]
	w, h, squeeze = float64(p.W), float64(p.H), 1
	if w > 0.72*h { // cut out and stretched, or with much beside it: bring it to a digit's proportions
		squeeze = 0.68 * h / w
		r.pyr[1].reduce(p, f)
		wide := &r.pyr[1]
		g.size(max(1, int(float64(wide.w)*squeeze)), wide.h)
		for y := range g.h {
			for x := range g.w {
				u := (float64(x)+0.5)/squeeze - 0.5
				a, b, c := wide.at(u-0.33/squeeze, float64(y)), wide.at(u, float64(y)), wide.at(u+0.33/squeeze, float64(y))
				g.pix[y*g.w+x] = byte((a+b+c)/3 + 0.5)
			}
		}
		w *= squeeze
	} else {
		g.reduce(p, f)
	}
	stretch(g)
	r.pyr[1].half(g)
	return w, h, squeeze
}

// readSingle reads the prepared picture as one digit of the given polarity and says how convincing that is.
func (r *Reader) readSingle(w, h, squeeze float64, light bool) (*Reading, float64) {
	s, g := &r.strip, &r.grids[0]
	// the digit fills about 0.85 of the height
	s.cut(r.pyr[:2], r.scale, line{x0: 0, y0: h / 2, h0: 0.85 * h, x1: w, y1: h / 2, h1: 0.85 * h, light: light})
	s.outside(255)
	if !s.inkOf(true) {
		return nil, 0
	}
	s.outside(0)
	s.pale = false
	s.straighten()
	s.integrate()
	if !r.fit.one(s, g) {
		return nil, 0
	}
	rd := s.decide(g)
	for i := range rd.Digits[0].Box {
		rd.Digits[0].Box[i][0] /= squeeze
	}
	return rd, g.gain + 0.5*bound(rd.Digits[0].valid, 7)
}

// stretch spreads the grey levels of a dull picture over the whole range.
func stretch(g *grey) {
	var hist [256]int
	for _, v := range g.pix {
		hist[v]++
	}
	lo, hi, c := 0, 255, 0
	for c = hist[0]; c*50 < len(g.pix) && lo < 255; c += hist[lo] {
		lo++
	}
	for c = hist[255]; c*50 < len(g.pix) && hi > 0; c += hist[hi] {
		hi--
	}
	if hi-lo < 10 || hi-lo > 150 {
		return
	}
	for i, v := range g.pix {
		g.pix[i] = byte(max(0, min(255, 20+(int(v)-lo)*215/(hi-lo))))
	}
}
