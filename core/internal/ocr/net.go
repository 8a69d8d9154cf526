package ocr

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"math"
	"runtime"
	"sync"
)

// Op is one step of a network. It works on the tensor that the step before left, height by width by channels.
type Op struct {
	Op   string `json:"op"` // conv, depth, save, load, add, up
	KH   int    `json:"kh,omitempty"`
	KW   int    `json:"kw,omitempty"`
	SY   int    `json:"sy,omitempty"`
	SX   int    `json:"sx,omitempty"`
	PY   int    `json:"py,omitempty"`
	PX   int    `json:"px,omitempty"`
	In   int    `json:"in,omitempty"`
	Out  int    `json:"out,omitempty"`
	Relu bool   `json:"relu,omitempty"`
	Name string `json:"name,omitempty"` // of what is saved, loaded, added or given the size of
	w    []float32
	bias []float32
}

// Net is a network: its steps with their weights, and the size of what it takes.
type Net struct {
	H, W, C int
	Ops     []Op
}

type netHead struct {
	H   int  `json:"h"`
	W   int  `json:"w"`
	C   int  `json:"c"`
	Ops []Op `json:"ops"`
}

var magic = []byte("RBNET1\n")

// errNet is wrapped by every error about a file of weights.
var errNet = errors.New("ocr: network")

const (
	mostOps     = 200
	mostWeights = 1 << 21
	mostSide    = 1024
)

// parse reads a network: the mark, the length of its description, the description in JSON, the weights as 16-bit floats, a CRC-32 of all.
func parse(b []byte) (*Net, error) {
	bad := func(format string, a ...any) (*Net, error) {
		return nil, fmt.Errorf("%w: %s", errNet, fmt.Sprintf(format, a...))
	}
	if len(b) < len(magic)+8 || string(b[:len(magic)]) != string(magic) {
		return bad("no mark at the start")
	}
	body := b[:len(b)-4]
	if got, want := crc32.ChecksumIEEE(body), binary.LittleEndian.Uint32(b[len(b)-4:]); got != want {
		return bad("checksum %08x, want %08x", got, want)
	}
	body = body[len(magic):]
	n := int(binary.LittleEndian.Uint32(body))
	body = body[4:]
	if n > len(body) {
		return bad("its description has %d bytes, %d are there", n, len(body))
	}
	var h netHead
	if err := json.Unmarshal(body[:n], &h); err != nil {
		return bad("description: %v", err)
	}
	body = body[n:]
	if h.H < 1 || h.W < 1 || h.C < 1 || h.H > mostSide || h.W > mostSide || h.C > 16 || len(h.Ops) > mostOps {
		return bad("%d by %d by %d with %d steps", h.H, h.W, h.C, len(h.Ops))
	}
	net := &Net{H: h.H, W: h.W, C: h.C, Ops: h.Ops}
	take := func(n int) ([]float32, bool) {
		if n < 0 || n > mostWeights || 2*n > len(body) {
			return nil, false
		}
		out := make([]float32, n)
		for i := range out {
			out[i] = fromHalf(binary.LittleEndian.Uint16(body[2*i:]))
			if v := float64(out[i]); math.IsNaN(v) || math.IsInf(v, 0) {
				return nil, false
			}
		}
		body = body[2*n:]
		return out, true
	}
	type shape struct{ h, w, c int }
	cur, saved := shape{h.H, h.W, h.C}, map[string]shape{}
	for i := range net.Ops {
		o := &net.Ops[i]
		switch o.Op {
		case "conv", "depth":
			if o.Op == "depth" {
				o.Out = o.In
			}
			if o.In != cur.c || o.Out < 1 || o.Out > 1024 || o.KH < 1 || o.KW < 1 || o.KH > 16 || o.KW > 16 || o.SY < 1 || o.SX < 1 || o.SY > 8 || o.SX > 8 || o.PY < 0 || o.PX < 0 || o.PY >= o.KH || o.PX >= o.KW {
				return bad("step %d (%s) does not fit %d channels", i, o.Op, cur.c)
			}
			size := o.Out * o.KH * o.KW
			if o.Op == "conv" {
				size *= o.In
			}
			var ok, ok2 bool
			if o.w, ok = take(size); ok {
				o.bias, ok2 = take(o.Out)
			}
			if !ok || !ok2 {
				return bad("step %d (%s): its weights are short or no numbers", i, o.Op)
			}
			cur = shape{(cur.h+2*o.PY-o.KH)/o.SY + 1, (cur.w+2*o.PX-o.KW)/o.SX + 1, o.Out}
			if cur.h < 1 || cur.w < 1 {
				return bad("step %d (%s) leaves nothing", i, o.Op)
			}
		case "save":
			saved[o.Name] = cur
		case "load":
			s, ok := saved[o.Name]
			if !ok {
				return bad("step %d: nothing is saved as %q", i, o.Name)
			}
			cur = s
		case "add":
			if s, ok := saved[o.Name]; !ok || s != cur {
				return bad("step %d: what is saved as %q cannot be added", i, o.Name)
			}
		case "up":
			s, ok := saved[o.Name]
			if !ok || s.h > 2*cur.h || s.w > 2*cur.w {
				return bad("step %d: cannot grow to %q", i, o.Name)
			}
			cur.h, cur.w = s.h, s.w
		default:
			return bad("step %d: nothing is called %q", i, o.Op)
		}
	}
	if len(body) != 0 {
		return bad("%d bytes too many", len(body))
	}
	return net, nil
}

