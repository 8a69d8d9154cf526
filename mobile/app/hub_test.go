package app_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"readback/core/journal"
	"readback/core/lab/faultdisk"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/mobile/app"
	"readback/mobile/lab/pagetest"
	"readback/speech/grammar"
)

// host writes down what it is asked to do.
type host struct {
	mu   sync.Mutex
	done []string
}

func (h *host) add(format string, a ...any) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.done = append(h.done, fmt.Sprintf(format, a...))
}
func (h *host) Say(id, text, level string, slow bool) { h.add("say %s %s", level, text) }
func (h *host) Hush()                                 { h.add("hush") }
func (h *host) Cue(name string)                       { h.add("cue %s", name) }
func (h *host) TakePhoto(id string)                   { h.add("photo %s", id) }
func (h *host) KeepAwake(on bool)                     { h.add("awake %v", on) }
func (h *host) Vibrate(pattern string)                { h.add("vibrate %s", pattern) }
func (h *host) Share(name string)                     { h.add("share %s", name) }

func (h *host) has(what string) bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	for _, d := range h.done {
		if strings.Contains(d, what) {
			return true
		}
	}
	return false
}

func walker(protocol.Begin) (app.Machine, error) { return pagetest.NewWalker(), nil }

type bench struct {
	*testing.T
	hub  *app.Hub
	host *host
	dir  string
}

func open(t *testing.T, c app.Config) *bench {
	t.Helper()
	b := &bench{T: t, host: &host{}, dir: c.Dir}
	if b.dir == "" {
		b.dir = t.TempDir()
	}
	c.Dir, c.Host = b.dir, b.host
	if c.New == nil {
		c.New = walker
	}
	var now int64 = 1764070000000
	c.Now = func() int64 { now += 1000; return now }
	hub, err := app.Open(c)
	if err != nil {
		t.Fatal(err)
	}
	b.hub = hub
	t.Cleanup(hub.Close)
	return b
}

func (b *bench) call(method, path, body string) (int, string) {
	status, _, data := b.hub.Request(method, path, []byte(body))
	return status, string(data)
}

func (b *bench) ok(method, path, body string) string {
	b.Helper()
	status, data := b.call(method, path, body)
	if status != 200 {
		b.Fatalf("%s %s: %d %s", method, path, status, data)
	}
	return data
}

func (b *bench) state() (s app.State) {
	b.Helper()
	if err := json.Unmarshal([]byte(b.ok("GET", "/api/state", "")), &s); err != nil {
		b.Fatal(err)
	}
	return s
}

func said(step, kind, id string) string {
	return fmt.Sprintf(`{"step":%q,"event":{"at":0,"type":"said","said":{"text":"x","source":"touch","meanings":[{"kind":%q,"id":%q,"cost":0}]}}}`, step, kind, id)
}

func (b *bench) eventually(what string, f func() bool) {
	b.Helper()
	for range 400 {
		if f() {
			return
		}
		time.Sleep(5 * time.Millisecond)
	}
	b.Fatalf("never: %s", what)
}

func TestJobRuns(t *testing.T) {
	b := open(t, app.Config{})
	var mu sync.Mutex
	var got []app.Message
	cancel := b.hub.Subscribe(func(m []byte) {
		var x app.Message
		if err := json.Unmarshal(m, &x); err != nil {
			t.Error(err)
		}
		mu.Lock()
		defer mu.Unlock()
		got = append(got, x)
	})
	b.ok("POST", "/api/start", `{"appliance":"","voice":true}`)
	b.eventually("the first saying", func() bool { return b.host.has("say info First, your nose") })
	b.ok("POST", "/api/event", said("smell", "choice", "none"))
	if v := b.state().View; v == nil || v.Step.ID != "w-c" {
		t.Fatalf("after one answer the view is %+v", v)
	}
	b.eventually("a second view in the stream", func() bool {
		mu.Lock()
		defer mu.Unlock()
		n := 0
		for _, m := range got {
			if m.Type == "show" {
				n++
			}
		}
		return n >= 2
	})
	cancel()
	mu.Lock()
	for i := 1; i < len(got); i++ {
		if got[i].N <= got[i-1].N {
			t.Errorf("message %d has number %d after %d", i, got[i].N, got[i-1].N)
		}
	}
	mu.Unlock()
	if !b.host.has("awake true") || !b.host.has("vibrate short") {
		t.Errorf("the host did %v", b.host.done)
	}
}

