package pagetest_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"readback/core/journal"
	"readback/core/lab/metric"
	"readback/core/lab/render"
	"readback/core/lab/scenario"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/mobile/app"
)

// fakeCamera is the browser's fake one: it plays a file of JPEG pictures at 30 a second, over and over, from its beginning
// whenever the page opens it.
type fakeCamera struct{ file string }

func newFakeCamera(t *testing.T) *fakeCamera {
	t.Helper()
	c := &fakeCamera{filepath.Join(t.TempDir(), "camera.mjpeg")}
	c.show(t, grey(make([]byte, 640*480), 640, 480))
	return c
}

func (c *fakeCamera) flags() []chromedp.ExecAllocatorOption {
	return []chromedp.ExecAllocatorOption{chromedp.Flag("use-fake-ui-for-media-stream", true), chromedp.Flag("use-fake-device-for-media-stream", true),
		chromedp.Flag("use-file-for-fake-video-capture", c.file)}
}

func (c *fakeCamera) show(t *testing.T, frames ...[]byte) {
	t.Helper()
	if err := os.WriteFile(c.file, bytes.Join(frames, nil), 0o644); err != nil {
		t.Fatal(err)
	}
}

func encoded(img image.Image) []byte {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 92}); err != nil {
		panic(err) // only a picture without pixels could do it
	}
	return b.Bytes()
}

// grey is a picture in the layout that the browser's fake camera takes: with colour planes, at half the size.
func grey(pix []byte, w, h int) []byte {
	img := image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio420)
	copy(img.Y, pix)
	for i := range img.Cb {
		img.Cb[i], img.Cr[i] = 128, 128
	}
	return encoded(img)
}

func colour(s *render.Shot) []byte {
	img := image.NewYCbCr(image.Rect(0, 0, s.W, s.H), image.YCbCrSubsampleRatio420)
	copy(img.Y, s.Y)
	for y := range s.H / 2 {
		for x := range s.W / 2 {
			a := 2*y*s.W + 2*x
			mean := func(p []byte) byte { return byte((int(p[a]) + int(p[a+1]) + int(p[a+s.W]) + int(p[a+s.W+1])) / 4) }
			img.Cb[y*img.CStride+x], img.Cr[y*img.CStride+x] = mean(s.Cb), mean(s.Cr)
		}
	}
	return encoded(img)
}

// meter shows a number on a drawn meter; text is as on the display.
func (c *fakeCamera) meter(t *testing.T, seed uint64, text string) {
	t.Helper()
	m := render.NewMeter(seed, render.Easy, render.Options{Text: text, W: 640, H: 480, Tall: 56, Signs: []string{"AC", "AUTO", "V"}})
	var frames [][]byte
	for i := range 12 {
		p := m.Frame(i)
		for range 5 { // five pictures alike: the hand is slower than the camera
			frames = append(frames, grey(p.Pix, p.W, p.H))
		}
	}
	c.show(t, frames...)
}

// blinks shows a light that flashes n times and pauses, whole cycles so that the file's end meets its beginning.
func (c *fakeCamera) blinks(t *testing.T, seed uint64, n int) {
	t.Helper()
	b := render.Blink{Groups: []int{n}, On: 0.3, Off: 0.3, Pause: 1.5, FPS: 30, Exposure: 0.02, SNR: 25}
	b.Seconds = 2 * (float64(n)*0.3 + float64(n-1)*0.3 + 1.5)
	var frames [][]byte
	render.NewScene(seed, 320, 240, b).Run(seed, func(f *render.Film) { frames = append(frames, grey(f.Pix, 320, 240)) })
	c.show(t, frames...)
}

// eyed is a job in the browser with a camera.
type eyed struct {
	*testing.T
	b    *browser
	s    *served
	cam  *fakeCamera
	p    *scenario.Person
	seed uint64

	named bool // a unit of a number that the camera saw
}

