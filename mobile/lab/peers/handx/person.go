package handx

import (
	"fmt"
	"math"
	"math/rand"
	"strconv"
	"strings"
)

// person is one kind of people with chances, each from 0 to 1, of what people do wrong. The homeowner's numbers are the
// task's; the others are this hand's taste.
type person struct {
	name       string
	slip       float64 // gives a wrong answer to something seen
	misread    float64 // reads a number wrong
	dontKnow   float64
	refuseLive float64 // refuses a reading with the power on
	wrongPoint float64
	freeWords  float64 // answers in words of his own
	why        float64 // asks why, or asks to repeat
	cantReach  float64 // will not go outside, on a ladder, into the pan
	vague      float64 // says "yeah" or "fine" to whatever was asked
	noMeter    float64
}

var people = []person{
	// The retired machinist: careful, owns a good meter, answers from the list.
	{name: "ideal"},
	{name: "homeowner", slip: 0.05, misread: 0.03, dontKnow: 0.05, refuseLive: 0.08, freeWords: 0.3, why: 0.03,
		cantReach: 0.05, noMeter: 0.05},
	{name: "hasty", slip: 0.10, misread: 0.05, dontKnow: 0.03, wrongPoint: 0.05, freeWords: 0.3, vague: 0.06,
		cantReach: 0.08},
	{name: "frightened", slip: 0.04, misread: 0.02, dontKnow: 0.15, refuseLive: 1, freeWords: 0.2, why: 0.10,
		cantReach: 0.12, noMeter: 0.2},
}

func personByName(name string) (person, bool) {
	for _, p := range people {
		if p.name == name {
			return p, true
		}
	}
	return person{}, false
}

// meter is one of three classes of multimeter.
type meter struct {
	kind   string // answer to the question for the meter
	counts float64
	share  float64 // error as a share of the reading
	digits int     // error in last digits
	zin    float64 // ohms on volts
	leads  float64 // ohms of both leads
	top    float64 // highest resistance it shows
	gain   float64 // this meter's own error
	cap    bool    // measures capacitance
	amps   bool    // has a clamp and microamps
}

func newMeter(rng *rand.Rand, p person) meter {
	n := rng.Intn(3)
	if p.name == "ideal" {
		n = 1 + rng.Intn(2)
	}
	m := []meter{
		{kind: "plain-meter", counts: 2000, share: 0.012, digits: 4, zin: 1e6, top: 2e6},
		{kind: "true-rms", counts: 6000, share: 0.010, digits: 3, zin: 10e6, top: 60e6, cap: true, amps: true},
		{kind: "true-rms", counts: 20000, share: 0.004, digits: 2, zin: 11e6, top: 100e6, cap: true, amps: true},
	}[n]
	m.leads = between(rng, 0.1, 0.5)
	m.gain = 1 + m.share*(2*rng.Float64()-1)
	return m
}

// shown is a number on the meter's display: m times ten to the e, in a unit.
type shown struct {
	m    int64
	e    int
	unit string
	over bool
}

func (s shown) value() float64 { return float64(s.m) * pow10(float64(s.e)) }

func (s shown) text() string {
	if s.e >= 0 {
		return strconv.FormatInt(s.m*int64(math.Round(pow10(float64(s.e)))), 10)
	}
	return strconv.FormatFloat(s.value(), 'f', -s.e, 64)
}

// display puts a true value on the display of this meter: its range, its error, its last digit.
func (m meter) display(rng *rand.Rand, v float64, unit string) shown {
	sign := 1.0
	if v < 0 {
		sign, v = -1, -v
	}
	if unit == "ohm" {
		v += m.leads
		if v > m.top {
			return shown{over: true}
		}
	}
	v *= m.gain
	out := unit
	if unit == "ohm" && v >= 1e6 {
		v, out = v/1e6, "Mohm"
	} else if unit == "ohm" && v >= m.counts/10 && v >= 1e3 {
		v, out = v/1e3, "kohm"
	}
	e := 0
	switch {
	case unit == "inH2O":
		e = -2
	case unit == "dF" || unit == "ppm":
		e = 0
	case unit == "uA" || unit == "uF" || unit == "A":
		e = -1
		if v < 10 {
			e = -2
		}
	default:
		// The range: the largest that holds the value, one decimal at the least below the count.
		e = -1
		for pow10(float64(-e))*v < m.counts/10 && e > -3 && v > 0 && unit != "V" {
			e--
		}
		if v*pow10(float64(-e)) > m.counts {
			e++
		}
	}
	step := pow10(float64(e))
	n := math.Round(v/step + float64(m.digits)*0.4*(2*rng.Float64()-1)*boolTo(v > 0.5))
	if n < 0 {
		n = 0
	}
	return shown{m: int64(sign * n), e: e, unit: out}
}