// fromHalf turns a 16-bit float into a 32-bit one.
func fromHalf(h uint16) float32 {
	sign, exp, frac := uint32(h>>15)<<31, uint32(h>>10&31), uint32(h&1023)
	switch {
	case exp == 31:
		return math.Float32frombits(sign | 0x7f800000 | frac<<13)
	case exp == 0:
		v := float32(frac) / (1 << 24)
		if sign != 0 {
			v = -v
		}
		return v
	}
	return math.Float32frombits(sign | (exp+112)<<23 | frac<<13)
}

type tensor struct {
	v       []float32
	h, w, c int
}

func (t *tensor) size(h, w, c int) {
	t.h, t.w, t.c = h, w, c
	if cap(t.v) < h*w*c {
		t.v = make([]float32, h*w*c)
	}
	t.v = t.v[:h*w*c]
}

// Runner runs one network again and again in the same memory.
type Runner struct {
	net   *Net
	outs  []tensor
	saved map[string]*tensor
	cols  [mostParts][]float32
	in    tensor
}

const (
	mostParts = 4       // goroutines that share a step
	partWork  = 200_000 // products for which one more is worth its start, about 0.1 ms
)

// split lets several goroutines work at rows 0 to n of a step's output; each is computed as one alone would, so the result is the same.
func split(n, work int, f func(part, from, to int)) {
	parts := min(mostParts, runtime.GOMAXPROCS(0), n, work/partWork)
	if parts < 2 {
		f(0, 0, n)
		return
	}
	var wg sync.WaitGroup
	for i := 1; i < parts; i++ {
		wg.Go(func() { f(i, i*n/parts, (i+1)*n/parts) })
	}
	f(0, 0, n/parts)
	wg.Wait()
}

// newRunner makes a runner for a network.
func newRunner(n *Net) *Runner {
	r := &Runner{net: n, outs: make([]tensor, len(n.Ops)), saved: map[string]*tensor{}}
	r.in.size(n.H, n.W, n.C)
	return r
}

// Input is where the next picture goes: height by width by channels.
func (r *Runner) Input() []float32 { return r.in.v }

// Run computes the outputs, height by width by channels, for what is in Input.
func (r *Runner) Run() (v []float32, h, w, c int) {
	cur := &r.in
	for i := range r.net.Ops {
		o, out := &r.net.Ops[i], &r.outs[i]
		switch o.Op {
		case "conv":
			r.conv(o, cur, out)
			cur = out
		case "depth":
			depthwise(o, cur, out)
			cur = out
		case "save":
			r.saved[o.Name] = cur
		case "load":
			cur = r.saved[o.Name]
		case "add":
			s := r.saved[o.Name]
			out.size(cur.h, cur.w, cur.c)
			for i, v := range cur.v {
				out.v[i] = v + s.v[i]
			}
			if o.Relu {
				for i, v := range out.v {
					out.v[i] = max(0, v)
				}
			}
			cur = out
		case "up":
			s := r.saved[o.Name]
			out.size(s.h, s.w, cur.c)
			for y := range s.h {
				for x := range s.w {
					copy(out.v[(y*s.w+x)*cur.c:][:cur.c], cur.v[(y/2*cur.w+x/2)*cur.c:])
				}
			}
			cur = out
		}
	}
	return cur.v, cur.h, cur.w, cur.c
}

// conv gathers what each output sees into one row of numbers and multiplies; 1 by 1 needs no gathering.
func (r *Runner) conv(o *Op, in, out *tensor) {
	h, w := (in.h+2*o.PY-o.KH)/o.SY+1, (in.w+2*o.PX-o.KW)/o.SX+1
	out.size(h, w, o.Out)
	k := o.KH * o.KW * o.In
	if o.KH == 1 && o.KW == 1 && o.SY == 1 && o.SX == 1 {
		split(h*w, h*w*k*o.Out, func(_, from, to int) {
			multiply(in.v[from*k:], o.w, o.bias, out.v[from*o.Out:], to-from, k, o.Out, o.Relu)
		})
		return
	}
	split(h, h*w*k*o.Out, func(part, from, to int) {
		if cap(r.cols[part]) < w*k {
			r.cols[part] = make([]float32, w*k)
		}
		for y := from; y < to; y++ {
			o.gather(in, y, w, r.cols[part][:w*k])
			multiply(r.cols[part], o.w, o.bias, out.v[y*w*o.Out:], w, k, o.Out, o.Relu)
		}
	})
}

