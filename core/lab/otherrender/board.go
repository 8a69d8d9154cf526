package otherrender

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
)

type wireColor struct {
	name string
	hex  uint32
}

var wireColors = []wireColor{{"red", 0xc01c1c}, {"black", 0x1a1a1c}, {"white", 0xe8e8e2}, {"green", 0x1f8a3c}, {"yellow", 0xe0c81c}, {"blue", 0x2050b8}, {"orange", 0xe0701c}, {"brown", 0x6a4024}, {"purple", 0x7a3a98}, {"gray", 0x888a8c}}

// Wire is one wire of a control board; a terminal is "" where the wire is on none.
type Wire struct {
	Color         string // "red", or "white/red" for white with a red stripe
	Before, After string
}

// Change says what happened to a wire between the two pictures.
type Change string

const (
	Left    Change = "left"
	Moved   Change = "moved"
	Swapped Change = "swapped"
	Removed Change = "removed"
)

// BoardPair is a control board photographed twice, from another place and under another light.
type BoardPair struct {
	Seed          uint64
	Before, After *image.RGBA
	Terminals     []string
	Wires         []Wire
	Changes       []Change // one for each wire
	Changed       bool
	// AtBefore and AtAfter are where the terminals lie in the two pictures.
	AtBefore, AtAfter []image.Point
}

type boardWire struct {
	main, stripe rgb
	striped      bool
	exit         pt
	bend         [2]pt
	width        float64
}

