package handy

import (
	"encoding/json"
	"fmt"
	"math/rand"
	"strings"
)

// job is one talk of one person about one unit.
type job struct {
	c           *client
	u           unit
	p           person
	s           situation
	rng         *rand.Rand
	at          int64
	log         []string
	steps       int
	tries       int
	lastKey     string
	repairs     map[string]bool
	repair      []string // ids of repairs carried out on the unit, in order
	good        []string // repairs of parts that were good
	danger      []string // what the examiner's own safety rules saw
	unknown     map[string]int
	fixing      string
	again       map[string]int
	noMeter     bool
	said        []string
	raw         string
	meant       string // the answer last meant, "" for a number
	top         string // the strongest suspect on the screen
	lastReading map[string]any
}

// start of every talk: a fixed moment, so that a job is the same each time.
const startOfTalk = int64(1795000000000)

func (j *job) note(format string, a ...any) { j.log = append(j.log, fmt.Sprintf(format, a...)) }

func choice(kind, id string) map[string]any {
	return map[string]any{"source": "line", "meanings": []any{map[string]any{"kind": kind, "id": id}}}
}

// number gives a reading and keeps it, for when it is asked once more.
func (j *job) number(s shown) map[string]any {
	j.meant = ""
	j.lastReading = reading(s)
	return j.lastReading
}

func reading(s shown) map[string]any {
	r := map[string]any{}
	if s.over {
		r["state"] = "over"
	} else {
		r["value"] = map[string]any{"d": map[string]any{"m": s.mant, "e": s.exp}, "u": s.unit}
		if s.ac != "" {
			r["ac"] = s.ac
		}
	}
	return map[string]any{"source": "line", "meanings": []any{map[string]any{"kind": "reading", "reading": r}}}
}

func words(t string) map[string]any { return map[string]any{"source": "line", "text": t} }

// run talks until the end effect.
func (j *job) run() (string, error) {
	j.at = startOfTalk
	if _, err := j.c.send(map[string]any{"type": "tick", "at": j.at}); err != nil {
		return "", err
	}
	effects, err := j.c.read()
	if err != nil {
		return "", err
	}
	var v *view
	var wake int64
	for j.steps < 260 {
		refused := false
		for _, e := range effects {
			switch e.Type {
			case "say":
				j.note("GUIDE %s", e.Text)
				j.said = append(j.said, e.Text)
			case "show":
				v = e.View
				if len(v.Suspects) > 0 {
					j.top = v.Suspects[0].Part
				}
			case "wake":
				wake = e.At
			case "end":
				j.raw = string(e.Result)
				j.note("END %s", j.raw)
				return j.raw, nil
			case "refused", "trouble":
				refused = refused || e.Type == "refused"
				j.note("%s %s", strings.ToUpper(e.Type), e.Text)
			}
		}
		if v == nil {
			return "", fmt.Errorf("nothing shown")
		}
		if v.State == "ended" {
			return j.raw, nil
		}
		var event map[string]any
		if v.Step == nil || (len(v.Step.Answers) == 0 && len(v.Step.Keypad) == 0) {
			j.at = max(j.at+1000, wake)
			j.note("(waits, state %s)", v.State)
			event = map[string]any{"type": "tick", "at": j.at}
		} else {
			if refused && j.tries < 2 {
				// What the program will not take at all is said once more another way, then passed over.
				j.tries = 2
			}
			said := j.answer(v)
			j.at += int64(6000 + j.rng.Intn(9000))
			b, _ := json.Marshal(said)
			t := string(b)
			if w, ok := said["text"]; ok {
				t = fmt.Sprintf("%q", w)
			} else {
				t = strings.TrimPrefix(t, `{"meanings":[`)
			}
			j.note("  [%s %s%s] PERSON %s   {%s}", v.State, v.Step.ID, v.Step.Part, t, j.u.state())
			event = map[string]any{"type": "said", "at": j.at, "said": said}
		}
		j.steps++
		effects, err = j.c.send(event)
		if err != nil {
			return "", fmt.Errorf("step %d: %w", j.steps, err)
		}
	}
	return "", nil
}

