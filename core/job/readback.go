package job

import (
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
)

// trusted sources need no read-back to be confirmed: a finger does not mishear.
func trusted(source string) bool { return source == "touch" || source == "key" }

// answer decides what becomes of an answer: taken, asked back, or asked again.
func (m *Machine) answer(u *utterance.Utterance, fits []utterance.Meaning) {
	j, q := m.j, m.j.q
	q.seqs = append(q.seqs, j.seq)
	q.typed = trusted(u.Source)
	fits = m.turn(fits)
	q = j.q
	best := fits[0]
	switch {
	case best.Kind == utterance.Choice && m.retracts(best.ID) && !confirming(q, best.ID):
		if i := slices.IndexFunc(fits, func(x utterance.Meaning) bool { return slices.Contains(q.opts, x.ID) }); i > 0 && u.Source == "voice" {
			m.chosen(u, fits[i:]) // the question asked has an answer that sounds like "no"
			return
		}
		m.retract()
	case best.Repair && best.Kind == utterance.Reading && !q.asking() && !q.recall && m.correctsLast(q):
		m.correct(u)
	case best.Kind == utterance.UnitOnly:
		m.unitTold(u, best.ID)
	case !confirming(q, best.ID) && m.beside(u, fits):
	case confirming(q, best.ID) && !slices.Contains(q.opts, best.ID):
		m.confirmed(best.ID)
	case best.Kind == utterance.Text:
		m.accept(best)
	case best.Kind == utterance.Choice || best.Kind == utterance.Command || best.Kind == utterance.Count && len(q.units) == 0:
		m.chosen(u, fits)
	default:
		m.valued(u, fits)
	}
}

// asking tells whether something was asked back.
func (q *question) asking() bool {
	return q.pending != nil || len(q.choices) > 0 || q.first != nil || q.number != nil
}

// settle forgets what was asked back.
func (q *question) settle() {
	q.pending, q.choices, q.first, q.number, q.sighted = nil, nil, nil, nil, false
}

// maxAsks is how often one question is asked back before the ladder of what was not understood takes over: judgement, no source.
const maxAsks = 3

// askedBack counts a question back. When there were too many the ladder goes on, and it ends.
func (m *Machine) askedBack() bool {
	q := m.j.q
	if q.asks++; q.asks <= maxAsks {
		return false
	}
	q.asks = 0
	q.errs = max(q.errs, 1)
	q.settle()
	m.j.state = "ask"
	m.missed()
	return true
}

// choiceSlot is what is known about the answer in words that is due.
func (m *Machine) choiceSlot(q *question) utterance.ChoiceSlot {
	s := utterance.ChoiceSlot{Named: q.choices, Told: q.told}
	if q.check >= 0 && m.model.Checks[q.check].Stage == "safety" {
		s.Clears = func(x utterance.Meaning) bool { return x.ID == q.good && x.Kind == utterance.Choice }
	}
	return s
}

// chosen works an answer in words.
func (m *Machine) chosen(u *utterance.Utterance, fits []utterance.Meaning) {
	j, q := m.j, m.j.q
	if q.pending != nil && q.pending.ID != "" && q.pending.ID == fits[0].ID { // said once more
		m.accept(fits[0])
		return
	}
	d := utterance.DecideChoice(u, m.inChoice(fits), m.choiceSlot(q))
	if d.Action == utterance.Accept {
		q.settle()
		j.state = "ask"
		if d.Take.Kind == utterance.Command {
			m.command(d.Take.ID, u)
			return
		}
		m.accept(d.Take)
		return
	}
	if m.askedBack() {
		return
	}
	q.settle()
	j.state = "confirm"
	if d.Action == utterance.AskTwo {
		q.choices = []utterance.Meaning{d.Take, d.Rival}
	} else {
		q.pending = &d.Take
	}
	m.pendingView(d.Take)
	m.cue("ask")
	m.request()
}

