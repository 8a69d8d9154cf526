package drawing

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"readback/core/appliance"
)

// Sizes in the drawing's own units, one of which is a pixel at full size.
const (
	cell      = 132 // width of one element
	rowHeight = 104
	wireY     = 60 // of the wire below the row's top
	track     = 14 // distance of rails
	margin    = 10
	charWidth = 6.9 // of a 12 unit letter, wide enough for the widest common sans
	lineH     = 14
)

// Box is a rectangle that nothing else may touch.
type Box struct {
	X, Y, W, H float64
	Text       string
}

// Overlaps tells whether two boxes touch each other.
func (b Box) Overlaps(o Box) bool {
	return b.X < o.X+o.W && o.X < b.X+b.W && b.Y < o.Y+o.H && o.Y < b.Y+b.H
}

// spot is where a test point lies.
type spot struct{ X, Y float64 }

// Layout is a circuit with everything in its place.
type Layout struct {
	W, H   float64
	Labels []Box           // every text
	Points map[string]spot // every test point by its id
	cells  []placed
	lines  []line
	dots   []spot
	tags   []Box
	named  map[string]string // net → what stands at its ends
}

// line is a piece of wire of one net; a thin one leads to the net's name only.
type line struct {
	x1, y1, x2, y2 float64
	net            string
}

type placed struct {
	element
	x, y float64 // left end of the wire
}

// end is one end of a rung that has to be joined to its net.
type end struct {
	net  string
	row  int
	x    float64
	left bool
}

// place lays rungs out below each other. Ends of one net on one side are joined by a vertical line; a net that appears at
// one end only, or on both sides, is named there.
func place(m *appliance.Model, rs []rung, width int) *Layout {
	l := &Layout{Points: map[string]spot{}, named: netNames(m)}
	var ends []end
	for row, r := range rs {
		ends = append(ends, end{r.left, row, 0, true}, end{r.right, row, 0, false})
	}
	left := tracks(ends, true)
	right := tracks(ends, false)
	tagW := l.tagWidth(ends)
	x0 := margin + tagW + track*float64(left.n) + 8
	x1 := x0 + cell*float64(width)
	netAt := map[string]spot{}
	note := func(net string, s spot) {
		if _, ok := netAt[net]; !ok && net != "" {
			netAt[net] = s
		}
	}
	top := func(row int) float64 { return margin + float64(row)*rowHeight }
	for row, r := range rs {
		y := top(row) + wireY
		for k, e := range r.els {
			x := x0 + cell*float64(k)
			l.cells = append(l.cells, placed{e, x, y})
			for n, line := range wrap(e.name, 18, 2) {
				w := charWidth * float64(len(line))
				l.Labels = append(l.Labels, Box{X: x + (cell-w)/2, Y: top(row) + 8 + lineH*float64(n), W: w, H: 13, Text: line})
			}
			if k > 0 {
				note(e.left, spot{x, y})
			}
		}
		endX := x0 + cell*float64(len(r.els))
		l.join(left, r.left, row, x0, y, margin+tagW, note)
		if endX < x1 {
			l.lines = append(l.lines, line{endX, y, x1, y, r.right})
		}
		l.join(right, r.right, row, x1, y, x1+8+track*float64(right.n), note)
	}
	l.W = x1 + 8 + track*float64(right.n) + tagW + margin
	l.H = top(len(rs)) + margin
	l.rails(left, x0, top)
	l.rails(right, x1, top)
	l.points(m, netAt)
	return l
}

// netNames is what a wire that goes on elsewhere is called: the letter that boards carry there, else a number, the same at both its ends.
// The names of the equipment file are its own business.
func netNames(m *appliance.Model) map[string]string {
	out := map[string]string{}
	for i := range m.Parts {
		p := &m.Parts[i]
		nets := make([]string, 0, len(p.Ports))
		for _, n := range p.Ports {
			nets = append(nets, n)
		}
		for _, o := range p.Outputs {
			nets = append(nets, o.From, o.To)
		}
		for _, in := range p.Inputs {
			nets = append(nets, in.Net, in.To)
		}
		sort.Strings(nets)
		for _, n := range nets {
			switch {
			case n == "" || out[n] != "":
			case len(n) == 1 && n >= "A" && n <= "Z":
				out[n] = n
			default:
				out[n] = strconv.Itoa(len(out) + 1)
			}
		}
	}
	return out
}

// bundle is the vertical lines of one side.
type bundle struct {
	left bool
	at   map[string]int // net → track, 0 nearest to the rungs
	n    int
	from map[string]int
	to   map[string]int
	both map[string]bool // the net has ends on the other side as well, or only one end: it is named
}

