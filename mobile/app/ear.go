package app

import (
	"errors"
	"fmt"
	"sync"
	"time"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/speech"
	"readback/speech/grammar"
)

// Speech says how hearing is done. Open loads the recogniser and runs in the background; when it is nil or fails, speech
// is off, Reason or the error says why and how to get it, and everything works by touch.
type Speech struct {
	Open   func(Listener) (Ear, error)
	Reason string
}

// Listener receives what an ear makes of the sound; its functions may be called from Feed only.
type Listener struct {
	Utterance func(utterance.Utterance) // whole, or Partial with an emergency or "quiet" in it
	Sound     func(pcm []int16)         // of a whole saying, before its Utterance; may be nil
	Complete  func()                    // what was said so far is a whole answer: time to show that it was heard; may be nil
	Partial   func(text string)         // words as they are being spoken, for the page
	Level     func(dbfs, snr float64)
}

// Ear turns sound into utterances. The hub calls its methods one at a time from one goroutine.
type Ear interface {
	Feed(pcm []byte, at int64) error // 16 kHz, mono, signed 16 bit little endian; at: ms of its end
	Class(id string)                 // end-of-speech class: choice, number, digits
	Expect(x grammar.Expect)         // what the question can be answered with
	Speaking(text string)            // the assistant's own voice begins, with these words; "" when it ended
	Close()
}

// EarView is the state of hearing as the page shows it.
type EarView struct {
	State string  `json:"state"`           // off, loading, ready
	Why   string  `json:"why,omitempty"`   // when off: why, and how to get it
	Text  string  `json:"text,omitempty"`  // words being spoken
	Level float64 `json:"level,omitempty"` // dBFS
	SNR   float64 `json:"snr,omitempty"`   // dB, 0 when unknown
	Good  string  `json:"good,omitempty"`  // quiet, good, loud, noise; empty before any sound came
	Busy  bool    `json:"busy,omitempty"`  // the guide speaks: until it ends only an emergency and "quiet" are heard
}

// ErrDeaf is returned by Feed while speech is off or still loading.
var ErrDeaf = errors.New("ui: speech is not ready")

const maxBacklog = 100 // blocks waiting for the recogniser; at 100 ms a block that is 10 s

// What hangs or fails is started again. Judgment, no source: a block of a tenth of a second is decoded in some hundredths of one, and the judge
// takes up to a second and a half.
const (
	earPatience = 30 * time.Second // for one task, where Config.Patience says nothing else
	earPause    = 2 * time.Second  // before it is started again
	earRestarts = 3                // in one run of the program
)

// earState runs the ear on a goroutine of its own, because decoding a block takes longer than the hub may be locked.
type earState struct {
	mu       sync.Mutex
	cond     *sync.Cond
	view     EarView
	tasks    []func(Ear)
	feeds    int // tasks that are sound
	gen      int // of the ear: what an earlier one that hung still says counts for nothing
	restarts int
	shut     bool
	done     chan struct{}
}

func (h *Hub) openEar() {
	e := &h.ear
	e.cond = sync.NewCond(&e.mu)
	e.done = make(chan struct{})
	if h.cfg.Speech.Open == nil {
		why := h.cfg.Speech.Reason
		if why == "" {
			why = "no recogniser was given"
		}
		e.view = EarView{State: "off", Why: why}
		close(e.done)
		return
	}
	e.view = EarView{State: "loading"}
	go h.hear(0, e.done)
}

// hear opens an ear and runs it until it is shut, fails or hangs.
func (h *Hub) hear(gen int, done chan struct{}) {
	defer close(done)
	e := &h.ear
	live := func() bool {
		e.mu.Lock()
		defer e.mu.Unlock()
		return e.gen == gen
	}
	l := Listener{
		Utterance: func(u utterance.Utterance) {
			if live() {
				h.uttered(u)
			}
		},
		Sound: func(pcm []int16) {
			if live() {
				h.sounded(pcm)
			}
		},
		Complete: func() {
			if live() {
				h.complete()
			}
		},
		Partial: func(text string) {
			if live() {
				h.partial(text)
			}
		},
		Level: func(dbfs, snr float64) {
			if live() {
				h.level(dbfs, snr)
			}
		},
	}
	ear, err := openSafely(h.cfg.Speech.Open, l)
	if err != nil {
		if live() {
			e.set(func(v *EarView) { *v = EarView{State: "off", Why: err.Error()} })
			h.tellEar()
			h.mu.Lock()
			defer h.mu.Unlock()
			_ = h.deviceLocked(protocol.Device{Kind: "speech-off", Text: err.Error()}) // the page has it already
		}
		return
	}
	defer ear.Close()
	if !live() {
		return
	}
	e.set(func(v *EarView) { *v = EarView{State: "ready"} })
	h.tellEar()
	if gen > 0 {
		h.mu.Lock()
		_ = h.deviceLocked(protocol.Device{Kind: "mic-on"}) // told by step itself
		var view *protocol.View
		if h.job != nil {
			view = h.job.machine.View()
		}
		h.mu.Unlock()
		if view != nil {
			e.expect(expect(view))
		}
	}
	e.run(h, ear, gen)
}

