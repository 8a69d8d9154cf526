package drawing

import (
	"fmt"
	"strings"
)

// Sizes of one panel of a picture. A sketch is drawn in the lower part of it; its terminals lie where a lead can come from below.
const (
	panelW = 130.0
	panelH = 150.0
)

// spotDir is a terminal of a sketch and the side a lead comes to it from: -1 left, 1 right.
type terminal struct {
	x, y float64
	side float64
}

// sketch is a generic drawing of a part, our own, nobody's product: ink lines, a light tone for bodies, and where its terminals are.
type sketch struct {
	svg string
	at  map[string]terminal
}

// The strings use three short words for what comes again and again: {f} a light tone, {s} a solid, {w} a heavy line.
var shorthand = strings.NewReplacer(
	"{f}", `fill="currentColor" fill-opacity=".1"`, "{g}", `fill="currentColor" fill-opacity=".28"`,
	"{s}", `fill="currentColor" stroke="none"`, "{w}", `stroke-width="4"`, "{t}", `fill="currentColor" stroke="none" font-size="17" font-weight="bold" text-anchor="middle"`)

// tab is a flat push-on terminal that looks down.
func tab(x, y float64) string {
	return fmt.Sprintf(`<path d="M%.0f %.0fv15h8v-15z" {f}/><circle cx="%.0f" cy="%.0f" r="1.6" {s}/>`, x-4, y-13, x, y-4)
}

// screwAt is a screw terminal.
func screwAt(x, y float64) string {
	return fmt.Sprintf(`<circle cx="%.0f" cy="%.0f" r="6.5" {f}/><path d="M%.0f %.0fl8 -8"/>`, x, y, x-4, y+4)
}

func two(ax, ay, bx, by float64) map[string]terminal {
	return map[string]terminal{"a": {ax, ay, -1}, "b": {bx, by, 1}}
}

// arrow is a bold arrow from one place to another.
func arrow(x1, y1, x2, y2 float64) string {
	dx, dy := x2-x1, y2-y1
	l := max(1, hypot(dx, dy))
	ux, uy := dx/l, dy/l
	return fmt.Sprintf(`<path d="M%.1f %.1fL%.1f %.1f" stroke-width="5"/><path d="M%.1f %.1fL%.1f %.1fL%.1f %.1fz" {s}/>`,
		x1, y1, x2-ux*10, y2-uy*10, x2, y2, x2-ux*15-uy*9, y2-uy*15+ux*9, x2-ux*15+uy*9, y2-uy*15-ux*9)
}

