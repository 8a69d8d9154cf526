package oracle

import (
	"maps"
	"slices"
	"strings"
)

// Careless is a person who misreads one number or look in twenty, skips one act in twenty, says what is hoped for as often, and now and then
// puts a lead on the wrong point or reads the wrong prefix.
var Careless = Habits{Misread: 0.05, Skip: 0.05, Yes: 0.05, WrongPoint: 0.03, UnitSlip: 0.03}

// Singles is one case for every fault that the examiner knows, with a careful person.
func Singles() []Case {
	var out []Case
	for i, name := range slices.Sorted(maps.Keys(catalogue)) {
		if name != "reserved" { // no fault by itself
			out = append(out, Case{Name: name, Faults: []string{name}, Seed: uint64(i)})
		}
	}
	return out
}

// Others are good furnaces, faults that come and go, local rules, and starts that pass.
func Others() []Case {
	return []Case{
		{Name: "good", Seed: 201},
		{Name: "good, strict", Seed: 202, Strict: true},
		{Name: "crimp comes and goes", Faults: []string{"w-loose"}, Intermittent: 0.5, Seed: 203},
		{Name: "igniter comes and goes", Faults: []string{"hot-crack"}, Intermittent: 0.7, Seed: 204},
		{Name: "wind in the vent", Faults: []string{"vent-partly"}, Intermittent: 0.6, Seed: 205},
		{Name: "igniter, rules reserve it", Faults: []string{"cracked", "reserved"}, Seed: 206},
		{Name: "igniter, starts pass", Faults: []string{"cracked"}, Seed: 207, Strict: true},
		{Name: "switch, starts pass", Faults: []string{"press-open"}, Seed: 208, Strict: true},
		{Name: "rod, starts pass", Faults: []string{"rod-dirty"}, Seed: 209, Strict: true},
		{Name: "fan capacitor, starts pass", Faults: []string{"fan-cap"}, Seed: 210, Strict: true},
		{Name: "valve lead, starts pass", Faults: []string{"valve-lead"}, Seed: 211, Strict: true},
		{Name: "gas smelled late", Faults: []string{"cracked"}, Seed: 212, Alarm: "gas", AlarmAt: 40},
		{Name: "shock at the meter", Faults: []string{"press-open"}, Seed: 213, Alarm: "shock", AlarmAt: 60},
	}
}

// Doubles are two faults, a fault and a wrong setting, or a fault and earlier bad work.
func Doubles() []Case {
	pairs := [][2]string{
		{"filter", "blower-cap"}, {"cracked", "rod-dirty"}, {"cool", "cracked"}, {"schedule", "hose-split"}, {"switched-off", "press-open"},
		{"ajar", "cracked"}, {"wrong-terminal", "filter"}, {"jumper", "vent"}, {"tap-wrong", "blower-cap-dead"}, {"fan-cap", "port"},
		{"batteries", "rod-lead"}, {"moved", "rod-dirty"}, {"cock", "hose-wet"}, {"fuse", "stat-open"}, {"limit-lead", "cracked"}, {"low", "tap-off"},
	}
	var out []Case
	for i, p := range pairs {
		out = append(out, Case{Name: p[0] + " and " + p[1], Faults: p[:], Seed: uint64(300 + i)})
	}
	return out
}

// CarelessCases are faults in front of a careless person.
func CarelessCases() []Case {
	var out []Case
	for i, name := range strings.Fields("cracked press-open rod-dirty fan-cap filter hose-split r-splice secondary-open board-igniter limit-open blower-cap w-broken " +
		"stat-open press-lead coil-open port fan-seized tap-off door-worn float cool gas-off glow-plug valve-lead") {
		out = append(out, Case{Name: "careless: " + name, Faults: []string{name}, Habits: Careless, Seed: uint64(400 + i)})
	}
	return out
}

// Unable are people who do not know, cannot reach, refuse live work, have no meter, or stop early. The end must be honest and safe.
func Unable() []Case {
	var out []Case
	for i, x := range []struct {
		name  string
		fault string
		h     Habits
	}{
		{"knows little", "cracked", Habits{DontKnow: 0.3, CantReach: 0.2}},
		{"knows little", "filter", Habits{DontKnow: 0.3, CantReach: 0.2}},
		{"knows little", "press-open", Habits{DontKnow: 0.5, CantReach: 0.3}},
		{"refuses live work", "cracked", Habits{NoLive: true}},
		{"refuses live work", "press-open", Habits{NoLive: true}},
		{"refuses live work", "blower-cap-dead", Habits{NoLive: true}},
		{"has no meter", "cracked", Habits{NoMeter: true}},
		{"has no meter", "cool", Habits{NoMeter: true}},
		{"has no meter", "hose-off", Habits{NoMeter: true}},
		{"stops early", "rod-dirty", Habits{QuitAt: 25}},
		{"stops in the middle", "press-open", Habits{QuitAt: 62}},
		{"stops in the swap", "cracked", Habits{QuitAt: 88}},
		{"calls somebody", "cracked", Habits{Decide: "call-someone"}},
		{"reaches nothing", "fan-seized", Habits{CantReach: 1}},
	} {
		out = append(out, Case{Name: x.name + ": " + x.fault, Faults: []string{x.fault}, Habits: x.h, Seed: uint64(500 + i)})
	}
	return out
}
