package app_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"readback/core/journal"
	"readback/core/lab/faultdisk"
	"readback/core/protocol"
	"readback/mobile/app"
	"readback/mobile/lab/pagetest"
)

// clumsy is a machine with a mistake in it: it panics, hangs or takes its time at what says so.
type clumsy struct {
	app.Machine
	hang chan struct{}
}

func (c *clumsy) Step(ev protocol.Event) ([]protocol.Effect, error) {
	if ev.Said != nil {
		switch {
		case ev.Said.Text == "panic":
			panic("a mistake made for this test")
		case ev.Said.Text == "hang":
			<-c.hang
		}
	}
	return c.Machine.Step(ev)
}

// answerWith is an answer with a text of its own.
func answerWith(text, kind, id string) string {
	return fmt.Sprintf(`{"step":"","event":{"at":0,"type":"said","said":{"text":%q,"source":"touch","meanings":[{"kind":%q,"id":%q,"cost":0}]}}}`, text, kind, id)
}

// "I smell gas" is said and shown on a disk that is full, broken, read-only, that hangs, and while another event hangs.
func TestAlarmWithoutDisk(t *testing.T) {
	for _, tt := range []struct {
		name string
		fail func(op string, hang chan struct{}) error
	}{
		{"full", func(op string, _ chan struct{}) error {
			if op == "write" || op == "mkdir" || op == "open" {
				return faultdisk.ErrFull
			}
			return nil
		}},
		{"broken", func(string, chan struct{}) error { return faultdisk.ErrDevice }},
		{"every sync fails", func(op string, _ chan struct{}) error {
			if op == "sync" || op == "syncfolder" {
				return faultdisk.ErrDevice
			}
			return nil
		}},
		{"hangs", func(_ string, hang chan struct{}) error { <-hang; return nil }},
	} {
		for _, job := range []bool{true, false} {
			t.Run(fmt.Sprintf("%s, job %v", tt.name, job), func(t *testing.T) {
				d, hang := faultdisk.New(), make(chan struct{})
				var bad atomic.Bool
				d.Fail = func(op, _ string) error {
					if bad.Load() {
						return tt.fail(op, hang)
					}
					return nil
				}
				b := open(t, app.Config{Disk: d})
				t.Cleanup(sync.OnceFunc(func() { bad.Store(false); close(hang) })) // before the hub is closed
				if job {
					b.ok("POST", "/api/start", `{"voice":true}`)
				}
				bad.Store(true)
				answered := make(chan int, 1)
				go func() {
					status, _ := b.call("POST", "/api/event", said("", "emergency", "gas"))
					answered <- status
				}()
				b.eventually("the emergency is said", func() bool { return b.host.has("say emergency Leave now") || b.host.has("say info Leave now") })
				b.eventually("the cue sounds", func() bool { return b.host.has("cue") })
				if tt.name == "hangs" {
					return
				}
				if status := <-answered; status != 200 {
					t.Errorf("status %d", status)
				}
				if v := b.state().View; v == nil || v.State != "emergency" {
					t.Errorf("the page shows %+v", v)
				}
			})
		}
	}
}

// While an answer hangs in the planner, an emergency is said and shown all the same.
func TestAlarmWhileAnAnswerHangs(t *testing.T) {
	hang := make(chan struct{})
	b := open(t, app.Config{New: func(protocol.Begin) (app.Machine, error) { return &clumsy{pagetest.NewWalker(), hang}, nil }})
	t.Cleanup(sync.OnceFunc(func() { close(hang) }))
	shown := make(chan string, 100)
	defer b.hub.Subscribe(func(m []byte) {
		if strings.Contains(string(m), `"state":"emergency"`) {
			shown <- string(m)
		}
	})()
	b.ok("POST", "/api/start", `{"voice":true}`)
	go b.call("POST", "/api/event", answerWith("hang", "choice", "none"))
	time.Sleep(20 * time.Millisecond)
	began := time.Now()
	go b.call("POST", "/api/event", said("", "emergency", "gas"))
	b.eventually("it is said", func() bool { return b.host.has("say emergency Leave now. Touch no switch.") })
	<-shown
	if took := time.Since(began); took > 3*time.Second {
		t.Errorf("after %v", took)
	}
}

