package camera

import (
	_ "embed"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"slices"
)

// A small network gives a second opinion on every cell: the seven segments, the point after it, and whether the cell
// holds a glyph at all; and, beside the number, whether there is a minus sign. It is trained by the command in core/lab/trainreader from drawn meters and the tuning half of
// testdata/camera/lcd-digits.zip; the command, its seed and the weights are part of the repository.
const (
	patchW   = 16 // columns of a patch: from a quarter of the digit's width left of it to 0.6 right of it
	patchH   = 24 // rows: a tenth of the height above to a tenth below
	PatchLen = patchW * patchH

	netFilters = 8
	netKernel  = 5
	netCols    = (patchW-netKernel)/2 + 1
	netRows    = (patchH-netKernel)/2 + 1
	netFlat    = netFilters * netCols * netRows
	netHidden  = 48
	NetOut     = 10 // segments a to g, point, glyph, minus sign in the middle
	NetLen     = netFilters*(netKernel*netKernel+1) + netHidden*(netFlat+1) + NetOut*(netHidden+1)
)

// The outputs after the segments.
const (
	outDot = 7 + iota
	outGlyph
	outMinus
)

// Net is the network's weights in one slice: filters with bias, hidden layer with bias, output layer with bias.
type Net struct{ W []float32 }

// NetState holds one forward pass; the trainer needs its layers.
type NetState struct {
	Conv   [netFlat]float32
	Hidden [netHidden]float32
	Out    [NetOut]float32 // log odds
}

// Layers returns the three blocks of the weights.
func (n *Net) Layers() (conv, hidden, out []float32) {
	a := netFilters * (netKernel*netKernel + 1)
	b := a + netHidden*(netFlat+1)
	return n.W[:a], n.W[a:b], n.W[b:]
}

const leak = 0.1 // slope of the rectifier below zero

func rectify(x float32) float32 {
	if x < 0 {
		return leak * x
	}
	return x
}

// Run computes the outputs for one patch. Every product is rounded before it is added, so that no compiler fuses the two and the
// result is the same on every machine.
func (n *Net) Run(in *[PatchLen]float32, s *NetState) {
	conv, hidden, out := n.Layers()
	const k2 = netKernel * netKernel
	i := 0
	for f := range netFilters {
		w := conv[f*(k2+1) : (f+1)*(k2+1)]
		for y := range netRows {
			for x := range netCols {
				v := w[k2]
				for j := range netKernel {
					row := in[(2*y+j)*patchW+2*x:][:netKernel]
					k := w[j*netKernel:][:netKernel]
					v += float32(row[0]*k[0]) + float32(row[1]*k[1]) + float32(row[2]*k[2]) + float32(row[3]*k[3]) + float32(row[4]*k[4])
				}
				s.Conv[i] = rectify(v)
				i++
			}
		}
	}
	for h := range netHidden {
		w := hidden[h*(netFlat+1) : (h+1)*(netFlat+1)]
		var a, b, c, d float32
		for i := 0; i < netFlat; i += 4 {
			a += float32(w[i] * s.Conv[i])
			b += float32(w[i+1] * s.Conv[i+1])
			c += float32(w[i+2] * s.Conv[i+2])
			d += float32(w[i+3] * s.Conv[i+3])
		}
		s.Hidden[h] = rectify(a + b + c + d + w[netFlat])
	}
	for o := range NetOut {
		w := out[o*(netHidden+1) : (o+1)*(netHidden+1)]
		v := w[netHidden]
		for i, h := range s.Hidden {
			v += float32(w[i] * h)
		}
		s.Out[o] = v
	}
}

// Learn adds the gradient of the logistic loss for one patch to grad (as long as W) and returns the loss. Targets are 0
// or 1; a negative target is not learnt. Run must have been called with the same patch and state.
func (n *Net) Learn(in *[PatchLen]float32, s *NetState, target *[NetOut]float32, grad []float32) float64 {
	_, hidden, out := n.Layers()
	const k2 = netKernel * netKernel
	a := netFilters * (k2 + 1)
	b := a + netHidden*(netFlat+1)
	gc, gh, g := grad[:a], grad[a:b], grad[b:]
	var dh [netHidden]float32
	loss := 0.0
	for o := range NetOut {
		t := target[o]
		if t < 0 {
			continue
		}
		p := sigmoid(float64(s.Out[o]))
		loss -= float64(float64(t)*math.Log(p+1e-9)) + float64(float64(1-t)*math.Log(1-p+1e-9))
		d := float32(p) - t
		w := out[o*(netHidden+1):]
		q := g[o*(netHidden+1):]
		for i, h := range s.Hidden {
			q[i] += float32(d * h)
			dh[i] += float32(d * w[i])
		}
		q[netHidden] += d
	}
	var dc [netFlat]float32
	for h := range netHidden {
		d := dh[h]
		if s.Hidden[h] < 0 {
			d *= leak
		}
		w := hidden[h*(netFlat+1):][:netFlat]
		q := gh[h*(netFlat+1):][:netFlat+1]
		for i, c := range s.Conv {
			q[i] += float32(d * c)
			dc[i] += float32(d * w[i])
		}
		q[netFlat] += d
	}
	i := 0
	for f := range netFilters {
		q := gc[f*(k2+1):][:k2+1]
		for y := range netRows {
			for x := range netCols {
				d := dc[i]
				if s.Conv[i] < 0 {
					d *= leak
				}
				i++
				for j := range netKernel {
					row := in[(2*y+j)*patchW+2*x:][:netKernel]
					k := q[j*netKernel:][:netKernel]
					for t, v := range row {
						k[t] += float32(d * v)
					}
				}
				q[k2] += d
			}
		}
	}
	return loss
}

