package handx

import (
	"strings"
)

// answer does what the step on the screen says and answers it; false ends the talk.
func (j *job) answer() bool {
	s := j.view.Step
	key := s.ID + "/" + s.Part + "/" + j.view.State
	if key == j.lastKey {
		j.tries++
	} else {
		j.tries, j.lastKey = 1, key
	}
	j.note("[%s %s %s] %s | %s", j.view.Stage, j.view.State, s.ID, s.Act, s.Say)
	j.at += 20_000
	if j.tries > 7 {
		j.rep.ended = "stuck at " + s.ID
		return false
	}
	if j.tries > 4 && s.Kind != "consent" {
		return j.dontKnow()
	}
	if s.Kind == "consent" {
		if j.rng.Float64() < j.p.refuseLive {
			return j.choose("other-way")
		}
		j.consented = true
		return j.choose("go-live")
	}
	if s.ID == "right-now" {
		// It asks whether what it took for an alarm is one.
		u := j.u
		if (u.odour || u.coAlarm || u.ill || u.flooded) && j.has("leave-now") {
			return j.choose("leave-now")
		}
		j.tries = 2
		return j.choose("none")
	}
	if j.view.State == "confirm" {
		if j.has("different") {
			yes := "right"
			if j.has("right-value") {
				yes = "right-value"
			}
			if j.tries == 1 && (j.misheard() || j.wasWrong && j.rng.Float64() < 0.75) {
				j.wasWrong = false
				yes = "different"
			}
			j.note("> %s", yes)
			return j.say(map[string]any{"kind": "choice", "id": yes})
		}
		if len(s.Keypad) > 0 {
			// It wants the number once more; the person looks at the meter again.
			return j.measure(s)
		}
	}
	if j.tries == 1 && j.rng.Float64() < j.p.why {
		return j.sayText(pickOne(j.rng, "why do you ask", "why", "what was that", "say that again please", "come again",
			"can you repeat that"))
	}
	if n := strings.LastIndexByte(s.ID, '.'); n > 0 {
		if total, ok := j.steps[s.ID[:n]]; ok && total > 0 {
			return j.repairStep(s, s.ID[:n], s.ID[n+1:], total)
		}
	}
	switch s.Kind {
	case "look":
		return j.look(s)
	case "measure":
		return j.measure(s)
	case "act":
		return j.act(s)
	}
	return j.asked(s)
}

// misheard says whether what the phone read back is not what this person meant.
func (j *job) misheard() bool {
	plain := strings.NewReplacer("-", " ", ",", "", "  ", " ")
	said, meant := plain.Replace(strings.ToLower(j.view.Said)), plain.Replace(strings.ToLower(j.meant))
	return meant != "" && !strings.Contains(said, meant)
}

// asked answers the questions about the person, the plate and the meter.
func (j *job) asked(s step) bool {
	switch s.ID {
	case "story":
		if j.tries > 2 {
			return j.dontKnow()
		}
		return j.sayText(story(j.rng, j.u.complaint(j.u.run())))
	case "license":
		return j.choose("no")
	case "plate.input":
		if j.rng.Float64() < 0.6 {
			return j.number(shown{m: 80000, unit: "Btu/h"})
		}
		return j.dontKnow()
	case "plate.rise":
		if j.rng.Float64() < 0.5 {
			return j.number(shown{m: 70, unit: "dF"})
		}
		return j.dontKnow()
	case "plate.static":
		if j.rng.Float64() < 0.4 {
			return j.number(shown{m: 5, e: -1, unit: "inH2O"})
		}
		return j.dontKnow()
	case "plate.gas-kind":
		if j.tries == 1 {
			return j.sayText("natural gas")
		}
		return j.dontKnow()
	case "plate.model":
		return j.dontKnow()
	case "meter.kind":
		if j.p.noMeter > 0 && seedChance(j.rep.seed, j.rep.c.id, j.p.name) < j.p.noMeter {
			return j.choose("no-meter")
		}
		return j.choose(j.m.kind)
	case "meter.category":
		if j.m.kind == "plain-meter" && j.rng.Float64() < 0.3 {
			return j.choose("not-rated")
		}
		return j.choose("rated")
	case "meter.leads":
		return j.choose("good")
	case "meter.short":
		return j.number(j.m.display(j.rng, 0.02, "ohm"))
	case "items":
		// The person looks round: is it as the phone says?
		claim := s.Act + " " + s.Say
		same := strings.Contains(claim, "power off") == j.u.powerOff() || !strings.Contains(claim, "power o")
		for _, c := range []string{"upper", "lower"} {
			if strings.Contains(claim, c+" front panel on") && j.u.covers[c+"-bay"] {
				same = false
			}
		}
		if same || j.tries > 1 {
			return j.choose("same")
		}
		return j.choose("different")
	case "stop":
		j.rep.stopText = s.Act
		return j.firstChoice()
	case "age":
		if j.tries == 1 {
			return j.sayText("it's from the nineties, about thirty years old")
		}
		return j.dontKnow()
	case "relight":
		j.at += 300_000
	}
	return j.firstChoice()
}

