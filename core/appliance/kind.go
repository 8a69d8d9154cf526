package appliance

import (
	"slices"
	"strings"

	"readback/core/unit"
)

// Kind is what all parts of one sort have in common: what a file may say of such a part, how it behaves, what each of its effects does to
// it, how it is drawn, and what must be shown before it is called faulty. None of them is a furnace: another appliance is another file.
// A kind is one file, kind_NAME.go. TestKinds names what one lacks.
type Kind struct {
	Name    string
	Doc     string
	Ports   []Port
	Pair    bool // its ports are given both or not at all
	Params  []Param
	Exprs   []Slot
	Words   []Word
	Effects []Effect
	Props   []Prop // what an expression can ask of such a part, besides its parameters and "ok"

	Passes   Passage // what a healthy one does to the current between its ends
	Return   string  // a source of power: its port that all volts are counted from where the file names no earth
	Holds    bool    // keeps a charge after the power is off
	Spreads  bool    // its resistance moves readings, however small it is
	Controls bool    // runs a sequence; the file gives it outputs and inputs
	Proof    Proof   // what must be shown, besides the fault itself, before one is replaced
	Drawn    []Drawn // what stands for it in the drawing of the circuit

	build func(b *builder, i int, p *Part, k *Kind, u *built)
}

// Passage is what a part does to the current between its ends.
type Passage int

// Passages, from the least to the most. A kind must name one.
const (
	blocks  Passage = iota + 1 // a way through would be a fault: a load, a winding, a gap
	Through                    // lets current through, with work or heat of its own
	Joins                      // as good as a wire while it is closed
	Leads                      // a wire
)

// Proof is what a decision to replace a part must stand on besides the fault that shows at the part itself.
type Proof int

// Proofs. A kind must name one.
const (
	provedBySelf   Proof = iota + 1 // nothing more
	ProvedBySupply                  // its supply was present across its ports
	ProvedByInputs                  // all inputs present, the output missing at its terminal, and what hangs on it good
)

// Drawn is one element of the drawing, between two ports.
type Drawn struct {
	Symbol *Symbol
	Name   string // which side of the part it is: a term "drawing.NAME" of the language, empty for the part itself
	A, B   string
	Loose  bool // drawn even where its ports join no net
}

// Port is where a net joins a part.
type Port struct {
	Name     string
	Optional bool
}

// Param is a number of a part. Dim is what its unit must measure; Default stands in, in Unit, when Optional.
type Param struct {
	Name     string
	Dim      unit.Dim
	Optional bool
	Unit     string
	Default  float64
	Usual    func(nominal float64) (low, high float64) // of a mode: how it is spread where the file does not say, as ratios; nil: it is not
}

// Slot is a named expression.
type Slot struct{ Name, Doc string }

// Word is a word a kind needs, with the words it may be.
type Word struct {
	Name   string
	Values []string // the first is the default
}

// Prop is what can be asked of a part.
type Prop struct {
	Name, Doc string
	Spread    string // the parameter whose tolerance an instrument sees when it reads this
	calc      func(q *ask) int32
	given     func(u *built) bool // nil: every part of the kind has it
}

// Effect is what a mode does to a part of the kind.
type Effect struct {
	Name   string
	Params []Param // numbers of the mode
	To     bool    // names another net
	At     string  // what "at" names: "output", "input", "conductor", "port"; empty: nothing
	Doc    string
	do     func(c *change)
}

// kinds is in the order of the names; every kind puts itself in.
var kinds []*Kind

// register is called by the file of a kind. A second kind of one name is a mistake of the program.
func register(k *Kind) *Kind {
	i, dup := slices.BinarySearchFunc(kinds, k.Name, func(k *Kind, name string) int { return strings.Compare(k.Name, name) })
	if dup {
		panic("appliance: two kinds are called " + k.Name)
	}
	kinds = slices.Insert(kinds, i, k)
	return k
}

// Kinds returns the library in the order of the names.
func Kinds() []*Kind { return kinds }

// KindOf returns the kind with this name, or nil.
func KindOf(name string) *Kind {
	for _, k := range kinds {
		if k.Name == name {
			return k
		}
	}
	return nil
}

// KindsAsked are the names of the kinds that have a property.
func KindsAsked(prop string) []string {
	var out []string
	for _, k := range kinds {
		if k.Prop(prop) != nil {
			out = append(out, k.Name)
		}
	}
	return out
}

// ReturnNet is the net that volts are counted from where the file names no earth: the return of its first supply.
func (m *Model) ReturnNet() string {
	for i := range m.Parts {
		if k := KindOf(m.Parts[i].Kind); k != nil && k.Return != "" && m.Parts[i].Ports[k.Return] != "" {
			return m.Parts[i].Ports[k.Return]
		}
	}
	return ""
}

// Effect returns the effect with this name, or nil.
func (k *Kind) Effect(name string) *Effect {
	for i := range k.Effects {
		if k.Effects[i].Name == name {
			return &k.Effects[i]
		}
	}
	return nil
}

// Param returns the parameter with this name, or nil.
func (k *Kind) Param(name string) *Param {
	for i := range k.Params {
		if k.Params[i].Name == name {
			return &k.Params[i]
		}
	}
	return nil
}

// Prop returns the property with this name, or nil.
func (k *Kind) Prop(name string) *Prop {
	for i := range k.Props {
		if k.Props[i].Name == name {
			return &k.Props[i]
		}
	}
	return nil
}

// Resistances of the network, ohm. A closed contact with its two crimps, an open gap, and a lead lying on metal are
// common practice, no source; only their ratios matter.
const (
	closedOhms = 0.02
	openOhms   = 1e9
	shortOhms  = 0.05
	meterOhms  = 10e6 // input of a handheld digital meter on volts
	leakOhms   = 1e10 // from every net to earth: nothing floats for ever
	liftOhms   = 1e-3
	leastOhms  = 1e-3
)

func ohmsParam(name string, def float64) Param {
	return Param{Name: name, Dim: unit.Resistance, Optional: true, Unit: "ohm", Default: def}
}
