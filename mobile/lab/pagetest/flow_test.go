package pagetest_test

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/accessibility"
	chrome "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"

	"readback/mobile/app"
	"readback/mobile/lab/pagetest"
	"readback/speech/grammar"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		g, w := strings.Split(got, "\n"), strings.Split(string(want), "\n")
		for i := range g {
			if i >= len(w) || g[i] != w[i] {
				t.Fatalf("%s, line %d: %q; look at it and run with -update", name, i+1, g[i])
			}
		}
		t.Fatalf("%s is longer than what came", name)
	}
}

// tree is the accessibility tree: role, name and state of what is not ignored, indented by depth.
func tree(t *testing.T, b *browser) string {
	t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, 20*time.Second)
	defer cancel()
	var out strings.Builder
	err := chromedp.Do(ctx, chromedp.Func(func(ctx context.Context, tg *chromedp.Target) error {
		r, err := cdp.Call(ctx, tg, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
		if err != nil {
			return err
		}
		text := func(v *accessibility.Value) string {
			if v == nil {
				return ""
			}
			return strings.Trim(string(v.Value), `"`)
		}
		nodes := map[accessibility.NodeID]*accessibility.Node{}
		for _, n := range r.Nodes {
			nodes[n.NodeID] = n
		}
		var walk func(n *accessibility.Node, depth int, named bool)
		walk = func(n *accessibility.Node, depth int, named bool) {
			role, name := text(n.Role), text(n.Name)
			shown := !n.Ignored && role != "InlineTextBox" && role != "none" && role != "generic" && !(role == "StaticText" && named)
			if shown {
				fmt.Fprintf(&out, "%s%s %s\n", strings.Repeat("  ", depth), role, name)
				depth++
				named = named || name != "" && (role == "button" || role == "heading" || role == "img")
			}
			for _, id := range n.ChildIDs {
				if c := nodes[id]; c != nil {
					walk(c, depth, named)
				}
			}
		}
		if len(r.Nodes) > 0 {
			walk(r.Nodes[0], 0, false)
		}
		return nil
	}))
	if err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// press is one key, as a keyboard sends it.
func press(k, code string, modifiers int64) action {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		for _, kind := range []input.DispatchKeyEventType{input.DispatchKeyEventTypeKeyDown, input.DispatchKeyEventTypeKeyUp} {
			if _, err := cdp.Call(ctx, t, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: kind, Key: k, Code: code, Modifiers: modifiers}); err != nil {
				return err
			}
		}
		return nil
	})
}

func digit(d string) action { return press(d, "Digit"+d, 0) }

// One browser, the states in turn: by touch, by key, a reload in the middle, a double tap, the server killed and started again, an
// emergency. This is the smoke test that runs with all others.
func TestSmoke(t *testing.T) {
	if testing.Short() {
		t.Skip("short: no browser is started")
	}
	s := serveWalker(t)
	b := open(t)
	st := pagetest.States()
	b.run(t, size(360, 640), navigate(s.address()), click("touch"), waitStep(st[0].Step.ID))
	b.run(t, click("anone"), waitStep(st[1].Step.ID)) // touch
	b.run(t, digit("1"), waitStep(st[2].Step.ID))     // key of an answer
	b.run(t, digit("2"), digit("6"), press(".", "Period", 0), digit("1"), until(`document.querySelector('.keypad output').textContent === 'Enter 26.1 V'`))
	typed := until(`document.querySelector('.keypad output').textContent === 'Enter 26.1 V'`)
	b.run(t, size(640, 360), typed, size(360, 640), typed)                               // turned and turned back
	b.run(t, chromedp.Reload(), waitStep(st[2].Step.ID), typed)                          // a reload in mid-step loses nothing, what was typed neither
	b.run(t, click("kdel"), click("k1"), typed, click("enter"), waitStep(st[3].Step.ID)) // keypad
	if v := value[string](t, b, `document.querySelector('.reply .value').textContent`); v != "26.1 V AC" {
		t.Errorf("the value shown is %q", v)
	}
	b.run(t, js(`(() => { const a = document.querySelector('[data-k="arunning"]'); a.click(); a.click(); })()`), waitStep(st[4].Step.ID))
	time.Sleep(100 * time.Millisecond)
	b.run(t, waitStep(st[4].Step.ID)) // the second tap of a double tap answers nothing
	s.kill()
	b.run(t, until(`document.body.textContent.includes('Not connected')`))
	s.start()
	b.run(t, until(`!document.body.textContent.includes('Not connected')`), until(`document.getElementById('main').dataset.step`))
	sheet, noSheet := until(`!document.getElementById('sheet').hidden`), until(`document.getElementById('sheet').hidden`)
	b.run(t, press("?", "Slash", 8), sheet, press("Escape", "Escape", 0), noSheet)
	b.run(t, press("?", "Slash", 8), sheet, click("emergency"), waitStep("emergency-gas"), noSheet) // nothing lies over what to do
	b.clean(t)
}

// A microphone that is refused: said on the page, and touch goes on.
func TestDeniedMicrophone(t *testing.T) {
	heavy(t)
	s := serve(t, app.Config{New: newWalker, Speech: app.Speech{Open: func(app.Listener) (app.Ear, error) { return deaf{}, nil }}})
	b := open(t)
	if _, err := chromedp.CallBrowser(b.ctx, chrome.SetPermission, chrome.SetPermissionParams{
		Permission: &chrome.PermissionDescriptor{Name: "microphone"}, Setting: chrome.PermissionSettingDenied}); err != nil {
		t.Fatal(err)
	}
	b.run(t, navigate(s.address()), click("touch"), waitStep("smell"), click("ear"), until(`document.getElementById('ear').textContent.includes('No mic')`), click("anone"), waitStep("w-c"))
}

// deaf is an ear that hears nothing.
type deaf struct{}

func (deaf) Feed([]byte, int64) error { return nil }
func (deaf) Class(string)             {}
func (deaf) Expect(grammar.Expect)    {}
func (deaf) Speaking(string)          {}
func (deaf) Close()                   {}
