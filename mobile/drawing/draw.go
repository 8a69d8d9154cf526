package drawing

import (
	"fmt"
	"html"
	"slices"
	"strings"
	"unicode/utf8"

	"readback/core/appliance"
	"readback/core/words"
)

// Marks are what a step adds to the drawing.
type Marks struct {
	Red, Black string             // test points of the two leads
	Parts      []string           // part ids the step is about
	Suspects   map[string]float64 // part id → probability
	Good       []string           // part ids that passed their checks
	Lifted     []string           // names of lifted wires: test points or parts
	Energised  map[string]bool    // nets that carry voltage now in an appliance without fault
	Only       bool               // draw what the step is about, and its neighbours, in rows of two
}

// All lays out the whole circuit.
func All(w *words.Words, m *appliance.Model) *Layout {
	els := elements(w, m)
	orient(els, levels(els))
	return place(m, sections(rungs(els, 4), els), 4)
}

// Near lays out the elements at the step's points and parts only. Neighbours come along until there are six elements.
func Near(w *words.Words, m *appliance.Model, k Marks) *Layout {
	els := elements(w, m)
	orient(els, levels(els))
	keep := map[int]bool{}
	for i, e := range els {
		if slices.Contains(k.Parts, m.Parts[e.part].ID) {
			keep[i] = true
		}
	}
	if len(keep) > 3 { // a board has many sides; the leads tell which
		clear(keep)
	}
	for _, id := range []string{k.Red, k.Black} {
		net := pointNet(m, id)
		found := 0
		for i, e := range els {
			if at(m, e, net) && !e.symbol.Source && (found < 2 || keep[i]) {
				keep[i] = true
				found++
			}
		}
		if found == 0 {
			for i, e := range els {
				if at(m, e, net) {
					keep[i] = true
				}
			}
		}
	}
	var few []element
	for i, e := range els {
		if keep[i] && len(few) < 6 {
			few = append(few, e)
		}
	}
	return place(m, rungs(few, 2), 2)
}

func pointNet(m *appliance.Model, id string) string {
	for _, p := range m.Points {
		if p.ID == id {
			return p.Net
		}
	}
	return ""
}

func at(m *appliance.Model, e element, net string) bool {
	if net == "" {
		return false
	}
	if part, port, ok := strings.Cut(net, "."); ok {
		return m.Parts[e.part].ID == part && (port == e.lport || port == e.rport)
	}
	return e.left == net || e.right == net
}

// Draw writes the drawing as SVG. It uses the colour of the text around it, so it is right on paper and in the dark.
func Draw(w *words.Words, m *appliance.Model, k Marks) string {
	l := All(w, m)
	if k.Only {
		l = Near(w, m, k)
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f %.0f" width="%.0f" height="%.0f" role="img" aria-label="%s" font-family="sans-serif" font-size="12" stroke="currentColor" fill="none" stroke-width="1.5" data-marks="%s"><g aria-hidden="true">`,
		l.W, l.H, l.W*legible, l.H*legible, html.EscapeString(describe(w, m, k)), strings.Join(legend(m, k, l), " "))
	for _, s := range l.lines {
		thick := ""
		if k.Energised[s.net] {
			thick = live
		}
		fmt.Fprintf(&b, `<path d="M%.0f %.0fL%.0f %.0f"%s/>`, s.x1, s.y1, s.x2, s.y2, thick)
	}
	for _, d := range l.dots {
		fmt.Fprintf(&b, `<circle cx="%.0f" cy="%.0f" r="2.5" fill="currentColor"/>`, d.X, d.Y)
	}
	for _, c := range l.cells {
		p := &m.Parts[c.part]
		fmt.Fprintf(&b, `<g transform="translate(%.0f %.0f)"><title>%s</title>`, c.x, c.y, html.EscapeString(p.Name))
		b.WriteString(symbol(c.symbol, initials(p.Name, w.Term("drawing.small-words"))))
		if k.Energised[c.left] {
			b.WriteString(`<path d="M0 0h34"` + live + `/>`)
		}
		if k.Energised[c.right] {
			b.WriteString(`<path d="M98 0h34"` + live + `/>`)
		}
		b.WriteString(marks(m, k, c))
		b.WriteString(`</g>`)
	}
	b.WriteString(`<g fill="currentColor" stroke="none">`)
	for _, t := range l.Labels {
		fmt.Fprintf(&b, `<text x="%.0f" y="%.0f" text-anchor="middle">%s</text>`, t.X+t.W/2, t.Y+11, html.EscapeString(t.Text))
	}
	b.WriteString(`</g>`)
	for _, p := range m.Points {
		s, ok := l.Points[p.ID]
		if !ok {
			continue
		}
		switch p.ID {
		case k.Red:
			lead(&b, s, "RED", w.Term("drawing.red"), -1)
		case k.Black:
			lead(&b, s, "BLACK", w.Term("drawing.black"), 1)
		default:
			if !k.Only {
				fmt.Fprintf(&b, `<circle cx="%.0f" cy="%.0f" r="3.5" data-point="%s"><title>%s</title></circle>`, s.X, s.Y, html.EscapeString(p.ID), html.EscapeString(p.Name))
			}
		}
	}
	b.WriteString(`</g></svg>`)
	return b.String()
}

