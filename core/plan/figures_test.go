package plan_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"syscall"
	"testing"
	"time"

	"readback/core/infer"
	"readback/core/lab/metric"
	"readback/core/plan"
)

// cpu is the processor time this process has used: the machine is shared, and the figures are about the work.
func cpu() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// decideMS is the median processor time of a decision, in ms, over jobs of true answers.
func decideMS(task *plan.Task, l plan.Limits, jobs int) (float64, int) {
	p, err := plan.New(task, plan.UsualWeights, l)
	if err != nil {
		panic(err)
	}
	b := infer.New(task.Problem)
	var times []float64
	for seed := range uint64(jobs) {
		r := rand.New(rand.NewPCG(seed, 3))
		b.Clear()
		truth := 1 + r.IntN(len(task.Problem.Hyps)/20)
		for range 12 {
			at := cpu()
			d := p.Next(b, plan.Situation{})
			times = append(times, float64(cpu()-at)/1e6)
			if d.Check < 0 {
				break
			}
			w := task.Problem.Hyps[truth].Phases[0].World
			x, o := r.Float64(), 0
			for ; o < len(task.Problem.Checks[d.Check].Bins[0])-1; o++ {
				if x -= task.Problem.Chance(d.Check, w, o); x < 0 {
					break
				}
			}
			if err := b.Observe(outcome(task.Problem, d.Check, o)); err != nil {
				panic(err)
			}
		}
	}
	slices.Sort(times)
	return times[len(times)/2], len(times)
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		// Small models against the exact optimum: the worst of the four regimes.
		const n = 1000
		worst, worst95 := 0.0, 0.0
		for i := range regimes {
			rs := ratios(t, i, n, plan.Exhaustive)
			worst, worst95 = max(worst, mean(rs)), max(worst95, rs[len(rs)*95/100])
			t.Logf("%s: mean %.5f, p95 %.5f, max %.5f", regimes[i], mean(rs), rs[len(rs)*95/100], rs[len(rs)-1])
		}
		add("plan.cost_ratio_mean", worst, "x", "<= 1.002", n)
		add("plan.cost_ratio_p95", worst95, "x", "<= 1.01", n)

		// The two above search without limits. With the limits of a real decision:
		quick, full := 0.0, 0.0
		const few = 60
		for i := range regimes {
			quick = max(quick, mean(played(t, i, few, plan.Quick)))
			full = max(full, mean(played(t, i, few, plan.Full)))
		}
		add("plan.cost_ratio_quick", quick, "x", "reported", few)
		add("plan.cost_ratio_full", full, "x", "reported", few)

		p, err := plan.New(a3(), plan.Weights{}, plan.Exhaustive)
		if err != nil {
			t.Fatal(err)
		}
		add("plan.vector_a3", p.Value(infer.New(p.Task().Problem), plan.Situation{}), "cost", "<= 62.587855", 1)

		// 100 faults with all pairs, 150 checks.
		task := synthetic(100, 150, 1)
		ms, k := decideMS(task, plan.Quick, 10)
		add("plan.base_ms", ms, "ms", "<= 3", k)
		ms, k = decideMS(task, plan.Full, 4)
		add("plan.full_ms", ms, "ms", "<= 60", k)

		b := infer.New(task.Problem)
		answers := []infer.Answer{outcome(task.Problem, 3, 1), outcome(task.Problem, 7, 0), outcome(task.Problem, 90, 2)}
		const rounds = 400
		at := cpu()
		for range rounds {
			b.Clear()
			for range 5 {
				for _, a := range answers {
					if err := b.Observe(a); err != nil {
						t.Fatal(err)
					}
				}
			}
		}
		add("infer.update_us", float64(cpu()-at)/1e3/(rounds*15), "us", "<= 20", rounds*15)

		q, err := plan.New(task, plan.UsualWeights, plan.Full)
		if err != nil {
			t.Fatal(err)
		}
		b.Clear()
		add("plan.allocs", testing.AllocsPerRun(5, func() { q.Next(b, plan.Situation{}) }), "allocations", "= 0", 5)

		// The equipment files.
		decide, count, single, modes, checks := 0.0, 0, 0, 0, 0
		wrong, verdicts, caught, injected, vain, clean := 0, 0, 0, 0, 0, 0
		files := 0.0
		for _, e := range allBenches(t) {
			m, c := decideMS(e.task, plan.Quick, 8)
			decide, count = max(decide, m), count+c
			p, err := plan.New(e.task, plan.UsualWeights, plan.Quick)
			if err != nil {
				t.Fatal(err)
			}
			table := e.engine.Table(e.engine.Singles())
			j := newJob(&e, p)
			for mode := range e.model.Modes {
				j.run(t, []int{mode}, func(check int) infer.Finding { return e.finding(check, table.Prediction(check, mode+1)) })
				modes++
				checks += len(j.asked)
				if j.right([]int{mode}) {
					single++
				}
			}
			v, w := e.wrongParts(t, 77, 100, 0.05, plan.Quick)
			verdicts, wrong = verdicts+v, wrong+w
			c1, c2, c3, c4 := e.doubts(t, 78, 100, plan.Quick)
			caught, injected, vain, clean = caught+c1, injected+c2, vain+c3, clean+c4
			files = math.Max(files, fileRatio(t, &e, 20))
		}
		jobs, blamed := 0, 0
		for _, e := range allBenches(t) {
			n := len(e.model.Modes)
			x, y := e.oneWrong(t, n*n/400+1, 2)
			jobs, blamed = jobs+x, blamed+y
		}
		add("prove.one_wrong_answer_pct", 100*float64(blamed)/float64(jobs), "%", "= 0", jobs)
		add("plan.decide_ms", decide, "ms", "<= 20", count)
		add("plan.single_right_pct", 100*float64(single)/float64(modes), "%", "reported", modes)
		add("plan.checks_mean", float64(checks)/float64(modes), "checks", "<= 25", modes)
		add("plan.cost_ratio_files", files, "x", "<= 1.005", 20)
		add("plan.sure_and_wrong_pct", 100*float64(wrong)/float64(verdicts), "%", "<= 1", verdicts) // five answers in a hundred misread
		add("doubt.caught_pct", 100*float64(caught)/float64(injected), "%", ">= 90", injected)
		add("doubt.false_pct", 100*float64(vain)/float64(clean), "%", "<= 2", clean)
	})
}

