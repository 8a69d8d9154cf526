package otherrender

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// show is what the glass is asked to show in one drawing.
type show struct {
	main string
	mode int // 0 as shown, 1 every element of the main row lit, 2 none: for measuring what can be seen
	off  bool
}

type tech int

const (
	positive tech = iota // dark on light
	negative             // light on dark liquid crystal
	led
)

// display is the glass of an instrument, its middle at (0, 0).
type display struct {
	hw, hh   float64
	tech     tech
	bg, ink  rgb
	back     rgb // color of the light behind, or of the diodes
	power    float64
	dim      float64 // how well lit segments cover, 0..1
	ghost    float64 // how much unlit segments show
	edge     pt      // where the light behind comes in
	main     row
	others   []row
	texts    []string // of the other rows
	signs    []sign
	bars     int // lit share of the bar graph in ticks; -1 none
	barN     int
	barY     float64
	depth    float64 // shadow of the segments on the reflector, mm
	ledShade []float64
	seed     uint32
	frame    int
}

// sign is printed-looking text on the glass: unit, AUTO, HOLD.
type sign struct {
	x, y, h float64
	s       string
	lit     bool
	align   int
}

var ledColors = []rgb{{1.9, 0.06, 0.03}, {1.8, 0.1, 0.02}, {0.08, 1.5, 0.12}, {0.3, 1.4, 0.06}, {0.07, 0.22, 1.9}, {1.3, 1.35, 1.5}, {1.7, 0.75, 0.05}}

