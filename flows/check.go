package flows

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
)

// stages are those that a check may belong to.
var stages = vocab.StageIDs(func(s vocab.Stage) bool { return s.Checks })

func (l *loader) check(b *block) {
	c := appliance.Check{ID: b.id(), Stage: b.word("stage", stages...), Name: b.needText("name"),
		Red: b.ref("red", l.points), Black: b.ref("black", l.points), Part: b.ref("part", l.parts), Quantity: b.text("quantity"),
		Power: b.word("power", "any", "on", "off"), Call: b.word("call", "any", "on", "off"), Window: b.flag("window"),
		Places: b.refs("places", l.places), Lift: b.refs("lift", l.points), HandsIn: b.flag("hands_in"),
		Hazard: b.word("hazard", append([]string{"none"}, vocab.HazardIDs(true)...)...), Instead: b.ref("instead", l.checks),
		Minutes: b.needQuantity("minutes", unit.Duration), Ask: b.text("ask"), Act: b.text("act"), Caution: b.text("caution"),
		Skill: b.word("skill", "clear", "ambiguous", "skilled"), Repeat: b.flag("repeat"), Must: b.flag("must"), Fit: b.text("fit"), Licensed: b.word("who", "anyone", "licensed") == "licensed",
		Jump: b.refs("jump", l.points), Event: b.text("event"), Before: b.wordsOf("before", "power-on", "call-on")}
	index := len(l.m.Checks)
	if b.attr("hold") != nil {
		c.Hold = b.word("hold", "held", "free")
	}
	if a := b.attr("at"); a != nil {
		if i := l.ref(a.Expr, l.steps); i >= 0 {
			c.At = l.steps.ids[i]
		}
	}
	if a := b.attr("jump"); a != nil && len(c.Jump) != 2 {
		l.at(a.Expr.Range(), `jump = ["point-a", "point-b"]`, "a jumper joins two points")
		c.Jump = nil
	}
	for _, e := range b.items("lift") {
		if s, ok := l.text(e); ok {
			if i, known := l.points.index[s]; known && i < len(l.m.Points) && !l.isPort(l.m.Points[i].Net) {
				l.at(e.Range(), `give the point net = "part.port"`, "point %s is a whole net: it has no wire to lift", s)
			}
		}
	}
	l.wordsOf(b, c.ID, "act", "caution", "ask", "fit", "event")
	for _, e := range b.items("unless") {
		l.unless = append(l.unless, unless{index, e})
	}
	l.instrument(b, &c)
	for _, ob := range b.inner("option") {
		l.options[[2]int{index, len(c.Options)}] = ob.DefRange()
		o := appliance.Option{ID: ob.id(), Label: ob.text("label"), Also: ob.texts("also"), When: ob.expr("when"), Stop: ob.ref("stop", l.stops), Emergency: ob.word("emergency", append([]string{""}, vocab.AlarmIDs()...)...), Passes: ob.flag("passes"), Tell: ob.text("tell"), As: ob.text("as"), NoLive: ob.flag("no_live"), Seen: ob.texts("seen"),
			Missed: ob.flag("missed"), Shows: ob.wordsOf("shows", "power", "call"), Mend: ob.ref("mend", l.repairs) + 1, Twice: ob.flag("twice"),
			Told: ob.wordsOf("told", utterance.Symptoms...)}
		for _, s := range o.Seen {
			if !slices.Contains(appliance.Sights, s) {
				l.at(ob.attr("seen").Expr.Range(), meant(s, appliance.Sights), "the camera cannot see %q", s)
			}
		}
		c.Options = append(c.Options, o)
		ob.finish()
	}
	if missed := slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return o.Missed }); (c.Event != "") != missed {
		l.at(b.DefRange(), `event = "the fan starts", and missed = true in the option "silent"`, "check %s is watched at a start: say what is expected, and which answer means that nothing of it was noticed", c.ID)
	}
	if c.Event != "" && (c.Function != measure.Look || c.Call != "on" || c.At == "") {
		l.at(b.attr("event").Expr.Range(), `call = "on"  at = "draft"`, "an event is a look at a step of the sequence, with a call")
	}
	if c.Watched() && slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return o.Stop >= 0 || o.Emergency != "" }) {
		l.at(b.DefRange(), "ask for the danger in a check of its own", "check %s has an answer that stops the work: no camera may speak for the others", c.ID)
	}
	c.Label = b.ref("label", l.plates) + 1
	if a := b.attr("limit"); a != nil {
		if c.Label == 0 {
			c.Limit = l.limit(a.Expr, c.Unit)
		} else { // the labels are decoded later
			l.labelled[index] = a.Expr
		}
		if c.Unit == "" {
			l.at(a.Expr.Range(), `unit = "V"`, "a limit needs the unit of the check")
		}
	}
	for _, bb := range b.inner("band") {
		band := appliance.Band{Stop: bb.ref("stop", l.stops), Emergency: bb.word("emergency", append([]string{""}, vocab.AlarmIDs()...)...), Tell: bb.text("tell")}
		if a := bb.need("when"); a != nil {
			if lim := l.limit(a.Expr, c.Unit); lim != nil {
				band.Limit = *lim
			}
		}
		if band.Stop < 0 && band.Emergency == "" && band.Tell == "" {
			l.at(bb.DefRange(), `stop = "…", emergency = "…" or tell = "…"`, "a band without a consequence")
		}
		c.Bands = append(c.Bands, band)
		bb.finish()
	}
	b.finish("option", "band")
	l.m.Checks = append(l.m.Checks, c)
}

