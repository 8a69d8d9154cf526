package ocr

import (
	"math"
	"slices"
)

// Finder finds rows of digits.
type Finder struct {
	run   *Runner
	bytes []byte
	cells []cell
	used  []bool
}

// newFinder makes a finder of a network whose outputs are, for every cell of 8 by 8 pixels: how likely a row runs through it (log odds), how far
// below it the row's middle line is (in 16 pixels), the row's height (log2, in 16 pixels), the sine of its slope, and how far its ends are to
// the left and to the right (in 64 pixels).
func newFinder(n *Net) *Finder {
	return &Finder{run: newRunner(n), bytes: make([]byte, FindW*FindH*Colours)}
}

// cell is what one cell says about the row that runs through it.
type cell struct {
	p           float64
	x, y        float64 // on the middle line
	sin, h      float64
	left, right float64
}

const (
	seedP   = 0.5  // of the cell that a row is begun with
	memberP = 0.3  // of a cell that takes part
	leastP  = 0.35 // of a row, mean of its best cells
)

// Lines lists the rows in a part of the picture, the surest first.
func (f *Finder) Lines(p *Picture, v View) []Line {
	p.Find(v, f.bytes)
	normalAll(f.bytes, f.run.Input())
	out, h, w, c := f.run.Run()
	f.cells = f.cells[:0]
	for y := range h {
		for x := range w {
			o := out[(y*w+x)*c:][:6]
			q := sigmoid(float64(o[0]))
			if q < memberP {
				continue
			}
			s := math.Max(-0.8, math.Min(0.8, float64(o[3])))
			k := cell{p: q, sin: s, h: 16 * math.Exp2(math.Max(-3, math.Min(4, float64(o[2])))), left: 64 * float64(o[4]), right: 64 * float64(o[5])}
			cos := math.Sqrt(1 - s*s)
			k.x, k.y = float64(x)*8+4-s*16*float64(o[1]), float64(y)*8+4+cos*16*float64(o[1])
			f.cells = append(f.cells, k)
		}
	}
	slices.SortStableFunc(f.cells, func(a, b cell) int {
		switch {
		case a.p > b.p:
			return -1
		case a.p < b.p:
			return 1
		}
		return 0
	})
	if cap(f.used) < len(f.cells) {
		f.used = make([]bool, len(f.cells))
	}
	f.used = f.used[:len(f.cells)]
	clear(f.used)
	var lines []Line
	for i := range f.cells {
		if f.used[i] || f.cells[i].p < seedP {
			continue
		}
		l := f.gather(i)
		if l.P < leastP {
			continue
		}
		l.X0, l.Y0, l.X1, l.Y1, l.H = v.X+l.X0*v.Scale, v.Y+l.Y0*v.Scale, v.X+l.X1*v.Scale, v.Y+l.Y1*v.Scale, l.H*v.Scale
		lines = append(lines, l)
	}
	return lines
}

// gather joins the cells that mean the same row as cell i.
func (f *Finder) gather(i int) Line {
	s := f.cells[i]
	var members []int
	for pass := range 2 {
		cos := math.Sqrt(1 - s.sin*s.sin)
		members = members[:0]
		var w, sin, h, x, y float64
		for j := range f.cells {
			c := &f.cells[j]
			if f.used[j] || math.Abs(math.Log2(c.h/s.h)) > 0.5 || math.Abs(c.sin-s.sin) > 0.3 {
				continue
			}
			dx, dy := c.x-s.x, c.y-s.y
			along, off := dx*cos+dy*s.sin, -dx*s.sin+dy*cos
			if math.Abs(off) > 0.4*s.h+0.06*math.Abs(along) || along < -s.left-0.8*s.h || along > s.right+0.8*s.h {
				continue
			}
			members = append(members, j)
			w, sin, h, x, y = w+c.p, sin+c.p*c.sin, h+c.p*math.Log(c.h), x+c.p*c.x, y+c.p*c.y
		}
		if pass == 0 && w > 0 {
			sin /= w
			nx, ny := x/w, y/w
			cos = math.Sqrt(1 - sin*sin)
			d := (nx-s.x)*cos + (ny-s.y)*sin
			s = cell{p: s.p, x: nx, y: ny, sin: sin, h: math.Exp(h / w), left: s.left + d, right: s.right - d}
		} else if w > 0 {
			s.x, s.y, s.sin, s.h = x/w, y/w, sin/w, math.Exp(h/w)
		}
	}
	cos := math.Sqrt(1 - s.sin*s.sin)
	var lo, wl, hi, wh, slope, ws float64
	best := [3]float64{}
	for _, j := range members {
		c := &f.cells[j]
		f.used[j] = true
		a := (c.x-s.x)*cos + (c.y-s.y)*s.sin
		o := -(c.x-s.x)*s.sin + (c.y-s.y)*cos
		k := c.p / (1 + math.Pow(c.left/s.h, 2))
		lo, wl = lo+k*(a-c.left), wl+k
		k = c.p / (1 + math.Pow(c.right/s.h, 2))
		hi, wh = hi+k*(a+c.right), wh+k
		slope, ws = slope+c.p*a*o, ws+c.p*a*a
		if c.p > best[2] {
			best[2] = c.p
			slices.SortFunc(best[:], func(a, b float64) int {
				if a > b {
					return -1
				}
				return 1
			})
		}
	}
	if len(members) == 0 || wl == 0 || wh == 0 {
		f.used[i] = true
		return Line{}
	}
	lo, hi = lo/wl, hi/wh
	// the places of the cells say more about the slope of a long row than what they say about it
	if ws > 0 && hi-lo > 2*s.h {
		k := slope / (ws + 20*s.h*s.h)
		s.sin = math.Max(-0.9, math.Min(0.9, s.sin+k*cos))
		cos = math.Sqrt(1 - s.sin*s.sin)
	}
	if hi-lo < 0.3*s.h {
		m := (lo + hi) / 2
		lo, hi = m-0.15*s.h, m+0.15*s.h
	}
	n := float64(min(3, len(members)))
	return Line{X0: s.x + cos*lo, Y0: s.y + s.sin*lo, X1: s.x + cos*hi, Y1: s.y + s.sin*hi, H: s.h, P: (best[0] + best[1] + best[2]) / math.Max(2, n)}
}

func sigmoid(x float64) float64 { return 1 / (1 + math.Exp(-x)) }
