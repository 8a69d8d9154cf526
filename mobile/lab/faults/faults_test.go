// Package faults injects one fault after the other into the whole program below the page: each must be told to the person, and survived.
package faults

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"net"
	"net/http"
	"net/http/cookiejar"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/fstest"
	"time"

	"github.com/coder/websocket"

	"readback/core/journal"
	"readback/core/lab/faultdisk"
	"readback/core/lab/metric"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/flows"
	"readback/mobile/app"
	"readback/mobile/desktop/web"
	"readback/mobile/lab/pagetest"
	"readback/speech/grammar"
	"readback/speech/model"
	"readback/speech/voice"
)

// person hears what the program says and sees what it shows.
type person struct {
	mu   sync.Mutex
	said []string
}

func (p *person) hear(s string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.said = append(p.said, s)
}
func (p *person) Say(_, text, level string, _ bool) { p.hear(level + ": " + text) }
func (p *person) Hush()                             {}
func (p *person) Cue(name string)                   { p.hear("cue " + name) }
func (p *person) TakePhoto(string)                  {}
func (p *person) KeepAwake(bool)                    {}
func (p *person) Vibrate(string)                    {}
func (p *person) Share(string)                      {}

func (p *person) heard(what string) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	return strings.Contains(strings.ToLower(strings.Join(p.said, "\n")), strings.ToLower(what))
}

// lab is a program under test on a disk that obeys.
type lab struct {
	*person
	d    *faultdisk.Disk
	hub  *app.Hub
	fail atomic.Pointer[func(op, name string) error]
	last string // what the last request was answered with
}

func begin(c app.Config) (*lab, error) { return beginOn(faultdisk.New(), c) }

func beginOn(d *faultdisk.Disk, c app.Config) (*lab, error) {
	l := &lab{person: &person{}, d: d}
	d.Fail = func(op, name string) error {
		if f := l.fail.Load(); f != nil {
			return (*f)(op, name)
		}
		return nil
	}
	c.Disk, c.Host = d, l.person
	if c.New == nil {
		c.New = func(protocol.Begin) (app.Machine, error) { return pagetest.NewWalker(), nil }
	}
	if c.Now == nil {
		now := int64(1764070000000)
		var mu sync.Mutex
		c.Now = func() int64 { mu.Lock(); defer mu.Unlock(); now += 1000; return now }
	}
	hub, err := app.Open(c)
	if err != nil {
		return nil, err
	}
	l.hub = hub
	hub.Subscribe(func(m []byte) {
		if bytes.Contains(m, []byte(`"type":"trouble"`)) || bytes.Contains(m, []byte(`"emergency"`)) || bytes.Contains(m, []byte(`"type":"ear"`)) {
			l.hear(string(m))
		}
	})
	return l, nil
}

func (l *lab) call(method, path, body string) bool {
	status, _, data := l.hub.Request(method, path, []byte(body))
	l.last = string(data)
	if status != 200 {
		l.hear(l.last)
	}
	return status == 200
}

func (l *lab) start() error {
	if !l.call("POST", "/api/start", `{"voice":true}`) {
		return errors.New(l.last)
	}
	return nil
}

func event(text, kind, id string) string {
	return fmt.Sprintf(`{"step":"","event":{"at":0,"type":"said","said":{"text":%q,"source":"touch","meanings":[{"kind":%q,"id":%q,"cost":0}]}}}`, text, kind, id)
}

func (l *lab) answer() bool    { return l.call("POST", "/api/event", event("x", "choice", "none")) }
func (l *lab) emergency() bool { return l.call("POST", "/api/event", event("x", "emergency", "gas")) }

func (l *lab) state() (s app.State) {
	_, _, data := l.hub.Request("GET", "/api/state", nil)
	_ = json.Unmarshal(data, &s)
	return s
}

// soon waits for what comes from another goroutine.
func soon(what string, f func() bool) error {
	for range 2000 {
		if f() {
			return nil
		}
		time.Sleep(10 * time.Millisecond)
	}
	return errors.New("never: " + what)
}

func (l *lab) told(what string) error {
	if err := soon("told "+what, func() bool {
		s := l.state()
		return l.heard(what) || strings.Contains(strings.ToLower(s.Trouble), strings.ToLower(what))
	}); err != nil {
		l.mu.Lock()
		defer l.mu.Unlock()
		return fmt.Errorf("not told %q; told was %.600s", what, strings.Join(l.said, " | "))
	}
	return nil
}

