package appliance

import "readback/core/unit"

var _ = register(&Kind{
	Name: "relay", Doc: "a coil that pulls a contact; nc is closed while it rests",
	Ports: []Port{{Name: "coil1"}, {Name: "coil2"}, {Name: "com"}, {Name: "no", Optional: true}, {Name: "nc", Optional: true}},
	Params: []Param{{Name: "ohms", Dim: unit.Resistance, Unit: "ohm"}, {Name: "pulls", Dim: unit.Voltage, Unit: "V"},
		ohmsParam("contact_ohms", closedOhms)},
	Words: []Word{{"current", []string{"ac", "dc"}}},
	Effects: []Effect{{Name: "open", Doc: "coil has no path", do: openMain},
		{Name: "short", Params: effShortParams, Doc: "coil shorted", do: func(c *change) { c.short("coil1", "coil2") }},
		{Name: "stuck-open", Doc: effStuckO.Doc, do: func(c *change) { c.force(c.u.other, -1) }},
		{Name: "stuck-closed", Doc: effStuckC.Doc, do: func(c *change) {
			c.force(c.u.other, 1)
			c.force(c.u.third, -1)
		}},
		{Name: "resist", Params: effResistParams, Doc: "so many ohms more in the contact",
			do: func(c *change) { c.resist(c.u.other) }}, effSet},
	Props: []Prop{
		{Name: "pulled", Doc: "1 when the coil pulls", calc: func(q *ask) int32 {
			gate := q.u.gate
			return q.def(func(s *state) float64 { return s.val[gate] }, gate)
		}},
		{Name: "closed", Doc: "1 when the working contact is closed", calc: func(q *ask) int32 {
			if q.u.other < 0 {
				return q.def(func(*state) float64 { return 0 })
			}
			return q.b.conducts(q.name, q.u.other)
		}},
		{Name: "volts_now", Doc: "volts across the coil", calc: voltsOfMain}},
	Passes: Through, Proof: provedBySelf,
	Drawn: []Drawn{{Symbol: symCoil, Name: "coil", A: "coil1", B: "coil2"}, {Symbol: symContact, Name: "contact", A: "com", B: "no"},
		{Symbol: symContact, Name: "resting-contact", A: "com", B: "nc"}},
	build: buildRelay,
})

func buildRelay(b *builder, i int, p *Part, k *Kind, u *built) {
	u.main = b.path(i, b.terminal(p, "coil1"), b.terminal(p, "coil2"), b.param(p, k, "ohms"), p.ID+" coil")
	u.gate = b.slot(0)
	ohms := b.param(p, k, "contact_ohms")
	if p.Ports["no"] != "" {
		u.other = b.path(i, b.terminal(p, "com"), b.terminal(p, "no"), ohms, p.ID+" contact")
		b.branches[u.other].gate = u.gate
	}
	if p.Ports["nc"] != "" {
		u.third = b.path(i, b.terminal(p, "com"), b.terminal(p, "nc"), ohms, p.ID+" rest contact")
		b.branches[u.third].gate, b.branches[u.third].invert = u.gate, true
	}
	main, pulls, dc := u.main, b.param(p, k, "pulls"), p.Words["current"] == "dc"
	short := b.modesThat(p, "short")
	b.define(u.gate, nil, func(s *state) float64 {
		return truth(s.across(main, dc) >= s.val[pulls] && s.c.force[main] >= 0 && !s.any(short))
	})
}
