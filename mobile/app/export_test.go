package app

import (
	"readback/core/appliance"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/words"
)

// StripJPEG is stripJPEG.
var StripJPEG = stripJPEG

// MuLawFile is muLawFile.
var MuLawFile = muLawFile

// Plain takes the checksum off a sound, so that tests see what a WAV reader sees.
func Plain(wav []byte) ([]byte, bool) {
	if !wholeSound(wav) || len(wav) < 40 {
		return wav, false
	}
	return wav[:len(wav)-40], true
}

// Replay is replay without effects.
func Replay(newMachine func(protocol.Begin) (Machine, error), events []protocol.Event) (Machine, int, error) {
	return replay(newMachine, events, nil)
}

// Journal is a hub's open journal's name on its disk.
func Journal(id string) string { return inJob(id, journalName) }

// AddLanguage lets the program know a language that does not come with it.
func AddLanguage(w *words.Words, lex *utterance.Lexicon, models []*appliance.Model) error {
	l, err := newLibrary(w, lex, models)
	if err != nil {
		return err
	}
	libraries.mu.Lock()
	defer libraries.mu.Unlock()
	libraries.of[w.Lang] = l
	return nil
}
