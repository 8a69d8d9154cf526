// Package ocr finds rows of digits in pictures and reads them with two small convolutional networks. Their weights come from the
// recipe in core/lab/trainreader; what runs here is plain Go, checked against the framework that trained them.
package ocr

import "math"

// Planes is a picture as in JPEG: brightness, and colour where it has some.
type Planes struct {
	Y          []byte
	W, H       int
	Stride     int
	Cb, Cr     []byte // both or none
	CStride    int
	Sub        int // 1 or 2: how much smaller the colour planes are in both directions
	cbrW, cbrH int
}

// Sizes of what the networks see.
const (
	FindW, FindH = 320, 240 // the whole picture, made smaller and put into the middle
	RowW, RowH   = 240, 40  // one row, straightened
	DigitH       = 24       // height of its digits
	leadX        = 30       // where its first mark begins
	Colours      = 3        // brightness, blue and red difference
)

type level struct {
	pix  []byte
	w, h int
}

func (l *level) size(w, h int) {
	l.w, l.h = w, h
	if cap(l.pix) < w*h {
		l.pix = make([]byte, w*h)
	}
	l.pix = l.pix[:w*h]
}

func (l *level) half(s *level) {
	l.size(max(1, s.w/2), max(1, s.h/2))
	if s.w < 2 || s.h < 2 {
		for i := range l.pix {
			l.pix[i] = s.pix[i]
		}
		return
	}
	for y := range l.h {
		a := s.pix[2*y*s.w:][:2*l.w]
		b := s.pix[(2*y+1)*s.w:][:2*l.w]
		out := l.pix[y*l.w:][:l.w]
		for x := range out {
			out[x] = byte((int(a[2*x]) + int(a[2*x+1]) + int(b[2*x]) + int(b[2*x+1]) + 2) >> 2)
		}
	}
}

func (l *level) at(x, y float32) float32 {
	x, y = max(0, min(float32(l.w-1)-0.001, x)), max(0, min(float32(l.h-1)-0.001, y))
	i, j := int(x), int(y)
	fx, fy := x-float32(i), y-float32(j)
	i1, j1 := min(i+1, l.w-1), min(j+1, l.h-1)
	a, b := l.pix[j*l.w:], l.pix[j1*l.w:]
	u := float32(a[i]) + float32((float32(a[i1])-float32(a[i]))*fx)
	v := float32(b[i]) + float32((float32(b[i1])-float32(b[i]))*fx)
	return u + float32((v-u)*fy)
}

// Picture is a picture at all sizes that the networks look at; its memory is kept from one to the next.
type Picture struct {
	levels [3][7]level // brightness, blue difference, red difference; each at half the size of the one before
	n      [3]int
	sub    float64 // size of a pixel of the first colour level, in pixels of the first brightness level
	scale  float64 // picture pixels in one pixel of the first level
	W, H   int
}

// Set takes the picture in; what is larger than about 1400 pixels is averaged first.
func (p *Picture) Set(s *Planes) {
	f := 1
	for max(s.W, s.H)/f > 1400 {
		f++
	}
	p.W, p.H, p.scale = s.W, s.H, float64(f)
	reduce(&p.levels[0][0], s.Y, s.W, s.H, s.Stride, f)
	p.n = [3]int{1, 0, 0}
	if s.Cb != nil {
		cw, ch := (s.W+s.Sub-1)/s.Sub, (s.H+s.Sub-1)/s.Sub
		g := max(1, f/s.Sub)
		p.sub = float64(g*s.Sub) / float64(f)
		reduce(&p.levels[1][0], s.Cb, cw, ch, s.CStride, g)
		reduce(&p.levels[2][0], s.Cr, cw, ch, s.CStride, g)
		p.n[1], p.n[2] = 1, 1
	}
	for c := range p.levels {
		for p.n[c] > 0 && p.n[c] < len(p.levels[c]) && min(p.levels[c][p.n[c]-1].w, p.levels[c][p.n[c]-1].h) >= 24 {
			p.levels[c][p.n[c]].half(&p.levels[c][p.n[c]-1])
			p.n[c]++
		}
	}
}

