package oracle

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
)

// Habits are what a person does not do as asked; each is a chance at every occasion. The zero value is careful and able.
type Habits struct {
	Misread    float64 // a wrong digit, or the option beside the right one
	Skip       float64 // says done, does nothing
	Yes        float64 // says what is hoped for
	WrongPoint float64 // one lead on another point
	UnitSlip   float64 // milli for the unit, kilo for ohms
	DontKnow   float64
	CantReach  float64
	NoLive     bool // will not measure live
	NoMeter    bool
	QuitAt     int    // stops at this answer; 0: never
	Decide     string // fix-it when empty
}

// Person is somebody in front of a furnace, who does and answers what the guide asks.
type Person struct {
	F      *Furnace
	Habits Habits
	cat    *catalogued
	chance *rand.Rand
	last   meaning
	lied   bool // about the power
	said   int
	mended []string // parts that were worked on, "kind part"
	vain   []string // of them, where nothing was wrong
}

func (p *Person) errs(x float64) bool { return x > 0 && p.chance.Float64() < x }

func command(id string) meaning { return meaning{Kind: "command", ID: id} }
func choice(id string) meaning  { return meaning{Kind: "choice", ID: id} }

func number(x float64, unit, ac string) meaning {
	e := 0
	if unit != "" {
		for e > -2 && math.Abs(x)*math.Pow10(-e+1) < 6000 {
			e--
		}
	}
	return meaning{Kind: "reading", Reading: &reading{Value: &value{decimal{int64(math.Round(x * math.Pow10(-e))), e}, unit}, AC: ac}}
}

// reply does what the step asks and answers it. A meaning without a kind is silence.
func (p *Person) reply(v *view) (meaning, error) {
	p.said++
	m, err := p.answer(v)
	p.last = m
	return m, err
}

func (p *Person) answer(v *view) (meaning, error) {
	st := &v.Step
	if p.Habits.QuitAt > 0 && p.said == p.Habits.QuitAt {
		return command("finish"), nil
	}
	if v.State == "confirm" && st.Kind != "consent" {
		if offers(st.Answers, "right") {
			return choice("right"), nil
		}
		return p.last, nil
	}
	if i := slices.IndexFunc(p.cat.Checks, func(c checkInfo) bool { return c.ID == st.ID }); i >= 0 {
		if st.Part == "A" {
			return command("ready"), nil
		}
		return p.check(&p.cat.Checks[i], v), nil
	}
	head, rest, _ := strings.Cut(st.ID, ".")
	for i := range p.cat.Repairs {
		if r := &p.cat.Repairs[i]; r.ID == head {
			return p.repair(r, rest, st.Act), nil
		}
	}
	switch head {
	case "right-now":
		return choice("none"), nil
	case "alarm":
		return p.first(v), nil
	case "consent":
		if p.Habits.NoLive {
			return choice("other-way"), nil
		}
		return choice("go-live"), nil
	case "act":
		return p.act(rest, v)
	case "story":
		return meaning{Kind: "text", Text: p.story()}, nil
	case "plate":
		if p.errs(p.Habits.DontKnow) {
			return command("dont-know"), nil
		}
		if len(st.Keypad) == 0 {
			return meaning{Kind: "text", Text: "natural gas"}, nil
		}
		return number(map[string]float64{"input": 80000, "rise": 65, "static": 0.5}[rest], st.Keypad[0], ""), nil
	case "meter":
		switch rest {
		case "kind":
			if p.Habits.NoMeter {
				return choice("no-meter"), nil
			}
			return choice("plain-meter"), nil
		case "short":
			return number(0.2, "ohm", ""), nil
		}
	case "callout":
		return number(140, "money", ""), nil
	case "age":
		return meaning{Kind: "count", Text: "12"}, nil
	case "decide":
		if p.Habits.Decide != "" {
			return choice(p.Habits.Decide), nil
		}
		return choice("fix-it"), nil
	case "cycle":
		got := p.cycle()
		if !offers(st.Answers, got) && len(st.Answers) > 0 {
			got = st.Answers[0].ID // it runs, and no whole cycle is asked for yet
		}
		return choice(got), nil
	case "items":
		if len(p.left()) > 0 && !p.errs(p.Habits.Yes) {
			return choice("different"), nil
		}
		return choice("same"), nil
	}
	return p.first(v), nil
}

