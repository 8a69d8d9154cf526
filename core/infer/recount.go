package infer

import "math"

// What this file works out comes from the history alone: it is what the fast code must agree with, and what it falls back to before
// digits are lost.

// told tells whether an entry is an answer with more than silence.
func (it *item) told() bool { return it.what == answered && len(it.parts) > 0 }

// fold is the log weight of a hypothesis with several worlds for one habit, the present cycle included.
func (p *Problem) fold(s *several, g int) float64 {
	top := math.Inf(-1)
	for _, x := range s.cur[g] {
		top = max(top, x)
	}
	if math.IsInf(top, -1) {
		return top
	}
	sum := 0.0
	for j, ph := range p.Hyps[s.hyp].Phases {
		sum += ph.P * math.Exp(s.cur[g][j]-top)
	}
	return s.base[g] + top + math.Log(sum)
}

// weight is the log weight of a hypothesis with a habit, as if the answers to skip had never come (-1: all count).
func (b *Belief) weight(h, g, skip int) float64 {
	hyp := &b.p.Hyps[h]
	total := math.Log(b.p.Habits[g].P * hyp.Prior)
	for from := 0; from <= len(b.items); {
		to := from
		for to < len(b.items) && b.items[to].what != cycled {
			to++
		}
		cycle, top := 0.0, math.Inf(-1)
		var like [maxPhases]float64
		for j, ph := range hyp.Phases {
			like[j] = b.cycleLog(int32(ph.World), g, from, to, skip)
			top = max(top, like[j])
		}
		if math.IsInf(top, -1) {
			return top
		}
		for j, ph := range hyp.Phases {
			cycle += ph.P * math.Exp(like[j]-top)
		}
		total += top + math.Log(cycle)
		from = to + 1
	}
	return total
}

// cycleLog is the log-likelihood of the answers in items[from:to] in a world, given where the world stood at the start.
func (b *Belief) cycleLog(w int32, g, from, to, skip int) float64 {
	if b.mends > 0 {
		for i := range b.items[:from] {
			if b.items[i].what == mended {
				w = b.left[b.items[i].check][w]
			}
		}
	}
	sum := 0.0
	for i := from; i < to; i++ {
		it := &b.items[i]
		switch {
		case it.what == mended:
			w = b.left[it.check][w]
		case it.told() && it.check != skip:
			log := it.log[g]
			sum += log[min(int(b.p.Checks[it.check].Class[w]), len(log)-1)]
		}
	}
	return sum
}

// refresh takes the probabilities from the logs. It returns false when no hypothesis is left.
func (b *Belief) refresh() bool {
	top, sum := b.fromLogs(b.joint, -1)
	b.logZ, b.lost, b.stale = top, 0, true
	if math.IsInf(top, -1) {
		return false
	}
	b.logZ, b.scale = top+math.Log(sum), 1/sum
	for i := range b.several {
		b.divide(&b.several[i])
	}
	return true
}

// fromLogs fills dst with the joint probabilities without the answers to skip, all over the largest of them, whose log it returns, and
// their sum.
func (b *Belief) fromLogs(dst []each, skip int) (top, sum float64) {
	top = math.Inf(-1)
	for h := range dst {
		for g := range b.p.Habits {
			x := b.weight(h, g, skip)
			dst[h][g] = x
			top = max(top, x)
		}
	}
	if math.IsInf(top, -1) {
		return top, 0
	}
	for h := range dst {
		for g := range b.p.Habits {
			dst[h][g] = math.Exp(dst[h][g] - top)
			sum += dst[h][g]
		}
	}
	return top, sum
}

// apart fills away with the joint probabilities without the answers to a check, normalised.
func (b *Belief) apart(check int) {
	if b.away == nil {
		b.away = make([]each, len(b.p.Hyps))
	}
	class := b.p.Checks[check].Class
	n := len(b.p.Checks[check].Bins)
	undo := &b.like
	for g := range b.p.Habits {
		for k := range n + 1 {
			undo[k][g] = b.scale
		}
		for i := range b.items {
			if it := &b.items[i]; it.told() && it.check == check {
				for k, x := range it.log[g] {
					undo[k][g] *= math.Exp(-x)
				}
			}
		}
	}
	undo[Broad] = undo[n]
	sum := 0.0
	for h := range b.away {
		w := b.world[h]
		if w >= 0 && b.mends == 0 {
			l := &undo[class[w]]
			for g, x := range b.joint[h] {
				if x > 1e-250 {
					x *= l[g]
				} else if g < len(b.p.Habits) {
					x = math.Exp(b.weight(h, g, check) - b.logZ)
				}
				b.away[h][g] = x
				sum += x
			}
			continue
		}
		for g := range b.p.Habits {
			b.away[h][g] = math.Exp(b.weight(h, g, check) - b.logZ)
			sum += b.away[h][g]
		}
	}
	if !(sum > 0) || math.IsInf(sum, 1) {
		_, sum = b.fromLogs(b.away, check)
	}
	for h := range b.away {
		for g := range b.away[h] {
			b.away[h][g] /= sum
		}
	}
}
