package camera_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"sort"
	"strings"
	"testing"
	"time"

	"readback/core/camera"
	"readback/core/lab/metric"
	"readback/core/lab/render"
)

// Seeds of the figures: no test and no training run draws from them.
const heldOut = 7_000_000

// TestFigures measures them in parts, so that one part can be run by itself: go test -run 'TestFigures/displays'.
func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		for _, part := range []struct {
			name string
			f    func(*testing.T, metric.Adder)
		}{
			{"digits", digitFigure}, {"meters", meterFigures}, {"displays", otherFigures}, {"nothing", nothingFigure}, {"votes", votes},
			{"blinks", blinkFigures}, {"hand", handFigure}, {"wires", wireFigures}, {"colours", colourFigures}, {"fire", fireFigure},
			{"films", otherFilms}, {"time", timeFigures},
		} {
			t.Run(part.name, func(t *testing.T) { part.f(t, add) })
		}
	})
}

func pct(n, of int) float64 { return 100 * float64(n) / math.Max(1, float64(of)) }

// digitFigure reads the photographed digits whose names hash even; the odd ones were learnt from.
func digitFigure(t *testing.T, add metric.Adder) {
	var r camera.Reader
	right, n := 0, 0
	for _, f := range digitPhotos(t) {
		if f.Learn() {
			continue
		}
		n++
		if got := readDigit(t, &r, f.Plane); got == f.Want() {
			right++
		} else {
			t.Logf("%s reads %q", f.Name, got)
		}
	}
	add("eye.digit_pct", pct(right, n), "%", ">= 99.5", n)
}

// outcome counts what became of whole readings.
type outcome struct {
	right, wrong, n int
	why             map[camera.Reason]int
}

// readMeters reads n drawn meters, one picture each.
func readMeters(t testing.TB, grade render.Grade, from uint64, n int, each func(*render.Pic, *camera.Reading)) outcome {
	var r camera.Reader
	o := outcome{n: n, why: map[camera.Reason]int{}}
	for i := range uint64(n) {
		p := render.NewMeter(from+i, grade, render.Options{}).Frame(0)
		rd, err := r.Read(plane(p))
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case !rd.OK():
			o.why[rd.Reason]++
		case same(rd, p.Text):
			o.right++
		default:
			o.wrong++
			t.Logf("meter %d, grade %d: shows %q, read %q (P %.3f)", from+i, grade, p.Text, rd.Text, rd.P)
		}
		if each != nil {
			each(p, rd)
		}
	}
	return o
}

// same tells whether a reading is the drawn truth; all forms of over-range are one.
func same(rd *camera.Reading, text string) bool {
	if rd.Shows == camera.Over {
		return strings.HasSuffix(text, "L")
	}
	return rd.Text == text
}

func meterFigures(t *testing.T, add metric.Adder) {
	n, hard := few(400), few(100)
	peers := newPeers(t)
	o := readMeters(t, render.Medium, heldOut, n, func(p *render.Pic, rd *camera.Reading) {
		if peers.n < few(40) {
			peers.read(p, rd)
		}
	})
	t.Log("meter abstained:", reasons(o.why))
	add("eye.meter_pct", pct(o.right, n), "%", "reported", n)
	add("eye.meter_wrong_pct", pct(o.wrong, n), "%", "<= 0.5", n)
	o = readMeters(t, render.Hard, heldOut+20000, hard, nil)
	t.Log("hard meter abstained:", reasons(o.why))
	add("eye.meter_hard_pct", pct(o.right, hard), "%", "reported", hard)
	add("eye.meter_hard_wrong_pct", pct(o.wrong, hard), "%", "reported", hard)
	if best, ok := peers.best(); ok {
		add("eye.peer_pct", best, "%", "reported", peers.n)
	}
	t.Log(peers.table())
}

// few is n, or an eighth of it where tests are to be short: all figures of this package take an hour.
func few(n int) int {
	if testing.Short() {
		return max(4, n/8)
	}
	return n
}

func reasons(m map[camera.Reason]int) string {
	var out []string
	for r, n := range m {
		out = append(out, fmt.Sprintf("%s %d", r, n))
	}
	sort.Strings(out)
	return strings.Join(out, ", ")
}

var status = render.Blink{On: 0.25, Off: 0.25, Gap: 1, Pause: 2, FPS: 30, Exposure: 0.01, SNR: 6, Jitter: 0.01, Drop: 0.1,
	LengthSpread: 0.02, AutoExposure: true, StartAnywhere: true, Mains: 50}

