package camera

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"readback/core/internal/ocr"
	"readback/core/unit"
)

// learned is the voice of the networks. It finds the rows of digits of a picture and reads the one that is meant, twice.
type learned struct {
	nets  *ocr.Reader
	pic   ocr.Picture
	strip []byte
}

// look is what the networks say about one row.
type look struct {
	line  ocr.Line
	first *ocr.Row
	again *ocr.Row  // the same row laid out a little otherwise
	far   *ocr.Row  // and from farther to the left, where a sign may stand; nil where the two differ
	rival *ocr.Line // another row that may as well be meant

	veiled bool // glare where a blank place or a sign stands, to the left of the number
}

func (l *learned) set(p *Plane) {
	if l.nets == nil {
		l.nets = ocr.NewReader(ocr.Own())
	}
	l.pic.Set(&ocr.Planes{Y: p.Y, W: p.W, H: p.H, Stride: p.Stride, Cb: p.Cb, Cr: p.Cr, CStride: p.CStride, Sub: max(1, p.Sub)})
}

// see finds the row that is meant and reads it; nil when there is none. In doubt it is the tallest, and the one that was tapped, or that the
// aiming frame holds, before others.
func (l *learned) see(p *Plane, aim *Aim) *look {
	l.set(p)
	lines := l.nets.Lines(&l.pic, l.pic.Whole())
	if len(lines) == 0 { // digits too small for a look at the whole
		w, h := float64(p.W), float64(p.H)
		lines = l.nets.Lines(&l.pic, l.pic.Part(0.2*w, 0.2*h, 0.8*w, 0.8*h))
	}
	type candidate struct {
		line   *ocr.Line
		weight float64
		row    *ocr.Row
	}
	var rows []candidate
	for i := range lines {
		k := &lines[i]
		if w := k.H * aim.weight(k, p.W, p.H); k.P >= leastRow && w > 0 {
			rows = append(rows, candidate{line: k, weight: w})
		}
	}
	slices.SortStableFunc(rows, func(a, b candidate) int { return cmp.Compare(b.weight, a.weight) })
	// the first that is a number, or may be one that cannot be read; a dial, keys or print are passed over
	read := func(c *candidate) *ocr.Row {
		if c.row == nil {
			c.row = l.nets.Read(&l.pic, c.line)
		}
		return c.row
	}
	at := -1
	for i := range rows {
		if i == mostRead {
			break
		}
		if meant(read(&rows[i])) {
			at = i
			break
		}
	}
	if at < 0 {
		if len(rows) == 0 {
			return nil
		}
		at = 0
	}
	out := &look{line: *rows[at].line, first: read(&rows[at])}
	for i := range rows {
		if i != at && i < mostRead && rows[i].weight > equalRows*rows[at].weight && mayBe(read(&rows[i])) {
			out.rival = rows[i].line
			break
		}
	}
	if len(out.first.Places) == 0 {
		return out
	}
	second := out.line
	if f := out.first; f.Start > 0.5 && f.End > 0.5 { // what was seen says better where the row begins and ends
		second.X0, second.Y0 = f.Strip.At(f.StartU, ocr.RowH/2)
		second.X1, second.Y1 = f.Strip.At(f.EndU, ocr.RowH/2)
	}
	ex, ey := second.X1-second.X0, second.Y1-second.Y0
	n := math.Max(1, math.Hypot(ex, ey))
	ex, ey = ex/n*second.H, ey/n*second.H
	second.X0, second.Y0 = second.X0-0.12*ex+0.03*ey, second.Y0-0.12*ey-0.03*ex
	second.X1, second.Y1 = second.X1+0.12*ex+0.03*ey, second.Y1+0.12*ey-0.03*ex
	second.H *= 1.08
	out.again = l.nets.Read(&l.pic, &second)
	if out.first.Text() != out.again.Text() {
		return out
	}
	far := out.line
	n = math.Max(1, math.Hypot(far.X1-far.X0, far.Y1-far.Y0))
	ex, ey = (far.X1-far.X0)/n*far.H, (far.Y1-far.Y0)/n*far.H
	far.X0, far.Y0 = far.X0-farReach*ex, far.Y0-farReach*ey
	out.far = l.nets.Read(&l.pic, &far)
	out.veiled = l.veiled(out.far)
	return out
}

