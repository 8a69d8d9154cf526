package ocr

import "math"

// Aligner lays a row that was found roughly exactly on its digits.
type Aligner struct {
	run   *Runner
	bytes []byte
}

// newAligner makes an aligner of a network with three outputs a column: whether the row is there (log odds), and its upper and lower edge (in 8
// pixels from the middle of the view).
func newAligner(n *Net) *Aligner {
	return &Aligner{run: newRunner(n), bytes: make([]byte, AlignW*AlignH*Colours)}
}

// Align returns the row that lies nearest to a line; ok is false where there is none.
func (a *Aligner) Align(p *Picture, l *Line) (out Line, ok bool) {
	s := LayWide(l)
	p.CutWide(&s, a.bytes)
	normalAll(a.bytes, a.run.Input())
	v, _, n, c := a.run.Run()
	at := func(t int) float64 {
		if t < 0 || t >= n {
			return 0
		}
		return sigmoid(float64(v[t*c]))
	}
	// stretches of columns that belong to a row, small holes closed; the one with most of it near the middle counts
	from, to, best := -1, -1, 0.0
	for t := 0; t < n; t++ {
		if at(t) < 0.5 {
			continue
		}
		end, sum := t, 0.0
		for i := t; i < n && i-end <= 3; i++ {
			if at(i) >= 0.5 {
				end = i
				sum += at(i) / (1 + math.Abs(float64(i-n/2))/20)
			}
		}
		if sum > best {
			from, to, best = t, end, sum
		}
		t = end
	}
	if from < 0 {
		return Line{}, false
	}
	var w, su, sm, suu, sum, sh, sp float64
	for t := from; t <= to; t++ {
		q := at(t)
		u, top, low := float64(t)*columnPixels+1.5, 24+8*float64(v[t*c+1]), 24+8*float64(v[t*c+2])
		m := (top + low) / 2
		w, su, sm, suu, sum, sh, sp = w+q, su+q*u, sm+q*m, suu+q*u*u, sum+q*u*m, sh+q*(low-top), sp+q*q
	}
	mu, mm, h := su/w, sm/w, sh/w
	slope := 0.0
	if d := suu/w - mu*mu; d > 4 {
		slope = (sum/w - mu*mm) / d
	}
	if h < 3 || math.Abs(slope) > 0.6 {
		return Line{}, false
	}
	// an end lies where the row is as likely as not
	edge := func(in, out int) float64 {
		a, b := at(in), at(out)
		f := 0.5
		if a > b {
			f = math.Max(0, math.Min(1, (a-0.5)/(a-b)))
		}
		return float64(in)*columnPixels + 1.5 + f*columnPixels*float64(out-in)
	}
	u0, u1 := edge(from, from-1), edge(to, to+1)
	out.X0, out.Y0 = s.At(u0, mm+slope*(u0-mu))
	out.X1, out.Y1 = s.At(u1, mm+slope*(u1-mu))
	out.H = h / AlignDigit * math.Max(1, l.H)
	out.P = sp / w
	return out, true
}
