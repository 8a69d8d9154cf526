package camera

import (
	"math"
	"slices"
)

// Change is what happened at one terminal.
type Change string

const (
	Same     Change = "same"
	Recolour Change = "another wire" // a wire of another colour is there now
	Gone     Change = "gone"         // no wire where one was
	Added    Change = "added"        // a wire where none was
	Differs  Change = "differs"      // not the same, and no more can be said
	Hidden   Change = "hidden"       // cannot be seen in the second picture
)

// Terminal is what was found at one marked wire entry.
type Terminal struct {
	X, Y     float64 // as marked, in the before picture
	AX, AY   float64 // the same place in the after picture
	Change   Change
	Score    float64      // colour difference at the entry, 0 to 60; see ChangedAt
	Before   []Insulation // likely colours, best first
	After    []Insulation
	Distance float64 // how far the entry was found from where the board's plane says, pixels
}

// Colour differences (CIE 1976, mean over the entry) above which a wire counts as another one when its colour class
// differs too, and as gone or added when it also stopped or began to stand out from what lies beside it.
const (
	changedAt = 14.0
	goneAt    = 7.0
)

// Comparer compares pictures of a board before and after work. It keeps its memory; not for concurrent use.
type Comparer struct {
	reg      registrar
	tone     [3][toneN + 1]float64 // after to before, per channel
	gain     [gainRows][gainCols]float64
	w, h     int
	a, b     []lab
	diff     []float64
	scratchA []float64
}

const (
	toneN    = 64
	toneStep = 4.0 // grey levels
	gainCols = 8
	gainRows = 6
	patchN   = 15 // samples either way
	patchD   = 2  // pixels between them
	seek     = 6  // pixels an entry may stand off the board's plane
)

// Compare lays after over before and looks at every marked entry (x, y in the before picture). The error tells that the
// pictures cannot be used or matched: take the second again from where the first was taken.
func (c *Comparer) Compare(before, after *Plane, marks [][2]float64) ([]Terminal, Match, error) {
	for _, p := range [2]*Plane{before, after} {
		if err := p.Check(); err != nil {
			return nil, Match{}, err
		}
	}
	m, err := c.reg.register(before, after)
	if err != nil {
		return nil, Match{}, err
	}
	c.w, c.h = before.W, before.H
	c.light(before, after, &m.Map)
	out := make([]Terminal, 0, len(marks))
	seen := make([]sight, 0, len(marks))
	var scores []float64
	for _, k := range marks {
		t, s := c.terminal(before, after, &m.Map, k[0], k[1])
		if t.Change != Hidden {
			scores = append(scores, t.Score)
		}
		out, seen = append(out, t), append(seen, s)
	}
	usual := 0.0 // what the light has left of differences everywhere
	if len(scores) >= 3 {
		usual = median(scores)
	}
	body := make([]hung, len(marks))
	var lost, came []float64
	for i := range out {
		if out[i].Change != Hidden {
			body[i] = c.hangs(before, after, &m.Map, marks, i, seen[i].near)
		}
		if body[i].ok {
			lost, came = append(lost, body[i].lost), append(came, body[i].came)
		}
	}
	most := [2]float64{bodyAt, bodyAt} // of a wire that hangs as it did
	if len(lost) >= 3 {
		most = [2]float64{math.Min(math.Max(bodyAt, 2*median(lost)), bodyMost), math.Min(math.Max(bodyAt, 2*median(came)), bodyMost)}
	}
	changed := 0
	for i := range out {
		if out[i].Change == Hidden {
			continue
		}
		out[i].judge(&seen[i], usual)
		if b := &body[i]; b.ok {
			is := b.lost > most[0] || b.came > most[1]
			switch {
			case out[i].Change == Same && is:
				out[i].Change = Differs
			case out[i].Change == Recolour && !is: // the light plays on the connector
				out[i].Change = Same
			}
		}
		if out[i].Change != Same {
			changed++
		}
	}
	if len(scores) >= 3 && float64(changed) > math.Max(2, workShare*float64(len(scores))) { // no work changes so many wires: it is the light, or another place
		for i := range out {
			if out[i].Change != Same {
				out[i].Change = Hidden
			}
		}
	}
	return out, m, nil
}

// Limits chosen on odd seeds of core/lab/otherrender.
const (
	bodyAt    = 16.0 // colour difference of a wire's body from which it is another one, or gone
	bodyMost  = 33.0 // the same where the light differs very much
	workShare = 0.45 // of the entries in sight: more do not change in one piece of work
)

// sight is what is seen at a terminal: how much the entry stands out from what lies beside it in either picture, and how alike the colours are.
type sight struct {
	outB, outA, likeness float64
	near                 [3]float64 // what the light has left round it, by channel
}

