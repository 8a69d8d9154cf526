package camera

import (
	"encoding/binary"
	"math"
	"slices"
)

// Digits are looked for at several sizes of the picture, at each where they are tallLow to tallHigh pixels high:
// there the gaps between the segments of a digit close and the segments themselves are still apart.
const (
	tallLow  = 8
	tallHigh = 36
)

// blob is a connected patch darker or lighter than its surroundings.
type blob struct {
	x0, y0, x1, y1 int // inclusive
	area, runs     int
	depth          int // sum of the contrast over the area
	light          bool
}

func (b *blob) h() float64  { return float64(b.y1 - b.y0 + 1) }
func (b *blob) w() float64  { return float64(b.x1 - b.x0 + 1) }
func (b *blob) cx() float64 { return float64(b.x0+b.x1) / 2 }
func (b *blob) cy() float64 { return float64(b.y0+b.y1) / 2 }

// run is a piece of a picture row that belongs to one blob.
type run struct {
	x0, x1, y int
	id        int32
	depth     int
}

// finder finds strokes in one size of the picture; it keeps its memory from picture to picture.
type finder struct {
	hat    [2][]byte // how much darker (0) or lighter (1) than its background each pixel is
	tmp    []byte
	pad    []byte // one row with room at both ends
	floor  []byte // per block, what counts as a stroke
	runs   [2][]run
	parent [2][]int32
	blobs  []blob
	index  []int32
}

const (
	strokeR = 3 // strokes are at most twice this and one wide, in pixels of the size at which they are looked for
	blockW  = 8 // side of the blocks that share one threshold
	reach   = 0.4
)

// find lists the strokes of g: patches darker, or lighter, than what is around them on all sides or on two, as a closing
// (or opening) with a small square shows. The edge of a window or a large mark is no stroke, whatever its contrast.
func (f *finder) find(g *grey, noise float64) []blob {
	w, h := g.w, g.h
	n := w * h
	if cap(f.tmp) < n {
		f.tmp, f.hat[0], f.hat[1] = make([]byte, n), make([]byte, n), make([]byte, n)
	}
	floor := max(3, int(1.6*noise+1.5))
	for p := range 2 {
		hat := f.hat[p][:n]
		copy(hat, g.pix[:n])
		if p == 1 {
			flip(hat)
		}
		f.widen(hat, f.tmp[:n], w, h) // of the brightest: closes dark strokes
		flip(hat)
		f.widen(hat, f.tmp[:n], w, h)
		for i, v := range g.pix[:n] {
			c := 255 - int(hat[i])
			if p == 1 {
				v = 255 - v
			}
			hat[i] = byte(max(0, c-int(v)))
		}
		f.trace(p, hat, w, h, floor)
	}
	return f.gather()
}

// trace makes runs of the pixels that stand out among their neighbours, and joins those that touch.
func (f *finder) trace(p int, hat []byte, w, h, floor int) {
	bw, bh := (w+blockW-1)/blockW, (h+blockW-1)/blockW
	if cap(f.floor) < 2*bw*bh {
		f.floor = make([]byte, 2*bw*bh)
	}
	peak, limit := f.floor[:bw*bh], f.floor[bw*bh:2*bw*bh]
	for y := range bh {
		for x := range bw {
			peak[y*bw+x] = peakOf(hat, w, x*blockW, y*blockW, min(w, (x+1)*blockW), min(h, (y+1)*blockW))
		}
	}
	for y := range bh {
		for x := range bw {
			m := byte(0)
			for j := max(0, y-1); j <= min(bh-1, y+1); j++ {
				for i := max(0, x-1); i <= min(bw-1, x+1); i++ {
					m = max(m, peak[j*bw+i])
				}
			}
			limit[y*bw+x] = byte(max(floor, int(reach*float64(m))))
		}
	}
	f.runs[p], f.parent[p] = f.runs[p][:0], f.parent[p][:0]
	rowStart, prevStart, prev2Start := 0, 0, 0
	for y := range h {
		prev2Start, prevStart, rowStart = prevStart, rowStart, len(f.runs[p])
		row := hat[y*w : (y+1)*w]
		for b, at := range limit[y/blockW*bw : (y/blockW+1)*bw] {
			if peak[y/blockW*bw+b] < at { // nothing in the whole block stands out
				continue
			}
			for x := b * blockW; x < min(w, (b+1)*blockW); x++ {
				if v := row[x]; v >= at {
					f.put(p, x, y, int(v), rowStart)
				}
			}
		}
		f.link(p, prev2Start, prevStart, rowStart)
	}
}

