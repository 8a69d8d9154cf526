package oracle

import "math"

// edge is something that conducts between two nodes.
type edge struct {
	a, b string
	ohms float64
}

// source is a voltage with its own resistance, from b to a, in phase with every other.
type source struct {
	a, b        string
	volts, ohms float64
}

// earth is the node that all voltages are against.
const earth = "NEU"

// leak is what any node has to earth through damp and dirt, ohms.
const leak = 5e9

// solve gives the voltage of every node, by nodal analysis with Gaussian elimination.
func solve(edges []edge, sources []source) map[string]float64 {
	index := map[string]int{}
	var names []string
	node := func(n string) int {
		if n == earth {
			return -1
		}
		i, ok := index[n]
		if !ok {
			i = len(names)
			index[n] = i
			names = append(names, n)
		}
		return i
	}
	for _, e := range edges {
		node(e.a)
		node(e.b)
	}
	for _, s := range sources {
		node(s.a)
		node(s.b)
	}
	n := len(names)
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, n+1)
		m[i][i] = 1 / leak
	}
	add := func(a, b int, g float64) {
		if a >= 0 {
			m[a][a] += g
		}
		if b >= 0 {
			m[b][b] += g
		}
		if a >= 0 && b >= 0 {
			m[a][b] -= g
			m[b][a] -= g
		}
	}
	for _, e := range edges {
		if !math.IsInf(e.ohms, 1) {
			add(node(e.a), node(e.b), 1/math.Max(e.ohms, 1e-3))
		}
	}
	for _, s := range sources {
		a, b, g := node(s.a), node(s.b), 1/s.ohms
		add(a, b, g)
		if a >= 0 {
			m[a][n] += s.volts * g
		}
		if b >= 0 {
			m[b][n] -= s.volts * g
		}
	}
	for i := range n {
		p := i
		for r := i + 1; r < n; r++ {
			if math.Abs(m[r][i]) > math.Abs(m[p][i]) {
				p = r
			}
		}
		m[i], m[p] = m[p], m[i]
		for r := i + 1; r < n; r++ {
			if k := m[r][i] / m[i][i]; k != 0 {
				for c := i; c <= n; c++ {
					m[r][c] -= k * m[i][c]
				}
			}
		}
	}
	out := map[string]float64{earth: 0}
	v := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		x := m[i][n]
		for c := i + 1; c < n; c++ {
			x -= m[i][c] * v[c]
		}
		v[i] = x / m[i][i]
		out[names[i]] = v[i]
	}
	return out
}
