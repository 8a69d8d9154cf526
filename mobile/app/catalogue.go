package app

import (
	"maps"

	"readback/core/appliance"
)

// Catalogued is the first line of the line protocol: the wiring list of the appliance and all that may be asked about it, so that an
// outside program with a furnace of its own can play the person.
type Catalogued struct {
	Type      string   `json:"type"` // "catalogue"
	Appliance string   `json:"appliance"`
	Title     string   `json:"title"`
	Data      string   `json:"data"`
	Checks    []Check  `json:"checks"`
	Points    []Point  `json:"points"`
	Parts     []Part   `json:"parts"`
	Places    []Place  `json:"places"`
	Repairs   []Repair `json:"repairs"`
	Stops     []Named  `json:"stops"` // stop lines; Name says why
	Lamps     []Named  `json:"lamps"` // what the status light of this unit means, by what it shows
	Plate     []Named  `json:"plate"` // what is read from the rating plate
	Dead      []string `json:"dead"`  // points where dead is proved: line, neutral, ground
}

// Check is one check in the catalogue of the line protocol.
type Check struct {
	ID       string   `json:"id"`
	Stage    string   `json:"stage"`
	Name     string   `json:"name"`
	Act      string   `json:"act,omitempty"` // what is done, as spoken
	Ask      string   `json:"ask,omitempty"` // what is asked, as spoken
	Function string   `json:"function"`
	Quantity string   `json:"quantity,omitempty"` // signal, or "amps:part" for a clamp
	Unit     string   `json:"unit,omitempty"`
	Red      string   `json:"red,omitempty"` // test points
	Black    string   `json:"black,omitempty"`
	RedNet   string   `json:"redNet,omitempty"`
	BlackNet string   `json:"blackNet,omitempty"`
	Part     string   `json:"part,omitempty"`
	Power    string   `json:"power"`
	Call     string   `json:"call"`
	At       string   `json:"at,omitempty"` // step of the sequence at which it is done; where that is not reached, the state in which the start hangs
	Places   []string `json:"places,omitempty"`
	Lift     []string `json:"lift,omitempty"` // points whose wires are off for it
	Hazard   string   `json:"hazard"`
	HandsIn  bool     `json:"handsIn,omitempty"`
	Options  []string `json:"options,omitempty"`
}

// Point is a place for a lead. A net written "part.port" is the terminal of that part: with its wire lifted the lead is on the part's side.
type Point struct {
	ID    string `json:"id"`
	Name  string `json:"name"`
	Net   string `json:"net"`
	Place string `json:"place"`
	Where string `json:"where,omitempty"`
}

// Part is one line of the wiring list.
type Part struct {
	ID      string            `json:"id"`
	Name    string            `json:"name"`
	Kind    string            `json:"kind"`
	Place   string            `json:"place"`
	Ports   map[string]string `json:"ports,omitempty"`   // port to net
	Outputs map[string]string `json:"outputs,omitempty"` // of a board: net it feeds to the net it is fed from
	Inputs  map[string]string `json:"inputs,omitempty"`  // of a board: net it senses to the net it senses against
	Safety  bool              `json:"safety,omitempty"`
}

// Place is where something is. Trips are the door switches that its cover holds in.
type Place struct {
	ID    string   `json:"id"`
	Name  string   `json:"name"`
	Cover bool     `json:"cover,omitempty"`
	Trips []string `json:"trips,omitempty"`
}

// Repair is what may be done. Its steps are asked under the ids "repair.1", "repair.2"...
type Repair struct {
	ID    string   `json:"id"`
	Name  string   `json:"name"`
	Part  string   `json:"part,omitempty"`
	Kind  string   `json:"kind"`           // set, clean, open, tighten, replace, refit, call
	Stop  string   `json:"stop,omitempty"` // stop line it crosses
	Steps []string `json:"steps,omitempty"`
}

// Named is an id with its words.
type Named struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Unit string `json:"unit,omitempty"`
}

