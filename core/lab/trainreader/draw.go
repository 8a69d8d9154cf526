package main

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"sync/atomic"

	"readback/core/internal/ocr"
	"readback/core/lab/digits"
	"readback/core/lab/render"
)

// What learn.py reads. A picture gives one sample to the finder and stripsEach to the row reader; closeEach close-ups, which cost little to draw,
// give more strips. Files hold samples of fixed size one
// after another: the bytes that the network sees, then what it should say.
const (
	stripsEach = 4
	closeEach  = 3
	cellW      = ocr.FindW / 8
	cellH      = ocr.FindH / 8
	findValues = 6 // score (1, 0 or -1 for either), offset, height, slope, left, right
	columns    = ocr.RowW / 4
	rowValues  = 5 // class, point, minus, start, end; 255 for either
	findBytes  = ocr.FindW * ocr.FindH * ocr.Colours
	rowBytes   = ocr.RowW * ocr.RowH * ocr.Colours
	either     = 255

	alignsEach  = 4
	alignBytes  = ocr.AlignW * ocr.AlignH * ocr.Colours
	alignValues = 3 // in the row (1, 0 or -1 for either), its upper and its lower edge in pixels of the view
)

// sampleOf draws one picture and takes its samples, then the close-ups.
func sampleOf(seed uint64, find, findWant, rows, rowsWant, aligns, alignsWant []byte) {
	r := rand.New(rand.NewPCG(seed, 0x73616d706c65))
	size := [][2]int{{400, 300}, {400, 300}, {400, 300}, {480, 360}, {640, 480}}[r.IntN(5)]
	if r.IntN(6) == 0 {
		size[0], size[1] = size[1], size[0]
	}
	v := crop(render.NewPanel(seed, render.PanelOptions{W: size[0], H: size[1]}).Shoot(0), r)
	p := pictureOf(v, r)
	view := p.Whole()
	if r.IntN(4) == 0 { // a part of it, round a row or anywhere
		cx, cy, w := r.Float64()*float64(v.W), r.Float64()*float64(v.H), float64(v.W)*(0.4+0.5*r.Float64())
		if len(v.Rows) > 0 && r.IntN(4) > 0 {
			e := v.Rows[r.IntN(len(v.Rows))].Ends
			cx, cy = (e[0][0]+e[1][0])/2+w*0.2*r.NormFloat64(), (e[0][1]+e[1][1])/2+w*0.15*r.NormFloat64()
		}
		view = p.Part(cx-w/2, cy-w*3/8, cx+w/2, cy+w*3/8)
	}
	p.Find(view, find)
	wantFind(v, view, findWant)
	strips(v, p, seed, r, rows, rowsWant, aligns, alignsWant)
	for i := range closeEach {
		rows, rowsWant = rows[stripsEach*rowBytes:], rowsWant[stripsEach*columns*rowValues:]
		aligns, alignsWant = aligns[alignsEach*alignBytes:], alignsWant[alignsEach*columns*alignValues*4:]
		o := render.PanelOptions{W: 240 + 2*r.IntN(100), H: 110 + 2*r.IntN(60), Close: true, Number: r.IntN(8) > 0}
		o.Nothing = !o.Number
		v := crop(render.NewPanel(seed*closeEach+uint64(i)+1<<60, o).Shoot(0), r)
		strips(v, pictureOf(v, r), seed, r, rows, rowsWant, aligns, alignsWant)
	}
}

