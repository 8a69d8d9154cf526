package plan

import (
	"fmt"
	"math"

	"readback/core/appliance"
	"readback/core/infer"
	"readback/core/measure"
	"readback/core/vocab"
)

// House is what the user told of money and help.
type House struct {
	Call float64 // call-out price; NaN when not known: the appliance's fact "call-out" stands in
}

// Prices of getting ready, where the equipment file gives none (common practice, no source).
const (
	askMinutes    = 0.7 // any question: to hear it, to look, to answer
	liftMinutes   = 2   // one wire off and on again
	switchMinutes = 1.5 // power off, or on again
	provedMinutes = 5   // consent and the five readings of the proof of dead
	meterMinutes  = 3   // meter and leads looked at and proved, once
	clipMinutes   = 3   // leads clipped on with the power off and the call taken off, for what lasts seconds
	toolMinutes   = 0.3 // another position of the dial
	watchMinutes  = 3   // waiting for a step of a start
	eventMinutes  = 0.7 // an event of a start that is watched once: its share of the start
	proveMinutes  = 10  // the full cycle that shows a repair was right
	blindMoney    = 250 // what help costs beyond the call-out when nothing is known to hand over: the hour and the part (from memory)
)

// usualCall stands in when neither the user nor the file names a call-out price, in money (from memory).
const usualCall = 150

// ForAppliance gives a case its costs and its proofs.
func ForAppliance(c *infer.Case, h House) (*Task, error) {
	m := c.Model
	call := h.Call
	if math.IsNaN(call) || call <= 0 {
		call = usualCall
		for _, f := range m.Facts {
			if f.ID == appliance.CallOut {
				call = f.Nominal
			}
		}
	}
	t := &Task{
		Problem: c.Problem,
		Nothing: Cost{Minutes: 5},
		Unknown: Cost{Money: call},
		Call:    Cost{Money: call + blindMoney},
		Switch:  Cost{Minutes: switchMinutes},
		Proof:   Cost{Minutes: provedMinutes},
		Meter:   Cost{Minutes: meterMinutes},
		Tool:    Cost{Minutes: toolMinutes},
	}
	bit := make([]int, len(m.Places))
	for i, p := range m.Places {
		if bit[i] = -1; p.Cover {
			if len(t.Covers) == 64 {
				return nil, fmt.Errorf("plan: %s has more than 64 covers", m.ID)
			}
			bit[i] = len(t.Covers)
			t.Covers = append(t.Covers, Cost{Minutes: p.Open.Nominal + p.Close.Nominal})
		}
	}
	methods := map[[4]string]int{}
	for i := range m.Checks {
		k := &m.Checks[i]
		x := Check{Cost: Cost{Minutes: askMinutes + k.Minutes.Nominal + float64(len(k.Lift))*liftMinutes, Hazard: hazardPrice(k.Hazard)}}
		x.Repeat = k.Repeat || k.Function == measure.Look && (k.At == "" || k.Event != "") // a plain question can always be put again
		switch {
		case k.Event != "": // one of several that are seen at one start
			x.Minutes = eventMinutes
		case k.At != "":
			x.Minutes += watchMinutes
		}
		for _, p := range k.Places {
			for ; p >= 0; p = m.Places[p].Within {
				if bit[p] >= 0 {
					x.Open |= 1 << bit[p]
				}
			}
		}
		switch k.Power {
		case "on":
			x.Power = On
		case "off":
			x.Power = Off
		}
		if d := k.Function.Dial(); x.Power != On && (d.Drives || k.HandsIn || len(k.Lift) > 0) {
			x.Power = Dead
		}
		if x.Power == On && k.Window && k.Function != measure.Look {
			x.Minutes += clipMinutes
		}
		if k.Function != measure.Look {
			x.Tool = tool(k.Function)
			key := [4]string{string(k.Function), fmt.Sprint(k.Red), fmt.Sprint(k.Black), k.Quantity}
			if methods[key] == 0 {
				methods[key] = len(methods) + 1
			}
			x.Method = methods[key]
		}
		t.Checks = append(t.Checks, x)
	}
	for i := range m.Repairs {
		r := &m.Repairs[i]
		x := Repair{Cost: Cost{Minutes: r.Minutes.Nominal + proveMinutes, Money: r.Price.Nominal}}
		switch {
		case r.Kind == "call" || r.Stop >= 0:
			x.Cost = Cost{Money: call + r.Price.Nominal}
		case r.Price.Nominal == 0 && (r.Kind == "set" || r.Kind == "open" || r.Kind == "refit" && !m.Places[m.Parts[r.Part].Place].Cover):
			x.Free = true // a panel pressed home outside is as harmless as a switch put right
		}
		t.Repairs = append(t.Repairs, x)
	}
	t.Proofs = proofs(c, t.Repairs)
	return t, t.Validate()
}

