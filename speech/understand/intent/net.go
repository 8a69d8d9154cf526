// Package intent tells what kind of thing somebody says: a danger, a value, a command, talk. It is a small network over word
// vectors, beside hashed word pairs and what the span grammar found; speech/lab/trainintent trains it.
package intent

import (
	"bytes"
	_ "embed"
	"encoding/binary"
	"fmt"
	"math"
	"readback/core/utterance"
	"sync"
)

// The outputs, in the order of the weights. Of the first four lists one holds each; of the last, any.
var (
	Acts     = []string{"danger", "maybe", "talk", "value", "state", "command", "story"}
	Hazards  = []string{"gas", "co", "fire", "blast", "shock", "injury", "water", "collapse", "child", "leave"}
	Commands = []string{"repeat", "wait", "resume", "undo", "cannot", "refuse", "dontknow", "done", "why", "where", "how", "louder", "slower", "stop",
		"cost", "sorry", "yes", "no"}
	States   = []string{"over", "jumping", "blank", "lowbat", "wrongmode", "beep", "nobeep"}
	Symptoms = utterance.Symptoms
)

// Where each list begins among the outputs.
const (
	AtAct     = 0
	AtHazard  = 7
	AtCommand = 17
	AtState   = 35
	AtSymptom = 42
	Outputs   = 58
)

// Sizes of the network.
const (
	Own      = 14 // dimensions that are learnt beside those of the word vector
	In       = Dim + Own
	Words    = 4096 // buckets of the learnt ones
	Filters  = 64
	Window   = 3
	Pairs    = 4096 // buckets of words and word pairs
	Flags    = 48   // what the span grammar tells
	Pooled   = 2 * Filters
	HeadSize = Pooled + Flags + 1
)

// Net is the network. The slices are matrices, row by row.
type Net struct {
	Own  []float32 // Words × Own
	C1   []float32 // Filters × (Window·In), then Filters biases
	C2   []float32 // Filters × (Window·Filters), then Filters biases
	Head []float32 // Outputs × HeadSize
	Pair []float32 // Pairs × Outputs
}

// NewNet makes a network of zeros.
func NewNet() *Net {
	return &Net{make([]float32, Words*Own), make([]float32, Filters*(Window*In+1)), make([]float32, Filters*(Window*Filters+1)),
		make([]float32, Outputs*HeadSize), make([]float32, Pairs*Outputs)}
}

// tensors lists the matrices with the length of a row.
func (n *Net) tensors() []struct {
	data []float32
	row  int
} {
	return []struct {
		data []float32
		row  int
	}{{n.Own, Own}, {n.C1[:Filters*Window*In], Window * In}, {n.C1[Filters*Window*In:], Filters}, {n.C2[:Filters*Window*Filters], Window * Filters},
		{n.C2[Filters*Window*Filters:], Filters}, {n.Head, HeadSize}, {n.Pair, Outputs}}
}

// Input is an utterance as the network takes it.
type Input struct {
	X     []float32 // (n+2) × In, a row of zeros before and after
	N     int
	Own   []int // bucket of each word
	Pairs []int // buckets, each once
	Flags [Flags]float32
}

// Encode makes the input of words, with the flags of the span grammar. class gives what stands for a word in pairs: all numbers are one. roles is what the
// words that tell who, when, whether and what are, in order; pairs and triples of them count too, whatever stands between.
func Encode(words []string, class func(string) string, roles []string, flags [Flags]float32) (*Input, error) {
	v, err := loadVectors()
	if err != nil {
		return nil, err
	}
	in := &Input{X: make([]float32, (len(words)+2)*In), N: len(words), Own: make([]int, len(words)), Flags: flags}
	seen := map[int]bool{}
	add := func(parts ...string) {
		h := uint32(2166136261)
		for _, p := range parts {
			for i := range len(p) {
				h = (h ^ uint32(p[i])) * 16777619
			}
			h = (h ^ ' ') * 16777619
		}
		if b := int(h>>3) % Pairs; !seen[b] {
			seen[b] = true
			in.Pairs = append(in.Pairs, b)
		}
	}
	two, one := "", ""
	for t, w := range words {
		if i := v.at(w); i >= 0 {
			for d := range Dim {
				in.X[(t+1)*In+d] = v.scale * float32(v.data[i*Dim+d])
			}
		}
		in.Own[t] = int(fnv(w) % Words)
		c := class(w)
		add(c)
		if c != one || c == "" {
			add(one, c)
		}
		add(two, one, c)
		two, one = one, c
	}
	add(one, "")
	two, one = "^", "^"
	for _, c := range append(roles, "$") {
		add("~", one, c)
		add("~", two, one, c)
		two, one = one, c
	}
	return in, nil
}

func fnv(s string) uint32 {
	h := uint32(2166136261)
	for i := range len(s) {
		h = (h ^ uint32(s[i])) * 16777619
	}
	return h
}

// Work holds what a pass through the network leaves behind; training goes back through it.
type Work struct {
	X, H1, H2 []float32 // H1 has a row of zeros before and after
	Pool      [Pooled]float32
	Arg       [Filters]int
	Out       [Outputs]float32
}

