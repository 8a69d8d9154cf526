package understand

import "math"

// Labeled is a sentence whose value is known, for fitting the ranking.
type Labeled struct {
	Text  string
	Ask   []string
	Right func(value, unit string) bool
}

// FitRank fits the weights of the ranking by gradient ascent on the sentences with several numbers.
func FitRank(r *Reader, lines []Labeled) []float64 {
	type choice struct {
		x     [][nFeatures]float64
		right []bool
	}
	var all []choice
	for _, l := range lines {
		s := r.frame(l.Text)
		ms := s.mentions
		r.lend(s.words, ms, l.Ask)
		r.rankFeatures(s.words, ms, l.Ask)
		c, good, bad := choice{}, false, false
		for _, m := range ms {
			ok := false
			for _, f := range m.Values[:min(1, len(m.Values))] {
				d, units := f.dec, narrow(m.Units, l.Ask)
				if units == nil {
					units = l.Ask
				}
				if len(units) > 0 {
					d, units = known(d, units)
					ok = ok || l.Right(d.String(), units[0])
				}
			}
			c.x, c.right = append(c.x, m.features), append(c.right, ok)
			good, bad = good || ok, bad || !ok
		}
		if good && bad {
			all = append(all, c)
		}
	}
	w := r.weights
	prior := w
	const rounds, rate, hold = 300, 0.5, 0.002
	for range rounds {
		var g [nFeatures]float64
		for _, c := range all {
			p, sum, in := make([]float64, len(c.x)), 0.0, 0.0
			for k := range c.x {
				s := 0.0
				for i, x := range c.x[k] {
					s += w[i] * x
				}
				p[k] = math.Exp(s)
				sum += p[k]
				if c.right[k] {
					in += p[k]
				}
			}
			for k := range c.x {
				d := -p[k] / sum
				if c.right[k] {
					d += p[k] / in
				}
				for i, x := range c.x[k] {
					g[i] += d * x
				}
			}
		}
		for i := range w {
			w[i] += rate * (g[i]/math.Max(1, float64(len(all))) - hold*(w[i]-prior[i]))
		}
	}
	return w[:]
}
