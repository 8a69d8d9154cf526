package job

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/words"
	"readback/core/worksite"
)

// Options of a machine. The zero value is usable.
type Options struct {
	Meter *measure.Meter // what the person measures with; nil: a modest one
}

// Machine leads one job. It is not safe for concurrent use.
type Machine struct {
	model     *appliance.Model
	rules     *worksite.Rules
	adv       Adviser
	words     *Words
	meter     *measure.Meter
	back      map[string]string // option id → how it is said back
	sayings   map[string]string // option or command id → its plainest saying
	exact     map[string]bool   // every saying of a command
	labels    map[string]string // the words of the question that is being answered
	eyes      *Writer           // what is spoken, as it is read
	calls     []bool            // by check: it shows whether the call for heat arrives
	settings  []int             // checks that ask how the thermostat is set
	events    []int             // checks that are watched at one start, in the order of the sequence
	comes     map[int]float64   // and the seconds after its beginning at which each usually comes
	memo      map[string]Advice
	taken     int64 // events taken
	j         *job
	out       []protocol.Effect
	forbidden string // what an interlock forbade although it was next: never in a file that was proved
	mute      bool   // effects are not wanted: answers that stand are taken once more
	digest    [32]byte
}

// New makes a machine for one appliance. It fails when the equipment file cannot be worked safely, or a line is missing.
func New(model *appliance.Model, adv Adviser, lex utterance.Lexicon, words *Words, opt Options) (*Machine, error) {
	rules, err := worksite.New(model)
	if err != nil {
		return nil, err
	}
	if err := CheckWords(words); err != nil {
		return nil, err
	}
	if err := gasIsAsked(model); err != nil {
		return nil, err
	}
	m := &Machine{model: model, rules: rules, adv: adv, words: words, meter: opt.Meter, back: map[string]string{}, sayings: map[string]string{},
		memo: map[string]Advice{}, exact: map[string]bool{}}
	if m.meter == nil {
		m.meter = measure.Modest()
	}
	for _, p := range lex.Commands {
		for _, say := range p.Say {
			m.exact[say] = true
		}
	}
	for _, list := range [][]utterance.Phrase{lex.Commands, lex.Options} {
		for _, p := range list {
			if len(p.Say) > 0 {
				m.sayings[p.ID] = p.Say[0]
			}
		}
	}
	for _, p := range lex.Options {
		m.back[p.ID] = strings.TrimRight(p.Back, ".")
	}
	m.calls, m.settings, m.eyes = callChecks(model), settings(model), writer(words)
	m.events, m.comes = eventsOf(model, rules)
	m.j = m.newJob()
	return m, nil
}

// gasIsAsked holds that a job with fuel gas begins with the question whose answer can send everybody out.
func gasIsAsked(model *appliance.Model) error {
	if model.Fuel != "gas" {
		return nil
	}
	for i := range model.Checks {
		for _, o := range model.Checks[i].Options {
			if model.Checks[i].Stage == "safety" && o.Emergency == "gas" {
				return nil
			}
		}
	}
	return fmt.Errorf("session: %s: no safety question has an answer that is the gas emergency", model.ID)
}

var (
	// errOrder is wrapped when an event does not follow the last one.
	errOrder = errors.New("session: event out of order")
	// errEvent is wrapped when an event does not carry what its type needs.
	errEvent = errors.New("session: incomplete event")
)

// Step takes one event and returns what the host must do, in order. The host has written the event to its journal
// before it acts on them. An event with Seq 0 gets the next number. An error means that the event was not taken and
// nothing has changed.
func (m *Machine) Step(ev protocol.Event) ([]protocol.Effect, error) {
	next := m.taken + 1
	if ev.Seq == 0 {
		ev.Seq = next
	}
	if ev.Seq != next {
		return nil, fmt.Errorf("%w: got %d, expected %d", errOrder, ev.Seq, next)
	}
	if err := complete(&ev, m.j.began); err != nil {
		return nil, fmt.Errorf("%w: event %d: %w", errEvent, ev.Seq, err)
	}
	m.out = nil
	m.taken = next
	m.take(ev)
	m.emit(protocol.Effect{Type: protocol.DoShow, View: m.View()})
	if m.j.wake > 0 {
		m.emit(protocol.Effect{Type: protocol.DoWake, At: m.j.wake})
	}
	out := m.out
	m.out = nil
	m.stir(out)
	return out, nil
}

