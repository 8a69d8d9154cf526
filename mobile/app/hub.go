// Package app is the engine behind both shells: it owns the job's machine, its journal on disk, the recogniser's ear
// and the one page. The phone calls it in process, the desktop wraps it in a loopback server; both send the same
// JSON. It opens no port and imports no net/http.
package app

import (
	"errors"
	"fmt"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"readback/core/journal"
	"readback/core/protocol"
	"readback/core/words"
)

// Host is what the phone or the computer does for the core. Every method returns at once and never calls back into the
// hub from inside; the calls come in order from one goroutine at a time.
type Host interface {
	Say(id, text, level string, slow bool) // speak; when it ended or was cut off, call Hub.Spoke(id, cut)
	Hush()                                 // stop speaking at once
	Cue(name string)                       // heard, accepted, ask, refused, hold, resume, timer, danger
	TakePhoto(id string)                   // open the camera; then Hub.Photo(id, jpeg)
	KeepAwake(on bool)                     // only while a job runs
	Vibrate(pattern string)                // short, double, long, triple
	Share(name string)                     // hand the file, a path inside Config.Dir, to the person
}

// Machine is the job's machine as the hub uses it; *session.Machine in the program, a fake in tests.
type Machine interface {
	Step(protocol.Event) ([]protocol.Effect, error)
	View() *protocol.View
}

// Config is what a hub is opened with. Dir and Host are required.
type Config struct {
	Dir  string       // where jobs and preferences are kept; created when missing
	Host Host         // the phone or the computer
	Now  func() int64 // ms since the Unix epoch; nil: the system clock
	// Elapsed is a clock that nobody can set, from any beginning. Where Now is nil too it is the system's; a hub with its own Now and
	// without this believes Now.
	Elapsed func() time.Duration
	// Patience is how long the recogniser may take for one thing before it is started again; 0: half a minute.
	Patience time.Duration
	Disk     journal.Disk // where jobs are kept instead of Dir; tests only
	Version  string       // of the program, kept in every journal
	Lang     string       // "en" when empty

	Data string // hash of the equipment files and phrases, kept in every journal

	Speech Speech // how hearing is done; the zero value is "speech is off"

	// New makes the machine of a job; nil: the real one over the built-in equipment files.
	New func(protocol.Begin) (Machine, error)
}

// Hub runs at most one job at a time. All methods may be called from any goroutine.
type Hub struct {
	cfg   Config
	store *store
	out   *outbox

	words   *words.Words // of the language of the page
	mu      sync.Mutex
	job     *openJob // nil: no job is open
	prefs   Prefs
	ear     earState
	eye     eye
	saying  saying
	wake    *time.Timer
	device  map[string]protocol.Device // last news of each kind
	trouble string                     // what went wrong with the last job, until another one is opened
	clock   clockState

	paced     paced
	mute      atomic.Bool // the job is by touch: notices are shown only
	alarmMu   sync.Mutex
	alarmWait *time.Timer // an emergency that was not acted on yet

	closed bool
}

// openJob is the job that is open.
type openJob struct {
	id        string
	machine   *Recorded
	seq       int64
	voice     bool
	saying    string // id of the saying under way
	state     string // of the last view shown
	acted     int64  // the last event that anything followed from
	soundless bool   // it was told that sound cannot be kept
	appliance string // equipment file id
}

// ErrClosed is returned after Close.
var ErrClosed = errors.New("app: the hub is closed")

// errNoJob is returned when an event needs an open job.
var errNoJob = errors.New("app: no job is open")

// Open prepares the folder and starts loading the recogniser in the background. Speech that cannot be loaded is not an
// error: the page says why and everything works by touch.
func Open(c Config) (*Hub, error) {
	if c.Host == nil {
		panic("app: Config.Host is nil")
	}
	if c.Now == nil {
		if c.Elapsed == nil {
			began := time.Now()
			c.Elapsed = func() time.Duration { return time.Since(began) }
		}
		c.Now = func() int64 { return time.Now().UnixMilli() }
	}
	if c.Patience == 0 {
		c.Patience = earPatience
	}
	if c.Lang == "" {
		c.Lang = "en"
	}
	lib, err := load(c.Lang)
	if err != nil {
		return nil, err
	}
	if c.New == nil {
		c.New = NewMachine
	}
	st, err := openStore(c.Dir, c.Disk)
	if err != nil {
		return nil, fmt.Errorf("opening the job folder: %w", err)
	}
	h := &Hub{cfg: c, words: lib.words, store: st, out: newOutbox(c.Host), device: map[string]protocol.Device{}}
	h.prefs = st.loadPrefs()
	h.eye.words = lib.words
	h.mute.Store(!h.prefs.Voice)
	h.openEar()
	h.comeBack()
	return h, nil
}

// comeBack opens the job that was on the page when the program ended. A job that cannot be resumed stays in the list, and
// the page says why.
func (h *Hub) comeBack() {
	id := h.store.lastOpen()
	if id == "" {
		return
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	if err := h.resumeLocked(id); err != nil {
		h.trouble = err.Error()
		h.store.setOpen("")
	}
}

// Quiet tells whether the hub has nothing of its own to say at its start: no job came back, and nothing went wrong.
func (h *Hub) Quiet() bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.job == nil && h.trouble == ""
}

