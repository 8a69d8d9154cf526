package intent

import (
	"bytes"
	_ "embed"
	"encoding/binary"
	"fmt"
	"math"
	"strings"
	"sync"
)

// Dim is the length of a word vector.
const Dim = 50

// vectors.bin holds general English word vectors (GloVe 6B, 50 dimensions, Public Domain Dedication and License 1.0) of common words, written by
// speech/lab/vectors: the number of words, the words one a line, one scale, then a byte per dimension.
//
//go:embed vectors.bin
var vectorFile []byte

type vectors struct {
	index map[string]int
	scale float32
	data  []int8
}

var loadVectors = sync.OnceValues(func() (*vectors, error) { return readVectors(vectorFile) })

func readVectors(b []byte) (*vectors, error) {
	if len(b) < 8 {
		return nil, fmt.Errorf("intent: word vectors: %d bytes are no file", len(b))
	}
	n, size := int(binary.LittleEndian.Uint32(b)), int(binary.LittleEndian.Uint32(b[4:]))
	if b = b[8:]; len(b) != size+4+n*Dim {
		return nil, fmt.Errorf("intent: word vectors: %d bytes, want %d for %d words", len(b), size+4+n*Dim, n)
	}
	v := &vectors{index: make(map[string]int, n)}
	for w := range bytes.SplitSeq(b[:size], []byte{'\n'}) {
		v.index[string(w)] = len(v.index)
	}
	if len(v.index) != n {
		return nil, fmt.Errorf("intent: word vectors: %d words listed, want %d", len(v.index), n)
	}
	v.scale = math.Float32frombits(binary.LittleEndian.Uint32(b[size:]))
	v.data = make([]int8, n*Dim)
	for i, x := range b[size+4:] {
		v.data[i] = int8(x)
	}
	return v, nil
}

// at returns the place of a word, or of what it is an inflection of; -1 when neither is known.
func (v *vectors) at(w string) int {
	if i, ok := v.index[w]; ok {
		return i
	}
	for _, s := range [][2]string{{"s", ""}, {"es", ""}, {"ed", ""}, {"ed", "e"}, {"ing", ""}, {"ing", "e"}, {"y", ""}, {"ly", ""}, {"er", ""}, {"ier", "y"}, {"ies", "y"}, {"d", ""}} {
		head, ok := strings.CutSuffix(w, s[0])
		if !ok || len(head) < 3 {
			continue
		}
		if i, ok := v.index[head+s[1]]; ok {
			return i
		}
		if n := len(head); head[n-1] == head[n-2] && (s[0] == "ed" || s[0] == "ing") { // "zapped"
			if i, ok := v.index[head[:n-1]]; ok {
				return i
			}
		}
	}
	return -1
}