func reduce(l *level, pix []byte, w, h, stride, f int) {
	l.size(max(1, w/f), max(1, h/f))
	if f == 1 {
		for y := range l.h {
			copy(l.pix[y*l.w:(y+1)*l.w], pix[y*stride:])
		}
		return
	}
	bw, bh := min(f, w), min(f, h)
	for y := range l.h {
		for x := range l.w {
			s := 0
			for j := range bh {
				for _, v := range pix[(y*f+j)*stride+x*f:][:bw] {
					s += int(v)
				}
			}
			l.pix[y*l.w+x] = byte((s + bw*bh/2) / (bw * bh))
		}
	}
}

// View is a part of the picture as the finder sees it: Scale picture pixels a pixel, with the picture's point X, Y at its corner.
type View struct{ X, Y, Scale float64 }

// Whole shows all of the picture.
func (p *Picture) Whole() View {
	return p.Part(0, 0, float64(p.W), float64(p.H))
}

// Part shows what lies between two corners, and what is beside it when the shape is another.
func (p *Picture) Part(x0, y0, x1, y1 float64) View {
	k := math.Max((x1-x0)/FindW, (y1-y0)/FindH)
	return View{(x0+x1)/2 - k*FindW/2, (y0+y1)/2 - k*FindH/2, k}
}

// Find fills out with what the finder sees: brightness and colours of FindH rows by FindW, pixel by pixel. Outside of the picture it is grey.
func (p *Picture) Find(v View, out []byte) {
	for c := range Colours {
		if p.n[c] == 0 {
			for i := c; i < FindW*FindH*Colours; i += Colours {
				out[i] = 128
			}
			continue
		}
		k := v.Scale / p.scale
		base := p.scale
		if c > 0 {
			k /= p.sub
			base *= p.sub
		}
		lev := 0
		for lev+1 < p.n[c] && k >= 2 {
			lev, k, base = lev+1, k/2, base*2
		}
		l := &p.levels[c][lev]
		ox, oy := v.X/base, v.Y/base
		n := 1 // samples in each direction, so that nothing between them is passed over
		if k > 1.05 {
			n = 2
		}
		for y := range FindH {
			for x := range FindW {
				px, py := ox+(float64(x)+0.5)*k, oy+(float64(y)+0.5)*k
				o := &out[(y*FindW+x)*Colours+c]
				if px < 0 || py < 0 || px > float64(l.w) || py > float64(l.h) {
					*o = 128
					continue
				}
				if n == 1 {
					*o = byte(l.at(float32(px-0.5), float32(py-0.5)) + 0.5)
					continue
				}
				q := float32(k / 4)
				fx, fy := float32(px-0.5), float32(py-0.5)
				*o = byte((l.at(fx-q, fy-q)+l.at(fx+q, fy-q)+l.at(fx-q, fy+q)+l.at(fx+q, fy+q))/4 + 0.5)
			}
		}
	}
}

// Line is a row of digits in the picture: its two ends on the middle line of the digits, and their height.
type Line struct {
	X0, Y0, X1, Y1, H float64
	P                 float64 // how sure the finder is
}

// Strip says how a row was cut out: what lies where.
type Strip struct {
	x, y       float64 // picture point of the strip's corner
	ax, ay     float64 // picture step of one column
	dx, dy     float64 // picture step of one row
	Squeeze    float64 // 1, or less where a long row was made narrower
	PixelsPerH float64
}

// At is the picture point of a place in the strip.
func (s *Strip) At(u, v float64) (x, y float64) {
	return s.x + u*s.ax + v*s.dx, s.y + u*s.ay + v*s.dy
}

// Into is the place in the strip of a picture point.
func (s *Strip) Into(x, y float64) (u, v float64) {
	x, y = x-s.x, y-s.y
	d := s.ax*s.dy - s.ay*s.dx
	return (x*s.dy - y*s.dx) / d, (s.ax*y - s.ay*x) / d
}

// LayOut places a strip on a row: its first mark at LeadX, its digits DigitH high in the middle, a long row made narrower.
func LayOut(l *Line) Strip {
	ex, ey := l.X1-l.X0, l.Y1-l.Y0
	n := math.Hypot(ex, ey)
	if n < 1e-6 {
		ex, ey, n = 1, 0, 1
	} else {
		ex, ey = ex/n, ey/n
	}
	k := math.Max(l.H, 1) / DigitH
	q := math.Min(1, (RowW-leadX-20)/math.Max(1, n/k))
	s := Strip{ax: ex * k / q, ay: ey * k / q, dx: -ey * k, dy: ex * k, Squeeze: q, PixelsPerH: l.H}
	s.x = l.X0 - s.ax*leadX - s.dx*RowH/2
	s.y = l.Y0 - s.ay*leadX - s.dy*RowH/2
	return s
}

