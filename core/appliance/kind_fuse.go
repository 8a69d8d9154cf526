package appliance

import (
	"math"

	"readback/core/unit"
)

var _ = register(&Kind{
	Name: "fuse", Doc: "opens for good when its current exceeds the rating; also a breaker",
	Ports: twoEnds, Params: []Param{{Name: "rating", Dim: unit.Current, Unit: "A"}, ohmsParam("ohms", closedOhms)},
	Effects: []Effect{effOpen, effResist, {Name: "short", Params: effShortParams, Doc: "bridged", do: effShort.do}, effSet},
	Props:   []Prop{{Name: "blown", Doc: "1 when open", calc: hasBlown}, propAmps},
	Passes:  Joins, Proof: provedBySelf,
	Drawn: []Drawn{{A: "a", B: "b", Symbol: &Symbol{
		SVG: `<path d="M0 0h44m44 0h44"/><path d="M44 0c8 -14 14 -14 22 0s14 14 22 0"/>`}}},
	build: func(b *builder, i int, p *Part, k *Kind, u *built) {
		u.main = b.ends(i, p, k, "ohms")
		u.latch = b.slot(0)
		main, rating := u.main, b.param(p, k, "rating")
		b.branches[main].gate, b.branches[main].invert = u.latch, true
		b.latches = append(b.latches, latch{slot: u.latch, part: p.ID, keeps: true, fast: true,
			over: func(s *state) float64 { return math.Abs(s.current(main)) / s.val[rating] }})
	},
})
