package handy

import "math"

// circuit is a network of resistors and sources that is solved node by node (nodal analysis: the sum of the currents
// into each node is nothing). Voltages are direct millivolts for the heater and the peaks' effective value, all in one
// phase, for the furnace. That is enough here: the loads of both are resistive or nearly so.
type circuit struct {
	names map[string]int
	parts []branch
}

// branch joins two nodes by a resistance, with a voltage in series when e is not nothing (b plus, a minus).
type branch struct {
	a, b int
	r, e float64
}

const (
	closed = 0.02 // ohms of a good contact or a short wire, common practice, no source
	opened = 1e12 // ohms of what is not joined
)

func newCircuit() *circuit { return &circuit{names: map[string]int{"ground": 0}} }

func (c *circuit) node(name string) int {
	if n, ok := c.names[name]; ok {
		return n
	}
	n := len(c.names)
	c.names[name] = n
	return n
}

// join puts r ohms between two nodes.
func (c *circuit) join(a, b string, r float64) {
	if r < 1e-4 {
		r = 1e-4
	}
	if r < opened {
		c.parts = append(c.parts, branch{a: c.node(a), b: c.node(b), r: r})
	} else {
		c.node(a)
		c.node(b)
	}
}

// source puts e volts with r ohms in series between minus and plus.
func (c *circuit) source(minus, plus string, e, r float64) {
	if r < 1e-4 {
		r = 1e-4
	}
	if r >= opened {
		c.node(minus)
		c.node(plus)
		return
	}
	c.parts = append(c.parts, branch{a: c.node(minus), b: c.node(plus), r: r, e: e})
}

// volts solves the network and answers the voltage from black to red with a meter of the given input resistance.
func (c *circuit) volts(red, black string, meter float64) float64 {
	if meter > 0 {
		c.join(red, black, meter)
	}
	v := c.solve()
	return v[c.node(red)] - v[c.node(black)]
}

// ohms answers the resistance between two nodes with every source dead.
func (c *circuit) ohms(red, black string) float64 {
	d := newCircuit()
	d.names = c.names
	for _, p := range c.parts {
		p.e = 0
		d.parts = append(d.parts, p)
	}
	// One volt behind a known resistance: its drop gives the current.
	const behind = 1000.0
	d.source(black, "probe", 1, behind)
	d.join("probe", red, 1e-4)
	v := d.solve()
	u := v[d.node(red)] - v[d.node(black)]
	if u > 1-1e-8 {
		return opened
	}
	return math.Max(0, u*behind/(1-u))
}

// solve answers the voltage of every node against the node "ground". A node that hangs free is held by a very large
// resistance, so that the equations always have one answer.
func (c *circuit) solve() []float64 {
	n := len(c.names)
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, n+1)
		m[i][i] = 1e-11
	}
	for _, p := range c.parts {
		g := 1 / p.r
		m[p.a][p.a] += g
		m[p.b][p.b] += g
		m[p.a][p.b] -= g
		m[p.b][p.a] -= g
		m[p.b][n] += p.e * g
		m[p.a][n] -= p.e * g
	}
	m[0][0] += 1e9
	for i := range n {
		best := i
		for j := i + 1; j < n; j++ {
			if math.Abs(m[j][i]) > math.Abs(m[best][i]) {
				best = j
			}
		}
		m[i], m[best] = m[best], m[i]
		for j := range n {
			if j == i || m[j][i] == 0 {
				continue
			}
			f := m[j][i] / m[i][i]
			for k := i; k <= n; k++ {
				m[j][k] -= f * m[i][k]
			}
		}
	}
	v := make([]float64, n)
	for i := range v {
		v[i] = m[i][n] / m[i][i]
	}
	return v
}
