package otherrender

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// op paints one thing of the flat scene; it draws no random numbers, so a piece painted alone is the same piece.
type op func(c *canvas, sh show)

var (
	bodyColors    = []uint32{0x2b2c2e, 0x3a3b3d, 0x55585a, 0x1d2a44, 0x8c8f8a, 0xd9d6cc, 0x4a2a22, 0x23402f, 0x1a1b1c}
	holsterColors = []uint32{0xe0a010, 0xd8481c, 0xc02020, 0x2f7d3a, 0x1f5ea8, 0x2a2b2d, 0x7d7f82, 0xe8c61e, 0x6a2f86, 0x0f8a8a}
	fieldPens     = []pen{{0.13, 0.9, 0, false}, {0.11, 1, 0, true}, {0.18, 0.85, 0, true}, {0.14, 0.75, 0.12, true}, {0.2, 1.05, 0, false}}
)

// instrument makes the ops of a body with its display in the middle of the plane, and the size of the body.
func instrument(r *rand.Rand, kind Kind) (d *display, ops []op, body [4]float64) {
	t := positive
	switch k := r.IntN(12); {
	case kind == Panel:
		t = led
	case kind != Thermostat && k < 2:
		t = negative
	case kind == Thermometer && k == 2:
		t = led
	}
	hw, hh := 24+9*r.Float64(), 10+7*r.Float64()
	switch kind {
	case Clamp:
		hw, hh = 18+5*r.Float64(), 9+5*r.Float64()
	case Manometer, Thermometer:
		hw, hh = 20+9*r.Float64(), 13+9*r.Float64()
	case Panel:
		hw, hh = 16+16*r.Float64(), 7+5*r.Float64()
	case Thermostat:
		hw, hh = 24+10*r.Float64(), 15+8*r.Float64()
	}
	d = newDisplay(r, kind, t, hw, hh)
	shell := hx(bodyColors[r.IntN(len(bodyColors))])
	if kind == Thermostat {
		shell = hx([]uint32{0xe9e7e0, 0xf2f2f0, 0xd8d4c6, 0x2a2a2c}[r.IntN(4)])
	}
	holster := hx(holsterColors[r.IntN(len(holsterColors))])
	print := hx(0xe6e6e2)
	if shell.luma() > 0.3 {
		print = hx(0x22242a)
	}
	pn := fieldPens[r.IntN(len(fieldPens))]
	seed := r.Uint32()
	put := func(o op) { ops = append(ops, o) }
	side := 6 + 9*r.Float64()
	head := 8 + 10*r.Float64()
	tail := 95 + 35*r.Float64()
	switch kind {
	case Thermometer:
		tail = 55 + 30*r.Float64()
	case Manometer:
		tail = 65 + 30*r.Float64()
	case Panel:
		head, tail, side = 9+8*r.Float64(), 22+25*r.Float64(), 8+20*r.Float64()
	case Thermostat:
		head, tail, side = 14+8*r.Float64(), 28+20*r.Float64(), 14+14*r.Float64()
	case Clamp:
		head, tail = 70+10*r.Float64(), 35+20*r.Float64()
	}
	bw := hw + side
	y0, y1 := -hh-head, hh+tail
	cy, bh := (y0+y1)/2, (y1-y0)/2
	round := 6 + 8*r.Float64()
	if kind == Panel {
		round = 1 + 3*r.Float64()
	}
	rubber := kind != Panel && kind != Thermostat && r.IntN(4) > 0
	if kind == Clamp { // jaws over the head
		jr, jy := bw*0.85, y0-bw*0.55
		put(func(c *canvas, _ show) {
			c.ring(0, jy, jr, jr*0.38, func(x, y, dd float64) (rgb, float32) {
				k := 1 + 0.35*clamp((-x*0.4-(y-jy))/jr, -1, 1)*smooth(-3, 0, dd)
				return holster.mul(float32(k)), 1
			})
			c.line([]pt{{0, jy - jr*1.25}, {0, jy - jr*0.75}}, 0.7, flat(rgb{0.01, 0.01, 0.01}))
			c.solid(bw*0.95, y0+14, bw*0.22, 11, 4, 2, holster.mul(0.8), 0.05, seed+3)
		})
	}
	if kind == Manometer { // two hose barbs
		col := hx([]uint32{0x202020, 0xb0a890, 0xc8c8c8}[r.IntN(3)])
		bend := 20 + 60*r.Float64()
		put(func(c *canvas, _ show) {
			for _, x := range []float64{-bw * 0.4, bw * 0.4} {
				c.tube([]pt{{x, y0 + 2}, {x, y0 - 9}}, 5, hx(0xb8a060), 0.4)
				if x > 0 || bend > 50 {
					c.tube(bezier(pt{x, y0 - 5}, pt{x, y0 - 40}, pt{x + bend, y0 - 30}, pt{x + bend*2, y0 - 90}, 16), 7.5, col, 0.15)
				}
			}
		})
	}
	if kind == Thermometer {
		put(func(c *canvas, _ show) {
			c.solid(-6, y0-8, 7, 11, 1.5, 1.5, hx(0xd8b020), 0.04, seed+9)
			c.tube(bezier(pt{-6, y0 - 18}, pt{-10, y0 - 50}, pt{-60, y0 - 40}, pt{-90, y0 - 80}, 16), 2, hx(0x8a6a20), 0.2)
		})
	}
	put(func(c *canvas, _ show) {
		if rubber {
			c.solid(0, cy, bw+5, bh+5, round+5, 4, holster, 0.10, seed)
			for i := 0.0; i < 5; i++ { // grip ribs
				for _, sx := range []float64{-1, 1} {
					c.box(sx*(bw+3.4), cy+i*5-6, 1.6, 1.1, 0.8, flat(holster.mul(0.55)))
				}
			}
			c.box(0, cy, bw+0.6, bh+0.6, round, flat(holster.mul(0.3)))
		}
		c.solid(0, cy, bw, bh, round, 2.2, shell, 0.07, seed+1)
	})
	front := r.IntN(3)
	frontCol := []rgb{shell, shell.mul(0.55), mix(shell, hx(0xc8c8c0), 0.5)}[front]
	put(func(c *canvas, _ show) {
		if front > 0 {
			c.solid(0, 0, bw-2.5, hh+6, 3, 0.8, frontCol, 0.03, seed+2)
		}
	})
	ink := print
	if frontCol.luma() > 0.25 {
		ink = hx(0x1d1f24)
	} else {
		ink = hx(0xe0e0da)
	}
	// print with numbers over or under the glass
	models := []string{"DT 930", "TRUE RMS", "6000 COUNTS", "MODEL 87-4", "AC/DC 600V", "DIGITAL MULTIMETER", "CAT III 600V", "TYPE K", "RANGE 0-55", "TEMP CONTROL", "SERIES 200"}
	m1, m2 := models[r.IntN(len(models))], models[r.IntN(len(models))]
	mh := 1.8 + 1.4*r.Float64()
	put(func(c *canvas, _ show) {
		c.text(-hw, -hh-2.2, math.Min(mh, (head-3)*0.5), m1, pn, -1, flat(ink))
		if kind != Clamp && head > 13 {
			c.text(hw, -hh-7, mh*0.8, m2, pn, 1, flat(ink))
		}
	})
	put(d.draw)
	switch kind {
	case Panel:
		buttons(r, put, hh+10, hw, 3, pn, seed)
		lbl := []string{"SUPPLY", "RETURN", "SET", "P 01", "H1", "OUT 1", "ALARM", "L2 24V", "FUSE 5A"}
		for i := range 3 {
			s, x := lbl[r.IntN(len(lbl))], (float64(i)-1)*hw*0.8
			on := r.IntN(2) == 0
			put(func(c *canvas, _ show) {
				c.text(x, hh+22, 2.2, s, pn, 0, flat(print))
				if hh+27 < y1-3 {
					c.disc(x, hh+27, 1.2, flat(hx(0x401010)))
					if on {
						c.glow(x-2, hh+25, x+2, hh+29, func(px, py float64) float64 { return math.Hypot(px-x, py-hh-27) - 1.1 }, flat(rgb{1.2, 0.05, 0.02}))
					}
				}
			})
		}
		for _, q := range []pt{{-bw + 4, y0 + 4}, {bw - 4, y0 + 4}, {-bw + 4, y1 - 4}, {bw - 4, y1 - 4}} {
			screw(put, q, 2.2, r.Float64()*3)
		}
	case Thermostat:
		buttons(r, put, hh+12, hw, 2+r.IntN(3), pn, seed)
		put(func(c *canvas, _ show) {
			for i := 0.0; i < 6; i++ {
				c.line([]pt{{-bw * 0.5, y1 - 4 - i*2.2}, {bw * 0.5, y1 - 4 - i*2.2}}, 0.7, flat(shell.mul(0.5)))
			}
		})
	case Clamp:
		dial(r, put, 0, -hh-32, 13, pn, print, seed, true)
		buttons(r, put, hh+9, hw, 3, pn, seed)
		jacks(r, put, y1-9, bw, 2, pn, print)
	case Multimeter:
		buttons(r, put, hh+8, hw, 3+r.IntN(3), pn, seed)
		rr := 15 + 6*r.Float64()
		dial(r, put, 0, hh+16+rr+12, rr, pn, print, seed, false)
		jacks(r, put, y1-10, bw, 3+r.IntN(2), pn, print)
	default:
		rows := 2 + r.IntN(2)
		for i := range rows {
			buttons(r, put, hh+11+float64(i)*13, hw, 2+r.IntN(2), pn, seed+uint32(i))
		}
		s := []string{"MAX 1999 Pa", "-50 +1300°C", "0.01 inH2O", "2 AAA 1.5V", "T1 T2 K/J"}[r.IntN(5)]
		put(func(c *canvas, _ show) { c.text(0, y1-6, 2.6, s, pn, 0, flat(print)) })
	}
	// wear: scratches and dust on the face
	for range 3 + r.IntN(8) {
		a := pt{(r.Float64()*2 - 1) * bw, y0 + r.Float64()*(y1-y0)}
		b := pt{a.x + r.NormFloat64()*6, a.y + r.NormFloat64()*6}
		k := float32(0.1 + 0.2*r.Float64())
		put(func(c *canvas, _ show) {
			if sdBox(a.x, a.y, 0, 0, hw, hh, 0) > 0 {
				c.line([]pt{a, b}, 0.18, sheer(rgb{0.7, 0.7, 0.7}, k))
			}
		})
	}
	return d, ops, [4]float64{-bw - 5, y0 - 5, bw + 5, y1 + 5}
}

