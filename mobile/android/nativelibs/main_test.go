package main

import (
	"slices"
	"strings"
	"testing"
)

const dump = `
Class #3            -
  Class descriptor  : 'Lorg/readback/mobile/Core;'
  Direct methods    -
    #0              : (in Lorg/readback/mobile/Core;)
      name          : '__New'
      type          : '()I'
      access        : 0x010a (PRIVATE STATIC NATIVE)
    #1              : (in Lorg/readback/mobile/Core;)
      name          : 'plain'
      access        : 0x0001 (PUBLIC)
  Virtual methods   -
    #0              : (in Lorg/readback/mobile/Core;)
      name          : 'feed'
      access        : 0x0101 (PUBLIC NATIVE)
Class #4            -
  Class descriptor  : 'Lgo/Seq$Ref;'
      name          : 'é'
      access        : 0x0101 (PUBLIC NATIVE)
`

func TestNativeMethods(t *testing.T) {
	got, err := nativeMethods(strings.NewReader(dump))
	want := []string{"Java_go_Seq_00024Ref__000e9", "Java_org_readback_mobile_Core__1_1New", "Java_org_readback_mobile_Core_feed"}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("%v, %v; want %v", got, err, want)
	}
}

func TestWrongUseIsAnError(t *testing.T) {
	for _, args := range [][]string{nil, {"what"}, {"check"}, {"check", "-abi", "mips", "x"}, {"check", "/nowhere.so"}, {"jni", "a"}, {"stubs"}} {
		if err := run(args, &strings.Builder{}); err == nil {
			t.Errorf("%q is taken", args)
		}
	}
}

func FuzzDump(f *testing.F) {
	f.Add(dump)
	f.Fuzz(func(t *testing.T, text string) {
		got, err := nativeMethods(strings.NewReader(text))
		if err == nil && !slices.IsSorted(got) {
			t.Errorf("%v is not in order", got)
		}
	})
}