// Ear is the state of hearing.
func (h *Hub) Ear() EarView { return h.ear.get() }

// openSafely is open whose panic is an error.
func openSafely(open func(Listener) (Ear, error), l Listener) (ear Ear, err error) {
	defer caught(&err)
	return open(l)
}

func (e *earState) run(h *Hub, ear Ear, gen int) {
	for {
		e.mu.Lock()
		for len(e.tasks) == 0 && !e.shut && e.gen == gen {
			e.cond.Wait()
		}
		if e.shut || e.gen != gen {
			e.mu.Unlock()
			return
		}
		w := e.tasks
		e.tasks, e.feeds = nil, 0
		e.mu.Unlock()
		for _, f := range w {
			hung := time.AfterFunc(h.cfg.Patience, func() { h.deaf(gen, errEarHangs) })
			err := perform(f, ear)
			hung.Stop()
			if err != nil {
				h.deaf(gen, err)
				return
			}
		}
	}
}

// perform is a task whose panic is an error.
func perform(f func(Ear), ear Ear) (err error) {
	defer caught(&err)
	f(ear)
	return nil
}

var errEarHangs = errors.New("the recogniser does not answer")

func (e *earState) set(f func(*EarView)) {
	e.mu.Lock()
	defer e.mu.Unlock()
	f(&e.view)
}

func (e *earState) get() EarView {
	e.mu.Lock()
	defer e.mu.Unlock()
	return e.view
}

func (e *earState) do(f func(Ear)) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if e.shut || e.view.State == "off" {
		return
	}
	e.tasks = append(e.tasks, f)
	e.cond.Signal()
}

func (e *earState) listen(class string)     { e.do(func(x Ear) { x.Class(class) }) }
func (e *earState) expect(x grammar.Expect) { e.do(func(y Ear) { y.Expect(x) }) }

// close stops the ear and waits for a block being decoded.
func (e *earState) close(patience time.Duration) {
	e.mu.Lock()
	e.shut = true
	e.cond.Broadcast()
	done := e.done
	e.mu.Unlock()
	select {
	case <-done:
	case <-time.After(patience): // it hangs in the C library; the process ends next
	}
}

// Feed hands over sound: 16 kHz, mono, signed 16 bit little endian, any whole number of samples. The bytes are copied. It
// returns at once; ErrDeaf means that nobody listens.
func (h *Hub) Feed(pcm []byte) error {
	if len(pcm)%2 != 0 {
		return fmt.Errorf("ui: sound of %d bytes is not whole 16 bit samples", len(pcm))
	}
	at := h.cfg.Now()
	h.pace(len(pcm) / 2)
	block := append([]byte(nil), pcm...)
	e := &h.ear
	e.mu.Lock()
	defer e.mu.Unlock()
	switch {
	case e.shut:
		return ErrClosed
	case e.view.State != "ready":
		return ErrDeaf
	case e.feeds >= maxBacklog:
		return fmt.Errorf("ui: the recogniser is %d blocks behind; this block is dropped", e.feeds)
	}
	e.feeds++
	gen := e.gen
	e.tasks = append(e.tasks, func(x Ear) {
		if err := x.Feed(block, at); err != nil {
			h.deaf(gen, err)
		}
	})
	e.cond.Signal()
	return nil
}

// paced holds the rate of the sound against the clock.
type paced struct {
	mu      sync.Mutex
	began   time.Duration // of the stretch that is being counted
	last    time.Duration // when sound came last
	samples int
	told    bool
}

// A microphone's clock is off by less than one in a thousand; sound of another rate than it is called is off by a quarter and more.
// Judgment, no source: ten seconds without a pause are counted.
const (
	paceStretch = 10 * time.Second
	pacePause   = time.Second
	paceOff     = 0.2
)

