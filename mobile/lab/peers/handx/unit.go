package handx

import (
	"math"
	"math/rand"
)

// unit is the furnace, its house and what is wrong with them. The zero fault state is a good furnace.
type unit struct {
	rng *rand.Rand

	// r is the resistance of each wire, contact and plug by the name of its part, in ohms.
	r map[string]float64

	line        float64 // volts of the house
	turns       float64 // secondary volts for one volt of the primary, no load
	igniterCold float64 // ohms at room temperature
	igniterHot  float64 // ohms when it glows at 120 V
	blowerDC    float64
	inducerDC   float64
	valveDC     float64
	primaryDC   float64
	secondaryDC float64
	cIn         float64 // ohms of the call input of the board
	capBlower   float64 // microfarads now
	capInducer  float64
	flameGood   float64 // microamps of a clean rod in a good flame
	rod         float64 // share of that current which the rod still gives, 0 to 1
	rodLeak     float64 // ohms over the porcelain to the burner metal
	shortR      float64 // ohms from the R wire in the cable to common; open when good
	humidShort  bool    // the humidifier valve is shorted: the fuse blows at each call
	psSet       float64 // closing point of the pressure switch, inches of water
	limitOpens  float64 // degrees Fahrenheit at the limit
	gas         float64 // share of the rated gas flow

	boardDead                               bool
	relayIgn, relayInd, relayGas, relayBlow bool // true: the contact never closes
	psStuckClosed, psStuckOpen              bool
	inducerStuck, inducerOpen               bool
	inducerWheelLoose                       bool
	blowerStuck, blowerOpen                 bool
	wheelDirt                               float64 // share of air lost
	wheelLoose                              bool
	valveStuck                              bool
	valveLeaks                              bool
	igniterAway                             bool // out of its bracket
	igniterCrackSeen                        bool
	rodAway                                 bool
	rodCrackSeen                            bool
	hose                                    string // "", "off-port", "split", "wet"
	portBlock                               bool
	fanDrain                                bool // drain of the draft fan blocked
	ventBlock                               bool
	ventApart                               bool
	intakeBlock                             bool
	coilDrain                               bool // the coil pan is full, the float is up
	humidLeak                               bool
	floorWet                                bool
	flooded                                 bool
	filterDirt                              float64 // share of air lost
	registersShut                           bool
	returnBlock                             bool
	coilDirt                                float64
	ductApart                               bool
	speedWrong                              bool
	speedLoose                              bool
	wOnY                                    bool
	cockShut                                bool
	valveSwitchOff                          bool
	gasOut                                  bool
	crossover                               bool
	burnersDirty                            bool
	overfire                                float64 // share above the rating
	late                                    bool    // lights late with a thump
	rolls                                   bool    // flame rolls out
	crack                                   bool    // heat exchanger cracked
	soot                                    bool
	scorch                                  string // "", "burnt", "sooty"
	odour                                   bool
	coAlarm                                 bool
	ill                                     bool
	jumper                                  string // part that is bridged
	reversed                                bool   // line and neutral are swapped
	panelLoose                              bool
	batteriesDead                           bool
	mode                                    string // heat, cool, off
	setBelow                                bool
	schedule                                bool
	setupWrong                              bool
	houseDark                               bool
	breakerTripped                          bool
	breakerAgain                            bool // trips again at once
	switchOff                               bool
	comesAndGoes                            bool // fails at some starts only; it does not fail while it is watched
	capSwollen                              bool
	coldSnap                                bool

	// What people do.
	power   bool // both switch and breaker are on, as the person left them
	breaker bool // lever on
	sw      bool // furnace switch on
	call    bool
	covers  map[string]bool // open covers
	lifted  map[string]bool
	held    bool // the door switch is held in by hand

	known string // the state of which last is the start
	last  start
}

