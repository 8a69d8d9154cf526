// Package appliance knows what an appliance is made of and how it behaves: typed parts with ports on nets,
// the ways each part fails, the control's sequence of operation, test points and what must be opened to reach them.
// It simulates any hypothesis in any context and compiles the prediction table. Nobody writes a likelihood.
//
// Kinds of parts are generic (a fuse, a contact, a load…), so that another appliance is another file, not more code.
package appliance

import (
	"slices"

	"readback/core/measure"
)

// Model is one appliance as its equipment file describes it. It is immutable once loaded; indices are into its slices.
type Model struct {
	ID       string           // kebab-case, unique
	Title    string           // as spoken: "gas furnace with an induced draft fan and a hot igniter"
	Fuel     string           // gas, oil, electric, none
	Mains    bool             // there is mains voltage inside
	Starts   int              // how often it may be made to light in one job, whoever does it; 0: as often as needed
	Relight  measure.Quantity // s to wait, with the gas off, before it is lit again; unset: its control purges by itself
	Hash     string           // SHA-256 of the file as read
	Sources  []Source
	Places   []Place
	Parts    []Part
	Modes    []Mode // all modes of all parts, in file order
	Signals  []Signal
	Controls []Control
	Points   []Point
	Checks   []Check
	Repairs  []Repair
	Plate    []PlateField
	Lamps    []Lamp
	Stops    []StopLine
	Cautions []Caution
	Facts    []Fact // call-out price range and other money and time facts
	Dead     []int  // points where dead is proved: line, neutral, ground; line is upstream of every door switch. Empty: the usual words are used
	Earth    string // net that is earth, the datum of all volts; empty: the return of the first supply
}

// Source is where a number comes from.
type Source struct{ ID, Text string }

// Place is somewhere in the access tree: what has to be opened to get there.
type Place struct {
	ID      string
	Name    string           // as spoken: "lower front panel"
	Where   string           // landmark words: "behind the lower front panel, right side"
	Within  int              // index of the enclosing place, -1 for the room
	Cover   bool             // something is removed to get in (false: reachable as soon as Within is)
	Open    measure.Quantity // time to open, min
	Close   measure.Quantity // time to close, min
	Trips   []int            // parts (door switches) that open when this cover is off
	HandsIn bool             // moving, hot or live things can be touched inside
	Hazards []string         // hazard nouns inside: mains, moving, hot, sharp, gas, capacitor
	Sketch  string           // one of vocab.PlaceSketches: what stands for it in pictures; empty: its enclosing place
}

// Part is one thing with one name.
type Part struct {
	ID      string
	Kind    string // a kind of the library
	Name    string // one name for ever: "pressure switch"
	Place   int
	Look    string                      // how to recognise it: "round, rubber hose, two wires"
	Sketch  string                      // one of vocab.PartSketches: what stands for it in pictures; empty: that of its kind
	Ports   map[string]string           // port name → net id
	Params  map[string]measure.Quantity // numbers the kind needs
	Exprs   map[string]*Expr            // expressions the kind needs ("closes", "works")
	Words   map[string]string           // other words the kind needs ("position" of a switch)
	Safety  bool                        // a limit, roll-out, pressure or flame device: never bridged
	Stop    int                         // stop line that work on this part crosses, -1
	Modes   []int
	Outputs []Output // of a board
	Inputs  []Input  // of a board
}

// Output is a contact inside a board that its control closes.
type Output struct {
	ID       string // unique within the board: "IND"
	From, To string // net it is fed from, net it feeds
}

// Input is what a board senses: the volts between two nets, loaded by its own resistance.
type Input struct {
	ID      string
	Net, To string
	On      measure.Quantity // V at and above which it counts as present
	Ohms    measure.Quantity // its own resistance
}

// Mode is a way a part fails, or is set wrongly.
type Mode struct {
	Part   int
	ID     string                      // unique within the part: "open"
	Full   string                      // part.mode, unique
	Name   string                      // as spoken: "igniter cracked open"
	Does   string                      // effect of the kind: open, short, stuck-closed, weak, dirty, off…
	Params map[string]measure.Quantity // size of the effect: ohms, factor
	To     string                      // another net, for a short
	At     string                      // output, input, conductor or port concerned, where the kind has several
	Rate   measure.Quantity            // relative frequency among no-heat causes, unit "x"
	Repair int                         // index of the repair that ends it
	Hidden float64                     // intermittent: chance that it is active in one power cycle; 0 means always active
	Wrong  bool                        // a wrong setting or bad earlier work rather than a failed part
}

