package handy

import (
	"fmt"
	"math"
	"math/rand"
)

// heater is a vented room heater as a cheap rental has it: standing pilot, thermocouple with a spill switch in an
// interrupter block, a two-lead thermopile of the 750 mV class, a limit on the back of the control, and a wall
// thermostat on a cable that was lengthened once with a wire nut.
//
//	middle screw - pile lead - thermopile - TP
//	middle screw - limit - wire nut - cable out - thermostat - cable back - TH - valve coil - TP
//	thermocouple tip - nut - (near side) spill switch - hold coil - copper tube
type heater struct {
	place
	rng *rand.Rand
	m   meterClass

	supply, cock float64 // gas that comes: 1 good, 0 none
	knob         string  // on, hold, off as found
	spark, lead  bool
	orifice      float64 // open share of the pilot hole
	tcSeat       float64 // share of the flame that the thin probe gets
	pileSeat     float64
	tcEMF, tcR   float64 // mV, ohms
	nutR         float64
	nutLook      string
	spillR       float64
	spillPop     bool
	holdR        float64
	holdNeeds    float64 // mV at which the pilot valve lets go
	holdDead     bool    // armature sticks open
	pileEMF      float64
	pileR        float64
	pileLeadR    float64
	leadLook     string
	limitR       float64
	limitEarly   bool
	spliceR      float64
	spliceLook   string
	cableR       float64 // one way
	cableThin    bool
	statR        float64
	statLabel    string
	setpoint     bool // above the room
	valveR       float64
	valveOpens   float64 // mV
	valveStuck   bool
	burner       string // all-burners, some-burners, whoosh
	yellow       bool
	airBlocked   bool
	flueBlocked  bool
	wind         bool
	odour        bool
	alarm        bool
	ill          bool
	front        string // clean, sooty, burnt
	after        string
	some         bool
	pilotLit     bool
	plateOpens   float64
	input        float64
	pilotOut     bool // it was out when found, although it lights and holds
	coldSnap     bool
	badTwist     float64 // a loose joint moves when touched: factor drawn at each reading
}

func newHeater(rng *rand.Rand) *heater {
	h := &heater{place: newPlace(), rng: rng}
	h.m = meters[[]int{0, 0, 1, 1, 2}[rng.Intn(5)]]
	h.supply, h.cock, h.knob = 1, 1, "on"
	h.spark, h.lead = true, true
	h.orifice, h.tcSeat, h.pileSeat = between(rng, 0.93, 1), between(rng, 0.93, 1), between(rng, 0.93, 1)
	// 24 to 30 mV open, about half of it on the coil: handbook figures, from memory.
	h.tcEMF, h.tcR, h.holdR = spread(rng, 28, 0.1), spread(rng, 0.018, 0.15), spread(rng, 0.020, 0.15)
	h.nutR, h.nutLook = between(rng, 0.0003, 0.001), "tight"
	h.spillR = between(rng, 0.0008, 0.003)
	h.holdNeeds = between(rng, 3, 5.5)
	// 750 mV class: 600 to 800 mV open, 2 to 4 ohms inside, from memory.
	h.pileEMF, h.pileR = spread(rng, 700, 0.1), spread(rng, 2.8, 0.2)
	h.pileLeadR, h.leadLook = between(rng, 0.01, 0.05), "tight"
	h.limitR, h.spliceR, h.spliceLook = between(rng, 0.01, 0.06), between(rng, 0.01, 0.04), "tight"
	h.cableR = between(rng, 0.06, 0.25)
	h.statR, h.statLabel, h.setpoint = between(rng, 0.02, 0.15), "right-value", true
	h.valveR, h.valveOpens = spread(rng, 3.0, 0.12), between(rng, 130, 175)
	h.plateOpens = 180
	h.burner, h.front, h.after = "all-burners", "clean", "nothing-done"
	h.input = []float64{25000, 35000, 50000}[rng.Intn(3)]
	h.badTwist = 1
	return h
}

func (h *heater) site() *place       { return &h.place }
func (h *heater) meter() *meterClass { return &h.m }

// flame is the pilot's strength when it burns.
func (h *heater) flame() float64 { return h.supply * h.orifice }

// pilotLights says whether the pilot comes with the knob held and the button pressed.
func (h *heater) pilotLights() bool {
	return h.supply > 0.05 && h.cock > 0 && h.spark && h.lead && h.flame() > 0.12
}

// strength is what a probe in the flame gives against a full flame: the heat falls off faster than the flame.
func strength(flame float64) float64 { return math.Max(0, math.Min(1.02, 1.25*flame-0.25)) }

