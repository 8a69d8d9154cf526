package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const one = "clip\t0\tone\t1 sayings\ndecision\taccept\t1 V\t\tone volt\t\nranking\treading 1 V\nnumbers\t20.0\t3.0\t0.2\t0.0\n" +
	"clip\t1\tnoise\t0 sayings\n"

func TestDiffer(t *testing.T) {
	for _, c := range []struct{ about, other, want string }{
		{"the same", one, "same decisions: 2 of 2, 100.000 %; with the same ranking of all alternatives: 1; numbers behind them: 4 of 4 the same to 6 places, the largest difference 0.000000\n"},
		{"another number", strings.Replace(one, "3.0", "2.5", 1), "same decisions: 2 of 2, 100.000 %; with the same ranking of all alternatives: 1; numbers behind them: 3 of 4 the same to 6 places, the largest difference 0.500000\n"},
		{"another ranking", strings.Replace(one, "ranking\treading 1 V", "ranking\treading 1 V | reading 2 V", 1), "same decisions: 2 of 2, 100.000 %; with the same ranking of all alternatives: 0;"},
		{"another decision", strings.Replace(one, "accept", "ask-two", 1), "differs: 0 one 1 sayings:"},
		{"one saying more", one + "decision\tagain\t\t\t\t\nranking\t\nnumbers\t1.0\n", "differs: 1 noise 0 sayings: 0 sayings and 1\nsame decisions: 1 of 2, 50.000 %"},
		{"cut off", strings.TrimSuffix(strings.Replace(one, "numbers", "", 1), "\n"), "a line of another kind"},
		{"clips missing", strings.SplitAfter(one, "0.0\n")[0], "has 2 clips"},
		{"nothing", "", "it does not begin with a clip"},
	} {
		dir := t.TempDir()
		a, b := filepath.Join(dir, "a"), filepath.Join(dir, "b")
		for f, text := range map[string]string{a: one, b: c.other} {
			if err := os.WriteFile(f, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		var out strings.Builder
		if err := differ(a, b, &out); err != nil {
			out.WriteString(err.Error())
		}
		if !strings.Contains(out.String(), c.want) {
			t.Errorf("%s: %s, want %q", c.about, out.String(), c.want)
		}
	}
}
