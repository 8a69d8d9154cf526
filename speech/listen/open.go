package listen

import (
	"math"
	"slices"
	"strings"

	"readback/core/utterance"
	"readback/speech"
	"readback/speech/grammar"
)

// The open listener hears free words beside the narrow grammar. It runs on utterances that are longer or other than what the grammar waits for, and on
// every alarm; a short answer that the grammar holds for sure does without.
const (
	surely    = 0.93            // sureness of a reading that needs no second listener
	loudRoom  = 8.0             // dB below which every reading is heard twice: where both agree nothing is asked
	shortTalk = 2 * speech.Rate // samples of an utterance that is no longer than an answer
	agreeing  = 0.99            // sureness of a reading that both listeners hear: of 200 of the handbook's clips one was wrong
	openOnly  = 0.86            // and of one that the open listener alone hears in a quiet room
	openNoise = 0.55            // and in noise
	differing = 0.60            // at most, of one where the other listener hears another number
	openCost  = 1.0             // nats by which what the other listener hears stands behind
	fewWords  = 3               // words from which an utterance that holds no danger speaks against an alarm
)

// wantsOpen tells whether free words may tell more than what the grammar heard.
func (e *Ear) wantsOpen(u *utterance.Utterance) bool {
	if e.cfg.Reader == nil || e.own.on {
		return false
	}
	m := u.Best()
	if m == nil || strings.Contains(u.Text, grammar.Unknown) || len(e.pcm)-e.quiet-lead > shortTalk {
		return true
	}
	switch m.Kind {
	case utterance.Reading:
		return u.Sure < surely || e.snr < loudRoom
	case utterance.Command, utterance.Choice:
		return m.Cost > 0 || e.noisy()
	}
	return true
}

// openWords is the utterance in free words: of the second engine, or of the first one without a grammar.
func (e *Ear) openWords() (string, error) {
	if e.cfg.Rescorer != nil {
		if words, err := e.cfg.Rescorer.Words(e.pcm); err == nil {
			return words, nil
		}
	}
	if e.cfg.Open == nil {
		return "", nil
	}
	if e.free == nil {
		rec, err := e.cfg.Open()
		if err != nil {
			return "", err
		}
		e.free = rec
	}
	res, err := e.whole(e.free, e.pcm)
	if err != nil || len(res.Alternatives) == 0 {
		return "", err
	}
	return res.Alternatives[0].Text, nil
}

// hollow tells whether words are too few for the sound they were heard in: a network writes "you" for any noise. Talkers say more than four letters a
// second (common practice, no source).
func (e *Ear) hollow(words string) bool {
	n := letters(words)
	return n == 0 || n*speech.Rate < 4*(len(e.pcm)-e.quiet-lead) && len(strings.Fields(words)) < 3 || hallucinated[words]
}

// hallucinated is what the second engine writes where nobody speaks.
var hallucinated = map[string]bool{"you": true, "thank you": true, "bye": true, "the": true, "so": true, "oh": true, "i'm": true, "a": true}

// open joins what the open listener hears to what the grammar heard. It tells whether there were no words at all.
func (e *Ear) open(u *utterance.Utterance) (wordless bool, err error) {
	known := strings.TrimSpace(strings.ReplaceAll(u.Text, grammar.Unknown, "")) != ""
	if !e.wantsOpen(u) { // without another listener what is no known word may have been one, in a quiet room
		return !known && e.noisy(), nil
	}
	if u.Text == "" { // the first engine held it for noise, and the second one writes sentences of noise
		return true, nil
	}
	if !known {
		if heard, err := e.wordsInBackground(); err != nil || !heard {
			return err == nil, err
		}
	}
	words, err := e.openWords()
	if err != nil {
		return false, err
	}
	e.openText = words
	if e.hollow(words) {
		m := u.Best()
		bare := m == nil || m.Kind != utterance.Reading && e.noisy() && m.Cost > 0 || m.Kind == utterance.Emergency && e.noisy()
		return !known || e.noisy() && (bare || u.Fault != ""), nil
	}
	v := e.cfg.Reader.Hear(words, e.expect)
	if !slices.Contains(u.Rivals, words) && words != u.Text {
		u.Rivals = append([]string{words}, u.Rivals...)
	}
	e.joinAlarm(u, &v)
	if err := e.thirdOpinion(u, &v); err != nil {
		return false, err
	}
	e.joinReading(u, &v)
	if u.Best() == nil || u.Fault != "" && len(u.Meanings) == 0 {
		u.Fault = v.Fault
	}
	return false, nil
}

// wordsInBackground tells whether the first engine hears any of the common words in the utterance. Without a recogniser of them it may have.
func (e *Ear) wordsInBackground() (bool, error) {
	if e.cfg.Background == nil {
		return true, nil
	}
	text, err := e.backgroundText()
	return strings.TrimSpace(strings.ReplaceAll(text, grammar.Unknown, "")) != "", err
}

