package job

import (
	"math"
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
)

// The camera is one more witness. What it sees is put to the person or held against what the person says:
// agreement confirms without a question, a difference is asked about, and nothing that clears a hazard is taken from
// the camera alone. Without a camera nothing here happens and everything works by voice and touch.

// see works what the camera makes of the open step.
func (m *Machine) see(s *protocol.Seen) {
	j, q := m.j, m.j.q
	if s.Kind == protocol.EyeAfter && s.Reason == "" && j.repair >= 0 && j.state != "ended" {
		m.seeWires(s) // an undo may replay it at another step: what was found is never lost
		return
	}
	if j.alarm != "" || j.doubtAsk || j.state == "ended" || q == nil || s.Step != q.step.ID || s.Kind != q.step.Eye {
		return // of another step, or nothing that can be seen now
	}
	j.eye = true
	if s.Reason != "" {
		m.cannotSee(s.Reason)
		return
	}
	if j.holding || q.ready { // the leads are not in place yet
		return
	}
	switch {
	case s.Reading != nil && len(q.units) > 0 && s.Kind != protocol.EyePlate:
	case s.Kind == protocol.EyeFire && len(m.fits(q, s.Text)) > 0:
	case s.ID != "" && slices.Contains(q.opts, s.ID):
	case s.Kind == protocol.EyePlate && s.Text != "" && q.text:
	default:
		return
	}
	old := q.sight
	q.sight = &sight{*s, j.now}
	if q.blind || old != nil && old.same(s) && (j.state != "ask" || q.offered > 0) {
		return
	}
	q.seqs = append(q.seqs, j.seq)
	if s.Reading != nil {
		m.seeReading(*s.Reading)
		return
	}
	if s.Kind != protocol.EyeFire {
		m.seeChoice(q.sight.meaning())
	} else if ids := m.fits(q, s.Text); len(ids) == 1 && s.Text != appliance.SeenDark {
		m.seeChoice(choiceOf(ids[0]))
	}
}

// fits lists the answers that go with what a camera makes of the burner.
func (m *Machine) fits(q *question, seen string) (ids []string) {
	if q.check < 0 {
		return nil
	}
	for _, o := range m.model.Checks[q.check].Options {
		if slices.Contains(o.Seen, seen) {
			ids = append(ids, o.ID)
		}
	}
	return ids
}

// same tells whether the camera still sees the same.
func (s *sight) same(t *protocol.Seen) bool {
	if s.ID != t.ID || s.Text != t.Text || (s.Reading == nil) != (t.Reading == nil) {
		return false
	}
	return s.Reading == nil || s.Reading.State == t.Reading.State && s.Reading.Value == t.Reading.Value
}

// meaning is a finding that is no reading, as an answer.
func (s *sight) meaning() utterance.Meaning {
	if s.Kind == protocol.EyePlate {
		return utterance.Meaning{Kind: utterance.Text, Text: s.Text}
	}
	return choiceOf(s.ID)
}

// cannotSee says once why the camera cannot tell; the step goes on by voice.
func (m *Machine) cannotSee(why string) {
	q := m.j.q
	if slices.Contains(q.reasons, why) || len(q.reasons) >= reasonMax {
		return
	}
	q.reasons = append(q.reasons, why)
	m.say("info", sentence(why))
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
}

// eyeOff notes that there is no camera; that is said once, when a step would have used it.
func (m *Machine) eyeOff(why string) {
	j := m.j
	j.eye = false
	if j.eyeless || j.alarm != "" || j.state == "ended" {
		return
	}
	j.eyeless = true
	m.say("info", firstOf(why, m.line("eye.none")))
}

// offerEye says that the camera can answer the step, where that saves handling: a meter is read while both hands hold leads,
// a light is counted.
func (m *Machine) offerEye(q *question) {
	j := m.j
	if !j.eye || q.step.Eye == "" || q.blind || q.ready {
		return
	}
	id := q.step.Eye
	if id == protocol.EyeBefore || id == protocol.EyeAfter {
		if id == protocol.EyeAfter {
			m.say("info", m.line("eye.photo"))
		}
		return
	}
	if j.patterns["eye."+id] >= 2 || !m.worthSeeing(q) {
		return
	}
	j.patterns["eye."+id]++
	m.say("info", m.line("eye."+id))
}

// worthSeeing asks the adviser whether the camera is the better way for this step; one that has no opinion says yes.
func (m *Machine) worthSeeing(q *question) bool {
	w, ok := m.adv.(watcher)
	if !ok {
		return true
	}
	x := Watch{Eye: q.step.Eye, Voice: m.j.begin.Voice, Noise: m.j.noise, Misses: q.errs}
	switch {
	case q.check >= 0:
		c := &m.model.Checks[q.check]
		x.Hands = b2i(c.Red >= 0) + b2i(c.Black >= 0)
	case q.step.Eye == protocol.EyeMeter: // the proof, and the leads held together
		x.Hands = 2
	}
	return w.Watch(x)
}

