package otherrender

import (
	"image"
	"math"
	"math/rand/v2"
)

// The small films are 320 by 240; the scene is painted once, a little larger, and seen through a moving hand.
const filmW, filmH = 320, 240

// film is what Light and Fire share: the still scene, the hand, the exposure and the false signs.
type film struct {
	seed    uint64
	fps     int
	n       int
	still   frame // reflected light, with a margin of 20
	shake   [3][3][3]float64
	shakeBy float64
	gain    float64
	dark    float64 // the room's light
	noise   float64
	quality int
	signs   []falseSign
	mains   float64 // depth of the lamp's flicker
	beat    float64 // Hz after sampling
	rows    float64 // dark bars over the height
}

// falseSign is something that changes the light without being what is asked for.
type falseSign struct {
	name     string
	from, to float64 // seconds
	a, b     pt      // way, in shares of the picture
	size     float64
	power    float64
	col      rgb
	seed     uint32
}

const margin = 20

func newFilm(r *rand.Rand, seed uint64, c *canvas, bg func(x, y float64) rgb, dark float64) film {
	f := film{seed: seed, fps: []int{25, 30, 30}[r.IntN(3)]}
	f.n = int((8 + 4*r.Float64()) * float64(f.fps))
	f.dark = dark
	f.still = frame{filmW + 2*margin, filmH + 2*margin, nil}
	slope, dir := 0.3*r.Float64(), r.Float64()*2*math.Pi
	for j := range f.still.h {
		for i := range f.still.w {
			x, y := c.ox+(float64(i)+0.5)/c.s, c.oy+(float64(j)+0.5)/c.s
			k := j*c.w + i
			q := mix(bg(x, y), c.col[k], c.a[k])
			l := 1 + slope*((float64(i)/float64(f.still.w)-0.5)*math.Cos(dir)+(float64(j)/float64(f.still.h)-0.5)*math.Sin(dir))*2
			f.still.px = append(f.still.px, q.mul(float32(l*dark)).add(c.em[k]))
		}
	}
	f.gain = f.still.meter() * math.Exp(0.2*r.NormFloat64())
	for i := range f.shake {
		for k := range f.shake[i] {
			f.shake[i][k] = [3]float64{r.NormFloat64() / float64(k+1), 0.2 + 0.9*float64(k) + 0.6*r.Float64(), r.Float64() * 7}
		}
	}
	f.shakeBy = 0.5 + 3.5*r.Float64()
	f.noise = 0.004 + 0.02*r.Float64()
	f.quality = 45 + r.IntN(45)
	if r.IntN(2) == 0 {
		f.mains, f.beat, f.rows = 0.05+0.2*r.Float64(), 0.2+6*r.Float64(), 2*r.Float64()
	}
	return f
}

func (f *film) seconds() float64 { return float64(f.n) / float64(f.fps) }

func (f *film) add(r *rand.Rand, name string, around pt) {
	d := f.seconds()
	s := falseSign{name: name, seed: r.Uint32(), power: 0.4 + 0.5*r.Float64(), size: 0.08 + 0.15*r.Float64(), col: rgb{1, 1, 1}}
	s.from = d * 0.8 * r.Float64()
	s.to = s.from + 0.6 + 2.5*r.Float64()
	ang := r.Float64() * 2 * math.Pi
	s.a = pt{around.x + math.Cos(ang)*0.9, around.y + math.Sin(ang)*0.9}
	s.b = pt{around.x - math.Cos(ang+r.NormFloat64()*0.3)*0.9, around.y - math.Sin(ang)*0.9}
	switch name {
	case "reflection":
		s.size = 0.02 + 0.03*r.Float64()
		s.power = 0.8 + 1.5*r.Float64()
	case "sun patch":
		s.from, s.to = -1, d+1
		s.a = pt{around.x + 0.2*r.NormFloat64(), around.y + 0.2*r.NormFloat64()}
		s.b = pt{s.a.x + 0.05*r.NormFloat64(), s.a.y + 0.05*r.NormFloat64()}
		s.size, s.col, s.power = 0.12+0.2*r.Float64(), rgb{1.25, 1, 0.65}, 0.5+1.1*r.Float64()
	case "leaves":
		s.from, s.to = -1, d+1
		s.power = 0.25 + 0.4*r.Float64()
	case "torch":
		s.power, s.size = 1.2+2.5*r.Float64(), 0.15+0.2*r.Float64()
	case "hand":
		s.to = s.from + 0.5 + 1.6*r.Float64()
		s.size = 0.09 + 0.08*r.Float64()
		s.col = hx(skins[r.IntN(len(skins))])
	}
	f.signs = append(f.signs, s)
}