// lead rings a point and names the lead below it; the rings differ, so that colour is not needed.
func lead(b *strings.Builder, s spot, id, word string, side float64) {
	fmt.Fprintf(b, `<circle cx="%.0f" cy="%.0f" r="9" stroke-width="3.5" data-lead="%s"/>`, s.X, s.Y, id)
	if side > 0 {
		fmt.Fprintf(b, `<circle cx="%.0f" cy="%.0f" r="4" fill="currentColor"/>`, s.X, s.Y)
	}
	w := leadWord(s, word, side)
	fmt.Fprintf(b, `<path d="M%.0f %.0fV%.0f" stroke-dasharray="2 3"/><text x="%.0f" y="%.0f" text-anchor="middle" fill="currentColor" stroke="none" font-weight="bold">%s</text>`, s.X, s.Y+10, w.Y, w.X+w.W/2, w.Y+11, html.EscapeString(word))
}

// leadWord is where a lead is named: below the frame and the bar of its part.
func leadWord(s spot, word string, side float64) Box {
	w := 8.4 * float64(utf8.RuneCountInString(word)) // bold letters are wider
	return Box{X: max(s.X+side*4, w/2+2) - w/2, Y: s.Y + 34, W: w, H: 13, Text: word}
}

// Leads are the words at the two points of a step, for the test that nothing overlaps.
func (l *Layout) Leads(w *words.Words, k Marks) []Box {
	var out []Box
	if s, ok := l.Points[k.Red]; ok {
		out = append(out, leadWord(s, w.Term("drawing.red"), -1))
	}
	if s, ok := l.Points[k.Black]; ok {
		out = append(out, leadWord(s, w.Term("drawing.black"), 1))
	}
	return out
}

// live is how a wire with voltage is drawn: thick, so that it is seen without colour.
const live = ` stroke-width="4.5"`

// legend names the marks that are on this drawing: live, good, suspect, lifted.
func legend(m *appliance.Model, k Marks, l *Layout) []string {
	var out []string
	has := func(name string, f func(c placed) bool) {
		if slices.ContainsFunc(l.cells, f) {
			out = append(out, name)
		}
	}
	has("live", func(c placed) bool { return k.Energised[c.left] || k.Energised[c.right] })
	has("good", func(c placed) bool { return slices.Contains(k.Good, m.Parts[c.part].ID) })
	has("suspect", func(c placed) bool { return k.Suspects[m.Parts[c.part].ID] >= faint })
	has("lifted", func(c placed) bool { return strings.Contains(marks(m, k, c), cross) })
	return out
}

func describe(w *words.Words, m *appliance.Model, k Marks) string {
	name := func(id string) string {
		for _, p := range m.Points {
			if p.ID == id {
				return p.Name
			}
		}
		return ""
	}
	if k.Red == "" && k.Black == "" {
		return w.Term("drawing.circuit", "title", m.Title)
	}
	return w.Term("drawing.leads", "red", name(k.Red), "black", name(k.Black))
}

// marks draws what is suspected, proved good or lifted beside the symbol.
func marks(m *appliance.Model, k Marks, c placed) string {
	p := &m.Parts[c.part]
	var b strings.Builder
	if slices.Contains(k.Parts, p.ID) {
		b.WriteString(`<rect x="18" y="-22" width="96" height="44" stroke-width="3" rx="4"/>`)
	}
	if prob := k.Suspects[p.ID]; prob >= faint {
		fmt.Fprintf(&b, `<path d="M26 28h80" stroke="none"/><rect x="26" y="26" width="80" height="5" stroke-width="1"/><rect x="26" y="26" width="%.0f" height="5" fill="currentColor" stroke="none"/>`, 80*prob)
	}
	if slices.Contains(k.Good, p.ID) {
		b.WriteString(`<circle cx="103" cy="-13" r="9"/><path d="M98 -13l4 5 7-9" stroke-width="3"/>`)
	}
	for _, w := range k.Lifted {
		if w == p.Name {
			b.WriteString(lifted(66))
		}
		for _, pt := range m.Points {
			if pt.Name == w && at(m, c.element, pt.Net) {
				if pt.Net == c.right || strings.HasSuffix(pt.Net, "."+c.rport) {
					b.WriteString(lifted(110))
				} else {
					b.WriteString(lifted(22))
				}
			}
		}
	}
	return b.String()
}

// lifted is a cross on the wire.
func lifted(x float64) string {
	return fmt.Sprintf(`<path d="M%.0f %s" stroke-width="3"/>`, x-5, cross)
}

const (
	legible = 15.0 / 12 // pixels of a unit where it is shown: letters of 15

	cross = "-5l10 10m0 -10l-10 10"
	faint = 0.05 // a probability below it is not drawn
)
