package camera

import (
	"math"
	"slices"
)

// lab is a colour in CIE 1976 L*a*b*, D65.
type lab [3]float64

func (p lab) minus(q lab) lab { return lab{p[0] - q[0], p[1] - q[1], p[2] - q[2]} }

func (p lab) norm() float64 { return math.Sqrt(p[0]*p[0] + p[1]*p[1] + p[2]*p[2]) }

// linear undoes the sRGB curve for 0..255; cubeRoot is the L*a*b* curve in steps of 1/2048.
var (
	linear = func() (t [256]float64) {
		for i := range t {
			v := float64(i) / 255
			if v <= 0.04045 {
				t[i] = v / 12.92
			} else {
				t[i] = math.Pow((v+0.055)/1.055, 2.4)
			}
		}
		return t
	}()
	cubeRoot = func() (t [2560]float64) {
		for i := range t {
			v := float64(i) / 2048
			if v > 0.008856 {
				t[i] = math.Cbrt(v)
			} else {
				t[i] = 7.787*v + 16.0/116
			}
		}
		return t
	}()
)

func toLinear(v float64) float64 {
	v = clamp255(v)
	i := int(v)
	if i >= 255 {
		return linear[255]
	}
	f := v - float64(i)
	return linear[i]*(1-f) + linear[i+1]*f
}

func curve(v float64) float64 {
	x := v * 2048
	if x <= 0 {
		return cubeRoot[0]
	}
	i := int(x)
	if i >= len(cubeRoot)-1 {
		return cubeRoot[len(cubeRoot)-1]
	}
	f := x - float64(i)
	return cubeRoot[i]*(1-f) + cubeRoot[i+1]*f
}

