package codes_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/datamatrix"
	"github.com/makiuchi-d/gozxing/oned"
	"github.com/makiuchi-d/gozxing/qrcode"

	"readback/core/camera"
	"readback/mobile/codes"
)

// shoot draws a code on a plate and photographs it: turned by degrees, scaled, uneven light, noise.
func shoot(t testing.TB, w gozxing.Writer, format gozxing.BarcodeFormat, text string, cw, ch int, degrees, scale float64, seed uint64) *camera.Plane {
	t.Helper()
	m, err := w.Encode(text, format, cw, ch, nil)
	if err != nil {
		t.Fatal(err)
	}
	const W, H = 640, 480
	r := rand.New(rand.NewPCG(seed, 1))
	p := &camera.Plane{Y: make([]byte, W*H), W: W, H: H, Stride: W}
	c, s := math.Cos(degrees*math.Pi/180)/scale, math.Sin(degrees*math.Pi/180)/scale
	at := func(x, y float64) float64 {
		u, v := c*(x-W/2)+s*(y-H/2)+float64(m.GetWidth())/2, -s*(x-W/2)+c*(y-H/2)+float64(m.GetHeight())/2
		if u < -20 || v < -20 || u >= float64(m.GetWidth()+20) || v >= float64(m.GetHeight()+20) {
			return 120
		}
		if u >= 0 && v >= 0 && u < float64(m.GetWidth()) && v < float64(m.GetHeight()) && m.Get(int(u), int(v)) {
			return 45
		}
		return 205
	}
	for y := range H {
		for x := range W {
			v := 0.0
			for _, d := range [4][2]float64{{-0.25, -0.25}, {0.25, -0.25}, {-0.25, 0.25}, {0.25, 0.25}} {
				v += at(float64(x)+d[0], float64(y)+d[1]) / 4
			}
			v = v*(0.8+0.4*float64(x)/W) + 5*r.NormFloat64()
			p.Y[y*W+x] = byte(math.Max(0, math.Min(255, v)))
		}
	}
	return p
}

func TestRead(t *testing.T) {
	for _, c := range []struct {
		name           string
		w              gozxing.Writer
		format         gozxing.BarcodeFormat
		text           string
		cw, ch         int
		degrees, scale float64
	}{
		{"qr straight", qrcode.NewQRCodeWriter(), gozxing.BarcodeFormat_QR_CODE, "PART 0130F00010", 180, 180, 0, 1},
		{"qr turned", qrcode.NewQRCodeWriter(), gozxing.BarcodeFormat_QR_CODE, "PART 0130F00010", 180, 180, 33, 1.4},
		{"qr upside down", qrcode.NewQRCodeWriter(), gozxing.BarcodeFormat_QR_CODE, "SERIAL 12 34", 180, 180, 180, 1.2},
		{"matrix", datamatrix.NewDataMatrixWriter(), gozxing.BarcodeFormat_DATA_MATRIX, "M1-7788", 20, 20, 0, 9},
		{"matrix turned", datamatrix.NewDataMatrixWriter(), gozxing.BarcodeFormat_DATA_MATRIX, "M1-7788", 20, 20, 20, 8},
		{"128", oned.NewCode128Writer(), gozxing.BarcodeFormat_CODE_128, "SN20481234", 300, 90, 0, 1.3},
		{"128 upright", oned.NewCode128Writer(), gozxing.BarcodeFormat_CODE_128, "SN20481234", 300, 90, 90, 1.3},
		{"128 aslant", oned.NewCode128Writer(), gozxing.BarcodeFormat_CODE_128, "SN20481234", 300, 90, 40, 1.4},
		{"39", oned.NewCode39Writer(), gozxing.BarcodeFormat_CODE_39, "B18099-13", 320, 80, 5, 1.5},
		{"ean", oned.NewEAN13Writer(), gozxing.BarcodeFormat_EAN_13, "5901234123457", 200, 90, -8, 2},
	} {
		p := shoot(t, c.w, c.format, c.text, c.cw, c.ch, c.degrees, c.scale, 3)
		got, err := codes.Read(p)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(got) != 1 || got[0].Text != c.text {
			t.Errorf("%s: got %v, want only %q", c.name, got, c.text)
			continue
		}
		if q := got[0].At; q.X < 0 || q.Y < 0 || q.X >= p.W || q.Y >= p.H {
			t.Errorf("%s: found at %v, outside the picture", c.name, q)
		}
	}
}

func TestReadNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	p := &camera.Plane{Y: make([]byte, 300*200), W: 300, H: 200, Stride: 300}
	for i := range p.Y {
		p.Y[i] = byte(100 + r.IntN(80))
	}
	if got, err := codes.Read(p); err != nil || len(got) > 0 {
		t.Errorf("noise reads as %v, %v", got, err)
	}
	if _, err := codes.Read(&camera.Plane{W: 3, H: 3, Stride: 2}); err == nil {
		t.Error("a stride below the width is accepted")
	}
	one := &camera.Plane{Y: []byte{7}, W: 1, H: 1, Stride: 1}
	if got, err := codes.Read(one); err != nil || len(got) > 0 {
		t.Errorf("one pixel reads as %v, %v", got, err)
	}
}
