package appliance

import (
	"fmt"
	"strings"
)

// Circuit is one settled state as a netlist for a circuit simulator, with the volts this engine finds at its nodes.
// Signed r.m.s. volts of the a.c. network are written as d.c.: an operating point solves them.
type Circuit struct {
	Name  string
	DC    bool      // the network of thermopiles and flame currents
	Nets  []string  // node names of this engine; the datum is left out
	Nodes []string  // the same in the netlist
	Volts []float64 // what this engine finds
	Cards string    // element lines, without title and .end; node 0 is the datum
}

// Text is the circuit by itself, with an operating point and all node voltages printed.
func (c *Circuit) Text() string {
	return "* " + c.Name + "\n" + c.Cards + ".control\nop\nprint all\n.endc\n.end\n"
}

// Netlist is the a.c. network of a hypothesis in a step of the sequence, "" for the state in which it ends up, as a netlist.
func (e *Engine) Netlist(modes []int, at Situation, step string) string {
	for _, c := range e.Circuits(modes, at, "") {
		if !c.DC && (c.Name == step || step == "" && c.Name == "end") {
			return c.Text()
		}
	}
	return ""
}

// Circuits returns every state that a hypothesis passes in a situation, named by its step, "end" for the last. Names of nodes
// and elements begin with prefix, so that many circuits can share one netlist.
func (e *Engine) Circuits(modes []int, at Situation, prefix string) []Circuit {
	if e.valid(modes) != nil {
		panic("appliance: a circuit with a mode that is not in the model")
	}
	s := e.newSim()
	s.load(sorted(modes), nil)
	s.begin()
	var out []Circuit
	s.run(&at, func(step int, last bool) {
		name := "end"
		if !last && step >= 0 {
			name = e.m.Controls[0].Steps[step].ID
		}
		out = append(out, s.circuit(name, fmt.Sprintf("%ss%d", prefix, len(out)), false))
		if s.live {
			out = append(out, s.circuit(name, fmt.Sprintf("%ss%dd", prefix, len(out)), true))
		}
	})
	return out
}

func (s *state) circuit(name, prefix string, dc bool) Circuit {
	e := s.e
	c := Circuit{Name: name, DC: dc, Nets: e.nodeNames}
	node := func(i int32) string {
		if i < 0 {
			return "0"
		}
		return fmt.Sprintf("%sn%d", prefix, i)
	}
	g, volt := s.g, s.volt
	if dc {
		g, volt = s.gd, s.voltDC
	}
	var b strings.Builder
	for i := range e.nodeNames {
		n := node(int32(i))
		c.Nodes = append(c.Nodes, n)
		c.Volts = append(c.Volts, volt(int32(i)))
		fmt.Fprintf(&b, "r%sleak%d %s 0 %g\n", prefix, i, n, leakOhms)
	}
	for i := range e.branches {
		br := &e.branches[i]
		if g[i] == 0 {
			continue
		}
		ohms, from := 1/g[i], node(br.node[0])
		emf := br.acEmf
		if dc {
			emf = br.dcEmf
		}
		switch {
		case br.n == 4: // ideal transformer: what the secondary gives, the primary takes in the inverse ratio
			k := s.c.coef[i][0]
			p1, p2, s1, s2 := node(br.node[0]), node(br.node[1]), node(br.node[2]), node(br.node[3])
			in, mid := fmt.Sprintf("%si%d", prefix, i), fmt.Sprintf("%sm%d", prefix, i)
			fmt.Fprintf(&b, "e%sx%d %s %s %s %s %.12g\n", prefix, i, in, s2, p1, p2, k)
			fmt.Fprintf(&b, "v%sx%d %s %s 0\n", prefix, i, in, mid)
			fmt.Fprintf(&b, "r%sx%d %s %s %.12g\n", prefix, i, mid, s1, ohms)
			fmt.Fprintf(&b, "f%sx%d %s %s v%sx%d %.12g\n", prefix, i, p1, p2, prefix, i, k)
			continue
		case emf >= 0 && s.val[emf] != 0:
			in := fmt.Sprintf("%si%d", prefix, i)
			fmt.Fprintf(&b, "v%sx%d %s %s %.12g\n", prefix, i, from, in, s.val[emf])
			from = in
		}
		if to := node(br.node[1]); to != from {
			fmt.Fprintf(&b, "r%sx%d %s %s %.12g\n", prefix, i, from, to, ohms)
		}
	}
	c.Cards = b.String()
	return c
}
