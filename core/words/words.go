// Package words holds what the program says, shows and prints in one language, as values: lines of the guide, terms of
// pages and records, numbers and units. It reads no file; flows/prompts does.
package words

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Line is one thing the guide says, in its forms. Slots are written {name}.
type Line struct {
	ID    string
	Full  string   // the long form
	Short []string // short forms, taken in turn
	Say   string   // what to answer
	How   string   // how it is done, for "how"
	Ask   []string // option ids that answer it; the first is the one hoped for
	// Labels are the answers in the words of this question, one an option id of Ask; an option left out is worded as the lexicon does.
	Labels map[string]string
	Also   map[string][]string // other option ids that mean one of Ask here: understood, and no buttons of their own
}

// Unit is how a unit is spoken and printed.
type Unit struct {
	One      string // spoken, one of it: "volt"
	Many     string // spoken, several: "volts"
	Prefixed string // spoken with its prefix set apart: "MICRO amps"; empty when there is no prefix
	Print    string // printed beside a number: "µA"
}

// Words is all that is said, shown and printed in one language, and the option ids that its lines wait for.
type Words struct {
	Lang    string
	Lines   map[string]Line   // by id; never ranged where order could show
	Terms   map[string]string // labels and other short texts, by "group.id"; the same
	Units   map[string]Unit   // by unit.Unit.ID
	Numbers []string          // the numbers 0 to 99
}

// Fill puts the values into the slots of a text: pairs of slot name and value.
func Fill(text string, pairs ...string) string {
	if !strings.Contains(text, "{") {
		return text
	}
	for i := 0; i+1 < len(pairs); i += 2 {
		text = strings.ReplaceAll(text, "{"+pairs[i]+"}", pairs[i+1])
	}
	return text
}

// Term is a term with its slots filled: pairs of slot name and value. It panics where there is none: a test holds that
// every term asked for is there.
func (w *Words) Term(id string, pairs ...string) string {
	text, ok := w.Terms[id]
	if !ok {
		panic("words: no term " + id)
	}
	return Fill(text, pairs...)
}

// Name is the term of an id out of a closed list, and the id itself, its hyphens as spaces, where there is no such
// term.
func (w *Words) Name(group, id string) string {
	if text, ok := w.Terms[group+"."+id]; ok {
		return text
	}
	return strings.ReplaceAll(id, "-", " ")
}

// Origin says where a number comes from when it comes from no document: "common practice, no source". A document's id
// stays as it is.
func (w *Words) Origin(source string) string {
	if text, ok := w.Terms["origin."+strings.ReplaceAll(strings.ReplaceAll(source, ",", ""), " ", "-")]; ok {
		return text
	}
	return source
}

// Chance says a probability as word and number together. The bands follow how such words are understood on average
// (Wintle 2019, Vogel 2022); words that people read very differently are not used.
func (w *Words) Chance(p float64) string {
	switch {
	case p >= 0.95:
		return w.Term("chance.certain")
	case p >= 0.80:
		return w.Term("chance.very-likely")
	case p >= 0.60:
		return w.Term("chance.likely")
	case p >= 0.40:
		return w.Term("chance.even")
	case p >= 0.20:
		return w.Term("chance.less-likely")
	case p >= 0.05:
		return w.Term("chance.unlikely")
	}
	return w.Term("chance.very-unlikely")
}

// Capital makes the first letter a capital one.
func Capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// And lists words aloud: "a, b and c".
func (w *Words) And(s []string) string {
	switch len(s) {
	case 0:
		return ""
	case 1:
		return s[0]
	}
	return w.Term("list.and", "first", strings.Join(s[:len(s)-1], ", "), "last", s[len(s)-1])
}
