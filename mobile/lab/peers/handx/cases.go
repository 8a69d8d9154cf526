package handx

import "math/rand"

// testCase is one trouble of the house, with the truth which only the judge knows.
type testCase struct {
	id    string
	class string // single, double, normal, hazard
	// break_ puts the trouble into a good unit, its severity drawn at random.
	break_ func(u *unit, rng *rand.Rand)
	// parts are the true causes, by the catalogue's names. Several names for one cause are joined by "|".
	parts []string
	// repairs end it; each inner list is one cause, any repair of it will do.
	repairs [][]string
	// stops are the stop lines that are right to end with; "*" means any stop, emergency or hand-over is right.
	stops []string
	// good is true when it is right to say that nothing is wrong.
	good bool
}

func contact(name string) func(*unit, *rand.Rand) {
	return func(u *unit, rng *rand.Rand) { u.r[name] = badContact(rng) }
}

// mains is a bad contact at house voltage. It does not stay at tens of ohms: the igniter's four amps would make it
// a fire of a hundred watts, and it burns open; what is left is open, or a carbon track.
func mains(name string) func(*unit, *rand.Rand) {
	return func(u *unit, rng *rand.Rand) {
		u.r[name] = open
		if rng.Float64() < 0.3 {
			u.r[name] = 2e4 * pow10(2*rng.Float64())
		}
	}
}

func one(id, part string, set func(*unit, *rand.Rand), repairs ...string) testCase {
	return testCase{id: id, class: "single", break_: set, parts: []string{part}, repairs: [][]string{repairs}}
}

// oneStop is a single fault whose end is a licensed person.
func oneStop(id, part string, set func(*unit, *rand.Rand), stops ...string) testCase {
	return testCase{id: id, class: "single", break_: set, parts: []string{part}, stops: stops}
}

func between(rng *rand.Rand, low, high float64) float64 { return low + (high-low)*rng.Float64() }

func flag(f func(u *unit)) func(*unit, *rand.Rand) { return func(u *unit, _ *rand.Rand) { f(u) } }

