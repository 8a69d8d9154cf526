package listen

import "math"

// detector tells speech from steady noise, frame by frame. It compares the energy in seven bands with each band's own noise floor of the
// last seconds: a fan fills the low bands, and a voice still stands out in the others. It would rather hear too much:
// noise alone is no danger to a recogniser that must find a complete phrase, a lost first word is.
type detector struct {
	last   [fftSize]int16 // the last 32 ms
	bands  [len(edges) - 1]band
	n      int
	wide   float64 // floor of the whole band, power
	recent [20]bool
	buf    [fftSize]complex128
}

// band follows one band's energy in dB.
type band struct {
	smooth float64    // about 30 ms
	low    float64    // least of the present half second
	mins   [6]float64 // and of the last six
	floor  float64
}

// edges of the bands in Hz.
var edges = [...]float64{200, 400, 700, 1000, 1500, 2100, 2900, 4000}

const (
	scoreOn   = 4.0 // mean dB above the floors that begin speech
	scoreStay = 2.6 // and that keep it going
	onsetNeed = 7   // frames of the last 20
	bandMost  = 15.0
	minBias   = 1.5   // dB: the minimum of smoothed noise lies so far below its mean
	stillness = -75.0 // dBFS: a digital silence is not a floor
	halfSec   = 50    // frames
)

func newDetector() *detector { return &detector{} }

// step takes one frame and tells whether it is above the noise.
func (d *detector) step(pcm []int16) bool {
	copy(d.last[:], d.last[len(pcm):])
	copy(d.last[fftSize-len(pcm):], pcm)
	load(&d.buf, d.last[:])
	fft(&d.buf)
	score := 0.0
	for i := range d.bands {
		lo, hi := int(edges[i]*fftSize/16000), int(edges[i+1]*fftSize/16000)
		sum := 0.0
		for k := lo; k < hi; k++ {
			sum += sq(d.buf[k])
		}
		db := math.Max(stillness, decibel(sum/(fftSize*fftSize/4)/(32768*32768)))
		score += math.Min(bandMost, d.bands[i].step(db, d.n))
	}
	score /= float64(len(d.bands))
	if d.n == 0 {
		d.wide = power(pcm)
	}
	d.n++
	if score < scoreStay {
		d.wide += 0.05 * (power(pcm) - d.wide)
	}
	d.recent[d.n%len(d.recent)] = score > scoreOn
	return score > scoreStay
}

// step takes a frame's level and returns how far it is above the floor, at least 0.
func (b *band) step(db float64, n int) float64 {
	if n == 0 {
		b.smooth, b.low, b.floor = db, db, db
		for i := range b.mins {
			b.mins[i] = db
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
	target := least + minBias
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
