package ui

import (
	"errors"

	"readback/core/heard"
	"readback/core/session"
)

// NewMachine makes the real machine of a job over the built-in equipment files.
func NewMachine(session.Begin) (Machine, error) {
	return nil, errors.New("no machine is built in")
}

// Parse is what a text means, as if it had been heard.
func Parse(text string) heard.Utterance { return heard.Utterance{Text: text, Source: "key"} }

// Catalogue is the first line of the line protocol.
func Catalogue(appliance string) (any, error) { return nil, errors.New("no appliance is built in") }

// DrawAll draws a whole circuit.
func DrawAll(appliance string) (string, error) { return "", errNoDrawing }

func (h *Hub) drawing(all bool) (any, error) { return nil, errNoDrawing }
