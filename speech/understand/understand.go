// Package understand finds what somebody means who talks freely: a value somewhere in a sentence, a danger in any words, a command among
// other words, a state of the display, what the heater does. A span grammar (numbers, units, hazards, people, tense, negation) and
// a small learnt network (package intent) look at the same words, and each checks the other.
package understand

import (
	"fmt"
	"strings"
	"sync"

	"readback/core/unit"
	"readback/core/utterance"
	"readback/speech/grammar"
	"readback/speech/number"
	"readback/speech/understand/intent"
)

// Reader understands free text in one language. It may be used by several goroutines.
type Reader struct {
	grammar *grammar.Parser
	number  *number.Parser
	net     *intent.Net
	units   map[string][]string // words of a unit → its ids
	longest int                 // words of the longest unit
	weights [nFeatures]float64
	work    sync.Pool
}

// New makes a reader for a language. The grammar is the one that whole utterances are parsed with.
func New(lex *utterance.Lexicon, g *grammar.Parser) (*Reader, error) {
	if lex.Lang != "en" {
		return nil, fmt.Errorf("understand: no span grammar for language %q", lex.Lang)
	}
	net, err := intent.Load()
	if err != nil {
		return nil, err
	}
	return NewWith(lex, g, net)
}

// NewWith is New with another network.
func NewWith(lex *utterance.Lexicon, g *grammar.Parser, net *intent.Net) (*Reader, error) {
	r := &Reader{grammar: g, number: number.New(lex), net: net, units: map[string][]string{}}
	r.work.New = func() any { return new(intent.Work) }
	var err error
	if r.weights, err = readRank(rankFile); err != nil {
		return nil, err
	}
	add := func(say, id string) {
		r.units[say] = append(r.units[say], id)
		r.longest = max(r.longest, strings.Count(say, " ")+1)
	}
	for _, u := range unit.All() {
		for _, say := range lex.Units[u.ID] {
			add(strings.Join(intent.Tokens(say), " "), u.ID)
		}
	}
	for say, id := range spoken {
		if r.units[say] == nil {
			add(say, id)
		}
	}
	return r, nil
}

// spoken are ways to say a unit that whole readings do without: they are safe beside a number only.
var spoken = map[string]string{"v": "V", "volts ac": "V", "volts dc": "V", "kay": "kohm", "kays": "kohm",
	"k's": "kohm", "kilo ohm": "kohm", "kiloohms": "kohm", "kiloohm": "kohm", "thousand ohms": "kohm", "milliohms": "mohm", "milliohm": "mohm",
	"milli ohms": "mohm", "milli ohm": "mohm", "kilovolts": "kV", "kilo volts": "kV", "kilovolt": "kV", "mikes": "uF", "mics": "uF", "mic": "uF", "microns": "uA", "ampere": "A",
	"mike farads": "uF", "mfd": "uF", "uf": "uF", "farads": "uF", "milli ampere": "mA", "micro ampere": "uA", "mili volts": "mV", "mili amps": "mA", "inches wc": "inH2O", "inch wc": "inH2O",
	"inches of wc": "inH2O", "inches on the water": "inH2O", "pounds pressure": "psi", "c": "degC", "f": "degF", "degrees centigrade": "degC", "centigrade": "degC", "sec": "s"}

// Input is an utterance as the network takes it; training needs it.
func (r *Reader) Input(text string) (*intent.Input, error) {
	f := r.frame(text)
	return intent.Encode(f.words, class, f.flags)
}

// sense is what the network makes of an utterance, with what the span grammar found.
type sense struct {
	*frame
	out     [intent.Outputs]float32
	act     []float64 // by intent.Acts
	hazard  []float64
	command []float64
	state   []float64
}

func (r *Reader) sense(text string) (*sense, error) {
	s := &sense{frame: r.frame(text)}
	in, err := intent.Encode(s.words, class, s.flags)
	if err != nil {
		return nil, err
	}
	w := r.work.Get().(*intent.Work)
	r.net.Forward(in, w, nil)
	s.out = w.Out
	r.work.Put(w)
	s.act = intent.Softmax(s.out[intent.AtAct:intent.AtHazard])
	s.hazard = intent.Softmax(s.out[intent.AtHazard:intent.AtCommand])
	s.command = intent.Softmax(s.out[intent.AtCommand:intent.AtState])
	s.state = intent.Softmax(s.out[intent.AtState:intent.AtSymptom])
	return s, nil
}

// Danger is the probability that words tell a danger or the doubt of one.
func (r *Reader) Danger(text string) float64 {
	s, err := r.sense(text)
	if err != nil {
		return 0
	}
	return s.act[danger] + s.act[maybe]
}