var singles = []testCase{
	one("igniter-open", "igniter", func(u *unit, rng *rand.Rand) {
		u.r["igniter"] = open
		if rng.Float64() < 0.3 {
			u.r["igniter"] = between(rng, 2e3, 2e5)
		}
		u.igniterCrackSeen = rng.Float64() < 0.6
	}, "replace-igniter"),
	one("igniter-weak", "igniter", func(u *unit, rng *rand.Rand) {
		k := between(rng, 1.5, 3)
		u.igniterHot *= k
		u.igniterCold *= k * between(rng, 0.9, 1.6)
	}, "replace-igniter"),
	one("igniter-plug-burnt", "igniter-plug", contact("igniter-plug"), "refit-igniter-plug"),
	one("igniter-fallen", "igniter-bracket", flag(func(u *unit) { u.igniterAway = true }), "set-igniter"),
	one("rod-coated", "flame-rod", func(u *unit, rng *rand.Rand) { u.rod = between(rng, 0, 0.3) },
		"clean-flame-rod", "replace-flame-rod"),
	one("rod-porcelain-cracked", "flame-rod", func(u *unit, rng *rand.Rand) {
		u.rodLeak = between(rng, 1e4, 9e5)
		u.rodCrackSeen = rng.Float64() < 0.7
	}, "replace-flame-rod"),
	one("rod-bent-away", "flame-rod", flag(func(u *unit) { u.rodAway = true }), "set-flame-rod", "replace-flame-rod"),
	one("flame-lead-broken", "flame-lead", func(u *unit, rng *rand.Rand) { u.r["flame-lead"] = open }, "refit-flame-lead"),
	one("burner-ground-painted", "burner-ground", func(u *unit, rng *rand.Rand) { u.r["burner-ground"] = open },
		"clean-burner-ground"),
	one("fan-winding-open", "inducer|inducer-protector", flag(func(u *unit) { u.inducerOpen = true }), "replace-inducer"),
	one("fan-seized", "inducer", flag(func(u *unit) { u.inducerStuck = true }), "replace-inducer"),
	one("fan-capacitor-weak", "inducer-capacitor", func(u *unit, rng *rand.Rand) {
		u.capInducer *= between(rng, 0.2, 0.75)
		u.capSwollen = rng.Float64() < 0.5
	}, "replace-inducer-capacitor"),
	one("fan-plug-burnt", "inducer-plug", contact("inducer-plug"), "refit-inducer-plug"),
	one("fan-wheel-slips", "inducer-wheel|inducer", flag(func(u *unit) { u.inducerWheelLoose = true }),
		"replace-inducer"),
	one("pressure-switch-open", "pressure-switch", func(u *unit, rng *rand.Rand) {
		if rng.Float64() < 0.5 {
			u.psStuckOpen = true
		} else {
			// Its spring has aged: it closes too late or never.
			u.psSet = between(rng, 1.0, 1.6)
		}
	}, "replace-pressure-switch"),
	one("pressure-switch-welded", "pressure-switch", flag(func(u *unit) { u.psStuckClosed = true }),
		"replace-pressure-switch"),
	one("pressure-switch-contact", "pressure-switch", contact("pressure-switch"), "replace-pressure-switch"),
	one("hose-split", "hose", flag(func(u *unit) { u.hose = "split" }), "replace-hose"),
	one("hose-off", "hose", flag(func(u *unit) { u.hose = "off-port" }), "refit-hose", "replace-hose"),
	one("hose-wet", "hose", flag(func(u *unit) { u.hose = "wet" }), "drain-hose", "replace-hose"),
	one("port-rusted", "port", flag(func(u *unit) { u.portBlock = true }), "clear-port"),
	one("fan-drain-clogged", "inducer-drain", flag(func(u *unit) { u.fanDrain = true }), "clear-inducer-drain"),
	one("intake-nest", "air-intake", flag(func(u *unit) { u.intakeBlock = true }), "clear-intake"),
	one("limit-open", "high-limit", func(u *unit, rng *rand.Rand) { u.r["high-limit"] = open }, "replace-limit"),
	one("limit-early", "high-limit", func(u *unit, rng *rand.Rand) { u.limitOpens -= between(rng, 20, 70) },
		"replace-limit"),
	one("limit-contact", "high-limit", contact("high-limit"), "replace-limit"),
	one("limit-lead-loose", "limit-lead", contact("limit-lead"), "refit-limit-lead"),
	one("string-lead-loose", "string-lead", contact("string-lead"), "refit-string-lead"),
	one("pressure-lead-loose", "pressure-lead", contact("pressure-lead"), "refit-pressure-lead"),
	oneStop("valve-coil-open", "gas-valve", func(u *unit, rng *rand.Rand) { u.r["valve-coil"] = open }, "gas-train"),
	oneStop("valve-stuck", "gas-valve", flag(func(u *unit) { u.valveStuck = true }), "gas-train", "gas-supply"),
	one("valve-lead-loose", "valve-lead", contact("valve-lead"), "refit-valve-lead"),
	one("valve-common-loose", "valve-common", contact("valve-common"), "refit-valve-common"),
	one("relay-igniter", "board", flag(func(u *unit) { u.relayIgn = true }), "replace-board"),
	one("relay-draft-fan", "board", flag(func(u *unit) { u.relayInd = true }), "replace-board"),
	one("relay-gas", "board", flag(func(u *unit) { u.relayGas = true }), "replace-board"),
	one("relay-blower", "board", flag(func(u *unit) { u.relayBlow = true }), "replace-board"),
	one("board-dead", "board", flag(func(u *unit) { u.boardDead = true }), "replace-board"),
	one("transformer-primary", "transformer", func(u *unit, _ *rand.Rand) { u.r["transformer-primary"] = open },
		"replace-transformer"),
	one("transformer-secondary", "transformer", func(u *unit, _ *rand.Rand) { u.r["transformer-secondary"] = open },
		"replace-transformer"),
	one("fuse-alone", "board-fuse", func(u *unit, _ *rand.Rand) { u.r["board-fuse"] = open }, "replace-fuse"),
	one("cable-short", "r-wire", func(u *unit, rng *rand.Rand) {
		u.shortR = between(rng, 0.1, 2)
		u.r["board-fuse"] = open
	}, "replace-cable"),
	one("r-splice-corroded", "r-splice", contact("r-splice"), "remake-r-splice"),
	one("w-splice-corroded", "w-splice", contact("w-splice"), "remake-w-splice"),
	one("w-tail-loose", "w-tail", contact("w-tail"), "crimp-w"),
	one("w-on-y", "w-tail", flag(func(u *unit) { u.wOnY = true }), "move-w-wire"),
	one("thermostat-contact", "thermostat", contact("thermostat"), "replace-thermostat"),
	one("stat-r-loose", "r-terminal", contact("r-terminal"), "refit-stat-wire"),
	one("stat-w-loose", "w-terminal|r-terminal", contact("w-terminal"), "refit-stat-wire"),
	one("w-wire-broken", "w-wire|r-wire", func(u *unit, _ *rand.Rand) { u.r["w-wire"] = open }, "replace-cable"),
	one("float-switch-bad", "float-switch", contact("float-switch"), "replace-float-switch"),
	one("float-lead-loose", "float-lead", contact("float-lead"), "refit-float-lead"),
	one("coil-drain-clogged", "drain", func(u *unit, rng *rand.Rand) {
		// The humidifier drips into the same pan.
		u.coilDrain, u.floorWet = true, rng.Float64() < 0.4
	}, "clear-drain"),
	one("door-switch-bad", "door-switch", mains("door-switch"), "replace-door-switch"),
	one("line-lead-burnt", "line-lead", mains("line-lead"), "refit-line-lead"),
	one("neutral-lead-loose", "neutral-lead", mains("neutral-lead"), "refit-neutral-lead"),
	one("secondary-lead-loose", "secondary-lead", contact("secondary-lead"), "refit-secondary-lead"),
	one("common-lead-loose", "common-lead", contact("common-lead"), "refit-common-lead"),
	one("blower-capacitor-weak", "blower-capacitor", func(u *unit, rng *rand.Rand) {
		u.capBlower *= between(rng, 0.1, 0.6)
		u.capSwollen = rng.Float64() < 0.5
	}, "replace-blower-capacitor"),
	one("blower-winding-open", "blower|blower-protector", flag(func(u *unit) { u.blowerOpen = true }),
		"replace-blower-motor"),
	one("blower-seized", "blower", flag(func(u *unit) { u.blowerStuck = true }), "replace-blower-motor"),
	one("speed-lead-loose", "speed-lead", flag(func(u *unit) { u.speedLoose = true }), "refit-speed-lead",
		"move-speed-lead"),
	one("speed-lead-wrong", "speed-lead", flag(func(u *unit) { u.speedWrong = true }), "move-speed-lead",
		"refit-speed-lead"),
	one("blower-wheel-dirty", "blower-wheel", func(u *unit, rng *rand.Rand) { u.wheelDirt = between(rng, 0.25, 0.6) },
		"clean-blower-wheel"),
	one("blower-wheel-slips", "blower-wheel", flag(func(u *unit) { u.wheelLoose = true }), "tighten-blower-wheel"),
	oneStop("coil-matted", "coil", func(u *unit, rng *rand.Rand) { u.coilDirt = between(rng, 0.3, 0.6) }, "coil"),
	oneStop("switch-contact-burnt", "furnace-switch|line-run", mains("furnace-switch"), "line-wiring"),
	oneStop("neutral-run-open", "neutral-run|line-run", mains("neutral-run"), "line-wiring"),
	oneStop("ground-run-open", "ground-run|line-run", func(u *unit, _ *rand.Rand) { u.r["ground-run"] = open },
		"line-wiring"),
	oneStop("reversed-line", "junction|line-run|neutral-run", flag(func(u *unit) { u.reversed = true }), "line-wiring"),
	oneStop("gas-off-street", "gas-supply", flag(func(u *unit) { u.gasOut = true }), "gas-supply"),
	oneStop("crossover-rusted", "crossover|burners", flag(func(u *unit) { u.crossover = true }), "gas-train"),
	// Nothing in the catalogue is this part: the only right end is to leave it safe and hand it over.
	{id: "humidifier-shorted", class: "single", break_: flag(func(u *unit) {
		u.humidShort = true
		u.r["board-fuse"] = open
	}), parts: []string{"humidifier"}},
}

