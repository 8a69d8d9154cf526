package infer_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"readback/core/infer"
)

// The second oracle: a Bayesian network of yes-or-no variables by variable elimination. The same network becomes a Problem whose
// hypotheses are all joint states, so the fast code can be asked the same questions.

// node is a variable: cpt[i] is the chance of yes when bit j of i says whether parents[j] is yes.
type node struct {
	name    string
	parents []int
	cpt     []float64
}

// factor is a function of some variables, ascending; values are indexed with bit j for vars[j].
type factor struct {
	vars []int
	vals []float64
}

func (f factor) at(state map[int]bool) float64 {
	i := 0
	for j, v := range f.vars {
		if state[v] {
			i |= 1 << j
		}
	}
	return f.vals[i]
}

// join multiplies factors and sums a variable out (-1: none).
func join(fs []factor, out int) factor {
	var vars []int
	for _, f := range fs {
		vars = append(vars, f.vars...)
	}
	slices.Sort(vars)
	vars = slices.Compact(vars)
	kept := slices.DeleteFunc(slices.Clone(vars), func(v int) bool { return v == out })
	res := factor{kept, make([]float64, 1<<len(kept))}
	state := map[int]bool{}
	for i := range 1 << len(vars) {
		k := 0
		for j, v := range vars {
			state[v] = i>>j&1 != 0
			if at := slices.Index(kept, v); at >= 0 && state[v] {
				k |= 1 << at
			}
		}
		x := 1.0
		for _, f := range fs {
			x *= f.at(state)
		}
		res.vals[k] += x
	}
	return res
}

// eliminate returns P(query = yes, evidence) and P(evidence), eliminating the variable of the fewest neighbours first.
func eliminate(net []node, query int, evidence map[int]bool) (joint, all float64) {
	for _, want := range []bool{true, false} {
		var fs []factor
		for v, n := range net {
			vars := append(slices.Clone(n.parents), v)
			sorted := slices.Clone(vars)
			slices.Sort(sorted)
			f := factor{sorted, make([]float64, 1<<len(sorted))}
			for i := range f.vals {
				row, yes := 0, false
				for j, x := range sorted {
					if i>>j&1 == 0 {
						continue
					}
					if x == v {
						yes = true
					} else {
						row |= 1 << slices.Index(n.parents, x)
					}
				}
				f.vals[i] = n.cpt[row]
				if !yes {
					f.vals[i] = 1 - n.cpt[row]
				}
				for j, x := range sorted {
					on := i>>j&1 != 0
					if e, ok := evidence[x]; ok && e != on || x == query && on != want {
						f.vals[i] = 0
					}
				}
			}
			fs = append(fs, f)
		}
		left := map[int]bool{}
		for v := range net {
			left[v] = true
		}
		for len(left) > 0 {
			best, size := -1, math.MaxInt
			for v := range net {
				if !left[v] {
					continue
				}
				var near []int
				for _, f := range fs {
					if slices.Contains(f.vars, v) {
						near = append(near, f.vars...)
					}
				}
				slices.Sort(near)
				if n := len(slices.Compact(near)); n < size {
					best, size = v, n
				}
			}
			delete(left, best)
			var with, without []factor
			for _, f := range fs {
				if slices.Contains(f.vars, best) {
					with = append(with, f)
				} else {
					without = append(without, f)
				}
			}
			fs = append(without, join(with, best))
		}
		p := 1.0
		for _, f := range fs {
			p *= f.vals[0]
		}
		all += p
		if want {
			joint = p
		}
	}
	return joint, all
}

// asia is the chest clinic of Lauritzen & Spiegelhalter 1988.
var asia = []node{
	{"asia", nil, []float64{.01}},
	{"tub", []int{0}, []float64{.01, .05}},
	{"smoke", nil, []float64{.5}},
	{"lung", []int{2}, []float64{.01, .1}},
	{"bronc", []int{2}, []float64{.3, .6}},
	{"either", []int{1, 3}, []float64{0, 1, 1, 1}},
	{"xray", []int{5}, []float64{.05, .98}},
	{"dysp", []int{4, 5}, []float64{.1, .8, .7, .9}},
}

const (
	asiaVar, tub, smoke, lung, bronc, either, xray, dysp = 0, 1, 2, 3, 4, 5, 6, 7
)

