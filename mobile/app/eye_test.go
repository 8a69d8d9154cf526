package app_test

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"readback/core/camera"
	"readback/core/lab/render"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/mobile/app"
)

// onlooker is a job that stands at one step and keeps what the camera tells.
type onlooker struct {
	mu   sync.Mutex
	step protocol.StepView
	seen []protocol.Seen
	all  []protocol.Event
}

func (o *onlooker) View() *protocol.View {
	o.mu.Lock()
	defer o.mu.Unlock()
	return &protocol.View{Job: "j", State: "ask", Step: o.step}
}

func (o *onlooker) Step(ev protocol.Event) ([]protocol.Effect, error) {
	o.mu.Lock()
	o.all = append(o.all, ev)
	if ev.Seen != nil {
		o.seen = append(o.seen, *ev.Seen)
	}
	o.mu.Unlock()
	out := []protocol.Effect{{Type: protocol.DoShow, View: o.View()}}
	if ev.Said != nil && ev.Said.Meanings[0].Kind == utterance.UnitOnly {
		out = append(out, protocol.Effect{Type: protocol.DoTeach, ID: ev.Said.Meanings[0].ID})
	}
	return out, nil
}

func (o *onlooker) told() []protocol.Seen {
	o.mu.Lock()
	defer o.mu.Unlock()
	return append([]protocol.Seen(nil), o.seen...)
}

// watch opens a hub whose job stands at a step, and collects what the viewfinder is told.
func watch(t *testing.T, step protocol.StepView) (*bench, *onlooker, func() []app.EyeView) {
	t.Helper()
	o := &onlooker{step: step}
	b := open(t, app.Config{New: func(protocol.Begin) (app.Machine, error) { return o, nil }})
	var mu sync.Mutex
	var views []app.EyeView
	t.Cleanup(b.hub.Subscribe(func(msg []byte) {
		var m app.Message
		if json.Unmarshal(msg, &m) == nil && m.Eye != nil {
			mu.Lock()
			views = append(views, *m.Eye)
			mu.Unlock()
		}
	}))
	b.ok("POST", "/api/start", `{"voice":false}`)
	return b, o, func() []app.EyeView { mu.Lock(); defer mu.Unlock(); return append([]app.EyeView(nil), views...) }
}

func pic(p *render.Pic, at int64) *camera.Plane {
	return &camera.Plane{Y: p.Pix, W: p.W, H: p.H, Stride: p.W, Time: at}
}

// lookUntil sends frames 200 ms apart on their own clock, each when the one before has been read, until f.
func lookUntil(t *testing.T, b *bench, frames int, frame func(i int) *camera.Plane, views func() []app.EyeView, f func() bool) {
	t.Helper()
	for i := range frames {
		msg, err := app.Frame(protocol.EyeMeter, frame(i))
		if err != nil {
			t.Fatal(err)
		}
		n := len(views())
		if err := b.hub.Look(msg); err != nil {
			t.Fatal(err)
		}
		for k := 0; len(views()) == n && k < 2000; k++ {
			time.Sleep(time.Millisecond)
		}
		if f() {
			return
		}
	}
}

func TestMeterIsTold(t *testing.T) {
	b, o, views := watch(t, protocol.StepView{ID: "w-c", Eye: protocol.EyeMeter})
	m := render.NewMeter(3, render.Easy, render.Options{Text: "24.5", W: 640, H: 480, Tall: 60})
	lookUntil(t, b, 20, func(i int) *camera.Plane { return pic(m.Frame(i), int64(i+1)*200e6) }, views, func() bool { return len(o.told()) > 0 })
	told := o.told()
	if len(told) != 1 || told[0].Step != "w-c" || told[0].Kind != protocol.EyeMeter || told[0].Text != "24.5" || told[0].Reading == nil || told[0].Reading.Value.Dec.String() != "24.5" || told[0].Reading.Value.Unit != "" {
		t.Fatalf("told %+v", told)
	}
	last := views()[len(views())-1]
	if last.Words != "twenty-four point five" || !last.Steady || len(last.Boxes) == 0 {
		t.Errorf("the viewfinder shows %+v", last)
	}
	for _, q := range last.Boxes[0] {
		if q[0] < 0 || q[0] > 1 || q[1] < 0 || q[1] > 1 {
			t.Errorf("a digit at %v", q)
		}
	}
	if told[0].Photo != "" {
		t.Error("a picture was kept without being asked for")
	}
}

