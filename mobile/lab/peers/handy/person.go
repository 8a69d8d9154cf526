package handy

import (
	"fmt"
	"math/rand"
	"strings"
)

// person is a temper: how careful, how honest about not knowing, how willing.
type person struct {
	name    string
	slip    float64 // answers a look wrongly
	safe    float64 // the same on the safety questions
	misread float64 // of a number
	unknown float64 // says don't know
	refuse  float64 // will not take a live reading
	skip    float64 // says it cannot be reached
	words   float64 // answers in own words
	repeat  float64 // asks to hear it again
	why     float64
	wrongPt float64 // puts the tips on the wrong point
	noMeter float64
	fright  bool
	hasty   bool
}

var people = []person{
	{name: "ideal"},
	{name: "homeowner", slip: 0.05, safe: 0.003, misread: 0.03, unknown: 0.05, refuse: 0.15, skip: 0.02, words: 0.25, repeat: 0.02,
		why: 0.02, wrongPt: 0.01, noMeter: 0.1},
	{name: "hasty", slip: 0.10, safe: 0.01, misread: 0.06, unknown: 0.03, refuse: 0.02, skip: 0.05, words: 0.35, wrongPt: 0.06,
		noMeter: 0.1, hasty: true},
	{name: "frightened", slip: 0.03, safe: 0.005, misread: 0.03, unknown: 0.18, refuse: 1, skip: 0.08, words: 0.3, repeat: 0.1,
		why: 0.04, wrongPt: 0.01, noMeter: 0.3, fright: true},
}

// reworded are ten ways to say a usual answer.
var reworded = map[string][]string{
	"none": {"none", "no", "nothing", "no smell at all", "I don't smell anything", "nope", "nothing here", "no odour", "none at all",
		"not that I notice"},
	"quiet": {"quiet", "it's quiet", "they are all quiet", "no alarm", "silent", "not making a sound", "nothing going off", "all quiet",
		"quiet as a mouse", "it is not beeping"},
	"everyone-fine": {"everyone is fine", "we're all fine", "everybody's good", "all fine here", "yes everyone is okay", "fine",
		"we all feel fine", "nobody is ill", "everyone feels okay", "just cold but fine"},
	"clean": {"clean", "looks clean", "it's clean", "nice and clean", "clean enough", "no soot", "it is clean to me", "all clean",
		"clean as far as I see", "spotless"},
	"dry": {"dry", "it's dry", "bone dry", "the floor is dry", "no water", "all dry", "dry as can be", "completely dry", "nothing wet",
		"looks dry"},
	"on": {"on", "it's on", "okay it is on", "switched on", "yes on", "it is on now", "turned on", "on now", "all on", "I put it on"},
	"off": {"off", "it's off", "okay it is off", "switched off", "yes off", "it is off now", "turned off", "off now", "all off",
		"I put it off"},
	"open": {"open", "it's open", "it is open", "wide open", "they're open", "open now", "yes open", "all open", "that is open",
		"looks open"},
	"lit": {"lit", "it's lit", "yes it is burning", "the pilot is lit", "it is lit now", "burning", "it stays lit", "I see a flame",
		"it's burning", "still lit"},
	"out": {"out", "it's out", "it went out", "no flame, it's out", "it is out", "gone out", "out again", "it's dead", "it goes out",
		"the flame went out"},
	"no-flame": {"no flame", "there's no flame", "none", "nothing lights", "no fire at all", "I see no flame", "no flame at all",
		"nothing comes on", "it doesn't light", "not at all"},
	"clear": {"clear", "it's clear", "all clear", "nothing in the way", "looks clear", "they're clear", "free and clear",
		"clear as far as I see", "nothing blocking it", "it is clear"},
	"blocked": {"blocked", "it's blocked", "there's stuff in it", "it is clogged", "all blocked up", "blocked with dust",
		"something is in there", "plugged", "it's stopped up", "totally blocked"},
	"tight": {"tight", "it's tight", "all tight", "nice and tight", "it does not move", "they're tight", "snug", "tight as can be",
		"good and tight", "firm"},
	"loose": {"loose", "it's loose", "it wiggles", "one is loose", "pretty loose", "it moves", "kind of loose", "it came loose", "loose I think",
		"it is not tight"},
	"running": {"running", "it's running", "I hear it running", "it runs", "yes it is going", "it's going", "running fine", "it's on",
		"still running", "it is humming along and running"},
	"silent": {"silent", "it's silent", "nothing", "I hear nothing", "no sound", "dead silent", "it doesn't do anything", "not running",
		"quiet", "there is no noise"},
	"above": {"above", "it's above", "set above the room", "higher than the room", "it is set higher", "above the room", "well above",
		"it's above it", "above now", "up above"},
	"good": {"good", "it's good", "looks good", "fine", "yeah good", "it is fine", "good as new", "all good", "okay", "looks fine"},
	"every-start": {"every time", "at every start", "every single time", "every start", "always", "each time", "it's every time", "all the time",
		"every time it tries", "every one"},
	"some-starts": {"some starts", "sometimes", "only some of the time", "now and then", "some times it works", "on and off", "some days",
		"it comes and goes", "not every time", "some of them"},
	"nothing-done": {"nothing done", "nothing was done", "nobody touched it", "no nothing", "nothing", "nobody did anything", "no work done",
		"nothing at all", "untouched", "it just quit"},
	"ready": {"ready", "I'm ready", "okay ready", "ready now", "yes ready", "all set", "set", "got it ready", "ready here", "go ahead"},
	"flame-stays": {"flame stays", "it stays", "it stays on", "the flame stays", "still burning", "it keeps burning", "stays lit",
		"it's staying", "yes it stays", "burning steady"},
	"heat": {"heat", "it's on heat", "set to heat", "heat mode", "heating", "yes heat", "on heat", "it says heat", "to heat", "heat of course"},
	"parallel": {"along the pipe", "it's along the pipe", "parallel", "in line with the pipe", "same way as the pipe", "along", "lined up with it",
		"it's in line", "along it", "parallel to the pipe"},
	"no":  {"no", "nope", "no I'm not", "not me", "no way", "I am not", "nah", "no sir", "no ma'am", "negative"},
	"yes": {"yes", "yeah", "yep", "sure", "yes it is", "uh huh", "yes please", "right", "that's right", "correct"},
	"dont-know": {"I don't know", "don't know", "no idea", "I can't tell", "not sure", "I couldn't say", "hard to say", "beats me",
		"I don't know that", "I'm not sure"},
}

