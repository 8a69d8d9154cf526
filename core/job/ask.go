package job

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/words"
)

// fromLine fills a question from a line of the words: what to do, what to say, and the options that answer it.
func (m *Machine) fromLine(q *question, id string, pairs ...string) {
	l, ok := m.words.Lines[id]
	if !ok {
		panic("session: no line " + id)
	}
	q.step.Act, q.step.Say, q.how = words.Fill(l.Full, pairs...), words.Fill(l.Say, pairs...), words.Fill(l.How, pairs...)
	q.short = q.step.Act
	if len(l.Short) > 0 {
		q.short = words.Fill(l.Short[0], pairs...)
	}
	q.opts, q.shown, q.labels = slices.Clone(l.Ask), len(l.Ask), l.Labels
	for _, id := range l.Ask { // in the order of the answers: maps have none
		q.opts = append(q.opts, l.Also[id]...)
	}
	if len(l.Ask) > 0 {
		q.good = l.Ask[0]
	}
}

// alike are the units that the same dial shows, beside the one that is judged in.
var alike = map[string][]string{
	"V": {"mV"}, "mV": {"V"}, "ohm": {"kohm", "Mohm"}, "kohm": {"ohm", "Mohm"}, "Mohm": {"kohm", "ohm"}, "uA": {"mA"},
	"mA": {"uA", "A"}, "A": {"mA"}, "uF": {"nF"}, "nF": {"uF"}, "degF": {"degC"}, "degC": {"degF"}, "dF": {"dC"}, "dC": {"dF"},
	"inH2O": {"Pa"}, "Pa": {"inH2O"},
}

// unitsFor lists the units that may be said where one is judged in, that one first.
func unitsFor(id string) []string { return append([]string{id}, alike[id]...) }

// powerWords says the state of the supply.
func (m *Machine) powerWords() string { return m.line(m.plain("power." + m.j.site.Power.String())) }

// plain is the line to use where there is no supply from the house to switch: the appliance's own control stands for it.
func (m *Machine) plain(id string) string {
	if _, ok := m.words.Lines["plain."+id]; ok && !m.model.Mains {
		return "plain." + id
	}
	return id
}

// setPower notes that the state of the supply was established now.
func (m *Machine) setPower() { m.j.since = m.j.now }

// open puts a question.
func (m *Machine) open(q *question) {
	j := m.j
	j.q, j.state = q, "ask"
	if !q.act.Proof() && !(q.kind == "consent" && q.check == forProof) {
		m.breakProof()
		j.proveAt = 0 // consent was for the proof that is not gone on with
	}
	if q.task != (checkTask{j.consent}) { // and for that check alone
		j.consent = -1
	}
	if q.kind == "consent" {
		j.state = "confirm"
	}
	q.base = j.now
	m.answers(q)
	m.ask(false)
	m.begun(q)
}

// answers lays out the buttons of a question.
func (m *Machine) answers(q *question) {
	q.step.Answers, q.step.Also = nil, nil
	if q.ready {
		q.step.Answers = append(q.step.Answers, protocol.Answer{ID: cReady, Kind: utterance.Command, Text: m.option(cReady)})
	} else {
		for _, o := range q.opts[:q.shown] {
			q.step.Answers = append(q.step.Answers, protocol.Answer{ID: o, Kind: utterance.Choice, Text: m.option(o)})
		}
		q.step.Also = q.opts[q.shown:]
	}
	if m.watches(q) {
		q.step.Answers = append(q.step.Answers, protocol.Answer{ID: cDone, Kind: utterance.Command, Text: m.line("watch.done")})
	}
	for _, c := range []string{cCantReach, cDontKnow} {
		if q.kind == "act" && c == cDontKnow || q.kind == "consent" {
			continue
		}
		q.step.Answers = append(q.step.Answers, protocol.Answer{ID: c, Kind: utterance.Command, Text: m.option(c)})
	}
}

// ask speaks the open question: power, caution, place, meter, act, what to say. full asks for the long form.
func (m *Machine) ask(full bool) {
	j, q := m.j, m.j.q
	if q == nil {
		return
	}
	long := full || q.long || j.brief < 0 || j.brief == 0 && j.patterns[m.pattern(q)] < 2
	if j.brief < 0 {
		j.brief = 0
	}
	if q.kind == "act" || q.kind == "measure" || q.kind == "consent" {
		p := m.vary(m.plain("power."+j.site.Power.String()), b2i(!long))
		m.say("info", p)
	}
	if q.step.Caution != "" {
		m.say(q.step.Level, m.signal(q.step.Level)+q.step.Caution)
		m.countCaution(q)
	}
	switch {
	case q.ready && long:
		m.say("info", sentence(q.step.Where, q.step.Meter, m.line("say.ready")))
	case q.ready:
		q.ready = false
		m.answers(q)
		m.say("info", sentence(q.step.Where, q.step.Meter, q.short))
	case long && q.kind == "measure":
		m.say("info", sentence(q.step.Where, q.step.Meter, q.step.Act, q.step.Say))
	case long:
		m.say("info", sentence(q.step.Act, q.step.Say))
	default:
		m.say("info", q.short)
	}
	q.step.Part = ""
	if q.ready {
		q.step.Part = "A"
	}
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
	m.offerEye(q)
	if _, ok := q.task.(photoTask); ok && q.kind == "ask" && !full {
		m.emit(protocol.Effect{Type: protocol.DoPhoto, ID: strings.TrimPrefix(q.step.ID, "photo.")})
	}
}

// pattern is what makes two steps alike for the person.
func (m *Machine) pattern(q *question) string {
	switch {
	case q.kind == "consent":
		return "consent"
	case q.kind == "act" || q.act.Proof():
		return "act." + q.act.Kind.String() + kindOf(q.task)
	case q.check >= 0:
		return "check." + string(m.model.Checks[q.check].Function)
	}
	return q.id
}

// listen is the end-of-speech class of a question.
func (q *question) listen() string {
	switch {
	case q.ready || q.kind == "act" || q.kind == "consent" || q.pending != nil || q.number != nil:
		return "choice"
	case q.text:
		return "digits"
	case len(q.units) > 0:
		return "number"
	}
	return "choice"
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// lower makes the first letter a small one, for words inside a sentence; a word of capitals, or the guide's "I", stays.
func lower(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if next, _ := utf8.DecodeRuneInString(s[n:]); !unicode.IsLower(next) && next != utf8.RuneError && !(r == 'A' && next == ' ') {
		return s
	}
	return string(unicode.ToLower(r)) + s[n:]
}

// sentence joins parts with single spaces, leaving out empty ones; a part without an end gets a full stop.
func sentence(parts ...string) string {
	var out []string
	for _, p := range parts {
		p = strings.TrimSpace(p)
		if p == "" {
			continue
		}
		if !strings.ContainsAny(p[len(p)-1:], ".?!:") {
			p += "."
		}
		out = append(out, words.Capital(p))
	}
	return strings.Join(out, " ")
}
