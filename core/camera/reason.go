package camera

// says is what is spoken for each reason: what is wrong and what to do about it.
var says = map[Reason]string{
	NoDisplay:    "I can't find the meter's display. Point the phone at it from closer, with the number level.",
	Faint:        "The display is too faint. Switch on its light, or turn the phone a little.",
	Blurred:      "The picture is blurred. Hold the phone still, about a hand's length away.",
	Glare:        "There is glare on the display. Tilt the phone or the meter a little.",
	Changing:     "The number is still changing. I'll look again.",
	Unclear:      "I can't read the display for sure. Please say the number.",
	cutOff:       "Part of the number is outside the picture. Move the phone until all of it is in the frame.",
	loneOne:      "I see a single one. That can be a one or over range. Please say which.",
	SignUnsure:   "I'm not sure of the minus sign. Please say the number, with minus or without.",
	EndUnsure:    "I'm not sure that I see every digit. Please say the whole number.",
	Likely:       "I'm fairly sure of the number, but not sure enough. Is it right?",
	pointUnsure:  "I'm not sure of the decimal point. Move the phone closer, or say the number with its point.",
	Covered:      "Something covers part of the number. Wipe the glass, or take your hand or its shadow away.",
	twoRows:      "I see two numbers. Tap the one you mean, or move closer to it.",
	TooShort:     "I haven't watched it long enough. Keep the phone on the light.",
	noPause:      "I can't find the pause between the flashes. Keep the phone on the light, or count them yourself.",
	Disagree:     "I counted different numbers. I'll count again.",
	Chopped:      "The light flickers with the mains and my shutter is too fast for it. Use a longer exposure, or count the flashes yourself.",
	weakLight:    "The light is too weak to count. Go closer, or shade it with your hand.",
	noLight:      "I see no blinking light. Point the phone at it.",
	ShortExposed: "It looks dark, but my shutter is too fast to be sure. Use a longer exposure.",
	mainsFlicker: "The room light flickers too much for me to judge. Look with your own eyes.",
	Moved:        "The picture moved or the room light changed. Hold the phone still.",
}

// Say is the reason in words that can be spoken; empty for no reason.
func (r Reason) Say() string {
	if r == "" {
		return ""
	}
	if s, ok := says[r]; ok {
		return s
	}
	return "I can't tell from the picture."
}

// Reasons lists every reason that has words, for tests and for recording voices.
func Reasons() []Reason {
	return []Reason{NoDisplay, Faint, Blurred, Glare, Changing, Unclear, cutOff, loneOne, SignUnsure, EndUnsure, Likely, pointUnsure, Covered, twoRows, TooShort, noPause, Disagree, Chopped, weakLight, noLight, ShortExposed, mainsFlicker, Moved}
}
