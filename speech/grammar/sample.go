package grammar

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"

	"readback/core/unit"
	"readback/core/utterance"
)

// Unknown is the recogniser's word for anything it was not told of.
const Unknown = "[unk]"

// Repeats of a phrase raise its weight in the recogniser's language model, against the sampled readings. The unknown word is
// repeated so that talk and noise have somewhere to go.
const (
	emergencyTimes = 10
	commandTimes   = 3
	optionTimes    = 3
	stateTimes     = 12
	unknownTimes   = 200
)

// Narrow writes what can be said to one question, and nothing that answers another one: in noise that is what an answer becomes.
// With units asked for these are readings and display states: no commands, no emergencies, whose small words ("a", "the", "it") are
// heard in the place of digits. Otherwise they are the commands and the emergencies with their near misses. The sayings of the answers asked
// for and the unknown word are always there.
func (p *Parser) Narrow(x Expect, known func(word string) bool) []string {
	out := newOutput(known)
	if len(x.Units) > 0 {
		p.addStates(out, func(say string) bool {
			return !slices.ContainsFunc(strings.Fields(say), func(w string) bool { return small[w] })
		})
		p.addReadings(out, narrowReadings, 1, func(k *kind) bool { return slices.Contains(x.Units, k.unit) || k.unit == "" })
		p.addReadings(out, narrowReadings/10, 2, func(k *kind) bool { k.acdc = 0; return true })
	} else {
		out.sayings(p.lex.Emergencies.Classes, 1)
		out.sayings(p.lex.Commands, 1)
		for _, s := range p.lex.Emergencies.Near {
			out.add(s)
		}
	}
	for _, o := range p.lex.Options {
		if slices.Contains(x.Options, o.ID) {
			for _, s := range o.Say {
				for range narrowTimes {
					out.add(s)
				}
			}
		}
	}
	for _, s := range slices.Sorted(maps.Keys(p.asks(x).says)) {
		for range narrowTimes {
			out.add(s)
		}
	}
	for range unknownTimes {
		out.add(Unknown)
	}
	return out.phrases
}

const (
	narrowTimes    = 10   // weighs the answers asked for against everything else that may be said
	narrowReadings = 3000 // in the units asked for
)

// Background writes the emergencies among the common words of the language: what a recogniser of these still hears as an emergency was one.
func (p *Parser) Background(known func(word string) bool) []string {
	out := newOutput(known)
	for _, w := range p.lex.Background {
		out.add(w)
	}
	out.sayings(p.lex.Emergencies.Classes, 1)
	out.add(Unknown)
	return out.phrases
}

// Sample writes phrases for the recogniser: n readings drawn from the ways people say a meter's display, every command,
// answer, display state and emergency, and the unknown word. The same seed gives the same phrases. Known tells whether the
// recogniser has a word: a phrase with a word it lacks is left out and returned in the second list.
func (p *Parser) Sample(n int, seed uint64, known func(word string) bool) (phrases, left []string) {
	out := newOutput(known)
	out.sayings(p.lex.Emergencies.Classes, emergencyTimes)
	for _, s := range p.lex.Emergencies.Near { // so that "no gas smell" is heard with its "no"
		out.add(s)
	}
	out.sayings(p.lex.Commands, commandTimes)
	out.sayings(p.lex.Options, optionTimes)
	p.addStates(out, nil)
	p.addReadings(out, n, seed, nil)
	for range unknownTimes {
		out.phrases = append(out.phrases, Unknown)
	}
	return out.phrases, out.left
}

// small words are what noise makes of digits: "and" of ten, "that" of fifty.
var small = set([]string{"the", "a", "an", "and", "on", "it", "is", "it's", "i", "there", "that", "get", "have", "won't", "just", "no", "not", "doesn't", "nothing", "of", "up", "down"})

func (p *Parser) addStates(out *output, wanted func(say string) bool) {
	for _, st := range []string{"over", "beep", "silent", "blank", "jumping", "dead"} {
		for _, s := range p.lex.States[st] {
			if wanted != nil && !wanted(s) {
				continue
			}
			for range stateTimes {
				out.add(s)
			}
		}
	}
}

// addReadings draws n readings. Wanted, when given, chooses and may change what is drawn; the units are then said in words, not letters.
func (p *Parser) addReadings(out *output, n int, seed uint64, wanted func(*kind) bool) {
	g := sampler{r: rand.New(rand.NewPCG(seed, 1)), units: p.lex.Units, known: out.known, words: wanted != nil}
	for _, k := range kinds {
		if wanted == nil || wanted(&k) {
			g.kinds = append(g.kinds, k)
			g.weight += k.weight
		}
	}
	if g.kinds == nil {
		return // a unit nobody reads off a meter
	}
	for range n {
		out.add(g.reading())
	}
	for i, w := range digitNames {
		out.add(w)
		out.add("point " + w)
		out.add("double " + digitNames[(i+3)%10])
	}
}

