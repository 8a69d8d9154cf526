package report

import (
	"fmt"
	"strings"

	"readback/core/protocol"
	"readback/core/words"
)

// Details are what somebody wrote of the place and the appliance by hand. All of it may be empty.
type Details struct {
	Name    string `json:"name,omitempty"`    // what the job is called in the list
	Address string `json:"address,omitempty"` // where the appliance stands
	Model   string `json:"model,omitempty"`
	Serial  string `json:"serial,omitempty"`
	Note    string `json:"note,omitempty"`
}

// Remark is what somebody who replayed the job has to say to one answer: signed, beside the record, which it does not change.
type Remark struct {
	Seq     int64  `json:"seq"` // event that the answer came with
	At      int64  `json:"at"`  // ms: when it was written
	By      string `json:"by"`  // name of who signs
	Text    string `json:"text,omitempty"`
	Value   string `json:"value,omitempty"` // the value that was put in its place, empty: reckoned without it
	Was     string `json:"was"`             // what the answers say with it
	Is      string `json:"is"`              // and what without it, or with the other value
	Journal string `json:"journal"`         // SHA-256 of the journal that it is about
}

// measured is one reading of the table: where, on which setting, what, held against what.
type measured struct {
	seq                                           int64
	where, setting, value, limit, verdict, remark string
	undone                                        bool
}

// moment is one line of the timeline.
type moment struct {
	seq             int64
	at, what, taken string
	undone          bool
}

// first is what a technician has to know before all else: in ten lines.
func (s *sheet) first(last *protocol.View, verdict *protocol.SummaryView, d Details) [][2]string {
	w := s.w
	var out [][2]string
	add := func(term, text string) {
		if text != "" {
			out = append(out, [2]string{w.Term("record." + term), text})
		}
	}
	what, sure := s.Outcome, ""
	if verdict != nil && verdict.Title != "" {
		what, sure = verdict.Title, verdict.Sure
	} else if len(last.Suspects) > 0 && s.Outcome != outcome(w, "fixed") && last.Call == "" {
		sure = last.Suspects[0].Name + ", " + last.Suspects[0].Words
	}
	if what == "" {
		what = w.Term("record.unfinished")
	}
	add("what", sentences(what, sure, outcomeBeside(what, s.Outcome)))
	if verdict != nil {
		var proofs []string
		for _, r := range verdict.Rows {
			if r.Label == w.Term("summary.proof") {
				proofs = append(proofs, r.Text)
			}
		}
		add("evidence", strings.Join(proofs, " "))
	}
	add("now", strings.Join(s.Site, ", "))
	unsafe := append([]string(nil), s.Open...)
	if p := last.Site.Power; p == "on" && last.Ended != "" && last.Ended != "fixed" && last.Ended != "nothing-wrong" || p == "unknown" {
		unsafe = append(unsafe, w.Term("record.power", "state", w.Name("state", p)))
	}
	if len(unsafe) == 0 {
		unsafe = []string{w.Term("record.none-open")}
	}
	add("unsafe", strings.Join(unsafe, ", "))
	if last.Summary != nil {
		var bring []string
		for _, r := range last.Summary.Rows {
			switch r.Label {
			case w.Term("summary.buy"), w.Term("summary.match"), w.Term("summary.plate"):
				bring = append(bring, strings.TrimSuffix(r.Text, "."))
			}
		}
		add("bring", strings.Join(bring, "; "))
	}
	add("place", sentences(d.Name, d.Address))
	add("unit", sentences(joined(w.Term("record.model"), d.Model), joined(w.Term("record.serial"), d.Serial), d.Note))
	return out
}

// outcomeBeside is the outcome where the first line does not say it already.
func outcomeBeside(what, outcome string) string {
	if what == outcome {
		return ""
	}
	return outcome
}

func joined(label, text string) string {
	if text == "" {
		return ""
	}
	return label + " " + text
}

func sentences(parts ...string) string { return strings.Join(nonEmpty(parts...), ". ") }

