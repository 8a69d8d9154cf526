package plan

import (
	"math"
	"slices"
)

// frame is the small model a decision is searched in: the hypotheses that hold nearly all of the probability, the repairs that
// end them, and the checks worth a look. Weights are joint probabilities and never normalised: every value here is an
// expectation over the whole job, so a branch's value is already weighed by its chance.
type frame struct {
	n       int
	singles int       // the first so many hypotheses need one decision each
	root    []float64 // weight of each hypothesis now
	needs   [][3]int16
	repair  []float64 // cost per decision
	perCost []float64 // 1 / repair
	call    float64
	tests   []test
	pr      *prices

	// Search.
	limits  Limits
	nodes   int
	weights [][]float64 // one belief per depth
	depth   int
	keys    []uint64  // decisions by falling probability per cost
	alone   []float64 // per decision
	mass    []float64 // per decision
	ended   []float64 // per rank
	cum     []float64 // per rank
	rank    []int16   // per decision
	memo    memo
	cut     float64 // branches lighter than this are closed with the repair-only value
}

type test struct {
	id       int // index in the problem
	outcomes int
	like     []float64 // outcome major
	cost     float64
	check    *Check
}

// state is where a search is: which checks of the frame are used, which repairs are done, how the site stands.
type state struct {
	used uint64
	done [2]uint64
	site Site
	key  uint64 // identifies the evidence, whatever its order
}

func (s *state) isDone(d int16) bool { return s.done[d>>6]>>(d&63)&1 != 0 }

func (s state) fix(d int16) state {
	s.done[d>>6] |= 1 << (d & 63)
	s.key ^= mark(0xfeed, int(d), 0)
	return s
}

func (f *frame) answer(s state, t, o int) (state, float64) {
	cost, site := f.pr.reach(s.site, f.tests[t].check)
	s.site = site
	s.used |= 1 << t
	s.key ^= mark(0xcafe, t, o+1)
	return s, cost + f.tests[t].cost
}

