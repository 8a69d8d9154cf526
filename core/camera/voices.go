package camera

import (
	"math"
	"strings"

	"readback/core/internal/ocr"
	"readback/core/unit"
)

// voices joins what the networks say, twice, and what the hand-written reader says of the same row. What they agree on is likelier than what one
// of them is sure of: the hand-written reader fails in other ways than the networks do.
func (r *Reader) voices(p *Plane) *Reading {
	k := r.nets.see(p, r.Aim)
	if k == nil {
		return &Reading{Reason: NoDisplay, At: -1, Frames: 1}
	}
	hand := r.byHand(r.pyramid(p), &k.line)
	if (hand == nil || !hand.OK()) && p.Colour() {
		// coloured digits on dark, such as red light-emitting ones, are dim in brightness and clear in their own colour
		r.pyr[0].reduceBrightest(p, int(r.scale))
		n := 1
		for n < len(r.pyr) && min(r.pyr[n-1].w, r.pyr[n-1].h) >= 32 {
			r.pyr[n].half(&r.pyr[n-1])
			n++
		}
		if again := r.byHand(n, &k.line); again != nil && (hand == nil || again.P > hand.P) {
			hand = again
		}
	}
	v := ballot{k: k, hand: hand}
	rd := v.count(p)
	if (rd.OK() || rd.Question()) && rd.Shows == Number && !strings.HasPrefix(rd.Text, "-") && r.nets.farSign(&k.line) {
		rd.P, rd.Reason = math.Min(rd.P, 0.5), SignUnsure
	}
	return rd
}

// farSign tells whether there may be a minus sign farther to the left than a row's own look reaches: some displays have a place of its own for it.
func (l *learned) farSign(row *ocr.Line) bool {
	far := *row
	n := math.Max(1, math.Hypot(far.X1-far.X0, far.Y1-far.Y0))
	ex, ey := (far.X1-far.X0)/n*far.H, (far.Y1-far.Y0)/n*far.H
	far.X0, far.Y0 = far.X0-farReach*ex, far.Y0-farReach*ey
	return l.nets.Read(&l.pic, &far).Minus > farDoubt
}

const (
	farReach = 1.8 // digit heights that are looked at to the left of the row, beside the 1.25 that every look has
	farDoubt = 0.1 // probability of a sign from which it is not left out
)

// ballot is what the voices say about one picture.
type ballot struct {
	k    *look
	hand *Reading
}

// agreement says which voices say the same.
type agreement int

const (
	alone    agreement = iota
	netOnly            // both looks of the networks, the hand-written reader says something else or nothing
	oneHand            // one look and the hand-written reader
	everyone           // all three
)

func (v *ballot) count(p *Plane) *Reading {
	first, again, hand := v.k.first, v.k.again, v.hand
	rd := &Reading{At: -1, Frames: 1, Digits: v.k.digits()}
	if hand != nil {
		rd.Light = hand.Light
	}
	t1, v1, s1 := textOf(first)
	t2, v2, s2 := textOf(again)
	th := ""
	if hand != nil && hand.Shows != "" {
		th = hand.Text
	}
	who := alone
	rd.Text, rd.Value, rd.Shows = t1, v1, s1
	switch {
	case s1 != "" && t1 == t2 && t1 == th:
		who = everyone
	case s1 != "" && t1 == t2:
		who, rd.Rival = netOnly, th
	case s1 != "" && t1 == th:
		who, rd.Rival = oneHand, t2
	case s2 != "" && t2 == th:
		who, rd.Rival = oneHand, t1
		rd.Text, rd.Value, rd.Shows = t2, v2, s2
		again, first = first, again
	default:
		rd.Rival = t2
	}
	if rd.Shows == "" {
		rd.Value, rd.Shows = unit.Decimal{}, Number
		rd.Reason = Unclear
	}
	if hand != nil && hand.Text == rd.Text && len(hand.Digits) == len(rd.Digits) { // its corners are the more exact ones
		for i := range rd.Digits {
			rd.Digits[i].Box = hand.Digits[i].Box
		}
	}
	rd.P = chance(who, again, first, hand, rd.Text)
	rd.RivalP = math.Min(1-rd.P, 0.5)
	for i := range rd.Digits {
		if rd.At < 0 || rd.Digits[i].P < rd.Digits[rd.At].P {
			rd.At = i
		}
	}
	switch {
	case len(rd.Digits) == 0:
		rd.Reason, rd.Shows, rd.Text = NoDisplay, "", ""
	case v.k.rival != nil:
		rd.Reason = twoRows
	case rd.Text == "1":
		rd.Reason = loneOne
	case rd.P >= tellFrom && rd.Reason == "":
	case rd.P >= askFrom && rd.Reason == "":
		rd.Reason = Likely
	default:
		rd.Reason = v.why(p)
	}
	return rd
}