// fileRatio is the mean cost over the exact optimum of n random cuts of an equipment file to 8 faults of 8 repairs and 8 checks.
func fileRatio(t testing.TB, e *bench, n int) float64 {
	sum := 0.0
	for seed := range uint64(n) {
		r := rand.New(rand.NewPCG(seed, 8))
		task := e.cut(r, 7, 7)
		p, err := plan.New(task, plan.Weights{}, plan.Exhaustive)
		if err != nil {
			t.Fatal(err)
		}
		sum += p.Value(infer.New(task.Problem), plan.Situation{}) / optimum(task)
	}
	return sum / float64(n)
}

// cut makes a small task of single faults out of an equipment file: faults of different repairs by their rates, with an unknown one,
// and the checks that tell most of them apart, two outcomes each.
func (b *bench) cut(r *rand.Rand, faults, checks int) *plan.Task {
	var modes []int
	seen := map[int]bool{}
	for len(modes) < faults {
		m := b.draw(r)
		if g := b.model.Modes[m].Repair; !seen[g] {
			seen[g] = true
			modes = append(modes, m)
		}
	}
	prior, repair := make([]float64, faults+1), make([]float64, faults+1)
	sum := 0.0
	for i, m := range modes {
		prior[i] = b.model.Modes[m].Rate.Nominal
		repair[i] = plan.UsualWeights.Of(b.task.Repairs[b.model.Modes[m].Repair].Cost)
		sum += prior[i]
	}
	for i := range modes {
		prior[i] *= 0.95 / sum
	}
	prior[faults], repair[faults] = 0.05, plan.UsualWeights.Of(b.task.Unknown)
	var hits [][]float64
	var cost []float64
	for _, k := range r.Perm(len(b.model.Checks)) {
		row := make([]float64, faults+1)
		// Yes is the outcome that differs most between the faults.
		spread, best := 0.0, -1
		for o := range b.c.Problem.Checks[k].Bins[0] {
			lo, hi := 1.0, 0.0
			for _, m := range modes {
				x := b.c.Problem.Chance(k, b.c.Worlds.Of(m), o)
				lo, hi = min(lo, x), max(hi, x)
			}
			if hi-lo > spread {
				spread, best = hi-lo, o
			}
		}
		if best < 0 || spread < 0.5 {
			continue
		}
		for i, m := range modes {
			row[i] = b.c.Problem.Chance(k, b.c.Worlds.Of(m), best)
		}
		row[faults] = 0.5
		hits = append(hits, row)
		cost = append(cost, plan.UsualWeights.Of(b.task.Checks[k].Cost))
		if len(hits) == checks {
			break
		}
	}
	return binary(prior, repair, cost, hits)
}
