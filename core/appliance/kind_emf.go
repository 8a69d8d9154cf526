package appliance

import "readback/core/unit"

var _ = register(&Kind{
	Name: "emf", Doc: "makes a d.c. from heat: a thermocouple or thermopile",
	Ports:  twoEnds,
	Params: []Param{{Name: "millivolts", Dim: unit.Voltage, Unit: "mV"}, {Name: "ohms", Dim: unit.Resistance, Unit: "ohm"}},
	Exprs:  []Slot{{"heat", "how hot, 0 to 1"}},
	Effects: []Effect{effOpen, effShort, effResist, effSet,
		{Name: "weak", Params: effFactorParams, Doc: "so much of its voltage is left", do: lessOfIt}},
	Props: []Prop{{Name: "millivolts_now", Doc: "millivolts between its ends", calc: func(q *ask) int32 {
		main := q.u.main
		return q.def(func(s *state) float64 { return 1e3 * s.across(main, true) })
	}}, propAmps},
	Passes: Through, Spreads: true, Proof: provedBySelf,
	// a cell: makes d.c. from heat
	Drawn: []Drawn{{A: "a", B: "b", Symbol: &Symbol{SVG: `<path d="M0 0h61m10 0h61"/><path d="M61 -14v28m10 -21v14"/>`}}},
	build: buildEmf,
})

func buildEmf(b *builder, i int, p *Part, k *Kind, u *built) {
	u.main = b.ends(i, p, k, "ohms")
	emf := b.slot(0)
	u.factor = b.slot(1)
	b.branches[u.main].dcEmf = emf
	mv, factor := b.param(p, k, "millivolts"), u.factor
	b.tol[emf] = b.tol[mv]
	b.later = append(b.later, func() {
		heat := func(*state) float64 { return 1 }
		var deps []int32
		if e := p.Exprs["heat"]; e != nil {
			heat, deps = b.expr(e)
		}
		b.define(emf, deps, func(s *state) float64 { return 1e-3 * s.val[mv] * s.val[factor] * heat(s) })
	})
}
