// Package drawing draws the circuit of an appliance from its equipment file: supplies as rails, parts as the trade's
// schematic symbols on rungs between them, every test point in its place. Nothing is placed by hand, so a new equipment
// file has its drawing at once.
package drawing

import (
	"sort"

	"readback/core/appliance"
	"readback/core/words"
)

// element is one two-ended thing on a rung.
type element struct {
	part        int // index into the model's parts
	symbol      *appliance.Symbol
	name        string
	left, right string // nets
	lport       string // port names at the two ends, for points of the form part.port
	rport       string
	index       int // order in the file
}

// elements lists what the model's parts are made of, in file order. Parts without a place in the circuit are left out.
func elements(w *words.Words, m *appliance.Model) []element {
	var out []element
	add := func(p int, symbol *appliance.Symbol, name, lport, rport, left, right string) {
		if left == "" && right == "" && lport == "" {
			return
		}
		out = append(out, element{part: p, symbol: symbol, name: name, left: left, right: right, lport: lport, rport: rport, index: len(out)})
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		n := p.Ports
		k := appliance.KindOf(p.Kind)
		if k == nil {
			continue
		}
		for _, d := range k.Drawn {
			name := p.Name
			if d.Name != "" {
				name = w.Term("drawing."+d.Name, "part", p.Name)
			}
			if d.Loose || n[d.A] != "" || n[d.B] != "" {
				add(i, d.Symbol, name, d.A, d.B, n[d.A], n[d.B])
			}
		}
		for _, o := range p.Outputs {
			add(i, appliance.OutputSymbol, w.Term("drawing.output", "part", p.Name, "port", o.ID), "", "", o.From, o.To)
		}
		for _, in := range p.Inputs {
			add(i, appliance.InputSymbol, w.Term("drawing.input", "part", p.Name, "port", in.ID), "", "", in.Net, in.To)
		}
	}
	return out
}

// levels gives every net a height between the supplies (1) and their returns (0), as voltage divides over the elements. It tells
// which end of a rung is left.
func levels(els []element) map[string]float64 {
	level := map[string]float64{}
	fixed := map[string]bool{}
	for _, e := range els {
		for _, n := range []string{e.left, e.right} {
			if n != "" {
				level[n] = 0.5
			}
		}
	}
	for _, e := range els {
		if e.symbol.Source {
			level[e.left], fixed[e.left] = 1, true
		}
	}
	for _, e := range els {
		if e.symbol.Source && !fixed[e.right] {
			level[e.right], fixed[e.right] = 0, true
		}
	}
	nets := make([]string, 0, len(level))
	for n := range level {
		nets = append(nets, n)
	}
	sort.Strings(nets)
	type edge struct {
		to string
		g  float64
	}
	near := map[string][]edge{}
	for _, e := range els {
		g := 100.0 // what only conducts
		switch {
		case e.symbol.Resists:
			g = 1
		case e.symbol.Source, e.symbol.Gap:
			continue
		}
		if e.left == "" || e.right == "" {
			continue
		}
		near[e.left] = append(near[e.left], edge{e.right, g})
		near[e.right] = append(near[e.right], edge{e.left, g})
	}
	for range 600 {
		for _, n := range nets {
			if fixed[n] || len(near[n]) == 0 {
				continue
			}
			sum, weight := 0.0, 0.0
			for _, x := range near[n] {
				sum += x.g * level[x.to]
				weight += x.g
			}
			level[n] = sum / weight
		}
	}
	return level
}

// orient turns every element so that its left end is nearer to the supply.
func orient(els []element, level map[string]float64) {
	for i := range els {
		e := &els[i]
		if !e.symbol.Source && e.left != "" && e.right != "" && level[e.left] < level[e.right]-1e-9 {
			e.left, e.right, e.lport, e.rport = e.right, e.left, e.rport, e.lport
		}
	}
}

// rung is a row of elements in series.
type rung struct {
	els         []element
	left, right string
}

// rungs joins elements that lie in series into rows of at most width, in the order of the file.
func rungs(els []element, width int) []rung {
	degree := map[string]int{}
	starts := map[string][]int{} // net → elements that begin there
	for i, e := range els {
		degree[e.left]++
		degree[e.right]++
		starts[e.left] = append(starts[e.left], i)
	}
	series := func(n string) bool { return n != "" && degree[n] == 2 && len(starts[n]) == 1 }
	used := make([]bool, len(els))
	var out []rung
	take := func(i int) {
		var chain []element
		for {
			used[i] = true
			chain = append(chain, els[i])
			n := els[i].right
			if els[i].symbol.Source || !series(n) || used[starts[n][0]] || els[starts[n][0]].symbol.Source {
				break
			}
			i = starts[n][0]
		}
		for len(chain) > 0 {
			k := min(width, len(chain))
			if len(chain) > width { // rows of equal length look better than one full and one short
				k = (len(chain) + (len(chain)-1)/width) / ((len(chain)-1)/width + 1)
			}
			out = append(out, rung{els: chain[:k], left: chain[0].left, right: chain[k-1].right})
			chain = chain[k:]
		}
	}
	for i, e := range els { // chains begin where nothing in series comes before
		if !used[i] && (e.symbol.Source || !series(e.left) || sourceEnds(els, e.left)) {
			take(i)
		}
	}
	for i := range els { // loops have no beginning: any will do
		if !used[i] {
			take(i)
		}
	}
	return out
}

// sourceEnds tells whether the element whose right end is on a net is a source.
func sourceEnds(els []element, net string) bool {
	for _, e := range els {
		if e.right == net {
			return e.symbol.Source
		}
	}
	return false
}

// sections sorts the rungs by the supply they hang on, each supply's own rung first.
func sections(rs []rung, els []element) []rung {
	zone := map[string]int{}
	var front []string
	n := 0
	for _, e := range els {
		if e.symbol.Source {
			n++
			for _, net := range []string{e.left, e.right} {
				if _, seen := zone[net]; !seen {
					zone[net] = n
					front = append(front, net)
				}
			}
		}
	}
	for len(front) > 0 {
		net := front[0]
		front = front[1:]
		for _, e := range els {
			if e.symbol.Isolates {
				continue
			}
			for _, pair := range [][2]string{{e.left, e.right}, {e.right, e.left}} {
				if pair[0] == net && pair[1] != "" {
					if _, seen := zone[pair[1]]; !seen {
						zone[pair[1]] = zone[net]
						front = append(front, pair[1])
					}
				}
			}
		}
	}
	of := func(r rung) int {
		if z, ok := zone[r.left]; ok {
			return z
		}
		if z, ok := zone[r.right]; ok {
			return z
		}
		return n + 1
	}
	sort.SliceStable(rs, func(i, j int) bool {
		a, b := of(rs[i]), of(rs[j])
		if a != b {
			return a < b
		}
		return rs[i].els[0].symbol.Source && !rs[j].els[0].symbol.Source
	})
	return rs
}
