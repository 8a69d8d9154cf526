package camera

import (
	"testing"

	"readback/core/lab/render"
)

// A display of a thousand by 750 pixels.
func BenchmarkDisplay(b *testing.B) {
	var r Reader
	var pics []*Plane
	for i := range 12 {
		p := render.NewMeter(7_000_000+uint64(i), render.Medium, render.Options{}).Frame(0)
		pics = append(pics, &Plane{Y: p.Pix, W: p.W, H: p.H, Stride: p.W})
	}
	i := 0
	for b.Loop() {
		if _, err := r.Read(pics[i%len(pics)]); err != nil {
			b.Fatal(err)
		}
		i++
	}
}