// say words a choice in the person's own manner.
func (j *job) say(st *step, id string) map[string]any {
	j.meant = id
	if st.kindOf(id) == "choice" || id == "dont-know" {
		list := reworded[id]
		if short := actWords[id]; st.Kind == "act" {
			list = short
		}
		if list != nil && j.tries == 0 && j.rng.Float64() < j.p.words {
			if j.p.hasty && st.Kind == "act" {
				return words([]string{"yeah", "done", "okay", "yep", "fine"}[j.rng.Intn(5)])
			}
			return words(list[j.rng.Intn(len(list))])
		}
	}
	return choice(st.kindOf(id), id)
}

func (j *job) command(id string) map[string]any { return choice("command", id) }

// answer decides what the person says to the step on the screen.
func (j *job) answer(v *view) map[string]any {
	st := v.Step
	key := v.State + st.ID + st.Part + st.Act + st.Where
	if key == j.lastKey && (v.Heard == nil || v.Heard.Taken == "") {
		j.tries++
	} else if key != j.lastKey || j.tries < 2 {
		j.tries = 0
	} else {
		j.tries++
	}
	if key == j.lastKey {
		j.again[key]++
	} else {
		j.again[key] = 0
	}
	j.lastKey = key
	if j.tries >= 3 || j.again[key] > 10 {
		for _, id := range []string{"dont-know", "cant-reach"} {
			if st.has(id) && j.tries%2 == 1 {
				return j.command(id)
			}
		}
		return j.command([]string{"skip", "cant-reach", "dont-know"}[j.tries%3])
	}
	if j.tries == 0 && v.State == "ask" {
		if j.rng.Float64() < j.p.repeat {
			return words([]string{"say that again", "repeat", "what was that", "again please"}[j.rng.Intn(4)])
		}
		if j.rng.Float64() < j.p.why {
			return words("why")
		}
	}
	if st.has("leave-now") {
		// Asked back after a word that sounded like an alarm: the person says how it is.
		for _, id := range []string{"odour", "alarm", "people"} {
			if a := j.u.look(id); a == "some" || a == "sounding" || a == "feeling-ill" {
				return choice("choice", "leave-now")
			}
		}
		j.unknown["false alarm asked back"]++
		for _, id := range []string{"none", "no", "different"} {
			if st.has(id) {
				return choice("choice", id)
			}
		}
		return choice("choice", "none")
	}
	if v.State == "confirm" && !st.has("go-live") {
		return j.confirm(v)
	}
	if st.has("go-live") {
		j.watchConsent(st)
		if j.p.fright || j.rng.Float64() < j.p.refuse {
			return choice("choice", "other-way")
		}
		return choice("choice", "go-live")
	}
	switch {
	case strings.HasPrefix(st.ID, "act."):
		return j.act(v)
	case j.repairStep(st.ID) != "":
		return j.doRepair(v)
	case strings.HasPrefix(st.ID, "plate."):
		if s, ok := j.u.plate(strings.TrimPrefix(st.ID, "plate.")); ok && j.rng.Float64() >= j.p.unknown*3 {
			return j.number(s)
		}
		return j.command("dont-know")
	}
	if c := j.check(st.ID); c {
		return j.observe(v)
	}
	return j.other(v)
}

func (j *job) check(id string) bool {
	for _, c := range j.c.cat.Checks {
		if c.ID == id {
			return true
		}
	}
	return false
}

