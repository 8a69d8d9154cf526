package phrase

import (
	"slices"
	"sort"
)

// missing is what an alternative costs beyond the worst of a list it does not stand in, in nats. Judgement.
const missing = 2.0

// Combine joins what two decodings of the same sound offer, such as the raw one and one with less noise: costs add up, so that what
// both hold likely leads, and what only one of them holds falls behind.
func Combine(a, b []Alternative) []Alternative {
	if len(a) == 0 || len(b) == 0 {
		return append(slices.Clone(a), b...)
	}
	cost := func(list []Alternative, text string) float64 {
		for _, x := range list {
			if x.Text == text {
				return x.Cost - list[0].Cost
			}
		}
		return list[len(list)-1].Cost - list[0].Cost + missing
	}
	var out []Alternative
	seen := map[string]bool{}
	for _, list := range [][]Alternative{a, b} {
		for _, x := range list {
			if !seen[x.Text] {
				seen[x.Text] = true
				out = append(out, Alternative{x.Text, cost(a, x.Text) + cost(b, x.Text)})
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Cost < out[j].Cost })
	return out
}
