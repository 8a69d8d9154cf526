package plan

import (
	"readback/core/infer"
)

// An answer is asked again when it was spoiled with probability doubtAt or more: asking costs a minute, a wrong answer the rest of the
// job. From wonderAt on, of the checks that are worth asking the one that says most about it comes first. Both are judgement, set on
// jobs drawn with other seeds than those that are reported.
const (
	doubtAt  = 0.34
	wonderAt = 0.07
)

// doubt returns the check whose answer, in the light of all the others, was most likely spoiled, and how likely; -1 when there is none
// that has not been doubted before.
func (p *Planner) doubt(b *infer.Belief, s *Situation) (check int, chance float64) {
	check = -1
	for _, c := range p.asked {
		if s.Reasked != nil && s.Reasked[c] {
			continue
		}
		if x := b.Wrong(c); x > chance {
			check, chance = c, x
		}
	}
	return check, chance
}

// cross returns the open check that says most, for its cost, about whether the answer to a check was spoiled, among those that tell
// something of the decision too; -1 when there is none.
func (p *Planner) cross(b *infer.Belief, doubt int) int {
	f := &p.frame
	p.share = p.share[:f.n]
	b.Spoilt(doubt, p.share)
	best, most := -1, 0.0
	for i := range p.open {
		c := &p.open[i]
		if c.Bits < tellsBits || p.sameMethod(c.Check, doubt) {
			continue
		}
		f.tests = f.tests[:0]
		info := p.about(p.addTest(b, c.Check, 0), p.share)
		if x := info / (c.Cost + 1); info > crossBits && x > most {
			best, most = c.Check, x
		}
	}
	return best
}

// crossBits is the least a check must tell about a dubious answer to be put first: judgement.
const crossBits = 0.05

// otherMethod is how much of what asking again would tell another check must tell to be preferred: judgement.
const otherMethod = 0.5

// again returns the check by which a doubted answer is best asked again: one by another method that tells nearly as much about
// what the answer should have been, else the check itself, else -1.
func (p *Planner) again(b *infer.Belief, doubt int, s *Situation) int {
	b.Without(doubt, p.prob)
	p.setFrame(b, p.prob, s.Tried)
	f := &p.frame
	f.tests = f.tests[:0]
	d := p.addTest(b, doubt, 0)
	self := p.between(d, d)
	best, most := -1, 0.0
	for i := range p.open {
		c := &p.open[i]
		if p.sameMethod(c.Check, doubt) {
			continue
		}
		f.tests = f.tests[:1]
		x := p.between(d, p.addTest(b, c.Check, 0))
		if x >= otherMethod*self && x/(c.Cost+1) > most {
			best, most = c.Check, x/(c.Cost+1)
		}
	}
	if best >= 0 {
		return best
	}
	if !p.task.Checks[doubt].Repeat {
		return -1
	}
	if s.Allowed != nil {
		if _, ok := s.Allowed(doubt); !ok {
			return -1
		}
	}
	return doubt
}

// between is the information two tests of the frame share, in bits.
func (p *Planner) between(a, b int) float64 {
	f := &p.frame
	ta, tb := &f.tests[a], &f.tests[b]
	info := 0.0
	for i := range ta.outcomes {
		la := ta.like[i*f.n : (i+1)*f.n]
		pa := dot(f.root, la)
		for j := range tb.outcomes {
			lb := tb.like[j*f.n : (j+1)*f.n]
			joint := 0.0
			for h, x := range f.root {
				joint += x * la[h] * lb[h]
			}
			info += part(joint, pa*dot(f.root, lb))
		}
	}
	return max(0, info)
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}
