package job

import (
	"fmt"
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

func (a aim) String() string { return fmt.Sprintf("%s/%d", a.Kind, a.N) }

// byID builds the question of that id anew, nil when there is none.
func (m *Machine) byID(id string) *question {
	parts := strings.Split(id, "/")
	num := func(i int) int {
		n := 0
		if i < len(parts) {
			fmt.Sscanf(parts[i], "%d", &n)
		}
		return n
	}
	switch {
	case parts[0] == "act" && len(parts) == 5:
		for _, k := range worksite.Kinds() {
			if k.String() == parts[1] {
				return m.actQuestion(aim{parts[3], num(4)}, worksite.Act{Kind: k, N: int16(num(2))})
			}
		}
	case parts[0] == "consent" && len(parts) == 3:
		return m.consentQuestion(aim{parts[1], num(2)})
	case len(parts) == 2:
		a := aim{parts[0], num(1)}
		if needsRepair(a.Kind) && m.j.repair < 0 {
			return nil
		}
		return m.aimQuestion(a)
	}
	return nil
}

func needsRepair(kind string) bool {
	return slices.Contains([]string{"decide", "match", "swap", "photo", "wire", "callout", "age"}, kind)
}

// fromLine fills a question from a line of the words: what to do, what to say, and the options that answer it.
func (m *Machine) fromLine(q *question, id string, pairs ...string) {
	l, ok := m.words.Lines[id]
	if !ok {
		panic("session: no line " + id)
	}
	q.step.Act, q.step.Say, q.how = fill(l.Full, pairs...), fill(l.Say, pairs...), fill(l.How, pairs...)
	q.short = q.step.Act
	if len(l.Short) > 0 {
		q.short = fill(l.Short[0], pairs...)
	}
	q.opts = l.Ask
	if len(l.Ask) > 0 {
		q.good = l.Ask[0]
	}
}

// actQuestion asks for an act on the way to an aim.
func (m *Machine) actQuestion(a aim, act worksite.Act) *question {
	q := &question{id: fmt.Sprintf("act/%s/%d/%s", act.Kind, act.N, a), aim: a, kind: "act", act: act, check: -1}
	name, where, place := m.thing(act)
	m.fromLine(q, m.plain("act."+act.Kind.String()), "name", name, "where", where)
	q.step.ID, q.step.Kind, q.step.Where, q.step.Place = "act."+act.Kind.String(), "act", where, place
	if act.N >= 0 && place != "" {
		q.step.ID += "." + place
	}
	q.step.Points = m.touches(act)
	switch {
	case act.Proof():
		q.kind, q.step.Kind = "measure", "measure"
		q.units, q.hazard = []string{"V", "mV"}, act.Zero()
		q.step.Meter = m.line("meter.volts-ac")
		q.step.Keypad = q.units
		q.step.Eye = protocol.EyeMeter
		q.opts = nil
		m.warn(q, "mains")
	case act.Kind == worksite.OpenCover:
		m.warn(q, vocab.Worst(m.model.Places[act.N].Hazards))
	case act.Kind == worksite.HoldDoor || act.Kind == worksite.FreeDoor:
		m.warn(q, "door")
	case act.Kind == worksite.JumperIn || act.Kind == worksite.JumperOut:
		m.warn(q, "jumper")
	case act.Kind == worksite.PowerOn && (!m.j.site.Covers.Empty() || a.Kind == "cycle" || a.Kind == "leave"):
		m.warn(q, "restart")
	case act.Kind == worksite.LiftWire || act.Kind == worksite.RefitWire || act.Kind == worksite.MeterIn || act.Kind == worksite.MeterOut:
		m.warn(q, "hands")
	}
	q.step.Power = m.powerWords()
	return q
}

// thing names what an act is done to.
func (m *Machine) thing(act worksite.Act) (name, where, place string) {
	n := int(act.N)
	switch act.Kind {
	case worksite.OpenCover, worksite.CloseCover:
		p := &m.model.Places[n]
		return p.Name, p.Where, p.ID
	case worksite.LiftWire, worksite.RefitWire:
		p := &m.model.Points[n]
		return p.Name, p.Where, p.ID
	case worksite.NoteReset:
		p := &m.model.Parts[n]
		return p.Name, p.Look, p.ID
	case worksite.JumperIn, worksite.JumperOut:
		if c := &m.model.Checks[n]; len(c.Jump) == 2 {
			return m.line("from.to", "from", m.model.Points[c.Jump[0]].Name, "to", m.model.Points[c.Jump[1]].Name), "", c.ID
		}
	case worksite.MeterIn, worksite.MeterOut, worksite.PlaceLeads:
		c := &m.model.Checks[n]
		return m.leads(c.Red, c.Black), "", c.ID
	case worksite.ProveLN, worksite.ProveLG, worksite.ProveNG:
		if red, black := m.deadPair(act.Kind); red >= 0 {
			return m.leads(red, black), "", ""
		}
		return m.line("dead." + act.Kind.String()), "", ""
	}
	return "", "", ""
}

// deadPair is where one of the three readings of zero is taken, -1 where the file names no points.
func (m *Machine) deadPair(k worksite.Kind) (red, black int) {
	d := m.model.Dead
	if len(d) != 3 || k < worksite.ProveLN || k > worksite.ProveNG {
		return -1, -1
	}
	pair := [...][2]int{{0, 1}, {0, 2}, {1, 2}}[k-worksite.ProveLN]
	return d[pair[0]], d[pair[1]]
}

// touches lists the test points that an act is about, red lead first.
func (m *Machine) touches(act worksite.Act) []string {
	red, black := m.deadPair(act.Kind)
	switch act.Kind {
	case worksite.LiftWire, worksite.RefitWire:
		red = int(act.N)
	case worksite.MeterIn, worksite.MeterOut, worksite.PlaceLeads:
		c := &m.model.Checks[act.N]
		red, black = c.Red, c.Black
	}
	var out []string
	for _, p := range []int{red, black} {
		if p >= 0 {
			out = append(out, m.model.Points[p].ID)
		}
	}
	return out
}

// leads says where the two leads go.
func (m *Machine) leads(red, black int) string {
	switch {
	case red >= 0 && black >= 0:
		return m.line("leads", "red", m.model.Points[red].Name, "black", m.model.Points[black].Name)
	case red >= 0:
		return m.line("lead", "red", m.model.Points[red].Name)
	}
	return ""
}

// consentQuestion asks for one of the only two phrases that decide on live work.
func (m *Machine) consentQuestion(a aim) *question {
	q := &question{id: "consent/" + a.String(), aim: a, kind: "consent", check: -1}
	m.fromLine(q, "consent")
	q.step.ID, q.step.Kind = "consent", "consent"
	hazard := "mains"
	if a.Kind == "check" {
		c := &m.model.Checks[a.N]
		if hazard = c.Hazard; hazard == "" || hazard == "none" {
			hazard = "low"
		}
		q.check, q.step.Where = a.N, m.whereCheck(a.N)
		if c.Part >= 0 {
			q.step.Parts = []string{m.model.Parts[c.Part].ID}
		}
	}
	m.warn(q, hazard)
	q.step.Power = m.powerWords()
	return q
}

// aimQuestion asks what an aim is about, once the site is as it needs. It is nil when there is nothing to ask.
func (m *Machine) aimQuestion(a aim) *question {
	j := m.j
	q := &question{id: a.String(), aim: a, kind: "ask", check: -1}
	q.step.Kind, q.step.ID = "ask", a.Kind
	switch a.Kind {
	case "check":
		m.checkQuestion(q, a.N)
	case "story":
		m.fromLine(q, "story")
		q.text = true
	case "plate":
		f := &m.model.Plate[a.N]
		m.fromLine(q, "plate", "name", f.Name, "ask", f.Ask)
		q.step.ID = "plate." + f.ID
		if _, ok := unit.Lookup(f.Unit); ok {
			q.units = unitsFor(f.Unit)
			q.step.Keypad = q.units
		} else {
			q.text = true
		}
		q.step.Eye = protocol.EyePlate
	case "meter":
		q.step.ID = "meter." + meterSteps[a.N]
		m.fromLine(q, q.step.ID)
		if meterSteps[a.N] == "short" {
			q.units = unitsFor("ohm")
			q.step.Keypad = q.units
			q.step.Meter = m.line("meter.ohms")
			q.step.Eye = protocol.EyeMeter
		}
	case "callout":
		m.fromLine(q, "callout")
		q.units = []string{"money"}
		q.step.Keypad = q.units
		q.count = true
	case "age":
		m.fromLine(q, "age")
		q.count = true
		q.units = []string{"yr", "x"}
		q.step.Keypad = q.units
	case "decide":
		m.fromLine(q, "decide", "cost", m.costSentence())
	case "match":
		r := &m.model.Repairs[j.repair]
		part := r.Name
		if r.Part >= 0 {
			part = m.model.Parts[r.Part].Name
		}
		m.fromLine(q, "match", "part", part, "list", join(r.Match))
	case "photo":
		m.fromLine(q, [...]string{"photo.before", "photo.after"}[a.N])
		q.step.ID = [...]string{"photo.before", "photo.after"}[a.N]
		q.step.Eye = [...]string{protocol.EyeBefore, protocol.EyeAfter}[a.N]
		q.step.Marks = m.wireNames()
	case "wire":
		if a.N >= len(j.wires) {
			return nil
		}
		m.wireQuestion(q, a.N)
	case "swap":
		r := &m.model.Repairs[j.repair]
		s := stepOf(r, a.N)
		m.fromLine(q, "swap", "act", sentence(s.Act))
		q.kind, q.step.Kind = "act", "act"
		q.step.ID = r.ID + "." + fmt.Sprint(min(a.N+1, len(r.Steps)))
		q.step.Level, q.step.Caution = s.Level, s.Caution
		if s.Caution != "" && s.Level == "" {
			q.step.Level = "caution"
		}
		if s.Wire >= 0 {
			q.step.Points = []string{m.model.Points[s.Wire].ID}
			q.step.Where = m.model.Points[s.Wire].Name
		}
	case "cycle":
		m.fromLine(q, [...]string{"cycle.first", "cycle.second"}[a.N])
		q.kind, q.step.Kind = "look", "look"
	case "pause":
		m.fromLine(q, "pause")
	case "items":
		m.fromLine(q, "items", "list", join(m.items()))
	case "stop":
		m.fromLine(q, "handover", "words", m.handover())
	default: // leave, rest: the acts are all there is to it
		switch a.Kind {
		case "leave":
			j.done["leave"] = true
		case "rest":
			m.watchAnew()
		}
		return nil
	}
	q.step.Power = m.powerWords()
	return q
}

// checkQuestion asks a check of the equipment file.
func (m *Machine) checkQuestion(q *question, i int) {
	c := &m.model.Checks[i]
	q.check = i
	q.step.ID, q.step.Where = c.ID, m.whereCheck(i)
	if c.Part >= 0 {
		q.step.Parts = []string{m.model.Parts[c.Part].ID}
	}
	if len(c.Places) > 0 {
		q.step.Place = m.model.Places[c.Places[0]].ID
	}
	for _, p := range []int{c.Red, c.Black} {
		if p >= 0 {
			q.step.Points = append(q.step.Points, m.model.Points[p].ID)
		}
	}
	if c.Function == measure.Look || c.Function == "" {
		q.kind, q.step.Kind = "look", "look"
		q.step.Act, q.step.Say = c.Act, c.Ask
		q.short = c.Ask
		if c.Ask == "" {
			q.short = c.Act
		}
		for _, o := range c.Options {
			q.opts = append(q.opts, o.ID)
			q.count = q.count || o.ID != "" && strings.Trim(o.ID, "0123456789") == "" // a lamp's blinks
		}
		if len(q.opts) > 0 {
			q.good = q.opts[0]
		}
		switch {
		case counts(c):
			q.step.Eye = protocol.EyeLamp
		case c.Watched():
			q.step.Eye = protocol.EyeFire
		}
	} else {
		q.kind, q.step.Kind = "measure", "measure"
		q.step.Meter = m.line("meter." + string(c.Function))
		q.step.Act, q.step.Say = c.Act, m.line("number")
		q.short = strings.TrimSpace(c.Name + ". " + m.line("number"))
		q.units = unitsFor(c.Unit)
		q.step.Keypad = q.units
		q.step.Eye = protocol.EyeMeter
		q.ready = len(q.step.Points) > 0 && m.j.site.Placed != int16(i+1) && m.j.site.Series != int16(i+1)
	}
	q.how = m.line("how.check")
	switch {
	case c.Caution != "":
		q.step.Caution = c.Caution
		q.step.Level = levelOf(c.Hazard)
	case c.Hazard != "" && c.Hazard != "none":
		m.warn(q, c.Hazard)
	}
}

// whereCheck says where a check is done.
func (m *Machine) whereCheck(i int) string {
	c := &m.model.Checks[i]
	if l := m.leads(c.Red, c.Black); l != "" {
		return l
	}
	if c.Part >= 0 && m.model.Parts[c.Part].Look != "" {
		return m.model.Parts[c.Part].Name
	}
	return ""
}

// alike are the units that the same dial shows, beside the one that is judged in.
var alike = map[string][]string{
	"V": {"mV"}, "mV": {"V"}, "ohm": {"kohm", "Mohm"}, "kohm": {"ohm", "Mohm"}, "Mohm": {"kohm", "ohm"}, "uA": {"mA"},
	"mA": {"uA", "A"}, "A": {"mA"}, "uF": {"nF"}, "nF": {"uF"}, "degF": {"degC"}, "degC": {"degF"}, "dF": {"dC"}, "dC": {"dF"},
	"inH2O": {"Pa"}, "Pa": {"inH2O"},
}

// unitsFor lists the units that may be said where one is judged in, that one first.
func unitsFor(id string) []string { return append([]string{id}, alike[id]...) }

// powerWords says the state of the supply.
func (m *Machine) powerWords() string { return m.line(m.plain("power." + m.j.site.Power.String())) }

// plain is the line to use where there is no supply from the house to switch: the appliance's own control stands for it.
func (m *Machine) plain(id string) string {
	if _, ok := m.words.Lines["plain."+id]; ok && !m.model.Mains {
		return "plain." + id
	}
	return id
}

// setPower notes that the state of the supply was established now.
func (m *Machine) setPower() { m.j.since = m.j.now }

// open puts a question.
func (m *Machine) open(q *question) {
	j := m.j
	j.q, j.state = q, "ask"
	if q.kind == "consent" {
		j.state = "confirm"
	}
	q.base = j.now
	m.answers(q)
	m.ask(false)
}

// answers lays out the buttons of a question.
func (m *Machine) answers(q *question) {
	q.step.Answers = nil
	if q.ready {
		q.step.Answers = append(q.step.Answers, protocol.Answer{ID: cReady, Kind: utterance.Command, Text: m.option(cReady)})
	} else {
		for _, o := range q.opts {
			q.step.Answers = append(q.step.Answers, protocol.Answer{ID: o, Kind: utterance.Choice, Text: m.option(o)})
		}
	}
	for _, c := range []string{cCantReach, cDontKnow} {
		if q.kind == "act" && c == cDontKnow || q.kind == "consent" {
			continue
		}
		q.step.Answers = append(q.step.Answers, protocol.Answer{ID: c, Kind: utterance.Command, Text: m.option(c)})
	}
}

// ask speaks the open question: power, caution, place, meter, act, what to say. full asks for the long form.
func (m *Machine) ask(full bool) {
	j, q := m.j, m.j.q
	if q == nil {
		return
	}
	long := full || j.brief < 0 || j.brief == 0 && j.patterns[m.pattern(q)] < 2
	if j.brief < 0 {
		j.brief = 0
	}
	if q.kind == "act" || q.kind == "measure" || q.kind == "consent" {
		p := m.vary(m.plain("power."+j.site.Power.String()), b2i(!long))
		m.say("info", p)
	}
	if q.step.Caution != "" {
		m.say(q.step.Level, m.signal(q.step.Level)+q.step.Caution)
		m.countCaution(q)
	}
	switch {
	case q.ready && long:
		m.say("info", sentence(q.step.Where, q.step.Meter, m.line("say.ready")))
	case q.ready:
		q.ready = false
		m.answers(q)
		m.say("info", sentence(q.step.Where, q.step.Meter, q.short))
	case long && q.kind == "measure":
		m.say("info", sentence(q.step.Where, q.step.Meter, q.step.Act, q.step.Say))
	case long:
		m.say("info", sentence(q.step.Act, q.step.Say))
	default:
		m.say("info", q.short)
	}
	q.step.Part = ""
	if q.ready {
		q.step.Part = "A"
	}
	m.emit(protocol.Effect{Type: protocol.DoListen, ID: q.listen()})
	m.offerEye(q)
	if q.aim.Kind == "photo" && q.kind == "ask" && !full {
		m.emit(protocol.Effect{Type: protocol.DoPhoto, ID: strings.TrimPrefix(q.step.ID, "photo.")})
	}
}

// pattern is what makes two steps alike for the person.
func (m *Machine) pattern(q *question) string {
	switch {
	case q.kind == "consent":
		return "consent"
	case q.kind == "act" || q.act.Proof():
		return "act." + q.act.Kind.String() + q.aim.Kind
	case q.check >= 0:
		return "check." + string(m.model.Checks[q.check].Function)
	}
	return q.id
}

// listen is the end-of-speech class of a question.
func (q *question) listen() string {
	switch {
	case q.ready || q.kind == "act" || q.kind == "consent" || q.pending != nil || q.number != nil:
		return "choice"
	case q.text:
		return "digits"
	case len(q.units) > 0:
		return "number"
	}
	return "choice"
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// sentence joins parts with single spaces, leaving out empty ones; a part without an end gets a full stop.
func sentence(parts ...string) string {
	var out []string
	for _, p := range parts {
		p = strings.TrimSpace(p)
		if p == "" {
			continue
		}
		if !strings.ContainsAny(p[len(p)-1:], ".?!:") {
			p += "."
		}
		out = append(out, strings.ToUpper(p[:1])+p[1:])
	}
	return strings.Join(out, " ")
}

// join lists words aloud: "a, b and c".
func join(s []string) string {
	switch len(s) {
	case 0:
		return ""
	case 1:
		return s[0]
	}
	return strings.Join(s[:len(s)-1], ", ") + " and " + s[len(s)-1]
}
