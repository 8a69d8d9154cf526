package job

import (
	"fmt"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// checkTask asks a check of the equipment file.
type checkTask struct{ n int }

func (t checkTask) String() string { return fmt.Sprintf("check/%d", t.n) }

func (t checkTask) need(m *Machine) worksite.Need {
	j := m.j
	n := m.rules.For(t.n)
	if m.model.Checks[t.n].Stage == "light" && j.stage > sLight && n.Power == worksite.Any {
		n.Power = worksite.Live // with the supply cut it would show nothing
	}
	if j.stage == sRestart && n.Power == worksite.Live && n.Covers.Empty() {
		n.Shut = true
	}
	return n
}

func (t checkTask) ask(m *Machine, q *question) bool {
	c := &m.model.Checks[t.n]
	q.check = t.n
	q.step.ID, q.step.Where = c.ID, m.whereCheck(t.n)
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
		m.lookQuestion(q, c)
	} else {
		m.meterQuestion(q, t.n)
	}
	q.how = m.line("how.check")
	if m.j.watch.on && m.isEvent(t.n) {
		m.eventQuestion(q)
	}
	switch {
	case q.step.Caution != "":
	case c.Caution != "":
		q.step.Caution = c.Caution
		q.step.Level = levelOf(c.Hazard)
	case c.Hazard != "" && c.Hazard != "none":
		m.warn(q, c.Hazard)
	}
	return true
}

// lookQuestion asks what eyes, ears or a hand find.
func (m *Machine) lookQuestion(q *question, c *appliance.Check) {
	q.kind, q.step.Kind = "look", "look"
	q.step.Act, q.step.Say = c.Act, c.Ask
	again := m.j.twice.open && m.j.twice.check == q.check
	q.short = sentence(c.Act, c.Ask) // no two looks are alike: what is to be looked at is said each time
	for _, o := range c.Options {
		q.opts = append(q.opts, o.ID)
		if o.Label != "" {
			if q.labels == nil {
				q.labels = map[string]string{}
			}
			for _, id := range append([]string{o.ID}, o.Also...) {
				q.labels[id] = o.Label
			}
		}
		q.count = q.count || o.ID != "" && strings.Trim(o.ID, "0123456789") == "" // a lamp's blinks
	}
	q.shown = len(q.opts)
	for _, o := range c.Options {
		q.opts = append(q.opts, o.Also...)
	}
	if len(q.opts) > 0 {
		q.good = q.opts[0]
	}
	if again {
		slices.Reverse(q.opts[:q.shown])
		q.long = true
		q.step.Act, q.step.Say = m.line("look.again", "what", m.answered(q.check, m.j.twice.option)), m.line("look.which", "options", m.either(q.check))
		q.short = q.step.Say
	}
	switch {
	case counts(c):
		q.step.Eye = protocol.EyeLamp
	case c.Watched():
		q.step.Eye = protocol.EyeFire
	}
}

// meterQuestion asks for a reading.
func (m *Machine) meterQuestion(q *question, check int) {
	c := &m.model.Checks[check]
	q.kind, q.step.Kind = "measure", "measure"
	q.step.Meter = m.line("meter." + string(c.Function))
	q.step.Act, q.step.Say = c.Act, m.line("number")
	q.short = strings.TrimSpace(c.Name + ". " + m.line("number"))
	q.units = unitsFor(c.Unit)
	q.step.Keypad = q.units
	q.step.Eye = protocol.EyeMeter
	mark := int16(check + 1)
	q.ready = len(q.step.Points) > 0 && m.j.site.Placed != mark && m.j.site.Series != mark
}

