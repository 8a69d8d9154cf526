package appliance

import "math"

// expr compiles an expression to a function of the state and the slots it reads.
func (b *builder) expr(e *Expr) (fn func(*state) float64, deps []int32) {
	arg := func(i int) func(*state) float64 {
		if i >= len(e.Args) || e.Args[i] == nil {
			b.fail("line %d: %s %s: an argument is missing", e.Line, e.Op, e.Name)
			return func(*state) float64 { return 0 }
		}
		f, d := b.expr(e.Args[i])
		deps = append(deps, d...)
		return f
	}
	two := func(op func(x, y float64) float64) func(*state) float64 {
		x, y := arg(0), arg(1)
		return func(s *state) float64 { return op(x(s), y(s)) }
	}
	switch e.Op {
	case "num":
		v := e.Num
		return func(*state) float64 { return v }, nil
	case "name":
		s := b.lookup(e.Name, e.Line)
		return func(st *state) float64 { return st.val[s] }, []int32{s}
	case "not":
		x := arg(0)
		return func(s *state) float64 { return truth(x(s) <= 0.5) }, deps
	case "neg":
		x := arg(0)
		return func(s *state) float64 { return -x(s) }, deps
	case "and":
		fn = two(func(x, y float64) float64 { return truth(x > 0.5 && y > 0.5) })
	case "or":
		fn = two(func(x, y float64) float64 { return truth(x > 0.5 || y > 0.5) })
	case "+":
		fn = two(func(x, y float64) float64 { return x + y })
	case "-":
		fn = two(func(x, y float64) float64 { return x - y })
	case "*":
		fn = two(func(x, y float64) float64 { return x * y })
	case "/":
		fn = two(ratio)
	case "==":
		fn = two(func(x, y float64) float64 { return truth(x == y) })
	case "!=":
		fn = two(func(x, y float64) float64 { return truth(x != y) })
	case "<":
		fn = two(func(x, y float64) float64 { return truth(x < y) })
	case "<=":
		fn = two(func(x, y float64) float64 { return truth(x <= y) })
	case ">":
		fn = two(func(x, y float64) float64 { return truth(x > y) })
	case ">=":
		fn = two(func(x, y float64) float64 { return truth(x >= y) })
	case "cond":
		c, x, y := arg(0), arg(1), arg(2)
		fn = func(s *state) float64 {
			if c(s) > 0.5 {
				return x(s)
			}
			return y(s)
		}
	case "call":
		return b.call(e, arg, &deps)
	default:
		b.fail("line %d: no operation %q", e.Line, e.Op)
		return func(*state) float64 { return 0 }, nil
	}
	return fn, deps
}

func (b *builder) call(e *Expr, arg func(int) func(*state) float64, deps *[]int32) (func(*state) float64, []int32) {
	word := func(i int) string {
		if i < len(e.Args) && e.Args[i] != nil {
			return e.Args[i].Name
		}
		return ""
	}
	none := func(*state) float64 { return 0 }
	switch e.Name {
	case "min", "max":
		x, y := arg(0), arg(1)
		if e.Name == "min" {
			return func(s *state) float64 { return min(x(s), y(s)) }, *deps
		}
		return func(s *state) float64 { return max(x(s), y(s)) }, *deps
	case "abs":
		x := arg(0)
		return func(s *state) float64 { return math.Abs(x(s)) }, *deps
	case "volts", "millivolts":
		x, y := b.known(word(0), e.Line), b.known(word(1), e.Line)
		if e.Name == "volts" {
			return func(s *state) float64 { return math.Abs(s.volt(x) - s.volt(y)) }, nil
		}
		return func(s *state) float64 { return 1e3 * (s.voltDC(x) - s.voltDC(y)) }, nil
	case "amps":
		s := b.lookup(word(0)+".amps", e.Line)
		return func(st *state) float64 { return st.val[s] }, []int32{s}
	case "microamps":
		s := b.lookup(word(0)+".microamps_now", e.Line)
		return func(st *state) float64 { return st.val[s] }, []int32{s}
	case "mode":
		if i, ok := b.modeIndex[word(0)]; ok {
			s := b.modeSlot + int32(i)
			return func(st *state) float64 { return st.val[s] }, nil
		}
	case "reached", "at", "stuck":
		if i, ok := b.stepIndex[word(0)]; ok {
			switch e.Name {
			case "reached":
				return func(s *state) float64 { return truth(i < len(s.reached) && s.reached[i]) }, nil
			case "at":
				return func(s *state) float64 { return truth(s.step == i) }, nil
			}
			return func(s *state) float64 { return truth(s.stuck == i) }, nil
		}
	case "drives":
		if i, ok := b.driveIndex[word(0)]; ok {
			s := b.driveSlot + int32(i)
			return func(st *state) float64 { return st.val[s] }, []int32{s}
		}
	case "lamp":
		for i := range b.m.Lamps {
			if b.m.Lamps[i].ID == word(0) {
				return func(s *state) float64 { return truth(s.lamp == i) }, nil
			}
		}
	}
	b.fail("line %d: %s(%q) names nothing", e.Line, e.Name, word(0))
	return none, nil
}

// known is the node of a net that some part joins.
func (b *builder) known(net string, line int) int32 {
	if net != b.datum {
		if _, ok := b.nodes[net]; !ok {
			b.fail("line %d: no net %q", line, net)
			return -1
		}
	}
	return b.net(net)
}

func truth(x bool) float64 {
	if x {
		return 1
	}
	return 0
}

// ratio is x/y, and a very large number rather than infinity: nothing in an appliance divides by zero and stays silent.
func ratio(x, y float64) float64 {
	if y == 0 {
		switch {
		case x > 0:
			return 1e9
		case x < 0:
			return -1e9
		}
		return 0
	}
	return x / y
}
