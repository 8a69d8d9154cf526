package app

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"slices"
	"strings"
	"sync"
	"time"

	"readback/core/camera"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/words"
	"readback/speech/grammar"
)

// EyeView is what the camera makes of the newest frame, for the viewfinder.
type EyeView struct {
	Step   string          `json:"step"`
	Kind   string          `json:"kind"`             // one of session's Eye constants
	Text   string          `json:"text,omitempty"`   // what is seen so far: "24.5", "3"
	Words  string          `json:"words,omitempty"`  // the same in words
	Steady bool            `json:"steady,omitempty"` // it was the same for long enough and is told to the guide
	Reason string          `json:"reason,omitempty"` // why nothing can be told yet
	Boxes  [][4][2]float64 `json:"boxes,omitempty"`  // corners of the digits, or of the light, in shares of the picture
	Ms     float64         `json:"ms,omitempty"`     // what reading the frame took
}

const lightQueue = 8 // frames of the light that may wait; more are dropped, their times tell the gap

// eye reads frames on a goroutine of its own. One step is watched at a time; when the step changes or something is said, it
// begins anew, because the number may be that of another place.
type eye struct {
	words   *words.Words // of the language of the page
	mu      sync.Mutex
	cond    *sync.Cond
	queue   []look
	shut    bool
	started bool
	done    chan struct{}

	step, kind string   // what is watched; kind is empty for nothing
	opts       []string // answers of the step
	gen        int      // counts beginnings
	last       camera.Plane
	units      camera.Units          // of the meter, as far as they were named
	shown      []camera.Annunciators // what stood beside the number told last

	// of the goroutine only
	now    int // gen that the following belongs to
	meter  camera.MeterWatch
	light  *camera.LightWatch
	burner camera.BurnerWatch
	unitOf string // the number whose unit is known, or known not to be
	unit   string
}

type look struct {
	eye   string
	plane camera.Plane
	gen   int
	aim   *[2]float64
}

// point tells what step is on the page.
func (e *eye) point(s *protocol.StepView, state string) {
	e.mu.Lock()
	defer e.mu.Unlock()
	kind := s.Eye
	if eyeNumber(kind) == 0 || s.Part == "A" || state != "ask" && state != "confirm" {
		kind = ""
	}
	var opts []string
	for _, a := range s.Answers {
		opts = append(opts, a.ID)
	}
	if state == "ask" {
		e.opts = opts
	}
	if kind == "" {
		e.last = camera.Plane{} // no picture outlives what it was for
	}
	if s.ID != e.step || kind != e.kind {
		e.step, e.kind = s.ID, kind
		e.gen++
	}
}

// anew forgets what was seen: something was said, so the next number may be that of another place.
func (e *eye) anew() {
	e.mu.Lock()
	e.gen++
	e.mu.Unlock()
}

// Look takes one camera frame, a message as in frame.go. Frames that nobody waits for are dropped; an error means that the
// message is no frame. The bytes are kept until the frame is read and must not be changed.
func (h *Hub) Look(msg []byte) error {
	kind, p, err := parseFrame(msg)
	if err != nil {
		return err
	}
	return h.LookAt(kind, &p)
}

// LookAt is Look for shells in the same process. The plane's memory is kept until it is read.
func (h *Hub) LookAt(kind string, p *camera.Plane) error {
	if err := p.Check(); err != nil {
		return fmt.Errorf("%w: %w", ErrFrame, err)
	}
	n := eyeNumber(kind)
	if n == 0 {
		return fmt.Errorf("%w: nothing is known by %q", ErrFrame, kind)
	}
	if kind == protocol.EyeFire && !p.Colour() {
		return fmt.Errorf("%w: the burner is judged by its colour, and it has none", ErrFrame)
	}
	return h.eye.put(h, look{eye: kind, plane: *shrunk(p, eyes[n].most)})
}

