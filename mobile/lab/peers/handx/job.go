package handx

import (
	"bufio"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"io"
	"math/rand"
	"os/exec"
	"strconv"
	"strings"
	"time"
)

// What the examiner reads of the line protocol.
type check struct {
	ID       string   `json:"id"`
	Stage    string   `json:"stage"`
	Function string   `json:"function"`
	Quantity string   `json:"quantity"`
	Red      string   `json:"red"`
	Black    string   `json:"black"`
	At       string   `json:"at"`
	Power    string   `json:"power"`
	Hazard   string   `json:"hazard"`
	Places   []string `json:"places"`
	Lift     []string `json:"lift"`
	HandsIn  bool     `json:"handsIn"`
	Options  []string `json:"options"`
}

type catalogue struct {
	Checks  []check `json:"checks"`
	Repairs []struct {
		ID    string   `json:"id"`
		Name  string   `json:"name"`
		Part  string   `json:"part"`
		Kind  string   `json:"kind"`
		Stop  string   `json:"stop"`
		Steps []string `json:"steps"`
	} `json:"repairs"`
	Parts []struct {
		ID   string `json:"id"`
		Name string `json:"name"`
	} `json:"parts"`
}

type answer struct {
	ID   string `json:"id"`
	Kind string `json:"kind"`
	Text string `json:"text"`
}

type step struct {
	ID      string   `json:"id"`
	Kind    string   `json:"kind"`
	Level   string   `json:"level"`
	Caution string   `json:"caution"`
	Where   string   `json:"where"`
	Meter   string   `json:"meter"`
	Act     string   `json:"act"`
	Say     string   `json:"say"`
	Points  []string `json:"points"`
	Place   string   `json:"place"`
	Answers []answer `json:"answers"`
	Keypad  []string `json:"keypad"`
	Part    string   `json:"part"`
	Until   int64    `json:"until"`
}

type view struct {
	Seq   int    `json:"seq"`
	State string `json:"state"`
	Stage string `json:"stage"`
	Step  step   `json:"step"`
	Said  string `json:"said"`
}

type result struct {
	Outcome string   `json:"outcome"`
	Repair  string   `json:"repair"`
	P       float64  `json:"p"`
	Mended  []string `json:"mended"`
	Stop    string   `json:"stop"`
	Likely  string   `json:"likely"`
	Checks  int      `json:"checks"`
}

type effect struct {
	Type   string          `json:"type"`
	ID     string          `json:"id"`
	Text   string          `json:"text"`
	View   *view           `json:"view"`
	Result json.RawMessage `json:"result"`
}

// report is what one job came to.
type report struct {
	c        testCase
	person   string
	seed     int64
	ended    string // "end", or why the talk broke off
	res      result
	raw      string
	steps    int
	last     []string // the last things said
	log      []string
	unsafe   []string // this hand's own rules that were broken
	noFit    []string // looks whose true answer was not among those offered
	refused  int
	stopText string
	unit     *unit
	repairs  []string
	wasted   []string
	right    bool
	why      string
	noticed  map[string]bool
	row      string
}

// job is one talk with the program.
type job struct {
	rep    *report
	cat    catalogue
	checks map[string]check
	steps  map[string]int // steps of each repair
	u      *unit
	p      person
	m      meter
	rng    *rand.Rand
	view   view
	at     int64
	in     io.Writer
	out    *bufio.Reader

	consented bool
	tries     int
	lastKey   string
	wasWrong  bool // the last number told was misread
	ended     bool
	meterIn   bool
	meant     string // the answer that the person has in mind, in the words of the screen
}

const startTime = int64(1795980000000)

func seedOf(parts ...string) int64 {
	h := fnv.New64a()
	for _, p := range parts {
		h.Write([]byte(p))
		h.Write([]byte{0})
	}
	return int64(h.Sum64() >> 1)
}

// play runs one job against the binary.
func play(bin string, c testCase, p person, seed int64) (*report, catalogue, error) {
	mine := rand.New(rand.NewSource(seedOf(c.id, "unit", strconv.FormatInt(seed, 10))))
	rep := &report{c: c, person: p.name, seed: seed, noticed: map[string]bool{}}
	u := c.make(mine)
	rep.unit = u
	cmd := exec.Command(bin, "talk", "-appliance", "furnace-hsi")
	in, err := cmd.StdinPipe()
	if err != nil {
		return nil, catalogue{}, err
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, catalogue{}, err
	}
	if err := cmd.Start(); err != nil {
		return nil, catalogue{}, err
	}
	// A talk that hangs is an end of its own; a whole one takes seconds.
	guard := time.AfterFunc(4*time.Minute, func() { cmd.Process.Kill() })
	defer func() {
		guard.Stop()
		in.Close()
		cmd.Process.Kill()
		cmd.Wait()
	}()
	rng := rand.New(rand.NewSource(seedOf(c.id, p.name, strconv.FormatInt(seed, 10))))
	j := &job{rep: rep, u: u, p: p, rng: rng, m: newMeter(rng, p), at: startTime, in: in,
		out: bufio.NewReaderSize(out, 1<<20), checks: map[string]check{}, steps: map[string]int{}}
	err = j.talk()
	if j.meterIn {
		rep.unsafe = append(rep.unsafe, "meter left in the flame rod lead")
	}
	return rep, j.cat, err
}

func (j *job) note(format string, a ...any) { j.rep.log = append(j.rep.log, fmt.Sprintf(format, a...)) }

