package drawing

import (
	"strings"
	"unicode"

	"readback/core/appliance"
)

// symbol draws one element.
func symbol(s *appliance.Symbol, name string) string {
	short := initials(name)
	return strings.NewReplacer("{at}", centred(short), "{initials}", short).Replace(s.SVG)
}

// initials of a name, at most two letters.
func initials(name string) string {
	out := ""
	for _, w := range strings.Fields(name) {
		if w == "of" || w == "the" || w == "a" {
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
