package otherrender

import (
	"bytes"
	"image"
	"image/draw"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"slices"
)

// pose is where the plane lies before a pinhole camera: turned, then moved to (tx, ty, z) millimeters.
type pose struct {
	yaw, pitch, roll, tx, ty, z, f, cx, cy float64
}

func (p pose) rot() (m [9]float64) {
	cy, sy := math.Cos(p.yaw), math.Sin(p.yaw)
	cp, sp := math.Cos(p.pitch), math.Sin(p.pitch)
	cr, sr := math.Cos(p.roll), math.Sin(p.roll)
	// roll * pitch * yaw
	a := [9]float64{cy, 0, sy, sp * sy, cp, -sp * cy, -cp * sy, sp, cp * cy}
	return [9]float64{cr*a[0] - sr*a[3], cr*a[1] - sr*a[4], cr*a[2] - sr*a[5],
		sr*a[0] + cr*a[3], sr*a[1] + cr*a[4], sr*a[2] + cr*a[5], a[6], a[7], a[8]}
}

// project puts a point of the plane (dz behind it) into the picture.
func (p pose) project(x, y, dz float64) (u, v float64) {
	m := p.rot()
	X, Y, Z := m[0]*x+m[1]*y+m[2]*dz+p.tx, m[3]*x+m[4]*y+m[5]*dz+p.ty, m[6]*x+m[7]*y+m[8]*dz+p.z
	return p.f*X/Z + p.cx, p.f*Y/Z + p.cy
}

// back is the inverse homography from the picture to the plane dz behind.
func (p pose) back(dz float64) [9]float64 {
	m := p.rot()
	t := [3]float64{p.tx + m[2]*dz, p.ty + m[5]*dz, p.z + m[8]*dz}
	h := [9]float64{p.f*m[0] + p.cx*m[6], p.f*m[1] + p.cx*m[7], p.f*t[0] + p.cx*t[2],
		p.f*m[3] + p.cy*m[6], p.f*m[4] + p.cy*m[7], p.f*t[1] + p.cy*t[2], m[6], m[7], t[2]}
	return [9]float64{h[4]*h[8] - h[5]*h[7], h[2]*h[7] - h[1]*h[8], h[1]*h[5] - h[2]*h[4],
		h[5]*h[6] - h[3]*h[8], h[0]*h[8] - h[2]*h[6], h[2]*h[3] - h[0]*h[5],
		h[3]*h[7] - h[4]*h[6], h[1]*h[6] - h[0]*h[7], h[0]*h[4] - h[1]*h[3]}
}

func apply(h *[9]float64, u, v float64) (x, y float64) {
	w := h[6]*u + h[7]*v + h[8]
	return (h[0]*u + h[1]*v + h[2]) / w, (h[3]*u + h[4]*v + h[5]) / w
}

// light is the light of the room, in shares of the picture.
type light struct {
	tint                                rgb
	dir, slope                          float64
	shade, shadeDir, shadeAt, shadeSoft float64
	spot, spotR, spotX, spotY           float64
}

func (l light) at(u, v float64) float64 {
	x, y := u-0.5, v-0.5
	k := 1 + l.slope*2*(x*math.Cos(l.dir)+y*math.Sin(l.dir))
	if l.shade > 0 {
		d := x*math.Cos(l.shadeDir) + y*math.Sin(l.shadeDir) - l.shadeAt
		d += 0.02 * math.Sin(7*(x*math.Sin(l.shadeDir)-y*math.Cos(l.shadeDir)))
		k *= 1 - l.shade*smooth(-l.shadeSoft, l.shadeSoft, d)
	}
	if l.spot > 0 {
		k *= 0.35 + l.spot*math.Exp(-(sq(u-l.spotX)+sq(v-l.spotY))/sq(l.spotR))
	}
	return math.Max(0.02, k)
}

// glare is a lamp seen in the glass, in millimeters of the plane.
type glare struct {
	form                   int // 0 bulb, 1 tube, 2 window
	x, y, size, power, ang float64
}

func (g glare) at(x, y float64) float64 {
	dx, dy := x-g.x, y-g.y
	c, s := math.Cos(g.ang), math.Sin(g.ang)
	a, b := dx*c+dy*s, -dx*s+dy*c
	switch g.form {
	case 0:
		q := (a*a + b*b) / sq(g.size)
		return g.power * (math.Exp(-q*2) + 1.5*math.Exp(-q*14))
	case 1:
		return g.power * smooth(g.size*3, g.size*2.6, math.Abs(a)) * math.Exp(-sq(b/(g.size*0.35)))
	}
	d := sdBox(a, b, 0, 0, g.size*1.2, g.size*0.8, 0.5)
	k := smooth(0.5, -0.5, d)
	if math.Abs(a) < g.size*0.07 || math.Abs(b) < g.size*0.06 {
		k *= 0.25
	}
	return g.power * 0.6 * k
}

