package utterance

import "readback/core/vocab"

// ChoiceSlot is what is known about an answer in words that is due.
type ChoiceSlot struct {
	Clears func(Meaning) bool // would it say that a hazard is not there? nil: none does
	Told   string             // a command that was answered here last: heard again it may be an answer misheard
	Named  []Meaning          // the two that were just asked about: naming one of them settles it
}

// ChoiceDecision is what to do about an answer in words: Accept, AskTwo or Confirm.
type ChoiceDecision struct {
	Action      Action
	Take, Rival Meaning
	Why         string
}

// Nats by which an answer in words must lead. An answer that is not among the best word strings was found by looking for it: so far behind
// it is taken with a question only. Chosen on jobs by sound with voices and seeds other than those reported.
const (
	farBehind   = 4.0
	clearBehind = 0.9 // where it would clear a hazard
	changeNear  = 1.0 // "something changed" behind an answer
)

// foundInside is why a doubtful meaning is confirmed.
const foundInside = "it was found among other words"

// ends tells whether a command ends a question without an answer, or takes an answer back. When one is heard where an
// answer to the question is near, the answer may have been said.
func ends(id string) bool {
	c, ok := vocab.CommandOf(id)
	return ok && c.Ends
}

// DecideChoice chooses what to do about an utterance where an answer in words is due. fits are its meanings that answer the question,
// commands among them, best first, at least one. A plain command needs no certainty: it costs a sentence.
func DecideChoice(u *Utterance, fits []Meaning, s ChoiceSlot) ChoiceDecision {
	d := ChoiceDecision{Action: Accept, Take: fits[0]}
	if u.Source != "voice" {
		if d.Take.Doubt {
			d.Action, d.Why = Confirm, foundInside
		}
		return d
	}
	clears := s.Clears != nil && s.Clears(d.Take)
	for _, r := range fits[1:] {
		light := d.Take.Kind == Command && !ends(d.Take.ID) && d.Take.ID != s.Told
		if light || alike(r, d.Take) || r.Kind == Command && (!ends(r.ID) || d.Take.Kind != Command && r.ID != "it-changed") {
			continue
		}
		limit := marginMatters
		if d.Take.Cost >= clearBehind { // neither is what the best words are
			limit = marginHazard
		}
		switch {
		case r.Kind == Command && d.Take.Kind != Command:
			limit = changeNear
		case clears && !s.Clears(r):
			limit = marginHazard
		}
		switch {
		case r.Cost-d.Take.Cost >= limit:
			continue
		case d.Take.Kind == Command && r.Kind != Command: // what was asked for is named first
			d.Take, r = r, d.Take
		}
		d.Action, d.Rival, d.Why = AskTwo, r, "another answer is near in sound"
		if s.named(r) && s.named(d.Take) || r.ID == s.Told && s.Told != "" { // the same again: one of them alone
			d.Action = Confirm
		}
		return d
	}
	switch {
	case d.Take.Doubt && !s.named(d.Take):
		d.Action, d.Why = Confirm, foundInside
	case d.Take.Kind == Command || s.named(d.Take):
	case d.Take.Cost >= farBehind || clears && d.Take.Cost >= clearBehind:
		d.Action, d.Why = Confirm, "it was heard among the answers only"
	case clears && u.SNR != 0 && u.SNR < snrConfirm:
		d.Action, d.Why = Confirm, "it is loud"
	}
	return d
}

func (s ChoiceSlot) named(m Meaning) bool {
	for _, n := range s.Named {
		if alike(n, m) {
			return true
		}
	}
	return false
}

// alike tells whether two answers in words are the same one.
func alike(a, b Meaning) bool {
	return a.ID == b.ID && (a.ID != "" || a.Kind == b.Kind && a.Text == b.Text)
}
