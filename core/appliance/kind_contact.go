package appliance

var _ = register(&Kind{
	Name: "contact", Doc: "opened and closed by something sensed: a limit, a pressure switch, a thermostat",
	Ports: twoEnds,
	Params: []Param{{Name: "set", Dim: "", Optional: true}, {Name: "opens_at", Dim: "", Optional: true},
		ohmsParam("ohms", closedOhms)},
	Exprs:   []Slot{{"closes", "closed while true; left out: closed"}, {"trips", "opens when true and stays open"}},
	Words:   []Word{{"reset", []string{"auto", "manual"}}},
	Effects: []Effect{effStuckO, effStuckC, effResist, effSet, effTouch},
	Props:   []Prop{propClosed, {Name: "tripped", Doc: "1 when it has tripped", calc: hasTripped}, propAmps},
	Passes:  Joins, Proof: provedBySelf,
	Drawn: []Drawn{{Symbol: symContact, A: "a", B: "b"}},
	build: buildContact,
})

func hasTripped(q *ask) int32 {
	latch := q.u.latch
	if latch < 0 {
		return q.def(func(*state) float64 { return 0 })
	}
	return q.def(func(s *state) float64 { return s.val[latch] })
}
