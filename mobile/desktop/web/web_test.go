package web_test

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/coder/websocket"

	"readback/core/protocol"
	"readback/mobile/app"
	"readback/mobile/desktop/web"
	"readback/mobile/lab/pagetest"
)

type bench struct {
	*testing.T
	addr, first string
	next        chan string
	client      *http.Client
}

func wav(samples int) []byte {
	n := 2 * samples
	return append([]byte(fmt.Sprintf("RIFF%cxxxWAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00\x02\x00\x10\x00data%c%c\x00\x00", 0, byte(n), byte(n>>8))), make([]byte, n)...)
}

func say(_ context.Context, text, _ string, _ bool) ([]byte, error) { return wav(160), nil }

func serve(t *testing.T, change func(*web.Config)) *bench {
	t.Helper()
	l, err := web.Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	b := &bench{T: t, addr: l.Addr().String(), next: make(chan string, 8)}
	c := web.Config{Dir: t.TempDir(), Hub: app.Config{New: func(protocol.Begin) (app.Machine, error) { return pagetest.NewWalker(), nil }}, Voice: say,
		Cues: func(string) []byte { return nil }, Ready: func(a string) { b.next <- a }}
	if change != nil {
		change(&c)
	}
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- web.Serve(ctx, l, c) }()
	t.Cleanup(func() {
		cancel()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	b.first = <-b.next
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	b.client = &http.Client{Jar: jar, Timeout: 5 * time.Second}
	return b
}

// enter redeems the printed address.
func (b *bench) enter() {
	b.Helper()
	r, err := b.client.Get(b.first)
	if err != nil {
		b.Fatal(err)
	}
	defer r.Body.Close()
	if r.StatusCode != 200 {
		b.Fatalf("the printed address answered %s", r.Status)
	}
	if p := r.Header.Get("Content-Security-Policy"); p != app.Policy {
		b.Errorf("policy %q", p)
	}
}

func TestGuard(t *testing.T) {
	b := serve(t, nil)
	for _, tt := range []struct {
		name, path, host, origin string
		status                   int
	}{
		{"no cookie", "/", "", "", 403},
		{"no cookie on the API", "/api/state", "", "", 403},
		{"no cookie on the socket", "/socket", "", "", 403},
		{"wrong token", "/?t=0000", "", "", 403},
		{"another name for this machine", "/", "evil.example:" + port(b.addr), "", 421},
		{"no port", "/", "127.0.0.1", "", 421},
		{"another page", "/", "", "http://evil.example", 403},
		{"a page without origin", "/", "", "null", 403},
	} {
		t.Run(tt.name, func(t *testing.T) {
			req, err := http.NewRequest("GET", "http://"+b.addr+tt.path, nil)
			if err != nil {
				t.Fatal(err)
			}
			if tt.host != "" {
				req.Host = tt.host
			}
			if tt.origin != "" {
				req.Header.Set("Origin", tt.origin)
			}
			r, err := (&http.Client{Timeout: 5 * time.Second}).Do(req)
			if err != nil {
				t.Fatal(err)
			}
			defer r.Body.Close()
			if r.StatusCode != tt.status {
				t.Errorf("status %d, want %d", r.StatusCode, tt.status)
			}
		})
	}
	b.enter()
	fresh := &http.Client{Timeout: 5 * time.Second}
	if r, err := fresh.Get(b.first); err != nil || r.StatusCode != 403 {
		t.Errorf("a used address let in another browser: %v %v", r, err)
	}
	if second := <-b.next; second == b.first {
		t.Error("the next address is the used one")
	}
	b.enter() // the browser that has the cookie may use its old address
}

func port(addr string) string {
	_, p, err := net.SplitHostPort(addr)
	if err != nil {
		panic("web_test: " + addr)
	}
	return p
}

func TestLoopbackOnly(t *testing.T) {
	for _, addr := range []string{"0.0.0.0:0", ":0", "192.0.2.1:80", "example.org:80", "127.0.0.1"} {
		if l, err := web.Listen(addr); err == nil {
			l.Close()
			t.Errorf("%s was taken", addr)
		}
	}
}

type page struct {
	t    *testing.T
	ws   *websocket.Conn
	mu   sync.Mutex
	msgs []map[string]any
}

func (b *bench) page() *page {
	b.Helper()
	ctx, cancel := context.WithTimeout(b.Context(), 5*time.Second)
	defer cancel()
	ws, _, err := websocket.Dial(ctx, "ws://"+b.addr+"/socket", &websocket.DialOptions{HTTPClient: b.client})
	if err != nil {
		b.Fatal(err)
	}
	ws.SetReadLimit(1 << 20)
	p := &page{t: b.T, ws: ws}
	b.Cleanup(func() { _ = ws.CloseNow() })
	go func() {
		for {
			_, data, err := ws.Read(context.Background())
			if err != nil {
				return
			}
			var m map[string]any
			if err := json.Unmarshal(data, &m); err != nil {
				b.Errorf("message %q: %v", data, err)
			}
			p.mu.Lock()
			p.msgs = append(p.msgs, m)
			p.mu.Unlock()
		}
	}()
	return p
}

func (p *page) send(msg string) {
	p.t.Helper()
	if err := p.ws.Write(context.Background(), websocket.MessageText, []byte(msg)); err != nil {
		p.t.Fatal(err)
	}
}

func (p *page) wait(what string, f func(map[string]any) bool) map[string]any {
	p.t.Helper()
	for range 1000 {
		p.mu.Lock()
		for _, m := range p.msgs {
			if f(m) {
				p.mu.Unlock()
				return m
			}
		}
		p.mu.Unlock()
		time.Sleep(5 * time.Millisecond)
	}
	p.t.Fatalf("never came: %s", what)
	return nil
}

// The voice of a computer without a sound device: the page is told where the sound is, fetches it, and says when it ended.
func TestVoiceThroughPage(t *testing.T) {
	b := serve(t, func(c *web.Config) { c.Greeting = "Readback is ready." })
	b.enter()
	p := b.page()
	hello := p.wait("the greeting", func(m map[string]any) bool { return m["type"] == "sound" && m["id"] == "hello" })
	r, err := b.client.Get("http://" + b.addr + hello["url"].(string))
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if data, err := io.ReadAll(r.Body); err != nil || !strings.HasPrefix(string(data), "RIFF") {
		t.Fatalf("the greeting is %q, %v", data, err)
	}
	p.send(`{"id":1,"method":"POST","path":"/desk/spoke?id=hello"}`)
	p.send(`{"id":2,"method":"POST","path":"/api/start","body":{"voice":true}}`)
	p.wait("the reply", func(m map[string]any) bool { return m["re"] == 2.0 && m["status"] == 200.0 })
	first := p.wait("the first saying", func(m map[string]any) bool { return m["type"] == "sound" && m["id"] == "say-1" })
	p.send(`{"id":3,"method":"POST","path":"/desk/spoke?id=` + first["id"].(string) + `"}`)
	p.send("nonsense")
	p.wait("a refusal", func(m map[string]any) bool { return m["re"] == 0.0 && m["status"] == 400.0 })
	if err := p.ws.Write(context.Background(), websocket.MessageBinary, make([]byte, 3)); err != nil {
		t.Fatal(err)
	}
	if err := p.ws.Write(context.Background(), websocket.MessageBinary, []byte("RBeye\x01\r\nshort")); err != nil {
		t.Fatal(err)
	}
	p.wait("the complaint about a frame", func(m map[string]any) bool {
		return m["type"] == "trouble" && strings.Contains(fmt.Sprint(m["text"]), "camera frame: its head has 13 bytes")
	})
	p.wait("the complaint about half a sample", func(m map[string]any) bool { return m["type"] == "trouble" })
}

// player is a loudspeaker that is told what to do.
type player struct {
	mu     sync.Mutex
	played int
	err    error
}

func (p *player) Play(ctx context.Context, _ []byte) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.played++
	return p.err
}
func (p *player) Close() {}

