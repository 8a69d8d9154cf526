package job

import (
	"maps"
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/core/worksite"
)

// Stages of a job, in order. The number is the one on the page.
const (
	sSafety = 1 + iota
	sStory
	sPlate
	sLight
	sFree
	sWatch
	sMeter
	sPlan
	sProof
	sCause
	sCost
	sPart
	sSwap
	sRestart
	sRefit
	sRecord
)

// stageID is the id of a stage by its number.
func stageID(n int) string { return vocab.Stages[n-1].ID }

// question is the step that is open now.
type question struct {
	id     string
	task   task   // what it is about
	kind   string // act, measure, look, ask, consent, confirm
	act    worksite.Act
	check  int // -1
	step   protocol.StepView
	short  string            // the short form of the last part
	how    string            // for "how"
	opts   []string          // option ids that answer it: those with a button first
	shown  int               // how many of opts have a button
	labels map[string]string // option id → its words at this question; the lexicon's where there are none
	also   []string          // answers to other events of the start that is watched: "check=option", and options that only they have
	good   string            // the option hoped for
	text   bool              // free words answer it
	count  bool              // a bare whole number answers it
	units  []string          // unit ids that answer it; empty: no number is due
	hazard bool              // an answer that clears a hazard is said twice
	ready  bool              // part A of two: waits for "ready"
	typed  bool              // the answer came by finger, or the camera agreed

	pending *utterance.Meaning  // taken but to be confirmed
	choices []utterance.Meaning // "this or that?": the rivals that were named
	first   *utterance.Meaning  // first of two agreeing sayings
	told    string              // the command that was answered last
	asks    int                 // questions back so far
	errs    int                 // not understood, in a row
	odd     int                 // impossible here, in a row
	silent  int                 // check-ins so far
	fixes   int                 // corrections so far
	base    int64               // ms: when waiting began
	seqs    []int64             // events that belong to this question

	sight   *sight           // what the camera sees now
	sighted bool             // pending, or number, is the camera's and not a saying
	number  *measure.Reading // the camera's, when only the person can tell its unit
	offered int              // how often the camera's finding was put to the person
	recall  bool             // asked from memory: what was read before, not to read it again
	blind   bool             // the camera and the person differed: only the person is asked from here
	reasons []string         // why the camera could not tell, each said once
}

// record of an answered question: what an undo takes back.
type record struct {
	id    string
	seqs  []int64
	words string // what was established, aloud
	taken string // the value, written
	act   worksite.Act
	read  *measure.Reading // nil when it was no reading
	word  string           // option id or count, when it was an answer in words

	task   task               // what the question was about
	check  int                // -1: no check
	typed  bool               // the answer came by finger, or the camera agreed
	answer *utterance.Meaning // nil when it was left without one
	before knowledge          // what was known before it
}

// named is a value that was given to a question.
type named struct{ id, value string }

// progress tells which parts of a job are done.
type progress struct {
	story, callout, age bool
	license             bool // whether the person is licensed was asked
	meter               [len(meterSteps)]bool
	decided             bool
	matched             bool
	photo               [2]bool // before and after
	noted               bool    // the note of the repair under way was said
	swapped             uint64  // its steps, by bit
	left                bool    // the work place is put in order
	items               bool    // and was read out
	handed              bool    // the words for the person called were read out
	callAgain           bool    // the settings were asked again because no call arrived
	free                bool    // the repair under way was seen to be needed, and costs nothing
	works               int     // after how many repairs it was seen that nothing is wrong
}

// knowledge is what is established: what answers give and an undo takes away. What hands did is not in it.
type knowledge struct {
	stage    int
	findings []Finding
	asked    []uint8 // by check: 0 not asked, 1 answered, 2 not to be had
	times    []uint8 // by check: how often asked
	ahead    []int   // checks to be asked next whatever the plan says
	done     progress
	mended   []Mended
	repair   int // being carried out, -1
	price    *measure.Reading
	age      int
	outcome  string
	ending   bool
	leaveOn  bool
	stop     int // stop line reached, -1
	handover string
	meter    *measure.Meter // what the person measures with
	noMeter  bool           // there is none
	noMains  bool           // meter or leads are not made for house voltage, or it is not known
	licensed bool           // for gas or heating work here, as the person says
	noProof  bool           // the person will not measure live: nothing can be proved dead
	noLive   int            // how often "other way" was chosen
	consent  int            // check that live work was agreed to for, -1 for none
	consAt   int64
	proveAt  int64 // ms: when consent to prove dead was given, 0 for none
	proofBad int
	liveBad  int
	refused  map[string]int
	cycles   int
	failed   bool // the last watched start brought no heat
	doubts   []string
	facts    []string
	doubted  []Doubt // checks whose answer was doubted once already
	anew     []int   // after how many findings another start was watched from its beginning
	gate     int     // check whose failure forbids the supply until it passes, -1 for none
	rests    int     // how often the supply was cut for that
	plate    map[string]string
	ratings  map[string]unit.Value // numbers of the plate, by field
	rated    *appliance.Model      // the model with them
	named    *measure.Meter        // the meter as the person described it, nil when not
	story    string
	watch    watching // the start that is watched
	unknown  int      // questions in a row that were left without an answer
	offer    bool     // it is time to say what is possible without, and to offer to stop
	offered  int      // how often that was done
	twice    once     // the look that is asked once more
	advice   Advice   // the last one that was followed
}

