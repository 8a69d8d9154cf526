package render

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
)

// lighting draws how the picture is taken; tall is the digits' height in it.
func (p *Panel) lighting(tall float64) {
	s := &p.spoil
	w := float64(p.w)
	s.gain, s.gamma = p.span(0.75, 1.2), p.span(0.75, 1.35)
	if p.chance(0.15) {
		s.gain = p.span(0.25, 0.6)
	}
	s.cast = [3]float64{1 + 0.08*p.rng.NormFloat64(), 1, 1 + 0.1*p.rng.NormFloat64()}
	a, g := p.span(0, 2*math.Pi), p.span(0, 0.4)
	s.gradient = [2]float64{g * math.Cos(a), g * math.Sin(a)}
	s.shade[3] = 1
	if p.chance(0.3) {
		s.shade = [4]float64{p.span(0.15, 0.85), p.span(0.15, 0.85), p.span(0, 2*math.Pi), p.span(0.25, 0.8)}
		s.shadeSoft = p.span(2, 60) * w / 1000
	}
	if p.chance(0.35) {
		for range 1 + p.rng.IntN(2) {
			s.glare = append(s.glare, [6]float64{p.span(0.05, 0.95), p.span(0.05, 0.95), p.span(0.2, 2) * tall, p.span(0.15, 1) * tall, p.span(0, math.Pi), p.span(20, 330)})
		}
	}
	if p.chance(0.2) {
		m := [9]float64{p.span(0.1, 0.9), p.span(0.1, 0.9), p.span(0.02, 0.25), p.span(0.02, 0.25), p.span(10, 110), p.span(1, 15)}
		if p.chance(0.6) { // as a window with its bars
			m[6], m[7], m[8] = p.span(-0.6, 0.6), float64(p.rng.IntN(4)), float64(p.rng.IntN(4))
		}
		s.mirror = append(s.mirror, m)
	}
	for p.chance(0.2) { // scratches and streaks
		s.glare = append(s.glare, [6]float64{p.span(0.1, 0.9), p.span(0.1, 0.9), p.span(0.5, 2.5) * tall, p.span(0.01, 0.06) * tall, p.span(0, math.Pi), p.span(20, 200)})
	}
	if p.chance(0.4) {
		s.grain = [3]float64{w * math.Exp(p.span(-5, -1.5)), p.span(3, 40), math.Exp(p.span(-1.5, 1.5))}
	}
	if p.chance(0.12) {
		for range 1 + p.rng.IntN(3) {
			x, y := p.span(0.1, 0.9)*w, p.span(0.2, 0.8)*float64(p.h)
			s.fingers = append(s.fingers, [5]float64{x, y, x + p.rng.NormFloat64()*w*0.4, float64(p.h) * (1.1 - 1.2*math.Floor(p.span(0, 1.5))), p.span(0.03, 0.08) * w})
		}
		k := p.span(0.3, 1)
		s.skin = [3]float64{235 * k, 180 * k, 150 * k}
	}
	s.blur = math.Abs(p.rng.NormFloat64()) * 0.035 * tall
	if p.chance(0.5) {
		s.blur *= 0.4
	}
	if s.blur = math.Min(s.blur, 0.11*tall); p.empty {
		s.blur = math.Min(s.blur, 3)
	}
	if p.chance(0.3) {
		a, m := p.span(0, 2*math.Pi), p.span(0, 0.17)*tall
		s.motion = [2]float64{m * math.Cos(a), m * math.Sin(a)}
	}
	s.noise = math.Exp(p.span(-0.5, 2.4))
	if p.chance(0.4) {
		s.sharpen = p.span(0.2, 1.6)
	}
	if p.chance(0.3) {
		s.denoise = p.span(0.5, 1)
	}
	s.quality = 100
	if p.chance(0.75) {
		s.quality = 38 + p.rng.IntN(58)
	}
	if (p.tech == led || p.tech == vacuum) && p.k != nil && p.chance(0.25) {
		s.band = [4]float64{p.span(0.15, 0.9) * float64(p.h), p.rng.Float64(), p.span(0.15, 0.75), p.span(0.3, 0.8)}
	}
	if p.chance(0.2) {
		s.haze = p.span(5, 60)
	}
}

