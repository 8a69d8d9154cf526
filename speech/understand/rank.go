package understand

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"readback/core/unit"
)

// What tells the number that was read off the meter from the other numbers of an utterance.
const (
	unitAsked = iota
	unitKin   // another prefix of what was asked for
	unitElse
	countsElse
	bareNumber
	isLast
	isFirst
	isOnly
	afterRepair
	beforeRepair
	afterShows
	afterIndex
	beforeSetting
	afterContrast
	nearPast
	afterApprox
	saidAgain
	sameAsOther
	hasPoint
	oneDigit
	beforeContrast
	afterNot
	borrowedUnit
	firstHalf
	nFeatures
)

//go:embed rank.json
var rankFile []byte

// readRank reads the weights that speech/lab/trainintent fitted.
func readRank(b []byte) ([nFeatures]float64, error) {
	var w [nFeatures]float64
	var list []float64
	if err := json.Unmarshal(b, &list); err != nil {
		return w, fmt.Errorf("understand: rank.json: %w", err)
	}
	if len(list) != nFeatures {
		return w, fmt.Errorf("understand: rank.json has %d weights, want %d", len(list), nFeatures)
	}
	copy(w[:], list)
	return w, nil
}

// rankFeatures fills in the features of every mention and passes units on.
func (r *Reader) rankFeatures(w []string, ms []Mention, asked []string) {
	l := lists()
	kin := map[unit.Dim]bool{}
	for _, id := range asked {
		if u, ok := unit.Lookup(id); ok {
			kin[u.Dim] = true
		}
	}
	around := func(from, to int) []string { return w[max(0, from):min(len(w), max(from, to))] }
	for k := range ms {
		m := &ms[k]
		f := &m.features
		*f = [nFeatures]float64{}
		on := func(i int, yes bool) {
			if yes {
				f[i] = 1
			}
		}
		prev, next := 0, len(w)
		if k > 0 {
			prev = ms[k-1].To
		}
		if k+1 < len(ms) {
			next = ms[k+1].From
		}
		switch {
		case m.Other:
			f[countsElse] = 1
		case m.Units == nil:
			f[bareNumber] = 1
		case len(narrow(m.Units, asked)) > 0 && slices.Contains(asked, narrow(m.Units, asked)[0]):
			f[unitAsked] = 1
		default:
			same := false
			for _, id := range m.Units {
				if u, ok := unit.Lookup(id); ok {
					same = same || kin[u.Dim]
				}
			}
			on(unitKin, same)
			on(unitElse, !same)
		}
		on(isLast, k == len(ms)-1)
		on(isFirst, k == 0)
		on(isOnly, len(ms) == 1)
		on(afterRepair, k > 0 && l["repair"].in(around(prev, m.From)))
		on(beforeRepair, k+1 < len(ms) && l["repair"].in(around(m.To, next)))
		on(afterShows, l["shows"].in(around(max(prev, m.From-4), m.From)))
		on(afterIndex, m.From > 0 && l["index"][w[m.From-1]] != nil)
		on(beforeSetting, l["setting"].in(around(m.To, min(next, m.To+3))))
		on(afterContrast, l["contrast"].in(around(max(prev, m.From-4), m.From)))
		on(nearPast, l["past"].in(around(prev, next)))
		on(afterApprox, l["approx"].in(around(max(prev, m.From-3), m.From)))
		on(saidAgain, m.Times > 1)
		on(firstHalf, len(ms) > 1 && 2*k < len(ms)-1)
		on(borrowedUnit, m.Borrowed)
		on(beforeContrast, k+1 < len(ms) && l["contrast"].in(around(m.To, min(next, m.To+4))))
		on(afterNot, m.From > 0 && (w[m.From-1] == "not" || w[m.From-1] == "n't" || w[m.From-1] == "no" && false))
		if len(m.Values) > 0 {
			d := m.Values[0].dec
			on(hasPoint, d.Exp < 0)
			on(oneDigit, d.Exp == 0 && d.Mant < 10 && d.Mant > 0)
			for i := range ms {
				on(sameAsOther, i != k && len(ms[i].Values) > 0 && ms[i].Values[0].dec.Equal(d))
			}
		}
	}
}

// Features are what the ranking of a mention is fitted on.
func (m *Mention) Features() []float64 { return m.features[:] }

// rank gives the probability of each mention to be the one that was read.
func (r *Reader) rank(ms []Mention) []float64 {
	p := make([]float64, len(ms))
	most := math.Inf(-1)
	for k := range ms {
		for i, x := range ms[k].features {
			p[k] += r.weights[i] * x
		}
		most = max(most, p[k])
	}
	sum := 0.0
	for k := range p {
		p[k] = math.Exp(p[k] - most)
		sum += p[k]
	}
	for k := range p {
		p[k] /= sum
	}
	return p
}
