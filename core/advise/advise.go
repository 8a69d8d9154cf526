// Package advise lets the belief and the plan of an appliance advise a session. It holds no rule of its own about what
// to check or when to stop; it translates findings into answers, and decisions into words that the session's language
// data holds.
package advise

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/job"
	"readback/core/measure"
	"readback/core/plan"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/words"
	"readback/core/worksite"
)

// Planned is an adviser over one appliance. It is a pure function of the query, but not safe for concurrent use: it
// keeps its storage between decisions.
type Planned struct {
	base  *infer.Case // as it was given
	house plan.House
	words *job.Words
	rules *worksite.Rules
	bit   []int // cover bit of each place, -1 for a place without a cover

	rated  bench  // with the plate and the meter of the query before
	rating string // which those were
	grown  bench  // with triples entered
	sets   string // which those were
	asked  []int  // scratch
	bench         // the one of this query
}

// bench is a case with all that is needed to work on it.
type bench struct {
	c       *infer.Case
	task    *plan.Task
	planner *plan.Planner
	belief  *infer.Belief
}

func (a *Planned) ready(c *infer.Case) (bench, error) {
	t, err := plan.ForAppliance(c, a.house)
	if err != nil {
		return bench{}, err
	}
	p, err := plan.New(t, plan.UsualWeights, Limits)
	return bench{c: c, task: t, planner: p, belief: infer.New(c.Problem)}, err
}

// Limits are those of every decision in a job, wherever it is led.
var Limits = plan.Quick

// For makes an adviser for an appliance. house may leave the call-out price unknown.
func For(e *appliance.Engine, meter *measure.Meter, words *job.Words, house plan.House) (*Planned, error) {
	if meter == nil {
		meter = measure.Modest()
	}
	c, err := infer.ForAppliance(e, meter, infer.UsualBase)
	if err != nil {
		return nil, fmt.Errorf("advise: %w", err)
	}
	return ForCase(c, words, house)
}

// ForCase is For with the case compiled before; a case may be shared between jobs.
func ForCase(c *infer.Case, words *job.Words, house plan.House) (*Planned, error) {
	rules, err := worksite.New(c.Model)
	if err != nil {
		return nil, fmt.Errorf("advise: %w", err)
	}
	a := &Planned{base: c, house: house, words: words, rules: rules}
	if a.rated, err = a.ready(c); err != nil {
		return nil, fmt.Errorf("advise: %w", err)
	}
	a.bench = a.rated
	n := 0
	for _, pl := range c.Model.Places {
		if pl.Cover {
			a.bit = append(a.bit, n)
			n++
		} else {
			a.bit = append(a.bit, -1)
		}
	}
	return a, nil
}

// rate makes the case that of the plate and the meter of a query. What cannot be worked so (a plate value that is
// none) is worked as the file has it.
func (a *Planned) rate(q *job.Query) {
	a.bench = a.rated
	key, err := json.Marshal(struct {
		Plate map[string]unit.Value
		Meter *measure.Meter
	}{q.Plate, q.Meter})
	if err != nil || string(key) == a.rating {
		return
	}
	a.rating = string(key)
	c, err := a.base.Rated(q.Plate, q.Meter)
	if err != nil {
		c = a.base
	}
	if c == a.rated.c {
		return
	}
	b, err := a.ready(c)
	if err != nil {
		return
	}
	a.rated, a.bench = b, b
}

// When after so many answers so many of them are thought spoiled, all told, three faults at once are looked at: they
// would explain as facts what one or two faults explain as blunders. So many sets of them are entered at most.
// Judgement, no source.
const (
	growAt    = 0.7
	growAfter = 5
	mostGrown = 200
)

// grow enters triples where singles and pairs explain the answers badly. It reports whether the findings must be told
// anew.
func (a *Planned) grow(findings int) bool {
	if findings < growAfter {
		return false
	}
	spoilt := 0.0
	a.asked = a.belief.Answered(a.asked)
	for _, c := range a.asked {
		spoilt += a.belief.Wrong(c)
	}
	if spoilt < growAt {
		return false
	}
	triples := a.c.Worlds.Triples(a.c.Modes, a.belief, mostGrown)
	if len(triples) == 0 {
		return false
	}
	if key := fmt.Sprint(a.rating, triples); key != a.sets {
		c, err := a.c.With(triples)
		if err != nil {
			return false
		}
		b, err := a.ready(c)
		if err != nil {
			return false
		}
		a.grown, a.sets = b, key
	}
	a.bench = a.grown
	return true
}