// bands are the dark stripes of multiplexed light under a rolling shutter.
type bands struct{ depth, period, phase float64 }

func (b bands) at(v, move float64) float64 {
	if b.depth == 0 {
		return 1
	}
	return 1 - b.depth*smooth(-0.4, 0.4, math.Sin(2*math.Pi*(v/b.period+b.phase+move)))
}

// frameScale fixes how finely the plane is painted.
func (p *plan) frameScale() {
	s := p.pose.f / p.pose.z * 1.35
	x0, y0, x1, y1 := p.seen(p.pose, image.Rect(0, 0, p.w, p.h))
	if a := (x1 - x0) * (y1 - y0) * s * s; a > 2.6e6 {
		s *= math.Sqrt(2.6e6 / a)
	}
	p.scale = s
}

// seen is the part of the plane that a part of the picture shows.
func (p *plan) seen(ps pose, roi image.Rectangle) (x0, y0, x1, y1 float64) {
	h := ps.back(0)
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	limit := 1.3 * ps.z * float64(max(p.w, p.h)) / ps.f
	for _, c := range []image.Point{roi.Min, {roi.Max.X, roi.Min.Y}, roi.Max, {roi.Min.X, roi.Max.Y}} {
		x, y := apply(&h, float64(c.X), float64(c.Y))
		x, y = clamp(x, -limit, limit), clamp(y, -limit, limit)
		x0, y0, x1, y1 = math.Min(x0, x), math.Min(y0, y), math.Max(x1, x), math.Max(y1, y)
	}
	return x0 - 2, y0 - 2, x1 + 2, y1 + 2
}

type frame struct {
	w, h int
	px   []rgb
}

// raster is the light that falls on a part of the sensor, before exposure.
func (p *plan) raster(ps pose, sh show, roi image.Rectangle, move float64) frame {
	x0, y0, x1, y1 := p.seen(ps, roi)
	c := newCanvas(x0, y0, x1, y1, p.scale)
	for _, o := range p.ops {
		o(c, sh)
	}
	for _, o := range p.over {
		o(c, sh)
	}
	out := frame{roi.Dx(), roi.Dy(), make([]rgb, roi.Dx()*roi.Dy())}
	inv, far := ps.back(0), ps.back(p.bgDZ)
	ground := frame{out.w, out.h, make([]rgb, len(out.px))}
	cover := make([]float32, len(out.px))
	shadow := lowAlpha(c)
	near := p.bgBlur == 0
	for j := 0; j < out.h; j++ {
		for i := 0; i < out.w; i++ {
			k := j*out.w + i
			u, v := float64(roi.Min.X+i), float64(roi.Min.Y+j)
			var col, em rgb
			var al, gl float32
			for _, o := range [4]pt{{0.25, 0.25}, {0.75, 0.25}, {0.25, 0.75}, {0.75, 0.75}} {
				x, y := apply(&inv, u+o.x, v+o.y)
				c.sample(x, y, &col, &em, &al, &gl)
			}
			col, em, al, gl = col.mul(0.25), em.mul(0.25), al/4, gl/4
			l := p.light.at((u+0.5)/float64(p.w), (v+0.5)/float64(p.h))
			lamp := p.light.tint.mul(float32(l * p.dark))
			px := col.times(lamp).add(em.mul(float32(p.bands.at(v, move))))
			if gl > 0 {
				x, y := apply(&inv, u+0.5, v+0.5)
				g := p.veil * p.dark
				for _, q := range p.glares {
					g += q.at(x, y) * math.Max(p.dark, 0.15)
				}
				px = px.add(rgb{1, 0.98, 0.94}.mul(float32(g) * gl))
			}
			if al < 0.999 {
				x, y := apply(&far, u+0.5, v+0.5)
				b := p.bg(x, y).times(lamp)
				if near {
					sx, sy := apply(&inv, u+0.5, v+0.5)
					b = b.mul(1 - 0.62*shadow.at(sx-p.bgDZ*0.25, sy-p.bgDZ*0.45))
				}
				ground.px[k] = b
			}
			cover[k] = al
			out.px[k] = px
		}
	}
	if !near {
		ground = ground.disk(p.bgBlur)
	}
	for k := range out.px {
		out.px[k] = out.px[k].add(ground.px[k].mul(1 - cover[k]))
	}
	return out
}

