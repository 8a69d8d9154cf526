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
	log           [][]float64     // per habit and class, Broad last: log-likelihood as it was counted, empty for silence
}

// several is a hypothesis with more than one world, and the state of its present power cycle.
type several struct {
	hyp   int
	world []int32            // per phase, as the repairs so far leave it
	cur   [][]float64        // per habit and phase: log-likelihood of this cycle
	part  []each             // per phase: its share of the joint probability
	base  [maxHabits]float64 // per habit: log prior and log-likelihood of the closed cycles
	kept  each               // its probability while it is set aside
}

// each is a figure for each kind of person; those that a problem does not have are 0.
type each [maxHabits]float64

// Belief is the state of one job. It is not safe for concurrent use.
type Belief struct {
	p     *Problem
	items []item
	free  []item // retired entries, kept for their storage

	world   []int32 // per hypothesis: its only world, as the repairs so far leave it, -1 when it has several
	plain   bool    // hypothesis and world have one number, but for those with several, which have some world of their number
	several []several
	joint   []each // per hypothesis: its probability together with each habit, times one over scale
	scale   float64
	prob    []float64 // per hypothesis: normalised, unless stale
	stale   bool
	logZ    float64 // log-likelihood of all answers
	lost    float64 // log of the most that any probability can have shrunk since it was last taken from the logs
	mends   int

	like  [Broad + 1]each   // scratch, per class
	mass  [Broad + 1]each   // scratch, per class
	cause [][]measure.Parts // per habit, per check and class: which cause gave the last answer
	start []int             // first entry of each check in the causes
	asked []bool
	fixed []bool    // per repair group
	left  [][]int32 // per repair group, once told of: the world that it leaves of each world
	focus []each    // per hypothesis that Focus named: share of each habit if the hypothesis is true
	hyps  []int32   // what Focus named
	away  []each    // scratch, per hypothesis
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
			s := several{hyp: h, world: make([]int32, len(ph)), part: make([]each, len(ph))}
			for range p.Habits {
				s.cur = append(s.cur, make([]float64, len(ph)))
			}
			b.several = append(b.several, s)
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
	b.joint = make([]each, len(p.Hyps))
	for range p.Habits {
		b.cause = append(b.cause, make([]measure.Parts, n))
	}
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
		for g, habit := range b.p.Habits {
			b.joint[h][g] = habit.P * b.p.Hyps[h].Prior
		}
	}
	for i := range b.several {
		s := &b.several[i]
		for j, ph := range b.p.Hyps[s.hyp].Phases {
			s.world[j] = int32(ph.World)
		}
		for g, habit := range b.p.Habits {
			s.base[g] = math.Log(habit.P * b.p.Hyps[s.hyp].Prior)
			clear(s.cur[g])
		}
		b.divide(s)
	}
	b.scale, b.stale = 1, true
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
	it.parts = it.parts[:0]
	for g := range it.log {
		it.log[g] = it.log[g][:0]
	}
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
			for g := range s.cur {
				s.base[g] = b.p.fold(s, g)
				clear(s.cur[g])
			}
			b.divide(s)
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
	for len(it.log) < len(b.p.Habits) {
		it.log = append(it.log, nil)
	}
	for g := range it.log {
		it.log[g] = it.log[g][:0]
	}
	if len(it.parts) == 0 {
		return true
	}
	class := b.p.Checks[it.check].Class
	n := len(b.p.Checks[it.check].Bins)
	most, least := 0.0, math.Inf(1)
	for g := range b.p.Habits {
		b.weigh(it, g)
		for k := range n + 1 {
			x := b.like[k][g]
			most, least = max(most, x), min(least, x)
			b.like[k][g] = x * b.scale
		}
		for i := range b.several {
			s := &b.several[i]
			for j, w := range s.world {
				s.cur[g][j] += it.log[g][min(int(class[w]), n)]
			}
		}
	}
	b.asked[it.check], b.stale = true, true
	b.like[Broad] = b.like[n]
	// The probabilities follow by one multiplication each. Before digits can be lost they are taken from the logs again.
	b.lost += math.Log(least / most)
	sum := b.multiply(class)
	for i := range b.several {
		s := &b.several[i]
		var all each
		for j, w := range s.world {
			p, l := &s.part[j], &b.like[class[w]]
			for g := range p {
				p[g] *= l[g]
				all[g] += p[g]
			}
		}
		b.joint[s.hyp] = all
		sum += all[0] + all[1] + all[2]
	}
	if !(sum > 0) || !(b.lost > -500) {
		return b.refresh()
	}
	b.logZ += math.Log(sum)
	b.scale = 1 / sum
	return true
}

