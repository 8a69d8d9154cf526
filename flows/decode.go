package flows

import (
	"regexp"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/unit"
	"readback/core/vocab"
)

var kebab = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

func (l *loader) appliance(b *block) {
	l.m.ID = b.id()
	if l.m.ID != "" && !kebab.MatchString(l.m.ID) {
		l.at(b.DefRange(), "write small letters, digits and hyphens", "%q is not kebab-case", l.m.ID)
	}
	l.m.Title = b.needText("title")
	l.m.Fuel = b.word("fuel", "gas", "oil", "electric", "none")
	l.m.Mains = b.flag("mains")
	l.m.Starts = int(b.quantity("starts", unit.Count).Nominal)
	l.m.Relight = b.quantity("relight", unit.Duration)
	l.m.Earth = b.text("earth")
	if a := b.attr("earth"); a != nil {
		l.lookup(l.m.Earth, a.Expr.Range(), l.nets)
	}
	l.m.Dead = b.refs("dead", l.points)
	if a := b.attr("dead"); a != nil && len(l.m.Dead) != 3 {
		l.at(a.Expr.Range(), `dead = ["line-point", "neutral-point", "ground-point"]`, "dead is proved at three points: line, neutral, ground")
	}
	b.finish()
}

func (l *loader) source1(b *block) {
	l.m.Sources = append(l.m.Sources, appliance.Source{ID: b.id(), Text: b.needText("text")})
	b.finish()
}

func (l *loader) place(b *block) {
	p := appliance.Place{ID: b.id(), Name: b.needText("name"), Where: b.text("where"), Within: b.ref("within", l.places), Cover: b.flag("cover"),
		Open: b.quantity("open", unit.Duration), Close: b.quantity("close", unit.Duration), Trips: b.refs("trips", l.parts), HandsIn: b.flag("hands_in")}
	p.Hazards = l.words(b, "hazards", vocab.HazardIDs(true))
	if p.Cover && p.Open == (measure.Quantity{}) {
		l.at(b.DefRange(), `open = q("1 min", "source")`, "a cover needs the time to open it")
	}
	if p.Close == (measure.Quantity{}) {
		p.Close = p.Open
	}
	l.m.Places = append(l.m.Places, p)
	b.finish()
}

// words is a list whose members must be known.
func (l *loader) words(b *block, name string, known []string) []string {
	var out []string
	for _, e := range b.items(name) {
		s, ok := l.text(e)
		if !ok {
			continue
		}
		if !slices.Contains(known, s) {
			l.at(e.Range(), meant(s, known), "%s cannot be %q", name, s)
			continue
		}
		out = append(out, s)
	}
	return out
}

// declarePart registers a part, its modes, nets, outputs and what can be asked of it.
func (l *loader) declarePart(b *block) {
	id := b.id()
	l.declare(l.parts, id, b.DefRange())
	for _, m := range b.inner("mode") {
		if mid := m.id(); mid != "" {
			l.declare(l.modes, id+"."+mid, m.DefRange())
		}
	}
	for _, p := range b.object("ports") {
		l.useNet(p.value)
	}
	props := []string{"ok"}
	if k := appliance.KindOf(b.text("kind")); k != nil {
		l.partOf[id] = k
		for _, p := range k.Props {
			props = append(props, p.Name)
		}
		for _, p := range k.Params {
			if !slices.Contains(props, p.Name) && (!p.Optional || b.Body.Attributes[p.Name] != nil || p.Default != 0) {
				props = append(props, p.Name)
			}
		}
	}
	for _, p := range b.object("numbers") {
		props = append(props, p.key)
	}
	for _, o := range b.inner("output") {
		l.declare(l.outputs, o.id(), o.DefRange())
		props = append(props, o.id())
		l.useNetAttr(o, "from")
		l.useNetAttr(o, "to")
	}
	for _, in := range b.inner("input") {
		if slices.Contains(props, in.id()) {
			l.at(in.DefRange(), "", "%q already names something of %s", in.id(), id)
		}
		props = append(props, in.id())
		l.useNetAttr(in, "net")
		l.useNetAttr(in, "to")
	}
	l.props[id] = props
}

