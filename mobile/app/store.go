package app

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"time"

	"readback/core/camera"
	"readback/core/journal"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/words"
)

// store is the folder on disk: jobs/ID/journal.jsonl, pictures beside it, trash/ID for what was deleted, prefs.json, units.json. Its lock is held as
// long as the hub is open: two programs on one folder would destroy each other's answers.
type store struct {
	disk journal.Disk
	dir  string   // where the disk is a folder of this machine, for messages
	lock *os.File // nil: reading only, or no folder of this machine
}

// ErrRunning: another program has the folder.
var ErrRunning = errors.New("another Readback is using this folder already")

const (
	journalName = "journal.jsonl"
	summaryName = "summary.json"
	prefsName   = "prefs.json"
	unitsName   = "units.json"
	openName    = "open" // holds the id of the job on the page, so that a killed program comes back to it
)

// Prefs are the person's choices, kept over jobs.
type Prefs struct {
	Voice bool   `json:"voice"` // speak and listen; false: touch only
	Done  bool   `json:"done"`  // the first-run questions were answered or skipped
	Theme string `json:"theme"` // light, dark or "" for the system's
	Meter *Meter `json:"meter,omitempty"`
	Keep  bool   `json:"keep"`  // keep the picture behind every finding of the camera in the job's folder
	Sound bool   `json:"sound"` // and the sound of what was said and acted on
	// NoKeys switches off the shortcuts of single letters (WCAG 2.1.4).
	NoKeys bool `json:"noKeys,omitempty"`
}

// Meter is the person's own in plain terms. A word left out is not known.
type Meter struct {
	Has  string `json:"has,omitempty"`  // yes, no: whether there is one
	RMS  string `json:"rms,omitempty"`  // yes, no: "true RMS" is printed on it
	Amps string `json:"amps,omitempty"` // uA, mA, none: the lowest direct-current range
	Cat  string `json:"cat,omitempty"`  // CAT II, CAT III, CAT IV: beside the jacks
}

// plain is nil when the meter itself is not known: then it is asked in the job, and a modest one is reckoned with aloud.
func (m *Meter) plain() *measure.Plain {
	if m != nil && m.Has == "no" {
		return &measure.Plain{None: true}
	}
	if m == nil || m.RMS == "" {
		return nil
	}
	p := measure.Plain{TrueRMS: m.RMS == "yes", Category: m.Cat, NoCurrent: m.Amps == "none"}
	switch m.Amps { // the usual lowest ranges of that name (from memory)
	case "uA":
		p.LowestDC = unit.Of("200", "uA")
	case "mA":
		p.LowestDC = unit.Of("2", "mA")
	}
	return &p
}

func (m *Meter) valid() bool {
	return m == nil || slices.Contains([]string{"", "yes", "no"}, m.RMS) && slices.Contains([]string{"", "uA", "mA", "none"}, m.Amps) &&
		slices.Contains([]string{"", "CAT II", "CAT III", "CAT IV"}, m.Cat)
}

// JobInfo is one line of the job list.
type JobInfo struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Stage   string `json:"stage,omitempty"`
	Outcome string `json:"outcome,omitempty"` // empty: not finished
	At      int64  `json:"at"`                // ms: last written
	Damage  string `json:"damage,omitempty"`  // what is wrong with the journal, in words
	Open    bool   `json:"open,omitempty"`    // it is the job on the page
	Seq     int64  `json:"seq,omitempty"`     // number of the last event kept when this was written
	What    string `json:"what,omitempty"`    // what was found, in words
	Name    string `json:"name,omitempty"`    // what the person calls it
}

// openStore takes the folder dir, or, for tests, a disk.
func openStore(dir string, d journal.Disk) (*store, error) {
	s := &store{disk: d, dir: dir}
	if d == nil {
		if err := os.MkdirAll(dir, 0o700); err != nil {
			return nil, err
		}
		lock, err := lockFile(filepath.Join(dir, "lock"))
		if err != nil {
			return nil, err
		}
		s.disk, s.lock = disk{dir}, lock
	}
	for _, name := range []string{"jobs", "trash"} {
		if err := journal.MkdirSynced(s.disk, name); err != nil && !errors.Is(err, fs.ErrExist) {
			s.close()
			return nil, err
		}
	}
	return s, nil
}

func (s *store) close() {
	if s.lock != nil {
		_ = s.lock.Close() // the lock goes with it
	}
}

// kept reads a file of the folder; where it is missing or damaged everything is as at first.
func kept[T any](s *store, name string, first T) T {
	v := first
	data, err := s.disk.ReadFile(name)
	if err == nil && json.Unmarshal(data, &v) != nil {
		return first
	}
	return v
}

// loadPrefs reads the person's choices; damaged ones are asked again.
func (s *store) loadPrefs() Prefs { return kept(s, prefsName, Prefs{Voice: true}) }

// loadUnits reads how the units of the meter look; what is damaged is learnt again.
func (s *store) loadUnits() camera.Units { return kept(s, unitsName, camera.Units{}) }

