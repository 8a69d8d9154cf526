package worksite

import (
	"fmt"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/vocab"
)

// Supply is what a check needs of the supply.
type Supply uint8

const (
	Any  Supply = iota
	Live        // on
	Cut         // switched off
	Dead        // off and proved dead
)

// Need is a state of the work place as a goal. It is comparable.
type Need struct {
	Power  Supply
	Call   Tri   // NotKnown: does not matter
	Covers Set   // places that must be open, each with those around it
	Wires  Set   // points that must be lifted, all others fitted
	Jumper int16 // check index plus one whose test jumper must be in; 0: none
	Series int16 // check index plus one whose meter must be in series; 0: none
	Place  int16 // check index plus one whose leads must be clipped on before the call; 0: none
	Shut   bool  // nothing open, nothing lifted, nothing held: the way the place is left
}

// Rules is what the equipment file says about access and hazard, prepared for fast walking. It is read-only.
type Rules struct {
	m         *appliance.Model
	mains     bool
	around    []Set   // by place: itself and the covers around it that have to be off
	shock     Set     // covers with more than touch-safe voltage behind them
	hazard    Set     // places: the supply is switched off before their cover moves
	trips     Set     // places: a door switch opens with their cover
	near      []Set   // by place: the places in the same room or cabinet front
	pointAt   []int   // by point: place, -1
	dead      Set     // covers that are off while dead is proved
	needs     []Need  // by check
	capacitor []int16 // by point: the capacitor it is a terminal of, its part index plus one; 0 for none
}

// New prepares the rules of a model. Its errors name the check or point that cannot be asked safely.
func New(m *appliance.Model) (*Rules, error) {
	if len(m.Points) > 128 || len(m.Places) > 128 || len(m.Parts) > 128 {
		return nil, fmt.Errorf("site: %s: at most 128 points, places and parts, have %d, %d and %d", m.ID, len(m.Points), len(m.Places), len(m.Parts))
	}
	r := &Rules{m: m, mains: m.Mains}
	for i := range m.Places {
		var around Set
		for p, n := i, 0; p >= 0 && p < len(m.Places); p, n = m.Places[p].Within, n+1 {
			if n > len(m.Places) {
				return nil, fmt.Errorf("site: %s: place %q is within itself", m.ID, m.Places[i].ID)
			}
			if m.Places[p].Cover {
				around = around.With(p)
			}
		}
		r.around = append(r.around, around)
		if m.Mains && (m.Places[i].HandsIn || len(m.Places[i].Hazards) > 0) || len(m.Places[i].Trips) > 0 {
			r.hazard = r.hazard.With(i)
		}
		for _, id := range m.Places[i].Hazards {
			if h, ok := vocab.HazardOf(id); ok && h.Shock && m.Places[i].Cover {
				r.shock = r.shock.With(i)
			}
		}
		if m.Places[i].Cover && len(m.Places[i].Trips) > 0 {
			r.trips = r.trips.With(i)
		}
	}
	r.near = make([]Set, len(m.Places))
	for i := range m.Places {
		for k := range m.Places {
			if r.area(i) == r.area(k) {
				r.near[i] = r.near[i].With(k)
			}
		}
	}
	for i, p := range m.Points {
		r.pointAt = append(r.pointAt, p.Place)
		id, _, _ := cut(p.Net)
		r.capacitor = append(r.capacitor, 0)
		for k := range m.Parts {
			if kind := appliance.KindOf(m.Parts[k].Kind); m.Parts[k].ID == id && kind != nil && kind.Holds {
				r.capacitor[i] = int16(k + 1)
			}
		}
	}
	for _, d := range m.Dead {
		if d < 0 || d >= len(m.Points) {
			return nil, fmt.Errorf("site: %s: dead is proved at point %d, which does not exist", m.ID, d)
		}
		r.dead = r.dead.Or(r.cover(m.Points[d].Place))
	}
	for i := range m.Checks {
		n, err := r.need(i)
		if err != nil {
			return nil, fmt.Errorf("site: %s: check %q: %w", m.ID, m.Checks[i].ID, err)
		}
		r.needs = append(r.needs, n)
	}
	return r, nil
}

// area is the nearest place around a place that is no cover.
func (r *Rules) area(place int) int {
	for place >= 0 && r.m.Places[place].Cover {
		place = r.m.Places[place].Within
	}
	return place
}

// cover is the set of covers that must be off to get to a place.
func (r *Rules) cover(place int) Set {
	if place < 0 || place >= len(r.around) {
		return Set{}
	}
	return r.around[place]
}

// Covers is the set of covers that must be off to get to the places.
func (r *Rules) Covers(places []int) Set {
	var s Set
	for _, p := range places {
		s = s.Or(r.cover(p))
	}
	return s
}

// offOnly are the functions that harm meter and person on a live circuit.
func offOnly(f measure.Function) bool { return f.Dial().Drives }

