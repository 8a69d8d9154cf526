package pagetest_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"readback/mobile/app"
	"readback/mobile/lab/pagetest"
)

// around shows what is around jobs, in three sizes and both lights: the first run with its hearing check, the list of commands, the job
// list with an open and a finished job, a summary to hand over, a replay, and a job deleted a moment ago.
func around(t *testing.T, f func(b *browser, l look)) {
	t.Helper()
	s := newServed(t, app.Config{Version: "test", New: newWalker, Speech: app.Speech{Open: func(app.Listener) (app.Ear, error) { return deaf{}, nil }}})
	s.prefer(`{"voice":true}`)
	s.start()
	t.Cleanup(s.kill)
	b := open(t, chromedp.Flag("use-fake-ui-for-media-stream", true), chromedp.Flag("use-fake-device-for-media-stream", true))
	show := func(name string, before ...action) {
		t.Helper()
		b.run(t, before...)
		for _, sz := range sizes {
			for _, light := range []string{"light", "dark"} {
				b.run(t, size(sz[0], sz[1]), scheme(light), js(`(document.querySelector('.hand') || document.getElementById('main')).scrollIntoView({block: 'center'})`))
				f(b, look{name, sz[0], sz[1], light})
			}
		}
	}
	has := func(k string) action { return until(`document.querySelector('[data-k^="` + k + `"]')`) }
	first := func(k string) action { return js(`document.querySelector('[data-k^="` + k + `"]').click()`) }
	st := pagetest.States()

	b.run(t, call(emulation.SetTimezoneOverride, emulation.SetTimezoneOverrideParams{TimezoneID: "UTC"}), size(360, 640), navigate(s.address()))
	show("first-run", until(`document.querySelector('[data-k="fv"]:not([disabled])')`))
	show("first-run-hearing", click("fv"), has("fa"), until(`document.getElementById('ear').dataset.light === 'on'`))
	show("first-run-meter", click("fg"), has("fd"), until(`document.querySelector('.sketch svg')`), click("fhasyes"), click("sfine"), click("frmsyes"))
	show("home-empty", click("fd"), has("touch"), js(`document.getElementById('ear').click()`), until(`document.getElementById('ear').textContent.includes('Mic off')`))

	b.run(t, click("touch"), waitStep(st[0].Step.ID), press("e", "KeyE", 0), waitStep("emergency-gas"), click("afalse-alarm"), waitStep("end"), leave, has("o"))
	b.run(t, click("touch"), waitStep(st[0].Step.ID))
	show("commands", click("all"), until(`!document.getElementById('sheet').hidden`))
	b.run(t, click("close"), leave, has("r2"))
	s.date(time.UnixMilli(1764070000000))
	show("home", chromedp.Reload(), has("r2"))
	show("home-commands", click("all"), until(`!document.getElementById('sheet').hidden`))
	show("hand-over", click("close"), first("o2"), has("hearhand"))
	show("replay", first("o2"), js(`document.querySelector('[data-k^="o2"]').parentElement.querySelector('[data-k^="p2"]').click()`), has("next"), press("ArrowRight", "ArrowRight", 0), until(`document.getElementById('main').textContent.includes('2 of 3')`))
	show("home-deleted", click("end"), has("d2"), first("d2"), has("restore"))
	b.clean(t)
}

// date gives every job the same time in the list.
func (s *served) date(at time.Time) {
	s.t.Helper()
	names, err := filepath.Glob(filepath.Join(s.dir, "jobs", "*", "journal.jsonl"))
	if err != nil || len(names) == 0 {
		s.t.Fatal("no jobs", err)
	}
	for _, n := range names {
		if err := os.Chtimes(n, at, at); err != nil {
			s.t.Fatal(err)
		}
	}
}
