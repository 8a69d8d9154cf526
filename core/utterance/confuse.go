package utterance

import (
	"strings"

	"readback/core/unit"
)

// Confusion is a value that sounds like another one.
type Confusion struct {
	Value unit.Value
	Why   string  // "teen", "digit", "prefix", "unit", "decade"
	Cost  float64 // nats: how much rarer than being heard right, in a quiet room
}

// The costs are the logarithm of how often each kind was seen among synthesised readings at 20 dB: about one in 30 for a teen, one
// in 100 for the rest. Measured on the project's own bench, rounded.
const (
	costTeen   = 3.5
	costDigit  = 4.5
	costPrefix = 5.0
	costUnit   = 4.5
	costDecade = 6.0
)

// soundAlike are units that take each other's place: the prefix is lost or swapped, or the words rhyme.
var soundAlike = []struct {
	a, b, why string
	cost      float64
}{
	{"V", "mV", "prefix", costPrefix}, {"A", "mA", "prefix", costPrefix}, {"mA", "uA", "prefix", costPrefix}, {"A", "uA", "prefix", costPrefix},
	{"ohm", "kohm", "prefix", costPrefix}, {"kohm", "Mohm", "prefix", costPrefix}, {"ohm", "Mohm", "prefix", costPrefix}, {"uF", "nF", "prefix", costPrefix},
	{"Pa", "kPa", "prefix", costPrefix}, {"A", "ohm", "unit", costUnit}, {"V", "Hz", "unit", costUnit}, {"mV", "mA", "unit", costUnit}, {"degC", "degF", "unit", costDecade},
}

// Confusions lists what a value may have been before it was misheard, in a fixed order: teen and ty, a digit inserted or lost,
// a unit or its prefix swapped, the point moved by one place.
func Confusions(v unit.Value) []Confusion {
	var out []Confusion
	add := func(digits, unitID, why string, cost float64) {
		d, err := unit.ParseDecimal(digits)
		if err != nil || d == v.Dec && unitID == v.Unit {
			return
		}
		for _, c := range out {
			if c.Value.Dec == d && c.Value.Unit == unitID {
				return
			}
		}
		out = append(out, Confusion{unit.Value{Dec: d, Unit: unitID}, why, cost})
	}
	s, minus := strings.CutPrefix(v.Dec.String(), "-")
	sign := ""
	if minus {
		sign = "-"
	}
	whole, frac, pointed := strings.Cut(s, ".")
	join := func(w, f string) string {
		if f == "" {
			return sign + w
		}
		return sign + w + "." + f
	}
	if n := len(whole); n >= 2 {
		head, tens, ones := whole[:n-2], whole[n-2], whole[n-1]
		switch {
		case tens == '1' && ones >= '3': // fifteen, fifty
			add(join(head+string(ones)+"0", frac), v.Unit, "teen", costTeen)
		case tens >= '3' && ones == '0':
			add(join(head+"1"+string(tens), frac), v.Unit, "teen", costTeen)
		}
	}
	for i := range whole {
		if len(whole) > 1 && !(i == 0 && whole[1] == '0') {
			add(join(whole[:i]+whole[i+1:], frac), v.Unit, "digit", costDigit)
		}
	}
	for i := range frac {
		add(join(whole, frac[:i]+frac[i+1:]), v.Unit, "digit", costDigit)
	}
	for _, p := range soundAlike {
		switch v.Unit {
		case p.a:
			add(join(whole, frac), p.b, p.why, p.cost)
		case p.b:
			add(join(whole, frac), p.a, p.why, p.cost)
		}
	}
	if pointed {
		add(join(whole+frac[:1], frac[1:]), v.Unit, "decade", costDecade)
	} else if len(whole) > 1 {
		add(join(whole[:len(whole)-1], whole[len(whole)-1:]), v.Unit, "decade", costDecade)
	}
	return out
}