// inChoice are the meanings that are answers in words. Acts done in other words are one answer.
func (m *Machine) inChoice(fits []utterance.Meaning) []utterance.Meaning {
	q := m.j.q
	out := []utterance.Meaning{fits[0]}
	for _, x := range fits[1:] {
		act := q.kind == "act" && x.Kind == utterance.Choice && fits[0].Kind == utterance.Choice
		if x.Kind == utterance.Choice && !act && !confirming(q, x.ID) && slices.Contains(q.opts, x.ID) || x.Kind == utterance.Command || x.Kind == utterance.Count && len(q.units) == 0 {
			out = append(out, x)
		}
	}
	return out
}

// valued works a number or a state of the display.
func (m *Machine) valued(u *utterance.Utterance, fits []utterance.Meaning) {
	j, q := m.j, m.j.q
	q.ready = false // a value before "ready": the leads were in place
	v := *u
	v.Meanings = nil
	for _, x := range fits {
		if x, ok := asReading(x); ok {
			v.Meanings = append(v.Meanings, x)
		}
	}
	if v.SNR == 0 {
		v.SNR = j.noise
	}
	if len(v.Meanings) > 0 {
		if m.saidAgain(v.Meanings) {
			return
		}
		if q.pending != nil || len(q.choices) > 0 { // a new value corrects what was read back
			q.fixes++
			if q.pending != nil && !q.sighted {
				m.reject(q, *q.pending)
				j.prev = q.pending.Reading
			}
			q.pending, q.choices = nil, nil
		}
	}
	slot := m.slot(q)
	q.number, q.sighted = nil, false
	m.decided(&v, utterance.Decide(&v, slot))
}

// saidAgain takes a value that was asked back and is now said once more: two sayings agree. When it sounds like both of the two that were
// asked about again, one of them alone is asked about.
func (m *Machine) saidAgain(said []utterance.Meaning) bool {
	q, x := m.j.q, said[0]
	for _, y := range said[1:] {
		if len(q.choices) == 2 && y.Reading != nil && y.Cost-x.Cost < rivalCost && !utterance.Agree(*x.Reading, *y.Reading) &&
			slices.ContainsFunc(q.choices, func(c utterance.Meaning) bool { return c.Reading != nil && utterance.Agree(*c.Reading, *y.Reading) }) {
			if m.askedBack() {
				return true
			}
			q.settle()
			q.pending = &x
			m.pendingView(x)
			m.cue("ask")
			m.request()
			return true
		}
	}
	asked := q.choices
	if q.pending != nil {
		asked = []utterance.Meaning{*q.pending}
	}
	for _, y := range asked {
		if y.Reading != nil && utterance.Agree(*y.Reading, *x.Reading) {
			q.settle()
			if q.hazard && isZero(y.Reading) { // agreeing with a question is one saying
				q.first = &y
				m.j.state = "confirm"
				m.cue("ask")
				m.say("info", m.line("once.more", "value", m.reading(y.Reading)))
				m.emit(protocol.Effect{Type: protocol.DoListen, ID: "number"})
				return true
			}
			m.accept(y)
			return true
		}
	}
	return false
}

// asReading takes a bare whole number for a reading without a unit.
func asReading(x utterance.Meaning) (utterance.Meaning, bool) {
	if x.Kind == utterance.Count {
		d, err := unit.ParseDecimal(x.Text)
		if err != nil {
			return x, false
		}
		x.Kind, x.Reading = utterance.Reading, &measure.Reading{Value: unit.Value{Dec: d}}
	}
	return x, x.Kind == utterance.Reading
}

// slot is what is known about the reading that is due.
func (m *Machine) slot(q *question) utterance.Slot {
	s := utterance.Slot{
		Units: q.units, Failed: q.errs, Previous: m.j.prev, Asked: q.number != nil && !q.sighted,
		Possible: func(r measure.Reading) bool { return m.impossible(&r) == "" },
		Matters:  func(a, b measure.Reading) bool { return isZero(&a) != isZero(&b) },
	}
	if q.first != nil {
		s.Pending = q.first.Reading
	}
	if q.hazard {
		s.Clears = func(r measure.Reading) bool { return isZero(&r) }
	}
	if q.check >= 0 {
		s.Matters = func(a, b measure.Reading) bool { return m.consequence(q.check, &a) != m.consequence(q.check, &b) }
	}
	return s
}

