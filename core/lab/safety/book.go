package safety

import (
	"fmt"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
)

// Violation is a rule that was broken in a job, in words.
type Violation struct{ Rule, Detail string }

func (v Violation) String() string { return v.Rule + ": " + v.Detail }

const (
	secs       = 1000
	proofAge   = 15 * 60 * secs // issue 16 G1: fifteen minutes of work inside
	proofBreak = 3 * 60 * secs  // issue 16 G1: a longer silence ends the run
	consentAge = 2 * 60 * secs  // handbook dialogue, consent
	silence    = 95 * secs      // issue 16 G1: asked at 30 s and 60 s, then the words of an emergency; five seconds of grace
	emptyVolts = 5.0            // handbook equipment section 9, capacitor order
)

// proofOrder is live-dead-live: NFPA 70E article 120, handbook domain section 5.
var proofOrder = []string{"prove-live", "prove-line-neutral", "prove-line-ground", "prove-neutral-ground", "prove-again"}

// Book is the checker's own account of a job. It believes its hands, never the guide.
type Book struct {
	model  *appliance.Model
	house  *house // nil: what is physically so is not known
	checks map[string]int
	points map[string]int
	places map[string]int

	now     int64
	covers  map[string]bool // by place id
	wires   map[string]bool // by point id
	jumper  string          // check id
	held    bool
	series  string // check id
	jack    bool
	power   string // on, off, unknown
	call    string
	offAt   int64
	starts  int
	drained map[string]bool // by part id: discharged
	empty   map[string]bool // and verified

	run      int // readings of the proof done in one run
	runAt    int64
	proved   bool
	asides   bool // a danger was asked about in the run
	provedAt int64

	consent   string
	consentAt int64
	toProve   int64 // when proving dead was agreed to, 0 for not
	license   bool
	noMains   bool
	noLive    bool
	stopped   string // the stop line that an answer crossed
	gate      string // the gate that failed
	reask     string // the gate whose answer was an alarm that was denied: open until it is asked again
	alarm     string // class that ends the job

	pending  string          // an act that was reported, and not taken yet
	doubted  *protocol.Event // an answer behind which an alarm may stand
	before   *protocol.View  // what it answered
	aside    string          // the step that a doubted danger interrupted
	again    bool            // and is asked again
	reading  *measure.Reading
	seen     *measure.Reading // what the camera saw last: the person may name its unit
	recalled string           // step that may be asked from memory
	basis    int64            // when the person, or a new question, was last heard
	last     *protocol.View
	Broken   []Violation
}

// NewBook begins a book.
func NewBook(m *appliance.Model) *Book {
	b := &Book{model: m, checks: map[string]int{}, points: map[string]int{}, places: map[string]int{}, covers: map[string]bool{},
		wires: map[string]bool{}, drained: map[string]bool{}, empty: map[string]bool{}, power: "unknown", call: "unknown"}
	for i := range m.Checks {
		b.checks[m.Checks[i].ID] = i
	}
	for i := range m.Points {
		b.points[m.Points[i].ID] = i
	}
	for i := range m.Places {
		b.places[m.Places[i].ID] = i
	}
	return b
}

func (b *Book) fail(rule, format string, args ...any) {
	b.Broken = append(b.Broken, Violation{rule, fmt.Sprintf(format, args...)})
}

// actOf takes a step id apart: "act.lift-wire.glow-a" is the act lift-wire on glow-a.
func actOf(step string) (act, on string) {
	rest, ok := strings.CutPrefix(step, "act.")
	if !ok {
		return "", ""
	}
	act, on, _ = strings.Cut(rest, ".")
	return act, on
}

// answers tells whether an event holds an answer that the step offers as its own.
func answers(ev *protocol.Event, v *protocol.View) (id string, ok bool) {
	if ev.Said == nil || v == nil {
		return "", false
	}
	for _, x := range ev.Said.Meanings {
		for _, a := range v.Step.Answers {
			if a.Kind == utterance.Choice && a.ID == x.ID && (x.Kind == utterance.Choice || x.Kind == utterance.Command) {
				return x.ID, true
			}
		}
		if x.Kind == utterance.Count {
			return x.Text, true
		}
	}
	return "", false
}

