// Package protocol is all that a front end needs of a job: the events it sends, the effects it carries out, the view it
// shows and the result at the end. Its JSON form is the journal, the line protocol and the page's socket alike.
package protocol

import (
	"readback/core/measure"
	"readback/core/utterance"
)

// Event is something that happened. One JSON object a line in the journal, in the line protocol and on the page's socket.
type Event struct {
	Seq  int64  `json:"seq,omitempty"` // given by the machine, 1 for the first
	At   int64  `json:"at"`            // ms since the Unix epoch, from the host's clock
	Type string `json:"type"`          // one of the Ev constants

	Said   *utterance.Utterance `json:"said,omitempty"`   // EvSaid: voice, touch, key, line
	Spoke  string               `json:"spoke,omitempty"`  // EvSpoke: id of the Say that ended (or was cut off)
	Cut    bool                 `json:"cut,omitempty"`    // EvSpoke: it did not reach its end
	Seen   *Seen                `json:"seen,omitempty"`   // EvSeen
	Photo  *Photo               `json:"photo,omitempty"`  // EvPhoto
	Device *Device              `json:"device,omitempty"` // EvDevice
	Target int64                `json:"target,omitempty"` // EvUndo: Seq of the event to undo, 0 for the last answer
	Begin  *Begin               `json:"begin,omitempty"`  // EvBegin
	// Step is the id of the step that was open when the event came, given by the host: a program that asks otherwise can tell that an
	// answer of an older one belongs to another question.
	Step string `json:"step,omitempty"`
	Lost *Lost  `json:"lost,omitempty"` // EvResume: what the journal lost before
}

// Lost tells of entries of the journal that could not be read when the job was opened. They are kept aside and count for nothing.
type Lost struct {
	First int64  `json:"first"`          // number of the first entry lost
	Last  int64  `json:"last"`           // and of the last one that could be made out
	From  int64  `json:"from,omitempty"` // ms: time of the last entry before them
	To    int64  `json:"to,omitempty"`   // ms: time of the last one that could be made out
	Why   string `json:"why"`
	File  string `json:"file,omitempty"` // where the damaged journal is kept, in the job's folder
}

const (
	EvBegin  = "begin"  // first event of every journal
	EvResume = "resume" // the program came back: power is unknown from here
	EvSaid   = "said"
	EvSeen   = "seen" // what the camera makes of the open step: a witness beside the person
	EvSpoke  = "spoke"
	EvTick   = "tick" // the time asked for by a Wake effect, or any later time
	EvPhoto  = "photo"
	EvDevice = "device"
	EvUndo   = "undo"
)

// Begin fixes what a job is judged with.
type Begin struct {
	Job       string `json:"job"`       // id of the job, the journal's file name
	Appliance string `json:"appliance"` // equipment file id; empty: asked in the job
	Data      string `json:"data"`      // hash of the equipment file and the phrases
	Version   string `json:"version"`
	Lang      string `json:"lang"`
	Voice     bool   `json:"voice"` // false: touch only, nothing is listened to
	// Meter is what the person told of it before the job; nil: it is asked in the job.
	Meter *measure.Plain `json:"meter,omitempty"`
}

// Photo is a picture in the job's folder.
type Photo struct {
	ID     string `json:"id"`   // what it shows: "before", "after", "plate"
	Name   string `json:"name"` // file name inside the job's folder
	SHA256 string `json:"sha256"`
	Marks  []Mark `json:"marks,omitempty"` // a later event with the same Name brings them
}

// Mark is a place in a picture that the person has touched, as shares of its width and height.
type Mark struct {
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
	Name string  `json:"name"` // as spoken
}

// Device is news of the phone or computer. Kind: battery (Level per cent), mic-off, mic-on, speech-off (Text says why and how to
// get it), sound-off, silenced, call, back, noise (Level dB SNR), voices, eye-on, eye-off (Text says why there is no camera), clock
// (the computer's clock was set: Level s, Text says it in words).
type Device struct {
	Kind  string  `json:"kind"`
	Level float64 `json:"level,omitempty"`
	Text  string  `json:"text,omitempty"`
}

