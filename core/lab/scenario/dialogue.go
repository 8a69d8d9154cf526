package scenario

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"readback/core/vocab"
	"slices"
	"strconv"
	"strings"
)

// Dialogue is one test of a whole job: the fault, the person, and what must come of it. Its file has one word and its
// arguments a line; # begins a comment.
type Dialogue struct {
	Title     string
	Appliance string
	Faults    []string // part.mode
	Habits    Habits
	Says      map[string][]string
	Alarms    map[int]string // before this answer, this emergency
	Wakes     int            // the faults are there from this start of the supply on, counted from 1; 0: always
	Kill      []int          // before these answers the program dies and comes back
	Outcome   string         // expected; empty: any
	Repair    []string       // expected: the verdict names one of these
	Stop      string         // expected stop line
	Never     []string       // words the guide must never say
	Must      []string       // words the guide must say
	MaxChecks int            // 0: no bound
}

// ParseDialogue reads a dialogue file. Every problem names its line.
func ParseDialogue(r io.Reader) (*Dialogue, error) {
	d := &Dialogue{Says: map[string][]string{}, Alarms: map[int]string{}}
	s := bufio.NewScanner(r)
	for n := 1; s.Scan(); n++ {
		line := strings.TrimSpace(s.Text())
		if line == "" || strings.HasPrefix(line, "#") {
			if d.Title == "" && line != "" {
				d.Title = strings.TrimSpace(strings.TrimPrefix(line, "#"))
			}
			continue
		}
		word, rest, _ := strings.Cut(line, " ")
		if err := d.set(word, strings.TrimSpace(rest)); err != nil {
			return nil, fmt.Errorf("line %d: %w", n, err)
		}
	}
	if err := s.Err(); err != nil {
		return nil, err
	}
	if d.Appliance == "" {
		return nil, fmt.Errorf("line 1: no appliance is named")
	}
	return d, nil
}

func (d *Dialogue) set(word, rest string) error {
	if rest == "" {
		return fmt.Errorf("%q needs something behind it", word)
	}
	switch word {
	case "appliance":
		d.Appliance = rest
	case "fault":
		d.Faults = append(d.Faults, rest)
	case "person":
		return d.habit(rest)
	case "say":
		id, what, ok := strings.Cut(rest, " ")
		if !ok {
			return fmt.Errorf("say needs a step id and an answer")
		}
		if _, err := Meaning(strings.TrimSpace(what)); err != nil && strings.TrimSpace(what) != "silence" {
			return err
		}
		if what = strings.TrimSpace(what); what == "silence" {
			what = "silence:"
		}
		d.Says[id] = append(d.Says[id], what)
	case "alarm":
		at, class, ok := strings.Cut(rest, " ")
		n, err := strconv.Atoi(at)
		if !ok || err != nil || n < 0 {
			return fmt.Errorf("alarm needs the number of an answer and a class")
		}
		d.Alarms[n] = class
	case "wakes":
		n, err := strconv.Atoi(rest)
		if err != nil || n < 1 {
			return fmt.Errorf("wakes needs the number of a start, from 1")
		}
		d.Wakes = n
	case "kill":
		n, err := strconv.Atoi(rest)
		if err != nil || n < 0 {
			return fmt.Errorf("kill needs the number of an answer")
		}
		d.Kill = append(d.Kill, n)
	case "outcome":
		d.Outcome = rest
	case "repair":
		d.Repair = strings.Fields(rest)
	case "stop":
		d.Stop = rest
	case "never":
		d.Never = append(d.Never, rest)
	case "must":
		d.Must = append(d.Must, rest)
	case "checks":
		n, err := strconv.Atoi(rest)
		if err != nil || n < 1 {
			return fmt.Errorf("checks needs a whole number above 0")
		}
		d.MaxChecks = n
	default:
		return fmt.Errorf("no such word %q; there are appliance, fault, wakes, person, say, alarm, kill, outcome, repair, stop, never, must, checks", word)
	}
	return nil
}

func (d *Dialogue) habit(rest string) error {
	word, num, _ := strings.Cut(rest, " ")
	if word == "refuses-live" {
		d.Habits.RefusesLive = true
		return nil
	}
	x, err := strconv.ParseFloat(num, 64)
	if err != nil || x < 0 || x > 1 {
		return fmt.Errorf("person %s needs a number from 0 to 1", word)
	}
	switch word {
	case "misreads":
		d.Habits.Misreads = x
	case "lead-slips":
		d.Habits.LeadSlips = x
	case "dont-know":
		d.Habits.DontKnow = x
	case "noise":
		d.Habits.Noise = x
	default:
		return fmt.Errorf("no habit %q; there are refuses-live, misreads, lead-slips, dont-know, noise", word)
	}
	return nil
}

// Judge tells what of a run is not as the dialogue expects.
func (d *Dialogue) Judge(r *Run) error {
	var bad []string
	note := func(format string, args ...any) { bad = append(bad, fmt.Sprintf(format, args...)) }
	if !r.Ended {
		note("the job did not end within %d answers", MaxAnswers)
	}
	res := r.Result
	if d.Outcome != "" && res.Outcome != d.Outcome {
		note("outcome %q, expected %q", res.Outcome, d.Outcome)
	}
	if len(d.Repair) > 0 && !slices.Contains(d.Repair, res.Repair) {
		note("repair %q, expected %s", res.Repair, strings.Join(d.Repair, " or "))
	}
	if d.Stop != "" && res.Stop != d.Stop {
		note("stop line %q, expected %q", res.Stop, d.Stop)
	}
	if d.Stop == "" && res.Stop != "" && d.Outcome == "fixed" {
		note("stopped at %q", res.Stop)
	}
	if d.MaxChecks > 0 && res.Checks > d.MaxChecks {
		note("%d checks, expected at most %d", res.Checks, d.MaxChecks)
	}
	spoken := strings.ToLower(strings.Join(r.Spoken(), "\n"))
	for _, w := range d.Never {
		if strings.Contains(spoken, strings.ToLower(w)) {
			note("it said %q", w)
		}
	}
	for _, w := range d.Must {
		if !strings.Contains(spoken, strings.ToLower(w)) {
			note("it never said %q", w)
		}
	}
	if len(r.Exchanges) > 0 {
		if v := r.Exchanges[len(r.Exchanges)-1].View; r.Ended && !vocab.MayStayOpen(res.Outcome) && len(v.Open) > 0 {
			note("left open: %s", strings.Join(v.Open, ", "))
		}
	}
	if len(bad) > 0 {
		return errors.New(strings.Join(bad, "; "))
	}
	return nil
}
