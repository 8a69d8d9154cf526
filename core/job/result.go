package job

// Result is what has come of a job so far, in ids.
type Result struct {
	Outcome string   `json:"outcome"`          // fixed, nothing-wrong, stopped, unresolved, handed-over, part-awaited…; empty while the job goes on
	Repair  string   `json:"repair,omitempty"` // repair that the verdict names or named last, empty for none
	P       float64  `json:"p,omitempty"`      // its probability when it was named
	Mended  []string `json:"mended,omitempty"` // repairs carried out, in order
	Stop    string   `json:"stop,omitempty"`   // stop line reached, empty for none
	Checks  int      `json:"checks"`           // checks and looks answered so far, the safety questions, the story and the plate among them
}

// Result tells what has come of the job so far.
func (m *Machine) Result() Result {
	j := m.j
	r := Result{Checks: len(j.findings)}
	if j.state == "ended" || j.ending {
		r.Outcome = j.outcome
	}
	if j.repair >= 0 {
		r.Repair, r.P = m.model.Repairs[j.repair].ID, j.advice.P
	}
	for _, x := range j.mended {
		r.Mended = append(r.Mended, m.model.Repairs[x.Repair].ID)
	}
	if r.Repair == "" && len(r.Mended) > 0 {
		r.Repair = r.Mended[len(r.Mended)-1]
	}
	if j.stop >= 0 {
		r.Stop = m.model.Stops[j.stop].ID
	}
	return r
}
