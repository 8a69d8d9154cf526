package pagetest_test

import (
	"context"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"readback/core/protocol"
	"readback/mobile/app"
	"readback/mobile/desktop/web"
	"readback/mobile/lab/pagetest"
)

// chromium is the browser's path; a test without one is skipped.
func chromium(t *testing.T) string {
	t.Helper()
	for _, n := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(n); err == nil {
			return p
		}
	}
	t.Skip("no chromium on this machine: apt-get install chromium")
	return ""
}

// heavy skips what only `make page` runs. Those tests run beside each other: most of the time they wait for a browser or for sound.
func heavy(t *testing.T) {
	t.Helper()
	if os.Getenv("PAGE") == "" && os.Getenv("FIGURES") == "" {
		t.Skip("PAGE is not set: the whole browser tests are run by make page")
	}
	t.Parallel()
}

// browser starts one and records what the page asked for and what its policy forbade.
type browser struct {
	ctx context.Context

	mu       sync.Mutex
	requests []string
	errors   []string
}

func open(t *testing.T, flags ...chromedp.ExecAllocatorOption) *browser {
	t.Helper()
	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(chromium(t)), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("autoplay-policy", "no-user-gesture-required"), chromedp.Flag("hide-scrollbars", true))
	opts = append(opts, flags...)
	actx, stop := chromedp.NewExecAllocator(t.Context(), opts...)
	ctx, cancel := chromedp.NewContext(actx)
	b := &browser{ctx: ctx}
	t.Cleanup(func() { cancel(); stop() })
	if err := chromedp.Listen(ctx, func(ev any) {
		b.mu.Lock()
		defer b.mu.Unlock()
		switch ev := ev.(type) {
		case *network.EventRequestWillBeSent:
			b.requests = append(b.requests, ev.Request.URL)
		case *log.EventEntryAdded:
			b.errors = append(b.errors, ev.Entry.Text+" "+ev.Entry.URL)
		}
	}); err != nil {
		t.Fatalf("starting the browser: %v", err)
	}
	if err := chromedp.Do(ctx, call(network.Enable, network.EnableParams{}), call(log.Enable, cdp.Empty{})); err != nil {
		t.Fatalf("starting the browser: %v", err)
	}
	return b
}

type action = chromedp.Action[chromedp.Void]

// call is a protocol command as an action.
func call[P, R any](c cdp.Command[P, R], params P) action {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, c, params)
		return err
	})
}

func (b *browser) run(t *testing.T, actions ...action) {
	t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, 30*time.Second)
	defer cancel()
	if err := chromedp.Do(ctx, actions...); err != nil {
		where := ""
		if v, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](`document.getElementById('main').dataset.step + ': ' + document.getElementById('main').innerText.slice(0, 200)`)); err == nil {
			where = v
		}
		t.Fatalf("%v; the page is at %s", err, where)
	}
}

// js runs a script; until runs it until it is true. The library's own polling makes functions from text, which the page's
// policy forbids, as it should.
func js(code string) action {
	return chromedp.Evaluate[chromedp.Void](code, chromedp.EvalAwaitPromise)
}

func value[T any](t *testing.T, b *browser, code string) T {
	t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, 30*time.Second)
	defer cancel()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](code, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatalf("%s: %v", code, err)
	}
	return v
}

func until(code string) action {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		for {
			ok, err := chromedp.Evaluate[bool]("!!("+code+")")(ctx, t)
			if err != nil {
				return err
			}
			if ok {
				return nil
			}
			select {
			case <-ctx.Done():
				return fmt.Errorf("waiting until %s: %w", code, ctx.Err())
			case <-time.After(5 * time.Millisecond):
			}
		}
	})
}

// clean fails when the page asked for anything outside this machine or its policy was broken.
func (b *browser) clean(t *testing.T) {
	t.Helper()
	if out := b.outside(); len(out) > 0 {
		t.Errorf("requests that leave the machine: %v", out)
	}
	if v := b.violations(); len(v) > 0 {
		t.Errorf("policy violations: %v", v)
	}
}

func (b *browser) outside() (out []string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, u := range b.requests {
		if !strings.HasPrefix(u, "http://127.0.0.1:") && !strings.HasPrefix(u, "data:") && !strings.HasPrefix(u, "blob:") && !strings.HasPrefix(u, "chrome") && u != "about:blank" {
			out = append(out, u)
		}
	}
	return out
}

