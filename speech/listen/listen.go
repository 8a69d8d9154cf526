// Package listen is the running ear: sound in, utterances out. It finds where somebody speaks, brings the level to what the
// recogniser likes, ends a saying as soon as it is complete, and watches every partial result for an emergency.
//
// It counts time in samples, so the same sound gives the same utterances at any speed.
package listen

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"readback/core/utterance"
	"readback/speech"
	"readback/speech/audio"
	"readback/speech/grammar"
	"readback/speech/understand"
)

// Config is what an ear is made of. New and Parser are required; the callbacks run inside Feed and may be nil.
type Config struct {
	New    func() (speech.Recognizer, error) // called at the start and again after the engine failed
	Parser *grammar.Parser
	// Narrow opens a recogniser that knows only the answers to a question, the commands and the emergencies; nil: none is used.
	Narrow func(grammar.Expect) (speech.Recognizer, error)
	// Background opens a recogniser of the emergencies among common words, against which an alarm is weighed; nil: alarms stand as they are heard.
	Background func() (speech.Recognizer, error)
	Rescorer   speech.Rescorer // gives a second opinion on readings that are not clear; nil: there is none
	// Open opens a recogniser of free words, used where the rescorer hears none itself; nil: there is none.
	Open      func() (speech.Recognizer, error)
	Reader    *understand.Reader        // understands free words; nil: only the phrases of the grammar are
	Utterance func(utterance.Utterance) // whole, or Partial with an emergency or "quiet" in it
	Partial   func(text string)         // words as they are being spoken
	Complete  func(text string)         // somebody fell silent, the words so far are a whole meaning or the saying is over: time for an earcon
	Level     func(dbfs, snr float64)   // ten times a second; SNR of the last saying in dB, 0 when unknown
	Once      bool                      // hear every saying once only, without the noise reducer
	Passes    func([]grammar.Pass)      // what each hearing of a saying gave: as it was recorded, then with less noise
	Audio     func(pcm []int16, at int) // the sound of each saying as it was recorded, with the index of its first sample
}

// clean is the ratio of speech to noise in dB above which the noise reducer has nothing to do.
const clean = 25.0

// Times in samples at 16 kHz.
const (
	block     = 800                    // fed to the engine at once, 50 ms
	lead      = 45 * speech.Rate / 100 // kept before the first speech frame
	keepRing  = 3 * speech.Rate / 2    // sound kept while nobody speaks; what lies before the lead tells the noise
	longest   = 15 * speech.Rate       // a saying is ended here
	wordless  = 4 * speech.Rate        // sound without a word is dropped here
	standsFor = speech.Rate / 20       // a partial emergency must last this long: of 249 sayings of talk none was acted on
	calm      = 20.0                   // dB of speech over noise above which half a saying is believed
	echoTail  = 3 * speech.Rate / 10   // of the own voice after it ended
	steady    = 22 * speech.Rate / 100 // a complete partial result must last this long
	hush      = speech.Rate / 20       // silence and steadiness before Complete is told
	pause     = speech.Rate / 10       // silence after which a partial emergency counts as the end of what is said: judgement, no source
	bareFor   = speech.Rate / 4        // a partial emergency of one word must last this long: "smoke" may become "smoke detector"
	shortest  = 15 * speech.Rate / 100 // silence that must pass in any case before a saying ends
)

// ends is the silence in samples after which a saying is over, by what is asked for.
var ends = map[string]struct{ closed, open int }{
	"choice": {5 * speech.Rate / 10, 7 * speech.Rate / 10},
	"number": {5 * speech.Rate / 10, 12 * speech.Rate / 10},
	"digits": {20 * speech.Rate / 10, 20 * speech.Rate / 10},
}

