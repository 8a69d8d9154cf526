package job

import (
	"readback/core/protocol"
	"readback/core/vocab"
	"readback/core/worksite"
)

// Times of waiting, in ms. Judgement: no study of check-ins during hand work was found.
const (
	tLook     = 20_000
	tProbe    = 45_000
	tCover    = 120_000
	tTool     = 240_000
	tQuiet    = 180_000 // from the second check-in to silent waiting
	tTimed    = 20_000  // between announcements of a jumper or a held door switch
	timedMax  = 180_000 // how long such a thing may stay
	tAway     = 120_000 // how long a call may last before the supply is not believed
	tNextDay  = 10 * 3600_000
	tAlarm    = 15_000
	longBreak = 600_000 // after which steps are said in full again
	cycleTime = 600_000
)

// patience is how long a step may take before the guide asks whether all is well.
func (m *Machine) patience(q *question) int64 {
	switch q.act.Kind {
	case worksite.None:
	case worksite.PowerOff, worksite.PowerOn:
		return tTool
	case worksite.OpenCover, worksite.CloseCover, worksite.LiftWire, worksite.RefitWire, worksite.MeterIn, worksite.MeterOut, worksite.JumperIn, worksite.JumperOut, worksite.Discharge:
		return tCover
	default:
		return tProbe
	}
	return q.task.patience(m)
}

// timer sets the next waking.
func (m *Machine) timer() {
	j := m.j
	j.wake = 0
	at := func(t int64) {
		if j.wake == 0 || t < j.wake {
			j.wake = t
		}
	}
	switch {
	case j.state == "ended":
		return
	case j.alarm != "" || j.doubtAsk:
		if j.alarmN < 3 {
			at(j.alarmAt + tAlarm*int64(j.alarmN+1))
		}
		if j.wake != 0 && j.wake <= j.now {
			j.wake = j.now + 1000
		}
		return
	}
	if j.site.Timed() {
		at(j.timedAt + tTimed*int64(j.timedN+1))
	}
	if q := j.q; q != nil && !j.holding {
		if q.act.Proof() && j.site.Proof != 0 {
			at(j.proofAt + proofBreak + 1)
		}
		if m.model.Mains && j.site.Power == worksite.Proved && m.atDead(q) {
			at(j.provedAt + proofLasts + 1)
		}
		if m.rules.Exposed(j.site) {
			at(q.base + tAllRight*int64(min(q.silent, 2)+1))
		}
	}
	if q := j.q; q != nil && !j.holding {
		if d, ok := m.due(q); ok {
			at(d)
		}
	}
	if j.wake != 0 && j.wake <= j.now {
		j.wake = j.now + 1000
	}
}

// due is when the next check-in of a question is.
func (m *Machine) due(q *question) (int64, bool) {
	t := m.patience(q)
	if m.j.patient {
		t = t * 3 / 2
	}
	switch q.silent {
	case 0:
		return q.base + t, true
	case 1:
		return q.base + 2*t, true
	case 2:
		return q.base + 2*t + tQuiet, true
	}
	return 0, false
}

// tick works a waking: what must not stay is announced, and somebody who is silent is asked at most twice.
func (m *Machine) tick() {
	j := m.j
	switch {
	case j.state == "ended":
		return
	case j.doubtAsk:
		if j.now < j.alarmAt+tAlarm*int64(j.alarmN+1) {
			return
		}
		if j.alarmN++; j.alarmN >= 3 { // silence is never "no"
			j.doubtAsk = false
			m.raise(m.doubted())
			return
		}
		m.say("warning", m.rightNow())
		return
	case j.alarm != "":
		if j.now < j.alarmAt+tAlarm*int64(j.alarmN+1) {
			return
		}
		if j.alarmN++; j.alarmN <= 2 {
			m.script()
		}
		return
	}
	if j.site.Timed() && j.now >= j.timedAt+tTimed*int64(j.timedN+1) {
		j.timedN = int((j.now - j.timedAt) / tTimed)
		m.cue("timer")
		if j.now >= j.timedAt+timedMax && j.q != nil && !j.q.act.Removes() && j.task != (pauseTask{}) {
			m.say("warning", m.line("timed.over", "what", m.words.And(m.timedWords())))
			j.timedAt, j.timedN = j.now, 0
			j.task, j.q = pauseTask{}, nil
			m.advance()
			return
		}
		m.say("warning", m.line("timed.still", "what", m.words.And(m.timedWords())))
	}
	q := j.q
	if q == nil || j.holding {
		return
	}
	if q.act.Proof() && j.site.Proof != 0 && j.now-j.proofAt > proofBreak || m.proofAged() && m.atDead(q) {
		if q.act.Proof() {
			m.say("info", m.line("proof.broken"))
		}
		j.q = nil
		m.advance()
		return
	}
	if m.rules.Exposed(j.site) && m.silentAtLive(q) {
		return
	}
	if d, ok := m.due(q); !ok || j.now < d {
		return
	}
	q.silent++
	switch q.silent {
	case 1:
		m.say("info", m.vary("still.here", len(j.records)%3))
	case 2:
		j.patient = true
		if len(q.units) > 0 {
			m.say("info", m.line("silent.number"))
		} else {
			m.say("info", m.line("silent.choice", "options", m.optionWords(q)))
		}
	default:
		if j.site.Timed() {
			q.silent = 1
			return
		}
		m.say("info", m.line("wait.quietly"))
		j.holding, j.state = true, "hold"
		m.cue("hold")
	}
}