type output struct {
	phrases, left []string
	known         func(string) bool
	missed        map[string]bool
}

func newOutput(known func(string) bool) *output {
	cache := map[string]bool{}
	return &output{missed: map[string]bool{}, known: func(w string) bool {
		k, ok := cache[w]
		if !ok {
			k = known(w)
			cache[w] = k
		}
		return k
	}}
}

func (o *output) add(s string) {
	for w := range strings.FieldsSeq(s) {
		if !o.known(w) {
			if long := strings.Replace(s, w, strings.TrimSuffix(w, "'s")+" is", 1); strings.HasSuffix(w, "'s") {
				o.add(long)
				return
			}
			if !o.missed[s] {
				o.missed[s] = true
				o.left = append(o.left, s)
			}
			return
		}
	}
	o.phrases = append(o.phrases, s)
}

// sayings adds all that is said for each of a list, so many times.
func (o *output) sayings(list []utterance.Phrase, times int) {
	for _, c := range list {
		for _, s := range c.Say {
			for range times {
				for _, filled := range fill(s) {
					o.add(filled)
				}
			}
		}
	}
}

// fill replaces a "*" by the small words people say there.
func fill(s string) []string {
	if !strings.Contains(s, "*") {
		return []string{s}
	}
	var out []string
	for _, w := range []string{"", "the", "some", "a lot of", "like"} {
		out = append(out, strings.Join(strings.Fields(strings.Replace(s, "*", w, 1)), " "))
	}
	return out
}

var digitNames = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"}

// sampler draws readings.
type sampler struct {
	r      *rand.Rand
	units  map[string][]string
	known  func(string) bool
	kinds  []kind
	words  bool // numbers and units in words and little else: "m a" and "make that" sound like many things
	weight int  // sum of those of the kinds
}

type kind struct {
	unit     string
	weight   int
	low      int64 // in counts of the last digit
	high     int64
	decimals int
	acdc     float64 // share said with a c or d c
	sign     float64 // share said with minus
}

// The ranges are what a meter shows at a heating appliance: decimals as its display has them, sizes from a dead circuit to line
// voltage. Common practice, no source.
var kinds = []kind{
	{"V", 10, 0, 300, 1, .4, .02}, {"V", 10, 200, 300, 1, .4, 0}, {"V", 9, 0, 130, 0, .3, .02}, {"V", 6, 100, 260, 0, .4, 0}, {"V", 5, 0, 999, 2, .3, .02}, {"V", 3, 1000, 2600, 1, .3, 0},
	{"mV", 5, 0, 999, 1, .1, .05}, {"mV", 4, 0, 800, 0, .1, .05},
	{"A", 5, 0, 1500, 2, .2, 0}, {"A", 4, 0, 200, 1, .2, 0}, {"A", 2, 0, 20, 0, .2, 0},
	{"mA", 3, 0, 999, 1, .1, 0}, {"uA", 9, 0, 99, 1, .3, .03}, {"uA", 3, 0, 999, 2, .3, .02}, {"uA", 2, 0, 20, 0, .2, .02},
	{"ohm", 6, 0, 999, 1, 0, 0}, {"ohm", 6, 0, 999, 0, 0, 0}, {"ohm", 2, 1000, 4000, 0, 0, 0}, {"kohm", 5, 0, 999, 1, 0, 0}, {"kohm", 3, 0, 999, 2, 0, 0}, {"Mohm", 3, 0, 999, 1, 0, 0}, {"Mohm", 2, 0, 400, 2, 0, 0},
	{"uF", 6, 0, 999, 1, 0, 0}, {"uF", 3, 0, 999, 2, 0, 0}, {"uF", 2, 1, 100, 0, 0, 0}, {"Hz", 2, 550, 650, 1, 0, 0},
	{"degF", 5, 30, 220, 0, 0, .02}, {"degF", 2, 300, 1900, 1, 0, 0}, {"degC", 3, 0, 110, 0, 0, .05}, {"degC", 1, 0, 999, 1, 0, .05},
	{"inH2O", 6, 0, 150, 2, 0, .4}, {"inH2O", 3, 0, 140, 1, 0, .2}, {"Pa", 2, 0, 400, 0, 0, .3}, {"kPa", 1, 0, 60, 1, 0, 0},
	{"%", 2, 0, 100, 0, 0, 0}, {"ppm", 2, 0, 400, 0, 0, 0}, {"s", 3, 1, 120, 0, 0, 0}, {"min", 2, 1, 60, 0, 0, 0}, {"in", 1, 1, 48, 0, 0, 0}, {"psi", 1, 1, 60, 0, 0, 0}, {"x", 2, 1, 12, 0, 0, 0}, {"money", 3, 5, 400, 0, 0, 0}, {"yr", 2, 1, 45, 0, 0, 0}, {"W", 1, 10, 900, 0, 0, 0},
	{"", 8, 0, 999, 1, 0, 0}, {"", 6, 0, 260, 0, 0, 0},
}