// Effect is something the host must do, in order. The journal entry of the event that caused it is on disk first.
type Effect struct {
	Type string `json:"type"` // one of the Do constants
	ID   string `json:"id,omitempty"`
	Text string `json:"text,omitempty"` // DoSay: words only, no symbol; DoEnd: outcome
	// Level of a saying: info, caution, warning, danger, emergency. Danger and emergency are never dropped or cut off by a new saying.
	Level string `json:"level,omitempty"`
	At    int64  `json:"at,omitempty"`   // DoWake: ms since the epoch
	View  *View  `json:"view,omitempty"` // DoShow
	Slow  bool   `json:"slow,omitempty"` // DoSay: the slower voice
	// Result of a job that is over, in ids: DoEnd.
	Result *Result `json:"result,omitempty"`
}

const (
	DoSay    = "say"
	DoHush   = "hush"   // stop speaking at once
	DoCue    = "cue"    // ID: heard, accepted, ask, refused, hold, resume, timer, danger
	DoShow   = "show"   // the page shows View
	DoWake   = "wake"   // send EvTick at At; a new Wake replaces the old
	DoPhoto  = "photo"  // take the picture called ID
	DoListen = "listen" // ID: end-of-speech class: choice, number, digits
	DoTeach  = "teach"  // ID: the unit that the person named of the number that the camera told of last
	DoEnd    = "end"    // the job is over; Text is the outcome, Result the whole of it
)

// View is all the page shows. It is the whole truth: a page that reloads needs nothing else.
type View struct {
	Job      string     `json:"job"`
	Seq      int64      `json:"seq"`
	Title    string     `json:"title"`              // the appliance
	Stage    string     `json:"stage"`              // id of the stage
	StageNo  int        `json:"stageNo"`            // 1..16
	Stages   []string   `json:"stages"`             // names of the stages, in order
	State    string     `json:"state"`              // ask, wait, hold, confirm, emergency, ended
	Site     SiteView   `json:"site"`               // always in view, never wrong
	Step     StepView   `json:"step"`               // the step now
	Heard    *HeardView `json:"heard,omitempty"`    // the last thing heard and how it was taken
	Said     string     `json:"said,omitempty"`     // caption of what the voice says now
	Suspects []Suspect  `json:"suspects,omitempty"` // best first, at most 5
	Why      *WhyView   `json:"why,omitempty"`
	Open     []string   `json:"open,omitempty"`     // what is still to be restored, in words
	Facts    []string   `json:"facts,omitempty"`    // what is established, newest last
	Log      []LogLine  `json:"log,omitempty"`      // the journal in words, newest last
	Notice   string     `json:"notice,omitempty"`   // speech is off and why; battery; no sound device
	Ended    string     `json:"ended,omitempty"`    // outcome, when over
	Call     string     `json:"call,omitempty"`     // number to call in an emergency, in digits: only then
	Handover string     `json:"handover,omitempty"` // words for the person called, when there is one
	Stream   int64      `json:"stream,omitempty"`   // number of this message in the event stream; given by the host
}

// SiteView is the state of the work place in words.
type SiteView struct {
	Power   string   `json:"power"`             // on, off, proved, unknown
	Since   int64    `json:"since,omitempty"`   // ms: when the power state was last established
	Gas     string   `json:"gas"`               // on, off, unknown, none
	Covers  []string `json:"covers,omitempty"`  // open covers by their names
	Jumpers []string `json:"jumpers,omitempty"` // fitted test jumpers
	Wires   []string `json:"wires,omitempty"`   // lifted wires
	Door    string   `json:"door,omitempty"`    // door switch: free, held
	Dial    string   `json:"dial,omitempty"`    // meter function in words
	Jack    bool     `json:"jack,omitempty"`    // red lead in the current jack
	Call    string   `json:"call,omitempty"`    // call for heat: on, off, unknown
	Resets  []string `json:"resets,omitempty"`  // manual resets pressed
}