func (h *heater) couple() *circuit {
	c := newCircuit()
	e := h.tcEMF * strength(h.flame()*h.tcSeat)
	if !h.pilotLit {
		e = 0
	}
	c.source("tc-tube", "tc-tip", e, h.tcR)
	c.join("tc-tube", "ground", 1e-3)
	if !h.lifted["tc-tip"] {
		c.join("tc-tip", "tcs", h.nutR)
	}
	c.join("tcs", "hc", h.spillR)
	c.join("hc", "tc-tube", h.holdR)
	return c
}

func (h *heater) holdVolts() float64 {
	c := h.couple()
	return c.volts("hc", "tc-tube", 0)
}

// pilotHolds says whether the flame stays when the knob is let go after a minute.
func (h *heater) pilotHolds() bool {
	if !h.pilotLights() || h.holdDead {
		return false
	}
	was, lit := h.lifted["tc-tip"], h.pilotLit
	h.lifted["tc-tip"], h.pilotLit = false, true
	v := h.holdVolts()
	h.lifted["tc-tip"], h.pilotLit = was, lit
	return v >= h.holdNeeds
}

func (h *heater) pile(call, bridged bool) *circuit {
	c := newCircuit()
	e := h.pileEMF * strength(h.flame()*h.pileSeat)
	if !h.pilotLit {
		e = 0
	}
	// The lead on the middle screw carries the joint's resistance; the second lead goes to TP.
	c.source("pile-b", "pile-a", e, h.pileR)
	if !h.lifted["pile-a"] {
		c.join("pile-a", "tpth", h.pileLeadR*h.badTwist)
	}
	c.join("pile-b", "tp", closed)
	c.join("tp", "ground", 1e-3)
	lim := "lim-a"
	c.join("tpth", "tpth1", closed)
	if !h.lifted["lim-a"] {
		c.join("tpth1", lim, closed)
	}
	c.join(lim, "lim", h.limitR)
	c.join("lim", "splice-far", h.spliceR*h.badTwist)
	c.join("splice-far", "wall1", h.cableR)
	if !h.lifted["stat-a"] {
		c.join("wall1", "stat-a", closed)
		c.join("stat-a", "s1", closed)
	} else {
		c.node("stat-a")
	}
	r := opened
	if call && h.setpoint {
		r = h.statR
	}
	c.join("s1", "s2", r)
	c.join("s2", "wall2", closed)
	c.join("wall2", "th0", h.cableR)
	if !h.lifted["valve-a"] {
		c.join("th0", "th", closed)
	}
	c.join("th", "tp", h.valveR)
	if bridged {
		c.join("th", "lim", 0.05)
	}
	return c
}

func (h *heater) valveVolts(call, bridged bool) float64 {
	c := h.pile(call, bridged)
	return c.volts("th", "tp", 0)
}

// hot are the limit and the air ways after ten minutes.
func (h *heater) limitOpensHot() bool { return h.limitEarly || h.airBlocked }

func (h *heater) running() bool { return h.pilotLit && h.knob == "on" }

func (h *heater) valveOpen(bridged bool) bool {
	return h.running() && !h.valveStuck && h.valveR < opened && h.valveVolts(h.call, bridged) >= h.valveOpens && h.supply > 0.3
}

// heats tries a whole cycle: pilot by the label, knob on, thermostat up, ten minutes.
func (h *heater) heats() bool {
	w := *h
	w.place = newPlace()
	w.knob, w.call = "on", true
	w.pilotLit = w.pilotHolds()
	return w.pilotLit && w.valveOpen(false) && w.burner == "all-burners" && !w.limitOpensHot() && !w.flueBlocked &&
		!w.wind && !w.spillPop && w.setpoint
}

// powerOn does what the label says: lights the pilot, lets the knob go, turns it to on.
func (h *heater) powerOn() {
	h.power = true
	h.knob = "on"
	if !h.pilotLit {
		h.pilotLit = h.pilotHolds()
	}
}

func (h *heater) powerOff() { h.power, h.knob, h.pilotLit = false, "off", false }

func (h *heater) callSet(on bool) {
	h.call = on
	if on {
		h.setpoint = true
	}
}

func (h *heater) story() string {
	switch {
	case h.limitOpensHot() || h.flueBlocked:
		return "it lights and then it stops early after some minutes"
	case !h.pilotHolds():
		return "the pilot is out and will not stay lit since yesterday"
	case h.some:
		return "it goes out some nights since last week"
	}
	return "the pilot burns but no heat since yesterday"
}

