package drawing

import (
	"fmt"
	"math"

	"readback/core/measure"
)

func hypot(x, y float64) float64 { return math.Hypot(x, y) }

// sincos of a share of a full turn.
func sincos(turn float64) (float64, float64) { return math.Sincos(2 * math.Pi * turn) }

// dialMark is what stands at a position of a meter's dial. Bars: the mark of direct current, a line over dashes, beside the letters.
type dialMark struct {
	text string
	bars bool
	wave bool
	left bool    // its bars stand below it: beside it there is no room
	turn float64 // where on the dial, as a share of a turn; 0 points right, clockwise
}

var dialMarks = map[measure.Function]dialMark{
	measure.VoltsAC:     {text: "V", wave: true, turn: .60},
	measure.VoltsDC:     {text: "V", bars: true, turn: .67},
	measure.MillivoltDC: {text: "mV", bars: true, turn: .74},
	measure.Ohms:        {text: "Ω", turn: .81},
	measure.Continuity:  {text: "•)))", turn: .87},
	measure.Capacitance: {text: "–|(–", turn: .93},
	measure.MicroampsDC: {text: "µA", bars: true, left: true, turn: .5},
}

// meterPicture is a handheld meter: the dial on its position, the two leads in their jacks. over adds what the display shows where the
// reading is above its range. It is nobody's meter: a real one has its positions in another order, but the same marks.
func meterPicture(f measure.Function, over bool) string {
	switch f {
	case measure.AmpsAC:
		return `<path d="M44 62a24 26 0 1 1 44 0" stroke-width="10" stroke-opacity=".4"/><path d="M40 60h52l-6 82H46z" {f}/><rect x="52" y="84" width="28" height="16"/><path d="M66 6v44" stroke-width="5"/><text x="66" y="130" {t}>A~</text>`
	case measure.Manometer:
		return `<path d="M44 20v76a21 21 0 0 0 42 0V20" stroke-width="12" stroke-opacity=".2"/><path d="M38 20v76a27 27 0 0 0 54 0V20M50 20v76a15 15 0 0 0 30 0V20"/><path d="M44 66v30a21 21 0 0 0 42 0V50" stroke-width="9" stroke-opacity=".6"/><path d="M104 40h10M104 60h10M104 80h10M104 100h10"/>`
	case measure.Thermometer:
		return `<path d="M58 20a8 8 0 0 1 16 0v76a17 17 0 1 1 -16 0z" {f}/><circle cx="66" cy="112" r="11" fill="currentColor"/><path d="M66 104V52" stroke-width="7"/><path d="M84 30h12M84 50h12M84 70h12M84 90h12"/>`
	case measure.COMeter:
		return `<rect x="30" y="24" width="72" height="112" rx="8" {f}/><rect x="40" y="36" width="52" height="32"/><text x="66" y="98" fill="currentColor" stroke="none" font-size="24" font-weight="bold" text-anchor="middle">CO</text><path d="M46 112h40M46 120h40"/>`
	}
	m, ok := dialMarks[f]
	if !ok {
		return ""
	}
	s := `<rect x="8" y="2" width="114" height="128" rx="10" {f}/><rect x="20" y="9" width="90" height="22"/>`
	if over {
		s += `<text x="65" y="27" {t}>OL</text>`
	}
	s += `<circle cx="65" cy="80" r="24" {f}/>`
	for _, d := range measure.Functions {
		o, ok := dialMarks[d.ID]
		if !ok {
			continue
		}
		sn, c := sincos(o.turn)
		s += fmt.Sprintf(`<circle cx="%.1f" cy="%.1f" r="1.800" {s}/>`, 65+30*c, 80+30*sn)
	}
	sn, c := sincos(m.turn)
	s += fmt.Sprintf(`<path d="M%.1f %.1fL%.1f %.1f" stroke-width="7" stroke-linecap="round"/>`, 65-16*c, 80-16*sn, 65+20*c, 80+20*sn)
	x, y := 65+46*c, 86+42*sn // the mark stands outside its position
	y = max(y, 47)
	half := 6.0 * float64(len([]rune(m.text)))
	room := half
	if (m.bars || m.wave) && !m.left {
		room += 18
	}
	x = min(max(x, 12+half), 118-room)
	s += fmt.Sprintf(`<text x="%.0f" y="%.0f" fill="currentColor" stroke="none" font-size="19" font-weight="bold" text-anchor="middle">%s</text>`, x, y, m.text)
	if m.left {
		s += fmt.Sprintf(`<path d="M%.0f %.0fh16" stroke-width="2.5"/><path d="M%.0f %.0fh16" stroke-width="2.5" stroke-dasharray="3 2"/>`, x-8, y+6, x-8, y+11)
	} else if m.bars {
		s += fmt.Sprintf(`<path d="M%.0f %.0fh13" stroke-width="2.5"/><path d="M%.0f %.0fh13" stroke-width="2.5" stroke-dasharray="3 2"/>`, x+half+1, y-9, x+half+1, y-4)
	}
	if m.wave {
		s += fmt.Sprintf(`<path d="M%.0f %.0fq4 -8 8 0t8 0" stroke-width="2.5"/>`, x+half+1, y-6)
	}
	// Three jacks: current left, the common one in the middle, volts and ohms right.
	red := 100.0
	if f.Dial().Current {
		red = 30
	}
	s += `<circle cx="30" cy="117" r="6.500"/><circle cx="65" cy="117" r="6.500"/><circle cx="100" cy="117" r="6.500"/>`
	s += plugged(red, true) + plugged(65, false)
	return s
}