// snapshot is a copy that later answers do not change.
func (k *knowledge) snapshot() knowledge {
	c := *k
	c.findings, c.mended, c.facts, c.doubts = slices.Clip(k.findings), slices.Clip(k.mended), slices.Clip(k.facts), slices.Clip(k.doubts)
	c.doubted, c.anew, c.ahead = slices.Clip(k.doubted), slices.Clip(k.anew), slices.Clip(k.ahead)
	c.asked, c.times = slices.Clone(k.asked), slices.Clone(k.times)
	c.refused, c.plate, c.ratings = maps.Clone(k.refused), maps.Clone(k.plate), maps.Clone(k.ratings)
	return c
}

// hands is what was done at the work place. No undo, resume or correction makes it undone: only an act that is asked for does.
type hands struct {
	site     worksite.State
	since    int64        // ms: when the power state was last established
	opened   worksite.Set // covers ever opened
	lifted   worksite.Set // wires ever lifted
	adrift   worksite.Set // wires whose refit was taken back: on or off, nobody knows
	held     bool         // a door switch was ever held
	jumped   bool
	jacked   bool
	starts   int   // how often it was made to light
	offAt    int64 // ms: when the gas was shut off last by knob or supply, 0 for never
	powered  []int // after how many findings the supply came back
	provedAt int64 // ms: when dead was proved last
	proofAt  int64 // ms: the last reading of the proof under way
	timedAt  int64 // since when something must not be left alone
	timedN   int
	wires    []wire // what the camera found at the marked terminals after the swap
}

// talk is the state of the conversation.
type talk struct {
	doubtAsk  bool                 // "right now?" is being asked
	doubtOf   string               // the class it is asked about; "ask" for none
	doubtElse *utterance.Utterance // what the same words may have been besides
	log       []protocol.LogLine
	notice    string
	heardView *protocol.HeardView
	said      string
	saidN     int64
	lastSaid  []protocol.Effect
	unheard   *protocol.Effect // a caution whose saying was cut off
	holding   bool
	rate      bool // slower
	brief     int  // shorter: 1, longer: -1
	patterns  map[string]int
	cautions  map[string]int
	records   []record
	prev      *measure.Reading // read back last: a repair may keep a part of it
	wrong     []named          // values that were called wrong: never offered again
	patient   bool             // two check-ins were needed: everything waits longer
	noise     float64          // dB of speech over noise, 0 when not known
	eye       bool             // there is a camera
	eyeless   bool             // that there is none was said
}

// job is all that one job knows.
type job struct {
	begin protocol.Begin
	began bool
	seq   int64
	now   int64
	state string
	q     *question
	task  task // nil: the agenda chooses
	knowledge
	hands
	talk

	alarm      string // emergency class now, "" for none
	happened   string // the last emergency that was not taken back, "" for none
	happenedAt int64
	outside    bool // everybody is said to be outside
	alarmAt    int64
	alarmN     int
	locked     bool // an emergency that ends the job here
	battery    float64
	warned     int
	away       int64
	lastEvent  int64
	photos     []protocol.Photo
	wake       int64
}

func (m *Machine) newJob() *job {
	checks := len(m.model.Checks)
	return &job{
		state: "ask", battery: 100,
		knowledge: knowledge{
			meter: m.meter, rated: m.model, ratings: map[string]unit.Value{}, stage: sSafety, repair: -1, stop: -1, consent: -1, gate: -1,
			advice: Advice{Check: -1, Repair: -1}, asked: make([]uint8, checks), times: make([]uint8, checks),
			refused: map[string]int{}, plate: map[string]string{},
		},
		hands: hands{site: worksite.Start()},
		talk:  talk{patterns: map[string]int{}, cautions: map[string]int{}},
	}
}
