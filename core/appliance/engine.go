package appliance

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"readback/core/measure"
)

// Engine simulates one appliance. It is immutable after [Compile]; goroutines may share it.
type Engine struct {
	m            *Model
	datum        string
	nodes        map[string]int32
	nodeNames    []string
	branches     []branch
	lifts        map[string]int32 // "part.port" → slot that opens its lifted end
	liftable     map[string]bool
	pressed      map[int]int32 // part → slot: its cover presses it
	pressedSlots []int32
	jumps        []int32 // per check: slot of its jumper, -1
	red          []int32 // per check: node of each lead
	black        []int32
	reads        []int32 // per check: slot of what an instrument reads, -1
	readTol      []float64
	healthy      []float64 // per check: what it shows when nothing is wrong, in its unit; 0 while that is being worked out
	dials        []dial
	atStep       []int                    // per check: index of its step, -1
	whens        [][]func(*state) float64 // per check, per option
	lampWhen     []func(*state) float64
	lampCode     map[string]int
	lampOff      int

	init       []float64  // slots of the healthy appliance
	tol        []float64  // relative half-width of a slot's value
	severities []Severity // per mode
	modeSlot, driveSlot,
	powerSlot, callSlot int32
	ops      [][]func(*config) // per mode
	fixes    []func(*config)
	latches  []latch
	order    []calc // in the order they are worked out
	extra    []calc // of what only a plant is asked
	names    map[string]int32
	gated    []int32 // branches with a gate
	dcEmfs   []int32 // branches with a d.c. e.m.f.
	acEmfs   []int32
	loose    []int32   // branches whose ohms or e.m.f. have a spread worth counting
	ratioTol []float64 // per branch: relative half-width of a transformer ratio
	needs    []int32   // slots worked out besides those that branches, checks and steps read
	steps    []stepCode
	lockStep int // side step of lock-out, -1: nothing is driven
	board    int // part of the control, -1
	alive    int32

	partIndex, signalIndex, modeIndex, stepIndex, driveIndex map[string]int

	pat     *pattern
	base    config // healthy
	inOrder []group
}

type stepCode struct {
	needs func(*state) float64
	drive []int32
	may   []int32
	fail  int // side step entered on failure, -1: stays, -2: retry, -3: lock-out
	code  string
	lamp  int
	side  bool
}

// Compile makes an engine. The error says which part, mode or line of the model it cannot understand.
func Compile(m *Model) (*Engine, error) { return compile(m, nil) }

func compile(m *Model, jumps []jump) (*Engine, error) {
	e := &Engine{m: m, nodes: map[string]int32{}, lifts: map[string]int32{}, liftable: map[string]bool{}, pressed: map[int]int32{},
		partIndex: map[string]int{}, signalIndex: map[string]int{}, modeIndex: map[string]int{}, stepIndex: map[string]int{}, driveIndex: map[string]int{},
		board: -1, alive: -1, lockStep: -1}
	b := &builder{Engine: e, byName: map[string]int32{}, calcs: map[int32]*calc{}, walked: map[int32]bool{}, built: make([]built, len(m.Parts))}
	b.index()
	if b.err != nil {
		return nil, b.err
	}
	for i := range m.Parts {
		b.part(i)
	}
	if b.err != nil {
		return nil, b.err
	}
	for i := range m.Checks {
		b.jumper(&m.Checks[i])
	}
	for _, j := range jumps {
		b.testJumper(j)
	}
	for _, f := range b.later {
		f()
	}
	for _, f := range b.lampsAndSteps() {
		f()
	}
	for i := range m.Checks {
		b.check(&m.Checks[i])
	}
	if b.err != nil {
		return nil, b.err
	}
	b.arrange()
	b.rest()
	e.spreads()
	e.pat = newPattern(len(e.nodeNames), e.branches)
	e.base = *e.newConfig()
	e.base.build(e, nil)
	all := make([]int, len(m.Checks))
	for i := range all {
		all[i] = i
	}
	e.inOrder = e.groups(all)
	e.healthy = make([]float64, len(m.Checks))
	if b.err == nil {
		out := make([]Outcome, len(m.Checks))
		e.newSim().all(nil, out)
		for i, o := range out {
			e.healthy[i] = o.Value
		}
	}
	return e, b.err
}

