package camera

import (
	"fmt"
	"math"
	"slices"
)

// A Lamp finds a blinking light in a stream of pictures, follows it while the hand moves, and counts its flashes.
// Its cost a frame is bounded: the picture is reduced to about 160 columns for motion and for finding; only a few small
// places are looked at in full.
type Lamp struct {
	w, h, f    int
	last       int64
	frames     int
	small, key grey
	contrast   grey // local contrast of small, 128 is none
	acc        []int32
	patches    []patch
	pose       similarity // key frame to picture, in reduced pixels
	base       similarity // reference (first picture) to key frame
	lo, hi     []byte     // least and most local contrast seen at each place of the reference
	tracks     []*track
	seen       int // frames since the last search for candidates
	lost       int
	chosen     *track
	aimed      *track
}

// similarity is x' = a x - b y + tx, y' = b x + a y + ty.
type similarity struct{ a, b, tx, ty float64 }

func (s similarity) apply(x, y float64) (float64, float64) {
	return s.a*x - s.b*y + s.tx, s.b*x + s.a*y + s.ty
}

// after returns the map that first applies t, then s.
func (s similarity) after(t similarity) similarity {
	x, y := s.apply(t.tx, t.ty)
	return similarity{s.a*t.a - s.b*t.b, s.b*t.a + s.a*t.b, x, y}
}

type patch struct {
	x, y   int
	dx, dy float64
	ok     bool
}

// track is one place that may be the light.
type track struct {
	x, y    float64 // place in the reference, reduced pixels
	r       float64 // radius of the light, full pixels
	count   Counter
	cx, cy  float64 // correction found while lit, full pixels
	peak    float64 // brightest spot contrast seen
	since   int64
	px, py  float64 // place in the newest picture, full pixels
	deepest float64
}

const (
	patchR    = 4  // half side of a patch
	patchMax  = 40 // patches a key frame
	searchMax = 4  // reduced pixels a patch may move between frames beyond the prediction
	trackMax  = 6
)

// See takes the next picture. It returns an error and changes nothing when the picture is unusable or not later than the one before.
func (l *Lamp) See(p *Plane) error {
	if err := p.Check(); err != nil {
		return err
	}
	if l.frames > 0 && p.Time <= l.last {
		return fmt.Errorf("%w: picture at %d ns does not follow the one at %d ns", ErrTime, p.Time, l.last)
	}
	if p.W < 32 || p.H < 32 {
		return fmt.Errorf("%w: %d by %d is too small to find a light in", ErrSize, p.W, p.H)
	}
	if l.frames > 0 && (p.W != l.w || p.H != l.h) {
		return fmt.Errorf("%w: %d by %d, earlier pictures were %d by %d", ErrSize, p.W, p.H, l.w, l.h)
	}
	l.last = p.Time
	if l.frames == 0 {
		l.w, l.h = p.W, p.H
		l.f = max(1, (p.W+80)/160)
	}
	l.small.reduce(p, l.f)
	if l.frames == 0 {
		l.base = similarity{a: 1}
		l.newKey()
		n := l.small.w * l.small.h
		l.lo, l.hi = make([]byte, n), make([]byte, n)
		for i := range l.lo {
			l.lo[i] = 255
		}
	} else if !l.move() {
		l.lost++
	}
	l.frames++
	l.seen++
	l.ranges()
	for _, t := range l.tracks {
		l.follow(t, p)
	}
	if l.aimed != nil {
		return nil
	}
	if l.seen >= 30 || l.seen >= 10 && l.frames < 150 {
		l.candidates(p.Time)
		l.seen = 0
	}
	return nil
}

// Aim marks the place of the light in the newest picture, in pixels; then this place alone is watched, and a light
// that is steady or off can be told. It does nothing before the first picture.
func (l *Lamp) Aim(x, y float64) {
	if l.frames == 0 || !(x >= 0 && y >= 0 && x < float64(l.w) && y < float64(l.h)) {
		return
	}
	f := float64(l.f)
	t := l.pose.after(l.base)
	u, v := (x+0.5)/f-0.5-t.tx, (y+0.5)/f-0.5-t.ty
	d := t.a*t.a + t.b*t.b
	l.aimed = &track{x: (t.a*u + t.b*v) / d, y: (-t.b*u + t.a*v) / d, r: math.Max(2, f), since: l.last}
	l.tracks = append(l.tracks[:0], l.aimed)
}