func screw(put func(op), at pt, rad, turn float64) {
	put(func(c *canvas, _ show) {
		c.disc(at.x, at.y, rad, func(x, y, d float64) (rgb, float32) {
			k := float32(0.35 - 0.12*(x-at.x+y-at.y)/rad + 0.3*smooth(-rad*0.3, 0, d))
			return rgb{k, k, k * 0.97}, 1
		})
		for _, a := range []float64{turn, turn + math.Pi/2} {
			dx, dy := math.Cos(a)*rad*0.6, math.Sin(a)*rad*0.6
			c.line([]pt{{at.x - dx, at.y - dy}, {at.x + dx, at.y + dy}}, rad*0.28, flat(rgb{0.03, 0.03, 0.03}))
		}
	})
}

var buttonText = []string{"HOLD", "RANGE", "REL", "Hz %", "MAX", "MIN", "SEL", "ZERO", "UNIT", "SET", "MODE", "ON", "+", "-", "T1", "T2", "LIGHT", "1", "2"}

func buttons(r *rand.Rand, put func(op), y, hw float64, n int, pn pen, seed uint32) {
	col := hx([]uint32{0x4a4d50, 0xb8b4a8, 0xd0a020, 0x24507a, 0x28292b, 0xa02020}[r.IntN(6)])
	roundish := r.IntN(2) == 0
	above := r.IntN(2) == 0
	w := math.Min(7.5, hw*1.6/float64(n)*0.42)
	for i := range n {
		x := (float64(i) - float64(n-1)/2) * hw * 1.8 / float64(n)
		s := buttonText[r.IntN(len(buttonText))]
		put(func(c *canvas, _ show) {
			rad := 1.6
			if roundish {
				rad = 3.4
			}
			c.box(x+0.3, y+0.6, w+0.4, 3.9, rad+0.4, sheer(rgb{0.005, 0.005, 0.005}, 0.6))
			c.solid(x, y, w, 3.5, rad, 1.3, col, 0.05, seed+uint32(i)*7+50)
			ink := hx(0xf0f0ea)
			if col.luma() > 0.25 {
				ink = hx(0x1a1a1e)
			}
			h := 2.3
			for textWidth(h, s, pn) > w*1.8 {
				h *= 0.9
			}
			if above {
				c.text(x, y-4.6, h*0.9, s, pn, 0, flat(hx(0xc9c9c4)))
			} else {
				c.text(x, y+h/2, h, s, pn, 0, flat(ink))
			}
		})
	}
}