func boolTo(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// misread is how a person gets a number wrong: two digits swapped, or the point in the wrong place.
func misread(rng *rand.Rand, s shown) shown {
	if s.over {
		return s
	}
	if rng.Float64() < 0.4 {
		s.e++
		return s
	}
	d := []byte(strconv.FormatInt(s.m, 10))
	if len(d) > 2 {
		i := len(d) - 2
		d[i], d[i+1] = d[i+1], d[i]
	} else {
		d[len(d)-1] = byte('0' + rng.Intn(10))
	}
	if n, err := strconv.ParseInt(string(d), 10, 64); err == nil {
		s.m = n
	}
	return s
}

var smallNumbers = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
	"eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}
var tens = []string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}

func wholeInWords(n int64) string {
	switch {
	case n < 20:
		return smallNumbers[n]
	case n < 100:
		if n%10 == 0 {
			return tens[n/10]
		}
		return tens[n/10] + " " + smallNumbers[n%10]
	case n < 1000:
		if n%100 == 0 {
			return smallNumbers[n/100] + " hundred"
		}
		return smallNumbers[n/100] + " hundred " + wholeInWords(n%100)
	}
	if n%1000 == 0 {
		return wholeInWords(n/1000) + " thousand"
	}
	return wholeInWords(n/1000) + " thousand " + wholeInWords(n%1000)
}

var unitWords = map[string][]string{"V": {"volts", "volts AC"}, "mV": {"millivolts"}, "ohm": {"ohms", "ohm"},
	"kohm": {"kilohms", "k ohms"}, "Mohm": {"megohms"}, "uF": {"microfarads"}, "A": {"amps"}, "uA": {"microamps"},
	"inH2O": {"inches", "inches of water"}, "dF": {"degrees",
		"degrees Fahrenheit"}, "ppm": {"parts per million", "p p m"}}

// inWords says a number as people say it to a phone.
func inWords(rng *rand.Rand, s shown) string {
	if s.over {
		return pickOne(rng, "it says O L", "over limit", "O L", "the meter shows O L, no number", "overload")
	}
	t := s.text()
	neg := strings.HasPrefix(t, "-")
	t = strings.TrimPrefix(t, "-")
	whole, part, dot := strings.Cut(t, ".")
	n, _ := strconv.ParseInt(whole, 10, 64)
	w := wholeInWords(n)
	if dot {
		w += " point"
		for _, d := range part {
			w += " " + smallNumbers[d-'0']
		}
	}
	if neg {
		w = "minus " + w
	}
	if u := unitWords[s.unit]; len(u) > 0 {
		w += " " + pickOne(rng, u...)
	}
	return pickOne(rng, "", "", "it's ", "I get ", "reads ", "about ") + w
}

func pickOne(rng *rand.Rand, s ...string) string { return s[rng.Intn(len(s))] }