func (s falseSign) at(t float64) (pt, bool) {
	if t < s.from || t > s.to {
		return pt{}, false
	}
	k := (t - s.from) / (s.to - s.from)
	return pt{s.a.x + (s.b.x-s.a.x)*k, s.a.y + (s.b.y-s.a.y)*k}, true
}

// offset is how far the hand has moved, in pixels, and turned.
func (f *film) offset(t float64) (dx, dy, turn float64) {
	var v [3]float64
	for i := range v {
		for _, w := range f.shake[i] {
			v[i] += w[0] * math.Sin(2*math.Pi*w[1]*t+w[2])
		}
	}
	return clamp(v[0]*f.shakeBy, -12, 12), clamp(v[1]*f.shakeBy, -12, 12), clamp(v[2]*0.004*f.shakeBy, -0.03, 0.03)
}

// toScreen moves a place of the still scene (without its margin) into a frame.
func (f *film) toScreen(p pt, t float64) pt {
	dx, dy, a := f.offset(t)
	x, y := p.x-filmW/2, p.y-filmH/2
	return pt{x*math.Cos(a) - y*math.Sin(a) + filmW/2 + dx, x*math.Sin(a) + y*math.Cos(a) + filmH/2 + dy}
}

// covered says whether a hand lies over a place of the frame, in pixels.
func (f *film) covered(p pt, t, slack float64) bool {
	for _, s := range f.signs {
		if s.name != "hand" {
			continue
		}
		if c, on := s.at(t); on && f.handDist(s, c, p.x, p.y) < slack {
			return true
		}
	}
	return false
}

// handDist is the distance to a hand: a fist and its arm, which reaches back to where it came from.
func (f *film) handDist(s falseSign, c pt, x, y float64) float64 {
	l := math.Hypot(s.a.x-s.b.x, s.a.y-s.b.y)
	back := pt{c.x + (s.a.x-s.b.x)/l*1.6, c.y + (s.a.y-s.b.y)/l*1.6}
	w := s.size * filmW
	wob := 0.04 * w * math.Sin(math.Atan2(y-c.y*filmH, x-c.x*filmW)*3)
	return sdSeg(x, y, pt{c.x * filmW, c.y * filmH}, pt{back.x * filmW, back.y * filmH}) - w + wob
}