// judge says what happened, against what differs usually between the two pictures.
func (t *Terminal) judge(s *sight, usual float64) {
	gone, another := math.Max(goneAt, 1.5*usual), math.Max(changedAt, 1.7*usual)
	t.Change = Same
	switch {
	case s.outB > 14 && s.outA < 0.5*s.outB && s.outA < 11 && t.Score > gone:
		t.Change, t.After = Gone, nil
	case s.outA > 14 && s.outB < 0.5*s.outA && s.outB < 11 && t.Score > gone:
		t.Change, t.Before = Added, nil
	case s.likeness < 0.25 && t.Score > another:
		t.Change = Recolour
	case t.Score > math.Max(22, 2.4*usual):
		t.Change = Differs
	}
}

// light learns how the second picture's exposure, tone and cast differ: a curve per channel, then a smooth gain over the picture.
func (c *Comparer) light(before, after *Plane, m *Map) {
	type sample struct {
		x, y int
		a, b [3]float64
	}
	var all []sample
	step := max(4, int(math.Sqrt(float64(before.W*before.H)/4000)))
	for y := step / 2; y < before.H; y += step {
		for x := step / 2; x < before.W; x += step {
			u, v := m.Apply(float64(x), float64(y))
			if !(u >= 1 && v >= 1 && u < float64(after.W-1) && v < float64(after.H-1)) {
				continue
			}
			s := sample{x: x, y: y}
			s.b[0], s.b[1], s.b[2] = before.RGB(x, y)
			s.a[0], s.a[1], s.a[2] = after.RGB(int(u+0.5), int(v+0.5))
			all = append(all, s)
		}
	}
	// brightness through two cameras' settings: log b = offset + gamma log a, from the medians of classes of a. One curve for all channels, and an
	// offset for each: that is exposure, curve and white balance, and no wire of another colour passes for light.
	type class struct{ x, y, w float64 }
	var of [3][]class
	for k := range 3 {
		var bins [16][]float64
		for i := range all {
			if a, b := all[i].a[k], all[i].b[k]; a >= 4 && a < 248 && b >= 3 && b < 250 {
				bins[min(15, int(math.Log(a/4)/math.Log(62)*16))] = append(bins[min(15, int(math.Log(a/4)/math.Log(62)*16))], math.Log(b))
			}
		}
		for i := range bins {
			if len(bins[i]) >= 8 {
				of[k] = append(of[k], class{math.Log(4) + (float64(i)+0.5)/16*math.Log(62), median(bins[i]), math.Min(float64(len(bins[i])), 200)})
			}
		}
	}
	var num, den float64
	var mean [3][3]float64
	for k := range 3 {
		for _, c := range of[k] {
			mean[k][0], mean[k][1], mean[k][2] = mean[k][0]+c.w, mean[k][1]+c.w*c.x, mean[k][2]+c.w*c.y
		}
		if n := mean[k][0]; n > 0 {
			mean[k][1], mean[k][2] = mean[k][1]/n, mean[k][2]/n
		}
		for _, c := range of[k] {
			num, den = num+c.w*(c.x-mean[k][1])*(c.y-mean[k][2]), den+c.w*(c.x-mean[k][1])*(c.x-mean[k][1])
		}
	}
	gamma := 1.0
	if den > 1 {
		gamma = math.Max(0.5, math.Min(2, num/den))
	}
	for k := range 3 {
		offset := mean[k][2] - gamma*mean[k][1]
		for i := range c.tone[k] {
			c.tone[k][i] = 0
			if i > 0 {
				c.tone[k][i] = math.Exp(offset + gamma*math.Log(float64(i)*toneStep))
			}
		}
	}
	var cells [gainRows][gainCols][]float64
	for i := range all {
		s := &all[i]
		a := 0.0
		for k, w := range [3]float64{0.3, 0.59, 0.11} {
			a += w * c.toned(k, s.a[k])
		}
		b := 0.3*s.b[0] + 0.59*s.b[1] + 0.11*s.b[2]
		if a < 12 || b < 12 || a > 245 || b > 245 {
			continue
		}
		gy, gx := s.y*gainRows/c.h, s.x*gainCols/c.w
		cells[gy][gx] = append(cells[gy][gx], math.Log(b/a))
	}
	for j := range cells {
		for i := range cells[j] {
			c.gain[j][i] = 0
			if len(cells[j][i]) >= 10 {
				c.gain[j][i] = math.Max(-0.7, math.Min(0.7, median(cells[j][i])))
			}
		}
	}
}

func (c *Comparer) toned(k int, v float64) float64 {
	i := min(toneN-1, int(v/toneStep))
	f := v/toneStep - float64(i)
	return c.tone[k][i]*(1-f) + c.tone[k][i+1]*f
}

