package job_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/worksite"
)

func saw(s protocol.Seen) protocol.Event { return protocol.Event{Type: protocol.EvSeen, Seen: &s} }

// shown is a number as it stands on a display; u may be empty.
func shown(digits, u string) *measure.Reading {
	d, err := unit.ParseDecimal(digits)
	if err != nil {
		panic(err)
	}
	return &measure.Reading{Value: unit.Value{Dec: d, Unit: u}}
}

// display is a number on the meter as the camera sees it, without a unit.
func display(digits string) protocol.Event {
	return saw(protocol.Seen{Kind: protocol.EyeMeter, Text: digits, P: 0.999, Frames: 6, Reading: shown(digits, "")})
}

// displayIn is a number on the meter as the camera sees it, with the unit as it once was named.
func displayIn(digits, u string) protocol.Event {
	return saw(protocol.Seen{Kind: protocol.EyeMeter, Text: digits, P: 0.999, Frames: 6, Reading: shown(digits, u)})
}

func over() protocol.Event {
	return saw(protocol.Seen{Kind: protocol.EyeMeter, Text: "0L", P: 0.999, Reading: &measure.Reading{State: measure.Over}})
}

func blinks(id string) protocol.Event {
	return saw(protocol.Seen{Kind: protocol.EyeLamp, ID: id, Text: id, P: 0.99})
}

func burner(seen string) protocol.Event {
	return saw(protocol.Seen{Kind: protocol.EyeFire, Text: seen, P: 0.9, From: 2000, To: 1000})
}

func noSight(kind, why string) protocol.Event {
	return saw(protocol.Seen{Kind: kind, Reason: why})
}

func spoken(u *utterance.Utterance) protocol.Event {
	return protocol.Event{Type: protocol.EvSaid, Said: u}
}

func touched(u *utterance.Utterance) protocol.Event {
	u.Source = "touch"
	return spoken(u)
}

func unitOnly(id string) protocol.Event {
	return spoken(&utterance.Utterance{Text: id, Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.UnitOnly, ID: id}}})
}

func unsure(ev protocol.Event) protocol.Event { ev.Seen.P = 0.6; return ev }

// see sends an event; what is seen belongs to the open step.
func (d *driver) see(ev protocol.Event) {
	d.t.Helper()
	if ev.Seen != nil && ev.Seen.Step == "" {
		s := *ev.Seen
		s.Step = d.m.View().Step.ID
		ev.Seen = &s
	}
	d.step(ev)
}

