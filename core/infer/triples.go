package infer

import (
	"cmp"
	"container/heap"
	"math"
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
)

// enterAt is the posterior a triple must be able to reach to be entered.
const enterAt = 1e-3

// Ceiling bounds the log-likelihood of the answers so far: that of a hypothesis that predicted each of them best, whoever the person.
func (b *Belief) Ceiling() float64 {
	most := math.Inf(-1)
	for g := range b.p.Habits {
		sum := 0.0
		for i := range b.items {
			if it := &b.items[i]; it.told() {
				sum += slices.Max(it.log[g][:len(it.log[g])-1])
			}
		}
		most = max(most, sum)
	}
	return most
}

// Triples returns sets of three modes of different parts by falling prior, as long as their bound says that they may matter: prior
// times the likelihood of answers that they predict as well as anything can, over the evidence; at most most of them.
func (w *Worlds) Triples(modes []Mode, b *Belief, most int) [][]int {
	order := make([]int, len(modes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(modes[b].Rate, modes[a].Rate) })
	room := b.Ceiling() - b.LogEvidence()
	h := &ranked{}
	push := func(i, j, k int) {
		if k < len(order) {
			t := [3]int{i, j, k}
			heap.Push(h, rankedTriple{t, w.prior(modes, []int{order[i], order[j], order[k]})})
		}
	}
	push(0, 1, 2)
	var out [][]int
	for h.Len() > 0 && len(out) < most {
		x := heap.Pop(h).(rankedTriple)
		if math.Log(x.prior)+room < math.Log(enterAt) {
			break
		}
		// Every triple has one parent, which is at least as likely.
		i, j, k := x.at[0], x.at[1], x.at[2]
		push(i, j, k+1)
		if k == j+1 {
			push(i, j+1, k+1)
			if j == i+1 {
				push(i+1, j+1, k+1)
			}
		}
		set := []int{order[i], order[j], order[k]}
		slices.Sort(set)
		p, q, r := modes[set[0]].Part, modes[set[1]].Part, modes[set[2]].Part
		if p != q && q != r && p != r && w.Of(set...) < 0 {
			out = append(out, set)
		}
	}
	return out
}

type rankedTriple struct {
	at    [3]int
	prior float64
}

type ranked []rankedTriple

func (h ranked) Len() int { return len(h) }
func (h ranked) Less(i, j int) bool {
	if h[i].prior != h[j].prior {
		return h[i].prior > h[j].prior
	}
	return slices.Compare(h[i].at[:], h[j].at[:]) < 0
}
func (h ranked) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *ranked) Push(x any)   { *h = append(*h, x.(rankedTriple)) }
func (h *ranked) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}

// Grow returns the case with the triples entered that may matter in the light of b, at most most of them, and how many they are.
// Their prior comes out of the residual's. With none it returns the case itself. What was answered must be told to a new belief.
func (c *Case) Grow(e *appliance.Engine, b *Belief, most int) (*Case, int, error) {
	triples := c.Worlds.Triples(c.Modes, b, most)
	if len(triples) == 0 {
		return c, 0, nil
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
	g := &Case{Model: c.Model, Meter: c.Meter, Modes: c.Modes, Worlds: w, checks: slices.Clone(c.checks)}
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
	table := e.Table(sets)
	for i := range old.Checks {
		g.Problem.Checks = append(g.Problem.Checks, g.extend(i, &old.Checks[i], table.Outcome[i], table.Class[i]))
	}
	return g, len(triples), g.Problem.Prepare()
}

// extend adds worlds to a check: each outcome joins the class it cannot be told from, or makes a new one while there is room.
func (c *Case) extend(i int, old *Check, outs []appliance.Outcome, of []uint8) Check {
	k, sc := &c.Model.Checks[i], &c.checks[i]
	sc.classes, sc.preds = slices.Clone(sc.classes), slices.Clone(sc.preds)
	chk := Check{ID: old.ID, Class: slices.Clone(old.Class), Bins: slices.Clone(old.Bins), Spoilt: slices.Clone(old.Spoilt)}
	class := make([]uint8, len(outs))
	for j, o := range outs {
		if sc.look {
			n := len(k.Options)
			if class[j] = uint8(n); o.Option >= 0 && o.Option < n {
				class[j] = uint8(o.Option)
			}
			continue
		}
		p := o.Predicted(k.Unit)
		at := slices.IndexFunc(sc.preds, func(q measure.Predicted) bool { return c.alike(k.Function, q, p, sameShare) })
		if at < 0 && len(sc.preds) < MaxClasses {
			at = len(sc.preds)
			sc.classes, sc.preds = append(sc.classes, o), append(sc.preds, p)
			c.rows(k, sc, at, &chk)
		}
		if at < 0 {
			at = 0
			for q := range sc.preds {
				if distance(sc.preds[q], p) < distance(sc.preds[at], p) {
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

// distance is how far apart two predictions are; another state is farther than any number.
func distance(a, b measure.Predicted) float64 {
	if a.State != b.State || a.Floating != b.Floating {
		return math.Inf(1)
	}
	return math.Abs(a.Low-b.Low) + math.Abs(a.High-b.High)
}
