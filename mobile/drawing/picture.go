package drawing

import (
	"fmt"
	"html"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/words"
)

// panel is one part of a picture: where it is, the thing itself, the meter.
type panel struct {
	kind string // place, part, meter
	svg  string
	text string // what it shows, for the large picture and for those who hear it
}

// Picture shows what the hands do at a step: the place, the thing with its terminals and the two leads, the meter with dial and jacks. large
// draws the panels below each other, with their names. It is empty where a step needs no hands and shows nothing.
func Picture(w *words.Words, m *appliance.Model, v *protocol.View, large bool) string {
	ps := panels(w, m, v)
	if len(ps) == 0 {
		return ""
	}
	if large {
		return tall(ps)
	}
	return strip(w, ps)
}

// Looks names the scene that an appliance stands in: what it looks like from the outside. It is empty where its file names no drawing.
func Looks(m *appliance.Model) string {
	for i := range m.Places {
		if r, ok := regions[m.Places[i].Sketch]; ok && (r.scene == "cabinet" || r.scene == "heater") {
			return r.scene
		}
	}
	return ""
}

// Sketch is a drawing by itself: "meter", or one of the scenes. It is empty when there is none of that name.
func Sketch(id string) string {
	svg := scenes[id]
	if id == "meter" {
		svg = meterPicture(measure.VoltsAC, false)
	}
	if svg == "" {
		return ""
	}
	return svgOf(panelW, panelH, nil, svg)
}

// Shows lists the kinds of the panels of a step's picture, for the figure that counts them.
func Shows(w *words.Words, m *appliance.Model, v *protocol.View) []string {
	var out []string
	for _, p := range panels(w, m, v) {
		out = append(out, p.kind)
	}
	return out
}

const (
	stripW = 344.0
	stripH = 150.0
	tallW  = 344.0
	letter = 16.0 // size of text in a large picture
)

// strip puts the panels side by side; one alone has its name beside it.
func strip(w *words.Words, ps []panel) string {
	var b strings.Builder
	n := float64(len(ps))
	for i, p := range ps {
		k := min(1, (stripW-6*(n-1))/n/panelW)
		x := (stripW-n*panelW*k)/(n+1)*float64(i+1) + panelW*k*float64(i)
		if len(ps) == 1 {
			x = 8
		}
		fmt.Fprintf(&b, `<g data-panel="%s" transform="translate(%.1f %.1f) scale(%.3f)">%s</g>`, p.kind, x, (stripH-panelH*k)/2, k, p.svg)
		if i > 0 {
			fmt.Fprintf(&b, `<path d="M%.1f 12v%.0f" stroke-width="1" stroke-opacity=".35"/>`, x-(stripW-n*panelW*k)/(n+1)/2, stripH-24)
		}
	}
	if len(ps) == 1 {
		for i, line := range wrap(ps[0].text, 20, 6) {
			fmt.Fprintf(&b, `<text x="150" y="%.0f" font-size="%.0f" fill="currentColor" stroke="none">%s</text>`, 44+22*float64(i), letter, html.EscapeString(line))
		}
	}
	return svgOf(stripW, stripH, ps, b.String())
}

// tall puts them below each other, each with its name.
func tall(ps []panel) string {
	var b strings.Builder
	y := 8.0
	const k = 1.7
	for _, p := range ps {
		for _, line := range wrap(p.text, 33, 5) {
			fmt.Fprintf(&b, `<text x="10" y="%.0f" font-size="%.0f" font-weight="bold" fill="currentColor" stroke="none">%s</text>`, y+letter, letter, html.EscapeString(line))
			y += 22
		}
		fmt.Fprintf(&b, `<g data-panel="%s" transform="translate(%.1f %.1f) scale(%.2f)">%s</g>`, p.kind, (tallW-panelW*k)/2, y+6, k, p.svg)
		y += panelH*k + 20
	}
	return svgOf(tallW, y, ps, b.String())
}

func svgOf(w, h float64, ps []panel, body string) string {
	var names, kinds []string
	for _, p := range ps {
		names = append(names, strings.TrimSuffix(p.text, "."))
		kinds = append(kinds, p.kind)
	}
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f %.0f" width="%.0f" height="%.0f" role="img" aria-label="%s" font-family="sans-serif" font-weight="normal" stroke="currentColor" fill="none" stroke-width="2" stroke-linejoin="round" data-panels="%s"><g aria-hidden="true">%s</g></svg>`,
		w, h, w, h, html.EscapeString(strings.Join(names, ". ")), strings.Join(kinds, " "), shorthand.Replace(body))
}

