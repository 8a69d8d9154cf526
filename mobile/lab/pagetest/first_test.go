package pagetest_test

import (
	"testing"

	"github.com/chromedp/chromedp"

	"readback/mobile/app"
)

// The first run: voice, the hearing check, the meter; kept over a reload, and asked once only. All of it by keys or by touch.
func TestFirstRun(t *testing.T) {
	heavy(t)
	s := newServed(t, app.Config{Version: "test", New: newWalker, Speech: app.Speech{Open: func(app.Listener) (app.Ear, error) { return deaf{}, nil }}})
	s.prefer(`{"voice":true}`)
	s.start()
	t.Cleanup(s.kill)
	b := open(t, chromedp.Flag("use-fake-ui-for-media-stream", true), chromedp.Flag("use-fake-device-for-media-stream", true))
	b.run(t, size(360, 640), navigate(s.address()), until(`document.querySelector('[data-k="fv"]:not([disabled])')`), digit("1"), until(`document.querySelector('[data-k="fa"]')`))
	b.run(t, until(`document.getElementById('ear').dataset.light === 'on'`), digit("1"), click("fhasyes"), click("sfine"))
	b.run(t, click("frmsyes"), click("fampsuA"), until(`document.querySelector('[data-k="fampsuA"]').getAttribute('aria-checked') === 'true'`), click("fd"), until(`document.querySelector('[data-k="voice"]')`))
	b.run(t, chromedp.Reload(), until(`document.querySelector('[data-k="voice"]')`)) // asked once only
	p := state(t, b).Prefs
	if !p.Done || !p.Voice || p.Meter == nil || p.Meter.RMS != "yes" || p.Meter.Amps != "uA" {
		t.Errorf("kept: %+v, meter %+v", p, p.Meter)
	}
	b.run(t, click("setup"), until(`document.querySelector('[data-k="fs"]')`), digit("3"), until(`document.querySelector('[data-k="voice"]')`)) // and skipped by a key
	b.clean(t)
}