// Advise tells what to check next, or that the case is closed, and why.
func (a *Planned) Advise(q job.Query) job.Advice {
	a.rate(&q)
	m := a.c.Model
	n := len(m.Checks)
	s, times := a.replay(&q)
	if a.grow(len(q.Findings)) {
		s, times = a.replay(&q)
	}
	early := !slices.Contains(q.Stages, "plan") // only looks
	blocked := make([]bool, n)
	for _, b := range q.Blocked {
		blocked[b] = true
	}
	s.Allowed = func(check int) (float64, bool) {
		k := &m.Checks[check]
		if blocked[check] || times[check] >= maxTimes || times[check] > 0 && !k.Repeat {
			return 0, false
		}
		if q.NoLive && a.rules.Consent(check) {
			return 0, false
		}
		return 0, slices.Contains(q.Stages, k.Stage) && !(k.Stage == "watch" && early && a.follows(check))
	}
	d := a.planner.Next(a.belief, s)
	a.tryFirst(&d)
	a.notByElimination(&d)
	a.mendSeen(&d)
	a.callSoon(&d)
	a.watchFirst(&d, &q, s, times)
	a.watchAnew(&d, &q, s)
	if early {
		a.mendFirst(&d, s)
	}
	out := job.Advice{Check: d.Check, Repair: -1, P: d.P}
	for _, x := range d.Suspects[:min(len(d.Suspects), 5)] {
		if x.P >= leastShown {
			out.Suspects = append(out.Suspects, a.suspect(x))
		}
	}
	switch d.Kind {
	case plan.Prove:
		out.Proof, out.Firm = true, d.Again
	case plan.Reask:
		out.Again, out.Doubt = true, d.Doubt+1
	case plan.Verdict:
		out.Verdict, out.Repair = true, d.Group
		out.Proofs = a.proved(d.Group)
	case plan.Nothing:
		out.Verdict = true
	}
	if d.Kind == plan.Ask {
		out.Minutes = m.Checks[d.Check].Minutes.Nominal
		if early && bits(&d) < enough {
			out.Check = -1
		}
	}
	if lead := d.Suspects[0].Group; out.Repair < 0 && lead < len(m.Repairs) {
		out.Repair = lead
	}
	if d.Kind == plan.Nothing {
		out.Repair = -1
	}
	if early {
		for i := range m.Checks {
			if m.Checks[i].Event != "" && a.foreseen(i) {
				out.Foreseen = append(out.Foreseen, i)
			}
		}
	}
	a.explain(&out, &d)
	return out
}

// follows tells whether the answer to a look is all but known from what was seen before, and is not that of a good
// appliance: who has said that there is no flame is not asked for its colour. What a good appliance shows is still
// looked at: a stop line may hang on it.
func (a *Planned) follows(check int) bool {
	for o := 1; o < len(a.c.Model.Checks[check].Options); o++ {
		if a.belief.Chance(check, o) > known {
			return true
		}
	}
	return false
}

// foreseen tells whether the answer about an event of a start is all but known, and nothing that stops the work hangs on it.
func (a *Planned) foreseen(check int) bool {
	c := &a.c.Model.Checks[check]
	if slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return o.Stop >= 0 || o.Emergency != "" }) {
		return a.follows(check)
	}
	return a.follows(check) || a.belief.Chance(check, 0) > surely
}

// surely is the chance from which an event is not asked about that comes as it should: who sees what comes after it has seen it too.
// Judgement.
const surely = 0.94

// known is the chance from which an answer counts as known. A look is answered wrongly about once in twenty times; the
// rest is judgement.
const known = 0.88

// tryFirst puts a free repair that is likely before any check that needs more than a look: setting a thermostat right
// costs less than taking a cover off, and shows at once whether it was that.
func (a *Planned) tryFirst(d *plan.Decision) {
	lead := d.Suspects[0]
	if d.Check < 0 || lead.Group >= len(a.c.Model.Repairs) || lead.P < likelyFree || !a.task.Repairs[lead.Group].Free {
		return
	}
	c := &a.task.Checks[d.Check]
	if c.Tool == 0 && c.Open == 0 {
		return
	}
	d.Kind, d.Check, d.Group, d.P = plan.Verdict, -1, lead.Group, lead.P
}

