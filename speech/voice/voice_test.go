package voice_test

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"readback/speech/voice"
)

func TestNone(t *testing.T) {
	v, err := voice.FindIn(func(string) (string, error) { return "", exec.ErrNotFound })
	if v != nil || !errors.Is(err, voice.ErrNone) {
		t.Errorf("%v, %v", v, err)
	}
}

func TestBroken(t *testing.T) {
	v, err := voice.FindIn(func(string) (string, error) { return "/bin/false", nil })
	if err != nil {
		t.Fatal(err)
	}
	if _, err := v.Say(context.Background(), "one", voice.Style{}); err == nil {
		t.Error("a program that fails: no error")
	}
	v, err = voice.FindIn(func(string) (string, error) { return "/bin/true", nil })
	if err != nil {
		t.Fatal(err)
	}
	if _, err := v.Say(context.Background(), "one", voice.Style{}); err == nil {
		t.Error("a program that writes nothing: no error")
	}
}

// A program that hangs, that leaves a child holding its pipe, or that writes without end costs one saying and some seconds, and nothing is left of it.
func TestMisbehaving(t *testing.T) {
	if _, err := exec.LookPath("sh"); err != nil {
		t.Skip("no shell on this system: misbehaving programs are made with it")
	}
	for _, tt := range []struct {
		name, script string
		want         error
	}{
		{"hangs", "exec sleep 60", voice.ErrSlow},
		{"leaves a child", "sleep 60 & exit 0", nil},
		{"writes without end", `for f; do :; done; exec cat /dev/zero > "$f"`, voice.ErrLarge},
		{"shouts", "yes error >&2", voice.ErrSlow},
		{"dies", "kill -9 $$", nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			program := filepath.Join(t.TempDir(), "flite")
			if err := os.WriteFile(program, []byte("#!/bin/sh\n"+tt.script+"\n"), 0o755); err != nil {
				t.Fatal(err)
			}
			v, err := voice.FindIn(func(name string) (string, error) {
				if name != "flite" {
					return "", exec.ErrNotFound
				}
				return program, nil
			})
			if err != nil {
				t.Fatal(err)
			}
			began := time.Now()
			_, err = v.Say(context.Background(), "one", voice.Style{})
			if err == nil || tt.want != nil && !errors.Is(err, tt.want) {
				t.Errorf("%v", err)
			}
			if took := time.Since(began); took > 40*time.Second {
				t.Errorf("it took %v", took)
			}
		})
	}
}

// Where one voice fails and another is installed, the other speaks.
func TestOtherVoice(t *testing.T) {
	v, err := voice.FindIn(func(name string) (string, error) {
		if name == "espeak-ng" {
			return "/bin/false", nil
		}
		return exec.LookPath(name)
	})
	if _, ferr := exec.LookPath("flite"); ferr != nil {
		t.Skip("flite is not installed")
	}
	if err != nil {
		t.Fatal(err)
	}
	if pcm, err := v.Say(context.Background(), "one two", voice.Style{}); err != nil || len(pcm) < voice.Rate/4 {
		t.Errorf("%d samples, %v", len(pcm), err)
	}
}

func TestSay(t *testing.T) {
	for _, name := range []string{"espeak-ng", "flite"} {
		t.Run(name, func(t *testing.T) {
			v, err := voice.FindIn(func(n string) (string, error) {
				if n != name {
					return "", exec.ErrNotFound
				}
				return exec.LookPath(n)
			})
			if err != nil {
				t.Skip(name + " is not installed")
			}
			ctx := context.Background()
			say := func(text string, s voice.Style) int {
				t.Helper()
				pcm, err := v.Say(ctx, text, s)
				if err != nil {
					t.Fatal(err)
				}
				return len(pcm)
			}
			plain := say("Power is off and proved. Meter on ohms.", voice.Style{})
			if sec := plain / voice.Rate; sec < 1 || sec > 6 {
				t.Errorf("%d samples", plain)
			}
			if slow := say("Power is off and proved. Meter on ohms.", voice.Style{Slow: true}); slow < plain+voice.Rate/2 {
				t.Errorf("slow has %d samples, plain %d", slow, plain)
			}
			if n := say("-w /tmp/x --help", voice.Style{Level: voice.Danger}); n == 0 {
				t.Error("a text that looks like options is not spoken")
			}
			if n := say("  ", voice.Style{}); n != 0 {
				t.Error("silence has samples")
			}
			cut, cancel := context.WithCancel(ctx)
			cancel()
			if _, err := v.Say(cut, "one two three", voice.Style{}); !errors.Is(err, context.Canceled) {
				t.Errorf("cut off: %v", err)
			}
		})
	}
}
