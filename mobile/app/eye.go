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

// Times of watching, ns of the frames' own clock: judgement, no source.
const (
	steadyFor   = 900e6 // a number must stand still so long before it is told
	retell      = 10e9  // a number that still stands is told again after so long
	meterGiveUp = 6e9   // so long without a finding, and the reason is spoken
	lampGiveUp  = 30e9
	fireGiveUp  = 60e9  // a start takes its time before anything glows
	fireGap     = 120e9 // so long without a frame of the burner, and it is another start
	lampEvery   = 400e6 // between two decodings
	voteOver    = 8     // frames of a vote
	lampQueue   = 8     // frames of the light that may wait; more are dropped, their times tell the gap
)

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
	units      camera.Units    // of the meter, as far as they were named
	shown      []camera.Beside // what stood beside the number told last

	// of the goroutine only
	now     int // gen that the following belongs to
	reader  camera.Reader
	frames  []*camera.Reading
	besides []camera.Beside // of the frames
	unitOf  string          // the number whose unit is known, or known not to be
	unit    string
	lamp    *camera.Lamp
	fire    *camera.FireWatch
	window  *[2]float64 // where the burner's window was touched, shares of the picture
	seenAt  int64       // of the newest frame of the burner
	first   int64       // of the first frame
	since   int64       // since when text is seen
	text    string
	told    string
	toldAt  int64
	reasonT int64 // when a reason was told last, or none was due
	coded   int64
	w, h    int // of the newest frame
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
	case len(e.queue) >= lampQueue:
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
			if e.lamp != nil {
				e.lamp.Aim(l.aim[0]*float64(e.w), l.aim[1]*float64(e.h))
			}
			if l.eye == protocol.EyeFire {
				e.window, e.fire = l.aim, nil
			}
			continue
		}
		e.w, e.h = l.plane.W, l.plane.H
		began := time.Now()
		v := EyeView{Step: step, Kind: l.eye}
		var s *protocol.Seen
		switch l.eye {
		case protocol.EyeMeter:
			s = e.meter(&l.plane, &v)
		case protocol.EyeFire:
			s = e.burner(&l.plane, &v)
		default:
			s = e.light(&l.plane, &v, opts)
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
	e.now, e.first, e.frames, e.text, e.told, e.reasonT = gen, at, e.frames[:0], "", "", at
	e.besides, e.unitOf = e.besides[:0], ""
	if kind != protocol.EyeLamp {
		e.lamp = nil
	}
}

// meter reads a frame of the display and votes over the last ones.
func (e *eye) meter(p *camera.Plane, v *EyeView) *protocol.Seen {
	rd, err := e.reader.Read(p)
	if err != nil {
		return nil // Look has checked the plane
	}
	if len(e.frames) == voteOver {
		e.frames, e.besides = slices.Delete(e.frames, 0, 1), slices.Delete(e.besides, 0, 1)
	}
	var beside camera.Beside
	if rd.Text != e.unitOf { // else it is known
		beside = e.reader.Beside(rd)
	}
	e.frames, e.besides = append(e.frames, rd), append(e.besides, beside)
	for _, d := range rd.Digits {
		b := d.Box
		for i := range b {
			b[i] = [2]float64{b[i][0] / float64(p.W), b[i][1] / float64(p.H)}
		}
		v.Boxes = append(v.Boxes, b)
	}
	if len(e.frames) < 3 {
		return nil
	}
	all := camera.Vote(e.frames)
	if !all.OK() || all.Shows == camera.Empty {
		why := all.Reason
		if why == "" {
			why = camera.Unclear
		}
		v.Reason = reasonWords(e.words, why)
		return e.cannot(v.Reason, p.Time, meterGiveUp)
	}
	e.reasonT = p.Time
	v.Text, v.Words = all.Text, e.words.Term("eye.over")
	r := measure.Reading{State: measure.Over}
	if all.Shows == camera.Number {
		r = measure.Reading{Value: unit.Value{Dec: all.Value}}
		v.Words = e.words.Decimal(all.Value)
	}
	if all.Text != e.text {
		e.text, e.since = all.Text, p.Time
	}
	if float64(p.Time-e.since) < steadyFor || len(e.frames) < voteOver/2 {
		return nil
	}
	v.Steady = true
	if e.told == all.Text && float64(p.Time-e.toldAt) < retell {
		return nil
	}
	if all.Shows == camera.Number {
		r.Value.Unit = e.named(all.Text)
	}
	s := &protocol.Seen{Reading: &r, Text: all.Text, P: all.P, Frames: all.Frames}
	if all.Rival != "" {
		s.Rivals = []string{all.Rival}
	}
	return s
}

