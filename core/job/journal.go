package job

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"readback/core/protocol"
)

// Syncer is a place to write that can be told to make what was written last.
type Syncer interface {
	io.Writer
	Sync() error
}

// Journal is the append-only record of a job: one event a line as JSON, the begin event first. The host appends an event
// before it does anything the event causes.
type Journal struct {
	w    Syncer
	next int64
	err  error
}

// NewJournal continues a journal after the event numbered last, 0 for a new one.
func NewJournal(w Syncer, last int64) *Journal { return &Journal{w: w, next: last + 1} }

// Append writes an event and syncs it. The event gets the next number when it has none. After an error nothing more is
// taken: a line that may be half written must stay the last one.
func (j *Journal) Append(ev *protocol.Event) error {
	if j.err != nil {
		return j.err
	}
	if ev.Seq == 0 {
		ev.Seq = j.next
	}
	if ev.Seq != j.next {
		return fmt.Errorf("session: journal: event %d after %d", ev.Seq, j.next-1)
	}
	if j.next == 1 && ev.Type != protocol.EvBegin {
		return errors.New("session: journal: the first event must be the beginning")
	}
	b, err := json.Marshal(ev)
	if err != nil {
		return fmt.Errorf("session: journal: writing event %d: %w", ev.Seq, err)
	}
	if _, err := j.w.Write(append(b, '\n')); err != nil {
		j.err = fmt.Errorf("session: journal: writing event %d: %w", ev.Seq, err)
		return j.err
	}
	if err := j.w.Sync(); err != nil {
		j.err = fmt.Errorf("session: journal: syncing event %d: %w", ev.Seq, err)
		return j.err
	}
	j.next++
	return nil
}

// DamageError tells where a journal stops being readable. Everything before is whole.
type DamageError struct {
	Line  int   // 1 for the first
	Size  int64 // bytes that are whole: the journal may be cut there and continued
	Cause error
}

func (e *DamageError) Error() string {
	return fmt.Sprintf("session: journal line %d: %v; the %d lines before it are whole", e.Line, e.Cause, e.Line-1)
}

func (e *DamageError) Unwrap() error { return e.Cause }

// maxLine bounds a line of a journal, in bytes.
const maxLine = 1 << 20

// ReadJournal reads the events of a journal. When a line is damaged or cut short it returns all events before it and a
// *DamageError.
func ReadJournal(r io.Reader) ([]protocol.Event, error) {
	br := bufio.NewReaderSize(r, 64<<10)
	var events []protocol.Event
	var size int64
	for line := 1; ; line++ {
		b, err := readLine(br)
		if err == io.EOF && len(b) == 0 {
			if line == 1 {
				return nil, &DamageError{Line: 1, Cause: errors.New("the journal is empty")}
			}
			return events, nil
		}
		damage := func(cause error) ([]protocol.Event, error) {
			return events, &DamageError{Line: line, Size: size, Cause: cause}
		}
		switch {
		case errors.Is(err, io.EOF):
			return damage(errors.New("cut short"))
		case err != nil:
			return damage(err)
		}
		var ev protocol.Event
		d := json.NewDecoder(bytes.NewReader(b))
		d.DisallowUnknownFields()
		if err := d.Decode(&ev); err != nil {
			return damage(fmt.Errorf("not an event: %w", err))
		}
		if d.More() {
			return damage(errors.New("more than one value"))
		}
		if ev.Seq != int64(line) {
			return damage(fmt.Errorf("event number %d, expected %d", ev.Seq, line))
		}
		if err := complete(&ev, line > 1); err != nil {
			return damage(err)
		}
		events = append(events, ev)
		size += int64(len(b))
	}
}

// readLine reads up to and with the end of a line.
func readLine(br *bufio.Reader) ([]byte, error) {
	var out []byte
	for {
		b, err := br.ReadSlice('\n')
		out = append(out, b...)
		if len(out) > maxLine {
			return out, errors.New("line too long")
		}
		if err != bufio.ErrBufferFull {
			return out, err
		}
	}
}

// Replay runs the events of a journal through a new machine; each, when not nil, is called after every event. The
// machine it returns is as it was when the last whole event had been taken. A damaged end is reported beside it.
func Replay(r io.Reader, make func(protocol.Begin) (*Machine, error), each func(protocol.Event, []protocol.Effect)) (*Machine, error) {
	events, damage := ReadJournal(r)
	if len(events) == 0 {
		return nil, damage
	}
	m, err := make(*events[0].Begin)
	if err != nil {
		return nil, fmt.Errorf("session: replay: %w", err)
	}
	for _, ev := range events {
		effects, err := m.Step(ev)
		if err != nil {
			return m, fmt.Errorf("session: replay: %w", err)
		}
		if each != nil {
			each(ev, effects)
		}
	}
	return m, damage
}
