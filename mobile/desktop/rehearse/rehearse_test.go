package rehearse_test

import (
	"slices"
	"testing"

	"readback/core/appliance"
	"readback/core/figure"
	"readback/flows"
	"readback/mobile/desktop/rehearse"
	"readback/mobile/ui"
	"readback/speech/hear"
	"readback/speech/model"
)

// jobs are whole jobs by sound: own cases, two synthesisers.
var jobs = []struct{ fault, voice, outcome, mended string }{
	{"igniter.open", "flite-slt", "fixed", "replace-igniter"},
	{"stat-mode.cool", "flite-slt", "fixed", "set-heat"},
	{"filter.packed", "flite-rms", "fixed", "replace-filter"},
	{"gas-cock.closed", "flite-awb", "fixed", "open-gas-cock"},
	{"stat-mode.cool", "flite-rms", "fixed", "set-heat"},
	{"igniter.open", "flite-rms", "fixed", "replace-igniter"},
	{"stat-mode.cool", "espeak-us", "fixed", "set-heat"},
	{"igniter.open", "espeak-gb", "fixed", "replace-igniter"},
}

// play leads one job beside a fan at 15 dB.
func play(t *testing.T, k int) *rehearse.Result {
	t.Helper()
	j := jobs[k]
	if _, err := model.Locate(); err != nil {
		t.Skipf("the speech files are missing: %v", err)
	}
	models, err := flows.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	m := models[slices.IndexFunc(models, func(m *appliance.Model) bool { return m.ID == "furnace-hsi" })]
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	mode := slices.IndexFunc(m.Modes, func(x appliance.Mode) bool { return x.Full == j.fault })
	all := hear.Voices()
	v := slices.IndexFunc(all, func(v hear.Voice) bool { return v.Name == j.voice })
	if mode < 0 || v < 0 {
		t.Skipf("no fault %s or no voice %s on this machine", j.fault, j.voice)
	}
	res, err := rehearse.Play(rehearse.Job{Dir: t.TempDir(), Model: m, Engine: e, Modes: []int{mode}, Voice: all[v], Noise: "fan", SNR: 15, Seed: 1,
		Speech: ui.Recogniser(model.Locate)})
	if err != nil {
		t.Fatal(err)
	}
	return res
}

func right(r *rehearse.Result, k int) bool {
	return r.View.State == "ended" && slices.Contains(r.Mended, jobs[k].mended) && len(r.View.Open) == 0
}

// One job by sound runs with every test; the others are figures.
func TestJobBySound(t *testing.T) {
	if r := play(t, 0); !right(r, 0) {
		t.Errorf("%s with %s: %q, mended %v", jobs[0].fault, jobs[0].voice, r.View.Ended, r.Mended)
	}
}

func TestFigures(t *testing.T) {
	figure.Run(t, func(add figure.Adder) {
		n := 0
		for k := range jobs {
			r := play(t, k)
			if right(r, k) {
				n++
			}
			t.Logf("%s with %s: right %v; %s, mended %v, %d sayings, %d again, %d taken back, %d tapped", jobs[k].fault, jobs[k].voice, right(r, k), r.View.Ended, r.Mended, r.Said, r.Repeated, r.Objected, r.Tapped)
		}
		add("job.spoken_right_pct", 100*float64(n)/float64(len(jobs)), "%", ">= 100", len(jobs))
	})
}
