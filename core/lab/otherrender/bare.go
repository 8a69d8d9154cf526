package otherrender

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// background is what lies behind: a bench, a wall, the floor, sheet metal.
func background(r *rand.Rand, kind Kind) func(x, y float64) rgb {
	seed := r.Uint32()
	ox, oy := r.Float64()*500, r.Float64()*500
	which := r.IntN(8)
	switch kind {
	case Brick:
		which = 3
	case Panel, Breakers:
		which = 1
	case Thermostat, Clock:
		which = 7
	}
	a := r.Float64() * math.Pi
	if which == 3 || which == 1 || which == 7 {
		a = r.NormFloat64() * 0.03
	}
	ca, sa := math.Cos(a), math.Sin(a)
	tint := hx([]uint32{0xd9c7a0, 0xb08050, 0x8a6a48, 0xc9a27a}[r.IntN(4)])
	sheet := hx([]uint32{0xb9bcbd, 0x8f9a9f, 0xd8d6cc, 0x5f6b73, 0x9c8f7a, 0x3f4a52}[r.IntN(6)])
	wall := hx([]uint32{0xe8e4da, 0xd5dbd6, 0xe9d9b8, 0xc6ccd6, 0xf0eeea}[r.IntN(5)])
	brick := hx([]uint32{0x9a4a35, 0x8a5a48, 0xb06a50, 0xa8a49c, 0xcfcac0}[r.IntN(5)])
	cloth := hx([]uint32{0x28445a, 0x5a3a3a, 0x3a4a36, 0x707070, 0xc8c0b0}[r.IntN(5)])
	return func(x, y float64) rgb {
		x, y = x*ca+y*sa+ox, -x*sa+y*ca+oy
		switch which {
		case 0: // planks
			n := math.Floor(y / 90)
			g := fbm(x/70+n*31, y/3.2, 4, seed+uint32(int32(n)))
			ring := math.Sin((y+25*fbm(x/120, y/40, 2, seed+3))*0.9 + 4*g)
			k := 0.62 + 0.3*g + 0.06*ring
			k *= 1 - 0.7*math.Exp(-sq((y-n*90)/0.9))
			return tint.mul(float32(k))
		case 1: // painted sheet metal
			k := 0.85 + 0.1*fbm(x/60, y/60, 3, seed) + 0.03*noise(x*2, y*2, seed+1)
			if fbm(x/18, y/18, 4, seed+7) > 0.74 {
				return mix(sheet.mul(float32(k)), hx(0x6a4a30), float32(0.5*smooth(0.74, 0.8, fbm(x/18, y/18, 4, seed+7))))
			}
			return sheet.mul(float32(k))
		case 2: // concrete
			k := 0.5 + 0.45*fbm(x/30, y/30, 5, seed) + 0.06*noise(x*1.5, y*1.5, seed+2)
			if noise(x/3, y/3, seed+4) > 0.9 {
				k *= 0.75
			}
			return hx(0x9c988f).mul(float32(k * 1.3))
		case 3: // bricks
			rw := math.Floor(y / 75)
			xs := x + 107*math.Mod(rw+1e6, 2)
			cl := math.Floor(xs / 215)
			d := sdBox(xs-cl*215, y-rw*75, 107.5, 37.5, 102, 32, 4) + 3*(fbm(x/9, y/9, 3, seed)-0.5)
			k := 0.7 + 0.35*hash2(int32(cl), int32(rw), seed) + 0.35*(fbm(x/8, y/8, 4, seed+1)-0.5)
			mortar := hx(0xb8b2a6).mul(float32(0.6 + 0.4*fbm(x/5, y/5, 3, seed+2)))
			b := brick.mul(float32(k))
			if d < 0 && y-rw*75 > 64 {
				b = b.mul(0.8)
			}
			return mix(b, mortar, float32(smooth(-1.5, 1.5, d)))
		case 4: // cloth
			k := 0.6 + 0.12*noise(x*1.1, y*1.1, seed+2) + 0.1*fbm(x/4, y/4, 2, seed+4) + 0.3*fbm(x/80, y/80, 3, seed)
			return cloth.mul(float32(k))
		case 5: // dark corner
			k := 0.15 + 0.5*fbm(x/90, y/90, 4, seed)
			return rgb{0.05, 0.045, 0.04}.mul(float32(k * 3))
		case 6: // cardboard
			k := 0.8 + 0.06*math.Sin(y*1.3) + 0.2*(fbm(x/50, y/50, 4, seed)-0.5)
			return hx(0xb08d5f).mul(float32(k))
		}
		k := 0.9 + 0.1*fbm(x/120, y/120, 3, seed) + 0.06*(noise(x/1.5, y/1.5, seed+1)-0.5)
		return wall.mul(float32(k))
	}
}