// fromLinear is the L*a*b* of linear sRGB, 0 to 1 each.
func fromLinear(r, g, b float64) lab {
	x := curve((0.4124*r + 0.3576*g + 0.1805*b) / 0.9505)
	y := curve(0.2126*r + 0.7152*g + 0.0722*b)
	z := curve((0.0193*r + 0.1192*g + 0.9505*b) / 1.089)
	return lab{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

func toLab(r, g, b float64) lab { return fromLinear(toLinear(r), toLinear(g), toLinear(b)) }

// Insulation is a wire colour by its IEC 60757 letters, with its probability among all classes.
type Insulation struct {
	Code string
	P    float64
}

// insulations are the classes. IEC 60757 fixes the letters, not the shades: these are from memory of common cables.
var insulations = []struct {
	code    string
	r, g, b float64
}{
	{"BK", 30, 30, 32}, {"BN", 98, 58, 38}, {"RD", 196, 32, 36}, {"OG", 236, 112, 24}, {"YE", 240, 206, 40}, {"GN", 30, 132, 62},
	{"BU", 28, 84, 176}, {"VT", 116, 58, 140}, {"GY", 132, 134, 136}, {"WH", 236, 234, 228}, {"PK", 236, 152, 170}, {"TQ", 48, 190, 190},
}

var insulationLab = func() []lab {
	out := make([]lab, len(insulations))
	for i, c := range insulations {
		out[i] = toLab(c.r, c.g, c.b)
	}
	return out
}()

// White is how a white or light grey thing beside the wires looks: the mean of its pixels, and how light it really is.
type White struct {
	R, G, B float64 // 0 to 255
	Level   float64 // share of light it throws back: 0.9 for paper; 0 means 0.9
}

// WhiteAt measures a patch known to be white; ok is false when it is burnt out, too dark or outside.
func WhiteAt(p *Plane, x, y, r int) (w White, ok bool) {
	var rs, gs, bs []float64
	for j := y - r; j <= y+r; j++ {
		for i := x - r; i <= x+r; i++ {
			if i < 0 || j < 0 || i >= p.W || j >= p.H {
				return w, false
			}
			R, G, B := p.RGB(i, j)
			rs, gs, bs = append(rs, R), append(gs, G), append(bs, B)
		}
	}
	w = White{R: median(rs), G: median(gs), B: median(bs)}
	return w, max(w.R, w.G, w.B) < 252 && min(w.R, w.G, w.B) > 20
}

// WireColour ranks the colour classes of the wire whose middle is at x, y; r is about half its thickness, along is its
// direction in radians (math.Pi/2 for a wire that runs down). Glare and the shaded sides are left out. The second
// class is worth saying whenever its probability is above a few percent. Green-yellow is told by its two colours.
func WireColour(p *Plane, x, y, r, along float64, white White) []Insulation {
	if white.Level == 0 {
		white.Level = 0.9
	}
	if !(white.R > 1 && white.G > 1 && white.B > 1) {
		return nil // without a white nothing can be said under unknown light
	}
	kr, kg, kb := white.Level/math.Max(0.004, toLinear(white.R)), white.Level/math.Max(0.004, toLinear(white.G)), white.Level/math.Max(0.004, toLinear(white.B))
	var pts []lab
	cos, sin := math.Cos(along), math.Sin(along)
	for s := -2.2 * r; s <= 2.2*r; s++ {
		for t := -0.62 * r; t <= 0.62*r; t++ { // 30 % off either side: shadow
			px, py := int(math.Round(x+s*cos-t*sin)), int(math.Round(y+s*sin+t*cos))
			if px < 0 || py < 0 || px >= p.W || py >= p.H {
				continue
			}
			R, G, B := p.RGB(px, py)
			pts = append(pts, fromLinear(toLinear(R)*kr, toLinear(G)*kg, toLinear(B)*kb))
		}
	}
	if len(pts) < 5 {
		return nil
	}
	// gloss: the lightest quarter goes when it is far lighter than the middle
	slices.SortFunc(pts, func(a, b lab) int { return sign(a[0] - b[0]) })
	if n := len(pts); pts[n*9/10][0]-pts[n/2][0] > 12 {
		pts = pts[:n*3/4]
	}
	if gn, ye := twoColours(pts); gn && ye {
		return []Insulation{{"GNYE", 0.9}, {"YE", 0.05}}
	}
	return rank(middle(pts))
}

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

// middle is the median of each coordinate.
func middle(pts []lab) lab {
	var m lab
	v := make([]float64, len(pts))
	for k := range 3 {
		for i, p := range pts {
			v[i] = p[k]
		}
		m[k] = median(v)
	}
	return m
}

// twoColours tells whether a fair share of the points is green and another yellow.
func twoColours(pts []lab) (green, yellow bool) {
	g, y := 0, 0
	for _, p := range pts {
		if c := math.Hypot(p[1], p[2]); c > 20 {
			switch h := math.Atan2(p[2], p[1]) * 180 / math.Pi; {
			case h > 120 && h < 190:
				g++
			case h > 70 && h < 105:
				y++
			}
		}
	}
	return g*5 > len(pts), y*5 > len(pts)
}

// rank gives every class a probability: normal in lightness and colour about its shade, lightness counting less for
// strong colours because shading changes it.
func rank(c lab) []Insulation {
	out := make([]Insulation, len(insulations))
	total := 0.0
	for i, m := range insulationLab {
		d := c.minus(m)
		chroma := math.Hypot(m[1], m[2])
		mine := math.Hypot(c[1], c[2])
		// across: difference in hue at the mean chroma; along: in chroma
		dc := mine - chroma
		dh := math.Sqrt(math.Max(0, d[1]*d[1]+d[2]*d[2]-dc*dc))
		sl, sc, sh := 9.0, 7+0.2*chroma, 6+0.06*chroma
		if chroma > 15 {
			sl = 13
		}
		z := d[0]*d[0]/(sl*sl) + dc*dc/(sc*sc) + dh*dh/(sh*sh)
		p := math.Exp(-z/2) / (sl * sc * sh)
		out[i] = Insulation{insulations[i].code, p + 1e-12}
		total += p + 1e-12
	}
	for i := range out {
		out[i].P /= total
	}
	slices.SortStableFunc(out, func(a, b Insulation) int { return sign(b.P - a.P) })
	return out
}
