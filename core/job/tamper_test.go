package job

import (
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/worksite"
)

// Mistakes are seeded one at a time into the machine while it is walked; every one must be found.
var mistakes = []struct {
	name string
	t    tamper
}{
	{"no caution is said", tamper{heard: without(func(e protocol.Effect) bool {
		return e.Type == protocol.DoSay && (e.Level == "caution" || e.Level == "warning" || e.Level == "danger")
	})}},
	{"the caution comes after the step", tamper{heard: func(m *Machine, out []protocol.Effect) []protocol.Effect {
		late := slices.Clone(out)
		slices.SortStableFunc(late, func(a, b protocol.Effect) int { return b2i(cautious(a)) - b2i(cautious(b)) })
		return late
	}}},
	{"the state of power is not said", tamper{heard: func(m *Machine, out []protocol.Effect) []protocol.Effect {
		l := m.words.Lines[m.plain("power."+m.j.site.Power.String())]
		return slices.DeleteFunc(out, func(e protocol.Effect) bool { return e.Text == l.Full || slices.Contains(l.Short, e.Text) })
	}}},
	{"the state of power is said last", tamper{heard: func(m *Machine, out []protocol.Effect) []protocol.Effect {
		l := m.words.Lines[m.plain("power."+m.j.site.Power.String())]
		is := func(e protocol.Effect) bool { return e.Text == l.Full || slices.Contains(l.Short, e.Text) }
		slices.SortStableFunc(out, func(a, b protocol.Effect) int { return b2i(is(a)) - b2i(is(b)) })
		return out
	}}},
	{"nobody listens", tamper{heard: without(func(e protocol.Effect) bool { return e.Type == protocol.DoListen })}},
	{"live work goes on without asking", tamper{pose: func(m *Machine, t task, q *question) *question {
		if q.kind == "consent" && kindOf(t) == "check" {
			if next := m.taskQuestion(t); next != nil {
				return next
			}
		}
		return q
	}}},
	{"a refusal of live work counts as consent", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if q := was.q; answered(ev) == oOtherWay && q != nil && q.kind == "consent" && kindOf(q.task) == "check" {
			m.j.consent, m.j.consAt, m.j.task, m.j.q = q.check, m.j.now, q.task, nil
			m.advance()
		}
	}}},
	{"the acts on the way to a check are left out", tamper{pose: func(m *Machine, t task, q *question) *question {
		if q.act.Kind != worksite.None && kindOf(t) == "check" {
			if next := m.taskQuestion(t); next != nil {
				return next
			}
		}
		return q
	}}},
	{"the acts on the way to a step of a repair are left out", tamper{pose: func(m *Machine, t task, q *question) *question {
		if q.act.Kind != worksite.None && kindOf(t) == "swap" {
			return m.taskQuestion(t)
		}
		return q
	}}},
	{"zero said once is enough", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if q := was.q; q != nil && q.act.Zero() && m.j.site == was.site && ev.Said != nil && ev.Said.Source == "voice" && m.j.q != nil && m.j.q.first != nil {
			m.j.site, m.j.q = m.rules.Apply(was.site, q.act, worksite.Done), nil
			m.advance()
		}
	}}},
	{"voltage that was found counts as dead", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if q := was.q; q != nil && q.act.Zero() && m.j.site.Power == worksite.On {
			m.j.site, m.j.q = m.rules.Apply(was.site, q.act, worksite.Done), nil
			m.advance()
		}
	}}},
	{"a meter that shows nothing proves", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if q := was.q; q != nil && q.act.Kind == worksite.ProveAgain && m.j.site.Power != worksite.Proved && m.j.liveBad > was.liveBad {
			m.j.site, m.j.q = m.rules.Apply(was.site, q.act, worksite.Done), nil
			m.advance()
		}
	}}},
	{"\"can't reach\" counts as done", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if q := was.q; answered(ev) == cCantReach && q != nil && q.act.Kind != worksite.None && !q.act.Proof() && m.j.state != "ended" {
			m.j.site = m.rules.Apply(was.site, q.act, worksite.Done)
		}
	}}},
	{"silence counts as done", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if q := was.q; ev.Type == protocol.EvTick && q != nil && q.act.Kind == worksite.RefitWire {
			m.j.site = m.rules.Apply(was.site, q.act, worksite.Done)
		}
	}}},
	{"\"something happened\" changes nothing", tamper{before: func(m *Machine, ev *protocol.Event) bool { return answered(ev) != cChanged }}},
	{"a new start believes the supply", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if ev.Type == protocol.EvResume {
			m.j.site.Power = was.site.Power
		}
	}}},
	{"the supply is believed after an emergency", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if m.j.alarm != "" && was.alarm == "" {
			m.j.site = was.site
		}
	}}},
	{"a pause is granted with a jumper in", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if answered(ev) == cHold && was.site.Timed() {
			m.j.holding = true
		}
	}}},
	{"the end comes at once", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if answered(ev) == cFinish && was.alarm == "" && m.j.state != "ended" {
			m.endNow("given-up")
		}
	}}},
	{"an empty battery ends at once", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if ev.Type == protocol.EvDevice && was.alarm == "" && m.j.state != "ended" {
			m.endNow("battery")
		}
	}}},
	{"\"finish\" is not heard", tamper{before: func(m *Machine, ev *protocol.Event) bool { return answered(ev) != cFinish }}},
	{"the way out is left again", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if was.ending && m.j.state != "ended" {
			m.j.ending, m.j.stage = false, sPlan
		}
	}}},
	{"nothing is put back on the way out", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if m.j.ending && !was.ending && m.j.state != "ended" && m.j.alarm == "" {
			m.j.done.left, m.j.task, m.j.q = true, nil, nil
			m.advance()
		}
	}}},
	{"what stays open is not said", tamper{heard: without(func(e protocol.Effect) bool {
		return e.Type == protocol.DoSay && e.Level == "danger" && strings.Contains(e.Text, "open")
	})}},
	{"a stop line is crossed", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if m.j.stop >= 0 && was.stop < 0 && m.j.state != "ended" {
			m.j.ending, m.j.stage = false, sPlan
		}
	}}},
	{"an emergency is not heard", tamper{before: func(m *Machine, ev *protocol.Event) bool {
		return ev.Said == nil || len(ev.Said.Meanings) == 0 || ev.Said.Meanings[0].Kind != utterance.Emergency
	}}},
	{"something else is said first in an emergency", tamper{heard: func(m *Machine, out []protocol.Effect) []protocol.Effect {
		if m.j.alarm == "" {
			return out
		}
		return append([]protocol.Effect{{Type: protocol.DoSay, Level: "info", Text: "One moment."}}, out...)
	}}},
	{"the voice goes on in an emergency", tamper{heard: without(func(e protocol.Effect) bool { return e.Type == protocol.DoHush })}},
	{"work goes on in an emergency", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if m.j.alarm != "" && was.alarm == "" && was.q != nil {
			m.j.q = m.taskQuestion(pauseTask{})
			m.j.q.id += "again"
		}
	}}},
	{"an undo forgets a wire that is off", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if ev.Type == protocol.EvUndo {
			m.j.site.Wires = worksite.Set{}
		}
	}}},
	{"an undo forgets an open cover", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if ev.Type == protocol.EvUndo {
			m.j.site.Covers = worksite.Set{}
		}
	}}},
	{"an undo keeps the proof that it takes a reading from", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if ev.Type == protocol.EvUndo && was.site.Proof > 0 && m.j.site.Proof < was.site.Proof+1 {
			m.j.site.Power, m.j.site.Proof = worksite.Proved, 0
		}
	}}},
	{"a new start forgets the jumper", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if ev.Type == protocol.EvResume {
			m.j.site.Jumper = 0
		}
	}}},
	{"a new start forgets the meter in line", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if ev.Type == protocol.EvResume {
			m.j.site.Series = 0
		}
	}}},
	{"an alarm forgets what is open", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if m.j.alarm != "" && was.alarm == "" {
			m.j.site.Covers, m.j.site.Wires = worksite.Set{}, worksite.Set{}
		}
	}}},
	{"a change forgets the held door switch", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if answered(ev) == cChanged {
			m.j.site.Held = false
		}
	}}},
	{"silence proves dead", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if ev.Type == protocol.EvTick && m.j.site.Power == worksite.Off && m.j.state != "ended" {
			m.j.site.Power = worksite.Proved
		}
	}}},
	{"a refusal of the proof proves dead", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if q := was.q; answered(ev) == cCantReach && q != nil && q.act.Proof() && m.j.state != "ended" {
			m.j.site.Power = worksite.Proved
		}
	}}},
	{"\"don't know\" leads nowhere", tamper{after: func(m *Machine, was *job, ev *protocol.Event) {
		if answered(ev) == cDontKnow && was.q != nil && was.q.check >= 0 && m.j.state != "ended" {
			m.j.q = nil
		}
	}}},
}

func cautious(e protocol.Effect) bool {
	return e.Type == protocol.DoSay && (e.Level == "caution" || e.Level == "warning" || e.Level == "danger")
}

func without(drop func(protocol.Effect) bool) func(*Machine, []protocol.Effect) []protocol.Effect {
	return func(m *Machine, out []protocol.Effect) []protocol.Effect { return slices.DeleteFunc(out, drop) }
}

// answered is the id of what was said, empty when it is no choice and no command.
func answered(ev *protocol.Event) string {
	if ev.Said == nil || len(ev.Said.Meanings) == 0 {
		return ""
	}
	return ev.Said.Meanings[0].ID
}

// Mistakes lists their names.
func Mistakes() []string {
	var out []string
	for _, x := range mistakes {
		out = append(out, x.name)
	}
	return out
}

// ProveMistaken is Prove with a mistake put in.
func ProveMistaken(name string, model *appliance.Model, lex utterance.Lexicon, words *Words) (Proved, error) {
	i := slices.IndexFunc(mistakes, func(x struct {
		name string
		t    tamper
	}) bool {
		return x.name == name
	})
	x := mistakes[i].t
	x.once = true
	return prove(model, lex, words, x)
}
