package flows_test

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"readback/core/appliance"
	"readback/flows"
)

// FuzzLoad: whatever a file holds, loading it ends in a model or in problems with places, and a model can be compiled and simulated.
func FuzzLoad(f *testing.F) {
	src, err := os.ReadFile("../testdata/flows/tiny.hcl")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(src)
	for _, a := range brokenFiles(f) {
		for _, file := range a.Files {
			if strings.HasSuffix(file.Name, ".hcl") {
				f.Add(file.Data)
			}
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		m, err := flows.Load(fstest.MapFS{"x.hcl": {Data: src}}, "x.hcl")
		if err != nil {
			ps, ok := err.(flows.Problems)
			if !ok {
				t.Fatalf("%T: %v", err, err)
			}
			for _, p := range ps {
				if p.Line < 1 || p.Column < 1 || p.Text == "" {
					t.Errorf("a problem without a place: %+v", p)
				}
			}
			return
		}
		e, err := appliance.Compile(m)
		if err != nil {
			t.Fatalf("loads and does not compile: %v\n%s", err, src)
		}
		if len(m.Modes) < 50 {
			e.Table(e.Singles())
		}
	})
}

// TestDamaged cuts the small example at many places and bends bytes of it: never a panic, always a place.
func TestDamaged(t *testing.T) {
	src, err := os.ReadFile("../testdata/flows/tiny.hcl")
	if err != nil {
		t.Fatal(err)
	}
	try := func(b []byte) {
		m, err := flows.Load(fstest.MapFS{"x.hcl": {Data: b}}, "x.hcl")
		if err == nil {
			if _, err := appliance.Compile(m); err != nil {
				t.Errorf("loads and does not compile: %v", err)
			}
			return
		}
		if ps, ok := err.(flows.Problems); !ok || len(ps) == 0 || ps[0].Line < 1 {
			t.Errorf("%T without a place", err)
		}
	}
	for i := 0; i < len(src); i += 997 {
		try(src[:i])
		bent := append([]byte(nil), src...)
		bent[i] ^= 0x11
		try(bent)
	}
}

// TestDeep: files of nothing but brackets, signs or chains end in a problem, not in a lost stack.
func TestDeep(t *testing.T) {
	for _, unit := range []string{"(", "!", "[", "{", "-", "a?", "1+", "\"${", "a {\n", "f("} {
		src := []byte("signal \"s\" {\n  is = " + strings.Repeat(unit, 20_000))
		if _, err := flows.Load(fstest.MapFS{"x.hcl": {Data: src}}, "x.hcl"); err == nil {
			t.Errorf("%q repeated loads", unit)
		}
	}
	if _, err := flows.Load(fstest.MapFS{"x.hcl": {Data: make([]byte, 5<<20)}}, "x.hcl"); err == nil {
		t.Error("five megabytes of nothing load")
	}
}
