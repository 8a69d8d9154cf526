package infer

import (
	"errors"
	"math"

	"readback/core/measure"
)

// Answer is what came back from a check.
type Answer struct {
	Check int
	// Parts is the likelihood of the answer per class of the check, split by cause. Nil is "don't know" or silence: an
	// answer that tells nothing, but is remembered.
	Parts []measure.Parts
	Bin   int // the planning outcome it falls into, -1 when it is none

	// For a check that was asked before: the chance of this answer if what spoiled the last answer works again, and if
	// both answers are sound. Zero Steady means that a sound answer is drawn anew.
	Again  float64
	Steady float64
}

// item is one entry of the history: an answer, or a new power cycle when check < 0.
type item struct {
	check, bin    int
	again, steady float64
	parts         []measure.Parts // owned
	log           []float64       // per class, Broad last: log-likelihood as it was counted, nil for silence
	bits          float64         // surprise when it came: -log2 of the chance of its outcome, given the answers before
}

// Belief is the state of one job. It is not safe for concurrent use.
type Belief struct {
	p     *Problem
	items []item
	free  []item // retired entries, kept for their storage

	base []float64 // per hypothesis: log prior and log-likelihood of the closed power cycles
	cur  []float64 // per world: log-likelihood of this cycle
	prob []float64 // per hypothesis: normalised
	logZ float64   // log-likelihood of all answers
	odds float64   // log of the smallest factor by which prob can have shrunk since it was taken from the logs

	world []int32         // per hypothesis: its only world, -1 when it has several
	like  []float64       // scratch, per class, and once more at Broad
	cause []measure.Parts // per check and class: which cause gave the last answer
	start []int           // first entry of each check in cause
	asked []bool
}

// New starts a job: nothing has been answered. The problem must have been prepared.
func New(p *Problem) *Belief {
	if p.broad == nil {
		panic("infer: problem not prepared")
	}
	b := &Belief{
		p:    p,
		base: make([]float64, len(p.Hyps)),
		cur:  make([]float64, p.Worlds),
		prob: make([]float64, len(p.Hyps)),
		like: make([]float64, Broad+1),

		start: make([]int, len(p.Checks)),
		asked: make([]bool, len(p.Checks)),
	}
	n := 0
	for i := range p.Checks {
		b.start[i] = n
		n += len(p.Checks[i].Bins)
	}
	b.cause = make([]measure.Parts, n)
	b.world = make([]int32, len(p.Hyps))
	for h := range p.Hyps {
		b.world[h] = -1
		if ph := p.Hyps[h].Phases; len(ph) == 1 {
			b.world[h] = int32(ph[0].World)
		}
	}
	b.reset()
	return b
}

// Problem returns what the belief is about.
func (b *Belief) Problem() *Problem { return b.p }

func (b *Belief) reset() {
	for i, h := range b.p.Hyps {
		b.base[i] = math.Log(h.Prior)
	}
	clear(b.cur)
	clear(b.asked)
	b.refresh()
}

// ErrImpossible is returned for an answer that no hypothesis allows.
var ErrImpossible = errors.New("infer: no hypothesis allows this answer")

// Observe takes an answer into account. The belief is unchanged when it returns an error.
func (b *Belief) Observe(a Answer) error {
	if a.Check < 0 || a.Check >= len(b.p.Checks) || (a.Parts != nil && len(a.Parts) != len(b.p.Checks[a.Check].Bins)) {
		panic("infer: answer does not fit the problem")
	}
	it := b.take()
	it.check, it.bin, it.again, it.steady = a.Check, a.Bin, a.Again, a.Steady
	it.parts = append(it.parts[:0], a.Parts...)
	possible := b.apply(&it)
	b.items = append(b.items, it)
	if !possible {
		b.Undo()
		return ErrImpossible
	}
	return nil
}

// take returns an entry to fill, from the retired ones if there are any.
func (b *Belief) take() item {
	n := len(b.free)
	if n == 0 {
		return item{}
	}
	it := b.free[n-1]
	b.free = b.free[:n-1]
	return it
}

