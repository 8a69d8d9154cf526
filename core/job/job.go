package job

import (
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

// aim is what the machine is trying to get done. It is comparable, and its text names it in the journal.
type aim struct {
	Kind string // check, story, plate, meter, callout, age, decide, match, photo, wire, swap, cycle, leave, items, stop, record
	N    int    // index by kind
}

// question is the step that is open now.
type question struct {
	id     string
	aim    aim
	kind   string // act, measure, look, ask, consent, confirm
	act    worksite.Act
	check  int // -1
	step   protocol.StepView
	short  string   // the short form of the last part
	how    string   // for "how"
	opts   []string // option ids that answer it
	good   string   // the option hoped for
	text   bool     // free words answer it
	count  bool     // a bare whole number answers it
	units  []string // unit ids that answer it; empty: no number is due
	hazard bool     // an answer that clears a hazard is said twice
	ready  bool     // part A of two: waits for "ready"
	typed  bool     // the answer came by finger, or the camera agreed

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
	blind   bool             // the camera and the person differed: only the person is asked from here
	reasons []string         // why the camera could not tell, each said once
}

// record of an answered question: what an undo takes back.
type record struct {
	id    string
	seqs  []int64
	words string // what was established, aloud
	taken string // the value, written
	act   bool
	read  *measure.Reading // nil when it was no reading
	word  string           // option id or count, when it was an answer in words
}

// named is a value that was given to a question.
type named struct{ id, value string }

// job is all that one job knows. It is rebuilt from the events for an undo.
type job struct {
	begin    protocol.Begin
	began    bool
	seq      int64
	now      int64
	stage    int
	site     worksite.State
	since    int64 // ms: when the power state was last established
	state    string
	q        *question
	aim      aim
	findings []Finding
	asked    []uint8          // by check: 0 not asked, 1 answered, 2 not to be had
	times    []uint8          // by check: how often asked
	ahead    []int            // checks to be asked next whatever the plan says
	unheard  *protocol.Effect // a caution whose saying was cut off
	done     map[string]bool
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
	noProof  bool           // the person will not measure live: nothing can be proved dead
	noLive   int            // how often "other way" was chosen
	consent  aim
	consAt   int64
	proveAt  int64 // ms: when consent to prove dead was given, 0 for none
	proofBad int
	liveBad  int
	refused  map[string]int
	cycles   int
	failed   bool         // the last watched start brought no heat
	opened   worksite.Set // covers ever opened
	lifted   worksite.Set // wires ever lifted
	held     bool         // a door switch was ever held
	jumped   bool
	jacked   bool
	timedAt  int64 // since when something must not be left alone
	timedN   int

	alarm     string // emergency class now, "" for none
	alarmAt   int64
	alarmN    int
	doubtAsk  bool                 // "right now?" is being asked
	doubtOf   string               // the class it is asked about; "ask" for none
	doubtElse *utterance.Utterance // what the same saying may have been besides
	locked    bool                 // an emergency that ends the job here
	doubts    []string
	facts     []string
	log       []protocol.LogLine
	notice    string
	heardView *protocol.HeardView
	said      string
	saidN     int64
	lastSaid  []protocol.Effect
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
	doubted   []Doubt          // checks whose answer was doubted once already
	powered   []int            // after how many findings the supply came back
	anew      []int            // after how many findings another start was watched from its beginning
	rests     int              // how often the supply was cut for that
	plate     map[string]string
	ratings   map[string]unit.Value // numbers of the plate, by field
	rated     *appliance.Model      // the model with them
	named     *measure.Meter        // the meter as the person described it, nil when not
	battery   float64
	warned    int
	away      int64
	lastEvent int64
	photos    []protocol.Photo
	eye       bool   // there is a camera
	eyeless   bool   // that there is none was said
	wires     []wire // what the camera found at the marked terminals after the swap
	story     string
	wake      int64
	advice    Advice // the last one that was followed
}

func (m *Machine) newJob() *job {
	checks := len(m.model.Checks)
	return &job{
		meter: m.meter, rated: m.model, ratings: map[string]unit.Value{},
		stage: sSafety, site: worksite.Start(), state: "ask", repair: -1, stop: -1, battery: 100, advice: Advice{Check: -1, Repair: -1},
		asked: make([]uint8, checks), times: make([]uint8, checks),
		done: map[string]bool{}, refused: map[string]int{}, patterns: map[string]int{}, cautions: map[string]int{}, plate: map[string]string{},
	}
}
