package advise

import (
	"cmp"
	"slices"

	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/job"
	"readback/core/measure"
	"readback/core/plan"
)

// What may be said of a suspect, and what is done at once. Nothing here chooses checks by their worth; the planner
// does.

// since is the first finding after the last repair.
func since(q *job.Query) int {
	if n := len(q.Mended); n > 0 {
		return min(q.Mended[n-1].After, len(q.Findings))
	}
	return 0
}

// mendAtOnce turns to what was seen to be wrong on the thing itself and is put right with hands alone, before anything
// else is asked: a dirty filter is changed and a switch put on whatever else there may be, and the next start shows
// whether it was all of it. It reports whether it did.
func (a *Planned) mendAtOnce(d *plan.Decision, q *job.Query, s *plan.Situation) bool {
	m := a.c.Model
	for _, x := range d.Suspects {
		if x.Group >= len(m.Repairs) || x.P < leastSight || s.Tried[x.Group] || !a.handy(x.Group) {
			continue
		}
		for i := since(q); i < len(q.Findings); i++ {
			f := &q.Findings[i]
			if d.Kind == plan.Reask && d.Doubt == f.Check || !a.sees(f, x.Group) {
				continue
			}
			d.Kind, d.Check, d.Group, d.P, d.Missing = plan.Verdict, -1, x.Group, x.P, nil
			return true
		}
	}
	return false
}

// handy tells whether a repair needs nobody else and no part of weight: cheap, quick, and taken back if it was not
// that.
func (a *Planned) handy(group int) bool {
	r := &a.c.Model.Repairs[group]
	return r.Kind != "call" && a.c.Model.StopOf(group) < 0 && r.Price.Nominal <= handyMoney && r.Minutes.Nominal <= handyMinutes
}

// sees tells whether a finding is the sight of what a repair puts right: of all faults that look so, by their rates, at
// least half are ended by it.
func (a *Planned) sees(f *job.Finding, group int) bool {
	m := a.c.Model
	if f.Unknown || f.Unsure || f.Option < 0 || m.Checks[f.Check].Function != measure.Look || a.c.Problem.Chance(f.Check, 0, f.Option) > 0.1 {
		return false
	}
	if m.Checks[f.Check].Options[f.Option].Mend > 0 {
		return false // the job puts it right as soon as it is said
	}
	own, all := 0.0, 0.0
	for i := range m.Modes {
		looks := slices.ContainsFunc(a.c.Stages(i), func(w int) bool { return a.c.Problem.Chance(f.Check, w, f.Option) > 0.5 })
		if looks {
			all += m.Modes[i].Rate.Nominal
			if m.Modes[i].Repair == group {
				own += m.Modes[i].Rate.Nominal
			}
		}
	}
	return own > 0 && own >= all/2
}

// unexplained is the first measurement of a part itself, since the last repair, that is out of its limits and is no
// part of what the leading explanation of a repair would show; -1 for none. It is told with its part.
func (a *Planned) unexplained(q *job.Query, group int) (check, part int) {
	m := a.c.Model
	lead := a.leader(group)
	if lead == nil {
		return -1, -1
	}
	for i := since(q); i < len(q.Findings); i++ {
		f := &q.Findings[i]
		if f.Unknown || f.Reading == nil || !a.c.Measures(f.Check) || !a.c.Out(f.Check, *f.Reading) || a.belief.Wrong(f.Check) > likelyFree {
			continue
		}
		p := m.Checks[f.Check].Part
		if slices.ContainsFunc(lead.Modes, func(x int) bool { return m.Modes[x].Part == p }) {
			continue
		}
		o, fits := a.belief.Outcome(f.Check), 0.0
		for _, ph := range lead.Phases {
			fits = max(fits, a.c.Problem.Chance(f.Check, ph.World, o))
		}
		if o >= 0 && fits < leastFit {
			return f.Check, p
		}
	}
	return -1, -1
}

// contradicted tells whether an answer since the last repair is thought wrong that nobody took back: no part is
// replaced on an explanation that needs one. What the person told of the past, and what a label says, may be wrong for
// other reasons.
func (a *Planned) contradicted(q *job.Query, group int) bool {
	for i := since(q); i < len(q.Findings); i++ {
		f := &q.Findings[i]
		if f.Reading != nil && a.c.Measures(f.Check) && a.c.Out(f.Check, *f.Reading) && a.c.Model.Checks[f.Check].Part == a.c.Model.Repairs[group].Part {
			continue // it may be unlike any fault of the part that the file knows, and speaks for it all the same
		}
		if st := a.c.Model.Checks[f.Check].Stage; f.Unknown || st == "story" || st == "light" || st == "plate" || st == "safety" {
			continue
		}
		if a.belief.Wrong(f.Check) > leastWrong {
			return true
		}
	}
	return false
}

