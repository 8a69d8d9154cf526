package camera

import (
	"math"
	"slices"
)

// A meter shows its unit in small signs at fixed places beside the number, other ones on every model. So they are not read: they are compared with
// what the same meter showed when somebody named its unit.

// The place that is looked at, from the last digit's upper left corner: across in steps from digit to digit, down in digit heights. Judgement, from the
// common layouts: signs above, below and behind the number.
const (
	annLeft, annTop    = -4.4, -0.95
	annPitch           = 24   // cells from digit to digit
	annCell            = 0.03 // digit heights of a cell down; across it is about as much
	annW, annH         = 160, 90
	annDigits          = 0.85   // where the last digit ends, steps
	signHigh, signWide = 27, 67 // cells of the largest sign: four fifths of a digit high, three steps wide
	signShift          = 5      // cells by which a sign may lie aside: the digits' corners are not known better
)

// Chosen on sixteen drawn meters with six functions each: the same unit was at most 0.06 unlike in three of four pictures, another one 0.09 and more.
const (
	annSame     = 0.08 // most that signs of one unit are unlike
	annApart    = 0.02 // and how much less than those of any other
	looksOfUnit = 4    // kept of one unit: with and without what shows beside it at times
)

// Annunciators is the ink beside a display's number: 0 none to 200 as dark as a lit segment, cell by cell. It is 0 under the digits and outside of the window.
type Annunciators []byte

// Annunciators samples what stands beside the number that was just read, nil when that cannot be told: it takes three digits and a reading that may be
// used or asked about.
func (r *Reader) Annunciators(rd *Reading) Annunciators {
	n := len(rd.Digits)
	if !rd.OK() && !rd.Question() || rd.Shows != Number || n < 3 {
		return nil
	}
	raw := r.around(rd)
	var row []float64 // lit and unlit
	digits := make([]bool, len(raw))
	for i := range raw {
		x, y := annAt(i)
		digits[i] = y > -0.12 && y < 1.12 && x < annDigits
		if y > 0 && y < 1 && x > -float64(n-1) && x < annDigits-0.05 {
			row = append(row, raw[i])
		}
	}
	slices.Sort(row)
	lit, unlit := row[len(row)/12], row[len(row)*3/4]
	if unlit-lit < 8 {
		return nil
	}
	level(raw, unlit, unlit-lit)
	inside := window(raw, digits)
	paper(raw, inside)
	out := make(Annunciators, len(raw))
	at := func(i int) float64 {
		if i < 0 || !inside[i] || raw[i] < 0.06 {
			return 0
		}
		return min(raw[i], 1.2)
	}
	for i := range out { // the mean of four cells: a sign's strokes are hardly wider than one
		left := i - 1
		if i%annW == 0 {
			left = -1
		}
		above := left - annW
		if left < 0 {
			above = -1
		}
		out[i] = byte(50*(at(i)+at(left)+at(i-annW)+at(above)) + 0.5)
	}
	return out
}

func annAt(i int) (x, y float64) {
	return annLeft + (float64(i%annW)+0.5)/annPitch, annTop + (float64(i/annW)+0.5)*annCell
}

// around is the brightness round the number, dark digits on light, in cells whose grid follows both edges of the row.
func (r *Reader) around(rd *Reading) []float64 {
	n := float64(len(rd.Digits) - 1)
	first, last := &rd.Digits[0].Box, &rd.Digits[len(rd.Digits)-1].Box
	g := &r.pyr[0]
	raw := make([]float64, annW*annH)
	for i := range raw {
		x0, y0 := annAt(i)
		for k := range 4 {
			t := 1 + (x0+(float64(k%2)-0.5)/2/annPitch)/n
			y := y0 + (float64(k/2)-0.5)/2*annCell
			tx, ty := first[0][0]+(last[0][0]-first[0][0])*t, first[0][1]+(last[0][1]-first[0][1])*t
			bx, by := first[3][0]+(last[3][0]-first[3][0])*t, first[3][1]+(last[3][1]-first[3][1])*t
			v := g.at((tx+(bx-tx)*y)/r.scale-0.5, (ty+(by-ty)*y)/r.scale-0.5)
			if rd.Light {
				v = 255 - v
			}
			raw[i] += v / 4
		}
	}
	return raw
}

// level turns brightness into ink: how far below a plane through the paper, in parts of the contrast.
func level(raw []float64, unlit, contrast float64) {
	a, b, c := unlit, 0.0, 0.0
	for range 4 {
		var m [3][4]float64 // normal equations
		for i, v := range raw {
			x, y := annAt(i)
			if math.Abs(v-a-b*x-c*y) < 0.3*contrast {
				f := [4]float64{1, x, y, v}
				for j := range 3 {
					for k := range 4 {
						m[j][k] += f[j] * f[k]
					}
				}
			}
		}
		for j := range 3 {
			if m[j][j] < 1e-6 {
				return
			}
			for k := range 3 {
				if k == j {
					continue
				}
				q := m[k][j] / m[j][j]
				for l := range 4 {
					m[k][l] -= q * m[j][l]
				}
			}
		}
		a, b, c = m[0][3]/m[0][0], m[1][3]/m[1][1], m[2][3]/m[2][2]
	}
	for i, v := range raw {
		x, y := annAt(i)
		raw[i] = (a + b*x + c*y - v) / contrast
	}
}

