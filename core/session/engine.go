package session

import (
	"fmt"
	"reflect"
	"slices"

	"readback/core/infer"
	"readback/core/measure"
	"readback/core/plan"
	"readback/core/site"
)

// enough is how many bits about the repair a question of an early stage must promise to be asked there. Below it the
// question waits until the planner wants it. Judgement, fitted on the furnace file by the number of questions of a job.
const enough = 0.02

// Engine is the adviser with the belief and the planner behind it. It serves one machine at a time.
type Engine struct {
	c     *infer.Case
	rules *site.Rules
	bel   *infer.Belief
	plan  *plan.Planner
	// What the belief has been told, so that a longer query only adds to it.
	findings []Finding
	mended   []Mended
	cycled   []int
	last     []*infer.Finding // by check
	silent   []bool
}

// NewEngine makes an adviser for a case. The task holds what things cost.
func NewEngine(c *infer.Case, t *plan.Task, l plan.Limits) (*Engine, error) {
	rules, err := site.New(c.Model)
	if err != nil {
		return nil, err
	}
	p, err := plan.New(t, plan.UsualWeights, l)
	if err != nil {
		return nil, fmt.Errorf("session: planner: %w", err)
	}
	n := len(c.Model.Checks)
	return &Engine{c: c, rules: rules, bel: infer.New(c.Problem), plan: p, last: make([]*infer.Finding, n), silent: make([]bool, n)}, nil
}

// Advise tells what to do next.
func (e *Engine) Advise(q Query) Advice {
	e.tell(q)
	s := plan.Situation{Site: e.site(q.Site), Silent: e.silent, Reasked: make([]bool, len(e.silent)), Tried: make([]bool, len(e.c.Model.Repairs))}
	for _, c := range q.Doubted {
		s.Reasked[c] = true
	}
	for _, x := range q.Mended {
		s.Tried[x.Repair] = true
	}
	s.Allowed = func(check int) (float64, bool) {
		_, blocked := slices.BinarySearch(q.Blocked, check)
		ok := !blocked && slices.Contains(q.Stages, e.c.Model.Checks[check].Stage) && !(q.NoLive && e.rules.Consent(check))
		return 0, ok
	}
	d := e.plan.Next(e.bel, s)
	a := Advice{Check: -1, Repair: -1, P: d.P}
	for _, x := range d.Suspects {
		a.Suspects = append(a.Suspects, e.suspect(x))
		if len(a.Suspects) == 5 {
			break
		}
	}
	switch d.Kind {
	case plan.Ask, plan.Prove, plan.Reask:
		a.Check, a.Proof = d.Check, d.Kind == plan.Prove
		if d.Kind == plan.Reask {
			a.Again, a.Doubt = true, d.Doubt+1
		}
		a.Minutes = e.c.Model.Checks[d.Check].Minutes.Nominal
		a.Splits = e.splits(d)
		if len(q.Stages) == 1 && d.Kind == plan.Ask && e.bits(d) < enough {
			a.Check = -1
		}
	case plan.Verdict:
		a.Verdict, a.Repair = true, d.Group
		have, _ := e.plan.Proofs(e.bel, d.Group)
		for _, p := range have {
			a.Proofs = append(a.Proofs, p.Name)
		}
	case plan.Nothing:
		a.Verdict = true
	}
	for _, x := range d.Tried {
		if x.Check >= 0 && x.Check != a.Check {
			a.Changer = e.c.Model.Checks[x.Check].Name
			break
		}
	}
	return a
}

// bits is what the decided check promises.
func (e *Engine) bits(d plan.Decision) float64 {
	for _, x := range d.Tried {
		if x.Check == d.Check {
			return x.Bits
		}
	}
	return enough
}