// Cycle begins a new power cycle: intermittent faults draw anew.
func (b *Belief) Cycle() {
	it := b.take()
	it.check, it.parts, it.log = -1, it.parts[:0], it.log[:0]
	b.apply(&it)
	b.items = append(b.items, it)
}

// Len is how many answers and power cycles are counted.
func (b *Belief) Len() int { return len(b.items) }

// Undo forgets the last entry, to the last bit: what is left is counted again from the start.
func (b *Belief) Undo() {
	n := len(b.items)
	if n == 0 {
		return
	}
	b.free = append(b.free, b.items[n-1])
	b.items = b.items[:n-1]
	b.reset()
	for i := range b.items {
		b.apply(&b.items[i])
	}
}

// Clear forgets everything.
func (b *Belief) Clear() {
	b.free = append(b.free, b.items...)
	b.items = b.items[:0]
	b.reset()
}

// apply counts an entry. It returns false when no hypothesis is left.
func (b *Belief) apply(it *item) bool {
	if it.check < 0 {
		for i := range b.p.Hyps {
			b.base[i] = b.weight(i)
		}
		clear(b.cur)
		return true
	}
	it.log = it.log[:0]
	if len(it.parts) == 0 {
		it.bits = 0
		return true
	}
	it.bits = -math.Log2(b.Chance(it.check, it.bin))
	b.weigh(it)
	c := &b.p.Checks[it.check]
	n := len(c.Bins)
	like := b.like
	like[Broad] = like[n]
	for w, k := range c.Class {
		b.cur[w] += it.log[min(int(k), n)]
	}
	// The probabilities follow by one multiplication each. The logs hold the truth and take over before digits can be lost.
	most, least := like[0], like[0]
	for _, x := range like[1 : n+1] {
		most, least = max(most, x), min(least, x)
	}
	b.odds += math.Log(least / most)
	if !(b.odds > -500) {
		return b.refresh()
	}
	sum := 0.0
	for h, w := range b.world {
		if w >= 0 {
			b.prob[h] *= like[c.Class[w]]
		} else {
			b.prob[h] = math.Exp(b.weight(h) - b.logZ)
		}
		sum += b.prob[h]
	}
	inv := 1 / sum
	for h := range b.prob {
		b.prob[h] *= inv
	}
	b.logZ += math.Log(sum)
	return true
}

// weigh fills like and it.log with the likelihood of an answer per class, Broad last. The causes of repeated answers to one
// check form a chain: a cause either works again or everything is drawn anew.
func (b *Belief) weigh(it *item) {
	c := it.check
	n := len(b.p.Checks[c].Bins)
	cause := b.cause[b.start[c] : b.start[c]+n]
	broad := 0.0
	for k := range cause {
		now := it.parts[k]
		if b.asked[c] {
			last := cause[k]
			fresh := last[measure.Sound]
			for i := 1; i < int(measure.Causes); i++ {
				fresh += last[i] * (1 - measure.Persists[i])
			}
			sound := now[measure.Sound]
			for i := range now {
				now[i] *= fresh
				if i > 0 {
					now[i] += last[i] * measure.Persists[i] * it.again
				}
			}
			if it.steady > 0 {
				now[measure.Sound] = last[measure.Sound]*it.steady + (fresh-last[measure.Sound])*sound
			}
		}
		total := now.Total()
		if total > 0 {
			for i := range now {
				cause[k][i] = now[i] / total
			}
		} else {
			cause[k] = measure.Parts{measure.Sound: 1}
		}
		b.like[k] = total
		broad += b.p.broad[c][k] * total
	}
	b.like[n] = broad
	b.asked[c] = true
	for k := range n + 1 {
		it.log = append(it.log, math.Log(b.like[k]))
	}
}

// weight is the log of the joint probability of a hypothesis and all answers.
func (b *Belief) weight(h int) float64 {
	if w := b.world[h]; w >= 0 {
		return b.base[h] + b.cur[w]
	}
	ph := b.p.Hyps[h].Phases
	top := math.Inf(-1)
	for _, x := range ph {
		top = max(top, b.cur[x.World])
	}
	if math.IsInf(top, -1) {
		return top
	}
	sum := 0.0
	for _, x := range ph {
		sum += x.P * math.Exp(b.cur[x.World]-top)
	}
	return b.base[h] + top + math.Log(sum)
}

