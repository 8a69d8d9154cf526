package grammar

import (
	"math"
	"slices"
	"sort"
	"strings"

	"readback/core/measure"
	"readback/core/utterance"
	"readback/speech"
	"readback/speech/number"
)

// Chosen on the tuning half of the bench, or judgement.
const (
	mistake      = 3.0 // nats that writing a word for another costs
	mistakesMost = 2   // in one word string
	widened      = 6   // word strings of each hearing that are looked at for mistakes
	candidates   = 10  // readings that are worth a second opinion
	behind       = 8.0 // nats behind the best one at most
)

// Widen adds to each hearing what its best word strings may stand for: a recogniser in noise writes words that are no number for some that
// are, and the same ones each time ("i hundred" for "five hundred"). Only a rescorer can tell whether they are right: without one
// there is nothing to choose by.
func (p *Parser) Widen(ws []Pass, e Expect) []Pass {
	out := slices.Clone(ws)
	for i, w := range ws {
		seen := map[string]bool{}
		for _, a := range w.Alternatives {
			seen[a.Text] = true
		}
		var more []speech.Alternative
		bare := len(e.Units) > 0 && len(w.Alternatives) > 0 && !p.unitSaid(w.Alternatives[0].Text) && p.Reading(w.Alternatives[0].Text, e)
		for _, a := range w.Alternatives[:min(widened, len(w.Alternatives))] {
			for _, x := range p.mistakes(strings.Fields(a.Text), 0, mistakesMost) {
				text := strings.Join(x.words, " ")
				if !seen[text] && (p.unitSaid(text) || bare && p.Reading(text, e)) {
					seen[text] = true
					more = append(more, speech.Alternative{Text: text, Cost: a.Cost + mistake*float64(x.n)})
				}
			}
		}
		out[i].Alternatives = append(slices.Clone(w.Alternatives), more...)
		sort.SliceStable(out[i].Alternatives, func(a, b int) bool { return out[i].Alternatives[a].Cost < out[i].Alternatives[b].Cost })
	}
	return out
}

type mistaken struct {
	words []string
	n     int
}

// mistakes gives the word strings with up to left mistakes taken back from place at on, at least one.
func (p *Parser) mistakes(words []string, at, left int) []mistaken {
	if left == 0 {
		return nil
	}
	var out []mistaken
	for ; at < len(words); at++ {
		for n := 1; n <= p.misheard && at+n <= len(words); n++ {
			for _, said := range p.lex.Misheard[strings.Join(words[at:at+n], " ")] {
				w := slices.Concat(words[:at], strings.Fields(said), words[at+n:])
				out = append(out, mistaken{w, 1})
				for _, x := range p.mistakes(w, at+strings.Count(said, " ")+1, left-1) {
					out = append(out, mistaken{x.words, x.n + 1})
				}
			}
		}
	}
	return out
}

// Candidate is a reading that is worth a second opinion, with the ways to write what was said.
type Candidate struct {
	Text    string // the words of the recogniser
	Written []string
}

// Candidates are the likeliest readings of an utterance. Where its best words are no reading they stand behind as what the readings must beat.
// There are none when nothing has to be decided.
func Candidates(u *utterance.Utterance) []Candidate {
	var out []Candidate
	first, said := math.NaN(), false
	for _, m := range u.Meanings {
		if m.Kind != utterance.Reading || m.Text == "" {
			continue
		}
		if math.IsNaN(first) {
			first = m.Cost
		}
		if m.Cost-first > behind || len(out) == candidates {
			break
		}
		said = said || m.Text == u.Text
		out = append(out, Candidate{m.Text, written(m)})
	}
	if !said && len(out) > 0 && u.Text != "" && !strings.Contains(u.Text, Unknown) {
		out = append(out, Candidate{u.Text, []string{Sentence(joinUnits.Replace(u.Text))}})
	}
	if len(out) < 2 {
		return nil
	}
	return out
}

// Sentence writes words as a rescorer reads them.
func Sentence(s string) string { return strings.ToUpper(s[:1]) + s[1:] + "." }

var joinUnits = strings.NewReplacer("milli ", "milli", "micro ", "micro", "nano ", "nano", "kilo ohm", "kilohm", "mega ohm", "megohm", "far ad", "farad",
	" a c", " AC", " d c", " DC", "o l", "OL")

// written is what was said as a sentence: in words, and where it can be with figures.
func written(m utterance.Meaning) []string {
	words := joinUnits.Replace(m.Text)
	out := []string{Sentence(words)}
	r := m.Reading
	if r.State == measure.Number && r.Value.Unit != "" {
		figures := r.Value.Dec.String() + " " + joinUnits.Replace(strings.TrimPrefix(r.Value.Words(), r.Value.Dec.Words()+" "))
		if o := number.Opening(m.Text); o != "" {
			figures = o + " " + figures
		}
		for _, ac := range []string{" AC", " DC"} {
			if strings.HasSuffix(words, ac) {
				figures += ac
			}
		}
		out = append(out, Sentence(figures))
	}
	return out
}

// Reading tells whether words are a reading, given what was asked.
func (p *Parser) Reading(text string, e Expect) bool {
	return hasReading(p.number.Parse(text, e.Units))
}

// Opinion makes a pass of what a rescorer says about the candidates: the logarithms of the probabilities of all their written forms, in order.
func Opinion(cs []Candidate, logs []float64, weight float64) Pass {
	w := Pass{Weight: weight, ReadingsOnly: true}
	for _, c := range cs {
		best := slices.Max(logs[:len(c.Written)])
		logs = logs[len(c.Written):]
		if !math.IsInf(best, -1) {
			w.Alternatives = append(w.Alternatives, speech.Alternative{Text: c.Text, Cost: -best})
		}
	}
	sort.SliceStable(w.Alternatives, func(i, j int) bool { return w.Alternatives[i].Cost < w.Alternatives[j].Cost })
	return w
}

// Alarms are the sayings of the emergencies that are acted on.
func (p *Parser) Alarms() []string {
	var out []string
	for _, c := range p.lex.Emergencies.Classes {
		for _, s := range c.Say {
			if c.ID != "ask" && !strings.Contains(s, "*") {
				out = append(out, s)
			}
		}
	}
	return out
}
