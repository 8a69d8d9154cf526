package flows_test

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/flows"
)

// scenario is a fault with the readings a technician would find, as testdata/scenarios holds it.
type scenario struct {
	ID, Source, Appliance string
	Modes                 []string
	Noticed               string
	Conclude              struct{ Repair, Stop string }
	Action                string
	Never                 []string // words that must not be said in such a job
	Readings              []struct {
		Check     string
		Low, High *float64
		Unit      string
		State     measure.State
		Answer    string // of a look: an option
	}
	Note string
}

func scenarios(t *testing.T) []scenario {
	t.Helper()
	fsys := os.DirFS("../testdata/scenarios")
	names, err := fs.Glob(fsys, "*.json")
	if err != nil || len(names) == 0 {
		t.Fatalf("no scenarios: %v", err)
	}
	var out []scenario
	for _, name := range names {
		f, err := fsys.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		var s scenario
		dec := json.NewDecoder(f)
		dec.DisallowUnknownFields()
		err = dec.Decode(&s)
		f.Close()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if s.ID+".json" != name {
			t.Errorf("%s holds %q", name, s.ID)
		}
		out = append(out, s)
	}
	return out
}

func furnace(t *testing.T) (*appliance.Model, *appliance.Engine) {
	t.Helper()
	m, err := flows.Load(os.DirFS("data"), "furnace.hcl")
	if err != nil {
		t.Fatal(err)
	}
	e, err := appliance.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	return m, e
}

// modes are the indices of modes written "part.mode".
func modes(t *testing.T, m *appliance.Model, full []string) []int {
	t.Helper()
	var out []int
	for _, want := range full {
		i := slices.IndexFunc(m.Modes, func(md appliance.Mode) bool { return md.Full == want })
		if i < 0 {
			t.Fatalf("no mode %q", want)
		}
		out = append(out, i)
	}
	return out
}

// TestScenarios holds what the files predict to the readings of known faults.
func TestScenarios(t *testing.T) {
	engines := map[string]*appliance.Engine{}
	for _, name := range []string{"furnace.hcl", "millivolt.hcl"} {
		e := engine(t, "data", name)
		engines[e.Model().ID] = e
	}
	for _, s := range scenarios(t) {
		t.Run(s.ID, func(t *testing.T) {
			e := engines[s.Appliance]
			if e == nil {
				t.Fatalf("no appliance %q", s.Appliance)
			}
			m := e.Model()
			set := modes(t, m, s.Modes)
			if err := concludes(m, set, s.Conclude.Repair, s.Conclude.Stop); err != nil {
				t.Error(err)
			}
			if s.Source == "" || s.Action == "" || len(s.Readings) < 2 {
				t.Error("a scenario has a source, an action and two readings or more")
			}
			for _, r := range s.Readings {
				i := slices.IndexFunc(m.Checks, func(c appliance.Check) bool { return c.ID == r.Check })
				if i < 0 {
					t.Errorf("no check %q", r.Check)
					continue
				}
				c, o := &m.Checks[i], e.Predict(set, i)
				got := shown(c, o)
				switch {
				case r.Answer != "":
					if got != r.Answer {
						t.Errorf("%s: %s, want %s", r.Check, got, r.Answer)
					}
				case r.State != "":
					if o.State != r.State {
						t.Errorf("%s: %s, want %s", r.Check, got, r.State)
					}
				case r.Low == nil || r.High == nil || r.Unit != c.Unit:
					t.Errorf("%s: want low, high and the unit %s", r.Check, c.Unit)
				case o.Option >= 0 || o.State != measure.Number || o.Value < *r.Low || o.Value > *r.High:
					t.Errorf("%s: %s, want %g..%g %s", r.Check, got, *r.Low, *r.High, r.Unit)
				}
			}
		})
	}
}

// concludes tells whether ending these modes means this repair and crosses this stop line.
func concludes(m *appliance.Model, set []int, repair, stop string) error {
	for _, i := range set {
		r := &m.Repairs[m.Modes[i].Repair]
		line := ""
		if r.Stop >= 0 {
			line = m.Stops[r.Stop].ID
		}
		if (repair == "" || r.ID == repair) && line == stop {
			return nil
		}
	}
	return fmt.Errorf("no mode of %v is ended by repair %q with stop line %q", set, repair, stop)
}

func shown(c *appliance.Check, o appliance.Outcome) string {
	switch {
	case o.Option >= 0:
		return c.Options[o.Option].ID
	case o.State != measure.Number:
		return string(o.State)
	}
	return strings.TrimSpace(fmt.Sprintf("%.4g %s", o.Value, c.Unit))
}
