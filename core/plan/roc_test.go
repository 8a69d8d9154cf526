package plan_test

import (
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"testing"

	"readback/core/infer"
	"readback/core/plan"
)

func TestRoc(t *testing.T) {
	n, _ := strconv.Atoi(os.Getenv("N"))
	if n == 0 {
		t.Skip()
	}
	for _, b := range allBenches(t) {
		p, _ := plan.New(b.task, plan.UsualWeights, plan.Quick)
		table := b.engine.Table(b.engine.Singles())
		type stat [4]float64 // wrong, gain, -P, wrong*gain
		get := func(bel *infer.Belief, c int) stat {
			bl := bel.Blame(c)
			return stat{bl.Wrong, bl.Gain, 1 - bl.P, bl.Wrong * min(bl.Gain, 4)}
		}
		var bad, good []stat
		jb := newJob(&b, p)
		play := func(seed uint64, inject bool) {
			r := rand.New(rand.NewPCG(seed, 978))
			mode := b.draw(r)
			honest := func(check int) infer.Finding { return b.finding(check, table.Prediction(check, mode+1)) }
			jb.reset()
			for i := range jb.s.Reasked {
				jb.s.Reasked[i] = true
			}
			at, when, badc := r.IntN(12), -1, -1
			best := map[int]stat{}
			for len(jb.asked) < 40 {
				d := jb.p.Next(jb.bel, jb.s)
				if d.Kind == plan.Verdict && b.task.Repairs[d.Group].Free && d.Group != b.model.Modes[mode].Repair {
					jb.s.Tried[d.Group] = true
					continue
				}
				if d.Check < 0 {
					break
				}
				f := honest(d.Check)
				if inject && len(jb.asked) == at {
					if g, ok := b.misread(r, d.Check, f, table); ok {
						f, badc, when = g, d.Check, len(jb.asked)
					}
				}
				jb.take(t, d, f)
				k := len(jb.asked) - 1
				for _, a := range jb.bel.Answered(nil) {
					if inject && (a != badc || k > when+2) {
						continue
					}
					x := get(jb.bel, a)
					y := best[a]
					for i := range x {
						y[i] = max(y[i], x[i])
					}
					best[a] = y
				}
			}
			if inject {
				if badc >= 0 {
					bad = append(bad, best[badc])
				}
			} else {
				for _, a := range jb.bel.Answered(nil) {
					good = append(good, best[a])
				}
			}
		}
		for seed := range uint64(n) {
			play(seed, true)
			play(seed, false)
		}
		for i, name := range []string{"wrong", "gain", "1-P", "wrong*gain"} {
			var g, h []float64
			for _, x := range good {
				g = append(g, x[i])
			}
			for _, x := range bad {
				h = append(h, x[i])
			}
			slices.Sort(g)
			for _, f := range []float64{.01, .02, .05, .1} {
				th := g[int(float64(len(g))*(1-f))]
				c := 0
				for _, x := range h {
					if x > th {
						c++
					}
				}
				t.Logf("%s %s: false %.2f at %.3f catches %.1f%% of %d", b.model.ID, name, f, th, 100*float64(c)/float64(len(h)), len(h))
			}
		}
	}
}
