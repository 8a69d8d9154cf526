package camera

import (
	"errors"
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
)

// ErrRegister is returned when two pictures cannot be laid over each other; take the second again from where the first was taken.
var ErrRegister = errors.New("camera: the pictures cannot be matched")

// Map takes points of one picture to another: a plane homography, row by row, the last element 1.
type Map [9]float64

// Apply maps one point.
func (m *Map) Apply(x, y float64) (float64, float64) {
	w := m[6]*x + m[7]*y + m[8]
	return (m[0]*x + m[1]*y + m[2]) / w, (m[3]*x + m[4]*y + m[5]) / w
}

// Match says how well two pictures were laid over each other.
type Match struct {
	Map      Map     // before to after, pixels
	Inliers  int     // points that agree
	Residual float64 // their median distance, pixels
}

type corner struct {
	x, y  int
	score int
}

type descriptor [4]uint64

// registrar finds the map between two pictures; its memory is reused.
type registrar struct {
	g, soft [2]grey
	acc     []int32
	corners [2][]corner
	desc    [2][]descriptor
	pairs   []pair
	cell    []corner
}

type pair struct {
	ax, ay, bx, by float64
	in             bool
}

// ring16 is the Bresenham circle of radius 3.
var ring16 = [16][2]int{{0, -3}, {1, -3}, {2, -2}, {3, -1}, {3, 0}, {3, 1}, {2, 2}, {1, 3}, {0, 3}, {-1, 3}, {-2, 2}, {-3, 1}, {-3, 0}, {-3, -1}, {-2, -2}, {-1, -3}}

// tests are the point pairs compared by the descriptor, drawn once from a fixed seed (BRIEF, Calonder et al. 2010).
var tests = func() (t [256][4]float64) {
	r := rand.New(rand.NewPCG(7, 11))
	for i := range t {
		for k := range 4 {
			t[i][k] = math.Max(-13, math.Min(13, r.NormFloat64()*5.5))
		}
	}
	return t
}()

const (
	cornerCell = 18
	cornerEdge = 17
)

// detect finds FAST-9 corners (Rosten and Drummond 2006), the best two of every cell of the picture.
func (r *registrar) detect(k int) {
	g := &r.soft[k]
	w, h := g.w, g.h
	var off [16]int
	for i, o := range ring16 {
		off[i] = o[1]*w + o[0]
	}
	th := max(7, int(2.2*noiseOf(g)+3))
	cols, rows := w/cornerCell+1, h/cornerCell+1
	r.cell = grow(r.cell, 2*cols*rows)
	clear(r.cell)
	for y := cornerEdge; y < h-cornerEdge; y++ {
		for x := cornerEdge; x < w-cornerEdge; x++ {
			i := y*w + x
			c := int(g.pix[i])
			hi, lo := c+th, c-th
			// nine in a row cover at least two of the four compass points
			n, s, e, v := int(g.pix[i+off[0]]), int(g.pix[i+off[8]]), int(g.pix[i+off[4]]), int(g.pix[i+off[12]])
			if !((n > hi || s > hi) && (e > hi || v > hi) || (n < lo || s < lo) && (e < lo || v < lo)) {
				continue
			}
			var up, dn uint32
			score := 0
			for j, o := range off {
				d := int(g.pix[i+o]) - c
				if d > th {
					up |= 1 << j
					score += d - th
				} else if d < -th {
					dn |= 1 << j
					score -= d + th
				}
			}
			if !nine(up) && !nine(dn) {
				continue
			}
			q := r.cell[2*(y/cornerCell*cols+x/cornerCell):][:2]
			switch {
			case score > q[0].score:
				if absInt(q[0].x-x)+absInt(q[0].y-y) > 4 {
					q[1] = q[0]
				}
				q[0] = corner{x, y, score}
			case score > q[1].score && absInt(q[0].x-x)+absInt(q[0].y-y) > 4:
				q[1] = corner{x, y, score}
			}
		}
	}
	r.corners[k] = r.corners[k][:0]
	for _, c := range r.cell {
		if c.score > 0 {
			r.corners[k] = append(r.corners[k], c)
		}
	}
	if len(r.corners[k]) > 600 {
		slices.SortStableFunc(r.corners[k], func(a, b corner) int { return b.score - a.score })
		r.corners[k] = r.corners[k][:600]
	}
}

