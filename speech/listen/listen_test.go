package listen_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"readback/core/utterance"
	data "readback/flows/lexicon"
	"readback/speech"
	"readback/speech/grammar"
	"readback/speech/listen"
)

type rig struct {
	ear     *listen.Ear
	common  *speech.Fake // what is heard among common words; nil: that is not asked
	fake    *speech.Fake
	opened  int
	final   []utterance.Utterance
	partial []utterance.Utterance
	words   []string
	samples int64
	at      int64 // ms
}

// newRig makes an ear over a fake recogniser that hears these sayings, one a burst of sound.
func newRig(t *testing.T, say ...string) *rig {
	t.Helper()
	return newRigAmong(t, nil, say...)
}

// newRigAmong hears something else among common words: one entry for each time that it is asked.
func newRigAmong(t *testing.T, common []string, say ...string) *rig {
	t.Helper()
	lex, err := data.Load()
	if err != nil {
		t.Fatal(err)
	}
	r := &rig{fake: &speech.Fake{}}
	for _, s := range say {
		var alts []speech.Alternative
		for i, x := range strings.Split(s, "|") {
			alts = append(alts, speech.Alternative{Text: x, Cost: float64(i)})
		}
		r.fake.Script = append(r.fake.Script, alts)
	}
	var everyday func() (speech.Recognizer, error)
	if common != nil {
		r.common = &speech.Fake{}
		for _, x := range common {
			r.common.Script = append(r.common.Script, []speech.Alternative{{Text: x}})
		}
		everyday = func() (speech.Recognizer, error) { return r.common, nil }
	}
	r.ear, err = listen.New(listen.Config{
		Background: everyday,
		New: func() (speech.Recognizer, error) {
			if r.opened++; r.opened > 1 {
				r.fake = &speech.Fake{Script: r.fake.Script}
			}
			return r.fake, nil
		},
		Parser: grammar.New(lex),
		Once:   true, // the script has each saying once
		Utterance: func(u utterance.Utterance) {
			if u.Partial {
				r.partial = append(r.partial, u)
			} else {
				r.final = append(r.final, u)
			}
		},
		Partial: func(s string) { r.words = append(r.words, s) },
	})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// feed plays sound in chunks of n samples.
func (r *rig) feed(t *testing.T, pcm []int16, n int) {
	t.Helper()
	for len(pcm) > 0 {
		k := min(n, len(pcm))
		r.samples += int64(k)
		r.at = r.samples / 16
		if err := r.ear.FeedSamples(pcm[:k], r.at); err != nil {
			t.Fatal(err)
		}
		pcm = pcm[k:]
	}
}

var random = rand.New(rand.NewPCG(1, 2))

// burst is a beating buzz over the band of speech, where a beep would be one tone, at about so many dBFS, quiet is a floor of -70 dBFS.
func burst(seconds, db float64) []int16 {
	out := make([]int16, int(seconds*16000))
	g := 32768 * math.Pow(10, db/20) * math.Sqrt2
	for i := range out {
		t := float64(i) / 16000
		v := 0.0
		for hz := 300.0; hz < 4000; hz += 300 {
			v += math.Sin(2*math.Pi*hz*t+hz*hz) / math.Sqrt(13)
		}
		out[i] = int16(max(-32768, min(32767, g*v*(0.6+0.4*math.Sin(2*math.Pi*5*t)))))
	}
	return out
}

func quiet(seconds float64) []int16 {
	out := make([]int16, int(seconds*16000))
	for i := range out {
		out[i] = int16(random.NormFloat64() * 10)
	}
	return out
}

func TestSayings(t *testing.T) {
	for _, chunk := range []int{1, 160, 441, 800, 16000, 1 << 20} {
		r := newRig(t, "twenty six volts", "off", "[unk]", "i smell gas")
		r.feed(t, quiet(2), chunk)
		for range 4 {
			r.feed(t, burst(1.2, -26), chunk)
			r.feed(t, quiet(2), chunk)
		}
		if len(r.final) != 4 {
			t.Fatalf("chunk %d: %d utterances", chunk, len(r.final))
		}
		for i, want := range []utterance.Kind{utterance.Reading, utterance.Choice, "", utterance.Emergency} {
			u := r.final[i]
			got := utterance.Kind("")
			if m := u.Best(); m != nil {
				got = m.Kind
			}
			if got != want || u.Source != "voice" || want == "" && u.Fault == "" {
				t.Errorf("chunk %d, saying %d: %+v", chunk, i, u)
			}
			start := int64(2000 + 3200*i)
			if u.Start < start-250 || u.Start > start+250 || u.End < start+900 || u.End > start+1600 {
				t.Errorf("chunk %d, saying %d: from %d to %d ms, want about %d to %d", chunk, i, u.Start, u.End, start, start+1200)
			}
			if u.SNR < 20 || u.Level < -35 || u.Level > -20 {
				t.Errorf("chunk %d, saying %d: %.0f dBFS, %.0f dB", chunk, i, u.Level, u.SNR)
			}
		}
		if len(r.partial) != 1 || r.partial[0].Best().ID != "gas" {
			t.Errorf("chunk %d: partial %+v", chunk, r.partial)
		}
	}
}

func TestEnds(t *testing.T) {
	for _, tt := range []struct {
		name, class, say string
		least, most      int64 // ms from the end of sound to the utterance
	}{
		{"complete", "number", "twenty six volts", 100, 500},
		{"open number", "number", "twenty six", 900, 1400},
		{"choice", "choice", "off", 100, 500},
		{"digits", "digits", "one two three four", 1700, 2300},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := newRig(t, tt.say)
			r.ear.Class(tt.class)
			r.feed(t, quiet(2), 160)
			r.feed(t, burst(1.5, -26), 160)
			end := r.at
			for len(r.final) == 0 && r.at < end+5000 {
				r.feed(t, quiet(0.01), 160)
			}
			if d := r.at - end; d < tt.least || d > tt.most {
				t.Errorf("%d ms, want %d to %d", d, tt.least, tt.most)
			}
		})
	}
}