// StepView is one step: the order of its parts never changes.
type StepView struct {
	ID      string   `json:"id"`
	Kind    string   `json:"kind"`              // act, measure, look, ask, consent, confirm, info
	Power   string   `json:"power,omitempty"`   // power state in words
	Level   string   `json:"level,omitempty"`   // caution, warning, danger; empty when there is none
	Caution string   `json:"caution,omitempty"` // words without the signal word
	Where   string   `json:"where,omitempty"`
	Meter   string   `json:"meter,omitempty"`
	Act     string   `json:"act"`
	Say     string   `json:"say,omitempty"`    // what to answer
	Points  []string `json:"points,omitempty"` // test point ids where the leads go: red, black
	Parts   []string `json:"parts,omitempty"`  // part ids concerned, for the drawing
	Place   string   `json:"place,omitempty"`  // place id, for the picture
	Answers []Answer `json:"answers,omitempty"`
	Also    []string `json:"also,omitempty"`   // option ids that are understood beside the answers
	Keypad  []string `json:"keypad,omitempty"` // unit ids of the keypad; empty: no number is due
	Part    string   `json:"part,omitempty"`   // A (get in place) or B (act); empty when joined
	Until   int64    `json:"until,omitempty"`  // ms: a running timer's end
	Eye     string   `json:"eye,omitempty"`    // what the camera can see of it: one of the Eye constants
	Marks   []string `json:"marks,omitempty"`  // EyeBefore: names of what is worth marking in the picture
	// Watch is set while one start is watched as it happens: the step then asks about the event that comes next (its ID is that check's),
	// and any other event of the list may be answered instead, by its words or by one of its own answers.
	Watch *WatchView `json:"watch,omitempty"`
}

// WatchView is one start that is watched as it happens.
type WatchView struct {
	Since  int64        `json:"since,omitempty"` // ms: when the start began; 0: not known yet
	Events []WatchEvent `json:"events"`          // in the order in which they should come
}

// WatchEvent is one thing that should happen at a start.
type WatchEvent struct {
	Check   string   `json:"check"`             // id of its check
	Text    string   `json:"text"`              // what should happen: "the draft fan starts"
	State   string   `json:"state"`             // one of the Event constants
	At      int64    `json:"at,omitempty"`      // ms: when it was answered
	Due     float64  `json:"due,omitempty"`     // s after Since at which it usually comes
	Taken   string   `json:"taken,omitempty"`   // the answer in words
	Answers []Answer `json:"answers,omitempty"` // buttons of this event; the first is the one expected. None once it was answered or is left out
}

// States of an event of a start that is watched.
const (
	EventNow     = "now"     // asked about: it should come next
	EventLater   = "later"   // comes after it
	EventSeen    = "seen"    // came as it should
	EventOdd     = "odd"     // came otherwise than it should
	EventMissed  = "missed"  // did not come
	EventSkipped = "skipped" // left out: an earlier answer says it all, or nobody knows
)

// Answer is one button. Pressing it sends an EvSaid with a touch utterance of this meaning.
type Answer struct {
	ID   string         `json:"id"`
	Kind utterance.Kind `json:"kind"` // choice, command, unit
	Text string         `json:"text"`
}

// HeardView tells what was heard and what became of it.
type HeardView struct {
	Text    string          `json:"text"`
	Taken   string          `json:"taken,omitempty"` // "26.1 V AC", "Inducer silent"
	Rivals  []string        `json:"rivals,omitempty"`
	Verdict measure.Verdict `json:"verdict,omitempty"`
	Limit   string          `json:"limit,omitempty"` // the limit in words and its source, only after the reading is accepted
	Value   float64         `json:"value,omitempty"` // in Unit, for the band
	U       float64         `json:"u,omitempty"`     // expanded uncertainty (k = 2), same unit
	Low     *float64        `json:"low,omitempty"`   // limit, same unit
	High    *float64        `json:"high,omitempty"`
	Unit    string          `json:"unit,omitempty"`
	Pending bool            `json:"pending,omitempty"` // not accepted yet
}

