package web_test

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/coder/websocket"

	"readback/core/protocol"
	"readback/mobile/app"
	"readback/mobile/desktop/web"
	"readback/mobile/lab/pagetest"
)

// What only looks uses no address up.
func TestHeadIsHarmless(t *testing.T) {
	b := serve(t, nil)
	for _, method := range []string{"HEAD", "POST", "OPTIONS"} {
		req, err := http.NewRequest(method, b.first, nil)
		if err != nil {
			t.Fatal(err)
		}
		r, err := b.client.Do(req)
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		if r.StatusCode != 405 || len(r.Cookies()) > 0 {
			t.Errorf("%s: %s", method, r.Status)
		}
	}
	b.enter()
}

// On IPv6 the printed address is one of IPv6, and works.
func TestAddressOfIPv6(t *testing.T) {
	l, err := web.Listen("[::1]:0")
	if err != nil {
		t.Skip("this machine has no IPv6 loopback:", err)
	}
	first := make(chan string, 8)
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() {
		done <- web.Serve(ctx, l, web.Config{Dir: t.TempDir(), Voice: say, Cues: func(string) []byte { return nil }, Ready: func(a string) { first <- a }})
	}()
	address := <-first
	if !strings.HasPrefix(address, "http://[::1]:") {
		t.Errorf("printed %s", address)
	}
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	r, err := (&http.Client{Jar: jar, Timeout: 5 * time.Second}).Get(address)
	if err != nil || r.StatusCode != 200 {
		t.Errorf("%v, %v", r, err)
	}
	cancel()
	if err := <-done; err != nil {
		t.Error(err)
	}
}

