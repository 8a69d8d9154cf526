package pagetest_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"

	"readback/core/appliance"
	"readback/core/lab/scenario"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/flows"
	"readback/mobile/app"
)

// person is somebody in front of the first built-in appliance with one fault.
func person(t *testing.T, fault string) *scenario.Person {
	t.Helper()
	models, err := flows.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	m := models[0]
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	p := &scenario.Person{Model: m, See: scenario.EngineSight(e)}
	for i := range m.Modes {
		if m.Modes[i].Full == fault {
			p.Modes = []int{i}
		}
	}
	if len(p.Modes) == 0 {
		t.Fatalf("%s has no mode %q", m.ID, fault)
	}
	return p
}

// journal is that of the last job, empty before the first.
func (s *served) journal() []byte {
	names, err := filepath.Glob(filepath.Join(s.dir, "jobs", "*", "journal.jsonl"))
	if err != nil || len(names) == 0 {
		return nil
	}
	data, err := os.ReadFile(names[len(names)-1])
	if err != nil {
		s.t.Fatal(err)
	}
	return data
}

// said counts the answers in the last job's journal.
func (s *served) said() int { return bytes.Count(s.journal(), []byte(`"type":"said"`)) }

// answer is the number of the event in which this was said; 0 for none.
func (s *served) answer(text string) int {
	return slices.IndexFunc(bytes.Split(s.journal(), []byte("\n")), func(line []byte) bool { return bytes.Contains(line, []byte(`"text":"`+text+`"`)) }) + 1
}

func view(t *testing.T, b *browser) *protocol.View {
	t.Helper()
	return state(t, b).View
}

// listened is the view once the guide has said all it had to say: then a person answers. The page may not know yet that it is about
// to speak, the core does.
func listened(t *testing.T, b *browser) *protocol.View {
	t.Helper()
	for {
		if s := state(t, b); !s.Ear.Busy {
			return s.View
		}
		time.Sleep(20 * time.Millisecond)
	}
}

func state(t *testing.T, b *browser) app.State {
	t.Helper()
	raw := value[string](t, b, `fetch('/api/state').then(r => r.text())`)
	var st app.State
	if err := json.Unmarshal([]byte(raw), &st); err != nil {
		t.Fatal(err)
	}
	return st
}

func has(t *testing.T, b *browser, name string) bool {
	t.Helper()
	return value[bool](t, b, `!!document.querySelector('[data-k="`+name+`"]')`)
}

// hands turns a meaning into presses.
type hands func(t *testing.T, b *browser, v *protocol.View, m utterance.Meaning)

// byTouch presses what a finger would.
func byTouch(t *testing.T, b *browser, v *protocol.View, m utterance.Meaning) {
	t.Helper()
	b.run(t, waitStep(v.Step.ID))
	if has(t, b, "keypad") && (m.Kind == utterance.Reading || m.Kind == utterance.Count && !has(t, b, "a"+m.Text)) {
		b.run(t, tap("keypad"), until(`document.querySelector('.keypad')`)) // the number is there before "ready" was said
	}
	switch {
	case m.Kind == utterance.Reading && m.Reading.State == measure.Over:
		b.run(t, tap("ol"))
	case m.Kind == utterance.Reading && m.Reading.State == measure.Number:
		for _, c := range m.Reading.Value.Dec.String() {
			b.run(t, tap("k"+string(c)))
		}
		enterIn(t, b, m.Reading.Value.Unit)
	case m.Kind == utterance.Count && has(t, b, "a"+m.Text):
		b.run(t, tap("a"+m.Text))
	case m.Kind == utterance.Count:
		for _, c := range m.Text {
			b.run(t, tap("k"+string(c)))
		}
		enterIn(t, b, "x")
	case m.Kind == utterance.Choice && has(t, b, "a"+m.ID), m.Kind == utterance.Command && has(t, b, "a"+m.ID):
		b.run(t, tap("a"+m.ID))
	case m.Kind == utterance.Choice && has(t, b, "other"): // an answer in words where a number is due
		b.run(t, tap("other"), tap("a"+m.ID))
	case m.Kind == utterance.Command:
		b.run(t, tap("all"), tap("c"+m.ID))
	case m.Kind == utterance.Text && has(t, b, "free"):
		b.run(t, tap("free"), call(input.InsertText, input.InsertTextParams{Text: m.Text}), tap("send-free"))
	case m.Kind == utterance.Text:
		b.run(t, tap("all"), tap("words"), call(input.InsertText, input.InsertTextParams{Text: m.Text}), tap("send"))
	default:
		t.Fatalf("step %s has no control for the answer %+v", v.Step.ID, m)
	}
}

// enterIn turns to a unit and presses the last key of the pad, which says what it takes.
func enterIn(t *testing.T, b *browser, unit string) {
	t.Helper()
	for range 4 {
		if value[string](t, b, `document.querySelector('[data-k="enter"]').dataset.unit`) == unit {
			break
		}
		b.run(t, tap("unit"), js(`new Promise(ok => requestAnimationFrame(() => requestAnimationFrame(ok)))`))
	}
	b.run(t, tap("enter"))
}

