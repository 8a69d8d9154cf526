// Package lexicon holds what people say, as data: commands, answers, emergencies, units and display states of a
// language, in HCL files whose every problem is reported with its file and line.
package lexicon

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"regexp"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/gohcl"
	"github.com/hashicorp/hcl/v2/hclparse"

	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
)

//go:embed en
var files embed.FS

// Load returns the English lexicon that comes with the program.
func Load() (*utterance.Lexicon, error) { return Language("en") }

// Language returns the lexicon of a language that comes with the program. Its error names the languages there are.
func Language(lang string) (*utterance.Lexicon, error) { return LoadFS(files, lang) }

// LoadFS reads every *.hcl in the folder of the language in fsys and joins them, and background.txt, one word a line, where there is one. Its error
// lists all problems, one a line, each beginning with file:line.
func LoadFS(fsys fs.FS, lang string) (*utterance.Lexicon, error) {
	names, err := Files(fsys, "lexicon", lang)
	if err != nil {
		return nil, err
	}
	l := loader{seen: map[string]hcl.Range{}, lex: &utterance.Lexicon{Units: map[string][]string{}, States: map[string][]string{}, Misheard: map[string][]string{}}}
	for _, name := range names {
		src, err := fs.ReadFile(fsys, name)
		if err != nil {
			return nil, fmt.Errorf("lexicon: reading %s: %w", name, err)
		}
		f, diags := hclparse.NewParser().ParseHCL(src, name)
		l.diags = append(l.diags, diags...)
		if f != nil && !diags.HasErrors() {
			l.file(f.Body)
		}
	}
	if err := l.background(fsys, lang+"/background.txt"); err != nil {
		return nil, err
	}
	l.whole(names[0], lang)
	if err := l.err(); err != nil {
		return nil, err
	}
	return l.lex, nil
}

type loader struct {
	lex   *utterance.Lexicon
	seen  map[string]hcl.Range // "kind id" or "kind saying" → where it stands first
	diags hcl.Diagnostics
}

var (
	fileSchema = &hcl.BodySchema{
		Attributes: []hcl.AttributeSchema{{Name: "lang"}},
		Blocks: []hcl.BlockHeaderSchema{
			{Type: "command", LabelNames: []string{"id"}},
			{Type: "option", LabelNames: []string{"id"}},
			{Type: "emergency", LabelNames: []string{"id"}},
			{Type: "unit", LabelNames: []string{"id"}},
			{Type: "state", LabelNames: []string{"id"}},
			{Type: "misheard", LabelNames: []string{"words"}},
			{Type: "matcher"},
		},
	}
	phraseSchema  = &hcl.BodySchema{Attributes: []hcl.AttributeSchema{{Name: "say", Required: true}, {Name: "back"}}}
	sayOnlySchema = &hcl.BodySchema{Attributes: []hcl.AttributeSchema{{Name: "say", Required: true}}}
	kebab         = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	saying        = regexp.MustCompile(`^[a-z']+( [a-z']+)*$`)
	pattern       = regexp.MustCompile(`^[a-z']+( ([a-z']+|\*))*$`)
	states        = map[string]bool{string(measure.Over): true, string(measure.Beep): true, string(measure.Silent): true,
		string(measure.Blank): true, string(measure.Jumping): true, string(measure.Dead): true}
)

// isClass tells whether an emergency is one of the closed list, or "ask": a danger of no class, which is asked about.
func isClass(id string) bool {
	_, ok := vocab.AlarmOf(id)
	return ok || id == "ask"
}

func (l *loader) bad(at hcl.Range, format string, args ...any) {
	l.diags = append(l.diags, &hcl.Diagnostic{Severity: hcl.DiagError, Summary: fmt.Sprintf(format, args...), Subject: &at})
}

// first tells whether this key was not used before, and reports a doubled one.
func (l *loader) first(kind, key string, at hcl.Range) bool {
	k := kind + " " + key
	if was, ok := l.seen[k]; ok {
		l.bad(at, "%s %q is already at %s:%d", kind, key, was.Filename, was.Start.Line)
		return false
	}
	l.seen[k] = at
	return true
}

// background reads the common words.
func (l *loader) background(fsys fs.FS, name string) error {
	src, err := fs.ReadFile(fsys, name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil // alarms stand as they are heard
	}
	if err != nil {
		return fmt.Errorf("lexicon: reading %s: %w", name, err)
	}
	at := 0
	for line := range strings.Lines(string(src)) {
		at++
		w := strings.TrimSuffix(line, "\n")
		if strings.HasPrefix(w, "#") {
			continue
		}
		if !saying.MatchString(w) || strings.Contains(w, " ") {
			pos := hcl.Pos{Line: at, Column: 1}
			l.bad(hcl.Range{Filename: name, Start: pos, End: pos}, "%q is not one word in lower case", w)
			continue
		}
		l.lex.Background = append(l.lex.Background, w)
	}
	return nil
}

func (l *loader) file(body hcl.Body) {
	c, diags := body.Content(fileSchema)
	l.diags = append(l.diags, diags...)
	if a, ok := c.Attributes["lang"]; ok {
		var lang string
		l.diags = append(l.diags, gohcl.DecodeExpression(a.Expr, nil, &lang)...)
		if l.first("setting", "lang", a.Range) {
			l.lex.Lang = lang
		}
	}
	for _, b := range c.Blocks {
		l.block(b)
	}
}

