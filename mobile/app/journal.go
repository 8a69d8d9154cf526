package app

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"readback/core/protocol"
)

// appender is a file that is only ever added to.
type appender interface {
	io.Writer
	Sync() error
	Truncate(size int64) error
	Close() error
}

func openAppend(name string) (appender, error) {
	return os.OpenFile(name, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
}

// Journal is one job's journal, open for adding: one JSON event a line.
type Journal struct {
	f    appender
	size int64
	torn bool // a failed write may have left half a line behind
}

// CreateJournal makes a journal that does not exist yet.
func CreateJournal(name string) (*Journal, error) {
	f, err := os.OpenFile(name, os.O_APPEND|os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return nil, fmt.Errorf("ui: making a journal: %w", err)
	}
	return &Journal{f: f}, nil
}

// journal opens a job's journal whose good part is size bytes long.
func (s *store) journal(id string, size int64) (*Journal, error) {
	f, err := s.open(filepath.Join(s.folder(id), journalName))
	if err != nil {
		return nil, err
	}
	return &Journal{f: f, size: size}, nil
}

// Append writes one event and syncs it to the disk. After a failure the torn line is cut off, so that a later event can still be
// kept.
func (j *Journal) Append(ev protocol.Event) error {
	line, err := json.Marshal(ev)
	if err != nil {
		return err
	}
	line = append(line, '\n')
	if j.torn {
		if err := j.f.Truncate(j.size); err != nil {
			return err
		}
		j.torn = false
	}
	if _, err = j.f.Write(line); err == nil {
		err = j.f.Sync()
	}
	if err != nil {
		j.torn = j.f.Truncate(j.size) != nil
		return err
	}
	j.size += int64(len(line))
	return nil
}

// Close closes the file. Everything that was acknowledged is synced already, so an error means nothing.
func (j *Journal) Close() { _ = j.f.Close() }

// readJournal decodes a journal. A last line without its end was never acknowledged and is left out; damage before that
// ends the reading, and damage says where. size is the length of the good part.
func readJournal(data []byte) (events []protocol.Event, size int64, damage string) {
	for len(data) > 0 {
		line, rest, whole := bytes.Cut(data, []byte("\n"))
		if !whole {
			return events, size, ""
		}
		var ev protocol.Event
		if err := json.Unmarshal(line, &ev); err != nil {
			return events, size, fmt.Sprintf("line %d of the journal is damaged (%v); the %d events before it are good", len(events)+1, err, len(events))
		}
		if want := int64(len(events)) + 1; ev.Seq != want {
			return events, size, fmt.Sprintf("line %d of the journal has number %d; the %d events before it are good", want, ev.Seq, len(events))
		}
		events = append(events, ev)
		size += int64(len(line)) + 1
		data = rest
	}
	return events, size, ""
}
