package app

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"strconv"
	"strings"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/mobile/drawing"
)

const jsonType = "application/json; charset=utf-8"

// State is the answer to GET /api/state: all a page that comes back needs.
type State struct {
	Version    string            `json:"version"`
	Stream     int64             `json:"stream"` // number of the last message; later ones have greater numbers
	View       *protocol.View    `json:"view"`   // null: no job is open
	Prefs      Prefs             `json:"prefs"`
	Ear        EarView           `json:"ear"`
	Jobs       []JobInfo         `json:"jobs"`
	Device     []protocol.Device `json:"device,omitempty"`
	Appliances []Appliance       `json:"appliances,omitempty"` // what a job can be about
	Trouble    string            `json:"trouble,omitempty"`    // why the last job could not be resumed
}

// Appliance is one that the guide knows.
type Appliance struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Looks string `json:"looks,omitempty"` // the sketch of what it looks like from the outside
}

// EventBody is the body of POST /api/event. Step is the id of the step the page showed when the person acted; when the job has moved on
// the event is dropped with status 409, so that a double tap answers one step only. Emergencies and commands are never dropped.
type EventBody struct {
	Step  string         `json:"step"`
	Event protocol.Event `json:"event"`
}

// Request serves the page's files and its API. It is all the shells need:
//
//	GET  /, /app.js, …                 the page
//	GET  /api/state                    State
//	POST /api/start                    Start
//	POST /api/event                    EventBody (types said, undo, spoke, device)
//	POST /api/type                     {"text": what would be said}
//	POST /api/leave                    back to the job list; the job stays open on disk
//	POST /api/prefs                    Prefs
//	GET  /api/eye/frame                the newest camera frame as JPEG, where the page has no video of its own
//	GET  /api/eye/before               {"name": the picture from before the work, empty while there is none}
//	POST /api/eye/marks                {"marks": terminals touched in the picture before the work, shares of its size}
//	POST /api/eye/aim                  {"x", "y": where the status light is in the newest frame, shares of its size}
//	GET  /api/drawing?kind=            a picture of the open job's step as SVG: step (what the hands do), large, near (the circuit about it), all
//	GET  /api/sketch?id=               a drawing by itself as SVG: meter, or what an appliance looks like
//	POST /api/jobs/ID/resume, delete, restore
//	POST /api/jobs/ID/details          report.Details: what is written by hand of the place and the appliance
//	POST /api/jobs/ID/doubt, remarks   Doubt: what the answers say without one of them; the second keeps it, signed, beside the record
//	GET  /api/jobs/ID/details, remarks, drawing/SEQ
//	GET  /api/jobs/ID/steps            every event with its view, for replay
//	GET  /api/jobs/ID/handover         {"text": the summary for the person who takes over}
//	GET  /api/jobs/ID/journal, transcript, export.zip, photo/NAME, sound/NAME
//	POST /api/jobs/ID/say/SEQ          says again what followed that event, or the summary when SEQ is handover
func (h *Hub) Request(method, path string, body []byte) (status int, contentType string, data []byte) {
	u, err := url.Parse(path)
	if err != nil || !strings.HasPrefix(u.Path, "/") {
		return 400, jsonType, problem(errors.New("request: bad path"))
	}
	if !strings.HasPrefix(u.Path, "/api/") {
		if method != "GET" {
			return 405, jsonType, problem(errors.New("request: files can only be read"))
		}
		return h.pageFile(u.Path)
	}
	v, err := h.api(method, strings.TrimPrefix(u.Path, "/api/"), u.Query(), body)
	if err != nil {
		return statusOf(err), jsonType, problem(err)
	}
	if f, ok := v.(blob); ok {
		return 200, f.kind, f.data
	}
	data, err = json.Marshal(v)
	if err != nil {
		return 500, jsonType, problem(err)
	}
	return 200, jsonType, data
}

// blob is an answer that is not JSON.
type blob struct {
	kind string
	data []byte
}

type httpError struct {
	status int
	err    error
}

func (e httpError) Error() string { return e.err.Error() }
func (e httpError) Unwrap() error { return e.err }

func bad(err error) error { return httpError{400, err} }

func statusOf(err error) int {
	var he httpError
	switch {
	case errors.As(err, &he):
		return he.status
	case errors.Is(err, fs.ErrNotExist):
		return 404
	case errors.Is(err, errNoJob):
		return 409
	case errors.Is(err, ErrClosed):
		return 503
	}
	return 500
}

var errNotFound = httpError{404, errors.New("request: no such thing")}

