package infer

import "readback/core/appliance"

// Expect is the chance of each planning outcome of a measurement when it is sure what it shows.
func (c *Case) Expect(check int, o appliance.Outcome) []float64 {
	sc := c.checks[check]
	sc.classes = [][]shade{c.makes(&c.Model.Checks[check], []shade{{1, o, o.Predicted(c.Model.Checks[check].Unit)}})}
	var chk Check
	c.rows(&c.Model.Checks[check], &sc, 0, &chk)
	return chk.Bins[0]
}
