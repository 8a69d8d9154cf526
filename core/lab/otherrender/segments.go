package otherrender

import (
	"math"
	"math/rand/v2"
)

// The segments of a digit: a top, b and c right, d bottom, e and f left, g middle.
const (
	segA = iota
	segB
	segC
	segD
	segE
	segF
	segG
	segPoint
	segMinus
	segColon
)

var segmentsOf = map[rune]string{
	'0': "abcdef", '1': "bc", '2': "abged", '3': "abgcd", '4': "fgbc", '5': "afgcd", '6': "afgedc", '7': "abc",
	'8': "abcdefg", '9': "abcdfg", '-': "g", 'L': "def", 'O': "abcdef", 'E': "adefg", 'r': "eg", 'P': "abefg",
	'n': "ceg", 'A': "abcefg", 'U': "bcdef", 't': "defg", 'H': "bcefg", 'o': "cdeg", 'F': "aefg", 'C': "adef",
	'd': "bcdeg", 'b': "cdefg", 'i': "c", 'h': "cefg", '_': "d", 'S': "afgcd",
}

// digitStyle is the drawing of a seven-segment digit; lengths are shares of the digit's height.
type digitStyle struct {
	wide, thick, gap, slant, pitch float64
	form                           int // 0 miter, 1 hexagon, 2 bar, 3 round ends
	serif7, tail6, tail9           bool
	point                          int     // 0 round, 1 square, 2 tiny round
	pointSize                      float64 // share of the height
	pointGap                       float64 // from the digit before; 0 touches
	ownCell                        bool    // the point has room of its own between two digits
	minusNear                      bool    // the sign stands right before the first digit instead of at the far left
	minusLen                       float64
	half                           bool // the first cell can only show a 1
}

func newStyle(r *rand.Rand) digitStyle {
	s := digitStyle{
		wide: 0.44 + 0.18*r.Float64(), thick: 0.085 + 0.095*r.Float64(), gap: 0.004 + 0.022*sq(r.Float64()),
		form: r.IntN(4), serif7: r.IntN(5) == 0, tail6: r.IntN(6) > 0, tail9: r.IntN(6) > 0,
		point: r.IntN(3), minusNear: r.IntN(2) == 0, minusLen: 0.2 + 0.16*r.Float64(), half: r.IntN(3) == 0,
	}
	s.thick = math.Min(s.thick, 0.29*s.wide)
	if r.IntN(3) > 0 {
		s.slant = 0.05 + 0.11*r.Float64()
	}
	s.pointSize = []float64{0.12, 0.115, 0.075}[s.point] * (0.85 + 0.4*r.Float64())
	s.ownCell = r.IntN(4) == 0
	s.pointGap = []float64{0, 0.02, 0.04, 0.06}[r.IntN(4)]
	space := s.thick*0.6 + 0.08 + 0.1*r.Float64()
	if s.ownCell {
		space = s.pointSize*1.3 + s.thick*0.5 + 0.08
	} else if space < s.pointSize*0.8+s.pointGap {
		space = s.pointSize*0.8 + s.pointGap + 0.02
	}
	s.pitch = s.wide + space
	return s
}

func (s digitStyle) lit(r rune, seg int) bool {
	switch {
	case r == '7' && seg == segF:
		return s.serif7
	case r == '6' && seg == segA:
		return s.tail6
	case r == '9' && seg == segD:
		return s.tail9
	}
	for _, k := range segmentsOf[r] {
		if int(k-'a') == seg {
			return true
		}
	}
	return false
}

