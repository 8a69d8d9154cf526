package appliance

var _ = register(&Kind{
	Name: "thing", Doc: "anything with a state of its own that is not electrical: a gas cock, a setting, a filter",
	Params:  []Param{{Name: "value", Dim: "", Optional: true, Unit: "x", Default: 1}},
	Exprs:   []Slot{{"is", "its value, besides what its modes do to it"}},
	Effects: []Effect{effFactor, effNone, effSet, {Name: "wrong", Doc: "only its mode is asked for", do: ownSlot}},
	Props: []Prop{{Name: "value", Doc: "its value; 1 when healthy unless the file says otherwise",
		calc: func(q *ask) int32 { return q.amount("value", "is") }}},
	Passes: Through, Proof: provedBySelf,
	build: buildState,
})