func (l *loader) useNetAttr(b *block, name string) {
	if a := b.attr(name); a != nil {
		l.useNet(a.Expr)
	}
}

func (l *loader) part(b *block) {
	id := b.id()
	p := appliance.Part{ID: id, Kind: b.needText("kind"), Name: b.needText("name"), Place: b.ref("place", l.places), Look: b.text("look"),
		Ports: map[string]string{}, Params: map[string]measure.Quantity{}, Exprs: map[string]*appliance.Expr{}, Words: map[string]string{},
		Safety: b.flag("safety"), Stop: b.ref("stop", l.stops)}
	index := len(l.m.Parts)
	k := appliance.KindOf(p.Kind)
	if k == nil {
		if p.Kind != "" {
			var names []string
			for _, k := range appliance.Kinds() {
				names = append(names, k.Name)
			}
			l.at(b.attr("kind").Expr.Range(), meant(p.Kind, names), "no kind %q", p.Kind)
		}
		l.m.Parts = append(l.m.Parts, p)
		return
	}
	l.ports(b, k, &p)
	for _, prm := range k.Params {
		a := b.attr(prm.Name)
		switch {
		case a != nil:
			p.Params[prm.Name] = b.quantity(prm.Name, prm.Dim)
		case !prm.Optional:
			l.at(b.DefRange(), "", "%s %s has no %s", k.Name, id, prm.Name)
		}
	}
	for _, n := range b.object("numbers") {
		if _, dup := p.Params[n.key]; dup || k.Param(n.key) != nil {
			l.at(n.where, "", "%s is a parameter of the kind: give it by itself", n.key)
			continue
		}
		if q, ok := l.quantity(n.value, ""); ok {
			p.Params[n.key] = q
		}
	}
	for _, e := range k.Exprs {
		if x := b.expr(e.Name); x != nil {
			p.Exprs[e.Name] = x
		}
	}
	for _, w := range k.Words {
		p.Words[w.Name] = b.word(w.Name, w.Values...)
	}
	for _, o := range b.inner("output") {
		p.Outputs = append(p.Outputs, appliance.Output{ID: o.id(), From: o.needText("from"), To: o.needText("to")})
		o.finish()
	}
	for _, in := range b.inner("input") {
		p.Inputs = append(p.Inputs, appliance.Input{ID: in.id(), Net: in.needText("net"), To: in.needText("to"),
			On: in.needQuantity("on", unit.Voltage), Ohms: in.needQuantity("ohms", unit.Resistance)})
		in.finish()
	}
	for _, mb := range b.inner("mode") {
		p.Modes = append(p.Modes, len(l.m.Modes))
		l.mode(mb, index, k, &p)
	}
	inner := []string{"mode"}
	if k.Controls {
		inner = []string{"mode", "output", "input"}
	}
	b.finish(inner...)
	l.m.Parts = append(l.m.Parts, p)
}

func (l *loader) ports(b *block, k *appliance.Kind, p *appliance.Part) {
	var known []string
	for _, prt := range k.Ports {
		known = append(known, prt.Name)
	}
	for _, pr := range b.object("ports") {
		if !slices.Contains(known, pr.key) {
			hint := meant(pr.key, known)
			if len(known) == 0 {
				hint = "it has none"
			}
			l.at(pr.where, hint, "%s has no port %q", article(k.Name), pr.key)
			continue
		}
		if s, ok := l.text(pr.value); ok {
			p.Ports[pr.key] = s
		}
	}
	given := len(p.Ports)
	for _, prt := range k.Ports {
		if _, ok := p.Ports[prt.Name]; !ok && !prt.Optional {
			l.at(b.DefRange(), "", "port %s of %s %s joins no net", prt.Name, k.Name, p.ID)
		}
	}
	if k.Pair && given == 1 {
		l.at(b.DefRange(), "give both or none", "one end of %s joins no net", p.ID)
	}
}