// sample adds a bilinear reading; colors count by their cover.
func (c *canvas) sample(x, y float64, col, em *rgb, al, gl *float32) {
	fx, fy := (x-c.ox)*c.s-0.5, (y-c.oy)*c.s-0.5
	if !(fx >= 0 && fy >= 0 && fx < float64(c.w-1) && fy < float64(c.h-1)) {
		return
	}
	i, j := int(fx), int(fy)
	tx, ty := float32(fx-float64(i)), float32(fy-float64(j))
	for n, k := range [4]int{j*c.w + i, j*c.w + i + 1, (j+1)*c.w + i, (j+1)*c.w + i + 1} {
		w := [4]float32{(1 - tx) * (1 - ty), tx * (1 - ty), (1 - tx) * ty, tx * ty}[n]
		*col = col.add(c.col[k].mul(w * c.a[k]))
		*em = em.add(c.em[k].mul(w))
		*al += c.a[k] * w
		*gl += c.gl[k] * w
	}
}

// low is a coarse, soft copy of what is covered.
type low struct {
	c    *canvas
	w, h int
	step int
	v    []float32
}

func lowAlpha(c *canvas) low {
	step := max(1, int(c.s*4))
	l := low{c: c, step: step, w: c.w/step + 1, h: c.h/step + 1}
	l.v = make([]float32, l.w*l.h)
	for j := range l.h {
		for i := range l.w {
			l.v[j*l.w+i] = c.a[min(c.h-1, j*step)*c.w+min(c.w-1, i*step)]
		}
	}
	for range 2 {
		o := append([]float32(nil), l.v...)
		for j := 1; j < l.h-1; j++ {
			for i := 1; i < l.w-1; i++ {
				s := float32(0)
				for dj := -1; dj <= 1; dj++ {
					for di := -1; di <= 1; di++ {
						s += o[(j+dj)*l.w+i+di]
					}
				}
				l.v[j*l.w+i] = s / 9
			}
		}
	}
	return l
}

func (l low) at(x, y float64) float32 {
	fx, fy := (x-l.c.ox)*l.c.s/float64(l.step), (y-l.c.oy)*l.c.s/float64(l.step)
	fx, fy = clamp(fx, 0, float64(l.w)-1.01), clamp(fy, 0, float64(l.h)-1.01)
	if l.w < 2 || l.h < 2 {
		return 0
	}
	i, j := int(fx), int(fy)
	tx, ty := float32(fx-float64(i)), float32(fy-float64(j))
	a, b := l.v[j*l.w+i], l.v[j*l.w+i+1]
	d, e := l.v[(j+1)*l.w+i], l.v[(j+1)*l.w+i+1]
	return (a+(b-a)*tx)*(1-ty) + (d+(e-d)*tx)*ty
}

// disk blurs as a lens out of focus does.
func (f frame) disk(r float64) frame {
	if r < 0.4 {
		return f
	}
	out := frame{f.w, f.h, make([]rgb, len(f.px))}
	n := int(math.Ceil(r))
	var half []float64
	total := 0.0
	for dy := -n; dy <= n; dy++ {
		k := math.Sqrt(math.Max(0, sq(r+0.5)-sq(float64(dy)))) - 0.5
		half = append(half, k)
		if k >= 0 {
			total += 2*k + 1
		}
	}
	sum := make([]rgb, f.w+1)
	for j := 0; j < f.h; j++ {
		for k, hwid := range half {
			if hwid < 0 {
				continue
			}
			y := min(f.h-1, max(0, j+k-n))
			row := f.px[y*f.w : (y+1)*f.w]
			for i, q := range row {
				sum[i+1] = sum[i].add(q)
			}
			hi := int(hwid)
			rest := float32(hwid - float64(hi))
			for i := 0; i < f.w; i++ {
				a, b := max(0, i-hi), min(f.w-1, i+hi)
				s := sum[b+1].add(sum[a].mul(-1))
				s = s.mul(float32(2*hi+1) / float32(b-a+1))
				s = s.add(row[max(0, i-hi-1)].mul(rest)).add(row[min(f.w-1, i+hi+1)].mul(rest))
				out.px[j*f.w+i] = out.px[j*f.w+i].add(s)
			}
		}
	}
	for i := range out.px {
		out.px[i] = out.px[i].mul(float32(1 / total))
	}
	return out
}

