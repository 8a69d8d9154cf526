package ocr

import (
	"errors"
	"math"
	"testing"
)

func TestSizes(t *testing.T) {
	if n := len(findBytes) + len(alignBytes) + len(rowBytes); n > 1<<20 {
		t.Errorf("the networks take %d bytes, want at most 1 MiB", n)
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("RBNET1\n\x02\x00\x00\x00{}\x00\x00\x00\x00"))
	f.Add(findBytes)
	f.Add(findBytes[:len(findBytes)-5])
	f.Fuzz(func(t *testing.T, b []byte) {
		n, err := parse(b)
		if (n == nil) == (err == nil) || err != nil && !errors.Is(err, errNet) {
			t.Fatalf("%v, %v", n, err)
		}
	})
}

// A damaged file is told from a whole one, whichever byte is wrong.
func TestParseDamaged(t *testing.T) {
	for _, at := range []int{0, 8, 40, len(alignBytes) / 2, len(alignBytes) - 1} {
		b := append([]byte(nil), alignBytes...)
		b[at] ^= 4
		if _, err := parse(b); !errors.Is(err, errNet) {
			t.Errorf("byte %d is wrong: %v", at, err)
		}
	}
}

// What a strip shows lies where the strip says.
func TestStrip(t *testing.T) {
	l := Line{X0: 100, Y0: 80, X1: 220, Y1: 110, H: 30}
	s := LayOut(&l)
	for _, p := range [][2]float64{{100, 80}, {220, 110}, {7, 300}} {
		u, v := s.Into(p[0], p[1])
		if x, y := s.At(u, v); math.Hypot(x-p[0], y-p[1]) > 1e-9 {
			t.Errorf("%v comes back as %v, %v", p, x, y)
		}
	}
	if u, v := s.Into(100, 80); math.Abs(u-leadX) > 1e-9 || math.Abs(v-RowH/2) > 1e-9 {
		t.Errorf("the row begins at %v, %v", u, v)
	}
}

// A picture of any size and shape can be looked at.
func TestFindAnything(t *testing.T) {
	r := NewReader(Own())
	var p Picture
	for _, size := range [][2]int{{1, 1}, {3, 400}, {400, 3}, {64, 64}} {
		p.Set(&Planes{Y: make([]byte, size[0]*size[1]), W: size[0], H: size[1], Stride: size[0]})
		if l := r.Lines(&p, p.Whole()); len(l) != 0 {
			t.Errorf("%v: %d rows in nothing", size, len(l))
		}
		r.Read(&p, &Line{X0: -50, Y0: 3, X1: 9, Y1: 3, H: 0})
	}
}
