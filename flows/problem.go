package flows

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
)

// Problem is one thing wrong with an equipment file.
type Problem struct {
	File         string
	Line, Column int
	Text         string // what is wrong
	Hint         string // what may have been meant, or what to do; may be empty
	Source       string // the line it stands on
	Via          string // for a line of an assembly: where it is used
	Warning      bool   // the file can be used; a person should look
}

// String writes "file:line:column: text", the source line below it, then the hint, and where an assembly is used.
func (p Problem) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:%d:%d: ", p.File, p.Line, p.Column)
	if p.Warning {
		b.WriteString("warning: ")
	}
	b.WriteString(p.Text)
	if p.Source != "" {
		fmt.Fprintf(&b, "\n\t%s", p.Source)
	}
	if p.Hint != "" {
		fmt.Fprintf(&b, "\n\t%s", p.Hint)
	}
	if p.Via != "" {
		fmt.Fprintf(&b, "\n\t%s", p.Via)
	}
	return b.String()
}

// Problems is every problem of a file in the order of its lines. It is the error of [Load].
type Problems []Problem

func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

func (ps Problems) sort() {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		if a.File != b.File {
			return strings.Compare(a.File, b.File)
		}
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Column - b.Column
	})
}

// errors keeps what is not a warning.
func (ps Problems) errors() Problems {
	return slices.DeleteFunc(slices.Clone(ps), func(p Problem) bool { return p.Warning })
}

func (l *loader) at(r hcl.Range, hint, format string, args ...any) {
	l.probs = append(l.probs, l.problem(r, hint, fmt.Sprintf(format, args...)))
}

func (l *loader) warn(r hcl.Range, hint, format string, args ...any) {
	p := l.problem(r, hint, fmt.Sprintf(format, args...))
	p.Warning = true
	l.probs = append(l.probs, p)
}

func (l *loader) problem(r hcl.Range, hint, text string) Problem {
	p := Problem{File: l.name, Line: r.Start.Line, Column: r.Start.Column, Text: text, Hint: hint}
	if _, ok := l.texts[r.Filename]; ok {
		p.File = r.Filename
	}
	if lines := l.texts[p.File]; r.Start.Line >= 1 && r.Start.Line <= len(lines) {
		p.Source = strings.TrimSpace(lines[r.Start.Line-1])
	}
	if at, ok := l.usedAt[p.File]; ok {
		p.Via = fmt.Sprintf("used at %s:%d", l.name, at.Start.Line)
	}
	return p
}

// meant answers a word that is none of those known.
func meant(word string, known []string) string {
	best, dist := "", 3+len(word)/5
	for _, k := range known {
		if d := distance(strings.ToLower(word), strings.ToLower(k), dist); d < dist {
			best, dist = k, d
		}
	}
	if best != "" && dist < len(word) {
		return fmt.Sprintf("did you mean %q?", best)
	}
	if n := len(known); n > 0 && n <= 12 {
		return "one of: " + strings.Join(known, ", ")
	}
	return ""
}

// distance is the Levenshtein distance of two words, or limit when it is not below limit.
func distance(a, b string, limit int) int {
	if len(a)-len(b) >= limit || len(b)-len(a) >= limit {
		return limit
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diag := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diag
			if a[i] != b[j] {
				cost++
			}
			diag = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return min(row[len(b)], limit)
}

// article puts a or an before a word.
func article(word string) string {
	if word != "" && strings.Contains("aeiou", word[:1]) {
		return "an " + word
	}
	return "a " + word
}
