package appliance

import "slices"

// pattern is the fixed shape of a network: which unknown meets which, in an order of elimination with little fill,
// and the elimination written out as a list of multiply-subtracts. Only the numbers change from state to state.
type pattern struct {
	n    int        // unknowns
	perm []int32    // node → place in the order
	col  []int32    // start of each column in row and val; len n+1
	row  []int32    // rows below the diagonal
	upd  []update   // grouped by column
	udx  []int32    // start of each column's updates; len n+1
	ent  [][]stamp  // per branch: where its conductance goes
	ends [][4]int32 // per branch: places of its nodes, -1 for the datum
}

// update is val[dst] -= val[a]*low[b] (dst and a, b index the off-diagonal values; a negative dst means diagonal ^dst).
type update struct{ dst, a, b int32 }

// stamp adds mult*g*coef[p]*coef[q] to a value; a negative position means diagonal ^pos.
type stamp struct {
	pos  int32
	p, q uint8
	mult float64
}

// newPattern orders n nodes by least degree and writes the elimination out. Node -1 is the datum.
func newPattern(n int, branches []branch) *pattern {
	adj := make([]map[int32]bool, n)
	for i := range adj {
		adj[i] = map[int32]bool{}
	}
	for i := range branches {
		b := &branches[i]
		for _, x := range b.node[:b.n] {
			for _, y := range b.node[:b.n] {
				if x != y && x >= 0 && y >= 0 {
					adj[x][y] = true
				}
			}
		}
	}
	p := &pattern{n: n, perm: make([]int32, n), col: make([]int32, n+1), udx: make([]int32, n+1)}
	done := make([]bool, n)
	rows := make([][]int32, n) // neighbours left when a node is eliminated
	for k := range n {
		best := int32(-1)
		for i := range int32(n) {
			if !done[i] && (best < 0 || len(adj[i]) < len(adj[best])) {
				best = i
			}
		}
		done[best] = true
		p.perm[best] = int32(k)
		var left []int32
		for j := range int32(n) {
			if adj[best][j] {
				left = append(left, j)
				delete(adj[j], best)
			}
		}
		for _, x := range left {
			for _, y := range left {
				if x != y {
					adj[x][y] = true
				}
			}
		}
		rows[k] = left
	}
	for k, left := range rows {
		for i, x := range left {
			left[i] = p.perm[x]
		}
		slices.Sort(left)
		p.col[k+1] = p.col[k] + int32(len(left))
		p.row = append(p.row, left...)
	}
	for k := range n {
		for a := p.col[k]; a < p.col[k+1]; a++ {
			p.upd = append(p.upd, update{^p.row[a], a, a})
			for b := p.col[k]; b < a; b++ {
				p.upd = append(p.upd, update{p.find(p.row[a], p.row[b]), a, b})
			}
		}
		p.udx[k+1] = int32(len(p.upd))
	}
	for i := range branches {
		p.stamps(&branches[i])
	}
	return p
}

// find is the position of the value of two places.
func (p *pattern) find(i, j int32) int32 {
	if i < j {
		i, j = j, i
	}
	k, ok := slices.BinarySearch(p.row[p.col[j]:p.col[j+1]], i)
	if !ok {
		panic("appliance: the elimination misses an entry")
	}
	return p.col[j] + int32(k)
}

func (p *pattern) stamps(b *branch) {
	ends := [4]int32{-1, -1, -1, -1}
	var st []stamp
	for x := range b.n {
		if b.node[x] < 0 {
			continue
		}
		i := p.perm[b.node[x]]
		ends[x] = i
		st = append(st, stamp{^i, uint8(x), uint8(x), 1})
		for y := range x {
			switch {
			case b.node[y] < 0:
			case b.node[y] == b.node[x]:
				st = append(st, stamp{^i, uint8(x), uint8(y), 2})
			default:
				st = append(st, stamp{p.find(i, p.perm[b.node[y]]), uint8(x), uint8(y), 1})
			}
		}
	}
	p.ent = append(p.ent, st)
	p.ends = append(p.ends, ends)
}

// factor is one network with numbers: LDLᵀ of its conductance matrix.
type factor struct {
	p    *pattern
	diag []float64
	inv  []float64
	val  []float64
	low  []float64
}

func newFactor(p *pattern) *factor {
	return &factor{p: p, diag: make([]float64, p.n), inv: make([]float64, p.n), val: make([]float64, len(p.row)), low: make([]float64, len(p.row))}
}

// load assembles the conductances g of the branches over a leak from every node and factorises.
func (f *factor) load(g []float64, coef [][4]float64, leak float64) {
	for i := range f.diag {
		f.diag[i] = leak
	}
	clear(f.val)
	p := f.p
	for i, st := range p.ent {
		gi := g[i]
		if gi == 0 {
			continue
		}
		c := &coef[i]
		for _, s := range st {
			x := s.mult * gi * c[s.p] * c[s.q]
			if s.pos < 0 {
				f.diag[^s.pos] += x
			} else {
				f.val[s.pos] += x
			}
		}
	}
	for k := range p.n {
		inv := 1 / f.diag[k]
		f.inv[k] = inv
		for a := p.col[k]; a < p.col[k+1]; a++ {
			f.low[a] = f.val[a] * inv
		}
		for _, u := range p.upd[p.udx[k]:p.udx[k+1]] {
			x := f.val[u.a] * f.low[u.b]
			if u.dst < 0 {
				f.diag[^u.dst] -= x
			} else {
				f.val[u.dst] -= x
			}
		}
	}
}

// solve turns the currents in x (in the order of elimination) into volts, in place.
func (f *factor) solve(x []float64) {
	p := f.p
	for k := range p.n {
		xk := x[k]
		if xk == 0 {
			continue
		}
		for a := p.col[k]; a < p.col[k+1]; a++ {
			x[p.row[a]] -= f.low[a] * xk
		}
	}
	for k := p.n - 1; k >= 0; k-- {
		xk := x[k] * f.inv[k]
		for a := p.col[k]; a < p.col[k+1]; a++ {
			xk -= f.low[a] * x[p.row[a]]
		}
		x[k] = xk
	}
}

// inject adds to x the currents that an e.m.f. (as g*e) drives through branch i.
func (p *pattern) inject(x []float64, i int, c *[4]float64, current float64) {
	for j, e := range p.ends[i] {
		if e >= 0 {
			x[e] += c[j] * current
		}
	}
}

// drop is the voltage of x along branch i.
func (p *pattern) drop(x []float64, i int, c *[4]float64) float64 {
	sum := 0.0
	for j, e := range &p.ends[i] {
		if e >= 0 {
			sum += c[j] * x[e]
		}
	}
	return sum
}
