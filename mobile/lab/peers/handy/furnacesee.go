package handy

import (
	"math"
	"math/rand"
	"strings"
)

// look answers from what the machine shows now.
func (f *furnace) look(check string) string {
	r := f.start()
	if !f.power && strings.HasPrefix(check, "see-") {
		r = run{fan: "silent", glow: "no-glow", glowTrial: "no-glow", click: "no-click", flame: "no-flame", hold: "no-flame", blower: "silent",
			air: "no-air", warm: "no-air"}
	}
	switch check {
	case "odour":
		return pick(f.odour, "some", "none")
	case "alarm":
		return pick(f.alarm, "sounding", pick(f.chirp, "chirping", "quiet"))
	case "cock-who":
		return "reason-known"
	case "again-alarm":
		return pick(f.alarm, "sounding", "quiet")
	case "people":
		return pick(f.ill, "feeling-ill", "everyone-fine")
	case "floor":
		return f.floor
	case "scorch":
		return f.front
	case "story-what":
		return f.what()
	case "story-pattern":
		return pick(f.sometimes, "some-starts", "every-start")
	case "story-when":
		return f.when
	case "story-change":
		return f.after
	case "story-room":
		return pick(r.heat, "warm", "cold")
	case "story-weather":
		return pick(f.coldOut, "cold", "same")
	case "light":
		return r.lamp
	case "label":
		return map[string]string{"off": "says-no-power", "slow-blink": "says-normal", "steady": "says-normal", "2": "says-pressure-closed",
			"3": "says-pressure-open", "4": "says-limit", "5": "says-false-flame", "6": "says-no-flame", "7": "says-flame-lost"}[r.lamp]
	case "stat-screen":
		return pick(f.screenLit(), "lit", "blank")
	case "stat-mode-set":
		return f.stat
	case "stat-setpoint":
		return pick(f.setAbove, "above", "below")
	case "stat-schedule":
		return pick(f.schedule, "schedule", "hold")
	case "stat-raise":
		f.setAbove, f.call = true, true
		r = f.start()
		return pick(r.fan == "running" || r.blower == "running", "running", "silent")
	case "stat-room":
		return pick(f.statReads, "same", "different")
	case "stat-type":
		return pick(f.statType, "right-place", "different")
	case "house-power":
		return pick(f.mains > 50, "on", "off")
	case "breaker-look":
		return pick(f.breakerOn, "on", "tripped")
	case "switch-look":
		return pick(f.switchOn, "on", "off")
	case "panel-look":
		return pick(f.panelOff, "loose", "tight")
	case "filter-look":
		return f.filter
	case "cock-look":
		return pick(f.cock, "parallel", "crosswise")
	case "other-gas":
		return pick(f.gas > 0.6, "good", pick(f.gas > 0.1, "short-flame", "none"))
	case "registers-look":
		return pick(f.registers > 0.6, "open", "closed")
	case "return-look":
		return pick(f.ret > 0.6, "clear", "blocked")
	case "pan-look":
		return pick(f.panWet, "wet", "dry")
	case "vent-look":
		return pick(f.ventFlow > 0.7, "clear", "blocked")
	case "intake-look":
		return pick(f.intake > 0.7, "clear", "blocked")
	case "vent-joint-look":
		return pick(f.vents, "tight", "loose")
	case "duct-look":
		return f.ducts
	case "y-cable-look":
		return pick(f.yBare, "bare", "good")
	case "splice-look":
		return pick(f.cableBare, "bare", "good")
	case "see-fan":
		return r.fan
	case "see-glow":
		return r.glow
	case "see-glow-hold":
		return r.glowTrial
	case "hear-valve":
		return r.click
	case "see-flame":
		return r.flame
	case "see-burners":
		return pick(r.flame == "no-flame", "no-flame", pick(f.some, "some-burners", "all-burners"))
	case "see-hold":
		return r.hold
	case "see-colour", "again-flame":
		return pick(r.hold != "flame-stays", "no-flame", pick(f.yellow, "yellow-flame", "blue-flame"))
	case "see-blower":
		return r.blower
	case "see-move":
		return pick(r.hold != "flame-stays", "no-flame", pick(f.cracked && r.blower == "running", "flame-moves", "flame-still"))
	case "feel-air":
		return r.air
	case "feel-warm":
		if r.air == "no-air" {
			return "no-air"
		}
		if r.limitTrips || f.ducts != "tight" {
			return "cool-air"
		}
		return r.warm
	case "again-air":
		if r.air == "no-air" {
			return "no-air"
		}
		return pick(r.warm == "warm-air" && f.ducts == "tight", "warm-air", "cool-air")
	case "see-limit", "again-limit":
		return pick(r.hold == "flame-stays" && !r.limitTrips, "flame-stays", "short-flame")
	case "see-end":
		return pick(f.weldedGas && r.hold == "flame-stays", "flame-stays", "no-flame")
	case "hear-rest":
		was := f.call
		f.call = false
		r = f.start()
		f.call = was
		return pick(r.fan == "running" || r.blower == "running", "running", "silent")
	case "dial":
		return pick(r.flame != "no-flame" || (r.click == "clicks" && f.cock && f.gasSwitch && f.gas > 0.25), "running", "not-running")
	case "dial-time":
		// 60,000 Btu/h at about 1,030 Btu a cubic foot: one turn in 62 seconds.
		if r.hold != "flame-stays" {
			return "not-running"
		}
		return pick(f.overfire, "below", "above")
	case "hose-look":
		return f.hose
	case "hose-wet":
		return pick(f.hoseWet, "wet", "dry")
	case "port-look":
		return pick(f.portOpen < 0.5, "blocked", "clear")
	case "fan-drain-look":
		return pick(f.drainClear, "clear", "blocked")
	case "press-label":
		return pick(f.pressLabel, "same", "different")
	case "jumper-look":
		return pick(f.jumperLeft, "bypassed", "clear")
	case "w-look":
		return pick(f.wWrong, "wrong-place", "right-place")
	case "w-tug":
		return f.wTug
	case "speed-lead-look":
		return f.speed
	case "fan-spin":
		return f.inducerJam
	case "fan-wheel-look":
		return pick(f.wheelLoose, "loose", "tight")
	case "fan-cap-look":
		return pick(f.capSwollen, "swollen", "good")
	case "fan-plug-look":
		return pick(f.r["inducer-plug"] > 0.5, "burnt", "good")
	case "glow-plug-look":
		return pick(f.r["igniter-plug"] > 0.5, "burnt", "good")
	case "glow-look":
		return pick(f.ignCrack, "cracked", "good")
	case "glow-place":
		return pick(f.ignPlace, "right-place", "wrong-place")
	case "glow-kind":
		return pick(f.ignLabel, "same", "different")
	case "rod-look":
		return f.rodLook
	case "rod-place":
		return pick(f.rodPlace, "right-place", "wrong-place")
	case "burner-look":
		return f.burners
	case "crossover-look":
		return pick(f.crossover && !f.some, "clear", "blocked")
	case "orifice-look":
		return pick(f.overfire, "different", "same")
	case "exchanger-look":
		return pick(f.cracked, pick(f.rng.Intn(2) == 0, "cracked", "good"), pick(f.burners == "sooty", "sooty", "good"))
	case "roll-look":
		return pick(f.rollLeft, "popped", "not-popped")
	case "roll-marks":
		return f.rollMarks
	case "gas-switch-look":
		return pick(f.gasSwitch, "on", "off")
	case "valve-wire-look":
		return f.valveTug
	case "string-look":
		return f.stringTug
	case "press-wire-look":
		return f.pressTug
	case "supply-wire-look":
		return f.supplyTug
	case "fuse-look":
		return pick(f.fuseBlown, "blown", "good")
	case "stat-wire-look":
		return f.statTug
	case "splice-tug":
		return f.spliceTug
	case "blower-spin":
		return f.blowerJam
	case "blower-wheel-look":
		return f.blowerWheel
	case "blower-hub":
		return pick(f.hubLoose, "loose", "tight")
	case "blower-cap-look":
		if f.ecm {
			return ""
		}
		return f.blowCapIs
	case "coil-look":
		return pick(f.coil > 0.75, "clean", "dirty")
	case "rules":
		return "allowed"
	}
	return ""
}

