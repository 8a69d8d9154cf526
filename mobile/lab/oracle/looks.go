package oracle

// look is what eyes, ears and hands find for a question of the guide, by the options it may be answered with. Empty: they find nothing of the kind.
func (f *Furnace) look(id, at string, call bool, options []string) string {
	is := func(bad bool, worse, good string) string {
		if bad {
			return worse
		}
		return good
	}
	any := func(names ...string) bool {
		for _, n := range names {
			if f.bad(n) {
				return true
			}
		}
		return false
	}
	now := f.view(at, call && f.Live())
	dead := !f.Live()
	run := func(net, other string, stuck bool) string {
		w := now.across(net, other)
		switch {
		case w < 90:
			return "silent"
		case stuck:
			return "humming"
		}
		return "running"
	}
	flame := now.flame
	switch id {
	case "odour":
		return is(any("gas smell"), "some", "none")
	case "alarm", "again-alarm":
		return is(any("co alarm"), "sounding", "quiet")
	case "people":
		return is(any("ill"), "feeling-ill", "everyone-fine")
	case "floor":
		return is(any("flooded"), "above", is(any("pan", "housing-water"), "wet", "dry"))
	case "scorch":
		return is(any("roll-left", "roll-right", "plugged"), "sooty", "clean")
	case "story-what":
		return f.does()
	case "story-pattern":
		for n := range intermittents {
			if f.has[n] && f.awake > 0 && f.awake < 1 {
				return "some-starts"
			}
		}
		return "every-start"
	case "story-when":
		for n := range f.has {
			if gradual[n] {
				return "gradually"
			}
		}
		return "suddenly"
	case "story-change":
		for n := range f.has {
			if afterWork[n] {
				return "after-work"
			}
		}
		return is(any("vent", "intake"), "after-storm", "nothing-done")
	case "story-room":
		return is(any("setback", "cold-snap"), "warm", "cold")
	case "story-weather":
		return is(any("cold-snap"), "cold", "same")
	case "light":
		if dead {
			return "off"
		}
		return f.code(call)
	case "label":
		if dead {
			return "says-no-power"
		}
		return map[string]string{"off": "says-no-power", "slow-blink": "says-normal", "steady": "says-normal", "2": "says-pressure-closed", "3": "says-pressure-open",
			"4": "says-limit", "5": "says-false-flame", "6": "says-no-flame", "7": "says-flame-lost"}[f.code(call)]
	case "stat-screen":
		return is(any("batteries", "c-broken"), "blank", "lit")
	case "stat-mode-set":
		return is(any("cool"), "cool", is(any("off"), "off", "heat"))
	case "stat-setpoint":
		return is(any("low", "warm", "schedule"), "below", "above")
	case "stat-schedule":
		return is(any("schedule"), "schedule", "hold")
	case "stat-raise":
		ms := f.start(!any("batteries", "cool", "off"))
		return is(!dead && ms[len(ms)-1].s.out["IND"] && rank(ms[len(ms)-1].step) >= rank("draft"), "running", "silent")
	case "stat-room":
		return is(any("warm"), "different", "same")
	case "stat-type":
		return is(any("heat-pump"), "different", "right-place")
	case "house-power":
		return is(any("dark"), "off", "on")
	case "breaker-look":
		return is(any("tripped"), "tripped", "on")
	case "switch-look":
		return is(!f.Switch, "off", "on")
	case "panel-look":
		return is(any("ajar"), "loose", "tight")
	case "filter-look":
		return is(any("filter"), "dirty", "clean")
	case "cock-look":
		return is(any("cock"), "crosswise", "parallel")
	case "other-gas":
		return is(any("gas-off"), "none", is(any("gas-low"), "short-flame", "good"))
	case "registers-look":
		return is(any("registers"), "closed", "open")
	case "return-look":
		return is(any("return"), "blocked", "clear")
	case "pan-look":
		return is(any("pan"), "wet", "dry")
	case "vent-look":
		return is(any("vent", "vent-partly"), "blocked", "clear")
	case "intake-look":
		return is(any("intake"), "blocked", "clear")
	case "vent-joint-look":
		return is(any("apart"), "loose", "tight")
	case "duct-look":
		return is(any("duct-apart"), "loose", is(any("duct"), "bad", "tight"))
	case "y-cable-look":
		return is(any("y-pinched"), "bare", "good")
	case "splice-look":
		return is(any("r-pinched"), "bare", "good")
	case "see-fan":
		if dead {
			return "silent"
		}
		return run("IND-m", "IND-n", any("fan-seized", "fan-cap", "fan-cap-open"))
	case "see-glow":
		return map[string]string{"none": "no-glow", "weak": "weak-glow", "bright": "glowing"}[now.glow]
	case "see-glow-hold":
		return is(now.glow != "none" && now.s.hot, "glowing", "no-glow")
	case "hear-valve":
		return is(f.opens(now) && now.s.out["GV"], "clicks", "no-click")
	case "see-flame":
		return map[string]string{"none": "no-flame", "good": "whoosh", "some": "whoosh", "bang": "bang", "out": "whoosh"}[flame]
	case "see-burners":
		return map[string]string{"none": "no-flame", "good": "all-burners", "some": "some-burners", "bang": "all-burners", "out": "all-burners"}[flame]
	case "see-hold":
		switch {
		case flame == "none":
			return "no-flame"
		case now.code == "6":
			return "short-flame"
		}
		return "flame-stays"
	case "see-colour", "again-flame":
		switch {
		case flame == "none" || now.code == "6":
			return "no-flame"
		case any("over-fired"):
			return "yellow-flame"
		}
		return "blue-flame"
	case "see-blower":
		return run("BLW-m", "BLW-n", any("blower-seized", "blower-cap-dead"))
	case "see-move":
		switch {
		case flame == "none" || now.code == "6":
			return "no-flame"
		}
		return is(any("exchanger"), "flame-moves", "flame-still")
	case "feel-air":
		return is(now.air == 0 || any("duct-apart"), is(now.air == 0, "no-air", "weak-air"), is(now.air < 0.7, "weak-air", "strong-air"))
	case "feel-warm", "again-air":
		switch {
		case now.air == 0:
			return "no-air"
		case now.flame != "good" && now.flame != "some" || any("duct-apart"):
			return has(options, "cool-air", "cold")
		}
		return "warm-air"
	case "see-limit", "again-limit":
		return is(now.flame == "good", "flame-stays", "short-flame")
	case "see-end":
		return "no-flame"
	case "hear-rest":
		return is(!dead && now.s.out["BLW"] || any("board-fan-welded"), "running", "silent")
	case "dial":
		return is(now.s.out["GV"] && f.opens(now) && f.gas() > 0 && !any("valve-switch"), "running", "not-running")
	case "dial-time":
		if now.flame == "none" || now.flame == "out" || now.code == "6" {
			return "not-running"
		}
		return is(any("over-fired"), "below", "above")
	case "room-co-m":
		return "none"
	case "flue-co-m":
		return "" // needs an analyser
	case "hose-look":
		return is(any("hose-split"), "split", is(any("hose-off"), "off-port", "good"))
	case "hose-wet":
		return is(any("hose-wet"), "wet", "dry")
	case "port-look":
		return is(any("port"), "blocked", "clear")
	case "fan-drain-look":
		return is(any("housing-water"), "blocked", "clear")
	case "press-label":
		return is(any("press-wrong"), "different", "same")
	case "jumper-look":
		return is(any("jumper"), "bypassed", "clear")
	case "w-look":
		return is(any("wrong-terminal"), "wrong-place", "right-place")
	case "w-tug":
		return is(f.has["w-loose"], "loose", "tight")
	case "speed-lead-look":
		return is(any("tap-wrong"), "wrong-place", is(any("tap-off"), "loose", "right-place"))
	case "fan-spin":
		return is(any("fan-seized"), "not-running", is(any("fan-drags"), "grinding", "free"))
	case "fan-wheel-look":
		return is(any("fan-wheel"), "loose", "tight")
	case "fan-cap-look":
		return is(any("fan-cap-open"), "swollen", "good")
	case "fan-plug-look":
		return is(any("fan-plug"), "burnt", "good")
	case "glow-plug-look":
		return is(any("glow-plug"), "burnt", "good")
	case "glow-look":
		return is(any("cracked"), "cracked", "good")
	case "glow-place":
		return is(any("moved"), "wrong-place", "right-place")
	case "glow-kind":
		return is(any("wrong-igniter"), "different", "same")
	case "rod-look":
		return is(any("porcelain"), "cracked", is(any("rod-dirty"), "dirty", is(any("bent"), "wrong-place", "clean")))
	case "rod-place":
		return is(any("bent"), "wrong-place", "right-place")
	case "burner-look":
		return is(any("burners-dirty"), "dirty", is(any("plugged"), "sooty", "clean"))
	case "crossover-look":
		return is(any("crossover"), "blocked", "clear")
	case "orifice-look":
		return is(any("over-fired"), "different", "same")
	case "exchanger-look":
		return is(any("plugged"), "sooty", is(any("exchanger"), "cracked", "good"))
	case "roll-look":
		return is(any("roll-left", "roll-right") || f.rolled, "popped", "not-popped")
	case "roll-marks":
		return is(any("roll-left", "roll-right", "plugged"), "sooty", "clean")
	case "gas-switch-look":
		return is(any("valve-switch"), "off", "on")
	case "valve-wire-look":
		return is(any("valve-lead", "valve-common"), "loose", "tight")
	case "string-look":
		return is(any("limit-lead", "string-pin"), "loose", "tight")
	case "press-wire-look":
		return is(any("press-lead"), "loose", "tight")
	case "supply-wire-look":
		return is(any("hot-lead", "neutral-lead", "r-lead", "c-lead"), "loose", "tight")
	case "fuse-look":
		return is(!f.fuse, "blown", "good")
	case "stat-wire-look":
		return is(any("stat-r-off", "stat-w-off"), "loose", "tight")
	case "splice-tug":
		return is(any("r-splice", "w-splice"), "loose", "tight")
	case "blower-spin":
		return is(any("blower-seized"), "not-running", is(any("blower-drags"), "grinding", "free"))
	case "blower-wheel-look":
		return is(any("wheel-dirty"), "dirty", "clean")
	case "blower-hub":
		return is(any("wheel-loose"), "loose", "tight")
	case "blower-cap-look":
		return is(any("blower-cap-dead"), "swollen", "good")
	case "coil-look":
		return is(any("coil"), "dirty", "clean")
	case "rules":
		return is(any("reserved"), "reserved", "allowed")
	}
	return ""
}

func has(options []string, a, b string) string {
	for _, o := range options {
		if o == a {
			return a
		}
	}
	return b
}

// does is what the house sees of it, in the guide's five kinds.
func (f *Furnace) does() string {
	if !f.Live() {
		return "no-start"
	}
	ms := f.start(f.Calling && !f.statBlind())
	m := &ms[len(ms)-1]
	switch {
	case f.bad("setback") || f.bad("cold-snap") || f.bad("duct-apart"):
		return "not-enough"
	case m.step == "steady" && m.s.limit:
		return "stops-early"
	case m.step == "steady":
		return "not-enough"
	case m.step == "rest" || m.step == "call" || m.code == "off" || m.s.out["IND"] && m.across("IND-m", "IND-n") < 90 || f.bad("fan-winding"):
		return "no-start"
	case m.flame != "none":
		return "stops-early"
	}
	return "runs-no-heat"
}

// code is what the status light shows: that of the last start that failed, or of now.
func (f *Furnace) code(call bool) string {
	ms := f.start(call && f.Calling && !f.statBlind())
	return ms[len(ms)-1].code
}
