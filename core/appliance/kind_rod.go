package appliance

import (
	"math"

	"readback/core/unit"
)

var _ = register(&Kind{
	Name: "rod",
	Doc: "a flame rod: passes a d.c. of microamps while flame joins it to the burner; " +
		"\"source\" is the resistance of the a.c. that feeds it",
	Ports:  []Port{{Name: "rod"}, {Name: "burner"}},
	Params: []Param{{Name: "microamps", Dim: unit.Current, Unit: "uA"}, ohmsParam("flame_ohms", 5e6), ohmsParam("source", 0.35e6)},
	Exprs:  []Slot{{"flame", "how much flame is on it, 0 to 1"}},
	Effects: []Effect{effOpen,
		{Name: "short", Params: effShortParams, Doc: "touches the burner", do: func(c *change) { c.short("rod", "burner") }}, effSet,
		{Name: "dirty", Params: effFactorParams, Doc: "so much of the current is left", do: lessOfIt},
		{Name: "leak", Params: effLeakParams, Doc: "so many ohms over cracked porcelain to the burner",
			do: func(c *change) { c.size(c.u.outSlot[0], "ohms") }}},
	Props: []Prop{{Name: "microamps_now", Doc: "microamperes through it", Spread: "microamps", calc: func(q *ask) int32 {
		main, third := q.u.main, q.u.third
		return q.def(func(s *state) float64 { return 1e6 * math.Abs(s.currentDC(main)+s.currentDC(third)) })
	}}},
	Passes: Through, Proof: provedBySelf,
	Drawn: []Drawn{{A: "rod", B: "burner", Symbol: &Symbol{Resists: true,
		SVG: `<path d="M0 0h58m20 0h54"/><path d="M58 -7v14l14 -7z"/><path d="M80 -10v20m5 -15v10"/>`}}},
	build: buildRod,
})

func buildRod(b *builder, i int, p *Part, k *Kind, u *built) {
	rod, burner := b.terminal(p, "rod"), b.terminal(p, "burner")
	gate, emf := b.slot(0), b.slot(0)
	u.gate, u.factor = gate, b.slot(1)
	amps, flame, source := b.param(p, k, "microamps"), b.param(p, k, "flame_ohms"), b.param(p, k, "source")
	b.tol[emf] = b.tol[amps]
	u.main = b.add(branch{n: 2, node: [4]int32{rod, burner}, part: i, label: p.ID, ac: -1, dc: flame, acEmf: -1, dcEmf: emf, gate: gate,
		off: 1 / openOhms})
	leak := b.slot(1e12) // ohms over its porcelain
	u.third = b.bridge(i, rod, burner, 1, 0, -1, p.ID+" porcelain")
	b.branches[u.third].ac, b.branches[u.third].dc = leak, leak
	u.latch = -1
	u.outSlot = []int32{leak}
	factor := u.factor
	b.later = append(b.later, func() {
		on := func(*state) float64 { return 1 }
		var deps []int32
		if e := p.Exprs["flame"]; e != nil {
			on, deps = b.expr(e)
		}
		b.define(gate, deps, func(s *state) float64 { return truth(on(s) > 0.01) })
		// The a.c. that the flame rectifies is divided by the leak before, the d.c. it gives is divided again in the network.
		b.define(emf, deps, func(s *state) float64 {
			f := on(s)
			if f <= 0.01 {
				return 0
			}
			div := s.val[leak] / (s.val[leak] + s.val[source])
			return f * s.val[factor] * s.val[amps] * 1e-6 * (s.val[flame] + s.val[source]) * div
		})
	})
}
