package infer_test

import (
	"bufio"
	"compress/gzip"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// readBIF reads a network of two-state variables in the interchange format of its repository; yes is the second state.
func readBIF(t *testing.T, path string) (net []node, states map[string][]string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	list := func(s string) []string {
		return strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" ,(){};|", r) })
	}
	states = map[string][]string{}
	index := map[string]int{}
	at := -1 // the variable whose table is read
	s := bufio.NewScanner(z)
	for s.Scan() {
		line := strings.TrimSpace(s.Text())
		switch {
		case strings.HasPrefix(line, "variable "):
			index[list(line)[1]] = len(net)
			net = append(net, node{name: list(line)[1]})
		case strings.HasPrefix(line, "type "):
			_, values, _ := strings.Cut(line, "{")
			states[net[len(net)-1].name] = list(values)
		case strings.HasPrefix(line, "probability "):
			names := list(line)[1:]
			at = index[names[0]]
			for _, p := range names[1:] {
				net[at].parents = append(net[at].parents, index[p])
			}
			net[at].cpt = make([]float64, 1<<len(net[at].parents))
		case strings.HasPrefix(line, "table "), strings.HasPrefix(line, "("):
			given, values, _ := strings.Cut(strings.TrimPrefix(line, "table"), ")")
			if !strings.HasPrefix(line, "(") {
				given, values = "", given
			}
			row := 0
			for j, v := range list(given) {
				row |= slices.Index(states[net[net[at].parents[j]].name], v) << j
			}
			x, err := strconv.ParseFloat(list(values)[1], 64)
			if err != nil {
				t.Fatalf("%s: %v", line, err)
			}
			net[at].cpt[row] = x
		}
	}
	if err := s.Err(); err != nil {
		t.Fatal(err)
	}
	return net, states
}

// The elimination that is the oracle of the belief is itself held to a published network of engineering size. Reference posteriors: two independent
// eliminations, in Go and in Python, that agree to ten digits (project handbook, diagnosis 2.2).
func TestPrinterNetwork(t *testing.T) {
	net, states := readBIF(t, "../../testdata/networks/printer.bif.gz")
	if len(net) != 76 {
		t.Fatalf("%d variables", len(net))
	}
	find := func(name, state string) (v int, yes bool) {
		v = slices.IndexFunc(net, func(n node) bool { return n.name == name })
		i := slices.Index(states[name], state)
		if v < 0 || i < 0 {
			t.Fatalf("no %s=%s, there are %v", name, state, states[name])
		}
		return v, i == 1
	}
	evidence := map[int]bool{}
	see := func(name, state string) {
		v, yes := find(name, state)
		evidence[v] = yes
	}
	check := func(name, state string, want, all float64) {
		t.Helper()
		v, yes := find(name, state)
		joint, p := eliminate(net, v, evidence)
		got := joint / p
		if !yes {
			got = 1 - got
		}
		if math.Abs(got-want) > 1e-9 || math.Abs(p-all) > 1e-10 {
			t.Errorf("%s: P(%s=%s) = %.10f, want %.10f; P(evidence) = %.12f, want %.12f", fmt.Sprint(evidence), name, state, got, want, p, all)
		}
	}
	see("Problem1", "No_Output")
	check("PrtOn", "No", .1842084474, .427446035951)
	check("PTROFFLINE", "Offline", .3386042030, .427446035951)
	check("PrtDriver", "No", .1668200267, .427446035951)
	see("PrtStatOff", "No_Error")
	check("PrtOn", "No", .0022756490, .346007191063)
}
