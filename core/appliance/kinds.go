package appliance

import "readback/core/unit"

// Kind is what all parts of one sort have in common. None of them is a furnace: another appliance is another file.
type Kind struct {
	Name    string
	Doc     string
	Ports   []Port
	Params  []Param
	Exprs   []Slot
	Words   []Word
	Effects []Effect
	Props   []Slot // what an expression can ask of such a part, besides its parameters and "ok"
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
}

// Slot is a named expression or property.
type Slot struct{ Name, Doc string }

// Word is a word a kind needs, with the words it may be.
type Word struct {
	Name   string
	Values []string // the first is the default
}

// Effect is what a mode does to a part of the kind.
type Effect struct {
	Name   string
	Params []Param // numbers of the mode
	To     bool    // names another net
	At     string  // what "at" names: "output", "input", "conductor", "port"; empty: nothing
	Doc    string
}

// Kinds returns the library in a fixed order.
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

var (
	// Effects of anything with two ends.
	effOpen   = Effect{Name: "open", Doc: "no path"}
	effShort  = Effect{Name: "short", Params: []Param{{Name: "ohms", Dim: unit.Resistance, Optional: true, Unit: "ohm", Default: shortOhms}}, Doc: "joined end to end, past its own resistance"}
	effResist = Effect{Name: "resist", Params: []Param{{Name: "ohms", Dim: unit.Resistance, Unit: "ohm"}}, Doc: "so many ohms more in series"}
	effTouch  = Effect{Name: "touch", To: true, At: "port", Params: []Param{{Name: "ohms", Dim: unit.Resistance, Optional: true, Unit: "ohm", Default: shortOhms}}, Doc: "one end touches another net; \"at\" names the port, the first one when left out"}
	effSet    = Effect{Name: "set", Doc: "takes other values for parameters of the part: a wrong part, a wrong setting, an aged one"}
	effFactor = Effect{Name: "factor", Params: []Param{{Name: "factor", Dim: unit.Count, Unit: "x"}}, Doc: "does so much of what it should"}
	effOff    = Effect{Name: "off", Doc: "does nothing"}
	effStuckO = Effect{Name: "stuck-open", Doc: "never closes"}
	effStuckC = Effect{Name: "stuck-closed", Doc: "never opens"}

	twoEnds = []Port{{Name: "a"}, {Name: "b"}}
)

func ohmsParam(name string, def float64) Param {
	return Param{Name: name, Dim: unit.Resistance, Optional: true, Unit: "ohm", Default: def}
}

