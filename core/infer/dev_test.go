package infer_test

import (
	"math/rand/v2"
	"os"
	"strconv"
	"testing"
)

func TestDev(t *testing.T) {
	n, _ := strconv.Atoi(os.Getenv("N"))
	if n == 0 {
		t.Skip()
	}
	for _, c := range cases(t) {
		p := c.Problem
		if len(p.Hyps) > 3000 && os.Getenv("LARGE") == "" {
			continue
		}
		m := calibrate(newWorld(p, rand.New(rand.NewPCG(101, 1)), 0, 0, 0), n, 10, 1)
		e, rel := m.ece()
		t.Logf("%s: %d hyps: matched %.4f rel %.6f", c.Model.ID, len(p.Hyps), e, rel)
		show := func(name string, noise, blunder, missing float64) {
			var k calibration
			for i := range uint64(5) {
				k.merge(calibrate(newWorld(p, rand.New(rand.NewPCG(i, 102)), noise, blunder, missing), n/5, 10, 202+i))
			}
			e, _ := k.ece()
			t.Logf("%s %.4f", name, e)
			for b := range k.n {
				if k.n[b] > 0 && name == "all" {
					t.Logf("   %.3f said %.3f true %.3f", float64(k.n[b])/float64(n), k.p[b]/float64(k.n[b]), float64(k.hit[b])/float64(k.n[b]))
				}
			}
		}
		show("noise", .5, 0, 0)
		show("blunder", 0, .1, 0)
		show("missing", 0, 0, .02)
		show("all", .5, .1, .02)
	}
}
