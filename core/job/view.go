package job

import (
	"math"
	"slices"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

const logShown = 40

// View is all that the page shows now. It shares nothing with the machine.
func (m *Machine) View() *protocol.View {
	j := m.j
	v := &protocol.View{
		Job: j.begin.Job, Seq: m.Seq(), Title: m.model.Title, Stage: stageID(j.stage), StageNo: j.stage, State: j.state,
		Said: j.said, Notice: j.notice, Handover: j.handover, Open: m.openWords(), Facts: slices.Clone(j.facts),
	}
	for _, s := range vocab.StageIDs(nil) {
		v.Stages = append(v.Stages, m.line("stage."+s))
	}
	v.Site = m.siteView()
	if j.q != nil {
		v.Step = j.q.step
		if m.watches(j.q) && j.state != "ended" {
			v.Step.Watch = m.watchView(j.q)
		}
		if d, ok := m.due(j.q); ok && kindOf(j.q.task) == "cycle" {
			v.Step.Until = d
		}
	}
	switch {
	case j.doubtAsk:
		v.Step = protocol.StepView{ID: "right-now", Kind: "confirm", Level: "warning", Act: m.rightNow()}
		v.Step.Answers = m.buttonsOf("right.now")
	case j.alarm != "":
		v.Step = protocol.StepView{ID: "alarm." + j.alarm, Kind: "info", Level: "danger", Act: m.line("alarm." + j.alarm), Say: m.line("alarm." + j.alarm + ".then")}
		v.Call = m.line("emergency.digits")
		if j.locked {
			v.Step.Answers = append(m.buttons(oOutside), m.commandButtons(cFalseAlarm)...)
		} else {
			v.Step.Answers = append(m.buttons(oOkay, oClear), m.commandButtons(cFalseAlarm)...)
		}
	case j.q != nil && j.q.number != nil:
		v.Step.Kind = "confirm"
		v.Step.Answers, v.Step.Also = nil, nil
		for _, u := range j.q.units {
			v.Step.Answers = append(v.Step.Answers, protocol.Answer{ID: u, Kind: utterance.UnitOnly, Text: m.words.Units[u].Many})
		}
		v.Step.Answers = append(v.Step.Answers, m.buttonsOf("which.unit")...)
	case j.q != nil && (j.q.pending != nil || len(j.q.choices) > 0):
		v.Step.Kind, v.Step.Also = "confirm", nil
		v.Step.Answers = m.buttonsOf("right.or.different")
		if j.q.pending == nil {
			v.Step.Answers = nil
			for _, x := range j.q.choices {
				if x.ID != "" {
					v.Step.Answers = append(v.Step.Answers, protocol.Answer{ID: x.ID, Kind: x.Kind, Text: m.inWords(x)})
				}
			}
			v.Step.Answers = append(v.Step.Answers, m.buttonsOf("this.or.that")...)
		}
	}
	if j.heardView != nil {
		h := *j.heardView
		v.Heard = &h
	}
	a := j.advice
	for i, s := range a.Suspects {
		if i == 5 {
			break
		}
		if s.Words == "" {
			s.Words = m.words.Chance(s.P)
		}
		v.Suspects = append(v.Suspects, s)
	}
	if j.q != nil && a.Check >= 0 && j.q.task == (checkTask{a.Check}) {
		v.Why = &protocol.WhyView{Short: m.whyCheck(), More: slices.Clone(a.Why.More)}
		if len(a.Splits) == 2 {
			v.Why.More = append(v.Why.More, m.line("what.leads", "one", a.Splits[0], "other", a.Splits[1]))
		}
		if a.Minutes > 0 {
			v.Why.Cost = m.line("why.minutes", "minutes", m.words.Whole(int64(a.Minutes+0.5)))
		}
	}
	from := max(0, len(j.log)-logShown)
	v.Log = slices.Clone(j.log[from:])
	if j.state == "ended" {
		v.Ended = j.outcome
	}
	m.forEye(v)
	return v
}

// forEye writes what is spoken as people read it: numbers with units in digits. What was said is written when it is noted.
func (m *Machine) forEye(v *protocol.View) {
	s := &v.Step
	for _, text := range []*string{&v.Notice, &v.Handover, &s.Power, &s.Caution, &s.Where, &s.Meter, &s.Act, &s.Say} {
		*text = m.eyes.Write(*text)
	}
	s.Answers = slices.Clone(s.Answers)
	for i := range s.Answers {
		s.Answers[i].Text = m.eyes.Write(s.Answers[i].Text)
	}
	if v.Why != nil {
		v.Why.Short = m.eyes.Write(v.Why.Short)
		for i := range v.Why.More {
			v.Why.More[i] = m.eyes.Write(v.Why.More[i])
		}
	}
}

func (m *Machine) siteView() protocol.SiteView {
	s := m.j.site
	v := protocol.SiteView{Power: s.Power.String(), Since: m.j.since, Gas: s.Gas.String(), Jack: s.Jack, Call: s.Call.String()}
	if m.model.Fuel != "gas" {
		v.Gas = "none"
	}
	for _, p := range s.Covers.All() {
		v.Covers = append(v.Covers, m.model.Places[p].Name)
	}
	for _, p := range s.Wires.All() {
		v.Wires = append(v.Wires, m.model.Points[p].Name)
	}
	if s.Jumper != 0 {
		name, _, _ := m.thing(worksite.Act{Kind: worksite.JumperIn, N: s.Jumper - 1})
		v.Jumpers = []string{name}
	}
	v.Door = "free"
	if s.Held {
		v.Door = "held"
	}
	if q := m.j.q; q != nil {
		v.Dial = q.step.Meter
	}
	for _, p := range s.Resets.Or(s.Noted).All() {
		v.Resets = append(v.Resets, m.model.Parts[p].Name)
	}
	return v
}

func (m *Machine) buttons(ids ...string) []protocol.Answer {
	var out []protocol.Answer
	for _, id := range ids {
		out = append(out, protocol.Answer{ID: id, Kind: utterance.Choice, Text: m.everywhere(id)})
	}
	return out
}

// buttonsOf are the answers of a line, in its words.
func (m *Machine) buttonsOf(line string) []protocol.Answer {
	var out []protocol.Answer
	l := m.words.Lines[line]
	for _, id := range l.Ask {
		text, ok := l.Labels[id]
		if !ok {
			text = m.everywhere(id)
		}
		out = append(out, protocol.Answer{ID: id, Kind: utterance.Choice, Text: text})
	}
	return out
}

func (m *Machine) commandButtons(ids ...string) []protocol.Answer {
	var out []protocol.Answer
	for _, id := range ids {
		out = append(out, protocol.Answer{ID: id, Kind: utterance.Command, Text: m.everywhere(id)})
	}
	return out
}

// limitView shows what a reading was held against, once it is accepted.
func (m *Machine) limitView(check int, jd measure.Judgement) {
	h := m.j.heardView
	if h == nil {
		return
	}
	c := &m.j.rated.Checks[check]
	h.Verdict, h.Unit = jd.Verdict, jd.Unit
	h.Limit = m.limitWords(c.Limit)
	if finite(jd.Value) && finite(jd.U) {
		h.Value, h.U = jd.Value, jd.U
	}
	h.Low, h.High = c.Limit.Low, c.Limit.High
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// limitWords writes a limit with its source.
func (m *Machine) limitWords(l *measure.Limit) string {
	var text string
	switch {
	case l.Low != nil && l.High != nil:
		text = m.line("limit.between", "low", number(*l.Low), "high", number(*l.High), "unit", m.words.Printed(l.Unit))
	case l.Low != nil:
		text = m.line("limit.low", "low", number(*l.Low), "unit", m.words.Printed(l.Unit))
	case l.High != nil:
		text = m.line("limit.high", "high", number(*l.High), "unit", m.words.Printed(l.Unit))
	}
	if l.Source != "" {
		src := m.words.Origin(l.Source)
		for _, s := range m.model.Sources {
			if s.ID == l.Source {
				src = s.Text
			}
		}
		text += " (" + src + ")"
	}
	return text
}
