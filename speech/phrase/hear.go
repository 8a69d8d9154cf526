package phrase

import (
	"math"
	"slices"
	"strings"

	"readback/core/heard"
	"readback/core/measure"
	"readback/speech/number"
)

// top is how many of the best alternatives an emergency is looked for in.
const top = 3

// Hear turns the alternatives of one saying, best first, into an utterance. The caller fills in source, times, level and noise.
//
// A reading is the first alternative that parses with a unit, but only when the best alternative is neither empty nor
// holds an unknown word: looking further than that turns noise into numbers. Readings of the other alternatives
// follow with the recogniser's cost added, so that a rival is seen.
func (p *Parser) Hear(alts []Alternative, e Expect) heard.Utterance {
	var u heard.Utterance
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
	known := u.Text != "" && !strings.Contains(u.Text, "[unk]")
	if inWords := len(e.Options) > 0 && len(e.Units) == 0; known && !inWords && (len(u.Meanings) == 0 || hasReading(u.Meanings)) {
		u.Meanings = p.merge(u.Meanings, alts, e)
	}
	if known {
		u.Meanings = p.answers(u.Meanings, alts, e)
	}
	u.Meanings = p.emergency(u.Meanings, alts)
	u.Margin = margin(u.Meanings)
	if len(u.Meanings) == 0 {
		u.Fault = "unknown"
	}
	return u
}