// gainAt is the smooth brightness ratio at a place of the before picture.
func (c *Comparer) gainAt(x, y float64) float64 {
	u := math.Max(0, math.Min(gainCols-1.001, x/float64(c.w)*gainCols-0.5))
	v := math.Max(0, math.Min(gainRows-1.001, y/float64(c.h)*gainRows-0.5))
	i, j := int(u), int(v)
	fx, fy := u-float64(i), v-float64(j)
	g := (c.gain[j][i]*(1-fx)+c.gain[j][i+1]*fx)*(1-fy) + (c.gain[j+1][i]*(1-fx)+c.gain[j+1][i+1]*fx)*fy
	return math.Exp(g)
}

// soft is the mean colour of the 3 by 3 pixels round a place, false outside.
func soft(p *Plane, x, y float64) (r, g, b float64, ok bool) {
	i, j := int(math.Round(x)), int(math.Round(y))
	if i < 1 || j < 1 || i >= p.W-1 || j >= p.H-1 {
		return 0, 0, 0, false
	}
	for dj := -1; dj <= 1; dj++ {
		for di := -1; di <= 1; di++ {
			R, G, B := p.RGB(i+di, j+dj)
			r, g, b = r+R, g+G, b+B
		}
	}
	return r / 9, g / 9, b / 9, true
}

// lightAt is what the light has left between the two pictures round a place, by channel: the board there is the same board.
func (c *Comparer) lightAt(before, after *Plane, m *Map, x, y float64) (k [3]float64) {
	var ratios [3][]float64
	for j := -patchN; j <= patchN; j++ {
		for i := -patchN; i <= patchN; i++ {
			if i*i+j*j <= 49 {
				continue
			}
			px, py := x+float64(i*patchD), y+float64(j*patchD)
			u, v := m.Apply(px, py)
			if !(u > -1e6 && u < 1e6 && v > -1e6 && v < 1e6) {
				continue
			}
			r, g, b, ok := soft(before, px, py)
			R, G, B, ok2 := soft(after, u, v)
			if !ok || !ok2 {
				continue
			}
			gain := c.gainAt(px, py)
			was, is := [3]float64{r, g, b}, [3]float64{R, G, B}
			for q := range 3 {
				if a := c.toned(q, is[q]) * gain; was[q] > 8 && was[q] < 246 && is[q] > 8 && is[q] < 246 {
					ratios[q] = append(ratios[q], math.Log(was[q]/a))
				}
			}
		}
	}
	for q := range k {
		k[q] = 1
		if len(ratios[q]) > 60 {
			k[q] = math.Exp(math.Max(-0.7, math.Min(0.7, median(ratios[q]))))
		}
	}
	return k
}

