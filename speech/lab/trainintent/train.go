package main

import (
	"flag"
	"math"
	"math/rand/v2"
	"slices"
	"sync"

	"readback/speech/lab/sentences"
	"readback/speech/understand"
	"readback/speech/understand/intent"
)

// example is one sentence as the network is taught it.
type example struct {
	in     *intent.Input
	act    int
	hazard int // -1: none
	cmd    int
	state  int
	sym    []float32 // nil: not a story
	weight float32
}

func toExample(r *understand.Reader, l sentences.Line) (example, error) {
	in, err := r.Input(l.Text)
	if err != nil {
		return example{}, err
	}
	e := example{in: in, act: slices.Index(intent.Acts, l.Cat), hazard: -1, cmd: -1, state: -1, weight: 1}
	kind := ""
	if len(l.Kinds) > 0 {
		kind = l.Kinds[0]
	}
	switch l.Cat {
	case "danger", "maybe":
		e.hazard = slices.Index(intent.Hazards, kind)
	case "command":
		e.cmd = slices.Index(intent.Commands, kind)
	case "state":
		e.state = slices.Index(intent.States, l.State)
	case "story":
		e.sym = make([]float32, len(intent.Symptoms))
		for _, k := range l.Kinds {
			if i := slices.Index(intent.Symptoms, k); i >= 0 {
				e.sym[i] = 1
			}
		}
	}
	return e, nil
}

// gradient adds the gradient of the loss of one example, with some of what it sees blotted out, and returns the loss.
func gradient(n, g *intent.Net, e *example, w *intent.Work, rng *rand.Rand) float64 {
	in := *e.in
	in.X = slices.Clone(in.X)
	in.Own = slices.Clone(in.Own)
	for t := range in.N {
		row := in.X[(t+1)*intent.In : (t+1)*intent.In+intent.Dim]
		if rng.Float64() < *wordDrop {
			clear(row)
			in.Own[t] = rng.IntN(intent.Words)
			continue
		}
		for d := range row {
			row[d] += float32(rng.NormFloat64() * *jitter)
		}
	}
	in.Pairs = slices.DeleteFunc(slices.Clone(in.Pairs), func(int) bool { return rng.Float64() < *pairDrop })
	for i := range in.Flags {
		if rng.Float64() < *flagDrop {
			in.Flags[i] = 0
		}
	}
	var keep [intent.Pooled]float32
	for i := range keep {
		if rng.Float64() >= *poolDrop {
			keep[i] = float32(1 / (1 - *poolDrop))
		}
	}
	n.Forward(&in, w, &keep)
	var d [intent.Outputs]float32
	loss := soft(&d, w, intent.AtAct, intent.AtHazard, e.act, 1) + soft(&d, w, intent.AtHazard, intent.AtCommand, e.hazard, 0.5) +
		soft(&d, w, intent.AtCommand, intent.AtState, e.cmd, 1) + soft(&d, w, intent.AtState, intent.AtSymptom, e.state, 1)
	for i, y := range e.sym {
		o := intent.AtSymptom + i
		p := 1 / (1 + math.Exp(-float64(w.Out[o])))
		d[o] = float32(p) - y
		loss -= math.Log(max(1e-9, 1-math.Abs(p-float64(y))))
	}
	back(n, g, &in, w, &keep, &d)
	return loss
}

// soft sets the gradient of one softmax with a little of its mass on the other outputs.
func soft(d *[intent.Outputs]float32, w *intent.Work, from, to, want int, weight float32) float64 {
	if want < 0 {
		return 0
	}
	p := intent.Softmax(w.Out[from:to])
	for i := range p {
		y := *smooth / float64(len(p))
		if i == want {
			y += 1 - *smooth
		}
		d[from+i] = weight * float32(p[i]-y)
	}
	return -math.Log(max(1e-9, p[want]))
}

// back goes back through the network.
func back(n, g *intent.Net, in *intent.Input, w *intent.Work, keep *[intent.Pooled]float32, d *[intent.Outputs]float32) {
	const F, H = intent.Filters, intent.HeadSize
	var dPool [intent.Pooled]float32
	for o, x := range d {
		if x == 0 {
			continue
		}
		row, grow := n.Head[o*H:(o+1)*H], g.Head[o*H:(o+1)*H]
		for i := range dPool {
			dPool[i] += x * row[i]
			grow[i] += x * w.Pool[i]
		}
		for i, y := range in.Flags {
			if y != 0 {
				grow[intent.Pooled+i] += x * y
			}
		}
		grow[H-1] += x
	}
	share := float32(1 / math.Sqrt(float64(max(1, len(in.Pairs)))))
	for _, b := range in.Pairs {
		grow := g.Pair[b*intent.Outputs : (b+1)*intent.Outputs]
		for o, x := range d {
			grow[o] += share * x
		}
	}
	T := in.N
	if T == 0 {
		return
	}
	dH1, dH2 := make([]float32, (T+2)*F), make([]float32, T*F)
	for f := range F {
		mean := dPool[F+f] * keep[F+f] / float32(T)
		for t := range T {
			dH2[t*F+f] += mean
			dH1[(t+1)*F+f] += mean
		}
		if x := dPool[f] * keep[f]; x != 0 && w.Pool[f] > 0 {
			dH2[w.Arg[f]*F+f] += x
			dH1[(w.Arg[f]+1)*F+f] += x
		}
	}
	size := intent.Window * F
	for t := range T {
		for f := range F {
			x := dH2[t*F+f]
			if x == 0 || w.H2[t*F+f] <= 0 {
				continue
			}
			axpy(g.C2[f*size:(f+1)*size], w.H1[t*F:t*F+size], x)
			axpy(dH1[t*F:t*F+size], n.C2[f*size:(f+1)*size], x)
			g.C2[F*size+f] += x
		}
	}
	size = intent.Window * intent.In
	dX := make([]float32, (T+2)*intent.In)
	for t := range T {
		for f := range F {
			x := dH1[(t+1)*F+f]
			if x == 0 || w.H1[(t+1)*F+f] <= 0 {
				continue
			}
			axpy(g.C1[f*size:(f+1)*size], w.X[t*intent.In:t*intent.In+size], x)
			axpy(dX[t*intent.In:t*intent.In+size], n.C1[f*size:(f+1)*size], x)
			g.C1[F*size+f] += x
		}
	}
	for t, b := range in.Own {
		axpy(g.Own[b*intent.Own:(b+1)*intent.Own], dX[(t+1)*intent.In+intent.Dim:(t+2)*intent.In], 1)
	}
}

