package camera

import "math"

// A strip is one row of the picture straightened: the digits are unit pixels high in it and stand upright.
const (
	unitH   = 32                   // digit height in a strip
	marginV = 13                   // rows above and below
	stripH  = unitH + 2*marginV    // rows of a strip
	marginU = 70                   // columns to the left and right of the row found
	stripW  = 12*unitH + 2*marginU // widest strip
)

// strip holds one straightened row and all that is computed from it; its memory is reused.
type strip struct {
	net           *net
	pale          bool // beside the number there is a digit too pale to be lit and too dark to be unlit
	w             int
	pix, bg       []byte // brightness with dark digits, background
	tmp, work     []byte
	raw           []float32 // ink before the slant is undone
	ink           []float32 // contrast against the local background, 1 on a lit segment
	patches       patcher
	sum           []float64 // integral of ink, (w+1) by (stripH+1)
	level         float64   // grey levels that count as 1
	shear         float64   // columns per row that were undone
	top, h        float64   // upper edge and height of the digits in the strip
	lo, hi        int       // columns of the row found
	from          line
	width, height float64 // of the whole picture
}

// cut samples the row l out of the pyramid and turns it so that digits are dark on light.
func (s *strip) cut(pyr []grey, scale0 float64, l line) {
	s.from = l
	s.width, s.height = float64(pyr[0].w)*scale0, float64(pyr[0].h)*scale0
	h := (l.h0 + l.h1) / 2
	length := math.Hypot(l.x1-l.x0, l.y1-l.y0)
	s.w = min(stripW, int(length/h*unitH)+2*marginU)
	s.lo, s.hi = marginU, s.w-marginU
	if cap(s.pix) < stripW*stripH {
		n := stripW * stripH
		s.pix, s.bg, s.tmp, s.work = make([]byte, n), make([]byte, n), make([]byte, n), make([]byte, max(n, 4096))
		s.raw, s.ink = make([]float32, n), make([]float32, n)
		s.sum = make([]float64, (stripW+1)*(stripH+1))
	}
	n := s.w * stripH
	s.pix, s.bg, s.tmp, s.raw, s.ink = s.pix[:n], s.bg[:n], s.tmp[:n], s.raw[:n], s.ink[:n]
	lev := 0
	for lev+1 < len(pyr) && h/scale0/float64(int(2)<<lev) >= unitH {
		lev++
	}
	g := &pyr[lev]
	k := 1 / (scale0 * float64(int(1)<<lev))
	const off = -0.5 // pixel centres
	for u := range s.w {
		x, y, dx, dy := s.axis(float64(u) + 0.5)
		t := 0.5 - marginV - unitH/2
		x, y, dx, dy = (x+dx*t)*k+off, (y+dy*t)*k+off, dx*k, dy*k
		for v := range stripH {
			p := g.at(x, y)
			if l.light {
				p = 255 - p
			}
			s.tmp[v*s.w+u] = byte(p + 0.5)
			x, y = x+dx, y+dy
		}
	}
	smooth(s.tmp, s.pix, s.w, stripH)
}

// axis returns the picture point under column u of the middle line, and the step down one row.
func (s *strip) axis(u float64) (x, y, dx, dy float64) {
	l := &s.from
	length := math.Hypot(l.x1-l.x0, l.y1-l.y0)
	ex, ey := (l.x1-l.x0)/length, (l.y1-l.y0)/length
	h := (l.h0 + l.h1) / 2
	d := (u - float64(marginU)) / unitH * h
	t := d / length
	x, y = l.x0+ex*d, l.y0+ey*d
	hu := math.Max(0.5*h, math.Min(2*h, l.h0+(l.h1-l.h0)*t)) / unitH
	return x, y, -ey * hu, ex * hu
}

// back returns the picture point under column u, row v of the sheared strip.
func (s *strip) back(u, v float64) (x, y float64) {
	u += s.shear * (stripH/2 - v)
	x, y, dx, dy := s.axis(u)
	t := v - marginV - unitH/2
	return x + dx*t, y + dy*t
}

// smooth is a 3 by 3 binomial filter.
func smooth(in, out []byte, w, h int) {
	for y := range h {
		a := in[max(0, y-1)*w:][:w]
		b := in[y*w:][:w]
		c := in[min(h-1, y+1)*w:][:w]
		o := out[y*w:][:w]
		prev := int(a[0]) + 2*int(b[0]) + int(c[0])
		cur := prev
		for x := range o {
			next := cur
			if x+1 < w {
				next = int(a[x+1]) + 2*int(b[x+1]) + int(c[x+1])
			}
			o[x] = byte((prev + 2*cur + next + 8) >> 4)
			prev, cur = cur, next
		}
	}
}