// Forward works out the outputs, before the softmax. keep, when not nil, is what each pooled value is multiplied with.
func (n *Net) Forward(in *Input, w *Work, keep *[Pooled]float32) {
	T := in.N
	w.X = append(w.X[:0], in.X...)
	for t := range T {
		copy(w.X[(t+1)*In+Dim:(t+2)*In], n.Own[in.Own[t]*Own:(in.Own[t]+1)*Own])
	}
	w.H1 = zeros(w.H1, (T+2)*Filters)
	w.H2 = zeros(w.H2, T*Filters)
	conv(w.H1[Filters:], w.X, n.C1, T, In)
	conv(w.H2, w.H1, n.C2, T, Filters)
	for f := range Filters {
		best, arg, sum := float32(0), 0, float32(0)
		for t := range T {
			x := w.H2[t*Filters+f] + w.H1[(t+1)*Filters+f]
			sum += x
			if x > best {
				best, arg = x, t
			}
		}
		w.Pool[f], w.Arg[f] = best, arg
		w.Pool[Filters+f] = sum / float32(max(1, T))
	}
	if keep != nil {
		for i := range w.Pool {
			w.Pool[i] *= keep[i]
		}
	}
	share := float32(1 / math.Sqrt(float64(max(1, len(in.Pairs)))))
	for o := range Outputs {
		row := n.Head[o*HeadSize : (o+1)*HeadSize]
		s := row[HeadSize-1] + dot(row[:Pooled], w.Pool[:])
		for i, x := range in.Flags {
			if x != 0 {
				s += row[Pooled+i] * x
			}
		}
		w.Out[o] = s
	}
	for _, b := range in.Pairs {
		row := n.Pair[b*Outputs : (b+1)*Outputs]
		for o := range Outputs {
			w.Out[o] += share * row[o]
		}
	}
}

func zeros(s []float32, n int) []float32 {
	if cap(s) < n {
		return make([]float32, n)
	}
	s = s[:n]
	clear(s)
	return s
}

// conv slides Window rows of x over the filters and drops what is below zero.
func conv(out, x, weights []float32, T, width int) {
	size := Window * width
	bias := weights[Filters*size:]
	for t := range T {
		win := x[t*width : t*width+size]
		for f := range Filters {
			if s := bias[f] + dot(weights[f*size:(f+1)*size], win); s > 0 {
				out[t*Filters+f] = s
			}
		}
	}
}

func dot(a, b []float32) float32 {
	b = b[:len(a)]
	var s0, s1, s2, s3 float32
	i := 0
	for ; i+4 <= len(a); i += 4 {
		s0 += a[i] * b[i]
		s1 += a[i+1] * b[i+1]
		s2 += a[i+2] * b[i+2]
		s3 += a[i+3] * b[i+3]
	}
	for ; i < len(a); i++ {
		s0 += a[i] * b[i]
	}
	return s0 + s1 + s2 + s3
}

// Softmax turns outputs from at on, n of them, into probabilities.
func Softmax(out []float32) []float64 {
	most := math.Inf(-1)
	for _, x := range out {
		most = math.Max(most, float64(x))
	}
	p, sum := make([]float64, len(out)), 0.0
	for i, x := range out {
		p[i] = math.Exp(float64(x) - most)
		sum += p[i]
	}
	for i := range p {
		p[i] /= sum
	}
	return p
}

const magic = "intent 1\n"

// Pack writes the network with a byte a weight and a scale for each row.
func (n *Net) Pack() []byte {
	b := bytes.NewBufferString(magic)
	for _, t := range n.tensors() {
		for i := 0; i < len(t.data); i += t.row {
			most := float32(0)
			for _, x := range t.data[i : i+t.row] {
				most = max(most, x, -x)
			}
			scale := most / 127
			_ = binary.Write(b, binary.LittleEndian, scale) // a buffer takes everything
			for _, x := range t.data[i : i+t.row] {
				q := 0.0
				if scale > 0 {
					q = math.Round(float64(x / scale))
				}
				b.WriteByte(byte(int8(q)))
			}
		}
	}
	return b.Bytes()
}

// Unpack reads what Pack wrote.
func Unpack(b []byte) (*Net, error) {
	b, ok := bytes.CutPrefix(b, []byte(magic))
	if !ok {
		return nil, fmt.Errorf("intent: the weights do not begin with %q", magic)
	}
	n, at := NewNet(), 0
	for i, t := range n.tensors() {
		for r := 0; r < len(t.data); r += t.row {
			if len(b)-at < 4+t.row {
				return nil, fmt.Errorf("intent: the weights end in row %d of matrix %d", r/t.row, i)
			}
			scale := math.Float32frombits(binary.LittleEndian.Uint32(b[at:]))
			at += 4
			for k := range t.row {
				t.data[r+k] = scale * float32(int8(b[at+k]))
			}
			at += t.row
		}
	}
	if at != len(b) {
		return nil, fmt.Errorf("intent: %d bytes too many behind the weights", len(b)-at)
	}
	return n, nil
}

//go:embed weights.bin
var weightFile []byte

// Load returns the networks that come with the program: their outputs are averaged.
var Load = sync.OnceValues(func() ([]*Net, error) { return unpackAll(weightFile) })

// PackAll writes several networks.
func PackAll(nets []*Net) []byte {
	var b []byte
	for _, n := range nets {
		b = append(b, n.Pack()...)
	}
	return b
}

// unpackAll reads what PackAll wrote, one network at least.
func unpackAll(b []byte) ([]*Net, error) {
	size := len(NewNet().Pack())
	if len(b) == 0 || len(b)%size != 0 {
		return nil, fmt.Errorf("intent: %d bytes of weights are not whole networks of %d", len(b), size)
	}
	var out []*Net
	for ; len(b) > 0; b = b[size:] {
		n, err := Unpack(b[:size])
		if err != nil {
			return nil, err
		}
		out = append(out, n)
	}
	return out, nil
}

// Size is how many bytes the weights and the word vectors take in the program.
func Size() int { return len(weightFile) + len(vectorFile) }