func commandOf(ev *protocol.Event) string {
	if ev.Said == nil || len(ev.Said.Meanings) == 0 || ev.Said.Meanings[0].Kind != utterance.Command {
		return ""
	}
	return ev.Said.Meanings[0].ID
}

func readingOf(ev *protocol.Event) *measure.Reading {
	if ev.Said == nil {
		return nil
	}
	for _, x := range ev.Said.Meanings {
		if x.Reading != nil {
			return x.Reading
		}
	}
	return nil
}

// unitOf is the unit that is named for a number given before.
func unitOf(ev *protocol.Event) string {
	if ev.Said == nil || len(ev.Said.Meanings) == 0 || ev.Said.Meanings[0].Kind != utterance.UnitOnly {
		return ""
	}
	return ev.Said.Meanings[0].ID
}

// exposed tells whether more than touch-safe voltage (IEC 61010-1: 30 V a.c.) lies behind a place, or behind one around it.
func (b *Book) exposed(place int) bool {
	for n := 0; place >= 0 && n < 20; place, n = b.model.Places[place].Within, n+1 {
		p := &b.model.Places[place]
		if p.Cover && (slices.Contains(p.Hazards, "mains") || slices.Contains(p.Hazards, "capacitor")) {
			return true
		}
	}
	return false
}

// openLive tells whether an opened cabinet has house voltage in it, as far as hands know.
func (b *Book) openLive() bool {
	if b.power != "on" && b.power != "unknown" {
		return false
	}
	for c := range b.covers {
		if i, ok := b.places[c]; ok && b.exposed(i) {
			return true
		}
	}
	return false
}

// liveWork tells whether a check is work at more than touch-safe voltage.
func (b *Book) liveWork(c *appliance.Check) bool {
	if c.Stage == "safety" || c.Power == "off" {
		return false
	}
	hazard := c.Hazard == "mains" || c.Hazard == "capacitor"
	if c.Power == "any" {
		return hazard && c.Function != measure.Look
	}
	return hazard || slices.ContainsFunc(c.Places, b.exposed) || c.Red >= 0 && b.exposed(b.model.Points[c.Red].Place)
}

// ends tells what a job may end as.
var goodEnds = []string{"fixed", "nothing-wrong"}
var openEnds = []string{"emergency", "left-open", "still-live", "stopped-after-emergency"}

// Note takes an event and what came of it.
func (b *Book) Note(ev *protocol.Event, out []protocol.Effect) {
	before := b.last
	b.now = max(b.now, ev.At)
	var after *protocol.View
	for i := range out {
		if out[i].Type == protocol.DoShow {
			after = out[i].View
		}
	}
	if after == nil {
		b.fail("a view follows every event", "none after %s", ev.Type)
		return
	}
	b.last = after
	fresh := before == nil || before.Step.ID != after.Step.ID
	if before != nil {
		b.happened(ev, before, after)
	}
	if ev.Type != protocol.EvTick || fresh {
		b.basis = b.now
	}
	b.emergency(ev, before, out, after)
	for _, e := range out {
		if e.Type == protocol.DoEnd {
			b.end(e.Text, out)
		}
	}
	if after.State == "ended" || after.State == "emergency" {
		b.run = 0
		if after.State == "emergency" {
			b.proved, b.power = false, "unknown"
		}
		return
	}
	b.remembers(after)
	if ev.Type == protocol.EvTick && b.openLive() && after.State != "confirm" && b.now-b.basis > silence {
		b.fail("silence at a live open cabinet is asked about and then an emergency", "%d s at %s, covers %v", (b.now-b.basis)/secs, after.Step.ID, b.covers)
	}
	if after.Step.ID == "right-now" && before != nil && before.Step.ID != "right-now" {
		b.aside = before.Step.ID
	}
	if fresh {
		b.again = before != nil && before.Step.ID == "right-now" && after.Step.ID == b.aside // a danger was denied: the same question goes on
		b.asked(after)
	}
}

