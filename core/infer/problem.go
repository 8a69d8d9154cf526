// Package infer holds the belief about what is wrong: exact probabilities over every hypothesis, updated by one answer in
// time proportional to their number, and undone exactly.
//
// It works on an abstract Problem, so that a published network, a random small model and an appliance are the same to it.
// A hypothesis is what may be wrong for the whole job; a world is what is active at one moment. A steady fault has one world;
// an intermittent one draws a world anew in each power cycle, and the answers of one cycle share the draw.
package infer

import (
	"fmt"
	"math"
)

// Sort tells what kind of explanation a hypothesis is.
type Sort uint8

const (
	Known    Sort = iota // an assignment of modes
	Nothing              // nothing is wrong: the expectation is
	Unknown              // a fault the model does not know; answers anything that some hypothesis would answer
	Residual             // all combinations that are not enumerated, together
)

// Phase is one world a hypothesis can be in during a power cycle.
type Phase struct {
	World int
	P     float64 // chance of it in each cycle; the phases of a hypothesis sum to 1
}

// Hyp is one hypothesis.
type Hyp struct {
	Prior  float64 // probability before the first answer; all of them sum to 1
	Sort   Sort
	Modes  []int   // what is wrong, in the owner's numbering; for words only
	Groups []int   // repair decisions needed to end it, ascending; none for Nothing
	Phases []Phase // at least one
}

// Check is one question or measurement. Predictions that no answer tells apart share a class.
type Check struct {
	ID     string
	Class  []uint8     // per world: the class it predicts; Broad for a world without predictions
	Bins   [][]float64 // per class: the chance of each of a few outcomes, for planning; rows sum to 1
	Spoilt [][]float64 // per class: how much of each of those chances is blunders of a usual person; nil: none
}

// Habit is one kind of person: how careful they are holds for all of their answers.
type Habit struct {
	P    float64 // share of such persons; all of them sum to 1
	Odds float64 // how many times the usual odds of a blunder theirs are
}

// maxHabits is how many kinds of persons a problem can have.
const maxHabits = 3

// UsualHabits are careful, middling and careless persons (an assumption without a source, to be fitted from journals): the careless
// one spoils about every fourth answer.
var UsualHabits = []Habit{{P: 0.45, Odds: 1}, {P: 0.35, Odds: 3}, {P: 0.2, Odds: 8}}

// Broad is the class of a world that predicts nothing of its own: any class in the proportion in which the others have it.
const Broad = 255

// maxClasses is how many classes a check can have.
const maxClasses = 254

// Problem is what can be wrong, what can be asked, and what each hypothesis predicts. It is immutable once checked.
type Problem struct {
	Worlds int
	Groups int // repair decisions 0..Groups-1
	Hyps   []Hyp
	Checks []Check
	Habits []Habit                            // kinds of persons; none: everybody is usual
	After  func(world int32, group int) int32 // the world that a repair leaves; nil: no repair is ever told

	broad [][]float64     // per check: weight of each class in a broad prediction
	rate  [][]float64     // per check and class: chance that a usual person spoils the answer; nil for a check without blunders
	bins  [][][][]float64 // per habit, check and class, Broad last: the chance of each outcome
}

// broadEven is the share of a broad prediction that treats all classes alike, so that none is impossible.
const broadEven = 0.3

// maxPhases is three intermittent modes at once.
const maxPhases = 8

// Prepare validates the problem and works out the broad predictions. It returns what is wrong with the first bad item.
func (p *Problem) Prepare() error {
	total := 0.0
	for i, h := range p.Hyps {
		sum := 0.0
		for _, ph := range h.Phases {
			if ph.World < 0 || ph.World >= p.Worlds {
				return fmt.Errorf("infer: hypothesis %d: world %d of %d", i, ph.World, p.Worlds)
			}
			sum += ph.P
		}
		if math.Abs(sum-1) > 1e-9 {
			return fmt.Errorf("infer: hypothesis %d: phases sum to %g", i, sum)
		}
		if len(h.Phases) > maxPhases {
			return fmt.Errorf("infer: hypothesis %d: %d phases", i, len(h.Phases))
		}
		if !(h.Prior >= 0) {
			return fmt.Errorf("infer: hypothesis %d: prior %g", i, h.Prior)
		}
		for _, g := range h.Groups {
			if g < 0 || g >= p.Groups {
				return fmt.Errorf("infer: hypothesis %d: repair group %d of %d", i, g, p.Groups)
			}
		}
		total += h.Prior
	}
	if math.Abs(total-1) > 1e-9 {
		return fmt.Errorf("infer: priors sum to %g", total)
	}
	weight := make([]float64, p.Worlds)
	for _, h := range p.Hyps {
		for _, ph := range h.Phases {
			weight[ph.World] += h.Prior * ph.P
		}
	}
	p.broad, p.rate = make([][]float64, len(p.Checks)), make([][]float64, len(p.Checks))
	for i := range p.Checks {
		b, err := p.Checks[i].mix(weight)
		if err != nil {
			return err
		}
		p.broad[i] = b
	}
	if len(p.Habits) == 0 {
		p.Habits = []Habit{{P: 1, Odds: 1}}
	}
	if len(p.Habits) > maxHabits {
		return fmt.Errorf("infer: %d habits, at most %d", len(p.Habits), maxHabits)
	}
	total = 0
	p.bins = make([][][][]float64, len(p.Habits))
	for g, h := range p.Habits {
		if !(h.P > 0 && h.Odds >= 0) {
			return fmt.Errorf("infer: habit %d: share %g, odds %g", g, h.P, h.Odds)
		}
		total += h.P
		for i := range p.Checks {
			p.bins[g] = append(p.bins[g], p.spoil(i, h.Odds))
		}
	}
	if math.Abs(total-1) > 1e-9 {
		return fmt.Errorf("infer: habits sum to %g", total)
	}
	return nil
}