// shrunk is a plane averaged so that it has at most so many pixels; a small one is returned as it is.
func shrunk(p *camera.Plane, most int) *camera.Plane {
	f := 1
	for (p.W/f)*(p.H/f) > most {
		f++
	}
	if f == 1 {
		return p
	}
	return p.Reduced(f)
}

// greyJPEG is the brightness of a plane as a picture.
func greyJPEG(p *camera.Plane, quality int) ([]byte, error) {
	var b bytes.Buffer
	img := &image.Gray{Pix: p.Y, Stride: p.Stride, Rect: image.Rect(0, 0, p.W, p.H)}
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: quality}); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// lastFrame is the newest frame of the open step as a JPEG picture, for a viewfinder that has no video of its own.
func (h *Hub) lastFrame() (any, error) {
	e := &h.eye
	e.mu.Lock()
	p := e.last
	e.mu.Unlock()
	if p.W == 0 {
		return nil, errNotFound
	}
	data, err := greyJPEG(shrunk(&p, lampPixels), 60)
	if err != nil {
		return nil, err
	}
	return blob{"image/jpeg", data}, nil
}

func (e *eye) put(h *Hub, l look) error {
	e.mu.Lock()
	defer e.mu.Unlock()
	if e.shut {
		return ErrClosed
	}
	if l.aim != nil {
		l.eye = e.kind
	}
	if e.kind == "" || l.eye != e.kind {
		return nil
	}
	if l.aim == nil {
		e.last = l.plane
	}
	if !e.started {
		e.started, e.done, e.units = true, make(chan struct{}), h.store.loadUnits()
		e.cond = sync.NewCond(&e.mu)
		go e.run(h)
	}
	l.gen = e.gen
	switch {
	case l.aim != nil:
	case l.eye == protocol.EyeMeter:
		e.queue = slices.DeleteFunc(e.queue, func(x look) bool { return x.aim == nil }) // only the newest counts
	case len(e.queue) >= lightQueue:
		return nil
	}
	e.queue = append(e.queue, l)
	e.cond.Signal()
	return nil
}

func (e *eye) run(h *Hub) {
	defer close(e.done)
	for {
		e.mu.Lock()
		for len(e.queue) == 0 && !e.shut {
			e.cond.Wait()
		}
		if e.shut {
			e.mu.Unlock()
			return
		}
		l := e.queue[0]
		e.queue = e.queue[1:]
		gen, step, opts := e.gen, e.step, e.opts
		e.mu.Unlock()
		if l.gen != gen {
			continue
		}
		if e.now != gen {
			e.begin(gen, l.plane.Time, l.eye)
		}
		if l.aim != nil {
			switch x, y := l.aim[0], l.aim[1]; l.eye {
			case protocol.EyeMeter:
				e.meter.Aim(x, y)
			case protocol.EyeFire:
				e.burner.Aim(x, y)
			default:
				if e.light != nil {
					e.light.Aim(x, y)
				}
			}
			continue
		}
		began := time.Now()
		v := EyeView{Step: step, Kind: l.eye}
		var s *protocol.Seen
		switch l.eye {
		case protocol.EyeMeter:
			s = e.display(&l.plane, &v)
		case protocol.EyeFire:
			s = e.flame(&l.plane, &v)
		default:
			s = e.flashes(&l.plane, &v, opts)
		}
		if s == nil && v.Text == "" && v.Reason == "" && l.eye != protocol.EyeMeter {
			continue // nothing was decoded this time
		}
		v.Ms = float64(time.Since(began).Microseconds()) / 1000
		h.out.send(Message{Type: "eye", Eye: &v})
		if s != nil {
			s.Step, s.Kind = step, l.eye
			h.saw(s, gen, &l.plane)
		}
	}
}

// begin forgets. A light is followed on as long as the step is the same: counting takes long and nothing said changes it.
func (e *eye) begin(gen int, at int64, kind string) {
	e.now, e.unitOf = gen, ""
	e.meter.Begin(at)
	e.burner.Begin(at)
	if kind != protocol.EyeLamp {
		e.light = nil
	} else if e.light != nil {
		e.light.Begin(at)
	}
}

