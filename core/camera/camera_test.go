package camera_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"readback/core/camera"
	"readback/core/lab/render"
)

func TestCheck(t *testing.T) {
	grey := func(w, h, stride int) camera.Plane {
		return camera.Plane{Y: make([]byte, 64), W: w, H: h, Stride: stride}
	}
	with := func(f func(*camera.Plane)) camera.Plane {
		p := grey(8, 8, 8)
		f(&p)
		return p
	}
	for _, c := range []struct {
		name string
		p    camera.Plane
		want error
	}{
		{"fits", grey(8, 8, 8), nil},
		{"one pixel", grey(1, 1, 1), nil},
		{"last row without its padding", grey(6, 8, 8), nil},
		{"no width", grey(0, 8, 8), camera.ErrSize},
		{"negative", grey(8, -1, 8), camera.ErrSize},
		{"64 megapixels", grey(8192, 8192, 8192), camera.ErrSize},
		{"overflow", grey(math.MaxInt, math.MaxInt, math.MaxInt), camera.ErrSize},
		{"stride below width", grey(8, 8, 7), camera.ErrStride},
		{"absurd stride", grey(8, 8, math.MaxInt), camera.ErrStride},
		{"too little data", grey(8, 9, 8), camera.ErrShort},
		{"no number as exposure", with(func(p *camera.Plane) { p.Exposure = math.NaN() }), camera.ErrExposure},
		{"negative exposure", with(func(p *camera.Plane) { p.Exposure = -1 }), camera.ErrExposure},
		{"negative time", with(func(p *camera.Plane) { p.Time = -1 }), camera.ErrTime},
		{"one colour plane", with(func(p *camera.Plane) { p.Cb = make([]byte, 64) }), camera.ErrColour},
		{"odd sub-sampling", with(func(p *camera.Plane) { p.Cb, p.Cr, p.CStride, p.Sub = p.Y, p.Y, 8, 3 }), camera.ErrColour},
		{"short colour", with(func(p *camera.Plane) { p.Cb, p.Cr, p.CStride, p.Sub = p.Y[:9], p.Y, 8, 1 }), camera.ErrShort},
	} {
		if err := c.p.Check(); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}

func TestReadDigits(t *testing.T) {
	var r camera.Reader
	right, n := 0, 0
	for i, f := range digitPhotos(t) {
		if i%8 == 0 {
			n++
			if readDigit(t, &r, f.Plane) == f.Want() {
				right++
			}
		}
	}
	if right*100 < n*96 {
		t.Errorf("%d of %d photographed digits read", right, n)
	}
}

func TestReadMeters(t *testing.T) {
	var r camera.Reader
	told := 0
	for _, c := range []struct{ text, want string }{
		{"24.61", "24.61"}, {"-3.507", "-3.507"}, {"0L", "OL"}, {"118.2", "118.2"}, {"0.052", "0.052"}, {"8888", "8888"},
	} {
		for seed := range uint64(2) {
			m := render.NewMeter(500+seed, render.Easy, render.Options{Text: c.text, W: 640, H: 480})
			rd, err := r.Read(plane(m.Frame(0)))
			if err != nil {
				t.Fatal(err)
			}
			if !rd.OK() {
				t.Logf("meter %d shows %q: read %q, reason %q", seed, c.text, rd.Text, rd.Reason)
				continue
			}
			if told++; rd.Text != c.want {
				t.Errorf("meter %d shows %q: read %q", seed, c.text, rd.Text)
				continue
			}
			if over := c.text == "0L"; over != (rd.Shows == camera.Over) {
				t.Errorf("%q: shows %s", c.text, rd.Shows)
			}
			if rd.Shows == camera.Number && rd.Value.String() != c.want {
				t.Errorf("%q: value %s", c.text, rd.Value)
			}
		}
	}
	if told < 9 {
		t.Errorf("%d of 12 easy meters told", told)
	}
}

// Meters of which the reader once was sure and wrong: it took a sign out of the edge of the window, or left out a sign, a point or a digit whose
// ink stands there. It may read them or not.
func TestInkIsExplained(t *testing.T) {
	var r camera.Reader
	for _, seed := range []uint64{3000477, 3000537, 3000814, 3000828, 3000903, 3000971} {
		m := render.NewMeter(seed, render.Medium, render.Options{W: 640, H: 480})
		rd, err := r.Read(plane(m.Frame(0)))
		if err != nil {
			t.Fatal(err)
		}
		if rd.OK() && !same(rd, m.Text) {
			t.Errorf("meter %d shows %q: read %q", seed, m.Text, rd.Text)
		}
	}
}

func TestReadNothing(t *testing.T) {
	var r camera.Reader
	for _, size := range [][2]int{{1, 1}, {3, 500}, {500, 3}, {640, 480}, {2000, 40}} {
		p := &camera.Plane{Y: make([]byte, size[0]*size[1]), W: size[0], H: size[1], Stride: size[0]}
		for i := range p.Y {
			p.Y[i] = byte(120 + i*i%7)
		}
		rd, err := r.Read(p)
		if err != nil || rd.OK() {
			t.Errorf("%v without a display: %+v, %v", size, rd, err)
		} else if rd.Reason.Say() == "" {
			t.Errorf("%v: reason %q has no words", size, rd.Reason)
		}
	}
}

func TestVote(t *testing.T) {
	var r camera.Reader
	read := func(text string, frame int) *camera.Reading {
		rd, err := r.Read(plane(render.NewMeter(501, render.Easy, render.Options{Text: text, W: 480, H: 360}).Frame(frame)))
		if err != nil {
			t.Fatal(err)
		}
		return rd
	}
	a, b, c, other := read("24.61", 0), read("24.61", 1), read("24.61", 2), read("31.78", 0)
	signed, signed2, more, less := read("-24.61", 0), read("-24.61", 1), read("124.61", 0), read("4.61", 0)
	for _, k := range []struct {
		name   string
		frames []*camera.Reading
		why    camera.Reason
	}{
		{"three agree", []*camera.Reading{a, b, c}, ""},
		{"one of four differs", []*camera.Reading{a, other, b, c}, camera.Unclear},
		{"one of four lacks a digit", []*camera.Reading{a, less, b, c}, ""},
		{"one of four sees a digit more", []*camera.Reading{a, more, b, c}, camera.EndUnsure},
		{"one of four sees a sign", []*camera.Reading{a, signed, b, c}, camera.SignUnsure},
		{"one of three sees no sign", []*camera.Reading{signed, signed2, a}, camera.SignUnsure},
		{"the same picture again and again", []*camera.Reading{a, a, a, a}, camera.Changing},
		{"one alone", []*camera.Reading{a}, camera.Changing},
		{"two differ", []*camera.Reading{a, other}, camera.Unclear},
		{"none", nil, camera.NoDisplay},
		{"missing", []*camera.Reading{nil, nil}, camera.NoDisplay},
	} {
		v := camera.Vote(k.frames)
		if v.Reason != k.why || k.why == "" && v.Text != "24.61" {
			t.Errorf("%s: %q, reason %q, want %q", k.name, v.Text, v.Reason, k.why)
		}
	}
}

// A display whose last digit jumps is reported as such.
func TestVoteJumping(t *testing.T) {
	var r camera.Reader
	var frames []*camera.Reading
	for i, text := range []string{"24.61", "24.63", "24.62", "24.61"} {
		rd, err := r.Read(plane(render.NewMeter(501, render.Easy, render.Options{Text: text, W: 480, H: 360}).Frame(i)))
		if err != nil {
			t.Fatal(err)
		}
		frames = append(frames, rd)
	}
	if v := camera.Vote(frames); !v.Jumping || v.Reason != camera.Changing {
		t.Errorf("%q, jumping %v, reason %q", v.Text, v.Jumping, v.Reason)
	}
}

func TestCounter(t *testing.T) {
	with := func(f func(*render.Blink)) render.Blink {
		b := status
		b.SNR, b.Jitter, b.Drop, b.Exposure = 8, 0.003, 0.02, 0.02
		b.Seconds = 30
		f(&b)
		return b
	}
	for _, c := range []struct {
		name string
		b    render.Blink
		id   string
		why  camera.Reason
	}{
		{"three flashes", with(func(b *render.Blink) { b.Groups = []int{3} }), "3", ""},
		{"nine flashes", with(func(b *render.Blink) { b.Groups = []int{9} }), "9", ""},
		{"one flash", with(func(b *render.Blink) { b.Groups = []int{1} }), "1", ""},
		{"two digits", with(func(b *render.Blink) { b.Groups = []int{3, 2}; b.Pause = 3.5 }), "3-2", ""},
		{"long and short", with(func(b *render.Blink) { b.Groups = []int{5}; b.Long = 2; b.Pause = 3 }), "2-3", ""},
		{"heartbeat", with(func(b *render.Blink) { b.Groups = []int{1}; b.On, b.Off, b.Pause = 0.5, 0.5, 0.5 }), "heartbeat", ""},
		{"flutter", with(func(b *render.Blink) { b.Groups = []int{1}; b.On, b.Off, b.Pause = 0.12, 0.12, 0.12 }), "flutter", ""},
		{"steady", with(func(b *render.Blink) { b.Groups = []int{1}; b.On = 1000; b.StartAnywhere = false }), "steady", ""},
		{"off", with(func(b *render.Blink) { b.On = 0 }), "off", ""},
		{"off or not, short exposure", with(func(b *render.Blink) { b.On, b.Exposure = 0, 0.004 }), "", camera.ShortExposed},
		{"half wave", with(func(b *render.Blink) { b.Groups, b.Drive, b.Exposure = []int{4}, render.HalfWave, 0.01 }), "", camera.Chopped},
		{"one cycle", with(func(b *render.Blink) { b.Groups = []int{4}; b.Seconds = 4; b.StartAnywhere = false }), "", camera.TooShort},
	} {
		var k camera.Counter
		feed(t, &k, c.b, 5)
		code := k.Code()
		if code.Reason != c.why || c.why == "" && code.ID() != c.id {
			t.Errorf("%s: %q, reason %q (on %.2f off %.2f pause %.2f snr %.1f), want %q, %q", c.name, code.ID(), code.Reason, code.On, code.Off, code.Pause, code.SNR, c.id, c.why)
		}
	}
}

func TestCounterRefuses(t *testing.T) {
	var k camera.Counter
	if err := k.Add(camera.Sample{T: 10, Spot: 1, Ring: 1}); err != nil {
		t.Fatal(err)
	}
	for name, s := range map[string]camera.Sample{
		"same time": {T: 10}, "earlier": {T: 5}, "negative": {T: -1}, "no number": {T: 20, Spot: math.NaN()},
		"endless": {T: 20, Ring: math.Inf(1)}, "exposure": {T: 20, Exposure: math.NaN()},
	} {
		if k.Add(s) == nil {
			t.Errorf("%s: taken", name)
		}
	}
	for i := range 20000 { // memory stays bounded
		if err := k.Add(camera.Sample{T: int64(100 + i*33e6), Spot: 1, Ring: 1}); err != nil {
			t.Fatal(err)
		}
	}
	if k.Span() > 4096*0.034 {
		t.Errorf("%v s kept", k.Span())
	}
}

func TestLamp(t *testing.T) {
	b := status
	b.Groups, b.Pause, b.Exposure, b.Seconds = []int{2}, 1.5, 0.02, 12
	s := render.NewScene(3, 160, 120, b)
	s.Shake, s.Zoom, s.Tints = 5, 0.1, [][3]float64{{1, 0.1, 0.1}}
	var l camera.Lamp
	var x, y float64
	s.Run(3, func(f *render.Film) {
		if err := l.See(&camera.Plane{Y: f.Pix, W: 160, H: 120, Stride: 160, Cb: f.Cb, Cr: f.Cr, CStride: 160, Sub: 1, Time: f.T}); err != nil {
			t.Fatal(err)
		}
		x, y = f.X, f.Y
	})
	if c := l.Code(); !c.OK() || c.ID() != "2" {
		t.Errorf("two flashes counted as %q, reason %q", c.ID(), c.Reason)
	}
	if u, v, _, ok := l.Where(); !ok || math.Hypot(u-x, v-y) > 6 {
		t.Errorf("light at %.0f,%.0f said to be at %.0f,%.0f", x, y, u, v)
	}
	if err := l.See(&camera.Plane{Y: make([]byte, 160*120), W: 160, H: 120, Stride: 160, Time: 1}); !errors.Is(err, camera.ErrTime) {
		t.Errorf("an earlier picture is taken: %v", err)
	}
	if err := l.See(&camera.Plane{Y: make([]byte, 90*90), W: 90, H: 90, Stride: 90, Time: 1e12}); !errors.Is(err, camera.ErrSize) {
		t.Errorf("a picture of another size is taken: %v", err)
	}
}

func TestCompare(t *testing.T) {
	var c camera.Comparer
	for seed := range uint64(3) {
		w := render.NewWiring(40+seed, 800, 600, 0.4, seed > 0)
		ts, m, err := c.Compare(shot(w.Before), shot(w.Later), w.Terminals)
		if err != nil {
			t.Fatal(err)
		}
		if m.Inliers < 40 || m.Residual > 2.5 {
			t.Errorf("pair %d: %d points, residual %.1f", seed, m.Inliers, m.Residual)
		}
		for i, x := range ts {
			changed := w.Colours[i] != w.After[i]
			if x.Change != camera.Hidden && changed != (x.Change != camera.Same) {
				t.Errorf("pair %d terminal %d: %s to %q is called %s, score %.1f", seed, i, w.Colours[i], w.After[i], x.Change, x.Score)
			}
		}
	}
	flat := &camera.Plane{Y: make([]byte, 300*300), W: 300, H: 300, Stride: 300}
	if _, _, err := c.Compare(flat, flat, nil); !errors.Is(err, camera.ErrRegister) {
		t.Errorf("pictures of nothing match: %v", err)
	}
}

func TestWireColour(t *testing.T) {
	right := 0
	for i, name := range render.WireNames {
		s := render.NewSwatch(uint64(i), name)
		p := shot(s.Shot)
		white, ok := camera.WhiteAt(p, int(s.Card[0]), int(s.Card[1]), 5)
		if !ok {
			t.Fatalf("%s: the card cannot be measured", name)
		}
		got := camera.WireColour(p, s.Wire[0], s.Wire[1], s.Radius, s.Along, white)
		if got[0].Code == name {
			right++
		} else if got[1].Code != name {
			t.Errorf("%s: %v", name, got[:2])
		}
	}
	if right < 10 {
		t.Errorf("%d of 11 colours named", right)
	}
	if got := camera.WireColour(&camera.Plane{Y: []byte{1}, W: 1, H: 1, Stride: 1}, 0, 0, 5, 0, camera.White{}); got != nil {
		t.Errorf("a colour without a white: %v", got)
	}
}

func TestFireWatch(t *testing.T) {
	f := render.Fire{W: 48, H: 36, FPS: 30, Exposure: 0.02, Mains: 50, Seconds: 14, Room: 30, Noise: 2, Brightness: 100, GlowAt: 2, FlameAt: 7}
	var w camera.FireWatch
	w.Spot, w.Ref = region(f.Spot()), region(f.Ref())
	f.Run(1, func(s *render.Shot, at int64, state int) {
		p := shot(s)
		p.Time = at
		if err := w.See(p); err != nil {
			t.Fatal(err)
		}
	})
	ev := w.Events()
	if len(ev) != 2 || ev[0].What != camera.Glow || ev[1].What != camera.Flame {
		t.Fatalf("events %+v, want glow and flame", ev)
	}
	if ev[0].To < 2e9 || ev[1].To < 7e9 || ev[1].To > 10e9 {
		t.Errorf("events at %+v", ev)
	}
}

func TestParsePlate(t *testing.T) {
	for _, c := range []struct {
		field camera.PlateField
		text  string
		want  string // values joined, empty for refused
	}{
		{camera.PlateVolts, "120 V", "120 V"},
		{camera.PlateVolts, "208-230", "208 V 230 V"},
		{camera.PlateVolts, "120/240 volts", "120 V 240 V"},
		{camera.PlateVolts, "12000", ""},
		{camera.PlateVolts, "24 A", ""},
		{camera.PlateHertz, "60 Hz", "60 Hz"},
		{camera.PlateHertz, "55", ""},
		{camera.PlateInput, "100,000 BTU/H", "100000 Btu/h"},
		{camera.PlateInput, "80 000", "80000 Btu/h"},
		{camera.PlateInput, "1,00,000", ""},
		{camera.PlateInput, "100,050", ""},
		{camera.PlateManifold, "3.5 in. w.c.", "3.5 inH2O"},
		{camera.PlateManifold, "35", ""},
		{camera.PlateRise, "35 to 65", "35 dF 65 dF"},
		{camera.PlateRise, "65-35", ""},
		{camera.PlateRise, "50", ""},
		{camera.PlateRise, "-35--65", ""},
		{"colour", "red", ""},
	} {
		p, err := camera.ParsePlate(c.field, c.text)
		var got []string
		for _, v := range p.Values {
			got = append(got, v.String())
		}
		if s := strings.Join(got, " "); err == nil && s != c.want || err != nil && (c.want != "" || !errors.Is(err, camera.ErrPlate)) {
			t.Errorf("%s %q: %q, %v, want %q", c.field, c.text, s, err, c.want)
		}
	}
	in, _ := camera.ParsePlate(camera.PlateInput, "80,000")
	out, _ := camera.ParsePlate(camera.PlateOutput, "90,000")
	if odd := camera.CheckPlate([]camera.Plate{in, out}); len(odd) != 1 {
		t.Errorf("an output above the input: %v", odd)
	}
}

func TestReasonsHaveWords(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range camera.Reasons() {
		s := r.Say()
		if s == "" || seen[s] || s == camera.Reason("no such reason").Say() {
			t.Errorf("%q says %q", r, s)
		}
		seen[s] = true
	}
}

func TestSynthIsFixed(t *testing.T) {
	a := render.NewMeter(9, render.Hard, render.Options{W: 160, H: 120, Tall: 20}).Frame(3)
	b := render.NewMeter(9, render.Hard, render.Options{W: 160, H: 120, Tall: 20}).Frame(3)
	if string(a.Pix) != string(b.Pix) || a.Text != b.Text {
		t.Error("one seed gives two pictures")
	}
	if fmt.Sprint(a.Cells) != fmt.Sprint(b.Cells) {
		t.Error("one seed gives two truths")
	}
}
