// Package number turns spoken words into readings: exact decimals with units, display states, ranges, repairs.
// It returns everything the words can mean with its cost, or nothing: a refusal is better than a guess.
package number

import (
	"sort"
	"strings"

	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
)

// Costs in nats, set by judgement: what matters is their order, and that ways of speaking that are honestly
// ambiguous lie within two nats of each other, so that they are asked about when it makes a difference.
const (
	costHomophone = 1.5 // "for volts"
	costDropped   = 0.7 // "four seven" as 4.7
	costPair      = 1.4 // "one twenty" as 1.20
	costOh        = 0.4 // "oh" as zero or as the first half of O L
	costRange     = 0.3 // "one to four" without a word of motion
	costAnd       = 3.0 // "two hundred and five" as 200.5
	costTail      = 0.5 // "twenty six point four, no, five" as 26.5
)

// Parser holds the units and states of one lexicon. It is read-only and may be shared.
type Parser struct {
	units   map[string][]string // saying → unit ids, in the order of unit.All
	states  map[string]measure.State
	first   map[string]bool // words that a unit or a state may begin with
	longest int             // words of the longest unit saying
}

// New builds a parser from the units and states of a lexicon.
func New(lex *utterance.Lexicon) *Parser {
	p := &Parser{units: map[string][]string{}, states: map[string]measure.State{}, first: map[string]bool{}}
	for _, u := range unit.All() {
		for _, s := range lex.Units[u.ID] {
			p.units[s] = append(p.units[s], u.ID)
			p.first[firstWord(s)] = true
			p.longest = max(p.longest, strings.Count(s, " ")+1)
		}
	}
	for _, st := range []measure.State{measure.Over, measure.Beep, measure.Silent, measure.Blank, measure.Jumping, measure.Dead} {
		for _, s := range lex.States[string(st)] {
			p.states[s] = st
			p.first[firstWord(s)] = true
		}
	}
	return p
}

func firstWord(s string) string {
	w, _, _ := strings.Cut(s, " ")
	return w
}

// Parse returns the meanings of a whole saying, best first, the best at cost 0. Nil is a refusal. Units narrows a
// saying without a unit, or with an ambiguous one, to the unit ids that are expected; nil expects any.
func (p *Parser) Parse(text string, units []string) []utterance.Meaning {
	said := tokens(text)
	if len(said) == 0 || len(said) > 32 {
		return nil
	}
	rs := p.state(said)
	ts := strip(said)
	if rs == nil {
		rs = p.quantity(ts)
	}
	repair := false
	if rs == nil {
		rs, repair = p.repaired(ts)
	}
	if rs == nil && repair {
		return nil
	}
	if rs == nil {
		return p.unitOnly(ts)
	}
	return finish(rs, text, units, repair)
}

// result is one reading with the units it can have; units is nil when none was said.
type result struct {
	r     measure.Reading
	units []string
	cost  float64
	homo  bool // holds a homophone: needs a unit
}

func finish(rs []result, text string, expected []string, repair bool) []utterance.Meaning {
	var ms []utterance.Meaning
	for _, r := range rs {
		if r.homo && r.units == nil {
			continue
		}
		m := utterance.Meaning{Kind: utterance.Reading, Text: text, Repair: repair, Cost: r.cost}
		rd := r.r
		if rd.State == measure.Number || rd.State == measure.Jumping && rd.Low != nil {
			fit := r.units
			if expected != nil {
				if both := intersect(r.units, expected); both != nil {
					fit = both
				} else if r.units == nil {
					fit = expected
				}
			}
			if len(fit) == 1 && r.units != nil {
				setUnit(&rd, fit[0])
			} else {
				m.Units = fit
			}
		}
		m.Reading = &rd
		ms = append(ms, m)
		if d := rd.Value.Dec; rd.State == measure.Number && r.units == nil && rd.AC == "" && d.Exp == 0 && d.Mant >= 0 && !d.Neg0 {
			ms = append(ms, utterance.Meaning{Kind: utterance.Count, Text: d.String(), Repair: repair, Cost: r.cost})
		}
	}
	if len(ms) == 0 {
		return nil
	}
	sort.SliceStable(ms, func(i, j int) bool { return ms[i].Cost < ms[j].Cost })
	best := ms[0].Cost
	for i := range ms {
		ms[i].Cost -= best
	}
	return ms
}

func setUnit(r *measure.Reading, id string) {
	if r.State == measure.Jumping {
		lo, hi := *r.Low, *r.High
		lo.Unit, hi.Unit = id, id
		r.Low, r.High = &lo, &hi
		return
	}
	r.Value.Unit = id
}

func intersect(a, b []string) []string {
	var out []string
	for _, x := range a {
		for _, y := range b {
			if x == y {
				out = append(out, x)
				break
			}
		}
	}
	return out
}

// quantity parses a whole saying without repairs.
func (p *Parser) quantity(ts []token) []result {
	if rs := p.state(ts); rs != nil {
		return rs
	}
	if rs := p.span(ts); rs != nil {
		return rs
	}
	return p.value(ts)
}