func (l *loader) mode(b *block, part int, k *appliance.Kind, p *appliance.Part) {
	m := appliance.Mode{Part: part, ID: b.id(), Full: p.ID + "." + b.id(), Name: b.needText("name"), Does: b.needText("does"),
		Params: map[string]measure.Quantity{}, Rate: b.needQuantity("rate", unit.Count), Repair: b.needRef("repair", l.repairs), Wrong: b.flag("wrong")}
	if m.Rate.Nominal <= 0 && b.attr("rate") != nil && m.Rate.Unit != "" {
		l.at(b.attr("rate").Expr.Range(), "", "a rate is above zero")
	}
	if a := b.attr("hidden"); a != nil {
		q := b.quantity("hidden", unit.Fraction)
		m.Hidden = q.Nominal
		if u, ok := unit.Lookup(q.Unit); ok {
			m.Hidden *= u.Scale
		}
		if m.Hidden < 0 || m.Hidden >= 1 {
			l.at(a.Expr.Range(), "", "hidden is a share of power cycles, below 100 %%")
		}
	}
	if e := k.Effect(m.Does); e == nil {
		if m.Does != "" {
			var names []string
			for _, e := range k.Effects {
				names = append(names, e.Name)
			}
			l.at(b.attr("does").Expr.Range(), meant(m.Does, names), "%s cannot do %q", article(k.Name), m.Does)
		}
		l.m.Modes = append(l.m.Modes, m)
		return
	} else {
		l.effect(b, k, e, p, &m)
	}
	b.finish()
	l.m.Modes = append(l.m.Modes, m)
}

func (l *loader) effect(b *block, k *appliance.Kind, e *appliance.Effect, p *appliance.Part, m *appliance.Mode) {
	for _, prm := range e.Params {
		a := b.attr(prm.Name)
		if a == nil && !prm.Optional {
			l.at(b.DefRange(), "", "%q needs %s", e.Name, prm.Name)
		}
		if a != nil {
			m.Params[prm.Name] = b.quantity(prm.Name, prm.Dim)
		}
	}
	if e.Name == "set" {
		for name, q := range p.Params {
			dim := unit.Dim("")
			if prm := k.Param(name); prm != nil {
				dim = prm.Dim
			}
			if a := b.attr(name); a != nil {
				m.Params[name] = b.quantity(name, dim)
				if got, want := m.Params[name].Unit, q.Unit; dim == "" && got != "" && want != "" && got != want {
					l.at(a.Expr.Range(), "", "%s is in %s, here it is in %s", name, want, got)
				}
			}
		}
		slices.Sort(b.asked) // the parameters came from a map: suggestions must not depend on its order
		if len(m.Params) == 0 {
			l.at(b.DefRange(), "give at least one parameter of the part its other value", "%q sets nothing", m.Full)
		}
	}
	if e.To {
		m.To = b.needText("to")
		if m.To != "" {
			l.lookup(m.To, b.attr("to").Expr.Range(), l.nets)
		}
	}
	if e.At == "" {
		return
	}
	var known []string
	switch e.At {
	case "output":
		for _, o := range p.Outputs {
			known = append(known, o.ID)
		}
	case "input":
		for _, in := range p.Inputs {
			known = append(known, in.ID)
		}
	case "conductor":
		known = []string{"1", "2"}
	case "port":
		for _, prt := range k.Ports {
			known = append(known, prt.Name)
		}
	}
	if e.At == "port" && b.attr("at") == nil {
		m.At = known[0]
		return
	}
	if m.At = b.needText("at"); m.At != "" && !slices.Contains(known, m.At) {
		l.at(b.attr("at").Expr.Range(), meant(m.At, known), "%s has no %s %q", p.ID, e.At, m.At)
	}
}

func (l *loader) signal(b *block) {
	s := appliance.Signal{ID: b.id(), Unit: l.unit(b, true), Tol: b.quantity("tol", unit.Fraction)}
	if b.need("is") != nil {
		s.Is = b.expr("is")
	}
	l.m.Signals = append(l.m.Signals, s)
	b.finish()
}