// Units named twice are told from then on, also after the program was started again.
func TestUnitIsLearnt(t *testing.T) {
	b, o, views := watch(t, protocol.StepView{ID: "w-0", Eye: protocol.EyeMeter})
	at := int64(0)
	for i, x := range []struct {
		text, behind, named, want string
	}{{"1234", "V", "V", ""}, {"2345", "kH", "kohm", ""}, {"6789", "V", "", "V"}, {"5678", "kH", "", "kohm"}, {"4567", "A", "", ""}} {
		step := fmt.Sprint("w-", i)
		o.mu.Lock()
		o.step.ID, o.seen = step, nil
		o.mu.Unlock()
		b.ok("POST", "/api/event", said(step, "choice", "x"))
		m := render.NewMeter(201, render.Easy, render.Options{Text: x.text, Signs: []string{"", "AUTO", x.behind}, Pose: uint64(i + 1), W: 640, H: 480, Tall: 70})
		lookUntil(t, b, 30, func(i int) *camera.Plane { at += 200e6; return pic(m.Frame(i), at) }, views, func() bool { return len(o.told()) > 0 })
		if n := o.told(); len(n) != 1 || n[0].Text != x.text || n[0].Reading.Value.Unit != x.want {
			t.Errorf("%s %s is told as %+v", x.text, x.behind, n)
		}
		if x.named != "" {
			b.ok("POST", "/api/event", said(step, string(utterance.UnitOnly), x.named))
		}
	}
	data, err := os.ReadFile(filepath.Join(b.dir, "units.json"))
	var u camera.Units
	if err != nil || json.Unmarshal(data, &u) != nil || len(u.Taught) != 2 {
		t.Errorf("kept: %d looks, %v", len(u.Taught), err)
	}
}

// A shell may hand over larger frames than the socket takes; the newest is there to be looked at while its step lasts.
func TestLargeFrames(t *testing.T) {
	b, o, views := watch(t, protocol.StepView{ID: "w-c", Eye: protocol.EyeMeter})
	if status, _ := b.call("GET", "/api/eye/frame", ""); status != 404 {
		t.Errorf("a frame before there is one: status %d", status)
	}
	m := render.NewMeter(3, render.Easy, render.Options{Text: "24.5", W: 1920, H: 1080, Tall: 120})
	for i := range 20 {
		n := len(views())
		if err := b.hub.LookAt(protocol.EyeMeter, pic(m.Frame(i%3), int64(i+1)*200e6)); err != nil {
			t.Fatal(err)
		}
		for k := 0; len(views()) == n && k < 3000; k++ {
			time.Sleep(time.Millisecond)
		}
		if len(o.told()) > 0 {
			break
		}
	}
	if told := o.told(); len(told) != 1 || told[0].Text != "24.5" {
		t.Errorf("told %+v", told)
	}
	c, err := jpeg.DecodeConfig(strings.NewReader(b.ok("GET", "/api/eye/frame", "")))
	if err != nil || c.Width*c.Height > 640*480 || c.Width < 300 {
		t.Errorf("the newest frame is %d by %d, %v", c.Width, c.Height, err)
	}
	b.ok("POST", "/api/leave", "")
	if status, _ := b.call("GET", "/api/eye/frame", ""); status != 404 {
		t.Errorf("a frame after the job: status %d", status)
	}
}

// A number that stands on the display before a saying may be that of another place: it is looked at anew.
func TestSayingBeginsAnew(t *testing.T) {
	b, o, views := watch(t, protocol.StepView{ID: "w-c", Eye: protocol.EyeMeter})
	m := render.NewMeter(3, render.Easy, render.Options{Text: "24.5", W: 640, H: 480, Tall: 60})
	frame := func(i int) *camera.Plane { return pic(m.Frame(i), int64(i+1)*200e6) }
	lookUntil(t, b, 3, frame, views, func() bool { return false })
	b.ok("POST", "/api/event", said("w-c", "choice", "x"))
	lookUntil(t, b, 2, func(i int) *camera.Plane { return frame(i + 3) }, views, func() bool { return false })
	if n := len(o.told()); n != 0 {
		t.Errorf("told %d times from frames of before", n)
	}
	lookUntil(t, b, 12, func(i int) *camera.Plane { return frame(i + 5) }, views, func() bool { return len(o.told()) > 0 })
	if n := len(o.told()); n != 1 {
		t.Errorf("told %d times", n)
	}
}

