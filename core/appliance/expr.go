package appliance

// Expr is an expression over the simulated state. The equipment file writes it; the loader parses it.
//
// Op is one of: num, str, name, call, not, neg, and, or, + - * /, == != < <= > >=, cond.
// A name is a signal id, part.property ("inducer.works", "limit.closed"), or a word of the context ("power", "step").
// A call is volts(netA, netB), millivolts(netA, netB) (d.c., signed), amps(part), microamps(part) (d.c.), min(…), max(…), abs(x),
// reached(step), at(step), stuck(step), drives(output), lamp(pattern), mode(part.mode).
type Expr struct {
	Op   string
	Num  float64
	Name string
	Args []*Expr
	Line int
}
