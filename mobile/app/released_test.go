package app_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"readback/core/journal"
	"readback/core/lab/faultdisk"
	"readback/mobile/app"
)

// Every journal of a format that was released opens in this program, goes on, and has a record. Where it led to is compared with what
// it led to then: questions may have changed since, and an old journal does not say which question an answer belonged to.
func TestReleasedJournals(t *testing.T) {
	names, err := filepath.Glob("../../testdata/journals/format1*/*.jsonl")
	if err != nil || len(names) < 30 {
		t.Fatalf("%d old journals, %v", len(names), err)
	}
	var ends map[string]struct{ State, Step, Outcome string }
	data, err := os.ReadFile("../../testdata/journals/format1/ends.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &ends); err != nil {
		t.Fatal(err)
	}
	same, other := 0, []string{}
	for i, n := range names {
		if i%5 != 0 && os.Getenv("FIGURES") == "" { // all of them take half a minute
			continue
		}
		data, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		d := faultdisk.New()
		b := open(t, app.Config{Disk: d, New: app.NewMachine})
		id := strings.ToLower(strings.TrimSuffix(filepath.Base(n), ".jsonl"))
		if err := d.Mkdir("jobs/" + id); err != nil {
			t.Fatal(err)
		}
		d.Put(app.Journal(id), data)
		if was, ok := ends[id]; ok {
			m, _, err := app.Replay(app.NewMachine, journal.Read(data).Events)
			if err != nil {
				t.Errorf("%s: %v", n, err)
				continue
			}
			if v := m.View(); v.Ended == was.Outcome {
				same++
			} else {
				other = append(other, id+": "+v.Ended+", then "+was.Outcome)
			}
		}
		b.ok("POST", "/api/jobs/"+id+"/resume", "{}")
		if v := b.state().View; v == nil || v.Job == "" {
			t.Errorf("%s does not open", n)
		}
		if page := b.ok("GET", "/api/jobs/"+id+"/transcript", ""); len(page) < 1000 {
			t.Errorf("%s has no record", n)
		}
		b.ok("POST", "/api/event", said("", "emergency", "gas"))
		if now := journal.Read(must(d.ReadFile(app.Journal(id)))); now.Damage != nil || now.Format != journal.Format {
			t.Errorf("%s goes on in format %d, %v", n, now.Format, now.Damage)
		}
		b.hub.Close()
	}
	t.Logf("%d end as they did; others: %s", same, strings.Join(other, "; "))
}

// A job of the real machine comes back with every answer at its own question.
func TestRealJobReplaysWhole(t *testing.T) {
	d := faultdisk.New()
	b := open(t, app.Config{Disk: d, New: app.NewMachine})
	b.ok("POST", "/api/start", `{"appliance":"furnace-hsi","voice":true}`)
	for i := range 25 {
		v := b.state().View
		kind, id := "command", "dont-know"
		if len(v.Step.Answers) > 0 {
			a := v.Step.Answers[i%len(v.Step.Answers)]
			kind, id = string(a.Kind), a.ID
		}
		if i == 10 {
			b.ok("POST", "/api/event", `{"step":"","event":{"at":0,"type":"undo"}}`)
		}
		b.ok("POST", "/api/event", said(v.Step.ID, kind, id))
	}
	want := b.state().View
	data, err := d.ReadFile(app.Journal(want.Job))
	if err != nil {
		t.Fatal(err)
	}
	m, others, err := app.Replay(app.NewMachine, journal.Read(data).Events)
	if err != nil {
		t.Fatal(err)
	}
	if got := m.View(); others != 0 || got.Step.ID != want.Step.ID || got.Seq != want.Seq {
		t.Errorf("%d answers at another question; at %q, event %d, want %q, event %d", others, got.Step.ID, got.Seq, want.Step.ID, want.Seq)
	}
}
