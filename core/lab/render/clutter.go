package render

import (
	"math"
	"math/rand/v2"
)

// scene is what the hard grade adds to a display: what else is in its window, on the housing and in the light. It has its own
// chance, so that the kinder grades stay what they are.
type scene struct {
	rng    *rand.Rand
	shade  [4]float64 // edge of a cast shadow: a point (share of the picture), direction, brightness behind it; 1 is none
	mirror [6]float64 // a bright thing reflected: centre and half sizes (share of the picture), brightness added, softness in pixels
	dim    float64    // how much of the light is left
	bloom  float64    // share of the light of lit digits that spreads, light digits only
	lamp   [3]float64 // back light: centre (share of the panel) and how much less there is at the far corner
	labels []label
	bands  [][3]float64 // background: position, width (pixels), brightness
}

type label struct {
	text string
	x, y float64 // share of the picture
	h    float64 // pixels
	tone float64
	box  bool // on a key of the other tone
}

func (s *scene) span(lo, hi float64) float64 { return lo + (hi-lo)*s.rng.Float64() }
func (s *scene) chance(p float64) bool       { return s.rng.Float64() < p }

func newScene(seed uint64, tall float64) *scene {
	s := &scene{rng: rand.New(rand.NewPCG(seed, 0x7363656e65)), dim: 1}
	s.shade[3] = 1
	if s.chance(0.3) {
		s.shade = [4]float64{s.span(0.2, 0.8), s.span(0.2, 0.8), s.span(0, 2*math.Pi), s.span(0.35, 0.8)}
	}
	if s.chance(0.25) {
		s.mirror = [6]float64{s.span(0.1, 0.9), s.span(0.1, 0.9), s.span(0.03, 0.3), s.span(0.03, 0.3), s.span(10, 90), s.span(1, 12)}
	}
	if s.chance(0.25) {
		s.dim = s.span(0.2, 0.6)
	}
	if s.chance(0.6) {
		s.bloom = s.span(0.05, 0.5)
	}
	if s.chance(0.4) {
		s.lamp = [3]float64{s.span(-0.2, 1.2), s.span(-0.2, 1.2), s.span(0.1, 0.5)}
	}
	words := []string{"600 V", "CAT 3", "1000 V", "OFF", "HOLD", "RANGE", "10 A", "COM", "MAX 20 A", "2000", "200 m", "DCV", "ACV", "TRUE RMS", "SELECT", "H2O", "0", "1", "8"}
	for range s.rng.IntN(14) {
		s.labels = append(s.labels, label{words[s.rng.IntN(len(words))], s.span(0, 1), s.span(0, 1), tall * s.span(0.15, 0.8), s.span(10, 245), s.chance(0.3)})
	}
	for range s.rng.IntN(6) {
		s.bands = append(s.bands, [3]float64{s.span(0, 1), s.span(2, 80), s.span(10, 240)})
	}
	return s
}

// around paints the background and the housing before the window is painted.
func (s *scene) around(img []float32, w, h int) {
	for _, b := range s.bands {
		x0 := int(b[0] * float64(w))
		for y := range h {
			for x := max(0, x0+y/5); x < min(w, x0+y/5+int(b[1])); x++ {
				img[y*w+x] = float32(b[2])
			}
		}
	}
	for _, l := range s.labels {
		x, y := l.x*float64(w), l.y*float64(h)
		wide := int(l.h/7*6*float64(len(l.text))) + 4
		c := newCanvas(min(wide, w), int(l.h)+4)
		c.word(l.text, 2, 2, l.h, 1)
		for j := range c.h {
			for i := range c.w {
				px, py := int(x)+i, int(y)+j
				if px >= w || py >= h {
					continue
				}
				k := py*w + px
				if l.box {
					img[k] = float32(255 - l.tone)
				}
				a := c.pix[j*c.w+i]
				img[k] = img[k]*(1-a) + float32(l.tone)*a
			}
		}
	}
}

