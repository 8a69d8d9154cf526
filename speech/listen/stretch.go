package listen

import "math"

// The third hearing plays a saying this much faster, higher in pitch as a tape does.
const (
	fastNum = 107
	fastDen = 100
)

// sincHalf is how many samples on either side make one new one.
const sincHalf = 8

// kernel holds the windowed sinc for each place that a new sample can have between two old ones.
var kernel = func() (t [fastDen][2 * sincHalf]float64) {
	const cut = float64(fastDen) / fastNum // what would lie above the new highest frequency is left out
	for i := range t {
		for j := range t[i] {
			d := float64(i)/fastDen + float64(sincHalf-1-j)
			h := cut
			if d != 0 {
				h = math.Sin(math.Pi*cut*d) / (math.Pi * d)
			}
			t[i][j] = h * (0.5 + 0.5*math.Cos(math.Pi*d/sincHalf))
		}
	}
	return t
}()

// faster plays sound faster.
func faster(pcm []int16) []int16 {
	out := make([]int16, len(pcm)*fastDen/fastNum)
	for i := range out {
		at, row := i*fastNum/fastDen-sincHalf+1, &kernel[i*fastNum%fastDen]
		sum := 0.0
		for j, h := range row {
			if k := at + j; k >= 0 && k < len(pcm) {
				sum += float64(pcm[k]) * h
			}
		}
		out[i] = int16(math.Max(-32768, math.Min(32767, math.Round(sum))))
	}
	return out
}
