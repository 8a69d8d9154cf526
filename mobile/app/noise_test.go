package app_test

import (
	"os"
	"strconv"
	"testing"

	"readback/core/lab/metric"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/mobile/app"
	"readback/speech/lab/hearbench"
	"readback/speech/model"
)

// swell plays a swelling noise to an ear with the real engines, takes what it hears to a real job at its first question, and counts what the job says to it.
func swell(t *testing.T, kind string, seconds int) (answers int, ended string) {
	t.Helper()
	begin := protocol.Begin{}
	m, err := app.NewMachine(begin)
	if err != nil {
		t.Fatal(err)
	}
	seq := int64(0)
	step := func(ev protocol.Event) []protocol.Effect {
		seq++
		ev.Seq = seq
		out, err := m.Step(ev)
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	now := int64(1_000_000)
	wake := int64(0)
	take := func(out []protocol.Effect) (said int) {
		for _, x := range out {
			switch x.Type {
			case protocol.DoSay:
				said++
			case protocol.DoWake:
				wake = x.At
			}
		}
		return said
	}
	take(step(protocol.Event{Type: protocol.EvBegin, At: now, Begin: &begin}))
	ear, err := app.Recogniser(model.Locate).Open(app.Listener{Partial: func(string) {}, Level: func(float64, float64) {}, Utterance: func(u utterance.Utterance) {
		if n := take(step(protocol.Event{Type: protocol.EvSaid, At: now, Said: &u})); n > 0 {
			answers++
			t.Logf("%s: %q (%s, %.0f dB) is answered: %v", kind, u.Text, u.Fault, u.SNR, u.Meanings)
		}
	}})
	if err != nil {
		t.Skip(err)
	}
	defer ear.Close()
	asked, err := app.Ask("", m.View().Step.ID)
	if err != nil {
		t.Fatal(err)
	}
	ear.Class(asked.Class)
	ear.Expect(asked.Expect)
	pcm := hearbench.ToBytes(hearbench.Swelling(kind, 5, seconds))
	for len(pcm) > 0 {
		n := min(3200, len(pcm))
		now += int64(n) / 32
		if err := ear.Feed(pcm[:n], now); err != nil {
			t.Fatal(err)
		}
		pcm = pcm[n:]
		if wake > 0 && now >= wake {
			wake = 0
			take(step(protocol.Event{Type: protocol.EvTick, At: now}))
		}
	}
	return answers, m.View().Ended
}

// A blower that swells every seven seconds is nobody: it climbs no ladder and ends no job.
func TestSwellingNoise(t *testing.T) {
	for _, kind := range hearbench.Swells {
		if n, ended := swell(t, kind, 40); n > 0 || ended != "" {
			t.Errorf("%s: answered %d times, ended %q", kind, n, ended)
		}
	}
}

// An hour of noise, ten minutes of each; NOISE_SECONDS sets another time for each.
func TestNoiseFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		seconds := 600
		if s, err := strconv.Atoi(os.Getenv("NOISE_SECONDS")); err == nil {
			seconds = s
		}
		answers, over := 0, 0
		for _, kind := range hearbench.Swells {
			n, ended := swell(t, kind, seconds)
			answers += n
			if ended != "" {
				over++
			}
		}
		add("noise.ladder", float64(answers), "answers in an hour of swelling noise", "= 0", len(hearbench.Swells)*seconds)
		add("noise.ended", float64(over), "jobs ended by noise", "= 0", len(hearbench.Swells))
	})
}
