package render

import (
	"math"
	"math/rand/v2"
	"strconv"
)

// WireColours are the insulation colours by their IEC 60757 letters. The standard gives no colour coordinates; these
// are from memory of common cable colours, as sRGB.
var WireColours = map[string][3]float64{
	"BK": {30, 30, 32}, "BN": {98, 58, 38}, "RD": {196, 32, 36}, "OG": {236, 112, 24}, "YE": {240, 206, 40}, "GN": {30, 132, 62},
	"BU": {28, 84, 176}, "VT": {116, 58, 140}, "GY": {132, 134, 136}, "WH": {236, 234, 228}, "PK": {236, 152, 170},
}

// WireNames lists the keys of WireColours in a fixed order.
var WireNames = []string{"BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK"}

// Shot is a colour picture: brightness and colour planes at full size.
type Shot struct {
	W, H      int
	Y, Cb, Cr []byte
}

// Wiring is a cabinet before and after somebody's hands were in it.
type Wiring struct {
	W, H      int
	Terminals [][2]float64 // wire entries in the before picture
	Colours   []string     // of the wires before
	After     []string     // of the wires after, empty for a wire that is gone
	Truth     [9]float64   // before to after
	Before    *Shot
	Later     *Shot
}

type painter struct {
	w, h int
	pix  [][3]float32
}

func (p *painter) rect(x0, y0, x1, y1 float64, c [3]float64) {
	for y := max(0, int(y0)); y < min(p.h, int(y1)); y++ {
		for x := max(0, int(x0)); x < min(p.w, int(x1)); x++ {
			p.pix[y*p.w+x] = [3]float32{float32(c[0]), float32(c[1]), float32(c[2])}
		}
	}
}

func (p *painter) dot(cx, cy, r float64, c [3]float64, shade bool) {
	for y := max(0, int(cy-r)); y <= min(p.h-1, int(cy+r)); y++ {
		for x := max(0, int(cx-r)); x <= min(p.w-1, int(cx+r)); x++ {
			dx, dy := (float64(x)-cx)/r, (float64(y)-cy)/r
			if dx*dx+dy*dy > 1 {
				continue
			}
			k := 1.0
			if shade {
				k = 1 - 0.25*dx - 0.15*dy
			}
			p.pix[y*p.w+x] = [3]float32{float32(c[0] * k), float32(c[1] * k), float32(c[2] * k)}
		}
	}
}

// wire draws a cable along a curve: round, so dark at its sides and with a line of gloss.
func (p *painter) wire(path []point, r float64, c [3]float64, gloss float64) {
	for _, q := range path {
		for y := max(0, int(q.y-1)); y <= min(p.h-1, int(q.y+1)); y++ {
			for x := max(0, int(q.x-r)); x <= min(p.w-1, int(q.x+r)); x++ {
				t := (float64(x) - q.x) / r
				if t < -1 || t > 1 {
					continue
				}
				k := 0.45 + 0.6*math.Sqrt(1-t*t)
				g := gloss * math.Exp(-(t+0.35)*(t+0.35)*30)
				p.pix[y*p.w+x] = [3]float32{float32(c[0]*k + g), float32(c[1]*k + g), float32(c[2]*k + g)}
			}
		}
	}
}

func (p *painter) label(s string, x, y, h float64, c [3]float64) {
	cv := newCanvas(int(float64(len(s))*h)+4, int(h)+4)
	cv.word(s, 1, 1, h, 1)
	for j := range cv.h {
		for i := range cv.w {
			if a := cv.pix[j*cv.w+i]; a > 0.02 {
				px, py := int(x)+i, int(y)+j
				if px >= 0 && py >= 0 && px < p.w && py < p.h {
					q := &p.pix[py*p.w+px]
					for k := range 3 {
						q[k] += (float32(c[k]) - q[k]) * a
					}
				}
			}
		}
	}
}

const wireMargin = 160 // texture beyond the before picture on every side

