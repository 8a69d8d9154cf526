package camera

import (
	"encoding/json"
	"image"
	"image/color"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"readback/core/internal/ocr"
	"readback/core/lab/otherrender"
	"readback/core/lab/render"
)

// evidence is all that the voices said about one picture, and what is true: what chance is fitted on, and what shows which stage loses.
type evidence struct {
	Set, Kind     string
	Seed          uint64
	Grade         int
	Legible, Has  bool
	Shown, Behind string
	Tall          float64
	Found         bool // some row lies on the number
	Chosen        bool // the row that was read lies on it
	Lines         int
	LineP, LineH  float64
	Rival         bool
	First, Again  rowSaid
	Grey, Far     rowSaid // without colour; from farther left
	Cut           float64 // how near its ends come to the picture's edge, in digit heights
	Hand          handSaid
	Text          string
	P             float64
	Reason        string
	Right         bool
}

type rowSaid struct {
	Text                                                 string
	P, Start, End, Stray, Minus, Blur, Least, Squeeze, U float64
	Odd                                                  bool
}

type handSaid struct {
	Text, Reason   string
	P              float64
	OK, Doubt, Any bool
}

func saidOf(r *ocr.Row) (s rowSaid) {
	if r == nil {
		return s
	}
	s = rowSaid{Text: r.Text(), P: r.P(), Start: r.Start, End: r.End, Stray: r.Stray, Minus: r.Minus, Blur: r.Blur, Least: 1, Squeeze: r.Squeeze, U: r.Uneven, Odd: r.Odd}
	for i := range r.Places {
		s.Least = math.Min(s.Least, r.Places[i].P)
	}
	return s
}

func planesOf(m *image.RGBA) *Plane {
	b := m.Bounds()
	w, h := b.Dx(), b.Dy()
	cw, ch := (w+1)/2, (h+1)/2
	p := &Plane{Y: make([]byte, w*h), W: w, H: h, Stride: w, Cb: make([]byte, cw*ch), Cr: make([]byte, cw*ch), CStride: cw, Sub: 2}
	for y := range h {
		for x := range w {
			i := m.PixOffset(b.Min.X+x, b.Min.Y+y)
			l, cb, cr := color.RGBToYCbCr(m.Pix[i], m.Pix[i+1], m.Pix[i+2])
			p.Y[y*w+x] = l
			if x%2 == 0 && y%2 == 0 {
				p.Cb[y/2*cw+x/2], p.Cr[y/2*cw+x/2] = cb, cr
			}
		}
	}
	return p
}

func (e *evidence) of(r *Reader, p *Plane, number image.Rectangle) {
	rd, err := r.Read(p)
	if err != nil {
		panic(err)
	}
	on := func(l *ocr.Line) bool {
		return image.Pt(int((l.X0+l.X1)/2), int((l.Y0+l.Y1)/2)).In(number) && l.H > 0.6*e.Tall && l.H < 1.6*e.Tall
	}
	lines := r.nets.nets.Lines(&r.nets.pic, r.nets.pic.Whole())
	e.Lines = len(lines)
	for i := range lines {
		e.Found = e.Found || on(&lines[i])
	}
	if k := r.last.k; k != nil {
		e.Chosen, e.LineP, e.LineH, e.Rival = on(&k.line), k.line.P, k.line.H, k.rival != nil
		e.First, e.Again = saidOf(k.first), saidOf(k.again)
		l := k.line
		e.Cut = math.Min(math.Min(l.X0, l.X1), math.Min(l.Y0, l.Y1))
		e.Cut = math.Min(e.Cut, math.Min(float64(p.W)-math.Max(l.X0, l.X1), float64(p.H)-math.Max(l.Y0, l.Y1))) / l.H
		n := math.Max(1, math.Hypot(l.X1-l.X0, l.Y1-l.Y0))
		ex, ey := (l.X1-l.X0)/n*l.H, (l.Y1-l.Y0)/n*l.H
		far := l
		far.X0, far.Y0 = l.X0-3.6*ex, l.Y0-3.6*ey
		e.Far = saidOf(r.nets.nets.Read(&r.nets.pic, &far))
		grey := *p
		grey.Cb, grey.Cr = nil, nil
		r.nets.set(&grey)
		l.X0, l.Y0, l.X1, l.Y1 = l.X0+0.06*ex-0.03*ey, l.Y0+0.06*ey+0.03*ex, l.X1+0.2*ex-0.03*ey, l.Y1+0.2*ey+0.03*ex
		l.H *= 0.95
		e.Grey = saidOf(r.nets.nets.Read(&r.nets.pic, &l))
		if h := r.last.hand; h != nil {
			e.Hand = handSaid{h.Text, string(h.Reason), h.P, h.OK(), h.doubt, h.Shows != ""}
		}
	}
	e.Text, e.P, e.Reason = rd.Text, rd.P, string(rd.Reason)
	e.Right = e.Legible && (rd.Text == e.Shown || rd.Shows == Over && strings.HasSuffix(e.Shown, "L"))
}

