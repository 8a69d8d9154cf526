package plan_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/measure"
	"readback/core/plan"
	"readback/core/unit"
	ready "readback/flows/lab/workspace"
)

// bench is an equipment file made ready for diagnosis, with its costs.
type bench struct {
	engine *appliance.Engine
	model  *appliance.Model
	c      *infer.Case
	task   *plan.Task
}

func allBenches(t testing.TB) []bench {
	t.Helper()
	var out []bench
	for _, b := range ready.All(t) {
		task, err := plan.ForAppliance(b.Case, plan.House{Call: math.NaN()})
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, bench{b.Engine, b.Model, b.Case, task})
	}
	return out
}

// finding is what a person without a habit answers to what an appliance shows.
func (b *bench) finding(check int, o appliance.Outcome) infer.Finding {
	k := &b.model.Checks[check]
	if k.Function == measure.Look || len(k.Options) > 0 {
		return infer.Finding{Option: o.Option, Unknown: o.Option < 0}
	}
	r := measure.Reading{State: o.State}
	if o.State == measure.Number {
		u := unit.Must(k.Unit)
		step := b.c.Meter.Step(k.Function, o.Value*u.Scale+u.Offset) / u.Scale
		decimals := max(0, int(math.Ceil(-math.Log10(max(step, 1e-6))-1e-9)))
		r.Value = unit.FromBase(o.Value*u.Scale+u.Offset, k.Unit, decimals)
	}
	return infer.Finding{Option: -1, Reading: &r}
}

// job is one job played with the planner: the answers come from answer.
type job struct {
	b     *bench
	p     *plan.Planner
	bel   *infer.Belief
	s     plan.Situation
	last  []*infer.Finding
	asked []plan.Decision // its Check, Kind and Doubt
	end   plan.Decision
}

func newJob(b *bench, p *plan.Planner) *job {
	return &job{b: b, p: p, bel: infer.New(b.c.Problem), last: make([]*infer.Finding, len(b.model.Checks)),
		s: plan.Situation{Silent: make([]bool, len(b.model.Checks)), Reasked: make([]bool, len(b.model.Checks)), Firm: make([]bool, len(b.model.Checks)), Tried: make([]bool, len(b.model.Repairs))}}
}

func (j *job) reset() {
	j.bel.Clear()
	clear(j.last)
	clear(j.s.Silent)
	clear(j.s.Reasked)
	clear(j.s.Firm)
	clear(j.s.Tried)
	j.s.Site = plan.Site{}
	j.asked = j.asked[:0]
}

// longest is where a job is given up: far more than any needs.
const longest = 120

// run plays a job in which some modes are wrong. A free repair that is not the right one is tried and does not help.
func (j *job) run(t testing.TB, modes []int, answer func(check int) infer.Finding) {
	j.reset()
	for len(j.asked) < longest {
		d := j.p.Next(j.bel, j.s)
		j.end = d
		if d.Kind == plan.Verdict && j.b.task.Repairs[d.Group].Free && !j.right(modes) {
			j.s.Tried[d.Group] = true
			continue
		}
		if d.Check < 0 {
			return
		}
		j.take(t, d, answer(d.Check))
	}
	t.Errorf("a job of %d checks has no end", longest)
}

func (j *job) take(t testing.TB, d plan.Decision, f infer.Finding) {
	if err := j.bel.Observe(j.b.c.Answer(d.Check, f, j.last[d.Check])); err != nil {
		t.Fatal(err)
	}
	j.last[d.Check] = &f
	j.s.Silent[d.Check] = j.s.Silent[d.Check] || f.Unknown
	if d.Kind == plan.Reask {
		j.s.Reasked[d.Doubt] = true
	}
	j.s.Firm[d.Check] = j.s.Firm[d.Check] || d.Again
	j.s.Site = j.b.task.After(j.s.Site, d.Check)
	j.asked = append(j.asked, d)
}

// right tells whether the job ended in the repair of one of the modes.
func (j *job) right(modes []int) bool {
	return j.end.Kind == plan.Verdict && slices.ContainsFunc(modes, func(m int) bool { return j.end.Group == j.b.model.Modes[m].Repair })
}