// Signal is a physical quantity that is not a net: draft, gas pressure, flame, air temperature rise.
type Signal struct {
	ID   string
	Unit string           // unit id
	Is   *Expr            // how it follows from parts and other signals
	Tol  measure.Quantity // spread of the healthy value, half-width in %: what the expression does not know
}

// Control is the sequence of operation of one controller.
type Control struct {
	ID    string
	Part  int // the board
	Steps []Step
	Tries int // trials before lock-out, 0 for no lock-out
}

// Step of the sequence: while in it, the outputs in Drive are on.
type Step struct {
	ID     string
	Drive  []string         // outputs of the board that are on
	May    []string         // outputs that some boards drive besides while they wait here: what depends on them is not known then
	Needs  *Expr            // must be true to go on; nil: always
	Within measure.Quantity // s: how long it waits for Needs; the window in which its outputs can be measured
	OnFail string           // retry, lockout, wait, or the id of a side step
	Side   bool             // not in the sequence: entered by an on_fail only, and left never
	Code   string           // lamp code shown when it fails here
	Purge  measure.Quantity // s before the next trial
	Takes  measure.Quantity // s it lasts when all is well; unset: Within, or 5 s when it waits for Needs
}

// Point is a place for a lead.
type Point struct {
	ID    string
	Net   string // electrical net, or part.port for a terminal that can be isolated by lifting the part
	Place int
	Name  string // as spoken: "terminal W on the board"
	Where string
	On    string // the terminal in pictures: sketch.terminal; empty: found by its net
}

// Check is a question, a look or a measurement. Only what the simulator cannot know is written: where, how, at what cost.
type Check struct {
	ID       string
	Stage    string // safety, story, plate, light, free, watch, meter, plan, cause, restart
	Name     string // short name for the record
	Function measure.Function
	Red      int // index of the point for the red lead, -1
	Black    int
	Part     int    // part concerned, -1
	Quantity string // signal id for instruments that read a signal; "amps:part" for a clamp
	Unit     string // unit the answer is judged in
	Power    string // on, off, any
	Call     string // on, off, any: thermostat calling
	At       string // step id at which it must be done; empty: at rest
	Window   bool   // only valid within that step's time
	Places   []int  // places that must be open
	Lift     []int  // points whose wire must be lifted, parts unplugged
	HandsIn  bool
	Hazard   string // none, low (24 V), mains, moving, hot, gas, capacitor
	Instead  int    // off-power alternative check, -1
	Minutes  measure.Quantity
	Ask      string         // the question, for looks: it ends in the labels of its options, or is one of yes and no
	Act      string         // what to do first, imperative, sentences of at most 16 words
	Caution  string         // at most 20 words, without the signal word
	Options  []Option       // for looks and questions, tried in order
	Limit    *measure.Limit // what is healthy here, for the verdict
	Label    int            // plate field that Limit hangs on, plus one; 0: none. Until it is read no reading of this check counts
	LabelEnd [2]*Term       // how the ends of Limit follow from the label, nil for an open end
	Bands    []Band         // readings that have a consequence of their own, the worst first
	Skill    string         // clear, ambiguous, skilled: how reliably a person answers
	Fit      string         // what is fitted with the power off before it, a gauge or a tee: an act of its own
	Licensed bool           // offered to licensed people only
	Must     bool           // a gate: where it is the cause check of a repair and not as it should be, the repair waits and the power stays off
	Repeat   bool           // may sensibly be asked again
	Hold     string         // door switches: "held", "free"; empty: held when the power is on
	Jump     []int          // two points joined by a test jumper for the length of this check, nil: none
	// Event says what is expected at one start, "the draft fan starts": all checks that have one are watched at the same start, in the
	// order of the sequence, and asked about as it happens. Empty: asked by itself.
	Event string
	// Unless are answers after which the check makes no sense: it is not asked as long as one of them is the last to its check.
	Unless []Answer
	// Before are acts that change what this check asks about (power-on, call-on): it is asked before the first of them.
	Before []string
}

// Answer is one option of one check.
type Answer struct {
	Check, Option int // indices
}

// Watched tells whether a camera that watches the burner can speak for an answer.
func (c *Check) Watched() bool {
	return slices.ContainsFunc(c.Options, func(o Option) bool { return len(o.Seen) > 0 })
}

