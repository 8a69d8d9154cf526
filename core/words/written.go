package words

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"readback/core/unit"
)

// spelled are units that stay words beside digits: "5 minutes" and not "5 min".
var spelled = map[string]bool{"s": true, "min": true, "h": true, "yr": true, "in": true, "x": true, "money": true, "Btu/h": true}

// Writer writes texts that are made for the voice as the eye wants them. It is read-only and may be shared.
type Writer struct {
	spoken, digits   string           // the number to call
	small            map[string]int64 // number word → 0 to 99
	scale            map[string]int64 // "hundred" → 100
	point, minus, of string
	to               string              // between the ends of a range
	units            map[string][]saying // first word → the names that begin with it, the longest first
}

// saying is a name of a unit.
type saying struct {
	words []string
	print string // beside a number
	alone string // without one; empty: as it is spoken
}

// NewWriter prepares a writer for a language.
func NewWriter(w *Words) *Writer {
	r := &Writer{spoken: w.Lines["emergency.number"].Full, digits: w.Lines["emergency.digits"].Full, small: map[string]int64{}, scale: map[string]int64{},
		point: strings.ToLower(w.Terms["number.point"]), minus: strings.ToLower(w.Terms["number.minus"]), of: strings.ToLower(w.Terms["number.in"]),
		to: strings.ToLower(strings.TrimSpace(Fill(w.Terms["list.range"], "low", "", "high", ""))), units: map[string][]saying{}}
	for n, x := range w.Numbers {
		r.small[strings.ToLower(x)] = int64(n)
	}
	for _, s := range scales {
		r.scale[strings.ToLower(strings.TrimSpace(strings.ReplaceAll(w.Terms[s.term], "{n}", "")))] = int64(s.size)
	}
	for _, u := range unit.All() {
		x := w.Units[u.ID]
		for _, say := range []string{x.Many, x.One, x.Prefixed} {
			f := strings.Fields(strings.ToLower(say))
			if len(f) == 0 {
				continue
			}
			n := saying{words: f, print: w.Printed(u.ID)}
			if spelled[u.ID] {
				n.print = say
			}
			if x.Prefixed != "" && len(f) == 2 {
				n.alone = f[0] + f[1]
			}
			r.units[f[0]] = append(r.units[f[0]], n)
		}
	}
	for _, list := range r.units {
		slices.SortStableFunc(list, func(a, b saying) int { return len(b.words) - len(a.words) })
	}
	return r
}

// Write writes numbers with a unit in digits ("26.1 V AC"), chances too ("9 in 10"), joins letters that are spoken one by one ("OL"), and gives the
// number to call as it is dialled.
func (w *Writer) Write(text string) string {
	if w.spoken != "" {
		text = strings.ReplaceAll(text, w.spoken, w.digits)
	}
	r := reader{Writer: w, in: strings.Split(text, " ")}
	var out []string
	for i := 0; i < len(r.in); {
		s, next := r.measured(i)
		if next == i {
			s, next = r.letters(i)
		}
		if next == i {
			s, next = r.prefixed(i)
		}
		if next == i {
			s, next = r.in[i], i+1
		}
		out, i = append(out, s), next
	}
	return strings.Join(out, " ")
}

// reader takes a spoken text apart, a word at a time.
type reader struct {
	*Writer
	in []string
}

// bare takes the marks off the end of a word.
func bare(s string) (word, marks string) {
	word = strings.TrimRight(s, ",.?!:;")
	return word, s[len(word):]
}

// word is a word in lower case, and the marks behind it.
func (r *reader) word(i int) (word, marks string) {
	if i >= len(r.in) {
		return "", ""
	}
	word, marks = bare(r.in[i])
	return strings.ToLower(word), marks
}