// goesOn tells whether an answer and an emergency are taken.
func (l *lab) goesOn() error {
	if !l.answer() {
		return errors.New("an answer after it: " + l.last)
	}
	if !l.emergency() {
		return errors.New("an emergency after it: " + l.last)
	}
	return soon("the emergency is shown", func() bool { v := l.state().View; return v != nil && v.State == "emergency" })
}

// onDisk is a fault of the disk in the middle of a job: an ordinary answer is refused with the reason, an emergency works, and when it is
// over answers are taken again.
func onDisk(what string, fail func(op, name string) error) func(*testing.T) error {
	return func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		l.fail.Store(&fail)
		if l.answer() {
			return errors.New("an answer that is not kept was taken")
		}
		if err := l.told(what); err != nil {
			return err
		}
		if !l.emergency() {
			return errors.New("emergency refused: " + l.last)
		}
		l.fail.Store(nil)
		return l.goesOn()
	}
}

// atStart is a fault of the disk when a job begins: it is told, an emergency works, and the next start does.
func atStart(what string, fail func(op, name string) error) func(*testing.T) error {
	return func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		l.fail.Store(&fail)
		if l.start() == nil {
			return errors.New("a job that cannot be kept began")
		}
		if err := l.told(what); err != nil {
			return err
		}
		if !l.emergency() {
			return errors.New("emergency refused: " + l.last)
		}
		l.fail.Store(nil)
		if err := l.start(); err != nil {
			return err
		}
		return l.goesOn()
	}
}

func fails(err error, ops ...string) func(op, name string) error {
	return func(op, _ string) error {
		for _, o := range ops {
			if o == op {
				return err
			}
		}
		return nil
	}
}

// changed is damage to a job's files while the program is not running: it is told when it comes back, and the job goes on.
func changed(what string, damage func(d *faultdisk.Disk, journal string, data []byte)) func(*testing.T) error {
	return func(*testing.T) error {
		l, id, err := closed()
		if err != nil {
			return err
		}
		name := "jobs/" + id + "/journal.jsonl"
		data, err := l.d.ReadFile(name)
		if err != nil {
			return err
		}
		damage(l.d, name, data)
		c, err := beginOn(l.d, app.Config{})
		if err != nil {
			return err
		}
		defer c.hub.Close()
		if err := c.told(what); err != nil {
			return err
		}
		if c.state().View == nil { // it cannot go on; the next job does
			if err := c.start(); err != nil {
				return err
			}
		}
		return c.goesOn()
	}
}

// closed is a job with three answers, a picture and a sound, left on the disk.
func closed() (*lab, string, error) {
	l, err := begin(app.Config{})
	if err != nil {
		return nil, "", err
	}
	if err := l.start(); err != nil {
		return nil, "", err
	}
	for range 3 {
		l.answer()
	}
	if err := l.hub.Photo("before", []byte("\xff\xd8\xff\xe0\x00\x04JF\xff\xda\x00\x02rest\xff\xd9")); err != nil {
		return nil, "", err
	}
	id := l.state().View.Job
	l.hub.Close()
	return l, id, nil
}

func put(edit func(lines []string) []string) func(*faultdisk.Disk, string, []byte) {
	return func(d *faultdisk.Disk, name string, data []byte) {
		d.Put(name, []byte(strings.Join(edit(strings.SplitAfter(strings.TrimSpace(string(data)), "\n")), "")))
	}
}

// underIt is somebody's hand at the open journal.
func underIt(hand func(d *faultdisk.Disk, name string) error) func(*testing.T) error {
	return func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		l.answer()
		id := l.state().View.Job
		if err := hand(l.d, "jobs/"+id+"/journal.jsonl"); err != nil {
			return err
		}
		if !l.answer() {
			return errors.New(l.last)
		}
		if err := l.told("I wrote it again"); err != nil {
			return err
		}
		data, err := l.d.Crash(1).ReadFile("jobs/" + id + "/journal.jsonl")
		if err != nil {
			return err
		}
		if r := journal.Read(data); r.Damage != nil || len(r.Events) != 3 {
			return fmt.Errorf("%d events after it, %v", len(r.Events), r.Damage)
		}
		return l.goesOn()
	}
}

