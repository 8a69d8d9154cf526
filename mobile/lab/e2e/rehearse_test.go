package e2e_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"readback/core/appliance"
	"readback/core/lab/metric"
	"readback/flows"
	"readback/mobile/app"
	"readback/mobile/lab/e2e"
	"readback/speech/lab/hearbench"
	"readback/speech/model"
)

// spoken is a whole job by sound and how it must end.
type spoken struct {
	appliance, fault, voice string // fault "" for an appliance that is well
	says                    string // "step=answer": said there instead of what is seen
	outcome, mended         string // mended "" when nothing may be repaired
}

// jobs are of different kinds, with two synthesisers, nine voices, three of them of women. Each runs beside a fan at 15 dB.
var jobs = []spoken{
	{"furnace-hsi", "stat-mode.cool", "flite-slt", "", "fixed", "set-heat"},                       // a setting
	{"furnace-hsi", "filter.packed", "flite-rms", "", "fixed", "replace-filter"},                  // the limit is only the messenger
	{"furnace-hsi", "igniter.open", "espeak-gb", "", "fixed", "replace-igniter"},                  // an electrical part, swapped
	{"furnace-hsi", "", "espeak-us-f3", "", "nothing-wrong", ""},                                  // a good furnace
	{"furnace-hsi", "gas-valve.coil-open", "espeak-us", "", "stopped", ""},                        // a stop line
	{"furnace-hsi", "gas-cock.closed", "flite-slt", "cock-look=alarm:gas", "emergency", ""},       // gas is smelled in the middle
	{"furnace-hsi", "hose.split", "flite-kal16", "", "fixed", "replace-hose"},                     // behind a pressure switch that stays open
	{"heater-millivolt", "thermocouple.weak", "flite-awb", "", "fixed", "replace-thermocouple"},   // no mains, millivolts
	{"furnace-hsi", "batteries.dead", "espeak-us-f3", "", "fixed", "change-batteries"},            // free causes
	{"heater-millivolt", "thermopile.weak", "espeak-scotland", "", "fixed", "replace-thermopile"}, // another accent
	{"furnace-hsi", "furnace-switch.off", "festival-hts", "", "fixed", "switch-on"},               // a third synthesiser, where there is one
	{"furnace-hsi", "gas-cock.closed", "espeak-us-m7", "", "fixed", "open-gas-cock"},              // a faster speaker
}

// inTest is how many of them run with every test; all are figures.
const inTest = 8

func (s spoken) String() string {
	return fmt.Sprintf("%s %s", strings.TrimSuffix(s.fault+"/"+s.voice, "/"), s.says)
}

type bench struct {
	models  []*appliance.Model
	engines map[string]*appliance.Engine
	voices  []hearbench.Voice
}

var open = sync.OnceValues(func() (*bench, error) {
	models, err := flows.Builtin()
	if err != nil {
		return nil, err
	}
	b := &bench{models: models, engines: map[string]*appliance.Engine{}, voices: hearbench.Voices()}
	for _, m := range models {
		if b.engines[m.ID], err = appliance.Compile(m); err != nil {
			return nil, err
		}
	}
	return b, nil
})

