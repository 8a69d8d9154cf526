package render

import (
	"math"
	"math/rand/v2"
	"strings"
)

// Glyph is one lit mark of a row where it lies in the picture: a digit, a letter such as L, a point, a minus sign or a colon.
type Glyph struct {
	R       rune
	Centre  [2]float64
	Box     [4][2]float64 // of a digit's cell: top left, top right, bottom right, bottom left, its slant in it
	Seen    float64       // share of its contrast that is left where it is worst covered: 1 all, 0 none
	Outside bool          // some of it lies outside of the picture
}

// Row is one row of digits of a display.
type Row struct {
	Text   string // "-12.34", "0L", "12:45"
	Main   bool   // the number that the device is for; false for further rows and clocks
	Glyphs []Glyph
	Ends   [2][2]float64 // of what is lit, on the middle line of the digits
	Height float64       // of its digits in the picture, pixels
}

// View is one picture of a Panel, in colour as in JPEG: Cb and Cr at half size.
type View struct {
	W, H      int
	Y, Cb, Cr []byte
	Rows      []Row // empty where no number is shown
	Kind      string
	Light     bool // light digits on dark
	// Other is what may be taken for a row of digits and is none: words, scales, displays that are off. Both ends on the middle line, and the height.
	Other [][5]float64
}

// Panel is a device with a display somewhere in a room, to be photographed several times; or a room without one.
type Panel struct {
	w, h                 int
	rng                  *rand.Rand
	seed                 uint64
	k                    *kind
	tech                 tech
	tex                  *paint
	pose                 mat
	rows                 []panelRow
	tall                 float64 // main digit height in the picture
	unit                 float64 // texture pixels per main digit height
	win                  [4]float64
	light                bool
	bg                   [3]float64
	fg                   [3]float64
	room                 []func(*paint)
	spoil                spoiling
	empty                bool // the display shows nothing, or there is none
	ghostPoints, ghostly bool
	other                []otherLine
}

// otherLine is what is no row of digits: upper left corner, width, height; in the texture or in the picture.
type otherLine struct {
	x, y, w, h float64
	tex        bool
}

// panelRow is a row in the texture.
type panelRow struct {
	text   string
	main   bool
	marks  []panelMark
	x0, x1 float64 // lit
	y, h   float64 // upper edge and height
	slant  float64
}

type panelMark struct {
	r          rune
	x, y, w, h float64 // upper left of the cell without slant, its size
}

// spoiling is what light, lens, hand and sensor do to a picture.
type spoiling struct {
	gain, gamma float64
	cast        [3]float64
	gradient    [2]float64
	shade       [4]float64 // a point (shares), direction, brightness behind
	shadeSoft   float64
	glare       [][6]float64 // centre (shares), radii (pixels), direction, strength
	mirror      [][9]float64 // a bright thing reflected: centre, half sizes, brightness, softness, direction, bars across and along
	grain       [3]float64   // of the room: size in pixels, strength, how stretched
	fingers     [][5]float64 // a line and its half width
	skin        [3]float64
	blur        float64
	motion      [2]float64
	noise       float64
	sharpen     float64
	denoise     float64
	quality     int
	band        [4]float64 // rolling band: period, phase, depth, share that is lit
	haze        float64
}

// PanelOptions narrow what NewPanel draws; zero values leave it free.
type PanelOptions struct {
	W, H    int
	Kind    int  // from 1: the kind at that place of the table
	Nothing bool // a picture without a number
	Number  bool // a picture with one
	Close   bool // the window fills much of it
}

func (p *Panel) span(lo, hi float64) float64 { return lo + (hi-lo)*p.rng.Float64() }
func (p *Panel) chance(x float64) bool       { return p.rng.Float64() < x }
func (p *Panel) pick(r [2]int) int           { return r[0] + p.rng.IntN(r[1]-r[0]+1) }
func (p *Panel) grey(lo, hi float64) [3]float64 {
	g := p.span(lo, hi)
	return [3]float64{g, g, g}
}
func (p *Panel) colour(lo, hi, much float64) [3]float64 {
	g := p.span(lo, hi)
	var c [3]float64
	for i := range c {
		c[i] = math.Max(0, math.Min(255, g*(1+much*p.rng.NormFloat64())))
	}
	return c
}

// NewPanel draws the device number seed. One picture in three shows no number at all.
func NewPanel(seed uint64, o PanelOptions) *Panel {
	p := &Panel{w: o.W, h: o.H, seed: seed, rng: rand.New(rand.NewPCG(seed, 0x70616e656c))}
	if p.w == 0 {
		p.w, p.h = 1000, 750
	}
	nothing := p.chance(0.33)
	if o.Nothing || o.Number {
		nothing = o.Nothing
	}
	p.backdrop(nothing)
	if nothing && p.chance(0.6) {
		p.lighting(60)
		p.empty = true
		return p
	}
	i := p.rng.IntN(len(kinds))
	if o.Kind > 0 {
		i = o.Kind - 1
	}
	p.k = &kinds[i]
	p.empty = nothing
	p.tech = p.k.tech[p.rng.IntN(len(p.k.tech))]
	size := float64(p.w) / 1000
	p.tall = math.Min(170, math.Max(17, 66*math.Exp(0.55*p.rng.NormFloat64()))) * size
	if o.Close {
		p.tall = math.Max(12, float64(p.h)*p.span(0.12, 0.55))
	}
	p.compose()
	p.lighting(p.tall)
	return p
}

