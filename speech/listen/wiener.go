package listen

import (
	"math"
	"math/cmplx"
)

// The noise reducer is a Wiener filter with the decision-directed estimate of the speech (Ephraim and Malah 1984): 32 ms
// windows every 8 ms, the noise taken from the sound before the saying, no part damped by more than 12 dB.
const (
	fftSize   = 512
	fftHop    = 128
	fftBins   = fftSize/2 + 1
	smoothing = 0.96
	floorGain = 0.25 // -12 dB
)

var window = func() (w [fftSize]float64) {
	for i := range w {
		w[i] = math.Sqrt(0.5 - 0.5*math.Cos(2*math.Pi*float64(i)/fftSize))
	}
	return w
}()

// overlap is the sum of the squared windows at any sample: a Hann window every quarter of its length.
const overlap = fftSize / fftHop / 2

// reduce returns pcm with steady noise damped; noise is sound without speech just before it. Less than 0.1 s of noise
// gives pcm back as it is.
func reduce(pcm, noise []int16) []int16 {
	if len(noise) < 1600 || len(pcm) < fftSize {
		return pcm
	}
	var psd [fftBins]float64
	var buf [fftSize]complex128
	n := 0
	for at := 0; at+fftSize <= len(noise); at += fftHop {
		load(&buf, noise[at:])
		fft(&buf)
		for k := range psd {
			psd[k] += sq(buf[k])
		}
		n++
	}
	for k := range psd {
		psd[k] = psd[k]/float64(n) + 1e-12
	}
	out := make([]float64, len(pcm)+2*fftSize)
	padded := make([]int16, len(pcm)+2*fftSize)
	copy(padded[fftSize:], pcm)
	var last [fftBins]float64 // speech power over noise of the frame before
	for at := 0; at+fftSize <= len(padded); at += fftHop {
		load(&buf, padded[at:])
		fft(&buf)
		for k := range fftBins {
			post := sq(buf[k]) / psd[k]
			prior := smoothing*last[k] + (1-smoothing)*math.Max(0, post-1)
			g := prior / (1 + prior)
			last[k] = g * g * post
			g = math.Max(floorGain, g)
			buf[k] *= complex(g, 0)
			if k > 0 && k < fftSize/2 {
				buf[fftSize-k] = cmplx.Conj(buf[k])
			}
		}
		// The inverse transform is the transform of the conjugate.
		for k := range buf {
			buf[k] = cmplx.Conj(buf[k])
		}
		fft(&buf)
		for i := range fftSize {
			out[at+i] += real(buf[i]) / fftSize * window[i] / overlap
		}
	}
	res := make([]int16, len(pcm))
	for i := range res {
		res[i] = int16(math.Max(-32768, math.Min(32767, math.Round(out[fftSize+i]))))
	}
	return res
}

func load(buf *[fftSize]complex128, pcm []int16) {
	for i := range buf {
		buf[i] = complex(float64(pcm[i])*window[i], 0)
	}
}

func sq(c complex128) float64 { return real(c)*real(c) + imag(c)*imag(c) }

var twiddle = func() (w [fftSize / 2]complex128) {
	for i := range w {
		w[i] = cmplx.Rect(1, -2*math.Pi*float64(i)/fftSize)
	}
	return w
}()

// fft is the in-place radix 2 transform.
func fft(x *[fftSize]complex128) {
	for i, j := 1, 0; i < fftSize; i++ {
		bit := fftSize >> 1
		for ; j&bit != 0; bit >>= 1 {
			j ^= bit
		}
		j ^= bit
		if i < j {
			x[i], x[j] = x[j], x[i]
		}
	}
	for size := 2; size <= fftSize; size <<= 1 {
		step := fftSize / size
		for i := 0; i < fftSize; i += size {
			for k := range size / 2 {
				a, b := x[i+k], x[i+k+size/2]*twiddle[k*step]
				x[i+k], x[i+k+size/2] = a+b, a-b
			}
		}
	}
}
