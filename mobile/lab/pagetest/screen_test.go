package pagetest_test

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"

	"readback/mobile/app"
	"readback/mobile/lab/pagetest"
)

// The keys of the screen: the pad has what makes sense for the question and says what it takes, undo says what it takes back, a notice can
// be closed, single letters can be switched off, emergency is among the first stops of Tab.
func TestScreenKeys(t *testing.T) {
	heavy(t)
	s := serveWalker(t)
	b := open(t)
	st := pagetest.States()
	b.run(t, size(360, 640), navigate(s.address()), click("touch"), waitStep(st[0].Step.ID))
	order := value[[]string](t, b, `[...document.querySelectorAll('a, button, summary, input')].slice(0, 3).map(e => e.dataset.k || e.className)`)
	if len(order) < 2 || order[0] != "skip" || order[1] != "emergency" {
		t.Errorf("the first stops of Tab are %v", order)
	}
	b.run(t, click("anone"), waitStep(st[1].Step.ID), digit("1"), waitStep(st[2].Step.ID))
	// volts a.c.: no minus, no OL
	if has(t, b, "ol") || has(t, b, "k-") {
		t.Error("an a.c. reading is offered minus or OL")
	}
	b.run(t, click("k2"), click("k6"), until(`document.querySelector('[data-k="enter"]').textContent === 'Enter 26 V'`), click("unit"), until(`document.querySelector('[data-k="enter"]').textContent === 'Enter 26 mV'`),
		click("other"), until(`document.querySelector('[data-k="acant-reach"]')`), click("digits"), until(`document.querySelector('[data-k="enter"]')`), click("unit"), click("enter"), waitStep(st[3].Step.ID))
	if text := value[string](t, b, `document.querySelector('[data-k="not-that"]').textContent`); !strings.Contains(text, "26.1 V") {
		t.Errorf("undo says %q", text)
	}
	b.run(t, click("more-reply"), until(`document.querySelector('.deep svg.band')`)) // why it passed, one tap away
	// letters switched off: e is no emergency, the key on the screen is
	b.run(t, click("all"), click("shortcuts"), until(`document.querySelector('[data-k="shortcuts"]').getAttribute('aria-pressed') === 'false'`), click("close"), press("e", "KeyE", 0),
		js(`new Promise(ok => setTimeout(ok, 300))`))
	if v := view(t, b); v.State == "emergency" {
		t.Error("e is an emergency though letters are switched off")
	}
	for i := 4; i < 10; i++ {
		b.run(t, js(`[...document.querySelectorAll('#answerbox button')].find(b => b.dataset.k.startsWith('a') || b.dataset.k === 'other').click()`), js(`document.querySelector('#answerbox [data-k^="a"]')?.click()`), js(`new Promise(ok => setTimeout(ok, 450))`))
		if has(t, b, "close-notice") {
			break
		}
	}
	if has(t, b, "close-notice") {
		b.run(t, click("close-notice"), until(`!document.querySelector('[data-k="close-notice"]')`))
	} else {
		t.Error("no notice was shown")
	}
	b.run(t, click("emergency"), waitStep("emergency-gas"))
	b.clean(t)
}

// A technician doubts an answer in the replay: with and without it stand side by side, and the remark is kept under his name.
func TestDoubtInReplay(t *testing.T) {
	heavy(t)
	s := serve(t, app.Config{Version: "test"})
	b := open(t)
	b.run(t, size(360, 640), navigate(s.address()), click("touch"), until(`document.getElementById('main').dataset.step`))
	p := person(t, "igniter.open")
	for range 9 {
		v := view(t, b)
		u, err := p.Reply(v)
		if err != nil {
			t.Fatal(err)
		}
		before := s.said()
		byTouch(t, b, v, u.Meanings[0])
		b.run(t, until(`true`))
		for s.said() == before {
			b.run(t, js(`new Promise(ok => setTimeout(ok, 20))`))
		}
		b.run(t, js(`new Promise(ok => setTimeout(ok, 450))`))
	}
	b.run(t, leave, until(`document.querySelector('[data-k^="p2"]')`))
	id := value[string](t, b, `document.querySelector('[data-k^="p2"]').dataset.k.slice(1)`)
	b.run(t, click("n"+id), click("dfname"), call(input.InsertText, input.InsertTextParams{Text: "North house"}), click("keep-details"), until(`document.body.textContent.includes('North house')`))
	if name := value[string](t, b, `document.querySelector('[data-k="p`+id+`"]').getAttribute('aria-label')`); name != "Replay: North house" {
		t.Errorf("the key is called %q", name)
	}
	b.run(t, click("p"+id), click("next"), click("next"), until(`document.querySelector('.moment svg') || true`), click("doubt"), until(`document.querySelectorAll('.beside h3').length === 2`), shot(t, "doubt"),
		click("sign-by"), call(input.InsertText, input.InsertTextParams{Text: "T. Tester"}), click("sign"), until(`document.body.textContent.includes('Kept beside the record')`))
	if remarks := value[string](t, b, `fetch('/api/jobs/`+id+`/remarks').then(r => r.text())`); !strings.Contains(remarks, "T. Tester") {
		t.Errorf("kept: %s", remarks)
	}
	b.clean(t)
}
