package camera

import (
	"math"

	"readback/core/unit"
)

// decide turns the grid into a reading.
func (s *strip) decide(g *grid) *Reading {
	rd := &Reading{Light: s.from.light, At: -1, Frames: 1}
	var z zones
	for _, x := range g.x {
		s.zonesAt(x, g.w, &z)
		d := Digit{Box: s.corners(x, g.w)}
		top := 0.0
		for _, v := range z.seg {
			top = math.Max(top, v)
		}
		// a segment is lit against the darkest of its own digit, so that the ghost of an old value is not
		ref := math.Max(top, 0.5)
		for i, v := range z.seg {
			d.seg[i] = 14 * (v/ref - 0.5)
		}
		// the point: bottom of the gap to the next digit
		d.Dot = s.dot(x, g)
		rd.Digits = append(rd.Digits, d)
	}
	rd.minus = s.minusAt(g)
	rd.lead = s.dot(g.x[0]-g.pitch, g)
	rd.settle()
	return rd
}

func (s *strip) corners(x, w float64) (c [4][2]float64) {
	for i, q := range [4][2]float64{{x, s.top}, {x + w, s.top}, {x + w, s.top + s.h}, {x, s.top + s.h}} {
		c[i][0], c[i][1] = s.back(q[0], q[1])
	}
	return c
}

// dot is the probability of a lit point after the cell at x.
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
	return 1 / (1 + math.Exp(-14*(best-0.45)))
}

// minusAt returns the log odds of a minus sign to the left of the first digit.
func (s *strip) minusAt(g *grid) float64 {
	h := s.h
	x := g.x[0]
	best := -9.0
	for right := x - 0.04*h; right > x-0.9*h; right-- {
		for w := 0.2 * h; w <= 0.5*h; w += 0.1 * h {
			l := right - w
			if l < 0 {
				continue
			}
			m := s.top + 0.5*h
			bar := s.box(l, m-0.04*h, right, m+0.04*h)
			up := s.box(l, s.top+0.1*h, right, s.top+0.36*h)
			down := s.box(l, s.top+0.64*h, right, s.top+0.9*h)
			best = math.Max(best, 14*(bar-1.2*(up+down)-0.5))
		}
	}
	return best
}

// settle derives glyphs, text, value and probability from the segment odds.
func (rd *Reading) settle() {
	p := 1.0
	dot, dots := -2, rd.lead
	for i := range rd.Digits {
		d := &rd.Digits[i]
		d.decide()
		p *= d.P
		if d.Dot > dots {
			dot, dots = i, d.Dot
		}
	}
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
	rd.Text, rd.P = text, p
	rd.Shows = Number
	v, err := unit.ParseDecimal(text)
	if err == nil {
		rd.Value = v
		return
	}
	rd.Shows = Over
}

// decide finds the likeliest glyph and its rival.
func (d *Digit) decide() {
	var ll [len16]float64
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

const len16 = 32

func sigmoid(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

func logSigmoid(x float64) float64 {
	if x < -30 {
		return x
	}
	return -math.Log1p(math.Exp(-x))
}