func TestVoiceThroughDevice(t *testing.T) {
	d := &player{}
	b := serve(t, func(c *web.Config) { c.Player = d })
	b.enter()
	p := b.page()
	p.send(`{"id":1,"method":"POST","path":"/api/start","body":{"voice":true}}`)
	p.wait("the view", func(m map[string]any) bool { return m["type"] == "show" })
	for range 400 {
		d.mu.Lock()
		n := d.played
		d.mu.Unlock()
		if n > 0 {
			return
		}
		time.Sleep(5 * time.Millisecond)
	}
	t.Error("nothing was played")
}

// A device that breaks in the middle: the page is told, and speaks from then on.
func TestBrokenDevice(t *testing.T) {
	d := &player{err: fmt.Errorf("unplugged")}
	b := serve(t, func(c *web.Config) { c.Player = d })
	b.enter()
	p := b.page()
	p.send(`{"id":1,"method":"POST","path":"/api/start","body":{"voice":true}}`)
	p.wait("the news", func(m map[string]any) bool { return m["type"] == "device" })
	p.wait("the sound in the page", func(m map[string]any) bool { return m["type"] == "sound" && m["id"] == "say-1" })
}

// A voice that cannot be made is told once, and the job goes on.
func TestNoVoice(t *testing.T) {
	b := serve(t, func(c *web.Config) {
		c.Voice = func(context.Context, string, string, bool) ([]byte, error) { return nil, fmt.Errorf("not installed") }
	})
	b.enter()
	p := b.page()
	p.send(`{"id":1,"method":"POST","path":"/api/start","body":{"voice":true}}`)
	m := p.wait("the news", func(m map[string]any) bool { return m["type"] == "device" })
	if !strings.Contains(fmt.Sprint(m["device"]), "not installed") {
		t.Errorf("the news is %v", m)
	}
}
