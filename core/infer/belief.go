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

// what an entry of the history is.
type what uint8

const (
	answered what = iota
	cycled        // a new power cycle
	mended        // a repair was done
)

// item is one entry of the history.
type item struct {
	what          what
	check, bin    int // check: the repair group of a mended entry
	again, steady float64
	parts         []measure.Parts // owned
	log           []float64       // per class, Broad last: log-likelihood as it was counted, empty for silence
	bits          float64         // surprise when it came: -log2 of the chance of its outcome, given the answers before
}

// several is a hypothesis with more than one world, and the state of its present power cycle.
type several struct {
	hyp   int
	world []int32   // per phase, as the repairs so far leave it
	cur   []float64 // per phase: log-likelihood of this cycle
	base  float64   // log prior and log-likelihood of the closed cycles
	kept  float64   // its probability while it is set aside
}

// Belief is the state of one job. It is not safe for concurrent use.
type Belief struct {
	p     *Problem
	items []item
	free  []item // retired entries, kept for their storage

	world   []int32 // per hypothesis: its only world, as the repairs so far leave it, -1 when it has several
	plain   bool    // hypothesis and world have one number, but for those with several, which have some world of their number
	several []several
	prob    []float64 // per hypothesis: normalised
	logZ    float64   // log-likelihood of all answers
	lost    float64   // log of the most that any probability can have shrunk since it was last taken from the logs
	mends   int

	like  [Broad + 1]float64 // scratch, per class
	mass  [Broad + 1]float64 // scratch, per class
	cause []measure.Parts    // per check and class: which cause gave the last answer
	start []int              // first entry of each check in cause
	asked []bool
	fixed []bool    // per repair group
	left  [][]int32 // per repair group, once told of: the world that it leaves of each world
}

// New starts a job: nothing has been answered. The problem must have been prepared.
func New(p *Problem) *Belief {
	if p.broad == nil {
		panic("infer: problem not prepared")
	}
	b := &Belief{
		p:     p,
		world: make([]int32, len(p.Hyps)),
		prob:  make([]float64, len(p.Hyps)),
		start: make([]int, len(p.Checks)),
		asked: make([]bool, len(p.Checks)),
		fixed: make([]bool, p.Groups),
		left:  make([][]int32, p.Groups),
	}
	for h := range p.Hyps {
		if ph := p.Hyps[h].Phases; len(ph) > 1 {
			b.several = append(b.several, several{hyp: h, world: make([]int32, len(ph)), cur: make([]float64, len(ph))})
		}
	}
	b.plain = len(p.Hyps) <= p.Worlds
	for h := range p.Hyps {
		if ph := p.Hyps[h].Phases; len(ph) == 1 && ph[0].World != h {
			b.plain = false
		}
	}
	n := 0
	for i := range p.Checks {
		b.start[i] = n
		n += len(p.Checks[i].Bins)
	}
	b.cause = make([]measure.Parts, n)
	b.reset()
	return b
}

// Problem returns what the belief is about.
func (b *Belief) Problem() *Problem { return b.p }

func (b *Belief) reset() {
	for h := range b.p.Hyps {
		b.world[h] = -1
		if ph := b.p.Hyps[h].Phases; len(ph) == 1 {
			b.world[h] = int32(ph[0].World)
		}
		b.prob[h] = b.p.Hyps[h].Prior
	}
	for i := range b.several {
		s := &b.several[i]
		s.base = math.Log(b.p.Hyps[s.hyp].Prior)
		for j, ph := range b.p.Hyps[s.hyp].Phases {
			s.world[j], s.cur[j] = int32(ph.World), 0
		}
	}
	clear(b.asked)
	clear(b.fixed)
	b.logZ, b.lost, b.mends = 0, 0, 0
}

// ErrImpossible is returned for an answer that no hypothesis allows.
var ErrImpossible = errors.New("infer: no hypothesis allows this answer")

// Observe takes an answer into account. The belief is unchanged when it returns an error.
func (b *Belief) Observe(a Answer) error {
	if a.Check < 0 || a.Check >= len(b.p.Checks) || (a.Parts != nil && len(a.Parts) != len(b.p.Checks[a.Check].Bins)) {
		panic("infer: answer does not fit the problem")
	}
	it := b.take()
	it.what, it.check, it.bin, it.again, it.steady = answered, a.Check, a.Bin, a.Again, a.Steady
	it.parts = append(it.parts, a.Parts...)
	b.items = append(b.items, it)
	if !b.apply(&b.items[len(b.items)-1]) {
		b.Undo()
		return ErrImpossible
	}
	return nil
}

// Cycle begins a new power cycle: intermittent faults draw anew.
func (b *Belief) Cycle() {
	it := b.take()
	it.what, it.check = cycled, -1
	b.items = append(b.items, it)
	b.apply(&it)
}

// Mend tells that a repair was done. From here on its modes are gone, whatever the hypothesis; what was answered before stands.
func (b *Belief) Mend(group int) {
	if b.p.After == nil {
		panic("infer: the problem does not say what a repair leaves")
	}
	if b.left[group] == nil {
		b.left[group] = make([]int32, b.p.Worlds)
		for w := range b.left[group] {
			b.left[group][w] = b.p.After(int32(w), group)
		}
	}
	it := b.take()
	it.what, it.check = mended, group
	b.items = append(b.items, it)
	b.apply(&it)
}

