package appliance

import "readback/core/unit"

var _ = register(&Kind{
	Name: "load", Doc: "takes current and does something: a motor, a coil, an igniter, a lamp",
	Ports: twoEnds,
	Params: []Param{{Name: "ohms", Dim: unit.Resistance, Unit: "ohm"},
		{Name: "cold", Dim: unit.Resistance, Optional: true, Unit: "ohm"},
		{Name: "works", Dim: unit.Voltage, Unit: "V"},
		{Name: "rated", Dim: unit.Voltage, Optional: true, Unit: "V"}},
	Exprs: []Slot{{"needs", "besides its voltage, what it needs to work"}},
	Words: []Word{{"current", []string{"ac", "dc"}}, {"motor", []string{"no", "yes"}}},
	Effects: []Effect{effOpen,
		{Name: "short", Params: effShortParams, Doc: effShort.Doc, do: func(c *change) {
			c.short("a", "b")
			takeOff(c)
		}}, effResist, effTouch, effSet,
		{Name: "stuck", Doc: "takes current and does nothing: a seized motor, a jammed valve", do: takeOff},
		{Name: "weak", Params: effFactorParams, Doc: "does so much of its work", do: lessOfIt},
		{Name: "open-hot", Doc: "opens once it has worked: reads good when cold", do: ownSlot},
		{Name: "always", Doc: "does its work without voltage: a valve that does not shut", do: ownSlot}},
	Props: []Prop{{Name: "works", Doc: "how much of its work it does, 0 to 1", calc: loadWorks},
		{Name: "hums", Doc: "1 when there is enough voltage and no work", calc: loadHums},
		{Name: "volts_now", Doc: "volts across it", calc: voltsOfMain},
		{Name: "amps", Doc: "amperes through it", Spread: "ohms", calc: ampsOfMain},
		{Name: "powered", Doc: "1 when there is enough voltage", calc: func(q *ask) int32 {
			powered := loadPowered(q)
			return q.def(func(s *state) float64 { return truth(powered(s)) })
		}}},
	Passes: blocks, Spreads: true, Proof: ProvedBySupply,
	Drawn: []Drawn{{A: "a", B: "b", Symbol: &Symbol{Resists: true, SVG: `<path d="M0 0h48m36 0h48"/><circle cx="66" cy="0" r="18"/>` +
		`<text x="{at}" y="4" fill="currentColor" stroke="none">{initials}</text>`}}},
	build: buildLoad,
})

func buildLoad(b *builder, i int, p *Part, k *Kind, u *built) {
	u.main = b.ends(i, p, k, "ohms")
	if _, ok := p.Params["cold"]; ok {
		b.branches[u.main].dc = b.param(p, k, "cold")
	}
	if p.Words["current"] == "dc" {
		b.branches[u.main].ac, b.branches[u.main].dc = b.param(p, k, "ohms"), b.param(p, k, "ohms")
	}
	u.factor, u.off = b.slot(1), b.slot(0)
	if hot := b.modesThat(p, "open-hot"); len(hot) > 0 {
		u.latch = b.slot(0)
		main, works, dc := u.main, b.param(p, k, "works"), p.Words["current"] == "dc"
		b.branches[main].gate, b.branches[main].invert = u.latch, true
		b.latches = append(b.latches, latch{slot: u.latch, part: p.ID, over: func(s *state) float64 {
			return 1.0001 * truth(s.any(hot) && s.across(main, dc) >= s.val[works])
		}})
	}
}

func loadPowered(q *ask) func(*state) bool {
	main, threshold, dc := q.u.main, q.b.param(q.p, q.k, "works"), q.p.Words["current"] == "dc"
	return func(s *state) bool { return s.across(main, dc) >= s.val[threshold] }
}

// loadWhole tells whether current can pass.
func loadWhole(u *built) func(*state) bool {
	main, latch := u.main, u.latch
	return func(s *state) bool { return s.c.force[main] >= 0 && (latch < 0 || s.val[latch] < 0.5) }
}

func loadHums(q *ask) int32 {
	main, threshold, dc := q.u.main, q.b.param(q.p, q.k, "works"), q.p.Words["current"] == "dc"
	whole, works := loadWhole(q.u), q.b.prop(q.i, "works", 0)
	return q.def(func(s *state) float64 {
		return truth(whole(s) && s.across(main, dc) >= 0.5*s.val[threshold] && s.val[works] < 0.5)
	}, works)
}

func loadWorks(q *ask) int32 {
	b, powered, whole := q.b, loadPowered(q), loadWhole(q.u)
	factor, off := q.u.factor, q.u.off
	needs := func(*state) float64 { return 1 }
	var deps []int32
	if e := q.p.Exprs["needs"]; e != nil {
		needs, deps = b.expr(e)
	}
	always := b.modesThat(q.p, "always")
	return q.def(func(s *state) float64 {
		switch {
		case s.any(always):
			return 1
		case !powered(s) || !whole(s) || s.val[off] > 0.5:
			return 0
		}
		return s.val[factor] * min(1, max(0, needs(s)))
	}, deps...)
}
