package listen

import (
	"fmt"
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/utterance"
	"readback/speech"
	"readback/speech/grammar"
)

// narrowCost marks an answer that was heard only among the answers asked for, nats: whoever takes it knows that it is doubtful.
const narrowCost = 1

// narrow is a recogniser that knows only what answers one question, the commands and the emergencies. One short word among
// three thousand phrases is easily lost in noise, and a digit becomes a word that answers another question; among few it does not.
type narrow struct {
	key string
	rec speech.Recognizer
}

// only returns the narrow recogniser for the question asked. Without one, or without a question, it is the wide one.
func (e *Ear) only() (speech.Recognizer, error) {
	if e.cfg.Narrow == nil || len(e.expect.Options)+len(e.expect.Units) == 0 {
		return e.rec, nil
	}
	key := e.expect.Key()
	if e.narrow.rec != nil && e.narrow.key == key {
		return e.narrow.rec, nil
	}
	if e.narrow.rec != nil {
		_ = e.narrow.rec.Close() // it is empty
		e.narrow.rec = nil
	}
	rec, err := e.cfg.Narrow(e.expect)
	if err != nil {
		return nil, fmt.Errorf("listen: opening the narrow recogniser: %w", err)
	}
	e.narrow = narrow{key, rec}
	return rec, nil
}

// Silence in samples after which a short saying during the own voice is heard at once, and the longest such saying: judgement, no source.
const (
	cutIn      = 6 * frame
	cutInMost  = 12 * speech.Rate / 10
	alarmMost  = 3 * speech.Rate // the longest saying that is heard among the alarmGrammar
	alarmWords = 3               // words of the longest saying in which a word of alarm alone counts
)

// cutsIn hears a short saying during the own voice as soon as it ends, whole: a partial result lags some 0.3 s behind, and somebody
// who says "stop" wants silence now. It knows the commands and the emergencies only, and tells "quiet" and certain emergencies.
func (e *Ear) cutsIn() error {
	if e.cfg.Narrow == nil || !e.own.on || e.cut || e.quiet < cutIn || len(e.pcm)-e.quiet > lead+cutInMost {
		return nil
	}
	e.cut = true
	text, m, err := e.alarmPass()
	if err != nil {
		return err
	}
	if m == nil || m.Doubt || e.echo(m.Text) || e.told[told(m)] || m.Kind == utterance.Emergency && e.noisy() {
		return nil
	}
	if m.Kind == utterance.Emergency {
		if survives, err := e.survivesBackground(); err != nil || !survives {
			return err
		}
	}
	e.told[told(m)] = true
	e.emit(utterance.Utterance{Text: text, Meanings: []utterance.Meaning{*m}, Partial: true, Level: e.level})
	return nil
}

// alarmPass hears the saying among the commands and the emergencies only. It gives the words, and the urgent meaning in them or nil.
func (e *Ear) alarmPass() (text string, m *utterance.Meaning, err error) {
	if e.alarmGrammar == nil {
		if e.alarmGrammar, err = e.cfg.Narrow(grammar.Expect{}); err != nil {
			return "", nil, fmt.Errorf("listen: opening the recogniser of commands: %w", err)
		}
	}
	for _, pcm := range e.both() {
		res, err := e.whole(e.alarmGrammar, pcm)
		if err != nil {
			return "", nil, fmt.Errorf("listen: the recogniser of commands: %w", err)
		}
		for i, a := range res.Alternatives {
			if i == 0 {
				text = a.Text
			} else if !e.noisy() || e.snr > alarmLoud || a.Cost > alarmNear {
				break
			}
			if m := e.cfg.Parser.Urgent(a.Text); m != nil {
				return a.Text, m, nil
			}
		}
	}
	return text, nil, nil
}

// In noise less than alarmLoud below the speech, dB, an alarm that lies up to alarmNear behind the best words, nats, is asked about too. Both chosen on the
// tuning half of the bench: at 5 dB it finds half of what else is missed, and asks twice as often about talk.
const (
	alarmLoud = 12.0
	alarmNear = 3.0
)

// both is the saying so far as it was recorded, and in noise with less of it.
func (e *Ear) both() [][]int16 {
	if !e.noisy() {
		return [][]int16{e.pcm}
	}
	return [][]int16{e.pcm, e.less()}
}

// cry hears a short saying that answers nothing once more among the commands and the emergencies: one word of alarm is easily lost among
// three thousand phrases. What it finds is asked about first.
func (e *Ear) secondAlarm(u *utterance.Utterance) error {
	if e.cfg.Narrow == nil || answered(u, e.expect) || len(e.pcm)-e.quiet > lead+alarmMost {
		return nil
	}
	if m := u.Best(); m != nil && (m.Kind == utterance.Emergency || m.Kind == utterance.Command && m.Cost == 0 || e.state(u, m)) {
		return nil
	}
	text, m, err := e.alarmIn(u)
	if m == nil || err != nil {
		return err
	}
	m.Doubt = true
	u.Meanings = append(u.Meanings, *m)
	u.Rivals = append(u.Rivals, text)
	return nil
}

// state tells whether a meaning is what a meter shows instead of a number, where a meter is asked for: in a quiet room, and in noise where it was heard surely.
func (e *Ear) state(u *utterance.Utterance, m *utterance.Meaning) bool {
	return m.Kind == utterance.Reading && m.Reading.State != measure.Number && len(e.expect.Units) > 0 && (!e.noisy() || u.Sure >= surely)
}