// Close stops listening and speaking and waits until everything handed to the host and the subscribers is delivered. The open
// job stays on disk and can be resumed.
func (h *Hub) Close() {
	h.mu.Lock()
	if h.closed {
		h.mu.Unlock()
		return
	}
	h.closed = true
	h.leaveLocked()
	h.mu.Unlock()
	h.ear.close(h.cfg.Patience)
	h.eye.close()
	h.out.close()
	h.store.close()
}

// Subscribe sends every message of the stream to fn, in order, until cancel is called. fn must not block for long and must
// not call Close. A new subscriber starts with Request("GET", "/api/state") and gets every change after that.
func (h *Hub) Subscribe(fn func(msg []byte)) (cancel func()) { return h.out.subscribe(fn) }

// Spoke tells that the saying called id ended, or was cut off.
func (h *Hub) Spoke(id string, cut bool) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.spokeLocked(id, cut)
}

func (h *Hub) spokeLocked(id string, cut bool) {
	if h.job == nil || id == "" || strings.HasPrefix(id, ownSaying) {
		return
	}
	if h.job.saying == id {
		h.job.saying = ""
		h.speaking("")
	}
	// A journal that cannot be written is told by step itself.
	_ = h.stepLocked(protocol.Event{Type: protocol.EvSpoke, Spoke: id, Cut: cut})
}

// Device takes news of the phone or computer: the JSON of a session.Device. Bad JSON is an error and changes nothing.
func (h *Hub) Device(news []byte) error {
	var d protocol.Device
	if err := decodeStrict(news, &d); err != nil {
		return fmt.Errorf("app: device news: %w", err)
	}
	if !deviceKinds[d.Kind] {
		return fmt.Errorf("app: device news: no such kind %q", d.Kind)
	}
	return h.News(d)
}

// News is Device for Go callers.
func (h *Hub) News(d protocol.Device) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.deviceLocked(d)
}

var deviceKinds = map[string]bool{"battery": true, "mic-off": true, "mic-on": true, "speech-off": true, "sound-off": true, "eye-on": true, "eye-off": true,
	"silenced": true, "call": true, "back": true, "noise": true, "voices": true}

func (h *Hub) deviceLocked(d protocol.Device) error {
	if h.closed {
		return ErrClosed
	}
	h.device[d.Kind] = d
	h.out.send(Message{Type: "device", Device: &d})
	if h.job == nil {
		return nil
	}
	return h.stepLocked(protocol.Event{Type: protocol.EvDevice, Device: &d})
}

// stepLocked is the heart: see Recorded. What the person has to know of an event that was not taken is shown, and said where the
// event was spoken.
func (h *Hub) stepLocked(ev protocol.Event) error {
	if h.closed {
		return ErrClosed
	}
	j := h.job
	if j == nil {
		return errNoJob
	}
	ev.At = h.nowLocked()
	slow := time.AfterFunc(stepPatience, func() {
		h.tell(h.words.Term("app.slow"))
	})
	defer slow.Stop()
	next := j.machine.Seq() + 1
	err := j.machine.Step(ev, func(effects []protocol.Effect) {
		h.alarmed()
		if ev.Alarm() == "" {
			j.seq = j.machine.Seq()
		}
		if len(effects) > 0 {
			j.acted = next
		}
		h.deliverLocked(effects)
	})
	j.seq = j.machine.Seq()
	switch {
	case err == nil:
	case errors.Is(err, errMistake), errors.Is(err, errParked), errors.Is(err, errFull), errors.Is(err, errUnwritten):
		h.out.do(func(host Host) { host.Cue("refused") })
		h.tell(firstLine(err.Error()))
		if errors.Is(err, errParked) {
			h.leaveLocked()
		} else if v := j.machine.View(); v != nil && errors.Is(err, errMistake) && ev.Alarm() == "" {
			h.deliverLocked([]protocol.Effect{{Type: protocol.DoShow, View: v}})
		}
		return err
	default:
		return err
	}
	if ev.Type == protocol.EvSaid && !ev.Said.Partial || ev.Type == protocol.EvUndo {
		h.eye.anew()
	}
	return nil
}

// stepPatience is how long an event may take before the person is told. Judgment, no source: the planner takes up to two seconds.
const stepPatience = 6 * time.Second

// ownSaying begins the id of what the hub says by itself: no machine waits for its end.
const ownSaying = "own-"

func firstLine(s string) string {
	s, _, _ = strings.Cut(s, "\n")
	return s
}

// tell shows something that the person has to know and says it. It needs no lock: it works while an event hangs.
func (h *Hub) tell(text string) {
	h.out.send(Message{Type: "trouble", Text: text})
	if !h.mute.Load() {
		h.out.do(func(host Host) { host.Say(ownSaying+"trouble", firstSentence(text), "warning", false) })
	}
}

// firstSentence is what is spoken of a notice; all of it stands on the page.
func firstSentence(s string) string {
	if i := strings.Index(s, ". "); i > 0 {
		return s[:i+1]
	}
	return s
}