// sketches are the drawings of parts by their names in core/vocab.
var sketches = map[string]sketch{
	"alarm": {`<circle cx="65" cy="70" r="42" {f}/><circle cx="65" cy="70" r="24"/><path d="M52 70h26M56 62h18M56 78h18"/><circle cx="88" cy="44" r="4" {s}/><path d="M112 46q10 24 0 48M18 46q-10 24 0 48" {w}/>`, nil},
	"battery": {`<rect x="16" y="46" width="88" height="26" rx="4" {f}/><path d="M104 53v12h7v-12z" {s}/><rect x="16" y="86" width="88" height="26" rx="4" {f}/><path d="M16 93v12h-7v-12z" {s}/>` +
		`<path d="M84 59h14m-7 -7v14M24 59h12M24 99h14m-7 -7v14M88 99h12" stroke-width="3"/>`, nil},
	"blower": {`<path d="M20 120V60a42 42 0 0 1 84 0v20h16v40z" {f}/><circle cx="62" cy="66" r="30"/><circle cx="62" cy="66" r="13" {g}/>` + spokes(62, 66, 14, 29, 16) + `<path d="M62 53q30 -36 54 -22"/>`, two(112, 120, 96, 120)},
	"board": {board(), map[string]terminal{"R": {22, 125, -1}, "C": {39, 125, -1}, "W": {56, 125, 1}, "Y": {73, 125, 1}, "r": {22, 125, -1}, "c": {39, 125, -1},
		"L": {16, 34, -1}, "N": {116, 64, 1}, "H": {116, 42, 1}, "I": {34, 34, -1}, "F": {52, 34, -1}, "P": {104, 114, 1}, "fs": {52, 34, -1}, "earth": {116, 64, 1}, "a": {22, 125, -1}, "b": {39, 125, 1}}},
	"breaker":   {`<rect x="26" y="24" width="78" height="116" rx="3" {f}/><path d="M65 30v104"/>` + breakers(), nil},
	"burner":    {`<path d="M8 112h114v14H8z" {f}/>` + burnerTubes() + `<path d="M8 119h114" stroke-dasharray="4 4"/>`, two(24, 126, 104, 126)},
	"capacitor": {`<path d="M38 62v52a27 9 0 0 0 54 0V62" {f}/><ellipse cx="65" cy="62" rx="27" ry="9" {g}/>` + `<path d="M50 60V40M80 60V40" stroke-width="7"/>`, map[string]terminal{"a": {50, 40, -2}, "b": {80, 40, 2}}},
	"coil":      {`<path d="M20 124L65 36l45 88z" {f}/><path d="M32 112h66M42 92h46M50 76h30M57 60h16"/>`, nil},
	"contactor": {`<rect x="30" y="44" width="70" height="64" rx="3" {f}/><path d="M44 60h42v30H44z" {g}/><path d="M50 60v30M58 60v30M66 60v30M74 60v30"/>` + tab(44, 120) + tab(86, 120), two(44, 122, 86, 122)},
	"disc":      {`<path d="M18 84h94v10H18z" {f}/><path d="M40 84v-14a25 22 0 0 1 50 0v14z" {g}/>` + tab(50, 108) + tab(80, 108) + `<circle cx="26" cy="89" r="2.5" {s}/><circle cx="104" cy="89" r="2.5" {s}/>`, two(50, 110, 80, 110)},
	"disc-reset": {`<path d="M18 84h94v10H18z" {f}/><path d="M40 84v-14a25 22 0 0 1 50 0v14z" {g}/><rect x="58" y="34" width="14" height="16" rx="2" fill="currentColor"/>` +
		tab(50, 108) + tab(80, 108) + `<circle cx="26" cy="89" r="2.5" {s}/><circle cx="104" cy="89" r="2.5" {s}/>`, two(50, 110, 80, 110)},
	"door-switch": {`<path d="M10 66h110v8H10z" {g}/><rect x="42" y="74" width="46" height="32" rx="3" {f}/><rect x="56" y="46" width="18" height="20" rx="3" {f}/>` + tab(52, 120) + tab(78, 120) + `<path d="M65 22v18m-7 -8l7 9l7 -9" stroke-width="3"/>`, two(52, 122, 78, 122)},
	"drain":       {`<path d="M12 50h62v22H26l-14 -10z" {f}/><path d="M68 72v26a14 14 0 0 0 28 0v-8h16" stroke-width="9" stroke-opacity=".35"/><path d="M112 96v8m0 8v8M112 96q-4 6 0 8"/>`, nil},
	"duct":        {`<path d="M14 50h102v46H14z" {f}/><path d="M44 46v54M86 46v54" {w}/><path d="M22 73h14m8 0h20m-8 -7l9 7l-9 7"/>`, nil},
	"exchanger":   {`<path d="M20 40h22v80H20zM54 40h22v80H54zM88 40h22v80H88z" {f}/><path d="M31 112V56m0 0q17 -22 34 0v50m0 -50q17 -22 34 0v50"/>`, nil},
	"fan": {`<path d="M14 122V72a38 38 0 1 1 38 38h-14v12z" {f}/><circle cx="52" cy="72" r="22"/>` + spokes(52, 72, 6, 20, 10) + `<rect x="86" y="56" width="32" height="32" rx="5" {g}/><path d="M100 88v24M110 88v24"/><rect x="94" y="110" width="22" height="14" {f}/>`,
		two(99, 124, 111, 124)},
	"filter":    {`<rect x="20" y="34" width="64" height="92" {f}/><path d="M28 42v76l8 -76v76l8 -76v76l8 -76v76l8 -76v76l8 -76v76l8 -76v76"/><path d="M90 80h22" {w}/><path d="M126 80l-16 -10v20z" {s}/>`, nil},
	"float":     {`<path d="M12 110h106M12 110V90M118 110V90" {w}/><path d="M16 102q12 -6 24 0t24 0t24 0t24 0"/><ellipse cx="65" cy="92" rx="20" ry="9" {g}/><path d="M65 84V60"/><rect x="50" y="42" width="30" height="18" rx="3" {f}/><path d="M50 50H24M80 50h26"/>`, two(24, 50, 106, 50)},
	"fuse":      {`<path d="M34 34h62v44H34z" {f}/><path d="M44 66q10 -34 21 -8t21 -6" stroke-width="3"/><path d="M42 78v34h14V78M74 78v34h14V78" {g}/>`, two(49, 112, 81, 112)},
	"gas-cock":  {`<path d="M4 92h122v18H4z" {f}/><circle cx="65" cy="101" r="17" {g}/><path d="M65 101L112 70" stroke-width="11" stroke-linecap="round"/><path d="M65 101L112 70" stroke-width="6" stroke="#888" stroke-linecap="round"/>`, nil},
	"gas-valve": {`<path d="M2 84h20v20H2zM108 84h20v20h-20z" {f}/><path d="M22 60h86v50H22z" {g}/><rect x="44" y="36" width="34" height="24" rx="4" {f}/><path d="M61 42v8"/>` + tab(50, 124) + tab(80, 124), two(50, 126, 80, 126)},
	"grille":    {`<rect x="14" y="46" width="102" height="62" {f}/><path d="M22 56h86M22 67h86M22 78h86M22 89h86M22 99h86" stroke-width="3"/>`, nil},
	"hose":      {`<path d="M20 70a18 18 0 1 1 0 .1z" {f}/><path d="M36 84q16 44 42 16t40 -30" stroke-width="11" stroke-opacity=".35"/><path d="M30 80q22 52 52 18t36 -34M42 88q10 36 32 8t40 -30" stroke-width="1.5"/><path d="M112 48l14 22" stroke-width="7"/>`, nil},
	"igniter": {`<path d="M44 44h42v18H44z" {f}/><path d="M52 44V8h26v36h-8V17h-10v27z" {g}/><path d="M55 14l5 6M55 24l5 6M55 34l5 6M70 14l5 6M70 24l5 6M70 34l5 6" stroke-width="1.5"/>` +
		`<path d="M54 62q-2 20 -8 32M76 62q2 20 8 32"/><rect x="36" y="92" width="58" height="22" rx="3" {f}/><path d="M48 114v-12M82 114v-12" stroke-width="6"/>`, two(48, 114, 82, 114)},
	"jumper":      {`<circle cx="65" cy="60" r="30" {f}/>` + tab(48, 100) + tab(82, 100) + `<path d="M48 102q17 34 34 0" {w}/>`, two(48, 102, 82, 102)},
	"knob":        {`<rect x="10" y="60" width="110" height="60" rx="4" {f}/><circle cx="58" cy="90" r="24" {g}/><path d="M58 90V68" {w}/><rect x="96" y="70" width="16" height="16" rx="8" fill="currentColor"/><path d="M58 52v6"/>`, two(40, 118, 76, 118)},
	"lamp":        {`<rect x="16" y="44" width="98" height="72" rx="3" {f}/><circle cx="65" cy="80" r="20"/><circle cx="65" cy="80" r="8" {s}/><path d="M65 52V40M93 62l9 -8M37 62l-9 -8M65 108v10M93 98l9 8M37 98l-9 8" stroke-width="3"/>`, nil},
	"metal":       {`<path d="M18 40h94v76H18z" {f}/><circle cx="65" cy="84" r="14" {g}/><path d="M57 92l16 -16" stroke-width="3"/><path d="M26 50l14 -6M30 60l22 -10" stroke-width="1.5"/>`, map[string]terminal{"a": {65, 86, 1}, "b": {65, 86, 1}}},
	"nozzle":      {`<path d="M8 84h114v18H8z" {f}/><path d="M28 84V66h16v18M58 84V66h16v18M88 84V66h16v18" {g}/><path d="M36 58v-12M66 58v-12M96 58v-12"/>`, nil},
	"outlet":      {outletSketch(), map[string]terminal{"hot": {79, 59, 1}, "neutral": {51, 57, -1}, "a": {79, 59, 1}, "b": {51, 57, -1}, "l": {79, 59, 1}, "n": {51, 57, -1}}},
	"panel":       {`<path d="M24 30h82v96H24z" {f}/><path d="M24 30h82M34 126v8h14v-8M82 126v8h14v-8" {w}/><path d="M50 76h30" {w}/>`, nil},
	"phone":       {`<rect x="36" y="26" width="58" height="102" rx="8" {f}/><rect x="42" y="36" width="46" height="78"/><circle cx="65" cy="121" r="3" {s}/><circle cx="65" cy="72" r="13" {w}/>`, nil},
	"pilot":       {`<path d="M10 120h56v-14H44V88H32v18H10z" {f}/><path d="M38 84c-14 -14 2 -22 0 -42c16 16 22 28 6 42z" {g}/><path d="M42 60q26 4 40 0" stroke-dasharray="3 4"/><path d="M76 44h14v70" stroke-width="7" stroke-opacity=".5"/><path d="M88 114v18"/>`, nil},
	"pipe":        {`<path d="M8 126V30l52 -22v118z" {f}/><path d="M44 58h52a14 14 0 0 1 0 28H44z" {g}/><ellipse cx="98" cy="72" rx="8" ry="14"/><path d="M112 66q8 -4 14 0M112 78q8 4 14 0"/>`, nil},
	"plate":       {ratingPlate(), nil},
	"plug":        {`<path d="M30 30q6 20 14 24M100 30q-6 20 -14 24"/><rect x="30" y="54" width="70" height="42" rx="4" {f}/><path d="M44 96v-18M86 96v-18" stroke-width="8"/><path d="M56 54v-8h18v8"/>`, two(44, 97, 86, 97)},
	"port":        {`<circle cx="65" cy="58" r="36" {f}/><circle cx="65" cy="58" r="22"/><path d="M65 22V8" stroke-width="9"/>` + tab(46, 108) + tab(84, 108), two(46, 110, 84, 110)},
	"probe":       {`<path d="M36 12h16v46H36z" {g}/><path d="M44 58q2 40 40 44" stroke-width="5" stroke-opacity=".5"/><path d="M80 92h18v20H80z" {f}/><path d="M98 97h14v10H98"/>`, two(86, 112, 108, 107)},
	"relay":       {`<rect x="28" y="40" width="74" height="60" {f}/><path d="M40 70h14l16 -14M74 70h16"/>` + tab(44, 114) + tab(86, 114), two(44, 116, 86, 116)},
	"rod":         {`<path d="M8 30h54q10 0 10 10" {w}/><path d="M66 40h12v30H66z" {f}/><path d="M54 70h36v12H54z" {g}/><path d="M72 82v14"/>` + tab(72, 106), map[string]terminal{"a": {72, 108, 1}, "rod": {72, 108, 1}, "burner": {20, 31, -1}, "b": {72, 108, 1}}},
	"spade":       {`<path d="M36 20q-6 30 6 50M94 20q6 30 -6 50"/><path d="M34 70h16v22H34zM80 70h16v22H80z" {g}/><path d="M38 92h8v18h-8zM84 92h8v18h-8z" {f}/>`, two(42, 110, 88, 110)},
	"splice":      {`<path d="M40 66L50 34h0l10 32zM78 66L88 34h0l10 32z" {g}/><path d="M44 66q-4 30 -14 54M56 66q0 30 -4 54M82 66q0 30 4 54M94 66q4 30 12 54"/>`, two(50, 66, 88, 66)},
	"switch":      {`<rect x="34" y="28" width="62" height="98" rx="5" {f}/><path d="M58 64h14v30H58z" {g}/><path d="M60 64l-2 -18h14l-2 18z" fill="currentColor"/><circle cx="65" cy="40" r="2.500" {s}/><circle cx="65" cy="114" r="2.500" {s}/>`, two(36, 100, 94, 100)},
	"terminals":   {`<rect x="12" y="56" width="106" height="44" rx="3" {f}/>` + screwAt(34, 80) + screwAt(65, 80) + screwAt(96, 80) + `<path d="M34 56V34M65 56V34M96 56V34"/>`, map[string]terminal{"R": {34, 81, -1}, "W": {65, 81, 1}, "C": {96, 81, 1}, "T": {34, 81, -1}, "M": {65, 81, -1}, "P": {96, 81, 1}, "a": {34, 81, -1}, "b": {96, 81, 1}}},
	"thermostat":  {thermostatSketch(0), two(40, 118, 90, 118)},
	"transformer": {`<path d="M38 52h54v44H38z" {g}/><path d="M30 60h70v28H30z" {f}/><path d="M44 52V28M60 52V28" {w}/><path d="M72 96v24M88 96v24"/><path d="M44 52v44M52 52v44M78 52v44M86 52v44" stroke-width="1"/>`, map[string]terminal{"p1": {44, 28, -2}, "p2": {60, 28, 2}, "s1": {72, 120, -1}, "s2": {88, 120, 1}, "a": {72, 120, -1}, "b": {88, 120, 1}}},
	"wheel":       {`<circle cx="65" cy="76" r="42" {f}/><circle cx="65" cy="76" r="12" {g}/>` + spokes(65, 76, 13, 40, 18) + `<path d="M28 40q16 -20 42 -18m-10 -6l10 6l-8 9" stroke-width="3"/>`, nil},
	"wire":        {`<path d="M10 40q36 0 40 50M120 40q-36 0 -40 50"/><path d="M44 88h12v18H44zM74 88h12v18H74z" {g}/><path d="M50 106v10M80 106v10" stroke-width="6"/>`, two(50, 116, 80, 116)},
}