// render makes a frame; own(x, y) adds the own light at a place of the still scene, spread(…) the light it throws around.
func (f *film) render(i int, own func(x, y float64) rgb, wash func(x, y float64) float64) *image.RGBA {
	t := float64(i) / float64(f.fps)
	r := rng(f.seed, 5000+uint64(i))
	dx, dy, a := f.offset(t)
	ca, sa := math.Cos(-a), math.Sin(-a)
	out := frame{filmW, filmH, make([]rgb, filmW*filmH)}
	type active struct {
		falseSign
		c pt
	}
	var now []active
	for _, s := range f.signs {
		if c, on := s.at(t); on {
			now = append(now, active{s, c})
		}
	}
	gain := float32(f.gain * (1 + 0.03*math.Sin(t*0.9)))
	for j := range filmH {
		lamp := 1 + f.mains*math.Sin(2*math.Pi*(f.beat*t+f.rows*float64(j)/filmH))
		for k := range filmW {
			ux, uy := float64(k)-filmW/2-dx, float64(j)-filmH/2-dy
			x, y := ux*ca-uy*sa+filmW/2, ux*sa+uy*ca+filmH/2
			q := f.still.bilinear(x+margin, y+margin)
			l := lamp
			u, v := (float64(k)+0.5)/filmW, (float64(j)+0.5)/filmH
			var add rgb
			for _, s := range now {
				d := math.Hypot(u-s.c.x, (v-s.c.y)*0.75)
				switch s.name {
				case "shadow":
					l *= 1 - s.power*smooth(s.size*1.6, s.size*0.6, d)
				case "leaves":
					g := fbm(u*5+0.35*math.Sin(t*1.7)+0.1*t, v*5+0.4*math.Sin(t*1.3+2), 3, s.seed)
					l *= 1 - s.power*smooth(0.38, 0.66, g)
				case "sun patch":
					c1, s1 := math.Cos(float64(s.seed%7)), math.Sin(float64(s.seed%7)) // the slanted picture of a window
					e := smooth(0.012, -0.012, sdBox((u-s.c.x)*c1+(v-s.c.y)*0.75*s1, (v-s.c.y)*0.75*c1-(u-s.c.x)*s1*0.6, 0, 0, s.size, s.size*0.6, 0.01))
					q = q.add(q.times(s.col).mul(float32(s.power * e))).add(s.col.mul(float32(0.03 * e * s.power * f.dark)))
				case "torch":
					e := math.Exp(-sq(d / s.size))
					q = q.add(q.mul(float32(s.power * e))).add(rgb{1, 1, 0.95}.mul(float32(0.05 * e * s.power * f.dark)))
				case "reflection":
					add = add.add(s.col.mul(float32(s.power / f.gain * math.Exp(-sq(d/s.size)))))
				}
			}
			q = q.mul(float32(l * (1 + wash(x, y)))).add(own(x, y)).add(add)
			for _, s := range now {
				if s.name == "hand" {
					h := f.handDist(s.falseSign, s.c, float64(k), float64(j))
					if h < 1 {
						w := s.size * filmW
						e := float32(clamp(0.5-h/2, 0, 1))
						k := float32((0.5 + 0.5*math.Sqrt(math.Max(0.05, -h/w))) * (1 + 0.15*(fbm(u*30, v*30, 2, s.seed)-0.5)))
						q = mix(q, s.col.mul(k*float32(0.8*f.dark*lamp)), e)
					}
				}
			}
			out.px[j*filmW+k] = q
		}
	}
	out = out.bloom(gain)
	for k, q := range out.px {
		q = q.mul(gain)
		n := func(v float32) float32 {
			return v + float32(f.noise*math.Sqrt(0.2+float64(max(0, v)))*r.NormFloat64())
		}
		out.px[k] = rgb{n(q.r), n(q.g), n(q.b)}
	}
	img, _ := out.developed(1, rgb{1, 1, 1}).file(f.quality)
	return img
}

func (f frame) bilinear(x, y float64) rgb {
	x, y = clamp(x, 0, float64(f.w)-1.01), clamp(y, 0, float64(f.h)-1.01)
	i, j := int(x), int(y)
	tx, ty := float32(x-float64(i)), float32(y-float64(j))
	return mix(mix(f.px[j*f.w+i], f.px[j*f.w+i+1], tx), mix(f.px[(j+1)*f.w+i], f.px[(j+1)*f.w+i+1], tx), ty)
}

// LightState is what a status light does.
type LightState string

const (
	LightOff    LightState = "off"
	LightSteady LightState = "steady"
	LightBlinks LightState = "blinks"
)

// LightFilm is a film of a status light; Frame draws its frames one by one.
type LightFilm struct {
	Seed  uint64
	FPS   int
	N     int
	State LightState
	Code  int // blinks between two pauses, 1 to 9; 0 where it does not blink
	// On, Dark and Pause are the seconds of one blink, between two blinks, and after the last (beside Dark).
	On, Dark, Pause float64
	Color           string
	Signs           []string // what else happens in the film
	Readable        bool     // at least one code from pause to pause is never covered by a hand
	film            film
	at              pt
	rad             float64
	phase           float64
	col             rgb
	power           float64
}

