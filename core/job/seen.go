package job

import (
	"regexp"
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
)

// What the camera can see of a step, and limits of what is made of it: judgement, no source.
const (
	EyeMeter  = "meter"        // the number on the meter
	EyeLamp   = "lamp"         // the code of the status light
	EyeBefore = "photo.before" // the wires before a swap: a picture with marked terminals
	EyeAfter  = "photo.after"  // the wires after it, compared with the first picture
	EyePlate  = "plate"        // codes on the rating plate
	EyeFire   = "fire"         // glow and flame of a burner: advice about a moment, never proof that gas is or is not burning
	surely    = 0.9            // least probability at which the camera counts as the second witness of a cleared hazard
	freshFor  = 15_000         // ms for which what was seen counts
	offersMax = 3              // how often a finding of the camera is put to the person in one step
	reasonMax = 2              // how many reasons of the camera are spoken in one step
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

// wire is a found terminal with what the person said of it.
type wire struct {
	SeenWire
	answer string // option id, empty while it is open
}

// open tells whether it must be answered before power returns.
func (w *wire) open() bool { return w.Change != "same" && w.answer == "" }

// sight is the camera's finding in the open question.
type sight struct {
	Seen
	at int64
}

// counts tells whether a look is a count of blinks: one of its answers is a code of a blinking light.
func counts(c *appliance.Check) bool {
	return slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return blinkCode.MatchString(o.ID) })
}

// blinkCode is an option of a blinking light: "3", "3-2" for two digits, "red-2-green-1" for two colours.
var blinkCode = regexp.MustCompile(`^([1-9][0-9]?(-[1-9])?|(red|amber|green)-[1-9](-(red|amber|green)-[1-9])+)$`)
