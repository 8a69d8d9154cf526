package render

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Drive is how the lamp's current flows while it is on.
type Drive int

const (
	Smooth   Drive = iota // direct current
	HalfWave              // every other half wave of the mains
	FullWave              // both half waves
)

// Blink describes a status light and the camera that watches it.
type Blink struct {
	Groups        []int   // {3}: three flashes; {3, 2}: two digits
	On, Off       float64 // seconds
	Gap, Pause    float64 // between digits, between cycles
	FPS           float64
	Exposure      float64 // seconds
	SNR           float64 // contrast of the light over the noise of one frame
	Jitter        float64 // seconds, standard deviation of the time stamps' error
	Drop          float64 // share of frames lost
	Ripple        float64 // share of the ambient light that follows the mains
	Drive         Drive
	Mains         float64 // Hz
	Seconds       float64
	Shake         float64 // 0 steady; dims the light as it drifts out of its box
	Long          int     // the first so many flashes of a cycle last 1 s
	LengthSpread  float64 // relative spread of flash lengths
	AutoExposure  bool
	StartAnywhere bool
}

// Tick is one frame: when, the light's mean and its ring's mean.
type Tick struct {
	T          int64
	Spot, Ring float64
	Flash      int // of the cycle, the one that is lit or was lit last
}

// Run plays the light to the camera.
func (b Blink) Run(seed uint64) []Tick {
	r := rand.New(rand.NewPCG(seed, 0x6c69676874))
	var edges []float64 // on, off, on, off
	t := 0.0
	if b.StartAnywhere {
		cycle := b.Pause
		for i, n := range b.Groups {
			cycle += float64(n)*(b.On+b.Off) - b.Off
			if i > 0 {
				cycle += b.Gap
			}
		}
		t = -cycle * r.Float64()
	}
	length := func(x float64) float64 { return x * (1 + b.LengthSpread*r.NormFloat64()) }
	for t < b.Seconds+1 && b.On > 0 {
		k := 0
		for gi, n := range b.Groups {
			for i := range n {
				on := b.On
				if k < b.Long {
					on = 1
				}
				k++
				e := t + length(on)
				edges = append(edges, t, e)
				t = e
				if i < n-1 {
					t += length(b.Off)
				}
			}
			if gi < len(b.Groups)-1 {
				t += length(b.Gap)
			}
		}
		t += length(b.Pause)
		if b.Pause == 0 {
			t += length(b.Off)
		}
	}
	phase := r.Float64()
	passed := func(t float64) int { // edges before t
		n, _ := slices.BinarySearchFunc(edges, t, func(e, t float64) int {
			if e <= t {
				return -1
			}
			return 1
		})
		return n
	}
	cycle := 0
	for _, n := range b.Groups {
		cycle += n
	}
	lit := func(t float64) float64 {
		if passed(t)%2 == 0 {
			return 0
		}
		s := math.Sin(2 * math.Pi * (b.Mains*t + phase))
		switch b.Drive {
		case HalfWave:
			return math.Max(0, s) * math.Pi
		case FullWave:
			return math.Abs(s) * math.Pi / 2
		}
		return 1
	}
	const ambient, contrast = 60.0, 30.0
	noise := contrast / b.SNR
	gain := 1.0
	drift := 0.0
	var out []Tick
	var last int64 = -1
	for k := 0; float64(k)/b.FPS < b.Seconds; k++ {
		at := 0.05 + float64(k)/b.FPS
		if r.Float64() < b.Drop {
			continue
		}
		const n = 24
		l, m := 0.0, 0.0
		for i := range n {
			u := at - b.Exposure*(float64(i)+0.5)/n
			l += lit(u) / n
			m += 1 + b.Ripple*math.Sin(4*math.Pi*(b.Mains*u+phase))
		}
		m /= n
		drift = 0.97*drift + 0.25*r.NormFloat64()*0.24
		capture := math.Exp(-math.Pow(b.Shake*drift, 2) / 2)
		spot := ambient*m + contrast*l*capture
		ring := ambient*m + 0.04*contrast*l
		if b.AutoExposure {
			want := 90 / (0.8*ambient*m + 0.2*spot)
			gain += 0.12 * (want - gain)
		}
		tk := Tick{T: int64((at + b.Jitter*r.NormFloat64()) * 1e9), Spot: gain * (spot + noise*r.NormFloat64()), Ring: gain * (ring + 0.2*noise*r.NormFloat64())}
		if n := passed(at - b.Exposure/2); n > 0 && cycle > 0 {
			tk.Flash = (n - 1) / 2 % cycle
		}
		if tk.T <= last {
			continue // a shell drops a frame that is stamped before the last one
		}
		last = tk.T
		out = append(out, tk)
	}
	return out
}