// inkOf computes the contrast of every pixel against its local background, and the level that counts as lit.
func (s *strip) inkOf(fine bool) bool {
	s.background(fine)
	var hist [256]int
	n := 0
	for y := range stripH {
		for x := range s.w {
			i := y*s.w + x
			d := int(s.bg[i]) - int(s.pix[i])
			if d < 0 {
				d = 0
			}
			s.raw[i] = float32(d)
			if y >= marginV && y < marginV+unitH && x >= s.lo && x < s.hi {
				hist[d]++
				n++
			}
		}
	}
	// strokes cover a tenth to a half of the row: the 93rd percentile lies well inside them
	c, want := 0, n-n*7/100
	for d, k := range hist {
		if c += k; c >= want {
			s.level = float64(d)
			break
		}
	}
	return s.level >= 4
}

// background is a closing of the strip with a square no stroke fills: it is never darker than the strip, and as bright as
// what is around the strokes. It works on a grid of two by two pixels, which is four times as fast; a single digit cut out
// to its very edge needs each pixel.
func (s *strip) background(fine bool) {
	if fine {
		coarse, tmp := s.work[:len(s.pix)], s.tmp[:len(s.pix)]
		for i, v := range s.pix {
			coarse[i] = ^v
		}
		spread(coarse, tmp, s.w, stripH, closing)
		flip(coarse)
		spread(coarse, tmp, s.w, stripH, closing)
		copy(s.bg, coarse)
		return
	}
	const hh = stripH / 2
	hw := (s.w + 1) / 2
	coarse, tmp := s.work[:hw*hh], s.tmp[:hw*hh]
	for y := range hh {
		a, b := s.pix[2*y*s.w:(2*y+1)*s.w], s.pix[(2*y+1)*s.w:(2*y+2)*s.w]
		out := coarse[y*hw : (y+1)*hw]
		for x := range s.w / 2 {
			out[x] = ^max(max(a[2*x], a[2*x+1]), max(b[2*x], b[2*x+1]))
		}
		if s.w%2 == 1 {
			out[hw-1] = ^max(a[s.w-1], b[s.w-1])
		}
	}
	spread(coarse, tmp, hw, hh, closing/2)
	flip(coarse)
	spread(coarse, tmp, hw, hh, closing/2)
	for y := range stripH {
		in, out := coarse[y/2*hw:(y/2+1)*hw], s.bg[y*s.w:(y+1)*s.w]
		for x := range out {
			out[x] = in[x/2]
		}
	}
}

const closing = 11 // half the side of the square

// spread replaces every pixel by the least within r of it on either axis.
func spread(pix, tmp []byte, w, h, r int) {
	for y := range h {
		in, out := pix[y*w:(y+1)*w], tmp[y*w:(y+1)*w]
		copy(out, in)
		for d := 1; d <= r && d < w; d++ {
			for x, v := range in[d:] {
				out[x] = min(out[x], v)
			}
			for x, v := range in[:w-d] {
				out[x+d] = min(out[x+d], v)
			}
		}
	}
	for y := range h {
		out := pix[y*w : (y+1)*w]
		lo, hi := max(0, y-r), min(h-1, y+r)
		copy(out, tmp[lo*w:(lo+1)*w])
		for j := lo + 1; j <= hi; j++ {
			for x, v := range tmp[j*w : (j+1)*w] {
				out[x] = min(out[x], v)
			}
		}
	}
}

// straighten finds the slant whose undoing makes upright strokes stand out most in the column sums.
func (s *strip) straighten() {
	best, bestE := 0.0, -1.0
	var col [stripW + 2*stripH]float64
	try := func(k float64) {
		c := col[:s.w+2*stripH]
		clear(c)
		for v := marginV; v < marginV+unitH; v++ {
			d := k * (float64(v) + 0.5 - stripH/2)
			o := int(math.Floor(d)) + stripH
			f := d + stripH - float64(o)
			row := s.raw[v*s.w : (v+1)*s.w]
			for x := max(0, s.lo-12); x < min(s.w, s.hi+12); x++ {
				t := float64(row[x])
				c[x+o] += t * (1 - f)
				c[x+o+1] += t * f
			}
		}
		e := 0.0
		for _, t := range c {
			e += t * t
		}
		if e > bestE {
			best, bestE = k, e
		}
	}
	for d := -8.0; d <= 20; d += 2.5 {
		try(math.Tan(d * math.Pi / 180))
	}
	coarse := best
	for _, d := range [...]float64{-0.022, 0.022} {
		try(coarse + d)
	}
	s.shear = best
	// an upright stroke leans to the right at its top: row v moves by shear*(v-middle)
	inv := float32(1 / s.level)
	for v := range stripH {
		d := s.shear * (float64(v) + 0.5 - stripH/2)
		for x := range s.w {
			t := float64(x) - d
			i := int(math.Floor(t))
			f := float32(t - float64(i))
			var a, b float32
			if i >= 0 && i < s.w {
				a = s.raw[v*s.w+i]
			}
			if i+1 >= 0 && i+1 < s.w {
				b = s.raw[v*s.w+i+1]
			}
			s.ink[v*s.w+x] = min(1.25, (a*(1-f)+b*f)*inv)
		}
	}
}