// moment is the state of the relays in which a reading is taken: the stage asked for, or where the start hangs.
func (f *furnace) moment(at, call string) drive {
	if call == "off" {
		was := f.call
		f.call = false
		d := f.start().d
		f.call = was
		return d
	}
	r := f.start()
	d := drive{}
	if r.at == "dead" || r.at == "idle" {
		return r.d
	}
	d.ind, d.draft = true, r.d.draft
	if !r.d.draft && !f.jumperLeft {
		return d
	}
	reached := map[string]int{"draft": 1, "warm-up": 2, "trial": 3, "run": 4, "heating": 5, "steady": 6}
	want := 6
	if n, ok := reached[at]; ok {
		want = n
	}
	n := min(want, reached[r.at])
	d.ign = n == 2 || n == 3
	d.gas = n >= 3
	d.blow = n >= 5
	if n == 6 && r.limitTrips {
		d.gas = false
	}
	return d
}

// pairs of the checks in volts: red, black.
var voltPairs = map[string][2]string{
	"outlet": {"outlet-hot", "outlet-neutral"}, "box-in-v": {"box-in", "box-neutral"}, "box-out-v": {"box-out", "box-neutral"},
	"box-ground-v": {"box-in", "box-ground"}, "door-in-v": {"door-in", "door-n"}, "board-line": {"board-l", "board-n"},
	"board-load": {"board-l", "board-n"}, "board-lg": {"board-l", "frame"}, "board-ng": {"board-n", "frame"},
	"fan-out-v": {"fan-out", "board-n"}, "fan-plug-v": {"fan-plug", "fan-plug-n"}, "glow-out-v": {"glow-out", "board-n"},
	"glow-plug-v": {"glow-plug", "glow-plug-n"}, "blower-out-v": {"blower-out", "board-n"}, "blower-tap-v": {"blower-tap", "blower-n"},
	"secondary-v": {"secondary-a", "secondary-b"}, "board-24-v": {"board-24", "board-c"}, "transformer-c": {"secondary-a", "board-c"},
	"fuse-v": {"board-24", "board-r"}, "r-c": {"board-r", "board-c"}, "r-c-load": {"board-r", "board-c"}, "w-c": {"board-w", "board-c"},
	"w-c-rest": {"board-w", "board-c"}, "y-c": {"board-y", "board-c"}, "float-v": {"float-in", "float-out"},
	"float-c": {"float-far", "splice-c"}, "splice-r-c": {"splice-r", "splice-c"}, "stat-r-c": {"stat-r", "stat-c"},
	"stat-r-w": {"stat-r", "stat-w"}, "stat-rw-end": {"stat-rw", "stat-ww"}, "splice-w-c": {"splice-w", "splice-c"},
	"splice-w2-c": {"splice-w2", "splice-c"}, "limit-in-c": {"limit-in", "board-c"}, "limit-v": {"limit-in", "limit-out"},
	"limit-v-hot": {"limit-in", "limit-out"}, "roll-left-v": {"limit-out", "roll-mid"}, "roll-right-v": {"roll-mid", "roll-out-end"},
	"string-end-c": {"string-end", "board-c"}, "press-rest-v": {"switch-in", "switch-out"}, "press-run-v": {"switch-in", "switch-out"},
	"press-pin-c": {"press-pin", "board-c"}, "gas-out-v": {"gas-out", "board-c"}, "valve-v": {"valve-1", "valve-2"},
	"valve-1-v":      {"valve-1", "board-c"},
	"act.prove-live": {"outlet-hot", "outlet-neutral"}, "act.prove-again": {"outlet-hot", "outlet-neutral"},
	"act.prove-line-neutral": {"line-in", "neutral-in"}, "act.prove-line-ground": {"line-in", "frame"},
	"act.prove-neutral-ground": {"neutral-in", "frame"}, "act.prove-line-frame": {"line-in", "frame"},
	"act.prove-neutral-frame": {"neutral-in", "frame"},
}

