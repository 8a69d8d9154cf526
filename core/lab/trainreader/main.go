// Command trainreader draws the samples that learn.py trains the finder, the aligner and the row reader on (-draw), and makes the small network of
// the hand-written reader: it draws meters, takes the patches the reader would judge,
// learns from them with a fixed seed, and writes the weights. It starts from nothing, so the same command gives the same
// weights, bit for bit, on every amd64 machine and with any number of processors; elsewhere the standard library's Exp and Hypot
// may differ in the last bit, and the weights with them.
//
// The committed weights are older than the last changes to the background of single digits and to the choice of rows: running
// this now gives others. Their command was the one below, with 14 instead of 24 jittered views of each photograph.
//
//	go run ./core/lab/trainreader -o core/camera/net.bin -digits testdata/camera/lcd-digits.zip -meters 3000 -epochs 8
package main

import (
	"archive/zip"
	"flag"
	"log"
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"

	"readback/core/camera"
	"readback/core/lab/digits"
	"readback/core/lab/render"
)

type sample struct {
	in     [camera.PatchLen]float32
	target [camera.NetOut]float32
}

func main() {
	out := flag.String("o", "net.bin", "weights file to write")
	photos := flag.String("digits", "", "archive of photographed digits; those whose name hashes odd are learnt from")
	meters := flag.Int("meters", 5000, "drawn meters to learn from")
	epochs := flag.Int("epochs", 8, "passes over all patches")
	seed := flag.Uint64("seed", 1, "seed of everything drawn")
	draws := flag.String("draw", "", "folder for samples for learn.py, instead of training the network of the hand-written reader")
	parts := flag.Int("parts", 1, "files of samples to draw")
	each := flag.Int("each", 1000, "pictures in each")
	flag.Parse()
	if *draws != "" {
		var err error
		if *photos != "" {
			err = photoSamples(*photos, *draws, 24, *seed)
		}
		if err == nil {
			err = drawSamples(*draws, *parts, *each, *seed, log.Printf)
		}
		if err != nil {
			log.Fatal(err)
		}
		return
	}
	n, err := train(*meters, *epochs, *seed, *photos, log.Printf)
	if err == nil {
		err = os.WriteFile(*out, n.Bytes(), 0o644)
	}
	if err != nil {
		log.Fatal(err)
	}
}

// train starts from a network that knows nothing: the rows that the reader finds without one make a first network from a
// quarter of the meters, and the rows it finds with that one make the second. The committed weights play no part.
func train(meters, epochs int, seed uint64, digits string, say func(string, ...any)) (*camera.Net, error) {
	n := &camera.Net{W: make([]float32, camera.NetLen)}
	for round, share := range [2]int{4, 1} {
		set := draw(n, meters/share, seed+uint64(round), say)
		if digits != "" {
			photos, err := photographs(n, digits, seed)
			if err != nil {
				return nil, err
			}
			say("round %d: %d patches from drawn meters, %d from photographs", round+1, len(set), len(photos))
			set = append(set, photos...)
		}
		n = learn(set, max(1, epochs/(2-round)), seed, say)
	}
	return n, nil
}

func jitters(r *rand.Rand, n int) []camera.Jitter {
	out := []camera.Jitter{{}}
	for range n {
		out = append(out, camera.Jitter{X: r.NormFloat64() * 0.06, W: r.NormFloat64() * 0.06, Y: r.NormFloat64() * 0.03, H: r.NormFloat64() * 0.04})
	}
	// clearly beside a digit: no glyph here
	side := 0.45 + 0.4*r.Float64()
	if r.IntN(2) == 0 {
		side = -side
	}
	return append(out, camera.Jitter{X: side})
}

// draw takes patches from drawn meters whose seeds start at 1<<40, far from those of the tests. Every meter has its own
// chance, so the patches do not depend on how many work at once.
func draw(net *camera.Net, n int, seed uint64, say func(string, ...any)) []sample {
	parts := make([][]sample, n)
	var next, done atomic.Int64
	var wg sync.WaitGroup
	for range runtime.NumCPU() {
		wg.Go(func() {
			rd := camera.Reader{Net: net}
			for {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				parts[i] = meter(&rd, uint64(i), seed)
				if d := done.Add(1); d%500 == 0 {
					say("%d meters", d)
				}
			}
		})
	}
	wg.Wait()
	return slices.Concat(parts...)
}

// meter takes patches from one drawn meter.
func meter(rd *camera.Reader, i, seed uint64) []sample {
	r := rand.New(rand.NewPCG(seed, 1<<32+i))
	grade := render.Medium
	switch {
	case i%2 == 0:
		grade = render.Hard
	case i%10 == 1:
		grade = render.Easy
	}
	p := render.NewMeter(1<<40+seed<<32+i, grade, render.Options{W: 480, H: 360, Tall: 24 + 66*r.Float64()}).Frame(0)
	ps, err := rd.Patches(&camera.Plane{Y: p.Pix, W: p.W, H: p.H, Stride: p.W}, jitters(r, 2))
	if err != nil {
		log.Fatal(err)
	}
	var out []sample
	for k := range ps {
		s := sample{in: ps[k].In}
		// most places beside a number are empty: one in four of those is learnt
		if label(&s, &ps[k], p) && (!ps[k].Side || s.target[9] == 1 || k%4 == 0) {
			out = append(out, s)
		}
	}
	return out
}