// Bytes is the form in which weights are kept: little-endian float32.
func (n *Net) Bytes() []byte {
	out := make([]byte, 4*len(n.W))
	for i, w := range n.W {
		binary.LittleEndian.PutUint32(out[4*i:], math.Float32bits(w))
	}
	return out
}

// ParseNet reads what Bytes wrote.
func ParseNet(b []byte) (*Net, error) {
	if len(b) != 4*NetLen {
		return nil, fmt.Errorf("camera: network weights: %d bytes, want %d", len(b), 4*NetLen)
	}
	n := &Net{W: make([]float32, NetLen)}
	for i := range n.W {
		n.W[i] = math.Float32frombits(binary.LittleEndian.Uint32(b[4*i:]))
		if v := float64(n.W[i]); math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, errors.New("camera: network weights: not a number among them")
		}
	}
	return n, nil
}

//go:embed net.bin
var netBytes []byte

var ownNet = func() *Net {
	n, err := ParseNet(netBytes)
	if err != nil {
		panic("camera: the embedded network is damaged")
	}
	return n
}()

// patch samples the ink of a cell for the network; ref is the ink that counts as lit.
func (s *strip) patch(x, w, top, h, ref float64, out *[PatchLen]float32) {
	k := float32(1 / ref)
	for j := range patchH {
		v := top + h*(-0.1+1.2*(float64(j)+0.5)/patchH) - 0.5
		v = math.Max(0, math.Min(stripH-1.001, v))
		v0 := int(v)
		fv := float32(v - float64(v0))
		a, b := s.ink[v0*s.w:(v0+1)*s.w], s.ink[(v0+1)*s.w:(v0+2)*s.w]
		for i := range patchW {
			u := x + w*(-0.25+1.85*(float64(i)+0.5)/patchW) - 0.5
			u = math.Max(0, math.Min(float64(s.w)-1.001, u))
			u0 := int(u)
			fu := float32(u - float64(u0))
			t := float32(a[u0]*(1-fu)) + float32(a[u0+1]*fu)
			d := float32(b[u0]*(1-fu)) + float32(b[u0+1]*fu)
			out[j*patchW+i] = min(1.3, (float32(t*(1-fv))+float32(d*fv))*k)
		}
	}
}

// Patch is what the network sees of one cell, with the cell's corners in the picture: top left, top right, bottom right, bottom left.
type Patch struct {
	In   [PatchLen]float32
	Box  [4][2]float64
	Side bool // beside the number, where a minus sign may be
}

// Jitter moves a cell before its patch is taken: shift and growth in x by the digit's width, in y by its height.
type Jitter struct{ X, W, Y, H float64 }

// Patches returns what the network sees in a picture, once for each jitter, for the trainer: the cells of the most
// promising rows of a picture of a whole display.
func (r *Reader) Patches(p *Plane, jitters []Jitter) ([]Patch, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	r.useNet()
	r.read(r.pyramid(p))
	var out []Patch
	rows := slices.Clone(r.lines[:min(4, len(r.lines))])
	if len(r.views) > 0 {
		rows = slices.Insert(rows, 0, r.chosen)
	}
	for i, l := range rows {
		if rd, _ := r.readLine(r.levels, l); rd != nil {
			out = r.take(out, jitters)
			if s, g := &r.strip, &r.grids[0]; i == 0 {
				ref := s.rowRef(g)
				s.beside(g, func(x float64) {
					pt := Patch{Box: s.corners(x, g.w), Side: true}
					s.patch(x, g.w, s.top, s.h, ref, &pt.In)
					out = append(out, pt)
				})
			}
			jitters = jitters[:max(1, len(jitters)/2)]
		}
	}
	return out, nil
}

// DigitPatches does the same for a picture of a single digit, as dark on light or as light on dark.
func (r *Reader) DigitPatches(p *Plane, light bool, jitters []Jitter) ([]Patch, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	w, h, squeeze := r.single(p)
	if rd, _ := r.readSingle(w, h, squeeze, light); rd == nil {
		return nil, nil
	}
	return r.take(nil, jitters), nil
}

// take adds the patches of the strip's cells.
func (r *Reader) take(out []Patch, jitters []Jitter) []Patch {
	s, g := &r.strip, &r.grids[0]
	for _, x := range g.x {
		for _, j := range jitters {
			var pt Patch
			var z zones
			s.zonesAt(x, g.w, &z)
			w, h := g.w*(1+j.W), s.h*(1+j.H)
			s.patch(x+j.X*g.w-(w-g.w)/2, w, s.top+j.Y*s.h-(h-s.h)/2, h, z.ref(), &pt.In)
			pt.Box = s.corners(x+j.X*g.w, g.w)
			out = append(out, pt)
		}
	}
	return out
}

// beside calls f for every place to the left of the number where a minus sign may be: before the first digit, or at the left
// end of a window whose first places are blank.
func (s *strip) beside(g *grid, f func(x float64)) {
	for x := g.x[0] - 0.3*g.pitch; x > g.x[0]-2.6*g.pitch && x > -0.5*g.w; x -= 0.08 * s.h {
		f(x)
	}
}

// rowRef is the ink that counts as lit in the whole row.
func (s *strip) rowRef(g *grid) float64 {
	var z zones
	sum := 0.0
	for _, x := range g.x {
		s.zonesAt(x, g.w, &z)
		sum += z.ref()
	}
	return sum / float64(len(g.x))
}

// ref is the ink that counts as lit in this cell: its darkest segment, so that the ghost of an old value is not.
func (z *zones) ref() float64 { return math.Max(0.5, z.peak()) }

// peak is the ink of the darkest segment.
func (z *zones) peak() float64 {
	top := 0.0
	for _, v := range z.seg {
		top = math.Max(top, v)
	}
	return top
}
