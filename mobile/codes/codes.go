// Package codes reads the bar codes and square codes printed on rating plates and parts from grey pictures.
package codes

import (
	"fmt"
	"image"
	"math"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/datamatrix"
	"github.com/makiuchi-d/gozxing/oned"
	"github.com/makiuchi-d/gozxing/qrcode"

	"readback/core/camera"
)

// Code is one code found.
type Code struct {
	Kind string      // "QR_CODE", "DATA_MATRIX", "CODE_128", "CODE_39", "CODE_93", "EAN_13" (UPC-A too, with a leading 0)
	Text string      // as encoded
	At   image.Point // somewhere on it, in the picture's pixels
}

// longest side of the picture that is searched first, and second.
const (
	fine   = 1000
	coarse = 500
)

// Read finds the codes in a picture: at two sizes, square codes as they lie, bar codes at four turns. It returns nothing
// and no error when there is none; an error means that the picture is unusable.
// Short retail codes (EAN-8, UPC-E) are left out: they turn up in noise.
func Read(p *camera.Plane) ([]Code, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	var out []Code
	seen := map[string]bool{}
	add := func(c Code) {
		if k := c.Kind + " " + c.Text; !seen[k] && c.Text != "" {
			seen[k] = true
			out = append(out, c)
		}
	}
	for _, side := range [2]int{fine, coarse} {
		if side == coarse && (len(out) > 0 || max(p.W, p.H) <= coarse) {
			break
		}
		g := reduce(p, side)
		for _, square := range [2]gozxing.Reader{qrcode.NewQRCodeReader(), datamatrix.NewDataMatrixReader()} {
			for _, pure := range [2]bool{false, true} {
				if c, ok := decode(square, g, pure); ok {
					c.At = image.Pt(int(float64(c.At.X)*g.scale), int(float64(c.At.Y)*g.scale))
					add(c)
					break
				}
			}
		}
		for _, turn := range [4]float64{0, math.Pi / 2, math.Pi / 4, -math.Pi / 4} {
			t := g.turn(turn)
			for _, bars := range [4]gozxing.Reader{oned.NewCode128Reader(), oned.NewCode39Reader(), oned.NewEAN13Reader(), oned.NewCode93Reader()} {
				c, ok := decode(bars, t, false)
				if !ok || len(c.Text) < 4 { // shorter ones turn up by chance, Code 39 has no check digit
					continue
				}
				x, y := t.back(float64(c.At.X), float64(c.At.Y))
				c.At = image.Pt(int(x*g.scale), int(y*g.scale))
				add(c)
			}
		}
	}
	return out, nil
}

// picture is a packed grey picture; it may be a turned copy of another.
type picture struct {
	pix          []byte
	w, h         int
	scale        float64 // pixels of the original per pixel
	cos, sin     float64
	cx, cy, u, v float64 // centre of the original of a turned copy, and of the copy
}

// reduce averages blocks so that the longest side is at most side.
func reduce(p *camera.Plane, side int) *picture {
	f := 1
	for max(p.W, p.H)/f > side {
		f++
	}
	small := p.Reduced(f)
	return &picture{w: small.W, h: small.H, pix: small.Y, scale: float64(f), cos: 1}
}

// turn returns a copy turned by an angle in radians, large enough to hold all of it.
func (g *picture) turn(a float64) *picture {
	if a == 0 {
		return g
	}
	c, s := math.Cos(a), math.Sin(a)
	w := int(math.Ceil(math.Abs(float64(g.w)*c) + math.Abs(float64(g.h)*s)))
	h := int(math.Ceil(math.Abs(float64(g.w)*s) + math.Abs(float64(g.h)*c)))
	t := &picture{pix: make([]byte, w*h), w: w, h: h, scale: g.scale, cos: c, sin: s,
		cx: float64(g.w-1) / 2, cy: float64(g.h-1) / 2, u: float64(w-1) / 2, v: float64(h-1) / 2}
	for y := range h {
		for x := range w {
			i, j := t.back(float64(x), float64(y))
			if i < 0 || j < 0 || i > float64(g.w-1) || j > float64(g.h-1) {
				t.pix[y*w+x] = 255
				continue
			}
			i0, j0 := int(i), int(j)
			i1, j1 := min(i0+1, g.w-1), min(j0+1, g.h-1)
			fx, fy := i-float64(i0), j-float64(j0)
			top := float64(g.pix[j0*g.w+i0])*(1-fx) + float64(g.pix[j0*g.w+i1])*fx
			bot := float64(g.pix[j1*g.w+i0])*(1-fx) + float64(g.pix[j1*g.w+i1])*fx
			t.pix[y*w+x] = byte(top*(1-fy) + bot*fy)
		}
	}
	return t
}

// back is the place in the picture a turned copy was made from.
func (g *picture) back(x, y float64) (float64, float64) {
	if g.sin == 0 && g.cos == 1 {
		return x, y
	}
	x, y = x-g.u, y-g.v
	return g.cos*x - g.sin*y + g.cx, g.sin*x + g.cos*y + g.cy
}

// decode runs one reader. The readers are foreign code on pictures of anything: a panic in them is a code not found.
func decode(r gozxing.Reader, g *picture, pure bool) (c Code, ok bool) {
	defer func() {
		if recover() != nil {
			c, ok = Code{}, false
		}
	}()
	src, err := gozxing.NewPlanarYUVLuminanceSource(g.pix, g.w, g.h, 0, 0, g.w, g.h, false)
	if err != nil {
		panic(fmt.Sprintf("codes: a packed picture was refused: %v", err))
	}
	bmp, err := gozxing.NewBinaryBitmap(gozxing.NewHybridBinarizer(src))
	if err != nil {
		return Code{}, false
	}
	hints := map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true}
	if pure {
		hints[gozxing.DecodeHintType_PURE_BARCODE] = true
	}
	res, err := r.Decode(bmp, hints)
	if err != nil {
		return Code{}, false
	}
	c = Code{Kind: res.GetBarcodeFormat().String(), Text: res.GetText()}
	for _, q := range res.GetResultPoints() {
		if q != nil {
			c.At = image.Pt(int(q.GetX()), int(q.GetY()))
			break
		}
	}
	return c, true
}