func openEyed(t *testing.T, fault string) *eyed {
	t.Helper()
	e := &eyed{T: t, cam: newFakeCamera(t), p: person(t, fault), seed: 7}
	e.s = serve(t, app.Config{Version: "test"})
	e.b = open(t, e.cam.flags()...)
	e.b.run(t, size(412, 915), navigate(e.s.address()), click("touch"), until(`document.getElementById('main').dataset.step`))
	return e
}

// post answers a step as the page would, without the detour of a finger.
func (e *eyed) post(v *protocol.View, m utterance.Meaning) {
	e.Helper()
	u := utterance.Utterance{Text: scenario.Words(m), Source: "touch", Meanings: []utterance.Meaning{m}}
	body, err := json.Marshal(app.EventBody{Step: v.Step.ID, Event: protocol.Event{Type: protocol.EvSaid, Said: &u}})
	if err != nil {
		e.Fatal(err)
	}
	if status := value[float64](e.T, e.b, fmt.Sprintf(`fetch('/api/event', {method: 'POST', body: %q}).then(r => r.status)`, body)); status != 200 {
		e.Fatalf("step %s: status %v", v.Step.ID, status)
	}
}

func (e *eyed) reply(v *protocol.View) utterance.Meaning {
	e.Helper()
	u, err := e.p.Reply(v)
	if err != nil || len(u.Meanings) == 0 {
		e.Fatalf("step %s: %v", v.Step.ID, err)
	}
	return u.Meanings[0]
}

// until answers by hand until f is true of the view.
func (e *eyed) until(what string, f func(*protocol.View) bool) *protocol.View {
	e.Helper()
	for range 200 {
		v := view(e.T, e.b)
		if f(v) {
			return v
		}
		if v.Ended != "" {
			break
		}
		e.post(v, e.reply(v))
	}
	e.Fatalf("never came to: %s", what)
	return nil
}

func (e *eyed) wait(what string, f func(*protocol.View) bool) *protocol.View {
	e.Helper()
	for began := time.Now(); time.Since(began) < 40*time.Second; time.Sleep(50 * time.Millisecond) {
		if v := view(e.T, e.b); f(v) {
			return v
		}
	}
	e.b.run(e.T, shot(e.T, "eye-stuck"))
	e.Fatalf("never: %s; the page says %q", what, value[string](e.T, e.b, `document.querySelector('#eyebox').textContent + document.querySelector('#stepbox').textContent`))
	return nil
}

func (e *eyed) on() {
	e.Helper()
	e.b.run(e.T, waitButton("eye"), click("eye"))
	for began := time.Now(); !value[bool](e.T, e.b, `!!document.querySelector('[data-k="eye-close"]')`); time.Sleep(50 * time.Millisecond) {
		if time.Since(began) > 40*time.Second {
			e.b.run(e.T, shot(e.T, "eye-stuck"))
			e.Fatalf("the camera does not open; the page says %q", value[string](e.T, e.b, `document.getElementById('main').textContent`))
		}
	}
}

// off closes the camera. A press may fall where the button has just moved away from; a person presses again.
func (e *eyed) off() {
	e.Helper()
	closed := `!document.querySelector('[data-k="eye-close"]')`
	for range 5 {
		if value[bool](e.T, e.b, closed) {
			return
		}
		e.b.run(e.T, click("eye-close"))
		for began := time.Now(); time.Since(began) < 3*time.Second && !value[bool](e.T, e.b, closed); time.Sleep(50 * time.Millisecond) {
		}
	}
	e.b.run(e.T, until(closed))
}

func waitButton(k string) action {
	return until(`document.querySelector('[data-k="` + k + `"]:not([disabled])')`)
}