func (s *store) saveUnits(u *camera.Units) error {
	return s.write(unitsName, u)
}

func (s *store) savePrefs(p Prefs) error {
	return s.write(prefsName, p)
}

// setOpen remembers the job on the page; "" forgets it. Losing this costs one tap on the job list, so its errors are dropped.
func (s *store) setOpen(id string) {
	if id == "" {
		_ = s.disk.Remove(openName)
		return
	}
	_ = journal.WriteFile(s.disk, openName, []byte(id))
}

func (s *store) lastOpen() string {
	data, err := s.disk.ReadFile(openName)
	if err != nil || !validID(string(data)) {
		return ""
	}
	return string(data)
}

// write replaces a small file whole.
func (s *store) write(name string, v any) error {
	data, err := json.Marshal(v)
	if err != nil {
		return err
	}
	return journal.WriteFile(s.disk, name, data)
}

// validID guards every path made from a job id: ids are made here and hold digits, letters and dashes only.
func validID(id string) bool {
	if id == "" || len(id) > 64 {
		return false
	}
	for _, c := range id {
		if (c < '0' || c > '9') && (c < 'a' || c > 'z') && c != '-' {
			return false
		}
	}
	return true
}

func folder(id string) string { return path.Join("jobs", id) }

func inJob(id, name string) string { return path.Join("jobs", id, name) }

// create makes the folder of a new job, named after its time.
func (s *store) create(now int64) (string, error) {
	base := time.UnixMilli(now).UTC().Format("20060102-150405")
	for n := 1; ; n++ {
		id := base
		if n > 1 {
			id = fmt.Sprintf("%s-%d", base, n)
		}
		err := journal.MkdirSynced(s.disk, folder(id))
		if err == nil {
			return id, nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return "", err
		}
	}
}

// load reads a job's journal. Where it ends before the last view that was shown, lines are missing at its end, which no line can tell.
func (s *store) load(id string) (*journal.Reading, error) {
	if !validID(id) {
		return nil, fmt.Errorf("no such job %q", id)
	}
	data, err := s.disk.ReadFile(inJob(id, journalName))
	if err != nil {
		return nil, err
	}
	r := journal.Read(data)
	if n := s.summary(id).Seq; r.Damage == nil && n > int64(len(r.Events)) {
		r.Damage = &journal.Damage{Line: len(r.Events) + 1, Lines: int(n) - len(r.Events), Cause: errors.New("the end is missing")}
	}
	return r, nil
}

// mend makes a journal that can be continued and tells what was lost, nil when nothing was. The damaged whole is kept beside it, and so is
// the sound of the events lost, out of the way of those to come.
func (s *store) mend(id string, r *journal.Reading) (*protocol.Lost, error) {
	lost := r.Lost()
	kept, err := journal.Repair(s.disk, inJob(id, journalName), r)
	if err != nil || lost == nil {
		return nil, err
	}
	lost.File = kept
	list, err := s.disk.List(folder(id))
	if err != nil {
		return nil, err
	}
	for _, e := range list {
		var seq int
		if n, _ := fmt.Sscanf(e.Name, "sound-%d.wav", &seq); n == 1 && seq > len(r.Events) {
			if err := s.disk.Rename(inJob(id, e.Name), inJob(id, fmt.Sprintf("sound-damaged-%s-%d.wav", kept, seq))); err != nil {
				return nil, err
			}
		}
	}
	return lost, nil
}

// lostWords tells a person what a damaged journal has lost.
func lostWords(w *words.Words, l *protocol.Lost, at func(int64) string) string {
	what := w.Term("app.lost-one", "n", fmt.Sprint(l.First))
	if l.Last > l.First {
		what = w.Term("app.lost-some", "first", fmt.Sprint(l.First), "last", fmt.Sprint(l.Last))
	}
	if l.From > 0 {
		what += w.Term("app.lost-after", "time", at(l.From))
		if l.To > 0 {
			what += w.Term("app.lost-until", "time", at(l.To))
		}
	}
	what += w.Term("app.lost-why", "why", l.Why)
	if l.File != "" {
		what += " " + w.Term("app.lost-file", "file", l.File)
	}
	return what + " " + w.Term("app.lost-then")
}

// summarise keeps what the job list shows. It can be lost without harm, so it is not synced and its error is dropped.
func (s *store) summarise(id string, seq int64, v *protocol.View) {
	if v == nil {
		return
	}
	stage := v.Stage
	if v.StageNo >= 1 && v.StageNo <= len(v.Stages) {
		stage = v.Stages[v.StageNo-1]
	}
	what := s.summary(id).What // what was found stays when the job goes on
	if v.Summary != nil && v.Summary.Title != "" {
		what = v.Summary.Title
	}
	data, err := json.Marshal(JobInfo{ID: id, Title: v.Title, Stage: stage, Outcome: v.Ended, Seq: seq, What: what})
	if err != nil {
		return
	}
	if f, err := s.disk.Open(inJob(id, summaryName), journal.Anew); err == nil {
		_, _ = f.Write(data)
		_ = f.Close()
	}
}