// decided does what was decided about a reading.
func (m *Machine) decided(u *utterance.Utterance, d utterance.Decision) {
	j, q := m.j, m.j.q
	if d.Take != nil && d.Action != utterance.AskUnit {
		if why := m.impossible(d.Take); why != "" {
			m.odd(why)
			return
		}
	}
	x := utterance.Meaning{Kind: utterance.Reading, Reading: d.Take}
	switch d.Action {
	case utterance.AskTwo, utterance.AskUnit, utterance.Confirm, utterance.Again:
		if d.Take != nil && m.askedBack() {
			return
		}
	}
	ask := func(text, listen string) {
		m.pendingView(x)
		m.cue("ask")
		m.say("info", text)
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: listen})
	}
	switch d.Action {
	case utterance.Accept:
		if q.first != nil {
			m.say("info", m.line("agreed"))
		}
		m.accept(x)
	case utterance.AskTwo:
		q.choices = []utterance.Meaning{x, {Kind: utterance.Reading, Reading: d.Rival}}
		j.state = "confirm"
		ask(m.line("this.or.that", "this", m.reading(d.Take), "that", m.reading(d.Rival)), "number")
	case utterance.AskUnit:
		q.number, q.sighted = d.Take, false
		ask(m.line("which.unit", "number", m.words.Decimal(d.Take.Value.Dec), "units", m.unitWords(d.Units)), "number")
	case utterance.Confirm:
		q.pending = &x
		j.state = "confirm"
		ask(m.line("right.or.different", "value", m.reading(d.Take)), "choice")
	case utterance.Second:
		q.first = &x
		j.state = "confirm"
		ask(m.line("once.more", "value", m.reading(d.Take)), "number")
	case utterance.Again:
		if q.first != nil && d.Take != nil {
			q.first, j.state = nil, "ask"
			m.cue("refused")
			m.say("info", m.line("differs", "value", m.reading(d.Take)))
			m.emit(protocol.Effect{Type: protocol.DoListen, ID: "number"})
			return
		}
		m.missed()
	default: // digits, keypad
		m.missed()
	}
}

func (m *Machine) unitWords(units []string) string {
	var out []string
	for _, id := range units {
		u := m.words.Units[id]
		name := u.Many
		if u.Prefixed != "" {
			name = u.Prefixed
		}
		out = append(out, name)
	}
	if len(out) == 0 {
		return ""
	}
	if len(out) == 1 {
		return out[0]
	}
	last := min(len(out), 3) - 1
	return strings.Join(out[:last], ", ") + " " + m.line("or") + " " + out[last]
}

// impossible tells why a reading cannot be what this place shows, empty when it can.
func (m *Machine) impossible(r *measure.Reading) string {
	q := m.j.q
	switch r.State {
	case measure.Dead:
		return m.line("dead.number")
	case measure.Blank:
		return m.line("blank.why")
	case measure.Number:
		want, _ := unit.Lookup(first(q.units))
		if len(q.units) > 0 && r.Value.Dim() != want.Dim {
			if want.Dim == unit.Money { // it has no word of its own
				return m.line("wrong.money")
			}
			return m.line("wrong.unit", "units", m.unitWords(q.units))
		}
		if b := r.Value.Base(); want.Dim == unit.Voltage && (b > 300 || b < -300) {
			return m.line("too.much", "value", m.words.Spoken(r.Value)) // a branch circuit has at most 240 V
		}
		if p, ok := q.task.(plateTask); ok && !m.onPlate(p, r) {
			return m.line("too.odd.plate", "value", m.words.Spoken(r.Value))
		}
		if q.check >= 0 {
			c := &m.model.Checks[q.check]
			if (c.Function == measure.VoltsAC && r.AC == "dc") || (c.Function == measure.VoltsDC || c.Function == measure.MicroampsDC) && r.AC == "ac" {
				return m.line("wrong.kind")
			}
		}
	case measure.Beep, measure.Silent:
		if q.check >= 0 && m.model.Checks[q.check].Function != measure.Continuity && m.model.Checks[q.check].Function != measure.Ohms {
			return m.line("wrong.unit", "units", m.unitWords(q.units))
		}
	}
	return ""
}