// byCamera answers a step through the camera: the finding is put to the person, who names the unit or says right.
func (e *eyed) byCamera(v *protocol.View, m utterance.Meaning) {
	e.Helper()
	confirm := func(w *protocol.View) bool { return w.Step.ID != v.Step.ID || w.State == "confirm" }
	switch {
	case v.Step.Eye == protocol.EyeLamp:
		n := 0
		if _, err := fmt.Sscanf(firstOf(m.Text, m.ID), "%d", &n); err != nil {
			e.Fatalf("%v is no count", m)
		}
		e.cam.blinks(e.T, e.seed, n)
		e.on()
		e.wait("the count is told", confirm)
		e.b.run(e.T, click("aright-value"))
	case m.Reading.State == measure.Over:
		e.cam.meter(e.T, e.seed, "0L")
		e.on()
		e.wait("over range is told", confirm)
		e.b.run(e.T, click("aright-value"))
	default:
		e.cam.meter(e.T, e.seed, m.Reading.Value.Dec.String())
		e.on()
		e.wait("the number is told", func(w *protocol.View) bool { return confirm(w) || w.Heard != nil && w.Heard.Pending })
		if w := view(e.T, e.b); w.State == "confirm" && slices.ContainsFunc(w.Step.Answers, func(a protocol.Answer) bool { return a.Kind == utterance.UnitOnly }) {
			e.b.run(e.T, click("a"+m.Reading.Value.Unit))
			e.named = true
		} else { // what clears a hazard is said too
			e.post(w, m)
			e.named = true
		}
	}
	e.wait("the answer is taken", func(w *protocol.View) bool { return w.Step.ID != v.Step.ID || w.State == "ask" })
	e.off()
}

