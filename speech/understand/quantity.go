package understand

import (
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
)

// Mention is a number found in an utterance.
type Mention struct {
	From, To int      // its words, the unit not among them
	Values   []form   // what the words can mean, best first
	Units    []string // unit ids that its unit can be; nil when none was said
	AC       string   // "ac", "dc" or ""
	Other    bool     // what follows counts something else: "five minutes ago", "two wires"
	Times    int      // how often it was said in a row
	Borrowed bool     // the unit stands with another number or elsewhere in the utterance
	unitFrom int      // first word of the unit, 0 when none was said
	features [nFeatures]float64
}

// form is one way of reading number words.
type form struct {
	dec  unit.Decimal
	cost float64
}

var (
	digitWord  = set("zero one two three four five six seven eight nine")
	numberWord = set("ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty forty fourty fifty sixty seventy eighty ninety hundred thousand half quarter quarters nought naught")
	filler     = set("uh um er erm ah hmm hm uhh umm eh mm")
	joiner     = set("point dot decimal")
)

func set(words string) map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		m[w] = true
	}
	return m
}

func numeric(w string) bool { return digitWord[w] || numberWord[w] || typed(w) }

// typed tells whether a word is a number in figures.
func typed(w string) bool {
	return w != "" && strings.Trim(w, "0123456789.") == "" && w[0] != '.'
}

// pronoun are words beside which "one" is no number.
var (
	beforeOne = set("this that the which another other each every no any some good bad wrong right first last next same red black white blue green yellow orange little big new old only")
	afterOne  = set("of second sec moment more thing that is 's minute i on at from with i'm day time side more sec end who guy hand")
)

// afterOh are words before which "oh" is a sigh.
var afterOh = set("my man god no well boy dear wait okay yeah shoot shit crap lord yes hell it i that this wow")

// run returns the end of the number words that begin at i, or i.
func run(w []string, breaks []bool, i int) int {
	at := func(k int) string {
		if k >= 0 && k < len(w) {
			return w[k]
		}
		return ""
	}
	j := i
	switch {
	case (at(j) == "minus" || at(j) == "negative" || at(j) == "dash") && (numeric(at(j+1)) || joiner[at(j+1)] || at(j+1) == "oh"):
		j++
	case at(j) == "a" && (at(j+1) == "hundred" || at(j+1) == "thousand" || at(j+1) == "half" || at(j+1) == "quarter"):
		j++
	}
	start := j
	for j < len(w) {
		if j > start && breaks[j] {
			break
		}
		switch x := w[j]; {
		case numeric(x) && !(x == "quarter" || x == "quarters" || x == "half") || (x == "double" || x == "triple") && (digitWord[at(j+1)] || at(j+1) == "oh"):
			j++
		case x == "half" && (j > start && at(j-1) != "hundred" || at(j-1) == "a" || unitNear(at(j+1))), (x == "quarter" || x == "quarters") && (at(j+1) == "of" && (at(j+2) == "a" || at(j+2) == "an") || at(j-1) == "a" || at(j-1) == "three" || at(j-1) == "one"):
			j++
		case (x == "oh" || x == "o") && (digitWord[at(j+1)] || joiner[at(j+1)] || j > start && (digitWord[at(j-1)] || numberWord[at(j-1)] || joiner[at(j-1)] || at(j-1) == "oh")) && at(j+1) != "l" && !afterOh[at(j+1)]:
			j++
		case joiner[x] && filler[at(j+1)] && (digitWord[at(j+2)] || numberWord[at(j+2)] || at(j+2) == "oh"):
			j += 2
		case joiner[x] && (digitWord[at(j+1)] || numberWord[at(j+1)] || at(j+1) == "oh" || at(j+1) == "o" || at(j+1) == "double"):
			j++
		case x == "and" && j > start && (at(j-1) == "hundred" || at(j-1) == "thousand") && numeric(at(j+1)),
			x == "and" && j > start && (at(j+1) == "half" || at(j+1) == "a" && (at(j+2) == "half" || at(j+2) == "quarter")):
			j++
		case x == "a" && j > start && at(j-1) == "and" && (at(j+1) == "half" || at(j+1) == "quarter"):
			j++
		case filler[x] && j > start && (numeric(at(j+1)) || joiner[at(j+1)]) && (joiner[at(j-1)] || tens[at(j-1)] && digitWord[at(j+1)] || at(j-1) == "hundred"):
			j++
		default:
			goto done
		}
	}
done:
	if j <= start {
		return i
	}
	if j == start+1 && w[start] == "one" && (beforeOne[at(i-1)] || afterOne[at(j)]) {
		return i
	}
	return j
}

var tens = set("twenty thirty forty fourty fifty sixty seventy eighty ninety")

func unitNear(w string) bool {
	return w == "a" || w == "an" || w == "of" || lists()["measure"][w] != nil
}

