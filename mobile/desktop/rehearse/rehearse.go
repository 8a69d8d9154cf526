// Package rehearse plays a whole job without a person: a simulated person in front of a simulated appliance speaks with a
// synthesised voice into basement noise, the real recogniser hears it, the real hub leads the job and writes its record.
package rehearse

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"sync"

	"readback/core/appliance"
	"readback/core/heard"
	"readback/core/session"
	"readback/core/sim"
	"readback/flows/phrase"
	"readback/mobile/ui"
	"readback/speech/hear"
)

// Job is what is played.
type Job struct {
	Dir    string // where the record goes
	Model  *appliance.Model
	Engine *appliance.Engine
	Modes  []int // faults
	Habits sim.Habits
	Says   map[string][]string
	Voice  hear.Voice
	Noise  string  // "pink" or "fan"
	SNR    float64 // dB
	Seed   uint64
	Speech ui.Speech
	Out    io.Writer                // the conversation as it goes; nil for none
	Sound  func(pcm []int16)        // what the microphone hears, in order; nil for none
	Spoken func(text, level string) // what the guide says; nil for none
}

// Result is what came of it.
type Result struct {
	JobID    string
	View     session.View
	Said     int // sayings of the person
	Repeated int // said again because nothing was taken
	Objected int // taken wrongly, and taken back by the person
	Tapped   int // given up speaking: tapped
	Mended   []string
}

const (
	rate     = 16000
	chunk    = rate / 10
	level    = -26 // dBFS of the active speech, as a headset gives it
	maxTries = 4
	maxSaid  = 500
)

// Play leads the job to its end. An error means that the chain broke, not that the verdict was wrong.
func Play(j Job) (*Result, error) {
	lex, err := phrase.Load()
	if err != nil {
		return nil, err
	}
	c := &counter{}
	c.cond = sync.NewCond(&c.mu)
	host := &host{c: c, out: j.Out, spoken: j.Spoken}
	hub, err := ui.Open(ui.Config{Dir: j.Dir, Host: host, Now: c.now, Version: "rehearsal", Speech: ui.Speech{Open: func(l ui.Listener) (ui.Ear, error) {
		e, err := j.Speech.Open(l)
		if err != nil {
			c.failed(err)
			return nil, err
		}
		return counted{e, c}, nil
	}}})
	if err != nil {
		return nil, err
	}
	defer hub.Close()
	host.hub = hub
	cancel := hub.Subscribe(c.message)
	defer cancel()
	if err := c.waitReady(); err != nil {
		return nil, fmt.Errorf("rehearse: %w", err)
	}
	r := &runner{Job: j, hub: hub, c: c, lex: lex, noise: hear.Noise(j.Noise, j.Seed, 30*rate),
		p: &sim.Person{Model: j.Model, See: sim.EngineSight(j.Engine), Modes: j.Modes, Habits: j.Habits, Says: j.Says, Chance: sim.NewChance(j.Seed)}}
	if err := r.request("start", ui.Start{Appliance: j.Model.ID, Voice: ptr(true)}); err != nil {
		return nil, err
	}
	return r.lead()
}

func ptr[T any](x T) *T { return &x }

type runner struct {
	Job
	hub   *ui.Hub
	c     *counter
	lex   *heard.Lexicon
	noise []float64
	at    int // where in the noise we are
	p     *sim.Person
	res   Result
}

func (r *runner) request(path string, body any) error {
	b, err := json.Marshal(body)
	if err != nil {
		return err
	}
	if status, _, data := r.hub.Request("POST", "/api/"+path, b); status >= 300 {
		return fmt.Errorf("rehearse: %s: %s", path, data)
	}
	return nil
}

func (r *runner) state() (*ui.State, error) {
	status, _, data := r.hub.Request("GET", "/api/state", nil)
	if status != 200 {
		return nil, fmt.Errorf("rehearse: state: %s", data)
	}
	var s ui.State
	if err := json.Unmarshal(data, &s); err != nil {
		return nil, fmt.Errorf("rehearse: state: %w", err)
	}
	return &s, nil
}

// view is what the page shows once everything that was to be said is said.
func (r *runner) view() (*session.View, error) {
	for {
		s, err := r.state()
		if err != nil {
			return nil, err
		}
		if s.View == nil {
			return nil, fmt.Errorf("rehearse: no job is open")
		}
		if s.Stream == r.c.waitMessage(s.Stream) {
			return s.View, nil
		}
	}
}

func (r *runner) lead() (*Result, error) {
	for r.res.Said < maxSaid {
		v, err := r.view()
		if err != nil {
			return nil, err
		}
		r.res.View, r.res.JobID, r.res.Mended = *v, v.Job, r.p.Mended
		if v.State == "ended" {
			return &r.res, nil
		}
		u, err := r.p.Reply(v)
		if err != nil {
			return nil, err
		}
		if len(u.Meanings) == 0 {
			if err := r.listen(nil, 20); err != nil { // silence
				return nil, err
			}
			continue
		}
		m := u.Meanings[0]
		if v.State == "confirm" && v.Step.Kind != "consent" && m.ID == "right" && !r.p.Agrees(r.lex, v.Heard) {
			m = heard.Meaning{Kind: heard.Choice, ID: "different"}
		}
		if err := r.tell(v, m); err != nil {
			return nil, err
		}
	}
	return &r.res, nil
}

