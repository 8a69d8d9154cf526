// Package measure turns a meter reading into a verdict: meter functions and ranges, accuracy,
// display states, limits, guarded acceptance and the ways a reading goes wrong.
package measure

import "readback/core/unit"

// Function is a position of the meter's dial, or another instrument or sense.
type Function string

const (
	VoltsAC     Function = "volts-ac"
	VoltsDC     Function = "volts-dc"
	Ohms        Function = "ohms"
	Continuity  Function = "continuity"
	Capacitance Function = "capacitance"
	AmpsAC      Function = "amps-ac" // clamp
	MicroampsDC Function = "microamps-dc"
	MillivoltDC Function = "millivolts-dc"
	Manometer   Function = "manometer"
	Thermometer Function = "thermometer"
	COMeter     Function = "co-meter" // carbon monoxide in air; a gas sniffer is another instrument
	Look        Function = "look"     // eyes, ears, hand: no instrument
)

// Dial is what a function is: what it shows and what it asks of the circuit.
type Dial struct {
	ID      Function
	Dim     unit.Dim // dimension of what it shows, "" when it is told by the check's unit, or nothing is shown
	Drives  bool     // the meter drives a current through the part: only where there is no voltage
	Own     bool     // an instrument of its own: the leads of the meter are not used
	Current bool     // the red lead is in the current jack
}

// Functions lists every position of the dial and every instrument in a fixed order.
var Functions = []Dial{
	{ID: VoltsAC, Dim: unit.Voltage},
	{ID: VoltsDC, Dim: unit.Voltage},
	{ID: Ohms, Dim: unit.Resistance, Drives: true},
	{ID: Continuity, Drives: true},
	{ID: Capacitance, Dim: unit.Capacitance, Drives: true},
	{ID: AmpsAC, Dim: unit.Current, Own: true}, // clamp
	{ID: MicroampsDC, Dim: unit.Current, Current: true},
	{ID: MillivoltDC, Dim: unit.Voltage},
	{ID: Manometer, Dim: unit.Pressure, Own: true},
	{ID: Thermometer, Own: true},
	{ID: COMeter, Dim: unit.Fraction, Own: true},
	{ID: Look, Own: true},
}

// Dial gives what a function is; the zero value where it is none.
func (f Function) Dial() Dial {
	for _, d := range Functions {
		if d.ID == f {
			return d
		}
	}
	return Dial{}
}

// Volts tells whether a function shows a voltage.
func (f Function) Volts() bool { return f.Dial().Dim == unit.Voltage }

// State is what a display shows when it is not a plain number.
type State string

const (
	Number  State = ""        // an ordinary number
	Over    State = "over"    // over-range: OL, 1, over limit
	Beep    State = "beep"    // continuity sounds
	Silent  State = "silent"  // continuity does not sound
	Blank   State = "blank"   // nothing on the display
	Jumping State = "jumping" // does not settle; Low and High hold the range when given
	Dead    State = "dead"    // said "dead", no number given: never enough to clear a hazard
)

// Reading is a value with how it was obtained.
type Reading struct {
	Value unit.Value  `json:"value,omitzero"` // Unit "" when no unit was said
	State State       `json:"state,omitempty"`
	AC    string      `json:"ac,omitempty"`   // "ac", "dc" or "" when not said
	Low   *unit.Value `json:"low,omitempty"`  // Jumping: lowest seen
	High  *unit.Value `json:"high,omitempty"` // Jumping: highest seen
}

// Verdict is the outcome of judging a reading against a limit: the four words of guarded
// acceptance (ILAC-G8:09/2019), or Invalid.
type Verdict string

const (
	Pass            Verdict = "pass"
	ConditionalPass Verdict = "conditional pass"
	ConditionalFail Verdict = "conditional fail"
	Fail            Verdict = "fail"
	Invalid         Verdict = "invalid"
)

// Quantity is a number of an equipment file: nominal value in its unit, tolerance half-width
// in the same unit, and where it comes from. Source is a source id, "common practice" or "from memory".
type Quantity struct {
	Nominal float64 `json:"nominal"`
	Low     float64 `json:"low,omitempty"` // lower end of the healthy spread, same unit; Low == High == 0 means unknown
	High    float64 `json:"high,omitempty"`
	Unit    string  `json:"unit"`
	Source  string  `json:"source"`
}

// Limit is what is acceptable at a test point. A nil end is open.
type Limit struct {
	Low    *float64 `json:"low,omitempty"`  // in Unit
	High   *float64 `json:"high,omitempty"` // in Unit
	Unit   string   `json:"unit"`
	Source string   `json:"source"`
}
