package appliance

import (
	"math"
	"slices"

	"readback/core/measure"
)

// effect says what a mode does to the configuration of a hypothesis.
func (b *builder) effect(mode int, p *Part, k *Kind, u *built) {
	m := &b.m.Modes[mode]
	e := k.Effect(m.Does)
	if e == nil {
		b.fail("mode %s: a %s cannot do %q", m.Full, k.Name, m.Does)
		return
	}
	gate := b.modeSlot + int32(mode)
	op := func(f func(*config)) { b.ops[mode] = append(b.ops[mode], f) }
	force := func(branch int, to int8) {
		if branch >= 0 {
			op(func(c *config) { c.force[branch] = to })
		}
	}
	number := func(name string) float64 {
		q, ok := m.Params[name]
		if !ok {
			for _, prm := range e.Params {
				if prm.Name == name {
					return prm.Default
				}
			}
		}
		to := q.Unit
		for _, prm := range e.Params {
			if prm.Name == name {
				to = prm.Unit
			}
		}
		x, _, err := convert(q, to)
		if err != nil {
			b.fail("mode %s: %s: %w", m.Full, name, err)
		}
		return x
	}
	set := func(slot int32, x float64) {
		if slot >= 0 {
			op(func(c *config) { c.val[slot] = x })
		}
	}
	scale := func(slot int32, x float64) {
		if slot >= 0 {
			op(func(c *config) { c.val[slot] *= x })
		}
	}
	series := func(branch int, x float64) {
		if branch >= 0 {
			op(func(c *config) { c.series[branch] += x })
		}
	}
	contact := u.main // the branch that opens and closes
	if k.Name == "relay" {
		contact = u.other
	}
	switch m.Does {
	case "open":
		switch {
		case k.Name == "pair" && m.At == "2":
			force(u.other, -1)
		case k.Name == "capacitor":
			set(u.off, 1)
		default:
			force(u.main, -1)
		}
	case "short":
		x, y := b.shortEnds(p, k)
		if x != y {
			b.bridge(m.Part, x, y, number("ohms"), spreadOf(m.Params["ohms"]), gate, m.Full)
		}
		if k.Name == "capacitor" || k.Name == "load" {
			set(u.off, 1)
		}
	case "resist":
		q := m.Params["ohms"]
		op(func(c *config) { c.ohms.widen(q) })
		branch := contact
		switch {
		case k.Name == "pair" && m.At == "2":
			branch = u.other
		case k.Name == "transformer":
			series(u.third, number("ohms"))
		}
		series(branch, number("ohms"))
	case "touch":
		at := m.At
		if at == "" {
			at = k.Ports[0].Name
		}
		b.bridge(m.Part, b.terminal(p, at), b.net(m.To), number("ohms"), spreadOf(m.Params["ohms"]), gate, m.Full)
	case "set":
		names := make([]string, 0, len(m.Params))
		for name := range m.Params {
			names = append(names, name)
		}
		slices.Sort(names)
		for _, name := range names {
			q := m.Params[name]
			to := q.Unit
			if prm := k.Param(name); prm != nil && prm.Dim != "" {
				to = prm.Unit
			}
			x, _, err := convert(q, to)
			if err != nil {
				b.fail("mode %s: %s: %w", m.Full, name, err)
			}
			set(b.param(p, k, name), x)
		}
	case "swap":
		force(u.main, -1)
		force(u.other, -1)
	case "off":
		switch k.Name {
		case "passage", "thing":
			set(u.off, 1)
		default:
			force(u.main, -1)
		}
	case "stuck-open":
		force(contact, -1)
	case "stuck-closed":
		force(contact, 1)
		force(u.third, -1)
	case "open-primary":
		force(u.main, -1)
		force(u.other, -1)
	case "open-secondary":
		force(u.main, -1)
		force(u.third, -1)
	case "factor", "weak", "dirty":
		q := m.Params["factor"]
		op(func(c *config) { c.factor.widen(q) })
		if k.Name == "supply" {
			scale(b.branches[u.main].acEmf, number("factor"))
		} else {
			scale(u.factor, number("factor"))
		}
	case "leak":
		set(u.outSlot[0], number("ohms"))
	case "stuck":
		set(u.off, 1)
	case "output-dead", "output-welded":
		to := int8(-1)
		if m.Does == "output-welded" {
			to = 1
		}
		for i, o := range p.Outputs {
			if o.ID == m.At {
				force(u.outs[i], to)
			}
		}
	case "open-hot", "always", "dead", "input-blind", "input-stuck", "sense-dead", "sense-stuck", "wrong":
		// read from the mode's own slot
	default:
		b.fail("mode %s: effect %q does nothing", m.Full, m.Does)
	}
}

// spreadOf is the relative half-width of a quantity: that of its ends, or the usual one where there are none.
func spreadOf(q measure.Quantity) float64 {
	if q.Low == q.High || q.Nominal == 0 {
		return unknownTol
	}
	return (q.High - q.Low) / 2 / math.Abs(q.Nominal)
}

// shortEnds is what a short joins.
func (b *builder) shortEnds(p *Part, k *Kind) (x, y int32) {
	ports := [2]string{"a", "b"}
	switch k.Name {
	case "pair":
		ports = [2]string{"out1", "out2"}
	case "relay":
		ports = [2]string{"coil1", "coil2"}
	case "transformer":
		ports = [2]string{"s1", "s2"}
	case "rod":
		ports = [2]string{"rod", "burner"}
	case "capacitor":
		if p.Ports["a"] == "" {
			return -1, -1
		}
	}
	return b.terminal(p, ports[0]), b.terminal(p, ports[1])
}