// named is the unit of the number that is told now, "" when it is not known, and keeps how it looks for somebody who names it.
func (e *eye) named(text string) string {
	if text == e.unitOf {
		return e.unit
	}
	var shown []camera.Beside
	for i, f := range e.frames {
		if f.Text == text {
			shown = append(shown, e.besides[i])
		}
	}
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

// light counts flashes.
func (e *eye) light(p *camera.Plane, v *EyeView, opts []string) *protocol.Seen {
	if e.lamp == nil {
		e.lamp, e.coded, e.first = &camera.Lamp{}, p.Time, p.Time
	}
	if err := e.lamp.See(p); err != nil {
		if p.Time > e.coded+2e9 { // another size or clock: the camera was opened anew
			e.lamp = nil
		}
		return nil
	}
	if float64(p.Time-e.coded) < lampEvery {
		return nil
	}
	e.coded = p.Time
	c := e.lamp.Code()
	if x, y, r, ok := e.lamp.Where(); ok {
		w, h := float64(p.W), float64(p.H)
		r = max(2*r, 8)
		v.Boxes = [][4][2]float64{{{(x - r) / w, (y - r) / h}, {(x + r) / w, (y - r) / h}, {(x + r) / w, (y + r) / h}, {(x - r) / w, (y + r) / h}}}
	}
	if c.Pattern != "" {
		v.Text, v.Words = c.ID(), codeWords(e.words, &c)
	}
	if !c.OK() {
		v.Reason = reasonWords(e.words, c.Reason)
		return e.cannot(v.Reason, p.Time, lampGiveUp)
	}
	v.Steady = true
	if e.told == v.Text {
		return nil
	}
	id := optionOf(e.words, &c, opts)
	if id == "" {
		return nil // it shows what this step cannot be answered with; the viewfinder says what
	}
	// Two agreeing cycles are asked for by the decoder; more make it surer.
	return &protocol.Seen{ID: id, Text: v.Text, P: 1 - 1/float64(uint(2)<<min(c.Cycles+2, 20)), Frames: c.Cycles}
}

// burner watches for glow and flame. One watch goes on from step to step: the camera stands where it stood, and what was dark before the
// start is still the measure of what glows.
func (e *eye) burner(p *camera.Plane, v *EyeView) *protocol.Seen {
	if e.fire == nil || float64(p.Time-e.seenAt) > fireGap {
		e.fire, e.coded, e.reasonT = e.aimed(p.W, p.H), p.Time, p.Time
	}
	if err := e.fire.See(p); err != nil {
		e.fire = nil // another clock or size: the camera was opened anew
		return nil
	}
	e.seenAt = p.Time
	if float64(p.Time-e.coded) < lampEvery {
		return nil
	}
	e.coded = p.Time
	w, h, s := float64(p.W), float64(p.H), e.fire.Spot
	x0, y0, x1, y1 := float64(s.X0)/w, float64(s.Y0)/h, float64(s.X1)/w, float64(s.Y1)/h
	v.Boxes = [][4][2]float64{{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}}
	now, why := e.fire.Now()
	v.Text, v.Words = string(now), e.words.Name("sight", string(now))
	t := e.fire.Tale()
	if t.What == camera.Unsure {
		if why == "" {
			return nil
		}
		v.Reason = reasonWords(e.words, why)
		return e.cannot(v.Reason, p.Time, fireGiveUp)
	}
	e.reasonT = p.Time
	v.Steady = true
	if e.told == string(t.What) && float64(p.Time-e.toldAt) < retell {
		return nil
	}
	// nine of ten in doubt are told right: what the figures of drawn burners leave wrong is less, what real ones do is not known
	return &protocol.Seen{Text: string(t.What), P: 0.9, From: max(1, (p.Time-t.From)/1e6), To: max(1, (p.Time-t.To)/1e6)}
}

// aimed is a watch of the window that was touched, or of the middle, beside the edge of the picture that is farther away.
func (e *eye) aimed(w, h int) *camera.FireWatch {
	at := [2]float64{0.5, 0.5}
	if e.window != nil {
		at = *e.window
	}
	cut := func(x0, x1, y float64) camera.Region {
		return camera.Region{X0: int(x0 * float64(w)), X1: int(x1 * float64(w)), Y0: int((y - 0.16) * float64(h)), Y1: int((y + 0.16) * float64(h))}
	}
	f := &camera.FireWatch{Spot: cut(at[0]-0.16, at[0]+0.16, at[1]), Ref: cut(0.02, 0.22, at[1])}
	if at[0] < 0.5 {
		f.Ref = cut(0.78, 0.98, at[1])
	}
	return f
}

// cannot tells why nothing is told, when that has been so for long enough.
func (e *eye) cannot(say string, at int64, long float64) *protocol.Seen {
	e.text = ""
	if float64(at-e.reasonT) < long {
		return nil
	}
	e.reasonT = at
	return &protocol.Seen{Reason: say}
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
	h.eye.told, h.eye.toldAt = s.Text, p.Time
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
