package listen

import (
	"math"

	"readback/speech/audio"
)

// detector tells speech from steady noise, frame by frame. It compares the energy in seven bands with each band's own noise floor of the
// last seconds: a fan fills the low bands, and a voice still stands out in the others. It would rather hear too much:
// noise alone is no danger to a recogniser that must find a complete phrase, a lost first word is.
type detector struct {
	last   [audio.Window]int16 // the last 32 ms
	bands  [len(edges) - 1]band
	n      int
	wide   float64 // floor of the whole band, power
	recent [20]bool
	fft    *audio.Spectrum
}

// band follows one band's energy in dB.
type band struct {
	smooth float64    // about 30 ms
	low    float64    // least of the present half second
	mins   [6]float64 // and of the last six
	floor  float64
}

// edges of the bands in Hz, and how many dB the least of three seconds of smoothed steady noise lies below its mean: the
// narrower a band, the more. Measured on white noise.
var (
	edges = [...]float64{200, 400, 700, 1000, 1500, 2100, 2900, 4000}
	bias  = [...]float64{4.4, 3.5, 3.5, 2.6, 2.4, 2.1, 1.8}
)

const (
	scoreOn   = 3.5 // mean dB above the floors that begin speech
	scoreStay = 3.0 // and that keep it going
	onsetNeed = 7   // frames of the last 20
	bandMost  = 15.0
	stillness = -75.0 // dBFS: a digital silence is not a floor
	halfSec   = 50    // frames
	warmUp    = 4     // frames
)

func newDetector() *detector { return &detector{fft: audio.NewSpectrum()} }

// step takes one frame and tells whether it is above the noise.
func (d *detector) step(pcm []int16) bool {
	copy(d.last[:], d.last[len(pcm):])
	copy(d.last[audio.Window-len(pcm):], pcm)
	if d.n < warmUp { // the window is not full yet
		d.n++
		d.wide = power(pcm)
		return false
	}
	spectrum := d.fft.Of(d.last[:])
	score := 0.0
	for i := range d.bands {
		lo, hi := int(edges[i]*audio.Window/16000), int(edges[i+1]*audio.Window/16000)
		sum := 0.0
		for k := lo; k < hi; k++ {
			sum += real(spectrum[k])*real(spectrum[k]) + imag(spectrum[k])*imag(spectrum[k])
		}
		db := math.Max(stillness, decibel(sum/(audio.Window*audio.Window/4)/(32768*32768)))
		score += math.Min(bandMost, d.bands[i].step(db, bias[i], d.n))
	}
	score /= float64(len(d.bands))
	d.n++
	if score < scoreStay {
		d.wide += 0.05 * (power(pcm) - d.wide)
	}
	d.recent[d.n%len(d.recent)] = score > scoreOn
	return score > scoreStay
}

// step takes a frame's level and returns how far it is above the floor, at least 0.
func (b *band) step(db, bias float64, n int) float64 {
	if n == warmUp {
		b.smooth, b.low, b.floor = db, db, db
		for i := range b.mins {
			b.mins[i] = math.Inf(1)
		}
	}
	b.smooth += 0.4 * (db - b.smooth)
	b.low = math.Min(b.low, b.smooth)
	if n%halfSec == halfSec-1 {
		b.mins[n/halfSec%len(b.mins)] = b.low
		b.low = b.smooth
	}
	least := b.low
	for _, m := range b.mins {
		least = math.Min(least, m)
	}
	target := least + bias
	if target < b.floor {
		b.floor += 0.2 * (target - b.floor)
	} else {
		b.floor += 0.02 * (target - b.floor)
	}
	return math.Max(0, b.smooth-b.floor)
}

// onset tells whether enough of the last frames were above the noise.
func (d *detector) onset() bool {
	n := 0
	for _, r := range d.recent {
		if r {
			n++
		}
	}
	return n >= onsetNeed
}

// forget starts looking for the next onset.
func (d *detector) forget() { d.recent = [20]bool{} }
