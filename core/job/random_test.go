package job_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"readback/core/job"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// whim answers as nobody should: anything at any time.
func whim(r *rand.Rand, v *protocol.View, helpfulness float64) protocol.Event {
	said := func(u *utterance.Utterance) protocol.Event { return protocol.Event{Type: protocol.EvSaid, Said: u} }
	if r.Float64() < helpfulness {
		u := helpful(v, r.IntN(3) > 0 && v.StageNo >= 14)
		if r.IntN(4) == 0 {
			u.Source = "touch"
		}
		return said(u)
	}
	switch r.IntN(18) {
	case 16, 17:
		return anySeen(r, v)
	case 0, 1:
		if n := len(v.Step.Answers); n > 0 {
			a := v.Step.Answers[r.IntN(n)]
			return said(&utterance.Utterance{Text: a.ID, Source: "touch", Meanings: []utterance.Meaning{{Kind: a.Kind, ID: a.ID}}})
		}
		return said(command("done"))
	case 2, 3, 4, 5:
		all := vocab.CommandIDs()
		return said(command(all[r.IntN(len(all))]))
	case 6:
		return said(reading([]string{"0.0", "0", "119", "24.3", "3.1", "999"}[r.IntN(6)], []string{"V", "mV", "ohm", "Mohm", "uA"}[r.IntN(5)]))
	case 7:
		u := reading("15", "V")
		u.Meanings = append(u.Meanings, reading("50", "V").Meanings...)
		u.Meanings[1].Cost = 1
		return said(u)
	case 8:
		u := reading("24", "V")
		u.Meanings[0].Repair = true
		return said(u)
	case 9:
		return said(choice([]string{"no", "different", "right-value", "none", "on", "off", "safe-outside", "okay-now", "leave-now", "yes"}[r.IntN(10)]))
	case 10:
		return said(&utterance.Utterance{Text: "mumble", Source: "voice", Fault: "unknown"})
	case 11:
		return protocol.Event{Type: protocol.EvTick}
	case 12:
		return protocol.Event{Type: protocol.EvUndo}
	case 13:
		return protocol.Event{Type: protocol.EvResume}
	case 14:
		return protocol.Event{Type: protocol.EvDevice, Device: &protocol.Device{Kind: []string{"battery", "noise", "call", "back", "speech-off"}[r.IntN(5)], Level: float64(r.IntN(40))}}
	}
	if r.IntN(3) == 0 {
		return said(emergency([]string{"gas", "co", "fire", "shock", "spark", "water", "injury", "child", "ask"}[r.IntN(9)]))
	}
	return said(&utterance.Utterance{Text: "a", Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Count, Text: "3"}}})
}

var smallRules = sync.OnceValues(func() (*worksite.Rules, error) { return worksite.New(smallModel) })

// lawful checks what must hold after every event.
func lawful(t *testing.T, m *job.Machine, out []protocol.Effect) {
	t.Helper()
	v := m.View()
	s := m.Site()
	if s.Unlike && v.Step.ID == "act.power-on" {
		t.Fatalf("power on over a wire that may be in the wrong place")
	}
	if v.State != "ended" && v.Step.Act == "" && v.Step.Caution == "" && v.Step.Say == "" {
		t.Fatalf("nothing is asked: %+v", v.Step)
	}
	if v.State == "emergency" || v.Step.ID == "right-now" || v.State == "ended" {
		return
	}
	for i, c := range smallModel.Checks {
		if c.ID != v.Step.ID || c.Stage == "safety" {
			continue
		}
		rules, err := smallRules()
		if err != nil {
			t.Fatal(err)
		}
		if ok, why := rules.Allowed(s, i); !ok {
			t.Fatalf("%s is asked though %s: %+v", c.ID, why, s)
		}
		if (c.Function == measure.Ohms) && s.Power != worksite.Proved {
			t.Fatalf("%s with power %s", c.ID, s.Power)
		}
	}
	for _, k := range []worksite.Kind{worksite.LiftWire, worksite.RefitWire, worksite.JumperIn, worksite.MeterIn} {
		if strings.HasPrefix(v.Step.ID, "act."+k.String()) && s.Power != worksite.Proved {
			t.Fatalf("%s with power %s", v.Step.ID, s.Power)
		}
	}
	for _, k := range []worksite.Kind{worksite.JumperOut, worksite.MeterOut, worksite.HoldDoor, worksite.FreeDoor, worksite.OpenCover} {
		if strings.HasPrefix(v.Step.ID, "act."+k.String()+".") && strings.Contains(v.Step.ID, "lower") && s.Power != worksite.Proved && s.Power != worksite.Off {
			t.Fatalf("%s with power %s", v.Step.ID, s.Power)
		}
	}
	if v.Heard != nil && v.Heard.Pending && v.Heard.Limit != "" {
		t.Fatalf("the limit shows before the reading is accepted: %+v", v.Heard)
	}
	for _, e := range out {
		if e.Type == protocol.DoSay && (strings.ContainsAny(e.Text, "{}<>%µΩ°") || e.Text == "") {
			t.Fatalf("said %q", e.Text)
		}
	}
}