// Each row: where in the job, what is seen and said, what the guide must say last, and the step it must then be at.
func TestCameraBesideVoice(t *testing.T) {
	const ready = "ready"
	for _, tt := range []struct {
		name   string
		at     string
		events []protocol.Event
		want   string
		then   string // empty: the same step; "on": another one
	}{
		{"voice, then nothing seen", "call-volts", []protocol.Event{spoken(reading("26.1", "V"))}, "Twenty-six point one volts. That is normal.", "on"},
		{"seen, then said", "call-volts", []protocol.Event{spoken(command(ready)), display("26.1"), spoken(reading("26.1", "V"))}, "The camera agrees.", "on"},
		{"seen, then said rounded", "call-volts", []protocol.Event{spoken(command(ready)), display("26.1"), spoken(reading("26", "V"))}, "The camera agrees.", "on"},
		{"seen in a unit unknown", "call-volts", []protocol.Event{spoken(command(ready)), display("26.1")}, "The camera sees twenty-six point one. Which unit is it: volts or MILLI volts?", ""},
		{"seen, unit said", "call-volts", []protocol.Event{spoken(command(ready)), display("26.1"), unitOnly("V")}, "Twenty-six point one volts. That is normal.", "on"},
		{"seen with its unit", "call-volts", []protocol.Event{spoken(command(ready)), displayIn("26.1", "V")}, "The camera sees: twenty-six point one volts. Is that right or wrong?", ""},
		{"seen with its unit, then said", "call-volts", []protocol.Event{spoken(command(ready)), displayIn("26.1", "V"), spoken(reading("26.1", "V"))}, "The camera agrees.", "on"},
		{"another unit is seen than said", "call-volts", []protocol.Event{spoken(command(ready)), displayIn("26.1", "mV"), spoken(reading("26.1", "V"))}, "Which one is right?", ""},
		{"the dial stands wrong", "call-volts", []protocol.Event{spoken(command(ready)), displayIn("26.1", "ohm")}, "The camera sees twenty-six point one ohms. I need volts", ""},
		{"seen, right said instead of the unit", "call-volts", []protocol.Event{spoken(command(ready)), display("26.1"), spoken(choice("right-value"))}, "Which unit", ""},
		{"seen, called different", "call-volts", []protocol.Event{spoken(command(ready)), display("26.1"), spoken(choice("different"))}, "What should it be?", ""},
		{"after different the camera is not asked", "call-volts", []protocol.Event{spoken(command(ready)), display("26.1"), spoken(choice("different")), display("26.1")}, "", ""},
		{"differ", "call-volts", []protocol.Event{spoken(command(ready)), display("21.6"), spoken(reading("26.1", "V"))}, "You said: twenty-six point one volts. The camera sees: twenty-one point six volts. Which one is right?", ""},
		{"differ, said again", "call-volts", []protocol.Event{spoken(command(ready)), display("21.6"), spoken(reading("26.1", "V")), spoken(reading("26.1", "V"))}, "Twenty-six point one volts. That is normal.", "on"},
		{"differ, the camera's said", "call-volts", []protocol.Event{spoken(command(ready)), display("21.6"), spoken(reading("26.1", "V")), spoken(reading("21.6", "V"))}, "Twenty-one point six volts.", "on"},
		{"rivals settled by the camera", "call-volts", []protocol.Event{spoken(command(ready)), spoken(rivals("15", "25")), display("25.0")}, "The camera agrees.", "on"},
		{"seen first, then rivals", "call-volts", []protocol.Event{spoken(command(ready)), display("25"), spoken(rivals("15", "25"))}, "The camera agrees. Twenty-five volts.", "on"},
		{"before the leads are in place", "call-volts", []protocol.Event{display("0.0")}, "", ""},
		{"glare", "call-volts", []protocol.Event{spoken(command(ready)), noSight(protocol.EyeMeter, "There is glare.")}, "There is glare.", ""},
		{"glare once only", "call-volts", []protocol.Event{spoken(command(ready)), noSight(protocol.EyeMeter, "There is glare."), noSight(protocol.EyeMeter, "There is glare.")}, "", ""},
		{"glare, then voice", "call-volts", []protocol.Event{spoken(command(ready)), noSight(protocol.EyeMeter, "There is glare."), spoken(reading("26.1", "V"))}, "That is normal.", "on"},
		{"over range, right", "ign-ohms", []protocol.Event{spoken(command(ready)), over(), spoken(choice("right-value"))}, "O L, over limit.", "on"},
		{"over range, said too", "ign-ohms", []protocol.Event{spoken(command(ready)), over(), spoken(overSaid())}, "The camera agrees.", "on"},
		{"kilohms told apart by the voice", "ign-ohms", []protocol.Event{spoken(command(ready)), display("47"), spoken(reading("47", "Mohm"))}, "The camera agrees.", "on"},
		{"touch wins at once when they agree", "call-volts", []protocol.Event{spoken(command(ready)), display("26.1"), touched(reading("26.1", "V"))}, "That is normal.", "on"},
		{"touch differs: asked once", "call-volts", []protocol.Event{spoken(command(ready)), display("2.61"), touched(reading("26.1", "V"))}, "Which one is right?", ""},

		{"dead: the camera alone", "act.prove-line-neutral", []protocol.Event{display("0.0"), display("0.0"), display("0.1"), display("0.0")}, "", ""},
		{"dead: camera first asks for the voice", "act.prove-line-neutral", []protocol.Event{display("0.0")}, "Please say the number too.", ""},
		{"dead: camera, then voice", "act.prove-line-neutral", []protocol.Event{display("0.0"), spoken(reading("0.0", "V"))}, "The camera agrees. Zero point zero volts.", "act.prove-line-ground"},
		{"dead: voice, then camera", "act.prove-line-neutral", []protocol.Event{spoken(reading("0.0", "V")), display("0.0")}, "The camera agrees.", "act.prove-line-ground"},
		{"dead: two sayings without a camera", "act.prove-line-neutral", []protocol.Event{spoken(reading("0.0", "V")), spoken(reading("0.0", "V"))}, "Both times the same.", "act.prove-line-ground"},
		{"dead: touch", "act.prove-line-neutral", []protocol.Event{touched(reading("0.0", "V"))}, "No voltage here.", "act.prove-line-ground"},
		{"dead: right is not enough", "act.prove-line-neutral", []protocol.Event{display("0.0"), spoken(choice("right-value"))}, "", ""},
		{"dead: a unit is not enough", "act.prove-line-neutral", []protocol.Event{display("0.0"), unitOnly("V")}, "", ""},
		{"dead: five, and milli volts, is not enough", "act.prove-line-neutral", []protocol.Event{display("5"), unitOnly("mV")}, "Please say the number too.", ""},
		{"dead: five, milli volts, then said", "act.prove-line-neutral", []protocol.Event{display("5"), unitOnly("mV"), spoken(reading("5", "mV"))}, "The camera agrees.", "act.prove-line-ground"},
		{"dead: an unsure camera is no witness", "act.prove-line-neutral", []protocol.Event{spoken(reading("0.0", "V")), unsure(display("0.0"))}, "", ""},
		{"dead: voice zero, camera live", "act.prove-line-neutral", []protocol.Event{display("119.4"), spoken(reading("0.0", "V"))}, "Which one is right?", ""},
		{"dead: voice zero, camera live, zero once more is a first saying", "act.prove-line-neutral", []protocol.Event{display("119.4"), spoken(reading("0.0", "V")), spoken(reading("0.0", "V"))}, "Please say it once more", ""},
		{"dead: touched zero, camera live", "act.prove-line-neutral", []protocol.Event{display("119.4"), touched(reading("0.0", "V"))}, "Which one is right?", ""},
		{"dead: voice one way, camera the other, after once more", "act.prove-line-neutral", []protocol.Event{spoken(reading("0.0", "V")), display("119.4")}, "Which one is right?", ""},
		{"dead: rivals are not picked by the camera", "act.prove-line-neutral", []protocol.Event{display("0.0"), spoken(rivals("20", "0"))}, "Which one is right?", ""},
		{"live: camera and unit", "act.prove-live", []protocol.Event{spoken(command(ready)), display("119.4"), unitOnly("V")}, "The meter works.", "act.prove-line-neutral"},

		{"light: seen, right", "lamp", []protocol.Event{blinks("3"), spoken(choice("right-value"))}, "Three blinks.", "on"},
		{"light: seen alone", "lamp", []protocol.Event{blinks("3")}, "The camera sees: Three blinks. Is that right or wrong?", ""},
		{"light: seen and counted", "lamp", []protocol.Event{blinks("3"), spoken(choice("3"))}, "The camera agrees.", "on"},
		{"light: seen and counted as a bare number", "lamp", []protocol.Event{blinks("3"), spoken(bareCount("3"))}, "The camera agrees.", "on"},
		{"light: differ", "lamp", []protocol.Event{blinks("3"), spoken(choice("dark"))}, "The camera sees: Three blinks. Which one is right?", ""},
		{"light: differ, said again", "lamp", []protocol.Event{blinks("3"), spoken(choice("dark")), spoken(choice("dark"))}, "Dark.", "on"},
		{"light: not on the list", "lamp", []protocol.Event{blinks("7")}, "", ""},

		{"burner: seen, right", "glow", []protocol.Event{burner("flame"), spoken(choice("right-value"))}, "Glowing.", "on"},
		{"burner: seen alone", "glow", []protocol.Event{burner("flame")}, "The camera sees: Glowing. Is that right or wrong?", ""},
		{"burner: fits two answers, is not proposed", "glow", []protocol.Event{burner("glow")}, "", ""},
		{"burner: fits two answers, agrees with either", "glow", []protocol.Event{burner("glow"), spoken(choice("weak-glow"))}, "The camera agrees.", "on"},
		{"burner: differ", "glow", []protocol.Event{burner("glow"), spoken(choice("no-glow"))}, "You said: No glow. The camera sees: a glow. Which one is right?", ""},
		{"burner: differ, said again", "glow", []protocol.Event{burner("glow"), spoken(choice("no-glow")), spoken(choice("no-glow"))}, "No glow.", "on"},
		{"burner: dark is not proposed", "glow", []protocol.Event{burner("dark")}, "", ""},
		{"burner: dark and said", "glow", []protocol.Event{burner("dark"), spoken(choice("no-glow"))}, "The camera agrees.", "on"},
		{"burner: dark denies nothing", "glow", []protocol.Event{burner("dark"), spoken(choice("glowing"))}, "Glowing.", "on"},
		{"burner: nothing that answers this", "glow", []protocol.Event{burner("out")}, "", ""},
		{"burner: seen by a light's frames", "glow", []protocol.Event{blinks("glowing")}, "", ""},

		{"plate: code, right", "plate.model", []protocol.Event{saw(protocol.Seen{Kind: protocol.EyePlate, Text: "AB-12", P: 0.99}), spoken(choice("right-value"))}, "Model number AB-12.", "on"},
		{"plate: read by the person", "plate.model", []protocol.Event{saw(protocol.Seen{Kind: protocol.EyePlate, Text: "AB-12", P: 0.99}), spoken(words2("cd 34"))}, "cd 34.", "on"},

		{"a number said, then its unit", "call-volts", []protocol.Event{spoken(bare("26", "V", "mV")), unitOnly("V")}, "Twenty-six volts. That is normal.", "on"},
		{"dead: zero is zero in any unit", "act.prove-line-neutral", []protocol.Event{spoken(bare("0", "V", "mV"))}, "Please say it once more", ""},
		{"dead: a number said, then its unit", "act.prove-line-neutral", []protocol.Event{spoken(bare("26", "V", "mV")), unitOnly("V")}, "The power is not off.", "act.power-off"},
		{"hold and ready keep what was seen", "lamp", []protocol.Event{blinks("3"), spoken(command("hold-on")), spoken(command("ready"))}, "We go on.", ""},
		{"of another step", "call-volts", []protocol.Event{spoken(command(ready)), saw(protocol.Seen{Step: "flame", Kind: protocol.EyeMeter, P: 1, Reading: shown("1", "")})}, "", ""},
		{"of another kind", "call-volts", []protocol.Event{spoken(command(ready)), saw(protocol.Seen{Kind: protocol.EyeLamp, ID: "3", P: 1})}, "", ""},
		{"during an alarm", "call-volts", []protocol.Event{spoken(command(ready)), spoken(emergency("gas")), saw(protocol.Seen{Step: "call-volts", Kind: protocol.EyeMeter, P: 1, Reading: shown("1", "")})}, "", "on"},
		{"no camera is said once", "call-volts", []protocol.Event{{Type: protocol.EvDevice, Device: &protocol.Device{Kind: "eye-off"}}, {Type: protocol.EvDevice, Device: &protocol.Device{Kind: "eye-off"}}}, "", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := drive(t, newMachine(t))
			d.until(tt.at)
			for _, ev := range tt.events {
				d.see(ev)
			}
			if all := strings.Join(d.said, " "); !strings.Contains(all, tt.want) || tt.want == "" && tt.then == "" && all != "" && tt.name[:5] != "dead:" {
				t.Errorf("said %q, want %q", all, tt.want)
			}
			got := d.m.View().Step.ID
			switch {
			case tt.then == "on" && got == tt.at, tt.then == "" && got != tt.at, tt.then != "" && tt.then != "on" && got != tt.then:
				t.Errorf("at %q, want %q", got, tt.then)
			}
			again(t, d)
		})
	}
}

