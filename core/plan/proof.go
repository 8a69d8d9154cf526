package plan

import (
	"errors"
	"math"
	"slices"

	"readback/core/infer"
)

var errTooMany = errors.New("plan: more than 126 repair decisions")

// Sign is an outcome that proves something: check Check came out as one of the planning outcomes in Bins.
type Sign struct {
	Check int
	Bins  uint64 // one bit per outcome
}

// Proof is one independent piece of evidence that a repair decision must stand on.
type Proof struct {
	Group int
	Mode  int      // the mode of the leading hypothesis it is asked for, -1 for any
	Kind  string   // input, output, load, connection, self
	Term  string   // what it proves: a term of the language's words
	Slots []string // its slots: pairs of slot name and value
	Any   []Sign   // one of them is enough
	// Waived are signs that leave nothing for it to change: a load that is open on the bench is changed, whatever its supply.
	Waived []Sign
}

// idle tells whether the proof would change nothing any more.
func (pr *Proof) idle(b *infer.Belief) bool { return met(pr.Waived, b) }

// Met tells whether the answers so far bring the proof.
func (pr *Proof) Met(b *infer.Belief) bool { return met(pr.Any, b) }

func met(signs []Sign, b *infer.Belief) bool {
	for _, s := range signs {
		if o := b.Outcome(s.Check); o >= 0 && s.Bins>>o&1 != 0 {
			return true
		}
	}
	return false
}

// of tells whether the proof is asked for when h is the leading hypothesis.
func (pr *Proof) of(group int, h *infer.Hyp) bool {
	if pr.Group != group || h == nil {
		return false
	}
	return pr.Mode < 0 || slices.Contains(h.Modes, pr.Mode)
}

// leader is the likeliest hypothesis that needs a repair, nil when there is none.
func (p *Planner) leader(b *infer.Belief, group int) *infer.Hyp {
	var best *infer.Hyp
	most := 0.0
	for i, x := range b.Prob() {
		if h := &p.task.Problem.Hyps[i]; x > most && slices.Contains(h.Groups, group) {
			best, most = h, x
		}
	}
	return best
}

// Proofs returns what a verdict on a repair decision stands on so far and what it still lacks.
func (p *Planner) Proofs(b *infer.Belief, group int) (have, missing []*Proof) {
	lead := p.leader(b, group)
	for i := range p.task.Proofs {
		if pr := &p.task.Proofs[i]; pr.of(group, lead) {
			if pr.Met(b) {
				have = append(have, pr)
			} else if !pr.idle(b) {
				missing = append(missing, pr)
			}
		}
	}
	return have, missing
}

func (p *Planner) lacking(b *infer.Belief, g int) []*Proof {
	p.missing = p.missing[:0]
	lead := p.leader(b, g)
	for i := range p.task.Proofs {
		if pr := &p.task.Proofs[i]; pr.of(g, lead) && !pr.Met(b) && !pr.idle(b) {
			p.missing = append(p.missing, pr)
		}
	}
	return p.missing
}

// needed is the probability, by prob, that a repair decision is needed.
func (p *Planner) needed(prob []float64, g int) float64 {
	sum := 0.0
	for h, x := range prob {
		if x > 0 && hasNeed(p.needs[h], g) {
			sum += x
		}
	}
	return sum
}

// holds is how likely a verdict must stay without any one of its answers.
const holds = 0.8

// fragile lists the checks without whose answers the verdict on g would fall: a verdict must survive the removal of any one.
func (p *Planner) fragile(b *infer.Belief, s *Situation, g int) []int {
	p.weak = p.weak[:0]
	p.asked = b.Answered(p.asked)
	for _, c := range p.asked {
		if s.Firm != nil && s.Firm[c] {
			continue // no single slip
		}
		b.Without(c, p.prob)
		if p.needed(p.left(p.prob, s.Tried), g) < holds {
			p.weak = append(p.weak, c)
		}
	}
	return p.weak
}

// fetch returns the open check that brings a missing proof or stands in for an answer the verdict cannot do without, or -1.
func (p *Planner) fetch(b *infer.Belief, s *Situation, g int, missing []*Proof, weak []int) int {
	best, cost := -1, 0.0
	for _, pr := range missing {
		for _, sg := range pr.Any {
			if c := p.opened(sg.Check); c != nil && (best < 0 || c.Cost < cost) {
				best, cost = c.Check, c.Cost
			}
		}
	}
	if best >= 0 || len(weak) == 0 {
		return best
	}
	// The check that tells most about g, for its cost, when the first weak answer is forgotten.
	b.Without(weak[0], p.prob)
	p.setFrame(b, p.prob, s.Tried)
	most := 0.0
	for i := range p.open {
		c := &p.open[i]
		if p.sameMethod(c.Check, weak[0]) {
			continue
		}
		p.frame.tests = p.frame.tests[:0]
		bits := p.bitsOf(p.addTest(b, c.Check, 0), g)
		if x := bits / (c.Cost + 1e-9); bits > tellsBits && x > most {
			best, most = c.Check, x
		}
	}
	return best
}

// cheaper tells whether it costs less to look once more at what carries a verdict than to make another check beside it.
func (p *Planner) cheaper(s *Situation, look, check int) bool {
	c := p.opened(check)
	k := &p.task.Checks[look]
	if c == nil || k.Tool != 0 || !k.Repeat {
		return false
	}
	reach, _ := p.prices.reach(s.Site, k)
	return p.prices.check[look]+reach < c.Cost
}

// sameMethod tells whether two checks go wrong together, so that one cannot stand in for the other.
func (p *Planner) sameMethod(a, b int) bool {
	m := p.task.Checks[a].Method
	return a == b || (m != 0 && m == p.task.Checks[b].Method)
}

// bitsOf is the information of a test of the frame about whether repair g is needed.
func (p *Planner) bitsOf(t, g int) float64 {
	f := &p.frame
	p.share = p.share[:f.n]
	for h := range p.share {
		p.share[h] = 0
		if hasNeed(f.needs[h], g) {
			p.share[h] = 1
		}
	}
	return max(0, p.about(t, p.share))
}

// about is the information of a test of the frame about something that is so with a probability of its own under each hypothesis, bits.
func (p *Planner) about(t int, so []float64) float64 {
	f := &p.frame
	ts := &f.tests[t]
	with := dot(f.root, so)
	info := 0.0
	for o := range ts.outcomes {
		like := ts.like[o*f.n : (o+1)*f.n]
		yes, all := 0.0, 0.0
		for h, x := range f.root {
			y := x * like[h]
			all += y
			yes += y * so[h]
		}
		info += part(yes, with*all) + part(all-yes, (1-with)*all)
	}
	return info
}

func part(joint, apart float64) float64 {
	if joint <= 0 || apart <= 0 {
		return 0
	}
	return joint * math.Log2(joint/apart)
}

func hasNeed(needs [3]int16, g int) bool {
	return int(needs[0]) == g || int(needs[1]) == g || int(needs[2]) == g
}

func (p *Planner) opened(check int) *Candidate {
	for i := range p.open {
		if p.open[i].Check == check {
			return &p.open[i]
		}
	}
	return nil
}