// Shoot takes picture number i: hand, noise and glare differ from one to the next.
func (p *Panel) Shoot(i int) *View {
	r := rand.New(rand.NewPCG(p.seed, 0x73686f6f74+uint64(i)))
	v := &View{W: p.w, H: p.h, Light: p.light}
	img := newPaint(p.w, p.h, [3]float64{})
	for _, f := range p.room {
		f(img)
	}
	if g := p.spoil.grain; g[1] > 0 {
		img.grain(g[0], g[1], g[2], uint32(p.seed))
	}
	pose := p.pose
	var move [2]float64
	if i > 0 {
		move = [2]float64{r.NormFloat64() * 4, r.NormFloat64() * 4}
		a := r.NormFloat64() * 0.008
		cx, cy := float64(p.w)/2, float64(p.h)/2
		c, s := math.Cos(a), math.Sin(a)
		pose = mul(mat{c, -s, cx - c*cx + s*cy + move[0], s, c, cy - s*cx - c*cy + move[1], 0, 0, 1}, pose)
	}
	if p.tex != nil {
		v.Kind = p.k.name
		p.warp(img, pose)
	}
	seen := p.lit(img, r, i)
	p.lens(img, r)
	p.encode(img, v)
	if !p.empty {
		p.truth(v, pose, seen)
	}
	for _, o := range p.other {
		l := [5]float64{o.x, o.y + o.h/2, o.x + o.w, o.y + o.h/2, o.h}
		if o.tex {
			l[0], l[1] = pose.apply(o.x, o.y+o.h/2)
			l[2], l[3] = pose.apply(o.x+o.w, o.y+o.h/2)
			l[4] = o.h * math.Hypot(l[2]-l[0], l[3]-l[1]) / math.Max(1, o.w)
		}
		if x, y := (l[0]+l[2])/2, (l[1]+l[3])/2; x > 0 && y > 0 && x < float64(p.w) && y < float64(p.h) && l[4] > 5 {
			v.Other = append(v.Other, l)
		}
	}
	return v
}

func (p *Panel) warp(img *paint, pose mat) {
	inv := invert(pose)
	t := p.tex
	x0, y0, x1, y1 := 1e9, 1e9, -1e9, -1e9
	for _, c := range [4][2]float64{{0, 0}, {float64(t.w), 0}, {float64(t.w), float64(t.h)}, {0, float64(t.h)}} {
		x, y := pose.apply(c[0], c[1])
		x0, y0, x1, y1 = math.Min(x0, x), math.Min(y0, y), math.Max(x1, x), math.Max(y1, y)
	}
	band := p.spoil.band
	var c [3]float64
	for y := max(0, int(y0)); y < min(img.h, int(y1)+1); y++ {
		k := 1.0
		if band[2] > 0 {
			if f := float64(y)/band[0] + band[1]; f-math.Floor(f) > band[3] {
				k = 1 - band[2]
			}
		}
		for x := max(0, int(x0)); x < min(img.w, int(x1)+1); x++ {
			u, w := inv.apply(float64(x)+0.5, float64(y)+0.5)
			if !t.at(u, w, &c) {
				continue
			}
			if k < 1 && u > p.win[0] && u < p.win[2] && w > p.win[1] && w < p.win[3] {
				for i := range c {
					c[i] = p.bg[i] + (c[i]-p.bg[i])*k
				}
			}
			o := img.pix[3*(y*img.w+x):][:3]
			o[0], o[1], o[2] = float32(c[0]), float32(c[1]), float32(c[2])
		}
	}
}