func seedChance(seed int64, parts ...string) float64 {
	h := seedOf(append(parts, string(rune('a'+seed%26)), string(rune('a'+seed/26%26)))...)
	return float64(h%10000) / 10000
}

// look answers what is seen, heard or smelled.
func (j *job) look(s step) bool {
	c, known := j.checks[s.ID]
	if s.Until > j.at {
		j.at = s.Until - 1000
	}
	if strings.Contains(s.Act, "ten minutes") || strings.Contains(s.Say, "ten minutes") || s.ID == "cycle" {
		j.at += 600_000
	} else if strings.Contains(s.Say, "five minutes") || strings.Contains(s.Act, "three minutes") {
		j.at += 300_000
	}
	if known && c.HandsIn && !j.u.powerOff() {
		j.broke("hands in the furnace with the power on at " + s.ID)
	}
	harmless := []string{"none", "quiet", "everyone-fine", "dry", "clean"}
	if saw, _ := j.u.look(s.ID); c.Stage == "safety" && !has(harmless, saw) {
		// Nobody shrugs off a hazard.
	} else if j.tries == 1 && j.rng.Float64() < j.p.vague {
		return j.sayText(pickOne(j.rng, "yeah", "fine", "yep", "okay", "sure", "uh huh"))
	}
	if c.Stage != "safety" && j.rng.Float64() < j.p.dontKnow {
		return j.dontKnow()
	}
	away := len(c.Places) > 0 && (c.Places[0] == "outside" || c.Places[0] == "duct" || c.Places[0] == "coil-box" ||
		c.Places[0] == "pan")
	if away && j.rng.Float64() < j.p.cantReach*2 && j.has("cant-reach") {
		return j.command("cant-reach")
	}
	if j.p.refuseLive == 1 && !j.u.powerOff() && (s.Level == "danger" || s.Level == "warning") && c.Stage != "safety" {
		// The frightened one stands back from what may burn or start.
		return j.dontKnow()
	}
	saw, ok := j.u.look(s.ID)
	if s.ID == "cycle" && saw == "running" && !j.has(saw) {
		saw = "full-cycle"
	}
	if !ok {
		j.note("  (this house knows nothing of %s)", s.ID)
		j.rep.noFit = append(j.rep.noFit, s.ID)
		return j.dontKnow()
	}
	if saw == "" {
		return j.dontKnow()
	}
	if !j.has(saw) {
		j.rep.noFit = append(j.rep.noFit, s.ID+"="+saw)
		j.note("  (true answer %s is not among %v)", saw, s.Answers)
		return j.dontKnow()
	}
	if j.tries == 1 && c.Stage != "safety" && j.rng.Float64() < j.p.slip {
		var others []string
		for _, a := range s.Answers {
			if a.Kind == "choice" && a.ID != saw {
				others = append(others, a.ID)
			}
		}
		if len(others) > 0 {
			j.note("  (slip: it is %s)", saw)
			saw = others[j.rng.Intn(len(others))]
		}
	}
	return j.choose(saw)
}