// happened books what hands did and what was answered.
func (b *Book) happened(ev *protocol.Event, before, after *protocol.View) {
	id := before.Step.ID
	moved := after.Step.ID != id
	cmd := commandOf(ev)
	switch {
	case ev.Type == protocol.EvResume, cmd == "it-changed":
		b.proved, b.run, b.power = false, 0, "unknown"
		b.call, b.drained, b.empty = "unknown", map[string]bool{}, map[string]bool{}
		b.consent, b.toProve = "", 0
	case cmd == "hold-on":
		b.run = 0
	case ev.Type == protocol.EvUndo, cmd == "back", cmd == "scratch-that", repairs(ev): // the person says that an answer was wrong
		b.gate, b.stopped, b.noLive, b.noMains = "", "", false, false
		b.recalled = ""
		if repairs(ev) {
			b.recalled = after.Step.ID
		}
	}
	if ev.Said != nil && len(ev.Said.Meanings) > 0 && (ev.Said.Meanings[0].ID == "no" || ev.Said.Meanings[0].ID == "different") && moved {
		b.gate, b.stopped = "", ""
		b.recalled = after.Step.ID
	}
	if act, _ := actOf(id); act != "" {
		if ev.Seen != nil && ev.Seen.Reading != nil {
			b.seen = ev.Seen.Reading
		}
		r := readingOf(ev)
		if r == nil && b.seen != nil && unitOf(ev) != "" {
			named := *b.seen
			named.Value.Unit = unitOf(ev)
			r = &named
		}
		if r != nil {
			b.reading = r
		}
		if _, ok := answers(ev, before); ok || cmd == "done" && act != "power-off" && act != "power-on" || r != nil && strings.HasPrefix(act, "prove-") {
			b.pending = id
		}
	}
	if after.State == "emergency" {
		b.pending = "" // whatever was said with it was not taken
	}
	if b.pending != "" && after.Step.ID != b.pending && after.Step.ID != "right-now" && after.State != "emergency" {
		_, said := answers(ev, before)
		if said || readingOf(ev) != nil || unitOf(ev) != "" || positive(ev) || ev.Type == protocol.EvSeen { // a camera that agrees is a second witness beside what was said
			b.did(b.pending)
		}
		b.pending = ""
	}
	switch {
	case after.Step.ID == "right-now":
		if id != "right-now" {
			b.doubted, b.before = ev, before
		}
	case id == "right-now":
		if b.doubted != nil && positive(ev) && after.State != "emergency" && after.Step.ID != b.before.Step.ID {
			b.answered(b.doubted, b.before)
		}
		b.doubted = nil
	case moved && before.State != "emergency":
		b.answered(ev, before)
	}
}

func repairs(ev *protocol.Event) bool {
	return ev.Said != nil && slices.ContainsFunc(ev.Said.Meanings, func(x utterance.Meaning) bool { return x.Repair })
}

func positive(ev *protocol.Event) bool {
	return ev.Said != nil && slices.ContainsFunc(ev.Said.Meanings, func(x utterance.Meaning) bool {
		return x.ID == "right-value" || x.ID == "none" || x.ID == "done" || x.ID == "ready" || x.ID == "yes"
	})
}

