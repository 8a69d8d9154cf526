package safety_test

import (
	"testing"

	"readback/core/lab/safety"
)

// What the rules say is held against every equipment file and every spoken line. What is not met yet is printed and counted.
func TestTable(t *testing.T) {
	lex, words := language(t)
	pending := 0
	hold := func(row safety.Row, where string, h safety.Held) {
		bad := row.Check(h)
		why := row.Pending[where]
		switch {
		case len(bad) > 0 && why != "":
			pending++
			t.Logf("PENDING %s, %s: %s (%s)", row.ID, where, why, row.Rule)
			for _, b := range bad {
				t.Logf("    %s", b)
			}
		case len(bad) > 0:
			for _, b := range bad {
				t.Errorf("%s, %s: %s [%s; %s]", row.ID, where, b, row.Rule, row.Source)
			}
		case why != "":
			t.Errorf("%s, %s: it is met now: take the mark away", row.ID, where)
		}
	}
	seen := map[string]bool{}
	for _, row := range safety.Table {
		if seen[row.ID] || row.Rule == "" || row.Source == "" {
			t.Errorf("row %q: twice, or without rule or source", row.ID)
		}
		seen[row.ID] = true
		if row.Spoken {
			hold(row, "words", safety.Held{Model: models(t)[0], Words: words, Lex: lex})
			continue
		}
		for _, m := range models(t) {
			hold(row, m.ID, safety.Held{Model: m, Words: words, Lex: lex})
		}
	}
	t.Logf("%d rows, %d pending", len(safety.Table), pending)
}
