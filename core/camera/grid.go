package camera

import (
	"math"
	"slices"
)

// zones are the ink of one cell: seven segments, two holes, the gaps on both sides, each 0 to about 1.
type zones struct {
	seg        [7]float64
	hole       [2]float64
	left, rite float64
	beyond     [4]float64 // above and below the upright segments: b, c, e, f
}

// zonesAt measures a cell whose outer left edge is at column x and whose width is w, both in pixels.
func (s *strip) zonesAt(x, w float64, z *zones) {
	t, h := s.top, s.h
	a := t + 0.02*h
	z.seg[0] = s.box(x+0.3*w, a, x+0.7*w, a+0.11*h)
	z.seg[6] = s.box(x+0.3*w, t+0.445*h, x+0.7*w, t+0.555*h)
	z.seg[3] = s.box(x+0.3*w, t+0.87*h, x+0.7*w, t+0.98*h)
	l0, l1 := x+0.01*h, x+0.12*h
	r0, r1 := x+w-0.12*h, x+w-0.01*h
	u0, u1, d0, d1 := t+0.19*h, t+0.4*h, t+0.6*h, t+0.81*h
	z.seg[5] = s.box(l0, u0, l1, u1)
	z.seg[1] = s.box(r0, u0, r1, u1)
	z.seg[4] = s.box(l0, d0, l1, d1)
	z.seg[2] = s.box(r0, d0, r1, d1)
	z.hole[0] = s.box(x+0.36*w, t+0.23*h, x+0.64*w, t+0.37*h)
	z.hole[1] = s.box(x+0.36*w, t+0.63*h, x+0.64*w, t+0.77*h)
	z.left = s.box(x-0.11*h, t+0.15*h, x-0.04*h, t+0.8*h)
	z.rite = s.box(x+w+0.04*h, t+0.15*h, x+w+0.11*h, t+0.75*h)
	z.beyond[0] = s.box(r0, t-0.2*h, r1, t-0.07*h)
	z.beyond[1] = s.box(r0, t+1.07*h, r1, t+1.2*h)
	z.beyond[2] = s.box(l0, t+1.07*h, l1, t+1.2*h)
	z.beyond[3] = s.box(l0, t-0.2*h, l1, t-0.07*h)
}

// runsOn tells whether an upright stroke goes on above or below the cell: it is the edge of the window.
func (z *zones) runsOn() bool {
	for i, k := range [4]int{1, 2, 4, 5} {
		if z.seg[k] > 0.4 && z.beyond[i] > 0.5*z.seg[k] {
			return true
		}
	}
	return false
}

const litAt = 0.45 // ink above which a segment counts as lit while the grid is searched

// gain says how well the cell is explained as a glyph rather than as nothing, and as which.
func (z *zones) gain() (float64, byte) {
	waste := 2.5*(z.hole[0]+z.hole[1]) + 1.5*(z.left+z.rite)
	for i, k := range [4]int{1, 2, 4, 5} { // a stroke that runs on is the edge of something
		waste += math.Min(z.beyond[i], z.seg[k])
	}
	var mask byte
	var on, off [7]float64
	g := 0.0
	for i, v := range z.seg {
		v = math.Min(v, 1)
		on[i] = 2 * (v - litAt)
		off[i] = -2 * math.Max(0, v-litAt)
		if v > litAt {
			mask |= 1 << i
			g += on[i]
		}
	}
	if legal[mask] {
		return g - waste, mask
	}
	best, bm := -1e9, byte(0)
	for _, m := range digitMasks {
		g := 0.0
		for i := range 7 {
			if m>>i&1 == 1 {
				g += on[i]
			} else {
				g += off[i]
			}
		}
		if g > best {
			best, bm = g, m
		}
	}
	return best - waste, bm
}

// grid is where the cells of a row are.
type grid struct {
	x     []float64 // outer left edges, left to right
	w     float64   // outer width of a digit
	pitch float64
	gain  float64 // how well the row is explained, summed over its cells
}

// fitter searches the joint grid of a strip; its memory is reused.
type fitter struct {
	cell [stripW]float32
	best [stripW]float32
	from [stripW]int16
}

// fit finds the width and pitch, common to all digits of the row, and the places of the digits.
func (f *fitter) fit(s *strip, out *grid) {
	out.gain = math.Inf(-1)
	var bestEnd int
	var z zones
	for w := 0.42; w <= 0.72; w += 0.05 {
		wp := w * s.h
		n := s.w - int(wp)
		if n < 1 {
			continue
		}
		lo, hi := max(0, s.lo-int(1.1*s.h)), min(n, s.hi+int(0.6*s.h))
		for x := range n {
			f.cell[x] = -9
		}
		for x := lo; x < hi; x++ {
			s.zonesAt(float64(x), wp, &z)
			g, _ := z.gain()
			f.cell[x] = float32(g)
		}
		for p := w + 0.1; p <= w+0.5; p += 0.04 {
			end, g := f.chain(n, int(p*s.h+0.5))
			// among grids that explain the same ink the tighter one leaves fewer places for strokes to hide
			if g -= 0.2 * (p - w); g > out.gain {
				out.gain, out.w, out.pitch, bestEnd = g, wp, p*s.h, end
				out.x = out.x[:0]
				for e := bestEnd; e >= 0; e = int(f.from[e]) {
					out.x = append(out.x, float64(e))
				}
			}
		}
	}
	for i, j := 0, len(out.x)-1; i < j; i, j = i+1, j-1 {
		out.x[i], out.x[j] = out.x[j], out.x[i]
	}
}