// siteOf is the state of a work place in the terms of a task made by ForAppliance: which places are open, the power, the dial.
func siteOf(m *appliance.Model, open func(place int) bool, power Power, dial measure.Function) Site {
	s := Site{Power: power, Tool: tool(dial)}
	bit := 0
	for i := range m.Places {
		if !m.Places[i].Cover {
			continue
		}
		if open(i) {
			s.Open |= 1 << bit
		}
		bit++
	}
	return s
}

// hazardPrice grades a hazard for its cost.
func hazardPrice(hazard string) int {
	h, _ := vocab.HazardOf(hazard)
	return h.Price
}

// tool numbers the instruments and the positions of the dial, 0 for none.
func tool(f measure.Function) uint8 {
	for i, x := range measure.Functions {
		if f == x.ID && f != measure.Look {
			return uint8(i + 1)
		}
	}
	return 0
}

// Likely and Telling say when an outcome shows something: it is usual if the thing is so, and much rarer if not.
const (
	likely  = 0.2
	telling = 5
)

// prover derives proofs from the structure of an appliance.
type prover struct {
	c   *infer.Case
	m   *appliance.Model
	out []Proof
}

// proofs derives what each repair decision must stand on, by the kind of the part. Common practice in the trade: a part is named
// when something at the part itself shows the fault, or a meter elsewhere where nothing there can; a load, when its supply was present besides; a board, when everything it
// needs was present, the output was missing at its own terminal, and what hangs on that output is good.
func proofs(c *infer.Case, repairs []Repair) []Proof {
	p := &prover{c: c, m: c.Model}
	for g := range p.m.Repairs {
		for mode := range p.m.Modes {
			md := &p.m.Modes[mode]
			if md.Repair != g || repairs[g].Free {
				continue
			}
			part := &p.m.Parts[md.Part]
			world := c.Worlds.Of(mode)
			itself := []string{"part", part.Name}
			if !p.add(g, mode, "self", "evidence.self", itself, func(k int) uint64 {
				if !p.concerns(k, md.Part) {
					return 0
				}
				return p.shows(k, world)
			}) { // as a loose wire that shows under load only: somewhere a meter must
				p.add(g, mode, "self", "evidence.self", itself, func(k int) uint64 {
					if p.m.Checks[k].Function == measure.Look {
						return 0
					}
					return p.shows(k, world)
				})
			}
			kind := appliance.KindOf(part.Kind)
			if kind == nil {
				continue
			}
			switch kind.Proof {
			case appliance.ProvedBySupply:
				if p.add(g, mode, "input", "evidence.supply", []string{"part", part.Name}, func(k int) uint64 {
					if !p.across(k, part.Ports) {
						return 0
					}
					return p.healthy(k)
				}) {
					p.out[len(p.out)-1].Waived = p.bench(mode, md.Part)
				}
			case appliance.ProvedByInputs:
				p.board(g, mode, part, md)
			}
		}
	}
	return p.out
}

func (p *prover) board(g, mode int, part *appliance.Part, md *appliance.Mode) {
	for _, in := range part.Inputs {
		p.add(g, mode, "input", "evidence.input", []string{"port", in.ID, "part", part.Name}, func(k int) uint64 {
			if !p.between(k, in.Net, in.To) {
				return 0
			}
			return p.healthy(k)
		})
	}
	for _, out := range part.Outputs {
		if out.ID != md.At {
			continue
		}
		p.add(g, mode, "output", "evidence.output", []string{"port", out.ID, "part", part.Name}, func(k int) uint64 {
			if !p.touches(k, out.To) || !p.m.Checks[k].Function.Volts() {
				return 0
			}
			return p.shows(k, p.c.Worlds.Of(mode))
		})
		for i := range p.m.Parts {
			load := &p.m.Parts[i]
			if k := appliance.KindOf(load.Kind); k == nil || k.Proof != appliance.ProvedBySupply || !p.fedBy(load, out.To) {
				continue
			}
			p.add(g, mode, "load", "evidence.load", []string{"part", load.Name}, func(k int) uint64 {
				if f := p.m.Checks[k].Function; !p.concerns(k, i) || f == measure.Look || f.Volts() {
					return 0
				}
				return p.healthy(k)
			})
		}
	}
}