// Light makes the film of a status light.
func Light(seed uint64) LightFilm {
	r := rng(seed, 4)
	l := LightFilm{Seed: seed}
	c := newCanvas(-60, -47, -60+(filmW+2*margin)/3.0, -47+(filmH+2*margin)/3.0, 3)
	scene := r.IntN(3)
	seedC := r.Uint32()
	pn := fieldPens[r.IntN(len(fieldPens))]
	at := pt{r.NormFloat64() * 9, r.NormFloat64() * 7}
	l.rad = (1.1 + 2.2*r.Float64()) * 3
	shell := hx([]uint32{0x1c5a34, 0x8a8d90, 0x2a2c30, 0xd8d6cc}[r.IntN(4)])
	ink := hx(0xf0f0ea)
	if shell.luma() > 0.2 {
		ink = hx(0x202226)
	}
	ops := []op{func(c *canvas, _ show) {
		c.solid(0, 0, 70, 55, 2, 2, shell, 0.06, seedC)
		c.text(at.x, at.y+l.rad/3+5, 2.8, []string{"STATUS", "LED1", "DIAG", "OK"}[scene], pn, 0, flat(ink))
	}}
	for range 5 + r.IntN(8) {
		x, y, form := (r.Float64()*2-1)*50, (r.Float64()*2-1)*38, r.IntN(4)
		if math.Hypot(x-at.x, y-at.y) < 15 {
			continue
		}
		k := hx([]uint32{0x18191b, 0xd8d4c8, 0x2a58a8, 0x909498}[r.IntN(4)])
		ops = append(ops, func(c *canvas, _ show) {
			c.soft([]pt{{x + 2, y + 2}, {x + 3, y + 3}}, 7, 0.4)
			switch form {
			case 0:
				c.solid(x, y, 7, 5, 0.7, 1, k, 0.04, seedC)
			case 1:
				c.disc(x, y, 4, solidPaint(x, y, 4, 4, 2, k, 0.04, seedC))
			case 2:
				c.text(x, y, 3, "F1 3A", pn, 0, flat(ink))
			default:
				c.disc(x, y, 1.8, flat(hx(0x802020)))
			}
		})
	}
	if r.IntN(2) == 0 { // another light that stays on
		x, y := at.x+20+10*r.Float64(), at.y+10*r.NormFloat64()
		k := ledColors[r.IntN(4)]
		ops = append(ops, func(c *canvas, _ show) {
			c.glow(x-3, y-3, x+3, y+3, func(px, py float64) float64 { return math.Hypot(px-x, py-y) - 1.5 }, flat(k))
		})
		l.Signs = append(l.Signs, "steady neighbor")
	}
	names := []string{"red", "green", "amber", "blue", "white"}
	which := r.IntN(len(names))
	l.Color, l.col = names[which], []rgb{{1.9, 0.06, 0.03}, {0.1, 1.5, 0.12}, {1.7, 0.75, 0.05}, {0.07, 0.22, 1.9}, {1.4, 1.4, 1.5}}[which]
	ops = append(ops, func(c *canvas, _ show) {
		c.disc(at.x, at.y, l.rad/3+0.5, flat(rgb{0.05, 0.05, 0.05}))
		c.disc(at.x, at.y, l.rad/3, func(x, y, d float64) (rgb, float32) {
			k := float32(0.16 + 0.5*math.Exp(-(sq(x-at.x+0.4)+sq(y-at.y+0.5))/0.15))
			return mix(l.col.mul(k), rgb{0.3, 0.3, 0.3}.mul(k), 0.6), 1
		})
	})
	for _, o := range ops {
		o(c, show{})
	}
	for range 1 + r.IntN(4) {
		ops = ops[:0]
		k := hx(wireColors[r.IntN(len(wireColors))].hex)
		crossing(pt{-80, r.NormFloat64() * 40}, pt{80, 30 + r.NormFloat64()*10}, 10*r.NormFloat64(), 2.4, k)(c, show{})
	}
	l.film = newFilm(r, seed, c, background(r, Panel), math.Exp(-1.6*r.Float64()))
	l.FPS, l.N = l.film.fps, l.film.n
	l.at = pt{(at.x-c.ox)*3 - margin, (at.y-c.oy)*3 - margin}
	l.power = (0.35 + 1.1*r.Float64()) / l.film.gain
	around := pt{l.at.x / filmW, l.at.y / filmH}
	for _, s := range []string{"shadow", "reflection", "hand", "leaves", "torch"} {
		if r.IntN(10) < 3 {
			l.film.add(r, s, pt{around.x + 0.12*r.NormFloat64(), around.y + 0.12*r.NormFloat64()})
			l.Signs = append(l.Signs, s)
		}
	}
	if l.film.mains > 0 {
		l.Signs = append(l.Signs, "mains flicker")
	}
	l.State = []LightState{LightOff, LightSteady, LightBlinks, LightBlinks, LightBlinks, LightBlinks}[r.IntN(6)]
	l.Readable = true
	if l.State == LightBlinks {
		l.Code = 1 + r.IntN(9)
		// Slow blinks are tried first; the quickest nine last 3.3 s, and two whole codes must fit in the film.
		for slow := 1.0; ; slow *= 0.9 {
			l.On, l.Dark, l.Pause = 0.13+0.43*slow*r.Float64(), 0.13+0.38*slow*r.Float64(), 1+2*slow*r.Float64()
			if l.cycle() < 0.46*l.film.seconds() {
				break
			}
		}
		l.phase = r.Float64() * l.cycle()
		l.Readable = false
		clean := 0
		for i := range l.N {
			if l.Covered(i) {
				clean = 0
			} else if clean++; float64(clean)/float64(l.FPS) > 2*l.cycle()-0.05 {
				l.Readable = true
			}
		}
	}
	return l
}