// peakOf is the largest pixel of a block, eight at a time.
func peakOf(pix []byte, w, x0, y0, x1, y1 int) byte {
	top := byte(0)
	if x1-x0 == 8 {
		m := uint64(0)
		for y := y0; y < y1; y++ {
			m = larger(m, word(pix[y*w+x0:]))
		}
		for ; m != 0; m >>= 8 {
			top = max(top, byte(m))
		}
		return top
	}
	for y := y0; y < y1; y++ {
		for _, v := range pix[y*w+x0 : y*w+x1] {
			top = max(top, v)
		}
	}
	return top
}

func flip(pix []byte) {
	i := 0
	for ; i+8 <= len(pix); i += 8 {
		binary.LittleEndian.PutUint64(pix[i:], ^word(pix[i:]))
	}
	for ; i < len(pix); i++ {
		pix[i] = ^pix[i]
	}
}

// widen replaces every pixel by the largest within strokeR of it on either axis, eight pixels at a time.
func (f *finder) widen(pix, tmp []byte, w, h int) {
	const r = strokeR
	if w <= 2*r || h <= 2*r {
		return
	}
	if cap(f.pad) < w+16 {
		f.pad = make([]byte, w+16)
	}
	pad := f.pad[:w+16]
	clear(pad) // zero beyond the ends never is the largest
	for y := range h {
		copy(pad[r:], pix[y*w:(y+1)*w])
		clear(pad[r+w:])
		out := tmp[y*w : (y+1)*w]
		x := 0
		for ; x+8 <= w; x += 8 {
			p := pad[x : x+14]
			m := word(p)
			for d := 1; d <= 2*r; d++ {
				m = larger(m, word(p[d:]))
			}
			binary.LittleEndian.PutUint64(out[x:], m)
		}
		for ; x < w; x++ {
			m := pad[x]
			for _, v := range pad[x+1 : x+2*r+1] {
				m = max(m, v)
			}
			out[x] = m
		}
	}
	for y := range h {
		lo, hi := max(0, y-r), min(h-1, y+r)
		out := pix[y*w : (y+1)*w]
		x := 0
		for ; x+8 <= w; x += 8 {
			m := word(tmp[lo*w+x:])
			for j := lo + 1; j <= hi; j++ {
				m = larger(m, word(tmp[j*w+x:]))
			}
			binary.LittleEndian.PutUint64(out[x:], m)
		}
		for ; x < w; x++ {
			m := tmp[lo*w+x]
			for j := lo + 1; j <= hi; j++ {
				m = max(m, tmp[j*w+x])
			}
			out[x] = m
		}
	}
}

func word(p []byte) uint64 { return binary.LittleEndian.Uint64(p) }

// larger is the larger of each of the eight bytes of a and b.
func larger(a, b uint64) uint64 {
	const top = 0x8080808080808080
	low := (a | top) - (b &^ top) // top bit: the lower seven bits of a are at least those of b
	ge := (a&^b | ^(a^b)&low) & top
	mask := ge >> 7 * 0xff
	return a&mask | b&^mask
}

// strokes lists the patches of a picture of ink that are at least so dark.
func (f *finder) strokes(ink []float32, w, h int, at float32) []blob {
	for p := range 2 {
		f.runs[p], f.parent[p] = f.runs[p][:0], f.parent[p][:0]
	}
	rowStart, prevStart, prev2Start := 0, 0, 0
	for y := range h {
		prev2Start, prevStart, rowStart = prevStart, rowStart, len(f.runs[0])
		for x, v := range ink[y*w : (y+1)*w] {
			if v >= at {
				f.put(0, x, y, 1, rowStart)
			}
		}
		f.link(0, prev2Start, prevStart, rowStart)
	}
	return f.gather()
}

