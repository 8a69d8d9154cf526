// Package faultdisk is a disk for tests that forgets. What was written and not synced may be there after a crash, or not, or in part, or
// as zeros; names that were made, changed or removed and whose folder was not synced may stand there or not, in any order. It also
// fails when it is told to.
package faultdisk

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"path"
	"slices"
	"strings"
	"sync"

	"readback/core/journal"
)

var (
	ErrDied   = errors.New("the power is off")
	ErrFull   = errors.New("no space left on device")
	ErrDevice = errors.New("input/output error")
)

// node is a file or a folder.
type node struct {
	folder  bool
	live    map[string]*node // names as programs see them
	durable map[string]*node // names that survive
	data    []byte           // as programs see it
	kept    []byte           // what survives
	pending []change         // since the last sync
}

// change is a write or a cut that was not synced.
type change struct {
	cut  bool
	at   int
	data []byte
}

// naming is a change of names that was not synced: it is in effect after a crash or not, as a whole.
type naming struct {
	folders []*node
	apply   func(names func(*node) map[string]*node)
}

// Disk is the simulated disk. The zero value is not usable: New makes one.
type Disk struct {
	mu      sync.Mutex
	root    *node
	namings []*naming
	ops     int
	dieAt   int

	// Fail is asked before every operation ("open", "write", "sync", "truncate", "rename", "remove", "mkdir", "list", "read", "there",
	// "syncfolder"); an error makes it fail. A write fails half done. It is called without the disk's lock and may block.
	Fail func(op, name string) error
}

func folder() *node {
	return &node{folder: true, live: map[string]*node{}, durable: map[string]*node{}}
}

// New is an empty disk.
func New() *Disk { return &Disk{root: folder()} }

// Ops counts the operations that change something.
func (d *Disk) Ops() int {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.ops
}

// DieAt takes the power away in the middle of the n-th operation that changes something, 1 for the first from the beginning of the disk.
func (d *Disk) DieAt(n int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.dieAt = n
}

// enter counts an operation; dying tells that this one is begun and not finished.
func (d *Disk) enter(op, name string, changes bool) (dying bool, err error) {
	if f := d.Fail; f != nil {
		err = f(op, name)
	}
	d.mu.Lock()
	if changes {
		d.ops++
	}
	if d.dieAt > 0 && d.ops > d.dieAt {
		return false, ErrDied
	}
	if err != nil {
		return false, &fs.PathError{Op: op, Path: name, Err: err}
	}
	return d.dieAt > 0 && d.ops == d.dieAt && changes, nil
}

func (d *Disk) at(name string) *node {
	n := d.root
	for _, part := range strings.Split(path.Clean(name), "/") {
		if part == "." {
			continue
		}
		if n = n.live[part]; n == nil {
			return nil
		}
	}
	return n
}

func missing(op, name string) error { return &fs.PathError{Op: op, Path: name, Err: fs.ErrNotExist} }

func (d *Disk) note(apply func(names func(*node) map[string]*node), folders ...*node) {
	apply(func(n *node) map[string]*node { return n.live })
	d.namings = append(d.namings, &naming{folders, apply})
}

func died(dying bool) error {
	if dying {
		return ErrDied
	}
	return nil
}

// Open implements journal.Disk.
func (d *Disk) Open(name string, how journal.Mode) (journal.File, error) {
	dying, err := d.enter("open", name, true)
	defer d.mu.Unlock()
	if err != nil {
		return nil, err
	}
	dir, base := d.at(path.Dir(name)), path.Base(name)
	if dir == nil {
		return nil, missing("open", name)
	}
	n := dir.live[base]
	switch {
	case n == nil && how == journal.Add:
		return nil, missing("open", name)
	case n != nil && how == journal.New:
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrExist}
	case n == nil:
		n = &node{}
		made := n
		d.note(func(names func(*node) map[string]*node) { names(dir)[base] = made }, dir)
	case how == journal.Anew:
		n.change(change{cut: true})
	}
	return &file{d, n, name}, died(dying)
}

func (n *node) change(c change) {
	n.pending = append(n.pending, c)
	n.data = c.on(n.data)
}

