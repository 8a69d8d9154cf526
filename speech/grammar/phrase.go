// Package phrase finds what a saying means: an emergency anywhere in it, or as a whole a command, an answer, a reading.
// It also samples the lexicon into the phrases the recogniser is trained with.
package grammar

import (
	"slices"
	"sort"
	"strings"

	"readback/core/utterance"
	"readback/speech/number"
)

// Expect is what the question that was asked can be answered with. The zero value expects anything.
type Expect struct {
	Options []string // option ids
	Labels  []Label  // how the question words them, where it has words of its own
	Units   []string // unit ids
	Text    bool     // free words: a part number, a story
}

// Label is an answer in the words of the question: "above the burners", or "yes", for an option that is called otherwise elsewhere.
type Label struct{ Option, Text string }

// Key tells questions apart that are heard differently.
func (e Expect) Key() string {
	key := strings.Join(e.Options, " ") + "|" + strings.Join(e.Units, " ")
	for _, l := range e.Labels {
		key += "|" + l.Option + "=" + l.Text
	}
	return key
}

// Names tells whether a text is the very words of one of the answers.
func (e Expect) Names(text string) bool {
	words := number.Words(text)
	return slices.ContainsFunc(e.Labels, func(l Label) bool { return number.Words(l.Text) == words })
}

// asked is what a question adds to the lexicon.
type asked struct {
	ids     map[string]bool   // option ids
	says    map[string]string // saying → the option that it means here
	longest int               // words of the longest saying
}

// asks works out what a question expects. A label means its option, and so does all that the lexicon takes for the same as the label: where the
// answers are yes and no, "nope" is the one that is labelled no.
func (p *Parser) asks(e Expect) asked {
	a := asked{ids: set(e.Options), longest: p.longest}
	if len(e.Labels) == 0 {
		return a
	}
	a.says = map[string]string{}
	twice := map[string]bool{}
	for _, l := range e.Labels {
		for _, id := range p.options[number.Words(l.Text)] {
			if id == l.Option || a.ids[id] {
				continue
			}
			for _, s := range p.sayings[id] {
				if o, ok := a.says[s]; ok && o != l.Option {
					twice[s] = true
				}
				a.says[s] = l.Option
			}
		}
	}
	for s := range twice { // it could be either: left to the lexicon
		delete(a.says, s)
	}
	for _, id := range e.Options { // what an answer is called everywhere stays its own
		for _, s := range p.sayings[id] {
			delete(a.says, s)
		}
	}
	for _, l := range e.Labels {
		s := number.Words(l.Text)
		a.says[s] = l.Option
		a.longest = max(a.longest, strings.Count(s, " ")+1)
	}
	return a
}

// optionsOf are the options that a saying means, those of the question first.
func (p *Parser) optionsOf(saying string, a *asked) []string {
	ids := p.options[saying]
	o, ok := a.says[saying]
	if !ok {
		return append(filter(ids, a.ids, true), filter(ids, a.ids, false)...)
	}
	out := []string{o}
	for _, id := range ids {
		if id != o && !a.ids[id] {
			out = append(out, id)
		}
	}
	return out
}

// Parser finds meanings with one lexicon. It is read-only and may be shared.
type Parser struct {
	lex      *utterance.Lexicon
	number   *number.Parser
	hazards  *matcher
	commands map[string]string   // saying → command id
	options  map[string][]string // saying → option ids
	sayings  map[string][]string // option id → sayings
	longest  int                 // words of the longest option saying
	misheard int                 // words of the longest misheard saying
}

// New builds a parser.
func New(lex *utterance.Lexicon) *Parser {
	p := &Parser{lex: lex, number: number.New(lex), hazards: newMatcher(lex.Emergencies), commands: map[string]string{}, options: map[string][]string{}, sayings: map[string][]string{}}
	for _, c := range lex.Commands {
		for _, s := range c.Say {
			p.commands[s] = c.ID
		}
	}
	for _, o := range lex.Options {
		p.sayings[o.ID] = o.Say
		for _, s := range o.Say {
			p.options[s] = append(p.options[s], o.ID)
			p.longest = max(p.longest, strings.Count(s, " ")+1)
		}
	}
	for s := range lex.Misheard {
		p.misheard = max(p.misheard, strings.Count(s, " ")+1)
	}
	return p
}

