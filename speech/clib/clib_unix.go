//go:build !windows

// Package clib loads C libraries at run time, so that a program without them still runs.
package clib

import "github.com/ebitengine/purego"

// Open loads a library: a file, or a bare name on Android.
func Open(path string) (uintptr, error) {
	return purego.Dlopen(path, purego.RTLD_NOW|purego.RTLD_LOCAL)
}

// Symbol is the address of a function in it.
func Symbol(lib uintptr, name string) (uintptr, error) { return purego.Dlsym(lib, name) }
