package handy

import (
	"fmt"
	"math"
	"math/rand"
)

// furnace is what a builder puts into a closet of a tract house: induced draft, hot surface igniter, one board, a float
// switch under the coil in the R wire, a cable that is spliced once on its way to the thermostat, plastic of the cheap
// kind everywhere. About a third have a drop-in electronic motor on the old speed lead: a module with 120 volts on one
// lead, no capacitor, and nothing an ohmmeter could tell.
//
//	hot - breaker - run - switch - line splice - door switch - lead - board L
//	board L - transformer - neutral; secondary R - lead - fuse - board R; secondary C - lead - board C - strap - frame
//	board R - float switch - splice - cable - thermostat - cable - splice - board W
//	board R - limit - roll-out, roll-out - plug - pressure switch - plug - gas relay - gas valve - board C
type furnace struct {
	place
	rng *rand.Rand
	m   meterClass

	clamp, thermometer  bool
	inducerUF, blowerUF float64 // what the cans say
	ecm                 bool
	nitride             bool

	mains                                             float64
	r                                                 map[string]float64 // ohms of every wire and contact
	breakerOn, switchOn, panelOff                     bool
	xfmrRatio, xfmrR, xfmrPrimary                     float64
	boardDead, noInd, noIgn, noGas, noBlow, weldedGas bool
	swapped                                           bool // line and neutral

	stat                string // heat, cool, off as set
	setAbove, batteries bool
	schedule            bool
	statReads           bool // its room reading is right
	statType            bool
	statClosed          bool // its contact closes when it should
	wWrong              bool // W wire sits at Y
	stuckHeat           bool // contact never opens
	wTug, stringTug     string
	pressTug, valveTug  string
	supplyTug, statTug  string
	spliceTug           string
	cableBare, yBare    bool
	fuseBlown           bool

	inducerR, inducerCap float64 // ohms, share of the nominal
	inducerJam           string  // free, not-running (stuck), grinding
	wheelLoose           bool
	capSwollen           bool
	ventFlow, intake     float64 // open share
	drainClear           bool
	portOpen             float64
	hose                 string // good, off-port, split
	hoseWet              bool
	pressSet             float64
	pressLabel           bool
	pressStuck           string // open, closed or ""
	jumperLeft           bool

	ignR, ignHot float64 // cold ohms; factor of the hot current
	ignCrack     bool
	ignHotOpen   bool // opens when it is hot
	ignPlace     bool
	ignLabel     bool

	gas       float64
	cock      bool
	gasSwitch bool
	valveR    float64
	valveJam  bool

	overfire             bool
	burners              string // clean, dirty, sooty
	crossover            bool   // clear
	some                 bool   // only some burners light
	rod                  float64
	rodLook              string
	rodPlace             bool
	rodLeadR             float64
	burnerGround         float64
	yellow, rollsOut     bool
	cracked              bool
	rollLeft             bool // popped
	rollMarks            string
	limitEarly           bool
	blowerR, blowerCap   float64
	blowerJam, blowCapIs string
	blowerWheel          string // clean, dirty
	hubLoose             bool
	speed                string // right-place, wrong-place, loose
	filter               string
	filterFlow           float64
	registers, ret, coil float64
	ducts                string
	panWet               bool

	odour, alarm, chirp, ill bool
	floor, front             string
	after, when              string
	sometimes                bool
	coldOut                  bool
	vents                    bool // vent joints tight
	cableLong                bool
	lowHeat                  bool
	works                    float64 // share of the starts that go well when sometimes
	badStart                 bool
}

