// Package sentences reads what people said who know nothing of the program: testdata/sentences, one file a person ("hand"), split by person into those
// that may be learnt from and those that are reported on.
package sentences

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Line is one sentence with what it means.
type Line struct {
	Hand   string
	Cat    string   // danger, maybe, talk, value, state, command, story
	Kinds  []string // of the danger or the command (one), or of the story (any number)
	Ask    string   // the unit that the program asked for
	Value  string   // decimal
	Unit   string
	State  string
	Lo, Hi string // the span of a jumping display, where it is said
	Text   string
}

type raw struct {
	C   string
	K   json.RawMessage
	Ask string
	V   json.RawMessage
	U   string
	S   string
	Lo  json.RawMessage
	Hi  json.RawMessage
	T   string
}

// Split names the hands.
type Split struct{ Learn, Report []string }

// Dir is where the sentences stand, seen from a package two folders below the root.
func Dir(up int) string {
	return filepath.Join(strings.Repeat("../", up), "testdata", "sentences")
}

// ReadSplit reads the split.
func ReadSplit(dir string) (Split, error) {
	var s Split
	b, err := os.ReadFile(filepath.Join(dir, "split.json"))
	if err != nil {
		return s, err
	}
	err = json.Unmarshal(b, &s)
	return s, err
}

// Read reads the sentences of the hands; a hand without a file is left out.
func Read(dir string, hands []string) ([]Line, error) {
	var out []Line
	for _, h := range hands {
		f, err := os.Open(filepath.Join(dir, h+".jsonl"))
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		sc := bufio.NewScanner(f)
		for n := 1; sc.Scan(); n++ {
			if strings.TrimSpace(sc.Text()) == "" {
				continue
			}
			var r raw
			if err := json.Unmarshal(sc.Bytes(), &r); err != nil {
				return nil, errors.Join(fmt.Errorf("%s.jsonl:%d: %w", h, n, err), f.Close())
			}
			l := Line{Hand: h, Cat: r.C, Ask: r.Ask, Value: plain(r.V), Unit: r.U, State: r.S, Lo: plain(r.Lo), Hi: plain(r.Hi), Text: r.T}
			var one string
			if len(r.K) > 0 && json.Unmarshal(r.K, &one) == nil {
				l.Kinds = []string{one}
			} else if len(r.K) > 0 {
				if err := json.Unmarshal(r.K, &l.Kinds); err != nil {
					return nil, errors.Join(fmt.Errorf("%s.jsonl:%d: k: %w", h, n, err), f.Close())
				}
			}
			out = append(out, l)
		}
		if err := errors.Join(sc.Err(), f.Close()); err != nil {
			return nil, fmt.Errorf("%s.jsonl: %w", h, err)
		}
	}
	return out, nil
}

// plain is a number or a string as written.
func plain(b json.RawMessage) string { return strings.Trim(string(b), `" `) }