// nine tells whether nine neighbouring bits of the 16 are set, round the corner too.
func nine(m uint32) bool {
	m |= m << 16
	a := m & (m >> 1)
	a &= a >> 2
	a &= a >> 4
	return a&(m>>8) != 0
}

// describe compares pairs of smoothed pixels around each corner, the pattern turned and scaled.
func (r *registrar) describe(k int, turn, scale float64) {
	g := &r.soft[k]
	var off [256][2]int
	cos, sin := math.Cos(turn)*scale, math.Sin(turn)*scale
	for i, t := range tests {
		x0, y0 := int(math.Round(cos*t[0]-sin*t[1])), int(math.Round(sin*t[0]+cos*t[1]))
		x1, y1 := int(math.Round(cos*t[2]-sin*t[3])), int(math.Round(sin*t[2]+cos*t[3]))
		lim := cornerEdge - 1
		x0, y0, x1, y1 = max(-lim, min(lim, x0)), max(-lim, min(lim, y0)), max(-lim, min(lim, x1)), max(-lim, min(lim, y1))
		off[i] = [2]int{y0*g.w + x0, y1*g.w + x1}
	}
	r.desc[k] = r.desc[k][:0]
	for _, c := range r.corners[k] {
		at := c.y*g.w + c.x
		var d descriptor
		for i := range off {
			if g.pix[at+off[i][0]] < g.pix[at+off[i][1]] {
				d[i>>6] |= 1 << (i & 63)
			}
		}
		r.desc[k] = append(r.desc[k], d)
	}
}

func (d *descriptor) distance(e *descriptor) int {
	return bits.OnesCount64(d[0]^e[0]) + bits.OnesCount64(d[1]^e[1]) + bits.OnesCount64(d[2]^e[2]) + bits.OnesCount64(d[3]^e[3])
}

// soften is a 5 by 5 box filter through column sums.
func (r *registrar) soften(in, out *grey) {
	w, h := in.w, in.h
	out.size(w, h)
	r.acc = grow(r.acc, w)
	col := r.acc
	clear(col)
	for y := -2; y < h; y++ {
		if y+2 < h {
			for x, v := range in.pix[(y+2)*w : (y+3)*w] {
				col[x] += int32(v)
			}
		}
		if y-3 >= 0 {
			for x, v := range in.pix[(y-3)*w : (y-2)*w] {
				col[x] -= int32(v)
			}
		}
		if y < 0 {
			continue
		}
		rows := int32(min(y+2, h-1) - max(y-2, 0) + 1)
		o := out.pix[y*w : (y+1)*w]
		s := int32(0)
		for x := range min(2, w) {
			s += col[x]
		}
		for x := range w {
			if x+2 < w {
				s += col[x+2]
			}
			if x-3 >= 0 {
				s -= col[x-3]
			}
			o[x] = byte(s / (rows * int32(min(x+2, w-1)-max(x-2, 0)+1)))
		}
	}
}