func (l *LightFilm) cycle() float64 { return float64(l.Code)*(l.On+l.Dark) + l.Pause }

// Lit says whether the light is on in the middle of a frame.
func (l *LightFilm) Lit(i int) bool {
	if l.State != LightBlinks {
		return l.State == LightSteady
	}
	t := math.Mod(float64(i)/float64(l.FPS)+l.phase, l.cycle())
	return t < float64(l.Code)*(l.On+l.Dark) && math.Mod(t, l.On+l.Dark) < l.On
}

// At is where the light's middle lies in a frame.
func (l *LightFilm) At(i int) image.Point {
	p := l.film.toScreen(l.at, float64(i)/float64(l.FPS))
	return image.Pt(int(math.Round(p.x)), int(math.Round(p.y)))
}

// Covered says whether a hand hides the light in a frame.
func (l *LightFilm) Covered(i int) bool {
	t := float64(i) / float64(l.FPS)
	return l.film.covered(l.film.toScreen(l.at, t), t, l.rad)
}

// Frame draws one frame.
func (l *LightFilm) Frame(i int) *image.RGBA {
	lit := l.Lit(i)
	return l.film.render(i, func(x, y float64) rgb {
		if !lit {
			return rgb{}
		}
		d := math.Hypot(x-l.at.x, y-l.at.y)
		k := l.power * (smooth(l.rad+0.7, l.rad-0.7, d)*(0.8+0.6*math.Exp(-sq(d/l.rad*2))) + 0.12*math.Exp(-d/l.rad*0.9))
		hot := float32(0.2 * l.power * smooth(l.rad, 0, d))
		return l.col.mul(float32(k)).add(rgb{hot, hot, hot})
	}, func(x, y float64) float64 { return 0 })
}

// FireState is what is behind a burner's window.
type FireState string

const (
	FireNothing FireState = "nothing"
	FireGlow    FireState = "glow" // a hot surface igniter without a flame
	FireFlame   FireState = "flame"
	FireOut     FireState = "flame that goes out"
)

// FireFilm is a film of a burner window.
type FireFilm struct {
	Seed   uint64
	FPS    int
	N      int
	State  FireState
	OutAt  float64  // seconds; when the flame goes out
	Signs  []string // false signs in the film
	Window image.Rectangle
	film   film
	round  bool
	c      pt
	hw, hh float64
	ports  []pt
	blue   float64
	tall   float64
	power  float64
	start  float64
	noise  uint32
}

