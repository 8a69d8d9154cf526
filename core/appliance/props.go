package appliance

import (
	"math"
	"strings"
)

// ask is a property that is asked of a part for the first time.
type ask struct {
	b       *builder
	i, line int
	name    string // part.property
	p       *Part
	k       *Kind
	u       *built
	slot    int32
}

// def says how the property follows from the state.
func (q *ask) def(fn func(*state) float64, deps ...int32) int32 { return q.b.define(q.slot, deps, fn) }

// lookup is the slot of a name in an expression: a word of the context, a signal, or part.property.
func (b *builder) lookup(name string, line int) int32 {
	if s, ok := b.byName[name]; ok {
		return s
	}
	if i, ok := b.signalIndex[name]; ok {
		s := b.named(name, 0)
		e := b.m.Signals[i].Is
		if e == nil {
			b.fail("signal %s follows from nothing", name)
			return s
		}
		fn, deps := b.expr(e)
		return b.define(s, deps, fn)
	}
	part, prop, ok := strings.Cut(name, ".")
	i, known := b.partIndex[part]
	if !ok || !known {
		b.fail("line %d: no signal %q", line, name)
		return b.named(name, 0)
	}
	return b.prop(i, prop, line)
}

// prop is the slot of a property of a part; its calculation is made when it is first asked for.
func (b *builder) prop(i int, prop string, line int) int32 {
	p, u := &b.m.Parts[i], &b.built[i]
	k := KindOf(p.Kind)
	name := p.ID + "." + prop
	if s, ok := b.byName[name]; ok {
		return s
	}
	for j, o := range p.Outputs {
		if o.ID == prop {
			return b.conducts(name, u.outs[j])
		}
	}
	for j, in := range p.Inputs {
		if in.ID == prop {
			return b.input(name, p, u, j)
		}
	}
	if prop == "ok" {
		return b.ok(name, p)
	}
	x := k.Prop(prop)
	if x == nil {
		if _, given := p.Params[prop]; !given && k.Param(prop) == nil {
			b.fail("line %d: part %s has no property %q", line, p.ID, prop)
		}
		return b.param(p, k, prop)
	}
	q := &ask{b: b, i: i, line: line, name: name, p: p, k: k, u: u, slot: b.named(name, 0)}
	if x.calc == nil {
		b.fail("line %d: kind %s has no property %q", line, k.Name, prop)
		return q.slot
	}
	if x.given != nil && !x.given(u) {
		b.fail("line %d: part %s has no property %q", line, p.ID, prop)
		return q.slot
	}
	return x.calc(q)
}

// ok is 1 while no mode of the part is set.
func (b *builder) ok(name string, p *Part) int32 {
	lo, modes := b.modeSlot, p.Modes
	return b.define(b.named(name, 0), nil, func(s *state) float64 {
		for _, m := range modes {
			if s.val[lo+int32(m)] > 0.5 {
				return 0
			}
		}
		return 1
	})
}

// spread is the relative half-width that a property takes from a parameter, 0 where it takes none.
func (b *builder) spread(part int, prop string) float64 {
	p := &b.m.Parts[part]
	k := KindOf(p.Kind)
	if x := k.Prop(prop); x != nil && x.Spread != "" {
		return b.tol[b.param(p, k, x.Spread)]
	}
	return 0
}

// Properties that several kinds have.
var (
	propAmps   = Prop{Name: "amps", Doc: "amperes through it", calc: ampsOfMain}
	propClosed = Prop{Name: "closed", Doc: "1 when closed", calc: func(q *ask) int32 { return q.b.conducts(q.name, q.u.main) }}
)

func ampsOfMain(q *ask) int32 {
	main := q.u.main
	return q.def(func(s *state) float64 { return math.Abs(s.current(main)) })
}

// voltsOfMain counts across the part, in the current that it works on.
func voltsOfMain(q *ask) int32 {
	main, dc := q.u.main, q.p.Words["current"] == "dc"
	return q.def(func(s *state) float64 { return s.across(main, dc) })
}

// hasBlown is 1 when the part opened for good, or a mode opened it.
func hasBlown(q *ask) int32 {
	latch, main := q.u.latch, q.u.main
	return q.def(func(s *state) float64 { return truth(s.val[latch] > 0.5 || s.c.force[main] < 0) })
}

// conducts is 1 while a branch is closed, whether by its gate or by a mode.
func (b *builder) conducts(name string, branch int) int32 {
	br := &b.branches[branch]
	gate, invert := br.gate, br.invert
	var deps []int32
	if gate >= 0 {
		deps = []int32{gate}
	}
	return b.define(b.named(name, 0), deps, func(s *state) float64 {
		switch f := s.c.force[branch]; {
		case f > 0:
			return 1
		case f < 0:
			return 0
		}
		return truth(gate < 0 || (s.val[gate] > 0.5) != invert)
	})
}

// amount is what a passage or a thing is worth: a parameter, and what an expression makes of it.
func (q *ask) amount(param, by string) int32 {
	b, u := q.b, q.u
	base, factor, off := b.param(q.p, q.k, param), u.factor, u.off
	more := func(*state) float64 { return 1 }
	var deps []int32
	if e := q.p.Exprs[by]; e != nil {
		more, deps = b.expr(e)
	}
	return q.def(func(s *state) float64 {
		if s.val[off] > 0.5 {
			return 0
		}
		return s.val[base] * s.val[factor] * more(s)
	}, deps...)
}