// put adds one pixel to the last run of its row when it is next to it or one pixel away.
func (f *finder) put(p, x, y, depth, rowStart int) {
	runs := f.runs[p]
	if n := len(runs); n > rowStart && x-runs[n-1].x1 <= 2 {
		runs[n-1].x1 = x
		runs[n-1].depth += depth
		return
	}
	id := int32(len(f.parent[p]))
	f.parent[p] = append(f.parent[p], id)
	f.runs[p] = append(runs, run{x, x, y, id, depth})
}

// link joins the runs of the newest row with those of the two rows above that they touch.
func (f *finder) link(p, prev2, prev, row int) {
	runs := f.runs[p]
	for _, from := range [2][2]int{{prev, row}, {prev2, prev}} {
		j := from[0]
		for i := row; i < len(runs); i++ {
			for j < from[1] && runs[j].x1 < runs[i].x0-1 {
				j++
			}
			for k := j; k < from[1] && runs[k].x0 <= runs[i].x1+1; k++ {
				a, b := f.root(p, runs[i].id), f.root(p, runs[k].id)
				if a < b {
					f.parent[p][b] = a
				} else {
					f.parent[p][a] = b
				}
			}
		}
	}
}

func (f *finder) root(p int, i int32) int32 {
	t := f.parent[p]
	for t[i] != i {
		t[i] = t[t[i]]
		i = t[i]
	}
	return i
}