// register finds the map from before to after.
func (r *registrar) register(before, after *Plane) (Match, error) {
	f := 1
	for max(before.W, before.H, after.W, after.H)/f > 640 {
		f++
	}
	for k, p := range [2]*Plane{before, after} {
		r.g[k].reduce(p, f)
		r.soften(&r.g[k], &r.soft[k])
		r.detect(k)
	}
	if len(r.corners[0]) < 40 || len(r.corners[1]) < 40 {
		return Match{}, ErrRegister
	}
	r.describe(1, 0, 1)
	var best Map
	bestN := 0
	// the hand turns and nears a little between the pictures: the kindest guess first, further ones only when needed
	for _, v := range [...][2]float64{{0, 1}, {0.16, 1}, {-0.16, 1}, {0, 1.16}, {0, 0.86}, {0.16, 1.16}, {-0.16, 1.16}, {0.16, 0.86}, {-0.16, 0.86}, {0.3, 1}, {-0.3, 1}} {
		r.describe(0, v[0], v[1])
		r.matchAll()
		m, n := r.ransac()
		if n > bestN {
			best, bestN = m, n
		}
		if bestN >= 60 {
			break
		}
	}
	if bestN < 12 {
		return Match{}, ErrRegister
	}
	// with the map known, match again near where each corner must be, turned and scaled as the map says
	var res float64
	for range 2 {
		turn := math.Atan2(best[3], best[0])
		scale := math.Sqrt(math.Abs(best[0]*best[4] - best[1]*best[3]))
		r.describe(0, turn, scale)
		r.guided(&best)
		m, n, q, ok := refine(r.pairs, best)
		if !ok {
			return Match{}, ErrRegister
		}
		best, bestN, res = m, n, q
	}
	if bestN < 30 || res > 2.5 {
		return Match{}, ErrRegister
	}
	// back to full pixels: x = f*(x'+0.5)-0.5
	F := float64(f)
	up := Map{F, 0, (F - 1) / 2, 0, F, (F - 1) / 2, 0, 0, 1}
	dn := Map{1 / F, 0, (1 - F) / (2 * F), 0, 1 / F, (1 - F) / (2 * F), 0, 0, 1}
	full := mulMap(up, mulMap(best, dn))
	return Match{Map: full, Inliers: bestN, Residual: res * F}, nil
}

func mulMap(a, b Map) Map {
	var c Map
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				c[i*3+j] += a[i*3+k] * b[k*3+j]
			}
		}
	}
	for i := range c {
		c[i] /= c[8] + 1e-300
	}
	return c
}

// matchAll pairs every corner with its nearest descriptor when that is clearly nearer than the next.
func (r *registrar) matchAll() {
	r.pairs = r.pairs[:0]
	for i := range r.desc[0] {
		d := &r.desc[0][i]
		b1, b2, arg := 257, 257, -1
		for j := range r.desc[1] {
			switch n := d.distance(&r.desc[1][j]); {
			case n < b1:
				b1, b2, arg = n, b1, j
			case n < b2:
				b2 = n
			}
		}
		if arg >= 0 && b1 < 75 && float64(b1) < 0.84*float64(b2) {
			p, q := r.corners[0][i], r.corners[1][arg]
			r.pairs = append(r.pairs, pair{float64(p.x), float64(p.y), float64(q.x), float64(q.y), false})
		}
	}
}

// guided pairs corners whose mapped place has a like corner within a few pixels.
func (r *registrar) guided(m *Map) {
	r.pairs = r.pairs[:0]
	for i, p := range r.corners[0] {
		x, y := m.Apply(float64(p.x), float64(p.y))
		best, arg := 85, -1
		for j, q := range r.corners[1] {
			dx, dy := float64(q.x)-x, float64(q.y)-y
			if dx*dx+dy*dy > 36 {
				continue
			}
			if n := r.desc[0][i].distance(&r.desc[1][j]); n < best {
				best, arg = n, j
			}
		}
		if arg >= 0 {
			q := r.corners[1][arg]
			r.pairs = append(r.pairs, pair{float64(p.x), float64(p.y), float64(q.x), float64(q.y), false})
		}
	}
}