// Ear is one running ear. Its methods must be called from one goroutine at a time.
type Ear struct {
	cfg    Config
	rec    speech.Recognizer
	vad    *detector
	class  string
	expect grammar.Expect
	clock  clock

	ring  []int16 // the last sound, for the lead and the noise before it
	noise []int16 // the sound before the saying in progress
	rest  []int16 // less than a frame
	count int     // samples taken so far

	// the saying in progress
	on       bool
	pcm      []int16 // as recorded, lead included
	first    int     // index of pcm[0]
	fed      int     // samples of pcm given to the engine
	gain     float64 // dB
	quiet    int     // samples since the last frame above the noise
	text     string  // last partial
	since    int     // index of the sample when text became what it is
	ended    bool    // the engine holds the saying for over
	chimed   bool    // Complete was told
	urgent   utterance.Meaning
	urgentAt int
	told     map[string]bool // urgent meanings already told

	narrow          narrow
	alarmGrammar    speech.Recognizer  // of commands and emergencies only; nil until the own voice was spoken into
	background      speech.Recognizer  // of alarms among common words; nil until the first alarm
	rejectedPartial string             // words so far whose alarm did not survive the background model
	lost            *utterance.Meaning // the last alarm of those; nil for none
	free            speech.Recognizer  // of free words; nil until it was needed
	openText        string             // free words of the saying; "" where none were needed
	cut             bool               // the saying was heard by cutsIn
	level           float64            // active level of speech, dBFS, remembered between sayings; 0 at first
	snr             float64
	own             voice
	meter           float64 // power of the last tenth of a second
	meterSize       int
}

// clock turns sample indexes into the caller's milliseconds.
type clock struct {
	at    int64 // ms at sample index
	index int
}

func (c clock) ms(i int) int64 { return c.at + int64(math.Round(float64(i-c.index)*1000/speech.Rate)) }

// New makes an ear. It opens one recogniser.
func New(cfg Config) (*Ear, error) {
	rec, err := cfg.New()
	if err != nil {
		return nil, fmt.Errorf("listen: opening the recogniser: %w", err)
	}
	return &Ear{cfg: cfg, rec: rec, vad: newDetector(), class: "number"}, nil
}

// Class sets how much silence ends a saying: "choice", "number" or "digits". Anything else means "number".
func (e *Ear) Class(id string) {
	if _, ok := ends[id]; !ok {
		id = "number"
	}
	e.class = id
}

// Expect sets what the question asked can be answered with; it orders meanings, it never removes one.
func (e *Ear) Expect(x grammar.Expect) { e.expect = x }

// Close frees the recogniser.
func (e *Ear) Close() { // nothing can be done about what fails here
	_ = e.rec.Close()
	if e.narrow.rec != nil {
		_ = e.narrow.rec.Close()
	}
	if e.alarmGrammar != nil {
		_ = e.alarmGrammar.Close()
	}
	if e.background != nil {
		_ = e.background.Close()
	}
	if e.free != nil {
		_ = e.free.Close()
	}
}

// Feed takes 16 kHz mono sound, signed 16 bit little endian, any whole number of samples. At is the caller's clock in ms at the
// end of it. When the engine fails it is opened once more; the saying in progress is heard again from its beginning.
func (e *Ear) Feed(pcm []byte, at int64) error {
	if len(pcm)%2 != 0 {
		return fmt.Errorf("listen: %d bytes are not whole 16 bit samples", len(pcm))
	}
	s := make([]int16, len(pcm)/2)
	for i := range s {
		s[i] = int16(uint16(pcm[2*i]) | uint16(pcm[2*i+1])<<8)
	}
	return e.FeedSamples(s, at)
}

// FeedSamples is Feed for samples.
func (e *Ear) FeedSamples(pcm []int16, at int64) error {
	e.clock = clock{at: at, index: e.count + len(e.rest) + len(pcm)}
	e.rest = append(e.rest, pcm...)
	for len(e.rest) >= frame {
		if err := e.frame(e.rest[:frame]); err != nil {
			return err
		}
		e.rest = e.rest[frame:]
	}
	e.rest = append([]int16(nil), e.rest...) // let the old array go
	return nil
}

// Flush ends the saying in progress, if any: the sound is over.
func (e *Ear) Flush() error {
	if !e.on {
		return nil
	}
	return e.finish("")
}

func (e *Ear) frame(f []int16) error {
	above := e.vad.step(f)
	e.count += frame
	e.meterStep(f)
	if !e.on {
		e.ring = append(e.ring, f...)
		if len(e.ring) > 2*keepRing {
			e.ring = append(e.ring[:0], e.ring[len(e.ring)-keepRing:]...)
		}
		if e.vad.onset() {
			return e.begin()
		}
		return nil
	}
	e.pcm = append(e.pcm, f...)
	if above {
		e.quiet, e.cut = 0, false
	} else {
		e.quiet += frame
	}
	if err := e.cutsIn(); err != nil {
		return err
	}
	if len(e.pcm)-e.fed >= block {
		if err := e.feed(); err != nil {
			return err
		}
		return e.decide()
	}
	return nil
}

