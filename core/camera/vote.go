package camera

import "math"

// Vote joins the readings of several pictures of one display. Pictures taken while the number changed and pictures with
// another number of digits than most are left out; at least two must be left and agree, else the answer is Changing or Unclear.
func Vote(frames []*Reading) *Reading {
	counts := map[int]int{}
	most, total := 0, 0
	for _, f := range frames {
		if f == nil || len(f.Digits) == 0 {
			continue
		}
		total++
		if n := len(f.Digits); counts[n]+1 > counts[most] || counts[n]+1 == counts[most] && n < most {
			counts[n]++
			most = n
		} else {
			counts[n]++
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
			doubts += int(boolTo(f.doubt))
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
		doubts += int(boolTo(f.doubt))
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
	out.doubt = doubts*3 >= used
	out.settle()
	out.Frames = used
	agree := texts[out.Text]
	switch {
	case out.Reason != "":
	case agree < 2 || used*2 < total || agree*2 < used:
		out.Reason = Unclear
		if len(texts) > used/2 {
			out.Reason = Changing
		}
	}
	return out
}

func bound(x, lim float64) float64 { return math.Max(-lim, math.Min(lim, x)) }

func logit(p float64) float64 {
	p = math.Max(1e-9, math.Min(1-1e-9, p))
	return math.Log(p / (1 - p))
}
