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

// Surprise is the surprise of entry i of the history, in bits: -log2 of the chance of its outcome given the entries before.
func (b *Belief) Surprise(i int) float64 { return b.items[i].bits }

// Answered reports the checks that were answered with more than silence, in the order of their first answers.
func (b *Belief) Answered(dst []int) []int {
	dst = dst[:0]
next:
	for i := range b.items {
		if len(b.items[i].parts) == 0 {
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

// Outcome is the planning outcome of the last answer to a check, -1 when there is none.
func (b *Belief) Outcome(check int) int {
	for i := len(b.items) - 1; i >= 0; i-- {
		if b.items[i].check == check && len(b.items[i].parts) > 0 {
			return b.items[i].bin
		}
	}
	return -1
}

// Without fills dst with the probability of each hypothesis if no answer to the check had been given. The power cycles and
// repairs are taken as they were. dst has one entry per hypothesis.
func (b *Belief) Without(check int, dst []float64) {
	class := b.p.Checks[check].Class
	n := len(b.p.Checks[check].Bins)
	undo := &b.like
	for k := range n + 1 {
		undo[k] = 1
	}
	for i := range b.items {
		if it := &b.items[i]; it.what == answered && it.check == check {
			for k, x := range it.log {
				undo[k] *= math.Exp(-x)
			}
		}
	}
	undo[Broad] = undo[n]
	sum := 0.0
	for h := range dst {
		w := b.world[h]
		if w >= 0 && b.prob[h] > 1e-250 && b.mends == 0 {
			dst[h] = b.prob[h] * undo[class[w]]
		} else {
			dst[h] = math.Exp(b.weight(h, check) - b.logZ)
		}
		sum += dst[h]
	}
	if !(sum > 0) || math.IsInf(sum, 1) {
		b.fromLogs(dst, check)
		return
	}
	for h := range dst {
		dst[h] /= sum
	}
}

// Blame weighs the outcome of one check against all other answers. scratch has one entry per hypothesis.
func (b *Belief) Blame(check int, scratch []float64) Blame {
	out := Blame{Check: check, P: 1, Best: 1}
	bin := b.Outcome(check)
	if bin < 0 {
		return out
	}
	out.Wrong = b.Wrong(check)
	b.Without(check, scratch)
	out.Best = 0
	b.masses(check, scratch, check)
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
	var log []float64
	for i := range b.items {
		if it := &b.items[i]; it.what == answered && it.check == check && len(it.log) > 0 {
			log = it.log
		}
	}
	b.masses(check, b.prob, -1)
	n := len(b.p.Checks[check].Bins)
	sum := 0.0
	for k := range n {
		mass := b.mass[k] + b.mass[Broad]*b.p.broad[check][k]*math.Exp(log[k]-log[n])
		sum += mass * (1 - b.cause[b.start[check]+k][measure.Sound])
	}
	return sum
}

// Conflict measures how badly the answers fit together. It counts the last outcome of each check.
func (b *Belief) Conflict() Conflict {
	var c Conflict
	prior := make([]float64, len(b.p.Hyps))
	for h := range prior {
		prior[h] = b.p.Hyps[h].Prior
	}
	for i := range b.items {
		it := &b.items[i]
		if len(it.log) == 0 || it.bin < 0 {
			continue
		}
		c.Alone = append(c.Alone, it.bits)
		b.masses(it.check, prior, it.check)
		c.Bits += it.bits + math.Log2(b.outcome(it.check, it.bin))
	}
	return c
}
