// Package vosk is a thin binding of libvosk 0.3.45. It loads the library at run time, so a program without it still runs.
//
// The library crashes the whole process on a bad call: an empty or broken grammar, a grammar set while running, two calls on
// one recogniser at once, use after free. This package makes those calls impossible instead of passing them on.
package vosk

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/ebitengine/purego"

	"readback/speech"
	"readback/speech/clib"
)

// library is the part of the C interface that is used. C int is int32, float is float32, a returned string is copied at once.
type library struct {
	setLogLevel     func(level int32)
	modelNew        func(path string) uintptr
	modelFree       func(model uintptr)
	findWord        func(model uintptr, word string) int32
	newGrammar      func(model uintptr, rate float32, grammar string) uintptr
	newPlain        func(model uintptr, rate float32) uintptr
	setAlternatives func(rec uintptr, n int32)
	setWords        func(rec uintptr, on int32)
	accept          func(rec uintptr, pcm *int16, n int32) int32
	partial         func(rec uintptr) string
	final           func(rec uintptr) string
	free            func(rec uintptr)
}

func load(path string) (*library, error) {
	h, err := clib.Open(path)
	if err != nil {
		return nil, fmt.Errorf("vosk: opening the library: %w", err)
	}
	var l library
	for _, s := range []struct {
		name string
		to   any
	}{
		{"vosk_set_log_level", &l.setLogLevel}, {"vosk_model_new", &l.modelNew}, {"vosk_model_free", &l.modelFree},
		{"vosk_model_find_word", &l.findWord}, {"vosk_recognizer_new_grm", &l.newGrammar}, {"vosk_recognizer_new", &l.newPlain},
		{"vosk_recognizer_set_max_alternatives", &l.setAlternatives}, {"vosk_recognizer_set_words", &l.setWords},
		{"vosk_recognizer_accept_waveform_s", &l.accept}, {"vosk_recognizer_partial_result", &l.partial},
		{"vosk_recognizer_final_result", &l.final}, {"vosk_recognizer_free", &l.free},
	} {
		addr, err := clib.Symbol(h, s.name)
		if err != nil || addr == 0 {
			return nil, fmt.Errorf("vosk: %s has no %s: %w", path, s.name, errors.Join(err, errLibrary))
		}
		purego.RegisterFunc(s.to, addr)
	}
	l.setLogLevel(-2)
	return &l, nil
}

var (
	// errLibrary: the file is a library, but not this one.
	errLibrary = errors.New("not the speech library this program was made for")
	// ErrModel: the model folder does not load.
	ErrModel = errors.New("vosk: the model does not load")
	// ErrGrammar: the phrases cannot be used; the text says why.
	ErrGrammar = errors.New("vosk: unusable phrases")
)

// Engine is a loaded library with its model. It may be shared by goroutines; each makes recognisers of its own.
type Engine struct {
	lib   *library
	mu    sync.Mutex
	model uintptr // 0 after Close
}

// Open loads the library (a file, or a bare name on Android) and the model folder. About 0.4 s and 125 MB.
func Open(libraryPath, modelPath string) (*Engine, error) {
	l, err := load(libraryPath)
	if err != nil {
		return nil, err
	}
	m := l.modelNew(modelPath)
	if m == 0 {
		return nil, fmt.Errorf("%w: %s", ErrModel, modelPath)
	}
	return &Engine{lib: l, model: m}, nil
}

// Known tells whether the model has a word. It is false after Close.
func (e *Engine) Known(word string) bool {
	e.mu.Lock()
	defer e.mu.Unlock()
	return e.model != 0 && cString(word) && e.lib.findWord(e.model, word) >= 0
}

// Close frees the model; recognisers made from it stay usable. A second Close does nothing.
func (e *Engine) Close() error {
	e.mu.Lock()
	defer e.mu.Unlock()
	if e.model != 0 {
		e.lib.modelFree(e.model)
		e.model = 0
	}
	return nil
}

// cString tells whether a string reaches C whole.
func cString(s string) bool { return s != "" && !strings.ContainsRune(s, 0) }

// Recognizer listens for phrases. It implements speech.Recognizer.
type Recognizer struct {
	lib  *library
	rec  uintptr
	busy atomic.Bool
	shut bool // guarded by busy
}

// New makes a recogniser for phrases of known words, each a space separated list, with up to n alternatives a saying (1 to 50).
// Every word is checked first; an unknown one, an empty phrase or no phrase at all is an error.
func (e *Engine) New(phrases []string, n int) (*Recognizer, error) {
	if n < 1 || n > 50 {
		return nil, fmt.Errorf("%w: %d alternatives, want 1 to 50", ErrGrammar, n)
	}
	if len(phrases) == 0 {
		return nil, fmt.Errorf("%w: there are none", ErrGrammar)
	}
	checked := map[string]bool{}
	var missing []string
	for _, p := range phrases {
		words := strings.Fields(p)
		if len(words) == 0 || strings.Join(words, " ") != p {
			return nil, fmt.Errorf("%w: %q, want words with single spaces", ErrGrammar, p)
		}
		for _, w := range words {
			if checked[w] {
				continue
			}
			checked[w] = true
			if !e.Known(w) {
				missing = append(missing, w)
			}
		}
	}
	if missing != nil {
		return nil, fmt.Errorf("%w: the model lacks %s", ErrGrammar, strings.Join(missing, ", "))
	}
	grammar, err := json.Marshal(phrases)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrGrammar, err)
	}
	e.mu.Lock()
	defer e.mu.Unlock()
	if e.model == 0 {
		return nil, speech.ErrClosed
	}
	rec := e.lib.newGrammar(e.model, speech.Rate, string(grammar))
	return e.made(rec, n)
}

