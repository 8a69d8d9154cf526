package ui

import (
	"errors"

	"readback/core/session"
)

func newMachine(session.Begin) (Machine, error) {
	return nil, errors.New("no machine is built in")
}

func (h *Hub) drawing(all bool) (any, error) { return nil, errNoDrawing }
