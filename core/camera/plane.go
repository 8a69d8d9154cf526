// Package camera turns pictures into findings: the number on a meter's display, the code of a blinking light, a wire
// that is not where it was. Planes go in, findings come out; nothing here decodes files, draws on a screen or asks
// for the time. Every finding is right, or says why it cannot tell in words that can be spoken; none of them is ever
// proof that something is safe to touch.
package camera

import (
	"errors"
	"fmt"
	"math"
)

// Plane is one picture as the shells hand it over: brightness, and colour where the job needs it.
type Plane struct {
	Y      []byte // brightness, 0 black to 255 white; row r starts at r*Stride
	W, H   int    // pixels
	Stride int    // bytes from one row to the next, at least W

	Cb, Cr  []byte // colour as in JPEG (full range BT.601), both or none
	CStride int    // bytes from one colour row to the next
	Sub     int    // colour sub-sampling in both directions: 1 or 2

	Time     int64   // ns on a steady clock
	Exposure float64 // seconds; 0 when not known
}

// maxPixels bounds what one picture may cost: larger ones must be handed over reduced.
const maxPixels = 16 << 20

// Errors that Check wraps.
var (
	ErrSize     = errors.New("camera: picture size")
	ErrStride   = errors.New("camera: row stride")
	ErrShort    = errors.New("camera: length of the picture data")
	ErrExposure = errors.New("camera: exposure")
	ErrTime     = errors.New("camera: time stamp")
	ErrColour   = errors.New("camera: colour planes")
)

// Check tells whether the picture can be used. The error says which number is wrong and why.
func (p *Plane) Check() error {
	if p == nil {
		return fmt.Errorf("%w: no picture", ErrSize)
	}
	if p.W < 1 || p.H < 1 {
		return fmt.Errorf("%w: %d by %d, want at least 1 by 1", ErrSize, p.W, p.H)
	}
	if p.W > maxPixels || p.H > maxPixels || p.W*p.H > maxPixels {
		return fmt.Errorf("%w: %d by %d has more than %d pixels, hand it over reduced", ErrSize, p.W, p.H, maxPixels)
	}
	if err := checkRows(p.Y, p.W, p.H, p.Stride, "brightness"); err != nil {
		return err
	}
	if p.Time < 0 {
		return fmt.Errorf("%w: %d ns is negative", ErrTime, p.Time)
	}
	if math.IsNaN(p.Exposure) || p.Exposure < 0 || p.Exposure > 60 {
		return fmt.Errorf("%w: %v s, want 0 to 60", ErrExposure, p.Exposure)
	}
	if p.Cb == nil && p.Cr == nil {
		return nil
	}
	if p.Cb == nil || p.Cr == nil {
		return fmt.Errorf("%w: only one of the two", ErrColour)
	}
	if p.Sub != 1 && p.Sub != 2 {
		return fmt.Errorf("%w: sub-sampling %d, want 1 or 2", ErrColour, p.Sub)
	}
	cw, ch := (p.W+p.Sub-1)/p.Sub, (p.H+p.Sub-1)/p.Sub
	if err := checkRows(p.Cb, cw, ch, p.CStride, "Cb"); err != nil {
		return err
	}
	return checkRows(p.Cr, cw, ch, p.CStride, "Cr")
}

// Packed is a picture whose rows lie one after another without padding, and which shares its memory: brightness, and where it has colour Cb and
// Cr behind it, at half the size in both directions, rounded up (I420).
func Packed(pix []byte, w, h int, colour bool) (Plane, error) {
	if w < 1 || h < 1 || w > len(pix) || h > len(pix) {
		return Plane{}, fmt.Errorf("%w: %d by %d in %d bytes", ErrSize, w, h, len(pix))
	}
	p := Plane{Y: pix, W: w, H: h, Stride: w}
	size, cw := w*h, (w+1)/2
	tint, want := cw*((h+1)/2), size
	if colour {
		want += 2 * tint
	}
	if len(pix) != want {
		return Plane{}, fmt.Errorf("%w: %d bytes of picture, want %d", ErrShort, len(pix), want)
	}
	if colour {
		p.Y, p.Cb, p.Cr, p.CStride, p.Sub = pix[:size:size], pix[size:size+tint], pix[size+tint:], cw, 2
	}
	return p, nil
}

