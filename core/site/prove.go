package site

import (
	"fmt"
	"strings"

	"readback/core/measure"
)

// Steps is the step code that is proved. [Rules] is the real one; tests put mistakes into others.
type Steps interface {
	Next(State, Need) (Act, bool)
	Apply(State, Act, Outcome) State
	Allowed(State, int) (bool, string)
}

// world is what is really so, whatever the state says: a switch may be welded or the wrong one, a meter may die.
type world struct {
	live  bool // there is voltage where fingers would go
	meter bool // the meter shows what is there
	in    Set  // what is really in place: jumper, meter in line, held switch, by the bits below
}

const (
	inJumper = iota
	inMeter
	inHeld
)

// node is one situation of the proof.
type node struct {
	s State
	w world
}

// Counter is a counter-example: the shortest way to something that must never be.
type Counter struct {
	Law  string   // what is broken
	Path []string // one line a step, the last one is what breaks the law
}

// String is the counter-example as a dialogue.
func (c Counter) String() string { return c.Law + "\n  " + strings.Join(c.Path, "\n  ") }

// Report is what a proof has found.
type Report struct {
	States  int // situations reached: state of the place and what is really so
	Steps   int // acts and questions looked at
	Longest int // most acts on the way to any check, or to leaving the place
	Broken  []Counter
}

// Prove walks every situation that any sequence of needs, acts and answers can reach, under every truth about switch and
// meter, and looks for one in which a law of safety is broken. Each law is reported once, with its shortest counter-example.
func (r *Rules) Prove(steps Steps) Report {
	p := prover{r: r, steps: steps, parent: map[node]edge{}, broken: map[string]bool{}}
	for _, w := range []world{{live: true, meter: true}, {live: true}, {meter: true}, {}} {
		p.reach(node{Start(), w}, edge{})
	}
	needs := r.goals()
	for i := 0; i < len(p.queue); i++ {
		n := p.queue[i]
		for _, g := range needs {
			p.visit(n, g)
			p.way(n, g)
		}
		p.spread(n)
	}
	p.rep.States = len(p.queue)
	return p.rep
}

// goal is a need and what is asked when it is met.
type goal struct {
	need  Need
	check int // -1: the place is left or run
	name  string
}

// goals are all needs that a job can have.
func (r *Rules) goals() []goal {
	var out []goal
	for i := range r.m.Checks {
		out = append(out, goal{r.needs[i], i, "check " + r.m.Checks[i].ID})
	}
	for i := range r.m.Repairs {
		for j, s := range r.m.Repairs[i].Steps {
			out = append(out, goal{r.Work(s), -1, fmt.Sprintf("repair %s, step %d", r.m.Repairs[i].ID, j+1)})
		}
	}
	return append(out, goal{Leave(true), -1, "leave on"}, goal{Leave(false), -1, "leave off"}, goal{Run(), -1, "watch a cycle"})
}

type edge struct {
	from node
	line string
	n    int // depth
}

type prover struct {
	r      *Rules
	steps  Steps
	parent map[node]edge
	queue  []node
	broken map[string]bool
	rep    Report
}

func (p *prover) reach(n node, e edge) {
	if _, ok := p.parent[n]; !ok {
		p.parent[n] = e
		p.queue = append(p.queue, n)
	}
}

// fail reports a broken law once, with the way to it.
func (p *prover) fail(law string, n node, last string) {
	if p.broken[law] {
		return
	}
	p.broken[law] = true
	var path []string
	for e := p.parent[n]; e.n > 0; e = p.parent[e.from] {
		path = append([]string{e.line}, path...)
	}
	p.rep.Broken = append(p.rep.Broken, Counter{law, append(path, last)})
}

// spread follows what can happen without being asked for.
func (p *prover) spread(n node) {
	e := p.parent[n]
	for _, live := range []bool{false, true} {
		w := n.w
		w.live = live
		p.reach(node{n.s.Doubt(), w}, edge{n, "something happens: nothing is believed any more", e.n + 1})
	}
	if w := n.w; w.meter {
		w.meter = false
		p.reach(node{n.s, w}, edge{n, "the meter dies unnoticed", e.n + 1})
	}
}

