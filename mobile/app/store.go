package app

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"time"

	"readback/core/camera"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
)

// store is the folder on disk: jobs/ID/journal.jsonl, pictures beside it, trash/ID for what was deleted, prefs.json, units.json.
type store struct {
	dir  string
	open func(name string) (appender, error) // a seam for tests: a disk that is full
}

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
}

// Meter is the person's own in plain terms. A word left out is not known.
type Meter struct {
	RMS  string `json:"rms,omitempty"`  // yes, no: "true RMS" is printed on it
	Amps string `json:"amps,omitempty"` // uA, mA, none: the lowest direct-current range
	Cat  string `json:"cat,omitempty"`  // CAT II, CAT III, CAT IV: beside the jacks
}

// plain is nil when the meter itself is not known: then it is asked in the job, and a modest one is reckoned with aloud.
func (m *Meter) plain() *measure.Plain {
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
}

func openStore(dir string) (*store, error) {
	for _, d := range []string{"jobs", "trash"} {
		if err := os.MkdirAll(filepath.Join(dir, d), 0o700); err != nil {
			return nil, err
		}
	}
	return &store{dir: dir, open: openAppend}, nil
}

// kept reads a file of the folder; where it is missing or damaged everything is as at first.
func kept[T any](s *store, name string, first T) T {
	v := first
	data, err := os.ReadFile(filepath.Join(s.dir, name))
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
	return writeFile(filepath.Join(s.dir, unitsName), u)
}

func (s *store) savePrefs(p Prefs) error {
	return writeFile(filepath.Join(s.dir, prefsName), p)
}

// setOpen remembers the job on the page; "" forgets it. Losing this costs one tap on the job list, so its errors are dropped.
func (s *store) setOpen(id string) {
	if id == "" {
		_ = os.Remove(filepath.Join(s.dir, openName))
		return
	}
	_ = os.WriteFile(filepath.Join(s.dir, openName), []byte(id), 0o600)
}

func (s *store) lastOpen() string {
	data, err := os.ReadFile(filepath.Join(s.dir, openName))
	if err != nil || !validID(string(data)) {
		return ""
	}
	return string(data)
}

// writeFile replaces a small file whole.
func writeFile(name string, v any) error {
	data, err := json.Marshal(v)
	if err != nil {
		return err
	}
	if err := os.WriteFile(name+".new", data, 0o600); err != nil {
		return err
	}
	return os.Rename(name+".new", name)
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

func (s *store) folder(id string) string { return filepath.Join(s.dir, "jobs", id) }

// create makes the folder of a new job, named after its time.
func (s *store) create(now int64) (string, error) {
	base := time.UnixMilli(now).UTC().Format("20060102-150405")
	for n := 1; ; n++ {
		id := base
		if n > 1 {
			id = fmt.Sprintf("%s-%d", base, n)
		}
		err := os.Mkdir(s.folder(id), 0o700)
		if err == nil {
			return id, nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return "", err
		}
	}
}

func (s *store) load(id string) (events []protocol.Event, size int64, damage string, err error) {
	if !validID(id) {
		return nil, 0, "", fmt.Errorf("no such job %q", id)
	}
	data, err := os.ReadFile(filepath.Join(s.folder(id), journalName))
	if err != nil {
		return nil, 0, "", err
	}
	events, size, damage = readJournal(data)
	return events, size, damage, nil
}

// mend cuts a journal to its good part, of so many events; the damaged whole is kept beside it, and so is the sound of the events lost,
// out of the way of those to come.
func (s *store) mend(id string, size int64, events int) error {
	name := filepath.Join(s.folder(id), journalName)
	data, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	if int64(len(data)) == size {
		return nil
	}
	kept := filepath.Join(s.folder(id), fmt.Sprintf("journal-damaged-%d.jsonl", len(data)))
	if err := os.WriteFile(kept, data, 0o600); err != nil {
		return err
	}
	entries, err := os.ReadDir(s.folder(id))
	if err != nil {
		return err
	}
	for _, e := range entries {
		var seq int
		if n, _ := fmt.Sscanf(e.Name(), "sound-%d.wav", &seq); n == 1 && seq > events {
			if err := os.Rename(filepath.Join(s.folder(id), e.Name()), filepath.Join(s.folder(id), fmt.Sprintf("sound-damaged-%d-%d.wav", len(data), seq))); err != nil {
				return err
			}
		}
	}
	return os.Truncate(name, size)
}

// summarise keeps what the job list shows. It can be lost without harm, so it is not synced and its error is dropped.
func (s *store) summarise(id string, v *protocol.View) {
	if v == nil {
		return
	}
	stage := v.Stage
	if v.StageNo >= 1 && v.StageNo <= len(v.Stages) {
		stage = v.Stages[v.StageNo-1]
	}
	_ = writeFile(filepath.Join(s.folder(id), summaryName), JobInfo{ID: id, Title: v.Title, Stage: stage, Outcome: v.Ended})
}

// list returns all jobs, newest first.
func (s *store) list() ([]JobInfo, error) {
	entries, err := os.ReadDir(filepath.Join(s.dir, "jobs"))
	if errors.Is(err, fs.ErrNotExist) {
		return []JobInfo{}, nil // nothing was begun yet
	}
	if err != nil {
		return nil, err
	}
	jobs := []JobInfo{}
	for _, e := range entries {
		if !e.IsDir() || !validID(e.Name()) {
			continue
		}
		info := JobInfo{ID: e.Name()}
		st, err := os.Stat(filepath.Join(s.folder(e.Name()), journalName))
		if err != nil {
			continue // created and never begun
		}
		if data, err := os.ReadFile(filepath.Join(s.folder(e.Name()), summaryName)); err == nil {
			_ = json.Unmarshal(data, &info) // a damaged summary only costs its words
		}
		info.ID, info.At = e.Name(), st.ModTime().UnixMilli()
		if info.Title == "" {
			info.Title = "Job of " + e.Name()[:min(8, len(e.Name()))]
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
	trash := filepath.Join(s.dir, "trash")
	if err := os.RemoveAll(filepath.Join(trash, id)); err != nil {
		return err
	}
	if err := os.Rename(s.folder(id), filepath.Join(trash, id)); err != nil {
		return err
	}
	old, err := os.ReadDir(trash)
	if err != nil {
		return err
	}
	for i := 0; i < len(old)-20; i++ {
		if old[i].Name() != id {
			if err := os.RemoveAll(filepath.Join(trash, old[i].Name())); err != nil {
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
	return os.Rename(filepath.Join(s.dir, "trash", id), s.folder(id))
}

// file reads one file of a job: a picture or the transcript.
func (s *store) file(id, name string) ([]byte, error) {
	if !validID(id) || name == "" || strings.ContainsAny(name, `/\`) || strings.HasPrefix(name, ".") {
		return nil, fmt.Errorf("no such file %q in job %q", name, id)
	}
	return os.ReadFile(filepath.Join(s.folder(id), name))
}

// Jobs lists the jobs of a folder without opening a hub, newest first.
func Jobs(dir string) ([]JobInfo, error) { return (&store{dir: dir}).list() }