// did books an act that was reported done and taken.
func (b *Book) did(step string) {
	act, on := actOf(step)
	lit := b.power == "on" && b.call != "off"
	switch act {
	case "power-off":
		b.power, b.offAt = "off", b.now
		if b.house != nil {
			b.house.switchOff()
		}
		if !b.model.Mains {
			b.proved, b.provedAt = true, b.now
		}
	case "power-on":
		b.power, b.proved, b.run = "on", false, 0
		b.drained, b.empty = map[string]bool{}, map[string]bool{}
		if b.house != nil {
			b.house.switchOn()
		}
	case "call-on":
		b.call = "on"
	case "call-off":
		b.call = "off"
	case "open-cover":
		b.covers[on] = true
	case "close-cover":
		delete(b.covers, on)
	case "lift-wire":
		b.wires[on] = true
	case "refit-wire":
		delete(b.wires, on)
	case "hold-door":
		b.held = true
	case "free-door":
		b.held = false
	case "jumper-in":
		b.jumper = on
	case "jumper-out":
		b.jumper = ""
	case "meter-in":
		b.series, b.jack = on, true
	case "meter-out":
		b.series = ""
	case "jack-out":
		b.jack = false
	case "discharge":
		b.drained[b.partAt(on)] = true
	case "prove-empty":
		if r := b.reading; r != nil && r.State == measure.Number && max(r.Value.Base(), -r.Value.Base()) < emptyVolts {
			b.empty[b.partAt(on)] = b.drained[b.partAt(on)]
		} else {
			delete(b.drained, b.partAt(on))
		}
	}
	if n := slices.Index(proofOrder, act); n >= 0 {
		b.proofReading(n)
	}
	if now := b.power == "on" && b.call != "off"; now && !lit && slices.Index(proofOrder, act) < 0 { // what a proof finds still on was never off
		b.starts++
		if n := b.model.Starts; n > 0 && b.starts > n {
			b.fail("ignitions are counted over the whole job", "start %d of %d", b.starts, n)
		}
		if b.model.Fuel == "gas" && !b.model.Mains && b.starts > 1 && b.offAt > 0 && b.now-b.offAt < 300*secs {
			b.fail("a pilot is lit again after five minutes", "%d s", (b.now-b.offAt)/secs)
		}
	}
}

// partAt is the part whose terminal a point is.
func (b *Book) partAt(point string) string {
	if i, ok := b.points[point]; ok {
		p, _, _ := strings.Cut(b.model.Points[i].Net, ".")
		return p
	}
	return point
}

func (b *Book) proofReading(n int) {
	r := b.reading
	if r == nil || n != b.run || b.run > 0 && b.now-b.runAt > proofBreak {
		b.run = 0
		if n != 0 || r == nil {
			return
		}
	}
	v := r.Value.Base()
	good := r.State == measure.Number && v < 0.5 && v > -0.5
	if n == 0 || n == 4 {
		good = r.State == measure.Number && max(v, -v) >= 90
	} else if r.State == measure.Number && max(v, -v) >= 30 {
		b.power = "on"
	}
	if !good {
		b.run = 0
		return
	}
	if b.run, b.runAt = n+1, b.now; n == 0 {
		b.asides = false
	}
	if b.run == len(proofOrder) {
		b.run, b.proved, b.provedAt = 0, true, b.now
		if b.asides {
			b.fail("a question about a danger ends the run of the proof", "dead counts as proved all the same")
		}
	}
}

// answered books what an answer to a check, or about the person, decides.
func (b *Book) answered(ev *protocol.Event, before *protocol.View) {
	id, ok := answers(ev, before)
	switch before.Step.ID {
	case "consent":
		if x := ev.Said; x != nil && len(x.Meanings) > 0 && x.Meanings[0].ID == "go-live" {
			if strings.Contains(before.Step.Act, "prove") {
				b.toProve = b.now
			} else {
				b.consent, b.consentAt = before.Step.Act, b.now
			}
		}
		return
	case "license":
		b.license = ok && id == "yes"
		return
	case "meter.category":
		b.noMains = !(ok && id == "rated")
		return
	}
	i, known := b.checks[before.Step.ID]
	if !known {
		return
	}
	c := &b.model.Checks[i]
	if b.liveWork(c) {
		b.consent = "" // for one check, one time
	}
	bad := false
	if ok {
		if k := slices.IndexFunc(c.Options, func(o appliance.Option) bool { return o.ID == id }); k >= 0 {
			o := &c.Options[k]
			bad = k > 0
			if o.Stop >= 0 {
				b.stopped = b.model.Stops[o.Stop].ID
			}
			b.noLive = b.noLive || o.NoLive
		}
	}
	if r := readingOf(ev); r != nil && c.Limit != nil && r.State == measure.Number {
		x := r.Value.Base() / base(c.Unit)
		bad = c.Limit.Low != nil && x < *c.Limit.Low*0.5 || c.Limit.High != nil && x > *c.Limit.High*1.5 // far out: no doubt about it
	}
	restart := c.Stage == "restart" && before.StageNo == 14
	cause := c.Must && before.StageNo == 10
	switch {
	case bad && (restart || cause):
		b.gate = c.ID
	case !bad && b.gate == c.ID:
		b.gate = ""
	}
	if c.ID == b.reask {
		b.reask = ""
	}
}

