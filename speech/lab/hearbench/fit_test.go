package hearbench_test

import (
	"fmt"
	"math"
	"os"
	"sort"
	"strings"
	"sync"
	"testing"
	"time"

	"readback/core/utterance"
	"readback/speech/lab/hearbench"
	"readback/speech/listen"
)

// TestFit fits how sure a reading is, on the tuning half: HEAR_FIT=<clips a condition>. It prints the weights that listen keeps, and how
// well they tell.
func TestFit(t *testing.T) {
	n := number("HEAR_FIT", 0)
	if n == 0 {
		t.Skip("HEAR_FIT is not set: it fits on the tuning half for somebody to take over")
	}
	b := bench(t)
	s := hearbench.NewStudio(hearbench.Voices(), 3)
	var items []hearbench.Item
	for _, it := range hearbench.Readings(4*n, 11) {
		if !it.Held() && len(items) < n {
			items = append(items, it)
		}
	}
	type sample struct {
		x     [4]float64
		right bool
		cond  string
	}
	var all []sample
	var mu sync.Mutex
	for _, c := range hearbench.Conditions {
		if only := os.Getenv("HEAR_ONLY"); only != "" && !strings.Contains(only, c.String()) {
			continue
		}
		right, wrong := 0, 0
		done := parallel(t, b, len(items), time.Hour, func(b *hearbench.Bench, i int) error {
			row, err := b.Listen(s, s.Voices[i%len(s.Voices)], items[i], c, i)
			if err != nil {
				return err
			}
			mu.Lock()
			defer mu.Unlock()
			if row.Right {
				right++
			} else {
				t.Log(row)
			}
			if row.Wrong {
				wrong++
			}
			if u := row.Last; u != nil && u.Best() != nil && u.Best().Kind == utterance.Reading && u.Sure != listen.Unsaid {
				all = append(all, sample{listen.Features(u), row.Right, c.String()})
				t.Logf("SAMPLE\t%s\t%v\t%v\t%s\t%s\t%v", c, row.Right, listen.Features(u), row.Voice, row.Item.Say, u.Text)
			}
			return nil
		})
		t.Logf("%s: right %.1f, wrong %.1f of %d", c, pct(right, done), pct(wrong, done), done)
	}
	// Newton's method with a small ridge, so that what is told apart without an error stays finite.
	var w [4]float64
	for range 50 {
		var g [4]float64
		var h [4][4]float64
		for i := range w {
			g[i] = -0.1 * w[i]
			h[i][i] = 0.1
		}
		for _, s := range all {
			z := 0.0
			for i, x := range s.x {
				z += w[i] * x
			}
			p := 1 / (1 + math.Exp(-z))
			y := 0.0
			if s.right {
				y = 1
			}
			for i, x := range s.x {
				g[i] += (y - p) * x
				for k, v := range s.x {
					h[i][k] += p * (1 - p) * x * v
				}
			}
		}
		for i, d := range solve(h, g) {
			w[i] += d
		}
	}
	t.Logf("weights %.3f", w)
	prob := func(s sample) float64 {
		z := 0.0
		for i, x := range s.x {
			z += w[i] * x
		}
		return 1 / (1 + math.Exp(-z))
	}
	byCond := map[string][]sample{}
	for _, s := range all {
		byCond[s.cond] = append(byCond[s.cond], s)
	}
	for _, c := range hearbench.Conditions {
		ss := byCond[c.String()]
		var line strings.Builder
		for _, limit := range []float64{0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.98} {
			below, bad := 0, 0
			for _, s := range ss {
				if prob(s) < limit {
					below++
				} else if !s.right {
					bad++
				}
			}
			fmt.Fprintf(&line, "  %.2f: %4.1f/%3.1f", limit, pct(below, len(ss)), pct(bad, len(ss)))
		}
		t.Logf("%-12s limit: asked/wrong %%%s", c, line.String())
	}
	sort.Slice(all, func(i, j int) bool { return prob(all[i]) < prob(all[j]) })
	for k := range 10 {
		part := all[k*len(all)/10 : (k+1)*len(all)/10]
		p, r := 0.0, 0
		for _, s := range part {
			p += prob(s)
			if s.right {
				r++
			}
		}
		t.Logf("tenth %d: expected %.1f, right %.1f of %d", k+1, 100*p/float64(len(part)), pct(r, len(part)), len(part))
	}
}

// solve is Gaussian elimination for a positive definite matrix.
func solve(a [4][4]float64, b [4]float64) [4]float64 {
	for i := range b {
		for k := i + 1; k < len(b); k++ {
			f := a[k][i] / a[i][i]
			for j := i; j < len(b); j++ {
				a[k][j] -= f * a[i][j]
			}
			b[k] -= f * b[i]
		}
	}
	for i := len(b) - 1; i >= 0; i-- {
		for j := i + 1; j < len(b); j++ {
			b[i] -= a[i][j] * b[j]
		}
		b[i] /= a[i][i]
	}
	return b
}
