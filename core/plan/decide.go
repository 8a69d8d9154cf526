package plan

import (
	"math"
	"slices"

	"readback/core/infer"
)

// Kind of a decision.
type Kind uint8

const (
	Ask     Kind = iota // make Check: it lowers the expected cost
	Prove               // make Check: the verdict on Group lacks the proof it brings
	Reask               // make Check: the answer to Doubt does not fit the others
	Verdict             // do repair Group; a Free one may be an attempt: see P
	Nothing             // nothing is wrong, as far as can be known
	Help                // send for help: no check or repair is worth its cost, or the fault is not one the model knows
)

// Situation is what only the caller knows.
type Situation struct {
	Site Site
	// Allowed reports whether a check may be made and what more it costs now. It holds what must never be bought: safety.
	Allowed func(check int) (extra float64, ok bool)
	Silent  []bool // per check: asked without an answer that helped; not asked again. Nil when there is none
	Tried   []bool // per repair: done, and it did not help. Nil when there is none
	Firm    []bool // per check: answered twice alike, once in other words. Nil when there is none
	Reasked []bool // per check: its answer has been doubted once already. Nil when there is none
}

// Candidate is one thing that could be done next.
type Candidate struct {
	Check  int // -1 for a repair
	Group  int // -1 for a check; Problem.Groups for "nothing", one more for "unknown", as in Suspect
	Cost   float64
	Expect float64 // expected cost of the whole job from now on, this included
	Bits   float64 // expected information about the repair decision
}

// Suspect is a repair decision with its probability. Group Problem.Groups is "nothing is wrong", one more "something unknown".
type Suspect struct {
	Group int
	P     float64
}

// Decision is what to do next, and why. Its slices belong to the planner and are good until the next decision.
type Decision struct {
	Kind  Kind
	Check int  // Ask, Prove, Reask
	Group int  // Verdict, Prove; else -1
	Again bool // Prove: Check is a look that was answered already, and carries the verdict alone: it is asked once more in other words
	Hire  bool // Verdict: sending for help costs less than the repair
	Sure  bool // Verdict: probable enough, nothing missing, no single answer carries it
	Doubt int  // Reask: the check whose answer is doubted; else -1

	P        float64     // probability of the leading suspect; of Group for a Verdict
	Expect   float64     // expected cost of what is left
	Suspects []Suspect   // likeliest first
	Tried    []Candidate // the best candidates compared, best first; repairs included
	Missing  []*Proof    // proofs the leading suspect lacks
	Weak     []int       // answers that the verdict cannot do without
	Nodes    int
}

// Planner makes decisions for one task. It keeps its storage, so that a decision allocates nothing once it is warm.
// It is not safe for concurrent use.
type Planner struct {
	Limits  Limits
	Sure    float64 // a verdict needs this probability while any allowed check still tells something
	Try     float64 // a free repair that is not the likeliest is tried from this probability on
	task    *Task
	prices  prices
	frame   frame
	hyps    []int32
	open    []Candidate // checks that may be made now
	acts    []scored
	tried   []Candidate
	sus     []Suspect
	missing []*Proof
	weak    []int
	asked   []int
	prob    []float64 // per hypothesis
	share   []float64 // per hypothesis of the frame: chance of what about is asked about
	alive   []float64 // per hypothesis: probability without what tried repairs would have ended
	needs   [][3]int16
	done    []bool    // per group: mended, as needs has it
	need    []float64 // per decision
	groupOf []float64
}

// New makes a planner. The task must be valid.
func New(t *Task, w Weights, l Limits) (*Planner, error) {
	if err := t.Validate(); err != nil {
		return nil, err
	}
	p := &Planner{Limits: l, Sure: 0.95, Try: 0.25, task: t, prices: t.price(w)}
	d := t.Problem.Groups + 2
	n := min(l.Hyps, len(t.Problem.Hyps))
	p.hyps = make([]int32, 0, max(n, 1))
	p.frame = frame{
		root:  make([]float64, n),
		needs: make([][3]int16, 0, n),
		tests: make([]test, 0, 65), // 64 and the one being weighed
		keys:  make([]uint64, 0, d),
		alone: make([]float64, d),
		mass:  make([]float64, d),
		ended: make([]float64, d),
		cum:   make([]float64, d),
		rank:  make([]int16, d),
	}
	if d > 128 {
		return nil, errTooMany
	}
	p.prob, p.share = make([]float64, len(t.Problem.Hyps)), make([]float64, n)
	p.alive = make([]float64, len(t.Problem.Hyps))
	p.done = make([]bool, t.Problem.Groups)
	p.needs = make([][3]int16, len(t.Problem.Hyps))
	for h := range p.needs {
		p.needs[h] = needs(&t.Problem.Hyps[h], t.Problem.Groups, p.done)
	}
	p.need = make([]float64, d)
	p.groupOf = make([]float64, d)
	return p, nil
}

