package intent

import "strings"

// contractions writes what people contract, and transcribers write without the apostrophe, as the words that the vectors know.
var contractions = map[string]string{
	"dont": "do n't", "doesnt": "does n't", "didnt": "did n't", "cant": "ca n't", "wont": "wo n't", "isnt": "is n't", "wasnt": "was n't",
	"aint": "ai n't", "couldnt": "could n't", "wouldnt": "would n't", "shouldnt": "should n't", "havent": "have n't", "hasnt": "has n't",
	"hadnt": "had n't", "arent": "are n't", "werent": "were n't", "im": "i 'm", "ive": "i 've", "youre": "you 're", "theyre": "they 're",
	"thats": "that 's", "theres": "there 's", "whats": "what 's", "heres": "here 's", "wheres": "where 's", "hes": "he 's", "shes": "she 's",
	"lets": "let 's", "gonna": "going to", "gotta": "got to", "wanna": "want to", "lemme": "let me", "gimme": "give me", "kinda": "kind of",
	"sorta": "sort of", "outta": "out of", "dunno": "do n't know", "cannot": "ca n't", "ok": "okay", "'em": "them", "'cause": "because", "cuz": "because",
	"y'all": "you all", "c'mon": "come on", "whaddya": "what do you", "gotcha": "got you", "oughta": "ought to", "lotta": "lot of",
	"hunnerd": "hundred", "hunderd": "hundred", "hunnert": "hundred", "hundert": "hundred", "twunny": "twenty", "fitty": "fifty", "fiddy": "fifty", "niner": "nine", "aught": "zero",
	"zeros": "zero", "zeroes": "zero", "millivolt's": "millivolts", "itll": "it 'll", "thatll": "that 'll", "howd": "how did", "alright": "all right",
}

// endings are cut off a word and stand as a word of their own.
var endings = []string{"n't", "'s", "'m", "'re", "'ll", "'ve", "'d"}

// Tokens splits words as spoken into lower-case words; contractions come apart ("don't" is "do n't") and punctuation is dropped. At most
// Longest words are kept: the first and the last of them.
func Tokens(text string) []string {
	words, _ := Spans(text)
	return words
}

// Spans is Tokens with the words before which a comma or a stop was written.
func Spans(text string) (out []string, after []bool) {
	comma := false
	for _, f := range strings.Fields(strings.ToLower(strings.ReplaceAll(text, "’", "'"))) {
		for _, w := range strings.FieldsFunc(f, func(r rune) bool { return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '\'' || r == '.') }) {
			n := len(out)
			for _, part := range apart(w) {
				out = word(out, part)
			}
			for i := n; i < len(out); i++ {
				after = append(after, comma && i == n && n > 0)
			}
			if len(out) > n {
				comma = false
			}
		}
		comma = comma || strings.ContainsAny(f[len(f)-1:], ",;.:!?") && !strings.HasSuffix(f, "..") // three points are a pause inside
	}
	if len(out) > Longest {
		out = append(out[:Longest/2], out[len(out)-Longest/2:]...)
		after = append(after[:Longest/2], after[len(after)-Longest/2:]...)
	}
	return out, after
}

// apart splits a number in figures from the letters behind it: "120v".
func apart(w string) []string {
	n := strings.IndexFunc(w, func(r rune) bool { return r >= 'a' && r <= 'z' || r == '\'' })
	if n <= 0 || strings.Trim(w[:n], "0123456789.") != "" {
		return []string{w}
	}
	return []string{w[:n], w[n:]}
}

// Longest is how many words of one utterance are looked at.
const Longest = 64

func word(out []string, w string) []string {
	if c, ok := contractions[w]; ok {
		return append(out, strings.Fields(c)...)
	}
	if w = strings.Trim(w, "'."); w == "" {
		return out
	}
	for _, e := range endings {
		if head, ok := strings.CutSuffix(w, e); ok && head != "" {
			return append(word(out, head), e)
		}
	}
	if head, ok := strings.CutSuffix(w, "in"); ok && len(head) > 3 && gerund[w] { // "leakin'"
		return append(out, head+"ing")
	}
	return append(out, w)
}

// gerund are words that lost their last letter in a transcript.
var gerund = set("leakin smokin burnin beepin smellin hissin ringin sparkin arcin bleedin goin comin doin gettin jumpin readin sayin showin blinkin flickerin runnin workin feelin chokin coughin makin startin tryin talkin waitin")

func set(words string) map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		m[w] = true
	}
	return m
}