// Fire makes the film of a burner window.
func Fire(seed uint64) FireFilm {
	r := rng(seed, 5)
	f := FireFilm{Seed: seed, noise: r.Uint32()}
	c := newCanvas(-60, -47, -60+(filmW+2*margin)/3.0, -47+(filmH+2*margin)/3.0, 3)
	f.round = r.IntN(2) == 0
	f.hw, f.hh = 14+10*r.Float64(), 9+7*r.Float64()
	if f.round {
		f.hw = 10 + 8*r.Float64()
		f.hh = f.hw
	}
	at := pt{r.NormFloat64() * 7, r.NormFloat64() * 5}
	seedC := r.Uint32()
	shell := hx([]uint32{0x8a8d90, 0x3a3d40, 0xb0b2b0, 0x5a6a78}[r.IntN(4)])
	win := func(x, y float64) float64 {
		if f.round {
			return math.Hypot(x-at.x, y-at.y) - f.hw
		}
		return sdBox(x, y, at.x, at.y, f.hw, f.hh, 2)
	}
	pn := fieldPens[r.IntN(len(fieldPens))]
	c.solid(0, 0, 75, 60, 2, 2, shell, 0.08, seedC)
	c.shape(-60, -60, 60, 60, func(x, y float64) float64 { return win(x, y) - 4 }, func(x, y, d float64) (rgb, float32) {
		k := float32(0.75 - 0.3*(x-at.x+y-at.y)/f.hw*0.5)
		return rgb{0.3, 0.3, 0.29}.mul(k), 1
	})
	c.shape(-60, -60, 60, 60, win, func(x, y, d float64) (rgb, float32) {
		k := float32(0.02 + 0.03*fbm(x/4, y/4, 3, seedC))
		return rgb{k, k * 0.9, k * 0.8}, 1
	})
	c.text(at.x, at.y+f.hh+11, 3, []string{"OBSERVE FLAME", "SIGHT GLASS", "CAUTION HOT"}[r.IntN(3)], pn, 0, flat(hx(0xc01818)))
	var screws []op
	for i := range 4 {
		a := math.Pi/4 + float64(i)*math.Pi/2
		screw(func(o op) { screws = append(screws, o) }, pt{at.x + math.Cos(a)*(f.hw+10), at.y + math.Sin(a)*(f.hh+10)}, 1.6, r.Float64()*3)
	}
	for _, o := range screws {
		o(c, show{})
	}
	for range r.IntN(3) {
		k := hx(wireColors[r.IntN(len(wireColors))].hex)
		crossing(pt{-80, 40 * r.NormFloat64()}, pt{80, 38}, 10*r.NormFloat64(), 2.4, k)(c, show{})
	}
	f.film = newFilm(r, seed, c, background(r, Panel), math.Exp(-1.8*r.Float64()))
	f.FPS, f.N = f.film.fps, f.film.n
	f.c = pt{(at.x-c.ox)*3 - margin, (at.y-c.oy)*3 - margin}
	f.hw, f.hh = f.hw*3, f.hh*3
	f.Window = image.Rect(int(f.c.x-f.hw), int(f.c.y-f.hh), int(f.c.x+f.hw), int(f.c.y+f.hh))
	f.State = []FireState{FireNothing, FireGlow, FireFlame, FireOut}[r.IntN(4)]
	f.OutAt = (0.3 + 0.4*r.Float64()) * f.film.seconds()
	n := 1 + r.IntN(4)
	for i := range n {
		f.ports = append(f.ports, pt{f.c.x + (float64(i)-float64(n-1)/2)*f.hw*1.7/float64(n), f.c.y + f.hh*(0.5+0.25*r.Float64())})
	}
	f.blue, f.tall, f.power, f.start = r.Float64(), f.hh*(0.8+0.7*r.Float64()), (0.3+0.8*r.Float64())/f.film.gain, r.Float64()*50
	around := pt{f.c.x / filmW, f.c.y / filmH}
	for _, s := range []string{"sun patch", "leaves", "torch", "hand", "reflection", "shadow"} {
		if r.IntN(10) < 3 {
			f.film.add(r, s, pt{around.x + 0.06*r.NormFloat64(), around.y + 0.06*r.NormFloat64()})
			f.Signs = append(f.Signs, s)
		}
	}
	return f
}