func firstOf(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// events are the only job's.
func (e *eyed) events() []protocol.Event {
	e.Helper()
	names, err := filepath.Glob(filepath.Join(e.s.dir, "jobs", "*", "journal.jsonl"))
	if err != nil || len(names) != 1 {
		e.Fatalf("journals %v, %v", names, err)
	}
	data, err := os.ReadFile(names[0])
	if err != nil {
		e.Fatal(err)
	}
	read := journal.Read(data)
	if read.Damage != nil {
		e.Fatal(read.Damage)
	}
	return read.Events
}

// A blink code, a number and a difference in the wiring enter a job through the browser's camera: file → getUserMedia → canvas →
// socket → core/camera → session.
func TestJobWithCamera(t *testing.T) {
	heavy(t)
	e := openEyed(t, "igniter.open")
	e.p.Says = map[string][]string{"light": {"3"}}

	v := e.until("the status light", func(v *protocol.View) bool { return v.Step.ID == "light" })
	e.byCamera(v, utterance.Meaning{Kind: utterance.Choice, ID: "3"})

	v = e.until("a number to measure", func(v *protocol.View) bool {
		if v.Step.Eye != protocol.EyeMeter || v.Step.Part == "A" || v.State != "ask" {
			return false
		}
		r := e.reply(v).Reading
		return r != nil && r.State == measure.Number && len(r.Value.Dec.String()) > 3 // so many digits tell where the signs beside them are
	})
	m := e.reply(v)
	e.byCamera(v, m)
	if _, err := os.Stat(filepath.Join(e.s.dir, "units.json")); (err == nil) != e.named {
		t.Errorf("a unit was named: %v; learnt: %v (%+v)", e.named, err, m.Reading)
	}
	facts := strings.Join(view(t, e.b).Facts, "\n")
	if !strings.Contains(facts, "hree blinks") {
		t.Errorf("the count is not established: %s", facts)
	}

	e.wires()
	kinds := map[string]int{}
	for _, ev := range e.events() {
		if ev.Seen != nil && ev.Seen.Reason == "" {
			kinds[ev.Seen.Kind]++
		}
	}
	if kinds[protocol.EyeLamp] == 0 || kinds[protocol.EyeMeter] == 0 || kinds[protocol.EyeAfter] == 0 {
		t.Errorf("seen: %v", kinds)
	}
	if names, _ := filepath.Glob(filepath.Join(e.s.dir, "jobs", "*", "seen-*")); len(names) != 0 {
		t.Errorf("pictures were kept that nobody asked for: %v", names)
	}
	e.b.clean(t)
}

// wires leads through a swap in which a wire comes back in another place, and wants it told before power returns.
func (e *eyed) wires() {
	t := e.T
	t.Helper()
	w := render.NewWiring(11, 900, 700, 0.3, true)
	e.until("the picture before", func(v *protocol.View) bool { return v.Step.Eye == protocol.EyeBefore })
	e.cam.show(t, colour(w.Before))
	e.on()
	e.b.run(t, until(`document.querySelector('.finder video').videoWidth === 900`), click("eye-take"), waitButton("eye-use"))
	for _, p := range w.Terminals {
		at := value[[]float64](t, e.b, fmt.Sprintf(`(() => { const f = document.querySelector('.finder'); f.scrollIntoView({block: 'center'}); const r = f.getBoundingClientRect(); return [r.x + %g * r.width, r.y + %g * r.height]; })()`, p[0]/900, p[1]/700))
		e.b.run(t, chromedp.MouseClickXY(at[0], at[1]))
	}
	e.b.run(t, shot(t, "camera-marks"), click("eye-use"))
	e.wait("the picture is taken", func(v *protocol.View) bool { return v.Step.Eye != protocol.EyeBefore })
	e.b.run(t, until(`!document.querySelector('[data-k="eye-use"]')`))
	e.off()
	e.until("the picture after", func(v *protocol.View) bool { return v.Step.Eye == protocol.EyeAfter })
	e.cam.show(t, colour(w.Later))
	e.on()
	e.b.run(t, until(`document.querySelector('.finder video').videoWidth === 900`), click("eye-take"))
	want := map[string]bool{}
	for i := range w.Terminals {
		if w.Colours[i] != w.After[i] {
			want[fmt.Sprint(i)] = true
		}
	}
	v := e.wait("the difference is told", func(v *protocol.View) bool { return strings.HasPrefix(v.Step.ID, "wire.") })
	e.b.run(t, shot(t, "camera-difference"))
	if !slices.ContainsFunc(v.Open, func(s string) bool { return strings.Contains(s, "not as before") }) {
		t.Errorf("open: %v", v.Open)
	}
	var last *protocol.Seen
	for _, ev := range e.events() {
		if ev.Seen != nil && ev.Seen.Kind == protocol.EyeAfter {
			last = ev.Seen
		}
	}
	for i, x := range last.Wires {
		if (x.Change != "same") != want[fmt.Sprint(i)] {
			t.Errorf("%s: %s, changed %v", x.Name, x.Change, want[fmt.Sprint(i)])
		}
	}
	e.off()
	for range 10 {
		v := view(t, e.b)
		if !strings.HasPrefix(v.Step.ID, "wire.") {
			break
		}
		e.post(v, utterance.Meaning{Kind: utterance.Choice, ID: "put-back"})
	}
	if v := view(t, e.b); v.Step.Eye != protocol.EyeAfter {
		t.Errorf("after the answers it stands at %s", v.Step.ID)
	}
}

// burner shows a start that comes to a flame and loses it, over and over.
func (c *fakeCamera) burner(t *testing.T) {
	t.Helper()
	f := render.Fire{W: 320, H: 240, FPS: 30, Exposure: 0.02, Mains: 60, Seconds: 16, Room: 30, Noise: 2, Brightness: 100, GlowAt: 2, FlameAt: 5, OutAt: 9}
	var frames [][]byte
	f.Run(3, func(s *render.Shot, _ int64, _ int) { frames = append(frames, colour(s)) })
	c.show(t, frames...)
}

// What a camera makes of the burner's window comes into the job in colour, beside what the person says and never instead of it.
func TestBurnerByCamera(t *testing.T) {
	heavy(t)
	e := openEyed(t, "flame-rod.dirty")
	v := e.until("the burners are watched", func(v *protocol.View) bool { return v.Step.ID == "see-burners" })
	if v.Step.Eye != protocol.EyeFire {
		t.Fatalf("%s asks the camera for %q", v.Step.ID, v.Step.Eye)
	}
	before := len(e.events())
	e.cam.burner(t)
	e.on()
	var seen *protocol.Seen
	e.wait("a flame is told", func(w *protocol.View) bool {
		seen = e.seen(v.Step.ID, before)
		return seen != nil && seen.Text == "flame"
	})
	e.b.run(t, shot(t, "camera-burner"))
	if seen.ID != "" || seen.P > 0.9 || seen.From < seen.To {
		t.Errorf("told %+v", seen)
	}
	if w := view(t, e.b); w.State != "ask" {
		t.Errorf("a flame that goes with two answers is put to the person: %s", w.Said)
	}
	e.post(v, utterance.Meaning{Kind: utterance.Choice, ID: "no-flame"})
	e.wait("it is asked which", func(w *protocol.View) bool {
		return w.State == "confirm" && strings.Contains(w.Said, "camera: a flame")
	})
	e.post(v, utterance.Meaning{Kind: utterance.Choice, ID: "all-burners"})
	e.wait("the answer is taken", func(w *protocol.View) bool { return w.Step.ID != v.Step.ID })
	e.off()
	e.b.clean(t)
}

// A camera that is not allowed is said once; the job goes on by hand.
func TestDeniedCamera(t *testing.T) {
	heavy(t)
	s := serve(t, app.Config{Version: "test"})
	b := open(t, chromedp.Flag("use-fake-device-for-media-stream", true), chromedp.Flag("deny-permission-prompts", true))
	b.run(t, size(412, 915), navigate(s.address()), click("touch"), until(`document.getElementById('main').dataset.step`))
	e := &eyed{T: t, b: b, s: s, p: person(t, "breaker.off")}
	e.until("something to be seen", func(v *protocol.View) bool { return v.Step.Eye != "" })
	b.run(t, waitButton("eye"), click("eye"), until(`!document.querySelector('[data-k="eye"]')`))
	e.wait("it is said", func(v *protocol.View) bool { return strings.Contains(v.Said, "camera is not allowed") })
	v := view(t, b)
	e.post(v, e.reply(v))
	if w := view(t, b); w.Step.ID == v.Step.ID && w.State == v.State {
		t.Errorf("the job stands still at %s", w.Step.ID)
	}
}

// seen is the newest finding of the camera for a step, nil when there is none after so many events.
func (e *eyed) seen(step string, after int) *protocol.Seen {
	e.Helper()
	events := e.events()
	for i := len(events) - 1; i >= after; i-- {
		if s := events[i].Seen; s != nil && s.Step == step && s.Reason == "" {
			return s
		}
	}
	return nil
}

// Steps of a job answered through the camera in the browser, each with a meter of its own; what the camera does not tell
// within the time is answered by hand and counts as not right.
func eyeFigures(t *testing.T, add metric.Adder) {
	e := openEyed(t, "igniter.open")
	right, n := 0, 0
	for n < 10 {
		v := view(t, e.b)
		if v == nil || v.Ended != "" {
			break
		}
		m := e.reply(v)
		number := v.Step.Eye == protocol.EyeMeter && v.Step.Part != "A" && v.State == "ask" && m.Kind == utterance.Reading
		if !number || m.Reading.State != measure.Number {
			e.post(v, m)
			continue
		}
		n++
		e.seed = uint64(900 + n)
		before, shows := len(e.events()), m.Reading.Value.Dec.String()
		e.cam.meter(t, e.seed, shows)
		e.on()
		var s *protocol.Seen
		for began := time.Now(); s == nil && time.Since(began) < 20*time.Second; time.Sleep(100 * time.Millisecond) {
			s = e.seen(v.Step.ID, before)
		}
		switch {
		case s != nil && s.Text == shows:
			right++
		case s != nil:
			t.Logf("%s: the meter shows %s, seen %s", v.Step.ID, shows, s.Text)
		default:
			t.Logf("%s: the meter shows %s, nothing was told", v.Step.ID, shows)
		}
		e.post(view(t, e.b), m) // said too, which agrees, or settles it
		e.off()
	}
	add("eye.job_right_pct", 100*float64(right)/float64(max(n, 1)), "%", "reported", n)
	times := value[[]float64](t, e.b, `performance.getEntriesByName('frame-meter').map(e => e.duration)`)
	if len(times) == 0 {
		t.Fatal("no frame was timed")
	}
	add("eye.page_frame_ms", median(times), "ms", "reported", len(times))
}
