// Package plan chooses what to do next: the check or the repair with the least expected cost of the whole job, the moment to stop,
// the proofs a verdict still lacks, the answer to ask again, and the reasons in numbers.
//
// It knows beliefs and costs, nothing of appliances or voices. It is deterministic: its limits count nodes, never time.
package plan

import (
	"errors"
	"fmt"
	"math"

	"readback/core/infer"
)

// Power is the state of supply a check needs or a site has.
type Power uint8

const (
	Any Power = iota
	On
	Off
	Dead // off, and proved dead
)

// Site is the state of the work place as far as the cost of getting ready depends on it.
type Site struct {
	Open  uint64 // covers that are off, one bit each
	Power Power  // Any: not known
	Tool  uint8  // how the meter is set up, 0: not at all
}

// Cost is one thing's price in the user's own terms.
type Cost struct {
	Minutes float64
	Money   float64
	Hazard  int // grade of the hazard met, 0 for none
}

// Weights turn costs into one currency. They are the user's to change.
type Weights struct {
	Minute float64   // worth of one minute
	Hazard []float64 // price of meeting each grade of hazard once
}

// UsualWeights: half a unit of money a minute; live low voltage, mains and worse cost as much as some minutes of care
// (a judgement, no source). What can really hurt is forbidden by the caller and never priced.
var UsualWeights = Weights{Minute: 0.5, Hazard: []float64{0, 1, 5, 20}}

// Of is the cost in the one currency.
func (w Weights) Of(c Cost) float64 {
	x := c.Minutes*w.Minute + c.Money
	if c.Hazard > 0 && len(w.Hazard) > 0 {
		x += w.Hazard[min(c.Hazard, len(w.Hazard)-1)]
	}
	return x
}

// Check is what a check of the problem costs and needs.
type Check struct {
	Cost
	Open   uint64 // covers that must be off
	Power  Power
	Tool   uint8 // set-up of the meter it needs, 0 for none
	Repeat bool  // may sensibly be asked again
	Method int   // checks of one method fail together: an answer is best asked again by another
}

// Repair is one repair decision.
type Repair struct {
	Cost
	Free bool // harmless, cheap and reversible: may be tried without proof
}

// Task is a problem with its costs. Its slices are parallel to those of the problem.
type Task struct {
	Problem *infer.Problem
	Checks  []Check
	Repairs []Repair
	Nothing Cost    // explaining that nothing is wrong
	Unknown Cost    // a fault the model does not know: handing it over
	Call    Cost    // sending for help at any moment, which ends every fault; Money +Inf when there is nobody
	Covers  []Cost  // taking each cover off and putting it back
	Switch  Cost    // switching the power on or off once
	Proof   Cost    // proving it dead, once it is off
	Meter   Cost    // making the meter ready the first time
	Tool    Cost    // one change of the meter's set-up
	Proofs  []Proof // what each repair decision must stand on
}

// Validate returns what does not fit the problem.
func (t *Task) Validate() error {
	if t.Problem == nil {
		return errors.New("plan: task without a problem")
	}
	if len(t.Checks) != len(t.Problem.Checks) || len(t.Repairs) != t.Problem.Groups {
		return fmt.Errorf("plan: %d checks and %d repairs for a problem of %d and %d",
			len(t.Checks), len(t.Repairs), len(t.Problem.Checks), t.Problem.Groups)
	}
	for i, c := range t.Checks {
		if c.Minutes < 0 || c.Money < 0 || math.IsNaN(c.Minutes+c.Money) {
			return fmt.Errorf("plan: check %s: cost %v", t.Problem.Checks[i].ID, c.Cost)
		}
		if len(t.Covers) < 64 && c.Open>>len(t.Covers) != 0 {
			return fmt.Errorf("plan: check %s needs a cover that has no cost", t.Problem.Checks[i].ID)
		}
	}
	for _, p := range t.Proofs {
		if p.Group < 0 || p.Group >= t.Problem.Groups {
			return fmt.Errorf("plan: proof %q of repair %d", p.Term, p.Group)
		}
		for _, s := range p.Any {
			if s.Check < 0 || s.Check >= len(t.Checks) {
				return fmt.Errorf("plan: proof %q names check %d", p.Term, s.Check)
			}
		}
	}
	return nil
}

// Ready is the set-up of a meter that was made ready and is set to nothing that a check asks for.
const Ready = 255

// prices are the costs of a task in the one currency.
type prices struct {
	check, repair []float64 // repair: groups, then Nothing, then Unknown
	perCost       []float64 // 1 / repair
	cover         []float64
	change, tool  float64
	proof, meter  float64
	call          float64
}

func (t *Task) price(w Weights) prices {
	p := prices{change: w.Of(t.Switch), proof: w.Of(t.Proof), meter: w.Of(t.Meter), tool: w.Of(t.Tool), call: w.Of(t.Call)}
	for _, c := range t.Checks {
		p.check = append(p.check, w.Of(c.Cost))
	}
	for _, r := range t.Repairs {
		p.repair = append(p.repair, w.Of(r.Cost))
	}
	p.repair = append(p.repair, w.Of(t.Nothing), w.Of(t.Unknown))
	for _, x := range p.repair {
		p.perCost = append(p.perCost, 1/max(x, 1e-9))
	}
	for _, c := range t.Covers {
		p.cover = append(p.cover, w.Of(c))
	}
	return p
}

// reach is the cost of getting from a site to where a check can be made, and the site after it.
func (p *prices) reach(s Site, c *Check) (float64, Site) {
	cost := 0.0
	if need := c.Open &^ s.Open; need != 0 {
		for i, x := range p.cover {
			if need>>i&1 != 0 {
				cost += x
			}
		}
		s.Open |= c.Open
	}
	if c.Power != Any && c.Power != s.Power && !(c.Power == Off && s.Power == Dead) {
		if c.Power != Dead || s.Power != Off {
			cost += p.change
		}
		if c.Power == Dead || s.Power == Dead { // what was proved is lost, and proved again for whatever hands do next
			cost += p.proof
		}
		s.Power = c.Power
	}
	if (c.Tool != 0 || c.Power == Dead) && s.Tool == 0 {
		cost += p.meter
		s.Tool = Ready
	}
	if c.Tool != 0 && c.Tool != s.Tool {
		cost += p.tool
		s.Tool = c.Tool
	}
	return cost, s
}

// After is the site when a check has been made.
func (t *Task) After(s Site, check int) Site {
	var free prices
	_, s = free.reach(s, &t.Checks[check])
	return s
}