// clumsy is a machine that panics, hangs or is slow where the words say so.
type clumsy struct {
	app.Machine
	hang chan struct{}
}

func (c clumsy) Step(ev protocol.Event) ([]protocol.Effect, error) {
	if ev.Said != nil {
		switch ev.Said.Text {
		case "panic":
			var none []int
			_ = none[3]
		case "hang":
			<-c.hang
		}
	}
	return c.Machine.Step(ev)
}

func inMachine(what string, do func(l *lab) error) func(*testing.T) error {
	return func(*testing.T) error {
		hang := make(chan struct{})
		l, err := begin(app.Config{New: func(protocol.Begin) (app.Machine, error) { return clumsy{pagetest.NewWalker(), hang}, nil }})
		if err != nil {
			return err
		}
		if err := l.start(); err != nil {
			return err
		}
		if err := do(l); err != nil {
			return err
		}
		if what != "" {
			told := soon("told "+what, func() bool { return l.heard(what) })
			if told != nil {
				return told
			}
		}
		close(hang)
		defer l.hub.Close()
		return l.goesOn()
	}
}

// atTheDoor is an event that must not get in.
func atTheDoor(what, ev string) func(*testing.T) error {
	return func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		before := l.state().View.Seq
		if l.call("POST", "/api/event", `{"step":"","event":`+ev+`}`) {
			return errors.New("it got in")
		}
		if err := l.told(what); err != nil {
			return err
		}
		if l.state().View.Seq != before {
			return errors.New("the job moved")
		}
		return l.goesOn()
	}
}

func reading(r string) string {
	return `{"at":0,"type":"said","said":{"text":"","source":"touch","meanings":[{"kind":"reading","cost":0,"reading":` + r + `}]}}`
}

// ear is a recogniser with faults.
type ear struct {
	l    app.Listener
	feed func() error
}

func (e *ear) Feed([]byte, int64) error { return e.feed() }
func (e *ear) Class(string)             {}
func (e *ear) Expect(grammar.Expect)    {}
func (e *ear) Speaking(string)          {}
func (e *ear) Close()                   {}

func inHearing(what string, open func(app.Listener) (app.Ear, error), blocks int) func(*testing.T) error {
	return func(*testing.T) error {
		l, err := begin(app.Config{Speech: app.Speech{Open: open}, Patience: 3 * time.Second})
		if err != nil {
			return err
		}
		go func() { time.Sleep(40 * time.Second); l.hub.Close() }() // a recogniser that hangs for ever holds nobody up
		if err := l.start(); err != nil {
			return err
		}
		_ = soon("", func() bool { return l.state().Ear.State != "loading" })
		for range blocks {
			if err := l.hub.Feed(make([]byte, 3200)); err != nil {
				l.hear(err.Error())
			}
		}
		if err := l.told(what); err != nil {
			return err
		}
		return l.goesOn()
	}
}

func inVoice(want error, script string) func(*testing.T) error {
	return func(t *testing.T) error {
		program := filepath.Join(t.TempDir(), "flite")
		if err := os.WriteFile(program, []byte("#!/bin/sh\n"+script+"\n"), 0o755); err != nil {
			return err
		}
		v, err := voice.FindIn(func(name string) (string, error) {
			if name != "flite" {
				return "", exec.ErrNotFound
			}
			return program, nil
		})
		if err != nil {
			return err
		}
		return served(t, func(c *web.Config) {
			c.Voice = func(ctx context.Context, text, _ string, _ bool) ([]byte, error) {
				pcm, err := v.Say(ctx, text, voice.Style{})
				if err == nil {
					return make([]byte, 44+2*len(pcm)), nil
				}
				if want != nil && !errors.Is(err, want) && ctx.Err() == nil {
					return nil, fmt.Errorf("another error than expected: %w", err)
				}
				return nil, err
			}
		}, "The voice cannot speak")
	}
}

