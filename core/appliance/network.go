package appliance

import (
	"fmt"
	"math"
	"strings"
)

// branch is one path of the network: the drop along it is Σ coef·volts less its e.m.f., and the current is that drop
// over its ohms. Two nodes make a resistor; four make an ideal transformer with its resistance.
type branch struct {
	n     int
	node  [4]int32 // -1 is the datum
	coef  [4]float64
	part  int // -1: a lifted end or a jumper
	label string

	ac, dc       int32 // slots of its ohms; -1: not there for that current
	acEmf, dcEmf int32 // slots of its e.m.f., V; -1: none
	gate         int32 // slot: conducts while above one half; -1: always
	invert       bool  // conducts while the gate is not above one half
	off          float64
}

// builder makes an engine from a model.
type builder struct {
	*Engine
	err    error
	byName map[string]int32 // slots with names
	calcs  map[int32]*calc  // by slot, before they are ordered
	walked map[int32]bool
	built  []built
	later  []func() // what needs every net to be known
}

// built is what a part became: its branches, and the slots its properties are read from.
type built struct {
	main, other, third int   // branches, -1 when the kind has none
	gate               int32 // slot: conducts, -1
	latch              int32 // slot: blown, tripped, opened hot; -1
	factor             int32 // slot: share of its work that its modes leave, -1
	off                int32 // slot: a mode takes all its work, -1
	outs, ins          []int // branches of a board's outputs and inputs
	outSlot            []int32
}

// calc works out one slot from the state. Deps are the slots it reads.
type calc struct {
	slot int32
	deps []int32
	fn   func(*state) float64
}

// latch is something that opens for good: over returns by how much it is overdone, above 1 it goes.
type latch struct {
	part  string
	slot  int32
	keeps bool // stays through power cycles and rest
	fast  bool // acts within a moment, before a contact has dropped out
	over  func(*state) float64
}

func (b *builder) slot(init float64) int32 {
	b.init = append(b.init, init)
	b.tol = append(b.tol, 0)
	return int32(len(b.init) - 1)
}

func (b *builder) named(name string, init float64) int32 {
	if s, ok := b.byName[name]; ok {
		return s
	}
	s := b.slot(init)
	b.byName[name] = s
	return s
}

func (b *builder) fail(format string, args ...any) {
	if b.err == nil {
		b.err = fmt.Errorf("appliance: "+format, args...)
	}
}

// net is the node of a net, made when it is new.
func (b *builder) net(name string) int32 {
	if name == b.datum {
		return -1
	}
	if i, ok := b.nodes[name]; ok {
		return i
	}
	i := int32(len(b.nodeNames))
	b.nodes[name] = i
	b.nodeNames = append(b.nodeNames, name)
	return i
}

// terminal is the node of a part's port: the net itself, or a node of its own when its wire can be lifted.
func (b *builder) terminal(p *Part, port string) int32 {
	net := p.Ports[port]
	full := p.ID + "." + port
	if !b.liftable[full] {
		return b.net(net)
	}
	if i, ok := b.nodes[full]; ok {
		return i
	}
	t := b.net(full)
	lift := b.slot(0)
	b.lifts[full] = lift
	ohms := b.slot(liftOhms)
	b.add(branch{n: 2, node: [4]int32{b.net(net), t}, part: -1, label: "lift " + full, ac: ohms, dc: ohms, acEmf: -1, dcEmf: -1, gate: lift, invert: true, off: 1 / openOhms})
	return t
}

func (b *builder) add(br branch) int {
	if br.n == 2 {
		br.coef = [4]float64{1, -1}
	}
	b.branches = append(b.branches, br)
	return len(b.branches) - 1
}

// path is a branch of two ends for both currents.
func (b *builder) path(part int, x, y int32, ohms int32, label string) int {
	return b.add(branch{n: 2, node: [4]int32{x, y}, part: part, label: label, ac: ohms, dc: ohms, acEmf: -1, dcEmf: -1, gate: -1, off: 1 / openOhms})
}

// bridge is a branch that is there only while the slot is set.
func (b *builder) bridge(part int, x, y int32, ohms, tol float64, gate int32, label string) int {
	o := b.slot(ohms)
	b.tol[o] = tol
	return b.add(branch{n: 2, node: [4]int32{x, y}, part: part, label: label, ac: o, dc: o, acEmf: -1, dcEmf: -1, gate: gate})
}

// param is the slot of a part's parameter in the unit of its kind. Left out and without default it is zero.
func (b *builder) param(p *Part, k *Kind, name string) int32 {
	key := p.ID + "#" + name
	if s, ok := b.byName[key]; ok {
		return s
	}
	q, given := p.Params[name]
	prm := k.Param(name)
	x, half := 0.0, 0.0
	switch {
	case given:
		to := q.Unit
		if prm != nil && prm.Unit != "" && prm.Dim != "" {
			to = prm.Unit
		}
		var err error
		if x, half, err = convert(q, to); err != nil {
			b.fail("part %s: %s: %w", p.ID, name, err)
		}
	case prm != nil:
		x, half = prm.Default, prm.Default*unknownTol
	}
	s := b.named(key, x)
	if x != 0 {
		b.tol[s] = half / math.Abs(x)
	}
	return s
}

// point is the node a lead touches.
func (b *builder) point(net string) int32 {
	if part, port, ok := strings.Cut(net, "."); ok {
		if i, known := b.partIndex[part]; known && b.m.Parts[i].Ports[port] != "" {
			return b.terminal(&b.m.Parts[i], port)
		}
	}
	return b.net(net)
}