// add makes a proof of all checks for which signs gives telling outcomes. Where no check can bring it, it is not asked for, and false is
// returned.
func (p *prover) add(g, mode int, kind, term string, slots []string, signs func(check int) uint64) bool {
	pr := Proof{Group: g, Mode: mode, Kind: kind, Term: term, Slots: slots}
	for k := range p.m.Checks {
		if bins := signs(k); bins != 0 {
			pr.Any = append(pr.Any, Sign{k, bins})
		}
	}
	if len(pr.Any) == 0 {
		return false
	}
	p.out = append(p.out, pr)
	return true
}

// shows are the outcomes of a check that tell a world from the healthy one.
func (p *prover) shows(check, world int) uint64 {
	bins := uint64(0)
	for o := range p.c.Problem.Checks[check].Bins[0] {
		if x := p.c.Problem.Chance(check, world, o); x >= likely && x >= telling*p.c.Problem.Chance(check, 0, o) {
			bins |= 1 << o
		}
	}
	return bins
}

// healthy are the usual outcomes of a check when nothing is wrong, if there are others.
func (p *prover) healthy(check int) uint64 {
	bins := uint64(0)
	n := len(p.c.Problem.Checks[check].Bins[0])
	for o := range n {
		if p.c.Problem.Chance(check, 0, o) >= likely {
			bins |= 1 << o
		}
	}
	if n < 2 || bins == 1<<n-1 {
		return 0
	}
	return bins
}

func (p *prover) net(point int) string {
	if point < 0 {
		return ""
	}
	return p.m.Points[point].Net
}

// concerns tells whether a check is about a part: it names it, or has a lead on a terminal of its own.
func (p *prover) concerns(check, part int) bool {
	k := &p.m.Checks[check]
	if k.Part == part {
		return true
	}
	id := p.m.Parts[part].ID + "."
	for _, pt := range [2]int{k.Red, k.Black} {
		if n := p.net(pt); len(n) > len(id) && n[:len(id)] == id {
			return true
		}
	}
	return false
}

// between tells whether a check measures volts between two nets.
func (p *prover) between(check int, a, b string) bool {
	k := &p.m.Checks[check]
	x, y := p.net(k.Red), p.net(k.Black)
	return k.Function.Volts() && (x == a && y == b || x == b && y == a)
}

// across tells whether a check measures volts across two ports of a part.
func (p *prover) across(check int, ports map[string]string) bool {
	k := &p.m.Checks[check]
	x, y := p.net(k.Red), p.net(k.Black)
	if !k.Function.Volts() || x == y {
		return false
	}
	red, black := false, false
	for _, n := range ports { // order does not matter: any port will do
		red, black = red || n == x, black || n == y
	}
	return red && black
}

func (p *prover) touches(check int, net string) bool {
	k := &p.m.Checks[check]
	return p.net(k.Red) == net || p.net(k.Black) == net
}

// fedBy tells whether a part hangs on a net, directly or through one wire.
func (p *prover) fedBy(load *appliance.Part, net string) bool {
	for _, n := range load.Ports {
		if n == net {
			return true
		}
		for i := range p.m.Parts {
			w := &p.m.Parts[i]
			if k := appliance.KindOf(w.Kind); k == nil || k.Passes != appliance.Leads {
				continue
			}
			here, there := false, false
			for _, x := range w.Ports {
				here, there = here || x == n, there || x == net
			}
			if here && there {
				return true
			}
		}
	}
	return false
}

// bench are the signs of a fault that a part shows by itself with the power off: they do not hang on what feeds it.
func (p *prover) bench(mode, part int) (signs []Sign) {
	for k := range p.m.Checks {
		c := &p.m.Checks[k]
		if c.Power != "off" || !p.concerns(k, part) {
			continue
		}
		if bins := p.shows(k, p.c.Worlds.Of(mode)); bins != 0 {
			signs = append(signs, Sign{k, bins})
		}
	}
	return signs
}