// Sizes of what the aligner sees: a wider view of one row at a smaller scale.
const (
	AlignW, AlignH = 240, 48
	AlignDigit     = 16
)

// LayWide places the aligner's view on a row: the row in the middle, three of its heights to be seen.
func LayWide(l *Line) Strip {
	ex, ey := l.X1-l.X0, l.Y1-l.Y0
	n := math.Hypot(ex, ey)
	if n < 1e-6 {
		ex, ey, n = 1, 0, 1
	} else {
		ex, ey = ex/n, ey/n
	}
	k := math.Max(l.H, 1) / AlignDigit
	q := math.Min(1, (AlignW-80)/math.Max(1, n/k))
	s := Strip{ax: ex * k / q, ay: ey * k / q, dx: -ey * k, dy: ex * k, Squeeze: q, PixelsPerH: l.H}
	s.x = (l.X0+l.X1)/2 - s.ax*AlignW/2 - s.dx*AlignH/2
	s.y = (l.Y0+l.Y1)/2 - s.ay*AlignW/2 - s.dy*AlignH/2
	return s
}

// Cut fills out with the strip: brightness and colours, pixel by pixel.
func (p *Picture) Cut(s *Strip, out []byte) { p.cut(s, RowW, RowH, out) }

// CutWide does so for the aligner.
func (p *Picture) CutWide(s *Strip, out []byte) { p.cut(s, AlignW, AlignH, out) }

func (p *Picture) cut(s *Strip, w, h int, out []byte) {
	step := math.Hypot(s.dx, s.dy)
	for c := range Colours {
		if p.n[c] == 0 {
			for i := c; i < w*h*Colours; i += Colours {
				out[i] = 128
			}
			continue
		}
		base := p.scale
		if c > 0 {
			base *= p.sub
		}
		lev := 0
		for lev+1 < p.n[c] && step/base >= 1.5 {
			lev, base = lev+1, base*2
		}
		l := &p.levels[c][lev]
		ax, ay, dx, dy := float32(s.ax/base), float32(s.ay/base), float32(s.dx/base), float32(s.dy/base)
		x0, y0 := float32(s.x/base)-0.5+(ax+dx)/2, float32(s.y/base)-0.5+(ay+dy)/2
		i := c
		for v := range h {
			x, y := x0+float32(v)*dx, y0+float32(v)*dy
			for range w {
				out[i] = byte(l.at(x, y) + 0.5)
				i += Colours
				x, y = x+ax, y+ay
			}
		}
	}
}

// normal turns the bytes of a strip into what the network takes: brightness with mean 0 and spread 1 over the digits' band.
func normal(in []byte, out []float32) {
	sum, sq, n := 0, 0, 0
	for v := RowH/2 - DigitH/2; v < RowH/2+DigitH/2; v++ {
		for u := leadX / 2; u < RowW-leadX/2; u++ {
			y := int(in[(v*RowW+u)*Colours])
			sum, sq, n = sum+y, sq+y*y, n+1
		}
	}
	mean := float32(sum) / float32(n)
	spread := float32(math.Sqrt(math.Max(4, float64(sq)/float64(n)-float64(mean)*float64(mean))))
	k := 1 / spread
	for i := 0; i < len(in); i += Colours {
		out[i] = float32((float32(in[i]) - mean) * k)
		out[i+1] = float32((float32(in[i+1]) - 128) * k)
		out[i+2] = float32((float32(in[i+2]) - 128) * k)
	}
}

// normalAll does so for what the finder and the aligner see, over all of it.
func normalAll(in []byte, out []float32) {
	sum, sq := 0, 0
	for i := 0; i < len(in); i += Colours {
		y := int(in[i])
		sum, sq = sum+y, sq+y*y
	}
	n := len(in) / Colours
	mean := float32(sum) / float32(n)
	k := 1 / float32(math.Sqrt(math.Max(16, float64(sq)/float64(n)-float64(mean)*float64(mean))))
	for i := 0; i < len(in); i += Colours {
		out[i] = float32((float32(in[i]) - mean) * k)
		out[i+1] = float32((float32(in[i+1]) - 128) * k)
		out[i+2] = float32((float32(in[i+2]) - 128) * k)
	}
}