// remembered holds that nothing which hands put in place is forgotten: it goes only with the act that takes it away.
func remembered(t *testing.T, was, now worksite.State, at string) {
	t.Helper()
	for _, x := range []struct {
		gone bool
		act  worksite.Kind
	}{
		{!was.Wires.Minus(now.Wires).Empty(), worksite.RefitWire},
		{!was.Covers.Minus(now.Covers).Empty(), worksite.CloseCover},
		{was.Jumper != 0 && now.Jumper != was.Jumper, worksite.JumperOut},
		{was.Series != 0 && now.Series != was.Series, worksite.MeterOut},
		{was.Held && !now.Held, worksite.FreeDoor},
		{was.Jack && !now.Jack, worksite.JackOut},
	} {
		if x.gone && !strings.HasPrefix(at, "act."+x.act.String()) {
			t.Fatalf("at %s something in place is forgotten: %+v, then %+v", at, was, now)
		}
	}
}

// live tells whether a step is a check that needs consent.
func live(id string) bool {
	rules, err := smallRules()
	if err != nil {
		return false
	}
	for i := range smallModel.Checks {
		if smallModel.Checks[i].ID == id {
			return rules.Consent(i)
		}
	}
	return false
}

func TestRandomWalks(t *testing.T) {
	walks, steps := 120, 150
	if testing.Short() {
		walks = 20
	}
	ends := map[string]int{}
	for seed := range walks {
		r := rand.New(rand.NewPCG(uint64(seed), 7))
		d := drive(t, newMachine(t))
		helpfulness := []float64{0.95, 0.8, 0.5}[seed%3]
		step, agreed := "", int64(0)
		for i := 0; i < steps && !d.m.Ended(); i++ {
			if r.IntN(10) == 0 {
				d.now += int64(r.IntN(400_000))
			}
			ev := whim(r, d.m.View(), helpfulness)
			if ev.Said != nil && d.m.View().Step.ID == "consent" && ev.Said.Best() != nil && ev.Said.Best().ID == "go-live" {
				agreed = d.now + 2_000
			}
			was, at := d.m.Site(), d.m.View().Step.ID
			out := d.step(ev)
			lawful(t, d.m, out)
			remembered(t, was, d.m.Site(), at)
			// Live work begins within two minutes of consent to it.
			if now := d.m.View().Step.ID; now != step {
				if step = now; live(now) && d.m.View().State == "ask" && d.now-agreed > 120_000 {
					t.Fatalf("seed %d: %s is asked %d s after consent", seed, now, (d.now-agreed)/1000)
				}
			}
		}
		// Whatever happened: somebody who now helps gets to an end that leaves the place in order.
		for i := 0; !d.m.Ended(); i++ {
			if i > 120 {
				t.Fatalf("seed %d: no end; at %q of %+v", seed, d.m.View().Step.ID, d.m.Site())
			}
			v := d.m.View()
			u := helpful(v, false)
			if i == 0 && v.State != "emergency" {
				u = command("finish")
			}
			lawful(t, d.m, d.say(u))
		}
		v := d.m.View()
		ends[v.Ended]++
		if !vocab.MayStayOpen(v.Ended) && !d.m.Site().Left() {
			t.Fatalf("seed %d: ended %q with %v, %+v", seed, v.Ended, v.Open, d.m.Site())
		}
		if !slices.Contains(vocab.OutcomeIDs(), v.Ended) {
			t.Fatalf("outcome %q", v.Ended)
		}
		again(t, d)
	}
	t.Log(ends)
	if len(ends) < 3 {
		t.Errorf("walks end in few ways: %v", ends)
	}
}

// again replays the events of a drive and wants the same bytes.
func again(t *testing.T, d *driver) {
	t.Helper()
	m := newMachine(t)
	for _, ev := range d.events {
		if _, err := m.Step(ev); err != nil {
			t.Fatal(err)
		}
	}
	if m.Digest() != d.m.Digest() {
		t.Fatalf("the replay differs")
	}
}