// NewWiring draws pair number seed. Level 1 is a turn of 12 degrees, 15 % nearer or farther, corners moved by 45 px,
// gamma 0.7-1.4, gain 0.75-1.3, 10 % colour cast, a 30 % ramp, a glare spot, blur and noise; change says whether one
// wire is taken away or has another colour; moved wires keep their entry and go elsewhere below it.
func NewWiring(seed uint64, w, h int, level float64, change bool) *Wiring {
	r := rand.New(rand.NewPCG(seed, 0x7769726573))
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	tw, th := w+2*wireMargin, h+2*wireMargin
	base := &painter{tw, th, make([][3]float32, tw*th)}
	g := span(90, 200)
	plate := [3]float64{g * span(0.95, 1.05), g, g * span(0.95, 1.05)}
	base.rect(0, 0, float64(tw), float64(th), plate)
	for range 90 { // devices, holes, ducts, labels
		x, y := r.Float64()*float64(tw), r.Float64()*float64(th)
		a, b := span(15, 110), span(15, 80)
		v := span(20, 230)
		base.rect(x, y, x+a, y+b, [3]float64{v * span(0.85, 1.1), v, v * span(0.85, 1.1)})
		if r.Float64() < 0.6 {
			t := ""
			for range 2 + r.IntN(4) {
				t += string("ACDEFHILMNORSTUVX0126"[r.IntN(21)])
			}
			v2 := 235 - v
			base.label(t, x+4, y+4, span(8, 16), [3]float64{v2, v2, v2})
		}
		if r.Float64() < 0.5 {
			base.dot(x+span(0, a), y+span(0, b), span(3, 9), [3]float64{span(20, 220), span(20, 220), span(20, 220)}, true)
		}
	}
	for i := range base.pix {
		t := float32(normals[(i*7+i/tw*131)&4095] * 2)
		for k := range 3 {
			base.pix[i][k] += t
		}
	}
	wr := &Wiring{W: w, H: h}
	n := 9
	pitch := math.Min(62, float64(w-120)/float64(n))
	x0 := wireMargin + (float64(w)-pitch*float64(n))/2 + span(-30, 30)
	y0 := wireMargin + span(0.25, 0.5)*float64(h)
	body := [3]float64{span(150, 215), 0, 0}
	body[1], body[2] = body[0]*span(0.96, 1.02), body[0]*span(0.88, 1.02)
	base.rect(x0-20, y0-90, x0+pitch*float64(n)+20, y0+10, body)
	radius := span(6.5, 9.5)
	type cable struct {
		bend, swing float64
		name        string
		tone        [3]float64
	}
	cables := make([]cable, n)
	for i := range n {
		x := x0 + pitch*(float64(i)+0.5)
		base.rect(x-pitch/2+1, y0-88, x-pitch/2+3, y0+8, [3]float64{body[0] * 0.6, body[1] * 0.6, body[2] * 0.6})
		base.dot(x, y0-52, pitch*0.22, [3]float64{170, 168, 160}, true)
		a := span(0, math.Pi)
		for t := -0.2; t <= 0.2; t += 0.02 {
			base.dot(x+math.Cos(a)*pitch*t, y0-52+math.Sin(a)*pitch*t, 2, [3]float64{60, 60, 58}, false)
		}
		base.label(strconv.Itoa([]int{1, 2, 6, 10, 12, 16, 20, 21, 22}[i]), x-8, y0-86, 11, [3]float64{30, 30, 30})
		base.rect(x-radius-4, y0-16, x+radius+4, y0+8, [3]float64{35, 35, 35})
		cables[i] = cable{span(-60, 60), span(-25, 25), WireNames[r.IntN(len(WireNames))], [3]float64{span(0.92, 1.08), span(0.92, 1.08), span(0.92, 1.08)}}
		wr.Terminals = append(wr.Terminals, [2]float64{x - wireMargin, y0 + 26 - wireMargin})
		wr.Colours = append(wr.Colours, cables[i].name)
	}
	gloss := span(0, 70)
	run := func(c cable, x float64, from, to float64) (p []point) {
		for t := from; t < to; t += 0.5 {
			u := t / 260
			bend := c.bend * math.Max(0, u-0.12) * math.Max(0, u-0.12) * 2
			p = append(p, point{x + bend + c.swing*math.Sin(math.Max(0, u-0.12)*4)*0.6, y0 - 8 + t})
		}
		return p
	}
	paint := func(p *painter, cs []cable) {
		for i, c := range cs {
			x := x0 + pitch*(float64(i)+0.5)
			if c.name == "" {
				// taken out of the terminal: the piece at the entry is gone
				rgb := WireColours[wr.Colours[i]]
				tone := [3]float64{rgb[0] * c.tone[0], rgb[1] * c.tone[1], rgb[2] * c.tone[2]}
				p.wire(run(c, x, 66, 420), radius, tone, gloss)
				continue
			}
			rgb := WireColours[c.name]
			p.wire(run(c, x, 0, 420), radius, [3]float64{rgb[0] * c.tone[0], rgb[1] * c.tone[1], rgb[2] * c.tone[2]}, gloss)
		}
	}
	before := &painter{tw, th, append([][3]float32(nil), base.pix...)}
	paint(before, cables)
	later := append([]cable(nil), cables...)
	wr.After = append([]string(nil), wr.Colours...)
	if change {
		i := r.IntN(n)
		if r.Float64() < 0.5 {
			later[i].name = ""
		} else {
			for later[i].name == cables[i].name {
				later[i].name = WireNames[r.IntN(len(WireNames))]
			}
		}
		wr.After[i] = later[i].name
	}
	for i := range later { // wires are pushed about
		if r.Float64() < 0.3 {
			later[i].bend += span(-40, 40)
			later[i].swing += span(-15, 15)
		}
	}
	after := &painter{tw, th, append([][3]float32(nil), base.pix...)}
	paint(after, later)

	// the second camera
	W, H := float64(w), float64(h)
	src := [4][2]float64{{0, 0}, {W, 0}, {W, H}, {0, H}}
	var dst [4][2]float64
	turn, zoom := span(-12, 12)*level*math.Pi/180, 1+span(-0.15, 0.15)*level
	for i, c := range src {
		x, y := (c[0]-W/2)*zoom, (c[1]-H/2)*zoom
		dst[i][0] = x*math.Cos(turn) - y*math.Sin(turn) + W/2 + span(-45, 45)*level
		dst[i][1] = x*math.Sin(turn) + y*math.Cos(turn) + H/2 + span(-45, 45)*level
	}
	wr.Truth = Homography(src, dst)
	wr.Before = develop(before, mat{1, 0, wireMargin, 0, 1, wireMargin, 0, 0, 1}, w, h, 0.2, rand.New(rand.NewPCG(seed, 1)))
	inv := invert(mat(wr.Truth))
	wr.Later = develop(after, mul(mat{1, 0, wireMargin, 0, 1, wireMargin, 0, 0, 1}, inv), w, h, level, rand.New(rand.NewPCG(seed, 2)))
	return wr
}

