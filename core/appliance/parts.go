package appliance

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
	if k.build == nil {
		b.fail("part %s: kind %q has no behaviour", p.ID, p.Kind)
		return
	}
	k.build(b, i, p, k, u)
	for _, m := range p.Modes {
		b.effect(m, p, k, u)
	}
}

// ends is the branch between ports a and b.
func (b *builder) ends(i int, p *Part, k *Kind, ohms string) int {
	return b.path(i, b.terminal(p, "a"), b.terminal(p, "b"), b.param(p, k, ohms), p.ID)
}

// buildState is the behaviour of what is not electrical: how much of it is left.
func buildState(b *builder, _ int, _ *Part, _ *Kind, u *built) {
	u.factor, u.off = b.slot(1), b.slot(0)
}

// buildContact gives a switch or a sensed contact its gate: what closes it, what trips it, the cover that presses it.
func buildContact(b *builder, i int, p *Part, k *Kind, u *built) {
	u.main = b.ends(i, p, k, "ohms")
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
			b.latches = append(b.latches, latch{slot: tripped, part: p.ID, keeps: p.Words["reset"] == "manual",
				over: func(s *state) float64 { return trips(s) * 1.0001 }})
		}
	})
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
