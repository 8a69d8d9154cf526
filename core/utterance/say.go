package utterance

import "readback/core/measure"

// Say is a reading in words, as it is read back: "twenty-six point one volts A C", "O L, over limit", "jumping between
// one and four micro amps". With digits, a risky number is repeated digit by digit: "fifteen, one five, volts".
func Say(r measure.Reading, digits bool) string {
	kind := map[string]string{"ac": " A C", "dc": " D C"}[r.AC]
	switch r.State {
	case measure.Over:
		return "O L, over limit"
	case measure.Beep:
		return "it beeps"
	case measure.Silent:
		return "no beep"
	case measure.Blank:
		return "the display is blank"
	case measure.Dead:
		return "dead, without a number"
	case measure.Jumping:
		if r.Low == nil || r.High == nil {
			return "jumping"
		}
		return "jumping between " + r.Low.Dec.Words() + " and " + r.High.Words() + kind
	}
	if digits {
		return r.Value.Spoken() + kind
	}
	return r.Value.Words() + kind
}
