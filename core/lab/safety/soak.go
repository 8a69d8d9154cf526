package safety

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"

	"readback/core/appliance"
	"readback/core/job"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
)

// decimal writes a number with four significant places, as a display would.
func decimal(x float64) string {
	s := strconv.FormatFloat(x, 'g', 4, 64)
	if strings.Contains(s, "e") {
		s = strconv.FormatFloat(x, 'f', 0, 64)
	}
	return s
}

func base(u string) float64 {
	if x, ok := unit.Lookup(u); ok {
		return x.Scale
	}
	return 1
}

// anyone advises anything that is allowed: a check that is not blocked, or a verdict, by what was found so far and the seed.
type anyone struct {
	model *appliance.Model
	seed  uint64
}

func (a anyone) Advise(q job.Query) job.Advice {
	h := fnv.New64a()
	fmt.Fprint(h, a.seed, len(q.Mended), len(q.Cycled), q.Blocked, q.Stages)
	for _, f := range q.Findings {
		fmt.Fprint(h, f.Check, f.Option, f.Unknown)
	}
	s := h.Sum64()
	r := rand.New(rand.NewPCG(s, a.seed))
	out := job.Advice{Check: -1, Repair: -1}
	asked := map[int]bool{}
	for _, f := range q.Findings {
		asked[f.Check] = true
	}
	var free []int
	for i := range a.model.Checks {
		c := &a.model.Checks[i]
		if slices.Contains(q.Stages, c.Stage) && !slices.Contains(q.Blocked, i) && (!asked[i] || c.Repeat && r.IntN(8) == 0) {
			free = append(free, i)
		}
	}
	// Both questions of one state, that for a check and that for a verdict, must agree about the verdict.
	v := fnv.New64a()
	fmt.Fprint(v, a.seed, len(q.Mended), len(q.Findings))
	if w := rand.New(rand.NewPCG(v.Sum64(), 3)); len(q.Findings) > 8 && w.IntN(9) == 0 {
		out.Verdict, out.P = true, 0.9
		out.Repair = w.IntN(len(a.model.Repairs)+1) - 1
		return out
	}
	if len(free) > 0 {
		out.Check = free[r.IntN(len(free))]
		out.Proof = r.IntN(4) == 0
	}
	return out
}

// Job is one job of a random person, by its seed.
type Job struct {
	Seed    uint64
	Steps   int
	Outcome string
	Broken  []Violation
	Gates   int // gates that failed in it
}

// Play leads one random person through one job. The last events are kept for a report when trace is set.
func Play(model *appliance.Model, lex utterance.Lexicon, words *job.Words, seed uint64, trace func(format string, args ...any)) (out Job) {
	out.Seed = seed
	r := rand.New(rand.NewPCG(seed, 0x5afe))
	h := newHouse(r)
	b := NewBook(model)
	b.house = h
	defer func() {
		if x := recover(); x != nil {
			stack := strings.Split(string(debug.Stack()), "\n")
			at := ""
			for _, l := range stack {
				if strings.Contains(l, "core/job/") {
					at = strings.TrimSpace(l)
					break
				}
			}
			out.Broken = append(b.Broken, Violation{"nothing panics", fmt.Sprint(x, " at ", at)})
		}
	}()
	m, err := job.New(model, anyone{model, seed}, lex, words, job.Options{})
	if err != nil {
		out.Broken = append(out.Broken, Violation{"a job can begin", err.Error()})
		return out
	}
	p := newPerson(r, model, h)
	now, wake := int64(1_800_000_000_000), int64(0)
	view := &protocol.View{}
	gate := ""
	step := func(ev protocol.Event, after int64) bool {
		switch after {
		case -1:
			if wake > now {
				now = wake
			} else {
				now += 30_000
			}
		case -2:
			now = max(now, view.Step.Until) + 1000
		default:
			now += after
		}
		ev.At = now
		if trace != nil {
			trace("%s | %s %s", view.Step.ID, ev.Type, describe(&ev))
		}
		effects, err := m.Step(ev)
		if err != nil {
			b.fail("every event is taken", "%s: %v", ev.Type, err)
			return false
		}
		wake = 0
		for i := range effects {
			switch effects[i].Type {
			case protocol.DoShow:
				view = effects[i].View
			case protocol.DoWake:
				wake = effects[i].At
			case protocol.DoEnd:
				out.Outcome = effects[i].Text
			case protocol.DoSay:
				if trace != nil {
					trace("    R [%s] %s", effects[i].Level, effects[i].Text)
				}
			}
		}
		now = max(now, ev.At)
		n := len(b.Broken)
		b.Note(&ev, effects)
		if trace != nil {
			for _, x := range b.Broken[n:] {
				trace("  ! %s", x)
			}
		}
		if b.gate != "" && b.gate != gate {
			out.Gates++
		}
		gate = b.gate
		out.Steps++
		return view.State != "ended"
	}
	if !step(protocol.Event{Type: protocol.EvBegin, Begin: &protocol.Begin{Job: "j", Appliance: model.ID, Lang: "en", Voice: true}}, 0) {
		out.Broken = b.Broken
		return out
	}
	for range 40 + r.IntN(160) {
		ev, after := p.next(view)
		if !step(ev, after) {
			out.Broken = b.Broken
			return out
		}
	}
	// Whatever happened: somebody who now helps gets to an end.
	p.good, p.quiet, p.well = 1, 0, 1
	h.meterEnd, h.dead = 0, false
	for i := range 250 {
		ev := p.helpful(view)
		if i%50 == 0 && view.State == "ask" {
			ev = meaning("touch", command("finish"))
		}
		if view.State == "emergency" && i%3 == 2 {
			ev = meaning("touch", choice("safe-outside"))
		}
		after := int64(2000)
		if view.Step.Until > 0 {
			after = -2
		}
		if !step(ev, after) {
			out.Broken = b.Broken
			return out
		}
	}
	b.fail("every job ends", "at %s, %s", view.Step.ID, view.State)
	out.Broken = b.Broken
	return out
}

// describe writes an event in a line.
func describe(ev *protocol.Event) string {
	if ev.Said == nil {
		if ev.Device != nil {
			return ev.Device.Kind
		}
		return ""
	}
	var out []string
	for _, x := range ev.Said.Meanings {
		s := string(x.Kind) + " " + x.ID + x.Text
		if x.Reading != nil {
			s += x.Reading.Value.String() + string(x.Reading.State)
		}
		if x.Doubt {
			s += " (doubt)"
		}
		if x.Repair {
			s += " (repair)"
		}
		out = append(out, s)
	}
	return ev.Said.Source + ": " + strings.Join(out, " / ")
}