// Band is a range of readings with a consequence: a stop line, an emergency, or words.
type Band struct {
	Limit     measure.Limit // the readings in it
	Stop      int           // -1
	Emergency string
	Tell      string
}

// Option is one answer of a look; When is the state of the appliance that it describes.
type Option struct {
	ID        string   // option id of the lexicon
	Label     string   // how this check words it, on its button and aloud; empty: as the lexicon does
	Also      []string // ids of other options of the lexicon that mean it here: understood, and no buttons of their own
	When      *Expr    // nil: otherwise
	Stop      int      // answering this crosses a stop line, -1
	Emergency string   // answering this is an emergency of that class
	Passes    bool     // the fault comes and goes: a start that works does not show that nothing is wrong
	As        string   // it counts as that option for what is wrong: it speaks of the house, not of the appliance
	Tell      string   // said and written when this is the answer
	NoLive    bool     // after it nothing live is touched or measured: a wet floor
	Seen      []string // what a camera that watches the burner makes of it then: some of Sights
	Missed    bool     // of an event: nothing of it was noticed
	Shows     []string // what this answer shows of the work place: power (the supply is on), call (heat is called for)
	Told      []string // symptoms of a story that mean it: ids of utterance.Symptom
	Twice     bool     // it would condemn something by one look: asked once more in other words before it counts. An answer with a stop line always is
	Mend      int      // repair that puts right at once what is seen, free and by hand, plus one; 0 for none
}

// Sights is what a camera can make of a burner that it watches: nothing for a long while, a glow, a flame, a flame that has burnt for ten
// seconds, a flame that went out.
var Sights = []string{SeenDark, "glow", "flame", "held", "out"}

// SeenDark is the one of Sights that shows nothing: the camera may look at the wrong place.
const SeenDark = "dark"

// Repair is what ends a fault.
type Repair struct {
	ID      string
	Name    string // as spoken: "replace the igniter"
	Part    int
	Kind    string           // set, clean, open, tighten, replace, refit, call
	Stop    int              // licensed work: the guide stops here, -1
	Price   measure.Quantity // low..high of the part, money
	Minutes measure.Quantity
	Match   []string // what the new part must match
	Steps   []SwapStep
	Causes  []int  // checks that look for why it failed
	Confirm int    // check that showed the fault and must now show its absence, -1
	Note    string // said before its first step, and so written in the record
}

// SwapStep is one act of a swap; Wire names a terminal that is moved one at a time.
type SwapStep struct {
	Act     string
	Caution string
	Level   string // caution, warning, danger
	Wire    int    // point index, -1
	Power   string // off (proved dead), cut (switched off: only outside of every cover), on
	Places  []int
}

// Term is an end of a limit as it follows from what a label says.
type Term struct{ Times, Plus float64 }

// PlateField is one thing read from the rating plate, or from the label of one part.
type PlateField struct {
	ID, Name, Unit, Ask string
	Sets                string           // parameter it overrides: part.param
	Usual               measure.Quantity // of a label: what the file reckons with. It is asked at the check that needs it
	Places              []int            // of a label: what must be open to read it
	Possible            *measure.Limit   // what such a plate can say; a number outside is asked for again
	Match               bool             // a new part is matched by it: asked before one is bought
}

// Lamp is one pattern of the status light. When is the state that shows it.
type Lamp struct {
	ID     string // blink count as said, "steady", "off"
	Means  string
	When   *Expr
	Source string
}

// StopLine ends the guide's part of the work.
type StopLine struct {
	ID   string
	Say  string // why we stop here
	Call string // whom to call
	Tell string // what to tell them
	Now  string // what to do first: "leave it off"
}

// Caution is said before work in a place or with a hazard.
type Caution struct {
	Hazard string
	Level  string   // caution, warning, danger
	Say    []string // first the full form, then short variants with the same hazard noun
}

// CallOut is the fact that says what help costs where the person does not.
const CallOut = "call-out"

// Fact is a number of the file with its source. Nothing reads any other than [CallOut].
type Fact struct {
	ID string
	measure.Quantity
}

// StopOf is the stop line that a repair crosses by itself or by its part, -1 for none.
func (m *Model) StopOf(repair int) int {
	r := &m.Repairs[repair]
	if r.Stop < 0 && r.Part >= 0 {
		return m.Parts[r.Part].Stop
	}
	return r.Stop
}
