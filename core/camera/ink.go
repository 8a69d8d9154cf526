package camera

import "math"

// blob is a connected patch of ink.
type blob struct {
	x0, y0, x1, y1 int // inclusive
	area           int
}

func (b *blob) h() float64 { return float64(b.y1 - b.y0 + 1) }
func (b *blob) w() float64 { return float64(b.x1 - b.x0 + 1) }

// run is a piece of a picture row that belongs to one blob.
type run struct {
	x0, x1, y int
	id        int32
}

// patcher finds connected patches; it keeps its memory.
type patcher struct {
	runs   []run
	parent []int32
	blobs  []blob
	index  []int32
}

// strokes lists the patches of a picture of ink that are at least so dark.
func (f *patcher) strokes(ink []float32, w, h int, at float32) []blob {
	f.runs, f.parent = f.runs[:0], f.parent[:0]
	rowStart, prevStart, prev2Start := 0, 0, 0
	for y := range h {
		prev2Start, prevStart, rowStart = prevStart, rowStart, len(f.runs)
		for x, v := range ink[y*w : (y+1)*w] {
			if v >= at {
				f.put(x, y, rowStart)
			}
		}
		f.link(prev2Start, prevStart, rowStart)
	}
	return f.gather()
}

// put adds one pixel to the last run of its row when it is next to it or one pixel away.
func (f *patcher) put(x, y, rowStart int) {
	if n := len(f.runs); n > rowStart && x-f.runs[n-1].x1 <= 2 {
		f.runs[n-1].x1 = x
		return
	}
	id := int32(len(f.parent))
	f.parent = append(f.parent, id)
	f.runs = append(f.runs, run{x, x, y, id})
}

// link joins the runs of the newest row with those of the two rows above that they touch.
func (f *patcher) link(prev2, prev, row int) {
	for _, from := range [2][2]int{{prev, row}, {prev2, prev}} {
		j := from[0]
		for i := row; i < len(f.runs); i++ {
			for j < from[1] && f.runs[j].x1 < f.runs[i].x0-1 {
				j++
			}
			for k := j; k < from[1] && f.runs[k].x0 <= f.runs[i].x1+1; k++ {
				if a, b := f.root(f.runs[i].id), f.root(f.runs[k].id); a < b {
					f.parent[b] = a
				} else {
					f.parent[a] = b
				}
			}
		}
	}
}

func (f *patcher) root(i int32) int32 {
	t := f.parent
	for t[i] != i {
		t[i] = t[t[i]]
		i = t[i]
	}
	return i
}

func (f *patcher) gather() []blob {
	f.blobs, f.index = f.blobs[:0], f.index[:0]
	for range f.parent {
		f.index = append(f.index, -1)
	}
	for i := range f.runs {
		r := &f.runs[i]
		id := f.root(r.id)
		if f.index[id] < 0 {
			f.index[id] = int32(len(f.blobs))
			f.blobs = append(f.blobs, blob{x0: r.x0, x1: r.x1, y0: r.y, y1: r.y})
		}
		b := &f.blobs[f.index[id]]
		b.x0, b.x1 = min(b.x0, r.x0), max(b.x1, r.x1)
		b.y0, b.y1 = min(b.y0, r.y), max(b.y1, r.y)
		b.area += r.x1 - r.x0 + 1
	}
	return f.blobs
}

// noiseOf estimates the standard deviation of g's noise from second differences along rows, which cancel slopes.
func noiseOf(g *grey) float64 {
	if g.w < 3 {
		return 1
	}
	var hist [512]int
	n := 0
	for y := 0; y < g.h; y += 4 {
		row := g.pix[y*g.w : (y+1)*g.w]
		for x := 1; x < g.w-1; x += 2 {
			d := 2*int(row[x]) - int(row[x-1]) - int(row[x+1])
			if d < 0 {
				d = -d
			}
			hist[min(d, 511)]++
			n++
		}
	}
	// the median of |d| of normal noise is 0.6745 sigma sqrt(6)
	c := 0
	for d, k := range hist {
		if c += k; 2*c >= n {
			return math.Max(0.5, (float64(d)+0.5)/(0.6745*math.Sqrt(6)))
		}
	}
	return 1
}

// line is a row that may be a number: its middle line and height at both ends, in pixels of the whole picture.
type line struct {
	x0, y0, h0 float64 // left end
	x1, y1, h1 float64 // right end
	light      bool
}

func boolTo(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
