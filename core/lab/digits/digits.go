// Package digits holds the photographed single digits of testdata/camera/lcd-digits.zip, and says which of them may be learnt from.
package digits

import (
	"archive/zip"
	"fmt"
	"hash/fnv"
	"image/jpeg"
	"io"
	"path"
	"slices"
	"strconv"
	"strings"

	"readback/core/camera"
)

// Photo is one picture of a digit.
type Photo struct {
	Name  string // "07/07_123.jpg"
	Digit int    // 0 to 9; Blank for a cell that shows nothing
	Plane *camera.Plane
}

// Blank is the digit of a cell that shows nothing, as its folder is called.
const Blank = 11

// Learn tells whether the picture may be learnt from: those whose file name hashes odd (FNV-1a, 32 bit). The others are for figures only.
func (p *Photo) Learn() bool {
	h := fnv.New32a()
	h.Write([]byte(path.Base(p.Name)))
	return h.Sum32()%2 == 1
}

// Want is what a reader should say: the digit, or a blank.
func (p *Photo) Want() string {
	if p.Digit == Blank {
		return " "
	}
	return strconv.Itoa(p.Digit)
}

// Read opens an archive that has one folder for each digit and returns its pictures in the order of their names.
func Read(z *zip.Reader) ([]Photo, error) {
	files := slices.Clone(z.File)
	slices.SortFunc(files, func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) })
	var out []Photo
	for _, f := range files {
		if !strings.HasSuffix(f.Name, ".jpg") {
			continue
		}
		d, err := strconv.Atoi(path.Dir(f.Name))
		if err != nil || d < 0 || d > Blank {
			return nil, fmt.Errorf("digits: %s lies in no folder of a digit", f.Name)
		}
		p, err := decode(f)
		if err != nil {
			return nil, fmt.Errorf("digits: %s: %w", f.Name, err)
		}
		out = append(out, Photo{f.Name, d, p})
	}
	return out, nil
}

func decode(f *zip.File) (*camera.Plane, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	m, err := jpeg.Decode(io.LimitReader(r, 1<<20))
	if err != nil {
		return nil, err
	}
	b := m.Bounds()
	p := &camera.Plane{Y: make([]byte, b.Dx()*b.Dy()), W: b.Dx(), H: b.Dy(), Stride: b.Dx()}
	for y := range p.H {
		for x := range p.W {
			r, g, bl, _ := m.At(b.Min.X+x, b.Min.Y+y).RGBA()
			p.Y[y*p.W+x] = byte((299*r + 587*g + 114*bl) / 1000 >> 8)
		}
	}
	return p, nil
}