// Code decodes the most convincing light. Where tells where it is in the newest picture.
func (l *Lamp) Code() Code {
	if l.aimed != nil {
		l.chosen = l.aimed
		c := l.aimed.count.Code()
		if (c.Pattern == Steady || c.Pattern == Dark) && c.OK() && l.last-l.aimed.since < stillFor {
			c.Pattern, c.Reason = "", TooShort
		}
		return c
	}
	best := Code{Reason: noLight}
	l.chosen = nil
	score := -1.0
	for _, t := range l.tracks {
		c := t.count.Code()
		s := math.Min(c.SNR, 40) * math.Sqrt(math.Max(t.deepest, 0))
		if c.Pattern == Steady || c.Pattern == Dark || c.Reason == noLight || c.Reason == ShortExposed || c.SNR == 0 {
			s = 0
		}
		if c.OK() {
			s *= 4
		}
		if s > score && s > 0 {
			best, score, l.chosen = c, s, t
		}
	}
	if l.chosen == nil && l.frames > 0 {
		return Code{Reason: noLight}
	}
	return l.untouched(best)
}

// What an untouched light must show before it is told: a hand, leaves and shadows make many short beats, and no long pauses between equal counts.
// Judgement; board legends print pauses of 1.5 s and more (handbook, common practice).
const (
	stillFor      = 5e9 // ns that a light is watched before it is called steady or dark: longer than the longest pause
	untouchedFor  = 5e9 // ns before anything is told of a light that nobody pointed at
	leastPause    = 0.7 // seconds
	leastSNR      = 3.0
	leastContrast = 0.06 // of full scale, the light over what is round it
)

// untouched holds a code back until it cannot well be something that moves.
func (l *Lamp) untouched(c Code) Code {
	t := l.chosen
	if !c.OK() {
		return c
	}
	switch {
	case l.last-t.since < untouchedFor:
		c.Reason = TooShort
	case c.Pattern == Flashes || c.Pattern == TwoDigit || c.Pattern == LongShort:
		if c.Pause < leastPause || c.Pause < 1.5*c.Off {
			c.Reason = noPause
		} else if c.Count == 1 && c.Cycles < 4 { // anything that comes and goes looks like one flash
			c.Reason = TooShort
		}
	}
	if c.OK() && (c.SNR < leastSNR || t.deepest < leastContrast) {
		c.Reason = weakLight
	}
	return c
}

// Where is the centre and radius of the light chosen by the last Code, in pixels of the newest picture; ok is false when there is none.
func (l *Lamp) Where() (x, y, r float64, ok bool) {
	if l.chosen == nil {
		return 0, 0, 0, false
	}
	return l.chosen.px, l.chosen.py, l.chosen.r, true
}

// newKey makes the newest picture the key frame and picks patches with texture, spread over the picture.
func (l *Lamp) newKey() {
	g := &l.small
	l.key.size(g.w, g.h)
	copy(l.key.pix, g.pix)
	l.pose = similarity{a: 1}
	l.patches = l.patches[:0]
	const cols, rows = 8, 6
	for cy := range rows {
		for cx := range cols {
			best, bx, by := 0, 0, 0
			x0, x1 := max(patchR+1, cx*g.w/cols), min(g.w-patchR-2, (cx+1)*g.w/cols)
			y0, y1 := max(patchR+1, cy*g.h/rows), min(g.h-patchR-2, (cy+1)*g.h/rows)
			for y := y0; y < y1; y += 2 {
				for x := x0; x < x1; x += 2 {
					i := y*g.w + x
					// the weaker of the two gradients: corners, not edges
					a := absInt(int(g.pix[i-2])-int(g.pix[i+2])) + absInt(int(g.pix[i-2-2*g.w])-int(g.pix[i+2-2*g.w])) + absInt(int(g.pix[i-2+2*g.w])-int(g.pix[i+2+2*g.w]))
					b := absInt(int(g.pix[i-2*g.w])-int(g.pix[i+2*g.w])) + absInt(int(g.pix[i-2*g.w-2])-int(g.pix[i+2*g.w-2])) + absInt(int(g.pix[i-2*g.w+2])-int(g.pix[i+2*g.w+2]))
					if m := min(a, b); m > best {
						best, bx, by = m, x, y
					}
				}
			}
			if best > 14 && len(l.patches) < patchMax {
				l.patches = append(l.patches, patch{x: bx, y: by})
			}
		}
	}
}

