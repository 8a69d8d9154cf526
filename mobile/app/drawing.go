package app

import (
	"cmp"
	"slices"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/mobile/drawing"
)

// DrawAll draws a whole circuit.
func DrawAll(lang, id string) (string, error) {
	l, err := load(lang)
	if err != nil {
		return "", err
	}
	m, err := l.model(id)
	if err != nil {
		return "", err
	}
	return drawing.Draw(l.words, m, drawing.Marks{}), nil
}

// drawing is a picture for the step on the page: "step" what the hands do, "large" the same with its words, "near" the part of the
// circuit it is about, "all" the circuit.
func (h *Hub) drawing(kind string) (any, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job == nil {
		return nil, errNoDrawing
	}
	l, err := load(h.cfg.Lang)
	if err != nil {
		return nil, err
	}
	m, err := l.model(h.job.appliance)
	if err != nil {
		return nil, errNoDrawing
	}
	v := h.job.machine.View()
	if v == nil {
		return nil, errNoDrawing
	}
	svg := ""
	if kind == "step" || kind == "large" {
		svg = drawing.Picture(l.words, m, v, kind == "large")
	} else {
		k := drawing.Marks{Parts: v.Step.Parts, Suspects: map[string]float64{}, Lifted: v.Site.Wires, Only: kind != "all"}
		if len(v.Step.Points) > 0 {
			k.Red = v.Step.Points[0]
		}
		if len(v.Step.Points) > 1 {
			k.Black = v.Step.Points[1]
		}
		for _, s := range v.Suspects {
			k.Suspects[s.Part] = s.P
		}
		e := l.studies[slices.Index(l.models, m)].engine.Load()
		if e == nil {
			go func() { _, _ = l.study(m) }() // the next drawing has it; its error is told where advice is needed
		} else {
			k.Energised = energised(e, v)
			if f, ok := h.job.machine.machine.(interface{ Findings() []job.Finding }); ok {
				k.Good = passed(e, f.Findings(), k.Suspects)
			}
		}
		svg = drawing.Draw(l.words, m, k)
	}
	if svg == "" {
		return nil, errNoDrawing
	}
	return blob{kinds[".svg"], []byte(svg)}, nil
}

// liveVolts is what counts as voltage on the drawing: above what a current drops in a return wire, below any supply.
const (
	liveVolts  = 2.0   // of an appliance with mains or a transformer
	liveSmall  = 0.002 // of one that runs on a thermocouple's or thermopile's millivolts
	longEnough = 3600  // s after which every start has settled
)

// energised lists the nets that carry voltage against earth now, in an appliance without fault with power, call, covers and wires as the
// site has them. Unknown power counts as on. The step's own moment of the sequence is taken where it has one.
func energised(e *appliance.Engine, v *protocol.View) map[string]bool {
	m := e.Model()
	p := e.Plant(nil)
	p.SetPower(v.Site.Power != "off" && v.Site.Power != "proved")
	p.SetCall(v.Site.Call == "on")
	for i := range m.Places {
		if slices.Contains(v.Site.Covers, m.Places[i].Name) {
			p.SetCover(i, true)
		}
	}
	p.Hold(v.Site.Door == "held")
	for i := range m.Points {
		if slices.Contains(v.Site.Wires, m.Points[i].Name) {
			p.Lift(i)
		}
	}
	wait := float64(longEnough)
	if c := slices.IndexFunc(m.Checks, func(c appliance.Check) bool { return c.ID == v.Step.ID }); c >= 0 && m.Checks[c].At != "" {
		if at, ok := p.When(m.Checks[c].At); ok {
			wait = at + 0.5
		}
	}
	p.Advance(wait)
	earth := cmp.Or(m.Earth, m.ReturnNet())
	limit := liveSmall
	if m.Mains {
		limit = liveVolts
	}
	out := map[string]bool{}
	for i := range m.Parts {
		for _, net := range m.Parts[i].Ports {
			if out[net] || net == earth {
				continue
			}
			for _, f := range []measure.Function{measure.VoltsAC, measure.VoltsDC} {
				if o, err := p.Read(f, net, earth); err == nil && (o.Value > limit || o.Value < -limit) {
					out[net] = true
				}
			}
		}
	}
	return out
}

// passed lists the parts that every check made of them found as it is in an appliance without fault. A part that is still suspected
// is not among them.
func passed(e *appliance.Engine, findings []job.Finding, suspects map[string]float64) []string {
	m := e.Model()
	good := map[int]bool{}
	for _, f := range findings {
		c := &m.Checks[f.Check]
		if c.Part < 0 || f.Unknown || f.Unsure {
			continue
		}
		healthy := e.Predict(nil, f.Check)
		ok := f.Reading == nil && f.Option == healthy.Option
		if f.Reading != nil && c.Limit != nil {
			ok = measure.Judge(measure.Modest(), c.Function, *f.Reading, *c.Limit).Verdict == measure.Pass
		}
		if was, seen := good[c.Part]; !seen || was {
			good[c.Part] = ok
		}
	}
	var out []string
	for i := range m.Parts {
		if good[i] && suspects[m.Parts[i].ID] < 0.05 {
			out = append(out, m.Parts[i].ID)
		}
	}
	return out
}