// extend adds digits that stand on the grid beyond its ends and were too faint or too thin for the search, such as a leading
// one beside a pale unused place; the network knows them by their look.
func (s *strip) extend(g *grid) {
	const glyph = 3.0 // log odds from which a place beyond the ends counts
	slack := g.pitch / 12
	var z zones
	dark := 0.0
	for _, x := range g.x {
		s.zonesAt(x, g.w, &z)
		dark += z.peak() / float64(len(g.x))
	}
	next := func(x float64) (float64, bool) {
		best, at := glyph, 0.0
		for d := -slack; d <= slack; d += slack / 2 {
			if x+d < 0 || x+d+g.w > float64(s.w) {
				continue
			}
			// an unused place is as clear as a lit one when taken alone, but paler than its neighbours
			if s.zonesAt(x+d, g.w, &z); z.peak() < 0.6*dark || z.runsOn() {
				// between the two it may be a lit one in shadow or glare: neither taken nor left out for sure
				if z.peak() > 0.4*dark && !z.runsOn() && s.glyphAt(x+d, g.w) > strayGlyph {
					s.pale = true
				}
				continue
			}
			if v := s.glyphAt(x+d, g.w) - 4*math.Abs(d)/g.pitch; v > best {
				best, at = v, x+d
			}
		}
		return at, best > glyph
	}
	s.pale = false
	if s.glyphAt(g.x[0], g.w) < glyph {
		return
	}
	if len(g.x) == 1 { // how far apart the digits stand is not known from one: where another stands tells
		best := glyph
		for p := g.w + 0.1*s.h; p < g.w+0.5*s.h; p += slack {
			for _, x := range [2]float64{g.x[0] + p, g.x[0] - p} {
				if x < 0 || x+g.w > float64(s.w) {
					continue
				}
				if s.zonesAt(x, g.w, &z); z.peak() < 0.6*dark || z.runsOn() {
					continue
				}
				if v := s.glyphAt(x, g.w); v > best {
					best, g.pitch = v, p
				}
			}
		}
	}
	for len(g.x) < mostDigits {
		x, ok := next(g.x[len(g.x)-1] + g.pitch)
		if !ok {
			break
		}
		g.x = append(g.x, x)
	}
	for len(g.x) < mostDigits {
		x, ok := next(g.x[0] - g.pitch)
		if !ok {
			break
		}
		g.x = slices.Insert(g.x, 0, x)
	}
}

const mostDigits = 8 // no hand-held meter shows more

// glyphAt is the network's log odds that a cell holds a glyph.
func (s *strip) glyphAt(x, w float64) float64 {
	var z zones
	var in [patchLen]float32
	var st netState
	s.zonesAt(x, w, &z)
	s.patch(x, w, s.top, s.h, z.ref(), &in)
	s.net.run(&in, &st)
	return float64(st.out[outGlyph])
}

// chain finds the best run of cells about p columns apart and returns its last cell and its gain.
func (f *fitter) chain(n, p int) (int, float64) {
	end, top := -1, float32(-1e9)
	slack := max(1, p/12)
	for x := range n {
		c := f.cell[x]
		if c < 0.6 { // nothing here: no run goes through
			f.best[x] = -1e9
			continue
		}
		f.best[x], f.from[x] = c, -1
		for d := max(1, p-slack); d <= p+slack; d++ {
			if x-d < 0 {
				break
			}
			off := d - p
			if off < 0 {
				off = -off
			}
			if b := f.best[x-d] + c - 0.12*float32(off); b > f.best[x] {
				f.best[x], f.from[x] = b, int16(x-d)
			}
		}
		if f.best[x] > top {
			top, end = f.best[x], x
		}
	}
	return end, float64(top)
}

// one finds the best place and size for a single digit within the row that was cut.
func (f *fitter) one(s *strip, out *grid) bool {
	out.gain, out.x = 0.8, out.x[:0]
	var z zones
	var top, h float64
	for t := marginV - 6.0; t <= marginV+8; t += 1.5 {
		for b := marginV + unitH - 9.0; b <= marginV+unitH+7; b += 1.5 {
			s.top, s.h = t, b-t
			for w := 0.42; w <= 0.84; w += 0.07 {
				wp := w * s.h
				for x := s.lo - 4; x < s.hi+4-int(wp); x++ {
					s.zonesAt(float64(x), wp, &z)
					// a digit cut out of a display stands in the middle and fills most of the height
					off := (float64(x) + wp/2 - float64(s.lo+s.hi)/2) / s.h
					v, _ := z.gain()
					if v += -2*off*off + 1.5*s.h/unitH - 1.5; v > out.gain {
						out.gain, out.w, out.pitch, top, h = v, wp, 1.35*wp, t, b-t
						out.x = append(out.x[:0], float64(x))
					}
				}
			}
		}
	}
	s.top, s.h = top, h
	return len(out.x) > 0
}
