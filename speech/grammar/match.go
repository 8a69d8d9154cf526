package grammar

import (
	"slices"
	"strings"

	"readback/core/utterance"
)

// hazard is an emergency found in a saying.
type hazard struct {
	class string
	doubt bool
	words string
	whole bool // a phrase of several words, not one bare word
	start int
}

// matcher finds emergencies in words. Its rules, in order: a device noun masks the hazard word inside it unless a live
// verb follows; a negator at most three words before cancels, unless an ender, a pause or another hazard word stands
// between; a fine-word after cancels; past, what-if, hedges and double negation make it doubtful; an expected spark, fire
// or flame cancels the bare word only.
type matcher struct {
	classes []classPhrases
	masks   [][]string
	live    map[string]bool
	negator map[string]bool
	ender   map[string]bool
	fine    [][]string
	past    [][]string
	hedge   [][]string
	expect  [][]string
	hazards map[string]bool // bare words that end a negator's reach
}

type classPhrases struct {
	id  string
	say [][]string // "*" stands for up to three words
}

const (
	negatorReach = 3 // words
	liveReach    = 4 // words
	gapMost      = 3 // words a "*" may stand for
)

func newMatcher(e utterance.Emergencies) *matcher {
	m := &matcher{masks: fields(e.Masks), live: set(e.Live), negator: set(e.Negators), ender: set(e.Enders),
		fine: fields(e.Fine), past: fields(e.Past), hedge: fields(e.Hedges), expect: fields(e.Expected),
		hazards: set([]string{"gas", "smoke", "fire", "propane", "monoxide"})}
	for _, c := range e.Classes {
		m.classes = append(m.classes, classPhrases{c.ID, fields(c.Say)})
	}
	return m
}

func fields(say []string) [][]string {
	out := make([][]string, len(say))
	for i, s := range say {
		out[i] = spread(strings.Fields(s))
	}
	return out
}

// spread writes "detector's" as "detector is": people say either, and a recogniser hears either.
func spread(words []string) []string {
	out := make([]string, 0, len(words)+2)
	for _, w := range words {
		if head, ok := strings.CutSuffix(w, "'s"); ok {
			out = append(out, head, "is")
		} else {
			out = append(out, w)
		}
	}
	return out
}

func set(words []string) map[string]bool {
	m := make(map[string]bool, len(words))
	for _, w := range words {
		m[w] = true
	}
	return m
}

// find returns the gravest emergency in the words, or nil. Certain ones come before doubtful ones, then the order of the lexicon.
func (m *matcher) find(words []string) *hazard {
	words = spread(words)
	var best *hazard
	for _, c := range m.classes {
		for _, say := range c.say {
			for i := range words {
				end := matchAt(words, i, say, 0)
				if end < 0 {
					continue
				}
				h := m.classify(words, i, end, say, c.id)
				if h != nil && (best == nil || best.doubt && !h.doubt || best.doubt == h.doubt && best.class == h.class && len(h.words) > len(best.words)) {
					best = h
				}
			}
		}
	}
	return best
}

// matchAt returns the end of the phrase when it stands at words[i:], or -1.
func matchAt(words []string, i int, say []string, k int) int {
	if k == len(say) {
		return i
	}
	if say[k] == "*" {
		for gap := 0; gap <= gapMost && i+gap <= len(words); gap++ {
			if end := matchAt(words, i+gap, say, k+1); end >= 0 {
				return end
			}
		}
		return -1
	}
	if i < len(words) && words[i] == say[k] {
		return matchAt(words, i+1, say, k+1)
	}
	return -1
}

// classify applies the rules to a phrase found at words[i:end].
func (m *matcher) classify(words []string, i, end int, say []string, class string) *hazard {
	if m.masked(words, i, end) {
		return nil
	}
	for _, w := range words[i:end] { // "smell no gas"
		if m.negator[w] && !slices.Contains(say, w) {
			return nil
		}
	}
	bare := end-i == 1
	if bare && m.anyIn(words, m.expect) {
		return nil
	}
	n := m.negations(words, i)
	hedged := m.anyIn(words[:i], m.hedge) || m.anyIn(words[end:min(len(words), end+3)], m.hedge)
	clause := n > 0 && words[i-1] == "no" && subject[words[i]] // "no, I smell gas": a "no" does not negate a sentence
	if n == 1 && !clause && !hedged {
		return nil
	}
	if m.isFine(words, end) {
		return nil
	}
	doubt := class == "ask" || n > 1 || clause || hedged || m.anyIn(words, m.past)
	return &hazard{class: class, doubt: doubt, words: strings.Join(words[i:end], " "), whole: !bare, start: i}
}

var subject = set([]string{"i", "i'm", "it", "it's", "there", "there's", "we", "he", "she", "he's", "she's", "the", "my", "something", "something's", "they"})

// masked tells whether a device noun covers a word of the phrase and reaches beyond it, with no live verb in the phrase
// before it ("leak at the gas valve") or shortly after it ("smoke alarm is ringing").
func (m *matcher) masked(words []string, i, end int) bool {
	for _, mask := range m.masks {
		for k := max(0, i-len(mask)+1); k < end; k++ {
			stop := matchAt(words, k, mask, 0)
			if stop <= i || k >= i && stop <= end {
				continue
			}
			alive := false
			for j := i; j < k; j++ {
				alive = alive || m.live[words[j]]
			}
			for j := stop; j < min(len(words), stop+liveReach); j++ {
				alive = alive || m.live[words[j]] && !m.negatedAt(words, j)
			}
			if !alive {
				return true
			}
		}
	}
	return false
}

func (m *matcher) negatedAt(words []string, j int) bool {
	return j > 0 && m.negator[words[j-1]]
}

// negations counts the negators within reach before words[i].
func (m *matcher) negations(words []string, i int) int {
	n := 0
	for k := i - 1; k >= 0 && k >= i-negatorReach; k-- {
		if m.ender[words[k]] || m.hazards[words[k]] {
			break
		}
		if m.negator[words[k]] && !(words[k] == "no" && k > 0 && words[k-1] == "oh") { // "oh no" is a cry
			n++
		}
	}
	return n
}

// isFine tells whether a fine-word follows the phrase, before an ender.
func (m *matcher) isFine(words []string, end int) bool {
	for k := end; k < len(words); k++ {
		if m.ender[words[k]] || m.hazards[words[k]] {
			return false
		}
		for _, f := range m.fine {
			if matchAt(words, k, f, 0) >= 0 && !m.negatedAt(words, k) {
				return true
			}
		}
	}
	return false
}

func (m *matcher) anyIn(words []string, list [][]string) bool {
	for i := range words {
		for _, s := range list {
			if matchAt(words, i, s, 0) >= 0 {
				return true
			}
		}
	}
	return false
}