// Catalogue lists an appliance for the line protocol, in the language given.
func Catalogue(lang, id string) (Catalogued, error) {
	l, err := load(lang)
	if err != nil {
		return Catalogued{}, err
	}
	m, err := l.model(id)
	if err != nil {
		return Catalogued{}, err
	}
	out := Catalogued{Type: "catalogue", Appliance: m.ID, Title: m.Title, Data: l.hash}
	point := func(i int) string {
		if i < 0 {
			return ""
		}
		return m.Points[i].ID
	}
	for i := range m.Checks {
		c := &m.Checks[i]
		k := Check{ID: c.ID, Stage: c.Stage, Name: c.Name, Act: c.Act, Ask: c.Ask, Function: string(c.Function), Quantity: c.Quantity, Unit: c.Unit,
			Power: c.Power, Call: c.Call, At: c.At, Hazard: c.Hazard, HandsIn: c.HandsIn, Red: point(c.Red), Black: point(c.Black)}
		if c.Red >= 0 {
			k.RedNet = m.Points[c.Red].Net
		}
		if c.Black >= 0 {
			k.BlackNet = m.Points[c.Black].Net
		}
		if c.Part >= 0 {
			k.Part = m.Parts[c.Part].ID
		}
		for _, p := range c.Places {
			k.Places = append(k.Places, m.Places[p].ID)
		}
		for _, p := range c.Lift {
			k.Lift = append(k.Lift, point(p))
		}
		for _, o := range c.Options {
			k.Options = append(k.Options, o.ID)
		}
		out.Checks = append(out.Checks, k)
	}
	for _, p := range m.Points {
		out.Points = append(out.Points, Point{ID: p.ID, Name: p.Name, Net: p.Net, Place: m.Places[p.Place].ID, Where: p.Where})
	}
	for i := range m.Parts {
		out.Parts = append(out.Parts, wiring(m, &m.Parts[i]))
	}
	for _, p := range m.Places {
		k := Place{ID: p.ID, Name: p.Name, Cover: p.Cover}
		for _, t := range p.Trips {
			k.Trips = append(k.Trips, m.Parts[t].ID)
		}
		out.Places = append(out.Places, k)
	}
	for _, r := range m.Repairs {
		k := Repair{ID: r.ID, Name: r.Name, Kind: r.Kind}
		if r.Part >= 0 {
			k.Part = m.Parts[r.Part].ID
		}
		if r.Stop >= 0 {
			k.Stop = m.Stops[r.Stop].ID
		}
		for _, s := range r.Steps {
			k.Steps = append(k.Steps, s.Act)
		}
		out.Repairs = append(out.Repairs, k)
	}
	for _, s := range m.Stops {
		out.Stops = append(out.Stops, Named{ID: s.ID, Name: s.Say})
	}
	for _, x := range m.Lamps {
		out.Lamps = append(out.Lamps, Named{ID: x.ID, Name: x.Means})
	}
	for _, f := range m.Plate {
		out.Plate = append(out.Plate, Named{ID: f.ID, Name: f.Name, Unit: f.Unit})
	}
	for _, p := range m.Dead {
		out.Dead = append(out.Dead, point(p))
	}
	return out, nil
}

// wiring is a part's line of the wiring list.
func wiring(m *appliance.Model, p *appliance.Part) Part {
	k := Part{ID: p.ID, Name: p.Name, Kind: p.Kind, Ports: maps.Clone(p.Ports), Safety: p.Safety}
	if p.Place >= 0 { // else it is in the room
		k.Place = m.Places[p.Place].ID
	}
	for _, o := range p.Outputs {
		if k.Outputs == nil {
			k.Outputs = map[string]string{}
		}
		k.Outputs[o.To] = o.From
	}
	for _, n := range p.Inputs {
		if k.Inputs == nil {
			k.Inputs = map[string]string{}
		}
		k.Inputs[n.Net] = n.To
	}
	return k
}