// meterStep keeps the level for the page.
func (e *Ear) meterStep(f []int16) {
	e.meter += power(f)
	if e.meterSize++; e.meterSize == perSecond/10 {
		if e.cfg.Level != nil {
			e.cfg.Level(decibel(e.meter/float64(e.meterSize)), e.snr)
		}
		e.meter, e.meterSize = 0, 0
	}
}

func (e *Ear) begin() error {
	e.openText = ""
	e.on, e.fed, e.quiet, e.text, e.ended, e.chimed, e.cut, e.rejectedPartial, e.lost = true, 0, 0, "", false, false, false, "", nil
	cut := max(0, len(e.ring)-lead-len(e.vad.recent)*frame)
	e.noise = append(e.noise[:0], e.ring[:cut]...)
	e.pcm = append([]int16(nil), e.ring[cut:]...)
	e.first = e.count - len(e.pcm)
	e.ring = e.ring[:0]
	e.since, e.urgentAt, e.urgent, e.told = e.count, 0, utterance.Meaning{}, map[string]bool{}
	if e.level == 0 {
		e.level = activeLevel(e.pcm)
	}
	e.gain = gainFor(e.level)
	return nil
}

func gainFor(level float64) float64 { return math.Max(gainLeast, math.Min(gainMost, targetDB-level)) }

// feed gives the engine what it has not had, in blocks.
func (e *Ear) feed() error {
	for len(e.pcm)-e.fed >= block {
		if err := e.accept(e.pcm[e.fed : e.fed+block]); err != nil {
			return err
		}
		e.fed += block
	}
	return nil
}

func (e *Ear) accept(pcm []int16) error {
	b := make([]int16, len(pcm))
	amplify(b, pcm, e.gain)
	ended, err := e.rec.Accept(b)
	if err == nil {
		e.ended = ended
		return nil
	}
	if err := e.reopen(err); err != nil {
		return err
	}
	e.fed = 0
	b = make([]int16, len(e.pcm))
	amplify(b, e.pcm, e.gain)
	if _, err := e.rec.Accept(b); err != nil {
		return fmt.Errorf("listen: the recogniser failed twice: %w", err)
	}
	e.fed = len(e.pcm) - len(pcm) // the caller adds this block
	return nil
}

// reopen replaces a failed engine.
func (e *Ear) reopen(cause error) error {
	_ = e.rec.Close() // it failed already
	rec, err := e.cfg.New()
	if err != nil {
		return fmt.Errorf("listen: the recogniser failed and cannot be opened again: %w", errors.Join(cause, err))
	}
	e.rec = rec
	return nil
}

// decide looks at the words so far.
func (e *Ear) decide() error {
	text, err := e.rec.Partial()
	if err != nil {
		return e.reopen(err)
	}
	if text != e.text {
		e.text, e.since = text, e.count
		if e.cfg.Partial != nil {
			e.cfg.Partial(text)
		}
	}
	if err := e.watch(); err != nil {
		return err
	}
	if e.quiet >= hush && e.count-e.since >= hush && e.cfg.Parser.Complete(e.text, e.expect) {
		e.chime()
	}
	spoken := len(e.pcm)
	known := e.known()
	switch t := ends[e.class]; {
	case spoken >= longest:
		return e.finish("long")
	case !known && (e.quiet >= t.closed || spoken >= wordless):
		return e.finish("")
	case !known || e.quiet < shortest && !e.ended:
		return nil
	case e.class != "digits" && e.count-e.since >= steady && e.cfg.Parser.Complete(e.text, e.expect):
		return e.finish("")
	case e.quiet >= t.open || e.quiet >= t.closed && e.cfg.Parser.Complete(e.text, e.expect): // not a number without its unit, or a repair just begun
		return e.finish("")
	}
	return nil
}

// known tells whether the words so far hold more than the unknown word.
func (e *Ear) known() bool {
	return strings.Trim(strings.ReplaceAll(e.text, grammar.Unknown, ""), " ") != ""
}

// chime tells once that something was heard.
func (e *Ear) chime() {
	if e.chimed || e.echo(e.text) {
		return
	}
	e.chimed = true
	if e.cfg.Complete != nil {
		e.cfg.Complete(e.text)
	}
}

