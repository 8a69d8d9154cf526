package safety

import "math/rand/v2"

// house is the supply as it really is, whatever anybody believes of it.
type house struct {
	welded   bool // switching off does nothing: a welded switch, a second feed, a wrong line
	wrong    int  // so many times the wrong breaker is switched off first
	offs     int  // how often somebody has switched off since it was on
	dead     bool // the outlet that is to be the live point has no power the first time
	tries    int  // readings of the live point so far
	meterEnd int  // the meter dies after so many readings, 0 for never
	readings int
	on       bool
}

func newHouse(r *rand.Rand) *house {
	h := &house{on: r.IntN(4) > 0}
	switch r.IntN(8) {
	case 0:
		h.welded = true
	case 1:
		h.wrong = 1
	case 2:
		h.dead = true
	case 3:
		h.meterEnd = 1 + r.IntN(12)
	}
	return h
}

// live tells whether there is house voltage at the appliance.
func (h *house) live() bool { return h.welded || h.on }

func (h *house) switchOff() {
	if h.offs++; h.offs > h.wrong {
		h.on = false
	}
}

func (h *house) switchOn() { h.on, h.offs = true, 0 }

// read is what the meter shows at a reading of the proof of dead, in volts.
func (h *house) read(act string) string {
	h.readings++
	if h.meterEnd > 0 && h.readings > h.meterEnd {
		return "0.0"
	}
	switch act {
	case "prove-live", "prove-again":
		if h.tries++; h.dead && h.tries == 1 {
			return "0.0"
		}
		return "120.4"
	case "prove-neutral-ground":
		return "0.0"
	}
	if h.live() {
		return "119.2"
	}
	return "0.0"
}
