package job_test

import (
	"slices"
	"strings"
	"testing"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// until answers helpfully until the step of that id is open.
func (d *driver) until(id string) {
	d.t.Helper()
	for range 300 {
		v := d.m.View()
		if v.Step.ID == id {
			return
		}
		if d.m.Ended() {
			break
		}
		part := id == "plate.model" // asked where a new part is matched
		u := helpful(v, !part)
		if v.Step.ID == "glow" && !part {
			u = choice("glowing")
		}
		d.say(u)
	}
	d.t.Fatalf("never got to %q; at %q, ended %q", id, d.m.View().Step.ID, d.m.View().Ended)
}

func repair(u *utterance.Utterance) *utterance.Utterance { u.Meanings[0].Repair = true; return u }

func bare(digits string, units ...string) *utterance.Utterance {
	u := reading(digits, "V")
	u.Meanings[0].Reading.Value.Unit = ""
	u.Meanings[0].Units = units
	return u
}

// Each row: where in the job, what is said, what the guide must say (a part of it) and the step it must then be at.
func TestDialogues(t *testing.T) {
	for _, tt := range []struct {
		name string
		at   string
		said []*utterance.Utterance
		want string // in the last reply
		then string // step afterwards; empty: the same
	}{
		{"a value before ready", "ign-ohms", []*utterance.Utterance{reading("62", "ohm")}, "Sixty-two ohms. That is normal.", "flame-path"},
		{"corrected in one breath", "ign-volts", []*utterance.Utterance{repair(reading("121.4", "V"))}, "One hundred twenty-one point four volts. That is normal.", "any"},
		{"the last value corrected", "call-volts", []*utterance.Utterance{reading("26.1", "V"), repair(reading("24.3", "V"))}, "Twenty-four point three volts. That is normal.", "any"},
		{"zero once is not dead", "act.prove-line-neutral", []*utterance.Utterance{reading("0", "V")}, "Zero volts. Please say it once more", ""},
		{"zero twice", "act.prove-line-neutral", []*utterance.Utterance{reading("0", "V"), reading("0.0", "V")}, "Both times the same.", "act.prove-line-ground"},
		{"two sayings differ", "act.prove-line-neutral", []*utterance.Utterance{reading("0", "V"), reading("0.2", "V")}, "The two differ. Please measure again.", ""},
		{"dead without a number", "act.prove-line-neutral", []*utterance.Utterance{{Text: "it's dead", Source: "voice", Meanings: dead()}}, "say the number that shows", ""},
		{"live where dead is due", "act.prove-line-neutral", []*utterance.Utterance{reading("121", "V")}, "The power is not off. Take your hands out.", "act.power-off"},
		{"which unit", "call-volts", []*utterance.Utterance{bare("26", "V", "mV")}, "Which unit is it: volts or MILLI volts?", ""},
		{"wrong unit", "call-volts", []*utterance.Utterance{reading("26", "ohm")}, "I need volts", ""},
		{"fifteen or twenty-five", "call-volts", []*utterance.Utterance{rivals("15", "25")}, "Fifteen, one five, volts, or twenty-five volts?", ""},
		{"rivals of no matter", "call-volts", []*utterance.Utterance{rivals("26.1", "26.2")}, "Twenty-six point one volts. That is normal.", "any"},
		{"consent needs its words", "consent", []*utterance.Utterance{choice("yes")}, "Please say: yes, with power on. Or say: no, find another way.", ""},
		{"other way", "consent", []*utterance.Utterance{command("other-way")}, "", "any"},
		{"done where a number is due", "call-volts", []*utterance.Utterance{command("ready"), command("done")}, "What does the meter show?", ""},
		{"done does not switch off", "act.power-off", []*utterance.Utterance{command("done")}, "Please say: both are off.", ""},
		{"expected value is not told", "call-volts", []*utterance.Utterance{command("should-it-be")}, "I tell you right after.", ""},
		{"shortcut", "call-volts", []*utterance.Utterance{command("shortcut")}, "No.", ""},
		{"hold with the door held", "call-volts", []*utterance.Utterance{command("hold-on")}, "This must come out first: door switch held in.", "act.power-off"},
		{"it changed", "ign-ohms", []*utterance.Utterance{command("it-changed")}, "take your hands out. We do not know now if the power is on.", "any"},
		{"not understood", "call-volts", []*utterance.Utterance{mumble()}, "I did not catch the number.", ""},
		{"not understood, other words", "call-volts", []*utterance.Utterance{mumble(), mumble()}, "one digit at a time", ""},
		{"not understood, another way", "call-volts", []*utterance.Utterance{mumble(), mumble(), mumble()}, "You can tap it", ""},
		{"not understood, on we go", "call-volts", []*utterance.Utterance{mumble(), mumble(), mumble(), mumble()}, "We try another way.", "any"},
		{"no fuel smell at the question", "smell", []*utterance.Utterance{choice("none")}, "None.", "alarm"},
		{"smell at the question", "smell", []*utterance.Utterance{choice("some")}, "Leave now. Touch no switch.", "alarm.gas"},
		{"no call at the board", "call-volts", []*utterance.Utterance{reading("0.0", "V")}, "Let us check the thermostat once more.", "any"},
		{"no meter", "meter.kind", []*utterance.Utterance{choice("no-meter")}, "No meter.", "any"},
		{"what if", "call-volts", []*utterance.Utterance{doubtful("gas")}, "An odor like gas, right now?", "right-now"},
		{"what if, none", "call-volts", []*utterance.Utterance{doubtful("gas"), choice("none")}, "No danger right now.", "call-volts"},
		{"an answer that sounds like an alarm", "glow", []*utterance.Utterance{or(doubtful("water"), choice("glowing")), choice("none")}, "Glowing.", "any"},
		{"what if, leave", "call-volts", []*utterance.Utterance{doubtful("gas"), choice("leave-now")}, "Leave now. Touch no switch.", "alarm.gas"},
		{"undo", "alarm", []*utterance.Utterance{command("scratch-that")}, "Taken back: None.", "smell"},
		{"undo after a question about the next step", "act.power-off", []*utterance.Utterance{command("why"), command("scratch-that")}, "Hold the two metal tips together", "meter.short"},
		{"undo after the next step was not understood", "act.power-off", []*utterance.Utterance{mumble(), command("scratch-that")}, "Hold the two metal tips together", "meter.short"},
		{"different, after an implicit read-back", "flame", []*utterance.Utterance{choice("different")}, "What should it be?", "any"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := drive(t, newMachine(t))
			switch tt.at {
			case "meter.kind", "ign-ohms", "ign-volts", "call-volts", "flame", "act.prove-line-neutral", "act.power-off", "consent", "smell", "alarm", "glow":
				d.until(tt.at)
			}
			for _, u := range tt.said {
				d.say(u)
			}
			if all := strings.Join(d.said, " "); !strings.Contains(all, tt.want) {
				t.Errorf("said %q, want %q", all, tt.want)
			}
			got := d.m.View().Step.ID
			if want := tt.then; want != "any" && want != "flame-path" && got != firstNonEmpty(want, tt.at) {
				t.Errorf("at %q, want %q", got, firstNonEmpty(want, tt.at))
			}
			again(t, d)
		})
	}
}