// tellLocked is tell for what must also reach a page that comes later.
func (h *Hub) tellLocked(text string) {
	if h.trouble != "" {
		text = h.trouble + " " + text
	}
	h.trouble = text
	h.tell(text)
}

// alarmPatience is how long an emergency may wait for the machine, the disk or another event before the hub acts by itself. Judgment, no
// source: a quarter of a second is not felt as a wait.
const alarmPatience = 150 * time.Millisecond

// alarm is called before the lock is taken for an emergency: when it is not acted on in time, the last words are said and shown.
func (h *Hub) alarm(ev *protocol.Event) (stop func()) {
	class := ev.Alarm()
	if class == "" {
		return func() {}
	}
	h.alarmMu.Lock()
	defer h.alarmMu.Unlock()
	if h.alarmWait == nil {
		h.alarmWait = time.AfterFunc(alarmPatience, func() { h.lastWords(class) })
	}
	return h.alarmed
}

// alarmed ends the wait for an emergency to be acted on.
func (h *Hub) alarmed() {
	h.alarmMu.Lock()
	defer h.alarmMu.Unlock()
	if h.alarmWait != nil {
		h.alarmWait.Stop()
		h.alarmWait = nil
	}
}

func (h *Hub) lastWords(class string) {
	for _, e := range lastEffects(h.words, "", class) {
		switch e.Type {
		case protocol.DoShow:
			h.out.sendView(e.View)
		case protocol.DoSay:
			h.out.send(effectMessage(e))
			h.out.do(func(host Host) { host.Say(e.ID, e.Text, e.Level, false) })
		case protocol.DoCue:
			h.out.send(effectMessage(e))
			h.out.do(func(host Host) { host.Cue(e.ID) })
		case protocol.DoHush:
			h.out.send(effectMessage(e))
			h.out.do(Host.Hush)
		}
	}
}

func (h *Hub) deliverLocked(effects []protocol.Effect) {
	for _, e := range effects {
		h.doLocked(e)
	}
}

func (h *Hub) doLocked(e protocol.Effect) {
	j := h.job
	switch e.Type {
	case protocol.DoSay:
		h.out.send(effectMessage(e))
		if !j.voice {
			// Nothing is spoken in a job by touch; the caption stands for it.
			id := e.ID
			h.out.later(func() { h.Spoke(id, false) })
			return
		}
		j.saying = e.ID
		h.speaking(e.Text)
		h.out.do(func(host Host) { host.Say(e.ID, e.Text, e.Level, e.Slow) })
	case protocol.DoHush:
		h.out.send(effectMessage(e))
		h.out.do(Host.Hush)
	case protocol.DoCue:
		h.out.send(effectMessage(e))
		quiet := j.state == "emergency" // nothing buzzes where gas may be
		h.out.do(func(host Host) {
			host.Cue(e.ID)
			if p := buzz[e.ID]; p != "" && !quiet {
				host.Vibrate(p)
			}
		})
	case protocol.DoShow:
		h.showLocked(e.View)
	case protocol.DoWake:
		h.wakeLocked(e.At)
	case protocol.DoPhoto:
		h.out.send(effectMessage(e))
		h.out.do(func(host Host) { host.TakePhoto(e.ID) })
	case protocol.DoListen:
		h.ear.listen(e.ID)
		h.out.send(effectMessage(e))
	case protocol.DoTeach:
		h.eye.teach(e.ID, h.store)
	case protocol.DoEnd:
		h.out.send(effectMessage(e))
		h.out.do(func(host Host) { host.KeepAwake(false) })
		h.store.summarise(j.id, j.machine.Saved(), j.machine.View())
	}
}

// buzz is the feel of each cue, for gloves and for people who do not hear it.
var buzz = map[string]string{"accepted": "short", "ask": "double", "refused": "long", "danger": "triple", "timer": "triple"}

func (h *Hub) showLocked(v *protocol.View) {
	if v == nil {
		return
	}
	h.job.state = v.State
	h.ear.expect(expect(v))
	h.eye.point(&v.Step, v.State)
	h.out.sendView(v)
	h.store.summarise(h.job.id, h.job.machine.Saved(), v)
}

func (h *Hub) wakeLocked(at int64) {
	if h.wake != nil {
		h.wake.Stop()
	}
	j := h.job
	h.wake = time.AfterFunc(time.Duration(max(at-h.peekLocked(), 0))*time.Millisecond, func() {
		h.mu.Lock()
		defer h.mu.Unlock()
		if h.job == j && !h.closed {
			_ = h.stepLocked(protocol.Event{Type: protocol.EvTick})
		}
	})
}

func (h *Hub) leaveLocked() { h.parkLocked() }

// parkLocked closes the open job; it stays on disk.
func (h *Hub) parkLocked() {
	if h.wake != nil {
		h.wake.Stop()
		h.wake = nil
	}
	if h.job == nil {
		return
	}
	h.job.machine.Close()
	h.job, h.saying = nil, saying{}
	h.eye.point(&protocol.StepView{}, "")
	h.speaking("")
	h.out.do(func(host Host) { host.Hush(); host.KeepAwake(false) })
}
