package pagetest_test

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/base64"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"readback/core/utterance"
	"readback/mobile/app"
	"readback/mobile/lab/pagetest"
)

// leave goes back to the job list: the list of commands has the way out. A press just when the job is drawn anew may be lost; a person
// presses again.
var leave = chromedp.Func(func(ctx context.Context, tg *chromedp.Target) error {
	for n := 0; ; n++ {
		left, err := chromedp.Evaluate[bool](`(() => { const e = document.querySelector('[data-k="leave"]'); e?.click(); return !!e; })()`)(ctx, tg)
		if left || err != nil {
			return err
		}
		if n%20 == 0 {
			if _, err := press("?", "Slash", 8)(ctx, tg); err != nil {
				return err
			}
		}
		time.Sleep(50 * time.Millisecond)
	}
})

// The job list: a job is left and gone on with, deleted and brought back, replayed by keys, handed over, saved as a ZIP and printed.
func TestJobList(t *testing.T) {
	if testing.Short() {
		t.Skip("short: no browser is started")
	}
	s := newServed(t, app.Config{Version: "test", New: newWalker})
	spoken := make(chan string, 8)
	s.conf.Voice = func(ctx context.Context, text, level string, slow bool) ([]byte, error) {
		if level != "emergency" { // the last words are spoken in advance
			spoken <- text
		}
		return silence(ctx, text, level, slow)
	}
	s.start()
	t.Cleanup(s.kill)
	b := open(t)
	st := pagetest.States()
	b.run(t, size(412, 915), navigate(s.address()), click("touch"), waitStep(st[0].Step.ID), click("anone"), waitStep(st[1].Step.ID), digit("1"), waitStep(st[2].Step.ID))
	id := value[string](t, b, `fetch('/api/state').then(r => r.json()).then(s => s.view.job)`)
	here := func(k string) string { return `document.querySelector('[data-k="` + k + id + `"]')` }
	b.run(t, leave, until(here("r")), click("r"+id), waitStep(st[2].Step.ID))

	// deleted, and brought back
	b.run(t, leave, until(here("d")), click("d"+id), until(`!`+here("d")), shot(t, "list-deleted"), click("restore"), until(here("d")))

	// replayed, by keys and by buttons
	shown := func(text string) action {
		return until("document.getElementById('main').textContent.includes(`" + text + "`)")
	}
	b.run(t, click("p"+id), shown(st[0].Step.Act), press("ArrowRight", "ArrowRight", 0), shown(st[1].Step.Act), click("next"), shown(st[2].Step.Act),
		press("ArrowLeft", "ArrowLeft", 0), shown(st[1].Step.Act), shot(t, "replay"))
	b.run(t, click("hear"))
	select {
	case text := <-spoken:
		if text != st[1].Step.Act {
			t.Errorf("heard again: %q", text)
		}
	case <-time.After(10 * time.Second):
		t.Error("nothing was heard again")
	}
	b.run(t, press("Escape", "Escape", 0), until(here("p")))

	// ended, then handed over
	b.run(t, click("r"+id), waitStep(st[2].Step.ID), press("e", "KeyE", 0), waitStep("emergency-gas"), click("afalse-alarm"), waitStep("end"), leave, until(here("o")),
		click("o"+id), shown(st[11].Handover), shot(t, "list-handover"))

	// the ZIP holds the record and the journal
	packs(t, b, id, "journal.jsonl", "record.html")

	// the record is one page that prints
	record := value[string](t, b, here("t")+`.href`)
	b.run(t, navigate(record), until(`document.body.textContent.length > 200`))
	b.run(t, chromedp.Func(func(ctx context.Context, tg *chromedp.Target) error {
		r, err := cdp.Call(ctx, tg, page.PrintToPDF, page.PrintToPDFParams{})
		if err == nil && (!bytes.HasPrefix(r.Data, []byte("%PDF")) || len(r.Data) < 5000) {
			t.Errorf("printed %d bytes, no PDF of a page", len(r.Data))
		}
		return err
	}))
	b.clean(t)
}

// packs holds that the ZIP of a job has these files.
func packs(t *testing.T, b *browser, id string, files ...string) {
	t.Helper()
	packed := value[string](t, b, `fetch(document.querySelector('[data-k="z`+id+`"]').href).then(r => r.arrayBuffer()).then(a => btoa(String.fromCharCode(...new Uint8Array(a))))`)
	data, err := base64.StdEncoding.DecodeString(packed)
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range z.File {
		names = append(names, f.Name)
	}
	for _, want := range files {
		if !slices.Contains(names, want) {
			t.Errorf("the ZIP holds %v, no %s", names, want)
		}
	}
}

// The sound of an answer, kept because it was chosen in the first run, is played in the replay at its step and nowhere else, and packed.
func TestReplayHasSound(t *testing.T) {
	if testing.Short() {
		t.Skip("short: no browser is started")
	}
	ear := make(chan app.Listener, 1)
	s := serve(t, app.Config{Version: "test", New: newWalker, Speech: app.Speech{Open: func(l app.Listener) (app.Ear, error) { ear <- l; return deaf{}, nil }}})
	b := open(t, chromedp.Flag("use-fake-ui-for-media-stream", true), chromedp.Flag("use-fake-device-for-media-stream", true))
	st := pagetest.States()
	has := func(k string) string { return `document.querySelector('[data-k="` + k + `"]')` }
	b.run(t, size(412, 915), navigate(s.address()), click("setup"), click("fv"), click("fsound"), until(has("fsound")+`.getAttribute('aria-pressed') === 'true'`),
		shot(t, "keep-sound"), click("fg"), click("fd"), click("voice"), waitStep(st[0].Step.ID))
	l := <-ear
	l.Sound(make([]int16, rate/2))
	l.Utterance(utterance.Utterance{Text: "none", Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Choice, ID: "none"}}})
	b.run(t, waitStep(st[1].Step.ID))
	id := view(t, b).Job
	b.run(t, leave, until(has("p"+id)))
	b.run(t, click("p"+id), until(`document.getElementById('main').textContent.includes('1 of 2')`), until("!"+has("own")), press("ArrowRight", "ArrowRight", 0), until(has("own")), shot(t, "replay-sound"))
	b.run(t, js(`(() => { const play = HTMLMediaElement.prototype.play; window.played = new Promise(ok => {
		HTMLMediaElement.prototype.play = function () { this.addEventListener('ended', () => ok([new URL(this.src).pathname, this.duration])); return play.call(this); }; }); })()`), click("own"))
	played := value[[]any](t, b, `window.played`)
	file := "sound-" + strconv.Itoa(s.answer("none")) + ".wav"
	if want := "/api/jobs/" + id + "/sound/" + file; played[0] != want || played[1] != 0.5 {
		t.Errorf("played %v, want half a second of %s", played, want)
	}
	b.run(t, click("end"), until(has("z"+id)))
	packs(t, b, id, file)
	b.clean(t)
}