func (g *sampler) reading() string {
	at := g.r.IntN(g.weight)
	i := 0
	for at >= g.kinds[i].weight {
		at -= g.kinds[i].weight
		i++
	}
	k := g.kinds[i]
	d := unit.Decimal{Mant: k.low + g.r.Int64N(k.high-k.low+1), Exp: -k.decimals}
	words := g.number(d)
	if g.r.Float64() < k.sign {
		words = []string{"minus", "minus", "negative"}[g.r.IntN(3)] + " " + words
	}
	parts := []string{words}
	if k.unit != "" {
		parts = append(parts, g.unit(k.unit, d))
		if g.r.Float64() < k.acdc {
			ac := "a c"
			if g.r.IntN(3) == 0 {
				ac = "d c"
			}
			if g.r.IntN(3) == 0 { // "a c volts"
				parts = []string{words, ac, parts[1]}
			} else {
				parts = append(parts, ac)
			}
		}
	}
	switch way := g.r.IntN(24); {
	case way == 0:
		parts = append([]string{"it's"}, parts...)
	case way == 1:
		parts = append([]string{"i get"}, parts...)
	case way == 2 && g.words:
		parts = append([]string{"it reads"}, parts...)
	case way == 3 && g.words:
	case way == 2: // a start, taken back
		parts = append([]string{strings.Fields(words)[0], "no"}, parts...)
	case way == 3:
		parts = append([]string{[]string{"it reads", "i have", "it says", "no", "sorry", "make that"}[g.r.IntN(6)]}, parts...)
	}
	return strings.Join(parts, " ")
}

// number says a decimal in one of the ways people do.
func (g *sampler) number(d unit.Decimal) string {
	words := strings.ReplaceAll(d.Words(), "-", " ")
	switch {
	case g.r.IntN(8) == 0:
		words = d.Digits()
	case strings.HasPrefix(words, "one hundred ") && g.r.IntN(3) == 0 && d.Exp == 0 && d.Mant > 109: // "one nineteen"
		words = "one " + strings.TrimPrefix(words, "one hundred ")
	case strings.Contains(words, "hundred ") && g.r.IntN(3) == 0:
		words = strings.Replace(words, "hundred ", "hundred and ", 1)
	case strings.HasPrefix(words, "zero point") && g.r.IntN(3) > 0:
		words = []string{"", "oh "}[g.r.IntN(2)] + strings.TrimPrefix(words, "zero ")
	}
	if head, frac, ok := strings.Cut(words, " point "); ok && g.r.IntN(4) == 0 {
		words = head + " point " + strings.ReplaceAll(frac, "zero", "oh")
	}
	return words
}

func (g *sampler) unit(id string, d unit.Decimal) string {
	say := make([]string, 0, 8)
	for _, s := range g.units[id] {
		fits := true
		for w := range strings.FieldsSeq(s) {
			fits = fits && g.known(w) && (!g.words || len(w) > 1 || w == "k")
		}
		if fits && (len(s) > 1 || id == "kohm") {
			say = append(say, s)
		}
	}
	if len(say) == 0 {
		return ""
	}
	if d.Mant != 1 && g.r.IntN(4) > 0 {
		return say[0] // the plain plural stands first
	}
	return say[g.r.IntN(len(say))]
}

// Missing lists the words of a lexicon and of the numbers that a recogniser lacks, each with a saying it stands in.
func (p *Parser) Missing(known func(word string) bool) []string {
	_, left := p.Sample(0, 1, known)
	out := make([]string, 0, len(left))
	for _, s := range left {
		for w := range strings.FieldsSeq(s) {
			if !known(w) {
				out = append(out, fmt.Sprintf("%s (%s)", w, s))
			}
		}
	}
	return out
}

// Readings is how many sampled readings the recogniser is trained with, and Alternatives how many word strings it is asked for.
const (
	Readings     = 12000
	Alternatives = 20
)
