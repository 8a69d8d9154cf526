package render

import "math"

// strokes is a plain alphabet for what is printed round a display: every glyph is a list of lines through points x (0 to 4) and
// y (0 to 6), two digits a point, lines apart by a comma.
var strokes = map[rune]string{
	'A': "06 20 46,14 34", 'B': "00 06 36 45 44 33 03,33 42 41 30 00", 'C': "41 30 10 01 05 16 36 45", 'D': "00 06 26 44 42 20 00",
	'E': "40 00 06 46,03 33", 'F': "40 00 06,03 33", 'G': "41 30 10 01 05 16 36 45 43 23", 'H': "00 06,40 46,03 43", 'I': "20 26",
	'J': "40 45 36 16 05", 'K': "00 06,40 03 46", 'L': "00 06 46", 'M': "06 00 23 40 46", 'N': "06 00 46 40", 'O': "10 30 41 45 36 16 05 01 10",
	'P': "06 00 30 41 42 33 03", 'Q': "10 30 41 45 36 16 05 01 10,24 46", 'R': "06 00 30 41 42 33 03,23 46", 'S': "41 30 10 01 02 13 33 44 45 36 16 05",
	'T': "00 40,20 26", 'U': "00 05 16 36 45 40", 'V': "00 26 40", 'W': "00 16 23 36 40", 'X': "00 46,40 06", 'Y': "00 23 40,23 26", 'Z': "00 40 06 46",
	'0': "10 30 41 45 36 16 05 01 10", '1': "11 20 26", '2': "01 10 30 41 42 06 46", '3': "01 10 30 41 42 33 23,33 44 45 36 16 05", '4': "36 30 04 44",
	'5': "40 10 03 33 44 45 36 16 05", '6': "41 30 10 01 05 16 36 45 44 33 03", '7': "00 40 16", '8': "10 30 41 42 33 13 02 01 10,13 04 05 16 36 45 44 33",
	'9': "43 13 02 01 10 30 41 45 36 16 05", '-': "13 33", '.': "26 26", '/': "06 40", '+': "13 33,22 24", '%': "06 40,00 00,46 46", ':': "22 22,25 25",
	'a': "12 32 43 46,44 14 05 16 36 45", 'b': "00 06,03 13 33 44 45 36 16 05", 'c': "42 12 03 05 16 46", 'd': "40 46,43 33 13 04 05 16 36 45",
	'e': "04 44 43 32 12 03 05 16 46", 'g': "42 12 03 04 15 45,42 45 36 06", 'i': "22 26,20 20", 'l': "20 26", 'o': "12 32 43 45 36 16 05 03 12",
	'p': "02 06,02 32 43 44 35 05", 'r': "02 06,04 13 33", 's': "42 12 03 14 34 45 36 06", 't': "20 25 36,12 32", 'w': "02 16 24 36 42", 'x': "02 46,42 06",
	'z': "02 42 06 46", '°': "10 20 31 22 12 01 10", 'Ω': "06 16 15 04 02 10 30 42 44 35 36 46", 'µ': "02 06,04 15 25 34 42,42 46",
	'm': "06 03,03 14 25 34 46", 'k': "00 06,32 04 36", 'u': "02 05 16 36 42,42 46", 'h': "00 06,04 13 33 44 46", 'n': "02 06,04 13 33 44 46",
}

// paint is a colour picture in the making, with red, green and blue from 0 to 255 one after another.
type paint struct {
	pix  []float32
	w, h int
}

func newPaint(w, h int, c [3]float64) *paint {
	p := &paint{make([]float32, 3*w*h), w, h}
	for i := range p.pix {
		p.pix[i] = float32(c[i%3])
	}
	return p
}

func (p *paint) blend(i int, c [3]float64, a float64) {
	for k := range 3 {
		p.pix[3*i+k] += (float32(c[k]) - p.pix[3*i+k]) * float32(a)
	}
}

// shape blends c where inside is the distance to the edge, positive within, in pixels.
func (p *paint) shape(x0, y0, x1, y1 float64, c [3]float64, a float64, inside func(x, y float64) float64) {
	for y := max(0, int(y0)-1); y <= min(p.h-1, int(y1)+1); y++ {
		for x := max(0, int(x0)-1); x <= min(p.w-1, int(x1)+1); x++ {
			if d := inside(float64(x)+0.5, float64(y)+0.5) + 0.5; d > 0 {
				p.blend(y*p.w+x, c, math.Min(1, d)*a)
			}
		}
	}
}

