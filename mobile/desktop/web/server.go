package web

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"time"

	"github.com/coder/websocket"

	"readback/mobile/app"
)

// server puts the hub behind HTTP and sockets.
type server struct {
	hub   *app.Hub
	mouth *mouth

	mu    sync.Mutex
	conns []*conn // in the order they came; the last one sounds
}

// conn is one open page.
type conn struct {
	out  chan []byte
	quit context.CancelFunc
}

// send queues a message. A page that cannot keep up is cut off; it comes back and asks for the state.
func (c *conn) send(msg []byte) {
	select {
	case c.out <- msg:
	default:
		c.quit()
	}
}

func (s *server) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	switch {
	case r.URL.Path == "/socket":
		s.socket(w, r)
	case strings.HasPrefix(r.URL.Path, "/voice/"), strings.HasPrefix(r.URL.Path, "/cue/"):
		data := s.mouth.wav(r.URL.Path)
		if data == nil {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", "audio/wav")
		_, _ = w.Write(data) // a page that went away needs no sound
	case r.URL.Path == "/photo" && r.Method == http.MethodPost:
		data, err := io.ReadAll(http.MaxBytesReader(w, r.Body, 16<<20))
		if err == nil {
			err = s.hub.Photo(r.URL.Query().Get("id"), data)
		}
		if err != nil {
			http.Error(w, err.Error(), http.StatusBadRequest)
		}
	default:
		body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, 64<<10))
		if err != nil {
			http.Error(w, err.Error(), http.StatusRequestEntityTooLarge)
			return
		}
		status, kind, data := s.hub.Request(r.Method, r.URL.RequestURI(), body)
		w.Header().Set("Content-Type", kind)
		if strings.HasSuffix(r.URL.Path, "/transcript") {
			w.Header().Set("Content-Security-Policy", recordPolicy)
		}
		w.WriteHeader(status)
		_, _ = w.Write(data) // a page that went away needs no answer
	}
}

// socket serves one page: text messages are calls, binary ones are frames of the camera or sound of the microphone.
func (s *server) socket(w http.ResponseWriter, r *http.Request) {
	if !s.room() {
		http.Error(w, "There are too many pages open. Close some.", http.StatusServiceUnavailable)
		return
	}
	ws, err := websocket.Accept(w, r, nil) // refuses other origins
	if err != nil {
		return // Accept has answered
	}
	defer func() { _ = ws.CloseNow() }()
	ws.SetReadLimit(1 << 20)
	ctx, cancel := context.WithCancel(r.Context())
	defer cancel()
	c := &conn{out: make(chan []byte, 256), quit: cancel}
	go func() {
		defer cancel()
		for {
			select {
			case <-ctx.Done():
				return
			case msg := <-c.out:
				wctx, done := context.WithTimeout(ctx, 5*time.Second)
				err := ws.Write(wctx, websocket.MessageText, msg)
				done()
				if err != nil {
					return
				}
			}
		}
	}()
	defer s.hub.Subscribe(c.send)()
	s.attach(c)
	defer s.detach(c)
	for {
		kind, msg, err := ws.Read(ctx)
		if err != nil {
			return
		}
		if kind == websocket.MessageBinary {
			take := s.hub.Feed
			if app.IsFrame(msg) {
				take = s.hub.Look // the message is ours alone, it need not be copied
			}
			if err := take(msg); err != nil && !errors.Is(err, app.ErrDeaf) {
				c.send(note("trouble", err.Error()))
			}
			continue
		}
		if !s.mouth.call(msg) {
			c.send(s.hub.Message(msg))
		}
	}
}

func note(kind, text string) []byte {
	data, err := json.Marshal(map[string]string{"type": kind, "text": text})
	if err != nil {
		panic("readback: a note cannot be encoded")
	}
	return data
}

// maxPages bounds the pages that are open at once.
const maxPages = 32

func (s *server) room() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return len(s.conns) < maxPages
}

func (s *server) attach(c *conn) {
	s.mu.Lock()
	s.conns = append(s.conns, c)
	s.mu.Unlock()
	s.mouth.pageCame()
}

func (s *server) detach(c *conn) {
	s.mu.Lock()
	for i, x := range s.conns {
		if x == c {
			s.conns = append(s.conns[:i], s.conns[i+1:]...)
			break
		}
	}
	left := len(s.conns)
	s.mu.Unlock()
	if left == 0 {
		s.mouth.pageWent()
	}
}

// toPage sends to the page that came last; false when there is none.
func (s *server) toPage(msg []byte) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.conns) == 0 {
		return false
	}
	s.conns[len(s.conns)-1].send(msg)
	return true
}

// spokeCall is the page's news that a sound ended: a call on the path /desk/spoke?id=…&cut=1.
func spokeCall(msg []byte) (id string, cut, ok bool) {
	var c app.Call
	if json.Unmarshal(msg, &c) != nil || !strings.HasPrefix(c.Path, "/desk/spoke?") {
		return "", false, false
	}
	u, err := url.Parse(c.Path)
	if err != nil {
		return "", false, false
	}
	return u.Query().Get("id"), u.Query().Get("cut") == "1", true
}