// tell brings the belief to what the query has found. A query that goes on from the last one costs only what is new.
func (e *Engine) tell(q Query) {
	n := len(e.findings)
	known := n <= len(q.Findings) && len(e.mended) <= len(q.Mended) && len(e.cycled) <= len(q.Cycled) &&
		reflect.DeepEqual(e.findings, q.Findings[:n]) && slices.Equal(e.mended, q.Mended[:len(e.mended)]) && slices.Equal(e.cycled, q.Cycled[:len(e.cycled)])
	for _, x := range q.Mended[min(len(e.mended), len(q.Mended)):] {
		known = known && x.After >= n
	}
	for _, x := range q.Cycled[min(len(e.cycled), len(q.Cycled)):] {
		known = known && x >= n
	}
	if !known {
		e.bel.Clear()
		e.findings, e.mended, e.cycled = nil, nil, nil
		clear(e.last)
		clear(e.silent)
	}
	e.events(q, len(e.findings))
	for i := len(e.findings); i < len(q.Findings); i++ {
		f := q.Findings[i]
		g := infer.Finding{Option: f.Option, Reading: f.Reading, Unknown: f.Unknown, Unsure: f.Unsure, Typed: f.Typed}
		// An answer that no fault explains tells nothing: it is remembered as not known.
		if err := e.bel.Observe(e.c.Answer(f.Check, g, e.last[f.Check])); err != nil {
			g = infer.Finding{Option: -1, Unknown: true}
			if err := e.bel.Observe(e.c.Answer(f.Check, g, e.last[f.Check])); err != nil {
				panic("session: silence is impossible")
			}
		}
		e.last[f.Check] = &g
		e.silent[f.Check] = g.Unknown
		e.findings = append(e.findings, f)
		e.events(q, len(e.findings))
	}
}

// events tells of power cycles and repairs that came after so many findings.
func (e *Engine) events(q Query, after int) {
	for len(e.mended) < len(q.Mended) && q.Mended[len(e.mended)].After == after {
		x := q.Mended[len(e.mended)]
		e.bel.Mend(x.Repair)
		e.mended = append(e.mended, x)
	}
	for len(e.cycled) < len(q.Cycled) && q.Cycled[len(e.cycled)] == after {
		e.bel.Cycle()
		e.cycled = append(e.cycled, after)
	}
}

// site is the state of the work place in the planner's terms.
func (e *Engine) site(s site.State) plan.Site {
	p := plan.Any
	switch s.Power {
	case site.On:
		p = plan.On
	case site.Off, site.Proved:
		p = plan.Off
	}
	dial := measure.Look
	if n := len(e.findings); n > 0 {
		dial = e.c.Model.Checks[e.findings[n-1].Check].Function
	}
	return plan.SiteOf(e.c.Model, s.Covers.Has, p, dial)
}

// suspect names a repair decision.
func (e *Engine) suspect(x plan.Suspect) Suspect {
	switch n := e.c.Problem.Groups; {
	case x.Group == n:
		return Suspect{Part: "nothing", Name: "nothing wrong", P: x.P, Words: probWords(x.P)}
	case x.Group > n:
		return Suspect{Part: "unknown", Name: "something I do not know about", P: x.P, Words: probWords(x.P)}
	}
	r := &e.c.Model.Repairs[x.Group]
	s := Suspect{Part: r.ID, Name: r.Name, P: x.P, Words: probWords(x.P)}
	if r.Part >= 0 {
		s.Part, s.Name = e.c.Model.Parts[r.Part].ID, e.c.Model.Parts[r.Part].Name
	}
	return s
}

// splits finds two of the leading suspects for which the check most likely comes out differently.
func (e *Engine) splits(d plan.Decision) []string {
	usual := func(group int) int {
		hyp, most := -1, 0.0
		for i, p := range e.bel.Prob() {
			g := e.c.Problem.Hyps[i].Groups
			fits := slices.Contains(g, group) || len(g) == 0 && group == e.c.Problem.Groups
			if fits && p > most {
				hyp, most = i, p
			}
		}
		if hyp < 0 {
			return -1
		}
		w := e.c.Problem.Hyps[hyp].Phases[0].World
		best, top := -1, 0.0
		for o := range e.c.Problem.Checks[d.Check].Bins[0] {
			if x := e.c.Problem.Chance(d.Check, int(w), o); x > top {
				best, top = o, x
			}
		}
		return best
	}
	first := -1
	for i, x := range d.Suspects {
		if i == 6 {
			break
		}
		o := usual(x.Group)
		switch {
		case o < 0:
		case first < 0:
			first = o
		case o != first:
			return []string{e.suspect(d.Suspects[0]).Name, e.suspect(x).Name}
		}
	}
	return nil
}
