package camera_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"sort"
	"strings"
	"testing"

	"readback/core/camera"
	"readback/core/lab/metric"
	"readback/core/lab/otherrender"
	"readback/core/lab/render"
)

// What the other hand drew is only ever tuned on at its odd seeds; these figures take the even ones.
func even(i int) uint64 { return 2 * uint64(i+1) }

// planeOf is a colour picture as the page sends it: colour at half size, one pixel of each four standing for theirs.
func planeOf(m *image.RGBA) *camera.Plane {
	b := m.Bounds()
	w, h := b.Dx(), b.Dy()
	cw, ch := (w+1)/2, (h+1)/2
	p := &camera.Plane{Y: make([]byte, w*h), W: w, H: h, Stride: w, Cb: make([]byte, cw*ch), Cr: make([]byte, cw*ch), CStride: cw, Sub: 2}
	for y := range h {
		for x := range w {
			i := m.PixOffset(b.Min.X+x, b.Min.Y+y)
			l, cb, cr := color.RGBToYCbCr(m.Pix[i], m.Pix[i+1], m.Pix[i+2])
			p.Y[y*w+x] = l
			if x%2 == 0 && y%2 == 0 {
				p.Cb[y/2*cw+x/2], p.Cr[y/2*cw+x/2] = cb, cr
			}
		}
	}
	return p
}

// tenfold tells whether two texts are the same digits with the point elsewhere.
func tenfold(a, b string) bool {
	return a != b && strings.ReplaceAll(a, ".", "") == strings.ReplaceAll(b, ".", "")
}

// calibration gathers told chances and what came of them.
type calibration struct{ p, right []float64 }

func (c *calibration) add(p float64, right bool) {
	r := 0.0
	if right {
		r = 1
	}
	c.p, c.right = append(c.p, p), append(c.right, r)
}

// error is the expected calibration error over ten classes of as many readings each.
func (c *calibration) error() float64 {
	order := make([]int, len(c.p))
	for i := range order {
		order[i] = i
	}
	sort.Slice(order, func(a, b int) bool { return c.p[order[a]] < c.p[order[b]] })
	sum := 0.0
	for k := range 10 {
		var p, r float64
		from, to := k*len(order)/10, (k+1)*len(order)/10
		for _, i := range order[from:to] {
			p, r = p+c.p[i], r+c.right[i]
		}
		sum += math.Abs(p - r)
	}
	return sum / math.Max(1, float64(len(order)))
}

// otherFigures reads the displays that another hand drew.
func otherFigures(t *testing.T, add metric.Adder) {
	var r camera.Reader
	var cal calibration
	legible, right, asked, wrong, shift, n := 0, 0, 0, 0, 0, 0
	why := map[camera.Reason]int{}
	for i := range few(200) {
		for g := otherrender.Easy; g <= otherrender.Hard; g++ {
			s := otherrender.Draw(even(i), g)
			rd, err := r.Read(planeOf(s.Image))
			if err != nil {
				t.Fatal(err)
			}
			ok := s.Legible && same(rd, strings.ReplaceAll(s.Shown, "O", "0"))
			if rd.OK() || rd.Question() {
				cal.add(rd.P, ok)
			}
			if !s.HasDisplay {
				continue // counted in nothingFigure
			}
			n++
			if s.Legible {
				legible++
			}
			switch {
			case rd.OK() && ok:
				right++
			case rd.OK():
				wrong++
				if tenfold(rd.Text, s.Behind) {
					shift++
				}
				t.Logf("%v (behind %q): told %q (P %.4f)", s, s.Behind, rd.Text, rd.P)
			case rd.Question() && ok:
				asked++
			default:
				if s.Legible {
					why[rd.Reason]++
				}
			}
		}
	}
	t.Log("other hand: legible and not told:", reasons(why))
	add("eye.other_right_pct", pct(right, legible), "%", ">= 90", legible)
	add("eye.other_asked_pct", pct(asked, legible), "%", "reported", legible)
	add("eye.other_wrong_pct", pct(wrong, n), "%", "<= 0.3", n)
	add("eye.other_point_pct", pct(shift, n), "%", "<= 0", n)
	add("eye.ece", cal.error(), "1", "<= 0.01", len(cal.p))
}

