package scenario

import (
	"fmt"

	"readback/core/job"
	"readback/core/protocol"
	"readback/core/utterance"
)

// Exchange is one answer of the person and what the guide did about it.
type Exchange struct {
	Step    string // id of the step that was answered; empty for the beginning
	Event   protocol.Event
	Effects []protocol.Effect
	View    protocol.View
}

// Run is a job that was led.
type Run struct {
	Exchanges []Exchange
	Result    protocol.Result
	Ended     bool
	Checks    int // checks and looks until the case was closed: light, free causes, watched start, meter, planned
}

// Clock steps: what an answer takes, ms. Only the order matters to the machine; the size keeps consents from going stale.
const answerTakes = 6000

// MaxAnswers bounds a run. The longest sensible job of the furnace file is about half of it.
const MaxAnswers = 600

// Lead plays a job from its beginning to its end, or until MaxAnswers. between, when not nil, is called before each reply with
// the number of the answer and may send events of its own (an emergency, a resume) or change the machine.
func Lead(m *job.Machine, p *Person, begin protocol.Begin, between func(n int, v *protocol.View) []protocol.Event) (*Run, error) {
	r := &Run{}
	at := int64(1_800_000_000_000) // any fixed instant
	closed := false
	step := func(id string, ev protocol.Event) error {
		ev.At = at
		effects, err := m.Step(ev)
		if err != nil {
			return err
		}
		v := m.View()
		r.Exchanges = append(r.Exchanges, Exchange{Step: id, Event: ev, Effects: effects, View: *v})
		if !closed {
			r.Checks = counted(p, m.Findings())
			closed = v.StageNo >= causeStage
		}
		return nil
	}
	if err := step("", protocol.Event{Type: protocol.EvBegin, Begin: &begin}); err != nil {
		return r, err
	}
	for n := range MaxAnswers {
		v := m.View()
		if v.State == "ended" {
			r.Ended = true
			break
		}
		if between != nil {
			for _, ev := range between(n, v) {
				if err := step("", ev); err != nil {
					return r, err
				}
			}
			if v = m.View(); v.State == "ended" {
				r.Ended = true
				break
			}
		}
		u, err := p.Reply(v)
		if err != nil {
			return r, err
		}
		at += answerTakes
		id := v.Step.ID
		ev := protocol.Event{Type: protocol.EvSaid, Said: &u}
		if len(u.Meanings) == 0 {
			ev = protocol.Event{Type: protocol.EvTick}
			at += 10 * answerTakes
		}
		if err := step(id, ev); err != nil {
			return r, fmt.Errorf("sim: after %d answers, at %s: %w", n, id, err)
		}
	}
	r.Result = m.Result()
	return r, nil
}

// causeStage is the number of the first stage after a verdict.
const causeStage = 10

// counted is how many findings are checks and looks of the hunt itself.
func counted(p *Person, findings []job.Finding) int {
	n := 0
	for _, f := range findings {
		switch p.Model.Checks[f.Check].Stage {
		case "safety", "story", "plate":
		default:
			n++
		}
	}
	return n
}

// Alarm is an emergency said by the person.
func Alarm(class string) protocol.Event {
	return protocol.Event{Type: protocol.EvSaid, Said: &utterance.Utterance{Source: "voice", Text: class,
		Meanings: []utterance.Meaning{{Kind: utterance.Emergency, ID: class}}}}
}

// Spoken is all that the guide said in a run, in order.
func (r *Run) Spoken() []string {
	var out []string
	for _, x := range r.Exchanges {
		for _, e := range x.Effects {
			if e.Type == protocol.DoSay {
				out = append(out, e.Text)
			}
		}
	}
	return out
}