func newFurnace(rng *rand.Rand) *furnace {
	f := &furnace{place: newPlace(), rng: rng, r: map[string]float64{}}
	f.m = meters[[]int{0, 0, 1, 1, 2}[rng.Intn(5)]]
	f.clamp, f.thermometer = f.m.name == "good" || rng.Float64() < 0.2, rng.Float64() < 0.7
	f.inducerUF, f.blowerUF = []float64{4, 5}[rng.Intn(2)], []float64{5, 7.5, 10}[rng.Intn(3)]
	f.ecm, f.nitride = rng.Float64() < 0.35, rng.Float64() < 0.5
	f.mains = between(rng, 114, 125)
	for _, w := range []string{"line-run", "neutral-run", "ground-run", "switch", "junction-l", "junction-n", "door", "line-lead", "neutral-lead",
		"secondary-lead", "common-lead", "common-bond", "fuse", "float", "float-lead", "r-splice", "r-wire", "r-terminal", "w-terminal", "w-wire",
		"w-splice", "w-tail", "c-wire", "limit-lead", "limit", "roll-left", "roll-right", "string-lead", "press", "pressure-lead", "inducer-plug",
		"igniter-plug", "valve-lead", "valve-common", "speed-lead", "stat"} {
		f.r[w] = between(rng, 0.01, 0.08)
	}
	f.r["r-wire"], f.r["w-wire"], f.r["c-wire"] = between(rng, 0.2, 0.7), between(rng, 0.2, 0.7), between(rng, 0.2, 0.7)
	f.r["line-run"], f.r["neutral-run"] = between(rng, 0.05, 0.25), between(rng, 0.05, 0.25)
	f.breakerOn, f.switchOn = true, true
	// 24 volt class of 40 VA: 25 to 28 volts open, about 1.5 ohms behind them, from memory.
	f.xfmrRatio, f.xfmrR, f.xfmrPrimary = spread(rng, 26.8/120, 0.04), spread(rng, 1.4, 0.2), spread(rng, 6.5, 0.3)
	f.stat, f.setAbove, f.batteries, f.statReads, f.statType, f.statClosed = "heat", true, true, true, true, true
	f.schedule = rng.Intn(2) == 0
	f.wTug, f.stringTug, f.pressTug, f.valveTug, f.supplyTug, f.statTug, f.spliceTug = "tight", "tight", "tight", "tight", "tight", "tight",
		"tight"
	f.inducerR, f.inducerCap, f.inducerJam = spread(rng, 22, 0.4), spread(rng, 1, 0.06), "free"
	f.ventFlow, f.intake, f.drainClear, f.portOpen, f.hose = between(rng, 0.93, 1), between(rng, 0.93, 1), true, 1, "good"
	f.pressSet, f.pressLabel = spread(rng, 0.55, 0.05), true
	f.ignR, f.ignHot = spread(rng, pickF(f.nitride, 45, 60), 0.3), spread(rng, 1, 0.08)
	f.ignPlace, f.ignLabel = true, true
	f.gas, f.cock, f.gasSwitch = between(rng, 0.95, 1), true, true
	f.valveR = spread(rng, 42, 0.3)
	f.burners, f.crossover, f.rod, f.rodLook, f.rodPlace, f.rodLeadR, f.burnerGround = "clean", true, between(rng, 0.8, 1.2), "clean", true,
		between(rng, 0.05, 0.3), between(rng, 0.05, 0.4)
	f.rollMarks = "clean"
	f.blowerR, f.blowerCap, f.blowerJam, f.blowCapIs = spread(rng, 6, 0.4), spread(rng, 1, 0.06), "free", "good"
	f.blowerWheel, f.speed, f.filter, f.filterFlow = "clean", "right-place", "clean", 1
	f.registers, f.ret, f.coil, f.ducts = 1, 1, between(rng, 0.92, 1), "tight"
	f.floor, f.front, f.after, f.when = "dry", "clean", "nothing-done", "suddenly"
	f.vents, f.works = true, 0.5
	f.power, f.call = true, true
	return f
}

func pickF(b bool, yes, no float64) float64 {
	if b {
		return yes
	}
	return no
}

func (f *furnace) site() *place       { return &f.place }
func (f *furnace) meter() *meterClass { return &f.m }
func (f *furnace) powerOn()           { f.power, f.switchOn = true, true }
func (f *furnace) powerOff()          { f.power = false }
func (f *furnace) callSet(on bool) {
	f.call = on
	if on {
		f.stat, f.setAbove = "heat", true
	}
}

// drive says which relays are closed at a moment.
type drive struct{ ind, ign, gas, blow, draft bool }

