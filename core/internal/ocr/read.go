package ocr

import (
	"math"
	"slices"
)

// Reader finds and reads rows of digits. It keeps its memory, so it is not for concurrent use.
type Reader struct {
	find  *Finder
	align *Aligner
	row   *rowReader
}

// NewReader makes a reader of three networks.
func NewReader(n *Nets) *Reader {
	return &Reader{newFinder(n.Find), newAligner(n.Align), newRowReader(n.Row)}
}

const mostLines = 5 // candidates of the finder that are looked at

// Lines lists the rows in a part of the picture, each once and laid exactly on its digits, the tallest first.
func (r *Reader) Lines(p *Picture, v View) []Line {
	found := r.find.Lines(p, v)
	var out []Line
	for i := range found {
		if i == mostLines {
			break
		}
		l, ok := r.align.Align(p, &found[i])
		if !ok {
			continue
		}
		if k := l.H / found[i].H; k > 1.25 || k < 0.8 || apart(&l, &found[i]) > 0.35*l.H { // far from what was looked at: look again
			if m, ok := r.align.Align(p, &l); ok {
				l = m
			}
		}
		l.P *= found[i].P
		same := slices.IndexFunc(out, func(o Line) bool {
			return apart(&l, &o) < 0.5*math.Max(l.H, o.H) && overlap(&l, &o) > 0.3
		})
		if same < 0 {
			out = append(out, l)
		} else if l.P > out[same].P {
			out[same] = l
		}
	}
	slices.SortStableFunc(out, func(a, b Line) int {
		switch {
		case a.H > b.H:
			return -1
		case a.H < b.H:
			return 1
		}
		return 0
	})
	return out
}

// Read looks at one row.
func (r *Reader) Read(p *Picture, l *Line) *Row { return r.row.Read(p, l) }

// apart is how far the middle of one row is from the middle line of another, in pixels.
func apart(a, b *Line) float64 {
	ex, ey := b.X1-b.X0, b.Y1-b.Y0
	n := math.Max(1e-6, math.Hypot(ex, ey))
	return math.Abs(-((a.X0+a.X1)/2-b.X0)*ey+((a.Y0+a.Y1)/2-b.Y0)*ex) / n
}

// overlap is the share of the shorter of two rows that lies beside the other.
func overlap(a, b *Line) float64 {
	ex, ey := b.X1-b.X0, b.Y1-b.Y0
	n := math.Max(1e-6, math.Hypot(ex, ey))
	t0 := ((a.X0-b.X0)*ex + (a.Y0-b.Y0)*ey) / n
	t1 := ((a.X1-b.X0)*ex + (a.Y1-b.Y0)*ey) / n
	return (math.Min(t1, n) - math.Max(t0, 0)) / math.Max(1e-6, math.Min(n, t1-t0))
}
