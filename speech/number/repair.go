package number

import (
	"strings"

	"readback/core/measure"
	"readback/core/unit"
)

// sayings is a set of sayings, with the words they begin and end with: most places are ruled out by one look.
type sayings struct{ all, first, last map[string]bool }

func phrases(say ...string) sayings {
	s := sayings{map[string]bool{}, map[string]bool{}, map[string]bool{}}
	for _, x := range say {
		s.all[x] = true
		s.first[firstWord(x)] = true
		s.last[x[strings.LastIndexByte(x, ' ')+1:]] = true
	}
	return s
}

const longestMark = 3 // words

// markAt returns how many tokens at the start are one of the sayings, the longest wins.
func markAt(ts []token, m sayings) int {
	if len(ts) == 0 || !m.first[ts[0].word] {
		return 0
	}
	for n := min(longestMark, len(ts)); n > 0; n-- {
		if m.all[joined(ts[:n])] {
			return n
		}
	}
	return 0
}

// strip takes fillers off the beginning. A filler that is the whole saying stays.
func strip(ts []token) []token {
	for {
		n := markAt(ts, leadIn)
		if n == 0 || n == len(ts) {
			return ts
		}
		ts = ts[n:]
	}
}

// trailing takes fillers off the end.
func trailing(ts []token) []token {
again:
	if len(ts) == 0 || !leadOut.last[ts[len(ts)-1].word] {
		return ts
	}
	for n := min(longestMark, len(ts)); n > 0; n-- {
		if leadOut.all[joined(ts[len(ts)-n:])] {
			ts = ts[:len(ts)-n]
			goto again
		}
	}
	return ts
}

// repaired reads a saying that takes something back: the last complete value after a mark counts. The second result tells
// that a mark with something before it was seen: then the rest cannot be a unit correction of an earlier saying.
func (p *Parser) repaired(ts []token) ([]result, bool) {
	for i := len(ts) - 1; i >= 0; i-- {
		n := markAt(ts[i:], marks)
		if n == 0 || i+n == len(ts) {
			continue
		}
		for j := i; j > 0; j-- { // the mark may be longer to the left: "no wait"
			if m := markAt(ts[j-1:], marks); m < i-j+1+n {
				break
			}
			i, n = j-1, n+1
		}
		head, rest := ts[:i], strip(ts[i+n:])
		was := p.headValue(head)
		if rs := p.quantity(rest); rs != nil {
			return inherit(rs, was, rest), true
		}
		if t := p.suffix(rest); t != nil && (t[0].units != nil || t[0].ac != "") && was != nil {
			return replace(was, t[0]), true
		}
		if i > 0 {
			return nil, true
		}
	}
	return nil, false
}

// headValue is the last thing said before a mark, complete or broken off.
func (p *Parser) headValue(ts []token) []result {
	for i := range ts {
		if rs := p.quantity(strip(ts[i:])); rs != nil {
			return rs
		}
	}
	return nil
}

// inherit gives a repaired number the unit that was said before it, and offers a lone digit as a new last digit.
func inherit(rs, was []result, rest []token) []result {
	if was == nil || was[0].r.State != measure.Number {
		return rs
	}
	out := make([]result, 0, len(rs)+1)
	for _, r := range rs {
		if r.units == nil && r.r.State == measure.Number {
			r.units = was[0].units
			if r.r.AC == "" {
				r.r.AC = was[0].r.AC
			}
		}
		out = append(out, r)
	}
	if d := digitWords[rest[0].word]; d != "" && was[0].r.Value.Dec.Exp < 0 && out[0].r.Value.Dec.Exp == 0 {
		s := was[0].r.Value.Dec.String()
		if v, err := unit.ParseDecimal(s[:len(s)-1] + d); err == nil && len(forms(rest[:min(2, len(rest))])) <= 1 {
			r := out[0]
			r.r.Value.Dec = v
			r.cost += costTail
			out = append(out, r)
		}
	}
	return out
}

func replace(was []result, t tail) []result {
	out := make([]result, len(was))
	for i, r := range was {
		if t.units != nil {
			r.units = t.units
		}
		if t.ac != "" {
			r.r.AC = t.ac
		}
		out[i] = r
	}
	return out
}

// Opening is the words before the number: "it reads" of "it reads twenty volts".
func Opening(text string) string {
	ts := tokens(text)
	return joined(ts[:len(ts)-len(strip(ts))])
}