var kinds = []*Kind{
	{
		Name: "supply", Doc: "a source of a.c. with its own resistance: what arrives at the breaker",
		Ports:  []Port{{Name: "l"}, {Name: "n"}},
		Params: []Param{{Name: "volts", Dim: unit.Voltage, Unit: "V"}, {Name: "ohms", Dim: unit.Resistance, Unit: "ohm"}},
		Effects: []Effect{effOff, effSet, effFactor,
			{Name: "resist", Params: effResist.Params, Doc: "so many ohms more in series: sags under load"}},
		Props: []Slot{{"volts_now", "volts between its ends"}, {"amps", "amperes drawn"}},
	},
	{
		Name: "wire", Doc: "a conductor, splice, terminal or connector pin between two nets",
		Ports: twoEnds, Params: []Param{ohmsParam("ohms", closedOhms)},
		Effects: []Effect{effOpen, effResist, effTouch, effSet},
		Props:   []Slot{{"amps", "amperes through it"}},
	},
	{
		Name: "pair", Doc: "two conductors that run together and can be swapped: in1 to out1, in2 to out2",
		Ports:  []Port{{Name: "in1"}, {Name: "out1"}, {Name: "in2"}, {Name: "out2"}},
		Params: []Param{ohmsParam("ohms", closedOhms)},
		Effects: []Effect{{Name: "open", At: "conductor", Doc: "conductor \"1\" or \"2\" has no path"},
			{Name: "resist", At: "conductor", Params: effResist.Params, Doc: "so many ohms more in conductor \"1\" or \"2\""},
			{Name: "short", Params: effShort.Params, Doc: "the two touch each other at the far end"},
			{Name: "swap", Doc: "the two are changed over"}},
		Props: []Slot{{"amps", "amperes through conductor 1"}},
	},
	{
		Name: "fuse", Doc: "opens for good when its current exceeds the rating; also a breaker",
		Ports: twoEnds, Params: []Param{{Name: "rating", Dim: unit.Current, Unit: "A"}, ohmsParam("ohms", closedOhms)},
		Effects: []Effect{effOpen, effResist, {Name: "short", Params: effShort.Params, Doc: "bridged"}, effSet},
		Props:   []Slot{{"blown", "1 when open"}, {"amps", "amperes through it"}},
	},
	{
		Name: "switch", Doc: "worked by hand, or pressed by a cover that trips it; closed when healthy unless \"closes\" says otherwise",
		Ports: twoEnds, Params: []Param{ohmsParam("ohms", closedOhms)},
		Exprs:   []Slot{{"closes", "closed while true"}},
		Effects: []Effect{effOff, effStuckO, effStuckC, effResist},
		Props:   []Slot{{"closed", "1 when closed"}, {"amps", "amperes through it"}},
	},
	{
		Name: "contact", Doc: "opened and closed by something sensed: a limit, a pressure switch, a thermostat",
		Ports: twoEnds,
		Params: []Param{{Name: "set", Dim: "", Optional: true}, {Name: "opens_at", Dim: "", Optional: true},
			ohmsParam("ohms", closedOhms)},
		Exprs:   []Slot{{"closes", "closed while true; left out: closed"}, {"trips", "opens when true and stays open"}},
		Words:   []Word{{"reset", []string{"auto", "manual"}}},
		Effects: []Effect{effStuckO, effStuckC, effResist, effSet, effTouch},
		Props:   []Slot{{"closed", "1 when closed"}, {"tripped", "1 when it has tripped"}, {"amps", "amperes through it"}},
	},
	{
		Name: "relay", Doc: "a coil that pulls a contact; nc is closed while it rests",
		Ports: []Port{{Name: "coil1"}, {Name: "coil2"}, {Name: "com"}, {Name: "no", Optional: true}, {Name: "nc", Optional: true}},
		Params: []Param{{Name: "ohms", Dim: unit.Resistance, Unit: "ohm"}, {Name: "pulls", Dim: unit.Voltage, Unit: "V"},
			ohmsParam("contact_ohms", closedOhms)},
		Words: []Word{{"current", []string{"ac", "dc"}}},
		Effects: []Effect{{Name: "open", Doc: "coil has no path"}, {Name: "short", Params: effShort.Params, Doc: "coil shorted"},
			effStuckO, effStuckC, {Name: "resist", Params: effResist.Params, Doc: "so many ohms more in the contact"}, effSet},
		Props: []Slot{{"pulled", "1 when the coil pulls"}, {"closed", "1 when the working contact is closed"}, {"volts_now", "volts across the coil"}},
	},
	{
		Name: "transformer", Doc: "ideal ratio with the resistance of its windings; the hidden link opens for good when overloaded",
		Ports: []Port{{Name: "p1"}, {Name: "p2"}, {Name: "s1"}, {Name: "s2"}},
		Params: []Param{{Name: "primary", Dim: unit.Voltage, Unit: "V"}, {Name: "secondary", Dim: unit.Voltage, Unit: "V"},
			{Name: "loaded", Dim: unit.Voltage, Optional: true, Unit: "V"}, {Name: "rating", Dim: unit.Power, Unit: "W"},
			ohmsParam("primary_ohms", 20), ohmsParam("secondary_ohms", 0.7),
			{Name: "link", Dim: unit.Current, Optional: true, Unit: "A"}},
		Effects: []Effect{{Name: "open-primary", Doc: "primary winding or its hidden link open"}, {Name: "open-secondary", Doc: "secondary winding open"},
			{Name: "short", Params: effShort.Params, Doc: "secondary shorted inside"}, effSet,
			{Name: "resist", Params: effResist.Params, Doc: "so many ohms more in the secondary"}},
		Props: []Slot{{"volts_now", "volts of the secondary"}, {"amps", "amperes of the secondary"}, {"link_open", "1 when the hidden link is open"}},
	},
	{
		Name: "load", Doc: "takes current and does something: a motor, a coil, an igniter, a lamp",
		Ports: []Port{{Name: "a"}, {Name: "b"}},
		Params: []Param{{Name: "ohms", Dim: unit.Resistance, Unit: "ohm"},
			{Name: "cold", Dim: unit.Resistance, Optional: true, Unit: "ohm"},
			{Name: "works", Dim: unit.Voltage, Unit: "V"},
			{Name: "rated", Dim: unit.Voltage, Optional: true, Unit: "V"}},
		Exprs: []Slot{{"needs", "besides its voltage, what it needs to work"}},
		Words: []Word{{"current", []string{"ac", "dc"}}, {"motor", []string{"no", "yes"}}},
		Effects: []Effect{effOpen, effShort, effResist, effTouch, effSet,
			{Name: "stuck", Doc: "takes current and does nothing: a seized motor, a jammed valve"},
			{Name: "weak", Params: effFactor.Params, Doc: "does so much of its work"},
			{Name: "open-hot", Doc: "opens once it has worked: reads good when cold"},
			{Name: "always", Doc: "does its work without voltage: a valve that does not shut"}},
		Props: []Slot{{"works", "how much of its work it does, 0 to 1"}, {"hums", "1 when there is enough voltage and no work"},
			{"volts_now", "volts across it"}, {"amps", "amperes through it"}, {"powered", "1 when there is enough voltage"}},
	},
	{
		Name: "capacitor", Doc: "measured by itself with its wires off; the load it serves asks for its health",
		Ports:   []Port{{Name: "a", Optional: true}, {Name: "b", Optional: true}},
		Params:  []Param{{Name: "value", Dim: unit.Capacitance, Unit: "uF"}},
		Effects: []Effect{effOpen, effShort, {Name: "weak", Params: effFactor.Params, Doc: "so much of its value is left"}, effSet},
		Props:   []Slot{{"healthy", "share of its value that is left; 0 when open or shorted"}, {"microfarads_now", "microfarads that are left"}},
	},
	{
		Name: "rod", Doc: "a flame rod: passes a d.c. of microamps while flame joins it to the burner; \"source\" is the resistance of the a.c. that feeds it",
		Ports:  []Port{{Name: "rod"}, {Name: "burner"}},
		Params: []Param{{Name: "microamps", Dim: unit.Current, Unit: "uA"}, ohmsParam("flame_ohms", 5e6), ohmsParam("source", 0.35e6)},
		Exprs:  []Slot{{"flame", "how much flame is on it, 0 to 1"}},
		Effects: []Effect{effOpen, {Name: "short", Params: effShort.Params, Doc: "touches the burner"}, effSet,
			{Name: "dirty", Params: effFactor.Params, Doc: "so much of the current is left"},
			{Name: "leak", Params: []Param{{Name: "ohms", Dim: unit.Resistance, Unit: "ohm"}}, Doc: "so many ohms over cracked porcelain to the burner"}},
		Props: []Slot{{"microamps_now", "microamperes through it"}},
	},
	{
		Name: "emf", Doc: "makes a d.c. from heat: a thermocouple or thermopile",
		Ports:  twoEnds,
		Params: []Param{{Name: "millivolts", Dim: unit.Voltage, Unit: "mV"}, {Name: "ohms", Dim: unit.Resistance, Unit: "ohm"}},
		Exprs:  []Slot{{"heat", "how hot, 0 to 1"}},
		Effects: []Effect{effOpen, effShort, effResist, effSet,
			{Name: "weak", Params: effFactor.Params, Doc: "so much of its voltage is left"}},
		Props: []Slot{{"millivolts_now", "millivolts between its ends"}, {"amps", "amperes through it"}},
	},
	{
		Name: "passage", Doc: "lets air, gas, water or heat pass: 1 when clear",
		Params:  []Param{{Name: "clear", Dim: unit.Count, Optional: true, Unit: "x", Default: 1}},
		Exprs:   []Slot{{"when", "besides being clear, what must hold for anything to pass"}},
		Effects: []Effect{effFactor, effOff, effSet},
		Props:   []Slot{{"passes", "share that passes"}},
	},
	{
		Name: "board", Doc: "a control: outputs are contacts inside it, inputs are volts it senses",
		Ports: []Port{{Name: "r"}, {Name: "c"}, {Name: "fs", Optional: true}, {Name: "earth", Optional: true}},
		Params: []Param{{Name: "on", Dim: unit.Voltage, Unit: "V"}, {Name: "ohms", Dim: unit.Resistance, Unit: "ohm"},
			ohmsParam("sense_ohms", 0.35e6), {Name: "flame_at", Dim: unit.Current, Optional: true, Unit: "uA", Default: 0.5}},
		Exprs: []Slot{{"alive", "besides its voltage, what it needs to run"}, {"senses", "what it needs to see a flame, besides the current"}},
		Effects: []Effect{{Name: "dead", Doc: "does nothing at all"},
			{Name: "output-dead", At: "output", Doc: "an output never closes"}, {Name: "output-welded", At: "output", Doc: "an output never opens"},
			{Name: "input-blind", At: "input", Doc: "an input is never seen"}, {Name: "input-stuck", At: "input", Doc: "an input is always seen"},
			{Name: "sense-dead", Doc: "sees no flame"}, {Name: "sense-stuck", Doc: "always sees a flame"}, effSet},
		Props: []Slot{{"alive", "1 when it runs"}, {"microamps_now", "flame current it receives"}, {"flame", "1 when it sees a flame"}},
	},
	{
		Name: "thing", Doc: "anything with a state of its own that is not electrical: a gas cock, a setting, a filter",
		Params:  []Param{{Name: "value", Dim: "", Optional: true, Unit: "x", Default: 1}},
		Exprs:   []Slot{{"is", "its value, besides what its modes do to it"}},
		Effects: []Effect{effFactor, effOff, effSet, {Name: "wrong", Doc: "only its mode is asked for"}},
		Props:   []Slot{{"value", "its value; 1 when healthy unless the file says otherwise"}},
	},
}