func absInt(x int) int {
	if x < 0 {
		return -x
	}
	return x
}

// move estimates the pose of the newest picture against the key frame; it starts a new key frame when the old one no longer fits.
func (l *Lamp) move() bool {
	g := &l.small
	n := 0
	for i := range l.patches {
		p := &l.patches[i]
		p.ok = false
		x, y := l.pose.apply(float64(p.x), float64(p.y))
		ix, iy := int(math.Round(x)), int(math.Round(y))
		best, bx, by := math.MaxInt, 0, 0
		var cost [2*searchMax + 3][2*searchMax + 3]int
		for dy := -searchMax; dy <= searchMax; dy++ {
			for dx := -searchMax; dx <= searchMax; dx++ {
				c := l.match(p, ix+dx, iy+dy, best)
				cost[dy+searchMax+1][dx+searchMax+1] = c
				if c < best {
					best, bx, by = c, dx, dy
				}
			}
		}
		if best == math.MaxInt || best > 14*(2*patchR+1)*(2*patchR+1) || absInt(bx) == searchMax || absInt(by) == searchMax {
			continue
		}
		// parabola through the neighbours; their costs may have been cut short, so they are computed again
		l0, l1 := l.match(p, ix+bx-1, iy+by, math.MaxInt), l.match(p, ix+bx+1, iy+by, math.MaxInt)
		m0, m1 := l.match(p, ix+bx, iy+by-1, math.MaxInt), l.match(p, ix+bx, iy+by+1, math.MaxInt)
		p.dx = float64(ix+bx) + vertex(l0, best, l1)
		p.dy = float64(iy+by) + vertex(m0, best, m1)
		p.ok = true
		n++
	}
	if n < 4 {
		l.rebase(g)
		return false
	}
	s := l.pose
	for pass := range 4 {
		tol := [...]float64{4, 2, 1.2, 1}[pass]
		var sx, sy, su, sv, k float64
		for i := range l.patches {
			p := &l.patches[i]
			if !p.ok {
				continue
			}
			x, y := s.apply(float64(p.x), float64(p.y))
			if pass > 0 && math.Hypot(x-p.dx, y-p.dy) > tol {
				continue
			}
			sx, sy, su, sv, k = sx+float64(p.x), sy+float64(p.y), su+p.dx, sv+p.dy, k+1
		}
		if k < 4 {
			l.rebase(g)
			return false
		}
		sx, sy, su, sv = sx/k, sy/k, su/k, sv/k
		var a, b, d float64
		for i := range l.patches {
			p := &l.patches[i]
			if !p.ok {
				continue
			}
			x, y := s.apply(float64(p.x), float64(p.y))
			if pass > 0 && math.Hypot(x-p.dx, y-p.dy) > tol {
				continue
			}
			px, py, qx, qy := float64(p.x)-sx, float64(p.y)-sy, p.dx-su, p.dy-sv
			a += px*qx + py*qy
			b += px*qy - py*qx
			d += px*px + py*py
		}
		if d == 0 {
			return false
		}
		a, b = a/d, b/d
		if z := math.Hypot(a, b); z < 0.6 || z > 1.6 {
			return false
		}
		s = similarity{a, b, su - a*sx + b*sy, sv - b*sx - a*sy}
	}
	l.pose = s
	if z := math.Hypot(s.a, s.b); n*2 < len(l.patches) || z < 0.87 || z > 1.15 || math.Abs(s.b) > 0.12 {
		l.rebase(g)
	}
	return true
}

// rebase makes the newest picture the key frame, keeping the way back to the reference.
func (l *Lamp) rebase(g *grey) {
	l.base = l.pose.after(l.base)
	l.newKey()
}

func vertex(a, b, c int) float64 {
	if d := a - 2*b + c; d > 0 && a != math.MaxInt && c != math.MaxInt {
		return math.Max(-0.5, math.Min(0.5, float64(a-c)/(2*float64(d))))
	}
	return 0
}