func (t checkTask) answer(m *Machine, q *question, x utterance.Meaning) {
	c := &m.model.Checks[t.n]
	f := Finding{Check: t.n, Option: -1, Typed: q.typed}
	switch x.Kind {
	case utterance.Choice, utterance.Count:
		id := x.ID
		if x.Kind == utterance.Count {
			id = x.Text
		}
		f.Option = slices.IndexFunc(c.Options, func(o appliance.Option) bool { return o.ID == id || slices.Contains(o.Also, id) })
		if f.Option < 0 {
			f.Unknown = true
			m.say("info", m.line("not.listed", "what", id))
			break
		}
		o := &c.Options[f.Option]
		if o.Emergency != "" {
			m.settle(f)
			if m.j.stage == sRestart && c.Stage == "restart" { // a gate that failed stays so, also where the alarm is taken back
				m.j.failed = true
				m.fact(m.line("gate.fact", "check", c.Name))
				m.finish("unresolved", false)
			}
			m.raise(o.Emergency)
			return
		}
		m.say("info", sentence(m.option(id)))
		m.fact(c.Name + ": " + m.option(id))
		if o.Tell != "" {
			m.say("warning", sentence(o.Tell))
			m.fact(sentence(o.Tell))
		}
		if k := slices.IndexFunc(c.Options, func(x appliance.Option) bool { return x.ID == o.As }); o.As != "" && k >= 0 {
			f.Option = k
		}
		if m.askTwice(t.n, &f, o) {
			return
		}
		m.shown(o)
		if o.NoLive {
			m.j.noMains, m.j.noProof, m.j.noLive = true, true, 2
		}
		if o.Stop >= 0 {
			m.settle(f)
			m.halt(o.Stop)
			return
		}
	case utterance.Reading:
		f.Reading = x.Reading
		m.readBackJudged(t.n, x.Reading)
		if b := m.bandOf(t.n, x.Reading); b != nil {
			if b.Tell != "" {
				m.say("warning", sentence(b.Tell))
				m.fact(sentence(b.Tell))
			}
			if b.Emergency != "" || b.Stop >= 0 {
				m.settle(f)
				if b.Emergency != "" {
					m.raise(b.Emergency)
				} else {
					m.halt(b.Stop)
				}
				return
			}
		}
		m.noCall(t.n, x.Reading)
	}
	m.settle(f)
	if f.Option >= 0 && m.isEvent(t.n) {
		m.eventSeen(t.n, c.Options[f.Option].Missed)
	}
	if !m.gateFails(t.n, f) {
		m.confirmRepair(t.n, f)
	}
	if f.Option >= 0 {
		m.mendNow(c.Options[f.Option].Mend - 1)
	}
}

// once is an answer that is asked for once more, in other words, before it ends or condemns anything.
type once struct {
	open          bool
	check, option int
}

// answered is an answer to a check in the words of that check.
func (m *Machine) answered(check, option int) string {
	o := &m.model.Checks[check].Options[option]
	return firstOf(o.Label, m.option(o.ID))
}

// either names the answers to a check, the last first: other words than the first time.
func (m *Machine) either(check int) string {
	var out []string
	for _, o := range slices.Backward(m.model.Checks[check].Options) {
		out = append(out, lower(firstOf(o.Label, m.sayable(o.ID))))
	}
	return m.oneOf(out)
}

// decides tells whether an answer condemns or ends something by itself: a stop line, what the file says, and a look after a repair that
// shows no heat.
func (m *Machine) decides(check, option int) bool {
	c := &m.model.Checks[check]
	o := &c.Options[option]
	return o.Twice || o.Stop >= 0 || c.Stage == "restart" && option > 0 && o.Emergency == ""
}

// askTwice tells whether an answer is to be asked for once more, and sees to that. The second answer counts, whichever it is: one slip
// ends nothing.
func (m *Machine) askTwice(check int, f *Finding, o *appliance.Option) bool {
	j := m.j
	if j.twice.open && j.twice.check == check {
		j.twice = once{check: check, option: f.Option}
		return false
	}
	if !m.decides(check, f.Option) || j.ending || slices.ContainsFunc(m.model.Checks[check].Options, func(o appliance.Option) bool { return o.NoLive }) || m.mute && j.twice.check == check && j.twice.option == f.Option {
		return false
	}
	m.settle(*f)
	j.twice = once{true, check, f.Option}
	return true
}

// shown takes what an answer shows of the work place: a light that blinks has supply. It makes nothing safer than it was believed to be.
func (m *Machine) shown(o *appliance.Option) {
	j := m.j
	before := j.site
	for _, s := range o.Shows {
		switch {
		case s == "power" && j.site.Power == worksite.Unknown && !j.site.Open():
			j.site.Power = worksite.On
			m.setPower()
		case s == "call" && j.site.Call == worksite.NotKnown:
			j.site.Call = worksite.Yes
		}
	}
	if lights(j.site) && !lights(before) {
		j.starts++
	}
}

