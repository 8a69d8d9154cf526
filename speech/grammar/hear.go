package grammar

import (
	"math"
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/utterance"
	"readback/speech"
	"readback/speech/number"
)

// top is how many of the best alternatives an emergency is looked for in.
const top = 3

// Hear turns the alternatives of one saying, best first, into an utterance. The caller fills in source, times, level and noise.
func (p *Parser) Hear(alts []speech.Alternative, e Expect) utterance.Utterance {
	return p.HearAll([]Pass{{Alternatives: alts, Weight: 1}}, e)
}

// HearAll is Hear for several passes of one saying.
//
// A reading may stand in any alternative of any hearing, but only when the best word string of all together is neither empty nor
// holds an unknown word: looking further than that turns noise into numbers. The readings stand behind each other with
// their distance, so that a rival is seen.
func (p *Parser) HearAll(ws []Pass, e Expect) utterance.Utterance {
	var u utterance.Utterance
	alts := combine(ws)
	if len(alts) == 0 {
		u.Fault = "unknown"
		return u
	}
	u.Text = strings.TrimSpace(alts[0].Text)
	for _, a := range alts[1:] {
		if t := strings.TrimSpace(a.Text); t != "" && t != u.Text {
			u.Rivals = append(u.Rivals, t)
		}
	}
	u.Meanings = p.Parse(u.Text, e)
	known := u.Text != "" && !strings.Contains(u.Text, Unknown)
	inWords := len(e.Options) > 0 && len(e.Units) == 0
	if known && !inWords && (len(u.Meanings) == 0 || hasReading(u.Meanings) || len(e.Units) > 0 && !p.exact(u.Text)) {
		u.Meanings, u.Agree = p.merge(u.Meanings, ws, u.Text, e)
	}
	if known {
		u.Meanings = p.answers(u.Meanings, alts, e)
	}
	u.Meanings = p.emergency(u.Meanings, ws)
	u.Margin = margin(u.Meanings)
	if len(u.Meanings) == 0 {
		u.Fault = "unknown"
	}
	return u
}

// answers adds the answers that were asked for and that only other alternatives hold, with the recogniser's cost between them:
// "blinks" where only "clicks" answers, or a rival of the answer heard. It never replaces what was heard, it stands behind it.
func (p *Parser) answers(ms []utterance.Meaning, alts []speech.Alternative, e Expect) []utterance.Meaning {
	asked := map[string]bool{}
	for _, id := range e.Options {
		asked[id] = true
	}
	wanted := func(m utterance.Meaning) bool {
		return m.Kind == utterance.Choice && asked[m.ID] && m.Cost < costInside
	}
	if len(e.Options) == 0 || len(ms) > 0 && withUnit(ms[0]) {
		return ms
	}
	more := slices.DeleteFunc(slices.Clone(ms), func(m utterance.Meaning) bool { return !wanted(m) })
	known := len(more)
	for _, a := range alts[1:] {
		if strings.Contains(a.Text, Unknown) {
			continue
		}
		for _, m := range p.Parse(a.Text, e) {
			if !wanted(m) || slices.ContainsFunc(more, func(x utterance.Meaning) bool { return x.ID == m.ID }) {
				continue
			}
			m.Cost += max(a.Cost-alts[0].Cost, 0) + costElse
			more = append(more, m)
		}
	}
	return order(append(ms, more[known:]...), nil)
}

// costElse marks an answer that only another alternative holds, nats: it is behind anything the best one means.
const costElse = 0.5

func hasReading(ms []utterance.Meaning) bool {
	for _, m := range ms {
		if m.Kind == utterance.Reading {
			return true
		}
	}
	return false
}

// withUnit tells whether a reading needs no unit: one was said, or it is a state.
func withUnit(m utterance.Meaning) bool {
	return m.Kind == utterance.Reading && (m.Reading.Value.Unit != "" || m.Units != nil || m.Reading.State != measure.Number)
}

// exact tells whether the words as a whole are a command, an answer or an emergency.
func (p *Parser) exact(text string) bool {
	words := strings.Fields(number.Words(text))
	return p.commands[strings.Join(words, " ")] != "" || p.commands[strings.Join(trim(words), " ")] != "" || len(p.choices(words, &asked{})) > 0 || p.hazards.find(words) != nil
}

