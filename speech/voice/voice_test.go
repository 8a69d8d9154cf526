package voice_test

import (
	"context"
	"errors"
	"os/exec"
	"testing"

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