// blown is a list of suspects, likeliest first, in which a fuse that was measured blown is as likely as the reading is
// right: what blew it may be the fault, but it is blown.
func (a *Planned) blown(q *job.Query, list []plan.Suspect) []plan.Suspect {
	m := a.c.Model
	out := slices.Clone(list)
	for i := since(q); i < len(q.Findings); i++ {
		f := &q.Findings[i]
		part := m.Checks[f.Check].Part
		if f.Unknown || f.Reading == nil || part < 0 || m.Parts[part].Kind != "fuse" || !a.c.Out(f.Check, *f.Reading) {
			continue
		}
		for g := range m.Repairs {
			if m.Repairs[g].Part != part || m.Repairs[g].Kind != "replace" {
				continue
			}
			at := slices.IndexFunc(out, func(x plan.Suspect) bool { return x.Group == g })
			if at < 0 {
				at, out = len(out), append(out, plan.Suspect{Group: g})
			}
			out[at].P = max(out[at].P, 1-a.belief.Wrong(f.Check))
		}
	}
	slices.SortStableFunc(out, func(x, y plan.Suspect) int { return cmp.Compare(y.P, x.P) })
	return out
}

// refuted tells whether one of the proofs that a part still lacks was looked for and came out otherwise: its supply is
// not there, or what hangs on it is not good. Then it is not the part that is replaced.
func (a *Planned) refuted(missing []*plan.Proof) bool {
	for _, p := range missing {
		if p.Term != "evidence.supply" && p.Kind != "need" { // what a board waits for may be missing because of the board
			continue
		}
		for _, s := range p.Any {
			k := &a.c.Model.Checks[s.Check]
			if k.Function != measure.Ohms && a.belief.Outcome(s.Check) >= 0 && a.belief.Wrong(s.Check) < likelyFree {
				return true
			}
		}
	}
	return false
}

// measured tells whether a part that a repair is about was itself measured out of its limits since the last repair, and
// not doubted since.
func (a *Planned) measured(q *job.Query, group int) bool {
	m := a.c.Model
	for i := since(q); i < len(q.Findings); i++ {
		f := &q.Findings[i]
		if f.Unknown || f.Reading == nil || !a.c.Measures(f.Check) || !a.c.Out(f.Check, *f.Reading) || a.belief.Wrong(f.Check) > 0.5 {
			continue
		}
		if slices.ContainsFunc(m.Modes, func(x appliance.Mode) bool { return x.Repair == group && x.Part == m.Checks[f.Check].Part }) {
			return true
		}
	}
	return false
}

// leader is the likeliest hypothesis that needs a repair, nil for none.
func (a *Planned) leader(group int) *infer.Hyp {
	var best *infer.Hyp
	most := 0.0
	for i, x := range a.belief.Prob() {
		if h := &a.c.Problem.Hyps[i]; x > most && slices.Contains(h.Groups, group) {
			best, most = h, x
		}
	}
	return best
}

// onceMore has the one answer that a costly verdict hangs on asked again before it is named, where no other check could
// stand in.
func (a *Planned) onceMore(d *plan.Decision, s *plan.Situation, times []int) {
	if d.Kind != plan.Verdict || d.Group < 0 || !a.costs(d.Group) || a.handy(d.Group) {
		return
	}
	for _, c := range d.Weak {
		if times[c] != 1 || s.Reasked[c] || !a.task.Checks[c].Repeat {
			continue
		}
		if _, ok := s.Allowed(c); ok {
			d.Kind, d.Check, d.Doubt, d.Group = plan.Reask, c, c, -1
			return
		}
	}
}

// licensed names the stop line where nearly all of what may be wrong lies behind one: which of it, the person that may
// look must tell.
func (a *Planned) licensed(d *plan.Decision) {
	if d.Kind != plan.Help {
		return
	}
	m := a.c.Model
	behind := make([]float64, len(m.Stops))
	lead := make([]plan.Suspect, len(m.Stops))
	for _, x := range d.Suspects {
		if x.Group >= len(m.Repairs) {
			continue
		}
		stop := m.StopOf(x.Group)
		if stop < 0 {
			continue
		}
		behind[stop] += x.P
		if x.P > lead[stop].P {
			lead[stop] = x
		}
	}
	for stop, p := range behind {
		if p >= leastBehind {
			d.Kind, d.Check, d.Group, d.P = plan.Verdict, -1, lead[stop].Group, min(1, p)
			return
		}
	}
}