// stages of the volt checks where they are read in a start.
var voltAt = map[string]string{"board-load": "warm-up", "fan-out-v": "draft", "fan-plug-v": "draft", "glow-out-v": "warm-up", "glow-plug-v": "warm-up",
	"blower-out-v": "heating", "blower-tap-v": "heating", "r-c-load": "trial", "limit-v-hot": "steady", "press-run-v": "draft",
	"press-pin-c": "draft", "gas-out-v": "trial", "valve-v": "trial", "valve-1-v": "trial", "w-c": "draft", "y-c": "draft", "float-v": "draft",
	"stat-r-w": "draft", "splice-w-c": "draft", "splice-w2-c": "draft"}

func (f *furnace) read(check string) (shown, bool) {
	if p, ok := voltPairs[check]; ok {
		call := "off"
		if at, on := voltAt[check]; on {
			call = pick(f.call, "on", "off")
			_ = at
		}
		if strings.HasPrefix(check, "act.") {
			call = pick(f.call, "on", "off")
		}
		d := f.moment(voltAt[check], call)
		was := f.call
		if call == "off" {
			f.call = false
		}
		limit := f.r["limit"]
		if check == "limit-v-hot" && f.start().limitTrips {
			f.r["limit"] = opened // it has just opened by heat
		}
		secondary := math.Abs(f.net(d, 0).volts("primary-a", "primary-b", 0)) * f.xfmrRatio
		if f.xfmrPrimary >= opened {
			secondary = 0
		}
		c := f.net(d, secondary)
		v := math.Abs(c.volts(p[0], p[1], f.m.input))
		f.r["limit"], f.call = limit, was
		return f.m.show(f.rng, v, "V", "ac"), true
	}
	ohm := func(v float64) (shown, bool) {
		if v < opened/2 {
			v += f.m.lead
		}
		return f.m.show(f.rng, v, "ohm", ""), true
	}
	if wire, ok := map[string]string{"door-switch-ohms": "door", "line-lead-ohms": "line-lead", "fuse-ohms": "fuse", "float-ohms": "float",
		"limit-ohms": "limit", "roll-left-ohms": "roll-left", "roll-right-ohms": "roll-right", "press-lead-ohms": "pressure-lead",
		"fan-lead-ohms": "inducer-plug", "glow-lead-ohms": "igniter-plug", "valve-lead-ohms": "valve-lead", "valve-common-ohms": "valve-common",
		"bond-ohms": "common-bond"}[check]; ok {
		if wire == "fuse" && f.fuseBlown {
			return ohm(opened)
		}
		return ohm(f.r[wire])
	}
	switch check {
	case "ground-ohms":
		return ohm(f.r["neutral-run"] + f.r["ground-run"] + f.r["neutral-lead"])
	case "primary-ohms":
		return ohm(f.xfmrPrimary)
	case "secondary-ohms":
		if f.xfmrR >= opened {
			return ohm(opened)
		}
		return ohm(f.xfmrR * 0.6)
	case "cable-short":
		return ohm(pickF(f.cableBare, between(f.rng, 0.5, 3), opened))
	case "y-short":
		return ohm(pickF(f.yBare, between(f.rng, 0.5, 3), 12+f.rng.Float64()*6))
	case "stat-loop":
		if f.stat != "heat" || !f.statClosed || !f.batteries {
			return ohm(opened)
		}
		return ohm(f.r["r-wire"] + f.r["r-terminal"] + f.r["stat"] + f.r["w-terminal"] + f.r["w-wire"])
	case "press-ohms":
		return ohm(pickF(f.pressStuck == "closed", 0.1, opened))
	case "fan-ohms":
		return ohm(f.inducerR)
	case "glow-ohms":
		return ohm(f.ignR)
	case "valve-ohms":
		return ohm(f.valveR)
	case "rod-ohms":
		return ohm(pickF(f.rodLook == "cracked", between(f.rng, 5e3, 3e5), opened))
	case "lead-ohms":
		return ohm(f.rodLeadR)
	case "burner-ground-ohms":
		return ohm(f.burnerGround)
	case "blower-ohms":
		if f.ecm {
			return ohm(between(f.rng, 2e5, 3e6)) // the rectifier and its capacitor, not a winding
		}
		return ohm(f.blowerR)
	case "blower-frame":
		return ohm(opened)
	case "glow-amps":
		return f.amps(f.ignAmps(f.moment("warm-up", "on")))
	case "glow-amps-late":
		return f.amps(f.ignAmps(f.moment("trial", "on")))
	case "fan-amps":
		d := f.moment("draft", "on")
		a := 0.0
		if f.fanPowered(d) {
			a = pickF(f.fanTurns(d), 1.4, 2.6)
		}
		return f.amps(a)
	case "blower-amps":
		d := f.moment("heating", "on")
		a := 0.0
		if s := f.blowSays(d); s == "running" {
			a = 4.5
		} else if s == "humming" {
			a = 9
		}
		return f.amps(a)
	case "flame-current":
		if !f.m.micro {
			return shown{}, false
		}
		return f.m.show(f.rng, f.start().current, "uA", "dc"), true
	case "fan-cap":
		if !f.m.cap {
			return shown{}, false
		}
		return f.m.show(f.rng, f.inducerUF*f.inducerCap, "uF", ""), true
	case "blower-cap":
		if !f.m.cap || f.ecm {
			return shown{}, false
		}
		return f.m.show(f.rng, f.blowerUF*f.blowerCap, "uF", ""), true
	case "rise-m", "again-rise":
		r := f.start()
		if !f.thermometer || r.flow < 0.12 {
			return shown{}, false
		}
		rise := 48 / r.flow * pickF(f.overfire, 1.3, 1)
		return plain(math.Round(rise+f.rng.NormFloat64()*2), 0, "dF"), true
	}
	if strings.HasPrefix(check, "act.prove-empty") {
		return f.m.show(f.rng, math.Abs(f.rng.NormFloat64())*0.4, "V", "dc"), true
	}
	return shown{}, false
}

