// Package examine is an outside examiner: a furnace with its own physics and a person in front of it, who talk to the guide
// only through the line protocol. It shares no model with the guide, so that what it finds says something about the world.
//
// The furnace knows volts, ohms, drafts, flames and temperatures. It was written from texts on how such furnaces work and from
// the wiring list that the protocol's catalogue gives; where the texts leave a choice, several units are built with different numbers.
package oracle

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Furnace is one unit on a wall, in a house, with what is wrong with it.
type Furnace struct {
	has    map[string]bool // faults now
	chance *rand.Rand

	// What hands have done.
	Switch, Breaker bool
	Calling         bool // the thermostat is set so that it should call
	Open            map[string]bool
	Lifted          map[string]bool // points whose wire is off
	Held            bool
	fuse, link      bool // still whole
	rolled          bool // a roll-out switch has tripped

	awake float64         // chance that an intermittent fault is there in a power cycle; 0: always
	there map[string]bool // intermittent faults that are there now
	unit  numbers

	tries  int        // starts left before lock-out
	seen   int        // step of this start that was looked at last
	wiring []partInfo // the wiring list of the catalogue
	Strict bool       // a start passes: what was missed is seen at the next one, and after the tries there is none
}

// numbers differ from unit to unit.
type numbers struct {
	line, second            float64 // V
	igniter, igniterHot     float64 // ohm
	draft, set              float64 // in. w.c.
	flame, least            float64 // uA
	rise, static, inlet     float64 // dF, in. w.c.
	fanCap, blowerCap       float64 // uF on the label
	coil, fanOhms, blowOhms float64
	fanOnLimit              bool // the draft fan runs, too, while a limit is open
}

// New builds a unit. The seed chooses its numbers within what such units have; intermittent is the chance that a fault of that kind is
// there in a power cycle.
func New(seed uint64, intermittent float64, faults ...string) *Furnace {
	r := rand.New(rand.NewPCG(seed, 77))
	within := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	f := &Furnace{
		has: map[string]bool{}, chance: r, Switch: true, Breaker: true, Calling: true, fuse: true, link: true,
		Open: map[string]bool{}, Lifted: map[string]bool{}, awake: intermittent, there: map[string]bool{}, tries: 3, seen: -1,
	}
	f.unit = numbers{
		line: within(116, 124), second: within(25.4, 27.6), igniter: within(48, 78), draft: within(0.85, 1.15), set: 0.50,
		flame: within(2.5, 5.5), least: 0.8, rise: within(46, 58), static: within(0.36, 0.47), inlet: within(6.6, 7.4), fanCap: 5, blowerCap: 7.5,
		coil: within(42, 56), fanOhms: within(12, 16), blowOhms: within(9, 16), fanOnLimit: r.Float64() < 0.5,
	}
	f.unit.igniterHot = f.unit.igniter * 0.5
	for _, x := range faults {
		f.has[x] = true
	}
	switch {
	case f.has["cool"] || f.has["off"] || f.has["low"] || f.has["schedule"]:
		f.Calling = false
	}
	f.Switch = !f.has["switched-off"]
	f.fuse = !f.has["fuse"]
	for x := range f.has {
		f.fuse = f.fuse && !catalogue[x].blown
	}
	f.link = !f.has["link"]
	f.PowerCycle()
	f.start(true) // the past: what a short has blown is blown
	return f
}

// bad tells whether a fault is there now.
func (f *Furnace) bad(name string) bool {
	if intermittents[name] && f.awake > 0 {
		return f.has[name] && f.there[name]
	}
	return f.has[name]
}

// intermittents are the faults that come and go when a chance is given.
var intermittents = map[string]bool{"w-loose": true, "hot-crack": true, "vent-partly": true, "fan-hot": true}

// PowerCycle lets intermittent faults come and go, and ends a lock-out.
func (f *Furnace) PowerCycle() {
	for name := range intermittents {
		f.there[name] = f.chance.Float64() < f.awake
	}
	f.NewStart()
}

