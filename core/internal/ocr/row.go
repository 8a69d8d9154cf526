package ocr

import (
	"math"
	"strings"
)

// Classes of a place in a row.
const (
	classDigit   = 1 // and the nine after it
	classL       = 11
	classOther   = 12
	classCovered = 13
	classes      = 14
	outPoint     = 14
	outMinus     = 15
	outStart     = 16
	outEnd       = 17
	columnPixels = 4
)

// Place is one digit, or what stands in a digit's place.
type Place struct {
	Glyph    rune    // '0' to '9', 'L', '?' for another glyph, '#' for something covered
	P        float64 // that it is this one and nothing else
	Rival    rune
	RivalP   float64
	U        float64 // column of its middle in the strip
	Point    float64 // probability of a point after it
	From, To float64 // picture columns... of the run, in strip pixels
}

// Row is what a look at one row says.
type Row struct {
	Places  []Place
	Lead    float64 // probability of a point before the first place
	Minus   float64 // probability of a minus sign
	Start   float64 // that the first mark is seen where it begins
	End     float64 // that the last mark is seen where it ends
	Stray   float64 // the most that speaks for a further place
	Blur    float64 // the most doubtful of points: nearness of its probability to one half, 0 to 1
	Uneven  float64 // widest distance of two places against the usual one
	StartU  float64
	EndU    float64
	Squeeze float64
	Strip   Strip
	Odd     bool // a sign or a point where none can be, or two of what there is one of
}

// rowReader reads rows.
type rowReader struct {
	run   *Runner
	bytes []byte
}

// newRowReader makes a reader of a network with 18 outputs a column.
func newRowReader(n *Net) *rowReader {
	return &rowReader{run: newRunner(n), bytes: make([]byte, RowW*RowH*Colours)}
}

// Read looks at one row.
func (r *rowReader) Read(p *Picture, l *Line) *Row {
	s := LayOut(l)
	p.Cut(&s, r.bytes)
	normal(r.bytes, r.run.Input())
	out, _, w, c := r.run.Run()
	row := decode(out, w, c, s.Squeeze)
	row.Strip = s
	return row
}

// peak is a run of columns where something is likelier than not.
type peak struct {
	from, to int // columns
	p, u     float64
}

// peaks lists the runs above one half of values between 0 and 1, and the most outside of them and their neighbours.
func peaks(v []float64) (out []peak, stray float64) {
	in := make([]bool, len(v)+2)
	for i := 0; i < len(v); i++ {
		if v[i] < 0.5 {
			continue
		}
		k := peak{from: i}
		sum, w := 0.0, 0.0
		for ; i < len(v) && v[i] >= 0.5; i++ {
			in[i+1] = true
			k.p = math.Max(k.p, v[i])
			sum, w = sum+v[i]*(float64(i)*columnPixels+1.5), w+v[i]
		}
		k.to, k.u = i-1, sum/w
		out = append(out, k)
	}
	for i, x := range v {
		if !in[i] && !in[i+1] && !in[i+2] {
			stray = math.Max(stray, x)
		}
	}
	return out, stray
}

