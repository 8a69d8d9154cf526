// Package synth draws test pictures whose truth is known: meters, status lights, wires, glow. Everything is drawn
// from a seed, so a picture can be made again from its number. Nothing is taken from a photograph of a real product.
package render

import "math"

// Segments of a glyph, bit i is segment i of "abcdefg": a top, b upper right, c lower right, d bottom, e lower left, f upper left, g middle.
var Segments = map[rune]byte{
	'0': 0x3f, '1': 0x06, '2': 0x5b, '3': 0x4f, '4': 0x66, '5': 0x6d, '6': 0x7d, '7': 0x07, '8': 0x7f, '9': 0x6f,
	' ': 0, '-': 0x40, 'O': 0x3f, 'L': 0x38, 'F': 0x71, 'E': 0x79, 'r': 0x50, 'h': 0x74, 'n': 0x54, 'o': 0x5c,
}

type point struct{ x, y float64 }

// font is the shape of one display's digits, in units of the digit height.
type font struct {
	width  float64 // outer width of a digit
	stroke float64
	gap    float64 // between segments
	pitch  float64 // from one digit to the next
	slant  float64 // x shift per unit of height
	bevel  float64 // 0 blunt ends, 1 pointed ends
	tail7  bool    // 7 with its upper left segment
	tail69 bool    // 6 and 9 without top and bottom bar when false
	dot    float64 // size of the decimal point
	round  bool    // round dot

	upright float64 // thickness of the upright strokes against the level ones; 0 is the same
	form    int     // of the segments, see forms
	beads   int     // of a segment made of single lights
}

// Forms of a segment.
const (
	hexagon   = iota // pointed by bevel
	trapezoid        // long outside, short inside, so that neighbours meet in a slanted gap
	capsuled         // round ends
	beaded           // a row of round lights
)

// shape returns segment s as a convex polygon like outline, in all forms but the beaded one.
func (f font) shape(s int) []point {
	w, t, g := f.width, f.stroke, f.gap/2
	v := t
	if f.upright > 0 {
		v *= f.upright
	}
	switch f.form {
	case trapezoid:
		v, t = math.Min(v, 0.34*w-g), math.Min(t, 0.24-g)
		switch s {
		case 0:
			return []point{{g, 0}, {w - g, 0}, {w - v - g, t}, {v + g, t}}
		case 1:
			return []point{{w, g}, {w, 0.5 - g}, {w - v, 0.5 - t/2 - g}, {w - v, t + g}}
		case 2:
			return []point{{w, 0.5 + g}, {w, 1 - g}, {w - v, 1 - t - g}, {w - v, 0.5 + t/2 + g}}
		case 3:
			return []point{{v + g, 1 - t}, {w - v - g, 1 - t}, {w - g, 1}, {g, 1}}
		case 4:
			return []point{{0, 0.5 + g}, {v, 0.5 + t/2 + g}, {v, 1 - t - g}, {0, 1 - g}}
		case 5:
			return []point{{0, g}, {v, t + g}, {v, 0.5 - t/2 - g}, {0, 0.5 - g}}
		}
		return []point{{v*0.5 + g, 0.5}, {v + g, 0.5 - t/2}, {w - v - g, 0.5 - t/2}, {w - v*0.5 - g, 0.5}, {w - v - g, 0.5 + t/2}, {v + g, 0.5 + t/2}}
	case capsuled:
		a, b := f.ends(s)
		h := t / 2
		if s != 0 && s != 3 && s != 6 {
			h = v / 2
		}
		d := math.Atan2(b.y-a.y, b.x-a.x)
		var out []point
		for k := range 7 {
			x := d + math.Pi/2 + math.Pi*float64(k)/6
			out = append(out, point{a.x + h*math.Cos(x), a.y + h*math.Sin(x)})
		}
		for k := range 7 {
			x := d - math.Pi/2 + math.Pi*float64(k)/6
			out = append(out, point{b.x + h*math.Cos(x), b.y + h*math.Sin(x)})
		}
		return out
	}
	return f.outline(s)
}

// ends of a segment's middle line, as far as a round end leaves room for.
func (f font) ends(s int) (a, b point) {
	h := f.stroke / 2
	l, r, top, bot := h, f.width-h, h, 1-h
	e := h + f.gap/2 // what the corner takes
	switch s {
	case 0:
		return point{l + e, top}, point{r - e, top}
	case 1:
		return point{r, top + e}, point{r, 0.5 - e}
	case 2:
		return point{r, 0.5 + e}, point{r, bot - e}
	case 3:
		return point{l + e, bot}, point{r - e, bot}
	case 4:
		return point{l, 0.5 + e}, point{l, bot - e}
	case 5:
		return point{l, top + e}, point{l, 0.5 - e}
	}
	return point{l + e, 0.5}, point{r - e, 0.5}
}

