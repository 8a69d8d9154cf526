package render

import (
	"bytes"
	"math"
	"testing"
)

// At least forty sorts of devices; a third of the pictures shows no number; rows lie where they are said to lie.
func TestPanel(t *testing.T) {
	if Kinds() < 40 {
		t.Errorf("%d sorts of devices, want 40", Kinds())
	}
	empty := 0
	const n = 200
	for seed := range uint64(n) {
		if NewPanel(seed, PanelOptions{W: 160, H: 120}).empty {
			empty++
		}
	}
	if empty < n*25/100 || empty > n*42/100 {
		t.Errorf("%d of %d pictures show no number", empty, n)
	}
	for kind := range Kinds() {
		v := NewPanel(uint64(1000+kind), PanelOptions{W: 320, H: 240, Kind: kind + 1, Number: true}).Shoot(0)
		if v.Kind != kinds[kind].name || len(v.Rows) == 0 || !v.Rows[0].Main {
			t.Errorf("%s: drawn as %q with %d rows", kinds[kind].name, v.Kind, len(v.Rows))
			continue
		}
		for _, r := range v.Rows {
			text := ""
			for _, g := range r.Glyphs {
				text += string(g.R)
				e := r.Ends
				x := (g.Centre[0]-e[0][0])*(e[1][0]-e[0][0]) + (g.Centre[1]-e[0][1])*(e[1][1]-e[0][1])
				if l := math.Pow(e[1][0]-e[0][0], 2) + math.Pow(e[1][1]-e[0][1], 2); x < -0.2*l || x > 1.2*l {
					t.Errorf("%s: %c of %q lies beside its row", v.Kind, g.R, r.Text)
				}
			}
			if text != r.Text {
				t.Errorf("%s: marks %q of row %q", v.Kind, text, r.Text)
			}
		}
	}
}

// One seed is one picture; the next frame is another one.
func TestPanelAgain(t *testing.T) {
	a := NewPanel(5, PanelOptions{W: 160, H: 120, Number: true})
	b := NewPanel(5, PanelOptions{W: 160, H: 120, Number: true})
	first := a.Shoot(0)
	if !bytes.Equal(first.Y, b.Shoot(0).Y) {
		t.Error("one seed gives two pictures")
	}
	if bytes.Equal(first.Y, a.Shoot(1).Y) {
		t.Error("two frames are one")
	}
}