// mark is a fixed pseudo-random number for a piece of evidence (splitmix64); the key of a state is their exclusive or.
func mark(kind uint64, a, b int) uint64 {
	z := kind<<40 ^ uint64(a)<<16 ^ uint64(b)
	z += 0x9e3779b97f4a7c15
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

func (s *state) hash() uint64 {
	h := s.key ^ s.site.Open*0x9e3779b97f4a7c15
	return h ^ (uint64(s.site.Power)<<8|uint64(s.site.Tool))*0xd1342543de82ef95
}

// action is what a search chose: a test of the frame (0 and up), the repair ^action, or one of these.
type action int

const (
	callHelp action = math.MinInt + iota
	nothing         // nothing left to do
)

func (a action) isTest() bool { return a >= 0 }

// repairOnly is the expected cost of repairing by falling probability per cost, each repair proved at once, with a call for help
// at the best moment; and the first step of that. For single faults the order is optimal (Kadane & Simon 1977; with a
// call for help, Lin 2015); a fault of two parts ends with the later of its repairs.
func (f *frame) repairOnly(w []float64, s *state) (float64, action) {
	f.nodes++
	some := s.done != [2]uint64{}
	alone := f.alone // per decision: weight of what it ends by itself
	clear(alone)
	singles, many := w[:f.singles], w[f.singles:]
	for h, x := range singles {
		alone[f.needs[h][0]] += x
	}
	if some {
		for d := range alone {
			if s.isDone(int16(d)) {
				alone[d] = 0
			}
		}
	}
	mass := f.mass // per decision: weight of everything it is needed for
	copy(mass, alone)
	total := total(alone)
	for i, x := range many {
		if x == 0 {
			continue
		}
		open := false
		for _, d := range f.needs[f.singles+i] {
			if d >= 0 && !(some && s.isDone(d)) {
				mass[d] += x
				open = true
			}
		}
		if open {
			total += x
		}
	}
	if total == 0 {
		return 0, nothing
	}
	// Positive floats sort like their bits; the last byte makes room for the decision, so that ties go to the lower one.
	keys := f.keys[:0]
	for d, m := range mass {
		if m > 0 {
			keys = append(keys, (^math.Float64bits(m*f.perCost[d]))&^0xff|uint64(d))
		}
	}
	slices.Sort(keys)
	f.keys = keys
	ended := f.ended[:len(keys)]
	sum := 0.0
	for i, k := range keys {
		d := int16(k & 0xff)
		sum += f.repair[d]
		f.rank[d], f.cum[i], ended[i] = int16(i), sum, alone[d]
	}
	for i, x := range many {
		if x == 0 {
			continue
		}
		last := int16(-1)
		for _, d := range f.needs[f.singles+i] {
			if d >= 0 && !(some && s.isDone(d)) {
				last = max(last, f.rank[d])
			}
		}
		if last >= 0 {
			ended[last] += x
		}
	}
	best, first := total*f.call, callHelp
	paid, left := 0.0, total
	for i := range keys {
		paid += ended[i] * f.cum[i]
		left -= ended[i]
		v := paid
		if left > 1e-15*total {
			v += left * (f.cum[i] + f.call)
		}
		if v < best {
			best, first = v, ^action(keys[0]&0xff)
		}
	}
	return best, first
}

// after fills the next belief with what is left when a repair did not help, and returns it.
func (f *frame) after(w []float64, s *state) []float64 {
	next := f.push()
	for h, x := range w {
		open := false
		for _, d := range f.needs[h] {
			if d >= 0 && !s.isDone(d) {
				open = true
			}
		}
		if open {
			next[h] = x
		} else {
			next[h] = 0
		}
	}
	return next
}

func (f *frame) push() []float64 {
	if f.depth == len(f.weights) {
		f.weights = append(f.weights, make([]float64, cap(f.root)))
	}
	w := f.weights[f.depth]
	if cap(w) < f.n {
		w = make([]float64, cap(f.root))
		f.weights[f.depth] = w
	}
	f.depth++
	return w[:f.n]
}

func (f *frame) pop() { f.depth-- }

func total(w []float64) float64 {
	sum := 0.0
	for _, x := range w {
		sum += x
	}
	return sum
}

// ask is the cost of a test and of what follows it, with follow as the value of a belief.
func (f *frame) ask(w []float64, s state, t int, mass float64, follow func(w []float64, s state) float64) float64 {
	ts := &f.tests[t]
	v := 0.0
	for o := range ts.outcomes {
		next := f.push()
		like := ts.like[o*f.n : (o+1)*f.n]
		any := 0.0
		for h, x := range w {
			y := x * like[h]
			next[h] = y
			any += y
		}
		ns, cost := f.answer(s, t, o)
		if o == 0 {
			v += mass * cost
		}
		if any > 0 {
			v += follow(next, ns)
		}
		f.pop()
	}
	return v
}

// ahead is the expected cost with so many steps of free choice before the repair-only plan, and the first action.
func (f *frame) ahead(w []float64, s state, steps int) (float64, action) {
	best, act := f.repairOnly(w, &s)
	if steps == 0 || act == nothing || f.nodes > f.limits.Nodes {
		return best, act
	}
	var tries [3]int16
	k := 0
	if steps > 1 {
		for _, x := range f.keys[:min(len(f.keys), len(tries))] {
			tries[k] = int16(x & 0xff)
			k++
		}
	}
	mass := total(w)
	for t := range f.tests {
		if s.used>>t&1 != 0 {
			continue
		}
		v := f.ask(w, s, t, mass, func(w []float64, s state) float64 {
			x, _ := f.ahead(w, s, steps-1)
			return x
		})
		if v < best-1e-12*mass {
			best, act = v, action(t)
		}
	}
	for _, d := range tries[:k] {
		ns := s.fix(d)
		v := mass * f.repair[d]
		v2, _ := f.ahead(f.after(w, &ns), ns, steps-1)
		f.pop()
		if v+v2 < best-1e-12*mass {
			best, act = v+v2, ^action(d)
		}
	}
	return best, act
}

// follow is the expected cost of acting by so many steps of look-ahead, choosing anew after every answer, to the end of the job.
// Branches lighter than the cut are closed with the repair-only value, an upper bound.
func (f *frame) follow(w []float64, s state, steps int) float64 {
	h := s.hash()
	if v, ok := f.memo.get(h); ok {
		return v
	}
	v, act := f.ahead(w, s, steps)
	if f.nodes < f.limits.Nodes && total(w) > f.cut {
		switch {
		case act.isTest():
			v = min(v, f.ask(w, s, int(act), total(w), func(w []float64, s state) float64 { return f.follow(w, s, steps) }))
		case act != callHelp && act != nothing:
			d := int16(^act)
			ns := s.fix(d)
			x := f.follow(f.after(w, &ns), ns, steps)
			f.pop()
			v = min(v, total(w)*f.repair[d]+x)
		}
	}
	f.memo.put(h, v)
	return v
}

// scored is an action with its expected cost of the whole job.
type scored struct {
	act action
	v   float64
}

// rollout scores each of the given actions by following the policy of so many steps after it.
func (f *frame) rollout(w []float64, s state, steps int, acts []scored) {
	mass := total(w)
	for i := range acts {
		switch a := acts[i].act; {
		case a.isTest():
			acts[i].v = f.ask(w, s, int(a), mass, func(w []float64, s state) float64 { return f.follow(w, s, steps) })
		case a != callHelp && a != nothing:
			d := int16(^a)
			ns := s.fix(d)
			acts[i].v = mass*f.repair[d] + f.follow(f.after(w, &ns), ns, steps)
			f.pop()
		}
	}
}

// compare appends the actions open in a state with their expected costs, best first: the repair-only plan, every test and the
// next best repairs with one step of free choice after them, and the best of these followed to the end.
func (f *frame) compare(w []float64, s state, acts []scored) []scored {
	base, act := f.repairOnly(w, &s)
	var others [2]int16
	k := 0
	for _, x := range f.keys[:min(len(f.keys), 3)] {
		if d := int16(x & 0xff); ^action(d) != act && k < len(others) {
			others[k] = d
			k++
		}
	}
	acts = append(acts, scored{act, base})
	mass := total(w)
	for t := range f.tests {
		if s.used>>t&1 != 0 {
			continue
		}
		acts = append(acts, scored{action(t), f.ask(w, s, t, mass, func(w []float64, s state) float64 {
			x, _ := f.ahead(w, s, 1)
			return x
		})})
	}
	for _, d := range others[:k] {
		ns := s.fix(d)
		x, _ := f.ahead(f.after(w, &ns), ns, 1)
		f.pop()
		acts = append(acts, scored{^action(d), mass*f.repair[d] + x})
	}
	rank(acts)
	if f.limits.Root > 0 {
		top := acts[:min(len(acts), f.limits.Root)]
		f.rollout(w, s, f.limits.Steps, top)
		rank(top)
	}
	return acts
}

// rank sorts by value, then by the order in which the actions were given.
func rank(acts []scored) {
	slices.SortStableFunc(acts, func(a, b scored) int {
		switch {
		case a.v < b.v:
			return -1
		case a.v > b.v:
			return 1
		}
		return 0
	})
}

// memo is a table of fixed size from states to values. A colliding entry is replaced; a lookup compares the whole key.
type memo struct {
	keys []uint64
	vals []float64
	gen  []uint32
	now  uint32
}

func (m *memo) reset(size int) {
	if len(m.keys) == 0 {
		m.keys, m.vals, m.gen = make([]uint64, size), make([]float64, size), make([]uint32, size)
	}
	m.now++
	if m.now == 0 {
		clear(m.gen)
		m.now = 1
	}
}

func (m *memo) get(h uint64) (float64, bool) {
	i := h & uint64(len(m.keys)-1)
	return m.vals[i], m.gen[i] == m.now && m.keys[i] == h
}

func (m *memo) put(h uint64, v float64) {
	i := h & uint64(len(m.keys)-1)
	m.keys[i], m.vals[i], m.gen[i] = h, v, m.now
}
