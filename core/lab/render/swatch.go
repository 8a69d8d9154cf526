package render

import (
	"math"
	"math/rand/v2"
)

// Swatch is one wire beside a white card under warm or cold light.
type Swatch struct {
	*Shot
	Name   string
	Wire   [2]float64 // a point on the wire's middle
	Along  float64    // its direction, radians
	Radius float64
	Card   [2]float64 // middle of the card
}

// NewSwatch draws wire number seed of a colour. The light is warm (about 2700 to 3500 K) or cold (about 6000 to 7500 K), half of
// its cast already taken out by the camera; exposure, curve, gloss, grease and noise vary.
func NewSwatch(seed uint64, name string) *Swatch {
	r := rand.New(rand.NewPCG(seed, 0x737761746368))
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	const w, h = 120, 90
	p := &painter{w, h, make([][3]float32, w*h)}
	g := span(60, 200)
	p.rect(0, 0, w, h, [3]float64{g, g * span(0.95, 1.05), g * span(0.9, 1.05)})
	p.rect(80, 8, 116, 40, [3]float64{243, 243, 241}) // paper throws back 0.9 of the light
	c := WireColours[name]
	for k := range c {
		c[k] = math.Max(8, math.Min(250, c[k]*span(0.88, 1.12)+span(-6, 6)))
	}
	along := span(0.3, 1.9) // never across the card
	radius := span(5, 10)
	cx, cy := 38.0, 48.0
	gloss := span(0, 90)
	for y := range h {
		for x := range w {
			t := (-(float64(x)-cx)*math.Sin(along) + (float64(y)-cy)*math.Cos(along)) / radius
			if t < -1 || t > 1 {
				continue
			}
			k := 0.5 + 0.55*math.Sqrt(1-t*t)
			s := gloss * math.Exp(-(t+0.35)*(t+0.35)*30)
			p.pix[y*w+x] = [3]float32{float32(c[0]*k + s), float32(c[1]*k + s), float32(c[2]*k + s)}
		}
	}
	cast := [3]float64{span(1.12, 1.25), 1, span(0.62, 0.82)}
	if r.IntN(2) == 0 {
		cast = [3]float64{span(0.86, 0.97), 1, span(1.05, 1.18)}
	}
	gain := span(0.4, 0.75) // the card is not burnt out
	gamma := span(0.92, 1.08)
	noise := span(1, 5)
	s := &Swatch{Shot: &Shot{W: w, H: h, Y: make([]byte, w*h), Cb: make([]byte, w*h), Cr: make([]byte, w*h)}, Name: name,
		Wire: [2]float64{cx, cy}, Along: along, Radius: radius, Card: [2]float64{98, 24}}
	q := func(v float64) byte { return byte(math.Max(0, math.Min(255, v+0.5))) }
	for i, px := range p.pix {
		var o [3]float64
		for k := range 3 {
			lin := math.Pow(float64(px[k])/255, 2.2) * gain * cast[k]
			o[k] = 255*math.Pow(math.Min(1, lin), gamma/2.2) + noise*r.NormFloat64()
		}
		s.Y[i] = q(0.299*o[0] + 0.587*o[1] + 0.114*o[2])
		s.Cb[i] = q(128 - 0.168736*o[0] - 0.331264*o[1] + 0.5*o[2])
		s.Cr[i] = q(128 + 0.5*o[0] - 0.418688*o[1] - 0.081312*o[2])
	}
	return s
}