func pick(b bool, yes, no string) string {
	if b {
		return yes
	}
	return no
}

func (h *heater) look(check string) string {
	switch check {
	case "odour":
		return pick(h.odour, "some", "none")
	case "flood":
		return "dry"
	case "cock-who":
		return "reason-known" // shut for the summer
	case "alarm", "again-alarm":
		return pick(h.alarm, "sounding", "quiet")
	case "people":
		return pick(h.ill, "feeling-ill", "everyone-fine")
	case "soot":
		return h.front
	case "since":
		return h.after
	case "how-often":
		return pick(h.some, "some-starts", "every-start")
	case "pilot-lit":
		if h.wind && h.rng.Float64() < 0.5 {
			h.pilotLit = false
		}
		return pick(h.pilotLit, "lit", "out")
	case "knob-position":
		return h.knob
	case "cock":
		return pick(h.cock > 0, "open", "closed")
	case "other-gas":
		return pick(h.supply > 0.7, "good", pick(h.supply > 0.05, "short-flame", "no-flame"))
	case "setting":
		// The person is told to turn it up, then to look: an honest one says how it was found when it was down.
		found := h.setpoint
		h.setpoint, h.call = true, true
		return pick(found || h.rng.Intn(2) == 0, "above", "below")
	case "air-openings":
		return pick(h.airBlocked, "blocked", "clear")
	case "terminal":
		return pick(h.flueBlocked, "blocked", "clear")
	case "spark-seen":
		return pick(h.spark && h.lead, "good", "none")
	case "spark-lead-seen":
		return pick(h.lead, "in", "off")
	case "pilot-lights":
		return pick(h.pilotLit || h.pilotLights(), "lit", "no-flame")
	case "pilot-shape":
		if !h.pilotLit && !h.pilotLights() {
			return "no-flame"
		}
		return pick(h.flame() > 0.72, "blue-flame", "short-flame")
	case "pilot-stays", "again-pilot":
		h.pilotLit = h.pilotHolds()
		if h.wind && h.rng.Float64() < 0.3 {
			h.pilotLit = false
		}
		if h.pilotLit {
			h.knob = "on"
		}
		return pick(h.pilotLit, "lit", "out")
	case "probes-seen":
		switch {
		case h.tcSeat < 0.6 && h.pileSeat < 0.6:
			return "neither"
		case h.tcSeat < 0.75 || h.pileSeat < 0.75:
			return "one-only"
		}
		return "both"
	case "thermocouple-seat":
		return pick(h.tcSeat < 0.75, "wrong-place", "right-place")
	case "burner-lights", "again-burner":
		if !h.valveOpen(h.jumper["valve-bridged"]) {
			return "no-flame"
		}
		if check == "again-burner" && h.burner == "whoosh" {
			return "all-burners"
		}
		return h.burner
	case "valve-click":
		v := h.valveVolts(h.call, h.jumper["valve-bridged"])
		return pick(h.running() && !h.valveStuck && h.valveR < opened && v >= h.valveOpens, "clicks", "no-click")
	case "keeps-burning":
		if !h.valveOpen(false) {
			return "stops-early"
		}
		if h.flueBlocked {
			h.spillR, h.pilotLit = opened, false
			return "stops-early"
		}
		return pick(h.limitOpensHot(), "stops-early", "running")
	case "spill-button":
		return pick(h.spillPop, "popped", "not-popped")
	case "splice-seen":
		return h.spliceLook
	case "stat-label":
		return h.statLabel
	case "wire-seen":
		return pick(h.cableThin, "different", "same")
	case "screws-seen":
		return h.leadLook
	case "nut-seen":
		return h.nutLook
	}
	return ""
}