// Model returns what the engine was compiled from.
func (e *Engine) Model() *Model { return e.m }

func (b *builder) index() {
	m := b.m
	if len(m.Controls) > 1 {
		b.fail("%d controls where one is the most", len(m.Controls))
	}
	for i := range m.Parts {
		b.partIndex[m.Parts[i].ID] = i
	}
	for i := range m.Signals {
		b.signalIndex[m.Signals[i].ID] = i
	}
	b.severities = make([]Severity, len(m.Modes))
	for i := range b.severities {
		b.severities[i] = Severity{Least: 1, Low: 1, High: 1, Most: 1}
	}
	b.modeSlot = int32(len(b.init))
	for i := range m.Modes {
		b.modeIndex[m.Modes[i].Full] = i
		b.slot(0)
	}
	b.ops = make([][]func(*config), len(m.Modes))
	b.powerSlot, b.callSlot = b.named("power", 1), b.named("call", 1)
	for _, c := range m.Controls {
		b.board = c.Part
		for i, s := range c.Steps {
			b.stepIndex[s.ID] = i
		}
		if c.Part < 0 {
			for _, s := range c.Steps {
				for _, d := range s.Drive {
					if _, ok := b.driveIndex[d]; !ok {
						b.driveIndex[d] = len(b.driveIndex)
					}
				}
			}
		}
	}
	for i := range m.Parts {
		for _, o := range m.Parts[i].Outputs {
			b.driveIndex[o.ID] = len(b.driveIndex)
		}
	}
	b.driveSlot = int32(len(b.init))
	for range b.driveIndex {
		b.slot(0)
	}
	for _, p := range m.Places {
		for _, t := range p.Trips {
			if t < 0 || t >= len(m.Parts) {
				b.fail("place %s trips no part", p.ID)
				return
			}
			if _, ok := b.pressed[t]; !ok {
				b.pressed[t] = b.slot(1)
				b.pressedSlots = append(b.pressedSlots, b.pressed[t])
			}
		}
	}
	for _, p := range m.Points {
		part, port, ok := strings.Cut(p.Net, ".")
		if i, known := b.partIndex[part]; ok && known && m.Parts[i].Ports[port] != "" {
			b.liftable[p.Net] = true
		}
	}
	b.datum = m.Earth
	if b.datum == "" {
		b.datum = m.ReturnNet()
	}
}

func (b *builder) jumper(c *Check) {
	if len(c.Jump) != 2 {
		b.jumps = append(b.jumps, -1)
		return
	}
	s := b.slot(0)
	x, y := b.point(b.m.Points[c.Jump[0]].Net), b.point(b.m.Points[c.Jump[1]].Net)
	if x != y {
		b.bridge(-1, x, y, closedOhms, 0, s, "jumper "+c.ID)
	}
	b.jumps = append(b.jumps, s)
}

// testJumper joins two nets of a plant.
func (b *builder) testJumper(j jump) {
	n := len(b.nodeNames)
	x, y := b.point(j.a), b.point(j.b)
	if len(b.nodeNames) > n {
		b.fail("a jumper from %q to %q: no such net", j.a, j.b)
		return
	}
	if x != y {
		b.bridge(-1, x, y, closedOhms, 0, -1, "jumper")
	}
}

// rest works out how to answer what nobody asked at compile time: every signal and property, for a plant.
func (b *builder) rest() {
	for i := range b.m.Signals {
		b.lookup(b.m.Signals[i].ID, 0)
	}
	for i := range b.m.Parts {
		p := &b.m.Parts[i]
		for _, x := range KindOf(p.Kind).Props {
			if x.given != nil && !x.given(&b.built[i]) {
				continue
			}
			b.prop(i, x.Name, 0)
		}
		b.prop(i, "ok", 0)
		for _, o := range p.Outputs {
			b.prop(i, o.ID, 0)
		}
		for _, in := range p.Inputs {
			b.prop(i, in.ID, 0)
		}
	}
	hot := b.order
	b.order = nil
	names := make([]string, 0, len(b.byName))
	for name := range b.byName {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		b.walk(b.byName[name])
	}
	b.extra, b.order = b.order, hot
	b.names = b.byName
}