func (l *loader) unit(b *block, needed bool) string {
	a := b.attr("unit")
	if a == nil {
		if needed {
			l.at(b.DefRange(), "", "%s %s has no unit", b.Type, b.id())
		}
		return ""
	}
	s, ok := l.text(a.Expr)
	if _, known := unit.Lookup(s); ok && !known {
		l.at(a.Expr.Range(), meant(s, unitIDs()), "no unit %q", s)
	}
	return s
}

func (l *loader) control(b *block) {
	c := appliance.Control{ID: b.id(), Part: b.ref("part", l.parts)}
	if a := b.attr("tries"); a != nil {
		f, ok := l.number(a.Expr)
		if c.Tries = int(f); ok && (f != float64(c.Tries) || f < 0 || f > 100) {
			l.at(a.Expr.Range(), "", "tries is a small whole number")
		}
	}
	if c.Part >= 0 && l.partOf[l.parts.ids[c.Part]] != nil && !l.partOf[l.parts.ids[c.Part]].Controls {
		l.at(b.attr("part").Expr.Range(), "", "%s is no board", l.parts.ids[c.Part])
	}
	if len(l.m.Controls) > 0 {
		l.at(b.DefRange(), "describe one sequence; other controls are parts with expressions", "a second control")
	}
	for _, sb := range b.inner("step") {
		c.Steps = append(c.Steps, l.step(sb))
	}
	if len(c.Steps) == 0 {
		l.at(b.DefRange(), "", "control %s has no steps", c.ID)
	}
	b.finish("step")
	l.m.Controls = append(l.m.Controls, c)
}

func (l *loader) step(b *block) appliance.Step {
	s := appliance.Step{ID: b.id(), Needs: b.expr("needs"), Within: b.quantity("within", unit.Duration),
		Purge: b.quantity("purge", unit.Duration), Takes: b.quantity("takes", unit.Duration), Code: b.text("code"), Side: b.flag("side")}
	for _, e := range b.items("drive") {
		if d, ok := l.text(e); ok {
			l.lookup(d, e.Range(), l.outputs)
			s.Drive = append(s.Drive, d)
		}
	}
	b.attr("drive")
	for _, e := range b.items("may") {
		if d, ok := l.text(e); ok {
			l.lookup(d, e.Range(), l.outputs)
			s.May = append(s.May, d)
		}
	}
	b.attr("may")
	if a := b.attr("on_fail"); a != nil {
		s.OnFail = b.text("on_fail")
		known := append([]string{"retry", "lockout", "wait"}, l.steps.ids...)
		if !slices.Contains(known, s.OnFail) {
			l.at(a.Expr.Range(), meant(s.OnFail, known), "on_fail cannot be %q", s.OnFail)
		}
	} else if s.Needs != nil && !s.Side {
		l.at(b.DefRange(), "retry, lockout, wait or a side step", "step %s says what it needs, not what happens without", s.ID)
	}
	b.finish()
	return s
}

func (l *loader) point(b *block) {
	p := appliance.Point{ID: b.id(), Net: b.needText("net"), Place: b.ref("place", l.places), Name: b.needText("name"), Where: b.text("where")}
	if a := b.attr("net"); a != nil && p.Net != "" {
		l.netOrPort(p.Net, a.Expr.Range())
	}
	l.m.Points = append(l.m.Points, p)
	b.finish()
}

// isPort tells whether a net's name is a part's port.
func (l *loader) isPort(s string) bool {
	part, _, dotted := strings.Cut(s, ".")
	_, whole := l.nets.index[s]
	return dotted && !whole && l.partOf[part] != nil
}

// netOrPort holds a name to a net, or to part.port.
func (l *loader) netOrPort(s string, where hcl.Range) {
	if _, ok := l.nets.index[s]; ok {
		return
	}
	part, port, dotted := strings.Cut(s, ".")
	k := l.partOf[part]
	if !dotted || k == nil {
		l.at(where, meant(s, l.nets.ids), "no net %q", s)
		return
	}
	var known []string
	for _, p := range k.Ports {
		known = append(known, p.Name)
	}
	if !slices.Contains(known, port) {
		l.at(where, meant(port, known), "%s has no port %q", article(k.Name), port)
	}
}

