package camera

import "math"

// left is the ink in and beside a number that no digit explains. A sign, a point or a digit that the reading lacks leaves its ink there,
// and a sign that the reading has must have left some.
type left struct {
	bar    float64 // share of its box that the best bar in a sign's place fills, 0 for none
	digit  bool    // strokes as high as a digit
	points []int   // specks where a point stands, by the digit before them; -1 before the first
}

// leftover sorts the patches of ink that lie in no cell of the grid. What runs on above or below the digits is the edge of the window or
// a word; what is smaller than a digit and no bar or speck in its place is a unit.
func (s *strip) leftover(g *grid) (out left) {
	ref := s.rowRef(g)
	t, h := s.top, s.h
	n := len(g.x)
	lo, hi := s.edge(g.x[0]-0.06*h, g.x[0]-2.8*g.pitch, ref), s.edge(g.x[n-1]+g.w, g.x[n-1]+g.w+math.Max(1.3*g.pitch, 1.2*h), ref)
	blobs := s.patches.strokes(s.ink, s.w, stripH, float32(0.5*ref))
	for i := range blobs {
		b := &blobs[i]
		x0, x1, y0, y1 := float64(b.x0), float64(b.x1+1), float64(b.y0), float64(b.y1+1)
		w, high := x1-x0, y1-y0
		if x0 < lo || x1 > hi || w < 0.06*h || high < 0.06*h || s.beyond(b) || s.inCell(g, x0, x1) { // no stroke is so thin
			continue
		}
		mid := (y0+y1)/2 - t
		switch {
		case high < 0.28*h && w > 0.17*h && w < 0.65*h && w > 0.9*high && math.Abs(mid-h/2) < 0.13*h && x1 < g.x[0]+0.15*h:
			out.bar = math.Max(out.bar, float64(b.area)/(w*high)*math.Min(1, 0.8*w/high))
		case high < 0.28*h && w < 0.28*h && mid > 0.82*h && mid < 1.08*h:
			for i, x := range g.x {
				if c := (x0 + x1) / 2; i < n-1 && c > x+g.w-0.1*h && c < g.x[i+1]+0.1*h {
					out.points = append(out.points, i)
				} else if i == 0 && c < x+0.1*h && c > x-0.5*g.pitch {
					out.points = append(out.points, -1)
				}
			}
		case high > 0.3*h && x0 > g.x[0]-1.3*g.pitch-0.2*h:
			out.digit = out.digit || s.whole(b, blobs)
		}
	}
	return out
}

// edge is where the window ends on the way from one column to another: ink from above the digits to below them. Nothing outside it belongs
// to the number.
func (s *strip) edge(from, to, ref float64) float64 {
	for x, d := from, math.Copysign(1, to-from); (to-x)*d > 0; x += d {
		part := func(y0, y1 float64) bool { return s.box(x, s.top+y0*s.h, x+0.06*s.h, s.top+y1*s.h) > 0.5*ref }
		if part(-0.25, -0.1) && part(0, 1) && part(1.1, 1.25) {
			return x
		}
	}
	return to
}

// beyond tells whether a patch runs on above or below the digits.
func (s *strip) beyond(b *blob) bool {
	return float64(b.y0) < s.top-0.15*s.h || float64(b.y1+1) > s.top+1.15*s.h
}

// whole tells whether a patch and what stands above and below it, as the two halves of a one do, are as high as a digit. Pieces of the
// window's edge go on beyond.
func (s *strip) whole(b *blob, blobs []blob) bool {
	x0, x1, y0, y1 := b.x0, b.x1, b.y0, b.y1
	near := int(0.15 * s.h)
	for i := range blobs {
		c := &blobs[i]
		if c.x0 > b.x1+near || c.x1 < b.x0-near || c.w() > 0.9*s.h {
			continue
		}
		if s.beyond(c) && c.h() > c.w() {
			return false
		}
		if c.h() > 0.3*s.h {
			x0, x1, y0, y1 = min(x0, c.x0), max(x1, c.x1), min(y0, c.y0), max(y1, c.y1)
		}
	}
	return float64(y0) < s.top+0.2*s.h && float64(y1+1) > s.top+0.8*s.h && float64(x1-x0) < 0.9*s.h
}

// inCell tells whether most of what lies between two columns belongs to a cell.
func (s *strip) inCell(g *grid, x0, x1 float64) bool {
	for _, x := range g.x {
		if math.Min(x1, x+g.w+0.05*s.h)-math.Max(x0, x-0.05*s.h) > 0.5*(x1-x0) {
			return true
		}
	}
	return false
}