// A cookie is its port's and its start's.
func TestCookieIsThisStarts(t *testing.T) {
	a, b := serve(t, nil), serve(t, nil)
	a.enter()
	var cookie *http.Cookie
	req, err := http.NewRequest("GET", "http://"+a.addr+"/", nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range a.client.Jar.Cookies(req.URL) {
		cookie = c
	}
	if cookie == nil || cookie.Name != "readback-"+port(a.addr) {
		t.Fatalf("cookie %+v", cookie)
	}
	for _, name := range []string{cookie.Name, "readback-" + port(b.addr)} {
		req, err := http.NewRequest("GET", "http://"+b.addr+"/api/state", nil)
		if err != nil {
			t.Fatal(err)
		}
		req.AddCookie(&http.Cookie{Name: name, Value: cookie.Value})
		r, err := (&http.Client{Timeout: 5 * time.Second}).Do(req)
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		if r.StatusCode != 403 {
			t.Errorf("another start's cookie as %s: %s", name, r.Status)
		}
	}
}

// An open page comes back by itself after a restart on the same port; the start after that knows its first cookie no more.
func TestCookieOfTheLastStart(t *testing.T) {
	dir, addr := t.TempDir(), "127.0.0.1:0"
	var old *http.Cookie
	for start := range 3 {
		l, err := web.Listen(addr)
		if err != nil {
			t.Fatal(err)
		}
		addr = l.Addr().String()
		ctx, cancel := context.WithCancel(context.Background())
		first, done := make(chan string, 4), make(chan error, 1)
		go func() {
			done <- web.Serve(ctx, l, web.Config{Dir: dir, Voice: say, Cues: func(string) []byte { return nil }, Ready: func(a string) { first <- a }})
		}()
		address := <-first
		if start == 0 {
			jar, err := cookiejar.New(nil)
			if err != nil {
				t.Fatal(err)
			}
			r, err := (&http.Client{Jar: jar, Timeout: 5 * time.Second}).Get(address)
			if err != nil {
				t.Fatal(err)
			}
			r.Body.Close()
			old = jar.Cookies(r.Request.URL)[0]
		}
		req, err := http.NewRequest("GET", "http://"+addr+"/api/state", nil)
		if err != nil {
			t.Fatal(err)
		}
		req.AddCookie(old)
		r, err := (&http.Client{Timeout: 5 * time.Second}).Do(req)
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		if want := []int{200, 200, 403}[start]; r.StatusCode != want {
			t.Errorf("start %d: %s, want %d", start+1, r.Status, want)
		}
		if start == 1 && len(r.Cookies()) != 1 {
			t.Error("the last start's cookie is not changed for a new one")
		}
		cancel()
		if err := <-done; err != nil {
			t.Fatal(err)
		}
	}
}

// Connections beyond the bound are closed at once, and one more request goes through when those that say nothing were dropped.
func TestSilentConnections(t *testing.T) {
	b := serve(t, nil)
	var open []net.Conn
	defer func() {
		for _, c := range open {
			_ = c.Close()
		}
	}()
	for range 400 {
		c, err := net.Dial("tcp", b.addr)
		if err != nil {
			t.Fatal(err)
		}
		open = append(open, c)
	}
	began := time.Now()
	for {
		r, err := b.client.Get(b.first)
		if err == nil {
			r.Body.Close()
			break
		}
		if time.Since(began) > 20*time.Second {
			t.Fatalf("nobody gets in beside silent connections: %v", err)
		}
		time.Sleep(100 * time.Millisecond)
	}
}

// A request whose body never comes is let go.
func TestStalledBody(t *testing.T) {
	if testing.Short() {
		t.Skip("waits for a read time-out of 15 s")
	}
	t.Parallel()
	b := serve(t, nil)
	b.enter()
	req, err := http.NewRequest("GET", "http://"+b.addr+"/", nil)
	if err != nil {
		t.Fatal(err)
	}
	c, err := net.Dial("tcp", b.addr)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	k := b.client.Jar.Cookies(req.URL)[0]
	if _, err := fmt.Fprintf(c, "POST /api/event HTTP/1.1\r\nHost: %s\r\nCookie: %s=%s\r\nContent-Length: 1000\r\n\r\n{", b.addr, k.Name, k.Value); err != nil {
		t.Fatal(err)
	}
	if err := c.SetReadDeadline(time.Now().Add(40 * time.Second)); err != nil {
		t.Fatal(err)
	}
	if _, err := io.ReadAll(c); err != nil {
		t.Errorf("the connection is held: %v", err)
	}
}

// Pages beyond the bound are refused with the reason.
func TestTooManyPages(t *testing.T) {
	b := serve(t, nil)
	b.enter()
	refused := 0
	for range 40 {
		ws, r, err := websocket.Dial(t.Context(), "ws://"+b.addr+"/socket", &websocket.DialOptions{HTTPClient: b.client})
		if err != nil {
			if r == nil || r.StatusCode != 503 {
				t.Fatal(err)
			}
			refused++
			continue
		}
		defer func() { _ = ws.CloseNow() }()
	}
	if refused < 4 || refused > 12 {
		t.Errorf("%d of 40 pages were refused", refused)
	}
}

// A second start on the folder is told, and finds the address of the first.
func TestSecondStart(t *testing.T) {
	dir := t.TempDir()
	b := serve(t, func(c *web.Config) { c.Dir = dir })
	l, err := web.Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	err = web.Serve(t.Context(), l, web.Config{Dir: dir, Voice: say, Cues: func(string) []byte { return nil }, Ready: func(string) { t.Error("a second program serves the folder") }})
	if !errors.Is(err, app.ErrRunning) {
		t.Fatalf("a second start: %v", err)
	}
	address, err := web.Running(dir)
	if err != nil || address != b.first {
		t.Fatalf("%q, %v, want %q", address, err, b.first)
	}
	b.enter()
	if next, err := web.Running(dir); err != nil || next != <-b.next {
		t.Errorf("after that address was used: %q, %v", next, err)
	}
}

// urgent says everything as an emergency.
type urgent struct{ app.Machine }

func (u urgent) Step(ev protocol.Event) ([]protocol.Effect, error) {
	effects, err := u.Machine.Step(ev)
	for i := range effects {
		effects[i].Level = "emergency"
	}
	return effects, err
}

// A voice that hangs is told and costs time only; an emergency is heard all the same, in what was spoken before.
func TestHangingVoice(t *testing.T) {
	var hang atomic.Bool
	b := serve(t, func(c *web.Config) {
		c.Voice = func(ctx context.Context, text, level string, slow bool) ([]byte, error) {
			if hang.Load() {
				<-ctx.Done()
				return nil, ctx.Err()
			}
			return wav(100 + len(text)), nil
		}
		c.Cues = func(string) []byte { return wav(10) }
		c.Hub.New = func(protocol.Begin) (app.Machine, error) { return urgent{pagetest.NewWalker()}, nil }
	})
	b.enter()
	ws, _, err := websocket.Dial(t.Context(), "ws://"+b.addr+"/socket", &websocket.DialOptions{HTTPClient: b.client})
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = ws.CloseNow() }()
	time.Sleep(300 * time.Millisecond) // the last words are spoken in advance
	hang.Store(true)
	r, err := b.client.Post("http://"+b.addr+"/api/event", "application/json", strings.NewReader(
		`{"step":"","event":{"at":0,"type":"said","said":{"text":"x","source":"touch","meanings":[{"kind":"emergency","id":"gas","cost":0}]}}}`))
	if err != nil {
		t.Fatal(err)
	}
	r.Body.Close()
	ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
	defer cancel()
	told, heard := false, false
	for !told || !heard {
		_, data, err := ws.Read(ctx)
		if err != nil {
			t.Fatalf("told %v, heard %v: %v", told, heard, err)
		}
		told = told || strings.Contains(string(data), "The voice cannot speak")
		heard = heard || strings.Contains(string(data), `"url":"/voice/`)
	}
}