// visit takes one step towards a goal in every way it can be answered.
func (p *prover) visit(n node, g goal) {
	p.rep.Steps++
	a, moving := p.steps.Next(n.s, g.need)
	if !moving {
		p.asked(n, g)
		return
	}
	line := "for " + g.name + ": " + p.r.words(a)
	p.act(n, g, a, line)
	depth := p.parent[n].n + 1
	for _, o := range a.Outcomes() {
		for _, w := range truths(a, o, n.w) {
			if o == Done {
				w.in = placed(w.in, a.Kind)
			}
			next := node{p.steps.Apply(n.s, a, o), w}
			e := edge{n, line + ": " + outcomeWords[o], depth}
			p.reach(next, e)
			if w.in.Has(inJumper) != (next.s.Jumper != 0) || w.in.Has(inMeter) != (next.s.Series != 0) || w.in.Has(inHeld) != next.s.Held {
				p.fail("it is not known any more that a jumper, a meter in line or a held switch is in place", n, e.line)
			}
		}
	}
}

var outcomeWords = [...]string{"done", "it shows the opposite", "something happens"}

// placed is what is really in place after an act was done.
func placed(in Set, k Kind) Set {
	switch k {
	case JumperIn:
		return in.With(inJumper)
	case JumperOut:
		return in.Without(inJumper)
	case MeterIn:
		return in.With(inMeter)
	case MeterOut:
		return in.Without(inMeter)
	case HoldDoor:
		return in.With(inHeld)
	case FreeDoor:
		return in.Without(inHeld)
	}
	return in
}

// truths are the worlds after an act was answered so; none when it cannot be answered so.
func truths(a Act, o Outcome, w world) []world {
	live, dead := w, w
	live.live, dead.live = true, false
	if o == Changed {
		return []world{live, dead}
	}
	shows := w.live && w.meter
	switch {
	case a.Zero() && (o == Done) == shows:
		return nil // zero is read exactly when nothing shows
	case a.Proof() && !a.Zero() && (o == Done) != w.meter:
		return nil // the live point shows exactly when the meter works
	case a.Kind == PowerOff:
		return []world{dead, live} // the wrong switch, or a welded one
	case a.Kind == PowerOn:
		return []world{live}
	}
	return []world{w}
}

// act holds the laws of acts.
func (p *prover) act(n node, g goal, a Act, line string) {
	s := n.s
	law := func(broken bool, what string) {
		if broken {
			p.fail(what, n, line)
		}
	}
	stated := s.Power == Off || s.Power == Proved
	switch a.Kind {
	case LiftWire, RefitWire, JumperIn, MeterIn:
		law(s.Power != Proved, "hands in although power is not off and proved")
		law(p.r.mains && n.w.live, "hands in although there is voltage")
	case HoldDoor, FreeDoor, JumperOut, MeterOut, PlaceLeads:
		law(!stated, "fingers inside although power is not off")
	case OpenCover, CloseCover:
		law(!stated && p.r.hazard[a.N], "a cover is moved although power is not off")
	case ProveLive, ProveLN, ProveLG, ProveNG, ProveAgain:
		law(s.Jack || s.Series != 0, "volts are measured with the lead in the current jack")
		law(s.Power != Off, "dead is proved although nothing was switched off")
		law(Kind(s.Proof) != a.Kind-ProveLive, "a reading of the proof of dead is left out")
	case PowerOn:
		law(!s.Wires.Minus(g.need.Wires).Empty(), "power is put on with a wire off that nobody needs off")
		law(s.Jack && s.Series == 0, "power is put on with the lead in the current jack")
		law(s.Held && !p.r.Held(g.need), "power is put on with the door switch held for nothing")
		law(s.Jumper != 0 && s.Jumper != g.need.Jumper, "power is put on with a jumper in for nothing")
		law(g.need.Shut && s.Open(), "power is put on although something is open")
		for _, c := range s.Covers.All() {
			law(p.r.trips[c] && !s.Held, "power is put on with an open door switch")
			law(!g.need.Covers.Has(c), "power is put on with a cover open that nobody needs open")
		}
	}
	if a.Kind == JumperIn {
		law(p.r.bridges(int(a.N)), "a safety device is bridged")
	}
	// What must not stay comes out before anything else.
	late := s.Jumper != 0 && s.Jumper != g.need.Jumper || s.Series != 0 && s.Series != g.need.Series || s.Held && !p.r.Held(g.need) || s.Jack && s.Series == 0
	law(late && !a.Removes() && a.Kind != PowerOff, "something else is asked while a jumper, a held switch or the current jack waits to be undone")
}