// netOf is the net that a terminal "part.port" is on.
func (e *Engine) netOf(name string) (string, bool) {
	part, port, ok := strings.Cut(name, ".")
	i, known := e.partIndex[part]
	if !ok || !known {
		return "", false
	}
	net := e.m.Parts[i].Ports[port]
	return net, net != ""
}

// lampsAndSteps compiles the control. It is called when every net is known.
func (b *builder) lampsAndSteps() []func() {
	m := b.m
	b.lampCode, b.lampOff = map[string]int{}, -1
	for i := range m.Lamps {
		b.lampCode[m.Lamps[i].ID] = i
		if m.Lamps[i].ID == "off" {
			b.lampOff = i
		}
	}
	if b.board >= 0 {
		b.alive = b.built[b.board].gate
	}
	var fs []func()
	for i := range m.Lamps {
		fs = append(fs, func() {
			var fn func(*state) float64
			if e := m.Lamps[i].When; e != nil {
				var deps []int32
				fn, deps = b.expr(e)
				b.needs = append(b.needs, deps...)
			}
			b.lampWhen = append(b.lampWhen, fn)
		})
	}
	for _, c := range m.Controls {
		for _, st := range c.Steps {
			fs = append(fs, func() { b.step(&c, &st) })
		}
	}
	return fs
}

func (b *builder) step(c *Control, st *Step) {
	sc := stepCode{side: st.Side, code: st.Code, lamp: -1, fail: -1}
	if i, ok := b.lampCode[st.Code]; ok && st.Code != "" {
		sc.lamp = i
	}
	for k, list := range [2][]string{st.Drive, st.May} {
		for _, d := range list {
			i, ok := b.driveIndex[d]
			if !ok {
				b.fail("step %s drives no output %q", st.ID, d)
				return
			}
			if k == 0 {
				sc.drive = append(sc.drive, b.driveSlot+int32(i))
			} else {
				sc.may = append(sc.may, b.driveSlot+int32(i))
			}
		}
	}
	switch st.OnFail {
	case "", "wait":
	case "retry":
		sc.fail = failRetry
	case "lockout":
		sc.fail = failLock
	default:
		i, ok := b.stepIndex[st.OnFail]
		if !ok {
			b.fail("step %s fails to no step %q", st.ID, st.OnFail)
			return
		}
		sc.fail = i
	}
	if st.Needs != nil {
		fn, deps := b.expr(st.Needs)
		sc.needs = fn
		b.needs = append(b.needs, deps...)
	}
	if st.ID == "lock-out" {
		b.lockStep = len(b.steps)
	}
	b.steps = append(b.steps, sc)
}

// What becomes of a failed step, besides a side step's index.
const (
	failWait  = -1
	failRetry = -2
	failLock  = -3
)