// unless is "check=option" in a check.
type unless struct {
	check int
	where hclsyntax.Expression
}

// answers resolves what checks say in unless, once all checks are known.
func (l *loader) answers() {
	for _, u := range l.unless {
		s, ok := l.text(u.where)
		if !ok {
			continue
		}
		check, option, cut := strings.Cut(s, "=")
		if !cut {
			l.at(u.where.Range(), `write "check=option"`, "%q is no answer", s)
			continue
		}
		shared := u.where.Range().Filename != l.name // an assembly names checks that not every file has
		if _, there := l.checks.index[check]; !there && shared {
			continue
		}
		i := l.lookup(check, u.where.Range(), l.checks)
		if i < 0 || i >= len(l.m.Checks) {
			continue
		}
		var ids []string
		for _, o := range l.m.Checks[i].Options {
			ids = append(ids, o.ID)
		}
		k := slices.Index(ids, option)
		if k < 0 && shared {
			continue
		}
		if k < 0 {
			l.at(u.where.Range(), meant(option, ids), "check %s has no option %q", check, option)
			continue
		}
		if i == u.check {
			l.at(u.where.Range(), "", "check %s hangs on its own answer", check)
			continue
		}
		c := &l.m.Checks[u.check]
		c.Unless = append(c.Unless, appliance.Answer{Check: i, Option: k})
	}
}

func (l *loader) wordsOf(b *block, id string, names ...string) {
	for _, n := range names {
		if a := b.attr(n); a != nil {
			l.acts[b.Type+" "+id+" "+n] = a.Expr.Range()
		}
	}
}