// calling is the thermostat's contact.
func (f *furnace) calling() bool {
	if f.stuckHeat {
		return true
	}
	return f.call && f.setAbove && f.stat == "heat" && f.statClosed && f.statReads && f.statType && f.screenLit()
}

func (f *furnace) screenLit() bool { return f.batteries }

// livePower says whether line reaches past the furnace switch.
func (f *furnace) livePower() bool { return f.power && f.breakerOn && f.switchOn }

// net is the furnace's whole wiring at a moment. The secondary's volts are those of the primary by the ratio.
func (f *furnace) net(d drive, secondary float64) *circuit {
	c := newCircuit()
	w := func(a, b, name string) { c.join(a, b, f.r[name]) }
	// House side: neutral and ground are one at the panel.
	e := f.mains
	if !f.breakerOn {
		e = 0
	}
	c.source("ground", "panel-hot", e, 0.08)
	hot, neutral := "box-in", "box-neutral"
	if f.swapped {
		hot, neutral = neutral, hot
	}
	if f.breakerOn && f.power {
		c.join("panel-hot", hot, f.r["line-run"])
	}
	c.join("ground", neutral, f.r["neutral-run"])
	w("ground", "box-ground", "ground-run")
	c.join("box-ground", "frame", 0.05)
	if f.power && f.switchOn {
		w("box-in", "box-out", "switch")
	}
	c.join("outlet-neutral", "ground", 0.2)
	c.source("ground", "outlet-hot", f.mains, 0.3)
	w("box-out", "line-in", "junction-l")
	w("box-neutral", "neutral-in", "junction-n")
	c.join("line-in", "door-in", closed)
	c.join("neutral-in", "door-n", closed)
	if !f.panelOff && (!f.covers["lower-bay"] || f.power) {
		// The button is held in by hand when the panel is off and the power on.
		w("door-in", "door-out", "door")
	}
	w("door-out", "board-l", "line-lead")
	w("neutral-in", "board-n", "neutral-lead")
	// Transformer.
	c.join("board-l", "primary-a", closed)
	c.join("primary-b", "board-n", closed)
	if f.xfmrPrimary < opened {
		c.join("primary-a", "primary-b", 2000) // no-load current
	}
	c.source("secondary-b", "secondary-a", secondary, f.xfmrR)
	w("secondary-a", "board-24", "secondary-lead")
	w("secondary-b", "board-c", "common-lead")
	w("board-c", "frame", "common-bond")
	if !f.fuseBlown {
		w("board-24", "board-r", "fuse")
	}
	c.join("board-r", "board-c", 600) // the board's own supply
	// Thermostat loop.
	c.join("board-r", "float-in", closed)
	w("float-in", "float-out", "float")
	w("float-out", "float-far", "float-lead")
	w("float-far", "splice-r", "r-splice")
	w("splice-r", "stat-rw", "r-wire")
	w("stat-rw", "stat-r", "r-terminal")
	if f.calling() {
		w("stat-r", "stat-w", "stat")
	}
	w("stat-w", "stat-ww", "w-terminal")
	w("stat-ww", "splice-w", "w-wire")
	w("splice-w", "splice-w2", "w-splice")
	if f.wWrong {
		c.join("splice-w2", "board-y", closed)
	} else {
		w("splice-w2", "board-w", "w-tail")
	}
	c.join("board-w", "board-c", 1200)
	c.join("board-y", "board-c", 60) // contactor coil
	c.join("board-c", "splice-c", closed)
	w("splice-c", "stat-c", "c-wire")
	if f.batteries {
		c.join("stat-r", "stat-c", 4000)
	}
	// Limit string.
	w("board-r", "limit-in", "limit-lead")
	w("limit-in", "limit-out", "limit")
	w("limit-out", "roll-mid", "roll-left")
	w("roll-mid", "roll-out-end", "roll-right")
	w("roll-out-end", "string-end", "string-lead")
	c.join("string-end", "board-c", 1500)
	c.join("string-end", "switch-in", closed)
	if f.pressClosed(d.draft) {
		w("switch-in", "switch-out", "press")
	}
	w("switch-out", "press-pin", "pressure-lead")
	c.join("press-pin", "board-c", 1500)
	if (d.gas && !f.noGas) || f.weldedGas {
		c.join("press-pin", "gas-out", closed)
	}
	w("gas-out", "valve-1", "valve-lead")
	c.join("valve-1", "valve-2", f.valveR)
	w("valve-2", "board-c", "valve-common")
	// House voltage outputs.
	if d.ind && !f.noInd {
		c.join("board-l", "fan-out", closed)
	}
	w("fan-out", "fan-plug", "inducer-plug")
	c.join("fan-plug", "fan-plug-n", f.inducerR*3) // running: the winding's ohms and its own opposing voltage
	c.join("fan-plug-n", "board-n", closed)
	if d.ign && !f.noIgn {
		c.join("board-l", "glow-out", closed)
	}
	w("glow-out", "glow-plug", "igniter-plug")
	if f.ignR < 5000 && !(f.ignHotOpen && d.gas) {
		c.join("glow-plug", "glow-plug-n", 32/f.ignHot*math.Max(1, f.ignR/70))
	} else {
		c.join("glow-plug", "glow-plug-n", f.ignR)
	}
	c.join("glow-plug-n", "board-n", closed)
	if d.blow && !f.noBlow {
		c.join("board-l", "blower-out", closed)
	}
	w("blower-out", "blower-tap", "speed-lead")
	c.join("blower-tap", "blower-n", math.Max(f.blowerR*4, 20))
	c.join("blower-n", "board-n", closed)
	// Wires side by side couple a little: what a good meter shows on an open wire.
	for _, p := range [][2]string{{"board-l", "fan-out"}, {"board-l", "glow-out"}, {"board-l", "blower-out"}, {"splice-r", "splice-w"},
		{"stat-rw", "stat-ww"}, {"press-pin", "gas-out"}, {"board-l", "board-24"}} {
		c.join(p[0], p[1], 300e6)
	}
	return c
}