// outline returns segment s of a digit with its top left corner at 0,0 and height 1, before slant.
func (f font) outline(s int) []point {
	w, t := f.width, f.stroke
	g := f.gap / 2
	h := t / 2
	// ends of the segment's centre line
	var a, b point
	l, r, top, mid, bot := h, w-h, h, 0.5, 1-h
	switch s {
	case 0:
		a, b = point{l, top}, point{r, top}
	case 1:
		a, b = point{r, top}, point{r, mid}
	case 2:
		a, b = point{r, mid}, point{r, bot}
	case 3:
		a, b = point{l, bot}, point{r, bot}
	case 4:
		a, b = point{l, mid}, point{l, bot}
	case 5:
		a, b = point{l, top}, point{l, mid}
	default:
		a, b = point{l, mid}, point{r, mid}
	}
	dx, dy := b.x-a.x, b.y-a.y
	n := math.Hypot(dx, dy)
	dx, dy = dx/n, dy/n
	a.x, a.y, b.x, b.y = a.x+dx*g, a.y+dy*g, b.x-dx*g, b.y-dy*g
	px, py := -dy*h, dx*h
	in := h * f.bevel
	return []point{
		a, {a.x + dx*in + px, a.y + dy*in + py}, {b.x - dx*in + px, b.y - dy*in + py},
		b, {b.x - dx*in - px, b.y - dy*in - py}, {a.x + dx*in - px, a.y + dy*in - py},
	}
}

func (f font) mask(r rune) byte {
	m := Segments[r]
	switch {
	case r == '7' && f.tail7:
		m |= 0x20
	case r == '6' && !f.tail69:
		m &^= 0x01
	case r == '9' && !f.tail69:
		m &^= 0x08
	}
	return m
}

// canvas is a picture of coverage values while a panel is drawn.
type canvas struct {
	pix  []float32
	w, h int
}

func newCanvas(w, h int) *canvas { return &canvas{make([]float32, w*h), w, h} }

// fill raises the coverage inside a convex polygon (corner order either way) to at least v, smooth at its edge.
func (c *canvas) fill(poly []point, v float32) {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	area := 0.0
	for i, p := range poly {
		x0, y0, x1, y1 = math.Min(x0, p.x), math.Min(y0, p.y), math.Max(x1, p.x), math.Max(y1, p.y)
		q := poly[(i+1)%len(poly)]
		area += p.x*q.y - q.x*p.y
	}
	sign := 1.0
	if area < 0 {
		sign = -1
	}
	for y := max(0, int(y0)-1); y <= min(c.h-1, int(y1)+1); y++ {
		for x := max(0, int(x0)-1); x <= min(c.w-1, int(x1)+1); x++ {
			d := math.Inf(1)
			px, py := float64(x)+0.5, float64(y)+0.5
			for i, p := range poly {
				q := poly[(i+1)%len(poly)]
				ex, ey := q.x-p.x, q.y-p.y
				n := math.Hypot(ex, ey)
				if n < 1e-9 {
					continue
				}
				d = math.Min(d, sign*(ex*(py-p.y)-ey*(px-p.x))/n)
			}
			if a := float32(math.Max(0, math.Min(1, d+0.5))) * v; a > c.pix[y*c.w+x] {
				c.pix[y*c.w+x] = a
			}
		}
	}
}

func (c *canvas) disc(cx, cy, r float64, v float32) {
	for y := max(0, int(cy-r)-1); y <= min(c.h-1, int(cy+r)+1); y++ {
		for x := max(0, int(cx-r)-1); x <= min(c.w-1, int(cx+r)+1); x++ {
			d := r - math.Hypot(float64(x)+0.5-cx, float64(y)+0.5-cy)
			if a := float32(math.Max(0, math.Min(1, d+0.5))) * v; a > c.pix[y*c.w+x] {
				c.pix[y*c.w+x] = a
			}
		}
	}
}

// letters is a small bitmap alphabet for the words printed round a display, five columns by seven rows, row by row.
var letters = map[rune][7]byte{
	'A': {14, 17, 17, 31, 17, 17, 17}, 'C': {14, 17, 16, 16, 16, 17, 14}, 'D': {30, 17, 17, 17, 17, 17, 30},
	'E': {31, 16, 16, 30, 16, 16, 31}, 'F': {31, 16, 16, 30, 16, 16, 16}, 'H': {17, 17, 17, 31, 17, 17, 17},
	'I': {14, 4, 4, 4, 4, 4, 14}, 'L': {16, 16, 16, 16, 16, 16, 31}, 'M': {17, 27, 21, 21, 17, 17, 17},
	'N': {17, 25, 21, 19, 17, 17, 17}, 'O': {14, 17, 17, 17, 17, 17, 14}, 'R': {30, 17, 17, 30, 20, 18, 17},
	'S': {15, 16, 16, 14, 1, 1, 30}, 'T': {31, 4, 4, 4, 4, 4, 4}, 'U': {17, 17, 17, 17, 17, 17, 14},
	'V': {17, 17, 17, 17, 17, 10, 4}, 'X': {17, 10, 4, 4, 4, 10, 17}, 'm': {0, 0, 26, 21, 21, 21, 21},
	'k': {16, 18, 20, 24, 20, 18, 17}, '0': {14, 17, 19, 21, 25, 17, 14}, '1': {4, 12, 4, 4, 4, 4, 14},
	'2': {14, 17, 1, 6, 8, 16, 31}, '6': {14, 16, 16, 30, 17, 17, 14},
}

// word prints s with its top left corner at x,y and height h.
func (c *canvas) word(s string, x, y, h float64, v float32) float64 {
	u := h / 7
	for _, r := range s {
		rows, ok := letters[r]
		if ok {
			for j, bits := range rows {
				for i := range 5 {
					if bits>>(4-i)&1 == 1 {
						px, py := x+float64(i)*u, y+float64(j)*u
						c.fill([]point{{px, py}, {px + u*1.05, py}, {px + u*1.05, py + u*1.05}, {px, py + u*1.05}}, v)
					}
				}
			}
		}
		x += 6 * u
	}
	return x
}
