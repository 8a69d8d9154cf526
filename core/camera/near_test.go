package camera

import "testing"

// wired draws entries in a row, a wire hanging from each, in a light; gone lacks its wire.
func wired(colours [][3]float64, gone int, light float64, shift int) *Plane {
	const w, h = 360, 240
	p := &Plane{Y: make([]byte, w*h), W: w, H: h, Stride: w, Cb: make([]byte, w*h), Cr: make([]byte, w*h), CStride: w, Sub: 1}
	for y := range h {
		for x := range w {
			c := [3]float64{40, 90 + float64((x*7+y*13)%11), 60}
			for i, k := range colours {
				if d := x - (60 + 60*i) - shift; i != gone && d > -7 && d < 7 && y > 90 {
					c = k
				}
			}
			for q := range c {
				c[q] *= light
			}
			p.Y[y*w+x] = byte(0.299*c[0] + 0.587*c[1] + 0.114*c[2])
			p.Cb[y*w+x] = byte(128 - 0.1687*c[0] - 0.3313*c[1] + 0.5*c[2])
			p.Cr[y*w+x] = byte(128 + 0.5*c[0] - 0.4187*c[1] - 0.0813*c[2])
		}
	}
	return p
}

// A wire that is not there any more is told from one that hangs a little otherwise in another light.
func TestHangs(t *testing.T) {
	colours := [][3]float64{{200, 40, 30}, {40, 60, 190}, {220, 190, 40}, {190, 190, 190}}
	marks := [][2]float64{{60, 90}, {120, 90}, {180, 90}, {240, 90}}
	before, after := wired(colours, -1, 1, 0), wired(colours, 1, 0.7, 4)
	var c Comparer
	c.w, c.h = before.W, before.H
	m := Map{1, 0, 0, 0, 1, 0, 0, 0, 1}
	c.light(before, after, &m)
	for i := range marks {
		g := c.hangs(before, after, &m, marks, i, c.lightAt(before, after, &m, marks[i][0], marks[i][1]))
		if !g.ok || (g.lost > bodyAt) != (i == 1) {
			t.Errorf("entry %d: lost %.1f, came %.1f, seen %v", i, g.lost, g.came, g.ok)
		}
	}
	if across, pitch := ways(marks, 0); pitch != 60 || across[0] != 0 {
		t.Errorf("wires leave along %v, entries stand %v apart", across, pitch)
	}
}
