// Package flows reads equipment files: what an appliance is made of, how it is joined, how each part fails, what its
// control does in order, where a lead can be put. The reader is strict: an unknown word is an error, a number
// without a source is an error, and all problems of a file are reported at once with line, column and the likely word.
package flows

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"readback/core/appliance"
)

//go:embed data
var data embed.FS

// maxFile bounds what the loader will read, bytes.
const maxFile = 4 << 20

// Files returns the equipment files that come with the program.
func Files() (fs.FS, []string) {
	names, err := fs.Glob(data, "data/*.hcl")
	if err != nil {
		panic("flows: bad pattern of the built-in files")
	}
	return data, names
}

// Builtin loads every equipment file that comes with the program, in the order of their names.
func Builtin() ([]*appliance.Model, error) {
	fsys, names := Files()
	var models []*appliance.Model
	var errs []error
	for _, name := range names {
		m, err := Load(fsys, name)
		if err != nil {
			errs = append(errs, err)
			continue
		}
		models = append(models, m)
	}
	return models, errors.Join(errs...)
}

// Load reads and checks one equipment file. The error is a [Problems] when the file could be read.
func Load(fsys fs.FS, name string) (*appliance.Model, error) {
	l, err := read(fsys, name)
	if err != nil {
		return nil, err
	}
	if errs := l.probs.errors(); len(errs) > 0 {
		return nil, errs
	}
	return l.m, nil
}