func first(s []string) string {
	if len(s) == 0 {
		return ""
	}
	return s[0]
}

// zeroVolts is the largest reading that counts as dead. Common practice, no source: meters on open leads show some
// tenths of a volt, capacitive ghosts show several volts and are looked into.
const zeroVolts = 1.0

func isZero(r *measure.Reading) bool {
	return r != nil && r.State == measure.Number && r.Value.Dim() == unit.Voltage && r.Value.Base() < zeroVolts && r.Value.Base() > -zeroVolts
}

// outcome is what a reading leads to.
type outcome struct {
	verdict measure.Verdict
	next    int
	closed  bool
	repair  int
}

func (m *Machine) consequence(check int, r *measure.Reading) outcome {
	j := m.j
	var o outcome
	if jd, ok := m.judge(check, *r); ok {
		o.verdict = jd.Verdict
	}
	held := j.findings
	j.findings = append(slices.Clone(held), Finding{Check: check, Option: -1, Reading: r})
	a := m.advise(planStages...)
	j.findings = held
	o.next, o.closed, o.repair = a.Check, a.Verdict, a.Repair
	return o
}

// confirmed works the answer to "right, or different?".
func (m *Machine) confirmed(id string) {
	j, q := m.j, m.j.q
	j.state = "ask"
	if id == oRight && q.pending != nil {
		x := *q.pending
		q.settle()
		if x.Kind == utterance.Command {
			m.command(x.ID, nil)
			return
		}
		m.accept(x)
		return
	}
	if id == oRight && q.number != nil { // right it is, but in what unit?
		m.j.state = "confirm"
		m.say("info", m.line("eye.unit", "number", m.words.Decimal(q.number.Value.Dec), "units", m.unitWords(q.units)))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: "choice"})
		return
	}
	q.blind = q.blind || q.sighted || len(q.choices) > 0 // the camera was wrong here, or is no help
	q.sighted, q.number = false, nil
	if q.pending != nil {
		m.reject(q, *q.pending)
	} else if id == oDifferent || id == oNo {
		for _, x := range q.choices {
			m.reject(q, x)
		}
	}
	q.settle()
	q.fixes++
	m.cue("ask")
	switch {
	case len(q.units) == 0:
		m.say("info", m.line("miss.choice.two", "options", m.optionWords(q)))
	case q.fixes >= 2:
		m.say("info", m.line("miss.number.two"))
	default:
		m.say("info", m.line("what.then"))
	}
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
}

// reject keeps an answer from being offered again for this question.
func (m *Machine) reject(q *question, x utterance.Meaning) {
	switch {
	case x.Reading != nil && !m.rejected(q, x.Reading):
		m.j.wrong = append(m.j.wrong, named{q.id, m.written(x.Reading)})
	case x.Reading == nil && !m.called(q, x):
		m.j.wrong = append(m.j.wrong, named{q.id, "= " + firstOf(x.ID, x.Text)})
	}
}

// correctsLast tells whether "no, twenty-four" speaks of the value before rather than of the open question.
func (m *Machine) correctsLast(q *question) bool {
	recs := m.j.records
	return len(recs) > 0 && recs[len(recs)-1].read != nil && len(q.seqs) <= 1
}

// pendingView shows a value that is not accepted yet.
func (m *Machine) pendingView(x utterance.Meaning) {
	if m.j.heardView == nil {
		return
	}
	taken := m.inWords(x)
	switch {
	case x.Reading != nil:
		taken = m.written(x.Reading)
	case x.Kind == utterance.Command:
		taken = m.option(x.ID)
	}
	m.j.heardView.Taken, m.j.heardView.Pending = taken, true
}

// noisy tells whether it is so loud that every value is confirmed.
func (m *Machine) noisy() bool { return m.j.noise != 0 && m.j.noise < 10 }

// rivalCost is how much dearer than the best a meaning may be and still be minded where it may be an emergency, or the
// answer to one: a factor of about twenty in odds.
const rivalCost = 3.0
