package appliance

import (
	"strings"
	"testing"
)

// lacks lists what a kind is missing: the behaviour of the kind and of each effect, how each property follows, a symbol, a proof, and
// whether current passes it.
func lacks(k *Kind) (out []string) {
	if k.Name == "" || k.Doc == "" {
		out = append(out, "name and doc")
	}
	if k.build == nil {
		out = append(out, "behaviour")
	}
	if len(k.Effects) == 0 {
		out = append(out, "effects")
	}
	for _, e := range k.Effects {
		if e.do == nil || e.Doc == "" {
			out = append(out, "effect "+e.Name)
		}
	}
	if len(k.Props) == 0 {
		out = append(out, "properties")
	}
	for _, p := range k.Props {
		if p.calc == nil || p.Doc == "" {
			out = append(out, "property "+p.Name)
		}
		if p.Spread != "" && k.Param(p.Spread) == nil {
			out = append(out, "parameter "+p.Spread)
		}
	}
	if k.Passes < blocks || k.Passes > Leads {
		out = append(out, "whether current passes it")
	}
	if k.Proof < provedBySelf || k.Proof > ProvedByInputs {
		out = append(out, "proof")
	}
	drawn := map[string]bool{}
	for _, d := range k.Drawn {
		drawn[d.A], drawn[d.B] = true, true
		if d.Symbol == nil || !strings.HasPrefix(d.Symbol.SVG, "<") {
			out = append(out, "symbol from "+d.A+" to "+d.B)
		}
	}
	for _, p := range k.Ports {
		if !drawn[p.Name] {
			out = append(out, "symbol at port "+p.Name)
		}
		delete(drawn, p.Name)
	}
	for p := range drawn {
		out = append(out, "port "+p)
	}
	if k.Return != "" && len(k.Drawn) == 0 {
		out = append(out, "return")
	}
	return out
}

// TestKinds names every kind that lacks behaviour, a property, a symbol or a proof.
func TestKinds(t *testing.T) {
	if len(Kinds()) < 15 {
		t.Fatalf("%d kinds", len(Kinds()))
	}
	for _, k := range Kinds() {
		if miss := lacks(k); miss != nil {
			t.Errorf("kind %s lacks: %s", k.Name, strings.Join(miss, "; "))
		}
	}
	// The test itself: a kind with nothing lacks everything.
	empty := &Kind{Name: "x", Doc: "y", Ports: []Port{{Name: "a"}}, Effects: []Effect{{Name: "e"}}, Props: []Prop{{Name: "p"}}}
	const want = "behaviour; effect e; property p; whether current passes it; proof; symbol at port a"
	if got := strings.Join(lacks(empty), "; "); got != want {
		t.Errorf("an empty kind lacks %q, want %q", got, want)
	}
}