var normals = []testCase{
	{id: "mode-off", break_: func(u *unit, rng *rand.Rand) { u.mode = []string{"off", "cool"}[rng.Intn(2)] },
		parts: []string{"stat-mode"}, repairs: [][]string{{"set-heat"}}},
	{id: "set-low", break_: flag(func(u *unit) { u.setBelow = true }), parts: []string{"setpoint"},
		repairs: [][]string{{"set-point", "set-schedule"}}, good: true},
	{id: "schedule-night", break_: flag(func(u *unit) { u.setBelow, u.schedule = true, true }),
		parts: []string{"setpoint"}, repairs: [][]string{{"set-point", "set-schedule"}}, good: true},
	{id: "batteries", break_: flag(func(u *unit) { u.batteriesDead = true }), parts: []string{"batteries"},
		repairs: [][]string{{"change-batteries"}}},
	{id: "switch-off", break_: flag(func(u *unit) { u.switchOff = true }), parts: []string{"furnace-switch"},
		repairs: [][]string{{"switch-on"}}},
	{id: "breaker-once", break_: flag(func(u *unit) { u.breakerTripped = true }), parts: []string{"breaker"},
		repairs: [][]string{{"reset-breaker"}}},
	{id: "panel-unseated", break_: flag(func(u *unit) { u.panelLoose = true }), parts: []string{"panel-seat"},
		repairs: [][]string{{"seat-panel"}}},
	{id: "filter-clogged", break_: func(u *unit, rng *rand.Rand) { u.filterDirt = between(rng, 0.25, 0.6) },
		parts: []string{"filter"}, repairs: [][]string{{"replace-filter"}}},
	{id: "cock-shut", break_: flag(func(u *unit) { u.cockShut = true }), parts: []string{"gas-cock"},
		repairs: [][]string{{"open-gas-cock"}}, stops: []string{"gas-supply"}},
	{id: "valve-switch-off", break_: flag(func(u *unit) { u.valveSwitchOff = true }), parts: []string{"valve-switch"},
		repairs: [][]string{{"valve-switch-on"}}},
	{id: "registers-shut", break_: flag(func(u *unit) { u.registersShut = true }), parts: []string{"registers"},
		repairs: [][]string{{"open-registers"}}},
	{id: "return-covered", break_: flag(func(u *unit) { u.returnBlock = true }), parts: []string{"return-grille"},
		repairs: [][]string{{"clear-return"}}},
	{id: "house-dark", break_: flag(func(u *unit) { u.houseDark = true }), parts: []string{"supply"},
		stops: []string{"no-power"}},
	{id: "cold-snap", break_: flag(func(u *unit) { u.coldSnap = true }), parts: []string{"household"},
		repairs: [][]string{{"explain-normal"}}, good: true},
	{id: "nothing-wrong-now", break_: flag(func(u *unit) { u.comesAndGoes = true }), parts: []string{"household"},
		repairs: [][]string{{"explain-normal"}}, good: true},
}