func (j *job) confirm(v *view) map[string]any {
	st := v.Step
	right := pick(st.has("right-value"), "right-value", "right")
	asked := st.has("right-value") || st.has("right") || strings.Contains(v.Said, "ight, or")
	if j.meant == "" && !asked && j.lastReading != nil {
		return j.lastReading // the number once more
	}
	// "Done. Right, or different?" repeats what was heard: right when it is what was meant.
	if asked {
		said := strings.ToLower(v.Said)
		if j.meant == "" {
			return choice("choice", right)
		}
		for _, a := range st.Answers {
			if a.ID == j.meant && strings.Contains(said, strings.ToLower(a.Text)) {
				return choice("choice", right)
			}
		}
		for _, w := range []string{"done.", "ready.", "finish."} {
			if (st.Kind == "act" || j.meant == "ready" || j.meant == "done") && strings.HasPrefix(said, w) {
				return choice("choice", right)
			}
		}
		if j.meant == "dont-know" && strings.HasPrefix(said, "don't know") {
			return choice("choice", right)
		}
		j.unknown["heard wrong, asked back"]++
		return choice("choice", "different")
	}
	if j.meant != "" && st.has(j.meant) {
		return choice(st.kindOf(j.meant), j.meant)
	}
	if len(st.Keypad) > 0 && j.lastReading != nil {
		return j.lastReading
	}
	return choice("choice", right)
}

// observe looks or measures.
func (j *job) observe(v *view) map[string]any {
	st := v.Step
	var chk = j.c.cat.Checks[0]
	for _, c := range j.c.cat.Checks {
		if c.ID == st.ID {
			chk = c
		}
	}
	j.watchMeasure(st, chk.Hazard, chk.Function)
	safety := chk.Stage == "safety" || strings.HasPrefix(st.ID, "again-alarm")
	if st.has("ready") && chk.Function != "look" {
		refuse := j.p.refuse
		if chk.Hazard == "hot" && j.p.fright {
			refuse = 0.4
		}
		if chk.Power == "on" && chk.Hazard != "none" && j.rng.Float64() < refuse {
			return j.command("cant-reach")
		}
		if j.rng.Float64() < j.p.skip {
			return j.command("cant-reach")
		}
		return j.say(st, "ready")
	}
	unknown := j.p.unknown
	if safety {
		unknown /= 4
	}
	if j.rng.Float64() < unknown {
		return j.say(st, "dont-know")
	}
	if chk.Function == "look" {
		if chk.At == "steady" {
			j.at += 600000
		}
		was := j.u.look(st.ID)
		if was == "" || !st.has(was) {
			if was != "" {
				j.unknown["option "+was+" of "+st.ID]++
			} else {
				j.unknown["look "+st.ID]++
			}
			return j.command("dont-know")
		}
		slip := j.p.slip
		if safety {
			slip = j.p.safe
		}
		if j.rng.Float64() < slip {
			list := st.choices()
			if alt := list[j.rng.Intn(len(list))]; alt != was {
				j.note("  (slip: it was %s)", was)
				was = alt
			}
		}
		return j.say(st, was)
	}
	id := st.ID
	if j.rng.Float64() < j.p.wrongPt {
		// The tips land on the points of another check of the same kind.
		for range 20 {
			c := j.c.cat.Checks[j.rng.Intn(len(j.c.cat.Checks))]
			if c.Function == chk.Function && c.ID != id {
				id = c.ID
				j.note("  (wrong points: those of %s)", id)
				break
			}
		}
	}
	s, ok := j.u.read(id)
	if !ok {
		j.unknown["read "+st.ID]++
		return j.command("dont-know")
	}
	if !s.over && j.rng.Float64() < j.p.misread {
		t := wrongNumber(j.rng, s)
		j.note("  (misread: it was %s)", s)
		s = t
	}
	if j.tries == 0 && !s.over && j.rng.Float64() < j.p.words {
		j.number(s)
		return words(spoken(s.number) + " " + unitWord[s.unit])
	}
	return j.number(s)
}

