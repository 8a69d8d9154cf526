package flows

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// An assembly is a piece of an appliance in a file of its own: assemblies/NAME.hcl, beside the file that uses it or among those that
// come with the program. It is ordinary blocks behind a header that lists its parameters with what they are where nobody says:
//
//	assembly "line-120" { machine = "furnace" }
//	part "furnace-switch" { name = "${machine} switch" … }
//
// and `use "line-120" { machine = "boiler" }` puts its blocks where it stands. Nets are joined by their names; a net that is named
// otherwise in each file is a parameter. A block in the use with the id of one of the assembly changes that one: attributes and inner
// blocks win over those of the assembly, null takes an attribute away; `without` leaves blocks out. All of it happens before anything
// is decoded, so that the rest of the loader, and core, know no assemblies.
//
// The other way that was sketched gave every assembly a scope of its own, with ports as in a circuit program and ids behind a
// prefix. It needs a second kind of name in every expression, check and repair, and words that are spoken cannot have a prefix.

// assemblies finds the text of an assembly and the name of its file.
type assemblies func(name string) (file string, src []byte, ok bool)

// beside looks for assemblies next to the file at dir, then among those of the program.
func beside(fsys fs.FS, dir string) assemblies {
	return func(name string) (string, []byte, bool) {
		file := "assemblies/" + name + ".hcl"
		for _, at := range []struct {
			fsys fs.FS
			dir  string
		}{{fsys, dir}, {data, "data"}} {
			if src, err := fs.ReadFile(at.fsys, path.Join(at.dir, file)); err == nil && len(src) <= maxFile {
				return file, src, true
			}
		}
		return file, nil, false
	}
}

// Assemblies returns the names of those that come with the program.
func Assemblies() []string {
	files, err := fs.Glob(data, "data/assemblies/*.hcl")
	if err != nil {
		panic("flows: bad pattern of the built-in assemblies")
	}
	var names []string
	for _, f := range files {
		names = append(names, strings.TrimSuffix(path.Base(f), ".hcl"))
	}
	return names
}

// splice puts the blocks of assemblies in the place of every use.
func (l *loader) splice(blocks hclsyntax.Blocks) hclsyntax.Blocks {
	var out hclsyntax.Blocks
	for _, b := range blocks {
		switch b.Type {
		case "use":
			out = append(out, l.use(b)...)
		case "assembly":
			l.at(b.TypeRange, `give it a file of its own, assemblies/NAME.hcl, and write use "NAME" { … } here`, "an assembly stands in an equipment file")
		default:
			out = append(out, b)
		}
	}
	return out
}

// use reads one assembly with the parameters and the changes of a use block.
func (l *loader) use(b *hclsyntax.Block) hclsyntax.Blocks {
	name := l.block(b).id()
	if name == "" {
		return nil
	}
	if !kebab.MatchString(name) {
		l.at(b.DefRange(), "write small letters, digits and hyphens", "%q is not kebab-case", name)
		return nil
	}
	file, src, ok := l.library(name)
	if !ok {
		l.at(b.DefRange(), meant(name, Assemblies()), "no assembly %q: %s is not there", name, file)
		return nil
	}
	if at, twice := l.usedAt[file]; twice {
		l.at(b.DefRange(), "an assembly is used once in a file: its ids would be there twice", "assembly %q is already used at line %d", name, at.Start.Line)
		return nil
	}
	l.usedAt[file] = b.DefRange()
	l.texts[file] = strings.Split(string(src), "\n")
	l.sum.Write(src)
	params := l.header(name, file, src)
	if params == nil {
		return nil
	}
	for n, a := range b.Body.Attributes {
		if n == "without" {
			continue
		}
		if _, known := params[n]; !known {
			l.at(a.NameRange, meant(n, keys(params)), "assembly %q has no parameter %q", name, n)
			continue
		}
		v, diags := a.Expr.Value(nil)
		if diags.HasErrors() || !v.IsKnown() || v.IsNull() || v.Type() != cty.String || strings.ContainsAny(v.AsString(), "\"\\\n$%{}") {
			l.at(a.Expr.Range(), "", "a parameter is words in quotes, with no quotes, braces or signs in them")
			continue
		}
		params[n] = v.AsString()
	}
	body := l.parse(file, l.fill(file, src, params))
	if body == nil {
		return nil
	}
	blocks := slices.DeleteFunc(body.Blocks, func(in *hclsyntax.Block) bool { return in.Type == "assembly" })
	for _, in := range blocks {
		if in.Type == "use" {
			l.at(in.TypeRange, "use both in the equipment file", "an assembly uses no other")
		}
	}
	blocks = l.without(b, name, blocks)
	for _, over := range b.Body.Blocks {
		i := slices.IndexFunc(blocks, func(in *hclsyntax.Block) bool { return same(in, over) })
		if i < 0 {
			l.at(over.DefRange(), meant(label(over), labels(blocks, over.Type)), "assembly %q has no %s %q to change", name, over.Type, label(over))
			continue
		}
		change(blocks[i], over)
	}
	return blocks
}