func (h *heater) read(check string) (shown, bool) {
	dc := func(c *circuit, red, black string) (shown, bool) {
		v := c.volts(red, black, h.m.input)
		// A class of meter with a range of 200 mV shows some noise on an open lead.
		return h.m.show(h.rng, v, "mV", "dc"), true
	}
	if h.leadLook != "tight" || h.spliceLook != "tight" {
		h.badTwist = between(h.rng, 0.75, 1.3)
	}
	held := func() func() {
		// The knob is held in: the pilot burns although it would not hold.
		was := h.pilotLit
		h.pilotLit = h.pilotLit || h.pilotLights()
		return func() { h.pilotLit = was }
	}
	switch check {
	case "pile-open":
		defer held()()
		was := h.lifted["pile-a"]
		h.lifted["pile-a"] = true
		defer func() { h.lifted["pile-a"] = was }()
		return dc(h.pile(h.call, false), "pile-a", "pile-b")
	case "pile-closed":
		return dc(h.pile(h.call, h.jumper["valve-bridged"]), "tpth", "tp")
	case "valve-mv", "again-valve":
		return dc(h.pile(h.call, h.jumper["valve-bridged"]), "th", "tp")
	case "valve-bridged":
		return dc(h.pile(h.call, true), "th", "tp")
	case "stat-and-wire":
		return dc(h.pile(h.call, false), "lim", "th")
	case "stat-alone":
		return dc(h.pile(h.call, false), "s1", "s2")
	case "splice-mv":
		return dc(h.pile(h.call, false), "lim", "splice-far")
	case "limit-mv":
		return dc(h.pile(h.call, false), "tpth", "lim")
	case "couple-open":
		defer held()()
		return dc(h.couple(), "tc-tip", "tc-tube")
	case "couple-closed":
		defer held()()
		return dc(h.couple(), "hc", "tc-tube")
	case "spill-mv":
		defer held()()
		return dc(h.couple(), "tcs", "hc")
	case "valve-ohms":
		was := h.lifted["valve-a"]
		h.lifted["valve-a"] = true
		c := h.pile(false, false)
		h.lifted["valve-a"] = was
		return h.m.show(h.rng, c.ohms("th", "tp")+h.m.lead, "ohm", ""), true
	case "limit-ohms":
		return h.m.show(h.rng, h.pile(false, false).ohms("lim-a", "lim")+h.m.lead, "ohm", ""), true
	case "stat-ohms":
		return h.m.show(h.rng, h.pile(true, false).ohms("s1", "s2")+h.m.lead, "ohm", ""), true
	}
	return shown{}, false
}

func (h *heater) plate(id string) (shown, bool) {
	switch id {
	case "input":
		return plain(h.input, 0, "Btu/h"), true
	case "valve-opens":
		return plain(h.plateOpens, 0, "mV"), true
	case "pile-class":
		return plain(750, 0, "mV"), true
	}
	return shown{}, false
}

func (h *heater) repair(id string) {
	fresh := newHeater(rand.New(rand.NewSource(h.rng.Int63())))
	switch id {
	case "open-cock":
		h.cock = 1
	case "turn-knob":
		h.powerOn()
	case "replace-sparker":
		h.spark = true
	case "refit-spark-lead":
		h.lead = true
	case "set-thermocouple":
		h.tcSeat = fresh.tcSeat
	case "replace-thermocouple":
		h.tcEMF, h.tcR = fresh.tcEMF, fresh.tcR
		// Whoever screws in a new one wipes the seat and seats the tip.
		h.nutR, h.nutLook, h.tcSeat = fresh.nutR, "tight", fresh.tcSeat
	case "clean-nut":
		h.nutR, h.nutLook = fresh.nutR, "tight"
	case "set-thermopile":
		h.pileSeat = fresh.pileSeat
	case "replace-thermopile":
		h.pileEMF, h.pileR, h.pileLeadR, h.leadLook = fresh.pileEMF, fresh.pileR, fresh.pileLeadR, "tight"
		h.pileSeat = fresh.pileSeat
	case "refit-pile-lead":
		h.pileLeadR, h.leadLook = fresh.pileLeadR, "tight"
	case "replace-limit":
		h.limitR, h.limitEarly = fresh.limitR, false
	case "clear-air":
		h.airBlocked = false
	case "remake-splice":
		h.spliceR, h.spliceLook = fresh.spliceR, "tight"
	case "replace-thermostat":
		h.statR, h.statLabel = fresh.statR, "right-value"
	case "raise-setpoint":
		h.setpoint, h.call = true, true
	case "replace-wire":
		h.cableR, h.cableThin = fresh.cableR, false
		// New ends are joined bright.
		h.spliceR, h.spliceLook = fresh.spliceR, "tight"
	}
}

func (h *heater) cycle() string {
	if h.wind {
		return "stops-early"
	}
	if !h.pilotLit || !h.valveOpen(false) {
		return "no-start"
	}
	if h.limitOpensHot() || h.flueBlocked {
		return "stops-early"
	}
	return "running"
}

func (h *heater) state() string {
	open := math.NaN()
	if h.pilotLit {
		open = h.valveVolts(h.call, false)
	}
	return fmt.Sprintf("knob %s, pilot lit %t, call %t, valve %.0f mV of %.0f, hold %.1f mV of %.1f", h.knob, h.pilotLit,
		h.call, open, h.valveOpens, h.holdVolts(), h.holdNeeds)
}