// extents finds the upper and lower edge of the digits from the row sums.
func (s *strip) extents() {
	var p [stripH]float64
	peak := 0.0
	for v := range p {
		for _, t := range s.ink[v*s.w+s.lo : v*s.w+s.hi] {
			p[v] += float64(t)
		}
	}
	mean := 0.0
	for v := marginV + 6; v < marginV+unitH-6; v++ {
		mean += p[v] / (unitH - 12)
		peak = math.Max(peak, p[v])
	}
	edge := func(from, step int) float64 {
		// walk outwards from inside the digits to where the row sum falls below half the mean
		for v := from; v > 0 && v < stripH-1; v += step {
			if p[v] < 0.45*mean && p[v+step] < 0.45*mean {
				a, b := p[v-step], p[v]
				f := 0.0
				if a > b {
					f = (a - 0.45*mean) / (a - b)
				}
				return float64(v-step) + 0.5 + f*float64(step)
			}
		}
		return -1
	}
	t, b := edge(marginV+8, -1), edge(marginV+unitH-9, 1)
	s.top, s.h = marginV, unitH
	if t >= 0 && b >= 0 && b-t > 0.7*unitH {
		s.top, s.h = t, b-t
	}
}

// integrate prepares box sums of the ink.
func (s *strip) integrate() {
	w := s.w + 1
	s.sum = s.sum[:w*(stripH+1)]
	clear(s.sum[:w])
	for v := range stripH {
		acc := 0.0
		s.sum[(v+1)*w] = 0
		for x := range s.w {
			acc += float64(s.ink[v*s.w+x])
			s.sum[(v+1)*w+x+1] = s.sum[v*w+x+1] + acc
		}
	}
}

// box is the mean ink between columns x0..x1 and rows y0..y1 (rounded to whole pixels, at least one).
func (s *strip) box(x0, y0, x1, y1 float64) float64 {
	a, b := int(x0+0.5), int(y0+0.5)
	c, d := int(x1+0.5), int(y1+0.5)
	if c <= a {
		c = a + 1
	}
	if d <= b {
		d = b + 1
	}
	if a < 0 {
		a = 0
	}
	if b < 0 {
		b = 0
	}
	if c > s.w {
		c = s.w
	}
	if d > stripH {
		d = stripH
	}
	if a >= c || b >= d {
		return 0
	}
	w := s.w + 1
	return (s.sum[d*w+c] - s.sum[b*w+c] - s.sum[d*w+a] + s.sum[b*w+a]) / float64((c-a)*(d-b))
}

// grown tells whether the grid reaches outside the row that was cut, or fills too little of it to be seen well.
func (s *strip) grown(g *grid) bool {
	first, last := g.x[0], g.x[len(g.x)-1]+g.w
	return first < float64(s.lo)-0.35*unitH || last > float64(s.hi)+0.35*unitH || math.Abs(s.h-unitH) > 5 || math.Abs(s.top-marginV) > 4
}

// around is the row that just holds the grid's cells.
func (s *strip) around(g *grid) line {
	l := s.from
	at := func(u float64) (x, y, h float64) {
		x0, y0 := s.back(u, s.top)
		x1, y1 := s.back(u, s.top+s.h)
		// the middle line of the digits at this column, without their slant
		ax, ay, dx, dy := s.axis(u)
		t := s.top + s.h/2 - marginV - unitH/2
		return ax + dx*t, ay + dy*t, math.Abs((y1-y0)*dy+(x1-x0)*dx) / math.Hypot(dx, dy)
	}
	l.x0, l.y0, l.h0 = at(g.x[0])
	l.x1, l.y1, l.h1 = at(g.x[len(g.x)-1] + g.w)
	return l
}

// outside overwrites what lies beyond the picture when the row is all of it: the brightness with 255, so that the border
// throws no shadow into the background, the ink with 0.
func (s *strip) outside(v byte) {
	edge := float64(unitH) / 0.85 / 2
	up, down := marginV+unitH/2-int(edge), marginV+unitH/2+int(edge)
	for y := range stripH {
		for x := range s.w {
			if x >= s.lo && x < s.hi && y >= up && y < down {
				continue
			}
			if v > 0 {
				s.pix[y*s.w+x] = v
			} else {
				s.raw[y*s.w+x] = 0
			}
		}
	}
}

// flip turns dark into light.
func flip(pix []byte) {
	for i, v := range pix {
		pix[i] = ^v
	}
}