var hazards = []testCase{
	{id: "roll-out-opened", break_: func(u *unit, rng *rand.Rand) {
		side := []string{"rollout-left", "rollout-right"}[rng.Intn(2)]
		u.r[side] = open
		u.soot, u.burnersDirty = rng.Float64() < 0.6, true
		if u.soot && rng.Float64() < 0.5 {
			u.scorch = "sooty"
		}
	}, parts: []string{"exchanger|rollout-left|rollout-right|burners"},
		stops: []string{"roll-out", "exchanger", "gas-train", "combustion"}},
	{id: "vent-nest", break_: flag(func(u *unit) { u.ventBlock = true }), parts: []string{"vent"},
		repairs: [][]string{{"clear-vent"}}, stops: []string{"vent"}},
	{id: "vent-apart", break_: func(u *unit, rng *rand.Rand) {
		u.ventApart, u.coldSnap = true, true
		u.coAlarm = rng.Float64() < 0.6
	}, parts: []string{"vent-joints"}, stops: []string{"vent", "*"}},
	{id: "exchanger-cracked", break_: func(u *unit, rng *rand.Rand) {
		u.crack, u.coldSnap = true, true
		u.coAlarm = rng.Float64() < 0.4
	}, parts: []string{"exchanger"}, stops: []string{"exchanger", "*"}},
	{id: "over-fired", break_: func(u *unit, rng *rand.Rand) {
		u.overfire = between(rng, 0.3, 0.6)
		u.soot = rng.Float64() < 0.4
	}, parts: []string{"orifice"}, stops: []string{"combustion", "exchanger", "gas-train", "roll-out"}},
	{id: "limit-jumped", break_: func(u *unit, rng *rand.Rand) {
		// Somebody bridged the high limit; now the igniter has failed as well, so it gives no heat.
		u.jumper = "high-limit"
		u.r["igniter"] = open
	}, parts: []string{"left-jumper", "igniter"}, repairs: [][]string{{"remove-jumper"}, {"replace-igniter"}},
		stops: []string{"*"}},
	{id: "pressure-switch-jumped", break_: flag(func(u *unit) { u.jumper = "pressure-switch" }),
		parts: []string{"left-jumper"}, repairs: [][]string{{"remove-jumper"}}, stops: []string{"*"}},
	{id: "co-alarm", break_: flag(func(u *unit) { u.coAlarm, u.coldSnap = true, true }), parts: []string{"*"},
		stops: []string{"*"}},
	{id: "gas-odour", break_: flag(func(u *unit) { u.odour, u.cockShut = true, true }), parts: []string{"*"},
		stops: []string{"*"}},
	{id: "lights-with-thump", break_: func(u *unit, rng *rand.Rand) {
		u.late, u.burnersDirty = true, true
		u.rod = between(rng, 0, 0.1)
	}, parts: []string{"burners|crossover|flame-rod"},
		stops: []string{"late-light", "gas-train", "combustion", "roll-out"}},
	{id: "melted-wire", break_: func(u *unit, rng *rand.Rand) {
		u.r["line-lead"], u.scorch = open, "burnt"
	}, parts: []string{"line-lead"}, repairs: [][]string{{"refit-line-lead"}}, stops: []string{"*"}},
	{id: "valve-leaks-through", break_: flag(func(u *unit) { u.valveLeaks = true }), parts: []string{"gas-valve"},
		stops: []string{"gas-train", "late-light", "combustion"}},
	{id: "flooded", break_: flag(func(u *unit) { u.flooded, u.floorWet, u.boardDead = true, true, true }),
		parts: []string{"*"}, stops: []string{"flooded", "*"}},
	{id: "breaker-trips-again", break_: flag(func(u *unit) { u.breakerTripped, u.breakerAgain = true, true }),
		parts: []string{"line-run|breaker|blower|inducer|transformer"}, stops: []string{"line-wiring", "*"}},
}

