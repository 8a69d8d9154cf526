// Package report turns a replayed job into a record that a technician can follow: one self-contained HTML page,
// and the same as plain text.
//
// It knows only events, effects and views, so whatever the machine said, heard and decided is in it, in order, and a
// replay of the same journal gives the same bytes.
package report

import (
	_ "embed"
	"fmt"
	"io"
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/words"
)

// Entry is one event of the journal with what followed from it.
type Entry struct {
	Event   protocol.Event
	Effects []protocol.Effect
	View    protocol.View
}

// Job is a replayed journal with the pictures of its folder.
type Job struct {
	Words   *words.Words // of the language of the record
	Entries []Entry
	Photos  map[string][]byte     // JPEG or PNG bytes by file name; a missing one is named as missing
	Clock   func(at int64) string // writes a time of the journal, for example in the reader's zone
	Damage  string                // what was wrong with the journal's end, empty when it is whole
	Details Details               // written by hand
	Remarks []Remark              // signed, in the order they were written
}

// row is one exchange: what the guide said, what the person answered, what became of it.
type row struct {
	w        *words.Words
	Seq      int64
	At       string
	Stage    string
	Said     []saying
	Why      string
	Heard    string
	Source   string
	Rivals   string
	Taken    string
	Verdict  string
	Limit    string
	Value    string
	Undone   bool
	Event    string // other things that happened: a photo, a call, a resume
	Picture  *picture
	Drawn    []markup // pictures with what was found drawn on them
	Suspects string
}

type saying struct{ Level, Text string }

type picture struct {
	Name string
	URL  string // data of the picture; empty: the file is missing
}

type sheet struct {
	w                                       *words.Words
	Title, Job, Version, Data, Begun, Ended string
	Outcome, Handover, Damage               string
	Site                                    []string
	Open, Facts                             []string
	Suspects                                []protocol.Suspect
	Rows                                    []row
	Belief                                  markup
	Cautions                                []string
	Doubts                                  []string
	First                                   [][2]string
	Readings                                []measured
	Timeline                                []moment
	Remarks                                 []Remark
	clock                                   func(int64) string
}

// HTML writes the record as one page that needs nothing else.
func HTML(w io.Writer, j Job) error {
	s, err := build(j)
	if err != nil {
		return err
	}
	if _, err := io.WriteString(w, string(s.page())); err != nil {
		return fmt.Errorf("report: writing the page: %w", err)
	}
	return nil
}

