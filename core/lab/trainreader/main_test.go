package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// Two runs draw the same samples, whatever works beside them, and there is something in them.
func TestSameSamples(t *testing.T) {
	once := func() [][]byte {
		dir := t.TempDir()
		if err := drawSamples(dir, 1, 3, 5, t.Logf); err != nil {
			t.Fatal(err)
		}
		var out [][]byte
		for _, name := range []string{"find-000.in", "find-000.want", "row-000.in", "row-000.want", "align-000.in", "align-000.want"} {
			b, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil {
				t.Fatal(err)
			}
			if bytes.Count(b, b[:1]) == len(b) {
				t.Errorf("%s holds one value", name)
			}
			out = append(out, b)
		}
		return out
	}
	a, b := once(), once()
	for i := range a {
		if !bytes.Equal(a[i], b[i]) {
			t.Errorf("file %d differs", i)
		}
	}
}

func BenchmarkSample(b *testing.B) {
	const n = 1 + closeEach
	find, findWant := make([]byte, findBytes), make([]byte, cellW*cellH*findValues*4)
	rows, rowsWant := make([]byte, n*stripsEach*rowBytes), make([]byte, n*stripsEach*columns*rowValues)
	aligns, alignsWant := make([]byte, n*alignsEach*alignBytes), make([]byte, n*alignsEach*columns*alignValues*4)
	i := uint64(0)
	for b.Loop() {
		sampleOf(i, find, findWant, rows, rowsWant, aligns, alignsWant)
		i++
	}
}
