package appliance

import "readback/core/unit"

var _ = register(&Kind{
	Name: "passage", Doc: "lets air, gas, water or heat pass: 1 when clear",
	Params:  []Param{{Name: "clear", Dim: unit.Count, Optional: true, Unit: "x", Default: 1}},
	Exprs:   []Slot{{"when", "besides being clear, what must hold for anything to pass"}},
	Effects: []Effect{effFactor, effNone, effSet},
	Props:   []Prop{{Name: "passes", Doc: "share that passes", calc: func(q *ask) int32 { return q.amount("clear", "when") }}},
	Passes:  Through, Proof: provedBySelf,
	build: buildState,
})