func (t checkTask) insist(m *Machine, _ *question, n int) (level, text string) {
	if m.model.Checks[t.n].Stage == "safety" && n < 2 {
		return "warning", m.line("safety.must")
	}
	return "", ""
}

func (t checkTask) giveUp(m *Machine, _ *question) {
	c := &m.model.Checks[t.n]
	m.settle(Finding{Check: t.n, Option: -1, Unknown: true})
	m.fact(m.line("unknown.fact", "check", c.Name))
	if c.Stage == "safety" {
		m.say("warning", m.line("safety.stop"))
		m.finish("handed-over", false)
	}
	if m.j.stage == sCause && m.j.repair >= 0 { // who does not know whether it is allowed, may not
		for _, o := range c.Options {
			if o.Stop >= 0 {
				m.halt(o.Stop)
				return
			}
		}
	}
	t.unconfirmed(m)
}

func (t checkTask) blocked(m *Machine) {
	m.j.asked[t.n] = 2
	t.unconfirmed(m)
}

// unconfirmed notes that a repair stays without the check that would show it.
func (t checkTask) unconfirmed(m *Machine) {
	if j := m.j; j.stage == sRestart && j.repair >= 0 && m.model.Repairs[j.repair].Confirm == t.n {
		m.fact(m.line("unconfirmed"))
	}
}

func (t checkTask) patience(m *Machine) int64 {
	if m.model.Checks[t.n].Function != measure.Look {
		return tProbe
	}
	return tLook
}

// gateFails works the answer to a check that is a gate: one of the restart, or of the cause of a repair. A failed gate
// means that nothing is fixed, and the supply stays off. It tells whether it failed.
func (m *Machine) gateFails(check int, f Finding) bool {
	j := m.j
	switch bad := m.bad(f); {
	case !bad && j.gate == check && !f.Unknown:
		j.gate = -1
		if j.stage == sRestart {
			m.nextGate()
		}
		return false
	case !bad:
		return false
	case j.stage == sRestart && m.model.Checks[check].Stage == "restart":
		m.say("warning", m.line("gate.restart", "check", m.model.Checks[check].Name))
		m.fact(m.line("gate.fact", "check", m.model.Checks[check].Name))
		j.failed = true
		m.finish("unresolved", false)
		return true
	case j.stage == sCause && j.repair >= 0 && m.gates(check, j.repair):
		m.say("warning", m.line("gate.cause", "check", m.model.Checks[check].Name))
		m.fact(m.line("gate.fact", "check", m.model.Checks[check].Name))
		if m.rules.For(check).Power != worksite.Live {
			j.gate = check // it can be looked at again without the supply
		}
		j.repair, j.stage = -1, sPlan
		return true
	}
	return false
}

// bandOf is the worst band that a reading may lie in, nil for none. The meter's uncertainty counts for the danger, and
// more than the meter can show counts as beyond every upper end.
func (m *Machine) bandOf(check int, r *measure.Reading) *appliance.Band {
	c := &m.model.Checks[check]
	for i := range c.Bands {
		b := &c.Bands[i]
		jd := measure.Judge(m.j.meter, c.Function, *r, b.Limit)
		if jd.Verdict != measure.Fail && jd.Verdict != measure.Invalid || r.State == measure.Over && b.Limit.High == nil {
			return b
		}
	}
	return nil
}

// bad tells whether the answer to a gate is not the one hoped for, which is its first option: the linter holds it.
func (m *Machine) bad(f Finding) bool {
	if f.Reading != nil {
		jd, ok := m.judge(f.Check, *f.Reading)
		return ok && (jd.Verdict == measure.Fail || jd.Verdict == measure.ConditionalFail)
	}
	return f.Option > 0
}

// causeStands tells whether the last answer to a check of the cause of a repair was not the one hoped for: then the
// repair would not last, or be a danger.
func (m *Machine) causeStands(repair int) bool {
	return slices.ContainsFunc(m.model.Repairs[repair].Causes, func(c int) bool {
		for i := len(m.j.findings) - 1; i >= 0; i-- {
			if f := m.j.findings[i]; f.Check == c && m.gates(c, repair) {
				return m.bad(f)
			}
		}
		return false
	})
}

