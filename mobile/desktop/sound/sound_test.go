//go:build sound

package sound_test

import (
	"context"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"readback/mobile/desktop/sound"
)

// A process opens one context only, so each case runs in a child of its own.
func child(t *testing.T, mode, conf string) string {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run=^TestChild$", "-test.v")
	cmd.Env = append(os.Environ(), "SOUND_CHILD="+mode, "ALSA_CONFIG_PATH="+conf)
	timer := time.AfterFunc(20*time.Second, func() { _ = cmd.Process.Kill() })
	defer timer.Stop()
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return string(out)
}

const tone, seconds = 440.0, 2

func TestChild(t *testing.T) {
	mode := os.Getenv("SOUND_CHILD")
	if mode == "" {
		t.Skip("SOUND_CHILD is not set: this is the inside of the other tests")
	}
	p, err := sound.Open()
	if mode == "none" {
		if err == nil {
			t.Fatal("a machine without a device opened one")
		}
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	pcm := make([]int16, seconds*16000)
	for i := range pcm {
		pcm[i] = int16(16000 * math.Sin(2*math.Pi*tone*float64(i)/16000))
	}
	if err := p.Play(context.Background(), pcm, 16000); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 100*time.Millisecond)
	defer cancel()
	began := time.Now()
	if err := p.Play(ctx, pcm, 16000); err == nil || time.Since(began) > time.Second {
		t.Errorf("hushed after %v with %v", time.Since(began), err)
	}
}

// What is played arrives whole: the tone's pitch and about its length, in a file that ALSA writes at the pace of a device.
func TestPlayed(t *testing.T) {
	if _, err := exec.LookPath("pv"); err != nil {
		t.Skip("pv is missing: apt-get install pv")
	}
	dir := t.TempDir()
	raw, conf := filepath.Join(dir, "out.raw"), filepath.Join(dir, "asound.conf")
	text := fmt.Sprintf("pcm.!default { type plug\n slave { format S16_LE rate 48000 channels 2\n pcm { type file slave.pcm { type null } file \"|pv -q -L 192000 > %s\" format \"raw\" } } }\n", raw)
	if err := os.WriteFile(conf, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	child(t, "play", conf)
	data, err := os.ReadFile(raw)
	if err != nil {
		t.Fatal(err)
	}
	loud, rise := 0, 0
	var periods []int // samples between rising edges; gaps of a slow sink are outliers
	last := int16(0)
	for i := 0; i+4 <= len(data); i += 4 {
		v := int16(binary.LittleEndian.Uint16(data[i:]))
		if v > 500 || v < -500 {
			loud++
		}
		if last < 0 && v >= 0 {
			periods = append(periods, i/4-rise)
			rise = i / 4
		}
		if v != 0 {
			last = v
		}
	}
	if s := float64(loud) / 48000; s < 1.5 || s > 3 {
		t.Errorf("%.2f s of sound arrived, want about %d", s, seconds)
	}
	if len(periods) == 0 {
		t.Fatal("no tone arrived")
	}
	slices.Sort(periods)
	if f := 48000 / float64(periods[len(periods)/2]); math.Abs(f-tone) > 5 {
		t.Errorf("pitch %.0f Hz, want %.0f", f, tone)
	}
}

// No device: an error, soon, and nobody hangs.
func TestNoDevice(t *testing.T) {
	conf := filepath.Join(t.TempDir(), "asound.conf")
	if err := os.WriteFile(conf, []byte("# no device at all\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	child(t, "none", conf)
}