// merge puts the readings that all passes hold in the place of those of the best word string.
func (p *Parser) merge(first []utterance.Meaning, ws []Pass, head string, e Expect) ([]utterance.Meaning, float64) {
	loose := !hasReading(first) // an answer somewhere inside what was heard
	readings, agree := p.readings(ws, e, head, !loose)
	if len(readings) == 0 {
		return first, 0
	}
	rest := slices.DeleteFunc(first, func(m utterance.Meaning) bool { return m.Kind == utterance.Reading })
	if loose && (len(rest) == 0 || rest[0].Kind != utterance.Emergency) {
		for i := range rest {
			rest[i].Cost += costInside
		}
	}
	if withUnit(readings[0]) {
		for i := range rest {
			if rest[i].Kind == utterance.Count {
				rest[i].Cost++
			}
		}
	}
	return order(append(rest, readings...), nil), agree
}

// Same tells whether two meanings say the same thing: equal size and unit, state, answer or command. Digits after the
// last one that counts do not matter.
func Same(a, b utterance.Meaning) bool {
	if a.Kind != b.Kind || a.ID != b.ID {
		return false
	}
	if a.Kind != utterance.Reading {
		return a.Kind == utterance.Command || a.Kind == utterance.Choice || a.Text == b.Text
	}
	x, y := a.Reading, b.Reading
	if x.State != y.State || x.AC != y.AC && x.AC != "" && y.AC != "" {
		return false
	}
	if x.Low != nil && y.Low != nil && x.High != nil && y.High != nil {
		return *x.Low == *y.Low && *x.High == *y.High
	}
	return x.Value.Dec.Equal(y.Value.Dec) && x.Value.Unit == y.Value.Unit && strings.Join(a.Units, " ") == strings.Join(b.Units, " ")
}

// tie is the margin of two readings that are equally good: 0 would say that there is only one.
const tie = 0.01

// margin is the distance from the best reading to the next different one, 0 when there is only one.
func margin(ms []utterance.Meaning) float64 {
	var best *utterance.Meaning
	for i := range ms {
		if ms[i].Kind != utterance.Reading {
			continue
		}
		if best == nil {
			best = &ms[i]
		} else if !Same(*best, ms[i]) && (withUnit(ms[i]) || !best.Reading.Value.Dec.Equal(ms[i].Reading.Value.Dec)) {
			return math.Max(tie, ms[i].Cost-best.Cost)
		}
	}
	return 0
}

// emergency adds what the best alternatives of each hearing know: a phrase in one of them counts, a bare word when two passes
// hold it and nothing else, and a "no" that one of them lacks is not trusted. What is found so is asked about first.
func (p *Parser) emergency(ms []utterance.Meaning, ws []Pass) []utterance.Meaning {
	if len(ms) > 0 && ms[0].Kind == utterance.Emergency {
		return ms
	}
	bare := map[string]int{}
	for _, w := range ws {
		if w.ReadingsOnly {
			continue
		}
		for i, a := range w.Alternatives[:min(top, len(w.Alternatives))] {
			if i == 0 && len(ws) == 1 {
				continue // known already
			}
			words := strings.Fields(number.Words(a.Text))
			h := p.hazards.find(words)
			if h == nil || h.class == "ask" {
				continue
			}
			if !h.whole {
				if len(words) > 1 {
					continue
				}
				if bare[h.class]++; bare[h.class] < 2 {
					continue
				}
			}
			return append([]utterance.Meaning{{Kind: utterance.Emergency, ID: h.class, Text: h.words, Doubt: true}}, ms...)
		}
	}
	return ms
}

// Urgent parses words still being spoken: only an emergency or "quiet" is returned.
func (p *Parser) Urgent(text string) *utterance.Meaning {
	words := strings.Fields(number.Words(text))
	if h := p.hazards.find(words); h != nil {
		return &utterance.Meaning{Kind: utterance.Emergency, ID: h.class, Text: h.words, Doubt: h.doubt}
	}
	if id := p.commands[strings.Join(words, " ")]; id == "quiet" {
		return &utterance.Meaning{Kind: utterance.Command, ID: id, Text: text}
	}
	return nil
}

// unitSaid tells whether words are a reading with its unit, not a bare number in a place where units are expected.
func (p *Parser) unitSaid(text string) bool {
	return slices.ContainsFunc(p.number.Parse(text, nil), withUnit)
}

// Complete tells whether the words are a whole meaning that more words are not expected to follow: a reading with its unit said,
// a command or an answer. A bare number is not, whatever unit was asked for: "one hundred" may go on.
func (p *Parser) Complete(text string, e Expect) bool {
	for _, m := range p.Parse(text, e) {
		if m.Kind == utterance.Command || m.Kind == utterance.Choice && m.Cost < costInside {
			return true
		}
	}
	return p.unitSaid(text) // "one hundred" may go on
}
