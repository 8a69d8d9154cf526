package infer_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"readback/core/infer"
	"readback/core/lab/metric"
	"readback/flows/lab/workspace"
)

func cases(t testing.TB) []*infer.Case {
	var out []*infer.Case
	for _, b := range workspace.All(t) {
		out = append(out, b.Case)
	}
	return out
}

// calibration gathers how often something of a stated probability was so.
type calibration struct {
	n, hit [20]int
	p      [20]float64
}

func (c *calibration) add(p float64, so bool) {
	k := min(len(c.n)-1, int(p*float64(len(c.n))))
	c.n[k]++
	c.p[k] += p
	if so {
		c.hit[k]++
	}
}

func (c *calibration) merge(o calibration) {
	for k := range c.n {
		c.n[k] += o.n[k]
		c.hit[k] += o.hit[k]
		c.p[k] += o.p[k]
	}
}

// ece is the expected calibration error over equal bins; reliability the quadratic term of Murphy's decomposition.
func (c *calibration) ece() (ece, reliability float64) {
	total := 0
	for _, n := range c.n {
		total += n
	}
	for k, n := range c.n {
		if n > 0 {
			d := math.Abs(c.p[k]-float64(c.hit[k])) / float64(n)
			ece += d * float64(n) / float64(total)
			reliability += d * d * float64(n) / float64(total)
		}
	}
	return ece, reliability
}

// world draws jobs from a problem, or from a perturbed version of it.
type world struct {
	p       *infer.Problem
	cum     []float64       // of the hypotheses
	rows    [][][][]float64 // outcome chances per habit, check and class, Broad last
	habit   int             // of the person of this job
	blunder float64         // share of answers that are drawn blindly
	missing float64         // share of jobs whose fault is not in the model: every answer as under some other fault
}

// newWorld makes a world. Noise is the standard deviation in log odds of priors and outcome chances; slips is how many times the usual odds of a
// blunder everybody has, 0 for the model's own mixture of persons.
func newWorld(p *infer.Problem, r *rand.Rand, noise, slips, blunder, missing float64) *world {
	w := &world{p: p, blunder: blunder, missing: missing}
	sum := 0.0
	for _, h := range p.Hyps {
		sum += h.Prior * math.Exp(noise*r.NormFloat64())
		w.cum = append(w.cum, sum)
	}
	for _, habit := range p.Habits {
		odds := habit.Odds
		if slips > 0 {
			odds = slips
		}
		var checks [][][]float64
		for c := range p.Checks {
			checks = append(checks, noisy(r, laws(p, c, odds), noise))
		}
		w.rows = append(w.rows, checks)
	}
	return w
}

// laws are the outcome chances of each class of a check, Broad last, for a person with so many times the usual odds of a blunder.
func laws(p *infer.Problem, check int, odds float64) [][]float64 {
	k := &p.Checks[check]
	weight := make([]float64, len(k.Bins)+1)
	for _, h := range p.Hyps {
		for _, ph := range h.Phases {
			if c := k.Class[ph.World]; c != infer.Broad {
				weight[c] += h.Prior * ph.P
				weight[len(k.Bins)] += h.Prior * ph.P
			}
		}
	}
	rows := make([][]float64, len(k.Bins)+1)
	broad := make([]float64, len(k.Bins[0]))
	for class, row := range k.Bins {
		rows[class] = make([]float64, len(row))
		sum := 0.0
		for o, x := range row {
			if k.Spoilt != nil {
				x += (odds - 1) * k.Spoilt[class][o]
			}
			rows[class][o] = x
			sum += x
		}
		share := 0.7*weight[class]/weight[len(k.Bins)] + 0.3/float64(len(k.Bins))
		for o := range row {
			rows[class][o] /= sum
			broad[o] += share * rows[class][o]
		}
	}
	rows[len(k.Bins)] = broad
	return rows
}

// noisy puts noise, in log odds, on laws.
func noisy(r *rand.Rand, rows [][]float64, noise float64) [][]float64 {
	for _, row := range rows {
		total := 0.0
		for o := range row {
			row[o] *= math.Exp(noise * r.NormFloat64())
			total += row[o]
		}
		for o := range row {
			row[o] /= total
		}
	}
	return rows
}

// person draws who does the next job.
func (w *world) person(r *rand.Rand) {
	x := r.Float64()
	for g, h := range w.p.Habits {
		w.habit = g
		if x -= h.P; x < 0 {
			return
		}
	}
}

