package job_test

import (
	"sync"
	"testing"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/flows/lexicon"
	"readback/flows/prompts"
)

func q(n float64, u string) measure.Quantity {
	return measure.Quantity{Nominal: n, Unit: u, Source: "common practice, no source"}
}

func between(lo, hi float64, u string) *measure.Limit {
	return &measure.Limit{Low: &lo, High: &hi, Unit: u, Source: "common practice, no source"}
}

func options(ids ...string) []appliance.Option {
	var out []appliance.Option
	for _, id := range ids {
		out = append(out, appliance.Option{ID: id, Stop: -1})
	}
	return out
}

// small is an appliance with one of everything that the machine has to handle.
func small() *appliance.Model {
	m := &appliance.Model{
		ID: "small", Title: "small gas furnace", Fuel: "gas", Mains: true,
		Places: []appliance.Place{
			{ID: "room", Name: "room", Within: -1},
			{ID: "lower", Name: "lower panel", Where: "front, below", Within: 0, Cover: true, Trips: []int{1}, HandsIn: true, Hazards: []string{"mains", "moving"}},
			{ID: "burner", Name: "burner cover", Where: "behind the lower panel", Within: 1, Cover: true, Hazards: []string{"hot"}},
		},
		Parts: []appliance.Part{
			{ID: "thermostat", Kind: "contact", Name: "thermostat", Place: 0, Stop: -1, Ports: map[string]string{"a": "R", "b": "W"}, Modes: []int{0}},
			{ID: "door-switch", Kind: "contact", Name: "door switch", Place: 1, Stop: -1},
			{ID: "igniter", Kind: "igniter", Name: "igniter", Place: 2, Look: "small grey plate, two white wires", Stop: -1, Ports: map[string]string{"a": "IGN", "b": "N"}},
			{ID: "pressure-switch", Kind: "contact", Name: "pressure switch", Place: 1, Safety: true, Stop: -1, Ports: map[string]string{"a": "PS1", "b": "PS2"}},
			{ID: "valve", Kind: "coil", Name: "gas valve", Place: 1, Stop: 0},
			{ID: "flame-rod", Kind: "sensor", Name: "flame rod", Place: 2, Stop: -1},
			{ID: "board", Kind: "board", Name: "board", Place: 1, Stop: -1, Inputs: []appliance.Input{{ID: "W", Net: "W", To: "C"}}},
		},
		Modes: []appliance.Mode{{Part: 0, ID: "cool", Full: "thermostat.cool", Name: "thermostat set to cool", Wrong: true}},
		Controls: []appliance.Control{{ID: "heat", Part: 6, Steps: []appliance.Step{
			{ID: "standby", Needs: &appliance.Expr{Op: ">", Args: []*appliance.Expr{{Op: "name", Name: "board.W"}, {Op: "num", Num: 0.5}}}}}}},
		Points: []appliance.Point{
			{ID: "l", Net: "L", Place: 1, Name: "line screw"},
			{ID: "n", Net: "N", Place: 1, Name: "neutral screw"},
			{ID: "g", Net: "G", Place: 1, Name: "bare metal"},
			{ID: "ign", Net: "igniter.a", Place: 1, Name: "igniter plug left"},
			{ID: "ign2", Net: "igniter.b", Place: 1, Name: "igniter plug right"},
			{ID: "r", Net: "R", Place: 1, Name: "terminal R"},
			{ID: "w", Net: "W", Place: 1, Name: "terminal W"},
			{ID: "c", Net: "C", Place: 1, Name: "terminal C"},
			{ID: "fs", Net: "FS", Place: 1, Name: "flame lead"},
		},
		Dead: []int{0, 1, 2},
		Stops: []appliance.StopLine{
			{ID: "gas-train", Say: "gas parts are for licensed people.", Call: "Call a licensed gas fitter.", Tell: "The gas valve was suspected.", Now: "Leave the power off."},
		},
		Plate: []appliance.PlateField{
			{ID: "input", Name: "input", Unit: "Btu/h", Ask: "Input on the plate?"},
			{ID: "model", Name: "model number", Ask: "Model number on the plate?", Match: true},
		},
	}
	look := func(c appliance.Check) appliance.Check {
		c.Function, c.Red, c.Black, c.Instead = measure.Look, -1, -1, -1
		if c.Power == "" {
			c.Power = "any"
		}
		if c.Call == "" {
			c.Call = "any"
		}
		c.Name = c.ID
		return c
	}
	gas := options("none", "some")
	gas[1].Emergency = "gas"
	co := options("quiet", "sounding")
	co[1].Emergency = "co"
	soot := options("no-soot", "sooty")
	soot[1].Stop = 0
	glow := options("glowing", "weak-glow", "no-glow")
	glow[0].Seen, glow[1].Seen, glow[2].Seen = []string{"glow", "flame"}, []string{"glow"}, []string{"dark"}
	m.Checks = []appliance.Check{
		look(appliance.Check{ID: "smell", Stage: "safety", Part: -1, Ask: "Odour of fuel, or none?", Options: gas}),
		look(appliance.Check{ID: "alarm", Stage: "safety", Part: -1, Ask: "Alarms: quiet, or sounding?", Options: co}),
		look(appliance.Check{ID: "lamp", Stage: "light", Part: -1, Power: "on", Ask: "Board lamp: lit, dark, or blinks?", Options: options("lit", "dark", "3")}),
		look(appliance.Check{ID: "mode", Stage: "free", Part: 0, Ask: "Thermostat: heat or cool?", Options: options("heat", "cool")}),
		look(appliance.Check{ID: "soot", Stage: "free", Part: -1, Ask: "Front: no soot, or sooty?", Options: soot}),
		look(appliance.Check{ID: "glow", Stage: "watch", Part: 2, Power: "on", Call: "on", At: "warm-up", Ask: "Igniter: glowing or no glow?", Options: glow}),
		{ID: "ign-volts", Stage: "plan", Name: "igniter volts", Function: measure.VoltsAC, Red: 3, Black: 4, Part: -1, Unit: "V", Power: "on", Call: "on", Window: true, Places: []int{1}, Hazard: "mains", Instead: 8, Limit: between(105, 130, "V")},
		{ID: "call-volts", Stage: "plan", Name: "call at the board", Function: measure.VoltsAC, Red: 6, Black: 7, Part: 0, Unit: "V", Power: "on", Call: "on", Places: []int{1}, Hazard: "low", Instead: -1, Limit: between(21, 30, "V")},
		{ID: "ign-ohms", Stage: "plan", Name: "igniter ohms", Function: measure.Ohms, Red: 3, Black: 4, Part: 2, Unit: "ohm", Power: "off", Call: "any", Places: []int{1}, Lift: []int{3, 4}, Hazard: "none", Instead: -1, Limit: between(40, 90, "ohm")},
		{ID: "flame", Stage: "plan", Name: "flame current", Function: measure.MicroampsDC, Red: 8, Black: -1, Part: 5, Unit: "uA", Power: "on", Call: "on", Places: []int{1}, Lift: []int{8}, Hazard: "low", Instead: -1, Limit: between(1.5, 10, "uA")},
		look(appliance.Check{ID: "jump", Stage: "plan", Part: 0, Power: "on", Call: "any", Places: []int{1}, Jump: []int{5, 6}, Hazard: "low", Ask: "Does it start, or stay silent?", Options: options("running", "silent")}),
		look(appliance.Check{ID: "rod", Stage: "plan", Part: 5, Power: "off", Places: []int{2}, HandsIn: true, Ask: "Rod: clean or dirty?", Options: options("clean", "dirty")}),
		look(appliance.Check{ID: "touched", Stage: "cause", Part: -1, Ask: "Was it touched by hand?", Options: options("no", "yes")}),
		look(appliance.Check{ID: "flame-look", Stage: "restart", Part: -1, Power: "on", Call: "on", Ask: "Flame: blue or yellow?", Options: options("blue-flame", "yellow-flame")}),
	}
	m.Repairs = []appliance.Repair{
		{ID: "set-heat", Name: "set the thermostat to heat", Part: 0, Kind: "set", Stop: -1, Confirm: 3, Steps: []appliance.SwapStep{{Act: "Set the thermostat to heat.", Wire: -1, Power: "any"}}},
		{ID: "new-igniter", Name: "replace the igniter", Part: 2, Kind: "replace", Stop: -1, Confirm: 8, Price: measure.Quantity{Nominal: 50, Low: 25, High: 90, Unit: "money"}, Minutes: q(30, "min"),
			Match: []string{"ohms class", "plug"}, Causes: []int{12}, Steps: []appliance.SwapStep{
				{Act: "Pull the igniter plug apart.", Wire: 3, Power: "off", Places: []int{1}},
				{Act: "Screw the new igniter in.", Caution: "do not touch the grey part.", Level: "caution", Wire: -1, Power: "off", Places: []int{2}},
			}},
		{ID: "clean-rod", Name: "clean the flame rod", Part: 5, Kind: "clean", Stop: -1, Confirm: 11, Steps: []appliance.SwapStep{{Act: "Rub the rod clean.", Wire: -1, Power: "off", Places: []int{2}}}},
		{ID: "valve", Name: "replace the gas valve", Part: 4, Kind: "replace", Stop: 0, Confirm: -1},
	}
	return m
}