func TestKeptPicture(t *testing.T) {
	b, o, views := watch(t, protocol.StepView{ID: "w-c", Eye: protocol.EyeMeter})
	b.ok("POST", "/api/prefs", `{"voice":false,"done":true,"theme":"","keep":true}`)
	m := render.NewMeter(3, render.Easy, render.Options{Text: "24.5", W: 640, H: 480, Tall: 60})
	lookUntil(t, b, 20, func(i int) *camera.Plane { return pic(m.Frame(i), int64(i+1)*200e6) }, views, func() bool { return len(o.told()) > 0 })
	names, err := filepath.Glob(filepath.Join(b.dir, "jobs", "*", "seen-*.jpg"))
	if err != nil || len(names) != 1 || len(o.told()) != 1 || filepath.Base(names[0]) != o.told()[0].Photo {
		t.Fatalf("kept %v, told %+v, %v", names, o.told(), err)
	}
	data, err := os.ReadFile(names[0])
	if err != nil {
		t.Fatal(err)
	}
	if c, err := jpeg.DecodeConfig(bytes.NewReader(data)); err != nil || c.Width != 640 || bytes.Contains(data, []byte("Exif")) {
		t.Errorf("kept picture: %+v, %v", c, err)
	}
}

// A display that cannot be read gives its reason after a while, and no number.
func TestReasonIsTold(t *testing.T) {
	b, o, views := watch(t, protocol.StepView{ID: "w-c", Eye: protocol.EyeMeter})
	dark := &camera.Plane{W: 320, H: 240, Stride: 320, Y: make([]byte, 320*240)}
	lookUntil(t, b, 50, func(i int) *camera.Plane { p := *dark; p.Time = int64(i+1) * 200e6; return &p }, views, func() bool { return len(o.told()) > 0 })
	if told := o.told(); len(told) != 1 || told[0].Reason != camera.NoDisplay.Say() || told[0].Reading != nil {
		t.Fatalf("told %+v", told)
	}
}

// Nothing is looked at where nothing can be seen, or before the leads are in place.
func TestNotLookedAt(t *testing.T) {
	for _, step := range []protocol.StepView{{ID: "story"}, {ID: "w-c", Eye: protocol.EyeMeter, Part: "A"}, {ID: "light", Eye: protocol.EyeLamp}} {
		b, o, views := watch(t, step)
		m := render.NewMeter(3, render.Easy, render.Options{Text: "24.5", W: 320, H: 240, Tall: 40})
		for i := range 10 {
			if err := b.hub.LookAt(protocol.EyeMeter, pic(m.Frame(i), int64(i+1)*200e6)); err != nil {
				t.Fatal(err)
			}
		}
		time.Sleep(30 * time.Millisecond)
		if len(o.told()) != 0 || len(views()) != 0 {
			t.Errorf("%s: told %v, shown %d", step.ID, o.told(), len(views()))
		}
	}
}

func answersOf(ids ...string) (out []protocol.Answer) {
	for _, id := range ids {
		out = append(out, protocol.Answer{ID: id, Kind: "choice", Text: id})
	}
	return out
}

func TestLightIsTold(t *testing.T) {
	red, green := [3]float64{1, 0.1, 0.1}, [3]float64{0.3, 1, 0.2}
	three := render.Blink{Groups: []int{3}, On: 0.25, Off: 0.25, Pause: 2, FPS: 30, Exposure: 0.02, SNR: 20, Seconds: 14}
	for _, tt := range []struct {
		name  string
		light render.Blink
		opts  []string
		want  string
		tints [][3]float64
	}{
		{"three", three, []string{"off", "steady", "2", "3"}, "3", nil},
		{"not an answer here", render.Blink{Groups: []int{5}, On: 0.25, Off: 0.25, Pause: 2, FPS: 30, Exposure: 0.02, SNR: 20, Seconds: 14}, []string{"off", "2", "3"}, "", nil},
		{"two colours", three, []string{"3", "red-1-green-2", "red-2-green-1", "green-2-red-1"}, "red-2-green-1", [][3]float64{red, red, green}},
		{"two colours that no answer has", three, []string{"2", "3"}, "", [][3]float64{red, red, green}},
		{"one colour", three, []string{"2", "3"}, "3", [][3]float64{red}},
		{"one colour where it might be two", three, []string{"3", "red-2-green-1"}, "", [][3]float64{red}},
	} {
		b, o, views := watch(t, protocol.StepView{ID: "light", Eye: protocol.EyeLamp, Answers: answersOf(tt.opts...)})
		n := 0
		scene := render.NewScene(4, 320, 240, tt.light)
		scene.Tints = tt.tints
		scene.Run(4, func(f *render.Film) {
			p := &camera.Plane{Y: bytes.Clone(f.Pix), W: 320, H: 240, Stride: 320, Time: f.T, Cb: bytes.Clone(f.Cb), Cr: bytes.Clone(f.Cr), CStride: 320, Sub: 1}
			if len(o.told()) > 0 {
				return
			}
			if err := b.hub.LookAt(protocol.EyeLamp, p); err != nil {
				t.Fatal(err)
			}
			if n++; n%4 == 0 {
				time.Sleep(4 * time.Millisecond)
			}
		})
		b.eventually("the frames are read", func() bool { return len(views()) > 20 || len(o.told()) > 0 })
		told := o.told()
		if tt.want == "" && len(told) > 0 || tt.want != "" && (len(told) != 1 || told[0].ID != tt.want) {
			t.Errorf("%s: told %+v", tt.name, told)
		}
	}
}

