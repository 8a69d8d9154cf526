package appliance

import "readback/core/unit"

var _ = register(&Kind{
	Name: "supply", Doc: "a source of a.c. with its own resistance: what arrives at the breaker",
	Ports:  []Port{{Name: "l"}, {Name: "n"}},
	Params: []Param{{Name: "volts", Dim: unit.Voltage, Unit: "V"}, {Name: "ohms", Dim: unit.Resistance, Unit: "ohm"}},
	Effects: []Effect{effOff, effSet,
		{Name: "factor", Params: effFactorParams, Doc: effFactor.Doc, do: func(c *change) { c.factor(c.b.branches[c.u.main].acEmf) }},
		{Name: "resist", Params: effResistParams, Doc: "so many ohms more in series: sags under load", do: effResist.do}},
	Props: []Prop{{Name: "volts_now", Doc: "volts between its ends", calc: voltsOfMain},
		{Name: "amps", Doc: "amperes drawn", calc: ampsOfMain}},
	Passes: blocks, Return: "n", Proof: provedBySelf,
	Drawn: []Drawn{{Symbol: symSource, A: "l", B: "n"}},
	build: func(b *builder, i int, p *Part, k *Kind, u *built) {
		u.main = b.path(i, b.terminal(p, "l"), b.terminal(p, "n"), b.param(p, k, "ohms"), p.ID)
		b.branches[u.main].acEmf = b.param(p, k, "volts")
	},
})