// smallModel is immutable; every test may share it.
var smallModel = small()

var loadLexicon, loadWords = sync.OnceValues(lexicon.Load), sync.OnceValues(prompts.Load)

func language(t testing.TB) (*utterance.Lexicon, *job.Words) {
	t.Helper()
	lex, err := loadLexicon()
	if err != nil {
		t.Fatal(err)
	}
	w, err := loadWords()
	if err != nil {
		t.Fatal(err)
	}
	return lex, w
}

func newMachine(t testing.TB) *job.Machine {
	t.Helper()
	lex, w := language(t)
	m, err := job.New(smallModel, job.InOrder{Model: smallModel, Meter: measure.Modest()}, *lex, w, job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func choice(id string) *utterance.Utterance {
	return &utterance.Utterance{Text: id, Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Choice, ID: id}}}
}

func command(id string) *utterance.Utterance {
	return &utterance.Utterance{Text: id, Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Command, ID: id}}}
}

func emergency(id string) *utterance.Utterance {
	return &utterance.Utterance{Text: id, Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Emergency, ID: id}}}
}

func reading(digits, u string) *utterance.Utterance {
	r := measure.Reading{Value: unit.Of(digits, u)}
	return &utterance.Utterance{Text: digits + " " + u, Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Reading, Reading: &r}}}
}

func words2(text string) *utterance.Utterance {
	return &utterance.Utterance{Text: text, Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Text, Text: text}}}
}
