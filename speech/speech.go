// Package speech is what a recogniser is to the rest of the program, whatever engine it is.
package speech

import "errors"

// Rate is the only sampling rate a recogniser takes, in Hz.
const Rate = 16000

// Word is one recognised word.
type Word struct {
	Text       string  `json:"word"`
	Start, End float64 `json:"-"` // s on the recogniser's own clock
	Confidence float64 `json:"conf"`
}

// Alternative is one hypothesis of a recogniser: a word string with its cost in nats; only differences count.
type Alternative struct {
	Text string  `json:"text"`
	Cost float64 `json:"cost"`
}

// Result is what a recogniser makes of one saying.
type Result struct {
	Alternatives []Alternative // best first; costs in nats, only differences count; empty when nothing was heard
	Words        []Word        // of the best alternative; confidence is its share among the alternatives
}

// Recognizer turns sound into words. Its methods must be called by one goroutine at a time; a second call at once is an error.
type Recognizer interface {
	// Accept takes 16 kHz mono samples, any number. Ended tells that the engine's own silence model holds the saying for
	// over; what follows still belongs to it until Final.
	Accept(pcm []int16) (ended bool, err error)
	Partial() (string, error) // words so far
	Final() (Result, error)   // ends the saying; the next one starts cold
	Close() error             // frees the engine; a second Close does nothing
}

// Rescorer says how likely words are, given the sound.
type Rescorer interface {
	// Score returns for each text the logarithm of its probability, given 16 kHz mono sound; -Inf where it cannot be spelled.
	Score(pcm []int16, texts []string) ([]float64, error)
	// Words returns what the rescorer itself hears in 16 kHz mono sound, in lower case without punctuation, each word the likeliest after the ones before it.
	Words(pcm []int16) (string, error)
	Close() error
}

var (
	// ErrBusy: a call came while another was running. The engine underneath would crash.
	ErrBusy = errors.New("speech: recogniser is in use by another goroutine")
	// ErrClosed: a call came after Close.
	ErrClosed = errors.New("speech: recogniser is closed")
)