// Next decides what to do.
func (p *Planner) Next(b *infer.Belief, s Situation) Decision {
	d := Decision{Check: -1, Group: -1, Doubt: -1}
	p.mended(b)
	p.suspects(b, s.Tried)
	d.Suspects = p.sus
	lead := p.sus[0]
	d.P = lead.P
	st := p.begin(b, &s)
	p.score(b, &s, st)
	d.Nodes = p.frame.nodes

	if doubt, chance := p.doubt(b, &s); chance >= wonderAt {
		// A rare answer is dubious by itself. Something else is looked at first; what stays dubious is asked again.
		cross := -1
		if chance < doubtAt || b.Latest() == doubt {
			cross = p.cross(b, doubt)
		}
		if cross >= 0 {
			d.Kind, d.Check = Ask, cross
			return d
		}
		if chance >= doubtAt {
			if check := p.again(b, doubt, &s); check >= 0 {
				d.Kind, d.Check, d.Doubt = Reask, check, doubt
				return d
			}
			p.setFrame(b, b.Prob(), s.Tried) // it was looked at without that answer
		}
	}
	best := p.choose(b, &s, st)
	d.Nodes, d.Tried, d.Expect = p.frame.nodes, p.tried, best.Expect
	if best.Check >= 0 {
		d.Kind, d.Check = Ask, best.Check
		return d
	}
	// The cheapest plan is to stop asking. See whether that may be said.
	groups := p.task.Problem.Groups
	g := lead.Group
	if x := best.Group; x >= 0 && x < groups && p.task.Repairs[x].Free && p.need[x] >= p.Try {
		g = x // a free repair is tried before a likelier one
	}
	free := g < groups && p.task.Repairs[g].Free
	if !free {
		sure := p.Sure
		if g == groups && slices.Contains(p.done, true) {
			sure = afterRepair
		}
		if c := p.tell(sure, lead.P); c >= 0 {
			d.Kind, d.Check = Ask, c
			return d
		}
	}
	switch {
	case g == groups:
		d.Kind = Nothing
		return d
	case g > groups, best.Group < 0 && lead.P < p.Sure:
		d.Kind = Help
		return d
	}
	d.Kind, d.Group, d.Hire, d.P = Verdict, g, best.Group < 0, p.need[g]
	if free {
		return d
	}
	d.Missing, d.Weak = p.lacking(b, g), p.fragile(b, &s, g)
	if c := p.fetch(b, &s, g, d.Missing, d.Weak); c >= 0 {
		d.Kind, d.Check = Prove, c
		if len(d.Missing) == 0 && p.cheaper(&s, d.Weak[0], c) {
			d.Check, d.Again = d.Weak[0], true
		}
	}
	d.Sure = d.Kind == Verdict && d.P >= p.Sure && len(d.Missing)+len(d.Weak) == 0
	return d
}

// afterRepair is the probability from which nothing is wrong any more after a repair. Before the first answer the prior of a second
// fault alone would say so.
const afterRepair = 0.99

// suspects ranks the repair decisions. When everything known has been tried, what is left is unknown.
func (p *Planner) suspects(b *infer.Belief, tried []bool) {
	need := p.need
	clear(need)
	for h, x := range p.left(b.Prob(), tried) {
		if x == 0 {
			continue
		}
		for _, g := range p.needs[h] {
			if g >= 0 && !isTried(tried, g) {
				need[g] += x
			}
		}
	}
	p.sus = p.sus[:0]
	for g, x := range need {
		if x > 1e-6 {
			p.sus = append(p.sus, Suspect{g, x})
		}
	}
	if len(p.sus) == 0 {
		p.sus = append(p.sus, Suspect{len(need) - 1, 1})
	}
	for i := 1; i < len(p.sus); i++ {
		for j := i; j > 0 && p.sus[j-1].P < p.sus[j].P; j-- {
			p.sus[j-1], p.sus[j] = p.sus[j], p.sus[j-1]
		}
	}
}