// complete checks that an event carries what its type needs.
func complete(ev *protocol.Event, began bool) error {
	switch ev.Type {
	case protocol.EvBegin:
		if ev.Begin == nil {
			return errors.New("begin is missing")
		}
		if began {
			return errors.New("the job has begun already")
		}
		return nil
	case protocol.EvSaid:
		if ev.Said == nil {
			return errors.New("said is missing")
		}
		if ev.Said.Source == "camera" {
			return errors.New("what a camera sees is no saying")
		}
	case protocol.EvSeen:
		if ev.Seen == nil {
			return errors.New("seen is missing")
		}
	case protocol.EvPhoto:
		if ev.Photo == nil {
			return errors.New("photo is missing")
		}
	case protocol.EvDevice:
		if ev.Device == nil {
			return errors.New("device is missing")
		}
	case protocol.EvResume, protocol.EvSpoke, protocol.EvTick, protocol.EvUndo:
	default:
		return fmt.Errorf("no such type %q", ev.Type)
	}
	if !began {
		return errors.New("the job has not begun")
	}
	return nil
}

// take works one event.
func (m *Machine) take(ev protocol.Event) {
	j := m.j
	gap := ev.At - j.lastEvent
	if j.lastEvent == 0 {
		gap = 0
	}
	j.seq, j.now = ev.Seq, max(ev.At, j.now) // a clock set back does not turn time
	j.lastEvent = j.now
	if gap > longBreak {
		j.patterns = map[string]int{} // everything is said in full again
	}
	switch ev.Type {
	case protocol.EvBegin:
		j.begin, j.began = *ev.Begin, true
		if ev.Begin.Meter != nil && ev.Begin.Meter.None {
			j.noMeter, j.noProof, j.done.meter[0] = true, true, true
			m.fact(m.option(oNoMeter))
		} else if ev.Begin.Meter != nil {
			j.meter, j.done.meter[0] = measure.Describe(*ev.Begin.Meter), true
			if c := ev.Begin.Meter.Category; c != "" && !rated(c) {
				m.notRated()
				j.done.meter[1] = true
			}
		}
		m.say("info", m.line("hello"))
		m.advance()
	case protocol.EvResume:
		m.resume(gap)
	case protocol.EvSaid:
		m.hear(ev)
	case protocol.EvSpoke:
		m.cutOff(ev)
	case protocol.EvTick:
		m.tick()
	case protocol.EvUndo:
		m.undo(ev)
	case protocol.EvSeen:
		m.see(ev.Seen)
	case protocol.EvPhoto:
		m.photo(*ev.Photo)
	case protocol.EvDevice:
		m.device(*ev.Device)
	}
	m.timer()
}

// emit adds an effect.
func (m *Machine) emit(e protocol.Effect) {
	if !m.mute {
		m.out = append(m.out, e)
	}
}

// say speaks a sentence of the given level and keeps it for "repeat".
func (m *Machine) say(level, text string) {
	if text == "" {
		return
	}
	j := m.j
	text = words.Capital(text)
	if j.saidN != j.seq {
		j.saidN, j.lastSaid = j.seq, nil
		j.said = ""
	}
	if n := len(j.lastSaid); n > 0 && j.lastSaid[n-1].Text == text && level != "emergency" {
		return // just said
	}
	e := protocol.Effect{Type: protocol.DoSay, ID: fmt.Sprintf("s%d-%d", j.seq, len(j.lastSaid)+1), Text: text, Level: level, Slow: j.rate}
	j.lastSaid = append(j.lastSaid, e)
	if j.said != "" {
		j.said += " "
	}
	eye := m.eyes.Write(text)
	j.said += eye
	if level == "danger" {
		m.emit(protocol.Effect{Type: protocol.DoCue, ID: "danger"})
	}
	m.emit(e)
	m.note("guide", eye)
}

func (m *Machine) cue(id string) { m.emit(protocol.Effect{Type: protocol.DoCue, ID: id}) }

// note adds a line to the journal in words. The view shows the last ones.
func (m *Machine) note(who, text string) {
	m.j.log = append(m.j.log, protocol.LogLine{Seq: m.j.seq, At: m.j.now, Who: who, Text: text})
}

// fact adds to what is established.
func (m *Machine) fact(text string) { m.j.facts = append(m.j.facts, text) }

// stir mixes the effects of an event into the digest that a replay must reach again.
func (m *Machine) stir(effects []protocol.Effect) {
	b, err := json.Marshal(effects)
	if err != nil {
		panic("session: effects cannot be written as JSON")
	}
	h := sha256.New()
	h.Write(m.digest[:])
	h.Write(b)
	h.Sum(m.digest[:0])
}

// Digest is a hash over every effect so far, the views among them. A replay of the same events reaches the same one.
func (m *Machine) Digest() string { return hex.EncodeToString(m.digest[:]) }

// Seq is the number of the last event taken.
func (m *Machine) Seq() int64 { return m.taken }

// Site is the state of the work place.
func (m *Machine) Site() worksite.State { return m.j.site }

// Ended tells whether the job is over.
func (m *Machine) Ended() bool { return m.j.state == "ended" }

// Findings are the answers established so far.
func (m *Machine) Findings() []Finding { return append([]Finding(nil), m.j.findings...) }
