package camera

import (
	"math"
	"strings"

	"readback/core/unit"
)

// How much each opinion counts: log odds per unit of ink, and the share of the network's own log odds.
const (
	zoneTrust = 7.0
	dotTrust  = 12.0
	netTrust  = 0.8
)

var looks = [...]jitter{{}, {x: 0.05}, {x: -0.05}, {y: 0.03}, {y: -0.03}}

// decide turns the grid into a reading.
func (s *strip) decide(g *grid) *Reading {
	rd := &Reading{Light: s.from.light, At: -1, Frames: 1}
	var z zones
	var in [patchLen]float32
	var st netState
	var valid []float64
	middling := 0
	for _, x := range g.x {
		s.zonesAt(x, g.w, &z)
		d := Digit{Box: s.corners(x, g.w)}
		ref := z.ref()
		var out [netOut]float64
		for _, j := range looks { // the place is known to a few hundredths only: the mean of several looks is steadier than one
			s.patch(x+j.x*g.w, g.w, s.top+j.y*s.h, s.h, ref, &in)
			s.net.run(&in, &st)
			for i, v := range st.out {
				out[i] += float64(v) / float64(len(looks))
			}
		}
		for i, v := range z.seg {
			d.seg[i] = zoneTrust*(v/ref-0.5) + netTrust*out[i]
			if math.Abs(v/ref-0.5) < 0.12 {
				middling++
			}
		}
		d.valid = out[outGlyph]
		d.Dot = sigmoid(netTrust*out[outDot] + dotTrust*(s.dot(x, g)-0.42))
		rd.Digits = append(rd.Digits, d)
		valid = append(valid, d.valid)
	}
	from, to := g.trim(valid)
	// a place that was dropped, or left out, but has the ink of a digit: something is missing from the number
	for i, x := range g.x {
		if (i < from || i >= to) && valid[i] > 4*noGlyph && s.digitLike(x, g.w) {
			rd.doubt = true
		}
	}
	rd.Digits = rd.Digits[from:to]
	g.x = g.x[from:to]
	if s.digitLike(g.x[0]-g.pitch, g.w) || s.digitLike(g.x[len(g.x)-1]+g.pitch, g.w) {
		rd.doubt = true
	}
	rd.lead = sigmoid(14 * (s.dot(g.x[0]-g.pitch, g) - 0.5))
	l := s.leftover(g)
	if s.pale || l.digit {
		rd.doubt = true
	}
	// a sign is seen by the network and leaves a bar of ink: the network may see one in the edge of a digit, a bar may be part of the housing
	rd.minus = s.minusAt(g)
	ink := barTrust * (l.bar - barLeast)
	if rd.minus > 0 != (ink > 0) {
		rd.doubt = rd.doubt || ink > 0 || rd.minus > signSure
	}
	if rd.minus > 0 {
		rd.minus = math.Min(rd.minus, ink)
	}
	for _, i := range l.points {
		if i < 0 && rd.lead < 0.5 || i >= 0 && rd.Digits[i].Dot < 0.5 {
			rd.speck = true
		}
	}
	rd.settle()
	if rd.Reason == Unclear {
		rd.Reason = s.excuse(rd, middling)
	}
	return rd
}

// excuse finds the likeliest cause of an unclear reading, so that the person knows what to change.
func (s *strip) excuse(rd *Reading, middling int) Reason {
	if rd.At >= 0 {
		x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
		for _, c := range rd.Digits[rd.At].Box {
			x0, y0, x1, y1 = math.Min(x0, c[0]), math.Min(y0, c[1]), math.Max(x1, c[0]), math.Max(y1, c[1])
		}
		if x0 < -1 || y0 < -1 || x1 > s.width+1 || y1 > s.height+1 {
			return cutOff
		}
	}
	burnt, steep := 0, float32(0)
	for v := marginV; v < marginV+unitH; v++ {
		row := s.ink[v*s.w : (v+1)*s.w]
		for x := s.lo + 1; x < s.hi-1; x++ {
			if p := s.pix[v*s.w+x]; p >= 250 != s.from.light && (p >= 250 || p <= 5) {
				burnt++
			}
			steep = max(steep, row[x+1]-row[x-1])
		}
	}
	switch {
	case burnt*4 > (s.hi-s.lo)*unitH:
		return Glare
	case s.level < 8:
		return Faint
	case steep < 0.3: // a sharp stroke rises within three columns
		return Blurred
	case middling >= 3:
		return Changing
	}
	return Unclear
}

func (s *strip) corners(x, w float64) (c [4][2]float64) {
	for i, q := range [4][2]float64{{x, s.top}, {x + w, s.top}, {x + w, s.top + s.h}, {x, s.top + s.h}} {
		c[i][0], c[i][1] = s.back(q[0], q[1])
	}
	return c
}

// dot is the ink of a point after the cell at x, less what stands above it.
func (s *strip) dot(x float64, g *grid) float64 {
	h := s.h
	best := 0.0
	gap := g.pitch - g.w
	for dx := -0.02 * h; dx <= gap-0.06*h; dx += 1 {
		for _, dy := range [...]float64{0.86, 0.92} {
			l := x + g.w + dx
			in := s.box(l, s.top+dy*h, l+0.09*h, s.top+(dy+0.09)*h)
			above := s.box(l, s.top+0.55*h, l+0.09*h, s.top+0.72*h)
			best = math.Max(best, in-1.2*above)
		}
	}
	return best
}