func TestLongSoundIsEnded(t *testing.T) {
	r := newRig(t, "banana", "twenty")
	r.feed(t, quiet(2), 800)
	r.feed(t, burst(17, -26), 800)
	if len(r.final) != 1 || r.final[0].Fault != "long" {
		t.Fatalf("%+v", r.final)
	}
}

func TestSilenceAndBadSound(t *testing.T) {
	r := newRig(t)
	r.feed(t, make([]int16, 16000*600), 16000) // ten minutes
	dc := make([]int16, 16000*5)
	for i := range dc {
		dc[i] = 12000
	}
	r.feed(t, dc, 800)
	r.feed(t, quiet(3), 800)
	if len(r.final)+len(r.partial) != 0 {
		t.Errorf("silence is %+v", r.final)
	}
	if err := r.ear.Feed([]byte{1, 2, 3}, 0); err == nil {
		t.Error("half a sample: no error")
	}
	if err := r.ear.Feed(nil, 0); err != nil {
		t.Error(err)
	}
	clip := burst(1.2, 12)
	r = newRig(t, "[unk]")
	r.feed(t, quiet(2), 800)
	r.feed(t, clip, 800)
	r.feed(t, quiet(2), 800)
	if len(r.final) != 1 || r.final[0].Fault != "clipped" {
		t.Errorf("clipped: %+v", r.final)
	}
}

// The engine dies in mid-word: it is opened again, and the saying is not lost.
func TestEngineDies(t *testing.T) {
	r := newRig(t, "twenty six volts")
	r.feed(t, quiet(2), 800)
	r.feed(t, burst(0.6, -26), 800)
	r.fake.Err = errors.New("killed")
	r.feed(t, burst(0.6, -26), 800)
	r.feed(t, quiet(2), 800)
	if r.opened != 2 || len(r.final) != 1 || r.final[0].Text != "twenty six volts" {
		t.Errorf("opened %d times, heard %+v", r.opened, r.final)
	}
}