// mentions finds the numbers in words.
func (r *Reader) mentions(w []string, breaks []bool) []Mention {
	var out []Mention
	for i := 0; i < len(w); {
		j := run(w, breaks, i)
		if j == i {
			i++
			continue
		}
		for _, m := range r.segment(w, i, j) {
			if last := len(out) - 1; last >= 0 && out[last].To == m.From && alike(out[last].Values, m.Values) { // "fifty, five zero"
				out[last].To, out[last].Times = m.To, out[last].Times+m.Times
				continue
			}
			out = append(out, m)
		}
		i = j
	}
	out = r.unitAndHalf(w, below(w, out))
	for k := range out {
		limit := len(w)
		if k+1 < len(out) {
			limit = out[k+1].From
		}
		r.unitAfter(w, &out[k], limit)
	}
	return out
}

// alike tells whether two numbers are first of all the same.
func alike(a, b []form) bool { return len(a) > 0 && len(b) > 0 && a[0].dec.Equal(b[0].dec) }

// below makes the number before "below zero" negative and drops that zero.
func below(w []string, ms []Mention) []Mention {
	for k := 0; k < len(ms); k++ {
		m := &ms[k]
		at := m.To
		if at < len(w) && (w[at] == "degrees" || w[at] == "degree") {
			at++
		}
		if at+1 < len(w) && (w[at] == "below" || w[at] == "under") && w[at+1] == "zero" {
			for i := range m.Values {
				m.Values[i].dec.Mant = -m.Values[i].dec.Mant
			}
			if k+1 < len(ms) && ms[k+1].From == at+1 && ms[k+1].To == at+2 {
				ms = append(ms[:k+1], ms[k+2:]...)
			}
		}
	}
	return ms
}

// unitAndHalf reads "an amp and a half", "a minute and a quarter".
func (r *Reader) unitAndHalf(w []string, ms []Mention) []Mention {
	for k := range ms {
		m := &ms[k]
		if m.To-m.From != 2 || w[m.From] != "a" || w[m.To-1] != "half" && w[m.To-1] != "quarter" || m.From < 2 || w[m.From-1] != "and" {
			continue
		}
		for n := min(r.longest, m.From-1); n > 0; n-- {
			at := m.From - 1 - n
			if ids := r.units[strings.Join(w[at:m.From-1], " ")]; ids != nil && (at == 0 || !numeric(w[at-1])) {
				m.Values = []form{{plus(unit.Decimal{Mant: 1}, w[m.To-1]), 0}}
				m.Units, m.unitFrom, m.From = ids, at, at
				break
			}
		}
	}
	return ms
}

// swings tells whether the numbers go up and down: between two of them, or back to one that was said before.
func swings(w []string, ms []Mention) bool {
	var all []Mention
	for _, m := range ms {
		if !m.Other && len(m.Values) > 0 {
			all = append(all, m)
		}
	}
	for k := 0; k+1 < len(all); k++ {
		a, b := all[k], all[k+1]
		if alike(a.Values, b.Values) {
			continue
		}
		joint := w[a.To:b.From]
		if lists()["index"][w[max(0, a.From-1)]] != nil || lists()["index"][w[max(0, b.From-1)]] != nil {
			continue
		}
		before := w[max(0, a.From-2):a.From]
		if len(joint) <= 3 && (slices.Contains(before, "between") && slices.Contains(joint, "and") || slices.Contains(before, "from") && (slices.Contains(joint, "to") || slices.Contains(joint, "until") || slices.Contains(joint, "till"))) {
			return k+2 == len(all)
		}
		if k+2 < len(all) && alike(a.Values, all[k+2].Values) && !lists()["repair"].in(w[a.To:all[k+2].From]) && !lists()["contrast"].in(w[a.To:all[k+2].From]) && all[k+2].From-a.To < 9 {
			return true
		}
	}
	return false
}

// clean drops fillers inside number words and writes "and half" in full.
func clean(w []string) string {
	var out []string
	for i, x := range w {
		if filler[x] {
			continue
		}
		if x == "dash" {
			x = "minus"
		}
		if x == "half" && i > 0 && w[i-1] == "and" {
			out = append(out, "a")
		}
		if x == "a" && i+1 < len(w) && (w[i+1] == "hundred" || w[i+1] == "thousand") {
			x = "one"
		}
		out = append(out, x)
	}
	return strings.Join(out, " ")
}

// forms reads number words.
func (r *Reader) forms(w []string) []form {
	var out []form
	for _, m := range r.number.Parse(clean(w), nil) {
		if m.Kind == utterance.Reading && m.Reading.State == measure.Number && !m.Repair {
			out = append(out, form{m.Reading.Value.Dec, m.Cost})
		}
	}
	if out == nil {
		return r.andHalf(w)
	}
	if k := slices.IndexFunc(w, func(x string) bool { return joiner[x] }); k > 1 && digitWord[w[k-1]] && digitWord[w[k-2]] { // "five, four point nine"
		for _, f := range r.forms(w[k-1:]) {
			out = append(out, form{f.dec, f.cost + costShorter})
		}
	}
	return out
}

// costShorter is what it costs to take only the last of several digits before the point for the number, nats: judgement, no source.
const costShorter = 0.7

