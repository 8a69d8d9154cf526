// Package journal keeps the record of a job: one event a line as JSON, the begin event first, each line synced before anything that
// the event causes is done. Every line ends with a checksum over itself and the checksum of the line before, so that no line can change, go
// missing or move without being noticed. The package knows events and a disk, and no machine: a replay is a callback.
package journal

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"path"

	"readback/core/protocol"
)

// Format is what is written. Format 1, without checksums, is still read.
const Format = 2

const (
	mark   = `,"sum":"`      // before the checksum, which is the last member of a line
	digits = 16              // of the checksum, hex: 64 bits
	tail   = `"}`            // after it
	seed   = "readback jr 2" // stands for the checksum before the first line
)

// maxLine bounds a line, in bytes.
const maxLine = protocol.MaxEvent + 64

// link is the checksum of a line's body after the line with the checksum before.
func link(before string, body []byte) string {
	h := sha256.New()
	h.Write([]byte(before))
	h.Write(body)
	return hex.EncodeToString(h.Sum(nil))[:digits]
}

// seal makes a line of an event.
func seal(before string, ev *protocol.Event) (line []byte, sum string, err error) {
	body, err := json.Marshal(ev)
	if err != nil {
		return nil, "", fmt.Errorf("journal: event %d: %w", ev.Seq, err)
	}
	sum = link(before, body)
	line = append(body[:len(body)-1:len(body)-1], mark+sum+tail+"\n"...)
	if len(line) > maxLine {
		return nil, "", fmt.Errorf("journal: event %d has %d bytes, more than %d", ev.Seq, len(line), maxLine)
	}
	return line, sum, nil
}

// Journal is open for adding. It is not safe for concurrent use.
type Journal struct {
	d     Disk
	name  string
	f     File
	data  []byte // all that was acknowledged
	next  int64
	sum   string
	torn  bool // half a line may stand at the end
	doubt bool // what the file holds is not known: it is written anew, whole
	anew  int  // how often it was
}

// Create makes a journal that does not exist yet.
func Create(d Disk, name string) (*Journal, error) {
	f, err := d.Open(name, New)
	if err != nil {
		return nil, fmt.Errorf("journal: making %s: %w", name, err)
	}
	if err := d.SyncFolder(path.Dir(name)); err != nil {
		return nil, errors.Join(fmt.Errorf("journal: making %s: %w", name, err), f.Close())
	}
	return &Journal{d: d, name: name, f: f, next: 1, sum: seed}, nil
}

// Continue opens a journal that was read and, where that was needed, repaired.
func Continue(d Disk, name string, r *Reading) (*Journal, error) {
	if r.Format != Format || r.Damage != nil {
		return nil, fmt.Errorf("journal: %s was not repaired", name)
	}
	f, err := d.Open(name, Add)
	if err != nil {
		return nil, fmt.Errorf("journal: opening %s: %w", name, err)
	}
	return &Journal{d: d, name: name, f: f, data: bytes.Clone(r.good), next: int64(len(r.Events)) + 1, sum: r.sum}, nil
}

// Append writes an event and syncs it. When it returns without an error the event survives whatever happens to the machine. After an
// error the journal is as it was: a half-written line is cut off, and where a sync failed, or somebody deleted or changed the file, the next
// event writes it anew from memory.
func (j *Journal) Append(ev protocol.Event) error {
	if ev.Seq == 0 {
		ev.Seq = j.next
	}
	if ev.Seq != j.next {
		return fmt.Errorf("journal: event %d after %d", ev.Seq, j.next-1)
	}
	if j.next == 1 && ev.Type != protocol.EvBegin {
		return errors.New("journal: the first event must be the beginning")
	}
	line, sum, err := seal(j.sum, &ev)
	if err != nil {
		return err
	}
	size := int64(len(j.data))
	if !j.torn && !j.doubt && j.f.There(size) != nil {
		j.doubt = true
	}
	switch {
	case j.doubt:
		err = j.renew(line)
	default:
		err = j.add(size, line)
	}
	if err != nil {
		return fmt.Errorf("journal: writing event %d: %w", ev.Seq, err)
	}
	j.data = append(j.data, line...)
	j.sum = sum
	j.next++
	return nil
}

func (j *Journal) add(size int64, line []byte) error {
	if j.torn {
		if err := j.f.Truncate(size); err != nil {
			return err
		}
		j.torn = false
	}
	if _, err := j.f.Write(line); err != nil {
		j.torn = j.f.Truncate(size) != nil
		return err
	}
	if err := j.f.Sync(); err != nil {
		// What a failed sync left behind is not known, and a second one may succeed without having written anything.
		j.doubt = true
		return err
	}
	return nil
}

// renew writes the whole journal beside the old one and puts it in its place.
func (j *Journal) renew(line []byte) error {
	if err := WriteFile(j.d, j.name, append(bytes.Clone(j.data), line...)); err != nil {
		return err
	}
	f, err := j.d.Open(j.name, Add)
	if err != nil {
		return err
	}
	_ = j.f.Close() // of the old file nothing is wanted any more
	j.f, j.torn, j.doubt = f, false, false
	j.anew++
	return nil
}

// Anew is how often the file had to be written anew because it was gone, changed, or in doubt.
func (j *Journal) Anew() int { return j.anew }

// Close closes the file. All that was acknowledged is synced already, so an error means nothing.
func (j *Journal) Close() { _ = j.f.Close() }
