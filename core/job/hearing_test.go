package job_test

import (
	"strings"
	"testing"

	"readback/core/utterance"
)

// either is a saying that may be one answer or another, nats apart.
func either(a utterance.Meaning, b utterance.Meaning, apart float64) *utterance.Utterance {
	b.Cost = apart
	return &utterance.Utterance{Text: a.ID, Source: "voice", Meanings: []utterance.Meaning{a, b}}
}

func oneOf(id string) utterance.Meaning { return utterance.Meaning{Kind: utterance.Choice, ID: id} }
func order(id string) utterance.Meaning { return utterance.Meaning{Kind: utterance.Command, ID: id} }

// What becomes of answers in words that were not heard clearly.
func TestUnclearAnswers(t *testing.T) {
	for _, tt := range []struct {
		name string
		at   string
		said []*utterance.Utterance
		want string // in all that is said after the first saying
		then string // step afterwards; empty: the same
	}{
		{"two answers are near", "glow", []*utterance.Utterance{either(oneOf("glowing"), oneOf("no-glow"), 1)}, ", or ", ""},
		{"one of them is named", "glow", []*utterance.Utterance{either(oneOf("glowing"), oneOf("no-glow"), 1), choice("no-glow")}, ", or ", "any"},
		{"both again", "glow", []*utterance.Utterance{either(oneOf("glowing"), oneOf("no-glow"), 1), either(oneOf("glowing"), oneOf("no-glow"), 1)}, "Is that right or wrong?", ""},
		{"called different it is not offered again", "glow", []*utterance.Utterance{either(oneOf("glowing"), oneOf("no-glow"), 1), either(oneOf("glowing"), oneOf("no-glow"), 1),
			choice("different"), either(oneOf("glowing"), oneOf("no-glow"), 1)}, "", "any"},
		{"a smell that may be none is asked", "smell", []*utterance.Utterance{either(oneOf("none"), oneOf("some"), 5)}, ", or ", ""},
		{"a command that ends the question, near an answer", "glow", []*utterance.Utterance{either(order("dont-know"), oneOf("no-glow"), 1)}, "No glow, or don't know?", ""},
		{"a no among other words takes nothing back", "alarm", []*utterance.Utterance{either(oneOf("below"), oneOf("no"), 0.01)}, "I did not catch that.", ""},
		{"finish, misheard, is taken back", "glow", []*utterance.Utterance{command("finish"), command("scratch-that")}, "Taken back: finish.", ""},
		{"what may be said is said in words that are heard", "smell", []*utterance.Utterance{mumble()}, "Is it none, or some?", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := drive(t, newMachine(t))
			d.until(tt.at)
			all := ""
			for _, u := range tt.said {
				d.say(u)
				all += strings.Join(d.said, " ") + " "
			}
			if !strings.Contains(all, tt.want) {
				t.Errorf("said %q, want %q", all, tt.want)
			}
			if got := d.m.View().Step.ID; tt.then != "any" && got != firstNonEmpty(tt.then, tt.at) {
				t.Errorf("at %q, want %q", got, firstNonEmpty(tt.then, tt.at))
			}
			again(t, d)
		})
	}
}

// Whatever is heard, over and over, no step of a job holds the person for ever: the ladder ends, and the job goes on or ends.
func TestNothingLoops(t *testing.T) {
	d := drive(t, newMachine(t))
	seen := map[string]bool{}
	for n := 0; !d.m.Ended() && n < 300; n++ {
		v := d.m.View()
		if key := v.Step.ID + v.Step.Part; !seen[key] {
			seen[key] = true
			sayings := map[string]*utterance.Utterance{"mumble": mumble(), "an answer to something else": choice("rusty"), "volts or nothing": rivals("24", "0"),
				"bare": bare("26", "V", "mV"), "impossible": reading("26", "psi"), "zero or not": rivals("0", "118")}
			if a := v.Step.Answers; len(a) > 1 && a[0].Kind == utterance.Choice && a[1].Kind == utterance.Choice {
				sayings["two answers"] = either(oneOf(a[0].ID), oneOf(a[1].ID), 1)
				sayings["looked for"] = either(oneOf("rusty"), oneOf(a[0].ID), 7)
				sayings["an answer or don't know"] = either(order("dont-know"), oneOf(a[0].ID), 1)
			}
			for _, name := range []string{"mumble", "an answer to something else", "volts or nothing", "bare", "impossible", "zero or not", "two answers", "looked for", "an answer or don't know"} {
				u := sayings[name]
				if u == nil {
					continue
				}
				f := fork(t, d)
				left := false
				for range 24 {
					f.say(u)
					if w := f.m.View(); w.State == "ended" || w.Step.ID != v.Step.ID {
						left = true
						break
					}
				}
				if !left {
					t.Errorf("%s at %s%s: still there after 24 sayings", name, v.Step.ID, v.Step.Part)
				}
			}
		}
		d.say(helpful(v, v.StageNo >= 14))
	}
	if len(seen) < 30 {
		t.Errorf("only %d steps seen", len(seen))
	}
}

// At an open question what is said is the story, also where it begins like taking something back.
func TestStoryBeginsWithNo(t *testing.T) {
	d := drive(t, newMachine(t))
	d.until("story")
	before := d.m.Result().Checks
	u := choice("no")
	u.Text = "it doesn't start"
	d.say(u)
	if id := d.m.View().Step.ID; id == "story" || d.m.Result().Checks < before {
		t.Errorf("at %s with %d answers, had %d", id, d.m.Result().Checks, before)
	}
}
