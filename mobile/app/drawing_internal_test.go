package app

import (
	"slices"
	"testing"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/protocol"
)

func engines(t *testing.T) []*appliance.Engine {
	t.Helper()
	l, err := load("en")
	if err != nil {
		t.Fatal(err)
	}
	var out []*appliance.Engine
	for _, m := range l.models {
		e, err := appliance.Compile(m)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, e)
	}
	return out
}

// A net of the 24 V side carries voltage only with the power on, and that of the call only while heat is called for.
func TestEnergised(t *testing.T) {
	e := engines(t)[0]
	for _, tt := range []struct {
		name, power, call string
		wire              string
		r, w              bool
	}{
		{"running", "on", "on", "", true, true},
		{"no call", "on", "off", "", true, false},
		{"unknown counts as on", "unknown", "on", "", true, true},
		{"proved dead", "proved", "on", "", false, false},
		{"off, not proved", "off", "on", "", false, false},
	} {
		v := &protocol.View{Site: protocol.SiteView{Power: tt.power, Call: tt.call}}
		got := energised(e, v)
		if got["R"] != tt.r || got["W"] != tt.w || got["C"] {
			t.Errorf("%s: R %v, W %v, C %v", tt.name, got["R"], got["W"], got["C"])
		}
	}
}

// A part passed when each look at it found what a faultless appliance shows, and not when one did not.
func TestPassed(t *testing.T) {
	for _, e := range engines(t) {
		m, n := e.Model(), 0
		for i := range m.Checks {
			c := &m.Checks[i]
			if c.Part < 0 || len(c.Options) < 2 {
				continue
			}
			n++
			healthy := e.Predict(nil, i).Option
			good := job.Finding{Check: i, Option: healthy}
			bad := job.Finding{Check: i, Option: (healthy + 1) % len(c.Options)}
			id := m.Parts[c.Part].ID
			for _, tt := range []struct {
				name     string
				findings []job.Finding
				suspects map[string]float64
				want     bool
			}{
				{"nothing seen", nil, nil, false},
				{"as it should be", []job.Finding{good}, nil, true},
				{"not as it should be", []job.Finding{bad}, nil, false},
				{"once not", []job.Finding{bad, good}, nil, false},
				{"unsure", []job.Finding{{Check: i, Option: healthy, Unsure: true}}, nil, false},
				{"still suspected", []job.Finding{good}, map[string]float64{id: 0.3}, false},
			} {
				if got := slices.Contains(passed(e, tt.findings, tt.suspects), id); got != tt.want {
					t.Errorf("%s, %s, %s: passed %v", m.ID, c.ID, tt.name, got)
				}
			}
		}
		if n == 0 {
			t.Errorf("%s has no look at a part", m.ID)
		}
	}
}
