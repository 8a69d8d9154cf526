//go:build !windows

package app

import (
	"os"
	"syscall"
)

// lockFile takes the file for this process until it ends, however that comes about.
func lockFile(name string) (*os.File, error) {
	f, err := os.OpenFile(name, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		_ = f.Close() // nothing was written
		if err == syscall.EWOULDBLOCK {
			return nil, ErrRunning
		}
		return nil, err
	}
	return f, nil
}
