package appliance

var _ = register(&Kind{
	Name: "wire", Doc: "a conductor, splice, terminal or connector pin between two nets",
	Ports: twoEnds, Params: []Param{ohmsParam("ohms", closedOhms)},
	Effects: []Effect{effGap, effResist, effTouch, effSet},
	Props:   []Prop{propAmps},
	Passes:  Leads, Proof: provedBySelf,
	Drawn: []Drawn{{Symbol: symWire, A: "a", B: "b"}},
	build: func(b *builder, i int, p *Part, k *Kind, u *built) { u.main = b.ends(i, p, k, "ohms") },
})