func offers(list []answer, id string) bool {
	return slices.ContainsFunc(list, func(a answer) bool { return a.ID == id })
}

// first is the first answer that the step offers.
func (p *Person) first(v *view) meaning {
	for _, a := range v.Step.Answers {
		if a.Kind == "choice" {
			return choice(a.ID)
		}
	}
	for _, a := range v.Step.Answers {
		if a.ID == "ready" || a.ID == "done" {
			return command(a.ID)
		}
	}
	return command("done")
}

func (p *Person) story() string {
	var names []string
	for n := range p.F.has {
		if catalogue[n].words != "" {
			names = append(names, n)
		}
	}
	slices.Sort(names)
	if len(names) == 0 {
		return "it is cold here"
	}
	return catalogue[names[0]].words
}

// check answers a question or a measurement.
func (p *Person) check(c *checkInfo, v *view) meaning {
	h := &p.Habits
	if c.Function == "look" || c.Function == "" {
		if c.Stage != "safety" && p.errs(h.DontKnow) {
			return command("dont-know")
		}
		got := p.F.look(c.ID, c.At, p.F.Calling && c.Call != "off", c.Options)
		if c.Stage != "safety" && got != "" && len(c.Options) > 1 {
			switch {
			case p.errs(h.Yes):
				got = c.Options[0]
			case p.errs(h.Misread):
				got = c.Options[(slices.Index(c.Options, got)+1)%len(c.Options)]
			}
		}
		switch {
		case got == "" || !slices.Contains(c.Options, got):
			return command("dont-know")
		case strings.Trim(got, "0123456789") == "":
			return meaning{Kind: "count", Text: got}
		}
		return choice(got)
	}
	if p.errs(h.CantReach) || (c.Function == "manometer" && h.DontKnow > 0) {
		return command("cant-reach")
	}
	k := *c
	if p.errs(h.WrongPoint) && c.RedNet != "" {
		k.RedNet = p.cat.Points[p.chance.IntN(len(p.cat.Points))].Net
	}
	x := p.F.measure(&k, p.F.Calling && c.Call != "off")
	switch {
	case x.none:
		return command("cant-reach")
	case x.over:
		return meaning{Kind: "reading", Reading: &reading{State: "over"}}
	}
	kind := ""
	switch c.Function {
	case "volts-ac", "amps-ac":
		kind = "ac"
	case "microamps-dc":
		kind = "dc"
	}
	n, u := x.value, c.Unit
	if p.errs(h.UnitSlip) {
		switch u {
		case "V":
			u = "mV"
		case "ohm":
			u = "kohm"
		}
	}
	m := number(n, u, kind)
	if d := &m.Reading.Value.D; p.errs(h.Misread) && d.M != 0 {
		d.M += int64(math.Pow10(p.chance.IntN(3))) * int64(1-2*p.chance.IntN(2))
		if d.M < 0 {
			d.M = -d.M
		}
	}
	return m
}

// repair does one step of a repair.
func (p *Person) repair(r *repairInfo, n, act string) meaning {
	if p.errs(p.Habits.Skip / 3) {
		return choice("done")
	}
	if strings.Contains(act, "new board fuse") {
		p.F.NewFuse()
	}
	if n == fmt.Sprint(max(len(r.Steps), 1)) {
		what := r.Kind + " " + r.Part
		p.mended = append(p.mended, what)
		if !p.F.Mend(r.Part, r.Kind) {
			p.vain = append(p.vain, what)
		}
	}
	return choice("done")
}

