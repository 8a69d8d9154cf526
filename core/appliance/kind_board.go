package appliance

import (
	"math"

	"readback/core/unit"
)

var _ = register(&Kind{
	Name: "board", Doc: "a control: outputs are contacts inside it, inputs are volts it senses",
	Ports: []Port{{Name: "r"}, {Name: "c"}, {Name: "fs", Optional: true}, {Name: "earth", Optional: true}},
	Params: []Param{{Name: "on", Dim: unit.Voltage, Unit: "V"}, {Name: "ohms", Dim: unit.Resistance, Unit: "ohm"},
		ohmsParam("sense_ohms", 0.35e6), {Name: "flame_at", Dim: unit.Current, Optional: true, Unit: "uA", Default: 0.5}},
	Exprs: []Slot{{"alive", "besides its voltage, what it needs to run"}, {"senses", "what it needs to see a flame, besides the current"}},
	Effects: []Effect{{Name: "dead", Doc: "does nothing at all", do: ownSlot},
		{Name: "output-dead", At: "output", Doc: "an output never closes", do: func(c *change) { forceOutput(c, -1) }},
		{Name: "output-welded", At: "output", Doc: "an output never opens", do: func(c *change) { forceOutput(c, 1) }},
		{Name: "input-blind", At: "input", Doc: "an input is never seen", do: ownSlot},
		{Name: "input-stuck", At: "input", Doc: "an input is always seen", do: ownSlot},
		{Name: "sense-dead", Doc: "sees no flame", do: ownSlot}, {Name: "sense-stuck", Doc: "always sees a flame", do: ownSlot}, effSet},
	Props: []Prop{
		{Name: "alive", Doc: "1 when it runs", calc: func(q *ask) int32 {
			alive := q.u.gate
			return q.def(func(s *state) float64 { return s.val[alive] }, alive)
		}},
		{Name: "microamps_now", Doc: "flame current it receives", given: sensesFlame, calc: func(q *ask) int32 {
			other := q.u.other
			return q.def(func(s *state) float64 { return 1e6 * math.Abs(s.currentDC(other)) })
		}},
		{Name: "flame", Doc: "1 when it sees a flame", given: sensesFlame, calc: boardFlame}},
	Passes: blocks, Controls: true, Proof: ProvedByInputs,
	Drawn: []Drawn{{Symbol: symBox, A: "r", B: "c"}, {Symbol: symSense, Name: "flame-input", A: "fs", B: "earth"}},
	build: buildBoard,
})

// sensesFlame tells whether the board has a flame input.
func sensesFlame(u *built) bool { return u.other >= 0 }

func forceOutput(c *change, to int8) {
	for i, o := range c.p.Outputs {
		if o.ID == c.m.At {
			c.force(c.u.outs[i], to)
		}
	}
}

func buildBoard(b *builder, i int, p *Part, k *Kind, u *built) {
	r, c := b.terminal(p, "r"), b.terminal(p, "c")
	u.main = b.path(i, r, c, b.param(p, k, "ohms"), p.ID+" logic")
	u.gate = b.slot(0) // alive
	dead := b.modesThat(p, "dead")
	main, on, alive := u.main, b.param(p, k, "on"), u.gate
	b.later = append(b.later, func() {
		more := func(*state) float64 { return 1 }
		var deps []int32
		if e := p.Exprs["alive"]; e != nil {
			more, deps = b.expr(e)
		}
		b.define(alive, deps, func(s *state) float64 {
			return truth(s.across(main, false) >= s.val[on] && !s.any(dead) && more(s) > 0.5)
		})
	})
	b.needs = append(b.needs, alive)
	for _, o := range p.Outputs {
		ohms := b.slot(closedOhms)
		br := b.path(i, b.net(o.From), b.net(o.To), ohms, p.ID+" "+o.ID)
		gate := b.slot(0)
		b.branches[br].gate = gate
		drive := b.driveSlot + int32(b.driveIndex[o.ID])
		b.define(gate, []int32{alive}, func(s *state) float64 { return truth(s.val[alive] > 0.5 && s.val[drive] > 0.5) })
		u.outs, u.outSlot = append(u.outs, br), append(u.outSlot, gate)
	}
	for _, in := range p.Inputs {
		x, _, err := convert(in.Ohms, "ohm")
		if err != nil {
			b.fail("part %s: input %s: %w", p.ID, in.ID, err)
		}
		u.ins = append(u.ins, b.path(i, b.net(in.Net), b.net(in.To), b.slot(x), p.ID+" "+in.ID))
	}
	if p.Ports["fs"] != "" && p.Ports["earth"] != "" {
		u.other = b.add(branch{n: 2, node: [4]int32{b.terminal(p, "fs"), b.terminal(p, "earth")}, part: i, label: p.ID + " flame input",
			ac: -1, dc: b.param(p, k, "sense_ohms"), acEmf: -1, dcEmf: -1, gate: -1})
	}
}

// input is 1 while the board sees volts at one of its inputs.
func (b *builder) input(name string, p *Part, u *built, j int) int32 {
	x, _, err := convert(p.Inputs[j].On, "V")
	if err != nil {
		b.fail("part %s: input %s: %w", p.ID, p.Inputs[j].ID, err)
	}
	var blind, stuck []int32
	for _, m := range p.Modes {
		if md := &b.m.Modes[m]; md.At == p.Inputs[j].ID {
			switch md.Does {
			case "input-blind":
				blind = append(blind, b.modeSlot+int32(m))
			case "input-stuck":
				stuck = append(stuck, b.modeSlot+int32(m))
			}
		}
	}
	branch := u.ins[j]
	return b.define(b.named(name, 0), nil, func(s *state) float64 {
		return truth(!s.any(blind) && (s.any(stuck) || s.across(branch, false) >= x))
	})
}

func boardFlame(q *ask) int32 {
	b := q.b
	current, at := b.prop(q.i, "microamps_now", q.line), b.param(q.p, q.k, "flame_at")
	dead, stuck := b.modesThat(q.p, "sense-dead"), b.modesThat(q.p, "sense-stuck")
	senses := func(*state) float64 { return 1 }
	deps := []int32{current}
	if e := q.p.Exprs["senses"]; e != nil {
		f, d := b.expr(e)
		senses, deps = f, append(deps, d...)
	}
	return q.def(func(s *state) float64 {
		return truth(!s.any(dead) && (s.any(stuck) || s.val[current] >= s.val[at] && senses(s) > 0.5))
	}, deps...)
}