func (c change) on(data []byte) []byte {
	if c.cut {
		return append([]byte(nil), data[:min(c.at, len(data))]...)
	}
	data = append(data, make([]byte, max(0, c.at+len(c.data)-len(data)))...)
	copy(data[c.at:], c.data)
	return data
}

type file struct {
	d    *Disk
	n    *node
	name string
}

func (f *file) Write(p []byte) (int, error) {
	dying, err := f.d.enter("write", f.name, true)
	defer f.d.mu.Unlock()
	if err != nil {
		if !errors.Is(err, ErrDied) {
			f.n.change(change{at: len(f.n.data), data: slices.Clone(p[:len(p)/2])})
		}
		return 0, err
	}
	f.n.change(change{at: len(f.n.data), data: slices.Clone(p)})
	return len(p), died(dying)
}

func (f *file) Sync() error {
	dying, err := f.d.enter("sync", f.name, true)
	defer f.d.mu.Unlock()
	if err != nil {
		if !errors.Is(err, ErrDied) {
			f.n.pending = append(f.n.pending, change{at: len(f.n.data)}) // as before: it may be lost, and a later sync may not bring it back
		}
		return err
	}
	if dying {
		return ErrDied
	}
	f.n.kept, f.n.pending = slices.Clone(f.n.data), nil
	return nil
}

func (f *file) Truncate(size int64) error {
	dying, err := f.d.enter("truncate", f.name, true)
	defer f.d.mu.Unlock()
	if err != nil {
		return err
	}
	f.n.change(change{cut: true, at: int(size)})
	return died(dying)
}

func (f *file) There(size int64) error {
	_, err := f.d.enter("there", f.name, false)
	defer f.d.mu.Unlock()
	switch {
	case err != nil:
		return err
	case f.d.at(f.name) != f.n:
		return missing("there", f.name)
	case int64(len(f.n.data)) != size:
		return fmt.Errorf("%s has %d bytes, not %d", f.name, len(f.n.data), size)
	}
	return nil
}

func (f *file) Close() error { return nil }

// ReadFile implements journal.Disk.
func (d *Disk) ReadFile(name string) ([]byte, error) {
	_, err := d.enter("read", name, false)
	defer d.mu.Unlock()
	if err != nil {
		return nil, err
	}
	n := d.at(name)
	if n == nil || n.folder {
		return nil, missing("read", name)
	}
	return slices.Clone(n.data), nil
}

// Mkdir implements journal.Disk.
func (d *Disk) Mkdir(name string) error {
	dying, err := d.enter("mkdir", name, true)
	defer d.mu.Unlock()
	if err != nil {
		return err
	}
	dir, base := d.at(path.Dir(name)), path.Base(name)
	if dir == nil {
		return missing("mkdir", name)
	}
	if dir.live[base] != nil || path.Clean(name) == "." {
		return &fs.PathError{Op: "mkdir", Path: name, Err: fs.ErrExist}
	}
	made := folder()
	d.note(func(names func(*node) map[string]*node) { names(dir)[base] = made }, dir)
	return died(dying)
}

// Rename implements journal.Disk.
func (d *Disk) Rename(from, to string) error {
	dying, err := d.enter("rename", from, true)
	defer d.mu.Unlock()
	if err != nil {
		return err
	}
	a, b := d.at(path.Dir(from)), d.at(path.Dir(to))
	if a == nil || b == nil || a.live[path.Base(from)] == nil {
		return missing("rename", from)
	}
	n := a.live[path.Base(from)]
	d.note(func(names func(*node) map[string]*node) {
		delete(names(a), path.Base(from))
		names(b)[path.Base(to)] = n
	}, a, b)
	return died(dying)
}

// Remove implements journal.Disk.
func (d *Disk) Remove(name string) error {
	dying, err := d.enter("remove", name, true)
	defer d.mu.Unlock()
	if err != nil {
		return err
	}
	dir := d.at(path.Dir(name))
	if dir == nil || dir.live[path.Base(name)] == nil {
		return died(dying)
	}
	d.note(func(names func(*node) map[string]*node) { delete(names(dir), path.Base(name)) }, dir)
	return died(dying)
}