// A unit that the person names of a number that the camera sees without one is handed on to be learnt; one that was only taken for granted is not.
func TestUnitIsTaught(t *testing.T) {
	for _, tt := range []struct {
		name, at string
		events   []protocol.Event
		want     string
	}{
		{"said with the number", "call-volts", []protocol.Event{display("26.1"), spoken(reading("26.1", "V"))}, "V"},
		{"said after it", "call-volts", []protocol.Event{display("26.1"), unitOnly("V")}, "V"},
		{"another number said", "call-volts", []protocol.Event{display("26.1"), spoken(reading("21.6", "V"))}, ""},
		{"known already", "call-volts", []protocol.Event{displayIn("26.1", "V"), spoken(reading("26.1", "V"))}, ""},
		{"without a camera", "call-volts", []protocol.Event{spoken(reading("26.1", "V"))}, ""},
	} {
		d := drive(t, newMachine(t))
		d.until(tt.at)
		d.see(spoken(command("ready")))
		got := ""
		for _, ev := range tt.events {
			if ev.Seen != nil {
				d.see(ev)
				continue
			}
			for _, e := range d.step(ev) {
				if e.Type == protocol.DoTeach {
					got += e.ID
				}
			}
		}
		if got != tt.want {
			t.Errorf("%s: taught %q, want %q", tt.name, got, tt.want)
		}
	}
}

