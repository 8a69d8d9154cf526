package mobile

import (
	"errors"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"

	"readback/speech/model"
)

// lateModel lets the core open before the model is unpacked: finding it waits until the shell says where it is.
type lateModel struct {
	once  sync.Once
	known chan struct{}
	files model.Files
	why   string
	rest  atomic.Bool // the judge's opinions on readings rest
}

func newLateModel() *lateModel { return &lateModel{known: make(chan struct{})} }

func (l *lateModel) set(library, dir, why string) {
	l.once.Do(func() {
		l.files, l.why = model.Files{Library: library, Model: dir}, why
		// The packing puts the rescorer's networks into the model's folder when it has the rescorer's library (mobile/android/pack.sh).
		if nets := filepath.Join(dir, "judge"); dir != "" {
			if _, err := os.Stat(nets); err == nil {
				l.files.Rescorer = model.Rescorer{Runtime: "libonnxruntime.so", Model: nets, Rest: &l.rest}
			}
		}
		close(l.known)
	})
}

// locate runs in the background of the hub.
func (l *lateModel) locate() (model.Files, error) {
	<-l.known
	if l.files.Model == "" {
		return model.Files{}, errors.New(l.why)
	}
	return l.files, nil
}
