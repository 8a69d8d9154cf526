//go:build unix

package rescore

import (
	"bytes"
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"readback/speech"
	"readback/speech/audio"
	"readback/speech/model"
	"readback/speech/onnx"
)

func open(t *testing.T) *Rescorer {
	t.Helper()
	f, err := model.Locate()
	if err != nil {
		t.Skip(err)
	}
	if f.Rescorer == (model.Rescorer{}) {
		t.Skip(`the rescorer's files are not here; "make speech" fetches them`)
	}
	j, err := Open(f.Rescorer.Runtime, f.Rescorer.Model)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { j.Close() })
	return j
}

// say is synthesised speech at 16 kHz.
func say(t *testing.T, text string) []int16 {
	t.Helper()
	wav := filepath.Join(t.TempDir(), "say.wav")
	if out, err := exec.Command("espeak-ng", "-v", "en-us", "-w", wav, text).CombinedOutput(); err != nil {
		t.Skipf("espeak-ng is not here: %v %s", err, out)
	}
	b, err := os.ReadFile(wav)
	if err != nil {
		t.Fatal(err)
	}
	pcm, err := audio.ReadWAV(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return pcm
}

// What was said is likelier than what sounds like it, however it is written, and in whatever order and number the texts come.
func TestScore(t *testing.T) {
	j := open(t)
	for _, c := range []struct {
		say  string
		like []string // the first was said
	}{
		{"twenty six point four volts", []string{"Twenty six point four volts.", "Twenty five point four volts.", "Twenty six point oh volts.", "Sixty point four volts."}},
		{"fifteen ohms", []string{"15 ohms.", "50 ohms.", "59 ohms."}},
		{"five hundred ninety four milli volts", []string{"Five hundred ninety four millivolts.", "I hundred ninety four millivolts.", "Nine hundred ninety four millivolts."}},
	} {
		pcm := say(t, c.say)
		logs, err := j.Score(pcm, c.like)
		if err != nil {
			t.Fatal(err)
		}
		for i, l := range logs {
			if l > 0 || math.IsNaN(l) || i > 0 && l >= logs[0] {
				t.Errorf("%q: %q has %.2f, %q %.2f", c.say, c.like[0], logs[0], c.like[i], l)
			}
			alone, err := j.Score(pcm, c.like[i:i+1])
			if err != nil || math.Abs(alone[0]-l) > 1 { // the networks' numbers have 8 bits, scaled by the largest of all rows
				t.Errorf("%q alone: %.2f, among others %.2f (%v)", c.like[i], alone[0], l, err)
			}
		}
	}
}

// What was said is heard without anybody proposing it, in the spelling that the phrases have.
func TestWords(t *testing.T) {
	j := open(t)
	for _, want := range []string{"the smoke alarm just went off", "my hand is stuck in the door", "don't touch that"} {
		if got, err := j.Words(say(t, want)); err != nil || got != want {
			t.Errorf("%q is heard as %q (%v)", want, got, err)
		}
	}
	for _, n := range []int{0, least - 1, most + 1} {
		if _, err := j.Words(make([]int16, n)); err == nil {
			t.Errorf("%d samples are heard", n)
		}
	}
	noise := make([]int16, most)
	for i, x := 0, uint32(1); i < len(noise); i++ {
		x = x*1664525 + 1013904223
		noise[i] = int16(x >> 18)
	}
	if got, err := j.Words(noise); err != nil || len(got) > 9*7*8 { // it ends, whatever it hears
		t.Errorf("noise is heard as %q (%v)", got, err)
	}
}

func TestScoreBad(t *testing.T) {
	j := open(t)
	sound := make([]int16, speech.Rate)
	logs, err := j.Score(sound, []string{"Ten volts.", "\U0010ffff"})
	if err != nil || !math.IsInf(logs[1], -1) || math.IsInf(logs[0], 0) {
		t.Errorf("a text that cannot be spelled: %v, %v", logs, err)
	}
	if logs, err := j.Score(sound, nil); err != nil || len(logs) != 0 {
		t.Errorf("no text: %v, %v", logs, err)
	}
	for _, n := range []int{0, 1, least - 1, most + 1} {
		if _, err := j.Score(make([]int16, n), []string{"Ten."}); err == nil {
			t.Errorf("%d samples: no error", n)
		}
	}
	for _, n := range []int{least, most} {
		if _, err := j.Score(make([]int16, n), []string{"Ten."}); err != nil {
			t.Errorf("%d samples: %v", n, err)
		}
	}
	j.Close()
	j.Close()
	if _, err := j.Score(sound, []string{"Ten."}); !errors.Is(err, speech.ErrClosed) {
		t.Errorf("after Close: %v", err)
	}
}

func TestOpenBad(t *testing.T) {
	f, err := model.Locate()
	if err != nil || f.Rescorer == (model.Rescorer{}) {
		t.Skip(`the rescorer's files are not here; "make speech" fetches them`)
	}
	empty := t.TempDir()
	if _, err := Open(f.Rescorer.Runtime, empty); !errors.Is(err, errModel) {
		t.Errorf("no model: %v", err)
	}
	raw, err := os.ReadFile(filepath.Join(f.Rescorer.Model, "tokenizer.bin"))
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []string{"tokenizer.bin", "encoder_model.ort", "decoder_model_merged.ort"} {
		b := []byte("no network")
		if n == "tokenizer.bin" {
			b = raw
		}
		if err := os.WriteFile(filepath.Join(empty, n), b, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := Open(f.Rescorer.Runtime, empty); !errors.Is(err, errModel) {
		t.Errorf("damaged networks: %v", err)
	}
	if _, err := Open(f.Library, f.Rescorer.Model); !errors.Is(err, onnx.ErrLibrary) {
		t.Errorf("another library: %v", err)
	}
	if _, err := Open(filepath.Join(empty, "none.so"), f.Rescorer.Model); err == nil {
		t.Error("no library: no error")
	}
	if From(model.Rescorer{Runtime: f.Rescorer.Runtime, Model: empty}) != nil {
		t.Error("a rescorer that does not load must be none")
	}
}

// The sum over the vocabulary is taken with a shortcut; it stays near the exact one.
func TestLogSum(t *testing.T) {
	x := make([]float32, 32768)
	for spread := range 4 {
		exact := 0.0
		for i := range x {
			x[i] = float32(math.Sin(float64(i*i))) * float32(4*spread+1)
			exact += math.Exp(float64(x[i]))
		}
		if got, want := logSum(x), math.Log(exact); math.Abs(got-want) > 0.03 {
			t.Errorf("spread %d: %.3f, want %.3f", spread, got, want)
		}
	}
}

func FuzzTokens(f *testing.F) {
	f.Add([]byte("\x05<unk>\x03<s>\x04</s>\x01a\x03\xe2\x96\x81"), "a a")
	f.Add([]byte{200}, "x")
	f.Fuzz(func(t *testing.T, b []byte, text string) {
		k, err := readTokens(b)
		if err != nil {
			return
		}
		for _, id := range k.spell(text) {
			if id < 0 {
				t.Errorf("token %d", id)
			}
		}
	})
}