// Suspect is one repair decision with its probability.
type Suspect struct {
	Part  string  `json:"part"` // part id, "unknown" or "nothing"
	Name  string  `json:"name"`
	P     float64 `json:"p"`
	Words string  `json:"words"` // "likely, 7 in 10"
}

// WhyView explains the step.
type WhyView struct {
	Short string   `json:"short"`
	More  []string `json:"more,omitempty"`
	Cost  string   `json:"cost,omitempty"`
}

// LogLine is one line of the journal in words. Who: guide, person, site.
type LogLine struct {
	Seq  int64  `json:"seq"`
	At   int64  `json:"at"`
	Who  string `json:"who"`
	Text string `json:"text"`
}

// Result is what has come of a job so far, in ids.
type Result struct {
	Outcome string   `json:"outcome"`          // fixed, nothing-wrong, stopped, unresolved, handed-over, part-awaited…; empty while the job goes on
	Repair  string   `json:"repair,omitempty"` // repair that the verdict names or named last, empty for none
	P       float64  `json:"p,omitempty"`      // its probability when it was named
	Likely  string   `json:"likely,omitempty"` // part that is most likely at fault and not proved, where nothing is named
	Mended  []string `json:"mended,omitempty"` // repairs carried out, in order
	Stop    string   `json:"stop,omitempty"`   // stop line reached, empty for none
	Checks  int      `json:"checks"`           // checks and looks answered so far, the safety questions, the story and the plate among them
}

// What the camera can see of a step: StepView.Eye.
const (
	EyeMeter  = "meter"        // the number on the meter
	EyeLamp   = "lamp"         // the code of the status light
	EyeBefore = "photo.before" // the wires before a swap: a picture with marked terminals
	EyeAfter  = "photo.after"  // the wires after it, compared with the first picture
	EyePlate  = "plate"        // codes on the rating plate
	EyeFire   = "fire"         // glow and flame of a burner: advice about a moment, never proof that gas is or is not burning
)

// Seen is what the camera makes of the open step: a witness beside what the person says, never a proof. It carries a
// finding, or the reason why there is none.
type Seen struct {
	Step    string           `json:"step"`              // StepView.ID that the pictures belong to; of another step it counts for nothing
	Kind    string           `json:"kind"`              // one of the Eye constants
	Reading *measure.Reading `json:"reading,omitempty"` // EyeMeter: its unit is empty unless it was seen
	ID      string           `json:"id,omitempty"`      // EyeLamp: option of the step
	Text    string           `json:"text,omitempty"`    // as shown: "24.5", "3"; EyePlate: what is proposed; EyeFire: one of appliance.Sights
	P       float64          `json:"p,omitempty"`       // probability that it is right
	Rivals  []string         `json:"rivals,omitempty"`  // next likely, as shown
	From    int64            `json:"from,omitempty"`    // EyeFire: it came about between so many ms before this
	To      int64            `json:"to,omitempty"`      // and so many
	Frames  int              `json:"frames,omitempty"`  // pictures behind it
	Reason  string           `json:"reason,omitempty"`  // why nothing is told, in words that can be spoken; all above are then empty
	Photo   string           `json:"photo,omitempty"`   // file in the job's folder, when the picture was kept
	Wires   []SeenWire       `json:"wires,omitempty"`   // EyeAfter: every marked terminal
}

// SeenWire is what was found at one marked terminal. Places are shares of the pictures' width and height.
type SeenWire struct {
	Mark
	AX     float64 `json:"ax"` // the same place in the second picture
	AY     float64 `json:"ay"`
	Change string  `json:"change"`           // same, another, gone, added, differs, hidden
	Before string  `json:"before,omitempty"` // likeliest colour in words
	After  string  `json:"after,omitempty"`
}
