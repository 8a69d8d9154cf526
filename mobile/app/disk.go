package app

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"readback/core/journal"
)

// disk is a folder of this machine. Folders are 0700 and files 0600: a job is nobody else's business.
type disk struct{ dir string }

func (d disk) path(name string) string { return filepath.Join(d.dir, filepath.FromSlash(name)) }

// Open implements journal.Disk.
func (d disk) Open(name string, how journal.Mode) (journal.File, error) {
	flag := map[journal.Mode]int{journal.Add: os.O_APPEND, journal.New: os.O_APPEND | os.O_CREATE | os.O_EXCL, journal.Anew: os.O_CREATE | os.O_TRUNC}[how]
	f, err := os.OpenFile(d.path(name), flag|os.O_WRONLY, 0o600)
	if err != nil {
		return nil, err
	}
	return file{f}, nil
}

type file struct{ *os.File }

// There implements journal.File.
func (f file) There(size int64) error {
	now, err := os.Stat(f.Name())
	if err != nil {
		return err
	}
	mine, err := f.Stat()
	switch {
	case err != nil:
		return err
	case !os.SameFile(now, mine):
		return fmt.Errorf("%s is another file now", f.Name())
	case now.Size() != size:
		return fmt.Errorf("%s has %d bytes, not %d", f.Name(), now.Size(), size)
	}
	return nil
}

// ReadFile implements journal.Disk.
func (d disk) ReadFile(name string) ([]byte, error) { return os.ReadFile(d.path(name)) }

// Mkdir implements journal.Disk.
func (d disk) Mkdir(name string) error { return os.Mkdir(d.path(name), 0o700) }

// Rename implements journal.Disk.
func (d disk) Rename(from, to string) error { return os.Rename(d.path(from), d.path(to)) }

// Remove implements journal.Disk.
func (d disk) Remove(name string) error { return os.RemoveAll(d.path(name)) }

// List implements journal.Disk.
func (d disk) List(name string) ([]journal.Entry, error) {
	list, err := os.ReadDir(d.path(name))
	if err != nil {
		return nil, err
	}
	var out []journal.Entry
	for _, e := range list {
		info, err := e.Info()
		if errors.Is(err, fs.ErrNotExist) {
			continue // removed meanwhile
		}
		if err != nil {
			return nil, err
		}
		out = append(out, journal.Entry{Name: e.Name(), Folder: e.IsDir(), Size: info.Size(), At: info.ModTime().UnixMilli()})
	}
	return out, nil
}

// SyncFolder implements journal.Disk.
func (d disk) SyncFolder(name string) error {
	if runtime.GOOS == "windows" {
		return nil // a folder cannot be opened for that there; names are written at once by the file system's own log
	}
	f, err := os.Open(d.path(name))
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

var _ journal.Disk = disk{}
