package otherrender

import (
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write contact sheets into a temporary folder")

// sheet lays pictures out in a grid, shrunk to one width, with a green frame for legible and a red one for not.
func sheet(t *testing.T, name string, cols, width int, imgs []image.Image, marks []color.RGBA) {
	t.Helper()
	dir := filepath.Join(os.TempDir(), "otherrender")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	var y, rowH int
	type cell struct {
		m image.Image
		r image.Rectangle
		k color.RGBA
	}
	var cells []cell
	for i, m := range imgs {
		h := width * m.Bounds().Dy() / m.Bounds().Dx()
		if i%cols == 0 {
			y, rowH = y+rowH, 0
		}
		rowH = max(rowH, h+6)
		x := i % cols * (width + 6)
		cells = append(cells, cell{m, image.Rect(x+3, y+3, x+3+width, y+3+h), marks[i]})
	}
	out := image.NewRGBA(image.Rect(0, 0, cols*(width+6), y+rowH))
	for _, c := range cells {
		draw.Draw(out, c.r.Inset(-3), image.NewUniform(c.k), image.Point{}, draw.Src)
		b := c.m.Bounds()
		for j := 0; j < c.r.Dy(); j++ {
			for i := 0; i < c.r.Dx(); i++ {
				var s [3]uint32
				n := uint32(0)
				for v := b.Dy() * j / c.r.Dy(); v <= (b.Dy()*(j+1)-1)/c.r.Dy(); v++ {
					for u := b.Dx() * i / c.r.Dx(); u <= (b.Dx()*(i+1)-1)/c.r.Dx(); u++ {
						r, g, bl, _ := c.m.At(b.Min.X+u, b.Min.Y+v).RGBA()
						s[0], s[1], s[2], n = s[0]+r>>8, s[1]+g>>8, s[2]+bl>>8, n+1
					}
				}
				out.SetRGBA(c.r.Min.X+i, c.r.Min.Y+j, color.RGBA{uint8(s[0] / n), uint8(s[1] / n), uint8(s[2] / n), 255})
			}
		}
	}
	f, err := os.Create(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, out); err != nil {
		t.Fatal(err)
	}
	t.Logf("wrote %s", f.Name())
}

var (
	gray  = color.RGBA{90, 90, 90, 255}
	green = color.RGBA{0, 200, 0, 255}
	red   = color.RGBA{220, 0, 0, 255}
)

func mark(s Scene) color.RGBA {
	switch {
	case !s.HasDisplay:
		return gray
	case s.Legible:
		return green
	}
	return red
}

func TestContactSheets(t *testing.T) {
	if !*update {
		t.Skip("contact sheets are written with -update only; they prove nothing by themselves")
	}
	for _, g := range []Grade{Easy, Medium, Hard} {
		var imgs []image.Image
		var marks []color.RGBA
		for seed := uint64(1); seed <= 20; seed++ {
			s := Draw(seed+300+uint64(g)*1000, g)
			imgs, marks = append(imgs, s.Image), append(marks, mark(s))
			fmt.Println(s, s.Behind, s.DigitHeight)
		}
		sheet(t, g.String()+".png", 5, 380, imgs, marks)
	}
}

func TestContactSheetsOfFilms(t *testing.T) {
	if !*update {
		t.Skip("contact sheets are written with -update only; they prove nothing by themselves")
	}
	var imgs []image.Image
	var marks []color.RGBA
	for seed := uint64(1); seed <= 8; seed++ {
		b := Board(seed)
		k := green
		if b.Changed {
			k = red
		}
		imgs, marks = append(imgs, b.Before, b.After), append(marks, k, k)
		for i, c := range b.Changes {
			if c != Left {
				t.Log(seed, b.Wires[i], c)
			}
		}
	}
	sheet(t, "board.png", 4, 470, imgs, marks)
	imgs, marks = nil, nil
	for seed := uint64(1); seed <= 9; seed++ {
		l := Light(seed)
		t.Log(seed, l.State, l.Code, l.Color, l.Signs, l.Readable)
		for i := range 6 {
			k := gray
			if l.Lit(i * l.N / 6) {
				k = green
			}
			if l.Covered(i * l.N / 6) {
				k = red
			}
			imgs, marks = append(imgs, l.Frame(i*l.N/6)), append(marks, k)
		}
	}
	sheet(t, "light.png", 6, 310, imgs, marks)
	imgs, marks = nil, nil
	for seed := uint64(1); seed <= 9; seed++ {
		f := Fire(seed)
		t.Log(seed, f.State, f.Signs)
		for i := range 6 {
			k := gray
			if f.Burning(i * f.N / 6) {
				k = green
			}
			if f.Covered(i * f.N / 6) {
				k = red
			}
			imgs, marks = append(imgs, f.Frame(i*f.N/6)), append(marks, k)
		}
	}
	sheet(t, "fire.png", 6, 310, imgs, marks)
	imgs, marks = nil, nil
	for seed := uint64(1); seed <= 3; seed++ {
		for _, s := range Frames(seed, 5) {
			imgs, marks = append(imgs, s.Image), append(marks, mark(s))
			t.Log(s, s.Behind)
		}
	}
	sheet(t, "frames.png", 5, 380, imgs, marks)
}
