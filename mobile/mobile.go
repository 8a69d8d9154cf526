// Package mobile is the binding: what a phone's shell may call, and what the core may ask of the phone. Every exported
// type is in this file, so reviewing it is reviewing the interface. It holds no logic; everything behind it is an
// ordinary Go package under test without it.
//
// Rules at this border. Only shapes that the binding generator carries over: strings, bool, int, int64, []byte, pointers to the structs
// here, interfaces, and one error. Bytes that come in are copied before the call returns; the caller may reuse them. A panic
// inside becomes an error. Errors begin with a stable code and a colon; Code takes it off. Every method of Host and
// Listener returns an error, not because the core would act on one, but because an exception thrown by the shell then comes
// back as that error instead of staying pending inside native code. Close drops Host and every Listener, so that no cycle
// of Go and Java objects outlives it.
package mobile

import (
	"errors"
	"fmt"
	"runtime/debug"
	"strings"
	"sync"

	"readback/core/camera"
	"readback/mobile/app"
)

// Host is what the phone does for the core. The calls come in order, one at a time, on any thread. Each must return at once and
// must not call Close.
type Host interface {
	Say(id, text, level string, slow bool) error // speak, then call Core.Spoke(id, cut)
	Hush() error                                 // stop speaking at once
	Cue(name string) error                       // heard, accepted, ask, refused, hold, resume, timer, danger
	TakePhoto(id string) error                   // then call Core.Photo(id, jpeg)
	KeepAwake(on bool) error                     // only while a job runs
	Vibrate(pattern string) error                // short, double, long, triple
	Share(name string) error                     // offer the file to the person
}

// Listener receives the stream of messages to the page, each a JSON object.
type Listener interface {
	Message(json []byte) error
}

// Codes at the beginning of every error's text.
const (
	CodeClosed = "closed" // Close was called before
	CodeBad    = "bad"    // an argument cannot be used; nothing was changed
	CodeDeaf   = "deaf"   // speech is off or still loading; the sound was not used
	CodeFailed = "failed" // the work could not be done; the text says why
	CodePanic  = "panic"  // a mistake in the program; the text holds the stack
)

// Code returns the stable code at the beginning of an error's text, or "" when there is none.
func Code(text string) string {
	code, _, ok := strings.Cut(text, ": ")
	switch code {
	case CodeClosed, CodeBad, CodeDeaf, CodeFailed, CodePanic:
		if ok {
			return code
		}
	}
	return ""
}

// Core is the whole program behind the phone's shell. Its methods may be called from any thread.
type Core struct {
	mu    sync.Mutex
	hub   *app.Hub // nil after Close
	late  *lateModel
	stops map[*Subscription]bool
}

// Reply is the answer to a request.
type Reply struct {
	status int
	kind   string
	body   []byte
}

// Status is as in HTTP.
func (r *Reply) Status() int { return r.status }

// Type is the media type.
func (r *Reply) Type() string { return r.kind }

// Body is a copy; an empty one arrives as null.
func (r *Reply) Body() []byte { return r.body }

// Subscription is a running stream.
type Subscription struct {
	core *Core
	once sync.Once
	stop func()
}

// Stop ends the stream; one message under way may still arrive. Stopping twice is stopping once.
func (s *Subscription) Stop() (err error) {
	defer recovered(&err)
	s.once.Do(func() {
		s.stop()
		s.core.mu.Lock()
		delete(s.core.stops, s)
		s.core.mu.Unlock()
	})
	return nil
}

// Open opens the core over its private folder, which is made when missing. Lang is a language tag such as "en". Speech is loading
// until Model is called.
func Open(dir, version, lang string, host Host) (core *Core, err error) {
	defer recovered(&err)
	if dir == "" {
		return nil, coded(CodeBad, errors.New("mobile: no folder was given"))
	}
	if host == nil {
		return nil, coded(CodeBad, errors.New("mobile: no host was given"))
	}
	late := newLateModel()
	hub, err := app.Open(app.Config{Dir: dir, Version: version, Lang: lang, Host: guard{host}, Speech: app.Recogniser(late.locate)})
	if err != nil {
		return nil, coded(CodeFailed, err)
	}
	return &Core{hub: hub, late: late, stops: map[*Subscription]bool{}}, nil
}

// Request answers a request of the page for a file or a record. A request that fails has its own status; an error means that there
// is no answer at all.
func (c *Core) Request(method, path string, body []byte) (reply *Reply, err error) {
	defer recovered(&err)
	hub, err := c.open()
	if err != nil {
		return nil, err
	}
	status, kind, data := hub.Request(method, path, clone(body))
	return &Reply{status, kind, data}, nil
}

// Message answers one message of the page's port: the JSON of a call in, the JSON of its reply out.
func (c *Core) Message(call []byte) (reply []byte, err error) {
	defer recovered(&err)
	hub, err := c.open()
	if err != nil {
		return nil, err
	}
	return hub.Message(clone(call)), nil
}

// Subscribe sends every message of the stream from now on.
func (c *Core) Subscribe(listener Listener) (sub *Subscription, err error) {
	defer recovered(&err)
	if listener == nil {
		return nil, coded(CodeBad, errors.New("mobile: no listener was given"))
	}
	hub, err := c.open()
	if err != nil {
		return nil, err
	}
	s := &Subscription{core: c}
	s.stop = hub.Subscribe(func(msg []byte) {
		// A listener that fails has lost a message; the page asks for the state when it comes back.
		_ = listener.Message(msg)
	})
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.hub == nil {
		s.stop()
		return nil, errClosed
	}
	c.stops[s] = true
	return s, nil
}