// check compiles what a check looks at.
func (b *builder) check(c *Check) {
	red, black, reads, tol, from := int32(-1), int32(-1), int32(-1), 0.0, ""
	point := func(i int) int32 {
		if i < 0 || i >= len(b.m.Points) {
			return -1
		}
		n := len(b.nodeNames)
		node := b.point(b.m.Points[i].Net)
		if len(b.nodeNames) > n {
			b.fail("point %s lies on no net", b.m.Points[i].ID)
		}
		return node
	}
	red, black = point(c.Red), point(c.Black)
	read := func(part int, prop string) {
		if part < 0 || part >= len(b.m.Parts) {
			b.fail("check %s measures no part", c.ID)
			return
		}
		reads = b.prop(part, prop, 0)
		b.needs = append(b.needs, reads)
	}
	switch c.Function {
	case measure.VoltsAC, measure.VoltsDC, measure.MillivoltDC:
		from = "V"
	case measure.Ohms:
		from = "ohm"
	case measure.Capacitance:
		read(c.Part, "microfarads_now")
		from = "uF"
		if c.Part >= 0 && b.err == nil {
			tol = b.spread(c.Part, "microfarads_now")
		}
	case measure.MicroampsDC:
		read(c.Part, "microamps_now")
		from, tol = "uA", unknownTol
		if c.Part >= 0 {
			for i := range b.m.Parts {
				tol = max(tol, b.spread(i, "microamps_now"))
			}
		}
	case measure.AmpsAC:
		from = "A"
		part, _ := strings.CutPrefix(c.Quantity, "amps:")
		i, ok := b.partIndex[part]
		if !ok {
			b.fail("check %s clamps no part %q", c.ID, part)
			break
		}
		read(i, "amps")
		tol = unknownTol
		tol = max(tol, b.spread(i, "amps"))
	default:
		if i, ok := b.signalIndex[c.Quantity]; ok && c.Quantity != "" {
			reads = b.lookup(c.Quantity, 0)
			from = b.m.Signals[i].Unit
			b.needs = append(b.needs, reads)
			tol = unknownTol
			if q := b.m.Signals[i].Tol; q.Unit != "" {
				x, _, err := convert(q, "%")
				if err != nil {
					b.fail("signal %s: %w", c.Quantity, err)
				}
				tol = x / 100
			}
		}
	}
	var whens []func(*state) float64
	for _, o := range c.Options {
		var fn func(*state) float64
		if o.When != nil {
			var deps []int32
			fn, deps = b.expr(o.When)
			b.needs = append(b.needs, deps...)
		}
		whens = append(whens, fn)
	}
	at, ok := b.stepIndex[c.At]
	if !ok {
		if at = -1; c.At != "" {
			b.fail("check %s is done at no step %q", c.ID, c.At)
		}
	}
	b.atStep, b.dials = append(b.atStep, at), append(b.dials, dialOf(from, c.Unit))
	b.red, b.black = append(b.red, red), append(b.black, black)
	b.reads, b.readTol, b.whens = append(b.reads, reads), append(b.readTol, tol), append(b.whens, whens)
}

// walk puts the calculation of a slot after those it reads.
func (b *builder) walk(s int32) {
	if b.walked[s] {
		return
	}
	b.walked[s] = true
	c, ok := b.calcs[s]
	if !ok {
		return
	}
	for _, d := range c.deps {
		b.walk(d)
	}
	b.order = append(b.order, *c)
}

// arrange orders the calculations so that each comes after what it reads, as far as there is no circle.
func (b *builder) arrange() {
	walk := b.walk
	for i := range b.branches {
		br := &b.branches[i]
		if br.gate >= 0 {
			walk(br.gate)
			b.gated = append(b.gated, int32(i))
		}
		if br.dcEmf >= 0 {
			walk(br.dcEmf)
			b.dcEmfs = append(b.dcEmfs, int32(i))
		}
		if br.acEmf >= 0 {
			b.acEmfs = append(b.acEmfs, int32(i))
		}
	}
	for _, s := range b.needs {
		walk(s)
	}
}

// spreads lists the branches whose tolerance moves readings: not wires and contacts ([Kind.Spreads]).
func (e *Engine) spreads() {
	e.ratioTol = make([]float64, len(e.branches))
	for i := range e.branches {
		br := &e.branches[i]
		small := 2 * shortOhms
		if br.part >= 0 && KindOf(e.m.Parts[br.part].Kind).Spreads {
			small = 0
		}
		has := func(slot int32) bool { return slot >= 0 && e.tol[slot] > 0 && e.init[slot] > small }
		emf := func(slot int32) bool { return slot >= 0 && e.tol[slot] > 0 }
		if br.n == 4 {
			q := e.m.Parts[br.part].Params["secondary"]
			if _, half, err := convert(q, "V"); err == nil && q.Low != q.High {
				e.ratioTol[i] = half / q.Nominal
			}
		}
		if br.n == 4 || has(br.ac) || has(br.dc) || emf(br.acEmf) || emf(br.dcEmf) {
			e.loose = append(e.loose, int32(i))
		}
	}
}