// newUnit draws a good furnace: each good part within its own tolerance.
func newUnit(rng *rand.Rand) *unit {
	about := func(v, share float64) float64 { return v * (1 + share*(2*rng.Float64()-1)) }
	u := &unit{
		rng: rng, r: map[string]float64{},
		line: about(120.5, 0.025), turns: about(0.228, 0.02),
		igniterCold: about(58, 0.25), igniterHot: about(29, 0.08),
		blowerDC: about(5.5, 0.3), inducerDC: about(24, 0.25), valveDC: about(38, 0.2),
		primaryDC: about(14, 0.25), secondaryDC: about(1.1, 0.2), cIn: about(470, 0.1),
		capBlower: about(7.5, 0.05), capInducer: about(4, 0.05),
		flameGood: about(3.6, 0.35), rod: 1, rodLeak: open, shortR: open,
		psSet: about(0.60, 0.06), limitOpens: about(200, 0.03), gas: 1,
		mode: "heat", power: true, breaker: true, sw: true, call: true,
		covers: map[string]bool{}, lifted: map[string]bool{},
	}
	for _, w := range []string{"breaker", "line-run", "neutral-run", "ground-run", "furnace-switch", "door-switch",
		"line-lead", "neutral-lead", "secondary-lead", "common-lead", "common-bond", "board-fuse", "float-switch",
		"float-lead", "r-splice", "r-terminal", "thermostat", "w-terminal", "w-splice", "w-tail", "limit-lead",
		"high-limit", "rollout-left", "rollout-right", "string-lead", "pressure-switch", "pressure-lead",
		"inducer-plug", "igniter-plug", "valve-lead", "valve-common", "speed-lead", "flame-lead", "burner-ground"} {
		u.r[w] = 0.02 + 0.1*rng.Float64()
	}
	// Forty meters of thin cable: 0.05 ohm a meter of 20 gauge wire, from memory of wire tables 0.033; old copper more.
	for _, w := range []string{"r-wire", "w-wire", "c-wire", "y-wire"} {
		u.r[w] = 1.2 + 0.8*rng.Float64()
	}
	return u
}

// badContact draws the resistance of a bad contact: half an ohm to five thousand, or open.
func badContact(rng *rand.Rand) float64 {
	if rng.Float64() < 0.35 {
		return open
	}
	// Even on a logarithmic scale.
	return 0.5 * pow10(4*rng.Float64())
}

// outputs says which loads the board drives.
type outputs struct{ ind, ign, gas, blow, psClosed, burning bool }