func (j *job) talk() error {
	line, err := j.out.ReadBytes('\n')
	if err != nil {
		return fmt.Errorf("no catalogue: %w", err)
	}
	if err := json.Unmarshal(line, &j.cat); err != nil {
		return fmt.Errorf("catalogue: %w", err)
	}
	for _, c := range j.cat.Checks {
		j.checks[c.ID] = c
	}
	for _, r := range j.cat.Repairs {
		j.steps[r.ID] = len(r.Steps)
	}
	j.note("case %s, %s, seed %d, meter %s %.0f counts", j.rep.c.id, j.p.name, j.rep.seed, j.m.kind, j.m.counts)
	j.note("truth: parts %v, repairs %v, stops %v", j.rep.c.parts, j.rep.c.repairs, j.rep.c.stops)
	if !j.send(map[string]any{"type": "tick"}, 2) {
		return nil
	}
	for j.rep.steps = 0; j.rep.steps < 400; j.rep.steps++ {
		if j.ended || j.view.State == "ended" {
			return nil
		}
		if !j.answer() {
			return nil
		}
	}
	j.rep.ended = "more than 400 steps"
	return nil
}

// send writes one event and reads the effects until it is taken; wait is how many takings to read.
func (j *job) send(ev map[string]any, wait int) bool {
	ev["at"] = j.at
	b, err := json.Marshal(ev)
	if err != nil {
		panic(err)
	}
	if _, err := fmt.Fprintf(j.in, "%s\n", b); err != nil {
		j.rep.ended = "the program ended: " + err.Error()
		return false
	}
	for wait > 0 {
		line, err := j.out.ReadBytes('\n')
		if err != nil {
			if j.ended {
				return true
			}
			j.rep.ended = "the program ended: " + err.Error()
			return false
		}
		var e effect
		if err := json.Unmarshal(line, &e); err != nil {
			j.rep.ended = "bad line: " + err.Error()
			return false
		}
		switch e.Type {
		case "say":
			j.note("  phone: %s", e.Text)
			j.rep.last = append(j.rep.last, e.Text)
		case "show":
			j.view = *e.View
		case "end":
			j.ended = true
			j.rep.ended = "end"
			j.rep.raw = string(e.Result)
			json.Unmarshal(e.Result, &j.rep.res)
			if j.rep.res.Outcome == "" {
				j.rep.res.Outcome = e.Text
			}
			j.note("END %s %s", e.Text, e.Result)
		case "refused", "trouble":
			j.note("  %s: %s", e.Type, e.Text)
			if e.Type == "refused" {
				j.rep.refused++
				wait--
			}
		case "taken":
			wait--
		}
	}
	return true
}

func (j *job) say(meaning map[string]any) bool {
	return j.send(map[string]any{"type": "said", "said": map[string]any{"source": "line",
		"meanings": []any{meaning}}}, 1)
}

func (j *job) sayText(text string) bool {
	j.note("> \"%s\"", text)
	return j.send(map[string]any{"type": "said", "said": map[string]any{"source": "line", "text": text}}, 1)
}

func (j *job) command(id string) bool {
	j.note("> [%s]", id)
	return j.say(map[string]any{"kind": "command", "id": id})
}

func (j *job) has(id string) bool {
	for _, a := range j.view.Step.Answers {
		if a.ID == id {
			return true
		}
	}
	return false
}

// choose gives one of the offered answers, by its id or in words.
func (j *job) choose(id string) bool {
	for _, a := range j.view.Step.Answers {
		if a.ID != id {
			continue
		}
		j.meant = a.Text
		if a.Kind == "command" {
			return j.command(id)
		}
		if j.tries == 1 && j.rng.Float64() < j.p.freeWords {
			if w := words[id]; len(w) > 0 {
				return j.sayText(pickOne(j.rng, w...))
			}
		}
		j.note("> %s", id)
		return j.say(map[string]any{"kind": "choice", "id": id})
	}
	return j.dontKnow()
}

func (j *job) dontKnow() bool {
	j.meant = ""
	if j.has("dont-know") {
		if j.tries <= 1 && j.rng.Float64() < j.p.freeWords {
			return j.sayText(pickOne(j.rng, dontKnowWords...))
		}
		return j.command("dont-know")
	}
	if j.has("cant-reach") {
		return j.command("cant-reach")
	}
	return j.firstChoice()
}

func (j *job) firstChoice() bool {
	for _, a := range j.view.Step.Answers {
		if a.Kind == "choice" {
			return j.choose(a.ID)
		}
	}
	for _, a := range j.view.Step.Answers {
		return j.command(a.ID)
	}
	return j.command("dont-know")
}

func (j *job) number(s shown) bool {
	j.meant = ""
	if !s.over && s.m >= 0 {
		whole, _, _ := strings.Cut(s.text(), ".")
		n, _ := strconv.ParseInt(whole, 10, 64)
		j.meant = wholeInWords(n)
	}
	if j.tries == 1 && j.rng.Float64() < j.p.freeWords {
		return j.sayText(inWords(j.rng, s))
	}
	if s.over {
		j.note("> over limit")
		return j.say(map[string]any{"kind": "reading", "reading": map[string]any{"state": "over"}})
	}
	j.note("> %s %s", s.text(), s.unit)
	r := map[string]any{"value": map[string]any{"d": map[string]any{"m": s.m, "e": s.e}, "u": s.unit}}
	if s.unit == "V" || s.unit == "A" {
		r["ac"] = "ac"
	}
	return j.say(map[string]any{"kind": "reading", "reading": r})
}

// broke notes a rule of this hand that was broken, once each.
func (j *job) broke(rule string) {
	if !j.rep.noticed[rule] {
		j.rep.noticed[rule] = true
		j.rep.unsafe = append(j.rep.unsafe, rule)
		j.note("  !! %s", rule)
	}
}
