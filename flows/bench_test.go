package flows_test

import "testing"

// BenchmarkSingles simulates the furnace healthy and with every single mode, all checks.
func BenchmarkSingles(b *testing.B) {
	e := engine(b, "data", "furnace.hcl")
	for b.Loop() {
		e.Table(e.Singles())
	}
}

// BenchmarkPairs simulates all pairs of the furnace.
func BenchmarkPairs(b *testing.B) {
	e := engine(b, "data", "furnace.hcl")
	for b.Loop() {
		e.Table(e.Pairs())
	}
}