// scene is what a step is about, found by its id in the model.
type scene struct {
	place    int
	way      string // open, close
	parts    []int
	red, blk int // points
	meter    measure.Function
	clip     bool
	over     bool   // the display may show that the reading is above its range
	act      string // what the hands do to the thing: pull, push, down, up, press, join, drain, series
	special  string // a sketch by itself
	name     string // its name in the terms "picture"
}

func index[T any](list []T, is func(*T) bool) int {
	return slices.IndexFunc(list, func(x T) bool { return is(&x) })
}

// find resolves what a step is about.
func find(m *appliance.Model, v *protocol.View) scene {
	st := &v.Step
	s := scene{place: -1, red: -1, blk: -1}
	point := func(id string) int { return index(m.Points, func(p *appliance.Point) bool { return p.ID == id }) }
	check := func(id string) int { return index(m.Checks, func(c *appliance.Check) bool { return c.ID == id }) }
	part := func(id string) int { return index(m.Parts, func(p *appliance.Part) bool { return p.ID == id }) }
	place := func(id string) int { return index(m.Places, func(p *appliance.Place) bool { return p.ID == id }) }
	s.place = place(st.Place)
	for _, id := range st.Parts {
		if i := part(id); i >= 0 {
			s.parts = append(s.parts, i)
		}
	}
	if len(st.Points) > 0 {
		s.red = point(st.Points[0])
	}
	if len(st.Points) > 1 {
		s.blk = point(st.Points[1])
	}
	of := func(c *appliance.Check) {
		if c.Part >= 0 && !slices.Contains(s.parts, c.Part) {
			s.parts = append(s.parts, c.Part)
		}
		if s.place < 0 && len(c.Places) > 0 {
			s.place = c.Places[len(c.Places)-1]
		}
		s.red, s.blk = c.Red, c.Black
		if c.Function != measure.Look {
			s.meter = c.Function
		}
		s.over = c.Function.Dial().Drives
	}
	kind, rest, _ := strings.Cut(st.ID, ".")
	act, thing, _ := strings.Cut(rest, ".")
	if kind == "act" {
		if c := check(thing); c >= 0 {
			of(&m.Checks[c])
		}
		if p := point(thing); p >= 0 {
			s.red = p
		}
		if p := part(thing); p >= 0 {
			s.parts = []int{p}
		}
		if p := place(thing); p >= 0 {
			s.place = p
		}
		switch act {
		case "power-off", "power-on":
			s.special, s.name = "switch-"+strings.TrimPrefix(act, "power-"), "switch"
			if !m.Mains {
				s.special, s.name = "knob-"+strings.TrimPrefix(act, "power-"), "knob"
			}
			s.meter, s.red, s.blk = "", -1, -1
		case "gas-shut", "gas-open":
			s.special, s.name = "cock-"+strings.TrimPrefix(act, "gas-"), "cock"
		case "call-on", "call-off":
			s.special, s.name = act, act
		case "prove-live", "prove-again":
			s.meter = measure.VoltsAC
			if s.red < 0 {
				s.special, s.name = "live-point", "live-point"
			}
		case "prove-line-neutral", "prove-line-ground", "prove-neutral-ground":
			s.meter = measure.VoltsAC
		case "prove-empty":
			s.meter = measure.VoltsDC
		case "discharge":
			s.act, s.meter = "drain", ""
		case "open-cover":
			s.way = "open"
		case "close-cover":
			s.way = "close"
		case "hold-door", "free-door":
			s.special, s.name = act, act
		case "lift-wire":
			s.act = "pull"
		case "refit-wire":
			s.act = "push"
		case "jumper-in", "jumper-out":
			if c := check(thing); c >= 0 && len(m.Checks[c].Jump) == 2 {
				s.red, s.blk = m.Checks[c].Jump[0], m.Checks[c].Jump[1]
			}
			s.act, s.meter = "join", ""
		case "meter-in", "meter-out":
			s.act = "series"
		case "jack-out":
			s.meter, s.red, s.blk = measure.VoltsAC, -1, -1
		case "place-leads":
			s.clip = true
		case "note-reset":
			s.act = "press"
		}
		return s.settled(m)
	}
	if c := check(st.ID); c >= 0 {
		of(&m.Checks[c])
		if stage := m.Checks[c].Stage; stage == "safety" || stage == "story" { // asked, not looked for with hands
			if len(s.parts) == 0 && s.place < 0 {
				return scene{place: -1, red: -1, blk: -1}
			}
		}
		if c := &m.Checks[c]; len(c.Options) > 0 && slices.ContainsFunc(m.Lamps, func(l appliance.Lamp) bool { return l.ID == c.Options[0].ID }) && st.Eye == protocol.EyeLamp {
			s.special, s.name, s.parts = "lamp", "lamp", nil
		}
		return s.settled(m)
	}
	if r := index(m.Repairs, func(r *appliance.Repair) bool { return r.ID == kind }); r >= 0 {
		s.repair(m, &m.Repairs[r], rest)
		return s.settled(m)
	}
	if v.Summary != nil && (st.ID == "decide" || st.ID == "match" || v.Ended != "") { // the verdict and the account are about a part
		for _, id := range v.Summary.Parts {
			if i := part(id); i >= 0 && len(s.parts) == 0 {
				s.parts = append(s.parts, i)
			}
		}
	}
	switch {
	case kind == "plate":
		s.special, s.name = "plate", "plate"
	case st.ID == "photo.before" || st.ID == "photo.after":
		s.special, s.name = "phone", "phone"
	case kind == "meter":
		s.special, s.name = "meter", "meter"
	case kind == "watch" || kind == "cycle":
		s.special, s.name = "burner", "burner"
	}
	return s.settled(m)
}