func newDisplay(r *rand.Rand, kind Kind, t tech, hw, hh float64) *display {
	d := &display{hw: hw, hh: hh, tech: t, seed: r.Uint32(), bars: -1, edge: pt{float64(r.IntN(3)-1) * hw, float64(r.IntN(3)-1) * hh}, frame: r.IntN(3)}
	d.depth = 0.25 + 0.5*r.Float64()
	switch t {
	case positive:
		d.bg = []rgb{hx(0xa9b39a), hx(0xb4b89d), hx(0x9fa999), hx(0xbcc2b4), hx(0xa3ad8a), hx(0xc3c7bd), hx(0x98a39b)}[r.IntN(7)]
		d.ink = []rgb{hx(0x14171a), hx(0x1b1d26), hx(0x20242a), hx(0x101c24)}[r.IntN(4)]
		d.dim = 0.72 + 0.26*r.Float64()
		d.ghost = []float64{0, 0.015, 0.03, 0.06, 0.1}[r.IntN(5)]
		if r.IntN(5) < 2 {
			d.back = []rgb{hx(0x9fe060), hx(0x6fb8ff), hx(0xffffff), hx(0xffb050), hx(0x70f0e0), hx(0xf4f0d8)}[r.IntN(6)]
			d.power = 0.35 + 1.1*r.Float64()
		}
	case negative:
		d.bg = []rgb{hx(0x0b0d12), hx(0x0a1238), hx(0x101010), hx(0x0c1a20), hx(0x0d1a5c)}[r.IntN(5)]
		d.back = []rgb{hx(0xf2f6ff), hx(0xd8e8ff), hx(0xfff0c8), hx(0x9fd8ff), hx(0xff9a4a), hx(0xa8ffb0)}[r.IntN(6)]
		d.power = 0.6 + 0.9*r.Float64()
		d.ghost = []float64{0.005, 0.015, 0.04}[r.IntN(3)]
	case led:
		d.bg = []rgb{hx(0x16090a), hx(0x0b0b0d), hx(0x1c1c1e), hx(0x2a0a0a)}[r.IntN(4)]
		d.back = ledColors[r.IntN(len(ledColors))]
		d.power = 0.8 + 1.3*r.Float64()
		d.ghost = 0.01 + 0.05*r.Float64()
	}
	for range 64 {
		d.ledShade = append(d.ledShade, 0.85+0.3*r.Float64())
	}
	st := newStyle(r)
	n := 4
	if k := r.IntN(10); k < 1 {
		n = 3
	} else if k == 9 {
		n = 5
	}
	if t == led {
		st.half = false
		if n > 4 {
			n = 4
		}
	}
	if kind == Thermostat {
		n, st.half = 3, false
	}
	top, bottom := 0.0, 0.0 // room for signs
	hasTop, hasBar := t != led && r.IntN(4) > 0, t != led && kind == Multimeter && r.IntN(3) == 0
	if hasTop {
		top = hh * 0.34
	}
	second := t != led && (kind == Manometer || kind == Thermometer || kind == Thermostat || r.IntN(4) == 0)
	if second {
		bottom = hh * 0.5
	} else if hasBar {
		bottom = hh * 0.36
	}
	unitRoom := hw * (0.22 + 0.14*r.Float64())
	if t == led {
		unitRoom = hw * 0.05
	}
	left := hw * 0.12
	if t == led && r.IntN(2) == 0 {
		left = hw * 0.03
	}
	room := 2*hw - unitRoom - left
	k := float64(n-1)*st.pitch + st.wide + 0.14 + st.minusLen + st.slant
	h := math.Min((2*hh-top-bottom)*0.84, room/k)
	x := -hw + left + (0.14+st.minusLen+st.slant/2)*h + (room-k*h)*0.6
	y := -hh + top + (2*hh-top-bottom-h)/2
	d.main = row{x: x, y: y, h: h, n: n, st: st}
	right := d.main.x + d.main.width() + h*st.slant/2 + h*0.12

	unit := unitsOf(kind, r)
	uh := math.Min(h*0.28, hh*0.3)
	if t != led {
		yy := y + h
		if r.IntN(2) == 0 {
			yy = y + uh*1.2
		}
		for textWidth(uh, unit, lcdPen) > hw-right-0.4 && uh > 0.8 {
			uh *= 0.9
		}
		d.signs = append(d.signs, sign{right, yy, uh, unit, true, -1})
		for k := range r.IntN(3) {
			d.signs = append(d.signs, sign{right, y + uh*(1.2+1.5*float64(k)), uh * 0.8, []string{"mV", "kΩ", "Hz", "°C", "A", "%"}[r.IntN(6)], false, -1})
		}
	}
	if hasTop {
		sh := top * 0.42
		sx := -hw + 1.5
		for _, s := range []string{"AUTO", "HOLD", "AC", "DC", "MAX", "REL", "APO"} {
			if r.IntN(2) == 0 {
				continue
			}
			d.signs = append(d.signs, sign{sx, -hh + top*0.72, sh, s, r.IntN(2) == 0, -1})
			sx += textWidth(sh, s, lcdPen) + sh*0.9
			if sx > hw*0.5 {
				break
			}
		}
		if r.IntN(2) == 0 {
			d.signs = append(d.signs, sign{hw - 6, -hh + top*0.74, sh, "battery", true, 0})
		}
	}
	if second {
		s2 := st
		s2.half = false
		h2 := math.Min(bottom*0.66, h*0.6)
		rw := row{h: h2, n: 4, st: s2, y: hh - bottom + (bottom-h2)*0.45}
		rw.x = -hw + hw*0.2
		if r.IntN(2) == 0 {
			rw.x = hw - rw.width() - hw*0.35
		}
		text := fmt.Sprintf("%.1f", 5+r.Float64()*90)
		if r.IntN(4) == 0 || kind == Thermostat {
			rw.colon, text = true, fmt.Sprintf("%d:%02d", 1+r.IntN(12), r.IntN(60))
		} else if r.IntN(6) == 0 {
			text = fmt.Sprintf("%02d-%02d", 1+r.IntN(12), 1+r.IntN(28))
			rw.n = 5
		}
		d.others, d.texts = append(d.others, rw), append(d.texts, text)
		u2 := []string{"°F", "Hz", "T2", "MIN", "%", "T1-T2", "Pa"}[r.IntN(7)]
		if rw.colon {
			u2 = []string{"AM", "PM", "TIME", ""}[r.IntN(4)]
		}
		ux := rw.x + rw.width() + h2*0.3
		if ux+textWidth(h2*0.5, u2, lcdPen) < hw {
			d.signs = append(d.signs, sign{ux, rw.y + h2, h2 * 0.5, u2, true, -1})
		}
	} else if hasBar {
		d.barN, d.barY = 30+r.IntN(32), hh-bottom*0.42
		d.bars = r.IntN(d.barN)
	}
	if kind == Thermostat && t != led {
		d.signs = append(d.signs, sign{-hw + 2, hh - 1.5, 2.2, []string{"HEAT ON", "SET", "MO TU WE", "FAN AUTO"}[r.IntN(4)], true, -1})
	}
	return d
}

var lcdPen = pen{weight: 0.15, wide: 0.85}

func unitsOf(kind Kind, r *rand.Rand) string {
	pick := func(s ...string) string { return s[r.IntN(len(s))] }
	switch kind {
	case Clamp:
		return pick("A", "A~", "V", "Ω", "A")
	case Manometer:
		return pick("inH2O", "Pa", "mbar", "kPa", "psi", "mmHg")
	case Thermometer, Thermostat:
		return pick("°F", "°C", "°F")
	case Panel:
		return ""
	}
	return pick("V", "mV", "V~", "kΩ", "MΩ", "Ω", "µA", "mA", "A", "Hz", "%", "°F", "µF", "nF")
}

