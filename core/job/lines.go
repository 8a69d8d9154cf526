package job

import (
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/vocab"
	"readback/core/worksite"
)

// LineIDs lists every line that the session may say, in a fixed order. The words of a language have exactly these.
func LineIDs() []string {
	ids := append([]string(nil), plainIDs...)
	add := func(head string, tails ...string) {
		for _, t := range tails {
			ids = append(ids, head+t)
		}
	}
	for _, k := range worksite.Kinds() {
		add("act."+k.String(), "", ".done")
		if (worksite.Act{Kind: k}).Proof() {
			add("proof.", k.String())
		}
		if (worksite.Act{Kind: k}).Zero() {
			add("dead.", k.String())
		}
	}
	for _, p := range []worksite.Power{worksite.Unknown, worksite.On, worksite.Off, worksite.Proved} {
		add("power.", p.String())
		add("item.power.", p.String())
		add("plain.", "power."+p.String(), "item.power."+p.String())
	}
	for _, f := range measure.Functions {
		if f.ID != measure.Look {
			add("meter.", string(f.ID))
		}
	}
	for _, a := range vocab.AlarmIDs() {
		add("alarm."+a, "", ".then")
		add("hazard.of.", a)
	}
	for _, n := range []string{"one", "two", "three"} {
		add("miss.", "number."+n, "choice."+n)
		add("odd.", n)
		add("battery.", n)
	}
	for _, s := range vocab.StageIDs(nil) {
		add("stage.", s)
		add("why.stage.", s)
	}
	add("hazard.", vocab.HazardIDs(false)...)
	add("cover.", vocab.HazardIDs(true)...)
	add("end.", vocab.OutcomeIDs()...)
	add("signal.", "danger", "warning", "caution")
	add("verdict.", "pass", "likely-pass", "likely-fail", "fail", "invalid", "nothing")
	add("lost.", "miss", "odd", cSkip, cCantReach, cDontKnow)
	add("notice.", "speech-off", "sound-off", "mic-off", "silenced")
	add("", adviceIDs...)
	add("eye.", "agrees", "sees", "unit", "zero", "differs", "none", "odd", "fire", "lamp", "meter", "photo", "plate", "wires.differ", "wires.same")
	add("fire.", slices.DeleteFunc(slices.Clone(appliance.Sights), func(s string) bool { return s == appliance.SeenDark })...)
	add("wire.", "another", "gone", "added", "differs", "hidden", "put-back", "same", "on-purpose")
	add("", "wires.compared", "open.unlike")
	add("plain.act.", "power-off", "power-off.done", "power-on", "power-on.done")
	return ids
}

var plainIDs = []string{
	"age", "age.back", "agreed", "alarm.after", "alarm.fact", "alarm.false", "alarm.out", "alarm.over", "blank.why", "call.again", "callout",
	"changed", "changed.fact", "consent", "consent.need", "cost.callout", "cost.early", "cost.minutes", "cost.nothing",
	"cost.old", "cost.part", "cost.unknown", "cycle.first", "cycle.one", "cycle.second", "cycle.two", "dead.number", "decide",
	"differs", "done.number", "doubt", "doubt.other", "expected.later", "finish", "finish.already", "from.to", "handover", "handover.call",
	"handover.closed", "handover.open", "handover.story", "hello", "help", "hold.live", "hold.refused", "holding", "how.check",
	"how.none", "howlong", "howlong.cycle", "item.cover", "item.door", "item.jack", "item.jumper", "item.reset", "item.wire",
	"items", "items.again", "items.doubt", "items.good", "jumping.ask", "last.fact", "lead", "leads",
	"leads.bad", "leads.good", "leads.open", "leads.unproved", "left.open", "limit.between", "limit.high", "limit.low", "loud",
	"match", "match.good", "match.later", "match.wrong", "mended", "meter.kind", "meter.leads", "meter.modest", "meter.none", "meter.short", "missed", "must", "new.day",
	"none.back", "not.listed", "not.proved", "notfixed", "number", "once.more", "open.cover", "open.door", "open.jack",
	"open.jumper", "open.meter", "open.power", "open.reset", "open.wire", "or", "other.meter", "pause", "person", "photo.after",
	"photo.before", "photo.differs", "photo.note", "plate", "plate.without", "label.without", "proof.live", "proof.live.fact", "proof.nolive", "proof.nometer", "proof.stop", "proof.aged", "proof.broken", "all.right", "likely", "minutes.one", "minutes.many", "handover.emergency", "handover.out", "handover.in-doubt", "handover.gas-open", "handover.stay-out",
	"handover.call.emergency", "handover.call.electrician", "starts.enough", "relight", "relight.early", "empty.good", "empty.charged", "license", "license.fact", "meter.category", "meter.not-rated", "emergency.number", "emergency.digits", "gate.restart", "gate.cause", "gate.fact", "alarm.stays",
	"consent.proof", "jacks.none", "jacks.current", "jacks.volts",
	"proved.by", "rest", "resume.soon", "resume.unknown", "resumed", "right.now", "right.or.different", "safety.must", "safety.stop",
	"say.ready", "say.state", "shortcut", "shorter", "silent.choice", "silent.number", "slower", "step.done", "still.here",
	"offer", "offer.looks", "look.again", "look.which", "mend.now", "watch", "watch.again", "watch.done", "watch.how",
	"stop", "story", "story.fact", "story.thanks", "suspect.none", "swap", "this.or.that", "timed.over", "timed.still",
	"too.much", "too.odd.plate", "unconfirmed", "undo.done", "undo.none", "unknown", "unknown.fact", "unresolved", "unsure.hazard", "verdict", "verdict.passes",
	"wait.quietly", "what.if", "what.leads", "what.then", "where.none", "which.unit", "why.act", "why.check", "why.doubt", "why.leave", "why.minutes", "why.second", "why.tells", "why.proof",
	"wrong.kind", "wrong.money", "wrong.unit",
}

// adviceIDs are the sentences that an adviser says through the session.
var adviceIDs = []string{"suspect.nothing", "suspect.unknown", "why.again", "why.tells", "why.missing", "sure.missing", "sure.check"}