// label finds the drawn cell a patch shows. A patch half way between two is no glyph; one a little off is not learnt.
func label(s *sample, p *camera.Patch, truth *render.Pic) bool {
	cx, cy, w, h := middle(p.Box)
	best, arg := math.Inf(1), -1
	var tw, th float64
	for i, c := range truth.Cells {
		x, y, cw, ch := middle(c)
		if d := math.Hypot((x-cx)/cw, (y-cy)/ch); d < best {
			best, arg, tw, th = d, i, cw, ch
		}
	}
	for i := range s.target {
		s.target[i] = -1
	}
	if arg < 0 {
		return false
	}
	if p.Side {
		d := math.Inf(1)
		if truth.Minus {
			d = math.Hypot(truth.MinusAt[0]-cx, truth.MinusAt[1]-cy) / th
		}
		s.target[9] = 0
		if d < 0.1 {
			s.target[9] = 1
		}
		// the row must be one of the number's own: its height fits
		return (d < 0.1 || d > 0.22) && math.Abs(math.Log(h/th)) < 0.16 && best < 4
	}
	if best > 0.36 || math.Abs(math.Log(h/th)) > 0.35 {
		s.target[8] = 0
		return best > 0.4 || math.Abs(math.Log(h/th)) > 0.35
	}
	if best > 0.24 || math.Abs(math.Log(w/tw)) > 0.25 || math.Abs(math.Log(h/th)) > 0.16 {
		return false
	}
	mask := truth.Masks[arg]
	for i := range 7 {
		s.target[i] = float32(mask >> i & 1)
	}
	s.target[7] = 0
	if truth.Dots[arg] {
		s.target[7] = 1
	}
	s.target[8], s.target[9] = 1, 0
	if truth.Glyphs[arg] == ' ' {
		s.target[8] = 0
	}
	return true
}

func middle(c [4][2]float64) (x, y, w, h float64) {
	for _, p := range c {
		x, y = x+p[0]/4, y+p[1]/4
	}
	w = (math.Hypot(c[1][0]-c[0][0], c[1][1]-c[0][1]) + math.Hypot(c[2][0]-c[3][0], c[2][1]-c[3][1])) / 2
	h = (math.Hypot(c[3][0]-c[0][0], c[3][1]-c[0][1]) + math.Hypot(c[2][0]-c[1][0], c[2][1]-c[1][1])) / 2
	return
}

// photographs takes patches from the tuning half of the photographed digits.
func photographs(net *camera.Net, archive string, seed uint64) ([]sample, error) {
	r := rand.New(rand.NewPCG(seed, 2))
	rd := camera.Reader{Net: net}
	var out []sample
	photos, err := open(archive)
	if err != nil {
		return nil, err
	}
	for i := range photos {
		if !photos[i].Learn() {
			continue
		}
		d, p := photos[i].Digit, photos[i].Plane
		for _, light := range [2]bool{false, true} {
			js := jitters(r, 24)
			if light || d == digits.Blank { // all digits of the set are dark on light
				js = js[:4]
			}
			ps, err := rd.DigitPatches(p, light, js)
			if err != nil {
				return nil, err
			}
			for k := range ps {
				s := sample{in: ps[k].In}
				for i := range s.target {
					s.target[i] = -1
				}
				s.target[8] = 0
				if beside := !light && k == len(ps)-1; !light && d != digits.Blank && !beside {
					mask := render.Segments[rune(strconv.Itoa(d)[0])]
					for i := range 7 {
						s.target[i] = float32(mask >> i & 1)
					}
					if d == 7 { // drawn with its upper left segment in this set or without
						s.target[5] = -1
					}
					s.target[8] = 1
				}
				out = append(out, s)
			}
		}
	}
	return out, nil
}

// open reads the archive of photographed digits.
func open(archive string) ([]digits.Photo, error) {
	z, err := zip.OpenReader(archive)
	if err != nil {
		return nil, err
	}
	defer z.Close()
	return digits.Read(&z.Reader)
}

// learn is Adam over shuffled batches of 32 with a falling step.
func learn(set []sample, epochs int, seed uint64, say func(string, ...any)) *camera.Net {
	r := rand.New(rand.NewPCG(seed, 3))
	n := &camera.Net{W: make([]float32, camera.NetLen)}
	conv, hidden, out := n.Layers()
	for _, l := range [3]struct {
		w []float32
		f float64
	}{{conv, 25}, {hidden, 480}, {out, 48}} {
		for i := range l.w {
			l.w[i] = float32(r.NormFloat64() * math.Sqrt(1.5/l.f))
		}
	}
	m1, m2 := make([]float32, camera.NetLen), make([]float32, camera.NetLen)
	grad := make([]float32, camera.NetLen)
	var st camera.NetState
	order := r.Perm(len(set))
	const batch = 32
	steps := epochs * (len(set) / batch)
	t := 0
	for e := range epochs {
		r.Shuffle(len(order), func(i, j int) { order[i], order[j] = order[j], order[i] })
		loss := 0.0
		for b := 0; b+batch <= len(order); b += batch {
			clear(grad)
			for _, k := range order[b : b+batch] {
				n.Run(&set[k].in, &st)
				loss += n.Learn(&set[k].in, &st, &set[k].target, grad)
			}
			t++
			rate := 0.002 * (1 - float64(t)/float64(steps+1))
			c1, c2 := 1-math.Pow(0.9, float64(t)), 1-math.Pow(0.999, float64(t))
			for i, g := range grad {
				g /= batch
				m1[i] = float32(0.9*m1[i]) + float32(0.1*g)
				m2[i] = float32(0.999*m2[i]) + float32(float32(0.001*g)*g)
				n.W[i] -= float32(rate * (float64(m1[i])/c1/(math.Sqrt(float64(m2[i])/c2)+1e-8) + float64(1e-4*float64(n.W[i]))))
			}
		}
		say("pass %d: loss %.4f", e+1, loss/float64(len(set)))
	}
	return n
}