// flat is a network as a Problem: every joint state of the variables is a hypothesis, every variable a check that shows its value.
func flat(net []node) *infer.Problem {
	n := len(net)
	p := &infer.Problem{Worlds: 1 << n, Groups: n}
	for w := range p.Worlds {
		prior := 1.0
		var groups []int
		for v, x := range net {
			row := 0
			for j, u := range x.parents {
				row |= w >> u & 1 << j
			}
			if w>>v&1 != 0 {
				prior *= x.cpt[row]
				groups = append(groups, v)
			} else {
				prior *= 1 - x.cpt[row]
			}
		}
		p.Hyps = append(p.Hyps, infer.Hyp{Prior: prior, Groups: groups, Phases: []infer.Phase{{World: w, P: 1}}})
	}
	for v, x := range net {
		c := infer.Check{ID: x.name, Bins: [][]float64{{1, 0}, {0, 1}}}
		for w := range p.Worlds {
			c.Class = append(c.Class, uint8(w>>v&1))
		}
		p.Checks = append(p.Checks, c)
	}
	if err := p.Prepare(); err != nil {
		panic(err)
	}
	return p
}

// Posteriors of the chest clinic: published rounding by Lauritzen & Spiegelhalter 1988, digits by two independent eliminations.
func TestAsia(t *testing.T) {
	yes := func(vs ...int) map[int]bool {
		m := map[int]bool{}
		for _, v := range vs {
			m[v] = true
		}
		return m
	}
	noXray := yes(asiaVar, dysp)
	noXray[xray] = false
	p := flat(asia)
	for _, c := range []struct {
		evidence map[int]bool
		p        float64
		want     map[int]float64
	}{
		{nil, 1, map[int]float64{tub: .0104, lung: .055, bronc: .45, either: .064828, xray: .11029004, dysp: .4359706}},
		{yes(asiaVar, dysp), .004501375, map[int]float64{tub: .0877509650, lung: .0995251451, bronc: .8114020716, smoke: .6259198578}},
		{yes(asiaVar, dysp, xray), .00098822675, map[int]float64{tub: .3917117200, lung: .4442705078, bronc: .6288217760}},
		{noXray, .00351314825, map[int]float64{tub: .0022486953, lung: .0025504190, bronc: .8627607730}},
	} {
		b := infer.New(p)
		for v := range asia {
			if x, ok := c.evidence[v]; ok {
				o := 0
				if x {
					o = 1
				}
				if err := b.Observe(discrete(p, v, o)); err != nil {
					t.Fatal(err)
				}
			}
		}
		need := make([]float64, len(asia)) // of each variable, the chance of yes
		for h, x := range b.Prob() {
			for _, v := range p.Hyps[h].Groups {
				need[v] += x
			}
		}
		near(t, fmt.Sprint("P", c.evidence), math.Exp(b.LogEvidence()), c.p, 1e-12)
		for v := range asia {
			want, ok := c.want[v]
			if !ok {
				continue
			}
			name := fmt.Sprint(asia[v].name, " given ", c.evidence)
			near(t, name, need[v], want, 6e-11)
			joint, all := eliminate(asia, v, c.evidence)
			near(t, name+" by elimination", need[v], joint/all, 1e-12)
			near(t, "evidence by elimination", all, c.p, 1e-12)
		}
	}
}

// Conflict measure of Jensen on the chest clinic, in bits.
func TestConflict(t *testing.T) {
	p := flat(asia)
	for _, c := range []struct {
		name string
		ev   [][2]int
		want float64
	}{
		{"x-ray shows, no shortness of breath", [][2]int{{xray, 1}, {dysp, 0}}, .650846},
		{"x-ray shows, does not smoke", [][2]int{{xray, 1}, {smoke, 0}}, .679244},
		{"all three", [][2]int{{xray, 1}, {smoke, 0}, {dysp, 0}}, .689466},
		{"they agree", [][2]int{{xray, 1}, {dysp, 1}}, -.555567},
		{"hardly related", [][2]int{{asiaVar, 1}, {dysp, 1}}, -.046135},
	} {
		b := infer.New(p)
		for _, e := range c.ev {
			if err := b.Observe(discrete(p, e[0], e[1])); err != nil {
				t.Fatal(err)
			}
		}
		near(t, c.name, b.Conflict().Bits, c.want, 1e-6)
	}
}

func near(t *testing.T, name string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.12g, want %.12g ± %g", name, got, want, tol)
	}
}