// remembers holds that what hands put in place is in the view: nothing is forgotten.
func (b *Book) remembers(v *protocol.View) {
	if b.pending != "" {
		return
	}
	for c := range b.covers {
		if i, ok := b.places[c]; ok && !slices.Contains(v.Site.Covers, b.model.Places[i].Name) {
			b.fail("what is open is never forgotten", "cover %s at %s", c, v.Step.ID)
		}
	}
	for w := range b.wires {
		if i, ok := b.points[w]; ok && !slices.Contains(v.Site.Wires, b.model.Points[i].Name) {
			b.fail("what is off is never forgotten", "wire %s at %s", w, v.Step.ID)
		}
	}
	if b.jumper != "" && len(v.Site.Jumpers) == 0 {
		b.fail("a jumper is never forgotten", "at %s", v.Step.ID)
	}
	if b.held && v.Site.Door != "held" {
		b.fail("a held door switch is never forgotten", "at %s", v.Step.ID)
	}
	if b.jack && !v.Site.Jack {
		b.fail("the red lead in the current jack is never forgotten", "at %s", v.Step.ID)
	}
}

func (b *Book) dead() bool {
	return b.proved && (!b.model.Mains || b.now-b.provedAt <= proofAge)
}

// asked holds what may be asked now.
func (b *Book) asked(v *protocol.View) {
	id := v.Step.ID
	act, on := actOf(id)
	if b.run > 0 && id == "right-now" {
		b.asides = true
	} else if b.run > 0 && id != "consent" && (act == "" || slices.Index(proofOrder, act) < 0) {
		b.run = 0 // any other question ends the run
	}
	if b.alarm != "" && id != "right-now" {
		b.fail("after "+b.alarm+" the job does not go on", "%s is asked", id)
	}
	off := b.power == "off" || b.dead()
	switch act {
	case "lift-wire", "refit-wire", "jumper-in", "meter-in", "discharge", "prove-empty":
		if !b.dead() {
			b.fail("hands go in only when off and proved dead", "%s with power %s, proved %v, %d s ago", id, b.power, b.proved, (b.now-b.provedAt)/secs)
		}
		b.physically(id)
	case "jumper-out", "meter-out", "hold-door", "free-door":
		if !off {
			b.fail("hands go in only with the power off", "%s with power %s", id, b.power)
		}
	case "open-cover", "close-cover":
		if i, ok := b.places[on]; ok && b.model.Mains && b.exposed(i) && !off {
			b.fail("covers move only with the power off", "%s with power %s", id, b.power)
		}
	case "gas-open":
		b.fail("nobody is asked to open gas for the guide", "%s", id)
	case "power-on":
		switch {
		case b.gate != "":
			b.fail("a failed gate energises nothing", "power on after %s", b.gate)
		case b.stopped != "":
			b.fail("nothing is switched on beyond a stop line", "power on after %s", b.stopped)
		}
	case "prove-live":
		if !b.again && (b.toProve == 0 || b.now-b.toProve > consentAge) {
			b.fail("live work is agreed to, one check, one time", "%s without consent", id)
		}
		b.toProve = 0
		if b.noMains || b.noLive {
			b.fail("no house voltage is read without a meter made for it, or on a wet floor", "%s", id)
		}
		if b.jack || b.series != "" {
			b.fail("the meter is free for volts before a proof", "%s with the red lead in the current jack", id)
		}
	}
	if act == "lift-wire" {
		if i, ok := b.points[on]; ok {
			for k := range b.model.Parts {
				if p := &b.model.Parts[k]; p.ID == b.partAt(on) && p.Kind == "capacitor" && !b.empty[p.ID] {
					b.fail("a capacitor is discharged and verified before its wires move", "%s of %s", b.model.Points[i].ID, p.ID)
				}
			}
		}
	}
	if act == "prove-live" || act == "place-leads" || act == "meter-in" {
		if v.Step.Meter == "" {
			b.fail("dial and jack are said before a lead is placed", "%s", id)
		}
	}
	if i, ok := b.checks[id]; ok && id != b.recalled && v.Stage != "ended" {
		b.check(v, &b.model.Checks[i])
	}
	if strings.Contains(id, ".") && act == "" {
		b.swap(v)
	}
}