// byKey uses the keyboard only.
func byKey(t *testing.T, b *browser, v *protocol.View, m utterance.Meaning) {
	t.Helper()
	b.run(t, waitStep(v.Step.ID))
	number := func(s, u string) {
		for _, c := range s {
			switch c {
			case '-':
				b.run(t, press("-", "Minus", 0))
			case '.':
				b.run(t, press(".", "Period", 0))
			default:
				b.run(t, digit(string(c)))
			}
		}
		b.run(t, until(`document.querySelector('[data-k="enter"]')`))
		for range v.Step.Keypad {
			if value[bool](t, b, `document.querySelector('[data-k="enter"]').dataset.unit === '`+u+`'`) {
				break
			}
			b.run(t, press("ArrowDown", "ArrowDown", 0), js(`new Promise(ok => requestAnimationFrame(() => requestAnimationFrame(ok)))`))
		}
		b.run(t, press("Enter", "Enter", 0))
	}
	for i, a := range v.Step.Answers {
		if a.ID == m.ID && (m.Kind == utterance.Choice || m.Kind == utterance.Command) && i < 9 {
			shift := int64(0)
			if len(v.Step.Keypad) > 0 {
				shift = 8
			}
			b.run(t, press(fmt.Sprint(i+1), fmt.Sprintf("Digit%d", i+1), shift))
			return
		}
	}
	switch {
	case m.Kind == utterance.Reading && m.Reading.State == measure.Over:
		b.run(t, press("x", "KeyX", 0))
	case m.Kind == utterance.Reading && m.Reading.State == measure.Number:
		number(m.Reading.Value.Dec.String(), m.Reading.Value.Unit)
	case m.Kind == utterance.Count:
		number(m.Text, "x")
	case m.Kind == utterance.Command && m.ID == "ready":
		b.run(t, press(" ", "Space", 0))
	case m.Kind == utterance.Command:
		key := value[string](t, b, `(document.querySelector('[data-k="hold"]'), {'dont-know': 'i', 'cant-reach': 'c', 'skip': 'k', 'done': 'd', 'not-sure': 'u', 'person': '+', 'finish': 'z'})['`+m.ID+`'] || ''`)
		if key == "" {
			t.Fatalf("command %q has no key in this test", m.ID)
		}
		b.run(t, press(key, "", 0))
	case m.Kind == utterance.Text:
		b.run(t, press("?", "Slash", 8), js(`document.querySelector('[data-k="words"]').focus()`), call(input.InsertText, input.InsertTextParams{Text: m.Text}), enter)
	default:
		t.Fatalf("step %s has no key for the answer %+v", v.Step.ID, m)
	}
}

// enter sends the form that has the focus.
var enter = chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
	for _, kind := range []input.DispatchKeyEventType{input.DispatchKeyEventTypeKeyDown, input.DispatchKeyEventTypeKeyUp} {
		if _, err := cdp.Call(ctx, t, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: kind, Key: "Enter", Code: "Enter", Text: "\r", WindowsVirtualKeyCode: 13}); err != nil {
			return err
		}
	}
	return nil
})

// lead plays a job to its end and returns its last view.
func lead(t *testing.T, b *browser, s *served, p *scenario.Person, do hands, between func(n int)) *protocol.View {
	t.Helper()
	last := ""
	for n := range 250 {
		if between != nil {
			between(n) // may change what is asked: a program that comes back asks about the place first
		}
		v := view(t, b)
		if v == nil {
			t.Fatalf("after %d answers there is no job", n)
		}
		if v.Ended != "" || v.State == "ended" {
			t.Logf("%d answers: %s", n, v.Ended)
			return v
		}
		u, err := p.Reply(v)
		if err != nil {
			t.Fatal(err)
		}
		if len(u.Meanings) == 0 {
			t.Fatalf("step %s is answered by silence", v.Step.ID)
		}
		if v.Step.ID == last {
			time.Sleep(450 * time.Millisecond) // the same answer twice at once is a bouncing finger
		}
		last = v.Step.ID
		before := s.said()
		do(t, b, v, u.Meanings[0])
		for i := 0; s.said() == before; i++ {
			if i > 1000 {
				b.run(t, shot(t, "stuck"))
				t.Fatalf("step %s (%s) did not take the answer %+v; trouble: %s", v.Step.ID, v.State, u.Meanings[0], value[string](t, b, `document.getElementById('main').textContent.slice(0, 300)`))
			}
			time.Sleep(5 * time.Millisecond)
		}
	}
	t.Fatal("the job does not end")
	return nil
}

func realJob(t *testing.T, do hands, between func(b *browser, s *served, n int)) {
	heavy(t)
	s := serve(t, app.Config{Version: "test"})
	b := open(t)
	b.run(t, size(412, 915), navigate(s.address()), click("touch"), until(`document.getElementById('main').dataset.step`))
	v := lead(t, b, s, person(t, "igniter.open"), do, func(n int) {
		if between != nil {
			between(b, s, n)
		}
	})
	if v.Ended != "fixed" || !strings.Contains(strings.ToLower(strings.Join(v.Facts, " ")), "igniter") {
		t.Errorf("the job ended with %q, facts %v", v.Ended, v.Facts)
	}
	b.run(t, shot(t, "job-end"))
	b.clean(t)
}

// By touch, with a picture of each drawing on the way, kept for looking at.
func TestJobByTouch(t *testing.T) {
	n := 0
	realJob(t, byTouch, func(b *browser, s *served, _ int) {
		if v := view(t, b); len(v.Step.Points) > 0 && n < 12 {
			n++
			b.run(t, waitStep(v.Step.ID), until(`document.querySelector('.picture svg')`), shot(t, fmt.Sprintf("job-%02d-%s", n, v.Step.ID)))
		}
	})
}

// The keyboard does it all, also with a reload at one step and the server killed at another.
func TestJobByKeyboard(t *testing.T) {
	realJob(t, byKey, func(b *browser, s *served, n int) {
		switch n {
		case 5:
			b.run(t, chromedp.Reload(), until(`document.getElementById('main').dataset.step`))
		case 9:
			s.kill()
			b.run(t, until(`document.body.textContent.includes('Not connected')`))
			s.start()
			b.run(t, until(`!document.body.textContent.includes('Not connected')`), until(`document.getElementById('main').dataset.step`))
		}
	})
}
