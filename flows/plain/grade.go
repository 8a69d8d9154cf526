package plain

import (
	"strings"
)

// Count adds up what the grade of texts is made of.
type Count struct{ Sentences, Words, Syllables int }

// Add counts a text.
func (c *Count) Add(text string) {
	for _, s := range Sentences(text) {
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

func syllables(w string) int {
	w, _, _ = strings.Cut(w, "'") // "furnace's" is said like "furnaces", "don't" like "dont": the few that gain one are listed
	if n, ok := odd[w]; ok {
		return n
	}
	if w == "" {
		return 0
	}
	n, was := 0, false
	for i := range len(w) {
		v := vowel(w[i])
		if w[i] == 'y' && i == 0 {
			v = false
		}
		if w[i] == 'u' && i > 0 && w[i-1] == 'q' {
			v = false
		}
		if v && !was {
			n++
		}
		was = v
	}
	// Two vowels that are said apart.
	for _, s := range []string{"ia", "iu", "eo", "io", "ua", "uou", "yi"} {
		for i := strings.Index(w, s); i >= 0; {
			if !(s == "io" && i > 0 && strings.IndexByte("tsgcx", w[i-1]) >= 0) && !(s == "ia" && i > 0 && strings.IndexByte("tc", w[i-1]) >= 0) &&
				!(s == "ua" && i > 0 && strings.IndexByte("qg", w[i-1]) >= 0) && !(s == "eo" && strings.HasPrefix(w, "people")) {
				n++
			}
			break
		}
	}
	switch { // endings that are not said
	case strings.HasSuffix(w, "le") && len(w) > 2 && !vowel(w[len(w)-3]):
	case strings.HasSuffix(w, "les") && len(w) > 3 && !vowel(w[len(w)-4]):
	case strings.HasSuffix(w, "e") && len(w) > 2 && !vowel(w[len(w)-2]):
		n--
	case strings.HasSuffix(w, "es") && len(w) > 3 && !vowel(w[len(w)-3]) && strings.IndexByte("szxcg", w[len(w)-3]) < 0 && !strings.HasSuffix(w, "shes") && !strings.HasSuffix(w, "ches"):
		n--
	case strings.HasSuffix(w, "ed") && len(w) > 3 && !vowel(w[len(w)-3]) && strings.IndexByte("td", w[len(w)-3]) < 0:
		n--
	}
	return max(n, 1)
}

// odd are words whose spelling misleads the rules.
var odd = map[string]int{}
