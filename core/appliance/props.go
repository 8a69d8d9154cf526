package appliance

import (
	"math"
	"strings"
)

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
	isProp := prop == "ok"
	for _, x := range k.Props {
		isProp = isProp || x.Name == prop
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
	if !isProp {
		if _, given := p.Params[prop]; !given && k.Param(prop) == nil {
			b.fail("line %d: part %s has no property %q", line, p.ID, prop)
		}
		return b.param(p, k, prop)
	}
	s := b.named(name, 0)
	def := func(fn func(*state) float64, deps ...int32) int32 { return b.define(s, deps, fn) }
	main := u.main
	switch prop {
	case "ok":
		lo := b.modeSlot
		modes := p.Modes
		return def(func(s *state) float64 {
			for _, m := range modes {
				if s.val[lo+int32(m)] > 0.5 {
					return 0
				}
			}
			return 1
		})
	case "amps":
		return def(func(s *state) float64 { return math.Abs(s.current(main)) })
	case "volts_now":
		dc := p.Words["current"] == "dc"
		if k.Name == "transformer" {
			x, y := b.terminal(p, "s1"), b.terminal(p, "s2")
			return def(func(s *state) float64 { return math.Abs(s.volt(x) - s.volt(y)) })
		}
		return def(func(s *state) float64 { return s.across(main, dc) })
	case "blown", "tripped", "link_open":
		latch := u.latch
		if prop == "blown" {
			return def(func(s *state) float64 { return truth(s.val[latch] > 0.5 || s.c.force[main] < 0) })
		}
		if latch < 0 {
			return def(func(*state) float64 { return 0 })
		}
		if prop == "link_open" {
			return def(func(s *state) float64 { return truth(s.val[latch] > 0.5 || s.c.force[main] < 0) })
		}
		return def(func(s *state) float64 { return s.val[latch] })
	case "closed":
		if k.Name == "relay" {
			if u.other < 0 {
				return def(func(*state) float64 { return 0 })
			}
			return b.conducts(name, u.other)
		}
		return b.conducts(name, main)
	case "pulled":
		gate := u.gate
		return def(func(s *state) float64 { return s.val[gate] }, gate)
	case "works", "hums", "powered":
		return b.works(name, i, prop)
	case "healthy", "microfarads_now":
		value := b.param(p, k, "value")
		nominal, factor, off := b.init[value], u.factor, u.off
		if prop == "microfarads_now" {
			nominal = 1
		}
		return def(func(s *state) float64 {
			if s.val[off] > 0.5 {
				return 0
			}
			return s.val[factor] * s.val[value] / nominal
		})
	case "microamps_now":
		if k.Name == "board" {
			if u.other < 0 {
				b.fail("line %d: board %s has no flame input", line, p.ID)
				return s
			}
			other := u.other
			return def(func(s *state) float64 { return 1e6 * math.Abs(s.currentDC(other)) })
		}
		third := u.third
		return def(func(s *state) float64 { return 1e6 * math.Abs(s.currentDC(main)+s.currentDC(third)) })
	case "millivolts_now":
		return def(func(s *state) float64 { return 1e3 * s.across(main, true) })
	case "alive":
		alive := u.gate
		return def(func(s *state) float64 { return s.val[alive] }, alive)
	case "flame":
		return b.sees(name, i, line)
	case "passes":
		return b.amount(name, i, "clear", "when")
	case "value":
		return b.amount(name, i, "value", "is")
	}
	b.fail("line %d: kind %s has no property %q", line, k.Name, prop)
	return s
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

func (b *builder) input(name string, p *Part, u *built, j int) int32 {
	x, _, err := convert(p.Inputs[j].On, "V")
	if err != nil {
		b.fail("part %s: input %s: %w", p.ID, p.Inputs[j].ID, err)
	}
	var blind, stuck []int32
	for _, m := range p.Modes {
		if md := &b.m.Modes[m]; md.At == p.Inputs[j].ID {
			switch md.Does {
			case "input-blind":
				blind = append(blind, b.modeSlot+int32(m))
			case "input-stuck":
				stuck = append(stuck, b.modeSlot+int32(m))
			}
		}
	}
	branch := u.ins[j]
	return b.define(b.named(name, 0), nil, func(s *state) float64 {
		return truth(!s.any(blind) && (s.any(stuck) || s.across(branch, false) >= x))
	})
}

// works gives a load its three properties.
func (b *builder) works(name string, i int, prop string) int32 {
	p, u := &b.m.Parts[i], &b.built[i]
	k := KindOf(p.Kind)
	s := b.named(name, 0)
	main, threshold, dc := u.main, b.param(p, k, "works"), p.Words["current"] == "dc"
	powered := func(s *state) bool { return s.across(main, dc) >= s.val[threshold] }
	if prop == "powered" {
		return b.define(s, nil, func(s *state) float64 { return truth(powered(s)) })
	}
	latch, factor, off := u.latch, u.factor, u.off
	whole := func(s *state) bool { return s.c.force[main] >= 0 && (latch < 0 || s.val[latch] < 0.5) }
	if prop == "hums" {
		works := b.prop(i, "works", 0)
		return b.define(s, []int32{works}, func(s *state) float64 {
			return truth(whole(s) && s.across(main, dc) >= 0.5*s.val[threshold] && s.val[works] < 0.5)
		})
	}
	needs := func(*state) float64 { return 1 }
	var deps []int32
	if e := p.Exprs["needs"]; e != nil {
		needs, deps = b.expr(e)
	}
	always := b.modesThat(p, "always")
	return b.define(s, deps, func(s *state) float64 {
		switch {
		case s.any(always):
			return 1
		case !powered(s) || !whole(s) || s.val[off] > 0.5:
			return 0
		}
		return s.val[factor] * min(1, max(0, needs(s)))
	})
}

func (b *builder) sees(name string, i, line int) int32 {
	p := &b.m.Parts[i]
	s := b.named(name, 0)
	current, at := b.prop(i, "microamps_now", line), b.param(p, KindOf(p.Kind), "flame_at")
	dead, stuck := b.modesThat(p, "sense-dead"), b.modesThat(p, "sense-stuck")
	senses := func(*state) float64 { return 1 }
	deps := []int32{current}
	if e := p.Exprs["senses"]; e != nil {
		f, d := b.expr(e)
		senses, deps = f, append(deps, d...)
	}
	return b.define(s, deps, func(s *state) float64 {
		return truth(!s.any(dead) && (s.any(stuck) || s.val[current] >= s.val[at] && senses(s) > 0.5))
	})
}

// amount is what a passage or a thing is worth.
func (b *builder) amount(name string, i int, param, by string) int32 {
	p, u := &b.m.Parts[i], &b.built[i]
	s := b.named(name, 0)
	base, factor, off := b.param(p, KindOf(p.Kind), param), u.factor, u.off
	more := func(*state) float64 { return 1 }
	var deps []int32
	if e := p.Exprs[by]; e != nil {
		more, deps = b.expr(e)
	}
	return b.define(s, deps, func(s *state) float64 {
		if s.val[off] > 0.5 {
			return 0
		}
		return s.val[base] * s.val[factor] * more(s)
	})
}