func firstNonEmpty(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

func dead() []utterance.Meaning {
	u := reading("0", "V")
	u.Meanings[0].Reading.Value.Unit = ""
	u.Meanings[0].Reading.State = "dead"
	return u.Meanings
}

func rivals(a, b string) *utterance.Utterance {
	u := reading(a, "V")
	u.Meanings = append(u.Meanings, reading(b, "V").Meanings...)
	u.Meanings[1].Cost = 1
	return u
}

func mumble() *utterance.Utterance {
	return &utterance.Utterance{Text: "mumble", Source: "voice", Fault: "unknown"}
}

func doubtful(class string) *utterance.Utterance {
	u := emergency(class)
	u.Meanings[0].Doubt = true
	return u
}

// or is a saying that may be either.
func or(a, b *utterance.Utterance) *utterance.Utterance {
	a.Meanings = append(a.Meanings, b.Meanings...)
	return a
}

// At every step of a whole job, every command is answered and changes nothing but what it says, and every emergency is
// the first thing said.
func TestEverywhere(t *testing.T) {
	d := drive(t, newMachine(t))
	seen := map[string]bool{}
	for n := 0; !d.m.Ended() && n < 300; n++ {
		v := d.m.View()
		if !seen[v.Step.ID] {
			seen[v.Step.ID] = true
			for _, c := range vocab.CommandIDs() {
				f := fork(t, d)
				f.say(command(c))
				w := f.m.View()
				if c != "quiet" && len(f.said) == 0 && w.Step.ID == v.Step.ID && c != "hold-on" {
					t.Errorf("%s at %s: no answer", c, v.Step.ID)
				}
				if w.State != "ended" && w.Step.Act == "" && w.Step.Say == "" && w.Step.Caution == "" {
					t.Errorf("%s at %s: nothing to do next", c, v.Step.ID)
				}
			}
			for _, class := range []string{"gas", "co", "fire", "ill", "any", "shock", "spark", "water", "injury", "child"} {
				f := fork(t, d)
				out := f.say(emergency(class))
				says := slices.IndexFunc(out, func(e protocol.Effect) bool { return e.Type == protocol.DoSay })
				if says < 0 || out[says].Level != "emergency" || says > 1 {
					t.Errorf("%s at %s: %v is not first", class, v.Step.ID, out)
				}
				if n := len(strings.Fields(out[says].Text)); n > 8 {
					t.Errorf("%s: %d words before help", class, n)
				}
				if w := f.m.View(); w.State != "emergency" || w.Site.Power != "unknown" {
					t.Errorf("%s at %s: state %s, power %s", class, v.Step.ID, w.State, w.Site.Power)
				}
			}
		}
		d.say(helpful(v, v.StageNo >= 14))
	}
	if len(seen) < 30 {
		t.Errorf("only %d steps seen", len(seen))
	}
}

// fork is another machine that has lived through the same events.
func fork(t testing.TB, d *driver) *driver {
	t.Helper()
	f := &driver{t: t, m: newMachine(t), now: d.now, events: slices.Clone(d.events)}
	for _, ev := range d.events {
		if _, err := f.m.Step(ev); err != nil {
			t.Fatal(err)
		}
	}
	return f
}

// The program may be killed after any event: the replay comes to the same place, and the resumed job believes nothing of
// the supply and ends with everything back.
func TestKillAnywhere(t *testing.T) {
	d := drive(t, newMachine(t))
	for n := 0; !d.m.Ended() && n < 300; n++ {
		v := d.m.View()
		d.say(helpful(v, v.StageNo >= 14))
		if n%3 != 0 || d.m.Ended() {
			continue
		}
		f := fork(t, d)
		if f.m.Digest() != d.m.Digest() {
			t.Fatalf("after event %d the replay differs", len(d.events))
		}
		f.now += 3_600_000
		f.step(protocol.Event{Type: protocol.EvResume})
		if p := f.m.Site().Power; p != worksite.Unknown {
			t.Errorf("after a resume at %s power is %s", v.Step.ID, p)
		}
		if id := f.m.View().Step.ID; !f.m.Ended() && id != "smell" && f.m.View().StageNo < 15 {
			t.Errorf("after a resume at %s the first question is %q", v.Step.ID, id)
		}
		for i := 0; !f.m.Ended(); i++ {
			if i > 300 {
				t.Fatalf("resumed at %s: no end", v.Step.ID)
			}
			w := f.m.View()
			f.say(helpful(w, w.StageNo >= 14))
		}
		if !f.m.Site().Left() {
			t.Errorf("resumed at %s, left as %+v", v.Step.ID, f.m.Site())
		}
	}
}

// Taking an answer back brings what was known before it. Live work that it was read in is agreed to anew.
func TestUndoBringsKnowledgeBack(t *testing.T) {
	d := drive(t, newMachine(t))
	tried := 0
	for n := 0; !d.m.Ended() && n < 120; n++ {
		v := d.m.View()
		acts := v.Step.Kind == "act" || strings.HasPrefix(v.Step.ID, "act.")
		before := fork(t, d)
		d.say(helpful(v, v.StageNo >= 14))
		if acts || v.Step.Part == "A" || v.State == "confirm" || d.m.View().State == "confirm" || d.m.Ended() || d.m.View().Step.ID == v.Step.ID {
			continue
		}
		f := fork(t, d)
		f.step(protocol.Event{Type: protocol.EvUndo})
		a, b := before.m.View(), f.m.View()
		live := b.Step.ID == "consent" && b.Site.Power == "on"
		if a.Step.ID != b.Step.ID && !live || a.Site.Power != b.Site.Power || strings.Join(a.Facts, "|") != strings.Join(b.Facts, "|") ||
			len(before.m.Findings()) != len(f.m.Findings()) {
			t.Errorf("undo after %s: at %q with facts %v, want %q with %v", v.Step.ID, b.Step.ID, b.Facts, a.Step.ID, a.Facts)
		}
		tried++
	}
	if tried < 15 {
		t.Errorf("only %d undos tried", tried)
	}
}

// An act that is taken back is asked for the other way round: what hands did is never forgotten. A proof of dead that
// it has nothing to do with stands; the reading of a proof that is taken back ends it.
func TestUndoAct(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("ign-ohms")
	if p := d.m.Site().Power; p != worksite.Proved || d.m.Site().Wires.Empty() {
		t.Fatal(p, d.m.Site().Wires)
	}
	d.step(protocol.Event{Type: protocol.EvUndo})
	if id := d.m.View().Step.ID; !strings.HasPrefix(id, "act.refit-wire") || d.m.Site().Wires.Empty() || d.m.Site().Power != worksite.Proved {
		t.Errorf("after lifting a wire was taken back: at %s, power %s, wires %v", id, d.m.Site().Power, d.m.Site().Wires)
	}
	d = drive(t, newMachine(t))
	for !strings.HasPrefix(d.m.View().Step.ID, "act.prove-line-ground") {
		v := d.m.View()
		d.say(helpful(v, v.StageNo >= 14))
	}
	d.step(protocol.Event{Type: protocol.EvUndo})
	if s := d.m.Site(); s.Proof != 0 || s.Power == worksite.Proved {
		t.Errorf("a proof goes on after one of its readings was taken back: %+v", s)
	}
}

// An undo after the program came back never reaches a step that the place does not allow.
func TestUndoAfterResume(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("ign-ohms")
	d.say(helpful(d.m.View(), false))
	d.now += 3_600_000
	d.step(protocol.Event{Type: protocol.EvResume})
	for range 6 {
		d.step(protocol.Event{Type: protocol.EvUndo})
		if s := d.m.Site(); d.m.View().Step.ID == "ign-ohms" && s.Power != worksite.Proved {
			t.Fatalf("ohms are asked with power %s", s.Power)
		}
	}
	if d.m.Site().Wires.Empty() {
		t.Error("the lifted wire is forgotten")
	}
}

// Somebody silent is asked twice and then left in peace; what must not be left alone is announced for ever.
func TestSilence(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("mode")
	var said []string
	for range 20 {
		d.now += 600_000
		d.step(protocol.Event{Type: protocol.EvTick})
		said = append(said, d.said...)
	}
	if len(said) != 3 || d.m.View().State != "hold" {
		t.Errorf("said %q, state %s", said, d.m.View().State)
	}
	d.say(command("ready"))
	if d.m.View().State != "ask" {
		t.Error("ready does not end the pause")
	}
	d = drive(t, newMachine(t))
	d.until("call-volts")
	for range 30 {
		d.now += 19_000
		d.step(protocol.Event{Type: protocol.EvTick})
	}
	if id := d.m.View().Step.ID; id != "alarm.silent" {
		t.Errorf("nobody answers beside an open live cabinet for ten minutes: at %q", id)
	}
	d.say(choice("okay-now"))
	if v := d.m.View(); v.Step.ID != "act.power-off" || v.Site.Power != "unknown" {
		t.Errorf("after nobody answered: at %q, power %s", v.Step.ID, v.Site.Power)
	}
}

// A call that does not arrive sends the person back to the thermostat's setting before anything else is measured.
func TestNoCall(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("call-volts")
	d.say(reading("0.0", "V"))
	for range 5 {
		v := d.m.View()
		if v.Step.ID == "mode" {
			return
		}
		if v.Step.Kind != "act" {
			t.Fatalf("at %q", v.Step.ID)
		}
		d.say(helpful(v, true))
	}
	t.Fatal("the thermostat is not asked about")
}

// A caution that was cut off is said again before the step goes on.
func TestUnheardCaution(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("act.prove-line-neutral")
	out := d.say(command("repeat"))
	for _, e := range out {
		if e.Type == protocol.DoSay && e.Level == "danger" {
			d.step(protocol.Event{Type: protocol.EvSpoke, Spoke: e.ID, Cut: true})
			break
		}
	}
	d.say(command("where"))
	if !strings.Contains(strings.Join(d.said, " "), "Danger:") {
		t.Errorf("said %q", d.said)
	}
}

// Without a meter nothing is measured and no hand goes inside; the job still ends in order.
func TestNoMeter(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("meter.kind")
	d.say(choice("no-meter"))
	for i := 0; !d.m.Ended(); i++ {
		if i > 100 {
			t.Fatal("no end")
		}
		v := d.m.View()
		if len(v.Step.Keypad) > 0 && v.Step.Kind == "measure" {
			t.Fatalf("%s is measured without a meter", v.Step.ID)
		}
		d.say(helpful(v, true))
	}
	if !d.m.Site().Left() {
		t.Errorf("left as %+v", d.m.Site())
	}
}