// nothingFigure reads pictures without a display: what the other hand drew, and our own until there are two thousand.
func nothingFigure(t *testing.T, add metric.Adder) {
	var r camera.Reader
	empty, told := 0, 0
	read := func(what string, p *camera.Plane) {
		rd, err := r.Read(p)
		if err != nil {
			t.Fatal(err)
		}
		empty++
		if rd.OK() {
			told++
			t.Logf("%s: told %q (P %.4f)", what, rd.Text, rd.P)
		}
	}
	for i := range few(200) {
		for g := otherrender.Easy; g <= otherrender.Hard; g++ {
			if s := otherrender.Draw(even(i), g); !s.HasDisplay {
				read(s.String(), planeOf(s.Image))
			}
		}
	}
	for i := range max(0, few(2000)-empty) {
		seed := heldOut + uint64(i)
		v := render.NewPanel(seed, render.PanelOptions{W: 640, H: 480, Nothing: true}).Shoot(0)
		read(fmt.Sprintf("own picture %d", seed), &camera.Plane{Y: v.Y, W: v.W, H: v.H, Stride: v.W, Cb: v.Cb, Cr: v.Cr, CStride: (v.W + 1) / 2, Sub: 2})
	}
	add("eye.nothing_read", float64(told), "", "<= 2", empty)
}

// votes reads eight frames of moving hands.
func votes(t *testing.T, add metric.Adder) {
	var r camera.Reader
	n, right, wrong, jump, jumps := 0, 0, 0, 0, 0
	for i := range few(120) {
		var frames []*camera.Reading
		all := otherrender.Frames(even(i), 8)
		legible := true
		for _, s := range all {
			rd, err := r.Read(planeOf(s.Image))
			if err != nil {
				t.Fatal(err)
			}
			frames = append(frames, rd)
			legible = legible && s.Legible
		}
		if !all[0].HasDisplay {
			continue
		}
		v := camera.Vote(frames)
		if all[0].Jumping {
			jumps++
			if v.Jumping {
				jump++
			}
		}
		ok := false
		for _, s := range all {
			ok = ok || same(v, strings.ReplaceAll(s.Shown, "O", "0"))
		}
		n++
		switch {
		case v.OK() && ok:
			right++
		case v.OK():
			wrong++
			t.Logf("film %d shows %q, voted %q", even(i), all[0].Behind, v.Text)
		}
	}
	add("eye.vote_pct", pct(right, n), "%", "reported", n)
	add("eye.vote_wrong_pct", pct(wrong, n), "%", "<= 0.1", n)
	add("eye.jump_seen_pct", pct(jump, jumps), "%", "reported", jumps)
}

// otherWires compares the boards of the other hand.
func otherWires(t *testing.T, add metric.Adder) {
	found, missed, false_, unchanged, alarms, hidden, all := 0, 0, 0, 0, 0, 0, 0
	var c camera.Comparer
	for i := range few(60) {
		b := otherrender.Board(even(i))
		var at [][2]float64
		for _, q := range b.AtBefore {
			at = append(at, [2]float64{float64(q.X), float64(q.Y)})
		}
		changed := map[string]bool{}
		for k, w := range b.Wires {
			if b.Changes[k] != otherrender.Left {
				changed[w.Before], changed[w.After] = true, true
			}
		}
		alarm := false
		found2, _, err := c.Compare(planeOf(b.Before), planeOf(b.After), at)
		for k := range b.Terminals {
			is := changed[b.Terminals[k]]
			all++
			switch {
			case err != nil || found2[k].Change == camera.Hidden:
				hidden++
				if is {
					missed++
				}
			case is && found2[k].Change != camera.Same:
				found++
			case is:
				missed++
			case found2[k].Change != camera.Same:
				false_++
				alarm = true
			}
		}
		if !b.Changed {
			unchanged++
			if alarm {
				alarms++
			}
		}
	}
	add("eye.wire_p", float64(found)/math.Max(1, float64(found+false_)), "1", ">= 0.97", found+false_)
	add("eye.wire_r", float64(found)/math.Max(1, float64(found+missed)), "1", ">= 0.95", found+missed)
	add("eye.wire_false_pairs_pct", pct(alarms, unchanged), "%", "<= 3", unchanged)
	add("eye.wire_other_hidden_pct", pct(hidden, all), "%", "reported", all)
}