// lit applies the light and returns how much of the digits' contrast is left at every point.
func (p *Panel) lit(img *paint, r *rand.Rand, frame int) func(x, y float64) float64 {
	s := &p.spoil
	w, h := img.w, img.h
	jitter := func() float64 {
		if frame == 0 {
			return 0
		}
		return r.NormFloat64() * 0.02
	}
	glare := make([]float32, w*h)
	for _, g := range s.glare {
		cx, cy := (g[0]+jitter())*float64(w), (g[1]+jitter())*float64(h)
		c, n := math.Cos(g[4]), math.Sin(g[4])
		reach := 2.2 * math.Max(g[2], g[3])
		for y := max(0, int(cy-reach)); y < min(h, int(cy+reach)); y++ {
			for x := max(0, int(cx-reach)); x < min(w, int(cx+reach)); x++ {
				dx, dy := float64(x)-cx, float64(y)-cy
				u, v := (dx*c+dy*n)/g[2], (-dx*n+dy*c)/g[3]
				glare[y*w+x] += float32(g[5] * math.Exp(-u*u-v*v))
			}
		}
	}
	for _, m := range s.mirror {
		c, n := math.Cos(m[6]), math.Sin(m[6])
		bar := func(v, half, bars float64) float64 { // distance into a bar
			if bars == 0 {
				return -1e9
			}
			f := (v/half + 1) / 2 * (bars + 1)
			near := math.Max(1, math.Min(bars, math.Round(f)))
			return 0.06*half - math.Abs(f-near)*2*half/(bars+1)
		}
		for y := range h {
			for x := range w {
				u, v := float64(x)-m[0]*float64(w), float64(y)-m[1]*float64(h)
				u, v = u*c+v*n, -u*n+v*c
				dx := math.Max(math.Abs(u)-m[2]*float64(w), bar(u, m[2]*float64(w), m[7]))
				dy := math.Max(math.Abs(v)-m[3]*float64(h), bar(v, m[3]*float64(h), m[8]))
				if d := math.Max(dx, dy); d < m[5] {
					glare[y*w+x] += float32(m[4] * math.Max(0, math.Min(1, 0.5-d/m[5])))
				}
			}
		}
	}
	nx, ny := math.Cos(s.shade[2]), math.Sin(s.shade[2])
	glowing := p.tech == led || p.tech == vacuum
	level := func(x, y float64) float64 {
		k := s.gain * (1 + s.gradient[0]*(x/float64(w)*2-1) + s.gradient[1]*(y/float64(h)*2-1))
		if s.shade[3] < 1 {
			d := (x-s.shade[0]*float64(w))*nx + (y-s.shade[1]*float64(h))*ny
			k *= 1 - math.Max(0, math.Min(1, 0.5+d/s.shadeSoft))*(1-s.shade[3])
		}
		return k
	}
	var curve [1025]float32 // over 0 to twice full scale
	for i := range curve {
		curve[i] = float32(255 * math.Pow(math.Min(1, float64(i)/512), s.gamma))
	}
	tone := func(v float64) float32 {
		t := math.Max(0, math.Min(1.998, v/255)) * 512
		i := int(t)
		return curve[i] + (curve[i+1]-curve[i])*float32(t-float64(i))
	}
	for y := range h {
		for x := range w {
			i := y*w + x
			k := level(float64(x), float64(y))
			for c := range 3 {
				img.pix[3*i+c] = tone((float64(img.pix[3*i+c])*k + float64(glare[i]) + s.haze) * s.cast[c])
			}
		}
	}
	for _, f := range s.fingers {
		for part := range 2 { // a shade beside it, then the finger
			d := float64(1-part) * f[4] * 0.25
			c, a := s.skin, 1.0
			if part == 0 {
				c, a = [3]float64{}, 0.35
			}
			img.capsule(f[0]+d, f[1]+d, f[2]+d, f[3]+d, f[4], c, a)
		}
	}
	_ = glowing
	return func(x, y float64) float64 {
		xi, yi := int(x), int(y)
		if xi < 0 || yi < 0 || xi >= w || yi >= h {
			return 0
		}
		for _, f := range s.fingers {
			dx, dy := f[2]-f[0], f[3]-f[1]
			t := math.Max(0, math.Min(1, ((x-f[0])*dx+(y-f[1])*dy)/math.Max(1e-9, dx*dx+dy*dy)))
			if math.Hypot(x-f[0]-t*dx, y-f[1]-t*dy) < f[4] {
				return 0
			}
		}
		k, g := level(x, y), float64(glare[yi*w+xi])+s.haze
		most, had := 0.0, 1.0
		for c := range 3 {
			d := math.Abs(float64(tone((p.bg[c]*k+g)*s.cast[c]) - tone((p.fg[c]*k+g)*s.cast[c])))
			if d > most {
				most = d
			}
			had = math.Max(had, math.Abs(p.bg[c]-p.fg[c]))
		}
		if most < math.Max(5, 1.5*s.noise) { // it drowns
			return 0
		}
		return math.Min(1, most/math.Min(had, 80))
	}
}

// lens blurs, adds noise, and does what a phone does to its pictures.
func (p *Panel) lens(img *paint, r *rand.Rand) {
	s := &p.spoil
	w, h := img.w, img.h
	plane := make([]float32, w*h)
	each := func(f func([]float32)) {
		for c := range 3 {
			for i := range plane {
				plane[i] = img.pix[3*i+c]
			}
			f(plane)
			for i := range plane {
				img.pix[3*i+c] = plane[i]
			}
		}
	}
	moved := math.Hypot(s.motion[0], s.motion[1]) > 1
	if s.blur > 0.35 || moved {
		each(func(q []float32) {
			if s.blur > 0.35 {
				blur(q, w, h, s.blur)
			}
			if moved {
				smear(q, w, h, s.motion)
			}
		})
	}
	for i := 0; i < len(img.pix); i += 3 {
		g := float32(s.noise * normals[r.Uint32()&4095])
		for c := range 3 {
			img.pix[i+c] += 0.7*g + float32(0.7*s.noise*normals[r.Uint32()&4095])
		}
	}
	if s.denoise > 0 {
		each(func(q []float32) { blur(q, w, h, s.denoise) })
	}
	if s.sharpen > 0 {
		soft := make([]float32, w*h)
		each(func(q []float32) {
			copy(soft, q)
			blur(soft, w, h, 1.2)
			for i := range q {
				q[i] += float32(s.sharpen) * (q[i] - soft[i])
			}
		})
	}
}

