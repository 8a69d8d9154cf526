package listen

import (
	"fmt"
	"slices"
	"strings"

	"readback/core/heard"
	"readback/speech"
	"readback/speech/phrase"
)

// narrowCost marks an answer that was heard only among the answers asked for, nats: whoever takes it knows that it is doubtful.
const narrowCost = 1

// narrow is a recogniser that knows only the answers to one question, the commands and the emergencies. One short word among
// three thousand phrases is easily lost in noise; among thirty it is not.
type narrow struct {
	key string
	rec speech.Recognizer
}

// answered tells whether an utterance leads with what was asked for, or is a reading or a clear emergency. A command may have been an
// answer, misheard.
func answered(u *heard.Utterance, x phrase.Expect) bool {
	if len(u.Meanings) == 0 {
		return false
	}
	m := &u.Meanings[0]
	return m.Kind == heard.Emergency && !m.Doubt || m.Kind == heard.Choice && slices.Contains(x.Options, m.ID) ||
		m.Kind == heard.Reading && (m.Reading.Value.Unit != "" || m.Units != nil)
}

// listenAgain hears a saying that answers nothing once more among the answers to the question, and puts the one it finds behind
// what was heard at first.
func (e *Ear) listenAgain(u *heard.Utterance) error {
	if e.cfg.Narrow == nil || len(e.expect.Options) == 0 || e.own.on || answered(u, e.expect) {
		return nil
	}
	if key := strings.Join(e.expect.Options, " "); e.narrow.rec == nil || e.narrow.key != key {
		if e.narrow.rec != nil {
			_ = e.narrow.rec.Close() // it is empty
		}
		rec, err := e.cfg.Narrow(e.expect)
		if err != nil {
			e.narrow.rec = nil
			return fmt.Errorf("listen: opening the narrow recogniser: %w", err)
		}
		e.narrow = narrow{key, rec}
	}
	b := make([]int16, len(e.pcm))
	amplify(b, e.pcm, e.gain)
	if _, err := e.narrow.rec.Accept(b); err != nil {
		return fmt.Errorf("listen: the narrow recogniser: %w", err)
	}
	res, err := e.narrow.rec.Final()
	if err != nil {
		return fmt.Errorf("listen: the narrow recogniser: %w", err)
	}
	v := e.cfg.Parser.Hear(res.Alternatives, e.expect)
	if strings.Contains(v.Text, phrase.Unknown) {
		return nil
	}
	for _, m := range v.Meanings {
		if m.Kind == heard.Choice && slices.Contains(e.expect.Options, m.ID) && !slices.ContainsFunc(u.Meanings, func(x heard.Meaning) bool { return x.ID == m.ID && x.Cost <= m.Cost+narrowCost }) {
			m.Cost += narrowCost
			u.Meanings = slices.DeleteFunc(u.Meanings, func(x heard.Meaning) bool { return x.Kind == m.Kind && x.ID == m.ID })
			at := slices.IndexFunc(u.Meanings, func(x heard.Meaning) bool { return x.Cost > m.Cost && x.Kind != heard.Emergency })
			if at < 0 {
				at = len(u.Meanings)
			}
			u.Meanings = slices.Insert(u.Meanings, at, m)
			u.Rivals = append([]string{v.Text}, u.Rivals...)
			u.Fault = ""
			return nil
		}
	}
	return nil
}