// outline is one segment in the unit cell: x 0..wide, y 0..1 downward, before the slant.
func (s digitStyle) outline(seg int) []pt {
	w, t, g := s.wide, s.thick, s.gap
	if s.form == 0 {
		switch seg {
		case segA:
			return []pt{{g, 0}, {w - g, 0}, {w - t - g, t}, {t + g, t}}
		case segD:
			return []pt{{g, 1}, {w - g, 1}, {w - t - g, 1 - t}, {t + g, 1 - t}}
		case segF:
			return []pt{{0, g}, {t, t + g}, {t, 0.5 - t/2 - g}, {t / 2, 0.5 - g}, {0, 0.5 - g}}
		case segB:
			return []pt{{w, g}, {w - t, t + g}, {w - t, 0.5 - t/2 - g}, {w - t/2, 0.5 - g}, {w, 0.5 - g}}
		case segE:
			return []pt{{0, 1 - g}, {t, 1 - t - g}, {t, 0.5 + t/2 + g}, {t / 2, 0.5 + g}, {0, 0.5 + g}}
		case segC:
			return []pt{{w, 1 - g}, {w - t, 1 - t - g}, {w - t, 0.5 + t/2 + g}, {w - t/2, 0.5 + g}, {w, 0.5 + g}}
		}
		return []pt{{t/2 + g*1.4, 0.5}, {t + g, 0.5 - t/2}, {w - t - g, 0.5 - t/2}, {w - t/2 - g*1.4, 0.5}, {w - t - g, 0.5 + t/2}, {t + g, 0.5 + t/2}}
	}
	var a, b pt
	switch seg {
	case segA:
		a, b = pt{t / 2, t / 2}, pt{w - t/2, t / 2}
	case segB:
		a, b = pt{w - t/2, t / 2}, pt{w - t/2, 0.5}
	case segC:
		a, b = pt{w - t/2, 0.5}, pt{w - t/2, 1 - t/2}
	case segD:
		a, b = pt{t / 2, 1 - t/2}, pt{w - t/2, 1 - t/2}
	case segE:
		a, b = pt{t / 2, 0.5}, pt{t / 2, 1 - t/2}
	case segF:
		a, b = pt{t / 2, t / 2}, pt{t / 2, 0.5}
	default:
		a, b = pt{t / 2, 0.5}, pt{w - t/2, 0.5}
	}
	return s.bar(a, b)
}

// bar makes a segment with the style's ends along a center line.
func (s digitStyle) bar(a, b pt) []pt {
	t, g := s.thick, s.gap
	l := math.Hypot(b.x-a.x, b.y-a.y)
	ux, uy := (b.x-a.x)/l, (b.y-a.y)/l
	at := func(base pt, along, side float64) pt {
		return pt{base.x + ux*along - uy*side, base.y + uy*along + ux*side}
	}
	var end [][2]float64 // along from the end of the center line, side
	switch s.form {
	case 1:
		end = [][2]float64{{t/2 + g, -t / 2}, {g, 0}, {t/2 + g, t / 2}}
	case 2:
		k := -t / 2 // level bars run the whole width, upright ones stand between them
		if math.Abs(ux) < 0.5 {
			k = t/2 + g
		}
		end = [][2]float64{{k, -t / 2}, {k, t / 2}}
	default:
		e := t*0.2 + g
		end = [][2]float64{{e + t*0.3, -t / 2}, {e + t*0.08, -t * 0.32}, {e, 0}, {e + t*0.08, t * 0.32}, {e + t*0.3, t / 2}}
	}
	var out []pt
	for _, q := range end {
		out = append(out, at(a, q[0], q[1]))
	}
	for i := len(end) - 1; i >= 0; i-- {
		out = append(out, at(b, -end[i][0], end[i][1]))
	}
	return out
}

// row is a line of digits in the plane: (x, y) the top left of the first cell in millimeters, h the height of a digit.
type row struct {
	x, y, h float64
	n       int
	st      digitStyle
	colon   bool // a colon after the middle cell, as clocks have
}

// elem is one thing on the glass that can be dark or lit.
type elem struct {
	poly  []pt
	round bool // a disc around the polygon's center
	cell  int
	seg   int
	lit   bool
	core  []pt
}

func (r row) width() float64 { return (float64(r.n-1)*r.st.pitch + r.st.wide) * r.h }

// place splits a shown text into cells.
func (r row) place(text string) (cells []rune, point []bool, minus, colon bool) {
	cells, point = make([]rune, r.n), make([]bool, r.n)
	for i := range cells {
		cells[i] = ' '
	}
	var glyphs []rune
	dot := map[int]bool{}
	for i, c := range []rune(text) {
		switch {
		case c == '.':
			dot[len(glyphs)-1] = true
		case c == ':':
			colon = true
		case c == '-' && i == 0 && len(text) > 1 && text[1] != '-':
			minus = true
		default:
			glyphs = append(glyphs, c)
		}
	}
	at := r.n - len(glyphs)
	for i, g := range glyphs {
		if at+i >= 0 {
			cells[at+i] = g
		}
	}
	for i := range dot {
		if at+i >= 0 {
			point[at+i] = true
		}
	}
	return
}

