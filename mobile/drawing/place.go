package drawing

import (
	"fmt"
	"html"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/words"
)

// Sizes of the view of places.
const (
	placeW   = 360.0
	inset    = 12.0
	rowTitle = 22.0
	rowPart  = 20.0
	letters  = 44 // of a line at the outermost box
)

// Places draws where something is: the boxes that enclose it, each inside the next, what lies beside it, and the parts that are meant.
// Open covers are dashed. The result is empty when the place is unknown.
func Places(w *words.Words, m *appliance.Model, place string, parts, open []string) string {
	at := slices.IndexFunc(m.Places, func(p appliance.Place) bool { return p.ID == place })
	if at < 0 {
		return ""
	}
	var chain []int // outermost first
	for i := at; i >= 0; i = m.Places[i].Within {
		chain = append([]int{i}, chain...)
	}
	var names []string
	for i := range m.Parts {
		if slices.Contains(parts, m.Parts[i].ID) && m.Parts[i].Place == at && len(names) < 4 {
			names = append(names, m.Parts[i].Name)
		}
	}
	var b strings.Builder
	y := 4.0
	box := func(i int, x, y, wide, h float64, target bool) {
		p := &m.Places[i]
		style := ""
		if slices.Contains(open, p.Name) {
			style = ` stroke-dasharray="7 5"`
		}
		if target {
			style += ` stroke-width="4"`
		}
		fmt.Fprintf(&b, `<rect x="%.0f" y="%.0f" width="%.0f" height="%.0f" rx="3"%s/>`, x, y, wide, h, style)
		text := p.Name
		if slices.Contains(open, p.Name) {
			text = w.Term("drawing.open", "name", text)
		} else if p.Cover {
			text = w.Term("drawing.closed", "name", text)
		}
		weight := ""
		if target {
			weight = ` font-weight="bold"`
		}
		room := letters - 2*int((x-4)/inset)
		if r := []rune(text); len(r) > room {
			text = string(r[:room-1]) + "…"
		}
		fmt.Fprintf(&b, `<text x="%.0f" y="%.0f"%s>%s</text>`, x+8, y+16, weight, html.EscapeString(text))
	}
	// What lies beside the place comes in the order of the file, which is that of the eye.
	var beside []int
	within := m.Places[at].Within
	for i := range m.Places {
		if within >= 0 && m.Places[i].Within == within {
			beside = append(beside, i)
		}
	}
	if len(beside) > 6 || within < 0 {
		beside = []int{at}
	}
	target := rowTitle + 8 + rowPart*float64(len(names))
	inner := 0.0
	for _, i := range beside {
		if i == at {
			inner += target + 6
		} else {
			inner += rowTitle + 6 + 6
		}
	}
	depth := len(chain) - 1
	for k, i := range chain[:depth] {
		h := inner + rowTitle*float64(depth-k) + 8*float64(depth-k)
		box(i, 4+inset*float64(k), y, placeW-8-2*inset*float64(k), h, false)
		y += rowTitle
	}
	x, wide := 4+inset*float64(depth), placeW-8-2*inset*float64(depth)
	for _, i := range beside {
		if i != at {
			box(i, x, y, wide, rowTitle+6, false)
			y += rowTitle + 12
			continue
		}
		box(i, x, y, wide, target, true)
		for n, name := range names {
			py := y + rowTitle + 14 + rowPart*float64(n)
			fmt.Fprintf(&b, `<path d="M%.0f %.0fh14m-6 -5l6 5l-6 5" stroke-width="2.5"/><text x="%.0f" y="%.0f">%s</text>`, x+10, py-5, x+32, py, html.EscapeString(name))
		}
		y += target + 6
	}
	height := y + 8*float64(depth) + 4
	label := m.Places[at].Name
	for k := len(chain) - 2; k >= 0; k-- {
		label = w.Term("drawing.within", "name", label, "outer", m.Places[chain[k]].Name)
	}
	text := strings.ReplaceAll(b.String(), "<text ", `<text fill="currentColor" stroke="none" `)
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f %.0f" width="%.0f" height="%.0f" role="img" aria-label="%s" font-family="sans-serif" font-size="13" stroke="currentColor" fill="none" stroke-width="1.5"><g aria-hidden="true">%s</g></svg>`,
		placeW, height, placeW, height, html.EscapeString(label), text)
}