// pace notices a microphone whose sound is of another rate than 16 kHz: words of it cannot be made out.
func (h *Hub) pace(samples int) {
	if h.cfg.Elapsed == nil {
		return
	}
	p := &h.paced
	now := h.cfg.Elapsed()
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.samples == 0 || now-p.last > pacePause {
		p.began, p.samples = now, 0
	} else {
		p.samples += samples
	}
	p.last = now
	if p.samples == 0 {
		p.samples = 1 // what came before the stretch began is not counted
	}
	took := now - p.began
	if took < paceStretch {
		return
	}
	rate := float64(p.samples) / took.Seconds()
	p.began, p.samples = now, 1
	off := rate/speech.Rate - 1
	switch {
	case (off > paceOff || off < -paceOff) && !p.told:
		p.told = true
		text := fmt.Sprintf("The microphone gives %.0f samples a second instead of %d, so words cannot be made out. Choose another one, or use touch.", rate, speech.Rate)
		h.tell(text)
		go func() { _ = h.News(protocol.Device{Kind: "mic-off", Text: text}) }() // told already
	case off < paceOff && off > -paceOff && p.told:
		p.told = false
		go func() { _ = h.News(protocol.Device{Kind: "mic-on"}) }() // told by step itself
	}
}

// deaf is told once when the recogniser fails or hangs in the middle of a job; it is started again behind that.
func (h *Hub) deaf(gen int, err error) {
	e := &h.ear
	e.mu.Lock()
	if e.gen != gen || e.shut {
		e.mu.Unlock()
		return
	}
	e.gen++
	e.restarts++
	again, next := e.restarts <= earRestarts, e.gen
	e.tasks, e.feeds = nil, 0
	why := firstLine(err.Error())
	if again {
		why += h.words.Term("app.ear-again")
	}
	e.view = EarView{State: "off", Why: why}
	e.cond.Broadcast()
	e.mu.Unlock()
	h.tellEar()
	go func() { // the caller may hold what the lock waits for
		h.mu.Lock()
		_ = h.deviceLocked(protocol.Device{Kind: "speech-off", Text: why}) // the page has it already
		h.mu.Unlock()
		if !again {
			return
		}
		time.Sleep(earPause)
		e.mu.Lock()
		if e.shut || e.gen != next {
			e.mu.Unlock()
			return
		}
		done := make(chan struct{})
		e.done, e.view = done, EarView{State: "loading"}
		e.mu.Unlock()
		h.tellEar()
		h.hear(next, done)
	}()
}

// speaking tells ear and page that the own voice begins with these words; "" when it ended.
func (h *Hub) speaking(text string) {
	h.ear.do(func(x Ear) { x.Speaking(text) })
	changed := false
	h.ear.set(func(v *EarView) { changed = v.Busy != (text != ""); v.Busy = text != "" })
	if changed {
		h.tellEar()
	}
}

func (h *Hub) tellEar() {
	v := h.ear.get()
	h.out.send(Message{Type: "ear", Ear: &v})
}

func (h *Hub) uttered(u utterance.Utterance) {
	if !u.Partial {
		h.ear.set(func(v *EarView) { v.Text = "" })
	}
	h.out.send(Message{Type: "heard", Text: u.Text})
	ev := protocol.Event{Type: protocol.EvSaid, Said: &u}
	defer h.alarm(&ev)()
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job == nil || !h.job.voice {
		return
	}
	var refused httpError
	switch err := h.stepLocked(ev); {
	case err == nil:
		h.recordLocked(&u)
	case errors.As(err, &refused): // the rest is told by step
		h.tell(h.words.Term("app.unusable", "why", err.Error()))
	}
}

// complete sounds the cue that something was heard, before it is judged.
func (h *Hub) complete() {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job != nil && h.job.voice && h.job.state != "ended" && h.job.state != "hold" {
		h.out.do(func(host Host) { host.Cue("heard") })
	}
}

func (h *Hub) partial(text string) {
	if text == "" { // the saying is over
		h.mu.Lock()
		h.saying = saying{}
		h.mu.Unlock()
	}
	changed := false
	h.ear.set(func(v *EarView) { changed = v.Text != text; v.Text = text })
	if changed {
		h.tellEar()
	}
}

// level is told ten times a second by the ear; the page gets it when it looks different.
func (h *Hub) level(dbfs, snr float64) {
	changed := false
	h.ear.set(func(v *EarView) {
		good := loudness(dbfs, snr)
		changed = good != v.Good || dbfs-v.Level > 2 || v.Level-dbfs > 2
		if changed {
			v.Level, v.SNR, v.Good = dbfs, snr, good
		}
	})
	if changed {
		h.tellEar()
	}
}

// loudness in the four words of the meter. The borders are common practice for speech at 16 bits: clipping begins near full
// scale, and below -50 dBFS a headset is too far away; under 10 dB of signal over noise every value is confirmed.
func loudness(dbfs, snr float64) string {
	switch {
	case dbfs > -3:
		return "loud"
	case snr != 0 && snr < 10:
		return "noise"
	case dbfs < -50:
		return "quiet"
	}
	return "good"
}