// notByElimination keeps a part from being named because nothing else is left to ask: what costs a new part or
// somebody's visit needs more than a coin's toss for it and something that shows the fault itself, other work a little
// less. Below that the search ends without a name: a fault that comes and goes would else take the blame for every
// answer that does not fit.
func (a *Planned) notByElimination(d *plan.Decision) {
	if d.Kind != plan.Verdict || d.Group < 0 || a.task.Repairs[d.Group].Free {
		return
	}
	least, unseen := leastWork, false
	if a.costs(d.Group) {
		least, unseen = leastPart, itself(d.Missing)
	}
	if d.P < least || unseen {
		d.Kind, d.Check, d.Group = plan.Help, -1, -1
	}
}

// callSoon ends the search where what is all but certain, and was seen by itself, is for somebody with a licence: what a homeowner could
// still measure changes nothing of that.
func (a *Planned) callSoon(d *plan.Decision) {
	lead := d.Suspects[0]
	if d.Check < 0 || lead.Group >= len(a.c.Model.Repairs) || lead.P < surelyCall || a.c.Model.Repairs[lead.Group].Stop < 0 {
		return
	}
	if have, _ := a.planner.Proofs(a.belief, lead.Group); itself(have) {
		d.Kind, d.Check, d.Group, d.P = plan.Verdict, -1, lead.Group, lead.P
	}
}

// surelyCall is the probability from which that is done: judgement.
const surelyCall = 0.9

// mendFirst looks first for what can be seen and put right at once, where that is likely: a label that says limit is followed to the
// filter, before a start is watched.
func (a *Planned) mendFirst(d *plan.Decision, s plan.Situation) {
	if d.Kind != plan.Ask {
		return
	}
	most := leastHandy
	for i := range a.c.Model.Checks {
		if _, ok := s.Allowed(i); !ok || a.belief.Asked(i) || a.c.Model.Checks[i].Stage != "free" {
			continue
		}
		for _, o := range a.c.Model.Checks[i].Options {
			for _, x := range d.Suspects {
				if x.Group == o.Mend-1 && x.P > most {
					most, d.Check = x.P, i
				}
			}
		}
	}
}

// leastHandy is the probability from which something that is seen and put right at once is looked for first: judgement.
const leastHandy = 0.12

// costs tells whether a repair costs a new part or somebody's visit.
func (a *Planned) costs(group int) bool {
	k := a.c.Model.Repairs[group].Kind
	return k == "replace" || k == "call"
}

// itself tells whether among proofs is the one that the fault itself was seen.
func itself(proofs []*plan.Proof) bool {
	return slices.ContainsFunc(proofs, func(p *plan.Proof) bool { return p.Kind == "self" })
}

// mendSeen turns to what was seen to be bad and is put right with hands alone, before the search ends without a name:
// a blocked drain is cleared and a loose hub tightened whatever else there is.
func (a *Planned) mendSeen(d *plan.Decision) {
	if d.Kind != plan.Help {
		return
	}
	for _, x := range d.Suspects {
		if x.Group >= len(a.c.Model.Repairs) || x.P < leastSeen || a.costs(x.Group) {
			continue
		}
		if have, _ := a.planner.Proofs(a.belief, x.Group); itself(have) {
			d.Kind, d.Check, d.Group, d.P = plan.Verdict, -1, x.Group, x.P
			return
		}
	}
}

// watchFirst keeps "nothing is wrong" back until every look at a start has been taken that a stop line hangs on: a
// burner that lights with a thump gives heat all the same.
func (a *Planned) watchFirst(d *plan.Decision, q *job.Query, s plan.Situation, times []int) {
	if d.Kind != plan.Nothing || len(q.Mended)+len(q.Anew) > 0 { // after a repair two whole cycles are watched; at another start it was done
		return
	}
	for i := range a.c.Model.Checks {
		k := &a.c.Model.Checks[i]
		stops := slices.ContainsFunc(k.Options, func(o appliance.Option) bool { return o.Stop >= 0 || o.Emergency != "" })
		if _, ok := s.Allowed(i); ok && k.Stage == "watch" && stops && times[i] == 0 {
			d.Kind, d.Check = plan.Ask, i
			return
		}
	}
}

