package main

import (
	"image"
	"image/color"
	"image/png"
	"math/rand/v2"
	"os"
	"testing"

	"readback/core/lab/render"
)

func TestSheet(t *testing.T) {
	out := os.Getenv("SHEET")
	if out == "" {
		t.Skip()
	}
	m := image.NewRGBA(image.Rect(0, 0, 1500, 1200))
	for i := range 30 {
		r := rand.New(rand.NewPCG(uint64(i), 1))
		o := render.PanelOptions{W: 480, H: 360}
		if i >= 12 {
			o = render.PanelOptions{W: 240 + 2*r.IntN(100), H: 110 + 2*r.IntN(60), Close: true, Number: true}
		}
		v := crop(render.NewPanel(uint64(5000+i), o).Shoot(0), r)
		x0, y0 := i%5*300, i/5*200
		for y := range 196 {
			for x := range 296 {
				u, w := x*v.W/296, y*v.W/296
				if w >= v.H {
					continue
				}
				c := color.YCbCr{v.Y[w*v.W+u], v.Cb[w/2*((v.W+1)/2)+u/2], v.Cr[w/2*((v.W+1)/2)+u/2]}
				m.Set(x0+x, y0+y, c)
			}
		}
	}
	f, _ := os.Create(out)
	png.Encode(f, m)
	f.Close()
}