// play leads one job beside a fan.
func play(t *testing.T, s spoken, snr float64, seed uint64) *e2e.Result {
	t.Helper()
	if _, err := model.Locate(); err != nil {
		t.Skipf("the speech files are missing: %v", err)
	}
	b, err := open()
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(b.models, func(m *appliance.Model) bool { return m.ID == s.appliance })
	v := slices.IndexFunc(b.voices, func(v hearbench.Voice) bool { return v.Name == s.voice })
	if v < 0 {
		t.Skipf("this machine has no voice %s", s.voice)
	}
	m := b.models[i]
	j := e2e.Job{Dir: t.TempDir(), Model: m, Engine: b.engines[m.ID], Voice: b.voices[v], Noise: "fan", SNR: snr, Seed: seed,
		Speech: app.Recogniser(model.Locate)}
	if s.fault != "" {
		k := slices.IndexFunc(m.Modes, func(x appliance.Mode) bool { return x.Full == s.fault })
		if k < 0 {
			t.Fatalf("%s has no fault %s", m.ID, s.fault)
		}
		j.Modes = []int{k}
	}
	if step, answer, ok := strings.Cut(s.says, "="); ok {
		if !slices.ContainsFunc(m.Checks, func(c appliance.Check) bool { return c.ID == step }) {
			t.Fatalf("%s has no check %s", m.ID, step)
		}
		j.Says = map[string][]string{step: {answer}}
	}
	var log bytes.Buffer
	j.Out, j.Trace = &log, &log
	res, err := e2e.Play(t.Context(), j)
	if dir := os.Getenv("LISTEN"); dir != "" { // to read what was heard
		name := fmt.Sprintf("%s/%s_%s_%g_%d.log", dir, strings.ReplaceAll(s.fault, ".", "-"), s.voice, snr, seed)
		if err := os.WriteFile(name, log.Bytes(), 0o644); err != nil {
			t.Error(err)
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%s at %g dB: %s, mended %v; %.1f min of sound, %d sayings, %d again, %d taken back, %d tapped", s, snr, res.View.Ended, res.Mended,
		res.Seconds/60, res.Said, res.Repeated, res.Objected, res.Tapped)
	return res
}

// right tells whether a job ended as it must, with nothing else repaired and nothing left open.
func (s spoken) right(r *e2e.Result) bool {
	var want []string
	if s.mended != "" {
		want = []string{s.mended}
	}
	return r.View.State == "ended" && r.View.Ended == s.outcome && slices.Equal(r.Mended, want) && (len(r.View.Open) == 0 || s.outcome == "emergency")
}

func TestJobsBySound(t *testing.T) {
	for _, s := range jobs[:inTest] {
		t.Run(s.String(), func(t *testing.T) {
			t.Parallel()
			if r := play(t, s, 15, 1); !s.right(r) {
				t.Errorf("ended %q (%s), mended %v, open %v; want %s, %s", r.View.Ended, r.View.State, r.Mended, r.View.Open, s.outcome, s.mended)
			}
		})
	}
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		for _, c := range []struct {
			name, target string
			snr          float64
			seed         uint64
		}{
			{"job.spoken_right_pct", ">= 100", 15, 2}, // another noise than the tests have
			{"job.spoken_right_clean_pct", "reported", math.Inf(1), 2},
			{"job.spoken_right_10db_pct", "reported", 10, 2},
		} {
			var mu sync.Mutex
			right, n, said, again, back, taps, minutes := 0, 0, 0, 0, 0, 0, 0.0
			t.Run(fmt.Sprintf("%g dB", c.snr), func(t *testing.T) {
				for _, s := range jobs {
					t.Run(s.String(), func(t *testing.T) {
						t.Parallel()
						r := play(t, s, c.snr, c.seed)
						mu.Lock()
						defer mu.Unlock()
						n, said, again, back, taps, minutes = n+1, said+r.Said, again+r.Repeated, back+r.Objected, taps+r.Tapped, minutes+r.Seconds/60
						if s.right(r) {
							right++
						} else {
							t.Logf("WRONG: %s, open %v", r.View.State, r.View.Open)
						}
					})
				}
			})
			if n == 0 {
				continue
			}
			add(c.name, 100*float64(right)/float64(n), "%", c.target, n)
			if c.snr == 15 {
				add("job.spoken_again_pct", 100*float64(again)/float64(said), "%", "reported", said)
				add("job.spoken_taken_back_pct", 100*float64(back)/float64(said), "%", "reported", said)
				add("job.spoken_tapped", float64(taps), "", "reported", n)
				add("job.spoken_minutes", minutes/float64(n), "min", "reported", n)
			}
		}
	})
}
