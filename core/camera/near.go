package camera

import (
	"math"
	"slices"
)

// What leaves a marked entry is the wire's body, where its colour is seen and no connector covers it. It hangs a little otherwise in the second
// picture, so every place is compared with the likest one near where the board's plane says. Shares of the way to the next entry:
const (
	nearFrom  = 0.5  // where the wire's body begins
	nearTo    = 1.05 // and where it may be another's
	nearWide  = 0.42 // to either side
	nearSlide = 0.3  // that a wire may hang to the side
	nearSteps = 9    // rows looked at, columns in each
	nearCols  = 27
)

// ways are the two directions, across the row of entries, in which a wire may leave entry i, and how far apart entries stand.
func ways(marks [][2]float64, i int) (across [2]float64, pitch float64) {
	pitch, across = 60, [2]float64{0, 1}
	best := math.Inf(1)
	for j, m := range marks {
		if j == i {
			continue
		}
		dx, dy := m[0]-marks[i][0], m[1]-marks[i][1]
		if d := math.Hypot(dx, dy); d > 8 && d < best {
			best = d
			across = [2]float64{-dy / d, dx / d}
		}
	}
	if best < math.Inf(1) {
		pitch = math.Max(20, math.Min(110, best))
	}
	return across, pitch
}

// hung is what of the wire beside an entry is not there in the after picture, and what is there only in it, on the side of the row where that is
// more: the colour difference that a sixth of the places exceed. ok is false where it cannot be seen.
type hung struct {
	lost, came float64
	ok         bool
}

func (c *Comparer) hangs(before, after *Plane, m *Map, marks [][2]float64, i int, near [3]float64) (out hung) {
	out.ok = true
	across, pitch := ways(marks, i)
	for side := range 2 {
		s := 1 - 2*float64(side)
		vx, vy := across[0]*s, across[1]*s
		ux, uy := -vy, vx
		var a, b [nearSteps][nearCols + 2*nearCols]lab // after, with room to slide; before
		const all = nearCols + 2*nearCols
		for r := range nearSteps {
			d := pitch * (nearFrom + (nearTo-nearFrom)*(float64(r)+0.5)/nearSteps)
			for k := range all {
				t := pitch * (nearWide * 2) * (float64(k) - float64(all-1)/2) / (nearCols - 1)
				a[r][k], b[r][k] = lab{-1}, lab{-1}
				if math.Abs(t) > pitch*(nearWide+nearSlide) {
					continue
				}
				px, py := marks[i][0]+vx*d+ux*t, marks[i][1]+vy*d+uy*t
				R, G, B, in := soft(before, px, py)
				if in {
					b[r][k] = toLab(R, G, B)
				}
				u, v := m.Apply(px, py)
				if !(u > -1e6 && u < 1e6 && v > -1e6 && v < 1e6) {
					continue
				}
				if R, G, B, in = soft(after, u, v); in && !(max(R, G, B) > 251 && R+G+B > 700) {
					g := c.gainAt(px, py)
					a[r][k] = toLab(c.toned(0, R)*g*near[0], c.toned(1, G)*g*near[1], c.toned(2, B)*g*near[2])
				}
			}
		}
		const reach = 9 // nearSlide in columns
		var off lab
		missing := func(x, y *[nearSteps][all]lab, sign float64) float64 {
			var ds []float64
			for r := range nearSteps {
				for k := all/2 - nearCols/2; k <= all/2+nearCols/2; k++ {
					if x[r][k][0] < 0 {
						continue
					}
					best := math.Inf(1)
					for j := max(0, r-1); j <= min(nearSteps-1, r+1); j++ {
						for q := max(0, k-reach); q <= min(all-1, k+reach); q++ {
							if y[j][q][0] < 0 {
								continue
							}
							e := x[r][k].minus(y[j][q])
							e = lab{(e[0] - sign*off[0]) * 0.6, e[1] - sign*off[1], e[2] - sign*off[2]}
							best = math.Min(best, e.norm())
						}
					}
					if best < math.Inf(1) {
						ds = append(ds, best)
					}
				}
			}
			if len(ds) < nearSteps*nearCols/2 {
				return -1
			}
			slices.Sort(ds)
			return ds[len(ds)*5/6]
		}
		// what the light has left here: most of what is seen is the same board
		var gaps [3][]float64
		for r := range nearSteps {
			for k := all/2 - nearCols/2; k <= all/2+nearCols/2; k++ {
				if p, q := b[r][k], a[r][k]; p[0] >= 0 && q[0] >= 0 {
					for z := range 3 {
						gaps[z] = append(gaps[z], p[z]-q[z])
					}
				}
			}
		}
		if len(gaps[0]) > 40 {
			for z := range 3 {
				off[z] = math.Max(-15, math.Min(15, median(gaps[z])))
			}
		}
		lost, came := missing(&b, &a, 1), missing(&a, &b, -1)
		out.ok = out.ok && lost >= 0 && came >= 0
		out.lost, out.came = math.Max(out.lost, lost), math.Max(out.came, came)
	}
	return out
}