// otherFilms watches the films of the other hand: status lights that nobody points at, and burner windows.
func otherFilms(t *testing.T, add metric.Adder) {
	n, told, wrong := few(64), 0, 0
	for i := range n {
		f := otherrender.Light(even(i))
		var l camera.Lamp
		bad := ""
		for k := range f.N {
			p := planeOf(f.Frame(k))
			p.Time = int64(k) * 1e9 / int64(f.FPS)
			if err := l.See(p); err != nil {
				t.Fatal(err)
			}
			if k%12 != 11 {
				continue
			}
			c := l.Code()
			if !c.OK() {
				continue
			}
			want := map[otherrender.LightState]string{otherrender.LightOff: "off", otherrender.LightSteady: "steady"}[f.State]
			if f.State == otherrender.LightBlinks {
				want = fmt.Sprint(f.Code)
			}
			if c.ID() != want {
				bad = c.ID()
				break
			}
			told++
			break
		}
		if bad != "" {
			wrong++
			t.Logf("light %d is %s, code %d, %v: told %s", f.Seed, f.State, f.Code, f.Signs, bad)
		}
	}
	add("eye.light_untouched_wrong_pct", pct(wrong, n), "%", "<= 1", n)
	add("eye.light_untouched_told_pct", pct(told, n), "%", "reported", n)

	n, told, wrong = few(64), 0, 0
	for i := range n {
		f := otherrender.Fire(even(i))
		w := camera.FireWatch{Spot: region(f.Window.Min.X, f.Window.Min.Y, f.Window.Max.X, f.Window.Max.Y)}
		b := f.Frame(0).Bounds()
		cy, h := (f.Window.Min.Y+f.Window.Max.Y)/2, b.Dy()*16/100
		w.Ref = region(b.Dx()*2/100, cy-h, b.Dx()*22/100, cy+h)
		if (f.Window.Min.X+f.Window.Max.X)/2 < b.Dx()/2 {
			w.Ref = region(b.Dx()*78/100, cy-h, b.Dx()*98/100, cy+h)
		}
		bad := camera.Fire("")
		any := false
		for k := range f.N {
			p := planeOf(f.Frame(k))
			p.Time = int64(k) * 1e9 / int64(f.FPS)
			if err := w.See(p); err != nil {
				t.Fatal(err)
			}
			if k%12 != 11 {
				continue
			}
			e := w.FlameEvents()
			ok := true
			switch e.What {
			case camera.Unsure:
				continue
			case camera.Flame:
				ok = f.State == otherrender.FireFlame || f.State == otherrender.FireOut
			case camera.Held:
				ok = f.State == otherrender.FireFlame
			case camera.WentOut:
				ok = f.State == otherrender.FireOut && float64(k)/float64(f.FPS) > f.OutAt
			case camera.Glow:
				ok = f.State == otherrender.FireGlow
			case camera.NoFire:
				ok = f.State == otherrender.FireNothing
			}
			any = true
			if !ok {
				bad = e.What
			}
		}
		if any {
			told++
		}
		if bad != "" {
			wrong++
			t.Logf("fire %d is %s, %v: told %s", f.Seed, f.State, f.Signs, bad)
		}
	}
	add("eye.fire_wrong_pct", pct(wrong, n), "%", "<= 1", n)
	add("eye.fire_told_pct", pct(told, n), "%", "reported", n)
}