// instrument decodes the function of a check and holds it to what that function needs.
func (l *loader) instrument(b *block, c *appliance.Check) {
	var names []string
	for _, f := range measure.Functions {
		names = append(names, string(f.ID))
	}
	fn := b.needText("function")
	c.Function = measure.Function(fn)
	i := slices.Index(names, fn)
	if i < 0 {
		if fn != "" {
			l.at(b.attr("function").Expr.Range(), meant(fn, names), "no function %q", fn)
		}
		b.attr("unit")
		return
	}
	c.Unit = l.unit(b, measure.Functions[i].Dim != "" || c.Function == measure.Thermometer)
	u, ok := unit.Lookup(c.Unit)
	if ok && measure.Functions[i].Dim != "" && u.Dim != measure.Functions[i].Dim {
		l.at(b.attr("unit").Expr.Range(), "", "%s shows %s, not %s", fn, measure.Functions[i].Dim, u.Dim)
	}
	where := b.DefRange()
	switch c.Function {
	case measure.VoltsAC, measure.VoltsDC, measure.MillivoltDC, measure.Ohms, measure.Continuity:
		for _, lead := range []string{"red", "black"} {
			if b.Body.Attributes[lead] == nil {
				l.at(where, "", "check %s has no point for the %s lead", c.ID, lead)
			}
		}
		if c.Red >= 0 && c.Red == c.Black {
			l.at(where, "", "both leads of check %s are on one point", c.ID)
		}
	case measure.Capacitance, measure.MicroampsDC:
		kinds := appliance.KindsAsked("microfarads_now")
		if c.Function == measure.MicroampsDC {
			kinds = appliance.KindsAsked("microamps_now")
		}
		if b.Body.Attributes["part"] == nil {
			l.at(where, "", "check %s measures a %s: name the part", c.ID, strings.Join(kinds, " or "))
		} else if c.Part >= 0 {
			if k := l.partOf[l.parts.ids[c.Part]]; k != nil && !slices.Contains(kinds, k.Name) {
				l.at(b.attr("part").Expr.Range(), "", "%s is a %s, want a %s", l.parts.ids[c.Part], k.Name, strings.Join(kinds, " or "))
			}
		}
	case measure.AmpsAC:
		part, ok := strings.CutPrefix(c.Quantity, "amps:")
		if !ok {
			l.at(where, `quantity = "amps:part"`, "check %s clamps round a wire: name the part", c.ID)
		} else if l.lookup(part, b.attr("quantity").Expr.Range(), l.parts) >= 0 && !slices.Contains(l.props[part], "amps") {
			l.at(b.attr("quantity").Expr.Range(), "", "no current is known of %s", part)
		}
	case measure.Manometer, measure.Thermometer, measure.COMeter, measure.Look:
		if c.Quantity == "" && c.Function != measure.Look {
			l.at(where, `quantity = "draft"`, "check %s reads a signal: name it", c.ID)
		}
		if c.Quantity != "" {
			l.lookup(c.Quantity, b.attr("quantity").Expr.Range(), l.signals)
		}
		if c.Function == measure.Look && c.Quantity == "" && len(b.inner("option")) < 2 {
			l.at(where, `option "…" { when = … }`, "check %s is a question and needs two options or more", c.ID)
		}
		if c.Function == measure.Look && b.attr("ask") == nil {
			l.at(where, "", "check %s asks nothing", c.ID)
		}
	}
	for _, n := range []string{"red", "black", "part", "quantity", "ask"} {
		b.attr(n)
	}
	switch c.Function {
	case measure.Ohms, measure.Continuity, measure.Capacitance:
		if c.Power != "off" {
			l.at(where, `power = "off"`, "%s is measured with the power off only", fn)
		}
	}
	if c.At != "" && (c.Power == "off" || c.Call == "off") {
		l.at(where, `call = "on"`, "check %s is done in a step of the sequence: it needs the power and a call", c.ID)
	}
}

func (l *loader) repair(b *block) {
	r := appliance.Repair{ID: b.id(), Name: b.needText("name"), Part: b.ref("part", l.parts),
		Kind: b.word("kind", "set", "clean", "open", "tighten", "replace", "refit", "call"), Stop: b.ref("stop", l.stops),
		Price: b.quantity("price", unit.Money), Minutes: b.needQuantity("minutes", unit.Duration), Match: b.texts("match"),
		Causes: b.refs("causes", l.checks), Confirm: b.ref("confirm", l.checks), Note: b.text("note")}
	if r.Kind == "replace" && b.attr("price") == nil {
		l.at(b.DefRange(), `price = q("25..90 money", "source")`, "a new part has a price")
	}
	if r.Kind == "call" && r.Stop < 0 && b.attr("stop") == nil {
		l.at(b.DefRange(), "", "repair %s calls somebody at no stop line", r.ID)
	}
	for _, sb := range b.inner("step") {
		s := appliance.SwapStep{Act: sb.needText("act"), Caution: sb.text("caution"), Level: sb.word("level", "", "caution", "warning", "danger"),
			Wire: sb.ref("wire", l.points), Power: sb.word("power", "off", "on", "cut"), Places: sb.refs("places", l.places)}
		if s.Power == "cut" && (s.Wire >= 0 || len(s.Places) > 0) {
			l.at(sb.attr("power").Expr.Range(), `leave it out: dead is proved first`, "a step inside, or with a wire, cannot be done with the power only cut")
		}
		if len(sb.Labels) != 0 {
			l.at(sb.DefRange(), "write step { … }", "the steps of a repair have no id")
		}
		l.wordsOf(sb, r.ID+" "+s.Act, "act", "caution")
		sb.finish()
		r.Steps = append(r.Steps, s)
	}
	if r.Kind != "call" && len(r.Steps) == 0 {
		l.at(b.DefRange(), `step { act = "…" }`, "repair %s says not what to do", r.ID)
	}
	l.wordsOf(b, r.ID, "note")
	b.finish("step")
	l.m.Repairs = append(l.m.Repairs, r)
}
