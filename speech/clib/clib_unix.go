//go:build !windows

// Package clib loads C libraries at run time, so that a program without them still runs.
package clib

import (
	"runtime"
	"sync"

	"github.com/ebitengine/purego"
)

// Open loads a library: a file, or a bare name on Android.
func Open(path string) (uintptr, error) {
	onePool()
	return purego.Dlopen(path, purego.RTLD_NOW|purego.RTLD_LOCAL)
}

// Symbol is the address of a function in it.
func Symbol(lib uintptr, name string) (uintptr, error) { return purego.Dlsym(lib, name) }

// onePool makes the GNU C library keep one pool of memory: it makes one for each thread that asks, a call from Go may come from any of them, and
// each pool keeps the largest saying's memory for ever. Where mallopt is another one's, or is not there, nothing is changed.
var onePool = sync.OnceFunc(func() {
	const arenaMax = -8 // M_ARENA_MAX, malloc.h
	if runtime.GOOS != "linux" {
		return
	}
	if _, err := purego.Dlsym(purego.RTLD_DEFAULT, "gnu_get_libc_version"); err != nil {
		return
	}
	if set, err := purego.Dlsym(purego.RTLD_DEFAULT, "mallopt"); err == nil {
		most := arenaMax
		purego.SyscallN(set, uintptr(most), 1)
	}
})
