package plan

import (
	"readback/core/infer"
)

// Value is the expected cost of following the planner's choices to the end of the job, over every answer, worked out inside one
// small model: exactly what deciding anew after every answer costs, where the limits leave nothing out.
func (p *Planner) Value(b *infer.Belief, s Situation) float64 {
	p.suspects(b, s.Tried)
	st := p.begin(b, &s)
	p.score(b, &s, st)
	p.pick(b, &s)
	f := &p.frame
	memo := map[uint64]float64{}
	var value func(w []float64, s state) float64
	value = func(w []float64, s state) float64 {
		mass := total(w)
		if mass < 1e-12 {
			return 0
		}
		if v, ok := memo[s.hash()]; ok {
			return v
		}
		v := 0.0
		switch a := f.compare(w, s, nil)[0].act; {
		case a == nothing:
		case a == callHelp:
			v = mass * f.call
		case a.isTest():
			v = f.ask(w, s, int(a), mass, value)
		default:
			ns := s.fix(int16(^a))
			v = mass*f.repair[^a] + value(f.after(w, &ns), ns)
			f.pop()
		}
		memo[s.hash()] = v
		return v
	}
	return value(f.root, st)
}

// Bits is the information of each check about the repair decision.
func (p *Planner) Bits(b *infer.Belief) []float64 {
	out := make([]float64, len(p.task.Checks))
	p.setFrame(b, b.Prob(), nil)
	for c := range out {
		p.frame.tests = p.frame.tests[:0]
		out[c] = p.bits(p.addTest(b, c, 0))
	}
	return out
}

// OneStep is the expected cost of asking each check and then repairing by probability per cost.
func (p *Planner) OneStep(b *infer.Belief) []float64 {
	out := make([]float64, len(p.task.Checks))
	p.setFrame(b, b.Prob(), nil)
	f := &p.frame
	for c := range out {
		f.tests = f.tests[:0]
		out[c] = f.ask(f.root, state{}, p.addTest(b, c, 0), 1, func(w []float64, s state) float64 {
			v, _ := f.repairOnly(w, &s)
			return v
		})
	}
	return out
}

// RepairOnly is the expected cost of repairing by probability per cost.
func (p *Planner) RepairOnly(b *infer.Belief) float64 {
	p.setFrame(b, b.Prob(), nil)
	v, _ := p.frame.repairOnly(p.frame.root, &state{})
	return v
}