// tracks gives nets with several ends on this side a vertical line each; lines whose rows overlap lie beside each other.
func tracks(ends []end, left bool) bundle {
	b := bundle{left: left, at: map[string]int{}, from: map[string]int{}, to: map[string]int{}, both: map[string]bool{}}
	count, other := map[string]int{}, map[string]int{}
	var nets []string
	for _, e := range ends {
		if e.net == "" {
			continue
		}
		if e.left != left {
			other[e.net]++
			continue
		}
		if count[e.net] == 0 {
			nets = append(nets, e.net)
			b.from[e.net] = e.row
		}
		count[e.net]++
		b.to[e.net] = e.row
	}
	sort.SliceStable(nets, func(i, j int) bool { // short lines near the rungs
		return b.to[nets[i]]-b.from[nets[i]] < b.to[nets[j]]-b.from[nets[j]]
	})
	var taken [][]string
	for _, n := range nets {
		if other[n] > 0 || count[n] == 1 {
			b.both[n] = true
		}
		if count[n] < 2 {
			continue
		}
		t := 0
		for ; t < len(taken); t++ {
			if !slices.ContainsFunc(taken[t], func(o string) bool { return b.from[n] <= b.to[o] && b.from[o] <= b.to[n] }) {
				break
			}
		}
		if t == len(taken) {
			taken = append(taken, nil)
		}
		taken[t] = append(taken[t], n)
		b.at[n] = t
	}
	b.n = len(taken)
	return b
}

func (b bundle) x(net string, base float64) float64 {
	d := 8 + track*float64(b.at[net])
	if b.left {
		return base - d
	}
	return base + d
}

// join draws the end of a rung to its rail, or to the tag with its net's name.
func (l *Layout) join(b bundle, net string, row int, x, y, tagX float64, note func(string, spot)) {
	if net == "" {
		l.dots = append(l.dots, spot{x, y})
		return
	}
	if _, rail := b.at[net]; rail {
		rx := b.x(net, x)
		l.lines = append(l.lines, line{x, y, rx, y, net})
		l.dots = append(l.dots, spot{rx, y})
		note(net, spot{rx, y})
		if row == b.from[net] {
			l.tag(b, net, rx, y, tagX)
		}
		return
	}
	note(net, spot{x, y})
	l.tag(b, net, x, y, tagX)
}

// tag names a net outside of all rails, with a thin line to it.
func (l *Layout) tag(b bundle, net string, x, y, tagX float64) {
	w := charWidth * float64(len(l.named[net]))
	box := Box{X: tagX - w - 6, Y: y - 7, W: w, H: 13, Text: l.named[net]}
	if !b.left {
		box.X = tagX + 6
	}
	l.lines = append(l.lines, line{x, y, tagX, y, ""})
	l.tags = append(l.tags, box)
	l.Labels = append(l.Labels, box)
}

// rails draws the vertical lines.
func (l *Layout) rails(b bundle, base float64, top func(int) float64) {
	nets := make([]string, 0, len(b.at))
	for n := range b.at {
		nets = append(nets, n)
	}
	sort.Strings(nets)
	for _, n := range nets {
		x := b.x(n, base)
		l.lines = append(l.lines, line{x, top(b.from[n]) + wireY, x, top(b.to[n]) + wireY, n})
	}
}

func (l *Layout) tagWidth(ends []end) float64 {
	w := 0
	for _, e := range ends {
		w = max(w, len(l.named[e.net]))
	}
	return charWidth*float64(w) + 8
}

// points finds the place of every test point: a terminal of a part, or a net.
func (l *Layout) points(m *appliance.Model, netAt map[string]spot) {
	for _, p := range m.Points {
		if part, port, ok := strings.Cut(p.Net, "."); ok {
			for _, c := range l.cells {
				if m.Parts[c.part].ID != part {
					continue
				}
				switch port {
				case c.lport:
					l.Points[p.ID] = spot{c.x + 30, c.y}
				case c.rport:
					l.Points[p.ID] = spot{c.x + cell - 30, c.y}
				default:
					continue
				}
				break
			}
			continue
		}
		if s, ok := netAt[p.Net]; ok {
			l.Points[p.ID] = s
		}
	}
}

// wrap breaks a name into at most n lines of about width letters.
func wrap(s string, width, n int) []string {
	var lines []string
	line := ""
	for _, w := range strings.Fields(s) {
		if line != "" && len(line)+1+len(w) > width && len(lines) < n-1 {
			lines = append(lines, line)
			line = w
			continue
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	lines = append(lines, line)
	if last := &lines[len(lines)-1]; len(*last) > width+1 {
		*last = (*last)[:width-1] + "…"
	}
	return lines
}