// ofKind is the drawing of a part that the file gives none.
var ofKind = map[string]string{"supply": "outlet", "fuse": "fuse", "wire": "spade", "switch": "switch", "pair": "splice", "thing": "panel", "transformer": "transformer",
	"load": "plug", "contact": "disc", "passage": "pipe", "capacitor": "capacitor", "rod": "rod", "board": "board", "relay": "relay", "emf": "probe"}

func spokes(x, y, r1, r2 float64, n int) string {
	var b strings.Builder
	b.WriteString(`<path stroke-width="1.5" d="`)
	for i := range n {
		s, c := sincos(float64(i) / float64(n))
		s2, c2 := sincos(float64(i)/float64(n) + .03)
		fmt.Fprintf(&b, "M%.1f %.1fL%.1f %.1f", x+r1*c, y+r1*s, x+r2*c2, y+r2*s2)
	}
	b.WriteString(`"/>`)
	return b.String()
}

func board() string {
	s := `<rect x="8" y="26" width="114" height="104" rx="4" {f}/><rect x="34" y="50" width="26" height="22" {g}/><rect x="64" y="50" width="26" height="22" {g}/>` +
		`<circle cx="78" cy="88" r="5" {s}/><path d="M78 78v-4M88 88h4M68 88h-4" stroke-width="1.5"/><rect x="92" y="82" width="22" height="26"/><path d="M98 88h10M98 95h10M98 102h10"/>`
	for i, l := range "RCWY" {
		x := 22 + 17*float64(i)
		s += screwAt(x, 121) + fmt.Sprintf(`<text x="%.0f" y="110" {t}>%c</text>`, x, l)
	}
	for _, x := range []float64{16, 34, 52} {
		s += fmt.Sprintf(`<path d="M%.0f 26v10h8v-10z" {g}/>`, x-4)
	}
	return s + `<path d="M112 36h10v10h-10zM112 58h10v10h-10z" {g}/>`
}