// Feed takes microphone sound: 16 kHz, mono, signed 16 bit little endian, any whole number of samples. It returns at once.
func (c *Core) Feed(pcm []byte) (err error) {
	defer recovered(&err)
	hub, err := c.open()
	if err != nil {
		return err
	}
	if len(pcm)%2 != 0 {
		return coded(CodeBad, fmt.Errorf("mobile: sound of %d bytes is not whole samples", len(pcm)))
	}
	return coded(CodeFailed, hub.Feed(pcm)) // Feed copies
}

// Frame takes one upright camera frame: kind is "meter", "lamp" or "fire", pixels its brightness, one byte a pixel, rows from the top
// without padding, and for a frame in colour its Cb and its Cr after that, both at half the size in both directions, rounded up (I420). The time is that
// at which it was taken, in ns on any steady clock, the exposure is in ns too, 0 where it is not known. Frames that nobody waits for cost nothing.
func (c *Core) Frame(kind string, pixels []byte, width, height int, at, exposure int64) (err error) {
	defer recovered(&err)
	hub, err := c.open()
	if err != nil {
		return err
	}
	p, err := camera.Packed(clone(pixels), width, height, len(pixels) != width*height)
	if err != nil {
		return coded(CodeBad, fmt.Errorf("mobile: a frame: %w", err))
	}
	p.Time, p.Exposure = at, float64(exposure)/1e9
	return coded(CodeBad, hub.LookAt(kind, &p))
}

// Spoke tells that a saying ended, or was cut off.
func (c *Core) Spoke(id string, cut bool) (err error) {
	defer recovered(&err)
	hub, err := c.open()
	if err != nil {
		return err
	}
	hub.Spoke(id, cut)
	return nil
}

// Device takes news of the phone as the JSON of the protocol's Device.
func (c *Core) Device(news []byte) (err error) {
	defer recovered(&err)
	hub, err := c.open()
	if err != nil {
		return err
	}
	return coded(CodeBad, hub.Device(clone(news)))
}

// Photo takes the picture asked for, an upright JPEG.
func (c *Core) Photo(id string, jpeg []byte) (err error) {
	defer recovered(&err)
	hub, err := c.open()
	if err != nil {
		return err
	}
	return coded(CodeFailed, hub.Photo(id, clone(jpeg)))
}

// Model says where the recogniser's library and its unpacked model are, or, with an empty folder, why there is none. Only the first call
// counts. Loading goes on behind it.
func (c *Core) Model(library, dir, why string) (err error) {
	defer recovered(&err)
	if _, err := c.open(); err != nil {
		return err
	}
	c.late.set(library, dir, why)
	return nil
}

// Spare lets the second engine's opinions on readings rest, because the phone is hot or short of memory, or takes them up again. More
// readings are asked about meanwhile; alarms are heard as before.
func (c *Core) Spare(on bool) (err error) {
	defer recovered(&err)
	if _, err := c.open(); err != nil {
		return err
	}
	c.late.rest.Store(on)
	return nil
}

// Close ends everything and lets go of Host and every Listener. An open job stays on disk and is resumed by the next Open.
// Closing twice is closing once.
func (c *Core) Close() (err error) {
	defer recovered(&err)
	c.mu.Lock()
	hub := c.hub
	c.hub = nil
	var stops []*Subscription
	for s := range c.stops {
		stops = append(stops, s)
	}
	c.mu.Unlock()
	if hub == nil {
		return nil
	}
	for _, s := range stops {
		_ = s.Stop()
	}
	c.late.set("", "", "the program is closing")
	hub.Close()
	return nil
}

var errClosed = coded(CodeClosed, errors.New("mobile: the core is closed"))

// open returns the hub behind an entry.
func (c *Core) open() (*app.Hub, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.hub == nil {
		return nil, errClosed
	}
	return c.hub, nil
}

// recovered turns a panic into an error, so that a mistake costs one call and not the process.
func recovered(err *error) {
	if r := recover(); r != nil {
		*err = coded(CodePanic, fmt.Errorf("mobile: %v\n%s", r, debug.Stack()))
	}
}

// coded puts a code before an error; what is known better from the error itself wins over the code given.
func coded(code string, err error) error {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, app.ErrClosed):
		code = CodeClosed
	case errors.Is(err, app.ErrDeaf):
		code = CodeDeaf
	}
	return fmt.Errorf("%s: %w", code, err)
}

// clone copies bytes that belong to the shell and are only lent for the call.
func clone(b []byte) []byte { return append([]byte(nil), b...) }

// guard gives the phone to the hub. What a phone cannot do is lost here on purpose: the page shows every word and cue as well.
type guard struct{ host Host }

func (g guard) Say(id, text, level string, slow bool) { _ = g.host.Say(id, text, level, slow) }
func (g guard) Hush()                                 { _ = g.host.Hush() }
func (g guard) Cue(name string)                       { _ = g.host.Cue(name) }
func (g guard) TakePhoto(id string)                   { _ = g.host.TakePhoto(id) }
func (g guard) KeepAwake(on bool)                     { _ = g.host.KeepAwake(on) }
func (g guard) Vibrate(pattern string)                { _ = g.host.Vibrate(pattern) }
func (g guard) Share(name string)                     { _ = g.host.Share(name) }
