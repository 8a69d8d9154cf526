// Package web serves the page and its core on the loopback of this machine: who may come in, the socket, and the voice.
package web

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"readback/core/protocol"
	"readback/mobile/app"
)

// Config is what is served.
type Config struct {
	Dir      string // folder of the jobs
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
	s := &server{mouth: newMouth(c.Voice, c.Player, c.Cues)}
	m := s.mouth
	m.page = s.toPage
	c.Hub.Dir, c.Hub.Host = c.Dir, m
	go m.run(ctx)
	var err error
	if s.hub, err = app.Open(c.Hub); err != nil {
		_ = l.Close() // nobody was let in
		return err
	}
	defer s.hub.Close()
	g, err := newGuard(c.Dir, l.Addr())
	if err != nil {
		return fmt.Errorf("web: %w", err)
	}
	ready := c.Ready
	g.used = func(address string) {
		noteAddress(c.Dir, address)
		ready(address)
	}
	defer os.Remove(filepath.Join(c.Dir, addressName))
	if c.Greeting != "" && s.hub.Quiet() {
		m.Say("hello", c.Greeting, "info", false)
	}
	m.attach(s.hub)
	lastWords, err := app.LastWords(c.Hub.Lang)
	if err != nil {
		return err
	}
	go m.prepare(ctx, lastWords)
	// Judgment, no source: a picture of 16 MB takes a fraction of a second on the loopback, a long record a few seconds to make.
	srv := &http.Server{Handler: g.wrap(s), ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 15 * time.Second, WriteTimeout: 60 * time.Second,
		IdleTimeout: 60 * time.Second, MaxHeaderBytes: 16 << 10, ErrorLog: log.New(io.Discard, "", 0),
		BaseContext: func(net.Listener) context.Context { return ctx }}
	go func() {
		<-ctx.Done()
		stop, done := context.WithTimeout(context.Background(), 2*time.Second)
		defer done()
		_ = srv.Shutdown(stop) // open sockets end with ctx
	}()
	g.used(g.address())
	if err := srv.Serve(&limited{l, make(chan struct{}, maxConns)}); err != nil && !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("web: %w", err)
	}
	return nil
}

// maxConns bounds the connections that are open at once; those that say nothing are closed after five seconds, and make room.
const maxConns = 256

// limited closes at once what comes beyond the bound.
type limited struct {
	net.Listener
	room chan struct{}
}

func (l *limited) Accept() (net.Conn, error) {
	for {
		c, err := l.Listener.Accept()
		if err != nil {
			return nil, err
		}
		select {
		case l.room <- struct{}{}:
			return &counted{Conn: c, done: sync.OnceFunc(func() { <-l.room })}, nil
		default:
			_ = c.Close()
		}
	}
}

type counted struct {
	net.Conn
	done func()
}

func (c *counted) Close() error {
	c.done()
	return c.Conn.Close()
}

// addressName is the file with the address that lets the next browser in, for a second start to open. Only this user can read it.
const addressName = "address"

func noteAddress(dir, address string) {
	_ = os.WriteFile(filepath.Join(dir, addressName), []byte(address+"\n"), 0o600) // without it a second start says so
}

// Running is the address that lets a browser into the program that has the folder.
func Running(dir string) (string, error) {
	data, err := os.ReadFile(filepath.Join(dir, addressName))
	return strings.TrimSpace(string(data)), err
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