// act changes the site as asked.
func (p *Person) act(what string, v *view) (meaning, error) {
	f, st := p.F, &v.Step
	kind, place, _ := strings.Cut(what, ".")
	if strings.HasPrefix(kind, "prove-") {
		return p.prove(kind, st.Points), nil
	}
	if p.errs(p.Habits.CantReach) && kind == "open-cover" {
		return command("cant-reach"), nil
	}
	skips := p.errs(p.Habits.Skip)
	if kind == "power-off" {
		p.lied = skips
	}
	if skips && (kind == "power-off" || kind == "lift-wire" || kind == "place-leads" || kind == "call-off" || kind == "call-on") {
		return p.first(v), nil
	}
	switch kind {
	case "power-off":
		f.Switch, f.Breaker = false, false
	case "power-on":
		f.Switch, f.Breaker = true, true
		delete(f.has, "switched-off")
		delete(f.has, "tripped")
		f.PowerCycle()
	case "call-on":
		if !f.Calling || strings.Contains(st.Act, "down") {
			f.NewStart()
		}
		f.Calling = true
		for _, x := range []string{"cool", "off", "low", "schedule"} {
			delete(f.has, x)
		}
	case "call-off":
		f.Calling = false
		f.NewStart()
	case "open-cover":
		f.Open[place] = true
	case "close-cover":
		delete(f.Open, place)
		if place == "lower-bay" {
			delete(f.has, "ajar")
		}
	case "hold-door":
		f.Held = true
	case "free-door":
		f.Held = false
	case "lift-wire", "refit-wire":
		if len(st.Points) != 1 {
			return meaning{}, fmt.Errorf("examine: %s names no point", st.ID)
		}
		net := p.point(st.Points[0]).Net
		if kind == "lift-wire" {
			f.Lifted[net] = true
		} else {
			delete(f.Lifted, net)
		}
	case "meter-in", "meter-out", "jack-out", "place-leads", "note-reset", "jumper-in", "jumper-out", "gas-shut", "gas-open", "discharge":
	default:
		return meaning{}, fmt.Errorf("examine: what is %q?", st.ID)
	}
	return p.first(v), nil
}

// prove reads the meter for live, dead, live.
func (p *Person) prove(kind string, points []string) meaning {
	f := p.F
	if kind == "prove-live" || kind == "prove-again" {
		if f.has["dark"] {
			return number(0, "V", "ac")
		}
		return number(f.unit.line, "V", "ac")
	}
	if kind == "prove-empty" { // a resistor has been across it
		return number(0, "V", "dc")
	}
	if len(points) != 2 {
		return command("dont-know")
	}
	a, b := f.net(p.point(points[0]).Net), f.net(p.point(points[1]).Net)
	v := f.volts(now{out: map[string]bool{}}, edge{a, b, 10e6})
	return number(abs(v[a]-v[b]), "V", "ac")
}

func (p *Person) point(id string) pointInfo {
	for _, x := range p.cat.Points {
		if x.ID == id {
			return x
		}
	}
	return pointInfo{}
}

// cycle watches one whole cycle.
func (p *Person) cycle() string {
	f := p.F
	if !f.Live() {
		return "no-start"
	}
	f.NewStart()
	ms := f.start(!f.statBlind())
	m := &ms[len(ms)-1]
	switch {
	case m.step == "steady" && !m.s.limit && m.flame == "good":
		return "full-cycle"
	case m.step == "rest" || m.step == "call" || m.code == "off":
		return "no-start"
	case m.flame != "none":
		return "stops-early"
	}
	return "runs-no-heat"
}

// left is what is not as it should be left, in truth.
func (p *Person) left() []string {
	var out []string
	for x := range p.F.Open {
		out = append(out, "open: "+x)
	}
	for x := range p.F.Lifted {
		out = append(out, "off: "+x)
	}
	if p.F.Held {
		out = append(out, "door switch held")
	}
	slices.Sort(out)
	return out
}
