package e2e

import (
	"encoding/json"
	"fmt"
	"io"
	"sync"
	"time"

	"readback/core/lab/scenario"
	"readback/core/utterance"
	"readback/mobile/app"
)

// traced writes down every utterance before it is passed on.
func traced(l app.Listener, out io.Writer) app.Listener {
	if out == nil {
		return l
	}
	next := l.Utterance
	l.Utterance = func(u utterance.Utterance) {
		part := ""
		if u.Partial {
			part = " (so far)"
		}
		fmt.Fprintf(out, "    heard%s %q at %.0f dB %s\n", part, u.Text, u.SNR, u.Fault)
		for _, m := range u.Meanings[:min(5, len(u.Meanings))] {
			fmt.Fprintf(out, "      %5.2f %s %s (%s)\n", m.Cost, m.Kind, m.ID, scenario.Words(m))
		}
		for _, r := range u.Rivals[:min(3, len(u.Rivals))] {
			fmt.Fprintf(out, "      ~ %s\n", r)
		}
		next(u)
	}
	return l
}

// counter keeps the clock of the rehearsal and the blocks on their way.
type counter struct {
	mu     sync.Mutex
	stands time.Duration
	cond   *sync.Cond
	clock  int64
	up     bool
	err    error
	sent   int
	heard  int
	last   int64 // number of the last message of the stream
}

func (c *counter) message(b []byte) {
	var m struct{ N int64 }
	if json.Unmarshal(b, &m) != nil {
		return
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.last = m.N
	c.cond.Broadcast()
}

// opened tells that the ear is there. It may be so before anybody can subscribe to the stream.
func (c *counter) opened() {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.up = true
	c.cond.Broadcast()
}

// waitMessage waits for the message with this number and returns the number of the last one.
func (c *counter) waitMessage(n int64) (last int64, err error) {
	err = c.wait("the message was not delivered", func() bool { last = c.last; return last >= n })
	return last, err
}

// wait waits until done, which is called with the lock held, or until the chain broke or stands still.
func (c *counter) wait(missing string, done func() bool) error {
	t := time.AfterFunc(c.stands, func() { c.failed(fmt.Errorf("stood still for %v: %s", c.stands, missing)) })
	defer t.Stop()
	c.mu.Lock()
	defer c.mu.Unlock()
	for !done() && c.err == nil {
		c.cond.Wait()
	}
	return c.err
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
	return c.wait("the recogniser did not open", func() bool { return c.up })
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
	return c.wait("the recogniser did not take the sound", func() bool { return c.heard >= c.sent })
}

// counted tells the counter of every block that was heard.
type counted struct {
	app.Ear
	c *counter
}

func (e counted) Feed(pcm []byte, at int64) error {
	err := e.Ear.Feed(pcm, at)
	e.c.took(err)
	return err
}

// host speaks at once and in writing.
type host struct {
	hub    *app.Hub
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
