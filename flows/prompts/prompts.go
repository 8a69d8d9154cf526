// Package prompts holds what the program says, shows and prints, as data: one folder of HCL files a language, read
// strictly. Every problem is reported with its file and line.
package prompts

import (
	"embed"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"sort"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/gohcl"
	"github.com/hashicorp/hcl/v2/hclparse"
	"github.com/zclconf/go-cty/cty"

	"readback/core/job"
	"readback/core/unit"
	"readback/core/words"
	"readback/flows/lexicon"
	"readback/flows/plain"
)

//go:embed en
var files embed.FS

// Load returns the English words that come with the program.
func Load() (*words.Words, error) { return Language("en") }

// Language returns the words of a language that comes with the program. Its error names the languages there are. A
// language has exactly the terms that English has, with the same slots.
func Language(lang string) (*words.Words, error) {
	w, err := LoadFS(files, lang)
	if err != nil || lang == "en" {
		return w, err
	}
	en, err := LoadFS(files, "en")
	if err != nil {
		return nil, err
	}
	return w, Compare(w, en)
}

// file is one HCL file of a language.
type file struct {
	Lang    string   `hcl:"lang"`
	Numbers []string `hcl:"numbers,optional"`
	Say     []say    `hcl:"say,block"`
	Terms   []terms  `hcl:"terms,block"`
	Units   []unitIn `hcl:"unit,block"`
}

type say struct {
	ID    string    `hcl:"id,label"`
	Full  string    `hcl:"full"`
	Short []string  `hcl:"short,optional"`
	Say   string    `hcl:"say,optional"`
	How   string    `hcl:"how,optional"`
	Ask   []string  `hcl:"ask,optional"`
	Range hcl.Range `hcl:",def_range"`

	Labels []string            `hcl:"labels,optional"` // in the order of Ask
	Also   map[string][]string `hcl:"also,optional"`
}

type terms struct {
	Group string    `hcl:"group,label"`
	Body  hcl.Body  `hcl:",remain"`
	Range hcl.Range `hcl:",def_range"`
}

type unitIn struct {
	ID       string    `hcl:"id,label"`
	One      string    `hcl:"one"`
	Many     string    `hcl:"many"`
	Prefixed string    `hcl:"prefixed,optional"`
	Print    string    `hcl:"print,optional"`
	Range    hcl.Range `hcl:",def_range"`
}

var (
	slot   = regexp.MustCompile(`\{[a-z]+\}`)
	spoken = regexp.MustCompile(`^[\p{L}\p{M}0-9 ,.?':-]*$`)
)

// LoadFS reads every *.hcl in the folder of the language in fsys and joins them. Its error lists all problems, one a
// line, each beginning with file:line.
func LoadFS(fsys fs.FS, lang string) (*words.Words, error) {
	names, err := lexicon.Files(fsys, "prompts", lang)
	if err != nil {
		return nil, err
	}
	l := loader{out: &words.Words{Lang: lang, Lines: map[string]words.Line{}, Terms: map[string]string{}, Units: map[string]words.Unit{}}}
	for _, name := range names {
		src, err := fs.ReadFile(fsys, name)
		if err != nil {
			return nil, fmt.Errorf("prompts: reading %s: %w", name, err)
		}
		f, diags := hclparse.NewParser().ParseHCL(src, name)
		var d file
		if !diags.HasErrors() {
			diags = append(diags, gohcl.DecodeBody(f.Body, nil, &d)...)
		}
		l.diags = append(l.diags, diags...)
		if !diags.HasErrors() {
			l.file(name, &d)
		}
	}
	if l.diags.HasErrors() {
		return nil, l.problems()
	}
	if err := l.whole(); err != nil {
		return nil, fmt.Errorf("prompts: %s: %w", names[0], err)
	}
	return l.out, nil
}

type loader struct {
	out   *words.Words
	diags hcl.Diagnostics
}

func (l *loader) bad(at hcl.Range, format string, args ...any) {
	l.diags = append(l.diags, &hcl.Diagnostic{Severity: hcl.DiagError, Summary: fmt.Sprintf(format, args...), Subject: &at})
}

// whole tells what a language needs and this one does not have.
func (l *loader) whole() error {
	if err := job.CheckWords(l.out); err != nil {
		return err
	}
	var missing []string
	for _, u := range unit.All() {
		if _, ok := l.out.Units[u.ID]; !ok {
			missing = append(missing, u.ID)
		}
	}
	if len(missing) > 0 {
		return fmt.Errorf("no unit %s", strings.Join(missing, ", "))
	}
	if n := len(l.out.Numbers); n != 100 {
		return fmt.Errorf("numbers has %d words, want those of 0 to 99", n)
	}
	return nil
}