func checkRows(pix []byte, w, h, stride int, name string) error {
	if stride < w {
		return fmt.Errorf("%w: %s stride %d is less than the width %d", ErrStride, name, stride, w)
	}
	if stride > math.MaxInt/h {
		return fmt.Errorf("%w: %s stride %d is absurd", ErrStride, name, stride)
	}
	if need := stride*(h-1) + w; len(pix) < need {
		return fmt.Errorf("%w: %s has %d bytes, want %d", ErrShort, name, len(pix), need)
	}
	return nil
}

// Upright turns and mirrors a picture as Exif numbers it, 1 to 8; 1 and every other number leave it as it is. Its colour must not be sub-sampled.
func (p *Plane) Upright(turn int) *Plane {
	if turn < 2 || turn > 8 || p.Colour() && p.Sub != 1 {
		return p
	}
	q := *p
	if turn >= 5 {
		q.W, q.H = p.H, p.W
	}
	q.Stride = q.W
	of := func(pix []byte, stride int) []byte {
		out := make([]byte, q.W*q.H)
		for y := range q.H {
			for x := range q.W {
				u, v := x, y // where the pixel lies in p
				if turn >= 5 {
					u, v = y, x
				}
				switch turn {
				case 2, 7, 3, 8:
					u = p.W - 1 - u
				}
				switch turn {
				case 3, 4, 6, 7:
					v = p.H - 1 - v
				}
				out[y*q.W+x] = pix[v*stride+u]
			}
		}
		return out
	}
	q.Y = of(p.Y, p.Stride)
	if p.Colour() {
		q.Cb, q.Cr, q.CStride = of(p.Cb, p.CStride), of(p.Cr, p.CStride), q.W
	}
	return &q
}

// Colour tells whether the picture carries colour.
func (p *Plane) Colour() bool { return p.Cb != nil }

// RGB returns one pixel's colour, 0 to 255 each, grey when the picture has none. x and y must be inside.
func (p *Plane) RGB(x, y int) (r, g, b float64) {
	l := float64(p.Y[y*p.Stride+x])
	if p.Cb == nil {
		return l, l, l
	}
	i := y/p.Sub*p.CStride + x/p.Sub
	cb, cr := float64(p.Cb[i])-128, float64(p.Cr[i])-128
	return clamp255(l + 1.402*cr), clamp255(l - 0.344136*cb - 0.714136*cr), clamp255(l + 1.772*cb)
}

func clamp255(x float64) float64 { return math.Max(0, math.Min(255, x)) }

// grey is a packed picture inside the package.
type grey struct {
	pix  []byte
	w, h int
}

// size makes g hold w by h pixels, keeping its memory when that is large enough.
func (g *grey) size(w, h int) {
	g.w, g.h = w, h
	if cap(g.pix) < w*h {
		g.pix = make([]byte, w*h)
	}
	g.pix = g.pix[:w*h]
}

// reduce fills g with p averaged over f by f blocks.
func (g *grey) reduce(p *Plane, f int) {
	g.size(max(1, p.W/f), max(1, p.H/f))
	if f == 1 {
		for y := range g.h {
			copy(g.pix[y*g.w:(y+1)*g.w], p.Y[y*p.Stride:])
		}
		return
	}
	bw, bh := min(f, p.W), min(f, p.H)
	for y := range g.h {
		for x := range g.w {
			s := 0
			for j := range bh {
				row := p.Y[(y*f+j)*p.Stride+x*f:]
				for _, v := range row[:bw] {
					s += int(v)
				}
			}
			g.pix[y*g.w+x] = byte((s + bw*bh/2) / (bw * bh))
		}
	}
}

