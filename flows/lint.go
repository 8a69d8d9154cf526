package flows

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/unit"
	"readback/flows/plain"
)

// Report is what the static checker finds in a file that loads.
type Report struct {
	Model    *appliance.Model
	Problems Problems // errors and warnings in the order of the lines
	Groups   []Group  // modes that no check of the file separates, largest rate first
	One      float64  // share of the rate whose group has one repair, 0 to 1
	Three    float64  // share of the rate whose group has three modes at most
}

// Group is modes that look alike to every check.
type Group struct {
	Modes   []int
	Repairs []int // repairs that end them
	Rate    float64
}

// capable is the least capability C_m of a limit for an ordinary meter (JCGM 106 7.7.5 and 8.2.3).
const capable = 3

// Lint loads a file and simulates every single mode of it. Options holds the option ids that can be heard; nil skips that rule.
func Lint(fsys fs.FS, name string, options []string) (*Report, error) {
	l, err := read(fsys, name)
	if err != nil {
		return nil, err
	}
	if len(l.probs.errors()) > 0 {
		return &Report{Model: l.m, Problems: l.probs}, nil
	}
	if options != nil {
		l.optionsHeard(options)
	}
	l.answersAsked()
	e, err := appliance.Compile(l.m)
	if err != nil {
		return nil, fmt.Errorf("flows: %s: %w", name, err)
	}
	r := &Report{Model: l.m}
	l.simulate(e, r)
	l.takeAccepted()
	l.probs.sort()
	r.Problems = l.probs
	return r, nil
}

// Err is the errors of a report without its warnings, nil when there are none.
func (r *Report) Err() error {
	if errs := r.Problems.errors(); len(errs) > 0 {
		return errs
	}
	return nil
}

// answersAsked holds every question to its answers: its own words stand on the buttons, each once.
func (l *loader) answersAsked() {
	for _, c := range l.m.Checks {
		var labels []string
		for _, o := range c.Options {
			labels = append(labels, cmp.Or(o.Label, strings.ReplaceAll(o.ID, "-", " ")))
		}
		if err := plain.Answers(c.Ask, labels); err != nil {
			l.warn(l.acts["check "+c.ID+" ask"], "", "check %s: %v", c.ID, err)
		}
	}
}

func (l *loader) optionsHeard(known []string) {
	for ci, c := range l.m.Checks {
		for oi, o := range c.Options {
			for _, id := range append([]string{o.ID}, o.Also...) {
				if !slices.Contains(known, id) {
					l.at(l.options[[2]int{ci, oi}], meant(id, known), "option %q of check %s cannot be heard", id, c.ID)
				}
			}
		}
	}
}

func (l *loader) simulate(e *appliance.Engine, r *Report) {
	m := l.m
	t := e.Table(e.Singles())
	start := hcl.Range{Start: hcl.InitialPos}

	l.healthy(e, t)
	for h := range t.Hyps {
		if !t.Unsure[h] {
			continue
		}
		if h == 0 {
			l.at(start, "a contact opens itself", "the healthy appliance does not come to rest")
		} else {
			l.warn(l.modes.where[t.Hyps[h][0]], "a contact opens itself", "with %s some state does not come to rest", m.Modes[t.Hyps[h][0]].Full)
		}
	}
	for i := range m.Modes {
		seen := false
		for c := range m.Checks {
			seen = seen || apart(&m.Checks[c], t.Prediction(c, 0), t.Prediction(c, i+1))
		}
		if !seen {
			l.warn(l.modes.where[i], "", "no check shows %s: it looks like a healthy appliance", m.Modes[i].Full)
		}
	}
	for c := range m.Checks {
		l.check1(&m.Checks[c], c, t)
	}
	r.group(m, t)
	for _, g := range r.Groups {
		if len(g.Repairs) > 1 {
			var names []string
			for _, i := range g.Modes {
				names = append(names, m.Modes[i].Full)
			}
			l.warn(l.modes.where[g.Modes[0]], "offer a look", "no check separates %s (rate %g)", strings.Join(names, ", "), g.Rate)
		}
	}
}

// healthy holds the appliance without faults to running, to its own limits and to whole fuses.
func (l *loader) healthy(e *appliance.Engine, t *appliance.Table) {
	m := l.m
	start := hcl.Range{Start: hcl.InitialPos}
	p := e.Plant(nil)
	for _, i := range p.Gone() {
		l.at(l.parts.where[i], "supplies joined, or a rating too small", "with nothing wrong, %s opens", m.Parts[i].ID)
	}
	for i := range m.Parts {
		if appliance.KindOf(m.Parts[i].Kind).Return != "" {
			if a, ok := p.Value(m.Parts[i].ID + ".amps"); ok && a > 100 {
				l.at(l.parts.where[i], "", "with nothing wrong, %s is short-circuited: %.0f A", m.Parts[i].ID, a)
			}
		}
	}
	if len(m.Controls) > 0 {
		step, _, why := e.Reached(nil)
		steps := m.Controls[0].Steps
		last := ""
		for _, s := range steps {
			if !s.Side {
				last = s.ID
			}
		}
		switch {
		case step == "":
			l.at(start, "", "with nothing wrong, the sequence does not begin: %s", why)
		case step != last || why != "":
			l.at(l.stepRange(step), why, "with nothing wrong, the sequence ends at %s", step)
		}
	}
	for c := range m.Checks {
		o, lim := t.Prediction(c, 0), m.Checks[c].Limit
		if lim == nil {
			continue
		}
		where := l.checks.where[c]
		if o.State == measure.Over {
			o.Value = math.Inf(1)
		} else if o.State != measure.Number {
			continue // a beep has no size
		}
		if lim.Low != nil && o.Value < *lim.Low || lim.High != nil && o.Value > *lim.High {
			l.at(where, "", "with nothing wrong, check %s shows %s, outside its own limit", m.Checks[c].ID, shows(&m.Checks[c], o))
		}
	}
}