var errHypothesis = errors.New("appliance: no such mode")

// valid refuses mode indices that are not in the model.
func (e *Engine) valid(modes []int) error {
	for _, m := range modes {
		if m < 0 || m >= len(e.m.Modes)*(3+Grades) || m/max(1, len(e.m.Modes)) == 1 {
			return fmt.Errorf("%w: %d of %d", errHypothesis, m, len(e.m.Modes))
		}
	}
	return nil
}

// config is a hypothesis: what its modes make of the numbers and the branches.
type config struct {
	modes  []int
	val    []float64
	series []float64
	force  []int8
	coef   [][4]float64
	ac, dc []float64 // conductance of each branch when it conducts, S
	hash   key

	// How much smaller and larger than its nominal value what a mode changes by a factor can be: 1 and 1 for sure. No blocked vent is as
	// blocked as the next.
	factor sizes
	// The same of a resistance that a mode puts in series: no loose screw is as loose as the next.
	ohms sizes

	tol    []float64
	graded []graded // modes whose severity the hypothesis names
	sharp  []int32  // slots whose spread is that of a severity, and that is named
}

// sizes is how much smaller and larger than its nominal value something can be, as factors.
type sizes struct{ low, high float64 }

// widen takes in how a mode is spread.
func (s *sizes) widen(v Severity) {
	s.low, s.high = min(s.low, v.Low), max(s.high, v.High)
}

func (e *Engine) newConfig() *config {
	n := len(e.branches)
	return &config{tol: e.tol, val: make([]float64, len(e.init)), series: make([]float64, n), force: make([]int8, n), coef: make([][4]float64, n),
		ac: make([]float64, n), dc: make([]float64, n)}
}

// build makes c the configuration of these modes.
func (c *config) build(e *Engine, modes []int) {
	c.modes, c.graded, c.sharp = c.modes[:0], c.graded[:0], c.sharp[:0]
	for _, m := range modes {
		mode, ratio, is := e.gradeOf(m)
		c.modes = append(c.modes, mode)
		if is {
			c.graded = append(c.graded, graded{mode, ratio})
		}
	}
	copy(c.val, e.init)
	clear(c.series)
	clear(c.force)
	c.factor, c.ohms = sizes{1, 1}, sizes{1, 1}
	for i := range e.branches {
		c.coef[i] = e.branches[i].coef
	}
	for _, m := range c.modes {
		c.val[e.modeSlot+int32(m)] = 1
		for _, op := range e.ops[m] {
			op(c)
		}
	}
	for _, fix := range e.fixes {
		fix(c)
	}
	for i := range e.branches {
		br := &e.branches[i]
		c.ac[i], c.dc[i] = 0, 0
		if br.ac >= 0 {
			c.ac[i] = 1 / (max(c.val[br.ac], leastOhms) + c.series[i])
		}
		if br.dc >= 0 {
			c.dc[i] = 1 / (max(c.val[br.dc], leastOhms) + c.series[i])
		}
	}
	c.hashAll(e)
	for _, g := range c.graded { // its readings are not widened: it must not share those of a network that looks alike
		c.hash.mix(g.mode+4*len(c.ac), g.ratio, 1)
	}
}

// sorted returns the modes in rising order without doubles: a hypothesis is a set.
func sorted(modes []int) []int {
	out := slices.Clone(modes)
	slices.Sort(out)
	return slices.Compact(out)
}

// Stats says how large the compiled network is.
func (e *Engine) Stats() (s struct{ Nets, Branches, Fill, Slots, Situations int }) {
	s.Nets, s.Branches, s.Fill, s.Slots, s.Situations = len(e.nodeNames), len(e.branches), len(e.pat.row), len(e.init), len(e.inOrder)
	return s
}
