package job

import (
	"regexp"
	"slices"

	"readback/core/appliance"
	"readback/core/protocol"
)

// Limits of what is made of what the camera sees: judgement, no source.
const (
	surely    = 0.995  // least probability at which the camera counts as the second witness of a cleared hazard: what it tells; less is only asked about
	freshFor  = 15_000 // ms for which what was seen counts
	offersMax = 3      // how often a finding of the camera is put to the person in one step
	reasonMax = 2      // how many reasons of the camera are spoken in one step
)

// wire is a found terminal with what the person said of it.
type wire struct {
	protocol.SeenWire
	answer string // option id, empty while it is open
}

// open tells whether it must be answered before power returns.
func (w *wire) open() bool { return w.Change != "same" && w.answer == "" }

// sight is the camera's finding in the open question.
type sight struct {
	protocol.Seen
	at int64
}

// counts tells whether a look is a count of blinks: one of its answers is a code of a blinking light.
func counts(c *appliance.Check) bool {
	return slices.ContainsFunc(c.Options, func(o appliance.Option) bool { return blinkCode.MatchString(o.ID) })
}

// blinkCode is an option of a blinking light: "3", "3-2" for two digits, "red-2-green-1" for two colours.
var blinkCode = regexp.MustCompile(`^([1-9][0-9]?(-[1-9])?|(red|amber|green)-[1-9](-(red|amber|green)-[1-9])+)$`)