// words are this hand's ways to say the usual answers, none of them taken from the program.
var words = map[string][]string{
	"none": {"nope, nothing", "no smell", "can't smell anything", "smells normal to me", "no gas", "nothing at all",
		"I don't smell a thing", "no odor", "none that I notice", "all clear"},
	"quiet": {"no alarms", "they're quiet", "nothing's beeping", "all quiet", "it's silent, no alarm",
		"no alarm going off",
		"not a peep", "quiet as a mouse", "nothing sounding", "the alarms are quiet"},
	"everyone-fine": {"we're all fine", "everybody's okay", "everyone's fine", "yes we're fine", "all good here",
		"nobody's sick", "we feel fine", "fine, all of us", "no one is ill", "everyone is okay"},
	"dry": {"it's dry", "bone dry", "no water", "dry as far as I see", "the floor is dry", "looks dry", "dry",
		"no wet spots", "all dry", "it's nice and dry"},
	"clean": {"looks clean", "it's clean", "clean as a whistle", "nothing on it", "clean", "no marks", "pretty clean",
		"no dirt there", "it looks fine, clean", "clean enough"},
	"off": {"it's off", "they're both off", "okay, off", "switched off", "off now", "I turned it off", "turned off",
		"power's off", "off", "everything off"},
	"on": {"it's on", "on", "yeah it's on", "they're on", "switched on", "it is on", "okay it's on now", "turned on",
		"they are both on", "on, yes"},
	"silent": {"I hear nothing", "it's silent", "nothing's running", "dead quiet", "no sound", "not running",
		"it's quiet", "doesn't make a sound", "silence", "no, it's not running"},
	"running": {"it's running", "yes it runs", "I hear it running", "running", "it's going", "it spins",
		"yep it's on and running",
		"it's humming along fine, running", "the fan is running", "it came on"},
	"humming": {"it just hums", "it's humming", "it hums but doesn't turn", "a hum", "humming only",
		"buzzing, not turning",
		"it makes a humming noise", "it hums", "humming", "only a hum"},
	"no-flame": {"no flame", "there's no flame", "I don't see any fire", "nothing lights", "no fire", "none",
		"it never lit", "dark, no flame", "no flame at all", "I see no flame"},
	"no-glow": {"no glow", "it doesn't glow", "it stays dark", "nothing glows", "dark", "not glowing",
		"no it never glows",
		"no glow at all", "I see no glow", "it's dark in there"},
	"glowing": {"it glows bright", "glowing orange", "it's bright", "bright orange", "yes it glows", "it's glowing",
		"really bright", "it lights up bright", "bright glow", "glowing"},
	"good": {"looks good", "it's fine", "good", "seems good", "they look good", "good shape", "all good",
		"nothing wrong with it", "looks okay", "it's in good shape"},
	"tight": {"it's tight", "tight", "they're tight", "nice and tight", "feels tight", "all tight",
		"doesn't move, tight",
		"solid", "snug", "tight as can be"},
	"loose": {"it's loose", "one is loose", "loose", "it wiggles", "kind of loose", "one came out", "it's not tight",
		"comes right off", "yeah that's loose", "loose connection"},
	"clear": {"it's clear", "clear", "nothing in it", "all clear", "not blocked", "looks clear", "wide open, clear",
		"it is clear", "no blockage", "clear as day"},
	"blocked": {"it's blocked", "blocked", "plugged up", "it's clogged", "full of gunk, blocked",
		"something's in there",
		"yes it's blocked", "stuffed up", "totally blocked", "clogged"},
	"every-start": {"every time", "each time", "always", "every single start", "it never works", "at every start",
		"all the time", "every time it tries", "each start", "always does it"},
	"suddenly": {"it was sudden", "just stopped last night", "all of a sudden", "suddenly", "out of the blue",
		"from one day to the next", "it just quit", "overnight", "yesterday, suddenly", "sudden"},
	"nothing-done": {"nothing was done", "nobody touched it", "no work, no storm", "nothing", "nothing happened",
		"no, nothing done", "nothing that I know of", "no changes", "nobody worked on it", "nothing at all"},
	"done": {"done", "okay done", "did it", "that's done", "all done", "finished", "yep, done",
		"it's done", "ok I did that",
		"got it, done"},
	"ready": {"ready", "okay ready", "I'm ready", "all set", "ready when you are", "ok ready", "set",
		"yes ready", "ready now",
		"good to go"},
	"heat": {"it's on heat", "heat", "set to heat", "heating", "it says heat", "on heat", "heat mode",
		"it's set for heat",
		"heat, yes", "the heat setting"},
	"lit": {"it's lit", "the screen is on", "I can read it", "lit up", "it shows numbers", "it's on",
		"lit", "screen works",
		"display is fine, lit", "yes lit"},
	"above": {"above", "it's above", "set higher than the room", "higher", "above the room", "yes above",
		"well above",
		"it is above", "set above it", "above by a few degrees"},
	"right-place": {"right where it should be", "it's in the right place", "right place", "looks right", "it's right",
		"in the right spot", "correct place", "where it belongs", "yes right place", "it's in place"},
	"panel-off": {"panel's off", "okay it's off", "I took it off", "panel off", "cover is off",
		"it's open", "off it comes",
		"got the panel off", "it's off now", "panel is off"},
	"panel-on": {"panel's back on", "it's on", "panel on", "put it back", "cover is on", "closed it up", "back on",
		"it's back on now", "panel is on", "on again"},
	"calling": {"it's calling", "calling", "turned it up, calling", "it says heat on", "okay, calling for heat",
		"it clicked, it's calling", "calling now", "it's calling for heat", "yes calling", "set it way up"},
	"not-calling": {"not calling", "turned it down", "it's not calling now", "okay not calling", "it stopped calling",
		"no call", "turned down, not calling", "it quit calling", "not calling anymore", "down, not calling"},
	"no-start": {"it does nothing", "nothing happens at all", "dead as a doornail", "it does nothing at all",
		"won't start", "doesn't start", "no start", "it never starts", "nothing", "it just sits there"},
	"runs-no-heat": {"it runs but no heat", "the fan runs with no heat", "runs without heat", "no heat but it runs",
		"I hear it running, no heat", "runs cold", "it runs, no heat comes", "runs, but stays cold",
		"running with no heat",
		"it runs without heat"},
	"stops-early": {"it starts and then quits", "stops early", "it shuts off too soon",
		"starts then stops", "it quits early",
		"comes on and goes off", "it stops after a bit", "lights and goes out", "it stops early",
		"it starts, then stops"},
	"no-click": {"no click", "I hear no click", "didn't click", "nothing clicked", "no",
		"no click that I heard", "none"},
	"clicks": {"it clicks", "I heard a click", "yes a click", "click", "it clicked",
		"a clear click", "one click"},
	"flame-stays": {"it stays lit", "the flame stays", "still burning", "stays on", "keeps burning", "it stays"},
	"short-flame": {"it goes out", "flame goes out", "it went out", "lights then goes out", "it died",
		"goes right out"},
	"same":       {"same", "it's the same", "yes the same", "the same", "no difference", "same as you said"},
	"go-live":    {"go live", "okay go live", "go live then", "yes go live", "let's go live"},
	"warm-air":   {"warm", "it's warm", "warm air", "nice and warm", "feels warm", "warm air comes out"},
	"no-air":     {"no air", "nothing comes out", "none", "no air at all", "there's no air"},
	"weak-air":   {"it's weak", "weak", "barely any air", "a weak breeze", "not much air, weak"},
	"strong-air": {"strong", "it blows strong", "strong air", "good strong air", "plenty of air, strong"},
	"cool-air":   {"cool", "it's cool", "cool air", "not warm, cool", "it feels cool"},
	"dirty":      {"it's dirty", "dirty", "really dirty", "filthy", "full of dust, dirty", "pretty dirty"},
	"closed":     {"they're closed", "closed", "all shut", "they are closed", "shut"},
	"open":       {"they're open", "open", "all open", "wide open", "they are open"},
	"parallel": {"along the pipe", "in line with the pipe", "it's along the pipe", "parallel",
		"lines up with the pipe"},
	"crosswise":    {"across the pipe", "crosswise", "it's across", "sideways to the pipe, across", "across"},
	"free":         {"it turns free", "free", "spins freely", "turns easy, free", "moves free"},
	"wet":          {"it's wet", "wet", "there's water", "yes wet", "a bit wet", "soaked, wet"},
	"other-way":    {"the other way please", "other way", "I'd rather go the other way", "no, other way"},
	"no":           {"no", "nope", "no I'm not", "not me", "no, I'm not licensed"},
	"rated":        {"rated", "it's rated", "yes, rated", "it says cat three, rated"},
	"blown":        {"it's blown", "blown", "burned through, blown", "the strip is broken, blown"},
	"burnt":        {"it's burnt", "burnt", "looks burnt", "black and burnt"},
	"cracked":      {"it's cracked", "cracked", "there's a crack", "has a crack in it"},
	"wrong-place":  {"wrong place", "it's in the wrong place", "not where it should be, wrong place"},
	"all-burners":  {"all of them", "all burners light", "they all light", "all burners", "every one"},
	"some-burners": {"only some", "some burners", "just some of them light", "only a couple"},
	"whoosh":       {"soft", "it lights softly", "a soft whoosh", "smooth", "nice and soft"},
	"bang":         {"with a thump", "a thump", "it goes boom, a thump", "it bangs"},
	"blue-flame":   {"blue", "it's blue", "blue flame", "nice and blue", "a blue flame"},
	"yellow-flame": {"yellow", "it's yellow", "yellow flame", "kind of yellow"},
	"flame-still":  {"stays still", "it's still", "flame still", "doesn't move", "steady, still"},
	"slow-blink":   {"slow blink", "it blinks slowly", "blinking slowly", "slow flashing", "slowly blinking"},
	"steady":       {"steady", "it's steady", "on steady", "steady light", "solid, steady"},
	"tripped":      {"it's tripped", "tripped", "the breaker tripped", "it's in the middle, tripped"},
	"gradually":    {"gradually", "little by little", "slowly over weeks", "it got worse gradually"},
	"some-starts":  {"only sometimes", "some starts", "now and then", "not every time, some starts"},
	"cold":         {"still cold", "it's cold", "cold", "freezing", "cold as before"},
	"warm":         {"getting warm", "it's warm", "warming up", "slowly getting warm"},
	"popped":       {"one is popped", "popped", "it popped out", "a button is popped out"},
	"not-popped":   {"flush", "they're flush", "both flush", "not popped"},
	"bypassed":     {"there's a jumper", "bypassed", "one has a wire across it, bypassed"},
	"blank":        {"it's blank", "blank", "the screen is blank", "nothing on the screen, blank"},
	"below":        {"below", "it's below", "set lower than the room", "lower, below"},
	"split":        {"it's split", "split", "there's a split in it", "cracked open, split"},
	"off-port":     {"it's off its port", "off the port", "it came off", "hanging loose, off its port"},
	"sounding": {"it's sounding", "the alarm is going off", "yes it's sounding",
		"alarm's beeping like crazy, sounding"},
	"feeling-ill":   {"my wife has a headache, feels ill", "somebody feels ill", "I feel sick", "one of us is ill"},
	"some":          {"I smell gas", "there's a gas smell", "yes, a gas odor", "smells like gas"},
	"grinding":      {"it grinds", "grinding", "makes a grinding noise"},
	"not-running":   {"it's stuck", "stuck", "won't turn, stuck"},
	"weak-glow":     {"it glows weak", "weak", "a weak glow", "only dull red, weak"},
	"hold":          {"on hold", "hold", "it says hold"},
	"schedule":      {"on a schedule", "schedule", "it runs a schedule"},
	"after-work":    {"after work on it", "after some work"},
	"no-meter":      {"I don't have a meter", "no meter", "no I have no meter"},
	"true-rms":      {"it says true RMS", "true RMS"},
	"plain-meter":   {"a plain one", "plain meter", "just a plain cheap meter"},
	"says-no-flame": {"it says no flame sensed", "no flame sensed"},
	"says-limit":    {"limit open", "it says limit switch open", "says limit open"},
}

var dontKnowWords = []string{"I don't know", "no idea", "can't tell", "not sure", "beats me", "I really don't know",
	"hard to say", "I couldn't tell you", "don't know", "no clue"}

// story is the one sentence at the beginning.
func story(rng *rand.Rand, complaint string) string {
	what := map[string][]string{
		"no-start": {"it does nothing at all when I turn the heat up", "the furnace is dead, nothing comes on",
			"no heat, it won't even start"},
		"runs-no-heat": {"it hums and something runs but it never gets warm", "I hear a fan but there's no heat",
			"it runs and blows but no heat"},
		"stops-early": {"it lights and then shuts off after a little while", "it starts up and quits again",
			"the burners come on and go out"},
		"not-enough": {"the house just doesn't get warm enough", "it heats a little but not enough",
			"it can't keep up"},
		"never-stops": {"it keeps on burning and never stops", "it won't shut off"},
	}[complaint]
	when := []string{"since last night", "since yesterday", "since this morning", "for about a week", "for two days now"}
	return fmt.Sprintf("%s %s", pickOne(rng, what...), pickOne(rng, when...))
}
