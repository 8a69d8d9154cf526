package plan_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/measure"
	"readback/core/plan"
	"readback/core/unit"
)

// misread is what somebody says instead of f: another option, the display of leads in the air, a decade or a unit off, or what the
// check shows under some other fault. It returns false when nothing of it would be another outcome.
func (b *bench) misread(r *rand.Rand, check int, f infer.Finding, table *appliance.Table) (infer.Finding, bool) {
	k := &b.model.Checks[check]
	right := b.c.Answer(check, f, nil).Bin
	for range 12 {
		g := f
		switch {
		case f.Reading == nil:
			g.Option = r.IntN(max(1, len(k.Options)))
		default:
			rd := *f.Reading
			switch r.IntN(3) {
			case 0:
				switch k.Function {
				case measure.Ohms:
					rd = measure.Reading{State: measure.Over}
				case measure.Continuity:
					rd = measure.Reading{State: measure.Silent}
				default:
					rd = measure.Reading{Value: unit.Value{Dec: unit.Decimal{}, Unit: k.Unit}}
				}
			case 1:
				if rd.State != measure.Number {
					continue
				}
				rd.Value.Dec.Exp += []int{-3, -1, 1, 3}[r.IntN(4)]
			default:
				g = b.finding(check, table.Outcome[check][r.IntN(len(table.Outcome[check]))])
				if g.Reading == nil {
					continue
				}
				rd = *g.Reading
			}
			g.Reading = &rd
		}
		if bin := b.c.Answer(check, g, nil).Bin; bin >= 0 && bin != right {
			return g, true
		}
	}
	return f, false
}

// draw picks a mode by its rate.
func (b *bench) draw(r *rand.Rand) int {
	sum := 0.0
	for _, m := range b.model.Modes {
		sum += m.Rate.Nominal
	}
	x := r.Float64() * sum
	for i, m := range b.model.Modes {
		if x -= m.Rate.Nominal; x < 0 {
			return i
		}
	}
	return len(b.model.Modes) - 1
}

// wrongParts plays n jobs with faults by their rates and a person who misreads the given share of answers: jobs that ended in a
// sure verdict, and those of them that named the wrong repair.
func (b *bench) wrongParts(t testing.TB, stream uint64, n int, blunders float64, limits plan.Limits) (verdicts, wrong int) {
	p, err := plan.New(b.task, plan.UsualWeights, limits)
	if err != nil {
		t.Fatal(err)
	}
	table := b.engine.Table(b.engine.Singles())
	j := newJob(b, p)
	for seed := range uint64(n) {
		r := rand.New(rand.NewPCG(seed, stream))
		mode := b.draw(r)
		j.run(t, []int{mode}, func(check int) infer.Finding {
			f := b.finding(check, table.Prediction(check, mode+1))
			if r.Float64() < blunders {
				f, _ = b.misread(r, check, f, table)
			}
			return f
		})
		if j.end.Kind == plan.Verdict && j.end.Sure {
			verdicts++
			if !j.right([]int{mode}) {
				wrong++
			}
		}
	}
	return verdicts, wrong
}

// doubts plays n jobs with one misreading at a random answer, and n without any: how often the misread answer was asked again
// within two further checks, how many there were; how many answers of the clean jobs were asked again, and of how many.
func (b *bench) doubts(t testing.TB, stream uint64, n int, limits plan.Limits) (caught, injected, vain, clean int) {
	p, err := plan.New(b.task, plan.UsualWeights, limits)
	if err != nil {
		t.Fatal(err)
	}
	table := b.engine.Table(b.engine.Singles())
	j := newJob(b, p)
	for seed := range uint64(n) {
		r := rand.New(rand.NewPCG(seed, stream))
		mode := b.draw(r)
		honest := func(check int) infer.Finding { return b.finding(check, table.Prediction(check, mode+1)) }
		j.run(t, []int{mode}, honest)
		for _, d := range j.asked {
			if d.Kind == plan.Reask {
				vain++
			} else {
				clean++
			}
		}
		at, count, bad := r.IntN(max(1, len(j.asked))), 0, -1
		when := math.MaxInt
		j.run(t, []int{mode}, func(check int) infer.Finding {
			f := honest(check)
			if count == at {
				if g, ok := b.misread(r, check, f, table); ok {
					f, bad, when = g, check, count
				}
			}
			count++
			return f
		})
		if bad < 0 {
			continue
		}
		injected++
		found := false
		for i, d := range j.asked {
			if d.Kind == plan.Reask && d.Doubt == bad && i <= when+3 {
				found = true
				break
			}
		}
		if found {
			caught++
		}
	}
	return caught, injected, vain, clean
}