// List implements journal.Disk.
func (d *Disk) List(name string) ([]journal.Entry, error) {
	_, err := d.enter("list", name, false)
	defer d.mu.Unlock()
	if err != nil {
		return nil, err
	}
	n := d.at(name)
	if n == nil {
		return nil, missing("list", name)
	}
	var out []journal.Entry
	for k, x := range n.live {
		out = append(out, journal.Entry{Name: k, Folder: x.folder, Size: int64(len(x.data))})
	}
	slices.SortFunc(out, func(a, b journal.Entry) int { return strings.Compare(a.Name, b.Name) })
	return out, nil
}

// SyncFolder implements journal.Disk.
func (d *Disk) SyncFolder(name string) error {
	dying, err := d.enter("syncfolder", name, true)
	defer d.mu.Unlock()
	if err != nil {
		return err
	}
	n := d.at(name)
	if n == nil {
		return missing("syncfolder", name)
	}
	if dying {
		return ErrDied
	}
	d.namings = slices.DeleteFunc(d.namings, func(x *naming) bool {
		if !slices.Contains(x.folders, n) {
			return false
		}
		x.apply(func(n *node) map[string]*node { return n.durable })
		return true
	})
	return nil
}

// Crash is the disk after the power went: everything that was synced, and of the rest what chance left. The disk itself is not changed, so
// that many crashes can be tried of one run.
func (d *Disk) Crash(seed uint64) *Disk {
	d.mu.Lock()
	defer d.mu.Unlock()
	rng := rand.New(rand.NewPCG(seed, 0x9E3779B97F4A7C15))
	names := map[*node]map[string]*node{}
	durable := func(n *node) map[string]*node {
		if names[n] == nil {
			names[n] = map[string]*node{}
			for k, x := range n.durable {
				names[n][k] = x
			}
		}
		return names[n]
	}
	upTo := -1 // in half of the crashes names change in order up to a moment, in the others each by itself
	if rng.IntN(2) == 0 {
		upTo = rng.IntN(len(d.namings) + 1)
	}
	for i, x := range d.namings {
		if upTo < 0 && rng.IntN(2) == 0 || upTo >= 0 && i < upTo {
			x.apply(durable)
		}
	}
	out := &Disk{}
	var left func(n *node) *node
	left = func(n *node) *node {
		if !n.folder {
			data := n.left(rng)
			return &node{data: data, kept: slices.Clone(data)}
		}
		c := folder()
		list := durable(n)
		keys := make([]string, 0, len(list))
		for k := range list {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		for _, k := range keys {
			x := left(list[k])
			c.live[k], c.durable[k] = x, x
		}
		return c
	}
	out.root = left(d.root)
	return out
}

// sector is what a disk writes as one, bytes.
const sector = 512

// left is what a crash leaves of a file.
func (n *node) left(rng *rand.Rand) []byte {
	data := slices.Clone(n.kept)
	for _, c := range n.pending {
		if c.cut {
			if rng.IntN(2) == 0 {
				data = c.on(data)
			}
			continue
		}
		c.at = min(c.at, len(data)+1<<20)
		switch rng.IntN(5) {
		case 0: // nothing of it
		case 1: // all of it
			data = c.on(data)
		case 2: // its beginning
			c.data = c.data[:rng.IntN(len(c.data)+1)]
			data = c.on(data)
		case 3: // its length and no content
			c.data = make([]byte, len(c.data))
			data = c.on(data)
		case 4: // some of its sectors
			part := slices.Clone(c.data)
			for i := 0; i < len(part); i += sector {
				if rng.IntN(2) == 0 {
					clear(part[i:min(i+sector, len(part))])
				}
			}
			c.data = part
			data = c.on(data)
		}
	}
	return data
}

// Flip changes one bit of a file, for good.
func (d *Disk) Flip(name string, bit int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	n := d.at(name)
	n.data = slices.Clone(n.data)
	n.data[bit/8] ^= 1 << (bit % 8)
	n.kept, n.pending = slices.Clone(n.data), nil
}

// Put leaves a file that is on the disk for good. Its folder must be there.
func (d *Disk) Put(name string, data []byte) {
	d.mu.Lock()
	defer d.mu.Unlock()
	n := &node{data: slices.Clone(data), kept: slices.Clone(data)}
	dir := d.at(path.Dir(name))
	dir.live[path.Base(name)], dir.durable[path.Base(name)] = n, n
}

var _ journal.Disk = (*Disk)(nil)
