package plan

import "readback/core/infer"

// doubtAt is the probability of having been spoiled from which an answer is asked again. Asking costs a minute, a wrong answer the
// rest of the job.
const doubtAt = 0.22

// doubt returns the check whose answer, in the light of all the others, was most likely spoiled, or -1 when none is worth asking
// again. An answer is doubted once.
func (p *Planner) doubt(b *infer.Belief, s *Situation) int {
	worst, most := -1, doubtAt
	for _, c := range p.asked {
		if s.Reasked != nil && s.Reasked[c] {
			continue
		}
		if x := b.Wrong(c); x > most {
			worst, most = c, x
		}
	}
	return worst
}

// otherMethod is how much of what asking again would tell another check must tell to be preferred.
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
