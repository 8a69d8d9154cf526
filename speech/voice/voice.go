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
	"time"

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
	other   *Voice // speaks where this one fails; nil: there is none
}

// Find returns the first synthesiser that is installed, or ErrNone.
func Find() (*Voice, error) { return FindIn(exec.LookPath) }

// FindIn is Find with another way to look up a program.
func FindIn(look func(string) (string, error)) (*Voice, error) {
	var first *Voice
	for _, name := range []string{"espeak-ng", "flite"} {
		p, err := look(name)
		if err != nil {
			continue
		}
		v := &Voice{program: p, flite: name == "flite"}
		if first == nil {
			first = v
		} else if p != first.program {
			first.other = v
		}
	}
	if first == nil {
		return nil, ErrNone
	}
	return first, nil
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
// Where this voice fails and another one is installed, that one speaks.
func (v *Voice) Say(ctx context.Context, text string, s Style) ([]int16, error) {
	pcm, err := v.say(ctx, text, s)
	if err != nil && ctx.Err() == nil && v.other != nil {
		if pcm, other := v.other.say(ctx, text, s); other == nil {
			return pcm, nil
		}
	}
	return pcm, err
}

func (v *Voice) say(ctx context.Context, text string, s Style) ([]int16, error) {
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

// What one phrase may take. Judgment, no source: espeak-ng takes some ten milliseconds, and half a minute of sound is 1 MB.
const (
	maxTime  = 5 * time.Second
	maxBytes = 8 << 20
	maxNoise = 4 << 10 // of error messages
	lookEach = 20 * time.Millisecond
)

var (
	// ErrSlow: the program did not end in time. It was ended, and the next saying starts it anew.
	ErrSlow = errors.New("it did not end in time and was stopped")
	// ErrLarge: the program wrote without end. It was ended, and the next saying starts it anew.
	ErrLarge = errors.New("it wrote without end and was stopped")
)

func (v *Voice) synth(ctx context.Context, text string, s Style) ([]int16, error) {
	f, err := os.CreateTemp("", "say-*.wav")
	if err != nil {
		return nil, fmt.Errorf("voice: %w", err)
	}
	defer os.Remove(f.Name())
	defer f.Close()
	run, cancel := context.WithTimeout(ctx, maxTime)
	defer cancel()
	cmd := exec.CommandContext(run, v.program, v.args(s, f.Name())...)
	alone(cmd)
	cmd.WaitDelay = 200 * time.Millisecond // a child of it may hold the pipe open
	cmd.Stdin = strings.NewReader(text + "\n")
	msg := &limited{left: maxNoise}
	cmd.Stderr = msg
	large := false
	if err := cmd.Start(); err != nil {
		return nil, fmt.Errorf("voice: %s: %w", v.program, err)
	}
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	look := time.NewTicker(lookEach)
	defer look.Stop()
wait:
	for {
		select {
		case err = <-ended:
			break wait
		case <-look.C:
			if st, serr := os.Stat(f.Name()); serr == nil && st.Size() > maxBytes {
				large = true
				cancel()
			}
		}
	}
	_ = end(cmd) // what it left behind; mostly nothing
	switch {
	case large:
		return nil, fmt.Errorf("voice: %s: %w", v.program, ErrLarge)
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case run.Err() != nil:
		return nil, fmt.Errorf("voice: %s: %w", v.program, ErrSlow)
	case err != nil && !errors.Is(err, exec.ErrWaitDelay):
		return nil, fmt.Errorf("voice: %s: %w: %s", v.program, err, strings.TrimSpace(msg.String()))
	}
	if st, serr := os.Stat(f.Name()); serr == nil && st.Size() > maxBytes {
		return nil, fmt.Errorf("voice: %s: %w", v.program, ErrLarge)
	}
	pcm, err := audio.ReadWAV(f)
	if err != nil {
		return nil, fmt.Errorf("voice: what %s wrote: %w", v.program, err)
	}
	return pcm, nil
}

// limited keeps the beginning of what is written.
type limited struct {
	bytes.Buffer
	left int
}

func (l *limited) Write(p []byte) (int, error) {
	n := min(len(p), l.left)
	l.left -= n
	l.Buffer.Write(p[:n])
	return len(p), nil
}