// TestEvidence writes what was said about odd seeds of the other hand's drawings and about our own that nothing is trained on, one line of JSON a
// picture, into the file that EVIDENCE names. EVIDENCE_N says how many of each.
func TestEvidence(t *testing.T) {
	path := os.Getenv("EVIDENCE")
	if path == "" {
		t.Skip("EVIDENCE names no file")
	}
	number := func(name string, def int) int {
		if n, err := strconv.Atoi(os.Getenv(name)); err == nil {
			return n
		}
		return def
	}
	var nets *ocr.Nets // others than our own
	if dir := os.Getenv("EVIDENCE_NETS"); dir != "" {
		var b [3][]byte
		for i, name := range [3]string{"find", "align", "row"} {
			var err error
			if b[i], err = os.ReadFile(filepath.Join(dir, name+".bin")); err != nil {
				t.Fatal(err)
			}
		}
		var err error
		if nets, err = ocr.Load(b[0], b[1], b[2]); err != nil {
			t.Fatal(err)
		}
	}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	other, own, from := number("EVIDENCE_N", 100), number("EVIDENCE_OWN", 0), number("EVIDENCE_FROM", 0)
	out := make([]evidence, 3*other+own)
	var next atomic.Int64
	var wg sync.WaitGroup
	for range runtime.NumCPU() {
		wg.Go(func() {
			var r Reader
			if nets != nil {
				r.nets.nets = ocr.NewReader(nets)
			}
			for {
				i := int(next.Add(1)) - 1
				if i >= len(out) {
					return
				}
				e := &out[i]
				if i < 3*other {
					s := otherrender.Draw(uint64(2*(i/3+from)+1), otherrender.Grade(i%3))
					*e = evidence{Set: "other", Kind: string(s.Kind), Seed: s.Seed, Grade: int(s.Grade), Legible: s.Legible, Has: s.HasDisplay,
						Shown: strings.ReplaceAll(s.Shown, "O", "0"), Behind: s.Behind, Tall: s.DigitHeight}
					e.of(&r, planesOf(s.Image), s.Number)
					continue
				}
				seed := uint64(6_000_000 + i + 3*from)
				v := render.NewPanel(seed, render.PanelOptions{W: 800, H: 600}).Shoot(0)
				*e = evidence{Set: "own", Kind: v.Kind, Seed: seed, Has: len(v.Rows) > 0}
				var box image.Rectangle
				for j := range v.Rows {
					row := &v.Rows[j]
					if !row.Main || e.Shown != "" {
						continue
					}
					e.Legible, e.Shown, e.Behind, e.Tall = true, strings.ReplaceAll(row.Text, "O", "0"), row.Text, row.Height
					for k := range row.Glyphs {
						g := &row.Glyphs[k]
						e.Legible = e.Legible && g.Seen > 0.12 && !g.Outside
						box = box.Union(image.Rect(int(g.Box[0][0]), int(g.Box[0][1]), int(g.Box[2][0])+1, int(g.Box[2][1])+1))
					}
				}
				if i%3 == 0 && !box.Empty() && e.Tall > 13 { // as somebody cut it out
					m := int(e.Tall * 0.4)
					v = v.Crop(box.Min.X-m, box.Min.Y-m, box.Max.X+m, box.Max.Y+m)
					e.Set, box = "crop", image.Rect(0, 0, v.W, v.H)
				}
				e.of(&r, &Plane{Y: v.Y, W: v.W, H: v.H, Stride: v.W, Cb: v.Cb, Cr: v.Cr, CStride: (v.W + 1) / 2, Sub: 2}, box)
			}
		})
	}
	wg.Wait()
	enc := json.NewEncoder(f)
	for i := range out {
		if err := enc.Encode(&out[i]); err != nil {
			t.Fatal(err)
		}
	}
}
