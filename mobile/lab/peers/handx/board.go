package handx

import (
	"fmt"
	"math"
)

func pow10(x float64) float64 { return math.Pow(10, x) }

// The steps of the sequence, in the order of a start.
const (
	atRest = iota
	atDraft
	atWarmUp
	atTrial
	atHeating
	atSteady
	atDone
)

var phaseOf = map[string]int{"draft": atDraft, "warm-up": atWarmUp, "trial": atTrial, "heating": atHeating,
	"steady": atSteady}

// start is what one call for heat does, as far as it comes.
type start struct {
	alive    bool // the board has its 24 volts
	light    string
	callSeen bool
	reach    int // the step where it hangs; atDone: it heats
	steps    [6]outputs
	stuck    outputs // what runs after it has hung or locked out
	fan      string  // running, humming, silent
	glow     string
	glowHold string
	click    bool
	flame    string // whoosh, bang, rolls-out, no-flame
	burners  string
	hold     string // flame-stays, short-flame, no-flame
	blower   string
	limitOut bool // the burner goes out in the steady state
	current  float64
}

// run follows one start of the furnace as its people left it. Nothing in it depends on time except the order, so the
// same state gives the same start, and is followed once.
func (u *unit) run() start {
	state := *u
	state.rng, state.known, state.last = nil, "", start{}
	key := fmt.Sprint(state)
	if key != u.known {
		u.last = u.follow()
		u.known = key
	}
	return u.last
}

func (u *unit) follow() start {
	s := start{light: "off", fan: "silent", glow: "no-glow", glowHold: "no-glow", flame: "no-flame",
		burners: "no-flame", hold: "no-flame", blower: "silent"}
	rest := outputs{psClosed: u.psStuckClosed}
	volts := func(o outputs, a, b string) float64 {
		n, v := u.live(o, a, b, 10e6)
		return n.between(v, a, b)
	}
	for i := range s.steps {
		s.steps[i] = rest
	}
	s.stuck = rest
	if u.boardDead || volts(rest, "board-r", "board-c") < 17 || volts(rest, "board-l", "board-n") < 80 {
		return s
	}
	// A short on the call blows the fuse the moment the thermostat closes.
	if u.humidShort && u.statCloses() {
		u.r["board-fuse"] = open
		return s
	}
	if n, v := u.live(rest, "", "", 0); math.Abs(v[n.node("fuse-a")]-v[n.node("fuse-b")])/u.r["board-fuse"] > 4.5 {
		u.r["board-fuse"] = open
		return s
	}
	s.alive = true
	s.light = "slow-blink"
	if volts(rest, "string-end", "board-c") < 14 {
		// The limit string is open: this board runs both fans to cool what may be hot.
		s.light = "4"
		s.stuck = outputs{ind: true, blow: true, psClosed: u.psCloses(outputs{ind: true})}
		for i := range s.steps {
			s.steps[i] = s.stuck
		}
		s.fan, s.blower = u.fanState(s.stuck), u.blowerState(s.stuck)
		return s
	}
	if u.valveLeaks && u.rod > 0.2 {
		s.light, s.reach = "5", atSteady
		s.stuck = outputs{ind: true, blow: true, psClosed: true, burning: true}
		for i := range s.steps {
			s.steps[i] = s.stuck
		}
		s.fan, s.blower, s.flame, s.burners, s.hold = u.fanState(s.stuck), u.blowerState(s.stuck), "whoosh",
			"all-burners", "flame-stays"
		return s
	}
	if volts(rest, "board-w", "board-c") < 15 {
		return s
	}
	s.callSeen = true
	s.light = "steady"
	if volts(rest, "press-pin", "board-c") > 12 {
		s.light = "2"
		return s
	}
	s.reach = atDraft
	o := outputs{ind: true}
	s.fan = u.fanState(o)
	o.psClosed = s.fan == "running" && u.psCloses(o)
	s.steps[atDraft] = o
	for i := atDraft; i < len(s.steps); i++ {
		s.steps[i] = o
	}
	s.stuck = o
	if volts(o, "press-pin", "board-c") < 14 {
		s.light = "3"
		return s
	}
	s.reach = atWarmUp
	o.ign = true
	s.steps[atWarmUp] = o
	n, v := u.live(o, "", "", 0)
	amps := n.between(v, "glow-a", "glow-b") / u.withFault("igniter", u.igniterHot)
	hot := false
	switch {
	case amps > 2.9:
		s.glow, hot = "glowing", true
	case amps > 1.2:
		s.glow = "weak-glow"
	}
	s.glowHold = s.glow
	if s.glow == "weak-glow" {
		s.glowHold = "glowing"
	}
	s.reach = atTrial
	o.gas = true
	s.steps[atTrial] = o
	s.click = volts(o, "valve-1", "valve-2") > 17.5 && u.withFault("valve-coil", 1) < 1e5
	gas := s.click && !u.valveStuck && !u.cockShut && !u.valveSwitchOff && !u.gasOut && u.gas > 0.25
	// After three tries the board locks out with everything off.
	s.stuck = rest
	for i := atHeating; i < len(s.steps); i++ {
		s.steps[i] = rest
	}
	if !gas || !hot || u.igniterAway {
		s.light = "6"
		return s
	}
	s.flame, s.burners = "whoosh", "all-burners"
	if u.late {
		s.flame = "bang"
	}
	if u.rolls {
		s.flame = "rolls-out"
	}
	if u.crossover {
		s.burners = "some-burners"
	}
	o.burning = true
	s.steps[atTrial] = o
	s.current = u.flameCurrent(o)
	s.hold = "flame-stays"
	if s.current < 0.5 || u.crossover && u.rodAway {
		s.light, s.hold = "6", "short-flame"
		return s
	}
	s.reach = atHeating
	o.ign = false
	o.blow = true
	s.steps[atHeating], s.steps[atSteady] = o, o
	s.blower = u.blowerState(o)
	if u.crossover {
		// Half the burners carry the flame too late: the flame sense is lost now and then.
		s.light, s.hold, s.stuck = "7", "short-flame", rest
		s.steps[atSteady] = rest
		return s
	}
	s.reach = atSteady
	outlet := 70 + 1.75*u.rise()
	if !u.blowing(o) {
		outlet = 400
	}
	if u.jumper != "high-limit" && outlet > u.limitOpens {
		s.light, s.limitOut = "4", true
		s.stuck = outputs{ind: true, blow: true, psClosed: true}
		return s
	}
	s.stuck = o
	s.reach = atDone
	return s
}

