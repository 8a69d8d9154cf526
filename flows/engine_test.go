package flows_test

import (
	"math"
	"runtime"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"readback/core/appliance"
	"readback/core/measure"
)

func tiny(t testing.TB) *appliance.Engine { return engine(t, "../testdata/flows", "tiny.hcl") }

// same tells outcomes alike up to the width of a class of the table.
func same(a, b appliance.Outcome) bool {
	return a.State == b.State && a.Option == b.Option &&
		math.Abs(a.Value-b.Value) <= 0.003*math.Max(math.Abs(a.Value), math.Abs(b.Value))+0.03*math.Max(a.Half, b.Half)+2e-4
}

// within tells whether a unit shows something that the prediction for all such units leaves open.
func within(got, want appliance.Outcome) bool {
	if want.Option < 0 && want.State == measure.Blank {
		return true
	}
	return got.Option == want.Option && got.State == want.State && math.Abs(got.Value-want.Value)+got.Half <= want.Half*1.01+1e-4
}

func TestTableIsPredict(t *testing.T) {
	e := tiny(t)
	m := e.Model()
	table := e.Table(append(e.Singles(), e.Pairs()...))
	for h, modes := range table.Hyps {
		if len(modes) == 2 {
			modes = appliance.Hypothesis{modes[1], modes[0]} // the order of modes is nothing
		}
		for c := range m.Checks {
			if got, want := table.Prediction(c, h), e.Predict(modes, c); !same(got, want) {
				t.Fatalf("%s with %s: table %+v, predicted %+v", m.Checks[c].ID, names(m, modes), got, want)
			}
		}
	}
	if i := table.Find([]int{3, 1}); i < 0 || !slices.Equal(table.Hyps[i], []int{1, 3}) {
		t.Errorf("pair found at %d", i)
	}
}

func names(m *appliance.Model, modes []int) []string {
	var out []string
	for _, i := range modes {
		out = append(out, m.Modes[i].Full)
	}
	return out
}

func TestTableIsDeterministic(t *testing.T) {
	e := engine(t, "data", "furnace.hcl")
	hyps := append(e.Singles(), e.Pairs()[:100]...)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	one := e.Table(hyps)
	runtime.GOMAXPROCS(4)
	if d := cmp.Diff(one, e.Table(hyps)); d != "" {
		t.Error(d)
	}
}

// TestPlantDoesChecks: a plant brought into the situation of a check shows what the check predicts, with every single mode.
func TestPlantDoesChecks(t *testing.T) {
	for _, f := range [][2]string{{"../testdata/flows", "tiny.hcl"}, {"data", "furnace.hcl"}, {"data", "millivolt.hcl"}} {
		e := engine(t, f[0], f[1])
		m := e.Model()
		compared := 0
		for h := -1; h < len(m.Modes); h++ {
			if f[1] == "furnace.hcl" && h%8 != 0 {
				continue
			}
			var modes []int
			if h >= 0 {
				modes = []int{h}
			}
			p := e.Plant(modes)
			for c := range m.Checks {
				ck := &m.Checks[c]
				if ck.Power == "off" || len(ck.Lift) > 0 || len(ck.Jump) > 0 || ck.Hold == "free" {
					continue
				}
				p.SetCall(ck.Call != "off")
				p.SetPower(false)
				p.SetPower(true)
				if at, ok := p.When(ck.At); ok && ck.At != "" {
					p.Advance(at + 0.01)
				} else {
					p.Advance(1e6)
				}
				compared++
				if got, want := p.Do(c), e.Predict(modes, c); !same(got, want) && !within(got, want) {
					t.Errorf("%s, %s with %v: plant %+v, predicted %+v", f[1], ck.ID, names(m, modes), got, want)
				}
			}
		}
		if compared == 0 {
			t.Errorf("%s: nothing was compared", f[1])
		}
	}
}

