package job

import (
	"readback/core/measure"
	"readback/core/worksite"
	"strings"
)

// Times of the proof of dead, in ms: judgement, no source. NFPA 70E wants the test right before the work and does not
// say how long it lasts.
const (
	proofBreak = 180_000 // a longer silence ends the run of its readings
	proofLasts = 900_000 // it is as good as this for work inside
)

// proofRuns ends a proof that was interrupted and one that has grown old: the supply is off, as far as anybody knows, and
// dead is proved again before hands go in.
func (m *Machine) proofRuns() {
	j := m.j
	if j.site.Proof != 0 && j.now-j.proofAt > proofBreak {
		m.breakProof()
	}
	if m.proofAged() {
		j.site.Power = worksite.Off
		m.setPower()
		m.say("info", m.line("proof.aged"))
	}
}

// proofAged tells whether dead was proved too long ago. What has no house voltage needs no proof.
func (m *Machine) proofAged() bool {
	j := m.j
	return m.model.Mains && j.site.Power == worksite.Proved && j.now-j.provedAt > proofLasts
}

// breakProof forgets the readings of a proof under way: it is one unbroken run or none.
func (m *Machine) breakProof() {
	if m.j.site.Proof != 0 {
		m.j.site.Proof, m.j.proveAt = 0, 0
	}
}

// atDead tells whether an open question stands on the proof of dead.
func (m *Machine) atDead(q *question) bool {
	return q != nil && (q.act.HandsIn() || q.act.Kind == worksite.None && q.kind != "consent" && q.task.need(m).Power == worksite.Dead)
}

// onProof works one of the five readings of live-dead-live.
func (m *Machine) onProof(q *question, r *measure.Reading) {
	j := m.j
	if j.site.Proof != 0 && j.now-j.proofAt > proofBreak { // it came late, before any tick
		m.breakProof()
		m.say("info", m.line("proof.broken"))
		return
	}
	good := isZero(r)
	if !q.act.Zero() {
		v := r.Value.Base()
		good = r.State == measure.Number && (v >= 90 && v <= 300 || v <= -90)
	}
	if good {
		j.site = m.rules.Apply(j.site, q.act, worksite.Done)
		j.proofAt, j.proveAt = j.now, 0 // consent was for this run
		m.say("info", sentence(m.reading(r), m.line("proof."+q.act.Kind.String())))
		if j.site.Power == worksite.Proved {
			j.proofBad, j.liveBad, j.provedAt = 0, 0, j.now
			m.setPower()
			m.say("info", m.line("power.proved"))
		}
		return
	}
	j.site = m.rules.Apply(j.site, q.act, worksite.Failed)
	m.setPower()
	if q.act.Zero() {
		m.stillLive(q, r)
		return
	}
	j.liveBad++
	m.say("warning", m.line("proof.nolive", "value", m.reading(r)))
	if j.liveBad >= 3 {
		m.cannotProve("proof.nometer")
	}
}

// stillLive works voltage where none may be. The wrong switch is common, so the person may look once; live again is a
// stop line: nobody touches it, and the record says between which points.
func (m *Machine) stillLive(q *question, r *measure.Reading) {
	j := m.j
	j.proofBad++
	m.say("danger", m.signal("danger")+m.line("proof.live", "value", m.reading(r)))
	where := firstOf(strings.TrimRight(m.nameOf(q.act), "."), m.line("dead."+q.act.Kind.String()))
	m.fact(m.line("proof.live.fact", "where", where, "value", m.reading(r)))
	if j.proofBad < 2 {
		return
	}
	j.noProof = true
	m.say("danger", m.signal("danger")+m.line("proof.stop"))
	if open := m.openWords(); len(open) > 0 {
		m.say("danger", m.line("left.open", "what", m.words.And(open)))
	}
	j.ending = true
	m.endNow("still-live")
}

// cannotProve gives up proving dead: what needs it is not asked any more, and a repair goes to somebody else.
func (m *Machine) cannotProve(line string) {
	j := m.j
	j.noProof = true
	m.say("warning", m.line(line))
	m.fact(m.line(line))
	if j.task != nil {
		m.block(j.task)
	}
}

// emptyVolts is the most that a discharged capacitor may show, d.c. volts: common practice, no source.
const emptyVolts = 5.0

// onEmpty works the reading of a capacitor that was discharged.
func (m *Machine) onEmpty(q *question, r *measure.Reading) {
	j := m.j
	v := r.Value.Base()
	if r.State == measure.Number && v < emptyVolts && v > -emptyVolts {
		j.site = m.rules.Apply(j.site, q.act, worksite.Done)
		m.say("info", sentence(m.reading(r), m.line("empty.good")))
		return
	}
	j.site = m.rules.Apply(j.site, q.act, worksite.Failed)
	m.say("danger", m.signal("danger")+m.line("empty.charged", "value", m.reading(r)))
	if j.refused["empty"]++; j.refused["empty"] >= 3 && j.task != nil {
		m.block(j.task)
	}
}