func shows(c *appliance.Check, o appliance.Outcome) string {
	switch {
	case o.Option >= 0 && o.Option < len(c.Options):
		return c.Options[o.Option].ID
	case o.State != measure.Number:
		return string(o.State)
	}
	return fmt.Sprintf("%.4g %s", o.Value, c.Unit)
}

// check1 looks at one check over all single modes.
func (l *loader) check1(c *appliance.Check, i int, t *appliance.Table) {
	where := l.checks.where[i]
	useful := false
	used := make([]bool, len(c.Options))
	for h := range t.Hyps {
		o := t.Prediction(i, h)
		useful = useful || apart(c, t.Prediction(i, 0), o)
		if o.Option >= 0 && o.Option < len(used) {
			used[o.Option] = true
		}
		if o.State == measure.Blank && len(c.Options) > 0 {
			l.warn(where, "add an option without when", "check %s has no answer when %s", c.ID, name(l.m, t.Hyps[h]))
			break
		}
	}
	// Identity and story questions may serve without telling faults apart; the rest must earn its minutes.
	if !useful && c.Stage != "plate" && c.Stage != "story" && c.Stage != "safety" && c.Stage != "restart" {
		l.warn(where, "", "check %s shows the same whatever is wrong", c.ID)
	}
	for o, u := range used {
		if !u && c.Options[o].Stop < 0 && c.Options[o].Emergency == "" && useful {
			l.warn(l.options[[2]int{i, o}], "", "no fault makes anybody answer %q to check %s", c.Options[o].ID, c.ID)
		}
	}
	if c.Limit != nil {
		if cm := measure.Capability(measure.Modest(), c.Function, *c.Limit); cm < capable {
			l.warn(where, "", "the limit of check %s is narrow for an ordinary meter: C_m is %.1f, want %d", c.ID, cm, capable)
		}
	}
}

func name(m *appliance.Model, h appliance.Hypothesis) string {
	if len(h) == 0 {
		return "nothing is wrong"
	}
	return m.Modes[h[0]].Full + " is there"
}

// apart tells whether a check separates two outcomes: different states or answers, or numbers whose distance is beyond
// twice the joint uncertainty of an ordinary meter and of healthy tolerances.
func apart(c *appliance.Check, a, b appliance.Outcome) bool {
	if a.State != b.State || a.Option != b.Option {
		return true
	}
	if a.State != measure.Number || a.Option >= 0 {
		return false
	}
	u, ok := unit.Lookup(c.Unit)
	if !ok {
		return a.Value != b.Value
	}
	m := measure.Modest()
	ua, ub := m.Uncertainty(c.Function, a.Value*u.Scale, 0)/u.Scale, m.Uncertainty(c.Function, b.Value*u.Scale, 0)/u.Scale
	s := measure.Combine(ua, ub, measure.Rectangular(a.Half), measure.Rectangular(b.Half))
	return math.Abs(a.Value-b.Value) > 2*s
}

// group joins the modes that no check separates.
func (r *Report) group(m *appliance.Model, t *appliance.Table) {
	n := len(m.Modes)
	root := make([]int, n)
	for i := range root {
		root[i] = i
	}
	find := func(i int) int {
		for root[i] != i {
			i = root[i]
		}
		return i
	}
	for i := range n {
		for j := range i {
			alike := true
			for c := range m.Checks {
				if apart(&m.Checks[c], t.Prediction(c, i+1), t.Prediction(c, j+1)) {
					alike = false
					break
				}
			}
			if alike {
				root[find(i)] = find(j)
			}
		}
	}
	groups := map[int]*Group{}
	total := 0.0
	for i := range n {
		k := find(i)
		g, ok := groups[k]
		if !ok {
			g = &Group{}
			groups[k] = g
		}
		g.Modes = append(g.Modes, i)
		if !slices.Contains(g.Repairs, m.Modes[i].Repair) {
			g.Repairs = append(g.Repairs, m.Modes[i].Repair)
		}
		g.Rate += m.Modes[i].Rate.Nominal
		total += m.Modes[i].Rate.Nominal
	}
	for i := range n {
		g, ok := groups[i]
		if !ok {
			continue
		}
		if len(g.Repairs) == 1 {
			r.One += g.Rate / total
		}
		if len(g.Modes) <= 3 || len(g.Repairs) == 1 {
			r.Three += g.Rate / total
		}
		if len(g.Modes) > 1 {
			r.Groups = append(r.Groups, *g)
		}
	}
	slices.SortStableFunc(r.Groups, func(a, b Group) int {
		switch {
		case a.Rate > b.Rate:
			return -1
		case a.Rate < b.Rate:
			return 1
		}
		return a.Modes[0] - b.Modes[0]
	})
}

// LintAll lints every built-in file and joins their errors.
func LintAll(options []string) ([]*Report, error) {
	fsys, names := Files()
	var out []*Report
	var errs []error
	for _, n := range names {
		r, err := Lint(fsys, n, options)
		if err != nil {
			errs = append(errs, err)
			continue
		}
		out = append(out, r)
		if err := r.Err(); err != nil {
			errs = append(errs, err)
		}
	}
	return out, errors.Join(errs...)
}
