package hearbench

import (
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"

	"readback/speech/audio"
)

// Speaker of the wide set: a voice of the formant synthesiser with accent, speed and pitch of its own, a vocal tract, a room, a microphone and an effort.
type WideSpeaker struct {
	Voice Voice
	Tract float64 // formants are moved by this factor
	Room  float64 // reverberation time, s; 0: none
	Far   float64 // share of the sound that comes back from the room
	Phone int     // microphone curve: 0 flat, 1 thin, 2 dull, 3 telephone
	Clip  float64 // gain before the converter's limit; 1: none
	Loud  float64 // dB that the upper half is raised in a loud voice (Lombard)
}

var accents = []string{"en-us", "en-gb", "en-gb-scotland", "en-gb-x-rp", "en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-029", "en-us-nyc"}
var variants = []string{"", "+m1", "+m3", "+m4", "+m7", "+f1", "+f2", "+f3", "+f4", "+klatt2"}

// WideSpeakers makes n speakers by seed. Settings are drawn from what people and phones do: speed 120 to 210 words a minute, tract 0.88 to 1.15 of the
// standard one, rooms up to 0.5 s (common practice, no source).
func WideSpeakers(n int, seed uint64) []WideSpeaker {
	r := rand.New(rand.NewPCG(seed, 11))
	var out []WideSpeaker
	for i := range n {
		name := accents[r.IntN(len(accents))] + variants[r.IntN(len(variants))]
		speed, pitch := 120+r.IntN(90), 25+r.IntN(55)
		s := WideSpeaker{Tract: 0.88 + 0.27*r.Float64(), Clip: 1}
		s.Voice = Voice{fmt.Sprintf("wide-%d-%s-%d-%d", i, name, speed, pitch),
			[]string{"espeak-ng", "-v", name, "-s", fmt.Sprint(speed), "-p", fmt.Sprint(pitch), "--stdin", "-w", "$OUT"}}
		if r.IntN(3) == 0 { // the other synthesiser's recorded voices
			v := []string{"slt", "rms", "awb", "kal16"}[r.IntN(4)]
			s.Voice = Voice{fmt.Sprintf("wide-%d-%s", i, v), []string{"flite", "-voice", v, "-o", "$OUT"}}
		}
		if r.IntN(2) == 0 {
			s.Room, s.Far = 0.15+0.35*r.Float64(), 0.1+0.35*r.Float64()
		}
		s.Phone = r.IntN(4)
		if r.IntN(6) == 0 {
			s.Clip = 2 + 2*r.Float64()
		}
		if r.IntN(3) == 0 {
			s.Loud = 3 + 6*r.Float64()
		}
		out = append(out, s)
	}
	return out
}

// Held tells whether a speaker is reported on; anything that is fitted is fitted on the others.
func (s *WideSpeaker) Held() bool {
	h := fnv.New32a()
	h.Write([]byte(s.Voice.Name))
	return h.Sum32()%3 == 0
}

// Say speaks as this speaker.
func (s *WideSpeaker) Say(text string) ([]int16, error) {
	pcm, err := s.Voice.Say(text)
	if err != nil {
		return nil, err
	}
	x := make([]float64, len(pcm))
	for i, v := range pcm {
		x[i] = float64(v) / 32768
	}
	// Played faster the formants rise and the words shorten: as a smaller person speaks.
	x = audio.Resample(x, 16000, int(16000/s.Tract))
	if s.Loud > 0 {
		g, low := math.Pow(10, s.Loud/20)-1, 0.0
		for i, v := range x {
			low += 0.35 * (v - low)
			x[i] = v + g*(v-low)
		}
	}
	if s.Room > 0 {
		x = echo(x, s.Room, s.Far)
	}
	x = phone(x, s.Phone)
	top := 0.0
	for _, v := range x {
		top = math.Max(top, math.Abs(v))
	}
	for i := range x {
		x[i] = math.Max(-0.9, math.Min(0.9, x[i]/math.Max(top, 1e-9)*0.9*s.Clip))
	}
	return audio.ToInt16(x), nil
}

// echo adds a room: noise that dies away by 60 dB in rt seconds, one seed for all.
func echo(x []float64, rt, far float64) []float64 {
	r := rand.New(rand.NewPCG(3, 9))
	const taps = 60 // sparse reflections
	out := make([]float64, len(x)+int(rt*16000))
	for i, v := range x {
		out[i] += v
	}
	for range taps {
		at := r.Float64() * rt
		g := far * math.Pow(10, -3*at/rt) * r.NormFloat64() / 3
		d := int(at * 16000)
		for i, v := range x {
			out[i+d] += g * v
		}
	}
	return out
}

// phone is a microphone's curve.
func phone(x []float64, kind int) []float64 {
	var low, high float64
	for i, v := range x {
		switch kind {
		case 1: // thin: little below 400 Hz
			low += 0.15 * (v - low)
			x[i] = v - 0.8*low
		case 2: // dull: little above 2.5 kHz
			high += 0.6 * (v - high)
			x[i] = high
		case 3: // 300 to 3400 Hz
			low += 0.11 * (v - low)
			high += 0.75 * (v - low - high)
			x[i] = high
		}
	}
	return x
}
