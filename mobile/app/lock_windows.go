package app

import (
	"os"
	"syscall"
)

// lockFile takes the file for this process until it ends, however that comes about: it is opened so that nobody else can.
func lockFile(name string) (*os.File, error) {
	p, err := syscall.UTF16PtrFromString(name)
	if err != nil {
		return nil, err
	}
	const sharingViolation = syscall.Errno(32)
	h, err := syscall.CreateFile(p, syscall.GENERIC_READ|syscall.GENERIC_WRITE, 0, nil, syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_NORMAL, 0)
	if err == sharingViolation {
		return nil, ErrRunning
	}
	if err != nil {
		return nil, err
	}
	return os.NewFile(uintptr(h), name), nil
}