// repair is one step of a repair: its wire, else its part.
func (s *scene) repair(m *appliance.Model, r *appliance.Repair, n string) {
	part := r.Part
	if part < 0 {
		if i := index(m.Modes, func(x *appliance.Mode) bool { return &m.Repairs[x.Repair] == r }); i >= 0 {
			part = m.Modes[i].Part
		}
	}
	if part >= 0 && len(s.parts) == 0 {
		s.parts = []int{part}
	}
	for i := range r.Steps {
		if fmt.Sprint(i+1) != n {
			continue
		}
		if p := r.Steps[i].Places; len(p) > 0 {
			s.place = p[len(p)-1]
		}
		if r.Steps[i].Wire >= 0 {
			s.act = "pull"
			if r.Kind == "refit" || r.Kind == "tighten" {
				s.act = "push"
			}
		}
	}
}

// settled fills in the place from what the step is about.
func (s scene) settled(m *appliance.Model) scene {
	if s.place >= 0 {
		return s
	}
	switch {
	case s.special == "live-point":
	case s.red >= 0 && m.Points[s.red].Place >= 0:
		s.place = m.Points[s.red].Place
	case len(s.parts) > 0 && m.Parts[s.parts[0]].Place >= 0:
		s.place = m.Parts[s.parts[0]].Place
	}
	return s
}

// panels draws what a step is about.
func panels(w *words.Words, m *appliance.Model, v *protocol.View) []panel {
	s := find(m, v)
	var out []panel
	if id := placeSketch(m, s.place); id != "" {
		if id == "front" && len(s.parts) > 0 && s.special == "" { // on the outside of the furnace: there where the part itself is
			if own := sketchOf(&m.Parts[s.parts[0]]); regions[own].scene == "cabinet" {
				id = own
			}
		}
		text := m.Places[s.place].Name
		if m.Places[s.place].Where != "" {
			text += ": " + m.Places[s.place].Where
		}
		out = append(out, panel{"place", placePicture(id, s.way), words.Capital(text)})
	}
	if s.way == "" {
		if p := s.thing(w, m); p.svg != "" {
			out = append(out, p)
		}
		if s.name == "switch" { // the breaker is the second thing that cuts the power
			out = append(out, panel{"part", sketches["breaker"].svg, w.Term("picture.breaker")})
		}
	}
	if s.meter != "" {
		if svg := meterPicture(s.meter, s.over); svg != "" {
			text := w.Term("picture.dial", "function", w.Term("picture."+string(s.meter)))
			if !s.meter.Dial().Own {
				text += " " + w.Term(jacks(s.meter))
			}
			if s.over {
				text += " " + w.Term("picture.over")
			}
			out = append(out, panel{"meter", svg, text})
		}
	}
	return out
}

func jacks(f measure.Function) string {
	if f.Dial().Current {
		return "picture.jacks-current"
	}
	return "picture.jacks-volts"
}

// placeSketch is the drawing of a place, or of the nearest one around it that has one.
func placeSketch(m *appliance.Model, place int) string {
	for i := place; i >= 0; i = m.Places[i].Within {
		if id := m.Places[i].Sketch; id != "" {
			return id
		}
	}
	return ""
}