// backdrop is the room behind the device: plain, striped, cluttered, with words.
func (p *Panel) backdrop(busy bool) {
	w, h := float64(p.w), float64(p.h)
	base := p.colour(10, 240, 0.12)
	p.room = append(p.room, func(q *paint) {
		for i := range q.pix {
			q.pix[i] = float32(base[i%3])
		}
	})
	n := p.rng.IntN(14)
	if busy {
		n += 8
	}
	for range n {
		c, a := p.colour(5, 250, 0.2), p.span(0.4, 1)
		x, y, s := p.span(-0.1, 1.1)*w, p.span(-0.1, 1.1)*h, w*math.Exp(p.span(-4.5, -0.9))
		switch kind, u, v := p.rng.IntN(11), p.span(0.2, 2), p.span(-1, 1); kind {
		case 0, 1:
			r := s * p.span(0, 0.3)
			p.room = append(p.room, func(q *paint) { q.box(x, y, x+s*(1+u), y+s, r, c, a) })
		case 2:
			p.room = append(p.room, func(q *paint) { q.disc(x, y, s, c, a) })
		case 3: // a wire or an edge
			p.room = append(p.room, func(q *paint) { q.capsule(x, y, x+w*v, y+h*(u-1), 1+s*0.06, c, a) })
		case 4: // ribs, slots, keys
			k, rows, gap := 3+p.rng.IntN(12), 1+p.rng.IntN(4), p.span(1.3, 2.2)
			t, round := s*p.span(0.08, 0.3), p.chance(0.5)
			tall := t * p.span(0.6, 5)
			p.room = append(p.room, func(q *paint) {
				for i := range k {
					for j := range rows {
						r := 0.0
						if round {
							r = t / 3
						}
						q.box(x+float64(i)*t*gap, y+float64(j)*tall*1.4, x+float64(i)*t*gap+t, y+float64(j)*tall*1.4+tall, r, c, a)
					}
				}
			})
		case 9: // printed digits in boxes, as a counter with wheels has
			k, th := 3+p.rng.IntN(5), math.Max(8, s*p.span(0.15, 0.5))
			text, box := p.label(true), p.colour(5, 250, 0.1)
			thick, pitch := th*p.span(0.1, 0.22), th*p.span(0.8, 1.3)
			p.other = append(p.other, otherLine{x, y, pitch * float64(k), th, false})
			p.room = append(p.room, func(q *paint) {
				q.box(x-th*0.3, y-th*0.3, x+pitch*float64(k)+th*0.3, y+th*1.3, th*0.1, box, 1)
				for i := range k {
					q.word(string(text[i%len(text)]), x+float64(i)*pitch, y, th, thick, c, a)
				}
			})
		case 10: // a mesh
			k, step := 4+p.rng.IntN(16), s*p.span(0.05, 0.25)
			p.room = append(p.room, func(q *paint) {
				for i := range k {
					q.capsule(x+float64(i)*step, y, x+float64(i)*step+step*v, y+float64(k)*step, step*0.1, c, a)
					q.capsule(x, y+float64(i)*step, x+float64(k)*step, y+float64(i)*step, step*0.1, c, a)
				}
			})
		case 5: // a scale with numbers, as a gauge or a ruler has
			k, t := 5+p.rng.IntN(20), s*p.span(0.05, 0.15)
			text, step := p.label(true), s*p.span(0.1, 0.3)
			p.other = append(p.other, otherLine{x - t*2, y - t*4, step*5 + t*6, t * 3, false})
			p.room = append(p.room, func(q *paint) {
				for i := range k {
					l := t * 2
					if i%5 == 0 {
						l = t * 4
						q.word(text, x+float64(i)*step-t*2, y-t*4, t*3, t*0.4, c, a)
					}
					q.box(x+float64(i)*step, y, x+float64(i)*step+t*0.4, y+l, 0, c, a)
				}
			})
		default: // words, on a sticker or not
			text, th := p.label(p.chance(0.5)), math.Max(5, s*p.span(0.1, 0.45))
			paper, lines := p.colour(120, 255, 0.1), 1+p.rng.IntN(3)
			sticker, thick := p.chance(0.4), th*p.span(0.08, 0.24)
			p.other = append(p.other, otherLine{x, y, th * 0.87 * float64(len(text)), th, false})
			p.room = append(p.room, func(q *paint) {
				if sticker {
					q.box(x-th*0.4, y-th*0.4, x+th*0.87*float64(len(text))+th*0.4, y+th*1.5*float64(lines), 2, paper, 1)
				}
				for j := range lines {
					q.word(text, x, y+float64(j)*th*1.4, th, thick, c, a)
				}
			})
		}
	}
}

var printed = []string{"OFF", "HOLD", "RANGE", "10A", "COM", "CAT III", "600V", "1000V", "MAX", "MIN", "DCV", "ACV", "TRUE RMS", "SELECT", "POWER", "MODE", "SET",
	"230V", "50Hz", "60Hz", "NO.", "TYPE", "MADE", "INPUT", "OUTPUT", "AUTO", "AC", "DC", "mA", "uA", "V", "A", "kHz", "%RH", "TEMP", "LOW BAT", "FUSED", "WARNING", "MODEL"}

// label is a word, or a number as it is printed on things.
func (p *Panel) label(number bool) string {
	if !number {
		s := printed[p.rng.IntN(len(printed))]
		if p.chance(0.3) {
			s += " " + printed[p.rng.IntN(len(printed))]
		}
		return s
	}
	var b strings.Builder
	for i := range 1 + p.rng.IntN(7) {
		if i > 0 && p.chance(0.12) {
			b.WriteByte(".-/: "[p.rng.IntN(5)])
		}
		b.WriteByte(byte('0' + p.rng.IntN(10)))
	}
	return b.String()
}

// words7 are what displays of seven segments show beside numbers; no digit of them may be taken for one.
var words7 = []string{"L0", "H1", "Err", "E1", "E02", "F4", "PA", "dEF", "0FF", "0n", "AUt", "CAL", "5Et", "P1", "C", "F", "23C", "72F", "L0", "Hi", "rUn", "5EC", "45H",
	"nC", "0PE", "tr", "dC", "A3", "U", "E", "Fr", "19C", "66F"}