// gather puts what the outputs of row y see into rows of numbers, one an output.
func (o *Op) gather(in *tensor, y, w int, cols []float32) {
	k, line := o.KH*o.KW*o.In, o.KW*o.In
	for x := range w {
		to := cols[x*k:][:k]
		left := x*o.SX - o.PX
		for j := range o.KH {
			row, v := to[j*line:][:line], y*o.SY-o.PY+j
			if v < 0 || v >= in.h {
				clear(row)
				continue
			}
			if left >= 0 && left+o.KW <= in.w {
				copy(row, in.v[(v*in.w+left)*o.In:])
				continue
			}
			for i := range o.KW {
				if u := left + i; u >= 0 && u < in.w {
					copy(row[i*o.In:][:o.In], in.v[(v*in.w+u)*o.In:])
				} else {
					clear(row[i*o.In:][:o.In])
				}
			}
		}
	}
}

// multiply is out[i][j] = bias[j] + sum over q of a[i][q] w[j][q], two rows and four columns at a time. Every product is rounded before it is
// added, so that no compiler fuses the two and the result is the same on every machine.
func multiply(a, w, bias, out []float32, n, k, m int, relu bool) {
	for j := 0; j < m; j += 4 {
		if j+4 > m {
			for ; j < m; j++ {
				b := w[j*k:][:k]
				for i := range n {
					s := bias[j]
					for q, v := range a[i*k:][:k] {
						s += float32(v * b[q])
					}
					if relu {
						s = max(0, s)
					}
					out[i*m+j] = s
				}
			}
			return
		}
		b0, b1, b2, b3 := w[j*k:][:k], w[(j+1)*k:][:k], w[(j+2)*k:][:k], w[(j+3)*k:][:k]
		i := 0
		for ; i+2 <= n; i += 2 {
			x, y := a[i*k:][:k], a[(i+1)*k:][:k]
			s0, s1, s2, s3 := bias[j], bias[j+1], bias[j+2], bias[j+3]
			t0, t1, t2, t3 := s0, s1, s2, s3
			for q, u := range x {
				v := y[q]
				c := b0[q]
				s0 += float32(u * c)
				t0 += float32(v * c)
				c = b1[q]
				s1 += float32(u * c)
				t1 += float32(v * c)
				c = b2[q]
				s2 += float32(u * c)
				t2 += float32(v * c)
				c = b3[q]
				s3 += float32(u * c)
				t3 += float32(v * c)
			}
			if relu {
				s0, s1, s2, s3 = max(0, s0), max(0, s1), max(0, s2), max(0, s3)
				t0, t1, t2, t3 = max(0, t0), max(0, t1), max(0, t2), max(0, t3)
			}
			o := out[i*m+j:][:4]
			o[0], o[1], o[2], o[3] = s0, s1, s2, s3
			o = out[(i+1)*m+j:][:4]
			o[0], o[1], o[2], o[3] = t0, t1, t2, t3
		}
		if i < n {
			x := a[i*k:][:k]
			s0, s1, s2, s3 := bias[j], bias[j+1], bias[j+2], bias[j+3]
			for q, u := range x {
				s0 += float32(u * b0[q])
				s1 += float32(u * b1[q])
				s2 += float32(u * b2[q])
				s3 += float32(u * b3[q])
			}
			if relu {
				s0, s1, s2, s3 = max(0, s0), max(0, s1), max(0, s2), max(0, s3)
			}
			o := out[i*m+j:][:4]
			o[0], o[1], o[2], o[3] = s0, s1, s2, s3
		}
	}
}

// depthwise filters every channel by itself; its weights are stored place by place, all channels of one together.
func depthwise(o *Op, in, out *tensor) {
	h, w, c := (in.h+2*o.PY-o.KH)/o.SY+1, (in.w+2*o.PX-o.KW)/o.SX+1, in.c
	out.size(h, w, c)
	split(h, h*w*c*o.KH*o.KW, func(_, from, to int) { o.filter(in, out, from, to) })
}

func (o *Op) filter(in, out *tensor, first, end int) {
	w, c := out.w, out.c
	for y := first; y < end; y++ {
		for x := range w {
			to := out.v[(y*w+x)*c:][:c]
			copy(to, o.bias)
			for j := range o.KH {
				v := y*o.SY - o.PY + j
				if v < 0 || v >= in.h {
					continue
				}
				for i := range o.KW {
					u := x*o.SX - o.PX + i
					if u < 0 || u >= in.w {
						continue
					}
					from, k := in.v[(v*in.w+u)*c:][:len(to)], o.w[(j*o.KW+i)*c:][:len(to)]
					for q := range to {
						to[q] += float32(from[q] * k[q])
					}
				}
			}
			if o.Relu {
				for q, v := range to {
					to[q] = max(0, v)
				}
			}
		}
	}
}
