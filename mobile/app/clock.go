package app

import (
	"time"

	"readback/core/protocol"
)

// clockState keeps the job's time going at its own pace when somebody sets the computer's clock: it never goes back, and what it is set
// on, as after a sleep, counts as passed.
type clockState struct {
	at   int64         // the last time given, ms
	wall int64         // what the wall clock showed then, ms
	mono time.Duration // and the steady one
}

// jumpNoted is from where on a setting of the clock is noted in the record, ms. Judgment, no source: network time moves a clock by less.
const jumpNoted = 30_000

// peekLocked is the job's time.
func (h *Hub) peekLocked() int64 {
	wall := h.cfg.Now()
	if h.cfg.Elapsed == nil || h.clock.at == 0 {
		return max(wall, h.clock.at)
	}
	return max(wall, h.clock.at+(h.cfg.Elapsed()-h.clock.mono).Milliseconds())
}

// nowLocked is the job's time; a clock that was set since the last event is noted in the job.
func (h *Hub) nowLocked() int64 {
	if h.cfg.Elapsed == nil {
		return h.cfg.Now()
	}
	at, was := h.peekLocked(), h.clock
	h.clock = clockState{at, h.cfg.Now(), h.cfg.Elapsed()}
	jump := h.clock.wall - was.wall - (h.clock.mono - was.mono).Milliseconds()
	if was.wall != 0 && (jump > jumpNoted || jump < -jumpNoted) && h.job != nil && h.job.seq > 0 {
		way := "app.clock-on"
		if jump < 0 {
			way = "app.clock-back"
		}
		d := protocol.Device{Kind: "clock", Level: float64(jump) / 1000,
			Text: h.words.Term(way, "by", (time.Duration(max(jump, -jump)) * time.Millisecond).Round(time.Second).String())}
		h.tell(d.Text + " " + h.words.Term("app.clock-record"))
		_ = h.stepLocked(protocol.Event{Type: protocol.EvDevice, Device: &d}) // told by step itself
	}
	return h.clock.at
}

// resumeClockLocked holds the time of a job that goes on behind its last event.
func (h *Hub) resumeClockLocked(last int64) {
	if h.cfg.Elapsed != nil {
		h.clock = clockState{at: max(last, h.cfg.Now()), wall: h.cfg.Now(), mono: h.cfg.Elapsed()}
	}
}
