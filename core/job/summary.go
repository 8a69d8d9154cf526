package job

import (
	"fmt"
	"slices"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/words"
)

// summary is the answer to the whole job on one page: what is wrong and what proves it, once a repair is named and until it is begun; what
// was wrong and what was done, at the end. It is nil in between.
func (m *Machine) summary() *protocol.SummaryView {
	j := m.j
	switch {
	case j.alarm != "" || j.happened != "":
		return nil // what to tell whoever comes stands in the hand-over, and nothing beside it
	case j.state == "ended":
		return m.endSummary()
	case j.repair >= 0 && j.stage >= sCause && j.stage <= sPart && !j.ending:
		return m.verdictSummary()
	}
	return nil
}

func (m *Machine) verdictSummary() *protocol.SummaryView {
	j := m.j
	r := &m.model.Repairs[j.repair]
	s := &protocol.SummaryView{Title: words.Capital(m.words.Term("summary.found", "what", m.subject(j.repair))), Sure: words.Capital(m.words.Chance(j.advice.P))}
	s.Parts = m.partsOf(r)
	for i, p := range j.advice.Proofs {
		if i < 2 {
			m.row(s, "summary.proof", p)
		}
	}
	if text := m.printedCost(r); text != "" {
		m.row(s, "summary.costs", text)
	}
	if r.Kind != "call" {
		m.row(s, "summary.you", r.Name)
	}
	if pay := m.visit(); pay != "" && r.Kind != "set" {
		m.row(s, "summary.technician", m.words.Term("summary.visit", "price", pay))
	}
	return s
}

func (m *Machine) endSummary() *protocol.SummaryView {
	j := m.j
	s := &protocol.SummaryView{}
	last := j.repair
	for _, x := range j.mended {
		m.row(s, "summary.wrong", m.subject(x.Repair))
		m.row(s, "summary.done", m.model.Repairs[x.Repair].Name)
		if text := m.printedCost(&m.model.Repairs[x.Repair]); text != "" {
			m.row(s, "summary.costs", text)
		}
		last = x.Repair
	}
	switch j.outcome {
	case "fixed":
		if pay := m.visit(); pay != "" {
			m.row(s, "summary.saved", m.words.Term("summary.visit", "price", pay))
		}
		m.row(s, "summary.watch", m.words.Term("summary.watch-for"))
		m.row(s, "summary.keep", m.words.Term("summary.keep-what"))
	case "part-awaited":
		if last >= 0 {
			r := &m.model.Repairs[last]
			m.row(s, "summary.buy", m.subject(last))
			for _, x := range r.Match {
				m.row(s, "summary.match", x)
			}
			for i := range m.model.Plate {
				p := &m.model.Plate[i]
				if v := j.plate[p.ID]; v != "" && v != "unknown" {
					m.row(s, "summary.plate", p.Name+": "+v)
				}
			}
			m.row(s, "summary.bring", m.words.Term("summary.old-part"))
			m.row(s, "summary.then", m.words.Term("summary.go-on"))
		}
	}
	if last >= 0 {
		s.Parts = m.partsOf(&m.model.Repairs[last])
	}
	if len(s.Rows) == 0 {
		return nil
	}
	return s
}

func (m *Machine) row(s *protocol.SummaryView, term, text string) {
	s.Rows = append(s.Rows, protocol.SummaryRow{Label: m.words.Term(term), Text: sentence(text)})
}

func (m *Machine) partsOf(r *appliance.Repair) []string {
	if r.Part < 0 {
		return nil
	}
	return []string{m.model.Parts[r.Part].ID}
}

// printedCost is what a repair costs in money and minutes, in digits: it is read and not heard.
func (m *Machine) printedCost(r *appliance.Repair) string {
	price, minutes := m.words.SpanPrinted(r.Price), m.words.SpanPrinted(r.Minutes)
	switch {
	case price != "" && minutes != "":
		return m.words.Term("summary.part-and-time", "price", price, "minutes", minutes)
	case price != "":
		return m.words.Term("summary.part-only", "price", price)
	case minutes != "":
		return m.words.Term("summary.time-only", "minutes", minutes)
	}
	return ""
}

// visit is what a technician's visit costs: as the person says, else as the file does.
func (m *Machine) visit() string {
	if p := m.j.price; p != nil {
		return p.Value.Dec.String()
	}
	if usual, ok := m.usualVisit(); ok {
		return m.words.SpanPrinted(usual)
	}
	return ""
}

// reopen goes on with a job that waited for its part: at the match of the new one, after the place is made safe again.
func (m *Machine) reopen() {
	j := m.j
	j.state, j.outcome, j.handover = "ask", "", ""
	j.ending, j.leaveOn = false, false
	j.done.left, j.done.items, j.done.handed, j.done.matched = false, false, false, false
	j.stage = sPart
}

// Opinion is what the answers say at one moment: who is suspected, and what would be asked or done next.
type Opinion struct {
	Suspects []protocol.Suspect `json:"suspects,omitempty"`
	Next     string             `json:"next"`
	Closed   bool               `json:"closed,omitempty"` // next is a repair and no check
}

// Reconsider tells what the answers say as they are, and what they would say if one of them were left out, or had another value or option.
// Nothing changes: it is for somebody who doubts that answer afterwards.
func (m *Machine) Reconsider(finding int, r *measure.Reading, option string) (was, is Opinion, err error) {
	f := m.j.findings
	if finding < 0 || finding >= len(f) {
		return was, is, fmt.Errorf("session: there are %d answers, none numbered %d", len(f), finding)
	}
	other := append([]Finding(nil), f...)
	x := &other[finding]
	c := &m.model.Checks[x.Check]
	switch {
	case r != nil:
		if x.Reading == nil {
			return was, is, fmt.Errorf("session: %s was no reading", c.ID)
		}
		x.Reading = r
	case option != "":
		k := slices.IndexFunc(c.Options, func(o appliance.Option) bool { return o.ID == option })
		if k < 0 {
			return was, is, fmt.Errorf("session: %s has no answer %q", c.ID, option)
		}
		x.Option, x.Reading, x.Unknown = k, nil, false
	default:
		*x = Finding{Check: x.Check, Option: -1, Unknown: true}
	}
	stages := []string{"free", "watch"}
	if m.j.stage > sWatch {
		stages = planStages
	}
	q := m.query(stages)
	was = m.opinion(m.adv.Advise(q))
	q.Findings = other
	return was, m.opinion(m.adv.Advise(q)), nil
}

func (m *Machine) opinion(a Advice) Opinion {
	o := Opinion{Next: m.line("unresolved"), Closed: a.Verdict}
	for i, s := range a.Suspects {
		if i == 5 {
			break
		}
		if s.Words == "" {
			s.Words = m.words.Chance(s.P)
		}
		o.Suspects = append(o.Suspects, s)
	}
	switch {
	case a.Verdict && a.Repair >= 0:
		o.Next = words.Capital(m.model.Repairs[a.Repair].Name)
	case a.Verdict:
		o.Next = m.line("verdict.nothing")
	case a.Check >= 0:
		o.Next = words.Capital(m.model.Checks[a.Check].Name)
	}
	return o
}
