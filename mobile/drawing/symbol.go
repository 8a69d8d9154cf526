package drawing

import (
	"slices"
	"strings"
	"unicode"
)

// symbol draws one element on a wire from 0 to cell, as North American ladder diagrams do.
func symbol(kind, name string) string {
	const ends = `<path d="M0 0h44m44 0h44"/>`
	const terminals = `<circle cx="47" cy="0" r="3"/><circle cx="85" cy="0" r="3"/>`
	switch kind {
	case "wire":
		return `<path d="M0 0h132"/><path d="M60 -5l-4 5l4 5m12 -10l4 5l-4 5"/>` // two halves of a connector
	case "fuse":
		return `<path d="M0 0h44m44 0h44"/><path d="M44 0c8 -14 14 -14 22 0s14 14 22 0"/>`
	case "switch":
		return ends + terminals + `<path d="M49 -2L82 -16"/><path d="M66 -9v-9m-5 0h10"/>`
	case "contact":
		return ends + terminals + `<path d="M50 -1L84 -5"/><path d="M66 -3v14l-5 4l10 4"/>`
	case "output":
		return ends + `<path d="M44 0h10v-12m0 24v-12m24 -12v24m0 -12h10"/>`
	case "load":
		return `<path d="M0 0h48m36 0h48"/><circle cx="66" cy="0" r="18"/><text x="` + centred(name) + `" y="4" fill="currentColor" stroke="none">` + name + `</text>`
	case "coil":
		return `<path d="M0 0h42m48 0h42"/><path d="M42 0c0 -14 12 -14 12 0c0 -14 12 -14 12 0c0 -14 12 -14 12 0c0 -14 12 -14 12 0"/>`
	case "source":
		return `<path d="M0 0h48m36 0h48"/><circle cx="66" cy="0" r="18"/><path d="M55 0c4 -9 7 -9 11 0s7 9 11 0"/>`
	case "emf": // a cell: makes d.c. from heat
		return `<path d="M0 0h61m10 0h61"/><path d="M61 -14v28m10 -21v14"/>`
	case "capacitor":
		return `<path d="M0 0h60m12 0h60"/><path d="M60 -13v26m15 -26c-5 8 -5 18 0 26"/>`
	case "rod":
		return `<path d="M0 0h58m20 0h54"/><path d="M58 -7v14l14 -7z"/><path d="M80 -10v20m5 -15v10"/>`
	case "sense":
		return `<path d="M0 0h50m32 0h50"/><path d="M50 -9h32v18h-32z"/><path d="M60 5l6 -10l6 10"/>`
	case "box":
		return `<path d="M0 0h46m40 0h46"/><path d="M46 -14h40v28h-40z"/>`
	default:
		return ends + `<path d="M44 -9h44v18h-44z"/>`
	}
}

// initials of a name, at most two letters; small words count for none.
func initials(name, small string) string {
	out := ""
	for _, w := range strings.Fields(name) {
		if slices.Contains(strings.Fields(small), w) {
			continue
		}
		for _, r := range w {
			out += string(unicode.ToUpper(r))
			break
		}
		if len(out) >= 2 {
			break
		}
	}
	return out
}

func centred(s string) string {
	if len(s) > 1 {
		return "58"
	}
	return "62"
}
