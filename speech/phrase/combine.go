package phrase

import (
	"slices"
	"sort"
)

const (
	missing   = 2.0 // nats an alternative costs beyond the worst of a list it does not stand in
	rawWeight = 0.4 // of the first list against the second
)

// Combine joins what two decodings of the same sound offer: the raw one, and one with less noise, which is the better witness.
// Costs add up, so that what both hold likely leads, and what only one of them holds falls behind. The weights were chosen on the
// tuning half of the bench.
func Combine(raw, less []Alternative) []Alternative {
	switch {
	case len(less) == 0:
		return slices.Clone(raw)
	case len(raw) == 0:
		return slices.Clone(less)
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
	for _, list := range [][]Alternative{less, raw} {
		for _, x := range list {
			if !seen[x.Text] {
				seen[x.Text] = true
				out = append(out, Alternative{x.Text, rawWeight*cost(raw, x.Text) + cost(less, x.Text)})
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Cost < out[j].Cost })
	return out
}