// value makes up a text for the main row.
func (d *display) value(r *rand.Rand, kind Kind) string {
	n := d.main.n
	for range 200 {
		var s string
		switch k := r.IntN(40); {
		case k < 3:
			s = []string{"OL", ".OL", "0.L", "OL"}[r.IntN(4)]
		case k == 3:
			s = []string{"----", "Err", "Lo", "Hi", "---"}[r.IntN(5)]
		case k == 4:
			s = []string{"0.000", "00.0", "0.00", "000.0", "0.0", "0"}[r.IntN(6)]
		case k < 20:
			s = []string{"24.5", "27.3", "118.6", "121.4", "0.55", "3.12", "26.81", "68.4", "72", "0.7", "1.48", "48.9", "12.07", "4.8"}[r.IntN(14)]
			if r.IntN(3) > 0 { // common sizes, other digits
				b := []byte(s)
				for i := range b {
					if b[i] != '.' && (i > 0 || b[i] != '0') {
						b[i] = byte('0' + r.IntN(10))
					}
				}
				if b[0] == '0' && len(b) > 1 && b[1] != '.' {
					b[0] = '1'
				}
				s = string(b)
			}
		default:
			dec := r.IntN(n)
			v := r.Float64() * math.Pow(10, float64(n-r.IntN(3)-dec))
			s = fmt.Sprintf("%.*f", dec, v)
		}
		neg := 0.16
		if kind == Manometer {
			neg = 0.4
		}
		if r.Float64() < neg && strings.IndexByte("0123456789", s[0]) >= 0 && strings.Trim(s, "0.") != "" {
			s = "-" + s
		}
		if d.main.fits(s) {
			return s
		}
	}
	return "1"
}

// draw paints the glass.
func (d *display) draw(c *canvas, sh show) {
	if d.frame > 0 { // the sunk rim
		k := 1.2 + float64(d.frame)*0.6
		c.box(0, 0, d.hw+k, d.hh+k, 1.5, func(x, y, dd float64) (rgb, float32) {
			v := float32(0.018 + 0.02*smooth(-d.hh, d.hh+k, y))
			return rgb{v, v, v * 1.05}, 1
		})
	}
	c.box(0, 0, d.hw, d.hh, 1, func(x, y, dd float64) (rgb, float32) {
		k := 1 + 0.10*(x/d.hw)*0.5 + 0.08*y/d.hh + 0.05*(fbm(x/9, y/9, 2, d.seed)-0.5)
		k *= 1 - 0.35*math.Exp(-(y+d.hh)/(d.depth*1.6)) // shadow of the rim
		return d.bg.mul(float32(k)), 1
	})
	if sh.off {
		c.gloss(-d.hw, -d.hh, d.hw, d.hh, func(x, y float64) float64 { return sdBox(x, y, 0, 0, d.hw, d.hh, 1) }, 1)
		return
	}
	if d.tech == positive && d.power > 0 {
		c.glow(-d.hw, -d.hh, d.hw, d.hh, func(x, y float64) float64 { return sdBox(x, y, 0, 0, d.hw, d.hh, 1) },
			func(x, y, _ float64) (rgb, float32) {
				q := math.Hypot(x-d.edge.x, y-d.edge.y) / math.Hypot(d.hw, d.hh)
				return d.back.mul(float32(d.power * (0.42 - 0.16*q))), 1
			})
	}
	els := d.main.elems(sh.main)
	for i := range els {
		if sh.mode > 0 {
			els[i].lit = sh.mode == 1
		}
	}
	for i, o := range d.others {
		els = append(els, o.elems(d.texts[i])...)
	}
	for i, e := range els {
		d.element(c, e.poly, e.sdf, e.lit, d.ledShade[i%len(d.ledShade)])
	}
	for _, s := range d.signs {
		d.sign(c, s)
	}
	if d.bars >= 0 {
		w := (d.hw*1.7 - 1) / float64(d.barN)
		for i := 0; i <= d.barN; i++ {
			x, t := -d.hw*0.85+float64(i)*w, 1.0
			if i%10 == 0 {
				t = 1.6
				d.sign(c, sign{x, d.barY + 3.2, 1.3, fmt.Sprint(i), true, 0})
			}
			p := []pt{{x - w*0.3, d.barY - t}, {x + w*0.3, d.barY - t}, {x + w*0.3, d.barY + 0.6}, {x - w*0.3, d.barY + 0.6}}
			d.element(c, p, func(x, y float64) float64 { return sdPoly(x, y, p) }, i <= d.bars, 1)
		}
	}
	c.gloss(-d.hw, -d.hh, d.hw, d.hh, func(x, y float64) float64 { return sdBox(x, y, 0, 0, d.hw, d.hh, 1) }, 1)
}

