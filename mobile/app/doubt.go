package app

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"readback/core/job"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/report"
	"readback/core/unit"
	"readback/mobile/drawing"
)

// Beside the journal of a job lie what was written of it by hand, and the remarks of those who replayed it. Neither changes the journal.
const (
	detailsName = "details.json"
	remarksName = "remarks.json"
	mostRemarks = 200
	mostDetail  = 300 // bytes of one line
)

func (s *store) details(id string) report.Details {
	return kept(s, inJob(id, detailsName), report.Details{})
}

func (s *store) remarks(id string) []report.Remark {
	return kept(s, inJob(id, remarksName), []report.Remark(nil))
}

// writeDetails keeps what is written by hand of a job.
func (h *Hub) writeDetails(id string, body []byte) (any, error) {
	var d report.Details
	if err := decodeStrict(body, &d); err != nil {
		return nil, bad(err)
	}
	for _, f := range []*string{&d.Name, &d.Address, &d.Model, &d.Serial, &d.Note} {
		*f = strings.TrimSpace(protocol.Plain(*f, mostDetail))
	}
	data, err := json.Marshal(d)
	if err == nil {
		err = h.store.keep(id, detailsName, data)
	}
	if err != nil {
		return nil, fmt.Errorf("details of job %s: %w", id, err)
	}
	h.out.send(Message{Type: "jobs"})
	return d, nil
}

// Doubt is what somebody doubts: an answer by its event, and what to reckon with in its place.
type Doubt struct {
	Seq    int64  `json:"seq"`
	Value  string `json:"value,omitempty"`  // a reading in digits with its unit: "121.3 V"
	Option string `json:"option,omitempty"` // another answer of the same check
	By     string `json:"by,omitempty"`     // to sign a remark
	Text   string `json:"text,omitempty"`
}

// Doubted is what the answers say with the answer, and without it.
type Doubted struct {
	Was job.Opinion `json:"was"`
	Is  job.Opinion `json:"is"`
}

var errNoFinding = httpError{400, errors.New("doubt: that event brought no answer of a check")}

// doubt reckons anew. The moment is the last one before a repair was begun, when the answer was known by then: that is where it decided
// something.
func (h *Hub) doubt(id string, d Doubt) (Doubted, error) {
	read, err := h.store.load(id)
	if err != nil {
		return Doubted{}, err
	}
	value, err := readingOf(d.Value)
	if err != nil {
		return Doubted{}, err
	}
	type reconsiders interface {
		Findings() []job.Finding
		Reconsider(finding int, r *measure.Reading, option string) (was, is job.Opinion, err error)
	}
	var out Doubted
	at, answered, fail := -1, false, error(nil)
	n := 0
	_, _, err = replay(h.cfg.New, read.Events, func(ev protocol.Event, _ []protocol.Effect, m Machine) {
		r, ok := m.(reconsiders)
		if !ok || fail != nil {
			return
		}
		f := r.Findings()
		if ev.Seq == d.Seq && len(f) > n {
			at = n
		}
		n = len(f)
		v := m.View()
		if at < 0 || at >= n || v == nil || answered && v.StageNo >= swapStage {
			return
		}
		if v.StageNo >= swapStage || ev.Seq == read.Events[len(read.Events)-1].Seq || v.Summary != nil && !answered {
			out.Was, out.Is, fail = r.Reconsider(at, value, d.Option)
			answered = true
		}
	})
	switch {
	case err != nil:
		return Doubted{}, err
	case fail != nil:
		return Doubted{}, httpError{400, fail}
	case !answered:
		return Doubted{}, errNoFinding
	}
	return out, nil
}

// swapStage is the number of the stage in which a repair is begun.
const swapStage = 13

// readingOf reads a value that was typed: digits, a unit; "OL" for above the range.
func readingOf(text string) (*measure.Reading, error) {
	if text == "" {
		return nil, nil
	}
	if strings.EqualFold(text, "OL") {
		return &measure.Reading{State: measure.Over}, nil
	}
	digits, u, _ := strings.Cut(strings.TrimSpace(text), " ")
	if _, ok := unit.Lookup(u); !ok {
		return nil, httpError{400, fmt.Errorf("doubt: %q has no unit that is known: write it as 121.3 V", protocol.Plain(text, 40))}
	}
	if _, err := strconv.ParseFloat(digits, 64); err != nil || len(digits) > 12 || strings.ContainsAny(digits, "eExXpP_nN+") {
		return nil, httpError{400, fmt.Errorf("doubt: %q is no number: write it as 121.3 V", protocol.Plain(text, 40))}
	}
	return &measure.Reading{Value: unit.Of(digits, u)}, nil
}

// remark keeps a doubt with what follows from it, signed.
func (h *Hub) remark(id string, d Doubt) (any, error) {
	d.By, d.Text = strings.TrimSpace(protocol.Plain(d.By, 80)), strings.TrimSpace(protocol.Plain(d.Text, 600))
	if d.By == "" {
		return nil, httpError{400, errors.New("remark: it is signed with a name")}
	}
	out, err := h.doubt(id, d)
	if err != nil {
		return nil, err
	}
	data, err := h.store.file(id, journalName)
	if err != nil {
		return nil, err
	}
	list := h.store.remarks(id)
	if len(list) >= mostRemarks {
		return nil, httpError{400, fmt.Errorf("remark: this job has %d of them, which is all that are kept", mostRemarks)}
	}
	value := d.Value
	if value == "" {
		value = d.Option
	}
	list = append(list, report.Remark{Seq: d.Seq, At: h.cfg.Now(), By: d.By, Text: d.Text, Value: value, Was: opinionWords(out.Was), Is: opinionWords(out.Is), Journal: sum(data)})
	text, err := json.Marshal(list)
	if err == nil {
		err = h.store.keep(id, remarksName, text)
	}
	if err != nil {
		return nil, fmt.Errorf("remark on job %s: %w", id, err)
	}
	return list, nil
}

func opinionWords(o job.Opinion) string {
	text := o.Next + "."
	if len(o.Suspects) > 0 {
		text = o.Suspects[0].Name + ", " + o.Suspects[0].Words + "; " + text
	}
	return text
}

// drawingAt is the picture of the step that was open after one event of a job.
func (h *Hub) drawingAt(id, seq string) (any, error) {
	n, err := strconv.ParseInt(seq, 10, 64)
	if err != nil {
		return nil, errNotFound
	}
	read, err := h.store.load(id)
	if err != nil || len(read.Events) == 0 || read.Events[0].Begin == nil {
		return nil, errNoDrawing
	}
	at := slices.IndexFunc(read.Events, func(ev protocol.Event) bool { return ev.Seq == n })
	if at < 0 {
		return nil, errNoDrawing
	}
	m, _, err := replay(h.cfg.New, read.Events[:at+1], nil)
	if err != nil {
		return nil, err
	}
	l, err := load(h.cfg.Lang)
	if err != nil {
		return nil, err
	}
	model, err := l.model(read.Events[0].Begin.Appliance)
	v := m.View()
	if err != nil || v == nil {
		return nil, errNoDrawing
	}
	svg := drawing.Picture(l.words, model, v, false)
	if svg == "" {
		return nil, errNoDrawing
	}
	return blob{kinds[".svg"], []byte(svg)}, nil
}
