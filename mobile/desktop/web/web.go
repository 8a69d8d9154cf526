// Package web serves the page and its core on the loopback of this machine: who may come in, the socket, and the voice.
package web

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"time"

	"readback/core/protocol"
	"readback/mobile/app"
)

// Config is what is served.
type Config struct {
	Dir      string // folder of the jobs and of the page's key
	Hub      app.Config
	Voice    Voice
	Player   Player                   // nil: the page plays
	Cues     func(name string) []byte // WAV of an earcon, nil when there is none
	Greeting string                   // said when the program starts; empty: nothing
	Ready    func(address string)     // called with every new address that lets one browser in
}

// Listen takes the address when it is a loopback one; when its port is in use, any free port.
func Listen(addr string) (net.Listener, error) {
	host, _, err := net.SplitHostPort(addr)
	if err != nil {
		return nil, fmt.Errorf("web: address %q: %w", addr, err)
	}
	if ip := net.ParseIP(host); ip == nil || !ip.IsLoopback() {
		return nil, fmt.Errorf("web: address %q: the page is served on this machine only: 127.0.0.1 and a port", addr)
	}
	l, err := net.Listen("tcp", addr)
	if err != nil {
		l, err = net.Listen("tcp", net.JoinHostPort(host, "0"))
	}
	if err != nil {
		return nil, fmt.Errorf("web: %w", err)
	}
	return l, nil
}

// Serve serves until ctx is done.
func Serve(ctx context.Context, l net.Listener, c Config) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	if err := os.MkdirAll(c.Dir, 0o700); err != nil {
		return fmt.Errorf("web: folder of the jobs: %w", err)
	}
	_, port, err := net.SplitHostPort(l.Addr().String())
	if err != nil {
		return fmt.Errorf("web: %w", err)
	}
	g, err := newGuard(c.Dir, port)
	if err != nil {
		return fmt.Errorf("web: %w", err)
	}
	g.used = c.Ready
	s := &server{mouth: newMouth(c.Voice, c.Player, c.Cues)}
	m := s.mouth
	m.page = s.toPage
	c.Hub.Dir, c.Hub.Host = c.Dir, m
	go m.run(ctx)
	if c.Greeting != "" {
		m.Say("hello", c.Greeting, "info", false)
	}
	if s.hub, err = app.Open(c.Hub); err != nil {
		return err
	}
	defer s.hub.Close()
	m.attach(s.hub)
	srv := &http.Server{Handler: g.wrap(s), ReadHeaderTimeout: 5 * time.Second, BaseContext: func(net.Listener) context.Context { return ctx }}
	go func() {
		<-ctx.Done()
		stop, done := context.WithTimeout(context.Background(), 2*time.Second)
		defer done()
		_ = srv.Shutdown(stop) // open sockets end with ctx
	}()
	c.Ready(g.address())
	if err := srv.Serve(l); err != nil && !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("web: %w", err)
	}
	return nil
}

// attach gives the mouth the hub that wants to know when a saying ended. The hub is opened with the mouth as its host, so it
// comes second.
func (m *mouth) attach(hub *app.Hub) {
	m.mu.Lock()
	m.hub = hub
	m.mu.Unlock()
}

func (m *mouth) theHub() *app.Hub {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.hub
}

// spoke tells the hub; what ended before the hub was there is the greeting, which nobody waits for.
func (m *mouth) spoke(id string, cut bool) {
	if h := m.theHub(); h != nil {
		h.Spoke(id, cut)
	}
}

func (m *mouth) failed(reason string) {
	if h := m.theHub(); h != nil {
		_ = h.News(protocol.Device{Kind: "sound-off", Text: reason}) // a job that cannot be written tells so itself
	}
}
