// Package cue makes the short sounds that tell how something was taken: heard, accepted, ask, refused, hold, resume, timer,
// danger. They are computed, not recorded; nobody else's sound is in them.
package cue

import (
	"fmt"
	"math"
	"sort"
)

// Rate is the sampling rate of a cue in Hz.
const Rate = 16000

// tone is one pulse; Hz 0 is a gap.
type tone struct {
	hz float64
	ms int
}

// sound is a cue: rhythm first, then pitch. Pitches lie between 390 and 780 Hz with four harmonics below 4 kHz, away from a
// meter's beep of 2 to 4 kHz (that range: from memory).
type sound struct {
	tones []tone
	db    float64 // against the voice
}

const (
	gap     = 50   // ms between pulses
	pause   = 150  // ms between the groups of the danger cue
	voiceDB = -20. // dBFS, the voice's own level
)

var sounds = map[string]sound{
	"heard":    {[]tone{{620, 80}}, -12},
	"accepted": {[]tone{{520, 60}, {0, gap}, {780, 100}}, -9},
	"ask":      {[]tone{{520, 80}, {0, gap}, {520, 80}}, -9},
	"refused":  {[]tone{{520, 80}, {0, gap}, {390, 240}}, -6},
	"hold":     {[]tone{{620, 70}, {0, gap}, {520, 70}, {0, gap}, {440, 70}}, -12},
	"resume":   {[]tone{{440, 70}, {0, gap}, {520, 70}, {0, gap}, {620, 70}}, -12},
	"timer":    {[]tone{{660, 120}, {0, gap}, {660, 120}, {0, gap}, {660, 120}}, -3},
	"danger":   {[]tone{{620, 110}, {0, gap}, {620, 110}, {0, gap}, {620, 110}, {0, pause}, {620, 110}, {0, gap}, {620, 110}}, 3},
}

// IDs lists the cues by name.
func IDs() []string {
	var out []string
	for id := range sounds {
		out = append(out, id)
	}
	sort.Strings(out)
	return out
}

// PCM returns a cue as 16 kHz mono samples. The same id gives the same samples.
func PCM(id string) ([]int16, error) {
	s, ok := sounds[id]
	if !ok {
		return nil, fmt.Errorf("cue: there is no cue %q", id)
	}
	var out []int16
	rms := math.Pow(10, (voiceDB+s.db)/20)
	for _, t := range s.tones {
		out = append(out, t.pcm(rms)...)
	}
	return out, nil
}

// harmonics are the amplitudes of the first four partials; their sum of squares is 1, so that the tone's effective value is 1/√2.
var harmonics = func() (h [4]float64) {
	sum := 0.0
	for i := range h {
		h[i] = 1 / float64(i+1)
		sum += h[i] * h[i]
	}
	for i := range h {
		h[i] /= math.Sqrt(sum)
	}
	return h
}()

func (t tone) pcm(rms float64) []int16 {
	n := Rate * t.ms / 1000
	out := make([]int16, n)
	if t.hz == 0 {
		return out
	}
	const edge = Rate * 8 / 1000 // soft edges of 8 ms, so that nothing clicks
	for i := range out {
		v := 0.0
		for k, a := range harmonics {
			v += a * math.Sin(2*math.Pi*t.hz*float64(k+1)*float64(i)/Rate)
		}
		env := math.Min(1, math.Min(float64(i), float64(n-1-i))/edge)
		out[i] = int16(math.Round(32767 * math.Max(-1, math.Min(1, v*math.Sqrt2*rms*env))))
	}
	return out
}