// seeReading works a number or a state on the meter's display.
func (m *Machine) seeReading(r measure.Reading) {
	q := m.j.q
	switch {
	case q.first != nil: // said once already: the camera is the second witness
		switch r2, ok := m.together(q.first.Reading, true); {
		case !ok:
			m.differs(*q.first)
		case q.sight.P >= surely:
			m.agreed(utterance.Meaning{Kind: utterance.Reading, Reading: r2})
		}
		return
	case q.pending != nil && !q.sighted:
		if r2, ok := m.together(q.pending.Reading, false); ok {
			m.agreed(utterance.Meaning{Kind: utterance.Reading, Reading: r2})
			return
		}
		m.differs(*q.pending)
		return
	case len(q.choices) > 0:
		for _, c := range q.choices {
			if c.Reading == nil {
				continue
			}
			if r2, ok := m.together(c.Reading, false); ok && !(q.hazard && isZero(r2)) {
				m.agreed(utterance.Meaning{Kind: utterance.Reading, Reading: r2})
				return
			}
		}
		return
	}
	m.propose(r)
}

// propose puts to the person what the camera alone sees.
func (m *Machine) propose(r measure.Reading) {
	j, q := m.j, m.j.q
	units := q.units
	if r.State != measure.Number || r.Value.Unit != "" {
		units = nil
	} else if len(units) == 1 {
		r.Value.Unit, units = units[0], nil
	}
	if q.offered >= offersMax || len(units) == 0 && m.rejected(q, &r) {
		return
	}
	if why := m.impossible(&r); len(units) == 0 && why != "" {
		if q.sight.Reading.Value.Unit != "" && !q.hazard { // the dial stands wrong
			q.offered++
			m.say("info", m.line("eye.odd", "value", m.reading(&r), "why", why))
		}
		return
	}
	q.offered++
	q.pending, q.number, q.sighted = nil, nil, true
	x := utterance.Meaning{Kind: utterance.Reading, Reading: &r}
	seen := m.words.Decimal(r.Value.Dec)
	if len(units) == 0 {
		seen = m.reading(&r)
	}
	j.heardView = &protocol.HeardView{Text: q.sight.Text, Rivals: q.sight.Rivals}
	m.pendingView(x)
	m.cue("ask")
	switch {
	case q.hazard && (len(units) == 0 && isZero(&r) || len(units) > 0 && math.Abs(r.Value.Dec.Float()) < zeroVolts):
		q.sighted = false
		m.say("info", m.line("eye.zero", "value", seen))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: "number"})
	case len(units) > 0:
		q.number, j.state = &r, "confirm"
		m.say("info", m.line("eye.unit", "number", seen, "units", m.unitWords(units)))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: "choice"})
	default:
		q.pending, j.state = &x, "confirm"
		m.say("info", m.line("eye.sees", "value", m.reading(&r)))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: "choice"})
	}
}

// unitTold takes the unit for a number without one. When the camera sees the number, the person has heard it and named its
// unit; a number that was said is decided upon as if the unit had been said with it.
func (m *Machine) unitTold(u *utterance.Utterance, id string) {
	q := m.j.q
	r := *q.number
	r.Value.Unit = id
	seen := q.sighted
	q.number, q.sighted = nil, false
	if !seen {
		v := *u
		v.Meanings = []utterance.Meaning{{Kind: utterance.Reading, Reading: &r}}
		m.decided(&v, utterance.Decide(&v, m.slot(q)))
		return
	}
	m.teach(&r)
	if q.hazard && isZero(&r) { // a unit is no saying of the value: five milli volts are dead
		m.j.state = "ask"
		m.say("info", m.line("eye.zero", "value", m.reading(&r)))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: "number"})
		return
	}
	if why := m.impossible(&r); why != "" {
		m.j.state = "ask"
		m.odd(why)
		return
	}
	q.typed = true
	m.accept(utterance.Meaning{Kind: utterance.Reading, Reading: &r})
}

// seeChoice works a count of blinks or a line of the plate.
func (m *Machine) seeChoice(x utterance.Meaning) {
	j, q := m.j, m.j.q
	if q.pending != nil && !q.sighted || q.offered >= offersMax {
		return
	}
	q.offered++
	q.pending, q.sighted, j.state = &x, true, "confirm"
	words := m.option(x.ID)
	if x.Kind == utterance.Text {
		words = x.Text
	}
	j.heardView = &protocol.HeardView{Text: words, Taken: words, Pending: true, Rivals: q.sight.Rivals}
	m.cue("ask")
	m.say("info", m.line("eye.sees", "value", words))
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: "choice"})
}

