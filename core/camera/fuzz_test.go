package camera_test

import (
	"math"
	"testing"

	"readback/core/camera"
)

func FuzzPicture(f *testing.F) {
	f.Add([]byte{1, 2, 3, 4}, 2, 2, 2, int64(0), 0.01, true)
	f.Add(make([]byte, 64*64), 64, 64, 64, int64(5), math.NaN(), false)
	f.Add([]byte{9}, 1, 1, 1, int64(0), 0.0, true)
	f.Add([]byte{}, 8192, 8192, 8192, int64(-1), 0.0, false)
	f.Fuzz(func(t *testing.T, y []byte, w, h, stride int, at int64, exposure float64, colour bool) {
		p := &camera.Plane{Y: y, W: w, H: h, Stride: stride, Time: at, Exposure: exposure}
		if colour {
			p.Cb, p.Cr, p.CStride, p.Sub = y, y, stride, 1
		}
		bad := p.Check() != nil
		var r camera.Reader
		rd, err := r.Read(p)
		if bad != (err != nil) || err == nil && rd == nil {
			t.Fatalf("checked bad %v, read: %v", bad, err)
		}
		if err == nil {
			var u camera.Units
			u.Teach("V", []camera.Annunciators{r.Annunciators(rd)})
		}
		if !bad {
			if q := p.Reduced(2); q.Check() != nil || q.Colour() != p.Colour() {
				t.Fatalf("reduced: %v", q.Check())
			}
		}
		if _, err := r.ReadDigit(p); bad != (err != nil) {
			t.Fatalf("checked bad %v, digit: %v", bad, err)
		}
		var l camera.Lamp
		if err := l.See(p); bad && err == nil {
			t.Fatal("a bad picture is watched")
		}
		l.Aim(float64(w)/2, exposure)
		l.Code()
		var c camera.Comparer
		if _, _, err := c.Compare(p, p, [][2]float64{{0, 0}, {exposure, float64(h)}}); bad && err == nil {
			t.Fatal("a bad picture is compared")
		}
		fw := camera.FireWatch{Spot: camera.Region{X1: w, Y1: h}}
		if err := fw.See(p); bad != (err != nil) {
			t.Fatalf("checked bad %v, fire: %v", bad, err)
		}
	})
}

func FuzzCounter(f *testing.F) {
	f.Add([]byte("aaaabbbbaaaabbbb"), int64(33e6), 0.01)
	f.Add([]byte{0, 255, 0, 255, 0, 255, 0, 255, 0, 255, 0, 255}, int64(1), 0.0)
	f.Fuzz(func(t *testing.T, levels []byte, step int64, exposure float64) {
		var c camera.Counter
		at := int64(0)
		for i, v := range levels {
			at += step + int64(i%3)
			if c.Add(camera.Sample{T: at, Spot: float64(v), Ring: 60, Exposure: exposure, Hue: float64(v)/128 - 1}) != nil {
				return
			}
		}
		if code := c.Code(); code.OK() && code.ID() == "" {
			t.Fatalf("a code without a name: %+v", code)
		}
	})
}

func FuzzPlate(f *testing.F) {
	for _, s := range []string{"120 V", "208-230", "80,000 BTU/H", "35-65", "3.5 in. w.c.", ",,,", "1.2.3"} {
		f.Add("volts", s)
		f.Add("rise", s)
		f.Add("input", s)
	}
	f.Fuzz(func(t *testing.T, field, text string) {
		p, err := camera.ParsePlate(camera.PlateField(field), text)
		if err != nil {
			return
		}
		for _, v := range p.Values {
			if v.Dec.Float() <= 0 || math.IsNaN(v.Base()) {
				t.Fatalf("%s %q gives %v", field, text, v)
			}
		}
	})
}
