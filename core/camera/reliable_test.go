package camera_test

import (
	"math"
	"testing"

	"readback/core/camera"
	"readback/core/lab/metric"
	"readback/core/lab/render"
)

// The committed shares against a new measurement on the same seeds, in points of a hundred.
func TestReliabilityFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		const n = 100
		for i, want := range camera.Reliability {
			o := readMeters(t, []render.Grade{render.Easy, render.Medium, render.Hard}[i], heldOut+50000, n, nil)
			t.Logf("{%q, %.3f, %.3f, %.3f, %d},", want.Grade, float64(o.right)/n, float64(o.wrong)/n, 1-float64(o.right+o.wrong)/n, n)
			gap := math.Max(math.Abs(pct(o.right, n)-100*want.Right), math.Abs(pct(o.wrong, n)-100*want.Wrong))
			add("eye.reliability_"+want.Grade+"_gap", gap, "%", "<= 5", n)
		}
	})
}

func TestReliability(t *testing.T) {
	last := 1.0
	for _, s := range camera.Reliability {
		if sum := s.Right + s.Wrong + s.Abstain; math.Abs(sum-1) > 1e-9 || s.Right > last || s.N < 100 {
			t.Errorf("%s: %+v adds up to %v, or is better than a kinder grade, or has too few trials", s.Grade, s, sum)
		}
		last = s.Right
	}
}
