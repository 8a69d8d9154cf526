package plan

import "readback/core/measure"

// Way is one way of getting an answer from where it shows into the record: by voice, by touch, by the camera.
type Way struct {
	ID      string  // voice, touch, camera
	Seconds float64 // handling for one answer
	Setup   float64 // seconds once, shared by the answers it will serve
	Wrong   float64 // chance that the record holds another answer than what showed
	Silent  float64 // chance that nothing comes of it and the next best way is taken
}

// Sense is what the ways of answering a step depend on.
type Sense struct {
	What   string  // meter, lamp, fire, plate
	Hands  int     // hands that hold a lead
	Voice  bool    // the guide listens
	Noise  float64 // dB of speech over noise, 0 when not known
	Misses int     // sayings not understood in this step
}

// Shares of wrong and missing answers of the camera, measured by core/camera on drawn pictures of the medium grade. Of 400
// displays voted over eight pictures 387 were right, none wrong, and of 13 nothing was told (rows eye.meter_vote_pct and
// eye.meter_vote_wrong_pct): none is planned as one. Of 1,000 counted lights none was wrong (eye.blink6_pct, eye.blink_hand_pct), and of
// 1,065 looks at a burner (eye.glow_pct); real ones are harder. Half of the plates have no code that can be read: common practice, no source.
// Seconds, set-ups and what else stands below are judgement.
var (
	seenMeter = Way{ID: "camera", Seconds: 3, Setup: 20, Wrong: unnoticed / 400, Silent: 13.0 / 400}
	seenLamp  = Way{ID: "camera", Seconds: 10, Setup: 5, Wrong: 0.005, Silent: 0.1}
	seenFire  = Way{ID: "camera", Seconds: 8, Setup: 20, Wrong: 0.005, Silent: 0.3}
	seenPlate = Way{ID: "camera", Seconds: 6, Setup: 5, Wrong: 0.001, Silent: 0.5}
)

// unnoticed is the share of wrong numbers that stay wrong although the guide says each before it is taken, to somebody who looks at the
// display: judgement.
const unnoticed = 0.2

const (
	served   = 5.0  // answers a set-up serves, judgement
	slipCost = 15.0 // minutes that a wrong answer costs: about three checks with what they need, judgement
)

// Ways lists how a step can be answered. Seconds are judgement, from saying, hearing back and tapping through the steps aloud.
func Ways(s Sense) []Way {
	noisy := s.Noise != 0 && s.Noise < 10
	voice := Way{ID: "voice", Seconds: 4, Wrong: measure.Usual.Ear}
	touch := Way{ID: "touch", Seconds: 5 + 6*float64(s.Hands), Wrong: unnoticed * 0.01} // one of a hundred typed numbers is wrong: from memory
	seen := seenMeter
	switch s.What {
	case "lamp": // counted by the eye, however it is told
		const miscount = 0.04 // a clear look, see measure.LookParts
		voice.Seconds, touch.Seconds = 10, 12
		voice.Wrong, touch.Wrong = miscount, miscount
		seen = seenLamp
	case "fire": // watched by the eye, however it is told
		const misseen = 0.04 // a clear look, see measure.LookParts
		voice.Seconds, touch.Seconds = 8, 10
		voice.Wrong, touch.Wrong = misseen, misseen
		seen = seenFire
	case "plate":
		voice.Seconds, touch.Seconds = 20, 25 // in groups of three, each read back
		voice.Wrong = 2 * measure.Usual.Ear
		seen = seenPlate
	}
	if noisy { // every value is confirmed
		voice.Seconds, voice.Wrong = voice.Seconds+4, 2*voice.Wrong
	}
	voice.Silent = min(0.9, 0.05+0.3*float64(s.Misses))
	if !s.Voice {
		return []Way{touch, seen}
	}
	return []Way{voice, touch, seen}
}

// Best is the way with the least expected cost: its handling, its wrong answers, and what follows when it stays silent.
func Best(ways []Way, w Weights) (best Way, cost float64) {
	price := func(x Way) float64 {
		return w.Minute * ((x.Seconds+x.Setup/served)/60 + x.Wrong*slipCost)
	}
	for i, x := range ways {
		c := price(x)
		if x.Silent > 0 { // then the cheapest of the others
			next := -1.0
			for k, y := range ways {
				if p := price(y); k != i && (next < 0 || p < next) {
					next = p
				}
			}
			c += x.Silent * max(next, 0)
		}
		if i == 0 || c < cost {
			best, cost = x, c
		}
	}
	return best, cost
}