// letters7 are the letters of seven segments that Segments lacks.
var letters7 = map[rune]byte{'A': 0x77, 'b': 0x7c, 'C': 0x39, 'd': 0x5e, 'P': 0x73, 'U': 0x3e, 'H': 0x76, 'I': 0x06, 'S': 0x6d, 't': 0x78, 'u': 0x1c, 'i': 0x04, 'f': 0x71}

func (p *Panel) maskOf(f font, r rune) byte {
	if m, ok := letters7[r]; ok {
		return m
	}
	return f.mask(r)
}

// number is a text for a row of n places.
func (p *Panel) number(n int, k *kind) string {
	if p.chance(k.over) && n >= 2 {
		return [...]string{"0L", "0.L", ".0L", "0L"}[p.rng.IntN(4)]
	}
	if p.chance(0.05) { // letters, as codes and states are shown
		if w := words7[p.rng.IntN(len(words7))]; len(w) <= n {
			return w
		}
	}
	show := n
	if p.chance(0.35) && n > 1 {
		show = 1 + p.rng.IntN(n-1)
	}
	zeros := p.chance(0.05)
	dot := -1
	if show > 1 && p.chance(k.dot) {
		dot = p.rng.IntN(show - 1)
		if p.chance(0.04) {
			dot = -2 // before the first
		}
	}
	var b strings.Builder
	if p.chance(k.minus) {
		b.WriteByte('-')
	}
	if dot == -2 {
		b.WriteByte('.')
	}
	for i := range show {
		d := p.rng.IntN(10)
		if i == 0 && p.chance(0.25) {
			d = 1
		}
		if zeros || p.chance(0.12) {
			d = 0
		}
		if !zeros && i == 0 && d == 0 && dot != 0 && p.chance(0.7) {
			d = 1 + p.rng.IntN(9)
		}
		b.WriteByte(byte('0' + d))
		if i == dot {
			b.WriteByte('.')
		}
	}
	return b.String()
}

func (p *Panel) font() font {
	f := font{width: p.span(0.42, 0.7), stroke: p.span(0.08, 0.2), gap: p.span(0.0, 0.06), bevel: p.rng.Float64(),
		slant: math.Tan(p.span(0, 14) * math.Pi / 180), tail7: p.chance(0.25), tail69: !p.chance(0.12), dot: p.span(0.07, 0.19), round: p.chance(0.5)}
	if p.chance(0.4) {
		f.slant = 0
	}
	switch {
	case p.chance(0.25): // thin strokes
		f.stroke = p.span(0.045, 0.09)
	case p.chance(0.12): // fat ones
		f.stroke = p.span(0.19, 0.25)
	}
	if p.chance(0.2) {
		f.gap = p.span(0.05, 0.13)
	}
	if p.chance(0.3) {
		f.upright = p.span(0.7, 1.4)
	}
	switch x := p.rng.Float64(); {
	case x < 0.4:
		f.form = trapezoid
		f.gap *= 0.8
	case x < 0.55:
		f.form = capsuled
	case x < 0.6 && p.tech == led:
		f.form, f.beads = beaded, 2+p.rng.IntN(3)
	}
	if f.form == trapezoid {
		f.stroke = math.Min(f.stroke, 0.2)
	}
	if f.dot < f.stroke*0.6 {
		f.dot = f.stroke * 0.6
	}
	if p.chance(0.15) { // tiny points
		f.dot = p.span(0.035, 0.075)
	}
	f.pitch = f.width + p.span(0.08, 0.4)
	if p.chance(0.12) {
		f.pitch = f.width + p.span(0.3, 0.6)
	}
	if p.chance(0.5) { // the point has its own room
		f.pitch = math.Max(f.pitch, f.width+f.dot*0.9+0.02)
	}
	return f
}

// segment draws one segment; at places a point of the digit in the texture, whose height is scale.
func (f font) segment(c *canvas, s int, at func(point) point, scale float64) {
	if f.form != beaded {
		o := f.shape(s)
		for i := range o {
			o[i] = at(o[i])
		}
		c.fill(o, 1)
		return
	}
	a, b := f.ends(s)
	for k := range f.beads {
		t := (float64(k) + 0.5) / float64(f.beads)
		q := at(point{a.x + (b.x-a.x)*t, a.y + (b.y-a.y)*t})
		c.disc(q.x, q.y, f.stroke*scale*0.5, 1)
	}
}

