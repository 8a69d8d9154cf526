package camera_test

import (
	"archive/zip"
	"math"
	"math/rand/v2"
	"path/filepath"
	"testing"

	"readback/core/camera"
	"readback/core/lab/digits"
	"readback/core/lab/render"
)

func plane(p *render.Pic) *camera.Plane {
	return &camera.Plane{Y: p.Pix, W: p.W, H: p.H, Stride: p.W}
}

func shot(s *render.Shot) *camera.Plane {
	return &camera.Plane{Y: s.Y, W: s.W, H: s.H, Stride: s.W, Cb: s.Cb, Cr: s.Cr, CStride: s.W, Sub: 1}
}

func region(x0, y0, x1, y1 int) camera.Region { return camera.Region{X0: x0, Y0: y0, X1: x1, Y1: y1} }

func feed(t testing.TB, k *camera.Counter, b render.Blink, seed uint64) {
	t.Helper()
	for _, f := range b.Run(seed) {
		if err := k.Add(camera.Sample{T: f.T, Spot: f.Spot, Ring: f.Ring, Exposure: b.Exposure, Hue: math.NaN()}); err != nil {
			t.Fatal(err)
		}
	}
}

func fire(seed uint64) render.Fire {
	r := rand.New(rand.NewPCG(seed, 3))
	f := render.Fire{W: 72, H: 54, FPS: 30, Exposure: 0.02, Mains: 50, Seconds: 16, Room: 10 + 60*r.Float64(), Noise: 2 + 4*r.Float64(),
		Brightness: 40 + 120*r.Float64(), Blue: r.IntN(2) == 0}
	if r.IntN(3) > 0 {
		f.Ripple = 0.2 * r.Float64()
	}
	if r.IntN(3) == 0 {
		f.Exposure = 0.01
	}
	if r.IntN(4) > 0 {
		f.GlowAt = 2 + r.Float64()
	}
	if r.IntN(4) > 0 {
		f.FlameAt = 6 + 2*r.Float64()
		if r.IntN(2) == 0 {
			f.OutAt = 12
		}
	}
	return f
}

func digitPhotos(t testing.TB) []digits.Photo {
	t.Helper()
	z, err := zip.OpenReader(filepath.Join("..", "..", "testdata", "camera", "lcd-digits.zip"))
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	out, err := digits.Read(&z.Reader)
	if err != nil || len(out) < 1000 {
		t.Fatalf("%d photographed digits, %v", len(out), err)
	}
	return out
}

func readDigit(t testing.TB, r *camera.Reader, p *camera.Plane) string {
	t.Helper()
	rd, err := r.ReadDigit(p)
	if err != nil {
		t.Fatal(err)
	}
	if rd.Shows == camera.Empty {
		return " "
	}
	return string(rd.Digits[0].Glyph)
}
