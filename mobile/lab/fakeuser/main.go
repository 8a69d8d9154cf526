// Command person is somebody with a broken appliance, for the tests of the binding, which know no JSON: they pass on what
// GET /api/state answers. A line in is "look STATE", "answer STATE", "speak STATE", "again STATE" or "object STATE"; a line out
// has these fields, with tabs between:
//
//	seq, state of the view, step, power, outcome, moved or same, agrees or differs, file, words, utterance
//
// "look" leaves the last three empty; "moved" tells whether the last answer changed what is asked, "agrees" whether what was taken is
// what was said. "answer" fills in the words and
// the utterance as JSON. "speak" gives a file with their sound in basement noise (16 kHz, mono, signed 16 bit) as well, "again"
// the last answer in other words, and "object" what takes it back.
//
//	person DIALOGUE FOLDER [VOICE]
package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/lab/scenario"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/flows"
	"readback/flows/lexicon"
	"readback/mobile/app"
	"readback/speech/lab/hearbench"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "person:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) < 2 {
		return fmt.Errorf("want: person DIALOGUE FOLDER [VOICE]")
	}
	p, lex, err := load(args[0])
	if err != nil {
		return err
	}
	m := &mouth{dir: args[1], noise: hearbench.Noise("fan", 1, 30*rate)}
	for _, v := range hearbench.Voices() {
		if len(args) < 3 || args[2] == v.Name {
			m.voice = v
			break
		}
	}
	in := bufio.NewScanner(os.Stdin)
	in.Buffer(nil, 16<<20)
	for in.Scan() {
		what, text, _ := strings.Cut(in.Text(), " ")
		var state app.State
		if err := json.Unmarshal([]byte(text), &state); err != nil {
			return fmt.Errorf("state: %w", err)
		}
		if state.View == nil {
			return fmt.Errorf("state: no job is open")
		}
		line, err := respond(what, state.View, p, lex, m)
		if err != nil {
			return err
		}
		if _, err := fmt.Println(line); err != nil {
			return err
		}
	}
	return in.Err()
}

func respond(what string, v *protocol.View, p *scenario.Person, lex *utterance.Lexicon, m *mouth) (string, error) {
	agrees := "agrees"
	settled := v.State != "confirm" && v.State != "ended" && v.State != "emergency" && v.Heard != nil && !v.Heard.Pending
	if settled && !p.Agrees(lex, v.Heard) {
		agrees = "differs"
	}
	gone := "same"
	if m.asked != nil && scenario.Moved(m.asked, v) {
		gone = "moved"
	}
	fields := []string{fmt.Sprint(v.Seq), v.State, v.Step.ID + "/" + v.Step.Part, v.Site.Power, v.Ended, gone, agrees, "", "", ""}
	var words string
	switch what {
	case "object":
		words = "scratch that"
	case "again":
		m.tries++
		words = aloud(lex, m.last, m.tries, true)
	}
	if what == "answer" || what == "speak" || what == "object" {
		m.asked = v
	}
	if what == "answer" || what == "speak" {
		u, err := p.Reply(v)
		if err != nil {
			return "", err
		}
		best := u.Best()
		if best == nil {
			return strings.Join(fields, "\t"), nil
		}
		if v.State == "confirm" && v.Step.Kind != "consent" && best.ID == "right-value" && !p.Agrees(lex, v.Heard) {
			u.Meanings[0] = utterance.Meaning{Kind: utterance.Choice, ID: "different"}
		}
		m.last, m.tries = u.Meanings[0], 0
		words = aloud(lex, m.last, 0, v.State == "confirm")
		u.Source = "touch"
		said, err := json.Marshal(u)
		if err != nil {
			return "", err
		}
		fields[8], fields[9] = words, string(said)
	}
	if what == "speak" || what == "again" || what == "object" {
		var err error
		if fields[7], err = m.say(words); err != nil {
			return "", err
		}
		fields[8] = words
	}
	return strings.Join(fields, "\t"), nil
}

// aloud is what the person says; in full when asked back about a reading: with the longest form of its unit's name.
func aloud(lex *utterance.Lexicon, x utterance.Meaning, try int, full bool) string {
	if !full || x.Kind != utterance.Reading || x.Reading.State != measure.Number {
		return scenario.Aloud(lex, x, try)
	}
	var unit string
	names := lex.Units[x.Reading.Value.Unit]
	for _, s := range names {
		if len(s) > len(unit) && strings.HasPrefix(s, names[0]) { // "degrees fahrenheit" for "degrees"
			unit = s
		}
	}
	return x.Reading.Value.Dec.Words() + " " + unit
}

// load makes the person of a dialogue file.
func load(file string) (*scenario.Person, *utterance.Lexicon, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	d, err := scenario.ParseDialogue(f)
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", file, err)
	}
	models, err := flows.Builtin()
	if err != nil {
		return nil, nil, err
	}
	i := slices.IndexFunc(models, func(m *appliance.Model) bool { return m.ID == d.Appliance })
	if i < 0 {
		return nil, nil, fmt.Errorf("%s: no equipment file %q", file, d.Appliance)
	}
	m := models[i]
	e, err := appliance.Compile(m)
	if err != nil {
		return nil, nil, err
	}
	p := &scenario.Person{Model: m, See: scenario.EngineSight(e), Habits: d.Habits, Chance: scenario.NewChance(1), Says: d.Says}
	for _, f := range d.Faults {
		n := slices.IndexFunc(m.Modes, func(x appliance.Mode) bool { return x.Full == f })
		if n < 0 {
			return nil, nil, fmt.Errorf("%s: no fault %q", file, f)
		}
		p.Modes = append(p.Modes, n)
	}
	lex, err := lexicon.Load()
	return p, lex, err
}

const (
	rate  = 16000
	level = -26 // dBFS of the speech
	snr   = 15  // dB over the noise
)

// mouth turns words into sound.
type mouth struct {
	dir   string
	voice hearbench.Voice
	noise []float64
	n     int
	last  utterance.Meaning // what was said last
	tries int               // how often it was said again
	asked *protocol.View    // what it answered
}

func (m *mouth) say(words string) (string, error) {
	speech, err := m.voice.Say(words)
	if err != nil {
		return "", fmt.Errorf("voice %q: %w", m.voice.Name, err)
	}
	clip := hearbench.Clip(speech, level, snr, m.noise, 0.8, 2.4)
	out := make([]byte, 2*len(clip))
	for i, s := range clip {
		out[2*i], out[2*i+1] = byte(s), byte(uint16(s)>>8)
	}
	m.n++
	name := filepath.Join(m.dir, fmt.Sprintf("%03d.pcm", m.n))
	return name, os.WriteFile(name, out, 0o600)
}