// grain makes a surface uneven, as wood, brick and cast metal are; stretch draws it out level or upright.
func (p *paint) grain(size, strength, stretch float64, seed uint32) {
	hash := func(x, y int32) float32 {
		h := uint32(x)*374761393 + uint32(y)*668265263 + seed*2246822519
		h = (h ^ h>>13) * 1274126177
		return float32(h>>8)/(1<<23) - 1
	}
	value := func(x, y float64) float32 {
		i, j := math.Floor(x), math.Floor(y)
		fx, fy := float32(x-i), float32(y-j)
		a, b := int32(i), int32(j)
		u := hash(a, b) + (hash(a+1, b)-hash(a, b))*fx
		v := hash(a, b+1) + (hash(a+1, b+1)-hash(a, b+1))*fx
		return u + (v-u)*fy
	}
	sx, sy := 1/(size*stretch), stretch/size
	for y := range p.h {
		for x := range p.w {
			g := value(float64(x)*sx, float64(y)*sy) + 0.5*value(float64(x)*sx*2.7+9, float64(y)*sy*2.7+5)
			g *= float32(strength) * 0.7
			o := p.pix[3*(y*p.w+x):][:3]
			o[0], o[1], o[2] = o[0]+g, o[1]+g, o[2]+0.9*g
		}
	}
}

// Crop is a part of the picture, as when somebody cut it out; its upper left corner is rounded to even pixels.
func (v *View) Crop(x0, y0, x1, y1 int) *View {
	x0, y0 = max(0, x0)&^1, max(0, y0)&^1
	x1, y1 = min(v.W, x1), min(v.H, y1)
	c := &View{W: x1 - x0, H: y1 - y0, Kind: v.Kind, Light: v.Light}
	cut := func(pix []byte, stride, x0, y0, w, h int) []byte {
		out := make([]byte, w*h)
		for y := range h {
			copy(out[y*w:(y+1)*w], pix[(y0+y)*stride+x0:])
		}
		return out
	}
	c.Y = cut(v.Y, v.W, x0, y0, c.W, c.H)
	c.Cb = cut(v.Cb, (v.W+1)/2, x0/2, y0/2, (c.W+1)/2, (c.H+1)/2)
	c.Cr = cut(v.Cr, (v.W+1)/2, x0/2, y0/2, (c.W+1)/2, (c.H+1)/2)
	dx, dy := float64(x0), float64(y0)
	for _, r := range v.Rows {
		q, inside := r, false
		q.Glyphs = append([]Glyph(nil), r.Glyphs...)
		for k := range q.Ends {
			q.Ends[k] = [2]float64{r.Ends[k][0] - dx, r.Ends[k][1] - dy}
		}
		for i := range q.Glyphs {
			g := &q.Glyphs[i]
			g.Centre = [2]float64{g.Centre[0] - dx, g.Centre[1] - dy}
			inside = inside || g.Centre[0] > 0 && g.Centre[1] > 0 && g.Centre[0] < float64(c.W) && g.Centre[1] < float64(c.H)
			for k := range g.Box {
				g.Box[k] = [2]float64{g.Box[k][0] - dx, g.Box[k][1] - dy}
				if b := g.Box[k]; b[0] < -1 || b[1] < -1 || b[0] > float64(c.W)+1 || b[1] > float64(c.H)+1 {
					g.Outside = true
				}
			}
		}
		if inside {
			c.Rows = append(c.Rows, q)
		}
	}
	for _, o := range v.Other {
		o[0], o[1], o[2], o[3] = o[0]-dx, o[1]-dy, o[2]-dx, o[3]-dy
		if x, y := (o[0]+o[2])/2, (o[1]+o[3])/2; x > 0 && y > 0 && x < float64(c.W) && y < float64(c.H) {
			c.Other = append(c.Other, o)
		}
	}
	return c
}