func (r *Rules) need(i int) (Need, error) {
	c := &r.m.Checks[i]
	n := Need{Covers: r.Covers(c.Places)}
	mark := int16(i + 1)
	switch {
	case c.Power == "on" && offOnly(c.Function):
		return n, fmt.Errorf("%s is never measured with power on", c.Function)
	case c.Power == "on" && c.HandsIn && c.Function != measure.MicroampsDC:
		return n, fmt.Errorf("hands in with power on")
	case c.Power == "on":
		n.Power = Live
	case offOnly(c.Function) || c.HandsIn || len(c.Lift) > 0:
		n.Power = Dead
	case c.Power == "off":
		n.Power = Cut
	}
	switch c.Call {
	case "on":
		n.Call = Yes
	case "off":
		n.Call = No
	}
	for _, p := range c.Lift {
		if p < 0 || p >= len(r.m.Points) {
			return n, fmt.Errorf("lifts point %d, which does not exist", p)
		}
		n.Wires = n.Wires.With(p)
		n.Covers = n.Covers.Or(r.cover(r.pointAt[p]))
	}
	if c.Function == measure.MicroampsDC {
		if n.Power != Live {
			return n, fmt.Errorf("flame current is read with power on, the meter fitted with power off")
		}
		n.Series = mark
	}
	if len(c.Jump) > 0 {
		if len(c.Jump) != 2 {
			return n, fmt.Errorf("a test jumper joins two points, not %d", len(c.Jump))
		}
		if s := r.bridged(c.Jump[0], c.Jump[1]); s >= 0 {
			return n, fmt.Errorf("the test jumper would bridge the %s, a safety device", r.m.Parts[s].Name)
		}
		n.Jumper = mark
		for _, p := range c.Jump {
			n.Covers = n.Covers.Or(r.cover(r.pointAt[p]))
		}
	}
	if n.Power == Live && (c.Window && c.Function != measure.Look || c.Fit != "") && n.Series == 0 {
		n.Place = mark
	}
	return n, nil
}

// For is what a check needs.
func (r *Rules) For(check int) Need { return r.needs[check] }

// Work is what a step of a repair needs: dead unless it says otherwise, with its places open.
func (r *Rules) Work(step appliance.SwapStep) Need {
	n := Need{Power: Dead, Covers: r.Covers(step.Places)}
	switch step.Power {
	case "on":
		n = Need{Power: Live, Shut: true}
	case "any":
		n.Power = Any
	case "cut":
		n = Need{Power: Cut, Shut: true} // nothing is opened and no wire touched: switched off is enough
	}
	if step.Wire >= 0 && step.Wire < len(r.pointAt) {
		n.Covers = n.Covers.Or(r.cover(r.pointAt[step.Wire]))
	}
	return n
}

// Leave is how the place is left: everything back, and the supply on or off.
func Leave(on bool) Need {
	if on {
		return Need{Power: Live, Call: NotKnown, Shut: true}
	}
	return Need{Power: Cut, Shut: true}
}

// Run is what watching a cycle needs: everything back, supply on, the thermostat calling.
func Run() Need { return Need{Power: Live, Call: Yes, Shut: true} }

// Held tells whether a door switch has to be held in for a need: supply on with a cover off that trips it.
func (r *Rules) Held(n Need) bool { return n.Power == Live && !n.Covers.And(r.trips).Empty() }

// bridged finds a safety device that a jumper between two points would bridge, or could bridge together with what is
// in series with it; -1 when there is none.
func (r *Rules) bridged(a, b int) int {
	net := func(p int) string {
		id := r.m.Points[p].Net
		if p, port, ok := cut(id); ok {
			for i := range r.m.Parts {
				if r.m.Parts[i].ID == p {
					if n, ok := r.m.Parts[i].Ports[port]; ok {
						return n
					}
				}
			}
		}
		return id
	}
	if a < 0 || b < 0 || a >= len(r.m.Points) || b >= len(r.m.Points) {
		return -1
	}
	from, to := net(a), net(b)
	for i := range r.m.Parts {
		p := &r.m.Parts[i]
		if !p.Safety {
			continue
		}
		x, y, ok := ends(p)
		if !ok {
			continue
		}
		if r.joined(from, x, i) && r.joined(y, to, i) || r.joined(from, y, i) && r.joined(x, to, i) {
			return i
		}
	}
	return -1
}

// joined tells whether two nets are joined through parts that pass current freely, without the part named.
func (r *Rules) joined(from, to string, without int) bool {
	seen := map[string]bool{from: true}
	for todo := []string{from}; len(todo) > 0; {
		n := todo[0]
		todo = todo[1:]
		if n == to {
			return true
		}
		for i := range r.m.Parts {
			p := &r.m.Parts[i]
			if i == without || !passes(p.Kind) {
				continue
			}
			x, y, ok := ends(p)
			if !ok {
				continue
			}
			if y == n {
				x, y = y, x
			}
			if x == n && !seen[y] {
				seen[y] = true
				todo = append(todo, y)
			}
		}
	}
	return false
}

// passes tells whether a kind of part is a way through rather than a load.
func passes(kind string) bool {
	k := appliance.KindOf(kind)
	return k == nil || k.Passes >= appliance.Through // what is not known might be bridged
}

// ends returns the two nets of a part with exactly two ports.
func ends(p *appliance.Part) (x, y string, ok bool) {
	if len(p.Ports) != 2 {
		return "", "", false
	}
	for _, n := range p.Ports {
		if x == "" || n < x {
			x, y = n, x
		} else {
			y = n
		}
	}
	return x, y, true
}

func cut(id string) (part, port string, ok bool) {
	for i := range id {
		if id[i] == '.' {
			return id[:i], id[i+1:], true
		}
	}
	return "", "", false
}