func (s *store) summary(id string) (info JobInfo) {
	if data, err := s.disk.ReadFile(inJob(id, summaryName)); err == nil && json.Unmarshal(data, &info) != nil {
		return JobInfo{} // a damaged summary only costs its words
	}
	return info
}

// list returns all jobs, newest first.
func (s *store) list() ([]JobInfo, error) {
	entries, err := s.disk.List("jobs")
	if errors.Is(err, fs.ErrNotExist) {
		return []JobInfo{}, nil // nothing was begun yet
	}
	if err != nil {
		return nil, err
	}
	jobs := []JobInfo{}
	for _, e := range entries {
		if !e.Folder || !validID(e.Name) {
			continue
		}
		files, err := s.disk.List(folder(e.Name))
		at := slices.IndexFunc(files, func(f journal.Entry) bool { return f.Name == journalName })
		if err != nil || at < 0 {
			continue // created and never begun
		}
		info := s.summary(e.Name)
		info.ID, info.At = e.Name, files[at].At
		info.Name = s.details(e.Name).Name
		if info.Title == "" {
			info.Title = "Job of " + e.Name[:min(8, len(e.Name))]
		}
		jobs = append(jobs, info)
	}
	sort.Slice(jobs, func(i, j int) bool { return jobs[i].ID > jobs[j].ID })
	return jobs, nil
}

// remove moves a job to the trash, where restore finds it; the trash keeps the last twenty.
func (s *store) remove(id string) error {
	if !validID(id) {
		return fmt.Errorf("no such job %q", id)
	}
	if err := s.disk.Remove(path.Join("trash", id)); err != nil {
		return err
	}
	if err := s.disk.Rename(folder(id), path.Join("trash", id)); err != nil {
		return err
	}
	if err := errors.Join(s.disk.SyncFolder("trash"), s.disk.SyncFolder("jobs")); err != nil {
		return err
	}
	old, err := s.disk.List("trash")
	if err != nil {
		return err
	}
	for i := 0; i < len(old)-20; i++ {
		if old[i].Name != id {
			if err := s.disk.Remove(path.Join("trash", old[i].Name)); err != nil {
				return err
			}
		}
	}
	return nil
}

func (s *store) restore(id string) error {
	if !validID(id) {
		return fmt.Errorf("no such job %q", id)
	}
	if err := s.disk.Rename(path.Join("trash", id), folder(id)); err != nil {
		return err
	}
	return errors.Join(s.disk.SyncFolder("jobs"), s.disk.SyncFolder("trash"))
}

// file reads one file of a job: a picture or the transcript.
func (s *store) file(id, name string) ([]byte, error) {
	if !validID(id) || name == "" || strings.ContainsAny(name, `/\`) || strings.HasPrefix(name, ".") {
		return nil, fmt.Errorf("no such file %q in job %q", name, id)
	}
	data, err := s.disk.ReadFile(inJob(id, name))
	if err == nil && strings.HasPrefix(name, "sound-") && !wholeSound(data) {
		return nil, fmt.Errorf("%s was changed after it was kept: its checksum does not fit", name)
	}
	return data, err
}

// keep writes a picture or a sound beside the journal; it is there whole or not at all.
func (s *store) keep(id, name string, data []byte) error {
	return journal.WriteFile(s.disk, inJob(id, name), data)
}

// sumChunk is the name of the chunk at the end of a sound that holds the SHA-256 of all before it.
const sumChunk = "sha2"

// sealSound adds its own checksum to a WAV.
func sealSound(wav []byte) []byte {
	n := uint32(len(wav) - 8 + 8 + sha256.Size)
	wav = append([]byte(nil), wav...)
	wav[4], wav[5], wav[6], wav[7] = byte(n), byte(n>>8), byte(n>>16), byte(n>>24)
	h := sha256.Sum256(wav)
	return append(append(wav, sumChunk+"\x20\x00\x00\x00"...), h[:]...)
}

// wholeSound tells whether a sound is as it was kept; one of an older program has no checksum and is believed.
func wholeSound(wav []byte) bool {
	at := len(wav) - 8 - sha256.Size
	if at < 12 || !bytes.Equal(wav[at:at+8], []byte(sumChunk+"\x20\x00\x00\x00")) {
		return !bytes.Contains(wav, []byte(sumChunk)) && len(wav) > 12 && int(wav[4])|int(wav[5])<<8|int(wav[6])<<16|int(wav[7])<<24 <= len(wav)-8
	}
	h := sha256.Sum256(wav[:at])
	return bytes.Equal(h[:], wav[at+8:])
}

// Jobs lists the jobs of a folder without opening a hub, newest first.
func Jobs(dir string) ([]JobInfo, error) { return (&store{disk: disk{dir}, dir: dir}).list() }