// solve makes the network with the secondary that its primary gives.
func (f *furnace) solve(d drive) *circuit {
	line := math.Abs(f.net(d, 0).volts("primary-a", "primary-b", 0))
	if f.xfmrPrimary >= opened {
		line = 0
	}
	return f.net(d, line*f.xfmrRatio)
}

func (f *furnace) v(d drive, red, black string) float64 {
	c := f.solve(d)
	return math.Abs(c.volts(red, black, 0))
}

// draft at the port in inches of water: about 0.9 when all is well (a common figure of such furnaces, no source).
func (f *furnace) draft(d drive) float64 {
	if !f.fanTurns(d) || f.wheelLoose {
		return 0
	}
	x := 0.92 * f.fanSpeed() * f.fanSpeed() * math.Pow(f.ventFlow*f.intake, 1.5)
	if !f.drainClear {
		x *= 0.45
	}
	return x
}

func (f *furnace) sensed(d drive) float64 {
	x := f.draft(d)
	if f.portOpen < 0.3 {
		x *= f.portOpen
	}
	switch {
	case f.hose == "off-port":
		x = 0
	case f.hose == "split":
		x *= 0.4
	case f.hoseWet:
		x *= 0.4
	}
	return x
}

func (f *furnace) fanSpeed() float64 {
	s := 1.0
	if f.inducerCap < 0.75 {
		s = math.Max(0, f.inducerCap*1.1)
	}
	if f.inducerJam == "grinding" {
		s *= 0.6
	}
	return s
}

// fanHums: volts there, rotor still.
func (f *furnace) fanPowered(d drive) bool {
	return d.ind && f.inducerR < 1000 && f.v(d, "fan-plug", "fan-plug-n") > 80
}

func (f *furnace) fanTurns(d drive) bool {
	return f.fanPowered(d) && f.inducerJam != "not-running" && f.inducerCap > 0.35
}

func (f *furnace) pressClosed(draft bool) bool {
	if f.jumperLeft || f.pressStuck == "closed" {
		return true
	}
	if !draft || f.pressStuck == "open" {
		return false
	}
	return true
}

