package appliance

import (
	"slices"

	"readback/core/measure"
	"readback/core/unit"
)

// change is a mode on its way into the configurations of the hypotheses that hold it.
type change struct {
	b    *builder
	mode int
	m    *Mode
	e    *Effect
	p    *Part
	k    *Kind
	u    *built
	gate int32 // slot: the mode is there
}

// effect says what a mode does to the configuration of a hypothesis.
func (b *builder) effect(mode int, p *Part, k *Kind, u *built) {
	m := &b.m.Modes[mode]
	e := k.Effect(m.Does)
	if e == nil {
		b.fail("mode %s: a %s cannot do %q", m.Full, k.Name, m.Does)
		return
	}
	if e.do == nil {
		b.fail("mode %s: effect %q does nothing", m.Full, m.Does)
		return
	}
	c := &change{b: b, mode: mode, m: m, e: e, p: p, k: k, u: u, gate: b.modeSlot + int32(mode)}
	e.do(c)
	for _, prm := range e.Params {
		if q, ok := m.Params[prm.Name]; ok && prm.Usual != nil {
			b.severities[mode], _ = severity(q, prm.Usual, prm.Dim == unit.Count)
		}
	}
}

func (c *change) op(f func(*config)) { c.b.ops[c.mode] = append(c.b.ops[c.mode], f) }

// force opens (-1) or closes (1) a branch for good.
func (c *change) force(branch int, to int8) {
	if branch >= 0 {
		c.op(func(c *config) { c.force[branch] = to })
	}
}

// number is a number of the mode in the unit of the effect.
func (c *change) number(name string) float64 {
	q, ok := c.m.Params[name]
	if !ok {
		for _, prm := range c.e.Params {
			if prm.Name == name {
				return prm.Default
			}
		}
	}
	to := q.Unit
	for _, prm := range c.e.Params {
		if prm.Name == name {
			to = prm.Unit
		}
	}
	x, _, err := convert(q, to)
	if err != nil {
		c.b.fail("mode %s: %s: %w", c.m.Full, name, err)
	}
	return x
}

func (c *change) set(slot int32, x float64) {
	if slot >= 0 {
		c.op(func(c *config) { c.val[slot] = x })
	}
}

// size sets a slot to a number of the mode.
func (c *change) size(slot int32, name string) {
	mode, x := c.mode, c.number(name)
	c.op(func(c *config) {
		r, _ := c.ratio(mode)
		c.val[slot] = x * r
	})
}

// bridge joins two nodes while the mode is there.
func (c *change) bridge(x, y int32) {
	i := c.b.bridge(c.m.Part, x, y, c.number("ohms"), c.spread("ohms"), c.gate, c.m.Full)
	slot, mode, ohms := c.b.branches[i].ac, c.mode, c.number("ohms")
	c.op(func(c *config) {
		if r, known := c.ratio(mode); known {
			c.val[slot] = ohms * r
			c.sharp = append(c.sharp, slot)
		}
	})
}

// short joins two ports of the part.
func (c *change) short(a, b string) {
	if x, y := c.b.terminal(c.p, a), c.b.terminal(c.p, b); x != y {
		c.bridge(x, y)
	}
}

// resist puts ohms in series with branches.
func (c *change) resist(branches ...int) {
	mode, b := c.mode, c.b
	c.op(func(c *config) {
		if _, known := c.ratio(mode); !known {
			c.ohms.widen(b.severities[mode])
		}
	})
	for _, branch := range branches {
		if x := c.number("ohms"); branch >= 0 {
			c.op(func(c *config) {
				r, _ := c.ratio(mode)
				c.series[branch] += x * r
			})
		}
	}
}

// factor scales what a slot holds.
func (c *change) factor(slot int32) {
	mode, b, x := c.mode, c.b, c.number("factor")
	c.op(func(c *config) {
		r, known := c.ratio(mode)
		if !known {
			c.factor.widen(b.severities[mode])
		}
		if slot >= 0 {
			c.val[slot] *= x * r
		}
	})
}