// crop cuts some pictures close round a display or a number, as those are that somebody cut out.
func crop(v *render.View, r *rand.Rand) *render.View {
	if len(v.Rows) == 0 || r.IntN(5) > 0 {
		return v
	}
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	h := 0.0
	all := r.IntN(2) == 0
	one := r.IntN(len(v.Rows))
	for i := range v.Rows {
		if !all && i != one {
			continue
		}
		h = math.Max(h, v.Rows[i].Height)
		for _, g := range v.Rows[i].Glyphs {
			for _, b := range g.Box {
				x0, y0, x1, y1 = math.Min(x0, b[0]), math.Min(y0, b[1]), math.Max(x1, b[0]), math.Max(y1, b[1])
			}
		}
	}
	edge := func() float64 { return h * (0.02 + 1.3*r.Float64()*r.Float64()) }
	a, b, c, d := int(x0-edge()*2), int(y0-edge()), int(x1+edge()*2), int(y1+edge())
	if r.IntN(6) == 0 { // something is cut off
		a += int(h * 1.5 * r.Float64())
	}
	if r.IntN(6) == 0 {
		c -= int(h * 1.5 * r.Float64())
	}
	if h < 13 || min(c, v.W)-max(a, 0) < 16 || min(d, v.H)-max(b, 0) < 12 {
		return v
	}
	return v.Crop(a, b, c, d)
}

func pictureOf(v *render.View, r *rand.Rand) *ocr.Picture {
	in := ocr.Planes{Y: v.Y, W: v.W, H: v.H, Stride: v.W, Cb: v.Cb, Cr: v.Cr, CStride: (v.W + 1) / 2, Sub: 2}
	if r.IntN(10) < 4 {
		in.Cb, in.Cr = nil, nil
	}
	var p ocr.Picture
	p.Set(&in)
	return &p
}

// strips takes the samples of the row reader and of the aligner.
func strips(v *render.View, p *ocr.Picture, seed uint64, r *rand.Rand, rows, rowsWant, aligns, alignsWant []byte) {
	for k := range stripsEach {
		var l ocr.Line
		if n := len(v.Rows); n > 0 && k < 3 {
			t := &v.Rows[(k+int(seed))%n]
			l = ocr.Line{X0: t.Ends[0][0], Y0: t.Ends[0][1], X1: t.Ends[1][0], Y1: t.Ends[1][1], H: t.Height}
			jitter(&l, r)
		} else if n := len(v.Other); n > 0 && r.IntN(3) > 0 { // words, or a display that is off
			o := v.Other[r.IntN(n)]
			l = ocr.Line{X0: o[0], Y0: o[1], X1: o[2], Y1: o[3], H: o[4]}
			jitter(&l, r)
		} else { // anywhere: nothing, or what happens to be there
			l.H = 10 * math.Exp(2*r.Float64())
			l.X0, l.Y0 = r.Float64()*float64(v.W), r.Float64()*float64(v.H)
			a, n := r.NormFloat64()*0.2, l.H*(1+5*r.Float64())
			l.X1, l.Y1 = l.X0+n*math.Cos(a), l.Y0+n*math.Sin(a)
		}
		s := ocr.LayOut(&l)
		p.Cut(&s, rows[k*rowBytes:][:rowBytes])
		wantRow(v, &s, rowsWant[k*columns*rowValues:][:columns*rowValues])
	}
	for k := range alignsEach {
		l, row := ocr.Line{}, -1
		if n := len(v.Rows); n > 0 && k < 3 {
			row = (k + int(seed)) % n
			t := &v.Rows[row]
			l = ocr.Line{X0: t.Ends[0][0], Y0: t.Ends[0][1], X1: t.Ends[1][0], Y1: t.Ends[1][1], H: t.Height}
			stray(&l, r)
		} else if n := len(v.Other); n > 0 {
			o := v.Other[r.IntN(n)]
			l = ocr.Line{X0: o[0], Y0: o[1], X1: o[2], Y1: o[3], H: o[4]}
			stray(&l, r)
		} else {
			l.H = 10 * math.Exp(2*r.Float64())
			l.X0, l.Y0 = r.Float64()*float64(v.W), r.Float64()*float64(v.H)
			l.X1, l.Y1 = l.X0+l.H*(1+5*r.Float64()), l.Y0
		}
		s := ocr.LayWide(&l)
		p.CutWide(&s, aligns[k*alignBytes:][:alignBytes])
		wantAlign(v, &s, alignsWant[k*columns*alignValues*4:][:columns*alignValues*4])
	}
}