// left is a belief without the faults that tried repairs would have ended, normalised; all zero when nothing is left.
func (p *Planner) left(prob []float64, tried []bool) []float64 {
	if !slices.Contains(tried, true) {
		return prob
	}
	sum := 0.0
	for h, x := range prob {
		if ended(p.needs[h], tried) {
			x = 0
		}
		p.alive[h] = x
		sum += x
	}
	if sum > 0 {
		for h := range p.alive {
			p.alive[h] /= sum
		}
	}
	return p.alive
}

// begin sets up the small model and lists the checks that may be made.
func (p *Planner) begin(b *infer.Belief, s *Situation) state {
	p.setFrame(b, b.Prob(), s.Tried)
	p.asked = b.Answered(p.asked)
	p.open = p.open[:0]
	for c := range p.task.Checks {
		if (s.Silent != nil && s.Silent[c]) || b.Asked(c) {
			continue
		}
		extra, ok := 0.0, true
		if s.Allowed != nil {
			extra, ok = s.Allowed(c)
		}
		if !ok {
			continue
		}
		reach, _ := p.prices.reach(s.Site, &p.task.Checks[c])
		p.open = append(p.open, Candidate{Check: c, Group: -1, Cost: p.prices.check[c] + extra + reach})
	}
	st := state{site: s.Site}
	if s.Tried != nil {
		for g, done := range s.Tried {
			if done {
				st = st.fix(int16(g))
			}
		}
	}
	return st
}

// score fills in the information of every open check, orders them by information per cost, and works out the one-step expected
// cost of the first of them; of the others it is +Inf. For a quick decision it stops at the first that pays.
func (p *Planner) score(b *infer.Belief, s *Situation, st state) {
	f := &p.frame
	for i := range p.open {
		c := &p.open[i]
		f.tests = f.tests[:0]
		c.Bits = p.bits(p.addTest(b, c.Check, 0))
		c.Expect = math.Inf(1)
	}
	slices.SortStableFunc(p.open, func(x, y Candidate) int {
		switch {
		case better(&x, &y):
			return -1
		case better(&y, &x):
			return 1
		}
		return 0
	})
	base, _ := f.repairOnly(f.root, &st)
	for i := range p.open[:min(len(p.open), p.Limits.Scored)] {
		c := &p.open[i]
		if c.Bits < 1e-6 {
			break
		}
		f.tests = f.tests[:0]
		t := p.addTest(b, c.Check, p.extra(s, c.Check))
		c.Expect = f.ask(f.root, st, t, 1, func(w []float64, s state) float64 {
			v, _ := f.repairOnly(w, &s)
			return v
		})
		if p.Limits.Tests == 0 && c.Expect < base-1e-12 {
			break
		}
	}
	f.tests = f.tests[:0]
}

func (p *Planner) extra(s *Situation, check int) float64 {
	if s.Allowed == nil {
		return 0
	}
	x, _ := s.Allowed(check)
	return x
}

// bits is the information of a test of the frame about the repair decision: I = Σ P(outcome, decision) log2 of how much more often
// they come together than by chance. A fault of several repairs counts for its first.
func (p *Planner) bits(t int) float64 {
	f := &p.frame
	ts := &f.tests[t]
	group := p.groupOf
	clear(group)
	for h, x := range f.root {
		group[f.needs[h][0]] += x
	}
	info := 0.0
	joint := f.mass
	for o := range ts.outcomes {
		like := ts.like[o*f.n : (o+1)*f.n]
		clear(joint)
		all := 0.0
		for h, x := range f.root {
			y := x * like[h]
			joint[f.needs[h][0]] += y
			all += y
		}
		for g, y := range joint {
			if y > 0 {
				info += y * log2(y/(group[g]*all))
			}
		}
	}
	return max(0, info)
}

// log2 is the binary logarithm of a positive number to a few parts in 10⁸, exact at 1: information is only compared.
func log2(x float64) float64 {
	b := math.Float64bits(x)
	e := float64(int(b>>52) - 1023)
	m := math.Float64frombits(b&(1<<52-1) | 1023<<52)
	if m > math.Sqrt2 {
		m, e = m/2, e+1
	}
	s := (m - 1) / (m + 1)
	q := s * s
	return e + 2/math.Ln2*s*(1+q*(1./3+q*(1./5+q*(1./7+q/9))))
}