// served is a fault behind the page: it is told there, and an emergency works.
func served(t *testing.T, change func(*web.Config), what string) error {
	l, err := web.Listen("127.0.0.1:0")
	if err != nil {
		return err
	}
	first := make(chan string, 4)
	c := web.Config{Dir: t.TempDir(), Hub: app.Config{New: func(protocol.Begin) (app.Machine, error) { return pagetest.NewWalker(), nil }},
		Cues: func(string) []byte { return nil }, Ready: func(a string) { first <- a },
		Voice: func(context.Context, string, string, bool) ([]byte, error) { return make([]byte, 1000), nil }}
	change(&c)
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- web.Serve(ctx, l, c) }()
	defer func() { cancel(); <-done }()
	jar, err := cookiejar.New(nil)
	if err != nil {
		return err
	}
	client := &http.Client{Jar: jar, Timeout: 20 * time.Second}
	r, err := client.Get(<-first)
	if err != nil {
		return err
	}
	r.Body.Close()
	ws, _, err := websocket.Dial(ctx, "ws://"+l.Addr().String()+"/socket", &websocket.DialOptions{HTTPClient: client})
	if err != nil {
		return err
	}
	defer func() { _ = ws.CloseNow() }()
	post := func(path, body string) error {
		r, err := client.Post("http://"+l.Addr().String()+path, "application/json", strings.NewReader(body))
		if err != nil {
			return err
		}
		defer r.Body.Close()
		if r.StatusCode != 200 {
			return fmt.Errorf("%s: %s", path, r.Status)
		}
		return nil
	}
	if err := post("/api/start", `{"voice":true}`); err != nil {
		return err
	}
	wctx, stop := context.WithTimeout(ctx, 40*time.Second)
	defer stop()
	sent := false
	for told, shown := false, false; !told || !shown; {
		_, data, err := ws.Read(wctx)
		if err != nil {
			return fmt.Errorf("told %v, emergency shown %v: %w", told, shown, err)
		}
		told = told || strings.Contains(string(data), what)
		shown = shown || strings.Contains(string(data), `"state":"emergency"`)
		if told && !sent {
			sent = true
			if err := post("/api/event", event("x", "emergency", "gas")); err != nil {
				return err
			}
		}
	}
	return nil
}

type gonePlayer struct{}

func (gonePlayer) Play(context.Context, []byte) error { return errors.New("the sound device is gone") }
func (gonePlayer) Close()                             {}

func clockSet(by time.Duration) func(*testing.T) error {
	return func(*testing.T) error {
		var wall, steady atomic.Int64
		wall.Store(1764070000000)
		l, err := begin(app.Config{Now: wall.Load, Elapsed: func() time.Duration { return time.Duration(steady.Load()) * time.Millisecond }})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		wall.Add(1000 + by.Milliseconds())
		steady.Add(1000)
		if !l.answer() {
			return errors.New(l.last)
		}
		if err := l.told("clock of this device was set"); err != nil {
			return err
		}
		return l.goesOn()
	}
}

// says is a fault that one call must tell, with nothing else to survive.
func says(what string, call func(t *testing.T) error) func(*testing.T) error {
	return func(t *testing.T) error {
		err := call(t)
		if err == nil || !strings.Contains(err.Error(), what) {
			return fmt.Errorf("want %q, got %v", what, err)
		}
		return nil
	}
}

var longHang = make(chan struct{}) // never closed