// stray moves a row as far as the finder is off at worst.
func stray(l *ocr.Line, r *rand.Rand) {
	ex, ey := l.X1-l.X0, l.Y1-l.Y0
	n := math.Max(1e-6, math.Hypot(ex, ey))
	ex, ey = ex/n, ey/n
	d0, d1 := r.NormFloat64()*0.6*l.H, r.NormFloat64()*0.6*l.H
	if n+d1-d0 < 0.3*l.H {
		d0, d1 = 0, 0
	}
	o0, o1 := r.NormFloat64()*0.2*l.H, r.NormFloat64()*0.2*l.H
	tilt := r.NormFloat64() * 0.05 * n
	l.X0, l.Y0 = l.X0+ex*d0-ey*(o0+tilt), l.Y0+ey*d0+ex*(o0+tilt)
	l.X1, l.Y1 = l.X1+ex*d1-ey*(o1-tilt), l.Y1+ey*d1+ex*(o1-tilt)
	l.H *= math.Exp(0.22 * r.NormFloat64())
}

// wantAlign says for every column of the aligner's view where the row is that lies nearest to its middle.
func wantAlign(v *render.View, s *ocr.Strip, out []byte) {
	put := func(c, k int, f float64) {
		b := math.Float32bits(float32(f))
		o := out[(c*alignValues+k)*4:]
		o[0], o[1], o[2], o[3] = byte(b), byte(b>>8), byte(b>>16), byte(b>>24)
	}
	clear(out)
	best, at := math.Inf(1), -1
	type placed struct{ u0, v0, u1, v1, h float64 }
	rows := make([]placed, len(v.Rows))
	for j := range v.Rows {
		t := &v.Rows[j]
		p := &rows[j]
		p.u0, p.v0 = s.Into(t.Ends[0][0], t.Ends[0][1])
		p.u1, p.v1 = s.Into(t.Ends[1][0], t.Ends[1][1])
		p.h = t.Height / s.PixelsPerH * ocr.AlignDigit
		mid := p.v0
		if p.u1 > p.u0+1 { // its height at the column nearest to the middle
			u := math.Max(p.u0, math.Min(p.u1, ocr.AlignW/2))
			mid = p.v0 + (p.v1-p.v0)*(u-p.u0)/(p.u1-p.u0)
		}
		away := math.Max(0, math.Max(p.u0-ocr.AlignW/2, ocr.AlignW/2-p.u1))
		if d := math.Abs(mid-ocr.AlignH/2) + 0.3*away; d < best && p.h > 0.4*ocr.AlignDigit && p.h < 2.2*ocr.AlignDigit && d < 1.1*ocr.AlignDigit {
			best, at = d, j
		}
	}
	if at < 0 {
		for j := range rows { // a row that is too far off to be meant, and too near to be nothing
			if p := &rows[j]; math.Abs((p.v0+p.v1)/2-ocr.AlignH/2) < 1.6*ocr.AlignDigit && p.u1 > 0 && p.u0 < ocr.AlignW {
				for c := range columns {
					put(c, 0, -1)
				}
			}
		}
		return
	}
	p := &rows[at]
	worst := 1.0
	for i := range v.Rows[at].Glyphs {
		worst = math.Min(worst, v.Rows[at].Glyphs[i].Seen)
	}
	for c := range columns {
		u := float64(c)*4 + 1.5
		switch {
		case u > p.u0+1 && u < p.u1-1 && worst > 0.05:
			mid := p.v0 + (p.v1-p.v0)*(u-p.u0)/math.Max(1, p.u1-p.u0)
			put(c, 0, 1)
			put(c, 1, mid-p.h/2)
			put(c, 2, mid+p.h/2)
		case u > p.u0-2 && u < p.u1+2:
			put(c, 0, -1)
		}
	}
}