func TestDoubleTapAnswersOneStep(t *testing.T) {
	b := open(t, app.Config{})
	b.ok("POST", "/api/start", `{"voice":true}`)
	b.ok("POST", "/api/event", said("smell", "choice", "none"))
	if status, _ := b.call("POST", "/api/event", said("smell", "choice", "none")); status != 409 {
		t.Errorf("the second tap got status %d, want 409", status)
	}
	b.ok("POST", "/api/event", said("smell", "emergency", "gas")) // never dropped
	if v := b.state().View; v.State != "emergency" {
		t.Errorf("state %q after an emergency", v.State)
	}
}

func TestEmergencyWithoutJob(t *testing.T) {
	b := open(t, app.Config{})
	b.ok("POST", "/api/event", said("", "emergency", "any"))
	if v := b.state().View; v == nil || v.State != "emergency" {
		t.Fatalf("view %+v", v)
	}
	if status, _ := b.call("POST", "/api/event", said("", "choice", "none")); status != 200 {
		t.Errorf("an answer in the job got %d", status)
	}
}

func TestTouchJobIsSilent(t *testing.T) {
	b := open(t, app.Config{})
	b.ok("POST", "/api/start", `{"voice":false}`)
	b.eventually("the saying counts as ended", func() bool {
		data, err := os.ReadFile(filepath.Join(b.dir, "jobs", b.state().View.Job, "journal.jsonl"))
		return err != nil || strings.Contains(string(data), "spoke") || len(b.journal()) > 1
	})
	if b.host.has("say") {
		t.Errorf("a job by touch spoke: %v", b.host.done)
	}
}

// journal reads the only job's events.
func (b *bench) journal() (events []protocol.Event) {
	b.Helper()
	names, err := filepath.Glob(filepath.Join(b.dir, "jobs", "*", "journal.jsonl"))
	if err != nil || len(names) != 1 {
		b.Fatalf("journals: %v %v", names, err)
	}
	data, err := os.ReadFile(names[0])
	if err != nil {
		b.Fatal(err)
	}
	r := journal.Read(data)
	if r.Damage != nil {
		b.Fatal(r.Damage)
	}
	return r.Events
}

func TestKilledProgramComesBack(t *testing.T) {
	b := open(t, app.Config{})
	b.ok("POST", "/api/start", `{"voice":true}`)
	b.ok("POST", "/api/event", said("smell", "choice", "none"))
	b.hub.Close()
	c := open(t, app.Config{Dir: b.dir})
	if v := c.state().View; v == nil || v.Step.ID != "w-c" {
		t.Fatalf("the program came back to %+v", v)
	}
	events := c.journal()
	if last := events[len(events)-1]; last.Type != protocol.EvResume {
		t.Errorf("the last event is %q, want resume", last.Type)
	}
	c.ok("POST", "/api/leave", `{}`)
	c.hub.Close()
	if d := open(t, app.Config{Dir: b.dir}); d.state().View != nil {
		t.Error("a job that was left came back by itself")
	}
}

func TestDamagedJournal(t *testing.T) {
	for _, tt := range []struct {
		name   string
		damage func([]byte) []byte
		step   string
	}{
		{"cut in the last line", func(d []byte) []byte { return d[:len(d)-5] }, "w-c"},
		{"rubbish at the end", func(d []byte) []byte { return append(d, "\x00\x00{"...) }, "r-c"},
		{"rubbish in the middle", func(d []byte) []byte {
			lines := strings.SplitAfter(string(d), "\n")
			return []byte(lines[0] + lines[1] + "###\n" + strings.Join(lines[2:], ""))
		}, "w-c"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			b := open(t, app.Config{})
			b.ok("POST", "/api/start", `{"voice":true}`)
			b.ok("POST", "/api/event", said("smell", "choice", "none"))
			b.ok("POST", "/api/event", said("w-c", "command", "go-live"))
			id := b.state().View.Job
			b.hub.Close()
			name := filepath.Join(b.dir, "jobs", id, "journal.jsonl")
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(name, tt.damage(data), 0o600); err != nil {
				t.Fatal(err)
			}
			c := open(t, app.Config{Dir: b.dir})
			if v := c.state().View; v == nil || v.Step.ID != tt.step {
				t.Fatalf("resumed at %+v", v)
			}
			c.ok("POST", "/api/event", said("", "command", "repeat")) // the journal goes on
			c.hub.Close()
			if d := open(t, app.Config{Dir: b.dir}); d.state().View == nil {
				t.Error("the mended journal does not resume")
			}
		})
	}
}