// beside holds what was said against what the camera sees, when it sees something. It tells whether that settled it.
func (m *Machine) beside(u *utterance.Utterance, fits []utterance.Meaning) bool {
	q := m.j.q
	if q.sight == nil || q.blind || m.j.now-q.sight.at > freshFor {
		return false
	}
	best := fits[0]
	if q.sight.Reading == nil {
		return m.besideChoice(best)
	}
	if x, ok := asReading(best); !ok || x.Reading == nil {
		return false
	}
	for i, x := range fits {
		x, ok := asReading(x)
		if !ok || x.Cost > agreeWithin {
			continue
		}
		r, ok := m.settled(x)
		if !ok {
			if i == 0 {
				return false // its unit is not known: asked first
			}
			continue
		}
		clears := q.hazard && isZero(r)
		if clears && (i > 0 || q.sight.P < surely) {
			continue
		}
		if r, ok := m.together(r, clears); ok {
			m.teach(x.Reading)
			m.agreed(utterance.Meaning{Kind: utterance.Reading, Reading: r})
			return true
		}
	}
	x, _ := asReading(best)
	r, ok := m.settled(x)
	if !ok {
		return false
	}
	m.differs(utterance.Meaning{Kind: utterance.Reading, Reading: r})
	return true
}

// teach hands on the unit that the person named, where the camera sees the number without one: the same meter will show it in the same way.
func (m *Machine) teach(said *measure.Reading) {
	if s := m.j.q.sight; s != nil && s.Reading != nil && s.Reading.State == measure.Number && s.Reading.Value.Unit == "" && said.Value.Unit != "" {
		m.emit(protocol.Effect{Type: protocol.DoTeach, ID: said.Value.Unit})
	}
}

// agreeWithin is how many nats behind the best words a rival may be that the camera confirms: about one in twenty.
const agreeWithin = 3.0

func (m *Machine) besideChoice(best utterance.Meaning) bool {
	q := m.j.q
	if q.sight.Kind == protocol.EyeFire {
		return m.besideFire(best)
	}
	x := q.sight.meaning()
	switch {
	case best.Kind == utterance.Count && x.Kind == utterance.Choice:
		best = choiceOf(best.Text)
	case best.Kind != x.Kind:
		return false
	}
	if best.ID == x.ID && best.Text == x.Text || x.Kind == utterance.Choice && best.ID == x.ID {
		m.agreed(x)
		return true
	}
	if x.Kind == utterance.Text { // what is read off the plate by the person wins
		q.blind = true
		return false
	}
	m.differs(best)
	return true
}

// besideFire holds a said answer against what the camera makes of the burner. What the camera does not see it cannot deny.
func (m *Machine) besideFire(best utterance.Meaning) bool {
	q := m.j.q
	switch {
	case best.Kind != utterance.Choice || !slices.Contains(q.opts, best.ID):
		return false
	case slices.Contains(m.fits(q, q.sight.Text), best.ID):
		m.agreed(best)
		return true
	case q.sight.Text == appliance.SeenDark:
		return false
	}
	m.differs(best)
	return true
}

// settled is a said reading with its unit, when that is known and one of those asked for.
func (m *Machine) settled(x utterance.Meaning) (*measure.Reading, bool) {
	q := m.j.q
	r := *x.Reading
	switch {
	case r.State == measure.Over || r.State == measure.Blank:
		return &r, true
	case r.State != measure.Number:
		return nil, false
	case r.Value.Unit != "":
		return &r, slices.Contains(q.units, r.Value.Unit)
	}
	fit := q.units
	if x.Units != nil {
		fit = nil
		for _, u := range x.Units {
			if slices.Contains(q.units, u) {
				fit = append(fit, u)
			}
		}
	}
	if s := q.sight.Reading; len(fit) > 1 && s != nil && slices.Contains(fit, s.Value.Unit) {
		fit = []string{s.Value.Unit}
	}
	if len(fit) != 1 {
		return nil, false
	}
	r.Value.Unit = fit[0]
	return &r, true
}