// passes tells whether the person told of a fault that comes and goes: then other starts are watched first.
func (a *Planned) passes(q *job.Query) bool {
	return slices.ContainsFunc(q.Findings, func(f job.Finding) bool {
		return f.Option >= 0 && a.c.Model.Checks[f.Check].Options[f.Option].Passes
	})
}

// restFirst has another start watched before covers come off, where the person told of a fault that comes and goes, no
// start failed here, and nothing wrong or what comes and goes is likely: such a fault is caught while it is there, and
// not by measuring what is whole at the moment.
func (a *Planned) restFirst(d *plan.Decision, q *job.Query, s *plan.Situation) {
	if d.Kind != plan.Ask && d.Kind != plan.Prove || len(q.Mended)+len(q.Anew) > 0 || a.task.Checks[d.Check].Open == 0 {
		return
	}
	if !a.passes(q) {
		for i := range a.c.Model.Checks {
			comes := slices.ContainsFunc(a.c.Model.Checks[i].Options, func(o appliance.Option) bool { return o.Passes })
			if _, ok := s.Allowed(i); ok && comes && !a.belief.Asked(i) && d.Suspects[0].Group == len(a.c.Model.Repairs) {
				d.Kind, d.Check, d.Group = plan.Ask, i, -1 // whether it does is asked first
			}
		}
		return
	}
	for i := range q.Findings {
		f := &q.Findings[i]
		if k := &a.c.Model.Checks[f.Check]; k.Stage == "watch" && f.Option >= 0 && a.c.Problem.Chance(f.Check, 0, f.Option) < 0.1 {
			return
		}
	}
	hides := 0.0
	for h, x := range a.belief.Prob() {
		if hyp := &a.c.Problem.Hyps[h]; hyp.Sort == infer.Nothing || len(hyp.Phases) > 1 {
			hides += x
		}
	}
	if hides > leastHides {
		d.Kind, d.Check, d.Group = plan.Nothing, -1, -1
	}
}

// lookAll keeps "nothing is wrong" back until every fault that leaves the heat on has been looked for, as far as the
// file has a look or a reading for it that needs no cover off: it is the absence of a sign that was looked for that
// clears, not the absence of looking.
func (a *Planned) lookAll(d *plan.Decision, q *job.Query, s *plan.Situation, times []int) {
	if d.Kind != plan.Nothing || len(q.Mended) > 0 || len(q.Anew) == 0 && a.passes(q) {
		return
	}
	p, m := a.c.Problem, a.c.Model
	prob := a.belief.Prob()
	nothing := 0.0
	for h := range p.Hyps {
		if p.Hyps[h].Sort == infer.Nothing {
			nothing = prob[h] / p.Hyps[h].Prior
		}
	}
	best, most := -1, leastLook
	for i := range m.Checks {
		k := &m.Checks[i]
		if _, ok := s.Allowed(i); !ok || times[i] > 0 || a.belief.Asked(i) || a.task.Checks[i].Open != 0 || k.HandsIn || k.Hazard == "mains" {
			continue
		}
		if k.Function != measure.Look && k.Function != measure.Thermometer && k.Function != measure.COMeter {
			continue
		}
		tells := 0.0
		for h := range p.Hyps {
			hyp := &p.Hyps[h]
			if hyp.Sort != infer.Known || len(hyp.Modes) != 1 || hyp.Prior == 0 || prob[h]/hyp.Prior < stillOpen*nothing {
				continue
			}
			w := hyp.Phases[0].World // of what comes and goes: there
			apart := 0.0
			for o := range p.Checks[i].Bins[0] {
				if x := p.Chance(i, w, o) - p.Chance(i, 0, o); x > 0 {
					apart += x
				}
			}
			if apart > 0.5 {
				tells += hyp.Prior * apart
			}
		}
		if tells /= 1 + k.Minutes.Nominal/lookMinutes; tells > most {
			best, most = i, tells
		}
	}
	if best >= 0 {
		d.Kind, d.Check, d.Group = plan.Ask, best, -1
	}
}

// Judgement, no source: the least probability of what was seen on the thing itself for it to be put right at once, and
// what that may cost; how little an out-of-limit reading may fit an explanation before it stands against it; how surely
// an answer must be wrong under an explanation for it to stand against a new part; the share of all suspects behind one
// stop line that is named; how likely it must be that nothing is wrong or that it hides, for another start to be
// watched first; how much of its prior odds against nothing wrong a fault must have left to be looked for, the least
// prior that a look must cover then, and the minutes that halve its worth.
const (
	leastSight   = 0.1
	handyMoney   = 60
	handyMinutes = 45
	leastFit     = 0.05
	leastWrong   = 0.6
	leastBehind  = 0.85
	leastHides   = 0.2
	stillOpen    = 0.3
	leastLook    = 0.002
	lookMinutes  = 10
)
