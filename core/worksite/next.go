package worksite

// Next gives the next act on the way from s to n. ok is false when s already is what n asks for.
//
// The order is fixed: what must not stay comes out first; then the supply is cut and proved if fingers have to go in;
// then wires, covers, jumpers and meters; last the supply comes back. It is computed anew from the state each time, so
// whatever happens in between there is always a way on.
func (r *Rules) Next(s State, n Need) (a Act, ok bool) {
	held := r.Held(n)
	switch {
	case s.Jumper != 0 && s.Jumper != n.Jumper:
		return r.cutFirst(s, Act{JumperOut, s.Jumper - 1})
	case s.Series != 0 && s.Series != n.Series:
		return r.cutFirst(s, Act{MeterOut, s.Series - 1})
	case s.Jack && s.Series == 0:
		return Act{JackOut, -1}, true
	case s.Held && !held:
		return r.cutFirst(s, Act{FreeDoor, -1})
	}
	if n.Power == Any && !n.Shut && s.Power != Off && s.Power != Proved && r.exposed(s) {
		return Act{PowerOff, -1}, true // nobody talks beside an open cabinet that may be live
	}
	if n.Power == Any && !n.Shut && n.Covers.Minus(s.Covers).Empty() {
		return r.call(s, n)
	}
	away := r.elsewhere(s, n)
	wires := s.Wires != n.Wires && (n.Power != Any || n.Shut || !away.Empty()) // nobody walks away from a wire that is off
	fit := n.Jumper != s.Jumper || n.Series != s.Series
	if (n.Power == Dead || wires || fit) && s.Power != Proved {
		if s.Series != 0 { // the meter is needed for the proof
			return r.cutFirst(s, Act{MeterOut, s.Series - 1})
		}
		return r.prove(s)
	}
	if wires {
		return r.wire(s, n)
	}
	if !away.Empty() {
		return r.coverAct(s, Act{CloseCover, int16(r.innermost(away))})
	}
	if missing := n.Covers.Minus(s.Covers); !missing.Empty() {
		for p := range missing.Each {
			if r.around[p].Without(p).Minus(s.Covers).Empty() {
				return r.coverAct(s, Act{OpenCover, int16(p)})
			}
		}
	}
	if n.Power == Live || n.Shut {
		extra := s.Covers.Minus(n.Covers)
		if !n.Shut { // what hides nothing that hurts may stay open
			extra = extra.And(r.hazard)
		}
		if !extra.Empty() {
			return r.coverAct(s, Act{CloseCover, int16(r.innermost(extra))})
		}
	}
	if n.Jumper != s.Jumper {
		return Act{JumperIn, n.Jumper - 1}, true
	}
	if n.Series != s.Series {
		return Act{MeterIn, n.Series - 1}, true
	}
	if n.Shut && !s.Resets.Empty() {
		return Act{NoteReset, int16(s.Resets.First())}, true
	}
	if held && !s.Held {
		return r.cutFirst(s, Act{HoldDoor, -1})
	}
	switch n.Power {
	case Cut:
		if s.Power != Off && s.Power != Proved {
			return Act{PowerOff, -1}, true
		}
	case Live:
		if s.Power == Unknown && s.Open() {
			return Act{PowerOff, -1}, true
		}
		if n.Place != s.Placed && n.Place != 0 {
			if s.Call != No {
				return Act{CallOff, -1}, true
			}
			return r.cutFirst(s, Act{PlaceLeads, n.Place - 1})
		}
		if s.Power != On {
			return Act{PowerOn, -1}, true
		}
	}
	return r.call(s, n)
}

// elsewhere are open covers in other places than the one where the work goes on: nobody walks away from an open cabinet.
// Where dead is proved may stay open.
func (r *Rules) elsewhere(s State, n Need) Set {
	if n.Covers.Empty() || s.Covers == n.Covers {
		return Set{}
	}
	stay := n.Covers.Or(r.dead)
	for c := range n.Covers.Each {
		stay = stay.Or(r.near[c])
	}
	return s.Covers.Minus(stay)
}

// exposed tells whether something that hurts lies open.
func (r *Rules) exposed(s State) bool {
	return !s.Covers.And(r.hazard).Empty() || !s.Wires.Empty()
}

func (r *Rules) call(s State, n Need) (Act, bool) {
	switch {
	case n.Call == Yes && s.Call != Yes:
		return Act{CallOn, -1}, true
	case n.Call == No && s.Call != No:
		return Act{CallOff, -1}, true
	}
	return Act{}, false
}

// cutFirst is the act, or the switching off that has to come before it.
func (r *Rules) cutFirst(s State, a Act) (Act, bool) {
	if s.Power != Off && s.Power != Proved {
		return Act{PowerOff, -1}, true
	}
	return a, true
}

// prove is the next act of switching off and live-dead-live.
func (r *Rules) prove(s State) (Act, bool) {
	if s.Power != Off {
		return Act{PowerOff, -1}, true
	}
	for p := range r.dead.Minus(s.Covers).Each {
		if r.around[p].Without(p).Minus(s.Covers).Empty() {
			return Act{OpenCover, int16(p)}, true
		}
	}
	return Act{ProveLive + Kind(s.Proof), -1}, true
}

// wire is the next wire to refit or to lift, its cover opened first. The supply is proved off here.
func (r *Rules) wire(s State, n Need) (Act, bool) {
	a := Act{LiftWire, int16(n.Wires.Minus(s.Wires).First())}
	switch c := r.capacitor[max(a.N, 0)]; {
	case a.N < 0 || c == 0:
	case s.Drained.Part != c:
		a.Kind = Discharge
	case !s.Drained.Shown:
		a.Kind = ProveEmpty
	}
	if extra := s.Wires.Minus(n.Wires); !extra.Empty() {
		a = Act{RefitWire, int16(extra.Last())}
	}
	for p := range r.cover(r.pointAt[a.N]).Minus(s.Covers).Each {
		if r.around[p].Without(p).Minus(s.Covers).Empty() {
			return Act{OpenCover, int16(p)}, true
		}
	}
	return a, true
}

// coverAct is the moving of a cover, after the switching off it may need.
func (r *Rules) coverAct(s State, a Act) (Act, bool) {
	if r.hazard.Has(int(a.N)) {
		return r.cutFirst(s, a)
	}
	return a, true
}

// innermost is a place of the set with no other of the set inside it.
func (r *Rules) innermost(set Set) int {
	best, depth := set.First(), -1
	for p := range set.Each {
		if d := r.around[p].Len(); d > depth {
			best, depth = p, d
		}
	}
	return best
}

// Plan is the whole way from s to n when every act is answered as hoped. It panics when there is none within 200 acts,
// which the prover excludes for every equipment file.
func (r *Rules) Plan(s State, n Need) []Act {
	var out []Act
	for len(out) < 200 {
		a, ok := r.Next(s, n)
		if !ok {
			return out
		}
		out, s = append(out, a), r.Apply(s, a, Done)
	}
	panic("site: no way to what the check needs")
}

// Restore is the way to leave the place with the supply on or off.
func (r *Rules) Restore(s State, on bool) []Act { return r.Plan(s, Leave(on)) }
