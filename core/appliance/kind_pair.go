package appliance

var _ = register(&Kind{
	Name: "pair", Doc: "two conductors that run together and can be swapped: in1 to out1, in2 to out2",
	Ports:  []Port{{Name: "in1"}, {Name: "out1"}, {Name: "in2"}, {Name: "out2"}},
	Params: []Param{ohmsParam("ohms", closedOhms)},
	Effects: []Effect{
		{Name: "open", At: "conductor", Doc: "conductor \"1\" or \"2\" has no path",
			do: func(c *change) { c.open(conductor(c)) }},
		{Name: "resist", At: "conductor", Params: effResistParams, Doc: "so many ohms more in conductor \"1\" or \"2\"",
			do: func(c *change) { c.resist(conductor(c)) }},
		{Name: "short", Params: effShortParams, Doc: "the two touch each other at the far end",
			do: func(c *change) { c.short("out1", "out2") }},
		{Name: "swap", Doc: "the two are changed over", do: func(c *change) {
			c.force(c.u.main, -1)
			c.force(c.u.other, -1)
		}}},
	Props:  []Prop{{Name: "amps", Doc: "amperes through conductor 1", calc: ampsOfMain}},
	Passes: Leads, Proof: provedBySelf,
	Drawn: []Drawn{{Symbol: symWire, Name: "first-wire", A: "in1", B: "out1"}, {Symbol: symWire, Name: "second-wire", A: "in2", B: "out2"}},
	build: buildPair,
})

// conductor is the branch that a mode names.
func conductor(c *change) int {
	if c.m.At == "2" {
		return c.u.other
	}
	return c.u.main
}

func buildPair(b *builder, i int, p *Part, k *Kind, u *built) {
	in1, out1, in2, out2 := b.terminal(p, "in1"), b.terminal(p, "out1"), b.terminal(p, "in2"), b.terminal(p, "out2")
	ohms := b.param(p, k, "ohms")
	u.main = b.path(i, in1, out1, ohms, p.ID+" 1")
	u.other = b.path(i, in2, out2, ohms, p.ID+" 2")
	for _, m := range p.Modes {
		if gate := b.modeSlot + int32(m); b.m.Modes[m].Does == "swap" {
			b.bridge(i, in1, out2, closedOhms, 0, gate, p.ID+" swapped 1")
			b.bridge(i, in2, out1, closedOhms, 0, gate, p.ID+" swapped 2")
		}
	}
}