// bare makes a scene without any display.
func bare(r *rand.Rand, kind Kind) (ops []op, view float64, body [4]float64) {
	put := func(o op) { ops = append(ops, o) }
	seed := r.Uint32()
	pn := fieldPens[r.IntN(len(fieldPens))]
	view = 260 + 200*r.Float64()
	digits := func(n int) string {
		s := ""
		for range n {
			s += fmt.Sprint(r.IntN(10))
		}
		return s
	}
	sheetOf := func(w, h float64, col rgb) {
		a := r.Uint32()
		put(func(c *canvas, _ show) {
			c.box(0, 0, w, h, 0.8, func(x, y, d float64) (rgb, float32) {
				k := 0.95 + 0.09*(fbm(x/20, y/20, 4, a)-0.5) + 0.03*(noise(x*3, y*3, a)-0.5)
				stain := smooth(0.66, 0.76, fbm(x/30, y/30, 4, a+3)) * 0.35
				return mix(col.mul(float32(k)), hx(0x7a5a38), float32(stain)), 1
			})
		})
	}
	switch kind {
	case Pipes:
		view = 350 + 300*r.Float64()
		for range 3 + r.IntN(4) {
			col := hx([]uint32{0xb87333, 0xb06a3a, 0x9a9c9e, 0x3a3a3c, 0xd8d6d0, 0xc8b070}[r.IntN(6)])
			w := 15 + 35*r.Float64()
			x, y := r.NormFloat64()*130, r.NormFloat64()*100
			p := []pt{{x, -500}, {x, y}, {x + math.Copysign(500, r.NormFloat64()), y}}
			if r.IntN(2) == 0 {
				p = []pt{{x, -500}, {x + 20*r.NormFloat64(), 500}}
			}
			tag := digits(2 + r.IntN(2))
			hasTag, valve := r.IntN(3) == 0, r.IntN(3) == 0
			put(func(c *canvas, _ show) {
				sh := make([]pt, len(p))
				for i := range p {
					sh[i] = pt{p[i].x + w*0.3, p[i].y + w*0.5}
				}
				c.soft(sh, w*0.8, 0.5)
				c.tube(p, w, col, 0.35)
				for _, q := range []float64{-160, -40, 90} {
					c.tube([]pt{{p[0].x, q}, {p[0].x, q + 12}}, w*1.25, col.mul(0.9), 0.3)
				}
				if hasTag {
					c.solid(p[0].x, 30, 22, 14, 3, 1, hx(0xe8d040), 0.04, seed)
					c.text(p[0].x, 36, 13, tag, pn, 0, flat(rgb{0.02, 0.02, 0.02}))
				}
				if valve {
					c.ring(p[0].x, -80, w*0.9+12, 8, solidPaint(p[0].x, -80, w+12, w+12, 6, hx(0xb01c18), 0.1, seed))
					c.line([]pt{{p[0].x - w - 8, -80}, {p[0].x + w + 8, -80}}, 6, flat(hx(0x901512)))
					c.disc(p[0].x, -80, 8, flat(hx(0xc0c0c0)))
				}
			})
		}
	case Label:
		view = 120 + 160*r.Float64()
		w, h := 50+40*r.Float64(), 30+40*r.Float64()
		dark := r.IntN(3) == 0
		col, ink := hx([]uint32{0xf0efe8, 0xc9cbcc, 0xe8d860, 0xe9e2c8}[r.IntN(4)]), hx(0x16181c)
		if dark {
			col, ink = hx(0x1c1e22), hx(0xe8e8e4)
		}
		sheetOf(w, h, col)
		names := []string{"MODEL NO", "SERIAL NO", "VOLTS", "HZ", "AMPS", "INPUT BTU/H", "OUTPUT", "MAX TEMP °F", "MANIFOLD inWC", "RPM", "DATE", "FILTER 16x25x1", "TYPE", "FUSE", "CAP µF"}
		big := r.IntN(3) == 0
		put(func(c *canvas, _ show) {
			c.shape(-w, -h, w, h, func(x, y float64) float64 { return math.Abs(sdBox(x, y, 0, 0, w-2, h-2, 1)) - 0.3 }, flat(ink))
		})
		y := -h + 9
		for y < h-9 {
			n := names[r.IntN(len(names))]
			v := digits(1 + r.IntN(6))
			switch r.IntN(4) {
			case 0:
				v = fmt.Sprintf("%.1f", r.Float64()*200)
			case 1:
				v = fmt.Sprintf("%d-%c%s", r.IntN(999), 'A'+r.IntN(26), digits(4))
			}
			sz, yy := 2.4+2*r.Float64(), y
			if big {
				sz *= 2.4
			}
			for sz > 2 && textWidth(sz, v, pn) > w {
				sz *= 0.9
			}
			wide := textWidth(sz, n, pn)+textWidth(sz*1.05, v, pn) < 2*w-14
			put(func(c *canvas, _ show) {
				if wide {
					c.text(-w+5, yy, sz, n, pn, -1, flat(ink))
				}
				c.text(w-5, yy, sz*1.05, v, pn, 1, flat(ink))
			})
			y += sz * 1.9
		}
		if r.IntN(2) == 0 { // bar code
			x0 := -w + 8
			bars := r.Uint64()
			put(func(c *canvas, _ show) {
				for i := 0.0; i < 60; i++ {
					if bars>>(uint(i)%61)&1 == 1 {
						c.box(x0+i*0.7, h-9, 0.36, 5, 0, flat(ink))
					}
				}
			})
		}
	case Clock, Gauge:
		view = 170 + 170*r.Float64()
		rad := 45 + 30*r.Float64()
		face := hx([]uint32{0xf4f2ea, 0xfdfdfd, 0xe4e0d0, 0x17181b}[r.IntN(4)])
		ink := hx(0x17181b)
		if face.luma() < 0.1 {
			ink = hx(0xf0f0e8)
		}
		rim := hx([]uint32{0x202124, 0xb8a060, 0xa8a8aa, 0xa01818}[r.IntN(4)])
		hour, minute := r.Float64()*12, r.Float64()*60
		needle := -0.75*math.Pi + 1.5*math.Pi*r.Float64()
		step := []int{1, 2, 5, 10, 20, 50, 100}[r.IntN(7)]
		unit := []string{"psi", "bar", "°F", "inH2O", "kPa"}[r.IntN(5)]
		put(func(c *canvas, _ show) {
			c.disc(3, 6, rad+8, sheer(rgb{}, 0.4))
			c.disc(0, 0, rad+7, func(x, y, d float64) (rgb, float32) {
				k := float32(1 - 0.5*(x*0.5+y*0.8)/rad*math.Cos(d*0.8))
				return rim.mul(k), 1
			})
			c.disc(0, 0, rad, flat(face))
			n := 12
			if kind == Gauge {
				n = 10
			}
			for i := 0; i <= n*5; i++ {
				a := float64(i)/float64(n*5)*2*math.Pi - math.Pi/2
				if kind == Gauge {
					a = -1.25*math.Pi + 1.5*math.Pi*float64(i)/float64(n*5)
				}
				l := 0.92
				if i%5 == 0 {
					l = 0.87
				}
				c.line([]pt{{math.Cos(a) * rad * l, math.Sin(a) * rad * l}, {math.Cos(a) * rad * 0.96, math.Sin(a) * rad * 0.96}}, 0.7, flat(ink))
				if i%5 == 0 && (kind == Gauge || i > 0) {
					s := fmt.Sprint(i / 5)
					if kind == Gauge {
						s = fmt.Sprint(i / 5 * step)
					}
					h := rad * 0.12
					c.text(math.Cos(a)*rad*0.74, math.Sin(a)*rad*0.74+h/2, h, s, pn, 0, flat(ink))
				}
			}
			hand := func(a, l, w float64, col rgb) {
				ux, uy := math.Cos(a), math.Sin(a)
				c.soft([]pt{{2, 3}, {2 + ux*l, 3 + uy*l}}, w, 0.35)
				c.poly([]pt{{-uy*w/2 - ux*l*0.15, ux*w/2 - uy*l*0.15}, {ux*l - uy*w*0.15, uy*l + ux*w*0.15}, {ux*l + uy*w*0.15, uy*l - ux*w*0.15}, {uy*w/2 - ux*l*0.15, -ux*w/2 - uy*l*0.15}}, flat(col))
			}
			if kind == Gauge {
				c.text(0, rad*0.42, rad*0.13, unit, pn, 0, flat(ink))
				hand(needle-math.Pi/2, rad*0.85, 3, hx(0xb01818))
			} else {
				hand(hour/12*2*math.Pi-math.Pi/2, rad*0.5, 5, ink)
				hand(minute/60*2*math.Pi-math.Pi/2, rad*0.8, 3.4, ink)
			}
			c.disc(0, 0, 3.5, flat(rim))
			c.gloss(-rad, -rad, rad, rad, func(x, y float64) float64 { return math.Hypot(x, y) - rad }, 1)
		})
	case Wires:
		view = 180 + 200*r.Float64()
		if r.IntN(2) == 0 {
			put(func(c *canvas, _ show) {
				c.solid(0, 10, 110, 26, 2, 2, hx(0x2c6a3a), 0.05, seed)
				for i := -6.0; i <= 6; i++ {
					c.solid(i*16, 10, 6.5, 13, 1, 1, hx(0x1e2022), 0.04, seed+1)
					c.disc(i*16, 10, 4, flat(hx(0xb8b8b4)))
					c.line([]pt{{i*16 - 3, 8}, {i*16 + 3, 12}}, 1, flat(rgb{0.03, 0.03, 0.03}))
					c.text(i*16, 33, 4.5, fmt.Sprint(int(i)+7), pn, 0, flat(hx(0xf0f0f0)))
				}
			})
		}
		for range 7 + r.IntN(9) {
			col := hx(wireColors[r.IntN(len(wireColors))].hex)
			a, b := pt{r.NormFloat64() * 90, -200}, pt{r.NormFloat64() * 90, 200}
			if r.IntN(3) == 0 {
				a, b = pt{-300, r.NormFloat64() * 90}, pt{300, r.NormFloat64() * 90}
			}
			ops = append(ops, crossing(a, b, r.NormFloat64()*90, 3+2.5*r.Float64(), col))
		}
	case Brick:
		view = 400 + 700*r.Float64()
		if r.IntN(2) == 0 {
			s, x, y := digits(1+r.IntN(4)), r.NormFloat64()*60, r.NormFloat64()*60
			col := hx([]uint32{0xf0f0f0, 0xc02020, 0x202020}[r.IntN(3)])
			put(func(c *canvas, _ show) {
				c.text(x, y, 80, s, pen{0.13, 1, 0.05, true}, 0, func(px, py, d float64) (rgb, float32) {
					return col, float32(smooth(0.32, 0.55, fbm(px/7, py/7, 3, seed)))
				})
			})
		}
	case Shelf:
		view = 500 + 300*r.Float64()
		for lv := range 3 {
			y := float64(lv)*190 - 160
			put(func(c *canvas, _ show) {
				c.solid(0, y+8, 700, 9, 1, 3, hx(0x8a6a48), 0.15, seed)
				c.box(0, y+30, 700, 14, 2, sheer(rgb{}, 0.35))
			})
			x := -420.0
			for x < 420 {
				w, h := 22+30*r.Float64(), 40+50*r.Float64()
				col := hx([]uint32{0xc8342a, 0x2a5ac0, 0xe8d8b0, 0x2f8a48, 0xd8902a, 0xe8e8e8, 0x303438, 0x8a5aa0}[r.IntN(8)])
				s := fmt.Sprint([]int{1, 5, 10, 24, 40, 60, 100, 500}[r.IntN(8)])
				x += w
				cx, can := x, r.IntN(2) == 0
				put(func(c *canvas, _ show) {
					c.box(cx, y-h, w, h, 3, func(px, py, d float64) (rgb, float32) {
						k := 0.9
						if can {
							t := (px - cx) / w
							k = 0.45 + 0.65*math.Sqrt(math.Max(0, 1-sq(t+0.25)/1.6))
						}
						if py < y-2*h+9 && can {
							return rgb{0.4, 0.4, 0.4}.mul(float32(k)), 1
						}
						return col.mul(float32(k * (0.95 + 0.1*fbm(px/9, py/9, 2, seed)))), 1
					})
					c.box(cx, y-h*0.85, w*0.75, h*0.42, 1, sheer(hx(0xf2f0e8), 0.9))
					c.text(cx, y-h*0.75, math.Min(18, w*0.5), s, pn, 0, flat(col.mul(0.4)))
				})
				x += w + 3 + 12*r.Float64()
			}
		}
	case Tools:
		view = 280 + 150*r.Float64()
		for range 3 + r.IntN(3) {
			x, y, a := r.NormFloat64()*70, r.NormFloat64()*60, r.Float64()*2*math.Pi
			ux, uy := math.Cos(a), math.Sin(a)
			g := func(l, s float64) pt { return pt{x + ux*l - uy*s, y + uy*l + ux*s} }
			col := hx(holsterColors[r.IntN(len(holsterColors))])
			form := r.IntN(3)
			put(func(c *canvas, _ show) {
				c.soft([]pt{{x + 4 - ux*60, y + 7 - uy*60}, {x + 4 + ux*80, y + 7 + uy*80}}, 16, 0.4)
				switch form {
				case 0: // screwdriver
					c.tube([]pt{g(0, 0), g(95, 0)}, 6, hx(0xb0b2b4), 0.5)
					c.tube([]pt{g(-70, 0), g(-4, 0)}, 24, col, 0.3)
					c.tube([]pt{g(-10, 0), g(2, 0)}, 14, col.mul(0.6), 0.2)
				case 1: // pliers
					c.tube(bezier(g(0, 4), g(-30, 16), g(-60, 22), g(-100, 14), 12), 14, col, 0.25)
					c.tube(bezier(g(0, -4), g(-30, -16), g(-60, -22), g(-100, -14), 12), 14, col, 0.25)
					c.poly([]pt{g(-6, 12), g(48, 5), g(50, -5), g(-6, -12)}, flat(hx(0x6a6c6e)))
					c.line([]pt{g(5, 0), g(50, 0)}, 1, flat(rgb{0.01, 0.01, 0.01}))
					c.disc(x, y, 7, flat(hx(0x8a8c8e)))
				default: // tape rule, with its printed numbers
					c.poly([]pt{g(-90, -11), g(110, -11), g(110, 11), g(-90, 11)}, flat(hx(0xe8c820)))
					for i := 0.0; i < 80; i++ {
						l := 4.0
						if math.Mod(i, 10) == 0 {
							l = 10
							q := g(-88+i*2.5+4, 6)
							c.text(q.x, q.y, 5, fmt.Sprint(int(i/10)+12), pn, 0, flat(rgb{0.02, 0.02, 0.02}))
						}
						c.line([]pt{g(-88+i*2.5, -11), g(-88+i*2.5, -11+l)}, 0.5, flat(rgb{0.02, 0.02, 0.02}))
					}
				}
			})
		}
	case Paper:
		view = 150 + 150*r.Float64()
		sheetOf(75, 95, hx(0xf6f5ef))
		ink := hx([]uint32{0x1c2a70, 0x16171a, 0x5a5c60, 0xa02020}[r.IntN(4)])
		lined := r.IntN(2) == 0
		for i := 0; i < 11; i++ {
			y := -80 + float64(i)*15
			s := []string{"24.5 V", "R-C 24", "0.55", "supply 138", "T1 68.4", "return 71", "filter 3/12", "W 0.0", "118.6 ok", "call 2 pm", digits(4), digits(3) + "." + digits(1)}[r.IntN(12)]
			p := pen{0.07 + 0.04*r.Float64(), 0.9 + 0.2*r.Float64(), 0.1 * r.NormFloat64(), true}
			sz, x, dy, skip := 6+5*r.Float64(), -65+20*r.Float64(), r.NormFloat64(), r.IntN(3) == 0
			put(func(c *canvas, _ show) {
				if lined {
					c.line([]pt{{-75, y + 2}, {75, y + 2}}, 0.3, sheer(hx(0x70a0d0), 0.7))
				}
				if !skip {
					c.text(x, y+dy, sz, s, p, -1, sheer(ink, 0.88))
				}
			})
		}
	case Phone:
		view = 130 + 120*r.Float64()
		clock := fmt.Sprintf("%d:%02d", 1+r.IntN(12), r.IntN(60))
		date := fmt.Sprintf("%s %d", []string{"MONDAY", "Tuesday", "Friday", "SATURDAY"}[r.IntN(4)], 1+r.IntN(30))
		a, b := hx([]uint32{0x1a2a6a, 0x602a5a, 0x0a4a4a, 0x101014}[r.IntN(4)]), hx([]uint32{0xd07040, 0x40a0c0, 0x202028, 0x8060c0}[r.IntN(4)])
		bright := float32(0.5 + 0.8*r.Float64())
		thin := pen{0.05 + 0.08*r.Float64(), 0.95, 0, true}
		put(func(c *canvas, _ show) {
			c.solid(0, 20, 37, 76, 9, 2, hx(0x151618), 0.02, seed)
			in := func(x, y float64) float64 { return sdBox(x, y, 0, 20, 34.5, 73, 7) }
			c.shape(-36, -60, 36, 100, in, flat(rgb{0.01, 0.01, 0.01}))
			c.glow(-36, -60, 36, 100, in, func(x, y, _ float64) (rgb, float32) {
				t := clamp((y+50)/140+0.3*(fbm(x/30, y/30, 3, seed)-0.5), 0, 1)
				return mix(a, b, float32(t)).mul(bright * 0.6), 1
			})
			white := flat(rgb{1, 1, 1}.mul(bright))
			put := func(x, y, h float64, s string, p pen) {
				var e canvas
				e = *c
				e.col, e.a, e.gl = make([]rgb, len(c.col)), make([]float32, len(c.a)), make([]float32, len(c.gl))
				e.em = make([]rgb, len(c.em))
				e.text(x, y, h, s, p, 0, white)
				for i, k := range e.a {
					c.em[i] = mix(c.em[i], rgb{1, 1, 1}.mul(bright), k)
				}
			}
			put(0, -8, 17, clock, thin)
			put(0, 2, 4, date, thin)
			put(0, 60, 2.6, "2 messages", thin)
			c.text(-28, -46, 2.4, "9:41", thin, -1, sheer(rgb{}, 0))
			c.gloss(-36, -60, 36, 100, in, 1)
		})
	case Hands:
		view = 200 + 120*r.Float64()
		skin := hx(skins[r.IntN(len(skins))])
		x0, y0 := r.NormFloat64()*20, 30+20*r.Float64()
		put(func(c *canvas, _ show) {
			c.solid(x0, y0+75, 46, 60, 30, 22, skin, 0.08, seed)
		})
		for i := range 4 {
			a := math.Pi/2 + (float64(i)-1.5)*-0.13 + 0.05*r.NormFloat64()
			l := []float64{70, 84, 78, 58}[i]
			tip := pt{x0 + (float64(i)-1.5)*21 - math.Cos(a)*l, y0 + 55 - math.Sin(a)*l*1.1}
			ops = append(ops, finger(tip, a, 19, skin, true, seed+uint32(i)))
		}
		ops = append(ops, finger(pt{x0 - 75, y0 + 30}, 0.7, 22, skin, true, seed+9))
		put(func(c *canvas, _ show) { c.solid(x0, y0+95, 44, 55, 34, 30, skin, 0.08, seed) })
	case Counter:
		view = 90 + 90*r.Float64()
		n := 5 + r.IntN(3)
		s := digits(n)
		red := r.IntN(3)
		half := r.IntN(n)
		put(func(c *canvas, _ show) {
			w := float64(n) * 4.5
			c.solid(0, 0, w+22, 40, 4, 3, hx(0x8a8d8c), 0.08, seed)
			c.disc(0, 0, 0.1, flat(rgb{}))
			c.box(0, -4, w+5, 9, 1, flat(hx(0x0c0c0e)))
			for i := range n {
				x := (float64(i) - float64(n-1)/2) * 9
				col := hx(0x1a1a1c)
				if i >= n-red {
					col = hx(0xa01818)
				}
				c.box(x, -4, 3.8, 7.6, 0.4, func(px, py, d float64) (rgb, float32) {
					return col.add(rgb{0.02, 0.02, 0.02}).mul(float32(1.2 - sq((py+4)/8))), 1
				})
				dy := 0.0
				if i == half {
					dy = 3
				}
				c.text(x-0.2, -0.5+dy, 7, string(s[i]), pen{0.13, 0.85, 0, true}, 0, flat(hx(0xf0f0ea)))
			}
			c.text(0, 17, 5, "CUBIC FEET", pn, 0, flat(hx(0x1a1a1c)))
			c.text(0, 28, 4, "No "+s[:3]+"-88", pn, 0, flat(hx(0x1a1a1c)))
			c.gloss(-w-5, -13, w+5, 5, func(x, y float64) float64 { return sdBox(x, y, 0, -4, w+5, 9, 1) }, 1)
		})
	case Breakers:
		view = 180 + 120*r.Float64()
		amps := []string{"15", "20", "30", "50"}
		for i := range 10 {
			x, y := float64(i%2)*70-35, float64(i/2)*26-55
			s, on := amps[r.IntN(4)], r.IntN(5) > 0
			put(func(c *canvas, _ show) {
				c.solid(x, y, 31, 11.5, 1, 1.5, hx(0x1b1c1e), 0.05, seed+uint32(i))
				sx := 12.0
				if (i%2 == 0) != on {
					sx = -12
				}
				c.solid(x+sx*0.5, y, 9, 6, 1, 2, hx(0x2c2d30), 0.04, seed)
				c.text(x+sx*0.5, y+2, 4.2, s, pn, 0, flat(hx(0xf0f0f0)))
				lx := x - 58
				if i%2 == 1 {
					lx = x + 50
				}
				c.box(lx, y, 12, 8, 0.5, flat(hx(0xeeece2)))
				c.text(lx, y+3, 6, fmt.Sprint(i+1), pn, 0, flat(rgb{0.03, 0.03, 0.03}))
			})
		}
	}
	return ops, view, [4]float64{-80, -80, 80, 80}
}
