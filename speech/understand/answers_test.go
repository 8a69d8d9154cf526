package understand_test

import (
	"testing"

	"readback/core/utterance"
	"readback/speech/grammar"
)

// Where one of some answers is due, plain words are no commands, and the flame that was asked about is no fire. The words are those of the
// people of mobile/lab/peers.
func TestAnswersAreNoCommands(t *testing.T) {
	r := reader(t)
	flame := grammar.Expect{Options: []string{"lit", "out"}}
	since := grammar.Expect{Options: []string{"after-work", "after-storm", "nothing-done"}}
	off := grammar.Expect{Options: []string{"off"}}
	for _, c := range []struct {
		say  string
		e    grammar.Expect
		kind utterance.Kind // that must not be the first meaning
	}{
		{"it just quit", since, utterance.Command}, {"untouched", since, utterance.Command}, {"fine", off, utterance.Command},
		{"everybody's good", grammar.Expect{Options: []string{"everyone-fine", "feeling-ill"}}, utterance.Command},
		{"clean as far as I see", grammar.Expect{Options: []string{"clean", "burnt", "sooty"}}, utterance.Command},
		{"yes it is burning", flame, utterance.Emergency}, {"I see a flame", flame, utterance.Emergency}, {"burning", flame, utterance.Emergency},
	} {
		u := r.Hear(c.say, c.e)
		if b := u.Best(); b != nil && b.Kind == c.kind {
			t.Errorf("%q: %+v", c.say, *b)
		}
	}
	for _, say := range []string{"the wall is burning", "i see flames outside", "there is smoke everywhere"} {
		u := r.Hear(say, flame)
		if b := u.Best(); b == nil || b.Kind != utterance.Emergency {
			t.Errorf("%q is no alarm: %+v", say, u.Meanings)
		}
	}
}