// why is the likeliest cause of a reading that is not sure enough.
func (v *ballot) why(p *Plane) Reason {
	f, a := v.k.first, v.k.again
	l := &v.k.line
	margin := 0.25 * l.H
	edge := func(x, y float64) bool {
		return x < margin || y < margin || x > float64(p.W)-margin || y > float64(p.H)-margin
	}
	switch {
	case edge(l.X0, l.Y0) || edge(l.X1, l.Y1):
		return cutOff
	case strings.ContainsRune(f.Text(), '#'):
		return Covered
	case v.hand != nil && (v.hand.Reason == Faint || v.hand.Reason == Blurred || v.hand.Reason == Glare || v.hand.Reason == Changing):
		return v.hand.Reason
	case f.Minus > 0.1 && f.Minus < 0.9 || a != nil && (a.Minus > 0.5) != (f.Minus > 0.5):
		return SignUnsure
	case f.Blur > 0.1 || a != nil && strings.ReplaceAll(a.Text(), ".", "") == strings.ReplaceAll(f.Text(), ".", "") && a.Text() != f.Text():
		return pointUnsure
	case f.Start < 0.5 || f.End < 0.5 || f.Stray > 0.2:
		return EndUnsure
	}
	return Unclear
}

// chance is the probability that a whole reading is right: value, point and sign. Its weights were fitted by logistic regression on 325 drawings that
// nothing was trained on, half of them the older meters of core/lab/render (medium and hard), half odd seeds of core/lab/otherrender (every grade,
// what cannot be read and what has no display counted as wrong); in a five-fold check 126 of 187 agreeing readings lay above TellFrom, none wrong. The
// networks' own certainty adds little once the hand-written reader agrees.
func chance(who agreement, again *ocr.Row, first *ocr.Row, hand *Reading, text string) float64 {
	if who == alone || first == nil || first.Odd || strings.Count(text, ".") > 1 {
		return 0.3 // judgement: nobody agrees with it
	}
	net := bound(logit(first.P()), 6)
	switch who {
	case netOnly:
		more := 0.0
		if again != nil {
			more = bound(logit(again.P()), 6)
		}
		return math.Min(0.97, sigmoid(-0.53+0.02*net+0.56*more))
	case oneHand: // 18 of 18 were right: too few to tell it by itself
		return math.Min(0.99, sigmoid(2.2+0.02*net+0.3*bound(logit(hand.P), 6)))
	}
	x := -3.53 + 0.02*net + 1.33*bound(logit(hand.P), 6)
	if again != nil {
		x += 0.56 * bound(logit(again.P()), 6)
	}
	if hand.doubt {
		x -= 0.69
	}
	p := math.Min(0.9995, sigmoid(x))
	if !hand.OK() {
		p = math.Min(p, 0.99)
	}
	return p
}

// print is a small copy of a picture by which another one is known to be the same.
type print [printW * printH]byte

const printW, printH = 24, 18

func fingerprint(p *Plane) (out print) {
	for y := range printH {
		for x := range printW {
			i := (y*p.H+p.H/2)/printH*p.Stride + (x*p.W+p.W/2)/printW
			out[y*printW+x] = p.Y[i]
		}
	}
	return out
}