func (c *Comparer) terminal(before, after *Plane, m *Map, x, y float64) (Terminal, sight) {
	t := Terminal{X: x, Y: y}
	t.AX, t.AY = m.Apply(x, y)
	const n = 2*patchN + 1
	const wide = n + 2*seek/patchD // the after patch has room for the search
	c.a, c.b, c.diff = grow(c.a, wide*wide), grow(c.b, n*n), grow(c.diff, n*n)
	burnt, inside := 0, 0
	for j := range n {
		for i := range n {
			px, py := x+float64((i-patchN)*patchD), y+float64((j-patchN)*patchD)
			r, g, b, ok := soft(before, px, py)
			if !ok {
				c.b[j*n+i] = lab{-1}
				continue
			}
			c.b[j*n+i] = toLab(r, g, b)
		}
	}
	near := c.lightAt(before, after, m, x, y)
	half := wide / 2
	for j := range wide {
		for i := range wide {
			px, py := x+float64((i-half)*patchD), y+float64((j-half)*patchD)
			u, v := m.Apply(px, py)
			c.a[j*wide+i] = lab{-1}
			if !(u > -1e6 && u < 1e6 && v > -1e6 && v < 1e6) {
				continue
			}
			r, g, b, ok := soft(after, u, v)
			if !ok {
				continue
			}
			if d := (i-half)*(i-half) + (j-half)*(j-half); d < 60 {
				inside++
				if max(r, g, b) > 251 && r+g+b > 700 {
					burnt++
				}
			}
			k := c.gainAt(px, py)
			c.a[j*wide+i] = toLab(c.toned(0, r)*k*near[0], c.toned(1, g)*k*near[1], c.toned(2, b)*k*near[2])
		}
	}
	if inside < 150 || burnt*3 > inside {
		t.Change = Hidden
		return t, sight{}
	}
	// the shift at which the surroundings agree best, by lightness; large shifts must earn themselves
	bestCost, sx, sy := math.Inf(1), 0, 0
	const reach = seek / patchD
	for dy := -reach; dy <= reach; dy++ {
		for dx := -reach; dx <= reach; dx++ {
			s, k := 0.0, 0.0
			for j := 0; j < n; j += 2 {
				for i := j / 2 % 2; i < n; i += 2 {
					p, q := &c.b[j*n+i], &c.a[(j+reach+dy)*wide+i+reach+dx]
					if p[0] < 0 || q[0] < 0 {
						continue
					}
					s += math.Min(20, math.Abs(p[0]-q[0]))
					k++
				}
			}
			if k == 0 {
				continue
			}
			if cost := s/k + 0.15*math.Hypot(float64(dx), float64(dy)); cost < bestCost {
				bestCost, sx, sy = cost, dx, dy
			}
		}
	}
	t.Distance = math.Hypot(float64(sx), float64(sy)) * patchD
	// what light is left between the two, from the surroundings
	off := c.scratchA[:0]
	for j := range n {
		for i := range n {
			d := (i-patchN)*(i-patchN) + (j-patchN)*(j-patchN)
			p, q := &c.b[j*n+i], &c.a[(j+reach+sy)*wide+i+reach+sx]
			if d > 49 && p[0] >= 0 && q[0] >= 0 {
				off = append(off, p[0]-q[0])
			}
		}
	}
	lift := 0.0
	if len(off) > 40 {
		lift = math.Max(-15, math.Min(15, median(off)))
	}
	c.scratchA = off
	sum, weight := 0.0, 0.0
	around := c.diff[:0]
	for j := range n {
		for i := range n {
			p := c.b[j*n+i]
			if p[0] < 0 {
				continue
			}
			best := 60.0
			for dj := -1; dj <= 1; dj++ {
				for di := -1; di <= 1; di++ {
					jj, ii := j+reach+sy+dj, i+reach+sx+di
					if jj < 0 || ii < 0 || jj >= wide || ii >= wide {
						continue
					}
					q := c.a[jj*wide+ii]
					if q[0] < 0 {
						continue
					}
					d := p.minus(q)
					d[0] = (d[0] - lift) * 0.8
					best = math.Min(best, d.norm())
				}
			}
			d2 := float64((i-patchN)*(i-patchN)+(j-patchN)*(j-patchN)) * patchD * patchD
			if d2 > 14*14 {
				around = append(around, best)
			}
			if w := math.Exp(-d2 / (2 * 7 * 7)); w > 0.02 {
				sum += w * best
				weight += w
			}
		}
	}
	t.Score = sum / math.Max(weight, 1e-9)
	slices.Sort(around)
	if len(around) < 100 || around[len(around)*2/5] > 18 {
		t.Change = Hidden
		return t, sight{}
	}
	cb, ca := c.centre(n, 0, 0, 0, false), c.centre(wide, sx, sy, lift, true)
	t.Before, t.After = rank(cb), rank(ca)
	// a wire stands out from what lies beside it
	outB, outA := c.beside(n, 0, 0, cb, 0, false), c.beside(wide, sx, sy, ca, lift, true)
	return t, sight{outB, outA, overlap(t.Before, t.After), near}
}

// overlap is the probability mass two rankings share.
func overlap(a, b []Insulation) float64 {
	s := 0.0
	for _, x := range a {
		for _, y := range b {
			if x.Code == y.Code {
				s += math.Min(x.P, y.P)
			}
		}
	}
	return s
}

// patch returns the samples of one side and its middle.
func (c *Comparer) patch(wide, sx, sy int, after bool) ([]lab, int, int) {
	if after {
		return c.a, wide/2 + sx, wide/2 + sy
	}
	return c.b, wide / 2, wide / 2
}

// centre is the median colour at the entry.
func (c *Comparer) centre(wide, sx, sy int, lift float64, after bool) lab {
	pix, x, y := c.patch(wide, sx, sy, after)
	var pts []lab
	for j := -3; j <= 3; j++ {
		for i := -2; i <= 2; i++ {
			if p := pix[(y+j)*wide+x+i]; p[0] >= 0 {
				p[0] += lift
				pts = append(pts, p)
			}
		}
	}
	if len(pts) == 0 {
		return lab{}
	}
	return middle(pts)
}

// beside is how far the entry's colour is from the likest of the colours left and right of it.
func (c *Comparer) beside(wide, sx, sy int, mid lab, lift float64, after bool) float64 {
	pix, x, y := c.patch(wide, sx, sy, after)
	best := 60.0
	for _, side := range [2]int{-1, 1} {
		var pts []lab
		for j := -3; j <= 3; j++ {
			for i := 7; i <= 9; i++ {
				if p := pix[(y+j)*wide+x+side*i]; p[0] >= 0 {
					p[0] += lift
					pts = append(pts, p)
				}
			}
		}
		if len(pts) > 0 {
			best = math.Min(best, mid.minus(middle(pts)).norm())
		}
	}
	return best
}
