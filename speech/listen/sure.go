package listen

import (
	"math"

	"readback/core/utterance"
)

// Weights of the probability that the best reading of a saying is what was said: of a constant, the margin in nats (at most
// marginMost), the ratio of speech to noise in tens of dB (0 to 30 dB), and the share of passes that agree. A logistic regression on the
// tuning half of the bench; "make fit" prints it anew (415 sayings, 22 of them heard wrong).
var sureWeights = [4]float64{-1.257, 0.522, 1.262, 0.596}

// marginMost is where a larger margin makes nothing surer, nats.
const marginMost = 8.0

// Features are what the sureness of a reading is rescored by.
func Features(u *utterance.Utterance) [4]float64 {
	margin := u.Margin
	if margin == 0 { // nothing else was heard
		margin = marginMost
	}
	return [4]float64{1, math.Min(margin, marginMost), math.Max(0, math.Min(30, u.SNR)) / 10, u.Agree}
}

// sure is the probability that the best reading is right.
func sure(u *utterance.Utterance) float64 {
	sum := 0.0
	for i, x := range Features(u) {
		sum += sureWeights[i] * x
	}
	return 1 / (1 + math.Exp(-sum))
}

// Unsaid is how sure a reading is at most that the best words do not say, when there was one hearing only: too little to be taken. Judgement, no source.
const Unsaid = 0.4

// nearRival is the distance to another reading in nats below which a saying is heard again in a quiet room too. One right reading in
// twenty of the bench's tuning half lies below; at 2.5 it was three in ten, which took as much computing as all the first passes.
const nearRival = 1.0

// doubtful tells whether the one hearing of a reading has a rival close behind, or best words that say something else.
func (e *Ear) doubtful(u *utterance.Utterance) bool {
	m := u.Best()
	return m != nil && m.Kind == utterance.Reading && (u.Margin > 0 && u.Margin < nearRival || !e.says(u.Text, m))
}

// says tells whether words mean this reading before any other.
func (e *Ear) says(text string, m *utterance.Meaning) bool {
	for _, x := range e.cfg.Parser.Parse(text, e.expect) {
		if x.Kind == utterance.Reading {
			return x.Reading.State == m.Reading.State && x.Reading.Value.Unit == m.Reading.Value.Unit && x.Reading.Value.Dec.Equal(m.Reading.Value.Dec)
		}
	}
	return false
}
