package appliance

import "math"

// memo remembers solved networks while a table is made: most pairs of faults pass through states that others have passed.
// A network is known by 128 bits of hash; among the 10^6 of a table two alike by chance are one in 10^26.
type memo struct {
	ac, dc map[key]*solved
	rest   map[key][]Outcome // resistances of a group of checks
}

// solved is one network with its volts and the readings taken in it.
type solved struct {
	x    []float64
	outs []taken
}

type taken struct {
	check int
	o     Outcome
}

// maxMemo bounds what is remembered, entries; a phone has little to spare.
const maxMemo = 16384

func newMemo() *memo {
	return &memo{ac: map[key]*solved{}, dc: map[key]*solved{}, rest: map[key][]Outcome{}}
}

func (m *memo) keep(in map[key]*solved, k key, x []float64) *solved {
	if len(in) >= maxMemo {
		clear(in)
	}
	e := &solved{x: append([]float64(nil), x...)}
	in[k] = e
	return e
}

// key is a sum of parts that can be taken out again in any order (Zobrist).
type key [2]uint64

// mix puts branch i with its conductances in, or takes it out.
func (k *key) mix(i int, a, b float64) {
	h := scramble(uint64(i)*0x9e3779b97f4a7c15 + scramble(math.Float64bits(a)) + 3*scramble(math.Float64bits(b)+0x632be59bd9b4e019))
	k[0] ^= h
	k[1] ^= scramble(h + 0xd1b54a32d192ed03)
}

// scramble is the finaliser of SplitMix64 (Steele, Lea, Flood 2014).
func scramble(x uint64) uint64 {
	x ^= x >> 30
	x *= 0xbf58476d1ce4e5b9
	x ^= x >> 27
	x *= 0x94d049bb133111eb
	return x ^ x>>31
}

// hashAll is the hash of a configuration with every branch conducting.
func (c *config) hashAll(e *Engine) {
	c.hash = key{}
	for i := range c.ac {
		c.hash.mix(i, c.ac[i], c.dc[i])
		if e.branches[i].n == 4 {
			c.hash.mix(i+len(c.ac), c.coef[i][0], 0)
		}
	}
	for _, i := range e.acEmfs {
		c.hash.mix(int(i)+2*len(c.ac), c.val[e.branches[i].acEmf], 0)
	}
}

// hashDC adds the d.c. sources, which follow from flames.
func (s *state) hashDC() key {
	k := s.hash
	for _, i := range s.e.dcEmfs {
		k.mix(int(i)+3*len(s.g), s.val[s.e.branches[i].dcEmf], 0)
	}
	return k
}

// once takes a reading in a solved network, or remembers it.
func (in *solved) once(check int, read func() Outcome) Outcome {
	for i := range in.outs {
		if in.outs[i].check == check {
			return in.outs[i].o
		}
	}
	o := read()
	in.outs = append(in.outs, taken{check, o})
	return o
}