// spoil returns the outcome chances of a check, Broad last, for a person whose odds of a blunder are so many times the usual ones.
func (p *Problem) spoil(check int, odds float64) [][]float64 {
	c := &p.Checks[check]
	rows := c.Bins
	if c.Spoilt != nil {
		p.rate[check] = make([]float64, len(c.Bins))
		rows = make([][]float64, len(c.Bins), len(c.Bins)+1)
		for k, row := range c.Bins {
			r := 0.0
			for _, x := range c.Spoilt[k] {
				r += x
			}
			p.rate[check][k] = r
			rows[k] = make([]float64, len(row))
			for o, x := range row {
				rows[k][o] = (x + (odds-1)*c.Spoilt[k][o]) / norm(r, odds)
			}
		}
	}
	broad := make([]float64, len(c.Bins[0]))
	for k, m := range p.broad[check] {
		for o, x := range rows[k] {
			broad[o] += m * x
		}
	}
	return append(rows[:len(rows):len(rows)], broad)
}

// norm makes chances sum to 1 again when the odds of the part r of them are multiplied.
func norm(r, odds float64) float64 { return 1 + (odds-1)*r }

func (c *Check) mix(weight []float64) ([]float64, error) {
	n := len(c.Bins)
	if n == 0 || n > maxClasses || len(c.Class) != len(weight) {
		return nil, fmt.Errorf("infer: check %s: %d classes, %d predictions for %d worlds", c.ID, n, len(c.Class), len(weight))
	}
	for k, row := range c.Bins {
		sum := 0.0
		for _, x := range row {
			if !(x >= 0) {
				return nil, fmt.Errorf("infer: check %s: class %d: outcome chance %g", c.ID, k, x)
			}
			sum += x
		}
		if math.Abs(sum-1) > 1e-6 || len(row) != len(c.Bins[0]) {
			return nil, fmt.Errorf("infer: check %s: class %d: %d outcomes sum to %g", c.ID, k, len(row), sum)
		}
		if c.Spoilt == nil {
			continue
		}
		if len(c.Spoilt) != n || len(c.Spoilt[k]) != len(row) {
			return nil, fmt.Errorf("infer: check %s: class %d: blunders do not fit the outcomes", c.ID, k)
		}
		for o, x := range c.Spoilt[k] {
			if !(x >= 0 && x <= row[o]+1e-12) {
				return nil, fmt.Errorf("infer: check %s: class %d: blunders are %g of a chance of %g", c.ID, k, x, row[o])
			}
		}
	}
	mass := make([]float64, n)
	total := 0.0
	for w, k := range c.Class {
		if k == Broad {
			continue
		}
		if int(k) >= n {
			return nil, fmt.Errorf("infer: check %s: class %d of %d", c.ID, k, n)
		}
		mass[k] += weight[w]
		total += weight[w]
	}
	for k := range mass {
		even := 1 / float64(n)
		if total > 0 {
			mass[k] = (1-broadEven)*mass[k]/total + broadEven*even
		} else {
			mass[k] = even
		}
	}
	return mass, nil
}

// Chance returns the probability of planning outcome o of check c in world w for a usual person.
func (p *Problem) Chance(c, w, o int) float64 {
	k := p.Checks[c].Class[w]
	if k != Broad {
		return p.Checks[c].Bins[k][o]
	}
	sum := 0.0
	for k, m := range p.broad[c] {
		sum += m * p.Checks[c].Bins[k][o]
	}
	return sum
}
