package otherrender

import "math"

// rgb is linear light; 1 is a white sheet in full light.
type rgb struct{ r, g, b float32 }

func (c rgb) mul(k float32) rgb { return rgb{c.r * k, c.g * k, c.b * k} }
func (c rgb) add(d rgb) rgb     { return rgb{c.r + d.r, c.g + d.g, c.b + d.b} }
func (c rgb) times(d rgb) rgb   { return rgb{c.r * d.r, c.g * d.g, c.b * d.b} }
func (c rgb) luma() float32     { return 0.2126*c.r + 0.7152*c.g + 0.0722*c.b }
func mix(a, b rgb, t float32) rgb {
	return rgb{a.r + (b.r-a.r)*t, a.g + (b.g-a.g)*t, a.b + (b.b-a.b)*t}
}

// hx turns a screen color 0xRRGGBB into linear light.
func hx(v uint32) rgb {
	lin := func(b uint32) float32 {
		s := float64(b&255) / 255
		if s <= 0.04045 {
			return float32(s / 12.92)
		}
		return float32(math.Pow((s+0.055)/1.055, 2.4))
	}
	return rgb{lin(v >> 16), lin(v >> 8), lin(v)}
}

type pt struct{ x, y float64 }

func clamp(v, lo, hi float64) float64 { return math.Max(lo, math.Min(hi, v)) }
func smooth(lo, hi, v float64) float64 {
	t := clamp((v-lo)/(hi-lo), 0, 1)
	return t * t * (3 - 2*t)
}

// canvas is a piece of a flat scene: s pixels per millimeter, (ox, oy) the millimeter at its top left corner.
// Beside the color it keeps how much is covered (a), own light (em) and how glossy the place is (gl).
type canvas struct {
	w, h      int
	s, ox, oy float64
	col, em   []rgb
	a, gl     []float32
}

func newCanvas(x0, y0, x1, y1, s float64) *canvas {
	w, h := max(2, int(math.Ceil((x1-x0)*s))), max(2, int(math.Ceil((y1-y0)*s)))
	return &canvas{w: w, h: h, s: s, ox: x0, oy: y0,
		col: make([]rgb, w*h), em: make([]rgb, w*h), a: make([]float32, w*h), gl: make([]float32, w*h)}
}

// paint says the color and the opacity at a point; d is the signed distance to the edge (inside negative).
type paint func(x, y, d float64) (rgb, float32)

func flat(c rgb) paint { return func(_, _, _ float64) (rgb, float32) { return c, 1 } }
func sheer(c rgb, alpha float32) paint {
	return func(_, _, _ float64) (rgb, float32) { return c, alpha }
}

// each visits the pixels of a box with the signed distance and calls put with the coverage.
func (c *canvas) each(x0, y0, x1, y1 float64, sdf func(x, y float64) float64, put func(i int, x, y, d float64, cov float32)) {
	i0, i1 := max(0, int((x0-c.ox)*c.s)-1), min(c.w-1, int((x1-c.ox)*c.s)+1)
	j0, j1 := max(0, int((y0-c.oy)*c.s)-1), min(c.h-1, int((y1-c.oy)*c.s)+1)
	for j := j0; j <= j1; j++ {
		y := c.oy + (float64(j)+0.5)/c.s
		for i := i0; i <= i1; i++ {
			x := c.ox + (float64(i)+0.5)/c.s
			d := sdf(x, y)
			cov := 0.5 - d*c.s
			if cov <= 0 {
				continue
			}
			put(j*c.w+i, x, y, d, float32(math.Min(cov, 1)))
		}
	}
}

// shape paints an opaque or half opaque thing over what is there.
func (c *canvas) shape(x0, y0, x1, y1 float64, sdf func(x, y float64) float64, p paint) {
	c.each(x0, y0, x1, y1, sdf, func(i int, x, y, d float64, cov float32) {
		q, al := p(x, y, d)
		k := cov * al
		c.col[i] = mix(c.col[i], q, k)
		c.em[i] = c.em[i].mul(1 - k)
		c.a[i] += (1 - c.a[i]) * k
		c.gl[i] *= 1 - k
	})
}

