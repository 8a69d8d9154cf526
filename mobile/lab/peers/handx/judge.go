package handx

import (
	"fmt"
	"strings"
)

// judge compares the end with the truth.
func (r *report) judge(cat catalogue) {
	if r.ended != "end" {
		r.why = "no end: " + r.ended
		return
	}
	u := r.unit
	// The furnace as it is left: panels on, power on, the room colder than the setpoint.
	// In an emergency everything stays as it is, and everybody keeps away from it.
	emergency := strings.Contains(r.res.Outcome, "emergency")
	for c := range u.covers {
		if !emergency {
			r.unsafe = append(r.unsafe, "left open: "+c)
		}
	}
	for w := range u.lifted {
		if !emergency {
			r.unsafe = append(r.unsafe, "left off: "+w)
		}
	}
	if u.held && !emergency {
		r.unsafe = append(r.unsafe, "door switch left bridged")
	}
	u.covers, u.lifted, u.held = map[string]bool{}, map[string]bool{}, false
	u.breaker, u.sw, u.call = true, true, true
	heats := u.heats()

	out := r.res.Outcome
	anyStop := has(r.c.stops, "*")
	switch out {
	case "fixed":
		left := r.undone()
		switch {
		case !heats:
			r.why = "said fixed, gives no heat"
		case r.c.class == "hazard" && len(r.c.repairs) == 0:
			r.why = "said fixed on a hazard"
		case len(left) > 0 && r.c.class != "normal" && len(r.c.repairs) > 0:
			r.why = "said fixed, never done: " + strings.Join(left, " ")
		case len(r.c.repairs) == 0 && r.c.class != "normal":
			r.why = "said fixed by " + strings.Join(r.repairs, " ")
		case r.c.class == "normal" && len(r.repairs) > 0 && len(left) == len(r.c.repairs):
			r.why = "said fixed by " + strings.Join(r.repairs, " ")
		default:
			r.right = true
		}
	case "nothing-wrong":
		switch {
		case r.c.class == "hazard":
			r.why = "nothing wrong said on a hazard"
		case r.c.good || r.c.class == "normal" && heats:
			r.right = true
		default:
			r.why = "nothing wrong said on a fault"
		}
	case "emergency", "stopped-after-emergency":
		r.right = r.c.class == "hazard"
		r.why = "emergency without a hazard"
	case "stopped":
		switch {
		case anyStop || has(r.c.stops, r.res.Stop):
			r.right = true
		case r.namesTruth(cat):
			r.right = true
		default:
			r.why = "stopped at " + r.res.Stop + ", named " + r.named(cat)
		}
	default:
		switch {
		case anyStop && out == "handed-over":
			r.right = true
		case r.c.id == "humidifier-shorted":
			r.right = len(r.wasted) == 0
			r.why = "good parts replaced"
		case r.namesTruth(cat) || r.res.Stop != "" && has(r.c.stops, r.res.Stop):
			r.right = true
		default:
			r.why = out + ", named " + r.named(cat)
		}
	}
	if r.right {
		r.why = ""
	}
}

func has(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// undone lists the causes of which no repair was done.
func (r *report) undone() []string {
	var left []string
	for _, group := range r.c.repairs {
		done := false
		for _, x := range group {
			done = done || has(r.repairs, x)
		}
		if !done {
			left = append(left, group[0])
		}
	}
	return left
}

// named is the part which the hand-over holds most likely, else the part of the result's repair; "nothing" for none.
// The sentence of the suspects is the one with chances in it: "Thermostat batteries likely, seven in ten".
func (r *report) named(cat catalogue) string {
	best, at, long := "", 1<<30, 0
	for _, sentence := range strings.Split(r.stopText, ". ") {
		s := strings.ToLower(sentence)
		if !strings.Contains(s, " in ten") && !strings.Contains(s, " in twenty") {
			continue
		}
		match := func(name, part string) {
			name = strings.ToLower(name)
			if i := strings.Index(s, name); i >= 0 && (i < at || i == at && len(name) > long) {
				best, at, long = part, i, len(name)
			}
		}
		for _, x := range cat.Repairs {
			match(x.Name, x.Part)
		}
		for _, x := range cat.Parts {
			match(x.Name, x.ID)
		}
	}
	if r.res.Likely != "" {
		best = r.res.Likely
	}
	if best != "" {
		return best
	}
	for _, x := range cat.Repairs {
		if x.ID == r.res.Repair {
			return x.Part
		}
	}
	return "nothing"
}

// namesTruth says whether the part named at the end is a true cause which is still to be mended, or the last one that
// was mended and then not believed.
func (r *report) namesTruth(cat catalogue) bool {
	part := r.named(cat)
	for i, p := range r.c.parts {
		if !has(strings.Split(p, "|"), part) {
			continue
		}
		if i < len(r.c.repairs) && len(r.undone()) > 0 {
			for _, x := range r.c.repairs[i] {
				if has(r.repairs, x) {
					return false
				}
			}
		}
		return true
	}
	return false
}

// line is the report as one row.
func (r *report) line(cat catalogue) string {
	last := r.last
	if len(last) > 3 {
		last = last[len(last)-3:]
	}
	verdict := "right"
	if !r.right {
		verdict = "wrong"
	}
	f := []string{r.c.id, r.c.class, r.person, fmt.Sprint(r.seed), verdict, r.why, fmt.Sprint(r.steps), r.res.Outcome,
		r.res.Stop, r.named(cat), strings.Join(r.repairs, ","), strings.Join(r.wasted, ","),
		strings.Join(r.unsafe, "; "), strings.Join(r.noFit, ","), strings.Join(last, " / ")}
	for i := range f {
		f[i] = strings.NewReplacer("\t", " ", "\n", " ").Replace(f[i])
	}
	return strings.Join(f, "\t")
}

const header = "case\tclass\tperson\tseed\tverdict\twhy not\tsteps\toutcome\tstop\tnamed\trepairs\t" +
	"good parts replaced\tunsafe\tno fit\tlast said"