// number reads a number at i, in digits, with the marks behind it.
func (r *reader) number(i int) (digits, marks string, next int) {
	sign := ""
	if x, m := r.word(i); m == "" && x == r.minus {
		sign, i = "-", i+1
	}
	var total, part int64
	begin := i
	for ; ; i++ {
		x, m := r.word(i)
		if v, ok := r.small[x]; ok && (i == begin || part > 0 && part%100 == 0 && v > 0 || part == 0 && total > 0) {
			part += v
		} else if v, ok := r.scale[x]; ok && part > 0 {
			if v == 100 {
				part *= v
			} else {
				total, part = total+part*v, 0
			}
		} else {
			break
		}
		if m != "" {
			marks, i = m, i+1
			break
		}
	}
	if i == begin {
		return "", "", begin
	}
	digits = sign + strconv.FormatInt(total+part, 10)
	if x, m := r.word(i); marks == "" && m == "" && x == r.point {
		frac := ""
		for k := i + 1; ; k++ {
			x, m := r.word(k)
			v, ok := r.small[x]
			if !ok || v > 9 {
				break
			}
			frac, marks, i = frac+strconv.FormatInt(v, 10), m, k+1
			if m != "" {
				break
			}
		}
		if frac != "" {
			digits += "." + frac
		}
	}
	return digits, marks, i
}

// again is where the digits of a number end that are said once more: "fifteen, one five, volts".
func (r *reader) again(i int, digits string) int {
	said := strings.TrimPrefix(digits, "-")
	for k := i; k < len(r.in); k++ {
		x, m := r.word(k)
		switch v, ok := r.small[x]; {
		case x == r.minus && k == i:
		case x == r.point && strings.HasPrefix(said, "."):
			said = said[1:]
		case ok && v <= 9 && strings.HasPrefix(said, strconv.FormatInt(v, 10)):
			said = said[1:]
		default:
			return i
		}
		if said == "" && m == "," {
			return k + 1
		}
		if m != "" {
			return i
		}
	}
	return i
}

// unit finds the longest name of a unit at i.
func (r *reader) unit(i int) (name, marks string, next int) {
	first, _ := r.word(i)
	for _, u := range r.units[first] {
		last, k := "", i
		for n, f := range u.words {
			word, m := r.word(i + n)
			if word != f || last != "" {
				k = -1
				break
			}
			last, k = m, i+n+1
		}
		if k > i {
			return u.print, last, k
		}
	}
	return "", "", i
}

// measured writes a number with its unit, a range of them, or a chance.
func (r *reader) measured(i int) (text string, next int) {
	digits, marks, k := r.number(i)
	if k == i {
		return "", i
	}
	text = digits
	if marks == "," {
		k = r.again(k, digits)
		if x, _, n := r.unit(k); n == k || x == "" {
			return "", i
		}
		marks = ""
	}
	if marks != "" {
		return "", i
	}
	if x, m := r.word(k); m == "" && x == r.to && x != "" { // "ten to twenty volts"
		if other, m, n := r.number(k + 1); n > k+1 && m == "" {
			text, k = text+" "+x+" "+other, n
		}
	}
	if x, m := r.word(k); m == "" && x == r.of && x != "" { // "nine in ten"
		if other, m, n := r.number(k + 1); n > k+1 {
			return text + " " + x + " " + other + m, n
		}
	}
	name, m, n := r.unit(k)
	if n == k || name == "" {
		return "", i
	}
	return text + " " + name + m, n
}

// letters joins letters that are said one by one.
func (r *reader) letters(i int) (text string, next int) {
	k := i
	for ; ; k++ {
		x, m := "", ""
		if k < len(r.in) {
			x, m = bare(r.in[k])
		}
		if c, n := utf8.DecodeRuneInString(x); n == 0 || n < len(x) || !unicode.IsUpper(c) {
			break
		}
		text += x
		if m != "" {
			text, k = text+m, k+1
			break
		}
	}
	if k-i < 2 {
		return "", i
	}
	return text, k
}

// prefixed joins a unit with its prefix that stands alone: "MICRO amps".
func (r *reader) prefixed(i int) (text string, next int) {
	a, m := r.word(i)
	b, marks := r.word(i + 1)
	for _, u := range r.units[a] {
		if u.alone != "" && m == "" && u.words[1] == b {
			return u.alone + marks, i + 2
		}
	}
	return "", i
}