// Board draws a pair. A third of the pairs is unchanged.
func Board(seed uint64) BoardPair {
	r := rng(seed, 3)
	b := BoardPair{Seed: seed}
	n := 6 + r.IntN(9)
	spare := 1 + r.IntN(4)
	names := []string{"R", "C", "W", "Y", "G", "W2", "Y2", "24V", "COM", "LINE", "XFMR", "EAC", "HUM", "COOL", "HEAT", "PARK", "L1", "N", "IND", "FS"}
	perm := r.Perm(len(names))
	for _, k := range perm[:n+spare] {
		b.Terminals = append(b.Terminals, names[k])
	}
	total := len(b.Terminals)
	perRow := total
	if total > 9 {
		perRow = (total + 1) / 2
	}
	pitch := 12 + 3*r.Float64()
	rows := (total + perRow - 1) / perRow
	gap := 46 + 20*r.Float64()
	place := func(i int) pt {
		return pt{(float64(i%perRow) - float64(perRow-1)/2) * pitch, (float64(i/perRow) - float64(rows-1)/2) * gap}
	}
	spots := r.Perm(total)
	used := map[string]bool{}
	var look []boardWire
	for i := range n {
		var w boardWire
		var name string
		for {
			m := wireColors[r.IntN(len(wireColors))]
			name, w.main, w.striped = m.name, hx(m.hex), false
			if r.IntN(5) == 0 {
				s := wireColors[r.IntN(len(wireColors))]
				if s.name == m.name {
					continue
				}
				name, w.stripe, w.striped = m.name+"/"+s.name, hx(s.hex), true
			}
			if !used[name] {
				break
			}
		}
		used[name] = true
		at := place(spots[i])
		up := at.y < 0 || rows == 1 && r.IntN(2) == 0
		w.exit = pt{at.x*0.6 + r.NormFloat64()*35, 170}
		if up {
			w.exit.y = -170
		}
		s := math.Copysign(1, w.exit.y)
		w.bend = [2]pt{{r.NormFloat64() * 6, s * (25 + 25*r.Float64())}, {r.NormFloat64() * 30, -s * (40 + 40*r.Float64())}}
		w.width = 2.6 + 1.2*r.Float64()
		look = append(look, w)
		b.Wires = append(b.Wires, Wire{Color: name, Before: b.Terminals[spots[i]], After: b.Terminals[spots[i]]})
		b.Changes = append(b.Changes, Left)
	}
	if r.IntN(3) > 0 {
		free := append([]int(nil), spots[n:]...)
		for k := 1 + r.IntN(2); k > 0; k-- {
			i := r.IntN(n)
			if b.Changes[i] != Left {
				continue
			}
			switch r.IntN(3) {
			case 0:
				b.Changes[i], b.Wires[i].After = Removed, ""
			case 1:
				if len(free) > 0 {
					b.Changes[i], b.Wires[i].After = Moved, b.Terminals[free[0]]
					free = free[1:]
				}
			default:
				j := r.IntN(n)
				if j != i && b.Changes[j] == Left {
					b.Changes[i], b.Changes[j] = Swapped, Swapped
					b.Wires[i].After, b.Wires[j].After = b.Wires[j].Before, b.Wires[i].Before
				}
			}
		}
	}
	for _, c := range b.Changes {
		b.Changed = b.Changed || c != Left
	}
	index := map[string]int{}
	for i, t := range b.Terminals {
		index[t] = i
	}
	board := boardOps(r, b.Terminals, place, float64(perRow)*pitch/2+14, float64(rows-1)*gap/2+34)
	dangles := make([]bool, n)
	for i := range dangles {
		dangles[i] = r.IntN(2) == 0
	}
	order := r.Perm(n)
	bg := background(r, Panel)
	take := func(after bool, stream uint64) (*image.RGBA, []image.Point) {
		q := rng(seed, stream)
		ops := append([]op(nil), board...)
		for _, i := range order {
			w, t := look[i], b.Wires[i].Before
			if after {
				t = b.Wires[i].After
				w.exit.x += q.NormFloat64() * 5
				for k := range w.bend {
					w.bend[k].x += q.NormFloat64() * 4
					w.bend[k].y += q.NormFloat64() * 3
				}
			}
			switch {
			case t != "":
				ops = append(ops, w.op(place(index[t]), true))
			case dangles[i]:
				p := place(index[b.Wires[i].Before])
				ops = append(ops, w.op(pt{p.x + q.NormFloat64()*10, p.y + math.Copysign(22, w.exit.y)}, false))
			}
		}
		p := newPlan(seed, Medium, 500+stream)
		p.kind, p.has, p.d, p.off, p.over, p.glares = Wires, false, nil, false, nil, nil
		p.ops, p.bg, p.bgDZ, p.bgBlur = ops, bg, 15, 0
		p.w, p.h = 960, 720
		f := float64(p.w) * (0.8 + 0.3*q.Float64())
		view := (float64(perRow)*pitch + 45) * (1.05 + 0.35*q.Float64())
		p.pose = pose{f: f, cx: 480, cy: 360, z: f * view / 960, tx: q.NormFloat64() * 4, ty: q.NormFloat64() * 4,
			yaw: clamp(q.NormFloat64()*0.16, -0.35, 0.35), pitch: clamp(q.NormFloat64()*0.16, -0.35, 0.35), roll: clamp(q.NormFloat64()*0.12, -0.3, 0.3)}
		p.motion, p.defocus, p.quality = pt{}, 0.8*q.Float64(), 60+q.IntN(35)
		p.frameScale()
		s := p.shoot(p.pose, show{}, q, p.motion, 0)
		var at []image.Point
		for i := range b.Terminals {
			c := place(i)
			u, v := p.pose.project(c.x, c.y, 0)
			at = append(at, image.Pt(int(math.Round(u)), int(math.Round(v))))
		}
		return s.Image, at
	}
	b.Before, b.AtBefore = take(false, 11)
	b.After, b.AtAfter = take(true, 12)
	return b
}

// op draws a wire from its terminal, with the pushed-on connector or a bare end.
func (w boardWire) op(at pt, on bool) op {
	s := math.Copysign(1, w.exit.y)
	return func(c *canvas, _ show) {
		a := pt{at.x, at.y + s*9}
		p := bezier(a, pt{a.x + w.bend[0].x, a.y + w.bend[0].y}, pt{w.exit.x + w.bend[1].x, w.exit.y + w.bend[1].y}, w.exit, 36)
		sh := make([]pt, len(p))
		for i := range p {
			sh[i] = pt{p[i].x + 1.6, p[i].y + 2.6}
		}
		c.soft(sh, w.width*1.2, 0.4)
		c.tube(p, w.width, w.main, 0.22)
		if w.striped {
			c.line(p, w.width*0.3, flat(w.stripe))
		}
		if on {
			c.solid(at.x, at.y+s*3.5, 3.1, 6.5, 1, 1.2, mix(w.main, hx(0xd8d8d8), 0.75), 0.04, 5)
			c.box(at.x, at.y-s*1.6, 2.2, 1.6, 0.3, flat(hx(0xc9c4a8)))
		} else {
			c.tube([]pt{a, {a.x, a.y - s*5}}, w.width*0.5, hx(0xc07a40), 0.5)
		}
	}
}