// inside draws what else the window shows: a bar graph, a battery, a second smaller number, more words.
func (s *scene) inside(m *Meter, up, down, right float64) {
	h, p := m.px, m.panel
	wide := p[2] - p[0]
	if down > 0.3 && s.chance(0.4) { // bar graph under the digits
		n, lit := 20+s.rng.IntN(31), s.rng.Float64()
		step := wide * 0.9 / float64(n)
		y, bh := m.top+1.12*h, math.Min(down-0.18, 0.25)*h
		for i := range n {
			if float64(i)/float64(n) < lit || i%10 == 0 {
				x := p[0] + 0.05*wide + float64(i)*step
				m.print.fill([]point{{x, y}, {x + step*0.5, y}, {x + step*0.5, y + bh}, {x, y + bh}}, 1)
			}
		}
	}
	if up > 0.35 && s.chance(0.3) { // battery
		x, y, bw, bh := p[0]+s.span(0.05, 0.8)*wide, p[1]+0.06*h, 0.4*h, math.Min(up-0.15, 0.22)*h
		m.print.fill([]point{{x, y}, {x + bw, y}, {x + bw, y + bh*0.2}, {x, y + bh*0.2}}, 1)
		m.print.fill([]point{{x, y + bh*0.8}, {x + bw, y + bh*0.8}, {x + bw, y + bh}, {x, y + bh}}, 1)
		m.print.fill([]point{{x, y}, {x + bw*0.1, y}, {x + bw*0.1, y + bh}, {x, y + bh}}, 1)
		m.print.fill([]point{{x + bw*0.9, y}, {x + bw, y}, {x + bw, y + bh}, {x + bw*0.9, y + bh}}, 1)
		m.print.fill([]point{{x + bw, y + bh*0.3}, {x + bw*1.12, y + bh*0.3}, {x + bw*1.12, y + bh*0.7}, {x + bw, y + bh*0.7}}, 1)
	}
	if up > 0.55 && s.chance(0.3) { // a second, smaller number
		k := math.Min(up-0.2, 0.5) * h
		x := p[0] + s.span(0.3, 0.6)*wide
		for range 2 + s.rng.IntN(3) {
			if x+k*m.f.pitch > p[2] {
				break
			}
			for seg, mask := 0, m.f.mask(rune('0'+s.rng.IntN(10))); seg < 7; seg++ {
				if mask>>seg&1 == 0 {
					continue
				}
				poly := m.f.outline(seg)
				for i := range poly {
					poly[i] = point{x + poly[i].x*k, p[1] + 0.08*h + poly[i].y*k}
				}
				m.print.fill(poly, 1)
			}
			x += k * m.f.pitch
		}
	}
	words := []string{"AUTO", "DC", "AC", "mV", "V", "k", "A", "MAX", "HOLD", "REL", "MIN", "H", "Hz", "C", "F", "M", "LOW"}
	if right > 0.6 {
		x := m.cellX[len(m.cellX)-1] + (m.f.width+0.25+m.f.slant)*h
		m.print.word(words[s.rng.IntN(len(words))], x, m.top+s.span(0, 0.6)*h, s.span(0.2, 0.45)*h, 1)
	}
	if down > 0.4 && s.chance(0.3) {
		m.print.word(words[s.rng.IntN(len(words))], p[0]+s.span(0.05, 0.7)*wide, m.top+1.14*h, math.Min(down-0.2, 0.3)*h, 1)
	}
}

// light is the share of the back light that reaches a place of the window.
func (s *scene) light(m *Meter, u, v float64) float64 {
	if s.lamp[2] == 0 {
		return 1
	}
	d := math.Hypot((u-m.panel[0])/(m.panel[2]-m.panel[0])-s.lamp[0], (v-m.panel[1])/(m.panel[3]-m.panel[1])-s.lamp[1])
	return 1 - s.lamp[2]*math.Min(1, d/1.5)
}

// shine changes the light on the whole picture.
func (s *scene) shine(img []float32, w, h int) {
	nx, ny := math.Cos(s.shade[2]), math.Sin(s.shade[2])
	for y := range h {
		for x := range w {
			k := s.dim
			if s.shade[3] < 1 {
				d := (float64(x)-s.shade[0]*float64(w))*nx + (float64(y)-s.shade[1]*float64(h))*ny
				t := math.Max(0, math.Min(1, 0.5+d/12))
				k *= 1 - t*(1-s.shade[3])
			}
			v := float64(img[y*w+x]) * k
			if s.mirror[4] > 0 {
				dx := math.Abs(float64(x)-s.mirror[0]*float64(w)) - s.mirror[2]*float64(w)
				dy := math.Abs(float64(y)-s.mirror[1]*float64(h)) - s.mirror[3]*float64(h)
				v += s.mirror[4] * math.Max(0, math.Min(1, 0.5-math.Max(dx, dy)/s.mirror[5]))
			}
			img[y*w+x] = float32(v)
		}
	}
}
