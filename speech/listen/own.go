package listen

import (
	"strings"

	"readback/core/utterance"
)

// voice is what is known of our own voice: while it speaks, and shortly after, its words do not count.
type voice struct {
	words map[string]bool
	tail  map[string]bool // the last echoWords of them
	on    bool
	until int // index of the sample when it ended
	ever  bool
}

// Speaking tells that the own voice begins to say these words; "" when it ended.
func (e *Ear) Speaking(text string) {
	if text == "" {
		if e.own.on {
			e.own.on, e.own.until = false, e.count
		}
		return
	}
	words, tail := map[string]bool{}, map[string]bool{}
	all := strings.Fields(strings.ToLower(text))
	for i, w := range all {
		w = strings.Trim(w, ".,;:?!\"")
		words[w] = true
		if i >= len(all)-echoWords {
			tail[w] = true
		}
	}
	e.own = voice{words: words, tail: tail, on: true, ever: true}
}

// echoWords is how many of the last words of the own voice can still come back once it has ended: judgement, no source.
const echoWords = 2

// echo tells whether words may be our own voice coming back.
func (e *Ear) echo(text string) bool {
	own := e.ownWords()
	if own == nil {
		return false
	}
	for w := range strings.FieldsSeq(text) {
		if !own[w] {
			return false
		}
	}
	return true
}

// ownWords is what of our own voice the saying in progress can hold: all its words when it began under them, the last ones when it began
// shortly after, so that "none" answers "none or some?" at once; nil when it began later.
func (e *Ear) ownWords() map[string]bool {
	switch start := e.first + lead; {
	case !e.own.ever || !e.own.on && start > e.own.until+echoTail:
		return nil
	case !e.own.on && start > e.own.until:
		return e.own.tail
	}
	return e.own.words
}

// keep tells whether an utterance is somebody else's. While our own voice speaks only an emergency and "quiet" count, and none made of
// its words; a saying that goes on after it counts when it shares no word with it.
func (e *Ear) keep(u *utterance.Utterance) bool {
	start, own := e.first+lead, e.ownWords()
	if own == nil {
		return true
	}
	if e.echo(u.Text) {
		return false
	}
	if m := u.Best(); m != nil && (m.Kind == utterance.Emergency || m.Kind == utterance.Command && m.ID == "quiet") {
		return !e.echo(m.Text)
	}
	if e.own.on || e.count-e.quiet-e.own.until < e.own.until-start {
		return false
	}
	for w := range strings.FieldsSeq(u.Text) {
		if own[w] {
			return false
		}
	}
	return true
}