// NewOpen makes a recogniser for free speech with the model's own language model. It takes some 180 MB more.
func (e *Engine) NewOpen(n int) (*Recognizer, error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if e.model == 0 {
		return nil, speech.ErrClosed
	}
	return e.made(e.lib.newPlain(e.model, speech.Rate), n)
}

func (e *Engine) made(rec uintptr, n int) (*Recognizer, error) {
	if rec == 0 {
		return nil, errors.New("vosk: the library made no recogniser")
	}
	e.lib.setAlternatives(rec, int32(n))
	e.lib.setWords(rec, 1)
	return &Recognizer{lib: e.lib, rec: rec}, nil
}

// enter takes the recogniser for one call.
func (r *Recognizer) enter() error {
	if !r.busy.CompareAndSwap(false, true) {
		return speech.ErrBusy
	}
	if r.shut {
		r.busy.Store(false)
		return speech.ErrClosed
	}
	return nil
}

// Accept takes samples, at most 0.2 s a call underneath, so that the end of a saying is noticed soon.
func (r *Recognizer) Accept(pcm []int16) (ended bool, err error) {
	if err := r.enter(); err != nil {
		return false, err
	}
	defer r.busy.Store(false)
	for len(pcm) > 0 {
		n := min(len(pcm), speech.Rate/5)
		got := r.lib.accept(r.rec, &pcm[0], int32(n))
		runtime.KeepAlive(pcm)
		if got < 0 {
			return false, errors.New("vosk: the engine could not take the sound")
		}
		ended, pcm = got == 1, pcm[n:]
	}
	return ended, nil
}

// Partial returns the words so far.
func (r *Recognizer) Partial() (string, error) {
	if err := r.enter(); err != nil {
		return "", err
	}
	defer r.busy.Store(false)
	var p struct{ Partial string }
	if err := json.Unmarshal([]byte(r.lib.partial(r.rec)), &p); err != nil {
		return "", fmt.Errorf("vosk: partial result: %w", err)
	}
	return p.Partial, nil
}

// Final ends the saying. The next one starts without what was learnt of this voice and noise.
func (r *Recognizer) Final() (speech.Result, error) {
	if err := r.enter(); err != nil {
		return speech.Result{}, err
	}
	defer r.busy.Store(false)
	return parse([]byte(r.lib.final(r.rec)))
}

// Close frees the recogniser. It is an error while another call runs; a second Close does nothing.
func (r *Recognizer) Close() error {
	switch err := r.enter(); {
	case errors.Is(err, speech.ErrClosed):
		return nil
	case err != nil:
		return err
	}
	defer r.busy.Store(false)
	r.shut = true
	r.lib.free(r.rec)
	r.rec = 0
	return nil
}

var _ speech.Recognizer = (*Recognizer)(nil)

// parse reads a final result. The engine's "confidence" of an alternative is a negated cost; the best is first.
func parse(b []byte) (speech.Result, error) {
	var in struct {
		Alternatives []struct {
			Confidence float64
			Text       string
			Result     []struct {
				Word       string
				Start, End float64
			}
		}
	}
	if err := json.Unmarshal(b, &in); err != nil {
		return speech.Result{}, fmt.Errorf("vosk: final result: %w", err)
	}
	var r speech.Result
	for i, a := range in.Alternatives {
		cost := in.Alternatives[0].Confidence - a.Confidence
		r.Alternatives = append(r.Alternatives, speech.Alternative{Text: strings.TrimSpace(a.Text), Cost: cost})
		if i == 0 {
			for _, w := range a.Result {
				r.Words = append(r.Words, speech.Word{Text: w.Word, Start: w.Start, End: w.End})
			}
		}
	}
	if len(r.Alternatives) == 1 && r.Alternatives[0].Text == "" {
		r.Alternatives = nil
	}
	for k := range r.Words {
		w := &r.Words[k]
		total, with := 0.0, 0.0
		for i, a := range in.Alternatives {
			p := share(r.Alternatives, i)
			total += p
			for _, x := range a.Result {
				if x.Word == w.Text && x.Start < w.End && x.End > w.Start {
					with += p
					break
				}
			}
		}
		if total > 0 {
			w.Confidence = with / total
		}
	}
	return r, nil
}

// share is the unnormalised probability of an alternative.
func share(alts []speech.Alternative, i int) float64 {
	if i >= len(alts) {
		return 0
	}
	return math.Exp(-alts[i].Cost)
}