// Asked reports whether a check was answered, with more than silence, since the last repair.
func (b *Belief) Asked(check int) bool { return b.asked[check] }

// Mended reports whether a repair was done.
func (b *Belief) Mended(group int) bool { return b.fixed[group] }

// take returns an empty entry, with the storage of a retired one if there is any.
func (b *Belief) take() item {
	n := len(b.free)
	if n == 0 {
		return item{}
	}
	it := b.free[n-1]
	b.free = b.free[:n-1]
	it.parts, it.log, it.bits = it.parts[:0], it.log[:0], 0
	return it
}

// Len is how many answers, power cycles and repairs are counted.
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
	switch it.what {
	case cycled:
		for i := range b.several {
			s := &b.several[i]
			s.base = b.p.fold(s)
			clear(s.cur)
		}
		return true
	case mended:
		b.mends++
		b.fixed[it.check] = true
		clear(b.asked) // the truth has changed: the next answer to a check need not be like the last
		for h, w := range b.world {
			if w >= 0 {
				b.world[h] = b.left[it.check][w]
			}
		}
		for i := range b.several {
			for j, w := range b.several[i].world {
				b.several[i].world[j] = b.left[it.check][w]
			}
		}
		return true
	}
	it.log = it.log[:0]
	if len(it.parts) == 0 {
		return true
	}
	c := &b.p.Checks[it.check]
	n := len(c.Bins)
	b.masses(it.check, b.prob, -1)
	if it.bin >= 0 {
		it.bits = -math.Log2(b.outcome(it.check, it.bin))
	}
	b.weigh(it)
	like := b.like[:]
	sum, most, least := b.mass[Broad]*like[n], like[n], like[n]
	for k, x := range like[:n] {
		sum += b.mass[k] * x
		most, least = max(most, x), min(least, x)
	}
	for i := range b.several {
		s := &b.several[i]
		for j, w := range s.world {
			s.cur[j] += it.log[min(int(c.Class[w]), n)]
		}
	}
	// The probabilities follow by one multiplication each. Before digits can be lost they are taken from the logs again.
	b.lost += math.Log(least / most)
	if !(sum > 0) || !(b.lost > -500) {
		return b.refresh()
	}
	b.logZ += math.Log(sum)
	inv := 1 / sum
	for k := range n + 1 {
		like[k] *= inv
	}
	like[Broad] = like[n]
	prob, class := b.prob, c.Class
	if b.plain && b.mends == 0 {
		class = class[:len(prob)]
		for h, k := range class {
			prob[h] *= b.like[k]
		}
	} else {
		for h, w := range b.world {
			if w >= 0 {
				prob[h] *= b.like[class[w]]
			}
		}
	}
	for i := range b.several {
		s := &b.several[i]
		prob[s.hyp] = math.Exp(b.p.fold(s) - b.logZ)
	}
	return true
}

// weigh fills like and it.log with the likelihood of an answer per class, Broad last. The causes of repeated answers to one
// check form a chain: a cause either works again or everything is drawn anew. Each class has its own chain, so a hypothesis
// whose prediction changed in between (another power cycle, a repair) is taken to have predicted the new class all along.
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

// fold is the log weight of a hypothesis with several worlds, the present cycle included.
func (p *Problem) fold(s *several) float64 {
	top := math.Inf(-1)
	for _, x := range s.cur {
		top = max(top, x)
	}
	if math.IsInf(top, -1) {
		return top
	}
	sum := 0.0
	for j, ph := range p.Hyps[s.hyp].Phases {
		sum += ph.P * math.Exp(s.cur[j]-top)
	}
	return s.base + top + math.Log(sum)
}

