// Package voice speaks on a computer: espeak-ng, or else flite, runs as a process of its own and gives samples. The text goes
// through standard input, so that no text can be taken for an option.
package voice

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"

	"readback/speech/audio"
)

// Rate is the sampling rate of what Say returns, in Hz.
const Rate = 16000

// ErrNone: no synthesiser is installed.
var ErrNone = errors.New(`voice: no voice is installed; "apt-get install espeak-ng" brings one. Everything is shown on the page meanwhile`)

// Level tells how a text is to be said.
type Level int

const (
	Plain   Level = iota
	Caution       // a little slower
	Danger        // higher and louder, not faster
)

// Style is how a text is said.
type Style struct {
	Level Level
	Slow  bool // the person asked for a slower voice: slower words and longer gaps between phrases
}

// Words a minute; 150 to 200 are comfortable at any age (Sutton 1995).
const (
	wordsPlain   = 155
	wordsCaution = 145
	wordsSlow    = 135
)

// Voice is one installed synthesiser.
type Voice struct {
	program string
	flite   bool
}

// Find returns the first synthesiser that is installed, or ErrNone.
func Find() (*Voice, error) { return FindIn(exec.LookPath) }

// FindIn is Find with another way to look up a program.
func FindIn(look func(string) (string, error)) (*Voice, error) {
	for _, name := range []string{"espeak-ng", "flite"} {
		if p, err := look(name); err == nil {
			return &Voice{program: p, flite: name == "flite"}, nil
		}
	}
	return nil, ErrNone
}

// Name is the program that speaks.
func (v *Voice) Name() string { return v.program }

func (v *Voice) args(s Style, out string) []string {
	rate := wordsPlain
	switch {
	case s.Slow:
		rate = wordsSlow
	case s.Level >= Caution:
		rate = wordsCaution
	}
	if v.flite {
		// flite speaks about 170 words a minute when its stretch is 1.
		return []string{"-voice", "slt", "--setf", "duration_stretch=" + strconv.FormatFloat(170/float64(rate), 'f', 2, 64), "-o", out}
	}
	pitch, loud := "50", "100"
	if s.Level == Danger {
		pitch, loud = "62", "150"
	}
	args := []string{"-v", "en-us", "-s", strconv.Itoa(rate), "-p", pitch, "-a", loud, "--stdin", "-w", out}
	return args
}

// Say returns the text as 16 kHz mono samples. It takes some ten milliseconds a sentence, and is cut off by ctx. An empty text is no sound.
func (v *Voice) Say(ctx context.Context, text string, s Style) ([]int16, error) {
	text = strings.Join(strings.Fields(text), " ")
	if text == "" {
		return nil, nil
	}
	if !s.Slow {
		return v.synth(ctx, text, s)
	}
	// Slower words alone are heard worse than slower words with gaps between the phrases.
	var pcm []int16
	for _, p := range phrases(text) {
		part, err := v.synth(ctx, p, s)
		if err != nil {
			return nil, err
		}
		pcm = append(append(pcm, part...), make([]int16, Rate*4/10)...)
	}
	return pcm, nil
}

// phrases splits at commas and ends of sentences.
func phrases(text string) []string {
	var out []string
	start := 0
	for i, r := range text {
		if strings.ContainsRune(".,;:?!", r) && (i+1 == len(text) || text[i+1] == ' ') {
			if p := strings.TrimSpace(text[start : i+1]); p != "" {
				out = append(out, p)
			}
			start = i + 1
		}
	}
	if p := strings.TrimSpace(text[start:]); p != "" {
		out = append(out, p)
	}
	return out
}

func (v *Voice) synth(ctx context.Context, text string, s Style) ([]int16, error) {
	f, err := os.CreateTemp("", "say-*.wav")
	if err != nil {
		return nil, fmt.Errorf("voice: %w", err)
	}
	defer os.Remove(f.Name())
	defer f.Close()
	cmd := exec.CommandContext(ctx, v.program, v.args(s, f.Name())...)
	cmd.Stdin = strings.NewReader(text + "\n")
	var msg bytes.Buffer
	cmd.Stderr = &msg
	if err := cmd.Run(); err != nil {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		return nil, fmt.Errorf("voice: %s: %w: %s", v.program, err, strings.TrimSpace(msg.String()))
	}
	pcm, err := audio.ReadWAV(f)
	if err != nil {
		return nil, fmt.Errorf("voice: what %s wrote: %w", v.program, err)
	}
	return pcm, nil
}