// header is the parameters of an assembly with their defaults; nil with a problem when it has none.
func (l *loader) header(name, file string, src []byte) map[string]string {
	body := l.parse(file, src)
	if body == nil {
		return nil
	}
	params := map[string]string{}
	heads := 0
	for _, b := range body.Blocks {
		if b.Type != "assembly" {
			continue
		}
		heads++
		if label(b) != name {
			l.at(b.DefRange(), "", "the file of assembly %q begins another one, %q", name, label(b))
		}
		for n, a := range b.Body.Attributes {
			if s, ok := l.text(a.Expr); ok {
				params[n] = s
			}
		}
	}
	if heads != 1 {
		l.at(hcl.Range{Filename: file, Start: hcl.InitialPos}, fmt.Sprintf("begin with assembly %q { }", name), "want one header, here are %d", heads)
		return nil
	}
	return params
}

var placeholder = regexp.MustCompile(`\$\{([^}]*)\}`)

// fill puts the parameters into the text of an assembly. Lines stay what they are, so that problems still name them.
func (l *loader) fill(file string, src []byte, params map[string]string) []byte {
	lines := strings.Split(string(src), "\n")
	for i, line := range lines {
		lines[i] = placeholder.ReplaceAllStringFunc(line, func(s string) string {
			n := s[2 : len(s)-1]
			v, ok := params[n]
			if !ok {
				at := hcl.Pos{Line: i + 1, Column: strings.Index(line, s) + 1}
				l.at(hcl.Range{Filename: file, Start: at, End: at}, meant(n, keys(params)), "no parameter %q", n)
			}
			return v
		})
	}
	return []byte(strings.Join(lines, "\n"))
}

// parse is the blocks of one text, nil with problems.
func (l *loader) parse(file string, src []byte) *hclsyntax.Body {
	if !l.shallow(file, src) {
		return nil
	}
	parsed, diags := hclsyntax.ParseConfig(src, file, hcl.InitialPos)
	if diags.HasErrors() {
		for _, d := range diags {
			r := hcl.Range{Filename: file, Start: hcl.InitialPos}
			if d.Subject != nil {
				r = *d.Subject
			}
			l.at(r, "", "%s", strings.TrimSuffix(d.Summary+": "+strings.ReplaceAll(d.Detail, "\n", " "), ": "))
		}
		return nil
	}
	body, ok := parsed.Body.(*hclsyntax.Body)
	if !ok {
		panic("flows: native syntax gave another body")
	}
	if !l.bounded(body) {
		return nil
	}
	return body
}

// without leaves blocks out: "part vent", or "mode vent.partly" for one inside another.
func (l *loader) without(b *hclsyntax.Block, name string, blocks hclsyntax.Blocks) hclsyntax.Blocks {
	a := b.Body.Attributes["without"]
	if a == nil {
		return blocks
	}
	for _, e := range l.block(b).items("without") {
		s, ok := l.text(e)
		if !ok {
			continue
		}
		kind, id, _ := strings.Cut(s, " ")
		outer, inner, nested := strings.Cut(id, ".")
		found := false
		if !nested {
			n := len(blocks)
			blocks = slices.DeleteFunc(blocks, func(in *hclsyntax.Block) bool { return in.Type == kind && label(in) == id })
			found = len(blocks) < n
		} else {
			for _, in := range blocks {
				if label(in) != outer {
					continue
				}
				n := len(in.Body.Blocks)
				in.Body.Blocks = slices.DeleteFunc(in.Body.Blocks, func(x *hclsyntax.Block) bool { return x.Type == kind && label(x) == inner })
				found = found || len(in.Body.Blocks) < n
			}
		}
		if !found {
			l.at(e.Range(), meant(id, labels(blocks, kind)), "assembly %q has no %s to leave out", name, s)
		}
	}
	return blocks
}

// change merges a block of a use into the one of the assembly.
func change(b, over *hclsyntax.Block) {
	for n, a := range over.Body.Attributes {
		if lit, ok := a.Expr.(*hclsyntax.LiteralValueExpr); ok && lit.Val.IsNull() {
			delete(b.Body.Attributes, n)
			continue
		}
		b.Body.Attributes[n] = a
	}
	var replaced []string // inner blocks without a label are replaced as a whole: the steps of a repair
	for _, in := range over.Body.Blocks {
		if len(in.Labels) == 0 {
			if !slices.Contains(replaced, in.Type) {
				replaced = append(replaced, in.Type)
				b.Body.Blocks = slices.DeleteFunc(b.Body.Blocks, func(x *hclsyntax.Block) bool { return x.Type == in.Type && len(x.Labels) == 0 })
			}
			b.Body.Blocks = append(b.Body.Blocks, in)
			continue
		}
		if i := slices.IndexFunc(b.Body.Blocks, func(x *hclsyntax.Block) bool { return same(x, in) }); i >= 0 {
			change(b.Body.Blocks[i], in)
			continue
		}
		b.Body.Blocks = append(b.Body.Blocks, in)
	}
}

func label(b *hclsyntax.Block) string { return strings.Join(b.Labels, " ") }

func same(a, b *hclsyntax.Block) bool { return a.Type == b.Type && slices.Equal(a.Labels, b.Labels) }

func labels(blocks hclsyntax.Blocks, kind string) (out []string) {
	for _, b := range blocks {
		if b.Type == kind {
			out = append(out, label(b))
		}
	}
	return out
}

func keys(m map[string]string) (out []string) {
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
