package infer

import (
	"cmp"
	"math"
	"slices"

	"readback/core/appliance"
)

// enterAt is the estimated posterior from which a triple is entered: judgement.
const enterAt = 1e-3

// Triples returns sets of three modes of different parts, likeliest first and at most most of them, that may matter in the light of b:
// those whose estimated posterior reaches enterAt. The estimate takes a triple to answer each check as that pair among its modes does
// which fits best; what it really shows only a simulation tells.
func (w *Worlds) Triples(modes []Mode, b *Belief, most int) [][]int {
	n := len(modes)
	told, lead := b.toldOf()
	fit := make([][]float64, n*n) // per pair: log-likelihood of each answer, nil where two modes exclude each other
	for i := range n {
		for j := i + 1; j < n; j++ {
			if at := w.Of(i, j); at >= 0 {
				fit[i*n+j] = b.logs(int32(at), lead, told)
			}
		}
	}
	base := math.Log(w.scale) + 2*math.Log(w.lambda) // of a prior
	rate := make([]float64, n)
	for i, m := range modes {
		rate[i] = math.Log(m.Rate)
	}
	type found struct {
		set   [3]int
		score float64
	}
	var all []found
	floor := math.Log(enterAt) + b.LogEvidence() - math.Log(b.p.Habits[lead].P)
	for i := range n {
		for j := i + 1; j < n; j++ {
			x := fit[i*n+j]
			if x == nil {
				continue
			}
			for k := j + 1; k < n; k++ {
				y, z := fit[i*n+k], fit[j*n+k]
				if y == nil || z == nil {
					continue
				}
				score := base + rate[i] + rate[j] + rate[k]
				for a := range x {
					score += max(x[a], y[a], z[a])
				}
				if score >= floor && w.Of(i, j, k) < 0 {
					all = append(all, found{[3]int{i, j, k}, score})
				}
			}
		}
	}
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(b.score, a.score) })
	var out [][]int
	for _, f := range all[:min(len(all), most)] {
		out = append(out, f.set[:])
	}
	return out
}

// toldOf is how many entries are answers with more than silence, and the likeliest habit.
func (b *Belief) toldOf() (told, habit int) {
	for i := range b.items {
		if b.items[i].told() {
			told++
		}
	}
	var share [maxHabits]float64
	b.Habits(share[:len(b.p.Habits)])
	for g, x := range share {
		if x > share[habit] {
			habit = g
		}
	}
	return told, habit
}

// logs is the log-likelihood of each answer in a world, for one habit.
func (b *Belief) logs(w int32, g, told int) []float64 {
	out := make([]float64, 0, told)
	for i := range b.items {
		it := &b.items[i]
		switch {
		case it.what == mended:
			w = b.left[it.check][w]
		case it.told():
			log := it.log[g]
			out = append(out, log[min(int(b.p.Checks[it.check].Class[w]), len(log)-1)])
		}
	}
	return out
}

// With returns the case with triples entered, as Worlds.Triples names them. Their prior comes out of the residual's. With none it
// returns the case itself. What was answered must be told to a new belief.
func (c *Case) With(triples [][]int) (*Case, error) {
	if len(triples) == 0 {
		return c, nil
	}
	old := c.Problem
	w := &Worlds{Sets: slices.Clone(c.Worlds.Sets), of: map[[3]int]int{}, scale: c.Worlds.scale, lambda: c.Worlds.lambda}
	for i, set := range w.Sets {
		if len(set) > 1 {
			w.of[key(set)] = i
		}
	}
	sets := make([]appliance.Hypothesis, len(triples))
	for i, set := range triples {
		sets[i] = set
		w.of[key(set)] = len(w.Sets)
		w.Sets = append(w.Sets, set)
	}
	g := &Case{Engine: c.Engine, base: c.base, Model: c.Model, Meter: c.Meter, Modes: c.Modes, Worlds: w, stages: c.stages, table: c.table, checks: slices.Clone(c.checks)}
	g.Problem = &Problem{Worlds: len(w.Sets), Groups: old.Groups, Hyps: slices.Clone(old.Hyps), Habits: old.Habits, After: w.After(c.Modes)}
	residual := slices.IndexFunc(g.Problem.Hyps, func(h Hyp) bool { return h.Sort == Residual })
	entered := 0.0
	for _, set := range triples {
		h := w.hyp(c.Modes, set)
		entered += h.Prior
		g.Problem.Hyps = append(g.Problem.Hyps, h)
	}
	// Triples of modes of one part are counted in the residual, so it never runs out.
	g.Problem.Hyps[residual].Prior = max(0, g.Problem.Hyps[residual].Prior-entered)
	total := 0.0
	for _, h := range g.Problem.Hyps {
		total += h.Prior
	}
	for i := range g.Problem.Hyps {
		g.Problem.Hyps[i].Prior /= total
	}
	table := c.Engine.Table(sets)
	for i := range old.Checks {
		g.Problem.Checks = append(g.Problem.Checks, g.extend(i, &old.Checks[i], table.Outcome[i], table.Class[i]))
	}
	return g, g.Problem.Prepare()
}

// extend adds worlds to a check: each outcome joins the class it cannot be told from, or makes a new one while there is room.
func (c *Case) extend(i int, old *Check, outs []appliance.Outcome, of []uint8) Check {
	k, sc := &c.Model.Checks[i], &c.checks[i]
	sc.classes = slices.Clone(sc.classes)
	chk := Check{ID: old.ID, Class: slices.Clone(old.Class), Bins: slices.Clone(old.Bins), Spoilt: slices.Clone(old.Spoilt)}
	class := make([]uint8, len(outs))
	for j, o := range outs {
		if sc.look {
			class[j] = sc.option(o, len(k.Options))
			continue
		}
		list := c.makes(k, []shade{{1, o, o.Predicted(k.Unit)}})
		at := slices.IndexFunc(sc.classes, func(have []shade) bool { return c.sameShades(k, have, list, false, sameShare) })
		if at < 0 && len(sc.classes) < maxClasses {
			at = len(sc.classes)
			sc.classes = append(sc.classes, list)
			if sc.own != nil {
				sc.own, sc.others = append(slices.Clone(sc.own), false), append(slices.Clone(sc.others), 0)
			}
			c.rows(k, sc, at, &chk)
		}
		if at < 0 {
			at = 0
			for q := range sc.classes {
				if distance(sc.classes[q], list) < distance(sc.classes[at], list) {
					at = q
				}
			}
		}
		class[j] = uint8(at)
	}
	for _, x := range of {
		chk.Class = append(chk.Class, class[x])
	}
	return chk
}

// distance is how far apart two classes are; another state is farther than any number.
func distance(a, b []shade) float64 {
	x, y := a[0].pred, b[0].pred
	if len(a) != len(b) || x.State != y.State || x.Floating != y.Floating {
		return math.Inf(1)
	}
	return math.Abs(x.Low-y.Low) + math.Abs(x.High-y.High)
}