// actWords answer a step that asks for a thing done.
var actWords = map[string][]string{
	"on":        {"on", "it's on", "okay on", "on now", "yes it is on", "that's on", "both on", "okay it's on", "it is on now", "turned on"},
	"off":       {"off", "it's off", "okay off", "off now", "yes it is off", "that's off", "both off", "okay it's off", "it is off now", "turned off"},
	"panel-off": {"panel off", "it's off", "off", "took it off", "the panel is off", "okay it's off", "cover's off", "got it off", "it came off", "off now"},
	"panel-on":  {"panel on", "it's on", "on", "put it back", "the panel is on", "back on", "cover's on", "it's back on", "closed", "on again"},
	"in":        {"in", "it's in", "jumper in", "okay in", "clipped on", "it is in", "jumper's in", "in place", "in now", "that's in"},
	"out":       {"out", "it's out", "jumper out", "okay out", "took it out", "it is out", "jumper's out", "out now", "pulled it", "that's out"},
	"calling":   {"calling", "it's calling", "okay calling", "set to heat", "turned up", "it is up", "up all the way", "heat is on", "calling now", "yes calling"},
	"not-calling": {"not calling", "it's down", "turned down", "okay not calling", "down now", "it's not calling", "not calling now", "all the way down",
		"it stopped calling", "off"},
	"done":  {"done", "okay done", "all done", "that's done", "finished", "did it", "yes done", "done now", "it's done", "there"},
	"ready": {"ready", "I'm ready", "okay ready", "ready now", "yes ready", "all set", "set", "got it ready", "ready here", "go ahead"},
}

var digitWord = strings.Split("zero one two three four five six seven eight nine", " ")

// spoken spells a display digit by digit or as read aloud.
func spoken(number string) string {
	var out []string
	for _, r := range number {
		switch {
		case r == '-':
			out = append(out, "minus")
		case r == '.':
			out = append(out, "point")
		case r >= '0' && r <= '9':
			out = append(out, digitWord[r-'0'])
		}
	}
	return strings.Join(out, " ")
}

var unitWord = map[string]string{"mV": "millivolts", "V": "volts", "ohm": "ohms", "kohm": "kilo ohms", "Mohm": "mega ohms", "uF": "microfarads",
	"uA": "microamps", "A": "amps", "Btu/h": "B T U per hour", "inH2O": "inches", "dF": "degrees", "ppm": "parts per million"}

// wrongNumber is a misreading: a digit wrong, two digits changed places, or the point one place off.
func wrongNumber(rng *rand.Rand, s shown) shown {
	switch rng.Intn(3) {
	case 0:
		s.mant += int64(rng.Intn(9)+1) * tens(rng.Intn(3))
	case 1:
		s.exp++
	default:
		d := []byte(fmt.Sprint(s.mant))
		if len(d) > 2 {
			d[len(d)-1], d[len(d)-2] = d[len(d)-2], d[len(d)-1]
			fmt.Sscan(string(d), &s.mant)
		}
	}
	places := max(0, -s.exp)
	v := float64(s.mant)
	for range places {
		v /= 10
	}
	for range max(0, s.exp) {
		v *= 10
	}
	s.number = fmt.Sprintf("%.*f", places, v)
	return s
}

func tens(n int) int64 {
	v := int64(1)
	for range n {
		v *= 10
	}
	return v
}