// A panic in a step costs that one event: it is told, set aside, and the next event works; an emergency that panics is said all the same.
func TestMistakeInTheMachine(t *testing.T) {
	b := open(t, app.Config{New: func(protocol.Begin) (app.Machine, error) { return &clumsy{pagetest.NewWalker(), nil}, nil }})
	b.ok("POST", "/api/start", `{"voice":true}`)
	b.ok("POST", "/api/event", said("smell", "choice", "none"))
	if status, data := b.call("POST", "/api/event", answerWith("panic", "choice", "none")); status == 200 || !strings.Contains(data, "a mistake in the program") {
		t.Fatalf("a panic got %d %s", status, data)
	}
	b.eventually("it is told", func() bool { return b.host.has("say warning a mistake in the program") })
	if v := b.state().View; v.Step.ID != "w-c" {
		t.Errorf("the job went on to %q", v.Step.ID)
	}
	b.ok("POST", "/api/event", said("w-c", "command", "go-live"))
	id := b.state().View.Job
	aside, err := app.Folder(b.dir).ReadFile("jobs/" + id + "/set-aside.jsonl")
	if err != nil || !strings.Contains(string(aside), "a mistake made for this test") {
		t.Errorf("the event was not set aside: %v %s", err, aside)
	}
	b.ok("POST", "/api/event", answerWith("panic", "emergency", "gas"))
	b.eventually("it is said", func() bool { return b.host.has("say emergency Leave now. Touch no switch.") })
	if v := b.state().View; v.State != "emergency" {
		t.Errorf("the job does not know of it: %q", v.State)
	}
	b.ok("POST", "/api/event", said("", "command", "repeat"))
	b.hub.Close()
	if c := open(t, app.Config{Dir: b.dir}); c.state().View == nil {
		t.Error("the job does not come back")
	}
}

// On a full disk ordinary answers are refused, and who says stop is led to the end, which stands in the record.
func TestLeftSafeOnAFullDisk(t *testing.T) {
	d := faultdisk.New()
	var full atomic.Bool
	room := 0
	d.Fail = func(op, name string) error {
		if !full.Load() {
			return nil
		}
		if op == "remove" && strings.HasSuffix(name, "reserve") && room == 0 {
			room = 30 // writes
		}
		if op == "write" && strings.Contains(name, "journal") && room > 0 {
			room--
			return nil
		}
		if op == "write" || op == "mkdir" {
			return faultdisk.ErrFull
		}
		return nil
	}
	b := open(t, app.Config{Disk: d})
	b.ok("POST", "/api/start", `{"voice":true}`)
	full.Store(true)
	if status, _ := b.call("POST", "/api/event", said("smell", "choice", "none")); status == 200 {
		t.Fatal("an ordinary answer was taken on a full disk")
	}
	b.ok("POST", "/api/event", said("", "command", "stop"))
	for range 4 {
		b.ok("POST", "/api/event", said("", "choice", "done"))
	}
	id := b.state().View.Job
	b.hub.Close()
	data, err := d.Crash(1).ReadFile(app.Journal(id))
	if err != nil {
		t.Fatal(err)
	}
	if r := journal.Read(data); r.Damage != nil || len(r.Events) < 6 {
		t.Errorf("%d events in the record, %v", len(r.Events), r.Damage)
	}
}

// A second program on the folder is refused.
func TestOneProgramAFolder(t *testing.T) {
	b := open(t, app.Config{})
	if _, err := app.Open(app.Config{Dir: b.dir, Host: &host{}, New: walker}); !errors.Is(err, app.ErrRunning) {
		t.Fatalf("a second program: %v", err)
	}
	b.hub.Close()
	c, err := app.Open(app.Config{Dir: b.dir, Host: &host{}, New: walker})
	if err != nil {
		t.Fatalf("after the first ended: %v", err)
	}
	c.Close()
}

// Damage is told on the page that comes later, by voice, and in the record.
func TestDamageIsTold(t *testing.T) {
	d := faultdisk.New()
	b := open(t, app.Config{Disk: d})
	b.ok("POST", "/api/start", `{"voice":true}`)
	for _, step := range []string{"smell", "w-c", "r-c"} {
		b.ok("POST", "/api/event", said(step, "choice", "none"))
	}
	id := b.state().View.Job
	b.hub.Close()
	data, err := d.ReadFile(app.Journal(id))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(string(data), "\n")
	lines[2] = strings.ReplaceAll(lines[2], "none", "some")
	d.Put(app.Journal(id), []byte(strings.Join(lines, "")))
	c := open(t, app.Config{Disk: d})
	s := c.state()
	if !strings.Contains(s.Trouble, "Entries 3 to 4") || !strings.Contains(s.Trouble, "2025-11-25") {
		t.Errorf("the page is told %q", s.Trouble)
	}
	c.eventually("it is said", func() bool { return c.host.has("say warning Entries 3 to 4") })
	if page := c.ok("GET", "/api/jobs/"+id+"/transcript", ""); !strings.Contains(page, "Entries 3 to 4") {
		t.Error("the record does not tell")
	}
	files, err := d.List("jobs/" + id)
	if err != nil {
		t.Fatal(err)
	}
	kept := 0
	for _, f := range files {
		if strings.HasPrefix(f.Name, "journal-damaged-") {
			kept++
		}
	}
	if kept != 1 {
		t.Errorf("%d damaged journals are kept", kept)
	}
	// Whole lines missing at the end are no damage of any line; the last view shown tells.
	c.ok("POST", "/api/event", said("", "choice", "none"))
	c.hub.Close()
	data, err = d.ReadFile(app.Journal(id))
	if err != nil {
		t.Fatal(err)
	}
	lines = strings.SplitAfter(strings.TrimSpace(string(data)), "\n")
	d.Put(app.Journal(id), []byte(strings.Join(lines[:len(lines)-1], "")))
	if s := open(t, app.Config{Disk: d}).state(); !strings.Contains(s.Trouble, "the end is missing") {
		t.Errorf("a line missing at the end: %q", s.Trouble)
	}
}

