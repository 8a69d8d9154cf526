// Package words holds what the guide says, as data: one HCL file a language, read strictly. Every problem is reported with
// its file and line.
package prompts

import (
	"embed"
	"fmt"
	"io/fs"
	"regexp"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/gohcl"
	"github.com/hashicorp/hcl/v2/hclparse"

	"readback/core/job"
)

//go:embed en.hcl
var files embed.FS

// Load returns the English words that come with the program.
func Load() (*job.Words, error) { return LoadFS(files, "en") }

type file struct {
	Lang string `hcl:"lang"`
	Say  []say  `hcl:"say,block"`
}

type say struct {
	ID    string    `hcl:"id,label"`
	Full  string    `hcl:"full"`
	Short []string  `hcl:"short,optional"`
	Say   string    `hcl:"say,optional"`
	How   string    `hcl:"how,optional"`
	Ask   []string  `hcl:"ask,optional"`
	Range hcl.Range `hcl:",def_range"`
}

var (
	slot   = regexp.MustCompile(`\{[a-z]+\}`)
	spoken = regexp.MustCompile(`^[A-Za-z0-9 ,.?':-]*$`)
)

// longest is how many words a sentence may have: longer ones are not kept in mind by somebody who works.
const longest = 16

// LoadFS reads <lang>.hcl at the root of fsys. Its error lists all problems, one a line, each beginning with file:line.
func LoadFS(fsys fs.FS, lang string) (*job.Words, error) {
	name := lang + ".hcl"
	src, err := fs.ReadFile(fsys, name)
	if err != nil {
		return nil, fmt.Errorf("words: %w", err)
	}
	f, diags := hclparse.NewParser().ParseHCL(src, name)
	var d file
	if !diags.HasErrors() {
		diags = append(diags, gohcl.DecodeBody(f.Body, nil, &d)...)
	}
	if diags.HasErrors() {
		return nil, problems(diags)
	}
	w := &job.Words{Lang: d.Lang, Lines: make(map[string]job.Line, len(d.Say))}
	known := map[string]bool{}
	for _, id := range job.LineIDs() {
		known[id] = true
	}
	if d.Lang != lang {
		diags = append(diags, problem(hcl.Range{Filename: name, Start: hcl.Pos{Line: 1}}, "lang is %q", d.Lang))
	}
	for _, s := range d.Say {
		if _, ok := w.Lines[s.ID]; ok {
			diags = append(diags, problem(s.Range, "line %q is there twice", s.ID))
		}
		if !known[s.ID] {
			diags = append(diags, problem(s.Range, "line %q is never said", s.ID))
		}
		for _, text := range append([]string{s.Full, s.Say, s.How}, s.Short...) {
			bare := slot.ReplaceAllString(text, "x")
			if !spoken.MatchString(bare) {
				diags = append(diags, problem(s.Range, "line %q: %q has a sign that cannot be spoken", s.ID, text))
			}
			for _, sentence := range strings.FieldsFunc(bare, func(r rune) bool { return strings.ContainsRune(".?:", r) }) {
				if n := len(strings.Fields(sentence)); n > longest {
					diags = append(diags, problem(s.Range, "line %q: a sentence of %d words, at most %d: %q", s.ID, n, longest, strings.TrimSpace(sentence)))
				}
			}
		}
		w.Lines[s.ID] = job.Line{ID: s.ID, Full: s.Full, Short: s.Short, Say: s.Say, How: s.How, Ask: s.Ask}
	}
	if diags.HasErrors() {
		return nil, problems(diags)
	}
	if err := w.Check(); err != nil {
		return nil, fmt.Errorf("words: %s: %w", name, err)
	}
	return w, nil
}

func problem(at hcl.Range, format string, args ...any) *hcl.Diagnostic {
	return &hcl.Diagnostic{Severity: hcl.DiagError, Summary: fmt.Sprintf(format, args...), Subject: &at}
}

func problems(diags hcl.Diagnostics) error {
	var lines []string
	for _, d := range diags {
		text := d.Summary
		if d.Detail != "" {
			text += ": " + d.Detail
		}
		if d.Subject != nil {
			text = fmt.Sprintf("%s:%d: %s", d.Subject.Filename, d.Subject.Start.Line, text)
		}
		lines = append(lines, text)
	}
	return fmt.Errorf("words: %s", strings.Join(lines, "\n"))
}
