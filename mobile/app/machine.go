package app

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"readback/core/advise"
	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/job"
	"readback/core/measure"
	"readback/core/plan"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/words"
	"readback/flows"
	"readback/flows/lexicon"
	"readback/flows/prompts"
	speech "readback/speech/grammar"
	"readback/speech/understand"
)

// library is everything that comes with the program as data, in one language. It is read once and never changes.
type library struct {
	models  []*appliance.Model
	lex     *utterance.Lexicon
	words   *words.Words
	parser  *speech.Parser
	reader  *understand.Reader
	hash    string
	studies []*study // of each model
}

var libraries = struct {
	mu sync.Mutex
	of map[string]*library // by language
}{of: map[string]*library{}}

// load gives the library of a language, the empty one being English. A language that does not come with the program is
// an error.
func load(lang string) (*library, error) {
	lang = cmp.Or(lang, "en")
	libraries.mu.Lock()
	defer libraries.mu.Unlock()
	if l := libraries.of[lang]; l != nil {
		return l, nil
	}
	w, err := prompts.Language(lang)
	if err != nil {
		return nil, fmt.Errorf("ui: reading the words: %w", err)
	}
	lex, err := lexicon.Language(lang)
	if err != nil {
		return nil, fmt.Errorf("ui: reading the phrases: %w", err)
	}
	models, err := flows.Builtin()
	if err != nil {
		return nil, fmt.Errorf("ui: reading the equipment files: %w", err)
	}
	l, err := newLibrary(w, lex, models)
	if err == nil {
		libraries.of[lang] = l
	}
	return l, err
}

func newLibrary(w *words.Words, lex *utterance.Lexicon, models []*appliance.Model) (*library, error) {
	parser := speech.New(lex)
	reader, err := understand.New(lex, parser)
	if err != nil {
		return nil, err
	}
	h := sha256.New()
	for _, m := range models {
		fmt.Fprintln(h, m.ID, m.Hash)
	}
	l := &library{models: models, lex: lex, words: w, parser: parser, reader: reader, hash: hex.EncodeToString(h.Sum(nil))[:16]}
	for range models {
		l.studies = append(l.studies, new(study))
	}
	return l, nil
}

// Language gives the words of a language, the empty one being English. One that does not come with the program is an
// error.
func Language(lang string) (*words.Words, error) {
	l, err := load(lang)
	if err != nil {
		return nil, err
	}
	return l.words, nil
}

// model finds an appliance; an empty id is the first.
func (l *library) model(id string) (*appliance.Model, error) {
	for _, m := range l.models {
		if id == "" || m.ID == id {
			return m, nil
		}
	}
	return nil, fmt.Errorf("ui: no equipment file %q", id)
}

// NewMachine makes the real machine of a job over the built-in equipment files.
func NewMachine(b protocol.Begin) (Machine, error) {
	l, err := load(b.Lang)
	if err != nil {
		return nil, err
	}
	m, err := l.model(b.Appliance)
	if err != nil {
		return nil, err
	}
	go func() { _, _ = l.study(m) }() // asked for again, and its error seen, when advice is needed
	return job.New(m, &adviser{l: l, m: m}, *l.lex, l.words, job.Options{})
}

// study is an appliance thought through: simulated under every fault it can have. It takes a second or so, once a
// program.
type study struct {
	once   sync.Once
	c      *infer.Case
	err    error
	engine atomic.Pointer[appliance.Engine] // as soon as it is compiled; the drawing does not wait for it
}

func (l *library) study(m *appliance.Model) (*infer.Case, error) {
	s := l.studies[slices.Index(l.models, m)]
	s.once.Do(func() {
		e, err := appliance.Compile(m)
		if err == nil {
			s.engine.Store(e)
			s.c, err = infer.ForAppliance(e, measure.Modest(), infer.UsualBase)
		}
		s.err = err
	})
	return s.c, s.err
}

// Prepare thinks an appliance through, so that drawings and advice need not wait for it. An empty id is the first.
func Prepare(id string) error {
	l, err := load("en")
	if err != nil {
		return err
	}
	m, err := l.model(id)
	if err != nil {
		return err
	}
	_, err = l.study(m)
	return err
}

// adviser is lazy: the first steps of a job need no advice, so that the guide speaks before the appliance is thought
// through.
type adviser struct {
	l    *library
	m    *appliance.Model
	real job.Adviser
}

func (a *adviser) Advise(q job.Query) job.Advice {
	if a.real == nil {
		a.real = a.make()
	}
	return a.real.Advise(q)
}

// Watch needs no study of the appliance.
func (a *adviser) Watch(w job.Watch) bool { return new(advise.Planned).Watch(w) }

func (a *adviser) make() job.Adviser {
	c, err := a.l.study(a.m)
	if err == nil {
		p, perr := advise.ForCase(c, a.l.words, plan.House{Call: math.NaN()})
		if perr == nil {
			return p
		}
		err = perr
	}
	panic("ui: a built-in equipment file cannot be worked: " + err.Error()) // tests hold that all of them can
}

// DataHash names the equipment files of this program.
func DataHash() (string, error) {
	l, err := load("en")
	if err != nil {
		return "", err
	}
	return l.hash, nil
}

// Parse is what a text means, as if it had been heard while the view was on the page; nil: nothing was asked.
func Parse(lang, text string, v *protocol.View) utterance.Utterance {
	var x speech.Expect
	if v != nil {
		x = expect(v)
	}
	return parse(lang, text, x)
}

func parse(lang, text string, x speech.Expect) utterance.Utterance {
	u := utterance.Utterance{Text: text, Source: "key"}
	l, err := load(lang)
	if err != nil {
		u.Fault = "unknown"
		return u
	}
	h := l.reader.Hear(strings.ToLower(text), x)
	u.Meanings, u.Fault = h.Meanings, h.Fault
	return u
}

// Asked is what a step of a job sets before it is answered.
type Asked struct {
	Class  string // of end of speech
	Expect speech.Expect
	Slot   utterance.Slot
}

// Ask gives what a job would set at a step of an appliance: everything that hearing an answer depends on.
func Ask(appliance, step string) (Asked, error) {
	m, err := NewMachine(protocol.Begin{Appliance: appliance})
	if err != nil {
		return Asked{}, err
	}
	if _, err := m.Step(protocol.Event{Type: protocol.EvBegin, Seq: 1, Begin: &protocol.Begin{Appliance: appliance}}); err != nil {
		return Asked{}, err
	}
	x, ok := m.(interface {
		Rehearse(step string) (string, utterance.Slot, error)
	})
	if !ok {
		return Asked{}, errors.New("ui: this machine cannot be put at a step")
	}
	a := Asked{}
	if a.Class, a.Slot, err = x.Rehearse(step); err != nil {
		return Asked{}, err
	}
	a.Expect = expect(m.View())
	return a, nil
}

// expect is what the step on the page can be answered with.
func expect(v *protocol.View) speech.Expect {
	var x speech.Expect
	for _, a := range v.Step.Answers {
		if a.Kind == utterance.Choice || a.ID == "ready" {
			x.Options = append(x.Options, a.ID)
			if a.Kind == utterance.Choice {
				x.Labels = append(x.Labels, speech.Label{Option: a.ID, Text: a.Text})
			}
		}
	}
	x.Options = append(x.Options, v.Step.Also...)
	x.Units = v.Step.Keypad
	x.Text = len(x.Options) == 0 && len(x.Units) == 0
	return x
}