// watch tells an emergency or "quiet" in a partial result once it has stood long enough.
func (e *Ear) watch() error {
	m := e.cfg.Parser.Urgent(e.text)
	if m == nil || e.echo(m.Text) || e.tooQuick(m.Text) {
		e.urgent = utterance.Meaning{}
		return nil
	}
	if m.Kind != e.urgent.Kind || m.ID != e.urgent.ID || m.Doubt != e.urgent.Doubt {
		e.urgent, e.urgentAt = *m, e.count
	}
	key := told(m)
	stands := standsFor
	if m.Kind == utterance.Command { // a voice cut off for nothing does little harm
		stands = hush
	} else if !strings.Contains(m.Text, " ") {
		stands = bareFor
	}
	if m.Kind == utterance.Emergency {
		e.snr = snr(activeLevel(e.pcm[:len(e.pcm)-e.quiet]), decibel(e.vad.wide))
		if e.noisy() || e.quiet < pause && (short(m.Text) || !opens(m.Text, e.text)) {
			return nil // in noise the whole saying is waited for; somebody who goes on speaking may tell a story
		}
	}
	if e.count-e.urgentAt < stands || e.told[key] || e.rejectedPartial == e.text {
		return nil
	}
	if m.Kind == utterance.Emergency {
		survives, err := e.survivesBackground()
		if survives && err == nil {
			survives, err = e.openAgrees()
		}
		if err != nil || !survives {
			e.rejectedPartial, e.lost = e.text, m
			return err
		}
	}
	e.told[key] = true
	u := utterance.Utterance{Text: e.text, Meanings: []utterance.Meaning{*m}, Partial: true, Level: e.level}
	e.doubt(&u)
	e.emit(u)
	return nil
}

// noisy tells whether the saying, or the last one before it is over, stood too little above the noise for half a saying to be believed.
func (e *Ear) noisy() bool { return e.snr != 0 && e.snr < calm }

// short tells whether words are so few that noise makes them of something else.
func short(words string) bool { return len(strings.Fields(words)) < 3 }

// opens tells whether words are what a saying begins with, after one word at most: a cry does, a story seldom.
func opens(part, all string) bool {
	first, _, _ := strings.Cut(part, " ")
	i := slices.IndexFunc(strings.Fields(all), func(w string) bool { return strings.HasPrefix(w, first) })
	return i == 0 || i == 1
}

// lesser tells whether words are the lesser part of what was said: "the gas smell was two hundred dollars" was the gas bill. Three
// letters in ten: judgement, no source.
func lesser(part, all string) bool { return letters(part)*10 < letters(all)*3 }

func letters(words string) int { return len(strings.ReplaceAll(words, " ", "")) }

// doubt makes an emergency one that is asked about first where it is short and in noise ("it's running" beside a running fan is heard
// as worse), or where it is the lesser part of what was said.
func (e *Ear) doubt(u *utterance.Utterance) {
	for i := range u.Meanings {
		if m := &u.Meanings[i]; m.Kind == utterance.Emergency && (short(m.Text) && e.noisy() || lesser(m.Text, u.Text)) {
			m.Doubt = true
		}
	}
}

// tooQuick tells whether words are more than anybody says in the time that was spoken: a recogniser in noise makes a whole
// phrase of one short word. Talkers stay under 20 letters a second (common practice, no source).
func (e *Ear) tooQuick(words string) bool {
	return letters(words)*speech.Rate > 20*(e.count-e.quiet-e.first-lead)
}

func (e *Ear) emit(u utterance.Utterance) {
	u.Source = "voice"
	u.Start, u.End = e.clock.ms(e.first+min(lead, len(e.pcm))), e.clock.ms(e.count)
	if !u.Partial {
		u.End = e.clock.ms(e.count - e.quiet)
	}
	if e.cfg.Utterance != nil {
		e.cfg.Utterance(u)
	}
}

