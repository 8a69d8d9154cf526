package camera

import (
	"math/rand/v2"
	"testing"
)

// Eight pixels at a time against one at a time.
func TestWiden(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for _, size := range [][2]int{{7, 7}, {8, 9}, {31, 20}, {40, 8}} {
		w, h := size[0], size[1]
		in := make([]byte, w*h)
		for i := range in {
			in[i] = byte(r.IntN(256))
		}
		got := append([]byte(nil), in...)
		var f finder
		f.widen(got, make([]byte, w*h), w, h)
		for y := range h {
			for x := range w {
				want := byte(0)
				for j := max(0, y-strokeR); j <= min(h-1, y+strokeR); j++ {
					for i := max(0, x-strokeR); i <= min(w-1, x+strokeR); i++ {
						want = max(want, in[j*w+i])
					}
				}
				if got[y*w+x] != want {
					t.Fatalf("%d by %d at %d,%d: %d, want %d", w, h, x, y, got[y*w+x], want)
				}
			}
		}
	}
}