// minusAt returns the log odds of a minus sign to the left of the first digit, as the network sees it.
func (s *strip) minusAt(g *grid) float64 {
	ref := s.rowRef(g)
	best := -9.0
	var in [patchLen]float32
	var st netState
	s.beside(g, func(x float64) {
		s.patch(x, g.w, s.top, s.h, ref, &in)
		s.net.run(&in, &st)
		best = math.Max(best, netTrust*float64(st.out[outMinus]))
	})
	return best
}

// barTrust and barLeast turn the bar's share of its box into log odds; signSure is what the network must have for a sign whose bar is
// missing to leave a doubt.
const (
	barTrust = 25
	barLeast = 0.5
	signSure = 3.0
)

const strayGlyph = 5.0 // log odds from which ink beside the number counts as a digit that was left out

// digitLike tells whether a place has upright strokes in both halves that end where the digits end.
func (s *strip) digitLike(x, w float64) bool {
	if x < 0 || x+w > float64(s.w) {
		return false
	}
	for d := -0.12 * s.h; d <= 0.12*s.h; d += 0.06 * s.h {
		var z zones
		if s.zonesAt(x+d, w, &z); z.peak() < 0.5 {
			continue
		}
		ends := math.Max(math.Max(z.beyond[0], z.beyond[1]), math.Max(z.beyond[2], z.beyond[3]))
		up, down := math.Max(z.seg[1], z.seg[5]), math.Max(z.seg[2], z.seg[4])
		if up > 0.5 && down > 0.5 && ends < 0.35 && z.hole[0]+z.hole[1] < 0.6 && s.glyphAt(x+d, w) > strayGlyph {
			return true
		}
	}
	return false
}

// trim drops cells at either end that hold no glyph: the edge of the window, a unit, a blank place.
func (g *grid) trim(valid []float64) (from, to int) {
	from, to = 0, len(valid)
	for to-from > 1 && valid[from] < noGlyph {
		from++
	}
	for to-from > 1 && valid[to-1] < noGlyph {
		to--
	}
	return from, to
}

const noGlyph = -0.5 // log odds below which a cell at the end of a row is dropped

// settle derives glyphs, text, value and probability from the segment odds.
func (rd *Reading) settle() {
	p, worst := 1.0, 1.0
	dot, dots := -2, rd.lead
	rd.At = -1
	for i := range rd.Digits {
		d := &rd.Digits[i]
		d.decide()
		q := d.P * sigmoid(d.valid+2)
		p *= q
		if q < worst {
			worst, rd.At = q, i
		}
		if d.Dot > dots && i < len(rd.Digits)-1 { // a point after the last digit says nothing and is often a mark
			dot, dots = i, d.Dot
		}
	}
	glyphs := p
	if dots < 0.5 {
		dot = -3
		p *= 1 - dots
	} else {
		p *= dots
	}
	text := ""
	if m := sigmoid(rd.minus); m > 0.5 {
		text = "-"
		p *= m
	} else {
		p *= 1 - m
	}
	if dot == -2 {
		text += "."
	}
	for i := range rd.Digits {
		text += string(rd.Digits[i].Glyph)
		if i == dot {
			text += "."
		}
	}
	rd.Text, rd.P, rd.Shows, rd.Reason = text, p, Number, ""
	rd.Rival, rd.RivalP = "", 0
	if rd.At >= 0 {
		if d := &rd.Digits[rd.At]; d.Rival != 0 {
			r := []rune(text)
			k := 0
			for i := range r { // the place of digit At among the characters
				if r[i] == '.' || r[i] == '-' && i == 0 && sigmoid(rd.minus) > 0.5 {
					continue
				}
				if k == rd.At {
					r[i] = d.Rival
					break
				}
				k++
			}
			rd.Rival, rd.RivalP = string(r), p/math.Max(d.P, 1e-9)*d.RivalP
		}
	}
	v, err := unit.ParseDecimal(text)
	switch bare := strings.ReplaceAll(text, ".", ""); {
	case err == nil:
		rd.Value = v
	case bare == "0L" || bare == "00L": // some meters write O.L with a leading blank or zero
		p = glyphs // a point or a sign in it means nothing
		rd.Shows, rd.Text, rd.P = Over, "OL", p
	default:
		rd.Reason = Unclear
	}
	switch {
	case text == "1":
		rd.Reason = loneOne
	case p < surely || rd.doubt || rd.speck && rd.Shows == Number:
		rd.Reason = Unclear
	}
}

const surely = 0.85 // probability below which a reading is not used

// decide finds the likeliest glyph and its rival.
func (d *Digit) decide() {
	var ll [shapeRoom]float64
	total, top := 0.0, math.Inf(-1)
	for i, s := range shapes {
		l := -s.cost
		for k, o := range d.seg {
			if s.mask>>k&1 == 1 {
				l += logSigmoid(o)
			} else {
				l += logSigmoid(-o)
			}
		}
		ll[i] = l
		top = math.Max(top, l)
	}
	for i := range shapes {
		total += math.Exp(ll[i] - top)
	}
	d.P, d.RivalP = 0, 0
	for i, s := range shapes {
		p := math.Exp(ll[i]-top) / total
		switch {
		case s.r == d.Glyph:
			d.P += p
		case p > d.P:
			d.Rival, d.RivalP = d.Glyph, d.P
			d.Glyph, d.P = s.r, p
		case p > d.RivalP:
			d.Rival, d.RivalP = s.r, p
		}
	}
}

const shapeRoom = 32 // at least as many as there are shapes

func sigmoid(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

func logSigmoid(x float64) float64 {
	if x < -30 {
		return x
	}
	return -math.Log1p(math.Exp(-x))
}