// show puts into the view what a watch sees, and says why it cannot tell when that is due.
func (v *EyeView) show(w *words.Words, o *camera.Observation) *protocol.Seen {
	v.Text, v.Steady, v.Boxes = o.Text, o.Steady && !o.Question, o.Boxes // what is only asked about is not shown as seen
	if o.Reason == "" {
		return nil
	}
	v.Reason = reasonWords(w, o.Reason)
	if !o.Tell {
		return nil
	}
	return &protocol.Seen{Reason: v.Reason}
}

// display reads a frame of the meter.
func (e *eye) display(p *camera.Plane, v *EyeView) *protocol.Seen {
	o, err := e.meter.See(p)
	if err != nil {
		return nil // Look has checked the plane
	}
	if s := v.show(e.words, &o); s != nil || o.Text == "" {
		return s
	}
	v.Words = e.words.Term("eye.over")
	r := measure.Reading{State: measure.Over}
	if o.Shows == camera.Number {
		r = measure.Reading{Value: unit.Value{Dec: o.Value}}
		v.Words = e.words.Decimal(o.Value)
	}
	if !o.Tell {
		return nil
	}
	if o.Shows == camera.Number {
		r.Value.Unit = e.named(o.Text)
	}
	s := &protocol.Seen{Reading: &r, Text: o.Text, P: o.P, Frames: o.Frames}
	if o.Rival != "" {
		s.Rivals = []string{o.Rival}
	}
	return s
}

// named is the unit of the number that is told now, "" when it is not known, and keeps how it looks for somebody who names it.
func (e *eye) named(text string) string {
	if text == e.unitOf {
		return e.unit
	}
	shown := e.meter.Shown(text)
	e.meter.Known(text)
	e.mu.Lock()
	defer e.mu.Unlock()
	e.shown = shown
	e.unitOf, e.unit = text, e.units.Name(shown)
	return e.unit
}

// teach keeps how the unit of the number told last looks; when the disk is full it is learnt again another time.
func (e *eye) teach(unit string, s *store) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if e.units.Teach(unit, e.shown) {
		_ = s.saveUnits(&e.units)
	}
}

// flashes counts those of the light.
func (e *eye) flashes(p *camera.Plane, v *EyeView, opts []string) *protocol.Seen {
	if e.light == nil {
		e.light = &camera.LightWatch{}
		e.light.Begin(p.Time)
	}
	o, ok := e.light.See(p)
	if !ok {
		return nil
	}
	s := v.show(e.words, &o)
	if o.Text != "" {
		v.Words = codeWords(e.words, &o.Code)
	}
	if s != nil || o.Reason != "" || !o.Tell {
		return s
	}
	id := optionOf(e.words, &o.Code, opts)
	if id == "" {
		return nil // it shows what this step cannot be answered with; the viewfinder says what
	}
	return &protocol.Seen{ID: id, Text: v.Text, P: o.P, Frames: o.Frames}
}

// flame watches the burner.
func (e *eye) flame(p *camera.Plane, v *EyeView) *protocol.Seen {
	o, ok := e.burner.See(p)
	if !ok {
		return nil
	}
	s := v.show(e.words, &o)
	v.Words = e.words.Name("sight", o.Text)
	if s != nil || o.Reason != "" || !o.Tell {
		return s
	}
	return &protocol.Seen{Text: string(o.Flame.What), P: o.P, From: max(1, (p.Time-o.Flame.From)/1e6), To: max(1, (p.Time-o.Flame.To)/1e6)}
}

// reasonWords says why the camera cannot tell, empty where there is no reason. A reason that the language has no words for is said in
// general.
func reasonWords(w *words.Words, r camera.Reason) string {
	if r == "" {
		return ""
	}
	if text, ok := w.Terms["reason."+strings.ReplaceAll(string(r), " ", "-")]; ok {
		return text
	}
	return w.Term("reason.other")
}