// together tells whether a said reading is what the camera sees: the same state, or numbers that a person may call alike
// and that lead to the same. strict takes no other unit than the one said.
func (m *Machine) together(r *measure.Reading, strict bool) (*measure.Reading, bool) {
	q := m.j.q
	s := q.sight.Reading
	if r == nil || r.State != s.State {
		return nil, false
	}
	if r.State != measure.Number {
		return r, true
	}
	units := q.units
	if strict {
		units = []string{r.Value.Unit}
	}
	if s.Value.Unit != "" {
		units = []string{s.Value.Unit}
	}
	a := r.Value.Base()
	u, _ := unit.Lookup(r.Value.Unit)
	step := r.Value.Dec.Step() * u.Scale // the place of the last digit said, in base units
	for _, id := range units {
		t := *s
		t.Value.Unit = id
		if t.Value.Dim() != r.Value.Dim() {
			continue
		}
		b := t.Value.Base()
		if math.Abs(a-b) > math.Max(0.01*math.Max(math.Abs(a), math.Abs(b)), 0.5*step) || (a < 0) != (b < 0) && a != 0 && b != 0 {
			continue
		}
		if isZero(r) != isZero(&t) || q.check >= 0 && m.consequence(q.check, r) != m.consequence(q.check, &t) {
			continue
		}
		return r, true
	}
	return nil, false
}

// agreed takes an answer that the person and the camera give alike.
func (m *Machine) agreed(x utterance.Meaning) {
	j, q := m.j, m.j.q
	if x.Reading != nil {
		if why := m.impossible(x.Reading); why != "" {
			m.odd(why)
			return
		}
	}
	q.settle()
	q.ready, q.typed, j.state = false, true, "ask"
	if j.heardView == nil {
		j.heardView = &protocol.HeardView{Text: q.sight.Text}
	}
	m.say("info", m.line("eye.agrees"))
	m.accept(x)
}

// differs asks which of the two it is, said or seen; from here only the person decides.
func (m *Machine) differs(said utterance.Meaning) {
	j, q := m.j, m.j.q
	seen := q.sight.meaning()
	if q.sight.Kind == protocol.EyeFire {
		seen = choiceOf(m.fits(q, q.sight.Text)[0])
	}
	if said.Reading != nil {
		r := *q.sight.Reading
		if r.State == measure.Number && r.Value.Unit == "" {
			r.Value.Unit = said.Reading.Value.Unit
		}
		seen = utterance.Meaning{Kind: utterance.Reading, Reading: &r}
	}
	q.settle()
	q.blind, q.ready, q.choices = true, false, []utterance.Meaning{said, seen}
	j.state = "confirm"
	m.pendingView(said)
	m.cue("ask")
	that := m.inWords(seen)
	if q.sight.Kind == protocol.EyeFire {
		that = m.line("fire." + q.sight.Text)
	}
	m.say("info", m.line("eye.differs", "this", m.inWords(said), "that", that))
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: "number"})
}

func (m *Machine) inWords(x utterance.Meaning) string {
	switch {
	case x.Reading != nil && x.Reading.State == measure.Number && x.Reading.Value.Unit == "":
		return m.words.Decimal(x.Reading.Value.Dec)
	case x.Reading != nil:
		return m.reading(x.Reading)
	case x.Kind == utterance.Text:
		return x.Text
	case x.Kind == utterance.Command:
		return m.sayable(x.ID)
	}
	return m.option(firstOf(x.ID, x.Text))
}

// Watch is a step that the camera could answer.
type Watch struct {
	Eye    string  // what can be seen, one of the Eye constants
	Hands  int     // hands that hold a lead
	Voice  bool    // the guide listens
	Noise  float64 // dB of speech over noise, 0 when not known
	Misses int     // sayings not understood in this step
}

// watcher is an adviser that knows when the camera is the better way to answer.
type watcher interface{ Watch(Watch) bool }

// seeWires takes what was found at the marked terminals. What was answered before and is found again is not asked again.
func (m *Machine) seeWires(s *protocol.Seen) {
	j := m.j
	old := j.wires
	j.wires = nil
	n := 0
	for _, f := range s.Wires {
		w := wire{SeenWire: f}
		for i := range old {
			if o := &old[i]; o.Name == w.Name && o.Change == w.Change && o.answer != "put-back" {
				w.answer = o.answer
			}
		}
		if w.open() {
			n++
		}
		j.wires = append(j.wires, w)
	}
	j.site.Unlike = n > 0
	if j.q == nil || j.q.step.ID != s.Step || j.alarm != "" || j.doubtAsk {
		return
	}
	if n == 0 {
		m.say("info", m.line("eye.wires.same"))
		m.request()
		return
	}
	m.say("warning", m.signal("caution")+m.line("eye.wires.differ", "count", m.words.Whole(int64(n))))
	j.task, j.q = nil, nil
	m.advance()
}

// wireNames are the names of the terminals that the repair under way moves, for marking them in a picture.
func (m *Machine) wireNames() []string {
	var out []string
	for _, s := range m.model.Repairs[m.j.repair].Steps {
		if s.Wire < 0 {
			continue
		}
		if name := m.model.Points[s.Wire].Name; !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}