var dialSets = [][]string{
	{"OFF", "V~", "V=", "mV", "Ω", "µF", "Hz", "°C", "µA", "mA", "A"},
	{"OFF", "200", "600", "1000", "200", "20", "2", "200m", "200µ", "2m", "20m", "10A", "2k", "20k", "200k", "2M"},
	{"OFF", "V", "mV", "kΩ", "A", "%"},
	{"OFF", "2000", "200", "20", "600", "200", "40A", "400A"},
	{"OFF", "600", "200", "20", "2000m", "200m", "hFE", "10A", "200", "2000", "20k", "200k", "2M"},
}

func dial(r *rand.Rand, put func(op), cx, cy, rad float64, pn pen, ink rgb, seed uint32, small bool) {
	set := dialSets[r.IntN(len(dialSets))]
	if small {
		set = dialSets[2+r.IntN(2)]
	}
	knob := hx([]uint32{0x17181a, 0x303234, 0x7a7c7e, 0xc8a020, 0x203c66}[r.IntN(5)])
	at := r.IntN(len(set))
	tint := hx([]uint32{0xc02020, 0xe0b020, 0x40a0e0}[r.IntN(3)])
	span, from := 2*math.Pi, -math.Pi
	if r.IntN(2) == 0 {
		span, from = 1.5*math.Pi, -1.25*math.Pi
	}
	put(func(c *canvas, _ show) {
		c.ring(cx, cy, rad+1.3, 0.5, flat(ink.mul(0.6)))
		for i, s := range set {
			a := from + span*float64(i)/float64(len(set))
			x, y := cx+math.Cos(a)*(rad+5.8), cy+math.Sin(a)*(rad+4.8)
			h := math.Min(3, 36/float64(len(set)))
			k := ink
			if i%5 == 2 {
				k = tint
			}
			c.text(x, y+h/2, h, s, pn, 0, flat(k))
			c.line([]pt{{cx + math.Cos(a)*(rad+1.6), cy + math.Sin(a)*(rad+1.6)}, {cx + math.Cos(a)*(rad+2.8), cy + math.Sin(a)*(rad+2.8)}}, 0.5, flat(k))
		}
		c.disc(cx+0.8, cy+1.6, rad+0.6, sheer(rgb{0.004, 0.004, 0.004}, 0.5))
		c.disc(cx, cy, rad, func(x, y, d float64) (rgb, float32) {
			rib := 0.15 * math.Sin(math.Atan2(y-cy, x-cx)*40) * smooth(-rad*0.25, -rad*0.1, d)
			k := 1 + rib - 0.35*((x-cx)*0.5+(y-cy)*0.8)/rad*smooth(-rad*0.3, 0, d)
			return knob.mul(float32(k)).add(rgb{0.01, 0.01, 0.01}), 1
		})
		a := from + span*float64(at)/float64(len(set))
		ux, uy := math.Cos(a), math.Sin(a)
		g := func(l, s float64) pt { return pt{cx + ux*l - uy*s, cy + uy*l + ux*s} }
		c.poly([]pt{g(-rad*0.85, -rad*0.2), g(rad*0.9, -rad*0.17), g(rad*0.9, rad*0.17), g(-rad*0.85, rad*0.2)}, func(x, y, d float64) (rgb, float32) {
			k := float32(1.35 - 0.5*((x-cx)*-uy+(y-cy)*ux)/(rad*0.2))
			return knob.mul(k).add(rgb{0.015, 0.015, 0.015}), 1
		})
		c.line([]pt{g(rad*0.45, 0), g(rad*0.85, 0)}, rad*0.07, flat(hx(0xf0f0f0)))
	})
}

