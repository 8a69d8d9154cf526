package handx

// repair does what a repair of the catalogue does to this furnace. A repair that only cleans, tightens or sets wastes no
// part.
func (u *unit) repair(id string) {
	good := func(names ...string) {
		for _, n := range names {
			u.r[n] = 0.05
		}
	}
	switch id {
	case "set-heat":
		u.mode, u.setBelow = "heat", false
	case "set-point", "set-schedule":
		u.setBelow, u.schedule = false, false
	case "set-heat-type":
		u.setupWrong = false
	case "change-batteries":
		u.batteriesDead = false
	case "switch-on":
		u.switchOff, u.sw = false, true
	case "reset-breaker":
		u.breakerTripped, u.breaker = u.breakerAgain, true
	case "seat-panel":
		u.panelLoose = false
	case "open-gas-cock":
		u.cockShut = false
	case "valve-switch-on":
		u.valveSwitchOff = false
	case "open-registers":
		u.registersShut = false
	case "clear-return":
		u.returnBlock = false
	case "replace-filter":
		u.filterDirt = 0
	case "clear-drain":
		u.coilDrain = false
	case "clear-intake":
		u.intakeBlock = false
	case "clear-vent":
		u.ventBlock = false
	case "refit-line-lead":
		good("line-lead")
	case "refit-neutral-lead":
		good("neutral-lead")
	case "refit-secondary-lead":
		good("secondary-lead")
	case "refit-common-lead":
		good("common-lead")
	case "tighten-common-bond":
		good("common-bond")
	case "refit-float-lead":
		good("float-lead")
	case "remake-r-splice":
		good("r-splice")
	case "remake-w-splice":
		good("w-splice")
	case "refit-stat-wire":
		good("r-terminal", "w-terminal")
	case "crimp-w":
		good("w-tail")
	case "move-w-wire":
		u.wOnY = false
	case "refit-limit-lead":
		good("limit-lead")
	case "refit-string-lead":
		good("string-lead")
	case "refit-pressure-lead":
		good("pressure-lead")
	case "refit-inducer-plug":
		good("inducer-plug")
	case "refit-igniter-plug":
		good("igniter-plug")
	case "refit-valve-lead":
		good("valve-lead")
	case "refit-valve-common":
		good("valve-common")
	case "refit-flame-lead":
		good("flame-lead")
	case "refit-speed-lead", "move-speed-lead":
		u.speedLoose, u.speedWrong = false, false
	case "remove-jumper":
		u.jumper = ""
	case "replace-cable":
		good("r-wire", "w-wire", "c-wire", "board-fuse")
		u.shortR = open
	case "repair-y-wire", "isolate-outdoor":
		good("y-wire", "board-fuse")
	case "clear-port":
		u.portBlock = false
	case "replace-hose", "refit-hose", "drain-hose":
		if u.hose != "split" || id == "replace-hose" {
			u.hose = ""
		}
	case "clear-inducer-drain":
		u.fanDrain = false
	case "clean-flame-rod":
		u.rod = 1
	case "set-flame-rod":
		u.rodAway = false
	case "clean-burner-ground":
		good("burner-ground")
	case "set-igniter":
		u.igniterAway = false
	case "clean-blower-wheel":
		u.wheelDirt = 0
	case "tighten-blower-wheel":
		u.wheelLoose = false
	case "replace-door-switch":
		good("door-switch")
	case "replace-transformer":
		delete(u.r, "transformer-primary")
		delete(u.r, "transformer-secondary")
	case "replace-fuse":
		good("board-fuse")
	case "replace-float-switch":
		good("float-switch")
	case "replace-thermostat":
		good("thermostat", "r-terminal", "w-terminal")
		u.batteriesDead, u.setupWrong = false, false
		u.mode, u.setBelow = "heat", false
	case "replace-limit":
		good("high-limit")
		u.limitOpens = 200
	case "replace-pressure-switch":
		good("pressure-switch")
		u.psStuckClosed, u.psStuckOpen, u.psSet = false, false, 0.6
		if u.hose == "off-port" {
			u.hose = ""
		}
	case "replace-inducer-capacitor":
		u.capInducer = 4
	case "replace-inducer":
		u.inducerOpen, u.inducerStuck, u.inducerWheelLoose, u.capInducer = false, false, false, 4
	case "replace-igniter":
		delete(u.r, "igniter")
		u.igniterHot, u.igniterCold, u.igniterAway, u.igniterCrackSeen = 29, 58, false, false
	case "replace-flame-rod":
		u.rod, u.rodLeak, u.rodAway, u.rodCrackSeen = 1, open, false, false
	case "replace-board":
		u.boardDead, u.relayIgn, u.relayInd, u.relayGas, u.relayBlow = false, false, false, false, false
		good("board-fuse")
	case "replace-blower-capacitor":
		u.capBlower = 7.5
	case "replace-blower-motor":
		u.blowerOpen, u.blowerStuck = false, false
	}
}