// The watch of the burner goes on from step to step, and tells each step what has become of it.
func TestBurnerIsTold(t *testing.T) {
	b, o, _ := watch(t, protocol.StepView{ID: "see-glow", Eye: protocol.EyeFire})
	if err := b.hub.LookAt(protocol.EyeFire, &camera.Plane{Y: make([]byte, 12), W: 4, H: 3, Stride: 4}); !errors.Is(err, app.ErrFrame) {
		t.Errorf("a burner without colour: %v", err)
	}
	f := render.Fire{W: 96, H: 72, FPS: 30, Exposure: 0.02, Mains: 50, Seconds: 30, Room: 30, Noise: 2, Brightness: 100, GlowAt: 2, FlameAt: 9, OutAt: 24}
	f.Run(1, func(s *render.Shot, at int64, _ int) {
		p := &camera.Plane{Y: bytes.Clone(s.Y), Cb: bytes.Clone(s.Cb), Cr: bytes.Clone(s.Cr), W: s.W, H: s.H, Stride: s.W, CStride: s.W, Sub: 1, Time: at}
		if err := b.hub.LookAt(protocol.EyeFire, p); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Millisecond)
		if at > 7e9 && o.View().Step.ID == "see-glow" {
			o.mu.Lock()
			o.step.ID = "see-hold"
			o.mu.Unlock()
			b.ok("POST", "/api/event", said("see-hold", "choice", "x"))
		}
	})
	b.eventually("the last is told", func() bool { n := o.told(); return len(n) > 0 && n[len(n)-1].Text == "out" })
	var got []string
	for _, s := range o.told() {
		if k := s.Step + " " + s.Text; len(got) == 0 || got[len(got)-1] != k { // a finding that lasts is told again
			got = append(got, k)
		}
		if s.Kind != protocol.EyeFire || s.ID != "" || s.From < s.To || s.To < 1 || s.From > 16000 {
			t.Errorf("told %+v", s)
		}
	}
	if want := "see-glow glow, see-hold glow, see-hold flame, see-hold held, see-hold out"; strings.Join(got, ", ") != want {
		t.Errorf("told %s; want %s", strings.Join(got, ", "), want)
	}
}

func encode(t *testing.T, s *render.Shot) []byte {
	t.Helper()
	img := &image.YCbCr{Y: s.Y, Cb: s.Cb, Cr: s.Cr, YStride: s.W, CStride: s.W, SubsampleRatio: image.YCbCrSubsampleRatio444, Rect: image.Rect(0, 0, s.W, s.H)}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 92}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The picture after the work is compared with the one before at the marked places.