// NewStart ends a lock-out: the call was taken away, or the power.
func (f *Furnace) NewStart() { f.tries, f.seen = 3, -1 }

// Mend takes away what a repair of that part, done in that way, takes away. It tells whether anything was wrong with it.
func (f *Furnace) Mend(part, kind string) bool {
	good := false
	for name := range f.has {
		if x := catalogue[name]; slices.Contains(x.parts, part) && (kind != "clean" || !x.broken) {
			delete(f.has, name)
			good = true
		}
	}
	switch part {
	case "board-fuse":
		good = good || !f.fuse
		f.fuse = true
	case "transformer":
		good = good || !f.link
		f.link = true
	case "furnace-switch":
		f.Switch = true
	}
	f.NewStart()
	return good
}

// NewFuse is a fresh fuse in the board.
func (f *Furnace) NewFuse() { f.fuse = true; delete(f.has, "fuse") }

// Live tells whether the mains are on up to the furnace.
func (f *Furnace) Live() bool {
	return f.Switch && f.Breaker && !f.has["dark"] && !f.has["tripped"] && !f.has["switch-worn"] && !f.has["line-open"]
}

// inf is an open circuit.
var inf = math.Inf(1)

func open(x bool) float64 {
	if x {
		return inf
	}
	return 0.05
}

// now is what is closed and driven at a moment.
type now struct {
	out    map[string]bool // IND, IGN, GV, BLW
	press  bool            // the pressure switch has closed
	limit  bool            // the high limit is open from heat
	hot    bool            // the igniter is hot
	called bool
}