func (f *furnace) amps(v float64) (shown, bool) {
	if !f.clamp {
		return shown{}, false
	}
	return f.m.show(f.rng, v, "A", "ac"), true
}

// repair makes good what the catalogue's repair touches.
func (f *furnace) repair(id string) {
	n := newFurnace(rand.New(rand.NewSource(f.rng.Int63())))
	good := func(wires ...string) {
		for _, w := range wires {
			f.r[w] = n.r[w]
		}
	}
	switch id {
	case "set-heat":
		f.stat = "heat"
	case "set-point", "set-schedule":
		f.setAbove, f.call = true, true
	case "set-heat-type":
		f.statType = true
	case "move-thermostat":
		f.statReads = true
	case "change-batteries":
		f.batteries = true
	case "switch-on":
		f.switchOn = true
	case "reset-breaker":
		f.breakerOn = true
	case "seat-panel":
		f.panelOff = false
	case "open-gas-cock":
		f.cock = true
	case "valve-switch-on":
		f.gasSwitch = true
	case "open-registers":
		f.registers = 1
	case "clear-return":
		f.ret = 1
	case "replace-filter":
		f.filter, f.filterFlow = "clean", 1
	case "clear-drain":
		f.panWet = false
		if f.r["float"] >= opened {
			good("float")
		}
	case "clear-intake":
		f.intake = 1
	case "clear-vent":
		f.ventFlow = 1
	case "refit-line-lead":
		good("line-lead")
		f.supplyTug = "tight"
	case "refit-neutral-lead":
		good("neutral-lead")
		f.supplyTug = "tight"
	case "refit-secondary-lead":
		good("secondary-lead")
		f.supplyTug = "tight"
	case "refit-common-lead":
		good("common-lead")
		f.supplyTug = "tight"
	case "tighten-common-bond":
		good("common-bond")
	case "refit-float-lead":
		good("float-lead")
	case "remake-r-splice":
		good("r-splice")
		f.spliceTug = "tight"
	case "remake-w-splice":
		good("w-splice")
		f.spliceTug = "tight"
	case "refit-stat-wire":
		good("r-terminal", "w-terminal")
		f.statTug = "tight"
	case "crimp-w":
		good("w-tail")
		f.wTug = "tight"
	case "move-w-wire":
		f.wWrong = false
	case "refit-limit-lead":
		good("limit-lead")
		f.stringTug = "tight"
	case "refit-string-lead":
		good("string-lead")
		f.stringTug = "tight"
	case "refit-pressure-lead":
		good("pressure-lead")
		f.pressTug = "tight"
	case "refit-inducer-plug":
		good("inducer-plug")
	case "refit-igniter-plug":
		good("igniter-plug")
	case "refit-valve-lead":
		good("valve-lead")
		f.valveTug = "tight"
	case "refit-valve-common":
		good("valve-common")
		f.valveTug = "tight"
	case "refit-flame-lead":
		f.rodLeadR = n.rodLeadR
	case "refit-speed-lead", "move-speed-lead":
		good("speed-lead")
		f.speed = "right-place"
	case "remove-jumper":
		f.jumperLeft = false
	case "replace-cable":
		good("r-wire", "w-wire", "c-wire", "r-splice", "w-splice", "r-terminal", "w-terminal")
		f.cableBare, f.fuseBlown, f.statTug, f.spliceTug = false, false, "tight", "tight"
	case "repair-y-wire":
		f.yBare, f.fuseBlown = false, false
	case "isolate-outdoor":
		f.fuseBlown = f.cableBare
	case "clear-port":
		f.portOpen = 1
	case "replace-hose":
		f.hose, f.hoseWet = "good", false
	case "refit-hose":
		f.hose = pick(f.hose == "off-port", "good", f.hose)
	case "drain-hose":
		f.hoseWet = false
	case "clear-inducer-drain":
		f.drainClear = true
	case "clean-flame-rod":
		if f.rodLook == "dirty" {
			f.rodLook, f.rod = "clean", 1
		}
	case "set-flame-rod":
		f.rodPlace = true
	case "clean-burner-ground":
		f.burnerGround = n.burnerGround
	case "set-igniter":
		f.ignPlace = true
	case "clean-blower-wheel":
		f.blowerWheel = "clean"
	case "tighten-blower-wheel":
		f.hubLoose = false
	case "replace-door-switch":
		good("door")
	case "replace-transformer":
		f.xfmrR, f.xfmrPrimary, f.xfmrRatio = n.xfmrR, n.xfmrPrimary, n.xfmrRatio
		good("secondary-lead", "common-lead")
	case "replace-fuse":
		f.fuseBlown = f.cableBare || f.yBare // it blows again while the short is there
	case "replace-float-switch":
		if !f.panWet {
			good("float")
		}
	case "replace-thermostat":
		f.statClosed, f.statReads, f.statType, f.batteries, f.stat, f.stuckHeat = true, true, true, true, "heat", false
		good("stat", "r-terminal", "w-terminal")
		f.statTug = "tight"
	case "replace-limit":
		f.limitEarly = false
		good("limit")
	case "replace-pressure-switch":
		f.pressStuck, f.pressSet, f.pressLabel = "", n.pressSet, true
		good("press")
		f.pressTug = "tight"
		if f.hose == "off-port" {
			f.hose = "good"
		}
	case "replace-inducer-capacitor":
		f.inducerCap, f.capSwollen = n.inducerCap, false
	case "replace-inducer":
		f.inducerR, f.inducerJam, f.wheelLoose, f.inducerCap, f.capSwollen = n.inducerR, "free", false, n.inducerCap, false
		if f.hose == "off-port" {
			f.hose = "good"
		}
	case "replace-igniter":
		f.ignR, f.ignHot, f.ignCrack, f.ignHotOpen, f.ignPlace, f.ignLabel = n.ignR, n.ignHot, false, false, true, true
	case "replace-flame-rod":
		f.rod, f.rodLook, f.rodPlace = 1, "clean", true
	case "replace-board":
		f.boardDead, f.noInd, f.noIgn, f.noGas, f.noBlow, f.weldedGas = false, false, false, false, false, false
		f.fuseBlown = f.cableBare || f.yBare
		good("line-lead", "neutral-lead", "secondary-lead", "w-tail")
		f.supplyTug, f.wTug = "tight", "tight"
	case "replace-blower-capacitor":
		f.blowerCap, f.blowCapIs = n.blowerCap, "good"
	case "replace-blower-motor":
		f.blowerR, f.blowerJam, f.hubLoose, f.blowerCap, f.blowCapIs = n.blowerR, "free", false, n.blowerCap, "good"
		f.speed = "right-place"
		good("speed-lead")
	}
}