// A full disk: the answer is not taken, the person is told, and the next answer is taken when there is room again.
func TestFullDisk(t *testing.T) {
	d := faultdisk.New()
	b := open(t, app.Config{Disk: d})
	b.ok("POST", "/api/start", `{"voice":true}`)
	var full atomic.Bool
	d.Fail = func(op, _ string) error {
		if full.Load() && (op == "write" || op == "mkdir") {
			return faultdisk.ErrFull
		}
		return nil
	}
	full.Store(true)
	status, data := b.call("POST", "/api/event", said("smell", "choice", "none"))
	if status == 200 || !strings.Contains(data, "cannot be written") {
		t.Fatalf("on a full disk: %d %s", status, data)
	}
	if v := b.state().View; v.Step.ID != "smell" {
		t.Errorf("the step went on to %q without being kept", v.Step.ID)
	}
	b.eventually("the refusal is heard", func() bool { return b.host.has("cue refused") })
	if status, data := b.call("POST", "/api/event", said("smell", "choice", "none")); status == 200 || !strings.Contains(data, "Say stop") {
		t.Errorf("the next answer: %d %s", status, data)
	}
	full.Store(false)
	b.ok("POST", "/api/event", said("smell", "choice", "none"))
	if v := b.state().View; v.Step.ID != "w-c" {
		t.Errorf("with room again the step is %q", v.Step.ID)
	}
	b.hub.Close()
	if c := open(t, app.Config{Disk: d}); c.state().View.Step.ID != "w-c" {
		t.Error("the journal does not hold what was taken")
	}
}

func TestDeleteAndUndo(t *testing.T) {
	b := open(t, app.Config{})
	b.ok("POST", "/api/start", `{"voice":true}`)
	id := b.state().View.Job
	b.ok("POST", "/api/jobs/"+id+"/delete", `{}`)
	if s := b.state(); s.View != nil || len(s.Jobs) != 0 {
		t.Errorf("after deleting: %+v", s)
	}
	b.ok("POST", "/api/jobs/"+id+"/restore", `{}`)
	if s := b.state(); len(s.Jobs) != 1 || s.Jobs[0].ID != id {
		t.Errorf("after bringing it back: %+v", s.Jobs)
	}
	b.ok("POST", "/api/jobs/"+id+"/resume", `{}`)
	for _, what := range []string{"steps", "journal", "transcript", "export.zip"} {
		if data := b.ok("GET", "/api/jobs/"+id+"/"+what, ""); len(data) < 50 {
			t.Errorf("%s: %q", what, data)
		}
	}
	b.ok("POST", "/api/jobs/"+id+"/say/1", `{}`)
	b.eventually("the replay is heard", func() bool { return b.host.has("First, your nose") })
}

func TestWrongRequests(t *testing.T) {
	b := open(t, app.Config{})
	for _, tt := range []struct {
		method, path, body string
		status             int
	}{
		{"GET", "/nothing.js", "", 404},
		{"GET", "/../hub.go", "", 404},
		{"POST", "/", "", 405},
		{"GET", "nonsense", "", 400},
		{"GET", "/api/nothing", "", 404},
		{"PUT", "/api/state", "", 405},
		{"POST", "/api/start", "{", 400},
		{"POST", "/api/start", `{"voice":true}{}`, 400},
		{"POST", "/api/start", `{"colour":1}`, 400},
		{"POST", "/api/event", `{"event":{"at":0,"type":"tick"}}`, 400},
		{"POST", "/api/event", `{"event":{"at":0,"type":"begin"}}`, 400},
		{"POST", "/api/event", `{"event":{"at":0,"type":"said"}}`, 400},
		{"POST", "/api/event", `{"event":{"at":0,"type":"said","said":{"text":"","source":"voice"}}}`, 400},
		{"POST", "/api/event", `{"event":{"at":0,"type":"device","device":{"kind":"toaster"}}}`, 400},
		{"POST", "/api/event", said("", "choice", "none"), 409},
		{"GET", "/api/jobs/../../etc/transcript", "", 404},
		{"GET", "/api/jobs/20200101-000000/transcript", "", 404},
		{"GET", "/api/jobs/20200101-000000/photo/../../key", "", 404},
		{"GET", "/api/jobs/20200101-000000/photo/%2e%2e%2fkey.jpg", "", 404},
		{"POST", "/api/jobs/20200101-000000/delete", "{}", 404},
		{"GET", "/api/drawing", "", 404},
		{"GET", "/api/drawing?kind=place", "", 404},
		{"GET", "/api/jobs/20200101-000000/handover", "", 404},
		{"POST", "/api/jobs/20200101-000000/say/handover", "{}", 404},
		{"POST", "/api/prefs", `{"meter":{"rms":"perhaps"}}`, 400},
		{"POST", "/api/prefs", `{"meter":{"cat":"CAT IX"}}`, 400},
	} {
		if status, data := b.call(tt.method, tt.path, tt.body); status != tt.status {
			t.Errorf("%s %s %s: %d %s, want %d", tt.method, tt.path, tt.body, status, data, tt.status)
		}
	}
}

