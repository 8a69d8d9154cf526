package app

import (
	"fmt"

	"readback/core/utterance"
	"readback/speech"
	"readback/speech/grammar"
	"readback/speech/listen"
	"readback/speech/model"
	"readback/speech/rescore"
	"readback/speech/vosk"
)

// Recogniser hears with the files that locate finds. It loads in the background of Open.
func Recogniser(locate func() (model.Files, error)) Speech {
	return Speech{Open: func(l Listener) (Ear, error) {
		f, err := locate()
		if err != nil {
			return nil, err
		}
		return openEar(f, l)
	}}
}

type engineEar struct {
	*listen.Ear
	engine   *vosk.Engine
	rescorer speech.Rescorer
}

func (e engineEar) Close() {
	e.Ear.Close()
	_ = e.engine.Close() // it never fails
	if e.rescorer != nil {
		_ = e.rescorer.Close() // nor does this
	}
}

func openEar(f model.Files, l Listener) (Ear, error) {
	lib, err := load("en") // the recogniser understands English only
	if err != nil {
		return nil, err
	}
	engine, err := vosk.Open(f.Library, f.Model)
	if err != nil {
		return nil, fmt.Errorf("speech is off: %w", err)
	}
	phrases, _ := lib.parser.Sample(grammar.Readings, 1, engine.Known)
	var complete func(string)
	if l.Complete != nil {
		complete = func(string) { l.Complete() }
	}
	rescorer := rescore.From(f.Rescorer)
	var sound func([]int16, int)
	if l.Sound != nil {
		sound = func(pcm []int16, _ int) { l.Sound(pcm) }
	}
	ear, err := listen.New(listen.Config{
		New:    func() (speech.Recognizer, error) { return engine.New(phrases, grammar.Alternatives) },
		Parser: lib.parser,
		Narrow: func(x grammar.Expect) (speech.Recognizer, error) {
			return engine.New(lib.parser.Narrow(x, engine.Known), grammar.Alternatives)
		},
		Background: func() (speech.Recognizer, error) { return engine.New(lib.parser.Background(engine.Known), 1) },
		Rescorer:   rescorer,
		Open:       func() (speech.Recognizer, error) { return engine.NewOpen(1) },
		Reader:     lib.reader,
		Utterance:  func(u utterance.Utterance) { l.Utterance(u) },
		Complete:   complete,
		Audio:      sound,
		Partial:    l.Partial,
		Level:      l.Level,
	})
	if err != nil {
		_ = engine.Close() // it never fails
		return nil, fmt.Errorf("speech is off: %w", err)
	}
	return engineEar{ear, engine, rescorer}, nil
}

var _ Ear = engineEar{}