// Every fault of a file that is answered truly must end in its own repair, but for those that look alike.
func TestSingleFaults(t *testing.T) {
	for _, b := range allBenches(t) {
		p, err := plan.New(b.task, plan.UsualWeights, plan.Quick)
		if err != nil {
			t.Fatal(err)
		}
		j := newJob(&b, p)
		wrong, n, checks := 0, 0, 0
		for mode := range b.model.Modes {
			if mode%4 != 0 { // all of them are measured by the figures
				continue
			}
			j.run(t, []int{mode}, func(check int) infer.Finding { return b.finding(check, b.engine.Predict([]int{mode}, check)) })
			n++
			checks += len(j.asked)
			if !j.right([]int{mode}) {
				wrong++
				t.Logf("%s: kind %d, group %d, p %.3f after %d checks", b.model.Modes[mode].Full, j.end.Kind, j.end.Group, j.end.P, len(j.asked))
			}
		}
		t.Logf("%s: %d of %d right, %.1f checks each", b.model.ID, n-wrong, n, float64(checks)/float64(n))
		if wrong*8 > n {
			t.Errorf("%s: %d of %d single faults do not end in their repair", b.model.ID, wrong, n)
		}
	}
}

// An appliance without a fault must end in "nothing is wrong".
func TestGoodAppliance(t *testing.T) {
	for _, b := range allBenches(t) {
		p, err := plan.New(b.task, plan.UsualWeights, plan.Quick)
		if err != nil {
			t.Fatal(err)
		}
		j := newJob(&b, p)
		j.run(t, nil, func(check int) infer.Finding { return b.finding(check, b.engine.Predict(nil, check)) })
		if j.end.Kind != plan.Nothing {
			t.Errorf("%s: kind %d, group %d, p %.3f after %d checks", b.model.ID, j.end.Kind, j.end.Group, j.end.P, len(j.asked))
		}
	}
}

// Two faults at once must end in the repair of one of them; the other shows when that one is mended.
func TestTwoFaults(t *testing.T) {
	for _, b := range allBenches(t) {
		p, err := plan.New(b.task, plan.UsualWeights, plan.Quick)
		if err != nil {
			t.Fatal(err)
		}
		j := newJob(&b, p)
		jobs, missed, unended := 0, 0, 0
		for seed := range uint64(12) {
			r := rand.New(rand.NewPCG(seed, 5))
			x, y := b.draw(r), b.draw(r)
			if b.model.Modes[x].Part == b.model.Modes[y].Part {
				continue
			}
			both := []int{min(x, y), max(x, y)}
			j.run(t, both, func(check int) infer.Finding { return b.finding(check, b.engine.Predict(both, check)) })
			if !j.right(both) {
				unended++
				t.Logf("%s: %s and %s end in kind %d, group %d, p %.3f", b.model.ID, b.model.Modes[x].Full, b.model.Modes[y].Full, j.end.Kind, j.end.Group, j.end.P)
				continue
			}
			// Mend it, and go on.
			mended, left := j.end.Group, slices.DeleteFunc(slices.Clone(both), func(m int) bool { return b.model.Modes[m].Repair == j.end.Group })
			j.bel.Mend(mended)
			if len(left) == 0 {
				continue
			}
			clear(j.s.Silent)
			for n := 0; n < longest; n++ {
				j.end = p.Next(j.bel, j.s)
				if j.end.Kind == plan.Verdict && b.task.Repairs[j.end.Group].Free && !j.right(left) {
					j.s.Tried[j.end.Group] = true
					continue
				}
				if j.end.Check < 0 {
					break
				}
				j.take(t, j.end, b.finding(j.end.Check, b.engine.Predict(left, j.end.Check)))
			}
			jobs++
			if !j.right(left) {
				missed++
				t.Logf("%s and %s: the second ends in kind %d, group %d, p %.3f", b.model.Modes[x].Full, b.model.Modes[y].Full, j.end.Kind, j.end.Group, j.end.P)
			}
		}
		if unended > 1 {
			t.Errorf("%s: %d pairs end without one of their own repairs", b.model.ID, unended)
		}
		if missed*3 > jobs { // measured: 3 of 11 at the furnace with a spark-lit pilot, whose second fault is called unproved
			t.Errorf("%s: %d of %d second faults are not found once the first is mended", b.model.ID, missed, jobs)
		}
	}
}