// match is the sum of absolute differences of a patch at a place of the newest picture, brightness levelled; it stops early above limit.
func (l *Lamp) match(p *patch, x, y, limit int) int {
	g := &l.small
	if x < patchR || y < patchR || x >= g.w-patchR || y >= g.h-patchR {
		return math.MaxInt
	}
	s := 0
	for j := -patchR; j <= patchR; j++ {
		a := l.key.pix[(p.y+j)*g.w+p.x-patchR:][:2*patchR+1]
		b := g.pix[(y+j)*g.w+x-patchR:][:2*patchR+1]
		for i, v := range a {
			d := int(v) - int(b[i])
			if d < 0 {
				d = -d
			}
			s += d
		}
		if s >= limit {
			return s
		}
	}
	return s
}

// ranges keeps the least and most local contrast of every place of the reference.
func (l *Lamp) ranges() {
	g := &l.small
	w, h := g.w, g.h
	l.contrast.size(w, h)
	l.acc = grow(l.acc, (w+1)*(h+1))
	acc := l.acc
	clear(acc[:w+1])
	for y := range h {
		s := int32(0)
		acc[(y+1)*(w+1)] = 0
		for x, v := range g.pix[y*w : (y+1)*w] {
			s += int32(v)
			acc[(y+1)*(w+1)+x+1] = acc[y*(w+1)+x+1] + s
		}
	}
	box := func(x0, y0, x1, y1 int) int32 {
		return acc[y1*(w+1)+x1] - acc[y0*(w+1)+x1] - acc[y1*(w+1)+x0] + acc[y0*(w+1)+x0]
	}
	for i := range l.contrast.pix {
		l.contrast.pix[i] = 128
	}
	for y := 4; y < h-4; y++ {
		for x := 4; x < w-4; x++ {
			in := box(x-1, y-1, x+2, y+2)
			out := box(x-4, y-4, x+5, y+5) - box(x-2, y-2, x+3, y+3)
			d := in/9 - out/56
			l.contrast.pix[y*w+x] = byte(max(0, min(255, 128+d)))
		}
	}
	to := l.pose.after(l.base)
	for y := 4; y < h-4; y++ {
		for x := 4; x < w-4; x++ {
			u, v := to.apply(float64(x), float64(y))
			iu, iv := int(u+0.5), int(v+0.5)
			if iu < 4 || iv < 4 || iu >= w-4 || iv >= h-4 {
				continue
			}
			c := l.contrast.pix[iv*w+iu]
			i := y*w + x
			l.lo[i] = min(l.lo[i], c)
			l.hi[i] = max(l.hi[i], c)
		}
	}
}

// candidates takes the places whose contrast ranges most as tracks; weak old tracks make room.
func (l *Lamp) candidates(now int64) {
	w, h := l.small.w, l.small.h
	type peak struct{ x, y, d int }
	var peaks []peak
	for y := 5; y < h-5; y++ {
		for x := 5; x < w-5; x++ {
			i := y*w + x
			d := int(l.hi[i]) - int(l.lo[i])
			if l.lo[i] == 255 || d < 8 || l.hi[i] < 132 {
				continue
			}
			top := true
			for j := -2; j <= 2 && top; j++ {
				for k := -2; k <= 2; k++ {
					n := i + j*w + k
					if e := int(l.hi[n]) - int(l.lo[n]); l.lo[n] != 255 && (e > d || e == d && n < i) {
						top = false
						break
					}
				}
			}
			if top {
				peaks = append(peaks, peak{x, y, d})
			}
		}
	}
	slices.SortStableFunc(peaks, func(a, b peak) int { return b.d - a.d })
	if len(peaks) > trackMax {
		peaks = peaks[:trackMax]
	}
	for _, p := range peaks {
		near := slices.ContainsFunc(l.tracks, func(t *track) bool {
			return math.Hypot(t.x-float64(p.x), t.y-float64(p.y)) < 4
		})
		if near {
			continue
		}
		if len(l.tracks) == trackMax {
			worst := slices.MinFunc(l.tracks, func(a, b *track) int { return int(1000 * (a.deepest - b.deepest)) })
			if 1.3*worst.deepest*255 > float64(p.d) || now-worst.since < 3e9 {
				continue
			}
			l.tracks = slices.DeleteFunc(l.tracks, func(t *track) bool { return t == worst })
		}
		l.tracks = append(l.tracks, &track{x: float64(p.x), y: float64(p.y), r: math.Max(2, float64(l.f)), since: now})
	}
	// ranges fade so that one shake does not fill a place for ever
	for i := range l.lo {
		if l.lo[i] < 255 {
			m := (int(l.lo[i]) + int(l.hi[i])) / 2
			l.lo[i] += byte((m - int(l.lo[i])) / 8)
			l.hi[i] -= byte((int(l.hi[i]) - m) / 8)
		}
	}
}

