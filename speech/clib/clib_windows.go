// Package clib loads C libraries at run time, so that a program without them still runs.
package clib

import "syscall"

// Open loads a library.
func Open(path string) (uintptr, error) {
	h, err := syscall.LoadLibrary(path)
	return uintptr(h), err
}

// Symbol is the address of a function in it.
func Symbol(lib uintptr, name string) (uintptr, error) {
	return syscall.GetProcAddress(syscall.Handle(lib), name)
}