// veiled tells whether a patch of glare lies to the left of a number, over places that look blank: brighter than what is behind the digits by a third
// of their contrast, for a third of a digit's height, with an end. What is bright on to the end of the view is the body of the device.
func (l *learned) veiled(r *ocr.Row) bool {
	if len(r.Places) == 0 {
		return false
	}
	if l.strip == nil {
		l.strip = make([]byte, ocr.RowW*ocr.RowH*ocr.Colours)
	}
	l.pic.Cut(&r.Strip, l.strip)
	const top, low = (ocr.RowH - ocr.DigitH) / 2, (ocr.RowH + ocr.DigitH) / 2
	h := ocr.DigitH * r.Squeeze
	first, last := r.Places[0].U, r.Places[len(r.Places)-1].U
	var grey []byte
	for u := max(0, int(first-0.4*h)); u < min(ocr.RowW, int(last+0.4*h)); u++ {
		for v := top; v < low; v++ {
			grey = append(grey, l.strip[(v*ocr.RowW+u)*ocr.Colours])
		}
	}
	if len(grey) < 60 {
		return false
	}
	slices.Sort(grey)
	at := func(share float64) float64 { return float64(grey[int(share*float64(len(grey)-1))]) }
	behind := at(0.75) // of dark digits
	if at(0.95)-at(0.5) > at(0.5)-at(0.05) {
		behind = at(0.3)
	}
	least := math.Max(12, 0.33*(at(0.95)-at(0.05)))
	run, dazzled, begun := 0, 0, false
	for u := int(first - 0.8*h); u >= max(0, int(first-4*h)); u-- {
		mean := 0.0
		for v := top; v < low; v++ {
			mean += float64(l.strip[(v*ocr.RowW+u)*ocr.Colours]) / (low - top)
		}
		switch {
		case mean > behind+least:
			if run++; float64(run) >= 0.33*h {
				begun = true
			}
		default:
			if begun { // it came to an end: no body of a device
				return true
			}
			run = 0
		}
		if mean > 251 {
			dazzled++
		}
	}
	return float64(dazzled) > 1.2*h // nothing can be seen in what is burnt out
}

// meant tells whether a row is a number, or has digits enough to be one that cannot be read.
func meant(r *ocr.Row) bool {
	digits, least := 0, 1.0
	for i := range r.Places {
		p := &r.Places[i]
		least = math.Min(least, p.P)
		if p.P > 0.7 && p.Glyph >= '0' && p.Glyph <= '9' {
			digits++
		}
	}
	return digits >= 1 && r.Start*r.End*least > 0.05 || digits >= 2 && math.Max(r.Start, r.End) > 0.5
}

// mayBe tells whether anything in a row looks like a digit.
func mayBe(r *ocr.Row) bool {
	for i := range r.Places {
		if p := &r.Places[i]; p.P > 0.5 && p.Glyph != '?' {
			return true
		}
	}
	return false
}

const (
	farReach  = 3.6 // digit heights that are looked at to the left of the row, beside the 1.25 that every look has
	mostRead  = 4   // rows that are read to find the one that is meant
	leastRow  = 0.3 // of a row's probability
	equalRows = 0.8 // from this share of the tallest row's height another may be meant as well
)

// Aim says which display is meant, when somebody said so.
type Aim struct {
	X0, Y0, X1, Y1 float64 // shares of the picture
	Tapped         bool    // one display was chosen with a tap: nothing outside is read
}

// weight is how much a row counts against others for where it lies.
func (a *Aim) weight(l *ocr.Line, w, h int) float64 {
	if a == nil {
		return 1
	}
	x, y := (l.X0+l.X1)/2/float64(w), (l.Y0+l.Y1)/2/float64(h)
	inside := x > a.X0 && x < a.X1 && y > a.Y0 && y < a.Y1
	switch {
	case inside:
		return 1
	case a.Tapped:
		return 0
	}
	return 0.6
}

