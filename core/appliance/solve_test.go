package appliance

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// TestSolveIsDense holds the sparse elimination to a dense one on random networks of resistors, sources and transformers.
func TestSolveIsDense(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 14).Draw(t, "nodes")
		node := func(name string) int32 { return int32(rapid.IntRange(-1, n-1).Draw(t, name)) }
		var bs []branch
		var g []float64
		for range rapid.IntRange(1, 30).Draw(t, "branches") {
			b := branch{n: 2, node: [4]int32{node("a"), node("b")}, coef: [4]float64{1, -1}}
			if rapid.IntRange(0, 5).Draw(t, "transformer") == 0 {
				k := rapid.Float64Range(0.05, 5).Draw(t, "ratio")
				b = branch{n: 4, node: [4]int32{node("p1"), node("p2"), node("s1"), node("s2")}, coef: [4]float64{k, -k, -1, 1}}
			}
			bs = append(bs, b)
			g = append(g, math.Exp(rapid.Float64Range(-8, 4).Draw(t, "g")))
		}
		const leak = 1e-4
		p := newPattern(n, bs)
		f := newFactor(p)
		coef := make([][4]float64, len(bs))
		dense := mat.NewDense(n, n, nil)
		for i := range n {
			dense.Set(i, i, leak)
		}
		for i, b := range bs {
			coef[i] = b.coef
			for x := range b.n {
				for y := range b.n {
					if b.node[x] >= 0 && b.node[y] >= 0 {
						r, c := int(b.node[x]), int(b.node[y])
						dense.Set(r, c, dense.At(r, c)+g[i]*b.coef[x]*b.coef[y])
					}
				}
			}
		}
		f.load(g, coef, leak)
		x := make([]float64, n)
		rhs := mat.NewVecDense(n, nil)
		p.inject(x, 0, &coef[0], 1)
		for y := range bs[0].n {
			if v := bs[0].node[y]; v >= 0 {
				rhs.SetVec(int(v), rhs.AtVec(int(v))+bs[0].coef[y])
			}
		}
		f.solve(x)
		var want mat.VecDense
		if err := want.SolveVec(dense, rhs); err != nil {
			t.Skip("the dense solver calls it ill-conditioned")
		}
		scale := mat.Norm(&want, math.Inf(1))
		for i := range n {
			if d := math.Abs(x[p.perm[i]] - want.AtVec(i)); d > 1e-6*scale+1e-12 {
				t.Fatalf("node %d: %g, dense %g", i, x[p.perm[i]], want.AtVec(i))
			}
		}
	})
}