// encode turns the picture into the planes of JPEG, most often through JPEG itself.
func (p *Panel) encode(img *paint, v *View) {
	w, h := img.w, img.h
	cw, ch := (w+1)/2, (h+1)/2
	m := image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio420)
	q := func(f float32) byte { return byte(max(0, min(255, f+0.5))) }
	for y := range h {
		for x := range w {
			o := img.pix[3*(y*w+x):][:3]
			m.Y[y*m.YStride+x] = q(0.299*max(0, min(255, o[0])) + 0.587*max(0, min(255, o[1])) + 0.114*max(0, min(255, o[2])))
		}
	}
	for y := range ch {
		for x := range cw {
			var s [3]float32
			n := float32(0)
			for j := 2 * y; j < min(h, 2*y+2); j++ {
				for i := 2 * x; i < min(w, 2*x+2); i++ {
					o := img.pix[3*(j*w+i):][:3]
					for c := range 3 {
						s[c] += max(0, min(255, o[c]))
					}
					n++
				}
			}
			m.Cb[y*m.CStride+x] = q(128 + (-0.168736*s[0]-0.331264*s[1]+0.5*s[2])/n)
			m.Cr[y*m.CStride+x] = q(128 + (0.5*s[0]-0.418688*s[1]-0.081312*s[2])/n)
		}
	}
	if p.spoil.quality < 100 {
		var b bytes.Buffer
		if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: p.spoil.quality}); err != nil {
			panic("render: encoding a picture failed")
		}
		d, err := jpeg.Decode(&b)
		if err != nil {
			panic("render: decoding an encoded picture failed")
		}
		m = d.(*image.YCbCr)
	}
	pack := func(pix []byte, stride, w, h int) []byte {
		out := make([]byte, w*h)
		for y := range h {
			copy(out[y*w:(y+1)*w], pix[y*stride:])
		}
		return out
	}
	v.Y, v.Cb, v.Cr = pack(m.Y, m.YStride, w, h), pack(m.Cb, m.CStride, cw, ch), pack(m.Cr, m.CStride, cw, ch)
}

// truth says what the picture shows and where.
func (p *Panel) truth(v *View, pose mat, seen func(x, y float64) float64) {
	for i := range p.rows {
		t := &p.rows[i]
		row := Row{Text: t.text, Main: t.main}
		mid := t.y + t.h/2
		for k, x := range [2]float64{t.x0, t.x1} {
			row.Ends[k][0], row.Ends[k][1] = pose.apply(x, mid)
		}
		cx := (t.x0 + t.x1) / 2
		ax, ay := pose.apply(cx, t.y)
		bx, by := pose.apply(cx, t.y+t.h)
		ex, ey := row.Ends[1][0]-row.Ends[0][0], row.Ends[1][1]-row.Ends[0][1]
		n := math.Max(1e-9, math.Hypot(ex, ey))
		row.Height = math.Abs((bx-ax)*-ey/n + (by-ay)*ex/n)
		for _, m := range t.marks {
			g := Glyph{R: m.r, Seen: 1}
			lean := func(y float64) float64 { return 0 }
			if m.r != '.' && m.r != '-' && m.r != ':' {
				lean = func(y float64) float64 { return t.slant * (m.y + m.h - y) }
			}
			g.Centre[0], g.Centre[1] = pose.apply(m.x+m.w/2+lean(m.y+m.h/2), m.y+m.h/2)
			for j, q := range [4]point{{m.x, m.y}, {m.x + m.w, m.y}, {m.x + m.w, m.y + m.h}, {m.x, m.y + m.h}} {
				x, y := pose.apply(q.x+lean(q.y), q.y)
				g.Box[j] = [2]float64{x, y}
				if x < -1 || y < -1 || x > float64(v.W)+1 || y > float64(v.H)+1 {
					g.Outside = true
				}
			}
			points := []point{{0.5, 0.5}}
			if m.r != '.' && m.r != '-' {
				points = []point{{0.5, 0.06}, {0.93, 0.28}, {0.93, 0.72}, {0.5, 0.94}, {0.07, 0.72}, {0.07, 0.28}, {0.5, 0.5}}
			}
			for _, q := range points {
				y := m.y + q.y*m.h
				x, y2 := pose.apply(m.x+q.x*m.w+lean(y), y)
				g.Seen = math.Min(g.Seen, seen(x, y2))
			}
			row.Glyphs = append(row.Glyphs, g)
		}
		v.Rows = append(v.Rows, row)
	}
}
