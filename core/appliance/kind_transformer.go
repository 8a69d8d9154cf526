package appliance

import (
	"math"

	"readback/core/unit"
)

var _ = register(&Kind{
	Name:  "transformer",
	Doc:   "ideal ratio with the resistance of its windings; the hidden link opens for good when overloaded",
	Ports: []Port{{Name: "p1"}, {Name: "p2"}, {Name: "s1"}, {Name: "s2"}},
	Params: []Param{{Name: "primary", Dim: unit.Voltage, Unit: "V"}, {Name: "secondary", Dim: unit.Voltage, Unit: "V"},
		{Name: "loaded", Dim: unit.Voltage, Optional: true, Unit: "V"}, {Name: "rating", Dim: unit.Power, Unit: "W"},
		ohmsParam("primary_ohms", 20), ohmsParam("secondary_ohms", 0.7),
		{Name: "link", Dim: unit.Current, Optional: true, Unit: "A"}},
	Effects: []Effect{
		{Name: "open-primary", Doc: "primary winding or its hidden link open", do: func(c *change) {
			c.force(c.u.main, -1)
			c.force(c.u.other, -1)
		}},
		{Name: "open-secondary", Doc: "secondary winding open", do: func(c *change) {
			c.force(c.u.main, -1)
			c.force(c.u.third, -1)
		}},
		{Name: "short", Params: effShortParams, Doc: "secondary shorted inside", do: func(c *change) { c.short("s1", "s2") }}, effSet,
		{Name: "resist", Params: effResistParams, Doc: "so many ohms more in the secondary",
			do: func(c *change) { c.resist(c.u.third, c.u.main) }}},
	Props: []Prop{
		{Name: "volts_now", Doc: "volts of the secondary", calc: func(q *ask) int32 {
			x, y := q.b.terminal(q.p, "s1"), q.b.terminal(q.p, "s2")
			return q.def(func(s *state) float64 { return math.Abs(s.volt(x) - s.volt(y)) })
		}},
		{Name: "amps", Doc: "amperes of the secondary", calc: ampsOfMain},
		{Name: "link_open", Doc: "1 when the hidden link is open", calc: hasBlown}},
	Passes: blocks, Proof: provedBySelf,
	Drawn: []Drawn{{Symbol: symCoil, Name: "primary", A: "p1", B: "p2"}, {Symbol: symSource, Name: "secondary", A: "s1", B: "s2"}},
	build: buildTransformer,
})

func buildTransformer(b *builder, i int, p *Part, k *Kind, u *built) {
	p1, p2, s1, s2 := b.terminal(p, "p1"), b.terminal(p, "p2"), b.terminal(p, "s1"), b.terminal(p, "s2")
	u.latch = b.slot(0)
	prim, sec := b.param(p, k, "primary"), b.param(p, k, "secondary")
	pr, sr := b.param(p, k, "primary_ohms"), b.param(p, k, "secondary_ohms")
	loaded, rating := b.param(p, k, "loaded"), b.param(p, k, "rating")
	ohms := b.slot(0)
	b.tol[ohms] = 0.2 // common practice, no source
	main := b.add(branch{n: 4, node: [4]int32{p1, p2, s1, s2}, part: i, label: p.ID, ac: ohms, dc: -1, acEmf: -1, dcEmf: -1,
		gate: u.latch, invert: true, off: 1 / openOhms})
	u.main = main
	// Regulation: the secondary falls from its unloaded to its loaded volts at rated current.
	fix := func(c *config) {
		ratio := c.val[sec] / c.val[prim]
		c.coef[main] = [4]float64{ratio, -ratio, -1, 1}
		c.val[ohms] = c.val[sr] + c.val[pr]*ratio*ratio
		if v := c.val[loaded]; v > 0 && v < c.val[sec] {
			c.val[ohms] = (c.val[sec] - v) * v / c.val[rating]
		}
	}
	b.fixes = append(b.fixes, fix)
	u.other = b.add(branch{n: 2, node: [4]int32{p1, p2}, part: i, label: p.ID + " primary", ac: -1, dc: pr, acEmf: -1, dcEmf: -1,
		gate: u.latch, invert: true, off: 1 / openOhms})
	u.third = b.add(branch{n: 2, node: [4]int32{s1, s2}, part: i, label: p.ID + " secondary", ac: -1, dc: sr, acEmf: -1, dcEmf: -1,
		gate: -1, off: 1 / openOhms})
	if _, ok := p.Params["link"]; ok {
		link := b.param(p, k, "link")
		b.latches = append(b.latches, latch{slot: u.latch, part: p.ID, keeps: true, fast: true,
			over: func(s *state) float64 { return math.Abs(s.current(main)) / s.val[link] }})
	}
}