// follow measures a track in the full picture.
func (l *Lamp) follow(t *track, p *Plane) {
	x, y := l.pose.after(l.base).apply(t.x, t.y)
	f := float64(l.f)
	bx, by := (x+0.5)*f-0.5+t.cx, (y+0.5)*f-0.5+t.cy
	r := t.r
	spot, ring, ok := spotAt(p, bx, by, r)
	if !ok {
		return
	}
	// look around for a brighter centre: the pose is good to about a reduced pixel
	best, dx, dy := spot, 0.0, 0.0
	for _, step := range [2]float64{f, f / 2} {
		ox, oy := dx, dy
		for j := -1.0; j <= 1; j++ {
			for i := -1.0; i <= 1; i++ {
				if s, _, ok := spotAt(p, bx+ox+i*step, by+oy+j*step, r); ok && s > best {
					best, dx, dy = s, ox+i*step, oy+j*step
				}
			}
		}
	}
	if d := best - ring; d > 0.5*t.peak && d > 4 {
		// lit: this is where it is
		t.cx += 0.5 * dx
		t.cy += 0.5 * dy
		if lim := 3 * f; math.Hypot(t.cx, t.cy) > lim {
			k := lim / math.Hypot(t.cx, t.cy)
			t.cx, t.cy = t.cx*k, t.cy*k
		}
		spot = best
		t.peak = math.Max(0.98*t.peak, d)
	}
	t.px, t.py = bx+dx, by+dy
	t.deepest = math.Max(0.995*t.deepest, (spot-ring)/255)
	s := Sample{T: p.Time, Spot: spot, Ring: ring, Exposure: p.Exposure, Hue: math.NaN()}
	if p.Colour() && spot-ring > 6 {
		s.Hue = hueAt(p, t.px, t.py, r)
	}
	if err := t.count.Add(s); err != nil {
		panic("camera: a checked picture gave a bad sample")
	}
}

// spotAt is the mean brightness of a disc and of the ring from twice to three times its radius.
func spotAt(p *Plane, x, y, r float64) (spot, ring float64, ok bool) {
	R := 3 * r
	x0, x1, y0, y1 := int(x-R), int(x+R)+1, int(y-R), int(y+R)+1
	if x0 < 0 || y0 < 0 || x1 >= p.W || y1 >= p.H {
		return 0, 0, false
	}
	var a, b, na, nb int
	r1, r2, r3 := r*r, 4*r*r, R*R
	for j := y0; j <= y1; j++ {
		row := p.Y[j*p.Stride:]
		dy := float64(j) - y
		for i := x0; i <= x1; i++ {
			dx := float64(i) - x
			switch d := dx*dx + dy*dy; {
			case d <= r1:
				a += int(row[i])
				na++
			case d >= r2 && d <= r3:
				b += int(row[i])
				nb++
			}
		}
	}
	if na == 0 || nb == 0 {
		return 0, 0, false
	}
	return float64(a) / float64(na), float64(b) / float64(nb), true
}

// hueAt is red minus green over their sum of what the light adds, read where it is not burnt out: in its halo.
func hueAt(p *Plane, x, y, r float64) float64 {
	var lr, lg, n, br, bg, m float64
	for j := int(y - 3*r); j <= int(y+3*r); j++ {
		for i := int(x - 3*r); i <= int(x+3*r); i++ {
			if i < 0 || j < 0 || i >= p.W || j >= p.H {
				continue
			}
			d := math.Hypot(float64(i)-x, float64(j)-y)
			R, G, _ := p.RGB(i, j)
			switch {
			case d <= 1.6*r && R < 240 && G < 240:
				lr, lg, n = lr+R, lg+G, n+1
			case d > 2.4*r:
				br, bg, m = br+R, bg+G, m+1
			}
		}
	}
	if n < 4 || m < 4 {
		return math.NaN()
	}
	R, G := math.Max(0, lr/n-br/m), math.Max(0, lg/n-bg/m)
	if R+G < 6 {
		return math.NaN()
	}
	return (R - G) / (R + G)
}
