package plan_test

import (
	"os"
	"strconv"
	"testing"
	"time"

	"readback/core/infer"
	"readback/core/plan"
)

func TestDev(t *testing.T) {
	n, _ := strconv.Atoi(os.Getenv("N"))
	if n == 0 {
		t.Skip()
	}
	limits := plan.Quick
	if os.Getenv("FULL") != "" {
		limits = plan.Full
	}
	for _, b := range allBenches(t) {
		p, err := plan.New(b.task, plan.UsualWeights, limits)
		if err != nil {
			t.Fatal(err)
		}
		table := b.engine.Table(b.engine.Singles())
		j := newJob(&b, p)
		at := time.Now()
		right, modes, checks, sure := 0, 0, 0, 0
		rate, all := 0.0, 0.0
		for mode := range b.model.Modes {
			if mode%3 != 0 {
				continue
			}
			j.run(t, []int{mode}, func(check int) infer.Finding { return b.finding(check, table.Prediction(check, mode+1)) })
			modes++
			checks += len(j.asked)
			all += b.model.Modes[mode].Rate.Nominal
			if j.right([]int{mode}) {
				right++
				rate += b.model.Modes[mode].Rate.Nominal
				if j.end.Sure {
					sure++
				}
			} else {
				t.Logf("   %s: kind %d group %d p %.3f after %d", b.model.Modes[mode].Full, j.end.Kind, j.end.Group, j.end.P, len(j.asked))
			}
		}
		t.Logf("%s singles: %d of %d right (%.1f%% by rate), sure %d, %.1f checks, %v", b.model.ID, right, modes, 100*rate/all, sure, float64(checks)/float64(modes), time.Since(at))
		for _, bl := range []float64{.05, .15} {
			v, w := b.wrongParts(t, n, bl, limits)
			t.Logf("%s blunders %.2f: %d sure of %d, wrong %d = %.1f%%", b.model.ID, bl, v, n, w, 100*float64(w)/float64(max(v, 1)))
		}
		c1, c2, c3, c4 := b.doubts(t, n, limits)
		t.Logf("%s doubt: caught %.1f%% of %d, false %.2f%% of %d", b.model.ID, 100*float64(c1)/float64(max(c2, 1)), c2, 100*float64(c3)/float64(c4), c4)
	}
}
