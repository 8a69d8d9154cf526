package flows

import (
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"readback/core/appliance"
)

var binary = map[*hclsyntax.Operation]string{
	hclsyntax.OpLogicalOr: "or", hclsyntax.OpLogicalAnd: "and", hclsyntax.OpEqual: "==", hclsyntax.OpNotEqual: "!=",
	hclsyntax.OpGreaterThan: ">", hclsyntax.OpGreaterThanOrEqual: ">=", hclsyntax.OpLessThan: "<", hclsyntax.OpLessThanOrEqual: "<=",
	hclsyntax.OpAdd: "+", hclsyntax.OpSubtract: "-", hclsyntax.OpMultiply: "*", hclsyntax.OpDivide: "/",
}

// Words of the context an expression may use.
var contextWords = []string{"power", "call"}

// calls are the functions of expressions with the sort of their arguments: net, part, step, output, lamp, mode, expr.
var calls = map[string][]string{
	"volts": {"net", "net"}, "millivolts": {"net", "net"}, "amps": {"part"}, "microamps": {"part"},
	"min": {"expr", "expr"}, "max": {"expr", "expr"}, "abs": {"expr"},
	"reached": {"step"}, "at": {"step"}, "stuck": {"step"}, "drives": {"output"}, "lamp": {"lamp"}, "mode": {"mode"},
}

var callNames = []string{"volts", "millivolts", "amps", "microamps", "min", "max", "abs", "reached", "at", "stuck", "drives", "lamp", "mode"}

// expr turns the syntax of an expression into the engine's, and holds every name in it to something that exists.
func (l *loader) expr(e hclsyntax.Expression) *appliance.Expr {
	line := e.Range().Start.Line
	switch e := e.(type) {
	case *hclsyntax.ParenthesesExpr:
		return l.expr(e.Expression)
	case *hclsyntax.LiteralValueExpr:
		switch {
		case e.Val.IsNull() || !e.Val.IsKnown():
		case e.Val.Type() == cty.Number:
			f, _ := e.Val.AsBigFloat().Float64()
			if f > 1 { // shares and yes and no need no source
				l.warn(e.Range(), `numbers = { name = q("80 V", "source") } in a part, then part.name`, "%g stands in an expression without a source", f)
			}
			return &appliance.Expr{Op: "num", Num: f, Line: line}
		case e.Val.Type() == cty.Bool && e.Val.True():
			return &appliance.Expr{Op: "num", Num: 1, Line: line}
		case e.Val.Type() == cty.Bool:
			return &appliance.Expr{Op: "num", Line: line}
		}
	case *hclsyntax.UnaryOpExpr:
		op := "not"
		if e.Op == hclsyntax.OpNegate {
			op = "neg"
		}
		return &appliance.Expr{Op: op, Args: []*appliance.Expr{l.expr(e.Val)}, Line: line}
	case *hclsyntax.BinaryOpExpr:
		if op, ok := binary[e.Op]; ok {
			return &appliance.Expr{Op: op, Args: []*appliance.Expr{l.expr(e.LHS), l.expr(e.RHS)}, Line: line}
		}
	case *hclsyntax.ConditionalExpr:
		return &appliance.Expr{Op: "cond", Args: []*appliance.Expr{l.expr(e.Condition), l.expr(e.TrueResult), l.expr(e.FalseResult)}, Line: line}
	case *hclsyntax.ScopeTraversalExpr:
		return l.nameExpr(e)
	case *hclsyntax.FunctionCallExpr:
		return l.callExpr(e)
	}
	l.at(e.Range(), "", "this cannot stand in an expression")
	return &appliance.Expr{Op: "num", Line: line}
}

func (l *loader) nameExpr(e *hclsyntax.ScopeTraversalExpr) *appliance.Expr {
	out := &appliance.Expr{Op: "name", Line: e.Range().Start.Line}
	root := e.Traversal.RootName()
	if len(e.Traversal) == 1 {
		out.Name = root
		for _, w := range contextWords {
			if root == w {
				return out
			}
		}
		if _, ok := l.signals.index[root]; !ok {
			hint := meant(root, append(append([]string(nil), l.signals.ids...), contextWords...))
			if _, isPart := l.parts.index[root]; isPart {
				hint = "a part has properties: " + root + "." + strings.Join(l.props[root], ", "+root+".")
			}
			l.at(e.Range(), hint, "no signal %q", root)
		}
		return out
	}
	prop, ok := e.Traversal[1].(hcl.TraverseAttr)
	if !ok || len(e.Traversal) != 2 {
		l.at(e.Range(), "", "want a signal or part.property")
		return out
	}
	out.Name = root + "." + prop.Name
	props, ok := l.props[root]
	if !ok {
		l.at(e.Range(), meant(root, l.parts.ids), "no part %q", root)
		return out
	}
	for _, p := range props {
		if p == prop.Name {
			return out
		}
	}
	l.at(e.Range(), meant(prop.Name, props), "part %s has no property %q", root, prop.Name)
	return out
}

func (l *loader) callExpr(e *hclsyntax.FunctionCallExpr) *appliance.Expr {
	out := &appliance.Expr{Op: "call", Name: e.Name, Line: e.Range().Start.Line}
	sorts, ok := calls[e.Name]
	if !ok {
		l.at(e.NameRange, meant(e.Name, callNames), "no function %q", e.Name)
		return out
	}
	if len(e.Args) != len(sorts) {
		l.at(e.Range(), "", "%s takes %d, here are %d", e.Name, len(sorts), len(e.Args))
		return out
	}
	regs := map[string]*registry{"net": l.nets, "part": l.parts, "step": l.steps, "output": l.outputs, "lamp": l.lamps, "mode": l.modes}
	for i, a := range e.Args {
		if sorts[i] == "expr" {
			out.Args = append(out.Args, l.expr(a))
			continue
		}
		s, ok := l.text(a)
		if ok {
			l.lookup(s, a.Range(), regs[sorts[i]])
		}
		out.Args = append(out.Args, &appliance.Expr{Op: "str", Name: s, Line: a.Range().Start.Line})
	}
	return out
}
