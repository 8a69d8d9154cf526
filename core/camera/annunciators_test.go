package camera_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"readback/core/camera"
	"readback/core/lab/metric"
	"readback/core/lab/render"
)

// annunciatorsOf reads pictures of a drawn meter and gives what stands beside the number of those that were read right.
func annunciatorsOf(t *testing.T, seed, pose uint64, grade render.Grade, text string, signs []string) (out []camera.Annunciators) {
	t.Helper()
	var r camera.Reader
	m := render.NewMeter(seed, grade, render.Options{Text: text, Signs: signs, Pose: pose})
	for i := range 4 {
		p := m.Frame(i)
		rd, err := r.Read(&camera.Plane{Y: p.Pix, W: p.W, H: p.H, Stride: p.W})
		if err != nil {
			t.Fatal(err)
		}
		if (rd.OK() || rd.Question()) && rd.Text == text {
			out = append(out, r.Annunciators(rd))
		}
	}
	return out
}

// functions of a drawn meter, and what it shows above its number on the left and on the right, and behind it.
var functions = []struct {
	unit  string
	signs []string
}{
	{"V", []string{"AC", "AUTO", "V"}}, {"V", []string{"DC", "AUTO", "V"}}, {"mV", []string{"DC", "AUTO", "mV"}},
	{"ohm", []string{"", "AUTO", "H"}}, {"kohm", []string{"", "AUTO", "kH"}}, {"A", []string{"AC", "AUTO", "A"}},
}

// teach shows every function of a meter once but those of one unit.
func teach(t *testing.T, seed uint64, grade render.Grade, but string) *camera.Units {
	t.Helper()
	u := &camera.Units{}
	for k, f := range functions {
		if f.unit != but {
			u.Teach(f.unit, annunciatorsOf(t, seed, seed*20+uint64(k)+1, grade, fmt.Sprintf("%.2f", 12.34+11.11*float64(k)), f.signs))
		}
	}
	return u
}

func TestUnits(t *testing.T) {
	u := teach(t, 201, render.Easy, "")
	if len(u.Taught) != len(functions) {
		t.Fatalf("%d looks learnt, want %d", len(u.Taught), len(functions))
	}
	b, err := json.Marshal(u)
	if err != nil {
		t.Fatal(err)
	}
	kept := &camera.Units{}
	if err := json.Unmarshal(b, kept); err != nil {
		t.Fatal(err)
	}
	f := functions[2]
	seen := annunciatorsOf(t, 201, 77, render.Easy, "87.65", f.signs)
	if got := kept.Name(append(seen, nil)); got != f.unit {
		t.Errorf("%v is taken for %q", f.signs, got)
	}
	if kept.Teach(f.unit, seen) {
		t.Error("what is known is learnt again")
	}
	if got := kept.Name(annunciatorsOf(t, 202, 77, render.Easy, "87.65", f.signs)); got != "" {
		t.Errorf("another meter shows %q", got)
	}
	one := &camera.Units{}
	if one.Name(seen) != "" || !one.Teach(f.unit, seen) || one.Name(seen) != "" {
		t.Error("a unit is named by a meter that may show the same signs for all")
	}
	if one.Teach("V", nil) || one.Teach("V", []camera.Annunciators{nil}) || one.Teach("V", annunciatorsOf(t, 201, 78, render.Easy, "87.65", []string{})) {
		t.Error("something is learnt from nothing")
	}
	one.Taught = append(one.Taught, camera.TaughtUnit{Unit: "V", Look: []byte{1, 2}}) // a file of another version
	if got := one.Name(seen); got != f.unit {
		t.Errorf("beside a damaged look it is %q", got)
	}
}

// unitFigures teaches meters all their functions and shows them again, and once more with one unit that was never taught.
func unitFigures(t *testing.T, add metric.Adder) {
	const meters = 12
	for grade, name := range map[render.Grade]string{render.Easy: "", render.Medium: "_medium"} {
		right, wrong, unknown, n := 0, 0, 0, 0
		for seed := range uint64(meters) {
			all := teach(t, heldOut+seed, grade, "")
			for k, f := range functions {
				n++
				seen := annunciatorsOf(t, heldOut+seed, heldOut+seed*20+uint64(k), grade, fmt.Sprintf("%.2f", 87.65-11.11*float64(k)), f.signs)
				switch got := all.Name(seen); got {
				case "":
				case f.unit:
					right++
				default:
					wrong++
					t.Logf("meter %d: %v is taken for %s", seed, f.signs, got)
				}
				rest := &camera.Units{}
				for _, x := range all.Taught {
					if x.Unit != f.unit {
						rest.Taught = append(rest.Taught, x)
					}
				}
				if got := rest.Name(seen); got != "" {
					unknown++
					t.Logf("meter %d: %v was never taught and is taken for %s", seed, f.signs, got)
				}
			}
		}
		add("eye.unit"+name+"_pct", pct(right, n), "%", "reported", n)
		add("eye.unit"+name+"_wrong_pct", pct(wrong, n), "%", "reported", n)
		add("eye.unit"+name+"_untaught_wrong_pct", pct(unknown, n), "%", "reported", n)
	}
}
