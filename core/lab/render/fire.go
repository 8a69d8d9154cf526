package render

import (
	"math"
	"math/rand/v2"
)

// Fire is a burner window filmed through an ignition: dark, then the igniter warms, then the flame, then perhaps dark again.
type Fire struct {
	W, H       int
	GlowAt     float64 // seconds, 0 for never
	FlameAt    float64
	OutAt      float64
	Blue       bool    // premixed flame: dim and blue
	Ripple     float64 // share of the room's light that follows the mains
	FPS        float64
	Exposure   float64
	Mains      float64
	Seconds    float64
	Room       float64 // grey level of the surroundings
	Noise      float64
	Brightness float64 // of the fire, grey levels at its full strength
}

// Spot is the burner window, the reference is the strip left of it.
func (f Fire) Spot() (x0, y0, x1, y1 int) { return f.W / 3, f.H / 3, f.W * 2 / 3, f.H * 2 / 3 }

// Ref is a part of the picture beside the window.
func (f Fire) Ref() (x0, y0, x1, y1 int) { return 2, f.H / 3, f.W/4 - 2, f.H * 2 / 3 }

// Run films the burner: each picture with the true state, 0 dark, 1 glow, 2 flame.
func (f Fire) Run(seed uint64, see func(s *Shot, t int64, state int)) {
	r := rand.New(rand.NewPCG(seed, 0x66697265))
	s := &Shot{W: f.W, H: f.H, Y: make([]byte, f.W*f.H), Cb: make([]byte, f.W*f.H), Cr: make([]byte, f.W*f.H)}
	phase := r.Float64()
	d := 0.03 + 0.1*r.Float64() // burner diameter, m
	hz := 1.5 / math.Sqrt(d)
	depth := 0.12 + 0.2*r.Float64()
	walk := 0.0
	x0, y0, x1, y1 := f.Spot()
	for k := 0; float64(k)/f.FPS < f.Seconds; k++ {
		at := float64(k) / f.FPS
		ripple := 0.0
		for i := range 8 {
			ripple += math.Sin(4*math.Pi*f.Mains*(at-f.Exposure*float64(i)/8)+phase) / 8
		}
		room := f.Room * (1 + f.Ripple*ripple)
		state := 0
		var add [3]float64
		if f.GlowAt > 0 && at >= f.GlowAt && (f.FlameAt == 0 || at < f.FlameAt+1) && (f.OutAt == 0 || at < f.OutAt) {
			state = 1
			heat := 1 - math.Exp(-(at-f.GlowAt)/2.5)
			add[0] += f.Brightness * heat
			add[1] += f.Brightness * heat * 0.38 * heat
			add[2] += f.Brightness * heat * 0.06 * heat
		}
		walk = 0.8*walk + 0.6*r.NormFloat64()*0.5
		if f.FlameAt > 0 && at >= f.FlameAt && (f.OutAt == 0 || at < f.OutAt) {
			state = 2
			a := 1 + depth*math.Sin(2*math.Pi*hz*at+walk) + 0.3*depth*walk
			c := [3]float64{1, 0.62, 0.2}
			if f.Blue {
				c = [3]float64{0.25, 0.45, 1}
			}
			for i := range add {
				add[i] += f.Brightness * 0.7 * a * c[i]
			}
		}
		for y := range f.H {
			for x := range f.W {
				R, G, B := room, room, room
				if x >= x0 && x < x1 && y >= y0 && y < y1 {
					dx, dy := float64(x-(x0+x1)/2)/float64(x1-x0)*2, float64(y-(y0+y1)/2)/float64(y1-y0)*2
					w := math.Exp(-(dx*dx + dy*dy))
					R, G, B = room*0.4+add[0]*w, room*0.4+add[1]*w, room*0.4+add[2]*w
				}
				q := r.Uint64()
				R = math.Max(0, math.Min(255, R+f.Noise*normals[q&4095]))
				G = math.Max(0, math.Min(255, G+f.Noise*normals[q>>16&4095]))
				B = math.Max(0, math.Min(255, B+f.Noise*normals[q>>32&4095]))
				i := y*f.W + x
				s.Y[i] = byte(0.299*R + 0.587*G + 0.114*B)
				s.Cb[i] = byte(math.Max(0, math.Min(255, 128.5-0.168736*R-0.331264*G+0.5*B)))
				s.Cr[i] = byte(math.Max(0, math.Min(255, 128.5+0.5*R-0.418688*G-0.081312*B)))
			}
		}
		see(s, int64(at*1e9)+1, state)
	}
}
