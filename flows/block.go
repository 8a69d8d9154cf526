package flows

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/unit"
)

// block reads the attributes of one block and remembers which it was asked for, so that the rest can be refused.
type block struct {
	*hclsyntax.Block
	l     *loader
	asked []string
}

func (l *loader) block(b *hclsyntax.Block) *block { return &block{Block: b, l: l} }

// id is the label of the block: kebab-case and present.
func (b *block) id() string {
	if len(b.Labels) != 1 {
		b.l.at(b.DefRange(), "write "+b.Type+` "an-id" { … }`, "a %s has one label, its id", b.Type)
		return ""
	}
	return b.Labels[0]
}

func (b *block) attr(name string) *hclsyntax.Attribute {
	if !slices.Contains(b.asked, name) {
		b.asked = append(b.asked, name)
	}
	return b.Body.Attributes[name]
}

func (b *block) need(name string) *hclsyntax.Attribute {
	a := b.attr(name)
	if a == nil {
		b.l.at(b.DefRange(), "", "%s %s has no %s", b.Type, strings.Join(b.Labels, " "), name)
	}
	return a
}

// text is a string, empty when left out.
func (b *block) text(name string) string {
	if a := b.attr(name); a != nil {
		s, _ := b.l.text(a.Expr)
		return s
	}
	return ""
}

func (b *block) needText(name string) string {
	if b.need(name) == nil {
		return ""
	}
	s := b.text(name)
	if s == "" {
		if a := b.attr(name); a != nil {
			if _, ok := b.l.text(a.Expr); ok {
				b.l.at(a.Expr.Range(), "", "%s is empty", name)
			}
		}
	}
	return s
}

// word is a string that must be one of those known; the first is the default.
func (b *block) word(name string, known ...string) string {
	a := b.attr(name)
	if a == nil {
		return known[0]
	}
	s, ok := b.l.text(a.Expr)
	if ok && !slices.Contains(known, s) {
		b.l.at(a.Expr.Range(), meant(s, known), "%s cannot be %q", name, s)
		return known[0]
	}
	return s
}

func (b *block) flag(name string) bool {
	a := b.attr(name)
	if a == nil {
		return false
	}
	v, diags := a.Expr.Value(nil)
	if diags.HasErrors() || !v.IsKnown() || v.IsNull() || v.Type().FriendlyName() != "bool" {
		b.l.at(a.Expr.Range(), "", "%s is true or false", name)
		return false
	}
	return v.True()
}

// texts is a list of strings.
func (b *block) texts(name string) []string {
	var out []string
	for _, e := range b.items(name) {
		if s, ok := b.l.text(e); ok {
			out = append(out, s)
		}
	}
	return out
}

// wordsOf is a list of strings, each one of those known.
func (b *block) wordsOf(name string, known ...string) []string {
	var out []string
	for _, e := range b.items(name) {
		s, ok := b.l.text(e)
		if ok && !slices.Contains(known, s) {
			b.l.at(e.Range(), meant(s, known), "%s cannot be %q", name, s)
			continue
		}
		if ok {
			out = append(out, s)
		}
	}
	return out
}

func (b *block) items(name string) []hclsyntax.Expression {
	a := b.attr(name)
	if a == nil {
		return nil
	}
	t, ok := a.Expr.(*hclsyntax.TupleConsExpr)
	if !ok {
		b.l.at(a.Expr.Range(), `write ["a", "b"]`, "%s is a list", name)
		return nil
	}
	return t.Exprs
}

type pairing struct {
	key   string
	where hcl.Range
	value hclsyntax.Expression
}

