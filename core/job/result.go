package job

import "readback/core/protocol"

// Result tells what has come of the job so far.
func (m *Machine) Result() protocol.Result {
	j := m.j
	r := protocol.Result{Checks: len(j.findings)}
	if j.state == "ended" || j.ending {
		r.Outcome = j.outcome
	}
	if j.repair >= 0 {
		r.Repair, r.P = m.model.Repairs[j.repair].ID, j.advice.P
	}
	for _, x := range j.mended {
		r.Mended = append(r.Mended, m.model.Repairs[x.Repair].ID)
	}
	if s, ok := m.likely(); ok && r.Outcome == "unresolved" {
		r.Likely = s.Part
	}
	if r.Repair == "" && len(r.Mended) > 0 {
		r.Repair = r.Mended[len(r.Mended)-1]
	}
	if j.stop >= 0 {
		r.Stop = m.model.Stops[j.stop].ID
	}
	return r
}