// looks chooses the colours of pane, digits and unlit segments.
func (p *Panel) looks() (off float64, ghost float64) {
	contrast, burnt := p.span(0.25, 0.92), 1.0
	if p.chance(0.25) {
		contrast = p.span(0.14, 0.35)
	}
	switch p.tech {
	case reflective, paper:
		g := p.span(90, 225)
		p.bg = [3]float64{g * p.span(0.85, 1), g, g * p.span(0.72, 1)}
		if p.tech == paper {
			p.bg = p.grey(190, 245)
		}
		ink := p.span(0.8, 1.1)
		p.fg = [3]float64{p.bg[0] * (1 - contrast*ink), p.bg[1] * (1 - contrast*ink), p.bg[2] * (1 - contrast*0.95)}
	case backlit:
		c := [...][3]float64{{150, 220, 70}, {90, 230, 120}, {70, 130, 255}, {255, 150, 40}, {235, 240, 250}, {120, 235, 235}, {255, 90, 80}, {210, 120, 250}}[p.rng.IntN(8)]
		k := p.span(0.55, 1.15)
		for i := range c {
			p.bg[i] = c[i] * k * p.span(0.9, 1.1)
			p.fg[i] = p.bg[i] * (1 - contrast*p.span(0.9, 1))
		}
	case negative:
		c := [...][3]float64{{240, 245, 255}, {120, 190, 255}, {255, 170, 60}, {200, 255, 220}, {255, 110, 90}}[p.rng.IntN(5)]
		d := [...][3]float64{{12, 14, 22}, {15, 30, 110}, {40, 25, 10}, {25, 25, 25}}[p.rng.IntN(4)]
		for i := range c {
			p.bg[i] = d[i] * p.span(0.7, 1.6)
			p.fg[i] = p.bg[i] + contrast*(c[i]-p.bg[i])
		}
	default:
		c := [...][3]float64{{255, 40, 25}, {255, 60, 30}, {60, 255, 80}, {90, 140, 255}, {255, 170, 30}, {240, 245, 255}}[p.rng.IntN(6)]
		if p.tech == vacuum {
			c = [...][3]float64{{90, 255, 220}, {80, 220, 255}, {150, 255, 190}}[p.rng.IntN(3)]
		}
		d := p.span(4, 60)
		p.bg = [3]float64{d * p.span(0.8, 1.5), d, d * p.span(0.7, 1.1)}
		k := p.span(0.45, 1.9) // above one the cores burn out
		burnt = math.Max(1, k)
		for i := range c {
			p.fg[i] = p.bg[i] + c[i]*k
		}
	}
	lum := func(c [3]float64) float64 { return 0.299*c[0] + 0.587*c[1] + 0.114*c[2] }
	p.light = lum(p.fg) > lum(p.bg)
	p.ghostPoints = p.chance(0.5)
	if p.chance(0.55) {
		off = p.span(0.02, 0.42)
		if p.tech == led || p.tech == vacuum {
			off *= 0.7
		}
	}
	if p.ghostly = p.chance(0.15); p.ghostly {
		ghost = p.span(0.05, 0.35)
		if p.light {
			ghost *= 0.6
		}
	}
	return off / (burnt * burnt), ghost / (burnt * burnt)
}

// compose draws the device into its texture.
func (p *Panel) compose() {
	k := p.k
	off, ghost := p.looks()
	f := p.font()
	places := p.pick(k.digits)
	// the rows, in units of the main digit height, the main row's upper left corner at 0,0
	type plan struct {
		x, y, h float64
		f       font
		n       int
		text    string
		main    bool
	}
	text := p.number(places, k)
	rows := []plan{{0, 0, 1, f, places, text, true}}
	right := float64(places)*f.pitch + f.slant
	right0 := float64(places-1)*f.pitch + f.width + f.slant // where the last digit ends
	left := -p.span(0.1, 0.5)
	if k.minus > 0 {
		left -= p.span(0.35, 0.9)
	}
	up, down := -p.span(0.12, 0.5), 1+p.span(0.12, 0.5)
	further := p.pick(k.more)
	if further == 0 && p.chance(0.3) {
		further = 1
	}
	for range further {
		h := p.span(0.28, 0.72)
		if k.equal && p.chance(0.85) {
			h = 1
		}
		n := min(places, 2+p.rng.IntN(4))
		if h == 1 {
			n = places
		}
		g := f
		if h != 1 && p.chance(0.5) {
			g = p.font()
		}
		t := p.number(n, k)
		if p.chance(k.clock) {
			n = 4
			t = string(rune('0'+p.rng.IntN(3))) + string(rune('0'+p.rng.IntN(10))) + ":" + string(rune('0'+p.rng.IntN(6))) + string(rune('0'+p.rng.IntN(10)))
		}
		gap := p.span(0.14, 0.5)
		x := p.span(0, math.Max(0, right-float64(n)*g.pitch*h))
		if h == 1 {
			x = 0
		}
		if p.chance(0.55) {
			rows = append(rows, plan{x, down - 0.1 + gap, h, g, n, t, h == 1})
			down += gap + h
		} else {
			rows = append(rows, plan{x, up + 0.1 - gap - h, h, g, n, t, h == 1})
			up -= gap + h
		}
	}
	signUp, signDown := 0.0, 0.0
	if p.chance(k.signs) {
		signUp = p.span(0.18, 0.4)
		up -= signUp + 0.08
	}
	if p.chance(k.bar) || p.chance(k.signs*0.5) {
		signDown = p.span(0.18, 0.35)
		down += signDown + 0.08
	}
	signRight, signGap := 0.0, 0.02+0.5*p.rng.Float64()*p.rng.Float64()
	if p.chance(k.signs) || p.chance(0.45) {
		signRight = p.span(0.25, 1.1)
		right += signRight + signGap
	}
	right += p.span(0.05, 0.5)
	if p.chance(0.2) { // a window much larger than its number
		left -= p.span(0, 2)
		right += p.span(0, 1.5)
		up -= p.span(0, 1.2)
		down += p.span(0, 1.2)
	}
	// the body round the window, and how far the picture reaches
	var pad [4]float64 // left, up, right, down
	bezel := p.span(0.05, 0.5)
	for i := range pad {
		pad[i] = bezel + p.span(0.2, 1.5)
	}
	switch k.body {
	case handheld:
		pad[3] += p.span(2, 6)
	case clampon:
		pad[1] += p.span(1, 3)
		pad[3] += p.span(1, 3)
	case bench:
		pad[2] += p.span(1, 5)
		pad[3] += p.span(0, 1.5)
	case wall:
		pad[3] += p.span(0, 2)
	}
	wide, high := right-left, down-up
	fit := math.Min(float64(p.w)*0.96/wide, float64(p.h)*0.94/high)
	p.tall = math.Min(p.tall, fit)
	h := math.Max(9, math.Min(150, p.tall))
	p.unit = h
	reach := 1.3 * float64(p.w) / p.tall
	for i := range pad {
		pad[i] = math.Min(pad[i], reach)
	}
	ox, oy := (pad[0]-left)*h, (pad[1]-up)*h // where the main row's corner lies
	tw, th := int((pad[0]+wide+pad[2])*h)+2, int((pad[1]+high+pad[3])*h)+2
	body := p.colour(12, 240, 0.15)
	p.tex = newPaint(tw, th, body)
	t := p.tex
	p.win = [4]float64{pad[0] * h, pad[1] * h, (pad[0] + wide) * h, (pad[1] + high) * h}
	b := bezel * h
	rim := p.colour(8, 245, 0.1)
	round := p.span(0, 0.25) * h
	t.box(p.win[0]-b, p.win[1]-b, p.win[2]+b, p.win[3]+b, round+b*0.5, rim, 1)
	if p.chance(0.4) { // a second frame, such as a raised edge
		e := b * p.span(0.1, 0.6)
		t.box(p.win[0]-e, p.win[1]-e, p.win[2]+e, p.win[3]+e, round, p.colour(5, 250, 0.1), 1)
	}
	t.box(p.win[0], p.win[1], p.win[2], p.win[3], round*0.6, p.bg, 1)
	p.furniture(body, b)
	// what is lit, what is not, and the old value
	lit, unlit, old := newCanvas(tw, th), newCanvas(tw, th), newCanvas(tw, th)
	for _, r := range rows {
		if p.empty {
			r.text = ""
		}
		row := p.digits(lit, unlit, old, ox+r.x*h, oy+r.y*h, r.h*h, r.f, r.n, r.text)
		row.main = r.main
		if len(row.marks) > 0 {
			p.rows = append(p.rows, row)
		} else {
			p.other = append(p.other, otherLine{ox + r.x*h, row.y, float64(r.n) * r.f.pitch * r.h * h, row.h, true})
		}
	}
	if p.empty {
		p.tall = math.Max(p.tall, 12)
	}
	signs := newCanvas(tw, th)
	p.signs(signs, ox, oy, h, [4]float64{p.win[0], p.win[1], p.win[2], p.win[3]}, signUp, signDown, signRight, right0-f.slant+signGap)
	p.ink(lit, unlit, old, signs, off, ghost, h)
	p.place(float64(p.w), float64(p.h))
}

