// Package heard is the vocabulary between the senses and the session: what somebody said,
// typed, tapped or showed, as meanings with their costs. It knows no recogniser and no furnace.
// The speech layer, the page and the line protocol all produce it; the session consumes it.
package utterance

import "readback/core/measure"

// Kind of a meaning.
type Kind string

const (
	Reading   Kind = "reading"   // a value with its unit, or a display state
	Choice    Kind = "choice"    // one of the named answers: an option id of the lexicon
	Command   Kind = "command"   // a command id of the lexicon, valid in every state
	Emergency Kind = "emergency" // an emergency class id of the lexicon
	Text      Kind = "text"      // free words or a part number, as said
	Count     Kind = "count"     // a bare whole number: blinks, tries, codes
	UnitOnly  Kind = "unit"      // "make that ohms": the digits given before stay, ID is the new unit's id
	Trouble   Kind = "trouble"   // with the meter: "low-battery", "wrong-mode"
	Symptom   Kind = "symptom"   // what the appliance does, told in free words: "lights-dies"; it answers nothing by itself
)

// Symptoms are what a story can tell that the appliance does: the ids of the meanings of that kind.
var Symptoms = []string{"noheat", "fan-no-flame", "lights-dies", "short-cycle", "no-blower", "blower-on", "blank-stat", "weak-heat", "click",
	"noise", "smell", "water", "trips", "code", "sometimes", "after-work"}

// Aside is the fault of an utterance that was meant for somebody else, or means nothing here: it answers nothing and counts for nothing.
const Aside = "aside"

// Meaning is one thing an utterance can mean.
type Meaning struct {
	Kind    Kind             `json:"kind"`
	Reading *measure.Reading `json:"reading,omitempty"`
	ID      string           `json:"id,omitempty"`     // choice, command or emergency id
	Text    string           `json:"text,omitempty"`   // the words that carried it; for Text and Count the content
	Units   []string         `json:"units,omitempty"`  // Reading.Value.Unit is empty: the units it could have (unit ids); nil when no unit was said and none was expected
	Doubt   bool             `json:"doubt,omitempty"`  // must be asked about first: an emergency hedged, past or what-if; a reading, an answer or a grave command found among other words
	Repair  bool             `json:"repair,omitempty"` // the utterance took something back ("no, twenty four")
	Cost    float64          `json:"cost"`             // nats above the best meaning; 0 for the best
}

// Utterance is everything known about one saying. Meanings are ordered by cost; empty means refused.
type Utterance struct {
	Text     string    `json:"text"`             // the recogniser's best words, or what was typed
	Rivals   []string  `json:"rivals,omitempty"` // other word strings, best first
	Meanings []Meaning `json:"meanings,omitempty"`
	Source   string    `json:"source"`           // voice, touch, key, line
	SNR      float64   `json:"snr,omitempty"`    // dB, 0 when unknown
	Level    float64   `json:"level,omitempty"`  // dBFS of the active speech, 0 when unknown
	Margin   float64   `json:"margin,omitempty"` // nats between the best and the next different meaning; 0 when there is only one
	Agree    float64   `json:"agree,omitempty"`  // share of the hearings of this saying that hold its best reading for the likeliest, by weight
	Sure     float64   `json:"sure,omitempty"`   // probability that the best reading is what was said; 0 when unknown
	Start    int64     `json:"start,omitempty"`  // ms on the session's clock
	End      int64     `json:"end,omitempty"`
	Partial  bool      `json:"partial,omitempty"` // still being spoken: only emergencies and "quiet" may act on it
	Fault    string    `json:"fault,omitempty"`   // why nothing was understood: "unknown", "loud", "quiet", "clipped", "long", or Aside
}

// Best returns the cheapest meaning, or nil.
func (u *Utterance) Best() *Meaning {
	if len(u.Meanings) == 0 {
		return nil
	}
	return &u.Meanings[0]
}

// Phrase is one entry of a lexicon: an id with its natural sayings.
type Phrase struct {
	ID   string   `json:"id"`
	Say  []string `json:"say"`            // lower-case words as spoken, numbers as words
	Back string   `json:"back,omitempty"` // how the assistant says it back, a fact and never "no"
}

// Emergencies is the data of the hazard matcher.
type Emergencies struct {
	Classes  []Phrase // E1 and E2 classes and the ask-at-once class "ask"; ids: gas, co, fire, ill, shock, spark, water, injury, child, any, ask
	Masks    []string // device nouns that mask a hazard word unless a live verb follows
	Live     []string // live verbs
	Negators []string
	Enders   []string // words that end a negator's reach: but, now, wait
	Fine     []string // words after a hazard that cancel it
	Past     []string // past and what-if marks
	Hedges   []string // "don't think", "not sure"
	Expected []string // sayings that cancel a bare spark, fire or flame
	Alarms   []string // single words that are asked about where a short saying holds one and means nothing else
	Near     []string // sayings that must not trigger; tests only
}

// Lexicon is all that can be said in one language besides numbers.
type Lexicon struct {
	Lang        string
	Commands    []Phrase
	Options     []Phrase // answers to questions: "humming", "off", "clear"
	Emergencies Emergencies
	Units       map[string][]string // unit id → sayings: "uA" → "micro amps"
	States      map[string][]string // measure.State → sayings: "over" → "o l", "over limit"
	Misheard    map[string][]string // words a recogniser writes in noise → what was said: "i" → "five"
	Background  []string            // common words, which an alarm is weighed against
}
