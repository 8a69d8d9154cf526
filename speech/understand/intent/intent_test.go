package intent_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"readback/speech/understand/intent"
)

func TestSpans(t *testing.T) {
	for _, tt := range []struct{ say, want string }{
		{"I don't know, it's 26.4 volts", "i do n't know |it 's 26.4 volts"},
		{"cant say; gonna wait", "ca n't say |going to wait"},
		{"twenty six point... four", "twenty six point four"},
		{"120v", "120 v"},
		{"?!,", ""},
	} {
		w, after := intent.Spans(tt.say)
		for i := range w {
			if after[i] {
				w[i] = "|" + w[i]
			}
		}
		if got := strings.Join(w, " "); got != tt.want {
			t.Errorf("%q is %q, want %q", tt.say, got, tt.want)
		}
	}
	if w, after := intent.Spans(strings.Repeat("word ", 1000)); len(w) != intent.Longest || len(after) != len(w) {
		t.Errorf("%d words, %d marks", len(w), len(after))
	}
}

func TestPack(t *testing.T) {
	n, r := intent.NewNet(), rand.New(rand.NewPCG(1, 1))
	for _, m := range [][]float32{n.Own, n.C1, n.C2, n.Head, n.Pair} {
		for i := range m {
			m[i] = float32(r.NormFloat64())
		}
	}
	b := n.Pack()
	again, err := intent.Unpack(b)
	if err != nil {
		t.Fatal(err)
	}
	for i, x := range n.Head {
		if d := x - again.Head[i]; d > 0.03 || d < -0.03 {
			t.Fatalf("weight %d: %f is %f", i, x, again.Head[i])
		}
	}
	if !slices.Equal(again.Pack(), b) {
		t.Error("packed again it differs")
	}
	for _, bad := range [][]byte{nil, b[:len(b)-1], append(slices.Clone(b), 0), []byte("intent 2")} {
		if _, err := intent.Unpack(bad); err == nil {
			t.Errorf("%d bytes: no error", len(bad))
		}
	}
}

// What ships loads, and stays within two megabytes.
func TestShipped(t *testing.T) {
	nets, err := intent.Load()
	if err != nil {
		t.Fatal(err)
	}
	in, err := intent.Encode(intent.Tokens("i smell gas"), func(w string) string { return w }, nil, [intent.Flags]float32{})
	if err != nil {
		t.Fatal(err)
	}
	var w intent.Work
	nets[0].Forward(in, &w, nil)
	if p := intent.Softmax(w.Out[:intent.AtHazard]); p[0]+p[1] < 0.5 { // a danger or the doubt of one
		t.Errorf("a danger is one with %.2f", p[0])
	}
	if size := intent.Size(); size > 2<<20 {
		t.Errorf("%d bytes", size)
	}
}

func BenchmarkForward(b *testing.B) {
	nets, err := intent.Load()
	if err != nil {
		b.Fatal(err)
	}
	in, err := intent.Encode(intent.Tokens("okay so i looked at the thing on the left and it says about eighteen"), func(w string) string { return w }, nil, [intent.Flags]float32{})
	if err != nil {
		b.Fatal(err)
	}
	var w intent.Work
	for b.Loop() {
		nets[0].Forward(in, &w, nil)
	}
}
