package listen

import "math"

const (
	frame      = 160 // samples, 10 ms
	perSecond  = 100 // frames
	silenceDB  = -96.0
	targetDB   = -26.0 // active level the recogniser is given, dBFS
	gainMost   = 40.0  // dB
	gainLeast  = -12.0
	activeSpan = 30.0 // dB below the loudest frame that still count as speech
)

// power is the mean square of samples at full scale 1.
func power(pcm []int16) float64 {
	if len(pcm) == 0 {
		return 0
	}
	var sum float64
	for _, s := range pcm {
		sum += float64(s) * float64(s)
	}
	return sum / float64(len(pcm)) / (32768 * 32768)
}

// decibel turns a power ratio into dB, never below -96.
func decibel(p float64) float64 {
	if p <= 0 {
		return silenceDB
	}
	return math.Max(silenceDB, 10*math.Log10(p))
}

// activeLevel is the mean power in dBFS of the frames within 30 dB of the loudest one.
func activeLevel(pcm []int16) float64 {
	var powers []float64
	loud := 0.0
	for i := 0; i+frame <= len(pcm); i += frame {
		p := power(pcm[i : i+frame])
		powers = append(powers, p)
		loud = math.Max(loud, p)
	}
	least := loud * math.Pow(10, -activeSpan/10)
	sum, n := 0.0, 0
	for _, p := range powers {
		if p >= least && p > 0 {
			sum += p
			n++
		}
	}
	if n == 0 {
		return silenceDB
	}
	return decibel(sum / float64(n))
}

// amplify writes src times a gain in dB to dst, limited to 16 bits.
func amplify(dst, src []int16, db float64) {
	g := math.Pow(10, db/20)
	for i, s := range src {
		dst[i] = int16(math.Max(-32768, math.Min(32767, math.Round(float64(s)*g))))
	}
}

// clipped is the share of samples at full scale.
func clipped(pcm []int16) float64 {
	if len(pcm) == 0 {
		return 0
	}
	n := 0
	for _, s := range pcm {
		if s == 32767 || s <= -32767 {
			n++
		}
	}
	return float64(n) / float64(len(pcm))
}