// sketchOf is the drawing of a part.
func sketchOf(p *appliance.Part) string {
	if p.Sketch != "" {
		head, _, _ := strings.Cut(p.Sketch, ".")
		return head
	}
	return ofKind[p.Kind]
}

// terminalOf finds the drawing and the terminal of a point: told by the file, else by its net.
func terminalOf(m *appliance.Model, point int, prefer []int) (id, port string) {
	p := &m.Points[point]
	if p.On != "" {
		id, port, _ = strings.Cut(p.On, ".")
		return id, port
	}
	if name, port, ok := strings.Cut(p.Net, "."); ok {
		if i := index(m.Parts, func(x *appliance.Part) bool { return x.ID == name }); i >= 0 {
			return sketchOf(&m.Parts[i]), port
		}
	}
	if p.Net == m.Earth {
		return "metal", "a"
	}
	best := -1
	port = ""
	for i := range m.Parts {
		for name, net := range m.Parts[i].Ports {
			if net != p.Net || port != "" && best == i && name > port {
				continue
			}
			if best < 0 || slices.Contains(prefer, i) && !slices.Contains(prefer, best) || best == i || m.Parts[i].Place == p.Place && m.Parts[best].Place != p.Place {
				best, port = i, name
			}
		}
	}
	if best < 0 {
		return "terminals", "a"
	}
	return sketchOf(&m.Parts[best]), port
}

// terminalAt is where a terminal lies in a sketch; one that the sketch does not name is its first or second.
func terminalAt(id, port string, second bool) terminal {
	at := sketches[id].at
	if t, ok := at[port]; ok {
		return t
	}
	if t, ok := at["b"]; ok && second {
		return t
	}
	if t, ok := at["a"]; ok {
		return t
	}
	side := -1.0
	if second {
		side = 1
	}
	return terminal{65 + side*14, 116, side}
}

// thing draws the part with what the hands do to it.
func (s *scene) thing(w *words.Words, m *appliance.Model) panel {
	p := panel{kind: "part"}
	switch s.special {
	case "":
	case "live-point":
		p.svg = sketches["outlet"].svg + leadAt(sketches["outlet"].at["hot"], true, false) + leadAt(sketches["outlet"].at["neutral"], false, false)
	case "switch-off":
		p.svg = sketches["switch"].svg + arrow(114, 44, 114, 112)
	case "switch-on":
		p.svg = sketches["switch"].svg + arrow(114, 112, 114, 44)
	case "knob-off", "knob-on":
		p.svg = sketches["knob"].svg + turn(58, 90, s.special == "knob-on")
	case "cock-shut":
		p.svg = sketches["gas-cock"].svg + turn(65, 101, true)
	case "cock-open":
		p.svg = sketches["gas-cock"].svg + turn(65, 101, false)
	case "call-on":
		p.svg = thermostatSketch(1)
	case "call-off":
		p.svg = thermostatSketch(-1)
	case "hold-door":
		p.svg = sketches["door-switch"].svg + arrow(65, 4, 65, 44)
	case "free-door":
		p.svg = sketches["door-switch"].svg + arrow(104, 50, 104, 10)
	case "meter":
		p.svg = meterPicture(measure.VoltsAC, false)
	default:
		p.svg = sketches[s.special].svg
	}
	if s.special != "" {
		p.text = w.Term("picture." + s.name)
		return p
	}
	if s.act == "series" {
		return s.series(w, m)
	}
	if s.red < 0 && s.blk < 0 {
		if len(s.parts) == 0 {
			return panel{}
		}
		part := &m.Parts[s.parts[0]]
		k := sketches[sketchOf(part)]
		p.svg, p.text = k.svg, words.Capital(part.Name)
		if part.Look != "" {
			p.text += ": " + part.Look
		}
		if s.act == "press" {
			p.svg += arrow(65, 2, 65, 32)
		}
		return p
	}
	return s.leads(w, m)
}

// series is the gap in a wire that the meter closes.
func (s *scene) series(w *words.Words, m *appliance.Model) panel {
	name, svg := "", ""
	if len(s.parts) > 0 {
		name = m.Parts[s.parts[0]].Name
		svg = fmt.Sprintf(`<g transform="translate(33 -6) scale(.5)" stroke-width="4">%s</g>`, sketches[sketchOf(&m.Parts[s.parts[0]])].svg)
	}
	svg += `<path d="M65 52v14h-24M4 74h22" stroke-width="5"/><path d="M4 74h20v0M41 66v14M26 66v16" stroke-width="5"/>` +
		leadAt(terminal{41, 82, 1}, true, true) + leadAt(terminal{26, 84, -1}, false, true)
	return panel{"part", svg, w.Term("picture.series", "part", name)}
}

