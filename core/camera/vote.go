package camera

import (
	"math"
	"strings"
)

// Vote joins the readings of several pictures of one display. Pictures taken while the number changed and pictures with
// another number of digits than most are left out; at least two must be left and agree, else the answer is Changing or Unclear; so it is where one of
// them sees a sign or a digit that the others do not.
func Vote(frames []*Reading) *Reading {
	counts := map[int]int{}
	most, total := 0, 0
	for _, f := range frames {
		if f == nil || len(f.Digits) == 0 {
			continue
		}
		total++
		n := len(f.Digits)
		counts[n]++
		if counts[n] > counts[most] || counts[n] == counts[most] && n > most { // a row is often found too short, rarely too long
			most = n
		}
	}
	if total == 0 {
		r := &Reading{Reason: NoDisplay, At: -1, Frames: len(frames)}
		for _, f := range frames {
			if f != nil && f.Reason != "" {
				r.Reason = f.Reason
			}
		}
		return r
	}
	var out *Reading
	used, doubts := 0, 0
	texts := map[string]int{}
	for _, f := range frames {
		if f == nil || len(f.Digits) != most || f.Reason == Changing {
			continue
		}
		used++
		texts[f.Text]++
		doubts += int(boolTo(f.doubt || f.speck && f.Shows == Number))
		if out == nil {
			c := *f
			c.Digits = append([]Digit(nil), f.Digits...)
			for i := range c.Digits {
				d := &c.Digits[i]
				for k := range d.seg {
					d.seg[k] = bound(d.seg[k], 6)
				}
				d.Dot = bound(logit(d.Dot), 6)
			}
			c.lead, c.minus = bound(logit(f.lead), 6), bound(f.minus, 6)
			out = &c
			continue
		}
		for i := range out.Digits {
			d, e := &out.Digits[i], &f.Digits[i]
			for k := range d.seg {
				d.seg[k] += bound(e.seg[k], 6)
			}
			d.Dot += bound(logit(e.Dot), 6)
			d.valid += e.valid
		}
		out.lead += bound(logit(f.lead), 6)
		out.minus += bound(f.minus, 6)
	}
	if out == nil {
		return &Reading{Reason: Changing, At: -1, Frames: len(frames)}
	}
	// pictures of one scene fail together: n of them weigh like the root of n
	k := 1 / math.Sqrt(float64(used))
	for i := range out.Digits {
		d := &out.Digits[i]
		for j := range d.seg {
			d.seg[j] *= k
		}
		d.Dot = sigmoid(d.Dot * k)
		d.valid /= float64(used)
		d.Glyph, d.P, d.Rival, d.RivalP = 0, 0, 0, 0
	}
	out.lead = sigmoid(out.lead * k)
	out.minus /= float64(used) // a mark that looks like a sign does so in every picture: more of them make it no surer
	out.doubt, out.speck = doubts*3 >= used, false
	out.settle()
	out.Frames = used
	agree := texts[out.Text]
	switch {
	case out.Reason != "":
	case out.Shows == Number && dissent(frames, func(f *Reading) bool {
		return len(f.Digits) == most && f.minus > 0 != (out.minus > 0) && (f.minus > 0 || f.OK())
	}):
		out.Reason = SignUnsure
	case dissent(frames, func(f *Reading) bool { return len(f.Digits) > most && strings.Contains(f.bare(), out.bare()) }):
		out.Reason = EndUnsure
	case agree < 2 || used*2 < total || agree*2 < used:
		out.Reason = Unclear
		if len(texts) > used/2 {
			out.Reason = Changing
		}
	}
	return out
}

// dissent tells whether any picture that is sure enough speaks against the vote. Pictures of one scene are no independent witnesses: however
// many lack a sign or a digit, one that sees it leaves a doubt.
func dissent(frames []*Reading, sees func(*Reading) bool) bool {
	for _, f := range frames {
		if f != nil && f.Reason != Changing && f.P > 0.5 && sees(f) {
			return true
		}
	}
	return false
}

// bare is what the digits show, without sign and point.
func (rd *Reading) bare() string {
	var b strings.Builder
	for i := range rd.Digits {
		b.WriteRune(rd.Digits[i].Glyph)
	}
	return b.String()
}

func bound(x, lim float64) float64 { return math.Max(-lim, math.Min(lim, x)) }

func logit(p float64) float64 {
	p = math.Max(1e-9, math.Min(1-1e-9, p))
	return math.Log(p / (1 - p))
}