func overSaid() *utterance.Utterance {
	return &utterance.Utterance{Text: "o l", Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Reading, Reading: &measure.Reading{State: measure.Over}}}}
}

func bareCount(n string) *utterance.Utterance {
	return &utterance.Utterance{Text: n, Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Count, Text: n}}}
}

// anySeen is something that a camera could tell at any time, of this step or another.
func anySeen(r *rand.Rand, v *protocol.View) protocol.Event {
	s := protocol.Seen{Step: v.Step.ID, Kind: v.Step.Eye, P: r.Float64()}
	if r.IntN(5) == 0 {
		s.Kind = []string{protocol.EyeMeter, protocol.EyeLamp, protocol.EyePlate, protocol.EyeAfter, protocol.EyeFire}[r.IntN(5)]
	}
	switch {
	case r.IntN(6) == 0:
		s.Reason = "There is glare."
	case s.Kind == protocol.EyeMeter:
		d := []string{"0.0", "0", "119", "24.3", "3.1", "999", "47", "0.3"}[r.IntN(8)]
		s.Reading = shown(d, []string{"", "", "", "V", "ohm"}[r.IntN(5)])
		if r.IntN(6) == 0 {
			s.Reading = &measure.Reading{State: []measure.State{measure.Over, measure.Blank}[r.IntN(2)]}
		}
	case s.Kind == protocol.EyeLamp:
		s.ID = []string{"3", "lit", "dark", "9"}[r.IntN(4)]
	case s.Kind == protocol.EyeFire:
		s.Text = appliance.Sights[r.IntN(len(appliance.Sights))]
	case s.Kind == protocol.EyePlate:
		s.Text = "AB-12"
	case s.Kind == protocol.EyeAfter:
		for i, c := range []string{"same", "another", "gone", "hidden"} {
			if r.IntN(2) == 0 {
				s.Wires = append(s.Wires, protocol.SeenWire{Mark: protocol.Mark{Name: "mark " + c, X: float64(i) / 4}, Change: c, Before: "red", After: "blue"})
			}
		}
	}
	return saw(s)
}

