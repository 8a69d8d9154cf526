package infer

import (
	"math"

	"readback/core/measure"
)

// Conflict is log2(∏ P(answer) / P(all answers)) in bits, with each answer weighed alone against the prior: above zero the
// answers agree less with each other than chance would have it (Jensen et al. 1990). It is the measure over the planning
// outcomes, so that the last digits of a reading do not count.
type Conflict struct {
	Bits  float64
	Alone []float64 // per answer, oldest first: its surprise given the answers before it, bits
}

// Blame is what leave-one-out says of one check's answers.
type Blame struct {
	Check int
	P     float64 // chance of the outcome given all other answers
	Best  float64 // chance of the likeliest outcome given all other answers
	Gain  float64 // bits of evidence that the likeliest outcome would add
	Wrong float64 // probability, given all answers, that the last one did not come from what was asked
}

// Answered reports the checks that were answered with more than silence, in the order of their first answers.
func (b *Belief) Answered(dst []int) []int {
	dst = dst[:0]
next:
	for i := range b.items {
		if !b.items[i].told() {
			continue
		}
		for _, c := range dst {
			if c == b.items[i].check {
				continue next
			}
		}
		dst = append(dst, b.items[i].check)
	}
	return dst
}

// Latest is the check that was answered last with more than silence, -1 when there is none.
func (b *Belief) Latest() int {
	for i := len(b.items) - 1; i >= 0; i-- {
		if b.items[i].told() {
			return b.items[i].check
		}
	}
	return -1
}

// Outcome is the planning outcome of the last answer to a check, -1 when there is none.
func (b *Belief) Outcome(check int) int {
	if it := b.last(check); it != nil {
		return it.bin
	}
	return -1
}

// Without fills dst with the probability of each hypothesis if no answer to the check had been given. The power cycles and
// repairs are taken as they were. dst has one entry per hypothesis.
func (b *Belief) Without(check int, dst []float64) {
	b.apart(check)
	for h := range dst {
		j := &b.away[h]
		dst[h] = j[0] + j[1] + j[2]
	}
}

// Blame weighs the outcome of one check against all other answers.
func (b *Belief) Blame(check int) Blame {
	out := Blame{Check: check, P: 1, Best: 1}
	bin := b.Outcome(check)
	if bin < 0 {
		return out
	}
	out.Wrong = b.Wrong(check)
	b.apart(check)
	b.masses(check, b.away, check)
	out.Best = 0
	for o := range b.p.Checks[check].Bins[0] {
		p := b.outcome(check, o)
		if o == bin {
			out.P = p
		}
		out.Best = max(out.Best, p)
	}
	out.Gain = math.Log2(out.Best / out.P)
	return out
}

// Wrong is the probability, given all answers, that the last answer to a check was spoiled, whatever spoiled it; 0 without one since
// the last repair.
func (b *Belief) Wrong(check int) float64 {
	if !b.asked[check] {
		return 0
	}
	last := b.last(check)
	b.now(check)
	n := len(b.p.Checks[check].Bins)
	sum := 0.0
	for g := range b.p.Habits {
		log := last.log[g]
		for k := range n {
			mass := b.mass[k][g] + b.mass[Broad][g]*b.p.broad[check][k]*math.Exp(log[k]-log[n])
			sum += mass * (1 - b.cause[g][b.start[check]+k][measure.Sound])
		}
	}
	return sum
}

// Spoilt fills dst with the probability that the last answer to a check was spoiled, under each hypothesis of Focus; 0 without one
// since the last repair.
func (b *Belief) Spoilt(check int, dst []float64) {
	clear(dst)
	if !b.asked[check] {
		return
	}
	class := b.p.Checks[check].Class
	log := b.last(check).log
	n := len(b.p.Checks[check].Bins)
	for g := range b.p.Habits {
		cause := b.cause[g][b.start[check] : b.start[check]+n]
		broad := 0.0
		for k := range cause {
			broad += b.p.broad[check][k] * math.Exp(log[g][k]-log[g][n]) * (1 - cause[k][measure.Sound])
		}
		for i, h := range b.hyps {
			w := b.world[h]
			if w < 0 { // the likeliest world will do
				w = b.severalOf(int(h)).world[len(b.p.Hyps[h].Phases)-1]
			}
			if k := class[w]; k == Broad {
				dst[i] += b.focus[i][g] * broad
			} else {
				dst[i] += b.focus[i][g] * (1 - cause[k][measure.Sound])
			}
		}
	}
}

// last is the last entry that answers a check with more than silence.
func (b *Belief) last(check int) *item {
	for i := len(b.items) - 1; i >= 0; i-- {
		if it := &b.items[i]; it.told() && it.check == check {
			return it
		}
	}
	return nil
}

// Conflict measures how badly the answers fit together. It counts the last outcome of each check. The history is gone through anew.
func (b *Belief) Conflict() Conflict {
	var c Conflict
	past := New(b.p)
	prior := make([]each, len(past.joint))
	copy(prior, past.joint)
	for i := range b.items {
		it := &b.items[i]
		switch {
		case it.what == cycled:
			past.Cycle()
		case it.what == mended:
			past.Mend(it.check)
		case it.told():
			if it.bin >= 0 {
				bits := -math.Log2(past.Chance(it.check, it.bin))
				b.masses(it.check, prior, it.check)
				c.Alone = append(c.Alone, bits)
				c.Bits += bits + math.Log2(b.outcome(it.check, it.bin))
			}
			if past.Observe(Answer{Check: it.check, Parts: it.parts, Bin: it.bin, Again: it.again, Steady: it.steady}) != nil {
				return c
			}
		}
	}
	return c
}