// digit lets the networks speak about a picture of one digit: what the surer of the two voices says is taken.
func (l *learned) digit(p *Plane, rd *Reading) {
	l.set(p)
	w, h := float64(p.W), float64(p.H)
	line := ocr.Line{X0: 0.15 * w, X1: 0.85 * w, Y0: h / 2, Y1: h / 2, H: 0.85 * h}
	row := l.nets.Read(&l.pic, &line)
	mid, _ := row.Strip.Into(w/2, h/2)
	var place *ocr.Place
	for i := range row.Places {
		q := &row.Places[i]
		if math.Abs(q.U-mid) < 0.35*ocr.DigitH && (place == nil || q.P > place.P) {
			place = q
		}
	}
	d := &rd.Digits[0]
	sure := d.P * sigmoid(d.valid)
	if rd.Shows == Empty {
		sure = sigmoid(-d.valid)
	}
	switch {
	case place == nil && rd.Shows != Empty && 1-row.Stray > sure:
		rd.Shows, rd.Text, rd.Reason, rd.Value = Empty, "", "", unit.Decimal{}
	case place != nil && place.Glyph >= '0' && place.Glyph <= '9' && place.P > sure && (rd.Shows == Empty || place.Glyph != d.Glyph):
		d.Glyph, d.P = place.Glyph, place.P
		rd.Shows, rd.Text, rd.P = Number, string(place.Glyph), place.P
		if v, err := unit.ParseDecimal(rd.Text); err == nil {
			rd.Value = v
		}
		if rd.Reason = ""; rd.Text == "1" {
			rd.Reason = loneOne
		}
	}
}

// digits are the places with their corners in the picture.
func (k *look) digits() []Digit {
	var out []Digit
	r := k.first
	for i := range r.Places {
		p := &r.Places[i]
		half := 0.27 * ocr.DigitH * r.Squeeze
		d := Digit{Glyph: p.Glyph, P: p.P, Rival: p.Rival, RivalP: p.RivalP, Dot: p.Point}
		for j, q := range [4][2]float64{{p.U - half, ocr.RowH/2 - ocr.DigitH/2}, {p.U + half, ocr.RowH/2 - ocr.DigitH/2}, {p.U + half, ocr.RowH/2 + ocr.DigitH/2}, {p.U - half, ocr.RowH/2 + ocr.DigitH/2}} {
			d.Box[j][0], d.Box[j][1] = r.Strip.At(q[0], q[1])
		}
		out = append(out, d)
	}
	return out
}

// textOf is what a row shows as a number or as over limit, "" for neither.
func textOf(r *ocr.Row) (text string, v unit.Decimal, shows Shows) {
	if r == nil || len(r.Places) == 0 {
		return "", v, ""
	}
	text = r.Text()
	bare := strings.NewReplacer(".", "", "-", "").Replace(text)
	if bare == "0L" {
		return "OL", v, Over
	}
	v, err := unit.ParseDecimal(text)
	if err != nil {
		return text, unit.Decimal{}, ""
	}
	return text, v, Number
}

// byHand reads the row with the hand-written reader, as dark digits and as light ones, and returns the better; nil when neither is one.
func (r *Reader) byHand(n int, l *ocr.Line) *Reading {
	var best *Reading
	top := 0.0
	for _, light := range [2]bool{false, true} {
		rd, score := r.readLine(n, line{x0: l.X0, y0: l.Y0, h0: l.H, x1: l.X1, y1: l.Y1, h1: l.H, light: light})
		if rd != nil && (best == nil || score > top) {
			best, top = rd, score
		}
	}
	return best
}

// pyramid prepares the sizes of the picture that the hand-written reader works on, and returns how many there are.
func (r *Reader) pyramid(p *Plane) int {
	f := 1
	for max(p.W, p.H)/f > 1400 {
		f++
	}
	r.scale = float64(f)
	r.pyr[0].reduce(p, f)
	n := 1
	for n < len(r.pyr) && min(r.pyr[n-1].w, r.pyr[n-1].h) >= 32 {
		r.pyr[n].half(&r.pyr[n-1])
		n++
	}
	return n
}