// value parses a number and what follows it.
func (p *Parser) value(ts []token) []result {
	var rs []result
	for i := 1; i <= len(ts); i++ {
		tails := p.suffix(ts[i:])
		if tails == nil {
			continue
		}
		for _, f := range forms(ts[:i]) {
			d, err := unit.ParseDecimal(f.digits)
			if err != nil {
				continue
			}
			for _, t := range tails {
				r := result{r: measure.Reading{Value: unit.Value{Dec: d}, AC: t.ac}, units: t.units, cost: f.cost, homo: f.homo}
				rs = appendResult(rs, r)
				if d.Mant == 0 && d.Exp == 0 && f.oh { // "oh" alone is a digit, a letter or a sigh
					rs[len(rs)-1].cost += costOh
					rs = appendResult(rs, result{r: measure.Reading{State: measure.Over}, units: t.units, cost: f.cost + costOh})
				}
			}
		}
	}
	return rs
}

// appendResult keeps the cheaper of two results that mean the same.
func appendResult(rs []result, r result) []result {
	for i := range rs {
		if rs[i].r == r.r && strings.Join(rs[i].units, " ") == strings.Join(r.units, " ") {
			if r.cost < rs[i].cost {
				rs[i] = r
			}
			return rs
		}
	}
	return append(rs, r)
}

// tail is what follows a number.
type tail struct {
	units []string
	ac    string
}

// suffix parses [a] [a c] [unit] [a c] to the end. No tokens are one empty tail; nil is a refusal.
func (p *Parser) suffix(ts []token) []tail {
	t := tail{}
	ts = trailing(ts)
	for len(ts) > 0 {
		if ac, n := acdc(ts); n > 0 && t.ac == "" {
			t.ac, ts = ac, ts[n:]
			continue
		}
		if t.units == nil {
			if ids, n := p.unitAt(ts); n > 0 {
				t.units, ts = ids, ts[n:]
				continue
			}
			if art := markAt(ts, articles); art > 0 && art < len(ts) { // "half an inch"
				if ids, n := p.unitAt(ts[art:]); n > 0 {
					t.units, ts = ids, ts[art+n:]
					continue
				}
			}
		}
		return nil
	}
	return []tail{t}
}

func (p *Parser) unitAt(ts []token) ([]string, int) {
	if ts[0].unit != "" {
		return []string{ts[0].unit}, 1
	}
	if !p.first[ts[0].word] {
		return nil, 0
	}
	for n := min(p.longest, len(ts)); n > 0; n-- {
		if ids, ok := p.units[joined(ts[:n])]; ok {
			return ids, n
		}
	}
	return nil, 0
}

func acdc(ts []token) (string, int) {
	switch w := ts[0].word; {
	case w == "ac" || w == "dc":
		return w, 1
	case (w == "a" || w == "d") && len(ts) > 1 && (ts[1].word == "c" || ts[1].word == "see"):
		return w + "c", 2
	}
	return "", 0
}

// state parses a display state, with a unit after it or not.
func (p *Parser) state(ts []token) []result {
	if len(ts) == 0 || !p.first[ts[0].word] {
		return nil
	}
	for n := len(ts); n > 0; n-- {
		st, ok := p.states[joined(ts[:n])]
		if !ok {
			continue
		}
		if t := p.suffix(ts[n:]); t != nil {
			return []result{{r: measure.Reading{State: st, AC: t[0].ac}, units: t[0].units}}
		}
		if st == measure.Jumping {
			if rs := p.span(ts[n:]); rs != nil {
				return rs
			}
		}
	}
	return nil
}

// span parses a range: "between one and four", "from one to four", "one to four".
func (p *Parser) span(ts []token) []result {
	cost, joints := costRange, []string{"to"}
	if len(ts) > 0 {
		switch ts[0].word {
		case "between":
			ts, cost, joints = ts[1:], 0, []string{"and", "to"}
		case "from":
			ts, cost, joints = ts[1:], 0, []string{"to", "and"}
		}
	}
	var rs []result
	for i := 1; i < len(ts)-1; i++ {
		for _, j := range joints {
			if ts[i].word != j {
				continue
			}
			for _, lo := range p.value(ts[:i]) {
				for _, hi := range p.value(ts[i+1:]) {
					rs = p.between(rs, lo, hi, cost)
				}
			}
		}
	}
	return rs
}

func (p *Parser) between(rs []result, lo, hi result, cost float64) []result {
	if lo.r.State != measure.Number || hi.r.State != measure.Number || lo.homo || hi.homo {
		return rs
	}
	units := hi.units
	if units == nil {
		units = lo.units
	}
	if lo.units != nil && hi.units != nil && strings.Join(lo.units, " ") != strings.Join(hi.units, " ") {
		return rs
	}
	a, b := lo.r.Value, hi.r.Value
	if a.Dec.Float() >= b.Dec.Float() {
		return rs
	}
	return append(rs, result{r: measure.Reading{State: measure.Jumping, AC: hi.r.AC, Low: &a, High: &b}, units: units, cost: cost + lo.cost + hi.cost})
}

func (p *Parser) unitOnly(ts []token) []utterance.Meaning {
	for len(ts) > 0 {
		t := p.suffix(ts)
		if t != nil && t[0].units != nil {
			ms := make([]utterance.Meaning, len(t[0].units))
			for i, u := range t[0].units {
				ms[i] = utterance.Meaning{Kind: utterance.UnitOnly, ID: u, Text: joined(ts), Repair: true}
			}
			return ms
		}
		n := markAt(ts, unitMarks)
		if n == 0 {
			return nil
		}
		ts = ts[n:]
	}
	return nil
}

func joined(ts []token) string {
	switch len(ts) {
	case 0:
		return ""
	case 1:
		return ts[0].word
	}
	var b strings.Builder
	for i, t := range ts {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(t.word)
	}
	return b.String()
}
