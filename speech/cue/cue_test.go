package cue_test

import (
	"math"
	"testing"

	"readback/speech/cue"
)

func TestPCM(t *testing.T) {
	want := []string{"accepted", "ask", "danger", "heard", "hold", "refused", "resume", "timer"}
	ids := cue.IDs()
	if len(ids) != len(want) {
		t.Fatalf("cues %v", ids)
	}
	for i, id := range ids {
		if id != want[i] {
			t.Errorf("cue %s, want %s", id, want[i])
		}
		pcm, err := cue.PCM(id)
		if err != nil {
			t.Fatal(err)
		}
		ms := len(pcm) * 1000 / cue.Rate
		if ms < 60 || ms > 1000 || id != "danger" && id != "timer" && ms > 500 {
			t.Errorf("%s lasts %d ms", id, ms)
		}
		peak := 0
		for _, s := range pcm {
			peak = max(peak, int(math.Abs(float64(s))))
		}
		if peak < 500 || peak >= 32767 {
			t.Errorf("%s: peak %d", id, peak)
		}
		if pcm[0] != 0 || pcm[len(pcm)-1] != 0 {
			t.Errorf("%s clicks", id)
		}
	}
	if _, err := cue.PCM("horn"); err == nil {
		t.Error("unknown cue: no error")
	}
}

// Power lies where an ear hears it in a basement, and away from a meter's beep.
func TestSpectrum(t *testing.T) {
	for _, id := range cue.IDs() {
		pcm, err := cue.PCM(id)
		if err != nil {
			t.Fatal(err)
		}
		power := func(hz float64) float64 {
			var re, im float64
			for i, s := range pcm {
				a := 2 * math.Pi * hz * float64(i) / cue.Rate
				re += float64(s) * math.Cos(a)
				im += float64(s) * math.Sin(a)
			}
			return re*re + im*im
		}
		low, high := 0.0, 0.0
		for hz := 380.0; hz < 1600; hz += 20 {
			low += power(hz)
		}
		for hz := 3200.0; hz < 4400; hz += 20 {
			high += power(hz)
		}
		if high > low/1000 {
			t.Errorf("%s: %.1f dB near a meter's beep", id, 10*math.Log10(high/low))
		}
	}
}
