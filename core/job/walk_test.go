package job_test

import (
	"strings"
	"testing"

	"readback/core/job"
	"readback/core/protocol"
	"readback/core/utterance"
)

// step sends an event two seconds after the last.
type driver struct {
	t      testing.TB
	m      *job.Machine
	now    int64
	events []protocol.Event
	said   []string
	log    bool
}

func drive(t testing.TB, m *job.Machine) *driver {
	d := &driver{t: t, m: m, now: 1_000_000}
	d.step(protocol.Event{Type: protocol.EvBegin, Begin: &protocol.Begin{Job: "j", Appliance: "small", Lang: "en", Voice: true}})
	return d
}

func (d *driver) step(ev protocol.Event) []protocol.Effect {
	d.t.Helper()
	d.now += 2_000
	ev.At = d.now
	out, err := d.m.Step(ev)
	if err != nil {
		d.t.Fatal(err)
	}
	ev.Seq = d.m.Seq()
	d.events = append(d.events, ev)
	d.said = nil
	for _, e := range out {
		if e.Type == protocol.DoSay {
			d.said = append(d.said, e.Text)
			if d.log {
				d.t.Logf("R [%s] %s", e.Level, e.Text)
			}
		}
	}
	return out
}

func (d *driver) say(u *utterance.Utterance) []protocol.Effect {
	d.t.Helper()
	if d.log {
		d.t.Logf("U %s", u.Text)
	}
	return d.step(protocol.Event{Type: protocol.EvSaid, Said: u})
}

// helpful answers every step as somebody would at a furnace with a broken igniter.
func helpful(v *protocol.View, fixed bool) *utterance.Utterance {
	id := v.Step.ID
	switch {
	case strings.HasPrefix(id, "act.prove-live"), strings.HasPrefix(id, "act.prove-again"):
		return reading("119", "V")
	case strings.HasPrefix(id, "act.prove-"):
		return reading("0.0", "V")
	case v.Step.Part == "A":
		return command("ready")
	}
	switch id {
	case "story":
		return words2("fan hums then nothing since monday")
	case "plate.input", "plate.model":
		return command("dont-know")
	case "meter.short":
		return reading("0.3", "ohm")
	case "callout":
		return reading("120", "money")
	case "age":
		return reading("8", "x")
	case "glow":
		return choice("no-glow")
	case "ign-volts":
		return reading("119", "V")
	case "call-volts":
		return reading("25.1", "V")
	case "ign-ohms":
		if fixed {
			return reading("62", "ohm")
		}
		return reading("47", "Mohm")
	case "flame":
		return reading("3.2", "uA")
	}
	if len(v.Step.Answers) == 0 {
		return command("done")
	}
	a := v.Step.Answers[0]
	return &utterance.Utterance{Text: a.ID, Source: "voice", Meanings: []utterance.Meaning{{Kind: a.Kind, ID: a.ID}}}
}

func TestWholeJob(t *testing.T) {
	d := drive(t, newMachine(t))
	d.log = testing.Verbose()
	n := 0
	for ; !d.m.Ended() && n < 300; n++ {
		v := d.m.View()
		d.say(helpful(v, v.StageNo >= 14))
	}
	v := d.m.View()
	if v.Ended != "fixed" {
		t.Errorf("ended %q after %d answers, open %v", v.Ended, n, v.Open)
	}
	if !d.m.Site().Left() {
		t.Errorf("left as %+v", d.m.Site())
	}
	t.Logf("%d answers", n)
}
