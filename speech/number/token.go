package number

import (
	"strings"
	"unicode"

	"readback/core/unit"
)

// token is one word. A typed number or unit symbol keeps its exact form beside the word.
type token struct {
	word string // lower case
	dec  string // digits of a typed number: "26.4"
	unit string // unit id of a typed symbol: "mV"
}

var symbols = strings.NewReplacer("µ", "u", "μ", "u", "Ω", "ohm", "Ω", "ohm", "°", "deg", "’", "'", "−", "-", "…", " ")

// Words brings a saying to the form of the lexicon: lower case words without punctuation, one space between them.
// A typed number stays one word with its point and sign; "[unk]" stays as it is.
func Words(text string) string {
	ts := tokens(text)
	w := make([]string, len(ts))
	for i, t := range ts {
		w[i] = t.word
	}
	return strings.Join(w, " ")
}

func tokens(text string) []token {
	var ts []token
	for _, f := range strings.Fields(symbols.Replace(text)) {
		if f == "[unk]" {
			ts = append(ts, token{word: f})
			continue
		}
		ts = splitNumber(ts, strings.TrimFunc(f, func(r rune) bool { return strings.ContainsRune(",;:?!\"()", r) }))
	}
	return ts
}

// splitNumber takes a leading typed number off one field: "26.4V" is a number and a symbol.
func splitNumber(ts []token, f string) []token {
	n := 0
	if n < len(f) && f[n] == '-' {
		n++
	}
	start, point := n, false
	for n < len(f) && (f[n] >= '0' && f[n] <= '9' || f[n] == '.' && !point && n+1 < len(f) && f[n+1] >= '0' && f[n+1] <= '9') {
		point = point || f[n] == '.'
		n++
	}
	if n > start {
		ts = append(ts, token{word: f[:n], dec: f[:n]})
		f = strings.TrimLeft(f[n:], ".,")
	}
	if f == "" {
		return ts
	}
	if _, ok := unit.Lookup(f); ok && f != "in" && f != "x" && f != "money" && f != "A" { // those are words of their own
		return append(ts, token{word: strings.ToLower(f), unit: f})
	}
	if f == "A" && len(ts) > 0 && ts[len(ts)-1].dec != "" { // elsewhere it is an article
		return append(ts, token{word: "amps", unit: f})
	}
	for _, w := range strings.FieldsFunc(f, func(r rune) bool { return r != '\'' && r != '%' && !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if w = strings.Trim(strings.ToLower(w), "'"); w != "" {
			ts = append(ts, token{word: w})
		}
	}
	return ts
}