// watch plays n lights with one to nine flashes and counts right and wrong answers.
func watch(t *testing.T, n int, base render.Blink, spoil func(i int, b *render.Blink)) (right, wrong int) {
	var k camera.Counter
	for i := range n {
		r := rand.New(rand.NewPCG(heldOut+uint64(i), 9))
		b := base
		count := 1 + r.IntN(9)
		b.Groups = []int{count}
		b.Seconds = 3.2*(b.Pause+float64(count)*(b.On+b.Off)) + 0.5
		if spoil != nil {
			spoil(i, &b)
		}
		k.Reset()
		feed(t, &k, b, heldOut+uint64(i)*7)
		switch c := k.Code(); {
		case !c.OK():
		case c.ID() == fmt.Sprint(count):
			right++
		default:
			wrong++
		}
	}
	return right, wrong
}

func blinkFigures(t *testing.T, add metric.Adder) {
	const n = 1000
	for _, c := range []struct {
		name   string
		snr    float64
		target string
	}{{"3", 3, ">= 99.9"}, {"6", 6, ">= 100"}} {
		b := status
		b.SNR = c.snr
		right, wrong := watch(t, n, b, nil)
		add("eye.blink"+c.name+"_pct", pct(right, n), "%", c.target, n)
		add("eye.blink"+c.name+"_wrong_pct", pct(wrong, n), "%", "reported", n)
	}
	b := status
	b.Drive, b.Jitter, b.Drop = render.HalfWave, 0.003, 0.02
	right, wrong := watch(t, n, b, func(i int, b *render.Blink) {
		b.Exposure = [...]float64{0.001, 0.003, 0.005, 0.008, 0.01}[i%5]
		if i%2 == 1 {
			b.Mains = 60
			b.FPS = [...]float64{30, 29.97, 24}[i/2%3]
		}
	})
	add("eye.blink_halfwave_wrong_pct", pct(wrong, n), "%", "<= 0.5", n)
	add("eye.blink_halfwave_pct", pct(right, n), "%", "reported", n)
}

// handFigure films a light by hand until the counter is sure or half a minute has gone by.
func handFigure(t *testing.T, add metric.Adder) {
	const n = 40
	right, wrong := 0, 0
	for i := range n {
		r := rand.New(rand.NewPCG(heldOut+uint64(i), 10))
		count := 1 + r.IntN(4)
		b := status
		b.Groups, b.Pause, b.Exposure, b.Jitter, b.Drop = []int{count}, 1.5, 0.02, 0.005, 0.02
		b.Seconds = 6 + 3.2*(b.Pause+float64(count)*0.5)
		s := render.NewScene(heldOut+uint64(i), 320, 240, b)
		s.Shake, s.Zoom = 20, 0.2
		code := counted(t, s, heldOut+uint64(i))
		switch {
		case !code.OK():
			t.Logf("film %d: %d flashes, abstained: %s", i, count, code.Reason)
		case code.ID() == fmt.Sprint(count):
			right++
		default:
			wrong++
			t.Logf("film %d: %d flashes, counted %s", i, count, code.ID())
		}
	}
	add("eye.blink_hand_pct", pct(right, n), "%", ">= 99", n)
	add("eye.blink_hand_wrong_pct", pct(wrong, n), "%", "reported", n)
	colouredFigures(t, add)
	unitFigures(t, add)
}

// counted shows the film of a light to the counter until it is sure.
func counted(t *testing.T, s *render.Scene, seed uint64) (code camera.Code) {
	var l camera.Lamp
	k := 0
	s.Run(seed, func(f *render.Film) {
		if code.OK() {
			return
		}
		p := camera.Plane{Y: f.Pix, W: s.W, H: s.H, Stride: s.W, Cb: f.Cb, Cr: f.Cr, CStride: s.W, Sub: 1, Time: f.T, Exposure: 0.02}
		if err := l.See(&p); err != nil {
			t.Fatal(err)
		}
		if k++; k%30 == 0 {
			code = l.Code()
		}
	})
	if !code.OK() {
		code = l.Code()
	}
	return code
}