// Whatever a camera tells, and however often: without a word or a touch nothing is established, nothing is done and no
// hazard is cleared. Differences in the wiring are kept, that is all.
func TestCameraAloneDoesNothing(t *testing.T) {
	d := drive(t, newMachine(t))
	r := rand.New(rand.NewPCG(5, 6))
	for n := 0; !d.m.Ended() && n < 300; n++ {
		if d.m.View().State == "confirm" { // a word was said already: the camera may be the second witness
			d.say(helpful(d.m.View(), d.m.View().StageNo >= 14))
			continue
		}
		f := fork(t, d)
		before, at, found := f.m.Site(), f.m.View().Step.ID, len(f.m.Findings())
		for range 25 {
			f.step(anySeen(r, f.m.View()))
			s := f.m.Site()
			s.Unlike = before.Unlike
			if s != before || len(f.m.Findings()) != found {
				t.Fatalf("at %s the camera alone led to %+v, %d findings", at, s, len(f.m.Findings())-found)
			}
		}
		v := d.m.View()
		d.say(helpful(v, v.StageNo >= 14))
	}
}

func wires(changes ...string) protocol.Event {
	s := protocol.Seen{Step: protocol.EyeAfter, Kind: protocol.EyeAfter}
	for i, c := range changes {
		s.Wires = append(s.Wires, protocol.SeenWire{Mark: protocol.Mark{X: 0.1 * float64(i+1), Y: 0.5, Name: "mark " + []string{"one", "two", "three"}[i]}, Change: c, Before: "red", After: "blue"})
	}
	return saw(s)
}