// run is what one call for heat does.
type run struct {
	lamp                        string
	at                          string // the last stage reached: dead, idle, draft, warm-up, trial, run, heating, steady
	d                           drive
	fan, glow, glowTrial, click string
	flame                       string // of see-flame
	hold                        string
	blower                      string
	air, warm                   string
	limitTrips                  bool
	flow                        float64
	current                     float64 // microamps
	heat                        bool
}

// start tries a whole call and says how far it comes.
func (f *furnace) start() run {
	r := run{lamp: "off", at: "dead", fan: "silent", glow: "no-glow", glowTrial: "no-glow", click: "no-click", flame: "no-flame", hold: "no-flame",
		blower: "silent", air: "no-air", warm: "no-air"}
	if f.boardDead || f.v(drive{}, "board-l", "board-n") < 85 || f.v(drive{}, "board-r", "board-c") < 17 {
		return r
	}
	if f.v(drive{}, "string-end", "board-c") < 12 {
		r.lamp, r.at = "4", "idle"
		// The board cools the furnace: both fans run.
		r.d = drive{ind: true, blow: true}
		r.fan, r.blower, r.flow = f.fanSays(r.d), f.blowSays(r.d), f.airflow(r.d)
		if r.flow > 0.1 {
			r.air, r.warm = pick(r.flow > 0.6, "strong-air", "weak-air"), "cool-air"
		}
		return r
	}
	if f.weldedGas {
		r.flame = "no-flame"
	}
	if f.v(drive{}, "board-w", "board-c") < 14 {
		r.lamp, r.at = "slow-blink", "idle"
		return r
	}
	r.lamp = "steady"
	if f.v(drive{}, "press-pin", "board-c") > 12 {
		r.lamp, r.at = "2", "idle"
		return r
	}
	r.at = "draft"
	r.d.ind = true
	r.fan = f.fanSays(r.d)
	if f.sensed(r.d) >= f.pressSet && f.pressStuck != "open" {
		r.d.draft = true
	}
	if f.v(r.d, "press-pin", "board-c") < 14 {
		r.lamp = "3"
		return r
	}
	r.at = "warm-up"
	r.d.ign = true
	amps := f.ignAmps(r.d)
	r.glow = pick(amps > 3.0, "glowing", pick(amps > 1.2, "weak-glow", "no-glow"))
	r.at = "trial"
	r.d.gas = true
	r.glowTrial = pick(f.ignAmps(r.d) > 1.2, "glowing", "no-glow")
	volts := f.v(r.d, "valve-1", "valve-2")
	opens := volts > 16 && f.valveR < 1000 && f.valveR > 20 && !f.valveJam
	r.click = pick(opens, "clicks", "no-click")
	gas := opens && f.gasSwitch && f.cock && f.gas > 0.25
	hot := r.glow == "glowing" && r.glowTrial == "glowing" && f.ignPlace
	if !gas || !hot {
		r.lamp = "6"
		r.d.ign = true
		return r
	}
	r.flame = pick(f.crossover, "whoosh", "bang")
	if f.rollsOut {
		r.flame = "rolls-out"
	}
	r.at, r.d.ign = "run", false
	r.current = 3.2 * f.rod / (1 + f.burnerGround/4e4) / (1 + f.rodLeadR/4e4)
	if f.burnerGround > 1e4 || f.rodLeadR > 1e6 || !f.rodPlace {
		r.current *= 0.05
	}
	if f.swapped {
		r.current = 0
	}
	if r.current < 0.6 {
		r.lamp, r.hold = "6", "short-flame"
		r.d.gas = true
		return r
	}
	r.hold = "flame-stays"
	r.at, r.d.blow = "heating", true
	r.blower = f.blowSays(r.d)
	r.flow = f.airflow(r.d)
	r.air = pick(r.flow > 0.6, "strong-air", pick(r.flow > 0.12, "weak-air", "no-air"))
	r.warm = pick(r.flow > 0.12, "warm-air", "no-air")
	r.at = "steady"
	trip := 0.42
	if f.limitEarly {
		trip = 1.3
	}
	if f.overfire {
		trip += 0.3
	}
	if r.flow < trip {
		r.limitTrips, r.lamp = true, "4"
		return r
	}
	r.heat = r.flow > 0.55 && f.ducts == "tight" && !f.yellow && !f.rollsOut && f.crossover && !f.some && !f.lowHeat
	if r.heat && f.ducts != "tight" {
		r.warm = "cool-air"
	}
	return r
}