// answers adds the answers that were asked for and that only other alternatives hold, with the recogniser's cost between them:
// "blinks" where only "clicks" answers, or a rival of the answer heard. It never replaces what was heard, it stands behind it.
func (p *Parser) answers(ms []heard.Meaning, alts []Alternative, e Expect) []heard.Meaning {
	asked := map[string]bool{}
	for _, id := range e.Options {
		asked[id] = true
	}
	wanted := func(m heard.Meaning) bool { return m.Kind == heard.Choice && asked[m.ID] && m.Cost < costInside }
	if len(e.Options) == 0 || len(ms) > 0 && withUnit(ms[0]) {
		return ms
	}
	more := slices.DeleteFunc(slices.Clone(ms), func(m heard.Meaning) bool { return !wanted(m) })
	known := len(more)
	for _, a := range alts[1:] {
		if strings.Contains(a.Text, "[unk]") {
			continue
		}
		for _, m := range p.Parse(a.Text, e) {
			if !wanted(m) || slices.ContainsFunc(more, func(x heard.Meaning) bool { return x.ID == m.ID }) {
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

// costForeign is what a reading costs in a unit that was not asked for, nats: it decides near ties and never replaces a clear one.
const costForeign = 1.0

func hasReading(ms []heard.Meaning) bool {
	for _, m := range ms {
		if m.Kind == heard.Reading {
			return true
		}
	}
	return false
}

// withUnit tells whether a reading needs no unit: one was said, or it is a state.
func withUnit(m heard.Meaning) bool {
	return m.Kind == heard.Reading && (m.Reading.Value.Unit != "" || m.Units != nil || m.Reading.State != measure.Number)
}

// merge adds the readings of the alternatives. When the best one has no reading with a unit, the first that has
// one leads.
func (p *Parser) merge(first []heard.Meaning, alts []Alternative, e Expect) []heard.Meaning {
	var readings, rest []heard.Meaning
	offset := math.NaN()
	for i, a := range alts {
		ms := first
		if i > 0 {
			if strings.Contains(a.Text, "[unk]") {
				continue
			}
			ms = p.number.Parse(a.Text, e.Units)
		}
		for _, m := range ms {
			if m.Kind != heard.Reading {
				if i == 0 {
					rest = append(rest, m)
				}
				continue
			}
			if i > 0 && (!withUnit(m) || m.Units != nil && !p.unitSaid(a.Text)) {
				continue
			}
			if math.IsNaN(offset) && withUnit(m) {
				offset = a.Cost
			}
			m.Cost += a.Cost - alts[0].Cost
			if len(e.Units) > 0 && m.Reading.Value.Unit != "" && !slices.Contains(e.Units, m.Reading.Value.Unit) {
				m.Cost += costForeign
			}
			readings = addReading(readings, m)
		}
	}
	if math.IsNaN(offset) { // only bare numbers, or none
		return order(append(rest, readings...), nil)
	}
	// A bare number in front gives way to the first with a unit.
	for i := range rest {
		if rest[i].Kind == heard.Count {
			rest[i].Cost++
		}
	}
	for i := range readings {
		if withUnit(readings[i]) {
			readings[i].Cost = math.Max(0, readings[i].Cost-(offset-alts[0].Cost))
		} else {
			readings[i].Cost++
		}
	}
	return order(append(rest, readings...), nil)
}

// addReading keeps the cheaper of two meanings with the same value.
func addReading(ms []heard.Meaning, m heard.Meaning) []heard.Meaning {
	for i := range ms {
		if Same(ms[i], m) {
			if m.Cost < ms[i].Cost {
				ms[i] = m
			}
			return ms
		}
	}
	return append(ms, m)
}

// Same tells whether two meanings say the same thing: equal size and unit, state, answer or command. Digits after the
// last one that counts do not matter.
func Same(a, b heard.Meaning) bool {
	if a.Kind != b.Kind || a.ID != b.ID {
		return false
	}
	if a.Kind != heard.Reading {
		return a.Kind == heard.Command || a.Kind == heard.Choice || a.Text == b.Text
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

// margin is the distance from the best reading to the next different one, 0 when there is only one.
func margin(ms []heard.Meaning) float64 {
	var best *heard.Meaning
	for i := range ms {
		if ms[i].Kind != heard.Reading {
			continue
		}
		if best == nil {
			best = &ms[i]
		} else if !Same(*best, ms[i]) && (withUnit(ms[i]) || !best.Reading.Value.Dec.Equal(ms[i].Reading.Value.Dec)) {
			return ms[i].Cost - best.Cost
		}
	}
	return 0
}

// emergency adds what the top alternatives know: a phrase in one of them counts, and a "no" that one of them lacks is not
// trusted.
func (p *Parser) emergency(ms []heard.Meaning, alts []Alternative) []heard.Meaning {
	if len(ms) > 0 && ms[0].Kind == heard.Emergency && !ms[0].Doubt {
		return ms
	}
	for i, a := range alts {
		if i == 0 || i >= top {
			continue
		}
		h := p.hazards.find(strings.Fields(number.Words(a.Text)))
		if h == nil || !h.whole || h.class == "ask" {
			continue
		}
		m := heard.Meaning{Kind: heard.Emergency, ID: h.class, Text: h.words, Doubt: true}
		if len(ms) > 0 && ms[0].Kind == heard.Emergency {
			return ms
		}
		return append([]heard.Meaning{m}, ms...)
	}
	return ms
}

// Urgent parses words still being spoken: only an emergency or "quiet" is returned.
func (p *Parser) Urgent(text string) *heard.Meaning {
	words := strings.Fields(number.Words(text))
	if h := p.hazards.find(words); h != nil {
		return &heard.Meaning{Kind: heard.Emergency, ID: h.class, Text: h.words, Doubt: h.doubt}
	}
	if id := p.commands[strings.Join(words, " ")]; id == "quiet" {
		return &heard.Meaning{Kind: heard.Command, ID: id, Text: text}
	}
	return nil
}

// unitSaid tells whether words are a reading with its unit, not a bare number in a place where units are expected.
func (p *Parser) unitSaid(text string) bool {
	return slices.ContainsFunc(p.number.Parse(text, nil), withUnit)
}

// Complete tells whether the words are a whole meaning that more words are not expected to follow: a reading with a unit,
// a command or an answer.
func (p *Parser) Complete(text string, e Expect) bool {
	for _, m := range p.Parse(text, e) {
		if m.Kind == heard.Command || m.Kind == heard.Choice && m.Cost < costInside {
			return true
		}
	}
	return p.unitSaid(text) // "one hundred" may go on
}
