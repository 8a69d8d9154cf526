package appliance

import "math"

// define registers how a slot follows from the state.
func (b *builder) define(slot int32, deps []int32, fn func(*state) float64) int32 {
	b.calcs[slot] = &calc{slot, deps, fn}
	return slot
}

// part makes the branches of one part and says what its modes do to them.
func (b *builder) part(i int) {
	p := &b.m.Parts[i]
	k := KindOf(p.Kind)
	if k == nil {
		b.fail("part %s: no kind %q", p.ID, p.Kind)
		return
	}
	for _, prt := range k.Ports {
		if p.Ports[prt.Name] == "" && !prt.Optional {
			b.fail("part %s: port %s joins no net", p.ID, prt.Name)
			return
		}
	}
	u := &b.built[i]
	*u = built{main: -1, other: -1, third: -1, gate: -1, latch: -1, factor: -1, off: -1}
	switch p.Kind {
	case "supply":
		u.main = b.path(i, b.terminal(p, "l"), b.terminal(p, "n"), b.param(p, k, "ohms"), p.ID)
		b.branches[u.main].acEmf = b.param(p, k, "volts")
	case "wire":
		u.main = b.ends(i, p, k, "ohms")
	case "pair":
		b.pair(i, p, k, u)
	case "fuse":
		u.main = b.ends(i, p, k, "ohms")
		b.fuse(i, p, k, u)
	case "switch", "contact":
		u.main = b.ends(i, p, k, "ohms")
		b.contact(i, p, u)
	case "relay":
		b.relay(i, p, k, u)
	case "transformer":
		b.transformer(i, p, k, u)
	case "load":
		b.load(i, p, k, u)
	case "rod":
		b.rod(i, p, k, u)
	case "emf":
		b.emf(i, p, k, u)
	case "board":
		b.control(i, p, k, u)
	case "capacitor": // its current does not pass the network: its load asks for its health
		if p.Ports["a"] != "" && p.Ports["b"] != "" {
			b.terminal(p, "a")
			b.terminal(p, "b")
		}
		u.factor, u.off = b.slot(1), b.slot(0)
	case "passage", "thing":
		u.factor, u.off = b.slot(1), b.slot(0)
	default:
		b.fail("part %s: kind %q has no behaviour", p.ID, p.Kind)
	}
	for _, m := range p.Modes {
		b.effect(m, p, k, u)
	}
}

// ends is the branch between ports a and b.
func (b *builder) ends(i int, p *Part, k *Kind, ohms string) int {
	return b.path(i, b.terminal(p, "a"), b.terminal(p, "b"), b.param(p, k, ohms), p.ID)
}

func (b *builder) pair(i int, p *Part, k *Kind, u *built) {
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

func (b *builder) fuse(i int, p *Part, k *Kind, u *built) {
	u.latch = b.slot(0)
	main, rating := u.main, b.param(p, k, "rating")
	b.branches[main].gate, b.branches[main].invert = u.latch, true
	b.latches = append(b.latches, latch{slot: u.latch, part: p.ID, keeps: true, fast: true, over: func(s *state) float64 { return math.Abs(s.current(main)) / s.val[rating] }})
}

// contact gives a switch or a sensed contact its gate: what closes it, what trips it, the cover that presses it.
func (b *builder) contact(i int, p *Part, u *built) {
	u.gate = b.slot(1)
	b.branches[u.main].gate = u.gate
	pressed, hasPress := b.pressed[i]
	if p.Exprs["trips"] != nil {
		u.latch = b.slot(0)
	}
	gate, tripped := u.gate, u.latch
	b.later = append(b.later, func() {
		closes := func(*state) float64 { return 1 }
		var deps []int32
		if e := p.Exprs["closes"]; e != nil {
			closes, deps = b.expr(e)
		}
		b.define(gate, deps, func(s *state) float64 {
			return truth(closes(s) > 0.5 && (!hasPress || s.val[pressed] > 0.5) && (tripped < 0 || s.val[tripped] < 0.5))
		})
		if e := p.Exprs["trips"]; e != nil {
			trips, deps := b.expr(e)
			b.needs = append(b.needs, deps...)
			b.latches = append(b.latches, latch{slot: tripped, part: p.ID, keeps: p.Words["reset"] == "manual", over: func(s *state) float64 { return trips(s) * 1.0001 }})
		}
	})
}

func (b *builder) relay(i int, p *Part, k *Kind, u *built) {
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

func (b *builder) transformer(i int, p *Part, k *Kind, u *built) {
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
	u.third = b.add(branch{n: 2, node: [4]int32{s1, s2}, part: i, label: p.ID + " secondary", ac: -1, dc: sr, acEmf: -1, dcEmf: -1, gate: -1, off: 1 / openOhms})
	if _, ok := p.Params["link"]; ok {
		link := b.param(p, k, "link")
		b.latches = append(b.latches, latch{slot: u.latch, part: p.ID, keeps: true, fast: true, over: func(s *state) float64 { return math.Abs(s.current(main)) / s.val[link] }})
	}
}

func (b *builder) load(i int, p *Part, k *Kind, u *built) {
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

func (b *builder) rod(i int, p *Part, k *Kind, u *built) {
	rod, burner := b.terminal(p, "rod"), b.terminal(p, "burner")
	gate, emf := b.slot(0), b.slot(0)
	u.gate, u.factor = gate, b.slot(1)
	amps, flame, source := b.param(p, k, "microamps"), b.param(p, k, "flame_ohms"), b.param(p, k, "source")
	b.tol[emf] = b.tol[amps]
	u.main = b.add(branch{n: 2, node: [4]int32{rod, burner}, part: i, label: p.ID, ac: -1, dc: flame, acEmf: -1, dcEmf: emf, gate: gate, off: 1 / openOhms})
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

func (b *builder) emf(i int, p *Part, k *Kind, u *built) {
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

func (b *builder) control(i int, p *Part, k *Kind, u *built) {
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

// modesThat returns the slots of the part's modes with an effect.
func (b *builder) modesThat(p *Part, does string) []int32 {
	var out []int32
	for _, m := range p.Modes {
		if b.m.Modes[m].Does == does {
			out = append(out, b.modeSlot+int32(m))
		}
	}
	return out
}
