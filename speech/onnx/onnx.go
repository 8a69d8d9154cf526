//go:build unix

// Package onnx runs networks with ONNX Runtime (MIT), a shared library that is loaded at run time: the part of its C interface that is used here.
package onnx

import (
	"errors"
	"fmt"
	"os"
	"runtime"
	"syscall"
	"unsafe"

	"github.com/ebitengine/purego"

	"readback/speech/clib"
)

// apiVersion is the version of the runtime's table of functions that is asked for; a later library still has it.
const apiVersion = 16

// Places of functions in the runtime's table, which only ever grows at its end (onnxruntime_c_api.h, struct OrtApi).
const (
	fnErrorMessage  = 2
	fnCreateEnv     = 3
	fnFromBytes     = 8
	fnRun           = 9
	fnCreateOptions = 10
	fnNoMemPattern  = 17
	fnNoArena       = 19
	fnThreads       = 24
	fnTensorOver    = 49
	fnTensorData    = 51
	fnTensorInfo    = 65
	fnCPUMemory     = 69
	fnDimensions    = 62
	fnDimCount      = 61
	fnFreeEnv       = 92
	fnFreeStatus    = 93
	fnFreeMemory    = 94
	fnFreeSession   = 95
	fnFreeValue     = 96
	fnFreeInfo      = 99
	fnFreeOptions   = 100
	fnConfig        = 130
)

// Kinds of tensor elements, from the same header.
const (
	kindFloat = 1
	kindInt64 = 7
	kindBool  = 9
)

// Runtime is the loaded library: the part of its C interface that is used.
type Runtime struct {
	table       []uintptr
	env, memory uintptr
}

// ErrLibrary: the file is a library, but not this one.
var ErrLibrary = errors.New("not the library this program was made for")

// Load loads the library.
func Load(path string) (*Runtime, error) {
	h, err := clib.Open(path)
	if err != nil {
		return nil, fmt.Errorf("onnx: opening the runtime: %w", err)
	}
	addr, err := clib.Symbol(h, "OrtGetApiBase")
	if err != nil || addr == 0 {
		return nil, fmt.Errorf("onnx: %s has no OrtGetApiBase: %w", path, errors.Join(err, ErrLibrary))
	}
	var base func() *[2]uintptr
	purego.RegisterFunc(&base, addr)
	var api func(version uint32) *[fnConfig + 1]uintptr
	purego.RegisterFunc(&api, base()[0])
	t := api(apiVersion)
	if t == nil {
		return nil, fmt.Errorf("onnx: %s is too old: %w", path, ErrLibrary)
	}
	o := &Runtime{table: t[:]}
	name := cString("readback")
	if err := o.call(fnCreateEnv, 4, uintptr(unsafe.Pointer(&name[0])), uintptr(unsafe.Pointer(&o.env))); err != nil { // 4: what fails is told by its status, nothing is written beside
		return nil, err
	}
	return o, o.call(fnCPUMemory, 0, 0, uintptr(unsafe.Pointer(&o.memory)))
}

// call calls one function of the table that returns a status.
//
//go:uintptrescapes
func (o *Runtime) call(fn int, args ...uintptr) error {
	status, _, _ := purego.SyscallN(o.table[fn], args...)
	if status == 0 {
		return nil
	}
	text, _, _ := purego.SyscallN(o.table[fnErrorMessage], status)
	err := fmt.Errorf("onnx: %s", goString(text))
	o.free(fnFreeStatus, status)
	return err
}

func (o *Runtime) free(fn int, what uintptr) {
	if what != 0 {
		purego.SyscallN(o.table[fn], what)
	}
}

func cString(s string) []byte { return append([]byte(s), 0) }

// goString copies a string out of C, 4 KiB at most.
func goString(p uintptr) string {
	if p == 0 {
		return ""
	}
	b := unsafe.Slice(*(**byte)(unsafe.Pointer(&p)), 4096)
	for i, c := range b {
		if c == 0 {
			return string(b[:i])
		}
	}
	return string(b)
}

// Session is one loaded network. Outputs come in the order they are named in.
type Session struct {
	o       *Runtime
	id      uintptr
	in, out []*byte
	file    []byte // mapped
}

// settings make the runtime use the mapped file where it is, instead of two copies.
var settings = []string{"session.use_ort_model_bytes_directly", "session.use_ort_model_bytes_for_initializers"}