// glowOhms is the igniter's resistance when it is hot; silicon carbide falls to about half.
func (u *unit) network(o outputs, ac bool) *net {
	n := newNet()
	link := func(fixed, movable string) {
		if !u.lifted[movable] && !u.lifted[fixed] {
			n.join(fixed, movable, 0.002)
		}
	}
	part := func(name, a, b string) { n.join(a, b, u.r[name]) }
	sw := func(name, a, b string, closed bool) {
		if closed {
			n.join(a, b, u.r[name])
		} else {
			n.join(a, b, open)
		}
	}
	live := ac && !u.houseDark
	if live {
		n.feed("outlet-hot", ground, u.line, 0.15)
	}
	n.join("outlet-neutral", ground, 0.05)
	sw("breaker", "outlet-hot", "at-breaker", ac && u.breaker && !u.breakerTripped)
	hot, white := "line-in", "neutral-in"
	if u.reversed {
		hot, white = white, hot
	}
	part("line-run", "at-breaker", "box-in")
	sw("furnace-switch", "box-in", "box-out", ac && u.sw && !u.switchOff)
	n.join("box-out", hot, 0.05)
	part("neutral-run", ground, "box-neutral")
	n.join("box-neutral", white, 0.05)
	part("ground-run", ground, "box-ground")
	n.join("box-ground", "frame", 0.02)
	n.join("line-in", "door-in", 0.02)
	n.join("neutral-in", "door-n", 0.02)
	link("door-in", "door-a")
	sw("door-switch", "door-a", "door-b", u.doorClosed())
	link("door-out", "door-b")
	part("line-lead", "door-out", "board-l")
	part("neutral-lead", "door-n", "board-n")

	link("board-l", "primary-a")
	link("board-n", "primary-b")
	if ac {
		n.join("primary-a", "primary-b", u.withFault("transformer-primary", 600))
	} else {
		n.join("primary-a", "primary-b", u.withFault("transformer-primary", u.primaryDC))
	}
	link("secondary-a", "winding-a")
	link("secondary-b", "winding-b")
	if !ac {
		n.join("winding-a", "winding-b", u.withFault("transformer-secondary", u.secondaryDC))
	}
	part("secondary-lead", "secondary-a", "board-24")
	part("common-lead", "secondary-b", "board-c")
	part("common-bond", "board-c", "frame")
	link("board-24", "fuse-a")
	part("board-fuse", "fuse-a", "fuse-b")
	link("board-r", "fuse-b")
	logic := 350.0
	if !ac {
		logic = 22e3
	}
	n.join("board-r", "board-c", logic)

	n.join("board-r", "float-in", 0.2)
	link("float-in", "float-a")
	sw("float-switch", "float-a", "float-b", !u.coilDrain)
	link("float-out", "float-b")
	part("float-lead", "float-out", "float-far")
	part("r-splice", "float-far", "splice-r")
	link("splice-r", "wall-r")
	part("r-wire", "wall-r", "stat-rw")
	part("r-terminal", "stat-rw", "stat-r")
	sw("thermostat", "stat-r", "stat-w", u.statCloses())
	part("w-terminal", "stat-w", "stat-ww")
	part("w-wire", "stat-ww", "wall-w")
	link("splice-w", "wall-w")
	part("w-splice", "splice-w", "splice-w2")
	tail := "board-w"
	if u.wOnY {
		tail = "board-y"
	}
	part("w-tail", "splice-w2", tail)
	n.join("board-w", "board-c", u.cIn)
	n.join("board-y", "board-c", 40e3)
	n.join("splice-c", "board-c", 0.4)
	part("c-wire", "splice-c", "stat-c")
	n.join("wall-r", "splice-c", u.shortR)
	link("board-y", "y-out")
	part("y-wire", "y-out", "contactor")
	n.join("contactor", "splice-c", 16)
	// Wires that lie side by side for forty meters couple a little.
	n.join("stat-rw", "stat-ww", 4e6)

	bridge := func(name, a, b string) {
		if u.jumper == name {
			n.join(a, b, 0.05)
		}
	}
	part("limit-lead", "board-r", "limit-in")
	link("limit-in", "limit-a")
	part("high-limit", "limit-a", "limit-b")
	bridge("high-limit", "limit-in", "limit-out")
	link("limit-out", "limit-b")
	link("limit-out", "roll-left-a")
	part("rollout-left", "roll-left-a", "roll-left-b")
	bridge("rollout-left", "limit-out", "roll-mid")
	link("roll-mid", "roll-left-b")
	link("roll-mid", "roll-right-a")
	part("rollout-right", "roll-right-a", "roll-right-b")
	link("roll-out-end", "roll-right-b")
	part("string-lead", "roll-out-end", "string-end")
	in := 1.0
	if !ac {
		in = 40
	}
	n.join("string-end", "board-c", 1000*in)
	n.join("string-end", "switch-in", 0.1)
	link("switch-in", "press-a")
	sw("pressure-switch", "press-a", "press-b", o.psClosed)
	bridge("pressure-switch", "switch-in", "switch-out")
	link("switch-out", "press-b")
	part("pressure-lead", "switch-out", "press-pin")
	n.join("press-pin", "board-c", 1500*in)
	relay := func(on, dead bool, from, to string) {
		if on && !dead {
			n.join(from, to, 0.03)
		} else {
			// The spark killer of an open relay contact: what a good meter sees as ghost volts on an open wire.
			n.join(from, to, 6e6)
		}
	}
	relay(o.gas, u.relayGas, "press-pin", "gas-out")
	part("valve-lead", "gas-out", "valve-1")
	link("valve-1", "valve-a")
	valve := 60.0
	if !ac {
		valve = u.valveDC
	}
	n.join("valve-a", "valve-b", u.withFault("valve-coil", valve))
	link("valve-2", "valve-b")
	part("valve-common", "valve-2", "board-c")

	relay(o.ind, u.relayInd, "board-l", "fan-out")
	link("fan-out", "fan-plug-a")
	part("inducer-plug", "fan-plug-a", "fan-plug")
	n.join("fan-plug", "fan-plug-b", 0.002)
	link("fan-plug", "fan-a")
	fan := 95.0
	if u.inducerStuck || !u.fanTurnsWithCap() {
		fan = 48
	}
	if !ac {
		fan = u.inducerDC
	}
	if u.inducerOpen {
		fan = open
	}
	n.join("fan-a", "fan-b", fan)
	link("fan-plug-n", "fan-b")
	n.join("fan-plug-n", "board-n", 0.05)

	relay(o.ign, u.relayIgn, "board-l", "glow-out")
	link("glow-out", "glow-plug-a")
	part("igniter-plug", "glow-plug-a", "glow-plug")
	n.join("glow-plug", "glow-plug-b", 0.002)
	link("glow-plug", "glow-a")
	glow := u.igniterHot
	if !ac {
		glow = u.igniterCold
	}
	n.join("glow-a", "glow-b", u.withFault("igniter", glow))
	link("glow-plug-n", "glow-b")
	n.join("glow-plug-n", "board-n", 0.05)

	relay(o.blow, u.relayBlow, "board-l", "blower-out")
	lead := u.r["speed-lead"]
	if u.speedLoose || u.speedWrong {
		lead = open
	}
	n.join("blower-out", "blower-tap", lead)
	link("blower-tap", "blower-a")
	blow := 19.0
	if u.blowerStuck || u.blowerShare() == 0 {
		blow = 9
	}
	if !ac {
		blow = u.blowerDC
	}
	if u.blowerOpen {
		blow = open
	}
	n.join("blower-a", "blower-b", blow)
	link("blower-n", "blower-b")
	n.join("blower-n", "board-n", 0.05)

	link("flame-pin", "lead-a")
	part("flame-lead", "lead-a", "lead-b")
	link("rod-end", "lead-b")
	link("rod-end", "rod-a")
	n.join("rod-a", "burner-metal", u.rodLeak)
	part("burner-ground", "burner-metal", "frame")
	return n
}

