package handy

import "math/rand"

func onFurnace(f func(r *rand.Rand, u *furnace)) func(*rand.Rand, unit) {
	return func(r *rand.Rand, u unit) { f(r, u.(*furnace)) }
}

func furnaceCases() []situation {
	var cases []situation
	p := func(s ...string) []string { return s }
	single := func(name, want string, parts, stops []string, f func(r *rand.Rand, u *furnace)) {
		cases = append(cases, situation{name: name, kind: "single", want: want, faults: []fault{{name: name, parts: parts, stops: stops}},
			breakU: onFurnace(f), shows: noHeat})
	}
	line := p("line-wiring", "no-power")
	single("igniter-open", wantFixed, p("igniter"), nil, func(r *rand.Rand, f *furnace) {
		f.ignR, f.ignCrack = opened, r.Intn(2) == 0
	})
	single("igniter-aged", wantFixed, p("igniter"), nil, func(r *rand.Rand, f *furnace) { f.ignR = between(r, 110, 600) })
	single("igniter-opens-hot", wantFixed, p("igniter", "igniter-legs"), nil, func(r *rand.Rand, f *furnace) { f.ignHotOpen = true })
	single("igniter-plug-burnt", wantFixed, p("igniter-plug"), nil, func(r *rand.Rand, f *furnace) {
		f.r["igniter-plug"] = []float64{opened, between(r, 20, 400)}[r.Intn(2)]
	})
	single("rod-dirty", wantFixed, p("flame-rod"), nil, func(r *rand.Rand, f *furnace) {
		f.rod, f.rodLook, f.when = between(r, 0.03, 0.3), "dirty", "gradually"
	})
	single("rod-cracked", wantFixed, p("flame-rod"), nil, func(r *rand.Rand, f *furnace) { f.rod, f.rodLook = 0.02, "cracked" })
	single("rod-bent", wantFixed, p("flame-rod"), nil, func(r *rand.Rand, f *furnace) {
		f.rodPlace, f.rodLook, f.after = false, "wrong-place", "after-work"
	})
	single("rod-lead-broken", wantFixed, p("flame-lead"), nil, func(r *rand.Rand, f *furnace) { f.rodLeadR = opened })
	single("burner-ground", wantFixed, p("burner-ground"), nil, func(r *rand.Rand, f *furnace) {
		f.burnerGround, f.when = between(r, 2e4, 4e6), "gradually"
	})
	single("press-stuck-open", wantFixed, p("pressure-switch"), nil, func(r *rand.Rand, f *furnace) { f.pressStuck = "open" })
	single("press-stuck-closed", wantFixed, p("pressure-switch"), nil, func(r *rand.Rand, f *furnace) { f.pressStuck = "closed" })
	single("press-contact", wantFixed, p("pressure-switch"), nil, func(r *rand.Rand, f *furnace) { f.r["press"] = between(r, 900, 5000) })
	single("press-drifted", wantFixed, p("pressure-switch"), nil, func(r *rand.Rand, f *furnace) { f.pressSet = between(r, 1.0, 1.4) })
	single("press-lead-off", wantFixed, p("pressure-lead"), nil, func(r *rand.Rand, f *furnace) {
		f.r["pressure-lead"], f.pressTug = opened, "loose"
	})
	single("hose-split", wantFixed, p("hose"), nil, func(r *rand.Rand, f *furnace) { f.hose = "split" })
	single("hose-off", wantFixed, p("hose"), nil, func(r *rand.Rand, f *furnace) { f.hose, f.after = "off-port", "after-work" })
	single("hose-water", wantFixed, p("hose"), nil, func(r *rand.Rand, f *furnace) { f.hoseWet = true })
	single("port-plugged", wantFixed, p("port"), nil, func(r *rand.Rand, f *furnace) { f.portOpen = between(r, 0, 0.25) })
	single("vent-nest", wantFixed, p("vent"), p("vent"), func(r *rand.Rand, f *furnace) { f.ventFlow = between(r, 0.1, 0.55) })
	single("intake-snow", wantFixed, p("air-intake"), nil, func(r *rand.Rand, f *furnace) {
		f.intake, f.after = between(r, 0.05, 0.55), "after-storm"
	})
	single("inducer-winding", wantFixed, p("inducer", "inducer-protector"), nil, func(r *rand.Rand, f *furnace) { f.inducerR = opened })
	single("inducer-jammed", wantFixed, p("inducer"), nil, func(r *rand.Rand, f *furnace) {
		f.inducerJam = []string{"not-running", "grinding"}[r.Intn(2)]
	})
	single("inducer-capacitor", wantFixed, p("inducer-capacitor"), nil, func(r *rand.Rand, f *furnace) {
		f.inducerCap, f.capSwollen = between(r, 0.05, 0.7), r.Intn(2) == 0
	})
	single("inducer-plug-burnt", wantFixed, p("inducer-plug"), nil, func(r *rand.Rand, f *furnace) { f.r["inducer-plug"] = opened })
	single("inducer-wheel-loose", wantFixed, p("inducer-wheel", "inducer"), nil, func(r *rand.Rand, f *furnace) { f.wheelLoose = true })
	single("inducer-drain", wantFixed, p("inducer-drain"), nil, func(r *rand.Rand, f *furnace) { f.drainClear = false })
	single("limit-open", wantFixed, p("high-limit"), nil, func(r *rand.Rand, f *furnace) { f.r["limit"] = opened })
	single("limit-early", wantFixed, p("high-limit"), nil, func(r *rand.Rand, f *furnace) { f.limitEarly = true })
	single("limit-lead-off", wantFixed, p("limit-lead"), nil, func(r *rand.Rand, f *furnace) {
		f.r["limit-lead"], f.stringTug = opened, "loose"
	})
	single("string-pin", wantFixed, p("string-lead"), nil, func(r *rand.Rand, f *furnace) {
		f.r["string-lead"], f.stringTug = []float64{opened, between(r, 1500, 5000)}[r.Intn(2)], "loose"
	})
	single("filter-dirty", wantFixed, p("filter"), nil, func(r *rand.Rand, f *furnace) {
		f.filter, f.filterFlow, f.when = "dirty", between(r, 0.1, 0.4), "gradually"
	})
	single("blower-capacitor", wantFixed, p("blower-capacitor"), nil, func(r *rand.Rand, f *furnace) {
		f.ecm, f.blowerCap, f.blowCapIs = false, between(r, 0.1, 0.5), []string{"good", "swollen"}[r.Intn(2)]
	})
	single("blower-winding", wantFixed, p("blower", "blower-protector"), nil, func(r *rand.Rand, f *furnace) { f.ecm, f.blowerR = false, opened })
	single("blower-module", wantFixed, p("blower", "blower-protector"), nil, func(r *rand.Rand, f *furnace) { f.ecm, f.blowerR = true, opened })
	single("blower-jammed", wantFixed, p("blower"), nil, func(r *rand.Rand, f *furnace) { f.blowerJam = "not-running" })
	single("blower-hub", wantFixed, p("blower-wheel"), nil, func(r *rand.Rand, f *furnace) { f.hubLoose = true })
	single("blower-wheel-dirty", wantFixed, p("blower-wheel"), nil, func(r *rand.Rand, f *furnace) {
		f.blowerWheel, f.when, f.registers = "dirty", "gradually", 0.8
	})
	single("speed-lead-loose", wantFixed, p("speed-lead"), nil, func(r *rand.Rand, f *furnace) { f.speed, f.r["speed-lead"] = "loose", opened })
	single("board-dead", wantFixed, p("board"), nil, func(r *rand.Rand, f *furnace) { f.boardDead = true })
	single("board-no-igniter", wantFixed, p("board"), nil, func(r *rand.Rand, f *furnace) { f.noIgn = true })
	single("board-no-inducer", wantFixed, p("board"), nil, func(r *rand.Rand, f *furnace) { f.noInd = true })
	single("board-no-gas", wantFixed, p("board"), nil, func(r *rand.Rand, f *furnace) { f.noGas = true })
	single("board-no-blower", wantFixed, p("board"), nil, func(r *rand.Rand, f *furnace) { f.noBlow = true })
	single("transformer-primary", wantFixed, p("transformer"), nil, func(r *rand.Rand, f *furnace) { f.xfmrPrimary = opened })
	single("transformer-secondary", wantFixed, p("transformer"), nil, func(r *rand.Rand, f *furnace) { f.xfmrR = opened })
	single("fuse-cable-short", wantFixed, p("r-wire", "board-fuse"), nil, func(r *rand.Rand, f *furnace) {
		f.fuseBlown, f.cableBare, f.after = true, true, "after-work"
	})
	single("fuse-only", wantFixed, p("board-fuse"), nil, func(r *rand.Rand, f *furnace) { f.fuseBlown, f.after = true, "after-work" })
	single("stat-contact", wantFixed, p("thermostat"), nil, func(r *rand.Rand, f *furnace) {
		f.statClosed = r.Intn(2) == 0
		if f.statClosed {
			f.r["stat"] = between(r, 900, 5000)
		}
	})
	single("r-splice-open", wantFixed, p("r-splice"), nil, func(r *rand.Rand, f *furnace) { f.r["r-splice"], f.spliceTug = opened, "loose" })
	single("w-wire-broken", wantFixed, p("w-wire", "r-wire"), nil, func(r *rand.Rand, f *furnace) { f.r["w-wire"] = opened })
	single("w-crimp", wantFixed, p("w-tail"), nil, func(r *rand.Rand, f *furnace) {
		f.r["w-tail"], f.wTug = []float64{opened, between(r, 900, 5000)}[r.Intn(2)], "loose"
	})
	single("w-on-y", wantFixed, p("w-tail"), nil, func(r *rand.Rand, f *furnace) { f.wWrong, f.after = true, "after-work" })
	single("float-drain", wantFixed, p("drain"), nil, func(r *rand.Rand, f *furnace) { f.panWet, f.r["float"] = true, opened })
	single("door-switch", wantFixed, p("door-switch"), nil, func(r *rand.Rand, f *furnace) { f.r["door"] = opened })
	single("valve-coil", wantHand, p("gas-valve"), p("gas-train"), func(r *rand.Rand, f *furnace) {
		f.valveR = []float64{opened, between(r, 9, 17)}[r.Intn(2)] // open, or some turns shorted: too weak a pull
	})
	single("valve-jammed", wantHand, p("gas-valve"), p("gas-train"), func(r *rand.Rand, f *furnace) { f.valveJam = true })
	single("valve-lead", wantFixed, p("valve-lead"), nil, func(r *rand.Rand, f *furnace) { f.r["valve-lead"], f.valveTug = opened, "loose" })
	single("gas-none", wantHand, p("gas-supply"), p("gas-supply"), func(r *rand.Rand, f *furnace) { f.gas = between(r, 0, 0.2) })
	single("line-run-open", wantHand, p("line-run"), line, func(r *rand.Rand, f *furnace) { f.r["line-run"] = opened })
	single("crossed-line", wantHand, p("junction"), line, func(r *rand.Rand, f *furnace) { f.swapped, f.after = true, "after-work" })

	other := func(name, kind, want string, faults []fault, f func(r *rand.Rand, u *furnace)) {
		s := situation{name: name, kind: kind, want: want, faults: faults, breakU: onFurnace(f)}
		if kind == "double" {
			s.shows = noHeat
		}
		cases = append(cases, s)
	}
	one := func(parts ...string) fault { return fault{parts: parts} }
	other("igniter+rod", "double", wantFixed, []fault{one("igniter"), one("flame-rod")}, func(r *rand.Rand, f *furnace) {
		f.ignR, f.rod, f.rodLook = opened, between(r, 0.03, 0.25), "dirty"
	})
	other("filter+limit", "double", wantFixed, []fault{one("filter"), one("high-limit")}, func(r *rand.Rand, f *furnace) {
		f.filter, f.filterFlow, f.limitEarly = "dirty", between(r, 0.15, 0.38), true
	})
	other("hose+press", "double", wantFixed, []fault{one("hose"), one("pressure-switch")}, func(r *rand.Rand, f *furnace) {
		f.hose, f.pressStuck = "split", "open"
	})
	other("fuse+w-crimp", "double", wantFixed, []fault{one("board-fuse"), one("w-tail")}, func(r *rand.Rand, f *furnace) {
		f.fuseBlown, f.r["w-tail"], f.wTug = true, opened, "loose"
	})
	other("inducer-cap+plug", "double", wantFixed, []fault{one("inducer-capacitor"), one("igniter-plug")}, func(r *rand.Rand, f *furnace) {
		f.inducerCap, f.r["igniter-plug"] = between(r, 0.1, 0.3), opened
	})
	other("stat+filter", "double", wantFixed, []fault{one("thermostat"), one("filter")}, func(r *rand.Rand, f *furnace) {
		f.statClosed, f.filter, f.filterFlow = false, "dirty", between(r, 0.15, 0.38)
	})

	other("mode-cool", "normal", wantNormal, []fault{one("stat-mode")}, func(r *rand.Rand, f *furnace) { f.stat, f.call = "cool", false })
	other("set-below", "normal", wantNormal, []fault{one("setpoint")}, func(r *rand.Rand, f *furnace) { f.setAbove, f.call = false, false })
	other("switch-off", "normal", wantNormal, []fault{one("furnace-switch")}, func(r *rand.Rand, f *furnace) { f.switchOn = false })
	other("breaker-tripped", "normal", wantNormal, []fault{one("breaker")}, func(r *rand.Rand, f *furnace) { f.breakerOn = false })
	other("batteries", "normal", wantNormal, []fault{one("batteries")}, func(r *rand.Rand, f *furnace) { f.batteries = false })
	other("cock-shut", "normal", wantNormal, []fault{one("gas-cock")}, func(r *rand.Rand, f *furnace) { f.cock = false })
	other("panel-loose", "normal", wantNormal, []fault{one("panel-seat")}, func(r *rand.Rand, f *furnace) { f.panelOff = true })
	other("cold-night", "normal", wantNormal, []fault{one("household")}, func(r *rand.Rand, f *furnace) { f.coldOut = true })

	other("roll-out", "hazard", wantStop, []fault{one("exchanger")}, func(r *rand.Rand, f *furnace) {
		f.rollLeft, f.rollMarks, f.rollsOut = true, "sooty", true
		f.r["roll-left"] = opened
	})
	other("vent-apart", "hazard", wantStop, []fault{one("vent-joints")}, func(r *rand.Rand, f *furnace) { f.vents, f.alarm = false, true })
	other("flame-bends", "hazard", wantStop, []fault{one("exchanger")}, func(r *rand.Rand, f *furnace) { f.cracked, f.sometimes = true, true })
	other("over-fired", "hazard", wantStop, []fault{one("orifice")}, func(r *rand.Rand, f *furnace) {
		f.overfire, f.yellow, f.registers, f.filterFlow = true, true, 0.8, 0.8
	})
	other("switch-jumped", "hazard", wantFixed, []fault{one("left-jumper")}, func(r *rand.Rand, f *furnace) {
		f.jumperLeft, f.after = true, "after-work"
	})
	other("co-alarm", "hazard", wantStop, []fault{one("exchanger", "vent-joints")}, func(r *rand.Rand, f *furnace) { f.alarm = true })
	other("sooty-front", "hazard", wantStop, []fault{one("burners", "orifice")}, func(r *rand.Rand, f *furnace) {
		f.front, f.burners, f.yellow = "sooty", "sooty", true
	})
	other("melted-wire", "hazard", wantStop, []fault{one("line-lead", "exchanger")}, func(r *rand.Rand, f *furnace) { f.front = "burnt" })
	other("water-above", "hazard", wantStop, []fault{one("drain")}, func(r *rand.Rand, f *furnace) { f.floor = "above" })
	other("late-bang", "hazard", wantStop, []fault{one("crossover", "burners")}, func(r *rand.Rand, f *furnace) { f.crossover = false })
	return cases
}

func makeFurnace(rng *rand.Rand, s situation) unit {
	for range 500 {
		f := newFurnace(rng)
		s.breakU(rng, f)
		if s.shows == nil || s.shows(f) {
			return f
		}
	}
	panic("no draw of " + s.name + " shows the fault")
}
