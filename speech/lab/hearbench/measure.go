package hearbench

import (
	"fmt"
	"math"
	"strings"

	"readback/core/measure"
	"readback/core/utterance"
	"readback/speech/grammar"
)

const (
	speechLevel = -26.0 // dBFS, active
	before      = 0.8   // s of noise before the words
	after       = 2.2   // and after them: longer than any end-of-speech wait
	noiseLength = 16000 * 100
)

// Studio makes clips: a phrase, a voice, a condition, a seed.
type Studio struct {
	Voices []Voice
	noise  map[string][]float64
}

// NewStudio makes the noises; the same seed gives the same ones.
func NewStudio(voices []Voice, seed uint64) *Studio {
	return &Studio{voices, map[string][]float64{"pink": Noise("pink", seed, noiseLength), "fan": Noise("fan", seed, noiseLength)}}
}

// Clip returns the sound and the index where the voice ends (its own trailing silence left out).
func (s *Studio) Clip(v Voice, say string, c Condition, draw int) (pcm []int16, end int, err error) {
	words, err := v.Say(say)
	if err != nil {
		return nil, 0, err
	}
	pcm, end = s.Place(words, c, draw)
	return pcm, end, nil
}

// Place puts words into the noise of a condition and returns the sound and the index where the words end.
func (s *Studio) Place(words []int16, c Condition, draw int) (pcm []int16, end int) {
	words = trimSilence(words)
	var noise []float64
	if n := s.noise[c.Noise]; n != nil {
		at := (draw*7919 + 13) % (len(n) / 2)
		noise = n[at:]
	}
	return Clip(words, speechLevel, c.SNR, noise, before, after), int(before*16000) + len(words)
}

// trimSilence takes silence of more than 40 dB below the loudest frame off both ends.
func trimSilence(pcm []int16) []int16 {
	top := 0.0
	var p []float64
	for i := 0; i+160 <= len(pcm); i += 160 {
		s := 0.0
		for _, v := range pcm[i : i+160] {
			s += float64(v) * float64(v)
		}
		p = append(p, s)
		top = math.Max(top, s)
	}
	a, b := 0, len(p)
	for a < b && p[a] < top/10000 {
		a++
	}
	for b > a && p[b-1] < top/10000 {
		b--
	}
	return pcm[a*160 : b*160]
}

// Row is one clip with what came of it.
type Row struct {
	Voice string
	Cond  Condition
	Item  Item
	Heard Heard
	Last  *utterance.Utterance // the last final utterance that means something, or the last one, or nil
	Right bool
	Wrong bool // a reading, but another one
	Raw   bool // right without the noise reducer
}

// Expect is what the question asks for that this item answers: as in a job, the units of the quantity and nothing of its size.
func (it Item) Expect() grammar.Expect {
	switch {
	case it.State == measure.Over: // a meter shows it when it measures resistance
		return grammar.Expect{Units: family("ohm")}
	case it.Value.Unit != "":
		return grammar.Expect{Units: family(it.Value.Unit)}
	}
	return grammar.Expect{}
}

// Listen plays one item.
func (b *Bench) Listen(s *Studio, v Voice, it Item, c Condition, draw int) (Row, error) {
	r := Row{Voice: v.Name, Cond: c, Item: it}
	pcm, end, err := s.Clip(v, it.Say, c, draw)
	if err != nil {
		return r, err
	}
	if r.Heard, err = b.Hear(pcm, end, it.Expect()); err != nil {
		return r, err
	}
	for i := range r.Heard.Final {
		u := &r.Heard.Final[i]
		if r.Last == nil || len(u.Meanings) > 0 {
			r.Last = u
		}
	}
	if r.Last != nil {
		m := r.Last.Best()
		r.Right = it.Right(m)
		r.Wrong = !r.Right && m != nil && m.Kind == utterance.Reading
		r.Raw = r.Right // a quiet room is heard once only
		if r.Heard.Lists != nil {
			u := b.Parser.Hear(r.Heard.Lists[0].Alternatives, it.Expect())
			r.Raw = it.Right(u.Best())
		}
	}
	return r, nil
}

// String writes a row for the table and for looking at errors.
func (r Row) String() string {
	text, snr, margin := "", 0.0, 0.0
	var parts []string
	for _, u := range r.Heard.Final {
		parts = append(parts, u.Text)
	}
	if r.Last != nil {
		text, snr, margin = strings.Join(parts, " / "), r.Last.SNR, r.Last.Margin
	}
	res := "refused"
	switch {
	case r.Right:
		res = "right"
	case r.Wrong:
		res = "wrong"
	}
	return fmt.Sprintf("%s\t%s\t%s\t%s\t%v\t%.1f\t%.2f\t%.2f\t%s", r.Cond, r.Voice, r.Item.Say, res, r.Raw, snr, margin, r.Heard.Delay, text)
}