func (h *Hub) api(method, path string, q url.Values, body []byte) (any, error) {
	parts := strings.Split(path, "/")
	if parts[0] == "jobs" && len(parts) >= 3 {
		return h.jobAPI(method, parts[1], parts[2:], body)
	}
	if method == "GET" {
		switch path {
		case "state":
			return h.state()
		case "jobs":
			return h.jobs()
		case "eye/frame":
			return h.lastFrame()
		case "eye/before":
			return h.before()
		case "drawing":
			return h.drawing(q.Get("kind"))
		case "sketch":
			if svg := drawing.Sketch(q.Get("id")); svg != "" {
				return blob{kinds[".svg"], []byte(svg)}, nil
			}
		}
		return nil, errNotFound
	}
	if method != "POST" {
		return nil, httpError{405, errors.New("request: GET or POST only")}
	}
	switch path {
	case "start":
		var s Start
		if err := decodeStrict(body, &s); err != nil {
			return nil, bad(err)
		}
		h.mu.Lock()
		defer h.mu.Unlock()
		if err := h.startLocked(s); err != nil {
			return nil, err
		}
		return h.stateLocked()
	case "event":
		var b EventBody
		if err := decodeStrict(body, &b); err != nil {
			return nil, bad(err)
		}
		return h.event(b)
	case "type":
		var t struct {
			Text string `json:"text"`
		}
		if err := decodeStrict(body, &t); err != nil {
			return nil, bad(err)
		}
		return h.typed(t.Text)
	case "leave":
		h.mu.Lock()
		defer h.mu.Unlock()
		h.leaveLocked()
		h.store.setOpen("")
		h.out.send(Message{Type: "jobs"})
		return h.stateLocked()
	case "eye/marks":
		var m struct {
			Photo string          `json:"photo"`
			Marks []protocol.Mark `json:"marks"`
		}
		if err := decodeStrict(body, &m); err != nil {
			return nil, bad(err)
		}
		return struct{}{}, h.mark(m.Photo, m.Marks)
	case "eye/aim":
		var a struct {
			X float64 `json:"x"`
			Y float64 `json:"y"`
		}
		if err := decodeStrict(body, &a); err != nil {
			return nil, bad(err)
		}
		return struct{}{}, h.aimAt(a.X, a.Y)
	case "prefs":
		var p Prefs
		if err := decodeStrict(body, &p); err != nil {
			return nil, bad(err)
		}
		if !p.Meter.valid() {
			return nil, bad(errors.New("prefs: a meter of unknown words"))
		}
		h.mu.Lock()
		defer h.mu.Unlock()
		if err := h.store.savePrefs(p); err != nil {
			return nil, err
		}
		h.prefs = p
		return p, nil
	}
	return nil, errNotFound
}

func (h *Hub) state() (State, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.stateLocked()
}

func (h *Hub) stateLocked() (State, error) {
	s := State{Version: h.cfg.Version, Stream: h.out.last(), Prefs: h.prefs, Ear: h.ear.get(), Trouble: h.trouble}
	var err error
	if s.Jobs, err = h.jobsLocked(); err != nil { // the open job goes on, and a page that comes back must have it
		s.Trouble = strings.TrimSpace(s.Trouble + " " + h.words.Term("app.no-list", "why", err.Error()))
	}
	if h.job != nil {
		s.View = h.job.machine.View()
	}
	if l, err := load(h.cfg.Lang); err == nil { // a file that does not load is told when a job is started
		for _, m := range l.models {
			s.Appliances = append(s.Appliances, Appliance{m.ID, m.Title, drawing.Looks(m)})
		}
	}
	for _, kind := range []string{"battery", "mic-off", "sound-off", "speech-off", "silenced"} {
		if d, ok := h.device[kind]; ok {
			s.Device = append(s.Device, d)
		}
	}
	return s, nil
}

func (h *Hub) jobs() ([]JobInfo, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.jobsLocked()
}

func (h *Hub) jobsLocked() ([]JobInfo, error) {
	jobs, err := h.store.list()
	for i := range jobs {
		jobs[i].Open = h.job != nil && h.job.id == jobs[i].ID
	}
	return jobs, err
}

// event takes one event of the page.
func (h *Hub) event(b EventBody) (any, error) {
	ev := b.Event
	switch ev.Type {
	case protocol.EvSaid:
		if ev.Said == nil {
			return nil, bad(errors.New("event: said without words"))
		}
		switch ev.Said.Source {
		case "touch", "key", "line":
		default:
			return nil, bad(errors.New("event: the source of a page's event is touch, key or line"))
		}
	case protocol.EvUndo:
	case protocol.EvSpoke:
		h.Spoke(ev.Spoke, ev.Cut)
		return struct{}{}, nil
	case protocol.EvDevice:
		if ev.Device == nil || !deviceKinds[ev.Device.Kind] {
			return nil, bad(errors.New("event: no such device news"))
		}
		h.mu.Lock()
		defer h.mu.Unlock()
		return struct{}{}, h.deviceLocked(*ev.Device)
	default:
		return nil, bad(errors.New("event: a page cannot send type " + strconv.Quote(ev.Type)))
	}
	ev.At = 0
	if err := ev.Check(); err != nil {
		return nil, bad(fmt.Errorf("event: %w", err))
	}
	defer h.alarm(&ev)()
	h.mu.Lock()
	defer h.mu.Unlock()
	urgent := ev.Said != nil && isUrgent(ev.Said)
	if h.job == nil && urgent {
		if err := h.startLocked(Start{urgent: ev.Alarm() != ""}); err != nil {
			return nil, err
		}
	}
	if h.job == nil {
		return nil, errNoJob
	}
	if now := h.job.machine.View(); !urgent && b.Step != "" && now != nil && now.Step.ID != b.Step {
		return nil, httpError{409, errors.New("event: the job is past that step")}
	}
	if err := h.stepLocked(protocol.Event{Type: ev.Type, Said: ev.Said, Target: ev.Target}); err != nil {
		return nil, err
	}
	return struct{}{}, nil
}

// typed takes words from the keyboard as if they had been heard.
func (h *Hub) typed(text string) (any, error) {
	h.mu.Lock()
	var v *protocol.View
	if h.job != nil {
		v = h.job.machine.View()
	}
	h.mu.Unlock()
	u := Parse(h.cfg.Lang, text, v)
	return h.event(EventBody{Event: protocol.Event{Type: protocol.EvSaid, Said: &u}})
}

// isUrgent tells whether an answer counts in every state.
func isUrgent(u *utterance.Utterance) bool {
	best := u.Best()
	return best != nil && (best.Kind == utterance.Emergency || best.Kind == utterance.Command)
}
