package journal

import (
	"errors"
	"io"
	"path"
)

// Disk is where a journal and what belongs to it are kept. The host gives the real one, tests one that loses what was not synced. Names
// are paths inside the program's folder, with slashes.
type Disk interface {
	Open(name string, how Mode) (File, error)
	ReadFile(name string) ([]byte, error)
	Mkdir(name string) error           // one folder; fs.ErrExist when it is there
	Rename(from, to string) error      // replaces what is there
	Remove(name string) error          // a file, or a folder with all in it; what is not there is no error
	List(name string) ([]Entry, error) // sorted by name
	SyncFolder(name string) error      // which names stand in the folder is then on the disk
}

// Entry is one name in a folder.
type Entry struct {
	Name   string
	Folder bool
	Size   int64
	At     int64 // ms since the Unix epoch: last written
}

// Mode says how a file is opened for writing.
type Mode int

const (
	Add  Mode = iota // at the end; an error when it is not there
	New              // fs.ErrExist when it is there
	Anew             // emptied, or made
)

// File is open for writing at its end.
type File interface {
	io.Writer
	Sync() error // all that was written is then on the disk
	Truncate(size int64) error
	// There is an error when the file's name leads to another file now, or its size is not this one: somebody deleted or changed it.
	There(size int64) error
	Close() error
}

// WriteFile puts a file in its place whole: after a crash at any moment the old one stands there or the new one, and after it returns the new
// one does.
func WriteFile(d Disk, name string, data []byte) error {
	part := name + ".new"
	f, err := d.Open(part, Anew)
	if err != nil {
		return err
	}
	if _, err = f.Write(data); err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err == nil {
		err = d.Rename(part, name)
	}
	if err != nil {
		return errors.Join(err, d.Remove(part))
	}
	return d.SyncFolder(path.Dir(name))
}

// MkdirSynced makes a folder that is there after a crash.
func MkdirSynced(d Disk, name string) error {
	if err := d.Mkdir(name); err != nil {
		return err
	}
	return d.SyncFolder(path.Dir(name))
}