// choose compares checks and repairs, as deeply as the limits allow, and returns the best.
func (p *Planner) choose(b *infer.Belief, s *Situation, st state) Candidate {
	f := &p.frame
	base, act := f.repairOnly(f.root, &st)
	p.tried = p.tried[:0]
	p.tried = append(p.tried, p.repairCandidate(act, base))
	p.acts = p.acts[:0]
	if p.Limits.Tests > 0 {
		p.pick(b, s)
		p.acts = f.compare(f.root, st, p.acts[:0])
		p.tried = p.tried[:0]
		for _, a := range p.acts[:min(len(p.acts), 6)] {
			if a.act.isTest() {
				c := p.candidate(f.tests[a.act].id)
				c.Expect = a.v
				p.tried = append(p.tried, c)
			} else {
				p.tried = append(p.tried, p.repairCandidate(a.act, a.v))
			}
		}
		return p.tried[0]
	}
	// One step: the check with the most information per cost among those that lower the expected cost.
	for i := range p.open {
		if p.open[i].Expect < base-1e-12 {
			p.tried = append(p.tried, p.tried[0])
			p.tried[0] = p.open[i]
			break
		}
	}
	return p.tried[0]
}

func better(a, b *Candidate) bool {
	return a.Bits*(b.Cost+1e-9) > b.Bits*(a.Cost+1e-9)
}

func (p *Planner) candidate(check int) Candidate {
	for _, c := range p.open {
		if c.Check == check {
			return c
		}
	}
	return Candidate{Check: check, Group: -1}
}

func (p *Planner) repairCandidate(a action, v float64) Candidate {
	c := Candidate{Check: -1, Group: -1, Expect: v}
	if a != callHelp && a != nothing {
		c.Group = ^int(a)
		c.Cost = p.prices.repair[c.Group]
	}
	return c
}

// pick puts the checks worth a deeper look into the frame: half by one-step cost, half by information per cost, so that a check
// that pays only together with its neighbours behind the same cover is not lost.
func (p *Planner) pick(b *infer.Belief, s *Situation) {
	f := &p.frame
	f.tests = f.tests[:0]
	limit := min(p.Limits.Tests, 64)
	for len(f.tests) < limit {
		best := -1
		even := len(f.tests)%2 == 0
		for i := range p.open {
			c := &p.open[i]
			if c.Bits < 1e-6 || p.inFrame(c.Check) {
				continue
			}
			if best < 0 || (even && c.Expect < p.open[best].Expect) || (!even && better(c, &p.open[best])) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		p.addTest(b, p.open[best].Check, p.extra(s, p.open[best].Check))
	}
	// Where there is room: checks that tell nothing of the decision alone, but something of what is wrong, and so perhaps together.
	for i := range p.open {
		c := &p.open[i]
		if len(f.tests) >= limit {
			return
		}
		if c.Bits < 1e-6 {
			if t := p.addTest(b, c.Check, p.extra(s, c.Check)); p.inside(t) < tellsBits {
				f.tests = f.tests[:t]
			}
		}
	}
}

// inside is the information of a test of the frame about the hypothesis, in bits.
func (p *Planner) inside(t int) float64 {
	f := &p.frame
	ts := &f.tests[t]
	info := 0.0
	for o := range ts.outcomes {
		like := ts.like[o*f.n : (o+1)*f.n]
		all := dot(f.root, like)
		for h, x := range f.root {
			if y := x * like[h]; y > 0 {
				info += y * log2(like[h]/all)
			}
		}
	}
	return info
}

func (p *Planner) inFrame(check int) bool {
	for i := range p.frame.tests {
		if p.frame.tests[i].id == check {
			return true
		}
	}
	return false
}

// tellsBits is the least information for which a verdict below Sure is put off.
const tellsBits = 0.02

// tell returns the open check that tells most per cost when the leading suspect is not sure enough, or -1.
func (p *Planner) tell(sure, lead float64) int {
	if lead >= sure {
		return -1
	}
	for i := range p.open { // in the order of information per cost
		if p.open[i].Bits >= tellsBits {
			return p.open[i].Check
		}
	}
	return -1
}

// Task returns what the planner works on.
func (p *Planner) Task() *Task { return p.task }