// window tells which cells belong to the display: what the frame round it does not part from the digits. The frame, and a glare, is what differs from
// the paper and is too large for a sign, or goes on beyond the place looked at.
func window(ink []float64, digits []bool) []bool {
	frame := make([]bool, len(ink))
	for _, p := range pieces(func(i int) bool { return math.Abs(ink[i]) > 0.35 && !digits[i] }) {
		if p.x0 == 0 || p.y0 == 0 || p.x1 == annW || p.y1 == annH || p.y1-p.y0 > signHigh || p.x1-p.x0 > signWide {
			for _, i := range p.cells {
				frame[i] = true
			}
		}
	}
	frame = grown(frame, 2)
	inside := make([]bool, len(ink))
	const digit = 33*annW + 117 // a cell of the last digit
	for _, p := range pieces(func(i int) bool { return !frame[i] || digits[i] }) {
		if slices.Contains(p.cells, digit) {
			for _, i := range p.cells {
				inside[i] = !digits[i]
			}
		}
	}
	return inside
}

// paper takes off what the paper near by differs from none: uneven light.
func paper(ink []float64, inside []bool) {
	const near = 12
	sum, n := make([]float64, (annW+1)*(annH+1)), make([]float64, (annW+1)*(annH+1))
	for y := range annH {
		for x := range annW {
			i, j := y*annW+x, (y+1)*(annW+1)+x+1
			v, k := 0.0, 0.0
			if inside[i] && ink[i] < 0.2 {
				v, k = ink[i], 1
			}
			sum[j] = v + sum[j-1] + sum[j-annW-1] - sum[j-annW-2]
			n[j] = k + n[j-1] + n[j-annW-1] - n[j-annW-2]
		}
	}
	for y := range annH {
		for x := range annW {
			x0, y0, x1, y1 := max(0, x-near), max(0, y-near), min(annW, x+near+1), min(annH, y+near+1)
			of := func(t []float64) float64 {
				return t[y1*(annW+1)+x1] - t[y0*(annW+1)+x1] - t[y1*(annW+1)+x0] + t[y0*(annW+1)+x0]
			}
			if k := of(n); k > 60 {
				ink[y*annW+x] -= of(sum) / k
			}
		}
	}
}

// piece is a connected set of cells with its bounds.
type piece struct {
	x0, y0, x1, y1 int
	cells          []int
}

func pieces(of func(i int) bool) []piece {
	seen := make([]bool, annW*annH)
	var out []piece
	for start := range seen {
		if seen[start] || !of(start) {
			continue
		}
		seen[start] = true
		p := piece{annW, annH, 0, 0, []int{start}}
		for k := 0; k < len(p.cells); k++ {
			x, y := p.cells[k]%annW, p.cells[k]/annW
			p.x0, p.y0, p.x1, p.y1 = min(p.x0, x), min(p.y0, y), max(p.x1, x+1), max(p.y1, y+1)
			for _, d := range [4][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
				u, v := x+d[0], y+d[1]
				if u < 0 || v < 0 || u >= annW || v >= annH {
					continue
				}
				if i := v*annW + u; !seen[i] && of(i) {
					seen[i] = true
					p.cells = append(p.cells, i)
				}
			}
		}
		out = append(out, p)
	}
	return out
}

// grown adds the neighbours of the cells, so many times.
func grown(in []bool, times int) []bool {
	for range times {
		out := slices.Clone(in)
		for i, b := range in {
			if !b {
				continue
			}
			x := i % annW
			if x > 0 {
				out[i-1] = true
			}
			if x < annW-1 {
				out[i+1] = true
			}
			if i >= annW {
				out[i-annW] = true
			}
			if i < len(in)-annW {
				out[i+annW] = true
			}
		}
		in = out
	}
	return in
}

// signs are the bounds of what is printed or lit beside the number, whole within the place looked at.
func (b Annunciators) signs() []piece {
	dark := make([]bool, len(b))
	for i, v := range b {
		dark[i] = v > 40
	}
	dark = grown(dark, 3)
	return slices.DeleteFunc(pieces(func(i int) bool { return dark[i] }), func(p piece) bool {
		sum := 0
		for _, i := range p.cells {
			sum += int(b[i])
		}
		return sum < 600 || p.x0 == 0 || p.y0 == 0 || p.x1 == annW || p.y1 == annH
	})
}

// sharp is how much of the ink lies at edges: a moved picture has little.
func (b Annunciators) sharp() float64 {
	edges, sum := 0, 1
	for i, v := range b[1:] {
		sum += int(v)
		edges += max(int(v), int(b[i])) - min(int(v), int(b[i]))
	}
	return float64(edges) / float64(sum)
}