func (b *browser) violations() (out []string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, e := range b.errors {
		if strings.Contains(e, "Content Security Policy") || strings.Contains(e, "Content-Security-Policy") {
			out = append(out, e)
		}
	}
	return out
}

// served runs a server and returns an address that lets one browser in, and more of them on request.
type served struct {
	t     *testing.T
	dir   string
	addr  string
	conf  web.Config
	ready chan string
	stop  context.CancelFunc
	done  chan error
}

func silence(context.Context, string, string, bool) ([]byte, error) {
	return []byte("RIFF\x24\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00\x02\x00\x10\x00data\x00\x00\x00\x00"), nil
}

func serveWalker(t *testing.T) *served {
	return serve(t, app.Config{Version: "test", New: newWalker})
}

func newWalker(protocol.Begin) (app.Machine, error) { return pagetest.NewWalker(), nil }

func serve(t *testing.T, hub app.Config) *served {
	t.Helper()
	s := newServed(t, hub)
	s.start()
	t.Cleanup(s.kill)
	return s
}

// newServed is a server that is not started yet.
func newServed(t *testing.T, hub app.Config) *served {
	t.Helper()
	s := &served{t: t, dir: t.TempDir(), addr: "127.0.0.1:0"}
	s.prefer(`{"voice":true,"done":true}`)
	s.conf = web.Config{Dir: s.dir, Hub: hub, Voice: silence, Cues: func(string) []byte { return nil }}
	return s
}

// prefer sets the person's choices of a server that is not started yet.
func (s *served) prefer(prefs string) {
	s.t.Helper()
	if err := os.WriteFile(filepath.Join(s.dir, "prefs.json"), []byte(prefs), 0o600); err != nil {
		s.t.Fatal(err)
	}
}

func (s *served) start() {
	s.t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	l, err := web.Listen(s.addr)
	if err != nil {
		s.t.Fatal(err)
	}
	s.addr = l.Addr().(*net.TCPAddr).String()
	s.ready, s.done, s.stop = make(chan string, 8), make(chan error, 1), cancel
	s.conf.Ready = func(a string) { s.ready <- a }
	go func() { s.done <- web.Serve(ctx, l, s.conf) }()
}

func (s *served) kill() {
	s.stop()
	select {
	case <-s.done:
	case <-time.After(10 * time.Second):
		s.t.Error("the server did not stop")
	}
	s.done <- nil
}

func (s *served) address() string {
	s.t.Helper()
	select {
	case a := <-s.ready:
		return a
	case <-time.After(5 * time.Second):
		s.t.Fatal("the server gave no address")
		return ""
	}
}

func size(w, h int64) action {
	return call(emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: w, Height: h, DeviceScaleFactor: 1, Mobile: w < 1000})
}

func scheme(name string) action {
	return call(emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		{Name: "prefers-color-scheme", Value: name}, {Name: "prefers-reduced-motion", Value: "reduce"}}})
}

func shot(t *testing.T, name string) action {
	dir := filepath.Join("..", "..", "..", "build", "shots")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	return chromedp.Func(func(ctx context.Context, tg *chromedp.Target) error {
		data, err := chromedp.CaptureScreenshot()(ctx, tg)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(dir, name+".png"), data, 0o644)
	})
}

// centre scrolls a control into view and says where its middle is.
const centre = `(() => { const e = document.querySelector('[data-k="%s"]:not([disabled])'); if (!e) return []; e.scrollIntoView({block: 'center'}); const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`

// click presses the control with this stable name as a mouse would, tap as a finger would. The page may draw itself anew at any
// moment, so the place is pressed and not a node.
func click(name string) action {
	return at(name, func(x, y float64) action { return chromedp.MouseClickXY(x, y) })
}
func tap(name string) action { return at(name, chromedp.TapXY) }

func at(name string, do func(x, y float64) action) action {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		for {
			p, err := chromedp.Evaluate[[]float64](fmt.Sprintf(centre, name))(ctx, t)
			if err != nil {
				return err
			}
			if len(p) == 2 {
				_, err := do(p[0], p[1])(ctx, t)
				return err
			}
			select {
			case <-ctx.Done():
				return fmt.Errorf("waiting for the control %q: %w", name, ctx.Err())
			case <-time.After(5 * time.Millisecond):
			}
		}
	})
}

func waitStep(id string) action {
	return until("document.getElementById('main').dataset.step?.startsWith(`" + id + "`)")
}

func navigate(url string) action { return chromedp.Navigate(url) }