// check holds what may be so when a check is asked.
func (b *Book) check(v *protocol.View, c *appliance.Check) {
	if c.Stage == "safety" {
		return
	}
	drives := c.Function == measure.Ohms || c.Function == measure.Continuity || c.Function == measure.Capacitance
	if drives || c.HandsIn && c.Power != "on" {
		if !b.dead() {
			b.fail("no ohms and no hands but proved dead", "%s with power %s, proved %v, %d s ago", c.ID, b.power, b.proved, (b.now-b.provedAt)/secs)
		}
		b.physically(c.ID)
	}
	if drives && (b.jack || b.series != "") {
		b.fail("no ohms with the red lead in the current jack", "%s", c.ID)
	}
	if c.Licensed && !b.license {
		b.fail("licensed work is asked of the licensed only", "%s", c.ID)
	}
	if b.stopped != "" {
		b.fail("nothing is checked beyond a stop line", "%s after %s", c.ID, b.stopped)
	}
	lifts := map[string]bool{}
	for _, p := range c.Lift {
		lifts[b.model.Points[p].ID] = true
		if !b.wires[b.model.Points[p].ID] {
			b.fail("a check is asked with its wires off", "%s without %s lifted", c.ID, b.model.Points[p].ID)
		}
	}
	if c.Power == "on" {
		for w := range b.wires {
			if !lifts[w] {
				b.fail("power is on with a wire off that this check does not lift", "%s with %s off", c.ID, w)
			}
		}
		if b.jumper != "" && b.jumper != c.ID {
			b.fail("a jumper serves one check", "%s with the jumper of %s", c.ID, b.jumper)
		}
		if b.gate != "" && c.ID != b.gate {
			b.fail("a failed gate energises nothing", "%s after %s", c.ID, b.gate)
		}
	}
	if b.liveWork(c) {
		b.agreed(c.ID, c.Name)
		if c.Function != measure.Look && c.Function != measure.Manometer && c.Function != measure.Thermometer && (b.noMains || b.noLive) {
			b.fail("no house voltage is read without a meter made for it, or on a wet floor", "%s", c.ID)
		}
	}
	if v.Step.Kind == "measure" && len(v.Step.Points) > 0 && v.Step.Meter == "" {
		b.fail("dial and jack are said before a lead is placed", "%s", c.ID)
	}
}

// swap holds what may be so at a step of a repair.
func (b *Book) swap(v *protocol.View) {
	repair, n, _ := strings.Cut(v.Step.ID, ".")
	for i := range b.model.Repairs {
		r := &b.model.Repairs[i]
		if r.ID != repair {
			continue
		}
		k := 0
		if _, err := fmt.Sscanf(n, "%d", &k); err != nil || k < 1 || k > len(r.Steps) {
			return
		}
		s := &r.Steps[k-1]
		if r.Stop >= 0 || r.Part >= 0 && b.model.Parts[r.Part].Stop >= 0 {
			b.fail("the guide stops at a stop line", "%s is led through", r.ID)
		}
		if s.Power == "off" || s.Power == "" {
			if !b.dead() && (b.model.Mains || b.power != "off") {
				b.fail("hands go in only when off and proved dead", "%s with power %s, proved %v", v.Step.ID, b.power, b.proved)
			}
			b.physically(v.Step.ID)
		}
	}
}

// physically holds the last thing that counts: no hand is sent where there is house voltage.
func (b *Book) physically(what string) {
	if b.house != nil && b.model.Mains && b.house.live() {
		b.fail("no hand is sent where there is house voltage", "%s in a house that is live", what)
	}
}

