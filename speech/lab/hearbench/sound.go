// Package hear measures hearing: synthesised voices say phrases, noise made by seed is added, and what the real recogniser
// and the real policy make of them is counted.
package hearbench

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"readback/speech/audio"
)

// Voice is one synthesiser with its settings.
type Voice struct {
	Name string
	Args []string // program and arguments; the text comes on standard input, WAV leaves on standard output or in the file $OUT
}

// voices are those Debian's espeak-ng and flite bring along.
var voices = []Voice{
	{"flite-slt", []string{"flite", "-voice", "slt", "-o", "$OUT"}},
	{"flite-rms", []string{"flite", "-voice", "rms", "-o", "$OUT"}},
	{"flite-awb", []string{"flite", "-voice", "awb", "-o", "$OUT"}},
	{"flite-kal16", []string{"flite", "-voice", "kal16", "-o", "$OUT"}},
	{"espeak-us", []string{"espeak-ng", "-v", "en-us", "-s", "150", "--stdin", "-w", "$OUT"}},
	{"espeak-gb", []string{"espeak-ng", "-v", "en-gb", "-s", "145", "--stdin", "-w", "$OUT"}},
	{"espeak-us-f3", []string{"espeak-ng", "-v", "en-us+f3", "-s", "150", "-p", "60", "--stdin", "-w", "$OUT"}},
	{"espeak-us-m7", []string{"espeak-ng", "-v", "en-us+m7", "-s", "160", "--stdin", "-w", "$OUT"}},
	{"espeak-scotland", []string{"espeak-ng", "-v", "en-gb-scotland", "-s", "150", "--stdin", "-w", "$OUT"}},
	{"festival-kal", []string{"text2wave", "-o", "$OUT", "-eval", "(voice_kal_diphone)"}},
	{"festival-ked", []string{"text2wave", "-o", "$OUT", "-eval", "(voice_ked_diphone)"}},
	{"festival-hts", []string{"text2wave", "-o", "$OUT", "-eval", "(voice_cmu_us_slt_arctic_hts)"}},
}

// Voices returns those that speak on this machine.
func Voices() []Voice {
	var out []Voice
	for _, v := range voices {
		if _, err := exec.LookPath(v.Args[0]); err == nil {
			if pcm, err := v.Say("one"); err == nil && len(pcm) > 1600 {
				out = append(out, v)
			}
		}
	}
	return out
}

// sayMost is how long a voice may take over a phrase; the slowest needs seconds.
const sayMost = time.Minute

// Say returns 16 kHz samples. They are kept in the user's cache folder, because a voice takes longer than the recogniser.
func (v Voice) Say(text string) ([]int16, error) {
	sum := sha256.Sum256([]byte(strings.Join(v.Args, "\x00") + "\x00" + text))
	cache, err := os.UserCacheDir()
	if err != nil {
		return nil, err
	}
	path := filepath.Join(cache, "readback", "voices", hex.EncodeToString(sum[:12])+".pcm")
	if b, err := os.ReadFile(path); err == nil {
		return fromBytes(b), nil
	}
	tmp, err := os.CreateTemp("", "voice-*.wav")
	if err != nil {
		return nil, err
	}
	tmp.Close()
	defer os.Remove(tmp.Name())
	args := make([]string, len(v.Args))
	for i, a := range v.Args {
		args[i] = strings.Replace(a, "$OUT", tmp.Name(), 1)
	}
	ctx, cancel := context.WithTimeout(context.Background(), sayMost)
	defer cancel()
	cmd := exec.CommandContext(ctx, args[0], args[1:]...)
	cmd.Stdin = strings.NewReader(text + "\n")
	var msg bytes.Buffer
	cmd.Stderr = &msg
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("hear: voice %s: %w: %s", v.Name, err, strings.TrimSpace(msg.String()))
	}
	f, err := os.Open(tmp.Name())
	if err != nil {
		return nil, err
	}
	defer f.Close()
	pcm, err := audio.ReadWAV(f)
	if err != nil {
		return nil, fmt.Errorf("hear: voice %s: %w", v.Name, err)
	}
	if os.MkdirAll(filepath.Dir(path), 0o755) == nil {
		_ = os.WriteFile(path, ToBytes(pcm), 0o644) // only a cache
	}
	return pcm, nil
}

func fromBytes(b []byte) []int16 {
	out := make([]int16, len(b)/2)
	for i := range out {
		out[i] = int16(uint16(b[2*i]) | uint16(b[2*i+1])<<8)
	}
	return out
}

// ToBytes writes samples as a microphone gives them.
func ToBytes(pcm []int16) []byte {
	out := make([]byte, 2*len(pcm))
	for i, s := range pcm {
		out[2*i], out[2*i+1] = byte(uint16(s)), byte(uint16(s)>>8)
	}
	return out
}