func (d *display) element(c *canvas, p []pt, sdf func(x, y float64) float64, lit bool, shade float64) {
	x0, y0, x1, y1 := bounds(p)
	switch d.tech {
	case positive:
		k := d.ghost
		if lit {
			k = d.dim
			o, b := d.depth, d.depth*0.8
			c.shape(x0-b, y0-b, x1+b+o, y1+b+o, func(x, y float64) float64 { return sdf(x-o*0.5, y-o) - b },
				func(_, _, q float64) (rgb, float32) { return d.ink, float32(0.22 * smooth(0, -2*b, q)) })
		}
		if k > 0 {
			c.shape(x0, y0, x1, y1, sdf, sheer(d.ink, float32(k)))
		}
	case negative:
		if !lit {
			c.glow(x0, y0, x1, y1, sdf, sheer(d.back.mul(float32(d.power*d.ghost)), 1))
			return
		}
		c.shape(x0, y0, x1, y1, sdf, sheer(d.back, 0.25))
		c.glow(x0, y0, x1, y1, sdf, sheer(d.back.mul(float32(d.power)), 1))
		b := d.main.h * 0.06
		c.glow(x0-b, y0-b, x1+b, y1+b, func(x, y float64) float64 { return sdf(x, y) - b },
			func(_, _, q float64) (rgb, float32) { return d.back.mul(float32(d.power * 0.06 * smooth(0, -b, q))), 1 })
	case led:
		c.shape(x0, y0, x1, y1, sdf, sheer(rgb{0.35, 0.35, 0.35}, float32(d.ghost)))
		if lit {
			wide := math.Min(x1-x0, y1-y0) / 2
			c.glow(x0, y0, x1, y1, sdf, func(_, _, q float64) (rgb, float32) {
				k := d.power * shade * (0.7 + 0.3*smooth(0, -wide, q))
				hot := float32(0.12 * k * smooth(0, -wide, q))
				return d.back.mul(float32(k)).add(rgb{hot, hot, hot}), 1
			})
			b := d.main.h * 0.16
			c.glow(x0-b, y0-b, x1+b, y1+b, func(x, y float64) float64 { return sdf(x, y) - b },
				func(_, _, q float64) (rgb, float32) {
					return d.back.mul(float32(d.power * 0.07 * sq(smooth(0, -b, q)))), 1
				})
		}
	}
}

func (d *display) sign(c *canvas, s sign) {
	put := func(f func(p paint, glow bool)) {
		switch d.tech {
		case positive:
			k := d.ghost
			if s.lit {
				k = d.dim
			}
			if k > 0.02 {
				f(sheer(d.ink, float32(k)), false)
			}
		default:
			k := d.power * 0.8
			if !s.lit {
				k *= d.ghost
			}
			f(sheer(d.back.mul(float32(k)), 1), true)
		}
	}
	if s.s == "battery" {
		put(func(p paint, glow bool) {
			h, x, y := s.h, s.x, s.y-s.h/2
			sdf := func(px, py float64) float64 {
				v := math.Abs(sdBox(px, py, x, y, h, h/2, h*0.1)) - h*0.07
				v = math.Min(v, sdBox(px, py, x+h*1.12, y, h*0.12, h*0.2, 0))
				return math.Min(v, sdBox(px, py, x-h*0.4, y, h*0.45, h*0.34, 0))
			}
			if glow {
				c.glow(x-2*h, y-h, x+2*h, y+h, sdf, p)
			} else {
				c.shape(x-2*h, y-h, x+2*h, y+h, sdf, p)
			}
		})
		return
	}
	put(func(p paint, glow bool) {
		if !glow {
			c.text(s.x, s.y, s.h, s.s, lcdPen, s.align, p)
			return
		}
		x := s.x - textWidth(s.h, s.s, lcdPen)*float64(s.align+1)/2
		for _, r := range s.s {
			if pat, ok := strokes[r]; ok {
				for _, l := range glyph(pat, false) {
					q := make([]pt, len(l))
					for i, v := range l {
						q[i] = pt{x + v.x/4*s.h*0.62*lcdPen.wide, s.y - (6-v.y)/6*s.h}
					}
					x0, y0, x1, y1 := bounds(q)
					w := lcdPen.weight * s.h
					c.glow(x0-w, y0-w, x1+w, y1+w, func(x, y float64) float64 {
						v := math.Inf(1)
						for i := range q {
							v = math.Min(v, sdSeg(x, y, q[max(0, i-1)], q[i]))
						}
						return v - w/2
					}, p)
				}
			}
			x += runeAdvance(r, s.h*0.86*lcdPen.wide)
		}
	})
}