// measure reads a meter.
func (j *job) measure(s step) bool {
	c := j.checks[s.ID]
	live := c.Function == "volts-ac" || c.Function == "amps-ac" || c.Function == "microamps-dc" ||
		strings.HasPrefix(s.ID, "act.prove")
	if live && j.p.refuseLive == 1 && !strings.HasPrefix(s.ID, "act.prove-empty") {
		if j.has("cant-reach") {
			return j.command("cant-reach")
		}
		return j.dontKnow()
	}
	if live && !j.u.powerOff() && s.Caution == "" && !j.consented && s.ID != "outlet" {
		j.broke("live reading without a warning at " + s.ID)
	}
	if c.HandsIn && !j.u.powerOff() {
		j.broke("hands in the furnace with the power on at " + s.ID)
	}
	if s.Part == "A" && j.has("ready") {
		return j.command("ready")
	}
	j.at += 20_000
	if j.rng.Float64() < j.p.dontKnow/2 {
		return j.dontKnow()
	}
	v := reading{none: true}
	switch {
	case s.ID == "act.prove-live" || s.ID == "act.prove-again":
		v = j.volts("outlet-hot", "outlet-neutral")
	case strings.HasPrefix(s.ID, "act.prove-empty"):
		v = reading{value: 0.1, unit: "V"}
	case strings.HasPrefix(s.ID, "act.prove") && len(s.Points) == 2:
		v = j.volts(s.Points[0], s.Points[1])
	case c.ID != "":
		if !j.owns(c) {
			return j.dontKnow()
		}
		if c.Red != "" && j.rng.Float64() < j.p.wrongPoint {
			c.Red = j.neighbour(c.Red)
			j.note("  (wrong point: %s)", c.Red)
		}
		v = j.u.measure(c, j.m.zin)
	default:
		j.note("  (this house knows nothing of %s)", s.ID)
		j.rep.noFit = append(j.rep.noFit, s.ID)
	}
	if v.none {
		return j.dontKnow()
	}
	var d shown
	if v.over {
		d = shown{over: true}
	} else {
		d = j.m.display(j.rng, v.value, v.unit)
	}
	j.wasWrong = false
	if j.rng.Float64() < j.p.misread {
		w := misread(j.rng, d)
		if w != d {
			j.note("  (misread: the meter shows %s %s)", d.text(), d.unit)
			j.wasWrong = true
		}
		d = w
	}
	return j.number(d)
}

func (j *job) volts(a, b string) reading {
	s := j.u.run()
	o := s.steps[atRest]
	if j.u.call && s.callSeen {
		o = s.stuck
	}
	n, v := j.u.live(o, a, b, j.m.zin)
	return reading{value: n.between(v, a, b), unit: "V"}
}

// owns says whether this person has the instrument: what the job costs a person, not what the furnace is.
func (j *job) owns(c check) bool {
	luck := seedChance(j.rep.seed, j.rep.c.id, j.p.name, c.Function)
	switch c.Function {
	case "capacitance":
		return j.m.cap
	case "amps-ac", "microamps-dc":
		return j.m.amps && (j.p.name == "ideal" || luck < 0.4)
	case "manometer":
		return c.Quantity != "gas-inlet" && j.p.name == "ideal" && luck < 0.5
	case "thermometer":
		return j.p.name == "ideal" || luck < 0.5
	case "co-meter":
		return luck < 0.25
	}
	return true
}

// neighbour is a terminal beside the one that was meant.
func (j *job) neighbour(point string) string {
	rows := [][]string{{"board-r", "board-w", "board-c", "board-y", "board-24"}, {"limit-in", "limit-out"},
		{"roll-mid", "roll-out-end", "limit-out"}, {"switch-in", "switch-out"}, {"valve-1", "valve-2"},
		{"splice-r", "splice-w", "splice-w2", "splice-c", "float-far"}, {"stat-r", "stat-w", "stat-c"},
		{"fan-out", "glow-out", "blower-out", "board-l"}, {"box-in", "box-out"}, {"door-in", "door-out"},
		{"string-end", "press-pin", "gas-out"}}
	for _, row := range rows {
		for _, p := range row {
			if p == point {
				return row[j.rng.Intn(len(row))]
			}
		}
	}
	return point
}