func (w *world) hyp(r *rand.Rand) int {
	i, _ := slices.BinarySearch(w.cum, r.Float64()*w.cum[len(w.cum)-1])
	return min(i, len(w.cum)-1)
}

func (w *world) active(r *rand.Rand, h int) int {
	x := r.Float64()
	ph := w.p.Hyps[h].Phases
	for _, f := range ph {
		if x -= f.P; x < 0 {
			return f.World
		}
	}
	return ph[len(ph)-1].World
}

func (w *world) answer(r *rand.Rand, check, world int) int {
	k := int(w.p.Checks[check].Class[world])
	rows := w.rows[w.habit][check]
	row := rows[min(k, len(rows)-1)]
	if r.Float64() < w.blunder {
		return r.IntN(len(row))
	}
	x := r.Float64()
	for o, p := range row {
		if x -= p; x < 0 {
			return o
		}
	}
	return len(row) - 1
}

// calibrate plays n jobs of so many random checks and compares the probability of the leading repair decision with the truth.
func calibrate(w *world, n, checks int, seed uint64) calibration {
	var c calibration
	p := w.p
	r := rand.New(rand.NewPCG(seed, 11))
	b := infer.New(p)
	need := make([]float64, p.Groups+2)
	decisions := func(h int) []int {
		switch hyp := &p.Hyps[h]; {
		case hyp.Sort == infer.Nothing:
			return []int{p.Groups}
		case len(hyp.Groups) == 0:
			return []int{p.Groups + 1}
		default:
			return hyp.Groups
		}
	}
	for range n {
		b.Clear()
		w.person(r)
		h := w.hyp(r)
		at := w.active(r, h)
		lost := r.Float64() < w.missing
		for range checks {
			k := r.IntN(len(p.Checks))
			if len(p.Checks[k].Bins[0]) < 2 || b.Outcome(k) >= 0 {
				continue
			}
			if lost {
				at = w.active(r, w.hyp(r))
			}
			if err := b.Observe(discrete(p, k, w.answer(r, k, at))); err != nil {
				panic(err)
			}
		}
		clear(need)
		for i, x := range b.Prob() {
			for _, g := range decisions(i) {
				need[g] += x
			}
		}
		lead := 0
		for g, x := range need {
			if x > need[lead] {
				lead = g
			}
		}
		so := !lost && slices.Contains(decisions(h), lead)
		if lost {
			so = lead == p.Groups+1
		}
		c.add(min(need[lead], 1), so)
	}
	return c
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		off := 0.0
		const models = 200
		for seed := range uint64(models) {
			r := rand.New(rand.NewPCG(seed, 21))
			p := randomProblem(r)
			b := infer.New(p)
			var events []event
			for range r.IntN(8) {
				e := randomEvent(r, p)
				events = append(events, e)
				feed(b, e)
			}
			off = max(off, worst(p, b, events))
		}
		add("infer.error", off, "probability", "<= 1e-12", models)

		all := cases(t)
		one, three := 100.0, 100.0
		for _, c := range all {
			a, b := isolation(c)
			one, three = min(one, a), min(three, b)
		}
		add("isolate.one_pct", one, "%", ">= 95", len(all))
		add("isolate.three_pct", three, "%", ">= 99.5", len(all))

		// The long run is on the smallest file, so that it takes a minute; the largest one gets a tenth of it.
		const jobs = 100000
		small := slices.MinFunc(all, func(a, b *infer.Case) int { return len(a.Modes) - len(b.Modes) }).Problem
		large := slices.MaxFunc(all, func(a, b *infer.Case) int { return len(a.Modes) - len(b.Modes) }).Problem
		matched := func(p *infer.Problem, n int) (ece, rel float64) {
			c := calibrate(newWorld(p, rand.New(rand.NewPCG(1, 1)), 0, 0, 0, 0), n, 10, 1)
			return c.ece()
		}
		// Perturbed: outcome chances and priors off by 0.5 in log odds, two jobs in a hundred with a fault that the model does not have, and everybody
		// makes three times the usual blunders; or a tenth of all answers are blind, which is no blunder that the model knows.
		perturbed := func(p *infer.Problem, n int, slips, blind float64) float64 {
			const worlds = 5
			var c calibration
			for i := range uint64(worlds) {
				c.merge(calibrate(newWorld(p, rand.New(rand.NewPCG(i, 2)), 0.5, slips, blind, 0.02), n/worlds, 10, 2+i))
			}
			e, _ := c.ece()
			return e
		}
		ece, rel := matched(small, jobs)
		add("infer.ece_matched", ece, "probability", "<= 0.005", jobs)
		add("infer.reliability_matched", rel, "probability²", "<= 0.0001", jobs)
		add("infer.ece_perturbed", perturbed(small, jobs, 3, 0), "probability", "<= 0.03", jobs)
		add("infer.ece_blind", perturbed(small, jobs, 0, 0.1), "probability", "reported", jobs)
		ece, _ = matched(large, jobs/20)
		add("infer.ece_matched_large", ece, "probability", "reported", jobs/20)
		add("infer.ece_perturbed_large", perturbed(large, jobs/20, 3, 0), "probability", "reported", jobs/20)
	})
}