// conductors is the wiring of the unit at a moment. With ohms, every motor and coil has the resistance of its winding.
func (f *Furnace) conductors(s now, ohms bool) []edge {
	u := &f.unit
	wind := func(dc, ac float64) float64 {
		if ohms {
			return dc
		}
		return ac
	}
	line, neutral := "LS-out", "NJ"
	if f.bad("reversed") {
		line, neutral = neutral, line
	}
	sag := func(name string) float64 {
		if f.bad(name) {
			return 6.5
		}
		return 0.12
	}
	door := f.bad("door-worn") || !f.Held && (f.bad("ajar") || f.Open["lower-bay"])
	ign := wind(u.igniter, u.igniterHot)
	switch {
	case f.bad("cracked") || f.bad("hot-crack") && s.hot && !ohms:
		ign = inf
	case f.bad("aged"):
		ign *= 2.2
	case f.bad("wrong-igniter"):
		ign *= 0.25
	}
	stat := inf
	if s.called && !f.bad("stat-open") && !f.bad("steals") && !f.bad("heat-pump") && !f.bad("batteries") && f.statPowered() {
		stat = 0.1
		if f.bad("stat-burnt") {
			stat = 4000
		}
	} else if f.bad("steals") {
		stat = 1500
	}
	limit := inf
	if !f.bad("limit-open") && !s.limit && !(f.bad("limit-early") && s.out["BLW"]) {
		limit = 0.1
		if f.bad("limit-burnt") {
			limit = 70
		}
	}
	press := inf
	if s.press {
		press = 0.1
		if f.bad("press-burnt") {
			press = 70
		}
	}
	rollout := f.bad("roll-left") || f.rolled
	w, y := "W", "Y"
	if f.bad("wrong-terminal") {
		w, y = "Y", "W-free"
	}
	float := f.bad("float") || f.bad("pan")
	coil := u.coil
	if f.bad("coil-open") {
		coil = inf
	} else if f.bad("coil-shorted") {
		coil = 1.5
	}
	fan := wind(u.fanOhms, 110)
	if f.bad("fan-winding") || f.bad("fan-hot") && s.out["IND"] {
		fan = inf
	} else if f.bad("fan-seized") && !ohms {
		fan = 45
	}
	blower := wind(u.blowOhms, 20)
	if f.bad("blower-winding") || f.bad("blower-hot") && s.limit {
		blower = inf
	} else if f.bad("blower-seized") && !ohms {
		blower = 9
	}
	relay := func(o string) float64 {
		welded := o == "IND" && f.bad("board-fan-welded")
		dead := f.bad(map[string]string{"IND": "board-fan", "IGN": "board-igniter", "GV": "board-gas", "BLW": "board-blower"}[o])
		return open(!welded && (dead || !s.out[o]))
	}
	primary, second := wind(28, 1400), wind(0.9, inf)
	if f.bad("primary-open") {
		primary = inf
	}
	if ohms && (f.bad("secondary-open") || !f.link) {
		second = inf
	}
	tap := "BLW-m"
	if f.bad("tap-wrong") {
		tap = "tap-wrong"
	}
	list := []struct {
		part, pa, a, pb, b string
		ohms               float64
	}{
		{"breaker", "a", "HOT", "b", "B1", open(!f.Breaker || f.bad("tripped"))},
		{"line-run", "a", "B1", "b", "LS-in", math.Max(sag("line-loose"), open(f.bad("line-open")))},
		{"neutral-run", "a", "NEU", "b", "NJ", math.Max(sag("neutral-loose"), open(f.bad("neutral-open")))},
		{"ground-run", "a", "NEU", "b", "CHASSIS", math.Max(0.2, open(f.bad("ground-open")))},
		{"furnace-switch", "a", "LS-in", "b", "LS-out", open(!f.Switch || f.bad("switch-worn"))},
		{"junction", "in1", line, "out1", "L1", 0.05},
		{"junction", "in2", neutral, "out2", "N", 0.05},
		{"door-switch", "a", "L1", "b", "L-door", open(door)},
		{"line-lead", "a", "L-door", "b", "LB", open(f.bad("hot-lead"))},
		{"neutral-lead", "a", "N", "b", "NB", open(f.bad("neutral-lead"))},
		{"transformer", "p1", "LB", "p2", "NB", primary},
		{"transformer", "s1", "SEC-R", "s2", "SEC-C", second},
		{"secondary-lead", "a", "SEC-R", "b", "R-sec", open(f.bad("r-lead"))},
		{"common-lead", "a", "SEC-C", "b", "C", open(f.bad("c-lead"))},
		{"common-bond", "a", "C", "b", "CHASSIS", open(f.bad("bond-open"))},
		{"board-fuse", "a", "R-sec", "b", "R", open(!f.fuse)},
		{"y-wire", "a", y, "b", "Y-out", 0.2},
		{"contactor", "a", "Y-out", "b", "C", shorted(wind(18, 40), f.bad("contactor"), 1.2)},
		{"y-wire", "a", y, "x", "C", shorted(inf, f.bad("y-pinched"), 0.3)},
		{"float-switch", "a", "R", "b", "R-float", open(float)},
		{"float-lead", "a", "R-float", "b", "R-fl2", open(f.bad("float-lead"))},
		{"r-splice", "a", "R-fl2", "b", "R-splice", open(f.bad("r-splice"))},
		{"r-wire", "a", "R-splice", "b", "R-wall", math.Max(0.4, open(f.bad("r-broken")))},
		{"r-wire", "a", "R-splice", "x", "C", shorted(inf, f.bad("r-pinched"), 0.4)},
		{"r-terminal", "a", "R-wall", "b", "R-stat", open(f.bad("stat-r-off"))},
		{"c-wire", "a", "C", "b", "C-stat", math.Max(0.4, open(f.bad("c-broken")))},
		{"thermostat", "a", "R-stat", "b", "W-stat", stat},
		{"w-terminal", "a", "W-stat", "b", "W-wall", open(f.bad("stat-w-off"))},
		{"w-wire", "a", "W-wall", "b", "W-splice", math.Max(0.4, open(f.bad("w-broken")))},
		{"w-splice", "a", "W-splice", "b", "W-tail", open(f.bad("w-splice"))},
		{"w-tail", "a", "W-tail", "b", w, open(f.bad("w-loose"))},
		{"limit-lead", "a", "R", "b", "LIM-in", open(f.bad("limit-lead"))},
		{"high-limit", "a", "LIM-in", "b", "LIM-out", limit},
		{"rollout-left", "a", "LIM-out", "b", "RO-mid", open(rollout)},
		{"rollout-right", "a", "RO-mid", "b", "RO-out", open(f.bad("roll-right"))},
		{"string-lead", "a", "RO-out", "b", "HS", open(f.bad("string-pin"))},
		{"pressure-switch", "a", "HS", "b", "PS-b", press},
		{"pressure-lead", "a", "PS-b", "b", "PS-out", open(f.bad("press-lead"))},
		{"left-jumper", "a", "HS", "b", "PS-out", open(!f.bad("jumper"))},
		{"inducer-plug", "a", "IND", "b", "IND-m", open(f.bad("fan-plug"))},
		{"inducer", "a", "IND-m", "b", "IND-n", fan},
		{"inducer-protector", "a", "IND-n", "b", "NB", 0.05},
		{"igniter-plug", "a", "IGN", "b", "IGN-m", open(f.bad("glow-plug"))},
		{"igniter", "a", "IGN-m", "b", "IGN-n", ign},
		{"igniter-legs", "a", "IGN-n", "b", "NB", 0.05},
		{"valve-lead", "a", "GV", "b", "GV-1", open(f.bad("valve-lead"))},
		{"gas-valve", "a", "GV-1", "b", "GV-2", coil},
		{"valve-common", "a", "GV-2", "b", "C", open(f.bad("valve-common"))},
		{"flame-lead", "a", "FS", "b", "ROD", open(f.bad("rod-lead"))},
		{"flame-rod", "rod", "ROD", "burner", "BURNER", shorted(inf, f.bad("porcelain"), 40e3)},
		{"burner-ground", "a", "BURNER", "b", "CHASSIS", shorted(shorted(0.2, f.bad("burner-ground"), 5e6), f.bad("burner-poor"), 2600)},
		{"speed-lead", "a", "BLW", "b", tap, open(f.bad("tap-off"))},
		{"blower", "a", "BLW-m", "b", "BLW-n", blower},
		{"blower-protector", "a", "BLW-n", "b", "NB", 0.05},
		{"blower", "a", "BLW-m", "x", "CHASSIS", shorted(inf, f.bad("blower-grounded"), 60)},
	}
	var out []edge
	for _, l := range list {
		out = append(out, edge{f.end(l.part, l.pa, l.a), f.end(l.part, l.pb, l.b), l.ohms})
	}
	for _, o := range []string{"IND", "IGN", "BLW"} {
		out = append(out, edge{"LB", o, relay(o)})
	}
	out = append(out, edge{"PS-out", "GV", relay("GV")}, edge{"R", "C", 320}, edge{"W", "C", 1450}, edge{"HS", "C", 1600}, edge{"PS-out", "C", 1600})
	return out
}

