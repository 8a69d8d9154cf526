package scenario

// Dice is a small repeatable source of numbers (xorshift64*, Vigna 2016), enough for habits.
type Dice struct{ s uint64 }

// NewChance starts the dice at a seed.
func NewChance(seed uint64) *Dice { return &Dice{s: seed*0x9E3779B97F4A7C15 + 1} }

// Float64 is the next number in [0,1).
func (d *Dice) Float64() float64 {
	d.s ^= d.s >> 12
	d.s ^= d.s << 25
	d.s ^= d.s >> 27
	return float64(d.s*0x2545F4914F6CDD1D>>11) / (1 << 53)
}
