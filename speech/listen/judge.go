package listen

import (
	"slices"
	"strings"

	"readback/core/utterance"
	"readback/speech"
	"readback/speech/grammar"
)

// Chosen on the tuning half of the bench.
const (
	judgeWeight = 1.3 // of the judge's opinion among the hearings
	clearQuiet  = 2.5 // nats between the best reading and the next one that need no second opinion, in a quiet room and one hearing
	clearNoise  = 8.0 // and in noise, all hearings together
	alarmLog    = -16 // least logarithm of the probability of an alarm that the recogniser did not find: of 38 missed in noise and quiet it found 21, of 312 sayings of talk three, none of them in a quiet room; of 240 short ones ("over there") 30, 27 of them in noise
	wordLog     = -10 // and of one of a single word, in a quiet room: of 120 short sayings of talk none reaches it
)

// Letters a second of the words between which an alarm may be what was said. Chosen on the tuning half of the bench.
const slowest, fastest = 8, 25

// judged asks the judge which of the readings found was said, unless one stands alone. It gives the hearings with the
// judge's opinion as the last one.
func (e *Ear) judged(u *utterance.Utterance, hearings []grammar.Witness) []grammar.Witness {
	enough, quiet := clearNoise, e.snr >= clean && len(hearings) == 1
	if quiet {
		enough = clearQuiet
	}
	m := u.Best()
	alone := m != nil && m.Kind == utterance.Reading && (u.Margin >= enough || u.Margin == 0 && quiet) && e.says(u.Text, m)
	if e.cfg.Judge == nil || len(e.expect.Units) == 0 || alone {
		return hearings
	}
	if j, ok := e.cfg.Judge.(interface{ Resting() bool }); ok && j.Resting() {
		return hearings
	}
	wide := e.cfg.Parser.Widen(hearings)
	all := e.cfg.Parser.HearAll(wide, e.expect)
	cs := grammar.Candidates(&all)
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
	opinion := grammar.Opinion(cs, logs, judgeWeight)
	if len(opinion.Alternatives) == 0 || !e.cfg.Parser.Reading(opinion.Alternatives[0].Text, e.expect) {
		return hearings // the words are likelier as they were heard
	}
	wide = append(wide, opinion)
	*u = e.cfg.Parser.HearAll(wide, e.expect)
	return wide
}

// alarmJudged finds the alarm that the judge hears, or one that is likely in itself, where the recogniser found none: in noise, or in a way of
// speaking that it does not know. It is asked about first. Nil: there is none.
func (e *Ear) alarmJudged() *utterance.Meaning {
	if e.cfg.Judge == nil {
		return nil
	}
	if words, err := e.cfg.Judge.Words(e.pcm); err == nil {
		if m := e.cfg.Parser.Urgent(words); m != nil && m.Kind == utterance.Emergency {
			return m
		}
	}
	spoken := len(e.pcm) - e.quiet - lead
	var alarms, texts []string
	var least []float64
	for _, a := range e.cfg.Parser.Alarms() {
		enough := float64(alarmLog)
		if !strings.Contains(a, " ") {
			if e.noisy() {
				continue
			}
			enough = wordLog
		}
		if n := letters(a) * speech.Rate; n > slowest*spoken && n < fastest*spoken {
			alarms, texts, least = append(alarms, a), append(texts, grammar.Sentence(a)), append(least, enough)
		}
	}
	logs, err := e.cfg.Judge.Score(e.pcm, texts)
	if err != nil || len(logs) == 0 {
		return nil // hearing goes on without
	}
	for i := range logs {
		logs[i] -= least[i]
	}
	if best := slices.Max(logs); best >= 0 {
		return e.cfg.Parser.Urgent(alarms[slices.Index(logs, best)])
	}
	return nil
}