// digits draws a row and says where its marks are.
func (p *Panel) digits(lit, unlit, old *canvas, x, y, h float64, f font, n int, text string) panelRow {
	row := panelRow{text: text, y: y, h: h, slant: f.slant}
	digits := 0
	for _, r := range text {
		if r != '-' && r != '.' && r != ':' {
			digits++
		}
	}
	lead := max(0, n-digits)
	small, bottom := 1.0, true
	if p.chance(p.k.small) && strings.Contains(text, ".") {
		small, bottom = p.span(0.55, 0.8), p.chance(0.7)
	}
	colonAt := strings.Index(text, ":")
	// a cell: its corner and its scale
	cx := x
	cell := func(r rune, k float64) {
		top := y
		if bottom {
			top = y + h*(1-k)
		}
		at := func(q point) point { return point{cx + (q.x+f.slant*(1-q.y))*h*k, top + q.y*h*k} }
		seg := func(c *canvas, mask byte) {
			for s := range 7 {
				if mask>>s&1 == 1 {
					f.segment(c, s, at, h*k)
				}
			}
		}
		seg(unlit, 0x7f)
		if p.ghostPoints { // the points that are not lit show too
			d := f.dot * h * k
			unlit.disc(cx+f.width*h*k+(f.pitch-f.width)*h*k*0.5, top+h*k-d/2, d/2, 1)
		}
		if p.ghostly {
			seg(old, f.mask(rune('0'+p.rng.IntN(10))))
		}
		if r != ' ' {
			seg(lit, p.maskOf(f, r))
			row.marks = append(row.marks, panelMark{r, cx, top, f.width * h * k, h * k})
		}
	}
	touch := p.chance(0.3)
	sink := 0.0
	if p.chance(0.3) {
		sink = p.span(0, 0.12)
	}
	where, comma, tuck := p.rng.Float64(), p.chance(0.06), p.span(0, 0.6)
	dotAt := func(after float64, k float64) { // after is the right edge of the digit before the point
		d := f.dot * h * k
		gap := (f.pitch - f.width) * h * k
		mx := after + gap*(0.35+0.3*where)
		if touch {
			mx = after + d*(tuck-0.1)
			if where > 0.7 {
				mx = after + gap - d*0.45
			}
		}
		my := y + h + sink*h - d/2
		mx += f.slant * (y + h - my)
		if f.round {
			lit.disc(mx, my, d/2, 1)
			if comma {
				lit.fill([]point{{mx - d*0.1, my}, {mx + d*0.5, my}, {mx, my + d}, {mx - d*0.4, my + d}}, 1)
			}
		} else {
			lit.fill([]point{{mx - d/2, my - d/2}, {mx + d/2, my - d/2}, {mx + d/2, my + d/2}, {mx - d/2, my + d/2}}, 1)
		}
		row.marks = append(row.marks, panelMark{'.', mx - d/2, my - d/2, d, d})
	}
	if text == "" {
		for range n {
			cell(' ', 1)
			cx += f.pitch * h
		}
		return row
	}
	first := x + float64(lead)*f.pitch*h
	if !strings.HasPrefix(text, "-") && p.ghostPoints { // a sign that is not lit
		bw, bt := p.span(0.22, 0.5)*h, math.Max(f.stroke*0.8, 0.06)*h
		sx, my := x+(f.slant*0.5-p.span(0.05, 0.3))*h-bw, y+h/2
		unlit.fill([]point{{sx, my - bt/2}, {sx + bw, my - bt/2}, {sx + bw, my + bt/2}, {sx, my + bt/2}}, 1)
	}
	if strings.HasPrefix(text, "-") {
		bw, bt := p.span(0.13, 0.5)*h, math.Max(f.stroke*p.span(0.6, 1.1), 0.05)*h
		sx := first
		if lead > 0 && p.chance(0.6) {
			sx = x
		}
		if lead > 0 && p.chance(0.3) { // the sign in a digit's place, drawn by its middle bar
			sx = first - (f.pitch-0.1)*h + 0.5*f.slant*h
			bw = (f.width - 0.1) * h
		} else {
			away := p.span(0.05, 0.22)
			if p.chance(0.25) {
				away = p.span(0.2, 0.7)
			}
			sx += (f.slant*0.5-away)*h - bw
		}
		my := y + h/2
		lit.fill([]point{{sx, my - bt/2}, {sx + bw, my - bt/2}, {sx + bw, my + bt/2}, {sx, my + bt/2}}, 1)
		row.marks = append(row.marks, panelMark{'-', sx, my - bt/2, bw, bt})
	}
	for range lead {
		cell(' ', 1)
		cx += f.pitch * h
	}
	k := 1.0
	for i, r := range text {
		switch {
		case r == '-':
		case r == '.':
			if digits > 0 && (i == 0 || text[i-1] == '-') { // before the first
				dotAt(cx-(f.pitch-f.width)*h, 1)
			} else {
				dotAt(cx-(f.pitch-f.width)*h*k, k)
				k = small
			}
		case r == ':':
			gap := (f.pitch - f.width) * h
			d := math.Max(0.6*f.dot, 0.08) * h
			for _, v := range [2]float64{0.3, 0.7} {
				my := y + v*h
				mx := cx - gap/2 + f.slant*(1-v)*h
				lit.disc(mx, my, d/2, 1)
			}
			row.marks = append(row.marks, panelMark{':', cx - gap/2 + f.slant*0.5*h - d/2, y + 0.3*h, d, 0.4 * h})
		default:
			cell(r, k)
			cx += f.pitch * h * k
		}
	}
	_ = colonAt
	row.x0, row.x1 = math.Inf(1), math.Inf(-1)
	for _, m := range row.marks {
		row.x0, row.x1 = math.Min(row.x0, m.x), math.Max(row.x1, m.x+m.w+f.slant*0.5*m.h)
	}
	return row
}

