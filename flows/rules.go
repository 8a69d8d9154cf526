package flows

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"readback/core/appliance"
	"readback/flows/plain"
)

// Longest sayings, words: a step is heard once, with probes in both hands. A sentence has at most plain.Longest. Common practice, no source.
const (
	maxCaution = 20
	maxText    = 30
)

// useNet counts a port on a net; the first one declares it.
func (l *loader) useNet(e hclsyntax.Expression) {
	v, diags := e.Value(nil)
	if diags.HasErrors() || !v.IsKnown() || v.IsNull() || v.Type() != cty.String {
		return // said when the part is decoded
	}
	s := v.AsString()
	if _, known := l.nets.index[s]; !known {
		l.nets.index[s] = len(l.nets.ids)
		l.nets.ids = append(l.nets.ids, s)
		l.nets.where = append(l.nets.where, e.Range())
	}
	l.netUses[s]++
}

// rules are the checks that need the whole file.
func (l *loader) rules() {
	m := l.m
	used := map[string]int{}
	for s, n := range l.netUses {
		used[s] = n
	}
	for _, p := range m.Points {
		used[p.Net]++
	}
	for _, md := range m.Modes {
		if md.To != "" {
			used[md.To]++
		}
	}
	for _, net := range l.nets.ids {
		if used[net] == 1 {
			l.at(l.nets.where[l.nets.index[net]], meant(net, slices.DeleteFunc(slices.Clone(l.nets.ids), func(s string) bool { return s == net })),
				"net %q joins one port only", net)
		}
	}
	for key, r := range l.acts {
		limit := maxText
		if strings.HasSuffix(key, " caution") {
			limit = maxCaution
		}
		if s, ok := l.saying(key); ok {
			if n := len(plain.Words(s)); n > limit {
				l.at(r, "", "%d words where %d are the most", n, limit)
			} else if n, _ := plain.LongestOf(s); n > plain.Longest {
				l.at(r, "make two sentences of it", "a sentence of %d words where %d are the most", n, plain.Longest)
			}
		}
	}
	l.signalCycles()
	l.reachable()
	l.repairsUsed()
	l.placesFit()
	l.safetyKept()
}

// saying finds the words that an entry of acts stands for.
func (l *loader) saying(key string) (string, bool) {
	kind, rest, _ := strings.Cut(key, " ")
	i := strings.LastIndex(rest, " ")
	id, name := rest[:i], rest[i+1:]
	if kind == "check" {
		for _, c := range l.m.Checks {
			if c.ID == id {
				return map[string]string{"act": c.Act, "caution": c.Caution, "ask": c.Ask, "fit": c.Fit}[name], true
			}
		}
		return "", false
	}
	for _, r := range l.m.Repairs {
		if r.ID == id && name == "note" {
			return r.Note, true
		}
		for _, s := range r.Steps {
			if r.ID+" "+s.Act == id {
				return map[string]string{"act": s.Act, "caution": s.Caution}[name], true
			}
		}
	}
	return "", false
}

// signalCycles refuses a signal that follows from itself without a part in between.
func (l *loader) signalCycles() {
	state := make([]int, len(l.m.Signals)) // 1 being walked, 2 done
	var walk func(i int) bool
	var uses func(e *appliance.Expr) bool
	uses = func(e *appliance.Expr) bool {
		if e == nil {
			return false
		}
		if e.Op == "name" {
			if j, ok := l.signals.index[e.Name]; ok && j < len(state) && walk(j) {
				return true
			}
		}
		return slices.ContainsFunc(e.Args, uses)
	}
	walk = func(i int) bool {
		switch state[i] {
		case 1:
			return true
		case 2:
			return false
		}
		state[i] = 1
		loop := uses(l.m.Signals[i].Is)
		state[i] = 2
		if loop {
			l.at(l.signals.where[i], "let a part stand between", "signal %s follows from itself", l.m.Signals[i].ID)
		}
		return false
	}
	for i := range l.m.Signals {
		walk(i)
	}
}