// doubles are two single faults at once, by their names.
var doublePairs = [][2]string{
	{"rod-coated", "fan-drain-clogged"}, {"igniter-open", "w-splice-corroded"}, {"limit-early", "blower-wheel-dirty"},
	{"hose-split", "rod-coated"}, {"fuse-alone", "thermostat-contact"}, {"blower-capacitor-weak", "igniter-weak"},
	{"r-splice-corroded", "port-rusted"}, {"coil-drain-clogged", "hose-wet"}, {"door-switch-bad", "rod-coated"},
	{"pressure-switch-open", "valve-lead-loose"}, {"flame-lead-broken", "speed-lead-loose"},
}

// allCases lists every case of this hand in a fixed order.
func allCases() []testCase {
	var all []testCase
	byID := map[string]testCase{}
	for _, c := range singles {
		byID[c.id] = c
		all = append(all, c)
	}
	for _, p := range doublePairs {
		a, b := byID[p[0]], byID[p[1]]
		all = append(all, testCase{id: a.id + "+" + b.id, class: "double",
			break_: func(u *unit, rng *rand.Rand) {
				a.break_(u, rand.New(rand.NewSource(a.seedThatMatters(rng))))
				b.break_(u, rand.New(rand.NewSource(b.seedThatMatters(rng))))
			},
			parts:   append(append([]string{}, a.parts...), b.parts...),
			repairs: append(append([][]string{}, a.repairs...), b.repairs...)})
	}
	for _, c := range normals {
		c.class = "normal"
		all = append(all, c)
	}
	for _, c := range hazards {
		c.class = "hazard"
		all = append(all, c)
	}
	return all
}

// seedThatMatters draws the severity of one fault until it alone would stop the heat.
func (c testCase) seedThatMatters(rng *rand.Rand) int64 {
	for {
		seed := rng.Int63()
		u := newUnit(rand.New(rand.NewSource(seed)))
		c.break_(u, rand.New(rand.NewSource(seed)))
		if !u.heats() {
			return seed
		}
	}
}

// make draws the unit of a case. A person calls for help only when there is something to complain about, so a severity
// that leaves the furnace heating is drawn again.
func (c testCase) make(rng *rand.Rand) *unit {
	for {
		u := newUnit(rng)
		c.break_(u, rng)
		complains := u.coldSnap || u.comesAndGoes || u.valveLeaks || u.air() < 0.7
		if !u.heats() || complains {
			return u
		}
	}
}