// untilSwapped leads the igniter's job to the comparison of the wires.
func untilSwapped(t *testing.T) *driver {
	t.Helper()
	d := drive(t, newMachine(t))
	for n := 0; d.m.View().Step.ID != "photo.after"; n++ {
		if n > 300 || d.m.Ended() {
			t.Fatalf("never got to the comparison; at %q", d.m.View().Step.ID)
		}
		v := d.m.View()
		d.say(helpful(v, v.StageNo >= 14))
	}
	return d
}

// Every difference found in the wiring is told one by one and answered before power returns, whatever is tried instead.
func TestWiresAnswered(t *testing.T) {
	for _, tt := range []struct {
		name    string
		wires   protocol.Event
		said    []*utterance.Utterance
		asked   []string // steps in order
		unlike  bool     // power stays barred afterwards
		outcome string
	}{
		{"none", wires("same", "same"), nil, []string{"photo.after"}, false, "fixed"},
		{"one, put back", wires("same", "another"), []*utterance.Utterance{choice("put-back")}, []string{"wire.two", "photo.after"}, false, "fixed"},
		{"two", wires("another", "same", "gone"), []*utterance.Utterance{choice("same"), choice("on-purpose")}, []string{"wire.one", "wire.three", "photo.after"}, false, "fixed"},
		{"hidden is said as hidden", wires("hidden"), []*utterance.Utterance{choice("same")}, []string{"wire.one", "photo.after"}, false, "fixed"},
		{"not answered", wires("another"), []*utterance.Utterance{command("skip")}, []string{"wire.one"}, true, "handed-over"},
		{"taken back", wires("another"), []*utterance.Utterance{command("scratch-that")}, []string{"wire.one"}, true, ""},
		{"finished for today", wires("another"), []*utterance.Utterance{command("finish")}, []string{"wire.one"}, true, "given-up"},
		{"something changed", wires("another"), []*utterance.Utterance{command("it-changed")}, []string{"wire.one", "act.power-off"}, true, "fixed"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := untilSwapped(t)
			d.see(tt.wires)
			var at []string
			for i := 0; ; i++ {
				if id := d.m.View().Step.ID; len(at) == 0 || at[len(at)-1] != id {
					at = append(at, id)
				}
				if i == len(tt.said) {
					break
				}
				d.say(tt.said[i])
			}
			if len(at) < len(tt.asked) || !slices.Equal(at[:len(tt.asked)], tt.asked) {
				t.Errorf("asked %v, want %v", at, tt.asked)
			}
			if d.m.Site().Unlike != tt.unlike {
				t.Errorf("power barred %v, want %v", d.m.Site().Unlike, tt.unlike)
			}
			for n := 0; !d.m.Ended() && n < 300; n++ {
				v := d.m.View()
				if d.m.Site().Unlike && (d.m.Site().Power == worksite.On || v.Step.ID == "act.power-on") {
					t.Fatalf("power over an unanswered wire, at %s", v.Step.ID)
				}
				if tt.outcome != "fixed" && strings.HasPrefix(v.Step.ID, "wire.") { // nobody ever answers it
					d.say(command("skip"))
					continue
				}
				d.say(helpful(v, v.StageNo >= 14))
			}
			if got := d.m.View().Ended; tt.outcome != "" && got != tt.outcome {
				t.Errorf("ended %q, want %q", got, tt.outcome)
			}
			again(t, d)
		})
	}
}

// An undo of an earlier act does not make a difference forgotten.
func TestWiresOutliveUndo(t *testing.T) {
	d := untilSwapped(t)
	d.see(wires("another"))
	for range 3 {
		d.step(protocol.Event{Type: protocol.EvUndo})
	}
	if !d.m.Site().Unlike {
		t.Error("the difference is forgotten")
	}
	again(t, d)
}

// The camera's finding belongs to the answer: taking the answer back takes it back too.
func TestUndoWithCamera(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("call-volts")
	d.say(command("ready"))
	d.see(display("26.1"))
	d.see(unitOnly("V"))
	d.step(protocol.Event{Type: protocol.EvUndo})
	if got := d.m.View().Step.ID; got == "consent" { // live work is agreed to anew
		d.say(helpful(d.m.View(), false))
	}
	if got := d.m.View().Step.ID; got != "call-volts" {
		t.Fatalf("at %s", got)
	}
	if h := d.m.View().Step.Kind; h == "confirm" {
		t.Error("the undone finding is still put to the person")
	}
	again(t, d)
}
