package job

import (
	"fmt"
	"strings"
)

// Line is one thing the guide says, in its forms. Slots are written {name}.
type Line struct {
	ID    string
	Full  string   // the long form
	Short []string // short forms, taken in turn
	Say   string   // what to answer
	How   string   // how it is done, for "how"
	Ask   []string // option ids that answer it; the first is the one hoped for
}

// Words is all that the session says in one language, and the option ids it waits for.
type Words struct {
	Lang  string
	Lines map[string]Line // by id; never ranged
}

// Check tells which lines the session needs and the words do not have.
func (w *Words) Check() error {
	var missing []string
	for _, id := range LineIDs() {
		if _, ok := w.Lines[id]; !ok {
			missing = append(missing, id)
		}
	}
	if len(missing) > 0 {
		return fmt.Errorf("session: words %q: no line for %s", w.Lang, strings.Join(missing, ", "))
	}
	return nil
}

// fill puts the values into the slots of a text: pairs of slot name and value.
func fill(text string, pairs ...string) string {
	if !strings.Contains(text, "{") {
		return text
	}
	for i := 0; i+1 < len(pairs); i += 2 {
		text = strings.ReplaceAll(text, "{"+pairs[i]+"}", pairs[i+1])
	}
	return text
}

// line is the long form of a line with its slots filled.
func (m *Machine) line(id string, pairs ...string) string {
	l, ok := m.words.Lines[id]
	if !ok {
		panic("session: no line " + id) // New has checked LineIDs
	}
	return fill(l.Full, pairs...)
}

// vary is one of all forms of a line, the long one first and then in turn, so that the same words are not heard twice
// in a row.
func (m *Machine) vary(id string, n int, pairs ...string) string {
	l, ok := m.words.Lines[id]
	if !ok {
		panic("session: no line " + id)
	}
	if n > 0 && len(l.Short) > 0 {
		return fill(l.Short[(n-1)%len(l.Short)], pairs...)
	}
	return fill(l.Full, pairs...)
}

// sayable is the plainest saying of an option or command: what the guide tells the person to say, and what the recogniser knows.
func (m *Machine) sayable(id string) string {
	if s, ok := m.sayings[id]; ok {
		return s
	}
	return m.option(id)
}

// option is the wording of an option id for a button and for reading back.
func (m *Machine) option(id string) string {
	if b, ok := m.back[id]; ok {
		return b
	}
	return strings.ReplaceAll(id, "-", " ")
}
