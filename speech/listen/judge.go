package listen

import (
	"readback/core/heard"
	"readback/speech/phrase"
)

// Chosen on the tuning half of the bench.
const (
	judgeWeight = 1.3 // of the judge's opinion among the hearings
	clearQuiet  = 2.5 // nats between the best reading and the next one that need no second opinion, in a quiet room and one hearing
	clearNoise  = 8.0 // and in noise, all hearings together
)

// judged asks the judge which of the readings found was said, unless one stands alone. It gives the hearings with the
// judge's opinion as the last one.
func (e *Ear) judged(u *heard.Utterance, hearings []phrase.Witness) []phrase.Witness {
	enough, quiet := clearNoise, e.snr >= clean && len(hearings) == 1
	if quiet {
		enough = clearQuiet
	}
	m := u.Best()
	alone := m != nil && m.Kind == heard.Reading && (u.Margin >= enough || u.Margin == 0 && quiet) && e.says(u.Text, m)
	if e.cfg.Judge == nil || len(e.expect.Units) == 0 || alone {
		return hearings
	}
	wide := e.cfg.Parser.Widen(hearings)
	all := e.cfg.Parser.HearAll(wide, e.expect)
	cs := phrase.Candidates(&all)
	if cs == nil {
		return hearings
	}
	var texts []string
	for _, c := range cs {
		texts = append(texts, c.Written...)
	}
	logs, err := e.cfg.Judge.Score(e.pcm, texts)
	if err != nil { // hearing goes on without
		return hearings
	}
	opinion := phrase.Opinion(cs, logs, judgeWeight)
	if len(opinion.Alternatives) == 0 || !e.cfg.Parser.Reading(opinion.Alternatives[0].Text, e.expect) {
		return hearings // the words are likelier as they were heard
	}
	wide = append(wide, opinion)
	*u = e.cfg.Parser.HearAll(wide, e.expect)
	return wide
}