// glow adds own light.
func (c *canvas) glow(x0, y0, x1, y1 float64, sdf func(x, y float64) float64, p paint) {
	c.each(x0, y0, x1, y1, sdf, func(i int, x, y, d float64, cov float32) {
		q, al := p(x, y, d)
		c.em[i] = c.em[i].add(q.mul(cov * al))
	})
}

// gloss marks a place as glass.
func (c *canvas) gloss(x0, y0, x1, y1 float64, sdf func(x, y float64) float64, k float32) {
	c.each(x0, y0, x1, y1, sdf, func(i int, _, _, _ float64, cov float32) { c.gl[i] += (k - c.gl[i]) * cov })
}

func sdBox(x, y, cx, cy, hw, hh, r float64) float64 {
	qx, qy := math.Abs(x-cx)-hw+r, math.Abs(y-cy)-hh+r
	return math.Hypot(math.Max(qx, 0), math.Max(qy, 0)) + math.Min(math.Max(qx, qy), 0) - r
}

func sdSeg(x, y float64, a, b pt) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	l := dx*dx + dy*dy
	t := 0.0
	if l > 0 {
		t = clamp(((x-a.x)*dx+(y-a.y)*dy)/l, 0, 1)
	}
	return math.Hypot(x-a.x-t*dx, y-a.y-t*dy)
}

func sdPoly(x, y float64, p []pt) float64 {
	d, sign := math.Inf(1), 1.0
	for i, j := 0, len(p)-1; i < len(p); j, i = i, i+1 {
		d = math.Min(d, sdSeg(x, y, p[i], p[j]))
		if (p[i].y > y) != (p[j].y > y) && x < (p[j].x-p[i].x)*(y-p[i].y)/(p[j].y-p[i].y)+p[i].x {
			sign = -sign
		}
	}
	return sign * d
}

func (c *canvas) box(cx, cy, hw, hh, r float64, p paint) {
	c.shape(cx-hw, cy-hh, cx+hw, cy+hh, func(x, y float64) float64 { return sdBox(x, y, cx, cy, hw, hh, r) }, p)
}

func (c *canvas) disc(cx, cy, r float64, p paint) {
	c.shape(cx-r, cy-r, cx+r, cy+r, func(x, y float64) float64 { return math.Hypot(x-cx, y-cy) - r }, p)
}

func (c *canvas) ring(cx, cy, r, w float64, p paint) {
	c.shape(cx-r-w, cy-r-w, cx+r+w, cy+r+w, func(x, y float64) float64 { return math.Abs(math.Hypot(x-cx, y-cy)-r) - w/2 }, p)
}

func (c *canvas) poly(p []pt, pa paint) {
	x0, y0, x1, y1 := bounds(p)
	c.shape(x0, y0, x1, y1, func(x, y float64) float64 { return sdPoly(x, y, p) }, pa)
}

func bounds(p []pt) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = p[0].x, p[0].y, p[0].x, p[0].y
	for _, q := range p {
		x0, y0, x1, y1 = math.Min(x0, q.x), math.Min(y0, q.y), math.Max(x1, q.x), math.Max(y1, q.y)
	}
	return
}

// line draws a polyline with round ends.
func (c *canvas) line(p []pt, w float64, pa paint) {
	for i := 0; i+1 < len(p); i++ {
		a, b := p[i], p[i+1]
		x0, y0, x1, y1 := bounds(p[i : i+2])
		c.shape(x0-w, y0-w, x1+w, y1+w, func(x, y float64) float64 { return sdSeg(x, y, a, b) - w/2 }, pa)
	}
}