// The meter of the first run goes into every job after it; one that is not known is asked in the job.
func TestMeterGoesIntoTheJob(t *testing.T) {
	for _, tt := range []struct {
		name, prefs string
		known, rms  bool
	}{
		{"never told", `{"voice":true}`, false, false},
		{"not sure", `{"voice":true,"meter":{"cat":"CAT III"}}`, false, false},
		{"true RMS", `{"voice":true,"meter":{"rms":"yes","amps":"uA","cat":"CAT III"}}`, true, true},
		{"plain", `{"voice":true,"meter":{"rms":"no","amps":"none"}}`, true, false},
	} {
		b := open(t, app.Config{New: app.NewMachine})
		b.ok("POST", "/api/prefs", tt.prefs)
		b.ok("POST", "/api/start", `{"voice":false}`)
		m := b.journal()[0].Begin.Meter
		if (m != nil) != tt.known || m != nil && m.TrueRMS != tt.rms {
			t.Errorf("%s: the job begins with the meter %+v", tt.name, m)
		}
	}
}

// Each picture of a step is drawn, and a finished job has a summary to hand over.
func TestPicturesAndHandover(t *testing.T) {
	b := open(t, app.Config{})
	b.ok("POST", "/api/start", `{"voice":false}`)
	for _, kind := range []string{"near", "all"} {
		if svg := b.ok("GET", "/api/drawing?kind="+kind, ""); !strings.Contains(svg, "<svg") {
			t.Errorf("%s: %.60s", kind, svg)
		}
	}
	id := b.state().View.Job
	if status, _ := b.call("GET", "/api/jobs/"+id+"/handover", ""); status != 404 {
		t.Errorf("the summary of an open job: %d", status)
	}
}

func TestPhotoIsStripped(t *testing.T) {
	b := open(t, app.Config{})
	b.ok("POST", "/api/start", `{"voice":true}`)
	jpeg := "\xff\xd8\xff\xe0\x00\x04JF\xff\xe1\x00\x0aExif-GPS\xff\xfe\x00\x04me\xff\xda\x00\x02rest\xff\xd9"
	if err := b.hub.Photo("before", []byte(jpeg)); err != nil {
		t.Fatal(err)
	}
	events := b.journal()
	p := events[len(events)-1].Photo
	if p == nil {
		t.Fatal("no photo event")
	}
	data := b.ok("GET", "/api/jobs/"+b.state().View.Job+"/photo/"+p.Name, "")
	if strings.Contains(data, "Exif") || strings.Contains(data, "me") || !strings.Contains(data, "rest") {
		t.Errorf("kept %q", data)
	}
	for _, bad := range []string{"", "GIF89a", "\xff\xd8\xff\xe1\xff\xff", "\xff\xd8\x00"} {
		if err := b.hub.Photo("before", []byte(bad)); err == nil {
			t.Errorf("picture %q was taken", bad)
		}
	}
	if err := b.hub.Photo("../x", []byte(jpeg)); err == nil {
		t.Error("a bad id was taken")
	}
}

// fakeEar hears an utterance for every block of sound.
type fakeEar struct {
	l        app.Listener
	mu       sync.Mutex
	speaking []string
	fail     bool
}

