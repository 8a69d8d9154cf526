package oracle

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
)

// Case is a furnace with what is wrong, and a person.
type Case struct {
	Name         string
	Faults       []string
	Intermittent float64 // chance that a fault that comes and goes is there in a power cycle
	Habits       Habits
	Seed         uint64
	Strict       bool
	Alarm        string // emergency class said at answer AlarmAt
	AlarmAt      int
}

// Report is what came of a job.
type Report struct {
	Case
	Result    outcome
	Ended     bool
	Right     bool
	Why       []string // what was not right
	Forbidden []string // what the guide must never do
	Silly     []string // asked twice, needless
	Checks    int      // looks and measurements until the verdict
	Cycles    int      // times the power was switched off
	Answers   int
	Vain      []string // repairs of what was good
	Talk      []string // the dialogue
}

const maxAnswers = 500

// Play leads one job to its end.
func (c Case) Play(program string) (*Report, error) {
	l, err := dial(program)
	if err != nil {
		return nil, err
	}
	defer l.close()
	f := New(c.Seed+1, c.Intermittent, c.Faults...)
	f.Strict, f.wiring = c.Strict, l.cat.Parts
	p := &Person{F: f, Habits: c.Habits, cat: &l.cat, chance: rand.New(rand.NewPCG(c.Seed+5, 3))}
	r := &Report{Case: c}
	w := watch{r: r, p: p, cat: &l.cat, asked: map[string]int{}}
	var v *view
	hear := func(effects []effect) {
		for _, e := range effects {
			switch e.Type {
			case "say":
				r.Talk = append(r.Talk, e.Text)
				w.heard(e)
			case "show":
				v = e.View
			case "end":
				r.Ended = true
				if e.Result != nil {
					r.Result = *e.Result
				}
			}
		}
	}
	effects, err := l.send(0, map[string]any{"type": "begin"})
	if err != nil {
		return r, err
	}
	hear(effects)
	for r.Answers = 0; r.Answers < maxAnswers && !r.Ended; r.Answers++ {
		if v == nil {
			return r, fmt.Errorf("examine: nothing is shown")
		}
		if c.Alarm != "" && r.Answers == c.AlarmAt {
			r.Talk = append(r.Talk, "\t\t\t\t"+strings.ToUpper(c.Alarm))
			if effects, err = l.say(3000, meaning{Kind: "emergency", ID: c.Alarm}); err != nil {
				return r, err
			}
			hear(effects)
			continue
		}
		w.asks(v)
		id := v.Step.ID
		m, err := p.reply(v)
		if err != nil {
			return r, err
		}
		var sus []string
		for _, x := range v.Suspects {
			sus = append(sus, fmt.Sprintf("%s %.2f", x.Part, x.P))
		}
		r.Talk = append(r.Talk, fmt.Sprintf("\t\t\t\t[%s] %s \t\t{%s}", id, m.words(), strings.Join(sus, ", ")))
		w.answered(v, m)
		if effects, err = l.say(15000, m); err != nil {
			return r, err
		}
		hear(effects)
	}
	r.Vain = p.vain
	r.judge(f, p)
	return r, nil
}

// judge holds what came out against what was wrong.
func (r *Report) judge(f *Furnace, p *Person) {
	note := func(format string, args ...any) { r.Why = append(r.Why, fmt.Sprintf(format, args...)) }
	res := &r.Result
	emergency := r.Alarm != ""
	if !r.Ended {
		note("it did not end")
		return
	}
	var stops []string
	fixable, good := 0, len(r.Faults) == 0
	for _, x := range r.Faults {
		t := catalogue[x]
		stops = append(stops, t.stop...)
		if len(t.parts) > 0 {
			fixable++
		}
		emergency = emergency || slices.Contains(t.stop, "emergency")
		good = good || x == "setback" || x == "cold-snap"
	}
	if len(p.left()) > 0 && res.Outcome != "emergency" && res.Outcome != "left-open" {
		r.Forbidden = append(r.Forbidden, "left: "+strings.Join(p.left(), ", "))
	}
	for _, x := range r.Vain {
		if strings.HasPrefix(x, "replace ") {
			note("in vain: %s", x)
		}
	}
	able := r.Habits == Habits{} || r.Habits.Misread+r.Habits.Skip+r.Habits.Yes+r.Habits.WrongPoint+r.Habits.UnitSlip > 0 && !r.Habits.NoLive && r.Habits.QuitAt == 0
	heats := f.heats()
	switch {
	case emergency:
		if res.Outcome != "emergency" && res.Outcome != "stopped-after-emergency" {
			note("emergency ended %q", res.Outcome)
		}
	case slices.Contains(stops, res.Stop) && res.Stop != "":
	case res.Stop != "" && len(stops) == 0:
		note("stopped at %q", res.Stop)
	case res.Stop != "":
		note("stopped at %q, not at %s", res.Stop, strings.Join(stops, " or "))
	case good && (res.Outcome == "nothing-wrong" || res.Repair == "explain-normal"):
	case good && fixable == 0:
		note("a good furnace: %s, repair %q", res.Outcome, res.Repair)
	case res.Outcome == "fixed":
		if !heats {
			note("called fixed, but it does not heat: %s", strings.Join(f.Faults(), ", "))
		}
	case res.Outcome == "nothing-wrong":
		if !heats || able {
			note("called good, but: %s", strings.Join(f.Faults(), ", "))
		}
	case !able: // an honest end will do
	default:
		note("%s, repair %q; wrong is: %s", res.Outcome, res.Repair, strings.Join(f.Faults(), ", "))
	}
	r.Right = len(r.Why) == 0
}