// smear blurs along the way the hand moved, a little bent.
func (f frame) smear(m pt) frame {
	l := math.Hypot(m.x, m.y)
	if l < 0.7 {
		return f
	}
	out := frame{f.w, f.h, make([]rgb, len(f.px))}
	n := int(l*1.2) + 2
	for s := 0; s < n; s++ {
		t := float64(s)/float64(n-1) - 0.5
		dx, dy := m.x*t-m.y*0.12*t*t, m.y*t+m.x*0.12*t*t
		ix, iy := int(math.Floor(dx)), int(math.Floor(dy))
		tx, ty := float32(dx-float64(ix)), float32(dy-float64(iy))
		for j := 0; j < f.h; j++ {
			ja, jb := min(f.h-1, max(0, j+iy)), min(f.h-1, max(0, j+iy+1))
			for i := 0; i < f.w; i++ {
				ia, ib := min(f.w-1, max(0, i+ix)), min(f.w-1, max(0, i+ix+1))
				a := mix(f.px[ja*f.w+ia], f.px[ja*f.w+ib], tx)
				b := mix(f.px[jb*f.w+ia], f.px[jb*f.w+ib], tx)
				out.px[j*f.w+i] = out.px[j*f.w+i].add(mix(a, b, ty))
			}
		}
	}
	for i := range out.px {
		out.px[i] = out.px[i].mul(1 / float32(n))
	}
	return out
}

// bloom spreads what is brighter than the sensor can hold.
func (f frame) bloom(gain float32) frame {
	step := 4
	w, h := f.w/step+1, f.h/step+1
	s := frame{w, h, make([]rgb, w*h)}
	any := false
	for j := 0; j < f.h; j++ {
		for i := 0; i < f.w; i++ {
			q := f.px[j*f.w+i].mul(gain)
			m := max(q.r, q.g, q.b)
			if m > 0.9 {
				any = true
				k := (m - 0.9) / m / 16
				s.px[j/step*w+i/step] = s.px[j/step*w+i/step].add(q.mul(k))
			}
		}
	}
	if !any {
		return f
	}
	wide := s.disk(2).disk(2).px
	wider := frame{w, h, wide}.disk(6).px
	out := frame{f.w, f.h, make([]rgb, len(f.px))}
	for j := 0; j < f.h; j++ {
		for i := 0; i < f.w; i++ {
			fx, fy := clamp((float64(i)+0.5)/float64(step)-0.5, 0, float64(w)-1.01), clamp((float64(j)+0.5)/float64(step)-0.5, 0, float64(h)-1.01)
			a, b := int(fx), int(fy)
			tx, ty := float32(fx-float64(a)), float32(fy-float64(b))
			at := func(p []rgb) rgb {
				return mix(mix(p[b*w+a], p[b*w+a+1], tx), mix(p[(b+1)*w+a], p[(b+1)*w+a+1], tx), ty)
			}
			e := at(wide).mul(0.22).add(at(wider).mul(0.16))
			out.px[j*f.w+i] = f.px[j*f.w+i].add(e.mul(1 / gain))
		}
	}
	return out
}

// meter is the automatic exposure: the brightness that brings the middle of the picture to a mid gray.
func (f frame) meter() float64 {
	var s, n float64
	for j := 0; j < f.h; j += 5 {
		for i := 0; i < f.w; i += 5 {
			w := 1.0
			if math.Abs(float64(i)/float64(f.w)-0.5) < 0.25 && math.Abs(float64(j)/float64(f.h)-0.5) < 0.25 {
				w = 3
			}
			s += w * math.Min(2.5, float64(f.px[j*f.w+i].luma()))
			n += w
		}
	}
	return math.Min(9, 0.2/(s/n+0.01))
}

var toneTable = func() (t [4097]float32) {
	for i := range t {
		x := sq(float64(i)/4096) * 4 // 0..4
		if x > 0.6 {
			x = 0.6 + 0.4*(1-math.Exp(-(x-0.6)/0.5))
		}
		s := 12.92 * x
		if x > 0.0031308 {
			s = 1.055*math.Pow(x, 1/2.4) - 0.055
		}
		t[i] = float32(s + 0.05*math.Sin(2*math.Pi*(s-0.5))/2) // a little contrast
	}
	return
}()

func tone(x float32) float32 {
	if x <= 0 {
		return 0
	}
	if x >= 4 {
		return 1
	}
	return toneTable[int(math.Sqrt(float64(x)/4)*4096)]
}