// finish ends the saying and tells what it means.
func (e *Ear) finish(fault string) error {
	defer e.reset()
	if rest := e.pcm[e.fed:]; len(rest) > 0 {
		if err := e.accept(rest); err != nil {
			return err
		}
	}
	res, err := e.rec.Final()
	if err != nil {
		if err := e.reopen(err); err != nil {
			return err
		}
		if res, err = e.again(); err != nil {
			return fmt.Errorf("listen: the recogniser failed twice: %w", err)
		}
	}
	if len(res.Alternatives) == 0 {
		return nil // noise
	}
	if e.known() { // what follows takes its time
		e.chime()
	}
	speechPart := e.pcm[min(len(e.pcm), lead/2):max(min(len(e.pcm), lead/2), len(e.pcm)-e.quiet)]
	level := activeLevel(speechPart)
	if math.Abs(gainFor(level)-e.gain) > 6 { // the level was guessed badly: hear it again
		e.gain = gainFor(level)
		if res, err = e.again(); err != nil {
			return err
		}
	}
	e.level = level
	e.snr = snr(level, decibel(e.vad.wide))
	passes := []grammar.Pass{{Alternatives: res.Alternatives, Weight: 1}}
	u, again := utterance.Utterance{}, !e.cfg.Once
	if !again || e.snr >= clean {
		u = e.cfg.Parser.HearAll(passes, e.expect)
		passes = e.rescored(&u, passes)
		again = again && e.doubtful(&u)
	}
	if again {
		if passes, err = e.more(res.Alternatives); err != nil {
			return err
		}
		u = e.cfg.Parser.HearAll(passes, e.expect)
		passes = e.rescored(&u, passes)
	}
	if e.cfg.Passes != nil {
		e.cfg.Passes(passes)
	}
	if e.cfg.Audio != nil {
		e.cfg.Audio(e.pcm, e.first)
	}
	u.Level, u.SNR = level, e.snr
	if m := u.Best(); m != nil && m.Kind == utterance.Reading {
		u.Sure = sure(&u)
		if len(passes) == 1 && !e.says(u.Text, m) { // one hearing, and its best words say something else: nothing stands behind it
			u.Sure = math.Min(u.Sure, Unsaid)
		}
	}
	if teenRival(u.Meanings) {
		u.Meanings[0].Doubt = true
	}
	e.doubt(&u)
	if err := e.weigh(&u); err != nil {
		return err
	}
	if err := e.listenAgain(&u); err != nil {
		return err
	}
	wordless, err := e.open(&u)
	if err != nil {
		return err
	}
	if wordless { // nobody spoke: it answers nothing, and it counts for nothing
		return nil
	}
	if e.openText == "" || e.noisy() { // elsewhere the free words told
		if err := e.secondAlarm(&u); err != nil {
			return err
		}
	}
	if u.Fault != "" {
		switch {
		case fault != "":
			u.Fault = fault
		case clipped(e.pcm) > 0.01:
			u.Fault = "clipped"
		case e.snr < 5:
			u.Fault = "loud"
		case level < -55:
			u.Fault = "quiet"
		}
	}
	if e.keep(&u) {
		e.emit(u)
	}
	return nil
}

// again hears the whole saying once more with the present gain.
func (e *Ear) again() (speech.Result, error) { return e.whole(e.rec, e.pcm) }

// more hears the saying again in other ways: with less noise; and where a reading is due among readings only, at two speeds.
// Errors in noise are mostly chance: they differ between passes, and what is right stays.
func (e *Ear) more(first []speech.Alternative) ([]grammar.Pass, error) {
	less := e.less()
	res, err := e.whole(e.rec, less)
	if err != nil {
		return nil, err
	}
	out := []grammar.Pass{{Alternatives: first, Weight: rawWeight, Quiet: e.snr >= clean}, {Alternatives: res.Alternatives, Weight: 1}}
	if e.cfg.Narrow == nil || len(e.expect.Units) == 0 {
		return out, nil
	}
	rec, err := e.only()
	if err != nil {
		return nil, err
	}
	for _, pcm := range [][]int16{less, faster(less)} {
		if res, err = e.whole(rec, pcm); err != nil {
			return nil, err
		}
		out = append(out, grammar.Pass{Alternatives: res.Alternatives, Weight: 1, ReadingsOnly: true})
	}
	return out, nil
}

// less is the saying so far with less noise.
func (e *Ear) less() []int16 {
	return audio.ReduceNoise(e.pcm, append(e.noise, e.pcm[:min(len(e.pcm), lead)]...))
}

// rawWeight is the weight of the hearing with all the noise against one with less. Chosen on the tuning half of the bench.
const rawWeight = 0.4

func (e *Ear) reset() {
	tail := min(e.quiet, lead, len(e.pcm)) // only silence: no rest of a word may lead the next saying
	e.ring = append(e.ring[:0], e.pcm[len(e.pcm)-tail:]...)
	e.on, e.pcm = false, nil
	e.vad.forget()
	if e.text != "" {
		e.text = ""
		if e.cfg.Partial != nil {
			e.cfg.Partial("")
		}
	}
}

// snr is the ratio of speech to noise in dB, from the level of both together and of the noise alone.
func snr(both, noise float64) float64 {
	p := math.Pow(10, both/10) - math.Pow(10, noise/10)
	if p <= 0 {
		return -5
	}
	return math.Max(-5, math.Min(60, decibel(p)-noise))
}