// reachable refuses steps that nothing leads to.
func (l *loader) reachable() {
	for _, c := range l.m.Controls {
		entered := map[string]bool{"lock-out": true}
		for _, s := range c.Steps {
			entered[s.OnFail] = true
		}
		if c.Tries == 0 {
			for _, s := range c.Steps {
				if s.OnFail == "retry" {
					l.at(l.stepRange(s.ID), "tries = 3", "step %s retries, control %s says not how often", s.ID, c.ID)
				}
			}
		}
		for i, s := range c.Steps {
			if s.Side && !entered[s.ID] {
				l.at(l.stepRange(s.ID), `name it in an on_fail, or take away "side"`, "step %s is never reached", s.ID)
			}
			if i == 0 && s.Side {
				l.at(l.stepRange(s.ID), "", "the sequence begins with a side step")
			}
			if !s.Side && entered[s.ID] {
				l.at(l.stepRange(s.ID), "side = true", "step %s is entered by an on_fail: it must be a side step", s.ID)
			}
		}
	}
}

func (l *loader) stepRange(id string) hcl.Range {
	if i, ok := l.steps.index[id]; ok {
		return l.steps.where[i]
	}
	return hcl.Range{Start: hcl.InitialPos}
}

// repairsUsed refuses a repair that ends no fault. One that names no part is of the part whose fault it ends first.
func (l *loader) repairsUsed() {
	used := make([]bool, len(l.m.Repairs))
	for _, m := range l.m.Modes {
		if m.Repair < 0 || m.Repair >= len(used) {
			continue
		}
		used[m.Repair] = true
		if r := &l.m.Repairs[m.Repair]; r.Part < 0 {
			r.Part = m.Part
		}
	}
	for i, r := range l.m.Repairs {
		if !used[i] {
			l.at(l.repairs.where[i], "name it in a mode", "repair %s ends no fault", r.ID)
		}
	}
}

// placesFit holds every check to the places its points are in.
func (l *loader) placesFit() {
	for i := range l.m.Places {
		depth := 0
		for pl := i; pl >= 0 && pl < len(l.m.Places); pl = l.m.Places[pl].Within {
			if depth++; depth > len(l.m.Places) {
				l.at(l.places.where[i], "", "place %s is within itself", l.m.Places[i].ID)
				return
			}
		}
	}
	for i, c := range l.m.Checks {
		for _, pt := range append([]int{c.Red, c.Black}, c.Lift...) {
			if pt < 0 || pt >= len(l.m.Points) {
				continue
			}
			for pl := l.m.Points[pt].Place; pl >= 0 && pl < len(l.m.Places); pl = l.m.Places[pl].Within {
				if l.m.Places[pl].Cover && !slices.Contains(c.Places, pl) {
					l.at(l.checks.where[i], "places = [\""+l.m.Places[pl].ID+"\"]", "check %s reaches point %s without opening %s", c.ID, l.m.Points[pt].ID, l.m.Places[pl].ID)
					break
				}
			}
		}
	}
}

// safetyKept refuses a test jumper that joins the two ends of a safety part, be it through wires, switches and other contacts.
func (l *loader) safetyKept() {
	for ci, c := range l.m.Checks {
		if len(c.Jump) != 2 || c.Jump[0] >= len(l.m.Points) || c.Jump[1] >= len(l.m.Points) {
			continue
		}
		root := map[string]string{}
		find := func(n string) string {
			for root[n] != "" && root[n] != n {
				n = root[n]
			}
			return n
		}
		join := func(a, b string) { root[find(a)] = find(b) }
		join(l.netAt(c.Jump[0]), l.netAt(c.Jump[1]))
		for _, p := range l.m.Parts {
			if a, b := p.Ports["a"], p.Ports["b"]; !p.Safety && a != "" && b != "" && appliance.KindOf(p.Kind).Passes >= appliance.Joins {
				join(a, b)
			}
		}
		for _, p := range l.m.Parts {
			if a, b := p.Ports["a"], p.Ports["b"]; p.Safety && a != "" && b != "" && find(a) == find(b) {
				l.at(l.checks.where[ci], "join other points", "the jumper of check %s bridges %s, a safety part", c.ID, p.ID)
			}
		}
	}
}

// netAt is the net a point is on, also when it names a terminal.
func (l *loader) netAt(point int) string {
	net := l.m.Points[point].Net
	if part, port, ok := strings.Cut(net, "."); ok && l.isPort(net) {
		if i, known := l.parts.index[part]; known && i < len(l.m.Parts) {
			return l.m.Parts[i].Ports[port]
		}
	}
	return net
}
