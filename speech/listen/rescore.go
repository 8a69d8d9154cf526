package listen

import (
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/utterance"
	"readback/speech"
	"readback/speech/grammar"
)

// Chosen on the tuning half of the bench.
const (
	rescoreWeight = 1.3 // of the rescorer's opinion among the passes
	clearQuiet    = 2.5 // nats between the best reading and the next one that need no second opinion, in a quiet room and one hearing
	clearNoise    = 8.0 // and in noise, all passes together
	alarmLog      = -16 // least logarithm of the probability of an alarm that the recogniser did not find: of 38 missed in noise and quiet it found 21, of 312 sayings of talk three, none of them in a quiet room; of 240 short ones ("over there") 30, 27 of them in noise
	wordLog       = -10 // and of one of a single word, in a quiet room: of 120 short sayings of talk none reaches it
)

// Letters a second of the words between which an alarm may be what was said. Chosen on the tuning half of the bench.
const slowest, fastest = 8, 25

// rescored asks the rescorer which of the readings found was said, unless one stands alone. It gives the passes with the
// judge's opinion as the last one.
func (e *Ear) rescored(u *utterance.Utterance, passes []grammar.Pass) []grammar.Pass {
	enough, quiet := clearNoise, e.snr >= clean && len(passes) == 1
	if quiet {
		enough = clearQuiet
	}
	m := u.Best()
	alone := m != nil && m.Kind == utterance.Reading && (u.Margin >= enough || u.Margin == 0 && quiet) && e.says(u.Text, m) && !teen(m)
	if e.cfg.Rescorer == nil || len(e.expect.Units) == 0 || alone {
		return passes
	}
	if r, ok := e.cfg.Rescorer.(interface{ Resting() bool }); ok && r.Resting() {
		return passes
	}
	wide := e.cfg.Parser.Widen(passes, e.expect)
	all := e.cfg.Parser.HearAll(wide, e.expect)
	cs := grammar.Candidates(&all)
	if cs == nil {
		return passes
	}
	var texts []string
	for _, c := range cs {
		texts = append(texts, c.Written...)
	}
	logs, err := e.cfg.Rescorer.Score(e.pcm, texts)
	if err != nil { // hearing goes on without
		return passes
	}
	opinion := grammar.Opinion(cs, logs, rescoreWeight)
	if len(opinion.Alternatives) == 0 || !e.cfg.Parser.Reading(opinion.Alternatives[0].Text, e.expect) {
		return passes // the words are likelier as they were heard
	}
	wide = append(wide, opinion)
	*u = e.cfg.Parser.HearAll(wide, e.expect)
	return wide
}

// teen tells whether a reading has a teen or a ty that takes its place ("fifteen", "fifty"): those are weighed against each other always.
func teen(m *utterance.Meaning) bool {
	if m.Reading.State != measure.Number {
		return false
	}
	return slices.ContainsFunc(utterance.Confusions(m.Reading.Value), func(c utterance.Confusion) bool { return c.Why == "teen" })
}

// teenNear is the distance in nats within which a teen behind a ty, or the other way round, is asked about. Of 24 such words by three voices of a synthesiser
// those heard wrong lay within 3 nats, and one of twelve heard right did.
const teenNear = 3.2

// teenRival tells whether the best reading has its own teen or ty close behind.
func teenRival(ms []utterance.Meaning) bool {
	if len(ms) == 0 || ms[0].Kind != utterance.Reading || !teen(&ms[0]) {
		return false
	}
	other := utterance.Confusions(ms[0].Reading.Value)
	return slices.ContainsFunc(ms[1:], func(m utterance.Meaning) bool {
		return m.Kind == utterance.Reading && m.Cost-ms[0].Cost < teenNear &&
			slices.ContainsFunc(other, func(c utterance.Confusion) bool { return c.Why == "teen" && c.Value.Dec.Equal(m.Reading.Value.Dec) })
	})
}

// rescoredAlarm finds the alarm that the rescorer hears, or one that is likely in itself, where the recogniser found none: in noise, or in a way of
// speaking that it does not know. It is asked about first. Nil: there is none.
func (e *Ear) rescoredAlarm() *utterance.Meaning {
	if e.cfg.Rescorer == nil {
		return nil
	}
	if words, err := e.cfg.Rescorer.Words(e.pcm); err == nil {
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
	logs, err := e.cfg.Rescorer.Score(e.pcm, texts)
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
