package appliance

import "readback/core/unit"

var _ = register(&Kind{
	Name: "capacitor", Doc: "measured by itself with its wires off; the load it serves asks for its health",
	Ports:  []Port{{Name: "a", Optional: true}, {Name: "b", Optional: true}},
	Pair:   true,
	Params: []Param{{Name: "value", Dim: unit.Capacitance, Unit: "uF"}},
	Effects: []Effect{{Name: "open", Doc: effOpen.Doc, do: takeOff},
		{Name: "short", Params: effShortParams, Doc: effShort.Doc, do: func(c *change) {
			if c.p.Ports["a"] != "" {
				c.short("a", "b")
			}
			takeOff(c)
		}},
		{Name: "weak", Params: effFactorParams, Doc: "so much of its value is left", do: lessOfIt}, effSet},
	Props: []Prop{{Name: "healthy", Doc: "share of its value that is left; 0 when open or shorted",
		calc: func(q *ask) int32 { return capacitance(q, q.b.init[q.b.param(q.p, q.k, "value")]) }},
		{Name: "microfarads_now", Doc: "microfarads that are left", Spread: "value",
			calc: func(q *ask) int32 { return capacitance(q, 1) }}},
	Passes: blocks, Holds: true, Proof: provedBySelf,
	Drawn: []Drawn{{A: "a", B: "b", Loose: true, Symbol: &Symbol{Gap: true,
		SVG: `<path d="M0 0h60m12 0h60"/><path d="M60 -13v26m15 -26c-5 8 -5 18 0 26"/>`}}},
	// Its current does not pass the network: its load asks for its health.
	build: func(b *builder, _ int, p *Part, _ *Kind, u *built) {
		if p.Ports["a"] != "" && p.Ports["b"] != "" {
			b.terminal(p, "a")
			b.terminal(p, "b")
		}
		u.factor, u.off = b.slot(1), b.slot(0)
	},
})

// capacitance is what is left of the value, as a share of unity.
func capacitance(q *ask, unity float64) int32 {
	value, factor, off := q.b.param(q.p, q.k, "value"), q.u.factor, q.u.off
	return q.def(func(s *state) float64 {
		if s.val[off] > 0.5 {
			return 0
		}
		return s.val[factor] * s.val[value] / unity
	})
}
