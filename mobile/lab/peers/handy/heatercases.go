package handy

import (
	"math"
	"math/rand"
)

func pow10(x float64) float64 { return math.Pow(10, x) }

func onHeater(f func(rng *rand.Rand, h *heater)) func(*rand.Rand, unit) {
	return func(rng *rand.Rand, u unit) { f(rng, u.(*heater)) }
}

func noHeat(u unit) bool { return !u.heats() }

// A bad contact is anything from a half ohm to five thousand, drawn evenly by its logarithm.
func badContact(rng *rand.Rand) float64 { return 0.5 * pow10(rng.Float64()*4) }

// what a single case names: part, how it is ended, how it breaks.
func hSingle(name, want string, parts []string, stops []string, f func(rng *rand.Rand, h *heater)) situation {
	return situation{name: name, kind: "single", want: want, faults: []fault{{name: name, parts: parts, stops: stops}},
		breakU: onHeater(f), shows: noHeat}
}

func heaterCases() []situation {
	p := func(s ...string) []string { return s }
	gas, vent := p("gas-train"), p("vent")
	cases := []situation{
		hSingle("pile-weak", wantFixed, p("thermopile"), nil, func(r *rand.Rand, h *heater) {
			h.pileEMF *= between(r, 0.1, 0.75)
		}),
		hSingle("pile-dead", wantFixed, p("thermopile"), nil, func(r *rand.Rand, h *heater) { h.pileR = opened }),
		hSingle("pile-resistive", wantFixed, p("thermopile"), nil, func(r *rand.Rand, h *heater) {
			h.pileR = between(r, 6, 60)
		}),
		hSingle("couple-weak", wantFixed, p("thermocouple"), nil, func(r *rand.Rand, h *heater) {
			h.tcEMF *= between(r, 0.05, 0.6)
		}),
		hSingle("couple-broken", wantFixed, p("thermocouple"), nil, func(r *rand.Rand, h *heater) { h.tcR = opened }),
		hSingle("nut-dirty", wantFixed, p("tc-nut"), nil, func(r *rand.Rand, h *heater) {
			h.nutR = between(r, 0.05, 1)
			h.nutLook = []string{"loose", "dirty"}[r.Intn(2)]
		}),
		hSingle("couple-bent", wantFixed, p("tc-place"), nil, func(r *rand.Rand, h *heater) {
			h.tcSeat, h.after = between(r, 0.2, 0.5), "after-work"
		}),
		hSingle("pile-bent", wantFixed, p("pile-place"), nil, func(r *rand.Rand, h *heater) {
			h.pileSeat, h.after = between(r, 0.2, 0.55), "after-work"
		}),
		hSingle("pile-lead-loose", wantFixed, p("pile-lead"), nil, func(r *rand.Rand, h *heater) {
			h.pileLeadR, h.leadLook = badContact(r)*4, []string{"loose", "rusty"}[r.Intn(2)]
		}),
		hSingle("splice-bad", wantFixed, p("splice"), nil, func(r *rand.Rand, h *heater) {
			h.spliceR, h.spliceLook = badContact(r)*4, "loose"
		}),
		hSingle("stat-dirty", wantFixed, p("thermostat"), nil, func(r *rand.Rand, h *heater) { h.statR = badContact(r) * 4 }),
		hSingle("stat-dead", wantFixed, p("thermostat"), nil, func(r *rand.Rand, h *heater) { h.statR = opened }),
		hSingle("stat-wrong-kind", wantFixed, p("thermostat"), nil, func(r *rand.Rand, h *heater) {
			// A 24 volt one with a heater in series for its anticipation.
			h.statR, h.statLabel, h.after = between(r, 8, 60), "different", "after-work"
		}),
		hSingle("cable-thin", wantFixed, p("stat-wire"), nil, func(r *rand.Rand, h *heater) {
			h.cableR, h.cableThin, h.after = between(r, 3, 8), true, "after-work"
		}),
		hSingle("cable-broken", wantFixed, p("stat-wire"), nil, func(r *rand.Rand, h *heater) { h.cableR = opened }),
		hSingle("limit-open", wantFixed, p("limit"), nil, func(r *rand.Rand, h *heater) { h.limitR = opened }),
		hSingle("limit-dirty", wantFixed, p("limit"), nil, func(r *rand.Rand, h *heater) { h.limitR = badContact(r) * 4 }),
		hSingle("limit-early", wantFixed, p("limit"), nil, func(r *rand.Rand, h *heater) { h.limitEarly = true }),
		hSingle("valve-open-coil", wantHand, p("main-valve", "hold-coil"), gas, func(r *rand.Rand, h *heater) {
			h.valveR = opened
		}),
		hSingle("valve-stuck", wantHand, p("main-valve", "hold-coil"), gas, func(r *rand.Rand, h *heater) { h.valveStuck = true }),
		hSingle("hold-coil-dead", wantHand, p("hold-coil"), gas, func(r *rand.Rand, h *heater) {
			h.holdDead = true
			if r.Intn(2) == 0 {
				h.holdR = opened
			}
		}),
		hSingle("sparker-dead", wantFixed, p("sparker"), nil, func(r *rand.Rand, h *heater) { h.spark = false }),
		hSingle("spark-lead-off", wantFixed, p("spark-lead"), nil, func(r *rand.Rand, h *heater) { h.lead = false }),
		hSingle("orifice-clogged", wantHand, p("pilot-orifice"), gas, func(r *rand.Rand, h *heater) {
			h.orifice = between(r, 0.05, 0.5)
		}),
		hSingle("spill-bad", wantHand, p("spill-switch"), vent, func(r *rand.Rand, h *heater) {
			h.spillR = between(r, 0.1, 5)
			if r.Intn(2) == 0 {
				h.spillR = opened
			}
		}),
		hSingle("air-dusty", wantFixed, p("air-ways"), nil, func(r *rand.Rand, h *heater) { h.airBlocked = true }),
		hSingle("windy", wantHand, p("wind", "flue"), vent, func(r *rand.Rand, h *heater) { h.wind, h.some = true, true }),
		hSingle("burner-ports", wantHand, p("burner", "crossover"), p("combustion", "late-light"), func(r *rand.Rand, h *heater) {
			h.burner = "some-burners"
		}),
		hSingle("gas-low", wantHand, p("gas-supply"), p("gas-supply"), func(r *rand.Rand, h *heater) {
			h.supply = []float64{0, between(r, 0.08, 0.3)}[r.Intn(2)]
		}),
	}
	add := func(name, kind, want string, faults []fault, f func(rng *rand.Rand, h *heater)) {
		s := situation{name: name, kind: kind, want: want, faults: faults, breakU: onHeater(f)}
		if kind == "double" {
			s.shows = noHeat
		}
		cases = append(cases, s)
	}
	one := func(parts ...string) fault { return fault{parts: parts} }
	add("pile-weak+splice", "double", wantFixed, []fault{one("thermopile"), one("splice")}, func(r *rand.Rand, h *heater) {
		h.pileEMF *= between(r, 0.25, 0.45)
		h.spliceR, h.spliceLook = between(r, 3, 400), "loose"
	})
	add("couple-weak+nut", "double", wantFixed, []fault{one("thermocouple"), one("tc-nut", "thermocouple")},
		func(r *rand.Rand, h *heater) {
			h.tcEMF *= between(r, 0.1, 0.3)
			h.nutR, h.nutLook = between(r, 0.08, 0.5), "dirty"
		})
	add("air+limit-early", "double", wantFixed, []fault{one("air-ways"), one("limit")}, func(r *rand.Rand, h *heater) {
		h.airBlocked, h.limitEarly = true, true
	})
	add("spark-lead+couple", "double", wantFixed, []fault{one("spark-lead"), one("thermocouple")}, func(r *rand.Rand, h *heater) {
		h.lead, h.tcR = false, opened
	})
	add("stat-dirty+pile-lead", "double", wantFixed, []fault{one("thermostat"), one("pile-lead")},
		func(r *rand.Rand, h *heater) {
			h.statR = between(r, 8, 900)
			h.pileLeadR, h.leadLook = between(r, 10, 300), "loose"
		})

	add("knob-at-pilot", "normal", wantNormal, []fault{one("knob")}, func(r *rand.Rand, h *heater) { h.knob = "hold" })
	add("cock-closed", "normal", wantNormal, []fault{one("gas-cock")}, func(r *rand.Rand, h *heater) { h.cock = 0 })
	add("set-low", "normal", wantNormal, []fault{one("setpoint")}, func(r *rand.Rand, h *heater) { h.setpoint = false })
	add("cold-snap", "normal", wantNormal, []fault{one("expectation")}, func(r *rand.Rand, h *heater) { h.coldSnap = true })
	add("pilot-was-out", "normal", wantNormal, []fault{one("pilot-flame", "knob", "wind")}, func(r *rand.Rand, h *heater) {
		h.pilotOut, h.some = true, true
	})
	cases[len(cases)-1].some = true

	add("flue-nest", "hazard", wantStop, []fault{one("flue", "spill-switch")}, func(r *rand.Rand, h *heater) {
		h.flueBlocked, h.spillPop, h.spillR = true, true, opened
	})
	add("sooty-glass", "hazard", wantStop, []fault{one("burner")}, func(r *rand.Rand, h *heater) { h.front, h.yellow = "sooty", true })
	add("co-alarm", "hazard", wantStop, []fault{one("flue")}, func(r *rand.Rand, h *heater) { h.alarm, h.flueBlocked = true, true })
	add("gas-smell", "hazard", wantStop, []fault{one("gas-supply")}, func(r *rand.Rand, h *heater) { h.odour = true })
	add("late-thump", "hazard", wantStop, []fault{one("crossover", "burner")}, func(r *rand.Rand, h *heater) { h.burner = "whoosh" })
	add("somebody-ill", "hazard", wantStop, []fault{one("flue")}, func(r *rand.Rand, h *heater) { h.ill = true })
	add("burnt-wire", "hazard", wantStop, []fault{one("burner")}, func(r *rand.Rand, h *heater) { h.front = "burnt" })
	return cases
}

func makeHeater(rng *rand.Rand, s situation) unit {
	for range 500 {
		h := newHeater(rng)
		h.knob = "on"
		s.breakU(rng, h)
		h.call = h.setpoint
		h.pilotLit = h.pilotHolds() && !h.pilotOut
		h.power = h.knob == "on"
		if s.shows == nil || s.shows(h) {
			return h
		}
	}
	panic("no draw of " + s.name + " shows the fault")
}