// Open loads a network with the names of its inputs and outputs.
func (o *Runtime) Open(path string, in, out []string) (*Session, error) {
	var options uintptr
	if err := o.call(fnCreateOptions, uintptr(unsafe.Pointer(&options))); err != nil {
		return nil, err
	}
	defer o.free(fnFreeOptions, options)
	// One thread, and no arena: the arena keeps the largest saying's memory for ever.
	for _, set := range []struct{ fn, value int }{{fnThreads, 1}, {fnNoArena, -1}, {fnNoMemPattern, -1}} {
		args := []uintptr{options}
		if set.value >= 0 {
			args = append(args, uintptr(set.value))
		}
		if err := o.call(set.fn, args...); err != nil {
			return nil, err
		}
	}
	for _, k := range settings {
		key, one := cString(k), cString("1")
		if err := o.call(fnConfig, options, uintptr(unsafe.Pointer(&key[0])), uintptr(unsafe.Pointer(&one[0]))); err != nil {
			return nil, err
		}
	}
	s := &Session{o: o}
	for _, n := range in {
		s.in = append(s.in, &cString(n)[0])
	}
	for _, n := range out {
		s.out = append(s.out, &cString(n)[0])
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	st, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if s.file, err = syscall.Mmap(int(f.Fd()), 0, int(st.Size()), syscall.PROT_READ, syscall.MAP_PRIVATE); err != nil {
		return nil, err
	}
	if err := o.call(fnFromBytes, o.env, uintptr(unsafe.Pointer(&s.file[0])), uintptr(len(s.file)), options, uintptr(unsafe.Pointer(&s.id))); err != nil {
		_ = syscall.Munmap(s.file) // the first error counts
		return nil, err
	}
	// The runtime keeps the weights in an order of its own; what it read of the file need not stay in memory.
	return s, syscall.Madvise(s.file, syscall.MADV_DONTNEED)
}

// Outputs is how many outputs the network was opened with.
func (s *Session) Outputs() int { return len(s.out) }

// Close frees the network.
func (s *Session) Close() {
	s.o.free(fnFreeSession, s.id)
	_ = syscall.Munmap(s.file) // it is mapped
}

// Tensor is the input of a network: its shape and its elements, one of the three.
type Tensor struct {
	Shape  []int64
	Floats []float32
	Ints   []int64
	Bools  []bool
}

// Result is an output of a network, in the runtime's own memory until Free.
type Result struct {
	Shape []int64
	Data  []float32
	value uintptr
}

// Free gives outputs back to the runtime.
func (s *Session) Free(rs []Result) {
	for _, r := range rs {
		s.o.free(fnFreeValue, r.value)
	}
}

// Run feeds the inputs, in the order of their names, and gives the first n outputs.
func (s *Session) Run(n int, in ...Tensor) ([]Result, error) {
	var pin runtime.Pinner
	defer pin.Unpin()
	none := new([1]float32)
	values := make([]uintptr, len(in))
	defer func() {
		for _, v := range values {
			s.o.free(fnFreeValue, v)
		}
	}()
	for i := range in {
		t := &in[i]
		at, size, kind := unsafe.Pointer(none), 0, kindFloat
		switch {
		case len(t.Floats) > 0:
			at, size = unsafe.Pointer(&t.Floats[0]), 4*len(t.Floats)
		case len(t.Ints) > 0:
			at, size, kind = unsafe.Pointer(&t.Ints[0]), 8*len(t.Ints), kindInt64
		case len(t.Bools) > 0:
			at, size, kind = unsafe.Pointer(&t.Bools[0]), len(t.Bools), kindBool
		}
		pin.Pin(at)
		if err := s.o.call(fnTensorOver, s.o.memory, uintptr(at), uintptr(size), uintptr(unsafe.Pointer(&t.Shape[0])), uintptr(len(t.Shape)), uintptr(kind), uintptr(unsafe.Pointer(&values[i]))); err != nil {
			return nil, err
		}
	}
	outs := make([]uintptr, n)
	if err := s.o.call(fnRun, s.id, 0, uintptr(unsafe.Pointer(&s.in[0])), uintptr(unsafe.Pointer(&values[0])), uintptr(len(values)),
		uintptr(unsafe.Pointer(&s.out[0])), uintptr(len(outs)), uintptr(unsafe.Pointer(&outs[0]))); err != nil {
		return nil, err
	}
	rs := make([]Result, len(outs))
	for i, v := range outs {
		rs[i].value = v
	}
	for i := range rs {
		if err := s.o.look(&rs[i]); err != nil {
			s.Free(rs)
			return nil, err
		}
	}
	return rs, nil
}

// look finds the shape and the elements of an output.
func (o *Runtime) look(r *Result) error {
	var info, n uintptr
	if err := o.call(fnTensorInfo, r.value, uintptr(unsafe.Pointer(&info))); err != nil {
		return err
	}
	defer o.free(fnFreeInfo, info)
	if err := o.call(fnDimCount, info, uintptr(unsafe.Pointer(&n))); err != nil {
		return err
	}
	r.Shape = make([]int64, n)
	if err := o.call(fnDimensions, info, uintptr(unsafe.Pointer(&r.Shape[0])), n); err != nil {
		return err
	}
	size := 1
	for _, d := range r.Shape {
		size *= int(d)
	}
	var at *float32
	if err := o.call(fnTensorData, r.value, uintptr(unsafe.Pointer(&at))); err != nil {
		return err
	}
	if size > 0 {
		r.Data = unsafe.Slice(at, size)
	}
	return nil
}