func (e *fakeEar) Feed(pcm []byte, at int64) error {
	if e.fail {
		return errors.New("the engine broke")
	}
	e.l.Level(-20, 25)
	e.l.Partial("no")
	e.l.Complete()
	e.l.Utterance(utterance.Utterance{Text: "none", Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Choice, ID: "none"}}})
	return nil
}
func (e *fakeEar) Class(string)          {}
func (e *fakeEar) Expect(grammar.Expect) {}
func (e *fakeEar) Close()                {}
func (e *fakeEar) Speaking(t string) {
	e.mu.Lock()
	defer e.mu.Unlock()
	e.speaking = append(e.speaking, t)
}

func TestHearing(t *testing.T) {
	ear := &fakeEar{}
	b := open(t, app.Config{Speech: app.Speech{Open: func(l app.Listener) (app.Ear, error) { ear.l = l; return ear, nil }}})
	b.eventually("the ear is ready", func() bool { return b.state().Ear.State == "ready" })
	b.ok("POST", "/api/start", `{"voice":true}`)
	if err := b.hub.Feed(make([]byte, 3200)); err != nil {
		t.Fatal(err)
	}
	b.eventually("the answer is taken", func() bool { return b.state().View.Step.ID == "w-c" })
	b.eventually("a whole answer is chimed", func() bool { return b.host.has("cue heard") })
	if err := b.hub.Feed(make([]byte, 3)); err == nil {
		t.Error("half a sample was taken")
	}
	b.eventually("the own voice is known", func() bool {
		ear.mu.Lock()
		defer ear.mu.Unlock()
		return len(ear.speaking) > 0 && strings.Contains(ear.speaking[0], "nose")
	})
	ear.fail = true
	if err := b.hub.Feed(make([]byte, 3200)); err != nil {
		t.Fatal(err)
	}
	b.eventually("the failure is told", func() bool { return b.state().Ear.State == "off" })
	if err := b.hub.Feed(make([]byte, 3200)); !errors.Is(err, app.ErrDeaf) {
		t.Errorf("feeding a broken ear: %v", err)
	}
	b.ok("POST", "/api/event", said("w-c", "command", "go-live")) // touch goes on
	ear.fail = false
	b.eventually("it is started again", func() bool { time.Sleep(10 * time.Millisecond); return b.state().Ear.State == "ready" })
	if err := b.hub.Feed(make([]byte, 3200)); err != nil {
		t.Errorf("after the restart: %v", err)
	}
}

func TestNoRecogniser(t *testing.T) {
	b := open(t, app.Config{Speech: app.Speech{Open: func(app.Listener) (app.Ear, error) { return nil, errors.New("speech is off: the model is missing") }}})
	b.eventually("it is told", func() bool {
		e := b.state().Ear
		return e.State == "off" && strings.Contains(e.Why, "model is missing")
	})
	b.ok("POST", "/api/start", `{"voice":true}`)
	events := b.journal()
	if last := events[len(events)-1]; last.Device == nil || last.Device.Kind != "speech-off" {
		t.Errorf("the job was not told: %+v", last)
	}
}

func FuzzMessage(f *testing.F) {
	f.Add(`{"id":1,"method":"GET","path":"/api/state"}`)
	f.Add(`{"id":2,"method":"POST","path":"/api/event","body":` + said("", "choice", "none") + `}`)
	f.Add(`{"id":2,"method":"POST","path":"/api/jobs/a/delete","body":{}}`)
	f.Add(`[]`)
	f.Add(`{"id":1e99}`)
	dir := f.TempDir()
	hub, err := app.Open(app.Config{Dir: dir, Host: &host{}, New: walker})
	if err != nil {
		f.Fatal(err)
	}
	f.Cleanup(hub.Close)
	f.Fuzz(func(t *testing.T, msg string) {
		var r app.Reply
		if err := json.Unmarshal(hub.Message([]byte(msg)), &r); err != nil {
			t.Fatalf("the reply is not JSON: %v", err)
		}
		if r.Status < 200 || r.Status > 599 {
			t.Errorf("status %d", r.Status)
		}
	})
}

func FuzzPhoto(f *testing.F) {
	f.Add([]byte("\xff\xd8\xff\xe0\x00\x04JF\xff\xda\x00\x02rest"))
	f.Fuzz(func(t *testing.T, data []byte) {
		out, err := app.StripJPEG(data)
		if err == nil && (len(out) > len(data) || len(out) < 4) {
			t.Errorf("%d bytes became %d", len(data), len(out))
		}
	})
}