// Effects that several kinds have.
var (
	effShortParams = []Param{{Name: "ohms", Dim: unit.Resistance, Optional: true, Unit: "ohm", Default: shortOhms,
		Usual: times(4)}}
	effResistParams = []Param{{Name: "ohms", Dim: unit.Resistance, Unit: "ohm", Usual: times(4)}}
	effLeakParams   = []Param{{Name: "ohms", Dim: unit.Resistance, Unit: "ohm", Usual: times(10)}}
	effFactorParams = []Param{{Name: "factor", Dim: unit.Count, Unit: "x", Usual: lessWork}}

	effOpen  = Effect{Name: "open", Doc: "no path", do: openMain}
	effShort = Effect{Name: "short", Params: effShortParams, Doc: "joined end to end, past its own resistance",
		do: func(c *change) { c.short("a", "b") }}
	effResist = Effect{Name: "resist", Params: effResistParams, Doc: "so many ohms more in series",
		do: func(c *change) { c.resist(c.u.main) }}
	effTouch = Effect{Name: "touch", To: true, At: "port", Params: effShortParams,
		Doc: "one end touches another net; \"at\" names the port, the first one when left out", do: touch}
	effSet = Effect{Name: "set", Doc: "takes other values for parameters of the part: a wrong part, a wrong setting, an aged one",
		do: setParams}
	effFactor = Effect{Name: "factor", Params: effFactorParams, Doc: "does so much of what it should", do: lessOfIt}
	effOff    = Effect{Name: "off", Doc: "does nothing", do: openMain}
	effGap    = Effect{Name: "open", Doc: "no path, or a bad one", do: func(c *change) { c.open(c.u.main) }}
	effNone   = Effect{Name: "off", Doc: "does nothing", do: takeOff}
	effStuckO = Effect{Name: "stuck-open", Doc: "never closes, or badly", do: func(c *change) { c.open(c.u.main) }}
	effStuckC = Effect{Name: "stuck-closed", Doc: "never opens", do: func(c *change) { c.force(c.u.main, 1) }}

	twoEnds = []Port{{Name: "a"}, {Name: "b"}}
)

func openMain(c *change) { c.force(c.u.main, -1) }
func takeOff(c *change)  { c.set(c.u.off, 1) }
func lessOfIt(c *change) { c.factor(c.u.factor) }

// ownSlot is the effect of a mode that the behaviour of its kind reads from the mode's own slot.
func ownSlot(*change) {}

func touch(c *change) {
	at := c.m.At
	if at == "" {
		at = c.k.Ports[0].Name
	}
	c.bridge(c.b.terminal(c.p, at), c.b.net(c.m.To))
}

func setParams(c *change) {
	names := make([]string, 0, len(c.m.Params))
	for name := range c.m.Params {
		names = append(names, name)
	}
	slices.Sort(names)
	mode := c.mode
	for _, name := range names {
		q := c.m.Params[name]
		to := q.Unit
		if prm := c.k.Param(name); prm != nil && prm.Dim != "" {
			to = prm.Unit
		}
		x, _, err := convert(q, to)
		if err != nil {
			c.b.fail("mode %s: %s: %w", c.m.Full, name, err)
			return
		}
		slot := c.b.param(c.p, c.k, name)
		from, _ := unit.Lookup(q.Unit)
		v, is := severity(q, setSpread(from.Dim), false)
		if !is {
			c.set(slot, x)
			continue
		}
		if w := c.b.severities[mode]; v.Most-v.Least > w.Most-w.Least {
			c.b.severities[mode] = v
		}
		zero, _, _ := convert(measure.Quantity{Unit: q.Unit}, to)
		c.op(func(c *config) {
			r, _ := c.ratio(mode)
			c.val[slot] = zero + (x-zero)*r
		})
	}
}

// spread is the relative half-width of a number of the mode: the half of what eleven of twelve cases differ by, or the usual one.
func (c *change) spread(name string) float64 {
	for _, prm := range c.e.Params {
		if q, ok := c.m.Params[name]; ok && prm.Name == name && prm.Usual != nil {
			if v, is := severity(q, prm.Usual, false); is {
				return (v.High - v.Low) / 2
			}
		}
	}
	return unknownTol
}
