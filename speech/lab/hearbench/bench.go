package hearbench

import (
	"fmt"
	"math"
	"time"

	"readback/core/utterance"
	"readback/speech"
	"readback/speech/grammar"
	"readback/speech/listen"
	"readback/speech/model"
	"readback/speech/rescore"
	"readback/speech/understand"
	"readback/speech/vosk"
)

// Bench is the real engine with the real phrases.
type Bench struct {
	Engine   *vosk.Engine
	Parser   *grammar.Parser
	Reader   *understand.Reader
	Rescorer speech.Rescorer // nil: there is none here
	list     []string
	rec      *vosk.Recognizer
	narrow   map[string]*vosk.Recognizer // by what was asked for
	Saying   string                      // what the own voice says while clips are heard; "": nothing
}

// shared lets many ears use one recogniser one after the other.
type shared struct{ speech.Recognizer }

func (shared) Close() error { return nil }

// Open loads the engine and builds the recogniser. Its error is a *model.Error when speech files are missing.
func Open(lex *utterance.Lexicon) (*Bench, error) {
	files, err := model.Locate()
	if err != nil {
		return nil, err
	}
	e, err := vosk.Open(files.Library, files.Model)
	if err != nil {
		return nil, err
	}
	b := &Bench{Engine: e, Parser: grammar.New(lex), Rescorer: rescore.From(files.Rescorer), narrow: map[string]*vosk.Recognizer{}}
	b.list, _ = b.Parser.Sample(grammar.Readings, 1, e.Known)
	if b.Reader, err = understand.New(lex, b.Parser); err != nil {
		return nil, err
	}
	if b.rec, err = e.New(b.list, grammar.Alternatives); err != nil {
		return nil, err
	}
	return b, nil
}

// Worker is a bench with a recogniser of its own on the same engine, for another goroutine.
func (b *Bench) Worker() (*Bench, error) {
	rec, err := b.Engine.New(b.list, grammar.Alternatives)
	if err != nil {
		return nil, err
	}
	return &Bench{Engine: b.Engine, Parser: b.Parser, Reader: b.Reader, Rescorer: b.Rescorer, list: b.list, rec: rec, narrow: map[string]*vosk.Recognizer{}}, nil
}

// CloseRecognizer frees the recognisers and leaves the engine to others.
func (b *Bench) CloseRecognizer() {
	b.rec.Close()
	for _, r := range b.narrow {
		r.Close()
	}
}

// Close frees the engine.
func (b *Bench) Close() {
	b.CloseRecognizer()
	b.Engine.Close()
	if b.Rescorer != nil {
		b.Rescorer.Close()
	}
}

// only is the recogniser for one question. The bench keeps them all, as each clip has an ear of its own.
func (b *Bench) only(x grammar.Expect) (speech.Recognizer, error) {
	return b.kept(x.Key(), grammar.Alternatives, func() []string { return b.Parser.Narrow(x, b.Engine.Known) })
}

// kept is the recogniser with this key, made of its phrases when it is asked for first.
func (b *Bench) kept(key string, alternatives int, phrases func() []string) (speech.Recognizer, error) {
	if b.narrow[key] == nil {
		rec, err := b.Engine.New(phrases(), alternatives)
		if err != nil {
			return nil, err
		}
		b.narrow[key] = rec
	}
	return shared{b.narrow[key]}, nil
}

// alarms is the recogniser of alarms among common words, kept as those of the questions are.
func (b *Bench) alarms() (speech.Recognizer, error) {
	return b.kept("everyday", 1, func() []string { return b.Parser.Background(b.Engine.Known) })
}

// Ear makes a fresh ear on the shared recogniser.
func (b *Bench) Ear(on func(utterance.Utterance), passes func([]grammar.Pass), complete func(string)) (*listen.Ear, error) {
	return listen.New(listen.Config{
		New:        func() (speech.Recognizer, error) { return shared{b.rec}, nil },
		Parser:     b.Parser,
		Narrow:     b.only,
		Background: b.alarms,
		Rescorer:   b.Rescorer,
		Reader:     b.Reader,
		Utterance:  on,
		Passes:     passes,
		Complete:   complete,
	})
}

// Heard is what came of one clip.
type Heard struct {
	Partial []utterance.Utterance
	Final   []utterance.Utterance
	Lists   []grammar.Pass // passes of the last saying, the first without the noise reducer
	Delay   float64        // s from the end of the clip's speech to the last final utterance
	Early   float64        // s from the end of the clip's speech to the first partial utterance
	Chime   float64        // s to the moment an earcon may sound
	Work    float64        // s of computing in the step that gave the last utterance
}

// Hear plays a clip to a fresh ear in 50 ms steps; speech ends at sample end. X is what was asked for.
func (b *Bench) Hear(pcm []int16, end int, x grammar.Expect) (Heard, error) {
	var h Heard
	at := 0
	ear, err := b.Ear(func(u utterance.Utterance) {
		late := float64(at-end) / 16000
		if u.Partial {
			if h.Partial == nil {
				h.Early = late
			}
			h.Partial = append(h.Partial, u)
			return
		}
		h.Final = append(h.Final, u)
		h.Delay = late
	}, func(ws []grammar.Pass) { h.Lists = ws },
		func(string) { h.Chime = float64(at-end) / 16000 })
	if err != nil {
		return h, err
	}
	defer ear.Close()
	ear.Expect(x)
	if b.Saying != "" {
		ear.Speaking(b.Saying)
	}
	for len(pcm) > 0 {
		n := min(800, len(pcm))
		at += n
		said, start := len(h.Final), time.Now()
		if err := ear.FeedSamples(pcm[:n], int64(at/16)); err != nil {
			return h, err
		}
		if len(h.Final) > said {
			h.Work = time.Since(start).Seconds()
		}
		pcm = pcm[n:]
	}
	return h, ear.Flush()
}

// Condition is a noise at a ratio.
type Condition struct {
	Noise string
	SNR   float64 // dB; +Inf: none
}

func (c Condition) String() string {
	if math.IsInf(c.SNR, 1) {
		return "clean"
	}
	return fmt.Sprintf("%s %g dB", c.Noise, c.SNR)
}

// Conditions are those reported.
var Conditions = []Condition{{"", math.Inf(1)}, {"pink", 20}, {"fan", 20}, {"pink", 10}, {"fan", 10}, {"pink", 5}, {"fan", 5}}