// watchAnew asks at another start of what comes and goes what would tell most if one of the faults that hide were
// there now.
func (a *Planned) watchAnew(d *plan.Decision, q *job.Query, s plan.Situation) {
	n := len(q.Anew)
	if n == 0 || d.Kind != plan.Nothing && d.Kind != plan.Help {
		return
	}
	checks := a.c.Model.Checks
	if slices.ContainsFunc(q.Findings[q.Anew[n-1]:], func(f job.Finding) bool { return checks[f.Check].Stage == "watch" }) {
		return
	}
	p, prob := a.c.Problem, a.belief.Prob()
	best, most := -1, 0.0
	for i := range checks {
		if _, ok := s.Allowed(i); !ok || checks[i].Stage != "watch" {
			continue
		}
		tells := 0.0
		for h, x := range prob {
			if ph := p.Hyps[h].Phases; len(ph) > 1 {
				for o := range p.Checks[i].Bins[0] {
					tells += x * math.Abs(p.Chance(i, ph[0].World, o)-p.Chance(i, ph[len(ph)-1].World, o))
				}
			}
		}
		if tells /= checks[i].Minutes.Nominal + 1; tells > most {
			best, most = i, tells
		}
	}
	if best >= 0 {
		d.Kind, d.Check, d.Group = plan.Ask, best, -1
	}
}

// leastPart and leastWork are the probabilities from which a repair may be named, leastSeen that of work on what was
// seen to be bad (judgement).
const (
	leastPart = 0.65
	leastWork = 0.4
	leastSeen = 0.2
)

// likelyFree is the probability from which that is done. Judgement: once in three times it spares the meter.
const likelyFree = 0.3

// enough is how many bits about the repair a check must promise to be asked while only one stage is allowed. Below it
// the check waits until the plan wants it for its own sake. Judgement, fitted on the furnace file by the length of a
// job.
const enough = 0.02

// bits is what the decided check promises.
func bits(d *plan.Decision) float64 {
	for i := range d.Tried {
		if d.Tried[i].Check == d.Check {
			return d.Tried[i].Bits
		}
	}
	return enough
}

// maxTimes is how often one check is asked in a job, all told: judgement.
const maxTimes = 3

// leastShown is the probability below which a suspect is not worth a line: judgement.
const leastShown = 0.02

// replay brings the belief to what the findings and repairs make of it, and tells the situation and how often each
// check was asked.
func (a *Planned) replay(q *job.Query) (s plan.Situation, times []int) {
	a.belief.Clear()
	n := len(a.c.Model.Checks)
	s = plan.Situation{Site: a.site(q), Silent: make([]bool, n), Reasked: make([]bool, n), Firm: make([]bool, n), Tried: make([]bool, len(a.c.Model.Repairs))}
	times = make([]int, n)
	last := make([]*infer.Finding, n)
	mended, cycled, anew, doubted := 0, 0, 0, 0
	mend := func(after int) {
		for mended < len(q.Mended) && q.Mended[mended].After <= after {
			r := q.Mended[mended].Repair
			a.belief.Mend(r)
			s.Tried[r] = true
			mended++
			clear(times) // the world has changed: everything may be looked at anew
			clear(last)
			clear(s.Silent)
			clear(s.Reasked)
			clear(s.Firm)
		}
		for cycled < len(q.Cycled) && q.Cycled[cycled] <= after {
			a.belief.Cycle()
			cycled++
		}
		for anew < len(q.Anew) && q.Anew[anew] <= after {
			for i := range times {
				if a.c.Model.Checks[i].Stage == "watch" {
					times[i] = 0
				}
			}
			anew++
		}
		for doubted < len(q.Doubted) && q.Doubted[doubted].After <= after {
			s.Reasked[q.Doubted[doubted].Check] = true
			doubted++
		}
	}
	for i := range q.Findings {
		mend(i)
		f := &q.Findings[i]
		x := &infer.Finding{Option: f.Option, Reading: f.Reading, Unknown: f.Unknown, Unsure: f.Unsure, Typed: f.Typed}
		if err := a.belief.Observe(a.c.Answer(f.Check, *x, last[f.Check])); err != nil {
			// Nothing the model knows explains this answer. It stays in the journal and tells nothing.
			x.Unknown = true
		}
		if l := last[f.Check]; l != nil {
			s.Firm[f.Check] = f.Option >= 0 && f.Option == l.Option && !x.Unknown && !l.Unknown
		}
		last[f.Check] = x
		times[f.Check]++
		if x.Unknown {
			s.Silent[f.Check] = true
		}
	}
	mend(len(q.Findings))
	return s, times
}

func (a *Planned) site(q *job.Query) plan.Site {
	var out plan.Site
	s := q.Site
	if q.Proven {
		out.Tool = plan.Ready
	}
	for i, bit := range a.bit {
		if bit >= 0 && s.Covers.Has(i) {
			out.Open |= 1 << bit
		}
	}
	switch s.Power {
	case worksite.On:
		out.Power = plan.On
	case worksite.Off:
		out.Power = plan.Off
	case worksite.Proved:
		out.Power = plan.Dead
	}
	return out
}