// asked holds the laws of checks, once the way to one is at its end.
func (p *prover) asked(n node, g goal) {
	s := n.s
	line := "for " + g.name + ": asked"
	law := func(broken bool, what string) {
		if broken {
			p.fail(what, n, line)
		}
	}
	law(g.need.Power == Dead && s.Power != Proved, "work that needs a proof of dead is begun without it")
	law(g.need.Power == Dead && p.r.mains && n.w.live, "work inside is begun although there is voltage")
	law(g.need.Power == Cut && s.Power != Off && s.Power != Proved, "something is asked that needs power off")
	law(g.need.Shut && s.Open(), "the place is left open")
	law(g.need.Power == Live && s.Power != On, "a live check is asked although power is not on")
	law(g.need.Power == Any && p.r.exposed(s) && s.Power != Off && s.Power != Proved, "something else is talked about beside an open cabinet that may be live")
	if g.check < 0 {
		return
	}
	c := &p.r.m.Checks[g.check]
	law(offOnly(c.Function) && s.Power != Proved, "ohms, beep or capacitance on what is not proved dead")
	law(offOnly(c.Function) && p.r.mains && n.w.live, "ohms, beep or capacitance although there is voltage")
	law(offOnly(c.Function) && (s.Jack || s.Series != 0), "ohms with the lead in the current jack")
	law(c.HandsIn && g.need.Power != Live && s.Power != Proved, "hands in although power is not off and proved")
	law(c.Function == measure.MicroampsDC && s.Series != int16(g.check+1), "current is read by a meter that is not in line")
	for _, o := range s.Covers.All() {
		law(s.Power == On && p.r.trips[o] && !s.Held, "a live check is asked behind an open door switch")
		law(s.Power == On && g.need.Power == Live && !g.need.Covers.Has(o), "a live check is asked with another cover open")
	}
	if ok, why := p.steps.Allowed(s, g.check); !ok {
		p.fail("the way to a check ends where it is not allowed", n, line+", but "+why)
	}
}

// way follows the hoped-for answers towards a goal: it is reached, and soon, and the place can be left.
func (p *prover) way(n node, g goal) {
	s := n.s
	for i := 0; ; i++ {
		a, ok := p.steps.Next(s, g.need)
		if !ok {
			if g.need.Shut && !s.Left() {
				p.fail("the place is left open", n, g.name)
			}
			p.rep.Longest = max(p.rep.Longest, i)
			return
		}
		if i > 100 {
			p.fail("there is no end on the way to a check or out of the place", n, g.name)
			return
		}
		s = p.steps.Apply(s, a, Done)
	}
}

// words names an act with what it is done to.
func (r *Rules) words(a Act) string {
	w := strings.ReplaceAll(a.Kind.String(), "-", " ")
	switch a.Kind {
	case OpenCover, CloseCover:
		return w + " " + r.m.Places[a.N].ID
	case LiftWire, RefitWire:
		return w + " " + r.m.Points[a.N].ID
	case JumperIn, JumperOut, MeterIn, MeterOut, PlaceLeads:
		return w + " for " + r.m.Checks[a.N].ID
	case NoteReset:
		return w + " " + r.m.Parts[a.N].ID
	}
	return w
}