func bounds(poly []point) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, q := range poly {
		x0, y0, x1, y1 = math.Min(x0, q.x), math.Min(y0, q.y), math.Max(x1, q.x), math.Max(y1, q.y)
	}
	return
}

// poly blends c into a convex polygon.
func (p *paint) poly(poly []point, c [3]float64, a float64) {
	x0, y0, x1, y1 := bounds(poly)
	area := 0.0
	for i, q := range poly {
		n := poly[(i+1)%len(poly)]
		area += q.x*n.y - n.x*q.y
	}
	sign := math.Copysign(1, area)
	p.shape(x0, y0, x1, y1, c, a, func(x, y float64) float64 {
		d := math.Inf(1)
		for i, q := range poly {
			n := poly[(i+1)%len(poly)]
			ex, ey := n.x-q.x, n.y-q.y
			if l := math.Hypot(ex, ey); l > 1e-9 {
				d = math.Min(d, sign*(ex*(y-q.y)-ey*(x-q.x))/l)
			}
		}
		return d
	})
}

// box is a rectangle with rounded corners.
func (p *paint) box(x0, y0, x1, y1, r float64, c [3]float64, a float64) {
	cx, cy, hw, hh := (x0+x1)/2, (y0+y1)/2, (x1-x0)/2, (y1-y0)/2
	r = math.Max(0, math.Min(r, math.Min(hw, hh)))
	p.shape(x0, y0, x1, y1, c, a, func(x, y float64) float64 {
		dx, dy := math.Abs(x-cx)-hw+r, math.Abs(y-cy)-hh+r
		return r - math.Hypot(math.Max(dx, 0), math.Max(dy, 0)) - math.Min(0, math.Max(dx, dy))
	})
}

func (p *paint) disc(cx, cy, r float64, c [3]float64, a float64) {
	p.shape(cx-r, cy-r, cx+r, cy+r, c, a, func(x, y float64) float64 { return r - math.Hypot(x-cx, y-cy) })
}

// capsule is a line with round ends.
func (p *paint) capsule(ax, ay, bx, by, r float64, c [3]float64, a float64) {
	dx, dy := bx-ax, by-ay
	l := math.Max(1e-9, dx*dx+dy*dy)
	p.shape(math.Min(ax, bx)-r, math.Min(ay, by)-r, math.Max(ax, bx)+r, math.Max(ay, by)+r, c, a, func(x, y float64) float64 {
		t := math.Max(0, math.Min(1, ((x-ax)*dx+(y-ay)*dy)/l))
		return r - math.Hypot(x-ax-t*dx, y-ay-t*dy)
	})
}

// word prints s with its upper left corner at x,y, letters h high in lines of thickness t, and returns where it ends.
func (p *paint) word(s string, x, y, h, t float64, c [3]float64, a float64) float64 {
	u := h / 6
	for _, r := range s {
		last := point{-1, -1}
		text := strokes[r]
		for i := 0; i+1 < len(text); i++ {
			if text[i] == ',' {
				last = point{-1, -1}
				continue
			}
			if text[i] == ' ' {
				continue
			}
			q := point{x + float64(text[i]-'0')*u*0.9, y + float64(text[i+1]-'0')*u}
			if last.x >= 0 {
				p.capsule(last.x, last.y, q.x, q.y, t/2, c, a)
			}
			last = q
			i++
		}
		x += 5.2 * u
	}
	return x
}

// at samples between pixels; outside is false.
func (p *paint) at(x, y float64, out *[3]float64) bool {
	x, y = x-0.5, y-0.5
	if x < 0 || y < 0 || x >= float64(p.w-1) || y >= float64(p.h-1) {
		return false
	}
	i, j := int(x), int(y)
	fx, fy := float32(x-float64(i)), float32(y-float64(j))
	a := p.pix[3*(j*p.w+i):][:6]
	b := p.pix[3*((j+1)*p.w+i):][:6]
	for k := range 3 {
		u := a[k] + (a[k+3]-a[k])*fx
		v := b[k] + (b[k+3]-b[k])*fx
		out[k] = float64(u + (v-u)*fy)
	}
	return true
}