// Noise makes n samples of "pink" (1/f), "fan" (falling above 150 Hz, hum at 120, 240 and 360 Hz, beating at 29 Hz) or
// "white" noise, or one of Swells, with the power of 1.
func Noise(kind string, seed uint64, n int) []float64 {
	r := rand.New(rand.NewPCG(seed, 77))
	out := make([]float64, n)
	switch kind {
	case "pink": // sum of one-pole filters, the usual refined approximation of 1/f
		var b [7]float64
		for i := range out {
			w := r.NormFloat64()
			b[0] = 0.99886*b[0] + w*0.0555179
			b[1] = 0.99332*b[1] + w*0.0750759
			b[2] = 0.96900*b[2] + w*0.1538520
			b[3] = 0.86650*b[3] + w*0.3104856
			b[4] = 0.55000*b[4] + w*0.5329522
			b[5] = -0.7616*b[5] - w*0.0168980
			out[i] = b[0] + b[1] + b[2] + b[3] + b[4] + b[5] + b[6] + w*0.5362
			b[6] = w * 0.115926
		}
	case "fan":
		a := 1 - math.Exp(-2*math.Pi*150/16000)
		y := 0.0
		phase := r.Float64() * 2 * math.Pi
		for i := range out {
			y += a * (r.NormFloat64() - y)
			t := 2 * math.Pi * float64(i) / 16000
			hum := 0.06*math.Sin(120*t+phase) + 0.04*math.Sin(240*t) + 0.02*math.Sin(360*t)
			out[i] = (y + hum) * (1 + 0.25*math.Sin(29*t))
		}
	case "tap": // water into a sink: bright noise that gurgles
		low, y := 0.0, 0.0
		for i := range out {
			w := r.NormFloat64()
			y += 0.5 * (w - y)
			low += 0.1 * (y - low)
			t := 2 * math.Pi * float64(i) / 16000
			out[i] = (y - low) * (1 + 0.3*math.Sin(7*t)*math.Sin(11.3*t))
		}
	case "dishes": // knocks that ring, some four a second
		for at := 0; at < n; at += 800 + r.IntN(6000) {
			hz, loud := 900+r.Float64()*3500, 0.3+r.Float64()
			for i := at; i < min(n, at+6000); i++ {
				t := float64(i-at) / 16000
				out[i] += loud * math.Exp(-t*30) * math.Sin(2*math.Pi*hz*t) * (1 + 0.3*math.Sin(2*math.Pi*hz*1.71*t))
			}
		}
	case "compressor": // an air conditioner: hum with harmonics, and air
		y := 0.0
		for i := range out {
			y += 0.2 * (r.NormFloat64() - y)
			t := 2 * math.Pi * float64(i) / 16000
			for h := 1.0; h < 9; h++ {
				out[i] += math.Sin(60*h*t+h*h) / h
			}
			out[i] += y
		}
	case "vacuum": // a motor's whine with its harmonics over wide noise
		for i := range out {
			t := 2 * math.Pi * float64(i) / 16000
			out[i] = 0.5*r.NormFloat64() + 0.7*math.Sin(310*t+3*math.Sin(2*t)) + 0.4*math.Sin(620*t+6*math.Sin(2*t)) + 0.3*math.Sin(1240*t)
		}
	case "wind": // in a flue: a narrow band that wanders
		var a, b float64
		for i := range out {
			hz := 350 + 180*math.Sin(2*math.Pi*float64(i)/16000*0.9) + 60*math.Sin(2*math.Pi*float64(i)/16000*2.3)
			c := 2 * math.Cos(2*math.Pi*hz/16000)
			x := 0.985*c*a - 0.985*0.985*b + r.NormFloat64()
			out[i], a, b = x, x, a
		}
	default:
		for i := range out {
			out[i] = r.NormFloat64()
		}
	}
	sum := 0.0
	for _, v := range out {
		sum += v * v
	}
	if n > 0 && sum > 0 {
		g := 1 / math.Sqrt(sum/float64(n))
		for i := range out {
			out[i] *= g
		}
	}
	return out
}

// Swells are noises without a word.
var Swells = []string{"fan", "tap", "dishes", "compressor", "vacuum", "wind"}

// Swelling is a noise that swells for two seconds every seven, from -48 dBFS to -20 dBFS: each swell looks like an utterance to a listener that goes by
// loudness alone.
func Swelling(kind string, seed uint64, seconds int) []int16 {
	n := seconds * 16000
	out := make([]int16, n)
	for i, v := range Noise(kind, seed, n) {
		at := math.Mod(float64(i)/16000, 7)
		db := -48.0
		if at > 4 && at < 6.2 {
			db += 28 * math.Pow(math.Sin(math.Pi*(at-4)/2.2), 2)
		}
		out[i] = int16(math.Max(-32768, math.Min(32767, v*32768*math.Pow(10, db/20))))
	}
	return out
}

// Clip puts speech at a level in dBFS (of its active part) into noise at a ratio in dB (an infinite one: none), with
// silence or noise of so many seconds before and after.
func Clip(speech []int16, level, snr float64, noise []float64, before, after float64) []int16 {
	nb, na := int(before*16000), int(after*16000)
	out := make([]int16, nb+len(speech)+na)
	g := math.Pow(10, (level-active(speech))/20)
	ng := 32768 * math.Pow(10, (level-snr)/20)
	for i := range out {
		v := 0.0
		if k := i - nb; k >= 0 && k < len(speech) {
			v = float64(speech[k]) * g
		}
		if !math.IsInf(snr, 1) {
			v += noise[i%len(noise)] * ng
		}
		out[i] = int16(math.Max(-32768, math.Min(32767, math.Round(v))))
	}
	return out
}

// active is the level in dBFS of the 10 ms frames within 30 dB of the loudest.
func active(pcm []int16) float64 {
	var p []float64
	top := 0.0
	for i := 0; i+160 <= len(pcm); i += 160 {
		s := 0.0
		for _, v := range pcm[i : i+160] {
			s += float64(v) * float64(v)
		}
		p = append(p, s/160)
		top = math.Max(top, s/160)
	}
	sum, n := 0.0, 0
	for _, v := range p {
		if v > 0 && v >= top/1000 {
			sum += v
			n++
		}
	}
	if n == 0 {
		return -96
	}
	return 10*math.Log10(sum/float64(n)) - 20*math.Log10(32768)
}