func (f frame) developed(gain float32, wb rgb) frame {
	out := frame{f.w, f.h, make([]rgb, len(f.px))}
	for i, q := range f.px {
		q = q.times(wb).mul(gain)
		out.px[i] = rgb{tone(q.r), tone(q.g), tone(q.b)}
	}
	return out
}

// shoot takes the picture and finds out what of it can be read.
func (p *plan) shoot(ps pose, sh show, r *rand.Rand, motion pt, move float64) Scene {
	s := Scene{Seed: p.seed, Grade: p.grade, Kind: p.kind, Hard: p.kind == Phone}
	all := image.Rect(0, 0, p.w, p.h)
	f := p.raster(ps, sh, all, move)
	gain := float32(f.meter() * p.gain)
	f = f.disk(p.defocus).smear(motion).bloom(gain)
	vig := 0.1 + 0.25*r.Float64()
	for j := 0; j < f.h; j++ {
		for i := 0; i < f.w; i++ {
			d := sq(float64(i)/float64(f.w)-0.5) + sq(float64(j)/float64(f.h)-0.5)
			f.px[j*f.w+i] = f.px[j*f.w+i].mul(float32(1 - vig*d))
		}
	}
	noise := p.noise * math.Sqrt(math.Max(0.6, float64(gain)))
	for i, q := range f.px {
		q = q.mul(gain)
		common := r.NormFloat64() * 0.6
		n := func(v float32) float32 {
			return v + float32(noise*math.Sqrt(0.15+float64(max(v, 0)))*(common+r.NormFloat64()*0.8))
		}
		f.px[i] = rgb{n(q.r), n(q.g), n(q.b)}
	}
	f = f.developed(1, p.wb)
	f = f.calm(p.denoise, float32(noise)).crisp(p.sharpen)
	s.Image, s.JPEG = f.file(p.quality)
	if !p.has {
		return s
	}
	p.judge(&s, ps, sh, gain, noise, motion, move)
	return s
}

// calm smooths what differs little, as phones do against noise.
func (f frame) calm(k float64, noise float32) frame {
	if k < 0.1 {
		return f
	}
	out := frame{f.w, f.h, append([]rgb(nil), f.px...)}
	th := noise*2.2 + 0.02
	for j := 1; j < f.h-1; j++ {
		for i := 1; i < f.w-1; i++ {
			c := f.px[j*f.w+i]
			s, n := c, float32(1)
			for dj := -1; dj <= 1; dj++ {
				for di := -1; di <= 1; di++ {
					q := f.px[(j+dj)*f.w+i+di]
					if d := q.luma() - c.luma(); d < th && d > -th {
						s, n = s.add(q), n+1
					}
				}
			}
			out.px[j*f.w+i] = mix(c, s.mul(1/n), float32(k))
		}
	}
	return out
}

func (f frame) crisp(k float64) frame {
	if k < 0.05 {
		return f
	}
	out := frame{f.w, f.h, append([]rgb(nil), f.px...)}
	for j := 1; j < f.h-1; j++ {
		for i := 1; i < f.w-1; i++ {
			m := float32(0)
			for dj := -1; dj <= 1; dj++ {
				for di := -1; di <= 1; di++ {
					m += f.px[(j+dj)*f.w+i+di].luma()
				}
			}
			c := f.px[j*f.w+i]
			e := (c.luma() - m/9) * float32(k) * 1.6
			out.px[j*f.w+i] = c.add(rgb{e, e, e})
		}
	}
	return out
}

func (f frame) file(quality int) (*image.RGBA, []byte) {
	img := image.NewRGBA(image.Rect(0, 0, f.w, f.h))
	b8 := func(v float32) uint8 { return uint8(max(0, min(255, v*255+0.5))) }
	for i, q := range f.px {
		img.Pix[4*i], img.Pix[4*i+1], img.Pix[4*i+2], img.Pix[4*i+3] = b8(q.r), b8(q.g), b8(q.b), 255
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: quality}); err != nil {
		panic(err) // a buffer does not fail
	}
	dec, err := jpeg.Decode(bytes.NewReader(b.Bytes()))
	if err != nil {
		panic(err)
	}
	draw.Draw(img, img.Bounds(), dec, image.Point{}, draw.Src)
	return img, b.Bytes()
}

// The limits of an honest reading are judgment, no measurement: how far a digit may be smeared or out of focus
// as a share of its height, how small it may be, and how faint a segment (of the full scale from black to white).
const (
	maxSmear   = 0.20
	maxDefocus = 0.13
	minHeight  = 9.0
	minFaint   = 0.03
	minShare   = 0.28 // of what most segments show: a segment much fainter than its neighbors passes for unlit
)