func breakers() string {
	s := ""
	for i := range 5 {
		y := 34 + 20*float64(i)
		s += fmt.Sprintf(`<rect x="32" y="%.0f" width="28" height="13"/><rect x="48" y="%.0f" width="9" height="7" {g}/>`, y, y+3)
		if i != 2 {
			s += fmt.Sprintf(`<rect x="70" y="%.0f" width="28" height="13"/><rect x="73" y="%.0f" width="9" height="7" {g}/>`, y, y+3)
		}
	}
	return s + `<rect x="70" y="74" width="28" height="13" stroke-width="4"/><rect x="73" y="77" width="9" height="7" fill="currentColor"/>`
}

func burnerTubes() string {
	s := ""
	for i := range 4 {
		x := 14 + 28*float64(i)
		s += fmt.Sprintf(`<path d="M%.0f 112V92h18v20" {g}/><path d="M%.0f 88c-10 -12 4 -16 5 -38c10 18 14 28 2 38z"/>`, x, x+9)
	}
	return s
}

func outletSketch() string {
	return `<rect x="26" y="18" width="78" height="116" rx="6" {f}/><path d="M44 40q21 -16 42 0v36q-21 16 -42 0zM44 90q21 -14 42 0v28q-21 14 -42 0z" fill="none"/>` +
		`<path d="M49 44h5v23h-5z" fill="currentColor"/><path d="M76 48h5v16h-5z" fill="currentColor"/><path d="M60 74a5 5 0 0 1 10 0z" fill="currentColor"/>` +
		`<path d="M49 96h4v16h-4zM76 98h4v11h-4z" {g}/>`
}