// jitter moves a row as far as the finder may be off.
func jitter(l *ocr.Line, r *rand.Rand) {
	ex, ey := l.X1-l.X0, l.Y1-l.Y0
	n := math.Max(1e-6, math.Hypot(ex, ey))
	ex, ey = ex/n, ey/n
	wide := 0.3
	if r.IntN(5) == 0 {
		wide = 0.8
	}
	d0, d1 := r.NormFloat64()*wide*l.H, r.NormFloat64()*wide*l.H
	switch r.IntN(10) {
	case 0: // far to the left, where a sign may stand alone
		d0 -= r.Float64() * 4.5 * l.H
	case 1:
		d1 += r.Float64() * 3 * l.H
	}
	o0, o1 := r.NormFloat64()*0.07*l.H, r.NormFloat64()*0.07*l.H
	tilt := r.NormFloat64() * 0.025 * n
	l.X0, l.Y0 = l.X0+ex*d0-ey*(o0+tilt), l.Y0+ey*d0+ex*(o0+tilt)
	l.X1, l.Y1 = l.X1+ex*d1-ey*(o1-tilt), l.Y1+ey*d1+ex*(o1-tilt)
	l.H *= math.Exp(0.11 * r.NormFloat64())
}

// wantFind says for every cell of the finder whether a row runs through it, and which.
func wantFind(v *render.View, view ocr.View, out []byte) {
	put := func(i, k int, f float64) {
		b := math.Float32bits(float32(f))
		o := out[(i*findValues+k)*4:]
		o[0], o[1], o[2], o[3] = byte(b), byte(b>>8), byte(b>>16), byte(b>>24)
	}
	clear(out)
	for j := range v.Rows {
		t := &v.Rows[j]
		var e [2][2]float64
		for k := range e {
			e[k] = [2]float64{(t.Ends[k][0] - view.X) / view.Scale, (t.Ends[k][1] - view.Y) / view.Scale}
		}
		h := t.Height / view.Scale
		ex, ey := e[1][0]-e[0][0], e[1][1]-e[0][1]
		n := math.Max(1e-6, math.Hypot(ex, ey))
		ex, ey = ex/n, ey/n
		worst := 1.0
		for k := range t.Glyphs {
			if t.Glyphs[k].R != '.' {
				worst = math.Min(worst, t.Glyphs[k].Seen)
			}
		}
		sure := h >= 5 && worst > 0.12 && n > 0.3*h
		core, rim := math.Max(0.3*h, 4.2), math.Max(0.75*h, 8.5)
		for y := range cellH {
			for x := range cellW {
				i := y*cellW + x
				px, py := float64(x)*8+4-e[0][0], float64(y)*8+4-e[0][1]
				along, off := px*ex+py*ey, -px*ey+py*ex
				was := math.Float32frombits(uint32(out[i*findValues*4]) | uint32(out[i*findValues*4+1])<<8 | uint32(out[i*findValues*4+2])<<16 | uint32(out[i*findValues*4+3])<<24)
				switch {
				case along > -0.1*h && along < n+0.1*h && math.Abs(off) <= core && sure:
					if was == 1 && math.Abs(off) > 0.5*h { // nearer to another row
						continue
					}
					put(i, 0, 1)
					put(i, 1, -off/16)
					put(i, 2, math.Log2(h/16))
					put(i, 3, ey)
					put(i, 4, along/64)
					put(i, 5, (n-along)/64)
				case along > -0.8*h-4 && along < n+0.8*h+4 && math.Abs(off) <= rim && was == 0:
					put(i, 0, -1)
				}
			}
		}
	}
}

// Classes of the row reader: nothing, the ten digits, L, another glyph, something covered.
const (
	classL       = 11
	classOther   = 12
	classCovered = 13
)