func (l *loader) file(name string, d *file) {
	top := hcl.Range{Filename: name, Start: hcl.Pos{Line: 1}}
	if d.Lang != l.out.Lang {
		l.bad(top, "lang is %q", d.Lang)
	}
	if len(d.Numbers) > 0 {
		if len(l.out.Numbers) > 0 {
			l.bad(top, "numbers are there twice")
		}
		l.out.Numbers = d.Numbers
	}
	known := map[string]bool{}
	for _, id := range job.LineIDs() {
		known[id] = true
	}
	for i := range d.Say {
		s := &d.Say[i]
		if _, ok := l.out.Lines[s.ID]; ok {
			l.bad(s.Range, "line %q is there twice", s.ID)
		}
		if !known[s.ID] {
			l.bad(s.Range, "line %q is never said", s.ID)
		}
		l.spoken(s)
		l.out.Lines[s.ID] = words.Line{ID: s.ID, Full: s.Full, Short: s.Short, Say: s.Say, How: s.How, Ask: s.Ask, Labels: l.labels(s), Also: s.Also}
	}
	for _, t := range d.Terms {
		l.terms(t)
	}
	for _, u := range d.Units {
		if _, ok := l.out.Units[u.ID]; ok {
			l.bad(u.Range, "unit %q is there twice", u.ID)
		}
		if _, ok := unit.Lookup(u.ID); !ok {
			l.bad(u.Range, "no unit is written %q", u.ID)
		}
		l.out.Units[u.ID] = words.Unit{One: u.One, Many: u.Many, Prefixed: u.Prefixed, Print: u.Print}
	}
}

// spoken holds a line to what a voice can speak and a person can keep in mind.
func (l *loader) spoken(s *say) {
	for _, text := range append([]string{s.Full, s.Say, s.How}, s.Short...) {
		bare := slot.ReplaceAllString(text, "x")
		if !spoken.MatchString(bare) {
			l.bad(s.Range, "line %q: %q has a sign that cannot be spoken", s.ID, text)
		}
		if n, sentence := plain.LongestOf(bare); n > plain.Longest {
			l.bad(s.Range, "line %q: a sentence of %d words, at most %d: %q", s.ID, n, plain.Longest, sentence)
		}
	}
	if l.out.Lang != "en" {
		return // how questions are asked is a matter of the language
	}
	var labels []string
	for i, id := range s.Ask {
		if len(s.Labels) == len(s.Ask) {
			id = s.Labels[i]
		}
		labels = append(labels, strings.ReplaceAll(id, "-", " "))
	}
	if err := plain.Answers(s.Full+" "+s.Say, labels); err != nil {
		l.bad(s.Range, "line %q: %v", s.ID, err)
	}
}

// labels joins the answers of a line with their own words.
func (l *loader) labels(s *say) map[string]string {
	if len(s.Labels) > 0 && len(s.Labels) != len(s.Ask) {
		l.bad(s.Range, "line %q has %d answers and %d labels", s.ID, len(s.Ask), len(s.Labels))
		return nil
	}
	for id := range s.Also {
		if !slices.Contains(s.Ask, id) {
			l.bad(s.Range, "line %q: also names %q, which is no answer", s.ID, id)
		}
	}
	var out map[string]string
	for i, text := range s.Labels {
		if out == nil {
			out = map[string]string{}
		}
		out[s.Ask[i]] = text
	}
	return out
}

// terms takes a block of short texts.
func (l *loader) terms(t terms) {
	attrs, diags := t.Body.JustAttributes()
	l.diags = append(l.diags, diags...)
	for _, id := range slices.Sorted(maps.Keys(attrs)) {
		a := attrs[id]
		v, diags := a.Expr.Value(nil)
		l.diags = append(l.diags, diags...)
		if diags.HasErrors() {
			continue
		}
		key := t.Group + "." + id
		if v.IsNull() || v.Type() != cty.String {
			l.bad(a.Range, "term %q is no text", key)
			continue
		}
		if _, ok := l.out.Terms[key]; ok {
			l.bad(a.Range, "term %q is there twice", key)
		}
		l.out.Terms[key] = v.AsString()
	}
}

func (l *loader) problems() error {
	var lines []string
	for _, d := range l.diags {
		text := d.Summary
		if d.Detail != "" {
			text += ": " + d.Detail
		}
		if d.Subject != nil {
			text = fmt.Sprintf("%s:%d: %s", d.Subject.Filename, d.Subject.Start.Line, text)
		}
		lines = append(lines, text)
	}
	return fmt.Errorf("prompts: %s", strings.Join(lines, "\n"))
}

// Compare tells where the terms and lines of a language differ from those of another in what there is and in their
// slots.
func Compare(w, model *words.Words) error {
	var wrong []string
	for id, text := range model.Terms {
		mine, ok := w.Terms[id]
		switch {
		case !ok:
			wrong = append(wrong, "no term "+id)
		case !slices.Equal(slots(mine), slots(text)):
			wrong = append(wrong, fmt.Sprintf("term %s has the slots %v, want %v", id, slots(mine), slots(text)))
		}
	}
	for id := range w.Terms {
		if _, ok := model.Terms[id]; !ok {
			wrong = append(wrong, "term "+id+" is never shown")
		}
	}
	for id, l := range model.Lines {
		if a, b := slots(w.Lines[id].Full), slots(l.Full); !slices.Equal(a, b) {
			wrong = append(wrong, fmt.Sprintf("line %s has the slots %v, want %v", id, a, b))
		}
	}
	if len(wrong) == 0 {
		return nil
	}
	sort.Strings(wrong)
	return fmt.Errorf("prompts: language %q: %s", w.Lang, strings.Join(wrong, "; "))
}

func slots(text string) []string {
	s := slot.FindAllString(text, -1)
	sort.Strings(s)
	return slices.Compact(s)
}
