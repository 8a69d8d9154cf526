package plan_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"readback/core/infer"
	"readback/core/plan"
)

// synthetic is a task of n steady modes, each with its own repair, all pairs, and m checks with four classes: a check sees a fault
// or not by where it sits, as a chain of parts would have it.
func synthetic(n, m int, seed uint64) *plan.Task {
	r := rand.New(rand.NewPCG(seed, 9))
	modes := make([]infer.Mode, n)
	for i := range modes {
		modes[i] = infer.Mode{Rate: math.Exp(r.NormFloat64()), Part: i, Group: i * 2 / 3, Active: 1}
	}
	hyps, worlds, err := infer.Enumerate(modes, infer.UsualBase, nil)
	if err != nil {
		panic(err)
	}
	p := &infer.Problem{Worlds: len(worlds.Sets), Groups: n*2/3 + 1, Hyps: hyps}
	t := &plan.Task{Problem: p, Call: plan.Cost{Money: 200}, Unknown: plan.Cost{Money: 200},
		Covers: []plan.Cost{{Minutes: 3}, {Minutes: 5}, {Minutes: 10}}, Switch: plan.Cost{Minutes: 2}, Tool: plan.Cost{Minutes: 0.3}}
	rows := [][]float64{{.94, .03, .02, .01}, {.03, .94, .02, .01}, {.03, .03, .93, .01}, {.05, .05, .05, .85}}
	for c := range m {
		single := make([]uint8, n)
		from, to := r.IntN(n), 1+r.IntN(n/3)
		for i := range single {
			if (i-from+n)%n < to {
				single[i] = uint8(1 + r.IntN(3))
			}
		}
		check := infer.Check{ID: fmt.Sprint("c", c), Bins: rows}
		for i, set := range worlds.Sets {
			k := uint8(0)
			for _, x := range set {
				k = max(k, single[x])
			}
			if i >= len(worlds.Sets)-2 {
				k = infer.Broad
			}
			check.Class = append(check.Class, k)
		}
		p.Checks = append(p.Checks, check)
		t.Checks = append(t.Checks, plan.Check{Cost: plan.Cost{Minutes: 1 + 4*r.Float64(), Hazard: r.IntN(3)},
			Open: uint64(r.IntN(8)), Power: plan.Power(r.IntN(3)), Tool: uint8(r.IntN(4)), Repeat: true})
	}
	for range p.Groups {
		t.Repairs = append(t.Repairs, plan.Repair{Cost: plan.Cost{Minutes: 20 + 20*r.Float64(), Money: 100 * r.Float64()}})
	}
	if err := p.Prepare(); err != nil {
		panic(err)
	}
	return t
}

func BenchmarkUpdate(b *testing.B) {
	t := synthetic(100, 150, 1)
	bel := infer.New(t.Problem)
	a := outcome(t.Problem, 3, 1)
	a2 := outcome(t.Problem, 7, 0)
	b.ReportAllocs()
	for b.Loop() {
		if bel.Len() > 20 {
			b.StopTimer()
			bel.Clear()
			b.StartTimer()
		}
		if bel.Observe(a) != nil || bel.Observe(a2) != nil {
			b.Fatal("impossible")
		}
	}
}

func outcome(p *infer.Problem, check, o int) infer.Answer {
	a := infer.Answer{Check: check, Bin: o}
	for _, row := range p.Checks[check].Bins {
		a.Parts = append(a.Parts, [5]float64{row[o]})
	}
	return a
}

func BenchmarkNext(b *testing.B) {
	t := synthetic(100, 150, 1)
	for _, c := range []struct {
		name string
		l    plan.Limits
	}{{"quick", plan.Quick}, {"full", plan.Full}} {
		for _, k := range []int{0, 2, 5} {
			b.Run(fmt.Sprint(c.name, k), func(b *testing.B) {
				p, err := plan.New(t, plan.UsualWeights, c.l)
				if err != nil {
					b.Fatal(err)
				}
				bel := infer.New(t.Problem)
				var d plan.Decision
				for range k {
					d = p.Next(bel, plan.Situation{})
					if d.Check >= 0 {
						bel.Observe(outcome(t.Problem, d.Check, 0))
					}
				}
				b.ReportAllocs()
				for b.Loop() {
					d = p.Next(bel, plan.Situation{})
				}
				b.ReportMetric(float64(d.Nodes), "nodes")
			})
		}
	}
}