// act does what the step says in the model of the place.
func (j *job) act(s step) bool {
	u := j.u
	what, arg, _ := strings.Cut(strings.TrimPrefix(s.ID, "act."), ".")
	if j.p.refuseLive == 1 && !u.powerOff() && what == "place-leads" {
		return j.command("cant-reach")
	}
	j.at += 20_000
	switch what {
	case "power-off":
		u.breaker, u.sw = false, false
	case "power-on":
		if u.houseDark {
			break
		}
		if u.breakerAgain {
			u.sw, u.switchOff = true, false
			if j.tries == 1 {
				return j.sayText("the breaker trips again right away")
			}
			return j.command("cant-reach")
		}
		u.breaker, u.sw, u.switchOff, u.breakerTripped = true, true, false, false
	case "call-on":
		if u.batteriesDead {
			if j.tries == 1 {
				return j.sayText("the thermostat screen is blank")
			}
			return j.command("cant-reach")
		}
		u.call, u.mode, u.setBelow = true, "heat", false
	case "call-off":
		u.call = false
	case "open-cover":
		if !u.powerOff() && s.Caution == "" && arg != "stat-base" {
			j.broke("cover opened with the power on and no warning: " + arg)
		}
		if j.p.refuseLive == 1 && !u.powerOff() && arg != "stat-base" {
			return j.command("cant-reach")
		}
		u.covers[arg] = true
	case "close-cover":
		delete(u.covers, arg)
		if arg == "lower-bay" {
			u.panelLoose = false
		}
	case "lift-wire":
		if !u.powerOff() && s.Caution == "" && !strings.HasPrefix(arg, "wall-") {
			j.broke("wire lifted with the power on: " + arg)
		}
		u.lifted[arg] = true
	case "refit-wire", "return-wire", "restore-wire", "replace-wire", "fit-wire", "join-wire":
		delete(u.lifted, arg)
	case "place-leads", "remove-leads", "take-leads", "jack-out", "jack-in", "discharge":
		// Clips, jacks and an empty capacitor change nothing in the furnace.
	case "meter-in":
		// The meter stands in a broken lead: the wire is off until the meter is out again.
		j.meterIn = true
	case "meter-out":
		j.meterIn = false
	case "hold-door", "hold-door-switch", "press-door", "bypass":
		u.held = true
	case "release-door", "release-door-switch", "free-door", "unbypass":
		u.held = false
	default:
		j.note("  (an act this house has no rule for: %s)", s.ID)
		j.rep.noFit = append(j.rep.noFit, s.ID)
	}
	if s.Part == "A" && j.has("ready") {
		return j.command("ready")
	}
	return j.firstChoice()
}

// repairStep does one step of a repair; the part is good after the last one.
func (j *job) repairStep(s step, repair, number string, total int) bool {
	kind, part := "", ""
	for _, r := range j.cat.Repairs {
		if r.ID == repair {
			kind, part = r.Kind, r.Part
		}
	}
	inside := kind == "replace" || kind == "refit" || kind == "tighten" || kind == "clean"
	for _, harmless := range []string{"batteries", "filter", "drain", "air-intake", "vent", "return-grille",
		"panel-seat"} {
		if part == harmless {
			inside = false
		}
	}
	if inside && !j.u.powerOff() {
		j.broke("repair inside with the power on: " + repair)
	}
	j.at += 120_000
	if number == itoa(total) {
		j.repaired(repair, kind, part)
	}
	if s.Part == "A" && j.has("ready") {
		return j.command("ready")
	}
	return j.firstChoice()
}

func itoa(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return string(rune('0'+n/10)) + string(rune('0'+n%10))
}

func (j *job) repaired(repair, kind, part string) {
	needed := false
	for _, group := range j.rep.c.repairs {
		for _, r := range group {
			needed = needed || r == repair
		}
	}
	for _, r := range j.rep.repairs {
		if r == repair {
			needed = false
		}
	}
	if repair == "replace-fuse" && j.u.r["board-fuse"] > 1e5 {
		needed = true
	}
	if kind == "replace" && !needed {
		j.rep.wasted = append(j.rep.wasted, repair)
	}
	j.rep.repairs = append(j.rep.repairs, repair)
	j.u.repair(repair)
	j.note("  (done in the house: %s)", repair)
}