// act changes the place as the step says.
func (j *job) act(v *view) map[string]any {
	st := v.Step
	parts := strings.SplitN(strings.TrimPrefix(st.ID, "act."), ".", 2)
	arg := ""
	if len(parts) > 1 {
		arg = parts[1]
	}
	site := j.u.site()
	if j.tries == 0 && j.rng.Float64() < j.p.skip/3 && (parts[0] == "open-cover" || parts[0] == "lift-wire") {
		return j.command("cant-reach")
	}
	done := func(ids ...string) map[string]any {
		for _, id := range ids {
			if st.has(id) {
				return j.say(st, id)
			}
		}
		return j.command("done")
	}
	switch parts[0] {
	case "power-on":
		j.watchPowerOn()
		j.u.powerOn()
		return done("on")
	case "power-off":
		j.u.powerOff()
		return done("off")
	case "call-on":
		j.u.callSet(true)
		return done("calling", "on")
	case "call-off":
		j.u.callSet(false)
		return done("not-calling", "off")
	case "open-cover":
		if j.p.fright && j.rng.Float64() < 0.1 {
			return j.command("cant-reach")
		}
		site.covers[arg] = true
		return done("panel-off", "open", "off")
	case "close-cover":
		delete(site.covers, arg)
		return done("panel-on", "closed", "on")
	case "lift-wire":
		site.lifted[arg] = true
		return done("off", "out", "wire-off")
	case "refit-wire", "put-wire", "wire-back", "restore-wire", "land-wire":
		delete(site.lifted, arg)
		return done("on", "in", "wire-on")
	case "jumper-in":
		site.jumper[arg] = true
		return done("in")
	case "jack-out", "jack-in", "meter-in", "meter-out", "place-leads":
		if c := st.choices(); len(c) > 0 {
			return choice("choice", c[0])
		}
	case "jumper-out":
		delete(site.jumper, arg)
		return done("out")
	}
	if st.has("ready") {
		return j.say(st, "ready")
	}
	if len(st.Keypad) > 0 {
		if s, ok := j.u.read(st.ID); ok {
			return j.number(s)
		}
	}
	j.unknown["act "+st.ID]++
	if c := st.choices(); len(c) > 0 {
		return choice("choice", c[0])
	}
	return j.command("done")
}

// repairStep answers which repair of the catalogue a step id belongs to.
func (j *job) repairStep(id string) string {
	at := strings.LastIndex(id, ".")
	if at < 0 {
		return ""
	}
	for _, r := range j.c.cat.Repairs {
		if r.ID == id[:at] {
			return r.ID
		}
	}
	return ""
}

// doRepair follows a repair's steps; with the last one it is done on the unit.
func (j *job) doRepair(v *view) map[string]any {
	st := v.Step
	id := j.repairStep(st.ID)
	for _, r := range j.c.cat.Repairs {
		if r.ID == id && strings.HasSuffix(st.ID, fmt.Sprintf(".%d", len(r.Steps))) && j.tries == 0 {
			j.apply(r.ID, r.Part, r.Kind)
		}
	}
	for _, r := range j.c.cat.Repairs {
		if r.ID == id && (r.Kind == "set" || r.Kind == "open" || !j.inside(r.Part)) {
			return j.doneWith(st)
		}
	}
	if j.u.site().power {
		j.see("hands in for a repair with the power on: " + st.ID)
	}
	return j.doneWith(st)
}

// inside says whether a part sits behind a cover of the appliance.
func (j *job) inside(part string) bool {
	for _, p := range j.c.cat.Parts {
		if p.ID == part {
			return p.Place == "upper-bay" || p.Place == "lower-bay" || p.Place == "burner-box" || p.Place == "bay" || p.Place == "rear"
		}
	}
	return false
}

func (j *job) doneWith(st *step) map[string]any {
	for _, id := range []string{"done", "yes", "ready"} {
		if st.has(id) {
			return j.say(st, id)
		}
	}
	if c := st.choices(); len(c) > 0 {
		return choice("choice", c[0])
	}
	return j.command("done")
}

func (j *job) apply(id, part, kind string) {
	bad := false
	for _, f := range j.s.faults {
		for _, p := range f.parts {
			bad = bad || p == part
		}
	}
	j.repairs[id] = true
	j.repair = append(j.repair, id)
	if !bad && kind == "replace" && part != "batteries" && part != "filter" {
		j.good = append(j.good, part)
	}
	j.u.repair(id)
	j.note("  (repair %s carried out; heats now: %t)", id, j.u.heats())
}

