// Package moonshine says how likely words are, given the sound; on this system it does not.
package moonshine

import (
	"readback/speech"
	"readback/speech/model"
)

// From is nil: hearing goes on without a second opinion.
func From(model.Judge) speech.Judge { return nil }
