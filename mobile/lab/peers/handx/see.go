package handx

import "math"

// look is what a careful eye, ear or nose finds at a check of the program, as one of the catalogue's options;
// "" when this furnace has no such thing to see. The second result is false for a check that this house does not know.
func (u *unit) look(id string) (string, bool) {
	pick := func(bad bool, yes, no string) (string, bool) {
		if bad {
			return yes, true
		}
		return no, true
	}
	if u.batteriesDead && (id == "stat-setpoint" || id == "stat-schedule" || id == "stat-type" || id == "stat-room") {
		// A blank screen shows no numbers.
		return "", true
	}
	on := u.power && u.breaker && u.sw && !u.switchOff && !u.breakerTripped && !u.houseDark
	s := u.run()
	lampLabel := map[string]string{"2": "says-pressure-closed", "3": "says-pressure-open", "4": "says-limit",
		"5": "says-false-flame", "6": "says-no-flame", "7": "says-flame-lost", "off": "says-no-power",
		"slow-blink": "says-normal", "steady": "says-normal"}
	switch id {
	case "odour":
		return pick(u.odour, "some", "none")
	case "alarm":
		return pick(u.coAlarm, "sounding", "quiet")
	case "again-alarm":
		return pick(u.coAlarm && (u.crack || u.ventApart || u.ventBlock), "sounding", "quiet")
	case "people":
		return pick(u.ill, "feeling-ill", "everyone-fine")
	case "floor":
		if u.flooded {
			return "above", true
		}
		return pick(u.floorWet, "wet", "dry")
	case "scorch":
		if u.scorch != "" {
			return u.scorch, true
		}
		return "clean", true
	case "story-what":
		return u.complaint(s), true
	case "story-pattern":
		return pick(u.comesAndGoes, "some-starts", "every-start")
	case "story-when":
		worn := u.rod < 0.9 || u.filterDirt > 0 || u.wheelDirt > 0 || u.coilDirt > 0 || u.capBlower < 6.5 ||
			u.capInducer < 3.5 || u.limitOpens < 185 || u.fanDrain || u.portBlock || u.burnersDirty || u.coldSnap
		return pick(worn && u.rng.Float64() < 0.6, "gradually", "suddenly")
	case "story-change":
		if u.breakerTripped || u.houseDark || u.intakeBlock && u.rng.Float64() < 0.4 {
			return "after-storm", true
		}
		return pick(u.wOnY || u.speedWrong || u.jumper != "" || u.igniterAway || u.reversed, "after-work", "nothing-done")
	case "story-weather":
		return pick(u.coldSnap, "cold", "same")
	case "story-room":
		return pick(s.reach == atDone || s.light == "5", "warm", "cold")
	case "light":
		return s.light, true
	case "label":
		if s.light == "4" && u.r["rollout-left"] > 1e5 {
			return "says-limit", true
		}
		return lampLabel[s.light], true
	case "stat-screen":
		return pick(u.batteriesDead, "blank", "lit")
	case "stat-mode-set":
		return u.mode, true
	case "stat-setpoint":
		return pick(u.setBelow, "below", "above")
	case "stat-schedule":
		return pick(u.schedule, "schedule", "hold")
	case "stat-raise":
		below := u.setBelow
		u.setBelow = false
		r := u.run()
		u.setBelow = below
		// Ten degrees up beats any set-back; the furnace is heard when a fan turns.
		return pick(r.fan == "running" || r.blower == "running", "running", "silent")
	case "stat-room":
		return "same", true
	case "stat-type":
		return pick(u.setupWrong, "different", "right-place")
	case "house-power":
		return pick(u.houseDark, "off", "on")
	case "breaker-look":
		return pick(u.breakerTripped, "tripped", "on")
	case "switch-look":
		return pick(u.switchOff, "off", "on")
	case "panel-look":
		return pick(u.panelLoose, "loose", "tight")
	case "filter-look":
		return pick(u.filterDirt > 0.2, "dirty", "clean")
	case "cock-look":
		return pick(u.cockShut, "crosswise", "parallel")
	case "other-gas":
		if u.gasOut {
			return "none", true
		}
		return pick(u.gas < 0.5, "short-flame", "good")
	case "registers-look":
		return pick(u.registersShut, "closed", "open")
	case "return-look":
		return pick(u.returnBlock, "blocked", "clear")
	case "pan-look":
		return pick(u.coilDrain, "wet", "dry")
	case "vent-look":
		return pick(u.ventBlock, "blocked", "clear")
	case "intake-look":
		return pick(u.intakeBlock, "blocked", "clear")
	case "vent-joint-look":
		return pick(u.ventApart, "loose", "tight")
	case "duct-look":
		return pick(u.ductApart, "loose", "tight")
	case "y-cable-look", "splice-look":
		return pick(id == "splice-look" && u.shortR < 1e5 && u.shortSeen(), "bare", "good")
	case "see-fan":
		return u.offWhen(!on, s.fan, "silent"), true
	case "see-glow":
		return s.glow, true
	case "see-glow-hold":
		return pick(s.glow == "no-glow", "no-glow", "glowing")
	case "hear-valve":
		return pick(s.click, "clicks", "no-click")
	case "see-flame":
		return s.flame, true
	case "see-burners":
		return s.burners, true
	case "see-hold":
		return s.hold, true
	case "see-colour", "again-flame":
		if s.flame == "no-flame" {
			return "no-flame", true
		}
		return pick(u.burnersDirty || u.overfire > 0.15 || u.ventBlock || u.soot, "yellow-flame", "blue-flame")
	case "see-blower":
		return s.blower, true
	case "see-move":
		if s.reach < atHeating {
			return "no-flame", true
		}
		return pick(u.crack, "flame-moves", "flame-still")
	case "feel-air":
		switch {
		case s.blower != "running" || u.air() < 0.1:
			return "no-air", true
		case u.air() < 0.72:
			return "weak-air", true
		}
		return "strong-air", true
	case "feel-warm", "again-air":
		switch {
		case s.blower != "running" || u.air() < 0.1:
			return "no-air", true
		case s.reach < atSteady:
			return "cool-air", true
		case s.limitOut && id == "feel-warm":
			return "warm-air", true
		}
		return "warm-air", true
	case "see-limit", "again-limit":
		return pick(s.limitOut || s.reach != atDone && s.light != "5", "short-flame", "flame-stays")
	case "see-end":
		return pick(u.valveLeaks, "flame-stays", "no-flame")
	case "hear-rest":
		call := u.call
		u.call = false
		r := u.run()
		u.call = call
		return pick(r.stuck.ind && r.fan == "running" || r.stuck.blow && r.blower == "running", "running", "silent")
	case "cycle":
		switch {
		case s.reach == atDone || s.light == "5":
			return "running", true
		case s.reach >= atTrial:
			return "stops-early", true
		case s.fan == "running":
			return "runs-no-heat", true
		}
		return "no-start", true
	case "dial":
		return pick(s.flame != "no-flame" || s.click && u.valveLeaks, "running", "not-running")
	case "dial-time":
		// One cubic foot of natural gas is about 1025 Btu; 80 000 Btu/h takes 46 seconds.
		if s.flame == "no-flame" {
			return "not-running", true
		}
		return pick(46/(u.gas*(1+u.overfire)) < 40, "below", "above")
	case "flue-co-m":
		return "", true
	case "hose-look":
		if u.hose == "off-port" || u.hose == "split" {
			return u.hose, true
		}
		return "good", true
	case "hose-wet":
		return pick(u.hose == "wet", "wet", "dry")
	case "port-look":
		return pick(u.portBlock, "blocked", "clear")
	case "fan-drain-look":
		return pick(u.fanDrain, "blocked", "clear")
	case "press-label", "glow-kind":
		return "same", true
	case "orifice-look":
		return pick(u.overfire > 0.1, "different", "same")
	case "jumper-look":
		return pick(u.jumper != "", "bypassed", "clear")
	case "w-look":
		return pick(u.wOnY, "wrong-place", "right-place")
	case "w-tug":
		return pick(u.r["w-tail"] > 0.4, "loose", "tight")
	case "speed-lead-look":
		if u.speedWrong {
			return "wrong-place", true
		}
		return pick(u.speedLoose, "loose", "right-place")
	case "fan-spin":
		return pick(u.inducerStuck, "not-running", "free")
	case "fan-wheel-look":
		return pick(u.inducerWheelLoose, "loose", "tight")
	case "fan-cap-look":
		return pick(u.capSwollen && u.capInducer < 3, "swollen", "good")
	case "blower-cap-look":
		return pick(u.capSwollen && u.capBlower < 6, "swollen", "good")
	case "fan-plug-look":
		return pick(u.r["inducer-plug"] > 0.4, "burnt", "good")
	case "glow-plug-look":
		return pick(u.r["igniter-plug"] > 0.4, "burnt", "good")
	case "glow-look":
		return pick(u.igniterCrackSeen, "cracked", "good")
	case "glow-place":
		return pick(u.igniterAway, "wrong-place", "right-place")
	case "rod-look":
		switch {
		case u.rodCrackSeen:
			return "cracked", true
		case u.rodAway:
			return "wrong-place", true
		}
		return pick(u.rod < 0.5, "dirty", "clean")
	case "rod-place":
		return pick(u.rodAway, "wrong-place", "right-place")
	case "burner-look":
		if u.soot {
			return "sooty", true
		}
		return pick(u.burnersDirty, "dirty", "clean")
	case "crossover-look":
		return pick(u.crossover, "blocked", "clear")
	case "exchanger-look":
		if u.crack {
			return "cracked", true
		}
		return pick(u.soot, "sooty", "good")
	case "roll-look":
		return pick(u.r["rollout-left"] > 1e5 || u.r["rollout-right"] > 1e5, "popped", "not-popped")
	case "roll-marks":
		return pick(u.rolls || u.soot, "sooty", "clean")
	case "gas-switch-look":
		return pick(u.valveSwitchOff, "off", "on")
	case "valve-wire-look":
		return pick(u.r["valve-lead"] > 0.4 || u.r["valve-common"] > 0.4, "loose", "tight")
	case "string-look":
		return pick(u.r["limit-lead"] > 0.4 || u.r["string-lead"] > 0.4, "loose", "tight")
	case "press-wire-look":
		return pick(u.r["pressure-lead"] > 0.4, "loose", "tight")
	case "supply-wire-look":
		return pick(u.r["line-lead"] > 0.4 || u.r["neutral-lead"] > 0.4 || u.r["secondary-lead"] > 0.4 ||
			u.r["common-lead"] > 0.4, "loose", "tight")
	case "fuse-look":
		return pick(u.r["board-fuse"] > 1e5, "blown", "good")
	case "stat-wire-look":
		return pick(u.r["r-terminal"] > 0.4 || u.r["w-terminal"] > 0.4, "loose", "tight")
	case "splice-tug":
		return pick(u.r["r-splice"] > 0.4 || u.r["w-splice"] > 0.4 || u.r["float-lead"] > 0.4, "loose", "tight")
	case "blower-spin":
		return pick(u.blowerStuck, "not-running", "free")
	case "blower-wheel-look":
		return pick(u.wheelDirt > 0.2, "dirty", "clean")
	case "blower-hub":
		return pick(u.wheelLoose, "loose", "tight")
	case "coil-look":
		return pick(u.coilDirt > 0.2, "dirty", "clean")
	case "rules":
		return "allowed", true
	}
	return "", false
}

