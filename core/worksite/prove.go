package worksite

import (
	"fmt"
	"math/bits"
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
// It is a set of the bits below.
type world uint8

const (
	live     world = 1 << iota // there is voltage where fingers would go
	meter                      // the meter shows what is there
	inJumper                   // a jumper is really in place
	inMeter                    // the meter is really in line
	inHeld                     // a door switch is really held
	worlds   = 1 << iota
)

func (w world) has(b world) bool { return w&b != 0 }

// node is one situation of the proof: a state by its number, and a truth.
type node struct {
	s int32
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
	p := prover{r: r, steps: steps, number: map[State]int32{}, broken: map[string]bool{}}
	for _, w := range []world{live | meter, live, meter, 0} {
		p.reach(Start(), w, edge{})
	}
	goals := r.goals()
	for i := 0; i < len(p.queue); i++ {
		s := p.queue[i]
		now := p.fresh[s]
		p.fresh[s] = 0
		if now == 0 {
			continue
		}
		for g := range goals {
			p.visit(s, now, &goals[g])
		}
		p.spread(s, now)
	}
	p.ways(goals)
	for _, m := range p.known {
		p.rep.States += bits.OnesCount32(m)
	}
	return p.rep
}

// goal is a need and what is asked when it is met.
type goal struct {
	need  Need
	check int // -1: the place is left or run
	name  string
}

// goals are all needs that a job can have. Checks that need the same and are measured alike stand for each other; where
// something is put in place for a check, two of a kind are walked, so that going from one to the other is.
func (r *Rules) goals() []goal {
	type class struct {
		n                  Need
		off, hands, inline bool
	}
	seen := map[class]int{}
	var out []goal
	add := func(n Need, check int, name string) {
		k := class{n: n}
		bound := n.Jumper|n.Series|n.Place != 0
		k.n.Jumper, k.n.Series, k.n.Place = min(n.Jumper, 1), min(n.Series, 1), min(n.Place, 1)
		if check >= 0 {
			c := &r.m.Checks[check]
			k.off, k.hands, k.inline = offOnly(c.Function), c.HandsIn, c.Function == measure.MicroampsDC
		}
		if seen[k] == 0 || bound && seen[k] == 1 {
			out = append(out, goal{n, check, name})
		}
		seen[k]++
	}
	for i := range r.m.Checks {
		add(r.needs[i], i, "check "+r.m.Checks[i].ID)
	}
	for i := range r.m.Repairs {
		for j, s := range r.m.Repairs[i].Steps {
			add(r.Work(s), -1, fmt.Sprintf("repair %s, step %d", r.m.Repairs[i].ID, j+1))
		}
	}
	add(Leave(true), -1, "leave on")
	add(Leave(false), -1, "leave off")
	add(Run(), -1, "watch a cycle")
	return out
}

// edge is how a node was reached first. Its words are made only when they are needed.
type edge struct {
	from node
	n    int   // depth
	goal *goal // nil: by nobody's asking
	a    Act
	o    Outcome
	text string
}

func (p *prover) line(e *edge) string {
	if e.goal == nil {
		return e.text
	}
	return "for " + e.goal.name + ": " + p.r.words(e.a) + ": " + outcomeWords[e.o]
}

type prover struct {
	r      *Rules
	steps  Steps
	number map[State]int32
	states []State
	known  []uint32 // by state: worlds reached
	fresh  []uint32 // by state: worlds not yet walked on from
	parent [][worlds]edge
	queue  []int32
	broken map[string]bool
	rep    Report
}

// reach notes that a state was reached under a truth, and how.
func (p *prover) reach(s State, w world, e edge) {
	n, ok := p.number[s]
	if !ok {
		n = int32(len(p.states))
		p.number[s] = n
		p.states = append(p.states, s)
		p.known, p.fresh = append(p.known, 0), append(p.fresh, 0)
		p.parent = append(p.parent, [worlds]edge{})
	}
	p.arrive(n, w, e)
}

func (p *prover) arrive(n int32, w world, e edge) {
	if p.known[n]>>w&1 != 0 {
		return
	}
	p.known[n] |= 1 << w
	if p.fresh[n] == 0 {
		p.queue = append(p.queue, n)
	}
	p.fresh[n] |= 1 << w
	p.parent[n][w] = e
}

// each yields the worlds of a set.
func each(set uint32, yield func(w world)) {
	for ; set != 0; set &= set - 1 {
		yield(world(bits.TrailingZeros32(set)))
	}
}

// fail reports a broken law once, with the way to it.
func (p *prover) fail(law string, n node, last string) {
	if p.broken[law] {
		return
	}
	p.broken[law] = true
	var path []string
	for e := &p.parent[n.s][n.w]; e.n > 0; e = &p.parent[e.from.s][e.from.w] {
		path = append([]string{p.line(e)}, path...)
	}
	p.rep.Broken = append(p.rep.Broken, Counter{law, append(path, last)})
}

// spread follows what can happen without being asked for.
func (p *prover) spread(s int32, now uint32) {
	doubt := p.states[s].Doubt()
	each(now, func(w world) {
		n := node{s, w}
		depth := p.parent[s][w].n + 1
		p.reach(doubt, w|live, edge{from: n, n: depth, text: "something happens: nothing is believed any more"})
		p.reach(doubt, w&^live, edge{from: n, n: depth, text: "something happens: nothing is believed any more"})
		p.arrive(s, w&^meter, edge{from: n, n: depth, text: "the meter dies unnoticed"})
	})
}

// visit takes one step towards a goal in every way it can be answered.
func (p *prover) visit(s int32, now uint32, g *goal) {
	p.rep.Steps++
	st := p.states[s]
	a, moving := p.steps.Next(st, g.need)
	if !moving {
		each(now, func(w world) { p.asked(st, node{s, w}, g) })
		return
	}
	each(now, func(w world) { p.act(st, node{s, w}, g, a) })
	for _, o := range a.Outcomes() {
		next := p.steps.Apply(st, a, o)
		each(now, func(w world) {
			e := edge{from: node{s, w}, n: p.parent[s][w].n + 1, goal: g, a: a, o: o}
			each(truths(a, o, w), func(w world) {
				if o == Done {
					w = placed(w, a.Kind)
				}
				p.reach(next, w, e)
				if w.has(inJumper) != (next.Jumper != 0) || w.has(inMeter) != (next.Series != 0) || w.has(inHeld) != next.Held {
					p.fail("it is not known any more that a jumper, a meter in line or a held switch is in place", e.from, p.line(&e))
				}
			})
		})
	}
}

var outcomeWords = [...]string{"done", "it shows the opposite", "something happens"}

// placed is what is really in place after an act was done.
func placed(w world, k Kind) world {
	switch k {
	case JumperIn:
		return w | inJumper
	case JumperOut:
		return w &^ inJumper
	case MeterIn:
		return w | inMeter
	case MeterOut:
		return w &^ inMeter
	case HoldDoor:
		return w | inHeld
	case FreeDoor:
		return w &^ inHeld
	}
	return w
}

// truths are the worlds after an act was answered so; none when it cannot be answered so.
func truths(a Act, o Outcome, w world) uint32 {
	either := uint32(1)<<(w|live) | 1<<(w&^live)
	shows := w.has(live) && w.has(meter)
	switch {
	case o == Changed:
		return either
	case a.Zero() && (o == Done) == shows:
		return 0 // zero is read exactly when nothing shows
	case a.Proof() && !a.Zero() && (o == Done) != w.has(meter):
		return 0 // the live point shows exactly when the meter works
	case a.Kind == PowerOff:
		return either // the wrong switch, or a welded one
	case a.Kind == PowerOn:
		return 1 << (w | live)
	}
	return 1 << w
}

// act holds the laws of acts.
func (p *prover) act(s State, n node, g *goal, a Act) {
	law := func(broken bool, what string) {
		if broken {
			p.fail(what, n, "for "+g.name+": "+p.r.words(a))
		}
	}
	stated := s.Power == Off || s.Power == Proved
	switch a.Kind {
	case LiftWire, RefitWire, JumperIn, MeterIn:
		law(s.Power != Proved, "hands in although power is not off and proved")
		law(p.r.mains && n.w.has(live), "hands in although there is voltage")
	case HoldDoor, FreeDoor, JumperOut, MeterOut, PlaceLeads:
		law(!stated, "fingers inside although power is not off")
	case OpenCover, CloseCover:
		law(!stated && p.r.hazard.Has(int(a.N)), "a cover is moved although power is not off")
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
		for c := range s.Covers.Each {
			law(p.r.trips.Has(c) && !s.Held, "power is put on with an open door switch")
			law(!g.need.Covers.Has(c) && p.hides(c), "power is put on with a cover open that nobody needs open")
		}
	}
	if a.Kind == JumperIn {
		law(p.r.bridges(int(a.N)), "a safety device is bridged")
	}
	// What must not stay comes out before anything else.
	late := s.Jumper != 0 && s.Jumper != g.need.Jumper || s.Series != 0 && s.Series != g.need.Series || s.Held && !p.r.Held(g.need) || s.Jack && s.Series == 0
	law(late && !a.Removes() && a.Kind != PowerOff, "something else is asked while a jumper, a held switch or the current jack waits to be undone")
}

// hides tells whether behind a cover is something that hurts, by the words of the file.
func (p *prover) hides(cover int) bool {
	pl := &p.r.m.Places[cover]
	return p.r.m.Mains && (pl.HandsIn || len(pl.Hazards) > 0) || len(pl.Trips) > 0
}

// asked holds the laws of checks, once the way to one is at its end.
func (p *prover) asked(s State, n node, g *goal) {
	law := func(broken bool, what string) {
		if broken {
			p.fail(what, n, "for "+g.name+": asked")
		}
	}
	law(g.need.Power == Dead && s.Power != Proved, "work that needs a proof of dead is begun without it")
	law(g.need.Power == Dead && p.r.mains && n.w.has(live), "work inside is begun although there is voltage")
	law(g.need.Power == Cut && s.Power != Off && s.Power != Proved, "something is asked that needs power off")
	law(g.need.Shut && s.Open(), "the place is left open")
	law(g.need.Power == Live && s.Power != On, "a live check is asked although power is not on")
	law(g.need.Power == Any && p.r.exposed(s) && s.Power != Off && s.Power != Proved, "something else is talked about beside an open cabinet that may be live")
	if g.check < 0 {
		return
	}
	c := &p.r.m.Checks[g.check]
	law(offOnly(c.Function) && s.Power != Proved, "ohms, beep or capacitance on what is not proved dead")
	law(offOnly(c.Function) && p.r.mains && n.w.has(live), "ohms, beep or capacitance although there is voltage")
	law(offOnly(c.Function) && (s.Jack || s.Series != 0), "ohms with the lead in the current jack")
	law(c.HandsIn && g.need.Power != Live && s.Power != Proved, "hands in although power is not off and proved")
	law(c.Function == measure.MicroampsDC && s.Series != int16(g.check+1), "current is read by a meter that is not in line")
	for o := range s.Covers.Each {
		law(s.Power == On && p.r.trips.Has(o) && !s.Held, "a live check is asked behind an open door switch")
		law(s.Power == On && g.need.Power == Live && !g.need.Covers.Has(o) && p.hides(o), "a live check is asked with another cover open")
	}
	if ok, why := p.steps.Allowed(s, g.check); !ok {
		p.fail("the way to a check ends where it is not allowed", n, "for "+g.name+": asked, but "+why)
	}
}

// ways follows the hoped-for answers from every state towards every goal: it is reached, and soon, and the place can be left.
func (p *prover) ways(goals []goal) {
	far := make([]int32, len(p.states)) // acts to the goal plus one, 0 where not known
	var path []int32
	for _, g := range goals {
		clear(far)
		for i := range p.states {
			at := int32(i)
			path = path[:0]
			for far[at] == 0 {
				s := p.states[at]
				a, ok := p.steps.Next(s, g.need)
				if !ok {
					if g.need.Shut && !s.Left() {
						p.fail("the place is left open", p.some(i), g.name)
					}
					far[at] = 1
					break
				}
				if path = append(path, at); len(path) > 100 {
					p.fail("there is no end on the way to a check or out of the place", p.some(i), g.name)
					return
				}
				at = p.number[p.steps.Apply(s, a, Done)]
			}
			d := far[at]
			for k := len(path) - 1; k >= 0; k-- {
				d++
				far[path[k]] = d
			}
			p.rep.Longest = max(p.rep.Longest, int(d)-1)
		}
	}
}

// some is a situation with that state.
func (p *prover) some(state int) node {
	return node{int32(state), world(bits.TrailingZeros32(p.known[state]))}
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