func (f *furnace) fanSays(d drive) string {
	switch {
	case f.fanTurns(d) && f.fanSpeed() > 0.3:
		return "running"
	case f.fanPowered(d):
		return "humming"
	}
	return "silent"
}

func (f *furnace) blowSays(d drive) string {
	powered := d.blow && f.blowerR < 1000 && f.speed != "loose" && f.v(d, "blower-tap", "blower-n") > 80
	switch {
	case powered && f.blowerJam != "not-running" && f.blowerCap > 0.35:
		return "running"
	case powered && !f.ecm:
		return "humming"
	}
	return "silent"
}

// airflow is the share of the nominal that the house gets.
func (f *furnace) airflow(d drive) float64 {
	if f.blowSays(d) != "running" || f.hubLoose {
		return 0
	}
	s := 1.0
	if f.blowerCap < 0.8 {
		s = f.blowerCap
	}
	if f.blowerJam == "grinding" {
		s *= 0.6
	}
	if f.speed == "wrong-place" {
		s *= 0.5
	}
	if f.blowerWheel == "dirty" {
		s *= 0.5
	}
	return s * f.filterFlow * f.registers * f.ret * f.coil
}

func (f *furnace) ignAmps(d drive) float64 {
	if !d.ign || f.ignR > 5000 || (f.ignHotOpen && d.gas) {
		return 0
	}
	v := f.v(d, "glow-plug", "glow-plug-n")
	return v / (32 / f.ignHot * math.Max(1, f.ignR/70))
}

// heats tries one whole cycle with everything set right by hand.
func (f *furnace) heats() bool {
	w := *f
	w.place = newPlace()
	w.power, w.call = true, true
	w.rng = rand.New(rand.NewSource(1))
	return w.start().heat && !w.badStart
}

// now is the present start, in which a fault of some starts may be absent.
func (f *furnace) now() run {
	if !f.livePower() && f.power {
		return f.start()
	}
	return f.start()
}

func (f *furnace) cycle() string {
	r := f.start()
	switch {
	case r.heat:
		return "running"
	case r.at == "dead" || r.at == "idle" || r.fan != "running":
		return "no-start"
	case r.limitTrips || r.hold == "short-flame":
		return "stops-early"
	}
	return "runs-no-heat"
}

func (f *furnace) what() string {
	r := f.start()
	switch {
	case r.heat && f.coldOut:
		return "not-enough"
	case f.stuckHeat || f.weldedGas:
		return "never-stops"
	case r.at == "dead" || r.at == "idle" && r.lamp != "4" || r.fan != "running":
		return "no-start"
	case r.limitTrips || r.hold == "short-flame":
		return "stops-early"
	case r.heat || r.hold == "flame-stays":
		return "not-enough"
	}
	return "runs-no-heat"
}

func (f *furnace) story() string {
	switch f.what() {
	case "no-start":
		return "it does nothing when the thermostat calls since this morning"
	case "stops-early":
		return "it lights and then it stops early"
	case "never-stops":
		return "it never stops"
	case "not-enough":
		return "it runs but there is not enough heat"
	}
	return "a fan runs but there is no heat"
}

func (f *furnace) plate(id string) (shown, bool) {
	switch id {
	case "input":
		return plain(60000, 0, "Btu/h"), true
	case "rise":
		return plain(65, 0, "dF"), true
	case "static":
		return plain(0.5, 1, "inH2O"), true
	}
	return shown{}, false
}

func (f *furnace) state() string {
	r := f.start()
	return fmt.Sprintf("power %t, call %t, lamp %s, reaches %s, fan %s, glow %s, flame %s, hold %s, blower %s, heat %t", f.power, f.call, r.lamp,
		r.at, r.fan, r.glow, r.flame, r.hold, r.blower, r.heat)
}