func TestPlantFuseBlowsAgain(t *testing.T) {
	e := tiny(t)
	m := e.Model()
	find := func(id string) int {
		return slices.IndexFunc(m.Parts, func(p appliance.Part) bool { return p.ID == id })
	}
	p := e.Plant([]int{modeIndex(t, m, "valve.short")})
	if g := p.Gone(); len(g) != 1 || m.Parts[g[0]].ID != "fuse" {
		t.Fatalf("gone: %v", g)
	}
	p.Renew(find("fuse"))
	if len(p.Gone()) != 1 {
		t.Error("a new fuse on a shorted valve stays whole")
	}
	p.Renew(find("valve"))
	if v, _ := p.Value("fuse.blown"); v != 1 {
		t.Error("mending the valve mends the fuse")
	}
	p.Reset(find("fuse"))
	p.Advance(1e6)
	if p.Step() != "run" || p.Lamp() != "steady" {
		t.Errorf("with both mended it is at %q, light %q", p.Step(), p.Lamp())
	}
}

func TestPlantDoorSwitch(t *testing.T) {
	p := tiny(t).Plant(nil)
	p.Advance(1e6)
	if p.Step() != "run" {
		t.Fatalf("at %q", p.Step())
	}
	volts := func() float64 {
		o, err := p.Read(measure.VoltsAC, "R", "C")
		if err != nil {
			t.Fatal(err)
		}
		return o.Value
	}
	p.SetCover(1, true)
	if p.Step() != "" || volts() > 1 {
		t.Errorf("cover off, nobody holds the switch: at %q with %.1f V", p.Step(), volts())
	}
	p.Advance(100)
	p.Hold(true)
	if p.Step() != "standby" || volts() < 20 {
		t.Errorf("held: at %q with %.1f V; it begins anew", p.Step(), volts())
	}
}

func TestPlantJumperAndOhms(t *testing.T) {
	e := tiny(t)
	m := e.Model()
	p := e.Plant([]int{modeIndex(t, m, "stat-mode.cool")})
	p.Advance(1e6)
	if p.Step() != "standby" {
		t.Fatalf("without a call at %q", p.Step())
	}
	if err := p.Jumper(1, "R", "W"); err != nil {
		t.Fatal(err)
	}
	if p.Step() != "run" {
		t.Errorf("R joined to W: at %q", p.Step())
	}
	if o, err := p.Read(measure.Ohms, "R", "C"); err != nil || o.State != measure.Jumping {
		t.Errorf("ohms on a live circuit: %+v, %v", o, err)
	}
	if err := p.Unjumper(1); err != nil {
		t.Fatal(err)
	}
	if p.Step() != "standby" {
		t.Errorf("jumper out: at %q", p.Step())
	}
	if err := p.Jumper(2, "R", "nowhere"); err == nil {
		t.Error("a jumper to no net is taken")
	}
	p.SetPower(false)
	lift := slices.IndexFunc(m.Points, func(pt appliance.Point) bool { return pt.ID == "ind-hot" })
	p.Lift(lift)
	if o, err := p.Read(measure.Ohms, "inducer.a", "N"); err != nil || math.Abs(o.Value-14) > 0.1 {
		t.Errorf("winding with its wire lifted: %+v, %v", o, err)
	}
	if o, err := p.Read(measure.Ohms, "inducer.a", "IND"); err != nil || o.State != measure.Over {
		t.Errorf("between the lifted wire and its terminal: %+v, %v", o, err)
	}
	p.Refit(lift)
	if _, err := p.Read(measure.Ohms, "inducer.a", "nowhere"); err == nil {
		t.Error("a lead on no net reads")
	}
}

// TestWeldedSwitch: off is not dead when the service switch is welded.
func TestWeldedSwitch(t *testing.T) {
	e := tiny(t)
	for _, tt := range []struct {
		mode string
		dead bool
	}{{"", true}, {"service-switch.stuck-closed", false}} {
		var modes []int
		if tt.mode != "" {
			modes = []int{modeIndex(t, e.Model(), tt.mode)}
		}
		p := e.Plant(modes)
		p.SetPower(false)
		o, err := p.Read(measure.VoltsAC, "L-door", "N")
		if err != nil || (o.Value < 1) != tt.dead {
			t.Errorf("%q, switched off: %.1f V, %v", tt.mode, o.Value, err)
		}
	}
}