// Costs in nats, by judgement: the order of ways to take the same words.
const (
	costLater   = 0.01 // per place in a list of meanings that are equally good
	costInside  = 1.5  // an answer inside other words
	costUnknown = 0.5  // per other word
	costLetters = 2.0  // letters and digits as a part number, when none was asked for
)

// Parse returns the meanings of typed or recognised words, best first.
func (p *Parser) Parse(text string, e Expect) []utterance.Meaning {
	words := strings.Fields(number.Words(text))
	if len(words) == 0 {
		return nil
	}
	var ms []utterance.Meaning
	add := func(m utterance.Meaning) { ms = append(ms, m) }
	if h := p.hazards.find(words); h != nil {
		add(utterance.Meaning{Kind: utterance.Emergency, ID: h.class, Text: h.words, Doubt: h.doubt})
	}
	asked := p.asks(e)
	whole := p.choices(words, &asked)
	if id, ok := p.commands[strings.Join(words, " ")]; ok {
		add(utterance.Meaning{Kind: utterance.Command, ID: id, Text: text})
	} else if id, ok := p.commands[strings.Join(trim(words), " ")]; ok {
		add(utterance.Meaning{Kind: utterance.Command, ID: id, Text: text})
	}
	for i, id := range whole {
		add(utterance.Meaning{Kind: utterance.Choice, ID: id, Text: text, Cost: costLater * float64(i)})
	}
	for _, m := range p.number.Parse(text, e.Units) {
		add(m)
	}
	if len(whole) == 0 {
		for _, m := range p.parts(words, &asked) {
			add(m)
		}
	}
	if t, ok := letters(words); ok {
		m := utterance.Meaning{Kind: utterance.Text, Text: t, Cost: costLetters}
		if e.Text {
			m.Cost = 0
		}
		add(m)
	} else if e.Text {
		add(utterance.Meaning{Kind: utterance.Text, Text: text, Cost: costInside})
	}
	return order(ms, asked.ids)
}

// order puts an expected answer first, then sorts by cost; a certain emergency stays in front of everything.
func order(ms []utterance.Meaning, asked map[string]bool) []utterance.Meaning {
	expected := func(m utterance.Meaning) bool {
		return m.Kind == utterance.Choice && asked[m.ID] && m.Cost < costInside
	}
	rank := func(m utterance.Meaning) int {
		switch {
		case m.Kind == utterance.Emergency && !m.Doubt:
			return 0
		case expected(m):
			return 1
		case m.Kind == utterance.Emergency:
			return 2
		}
		return 3
	}
	sort.SliceStable(ms, func(i, j int) bool {
		if a, b := rank(ms[i]), rank(ms[j]); a != b {
			return a < b
		}
		return ms[i].Cost < ms[j].Cost
	})
	least := 0.0
	for i := range ms {
		if i == 0 {
			least = ms[0].Cost
		}
		ms[i].Cost = max(0, ms[i].Cost-least)
	}
	return ms
}

var (
	before = set([]string{"it's", "it", "is", "the", "they're", "they", "are", "uh", "um", "er", "well", "okay", "ok", "so", "now", "that's", "just", "still", "all", "yes", "yeah", "i", "think", "see", "hear", "there's", "a", "an", "and", "looks", "seems", "both"})
	after  = set([]string{"now", "again", "here", "there", "please", "it", "is", "uh", "um", "too", "thanks", "okay", "yes", "still"})
)

// trim takes fillers off both ends and leaves at least one word.
func trim(words []string) []string {
	for len(words) > 1 && before[words[0]] {
		words = words[1:]
	}
	for len(words) > 1 && after[words[len(words)-1]] {
		words = words[:len(words)-1]
	}
	return words
}