// refresh takes the probabilities from the logs. It returns false when no hypothesis is left.
func (b *Belief) refresh() bool {
	top := math.Inf(-1)
	for h := range b.prob {
		b.prob[h] = b.weight(h)
		top = max(top, b.prob[h])
	}
	if math.IsInf(top, -1) {
		return false
	}
	sum := 0.0
	for h := range b.prob {
		b.prob[h] = math.Exp(b.prob[h] - top)
		sum += b.prob[h]
	}
	for h := range b.prob {
		b.prob[h] /= sum
	}
	b.logZ = top + math.Log(sum)
	b.odds = 0
	return true
}

// Prob returns the probability of each hypothesis. The slice belongs to the belief and changes with the next answer.
func (b *Belief) Prob() []float64 { return b.prob }

// LogEvidence is the natural log of the probability of all answers so far.
func (b *Belief) LogEvidence() float64 { return b.logZ }

// Sort returns the probability of all hypotheses of one sort.
func (b *Belief) Sort(s Sort) float64 {
	sum := 0.0
	for h := range b.p.Hyps {
		if b.p.Hyps[h].Sort == s {
			sum += b.prob[h]
		}
	}
	return sum
}

// Need adds to dst, per repair group, the probability that the repair is needed. dst has one entry per group.
func (b *Belief) Need(dst []float64) {
	clear(dst)
	for h := range b.p.Hyps {
		for _, g := range b.p.Hyps[h].Groups {
			dst[g] += b.prob[h]
		}
	}
}

// Chance is the probability of planning outcome bin of a check, given the answers so far and the present power cycle. A bin
// below 0 has chance 1.
func (b *Belief) Chance(check, bin int) float64 {
	if bin < 0 {
		return 1
	}
	return b.chance(check, bin, b.prob)
}

func (b *Belief) chance(check, bin int, prob []float64) float64 {
	c := &b.p.Checks[check]
	n := len(c.Bins)
	col := b.like
	col[n] = 0
	for k := range c.Bins {
		col[k] = c.Bins[k][bin]
		col[n] += b.p.broad[check][k] * col[k]
	}
	col[Broad] = col[n]
	sum := 0.0
	for h, w := range b.world {
		if w >= 0 {
			sum += prob[h] * col[c.Class[w]]
		} else {
			sum += prob[h] * b.mixed(b.p.Hyps[h].Phases, c, col)
		}
	}
	return sum
}

// mixed is the expectation of col over the worlds of an intermittent hypothesis, by how well they fit this cycle.
func (b *Belief) mixed(ph []Phase, c *Check, col []float64) float64 {
	top := math.Inf(-1)
	for _, x := range ph {
		top = max(top, b.cur[x.World])
	}
	if math.IsInf(top, -1) {
		return 0
	}
	num, den := 0.0, 0.0
	for _, x := range ph {
		f := x.P * math.Exp(b.cur[x.World]-top)
		num += f * col[c.Class[x.World]]
		den += f
	}
	return num / den
}

// Outcomes fills dst with the chance of each planning outcome of a check under some hypotheses, in the present power cycle:
// outcome o under hyps[i] at dst[o*len(hyps)+i].
func (b *Belief) Outcomes(check int, hyps []int32, dst []float64) {
	c := &b.p.Checks[check]
	n := len(c.Bins)
	col := b.like
	for o := range c.Bins[0] {
		col[n] = 0
		for k := range c.Bins {
			col[k] = c.Bins[k][o]
			col[n] += b.p.broad[check][k] * col[k]
		}
		col[Broad] = col[n]
		row := dst[o*len(hyps) : (o+1)*len(hyps)]
		for i, h := range hyps {
			if w := b.world[h]; w >= 0 {
				row[i] = col[c.Class[w]]
			} else {
				row[i] = b.mixed(b.p.Hyps[h].Phases, c, col)
			}
		}
	}
}
