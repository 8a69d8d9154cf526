package hearbench_test

import (
	"encoding/json"
	"os"
	"strconv"
	"testing"

	data "readback/flows/lexicon"
	"readback/speech/lab/hearbench"
)

func bench(t *testing.T) *hearbench.Bench {
	t.Helper()
	lex, err := data.Load()
	if err != nil {
		t.Fatal(err)
	}
	b, err := hearbench.Open(lex)
	if err != nil {
		t.Skip(err)
	}
	t.Cleanup(b.Close)
	return b
}

// number reads a count from the environment, for shorter or longer runs.
func number(name string, standard int) int {
	if n, err := strconv.Atoi(os.Getenv(name)); err == nil && n > 0 {
		return n
	}
	return standard
}

// TestTune prints every clip of the tuning half: HEAR_TUNE=<clips a condition>.
func TestTune(t *testing.T) {
	n := number("HEAR_TUNE", 0)
	if n == 0 {
		t.Skip("HEAR_TUNE is not set: it prints the tuning half for somebody to look at")
	}
	b := bench(t)
	s := hearbench.NewStudio(hearbench.Voices(), 3)
	items := hearbench.Readings(2*n, 11)
	for _, c := range hearbench.Conditions {
		if only := os.Getenv("HEAR_ONLY"); only != "" && only != c.String() {
			continue
		}
		for i, it := range items {
			if it.Held() {
				continue
			}
			r, err := b.Listen(s, s.Voices[i%len(s.Voices)], it, c, i)
			if err != nil {
				t.Fatal(err)
			}
			t.Log(r)
			lists, err := json.Marshal(map[string]any{"lists": r.Heard.Lists, "item": r.Item, "cond": c.String(), "voice": r.Voice})
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("LISTS %s", lists)
		}
	}
}
