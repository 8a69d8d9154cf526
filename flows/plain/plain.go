// Package plain holds English texts to what a homeowner understands: how hard they are to read, how long a sentence is, how words are spelled in
// America, and whether the words of a question are its answers.
package plain

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Longest is how many words a sentence may have: longer ones are not kept in mind by somebody who works (issue 18 I1).
const Longest = 16

// Words splits a text into words: letters, digits, and the apostrophes and hyphens inside them.
func Words(text string) []string {
	var out []string
	for _, f := range strings.FieldsFunc(text, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' && r != '-'
	}) {
		if f = strings.Trim(f, "'-"); f != "" {
			out = append(out, f)
		}
	}
	return out
}

// Sentences splits a text at full stops, question marks and colons: a voice pauses there.
func Sentences(text string) []string {
	var out []string
	for _, s := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(".?!:;", r) }) {
		if len(Words(s)) > 0 {
			out = append(out, strings.TrimSpace(s))
		}
	}
	return out
}

// LongestOf is the longest sentence of a text, in words.
func LongestOf(text string) (n int, sentence string) {
	for _, s := range Sentences(text) {
		if k := len(Words(s)); k > n {
			n, sentence = k, s
		}
	}
	return n, sentence
}

func norm(text string) string { return strings.ToLower(strings.Join(Words(text), " ")) }

var (
	auxiliaries = []string{"is", "are", "do", "does", "did", "can", "has", "have", "was", "were", "will"}
	asking      = []string{"what", "which", "how", "where", "when", "who"}
)

// most is how many answers a question names aloud; where there are more it asks openly, and the buttons name them.
const most = 4

// Answers holds a question to its answers: their labels are its own words. It either ends in all of them ("dry, wet, or flooded?"), or is a question
// of yes and no, or says what to say ("when both are off, say: both are off"), or, with more than four answers, it asks openly. The error
// says what is wrong.
func Answers(ask string, labels []string) error {
	seen := map[string]bool{}
	for _, l := range labels {
		if norm(l) == "" {
			return fmt.Errorf("an answer has no words")
		}
		if seen[norm(l)] {
			return fmt.Errorf("two answers are called %q", l)
		}
		seen[norm(l)] = true
	}
	text, sentences := norm(ask), Sentences(ask)
	if len(labels) == 0 || text == "" {
		return nil
	}
	last := Words(sentences[len(sentences)-1])
	switch {
	case seen["yes"] || seen["no"]:
		if len(labels) != 2 || !seen["yes"] || !seen["no"] {
			return fmt.Errorf("yes and no are the only answers, or none of the answers")
		}
		if !slices.Contains(auxiliaries, strings.ToLower(last[0])) || strings.Contains(sentences[len(sentences)-1], ", or ") {
			return fmt.Errorf("a question of yes and no begins with a word such as %q and names nothing else", "does")
		}
		return nil
	case ends(text, labels):
		f := strings.Fields(ask)
		if n := len(f) - len(Words(list(labels))); n > 0 && strings.HasSuffix(f[n-1], ",") {
			return fmt.Errorf("the question names an answer that has no button, before %q", list(labels)+"?")
		}
		return nil
	case says(text, labels):
		return nil
	case len(labels) > most && slices.ContainsFunc(sentences, func(s string) bool {
		return slices.Contains(asking, strings.ToLower(Words(s)[0]))
	}):
		return nil
	}
	return fmt.Errorf("the question does not end in its answers: want %q", list(labels)+"?")
}

func ends(text string, labels []string) bool {
	tail := norm(list(labels))
	return len(labels) > 1 && (text == tail || strings.HasSuffix(text, " "+tail))
}

func list(labels []string) string {
	if len(labels) == 1 {
		return labels[0]
	}
	sep := " or "
	if len(labels) > 2 {
		sep = ", or "
	}
	return strings.ToLower(strings.Join(labels[:len(labels)-1], ", ") + sep + labels[len(labels)-1])
}

// says tells whether a text tells to say each of the labels.
func says(text string, labels []string) bool {
	told := false
	for _, l := range labels {
		here := strings.Contains(" "+text+" ", " say "+norm(l)+" ")
		if !here && !(told && strings.Contains(" "+text+" ", " or "+norm(l)+" ")) {
			return false
		}
		told = true
	}
	return true
}

// british are spellings that are other in America, by their stem.
var british = map[string]string{"colour": "color", "odour": "odor", "grey": "gray", "licence": "license", "analyser": "analyzer", "mould": "mold", "centre": "center",
	"metre": "meter", "neighbour": "neighbor", "vapour": "vapor", "aluminium": "aluminum", "tyre": "tire", "programme": "program", "burnt": "burned", "mains": "house voltage",
	"torch": "flashlight", "cheque": "check", "whilst": "while", "behaviour": "behavior", "favour": "favor", "harbour": "harbor", "recognis": "recogniz", "organis": "organiz"}

// British finds a word of a text that is spelled or said otherwise in America, and what it is there; empty for none.
func British(text string) (word, american string) {
	for _, w := range Words(strings.ToLower(text)) {
		for stem, a := range british {
			if w == stem || strings.HasPrefix(w, stem) && len(stem) > 4 {
				return w, a
			}
		}
	}
	return "", ""
}
