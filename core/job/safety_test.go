package job_test

import (
	"strings"
	"testing"

	"readback/core/protocol"
	"readback/core/vocab"
	"readback/core/worksite"
)

// toStep answers helpfully until a step whose id begins so is open.
func (d *driver) toStep(prefix string) {
	d.t.Helper()
	for i := 0; !strings.HasPrefix(d.m.View().Step.ID, prefix); i++ {
		if i > 200 || d.m.Ended() {
			d.t.Fatalf("never at %s; at %s", prefix, d.m.View().Step.ID)
		}
		v := d.m.View()
		d.say(helpful(v, v.StageNo >= 14))
	}
}

// finishes answers helpfully to the end and tells whether the supply was switched on on the way.
func (d *driver) finishes() (energised bool) {
	d.t.Helper()
	for i := 0; !d.m.Ended(); i++ {
		if i > 200 {
			d.t.Fatalf("no end; at %s", d.m.View().Step.ID)
		}
		v := d.m.View()
		energised = energised || v.Step.ID == "act.power-on"
		d.say(helpful(v, true))
	}
	return energised
}

// A proof of dead is one unbroken run: a pause, an absence or a long silence in it starts it over.
func TestProofIsOneRun(t *testing.T) {
	for name, breaks := range map[string]func(d *driver){
		"pause": func(d *driver) {
			d.say(command("hold-on"))
			d.now += 60_000
			d.say(command("ready"))
		},
		"silence": func(d *driver) {
			d.now += 200_000
			d.step(protocol.Event{Type: protocol.EvTick})
		},
		"absence": func(d *driver) {
			d.step(protocol.Event{Type: protocol.EvDevice, Device: &protocol.Device{Kind: "call"}})
			d.now += 30_000
			d.step(protocol.Event{Type: protocol.EvDevice, Device: &protocol.Device{Kind: "back"}})
		},
	} {
		t.Run(name, func(t *testing.T) {
			d := drive(t, newMachine(t))
			d.toStep("act.prove-line-ground")
			breaks(d)
			if s := d.m.Site(); s.Proof != 0 || s.Power == worksite.Proved {
				t.Errorf("%d readings of the proof stand, power %s, at %s", s.Proof, s.Power, d.m.View().Step.ID)
			}
		})
	}
}

// Dead that was proved long ago is proved again before hands go in.
func TestProofAges(t *testing.T) {
	d := drive(t, newMachine(t))
	d.toStep("ign-ohms")
	d.now += 16 * 60_000
	d.step(protocol.Event{Type: protocol.EvTick})
	if id := d.m.View().Step.ID; d.m.Site().Power == worksite.Proved || id == "ign-ohms" {
		t.Errorf("after a quarter of an hour at %s with power %s", id, d.m.Site().Power)
	}
}

// Voltage after switching off, twice, is a stop line: nobody measures on, and the record says where.
func TestStillLiveStops(t *testing.T) {
	d := drive(t, newMachine(t))
	for range 2 {
		d.toStep("act.prove-line-neutral")
		d.say(reading("118", "V"))
		if d.m.View().State == "confirm" {
			d.say(reading("118", "V"))
		}
	}
	v := d.m.View()
	if v.Ended != "still-live" {
		t.Fatalf("ended %q, at %s", v.Ended, v.Step.ID)
	}
	if all := strings.Join(v.Facts, " "); !strings.Contains(all, "line screw") || !strings.Contains(v.Handover, "electrician") {
		t.Errorf("facts %q, hand-over %q", all, v.Handover)
	}
}

// After a shock nothing is measured and nothing put back.
func TestShockEndsTheWork(t *testing.T) {
	d := drive(t, newMachine(t))
	d.toStep("ign-ohms")
	d.say(emergency("shock"))
	d.say(choice("okay-now"))
	if v := d.m.View(); v.Ended != "stopped-after-emergency" || len(v.Open) == 0 || !strings.Contains(v.Handover, "electrician") {
		t.Errorf("ended %q, open %v, hand-over %q, at %s", v.Ended, v.Open, v.Handover, v.Step.ID)
	}
}

// The screen of every emergency says the command first, in at most six words, and has the number to call in digits.
func TestEmergencyScreen(t *testing.T) {
	for _, a := range vocab.Alarms {
		if a.Quiet {
			continue
		}
		d := drive(t, newMachine(t))
		d.say(emergency(a.ID))
		v := d.m.View()
		if n := len(strings.Fields(v.Step.Act)); n == 0 || n > 6 {
			t.Errorf("%s: %q has %d words", a.ID, v.Step.Act, n)
		}
		if v.Call != "911" || strings.Contains(v.Step.Say, "nine one one") {
			t.Errorf("%s: call %q, %q", a.ID, v.Call, v.Step.Say)
		}
	}
}

// Consent ends with the check that it was given for.
func TestConsentIsForOneCheck(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("call-volts")
	d.say(command("ready"))
	d.say(reading("25.1", "V"))
	d.step(protocol.Event{Type: protocol.EvUndo})
	if id := d.m.View().Step.ID; id != "consent" {
		t.Errorf("a live check is asked again without consent: at %s", id)
	}
}

// A meter that is not rated, or not known to be, stays off house voltage, and hands stay out.
func TestNotRated(t *testing.T) {
	for _, say := range []string{"not-rated", "dont-know"} {
		d := drive(t, newMachine(t))
		d.toStep("meter.category")
		if say == "dont-know" {
			d.say(command(say))
		} else {
			d.say(choice(say))
		}
		for i := 0; !d.m.Ended() && i < 200; i++ {
			v := d.m.View()
			if v.Step.ID == "ign-volts" || v.Step.ID == "ign-ohms" || strings.HasPrefix(v.Step.ID, "act.prove-") || strings.HasPrefix(v.Step.ID, "act.lift-wire") {
				t.Fatalf("%s: %s is asked", say, v.Step.ID)
			}
			d.say(helpful(v, false))
		}
	}
}

// A restart check that fails ends as not fixed, and the supply stays off.
func TestRestartIsAGate(t *testing.T) {
	d := drive(t, newMachine(t))
	d.toStep("flame-look")
	d.say(choice("yellow-flame"))
	if energised := d.finishes(); d.m.View().Ended == "fixed" || energised {
		t.Errorf("ended %q, energised %v", d.m.View().Ended, energised)
	}
}