// wantRow says for every column of a strip what stands there.
func wantRow(v *render.View, s *ocr.Strip, out []byte) {
	clear(out)
	set := func(u, near, far float64, k int, val byte) {
		for c := range columns {
			o := &out[c*rowValues+k]
			switch d := math.Abs(float64(c)*4 + 1.5 - u); {
			case d <= near:
				*o = val
			case d <= far && *o == 0:
				*o = either
			}
		}
	}
	blind := func(u, far float64) {
		for c := range columns {
			if math.Abs(float64(c)*4+1.5-u) <= far {
				for k := range rowValues {
					out[c*rowValues+k] = either
				}
			}
		}
	}
	for j := range v.Rows {
		t := &v.Rows[j]
		inBand := false
		first, last := math.Inf(1), math.Inf(-1)
		cut0, cut1 := false, false
		for i := range t.Glyphs {
			g := &t.Glyphs[i]
			u, w := s.Into(g.Centre[0], g.Centre[1])
			if u < -12 || u > ocr.RowW+12 || w < -8 || w > ocr.RowH+8 {
				continue
			}
			// where the digits of the row stand and how high they are
			ax, ay := s.Into(g.Box[0][0], g.Box[0][1])
			bx, by := s.Into(g.Box[2][0], g.Box[2][1])
			if ax > bx {
				ax, bx = bx, ax
			}
			digit := g.R != '.' && g.R != '-' && g.R != ':'
			tall := t.Height / math.Hypot(s.PixelsPerH, 0) // as a share of the strip's digit height
			mid := w
			if digit {
				mid = (ay + by) / 2
			} else if g.R == '.' {
				mid = w - 0.45*ocr.DigitH*tall
			}
			if tall < 0.7 || tall > 1.42 || math.Abs(mid-ocr.RowH/2) > 0.24*ocr.DigitH && !(digit && math.Abs(by-ay) < 0.85*ocr.DigitH*tall) {
				if math.Abs(mid-ocr.RowH/2) < 0.85*ocr.DigitH*math.Max(1, tall) {
					blind(u, math.Max(6, (bx-ax)/2+3))
				}
				continue
			}
			inBand = true
			if ax < first {
				first, cut0 = ax, g.Outside
			}
			if bx > last {
				last, cut1 = bx, g.Outside
			}
			q := s.Squeeze
			covered := g.Seen < 0.12 && !g.Outside
			unsure := g.Seen >= 0.12 && g.Seen < 0.25 || g.Outside
			switch {
			case unsure:
				blind(u, math.Max(4, 0.3*ocr.DigitH*q))
			case covered:
				set(u, 3, 8, 0, classCovered)
				if !digit {
					blindOne(out, u, 8, map[rune]int{'.': 1, '-': 2, ':': 1}[g.R])
				}
			case g.R == '.':
				set(u, 2.6, 6.5, 1, 1)
			case g.R == '-':
				set(u, math.Max(2.6, (bx-ax)/4), (bx-ax)/2+4, 2, 1)
			case g.R == ':':
				set(u, 2.2, 5, 0, classOther)
				blindOne(out, u, 6, 1)
			default:
				c := byte(classOther)
				if g.R >= '0' && g.R <= '9' {
					c = byte(g.R-'0') + 1
				} else if g.R == 'L' {
					c = classL
				}
				set(u, math.Max(2.2, 0.14*ocr.DigitH*q), math.Max(4.2, 0.25*ocr.DigitH*q), 0, c)
			}
		}
		if inBand {
			if first > -2 && !cut0 {
				set(first, 3, 8, 3, 1)
			}
			if last < ocr.RowW+2 && !cut1 {
				set(last, 3, 8, 4, 1)
			}
			if cut0 {
				blindOne(out, first, 14, 3)
			}
			if cut1 {
				blindOne(out, last, 14, 4)
			}
		}
	}
}

func blindOne(out []byte, u, far float64, k int) {
	for c := range columns {
		if math.Abs(float64(c)*4+1.5-u) <= far {
			out[c*rowValues+k] = either
		}
	}
}

