// Package rehearse plays a whole job without a person: a simulated person in front of a simulated appliance speaks with a
// synthesised voice into basement noise, the real recogniser hears it, the real hub leads the job and writes its record.
package e2e

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"sync"
	"time"

	"readback/core/appliance"
	"readback/core/lab/scenario"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/flows/lexicon"
	"readback/mobile/app"
	"readback/speech/lab/hearbench"
)

// Job is what is played.
type Job struct {
	Dir    string // where the record goes
	Model  *appliance.Model
	Engine *appliance.Engine
	Modes  []int // faults
	Habits scenario.Habits
	Says   map[string][]string
	Voice  hearbench.Voice
	Noise  string  // "pink" or "fan"
	SNR    float64 // dB; infinite for no noise
	Seed   uint64
	Speech app.Speech
	Out    io.Writer                // the conversation as it goes; nil for none
	Sound  func(pcm []int16)        // what the microphone hears, in order; nil for none
	Spoken func(text, level string) // what the guide says; nil for none
	Stands time.Duration            // how long the chain may stand still before that counts as broken; 0: two minutes, no block takes a second to be heard
	Trace  io.Writer                // what was made of each saying: words, rivals, meanings; nil for none
}

// Result is what came of it.
type Result struct {
	JobID    string
	View     protocol.View
	Said     int     // sayings of the person
	Repeated int     // said again because nothing was taken
	Objected int     // taken wrongly, and taken back by the person
	Tapped   int     // given up speaking: tapped
	Seconds  float64 // of sound
	Mended   []string
}

const (
	rate    = 16000
	chunk   = rate / 10
	level   = -26 // dBFS of the active speech, as a headset gives it
	think   = 0.7 // s between the guide's last word and the person's first; common practice, no source
	after   = 2.4 // s until a person who got no answer speaks again
	silence = 20  // s of a person who says nothing
	maxSaid = 400
)

// Play leads the job to its end, or to the end of ctx. An error means that the chain broke, not that the verdict was wrong.
func Play(ctx context.Context, j Job) (*Result, error) {
	lex, err := lexicon.Load()
	if err != nil {
		return nil, err
	}
	c := &counter{stands: cmp.Or(j.Stands, 2*time.Minute)}
	c.cond = sync.NewCond(&c.mu)
	defer context.AfterFunc(ctx, func() { c.failed(context.Cause(ctx)) })()
	host := &host{c: c, out: j.Out, spoken: j.Spoken}
	hub, err := app.Open(app.Config{Dir: j.Dir, Host: host, Now: c.now, Version: "rehearsal", Speech: app.Speech{Open: func(l app.Listener) (app.Ear, error) {
		e, err := j.Speech.Open(traced(l, j.Trace))
		if err != nil {
			c.failed(err)
			return nil, err
		}
		c.opened()
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
	for hub.Ear().State == "loading" { // it is open; the hub takes it in a moment
		time.Sleep(time.Millisecond)
	}
	p := &scenario.Person{Model: j.Model, See: scenario.EngineSight(j.Engine), Modes: j.Modes, Habits: j.Habits, Says: j.Says, Chance: scenario.NewChance(j.Seed)}
	r := &runner{Job: j, hub: hub, c: c, noise: hearbench.Noise(j.Noise, j.Seed, 30*rate), talk: scenario.Talk{Person: p, Lex: lex}}
	if err := r.request("start", app.Start{Appliance: j.Model.ID, Voice: ptr(true)}); err != nil {
		return nil, err
	}
	err = r.lead()
	r.res.Repeated, r.res.Objected, r.res.Tapped, r.res.Mended = r.talk.Repeated, r.talk.Objected, r.talk.Tapped, p.Mended
	r.res.Seconds = float64(r.at) / rate
	return &r.res, err
}

func ptr[T any](x T) *T { return &x }

type runner struct {
	Job
	hub   *app.Hub
	c     *counter
	noise []float64
	at    int // samples so far: where in the noise we are
	talk  scenario.Talk
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

func (r *runner) state() (*app.State, error) {
	status, _, data := r.hub.Request("GET", "/api/state", nil)
	if status != 200 {
		return nil, fmt.Errorf("rehearse: state: %s", data)
	}
	var s app.State
	if err := json.Unmarshal(data, &s); err != nil {
		return nil, fmt.Errorf("rehearse: state: %w", err)
	}
	return &s, nil
}

// view is what the page shows once everything that was to be said is said.
func (r *runner) view() (*protocol.View, error) {
	for {
		s, err := r.state()
		if err != nil {
			return nil, err
		}
		if s.View == nil {
			return nil, fmt.Errorf("rehearse: no job is open")
		}
		last, err := r.c.waitMessage(s.Stream)
		if err != nil {
			return nil, fmt.Errorf("rehearse: %w", err)
		}
		if last == s.Stream {
			return s.View, nil
		}
	}
}

func (r *runner) lead() error {
	for r.res.Said < maxSaid {
		v, err := r.view()
		if err != nil {
			return err
		}
		r.res.View, r.res.JobID = *v, v.Job
		if v.State == "ended" {
			return nil
		}
		s, err := r.talk.Next(v)
		if err != nil {
			return err
		}
		switch {
		case s.Tap:
			err = r.tap(s)
		case s.Text == "":
			err = r.listen(nil, silence)
		default:
			err = r.say(s.Text)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (r *runner) tap(s scenario.Saying) error {
	if r.Out != nil {
		fmt.Fprintf(r.Out, "        (taps) %s\n", s.Text)
	}
	return r.request("event", app.EventBody{Event: protocol.Event{Type: protocol.EvSaid,
		Said: &utterance.Utterance{Source: "touch", Text: s.Text, Meanings: []utterance.Meaning{s.Meaning}}}})
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
	return r.listen(pcm, after)
}

// listen feeds speech in noise, then noise alone for so many seconds, and waits until all of it was heard.
func (r *runner) listen(speech []int16, after float64) error {
	n := len(r.noise)
	turned := append(append([]float64(nil), r.noise[r.at%n:]...), r.noise[:r.at%n]...)
	clip := hearbench.Clip(speech, level, r.SNR, turned, think, after)
	if speech == nil { // no speech has no level: the noise keeps the one it has
		clip = hearbench.Clip(make([]int16, rate), level, r.SNR, turned, 0, after)
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
			return fmt.Errorf("rehearse: feeding sound: %w (%s)", err, r.hub.Ear().Why)
		}
		if err := r.c.waitFed(); err != nil { // in step with the recogniser, so that a run repeats
			return err
		}
		clip = clip[k:]
	}
	return nil
}
