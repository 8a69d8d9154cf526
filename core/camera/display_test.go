package camera_test

import (
	"bytes"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"

	"readback/core/camera"
	"readback/core/lab/render"
)

// Red digits on dark, dim: there is too little in the brightness, and enough in the colour.
func TestReadRedDigits(t *testing.T) {
	var r camera.Reader
	tried := 0
	for seed := uint64(0); seed < 60 && tried < 4; seed++ {
		m := render.NewMeter(seed, render.Easy, render.Options{Text: "24.61", W: 400, H: 300, Tall: 50})
		pic := m.Frame(0)
		if !pic.Light {
			continue
		}
		tried++
		n := pic.W * pic.H
		p := &camera.Plane{Y: make([]byte, n), W: pic.W, H: pic.H, Stride: pic.W, Cb: make([]byte, n), Cr: make([]byte, n), CStride: pic.W, Sub: 1}
		for i := range n {
			red := float64(pic.Pix[i]) / 5
			p.Y[i], p.Cb[i], p.Cr[i] = byte(0.299*red+0.5), byte(128-0.1687*red+0.5), byte(128+0.5*red+0.5)
		}
		rd, err := r.Read(p)
		if err != nil {
			t.Fatal(err)
		}
		if !rd.OK() && !rd.Question() || rd.Text != "24.61" {
			t.Errorf("meter %d in red: %q, reason %q", seed, rd.Text, rd.Reason)
		}
	}
	if tried == 0 {
		t.Fatal("no light display among the drawn ones")
	}
}

// A film of a real light that blinks without a pause: there is no code in it, and none must be read.
func TestBlinkFilm(t *testing.T) {
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "camera", "blink", "blink.mjpeg"))
	if err != nil {
		t.Fatal(err)
	}
	var l camera.Lamp
	frames := 0
	for len(b) > 0 {
		end := bytes.Index(b, []byte{0xff, 0xd9})
		if end < 0 {
			break
		}
		m, err := jpeg.Decode(bytes.NewReader(b[:end+2]))
		if err != nil {
			t.Fatal(err)
		}
		b = b[end+2:]
		var p camera.Plane
		switch m := m.(type) {
		case *image.Gray:
			p = camera.Plane{Y: m.Pix, Stride: m.Stride}
		case *image.YCbCr:
			p = camera.Plane{Y: m.Y, Stride: m.YStride}
		}
		p.W, p.H, p.Time = m.Bounds().Dx(), m.Bounds().Dy(), int64(frames)*40e6
		if err := l.See(&p); err != nil {
			t.Fatal(err)
		}
		frames++
	}
	if frames != 65 {
		t.Fatalf("%d pictures in the film, want 65", frames)
	}
	c := l.Code()
	t.Logf("%q, reason %q, on %.2f s, off %.2f s", c.ID(), c.Reason, c.On, c.Off)
	if c.On < 0.25 || c.On > 0.36 || c.Off < 0.25 || c.Off > 0.36 {
		t.Errorf("on %.2f s, off %.2f s, want about 0.30 each", c.On, c.Off)
	}
	if c.OK() && c.ID() != "heartbeat" && c.ID() != "flutter" {
		t.Errorf("even blinking is read as %q", c.ID())
	}
}
