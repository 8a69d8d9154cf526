package app

import (
	"errors"
	"fmt"
	"time"

	"readback/core/protocol"
)

// Start is the body of POST /api/start.
type Start struct {
	Appliance string `json:"appliance"` // equipment file id; empty: asked in the job
	Voice     *bool  `json:"voice"`     // nil: as in the preferences

	urgent bool // an emergency before any job: it begins whatever fails
}

// startLocked begins a new job; the open one stays on disk. When the new one cannot begin, the open one stays open.
func (h *Hub) startLocked(s Start) error {
	if h.closed {
		return ErrClosed
	}
	voice := h.prefs.Voice
	if s.Voice != nil {
		voice = *s.Voice
	}
	data, err := DataHash()
	if err != nil && !s.urgent {
		return err
	}
	id, err := h.store.create(h.cfg.Now())
	name := inJob(id, journalName)
	if err != nil {
		if !s.urgent {
			return fmt.Errorf("the folder of a new job cannot be made: %w. Free some space on this device, then start again", err)
		}
		id, name = "unkept", ""
		h.tellLocked(h.words.Term("app.unkept", "why", err.Error()))
	}
	b := protocol.Begin{Job: id, Appliance: s.Appliance, Version: h.cfg.Version, Lang: h.cfg.Lang, Voice: voice, Data: data, Meter: h.prefs.Meter.plain()}
	m, err := NewRecorded(h.cfg.New, h.store.disk, name, b, h.tellLocked)
	if err == nil && !s.urgent {
		if err = m.Reserve(); err != nil {
			err = fmt.Errorf("there is no room to keep a job and leave it safe: %w. Free some space on this device, then start again", err)
		}
	}
	if err != nil {
		return fmt.Errorf("starting a job: %w", errors.Join(err, h.store.disk.Remove(folder(id))))
	}
	m.urgent = s.urgent
	was := h.job
	h.parkLocked()
	h.trouble = ""
	h.job = &openJob{id: id, machine: m, voice: voice, appliance: s.Appliance}
	h.mute.Store(!voice)
	h.out.do(func(host Host) { host.KeepAwake(true) })
	if err := h.stepLocked(protocol.Event{Type: protocol.EvBegin, Begin: &b}); err != nil && !s.urgent {
		h.leaveLocked()
		_ = h.store.disk.Remove(folder(id)) // an empty job is listed by nobody
		if was != nil {
			_ = h.resumeLocked(was.id) // it stays in the list when it cannot be opened again
		}
		return err
	}
	h.store.setOpen(id)
	h.tellDevicesLocked()
	h.out.send(Message{Type: "jobs"})
	return nil
}

// tellDevicesLocked repeats to a new or resumed job what is already known of the device.
func (h *Hub) tellDevicesLocked() {
	for _, kind := range []string{"speech-off", "mic-off", "sound-off", "battery", "eye-on"} {
		if d, ok := h.device[kind]; ok && h.job != nil {
			_ = h.stepLocked(protocol.Event{Type: protocol.EvDevice, Device: &d}) // told by step itself
		}
	}
}

// resumeLocked replays a job from disk and goes on with it. Its effects are not done again; the machine is told that the program
// came back, so power is unknown.
func (h *Hub) resumeLocked(id string) error { return h.openLocked(id, false) }

// openLocked opens a job. goOn: one that waits for its part goes on, because the person said so.
func (h *Hub) openLocked(id string, goOn bool) error {
	if h.closed {
		return ErrClosed
	}
	if h.job != nil && h.job.id == id {
		if v := h.job.machine.View(); goOn && v != nil && v.Ended == "part-awaited" {
			return h.stepLocked(protocol.Event{Type: protocol.EvResume})
		}
		return nil
	}
	read, err := h.store.load(id)
	if err != nil {
		return fmt.Errorf("resuming: %w", err)
	}
	if len(read.Events) == 0 {
		return fmt.Errorf("job %s cannot be opened: the beginning of its record is damaged (%w); the file is left as it is", id, read.Damage)
	}
	if len(read.Mended) > 0 {
		h.tellLocked(h.words.Term("app.bits-places", "n", fmt.Sprint(len(read.Mended))))
	}
	lost, err := h.store.mend(id, read)
	if err != nil {
		return fmt.Errorf("resuming job %s: %w", id, err)
	}
	m, err := openRecorded(h.cfg.New, h.store.disk, inJob(id, journalName), read, h.tellLocked)
	if err != nil {
		return fmt.Errorf("resuming job %s: %w", id, err)
	}
	begin, last := read.Events[0].Begin, read.Events[len(read.Events)-1]
	h.parkLocked()
	h.job = &openJob{id: id, machine: m, voice: begin.Voice, seq: m.Seq(), appliance: begin.Appliance}
	h.mute.Store(!begin.Voice)
	h.resumeClockLocked(last.At)
	h.out.do(func(host Host) { host.KeepAwake(true) })
	if lost != nil {
		h.tellLocked(lostWords(h.words, lost, clock))
	}
	if data, err := DataHash(); err == nil && (begin.Data != "" && begin.Data != data || begin.Version != h.cfg.Version) {
		text := h.words.Term("app.changed")
		if n := m.Others(); n > 0 {
			text += " " + h.words.Term("app.others", "n", fmt.Sprint(n))
		}
		h.tellLocked(text)
	}
	if err := m.Reserve(); err != nil {
		h.tellLocked(h.words.Term("app.little-room", "why", err.Error()))
	}
	if v := m.View(); v != nil && v.Ended != "" && lost == nil && !(goOn && v.Ended == "part-awaited") {
		h.showLocked(v)
	} else if err := h.stepLocked(protocol.Event{Type: protocol.EvResume, Lost: lost}); err != nil {
		h.leaveLocked()
		return err
	}
	h.store.setOpen(id)
	h.tellDevicesLocked()
	h.out.send(Message{Type: "jobs"})
	return nil
}

// Photo keeps a picture in the open job's folder and tells the machine. Place and camera details inside the file are removed. A
// picture of the plate is only read and not kept; one after the work is compared with the one before.
func (h *Hub) Photo(id string, jpeg []byte) error {
	clean, err := stripJPEG(jpeg)
	if err != nil {
		return fmt.Errorf("picture %q: %w", id, err)
	}
	if !validID(id) {
		return fmt.Errorf("picture: bad id %q", id)
	}
	if id == protocol.EyePlate {
		return h.plate(clean)
	}
	name, err := h.keepPhoto(id, clean)
	if err != nil || id != "after" {
		return err
	}
	return h.compare(name, clean)
}

func (h *Hub) keepPhoto(id string, clean []byte) (name string, err error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job == nil {
		return "", errNoJob
	}
	name = fmt.Sprintf("photo-%d-%s.jpg", h.job.seq+1, id)
	if err := h.store.keep(h.job.id, name, clean); err != nil {
		return "", fmt.Errorf("keeping picture %q: %w", id, err)
	}
	return name, h.stepLocked(protocol.Event{Type: protocol.EvPhoto, Photo: &protocol.Photo{ID: id, Name: name, SHA256: sum(clean)}})
}

func clock(at int64) string { return time.UnixMilli(at).Format("2006-01-02 15:04:05") }