// plugged is a lead in a jack.
func plugged(x float64, red bool) string {
	return fmt.Sprintf(`<path d="M%.0f 117V150" stroke="currentColor" stroke-width="9"/>`, x) + fmt.Sprintf(`<path d="M%.0f 117V150" stroke="%s" stroke-width="6"/>`, x, ink(red)) + token(x, 117, red)
}

// The two leads are red and black, and tell by shape as well: red carries a white diamond, black a white ring.
func ink(red bool) string {
	if red {
		return "#c81e1e"
	}
	return "#111"
}

func token(x, y float64, red bool) string {
	if red {
		return fmt.Sprintf(`<circle cx="%.1f" cy="%.1f" r="7.500" fill="#c81e1e" stroke="currentColor" stroke-width="1.500"/><path d="M%.1f %.1fl4.500 4.500l-4.500 4.500l-4.500 -4.500z" fill="#fff" stroke="none"/>`, x, y, x, y-4.5)
	}
	return fmt.Sprintf(`<circle cx="%.1f" cy="%.1f" r="7.500" fill="#111" stroke="currentColor" stroke-width="1.500"/><circle cx="%.1f" cy="%.1f" r="3.800" fill="none" stroke="#fff" stroke-width="2"/>`, x, y, x, y)
}

// lead is a probe, or a clip, at a terminal. Side: which side it comes from; twice that for a terminal that looks up.
func leadAt(t terminal, red, clip bool) string {
	dx, dy := .52*t.side, .85
	if t.y > 106 { // near the lower edge: more from the side
		dx, dy = .82*t.side, .57
	}
	if t.side < -1 || t.side > 1 {
		dx, dy = .45*t.side/2, -.89
	}
	p := func(l, off float64) (float64, float64) { return t.x + dx*l - dy*off, t.y + dy*l + dx*off }
	s := ""
	x1, y1 := p(0, 0)
	if clip {
		ax, ay := p(12, 6)
		bx, by := p(12, -6)
		cx, cy := p(20, 0)
		s += fmt.Sprintf(`<path d="M%.1f %.1fL%.1f %.1fL%.1f %.1fL%.1f %.1fz" fill="currentColor" fill-opacity=".35" stroke-width="2.500"/>`, x1, y1, ax, ay, cx, cy, bx, by)
	} else {
		x2, y2 := p(13, 0)
		s += fmt.Sprintf(`<path d="M%.1f %.1fL%.1f %.1f" stroke-width="3.500"/>`, x1, y1, x2, y2)
	}
	hx, hy := p(13, 0)
	ex, ey := p(40, 0)
	s += fmt.Sprintf(`<path d="M%.1f %.1fL%.1f %.1f" stroke="currentColor" stroke-width="12" stroke-linecap="round"/><path d="M%.1f %.1fL%.1f %.1f" stroke="%s" stroke-width="9" stroke-linecap="round"/>`, hx, hy, ex, ey, hx, hy, ex, ey, ink(red))
	mx, my := p(28, 0)
	return s + token(mx, my, red)
}
