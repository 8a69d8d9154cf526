package camera

import (
	"math"
	"strings"
)

// Vote joins the readings of several pictures of one display. Pictures that are the same picture count once: a stream that hangs agrees with
// itself. At least two different ones must agree. A picture that is sure of something else leaves a doubt, however many are against it: pictures
// of one scene are no independent witnesses. A last digit that is another one from picture to picture is a display that jumps.
func Vote(frames []*Reading) *Reading {
	var all []*Reading
	for _, f := range frames {
		if f == nil {
			continue
		}
		same := false
		for _, g := range all {
			same = same || f.print == g.print && f.print != (print{})
		}
		if !same {
			all = append(all, f)
		}
	}
	out := &Reading{Reason: NoDisplay, At: -1, Frames: len(frames)}
	count, sum := map[string]int{}, map[string]float64{}
	best, readable := "", 0
	for _, f := range all {
		if f.Reason != "" {
			out.Reason = f.Reason
		}
		if f.Shows == "" || f.Shows == Empty || len(f.Digits) == 0 {
			continue
		}
		readable++
		count[f.Text]++
		sum[f.Text] += bound(logit(f.P), 8)
		if best == "" || weightOf(count, sum, f.Text) > weightOf(count, sum, best) {
			best = f.Text
		}
	}
	if readable == 0 {
		return out
	}
	var pick *Reading
	for _, f := range all {
		if f.Text == best && f.Shows != "" && (pick == nil || f.P > pick.P) {
			pick = f
		}
	}
	c := *pick
	c.Frames = count[best]
	// pictures of one scene fail together: n of them weigh like a few
	c.P = sigmoid(sum[best]/float64(count[best]) + 0.8*math.Log(float64(count[best])))
	c.Rival, c.RivalP, c.Jumping = "", 0, jumping(all)
	sure := 0 // against it
	for _, f := range all {
		if f.Text == best || f.Shows == "" || f.Shows == Empty {
			continue
		}
		if f.P > c.RivalP {
			c.Rival, c.RivalP = f.Text, f.P
		}
		// a row is at times found too short; three that see more are right
		short := strings.Contains(best, f.Text) && !sameBut(best, f.Text, "-") && !sameBut(best, f.Text, ".") && count[best] >= 3
		if f.P >= 0.5 && !short {
			sure++
		}
	}
	switch {
	case c.Jumping:
		c.Reason = Changing
	case count[best] < 2:
		if c.Reason = pick.Reason; c.Reason == "" || c.Reason == Likely {
			c.Reason = Changing
		}
		if sure > 0 {
			c.Reason = Unclear
		}
	case sure > 0 && sameBut(best, c.Rival, "-"):
		c.Reason = SignUnsure
	case sure > 0 && sameBut(best, c.Rival, "."):
		c.Reason = pointUnsure
	case sure > 0 && strings.Contains(c.Rival, best):
		c.Reason = EndUnsure
	case sure > 0 || 3*count[best] < 2*readable:
		c.Reason = Unclear
		if len(count) > readable/2 && readable > 3 {
			c.Reason = Changing
		}
	case c.P >= tellFrom && pick.P >= askFrom && (pick.Reason == "" || pick.Reason == Likely):
		c.Reason = ""
	case c.P >= askFrom && (pick.Reason == "" || pick.Reason == Likely):
		c.Reason = Likely
	default:
		if c.Reason = pick.Reason; c.Reason == "" || c.Reason == Likely {
			c.Reason = Unclear
		}
	}
	return &c
}

func weightOf(count map[string]int, sum map[string]float64, text string) float64 {
	return sum[text]/math.Sqrt(float64(count[text])) + 3*float64(count[text])
}

// sameBut tells whether two texts differ in one mark only.
func sameBut(a, b, mark string) bool {
	return a != b && strings.ReplaceAll(a, mark, "") == strings.ReplaceAll(b, mark, "")
}

// jumping tells whether several pictures differ in their last digit and in nothing else.
func jumping(all []*Reading) bool {
	last := map[byte]int{}
	stem := ""
	n := 0
	for _, f := range all {
		if f.Shows != Number || f.P < 0.5 || len(f.Text) < 2 {
			continue
		}
		s := f.Text[:len(f.Text)-1]
		if n > 0 && s != stem {
			return false
		}
		stem = s
		last[f.Text[len(f.Text)-1]]++
		n++
	}
	return n >= 3 && len(last) >= 2
}

func bound(x, lim float64) float64 { return math.Max(-lim, math.Min(lim, x)) }

func logit(p float64) float64 {
	p = math.Max(1e-9, math.Min(1-1e-9, p))
	return math.Log(p / (1 - p))
}