// tube draws a round thing along a path: wire, hose, pipe. The light comes from the upper left.
func (c *canvas) tube(p []pt, w float64, col rgb, shine float32) {
	for i := 0; i+1 < len(p); i++ {
		a, b := p[i], p[i+1]
		dx, dy := b.x-a.x, b.y-a.y
		l := math.Hypot(dx, dy) + 1e-9
		nx, ny := -dy/l, dx/l
		if nx*-0.5+ny*-0.85 < 0 {
			nx, ny = -nx, -ny
		}
		x0, y0, x1, y1 := bounds(p[i : i+2])
		c.shape(x0-w, y0-w, x1+w, y1+w, func(x, y float64) float64 { return sdSeg(x, y, a, b) - w/2 },
			func(x, y, d float64) (rgb, float32) {
				t := ((x-a.x)*nx + (y-a.y)*ny) / (w / 2) // 1 on the lit side
				k := float32(0.62 + 0.42*t - 0.25*t*t)
				h := float32(math.Exp(-sq((t-0.45)/0.16))) * shine
				return col.mul(max(0.12, k)).add(rgb{h, h, h}), 1
			})
	}
}

func sq(v float64) float64 { return v * v }

// bezier walks a cubic curve.
func bezier(a, b, c, d pt, n int) []pt {
	out := make([]pt, n+1)
	for i := range out {
		t := float64(i) / float64(n)
		u := 1 - t
		k0, k1, k2, k3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		out[i] = pt{k0*a.x + k1*b.x + k2*c.x + k3*d.x, k0*a.y + k1*b.y + k2*c.y + k3*d.y}
	}
	return out
}

// solid is a rounded block with a lit upper left edge and fine grain.
func (c *canvas) solid(cx, cy, hw, hh, r, bevel float64, col rgb, grain float64, seed uint32) {
	c.box(cx, cy, hw, hh, r, solidPaint(cx, cy, hw, hh, bevel, col, grain, seed))
}

func solidPaint(cx, cy, hw, hh, bevel float64, col rgb, grain float64, seed uint32) paint {
	return func(x, y, d float64) (rgb, float32) {
		e := smooth(-bevel, 0, d)
		ex, ey := clamp((math.Abs(x-cx)-hw+bevel)/bevel, 0, 1), clamp((math.Abs(y-cy)-hh+bevel)/bevel, 0, 1)
		dir := -math.Copysign(ex, x-cx)*0.5 - math.Copysign(ey, y-cy)*0.8
		k := 1 + 0.45*e*dir - 0.06*(y-cy)/hh + grain*(noise(x*7, y*7, seed)-0.5) + grain*1.5*(fbm(x/14, y/14, 3, seed+5)-0.5)
		if col.luma() < 0.05 && dir > 0 {
			g := float32(0.05 * e * dir)
			return col.mul(float32(k)).add(rgb{g, g, g}), 1
		}
		return col.mul(float32(math.Max(0.05, k))), 1
	}
}

func hash2(x, y int32, seed uint32) float64 {
	h := uint32(x)*0x9E3779B1 ^ uint32(y)*0x85EBCA77 ^ seed*0xC2B2AE3D
	h ^= h >> 15
	h *= 0x2C1B3C6D
	h ^= h >> 12
	h *= 0x297A2D39
	h ^= h >> 15
	return float64(h) / (1 << 32)
}

func noise(x, y float64, seed uint32) float64 {
	fx, fy := math.Floor(x), math.Floor(y)
	ix, iy := int32(fx), int32(fy)
	tx, ty := x-fx, y-fy
	tx, ty = tx*tx*(3-2*tx), ty*ty*(3-2*ty)
	a, b := hash2(ix, iy, seed), hash2(ix+1, iy, seed)
	d, e := hash2(ix, iy+1, seed), hash2(ix+1, iy+1, seed)
	return (a+(b-a)*tx)*(1-ty) + (d+(e-d)*tx)*ty
}

func fbm(x, y float64, oct int, seed uint32) float64 {
	s, k, n := 0.0, 0.5, 0.0
	for i := 0; i < oct; i++ {
		s += k * noise(x, y, seed+uint32(i)*101)
		n += k
		x, y, k = x*2.03+17.1, y*2.03+9.7, k/2
	}
	return s / n
}