// Why a number of a display in the picture is not legible, where a part of it is hidden.
const (
	Hidden      = "digits covered, washed out or too dark"
	HiddenBlank = "only empty places before the number, where a sign or digit could stand, covered or washed out"
)

// judge says what is truly shown and whether it can be read: the number is painted once with every segment lit and
// once with none, through the same lens, light and covers; a place where the two do not differ cannot be read.
func (p *plan) judge(s *Scene, ps pose, sh show, gain float32, noise float64, motion pt, move float64) {
	d := p.d
	at := func(x, y float64) pt { u, v := ps.project(x, y, 0); return pt{u, v} }
	corners := []pt{at(-d.hw, -d.hh), at(d.hw, -d.hh), at(d.hw, d.hh), at(-d.hw, d.hh)}
	for i, c := range corners {
		s.Corners[i] = image.Pt(int(math.Round(c.x)), int(math.Round(c.y)))
	}
	all := image.Rect(0, 0, p.w, p.h)
	box := func(q []pt) image.Rectangle {
		x0, y0, x1, y1 := bounds(q)
		return image.Rect(int(x0), int(y0), int(x1)+1, int(y1)+1)
	}
	s.Display = box(corners).Intersect(all)
	s.HasDisplay = s.Display.Dx()*s.Display.Dy() > 400
	if !s.HasDisplay {
		s.Display = image.Rectangle{}
		s.Why = "outside the picture"
		return
	}
	if sh.off {
		s.Why = "display is off"
		return
	}
	els := d.main.elems(sh.main)
	var pts []pt
	var lit []pt
	for _, e := range els {
		for _, q := range e.poly {
			pts = append(pts, at(q.x, q.y))
			if e.lit {
				lit = append(lit, at(q.x, q.y))
			}
		}
	}
	s.Behind = sh.main
	s.Other = d.texts
	s.Number = box(lit).Intersect(all)
	a, b := at(d.main.x, d.main.y), at(d.main.x, d.main.y+d.main.h)
	s.DigitHeight = math.Hypot(a.x-b.x, a.y-b.y)
	why := ""
	switch {
	case math.Hypot(motion.x, motion.y) > maxSmear*s.DigitHeight:
		why = "smeared"
	case p.defocus > maxDefocus*s.DigitHeight:
		why = "out of focus"
	case s.DigitHeight < minHeight || s.DigitHeight < 14 && p.quality < 40:
		why = "too small"
	case !box(pts).In(all):
		why = "cut off"
	}
	if why == "" {
		roi := box(pts).Inset(-16).Intersect(all)
		look := func(mode int) frame {
			f := p.raster(ps, show{main: sh.main, mode: mode}, roi, move)
			return f.disk(p.defocus).smear(motion).bloom(gain).developed(gain, p.wb)
		}
		on, off := look(1), look(2)
		diffs := make([][]float64, len(els))
		var every []float64
		for n, e := range els {
			for _, c := range e.core {
				q := at(c.x, c.y)
				i, j := int(q.x)-roi.Min.X, int(q.y)-roi.Min.Y
				if i < 0 || j < 0 || i >= on.w || j >= on.h {
					continue
				}
				x, y := on.px[j*on.w+i], off.px[j*on.w+i]
				diff := math.Max(math.Abs(float64(x.luma()-y.luma())), 0.6*math.Max(math.Abs(float64(x.r-y.r)), math.Abs(float64(x.b-y.b))))
				diffs[n] = append(diffs[n], diff)
				if e.seg <= segG {
					every = append(every, diff)
				}
			}
		}
		slices.Sort(every)
		area := math.Max(4, 0.05*sq(s.DigitHeight))
		need := max(minFaint, 1.8*noise/math.Sqrt(area/4), minShare*every[len(every)*3/4])
		cells, _, _, _ := d.main.place(sh.main)
		first := 0
		for first < len(cells)-1 && cells[first] == ' ' {
			first++
		}
		for n := range els {
			seen := 0
			for _, v := range diffs[n] {
				if v > need {
					seen++
				}
			}
			switch blank := els[n].cell < first; {
			case seen >= 2:
			case !blank:
				why = Hidden
			case why == "":
				why = HiddenBlank
			}
		}
	}
	s.Why = why
	s.Legible = why == ""
	if s.Legible {
		s.Shown = sh.main
	}
}