func axpy(y, x []float32, a float32) {
	x = x[:len(y)]
	for i := range y {
		y[i] += a * x[i]
	}
}

// adam holds the running means of one matrix.
type adam struct{ m, v []float32 }

func (a *adam) step(p, g []float32, rate float64, decay float32, t int) {
	const b1, b2 = 0.9, 0.999
	c := float32(rate * math.Sqrt(1-math.Pow(b2, float64(t))) / (1 - math.Pow(b1, float64(t))))
	for i, x := range g {
		if x == 0 && a.m[i] == 0 {
			continue
		}
		a.m[i] = b1*a.m[i] + (1-b1)*x
		a.v[i] = b2*a.v[i] + (1-b2)*x*x
		p[i] -= c*a.m[i]/(float32(math.Sqrt(float64(a.v[i])))+1e-8) + float32(rate)*decay*p[i]
		g[i] = 0
	}
}

// trainAll teaches the networks that are averaged: they differ in their first weights and in the order of the examples.
func trainAll(ex []example, epochs int) []*intent.Net {
	var out []*intent.Net
	for i := range *nets {
		out = append(out, train(ex, epochs, *seed+uint64(i)))
	}
	return out
}

func matrices(n *intent.Net) [][]float32 { return [][]float32{n.Own, n.C1, n.C2, n.Head, n.Pair} }

// train teaches a network. The same examples and seed give the same network, whatever the number of cores: the parts of a batch are added in order.
func train(ex []example, epochs int, seed uint64) *intent.Net {
	rng := rand.New(rand.NewPCG(seed, 7))
	n := intent.NewNet()
	fill := func(w []float32, scale float64) {
		for i := range w {
			w[i] = float32(rng.NormFloat64() * scale)
		}
	}
	fill(n.Own, 0.1)
	fill(n.C1[:intent.Filters*intent.Window*intent.In], math.Sqrt(2.0/(intent.Window*intent.In))*0.8)
	fill(n.C2[:intent.Filters*intent.Window*intent.Filters], math.Sqrt(2.0/(intent.Window*intent.Filters)))
	fill(n.Head, 0.05)
	const parts, batch = 2, 24
	var opt []*adam
	for _, m := range matrices(n) {
		opt = append(opt, &adam{make([]float32, len(m)), make([]float32, len(m))})
	}
	grads := make([]*intent.Net, parts)
	works := make([]intent.Work, parts)
	for i := range grads {
		grads[i] = intent.NewNet()
	}
	steps := 0
	total := epochs * ((len(ex) + batch - 1) / batch)
	for range epochs {
		order := rng.Perm(len(ex))
		for from := 0; from < len(order); from += batch {
			b := order[from:min(len(order), from+batch)]
			var wg sync.WaitGroup
			seed := rng.Uint64()
			for k := range parts {
				wg.Go(func() {
					r := rand.New(rand.NewPCG(seed, uint64(k)))
					for i := k; i < len(b); i += parts {
						gradient(n, grads[k], &ex[b[i]], &works[k], r)
					}
				})
			}
			wg.Wait()
			steps++
			rate := *peakRate * min(1, float64(steps)/100) * (1 - 0.95*float64(steps)/float64(total))
			for i, m := range matrices(n) {
				g := matrices(grads[0])[i]
				for k := 1; k < parts; k++ {
					o := matrices(grads[k])[i]
					for j, x := range o {
						if x != 0 {
							g[j] += x
							o[j] = 0
						}
					}
				}
				for j := range g {
					g[j] /= float32(len(b))
				}
				opt[i].step(m, g, rate, float32(*decay)*decays[i], steps)
			}
		}
	}
	return n
}

// Recipe of the training, chosen by leaving out learning hands in turn.
var (
	wordDrop = flag.Float64("worddrop", 0.08, "share of words blotted out")
	pairDrop = flag.Float64("pairdrop", 0.25, "share of word pairs blotted out")
	flagDrop = flag.Float64("flagdrop", 0.1, "share of the span grammar's flags blotted out")
	poolDrop = flag.Float64("pooldrop", 0.3, "share of pooled filters blotted out")
	jitter   = flag.Float64("jitter", 0.1, "noise on word vectors")
	smooth   = flag.Float64("smooth", 0.05, "probability given to the other outputs")
	peakRate = flag.Float64("rate", 2.5e-3, "highest learning rate")
	decay    = flag.Float64("decay", 0.02, "weight decay")
	nets     = flag.Int("nets", 2, "networks whose outputs are averaged")
	turns    = flag.Int("turns", 99, "with -folds: turns that are run")
	seed     = flag.Uint64("seed", 1, "of the first weights")
)

// decays tells which matrices decay, and how much.
var decays = []float32{0, 0.5, 0.5, 1, 1}
