package camera

// Segments are numbered a to g: a top, b upper right, c lower right, d bottom, e lower left, f upper left, g middle;
// bit i of a mask is segment i.

// shape is one way to draw a glyph.
type shape struct {
	r    rune
	mask byte
	cost float64 // nats against an everyday digit
}

// shapes are the glyphs a meter can show. An O is drawn as a 0 and told from it by its neighbours.
var shapes = []shape{
	{'0', 0x3f, 0}, {'1', 0x06, 0}, {'2', 0x5b, 0}, {'3', 0x4f, 0}, {'4', 0x66, 0}, {'5', 0x6d, 0},
	{'6', 0x7d, 0}, {'6', 0x7c, 1}, {'7', 0x07, 0}, {'7', 0x27, 0.7}, {'8', 0x7f, 0}, {'9', 0x6f, 0}, {'9', 0x67, 1},
	{' ', 0x00, 0}, {'-', 0x40, 1.5}, {'L', 0x38, 2}, {'F', 0x71, 4}, {'E', 0x79, 4}, {'r', 0x50, 5}, {'h', 0x74, 5}, {'n', 0x54, 5}, {'o', 0x5c, 4},
}

// legal tells for every mask whether it is a glyph; the search for the grid takes digits and L only.
var legal = func() (t [128]bool) {
	for _, s := range shapes {
		if s.r >= '0' && s.r <= '9' || s.r == 'L' {
			t[s.mask] = true
		}
	}
	return t
}()

// digitMasks lists the legal masks.
var digitMasks = func() (m []byte) {
	for i, ok := range legal {
		if ok {
			m = append(m, byte(i))
		}
	}
	return m
}()
