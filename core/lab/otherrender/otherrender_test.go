package otherrender

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"strings"
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

// The same seed gives the same bytes, whatever was drawn before.
func TestSameSeedSameBytes(t *testing.T) {
	for _, k := range []struct {
		seed  uint64
		grade Grade
	}{{3, Easy}, {1001, Medium}, {2003, Hard}, {2006, Hard}} {
		a := Draw(k.seed, k.grade)
		Draw(k.seed+1, k.grade)
		b := Draw(k.seed, k.grade)
		if !bytes.Equal(a.JPEG, b.JPEG) || !bytes.Equal(a.Image.Pix, b.Image.Pix) || a.Shown != b.Shown || a.Legible != b.Legible {
			t.Errorf("seed %d %v: two drawings differ", k.seed, k.grade)
		}
		if c := Draw(k.seed+1, k.grade); bytes.Equal(a.JPEG, c.JPEG) {
			t.Errorf("seeds %d and %d give one picture", k.seed, k.seed+1)
		}
	}
	l, f := Light(5), Fire(6)
	l2, f2 := Light(5), Fire(6)
	l2.Frame(3)
	if !bytes.Equal(l.Frame(7).Pix, l2.Frame(7).Pix) || !bytes.Equal(f.Frame(7).Pix, f2.Frame(7).Pix) {
		t.Error("a frame of a film depends on what was drawn before")
	}
}

// The labels fit each other and the picture.
func TestLabelsAreConsistent(t *testing.T) {
	legible := map[Grade]int{}
	for seed := uint64(50); seed < 62; seed++ {
		for _, g := range []Grade{Easy, Medium, Hard} {
			s := Draw(seed, g)
			w, h := Size(seed)
			b := s.Image.Bounds()
			if b.Dx() != w || b.Dy() != h || w < 640 || h < 480 || w > 1000 || h > 750 {
				t.Errorf("%v: size %v, want %dx%d", s, b, w, h)
			}
			if s.Legible != (s.Shown != "") || s.Legible && (s.Why != "" || s.Shown != s.Behind) {
				t.Errorf("%v: legible %v, shown %q, behind %q, why %q", s, s.Legible, s.Shown, s.Behind, s.Why)
			}
			if s.HasDisplay && (s.Display.Empty() || !s.Display.In(b)) || !s.HasDisplay && (!s.Display.Empty() || s.Legible) {
				t.Errorf("%v: display %v in %v", s, s.Display, b)
			}
			if s.HasDisplay && !s.Legible && s.Why == "" {
				t.Errorf("%v: not legible without a reason", s)
			}
			if s.Legible {
				legible[g]++
				if s.Number.Empty() || !s.Number.In(s.Display.Inset(-2)) || s.DigitHeight < minHeight {
					t.Errorf("%v: number %v, display %v, height %.1f", s, s.Number, s.Display, s.DigitHeight)
				}
			}
			if s.Hard != (s.Kind == Phone) {
				t.Errorf("%v: hard %v", s, s.Hard)
			}
		}
	}
	if legible[Easy] < 3 || legible[Easy] < legible[Hard] {
		t.Errorf("legible by grade: %v", legible)
	}
}

// The number shown is the number drawn: the segments that are lit in the cells spell it and nothing else.
func TestSegmentsSpellTheText(t *testing.T) {
	for seed := uint64(0); seed < 400; seed++ {
		p := newPlan(seed, Medium, 0)
		if !p.has {
			continue
		}
		if !p.d.main.fits(p.main) {
			t.Fatalf("seed %d: %q does not fit", seed, p.main)
		}
		lit := map[int]map[int]bool{}
		minus := false
		for _, e := range p.d.main.elems(p.main) {
			if lit[e.cell] == nil {
				lit[e.cell] = map[int]bool{}
			}
			lit[e.cell][e.seg] = lit[e.cell][e.seg] || e.lit
			minus = minus || e.seg == segMinus && e.lit
		}
		got := ""
		for i := range p.d.main.n {
			bits := 0
			for k := segA; k <= segG; k++ {
				if lit[i][k] {
					bits |= 1 << k
				}
			}
			got += map[bool]string{true: "-"}[minus && i == 0]
			glyph, ok := spell[bits]
			if !ok {
				t.Fatalf("seed %d: %q has a cell of segments %07b", seed, p.main, bits)
			}
			got += glyph
			if lit[i][segPoint] {
				got += "."
			}
		}
		want := strings.NewReplacer("O", "0").Replace(p.main)
		if g := strings.ReplaceAll(got, " ", ""); g != want {
			t.Errorf("seed %d: segments spell %q, want %q", seed, g, want)
		}
	}
}

// spell reads segments back, a to g from the lowest bit; written apart from the table that draws.
var spell = map[int]string{0: " ", 0x3f: "0", 0x06: "1", 0x26: "7", 0x5b: "2", 0x4f: "3", 0x66: "4", 0x6d: "5", 0x7d: "6", 0x7c: "6",
	0x07: "7", 0x7f: "8", 0x6f: "9", 0x67: "9", 0x40: "-", 0x38: "L", 0x79: "E", 0x50: "r", 0x5c: "o", 0x76: "H", 0x04: "i", 0x27: "7"}

