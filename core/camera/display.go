package camera

import (
	"math"
	"slices"
	"strings"

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
	Net *Net // the network to use; nil for the one that comes with the package

	// Aim is where the display is meant to be; nil for anywhere.
	Aim *Aim

	nets learned

	pyr   [6]grey
	find  finder
	lines []line
	views []view
	strip strip
	fit   fitter
	grids [2]grid
	scale float64

	levels int
	chosen line   // the row of the last reading
	last   ballot // what was said of the last picture
}

// Read finds the display in the picture and reads it with every voice. An error means that the picture itself is unusable; a reading that
// cannot be trusted has a Reason.
func (r *Reader) Read(p *Plane) (*Reading, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	r.useNet()
	rd := r.voices(p)
	rd.print = fingerprint(p)
	return rd, nil
}

func (r *Reader) useNet() {
	if r.strip.net = r.Net; r.Net == nil {
		r.strip.net = ownNet
	}
}

func (r *Reader) read(n int) *Reading {
	r.lines, r.views = r.lines[:0], r.views[:0]
	first := 0
	if r.pyr[0].w*r.pyr[0].h > 400*400 {
		first = 1
	}
	for l := n - 1; l >= first; l-- {
		r.search(l)
	}
	best := r.judge(n, 9)
	if (best == nil || !best.OK()) && first == 1 {
		// small digits: look again at full size
		r.lines = r.lines[:0]
		r.search(0)
		best = r.judge(n, 5)
	}
	if best == nil {
		return &Reading{Reason: NoDisplay, At: -1, Frames: 1}
	}
	return best
}

func (r *Reader) search(l int) {
	g := &r.pyr[l]
	if g.w < 12 || g.h < 12 {
		return
	}
	blobs := r.find.find(g, noiseOf(g))
	r.lines = lines(blobs, r.scale*float64(int(1)<<l), r.lines)
}

// view is one way to read the picture: the row as it was found, what was read in it, and how much speaks for it.
type view struct {
	rd    *Reading
	score float64
	line  line
}

// judge reads the most promising rows and returns the best of all views so far. The same number is usually found more than
// once, at several sizes of the picture and with other bounds; the first two that agree end the search, and a best view that
// another contradicts is in doubt.
func (r *Reader) judge(n, limit int) *Reading {
	limit0 := limit
	slices.SortStableFunc(r.lines, func(a, b line) int {
		switch {
		case a.rank > b.rank:
			return -1
		case a.rank < b.rank:
			return 1
		}
		return 0
	})
	for i := range r.lines {
		if limit == 0 || i >= 2*limit0 || r.lines[i].rank < 0.1*r.lines[0].rank {
			break
		}
		rd, score := r.readLine(n, r.lines[i])
		if rd == nil {
			continue
		}
		limit--
		r.views = append(r.views, view{rd, score, r.lines[i]})
		if b := r.best(); b.rd.P > surely && r.votes(b) >= 2 && !r.contested(b) {
			break
		}
	}
	if len(r.views) == 0 {
		return nil
	}
	b := r.best()
	r.levels, r.chosen = n, b.line
	if r.contested(b) || len(b.rd.Digits) == 1 { // a lone digit is more often a letter or a mark than a number
		b.rd.doubt = true
		if b.rd.OK() {
			b.rd.Reason = Unclear
		}
	}
	return b.rd
}

// best is the view most speaks for; one that sees all of it and a sign or a digit more is better still, because a row found too short loses what
// stands at its ends, and rarely does one gain a place that nothing lights.
func (r *Reader) best() *view {
	b := &r.views[0]
	for i := range r.views {
		if v := &r.views[i]; v.score > b.score {
			b = v
		}
	}
	for i := range r.views {
		if v := &r.views[i]; v.score > 0.9*b.score && b.part(v) {
			b = v
		}
	}
	return b
}

// part tells whether a view is a part of another that is sure of itself: it lacks what stands at an end, or the point.
func (v *view) part(whole *view) bool {
	text := whole.rd.Text
	return whole.rd.P > 0.99 && len(v.rd.Text) < len(text) && whole.rd.over(v.rd) &&
		(strings.Contains(text, v.rd.Text) || v.rd.Text == strings.ReplaceAll(text, ".", ""))
}

// votes counts the views that read the same in the same place.
func (r *Reader) votes(b *view) int {
	n := 0
	for i := range r.views {
		if v := &r.views[i]; v.rd.Text == b.rd.Text && b.rd.over(v.rd) {
			n++
		}
	}
	return n
}

// contested tells whether another view of the same place reads something else and is about as good.
func (r *Reader) contested(b *view) bool {
	for i := range r.views {
		v := &r.views[i]
		if v.rd.Text != b.rd.Text && v.score > 0.75*b.score && v.rd.P > 0.5 && b.rd.over(v.rd) && r.votes(v) >= r.votes(b) && !v.part(b) {
			return true
		}
	}
	return false
}

// over tells whether o was read where rd was.
func (rd *Reading) over(o *Reading) bool {
	for i := range o.Digits {
		cx, cy := centre(o.Digits[i].Box)
		for k := range rd.Digits {
			b := rd.Digits[k].Box
			x, y := centre(b)
			if math.Hypot(cx-x, cy-y) < 0.3*math.Hypot(b[3][0]-b[0][0], b[3][1]-b[0][1]) {
				return true
			}
		}
	}
	return false
}

func centre(box [4][2]float64) (x, y float64) {
	for _, c := range box {
		x, y = x+c[0]/4, y+c[1]/4
	}
	return x, y
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
	r.useNet()
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