// unlike is 0 for the same signs and 1 where one of them has nothing like it in the other picture, near its place.
func (b Annunciators) unlike(o Annunciators) float64 {
	if len(b) != annW*annH || len(o) != len(b) { // from another version
		return 1
	}
	worst := 0.0
	for _, pair := range [2][2]Annunciators{{b, o}, {o, b}} {
		halves := pair[1].halves()
		for _, p := range pair[0].signs() {
			worst = max(worst, 1-pair[0].match(&p, halves))
		}
	}
	return worst
}

// halves are the same cells as they are, and moved by half a cell across, down, and both.
func (b Annunciators) halves() (out [4]Annunciators) {
	out[0] = b
	for k, d := range [3][]int{{0, 1}, {0, annW}, {0, 1, annW, annW + 1}} {
		m := make(Annunciators, len(b))
		for i := range m {
			sum := 0
			for _, j := range d {
				sum += int(b[min(i+j, len(b)-1)])
			}
			m[i] = byte(sum / len(d))
		}
		out[k+1] = m
	}
	return out
}

// match is the best correlation of a sign with what lies near its place in another picture.
func (b Annunciators) match(p *piece, others [4]Annunciators) float64 {
	x0, y0, x1, y1 := max(0, p.x0-1), max(0, p.y0-1), min(annW, p.x1+1), min(annH, p.y1+1)
	n := float64((x1 - x0) * (y1 - y0))
	s, ss := 0, 0
	for y := y0; y < y1; y++ {
		for _, v := range b[y*annW+x0 : y*annW+x1] {
			s, ss = s+int(v), ss+int(v)*int(v)
		}
	}
	spread := float64(ss) - float64(s)*float64(s)/n
	best := 0.0
	for _, o := range others {
		for dy := max(-signShift, -y0); dy <= min(signShift, annH-y1); dy++ {
			for dx := max(-signShift, -x0); dx <= min(signShift, annW-x1); dx++ {
				t, tt, st := 0, 0, 0
				for y := y0; y < y1; y++ {
					a, c := b[y*annW+x0:y*annW+x1], o[(y+dy)*annW+x0+dx:]
					for i, v := range a {
						w := int(c[i])
						t, tt, st = t+w, tt+w*w, st+w*int(v)
					}
				}
				if other := float64(tt) - float64(t)*float64(t)/n; other > 0 && spread > 0 {
					best = max(best, (float64(st)-float64(s)*float64(t)/n)/math.Sqrt(spread*other))
				}
			}
		}
	}
	return best
}

// Units are the units of one meter that somebody named while its display was seen. The zero value knows none.
type Units struct {
	Taught []TaughtUnit `json:"taught"`
}

// TaughtUnit is one look of one unit.
type TaughtUnit struct {
	Unit string       `json:"unit"`
	Look Annunciators `json:"look"`
}

// Teach keeps what pictures of one reading showed beside its number as a look of its unit. A display that shows nothing there teaches nothing.
// It tells whether something was learnt.
func (u *Units) Teach(unit string, seen []Annunciators) bool {
	look := sharpest(seen, 1)
	if len(look) == 0 || len(look[0].signs()) == 0 {
		return false
	}
	looks := 0
	for i := len(u.Taught) - 1; i >= 0; i-- { // the newest last
		t := &u.Taught[i]
		switch {
		case t.Unit != unit:
		case t.Look.unlike(look[0]) < annSame/2:
			return false
		default:
			if looks++; looks >= looksOfUnit {
				u.Taught = slices.Delete(u.Taught, i, i+1)
			}
		}
	}
	u.Taught = append(u.Taught, TaughtUnit{unit, look[0]})
	return true
}

// Name tells which of the units that were taught pictures of one reading show, "" when none fits, when two do, or when only one was ever taught: then
// it is not known whether the signs have to do with the unit at all.
func (u *Units) Name(seen []Annunciators) string {
	looks := sharpest(seen, 2)
	least := map[string]float64{}
	for i := range u.Taught {
		t := &u.Taught[i]
		for _, b := range looks {
			d := t.Look.unlike(b)
			if least, ok := least[t.Unit]; ok {
				d = min(d, least)
			}
			least[t.Unit] = d
		}
	}
	if len(least) < 2 {
		return ""
	}
	best := ""
	for unit, d := range least {
		if best == "" || d < least[best] {
			best = unit
		}
	}
	for unit, d := range least {
		if unit != best && d < least[best]+annApart {
			return ""
		}
	}
	if least[best] > annSame {
		return ""
	}
	return best
}

// sharpest are the n best of several pictures of one reading; nil ones are left out.
func sharpest(seen []Annunciators, n int) []Annunciators {
	seen = slices.DeleteFunc(slices.Clone(seen), func(b Annunciators) bool { return b == nil })
	slices.SortStableFunc(seen, func(a, b Annunciators) int {
		switch d := b.sharp() - a.sharp(); {
		case d > 0:
			return 1
		case d < 0:
			return -1
		}
		return 0
	})
	return seen[:min(n, len(seen))]
}