func TestWiresAreCompared(t *testing.T) {
	for _, tt := range []struct {
		name   string
		change bool
		marks  bool
		why    string
	}{{"as before", false, true, ""}, {"changed", true, true, ""}, {"not marked", true, false, "No terminals were marked before. Compare by eye."}} {
		b, o, _ := watch(t, protocol.StepView{ID: "photo.after", Eye: protocol.EyeAfter})
		w := render.NewWiring(11, 900, 700, 0.3, tt.change)
		if err := b.hub.Photo("before", encode(t, w.Before)); err != nil {
			t.Fatal(err)
		}
		var marks []protocol.Mark
		want := map[string]bool{}
		for i, p := range w.Terminals {
			m := protocol.Mark{X: p[0] / float64(w.W), Y: p[1] / float64(w.H), Name: fmt.Sprintf("mark %d", i+1)}
			marks = append(marks, m)
			want[m.Name] = w.Colours[i] != w.After[i]
		}
		if tt.marks {
			if status, _ := b.call("POST", "/api/eye/marks", `{"photo":"photo-1-before.jpg","marks":[{"x":0,"y":0,"name":"a"}]}`); status != 409 {
				t.Errorf("%s: marks of another picture: status %d", tt.name, status)
			}
			var newest struct{ Name string }
			if err := json.Unmarshal([]byte(b.ok("GET", "/api/eye/before", "")), &newest); err != nil {
				t.Fatal(err)
			}
			body, err := json.Marshal(map[string]any{"photo": newest.Name, "marks": marks})
			if err != nil {
				t.Fatal(err)
			}
			b.ok("POST", "/api/eye/marks", string(body))
		}
		if err := b.hub.Photo("after", encode(t, w.Later)); err != nil {
			t.Fatal(err)
		}
		told := o.told()
		if len(told) != 1 || told[0].Reason != tt.why || tt.why == "" && (len(told[0].Wires) != len(marks) || !strings.HasSuffix(told[0].Photo, "after.jpg")) {
			t.Fatalf("%s: told %+v", tt.name, told)
		}
		found := 0
		for _, x := range told[0].Wires {
			if (x.Change != "same") != want[x.Name] {
				t.Errorf("%s: %s is %s, changed %v", tt.name, x.Name, x.Change, want[x.Name])
			}
			if x.Change != "same" {
				found++
			}
			if x.AX < -0.2 || x.AX > 1.2 {
				t.Errorf("%s: %s at %g", tt.name, x.Name, x.AX)
			}
		}
		if tt.marks && (found > 0) != tt.change {
			t.Errorf("%s: %d differences", tt.name, found)
		}
	}
}

func TestBadMarks(t *testing.T) {
	b, _, _ := watch(t, protocol.StepView{ID: "photo.before", Eye: protocol.EyeBefore})
	for _, body := range []string{`{"marks":[]}`, `{"marks":[{"x":2,"y":0,"name":"a"}]}`, `{"marks":[{"x":0.5,"y":0.5,"name":" "}]}`,
		`{"marks":[{"x":0.5,"y":0.5,"name":"a"},{"x":0.6,"y":0.5,"name":"a"}]}`, `{"marks":[{"x":0.5,"y":0.5,"name":"a"}]}`, `{}`} {
		if status, _ := b.call("POST", "/api/eye/marks", body); status != 400 {
			t.Errorf("%s: status %d", body, status)
		}
	}
	for _, body := range []string{`{"x":1,"y":0}`, `{"x":-1,"y":0}`} {
		if status, _ := b.call("POST", "/api/eye/aim", body); status != 400 {
			t.Errorf("aim %s: status %d", body, status)
		}
	}
}

// A code on the plate is proposed for the line that is asked for; the picture of the plate is not kept.
func TestPlateCode(t *testing.T) {
	for _, tt := range []struct{ name, code, text, reason string }{
		{"plain", "AB-1234", "AB-1234", ""},
		{"with identifiers", "[)>\x1e06\x1d1PHX-77\x1dS999\x1e\x04", "HX-77", ""},
		{"an address", "https://x.test/a", "", "I find no code on the plate. Read it to me."},
	} {
		b, o, _ := watch(t, protocol.StepView{ID: "plate.model", Eye: protocol.EyePlate})
		m, err := qrcode.NewQRCodeWriter().Encode(tt.code, gozxing.BarcodeFormat_QR_CODE, 400, 400, nil)
		if err != nil {
			t.Fatal(err)
		}
		img := image.NewGray(image.Rect(0, 0, 400, 400))
		for y := range 400 {
			for x := range 400 {
				if !m.Get(x, y) {
					img.Pix[y*img.Stride+x] = 255
				}
			}
		}
		var j bytes.Buffer
		if err := jpeg.Encode(&j, img, nil); err != nil {
			t.Fatal(err)
		}
		if err := b.hub.Photo("plate", j.Bytes()); err != nil {
			t.Fatal(err)
		}
		if told := o.told(); len(told) != 1 || told[0].Text != tt.text || told[0].Reason != tt.reason {
			t.Errorf("%s: told %+v", tt.name, told)
		}
		if names, _ := filepath.Glob(filepath.Join(b.dir, "jobs", "*", "*.jpg")); len(names) != 0 {
			t.Errorf("%s: kept %v", tt.name, names)
		}
	}
}