// turn is an arrow around a middle, clockwise or not.
func turn(x, y float64, right bool) string {
	if right {
		return fmt.Sprintf(`<path d="M%.0f %.0fa34 34 0 0 1 60 -6" stroke-width="5"/><path d="M%.0f %.0fl-4 -17l19 4z" {s}/>`, x-30, y-14, x+34, y-12)
	}
	return fmt.Sprintf(`<path d="M%.0f %.0fa34 34 0 0 0 -60 -6" stroke-width="5"/><path d="M%.0f %.0fl4 -17l-19 4z" {s}/>`, x+30, y-14, x-34, y-12)
}

// leads draws the thing, or the two things, that the leads touch, or the wire that is moved.
func (s *scene) leads(w *words.Words, m *appliance.Model) panel {
	p := panel{kind: "part"}
	type end struct {
		id  string
		at  terminal
		red bool
	}
	var ends []end
	add := func(point int, red bool) {
		if point < 0 {
			return
		}
		id, port := terminalOf(m, point, s.parts)
		second := len(ends) > 0
		t := terminalAt(id, port, second)
		if second && ends[0].id == id && ends[0].at == t { // two points of one terminal
			t = terminalAt(id, "", true)
		}
		ends = append(ends, end{id, t, red})
	}
	add(s.red, true)
	add(s.blk, false)
	name := func(i int) string { return m.Points[i].Name }
	switch {
	case s.act == "pull" || s.act == "push":
		t := ends[0].at
		p.svg = sketches[ends[0].id].svg
		down := 1.0
		if t.side < -1 || t.side > 1 {
			down = -1
		}
		from, to := t.y+4*down, t.y+26*down
		p.svg += fmt.Sprintf(`<path d="M%.0f %.0fv%.0f" stroke-width="9" stroke-opacity=".5"/>`, t.x, from, 18*down)
		x := t.x + 16*t.side/max(1, t.side*t.side/2)
		if s.act == "pull" {
			p.svg += arrow(x, from-8*down, x, to+2*down)
		} else {
			p.svg += arrow(x, to+2*down, x, from-8*down)
		}
		p.text = words.Capital(name(s.red))
		if where := m.Points[s.red].Where; where != "" {
			p.text += ": " + where
		}
		return p
	case s.act == "join" && len(ends) == 2:
		p.svg = sketches["jumper"].svg
		p.text = w.Term("picture.join", "one", name(s.red), "other", name(s.blk))
		return p
	case s.act == "drain":
		k := sketches[ends[0].id]
		p.svg = k.svg + `<path d="M50 38V16h6l3 -6l6 12l6 -12l6 12l3 -6V16V38" stroke-width="3"/>`
		p.text = w.Term("picture.drain", "part", name(s.red))
		return p
	}
	if len(ends) == 2 && ends[0].id != ends[1].id { // two things, one above the other
		for i, e := range ends {
			const k = .62
			y := -14 + 74*float64(i)
			p.svg += fmt.Sprintf(`<g transform="translate(4 %.0f) scale(%.2f)" stroke-width="3">%s</g>`, y, k, sketches[e.id].svg)
			t := terminal{4 + e.at.x*k, y + e.at.y*k, 1}
			if e.at.side > 1 || e.at.side < -1 {
				t.side = 2
			}
			if y+e.at.y*k > 112 { // no room below
				t.side = 2.6
			}
			p.svg += leadAt(t, e.red, s.clip)
		}
	} else {
		p.svg = sketches[ends[0].id].svg
		for _, e := range ends {
			t := e.at
			if len(ends) == 2 && ends[0].at.side == ends[1].at.side { // from two sides
				t.side = ends[0].at.side
				if e.at.x > ends[0].at.x || e.at == ends[1].at && ends[1].at.x >= ends[0].at.x && !e.red {
					t.side = abs(t.side)
				} else {
					t.side = -abs(t.side)
				}
			}
			p.svg += leadAt(t, e.red, s.clip)
		}
	}
	if s.red >= 0 {
		p.text = w.Term("picture.red", "point", name(s.red))
	}
	if s.blk >= 0 {
		p.text = strings.TrimSpace(p.text + " " + w.Term("picture.black", "point", name(s.blk)))
	}
	return p
}

func abs(x float64) float64 { return max(x, -x) }