// other answers the questions that are no checks.
func (j *job) other(v *view) map[string]any {
	st := v.Step
	m := j.u.meter()
	switch st.ID {
	case "story":
		if j.again["told"]++; j.again["told"] > 2 {
			return j.command("skip")
		}
		return words(j.u.story())
	case "license":
		return j.say(st, "no")
	case "meter.kind":
		if j.noMeter {
			return choice("choice", "no-meter")
		}
		return choice("choice", pick(m.trueRMS, "true-rms", "plain-meter"))
	case "meter.category":
		// One in ten cheap meters carries no rating.
		return choice("choice", pick(m.name == "cheap" && j.rng.Float64() < 0.1, "not-rated", "rated"))
	case "meter.leads":
		return choice("choice", "good")
	case "meter.short":
		return reading(m.show(j.rng, m.lead, "ohm", ""))
	case "relight":
		if st.Until > j.at {
			j.at = st.Until + 1000
		}
		return j.say(st, "ready")
	}
	if st.Until > j.at {
		j.at = st.Until + 1000
	}
	switch st.ID {
	case "callout":
		return j.command("dont-know")
	case "age":
		return map[string]any{"source": "line", "meanings": []any{map[string]any{"kind": "count", "text": "9"}}}
	case "decide":
		return j.decide(st)
	case "match":
		if j.p.name != "ideal" && j.rng.Float64() < 0.1 && j.tries == 0 && j.again["match"] < 1 && st.has("not-yet") {
			j.again["match"]++
			return choice("choice", "not-yet")
		}
		return j.say(st, "same")
	case "photo.before":
		return choice("choice", pick(j.rng.Float64() < 0.7, "photo-taken", "listed"))
	case "photo.after":
		return j.say(st, "same")
	case "items":
		return choice("choice", pick(j.asTold(st), "same", "different"))
	case "cycle":
		return j.cycle(st)
	case "stop":
		return j.doneWith(st)
	case "alarm.any", "alarm.co", "alarm.gas", "alarm.fire", "alarm.ill":
		return choice(st.kindOf("safe-outside"), "safe-outside")
	}
	if s, ok := j.u.read(st.ID); ok {
		return j.number(s)
	}
	j.note("  (?? %+v)", *st)
	for _, id := range []string{"yes", "done", "ready", "same", "good", "continue"} {
		if st.has(id) {
			j.unknown["other "+st.ID+" -> "+id]++
			return choice(st.kindOf(id), id)
		}
	}
	j.unknown["other "+st.ID+" "+strings.Join(st.choices(), "/")]++
	if c := st.choices(); len(c) > 0 {
		return choice("choice", c[0])
	}
	return j.command("done")
}

// decide is what the person does about the cause found.
func (j *job) decide(st *step) map[string]any {
	c := st.choices()
	j.note("  (decides: %s %s of %v)", st.Act, st.Say, c)
	if j.p.fright && st.has("call-someone") && j.rng.Float64() < 0.5 {
		return choice("choice", "call-someone")
	}
	for _, id := range []string{"fix-it", "call-someone"} {
		if st.has(id) {
			return choice("choice", id)
		}
	}
	return j.doneWith(st)
}

// cycle watches one whole run.
func (j *job) cycle(st *step) map[string]any {
	j.u.callSet(true)
	saw := j.u.cycle()
	if saw == "running" && st.has("full-cycle") {
		saw = "full-cycle"
	}
	if !st.has(saw) {
		j.unknown["option "+saw+" of cycle"]++
		return j.command("dont-know")
	}
	return j.say(st, saw)
}

// asTold compares the list read out at the end with what is there.
func (j *job) asTold(st *step) bool {
	s := j.u.site()
	for w, off := range s.lifted {
		if off {
			j.note("  (still off: %s)", w)
			return false
		}
	}
	return len(s.jumper) == 0 && len(s.covers) == 0
}