func alarmOf(ms []utterance.Meaning) *utterance.Meaning {
	for i := range ms {
		if ms[i].Kind == utterance.Emergency {
			return &ms[i]
		}
	}
	return nil
}

// joinAlarm weighs an alarm of one listener against the other.
func (e *Ear) joinAlarm(u, v *utterance.Utterance) {
	a, b := alarmOf(u.Meanings), alarmOf(v.Meanings)
	clear := e.snr >= calm
	switch against := len(strings.Fields(v.Text)) >= fewWords; {
	case a != nil && b != nil:
		a.Doubt = a.Doubt && (b.Doubt || !clear)
	case a != nil && against && clear:
		u.Meanings = slices.DeleteFunc(u.Meanings, func(m utterance.Meaning) bool { return m.Kind == utterance.Emergency })
	case a != nil && against:
		a.Doubt = true
	case b != nil:
		m := *b
		m.Doubt = m.Doubt || !clear
		u.Meanings = append([]utterance.Meaning{m}, u.Meanings...)
		u.Fault = ""
	}
}

// thirdOpinion has what neither listener understood heard among the common words, and asks about a danger in that: the engines err in other places, and
// a cry in an unknown voice is easily lost in one of them.
func (e *Ear) thirdOpinion(u, v *utterance.Utterance) error {
	if e.cfg.Background == nil || len(u.Meanings) > 0 || len(v.Meanings) > 0 {
		return nil
	}
	text, err := e.backgroundText()
	if err != nil {
		return err
	}
	w := e.cfg.Reader.Hear(text, e.expect)
	if a := alarmOf(w.Meanings); a != nil {
		m := *a
		m.Doubt = true
		u.Meanings = append([]utterance.Meaning{m}, u.Meanings...)
		u.Fault = ""
		u.Rivals = append([]string{text}, u.Rivals...)
	}
	return nil
}

// joinReading joins readings, answers and commands.
func (e *Ear) joinReading(u, v *utterance.Utterance) {
	rest := slices.DeleteFunc(slices.Clone(v.Meanings), func(m utterance.Meaning) bool { return m.Kind == utterance.Emergency })
	if len(rest) == 0 {
		return
	}
	first := slices.IndexFunc(u.Meanings, func(m utterance.Meaning) bool { return m.Kind != utterance.Emergency })
	if first < 0 { // the grammar heard nothing
		for i := range rest {
			if rest[i].Kind == utterance.Reading {
				u.Sure = openNoise
				if e.snr >= calm {
					u.Sure = openOnly
				}
			}
			rest[i].Doubt = rest[i].Doubt || e.snr < calm
		}
		u.Meanings = append(u.Meanings, rest...)
		u.Fault = ""
		return
	}
	m, o := &u.Meanings[first], rest[0]
	switch {
	case m.Kind == utterance.Reading && o.Kind == utterance.Reading:
		same := m.Reading.State == o.Reading.State && m.Reading.Value.Dec.Equal(o.Reading.Value.Dec) && (m.Reading.Value.Unit == o.Reading.Value.Unit || o.Reading.Value.Unit == "" || m.Reading.Value.Unit == "")
		if same {
			u.Sure = math.Max(u.Sure, agreeing)
			return
		}
		u.Sure = math.Min(u.Sure, differing)
		loose := strings.Contains(u.Text, grammar.Unknown) || !e.says(u.Text, m)
		if loose && e.snr >= calm { // the grammar found a number among words that it does not know
			for i := range rest {
				rest[i].Doubt = true
			}
			for i := first; i < len(u.Meanings); i++ {
				u.Meanings[i].Cost += openCost
			}
			u.Meanings = slices.Insert(u.Meanings, first, rest...)
			return
		}
		for i := range rest {
			rest[i].Cost += m.Cost + openCost
		}
		u.Meanings = slices.Insert(u.Meanings, first+1, rest...)
	case m.Kind == utterance.Reading && v.Fault == "" && o.Kind == utterance.Command && len(strings.Fields(v.Text)) >= fewWords && e.snr >= calm,
		m.Kind != utterance.Reading && (m.Cost > 0 || strings.Contains(u.Text, grammar.Unknown) || len(strings.Fields(v.Text)) > len(strings.Fields(u.Text))+2) && e.snr >= calm:
		for i := first; i < len(u.Meanings); i++ {
			u.Meanings[i].Cost += openCost
		}
		u.Meanings = slices.Insert(u.Meanings, first, rest...)
	}
}

// openAgrees tells whether free words hold a danger too, before an alarm is acted on while somebody still speaks.
func (e *Ear) openAgrees() (bool, error) {
	if e.cfg.Reader == nil {
		return true, nil
	}
	words, err := e.openWords()
	if err != nil || e.hollow(words) {
		return err == nil && len(strings.Fields(words)) == 0, err
	}
	m := alarmOf(e.cfg.Reader.Hear(words, grammar.Expect{}).Meanings)
	return m != nil && !m.Doubt, nil
}
