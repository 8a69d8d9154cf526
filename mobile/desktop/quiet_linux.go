//go:build linux && sound

package main

import (
	"os"
	"runtime/debug"
	"syscall"
)

// quiet keeps what C libraries write of their own accord, such as the sound system on a machine without a sound card, off the person's
// screen: file 2 leads to nowhere, and the program's own errors, a crash among them, go to a copy of what it was.
func quiet() (restore func()) {
	nothing := func() {}
	copied, err := syscall.Dup(2)
	if err != nil {
		return nothing
	}
	null, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	if err != nil {
		return nothing
	}
	defer null.Close()
	syscall.CloseOnExec(copied)
	mine := os.NewFile(uintptr(copied), "/dev/stderr")
	if err := debug.SetCrashOutput(mine, debug.CrashOptions{}); err != nil {
		return nothing
	}
	if err := syscall.Dup3(int(null.Fd()), 2, 0); err != nil {
		return nothing
	}
	was := os.Stderr
	os.Stderr = mine
	return func() {
		_ = syscall.Dup3(copied, 2, 0)
		os.Stderr = was
	}
}