// shorted is the resistance of something that a fault may bridge.
func shorted(ohms float64, fault bool, through float64) float64 {
	if fault {
		return through
	}
	return ohms
}

// end is the node of a part's terminal: its own while the wire is off.
func (f *Furnace) end(part, port, net string) string {
	if f.Lifted[part+"."+port] {
		return part + "." + port
	}
	return net
}

// statPowered: a thermostat without batteries needs its common wire.
func (f *Furnace) statPowered() bool { return !f.bad("c-broken") }

// volts solves the circuit at a moment. extra joins two nodes, as a meter does.
func (f *Furnace) volts(s now, extra ...edge) map[string]float64 {
	edges := append(f.conductors(s, false), extra...)
	if f.has["dark"] {
		return solve(edges, nil)
	}
	mains := source{"HOT", "NEU", f.unit.line, 0.15}
	v := solve(edges, []source{mains})
	if f.bad("primary-open") || f.bad("secondary-open") || !f.link || f.Lifted["transformer.p1"] || f.Lifted["transformer.s1"] {
		return v
	}
	in := v["LB"] - v["NB"]
	second := source{"SEC-R", "SEC-C", f.unit.second * in / 120, 1.1}
	if f.bad("weak") {
		second.ohms = 30
	}
	return solve(edges, []source{mains, second})
}