// object is { key = value, … } in the order of the file.
func (b *block) object(name string) []pairing {
	a := b.attr(name)
	if a == nil {
		return nil
	}
	o, ok := a.Expr.(*hclsyntax.ObjectConsExpr)
	if !ok {
		b.l.at(a.Expr.Range(), "write { name = value }", "%s is a set of names with values", name)
		return nil
	}
	var out []pairing
	for _, it := range o.Items {
		key := hcl.ExprAsKeyword(it.KeyExpr)
		if key == "" {
			if v, diags := it.KeyExpr.Value(nil); !diags.HasErrors() && v.IsKnown() && !v.IsNull() && v.Type().FriendlyName() == "string" {
				key = v.AsString()
			}
		}
		if key == "" {
			b.l.at(it.KeyExpr.Range(), "", "this is not a name")
			continue
		}
		if slices.ContainsFunc(out, func(p pairing) bool { return p.key == key }) {
			b.l.at(it.KeyExpr.Range(), "", "%s is given twice", key)
			continue
		}
		out = append(out, pairing{key, it.KeyExpr.Range(), it.ValueExpr})
	}
	return out
}

// quantity is q(…) of a dimension; "" takes any. Left out it is the zero Quantity.
func (b *block) quantity(name string, dim unit.Dim) measure.Quantity {
	a := b.attr(name)
	if a == nil {
		return measure.Quantity{}
	}
	q, _ := b.l.quantity(a.Expr, dim)
	return q
}

func (b *block) needQuantity(name string, dim unit.Dim) measure.Quantity {
	if b.need(name) == nil {
		return measure.Quantity{}
	}
	return b.quantity(name, dim)
}

func (b *block) expr(name string) *appliance.Expr {
	a := b.attr(name)
	if a == nil {
		return nil
	}
	return b.l.expr(a.Expr)
}

// ref is the index of something with an id, -1 when left out or wrong.
func (b *block) ref(name string, reg *registry) int {
	a := b.attr(name)
	if a == nil {
		return -1
	}
	return b.l.ref(a.Expr, reg)
}

func (b *block) needRef(name string, reg *registry) int {
	if b.need(name) == nil {
		return -1
	}
	return b.ref(name, reg)
}

func (b *block) refs(name string, reg *registry) []int {
	var out []int
	for _, e := range b.items(name) {
		if i := b.l.ref(e, reg); i >= 0 {
			out = append(out, i)
		}
	}
	return out
}

// finish refuses what was not asked for. Types names the blocks that may stand inside.
func (b *block) finish(types ...string) {
	names := make([]string, 0, len(b.Body.Attributes))
	for name := range b.Body.Attributes {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		if !slices.Contains(b.asked, name) {
			b.l.at(b.Body.Attributes[name].NameRange, meant(name, b.asked), "%s has no %q", article(b.Type), name)
		}
	}
	for _, in := range b.Body.Blocks {
		if !slices.Contains(types, in.Type) {
			b.l.at(in.TypeRange, meant(in.Type, types), "%s holds no %q", article(b.Type), in.Type)
		}
	}
}

func (b *block) inner(kind string) []*block {
	var out []*block
	for _, in := range b.Body.Blocks {
		if in.Type == kind {
			out = append(out, b.l.block(in))
		}
	}
	return out
}

// registry is the ids of one sort in the order of the file.
type registry struct {
	what  string
	ids   []string
	index map[string]int
	where []hcl.Range
}

func newRegistry(what string) *registry { return &registry{what: what, index: map[string]int{}} }

func (l *loader) declare(reg *registry, id string, where hcl.Range) {
	if id == "" { // said already; the place in the list is kept
	} else if i, dup := reg.index[id]; dup {
		line := fmt.Sprintf("line %d", reg.where[i].Start.Line)
		if at := reg.where[i].Filename; at != where.Filename {
			line = fmt.Sprintf("%s:%d", at, reg.where[i].Start.Line)
		}
		l.at(where, "ids are never used twice", "%s %q is already at %s", reg.what, id, line)
		id = ""
	} else {
		reg.index[id] = len(reg.ids)
	}
	reg.ids = append(reg.ids, id)
	reg.where = append(reg.where, where)
}

func (l *loader) ref(e hclsyntax.Expression, reg *registry) int {
	s, ok := l.text(e)
	if !ok {
		return -1
	}
	return l.lookup(s, e.Range(), reg)
}

func (l *loader) lookup(id string, where hcl.Range, reg *registry) int {
	i, ok := reg.index[id]
	if !ok {
		l.at(where, meant(id, reg.ids), "no %s %q", reg.what, id)
		return -1
	}
	return i
}
