package app

import (
	"fmt"
	"path/filepath"
	"readback/core/protocol"
	"time"
)

// Start is the body of POST /api/start.
type Start struct {
	Appliance string `json:"appliance"` // equipment file id; empty: asked in the job
	Voice     *bool  `json:"voice"`     // nil: as in the preferences
}

// startLocked leaves the open job, which stays on disk, and begins a new one.
func (h *Hub) startLocked(s Start) error {
	if h.closed {
		return ErrClosed
	}
	voice := h.prefs.Voice
	if s.Voice != nil {
		voice = *s.Voice
	}
	data, err := DataHash()
	if err != nil {
		return err
	}
	h.leaveLocked()
	id, err := h.store.create(h.cfg.Now())
	if err != nil {
		return fmt.Errorf("ui: making the folder of a new job: %w", err)
	}
	b := protocol.Begin{Job: id, Appliance: s.Appliance, Version: h.cfg.Version, Lang: h.cfg.Lang, Voice: voice, Data: data, Meter: h.prefs.Meter.plain()}
	m, err := h.cfg.New(b)
	if err != nil {
		return fmt.Errorf("ui: starting a job: %w", err)
	}
	file, err := h.store.journal(id, 0)
	if err != nil {
		return fmt.Errorf("ui: making the journal: %w", err)
	}
	h.job = &openJob{id: id, machine: m, file: file, voice: voice, appliance: s.Appliance}
	h.out.do(func(host Host) { host.KeepAwake(true) })
	if err := h.stepLocked(protocol.Event{Type: protocol.EvBegin, Begin: &b}); err != nil {
		h.leaveLocked()
		return err
	}
	h.store.setOpen(id)
	h.trouble = ""
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
func (h *Hub) resumeLocked(id string) error {
	if h.closed {
		return ErrClosed
	}
	if h.job != nil && h.job.id == id {
		return nil
	}
	events, size, damage, err := h.store.load(id)
	if err != nil {
		return fmt.Errorf("ui: resuming: %w", err)
	}
	m, voice, err := replay(h.cfg.New, events, nil)
	if err != nil {
		return fmt.Errorf("ui: resuming job %s: %w", id, err)
	}
	if err := h.store.mend(id, size, len(events)); err != nil {
		return fmt.Errorf("ui: resuming job %s: %w", id, err)
	}
	file, err := h.store.journal(id, size)
	if err != nil {
		return fmt.Errorf("ui: resuming job %s: %w", id, err)
	}
	h.leaveLocked()
	h.job = &openJob{id: id, machine: m, file: file, voice: voice, seq: int64(len(events)), appliance: events[0].Begin.Appliance}
	h.out.do(func(host Host) { host.KeepAwake(true) })
	if damage != "" {
		h.out.send(Message{Type: "trouble", Text: damage})
	}
	if v := m.View(); v != nil && v.Ended != "" {
		h.showLocked(v)
	} else if err := h.stepLocked(protocol.Event{Type: protocol.EvResume}); err != nil {
		h.leaveLocked()
		return err
	}
	h.store.setOpen(id)
	h.tellDevicesLocked()
	h.out.send(Message{Type: "jobs"})
	return nil
}

// replay runs a journal through a fresh machine; each is called after every event when it is not nil.
func replay(newMachine func(protocol.Begin) (Machine, error), events []protocol.Event, each func(protocol.Event, []protocol.Effect, Machine)) (Machine, bool, error) {
	if len(events) == 0 || events[0].Begin == nil {
		return nil, false, fmt.Errorf("the journal has no beginning")
	}
	m, err := newMachine(*events[0].Begin)
	if err != nil {
		return nil, false, err
	}
	for _, ev := range events {
		effects, err := m.Step(ev)
		if err != nil {
			return nil, false, fmt.Errorf("replaying event %d: %w", ev.Seq, err)
		}
		if each != nil {
			each(ev, effects, m)
		}
	}
	return m, events[0].Begin.Voice, nil
}

// Photo keeps a picture in the open job's folder and tells the machine. Place and camera details inside the file are removed. A
// picture of the plate is only read and not kept; one after the work is compared with the one before.
func (h *Hub) Photo(id string, jpeg []byte) error {
	clean, err := stripJPEG(jpeg)
	if err != nil {
		return fmt.Errorf("ui: picture %q: %w", id, err)
	}
	if !validID(id) {
		return fmt.Errorf("ui: picture: bad id %q", id)
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
		return "", ErrNoJob
	}
	name = fmt.Sprintf("photo-%d-%s.jpg", h.job.seq+1, id)
	if err := writeSynced(filepath.Join(h.store.folder(h.job.id), name), clean); err != nil {
		return "", fmt.Errorf("ui: keeping picture %q: %w", id, err)
	}
	return name, h.stepLocked(protocol.Event{Type: protocol.EvPhoto, Photo: &protocol.Photo{ID: id, Name: name, SHA256: sum(clean)}})
}

func clock(at int64) string { return time.UnixMilli(at).Format("2006-01-02 15:04:05") }
