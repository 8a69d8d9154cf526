package audio

import (
	"math"

	"gonum.org/v1/gonum/dsp/fourier"
)

// The noise reducer is a Wiener filter with the decision-directed estimate of the speech (Ephraim and Malah 1984): 32 ms
// windows every 8 ms, the noise taken from the sound before the utterance, no part damped by more than 12 dB.
const (
	Window    = 512 // samples of one spectrum
	hop       = 128
	bins      = Window/2 + 1
	smoothing = 0.96
	floorGain = 0.25 // -12 dB
)

// window is the root of a Hann window.
var window = func() (w [Window]float64) {
	for i := range w {
		w[i] = math.Sqrt(0.5 - 0.5*math.Cos(2*math.Pi*float64(i)/Window))
	}
	return w
}()

// overlap is the sum of the squared windows at any sample: a Hann window every quarter of its length.
const overlap = Window / hop / 2

// Spectrum works out spectra of Window samples. It is used by one goroutine at a time.
type Spectrum struct {
	fft *fourier.FFT
	in  [Window]float64
	out [bins]complex128
}

// NewSpectrum makes one.
func NewSpectrum() *Spectrum { return &Spectrum{fft: fourier.NewFFT(Window)} }

// Of is the spectrum of the first Window samples under the root of a Hann window, from 0 to half the sampling rate. It stands until the next call.
func (s *Spectrum) Of(pcm []int16) []complex128 {
	for i := range s.in {
		s.in[i] = float64(pcm[i]) * window[i]
	}
	return s.fft.Coefficients(s.out[:], s.in[:])
}

// ReduceNoise returns pcm with steady noise damped; noise is sound without speech just before it. Less than 0.1 s of noise
// gives pcm back as it is.
func ReduceNoise(pcm, noise []int16) []int16 {
	if len(noise) < 1600 || len(pcm) < Window {
		return pcm
	}
	s := NewSpectrum()
	var psd [bins]float64
	n := 0
	for at := 0; at+Window <= len(noise); at += hop {
		for k, c := range s.Of(noise[at:]) {
			psd[k] += sq(c)
		}
		n++
	}
	for k := range psd {
		psd[k] = psd[k]/float64(n) + 1e-12
	}
	out := make([]float64, len(pcm)+2*Window)
	padded := make([]int16, len(pcm)+2*Window)
	copy(padded[Window:], pcm)
	var last [bins]float64 // speech power over noise of the frame before
	for at := 0; at+Window <= len(padded); at += hop {
		spectrum := s.Of(padded[at:])
		for k, c := range spectrum {
			post := sq(c) / psd[k]
			prior := smoothing*last[k] + (1-smoothing)*math.Max(0, post-1)
			g := prior / (1 + prior)
			last[k] = g * g * post
			spectrum[k] *= complex(math.Max(floorGain, g), 0)
		}
		for i, x := range s.fft.Sequence(s.in[:], spectrum) {
			out[at+i] += x / Window * window[i] / overlap
		}
	}
	res := make([]int16, len(pcm))
	for i := range res {
		res[i] = int16(math.Max(-32768, math.Min(32767, math.Round(out[Window+i]))))
	}
	return res
}

func sq(c complex128) float64 { return real(c)*real(c) + imag(c)*imag(c) }