// read decodes a file and keeps all its problems, warnings too.
func read(fsys fs.FS, name string) (*loader, error) {
	f, err := fsys.Open(name)
	if err != nil {
		return nil, fmt.Errorf("flows: opening %s: %w", name, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, fmt.Errorf("flows: opening %s: %w", name, err)
	}
	if info.Size() > maxFile {
		return nil, fmt.Errorf("flows: opening %s: %d bytes are more than %d", name, info.Size(), maxFile)
	}
	src, err := fs.ReadFile(fsys, name)
	if err != nil {
		return nil, fmt.Errorf("flows: reading %s: %w", name, err)
	}
	return decode(path.Base(name), src, beside(fsys, path.Dir(name))), nil
}

// loader holds one file on its way to a model.
type loader struct {
	name    string
	texts   map[string][]string  // lines of the file and of the assemblies it uses
	usedAt  map[string]hcl.Range // where an assembly is used
	library assemblies
	sum     hash.Hash
	probs   Problems
	m       *appliance.Model

	sources, places, parts, modes, signals, steps, outputs, nets *registry
	points, checks, repairs, plates, lamps, stops                *registry

	props    map[string][]string // what an expression can ask of a part
	netUses  map[string]int      // ports on a net
	partOf   map[string]*appliance.Kind
	options  map[[2]int]hcl.Range // check, option
	accepted []acceptance
	labelled map[int]hclsyntax.Expression // limits that hang on a label, by check
	unless   []unless
	acts     map[string]hcl.Range // "check:act" and the like, for rules about words
}

func decode(name string, src []byte, library assemblies) *loader {
	l := &loader{name: name, texts: map[string][]string{name: strings.Split(string(src), "\n")}, usedAt: map[string]hcl.Range{}, library: library,
		sum: sha256.New(), m: &appliance.Model{}, props: map[string][]string{}, netUses: map[string]int{},
		partOf: map[string]*appliance.Kind{}, options: map[[2]int]hcl.Range{}, labelled: map[int]hclsyntax.Expression{}, acts: map[string]hcl.Range{}}
	for what, reg := range map[string]**registry{"source": &l.sources, "place": &l.places, "part": &l.parts, "mode": &l.modes,
		"signal": &l.signals, "step": &l.steps, "output": &l.outputs, "net": &l.nets, "point": &l.points, "check": &l.checks,
		"repair": &l.repairs, "plate field": &l.plates, "lamp pattern": &l.lamps, "stop line": &l.stops} {
		*reg = newRegistry(what)
	}
	l.sum.Write(src)
	if body := l.parse(name, src); body != nil {
		l.file(body)
	}
	l.m.Hash = hex.EncodeToString(l.sum.Sum(nil))
	l.probs.sort()
	return l
}

// bounded refuses loops: nothing in an equipment file needs one, and three within one another take minutes.
func (l *loader) bounded(body *hclsyntax.Body) bool {
	was := len(l.probs.errors())
	_ = hclsyntax.VisitAll(body, func(n hclsyntax.Node) hcl.Diagnostics {
		if f, ok := n.(*hclsyntax.ForExpr); ok {
			l.at(f.Range(), "write the values one by one", "an equipment file has no loops")
		}
		return nil
	})
	return len(l.probs.errors()) == was
}

// The parser and the expressions recurse: a file of nothing but brackets must not eat the stack.
const (
	maxDepth  = 100  // brackets within brackets
	maxTokens = 5000 // of one line, or of what brackets make one line
)

// shallow refuses what nests too deep or goes on too long, before anything recurses into it.
func (l *loader) shallow(name string, src []byte) bool {
	tokens, _ := hclsyntax.LexConfig(src, name, hcl.InitialPos)
	depth, inner, run := 0, 0, 0
	for _, t := range tokens {
		switch t.Type {
		case hclsyntax.TokenOParen, hclsyntax.TokenOBrack:
			depth, inner = depth+1, inner+1
		case hclsyntax.TokenOBrace, hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
			depth++
		case hclsyntax.TokenCParen, hclsyntax.TokenCBrack:
			depth, inner = depth-1, max(0, inner-1)
		case hclsyntax.TokenCBrace, hclsyntax.TokenTemplateSeqEnd:
			depth--
		case hclsyntax.TokenNewline:
			if inner == 0 {
				run = 0
			}
		}
		if run++; run > maxTokens || depth > maxDepth {
			l.at(t.Range, "", "more than %d things in one line, or %d brackets within brackets", maxTokens, maxDepth)
			return false
		}
	}
	return true
}

var blockTypes = []string{"appliance", "source", "place", "part", "signal", "control", "point", "check", "repair", "plate", "lamp", "stop", "caution", "fact", "accept"}

// file declares every id first and decodes after, so that a file may name things in any order.
func (l *loader) file(body *hclsyntax.Body) {
	var names []string
	for name := range body.Attributes {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		l.at(body.Attributes[name].NameRange, "attributes stand inside blocks", "%q stands outside any block", name)
	}
	groups := map[string][]*block{}
	for _, b := range l.splice(body.Blocks) {
		if !slices.Contains(blockTypes, b.Type) {
			l.at(b.TypeRange, meant(b.Type, append([]string{"use"}, blockTypes...)), "no block %q", b.Type)
			continue
		}
		groups[b.Type] = append(groups[b.Type], l.block(b))
	}
	for what, reg := range map[string]*registry{"source": l.sources, "place": l.places, "signal": l.signals, "point": l.points,
		"check": l.checks, "repair": l.repairs, "plate": l.plates, "lamp": l.lamps, "stop": l.stops} {
		for _, b := range groups[what] {
			l.declare(reg, b.id(), b.DefRange())
		}
	}
	for _, b := range groups["part"] {
		l.declarePart(b)
	}
	for _, b := range groups["control"] {
		for _, s := range b.inner("step") {
			l.declare(l.steps, s.id(), s.DefRange())
			if b.Body.Attributes["part"] == nil { // hand-worked: what it drives is declared by naming it
				for _, d := range s.texts("drive") {
					if _, ok := l.outputs.index[d]; !ok {
						l.declare(l.outputs, d, s.DefRange())
					}
				}
			}
		}
	}

	switch a := groups["appliance"]; len(a) {
	case 1:
		l.appliance(a[0])
	case 0:
		l.at(hcl.Range{Start: hcl.InitialPos}, `begin with appliance "an-id" { … }`, "the file describes no appliance")
	default:
		l.at(a[1].DefRange(), "one file, one appliance", "a second appliance")
	}
	each := func(kind string, f func(*block)) {
		for _, b := range groups[kind] {
			f(b)
		}
	}
	each("source", l.source1)
	each("place", l.place)
	each("part", l.part)
	each("signal", l.signal)
	each("control", l.control)
	each("point", l.point)
	each("check", l.check)
	l.answers()
	each("repair", l.repair)
	each("plate", l.plate)
	l.labels()
	each("lamp", l.lamp)
	each("stop", l.stop)
	each("caution", l.caution)
	each("fact", l.fact)
	each("accept", l.accept)
	l.rules()
}