func TestEngineStaysDead(t *testing.T) {
	gone := errors.New("gone")
	n := 0
	fake := &speech.Fake{}
	ear, err := listen.New(listen.Config{New: func() (speech.Recognizer, error) {
		if n++; n > 1 {
			return nil, gone
		}
		return fake, nil
	}})
	if err != nil {
		t.Fatal(err)
	}
	if err := ear.FeedSamples(quiet(2), 0); err != nil {
		t.Fatal(err)
	}
	fake.Err = errors.New("killed")
	if err := ear.FeedSamples(burst(1, -26), 0); !errors.Is(err, gone) || !errors.Is(err, fake.Err) {
		t.Errorf("%v", err)
	}
}

// What our own voice says does not come back as an answer; an emergency that it did not say does.
func TestOwnVoice(t *testing.T) {
	for _, tt := range []struct {
		name, prompt, say string
		after             float64 // s from the end of the voice to the sound; negative: while it speaks
		want              int     // final utterances
	}{
		{"echo", "is the switch on or off", "on", -1, 0},
		{"echo tail", "is the switch on or off", "off", 0.05, 0},
		{"answer", "is the switch on or off", "off", 0.8, 1},
		{"quick answer in words of the question", "gas smell none or some", "none", 0.2, 1},
		{"its last words", "gas smell none or some", "some", 0.2, 0},
		{"emergency over it", "is the switch on or off", "i smell gas", -1, 1},
		{"quiet over it", "is the switch on or off", "stop", -1, 1},
		{"emergency words of its own", "say fire when you see fire", "fire", -1, 0},
		{"reading over it", "is the switch on or off", "twenty six volts", -1, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := newRig(t, tt.say)
			r.feed(t, quiet(2), 160)
			r.ear.Speaking(tt.prompt)
			r.feed(t, quiet(1), 160)
			if tt.after >= 0 {
				r.ear.Speaking("")
				r.feed(t, quiet(tt.after), 160)
			}
			r.feed(t, burst(1, -26), 160)
			r.feed(t, quiet(2), 160)
			if len(r.final) != tt.want {
				t.Errorf("%d utterances: %+v", len(r.final), r.final)
			}
		})
	}
}

func TestPartialEmergencyIsFast(t *testing.T) {
	r := newRig(t, "i smell gas in here and it is strong")
	r.fake.Step = 1600
	r.feed(t, quiet(2), 160)
	said := r.at + 300 + 200 // three words at 0.1 s, and the time it must stand
	for len(r.partial) == 0 && r.at < said+3000 {
		r.feed(t, burst(0.01, -26), 160)
	}
	if d := r.at - said; d > 300 {
		t.Errorf("told %d ms after the words", d)
	}
}

// What the grammar of the work makes an alarm of talk is acted on only when it is one among common words too; else it is asked about.
func TestAlarmAmongCommonWords(t *testing.T) {
	for _, tt := range []struct {
		name, say string
		common    []string
		doubt     bool
	}{
		{"stands", "i smell gas in here", []string{"i smell gas in here", "i smell gas in here"}, false},
		{"is something else", "i got shocked", []string{"i got a doctor's", "i got a doctor's appointment"}, true},
		{"is the lesser part", "there is smoke in here", []string{"the smoke is what my brother told me about on sunday morning", "there is smoke is what my brother told me about on sunday morning at home"}, true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := newRigAmong(t, tt.common, tt.say)
			r.feed(t, quiet(2), 160)
			r.feed(t, burst(1.5, -26), 160)
			r.feed(t, quiet(2), 160)
			acted, asked := false, false
			for _, u := range append(r.partial, r.final...) {
				for _, m := range u.Meanings {
					if m.Kind == utterance.Emergency {
						acted, asked = acted || !m.Doubt, asked || m.Doubt
					}
				}
			}
			if acted == tt.doubt || asked != tt.doubt {
				t.Errorf("acted %v, asked %v: %+v, then %+v", acted, asked, r.partial, r.final)
			}
		})
	}
}
