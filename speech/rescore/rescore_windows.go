// Package rescore says how likely words are, given the sound; on this system it does not.
package rescore

import (
	"readback/speech"
	"readback/speech/model"
)

// From is nil: hearing goes on without a second opinion.
func From(model.Rescorer) speech.Rescorer { return nil }