func jacks(r *rand.Rand, put func(op), y, bw float64, n int, pn pen, ink rgb) {
	names := []string{"10A", "mA µA", "COM", "VΩHz"}
	if n == 2 {
		names = []string{"COM", "VΩ"}
	} else if n == 3 {
		names = []string{"10A", "COM", "VΩmA"}
	}
	leads := r.IntN(3) > 0
	endX := []float64{r.NormFloat64() * 60, r.NormFloat64() * 60}
	for i := range n {
		x := (float64(i) - float64(n-1)/2) * bw * 1.7 / float64(n)
		black := names[i] == "COM"
		put(func(c *canvas, _ show) {
			ringCol := hx(0xb01818)
			if black {
				ringCol = hx(0x101012)
			}
			c.text(x, y-7.6, 2.4, names[i], pn, 0, flat(ink))
			c.disc(x, y, 5, flat(ringCol))
			c.disc(x, y, 3.6, flat(rgb{0.008, 0.008, 0.008}))
			if leads && (black || i == n-1) {
				col, e := hx(0xa81414), endX[0]
				if black {
					col, e = hx(0x141416), endX[1]
				}
				c.disc(x, y, 5.2, func(px, py, d float64) (rgb, float32) {
					return col.mul(float32(1.1 - 0.5*(px-x+py-y)/5)), 1
				})
				c.tube([]pt{{x, y}, {x + e*0.03, y + 22}}, 8.5, col, 0.12)
				c.tube(bezier(pt{x + e*0.03, y + 20}, pt{x + e*0.1, y + 60}, pt{e, y + 50}, pt{e * 1.6, y + 160}, 24), 3.6, col, 0.2)
			}
		})
	}
	if r.IntN(2) == 0 {
		put(func(c *canvas, _ show) { c.text(0, y+8.4, 1.7, fmt.Sprintf("MAX %dV CAT III", 600), pn, 0, flat(ink)) })
	}
}

