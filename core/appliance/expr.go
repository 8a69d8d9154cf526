package appliance

// Expr is an expression over the simulated state. The equipment file writes it; the loader parses it.
//
// Op is one of: num, str, name, call, not, neg, and, or, + - * /, == != < <= > >=, cond.
// A name is a signal id, part.property ("inducer.works", "limit.closed"), or a word of the context ("power", "step").
// A call is volts(netA, netB), amps(part), min(…), max(…), reached(step), at(step), mode(part.mode).
type Expr struct {
	Op   string
	Num  float64
	Name string
	Args []*Expr
	Line int
}