// develop takes a colour picture of the texture through the map from picture to texture.
func develop(p *painter, to mat, w, h int, level float64, r *rand.Rand) *Shot {
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	gamma := math.Exp(span(math.Log(0.7), math.Log(1.4)) * level)
	gain := math.Exp(span(math.Log(0.75), math.Log(1.3)) * level)
	cast := [3]float64{1 + span(-0.1, 0.1)*level, 1, 1 + span(-0.1, 0.1)*level}
	rampX, rampY := span(-0.3, 0.3)*level, span(-0.3, 0.3)*level
	gx, gy, gr, ga := span(0, float64(w)), span(0, float64(h)), span(20, 60), span(0, 200)*level
	noise := 1 + span(0, 7)*level
	sigma := 0.4 + span(0, 1.1)*level
	var lut [256]float32
	for i := range lut {
		lut[i] = float32(255 * math.Pow(float64(i)/255, gamma))
	}
	planes := [3][]float32{}
	for k := range planes {
		planes[k] = make([]float32, w*h)
	}
	for y := range h {
		for x := range w {
			u, v := to.apply(float64(x), float64(y))
			i, j := int(u), int(v)
			c := [3]float32{40, 40, 42}
			if u >= 0 && v >= 0 && i+1 < p.w && j+1 < p.h {
				fx, fy := float32(u-float64(i)), float32(v-float64(j))
				a, b, d, e := &p.pix[j*p.w+i], &p.pix[j*p.w+i+1], &p.pix[(j+1)*p.w+i], &p.pix[(j+1)*p.w+i+1]
				for k := range 3 {
					c[k] = (a[k]*(1-fx)+b[k]*fx)*(1-fy) + (d[k]*(1-fx)+e[k]*fx)*fy
				}
			}
			l := gain * (1 + rampX*(float64(x)/float64(w)*2-1) + rampY*(float64(y)/float64(h)*2-1))
			dx, dy := (float64(x)-gx)/gr, (float64(y)-gy)/gr
			g := float32(0)
			if d := dx*dx + dy*dy; d < 9 {
				g = float32(ga * math.Exp(-d))
			}
			for k := range 3 {
				t := float64(c[k])*l*cast[k] + float64(g)
				planes[k][y*w+x] = lut[int(math.Max(0, math.Min(255, t)))]
			}
		}
	}
	s := &Shot{W: w, H: h, Y: make([]byte, w*h), Cb: make([]byte, w*h), Cr: make([]byte, w*h)}
	for k := range planes {
		blur(planes[k], w, h, sigma)
	}
	b := func(x float32) byte { return byte(max(0, min(255, x+0.5))) }
	for i := range s.Y {
		q := r.Uint64()
		R := planes[0][i] + float32(noise*normals[q&4095])
		G := planes[1][i] + float32(noise*normals[q>>16&4095])
		B := planes[2][i] + float32(noise*normals[q>>32&4095])
		s.Y[i] = b(0.299*R + 0.587*G + 0.114*B)
		s.Cb[i] = b(128 - 0.168736*R - 0.331264*G + 0.5*B)
		s.Cr[i] = b(128 + 0.5*R - 0.418688*G - 0.081312*B)
	}
	return s
}