// crossing lays a lead over the picture.
func crossing(a, b pt, bend float64, w float64, col rgb) op {
	return func(c *canvas, _ show) {
		mx, my := (a.x+b.x)/2, (a.y+b.y)/2
		p := bezier(a, pt{mx + bend, my - bend}, pt{mx - bend*0.6, my + bend}, b, 28)
		sh := make([]pt, len(p))
		for i := range p {
			sh[i] = pt{p[i].x + w*0.35, p[i].y + w*0.6}
		}
		c.soft(sh, w*1.3, 0.35)
		c.tube(p, w, col, 0.22)
	}
}

// soft darkens along a path: the shadow of something close.
func (c *canvas) soft(p []pt, w float64, k float32) {
	x0, y0, x1, y1 := bounds(p)
	c.shape(x0-w, y0-w, x1+w, y1+w, func(x, y float64) float64 {
		d := math.Inf(1)
		for i := 0; i+1 < len(p); i++ {
			d = math.Min(d, sdSeg(x, y, p[i], p[i+1]))
		}
		return d - w
	}, func(x, y, d float64) (rgb, float32) { return rgb{}, k * float32(smooth(0, -w, d)) })
}

var skins = []uint32{0xe6b998, 0xd49b78, 0xb57a55, 0x8a5638, 0x5a3724, 0xf0cdb4}

// finger is a fingertip coming in along a direction, its tip at the given point.
func finger(tip pt, ang, w float64, skin rgb, nail bool, seed uint32) op {
	ux, uy := math.Cos(ang), math.Sin(ang)
	a := pt{tip.x + ux*w*0.5, tip.y + uy*w*0.5}
	b := pt{tip.x + ux*w*26, tip.y + uy*w*26}
	return func(c *canvas, _ show) {
		c.soft([]pt{{a.x + w*0.12, a.y + w*0.2}, {b.x + w*0.12, b.y + w*0.2}}, w*0.75, 0.5)
		x0, y0, x1, y1 := bounds([]pt{a, b})
		c.shape(x0-2*w, y0-2*w, x1+2*w, y1+2*w, func(x, y float64) float64 {
			along := (x-tip.x)*ux + (y-tip.y)*uy
			return sdSeg(x, y, a, b) - w/2*(1+0.05*math.Sin(along/w*2.2)+0.06*smooth(0, 4*w, along)+1.7*smooth(4.6*w, 7.5*w, along))
		}, func(x, y, d float64) (rgb, float32) {
			along, side := (x-tip.x)*ux+(y-tip.y)*uy, (-(x-tip.x)*uy+(y-tip.y)*ux)/(w/2)
			lit := clamp(side, -1, 1) * (-uy*-0.5 + ux*-0.8)
			side /= 1 + 1.7*smooth(4.6*w, 7.5*w, along) // the finger grows into the hand
			k := 0.55 + 0.45*math.Sqrt(math.Max(0, 1-side*side)) + 0.25*lit
			for _, cr := range []float64{2.2, 2.35, 4.4, 4.6} {
				k *= 1 - 0.18*math.Exp(-sq((along/w-cr+0.05*side*side)/0.035))
			}
			k *= 1 + 0.10*(fbm(x*1.6, y*1.6, 3, seed)-0.5)
			q := skin.mul(float32(k))
			q = mix(q, rgb{q.r * 1.12, q.g * 0.8, q.b * 0.75}, float32(smooth(1.2*w, 0, along)*0.7))
			if nail {
				n := sdBox(along, side*w/2, w*0.52, 0, w*0.4, w*0.3, w*0.24)
				if n < 0 { // the nail, its free edge and its shine
					q = mix(q, rgb{0.85, 0.62, 0.55}.mul(float32(k)), 0.55)
					if along < w*0.21 {
						q = mix(q, rgb{0.9, 0.86, 0.78}.mul(float32(k)), 0.7)
					}
					h := float32(0.2 * math.Exp(-sq((side+0.25)/0.18)))
					q = q.add(rgb{h, h, h})
				} else if n < w*0.03 {
					q = q.mul(0.8)
				}
			}
			return q, 1
		})
	}
}