// agreed holds that consent was given to this, and just now.
func (b *Book) agreed(what, name string) {
	switch {
	case b.consent == "":
		b.fail("live work is agreed to, one check, one time", "%s without consent", what)
	case !strings.Contains(b.consent, name):
		b.fail("consent is for what it named", "%s after %q", what, b.consent)
	case b.now-b.consentAt > consentAge:
		b.fail("consent does not last", "%s %d s after consent", what, (b.now-b.consentAt)/secs)
	}
}

// endings of the classes after which a job does not go on: issue 16 G4.
var ends = []string{"gas", "co", "ill", "fire", "blast", "faint", "any", "shock", "spark"}

// emergency holds what follows an alarm.
func (b *Book) emergency(ev *protocol.Event, before *protocol.View, out []protocol.Effect, after *protocol.View) {
	if cmd := commandOf(ev); cmd == "false-alarm" || ev.Said != nil && len(ev.Said.Meanings) > 0 && ev.Said.Meanings[0].ID == "false-alarm" {
		b.alarm = ""
	}
	if before != nil && before.Step.ID == "right-now" && after.State != "emergency" {
		b.alarm = "" // it was denied
		if i := slices.IndexFunc(b.model.Checks, func(c appliance.Check) bool { return c.ID == b.gate }); i >= 0 &&
			slices.ContainsFunc(b.model.Checks[i].Options, func(o appliance.Option) bool { return o.Emergency != "" }) {
			b.gate = "" // so was the gate's answer; that the gate is asked again, the end tells
			b.reask = b.model.Checks[i].ID
		}
	}
	if cls, ok := strings.CutPrefix(after.Step.ID, "alarm."); ok && after.State == "emergency" && slices.Contains(ends, cls) {
		b.alarm = cls
	}
	if ev.Said == nil || len(ev.Said.Meanings) == 0 || before == nil || before.State == "ended" {
		return
	}
	x := ev.Said.Meanings[0]
	if x.Kind != utterance.Emergency || x.Doubt || x.ID == "ask" {
		return
	}
	if after.State != "emergency" {
		b.fail("an alarm is answered from every state", "%s at %s: %s", x.ID, before.Step.ID, after.State)
		return
	}
	first := ""
	for _, e := range out {
		if e.Type == protocol.DoSay {
			if first = e.Text; e.Level != "emergency" {
				b.fail("nothing comes before the command of an emergency", "%q", e.Text)
			}
			break
		}
	}
	if n := len(strings.Fields(first)); n == 0 || n > 6 {
		b.fail("the first line of an emergency is the command, six words at most", "%q", first)
	}
	if strings.Trim(after.Call, "0123456789") != "" || after.Call == "" {
		b.fail("the number to call is on the screen in digits", "%q", after.Call)
	}
}

// end holds how a job may end.
func (b *Book) end(outcome string, out []protocol.Effect) {
	open := len(b.covers)+len(b.wires) > 0 || b.jumper != "" || b.held || b.series != "" || b.jack
	if open && !slices.Contains(openEnds, outcome) {
		b.fail("every end leaves the place in order", "%s with covers %v, wires %v, jumper %q, held %v, meter %q", outcome, b.covers, b.wires, b.jumper, b.held, b.series)
	}
	if open && slices.Contains(openEnds, outcome) && outcome != "emergency" {
		if !slices.ContainsFunc(out, func(e protocol.Effect) bool { return e.Type == protocol.DoSay && e.Level == "danger" }) {
			b.fail("what stays open is said", "%s", outcome)
		}
	}
	if slices.Contains(goodEnds, outcome) {
		switch {
		case b.gate != "" || b.reask != "":
			b.fail("a failed gate is never fixed", "%s after %s", outcome, b.gate+b.reask)
		case b.stopped != "":
			b.fail("a stop line is never fixed", "%s after %s", outcome, b.stopped)
		case b.alarm != "":
			b.fail("an emergency is never fixed", "%s after %s", outcome, b.alarm)
		}
	}
}