// andHalf reads "one thirty nine and a half".
func (r *Reader) andHalf(w []string) []form {
	n := len(w)
	if n < 4 || w[n-3] != "and" || w[n-2] != "a" || w[n-1] != "half" && w[n-1] != "quarter" {
		return nil
	}
	var out []form
	for _, f := range r.forms(w[:n-3]) {
		if f.dec.Exp == 0 {
			out = append(out, form{plus(f.dec, w[n-1]), f.cost})
		}
	}
	return out
}

// plus adds a half or a quarter to a whole number.
func plus(d unit.Decimal, part string) unit.Decimal {
	if part == "half" {
		return unit.Decimal{Mant: d.Mant*10 + 5, Exp: -1}
	}
	return unit.Decimal{Mant: d.Mant*100 + 25, Exp: -2}
}

// segment splits number words into the numbers that they are: one, the same one said again in another way ("fifty five zero"), or several.
func (r *Reader) segment(w []string, from, to int) []Mention {
	whole := r.forms(w[from:to])
	if again := r.repeated(w, from, to); again != nil {
		m := *again
		for _, f := range whole { // it may be one number all the same
			if !f.dec.Equal(m.Values[0].dec) {
				more := 3.0
				if to-from == 2 && digitWord[w[from]] { // "four four" may be spelled
					more = 0.7
				}
				m.Values = append(m.Values, form{f.dec, f.cost + more})
			}
		}
		return []Mention{m}
	}
	if whole != nil {
		return []Mention{{From: from, To: to, Values: whole, Times: 1}}
	}
	// As few numbers as possible, the longer one first.
	for k := to - 1; k > from; k-- {
		if head := r.forms(w[from:k]); head != nil {
			if rest := r.segment(w, k, to); rest != nil {
				return append([]Mention{{From: from, To: k, Values: head, Times: 1}}, rest...)
			}
		}
	}
	if to-from > 1 { // a word that fits nothing
		return r.segment(w, from+1, to)
	}
	return nil
}

// repeated tells whether words are one number said twice or three times, in the same words or digit by digit.
func (r *Reader) repeated(w []string, from, to int) *Mention {
	if to-from < 2 || to-from > 15 {
		return nil
	}
	for k := from + 1; k < to; k++ {
		head := r.forms(w[from:k])
		if head == nil {
			continue
		}
		if again := r.repeated(w, k, to); again != nil && again.Values[0].dec == head[0].dec {
			return &Mention{From: from, To: to, Values: head, Times: again.Times + 1}
		}
		for _, f := range r.forms(w[k:to]) {
			if f.dec == head[0].dec && (f.cost == 0 || f.cost < 1 && k-from > 1) { // with as many digits: "two point oh two" is one number
				return &Mention{From: from, To: to, Values: head, Times: 2}
			}
		}
	}
	return nil
}

// gap is how many words may stand between a number and its unit: "eighteen of those ohms".
const gap = 3

var between = set("of a an point or so something some and change odd ish like uh um er steady those these them ac dc solid even flat exactly maybe whole the little bit")

// unitAfter looks for the unit, or for what else is counted, behind a number.
func (r *Reader) unitAfter(w []string, m *Mention, limit int) {
	other := lists()["othercount"]
	if m.Units != nil {
		return
	}
	for i := m.To; i < min(limit, m.To+gap+1); i++ {
		if ac, n := acdc(w, i); n > 0 {
			m.AC = ac
			i += n - 1
			continue
		}
		if ids, n := r.unitAt(w, i); n > 0 && i+n <= max(limit, i+1) {
			if i > m.To && (ids[0] == "s" || ids[0] == "min" || w[i] == "a" || w[i] == "m a") {
				return
			}
			m.Units, m.unitFrom = ids, i
			if ac, k := acdc(w, i+n); k > 0 {
				m.AC = ac
			}
			if !measured[ids[0]] {
				m.Other = true
			}
			return
		}
		if other.at(w, i) > 0 && i == m.To {
			m.Other = true
			return
		}
		if !between[w[i]] {
			return
		}
	}
}

// measured are the units that a meter, a gauge or a stop watch shows.
var measured = set("V mV kV A mA uA ohm kohm Mohm mohm uF nF Hz degC degF dF dC inH2O Pa kPa psi s min in inHg W")

func acdc(w []string, i int) (string, int) {
	switch {
	case i >= len(w):
	case w[i] == "ac" || w[i] == "dc":
		return w[i], 1
	case (w[i] == "a" || w[i] == "d") && i+1 < len(w) && w[i+1] == "c":
		return w[i] + "c", 2
	}
	return "", 0
}

// unitAt reads a unit.
func (r *Reader) unitAt(w []string, i int) ([]string, int) {
	for n := min(r.longest, len(w)-i); n > 0; n-- {
		if ids := r.units[strings.Join(w[i:i+n], " ")]; ids != nil {
			return ids, n
		}
	}
	return nil, 0
}

// narrow gives the units of those asked for where a unit can be one of several.
func narrow(ids, asked []string) []string {
	var both []string
	for _, u := range asked {
		if slices.Contains(ids, u) {
			both = append(both, u)
		}
	}
	if both != nil {
		return both
	}
	return ids
}
