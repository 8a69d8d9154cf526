package main

import (
	"bytes"
	"runtime"
	"testing"
)

// Two runs give the same weights, whatever works beside them.
func TestSameWeights(t *testing.T) {
	if testing.Short() {
		t.Skip("short: training is left out")
	}
	quiet := func(string, ...any) {}
	once := func() []byte {
		n, err := train(6, 2, 5, "", quiet)
		if err != nil {
			t.Fatal(err)
		}
		return n.Bytes()
	}
	a := once()
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if !bytes.Equal(a, once()) {
		t.Error("two runs give two networks")
	}
	if bytes.Equal(a, make([]byte, len(a))) {
		t.Error("nothing was learnt")
	}
}
