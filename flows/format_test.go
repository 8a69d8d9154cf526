package flows_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"readback/core/appliance"
)

// TestFormatListsKinds holds FORMAT.md to the library: the last section is generated. UPDATE=1 writes it.
func TestFormatListsKinds(t *testing.T) {
	const head = "\n**Kinds** (parameters in brackets may be left out)\n"
	var b strings.Builder
	b.WriteString(head)
	for _, k := range appliance.Kinds() {
		fmt.Fprintf(&b, "- `%s`: %s.", k.Name, k.Doc)
		list := func(title string, items []string) {
			if len(items) > 0 {
				fmt.Fprintf(&b, " %s: %s.", title, strings.Join(items, ", "))
			}
		}
		opt := func(s string, optional bool) string {
			if optional {
				return "[" + s + "]"
			}
			return s
		}
		params := func(ps []appliance.Param) (out []string) {
			for _, p := range ps {
				out = append(out, opt(p.Name, p.Optional))
			}
			return out
		}
		var ports, exprs, words, effects, props []string
		for _, p := range k.Ports {
			ports = append(ports, opt(p.Name, p.Optional))
		}
		for _, e := range k.Exprs {
			exprs = append(exprs, e.Name+" ("+e.Doc+")")
		}
		for _, w := range k.Words {
			words = append(words, w.Name+" ("+strings.Join(w.Values, ", ")+")")
		}
		for _, e := range k.Effects {
			s := e.Name
			if e.To {
				s += " + to"
			}
			if e.At != "" {
				s += " + at"
			}
			for _, p := range params(e.Params) {
				s += " + " + p
			}
			effects = append(effects, s)
		}
		for _, p := range k.Props {
			props = append(props, p.Name+" ("+p.Doc+")")
		}
		list("Ports", ports)
		list("Parameters", params(k.Params))
		list("Expressions", exprs)
		list("Words", words)
		list("Effects", effects)
		list("Asks", props)
		b.WriteString("\n")
	}
	b.WriteString("Every part can be asked `ok` (no mode of it is set). A board holds `output \"id\" { from, to }` and `input \"id\" { net, to, on, ohms }`; both can be asked by id.\n")
	src, err := os.ReadFile("FORMAT.md")
	if err != nil {
		t.Fatal(err)
	}
	text, _, _ := strings.Cut(string(src), head)
	want := text + b.String()
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile("FORMAT.md", []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if want != string(src) {
		t.Error("FORMAT.md does not list the kinds as they are: run UPDATE=1 go test ./flows -run FormatListsKinds")
	}
}
