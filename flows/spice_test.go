package flows_test

import (
	"bufio"
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"readback/core/appliance"
	"readback/core/lab/metric"
	"readback/flows"
)

// engine compiles a file of this folder's data, or skips when it is not there yet.
func engine(t testing.TB, dir, name string) *appliance.Engine {
	t.Helper()
	m, err := flows.Load(os.DirFS(dir), name)
	if err != nil {
		t.Fatal(err)
	}
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// electrical lists the modes of parts that join nets.
func electrical(m *appliance.Model) []int {
	var out []int
	for i := range m.Modes {
		if len(m.Parts[m.Modes[i].Part].Ports) > 0 {
			out = append(out, i)
		}
	}
	return out
}

// ngspice solves many circuits in one run and returns the volts of every node.
func ngspice(t testing.TB, circuits []appliance.Circuit) map[string]float64 {
	t.Helper()
	path, err := exec.LookPath("ngspice")
	if err != nil {
		t.Skip("ngspice is not installed (apt-get install ngspice): the circuits are not compared")
	}
	var b strings.Builder
	b.WriteString("* settled states\n")
	for _, c := range circuits {
		b.WriteString(c.Cards)
	}
	b.WriteString(".control\nop\nprint all\n.endc\n.end\n")
	file := filepath.Join(t.TempDir(), "all.cir")
	if err := os.WriteFile(file, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, "-b", file)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil && len(out) == 0 {
		t.Fatalf("ngspice: %v: %s", err, stderr.String())
	}
	volts := map[string]float64{}
	sc := bufio.NewScanner(bytes.NewReader(out))
	for sc.Scan() {
		name, value, ok := strings.Cut(sc.Text(), " = ")
		if v, err := strconv.ParseFloat(strings.TrimSpace(value), 64); ok && err == nil {
			volts[strings.TrimSpace(name)] = v
		}
	}
	return volts
}

// agreement compares every node of every state: healthy in all steps, each single electrical mode where it hangs and before.
func agreement(t testing.TB, e *appliance.Engine, complain func(string, ...any)) (agree, total int) {
	m := e.Model()
	at := appliance.Situation{Power: true, Call: true, Jump: -1}
	var circuits []appliance.Circuit
	var names []string
	add := func(name string, cs []appliance.Circuit) {
		for _, c := range cs {
			circuits = append(circuits, c)
			names = append(names, name+" at "+c.Name)
		}
	}
	add("healthy", e.Circuits(nil, at, "h"))
	for _, i := range electrical(m) {
		cs := e.Circuits([]int{i}, at, fmt.Sprintf("m%d", i))
		add(m.Modes[i].Full, cs[max(0, len(cs)-3):])
	}
	const batch = 40
	for lo := 0; lo < len(circuits); lo += batch {
		hi := min(lo+batch, len(circuits))
		volts := ngspice(t, circuits[lo:hi])
		for k, c := range circuits[lo:hi] {
			floor := 0.1 // V
			if c.DC {
				floor = 1e-4
			}
			for i, node := range c.Nodes {
				total++
				want, ok := volts[node]
				if !ok {
					complain("%s: ngspice gives no volts for %s", names[lo+k], c.Nets[i])
					continue
				}
				if d := math.Abs(c.Volts[i] - want); d > max(floor, 0.02*math.Abs(want)) {
					complain("%s: %s has %.6g V, ngspice %.6g V", names[lo+k], c.Nets[i], c.Volts[i], want)
					continue
				}
				agree++
			}
		}
	}
	return agree, total
}

// TestCircuitsAgree is the outside check: node voltages against ngspice.
func TestCircuitsAgree(t *testing.T) {
	_, names := flows.Files()
	files := [][2]string{{"../testdata/flows", "tiny.hcl"}}
	for _, n := range names {
		files = append(files, [2]string{".", n})
	}
	for _, f := range files {
		t.Run(filepath.Base(f[1]), func(t *testing.T) {
			agree, total := agreement(t, engine(t, f[0], f[1]), t.Errorf)
			t.Logf("%d of %d node voltages agree", agree, total)
			if total == 0 {
				t.Error("nothing was compared")
			}
		})
	}
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		add("house.kind_files", float64(len(newKind(t))), "files", "<= 2", 1)
		ps, n := warnings(t)
		add("lint.warnings", float64(len(ps)), "warnings", "= 0", n)
		agree, total := 0, 0
		_, names := flows.Files()
		for _, n := range names {
			a, n := agreement(t, engine(t, ".", n), t.Logf)
			agree, total = agree+a, total+n
		}
		add("circuit.agree_pct", 100*float64(agree)/float64(total), "%", ">= 100", total)

		reports, err := flows.LintAll(nil)
		if err != nil {
			t.Fatal(err)
		}
		one, three, modes := 1.0, 1.0, 0
		for _, r := range reports {
			one, three, modes = min(one, r.One), min(three, r.Three), modes+len(r.Model.Modes)
		}
		add("isolate.one_pct", 100*one, "%", ">= 95", modes)
		add("isolate.three_pct", 100*three, "%", ">= 99.5", modes)

		least := math.MaxInt
		for _, r := range reports {
			least = min(least, len(r.Model.Modes))
		}
		add("file.count", float64(len(reports)), "files", ">= 8", len(reports))
		add("file.modes_min", float64(least), "modes", ">= 45", len(reports))
		src, err := os.ReadFile("data/gas-condensing.hcl")
		if err != nil {
			t.Fatal(err)
		}
		add("file.lines_new_furnace", float64(bytes.Count(src, []byte("\n"))), "lines", "<= 900", 1)
		covered, missing := causes(t, reports)
		t.Logf("causes without a fault in any gas furnace: %v", missing)
		add("file.causes_of_40", float64(covered), "causes", "= 40", 40)
		add("file.sources_missing", float64(plateWords(reports)), "numbers", "= 0", len(reports))

		e := engine(t, "data", "furnace.hcl")
		hyps := append(e.Singles(), e.Pairs()...)
		start := time.Now()
		e.Table(hyps)
		add("compile.pairs_s", time.Since(start).Seconds(), "s", "reported", len(hyps))
	})
}