func boardOps(r *rand.Rand, names []string, place func(int) pt, hw, hh float64) (ops []op) {
	put := func(o op) { ops = append(ops, o) }
	seed := r.Uint32()
	col := hx([]uint32{0x1c5a34, 0x24488a, 0x8a6a30, 0x183a28, 0x5a1c1c}[r.IntN(5)])
	put(func(c *canvas, _ show) {
		c.solid(0, 0, hw, hh, 2, 1, col, 0.06, seed)
		for i := range 40 { // conductor tracks
			a := pt{(hash2(int32(i), 1, seed)*2 - 1) * hw, (hash2(int32(i), 2, seed)*2 - 1) * hh}
			l := 5 + 20*hash2(int32(i), 3, seed)
			c.line([]pt{a, {a.x + l*0.3, a.y + l*0.3}, {math.Min(hw-1, a.x+l), a.y + l*0.3}}, 0.8, sheer(col.mul(1.5), 0.7))
		}
	})
	for range 40 {
		x, y, form := (r.Float64()*2-1)*(hw-9), (r.Float64()*2-1)*(hh-8), r.IntN(5)
		k := hx([]uint32{0x16181a, 0x2a58a8, 0xe0a820, 0xdedad0, 0x303438}[r.IntN(5)])
		free := true // parts stand clear of the terminals and of the holes in the corners
		for i := range names {
			q := place(i)
			free = free && sdBox(x, y, q.x, q.y, 4.6, 12, 0) > 9
		}
		if !free {
			continue
		}
		label := fmt.Sprintf("%c%d", "RCKQDU"[r.IntN(6)], 1+r.IntN(30))
		put(func(c *canvas, _ show) {
			c.soft([]pt{{x + 2, y + 3}, {x + 4, y + 4}}, 6, 0.4)
			switch form {
			case 0:
				c.solid(x, y, 8, 6.5, 0.6, 1, k, 0.04, seed)
				c.text(x, y+1, 1.8, "24VDC 10A", pen{0.12, 0.8, 0, false}, 0, flat(hx(0xb0b0b0)))
			case 1:
				c.disc(x, y, 4.2, solidPaint(x, y, 4.2, 4.2, 2, k, 0.03, seed))
				c.disc(x, y, 3.2, flat(hx(0x9a9ca0)))
			case 2:
				c.tube([]pt{{x - 4, y}, {x + 4, y}}, 2.4, hx(0xc8a878), 0.2)
				for i := range 3 {
					c.box(x-2+float64(i)*2, y, 0.4, 1.2, 0, flat(hx(wireColors[int(hash2(int32(i), int32(x), seed)*10)].hex)))
				}
			case 3:
				c.solid(x, y, 6, 3, 0.3, 0.5, hx(0x141416), 0.02, seed)
				for i := -2.0; i <= 2; i++ {
					c.box(x+i*2.2, y-3.6, 0.4, 0.8, 0, flat(hx(0xb0b0b0)))
					c.box(x+i*2.2, y+3.6, 0.4, 0.8, 0, flat(hx(0xb0b0b0)))
				}
			default:
				c.disc(x, y, 1.6, flat(hx(0xd03020)))
			}
			c.text(x, y+9, 1.8, label, pen{0.12, 0.9, 0, false}, 0, flat(hx(0xe8e8e8)))
		})
	}
	pn := pen{0.15, 0.85, 0, false}
	for i, s := range names {
		p := place(i)
		side := -1.0
		if p.y >= 0 {
			side = 1
		}
		put(func(c *canvas, _ show) {
			c.solid(p.x, p.y, 4.6, 6, 0.8, 0.8, hx(0x1e2022), 0.04, seed)
			c.box(p.x, p.y, 2, 3.4, 0.3, flat(hx(0xc4c0a8)))
			c.disc(p.x, p.y, 0.7, flat(hx(0x303030)))
			c.text(p.x, p.y-side*9.5+1.5, 3.2, s, pn, 0, flat(hx(0xf2f2ee)))
		})
	}
	for _, q := range []pt{{-hw + 4, -hh + 4}, {hw - 4, -hh + 4}, {-hw + 4, hh - 4}, {hw - 4, hh - 4}} {
		screw(put, q, 2, r.Float64()*3)
	}
	return ops
}