// tAllRight is after how long a silence beside an open live cabinet somebody is asked whether all is well, in ms.
const tAllRight = 30_000

// silentAtLive asks somebody who is silent beside an open live cabinet whether all is well, twice; then the words of an
// emergency follow. It tells whether the silence was taken care of.
func (m *Machine) silentAtLive(q *question) bool {
	j := m.j
	if j.now < q.base+tAllRight*int64(min(q.silent, 2)+1) {
		return false
	}
	if q.silent++; q.silent <= 2 {
		m.say("warning", m.line("all.right"))
		m.emit(protocol.Effect{Type: protocol.DoListen, ID: "choice"})
		return true
	}
	m.raise("silent")
	return true
}

// device works news of the phone or computer.
func (m *Machine) device(d protocol.Device) {
	j := m.j
	switch d.Kind {
	case "battery":
		m.batteryAt(d.Level)
	case "speech-off", "sound-off", "mic-off", "silenced":
		j.notice = firstOf(d.Text, m.line("notice."+d.Kind))
		if d.Kind == "speech-off" {
			m.say("info", j.notice)
		}
	case "mic-on":
		j.notice = ""
	case "eye-on":
		j.eye, j.eyeless = true, false
	case "eye-off":
		m.eyeOff(d.Text)
	case "call":
		j.away = j.now
		m.emit(protocol.Effect{Type: protocol.DoHush})
	case "back":
		if j.away == 0 {
			return
		}
		gone := j.now - j.away
		j.away = 0
		m.comeBack(gone)
	case "noise":
		if (d.Level < 10) != m.noisy() {
			j.noise = max(d.Level, 0.1)
			if m.noisy() {
				m.say("info", m.line("loud"))
			}
		}
		j.noise = max(d.Level, 0.1)
	}
}

func (m *Machine) batteryAt(level float64) {
	j := m.j
	j.battery = level
	step := 0
	switch {
	case level <= 5:
		step = 3
	case level <= 10:
		step = 2
	case level <= 20:
		step = 1
	}
	if step <= j.warned || j.alarm != "" {
		return
	}
	j.warned = step
	j.notice = m.line("battery." + rungs[step])
	m.say("warning", j.notice)
	if step == 3 && !j.ending && j.state != "ended" {
		m.unholdQuietly()
		m.finish("battery", false)
		m.advance()
	}
}

// resume goes on after the program was stopped: nothing about the supply is believed.
func (m *Machine) resume(gap int64) {
	j := m.j
	if j.state == "ended" && j.outcome == "part-awaited" && j.repair >= 0 {
		m.reopen()
	}
	if j.state == "ended" {
		return
	}
	if j.alarm != "" {
		m.script()
		return
	}
	m.comeBack(max(gap, tAway+1))
}

// comeBack goes on after an absence of so many ms.
func (m *Machine) comeBack(gone int64) {
	j := m.j
	if j.alarm != "" || j.state == "ended" {
		return
	}
	m.unholdQuietly()
	m.breakProof()
	j.doubtAsk = false
	j.state = "ask"
	j.patterns = map[string]int{}
	if gone > tAway {
		j.site = j.site.Doubt()
		m.setPower()
		j.consent, j.proveAt = -1, 0
		j.done.left = false // left in order before the absence is not left in order now
		m.say("info", m.line("resume.unknown"))
		m.askDangersAgain(func(a vocab.Alarm) bool { return a.Again })
		if gone > tNextDay {
			m.say("info", m.line("new.day"))
		}
		j.task = nil // a question of safety may come first; the rest follows from what is done
	} else {
		m.say("info", m.line("resume.soon", "power", m.powerWords()))
	}
	j.q = nil
	m.advance()
}