var faults = []struct {
	name string
	slow bool
	run  func(*testing.T) error
}{
	{"disk full", false, onDisk("no space left", fails(faultdisk.ErrFull, "write", "mkdir"))},
	{"write error", false, onDisk("input/output", fails(faultdisk.ErrDevice, "write"))},
	{"sync error", false, onDisk("input/output", fails(faultdisk.ErrDevice, "sync"))},
	{"cut error after a write error", false, onDisk("no space left", fails(faultdisk.ErrFull, "write", "truncate"))},
	{"disk became read-only", false, onDisk("read-only", fails(errors.New("read-only file system"), "open", "write", "sync", "truncate", "rename", "remove", "mkdir"))},
	{"disk pulled out", false, onDisk("no such device", fails(errors.New("no such device"), "open", "write", "sync", "truncate", "rename", "remove", "mkdir", "list", "read", "there", "syncfolder"))},
	{"disk hangs", true, func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		if err := l.start(); err != nil {
			return err
		}
		hang := make(chan struct{})
		stuck := func(op, _ string) error { <-hang; return nil }
		l.fail.Store(&stuck)
		go l.answer()
		if err := soon("it is told", func() bool { return l.heard("I am slow right now") }); err != nil {
			return err
		}
		go l.emergency()
		if err := soon("the emergency is said", func() bool { return l.heard("emergency: Leave now") }); err != nil {
			return err
		}
		l.fail.Store(nil)
		close(hang)
		defer l.hub.Close()
		return l.goesOn()
	}},
	{"no folder for a job", false, atStart("cannot be made", fails(faultdisk.ErrFull, "mkdir"))},
	{"no room kept for the end", false, atStart("no room", func(op, name string) error {
		if op == "write" && strings.Contains(name, "reserve") {
			return faultdisk.ErrFull
		}
		return nil
	})},
	{"no journal can be made", false, atStart("input/output", func(op, name string) error {
		if op == "open" && strings.Contains(name, "journal") {
			return faultdisk.ErrDevice
		}
		return nil
	})},
	{"folder cannot be synced", false, atStart("input/output", fails(faultdisk.ErrDevice, "syncfolder"))},
	{"choices cannot be kept", false, func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		fail := fails(faultdisk.ErrDevice, "rename")
		l.fail.Store(&fail)
		if l.call("POST", "/api/prefs", `{"voice":true}`) {
			return errors.New("they are said to be kept")
		}
		l.fail.Store(nil)
		if err := l.start(); err != nil {
			return err
		}
		return l.goesOn()
	}},
	{"jobs cannot be listed", false, func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		fail := fails(faultdisk.ErrDevice, "list")
		l.fail.Store(&fail)
		if s := l.state(); s.View == nil || !strings.Contains(s.Trouble, "cannot be listed") {
			return fmt.Errorf("told %q", s.Trouble)
		}
		return l.goesOn()
	}},
	{"journal deleted under it", false, underIt(func(d *faultdisk.Disk, name string) error { return d.Remove(name) })},
	{"journal replaced under it", false, underIt(func(d *faultdisk.Disk, name string) error { return journal.WriteFile(d, name, []byte("other")) })},
	{"journal cut under it", false, underIt(func(d *faultdisk.Disk, name string) error {
		f, err := d.Open(name, journal.Add)
		return errors.Join(err, f.Truncate(10))
	})},
	{"journal's folder deleted under it", false, func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		if err := l.d.Remove("jobs/" + l.state().View.Job); err != nil {
			return err
		}
		if l.answer() {
			return errors.New("an answer that is not kept was taken")
		}
		if err := l.told("cannot be written"); err != nil {
			return err
		}
		if !l.emergency() {
			return errors.New(l.last)
		}
		if err := l.start(); err != nil {
			return err
		}
		return l.goesOn()
	}},
	{"last line cut short", false, changed("cut short", func(d *faultdisk.Disk, name string, data []byte) { d.Put(name, data[:len(data)-20]) })},
	{"zeros at the end", false, changed("cut short", func(d *faultdisk.Disk, name string, data []byte) { d.Put(name, append(data, 0, 0, 0)) })},
	{"a wrong bit", false, changed("wrong bit", func(d *faultdisk.Disk, name string, data []byte) { d.Flip(name, 8*(len(data)/2)) })},
	{"several wrong bytes", false, changed("checksum", put(func(l []string) []string { l[2] = strings.ReplaceAll(l[2], "none", "some"); return l }))},
	{"a line missing", false, changed("checksum", put(func(l []string) []string { return append(l[:1], l[2:]...) }))},
	{"a line twice", false, changed("checksum", put(func(l []string) []string { return append(l[:2:2], l[1:]...) }))},
	{"whole lines missing at the end", false, changed("the end is missing", put(func(l []string) []string { return l[:2] }))},
	{"first line damaged", false, changed("beginning of its record is damaged", put(func(l []string) []string { l[0] = "#" + l[0][30:]; return l }))},
	{"empty journal", false, changed("the journal is empty", func(d *faultdisk.Disk, name string, _ []byte) { d.Put(name, nil) })},
	{"journal missing", false, changed("not exist", func(d *faultdisk.Disk, name string, _ []byte) { _ = d.Remove(name) })},
	{"a field of another program", false, changed("unknown field", func(d *faultdisk.Disk, name string, data []byte) {
		events := journal.Read(data).Events
		var out []byte
		for _, ev := range events { // as format 1, with a word that is not known
			line, err := json.Marshal(ev)
			if err != nil {
				panic(err)
			}
			out = append(append(out, bytes.Replace(line, []byte(`"meanings"`), []byte(`"meanhngs"`), 1)...), '\n')
		}
		d.Put(name, out)
	})},
	{"unreadable journal", false, func(*testing.T) error {
		l, _, err := closed()
		if err != nil {
			return err
		}
		l.d.Fail = nil
		bad := l.d.Crash(1)
		var broken atomic.Bool
		c, err := beginOn(bad, app.Config{})
		if err != nil {
			return err
		}
		c.call("POST", "/api/leave", "{}")
		id := c.state().Jobs[0].ID
		broken.Store(true)
		fail := func(op, name string) error {
			if broken.Load() && op == "read" && strings.Contains(name, "journal") {
				return faultdisk.ErrDevice
			}
			return nil
		}
		c.fail.Store(&fail)
		defer c.hub.Close()
		if c.call("POST", "/api/jobs/"+id+"/resume", "{}") {
			return errors.New("it was opened")
		}
		if err := c.told("input/output"); err != nil {
			return err
		}
		broken.Store(false)
		if !c.call("POST", "/api/jobs/"+id+"/resume", "{}") {
			return errors.New(c.last)
		}
		return c.goesOn()
	}},
	{"a picture changed", false, func(*testing.T) error {
		l, id, err := closed()
		if err != nil {
			return err
		}
		c, err := beginOn(l.d, app.Config{})
		if err != nil {
			return err
		}
		defer c.hub.Close()
		files, err := c.d.List("jobs/" + id)
		if err != nil {
			return err
		}
		for _, f := range files {
			if strings.HasPrefix(f.Name, "photo-") {
				c.d.Flip("jobs/"+id+"/"+f.Name, 90)
				if c.call("GET", "/api/jobs/"+id+"/photo/"+f.Name, "") {
					return errors.New("it is shown")
				}
			}
		}
		if err := c.told("checksum"); err != nil {
			return err
		}
		return c.goesOn()
	}},
	{"choices damaged", false, func(*testing.T) error {
		d := faultdisk.New()
		d.Put("prefs.json", []byte(`{"voice":tr`))
		l, err := beginOn(d, app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if l.state().Prefs.Done {
			return errors.New("they are not asked again")
		}
		if err := l.start(); err != nil {
			return err
		}
		return l.goesOn()
	}},
	{"a panic at an answer", false, inMachine("a mistake in the program", func(l *lab) error { l.call("POST", "/api/event", event("panic", "choice", "none")); return nil })},
	{"a panic at an emergency", false, inMachine("emergency: leave now", func(l *lab) error { l.call("POST", "/api/event", event("panic", "emergency", "gas")); return nil })},
	{"planning hangs", true, inMachine("I am slow right now", func(l *lab) error { go l.call("POST", "/api/event", event("hang", "choice", "none")); return nil })},
	{"an emergency while planning hangs", false, inMachine("emergency: leave now", func(l *lab) error {
		go l.call("POST", "/api/event", event("hang", "choice", "none"))
		time.Sleep(50 * time.Millisecond)
		go l.emergency()
		return nil
	})},
	{"the machine cannot be made", false, func(*testing.T) error {
		bad := true
		l, err := begin(app.Config{New: func(protocol.Begin) (app.Machine, error) {
			if bad {
				return nil, errors.New("an equipment file that cannot be worked")
			}
			return pagetest.NewWalker(), nil
		}})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if l.start() == nil {
			return errors.New("it began")
		}
		if err := l.told("cannot be worked"); err != nil {
			return err
		}
		bad = false
		if err := l.start(); err != nil {
			return err
		}
		return l.goesOn()
	}},
	{"the program changed since", false, func(*testing.T) error {
		l, _, err := closed()
		if err != nil {
			return err
		}
		c, err := beginOn(l.d, app.Config{Version: "next"})
		if err != nil {
			return err
		}
		defer c.hub.Close()
		if err := c.told("changed since this job began"); err != nil {
			return err
		}
		return c.goesOn()
	}},
	{"an exponent of 400", false, atTheDoor("exponent 400", reading(`{"value":{"d":{"m":1,"e":400},"u":"V"}}`))},
	{"an exponent of 2^31", false, atTheDoor("exponent 2147483647", reading(`{"value":{"d":{"m":1,"e":2147483647},"u":"V"}}`))},
	{"the least mantissa", false, atTheDoor("more than 15 digits", reading(`{"value":{"d":{"m":-9223372036854775808},"u":"V"}}`))},
	{"a unit that is none", false, atTheDoor("no unit", reading(`{"value":{"d":{"m":1},"u":"parsec"}}`))},
	{"a thousand meanings", false, atTheDoor("more than 64", `{"at":0,"type":"said","said":{"text":"","source":"touch","meanings":[`+strings.Repeat(`{"kind":"choice","cost":0},`, 1000)+`{"kind":"choice","cost":0}]}}`)},
	{"an endless text", false, atTheDoor("bytes", `{"at":0,"type":"said","said":{"text":"`+strings.Repeat("a", 60000)+`","source":"touch"}}`)},
	{"NaN from the recogniser", false, func(*testing.T) error {
		l, err := begin(app.Config{Speech: app.Speech{Open: func(li app.Listener) (app.Ear, error) {
			return &ear{l: li, feed: func() error {
				li.Utterance(utterance.Utterance{Source: "voice", Text: "none", Margin: math.NaN(), Meanings: []utterance.Meaning{{Kind: utterance.Choice, ID: "none"}}})
				return nil
			}}, nil
		}}})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		_ = soon("", func() bool { return l.state().Ear.State == "ready" })
		if err := l.hub.Feed(make([]byte, 3200)); err != nil {
			return err
		}
		if err := l.told("no such number"); err != nil {
			return err
		}
		return l.goesOn()
	}},
	{"the clock set back", false, clockSet(-time.Hour)},
	{"the clock set on", false, clockSet(3 * time.Hour)},
	{"no recogniser", false, inHearing("model is missing", func(app.Listener) (app.Ear, error) { return nil, errors.New("the model is missing") }, 0)},
	{"the recogniser panics while it opens", false, inHearing("mistake in the program", func(app.Listener) (app.Ear, error) { panic("broken library") }, 0)},
	{"the recogniser fails", false, inHearing("engine broke", func(app.Listener) (app.Ear, error) {
		return &ear{feed: func() error { return errors.New("the engine broke") }}, nil
	}, 1)},
	{"the recogniser panics", false, inHearing("mistake in the program", func(app.Listener) (app.Ear, error) { return &ear{feed: func() error { panic("x") }}, nil }, 1)},
	{"the recogniser hangs", true, inHearing("recogniser does not answer", func(app.Listener) (app.Ear, error) {
		return &ear{feed: func() error { <-longHang; return nil }}, nil
	}, 1)},
	{"the recogniser is too slow", false, inHearing("blocks behind", func(app.Listener) (app.Ear, error) {
		return &ear{feed: func() error { time.Sleep(time.Second); return nil }}, nil
	}, 150)},
	{"a microphone of another rate", false, func(*testing.T) error {
		var steady atomic.Int64
		l, err := begin(app.Config{Elapsed: func() time.Duration { return time.Duration(steady.Load()) },
			Speech: app.Speech{Open: func(app.Listener) (app.Ear, error) { return &ear{feed: func() error { return nil }}, nil }}})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		_ = soon("", func() bool { return l.state().Ear.State == "ready" })
		feed := func(samples int) {
			for range 150 {
				steady.Add(int64(100 * time.Millisecond))
				_ = l.hub.Feed(make([]byte, 2*samples)) // it may be full: the rate counts all the same
				time.Sleep(time.Millisecond)
			}
		}
		feed(1600)
		if l.heard("samples a second") {
			return errors.New("told of a good microphone")
		}
		feed(4800)
		if err := l.told("samples a second instead of 16000"); err != nil {
			return err
		}
		return l.goesOn()
	}},
	{"half a sample", false, func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		if err := l.hub.Feed(make([]byte, 3)); err == nil || !strings.Contains(err.Error(), "not whole") {
			return fmt.Errorf("%v", err)
		}
		return l.goesOn()
	}},
	{"a picture that is none", false, func(*testing.T) error {
		l, err := begin(app.Config{})
		if err != nil {
			return err
		}
		defer l.hub.Close()
		if err := l.start(); err != nil {
			return err
		}
		if err := l.hub.Photo("before", []byte("GIF89a")); err == nil || !strings.Contains(err.Error(), "not a JPEG") {
			return fmt.Errorf("%v", err)
		}
		return l.goesOn()
	}},
	{"no voice", false, func(t *testing.T) error {
		return served(t, func(c *web.Config) {
			c.Voice = func(context.Context, string, string, bool) ([]byte, error) { return nil, voice.ErrNone }
		}, "The voice cannot speak")
	}},
	{"the voice dies", false, inVoice(nil, "kill -9 $$")},
	{"the voice says nothing", false, inVoice(nil, "exit 0")},
	{"the voice writes nonsense", false, inVoice(nil, `for f; do :; done; echo nonsense > "$f"`)},
	{"the voice hangs", true, inVoice(voice.ErrSlow, "exec sleep 60")},
	{"the voice leaves a child", true, inVoice(nil, "sleep 60 & exit 1")},
	{"the voice writes without end", true, inVoice(voice.ErrLarge, `for f; do :; done; exec cat /dev/zero > "$f"`)},
	{"the sound device is gone", false, func(t *testing.T) error {
		return served(t, func(c *web.Config) { c.Player = gonePlayer{} }, "No sound comes out")
	}},
	{"the port is taken", false, func(*testing.T) error {
		l, err := net.Listen("tcp", "127.0.0.1:0")
		if err != nil {
			return err
		}
		defer l.Close()
		other, err := web.Listen(l.Addr().String())
		if err != nil {
			return err
		}
		return other.Close() // and its address is printed
	}},
	{"an address of the whole network", false, says("this machine only", func(*testing.T) error { _, err := web.Listen("0.0.0.0:0"); return err })},
	{"a second program on the folder", false, func(t *testing.T) error {
		dir := t.TempDir()
		a, err := app.Open(app.Config{Dir: dir, Host: &person{}})
		if err != nil {
			return err
		}
		defer a.Close()
		if _, err := app.Open(app.Config{Dir: dir, Host: &person{}}); !errors.Is(err, app.ErrRunning) {
			return fmt.Errorf("%v", err)
		}
		if status, _, _ := a.Request("POST", "/api/event", []byte(event("x", "emergency", "gas"))); status != 200 {
			return fmt.Errorf("the first: %d", status)
		}
		return nil
	}},
	{"the speech library is missing", false, says("make speech", func(t *testing.T) error { _, err := model.LocateIn(t.TempDir(), t.TempDir()); return err })},
	{"the speech library is damaged", false, says("wrong checksum", func(t *testing.T) error {
		dir := t.TempDir()
		name := filepath.Join(dir, "com/alphacephei/vosk/0.3.45/vosk-0.3.45.jar")
		if err := errors.Join(os.MkdirAll(filepath.Dir(name), 0o755), os.WriteFile(name, []byte("half"), 0o644)); err != nil {
			return err
		}
		_, err := model.LocateIn(dir, t.TempDir())
		return err
	})},
	{"an equipment file with loops", false, says("no loops", func(*testing.T) error {
		_, err := flows.Load(fstest.MapFS{"x.hcl": {Data: []byte(`appliance "x" { title = [for a in [1]: a] }`)}}, "x.hcl")
		return err
	})},
	{"an endless equipment file", false, says("are more than", func(*testing.T) error {
		_, err := flows.Load(fstest.MapFS{"x.hcl": {Data: make([]byte, 5<<20)}}, "x.hcl")
		return err
	})},
	{"no equipment file", false, func(*testing.T) error {
		_, err := flows.Load(fstest.MapFS{}, "x.hcl")
		if !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("%v", err)
		}
		return nil
	}},
}

// Every fault is told and survived.
func TestFaults(t *testing.T) {
	if len(faults) < 40 {
		t.Fatalf("%d kinds of fault", len(faults))
	}
	for _, f := range faults {
		t.Run(f.name, func(t *testing.T) {
			if f.slow && testing.Short() {
				t.Skip("waits for a time-out of some seconds")
			}
			t.Parallel()
			if err := f.run(t); err != nil {
				t.Error(err)
			}
		})
	}
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		good := 0
		for _, f := range faults {
			if err := f.run(t); err != nil {
				t.Logf("%s: %v", f.name, err)
				continue
			}
			good++
		}
		add("fault.told_pct", 100*float64(good)/float64(len(faults)), "%", "= 100", len(faults))
	})
}
