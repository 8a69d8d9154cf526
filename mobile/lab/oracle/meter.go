package oracle

import (
	"math"
	"strings"
)

// shown is what a display shows: a number, or over-range.
type shown struct {
	value float64
	over  bool
	none  bool // the person has no such instrument
}

// measure reads an instrument as the guide's check describes it: the two nodes for a meter, the quantity for others.
func (f *Furnace) measure(c *checkInfo, call bool) shown {
	live := f.Live()
	switch c.Function {
	case "volts-ac":
		if c.RedNet == "HOT" || c.Part == "supply" && c.Red == "outlet-hot" { // any outlet of the house
			if f.has["dark"] {
				return shown{}
			}
			return shown{value: f.unit.line}
		}
		m := f.view(c.At, call && live)
		v := f.volts(m.s, edge{f.net(c.RedNet), f.net(c.BlackNet), 10e6})
		return shown{value: abs(v[f.net(c.RedNet)] - v[f.net(c.BlackNet)])}
	case "ohms":
		if strings.Contains(c.Name, "pressed") { // by a finger, for the reading
			held := f.Held
			f.Held = true
			defer func() { f.Held = held }()
		}
		return f.ohms(f.net(c.RedNet), f.net(c.BlackNet), call)
	case "capacitance":
		switch {
		case strings.HasPrefix(c.RedNet, "inducer"):
			return shown{value: f.unit.fanCap * pickOf(f.bad("fan-cap"), 0.6, f.bad("fan-cap-open"), 0.01, 0.99)}
		default:
			return shown{value: f.unit.blowerCap * pickOf(f.bad("blower-cap"), 0.72, f.bad("blower-cap-dead"), 0.15, 1.01)}
		}
	case "amps-ac":
		m := f.view(c.At, call && live)
		switch c.Quantity {
		case "amps:igniter":
			return shown{value: f.amps(m, "IGN-m", "IGN-n", "igniter")}
		case "amps:inducer":
			return shown{value: f.amps(m, "IND-m", "IND-n", "inducer")}
		}
		return shown{value: f.amps(m, "BLW-m", "BLW-n", "blower")}
	case "microamps-dc":
		m := f.view(c.At, call && live)
		if m.flame == "none" || m.flame == "out" {
			return shown{}
		}
		return shown{value: m.micro}
	case "manometer", "thermometer":
		m := f.view(c.At, call && live)
		switch c.Quantity {
		case "port-draft":
			return shown{value: m.port}
		case "sensed-draft":
			return shown{value: m.sensed}
		case "gas-inlet":
			if m.s.out["GV"] || f.gas() == 0 {
				return shown{value: f.gas()}
			}
			return shown{value: f.unit.inlet * 1.02}
		case "rise":
			return shown{value: f.rise(m)}
		}
		back, out := f.static(m)
		switch c.Quantity {
		case "return-static":
			return shown{value: back}
		case "supply-static":
			return shown{value: out}
		}
		return shown{value: back + out}
	}
	return shown{none: true}
}

func pickOf(a bool, x float64, b bool, y, good float64) float64 {
	switch {
	case a:
		return x
	case b:
		return y
	}
	return good
}

// static is the suction before the blower and the pressure above the furnace, in. w.c.
func (f *Furnace) static(m *moment) (back, out float64) {
	v := f.airflow(m.volts)
	if v == 0 {
		return 0, 0
	}
	back, out = f.unit.static*0.45, f.unit.static*0.55
	for _, n := range []string{"blower-cap", "blower-drags", "wheel-dirty"} {
		if f.bad(n) {
			back, out = back*0.3, out*0.3
		}
	}
	if f.bad("filter") {
		back, out = 0.78, out*0.5
	}
	if f.bad("return") {
		back, out = 0.7, out*0.5
	}
	for _, n := range []string{"registers", "coil", "duct"} {
		if f.bad(n) {
			back, out = back*0.5, 0.72
		}
	}
	return back, out
}

// amps through a load, as a clamp shows them.
func (f *Furnace) amps(m *moment, a, b, part string) float64 {
	for _, e := range f.conductors(m.s, false) {
		if e.a == a && e.b == b && !math.IsInf(e.ohms, 1) {
			return m.across(a, b) / e.ohms
		}
	}
	return 0
}

// net is the node of a point: the net it is on, or the terminal of a part whose wire is off.
func (f *Furnace) net(n string) string {
	part, port, ok := strings.Cut(n, ".")
	if !ok || f.Lifted[n] {
		return n
	}
	for _, p := range f.wiring {
		if p.ID == part {
			return p.Ports[port]
		}
	}
	return n
}

// ohms is what a meter shows between two nodes with the power off.
func (f *Furnace) ohms(a, b string, call bool) shown {
	const test = 0.001 // A
	s := now{out: map[string]bool{}, called: call && f.Calling, press: f.bad("press-closed")}
	edges := f.conductors(s, true)
	edges = append(edges, edge{a, b, 1e12})
	v := solve(edges, []source{{a, b, test * 1e9, 1e9}})
	r := abs(v[a]-v[b]) / test
	if r > 20e6 {
		return shown{over: true}
	}
	return shown{value: r + 0.15}
}
