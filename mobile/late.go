package mobile

import (
	"errors"
	"sync"

	"readback/mobile/ui"
)

// lateEar lets the core open before the model is unpacked: opening the ear waits until the shell says where the model is.
type lateEar struct {
	once         sync.Once
	known        chan struct{}
	library, dir string
	why          string
}

func newLateEar() *lateEar { return &lateEar{known: make(chan struct{})} }

func (l *lateEar) set(library, dir, why string) {
	l.once.Do(func() {
		l.library, l.dir, l.why = library, dir, why
		close(l.known)
	})
}

// open runs in the background of the hub.
func (l *lateEar) open(to ui.Listener) (ui.Ear, error) {
	<-l.known
	if l.dir == "" {
		return nil, errors.New(l.why)
	}
	return openEar(l.library, l.dir, to)
}

func openEar(library, dir string, to ui.Listener) (ui.Ear, error) {
	return nil, errors.New("speech is not part of this build")
}
