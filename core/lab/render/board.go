package render

import (
	"math"
	"math/rand/v2"
)

// Scene is a control board with a status light, filmed by hand.
type Scene struct {
	W, H   int
	Blink  Blink
	Shake  float64 // pixels either way
	Zoom   float64 // share either way
	Noise  float64
	Tints  [][3]float64 // colours of the flashes of a cycle one after another, red, green and blue from 0 to 1, the last for all that follow; none: grey film
	tex    *canvas
	light  point // in the texture
	other  point // a light that stays on
	radius float64
	r      *rand.Rand
	phase  [6]float64
}

// Film is one picture of the scene.
type Film struct {
	Pix    []byte
	Cb, Cr []byte // at full size; nil when the scene is grey
	T      int64
	X, Y   float64 // true place of the light
}

// NewScene lays out board number seed.
func NewScene(seed uint64, w, h int, b Blink) *Scene {
	r := rand.New(rand.NewPCG(seed, 0x7363656e65))
	s := &Scene{W: w, H: h, Blink: b, r: r, Noise: 3}
	tw, th := w*3/2, h*3/2
	s.tex = newCanvas(tw, th)
	base := float32(40 + 80*r.Float64())
	for i := range s.tex.pix {
		s.tex.pix[i] = base
	}
	for range 120 {
		x, y := r.Float64()*float64(tw), r.Float64()*float64(th)
		a, c := 2+r.Float64()*float64(tw)/25, 2+r.Float64()*float64(th)/25
		v := float32(10 + 190*r.Float64())
		for j := int(y); j < min(th, int(y+c)); j++ {
			for i := int(x); i < min(tw, int(x+a)); i++ {
				s.tex.pix[j*tw+i] = v
			}
		}
	}
	s.light = point{float64(tw) * (0.35 + 0.3*r.Float64()), float64(th) * (0.35 + 0.3*r.Float64())}
	s.other = point{s.light.x + float64(tw)*0.12, s.light.y + float64(th)*(0.1*r.Float64()-0.05)}
	s.radius = 2 + 2*r.Float64()
	// a dark socket round both lights
	for _, p := range [2]point{s.light, s.other} {
		d := s.radius * 4
		for j := max(0, int(p.y-d)); j < min(th, int(p.y+d)); j++ {
			for i := max(0, int(p.x-d)); i < min(tw, int(p.x+d)); i++ {
				if math.Hypot(float64(i)-p.x, float64(j)-p.y) < d {
					s.tex.pix[j*tw+i] = base*0.6 + 10
				}
			}
		}
	}
	blur(s.tex.pix, tw, th, 0.8)
	for i := range s.phase {
		s.phase[i] = r.Float64() * 2 * math.Pi
	}
	return s
}

// Run films the scene and hands each picture to f, which may keep nothing of it.
func (s *Scene) Run(seed uint64, f func(*Film)) {
	plain := s.Blink
	plain.SNR, plain.Ripple, plain.Shake, plain.AutoExposure = 1e9, 0, 0, false
	ticks := plain.Run(seed)
	img := make([]float32, s.W*s.H)
	film := &Film{Pix: make([]byte, s.W*s.H)}
	if s.Tints != nil {
		film.Cb, film.Cr = make([]byte, s.W*s.H), make([]byte, s.W*s.H)
	}
	r := rand.New(rand.NewPCG(seed, 0x66696c6d))
	for _, t := range ticks {
		at := float64(t.T) / 1e9
		lit := math.Max(0, (t.Spot-t.Ring)/(30*0.96))
		w := func(k int, f float64) float64 { return math.Sin(2*math.Pi*f*at + s.phase[k]) }
		z := 1 + s.Zoom*w(0, 0.11)
		rot := 0.03 * w(1, 0.23) * boolTo(s.Shake > 0)
		dx := s.Shake * (0.7*w(2, 0.31) + 0.3*w(3, 1.7))
		dy := s.Shake * (0.7*w(4, 0.41) + 0.3*w(5, 1.3))
		cx, cy := float64(s.tex.w)/2, float64(s.tex.h)/2
		cos, sin := math.Cos(rot)/z, math.Sin(rot)/z
		for y := range s.H {
			py := float64(y) - float64(s.H)/2 - dy
			for x := range s.W {
				px := float64(x) - float64(s.W)/2 - dx
				u, v := cx+cos*px+sin*py, cy-sin*px+cos*py
				i, j := int(u), int(v)
				if i < 0 || j < 0 || i+1 >= s.tex.w || j+1 >= s.tex.h {
					img[y*s.W+x] = 30
					continue
				}
				fx, fy := float32(u-float64(i)), float32(v-float64(j))
				p, q := s.tex.pix[j*s.tex.w+i:], s.tex.pix[(j+1)*s.tex.w+i:]
				img[y*s.W+x] = (p[0]*(1-fx)+p[1]*fx)*(1-fy) + (q[0]*(1-fx)+q[1]*fx)*fy
			}
		}
		put := func(p point, level float64) (float64, float64) {
			ux, uy := p.x-cx, p.y-cy
			c, n := math.Cos(rot)*z, math.Sin(rot)*z
			x, y := c*ux-n*uy+float64(s.W)/2+dx, n*ux+c*uy+float64(s.H)/2+dy
			rad := s.radius * z
			for j := max(0, int(y-6*rad)); j <= min(s.H-1, int(y+6*rad)); j++ {
				for i := max(0, int(x-6*rad)); i <= min(s.W-1, int(x+6*rad)); i++ {
					d := math.Hypot(float64(i)-x, float64(j)-y) / rad
					img[j*s.W+i] += float32(level * (150*math.Exp(-d*d*0.8) + 12*math.Exp(-d*d*0.1)))
				}
			}
			return x, y
		}
		film.X, film.Y = put(s.light, lit)
		put(s.other, 1)
		film.T = t.T
		for i, v := range img {
			v += float32(s.Noise * normals[r.Uint32()&4095])
			film.Pix[i] = byte(max(0, min(255, v+0.5)))
		}
		if film.Cb != nil {
			s.tint(film, lit, s.Tints[min(t.Flash, len(s.Tints)-1)], r)
		}
		f(film)
	}
}

// tint writes the colour planes: noise but for the light and its halo.
func (s *Scene) tint(f *Film, lit float64, rgb [3]float64, noise *rand.Rand) {
	for i := range f.Cb {
		f.Cb[i], f.Cr[i] = byte(128.5+0.7*s.Noise*normals[noise.Uint32()&4095]), byte(128.5+0.7*s.Noise*normals[noise.Uint32()&4095])
	}
	r, g, b := rgb[0], rgb[1], rgb[2]
	rad := s.radius
	for j := max(0, int(f.Y-6*rad)); j <= min(s.H-1, int(f.Y+6*rad)); j++ {
		for i := max(0, int(f.X-6*rad)); i <= min(s.W-1, int(f.X+6*rad)); i++ {
			d := math.Hypot(float64(i)-f.X, float64(j)-f.Y) / rad
			k := lit * (110*math.Exp(-d*d*0.3) + 12*math.Exp(-d*d*0.1))
			f.Cb[j*s.W+i] = byte(math.Max(0, math.Min(255, float64(f.Cb[j*s.W+i])+k*(-0.168736*r-0.331264*g+0.5*b))))
			f.Cr[j*s.W+i] = byte(math.Max(0, math.Min(255, float64(f.Cr[j*s.W+i])+k*(0.5*r-0.418688*g-0.081312*b))))
		}
	}
}

func boolTo(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
