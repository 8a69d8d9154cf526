package hearbench

import (
	"hash/fnv"
	"math/rand/v2"
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
)

// Item is one phrase with what it means.
type Item struct {
	Say   string
	Value unit.Value    // a reading
	State measure.State // or a display state
	Class string        // or an emergency class; "" for none
}

// Held tells whether a phrase belongs to the half that is reported; the other half is for tuning.
func (it Item) Held() bool {
	h := fnv.New32a()
	h.Write([]byte(it.Say))
	return h.Sum32()&1 == 1
}

// Right tells whether a meaning is the item's.
func (it Item) Right(m *utterance.Meaning) bool {
	if m == nil || m.Kind != utterance.Reading || m.Reading.State != it.State {
		return false
	}
	if it.State != measure.Number {
		return true
	}
	v := m.Reading.Value
	return v.Dec.Equal(it.Value.Dec) && (v.Unit == it.Value.Unit || v.Unit == "" && slices.Contains(m.Units, it.Value.Unit))
}

// shapes are what a meter shows at a furnace. This list is the bench's own, apart from the one the recogniser is trained with.
var shapes = []struct {
	unit, say string
	lo, hi    int64
	dec       int
}{
	{"V", "volts", 2200, 2850, 2}, {"V", "volts a c", 225, 289, 1}, {"V", "volts", 105, 131, 0}, {"V", "volts", 0, 99, 1}, {"V", "volts a c", 1050, 1310, 1},
	{"V", "volts d c", 0, 160, 1}, {"V", "volts", 190, 256, 0}, {"mV", "milli volts", 5, 780, 0}, {"mV", "milli volts", 50, 350, 1}, {"A", "amps", 10, 1400, 2},
	{"A", "amps", 3, 150, 1}, {"uA", "micro amps", 2, 99, 1}, {"uA", "micro amps d c", 20, 900, 2}, {"mA", "milli amps", 40, 300, 1}, {"ohm", "ohms", 2, 999, 1},
	{"ohm", "ohms", 10, 300, 0}, {"ohm", "ohms", 1000, 2400, 0}, {"kohm", "kilo ohms", 11, 980, 1}, {"Mohm", "mega ohms", 3, 250, 1}, {"uF", "micro farads", 20, 800, 1},
	{"uF", "micro farads", 250, 750, 2}, {"degF", "degrees fahrenheit", 55, 180, 0}, {"degC", "degrees celsius", 15, 85, 0}, {"inH2O", "inches of water", 20, 150, 2}, {"inH2O", "inches of water", 25, 130, 1},
}

// Readings returns n phrases by seed, one in twelve a display state.
func Readings(n int, seed uint64) []Item {
	r := rand.New(rand.NewPCG(seed, 5))
	var out []Item
	for len(out) < n {
		if r.IntN(12) == 0 {
			s := []string{"o l", "over limit", "it says o l", "overload", "o l ohms"}[r.IntN(5)]
			out = append(out, Item{Say: s, State: measure.Over})
			continue
		}
		k := shapes[r.IntN(len(shapes))]
		d := unit.Decimal{Mant: k.lo + r.Int64N(k.hi-k.lo+1), Exp: -k.dec}
		words := d.Words()
		if k.unit == "inH2O" && r.IntN(2) == 0 {
			d.Mant = -d.Mant
			words = "minus " + words
		}
		switch {
		case strings.Contains(words, "hundred ") && r.IntN(3) == 0:
			words = strings.Replace(words, "hundred ", "hundred and ", 1)
		case strings.HasPrefix(words, "zero point") && r.IntN(3) == 0:
			words = strings.TrimPrefix(words, "zero ")
		case k.dec > 0 && r.IntN(10) == 0:
			words = d.Digits()
		}
		if r.IntN(8) == 0 {
			words = []string{"it's ", "i get ", "it reads "}[r.IntN(3)] + words
		}
		out = append(out, Item{Say: words + " " + k.say, Value: unit.Value{Dec: d, Unit: k.unit}})
	}
	return out
}

// Paraphrases of emergencies that stand in no phrase list.
var Paraphrases = []Item{
	{Say: "there is a strong smell of gas in here", Class: "gas"}, {Say: "hey it really smells like gas down here", Class: "gas"},
	{Say: "i think gas is leaking from the pipe", Class: "gas"}, {Say: "the carbon monoxide alarm is going off", Class: "co"},
	{Say: "the alarm just went off upstairs", Class: "co"}, {Say: "oh no there's smoke coming out of it", Class: "fire"},
	{Say: "the furnace is on fire", Class: "fire"}, {Say: "something's burning in there", Class: "fire"},
	{Say: "i feel really dizzy", Class: "ill"}, {Say: "i feel sick and my head hurts", Class: "ill"},
	{Say: "ouch i just got shocked", Class: "shock"}, {Say: "i got a bad shock from it", Class: "shock"},
	{Say: "there was a big spark", Class: "spark"}, {Say: "there's water on the floor everywhere", Class: "water"},
	{Say: "i cut my hand badly", Class: "injury"}, {Say: "this is an emergency", Class: "any"}, {Say: "please somebody help me", Class: "any"},
}

// Talk is what people say that is not for the assistant: household talk, some of it with numbers, units or hazard nouns.
var Talk = []string{
	"can you pick up the kids at school today", "we should call my mother tonight", "the gas bill was two hundred dollars last month", "dinner will be ready at half past six",
	"i left my phone in the car", "it's supposed to snow again tomorrow", "did you feed the dog this morning", "the water heater is about ten years old",
	"turn the music down please", "my brother used to work for the gas company", "the hardware store closes at eight", "we paid sixty for that filter",
	"that lamp needs a sixty watt bulb", "the smoke detector in the hall got a new battery", "he said he would come over on friday", "where did i put the flashlight",
	"look at all this dust down here", "i think the fire department is on main street", "these stairs are really steep", "the neighbor has the same furnace",
	"maybe we should get a new one", "i can't believe how cold it is", "the man at the shop said twenty minutes", "there are five people coming for dinner",
	"we used to burn wood in the old house", "my back is killing me", "would you like some coffee", "the cat is sleeping upstairs",
	"i have to be at work by nine", "the game starts in an hour", "she bought four new tires", "what channel is the news on",
}
