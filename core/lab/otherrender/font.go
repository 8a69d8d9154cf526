package otherrender

import (
	"math"
	"strings"
)

// strokes is a pen alphabet of our own: points "xy" on a grid 0..4 by 0..8 (0 the top of a capital, 6 the base line),
// strokes parted by "|".
var strokes = map[rune]string{
	'A': "06 20 46|14 34", 'B': "00 06 36 45 44 33 03|33 42 41 30 00", 'C': "41 30 10 01 05 16 36 45",
	'D': "00 06 26 45 41 20 00", 'E': "40 00 06 46|03 33", 'F': "40 00 06|03 33",
	'G': "41 30 10 01 05 16 36 45 43 23", 'H': "00 06|40 46|03 43", 'I': "20 26", 'J': "40 45 36 16 05",
	'K': "00 06|40 03 46", 'L': "00 06 46", 'M': "06 00 23 40 46", 'N': "06 00 46 40",
	'O': "10 30 41 45 36 16 05 01 10", 'P': "06 00 30 41 42 33 03", 'Q': "10 30 41 45 36 16 05 01 10|34 47",
	'R': "06 00 30 41 42 33 03|23 46", 'S': "41 30 10 01 02 13 33 44 45 36 16 05", 'T': "00 40|20 26",
	'U': "00 05 16 36 45 40", 'V': "00 26 40", 'W': "00 16 22 36 40", 'X': "00 46|40 06", 'Y': "00 23 40|23 26",
	'Z': "00 40 06 46", '0': "10 30 41 45 36 16 05 01 10", '1': "11 20 26", '2': "01 10 30 41 42 06 46",
	'3': "01 10 30 41 42 33 13|33 44 45 36 16 05", '4': "36 30 04 44", '5': "40 00 03 33 44 45 36 16 05",
	'6': "41 30 10 01 05 16 36 45 44 33 13 04", '7': "00 40 16",
	'8': "13 02 01 10 30 41 42 33 13 04 05 16 36 45 44 33", '9': "42 33 13 02 01 10 30 41 45 36 16 05",
	'a': "12 32 43 46|44 14 05 16 36 45", 'b': "00 06 36 45 43 32 02", 'c': "43 32 12 03 05 16 36 45",
	'd': "40 46 16 05 03 12 42", 'e': "04 44 43 32 12 03 05 16 36", 'f': "30 20 11 16|02 32",
	'g': "42 47 38 18|42 12 03 05 16 46", 'h': "00 06|03 12 32 43 46", 'i': "22 26|20 20", 'j': "22 27 18|20 20",
	'k': "00 06|32 04 36", 'l': "20 26", 'm': "06 02 12 23 26|23 32 43 46", 'n': "02 06|03 12 32 43 46",
	'o': "12 32 43 45 36 16 05 03 12", 'p': "02 08|02 32 43 45 36 06", 'q': "42 48|42 12 03 05 16 46",
	'r': "02 06|04 12 32", 's': "42 12 03 14 34 45 36 06", 't': "10 15 26 36|02 32", 'u': "02 05 16 36 46|42 46",
	'v': "02 26 42", 'w': "02 16 23 36 42", 'x': "02 46|42 06", 'y': "02 26|42 26 08", 'z': "02 42 06 46",
	'µ': "02 08|05 16 36 45|42 46", 'Ω': "06 16 14 03 01 10 30 41 43 34 36 46", '°': "10 20 21 11 10",
	'%': "40 06|00 10 11 01 00|35 45 46 36 35", '-': "13 33", '+': "03 43|21 25", '/': "06 40", '.': "26 26",
	':': "22 22|25 25", '~': "04 13 34 43", '=': "02 42|14 14|24 24|34 34", '(': "30 12 14 36", ')': "10 32 34 16",
	'#': "10 16|30 36|02 42|04 44", ',': "26 17", '!': "20 24|26 26", '>': "00 06 43 00|40 46", '\'': "20 21",
	'*': "21 25|02 44|42 04", '⚡': "30 13 33 16",
}

type pen struct {
	weight, wide, slant float64
	round               bool
}

// text draws with its left end at x and its base line at y; h is the height of a capital. align -1 left, 0 middle, 1 right.
func (c *canvas) text(x, y, h float64, s string, p pen, align int, pa paint) {
	adv := h * 0.86 * p.wide
	x -= textWidth(h, s, p) * float64(align+1) / 2
	for _, r := range s {
		if pat, ok := strokes[r]; ok {
			for _, line := range glyph(pat, p.round) {
				c.strokeLine(line, x, y, h, p, pa)
			}
		}
		x += runeAdvance(r, adv)
	}
}

func runeAdvance(r rune, adv float64) float64 {
	if strings.ContainsRune(".,:'!Iil1°", r) {
		return adv * 0.62
	}
	return adv
}

func textWidth(h float64, s string, p pen) float64 {
	w := 0.0
	for _, r := range s {
		w += runeAdvance(r, h*0.86*p.wide)
	}
	return w
}

func (c *canvas) strokeLine(line []pt, x, y, h float64, p pen, pa paint) {
	q := make([]pt, len(line))
	for i, v := range line {
		up := (6 - v.y) / 6 * h
		q[i] = pt{x + v.x/4*h*0.62*p.wide + p.slant*up, y - up}
	}
	w := p.weight * h
	x0, y0, x1, y1 := bounds(q)
	c.shape(x0-w, y0-w, x1+w, y1+w, func(x, y float64) float64 {
		d := math.Inf(1)
		for i := range q {
			d = math.Min(d, sdSeg(x, y, q[max(0, i-1)], q[i]))
		}
		return d - w/2
	}, pa)
}

func glyph(pat string, round bool) [][]pt {
	var out [][]pt
	for _, s := range strings.Split(pat, "|") {
		var l []pt
		for _, f := range strings.Fields(s) {
			l = append(l, pt{float64(f[0] - '0'), float64(f[1] - '0')})
		}
		if round && len(l) > 3 {
			l = cut(cut(l))
		}
		out = append(out, l)
	}
	return out
}

// cut takes the corners off a line, so that the letters look molded.
func cut(l []pt) []pt {
	out := []pt{l[0]}
	for i := 1; i+1 < len(l); i++ {
		a, b, d := l[i-1], l[i], l[i+1]
		out = append(out, pt{b.x + (a.x-b.x)*0.28, b.y + (a.y-b.y)*0.28}, pt{b.x + (d.x-b.x)*0.28, b.y + (d.y-b.y)*0.28})
	}
	return append(out, l[len(l)-1])
}