// gates tells whether a check is a gate of a repair: it looks for what broke the part, and so never at the part itself.
func (m *Machine) gates(check, repair int) bool {
	c, r := &m.model.Checks[check], &m.model.Repairs[repair]
	return c.Must && slices.Contains(r.Causes, check) && (c.Part < 0 || c.Part != r.Part || len(c.Options) > 0)
}

// settle puts a finding among those established.
func (m *Machine) settle(f Finding) {
	j := m.j
	j.findings = append(j.findings, f)
	j.asked[f.Check] = 1
	if f.Unknown {
		j.asked[f.Check] = 2
	}
	if j.times[f.Check] < 255 {
		j.times[f.Check]++
	}
	if j.task == (checkTask{f.Check}) {
		j.task = nil
	}
	if j.consent == f.Check { // for one check, one time
		j.consent = -1
	}
	if j.site.Placed == int16(f.Check+1) && m.model.Checks[f.Check].Window {
		j.site.Placed = 0
	}
}

// readBackJudged reads a value back with what it means.
func (m *Machine) readBackJudged(check int, r *measure.Reading) {
	c := &m.model.Checks[check]
	text := m.reading(r)
	jd, ok := m.judge(check, *r)
	if ok {
		text = sentence(text, m.line("verdict."+verdictID(jd.Verdict)))
		m.limitView(check, jd)
	}
	m.say("info", sentence(text))
	m.fact(c.Name + ": " + m.written(r) + m.verdictTail(jd, ok))
}

func verdictID(v measure.Verdict) string {
	switch v {
	case measure.Pass:
		return "pass"
	case measure.ConditionalPass:
		return "likely-pass"
	case measure.ConditionalFail:
		return "likely-fail"
	case measure.Fail:
		return "fail"
	}
	return "invalid"
}

func (m *Machine) verdictTail(jd measure.Judgement, ok bool) string {
	if !ok {
		return ""
	}
	return ", " + m.words.Name("verdict", strings.ReplaceAll(string(jd.Verdict), " ", "-"))
}

// confirmRepair looks at the check that showed a fault, after the repair: it must show its absence now.
func (m *Machine) confirmRepair(check int, f Finding) {
	j := m.j
	if j.stage != sRestart || j.repair < 0 || m.model.Repairs[j.repair].Confirm != check {
		return
	}
	bad := false
	if f.Option >= 0 { // it looks as it did when something was wrong
		for i := min(j.mended[len(j.mended)-1].After, len(j.findings)) - 1; i >= 0; i-- { // answers given again after an undo may be fewer
			if g := &j.findings[i]; g.Check == check && !g.Unknown {
				bad = g.Option == f.Option
				break
			}
		}
	}
	if f.Reading != nil {
		jd, ok := m.judge(check, *f.Reading)
		bad = ok && jd.Verdict == measure.Fail // just outside is no proof that nothing changed
	}
	if bad {
		m.notFixed()
	}
}

// judge holds a reading against the limit of a check.
func (m *Machine) judge(check int, r measure.Reading) (measure.Judgement, bool) {
	c := &m.j.rated.Checks[check]
	if c.Limit == nil {
		return measure.Judgement{}, false
	}
	if f := m.model.LabelOf(check); f != nil {
		if _, read := m.j.ratings[f.ID]; !read {
			return measure.Judgement{}, false // no general number takes the place of the label
		}
	}
	return measure.Judge(m.j.meter, c.Function, r, *c.Limit), true
}

// whereCheck says where a check is done.
func (m *Machine) whereCheck(i int) string {
	c := &m.model.Checks[i]
	if l := m.leads(c.Red, c.Black); l != "" {
		return l
	}
	if c.Function == measure.Look && c.Part >= 0 && m.model.Parts[c.Part].Look != "" {
		return m.model.Parts[c.Part].Name
	}
	return ""
}

// levelOf is the signal word of a hazard; where there is none, but a caution, that of the mildest.
func levelOf(hazard string) string {
	if h, ok := vocab.HazardOf(hazard); ok {
		return string(h.Level)
	}
	return string(vocab.Caution)
}