// divide shares the joint probability of a hypothesis out among its worlds, by the answers of this cycle.
func (b *Belief) divide(s *several) {
	var share [maxPhases]float64
	for g := range b.p.Habits {
		b.shares(s, g, -1, share[:len(s.world)])
		for j := range s.part {
			s.part[j][g] = b.joint[s.hyp][g] * share[j]
		}
	}
}

// multiply takes the likelihoods in like into the joint probabilities of the hypotheses with one world, and returns their sum.
func (b *Belief) multiply(class []uint8) float64 {
	joint, like := b.joint, &b.like
	if b.plain && b.mends == 0 {
		for i := range b.several {
			joint[b.several[i].hyp] = each{}
		}
		class = class[:len(joint)]
		var a, b, c float64 // in registers
		for h, k := range class {
			j, l := &joint[h], &like[k]
			x, y, z := j[0]*l[0], j[1]*l[1], j[2]*l[2]
			j[0], j[1], j[2] = x, y, z
			a, b, c = a+x, b+y, c+z
		}
		return a + b + c
	}
	var sum each
	for h, w := range b.world {
		if w < 0 {
			continue
		}
		j, l := &joint[h], &like[class[w]]
		for g := range j {
			j[g] *= l[g]
			sum[g] += j[g]
		}
	}
	return sum[0] + sum[1] + sum[2]
}

// Habits fills dst with the probability of each kind of person.
func (b *Belief) Habits(dst []float64) {
	for g := range dst {
		dst[g] = 0
		for h := range b.joint {
			dst[g] += b.joint[h][g] * b.scale
		}
	}
}

// weigh fills like and log of one habit with the likelihood of an answer per class, Broad last. The causes of repeated answers to one
// check form a chain: a cause either works again or everything is drawn anew. Each class has its own chain, so a hypothesis
// whose prediction changed in between (another power cycle, a repair) is taken to have predicted the new class all along.
func (b *Belief) weigh(it *item, g int) {
	c := it.check
	n := len(b.p.Checks[c].Bins)
	cause := b.cause[g][b.start[c] : b.start[c]+n]
	odds := b.p.Habits[g].Odds
	broad := 0.0
	for k := range cause {
		now := it.parts[k]
		if rate := b.p.rate[c]; rate != nil && odds != 1 {
			scale := 1 / norm(rate[k], odds)
			for i := range now {
				if i > 0 {
					now[i] *= odds
				}
				now[i] *= scale
			}
		}
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
		b.like[k][g] = total
		broad += b.p.broad[c][k] * total
	}
	b.like[n][g] = broad
	for k := range n + 1 {
		it.log[g] = append(it.log[g], math.Log(b.like[k][g]))
	}
}

// Prob returns the probability of each hypothesis. The slice belongs to the belief and changes with the next answer.
func (b *Belief) Prob() []float64 {
	if b.stale {
		b.stale = false
		for h := range b.prob {
			j := &b.joint[h]
			b.prob[h] = (j[0] + j[1] + j[2]) * b.scale
		}
	}
	return b.prob
}

// LogEvidence is the natural log of the probability of all answers so far.
func (b *Belief) LogEvidence() float64 { return b.logZ }

// Sort returns the probability of all hypotheses of one sort.
func (b *Belief) Sort(s Sort) float64 {
	sum := 0.0
	for h, x := range b.Prob() {
		if b.p.Hyps[h].Sort == s {
			sum += x
		}
	}
	return sum
}