// Reduced is p averaged over f by f blocks, f at least 1, with its colour at half that size.
func (p *Plane) Reduced(f int) *Plane {
	var g grey
	g.reduce(p, f)
	r := &Plane{W: g.w, H: g.h, Stride: g.w, Time: p.Time, Exposure: p.Exposure, Y: g.pix}
	if p.Colour() {
		of := func(pix []byte) []byte {
			var c grey
			c.reduce(&Plane{Y: pix, W: (p.W + p.Sub - 1) / p.Sub, H: (p.H + p.Sub - 1) / p.Sub, Stride: p.CStride}, max(1, 2*f/p.Sub))
			out := make([]byte, ((r.W+1)/2)*((r.H+1)/2))
			for i := range out { // a block that is not whole at the edge lacks its colour: the next one's will do
				x, y := i%((r.W+1)/2), i/((r.W+1)/2)
				out[i] = c.pix[min(y, c.h-1)*c.w+min(x, c.w-1)]
			}
			return out
		}
		r.Cb, r.Cr, r.CStride, r.Sub = of(p.Cb), of(p.Cr), (r.W+1)/2, 2
	}
	return r
}

// reduceBrightest fills g with the largest of the red, green and blue of p, averaged over f by f blocks.
func (g *grey) reduceBrightest(p *Plane, f int) {
	g.size(max(1, p.W/f), max(1, p.H/f))
	bw, bh := min(f, p.W), min(f, p.H)
	for y := range g.h {
		for x := range g.w {
			s := 0.0
			for j := range bh {
				for i := range bw {
					r, gr, b := p.RGB(x*f+i, y*f+j)
					s += math.Max(r, math.Max(gr, b))
				}
			}
			g.pix[y*g.w+x] = byte(s/float64(bw*bh) + 0.5)
		}
	}
}

// half fills g with s at half size, each pixel the mean of four.
func (g *grey) half(s *grey) {
	g.size(max(1, s.w/2), max(1, s.h/2))
	if s.w < 2 || s.h < 2 {
		for i := range g.pix {
			g.pix[i] = s.pix[i]
		}
		return
	}
	for y := range g.h {
		a := s.pix[2*y*s.w : 2*y*s.w+2*g.w]
		b := s.pix[(2*y+1)*s.w : (2*y+1)*s.w+2*g.w]
		out := g.pix[y*g.w : (y+1)*g.w]
		for x := range out {
			out[x] = byte((int(a[2*x]) + int(a[2*x+1]) + int(b[2*x]) + int(b[2*x+1]) + 2) >> 2)
		}
	}
}

// at samples g between pixels (bilinear), repeating the border outside.
func (g *grey) at(x, y float64) float64 {
	x0, y0 := int(x), int(y)
	if x < 0 || y < 0 || x0 >= g.w-1 || y0 >= g.h-1 {
		x = math.Max(0, math.Min(float64(g.w-1), x))
		y = math.Max(0, math.Min(float64(g.h-1), y))
		x0, y0 = int(x), int(y)
		fx, fy := x-float64(x0), y-float64(y0)
		x1, y1 := min(x0+1, g.w-1), min(y0+1, g.h-1)
		a := float64(g.pix[y0*g.w+x0])*(1-fx) + float64(g.pix[y0*g.w+x1])*fx
		b := float64(g.pix[y1*g.w+x0])*(1-fx) + float64(g.pix[y1*g.w+x1])*fx
		return a*(1-fy) + b*fy
	}
	fx, fy := x-float64(x0), y-float64(y0)
	p := g.pix[y0*g.w+x0:]
	q := p[g.w : g.w+2]
	a := float64(p[0]) + (float64(p[1])-float64(p[0]))*fx
	b := float64(q[0]) + (float64(q[1])-float64(q[0]))*fx
	return a + (b-a)*fy
}