// drawSamples writes parts of n pictures each until it is told how many, or for ever; a part is complete when its name lacks ".part".
func drawSamples(dir string, parts, n int, seed uint64, say func(string, ...any)) error {
	const strip, align = stripsEach * (1 + closeEach), alignsEach * (1 + closeEach)
	for part := range parts {
		find, findWant := make([]byte, n*findBytes), make([]byte, n*cellW*cellH*findValues*4)
		rows, rowsWant := make([]byte, n*strip*rowBytes), make([]byte, n*strip*columns*rowValues)
		aligns, alignsWant := make([]byte, n*align*alignBytes), make([]byte, n*align*columns*alignValues*4)
		var next atomic.Int64
		var wg sync.WaitGroup
		for range max(1, runtime.NumCPU()-1) {
			wg.Go(func() {
				for {
					i := int(next.Add(1)) - 1
					if i >= n {
						return
					}
					sampleOf(seed<<40+uint64(part*n+i), find[i*findBytes:][:findBytes], findWant[i*cellW*cellH*findValues*4:][:cellW*cellH*findValues*4],
						rows[i*strip*rowBytes:][:strip*rowBytes], rowsWant[i*strip*columns*rowValues:][:strip*columns*rowValues],
						aligns[i*align*alignBytes:][:align*alignBytes], alignsWant[i*align*columns*alignValues*4:][:align*columns*alignValues*4])
				}
			})
		}
		wg.Wait()
		if err := errors.Join(write(dir, "find", part, find, findWant), write(dir, "row", part, rows, rowsWant), write(dir, "align", part, aligns, alignsWant)); err != nil {
			return err
		}
		say("part %d", part)
	}
	return nil
}

func write(dir, what string, part int, in, want []byte) error {
	if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%s-%03d.want", what, part)), want, 0o644); err != nil {
		return err
	}
	name := filepath.Join(dir, fmt.Sprintf("%s-%03d.in", what, part))
	if err := os.WriteFile(name+".part", in, 0o644); err != nil {
		return err
	}
	return os.Rename(name+".part", name)
}

// photoSamples are strips of the photographed digits whose names hash odd, each cut in several ways.
func photoSamples(archive, dir string, each int, seed uint64) error {
	r := rand.New(rand.NewPCG(seed, 4))
	var in, want []byte
	photos, err := open(archive)
	if err != nil {
		return err
	}
	for i := range photos {
		if !photos[i].Learn() {
			continue
		}
		d, pl := photos[i].Digit, photos[i].Plane
		var p ocr.Picture
		p.Set(&ocr.Planes{Y: pl.Y, W: pl.W, H: pl.H, Stride: pl.Stride})
		for range each {
			w, ht := float64(pl.W), float64(pl.H)
			l := ocr.Line{H: 0.85 * ht * math.Exp(0.09*r.NormFloat64())}
			cx, cy := w/2, ht/2*(1+0.06*r.NormFloat64())
			half := w * 0.35 * math.Exp(0.1*r.NormFloat64())
			l.X0, l.X1, l.Y0, l.Y1 = cx-half, cx+half, cy, cy
			s := ocr.LayOut(&l)
			strip, to := make([]byte, rowBytes), make([]byte, columns*rowValues)
			p.Cut(&s, strip)
			a, _ := s.Into(0, 0)
			b, _ := s.Into(w, 0)
			u, _ := s.Into(cx, 0)
			for c := range columns {
				x := float64(c)*4 + 1.5
				o := to[c*rowValues:][:rowValues]
				o[1], o[2], o[3], o[4] = either, either, either, either // what stands beside the digit was cut off
				switch dx := math.Abs(x - u); {
				case x < a || x > b:
					o[0] = either
				case d == digits.Blank:
					o[0] = 0
				case dx < 3.2:
					o[0] = byte(d) + 1
				default:
					o[0] = either
				}
			}
			in, want = append(in, strip...), append(want, to...)
		}
	}
	return write(dir, "photo", 0, in, want)
}
