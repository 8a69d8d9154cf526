package drawing

import (
	"slices"
	"strings"
	"unicode"

	"readback/core/appliance"
)

// symbol draws one element with the initials of its name.
func symbol(s *appliance.Symbol, short string) string {
	return strings.NewReplacer("{at}", centred(short), "{initials}", short).Replace(s.SVG)
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