// Faults lists what is wrong now.
func (f *Furnace) Faults() []string {
	var out []string
	for x := range f.has {
		out = append(out, x)
	}
	if !f.fuse {
		out = append(out, "fuse blown")
	}
	slices.Sort(out)
	return out
}

// watch looks for what must not be asked.
type watch struct {
	r       *Report
	p       *Person
	cat     *catalogued
	asked   map[string]int
	caution string // last caution said, with its level
	consent int    // answer number of the last go-live
	doubt   bool   // the guide has just said that an answer does not fit
	prev    string
}

func (w *watch) heard(e effect) {
	text := strings.ToLower(e.Text)
	if e.Level == "danger" || e.Level == "warning" || e.Level == "caution" {
		w.caution = e.Level
	}
	if strings.Contains(text, "does not fit") || strings.Contains(text, "that was not all of it") {
		w.doubt = true
	}
	for _, bad := range []string{"tape the door", "bypass the", "jump the", "jumper across the", "leave the jumper", "hold the switch down", "remove the limit"} {
		if strings.Contains(text, bad) {
			w.r.Forbidden = append(w.r.Forbidden, "said: "+e.Text)
		}
	}
}

// asks looks at a step before it is answered.
func (w *watch) asks(v *view) {
	f, st := w.p.F, &v.Step
	bad := func(format string, args ...any) { w.r.Forbidden = append(w.r.Forbidden, fmt.Sprintf(format, args...)) }
	live := f.Switch && f.Breaker && !f.has["dark"] && !w.p.lied
	if st.ID != w.prev {
		w.prev = st.ID
		if st.ID == "act.power-off" {
			w.r.Cycles++
		}
		if i := slices.IndexFunc(w.cat.Checks, func(c checkInfo) bool { return c.ID == st.ID }); i >= 0 {
			c := &w.cat.Checks[i]
			if c.Stage != "restart" && c.Stage != "safety" && v.StageNo < 13 {
				if w.asked[st.ID]++; w.asked[st.ID] > 1 && !w.doubt {
					w.r.Silly = append(w.r.Silly, "asked again: "+st.ID)
				}
			}
			w.doubt = false
			if v.StageNo >= 3 && v.StageNo < 10 {
				w.r.Checks++
			}
			dead := c.HandsIn || c.Function == "ohms" || c.Function == "capacitance" || c.Function == "continuity"
			if dead && live {
				bad("%s with the power on", c.ID)
			}
			if c.Hazard == "mains" && c.Power == "on" && w.caution != "danger" {
				bad("%s with no danger said", c.ID)
			}
			if (c.Hazard == "mains") && c.Power == "on" && w.r.Answers-w.consent > 12 {
				bad("%s without consent", c.ID)
			}
		}
	}
	head, _, _ := strings.Cut(st.ID, ".")
	for i := range w.cat.Repairs {
		if r := &w.cat.Repairs[i]; r.ID == head && len(st.Points) > 0 && live {
			bad("%s moves a wire with the power on", st.ID)
		}
	}
	switch kind := strings.TrimPrefix(st.ID, "act."); {
	case strings.HasPrefix(kind, "lift-wire"), strings.HasPrefix(kind, "refit-wire"), strings.HasPrefix(kind, "meter-"), strings.HasPrefix(kind, "jumper-"):
		if live {
			bad("%s with the power on", st.ID)
		}
		if strings.HasPrefix(kind, "jumper-in") {
			bad("a jumper: %s", st.Act)
		}
	case kind == "power-on" && len(f.Lifted) > 0:
		bad("power on with a wire off")
	case kind == "power-on" && f.Open["lower-bay"] && !f.Held:
		bad("power on with the door open")
	}
	if head == "cycle" && len(f.Open) > 0 && !w.skipped() {
		bad("a cycle with covers off: %v", w.p.left())
	}
}

func (w *watch) skipped() bool { return w.p.Habits.Skip > 0 }

func (w *watch) answered(v *view, m meaning) {
	if v.Step.Kind == "consent" && m.ID == "go-live" {
		w.consent = w.r.Answers
	}
}

// String tells a report in one line.
func (r *Report) String() string {
	word := "right"
	if !r.Right {
		word = "WRONG"
	}
	s := fmt.Sprintf("%-26s %s %s", r.Name, word, r.Result.Outcome)
	for _, x := range []string{r.Result.Repair, strings.Join(r.Result.Mended, "+"), r.Result.Stop} {
		if x != "" {
			s += " " + x
		}
	}
	s += fmt.Sprintf("; %d checks, %d times off, %d answers", r.Checks, r.Cycles, r.Answers)
	for _, x := range [][]string{r.Why, r.Forbidden, r.Silly} {
		if len(x) > 0 {
			s += "; " + strings.Join(x, ", ")
		}
	}
	return s
}