// Burning says whether there is a flame in a frame.
func (f *FireFilm) Burning(i int) bool {
	return f.State == FireFlame || f.State == FireOut && float64(i)/float64(f.FPS) < f.OutAt
}

// Covered says whether a hand hides the middle of the window in a frame.
func (f *FireFilm) Covered(i int) bool {
	t := float64(i) / float64(f.FPS)
	return f.film.covered(f.film.toScreen(f.c, t), t, 0)
}

// Frame draws one frame.
func (f *FireFilm) Frame(i int) *image.RGBA {
	t := float64(i) / float64(f.FPS)
	burn := 0.0
	if f.Burning(i) {
		burn = 1
		if f.State == FireOut {
			burn = smooth(0, 0.25, f.OutAt-t) // it shrinks in a quarter of a second
		}
	}
	flick := 1 + 0.22*(noise(t*11+f.start, 0, f.noise)-0.5) + 0.12*(noise(t*23, 5, f.noise)-0.5)
	inside := func(x, y float64) float64 {
		if f.round {
			return math.Hypot(x-f.c.x, y-f.c.y) - f.hw
		}
		return sdBox(x, y, f.c.x, f.c.y, f.hw, f.hh, 6)
	}
	return f.film.render(i, func(x, y float64) rgb {
		d := inside(x, y)
		if d > 0.7 || burn == 0 && f.State != FireGlow {
			return rgb{}
		}
		edge := float32(smooth(0.7, -0.7, d))
		var q rgb
		if f.State == FireGlow {
			g := 0.8 + 0.2*smooth(0, 3, t)
			e := math.Min(sdSeg(x, y, pt{f.c.x - f.hw*0.3, f.c.y + f.hh*0.4}, pt{f.c.x - f.hw*0.25, f.c.y - f.hh*0.3}),
				sdSeg(x, y, pt{f.c.x - f.hw*0.25, f.c.y - f.hh*0.3}, pt{f.c.x + f.hw*0.05, f.c.y + f.hh*0.4}))
			k := smooth(3.4, 1.6, e)
			q = rgb{1.5, 0.42, 0.07}.mul(float32(f.power * g * (k + 0.25*math.Exp(-e/12))))
			return q.mul(edge)
		}
		for n, p := range f.ports {
			h := (p.y - y) / (f.tall * burn * (0.85 + 0.3*noise(t*6+float64(n)*9, 3, f.noise)))
			if h < -0.08 {
				continue
			}
			sway := 5 * h * (noise(t*4+float64(n)*7, y/26+t*5, f.noise) - 0.5) * 2
			w := f.hw * 0.75 / float64(len(f.ports)) * math.Sqrt(math.Max(0, 1-h)) * (0.55 + 0.5*fbm(float64(n)*5, y/16+t*9, 2, f.noise+7))
			s := math.Abs(x-p.x+sway) / math.Max(0.5, w)
			body := smooth(1.15, 0.55, s) * smooth(1.0, 0.75, h)
			base := float32(smooth(0.55, 0.05, h))
			tip := mix(rgb{1.5, 0.7, 0.12}, rgb{0.2, 0.36, 1.1}, float32(smooth(0.3, 0.6, f.blue))) // yellow where air is short
			hot := mix(tip, rgb{0.08, 0.25, 1.3}, base*0.9)
			q = q.add(hot.mul(float32(body * flick * f.power * (0.55 + 0.6*smooth(0.2, 0.9, s)*f.blue + 0.4*(1-f.blue)))))
		}
		glow := mix(rgb{0.12, 0.06, 0.02}, rgb{0.02, 0.03, 0.1}, float32(f.blue))
		q = q.add(glow.mul(float32(f.power * flick * burn)))
		return q.mul(edge)
	}, func(x, y float64) float64 {
		if burn == 0 {
			return 0
		}
		return 0.12 * f.power * burn * flick * math.Exp(-math.Max(0, inside(x, y))/30)
	})
}
