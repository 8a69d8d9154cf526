package measure

import (
	"math"
	"testing"
)

// What lies evenly between two ends and is seen through a meter: against numerical integration over where it lies.
func TestEven(t *testing.T) {
	m := Modest()
	for _, p := range []Predicted{
		{Low: 60e-3, High: 110e-3, Even: true, Tol: 5e-3},
		{Low: 1, High: 1, Even: true, Tol: 0.1},
		{Low: 2, High: 9, Even: true, Unlike: 0.1, Tol: 0.4},
		{Low: 20, High: 24, Even: true},
	} {
		u := m.Uncertainty(VoltsDC, p.Low, 0.001)
		for _, x := range []float64{p.Low * 0.9, p.Low, (p.Low + p.High) / 2, p.High * 1.02, p.High * 1.3} {
			d := 0.01 * p.High
			const n = 20000
			want := 0.0
			for i := range n {
				mid := p.Low + (p.High-p.Low)*(float64(i)+0.5)/n
				s, far := Combine(Rectangular(p.Tol), u), Combine(Rectangular(wider*p.Tol), u)
				want += ((1-p.Unlike)*between(x-d, x+d, mid, s) + p.Unlike*between(x-d, x+d, mid, far)) / n
			}
			if got := p.shows(x-d, x+d, u, 0); math.Abs(got-want) > 1e-7 {
				t.Errorf("%+v at %g: %g, by numbers %g", p, x, got, want)
			}
		}
	}
}