func (f *finder) gather() []blob {
	f.blobs = f.blobs[:0]
	for p := range 2 {
		if cap(f.index) < len(f.parent[p]) {
			f.index = make([]int32, len(f.parent[p]))
		}
		index := f.index[:len(f.parent[p])]
		for i := range index {
			index[i] = -1
		}
		for i := range f.runs[p] {
			r := &f.runs[p][i]
			id := f.root(p, r.id)
			if index[id] < 0 {
				index[id] = int32(len(f.blobs))
				f.blobs = append(f.blobs, blob{x0: r.x0, x1: r.x1, y0: r.y, y1: r.y, light: p == 1})
			}
			b := &f.blobs[index[id]]
			b.x0, b.x1 = min(b.x0, r.x0), max(b.x1, r.x1)
			b.y0, b.y1 = min(b.y0, r.y), max(b.y1, r.y)
			b.area += r.x1 - r.x0 + 1
			b.runs++
			b.depth += r.depth
		}
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

// line is a row of patches that may be a number: its middle line and height at both ends, in pixels of the whole picture.
type line struct {
	x0, y0, h0 float64 // left end
	x1, y1, h1 float64 // right end
	light      bool
	rank       float64 // more is more like a display's number
}

// lines joins patches of like height that follow one another into rows. scale is picture pixels per pixel of g.
func lines(blobs []blob, scale float64, out []line) []line {
	var tall []*blob
	for i := range blobs {
		b := &blobs[i]
		h, w := b.h(), b.w()
		if h < tallLow || h > tallHigh || w > 8*h || float64(b.area) < 0.08*h*math.Max(w, 0.2*h) || b.area > int(0.97*h*w) && w > 0.45*h {
			continue
		}
		tall = append(tall, b)
	}
	slices.SortStableFunc(tall, func(a, b *blob) int { return a.x0 - b.x0 })
	used := make([]bool, len(tall))
	var chain []*blob
	for i, first := range tall {
		if used[i] {
			continue
		}
		chain = append(chain[:0], first)
		used[i] = true
		last, h, slope := first, first.h(), 0.0
		for {
			best, bestGap := -1, 1e9
			for j := i + 1; j < len(tall); j++ {
				b := tall[j]
				if float64(b.x0) > float64(last.x1)+1.7*h {
					break
				}
				if used[j] || b.light != first.light || b.cx() < last.cx() {
					continue
				}
				hb := b.h()
				if hb < 0.72*h || hb > 1.39*h {
					continue
				}
				dx := b.cx() - last.cx()
				if dy := math.Abs(b.cy() - last.cy() - slope*dx); dy > 0.16*h+0.2*dx*boolTo(len(chain) < 2) {
					continue
				}
				if gap := float64(b.x0 - last.x1); gap < bestGap {
					best, bestGap = j, gap
				}
			}
			if best < 0 {
				break
			}
			used[best] = true
			last = tall[best]
			chain = append(chain, last)
			h = 0.7*h + 0.3*last.h()
			if dx := last.cx() - first.cx(); dx > 1.5*h {
				slope = (last.cy() - first.cy()) / dx
			}
		}
		out = append(out, fit(chain, scale))
	}
	return out
}

func boolTo(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// strokeLike is 1 for a patch made of strokes as thin as a digit's against its height, falling to 0.1 for a filled one.
func strokeLike(b *blob) float64 {
	t := float64(b.area) / float64(b.runs) / b.h() // mean run over height
	fill := float64(b.area) / (b.h() * b.w())
	if b.w() < 0.45*b.h() { // a one is filled
		fill = 0.5
	}
	v := 1.0
	if t > 0.4 {
		v -= (t - 0.4) * 3
	}
	if fill > 0.7 {
		v -= (fill - 0.7) * 3
	}
	return math.Max(0.1, v)
}

// crossings is 1 for a row that is crossed by as many upright strokes as digits of its height have, and falls to 0.05 for
// the frame of a window or the edge of the housing, which are much wider than they have strokes.
func crossings(chain []*blob) float64 {
	strokes, room := 0.0, 0.0
	for _, b := range chain {
		strokes += float64(b.runs) / b.h()
		room += math.Max(b.w()/b.h(), 0.3)
	}
	return math.Max(0.05, math.Min(1, (strokes/room-0.8)/0.7))
}

// fit makes the line through a chain of patches.
func fit(chain []*blob, scale float64) line {
	n := float64(len(chain))
	var sx, st, sb, depth, area, width float64
	for _, b := range chain {
		sx += b.cx()
		st += float64(b.y0)
		sb += float64(b.y1 + 1)
		depth += float64(b.depth)
		area += float64(b.area)
		width += b.w()
	}
	mx, mt, mb := sx/n, st/n, sb/n
	var sxx, sxt, sxb float64
	for _, b := range chain {
		d := b.cx() - mx
		sxx += d * d
		sxt += d * (float64(b.y0) - mt)
		sxb += d * (float64(b.y1+1) - mb)
	}
	var kt, kb float64
	if sxx > 0 {
		kt, kb = sxt/sxx, sxb/sxx
	}
	if k := (kt + kb) / 2; len(chain) < 4 { // too few to tell perspective from chance
		kt, kb = k, k
	}
	x0, x1 := float64(chain[0].x0), 0.0
	for _, b := range chain {
		x1 = math.Max(x1, float64(b.x1+1))
	}
	top := func(x float64) float64 { return mt + kt*(x-mx) }
	bot := func(x float64) float64 { return mb + kb*(x-mx) }
	l := line{light: chain[0].light}
	slope := (kt + kb) / 2
	cos := 1 / math.Sqrt(1+slope*slope)
	l.x0, l.y0, l.h0 = x0*scale, (top(x0)+bot(x0))/2*scale, (bot(x0)-top(x0))*cos*scale
	l.x1, l.y1, l.h1 = x1*scale, (top(x1)+bot(x1))/2*scale, (bot(x1)-top(x1))*cos*scale
	h := mb - mt
	// a display's number is tall and has several digits, drawn in strokes: rows of its patches are cut into short runs
	strokes := 0.0
	for _, b := range chain {
		strokes += strokeLike(b) * math.Min(3, math.Max(1, b.w()/(0.7*b.h())))
	}
	l.rank = math.Sqrt(h*scale) * math.Sqrt(math.Min(depth/area, 60)) * math.Min(strokes, 4) * crossings(chain)
	return l
}