// choices returns the options a whole saying names, asked ones first. Fillers come off its ends, as few as possible.
func (p *Parser) choices(words []string, a *asked) []string {
	front, back := 0, 0
	for front < len(words)-1 && before[words[front]] {
		front++
	}
	for back < len(words)-1-front && after[words[len(words)-1-back]] {
		back++
	}
	for off := 0; off <= front+back; off++ {
		for f := 0; f <= min(off, front); f++ {
			if off-f > back {
				continue
			}
			if ids := p.optionsOf(strings.Join(words[f:len(words)-off+f], " "), a); ids != nil {
				return ids
			}
		}
	}
	return nil
}

// parts finds answers inside a longer saying: "red, three blinks", "there's a split, half an inch", "the fan is running".
// A negator shortly before an answer hides it.
func (p *Parser) parts(words []string, a *asked) []utterance.Meaning {
	var ms []utterance.Meaning
	other := 0
	for i := 0; i < len(words); {
		n, first := p.optionAt(words, i, a)
		if n == 0 {
			if c, k := p.countAt(words, i); k > 0 {
				if next := i + k; next < len(words) && counted[words[next]] { // "three blinks"
					ms = append(ms, utterance.Meaning{Kind: utterance.Count, Text: c})
				} else {
					other += k
				}
				i += k
				continue
			}
			if !before[words[i]] && !after[words[i]] && !counted[words[i]] {
				other++
			}
			i++
			continue
		}
		if !p.negatedBefore(words, i) {
			for _, id := range first {
				ms = append(ms, utterance.Meaning{Kind: utterance.Choice, ID: id, Text: strings.Join(words[i:i+n], " ")})
			}
		}
		i += n
	}
	if other > 0 && (other > 4 || len(ms) == 0) {
		return nil
	}
	for i := range ms {
		ms[i].Cost = costLater * float64(i)
		if other > 0 {
			ms[i].Cost += costInside + costUnknown*float64(other)
		}
	}
	return ms
}

func filter(ids []string, asked map[string]bool, want bool) []string {
	var out []string
	for _, id := range ids {
		if asked[id] == want {
			out = append(out, id)
		}
	}
	return out
}

func (p *Parser) optionAt(words []string, i int, a *asked) (int, []string) {
	for n := min(a.longest, len(words)-i); n > 0; n-- {
		if ids := p.optionsOf(strings.Join(words[i:i+n], " "), a); ids != nil {
			return n, ids
		}
	}
	return 0, nil
}

var counted = set([]string{"blinks", "blink", "flashes", "flash", "times", "time", "code", "long", "short"})

// countAt reads a number of blinks, tries or times, "three blinks".
func (p *Parser) countAt(words []string, i int) (string, int) {
	for n := min(3, len(words)-i); n > 0; n-- {
		for _, m := range p.number.Parse(strings.Join(words[i:i+n], " "), nil) {
			if m.Kind == utterance.Count && m.Cost == 0 {
				return m.Text, n
			}
		}
	}
	return "", 0
}

func (p *Parser) negatedBefore(words []string, i int) bool {
	for k := i - 1; k >= 0 && k >= i-2; k-- {
		if p.hazards.negator[words[k]] {
			_, isOption := p.options[words[k]]
			if !isOption || words[k] == "no" {
				return true
			}
		}
	}
	return false
}

var digitOf = map[string]string{"zero": "0", "oh": "0", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "dash": "-", "slash": "/"}

// letters reads a part number: at least three letters and digits said or typed one by one, not digits alone.
func letters(words []string) (string, bool) {
	var b strings.Builder
	alpha := false
	for _, w := range words {
		switch d, ok := digitOf[w]; {
		case ok:
			b.WriteString(d)
		case len(w) == 1 && w[0] >= 'a' && w[0] <= 'z':
			b.WriteString(strings.ToUpper(w))
			alpha = true
		case w != "" && strings.Trim(w, "0123456789") == "":
			b.WriteString(w)
		default:
			return "", false
		}
	}
	return b.String(), alpha && b.Len() >= 3
}
