package listen

import "math"

// detector tells speech from steady noise, frame by frame. It looks at the energy between about 250 and 3500 Hz, where
// fans and hum have little, and compares it with the noise floor of the last seconds. It would rather hear too much:
// noise alone is no danger to a recogniser that must find a complete phrase, a lost first word is.
type detector struct {
	low, high onePole
	smooth    float64     // dB, about 30 ms
	history   [50]float64 // dB of the last 0.5 s, smoothed
	at        int
	mins      [6]float64 // floor of the last 6 half seconds
	filled    int
	floor     float64 // dB
	wide      float64 // floor of the whole band, power
	recent    [20]bool
	primed    bool
}

// onePole is y += a (x - y).
type onePole struct{ a, y float64 }

func (o *onePole) step(x float64) float64 {
	o.y += o.a * (x - o.y)
	return o.y
}

const (
	overFloor = 5.0 // dB above the floor that count as speech
	onsetNeed = 7   // of them above
)

func newDetector() *detector {
	pole := func(hz float64) float64 { return 1 - math.Exp(-2*math.Pi*hz/16000) }
	return &detector{low: onePole{a: pole(250)}, high: onePole{a: pole(3500)}, smooth: silenceDB, floor: silenceDB}
}

// step takes one frame and tells whether it is above the noise.
func (d *detector) step(pcm []int16) bool {
	var sum float64
	for _, s := range pcm {
		x := float64(s) / 32768
		y := d.high.step(x - d.low.step(x))
		sum += y * y
	}
	db := decibel(sum / float64(len(pcm)))
	if !d.primed {
		d.smooth, d.floor, d.wide, d.primed = db, db, power(pcm), true
		for i := range d.history {
			d.history[i] = db
		}
		for i := range d.mins {
			d.mins[i] = db
		}
	}
	d.smooth += 0.4 * (db - d.smooth)
	d.history[d.at%len(d.history)] = d.smooth
	d.at++
	if d.at%len(d.history) == 0 {
		low := d.history[0]
		for _, h := range d.history {
			low = math.Min(low, h)
		}
		d.mins[d.filled%len(d.mins)] = low
		d.filled++
	}
	low := d.mins[0]
	for _, m := range d.mins {
		low = math.Min(low, m)
	}
	// The minimum of smoothed noise lies below its mean; 2 dB was measured on pink noise and on a fan with hum.
	target := low + 2
	if target < d.floor {
		d.floor += 0.2 * (target - d.floor)
	} else {
		d.floor += 0.02 * (target - d.floor)
	}
	d.floor = math.Max(d.floor, -75) // a digital silence is not a floor
	above := d.smooth > d.floor+overFloor
	if !above {
		d.wide += 0.05 * (power(pcm) - d.wide)
	}
	d.recent[d.at%len(d.recent)] = above
	return above
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