// name is how a repair decision is spoken of: by its part, or by what is to be done when nothing is broken.
func (a *Planned) name(group int) (part, name string) {
	m := a.c.Model
	switch {
	case group == len(m.Repairs):
		return "nothing", a.line("suspect.nothing")
	case group > len(m.Repairs):
		return "unknown", a.line("suspect.unknown")
	}
	r := &m.Repairs[group]
	switch {
	case r.Part < 0:
		return r.ID, r.Name
	case r.Kind == "replace":
		return m.Parts[r.Part].ID, m.Parts[r.Part].Name
	}
	return m.Parts[r.Part].ID, r.Name
}

func (a *Planned) suspect(x plan.Suspect) protocol.Suspect {
	part, name := a.name(x.Group)
	return protocol.Suspect{Part: part, Name: name, P: x.P}
}

// proved names the proofs a verdict stands on.
func (a *Planned) proved(group int) []string {
	have, _ := a.planner.Proofs(a.belief, group)
	var out []string
	for _, p := range have {
		if text := a.evidence(p); !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}

func (a *Planned) line(id string, pairs ...string) string {
	return words.Fill(a.words.Lines[id].Full, pairs...)
}

// evidence says what a proof shows.
func (a *Planned) evidence(p *plan.Proof) string { return a.words.Term(p.Term, p.Slots...) }

// explain says what the chosen check separates, where its answers lead, and what would change the verdict.
func (a *Planned) explain(out *job.Advice, d *plan.Decision) {
	if d.Check >= 0 {
		x, y := a.separates(d)
		switch {
		case out.Again:
			out.Why.Short = a.line("why.again")
		case x >= 0 && y >= 0:
			_, nx := a.name(x)
			_, ny := a.name(y)
			out.Splits = []string{nx, ny}
		}
		for _, p := range d.Missing {
			out.Why.More = append(out.Why.More, a.line("why.missing", "proof", a.evidence(p)))
		}
	}
	switch {
	case len(d.Missing) > 0:
		out.Sure = a.line("sure.missing", "proof", a.evidence(d.Missing[0]))
	case len(d.Tried) > 0 && d.Tried[0].Check >= 0:
		out.Sure = a.line("sure.check", "check", a.c.Model.Checks[d.Tried[0].Check].Name)
	}
}

// separates finds the two likeliest suspects that the check tells apart best, -1 when it tells none apart.
func (a *Planned) separates(d *plan.Decision) (int, int) {
	best, x, y := 0.0, -1, -1
	sus := d.Suspects[:min(len(d.Suspects), 6)]
	for i, s := range sus {
		for _, t := range sus[i+1:] {
			v := a.distance(d.Check, s.Group, t.Group) * min(s.P, t.P)
			if v > best+1e-12 {
				best, x, y = v, s.Group, t.Group
			}
		}
	}
	return x, y
}

// distance is half the sum of absolute differences between what two repair decisions let a check show.
func (a *Planned) distance(check, g, h int) float64 {
	p := a.c.Problem
	u, v := a.world(g), a.world(h)
	if u < 0 || v < 0 {
		return 0
	}
	sum := 0.0
	for o := range p.Checks[check].Bins[0] {
		x := p.Chance(check, u, o) - p.Chance(check, v, o)
		if x < 0 {
			x = -x
		}
		sum += x
	}
	return sum / 2
}

// world is the likeliest world of a repair decision now, -1 for none.
func (a *Planned) world(group int) int {
	best, w := 0.0, -1
	for i, pr := range a.belief.Prob() {
		h := &a.c.Problem.Hyps[i]
		fits := slices.Contains(h.Groups, group)
		switch n := len(a.c.Model.Repairs); {
		case group == n:
			fits = h.Sort == infer.Nothing
		case group > n:
			fits = h.Sort == infer.Unknown
		}
		if fits && pr > best {
			best, w = pr, h.Phases[0].World
		}
	}
	return w
}

// Watch tells whether the camera is the cheapest way to answer a step, wrong answers counted.
func (a *Planned) Watch(w job.Watch) bool {
	best, _ := plan.Best(plan.Ways(plan.Sense{What: w.Eye, Hands: w.Hands, Voice: w.Voice, Noise: w.Noise, Misses: w.Misses}), plan.UsualWeights)
	return best.ID == "camera"
}