func decode(out []float32, n, c int, squeeze float64) *Row {
	row := &Row{Squeeze: squeeze, StartU: math.NaN(), EndU: math.NaN()}
	probs := make([][classes]float64, n)
	glyph, of := make([]float64, n), [4][]float64{}
	for t := range n {
		o := out[t*c:][:c]
		top, sum := float64(o[0]), 0.0
		for _, v := range o[:classes] {
			top = math.Max(top, float64(v))
		}
		for k, v := range o[:classes] {
			probs[t][k] = math.Exp(float64(v) - top)
			sum += probs[t][k]
		}
		for k := range probs[t] {
			probs[t][k] /= sum
		}
		glyph[t] = 1 - probs[t][0]
		for k := range of {
			of[k] = append(of[k], sigmoid(float64(o[outPoint+k])))
		}
	}
	runs, stray := peaks(glyph)
	row.Stray = stray
	for _, k := range runs {
		row.Places = append(row.Places, place(probs, glyph, k, squeeze)...)
	}
	points, strayPoint := peaks(of[0])
	minus, strayMinus := peaks(of[1])
	starts, _ := peaks(of[2])
	ends, _ := peaks(of[3])
	row.Blur = 2 * math.Max(strayPoint, 0)
	for i := range row.Places {
		row.Places[i].Point = 0
	}
	if len(row.Places) == 0 {
		return row
	}
	first, last := row.Places[0].U, row.Places[len(row.Places)-1].U
	// what is likely of a point where none is taken
	row.Lead = 0
	for _, k := range points {
		row.Blur = math.Max(row.Blur, 2*(1-k.p))
		i := -1
		for j := range row.Places {
			if row.Places[j].U < k.u {
				i = j
			}
		}
		switch {
		case i < 0 && row.Lead > 0, i >= 0 && row.Places[i].Point > 0, i < 0 && k.u < first-1.3*DigitH*squeeze:
			row.Odd = true
		case i < 0:
			row.Lead = k.p
		default:
			row.Places[i].Point = k.p
		}
	}
	row.Minus = math.Min(strayMinus, 0.5)
	if len(minus) > 0 {
		row.Minus = minus[0].p
		row.Odd = row.Odd || len(minus) > 1 || minus[0].u > first
	}
	for _, k := range starts {
		if row.Start == 0 || k.u < row.StartU {
			row.Start, row.StartU = k.p, k.u
		}
	}
	for _, k := range ends {
		if row.End == 0 || k.u > row.EndU {
			row.End, row.EndU = k.p, k.u
		}
	}
	row.Odd = row.Odd || len(starts) > 1 || len(ends) > 1 || row.Start > 0 && row.StartU > first || row.End > 0 && row.EndU < last
	// how far apart the places stand
	if len(row.Places) > 2 {
		var d []float64
		for i := 1; i < len(row.Places); i++ {
			d = append(d, row.Places[i].U-row.Places[i-1].U)
		}
		most, least := d[0], d[0]
		for _, x := range d {
			most, least = math.Max(most, x), math.Min(least, x)
		}
		row.Uneven = most / math.Max(1, least)
	}
	return row
}

// place makes a digit of a run of columns; a run too wide for one digit is split where its class changes.
func place(probs [][classes]float64, glyph []float64, k peak, squeeze float64) []Place {
	if k.to-k.from >= 3 {
		arg := func(t int) int {
			best := 1
			for c := 1; c < classes; c++ {
				if probs[t][c] > probs[t][best] {
					best = c
				}
			}
			return best
		}
		for t := k.from + 1; t <= k.to; t++ {
			if arg(t) != arg(t-1) && t-k.from >= 2 && k.to-t >= 1 {
				a, b := k, k
				a.to, b.from = t-1, t
				return append(place(probs, glyph, a, squeeze), place(probs, glyph, b, squeeze)...)
			}
		}
	}
	var sum [classes]float64
	w, u, top := 0.0, 0.0, 0.0
	for t := k.from; t <= k.to; t++ {
		g := glyph[t]
		top = math.Max(top, g)
		for c := 1; c < classes; c++ {
			sum[c] += probs[t][c]
		}
		w, u = w+g, u+g*(float64(t)*columnPixels+1.5)
	}
	best, next := 1, 2
	if sum[2] > sum[1] {
		best, next = 2, 1
	}
	for c := 3; c < classes; c++ {
		switch {
		case sum[c] > sum[best]:
			best, next = c, best
		case sum[c] > sum[next]:
			next = c
		}
	}
	return []Place{{Glyph: glyphOf(best), P: top * sum[best] / w, Rival: glyphOf(next), RivalP: sum[next] / w, U: u / w,
		From: float64(k.from * columnPixels), To: float64(k.to*columnPixels + columnPixels)}}
}

func glyphOf(c int) rune {
	switch {
	case c < classL:
		return rune('0' + c - classDigit)
	case c == classL:
		return 'L'
	case c == classOther:
		return '?'
	}
	return '#'
}

// Text is what the row shows: "-12.34"; '?' and '#' stand for what is no digit or cannot be seen.
func (r *Row) Text() string {
	var b strings.Builder
	if r.Minus > 0.5 {
		b.WriteByte('-')
	}
	if r.Lead > 0.5 {
		b.WriteByte('.')
	}
	for i := range r.Places {
		b.WriteRune(r.Places[i].Glyph)
		if r.Places[i].Point > 0.5 && i < len(r.Places)-1 {
			b.WriteByte('.')
		}
	}
	return b.String()
}

// P is the chance that all of it is right as far as one look can tell.
func (r *Row) P() float64 {
	p := (1 - r.Stray) * math.Max(r.Minus, 1-r.Minus) * r.Start * r.End * (1 - math.Min(1, r.Blur)/2)
	for i := range r.Places {
		p *= r.Places[i].P
	}
	return p
}