// codeWords says a light's code.
func codeWords(w *words.Words, c *camera.Code) string {
	whole := func(n int) string { return w.Whole(int64(n)) }
	blinks := func(n int) string {
		if n == 1 {
			return w.Term("eye.blink")
		}
		return w.Term("eye.blinks", "n", whole(n))
	}
	switch c.Pattern {
	case camera.Flashes:
		var runs []string
		colours, counts := c.Runs()
		for i, x := range colours {
			runs = append(runs, w.Term("eye.coloured", "n", whole(counts[i]), "colour", w.Name("colour", x)))
		}
		if runs != nil {
			return strings.Join(runs, ", ")
		}
		return blinks(c.Count)
	case camera.TwoDigit:
		return w.Term("eye.two-digit", "first", whole(c.Tens), "then", whole(c.Units))
	case camera.LongShort:
		return w.Term("eye.long-short", "long", whole(c.Tens), "short", whole(c.Units))
	case camera.Heartbeat:
		return w.Term("eye.heartbeat")
	}
	return w.Name("light", string(c.Pattern))
}

// optionOf finds the answer of the step that says what the light shows: by its id, or by what a person would say. None is found where the
// light may as well show another one in two colours.
func optionOf(w *words.Words, c *camera.Code, opts []string) string {
	if slices.ContainsFunc(opts, c.MayBe) {
		return ""
	}
	if i := slices.IndexFunc(opts, c.Fits); i >= 0 {
		return opts[i]
	}
	if c.Pattern == camera.Flashes {
		return ""
	}
	u := parse(w.Lang, codeWords(w, c), grammar.Expect{Options: opts})
	for _, m := range u.Meanings {
		if m.Kind == utterance.Choice && slices.Contains(opts, m.ID) {
			return m.ID
		}
	}
	return ""
}

// saw hands a finding to the job, unless the job has moved on or the guide is speaking: then it is found again.
func (h *Hub) saw(s *protocol.Seen, gen int, p *camera.Plane) {
	h.mu.Lock()
	defer h.mu.Unlock()
	j := h.job
	h.eye.mu.Lock()
	late := gen != h.eye.gen
	h.eye.mu.Unlock()
	if j == nil || late || j.saying != "" || h.closed {
		return
	}
	if h.prefs.Keep && s.Reason == "" {
		if name, err := h.keepLocked(p); err == nil { // a picture that cannot be kept costs the record its illustration only
			s.Photo = name
		}
	}
	if h.stepLocked(protocol.Event{Type: protocol.EvSeen, Seen: s}) != nil {
		return // told by step itself
	}
	switch e := &h.eye; s.Kind {
	case protocol.EyeMeter:
		e.meter.Told(s.Text, p.Time)
	case protocol.EyeFire:
		e.burner.Told(s.Text, p.Time)
	default:
		if e.light != nil {
			e.light.Told(s.Text, p.Time)
		}
	}
}

// keepLocked writes the brightness of a frame into the job's folder.
func (h *Hub) keepLocked(p *camera.Plane) (string, error) {
	data, err := greyJPEG(p, 80)
	if err != nil {
		return "", err
	}
	name := fmt.Sprintf("seen-%d.jpg", h.job.seq+1)
	return name, h.store.keep(h.job.id, name, data)
}

// aimAt marks the light, or the window of the burner, in the newest frame, in shares of its size.
func (h *Hub) aimAt(x, y float64) error {
	if !(x >= 0 && x < 1 && y >= 0 && y < 1) {
		return bad(fmt.Errorf("aim: %g, %g is outside the picture", x, y))
	}
	return h.eye.put(h, look{aim: &[2]float64{x, y}})
}

func (e *eye) close() {
	e.mu.Lock()
	e.shut = true
	started := e.started
	if started {
		e.cond.Signal()
	}
	e.mu.Unlock()
	if started {
		<-e.done
	}
}