// units stand close behind a number, as high as a third to a half of it.
var units = []string{"V", "mV", "kV", "A", "mA", "µA", "Ω", "kΩ", "MΩ", "µF", "nF", "°C", "°F", "C", "F", "%", "%RH", "Hz", "kHz", "Pa", "kPa", "hPa", "mbar", "bar", "psi", "inH2O", "mmH2O",
	"W", "kW", "kWh", "VA", "lx", "dB", "s", "min", "g", "kg", "lb", "m/s", "l", "V~", "A~", "VAC", "VDC", "AC", "DC", "ppm", "rpm", "mm", "°", "T1-T2", "A", "V", "A", "V", "E", "H", "L", "S", "I"}

// signs fills the rest of the window: units, words, a bar graph, a battery.
func (p *Panel) signs(c *canvas, ox, oy, h float64, win [4]float64, up, down, right, edge float64) {
	w := &paintCanvas{c, p.span(0.7, 1.15)}
	words := []string{"AUTO", "DC", "AC", "HOLD", "mV", "MAX", "V", "kHz", "MIN", "REL", "A", "mA", "Hz", "%", "LO", "T1", "M", "F", "C", "LOW", "PPM"}
	word := func(x, y, s float64) float64 {
		end := w.word(words[p.rng.IntN(len(words))], x, y, s, s*p.span(0.1, 0.2))
		p.other = append(p.other, otherLine{x, y, end - x, s, true})
		return end
	}
	if up > 0 {
		y := win[1] + 0.06*h
		for x := win[0] + p.span(0.05, 0.6)*h; x < win[2]-1.2*up*h; {
			if p.chance(0.12) { // a battery
				w.box(x, y, x+up*h*1.3, y+up*h*0.6)
				x += up * h * 1.8
				continue
			}
			x = word(x, y, up*h*p.span(0.7, 1)) + p.span(0.15, 1.5)*h
		}
	}
	if right > 0 {
		x := ox + edge*h
		unit := func(x, y, s float64) float64 {
			end := w.word(units[p.rng.IntN(len(units))], x, y, s, s*p.span(0.08, 0.2))
			p.other = append(p.other, otherLine{x, y, end - x, s, true})
			return end
		}
		s := math.Min(right*0.7, p.span(0.16, 0.62)) * h
		switch p.rng.IntN(4) {
		case 0: // at the top, as a degree sign stands
			unit(x, oy+p.span(-0.05, 0.15)*h, s)
		case 1: // on the line
			unit(x, oy+h-s, s)
		default:
			unit(x, oy+p.span(0, 1)*(h-s), s)
		}
		if s < 0.35*h && p.chance(0.4) {
			word(x, oy+p.span(0.5, 0.7)*h, s)
		}
	}
	if down > 0 {
		y := win[3] - (down+0.06)*h
		if p.chance(p.k.bar) {
			n, on := 15+p.rng.IntN(40), p.rng.Float64()
			step := (win[2] - win[0]) * 0.92 / float64(n)
			for i := range n {
				if float64(i) < on*float64(n) || i%10 == 0 {
					x := win[0] + (win[2]-win[0])*0.04 + float64(i)*step
					w.box(x, y, x+step*0.55, y+down*h*0.8)
				}
			}
		} else {
			for x := win[0] + p.span(0.05, 1)*h; x < win[2]-1.2*down*h; {
				x = word(x, y, down*h*p.span(0.7, 1)) + p.span(0.3, 2)*h
			}
		}
	}
}

// paintCanvas draws words on a canvas.
type paintCanvas struct {
	c    *canvas
	wide float64 // of a letter, against the usual width
}

func (w *paintCanvas) box(x0, y0, x1, y1 float64) {
	w.c.fill([]point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}, 1)
}