// readings gathers what was measured, with the step that asked for it.
func readings(w *words.Words, entries []Entry, undone map[int64]bool, remarks []Remark) []measured {
	var out []measured
	var asked protocol.StepView
	for _, e := range entries {
		h := e.View.Heard
		if e.Event.Type == protocol.EvSaid && h != nil && !h.Pending && (h.Verdict != "" || len(asked.Keypad) > 0 && asked.Meter != "" && strings.ContainsAny(h.Taken, "0123456789")) {
			m := measured{seq: e.Event.Seq, where: first(asked.Where, asked.Act), setting: strings.TrimSuffix(asked.Meter, "."), value: h.Taken, limit: h.Limit, verdict: verdict(w, h.Verdict), undone: undone[e.Event.Seq]}
			if h.U > 0 {
				m.value += fmt.Sprintf(" ± %.2g", h.U)
			}
			for _, r := range remarks {
				if r.Seq == m.seq {
					m.remark = w.Term("record.doubted", "by", r.By)
				}
			}
			if n := len(out); n == 0 || out[n-1].seq != m.seq {
				out = append(out, m)
			}
		}
		asked = e.View.Step
	}
	return out
}

func first(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// timeline is what was asked and what was done, one line each.
func timeline(s *sheet, entries []Entry, clock func(int64) string, undone map[int64]bool) []moment {
	var out []moment
	asked := ""
	for _, e := range entries {
		r := row{w: s.w, Seq: e.Event.Seq}
		fillEvent(&r, e, nil)
		m := moment{seq: e.Event.Seq, at: onDay(s.Begun, clock(e.Event.At)), undone: undone[e.Event.Seq]}
		switch {
		case e.Event.Type == protocol.EvSaid:
			m.what, m.taken = asked, r.Heard
			if h := e.View.Heard; h != nil && !h.Pending && h.Taken != "" {
				m.taken = h.Taken
				if h.Verdict != "" {
					m.taken += ", " + verdict(s.w, h.Verdict)
				}
			}
		case r.Event != "" && e.Event.Type != protocol.EvSeen && e.Event.Type != protocol.EvDevice:
			m.what = r.Event
		}
		if m.what != "" || m.taken != "" {
			out = append(out, m)
		}
		asked = first(e.View.Step.Act, e.View.Step.Say)
		if e.View.Step.Kind == "look" && e.View.Step.Say != "" {
			asked = e.View.Step.Say
		}
	}
	return out
}

// table is the readings as a table.
func (s *sheet) table() markup {
	if len(s.Readings) == 0 {
		return ""
	}
	cell := func(text string) markup { return "<td>" + escape(text) + "</td>" }
	rows := []markup{"<thead><tr>"}
	for _, id := range []string{"number", "where", "setting", "value", "limit", "verdict"} {
		rows = append(rows, "<th>", escape(s.w.Term("record."+id)), "</th>")
	}
	rows = append(rows, "</tr></thead>")
	for _, m := range s.Readings {
		class := ""
		if m.undone {
			class = ` class="undone"`
		}
		rows = append(rows, markup(fmt.Sprintf("\n<tr%s>", class)), cell(fmt.Sprint(m.seq)), cell(m.where), cell(m.setting), cell(m.value), cell(m.limit), cell(strings.Join(nonEmpty(m.verdict, m.remark), "; ")), "</tr>")
	}
	return el("table", `class="readings"`, rows...)
}

// line is the timeline as a list in two columns.
func (s *sheet) line() markup {
	var items []markup
	for _, m := range s.Timeline {
		class := ""
		if m.undone {
			class = `class="undone"`
		}
		items = append(items, el("li", class, el("span", `class="num"`, escape(m.at)), " ", escape(m.what), el("span", `class="took"`, escape(m.taken))), "\n")
	}
	return el("ol", `class="line2"`, items...)
}

// remarked lists the remarks, each with its signature.
func (s *sheet) remarked(clock func(int64) string) markup {
	var items []markup
	for _, r := range s.Remarks {
		head := s.w.Term("record.remark", "n", fmt.Sprint(r.Seq), "by", r.By, "time", clock(r.At))
		how := s.w.Term("record.without")
		if r.Value != "" {
			how = s.w.Term("record.with", "value", r.Value)
		}
		sum := r.Journal
		if len(sum) > 12 {
			sum = sum[:12]
		}
		items = append(items, el("li", "", el("span", `class="verdict"`, escape(head)), escape(" "+how+" "+r.Is+" "+s.w.Term("record.before-that", "was", r.Was)), para("", r.Text), para("num", s.w.Term("record.signed", "sum", sum))))
	}
	return el("ul", "", items...)
}
