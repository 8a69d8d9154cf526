package session

// Result is what has come of a job so far, in ids.
type Result struct {
	Outcome string   // fixed, nothing-wrong, stopped, unresolved, handed-over, part-awaited…; empty while the job goes on
	Repair  string   // repair that the verdict names or named last, empty for none
	P       float64  // its probability when it was named
	Mended  []string // repairs carried out, in order
	Stop    string   // stop line reached, empty for none
	Checks  int      // checks and looks answered so far, the safety questions, the story and the plate among them
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