// A clock that is set does not stop the timers, does not turn time back, and is noted.
func TestClockIsSet(t *testing.T) {
	var wall, steady atomic.Int64
	wall.Store(1764070000000)
	d := faultdisk.New()
	h := &host{}
	hub, err := app.Open(app.Config{Disk: d, Host: h, New: walker, Now: wall.Load, Elapsed: func() time.Duration { return time.Duration(steady.Load()) * time.Millisecond }})
	if err != nil {
		t.Fatal(err)
	}
	defer hub.Close()
	b := &bench{T: t, hub: hub, host: h}
	pass := func(ms, set int64) { wall.Add(ms + set); steady.Add(ms) }
	b.ok("POST", "/api/start", `{"voice":true}`)
	pass(1000, 0)
	b.ok("POST", "/api/event", said("smell", "choice", "none"))
	pass(1000, -3600_000)
	b.ok("POST", "/api/event", said("w-c", "command", "go-live"))
	pass(5000, 0)
	b.ok("POST", "/api/event", said("", "command", "repeat"))
	data, err := d.ReadFile(app.Journal(b.state().View.Job))
	if err != nil {
		t.Fatal(err)
	}
	events := journal.Read(data).Events
	last, noted := int64(0), false
	for _, ev := range events {
		if ev.At < last {
			t.Errorf("event %d is at %d after %d", ev.Seq, ev.At, last)
		}
		last = ev.At
		noted = noted || ev.Device != nil && ev.Device.Kind == "clock"
	}
	if last != 1764070000000+7000 {
		t.Errorf("the last event is at %d", last-1764070000000)
	}
	if !noted {
		t.Error("the jump is not noted")
	}
}

// An answer of a job begun with another program is not given to another question.
func TestAnswersOfAnotherProgram(t *testing.T) {
	d := faultdisk.New()
	b := open(t, app.Config{Disk: d, Version: "1"})
	b.ok("POST", "/api/start", `{"voice":true}`)
	b.ok("POST", "/api/event", said("smell", "choice", "none"))
	b.ok("POST", "/api/event", said("w-c", "command", "go-live"))
	b.ok("POST", "/api/event", said("r-c", "choice", "none"))
	b.hub.Close()
	c := open(t, app.Config{Disk: d, Version: "2", New: func(protocol.Begin) (app.Machine, error) { return renamed{pagetest.NewWalker()}, nil }})
	if s := c.state(); !strings.Contains(s.Trouble, "changed since this job began. 2 answers") {
		t.Errorf("told %q", s.Trouble)
	}
}

// renamed asks its first question under another name.
type renamed struct{ app.Machine }

func (r renamed) View() *protocol.View {
	v := r.Machine.View()
	if v != nil && v.Step.ID == "smell" {
		v.Step.ID = "nose"
	}
	return v
}

// Pictures and sounds are held to the checksum they were kept with.
func TestChangedPicture(t *testing.T) {
	d := faultdisk.New()
	b := open(t, app.Config{Disk: d})
	b.ok("POST", "/api/start", `{"voice":true}`)
	if err := b.hub.Photo("before", []byte("\xff\xd8\xff\xe0\x00\x04JF\xff\xda\x00\x02rest\xff\xd9")); err != nil {
		t.Fatal(err)
	}
	id := b.state().View.Job
	data, err := d.ReadFile(app.Journal(id))
	if err != nil {
		t.Fatal(err)
	}
	events := journal.Read(data).Events
	name := events[len(events)-1].Photo.Name
	b.ok("GET", "/api/jobs/"+id+"/photo/"+name, "")
	d.Flip("jobs/"+id+"/"+name, 80)
	if status, data := b.call("GET", "/api/jobs/"+id+"/photo/"+name, ""); status == 200 || !strings.Contains(data, "checksum") {
		t.Errorf("a changed picture: %d %s", status, data)
	}
	if page := b.ok("GET", "/api/jobs/"+id+"/transcript", ""); !strings.Contains(page, "was changed after it was taken") {
		t.Error("the record does not tell of the changed picture")
	}
	var s app.State
	if err := json.Unmarshal([]byte(b.ok("GET", "/api/state", "")), &s); err != nil || s.View == nil {
		t.Errorf("the job does not go on: %v", err)
	}
}
