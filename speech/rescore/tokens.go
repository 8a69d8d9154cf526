package rescore

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// tokens are the pieces words are spelled with: byte pairs joined in the order of their numbers.
type tokens struct {
	id   map[string]int64
	text []string
}

// Of the model's own tokens: where a text begins and where it ends.
const (
	begin = 1
	end   = 2
)

// space is how the pieces write a space.
const space = "\u2581"

var errTokens = errors.New("moonshine: damaged token file")

// readTokens reads the token file: for each token its length (below 128 in one byte, else the low seven bits and then the rest) and its bytes.
func readTokens(b []byte) (*tokens, error) {
	t := &tokens{id: map[string]int64{}}
	for n := int64(0); len(b) > 0; n++ {
		size := int(b[0])
		b = b[1:]
		if size >= 128 {
			if len(b) == 0 {
				return nil, fmt.Errorf("%w: it ends in a length", errTokens)
			}
			size += 128*int(b[0]) - 128
			b = b[1:]
		}
		if size > len(b) {
			return nil, fmt.Errorf("%w: token %d has %d bytes, %d are left", errTokens, n, size, len(b))
		}
		t.text = append(t.text, string(b[:size]))
		t.id[string(b[:size])] = n // single bytes stand first, for what has no token; the same letter as a token of text comes later
		b = b[size:]
	}
	if t.id["<s>"] != begin || t.id["</s>"] != end {
		return nil, fmt.Errorf("%w: it lacks its marks", errTokens)
	}
	return t, nil
}

// spell gives the tokens of a text, or nil when it has a character that no token has.
func (t *tokens) spell(text string) []int64 {
	var parts []string
	for _, r := range " " + text {
		if r == ' ' {
			parts = append(parts, space)
		} else {
			parts = append(parts, string(r))
		}
	}
	for { // join the pair with the lowest number until none is left
		best, at := int64(-1), 0
		for i := range len(parts) - 1 {
			if id, ok := t.id[parts[i]+parts[i+1]]; ok && (best < 0 || id < best) {
				best, at = id, i
			}
		}
		if best < 0 {
			break
		}
		parts[at] += parts[at+1]
		parts = append(parts[:at+1], parts[at+2:]...)
	}
	out := make([]int64, len(parts))
	for i, p := range parts {
		id, ok := t.id[p]
		if !ok {
			return nil
		}
		out[i] = id
	}
	return out
}

// write is the text of tokens, in lower case and with nothing but its words: letters, digits and the apostrophes and points between them.
func (t *tokens) write(ids []int64) string {
	var b strings.Builder
	for _, id := range ids {
		b.WriteString(strings.ReplaceAll(t.text[id], space, " "))
	}
	words := strings.FieldsFunc(strings.ToLower(b.String()), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' && r != '.'
	})
	for i, w := range words {
		words[i] = strings.TrimRight(w, ".")
	}
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), " ")
}
