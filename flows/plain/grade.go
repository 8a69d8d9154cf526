package plain

import (
	"strings"
)

// Count adds up what the grade of texts is made of.
type Count struct{ Sentences, Words, Syllables int }

// Add counts a text.
func (c *Count) Add(text string) {
	for s := range strings.FieldsFuncSeq(text, func(r rune) bool { return strings.ContainsRune(".?!", r) }) { // a colon ends no sentence here
		if len(Words(s)) == 0 {
			continue
		}
		c.Sentences++
		for _, w := range Words(s) {
			c.Words++
			c.Syllables += Syllables(w)
		}
	}
}

// Grade is the school grade that is needed to read the texts: 0.39 words a sentence + 11.8 syllables a word - 15.59. Kincaid, Fishburne, Rogers and
// Chissom, Derivation of new readability formulas for Navy enlisted personnel, Research Branch Report 8-75, 1975.
func (c *Count) Grade() float64 {
	if c.Sentences == 0 || c.Words == 0 {
		return 0
	}
	return 0.39*float64(c.Words)/float64(c.Sentences) + 11.8*float64(c.Syllables)/float64(c.Words) - 15.59
}

// Syllables counts the syllables of an English word by its spelling. The test holds it against the CMU pronouncing dictionary for every word of our
// texts that stands there.
func Syllables(word string) int {
	n := 0
	for part := range strings.SplitSeq(strings.ToLower(word), "-") {
		n += syllables(part)
	}
	return max(n, 1)
}

func vowel(c byte) bool { return strings.IndexByte("aeiouy", c) >= 0 }

// silent are what may follow an e that is not said: "safe-ly", "some-thing", "move-ment".
var silent = []string{"ly", "ment", "ments", "ful", "fully", "less", "ness", "thing", "body", "one", "where", "how", "what", "time", "times", "day", "side", "ty", "place", "place's", "hand"}

func syllables(w string) int {
	w, tail, _ := strings.Cut(w, "'")
	if n, ok := odd[w]; ok {
		return n
	}
	if w == "" {
		return 0
	}
	for _, end := range silent {
		if stem, ok := strings.CutSuffix(w, end); ok && strings.HasSuffix(stem, "e") && len(stem) > 3 && !vowel(stem[len(stem)-2]) && !strings.HasSuffix(stem, "le") {
			return syllables(stem) + syllables(end)
		}
	}
	n, was := 0, false
	for i := range len(w) {
		v := vowel(w[i])
		switch {
		case w[i] == 'y' && (i == 0 || i+1 < len(w) && vowel(w[i+1]) && w[i-1] != 'r'): // "yes", "beyond"
			v = false
		case w[i] == 'u' && i > 0 && w[i-1] == 'q':
			v = false
		}
		if v && !was {
			n++
		}
		was = v
	}
	n += apart(w)
	switch { // endings that are not said
	case strings.HasSuffix(w, "le") && len(w) > 2 && !vowel(w[len(w)-3]), strings.HasSuffix(w, "les") && len(w) > 3 && !vowel(w[len(w)-4]),
		strings.HasSuffix(w, "led") && len(w) > 4 && !vowel(w[len(w)-4]) && w[len(w)-4] != 'l' && w[len(w)-4] != 'r':
	case strings.HasSuffix(w, "e") && len(w) > 2 && !vowel(w[len(w)-2]), strings.HasSuffix(w, "gue"), strings.HasSuffix(w, "que"):
		n--
	case strings.HasSuffix(w, "es") && len(w) > 3 && !vowel(w[len(w)-3]) && strings.IndexByte("szxcg", w[len(w)-3]) < 0 && !strings.HasSuffix(w, "shes") && !strings.HasSuffix(w, "ches"):
		n--
	case strings.HasSuffix(w, "ed") && len(w) > 3 && !vowel(w[len(w)-3]) && strings.IndexByte("td", w[len(w)-3]) < 0 && !strings.HasSuffix(w, "dred"):
		n--
	}
	if tail == "t" && strings.HasSuffix(w, "n") && len(w) > 1 && !vowel(w[len(w)-2]) && w != "aren" { // "is-n't"
		n++
	}
	if tail == "s" && strings.ContainsAny(w[len(w)-1:], "sxz") || tail == "s" && (strings.HasSuffix(w, "ce") || strings.HasSuffix(w, "se") || strings.HasSuffix(w, "ge")) {
		n++
	}
	return max(n, 1)
}

// apart counts vowels beside each other that are said apart: "fa-mi-li-ar" is not among them, "a-re-a" is.
func apart(w string) (n int) {
	for i := 1; i+1 < len(w); i++ {
		before, rest := w[i-1], w[i:]
		starts := func(list ...string) bool {
			for _, x := range list {
				if strings.HasPrefix(rest, x) {
					return true
				}
			}
			return false
		}
		switch {
		case starts("ia") && strings.IndexByte("tcl", before) < 0 && !starts("iage"), starts("iat"), starts("iu"),
			starts("io") && strings.IndexByte("tsgcxnlhu", before) < 0,
			starts("eo") && before != 'p' && !starts("eous"),
			starts("ua") && strings.IndexByte("qgs", before) < 0, starts("uou"), starts("uity"),
			starts("iet") && !starts("iety"), starts("iety"), starts("ience", "ient") && before != 't' && before != 'c',
			rest == "ier" || rest == "iest", rest == "oing" || rest == "eing" || rest == "eeing" || rest == "uing", starts("eat") && strings.HasSuffix(w[:i], "cr") && !starts("eature"),
			rest == "ea" && (strings.HasSuffix(w, "idea") || strings.HasSuffix(w, "area")), rest == "eas" && strings.HasSuffix(w, "ideas"):
			n++
		}
	}
	if strings.HasSuffix(w, "ism") {
		n++
	}
	return n
}

// odd are words of our texts whose spelling misleads the rules.
var odd = map[string]int{"maybe": 2, "hundred": 2, "quiet": 2, "being": 2, "everything": 3, "everybody": 4, "everyone": 3, "anyone": 3, "someone": 2, "somebody": 3, "safety": 2,
	"thermostat": 3, "area": 3, "evening": 2, "react": 2, "w": 3, "loosen": 2, "everywhere": 3, "every": 2, "different": 3, "people": 2, "business": 2,
	"eye": 1, "eyes": 1, "stayed": 1, "played": 1, "seeing": 2, "appliance": 3, "appliances": 4, "usual": 3, "therefore": 2, "useful": 2, "grille": 1}
