// Package handx is an outside examiner: one furnace of the 1990s with its own wiring, its own faults and four people
// in front of it, written from the line protocol and the catalogue alone, so that the program is measured on a machine
// that its makers did not make.
//
// The house is the examiner's own: an induced draft furnace with a silicon carbide igniter and a three-wire blower
// motor with a run capacitor, a humidifier on its cabinet, a float switch in the coil pan, and a long thermostat cable
// with a splice above the furnace. The numbers are common practice and memory, no source, unless a comment says more.
package handx

import "math"

// open is the resistance of a contact that does not conduct, in ohms: leakage over dust and insulation.
const open = 500e6

// net is a network of resistances with voltage sources behind a resistance, solved by nodal analysis.
type net struct {
	index map[string]int
	edges []edge
	srcs  []source
}

type edge struct {
	a, b int
	g    float64
}

// source is a voltage behind a resistance: v volts at plus against minus, with no load.
type source struct {
	plus, minus int
	v, r        float64
}

// ground is the reference: the neutral bar of the breaker panel.
const ground = "ground"

func newNet() *net {
	return &net{index: map[string]int{ground: 0}}
}

func (n *net) node(name string) int {
	i, ok := n.index[name]
	if !ok {
		i = len(n.index)
		n.index[name] = i
	}
	return i
}

// join puts r ohms between two nodes.
func (n *net) join(a, b string, r float64) {
	if r < 1e-3 {
		r = 1e-3
	}
	n.edges = append(n.edges, edge{n.node(a), n.node(b), 1 / r})
}

func (n *net) feed(plus, minus string, v, r float64) {
	n.srcs = append(n.srcs, source{n.node(plus), n.node(minus), v, r})
}

// solve returns the voltage of each node against ground.
func (n *net) solve() []float64 {
	size := len(n.index)
	m := make([][]float64, size)
	cells := make([]float64, size*(size+1))
	for i := range m {
		m[i] = cells[i*(size+1) : (i+1)*(size+1)]
		// Every piece of copper leaks a little to its surroundings; so no node floats without a value.
		m[i][i] = 1 / 1e9
	}
	put := func(a, b int, g float64) {
		m[a][a] += g
		m[b][b] += g
		m[a][b] -= g
		m[b][a] -= g
	}
	for _, e := range n.edges {
		put(e.a, e.b, e.g)
	}
	for _, s := range n.srcs {
		put(s.plus, s.minus, 1/s.r)
		m[s.plus][size] += s.v / s.r
		m[s.minus][size] -= s.v / s.r
	}
	// The reference row is replaced: its voltage is zero.
	for j := range m[0] {
		m[0][j] = 0
	}
	m[0][0] = 1
	// The matrix of a passive network is diagonally dominant, so it needs no search for a pivot; a row of it is nearly
	// empty, so only its filled columns are touched.
	filled := make([]int, 0, size)
	for c := 0; c < size; c++ {
		filled = filled[:0]
		for k := c; k <= size; k++ {
			if m[c][k] != 0 {
				filled = append(filled, k)
			}
		}
		for r := c + 1; r < size; r++ {
			if m[r][c] == 0 {
				continue
			}
			f := m[r][c] / m[c][c]
			for _, k := range filled {
				m[r][k] -= f * m[c][k]
			}
		}
	}
	v := make([]float64, size)
	for r := size - 1; r >= 0; r-- {
		s := m[r][size]
		for k := r + 1; k < size; k++ {
			s -= m[r][k] * v[k]
		}
		v[r] = s / m[r][r]
	}
	return v
}

// between is the magnitude of the voltage between two nodes of a solved network.
func (n *net) between(v []float64, a, b string) float64 {
	return math.Abs(v[n.node(a)] - v[n.node(b)])
}

// ohms is the resistance that a meter sees between two nodes of a network without sources.
func (n *net) ohms(a, b string) float64 {
	i, j := n.node(a), n.node(b)
	n.srcs = []source{{i, j, 1, 1}}
	v := n.solve()
	d := v[i] - v[j]
	if d >= 1-1e-9 {
		return 1e9
	}
	return d / (1 - d)
}
