package worksite_test

import (
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/worksite"
)

// little is an appliance with every kind of access: a cover that opens a door switch, one behind it, wires to lift, a
// window of seconds, a meter in line, a test jumper.
func little() *appliance.Model {
	return &appliance.Model{
		ID: "little", Fuel: "gas", Mains: true,
		Places: []appliance.Place{
			{ID: "room", Within: -1},
			{ID: "lower", Within: 0, Cover: true, Trips: []int{0}, HandsIn: true, Hazards: []string{"mains"}},
			{ID: "burner", Within: 1, Cover: true, Hazards: []string{"hot"}},
			{ID: "filter", Within: 0, Cover: true},
		},
		Parts: []appliance.Part{
			{ID: "door", Kind: "contact", Place: 1, Stop: -1},
			{ID: "limit", Kind: "contact", Name: "limit", Safety: true, Place: 1, Stop: -1, Ports: map[string]string{"a": "R", "b": "R2"}},
			{ID: "wire", Kind: "wire", Place: 1, Stop: -1, Ports: map[string]string{"a": "R2", "b": "R3"}},
		},
		Points: []appliance.Point{
			{ID: "l", Net: "L", Place: 1}, {ID: "n", Net: "N", Place: 1}, {ID: "g", Net: "G", Place: 1},
			{ID: "x", Net: "X", Place: 2}, {ID: "y", Net: "Y", Place: 2}, {ID: "r", Net: "R", Place: 1}, {ID: "w", Net: "W", Place: 1},
			{ID: "r3", Net: "R3", Place: 1},
		},
		Dead: []int{0, 1, 2},
		Checks: []appliance.Check{
			{ID: "story", Function: measure.Look, Power: "any", Call: "any", Red: -1, Black: -1},
			{ID: "volts", Function: measure.VoltsAC, Red: 0, Black: 1, Power: "on", Call: "on", Places: []int{1}, Hazard: "mains"},
			{ID: "window", Function: measure.VoltsAC, Red: 3, Black: 4, Power: "on", Call: "on", Window: true, Places: []int{1}, Hazard: "mains"},
			{ID: "ohms", Function: measure.Ohms, Red: 3, Black: 4, Power: "off", Call: "any", Places: []int{2}, Lift: []int{3, 4}},
			{ID: "flame", Function: measure.MicroampsDC, Red: 6, Black: -1, Power: "on", Call: "on", Places: []int{1}, Lift: []int{6}, HandsIn: true},
			{ID: "jump", Function: measure.Look, Power: "on", Call: "any", Places: []int{1}, Jump: []int{5, 6}, Red: -1, Black: -1},
			{ID: "hand", Function: measure.Look, Power: "off", Places: []int{1}, HandsIn: true, Red: -1, Black: -1},
			{ID: "filter", Function: measure.Look, Power: "off", Places: []int{3}, Red: -1, Black: -1},
			{ID: "lamp", Function: measure.Look, Power: "on", Call: "off", Red: -1, Black: -1},
		},
		Repairs: []appliance.Repair{{ID: "swap", Steps: []appliance.SwapStep{{Wire: 3, Power: "off", Places: []int{2}}, {Wire: -1, Power: "on"}}}},
	}
}

func rules(t testing.TB, m *appliance.Model) *worksite.Rules {
	t.Helper()
	r, err := worksite.New(m)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestProof(t *testing.T) {
	for _, tt := range []struct {
		name  string
		mains bool
	}{{"mains", true}, {"no mains", false}} {
		t.Run(tt.name, func(t *testing.T) {
			m := little()
			if m.Mains = tt.mains; !tt.mains {
				m.Dead = nil
			}
			r := rules(t, m)
			rep := r.Prove(r)
			for _, c := range rep.Broken {
				t.Error(c)
			}
			t.Logf("%d situations, %d steps, at most %d acts to leave", rep.States, rep.Steps, rep.Longest)
			if rep.States < 400 {
				t.Errorf("only %d situations: the walk is stuck", rep.States)
			}
		})
	}
}

func TestRefusals(t *testing.T) {
	for _, tt := range []struct {
		name string
		edit func(m *appliance.Model)
		want string
	}{
		{"ohms live", func(m *appliance.Model) { m.Checks[3].Power = "on" }, `check "ohms": ohms is never measured with power on`},
		{"hands in live", func(m *appliance.Model) { m.Checks[6].Power = "on" }, `check "hand": hands in with power on`},
		{"bridge", func(m *appliance.Model) { m.Checks[5].Jump = []int{5, 7} }, `check "jump": the test jumper would bridge the limit`},
		{"jumper of three", func(m *appliance.Model) { m.Checks[5].Jump = []int{5, 6, 7} }, `joins two points, not 3`},
		{"current off", func(m *appliance.Model) { m.Checks[4].Power = "off" }, `flame current is read with power on`},
		{"within itself", func(m *appliance.Model) { m.Places[1].Within = 2 }, `place "lower" is within itself`},
		{"dead nowhere", func(m *appliance.Model) { m.Dead = []int{0, 1, 99} }, `dead is proved at point 99`},
		{"lift nowhere", func(m *appliance.Model) { m.Checks[3].Lift = []int{99} }, `lifts point 99`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			m := little()
			tt.edit(m)
			if _, err := worksite.New(m); err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got %v, want %s", err, tt.want)
			}
		})
	}
}

// The interlock of acts is written apart from the way; both must agree in every situation.
func TestPermitsAgrees(t *testing.T) {
	r := rules(t, little())
	c := agreeing{r, t}
	r.Prove(c)
}

type agreeing struct {
	*worksite.Rules
	t *testing.T
}

func (a agreeing) Next(s worksite.State, n worksite.Need) (worksite.Act, bool) {
	act, ok := a.Rules.Next(s, n)
	if ok {
		if ok, why := a.Rules.Permits(s, act, n); !ok {
			a.t.Fatalf("%s in %+v towards %+v: %s", act.Kind, s, n, why)
		}
	}
	return act, ok
}

// Power never returns over a wire that was found in another place and of which nobody has said what it is: not in any state
// and on the way to nothing. What is found outlives doubt about the supply.
func TestUnlikeBarsPower(t *testing.T) {
	r := rules(t, little())
	open := 0
	for _, p := range []worksite.Power{worksite.Unknown, worksite.On, worksite.Off, worksite.Proved} {
		for _, covers := range []worksite.Set{{}, worksite.Set{}.With(1), worksite.Set{}.With(1).With(2)} {
			for c := range little().Checks {
				n := r.For(c)
				s := worksite.State{Power: p, Covers: covers}
				on := worksite.Act{Kind: worksite.PowerOn, N: -1}
				if ok, _ := r.Permits(s, on, n); ok {
					open++
				}
				s.Unlike = true
				if ok, why := r.Permits(s, on, n); ok || why == "" {
					t.Errorf("power on is permitted in %+v", s)
				}
				if !s.Doubt().Unlike {
					t.Error("doubt about the supply forgets the wire")
				}
			}
		}
	}
	if open == 0 {
		t.Error("power on is never permitted: nothing is tested")
	}
}