func (l *loader) plate(b *block) {
	p := appliance.PlateField{ID: b.id(), Name: b.needText("name"), Unit: l.unit(b, false), Ask: b.needText("ask"), Sets: b.text("sets"), Match: b.flag("match")}
	if a := b.attr("possible"); a != nil {
		if p.Unit == "" {
			l.at(a.Expr.Range(), "", "possible needs a unit")
		}
		p.Possible = l.limit(a.Expr, p.Unit)
	}
	p.Usual, p.Places = b.quantity("usual", ""), b.refs("places", l.places)
	if q := p.Usual; q.Unit != "" && q.Unit != p.Unit {
		l.at(b.attr("usual").Expr.Range(), "", "%s is in %s, its usual value in %s", p.ID, p.Unit, q.Unit)
	}
	if a := b.attr("sets"); a != nil {
		part, prm, _ := strings.Cut(p.Sets, ".")
		if !slices.Contains(l.props[part], prm) {
			l.at(a.Expr.Range(), meant(part, l.parts.ids), "no parameter %q", p.Sets)
		}
	}
	l.m.Plate = append(l.m.Plate, p)
	b.finish()
}

func (l *loader) lamp(b *block) {
	l.m.Lamps = append(l.m.Lamps, appliance.Lamp{ID: b.id(), Means: b.needText("means"), When: b.expr("when"), Source: b.needText("source")})
	b.finish()
}

func (l *loader) stop(b *block) {
	l.m.Stops = append(l.m.Stops, appliance.StopLine{ID: b.id(), Say: b.needText("say"), Call: b.needText("call"), Tell: b.needText("tell"), Now: b.needText("now")})
	b.finish()
}

func (l *loader) caution(b *block) {
	c := appliance.Caution{Hazard: b.id(), Level: b.word("level", "caution", "warning", "danger"), Say: b.texts("say")}
	if len(c.Say) == 0 {
		l.at(b.DefRange(), "", "caution %s says nothing", c.Hazard)
	}
	l.m.Cautions = append(l.m.Cautions, c)
	b.finish()
}

// facts are those that something reads: what help costs where the person does not say (core/plan).
var facts = []string{appliance.CallOut}

func (l *loader) fact(b *block) {
	if id := b.id(); id != "" && !slices.Contains(facts, id) {
		l.at(b.DefRange(), meant(id, facts), "nothing reads a fact %q", id)
	}
	l.m.Facts = append(l.m.Facts, appliance.Fact{ID: b.id(), Quantity: b.needQuantity("value", "")})
	b.finish()
}

// accept declares warnings of the checker that stand, with the reason.
func (l *loader) accept(b *block) {
	if b.needText("why") == "" {
		return
	}
	for _, e := range b.items("warnings") {
		if s, ok := l.text(e); ok && s != "" {
			l.accepted = append(l.accepted, acceptance{s, e.Range()})
		}
	}
	if b.attr("warnings") == nil {
		l.at(b.DefRange(), `warnings = ["check … shows"]`, "no warning is accepted")
	}
	b.finish()
}

// acceptance is the beginning of the text of a warning that is accepted.
type acceptance struct {
	text  string
	where hcl.Range
}

// takeAccepted drops the warnings that the file accepts. One that no longer comes is a warning itself.
func (l *loader) takeAccepted() {
	for _, a := range l.accepted {
		n := len(l.probs)
		l.probs = slices.DeleteFunc(l.probs, func(p Problem) bool { return p.Warning && strings.HasPrefix(p.Text, a.text) })
		if len(l.probs) == n && a.where.Filename == l.name { // an assembly is used by many
			l.warn(a.where, "take it out", "nothing to accept: %q", a.text)
		}
	}
}