// fits says whether the text has room: ".OL" needs a free cell to the left of the point.
func (r row) fits(text string) bool {
	k, lead := 0, len(text) > 0 && text[0] == '.'
	for _, c := range text {
		if c != '.' && c != ':' {
			k++
		}
	}
	if len(text) > 1 && text[0] == '-' && text[1] != '-' {
		k--
	}
	if lead {
		k++
	}
	if k > r.n {
		return false
	}
	cells, _, _, _ := r.place(text)
	return !(r.st.half && cells[0] != ' ' && cells[0] != '1')
}

func (r row) elems(text string) []elem {
	cells, point, minus, colon := r.place(text)
	s := r.st
	first := 0
	for first < r.n && cells[first] == ' ' {
		first++
	}
	if minus && s.minusNear && first > 0 && !(s.half && first == 1) {
		cells[first-1], minus = '-', false
	}
	var out []elem
	add := func(i, seg int, poly []pt, lit, round bool) {
		for k := range poly {
			up := 1 - poly[k].y
			poly[k] = pt{r.x + (float64(i)*s.pitch+poly[k].x+s.slant*(up-0.5))*r.h, r.y + poly[k].y*r.h}
		}
		out = append(out, elem{poly: poly, cell: i, seg: seg, lit: lit, round: round, core: core(poly)})
	}
	square := func(cx, cy, d float64) []pt {
		return []pt{{cx - d/2, cy - d/2}, {cx + d/2, cy - d/2}, {cx + d/2, cy + d/2}, {cx - d/2, cy + d/2}}
	}
	for i := 0; i < r.n; i++ {
		for seg := segA; seg <= segG; seg++ {
			if i == 0 && s.half && seg != segB && seg != segC {
				continue
			}
			add(i, seg, s.outline(seg), s.lit(cells[i], seg), false)
		}
		if i+1 < r.n && !r.colon {
			x := s.wide + s.pointGap + s.pointSize*0.5
			if s.ownCell {
				x = (s.wide + s.pitch) / 2
			}
			add(i, segPoint, square(x+s.slant*0.45, 1-s.pointSize/2, s.pointSize), point[i], s.point != 1)
		}
		if r.colon && i+1 == r.n/2 {
			x := (s.wide + s.pitch) / 2
			add(i, segColon, square(x, 0.33, s.pointSize), colon, s.point != 1)
			add(i, segColon, square(x, 0.7, s.pointSize), colon, s.point != 1)
		}
	}
	if !r.colon {
		far := 0.14
		if s.minusNear {
			far = 0.07
		}
		t := s.thick * 0.85
		add(0, segMinus, []pt{{-far - s.minusLen, 0.5 - t/2}, {-far, 0.5 - t/2}, {-far, 0.5 + t/2}, {-far - s.minusLen, 0.5 + t/2}}, minus, false)
	}
	return out
}

// core gives three points in the middle of a polygon, along its longest direction.
func core(p []pt) []pt {
	var c pt
	for _, q := range p {
		c.x += q.x / float64(len(p))
		c.y += q.y / float64(len(p))
	}
	x0, y0, x1, y1 := bounds(p)
	if x1-x0 > y1-y0 {
		k := (x1 - x0) * 0.25
		return []pt{{c.x - k, c.y}, c, {c.x + k, c.y}}
	}
	k := (y1 - y0) * 0.25
	var top, low pt // the slanted middle line
	top.x, low.x = c.x, c.x
	for _, q := range p {
		if q.y < c.y {
			top.x += (q.x - c.x) / float64(len(p))
		} else {
			low.x += (q.x - c.x) / float64(len(p))
		}
	}
	return []pt{{top.x, c.y - k}, c, {low.x, c.y + k}}
}

func (e elem) sdf(x, y float64) float64 {
	if e.round {
		return math.Hypot(x-e.core[1].x, y-e.core[1].y) - (e.poly[1].x-e.poly[0].x)/2
	}
	return sdPoly(x, y, e.poly)
}
