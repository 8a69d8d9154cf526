package app_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"readback/core/journal"
	"readback/core/lab/faultdisk"
	"readback/mobile/app"
)

// promised is what the program has acknowledged.
type promised struct {
	journals map[string][]byte // by job
	files    map[string]string // by path: SHA-256 as the journal has it, or the content of a small file
	deleted  string            // job that was moved to the trash
}

var picture = []byte("\xff\xd8\xff\xe0\x00\x04JF\xff\xda\x00\x02a picture of the wires\xff\xd9")

// work uses the program until the disk dies: two jobs, answers, a picture, choices, an undo, an alarm, a job left, deleted and opened
// again. It returns what was acknowledged by then; done tells that the disk lived.
func work(t testing.TB, d *faultdisk.Disk) (p promised, done bool) {
	p = promised{journals: map[string][]byte{}, files: map[string]string{}}
	var now int64 = 1764070000000
	hub, err := app.Open(app.Config{Disk: d, Host: &host{}, New: walker, Now: func() int64 { now += 1000; return now }})
	if err != nil {
		return p, false
	}
	defer hub.Close()
	job := ""
	ask := func(path, body string) bool {
		status, _, data := hub.Request("POST", path, []byte(body))
		if status != 200 {
			return false
		}
		var s app.State
		if json.Unmarshal(data, &s) == nil && s.View != nil {
			job = s.View.Job
		}
		if job != "" && !strings.Contains(path, "delete") {
			data, err := d.ReadFile(app.Journal(job))
			if err != nil {
				return false
			}
			p.journals[job] = data
		}
		return true
	}
	if !ask("/api/start", `{"voice":true}`) {
		return p, false
	}
	first := job
	for _, step := range []string{"smell", "w-c", "r-c"} {
		if !ask("/api/event", said(step, "choice", "none")) {
			return p, false
		}
	}
	if hub.Photo("before", picture) != nil {
		return p, false
	}
	if read := journal.Read(must(d.ReadFile(app.Journal(job)))); len(read.Events) > 0 {
		last := read.Events[len(read.Events)-1].Photo
		p.files["jobs/"+job+"/"+last.Name] = string(picture)
	}
	if !ask("/api/prefs", `{"voice":true,"theme":"dark"}`) {
		return p, false
	}
	p.files["prefs.json"] = `"theme":"dark"`
	if !ask("/api/event", `{"step":"","event":{"at":0,"type":"undo"}}`) || !ask("/api/leave", `{}`) {
		return p, false
	}
	job = ""
	if !ask("/api/start", `{"voice":true}`) || !ask("/api/event", said("smell", "choice", "none")) || !ask("/api/event", said("", "emergency", "gas")) {
		return p, false
	}
	if !ask("/api/jobs/"+first+"/delete", `{}`) {
		return p, false
	}
	p.deleted = first
	return p, ask("/api/event", said("", "command", "repeat"))
}

func must(data []byte, err error) []byte {
	if err != nil {
		return nil
	}
	return data
}

// broken says which promise a disk does not hold, empty when it holds all.
func (p promised) broken(d *faultdisk.Disk) string {
	for id, want := range p.journals {
		where, other := "jobs/"+id, "trash/"+id
		if id == p.deleted {
			where, other = other, where
		}
		got, err := d.ReadFile(where + "/journal.jsonl")
		if err != nil && p.deleted != id {
			if got, err = d.ReadFile(other + "/journal.jsonl"); err == nil { // being deleted
				where = other
			}
		}
		if err != nil {
			return fmt.Sprintf("the journal of %s: %v", id, err)
		}
		if !bytes.HasPrefix(got, want) {
			return fmt.Sprintf("%s/journal.jsonl holds %d bytes that are not the %d acknowledged", where, len(got), len(want))
		}
	}
	for name, want := range p.files {
		got, err := d.ReadFile(name)
		if err != nil {
			if got, err = d.ReadFile(strings.Replace(name, "jobs/", "trash/", 1)); err != nil {
				return err.Error()
			}
		}
		if !strings.Contains(string(got), want) {
			return fmt.Sprintf("%s holds %.80q", name, got)
		}
	}
	return ""
}

// crashes takes the power away at every operation of the work and tries so many disks that may be left each time; of every third one
// the power goes again while the program comes back.
func crashes(t testing.TB, each int, lost func(format string, a ...any)) (schedules int) {
	for at := 1; ; at++ {
		d := faultdisk.New()
		d.DieAt(at)
		p, done := work(t, d)
		if done && d.Ops() < at {
			if at < 60 {
				lost("the work is done after %d operations", at)
			}
			return schedules
		}
		for seed := range uint64(each) {
			after := d.Crash(seed)
			schedules++
			if why := p.broken(after); why != "" {
				lost("power lost at operation %d, disk %d: %s", at, seed, why)
				continue
			}
			if seed%3 == 0 {
				after.DieAt(int(seed/3)%20 + 1)
				if hub, err := app.Open(app.Config{Disk: after, Host: &host{}, New: walker, Now: func() int64 { return 1764070900000 }}); err == nil {
					hub.Close()
				}
				after = after.Crash(seed + 1)
				schedules++
				if why := p.broken(after); why != "" {
					lost("power lost at operation %d, disk %d, and again while coming back: %s", at, seed, why)
					continue
				}
			}
			h := &host{}
			hub, err := app.Open(app.Config{Disk: after, Host: h, New: walker, Now: func() int64 { return 1764070900000 }})
			if err != nil {
				lost("power lost at operation %d, disk %d: the program does not come back: %v", at, seed, err)
				continue
			}
			if status, _, data := hub.Request("POST", "/api/event", []byte(said("", "emergency", "gas"))); status != 200 {
				lost("power lost at operation %d, disk %d: the job does not go on: %d %s", at, seed, status, data)
			}
			hub.Close()
			if why := p.broken(after.Crash(seed)); why != "" {
				lost("power lost at operation %d, disk %d, after the job went on: %s", at, seed, why)
			}
		}
	}
}

// Whenever the power goes and whatever it leaves of the disk, nothing acknowledged is lost and the program comes back.
func TestPowerCut(t *testing.T) {
	n := crashes(t, 24, t.Errorf)
	if n < 1000 {
		t.Errorf("%d schedules", n)
	}
	t.Logf("%d schedules", n)
}
