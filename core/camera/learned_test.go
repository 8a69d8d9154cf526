package camera

import (
	"testing"

	"readback/core/internal/ocr"
)

// A bright patch to the left of a number may hide a sign; the bright body of a device beyond a narrow window hides none.
func TestVeiled(t *testing.T) {
	const w, h, x0, tall = 480, 120, 300, 40
	for _, c := range []struct {
		name     string
		from, to int // what is bright
		level    byte
		want     bool
	}{
		{"nothing", 0, 0, 0, false}, {"a patch", 200, 230, 240, true}, {"the body of the device", 0, 230, 240, false}, {"burnt out", 0, 290, 255, true},
		{"a shade", 200, 230, 90, false},
	} {
		p := &Plane{Y: make([]byte, w*h), W: w, H: h, Stride: w}
		for y := range h {
			for x := range w {
				v := byte(160)
				if x >= c.from && x < c.to {
					v = c.level
				}
				if d := x - x0; d >= 0 && d < 90 && d%30 < 22 && (d%30 < 5 || d%30 > 16) && y > 40 && y < 80 { // upright strokes
					v = 40
				}
				p.Y[y*w+x] = v
			}
		}
		var l learned
		l.set(p)
		r := ocr.Row{Strip: ocr.LayOut(&ocr.Line{X0: x0 - farReach*tall, Y0: 60, X1: x0 + 82, Y1: 60, H: tall})}
		r.Squeeze = r.Strip.Squeeze
		for i := range 3 {
			u, _ := r.Strip.Into(float64(x0+11+30*i), 60)
			r.Places = append(r.Places, ocr.Place{Glyph: '8', U: u})
		}
		if got := l.veiled(&r); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
