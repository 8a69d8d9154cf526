package job

import (
	"fmt"
	"strings"

	"readback/core/words"
)

// Writer writes what is spoken as people read it.
type Writer = words.Writer

func writer(w *Words) *Writer { return words.NewWriter(w) }

// Words is all that the job says in one language, and the option ids it waits for.
type Words = words.Words

// CheckWords tells which lines a job needs and the words do not have.
func CheckWords(w *Words) error {
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

// line is the long form of a line with its slots filled.
func (m *Machine) line(id string, pairs ...string) string {
	l, ok := m.words.Lines[id]
	if !ok {
		panic("session: no line " + id) // New has checked LineIDs
	}
	return words.Fill(l.Full, pairs...)
}

// vary is one of all forms of a line, the long one first and then in turn, so that the same words are not heard twice
// in a row.
func (m *Machine) vary(id string, n int, pairs ...string) string {
	l, ok := m.words.Lines[id]
	if !ok {
		panic("session: no line " + id)
	}
	if n > 0 && len(l.Short) > 0 {
		return words.Fill(l.Short[(n-1)%len(l.Short)], pairs...)
	}
	return words.Fill(l.Full, pairs...)
}

// sayable is the plainest saying of an option or command: what the guide tells the person to say, and what the recogniser knows.
func (m *Machine) sayable(id string) string {
	if q := m.j.q; q != nil && q.labels[id] != "" {
		return lower(q.labels[id])
	}
	if s, ok := m.sayings[id]; ok {
		return s
	}
	return m.option(id)
}

// option is the wording of an option id for a button and for reading back: that of the question which is open or being answered.
func (m *Machine) option(id string) string {
	labels := m.labels
	if m.j.q != nil {
		labels = m.j.q.labels
	}
	if text, ok := labels[id]; ok {
		return text
	}
	return m.everywhere(id)
}

// everywhere is the wording of an option or command id that belongs to no question.
func (m *Machine) everywhere(id string) string {
	if b, ok := m.back[id]; ok {
		return b
	}
	return m.words.Name("option", id)
}