// weight is the log weight of a hypothesis, counted from the history, as if the answers to skip had never come (-1: all count).
func (b *Belief) weight(h, skip int) float64 {
	hyp := &b.p.Hyps[h]
	total := math.Log(hyp.Prior)
	for from := 0; from <= len(b.items); {
		to := from
		for to < len(b.items) && b.items[to].what != cycled {
			to++
		}
		cycle, top := 0.0, math.Inf(-1)
		var like [8]float64
		for j, ph := range hyp.Phases {
			like[j] = b.cycleLog(int32(ph.World), from, to, skip)
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
func (b *Belief) cycleLog(w int32, from, to, skip int) float64 {
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
		case len(it.log) > 0 && it.check != skip:
			sum += it.log[min(int(b.p.Checks[it.check].Class[w]), len(it.log)-1)]
		}
	}
	return sum
}

// refresh takes the probabilities from the logs. It returns false when no hypothesis is left.
func (b *Belief) refresh() bool {
	b.logZ = b.fromLogs(b.prob, -1)
	b.lost = 0
	return !math.IsInf(b.logZ, -1)
}

// fromLogs fills dst with the probabilities without the answers to skip, from the history, and returns the log evidence.
func (b *Belief) fromLogs(dst []float64, skip int) float64 {
	top := math.Inf(-1)
	for h := range dst {
		dst[h] = b.weight(h, skip)
		top = max(top, dst[h])
	}
	if math.IsInf(top, -1) {
		return top
	}
	sum := 0.0
	for h := range dst {
		dst[h] = math.Exp(dst[h] - top)
		sum += dst[h]
	}
	for h := range dst {
		dst[h] /= sum
	}
	return top + math.Log(sum)
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

// masses fills b.mass with the probability, by prob, of each class of a check in the present power cycle, without regard to
// the answers to skip in the choice between the worlds of one hypothesis.
func (b *Belief) masses(check int, prob []float64, skip int) {
	class := b.p.Checks[check].Class
	var even, odd [Broad + 1]float64 // two tables: a sum need not wait for the one before it
	if b.plain && b.mends == 0 {
		for i := range b.several {
			s := &b.several[i]
			s.kept, prob[s.hyp] = prob[s.hyp], 0
		}
		class := class[:len(prob)]
		for h := 1; h < len(class); h += 2 {
			even[class[h-1]] += prob[h-1]
			odd[class[h]] += prob[h]
		}
		if n := len(class); n&1 != 0 {
			even[class[n-1]] += prob[n-1]
		}
		for i := range b.several {
			s := &b.several[i]
			prob[s.hyp] = s.kept
		}
	} else {
		for h, w := range b.world {
			if w >= 0 {
				even[class[w]] += prob[h]
			}
		}
	}
	for k := range b.mass {
		b.mass[k] = even[k] + odd[k]
	}
	var share [8]float64
	for i := range b.several {
		s := &b.several[i]
		if prob[s.hyp] == 0 {
			continue
		}
		b.shares(s, skip, share[:len(s.cur)])
		for j, w := range s.world {
			b.mass[class[w]] += prob[s.hyp] * share[j]
		}
	}
}

// shares is the probability of each world of a hypothesis in this cycle.
func (b *Belief) shares(s *several, skip int, dst []float64) {
	copy(dst, s.cur)
	if skip >= 0 {
		for i := len(b.items) - 1; i >= 0 && b.items[i].what != cycled; i-- {
			if it := &b.items[i]; it.what == answered && it.check == skip && len(it.log) > 0 {
				for j, w := range s.world {
					dst[j] -= it.log[min(int(b.p.Checks[skip].Class[w]), len(it.log)-1)]
				}
			}
		}
	}
	top := math.Inf(-1)
	for _, x := range dst {
		top = max(top, x)
	}
	if math.IsInf(top, -1) || math.IsNaN(top) {
		for j, ph := range b.p.Hyps[s.hyp].Phases {
			dst[j] = ph.P
		}
		return
	}
	sum := 0.0
	for j, ph := range b.p.Hyps[s.hyp].Phases {
		dst[j] = ph.P * math.Exp(dst[j]-top)
		sum += dst[j]
	}
	for j := range dst {
		dst[j] /= sum
	}
}

// outcome is the probability of a planning outcome by the class masses.
func (b *Belief) outcome(check, bin int) float64 {
	sum := 0.0
	for k, row := range b.p.Checks[check].Bins {
		sum += (b.mass[k] + b.mass[Broad]*b.p.broad[check][k]) * row[bin]
	}
	return sum
}

// Chance is the probability of planning outcome bin of a check, given the answers so far and the present power cycle. A bin
// below 0 has chance 1.
func (b *Belief) Chance(check, bin int) float64 {
	if bin < 0 {
		return 1
	}
	b.masses(check, b.prob, -1)
	return b.outcome(check, bin)
}

// Outcomes fills dst with the chance of each planning outcome of a check under some hypotheses, in the present power cycle:
// outcome o under hyps[i] at dst[o*len(hyps)+i].
func (b *Belief) Outcomes(check int, hyps []int32, dst []float64) {
	c := &b.p.Checks[check]
	col := &b.like
	var share [8]float64
	for o := range c.Bins[0] {
		broad := 0.0
		for k := range c.Bins {
			col[k] = c.Bins[k][o]
			broad += b.p.broad[check][k] * col[k]
		}
		col[Broad] = broad
		row := dst[o*len(hyps) : (o+1)*len(hyps)]
		for i, h := range hyps {
			if w := b.world[h]; w >= 0 {
				row[i] = col[c.Class[w]]
			}
		}
	}
	if len(b.several) == 0 {
		return
	}
	for i, h := range hyps {
		if b.world[h] >= 0 {
			continue
		}
		s := b.severalOf(int(h))
		b.shares(s, -1, share[:len(s.cur)])
		for o := range c.Bins[0] {
			sum := 0.0
			for j, w := range s.world {
				sum += share[j] * b.p.Chance(check, int(w), o)
			}
			dst[o*len(hyps)+i] = sum
		}
	}
}

func (b *Belief) severalOf(h int) *several {
	lo, hi := 0, len(b.several)
	for lo < hi {
		mid := (lo + hi) / 2
		if b.several[mid].hyp < h {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return &b.several[lo]
}
