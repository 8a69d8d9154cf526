package flows_test

import (
	"slices"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/flows"
)

// commonest are the forty commonest causes of no heat on a gas furnace with a glowing igniter, in the order of the equipment notes, each
// with faults that stand for it; any one will do. A cause without a fault has none in any file.
var commonest = []struct{ cause, faults string }{
	{"flame rod film", "flame-rod.dirty"}, {"filter, air, limit", "filter.packed"}, {"igniter open or weak", "igniter.open igniter.aged"},
	{"water in trap or drain", "trap.clogged drain-line.frozen"}, {"thermostat settings, batteries", "stat-mode.cool setpoint.schedule batteries.dead"},
	{"draft fan motor, wheel", "inducer.seized inducer-wheel.loose"}, {"blower motor or module", "blower.module-dead"}, {"blower capacitor", "blower-capacitor.failed"},
	{"board outputs", "board.blower-output"}, {"float switch or pump in R", "pump.dead"}, {"switch, breaker, panel", "furnace-switch.off breaker.off panel-seat.ajar"},
	{"port, hose", "port.plugged hose.split"}, {"vent or intake blocked", "vent.blocked"}, {"board fuse by a shorted cable", "r-wire.pinched"},
	{"lock-out left from a passing event", ""}, {"tank empty, frozen regulator", ""}, {"gas cock, valve switch", "gas-cock.closed valve-switch.off"},
	{"pressure switch itself", "pressure-switch.stuck-open"}, {"limit itself", "high-limit.open"}, {"gas valve", "gas-valve.coil-open"},
	{"transformer", "transformer.primary-open"}, {"thermostat dead", "thermostat.open"}, {"cable broken", "w-wire.broken"}, {"C wire, power stealing", "c-wire.broken power-stealing.leaks"},
	{"loose plug or crimp", "igniter-plug.open w-tail.loose"}, {"burner ground, rod lead, porcelain", "burner-ground.corroded flame-lead.open flame-rod.cracked"},
	{"roll-out", "rollout-left.tripped"}, {"door switch", "door-switch.open"}, {"burners, blocked orifice", "orifice.spider"}, {"crossover, late light", "crossover.blocked"},
	{"auxiliary limit in the blower deck", ""}, {"heat exchanger", "exchanger.cracked"}, {"zone panel, dampers", ""}, {"heat pump set-up holds W", "stat-setup.heat-pump"},
	{"water on the board", ""}, {"polarity, ground", "junction.reversed ground-run.open"}, {"generator, floating neutral", ""}, {"iced meter, excess-flow valve", ""},
	{"igniter wrong or moved", "igniter.wrong-part igniter-bracket.moved"}, {"belt drive", "belt.broken"},
}

// causes counts the commonest causes that some gas furnace file has.
func causes(t *testing.T, reports []*flows.Report) (covered int, missing []string) {
	t.Helper()
	known := map[string]bool{}
	for _, r := range reports {
		if !strings.Contains(r.Model.ID, "furnace") {
			continue
		}
		for i := range r.Model.Modes {
			known[r.Model.Modes[i].Full] = true
		}
	}
	for _, c := range commonest {
		if slices.ContainsFunc(strings.Fields(c.faults), func(f string) bool { return known[f] }) {
			covered++
			continue
		}
		if c.faults != "" {
			t.Errorf("%s: no file has %s", c.cause, c.faults)
		}
		missing = append(missing, c.cause)
	}
	return covered, missing
}

// TestCauses holds the files to the causes they have.
func TestCauses(t *testing.T) {
	if len(commonest) != 40 {
		t.Fatalf("%d causes", len(commonest))
	}
	reports, err := flows.LintAll(nil)
	if err != nil {
		t.Fatal(err)
	}
	if n, missing := causes(t, reports); n < 33 {
		t.Errorf("%d of 40, without %v", n, missing)
	}
}

// plateWords counts limits that say "plate" where no field of the plate sets them.
func plateWords(reports []*flows.Report) (n int) {
	for _, r := range reports {
		for i := range r.Model.Checks {
			c := &r.Model.Checks[i]
			set := slices.ContainsFunc(r.Model.Plate, func(f appliance.PlateField) bool {
				return f.Sets != "" && r.Model.PlateSets(&f) == c.Part && f.Unit == c.Unit
			})
			if c.Limit != nil && c.Limit.Source == "plate" && c.Label == 0 && !set {
				n++
			}
		}
	}
	return n
}