// alarmIn looks for an alarm in a saying in every way there is, and gives the words among the alarmGrammar and the first one found, or nil.
func (e *Ear) alarmIn(u *utterance.Utterance) (text string, m *utterance.Meaning, err error) {
	if text, m, err = e.alarmPass(); err != nil {
		return text, nil, err
	}
	if few := len(strings.Fields(text)) <= alarmWords; few || !strings.Contains(text, grammar.Unknown) {
		for _, t := range []string{text, u.Text} {
			if m == nil && len(strings.Fields(t)) <= alarmWords {
				m = e.cfg.Parser.Alarm(t)
			}
		}
		if m != nil && m.Kind == utterance.Emergency {
			return text, m, nil
		}
	}
	if e.cfg.Background != nil {
		if m, err = e.backgroundPass(); m != nil || err != nil {
			return text, m, err
		}
	}
	if m = e.rescoredAlarm(); m != nil {
		return text, m, nil
	}
	if e.lost != nil && !lesser(e.lost.Text, u.Text) {
		return text, e.lost, nil
	}
	return text, nil, nil
}

// backgroundText is the utterance among the emergencies and the common words of the language.
func (e *Ear) backgroundText() (string, error) {
	if e.background == nil {
		rec, err := e.cfg.Background()
		if err != nil {
			return "", fmt.Errorf("listen: opening the recogniser of common words: %w", err)
		}
		e.background = rec
	}
	res, err := e.whole(e.background, e.pcm)
	if err != nil {
		return "", fmt.Errorf("listen: the recogniser of common words: %w", err)
	}
	if len(res.Alternatives) == 0 {
		return "", nil
	}
	return res.Alternatives[0].Text, nil
}

// backgroundPass gives the urgent meaning of what is heard among the common words, or nil.
func (e *Ear) backgroundPass() (*utterance.Meaning, error) {
	text, err := e.backgroundText()
	if err != nil {
		return nil, err
	}
	m := e.cfg.Parser.Urgent(text)
	if m == nil || m.Kind != utterance.Emergency {
		return nil, nil
	}
	m.Doubt = m.Doubt || lesser(m.Text, text)
	return m, nil
}

// survivesBackground tells whether the saying so far is an alarm among common words too. The large grammar knows nothing but this work: talk about the
// weather must become something in it, and some of that is an alarm ("got shocked" of "shut the windows"). Among 4,000 common words it is not,
// and what is one stays.
func (e *Ear) survivesBackground() (bool, error) {
	if e.cfg.Background == nil {
		return true, nil
	}
	m, err := e.backgroundPass()
	return m != nil && !m.Doubt, err
}

// weigh makes an alarm that does not stand among common words one that is asked about.
func (e *Ear) weigh(u *utterance.Utterance) error {
	if !slices.ContainsFunc(u.Meanings, func(m utterance.Meaning) bool { return m.Kind == utterance.Emergency && !m.Doubt }) {
		return nil
	}
	survives, err := e.survivesBackground()
	if survives || err != nil {
		return err
	}
	for i := range u.Meanings {
		u.Meanings[i].Doubt = u.Meanings[i].Doubt || u.Meanings[i].Kind == utterance.Emergency
	}
	return nil
}

func told(m *utterance.Meaning) string { return string(m.Kind) + m.ID }

// whole gives a recogniser a finished saying.
func (e *Ear) whole(rec speech.Recognizer, pcm []int16) (speech.Result, error) {
	b := make([]int16, len(pcm))
	amplify(b, pcm, e.gain)
	if _, err := rec.Accept(b); err != nil {
		return speech.Result{}, err
	}
	return rec.Final()
}

// answered tells whether an utterance leads with what was asked for, or is a reading or a clear emergency. A command may have been an
// answer, misheard.
func answered(u *utterance.Utterance, x grammar.Expect) bool {
	if len(u.Meanings) == 0 {
		return false
	}
	m := &u.Meanings[0]
	return m.Kind == utterance.Emergency && !m.Doubt || m.Kind == utterance.Choice && slices.Contains(x.Options, m.ID) ||
		m.Kind == utterance.Reading && (m.Reading.Value.Unit != "" || m.Units != nil)
}

// listenAgain hears a saying that answers nothing once more among the answers to the question, and puts the one it finds behind
// what was heard at first.
func (e *Ear) listenAgain(u *utterance.Utterance) error {
	if e.cfg.Narrow == nil || len(e.expect.Options) == 0 || e.own.on || answered(u, e.expect) || u.Best() != nil && u.Best().Kind == utterance.Command && len(e.expect.Units) > 0 {
		return nil
	}
	rec, err := e.only()
	if err != nil {
		return err
	}
	res, err := e.whole(rec, e.pcm)
	if err != nil {
		return fmt.Errorf("listen: the narrow recogniser: %w", err)
	}
	v := e.cfg.Parser.Hear(res.Alternatives, e.expect)
	if strings.Contains(v.Text, grammar.Unknown) {
		return nil
	}
	for _, m := range v.Meanings {
		if m.Kind == utterance.Choice && slices.Contains(e.expect.Options, m.ID) && !slices.ContainsFunc(u.Meanings, func(x utterance.Meaning) bool { return x.ID == m.ID && x.Cost <= m.Cost+narrowCost }) {
			m.Cost += narrowCost
			u.Meanings = slices.DeleteFunc(u.Meanings, func(x utterance.Meaning) bool { return x.Kind == m.Kind && x.ID == m.ID })
			at := slices.IndexFunc(u.Meanings, func(x utterance.Meaning) bool { return x.Cost > m.Cost && x.Kind != utterance.Emergency })
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
