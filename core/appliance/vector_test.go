package appliance_test

import (
	"math"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
)

func q(x float64, unit string) measure.Quantity {
	return measure.Quantity{Nominal: x, Low: x, High: x, Unit: unit, Source: "computed"}
}

func part(id, kind string, ports map[string]string, params map[string]measure.Quantity) appliance.Part {
	return appliance.Part{ID: id, Kind: kind, Name: id, Place: -1, Stop: -1, Ports: ports, Params: params,
		Exprs: map[string]*appliance.Expr{}, Words: map[string]string{}}
}

func supply(volts, ohms float64) appliance.Part {
	return part("line", "supply", map[string]string{"l": "L", "n": "N"}, map[string]measure.Quantity{"volts": q(volts, "V"), "ohms": q(ohms, "ohm")})
}

func load(id, a, b string, ohms float64) appliance.Part {
	return part(id, "load", map[string]string{"a": a, "b": b}, map[string]measure.Quantity{"ohms": q(ohms, "ohm"), "works": q(1, "V")})
}

func wire(id, a, b string, ohms float64) appliance.Part {
	return part(id, "wire", map[string]string{"a": a, "b": b}, map[string]measure.Quantity{"ohms": q(ohms, "ohm")})
}

func fuse(id, a, b string, amps float64) appliance.Part {
	return part(id, "fuse", map[string]string{"a": a, "b": b}, map[string]measure.Quantity{"rating": q(amps, "A")})
}

func plant(t *testing.T, parts ...appliance.Part) *appliance.Plant {
	t.Helper()
	e, err := appliance.Compile(&appliance.Model{ID: "x", Parts: parts})
	if err != nil {
		t.Fatal(err)
	}
	return e.Plant(nil)
}

// TestCircuitVectors: published figures of ohm's law, transformers and wires (gas technician training text, unit 12; copper
// 1.7241e-8 ohm metre with the AWG rule; the rest by hand).
func TestCircuitVectors(t *testing.T) {
	const tiny = 0.001 // ohm of the source
	transformer := func(va, loaded float64) appliance.Part {
		p := part("tr", "transformer", map[string]string{"p1": "L", "p2": "N", "s1": "R", "s2": "C"}, map[string]measure.Quantity{
			"primary": q(120, "V"), "secondary": q(26.5, "V"), "loaded": q(loaded, "V"), "rating": q(va, "W")})
		return p
	}
	feet18 := func(feet float64) float64 { return 2 * feet * 0.006385 }
	feet14 := func(feet float64) float64 { return 2 * feet * 0.002525 }
	tests := []struct {
		name  string
		plant *appliance.Plant
		ask   string // a property, or "volts:A,B"
		want  float64
		tol   float64
	}{
		{"24 V coil of 48 ohm takes 0.50 A", plant(t, supply(24, tiny), load("coil", "L", "N", 48)), "coil.amps", 0.5, 0.001},
		{"24 V over 60 ohm is 0.40 A", plant(t, supply(24, tiny), load("coil", "L", "N", 60)), "coil.amps", 0.4, 0.001},
		{"24 V over 5 ohm is 4.8 A", plant(t, supply(24, tiny), load("coil", "L", "N", 5)), "coil.amps", 4.8, 0.01},
		{"and blows a fuse of 3 A", plant(t, supply(24, tiny), fuse("f", "L", "M", 3), load("coil", "M", "N", 5)), "f.blown", 1, 0},
		{"which 0.5 A does not", plant(t, supply(24, tiny), fuse("f", "L", "M", 3), load("coil", "M", "N", 48)), "f.blown", 0, 0},
		{"5 kW at 240 V takes 20.8 A", plant(t, supply(240, tiny), load("element", "L", "N", 11.52)), "element.amps", 20.83, 0.01},
		{"unloaded secondary", plant(t, supply(120, tiny), transformer(40, 24)), "volts:R,C", 26.5, 0.01},
		{"40 VA at its rated 1.67 A gives 24 V", plant(t, supply(120, tiny), transformer(40, 24), load("all", "R", "C", 24/(40.0/24))), "volts:R,C", 24, 0.01},
		{"and takes 1.67 A", plant(t, supply(120, tiny), transformer(40, 24), load("all", "R", "C", 14.4)), "all.amps", 1.667, 0.002},
		{"its primary takes 0.37 A by the ratio", plant(t, supply(120, tiny), transformer(40, 24), load("all", "R", "C", 14.4)), "line.amps", 1.667 * 26.5 / 120, 0.002},
		{"20 VA gives 0.83 A", plant(t, supply(120, tiny), transformer(20, 24), load("all", "R", "C", 28.8)), "all.amps", 0.833, 0.002},
		{"valve, relay and thermostat together 0.75 A", plant(t, supply(24, tiny), load("valve", "L", "N", 60), load("relay", "L", "N", 96), load("stat", "L", "N", 240)), "line.amps", 0.75, 0.001},
		{"50 ft of 18 AWG at 0.5 A drop 0.32 V", plant(t, supply(24, tiny), wire("run", "L", "M", feet18(50)), load("coil", "M", "N", 48-feet18(50))), "volts:L,M", 0.319, 0.002},
		{"60 ft of 14 AWG at 12 A drop 3.64 V", plant(t, supply(120, tiny), wire("run", "L", "M", feet14(60)), load("load", "M", "N", 10-feet14(60))), "volts:L,M", 3.636, 0.005},
		{"phasing, in phase 120 - 24", plant(t, supply(120, tiny), transformer(40, 24), wire("bond", "C", "N", tiny), load("all", "R", "C", 14.4)), "volts:L,R", 96, 0.05},
		{"phasing, out of phase 120 + 24", plant(t, supply(120, tiny), transformer(40, 24), wire("bond", "R", "N", tiny), load("all", "R", "C", 14.4)), "volts:L,C", 144, 0.05},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got float64
			if len(tt.ask) > 6 && tt.ask[:6] == "volts:" {
				o, err := tt.plant.Read(measure.VoltsAC, tt.ask[6:7], tt.ask[8:9])
				if err != nil {
					t.Fatal(err)
				}
				got = o.Value
			} else {
				v, ok := tt.plant.Value(tt.ask)
				if !ok {
					t.Fatalf("no %s", tt.ask)
				}
				got = v
			}
			if math.Abs(got-tt.want) > tt.tol {
				t.Errorf("got %.4f, want %.4f ± %g", got, tt.want, tt.tol)
			}
		})
	}
}

// TestTwoOpens: an open switch shows the full supply; two opens in one string show next to nothing each on a 10 Mohm meter.
func TestTwoOpens(t *testing.T) {
	m := &appliance.Model{ID: "x", Parts: []appliance.Part{supply(24, 1), wire("a", "L", "A", 0.02), wire("b", "A", "B", 0.02), load("coil", "B", "N", 60)}}
	for i := range 2 {
		m.Modes = append(m.Modes, appliance.Mode{Part: 1 + i, ID: "open", Full: m.Parts[1+i].ID + ".open", Does: "open", Repair: -1})
		m.Parts[1+i].Modes = []int{i}
	}
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name     string
		modes    []int
		low, top float64
	}{{"one open", []int{0}, 23.5, 24}, {"two opens", []int{0, 1}, 0, 2}} {
		o, err := e.Plant(tt.modes).Read(measure.VoltsAC, "L", "A")
		if err != nil || o.Value < tt.low || o.Value > tt.top {
			t.Errorf("%s: %.2f V across the first, want %g to %g; %v", tt.name, o.Value, tt.low, tt.top, err)
		}
	}
}
