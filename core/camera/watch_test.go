package camera_test

import (
	"testing"

	"readback/core/camera"
	"readback/core/lab/render"
)

// A number is told once when it has stood for long enough, again after a while, and not while it is the same picture.
func TestMeterWatch(t *testing.T) {
	m := render.NewMeter(3, render.Easy, render.Options{Text: "24.5", W: 400, H: 300, Tall: 45})
	var w camera.MeterWatch
	w.Begin(0)
	told := int64(0)
	for i := range 12 {
		p := plane(m.Frame(i))
		p.Time = int64(i) * 200e6
		o, err := w.See(p)
		if err != nil {
			t.Fatal(err)
		}
		if o.Tell && o.Reason == "" {
			if o.Text != "24.5" || !o.Steady || len(o.Boxes) != 3 {
				t.Fatalf("told %+v", o)
			}
			if told != 0 {
				t.Fatalf("told at %d ns and again at %d ns", told, p.Time)
			}
			told = p.Time
			w.Told(o.Text, p.Time)
		}
	}
	if told < 9e8 {
		t.Errorf("told at %d ns", told)
	}
}

// Without a display the reason comes after a while, and not again at once.
func TestMeterWatchGivesUp(t *testing.T) {
	var w camera.MeterWatch
	w.Begin(0)
	reasons := 0
	for i := range 20 {
		p := &camera.Plane{Y: make([]byte, 160*120), W: 160, H: 120, Stride: 160, Time: int64(i) * 400e6}
		for k := range p.Y {
			p.Y[k] = byte(100 + (k*k+i)%5)
		}
		o, err := w.See(p)
		if err != nil {
			t.Fatal(err)
		}
		if o.Text != "" {
			t.Fatalf("sees %q in nothing", o.Text)
		}
		if o.Tell {
			if reasons++; float64(p.Time) < camera.MeterGiveUp || o.Reason.Say() == "" {
				t.Errorf("gives up at %d ns: %q", p.Time, o.Reason)
			}
		}
	}
	if reasons != 1 {
		t.Errorf("%d reasons told in eight seconds", reasons)
	}
}

// How Exif numbers the eight ways to turn a picture: the upper left corner of the upright one comes from here.
func TestUpright(t *testing.T) {
	p := &camera.Plane{Y: []byte{1, 2, 3, 4, 5, 6}, W: 3, H: 2, Stride: 3} // 1 2 3 over 4 5 6
	for turn, want := range map[int]string{1: "\x01\x02\x03\x04\x05\x06", 2: "\x03\x02\x01\x06\x05\x04", 3: "\x06\x05\x04\x03\x02\x01", 4: "\x04\x05\x06\x01\x02\x03",
		5: "\x01\x04\x02\x05\x03\x06", 6: "\x04\x01\x05\x02\x06\x03", 7: "\x06\x03\x05\x02\x04\x01", 8: "\x03\x06\x02\x05\x01\x04", 0: "\x01\x02\x03\x04\x05\x06"} {
		q := p.Upright(turn)
		if string(q.Y) != want || q.Check() != nil || turn >= 5 && q.W != 2 {
			t.Errorf("turn %d: %v, %d by %d", turn, q.Y, q.W, q.H)
		}
	}
}
