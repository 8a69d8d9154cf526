package grammar

import (
	"math"
	"slices"
	"sort"
	"strings"

	"readback/core/utterance"
	"readback/speech"
)

// Pass is one hearing of a saying: as it was recorded, with less noise, a little faster.
type Pass struct {
	Alternatives []speech.Alternative // best first
	Weight       float64              // how much its costs count
	ReadingsOnly bool                 // heard among readings only: it knows nothing of commands, answers and emergencies
	Quiet        bool                 // heard where no noise swallows words
}

// Chosen on the tuning half of the bench, or judgement.
const (
	missing  = 2.0  // nats an alternative costs beyond the worst of a list it does not stand in
	word     = 0.8  // nats every word is worth when several passes are joined: noise swallows words far more often than it adds some
	sharp    = 0.5  // the engine's costs are scaled by this before they are taken for logarithms of probabilities
	overseen = -5.0 // log of the share a value has in a list that it does not stand in
	foreign  = -3.0 // log of how much rarer a unit that was not asked for is: it decides near ties, it never replaces a clear one
)

// combine joins the word strings of the passes that know every phrase. Costs add up, so that what all hold likely leads, and what only
// one of them holds falls behind.
func combine(ws []Pass) []speech.Alternative {
	ws = slices.DeleteFunc(slices.Clone(ws), func(w Pass) bool { return len(w.Alternatives) == 0 || w.ReadingsOnly })
	if len(ws) == 1 {
		return slices.Clone(ws[0].Alternatives)
	}
	cost := func(list []speech.Alternative, text string) float64 {
		for _, x := range list {
			if x.Text == text {
				return x.Cost - list[0].Cost
			}
		}
		return list[len(list)-1].Cost - list[0].Cost + missing
	}
	var out []speech.Alternative
	seen := map[string]bool{}
	for _, from := range ws {
		for _, x := range from.Alternatives {
			if seen[x.Text] {
				continue
			}
			seen[x.Text] = true
			sum := 0.0
			for _, w := range ws {
				sum += w.Weight * cost(w.Alternatives, x.Text)
			}
			out = append(out, speech.Alternative{Text: x.Text, Cost: sum})
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Cost < out[j].Cost })
	return out
}

