package ocr

import (
	"encoding/json"
	"math"
	"os"
	"runtime"
	"slices"
	"testing"
)

// probe is an input that learn.py makes too.
func probe(v []float32, h, w int) {
	for y := range h {
		for x := range w {
			for c := range 3 {
				v[(y*w+x)*3+c] = (float32((x*37+y*101+c*53+(x*y)%97*11)%256) - 128) / 64
			}
		}
	}
}

func reference(t testing.TB, net *Net, path string) {
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var want struct {
		Every int
		Out   []float64
	}
	if err := json.Unmarshal(b, &want); err != nil {
		t.Fatal(err)
	}
	r := newRunner(net)
	probe(r.Input(), net.H, net.W)
	got, _, _, _ := r.Run()
	if len(want.Out) < 20 || (len(got)+want.Every-1)/want.Every != len(want.Out) {
		t.Fatalf("%d outputs, %d are known of every %d", len(got), len(want.Out), want.Every)
	}
	for i, w := range want.Out {
		if d := math.Abs(float64(got[i*want.Every]) - w); d > 1e-4*math.Max(1, math.Abs(w)) {
			t.Fatalf("output %d is %v, the framework's %v", i*want.Every, got[i*want.Every], w)
		}
	}
}

// What the networks make of one input, against the framework that trained them.
func TestReference(t *testing.T) {
	n := Own()
	reference(t, n.Find, "find.json")
	reference(t, n.Align, "align.json")
	reference(t, n.Row, "row.json")
}

// One goroutine and several compute the same, bit for bit.
func TestSplit(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	r := newRunner(Own().Find)
	probe(r.Input(), r.net.H, r.net.W)
	v, _, _, _ := r.Run()
	one := slices.Clone(v)
	runtime.GOMAXPROCS(4)
	if v, _, _, _ = r.Run(); !slices.Equal(one, v) {
		t.Error("four goroutines give something else")
	}
}

func BenchmarkNets(b *testing.B) {
	n := Own()
	for name, net := range map[string]*Net{"find": n.Find, "align": n.Align, "row": n.Row} {
		r := newRunner(net)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				r.Run()
			}
		})
	}
}