func (w *paintCanvas) word(s string, x, y, h, t float64) float64 {
	q := &paint{w: w.c.w, h: w.c.h}
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
			n := point{x + float64(text[i]-'0')*u*0.9*w.wide, y + float64(text[i+1]-'0')*u}
			if last.x >= 0 {
				a, dx, dy := last, n.x-last.x, n.y-last.y
				l := math.Max(1e-9, dx*dx+dy*dy)
				for v := max(0, int(math.Min(a.y, n.y)-t)); v <= min(q.h-1, int(math.Max(a.y, n.y)+t)+1); v++ {
					for o := max(0, int(math.Min(a.x, n.x)-t)); o <= min(q.w-1, int(math.Max(a.x, n.x)+t)+1); o++ {
						px, py := float64(o)+0.5, float64(v)+0.5
						k := math.Max(0, math.Min(1, ((px-a.x)*dx+(py-a.y)*dy)/l))
						d := t/2 - math.Hypot(px-a.x-k*dx, py-a.y-k*dy) + 0.5
						if g := float32(math.Max(0, math.Min(1, d))); g > w.c.pix[v*q.w+o] {
							w.c.pix[v*q.w+o] = g
						}
					}
				}
			}
			last = n
			i++
		}
		x += 5.2 * u * w.wide
	}
	return x
}

// furniture is what stands on the body round the window: words, keys, a dial, jacks, screws.
func (p *Panel) furniture(body [3]float64, b float64) {
	t, h := p.tex, p.unit
	w, ht := float64(t.w), float64(t.h)
	tone := p.colour(5, 250, 0.15)
	dialText := p.span(0.15, 0.4)
	for range p.rng.IntN(p.k.print + 1) {
		s := h * p.span(0.12, 0.5)
		x, y := p.span(0, 1)*w, p.span(0, 1)*ht
		if x > p.win[0]-b-s*4 && x < p.win[2]+b && y > p.win[1]-b-s*1.3 && y < p.win[3]+b {
			continue // not across the window
		}
		end := t.word(p.label(p.chance(0.5)), x, y, s, s*p.span(0.08, 0.22), tone, p.span(0.6, 1))
		p.other = append(p.other, otherLine{x, y, end - x, s, true})
	}
	if p.chance(0.6) { // a name above or below the window, close to it
		s := h * p.span(0.12, 0.4)
		y := p.win[3] + b + 0.1*h
		if p.chance(0.5) {
			y = p.win[1] - b - s - 0.1*h
		}
		x := p.win[0] + p.span(0, 0.7)*(p.win[2]-p.win[0])
		end := t.word(p.label(p.chance(0.4)), x, y, s, s*p.span(0.1, 0.2), tone, 0.9)
		p.other = append(p.other, otherLine{x, y, end - x, s, true})
	}
	room, above := ht-p.win[3]-b, p.win[1]-b
	if p.k.body == clampon && above > 2*h && (room < 2*h || p.chance(0.5)) {
		room = -above
	}
	if (p.k.body == handheld || p.k.body == clampon || p.chance(0.15)) && math.Abs(room) > 2*h {
		r := math.Min(math.Abs(room)*0.35, (p.win[2]-p.win[0])*0.3)
		cx, cy := (p.win[0]+p.win[2])/2, p.win[3]+b+room*0.5
		if room < 0 {
			cy = above * 0.5
		}
		t.disc(cx, cy, r, p.colour(5, 240, 0.1), 1)
		t.capsule(cx, cy, cx+r*0.8*math.Cos(p.span(0, 6)), cy-r*0.7, r*0.1, tone, 1)
		for i := range 6 + p.rng.IntN(12) {
			a := float64(i) * 0.45
			t.word(p.label(p.chance(0.6)), cx+1.25*r*math.Cos(a), cy+1.25*r*math.Sin(a), h*dialText, h*dialText*0.15, tone, 0.9)
		}
		p.other = append(p.other, otherLine{cx - r, cy - r, 2 * r, 2 * r, true}, otherLine{cx - 1.4*r, cy - 1.3*r, 2.8 * r, h * dialText * 1.3, true})
	}
	if p.chance(0.4) { // jacks or lamps in a row
		n, r, y := 2+p.rng.IntN(3), h*p.span(0.12, 0.45), p.span(0, 1)*ht
		x0, step := p.span(0, 0.5)*w, h*p.span(0.8, 2)
		c, d := p.colour(5, 245, 0.4), p.colour(5, 60, 0.2)
		if y < p.win[1]-b-r || y > p.win[3]+b+r {
			for i := range n {
				x := x0 + float64(i)*step
				t.disc(x, y, r, c, 1)
				t.disc(x, y, r*0.5, d, 1)
				t.word(p.label(p.chance(0.4)), x-r, y-r*1.8, r*0.6, r*0.1, tone, 1)
			}
			p.other = append(p.other, otherLine{x0 - r, y - r, float64(n-1)*step + 2*r, 2 * r, true})
		}
	}
	keyed, keyTone := p.chance(0.6), p.colour(5, 250, 0.1)
	for range p.rng.IntN(9) { // keys
		s := h * p.span(0.3, 0.8)
		x, y := p.span(0, 1)*w, p.span(0, 1)*ht
		if x > p.win[0]-b-s*2 && x < p.win[2]+b && y > p.win[1]-b-s && y < p.win[3]+b {
			continue
		}
		wide := s * p.span(0.8, 1.8)
		t.box(x, y, x+wide, y+s*0.7, s*p.span(0, 0.4), p.colour(5, 245, 0.3), 1)
		if keyed {
			t.word(p.label(p.chance(0.2)), x+wide*0.15, y+s*0.2, s*0.28, s*0.05, keyTone, 1)
			p.other = append(p.other, otherLine{x, y, wide, s * 0.7, true})
		}
	}
	_ = body
}