func (u *unit) psCloses(o outputs) bool {
	if u.psStuckClosed {
		return true
	}
	_, sensed := u.draft(u.fanState(o) == "running")
	return !u.psStuckOpen && sensed > u.psSet
}

// fanState is what one hears of the draft fan.
func (u *unit) fanState(o outputs) string {
	if !o.ind {
		return "silent"
	}
	n, v := u.live(o, "", "", 0)
	if u.inducerOpen || n.between(v, "fan-a", "fan-b") < 70 {
		return "silent"
	}
	if u.fanShare() == 0 {
		return "humming"
	}
	return "running"
}

func (u *unit) blowing(o outputs) bool { return u.blowerState(o) == "running" }

func (u *unit) blowerState(o outputs) string {
	if !o.blow {
		return "silent"
	}
	n, v := u.live(o, "", "", 0)
	if u.blowerOpen || n.between(v, "blower-a", "blower-b") < 70 {
		return "silent"
	}
	if u.blowerShare() == 0 {
		return "humming"
	}
	return "running"
}

// flameCurrent is the rectified current in microamps. This board drives the rod from the line against the frame, as
// many of its years did: without ground, or with line and neutral swapped, the best flame gives nothing.
func (u *unit) flameCurrent(o outputs) float64 {
	if !o.burning || u.rodAway {
		return 0
	}
	n, v := u.live(o, "", "", 0)
	drive := n.between(v, "board-l", "frame")
	if u.r["ground-run"] > 1e5 {
		drive = 0
	}
	i := u.flameGood * u.rod * drive / 120
	// The flame itself is tens of megohms, so only a truly open wire hurts.
	series := u.r["flame-lead"] + u.r["burner-ground"]
	i *= 30e6 / (30e6 + series)
	// A leak over the porcelain carries alternating current, which the rectifier counts against the flame.
	i -= 120 / u.rodLeak * 1e6 * 0.02
	return math.Max(0, i)
}

// heats says whether the furnace gives heat at a call, as it stands.
func (u *unit) heats() bool {
	s := u.run()
	return s.reach == atDone
}