func ratingPlate() string {
	s := `<rect x="10" y="34" width="110" height="92" rx="4" {f}/><circle cx="18" cy="42" r="2.500" {s}/><circle cx="112" cy="42" r="2.500" {s}/><circle cx="18" cy="118" r="2.500" {s}/><circle cx="112" cy="118" r="2.500" {s}/>`
	for i := range 4 {
		y := 58 + 16*float64(i)
		s += fmt.Sprintf(`<path d="M24 %.0fh30" stroke-width="5" stroke-opacity=".45"/><path d="M62 %.0fh44"/>`, y, y)
	}
	return s
}

// thermostatSketch is a thermostat on the wall; way 1 turns it up, -1 down.
func thermostatSketch(way int) string {
	s := `<rect x="22" y="34" width="86" height="84" rx="9" {f}/><rect x="32" y="44" width="54" height="42"/>` +
		`<text x="61" y="74" fill="currentColor" stroke="none" font-size="24" font-weight="bold" text-anchor="middle">70°</text><path d="M92 58l6 -9l6 9zM92 72l6 9l6 -9z" {g}/><path d="M36 100h24M70 100h24" stroke-width="3"/>`
	switch way {
	case 1:
		s += arrow(118, 92, 118, 44)
	case -1:
		s += arrow(118, 44, 118, 92)
	}
	return s
}