// Text writes the same record as plain lines: who spoke, and what was made of it.
func Text(w io.Writer, j Job) error {
	s, err := build(j)
	if err != nil {
		return err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n", s.Title, s.Begun)
	stage := ""
	for _, r := range s.Rows {
		if r.Stage != stage {
			stage = r.Stage
			fmt.Fprintf(&b, "\n[%s]\n", stage)
		}
		if r.Event != "" {
			fmt.Fprintf(&b, "  * %s\n", r.Event)
		}
		if r.Heard != "" {
			undone := ""
			if r.Undone {
				undone = " (" + s.w.Term("record.taken-back") + ")"
			}
			fmt.Fprintf(&b, "  %-7s %s%s\n", s.w.Term("record.person")+":", r.Heard, undone)
		}
		if r.Taken != "" {
			fmt.Fprintf(&b, "  %-7s %s\n", s.w.Term("record.taken")+":", strings.TrimSpace(strings.Join(nonEmpty(r.Taken, r.Verdict, r.Limit), "; ")))
		}
		for _, t := range r.Said {
			fmt.Fprintf(&b, "  %-7s %s\n", s.w.Term("record.guide")+":", t.Text)
		}
	}
	if s.Outcome != "" {
		fmt.Fprintf(&b, "\n%s: %s\n", s.w.Term("record.outcome"), s.Outcome)
	}
	for _, o := range s.Open {
		fmt.Fprintf(&b, "%s: %s\n", s.w.Term("record.still-open"), o)
	}
	if s.Damage != "" {
		fmt.Fprintf(&b, "%s: %s\n", s.w.Term("record.damaged"), s.Damage)
	}
	if _, err := io.WriteString(w, b.String()); err != nil {
		return fmt.Errorf("report: writing the text: %w", err)
	}
	return nil
}

func nonEmpty(s ...string) []string {
	return slices.DeleteFunc(s, func(x string) bool { return x == "" })
}

// outcome is an outcome in words, empty where there is none.
func outcome(w *words.Words, id string) string {
	if id == "" {
		return ""
	}
	return w.Name("ended", id)
}

// onDay leaves the day out of a time of the day on which the job began.
func onDay(begun, at string) string {
	if day, _, ok := strings.Cut(begun, " "); ok {
		return strings.TrimPrefix(at, day+" ")
	}
	return at
}

func build(j Job) (*sheet, error) {
	if len(j.Entries) == 0 {
		return nil, fmt.Errorf("report: the journal holds no event")
	}
	if j.Words == nil {
		return nil, fmt.Errorf("report: no words were given")
	}
	w := j.Words
	clock := j.Clock
	if clock == nil {
		clock = func(at int64) string { return fmt.Sprintf("%d ms", at) }
	}
	last := j.Entries[len(j.Entries)-1]
	s := &sheet{
		w:        w,
		Title:    last.View.Title,
		Job:      last.View.Job,
		Begun:    clock(j.Entries[0].Event.At),
		Ended:    clock(last.Event.At),
		Outcome:  outcome(w, last.View.Ended),
		Handover: last.View.Handover,
		Damage:   j.Damage,
		Site:     siteWords(w, last.View.Site),
		Open:     last.View.Open,
		Facts:    last.View.Facts,
		Suspects: last.View.Suspects,
	}
	if b := j.Entries[0].Event.Begin; b != nil {
		s.Version, s.Data = b.Version, b.Data
	}
	undone := map[int64]bool{}
	for _, e := range j.Entries {
		if e.Event.Type == protocol.EvUndo {
			undone[e.Event.Target] = true
		}
	}
	var verdictOf *protocol.SummaryView
	for _, e := range j.Entries {
		if v := e.View.Summary; v != nil && v.Title != "" {
			verdictOf = v
		}
	}
	s.First, s.Remarks, s.clock = s.first(&last.View, verdictOf, j.Details), j.Remarks, clock
	s.Readings = readings(w, j.Entries, undone, j.Remarks)
	s.Timeline = timeline(s, j.Entries, clock, undone)
	doubts := doubts{w: w}
	why, belief := "", ""
	before := "" // picture taken before the work
	for _, e := range j.Entries {
		r := row{w: w, Seq: e.Event.Seq, At: onDay(s.Begun, clock(e.Event.At)), Stage: stageName(e.View), Undone: undone[e.Event.Seq]}
		fillEvent(&r, e, j.Photos)
		if p := e.Event.Photo; p != nil && p.ID == "before" {
			before = p.Name
		}
		if seen := e.Event.Seen; seen != nil && len(seen.Wires) > 0 {
			r.Drawn = append(r.Drawn, drawn(w, j.Photos[before], seen.Wires, false), drawn(w, j.Photos[seen.Photo], seen.Wires, true))
		}
		for _, f := range e.Effects {
			if f.Type != protocol.DoSay {
				continue
			}
			r.Said = append(r.Said, saying{f.Level, f.Text})
			switch f.Level {
			case "caution", "warning", "danger":
				if !slices.Contains(s.Cautions, f.Text) {
					s.Cautions = append(s.Cautions, f.Text)
				}
			}
		}
		if h := e.View.Heard; h != nil && e.Event.Type == protocol.EvSaid && !h.Pending {
			r.Taken, r.Verdict, r.Limit = h.Taken, verdict(w, h.Verdict), h.Limit
			if h.U > 0 {
				r.Value = fmt.Sprintf("±%.3g %s", h.U, w.Printed(h.Unit))
			}
		}
		if h := e.View.Heard; h != nil && e.Event.Type == protocol.EvSaid && h.Pending && len(h.Rivals) > 0 {
			doubts.again(r.Seq, e.View.Step.ID, h.Text, h.Rivals)
		}
		if r.Undone {
			doubts.add(w.Term("record.doubt-back", "n", fmt.Sprint(r.Seq), "text", fmt.Sprintf("%q", r.Heard)))
		}
		if e.View.Why != nil && e.View.Why.Short != why { // once for each check
			why = e.View.Why.Short
			r.Why = why
		}
		var sus []string
		for _, x := range e.View.Suspects {
			sus = append(sus, fmt.Sprintf("%s %.0f%%", x.Name, 100*x.P))
		}
		if text := strings.Join(sus, ", "); text != belief {
			belief = text
			r.Suspects = text
		}
		if r.Event == "" && r.Heard == "" && len(r.Said) == 0 {
			continue // a tick or an end of speech that changed nothing
		}
		s.Rows = append(s.Rows, r)
	}
	s.Doubts = doubts.list
	s.Belief = beliefPicture(w, j.Entries)
	return s, nil
}

// doubts gathers what was asked again, in one line for each step however often that was, and what was taken back.
type doubts struct {
	w     *words.Words
	list  []string
	step  string
	first string // the line of the step without how often
	times int
}

func (d *doubts) again(seq int64, step, text string, rivals []string) {
	if step == d.step && d.times > 0 {
		d.times++
		d.list[len(d.list)-1] = d.w.Term("record.doubt-times", "doubt", d.first, "n", fmt.Sprint(d.times))
		return
	}
	d.add(d.w.Term("record.doubt-again", "n", fmt.Sprint(seq), "text", fmt.Sprintf("%q", text), "rivals", few(rivals, ", ")))
	d.step, d.first, d.times = step, d.list[len(d.list)-1], 1
}

func (d *doubts) add(line string) { d.list, d.times = append(d.list, line), 0 }

// few keeps the first of many rivals: the journal has them all.
func few(rivals []string, sep string) string {
	return strings.Join(rivals[:min(len(rivals), 3)], sep)
}

func stageName(v protocol.View) string {
	if i := v.StageNo - 1; i >= 0 && i < len(v.Stages) {
		return v.Stages[i]
	}
	return v.Stage
}

func fillEvent(r *row, e Entry, photos map[string][]byte) {
	switch ev := e.Event; ev.Type {
	case protocol.EvBegin:
		r.Event = r.w.Term("record.began")
	case protocol.EvResume:
		r.Event = r.w.Term("record.resumed")
	case protocol.EvUndo:
		r.Event = r.w.Term("record.undone", "n", fmt.Sprint(ev.Target))
	case protocol.EvSaid:
		if u := ev.Said; u != nil {
			r.Heard, r.Source = u.Text, u.Source
			if r.Heard == "" && u.Best() != nil {
				r.Heard = meaningWords(r.w, *u.Best())
			}
			r.Rivals = few(u.Rivals, " / ")
		}
	case protocol.EvSeen:
		fillSeen(r, ev.Seen, photos)
	case protocol.EvPhoto:
		if p := ev.Photo; p != nil && p.Marks != nil {
			r.Event = r.w.Term("record.marked", "n", fmt.Sprint(len(p.Marks)), "picture", r.w.Name("picture", p.ID))
		} else if p != nil {
			r.Event = r.w.Term("record.picture", "picture", r.w.Name("picture", p.ID))
			r.Picture = &picture{Name: p.Name}
			if data, ok := photos[p.Name]; ok {
				r.Picture.URL = dataURL(data)
			}
		}
	case protocol.EvDevice:
		if d := ev.Device; d != nil {
			r.Event = strings.TrimSpace(r.w.Term("record.device", "kind", r.w.Name("device", d.Kind)) + " " + d.Text)
		}
	}
}

func meaningWords(w *words.Words, m utterance.Meaning) string {
	switch {
	case m.Reading != nil && m.Reading.State != "":
		return w.Name("state", string(m.Reading.State))
	case m.Reading != nil:
		return m.Reading.Value.Dec.String() + " " + w.Printed(m.Reading.Value.Unit)
	case m.Text != "":
		return m.Text
	}
	return m.ID
}

// siteWords lists the state of the place as a technician needs it: first what can hurt.
func siteWords(w *words.Words, v protocol.SiteView) []string {
	out := []string{w.Term("record.power", "state", w.Name("state", v.Power))}
	if v.Gas != "" && v.Gas != "none" && v.Gas != "unknown" {
		out = append(out, w.Term("record.gas", "state", w.Name("state", v.Gas)))
	}
	add := func(id string, items []string) {
		if len(items) == 0 {
			out = append(out, w.Term("record.no-"+id))
			return
		}
		out = append(out, w.Term("record."+id, "list", strings.Join(items, ", ")))
	}
	add("covers", v.Covers)
	add("jumpers", v.Jumpers)
	add("wires", v.Wires)
	if v.Door != "" {
		out = append(out, w.Term("record.door", "state", w.Name("state", v.Door)))
	}
	if v.Jack {
		out = append(out, w.Term("record.jack"))
	}
	if len(v.Resets) > 0 {
		out = append(out, w.Term("record.resets", "list", strings.Join(v.Resets, ", ")))
	}
	return out
}

// verdict is a verdict in words, empty where there is none.
func verdict(w *words.Words, v measure.Verdict) string {
	return w.Name("verdict", strings.ReplaceAll(string(v), " ", "-"))
}
