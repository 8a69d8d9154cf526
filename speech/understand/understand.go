// Package understand finds what somebody means who talks freely: a value somewhere in a sentence, a danger in any words, a command among
// other words, a state of the display, what the heater does. A span grammar (numbers, units, hazards, people, tense, negation) and
// a small learnt network (package intent) look at the same words, and each checks the other.
package understand

import (
	"fmt"
	"slices"
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
	nets    []*intent.Net
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
	nets, err := intent.Load()
	if err != nil {
		return nil, err
	}
	return NewWith(lex, g, nets)
}

// NewWith is New with other networks.
func NewWith(lex *utterance.Lexicon, g *grammar.Parser, nets []*intent.Net) (*Reader, error) {
	r := &Reader{grammar: g, number: number.New(lex), nets: nets, units: map[string][]string{}}
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
var spoken = map[string]string{"k v": "kV", "kv": "kV", "v": "V", "volts ac": "V", "volts dc": "V", "kay": "kohm", "kays": "kohm",
	"k's": "kohm", "kilo ohm": "kohm", "kiloohms": "kohm", "kiloohm": "kohm", "thousand ohms": "kohm", "milliohms": "mohm", "milliohm": "mohm",
	"milli ohms": "mohm", "milli ohm": "mohm", "kilovolts": "kV", "kilo volts": "kV", "kilovolt": "kV", "mikes": "uF", "mics": "uF", "mic": "uF", "microns": "uA", "ampere": "A",
	"mike farads": "uF", "mfd": "uF", "uf": "uF", "farads": "uF", "milli ampere": "mA", "micro ampere": "uA", "mili volts": "mV", "mili amps": "mA", "inches wc": "inH2O", "inch wc": "inH2O",
	"inches of wc": "inH2O", "inches on the water": "inH2O", "pounds pressure": "psi", "c": "degC", "f": "degF", "degrees centigrade": "degC", "centigrade": "degC", "sec": "s"}

// Input is an utterance as the network takes it; training needs it.
func (r *Reader) Input(text string) (*intent.Input, error) {
	f := r.frame(text)
	return intent.Encode(f.words, class, roles(f.words), f.flags)
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
	in, err := intent.Encode(s.words, class, roles(s.words), s.flags)
	if err != nil {
		return nil, err
	}
	w := r.work.Get().(*intent.Work)
	for _, n := range r.nets {
		n.Forward(in, w, nil)
		for i, x := range w.Out {
			s.out[i] += x / float32(len(r.nets))
		}
	}
	r.work.Put(w)
	s.act = intent.Softmax(s.out[intent.AtAct:intent.AtHazard])
	s.hazard = intent.Softmax(s.out[intent.AtHazard:intent.AtCommand])
	s.command = intent.Softmax(s.out[intent.AtCommand:intent.AtState])
	s.state = intent.Softmax(s.out[intent.AtState:intent.AtSymptom])
	return s, nil
}

// Acts are the probabilities of intent.Acts for words, and whether the span grammar finds a danger in them, and one that is plainly present.
func (r *Reader) Acts(text string) (p []float64, found, plain bool) {
	s, err := r.sense(text)
	if err != nil {
		return make([]float64, len(intent.Acts)), false, false
	}
	found, plain = s.found()
	return s.act, found, plain
}

// found tells whether the span grammar finds a danger that nothing denies, and one that is plainly present.
func (s *sense) found() (found, plain bool) {
	found = slices.Contains(s.strong, true) && !s.negated && !s.figure
	return found, found && !s.past && !s.hypothesis
}