// readings weighs every reading that the passes hold. In each list a reading has the share of all word strings that mean it; the
// shares of the lists are multiplied. So a value said in two ways, or found by two passes, gains on one that a single word string holds,
// and the distance between two costs is a distance between two readings, not between two word strings.
//
// Agree is the share of the passes, by weight, that hold the best one for the likeliest. A number that no
// word string gives with its unit counts in the best words only. Lead tells that those are a reading themselves; otherwise there is none
// when it is likelier that nothing known was said.
func (p *Parser) readings(ws []Pass, e Expect, head string, lead bool) (ms []utterance.Meaning, agree float64) {
	type entry struct {
		m     utterance.Meaning
		least float64         // cost of the cheapest word string that means it
		share map[int]float64 // by hearing
		said  bool            // with its unit, or in the best words
	}
	var order []string
	all := map[string]*entry{}
	parsed := map[string][]utterance.Meaning{}
	total, none := make([]float64, len(ws)), make([]float64, len(ws))
	bonus := word
	if len(ws) == 1 || ws[0].Quiet {
		bonus = 0
	}
	bareLead := lead && len(e.Units) > 0 && !p.unitSaid(head) // a bare number is what was said: others may be too
	for i, w := range ws {
		words := 0
		if len(w.Alternatives) > 0 {
			words = strings.Count(w.Alternatives[0].Text, " ")
		}
		for _, a := range w.Alternatives {
			q := math.Exp(-sharp * (a.Cost - w.Alternatives[0].Cost - bonus*float64(strings.Count(a.Text, " ")-words)))
			total[i] += q
			if a.Text == "" || strings.Contains(a.Text, Unknown) {
				none[i] += q
				continue
			}
			ms, ok := parsed[a.Text]
			if !ok {
				ms = p.number.Parse(a.Text, e.Units)
				parsed[a.Text] = ms
			}
			said := strings.TrimSpace(a.Text) == head || bareLead || p.unitSaid(a.Text)
			sum := 0.0
			for _, m := range ms {
				if m.Kind == utterance.Reading {
					sum += math.Exp(-m.Cost)
				}
			}
			for _, m := range ms {
				if m.Kind != utterance.Reading {
					continue
				}
				k := key(m)
				x := all[k]
				if x == nil {
					x = &entry{m: m, least: math.Inf(1), share: map[int]float64{}}
					all[k], order = x, append(order, k)
				}
				if c := a.Cost - w.Alternatives[0].Cost + m.Cost; c < x.least {
					x.least, x.m = c, m
				}
				x.said = x.said || said
				part := q * math.Exp(-m.Cost) / sum
				if u := m.Reading.Value.Unit; len(e.Units) > 0 && u != "" && !slices.Contains(e.Units, u) {
					part *= math.Exp(foreign)
				}
				x.share[i] += part
			}
		}
	}
	cost := func(mass func(i int) float64) float64 {
		sum := 0.0
		for i, w := range ws {
			if total[i] > 0 {
				sum -= w.Weight * math.Log(mass(i)/total[i]+math.Exp(overseen))
			}
		}
		return sum
	}
	nothing := cost(func(i int) float64 { return none[i] })
	var whole, bare []utterance.Meaning
	for _, k := range order {
		x := all[k]
		if !x.said { // a bare number somewhere behind is no reading
			continue
		}
		if x.m.Cost = cost(func(i int) float64 { return x.share[i] }); x.m.Cost > nothing && !lead {
			continue
		}
		if withUnit(x.m) && (len(e.Units) < 2 || len(x.m.Units) != len(e.Units)) { // else the units are only those asked for
			whole = append(whole, x.m)
		} else {
			bare = append(bare, x.m)
		}
	}
	share := func(best utterance.Meaning) float64 {
		x, sum, with := all[key(best)], 0.0, 0.0
		for i, w := range ws {
			if total[i] == 0 {
				continue
			}
			sum += w.Weight
			if !slices.ContainsFunc(order, func(k string) bool { return all[k].share[i] > x.share[i] }) {
				with += w.Weight
			}
		}
		return with / sum
	}
	rank := func(ms []utterance.Meaning, more float64) {
		sort.SliceStable(ms, func(i, j int) bool { return ms[i].Cost < ms[j].Cost })
		for i := range ms {
			ms[i].Cost = math.Max(0, ms[i].Cost-more)
		}
	}
	if len(whole) == 0 {
		if len(bare) > 0 {
			rank(bare, slices.MinFunc(bare, byCost).Cost)
			agree = share(bare[0])
		}
		return bare, agree
	}
	// A bare number gives way to the first reading with a unit.
	least := slices.MinFunc(whole, byCost).Cost
	rank(whole, least)
	rank(bare, least-costBare)
	return append(whole, bare...), share(whole[0])
}

// costBare is what a number without its unit costs beside one with a unit, nats.
const costBare = 1.0

func byCost(a, b utterance.Meaning) int {
	switch {
	case a.Cost < b.Cost:
		return -1
	case a.Cost > b.Cost:
		return 1
	}
	return 0
}

// key tells readings apart: size and unit, state, or range. A number said without its unit counts for the one unit that fits.
func key(m utterance.Meaning) string {
	r := m.Reading
	units := strings.Join(m.Units, " ")
	if r.Low != nil && r.High != nil {
		return string(r.State) + " " + r.Low.String() + " " + r.High.String() + " " + units
	}
	if r.State != "" {
		return string(r.State)
	}
	if r.Value.Unit != "" {
		units = r.Value.Unit
	}
	return canonical(r.Value.Dec.String()) + " " + units
}

// canonical takes off the zeros after the point that do not count.
func canonical(digits string) string {
	if strings.Contains(digits, ".") {
		digits = strings.TrimRight(strings.TrimRight(digits, "0"), ".")
	}
	return digits
}