// ink puts the segments into the window.
func (p *Panel) ink(lit, unlit, old, signs *canvas, off, ghost, h float64) {
	t := p.tex
	var shadow [3]float64
	if p.tech == reflective && p.chance(0.5) || p.tech == backlit && p.chance(0.25) {
		shadow = [3]float64{p.span(-2, 3) * h / 50, p.span(0, 3) * h / 50, p.span(0.12, 0.4)}
	}
	var halo *canvas
	glow := 0.0
	if p.tech == led || p.tech == vacuum || p.tech == negative && p.chance(0.4) {
		glow = p.span(0, 0.5)
		if p.chance(0.25) {
			glow = p.span(0.4, 1.1)
		}
		halo = newCanvas(t.w, t.h)
		copy(halo.pix, lit.pix)
		blur(halo.pix, t.w, t.h, p.span(0.05, 0.18)*h)
	}
	lamp := [3]float64{p.span(-0.2, 1.2), p.span(-0.2, 1.2), 0}
	if p.chance(0.5) {
		lamp[2] = p.span(0, 0.5)
	}
	sign := p.span(0.7, 1)
	ripple := p.span(0.75, 1.05) // lit segments are not all alike
	for y := max(0, int(p.win[1])); y < min(t.h, int(p.win[3])+1); y++ {
		for x := max(0, int(p.win[0])); x < min(t.w, int(p.win[2])+1); x++ {
			i := y*t.w + x
			if lamp[2] > 0 {
				d := math.Hypot((float64(x)-p.win[0])/(p.win[2]-p.win[0])-lamp[0], (float64(y)-p.win[1])/(p.win[3]-p.win[1])-lamp[1])
				k := float32(1 - lamp[2]*math.Min(1, d/1.4))
				if p.tech != led && p.tech != vacuum {
					for c := range 3 {
						t.pix[3*i+c] *= k
					}
				}
			}
			a := float64(unlit.pix[i]) * off
			a = math.Max(a, float64(old.pix[i])*ghost)
			if shadow[2] > 0 {
				a = math.Max(a, lit.at(float64(x)+0.5-shadow[0], float64(y)+0.5-shadow[1])*shadow[2])
			}
			a = math.Max(a, float64(signs.pix[i])*sign)
			a = math.Max(a, float64(lit.pix[i]))
			if a > 0.003 {
				if p.light {
					p.add(i, a*math.Min(1, ripple))
				} else {
					for c := range 3 { // ink takes the same share of whatever light is there
						t.pix[3*i+c] *= float32(1 - a*(1-p.fg[c]/math.Max(1, p.bg[c])))
					}
				}
			}
			if halo != nil && glow > 0 {
				g := float64(halo.pix[i]) * glow
				for c := range 3 {
					t.pix[3*i+c] += float32((p.fg[c] - p.bg[c]) * g * (1 - a))
				}
			}
		}
	}
}

func (p *Panel) add(i int, a float64) {
	for c := range 3 {
		p.tex.pix[3*i+c] += float32((p.fg[c] - p.bg[c]) * a)
	}
}

// place sets the pose.
func (p *Panel) place(w, h float64) {
	roll := p.rng.NormFloat64() * 4
	switch x := p.rng.Float64(); {
	case x < 0.1:
		roll = p.span(-45, 45)
	case x < 0.35:
		roll = p.span(-18, 18)
	}
	yaw, pitch := p.rng.NormFloat64()*9, p.rng.NormFloat64()*9
	clip := func(x, m float64) float64 { return math.Max(-m, math.Min(m, x)) * math.Pi / 180 }
	r, ya, pi := clip(roll, 45), clip(yaw, 28), clip(pitch, 28)
	k := p.tall / p.unit
	cx, cy := (p.win[0]+p.win[2])/2, (p.win[1]+p.win[3])/2
	for range 2 {
		far := 3.5 * math.Max(p.win[2]-p.win[0], p.win[3]-p.win[1]) * k
		project := func(x, y float64) (float64, float64) {
			x, y = (x-cx)*k, (y-cy)*k
			x, y = x*math.Cos(r)-y*math.Sin(r), x*math.Sin(r)+y*math.Cos(r)
			z := x*math.Sin(ya) + y*math.Sin(pi)
			s := far / (far + z)
			return x * math.Cos(ya) * s, y * math.Cos(pi) * s
		}
		x0, y0, x1, y1 := 1e9, 1e9, -1e9, -1e9
		var src, dst [4][2]float64
		for i, c := range [4][2]float64{{p.win[0], p.win[1]}, {p.win[2], p.win[1]}, {p.win[2], p.win[3]}, {p.win[0], p.win[3]}} {
			x, y := project(c[0], c[1])
			src[i], dst[i] = c, [2]float64{x, y}
			x0, y0, x1, y1 = math.Min(x0, x), math.Min(y0, y), math.Max(x1, x), math.Max(y1, y)
		}
		if fit := math.Min(w*0.97/(x1-x0), h*0.97/(y1-y0)); fit < 1 { // turned, it would not fit: from farther away
			k *= fit
			continue
		}
		at := func(lo, hi, size float64) float64 {
			room := size - (hi - lo)
			v := math.Max(0, math.Min(1, 0.5+0.22*p.rng.NormFloat64()))*room - lo
			if p.chance(0.05) { // cut off by the edge
				v += p.span(-0.5, 0.5) * (hi - lo)
			}
			return v
		}
		dx, dy := at(x0, x1, w), at(y0, y1, h)
		for i := range dst {
			dst[i][0] += dx
			dst[i][1] += dy
		}
		p.pose = Homography(src, dst)
		break
	}
	if p.pose == (mat{}) { // twice too large does not happen: the second pass fits by construction
		p.pose = mat{k, 0, w/2 - cx*k, 0, k, h/2 - cy*k, 0, 0, 1}
	}
	p.tall = k * p.unit
}