// apart is how different two laws of outcomes must be (total variation) for a check to count as telling them apart: what is equal in
// practice is not isolated.
const apart = 0.2

// isolation is the rate-weighted share, in per cent, of single faults that all checks together narrow down to one repair, and to at
// most three.
func isolation(c *infer.Case) (one, three float64) {
	tells := func(a, b int) bool {
		for i := range c.Problem.Checks {
			x, y := c.Problem.Checks[i].Class[c.Worlds.Of(a)], c.Problem.Checks[i].Class[c.Worlds.Of(b)]
			if x == y {
				continue
			}
			d := 0.0
			for o := range c.Problem.Checks[i].Bins[0] {
				d += math.Abs(c.Problem.Checks[i].Bins[x][o]-c.Problem.Checks[i].Bins[y][o]) / 2
			}
			if d >= apart {
				return true
			}
		}
		return false
	}
	total := 0.0
	for a, m := range c.Modes {
		group := map[int]bool{m.Group: true}
		for b := range c.Modes {
			if b != a && !tells(a, b) {
				group[c.Modes[b].Group] = true
			}
		}
		total += m.Rate
		if len(group) == 1 {
			one += m.Rate
		}
		if len(group) <= 3 {
			three += m.Rate
		}
	}
	return 100 * one / total, 100 * three / total
}

// In a matched world the stated probabilities must come true; a small run of what the figures do at length.
func TestCalibration(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for i := range 3 {
		p := randomProblem(r)
		c := calibrate(newWorld(p, r, 0, 0, 0, 0), 4000, 6, uint64(i))
		if ece, _ := c.ece(); ece > 0.05 {
			t.Errorf("model %d: calibration error %.3f", i, ece)
		}
	}
}

// Vector K1: scores of ten forecasts, computed by hand and by program.
func TestScores(t *testing.T) {
	f := []float64{.9, .9, .8, .7, .6, .4, .3, .2, .1, .1}
	y := []float64{1, 1, 1, 0, 1, 1, 0, 0, 0, 0}
	brier, nats := 0.0, 0.0
	for i := range f {
		brier += (f[i] - y[i]) * (f[i] - y[i]) / 10
		nats -= (y[i]*math.Log(f[i]) + (1-y[i])*math.Log(1-f[i])) / 10
	}
	near(t, "Brier", brier, .122, 1e-12)
	near(t, "log loss, nats", nats, .3855493269, 1e-10)
	near(t, "log loss, bits", nats/math.Ln2, .5562301020, 1e-10)
	// Reliability as ece() works it out, with a bin for each of the forecasts that differ.
	var c calibration
	for i := range f {
		c.add(f[i], y[i] == 1)
	}
	_, rel := c.ece()
	near(t, "reliability", rel, .122, 1e-12)
	// In five bins of equal width: calibration error .20; and the other terms of Murphy's decomposition, resolution and uncertainty .25.
	five, mean := [5]calibration{}, 0.0
	for i := range f {
		five[int(f[i]*5)].add(f[i], y[i] == 1)
		mean += y[i] / 10
	}
	ece, resolution := 0.0, 0.0
	for k := range five {
		p, hit, n := 0.0, 0.0, 0.0
		for j := range five[k].n {
			p, hit, n = p+five[k].p[j], hit+float64(five[k].hit[j]), n+float64(five[k].n[j])
		}
		ece += math.Abs(p-hit) / 10
	}
	for k := range c.n {
		if n := float64(c.n[k]); n > 0 {
			d := float64(c.hit[k])/n - mean
			resolution += n / 10 * d * d
		}
	}
	near(t, "calibration error", ece, .20, 1e-12)
	near(t, "resolution", resolution, .25, 1e-12)
	near(t, "uncertainty", mean*(1-mean), .25, 1e-12)
}