// masses fills mass with the probability, by joint, of each class of a check and each habit in the present power cycle, without
// regard to the answers to skip in the choice between the worlds of one hypothesis. It leaves joint as it was.
func (b *Belief) masses(check int, joint []each, skip int) {
	class := b.p.Checks[check].Class
	mass := &b.mass
	clear(mass[:])
	if b.plain && b.mends == 0 {
		for i := range b.several {
			s := &b.several[i]
			s.kept, joint[s.hyp] = joint[s.hyp], each{}
		}
		class := class[:len(joint)]
		for h, k := range class {
			j, m := &joint[h], &mass[k]
			m[0] += j[0]
			m[1] += j[1]
			m[2] += j[2]
		}
		for i := range b.several {
			s := &b.several[i]
			joint[s.hyp] = s.kept
		}
	} else {
		for h, w := range b.world {
			if w >= 0 {
				for g, x := range joint[h] {
					mass[class[w]][g] += x
				}
			}
		}
	}
	var share [maxPhases]float64
	for i := range b.several {
		s := &b.several[i]
		for g := range b.p.Habits {
			x := joint[s.hyp][g]
			if x == 0 {
				continue
			}
			b.shares(s, g, skip, share[:len(s.world)])
			for j, w := range s.world {
				mass[class[w]][g] += x * share[j]
			}
		}
	}
}

// now is masses as they stand, normalised.
func (b *Belief) now(check int) {
	b.masses(check, b.joint, -1)
	for k := range b.mass {
		for g := range b.mass[k] {
			b.mass[k][g] *= b.scale
		}
	}
}

// shares is the probability of each world of a hypothesis in this cycle, for one habit.
func (b *Belief) shares(s *several, g, skip int, dst []float64) {
	copy(dst, s.cur[g])
	if skip >= 0 {
		for i := len(b.items) - 1; i >= 0 && b.items[i].what != cycled; i-- {
			if it := &b.items[i]; it.told() && it.check == skip {
				for j, w := range s.world {
					dst[j] -= it.log[g][min(int(b.p.Checks[skip].Class[w]), len(it.log[g])-1)]
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
	n := len(b.p.Checks[check].Bins)
	for g := range b.p.Habits {
		rows := b.p.bins[g][check]
		for k, row := range rows[:n] {
			sum += b.mass[k][g] * row[bin]
		}
		sum += b.mass[Broad][g] * rows[n][bin]
	}
	return sum
}

// Chance is the probability of planning outcome bin of a check, given the answers so far and the present power cycle. A bin
// below 0 has chance 1.
func (b *Belief) Chance(check, bin int) float64 {
	if bin < 0 {
		return 1
	}
	b.now(check)
	return b.outcome(check, bin)
}

// Focus names the hypotheses that Outcomes is about, until the next call. The slice is kept.
func (b *Belief) Focus(hyps []int32) {
	b.hyps = hyps
	b.focus = b.focus[:0]
	for _, h := range hyps {
		j := b.joint[h]
		sum := j[0] + j[1] + j[2]
		for g := range j {
			if sum > 0 {
				j[g] /= sum
			} else if g < len(b.p.Habits) {
				j[g] = b.p.Habits[g].P
			}
		}
		b.focus = append(b.focus, j)
	}
}

// Outcomes fills dst with the chance of each planning outcome of a check under the hypotheses of Focus, in the present power cycle:
// outcome o under hypothesis i at dst[o*n+i], n of them.
func (b *Belief) Outcomes(check int, dst []float64) {
	c := &b.p.Checks[check]
	m, n := len(b.hyps), len(c.Bins)
	alike := b.p.rate[check] == nil || len(b.p.Habits) == 1
	var col [Broad + 1]each
	for o := range c.Bins[0] {
		for g := range b.p.Habits {
			for k := range n + 1 {
				col[k][g] = b.p.bins[g][check][k][o]
			}
		}
		col[Broad] = col[n]
		row := dst[o*m : (o+1)*m]
		for i, h := range b.hyps {
			w := b.world[h]
			if w < 0 {
				continue
			}
			l := &col[c.Class[w]]
			if alike {
				row[i] = l[0]
			} else {
				f := &b.focus[i]
				row[i] = f[0]*l[0] + f[1]*l[1] + f[2]*l[2]
			}
		}
	}
	if len(b.several) == 0 {
		return
	}
	var share [maxPhases]float64
	for i, h := range b.hyps {
		if b.world[h] >= 0 {
			continue
		}
		s := b.severalOf(int(h))
		for o := range c.Bins[0] {
			dst[o*m+i] = 0
		}
		for g := range b.p.Habits {
			b.shares(s, g, -1, share[:len(s.world)])
			for o := range c.Bins[0] {
				sum := 0.0
				for j, w := range s.world {
					sum += share[j] * b.p.bins[g][check][min(int(c.Class[w]), n)][o]
				}
				dst[o*m+i] += b.focus[i][g] * sum
			}
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