func (u *unit) shortSeen() bool { return u.r["r-wire"] < 1.6 }

func (u *unit) offWhen(off bool, a, b string) string {
	if off {
		return b
	}
	return a
}

// complaint is what the owner would say the furnace does. The draft fan alone is told in three ways by three owners.
func (u *unit) complaint(s start) string {
	switch {
	case u.comesAndGoes:
		return "stops-early"
	case s.light == "5":
		return "never-stops"
	case s.reach == atDone && (u.air() < 0.6 || u.coldSnap || u.gas < 0.8):
		return "not-enough"
	case s.light == "4":
		if s.limitOut {
			return "stops-early"
		}
		return "runs-no-heat"
	case s.reach >= atTrial && s.flame != "no-flame":
		return "stops-early"
	case s.fan == "running":
		return "runs-no-heat"
	case s.reach == atDone:
		return "not-enough"
	}
	return "no-start"
}

// reading is the true value behind a measurement, in the unit of the catalogue.
type reading struct {
	value float64
	unit  string
	over  bool
	none  bool // nothing that this person owns measures it
}

// measure finds the true value of a check. zin is the meter's own resistance on volts.
func (u *unit) measure(c check, zin float64) reading {
	s := u.run()
	o := s.steps[atRest]
	if c.At != "" {
		p := phaseOf[c.At]
		o = s.steps[p]
	} else if u.call && s.callSeen {
		o = s.stuck
	} else if s.stuck.ind || s.stuck.blow {
		o = s.stuck
	}
	switch c.Function {
	case "volts-ac":
		n, v := u.live(o, c.Red, c.Black, zin)
		return reading{value: n.between(v, c.Red, c.Black), unit: "V"}
	case "ohms":
		if !u.powerOff() {
			n, v := u.live(o, c.Red, c.Black, 1e5)
			if n.between(v, c.Red, c.Black) > 1 {
				return reading{over: true}
			}
		}
		rest := outputs{psClosed: u.psStuckClosed}
		held := u.held
		if c.ID == "door-switch-ohms" {
			u.held = true
		}
		r := u.network(rest, false).ohms(c.Red, c.Black)
		u.held = held
		// One leg: the winding to frame of a good motor is insulation.
		return reading{value: r, unit: "ohm", over: r > 20e6}
	case "amps-ac":
		n, v := u.live(o, "", "", 0)
		switch c.Quantity {
		case "amps:igniter":
			return reading{value: n.between(v, "glow-a", "glow-b") / u.withFault("igniter", u.igniterHot), unit: "A"}
		case "amps:inducer":
			z := 95.0
			if u.fanShare() == 0 {
				z = 48
			}
			if u.inducerOpen {
				z = open
			}
			return reading{value: n.between(v, "fan-a", "fan-b") / z, unit: "A"}
		case "amps:blower":
			z := 19.0
			if u.blowerShare() == 0 {
				z = 9
			}
			if u.blowerOpen {
				z = open
			}
			if u.wheelLoose {
				z = 40
			}
			return reading{value: n.between(v, "blower-a", "blower-b") / z, unit: "A"}
		}
	case "microamps-dc":
		return reading{value: s.current, unit: "uA"}
	case "capacitance":
		if c.ID == "fan-cap" {
			return reading{value: u.capInducer, unit: "uF"}
		}
		return reading{value: u.capBlower, unit: "uF"}
	case "manometer":
		port, sensed := u.draft(u.fanState(o) == "running")
		air := u.air()
		if !u.blowing(o) {
			air = 0
		}
		clog := 0.0
		if u.filterDirt > 0 {
			clog = 0.6 * u.filterDirt
		}
		if u.returnBlock {
			clog += 0.35
		}
		push := 0.0
		if u.registersShut {
			push = 0.25
		}
		push += 0.5 * u.coilDirt
		ret, sup := (0.18+clog)*math.Min(1, air*1.4), (0.24+push)*math.Min(1, air*1.4)
		switch c.Quantity {
		case "port-draft":
			return reading{value: port, unit: "inH2O"}
		case "sensed-draft":
			return reading{value: sensed, unit: "inH2O"}
		case "total-static":
			return reading{value: ret + sup, unit: "inH2O"}
		case "return-static":
			return reading{value: -ret, unit: "inH2O"}
		case "supply-static":
			return reading{value: sup, unit: "inH2O"}
		case "gas-inlet":
			return reading{none: true}
		}
	case "thermometer":
		if s.reach < atHeating || !s.stuck.burning && !s.limitOut {
			return reading{value: 0, unit: "dF"}
		}
		return reading{value: math.Min(u.rise(), 110), unit: "dF"}
	case "co-meter":
		v := 0.0
		if u.coAlarm {
			v = 60
		}
		return reading{value: v, unit: "ppm"}
	}
	return reading{none: true}
}

// powerOff says whether the furnace is really dead.
func (u *unit) powerOff() bool {
	return !u.breaker || !u.sw || u.switchOff || u.breakerTripped || u.houseDark
}
