package appliance

var _ = register(&Kind{
	Name:  "switch",
	Doc:   "worked by hand, or pressed by a cover that trips it; closed when healthy unless \"closes\" says otherwise",
	Ports: twoEnds, Params: []Param{ohmsParam("ohms", closedOhms)},
	Exprs:   []Slot{{"closes", "closed while true"}},
	Effects: []Effect{effOff, effStuckO, effStuckC, effResist},
	Props:   []Prop{propClosed, propAmps},
	Passes:  Joins, Proof: provedBySelf,
	Drawn: []Drawn{{A: "a", B: "b", Symbol: &Symbol{
		SVG: drawnEnds + drawnTerminals + `<path d="M49 -2L82 -16"/><path d="M66 -9v-9m-5 0h10"/>`}}},
	build: buildContact,
})
