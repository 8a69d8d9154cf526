package infer_test

import (
	"math"
	"testing"

	"readback/core/infer"
)

// N1: noisy-or of a textbook: inhibition .6 for a cold, .2 for flu, .1 for malaria (Russell & Norvig); explaining away.
func TestNoisyOr(t *testing.T) {
	cpt := make([]float64, 8)
	for i := range cpt {
		q := 1.0
		for j, x := range []float64{.6, .2, .1} {
			if i>>j&1 != 0 {
				q *= x
			}
		}
		cpt[i] = 1 - q
	}
	for i, want := range map[int]float64{4: .9, 2: .8, 6: .98, 1: .4, 5: .94, 3: .88, 7: .988} {
		near(t, "fever", cpt[i], want, 1e-12)
	}
	const cold, flu, malaria, fever = 0, 1, 2, 3
	net := []node{{"cold", nil, []float64{.1}}, {"flu", nil, []float64{.05}}, {"malaria", nil, []float64{0}},
		{"fever", []int{cold, flu, malaria}, cpt}}
	p := flat(net)
	b := infer.New(p)
	yes := func(v int) float64 { return b.Chance(v, 1) }
	see := func(v int) {
		if err := b.Observe(discrete(p, v, 1)); err != nil {
			t.Fatal(err)
		}
	}
	near(t, "P(fever)", yes(fever), .0784, 1e-12)
	see(fever)
	near(t, "P(cold | fever)", yes(cold), .5408163265, 1e-10)
	near(t, "P(flu | fever)", yes(flu), .5153061224, 1e-10)
	see(flu)
	near(t, "P(cold | fever, flu)", yes(cold), .1089108911, 1e-10)
	joint, all := eliminate(net, cold, map[int]bool{fever: true, flu: true})
	near(t, "the same by elimination", yes(cold), joint/all, 1e-12)
}

// W1: one test of sensitivity .75 and specificity .96 with a prior of .08: predictive values, weight of evidence, information.
func TestPredictiveValues(t *testing.T) {
	p := &infer.Problem{Worlds: 2, Groups: 1, Hyps: []infer.Hyp{
		{Prior: .08, Groups: []int{0}, Phases: []infer.Phase{{World: 0, P: 1}}}, {Prior: .92, Sort: infer.Nothing, Phases: []infer.Phase{{World: 1, P: 1}}}},
		Checks: []infer.Check{{ID: "test", Class: []uint8{0, 1}, Bins: [][]float64{{.25, .75}, {.96, .04}}}}}
	if err := p.Prepare(); err != nil {
		t.Fatal(err)
	}
	logit := func(x float64) float64 { return math.Log2(x / (1 - x)) }
	gain := 0.0
	for o, want := range []struct{ p, weight float64 }{{1 - .9778565102, -1.941106}, {.6198347107, 4.228819}} {
		b := infer.New(p)
		chance := b.Chance(0, o)
		if err := b.Observe(discrete(p, 0, o)); err != nil {
			t.Fatal(err)
		}
		x := b.Prob()[0]
		near(t, "posterior", x, want.p, 1e-10)
		near(t, "weight of evidence", logit(x)-logit(.08), want.weight, 1e-6)
		gain += chance * (x*math.Log2(x/.08) + (1-x)*math.Log2((1-x)/.92))
	}
	near(t, "mutual information", gain, .1709579053, 1e-10)
}

// G1: the polybox of de Kleer & Williams 1987 as a generative model: X=AC, Y=BD, Z=CE, F=X+Y, G=Y+Z with A=3 B=2 C=2 D=3 E=3, each part
// wrong with .01 and then showing anything from 0 to 15; seen F=10, G=12. Numbers computed by an independent program.
func TestPolybox(t *testing.T) {
	const m1, m2, m3, a1, a2 = 0, 1, 2, 3, 4
	const values = 31
	p := &infer.Problem{Worlds: 32, Groups: 1}
	seen := infer.Check{ID: "F and G"}
	probes := []infer.Check{{ID: "X"}, {ID: "Y"}, {ID: "Z"}}
	for w := range 32 {
		prior := 1.0
		for i := range 5 {
			if w>>i&1 != 0 {
				prior *= .01
			} else {
				prior *= .99
			}
		}
		p.Hyps = append(p.Hyps, infer.Hyp{Prior: prior, Modes: []int{w}, Phases: []infer.Phase{{World: w, P: 1}}})
		one := func(part, good int) (lo, hi int) {
			if w>>part&1 != 0 {
				return 0, 15
			}
			return good, good
		}
		fits, all := 0.0, 0.0
		var laws [3][values]float64
		xl, xh := one(m1, 6)
		yl, yh := one(m2, 6)
		zl, zh := one(m3, 6)
		for x := xl; x <= xh; x++ {
			for y := yl; y <= yh; y++ {
				for z := zl; z <= zh; z++ {
					fl, fh := one(a1, x+y)
					gl, gh := one(a2, y+z)
					all++
					if fl > 10 || fh < 10 || gl > 12 || gh < 12 {
						continue
					}
					c := 1 / float64((fh-fl+1)*(gh-gl+1))
					fits += c
					laws[0][x] += c
					laws[1][y] += c
					laws[2][z] += c
				}
			}
		}
		seen.Class = append(seen.Class, uint8(w))
		seen.Bins = append(seen.Bins, []float64{1 - fits/all, fits / all})
		for i := range probes {
			row := make([]float64, values)
			for v := range row {
				if fits > 0 {
					row[v] = laws[i][v] / fits
				} else {
					row[v] = 1. / values
				}
			}
			probes[i].Class = append(probes[i].Class, uint8(w))
			probes[i].Bins = append(probes[i].Bins, row)
		}
	}
	p.Checks = append(append(p.Checks, seen), probes...)
	if err := p.Prepare(); err != nil {
		t.Fatal(err)
	}
	b := infer.New(p)
	if err := b.Observe(discrete(p, 0, 1)); err != nil {
		t.Fatal(err)
	}
	near(t, "P(F, G)", math.Exp(b.LogEvidence()), .001209876915, 1e-12)
	entropy := 0.0
	for _, x := range b.Prob() {
		if x > 0 {
			entropy -= x * math.Log2(x)
		}
	}
	near(t, "entropy", entropy, 1.071307, 1e-6)
	for w, want := range map[int]float64{1 << a1: .49622610, 1 << m1: .49622610, 1<<m1 | 1<<a1: .00501238, 1<<m2 | 1<<m3: .00031327, 1<<m2 | 1<<a2: .00031327} {
		near(t, "diagnosis", b.Prob()[w], want, 1e-8)
	}
	for part, want := range map[int]float64{m1: .50219543, a1: .50219683, m2: .00126962, m3: .00095734, a2: .00095794} {
		sum := 0.0
		for w, x := range b.Prob() {
			if w>>part&1 != 0 {
				sum += x
			}
		}
		near(t, "marginal", sum, want, 1e-8)
	}
	near(t, "P(X=6)", b.Chance(1, 6), .498119, 1e-6)
	near(t, "P(X=4)", b.Chance(1, 4), .497483, 1e-6)
	for i, want := range []float64{1.033004, .007763, .004321} {
		gain := 0.0
		for v := range values {
			c := b.Chance(1+i, v)
			for w, x := range b.Prob() {
				if joint := x * p.Chance(1+i, w, v); joint > 0 {
					gain += joint * math.Log2(joint/(x*c))
				}
			}
		}
		near(t, "gain at "+probes[i].ID, gain, want, 1e-6)
	}
}