// head is a frame of 4 by 2 pixels with one thing changed.
func head(change func(b []byte)) []byte {
	b := make([]byte, 32+8)
	copy(b, "RBeye\x01\r\n")
	b[8] = 1
	binary.LittleEndian.PutUint16(b[10:], 4)
	binary.LittleEndian.PutUint16(b[12:], 2)
	change(b)
	return b
}

func TestFrameErrors(t *testing.T) {
	b, _, _ := watch(t, protocol.StepView{ID: "w-c", Eye: protocol.EyeMeter})
	if err := b.hub.Look(head(func([]byte) {})); err != nil {
		t.Fatalf("a good frame: %v", err)
	}
	for _, tt := range []struct {
		name string
		msg  []byte
		want string
	}{
		{"sound", make([]byte, 3200), "it does not begin with"},
		{"empty", nil, "it does not begin with"},
		{"another version", head(func(b []byte) { b[5] = 2 }), "it does not begin with"},
		{"cut head", head(func([]byte) {})[:20], "its head has 20 bytes, want 32"},
		{"kind", head(func(b []byte) { b[8] = 9 }), "nothing is known by number 9"},
		{"flags", head(func(b []byte) { b[9] = 4 }), "bytes 9, 14 and 15 are 4, 0 and 0"},
		{"reserved", head(func(b []byte) { b[14] = 1 }), "bytes 9, 14 and 15"},
		{"no width", head(func(b []byte) { b[10] = 0 }), "0 by 2 pixels"},
		{"too large", head(func(b []byte) { b[11], b[13] = 255, 255 }), "pixels, want 1 to 750000 for the meter"},
		{"too large for the light", head(func(b []byte) {
			b[8] = 2
			binary.LittleEndian.PutUint16(b[10:], 641)
			binary.LittleEndian.PutUint16(b[12:], 480)
		}), "want 1 to 307200 for the lamp"},
		{"too large for the burner, whose frames have colour", head(func(b []byte) {
			b[8], b[9] = 3, 1
			binary.LittleEndian.PutUint16(b[10:], 321)
			binary.LittleEndian.PutUint16(b[12:], 240)
		}), "want 1 to 76800 for the fire"},
		{"a burner without colour", head(func(b []byte) { b[8] = 3 }), "it has none"},
		{"short picture", head(func([]byte) {})[:39], "7 bytes of picture, want 8"},
		{"colour is missing", head(func(b []byte) { b[9] = 1 }), "8 bytes of picture, want 12"},
		{"exposure", head(func(b []byte) { binary.LittleEndian.PutUint64(b[24:], math.Float64bits(math.NaN())) }), "exposure"},
		{"time", head(func(b []byte) { b[23] = 0x80 }), "time stamp"},
	} {
		err := b.hub.Look(tt.msg)
		if !errors.Is(err, app.ErrFrame) || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v, want %q", tt.name, err, tt.want)
		}
	}
}

func FuzzFrame(f *testing.F) {
	f.Add(head(func([]byte) {}))
	f.Add(head(func(b []byte) { b[8] = 2 }))
	f.Add(append(head(func(b []byte) { b[8], b[9] = 3, 1 }), 1, 2, 3, 4))
	f.Add(append(head(func(b []byte) { b[9] = 1 }), 1, 2, 3, 4))
	o := &onlooker{step: protocol.StepView{ID: "w-c", Eye: protocol.EyeMeter}}
	hub, err := app.Open(app.Config{Dir: f.TempDir(), Host: &host{}, New: func(protocol.Begin) (app.Machine, error) { return o, nil }})
	if err != nil {
		f.Fatal(err)
	}
	f.Cleanup(hub.Close)
	f.Fuzz(func(t *testing.T, msg []byte) {
		err := hub.Look(append([]byte(nil), msg...))
		if err != nil && !errors.Is(err, app.ErrFrame) {
			t.Errorf("%v is no error about a frame", err)
		}
		if err == nil && !app.IsFrame(msg) {
			t.Error("sound was taken for a frame")
		}
	})
}