// family is the units a question about this unit allows.
func family(unit string) []string {
	for _, f := range [][]string{{"V"}, {"mV"}, {"A"}, {"uA", "mA"}, {"mA"}, {"ohm", "kohm", "Mohm"}, {"uF", "nF"}, {"degF"}, {"degC"}, {"inH2O"}} {
		for i, u := range f {
			if u == unit && (i == 0 || len(f) == 3 || len(f) == 2) {
				return f
			}
		}
	}
	return nil
}

// slot is a question that this item answers. Everything that differs by more than 2 % matters, which is stricter than any
// furnace; below a volt the circuit counts as dead.
func slot(it Item) utterance.Slot {
	size := func(r measure.Reading) float64 { return r.Value.Base() }
	return utterance.Slot{
		Units:    family(it.Value.Unit),
		Possible: func(measure.Reading) bool { return true },
		Matters: func(a, b measure.Reading) bool {
			return a.State != b.State || math.Abs(size(a)-size(b)) > 0.02*math.Max(math.Abs(size(a)), math.Abs(size(b)))
		},
		Clears: clears,
	}
}

func clears(r measure.Reading) bool {
	if r.State == measure.Dead {
		return true
	}
	u := r.Value.Unit
	return r.State == measure.Number && (u == "V" || u == "mV") && math.Abs(r.Value.Base()) < 1
}

// Decided is what the policy does first about a clip in the place of its item, and whether the reading it would take, or asks about, is the item's.
func Decided(h *Heard, it Item) (utterance.Action, bool) {
	var last *utterance.Utterance
	for i := range h.Final {
		if u := &h.Final[i]; last == nil || len(u.Meanings) > 0 {
			last = u
		}
	}
	if last == nil {
		return utterance.Again, false
	}
	s := slot(it)
	if it.State == measure.Over {
		s.Units = family("ohm")
	}
	d := utterance.Decide(last, s)
	if d.Take == nil {
		return d.Action, false
	}
	return d.Action, it.Right(&utterance.Meaning{Kind: utterance.Reading, Reading: d.Take})
}

// Outcome is what the whole policy made of one value.
type Outcome struct {
	Wrong  float64 // probability that a wrong value is acted on
	Hazard float64 // the same, and the wrong value clears a hazard
	Asked  int     // explicit questions
	Touch  bool    // it ended at the keypad
}

// Missed is the share of wrong read-backs that a person does not notice. An assumption, printed with the figure.
const Missed = 0.05

// Play runs the policy for one item: decisions, questions, sayings again in new noise. First is the row of the first saying.
func (b *Bench) Play(s *Studio, v Voice, first Row, draw int) (Outcome, error) {
	var o Outcome
	row := first
	sl := slot(first.Item)
	for try := 1; ; try++ {
		u := row.Last
		if u == nil { // nothing was heard: the person says it again
			u = &utterance.Utterance{Source: "voice"}
		}
		d := utterance.Decide(u, sl)
		right := d.Take != nil && first.Item.Right(&utterance.Meaning{Kind: utterance.Reading, Reading: d.Take})
		switch d.Action {
		case utterance.Accept, utterance.Confirm:
			if d.Action == utterance.Confirm {
				o.Asked++
			}
			if right {
				return o, nil
			}
			o.Wrong += Missed * (1 - o.Wrong)
			if clears(*d.Take) {
				o.Hazard += Missed
			}
			sl.Rejected = append(sl.Rejected, *d.Take) // noticed: "no"
		case utterance.AskTwo:
			o.Asked++
			if right || first.Item.Right(&utterance.Meaning{Kind: utterance.Reading, Reading: d.Rival}) {
				return o, nil
			}
			sl.Rejected = append(sl.Rejected, *d.Take, *d.Rival)
		case utterance.AskUnit:
			o.Asked++
			if d.Take.Value.Dec.Equal(first.Item.Value.Dec) {
				return o, nil
			}
		case utterance.Second:
			p := *d.Take
			sl.Pending = &p
		case utterance.Again, utterance.Digits:
			o.Asked++
			sl.Pending = nil
		case utterance.Keypad:
			o.Asked++
			o.Touch = true
			return o, nil
		}
		if d.Action != utterance.Second {
			sl.Failed++
		}
		if try == 5 {
			o.Touch = true
			return o, nil
		}
		var err error
		if row, err = b.Listen(s, v, first.Item, first.Cond, draw+1000*try); err != nil {
			return o, err
		}
	}
}
