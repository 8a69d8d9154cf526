package camera

import (
	_ "embed"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// A small network gives a second opinion on every cell: the seven segments, the point after it, and whether the cell
// holds a glyph at all; and, beside the number, whether there is a minus sign. Its weights were learnt from 3,000 drawn meters and the tuning half of
// testdata/camera/lcd-digits.zip; the program that did it is no longer here (core/lab/trainreader of commit 495929b), since the networks of core/internal/ocr
// are the ones that are trained further, and this one is to stay another voice than theirs.
const (
	patchW   = 16 // columns of a patch: from a quarter of the digit's width left of it to 0.6 right of it
	patchH   = 24 // rows: a tenth of the height above to a tenth below
	patchLen = patchW * patchH

	netFilters = 8
	netKernel  = 5
	netCols    = (patchW-netKernel)/2 + 1
	netRows    = (patchH-netKernel)/2 + 1
	netFlat    = netFilters * netCols * netRows
	netHidden  = 48
	netOut     = 10 // segments a to g, point, glyph, minus sign in the middle
	netLen     = netFilters*(netKernel*netKernel+1) + netHidden*(netFlat+1) + netOut*(netHidden+1)
)

// The outputs after the segments.
const (
	outDot = 7 + iota
	outGlyph
	outMinus
)

// net is the network's weights in one slice: filters with bias, hidden layer with bias, output layer with bias.
type net struct{ w []float32 }

// netState holds one forward pass; the trainer needs its layers.
type netState struct {
	conv   [netFlat]float32
	hidden [netHidden]float32
	out    [netOut]float32 // log odds
}

// layers returns the three blocks of the weights.
func (n *net) layers() (conv, hidden, out []float32) {
	a := netFilters * (netKernel*netKernel + 1)
	b := a + netHidden*(netFlat+1)
	return n.w[:a], n.w[a:b], n.w[b:]
}

const leak = 0.1 // slope of the rectifier below zero

func rectify(x float32) float32 {
	if x < 0 {
		return leak * x
	}
	return x
}

// run computes the outputs for one patch. Every product is rounded before it is added, so that no compiler fuses the two and the
// result is the same on every machine.
func (n *net) run(in *[patchLen]float32, s *netState) {
	conv, hidden, out := n.layers()
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
				s.conv[i] = rectify(v)
				i++
			}
		}
	}
	for h := range netHidden {
		w := hidden[h*(netFlat+1) : (h+1)*(netFlat+1)]
		var a, b, c, d float32
		for i := 0; i < netFlat; i += 4 {
			a += float32(w[i] * s.conv[i])
			b += float32(w[i+1] * s.conv[i+1])
			c += float32(w[i+2] * s.conv[i+2])
			d += float32(w[i+3] * s.conv[i+3])
		}
		s.hidden[h] = rectify(a + b + c + d + w[netFlat])
	}
	for o := range netOut {
		w := out[o*(netHidden+1) : (o+1)*(netHidden+1)]
		v := w[netHidden]
		for i, h := range s.hidden {
			v += float32(w[i] * h)
		}
		s.out[o] = v
	}
}

// parseNet reads weights, little-endian float32.
func parseNet(b []byte) (*net, error) {
	if len(b) != 4*netLen {
		return nil, fmt.Errorf("camera: network weights: %d bytes, want %d", len(b), 4*netLen)
	}
	n := &net{w: make([]float32, netLen)}
	for i := range n.w {
		n.w[i] = math.Float32frombits(binary.LittleEndian.Uint32(b[4*i:]))
		if v := float64(n.w[i]); math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, errors.New("camera: network weights: not a number among them")
		}
	}
	return n, nil
}

//go:embed net.bin
var netBytes []byte

var ownNet = func() *net {
	n, err := parseNet(netBytes)
	if err != nil {
		panic("camera: the embedded network is damaged")
	}
	return n
}()

// patch samples the ink of a cell for the network; ref is the ink that counts as lit.
func (s *strip) patch(x, w, top, h, ref float64, out *[patchLen]float32) {
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

// jitter moves a cell before its patch is taken: shift and growth in x by the digit's width, in y by its height.
type jitter struct{ x, y float64 }

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