// tell says one thing until it is taken, as a person does: again, again, and then by the finger. What is read back wrongly is taken
// back aloud.
func (r *runner) tell(v *session.View, m heard.Meaning) error {
	for try := range maxTries {
		text := sim.Aloud(r.lex, m, try)
		if try > 0 {
			r.res.Repeated++
		}
		if err := r.say(text); err != nil {
			return err
		}
		now, err := r.view()
		if err != nil {
			return err
		}
		if moved(v, now) {
			if now.State != "confirm" && now.State != "ended" && now.Heard != nil && !now.Heard.Pending && now.State != "emergency" && v.Step.Kind != "act" && !r.p.Agrees(r.lex, now.Heard) {
				r.res.Objected++
				return r.say("scratch that")
			}
			return nil
		}
	}
	r.res.Tapped++
	text := sim.Aloud(r.lex, m, 0)
	if r.Out != nil {
		fmt.Fprintf(r.Out, "        (taps) %s\n", text)
	}
	return r.request("event", ui.EventBody{Event: session.Event{Type: session.EvSaid,
		Said: &heard.Utterance{Source: "touch", Text: text, Meanings: []heard.Meaning{m}}}})
}

// moved tells whether the answer changed what is asked.
func moved(a, b *session.View) bool {
	return a.Step.ID != b.Step.ID || a.State != b.State || a.Step.Part != b.Step.Part || b.State == "ended" || a.Step.Act != b.Step.Act ||
		len(a.Facts) != len(b.Facts) || a.Site.Power != b.Site.Power || b.Heard != nil && b.Heard.Taken != "" && b.Seq > a.Seq
}

func (r *runner) say(text string) error {
	r.res.Said++
	if r.Out != nil {
		fmt.Fprintf(r.Out, "        %s\n", text)
	}
	pcm, err := r.Voice.Say(text)
	if err != nil {
		return fmt.Errorf("rehearse: %s: %w", r.Voice.Name, err)
	}
	return r.listen(pcm, 2.4)
}

// listen feeds speech in noise, then noise alone for so many seconds, and waits until all of it was heard.
func (r *runner) listen(speech []int16, after float64) error {
	n := len(r.noise)
	turned := append(append([]float64(nil), r.noise[r.at%n:]...), r.noise[:r.at%n]...)
	clip := hear.Clip(speech, level, r.SNR, turned, 0.4, after)
	if speech == nil { // no speech has no level: the noise keeps the one it has
		clip = hear.Clip(make([]int16, rate), level, r.SNR, turned, 0, after)
	}
	r.at += len(clip)
	if r.Sound != nil {
		r.Sound(clip)
	}
	for len(clip) > 0 {
		k := min(chunk, len(clip))
		b := make([]byte, 2*k)
		for i, s := range clip[:k] {
			b[2*i], b[2*i+1] = byte(s), byte(uint16(s)>>8)
		}
		r.c.advance(100)
		if err := r.hub.Feed(b); err != nil {
			return fmt.Errorf("rehearse: feeding sound: %w", err)
		}
		if err := r.c.waitFed(); err != nil { // in step with the recogniser, so that a run repeats
			return err
		}
		clip = clip[k:]
	}
	return nil
}

// counter keeps the clock of the rehearsal and the blocks on their way.
type counter struct {
	mu    sync.Mutex
	cond  *sync.Cond
	clock int64
	up    bool
	err   error
	sent  int
	heard int
	last  int64 // number of the last message of the stream
}

func (c *counter) message(b []byte) {
	var m struct{ N int64 }
	if json.Unmarshal(b, &m) != nil {
		return
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.last = m.N
	if bytes.Contains(b, []byte(`"state":"ready"`)) {
		c.up = true
	}
	c.cond.Broadcast()
}

// waitMessage waits for the message with this number and returns the number of the last one.
func (c *counter) waitMessage(n int64) int64 {
	c.mu.Lock()
	defer c.mu.Unlock()
	for c.last < n {
		c.cond.Wait()
	}
	return c.last
}

func (c *counter) now() int64 {
	c.mu.Lock()
	defer c.mu.Unlock()
	return 1_800_000_000_000 + c.clock
}

func (c *counter) advance(ms int64) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.clock += ms
	c.sent++
}

func (c *counter) failed(err error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.err = err
	c.cond.Broadcast()
}

func (c *counter) waitReady() error {
	c.mu.Lock()
	defer c.mu.Unlock()
	for !c.up && c.err == nil {
		c.cond.Wait()
	}
	return c.err
}

func (c *counter) took(err error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.heard++
	if err != nil {
		c.err = err
	}
	c.cond.Broadcast()
}

func (c *counter) waitFed() error {
	c.mu.Lock()
	defer c.mu.Unlock()
	for c.heard < c.sent && c.err == nil {
		c.cond.Wait()
	}
	return c.err
}

// counted tells the counter of every block that was heard.
type counted struct {
	ui.Ear
	c *counter
}

func (e counted) Feed(pcm []byte, at int64) error {
	err := e.Ear.Feed(pcm, at)
	e.c.took(err)
	return err
}

// host speaks at once and in writing.
type host struct {
	hub    *ui.Hub
	c      *counter
	out    io.Writer
	spoken func(text, level string)
}

func (h *host) Say(id, text, level string, slow bool) {
	if h.out != nil {
		fmt.Fprintln(h.out, text)
	}
	if h.spoken != nil {
		h.spoken(text, level)
	}
	h.hub.Spoke(id, false)
}
func (h *host) Hush()             {}
func (h *host) Cue(string)        {}
func (h *host) TakePhoto(string)  {}
func (h *host) KeepAwake(bool)    {}
func (h *host) Vibrate(string)    {}
func (h *host) Share(name string) {}