// colouredFigures counts lights in colour, every other one in two colours.
func colouredFigures(t *testing.T, add metric.Adder) {
	const n = 60
	tints := map[string][3]float64{"red": {1, 0.1, 0.1}, "amber": {1, 0.6, 0}, "green": {0.3, 1, 0.2}}
	names := []string{"red", "amber", "green"}
	right, wrong := 0, 0
	for i := range n {
		r := rand.New(rand.NewPCG(heldOut+uint64(i), 12))
		b := status
		b.Pause, b.Exposure, b.Jitter, b.Drop = 1.5, 0.02, 0.005, 0.02
		c1 := r.IntN(3)
		c2 := (c1 + 1 + r.IntN(2)) % 3
		n1, n2 := 1+r.IntN(3), 1+r.IntN(3)
		want := fmt.Sprintf("%s-%d-%s-%d", names[c1], n1, names[c2], n2)
		other := fmt.Sprintf("%s-%d-%s-%d", names[c2], n1, names[c1], n2)
		if i%2 == 0 {
			c2, want = c1, fmt.Sprint(n1+n2)
		}
		b.Groups = []int{n1 + n2}
		b.Seconds = 6 + 3.2*(b.Pause+float64(n1+n2)*0.5)
		s := render.NewScene(heldOut+uint64(i), 320, 240, b)
		s.Shake, s.Zoom = 8, 0.1
		for range n1 {
			s.Tints = append(s.Tints, tints[names[c1]])
		}
		s.Tints = append(s.Tints, tints[names[c2]])
		switch code := counted(t, s, heldOut+uint64(i)); {
		case !code.OK():
			t.Logf("coloured film %d: %s, abstained: %s", i, want, code.Reason)
		case code.Fits(want) && !code.Fits(other):
			right++
		case !code.Fits(other) && code.MayBe(want): // not told apart, and known to be so
			t.Logf("coloured film %d: %s, colours not told apart", i, want)
		default:
			wrong++
			t.Logf("coloured film %d: %s, counted %s", i, want, code.ID())
		}
	}
	add("eye.blink_colours_pct", pct(right, n), "%", "reported", n)
	add("eye.blink_colours_wrong_pct", pct(wrong, n), "%", "reported", n)
}

func wireFigures(t *testing.T, add metric.Adder) {
	n := few(36)
	var c camera.Comparer
	ok := 0
	for i := range n {
		w := render.NewWiring(heldOut+uint64(i), 1000, 750, 1, true)
		_, m, err := c.Compare(shot(w.Before), shot(w.Later), nil)
		if err != nil {
			t.Logf("pair %d: %v", i, err)
			continue
		}
		truth, worst := camera.Map(w.Truth), 0.0
		for _, k := range [4][2]float64{{0, 0}, {1000, 0}, {1000, 750}, {0, 750}} {
			x, y := m.Map.Apply(k[0], k[1])
			u, v := truth.Apply(k[0], k[1])
			worst = math.Max(worst, math.Hypot(x-u, y-v))
		}
		if worst < 5 {
			ok++
		}
	}
	add("eye.wire_registered_pct", pct(ok, n), "%", ">= 98", n)
	otherWires(t, add)
	found, missed, false_, hidden, same := 0, 0, 0, 0, 0
	for i := range n {
		w := render.NewWiring(heldOut+1000+uint64(i), 1000, 750, 0.6, true)
		ts, _, err := c.Compare(shot(w.Before), shot(w.Later), w.Terminals)
		if err != nil {
			missed++ // the change in this pair is not found
			continue
		}
		for k, x := range ts {
			changed := w.Colours[k] != w.After[k]
			switch {
			case x.Change == camera.Hidden:
				hidden++
				if changed {
					t.Logf("pair %d terminal %d: changed and hidden", i, k)
				}
			case changed && x.Change != camera.Same:
				found++
			case changed:
				missed++
				t.Logf("pair %d terminal %d: %s to %q not seen, score %.1f", i, k, w.Colours[k], w.After[k], x.Score)
			case x.Change != camera.Same:
				false_++
				t.Logf("pair %d terminal %d: %s called %s, score %.1f", i, k, w.Colours[k], x.Change, x.Score)
			default:
				same++
			}
		}
	}
	add("eye.wire_own_p", float64(found)/math.Max(1, float64(found+false_)), "1", "reported", found+false_)
	add("eye.wire_own_r", float64(found)/math.Max(1, float64(found+missed)), "1", "reported", found+missed)
	add("eye.wire_hidden_pct", pct(hidden, hidden+found+missed+false_+same), "%", "reported", hidden+found+missed+false_+same)
}

