package flows_test

import (
	"math"
	"os"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/flows"
)

// A heater as it stood in a published case: its own pile, valve and thermostat instead of those of the file.
type millivoltCase struct {
	name      string
	pile      float64            // mV, open
	ohms      map[string]float64 // of parts, ohm
	opens     float64            // mV at which its valve opens
	mode      string
	modeOhms  float64
	positions []float64 // mV: pile, valve coil, thermostat with wire, thermostat, limit
	valve     bool      // opens
}

// The two cases are from the gas technician training text, unit 12, chapter 5. The text gives millivolts; a loop current of
// 50 mA is chosen here, which only scales the resistances.
var millivoltCases = []millivoltCase{
	{"M1 bad splice", 500, map[string]float64{"thermopile": 4.62, "pile-lead": 0.001, "main-valve": 1.54, "thermostat": 0.6, "splice": 0.2, "stat-wire": 0.2, "limit": 0.04},
		75, "splice.bad", 2.8, []float64{269, 77, 190, 30, 2}, true},
	{"M2 limit with resistance", 500, map[string]float64{"thermopile": 4.8, "pile-lead": 0.001, "main-valve": 1.5, "thermostat": 1.4, "splice": 0.4, "stat-wire": 0.4, "limit": 0.06},
		80, "limit.resistive", 1.44, []float64{260, 75, 110, 70, 75}, false},
}

var positionChecks = []string{"pile-closed", "valve-mv", "stat-and-wire", "stat-alone", "limit-mv"}

func (c *millivoltCase) model(t *testing.T) *appliance.Model {
	t.Helper()
	m, err := flows.Load(os.DirFS("data"), "millivolt.hcl")
	if err != nil {
		t.Fatal(err)
	}
	set := func(q measure.Quantity, x float64) measure.Quantity {
		half := 0.05 * x
		return measure.Quantity{Nominal: x, Low: x - half, High: x + half, Unit: q.Unit, Source: "plate"}
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		if x, ok := c.ohms[p.ID]; ok {
			p.Params["ohms"] = set(measure.Quantity{Unit: "ohm"}, x)
		}
		switch p.ID {
		case "thermopile":
			p.Params["millivolts"] = set(p.Params["millivolts"], c.pile)
		case "main-valve":
			p.Params["works"] = set(measure.Quantity{Unit: "mV"}, c.opens)
		}
	}
	for i := range m.Modes {
		if m.Modes[i].Full == c.mode {
			m.Modes[i].Params["ohms"] = measure.Quantity{Nominal: c.modeOhms, Unit: "ohm"}
		}
	}
	return m
}

func checkIndex(t *testing.T, m *appliance.Model, id string) int {
	t.Helper()
	for i := range m.Checks {
		if m.Checks[i].ID == id {
			return i
		}
	}
	t.Fatalf("no check %s", id)
	return -1
}

func modeIndex(t *testing.T, m *appliance.Model, full string) int {
	t.Helper()
	for i := range m.Modes {
		if m.Modes[i].Full == full {
			return i
		}
	}
	t.Fatalf("no mode %s", full)
	return -1
}

// TestMillivoltBudget: the engine gives the five readings of both cases, they close round the loop, and of all single faults
// the true one fits them best. Blaming the thermostat because a bridge across it opens the valve is the trap of the second.
func TestMillivoltBudget(t *testing.T) {
	for _, c := range millivoltCases {
		t.Run(c.name, func(t *testing.T) {
			m := c.model(t)
			e, err := appliance.Compile(m)
			if err != nil {
				t.Fatal(err)
			}
			mode := modeIndex(t, m, c.mode)
			sum := 0.0
			for i, id := range positionChecks {
				o := e.Predict([]int{mode}, checkIndex(t, m, id))
				if math.Abs(o.Value-c.positions[i]) > 1.5 {
					t.Errorf("position %d: %.1f mV, the case has %g", i+1, o.Value, c.positions[i])
				}
				switch i {
				case 0:
					sum = o.Value
				case 1, 2, 4:
					sum -= o.Value
				}
			}
			if math.Abs(sum) > 15 {
				t.Errorf("the loop does not close: %.1f mV are left", sum)
			}
			p := e.Plant([]int{mode})
			p.Advance(400)
			if v, _ := p.Value("main-valve.works"); (v > 0.5) != c.valve {
				t.Errorf("main valve works: %g", v)
			}
			best, cost := -1, math.Inf(1)
			for i := range m.Modes {
				d := 0.0
				for k, id := range positionChecks {
					o := e.Predict([]int{i}, checkIndex(t, m, id))
					u := measure.Combine(measure.Rectangular(o.Half), 2)
					d += math.Pow((o.Value-c.positions[k])/u, 2)
				}
				if d < cost {
					best, cost = i, d
				}
			}
			if m.Modes[best].Full != c.mode {
				t.Errorf("%s fits the readings best", m.Modes[best].Full)
			}
			bridged := e.Predict([]int{mode}, checkIndex(t, m, "valve-bridged"))
			if bridged.Value < c.opens {
				t.Errorf("with the thermostat bridged the valve has %.0f mV and stays shut", bridged.Value)
			}
		})
	}
}

// TestThermocouple: an e.m.f. that has fallen and a resistance that has risen are told apart by open and closed millivolts.
func TestThermocouple(t *testing.T) {
	m, err := flows.Load(os.DirFS("data"), "millivolt.hcl")
	if err != nil {
		t.Fatal(err)
	}
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	open, closed := checkIndex(t, m, "couple-open"), checkIndex(t, m, "couple-closed")
	for _, tt := range []struct {
		mode       string
		openLow    float64
		openHigh   float64
		closedLow  float64
		closedHigh float64
	}{
		{"", 25, 30, 10, 15},
		{"thermocouple.weak", 0, 10, 0, 4.5},
		{"thermocouple.resistive", 25, 30, 0, 4.5},
		{"tc-nut.dirty", 25, 30, 0, 4.5},
		{"hold-coil.open", 25, 30, 25, 30},
		{"tc-place.bent", 5, 10, 0, 5},
	} {
		var modes []int
		if tt.mode != "" {
			modes = []int{modeIndex(t, m, tt.mode)}
		}
		o, c := e.Predict(modes, open).Value, e.Predict(modes, closed).Value
		if o < tt.openLow || o > tt.openHigh || c < tt.closedLow || c > tt.closedHigh {
			t.Errorf("%q: %.1f mV open, %.1f mV closed", tt.mode, o, c)
		}
	}
}
