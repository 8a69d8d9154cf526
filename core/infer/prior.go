package infer

import (
	"errors"
	"math"
	"slices"
)

// Base says how the probability is shared before the first answer, given that there is a complaint.
type Base struct {
	Nothing float64 // nothing is wrong
	Unknown float64 // a fault the model does not know
	Second  float64 // share of the modelled faults that come with another one
}

// UsualBase are starting values without a source, to be fitted from journals.
var UsualBase = Base{Nothing: 0.02, Unknown: 0.03, Second: 0.05}

// Mode is one way to fail, as far as the prior needs it.
type Mode struct {
	Rate   float64 // relative frequency among the causes of the complaint
	Part   int     // two modes of one part exclude each other
	Group  int     // repair decision, -1 when nothing is to be repaired
	Active float64 // chance of being active in one power cycle; 1 (or 0) for a steady fault
}

// Worlds numbers the sets of active modes that the hypotheses need: world 0 is the healthy one, then the singles in the order of
// the modes, then the pairs, then two broad ones for Unknown and Residual. Triples that were entered later follow.
type Worlds struct {
	Sets   [][]int // per world: active modes, ascending; nil for the healthy world and for the broad ones
	of     map[[3]int]int
	scale  float64 // prior of a single mode of rate 1
	lambda float64 // what each further mode of rate 1 makes of a prior
}

func key(modes []int) [3]int {
	k := [3]int{-1, -1, -1}
	copy(k[:], modes)
	return k
}

// prior of a set of modes.
func (w *Worlds) prior(modes []Mode, set []int) float64 {
	p := w.scale * modes[set[0]].Rate
	for _, m := range set[1:] {
		p *= w.lambda * modes[m].Rate
	}
	return p
}

// Of returns the world in which exactly these modes (at most three, ascending) are active, or -1.
func (w *Worlds) Of(modes ...int) int {
	switch len(modes) {
	case 0:
		return 0
	case 1:
		return 1 + modes[0]
	}
	if i, ok := w.of[key(modes)]; ok {
		return i
	}
	return -1
}

// After returns the rule of Problem.After: the world in which the modes of a repair group are gone.
func (w *Worlds) After(modes []Mode) func(world int32, group int) int32 {
	return func(world int32, group int) int32 {
		set := w.Sets[world]
		left := make([]int, 0, len(set))
		for _, m := range set {
			if modes[m].Group != group {
				left = append(left, m)
			}
		}
		if len(left) == len(set) {
			return world
		}
		return int32(w.Of(left...))
	}
}

// Enumerate lists nothing, every single mode, every pair of modes of different parts, the residual and the unknown fault, with
// their priors. Given a complaint, one mode weighs its rate λr and two weigh λ²rr', with λ such that pairs hold the share
// Second; what triples and more would weigh is the residual's. ok reports whether a pair is possible; nil allows all.
func Enumerate(modes []Mode, base Base, ok func(i, j int) bool) ([]Hyp, *Worlds, error) {
	ones, squares, cubes := 0.0, 0.0, 0.0
	for _, m := range modes {
		if !(m.Rate > 0) || math.IsInf(m.Rate, 1) {
			return nil, nil, errors.New("infer: a mode has no rate")
		}
		ones += m.Rate
		squares += m.Rate * m.Rate
		cubes += m.Rate * m.Rate * m.Rate
	}
	if len(modes) == 0 || !(base.Second >= 0 && base.Second < 1) || !(base.Nothing+base.Unknown < 1) {
		return nil, nil, errors.New("infer: no modes, or shares that leave nothing for them")
	}
	w := &Worlds{Sets: make([][]int, 1, 1+len(modes)), of: map[[3]int]int{}}
	var hyps []Hyp
	hyps = append(hyps, Hyp{Prior: base.Nothing, Sort: Nothing, Phases: []Phase{{0, 1}}})
	for i := range modes {
		w.Sets = append(w.Sets, []int{i})
	}
	pairs := 0.0
	if base.Second > 0 {
		for i := range modes {
			for j := i + 1; j < len(modes); j++ {
				if modes[i].Part != modes[j].Part && (ok == nil || ok(i, j)) {
					set := []int{i, j}
					w.of[key(set)] = len(w.Sets)
					w.Sets = append(w.Sets, set)
					pairs += modes[i].Rate * modes[j].Rate
				}
			}
		}
	}
	lambda := 0.0
	if pairs > 0 {
		lambda = base.Second / (1 - base.Second) * ones / pairs
	}
	triples := max(0, (ones*ones*ones-3*ones*squares+2*cubes)/6)
	rest := lambda * lambda * triples
	scale := (1 - base.Nothing - base.Unknown) / (ones + lambda*pairs + rest)
	w.scale, w.lambda = scale, lambda
	for _, set := range w.Sets[1:] {
		hyps = append(hyps, w.hyp(modes, set))
	}
	broad := len(w.Sets)
	w.Sets = append(w.Sets, nil, nil)
	hyps = append(hyps,
		Hyp{Prior: base.Unknown, Sort: Unknown, Phases: []Phase{{broad, 1}}},
		Hyp{Prior: scale * rest, Sort: Residual, Phases: []Phase{{broad + 1, 1}}})
	return hyps, w, nil
}

// hyp is the hypothesis that these modes are what is wrong.
func (w *Worlds) hyp(modes []Mode, set []int) Hyp {
	return Hyp{Prior: w.prior(modes, set), Modes: set, Groups: groups(modes, set), Phases: phases(modes, set, w)}
}

// groups are the repairs that a set of modes needs, ascending.
func groups(modes []Mode, set []int) []int {
	var out []int
	for _, m := range set {
		if g := modes[m].Group; g >= 0 && !slices.Contains(out, g) {
			out = append(out, g)
		}
	}
	slices.Sort(out)
	return out
}

func phases(modes []Mode, set []int, w *Worlds) []Phase {
	out := []Phase{{0, 1}}
	sets := [][]int{nil}
	for _, m := range set {
		a := modes[m].Active
		if a <= 0 || a >= 1 {
			a = 1
		}
		for i, n := 0, len(out); i < n; i++ {
			if a < 1 {
				out = append(out, Phase{P: out[i].P * (1 - a)})
				sets = append(sets, sets[i])
			}
			out[i].P *= a
			sets[i] = append(append([]int(nil), sets[i]...), m)
		}
	}
	for i := range out {
		out[i].World = w.Of(sets[i]...)
	}
	return out
}
