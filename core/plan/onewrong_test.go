package plan_test

import (
	"testing"

	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/measure"
	"readback/core/plan"
)

// others are what a check may be answered with instead of f: one answer for every other planning outcome that anything, or leads in
// the air, can show.
func (b *bench) others(check int, f infer.Finding, table *appliance.Table) []infer.Finding {
	k := &b.model.Checks[check]
	seen := map[int]bool{b.c.Answer(check, f, nil).Bin: true, -1: true}
	var out []infer.Finding
	add := func(g infer.Finding) {
		if bin := b.c.Answer(check, g, nil).Bin; !seen[bin] {
			seen[bin] = true
			out = append(out, g)
		}
	}
	if f.Reading == nil {
		for o := range k.Options {
			add(infer.Finding{Option: o})
		}
		return out
	}
	air := appliance.Outcome{Option: -1}
	switch k.Function {
	case measure.Ohms:
		air.State = measure.Over
	case measure.Continuity:
		air.State = measure.Silent
	}
	add(b.finding(check, air))
	for _, o := range table.Outcome[check] {
		add(b.finding(check, o))
	}
	if r := *f.Reading; r.State == measure.Number {
		for _, decades := range []int{-3, -1, 1, 3} {
			x := r
			x.Value.Dec.Exp += decades
			add(infer.Finding{Option: -1, Reading: &x})
		}
	}
	return out
}

// oneWrong plays every stride-th single fault with one answer wrong, at every place, in every way: how many jobs, and how many of them
// end in a confident verdict on another repair. A setting that is tried for nothing blames nobody.
func (b *bench) oneWrong(t testing.TB, stride, first int) (jobs, wrong int) {
	p, err := plan.New(b.task, plan.UsualWeights, plan.Quick)
	if err != nil {
		t.Fatal(err)
	}
	table := b.engine.Table(b.engine.Singles())
	j := newJob(b, p)
	for mode := first; mode < len(b.model.Modes); mode += stride {
		honest := func(check int) infer.Finding { return b.finding(check, table.Prediction(check, mode+1)) }
		j.run(t, []int{mode}, honest)
		var path []int
		for _, d := range j.asked {
			path = append(path, d.Check)
		}
		for at, check := range path {
			for _, other := range b.others(check, honest(check), table) {
				n := 0
				j.run(t, []int{mode}, func(c int) infer.Finding {
					n++
					if n == at+1 {
						return other
					}
					return honest(c)
				})
				jobs++
				if j.end.Kind == plan.Verdict && j.end.Sure && !j.right([]int{mode}) {
					wrong++
					t.Logf("%s: %s answered as bin %d ends in %s, p %.3f", b.model.Modes[mode].Full, b.model.Checks[check].ID,
						b.c.Answer(check, other, nil).Bin, b.model.Repairs[j.end.Group].ID, j.end.P)
				}
			}
		}
	}
	return jobs, wrong
}

// A single wrong answer, whichever it is, must not end in a confident verdict on a part that is good.
func TestOneWrongAnswer(t *testing.T) {
	for _, b := range allBenches(t) {
		n := len(b.model.Modes)
		jobs, wrong := b.oneWrong(t, n*n/200+1, 1) // the figures take more of them
		t.Logf("%s: %d jobs", b.model.ID, jobs)
		if wrong > 0 {
			t.Errorf("%s: %d of %d jobs with one wrong answer end in a confident wrong verdict", b.model.ID, wrong, jobs)
		}
	}
}