func (l *loader) block(b *hcl.Block) {
	if b.Type == "matcher" {
		l.matcher(b)
		return
	}
	id, at := b.Labels[0], b.DefRange
	if !l.first(b.Type, id, at) {
		return
	}
	schema := sayOnlySchema
	if b.Type == "command" || b.Type == "option" {
		schema = phraseSchema
	}
	c, diags := b.Body.Content(schema)
	l.diags = append(l.diags, diags...)
	p := utterance.Phrase{ID: id}
	if a, ok := c.Attributes["say"]; ok {
		re := saying
		if b.Type == "emergency" {
			re = pattern
		}
		p.Say = l.sayings(b.Type, id, a, re)
	}
	if a, ok := c.Attributes["back"]; ok {
		l.diags = append(l.diags, gohcl.DecodeExpression(a.Expr, nil, &p.Back)...)
	}
	switch b.Type {
	case "command":
		l.kebab(id, at)
		l.lex.Commands = append(l.lex.Commands, p)
	case "option":
		l.kebab(id, at)
		l.lex.Options = append(l.lex.Options, p)
	case "emergency":
		if !isClass(id) {
			l.bad(b.LabelRanges[0], "no emergency class %q", id)
		}
		l.lex.Emergencies.Classes = append(l.lex.Emergencies.Classes, p)
	case "unit":
		if _, ok := unit.Lookup(id); !ok {
			l.bad(b.LabelRanges[0], "no unit %q", id)
		}
		l.lex.Units[id] = p.Say
	case "state":
		if !states[id] {
			l.bad(b.LabelRanges[0], "no display state %q", id)
		}
		l.lex.States[id] = p.Say
	case "misheard":
		if !saying.MatchString(id) {
			l.bad(b.LabelRanges[0], "%q: want words in lower case", id)
		}
		for _, s := range p.Say {
			l.lex.Misheard[s] = append(l.lex.Misheard[s], id)
		}
	}
}

func (l *loader) kebab(id string, at hcl.Range) {
	if !kebab.MatchString(id) {
		l.bad(at, "id %q: want lower-case words joined by hyphens", id)
	}
}

// sayings decodes a list of sayings. A command or an emergency saying belongs to one id only; an option may share its
// words with other options, because the question decides.
func (l *loader) sayings(kind, id string, a *hcl.Attribute, re *regexp.Regexp) []string {
	var say []string
	diags := gohcl.DecodeExpression(a.Expr, nil, &say)
	l.diags = append(l.diags, diags...)
	if diags.HasErrors() {
		return nil
	}
	if len(say) == 0 {
		l.bad(a.Range, "%s %q has no saying", kind, id)
	}
	exprs, _ := hcl.ExprList(a.Expr)
	for i, s := range say {
		at := a.Range
		if i < len(exprs) {
			at = exprs[i].Range()
		}
		if !re.MatchString(s) {
			l.bad(at, "saying %q: want lower-case words with single spaces, numbers as words", s)
		}
		scope := kind + " saying"
		if kind == "option" || kind == "unit" || kind == "matcher" || kind == "misheard" {
			scope = kind + " " + id + " saying"
		}
		l.first(scope, s, at)
	}
	return say
}

func (l *loader) matcher(b *hcl.Block) {
	if !l.first("block", "matcher", b.DefRange) {
		return
	}
	e := &l.lex.Emergencies
	lists := []struct {
		name string
		to   *[]string
	}{{"masks", &e.Masks}, {"live", &e.Live}, {"negators", &e.Negators}, {"enders", &e.Enders}, {"fine", &e.Fine},
		{"past", &e.Past}, {"hedges", &e.Hedges}, {"expected", &e.Expected}, {"alarms", &e.Alarms}, {"near", &e.Near}}
	schema := &hcl.BodySchema{}
	for _, x := range lists {
		schema.Attributes = append(schema.Attributes, hcl.AttributeSchema{Name: x.name, Required: true})
	}
	c, diags := b.Body.Content(schema)
	l.diags = append(l.diags, diags...)
	for _, x := range lists {
		if a, ok := c.Attributes[x.name]; ok {
			*x.to = l.sayings("matcher", x.name, a, saying)
		}
	}
}

// whole reports what the joined files lack.
func (l *loader) whole(name, lang string) {
	at := hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	if l.lex.Lang != lang {
		l.bad(at, "lang is %q, the file is read for %q", l.lex.Lang, lang)
	}
	if _, ok := l.seen["block matcher"]; !ok {
		l.bad(at, "no matcher block")
	}
	var mute []string
	for _, u := range unit.All() {
		if _, ok := l.lex.Units[u.ID]; !ok {
			mute = append(mute, u.ID)
		}
	}
	if mute != nil {
		l.bad(at, "units without a saying: %s", strings.Join(mute, ", "))
	}
}

func (l *loader) err() error {
	var errs []error
	for _, d := range l.diags {
		if d.Severity != hcl.DiagError {
			continue
		}
		where := "?"
		if d.Subject != nil {
			where = fmt.Sprintf("%s:%d", d.Subject.Filename, d.Subject.Start.Line)
		}
		what := d.Summary
		if d.Detail != "" {
			what = strings.TrimSuffix(what, ".") + ": " + d.Detail
		}
		errs = append(errs, fmt.Errorf("%s: %s", where, what))
	}
	return errors.Join(errs...)
}