// ransac finds the homography most pairs agree on, with a fixed sequence of draws.
func (r *registrar) ransac() (best Map, bestN int) {
	n := len(r.pairs)
	if n < 8 {
		return best, 0
	}
	rnd := rand.New(rand.NewPCG(uint64(n), 5))
	limit := 800
	for it := 0; it < limit; it++ {
		var s [4]int
		for i := range s {
		again:
			s[i] = rnd.IntN(n)
			for j := range i {
				if s[j] == s[i] {
					goto again
				}
			}
		}
		var src, dst [4][2]float64
		for i, k := range s {
			p := &r.pairs[k]
			src[i], dst[i] = [2]float64{p.ax, p.ay}, [2]float64{p.bx, p.by}
		}
		m, ok := fourPoints(src, dst)
		if !ok || !sane(&m) {
			continue
		}
		c := 0
		for i := range r.pairs {
			p := &r.pairs[i]
			w := m[6]*p.ax + m[7]*p.ay + 1
			dx := (m[0]*p.ax+m[1]*p.ay+m[2])/w - p.bx
			dy := (m[3]*p.ax+m[4]*p.ay+m[5])/w - p.by
			if dx*dx+dy*dy < 9 {
				c++
			}
		}
		if c > bestN {
			best, bestN = m, c
			// enough draws to have met four good pairs with 99.9 %
			q := float64(c) / float64(n)
			if k := math.Log(1e-3) / math.Log(1-q*q*q*q+1e-12); k < float64(limit) {
				limit = max(it+1, int(k)+20)
			}
		}
	}
	return best, bestN
}

// sane refuses maps that no hand-held second picture gives.
func sane(m *Map) bool {
	d := m[0]*m[4] - m[1]*m[3]
	return d > 0.3 && d < 3 && math.Abs(m[6]) < 2e-3 && math.Abs(m[7]) < 2e-3
}

// fourPoints solves the homography through four pairs.
func fourPoints(src, dst [4][2]float64) (Map, bool) {
	var a [8][9]float64
	for i := range 4 {
		x, y, u, v := src[i][0], src[i][1], dst[i][0], dst[i][1]
		a[2*i] = [9]float64{x, y, 1, 0, 0, 0, -u * x, -u * y, u}
		a[2*i+1] = [9]float64{0, 0, 0, x, y, 1, -v * x, -v * y, v}
	}
	return solve8(&a)
}

// solve8 is Gauss-Jordan elimination with pivoting.
func solve8(a *[8][9]float64) (Map, bool) {
	for c := range 8 {
		p := c
		for r := c + 1; r < 8; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		if math.Abs(a[p][c]) < 1e-9 {
			return Map{}, false
		}
		a[c], a[p] = a[p], a[c]
		for r := range 8 {
			if r == c {
				continue
			}
			if f := a[r][c] / a[c][c]; f != 0 {
				for k := c; k < 9; k++ {
					a[r][k] -= f * a[c][k]
				}
			}
		}
	}
	m := Map{8: 1}
	for i := range 8 {
		m[i] = a[i][8] / a[i][i]
	}
	return m, true
}

// refine fits the map to all pairs within a shrinking distance by least squares and returns it with their number and median distance.
func refine(pairs []pair, m Map) (Map, int, float64, bool) {
	var dist []float64
	for pass := range 4 {
		tol := [...]float64{4, 2.5, 2, 2}[pass]
		var a [8][9]float64
		n := 0
		dist = dist[:0]
		const k = 1.0 / 300 // keeps the numbers of the system alike
		for i := range pairs {
			p := &pairs[i]
			x, y := m.Apply(p.ax, p.ay)
			d := math.Hypot(x-p.bx, y-p.by)
			p.in = d < tol
			if !p.in {
				continue
			}
			n++
			dist = append(dist, d)
			w := 1 / (1 + d*d)
			ax, ay, bx, by := p.ax*k-1, p.ay*k-1, p.bx*k-1, p.by*k-1
			for _, row := range [2][9]float64{{ax, ay, 1, 0, 0, 0, -bx * ax, -bx * ay, bx}, {0, 0, 0, ax, ay, 1, -by * ax, -by * ay, by}} {
				for r := range 8 {
					for c := range 9 {
						a[r][c] += w * row[r] * row[c]
					}
				}
			}
		}
		if n < 8 {
			return m, 0, 0, false
		}
		u, ok := solve8(&a)
		if !ok {
			return m, 0, 0, false
		}
		T := Map{k, 0, -1, 0, k, -1, 0, 0, 1}
		I := Map{1 / k, 0, 1 / k, 0, 1 / k, 1 / k, 0, 0, 1}
		m = mulMap(I, mulMap(u, T))
		if !sane(&m) {
			return m, 0, 0, false
		}
	}
	n := len(dist)
	return m, n, median(dist), true
}