func TestEnoughWithoutDisplay(t *testing.T) {
	for _, g := range []Grade{Easy, Medium, Hard} {
		none, hard := 0, 0
		for seed := uint64(0); seed < 600; seed++ {
			p := newPlan(seed, g, 0)
			if !p.has {
				none++
			}
			if p.kind == Phone {
				hard++
			}
		}
		if none < 600*30/100 || none > 600*45/100 || hard == 0 {
			t.Errorf("%v: %d of 600 without a display, %d lock screens", g, none, hard)
		}
	}
}

// A hidden number is not legible: a finger over the last digit takes the truth away.
func TestCoverTakesTheTruthAway(t *testing.T) {
	p := newPlan(302, Easy, 0)
	if !p.has {
		t.Fatal("seed 302 has no display")
	}
	take := func() Scene { return p.shoot(p.pose, show{main: p.main}, rng(1, 1), pt{}, 0) }
	if s := take(); !s.Legible {
		t.Fatalf("uncovered: %v", s)
	}
	d := p.d.main
	p.over = append(p.over, finger(pt{d.x + d.width() - d.h*d.st.wide, d.y + d.h*0.2}, 1, d.h, hx(skins[0]), true, 1))
	if s := take(); s.Legible || s.Shown != "" || s.Behind != p.main || s.Why != Hidden {
		t.Errorf("covered: %v, behind %q", s, s.Behind)
	}
}

func TestFilms(t *testing.T) {
	jumped := false
	for seed := uint64(1); seed <= 3; seed++ {
		f := Frames(seed, 3)
		if len(f) != 3 {
			t.Fatalf("seed %d: %d frames", seed, len(f))
		}
		for i, s := range f {
			jumped = jumped || s.Jumping
			if s.Kind != f[0].Kind || !s.Jumping && s.Behind != f[0].Behind || len(s.Behind) != len(f[0].Behind) {
				t.Errorf("seed %d frame %d: %v after %v", seed, i, s, f[0])
			}
			if i > 0 && bytes.Equal(s.JPEG, f[i-1].JPEG) {
				t.Errorf("seed %d: frames %d and %d are the same", seed, i-1, i)
			}
		}
	}
	if !jumped {
		t.Error("no film with a jumping digit among the first three")
	}
	codes := map[int]bool{}
	states := map[LightState]int{}
	for seed := uint64(0); seed < 60; seed++ {
		l := Light(seed)
		states[l.State]++
		if d := float64(l.N) / float64(l.FPS); d < 7.9 || d > 12 || l.FPS < 25 || l.FPS > 30 {
			t.Errorf("seed %d: %d frames at %d", seed, l.N, l.FPS)
		}
		codes[l.Code] = true
		ups := 0
		for i := 1; i < l.N; i++ {
			if l.Lit(i) && !l.Lit(i-1) {
				ups++
			}
		}
		if l.State == LightBlinks {
			if l.Code < 1 || l.Code > 9 || ups < l.Code*2-1 {
				t.Errorf("seed %d: code %d, %d rises in %d frames", seed, l.Code, ups, l.N)
			}
		} else if ups != 0 || l.Code != 0 {
			t.Errorf("seed %d: %s rises %d times, code %d", seed, l.State, ups, l.Code)
		}
	}
	if len(codes) < 8 || len(states) != 3 {
		t.Errorf("codes %v, states %v", codes, states)
	}
	for seed := uint64(0); seed < 20; seed++ {
		f := Fire(seed)
		if b := f.Burning(f.N - 1); b != (f.State == FireFlame) || f.Burning(0) != (f.State == FireFlame || f.State == FireOut) {
			t.Errorf("seed %d: %s, burning at the end %v", seed, f.State, b)
		}
	}
}

func TestBoards(t *testing.T) {
	same, n := 0, 6
	for seed := uint64(1); seed <= uint64(n); seed++ {
		b := Board(seed)
		if !b.Changed {
			same++
		}
		if len(b.Wires) < 6 || len(b.Wires) > 14 || len(b.AtBefore) != len(b.Terminals) {
			t.Errorf("seed %d: %d wires, %d terminals", seed, len(b.Wires), len(b.Terminals))
		}
		after, colors := map[string]bool{}, map[string]bool{}
		for i, w := range b.Wires {
			if w.After != "" && after[w.After] || colors[w.Color] {
				t.Errorf("seed %d: two wires on %s or of color %s", seed, w.After, w.Color)
			}
			after[w.After], colors[w.Color] = true, true
			if (b.Changes[i] == Left) != (w.Before == w.After) || (b.Changes[i] == Removed) != (w.After == "") {
				t.Errorf("seed %d: wire %v, change %s", seed, w, b.Changes[i])
			}
		}
		if bytes.Equal(b.Before.Pix, b.After.Pix) {
			t.Errorf("seed %d: one picture twice", seed)
		}
	}
	if same == 0 || same == n {
		t.Errorf("%d of %d pairs unchanged", same, n)
	}
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