// withFault is the resistance of a load: its own, unless a fault put another one in u.r.
func (u *unit) withFault(name string, good float64) float64 {
	if v, ok := u.r[name]; ok {
		return v
	}
	return good
}

func (u *unit) doorClosed() bool {
	return u.held || !u.covers["lower-bay"] && !u.panelLoose
}

func (u *unit) statCloses() bool {
	return u.call && u.mode == "heat" && !u.batteriesDead && !u.setBelow && !u.setupWrong
}

// live solves the network with the power on; the secondary follows the primary, so two rounds are enough.
func (u *unit) live(o outputs, a, b string, meter float64) (*net, []float64) {
	vp := u.line
	var n *net
	var v []float64
	for round := 0; round < 3; round++ {
		n = u.network(o, true)
		if a != "" {
			n.join(a, b, meter)
		}
		es := vp * u.turns
		if u.withFault("transformer-primary", 1) >= 1e5 {
			es = 0
		}
		if _, broken := u.r["transformer-secondary"]; broken {
			n.feed("winding-a", "winding-b", es, u.r["transformer-secondary"])
		} else {
			n.feed("winding-a", "winding-b", es, u.secondaryDC+0.9)
		}
		v = n.solve()
		was := vp
		vp = n.between(v, "primary-a", "primary-b")
		if math.Abs(vp-was) < 0.05 {
			break
		}
	}
	return n, v
}

// blowerShare is the share of its rated speed at which the blower turns, 0 when it does not start.
func (u *unit) blowerShare() float64 {
	if u.blowerStuck || u.blowerOpen {
		return 0
	}
	c := u.capBlower / 7.5
	switch {
	case c < 0.38:
		return 0
	case c < 0.9:
		return 0.45 + 0.6*c
	}
	return 1
}

// air is the share of the rated air over the heat exchanger.
func (u *unit) air() float64 {
	a := u.blowerShare()
	if u.wheelLoose {
		return 0.05
	}
	a *= 1 - u.filterDirt
	a *= 1 - u.wheelDirt
	a *= 1 - u.coilDirt
	if u.registersShut {
		a *= 0.5
	}
	if u.returnBlock {
		a *= 0.45
	}
	return a
}

func (u *unit) fanTurnsWithCap() bool { return u.capInducer/4 > 0.5 }

// fanShare is the share of its rated speed at which the draft fan turns.
func (u *unit) fanShare() float64 {
	if u.inducerStuck || u.inducerOpen || !u.fanTurnsWithCap() {
		return 0
	}
	if c := u.capInducer / 4; c < 0.8 {
		return 0.45 + 0.6*c
	}
	return 1
}

// draft is the suction at the collector, in inches of water; sensed is what comes to the pressure switch.
func (u *unit) draft(turning bool) (port, sensed float64) {
	if !turning {
		return 0, 0
	}
	d := 1.05 * u.fanShare() * u.fanShare()
	if u.inducerWheelLoose {
		d *= 0.15
	}
	if u.ventBlock {
		d *= 0.35
	}
	if u.intakeBlock {
		d *= 0.45
	}
	if u.fanDrain {
		d *= 0.45
	}
	if u.ventApart {
		d *= 0.97
	}
	port = d
	if u.portBlock {
		port *= 0.2
	}
	sensed = port
	switch u.hose {
	case "off-port":
		sensed = 0
	case "split":
		sensed *= 0.4
	case "wet":
		sensed *= 0.45
	}
	return port, sensed
}

// rise is the air temperature rise in degrees Fahrenheit at steady burning.
func (u *unit) rise() float64 {
	a := u.air()
	if a < 0.1 {
		a = 0.1
	}
	return 54 * u.gas * (1 + u.overfire) / a
}