func colourFigures(_ *testing.T, add metric.Adder) {
	const n = 440
	one, two := 0, 0
	for i := range n {
		s := render.NewSwatch(heldOut+uint64(i), render.WireNames[i%len(render.WireNames)])
		p := shot(s.Shot)
		white, ok := camera.WhiteAt(p, int(s.Card[0]), int(s.Card[1]), 5)
		if !ok {
			continue
		}
		got := camera.WireColour(p, s.Wire[0], s.Wire[1], s.Radius, s.Along, white)
		if len(got) > 0 && got[0].Code == s.Name {
			one++
			two++
		} else if len(got) > 1 && got[1].Code == s.Name {
			two++
		}
	}
	add("eye.colour_top1_pct", pct(one, n), "%", ">= 95", n)
	add("eye.colour_top2_pct", pct(two, n), "%", ">= 99", n)
}

func fireFigure(t *testing.T, add metric.Adder) {
	right, wrong, n := 0, 0, 0
	for i := range 60 {
		f := fire(heldOut + uint64(i))
		var w camera.FireWatch
		w.Spot, w.Ref = region(f.Spot()), region(f.Ref())
		last, since, k := -1, int64(0), 0
		f.Run(heldOut+uint64(i), func(s *render.Shot, at int64, state int) {
			p := shot(s)
			p.Time, p.Exposure = at, f.Exposure
			if err := w.See(p); err != nil {
				t.Fatal(err)
			}
			if state != last {
				last, since = state, at
			}
			if k++; k%15 != 0 || at-since < 25e8 {
				return
			}
			n++
			switch now, _ := w.Now(); now {
			case [...]camera.Fire{camera.NoFire, camera.Glow, camera.Flame}[state]:
				right++
			case camera.Unsure:
			default:
				wrong++
			}
		})
	}
	add("eye.glow_pct", pct(right, n), "%", ">= 99", n)
	add("eye.glow_wrong_pct", pct(wrong, n), "%", "reported", n)
}

// timeFigures takes the best of several runs on each input and the median over inputs, because other work shares the machine.
func timeFigures(t *testing.T, add metric.Adder) {
	ms := func(n int, f func(i int)) float64 {
		var d []float64
		for i := range n {
			best := math.Inf(1)
			for range 6 {
				start := time.Now()
				f(i)
				best = math.Min(best, float64(time.Since(start))/1e6)
			}
			d = append(d, best)
		}
		sort.Float64s(d)
		return d[len(d)/2]
	}
	var pics []*render.Pic
	for i := range 12 {
		pics = append(pics, render.NewMeter(heldOut+uint64(i), render.Medium, render.Options{}).Frame(0))
	}
	var r camera.Reader
	add("eye.display_ms", ms(12, func(i int) {
		if _, err := r.Read(plane(pics[i%len(pics)])); err != nil {
			t.Fatal(err)
		}
	}), "ms", "<= 12", 12)
	// what a reader holds after a picture of twelve million pixels, beside the picture
	big := &camera.Plane{Y: make([]byte, 4000*3000), W: 4000, H: 3000, Stride: 4000}
	for y := range big.H {
		for x := range big.W {
			big.Y[y*4000+x] = pics[0].Pix[y*pics[0].H/3000*pics[0].W+x*pics[0].W/4000]
		}
	}
	var was, is runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&was)
	var fresh camera.Reader
	if _, err := fresh.Read(big); err != nil {
		t.Fatal(err)
	}
	runtime.ReadMemStats(&is)
	runtime.KeepAlive(&fresh)
	add("eye.mem_mb", float64(is.TotalAlloc-was.TotalAlloc)/1e6, "MB", "<= 60", 1)
	b := status
	b.Groups, b.Seconds = []int{3}, 3
	s := render.NewScene(heldOut, 640, 480, b)
	s.Shake, s.Zoom = 20, 0.2
	var l camera.Lamp
	var d []float64
	s.Run(1, func(f *render.Film) {
		start := time.Now()
		if err := l.See(&camera.Plane{Y: f.Pix, W: 640, H: 480, Stride: 640, Time: f.T}); err != nil {
			t.Fatal(err)
		}
		d = append(d, float64(time.Since(start))/1e6)
	})
	sort.Float64s(d)
	add("eye.blink_ms", d[len(d)/5] /* each picture is seen once: the lower fifth */, "ms", "<= 2", len(d))
	var c camera.Comparer
	w := render.NewWiring(heldOut, 1000, 750, 0.6, true)
	before, after := shot(w.Before), shot(w.Later)
	add("eye.wire_ms", ms(2, func(int) {
		if _, _, err := c.Compare(before, after, w.Terminals); err != nil {
			t.Fatal(err)
		}
	}), "ms", "<= 30", 2)
}
