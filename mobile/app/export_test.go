package app

import (
	"errors"
	"sync/atomic"
)

// StripJPEG is stripJPEG.
var StripJPEG = stripJPEG

// Disk is a disk that can be full.
type Disk struct {
	appender
	full atomic.Bool
}

func (d *Disk) Write(p []byte) (int, error) {
	if !d.full.Load() {
		return d.appender.Write(p)
	}
	n, err := d.appender.Write(p[:len(p)/2]) // a full disk takes half a line
	return n, errors.Join(err, errors.New("no space left on device"))
}

// Free makes room again.
func (d *Disk) Free() { d.full.Store(false) }

// FillDisk fills the disk under the open job's journal.
func FillDisk(h *Hub) *Disk {
	h.mu.Lock()
	defer h.mu.Unlock()
	d := &Disk{appender: h.job.file.f}
	d.full.Store(true)
	h.job.file.f = d
	return d
}

// MuLawFile is muLawFile.
var MuLawFile = muLawFile
